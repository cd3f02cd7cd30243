using System.Text;
using Throwright.Engine.Clearance;
using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.HandForce;
using Throwright.Engine.Heat;
using Throwright.Engine.Make;
using Throwright.Engine.Measure;
using Throwright.Engine.Mount;
using Throwright.Engine.Prove;
using Throwright.Engine.Route;
using Throwright.Engine.Rig;
using Throwright.Engine.Throw;

namespace Throwright.Engine.Chain;

/// <summary>One rule in words: what it asks, and when it gives which verdict.</summary>
public sealed record RuleWords(string Rule, string Asks, string Fail, string Caution, string Clear);

/// <summary>All rules that findings can name. A test holds every finding to this list.</summary>
public static class RuleBook
{
    public static IReadOnlyList<RuleWords> All { get; } =
    [
        new(SweepRules.DeadCentre, "Can the wire drive the arm from stop to stop?", "a dead centre lies inside the sweep, or within the tolerances of a stop; or the anchor lies on the lever's axis", "", "none can be reached"),
        new(SweepRules.Transmission, "Does the wire meet the arm at a workable angle?", "", "below the least angle at the worse stop, tolerances counted", "at or above it"),
        new(SweepRules.Swing, "Does the wire stay within the conduit tip's swivel?", "beyond the swivel", "inside the last degrees of it; or a fixed tip with more than a plain fairlead allows", "within"),
        new(SweepRules.WireBend, "Does the bare wire survive at a fixed tip?", "it takes a set", "above the stress for a long life, or the limit is from memory", "below it"),
        new(LadderRules.KnobIn, "Is knob travel left when pushing has taken the device to its stop?", "none left, nominally or in the worst case", "less than wanted in the worst case, or not decided", "the wanted cushion in the worst case"),
        new(LadderRules.KnobOut, "Is knob travel left when pulling has taken the device to its stop?", "none left, nominally or in the worst case", "less than wanted in the worst case, or not decided", "the wanted cushion in the worst case"),
        new(LadderRules.Tip, "Does the swivel stay clear of the conduit's tip?", "it meets the tip, nominally or in the worst case", "less than wanted in the worst case, or not decided", "the wanted gap in the worst case"),
        new(LadderRules.Most, "Is the stroke used?", "", "more than the usual most is left at one end", "(no finding)"),
        new(RunFindings.Setting, "Where does the swivel sit on the wire?", "", "", "(needs input: the file does not say; the balanced place is proposed)"),
        new(RunFindings.Valve, "What does a shortfall mean for a quarter-turn valve?", "it stays open when it should be shut", "it stops short of a stop without leaking", "it reaches both stops"),
        new(HandForceRules.Hand, "Can the hand work it?", "beyond what one hand, or finger and thumb in an emergency, can give", "above the yardstick for a routine control", "within"),
        new(HandForceRules.BareWire, "Does the pushed bare wire hold?", "it buckles", "less margin than wanted", "with the wanted margin"),
        new(HandForceRules.CorePull, "Is the core within the maker's pull limit?", "beyond it", "", "within"),
        new(HandForceRules.CorePush, "Is the core within the maker's push limit?", "beyond it", "", "within"),
        new(HandForceRules.LockUp, "Can the push come out of the conduit?", "the core jams", "a stranded core is pushed, or half the limit is passed", "within"),
        new(HandForceRules.SelfHold, "Does the load move the control by itself?", "it does, and no lock holds it", "the lock holds with little to spare, or its strength is not known", "friction or lock holds it"),
        new(RunFindings.Friction, "Is the friction typed in one that exists?", "", "below that of a new PTFE liner", "(no finding)"),
        new(RunFindings.BendRadius, "Is the conduit bent no tighter than its maker allows?", "tighter", "", "wider"),
        new(RunFindings.CoreSet, "Does the core spring back from the tightest bend?", "", "it takes a set, or the limit is from memory", "it springs back"),
        new(RigRules.AsBuilt, "Does the control keep its cushions as it was read on the aircraft?", "none left at one end", "less than wanted, or more than the most", "as wanted"),
        new(RigRules.Fit, "Do the readings fit the description?", "", "they do not, beyond chance", "(no finding)"),
        new(ProveRules.Sense, "Does pushing do what the published table of motion asks?", "it does the opposite", "", "it does, or no table names the control"),
        new(ProveRules.Colour, "Is red kept for emergency controls, and are they red?", "red and no emergency control, or the other way round", "a colour outside the published list", "as asked"),
        new(ProveRules.Marking, "Does the marking say what it is and how it is worked?", "one of the two is missing", "", "both"),
        new(LabelsApart.Rule, "Can its marking be taken for another control's?", "", "two markings are one, or differ by a word that one lacks, or by a letter", "(no finding)"),
        new(ProveRules.Lettering, "Can the lettering be read from the seat?", "below the least height", "below the preferred height", "at least the preferred height"),
        new(ProveRules.Guard, "Is a control that stops the engine or opens a door guarded?", "nothing guards it", "", "guard, gate, button or turn"),
        new(ProveRules.Reopen, "Can a fuel shutoff be opened again?", "the core only pulls", "only the device's own torque opens it", "the core pushes"),
        new(ProveRules.SafeEnd, "Where does the device go when the wire parts?", "throttle or mixture away from its safe end", "not to its declared safe end, or it can't be told", "to its declared safe end"),
        new(ProveRules.Spring, "And with its spring broken?", "", "not to its safe end", "still to its safe end"),
        new(ProveRules.WireHold, "What holds the wire in its fitting?", "", "friction alone", "bent tail, crimp or eye too"),
        new(ProveRules.SwivelTest, "Did the wire's fitting stand the limit force?", "", "tested to less", "tested to it"),
        new(ProveRules.AnchorTest, "Did the anchor stand the limit force?", "", "tested to less", "tested to it"),
        new(ProveRules.JointLocks, "Is the joint's bolt locked as the rules ask?", "a forbidden lock, none, or one where two are asked", "one device and not said whether critical", "locked"),
        new(ProveRules.JointHeat, "Does a fibre lock nut stand its place?", "hotter than its limit", "", "within"),
        new(ProveRules.JointBearing, "Does the joint bear the limit force with its special factor?", "less strength than asked", "", "enough"),
        new(ProveRules.Parts, "Do pin, arm, bracket, fasteners and shank stand the limit force with the device jammed?", "one does not", "a stick that strikes the knob bends its shank", "those that could be counted do"),
        new(ProveRules.Jam, "What if the device jams and the hand hauls?", "", "more than the core's limit", "within the core's limit"),
        new(ProveRules.AnchorGround, "Do the control's forces stay out of fluid lines?", "the anchor stands on a line", "", "structure or the device's bracket"),
        new(ProveRules.Firewall, "Which side of the firewall is the fuel shutoff on?", "the engine side", "", "the cabin side"),
        new(ProveRules.Fire, "Does a control that must work in a fire stand one?", "nothing stated of its conduit", "fire resistant", "fireproof, or no part in the engine compartment"),
        new(ProveRules.Distance, "Does the cable keep clear of wiring and lines?", "closer than asked, or touching", "the limit is from memory", "clear of them"),
        new(ProveRules.People, "Can a weaker hand work it?", "", "more than a weaker hand gives", "within"),
        new(ProveRules.Suitable, "Are the maker's limits known by which a flexible control is suitable?", "", "", "they are; else they are asked for"),
        new(ProveRules.Tested, "Was it worked from the cockpit, stop to stop, with the device connected?", "", "the newest readings lack one", "both stops, pull and push read"),
        new(ProveRules.Operating, "What does the operating check of an emergency control show?", "", "something that moves can touch it, or it takes more than the chosen hand gives", "everything told; time is taken from the seat; without it: needs input"),
        new(ProveRules.Unsaid, "What do the rules of installation still wait for?", "", "", "(needs input: the file does not say)"),
        new(PanelOrder.CarburettorHeat, "Does carburettor heat stand apart from the mixture?", "nearer than asked", "nearer, and no throttle in the file", "left of the throttle or far enough"),
        new(PanelOrder.Shapes, "Can the hand tell the mixture from its neighbour?", "", "handles of one kind", "another kind"),
        new(PanelOrder.Levers, "Do the engine controls stand in the published order?", "another order", "", "power, propeller, mixture"),
        new(HeatRules.Parts, "Does each part stand the heat of its place?", "one does not", "the limit is from memory", "all do"),
        new(LieRules.Rests, "Does the conduit come to rest in one lie by itself?", "it finds no lie: too short, too slack, or clamps that leave no way", "a loop, a bow that may fall to any side, or another lie it can rest in", "it does"),
        new(LieRules.Radius, "Does the lie keep the conduit's least radius?", "tighter", "only as planned: hand and tape can use up the margin; or the limit is from memory", "also where hand and tape are off"),
        new(LieRules.Supports, "Is the conduit held often enough?", "", "a longer stretch without a support than tubing of its size may have", "no longer one"),
        new(LieRules.Movement, "How far does a little more length throw the lie sideways?", "", "more than the usual most", "no more than that"),
        new(LieRules.Contact, "Does the conduit rest against something in its way?", "it does, tighter than its maker allows", "it does: there it chafes", "(no finding)"),
        new(RouteChangeFindings.EndMoves, "Does the lie hold with the anchor at each of its extreme places?", "no lie, tighter than its maker allows, or against something", "nearer to something than wanted, or the least radius is not known", "it does"),
        new(RouteChangeFindings.Twist, "What if the conduit's end was turned with its clamps closed?", "tighter than its maker allows", "it moves by more than the usual distance, may snap, or it can't be told", "it hardly moves"),
        new(LieRules.BendTotal, "Does the lie turn little enough?", "", "more than advice from memory allows", "(no finding)"),
        new(RouteFindings.Chafe, "Does the conduit stay away from what the file describes?", "it runs through a body or touches it", "nearer than wanted", "as far as wanted"),
        new(RouteFindings.Heat, "Does the conduit stay away from what is hot?", "nearer than the file says", "", "as far as the file says"),
        new(RouteFindings.Order, "Are the supports in the order of the way?", "", "another order makes the way shorter by a tenth", "(no finding)"),
        new(RouteFindings.NotHeld, "Is the conduit held against everything in the file?", "", "a sheet without outline, a mesh that is not read, or a skin that it lies inside", "(no finding)"),
        new(RouteFindings.Lays, "Does every lay within what may be off find the same lie?", "", "some find none, or one elsewhere", "(no finding)"),
        new(RouteFindings.Typed, "Do the bends typed in agree with the lie?", "", "they differ beyond both their limits", "(no finding)"),
        new(RouteFindings.Ordered, "Does the conduit as ordered fit the way?", "it finds no lie, or lies tighter than its maker allows", "longer or shorter than the way by more than half an order step", "it does"),
        new(RouteFindings.Clamps, "Do the clamps go round the conduit?", "smaller than the conduit", "larger than its size asks for", "they do, or none has a size"),
        new(TapeRules.Point, "Is the place of a taped point known well enough?", "", "less well than wanted", "as well as wanted; without a place: needs input"),
        new(TapeRules.Readings, "Do the readings of a taped point agree?", "", "one disagrees, or nothing checks them", "they do"),
        new(PointFindings.Noted, "Are the coordinates noted beside the readings those they give?", "", "they are not; the readings count", "(no finding)"),
        new(ClearanceRules.Pair, "Does the handle stay clear of everything else, in every position of both?", "they touch, or come nearer than your own figure", "nearer than the usual figure, or not decided", "the wanted clearance, proved"),
        new(ClearanceRules.Lever, "Does the arm at the device stay clear over its whole sweep?", "it touches something, its width measured", "nearer than the usual figure, or not decided, or it touches with a width that was taken for it", "the usual figure, proved"),
        new(ClearanceRules.Conduit, "Does the conduit stay clear of everything that moves?", "they touch, its outside measured", "nearer than the distance against chafing, or not decided, or touching with an outside that was taken for it", "that distance, proved"),
        new(ClearanceRules.Own, "Does the conduit stay clear of its own handle and arm, but for its ends?", "they touch, sizes measured", "nearer than the usual cushion, or not decided, or touching with a size that was taken", "the usual cushion, proved; what is held in the ends is named"),
        new(ClearanceRules.Mover, "Does what moves and is no handle stay clear of sheets and of everything else?", "they touch: the aircraft has the fault, or the file does", "nearer than the usual figure, or not decided; or a limb, which gives way, meets a sheet", "the usual figure, proved"),
        new(ClearanceRules.OwnSheet, "Does a leaning knob stay off its own sheet?", "it meets it", "can't be told yet", "it does, proved"),
        new(ClearanceRules.Contacts, "What was left out because it may touch?", "", "always: nothing is proved about it", "(no finding)"),
        new(ClearanceRules.Skin, "Can inside be told from outside?", "", "a scanned surface is open", "(no finding)"),
        new(MeshFindings.Open, "Is each mesh closed?", "", "one has open edges: what it does not show is not proved", "(no finding)"),
        new(MeshFindings.Fit, "Do the matched points of a mesh agree?", "they lie farther apart, or nearer, than in the mesh by more than 3 %: a slip of units or points", "one misses by more than the usual most", "they do"),
        new(ClearanceFindings.NotRead, "Is every body in the picture?", "", "", "(needs input: a mesh is not read, or a leg can't span its hip and heel)"),
        new(MakeRules.ThinEdge, "Can the wedge be made, and is its thin edge stout enough?", "it can't be made as described", "thinner than the least of its stock", "at or above it"),
        new(MakeRules.Stock, "Will the wedge last?", "", "it is printed: a test piece", "(no finding)"),
        new(MakeRules.Cover, "Does the wedge cover the hole in the sheet?", "the hole is longer", "", "it reaches beyond its end"),
        new(MakeRules.NutSeat, "Does the nut lie on the wedge with its corners?", "", "it hangs over", "(no finding)"),
        new(MakeRules.Thread, "Does the thread reach through wedges, sheet and nut?", "less than one full thread shows", "", "it shows"),
        new(MakeRules.Key, "Can a wedge turn under the nut?", "", "nothing keys it", "a pin or a flat keys it"),
        new(MakeRules.Curve, "Does a flat wedge or nut seat on a curved sheet?", "it is wider than the curve", "it stands off by more than counts as flat: what seats it is said", "it stands off by less"),
        new(MakeRules.Galvanic, "Do wedge and sheet corrode each other?", "", "they are of different groups of metals", "of one group, or one does not conduct"),
        new(MakeRules.SheetEdge, "Does the wedge lie on the sheet with its whole rim?", "it hangs over the edge", "", "it lies on it"),
        new(MakeRules.BendRadius, "Can the bracket be bent to its radius?", "below the least of the table", "between the least and the safe radius, or sharper than 90 deg", "at or above the safe radius"),
        new(MakeRules.EdgeDistance, "Are the bracket's holes far enough from edges and bend?", "nearer than the published multiple of the diameter", "", "at or beyond it"),
        new(MakeRules.Pitch, "Are the bracket's holes far enough from each other?", "nearer than the published multiple of the diameter", "", "at or beyond it"),
        new(MakeRules.BracketGive, "Does the bracket give under the cable's load?", "", "more than the limit, its softest counted", "less"),
        new(MakeRules.Bearing, "Does the bracket's sheet hold round its fasteners?", "less strength than load", "less margin than wanted, or the strength is from memory", "with the wanted margin"),
        new(MakeRules.Fasteners, "Do the bracket's fasteners hold the cable's load?", "less strength than load", "less margin than wanted, or a rivet in pull, or the strength is from memory", "with the wanted margin"),
        new(MountRules.HandRoom, "Does a hand find room round the knob?", "", "less than wanted, or not decided", "the wanted room, proved"),
        new(MountRules.Reach, "Does the smallest pilot reach the knob?", "", "farther than the published reach", "within reach"),
        new(MountRules.Lean, "Does the shank lean much?", "leaning so, the knob meets its own sheet", "more than the usual most", "less, or so little that no wedge is needed"),
        new(MountRules.Friction, "Does friction hold the wedges?", "", "not by itself", "it does"),
        new(MountRules.Tilted, "Is there a tilt that clears?", "none within the range, proved", "not decided", "the smallest that clears, proved"),
        new(RunFindings.NeedsInput + "PATH", "Is an input missing that a stage waits for?", "", "", "(needs input: the stage is named, the others go on)"),
    ];

    /// <summary>Rules whose cautions hold for most installations of their kind, whatever the figures of this one.</summary>
    private static readonly HashSet<string> Standing =
    [
        ProveRules.SafeEnd, ProveRules.Spring, ProveRules.WireHold, ProveRules.SwivelTest, ProveRules.AnchorTest, ProveRules.JointLocks, ProveRules.Jam, ProveRules.Fire, ProveRules.Tested, ProveRules.Unsaid, PanelOrder.Shapes,
        ClearanceRules.Contacts, ClearanceRules.Skin, MeshFindings.Open, MakeRules.Stock, MakeRules.Key, MakeRules.Galvanic, MountRules.Friction,
    ];

    /// <summary>
    /// Order in which findings are read: what fails, what can't be told for want of an input, cautions by this run's own
    /// figures, cautions that such a run always has, what is clear.
    /// </summary>
    public static int Place(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        var standing = Standing.Contains(finding.Rule);
        return finding.Verdict switch
        {
            Verdict.Fail => 0,
            Verdict.NeedsInput => standing ? 4 : 1,
            Verdict.Caution => standing ? 3 : 2,
            _ => 5,
        };
    }

    /// <summary>Is this the id of a rule in the book?</summary>
    public static bool Holds(string rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return rule.StartsWith(RunFindings.NeedsInput, StringComparison.Ordinal) || All.Any(r => r.Rule == rule);
    }

    /// <summary>Path within the run of the input that such a finding asks for; null: it asks for none.</summary>
    public static string? NeedIn(string rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return rule.StartsWith(RunFindings.NeedsInput, StringComparison.Ordinal) ? rule[RunFindings.NeedsInput.Length..] : null;
    }

    /// <summary>docs/reference/findings.md.</summary>
    public static string Page()
    {
        var page = new StringBuilder("# Findings\n\nWritten by the program (`RuleBook`); a test holds this page to it. Limits and their sources stand at each finding and in\n[sources.md](sources.md).\n\n| rule | asks | fail | caution | clear |\n|---|---|---|---|---|\n");
        foreach (var rule in All)
            page.Append("| `").Append(rule.Rule).Append("` | ").Append(rule.Asks).Append(" | ").Append(rule.Fail).Append(" | ").Append(rule.Caution).Append(" | ").Append(rule.Clear).Append(" |\n");
        return page.ToString();
    }
}
