using System.Text;
using Throwright.Engine.Clearance;
using Throwright.Engine.Cushion;
using Throwright.Engine.HandForce;
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
        new(ClearanceRules.Pair, "Does the handle stay clear of everything else, in every position of both?", "they touch, or come nearer than your own figure", "nearer than the usual figure, or not decided", "the wanted clearance, proved"),
        new(ClearanceRules.Contacts, "What was left out because it may touch?", "", "always: nothing is proved about it", "(no finding)"),
        new(ClearanceRules.Skin, "Can inside be told from outside?", "", "a scanned surface is open", "(no finding)"),
        new(ClearanceFindings.NotRead, "Is every body in the picture?", "", "", "(needs input: a mesh is not read, or a leg can't span its hip and heel)"),
        new(RunFindings.NeedsInput + "PATH", "Is an input missing that a stage waits for?", "", "", "(needs input: the stage is named, the others go on)"),
    ];

    /// <summary>Is this the id of a rule in the book?</summary>
    public static bool Holds(string rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return rule.StartsWith(RunFindings.NeedsInput, StringComparison.Ordinal) || All.Any(r => r.Rule == rule);
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
