using Throwright.Engine.Findings;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Solids;

namespace Throwright.Engine.Make;

/// <summary>From mould line sizes to the bent part and its flat pattern. Theory: docs/theory/make.md.</summary>
public static class BracketSolver
{
    private static readonly SourceRef TestBend = new("project", "the builder's own test bend", Evidence.CommonPractice);

    /// <remarks>Flat of a leg = mould line size - a setback for each of its bends; strip = flats + allowances.</remarks>
    public static Bracket Solve(BracketCase of)
    {
        if (!(of.Thickness > 0) || of.Bends.Any(b => !(b.Radius > 0 && b.Angle > 0 && b.Angle <= 150 * Math.PI / 180)))
            throw new ArgumentOutOfRangeException(nameof(of), of, "thickness and radius above zero, a bend up to 150 deg");
        if (!Fits(of))
            throw new ArgumentOutOfRangeException(nameof(of), of, "legs longer than the bends' setbacks and the corner");
        var neutral = of.Neutral is { } own ? new Sourced(own, TestBend) : SheetBending.Neutral();
        var bends = of.Bends.Select(b => new BracketBend(b, SheetBending.Setback(b.Angle, b.Radius, of.Thickness), SheetBending.Allowance(b.Angle, b.Radius, of.Thickness, neutral.Value))).ToEquatableList();
        var legs = Flats(of).ToEquatableList();
        var holes = of.Holes.Select(h => new LegHole((int)h.Leg, h.FromMouldLine - bends[Math.Max(0, (int)h.Leg - 1)].Setback, h.Across, Profile.Circle(default, 0.5 * h.Diameter))).ToEquatableList();
        var (radius, refusal) = SheetBending.LeastRadius(of.Alloy, of.Thickness);
        return new()
        {
            Case = of,
            Part = new(legs, of.Bends.ToEquatableList(), of.Width, of.Thickness, of.Corner, holes),
            Bends = bends,
            Neutral = neutral,
            LeastRadius = radius,
            NoRadius = refusal,
            Flat = Flatten(of, holes, legs, bends),
        };
    }

    /// <summary>Is each leg longer than its bends and the corner take?</summary>
    public static bool Fits(BracketCase of)
    {
        ArgumentNullException.ThrowIfNull(of);
        var flats = Flats(of).ToList();
        return flats[0] > of.Corner && flats[^1] > of.Corner && flats.All(f => f > 0);
    }

    private static IEnumerable<double> Flats(BracketCase of)
    {
        double[] setbacks = [0, .. of.Bends.Select(b => SheetBending.Setback(b.Angle, b.Radius, of.Thickness)), 0];
        return Enumerable.Range(0, setbacks.Length - 1).Select(i => of.LegLength((BracketLeg)i) - setbacks[i] - setbacks[i + 1]);
    }

    private static FlatPattern Flatten(BracketCase of, EquatableList<LegHole> holes, EquatableList<double> legs, EquatableList<BracketBend> bends)
    {
        double length = legs.Sum() + bends.Sum(b => b.Allowance), half = 0.5 * of.Width;
        // Where each leg begins.
        var begin = new double[legs.Count];
        for (var i = 1; i < legs.Count; i++)
            begin[i] = begin[i - 1] + legs[i - 1] + bends[i - 1].Allowance;
        return new(
            Profile.Rectangle(new(0.5 * length, 0), length, of.Width, of.Corner),
            holes.Select(h => h.Outline.Moved(new(h.Leg == 0 ? legs[0] - h.FromBend : begin[h.Leg] + h.FromBend, h.Across))).ToEquatableList(),
            bends.SelectMany((b, i) => ((IEnumerable<double>)[0, 0.5, 1]).Select(share =>
            {
                var x = begin[i] + legs[i] + (share * b.Allowance);
                return new BendLine(new(x, -half), new(x, half), share == 0.5, i);
            })).ToEquatableList(),
            length);
    }
}
