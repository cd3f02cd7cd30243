using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Prove;

/// <summary>Published rules of installation as findings: measured against, never approved by.</summary>
public static class ProveRules
{
    public const string Sense = "prove/sense-of-motion";
    public const string Colour = "prove/colour";
    public const string Marking = "prove/marking";
    public const string Lettering = "prove/lettering";
    public const string Guard = "prove/guard";
    public const string Reopen = "prove/reopening";
    public const string SafeEnd = "prove/safe-end";
    public const string Spring = "prove/spring";
    public const string WireHold = "prove/wire-hold";
    public const string SwivelTest = "prove/swivel-test";
    public const string AnchorTest = "prove/anchor-test";
    public const string JointLocks = "prove/joint-locking";
    public const string JointHeat = "prove/joint-heat";
    public const string JointBearing = "prove/joint-bearing";
    public const string Parts = "prove/part-strength";
    public const string Jam = "prove/jammed-device";
    public const string AnchorGround = "prove/anchor-ground";
    public const string Firewall = "prove/firewall";
    public const string Fire = "prove/fire";
    public const string Distance = "prove/distance";
    public const string People = "prove/weaker-hand";
    public const string Suitable = "prove/suitability";
    public const string Tested = "prove/operation-test";
    public const string Operating = "prove/operating-check";
    public const string Unsaid = "prove/not-said";

    /// <summary>Where a single failure leaves the device: true of the design, whatever is adjusted.</summary>
    public static EquatableList<string> Standing { get; } = [SafeEnd, Spring];

    private static readonly SourceRef Practice = new("common-practice", "judgement", Evidence.CommonPractice);
    private static readonly SourceRef Theory = new("project", "docs/theory/prove.md", Evidence.Derived);
    private static readonly SourceRef Own = new("project", "your own figure, typed into the file", Evidence.CommonPractice);

    public static IEnumerable<Finding> Find(ProveCase of, ProveAnswer answer, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(of);
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(say);
        return All(of, answer, say).OfType<Finding>();
    }

    /// <summary>A control that the rules, or plain sense, want guarded against being worked by mistake.</summary>
    public static bool NeedsGuard(Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return run.Emergency || run.Function is ControlFunction.FuelShutoff or ControlFunction.Mixture or ControlFunction.CanopyLatch or ControlFunction.EmergencyGear;
    }

    private static IEnumerable<Finding?> All(ProveCase of, ProveAnswer answer, FigureWriter say)
    {
        var run = of.Run;
        yield return OfSense(run);
        yield return OfColour(run);
        yield return OfMarking(run);
        yield return OfLettering(run, say);
        yield return OfGuard(run);
        yield return OfReopening(of);
        yield return OfSafeEnd(of, answer);
        yield return OfSpring(of, answer);
        yield return OfWireHold(run);
        yield return OfTest(SwivelTest, run.Installation?.SwivelHeld, "The wire in its fitting", answer, say);
        yield return OfTest(AnchorTest, run.Installation?.AnchorHeld, "The conduit in its anchor", answer, say);
        yield return OfJointLocks(run);
        yield return OfJointHeat(of);
        yield return OfBearing(run, answer, say);
        yield return OfParts(answer, say);
        yield return OfJam(run, answer, say);
        yield return OfAnchorGround(run);
        yield return OfFirewall(run);
        yield return OfFire(run);
        yield return OfDistance(run, say);
        yield return OfPeople(of, say);
        yield return OfSuitability(run);
        yield return OfOperationTest(run, say);
        yield return OperatingCheck.Finding(of, answer);
        if (answer.Waiting.Count > 0)
        {
            yield return Say(
                Unsaid, Verdict.NeedsInput,
                answer.Waiting.Count == 1 ? $"The file does not say: {answer.Waiting[0].What}." : $"The file does not say {answer.Waiting.Count} things that rules of installation ask: {string.Join("; ", answer.Waiting.Select(w => w.What))}.",
                $"They go to {string.Join(", ", answer.Waiting.Select(w => w.Path))}.", [Practice]);
        }
    }

    private static Finding Say(string rule, Verdict verdict, string sentence, string why, EquatableList<SourceRef> sources) =>
        new() { Rule = rule, Verdict = verdict, Sentence = sentence, Why = why, Sources = sources };

    private static SourceRef By(string rule) => Published.Rule(rule).Source;

    /// <summary>What pushing must do by 14 CFR 23.779, in words that builders use; null: the table does not name the control.</summary>
    internal static (string What, string[] Right, string[] Wrong)? PushedMeans(ControlFunction function) => function switch
    {
        ControlFunction.Throttle => ("more power", ["open", "full", "more", "power"], ["idle", "shut", "closed", "less"]),
        ControlFunction.Propeller => ("more rpm", ["fine", "high", "more", "rpm"], ["coarse", "low", "feather"]),
        ControlFunction.Mixture => ("rich", ["rich"], ["lean", "cut", "off"]),
        ControlFunction.FuelShutoff => ("open", ["open", "on"], ["shut", "off", "closed"]),
        ControlFunction.CarburettorHeat or ControlFunction.AlternateAir => ("cold", ["cold", "off", "direct", "ram", "filtered"], ["hot", "heat", "on", "alternate"]),
        _ => null,
    };

    private static Finding? OfSense(Run run)
    {
        if (run.CockpitEnd is not { PushMeans.Length: > 0 } end)
            return null;
        if (PushedMeans(run.Function) is { } table)
        {
            bool Names(string[] words, string text) => text.ToLowerInvariant().Split([' ', '-', ',', '/']).Intersect(words).Any();
            bool right = Names(table.Right, end.PushMeans), wrong = Names(table.Wrong, end.PushMeans);
            var (verdict, words) = (right, wrong) switch
            {
                (true, false) => (Verdict.Clear, $"Pushing means {end.PushMeans}; the published sense is forward for {table.What}."),
                (false, true) => (Verdict.Fail, $"Pushing means {end.PushMeans}; the published sense is forward for {table.What}."),
                _ => (Verdict.NeedsInput, $"Is \"{end.PushMeans}\" the same as {table.What}? The published sense is forward for {table.What}: say it in that word."),
            };
            return Say(Sense, verdict, words, "A hand under stress does what it learned.", [By("23.779")]);
        }

        return Say(
            Sense, Verdict.Clear, $"No published sense for this control was found; it is pushed for {end.PushMeans}{(end.PullMeans.Length > 0 ? $", pulled for {end.PullMeans}" : "")}, and so marked.",
            "MIL-STD-1472E pulls for on; 14 CFR 23.779 pushes for open and rich. Choose one way for all and mark each.", [By("1472e-5.4.3.1.8.6")]);
    }

    private static bool IsRed(string colour) => colour.Contains("red", StringComparison.OrdinalIgnoreCase);

    private static Finding? OfColour(Run run)
    {
        if (run.CockpitEnd is not { KnobColour: { Length: > 0 } colour })
            return null;
        if (run.Emergency != IsRed(colour))
        {
            return Say(
                Colour, Verdict.Fail,
                run.Emergency ? $"An emergency control is red; this one is {colour}." : $"The knob is {colour}, and red is for emergency controls alone.",
                "", [By("23.1555(e)(2)")]) with
            { Remedies = [new(run.Emergency ? "Take a red knob or handle." : "If it serves an emergency too (a mixture that stops the engine), set \"emergency\": true in the run; else take a knob of another colour.")] };
        }

        string[] known = ["black", "grey", "gray", "red", "green", "orange", "yellow", "white", "blue"];
        return known.Any(k => colour.Contains(k, StringComparison.OrdinalIgnoreCase))
            ? Say(Colour, Verdict.Clear, $"The knob is {colour}{(run.Emergency ? ", as an emergency control is" : "; red is kept for emergency controls")}.", "", [By("23.1555(e)(2)"), By("1472e-5.4.1.4.5.1")])
            : Say(Colour, Verdict.Caution, $"The knob is {colour}: published practice codes controls black, grey, red, green, orange-yellow, white or blue.", "", [By("1472e-5.4.1.4.5.1")]);
    }

    private static Finding? OfMarking(Run run)
    {
        if (run.Label.Length == 0 || run.How.Length == 0)
            return run.Label.Length + run.How.Length == 0 ? null : Say(Marking, Verdict.Fail, run.Label.Length == 0 ? "The marking says how, but not what." : $"The marking says {run.Label}, but not how it is worked.", "", [By("23.1555(a)"), By("ol-controls")]) with
            { Remedies = [new(run.Label.Length == 0 ? "Engrave the control's name and type it into label, e.g. \"COWL FLAP\"." : "Engrave how it is worked too and type it into how, e.g. \"PULL TO CLOSE\".")] };
        return Say(Marking, Verdict.Clear, $"The marking reads {run.Label}, {run.How}.", "", [By("23.1555(a)"), By("ol-controls")]);
    }

    private static Finding? OfLettering(Run run, FigureWriter say)
    {
        if (run.Installation?.Legend is not { } legend)
            return null;
        double least = Published.Get("marking/least-height").Value * legend.Distance.Metres, good = Published.Get("marking/good-height").Value * legend.Distance.Metres;
        var stroke = Published.Get(legend.LightOnDark ? "marking/stroke-light-on-dark" : "marking/stroke-dark-on-light");
        return Say(
            Lettering,
            legend.Height.Metres < least ? Verdict.Fail : legend.Height.Metres < good ? Verdict.Caution : Verdict.Clear,
            $"Letters {say.Length(legend.Height.Metres)} high are read from {say.Length(legend.Distance.Metres)}; least is {say.Length(least, Rounding.Up)}, preferred {say.Length(good, Rounding.Up)}.",
            $"In dim light {FigureText.Plain(Published.Get("marking/dim-light").Value, 1)} times that (common practice). Stroke {say.Length(legend.Height.Metres / stroke.Low)}, {(legend.LightOnDark ? "light on dark" : "dark on light")}.",
            [By("nureg-lettering"), Published.Get("marking/least-height").Source, stroke.Source]) with
        { Limit = new(good, QuantityKind.Length, true) };
    }

    private static Finding? OfGuard(Run run)
    {
        if (!NeedsGuard(run))
            return null;
        var source = By(run.Function == ControlFunction.FuelShutoff ? "23.995(b)" : run.Function == ControlFunction.Mixture ? "23.1147(a)" : "23.777(b)");
        var byLock = run.CockpitEnd?.Lock is LockKind.PressToRelease or LockKind.Twist or LockKind.Vernier;
        if (run.Installation?.Guard is { } guard && guard != GuardKind.None)
            return Say(Guard, Verdict.Clear, $"A {guard switch { GuardKind.Cover => "cover", GuardKind.Gate => "gate", GuardKind.Button => "button", _ => "turn" }} keeps it from being worked by mistake.", "", [source]);
        if (byLock)
            return Say(Guard, Verdict.Clear, "The lock of the handle takes a second action, which keeps it from being worked by mistake.", "", [source]);
        return run.Installation?.Guard == GuardKind.None
            ? Say(Guard, Verdict.Fail, "Nothing keeps it from being worked by mistake.", "A cover, a gate, a button or a turn before the pull.", [source])
            : null;
    }

    private static Finding? OfReopening(ProveCase of)
    {
        if (of.Run.Function != ControlFunction.FuelShutoff || of.Run.Cable?.Core is not { } core)
            return null;
        if (core.Kind == CoreKind.Solid)
            return Say(Reopen, Verdict.Clear, "The core is solid: it pushes as well as pulls, so the valve can be opened again in flight.", "Its push is under force/bare-wire and force/core-push.", [By("23.995(b)")]);
        var back = of.Loose.Stop == (of.Safe ?? DeviceStop.Push);
        return Say(Reopen, back ? Verdict.Caution : Verdict.Fail, back ? "The core is a strand; only the device's own torque opens the valve again." : "The core is a strand that only pulls: the valve can't be opened again from the seat.", "", [By("23.995(b)")]);
    }

    private static Finding? OfSafeEnd(ProveCase of, ProveAnswer answer)
    {
        if ((of.Safe is null && !of.SafeAsSet) || of.Loose.Way == LooseWay.NotKnown)
            return null;
        EquatableList<SourceRef> sources = of.Run.Function switch { ControlFunction.Throttle => [By("23.1143(g)"), Theory], ControlFunction.Mixture => [By("23.1147(b)"), Theory], _ => [Theory] };
        var engine = of.Run.Function is ControlFunction.Throttle or ControlFunction.Mixture;
        var end = of.SafeAsSet ? "where it was set" : of.Safe == DeviceStop.Push ? of.PushEnd : of.PullEnd;
        var row = answer.Failures.First(f => f.Failure == SingleFailure.WireParts);
        var goes = row.Goes is { } stop ? $"goes to {(stop == DeviceStop.Push ? of.PushEnd : of.PullEnd)} by itself"
            : of.Loose.Way == LooseWay.BySide ? "goes by the side of the dead centre it was on" : "stays where it was set";
        const string cure = "A spring toward the safe end cures it; its force then counts at the hand.";
        return row.IsSafeEnd switch
        {
            true => Say(SafeEnd, Verdict.Clear, $"If the wire parts, {of.Device} {goes}, its declared safe end.", of.SafeAsSet ? "Vibration may still move it." : "", sources),
            null => Say(SafeEnd, Verdict.Caution, $"If the wire parts, it can't be told whether {of.Device} goes to {end}, its declared safe end.", $"{char.ToUpperInvariant(of.Loose.Why[0])}{of.Loose.Why[1..]}. Measure both on the device.", sources),
            _ => Say(
                SafeEnd, engine && of.Loose.Ways.Any(w => w is LooseWay.ToPushStop or LooseWay.ToPullStop && Wrong(of, w)) ? Verdict.Fail : Verdict.Caution,
                $"If the wire parts, {of.Device} {goes}, not to {end}, its declared safe end.",
                (of.Loose.Way == LooseWay.BySide ? $"{char.ToUpperInvariant(row.Where[0])}{row.Where[1..]}. " : "") + cure, sources),
        };
    }

    private static bool Wrong(ProveCase of, LooseWay way) => of.Safe != (way == LooseWay.ToPushStop ? DeviceStop.Push : DeviceStop.Pull);

    private static Finding? OfSpring(ProveCase of, ProveAnswer answer)
    {
        if (answer.Failures.FirstOrDefault(f => f.Failure == SingleFailure.SpringBreaks) is not { } row || (of.Safe is null && !of.SafeAsSet) || of.Loose.Way == LooseWay.NotKnown)
            return null;
        return row.IsSafeEnd == true
            ? Say(Spring, Verdict.Clear, $"With its spring broken {of.Device} still goes to its safe end.", "", [Theory])
            : Say(Spring, Verdict.Caution, row.IsSafeEnd is null ? $"With its spring broken it can't be told where {of.Device} goes; nothing shows it until the wire parts as well." : $"With its spring broken {of.Device} {row.Where.Split(':')[0]}; nothing shows it until the wire parts as well.", "Put the spring on the inspection list; a second spring removes the single failure.", [Theory]);
    }

    private static Finding? OfWireHold(Run run)
    {
        if (run.LeverEnd?.Swivel.HoldsBy is not { Count: > 0 } holds)
            return null;
        bool positive = holds.Any(h => h is Model.WireHold.BentTail or Model.WireHold.Crimp or Model.WireHold.LoopedEye), screw = holds.Contains(Model.WireHold.SetScrew);
        var glued = holds.Contains(Model.WireHold.Threadlocker);
        if (!positive)
        {
            return Say(
                WireHold, Verdict.Caution, screw ? $"A set screw{(glued ? " with threadlocker" : "")} alone holds the wire: hard wire is not bitten, and what friction held can let go." : "Threadlocker alone holds the wire.",
                "Bend the wire's tail over behind the fitting, or crimp a sleeve: a slip then ends in lost motion, not in a lost control.", [Practice, By("ac-43-13-1b-7-147(a)")]);
        }

        return Say(WireHold, Verdict.Clear, $"The wire is held by {Words(holds)}: what slips is caught.", screw && !glued ? "Secure the set screw with threadlocker where its grade stands the heat, and paint a line across." : "", [Practice]);
    }

    private static string Words(EquatableList<Model.WireHold> holds) => string.Join(" and ", holds.Select(h => h switch
    {
        Model.WireHold.SetScrew => "a set screw",
        Model.WireHold.Threadlocker => "threadlocker",
        Model.WireHold.BentTail => "a bent tail",
        Model.WireHold.Crimp => "a crimp",
        _ => "a looped eye",
    }));

    private static Finding? OfTest(string rule, Force? held, string what, ProveAnswer answer, FigureWriter say)
    {
        if (held is not { } force)
            return null;
        var wanted = answer.LimitForce * Published.Get("joint/fitting-factor").Value;
        return Say(
            rule, force.Newtons >= wanted ? Verdict.Clear : Verdict.Caution,
            $"{what} stood a pull of {say.Force(force.Newtons, Rounding.Down)}; wanted {say.Force(wanted)}, the limit force of {say.Force(answer.LimitForce)} with the fitting factor.",
            answer.IsChosen ? "" : "The limit force is a published figure for comparison; choose your own (installation.limitForce).",
            [By("23.625"), By("23.681"), answer.IsChosen ? Own : By("27.397(b)")]) with
        { Limit = new(wanted, QuantityKind.Force, true) };
    }

    /// <summary>Devices that hold by themselves; friction of a liquid or a washer is none.</summary>
    private static int Devices(Joint joint) =>
        joint.HeldBy.Count(h => h is JointLock.Cotter or JointLock.SelfLockingNut or JointLock.AllMetalNut or JointLock.SelfLockingCastleNut or JointLock.Lockwire or JointLock.SpringClip or JointLock.Structure);

    internal static Finding? OfJointLocks(Run run)
    {
        if (run.Installation?.Joint is not { HeldBy.Count: > 0 } joint)
            return null;
        bool Has(JointLock held) => joint.HeldBy.Contains(held);
        var devices = Devices(joint);
        bool friction = Has(JointLock.SelfLockingNut) || Has(JointLock.AllMetalNut);
        bool positive = Has(JointLock.Cotter) || Has(JointLock.Lockwire) || Has(JointLock.SpringClip) || Has(JointLock.Structure);
        if (joint.Kind == PinKind.ClevisPin && devices == 1 && Has(JointLock.Cotter))
            return Say(JointLocks, Verdict.Fail, "A clevis pin under load or motion is held by a cotter pin alone.", "Use a bolt with castle nut and cotter, or give the pin a second device.", [By("23.689(d)")]);
        if (joint.Turns && friction && !positive)
            return Say(JointLocks, Verdict.Fail, "The bolt turns in service and only a self-locking nut holds it.", "Castle nut and cotter; a self-locking castle nut with cotter gives two devices.", [By("23.607(c)"), By("ac-43-13-1b-7-64(a)")]);
        if (Has(JointLock.CastleNut) && !Has(JointLock.Cotter) && !Has(JointLock.Lockwire))
            return Say(JointLocks, Verdict.Fail, "A castle nut without cotter or wire holds nothing.", "", [By("ac-43-13-1b-7-38")]);
        if (devices == 0)
            return Say(JointLocks, Verdict.Fail, "Nothing locks the bolt: threadlocker, a check nut or a lock washer is no retaining device of its own.", "", [By("ac-43-13-1b-7-38")]);
        if (devices < 2 && run.Installation?.Critical == true)
            return Say(JointLocks, Verdict.Fail, "The control is critical and the joint has one retaining device; two are asked.", "A self-locking castle nut with cotter is two.", [By("23.607(a)")]);
        if (devices < 2 && run.Installation?.Critical is null && run.Function is ControlFunction.Throttle or ControlFunction.Mixture or ControlFunction.FuelShutoff or ControlFunction.EmergencyGear)
            return Say(JointLocks, Verdict.Caution, "The joint has one retaining device; two are asked where its loss would prevent continued safe flight. Say whether this control is critical.", "installation.critical", [By("23.607(a)")]);
        return Say(JointLocks, Verdict.Clear, $"The joint has {(devices, joint.Turns) switch { (1, true) => "one retaining device, a positive one", (1, false) => "one retaining device", (_, true) => $"{devices} retaining devices, one of them positive", _ => $"{devices} retaining devices" }}.", "New cotter pins and wire each time.", [By("23.607(a)"), By("ac-43-13-1b-7-38")]);
    }

    private static Finding? OfJointHeat(ProveCase of)
    {
        if (of.Run.Installation?.Joint is not { } joint || !joint.HeldBy.Contains(JointLock.SelfLockingNut) || of.JointHottest is not { } hottest)
            return null;
        var limit = Published.Get("joint/fibre-nut-hottest");
        return Say(
            JointHeat, hottest > limit.Value ? Verdict.Fail : Verdict.Clear,
            $"A fibre or nylon lock nut stands {FigureText.Plain(limit.Value, 0)} °C; its place gets {FigureText.Plain(hottest, 0)} °C hot.", hottest > limit.Value ? "An all-metal nut, or castle nut and cotter." : "",
            [By("ac-43-13-1b-7-64(f)")]) with
        { Limit = new(limit.Value, QuantityKind.Temperature, false) };
    }

    private static Finding? OfBearing(Run run, ProveAnswer answer, FigureWriter say)
    {
        if (answer.BearingAsked is not { } asked || run.Installation?.Joint is not { Bearing: { } bearing } joint)
            return null;
        return Say(
            JointBearing, asked <= bearing.Pascals ? Verdict.Clear : Verdict.Fail,
            $"With the device jammed and {say.Force(answer.LimitForce)} at the hand the joint needs {say.Text(QuantityKind.Stress, asked, Rounding.Up)} of bearing strength, 3.33 times its stress; {(joint.Material.Length > 0 ? joint.Material : "the softer part")} has {say.Text(QuantityKind.Stress, bearing.Pascals, Rounding.Down)}.",
            "The factor goes on limit load against ultimate bearing strength; no further 1.5. The hand's whole force is counted: friction on the way only lessens it.",
            [By("23.693"), answer.IsChosen ? Own : By("27.397(b)")]) with
        { Figure = "joint-bearing", Limit = new(bearing.Pascals, QuantityKind.Stress, false) };
    }

    /// <summary>The worst part speaks; the table has them all. The joint's bearing has a finding of its own.</summary>
    private static Finding? OfParts(ProveAnswer answer, FigureWriter say)
    {
        var counted = answer.Strength.Where(r => r.Verdict != Verdict.NeedsInput && !r.Part.Contains("on the pin", StringComparison.Ordinal)).ToList();
        if (counted.Count == 0)
            return null;
        var worst = counted.MaxBy(r => r.Verdict)!;
        var lacking = answer.Strength.Where(r => r.Verdict == Verdict.NeedsInput).ToList();
        return Say(
            Parts, worst.Verdict,
            worst.Verdict == Verdict.Clear ? $"With {say.Force(answer.LimitForce)} of the hand and the device jammed, {string.Join(", ", counted.Select(r => r.Part.Split(',')[0]))}: each stands what is asked."
                : $"With the device jammed, {worst.Part}: asked {worst.Asked}, it stands {worst.Stands}.",
            worst.Why + "." + (lacking.Count > 0 ? $" Not told, for want of input: {string.Join("; ", lacking.Select(r => $"{r.Part} ({string.Join(", ", r.Lacks)})"))}." : ""),
            worst.Sources);
    }

    private static Finding? OfJam(Run run, ProveAnswer answer, FigureWriter say)
    {
        if (run.Cable?.PullLimit is not { } pull)
            return null;
        var over = answer.LimitForce > pull.Newtons;
        return Say(
            Jam, over ? Verdict.Caution : Verdict.Clear,
            $"A hand that hauls at a jammed device with {say.Force(answer.LimitForce)} puts that into a core whose limit is {say.Force(pull.Newtons, Rounding.Down)}.",
            (over ? "The cable is the fuse then: replace it after any haul, or take a stronger one. " : "") + (answer.IsChosen ? "The force is your own choice; no US rule gives one for a push-pull control." : "The force is published for hand levers, for comparison; 14 CFR 25.405 leaves a push-pull control to you: choose it (installation.limitForce)."),
            [By("25.405"), answer.IsChosen ? Own : By("27.397(b)")]) with
        { Limit = new(pull.Newtons, QuantityKind.Force, false) };
    }

    private static Finding? OfAnchorGround(Run run) => run.Installation?.AnchorOn switch
    {
        Model.AnchorGround.FluidLine => Say(AnchorGround, Verdict.Fail, "The anchor stands on a fluid line: the control's forces go into the line.", "Anchor on structure or on the valve's own bracket.", [By("23.995(c)")]),
        { } on => Say(AnchorGround, Verdict.Clear, on == Model.AnchorGround.Structure ? "The anchor stands on structure: no force of the control goes into a line." : "The anchor stands on the device's own bracket; the device itself must be held by structure, not by its lines.", "", [By("23.995(c)")]),
        null => null,
    };

    private static Finding? OfFirewall(Run run)
    {
        if (run.Function != ControlFunction.FuelShutoff || run.Installation?.Side is not { } side)
            return null;
        return Say(Firewall, side == FirewallSide.Engine ? Verdict.Fail : Verdict.Clear, side == FirewallSide.Engine ? "The fuel shutoff sits on the engine side of the firewall." : "The fuel shutoff sits on the cabin side of the firewall.", "", [By("23.995(b)")]);
    }

    private static Finding? OfFire(Run run)
    {
        var mustWork = run.Function is ControlFunction.FuelShutoff || (run.Emergency && run.LeverEnd?.Zone == HeatZone.EngineBay);
        if (!mustWork || run.Installation?.ConduitFire is not { } fire)
            return null;
        var ahead = run.LeverEnd?.Zone == HeatZone.EngineBay || run.Installation?.Side == FirewallSide.Engine;
        if (!ahead)
            return Say(Fire, Verdict.Clear, "No part of the shutoff control lies in the engine compartment.", "", [By("23.1141(f)"), By("27.1189(c)")]);
        return fire == FireClass.NotStated
            ? Say(Fire, Verdict.Fail, "The control must work in a fire, and nothing is stated of its conduit in one.", "At least fire resistant; fireproof or protected is the stricter yardstick.", [By("23.1141(f)"), By("27.1189(c)")])
            : Say(Fire, fire == FireClass.Fireproof ? Verdict.Clear : Verdict.Caution, $"The control must work in a fire; its conduit is {(fire == FireClass.Fireproof ? "fireproof" : "fire resistant, the least that is asked")}.", "", [By("23.1141(f)"), By("27.1189(c)")]);
    }

    private static Finding? OfDistance(Run run, FigureWriter say)
    {
        if (run.Installation?.Near is not { Count: > 0 } near)
            return null;
        var limit = Published.Get("joint/wiring-distance");
        double Wanted(Neighbour n) => n.What == NeighbourKind.Wiring ? limit.Value : 0;
        var worst = near.MinBy(n => n.Distance.Metres - Wanted(n))!;
        var name = worst.What switch { NeighbourKind.Wiring => "a wire bundle", NeighbourKind.FuelLine => "a fuel line", NeighbourKind.Exhaust => "the exhaust", NeighbourKind.ControlCable => "another control's cable", _ => "its neighbour" };
        var wiring = worst.What == NeighbourKind.Wiring;
        return Say(
            Distance, worst.Distance.Metres <= 0 || worst.Distance.Metres < Wanted(worst) ? Verdict.Fail : Verdict.Clear,
            $"The cable comes within {say.Length(worst.Distance.Metres, Rounding.Down)} of {name}{(wiring ? $", wanted {say.Size(limit.Value)}" : "")}.", wiring ? "" : "No published distance was found; it must not touch anywhere in its travel.",
            wiring ? [limit.Source, By("23.685(a)")] : [By("23.685(a)")]) with
        { Limit = new(Wanted(worst), QuantityKind.Length, true) };
    }

    /// <summary>What the maker must state before a flexible control can be called suitable for its place.</summary>
    internal static IEnumerable<string> MakersLimitsLacking(Run run)
    {
        if (run.Cable?.PullLimit is null)
            yield return "cable.limits.pull";
        if (run.Cable?.PushLimit is null)
            yield return "cable.limits.push";
        if (run.Cable?.Conduit?.MinRadius is null)
            yield return "cable.conduit.minRadius";
        if (run.Installation?.CableHottest is null)
            yield return "installation.cableHottest";
    }

    private static Finding? OfSuitability(Run run) => run.Cable is null || MakersLimitsLacking(run).Any() ? null
        : Say(Suitable, Verdict.Clear, "The maker's limits for pull, push, bend and heat are in the file, and each is held against this run.", "A finding of its own tells each.", [By("23.1141(b)")]);

    private static Finding? OfOperationTest(Run run, FigureWriter say)
    {
        if (run.AsBuilt.MaxBy(a => a.Date, StringComparer.Ordinal) is not { } newest)
            return null;
        var whole = newest is { Pull: not null, Push: not null, KnobAtPush: not null, KnobAtPull: not null };
        return Say(
            Tested, whole ? Verdict.Clear : Verdict.Caution,
            whole ? $"Worked from the cockpit on {newest.Date}, both stops reached: pull {say.Force(newest.Pull!.Value.Newtons, Rounding.Nearest)}, push {say.Force(newest.Push!.Value.Newtons, Rounding.Nearest)}."
                : $"The readings of {newest.Date} lack {string.Join(", ", ((string[])[newest.KnobAtPush is null ? "the knob at the push stop" : "", newest.KnobAtPull is null ? "the knob at the pull stop" : "", newest.Pull is null ? "the pull" : "", newest.Push is null ? "the push" : ""]).Where(t => t.Length > 0))}: the operation test is not whole.",
            "From the seat, device connected and loaded, no jamming, no excessive friction or give; the stops at the device rule.",
            [By("23.683"), By("23.675"), By("23.1141(d)")]);
    }

    private static Finding? OfPeople(ProveCase of, FigureWriter say)
    {
        if (of is not { Pull: { } pull, Push: { } push } || !double.IsFinite(Math.Max(pull, push)))
            return null;
        var hand = of.Hand;
        double canPull = hand.Pull, canPush = hand.Push;
        var able = pull <= canPull && push <= canPush;
        return Say(
            People, able ? Verdict.Clear : Verdict.Caution,
            $"It takes up to {say.Force(pull)} to pull and {say.Force(push)} to push; {hand.Who} can give {say.Force(canPull, Rounding.Down)} and {say.Force(canPush, Rounding.Down)} for a moment{(of.Run.CockpitEnd?.Knob is KnobShape.Round or null ? ", finger and thumb" : "")}, wherever it sits in reach.",
            "For your own pilot: the force with a spring scale from the seat, belted, goes to pilot.strength.", [hand.PullFrom, hand.PushFrom]) with
        { Limit = new(canPull, QuantityKind.Force, false) };
    }
}
