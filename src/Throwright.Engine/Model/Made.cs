using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Model;

/// <summary>What the wedges are made of.</summary>
public enum WedgeStock
{
    Metal,

    /// <summary>Printed plastic: a test piece.</summary>
    Printed,
}

/// <summary>What keeps the two wedges from turning against each other.</summary>
public enum WedgeKey
{
    None,

    /// <summary>A pin through both wedges and the sheet, on the line of equal thickness.</summary>
    Pin,

    /// <summary>A D-shaped bore on a shank with a flat.</summary>
    Flat,
}

/// <summary>How the builder wants the wedge pair of a leaning shank. What is left open is null.</summary>
public sealed record WedgeWanted
{
    public WedgeStock Stock { get; init; } = WedgeStock.Metal;
    public WedgeKey Key { get; init; } = WedgeKey.Pin;

    /// <summary>As the builder calls it: 6061-T6, PETG.</summary>
    public string Material { get; init; } = "";
    public string Finish { get; init; } = "";

    /// <summary>Outside; null: the nut's corners and a margin.</summary>
    public Length? Outside { get; init; }

    /// <summary>Thin edge; null: the least of the stock.</summary>
    public Length? ThinEdge { get; init; }
    public Length? Chamfer { get; init; }
    public Length? PinDiameter { get; init; }
    public Length? PinDepth { get; init; }

    /// <summary>From the bushing's axis to its flat, for <see cref="WedgeKey.Flat"/>.</summary>
    public Length? FlatAt { get; init; }

    /// <summary>Saw cut and clean-up of both faces.</summary>
    public Length? Kerf { get; init; }

    /// <summary>Washers in the stack besides the wedges.</summary>
    public Length? Washers { get; init; }
}

/// <summary>A bracket of bent sheet that holds the conduit's end: base leg on structure, standing leg or a top leg beyond it with the conduit's hole.</summary>
public sealed record AnchorBracket
{
    /// <summary>Alloy and temper as the table of bend radii has it.</summary>
    public required string Material { get; init; }
    public required Length Thickness { get; init; }
    public Angle Bend { get; init; } = new(Math.PI / 2);

    /// <summary>Inside radius of the bend.</summary>
    public required Length Radius { get; init; }

    /// <summary>Outside length of the base leg, to the mould line.</summary>
    public required Length Base { get; init; }

    /// <summary>Outside length of the standing leg, to the mould line; with a top leg from mould line to mould line.</summary>
    public required Length Standing { get; init; }
    public required Length Width { get; init; }

    /// <summary>Radius of the corners; null: the usual.</summary>
    public Length? Corner { get; init; }

    /// <summary>Place of the neutral line from a test bend; null: the aircraft formula's.</summary>
    public double? Neutral { get; init; }

    /// <summary>A second bend and the leg beyond it; null: one bend.</summary>
    public BracketTop? Top { get; init; }

    /// <summary>The hole that holds the conduit, or the clamp that does.</summary>
    public required BracketOpening Conduit { get; init; }

    public ConduitLeg ConduitIn { get; init; }

    /// <summary>The conduit lies along its leg in a clamp, its axis this far from the leg's face, away from the base (of a standing leg over it); null: it goes through square.</summary>
    public Length? ConduitAbove { get; init; }

    /// <summary>Fasteners in the base leg.</summary>
    public EquatableList<BracketOpening> Fasteners { get; init; } = [];

    /// <summary>What the fasteners are, as the table names them: AD4, AN3; empty: not told.</summary>
    public string Fastener { get; init; } = "";
}

/// <summary>The second bend of a bracket and the leg beyond it.</summary>
/// <param name="Shape">Which way it is bent.</param>
/// <param name="Length">Outside length, to the mould line.</param>
/// <param name="Radius">Inside; null: as the first bend's.</param>
public sealed record BracketTop(BracketShape Shape, Length Length, Angle Bend, Length? Radius);

/// <summary>Leg of a bracket that holds the conduit.</summary>
public enum ConduitLeg
{
    Standing,
    Top,
}

public enum BracketShape
{
    /// <summary>The second bend goes the other way.</summary>
    Z,

    /// <summary>A channel: both bends go the same way, the top leg lies over the base.</summary>
    U,
}

/// <summary>A hole of the bracket.</summary>
/// <param name="At">Its centre from the outside corner of its leg's bend, along its leg; in a standing leg from that of the first bend.</param>
/// <param name="Across">Its centre from the middle of the width.</param>
public sealed record BracketOpening(Length At, Length Across, Length Diameter);
