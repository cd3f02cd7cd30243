using Throwright.Engine.Model;
using Throwright.Shapes;

namespace Throwright.Engine.Prove;

/// <summary>Where a device goes that nothing holds any more.</summary>
public enum LooseWay
{
    ToPushStop,
    ToPullStop,

    /// <summary>Its own friction holds it where it was; vibration may move it.</summary>
    Stays,

    /// <summary>It comes to rest between the stops, where two stretches of its sweep meet.</summary>
    Rests,

    /// <summary>It depends on where it was: each stretch of the sweep has its own answer.</summary>
    BySide,

    /// <summary>Friction and bias are too near each other.</summary>
    CannotTell,

    /// <summary>What the device asks of the arm is not known yet.</summary>
    NotKnown,
}

/// <summary>Where it goes, and why.</summary>
public sealed record LooseDevice(LooseWay Way, string Why)
{
    public const string StrongerTorque = "its own torque is larger than its friction everywhere";
    public const string StrongerFriction = "its friction is larger than its own torque everywhere; vibration may move it";

    /// <summary>Stretches of the sweep between stops and dead centres, push stop first; empty: no dead centre.</summary>
    public EquatableList<LooseStretch> Stretches { get; init; } = [];

    /// <summary>Where it can't be told whether it goes or stays: the only stop it can go to; null: either, or it can be told.</summary>
    public DeviceStop? Maybe { get; init; }

    public DeviceStop? Stop => Way switch { LooseWay.ToPushStop => DeviceStop.Push, LooseWay.ToPullStop => DeviceStop.Pull, _ => null };

    /// <summary>Ends it can come to, one for each stretch where they differ.</summary>
    public IEnumerable<LooseWay> Ways => Stretches.Count > 0 ? Stretches.Select(s => s.Ends) : [Way];

    /// <summary>From the torque of the device's own against its friction, N m, both with their limits over the sweep.</summary>
    public static LooseDevice Of(DeviceStop toward, double biasLeast, double biasMost, double frictionLeast, double frictionMost) =>
        biasLeast > frictionMost
            ? new(toward == DeviceStop.Push ? LooseWay.ToPushStop : LooseWay.ToPullStop, StrongerTorque)
            : biasMost < frictionLeast
                ? new(LooseWay.Stays, biasMost > 0 ? StrongerFriction : "nothing drives it; vibration may move it")
                : new(LooseWay.CannotTell, "its friction and its own torque are too near each other to tell") { Maybe = toward };

    /// <summary>
    /// The whole sweep from its stretches, push stop first. A loose device knows no dead centre: what drives it out of one
    /// stretch drives it into the next, where it goes on, stays or is turned back.
    /// </summary>
    public static LooseDevice OfStretches(IReadOnlyList<(string Name, LooseDevice Goes)> stretches)
    {
        ArgumentNullException.ThrowIfNull(stretches);
        var list = stretches.Select((s, i) => new LooseStretch(s.Name, s.Goes.Way, s.Goes.Why, EndsOf(stretches, i))).ToEquatableList();
        var same = list.Select(s => s.Ends).Distinct().Count() == 1 && list.Select(s => s.Why).Distinct().Count() == 1;
        return same
            ? stretches[0].Goes with { Way = list[0].Ends, Stretches = list }
            : list.Any(s => s.Ends is LooseWay.NotKnown) ? new(LooseWay.NotKnown, list.First(s => s.Ends is LooseWay.NotKnown).Why)
            : new(LooseWay.BySide, "each side of the dead centre has its own answer") { Stretches = list };
    }

    private static LooseWay EndsOf(IReadOnlyList<(string Name, LooseDevice Goes)> stretches, int from)
    {
        var way = stretches[from].Goes.Way;
        if (way is not (LooseWay.ToPushStop or LooseWay.ToPullStop))
            return way;
        var step = way == LooseWay.ToPushStop ? -1 : 1;
        for (var i = from + step; i >= 0 && i < stretches.Count; i += step)
        {
            if (stretches[i].Goes.Way is LooseWay.CannotTell or LooseWay.NotKnown)
                return stretches[i].Goes.Way;
            if (stretches[i].Goes.Way != way)
                return LooseWay.Rests;
        }

        return way;
    }
}

/// <summary>One stretch of the sweep between stops and dead centres.</summary>
/// <param name="Name">"the push stop's side (open)".</param>
/// <param name="Way">What its own torque does within this stretch.</param>
/// <param name="Ends">Where it comes to rest at last, having started here.</param>
public sealed record LooseStretch(string Name, LooseWay Way, string Why, LooseWay Ends);

/// <summary>A dead centre inside the sweep: the arm's angle, and what the device's own torque does to an arm that stands there.</summary>
public sealed record DeadPlace(double Angle, LooseDevice Goes);
