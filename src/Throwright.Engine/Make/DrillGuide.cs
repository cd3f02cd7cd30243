using Throwright.Shapes.Solids;

namespace Throwright.Engine.Make;

/// <summary>A block that leads a drill through the sheet along the leaning shank. m.</summary>
/// <remarks>
/// It lies on the sheet's face toward the pilot with z = 0, x to where the shank leans as it comes toward the pilot. A hole
/// drilled along the shank is round about it and needs no slot. A pin's hole, square to the sheet, is led by the same block.
/// </remarks>
/// <param name="Margin">Material round the holes.</param>
public sealed record DrillGuide(WedgePair Pair, DrilledPlate Block, double Margin)
{
    /// <summary>The block is as high as the drill is wide and half as much again, and no lower than this: common practice.</summary>
    private const double LeastHeight = 20e-3;

    public double Height => Block.Thickness;

    /// <summary>Diameter that is led: shank and clearance.</summary>
    public double Drill => Pair.Case.Shank + Pair.Case.Clearance;

    public static DrillGuide Of(WedgePair pair)
    {
        ArgumentNullException.ThrowIfNull(pair);
        const double margin = 8e-3;
        var of = pair.Case;
        double drill = of.Shank + of.Clearance, height = Math.Max(LeastHeight, 1.5 * drill), cos = Math.Cos(of.Tilt.Angle);
        double shift = height * of.Tilt.Tangent, half = 0.5 * drill / cos;
        var holes = new List<ThroughHole> { ThroughHole.Round(default, drill, new(Math.Sin(of.Tilt.Angle), 0, cos)) };
        double low = -half - margin, high = shift + half + margin, left = -(0.5 * drill) - margin, right = -left;
        if (pair.Washer.Pin is { } pin)
        {
            // The shank's line meets this face (t/2) tan a further along than the middle of the sheet, where the pin stands.
            // It lies as the front wedge does: with the lean along x, the pin on the side of negative y.
            var place = new Vector2(-0.5 * of.Sheet * of.Tilt.Tangent, -pin.Across);
            holes.Add(ThroughHole.Round(place, pin.Diameter));
            left = Math.Min(left, -pin.Across - (0.5 * pin.Diameter) - margin);
        }

        return new(pair, new(Profile.Rectangle(new(0.5 * (low + high), 0.5 * (left + right)), high - low, right - left, 3e-3), height, [.. holes]), margin);
    }
}
