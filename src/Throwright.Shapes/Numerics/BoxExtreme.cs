namespace Throwright.Shapes.Numerics;

/// <summary>How a search ended.</summary>
public enum Outcome
{
    /// <summary>Every input was proven monotone: the extreme is at a known corner, exact to rounding.</summary>
    Corner,

    /// <summary>Found by splitting the box; the two bounds agree within the tolerance asked for.</summary>
    Converged,

    /// <summary>The budget of boxes ran out; the bounds still hold but lie apart.</summary>
    OutOfBudget,

    /// <summary>No finite bound exists in the box (a division through zero, e.g. a dead centre).</summary>
    Unbounded,
}

/// <summary>The least value of a function over a box: proven not below Proved, found to be as low as Found.</summary>
/// <param name="Proved">No point of the box gives less than this.</param>
/// <param name="Found">This value does occur, at <paramref name="At"/>.</param>
/// <param name="At">The input at which Found occurs.</param>
public sealed record BoxExtreme(double Proved, double Found, IReadOnlyList<double> At, Outcome Outcome, int Boxes);

/// <summary>The true least value of a formula over all combinations of its toleranced inputs.</summary>
public static class BoxSearch
{
    /// <summary>Bounds and slopes of the formula over a box.</summary>
    public delegate Bound BoundFormula(Bound[] inputs);

    /// <summary>The formula at one point.</summary>
    public delegate double PointFormula(double[] inputs);

    /// <summary>Least value over the box, within <paramref name="tolerance"/>.</summary>
    /// <remarks>
    /// Where interval slopes prove the formula monotone in an input, that input is set to the end which gives less.
    /// What remains is split in two along the input with the largest slope x width, always the box with the lowest
    /// bound first (branch and bound). The bound of a box is the better of the plain interval value and the
    /// mean-value form f(middle) + sum slope x (box - middle). The greatest value is minus the least of the negated
    /// formula.
    /// </remarks>
    public static BoxExtreme Least(
        BoundFormula bound, PointFormula point, IReadOnlyList<Interval> box, double tolerance, int budget = 4000)
    {
        var open = new PriorityQueue<Interval[], double>();
        var best = double.PositiveInfinity;
        double[] bestAt = [.. box.Select(side => side.Middle)];
        var provedClosed = double.PositiveInfinity;
        var boxes = 0;
        var split = false;
        var unbounded = false;

        void Try(Interval[] sides)
        {
            boxes++;
            var (reduced, low) = Reduce(bound, point, sides, out var at, out var value, out var exact);
            if (value < best)
            {
                best = value;
                bestAt = at;
            }

            if (exact)
                provedClosed = Math.Min(provedClosed, value);
            else if (double.IsNaN(low) || double.IsNegativeInfinity(low))
            {
                unbounded = true;
                open.Enqueue(reduced, double.NegativeInfinity);
            }
            else
                open.Enqueue(reduced, low);
        }

        Try([.. box]);
        while (open.TryPeek(out var sides, out var low))
        {
            var proved = Math.Min(low, provedClosed);
            if (best - proved <= tolerance)
                return new(proved, best, bestAt, split ? Outcome.Converged : Outcome.Corner, boxes);
            if (boxes >= budget)
                return new(proved, best, bestAt, unbounded && double.IsInfinity(proved) ? Outcome.Unbounded : Outcome.OutOfBudget, boxes);
            open.Dequeue();
            if (low > best)
                continue;
            split = true;
            var (left, right) = Halve(bound, sides);
            Try(left);
            Try(right);
        }

        return new(Math.Min(best, provedClosed), best, bestAt, split ? Outcome.Converged : Outcome.Corner, boxes);
    }

    private static (Interval[] Reduced, double Low) Reduce(
        BoundFormula bound, PointFormula point, Interval[] sides, out double[] at, out double value, out bool exact)
    {
        // Fixing one input narrows the slopes of the others, so look again until nothing more is proven.
        var whole = Evaluate(bound, sides);
        while (true)
        {
            var changed = false;
            for (var i = 0; i < sides.Length; i++)
            {
                if (sides[i].Width == 0)
                    continue;
                var slope = whole.Slope(i);
                if (slope.Low >= 0)
                    sides[i] = Interval.Of(sides[i].Low);
                else if (slope.High <= 0)
                    sides[i] = Interval.Of(sides[i].High);
                else
                    continue;
                changed = true;
            }

            if (!changed)
                break;
            whole = Evaluate(bound, sides);
        }

        at = [.. sides.Select(side => side.Middle)];
        value = point(at);
        exact = sides.All(side => side.Width == 0);
        if (exact)
            return (sides, value);
        var low = whole.Value.Low;
        var mean = value - (1e-15 * Math.Abs(value));
        for (var i = 0; i < sides.Length; i++)
            mean -= 0.5 * sides[i].Width * whole.Slope(i).Size * (1 + 1e-15);
        return (sides, double.IsNaN(mean) ? low : Math.Max(low, mean));
    }

    private static (Interval[] Left, Interval[] Right) Halve(BoundFormula bound, Interval[] sides)
    {
        var whole = Evaluate(bound, sides);
        var widest = -1;
        var most = -1.0;
        for (var i = 0; i < sides.Length; i++)
        {
            var reach = sides[i].Width == 0 ? -1 : sides[i].Width * Math.Min(whole.Slope(i).Size, 1e300);
            if (reach > most)
                (most, widest) = (reach, i);
        }

        Interval[] left = [.. sides], right = [.. sides];
        left[widest] = new(sides[widest].Low, sides[widest].Middle);
        right[widest] = new(sides[widest].Middle, sides[widest].High);
        return (left, right);
    }

    private static Bound Evaluate(BoundFormula bound, Interval[] sides)
    {
        var inputs = new Bound[sides.Length];
        for (var i = 0; i < inputs.Length; i++)
            inputs[i] = sides[i].Width == 0 ? Bound.Of(sides[i].Low) : Bound.Input(i, inputs.Length, sides[i]);
        return bound(inputs);
    }

}
