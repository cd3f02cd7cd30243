using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Solids;

namespace Throwright.Engine.Make;

/// <summary>A hole for a fastener, a conduit or a bushing. Lengths m.</summary>
/// <param name="OnSecond">On the second leg; else on the first.</param>
/// <param name="FromMouldLine">Centre from the outside corner of the bend, along the leg.</param>
/// <param name="Across">Centre from the middle of the width.</param>
public sealed record BracketHole(bool OnSecond, double FromMouldLine, double Across, double Diameter);

/// <summary>A strip of sheet with one bend. Lengths m, angle rad.</summary>
/// <param name="Alloy">As the table of bend radii has it, e.g. 6061-T6.</param>
/// <param name="Bend">Angle bent through; 90 deg: a square bracket.</param>
/// <param name="Radius">Inside.</param>
/// <param name="First">Outside length of the first leg, to the mould line (the outside corner of the bend).</param>
/// <param name="Second">The same of the second.</param>
public sealed record BracketCase(
    string Alloy, double Thickness, double Bend, double Radius, double First, double Second, double Width, EquatableList<BracketHole> Holes)
{
    public double Corner { get; init; } = 4e-3;

    /// <summary>Place of the neutral line over the thickness from a test bend; null: the aircraft formula's.</summary>
    public double? Neutral { get; init; }
}

/// <summary>A bracket, bent and flat. Lengths m.</summary>
public sealed record Bracket
{
    public required BracketCase Case { get; init; }

    /// <summary>The bent part.</summary>
    public required BentSheet Part { get; init; }
    public required double Setback { get; init; }
    public required double Allowance { get; init; }
    public required Sourced Neutral { get; init; }

    /// <summary>Published radii for this sheet; null: none, see <see cref="NoRadius"/>.</summary>
    public required BendRadius? LeastRadius { get; init; }
    public required string NoRadius { get; init; }
    public required FlatPattern Flat { get; init; }
}

/// <summary>A line on the flat pattern where the bend begins, where the brake is set, or where it ends.</summary>
/// <param name="IsCentre">The middle of the bend; else a tangent line.</param>
public sealed record BendLine(Vector2 From, Vector2 To, bool IsCentre);

/// <summary>The sheet before it is bent, m: x along the strip from the end of the first leg, y across from the middle; the inside of the bend up.</summary>
public sealed record FlatPattern(Profile Outline, EquatableList<Profile> Holes, EquatableList<BendLine> Bends, double Length);
