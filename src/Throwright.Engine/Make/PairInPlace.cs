using Throwright.Shapes.Solids;

namespace Throwright.Engine.Make;

/// <summary>The pair as it sits on a piece of the sheet. x to where the shank leans, z out of the sheet toward the pilot, origin where the shank's line meets the middle of the sheet; m.</summary>
/// <param name="Front">Axes of the wedge on the pilot's side.</param>
/// <param name="Back">Axes of the wedge behind.</param>
/// <param name="Sheet">A piece of the sheet with its hole, its lower face at z = 0.</param>
/// <param name="SheetAxes">Where that piece lies.</param>
public sealed record PairInPlace(Axes Front, Axes Back, DrilledPlate Sheet, Axes SheetAxes)
{
    public static PairInPlace Of(WedgePair pair)
    {
        ArgumentNullException.ThrowIfNull(pair);
        var of = pair.Case;
        double sin = Math.Sin(of.Tilt.Angle), cos = Math.Cos(of.Tilt.Angle), half = 0.5 * of.Sheet, shift = half * of.Tilt.Tangent;
        // The thick edge lies against the lean in front, and half a turn about y takes the front wedge to the back.
        var front = new Axes(new(shift, 0, half), new(-cos, 0, sin), new(0, -1, 0), new(sin, 0, cos));
        var back = new Axes(new(-shift, 0, -half), new(cos, 0, -sin), new(0, -1, 0), new(-sin, 0, -cos));
        var reach = 2 * (pair.FootprintAlong + 6e-3);
        var holes = new List<ThroughHole> { new(default, new(0, 0, 1), Profile.Slot(default, pair.SlotWidth, pair.SlotLength, 0)) };
        if (pair.Washer.Pin is { } pin)
            holes.Add(ThroughHole.Round(new(0, -pin.Across), pin.Diameter));
        return new(front, back, new(Profile.Rectangle(default, reach, reach), of.Sheet, [.. holes]), Axes.World.At(new(0, 0, -half)));
    }
}
