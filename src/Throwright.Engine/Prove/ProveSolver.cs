using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Prove;

/// <summary>Reasons each single failure through, and counts the joint. Theory: docs/theory/prove.md.</summary>
public static class ProveSolver
{
    private static readonly SourceRef Own = new("project", "your own figure, typed into the file", Evidence.CommonPractice);

    /// <summary>The hand's force that strength is counted for, N: chosen, else published for comparison.</summary>
    public static double LimitForce(Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return run.Installation?.LimitForce?.Newtons ?? Published.Get(run.CockpitEnd?.Knob is KnobShape.Round or null ? "joint/least-hand-load" : "joint/most-hand-load").Value;
    }

    public static ProveAnswer Solve(ProveCase of)
    {
        ArgumentNullException.ThrowIfNull(of);
        var chosen = of.Run.Installation?.LimitForce;
        var limit = LimitForce(of.Run);
        return new()
        {
            Failures = Failures(of).ToEquatableList(),
            LimitForce = limit,
            IsChosen = chosen is not null,
            BearingAsked = Bearing(of.Run.Installation?.Joint, limit),
            Strength = Strength.Of(of, limit, chosen is null ? Published.Rule("27.397(b)").Source : Own).ToEquatableList(),
            JamLoads = Strength.Loads(of, limit).ToEquatableList(),
            Operating = OperatingCheck.Of(of).ToEquatableList(),
            Waiting = Waiting(of).ToEquatableList(),
        };
    }

    /// <summary>Bearing stress of the thinner part at limit load times the factor of a push-pull joint, Pa.</summary>
    public static double? Bearing(Joint? joint, double limitForce) =>
        joint is { Diameter: { } d, Arm: { } arm }
            ? limitForce * Published.Get("joint/push-pull-factor").Value / (d.Metres * Math.Min(arm.Metres, joint.Swivel?.Metres ?? arm.Metres))
            : null;

    private static IEnumerable<FailureRow> Failures(ProveCase of)
    {
        var run = of.Run;
        var tail = run.LeverEnd?.Swivel.HoldsBy.Any(h => h is WireHold.BentTail or WireHold.Crimp or WireHold.LoopedEye) == true;
        yield return Loose(of, SingleFailure.WireParts, "The wire parts", "the knob moves freely and the device does not answer; pulled out, it may come out with the wire", "fatigue at the swivel or at the anchor: look for broken strands, a kink, rust at both ends of the conduit");
        yield return tail
            ? Loose(of, SingleFailure.SwivelSlips, "The swivel slips on the wire", "the knob stands elsewhere at the device's stop; the bent tail or crimp catches it in one direction", "the knob gaps change; the paint line across wire and swivel is broken")
            : Loose(of, SingleFailure.SwivelSlips, "The swivel slips on the wire", "lost motion that grows, then the knob moves freely", "the knob gaps change; the paint line across wire and swivel is broken");
        if (run.LeverEnd?.Swivel.HoldsBy.Contains(WireHold.SetScrew) == true)
        {
            yield return Loose(of, SingleFailure.ScrewBacksOut, "The set screw backs out", tail ? "lost motion; the tail or crimp still takes one direction" : "the knob moves freely and the device does not answer", "the paint line across the screw is broken; a key turns it");
        }

        yield return Loose(of, SingleFailure.JointComesApart, "The bolt or pin of swivel and arm is lost", "the knob moves freely and the device does not answer", "look for the cotter, the thread that shows, play of the swivel on its pin");
        yield return Loose(of, SingleFailure.AnchorSlips, "The conduit slips in its anchor", "the knob moves a long way before the device answers, or moves the conduit instead", "the paint line across conduit and anchor is broken; bright marks beside the clamp");
        yield return Stays(of, SingleFailure.ConduitMelts, "The conduit's liner or jacket softens", "the hand force rises, then the knob sticks", "brown or swollen jacket; pull force against the record");
        yield return Stays(of, SingleFailure.BracketBends, "The anchor's bracket bends", "the knob reaches its stop while the device is short of its own" + (of.BracketGives is { } g && of.LeastCushion is { } c && g > c ? "; under the limit force it gives more than the cushion" : ""), "the knob gaps change; look along the bracket while a second person pulls");
        if (of.WithoutSpring is { } without)
            yield return Row(of, SingleFailure.SpringBreaks, "The device's spring breaks", without, "the hand force changes; the device no longer returns by itself", "work the arm by hand with the wire off, or watch the hold force against the record");
        if (run.CockpitEnd is { Lock: not LockKind.None } end)
        {
            yield return Stays(of, SingleFailure.LockSticks, "The lock of the handle sticks", "the knob does not move", "work it at each inspection, cold and hot");
            var letsGo = end.Lock == LockKind.Friction ? "The friction lock lets go" : "The lock of the handle lets go";
            const string found = "set it half way, run the engine, look again";
            // The wire still hangs on: what the conduit takes away may be enough.
            yield return of.CableHolds == true && of.Loose.Way != LooseWay.NotKnown
                ? Row(of, SingleFailure.LockLetsGo, letsGo, new(LooseWay.Stays, "the friction of cable and device holds it; vibration may move it"), "the knob moves with less force than it used to", found)
                : Loose(of, SingleFailure.LockLetsGo, letsGo, "the knob creeps from its place", found);
        }

        foreach (var place in of.DeadPlaces)
            yield return Row(of, SingleFailure.AtDeadCentre, $"Nothing fails; the arm stands at the dead centre, {FigureText.Plain(place.Angle * 180 / Math.PI, 1)}°", place.Goes, "the knob moves a little and the device does not answer; then it may go either way", "work the arm through its whole sweep by the knob, with the device seen");
    }

    private static FailureRow Loose(ProveCase of, SingleFailure failure, string what, string feels, string found) => Row(of, failure, what, of.Loose, feels, found);

    private static FailureRow Stays(ProveCase of, SingleFailure failure, string what, string feels, string found) =>
        Row(of, failure, what, new(LooseWay.Stays, "nothing moves it"), feels, found);

    private static FailureRow Row(ProveCase of, SingleFailure failure, string what, LooseDevice goes, string feels, string found)
    {
        return new(failure, what, goes.Stop, Where(of, goes), IsSafe(of, goes), feels, found, Action(of.Run.Function));
    }

    /// <summary>Where it goes, from each side of a dead centre where there is one.</summary>
    internal static string Where(ProveCase of, LooseDevice goes)
    {
        string Ends(LooseWay way, string why) => way switch
        {
            LooseWay.ToPushStop => $"goes {ToEnd(of, DeviceStop.Push)}: {why}",
            LooseWay.ToPullStop => $"goes {ToEnd(of, DeviceStop.Pull)}: {why}",
            LooseWay.Stays => $"stays where it was: {why}",
            LooseWay.Rests => "goes to about the dead centre and rests there: beyond it its own torque no longer drives it",
            _ when goes is { Way: LooseWay.CannotTell, Maybe: { } stop } => $"stays, or goes {ToEnd(of, stop)}; which of the two can't be told: {why}",
            _ => $"can't be told: {why}",
        };
        return goes.Way == LooseWay.BySide
            ? string.Join("; ", goes.Stretches.Select(s => $"from {s.Name} it {Ends(s.Ends, s.Why)}"))
            : Ends(goes.Way, goes.Why) + (goes.Stretches.Count > 0 ? "; the same from every side of the dead centre" : "");
    }

    /// <summary>Is every end that it may come to the declared one; null: none declared, or it can't be told.</summary>
    private static bool? IsSafe(ProveCase of, LooseDevice goes)
    {
        if (of.Safe is null && !of.SafeAsSet)
            return null;
        bool? Of(LooseWay way) => way switch
        {
            LooseWay.ToPushStop => of.Safe == DeviceStop.Push,
            LooseWay.ToPullStop => of.Safe == DeviceStop.Pull,
            LooseWay.Stays => of.SafeAsSet,
            LooseWay.Rests => false,
            _ => null,
        };
        var ways = goes.Ways.Select(Of).ToList();
        return ways.Contains(false) ? false : ways.Contains(null) ? null : true;
    }

    internal static string ToEnd(ProveCase of, DeviceStop stop) => stop == DeviceStop.Push ? $"to its push stop ({of.PushEnd})" : $"to its pull stop ({of.PullEnd})";

    /// <summary>What is left to the pilot. To be agreed with the flight manual; no rule.</summary>
    private static string Action(ControlFunction function) => function switch
    {
        ControlFunction.Throttle => "fly with the power there is, plan a landing within reach; the engine is stopped by mixture, fuel or ignition",
        ControlFunction.Mixture => "keep the engine running as it is; stop it by fuel or ignition",
        ControlFunction.Propeller => "fly with the rpm there is, within its limits",
        ControlFunction.CarburettorHeat or ControlFunction.AlternateAir => "leave icing conditions; expect less power if it is hot",
        ControlFunction.CowlFlap => "watch temperatures; more speed, less power, richer",
        ControlFunction.CabinHeat => "other vents; watch for exhaust in the cabin",
        ControlFunction.FuelShutoff => "stop the engine by mixture or ignition; use another way to stop the fuel",
        ControlFunction.ParkingBrake => "test the brakes before landing; chocks on the ground",
        ControlFunction.WaterRudder => "steer by air rudder and power; land on water with care",
        ControlFunction.TailwheelLock => "steer by brakes and rudder",
        ControlFunction.CanopyLatch or ControlFunction.BaggageLatch => "slow down, fly straight, land",
        ControlFunction.EmergencyGear => "the normal way of the gear; else land with the gear as it is",
        _ => "continue without it; decide before flight what that means",
    };

    private static IEnumerable<NotSaid> Waiting(ProveCase of)
    {
        var run = of.Run;
        var more = run.Installation;
        if (run.Label.Length == 0)
            yield return new("label", "the name beside the knob");
        if (run.How.Length == 0)
            yield return new("how", "the words how it is worked");
        if (run.CockpitEnd is null or { KnobColour.Length: 0 })
            yield return new("cockpitEnd.knob.colour", "the colour of the knob");
        if (of.Safe is null && !of.SafeAsSet)
            yield return new("safeEnd", run.SafeEnd.Length == 0 ? "the safe end" : $"the safe end in the words of pushMeans or pullMeans, or \"as set\" (\"{run.SafeEnd}\" is neither)");
        if (run.LeverEnd is null or { Swivel.HoldsBy.Count: 0 })
            yield return new("leverEnd.swivel.holdsBy", "what holds the wire in its fitting");
        if (more?.Joint is not { HeldBy.Count: > 0 })
            yield return new("installation.joint.heldBy", "what keeps the joint's bolt in");
        if (ProveRules.NeedsGuard(run) && more?.Guard is null && run.CockpitEnd?.Lock is null or LockKind.None or LockKind.Friction)
            yield return new("installation.guard", "what guards it against being worked by mistake");
        if (run.Function == ControlFunction.FuelShutoff && more?.Side is null)
            yield return new("installation.side", "the side of the firewall");
        if (more?.AnchorOn is null)
            yield return new("installation.anchorOn", "what the anchor stands on");
        if (run.Cable is not null && ProveRules.MakersLimitsLacking(run).ToList() is { Count: > 0 } lacking)
            yield return new(string.Join(" and ", lacking), "the maker's limits of the cable");
        if (of.Run.Installation?.Strength is null)
            yield return new("installation.strength", "sizes and strengths of pin, arm, bracket and shank");
        if (more?.Legend is null)
            yield return new("installation.legend", "height of the lettering and distance of the eye");
    }
}
