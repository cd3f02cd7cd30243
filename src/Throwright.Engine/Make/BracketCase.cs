using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Solids;

namespace Throwright.Engine.Make;

/// <summary>Legs in the order of the strip.</summary>
public enum BracketLeg
{
    /// <summary>Fastened down.</summary>
    Base,

    /// <summary>Between the bends, or the last one.</summary>
    Standing,

    /// <summary>Beyond the second bend.</summary>
    Top,
}

/// <summary>A hole for a fastener, a conduit or a clamp. Lengths m.</summary>
/// <param name="FromMouldLine">Centre from the outside corner of the leg's (earlier) bend, along the leg.</param>
/// <param name="Across">Centre from the middle of the width.</param>
public sealed record BracketHole(BracketLeg Leg, double FromMouldLine, double Across, double Diameter);

/// <summary>A second bend, at the other end of the standing leg. Lengths m, angle rad.</summary>
/// <param name="IsBack">To the other side than the first: a Z; else a channel, U.</param>
/// <param name="Top">Outside length of the top leg, to the mould line of this bend.</param>
public sealed record SecondBend(double Bend, double Radius, bool IsBack, double Top);

/// <summary>A strip of sheet with one bend or two. Lengths m, angle rad.</summary>
/// <param name="Alloy">As the table of bend radii has it, e.g. 6061-T6.</param>
/// <param name="Bend">Angle bent through; 90 deg: a square bracket.</param>
/// <param name="Radius">Inside.</param>
/// <param name="First">Outside length of the base leg, to the mould line (the outside corner of the bend).</param>
/// <param name="Second">The same of the standing leg; with a second bend from mould line to mould line.</param>
public sealed record BracketCase(
    string Alloy, double Thickness, double Bend, double Radius, double First, double Second, double Width, EquatableList<BracketHole> Holes)
{
    /// <summary>Null: one bend.</summary>
    public SecondBend? Then { get; init; }
    public double Corner { get; init; } = 4e-3;

    /// <summary>Place of the neutral line over the thickness from a test bend; null: the aircraft formula's.</summary>
    public double? Neutral { get; init; }

    /// <summary>The conduit lies along its leg in a clamp, this far from the leg's face; null: it goes through square. Over the base of a standing leg, away from the base of a top leg; less than 0: on the other face.</summary>
    public double? ConduitAbove { get; init; }

    /// <summary>The conduit's hole, or that of its clamp: the one that is not in the base leg.</summary>
    public BracketHole Conduit => Holes.First(h => h.Leg != BracketLeg.Base);

    public IEnumerable<BracketHole> Fasteners => Holes.Where(h => h.Leg == BracketLeg.Base);

    public IEnumerable<SheetBend> Bends => Then is { } then ? [new(Bend, Radius), new(then.Bend, then.Radius, then.IsBack)] : [new(Bend, Radius)];

    public double LegLength(BracketLeg leg) => leg switch { BracketLeg.Base => First, BracketLeg.Standing => Second, _ => Then?.Top ?? 0 };
}

/// <summary>One bend worked out. Lengths m.</summary>
public sealed record BracketBend(SheetBend Of, double Setback, double Allowance);

/// <summary>A bracket, bent and flat. Lengths m.</summary>
public sealed record Bracket
{
    public required BracketCase Case { get; init; }

    /// <summary>The bent part.</summary>
    public required BentSheet Part { get; init; }
    public required EquatableList<BracketBend> Bends { get; init; }
    public double Setback => Bends[0].Setback;
    public double Allowance => Bends[0].Allowance;
    public required Sourced Neutral { get; init; }

    /// <summary>The sharper of its bends.</summary>
    public double Sharpest => Bends.Min(b => b.Of.Radius);

    /// <summary>Published radii for this sheet; null: none, see <see cref="NoRadius"/>.</summary>
    public required BendRadius? LeastRadius { get; init; }
    public required string NoRadius { get; init; }
    public required FlatPattern Flat { get; init; }
}

/// <summary>A line on the flat pattern where the bend begins, where the brake is set, or where it ends.</summary>
/// <param name="IsCentre">The middle of the bend; else a tangent line.</param>
/// <param name="Bend">Number of the bend, the first is 0.</param>
public sealed record BendLine(Vector2 From, Vector2 To, bool IsCentre, int Bend);

/// <summary>The sheet before it is bent, m: x along the strip from the end of the base leg, y across from the middle; the inside of the first bend up.</summary>
/// <param name="Bends">Three lines for each: where it begins, its middle, where it ends.</param>
public sealed record FlatPattern(Profile Outline, EquatableList<Profile> Holes, EquatableList<BendLine> Bends, double Length);
