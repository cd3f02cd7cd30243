using CsCheck;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Numerics.Oracle;

public class RootsTests
{
    public static TheoryData<string, Func<double, double>, double, double, double> Known => new()
    {
        { "x^2 - 2", x => (x * x) - 2, 0, 2, Math.Sqrt(2) },
        { "x^2 - 2, ends swapped", x => (x * x) - 2, 2, 0, Math.Sqrt(2) },
        { "cos x", Math.Cos, 0, 3, Math.PI / 2 },
        { "x - cos x (Dottie's number)", x => x - Math.Cos(x), 0, 1, 0.7390851332151607 },
        { "exp(-x) - x (omega constant)", x => Math.Exp(-x) - x, 0, 1, 0.5671432904097838 },
        { "root at an end", x => x - 3, 3, 5, 3 },
        { "root at the other end", x => x - 5, 3, 5, 5 },
        { "cube", x => (x - 1) * (x - 1) * (x - 1), -3, 4, 1 },
        { "far too wide", x => Math.Atan(x - 0.25), -1e10, 1e12, 0.25 },
        { "steep", x => 1e200 * (x - 0.1), -1, 1, 0.1 },
        { "flat", x => 1e-200 * (x - 0.1), -1, 1, 0.1 },
        { "infinite at one end", x => Math.Log(x), 0, 4, 1 },
        { "near zero", x => x - 1e-12, -1, 1, 1e-12 },
        { "step", x => x < 0.3 ? -1 : 1, 0, 1, 0.3 },
    };

    [Theory]
    [MemberData(nameof(Known))]
    public void Between_KnownRoot_IsFoundToTheLastDigits(string what, Func<double, double> f, double a, double b, double root)
    {
        var found = Roots.Between(f, a, b);
        Assert.InRange(found, root - 2e-15 - (5e-16 * Math.Abs(root)), root + 2e-15 + (5e-16 * Math.Abs(root)));
        Assert.NotEmpty(what);
    }

    [Fact]
    public void Between_HardFunctions_NeedFewEvaluationsAndEnd()
    {
        var worst = 0;
        foreach (var power in (int[])[1, 3, 5, 9, 19, 25])
        {
            foreach (var root in (double[])[1.0 / 3, 0.001, -0.9, 17])
            {
                var calls = 0;
                var found = Roots.Between(
                    x =>
                    {
                        calls++;
                        return Math.Pow(x - root, power);
                    },
                    -20,
                    100);
                Assert.Equal(root, found, 1e-12);
                worst = Math.Max(worst, calls);
            }
        }

        Assert.True(worst < 400, $"{worst} evaluations");
    }

    [Fact]
    public void Between_SmoothFunctions_NeedFarFewerEvaluationsThanHalving()
    {
        // Halving from 1 or 2 down to 1e-15 takes 50.
        foreach (var (f, b) in ((Func<double, double>, double)[])[(x => (x * x) - 2, 2), (x => x - Math.Cos(x), 1), (x => Math.Exp(-x) - x, 1), (x => (x * x * x) - x - 1, 2)])
        {
            var calls = 0;
            Roots.Between(
                x =>
                {
                    calls++;
                    return f(x);
                },
                0,
                b);
            Assert.InRange(calls, 3, 12);
        }
    }

    [Fact]
    public void Between_RandomContinuousFunction_ClosesOnAChangeOfSign() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[0.1, 5], Gen.Double[-0.9, 0.9], Gen.Double[0, 6]).Sample(
            (shift, rate, wobble, phase) =>
            {
                double F(double x) => (rate * (x - shift)) + (wobble * rate * Math.Sin(x + phase) * 0.99);
                var root = Roots.Between(F, -50, 50);
                double around = 4e-15 + (4e-16 * Math.Abs(root));
                Assert.True(F(root - around) <= 1e-15 && F(root + around) >= -1e-15, $"{root:R}");
            },
            iter: 20_000);

    [Fact]
    public void Between_NoChangeOfSign_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => Roots.Between(x => (x * x) + 1, -1, 1));
        Assert.Throws<ArgumentException>(() => Roots.Between(x => x, 1, 2));
    }

    [Fact]
    public void Between_FunctionWithoutValue_IsRefusedNotAnswered()
    {
        Assert.Throws<ArgumentException>(() => Roots.Between(Math.Sqrt, -1, 1));
        Assert.Throws<ArgumentException>(() => Roots.Between(x => x < 0 ? 1 : Math.Sqrt(x - 3), -2, 2));
        Assert.Throws<ArithmeticException>(() => Roots.Between(x => x < -1 ? -1 : x > 1 ? 1 : double.NaN, -2, 3));
    }

    [Fact]
    public void All_RandomPolynomialsWithSeparatedRoots_FindsEachOnceInOrder()
    {
        for (var seed = 0; seed < 500; seed++)
        {
            var random = new Random(seed);
            var roots = new List<double>();
            for (var x = -1 + (0.05 * random.NextDouble()); x < 1; x += 0.05 + (0.5 * random.NextDouble()))
                roots.Add(x);
            var found = Roots.All(x => roots.Aggregate(1.0, (p, r) => p * (x - r)), -1, 1, 41);
            Assert.Equal(roots.Count, found.Count);
            for (var i = 0; i < roots.Count; i++)
                Assert.Equal(roots[i], found[i], 1e-13);
        }
    }

    [Fact]
    public void All_RootsOnTheSteps_AreFoundOnce()
    {
        Assert.Equal([0, 1, 2, 3, 4], Roots.All(x => x * (x - 1) * (x - 2) * (x - 3) * (x - 4), 0, 4, 4));
        Assert.Equal([0, 1, 2, 3, 4], Roots.All(x => x * (x - 1) * (x - 2) * (x - 3) * (x - 4), 0, 4, 8));
        Assert.Equal([1], Roots.All(x => (x - 1) * (x - 1), 0, 4, 4));
        Assert.Empty(Roots.All(x => x + 1, 0, 4, 4));
    }

    [Fact]
    public void All_Poles_AreNoRoots()
    {
        // tan x changes sign at pi/2 without ever being zero there.
        var roots = Roots.All(Math.Tan, -1, 7, 100);
        Assert.Equal(3, roots.Count);
        for (var i = 0; i < 3; i++)
            Assert.Equal(i * Math.PI, roots[i], 1e-14);
        Assert.Empty(Roots.All(x => 1 / (x - 0.37), 0, 1, 10));
    }

    [Fact]
    public void All_PlacesWithoutValue_AreSkipped()
    {
        // Root of x^2 - 1 is real only outside -1 .. 1; less 1 it is zero at +/- sqrt 2.
        var roots = Roots.All(x => Math.Sqrt((x * x) - 1) - 1, -2, 2, 57);
        Assert.Equal(2, roots.Count);
        Assert.Equal(-Math.Sqrt(2), roots[0], 1e-14);
        Assert.Equal(Math.Sqrt(2), roots[1], 1e-14);
        // A gap narrower than a step, with a change of sign across it.
        Assert.Empty(Roots.All(x => Math.Abs(x) < 0.1 ? double.NaN : Math.Sign(x), -1, 1, 3));
    }

    [Fact]
    public void All_LastStep_IsTheEndItself()
    {
        foreach (var to in (double[])[0.1, 0.7, 1.1, Math.PI, 2.9])
        {
            var most = double.NegativeInfinity;
            Roots.All(
                x =>
                {
                    most = Math.Max(most, x);
                    return 1;
                },
                -0.3,
                to,
                49);
            Assert.Equal(to, most);
        }
    }
}
