using Throwright.Shapes.Numerics;
using Throwright.Shapes.Tests.Yardsticks;

namespace Throwright.Shapes.Tests.Numerics.Laws;

public class BoundTests
{
    private const int Inputs = 3;

    [Fact]
    public void Slope_RandomFormulaOverABox_HoldsDifferenceQuotientsBetweenItsPoints()
    {
        // The mean value theorem: (f(p) - f(q)) / (p - q) along one input is the slope at some point between.
        var (compared, finite) = (0, 0);
        for (var seed = 0; seed < 20_000; seed++)
        {
            var random = new Random(seed);
            var formula = Formula.Grow(random, Inputs, 5);
            var box = Box(random, random.Next(4) == 0 ? 1e-3 : 1);
            var bound = Over(formula, box);
            for (var i = 0; i < Inputs; i++)
            {
                for (var draw = 0; draw < 4; draw++)
                {
                    var p = PointIn(random, box);
                    double[] q = [.. p];
                    q[i] = PointIn(random, box)[i];
                    if (Math.Abs(p[i] - q[i]) < 1e-4 * box[i].Width)
                        continue;
                    Wide fp = formula.Exact(p), fq = formula.Exact(q);
                    var slope = (fp - fq) / (Wide.Of(p[i]) - Wide.Of(q[i]));
                    if (!slope.IsFinite)
                        continue;
                    compared++;
                    if (bound.Slope(i) != Interval.Whole)
                        finite++;
                    // The quotient's own error: 1e-30 of the values (which cancel) over the step. A unit in the last place more, or a
                    // slope that is exactly 1 takes no notice of it.
                    var slack = 1e-29 * (Math.Abs(fp.Hi) + Math.Abs(fq.Hi)) / Math.Abs(p[i] - q[i]);
                    Assert.True(
                        slope.IsIn(new(Math.BitDecrement(bound.Slope(i).Low - slack), Math.BitIncrement(bound.Slope(i).High + slack))),
                        $"seed {seed}: d/dx{i} of {formula} between {string.Join(", ", p)} and {q[i]} is {slope}, not in {bound.Slope(i)}");
                }
            }
        }

        Assert.True(compared > 100_000 && finite > 50_000, $"{compared} compared, {finite} of them against a finite slope");
    }

    [Fact]
    public void Slope_RandomFormulaAtAPoint_HoldsTheCentralDifferenceQuotient()
    {
        var compared = 0;
        for (var seed = 0; seed < 10_000; seed++)
        {
            var random = new Random(seed);
            var formula = Formula.Grow(random, Inputs, 5, smooth: true);
            var p = PointIn(random, Box(random, 1));
            var bound = Over(formula, [.. p.Select(Interval.Of)]);
            for (var i = 0; i < Inputs; i++)
            {
                // Step 1e-10 in 32 digits: the quotient is off by f''' h^2 / 6 + 1e-31 f / h.
                const double Step = 1e-10;
                double[] up = [.. p], down = [.. p];
                (up[i], down[i]) = (p[i] + Step, p[i] - Step);
                var slope = (formula.Exact(up) - formula.Exact(down)) / (Wide.Of(up[i]) - Wide.Of(down[i]));
                var slack = 1e-9 * (1 + Math.Abs(slope.Hi) + Math.Abs(formula.Plain(p)));
                Assert.InRange(slope.Hi, bound.Slope(i).Low - slack, bound.Slope(i).High + slack);
                // At a point only rounding widens the slope, by as much as squares of squares can amplify it.
                Assert.True(bound.Slope(i).Width <= 100 * slack, $"seed {seed}: slope at a point is {bound.Slope(i)}");
                compared++;
            }
        }

        Assert.Equal(10_000 * Inputs, compared);
    }

    [Fact]
    public void Value_RandomFormulaOverABox_HoldsTheValuesOfItsPoints()
    {
        for (var seed = 0; seed < 20_000; seed++)
        {
            var random = new Random(seed);
            var formula = Formula.Grow(random, Inputs, 6);
            var box = Box(random, 2);
            var bound = Over(formula, box);
            for (var draw = 0; draw < 4; draw++)
            {
                var p = PointIn(random, box);
                var exact = formula.Exact(p);
                if (exact.IsFinite)
                    Assert.True(exact.IsIn(bound.Value), $"seed {seed}: {formula} at {string.Join(", ", p)} is {exact}, not in {bound.Value}");
            }
        }
    }

    [Fact]
    public void Slope_InputThatDoesNotOccur_IsExactlyZero()
    {
        Bound x = Bound.Input(0, 3, new(1, 2)), y = Bound.Input(1, 3, new(-1, 2));
        foreach (var formula in (Bound[])[x + y, x - y, x * y, y / x, Bound.Cos(x) + Bound.Sin(y), Bound.Sqrt(x) - (2.5 * y), Bound.AtLeastZero(y) * x, -(x * x)])
            Assert.Equal(Interval.Zero, formula.Slope(2));
    }

    [Fact]
    public void Slope_OfAConstant_IsZero()
    {
        Assert.Equal(Interval.Zero, (Bound.Of(3) * Bound.Of(4)).Slope(7));
        Assert.True((Bound.Of(3) * Bound.Of(4)).Value.Contains(12));
    }

    [Fact]
    public void Slope_AcrossAKink_HoldsBothSides()
    {
        var across = Bound.AtLeastZero(Bound.Input(0, 1, new(-1, 1))).Slope(0);
        Assert.Equal(0, across.Low);
        Assert.InRange(across.High, 1, 1 + 1e-15);
        Assert.Equal(Interval.Zero, Bound.AtLeastZero(Bound.Input(0, 1, new(-2, -1))).Slope(0));
        Assert.True(Bound.AtLeastZero(Bound.Input(0, 1, new(1, 2))).Slope(0).Contains(1));
        Assert.True(Bound.AtLeastZero(Bound.Input(0, 1, new(0, 1))).Slope(0).Contains(0));
    }

    [Fact]
    public void Slope_OfASquare_IsTwiceTheInput()
    {
        var slope = Bound.Square(Bound.Input(0, 1, new(-1.5, 2))).Slope(0);
        Assert.Equal(-3, slope.Low, 1e-14);
        Assert.Equal(4, slope.High, 1e-14);
        Assert.True(slope.Low <= -3 && slope.High >= 4);
    }

    [Fact]
    public void Slope_OfADivisionThroughZero_ProvesNothing()
    {
        Bound x = Bound.Input(0, 2, new(-1, 1)), y = Bound.Input(1, 2, new(1, 2));
        Assert.Equal(Interval.Whole, (y / x).Value);
        Assert.Equal(Interval.Whole, (y / x).Slope(0));
        Assert.Equal(Interval.Whole, (y / x).Slope(1));
        Assert.Equal(Interval.Whole, Bound.Sqrt(x).Slope(0));
    }

    private static Bound Over(Formula formula, Interval[] box) =>
        formula.At<Bound>([.. box.Select((side, i) => Bound.Input(i, Inputs, side))]);

    private static Interval[] Box(Random random, double size) => [.. Enumerable.Range(0, Inputs).Select(_ =>
    {
        var low = (random.NextDouble() * 6) - 3;
        return new Interval(low, low + (size * random.NextDouble()));
    })];

    private static double[] PointIn(Random random, Interval[] box) =>
        [.. box.Select(side => Math.Clamp(side.Low + (random.NextDouble() * side.Width), side.Low, side.High))];
}
