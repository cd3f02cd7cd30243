using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Model;

/// <summary>What rules of installation ask of a run beyond its geometry. What is not known is null or empty.</summary>
public sealed record Installation
{
    /// <summary>Losing this control would prevent continued safe flight and landing; null: not said.</summary>
    public bool? Critical { get; init; }

    /// <summary>What keeps the control from being worked by mistake; null: not said.</summary>
    public GuardKind? Guard { get; init; }

    /// <summary>Force of the hand the control is built for, the device jammed; null: a published figure for comparison.</summary>
    public Force? LimitForce { get; init; }

    /// <summary>Which side of the firewall the device sits on; null: not said.</summary>
    public FirewallSide? Side { get; init; }
    public Joint? Joint { get; init; }

    /// <summary>Pull that the wire stood in its fitting, and the conduit in its anchor, when tested; null: not tested.</summary>
    public Force? SwivelHeld { get; init; }
    public Force? AnchorHeld { get; init; }
    public AnchorGround? AnchorOn { get; init; }
    public FireClass? ConduitFire { get; init; }

    /// <summary>Liner of the conduit, as a material of the table of plastics; empty: none or not said.</summary>
    public string Liner { get; init; } = "";

    /// <summary>Highest temperature its maker states for the cable; null: not stated.</summary>
    public Temperature? CableHottest { get; init; }
    public Legend? Legend { get; init; }
    public EquatableList<Neighbour> Near { get; init; } = [];

    /// <summary>Plastic and other parts to be held against the temperature of their place.</summary>
    public EquatableList<InstalledPart> Parts { get; init; } = [];

    /// <summary>Sizes and strengths of the parts that stand a jammed device; null: not given.</summary>
    public PartStrengths? Strength { get; init; }
}

/// <summary>What strength of pin, arm, bracket and shank is counted by, beyond their sizes elsewhere. What is not known is null.</summary>
public sealed record PartStrengths
{
    /// <summary>Arm or fitting is a fork: the pin is cut in two places.</summary>
    public bool Forked { get; init; }

    /// <summary>Ultimate shear strength of the pin; null: that of the AN bolt of its diameter, where published.</summary>
    public Stress? PinShear { get; init; }

    /// <summary>Width of the arm in its plane of turning, where it meets its hub.</summary>
    public Length? ArmWidth { get; init; }

    /// <summary>Middle of the hole in use to the arm's nearest edge.</summary>
    public Length? ArmEdge { get; init; }
    public Stress? ArmYield { get; init; }
    public Stress? BracketYield { get; init; }
    public Stress? ShankYield { get; init; }
}

/// <summary>What the aircraft is measured by.</summary>
public enum Basis
{
    AmateurBuilt,

    /// <summary>14 CFR Part 23 in the text before Amendment 64.</summary>
    Part23,

    /// <summary>Civil Air Regulations, Part 3: its text is not in the project's data.</summary>
    Car3,
}

public enum GuardKind
{
    None,
    Cover,
    Gate,
    Button,
    Twist,
}

public enum FirewallSide
{
    Cabin,
    Engine,
}

public enum AnchorGround
{
    Structure,

    /// <summary>A bracket on the device itself.</summary>
    DeviceBracket,
    FluidLine,
}

public enum FireClass
{
    NotStated,
    FireResistant,
    Fireproof,
}

/// <summary>The joint of swivel and arm.</summary>
public sealed record Joint
{
    public PinKind Kind { get; init; } = PinKind.Bolt;

    /// <summary>The bolt or pin turns in service.</summary>
    public bool Turns { get; init; }
    public Length? Diameter { get; init; }

    /// <summary>Thickness of the arm, and of the swivel on the pin.</summary>
    public Length? Arm { get; init; }
    public Length? Swivel { get; init; }

    /// <summary>Ultimate bearing strength of the softer of the two.</summary>
    public Stress? Bearing { get; init; }
    public string Material { get; init; } = "";
    public EquatableList<JointLock> HeldBy { get; init; } = [];
}

public enum PinKind
{
    Bolt,
    ClevisPin,
}

public enum JointLock
{
    Cotter,

    /// <summary>Fibre or nylon.</summary>
    SelfLockingNut,
    AllMetalNut,
    CastleNut,
    SelfLockingCastleNut,
    Lockwire,
    LockWasher,
    CheckNut,
    Threadlocker,
    SpringClip,

    /// <summary>Structure beside it keeps it in.</summary>
    Structure,
}

/// <summary>The lettering beside the knob.</summary>
public sealed record Legend(Length Height, Length Distance, bool LightOnDark);

/// <summary>Something the cable must keep clear of.</summary>
public sealed record Neighbour(NeighbourKind What, Length Distance);

public enum NeighbourKind
{
    Wiring,
    FuelLine,
    Exhaust,
    ControlCable,
    Other,
}

/// <summary>A part held against the heat of its place.</summary>
/// <param name="Clamped">It is clamped by a nut or carries load, so it must not creep.</param>
public sealed record InstalledPart(string Name, string Material, PartPlace Place, bool Clamped);

public enum PartPlace
{
    Cabin,

    /// <summary>Panel face, glareshield: in the sun.</summary>
    Sunlit,
    EngineBay,
    Elsewhere,
}
