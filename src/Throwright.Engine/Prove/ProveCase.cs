using Throwright.Engine.Model;

namespace Throwright.Engine.Prove;

/// <summary>What the rules of installation need to know of one run.</summary>
public sealed record ProveCase
{
    public required Run Run { get; init; }

    /// <summary>"the cowl flap"; what it does at its push and at its pull stop.</summary>
    public required string Device { get; init; }
    public required string PushEnd { get; init; }
    public required string PullEnd { get; init; }

    /// <summary>The stop that the declared safe end names; null: none declared, or it names neither stop.</summary>
    public DeviceStop? Safe { get; init; }

    /// <summary>The safe end is declared "as set": the device shall stay where it was.</summary>
    public bool SafeAsSet { get; init; }
    public required LooseDevice Loose { get; init; }

    /// <summary>The same with its spring broken; null: no spring.</summary>
    public LooseDevice? WithoutSpring { get; init; }

    /// <summary>Largest hand force of normal use, worst case, N; null: not worked out. Pull and push.</summary>
    public double? Pull { get; init; }
    public double? Push { get; init; }

    /// <summary>Highest temperature where the joint sits, degC; null: not known.</summary>
    public double? JointHottest { get; init; }

    /// <summary>Smallest cushion at the knob, worst case, m; null: no ladder.</summary>
    public double? LeastCushion { get; init; }

    /// <summary>How far the anchor's bracket gives under the limit force, m; null: stiffness not known.</summary>
    public double? BracketGives { get; init; }
}

/// <summary>Where a device goes that nothing holds any more.</summary>
public enum LooseWay
{
    ToPushStop,
    ToPullStop,

    /// <summary>Its own friction holds it where it was; vibration may move it.</summary>
    Stays,

    /// <summary>Friction and bias are too near each other.</summary>
    CannotTell,

    /// <summary>What the device asks of the arm is not known yet.</summary>
    NotKnown,
}

/// <summary>Where it goes, and why.</summary>
public sealed record LooseDevice(LooseWay Way, string Why)
{
    public DeviceStop? Stop => Way switch { LooseWay.ToPushStop => DeviceStop.Push, LooseWay.ToPullStop => DeviceStop.Pull, _ => null };

    /// <summary>From the torque of the device's own against its friction, N m, both with their limits over the sweep.</summary>
    public static LooseDevice Of(DeviceStop toward, double biasLeast, double biasMost, double frictionLeast, double frictionMost) =>
        biasLeast > frictionMost
            ? new(toward == DeviceStop.Push ? LooseWay.ToPushStop : LooseWay.ToPullStop, "its own torque is larger than its friction everywhere")
            : biasMost < frictionLeast
                ? new(LooseWay.Stays, biasMost > 0 ? "its friction is larger than its own torque everywhere; vibration may move it" : "nothing drives it; vibration may move it")
                : new(LooseWay.CannotTell, "its friction and its own torque are too near each other to tell");
}
