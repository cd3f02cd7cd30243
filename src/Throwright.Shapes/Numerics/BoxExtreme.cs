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

    /// <summary>
    /// No finite bound was found: a division through zero (e.g. a dead centre) or a place where the formula has no value.
    /// </summary>
    Unbounded,
}

/// <summary>The least value of a function over a box: proven not below Proved, found to be as low as Found.</summary>
/// <param name="Proved">No point of the box gives less than this, rounding included; never above Found.</param>
/// <param name="Found">This value does occur, at <paramref name="At"/>; infinite if no point tried has a value.</param>
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
    /// mean-value form f(middle) + sum slope x (box - middle), all in intervals, so that no rounding is lost. The
    /// greatest value is minus the least of the negated formula.
    /// </remarks>
    /// <param name="overBox">The formula over the whole box, from <see cref="Inputs"/>, where several searches can share it.</param>
    /// <exception cref="ArgumentException">A side of the box is not a finite range.</exception>
    public static BoxExtreme Least(
        BoundFormula bound, PointFormula point, IReadOnlyList<Interval> box, double tolerance, int budget = 4000, Bound? overBox = null)
    {
        foreach (var side in box)
        {
            if (!(side.Low <= side.High) || !double.IsFinite(side.Width))
                throw new ArgumentException($"a side of the box is not a finite range: {side.Low} to {side.High}", nameof(box));
        }

        return new Search(bound, point, [.. box], tolerance, budget) { OverBox = overBox }.Run();
    }

    /// <summary>
    /// The inputs over a box. Only those that have a range carry a slope, numbered one after the other: most are soon
    /// fixed, and a slope against them need not be carried along.
    /// </summary>
    public static Bound[] Inputs(IReadOnlyList<Interval> box)
    {
        ArgumentNullException.ThrowIfNull(box);
        var (inputs, slots) = (new Bound[box.Count], new int[box.Count]);
        Fill(inputs, slots, [.. box]);
        return inputs;
    }

    /// <param name="slots">The number of each input's slope; -1: it has no range.</param>
    private static void Fill(Bound[] inputs, int[] slots, Interval[] sides)
    {
        var count = 0;
        for (var i = 0; i < sides.Length; i++)
            slots[i] = sides[i].Width == 0 ? -1 : count++;
        for (var i = 0; i < inputs.Length; i++)
            inputs[i] = slots[i] < 0 ? Bound.Of(sides[i].Low) : Bound.Input(slots[i], count, sides[i]);
    }

    /// <summary>One search: what is open, the best so far, and room that each box uses anew.</summary>
    private sealed class Search(BoundFormula bound, PointFormula point, Interval[] box, double tolerance, int budget)
    {
        private readonly PriorityQueue<(Interval[] Sides, int Split), double> open = new();
        private readonly Bound[] inputs = new Bound[box.Length];

        /// <summary>Number of each input among those that still have a range, -1: it has none.</summary>
        private readonly int[] slots = new int[box.Length];
        private double best = double.PositiveInfinity;
        private double[] bestAt = Middle(box);
        private double provedClosed = double.PositiveInfinity;
        private int boxes;

        public Bound? OverBox { private get; set; }

        public BoxExtreme Run()
        {
            Try([.. box]);
            if (open.Count == 0)
                return Ended(provedClosed, Outcome.Corner);
            while (open.TryPeek(out var next, out var low))
            {
                var proved = Math.Min(low, provedClosed);
                if (best - proved <= tolerance)
                    return Ended(proved, Outcome.Converged);
                // Above the best, no box can lower it any more; what is left between the bounds is rounding.
                if (boxes >= budget || low > best || double.IsNegativeInfinity(provedClosed))
                    return Ended(proved, Outcome.OutOfBudget);
                open.Dequeue();
                var middle = next.Sides[next.Split].Middle;
                Interval[] left = next.Sides, right = [.. next.Sides];
                left[next.Split] = new(left[next.Split].Low, middle);
                right[next.Split] = new(middle, right[next.Split].High);
                Try(left);
                Try(right);
            }

            return Ended(provedClosed, best - provedClosed <= tolerance ? Outcome.Converged : Outcome.OutOfBudget);
        }

        private BoxExtreme Ended(double proved, Outcome outcome)
        {
            proved = Math.Min(proved, best);
            return new(proved, best, bestAt, double.IsNegativeInfinity(proved) ? Outcome.Unbounded : outcome, boxes);
        }

        private void Try(Interval[] sides)
        {
            boxes++;
            var whole = Reduce(sides);
            var at = Middle(sides);
            var value = point(at);
            if (value < best)
                (best, bestAt) = (value, at);
            if (Array.TrueForAll(sides, side => side.Width == 0))
                provedClosed = Math.Min(provedClosed, double.IsNaN(value) ? double.NegativeInfinity : whole.Value.Low);
            else
                open.Enqueue((sides, Split(whole, sides)), LowerBound(whole, sides, at));
        }

        /// <summary>Sets each input that is proven monotone to its lower-giving end; returns the bounds over what remains.</summary>
        private Bound Reduce(Interval[] sides)
        {
            // Fixing one input narrows the slopes of the others, so look again until nothing more is proven.
            while (true)
            {
                var whole = Evaluate(sides);
                var changed = false;
                for (var i = 0; i < sides.Length; i++)
                {
                    if (slots[i] < 0)
                        continue;
                    var slope = whole.Slope(slots[i]);
                    if (slope.Low >= 0)
                        sides[i] = Interval.Of(sides[i].Low);
                    else if (slope.High <= 0)
                        sides[i] = Interval.Of(sides[i].High);
                    else
                        continue;
                    changed = true;
                }

                if (!changed)
                    return whole;
            }
        }

        private double LowerBound(Bound whole, Interval[] sides, double[] middle)
        {
            for (var i = 0; i < inputs.Length; i++)
                inputs[i] = Bound.Of(middle[i]);
            var mean = bound(inputs).Value;
            for (var i = 0; i < sides.Length; i++)
            {
                if (slots[i] >= 0)
                    mean += whole.Slope(slots[i]) * (sides[i] - Interval.Of(middle[i]));
            }

            var low = Math.Max(whole.Value.Low, mean.Low);
            return double.IsNaN(low) ? double.NegativeInfinity : low;
        }

        /// <summary>The input whose range may change the value most.</summary>
        private int Split(Bound whole, Interval[] sides)
        {
            var (input, most) = (-1, -1.0);
            for (var i = 0; i < sides.Length; i++)
            {
                var reach = slots[i] < 0 ? -1 : sides[i].Width * Math.Min(whole.Slope(slots[i]).Size, 1e300);
                if (reach > most)
                    (most, input) = (reach, i);
            }

            return input;
        }

        /// <summary>Value and slopes over the box.</summary>
        private Bound Evaluate(Interval[] sides)
        {
            Fill(inputs, slots, sides);
            if (OverBox is not { } known)
                return bound(inputs);
            // The first box of all.
            OverBox = null;
            return known;
        }

        private static double[] Middle(Interval[] sides)
        {
            var middle = new double[sides.Length];
            for (var i = 0; i < middle.Length; i++)
                middle[i] = sides[i].Middle;
            return middle;
        }
    }
}
