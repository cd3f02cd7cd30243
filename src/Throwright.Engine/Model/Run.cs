using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Model;

/// <summary>One control from the pilot's hand to the device.</summary>
public sealed record Run
{
    /// <summary>Short name for files and commands: lower case, digits, hyphens.</summary>
    public required string Id { get; init; }

    /// <summary>The name as it will be engraved.</summary>
    public string Label { get; init; } = "";

    /// <summary>The method of operation as it will be engraved, e.g. PULL TO CLOSE.</summary>
    public string How { get; init; } = "";
    public ControlFunction Function { get; init; } = ControlFunction.Other;
    public bool Emergency { get; init; }

    /// <summary>What the device should do if the run fails, e.g. "open".</summary>
    public string SafeEnd { get; init; } = "";
    public string Note { get; init; } = "";

    /// <summary>Least knob and tip cushion wanted; null: the published default.</summary>
    public Length? CushionWanted { get; init; }

    /// <summary>Largest knob cushion wanted at either end; null: the published default.</summary>
    public Length? CushionMost { get; init; }

    /// <summary>The builder's own limit for the hand force; null: the yardstick's.</summary>
    public Force? HandForceMost { get; init; }
    public CockpitEnd? CockpitEnd { get; init; }
    public Cable? Cable { get; init; }
    public LeverEnd? LeverEnd { get; init; }
    public Installation? Installation { get; init; }

    /// <summary>Riggings and inspections, in the order of the file.</summary>
    public EquatableList<AsBuilt> AsBuilt { get; init; } = [];
}

public enum ControlFunction
{
    Other,
    Throttle,
    Mixture,
    Propeller,
    CarburettorHeat,
    AlternateAir,
    CowlFlap,
    CabinHeat,
    CabinAir,
    FuelShutoff,
    ParkingBrake,
    TailwheelLock,
    WaterRudder,
    CanopyLatch,
    BaggageLatch,
    EmergencyGear,
    Choke,
    Primer,
}

/// <summary>Knob or handle, shank, bushing and lock.</summary>
public sealed record CockpitEnd
{
    /// <summary>Travel of the knob from its IN stop to its OUT stop.</summary>
    public Toleranced<Length>? Stroke { get; init; }

    /// <summary>What the device does when the knob is pushed, e.g. "open".</summary>
    public string PushMeans { get; init; } = "";

    /// <summary>What the device does when the knob is pulled, e.g. "shut".</summary>
    public string PullMeans { get; init; } = "";
    public KnobShape Knob { get; init; } = KnobShape.Round;
    public string KnobColour { get; init; } = "";
    public LockKind Lock { get; init; } = LockKind.None;

    /// <summary>Axial force the lock holds; null: not known.</summary>
    public Force? LockHolds { get; init; }

    /// <summary>Free play of the shank against the core, along the travel.</summary>
    public Toleranced<Length>? Play { get; init; }

    /// <summary>The sheet that carries the bushing; null: not known.</summary>
    public Sheet? Sheet { get; init; }

    /// <summary>Middle of the bushing's hole on the sheet's face toward the pilot.</summary>
    public PointAt? Hole { get; init; }

    /// <summary>Lean of the shank; null: square to the sheet.</summary>
    public MountTilt? Tilt { get; init; }
    public KnobSize KnobSize { get; init; } = new();

    /// <summary>How far the knob turns; null: not told.</summary>
    public KnobTurn? Turns { get; init; }
    public Shank Shank { get; init; } = new();
    public Bushing? Bushing { get; init; }

    /// <summary>The wedge pair of a leaning shank; null: as usual.</summary>
    public WedgeWanted? Wedge { get; init; }

    /// <summary>Clearance wanted all round the handle in every position; null: the usual figure.</summary>
    public Length? Clear { get; init; }
}

public enum KnobShape
{
    /// <summary>Pinched or pulled with fingers.</summary>
    Round,

    /// <summary>Pulled with four fingers.</summary>
    THandle,

    /// <summary>A lever or quadrant handle gripped by the hand.</summary>
    LeverHandle,
}

public enum LockKind
{
    None,
    PressToRelease,
    Twist,
    Vernier,
    Friction,
}

/// <summary>Core wire and conduit.</summary>
public sealed record Cable
{
    public Core? Core { get; init; }
    public Conduit? Conduit { get; init; }

    /// <summary>Coefficient of friction of the core in the conduit, with its band.</summary>
    public Toleranced<Ratio>? Friction { get; init; }

    /// <summary>Length of the conduit, end to end.</summary>
    public Toleranced<Length>? Length { get; init; }

    /// <summary>Sum of all angles turned along the conduit; typed until a route gives it. Not together with Bends.</summary>
    public Toleranced<Angle>? BendTotal { get; init; }

    /// <summary>Bends one by one, from the device to the knob.</summary>
    public EquatableList<Bend> Bends { get; init; } = [];

    /// <summary>Longest straight stretch of the conduit.</summary>
    public Length? LongestStraight { get; init; }

    /// <summary>From the device to the knob.</summary>
    public EquatableList<Support> Supports { get; init; } = [];

    /// <summary>Where a support may sit: structure within reach.</summary>
    public EquatableList<PointAt> Places { get; init; } = [];
    public CableEnds? Ends { get; init; }

    /// <summary>Length of conduit that was ordered or delivered; null: nothing ordered yet.</summary>
    public Toleranced<Length>? Ordered { get; init; }

    /// <summary>The maker's limits for the core.</summary>
    public Force? PullLimit { get; init; }
    public Force? PushLimit { get; init; }

    /// <summary>Drag of seals and wipers at the knob end and at the device end.</summary>
    public Force KnobDrag { get; init; }
    public Force DeviceDrag { get; init; }

    /// <summary>Where these figures come from, in the builder's words.</summary>
    public string Source { get; init; } = "";
}

/// <summary>One bend: angle turned and radius to the conduit's centre line.</summary>
public sealed record Bend(Toleranced<Angle> Angle, Toleranced<Length> Radius);

public sealed record Core
{
    public CoreKind Kind { get; init; } = CoreKind.Solid;
    public required Toleranced<Length> Diameter { get; init; }
    public CoreMaterial Material { get; init; } = CoreMaterial.MusicWire;
}

public enum CoreKind
{
    Solid,
    Strand1x7,
    Strand1x19,
    Strand7x7,
    Strand7x19,
}

public enum CoreMaterial
{
    MusicWire,
    Stainless302,
}

public sealed record Conduit
{
    public Toleranced<Length>? Bore { get; init; }
    public ConduitMaterial Material { get; init; } = ConduitMaterial.CarbonSteel;

    public Toleranced<Length>? Outside { get; init; }

    /// <summary>The maker's least bend radius.</summary>
    public Length? MinRadius { get; init; }

    /// <summary>Stiffness against bending, core inside; null: not known, or from the table's edge.</summary>
    public Toleranced<BendingStiffness>? Bending { get; init; }
    public TableEdge? TableEdge { get; init; }

    /// <summary>Weight of conduit and core per length.</summary>
    public Toleranced<LineWeight>? Weight { get; init; }

    /// <summary>Stiffness of the whole conduit along its length when the core is pulled (conduit squeezed).</summary>
    public Toleranced<Stiffness>? PullStiffness { get; init; }

    /// <summary>Stiffness when the core is pushed (conduit drawn out): far softer for a plain coil.</summary>
    public Toleranced<Stiffness>? PushStiffness { get; init; }
}

public enum ConduitMaterial
{
    CarbonSteel,
    Stainless302,
}
