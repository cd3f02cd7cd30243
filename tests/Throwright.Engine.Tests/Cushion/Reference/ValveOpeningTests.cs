using Throwright.Engine.Cushion;
using Throwright.Engine.Sources;

namespace Throwright.Engine.Tests.Cushion.Reference;

/// <summary>Quarter-turn valves: worked figures of docs/theory/cushion.md and a published loss table.</summary>
public sealed class ValveOpeningTests
{
    private const double Degree = Math.PI / 180;

    // Two equal circles (D).
    [Theory]
    [Trait("Check", "Q1")]
    [InlineData(0.10, 0.872889)]
    [InlineData(0.25, 0.685038)]
    [InlineData(0.50, 0.391002)]
    [InlineData(0.75, 0.144294)]
    [InlineData(1.00, 0)]
    public void Lens_OfTwoCircles_IsAsWorked(double apart, double share) => Assert.Equal(share, ValveOpening.Lens(apart), 1e-6);

    // Port on the sphere (D), sampled with 4 million points (N, 1e-3).
    [Theory]
    [Trait("Check", "Q2")]
    [InlineData(82.5, 2, 0.9705)]
    [InlineData(82.5, 5, 0.9262)]
    [InlineData(82.5, 10, 0.8526)]
    [InlineData(82.5, 20, 0.7068)]
    [InlineData(82.5, 30, 0.5640)]
    [InlineData(82.5, 45, 0.3603)]
    [InlineData(82.5, 60, 0.1779)]
    [InlineData(82.5, 75, 0.0366)]
    [InlineData(80, 5, 0.9237)]
    [InlineData(80, 10, 0.8476)]
    [InlineData(80, 30, 0.5498)]
    [InlineData(80, 60, 0.1565)]
    public void Share_OfTheOpening_IsAsWorked(double port, double fromOpen, double share) =>
        Assert.Equal(share, ValveOpening.Share(Math.Sin(port / 2 * Degree), fromOpen * Degree), 1e-4);

    [Fact]
    public void Share_AtItsEnds_IsWholeAndNothing()
    {
        var ratio = Math.Sin(40 * Degree);
        Assert.Equal(1, ValveOpening.Share(ratio, 0));
        Assert.Equal(1, ValveOpening.Share(ratio, 2e-9), 1e-6);
        Assert.Equal(0, ValveOpening.Share(ratio, 80 * Degree));
        Assert.Equal(0, ValveOpening.Share(ratio, 90 * Degree));
        Assert.True(ValveOpening.Share(ratio, 79.9 * Degree) is > 0 and < 1e-3);
        Assert.Equal(10 * Degree, ValveOpening.ClosedDeadBand(ratio), 1e-12);
    }

    // Plug cock losses: handbook fittings table in a public reprint (R); flow worked from them (D), open loss 0.
    [Theory]
    [Trait("Check", "Q3")]
    [InlineData(5, 0.9877, 0.9950, 0.9988)]
    [InlineData(10, 0.9345, 0.9722, 0.9928)]
    [InlineData(20, 0.7495, 0.8730, 0.9631)]
    [InlineData(40, 0.3219, 0.4735, 0.7323)]
    [InlineData(60, 0.0981, 0.1539, 0.2975)]
    public void Flow_OfAValveShortOfOpen_IsAsWorked(double fromOpen, params double[] byLine)
    {
        var table = Published.Table("valve/plug-cock-loss").Rows.Select(r => (r.Si("angle"), r.Si("loss"))).ToList();
        double[] lines = [2, 5, 20];
        for (var i = 0; i < 3; i++)
            Assert.Equal(byLine[i], ValveOpening.Flow(lines[i], 0, ValveOpening.Loss(table, 0, fromOpen * Degree)), 1e-4);
    }

    [Fact]
    public void Loss_BetweenTheRows_RisesAllTheWay()
    {
        var table = Published.Table("valve/plug-cock-loss").Rows.Select(r => (r.Si("angle"), r.Si("loss"))).ToList();
        var before = ValveOpening.Loss(table, 0.05, 0);
        Assert.Equal(0.05, before);
        for (var deg = 0.5; deg <= 60; deg += 0.5)
        {
            var here = ValveOpening.Loss(table, 0.05, deg * Degree);
            Assert.True(here >= before);
            before = here;
        }

        Assert.Equal(double.PositiveInfinity, ValveOpening.Loss(table, 0.05, 61 * Degree));
    }
}
