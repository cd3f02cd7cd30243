using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Cushion;

/// <summary>The toleranced inputs of the travel ladder, in fixed order. SI units.</summary>
public enum LadderInput
{
    /// <summary>Knob's IN stop to its OUT stop, m.</summary>
    Stroke,

    /// <summary>Meaning by <see cref="SettingKind"/>: wire length, knob place or error of the balance, m.</summary>
    Setting,
    Radius,

    /// <summary>Arm angle at the push stop and at the pull stop, rad.</summary>
    PushAngle,
    PullAngle,

    /// <summary>Deviation of anchor against pivot along the three axes of <see cref="LadderCase.AnchorAxes"/>, m.</summary>
    AnchorX,
    AnchorY,
    AnchorZ,

    /// <summary>Deviation of the swivel's plane along the lever's axis, m.</summary>
    AlongAxis,

    /// <summary>Bore less core diameter, m.</summary>
    Clearance,

    /// <summary>Sum of the angles turned by the conduit, rad.</summary>
    BendTotal,

    /// <summary>Pin in the arm's hole, and shank against core, m.</summary>
    PinPlay,
    KnobPlay,

    /// <summary>Factor on the device's friction-like torque.</summary>
    TorqueFactor,

    /// <summary>Deviation of the device's own torque, N m: the same at both stops, whatever a spring winds up between them.</summary>
    OwnTorque,

    /// <summary>Knob movement per newton of wire force at the device, m/N.</summary>
    PullGive,
    PushGive,

    /// <summary>Winding of the pushed core, m.</summary>
    PushSlack,

    /// <summary>Conduit end tube beyond the anchor, and swivel fitting along the wire, m.</summary>
    Tip,
    SwivelLength,

    /// <summary>Length of the conduit, m: for heat.</summary>
    ConduitLength,

    /// <summary>Stretch by the core's own drag in the bends, whatever the device asks, m.</summary>
    OwnPull,
    OwnPush,
}

/// <summary>One toleranced input.</summary>
/// <param name="Path">JSON path within the run, for "which dimension to measure better"; empty for derived ones.</param>
public sealed record LadderValue(
    LadderInput Input, string Name, string Path, QuantityKind Kind, double Nominal, double Minus = 0, double Plus = 0, Spread Spread = Spread.Uniform)
{
    public double Least => Nominal - Minus;
    public double Most => Nominal + Plus;
    public bool IsExact => Minus == 0 && Plus == 0;
}

/// <summary>The few numbers that fix the travel ladder.</summary>
public sealed record LadderCase
{
    public static int InputCount { get; } = Enum.GetValues<LadderInput>().Length;

    /// <summary>All inputs in the order of <see cref="LadderInput"/>.</summary>
    public required EquatableList<LadderValue> Values { get; init; }
    public required SettingKind SettingKind { get; init; }
    public required bool SettingProposed { get; init; }

    /// <summary>Nominal anchor in arm axes (x along the arm at angle 0, z along the lever's axis), m.</summary>
    public required Vector3 Anchor { get; init; }

    /// <summary>Directions, in arm axes, of the three anchor deviations.</summary>
    public required (Vector3 X, Vector3 Y, Vector3 Z) AnchorAxes { get; init; }

    /// <summary>Friction-like torque of the device on arriving at each stop, N m, &gt;= 0.</summary>
    public required double TorqueAtPush { get; init; }
    public required double TorqueAtPull { get; init; }

    /// <summary>Torque of the device's own that opposes the arrival, N m; negative: it helps.</summary>
    public required double BiasAtPush { get; init; }
    public required double BiasAtPull { get; init; }

    /// <summary>Sign with which <see cref="LadderInput.OwnTorque"/> opposes the arrival; 0: the device has no torque of its own.</summary>
    public (double AtPush, double AtPull) OwnTorqueOpposes { get; init; }
    public required double DeviceDrag { get; init; }
    public Heat? Heat { get; init; }
    public required double Wanted { get; init; }
    public required EquatableList<string> NotCounted { get; init; }

    /// <summary>Words of <see cref="NotCounted"/> for what a file does not let be worked out: a figure of it would be a zero that nobody measured.</summary>
    public const string NoLostMotion = "lost motion by clearance in the bends", NoStretch = "stretch of cable and bracket under load", NoHeat = "heat and cold";

    public LadderValue this[LadderInput input] => Values[(int)input];
}

/// <summary>Temperature changes against rigging, K, and expansions, 1/K.</summary>
/// <param name="Wire">Expansion of the core.</param>
/// <param name="Conduit">Expansion of the conduit.</param>
/// <param name="Bracket">Expansion of what spans anchor and pivot.</param>
/// <param name="CableCold">Coldest less rigging, the cable; &lt;= 0.</param>
/// <param name="CableHot">Hottest less rigging, the cable; &gt;= 0.</param>
/// <param name="LeverCold">The same at the lever end.</param>
/// <param name="LeverHot">The same at the lever end.</param>
public sealed record Heat(
    double Wire, double Conduit, double Bracket, double CableCold, double CableHot, double LeverCold, double LeverHot)
{
    /// <summary>Ends of the published band of Bracket: one airframe's alloy or lay-up is not known.</summary>
    public double BracketLow { get; init; } = Bracket;
    public double BracketHigh { get; init; } = Bracket;

    /// <summary>What may govern the conduit's ends instead of its own expansion: the airframe's, where it lies nearly straight; null: curved.</summary>
    public double? ConduitOther { get; init; }

    /// <summary>Temperature of rigging, degC.</summary>
    public double Rigged { get; init; }

    /// <summary>How far a change of temperature moves the knob at a stop, m; outward is positive. Both ends: one airframe's expansion is not known.</summary>
    /// <param name="conduit">Its length, m.</param>
    /// <param name="free">Free wire at that stop, m.</param>
    /// <param name="change">K.</param>
    public Interval Moves(double conduit, double free, double change)
    {
        double own = (Wire - Conduit) * conduit * change, other = (Wire - (ConduitOther ?? Conduit)) * conduit * change;
        double low = (Wire - BracketLow) * free * change, high = (Wire - BracketHigh) * free * change;
        return new(Math.Min(own, other) + Math.Min(low, high), Math.Max(own, other) + Math.Max(low, high));
    }
}
