using Throwright.Engine.Findings;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Solids;

namespace Throwright.Engine.Make;

/// <summary>From mould line sizes to the bent part and its flat pattern. Theory: docs/theory/make.md.</summary>
public static class BracketSolver
{
    private static readonly SourceRef TestBend = new("project", "the builder's own test bend", Evidence.CommonPractice);

    /// <remarks>Flat of a leg = mould line size - setback; strip = both flats + allowance.</remarks>
    public static Bracket Solve(BracketCase of)
    {
        if (!(of.Thickness > 0 && of.Radius > 0 && of.Bend > 0 && of.Bend <= 150 * Math.PI / 180))
            throw new ArgumentOutOfRangeException(nameof(of), of, "thickness and radius above zero, a bend up to 150 deg");
        var setback = SheetBending.Setback(of.Bend, of.Radius, of.Thickness);
        double first = of.First - setback, second = of.Second - setback;
        if (!(first > of.Corner && second > of.Corner))
            throw new ArgumentOutOfRangeException(nameof(of), of, "legs longer than the bend's setback and the corner");
        var neutral = of.Neutral is { } own ? new Sourced(own, TestBend) : SheetBending.Neutral();
        var allowance = SheetBending.Allowance(of.Bend, of.Radius, of.Thickness, neutral.Value);
        var holes = of.Holes.Select(h => new LegHole(h.OnSecond, h.FromMouldLine - setback, h.Across, Profile.Circle(default, 0.5 * h.Diameter))).ToEquatableList();
        var (radius, refusal) = SheetBending.LeastRadius(of.Alloy, of.Thickness);
        return new()
        {
            Case = of,
            Part = new(first, second, of.Width, of.Thickness, of.Bend, of.Radius, of.Corner, holes),
            Setback = setback,
            Allowance = allowance,
            Neutral = neutral,
            LeastRadius = radius,
            NoRadius = refusal,
            Flat = Flatten(of, holes, first, second, allowance),
        };
    }

    private static FlatPattern Flatten(BracketCase of, EquatableList<LegHole> holes, double first, double second, double allowance)
    {
        double length = first + allowance + second, half = 0.5 * of.Width;
        BendLine Line(double x, bool isCentre) => new(new(x, -half), new(x, half), isCentre);
        return new(
            Profile.Rectangle(new(0.5 * length, 0), length, of.Width, of.Corner),
            holes.Select(h => h.Outline.Moved(new(h.OnSecond ? first + allowance + h.FromBend : first - h.FromBend, h.Across))).ToEquatableList(),
            [Line(first, false), Line(first + (0.5 * allowance), true), Line(first + allowance, false)],
            length);
    }
}
