using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Model;

/// <summary>What holds the conduit on its way.</summary>
public sealed record Support
{
    public required PointAt Place { get; init; }

    /// <summary>The line of the conduit through a clamp, either way round; null: it turns with the conduit until it is tightened.</summary>
    public DirectionAt? Along { get; init; }
    public SupportHold Kind { get; init; } = SupportHold.TightClamp;

    /// <summary>Inside diameter of the clamp or grommet.</summary>
    public Length? Size { get; init; }

    /// <summary>Conduit from the anchor to here, where a tight clamp was closed at a mark; null: where it settled by itself.</summary>
    public Toleranced<Length>? FromAnchor { get; init; }

    /// <summary>A new route keeps it; null: only where it is a grommet, since a hole does not move.</summary>
    public bool? Stays { get; init; }

    public bool IsKept => Stays ?? Kind == SupportHold.Grommet;
}

public enum SupportHold
{
    /// <summary>Grips the conduit.</summary>
    TightClamp,

    /// <summary>Holds place and direction; the conduit slides along.</summary>
    SlidingClamp,

    /// <summary>Holds the place only.</summary>
    Grommet,
}

/// <summary>Where the conduit begins, what of conduit and wire sits in the fittings, and how lengths are ordered.</summary>
public sealed record CableEnds
{
    /// <summary>Where the conduit leaves the cockpit end.</summary>
    public PointAt? Leaves { get; init; }

    /// <summary>Direction in which it does, toward the device.</summary>
    public DirectionAt? LeavesAlong { get; init; }

    /// <summary>Where the conduit arrives at the anchor of a lever end on a bench; null: the anchor in coordinates says it.</summary>
    public PointAt? Arrives { get; init; }

    /// <summary>Direction in which it does, toward the arm.</summary>
    public DirectionAt? ArrivesAlong { get; init; }

    /// <summary>Conduit inside the bushing and inside the anchor, beyond the points where the free conduit begins and ends.</summary>
    public Length InBushing { get; init; }
    public Length InAnchor { get; init; }

    /// <summary>Wire inside the knob's shank, and beyond the swivel's pin.</summary>
    public Length WireInKnob { get; init; }
    public Length WireBeyondPin { get; init; }

    /// <summary>Wire to cut off at fitting; null: the published figure.</summary>
    public Length? Trimming { get; init; }

    /// <summary>Cables are ordered in whole multiples of this; null: the published figure.</summary>
    public Length? OrderStep { get; init; }

    /// <summary>Where the anchor goes when what carries it moves, e.g. the engine on its mounts.</summary>
    public EquatableList<AnchorMove> Moves { get; init; } = [];

    /// <summary>What if the conduit's end was turned after the clamps were closed? Null: not asked.</summary>
    public EndTwist? Twist { get; init; }
}

/// <summary>One extreme place of the anchor, seen from where it rests.</summary>
/// <param name="Turn">Right-handed about a line through the anchor; zero: only shifted.</param>
public sealed record AnchorMove(string Name, Length Aft, Length Right, Length Up, Angle Turn, DirectionAt? About);

/// <summary>A turn of the conduit's end about its own axis with the clamps closed.</summary>
/// <param name="Torsion">Torsion stiffness over bending stiffness; null: that of a solid round bar.</param>
public sealed record EndTwist(Angle Turn, double? Torsion);

/// <summary>A piece of conduit, core in it, held level at a table's edge: what stands out and how far its tip hangs down.</summary>
public sealed record TableEdge(Toleranced<Length> Overhang, Toleranced<Length> Droop);
