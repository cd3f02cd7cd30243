using Throwright.Engine.Chain;
using Throwright.Engine.Findings;

namespace Throwright.Web.Parts;

/// <summary>The parts of a run that one would touch, from the device to the knob: the way through a run's page.</summary>
/// <param name="Key">As it stands in the address.</param>
/// <param name="Paths">Members of the run that belong to it.</param>
/// <param name="Rules">Rules whose findings are shown at it.</param>
/// <param name="Help">How its figures are found, in two sentences.</param>
public sealed record ChainPart(string Key, string Name, IReadOnlyList<string> Paths, IReadOnlyList<string> Rules, string Help)
{
    public static IReadOnlyList<ChainPart> All { get; } =
    [
        new("device", "Device", ["leverEnd.sweep", "leverEnd.load", "leverEnd.zone", "leverEnd.valve"], ["force/hand", "force/self-hold", "cushion/valve"],
            "Turn the device by hand from stop to stop and read the angle with a protractor on the arm. Then hook a spring scale into the arm's hole, pull square to the arm and multiply by the radius: that is the torque."),
        new("arm", "Arm", ["leverEnd.arm", "leverEnd.pivot", "leverEnd.axis", "leverEnd.swivel"], ["throw/dead-centre", "throw/transmission", "cushion/setting"],
            "Measure from the centre of the pivot to the centre of the hole in use, with calipers. Where the swivel sits on the wire is set when the run is rigged: write down how far the knob stands out with the device on its stop."),
        new("anchor", "Anchor and tip", ["leverEnd.anchor", "leverEnd.bench"], ["throw/swing", "throw/wire-bend", "cushion/tip", "force/bare-wire"],
            "The anchor is what holds the conduit's end. Measure from it to the swivel along the wire with the arm in the middle of its sweep, and how far the end tube sticks out toward the arm."),
        new("conduit", "Conduit", ["cable"], ["cable/", "force/core-pull", "force/core-push", "force/lock-up", "route/"],
            "Diameter of the wire with a micrometer; bore with drill shanks as gauges. Add up the bends from the device to the knob, each with its radius. The maker's sheet gives least radius and limits."),
        new("sheet", "Sheet and mount", ["cockpitEnd.sheet", "cockpitEnd.hole", "cockpitEnd.tilt", "cockpitEnd.shank", "cockpitEnd.bushing", "cockpitEnd.wedge", "cockpitEnd.clear", "cockpitEnd.mount"], ["clearance/", "mount/"],
            "The sheet carries the bushing with its nut; it is described once for the aircraft. Measure to the middle of the hole on the face toward the pilot, and how far the shank stands out with the knob pushed in."),
        new("knob", "Knob", ["cockpitEnd", "cushion", "handForceMost"], ["cushion/knob-in", "cushion/knob-out", "cushion/most"],
            "Pull the knob out to its stop and measure the shank: that is the stroke. What pushing and pulling does, and the lock, stand on the placard."),
    ];

    /// <summary>What belongs to the run as a whole.</summary>
    public static ChainPart About { get; } = new("about", "About this run", [], [], "Name and method as they will be engraved, what the control does, and where the device should be if the run fails.");

    public static ChainPart? Find(string? key) => All.Append(About).FirstOrDefault(p => p.Key == key);

    /// <summary>The part that a path within the run belongs to: the longest that fits.</summary>
    public static ChainPart Of(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return All.SelectMany(p => p.Paths.Select(q => (Part: p, Path: q)))
            .Where(x => path == x.Path || path.StartsWith(x.Path + ".", StringComparison.Ordinal) || path.StartsWith(x.Path + "[", StringComparison.Ordinal))
            .OrderByDescending(x => x.Path.Length).Select(x => x.Part).FirstOrDefault() ?? About;
    }

    /// <summary>The part at which a finding is shown.</summary>
    public static ChainPart Of(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return RuleBook.NeedIn(finding.Rule) is { } path
            ? Of(path)
            : All.FirstOrDefault(p => p.Rules.Any(r => finding.Rule.StartsWith(r, StringComparison.Ordinal))) ?? All[^1];
    }

    /// <summary>The worst verdict at this part; null: nothing is said of it.</summary>
    public Verdict? VerdictIn(RunAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var own = answer.Findings.Where(f => Of(f) == this).ToList();
        return own.Count == 0 ? null : own.Max(f => f.Verdict);
    }
}
