using System.Numerics;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Numerics.Oracle;

public class ProportionTests
{
    [Fact]
    public void Wilson_EveryCountUpTo200_SolvesItsDefiningEquation()
    {
        // The ends are the shares p0 for which the count lies z standard errors off: (p - p0)^2 n = z^2 p0 (1 - p0).
        const double Z = 1.959963984540054;
        for (var of = 1; of <= 200; of++)
        {
            for (var hits = 0; hits <= of; hits++)
            {
                var p = hits / (double)of;
                var interval = Proportion.Wilson(hits, of);
                Assert.True(interval.Contains(p) && interval.Low >= 0 && interval.High <= 1, $"{hits} of {of}: {interval}");
                foreach (var end in (double[])[interval.Low, interval.High])
                    Assert.Equal(Z * Z * end * (1 - end), (p - end) * (p - end) * of, 1e-12 * of);
                var mirror = Proportion.Wilson(of - hits, of);
                Assert.Equal(interval.Low, 1 - mirror.High, 1e-15);
            }
        }
    }

    [Fact]
    public void Wilson_MillionsOfSamples_StaysFinite()
    {
        var interval = Proportion.Wilson(0, 1_000_000_000_000);
        Assert.Equal(0, interval.Low);
        Assert.InRange(interval.High, 3.8e-12, 3.9e-12);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(-1, 5)]
    [InlineData(6, 5)]
    public void Wilson_ImpossibleCounts_AreRefused(long hits, long of)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Proportion.Wilson(hits, of));
    }

    [Theory]
    [InlineData(1, 2)]
    [InlineData(9, 10)]
    [InlineData(19, 20)]
    public void WilksCount_WholeNumberArithmetic_GivesTheSameCount(int shareTop, int shareBottom)
    {
        // P(fewer than rank of n above) as a whole number over shareBottom^n, compared with 1/20 without rounding.
        foreach (var rank in (int[])[1, 2, 3, 7, 40])
        {
            var n = rank;
            while (20 * Below(n, rank, shareTop, shareBottom) > BigInteger.Pow(shareBottom, n))
                n++;
            Assert.Equal(n, Proportion.WilksCount((double)shareTop / shareBottom, 0.95, rank));
        }
    }

    [Fact]
    public void WilksCount_HighRank_IsNotFooledByTinyPowers()
    {
        // 0.5^n leaves the range of a double at n = 1075, long before 1000 of n lie in the upper half.
        var n = Proportion.WilksCount(0.5, 0.95, 1000);
        Assert.True(20 * Below(n, 1000, 1, 2) <= BigInteger.Pow(2, n), $"{n} is too few");
        Assert.True(20 * Below(n - 1, 1000, 1, 2) > BigInteger.Pow(2, n - 1), $"{n} is not the smallest");
    }

    [Theory]
    [InlineData(1, 0.95, 1)]
    [InlineData(0, 0.95, 1)]
    [InlineData(0.95, 1, 1)]
    [InlineData(0.95, 0, 1)]
    [InlineData(double.NaN, 0.95, 1)]
    [InlineData(0.95, double.NaN, 1)]
    [InlineData(0.95, 0.95, 0)]
    public void WilksCount_ImpossibleDemand_IsRefused(double share, double confidence, int rank)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Proportion.WilksCount(share, confidence, rank));
    }

    private static BigInteger Below(int n, int rank, int shareTop, int shareBottom)
    {
        BigInteger below = 0, choose = 1;
        for (var k = 0; k < rank; k++)
        {
            below += choose * BigInteger.Pow(shareBottom - shareTop, k) * BigInteger.Pow(shareTop, n - k);
            choose = choose * (n - k) / (k + 1);
        }

        return below;
    }
}
