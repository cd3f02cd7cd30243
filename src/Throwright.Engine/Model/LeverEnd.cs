using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Model;

/// <summary>Anchor, free wire, swivel, arm and device. Either Bench or Placed is given, or neither is known yet.</summary>
public sealed record LeverEnd
{
    /// <summary>Pivot to the hole in use.</summary>
    public Toleranced<Length>? Radius { get; init; }

    /// <summary>Pivot to each hole that the arm has.</summary>
    public EquatableList<Length> Holes { get; init; } = [];

    /// <summary>Across the arm at its holes; null: not measured.</summary>
    public Toleranced<Length>? ArmWidth { get; init; }

    /// <summary>Arm angle at the device's two stops, turning right-handed about the axis; From &lt; To.</summary>
    public Toleranced<Angle>? From { get; init; }
    public Toleranced<Angle>? To { get; init; }
    public BenchAnchor? Bench { get; init; }
    public PlacedAnchor? Placed { get; init; }

    /// <summary>Conduit end tube beyond the anchor, toward the arm.</summary>
    public Toleranced<Length> Tip { get; init; }

    /// <summary>Angle by which the end tube can swivel to each side; zero: it is fixed and the wire bends.</summary>
    public Angle TipSwivels { get; init; }

    /// <summary>Stiffness of the anchor's bracket along the wire; null: not known.</summary>
    public Toleranced<Stiffness>? BracketStiffness { get; init; }

    /// <summary>The bracket that carries the anchor, where it is to be made; null: not described.</summary>
    public AnchorBracket? Bracket { get; init; }
    public Swivel Swivel { get; init; } = new();
    public DeviceLoad? Load { get; init; }
    public HeatZone Zone { get; init; } = HeatZone.Elsewhere;
    public QuarterTurnValve? Valve { get; init; }
}

/// <summary>The lever end measured on a bench, no coordinates.</summary>
/// <remarks>
/// Arm angle 0 is the arm square to the line from arm to anchor; positive turns it away from the anchor. Distance is
/// measured along that line from the swivel at angle 0 (mid travel for the rules that name a place), so the anchor stands
/// at (offset, -distance) in axes (along the arm at 0, away from the anchor).
/// </remarks>
public sealed record BenchAnchor
{
    public required Toleranced<Length> Distance { get; init; }
    public required AnchorRule Rule { get; init; }

    /// <summary>Pivot to the wire's line, along the arm at angle 0; only with <see cref="AnchorRule.Offset"/>.</summary>
    public Toleranced<Length>? Offset { get; init; }
}

public enum AnchorRule
{
    /// <summary>Wire square to the arm at mid travel: offset = radius.</summary>
    SquareAtMid,

    /// <summary>Anchor on the line through the swivel's two end places: offset = radius x cos(half sweep).</summary>
    Chord,

    /// <summary>Half way between the two: the swing is nearly the same to both sides.</summary>
    HalfSagitta,

    /// <summary>Offset measured.</summary>
    Offset,
}

/// <summary>The lever end in aircraft axes.</summary>
public sealed record PlacedAnchor
{
    /// <summary>A point on the lever's axis.</summary>
    public required PointAt Pivot { get; init; }

    /// <summary>Axis of the lever; angles turn right-handed about it.</summary>
    public required DirectionAt Axis { get; init; }

    /// <summary>Direction of the arm, pivot to hole, at arm angle 0. Its part along the axis is ignored.</summary>
    public required DirectionAt Zero { get; init; }

    /// <summary>Distance of the swivel from the pivot point along the axis.</summary>
    public Toleranced<Length> AlongAxis { get; init; }

    /// <summary>Where the anchor holds the conduit.</summary>
    public required PointAt Anchor { get; init; }

    /// <summary>Direction in which the conduit's end points, out of the conduit toward the arm; null: at the swivel at mid travel.</summary>
    public DirectionAt? Along { get; init; }
}

/// <summary>The wire-end fitting in the arm's hole, and where it sits on the wire.</summary>
public sealed record Swivel
{
    /// <summary>Length of the fitting along the wire, centred on its pin.</summary>
    public Toleranced<Length> Length { get; init; }

    /// <summary>Clearance of the pin in the arm's hole (difference of diameters).</summary>
    public Toleranced<Length>? Play { get; init; }

    /// <summary>Wire length from the conduit's end at the anchor to the pin, knob pushed fully in.</summary>
    public Toleranced<Length>? At { get; init; }

    /// <summary>A knob place measured with the device held lightly against a stop.</summary>
    public RiggedPlace? Rigged { get; init; }
    public EquatableList<WireHold> HoldsBy { get; init; } = [];
}

/// <summary>Knob place above its IN stop, with the device on its push or pull stop and no more than a light hand on the knob.</summary>
public sealed record RiggedPlace(DeviceStop Stop, Toleranced<Length> KnobOut);

public enum DeviceStop
{
    /// <summary>Where pushing the knob takes the device.</summary>
    Push,

    /// <summary>Where pulling the knob takes the device.</summary>
    Pull,
}

public enum WireHold
{
    SetScrew,
    Threadlocker,
    BentTail,
    Crimp,
    LoopedEye,
}

/// <summary>What the device asks of the arm.</summary>
public sealed record DeviceLoad
{
    /// <summary>Friction-like torque that resists motion both ways; one value, or values over the arm angle.</summary>
    public Toleranced<Torque>? Torque { get; init; }
    public EquatableList<TorqueAt> TorqueTable { get; init; } = [];

    /// <summary>Torque by which the device moves by itself (spring, pressure, weight).</summary>
    public DeviceBias? Bias { get; init; }
    public EquatableList<Detent> Detents { get; init; } = [];

    /// <summary>The torque was measured on the device; false: an estimate, or not said.</summary>
    public bool Measured { get; init; }
}

public sealed record TorqueAt(Angle Arm, Toleranced<Torque> Torque);

/// <summary>Torque toward one stop: constant, or a spring whose torque grows as the arm moves away from that stop.</summary>
public sealed record DeviceBias
{
    public required DeviceStop Toward { get; init; }

    /// <summary>Torque at the stop it pulls toward.</summary>
    public required Toleranced<Torque> Torque { get; init; }

    /// <summary>Added torque per angle away from that stop.</summary>
    public TorsionRate Rate { get; init; }

    /// <summary>The bias is a spring (it can break; weight and pressure can't).</summary>
    public bool Spring { get; init; }
}

/// <summary>A place where the device wants to rest: torque toward At, greatest half way to Within.</summary>
public sealed record Detent(Angle At, Torque Torque, Angle Within);

public enum HeatZone
{
    Cabin,
    EngineBay,
    Elsewhere,
}

/// <summary>A ball or plug valve, so that a shortfall of angle can be told in flow.</summary>
public sealed record QuarterTurnValve
{
    /// <summary>Radius of the bore over radius of the ball, between 0 and 0.7071.</summary>
    public required double BoreRatio { get; init; }

    /// <summary>Which stop is fully open.</summary>
    public required DeviceStop Open { get; init; }

    /// <summary>Loss coefficient of the rest of the line, on the velocity in the bore.</summary>
    public double LineLoss { get; init; } = 5;
}
