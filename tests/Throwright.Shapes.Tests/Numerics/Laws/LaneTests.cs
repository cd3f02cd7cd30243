using System.Runtime.Intrinsics;
using Throwright.Shapes.Numerics;
using Throwright.Shapes.Tests.Yardsticks;

namespace Throwright.Shapes.Tests.Numerics.Laws;

public class LaneTests
{
    private static readonly double[] Special =
    [
        0, -0.0, 1, -1, double.Epsilon, -double.Epsilon, double.MaxValue, double.MinValue, double.PositiveInfinity, double.NegativeInfinity,
        double.NaN, 1e5, -1e5, 100_001, 2.2250738585072014E-308, Math.PI, Math.PI / 2, Math.PI / 4, -Math.PI,
    ];

    [Fact]
    public void Lane_EveryOperation_HasTheBitsOfAsManyReals()
    {
        var random = new Random(3);
        for (var i = 0; i < 200_000; i++)
        {
            double[] a = Some(random), b = Some(random);
            Lane la = new(Vector512.Create(a)), lb = new(Vector512.Create(b));
            Compare("+", la + lb, k => new Real(a[k]) + new Real(b[k]), a, b);
            Compare("-", la - lb, k => new Real(a[k]) - new Real(b[k]), a, b);
            Compare("*", la * lb, k => new Real(a[k]) * new Real(b[k]), a, b);
            Compare("/", la / lb, k => new Real(a[k]) / new Real(b[k]), a, b);
            Compare("negative", -la, k => -new Real(a[k]), a, b);
            Compare("scaled", b[0] * la, k => b[0] * new Real(a[k]), a, b);
            Compare("root", Lane.Sqrt(la), k => Real.Sqrt(new(a[k])), a, b);
            Compare("square", Lane.Square(la), k => Real.Square(new(a[k])), a, b);
            Compare("cosine", Lane.Cos(la), k => Real.Cos(new(a[k])), a, b);
            Compare("sine", Lane.Sin(la), k => Real.Sin(new(a[k])), a, b);
            Compare("at least zero", Lane.AtLeastZero(la), k => Real.AtLeastZero(new(a[k])), a, b);
            Compare("of", Lane.Of(a[1]), _ => Real.Of(a[1]), a, b);
        }
    }

    [Fact]
    public void Lane_RandomFormula_HasTheBitsOfAsManyReals()
    {
        for (var seed = 0; seed < 2000; seed++)
        {
            var random = new Random(seed);
            var formula = Formula.Grow(random, 3, 6);
            double[][] inputs = [Some(random), Some(random), Some(random)];
            var lane = formula.At<Lane>([.. inputs.Select(some => new Lane(Vector512.Create(some)))]);
            Compare(formula.ToString(), lane, k => new(formula.Plain([.. inputs.Select(some => some[k])])), inputs[0], inputs[1]);
        }
    }

    [Fact]
    public void AtLeastZero_NoNumber_StaysNoNumber()
    {
        // A figure that does not exist must not turn into a harmless zero.
        Assert.True(double.IsNaN(Real.AtLeastZero(new(double.NaN)).Value));
        Assert.True(double.IsNaN(Lane.AtLeastZero(new(Vector512.Create(double.NaN))).Values[2]));
        Assert.Equal(0, Real.AtLeastZero(new(-3)).Value);
        Assert.Equal(3, Real.AtLeastZero(new(3)).Value);
        Assert.Equal(0L, BitConverter.DoubleToInt64Bits(Real.AtLeastZero(new(-0.0)).Value));
    }

    private static double[] Some(Random random) => [.. Enumerable.Range(0, Lane.Width).Select(_ => random.Next(8) == 0
        ? Special[random.Next(Special.Length)]
        : random.Next(8) == 0 ? BitConverter.Int64BitsToDouble(random.NextInt64()) : (random.NextDouble() - 0.5) * Math.Pow(10, random.Next(-3, 7)))];

    private static void Compare(string what, Lane lane, Func<int, Real> real, double[] a, double[] b)
    {
        for (var k = 0; k < Lane.Width; k++)
        {
            double x = lane.Values[k], y = real(k).Value;
            // Which of two NaNs a processor hands on is not defined; that it is one, is.
            if (BitConverter.DoubleToInt64Bits(x) != BitConverter.DoubleToInt64Bits(y) && !(double.IsNaN(x) && double.IsNaN(y)))
                Assert.Fail($"{what} of {a[k]:R}, {b[k]:R}: lane {x:R}, real {y:R}");
        }
    }
}
