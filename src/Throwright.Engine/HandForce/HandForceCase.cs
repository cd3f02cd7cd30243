using Throwright.Engine.Model;
using Throwright.Shapes;

namespace Throwright.Engine.HandForce;

/// <summary>What the hand has to overcome. SI units; a null is not known.</summary>
public sealed record HandForceCase
{
    /// <summary>The device's sweep from its push stop to its pull stop.</summary>
    public required EquatableList<DevicePlace> Places { get; init; }
    public required DeviceLoad Load { get; init; }

    /// <summary>Coefficient of friction: nominal and limits.</summary>
    public required Spread3 Friction { get; init; }

    /// <summary>Bends from the device to the knob; nominal radii.</summary>
    public required EquatableList<BendOnWay> Bends { get; init; }

    /// <summary>Limits of the bend total as factors on the nominal angles.</summary>
    public required Spread3 BendFactor { get; init; }

    /// <summary>Bends are known one by one with their radii: the stiff core's own drag can be counted.</summary>
    public required bool BendsAreKnown { get; init; }
    public required double KnobDrag { get; init; }
    public required double DeviceDrag { get; init; }

    /// <summary>Force the knob's lock holds, N; 0 without a lock, null: there is one, what it holds is not known.</summary>
    public required double? LockHolds { get; init; }
    public CoreProperties? Core { get; init; }

    /// <summary>Radial clearance is half of this: bore less core diameter, m.</summary>
    public double? Clearance { get; init; }

    /// <summary>Its limits; null: as nominal.</summary>
    public Spread3? ClearanceLimits { get; init; }

    /// <summary>Limits of each bend's angle, rad; empty: by <see cref="BendFactor"/>.</summary>
    public EquatableList<Spread3> AngleLimits { get; init; } = [];

    /// <summary>Limits of each bend's radius, m; empty: as nominal.</summary>
    public EquatableList<Spread3> RadiusLimits { get; init; } = [];

    /// <summary>By how much a load that is only an estimate may be larger, as a factor on its most; 1: measured.</summary>
    public double EstimateFactor { get; init; } = 1;
    public Spread3? ConduitLength { get; init; }
    public double? LongestStraight { get; init; }

    /// <summary>Longest bare wire between conduit tip and swivel, m.</summary>
    public double? LongestBareWire { get; init; }
    public Spread3? ConduitPullStiffness { get; init; }
    public Spread3? ConduitPushStiffness { get; init; }
    public Spread3? BracketStiffness { get; init; }
}

/// <summary>A value with its least and most.</summary>
public readonly record struct Spread3(double Nominal, double Least, double Most)
{
    public static Spread3 Exact(double value) => new(value, value, value);
}

/// <summary>One arm angle: free wire (m) and moment arm (m/rad) with its limits over the geometry's tolerances.</summary>
public readonly record struct DevicePlace(double Angle, double FreeLength, Spread3 MomentArm);

/// <summary>Elastic properties of the core.</summary>
/// <param name="Modulus">Pa; for a strand the effective modulus of its metal area.</param>
/// <param name="BendingModulus">Pa: of the single wire.</param>
/// <param name="Tensile">Least tensile strength of the wire, Pa; null: not tabulated for this size.</param>
/// <param name="ElasticShare">Share of the tensile strength up to which the wire springs back.</param>
/// <param name="WeightPerLength">N/m.</param>
public sealed record CoreProperties(
    double Diameter, double WireDiameter, double Modulus, double BendingModulus, CoreSection Section, double? Tensile, double ElasticShare, double WeightPerLength)
{
    public double BendingStiffness => BendingModulus * Section.SecondMoment;
    public double AxialStiffness => Modulus * Section.Area;

    /// <summary>Limits by the diameter's tolerance and, for a strand, the band of its modulus; null: as nominal.</summary>
    public Spread3? BendingLimits { get; init; }
    public Spread3? AxialLimits { get; init; }
    internal Spread3 Bending => BendingLimits ?? Spread3.Exact(BendingStiffness);
    internal Spread3 Axial => AxialLimits ?? Spread3.Exact(AxialStiffness);
}
