using System.Runtime.Intrinsics;
using Throwright.Shapes.Numerics;
using Throwright.Shapes.Tests.Yardsticks;

namespace Throwright.Shapes.Tests.Numerics.Oracle;

public class ElementaryTests
{
    /// <summary>
    /// Stated bound on |computed - true|. <see cref="Interval"/> adds 4e-16 on each side of a sine or cosine and owes
    /// 0.6e-16 of that to pi/2 itself.
    /// </summary>
    private const double Bound = 2.3e-16;

    [Fact]
    public void SineAndCosine_MillionPointsTo1e5_AreWithinStatedBoundOfThirtyTwoDigits()
    {
        double worst = 0, worstAt = 0, worstInUnits = 0;
        Parallel.ForEach(Chunks(1_000_000), points =>
        {
            double most = 0, at = 0, mostUnits = 0;
            foreach (var x in points)
            {
                var wide = Wide.Of(x);
                foreach (var (computed, exact) in ((double, Wide)[])[(Elementary.Sin(x), Wide.Sin(wide)), (Elementary.Cos(x), Wide.Cos(wide))])
                {
                    var off = Math.Abs((exact - Wide.Of(computed)).Hi);
                    if (off > most)
                        (most, at) = (off, x);
                    mostUnits = Math.Max(mostUnits, (off - 1e-16) / (Math.BitIncrement(Math.Abs(exact.Hi)) - Math.Abs(exact.Hi)));
                    Assert.InRange(computed, -1, 1);
                }
            }

            lock (this)
            {
                if (most > worst)
                    (worst, worstAt) = (most, at);
                worstInUnits = Math.Max(worstInUnits, mostUnits);
            }
        });
        Assert.True(worst < Bound, $"off by {worst} at {worstAt:R}");
        Assert.True(worstInUnits < 1, $"off by {worstInUnits} units in the last place plus 1e-16");
        TestContext.Current.TestOutputHelper?.WriteLine($"worst error {worst:e3} at {worstAt:R}; {worstInUnits:f3} units beyond 1e-16");
    }

    [Fact]
    public void SineAndCosine_MillionPoints_AgreeWithTheRuntimesFunctions()
    {
        // The runtime's functions are themselves off by up to 1 unit in the last place (1.1e-16 near 1).
        const double Apart = Bound + 1.1e-16;
        foreach (var points in Chunks(1_000_000))
        {
            foreach (var x in points)
            {
                if (Math.Abs(Elementary.Sin(x) - Math.Sin(x)) > Apart || Math.Abs(Elementary.Cos(x) - Math.Cos(x)) > Apart)
                    Assert.Fail($"{x:R}: sin {Elementary.Sin(x):R} {Math.Sin(x):R}, cos {Elementary.Cos(x):R} {Math.Cos(x):R}");
            }
        }
    }

    [Fact]
    public void Sine_NearMultiplesOfHalfTurn_KeepsItsLeadingDigits()
    {
        // The result is as small as 1e-16 here, so an absolute bound says little: ask for 1e-4 of the result.
        for (var n = 1; n < 31_000; n++)
        {
            var x = n * Math.PI;
            var exact = Wide.Sin(Wide.Of(x)).Hi;
            Assert.True(Math.Abs(Elementary.Sin(x) - exact) <= 1e-4 * Math.Abs(exact), $"sin({x:R}) = {Elementary.Sin(x):R}, not {exact:R}");
        }
    }

    [Theory]
    [InlineData(100_001)]
    [InlineData(-1e6)]
    [InlineData(1e17)]
    [InlineData(-1e300)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(double.NaN)]
    public void SineAndCosine_OutsideTheirRange_AreNoNumber(double x)
    {
        Assert.True(double.IsNaN(Elementary.Sin(x)), $"{Elementary.Sin(x):R}");
        Assert.True(double.IsNaN(Elementary.Cos(x)), $"{Elementary.Cos(x):R}");
        Assert.True(double.IsNaN(Elementary.Sin(Vector512.Create(x, 0, 0, 0, 0, 0, 0, 0))[0]));
        Assert.True(double.IsNaN(Elementary.Cos(Vector512.Create(0, 0, x, 0, 0, 0, 0, 0))[2]));
    }

    /// <summary>Points of every size up to 1e5, half of them within a few units of a multiple of pi/2.</summary>
    private static IEnumerable<double[]> Chunks(int count)
    {
        const int Size = 10_000;
        for (var chunk = 0; chunk < count / Size; chunk++)
        {
            var random = new Random(chunk);
            var points = new double[Size];
            for (var i = 0; i < Size; i++)
            {
                var sign = random.Next(2) == 0 ? -1 : 1;
                points[i] = sign * (random.Next(6) switch
                {
                    0 => random.NextDouble() * 1e5,
                    1 => random.NextDouble() * 10,
                    2 => Math.Pow(10, (random.NextDouble() * 25) - 20),
                    3 => Nudged(random.Next(0, 63_661) * (Math.PI / 2), random.Next(-4, 5)),
                    4 => Nudged(random.Next(0, 100) * (Math.PI / 2), random.Next(-4, 5)),
                    _ => Nudged(random.Next(0, 127_000) * (Math.PI / 4), random.Next(-4, 5)),
                });
            }

            yield return points;
        }
    }

    private static double Nudged(double x, int units) => BitConverter.Int64BitsToDouble(Math.Max(0, BitConverter.DoubleToInt64Bits(x) + units));
}
