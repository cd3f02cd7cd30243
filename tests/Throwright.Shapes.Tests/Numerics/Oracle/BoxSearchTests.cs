using Throwright.Shapes.Numerics;
using Throwright.Shapes.Tests.Yardsticks;

namespace Throwright.Shapes.Tests.Numerics.Oracle;

/// <summary>The search against plain enumeration of points, in 32 digits where rounding could decide.</summary>
public class BoxSearchTests
{
    private const double Tolerance = 1e-6;

    [Fact]
    public void Least_MonotoneFormula_IsACornerInOneBox()
    {
        var least = Search(new MonotoneFormula(), [new(1, 2), new(3, 5), new(0.1, 0.2)]);
        Assert.Equal(Outcome.Corner, least.Outcome);
        Assert.Equal(1, least.Boxes);
        Assert.Equal([1, 5, 0.2], least.At);
        Assert.Equal(1 - 10 - Math.Sqrt(0.2), least.Found, 1e-14);
        Assert.InRange(least.Found - least.Proved, 0, 1e-13);
    }

    private sealed class MonotoneFormula : IFormula
    {
        public T At<T>(T[] x)
            where T : struct, IReal<T> => (x[0] * x[0]) - (2 * x[1]) - T.Sqrt(x[2]);
    }

    [Fact]
    public void Least_InnerMinimum_IsFound()
    {
        var least = Search(new Bowl(), [new(-1, 2), new(-3, 1)]);
        Assert.Equal(Outcome.Converged, least.Outcome);
        Assert.Equal(7, least.Found, Tolerance);
        Assert.InRange(least.Proved, 7 - (2 * Tolerance), 7);
        Assert.Equal(0.3, least.At[0], 1e-3);
        Assert.Equal(-0.7, least.At[1], 1e-3);
    }

    [Fact]
    public void Least_NarrowTroughAnywhere_IsNotLostBetweenTheHalves()
    {
        // Also right beside the places where the box is split.
        for (var i = 0; i <= 400; i++)
        {
            var trough = i < 300 ? i / 299.0 : 0.5 + ((i - 350) * 1e-4);
            var least = BoxSearch.Least(
                x => Bound.Square(x[0] - Bound.Of(trough)), x => (x[0] - trough) * (x[0] - trough), [new(0, 1)], 1e-10);
            Assert.InRange(least.Found, 0, 1e-10);
            Assert.InRange(least.Proved, -1e-10, 0);
        }
    }

    private sealed class Bowl : IFormula
    {
        public T At<T>(T[] x)
            where T : struct, IReal<T>
        {
            T u = x[0] - T.Of(0.3), v = x[1] + T.Of(0.7);
            return T.Of(7) + (u * u) + (2 * (v * v)) + (0.5 * (u * v));
        }
    }

    [Fact]
    public void Least_Saddle_IsAtTheRightPairOfEdges()
    {
        // x^2 - y^2 over [-1, 1.5] x [-1, 2]: least at (0, 2).
        var least = Search(new Saddle(), [new(-1, 1.5), new(-1, 2)]);
        Assert.Equal(-4, least.Found, Tolerance);
        Assert.Equal(2, least.At[1], 1e-3);
        Assert.True(least.Proved <= -4);
    }

    private sealed class Saddle : IFormula
    {
        public T At<T>(T[] x)
            where T : struct, IReal<T> => (x[0] * x[0]) - (x[1] * x[1]);
    }

    [Fact]
    public void Least_PeriodicFormula_IsTheLeastOfAllTroughs()
    {
        var formula = new Waves();
        var least = Search(formula, [new(-10, 10)]);
        var dense = Enumerable.Range(0, 2_000_001).Min(i => formula.At<Real>([new(-10 + (1e-5 * i))]).Value);
        Assert.InRange(least.Found, least.Proved, least.Proved + Tolerance);
        Assert.InRange(least.Proved, dense - (2 * Tolerance), dense);
    }

    private sealed class Waves : IFormula
    {
        public T At<T>(T[] x)
            where T : struct, IReal<T> => T.Sin(3 * x[0]) + T.Cos(2.3 * x[0]) + (0.01 * x[0]);
    }

    [Fact]
    public void Least_ProductOfThreeWithChangesOfSign_IsTheLeastCorner()
    {
        // Linear in each input, so the least is at a corner: enumerate all eight.
        Interval[] box = [new(-1, 2), new(-3, 0.5), new(-0.25, 4)];
        var corners = Enumerable.Range(0, 8).Min(k => Enumerable.Range(0, 3).Aggregate(1.0, (p, i) => p * ((k >> i & 1) == 0 ? box[i].Low : box[i].High)));
        var least = Search(new ProductFormula(), box);
        Assert.Equal(corners, least.Found, Tolerance);
        Assert.InRange(least.Proved, corners - Tolerance, corners);
    }

    private sealed class ProductFormula : IFormula
    {
        public T At<T>(T[] x)
            where T : struct, IReal<T> => x[0] * x[1] * x[2];
    }

    [Fact]
    public void Least_SizeOfAnInput_IsZeroAtItsKink()
    {
        // |x - 0.4| written with two kinks, and a second input that tilts it.
        var least = Search(new Size(), [new(-1, 1), new(0.5, 0.9)]);
        Assert.Equal(0, least.Found, Tolerance);
        Assert.InRange(least.Proved, -Tolerance, 0);
        Assert.Equal(0.4, least.At[0], 1e-5);
    }

    private sealed class Size : IFormula
    {
        public T At<T>(T[] x)
            where T : struct, IReal<T>
        {
            var u = x[0] - T.Of(0.4);
            return (T.AtLeastZero(u) + T.AtLeastZero(-u)) * x[1];
        }
    }

    [Fact]
    public void Least_DivisionThroughZero_IsUnboundedAndNothingIsProved()
    {
        var least = Search(new Reciprocal(), [new(-1, 2), new(1, 2)], budget: 500);
        Assert.Equal(Outcome.Unbounded, least.Outcome);
        Assert.Equal(double.NegativeInfinity, least.Proved);
        Assert.True(least.Found < -10);
    }

    [Fact]
    public void Least_DivisionByZeroAtThePointItself_IsUnbounded()
    {
        var least = Search(new Reciprocal(), [Interval.Of(0), Interval.Of(1)]);
        Assert.Equal(Outcome.Unbounded, least.Outcome);
        Assert.Equal(double.NegativeInfinity, least.Proved);
    }

    private sealed class Reciprocal : IFormula
    {
        public T At<T>(T[] x)
            where T : struct, IReal<T> => x[1] / x[0];
    }

    [Fact]
    public void Least_FormulaWithoutValueInPartOfTheBox_ProvesNothing()
    {
        // The root of a negative number for a part of the box: a mechanism that can't reach.
        var least = Search(new RootFormula(), [new(-1, 1)], budget: 300);
        Assert.Equal(Outcome.Unbounded, least.Outcome);
        Assert.Equal(double.NegativeInfinity, least.Proved);
    }

    [Fact]
    public void Least_FormulaWithoutValueAnywhere_ProvesAndFindsNothing()
    {
        foreach (var box in (Interval[][])[[Interval.Of(-1)], [new(-2, -1)]])
        {
            var least = Search(new RootFormula(), box, budget: 100);
            Assert.Equal(Outcome.Unbounded, least.Outcome);
            Assert.Equal(double.NegativeInfinity, least.Proved);
            Assert.Equal(double.PositiveInfinity, least.Found);
        }
    }

    private sealed class RootFormula : IFormula
    {
        public T At<T>(T[] x)
            where T : struct, IReal<T> => T.Sqrt(x[0]);
    }

    [Fact]
    public void Least_PointFormulaThatGivesNoNumber_IsNotReportedAsConverged()
    {
        var least = BoxSearch.Least(x => x[0], _ => double.NaN, [new(1, 2)], Tolerance);
        Assert.Equal(Outcome.Unbounded, least.Outcome);
        Assert.Equal(double.NegativeInfinity, least.Proved);
    }

    [Fact]
    public void Least_NoWidthAtAll_IsTheValueThere()
    {
        var least = Search(new Saddle(), [Interval.Of(0.3), Interval.Of(0.1)]);
        Assert.Equal(Outcome.Corner, least.Outcome);
        Assert.Equal((0.3 * 0.3) - (0.1 * 0.1), least.Found);
        Assert.InRange(least.Proved, least.Found - 1e-15, least.Found);
        Assert.Equal(1, least.Boxes);
    }

    [Fact]
    public void Least_NoInputs_IsTheConstant()
    {
        var least = BoxSearch.Least(_ => Bound.Of(3), _ => 3, [], Tolerance);
        Assert.Equal(Outcome.Corner, least.Outcome);
        Assert.Equal((3, 3), (least.Proved, least.Found));
    }

    [Fact]
    public void Least_SomeSidesWithoutWidth_SplitsTheOthers()
    {
        var least = Search(new Bowl(), [Interval.Of(0.3), new(-3, 1)]);
        Assert.Equal(7, least.Found, Tolerance);
        Assert.Equal(0.3, least.At[0]);
    }

    [Fact]
    public void Least_SideOfOneUnitInTheLastPlace_Ends()
    {
        var least = Search(new Bowl(), [new(0.3, Math.BitIncrement(0.3)), new(-0.7, Math.BitIncrement(-0.7))], tolerance: 0, budget: 200);
        Assert.InRange(least.Boxes, 1, 202);
        Assert.InRange(7, least.Proved, least.Found);
    }

    [Fact]
    public void Least_InputThatTheFormulaIgnores_NeedsNoSplit()
    {
        var least = BoxSearch.Least(x => x[0] + x[1], x => x[0] + x[1], [new(1, 2), new(-1, 4), new(-100, 100)], Tolerance);
        Assert.Equal(Outcome.Corner, least.Outcome);
        Assert.Equal(1, least.Boxes);
        Assert.Equal(0, least.Found, 1e-15);
    }

    [Fact]
    public void Least_TwelveInputsMonotoneButForAKink_IsACornerInOneBox()
    {
        // Forces that only act one way: sum of c max(x_i y_i - 1, 0) with x, y above zero rises in all twelve.
        var least = Search(new SixPairs(), [.. Enumerable.Range(0, 12).Select(i => new Interval(0.5, 1.5 + (0.1 * i)))]);
        Assert.Equal(Outcome.Corner, least.Outcome);
        Assert.Equal(0.5 + (0.5 * 0.25), least.Found, 1e-15);
        Assert.Equal(1, least.Boxes);
    }

    private sealed class SixPairs : IFormula
    {
        public T At<T>(T[] x)
            where T : struct, IReal<T>
        {
            var sum = x[0] + (0.25 * x[1]);
            for (var i = 0; i < 12; i += 2)
                sum += T.AtLeastZero((x[i] * x[i + 1]) - T.Of(1));
            return sum;
        }
    }

    [Fact]
    public void Least_TwelveToleranceInputsOfALeverChain_HoldsAgainstAllCornersAndRandomPoints()
    {
        var formula = new LeverChain();
        double[] middle = [30, 105, 2, 0.5, 400, 0.15, 3.1, 12, 0.7, 250, 1.2, 0.02];
        Interval[] box = [.. middle.Select((m, i) => new Interval(m * (1 - (0.002 * (i + 1))), m * (1 + (0.002 * (i + 1)))))];
        var least = Search(formula, box, tolerance: 1e-3, budget: 4000);
        var random = new Random(5);
        var lowest = double.PositiveInfinity;
        for (var k = 0; k < 4096 + 20_000; k++)
        {
            var x = box.Select((side, i) => new Real(k < 4096 ? (k >> i & 1) == 0 ? side.Low : side.High : side.Low + (random.NextDouble() * side.Width)));
            lowest = Math.Min(lowest, formula.At<Real>([.. x]).Value);
        }

        Assert.True(least.Proved <= lowest, $"{least.Proved} {lowest}");
        Assert.True(least.Found <= lowest + 1e-3, $"{least.Found} {lowest}");
        Assert.InRange(least.Found - least.Proved, 0, 1e-3);
        Assert.NotEqual(Outcome.OutOfBudget, least.Outcome);
    }

    private sealed class LeverChain : IFormula
    {
        public T At<T>(T[] x)
            where T : struct, IReal<T>
        {
            // Free length at two angles, less what friction and stretch take, less a one-sided play.
            T Free(T phi)
            {
                T u = (x[0] * T.Cos(phi)) - x[1], v = (x[0] * T.Sin(phi)) - x[2];
                return T.Sqrt((u * u) + (v * v) + (x[3] * x[3]));
            }

            var wireThrow = Free(T.Of(2) + x[11]) - Free(T.Of(0.7) - x[11]);
            var force = x[7] + (x[7] * x[5] * x[6]) + (0.5 * (x[5] * x[6] * x[5] * x[6]));
            var stretch = force * x[9] / (1000 * x[4]);
            return wireThrow - stretch - (x[8] * x[6]) - T.AtLeastZero(x[10] - x[8]);
        }
    }

    [Fact]
    public void Least_FormulaThatCancels_DoesNotProveMoreThanRoundingAllows()
    {
        // 1e8 + x is rounded to steps of 1.5e-8, so the value computed at a point is no bound for the true one.
        var formula = new Cancelling();
        var least = Search(formula, [new(1e-8, 1.2e-8), new(-1, 1)], tolerance: 1e-3);
        Assert.True(least.Found > 1.4e-8);
        Assert.False(formula.At<Wide>([Wide.Of(1e-8), Wide.Of(0)]).IsBelow(least.Proved), $"{least.Proved}");
    }

    private sealed class Cancelling : IFormula
    {
        public T At<T>(T[] x)
            where T : struct, IReal<T> => T.Of(1e8) + x[0] - T.Of(1e8) + (1e-12 * T.Sin(9 * x[1]));
    }

    [Fact]
    public void Least_BoxOfNeighbouringNumbers_BoundsItsFarEnd()
    {
        // The middle of two neighbouring doubles is one of them, so the other is a whole width away, not half of one.
        var formula = new Steep();
        double low = 1, high = Math.BitIncrement(low);
        var least = Search(formula, [new(low, high)], tolerance: 1e9);
        Assert.False(formula.At<Wide>([Wide.Of(low)]).IsBelow(least.Proved), $"{least.Proved:R}");
        Assert.False(formula.At<Wide>([Wide.Of(high)]).IsBelow(least.Proved), $"{least.Proved:R}");
    }

    private sealed class Steep : IFormula
    {
        // The kink is not reached, but intervals can't see that, so the slope is known as -1e16 .. 1e13 only.
        public T At<T>(T[] x)
            where T : struct, IReal<T> => (1e16 * T.AtLeastZero(T.Of(3) - x[0] - T.Of(2) + T.Of(3e-16))) + (1e13 * x[0]);
    }

    [Fact]
    public void Least_WideToleranceSatisfiedAtOnce_IsNotCalledACorner()
    {
        var least = Search(new Bowl(), [new(-1, 2), new(-3, 1)], tolerance: 1e6);
        Assert.Equal(Outcome.Converged, least.Outcome);
        Assert.True(least.Proved <= 7 && least.Found >= 7);
    }

    [Fact]
    public void Least_BudgetTooSmall_KeepsTrueBounds()
    {
        foreach (var budget in (int[])[0, 1, 2, 5, 17])
        {
            var least = Search(new Waves(), [new(-10, 10)], tolerance: 0, budget);
            Assert.Equal(Outcome.OutOfBudget, least.Outcome);
            Assert.InRange(least.Boxes, 1, budget + 2);
            Assert.True(least.Proved <= -1.9 && least.Found >= least.Proved);
        }
    }

    [Theory]
    [InlineData(double.NegativeInfinity, 1)]
    [InlineData(0, double.PositiveInfinity)]
    [InlineData(double.NaN, 1)]
    [InlineData(2, 1)]
    public void Least_SideThatIsNoFiniteRange_IsRefused(double low, double high)
    {
        Assert.Throws<ArgumentException>(() => Search(new Saddle(), [new(0, 1), new(low, high)]));
    }

    [Fact]
    public void Least_CallersBox_IsLeftAsItWas()
    {
        Interval[] box = [new(1, 2), new(3, 5)];
        Search(new Saddle(), box);
        Assert.Equal([new(1, 2), new(3, 5)], box);
    }

    [Fact]
    public void Least_RandomFormulas_NeverProvesMoreThanIsTrueAndFindsWhatOccurs()
    {
        var ends = new Dictionary<Outcome, int>();
        Parallel.For(0, 600, seed =>
        {
            var random = new Random(seed);
            var inputs = random.Next(1, 4);
            var formula = Formula.Grow(random, inputs, 5);
            var size = Math.Pow(10, -random.Next(0, 4));
            Interval[] box = [.. Enumerable.Range(0, inputs).Select(_ =>
            {
                var low = (random.NextDouble() * 4) - 2;
                return new Interval(low, low + (size * random.NextDouble()));
            })];
            var least = BoxSearch.Least(formula.At, formula.Plain, box, Tolerance, budget: 1500);
            lock (ends)
                ends[least.Outcome] = ends.GetValueOrDefault(least.Outcome) + 1;
            var about = $"seed {seed}: {formula} over {string.Join(", ", box)}: {least}";
            Assert.True(least.Proved <= least.Found, about);
            if (double.IsFinite(least.Found))
                Assert.Equal(least.Found, formula.Plain([.. least.At]));
            Assert.All(least.At, (x, i) => Assert.True(box[i].Contains(x), about));
            if (least.Outcome is Outcome.Corner or Outcome.Converged)
                Assert.InRange(least.Found - least.Proved, 0, Math.Max(Tolerance, 1e-13 * Math.Abs(least.Found)));

            // Points: corners, a grid, random ones, and a walk downhill from each of the best.
            var lowest = Wide.Of(double.PositiveInfinity);
            double[] lowestAt = [];
            void Look(double[] p)
            {
                var exact = formula.Exact(p);
                if (exact.IsFinite && !(exact.Hi >= lowest.Hi))
                    (lowest, lowestAt) = (exact, p);
                Assert.False(exact.IsFinite && exact.IsBelow(least.Proved), $"{about}\n{exact} at {string.Join(", ", p)}");
            }

            for (var k = 0; k < 1 << inputs; k++)
                Look([.. box.Select((side, i) => (k >> i & 1) == 0 ? side.Low : side.High)]);
            Look([.. least.At]);
            for (var k = 0; k < 1000; k++)
                Look([.. box.Select(side => Math.Clamp(side.Low + (random.NextDouble() * side.Width), side.Low, side.High))]);
            if (lowestAt.Length == 0)
                return;
            for (var step = 0.25; step > 1e-9; step *= 0.8)
            {
                for (var k = 0; k < 6; k++)
                    Look([.. lowestAt.Select((x, i) => Math.Clamp(x + (step * box[i].Width * ((2 * random.NextDouble()) - 1)), box[i].Low, box[i].High))]);
            }

            if (least.Outcome is Outcome.Corner or Outcome.Converged)
                Assert.True(least.Found <= lowest.Hi + Math.Max(Tolerance, 1e-13 * Math.Abs(lowest.Hi)), $"{about}\nbut {lowest} at {string.Join(", ", lowestAt)}");
        });
        Assert.True(ends[Outcome.Corner] > 100 && ends[Outcome.Converged] > 50, string.Join(", ", ends));
        TestContext.Current.TestOutputHelper?.WriteLine(string.Join(", ", ends));
    }

    /// <summary>A formula written once, evaluated in every kind of number.</summary>
    private interface IFormula
    {
        T At<T>(T[] x)
            where T : struct, IReal<T>;
    }

    private static BoxExtreme Search(IFormula formula, Interval[] box, double tolerance = Tolerance, int budget = 4000)
    {
        var least = BoxSearch.Least(formula.At, x => formula.At<Real>([.. x.Select(Real.Of)]).Value, box, tolerance, budget);
        Assert.True(least.Proved <= least.Found, $"{least}");
        Assert.All(least.At, (x, i) => Assert.True(box[i].Contains(x)));
        return least;
    }
}
