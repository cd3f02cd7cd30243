using CsCheck;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Numerics.Oracle;

public class OrderStatisticTests
{
    /// <summary>Oracle: sort them all. Few distinct values, so that equal ones are frequent.</summary>
    [Fact]
    public void OrderStatistic_OfAnyRank_IsThatOfTheSortedValues() =>
        Gen.Double[-3, 3].Select(v => Math.Round(v, 1)).Array[1, 200].Sample(
            values =>
            {
                var sorted = values.Order().ToArray();
                for (var rank = 0; rank < values.Length; rank++)
                    Assert.Equal(sorted[rank], OrderStatistic.Of((double[])values.Clone(), rank));
            },
            iter: 300,
            seed: "0N0XIzNsQ0O2");

    [Fact]
    public void OrderStatistic_RankOutside_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => OrderStatistic.Of([1, 2], 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => OrderStatistic.Of([1, 2], -1));
    }
}
