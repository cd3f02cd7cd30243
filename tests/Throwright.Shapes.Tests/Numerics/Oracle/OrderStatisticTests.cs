using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Numerics.Oracle;

public class OrderStatisticTests
{
    [Fact]
    public void Of_EveryRankOfManyLists_IsThatOfTheSortedList()
    {
        for (var seed = 0; seed < 2000; seed++)
        {
            var random = new Random(seed);
            var count = random.Next(1, 60);
            // Few different values, rising, falling and flat runs, infinities: where a selection goes wrong.
            double[] values = [.. Enumerable.Range(0, count).Select(i => random.Next(seed % 5 + 2) switch
            {
                0 => random.Next(3),
                1 => random.NextDouble() - 0.5,
                2 => i,
                3 => -i,
                4 => double.NegativeInfinity,
                _ => double.PositiveInfinity,
            })];
            double[] sorted = [.. values.Order()];
            for (var rank = 0; rank < count; rank++)
                Assert.Equal(sorted[rank], OrderStatistic.Of([.. values], rank));
        }
    }

    [Fact]
    public void Of_ManyAlikeOrSortedValues_EndsSoon()
    {
        const int Count = 300_000;
        foreach (var value in (Func<int, double>[])[_ => 7, i => i, i => -i, i => i % 2, i => Math.Abs(i - (Count / 2))])
        {
            double[] values = [.. Enumerable.Range(0, Count).Select(value)];
            double[] sorted = [.. values.Order()];
            Assert.Equal(sorted[Count / 40], OrderStatistic.Of(values, Count / 40));
            // The values are reordered by the first search; the second still finds its own.
            Assert.Equal(sorted[Count - 1], OrderStatistic.Of(values, Count - 1));
        }
    }

    [Fact]
    public void Of_ListWithNoNumber_IsNoNumber()
    {
        // A sample without a value has no place in the order; leaving it somewhere would shift every other one.
        double[] values = [3, 1, double.NaN, 2];
        for (var rank = 0; rank < values.Length; rank++)
            Assert.True(double.IsNaN(OrderStatistic.Of([.. values], rank)));
    }

    [Fact]
    public void Of_RankOutsideTheList_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => OrderStatistic.Of([1, 2], 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => OrderStatistic.Of([1, 2], -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => OrderStatistic.Of([], 0));
    }
}
