using Throwright.Shapes;

namespace Throwright.Engine.HandForce;

/// <summary>Forces from the device to the hand, over the whole sweep and both ways. Newtons, metres.</summary>
public sealed record HandForces
{
    /// <summary>One entry per place of the case, push stop first.</summary>
    public required EquatableList<ForceAtPlace> Places { get; init; }

    /// <summary>Largest nominal force to pull and to push, with its worst case, and the arm angle where it occurs.</summary>
    public required PeakForce MostPull { get; init; }
    public required PeakForce MostPush { get; init; }

    /// <summary>Largest tension and compression of the core anywhere, worst case.</summary>
    public required double CoreTension { get; init; }
    public required double CoreCompression { get; init; }

    /// <summary>Largest compression of the bare wire at the device, worst case.</summary>
    public required double BareWireCompression { get; init; }
    /// <summary>Largest push that some straight run of the conduit has to let out, worst case.</summary>
    public required double PushThrough { get; init; }
    public BareWire? BareWire { get; init; }
    public CoreInConduit? InConduit { get; init; }

    /// <summary>Does the device move by itself against friction and lock?</summary>
    public required SelfHolding SelfHolding { get; init; }

    /// <summary>Knob movement per newton at the device's end of the wire, m/N; null when not known.</summary>
    public Spread3? PullGive { get; init; }
    public Spread3? PushGive { get; init; }

    /// <summary>Knob movement by the core's own drag in the bends, whatever the device asks, m; null when not known.</summary>
    public Spread3? OwnPull { get; init; }
    public Spread3? OwnPush { get; init; }

    /// <summary>Shortening of the core by winding up inside the conduit when pushed at the push stop, m.</summary>
    public required Spread3 PushSlack { get; init; }

    /// <summary>What could not be counted.</summary>
    public required EquatableList<string> NotCounted { get; init; }
}

/// <summary>One arm angle. Wire* at the device, Knob* at the hand; positive resists, negative: the hand holds back.</summary>
public sealed record ForceAtPlace(
    double Angle, Spread3 WirePull, Spread3 WirePush, Spread3 KnobPull, Spread3 KnobPush, double BackDrive);

/// <summary>The largest force of one direction.</summary>
public sealed record PeakForce(double Nominal, double Worst, double Angle);

/// <summary>The bare wire as a strut.</summary>
/// <param name="Length">Conduit tip to pin, longest, m.</param>
/// <param name="Critical">Load at which it gives way, ends as pins, N.</param>
/// <param name="Compression">Largest compression, worst case, N.</param>
public sealed record BareWire(double Length, double Critical, double Compression)
{
    public double Margin => Compression > 0 ? Critical / Compression : double.PositiveInfinity;
}

/// <summary>The pushed core inside its conduit.</summary>
/// <param name="Snaking">Load at which it starts to snake in a straight level run, N.</param>
/// <param name="Helix">Load at which it winds into a helix, N.</param>
/// <param name="LockUp">Most that can come out of the longest straight run however hard one pushes, N.</param>
/// <param name="Straight">The length used, m.</param>
public sealed record CoreInConduit(double Snaking, double Helix, double LockUp, double Straight);

/// <summary>The load against what holds it, hand off, at the worst place. Newtons at the knob.</summary>
/// <param name="Drive">What reaches the knob with the least friction: positive moves it unless the lock holds.</param>
/// <param name="Lock">What the lock holds; null: there is one, what it holds is not known.</param>
/// <param name="TowardPush">It would move toward the push stop.</param>
/// <param name="Angle">Arm angle of the worst place, rad.</param>
/// <param name="AtDevice">Most that the load sends along the wire at the device; 0: the device's own friction holds it.</param>
public sealed record SelfHolding(double Drive, double? Lock, bool TowardPush, double Angle, double AtDevice)
{
    public bool Holds => Drive <= (Lock ?? 0);
}
