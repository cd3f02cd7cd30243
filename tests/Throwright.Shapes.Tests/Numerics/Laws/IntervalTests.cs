using CsCheck;
using Throwright.Shapes.Numerics;
using Throwright.Shapes.Tests.Yardsticks;

namespace Throwright.Shapes.Tests.Numerics.Laws;

/// <summary>The one law of intervals: whatever the points, their exact result lies in the interval's result.</summary>
public class IntervalTests
{
    private static readonly Gen<double> AnySize = Gen.OneOf<double>(
        Gen.OneOf<double>(0, -0.0, 1, -1, double.Epsilon, -double.Epsilon, 1e-160, -3e-170, 1e-308, 1e200, -1e200, double.MaxValue, double.MinValue),
        Gen.Double[-10, 10],
        Gen.Select(Gen.Double[-1, 1], Gen.Int[-1000, 1000], (m, e) => Math.ScaleB(m, e)));

    private static readonly Gen<double> Plain = Gen.OneOf<double>(
        Gen.Double[-10, 10], Gen.Double[-1e-3, 1e-3], Gen.Double[-1e4, 1e4], Gen.OneOf<double>(0, 1, -1, 0.5, 2.0));

    /// <summary>An interval (now and then without an end, or with no width) and a point of it.</summary>
    private static Gen<(Interval Interval, double Point)> PointIn(Gen<double> ends) =>
        Gen.Select(ends, ends, Gen.Double[0, 1], Gen.Int[0, 9], (p, q, share, kind) =>
        {
            var (low, high) = (Math.Min(p, q), Math.Max(p, q));
            if (kind == 0)
                (low, high) = (p, p);
            var point = kind switch { 1 => low, 2 => high, _ => Math.Clamp(((1 - share) * low) + (share * high), low, high) };
            return (new Interval(kind == 3 ? double.NegativeInfinity : low, kind == 4 ? double.PositiveInfinity : high), point);
        });

    [Fact]
    public void Interval_SumDifferenceProduct_HoldTheExactResult() =>
        Gen.Select(PointIn(AnySize), PointIn(AnySize)).Sample(
            (a, b) =>
            {
                Dyadic x = Dyadic.Of(a.Point), y = Dyadic.Of(b.Point);
                AssertHolds(a.Interval + b.Interval, x + y);
                AssertHolds(a.Interval - b.Interval, x - y);
                AssertHolds(a.Interval * b.Interval, x * y);
                AssertHolds(-a.Interval, -x);
                AssertHolds(Interval.Square(a.Interval), x * x);
                Assert.True(Interval.Square(a.Interval).Low >= 0);
                AssertHolds(Interval.AtLeastZero(a.Interval), x.Sign > 0 ? x : Dyadic.Of(0));
                AssertHolds(Interval.Hull(a.Interval, b.Interval), x);
            },
            iter: 100_000);

    [Fact]
    public void Interval_Quotient_HoldsTheExactResult() =>
        Gen.Select(PointIn(AnySize), PointIn(AnySize)).Sample(
            (a, b) =>
            {
                var quotient = a.Interval / b.Interval;
                if (b.Interval.Contains(0))
                    Assert.Equal(Interval.Whole, quotient);
                if (b.Point == 0)
                    return;
                // low <= x/y  <=>  low y <= x for y above zero, >= for y below.
                Dyadic x = Dyadic.Of(a.Point), y = Dyadic.Of(b.Point);
                if (double.IsFinite(quotient.Low))
                    Assert.True(((x - (Dyadic.Of(quotient.Low) * y)).Sign * y.Sign) >= 0, $"{a} / {b} = {quotient}");
                if (double.IsFinite(quotient.High))
                    Assert.True(((x - (Dyadic.Of(quotient.High) * y)).Sign * y.Sign) <= 0, $"{a} / {b} = {quotient}");
                Assert.True(quotient.Low < double.PositiveInfinity && quotient.High > double.NegativeInfinity);
            },
            iter: 100_000);

    [Fact]
    public void Interval_Root_HoldsTheExactResult() =>
        PointIn(AnySize).Sample(
            (interval, point) =>
            {
                var root = Interval.Sqrt(interval);
                if (interval.Low < 0)
                {
                    Assert.Equal(Interval.Whole, root);
                    return;
                }

                var x = Dyadic.Of(point);
                if (root.Low > 0)
                    Assert.True((Dyadic.Of(root.Low) * Dyadic.Of(root.Low)).CompareTo(x) <= 0, $"{root}");
                if (double.IsFinite(root.High))
                    Assert.True((Dyadic.Of(root.High) * Dyadic.Of(root.High)).CompareTo(x) >= 0, $"{root}");
            },
            iter: 100_000);

    [Fact]
    public void Interval_SineAndCosine_HoldTheExactResult() =>
        Gen.Select(
            Gen.OneOf<double>(
                Gen.Double[-7, 7],
                Gen.Double[-1e5, 1e5],
                Gen.Select(Gen.Int[-63_600, 63_600], Gen.Int[-3, 3], (n, units) => Nudged(n * (Math.PI / 2), units)),
                Gen.Select(Gen.Int[-8, 8], Gen.Int[-3, 3], (n, units) => Nudged(n * (Math.PI / 2), units))),
            Gen.OneOf<double>(Gen.Const(0.0), Gen.Double[0, 7], Gen.Double[0, 0.1], Gen.Double[0, 1e-12]),
            Gen.Double[0, 1]).Sample(
            (low, width, share) =>
            {
                var high = Math.Min(low + width, 1e5);
                if (high < low)
                    return;
                Interval interval = new(low, high), sine = Interval.Sin(interval), cosine = Interval.Cos(interval);
                foreach (var point in (double[])[low, high, Math.Clamp(low + (share * width), low, high)])
                {
                    Assert.True(Wide.Sin(Wide.Of(point)).IsIn(sine), $"sin {point:R} of {interval} not in {sine}");
                    Assert.True(Wide.Cos(Wide.Of(point)).IsIn(cosine), $"cos {point:R} of {interval} not in {cosine}");
                }

                // Not looser than the span of 1000 points by more than their spacing, else nothing could be proved.
                var (least, most) = (1.0, -1.0);
                for (var i = 0; i <= 1000; i++)
                {
                    var c = Math.Cos(low + ((high - low) * i / 1000));
                    (least, most) = (Math.Min(least, c), Math.Max(most, c));
                }

                Assert.InRange(cosine.Low, least - 3e-5, least + 1e-15);
                Assert.InRange(cosine.High, most - 1e-15, most + 3e-5);
            },
            iter: 20_000);

    [Fact]
    public void Interval_RandomFormula_HoldsTheExactResult() =>
        Gen.Select(Gen.Int, PointIn(Plain), PointIn(Plain), PointIn(Plain)).Sample(
            (seed, a, b, c) =>
            {
                var formula = Formula.Grow(new Random(seed), 3, 5);
                Interval[] box = [a.Interval, b.Interval, c.Interval];
                double[] point = [a.Point, b.Point, c.Point];
                var bound = formula.At<Bound>([.. box.Select((side, i) => Bound.Input(i, 3, side))]).Value;
                Assert.False(double.IsNaN(bound.Low) || double.IsNaN(bound.High));
                var exact = formula.Exact(point);
                // Where the point has no value (root of a negative number, sine beyond 1e5) there is nothing to hold.
                if (exact.IsFinite && Math.Abs(exact.Hi) < 1e200)
                    Assert.True(exact.IsIn(bound), $"{formula} at {string.Join(", ", point)} is {exact}, not in {bound}");
                var plain = formula.Plain(point);
                if (double.IsFinite(plain))
                    Assert.True(bound.Contains(plain), $"{formula} at {string.Join(", ", point)} computes as {plain:R}, not in {bound}");
            },
            iter: 50_000);

    [Fact]
    public void Interval_NothingTimesAnything_IsExactlyNothing()
    {
        var anything = new Interval(-3, 1e200);
        Assert.Equal(Interval.Zero, Interval.Zero * anything);
        Assert.Equal(Interval.Zero, anything * Interval.Zero);
        Assert.Equal(Interval.Zero, Interval.Zero + Interval.Zero);
        Assert.Equal(0, (new Interval(0, 2) * new Interval(0, 3)).Low);
        Assert.Equal(0, (new Interval(-2, 0) * new Interval(0, 3)).High);
        Assert.Equal(0, Interval.Sqrt(new Interval(0, 4)).Low);
        Assert.Equal(0, Interval.Square(new Interval(-2, 3)).Low);
        Assert.Equal(9, Interval.Square(new Interval(-2, 3)).High, 1e-14);
        Assert.Equal(4, Interval.Square(new Interval(-3, -2)).Low, 1e-14);
    }

    [Fact]
    public void Interval_ProductTooSmallForADouble_IsNotTakenForNothing()
    {
        var tiny = Interval.Of(1e-200) * Interval.Of(1e-200);
        Assert.True(tiny.Low >= 0 && tiny.High > 0, $"{tiny}");
        var below = Interval.Of(-1e-200) * Interval.Of(1e-200);
        Assert.True(below.Low < 0 && below.High <= 0, $"{below}");
        var across = new Interval(-1e-200, 1e-200) * Interval.Of(1e-200);
        Assert.True(across.Low < 0 && across.High > 0, $"{across}");
    }

    [Fact]
    public void Interval_Square_IsTightWhereAProductIsNot()
    {
        Assert.Equal(0, Interval.Square(new(-1, 2)).Low);
        Assert.InRange(Interval.Square(new(-1, 2)).High, 4, 4 + 1e-14);
        Assert.InRange(Interval.Square(new(-3, -2)).Low, 4 - 1e-14, 4);
        Assert.InRange(Interval.Square(new(-3, -2)).High, 9, 9 + 1e-14);
        Assert.True(Interval.Square(Interval.Of(1e-200)).High > 0);
        Assert.Equal(0, Interval.Square(Interval.Whole).Low);
    }

    [Fact]
    public void Interval_NoNumberAmongItsEnds_ProvesNothing()
    {
        var none = Interval.Of(double.NaN);
        foreach (var result in (Interval[])[none + Interval.Of(1), Interval.Of(1) - none, none * Interval.Of(2), Interval.Of(2) / none, Interval.Sqrt(none), Interval.Square(none), none * Interval.Zero, Interval.Zero / none])
            Assert.Equal(Interval.Whole, result);
    }

    [Theory]
    [InlineData(1, 2, 1.5)]
    [InlineData(1, double.PositiveInfinity, 1)]
    [InlineData(double.NegativeInfinity, -2, -2)]
    [InlineData(double.NegativeInfinity, double.PositiveInfinity, 0)]
    [InlineData(double.MinValue, double.MaxValue, 0)]
    [InlineData(double.Epsilon, double.Epsilon, double.Epsilon)]
    public void Middle_AnyInterval_LiesInIt(double low, double high, double middle)
    {
        Assert.Equal(middle, new Interval(low, high).Middle);
        Assert.True(new Interval(low, high).Contains(middle));
    }

    [Fact]
    public void Middle_RandomIntervals_LieInThem() =>
        PointIn(AnySize).Sample((interval, _) => Assert.True(interval.Contains(interval.Middle), $"{interval.Middle:R} not in {interval}"), iter: 100_000);

    private static double Nudged(double x, int units) => x == 0 ? units * double.Epsilon : BitConverter.Int64BitsToDouble(BitConverter.DoubleToInt64Bits(x) + units);

    private static void AssertHolds(Interval interval, Dyadic exact)
    {
        Assert.False(double.IsNaN(interval.Low) || double.IsNaN(interval.High));
        Assert.True(interval.Low < double.PositiveInfinity && interval.High > double.NegativeInfinity, $"{interval}");
        if (double.IsFinite(interval.Low))
            Assert.True(Dyadic.Of(interval.Low).CompareTo(exact) <= 0, $"{interval}");
        if (double.IsFinite(interval.High))
            Assert.True(Dyadic.Of(interval.High).CompareTo(exact) >= 0, $"{interval}");
    }
}
