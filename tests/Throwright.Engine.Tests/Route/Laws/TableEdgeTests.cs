using Throwright.Engine.Route;

namespace Throwright.Engine.Tests.Route.Laws;

public class TableEdgeTests
{
    private static TableReading Exact(double value) => new(value, 0);

    [Theory]
    // Weight number w l^3 / B: light, middling, hanging almost straight down.
    [InlineData(0.05)]
    [InlineData(2)]
    [InlineData(8)]
    [InlineData(40)]
    public void Hang_MatchesAPlainIntegration(double number)
    {
        // Second opinion: theta'' = -number (1 - s) cos theta by Runge-Kutta steps, theta' at the edge found by halving.
        var (drop, angle) = PlainHang(number);
        var (d, a) = TableEdge.Hang(number);
        Assert.Equal(drop, d, 2e-7);
        Assert.Equal(angle, a, 2e-6);
    }

    [Theory]
    [InlineData(0.3, 0.02)]
    [InlineData(0.6, 0.33)]
    [InlineData(0.5, 0.39)]
    public void Find_GivesBackTheStiffnessThatHangsSo(double overhang, double drop)
    {
        const double Weight = 0.9;
        var found = TableEdge.Find(new() { Overhang = Exact(overhang), Drop = Exact(drop), Weight = Exact(Weight) });
        var (plain, angle) = PlainHang(Weight * overhang * overhang * overhang / found.Stiffness);
        Assert.Equal(drop, overhang * plain, 1e-6);
        Assert.Equal(angle, found.TipAngle, 1e-5);
        Assert.Equal(found.Stiffness, found.Low);
        Assert.Equal(found.Stiffness, found.High);
    }

    [Fact]
    public void Find_SmallDrop_IsTheSmallDropFormula()
    {
        // B = w l^4 / (8 drop) for small drops (any text on beams: uniform load on a cantilever).
        var found = TableEdge.Find(new() { Overhang = Exact(0.2), Drop = Exact(0.001), Weight = Exact(1) });
        Assert.Equal(1 * Math.Pow(0.2, 4) / (8 * 0.001), found.Stiffness, 1e-4 * found.Stiffness);
    }

    [Fact]
    public void Find_ReadingsOff_TheLimitsHoldEveryDraw()
    {
        TableEdgeCase of = new() { Overhang = new(0.4, 0.002), Drop = new(0.1, 0.003), Weight = new(0.8, 0.02) };
        var found = TableEdge.Find(of);
        Assert.True(found.Low < found.Stiffness && found.Stiffness < found.High);
        var least = double.PositiveInfinity;
        var most = 0.0;
        foreach (var l in (double[])[-1, 0, 1])
        {
            foreach (var d in (double[])[-1, 0, 1])
            {
                var b = TableEdge.Find(new() { Overhang = Exact(0.4 + (0.002 * l)), Drop = Exact(0.1 + (0.003 * d)), Weight = Exact(0.8 + (0.02 * l * d)) }).Stiffness;
                (least, most) = (Math.Min(least, b), Math.Max(most, b));
            }
        }

        Assert.InRange(least, found.Low, found.Stiffness);
        Assert.InRange(most, found.Stiffness, found.High);
    }

    [Fact]
    public void Find_RolledOver_TakesTheMeanAndNamesTheSet()
    {
        var mean = TableEdge.Find(new() { Overhang = Exact(0.4), Drop = Exact(0.1), Weight = Exact(0.8) });
        var rolled = TableEdge.Find(new() { Overhang = Exact(0.4), Drop = Exact(0.116), DropRolledOver = Exact(0.084), Weight = Exact(0.8) });
        Assert.Equal(mean.Stiffness, rolled.Stiffness, 1e-9);
        Assert.Equal(0.2, rolled.Set, 1e-12);
        Assert.True(double.IsNaN(mean.Set));
    }

    [Fact]
    public void Find_ReadingsThatSayNothing_AreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => TableEdge.Find(new() { Overhang = Exact(0.4), Drop = Exact(0.33), Weight = Exact(0.8) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => TableEdge.Find(new() { Overhang = Exact(0.4), Drop = new(0.002, 0.003), Weight = Exact(0.8) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => TableEdge.Find(new() { Overhang = Exact(0.4), Drop = Exact(0.1), Weight = Exact(0) }));
    }

    private static (double Drop, double Angle) PlainHang(double number)
    {
        // Bending moment at the tip is none: theta'(1) = 0.
        double low = 0, high = number;
        for (var i = 0; i < 60; i++)
        {
            var middle = 0.5 * (low + high);
            if (Run(middle).Slope > 0)
                high = middle;
            else
                low = middle;
        }

        var (_, drop, angle) = Run(0.5 * (low + high));
        return (drop, angle);

        (double Slope, double Drop, double Angle) Run(double slope)
        {
            double theta = 0, y = 0, s = 0;
            const int N = 800;
            const double H = 1.0 / N;
            for (var i = 0; i < N; i++, s += H)
            {
                (double T, double V, double Y) F(double at, double t, double v) => (v, -number * (1 - at) * Math.Cos(t), Math.Sin(t));
                var a = F(s, theta, slope);
                var b = F(s + (0.5 * H), theta + (0.5 * H * a.T), slope + (0.5 * H * a.V));
                var c = F(s + (0.5 * H), theta + (0.5 * H * b.T), slope + (0.5 * H * b.V));
                var d = F(s + H, theta + (H * c.T), slope + (H * c.V));
                theta += H / 6 * (a.T + (2 * b.T) + (2 * c.T) + d.T);
                slope += H / 6 * (a.V + (2 * b.V) + (2 * c.V) + d.V);
                y += H / 6 * (a.Y + (2 * b.Y) + (2 * c.Y) + d.Y);
            }

            return (slope, y, theta);
        }
    }
}
