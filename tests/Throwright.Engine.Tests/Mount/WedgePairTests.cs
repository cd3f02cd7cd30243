using Throwright.Engine.Mount;

namespace Throwright.Engine.Tests.Mount;

/// <summary>Closed forms of the wedge pair. Figures in mm and degrees; all derived in docs/theory/mount.md.</summary>
public sealed class WedgePairTests
{
    private const double Mm = 1e-3, Degree = Math.PI / 180;

    [Theory]
    [Trait("Check", "W1")]
    // Evidence: lengths derived; the cut of the ellipse computed by two independent samplings, to its last printed digit.
    [InlineData(12.7, 1.6, 10, 13.178041, 0.0346)]
    [InlineData(10, 6, 20, 12.825599, 0.2416)]
    [InlineData(9.525, 0.8, 8, 9.731040, 0.0139)]
    public void SheetHole_ForATiltedShank_IsASlotAndAnEllipseCuts(double shank, double sheet, double tilt, double length, double cut)
    {
        var hole = SheetHole.For(shank * Mm, sheet * Mm, tilt * Degree);
        Assert.Equal(shank, hole.Width / Mm, 1e-12);
        Assert.Equal(length, hole.Length / Mm, 1e-6);
        Assert.Equal(cut, SheetHole.EllipseCuts(shank * Mm, sheet * Mm, tilt * Degree) / Mm, 5.1e-5);
    }

    [Fact]
    public void EllipseCuts_AgainstAllPointsOfBothOutlines_AgreesWithBruteForce()
    {
        // The distance to the ellipse by trying its points, without its equation.
        const double D = 10, T = 6, A = 20 * Degree;
        double b = D / 2, a = b / Math.Cos(A), shift = T * Math.Tan(A) / 2;
        var worst = 0.0;
        for (var i = 0; i <= 400; i++)
        {
            var f = 0.5 * Math.PI * i / 400;
            double x = shift + (a * Math.Cos(f)), y = b * Math.Sin(f);
            if ((x * x / ((a + shift) * (a + shift))) + (y * y / (b * b)) <= 1)
                continue;
            var near = Enumerable.Range(0, 4001).Min(k =>
            {
                var g = 0.5 * Math.PI * k / 4000;
                return Math.Sqrt(Math.Pow(x - ((a + shift) * Math.Cos(g)), 2) + Math.Pow(y - (b * Math.Sin(g)), 2));
            });
            worst = Math.Max(worst, near);
        }

        Assert.Equal(worst, SheetHole.EllipseCuts(D * Mm, T * Mm, A) / Mm, 2e-4);
    }

    [Fact]
    public void SheetHole_Slot_HoldsTheWholeShank()
    {
        // Points of the shank's surface inside the sheet, seen square to it, against the slot with half-round ends.
        foreach (var (d, t, tilt) in new[] { (9.5, 1.6, 12.5), (12.7, 0.8, 5.0), (10.0, 3.2, 30.0), (6.0, 1.0, 20.0) })
        {
            const double C = 0.4;
            var hole = SheetHole.For(d, t, tilt * Degree, C);
            var least = double.PositiveInfinity;
            for (var i = 0; i < 720; i++)
            {
                foreach (var z in new[] { -t / 2, 0, t / 2 })
                {
                    var f = i * Math.PI / 360;
                    double x = (z * Math.Tan(tilt * Degree)) + (d / 2 / Math.Cos(tilt * Degree) * Math.Cos(f)), y = d / 2 * Math.Sin(f);
                    var core = (hole.Length - hole.Width) / 2;
                    var off = Math.Max(0, Math.Abs(x) - core);
                    least = Math.Min(least, (hole.Width / 2) - Math.Sqrt((off * off) + (y * y)));
                }
            }

            Assert.Equal(C / 2, least, 1e-9);
        }
    }

    [Fact]
    [Trait("Check", "W2")]
    public void WedgePair_25By1InSheet16At10_StacksTo8032857()
    {
        var wedge = new WedgePair(25 * Mm, 13 * Mm, 1 * Mm, 1.6 * Mm, 10 * Degree);
        Assert.Equal(3.204087, wedge.CentreHeight / Mm, 5e-7);
        Assert.Equal(5.408175, wedge.ThickEdge / Mm, 5e-7);
        Assert.Equal(8.032857, wedge.Stack / Mm, 5e-7);
    }

    [Theory]
    [Trait("Check", "W3")]
    [InlineData(2000, 15, 0.15, 226.783)]
    [InlineData(2000, 25, 0.10, 699.975)]
    public void SideLoad_BeyondFriction_IsClampTimesTheTangent(double clamp, double tilt, double friction, double expected)
    {
        Assert.Equal(expected, WedgeSeat.SideLoad(clamp, tilt * Degree, friction), 5e-4);
        Assert.Equal(0, WedgeSeat.SideLoad(clamp, 5 * Degree, friction));
        // 5.71, 8.53 deg: below, friction alone holds.
        Assert.Equal(friction == 0.15 ? 8.53 : 5.71, WedgeSeat.SelfHolding(friction) / Degree, 5e-3);
    }

    [Fact]
    [Trait("Check", "W4")]
    public void Clamp_5NmOn127_Presses550MPaOnARing25By13()
    {
        var clamp = WedgeSeat.Clamp(5, 0.2, 12.7 * Mm);
        Assert.Equal(1968.5, clamp, 0.05);
        Assert.Equal(5.50e6, WedgeSeat.Pressure(clamp, 25 * Mm, 13 * Mm), 5e3);
    }

    [Theory]
    [Trait("Check", "W5")]
    [InlineData(10, 1.734345)]
    [InlineData(90, 14.106044)]
    [InlineData(180, 20)]
    public void SeatError_OfClockedWedges_IsTwiceTheArcSine(double clocked, double expected) =>
        Assert.Equal(expected, WedgeSeat.SeatError(10 * Degree, clocked * Degree) / Degree, 5e-7);

    [Fact]
    [Trait("Check", "W6")]
    public void BendingStress_OneDegreeOffSquare_Is738MPa() =>
        Assert.Equal(738.9e6, WedgeSeat.BendingStress(200e9, Degree, 12.7 * Mm, 30 * Mm), 5e4);

    [Fact]
    public void WedgePair_WorkedExample_AgreesWithItsFigures()
    {
        // 12.5 deg, D 32, bore 11.2, thin edge 1.5, sheet 1.6; volume also by a solid modeller, 3561.886933 mm^3.
        var wedge = new WedgePair(32 * Mm, 11.2 * Mm, 1.5 * Mm, 1.6 * Mm, 12.5 * Degree);
        Assert.Equal(3561.886933, wedge.Volume / (Mm * Mm * Mm), 1e-6);
        Assert.Equal(11.73, wedge.Stack / Mm, 5e-3);
        var hole = SheetHole.For(9.5 * Mm, 1.6 * Mm, 12.5 * Degree, 0.4 * Mm);
        Assert.Equal(9.9, hole.Width / Mm, 1e-9);
        Assert.Equal(10.49, hole.Length / Mm, 5e-3);
        Assert.Equal(0.18, wedge.PiercingShift / Mm, 5e-3);
        Assert.Equal(1.08, WedgeSeat.SeatError(12.5 * Degree, 5 * Degree) / Degree, 5e-3);
        Assert.Equal(0.14, WedgeSeat.Gap(16, 0.5 * Degree), 5e-3);
        // One cut through a spacer: half of it and half the kerf each.
        Assert.Equal(2 * wedge.CentreHeight, wedge.SpacerLength(0), 1e-15);
    }

    [Fact]
    public void LargestTilt_PutIntoTheStack_UsesTheWholeThread()
    {
        var most = WedgePair.LargestTilt(14, 32, 1.6);
        Assert.Equal(21.0, most / Degree, 0.05);
        Assert.Equal(14, new WedgePair(32, 11, 0, 1.6, most).Stack, 1e-12);
        Assert.True(double.IsNaN(WedgePair.LargestTilt(1, 32, 1.6)));
        Assert.Equal(0, WedgePair.LargestTilt(1.6, 32, 1.6), 1e-12);
    }

    [Theory]
    [InlineData(300, 0.45)]
    [InlineData(500, 0.27)]
    [InlineData(1000, 0.13)]
    [InlineData(2000, 0.067)]
    public void CurvedSheetGap_UnderAFlatWedge_IsTheSagitta(double radius, double expected) =>
        Assert.Equal(expected, WedgeSeat.CurvedSheetGap(radius, 16 / Math.Cos(12.5 * Degree)), 5e-3);

    [Fact]
    public void WedgePair_TurnedHalfRoundAboutTheTiltLine_IsTheOther()
    {
        // Points of one washer, turned by rho(v) = 2 (v.h) h - v, are points of the other: one part makes both.
        var (sin, cos) = Math.SinCos(12.5 * Degree);
        const double T = 1.6, R = 16, Bore = 5.6, Q = 6.5;
#pragma warning disable CA5394 // A fixed seed is the point.
        var random = new Random(7);
        var inside = 0;
        for (var i = 0; i < 100_000; i++)
        {
            double x = (random.NextDouble() - 0.5) * 40, y = (random.NextDouble() - 0.5) * 40, z = (random.NextDouble() - 0.5) * 20;
#pragma warning restore CA5394
            var outer = Outer(x, y, z);
            inside += outer ? 1 : 0;
            // Tilt line y, sheet normal z: rho turns x and z round.
            Assert.Equal(outer, Inner(-x, y, -z));
        }

        Assert.True(inside > 1000);

        double Along(double x, double z) => (x * sin) + (z * cos);
        double Off(double x, double y, double z) => Math.Sqrt(Math.Pow(x - (Along(x, z) * sin), 2) + (y * y) + Math.Pow(z - (Along(x, z) * cos), 2));
        bool Ring(double r) => r is >= Bore and <= R;
        bool Outer(double x, double y, double z) => z >= T / 2 && Along(x, z) <= Q && Ring(Off(x, y, z));
        bool Inner(double x, double y, double z) => z <= -T / 2 && Along(x, z) >= -Q && Ring(Off(x, y, z));
    }
}
