using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Engine.Tests.Throw;
using Throwright.Shapes.Quantities;
using static Throwright.Engine.Tests.Chain.Cockpits;

namespace Throwright.Engine.Tests.Chain;

/// <summary>Whatever the aircraft really measures within the typed tolerances, it has at least the clearance that was told.</summary>
public sealed class DoubtfulPlacesTests
{
    private static (double Lower, double Upper) Bounds(Aircraft aircraft)
    {
        var pair = CockpitCheck.Solve(aircraft)!.Clearance.Pairs.Single();
        return (pair.Lower, pair.Upper);
    }

    private static Body Fixed(string id, PartShape shape) => new() { Id = id, Parts = [new("part", shape)] };

    private static Run T(double width = 100, KnobShape shape = KnobShape.THandle, double length = 0) => Handle("a").WithEnd(e => e with
    {
        Knob = shape,
        KnobSize = new() { Diameter = Levers.Mm(16), Width = Levers.Mm(width), Length = length > 0 ? Levers.Mm(length) : null },
    });

    /// <summary>A bar cut off square reaches with its full thickness to its end. The ball's near side is 5 mm above that.</summary>
    [Theory]
    [InlineData(KnobShape.THandle, 0)]
    [InlineData(KnobShape.THandle, 30)]
    [InlineData(KnobShape.LeverHandle, 16)]
    [InlineData(KnobShape.Round, 16)]
    public void BarOfAHandle_WithSquareEnds_IsThickToItsEnd(KnobShape shape, double length)
    {
        var (lower, upper) = Bounds(Of(T(shape: shape, length: length), Fixed("ball", new SphereShape(At(1050, 50, 714), Levers.Mm(1)))));
        Assert.InRange(0.005, lower - 1e-9, upper + 1e-9);
    }

    /// <summary>The face by the sheet's own point, and by the hole: either may be the wrong one.</summary>
    [Fact]
    public void Face_MeasuredTwice_IsDoubtfulByWhatBothSay()
    {
        var ball = Ball(1150, -50, 700);
        var plain = Bounds(Of(Handle("a"), ball)).Lower;
        var sheet = Panel with { At = At(1000, 0, 700, 3) };
        Assert.Equal(plain - 0.003, Bounds(Of(Handle("a").WithEnd(e => e with { Sheet = sheet }), ball) with { Sheets = [sheet] }).Lower, 1.1e-4);
        // The hole is measured 4 mm behind the face.
        Assert.Equal(plain - 0.004, Bounds(Of(Handle("a").WithEnd(e => e with { Hole = At(996, 0, 700) }), ball)).Lower, 1.1e-4);
    }

    [Fact]
    public void AxisOfAJoint_MeasuredAskew_ThrowsOffByTheTurn()
    {
        var random = new Random(20260301);
        Body Flap(double station, double waterline, double half) => new()
        {
            Id = "flap",
            Joints = [new TurnJoint("swing", new(0, 1, 0), At(station, 0, waterline, half), Angle.Zero, Deg(150))],
            Parts = [new("ball", new SphereShape(At(1400, 0, 700), Levers.Mm(20)))],
        };
        // Half a turn away the ball comes before the knob.
        var told = Bounds(Of(Handle("a"), Flap(1260, 720, 8))).Lower;
        Assert.InRange(told, 0.005, 1);
        for (var i = 0; i < 100; i++)
            Assert.True(Bounds(Of(Handle("a"), Flap(1260 + (8 * Sign(random)), 720 + (8 * Sign(random)), 0))).Upper >= told - 1e-9);
        // Where it hardly turns, the doubt about its axis is no doubt about its place.
        var still = Flap(1260, 720, 8) with { Joints = [new TurnJoint("swing", new(0, 1, 0), At(1260, 0, 720, 8), Angle.Zero, Deg(1))] };
        var sharp = still with { Joints = [new TurnJoint("swing", new(0, 1, 0), At(1260, 0, 720), Angle.Zero, Deg(1))] };
        Assert.InRange(Bounds(Of(Handle("a"), sharp)).Lower - Bounds(Of(Handle("a"), still)).Lower, -1e-4, 4e-4);
    }

    [Fact]
    public void FlatDisc_WithEndsMeasuredAskew_MayLean()
    {
        var random = new Random(20260302);
        Body Disc(double a, double b, double half) => Fixed("disc", new ConeShape(At(1140, a, 800, half), At(1150, b, 800, half), Levers.Mm(90), Levers.Mm(90)));
        var told = Bounds(Of(Handle("a"), Disc(0, 0, 1))).Lower;
        for (var i = 0; i < 60; i++)
        {
            var leaning = Fixed("disc", new ConeShape(
                At(1140 + Sign(random), Sign(random), 800 + Sign(random)), At(1150 + Sign(random), Sign(random), 800 + Sign(random)), Levers.Mm(90), Levers.Mm(90)));
            Assert.True(Bounds(Of(Handle("a"), leaning)).Upper >= told - 1e-9);
        }
    }

    /// <summary>A stretched leg's knee goes far up when hip and heel are nearer than measured.</summary>
    [Theory]
    [InlineData(300)]
    [InlineData(120)]
    public void Knee_OfADoubtfulHipAndHeel_IsLookedForWhereItCanBe(double hipHeight)
    {
        var random = new Random(20260303);
        Body Leg(double half, Func<double> off) => new()
        {
            Id = "leg",
            ReadyMade = new SeatedLeg
            {
                Side = BodySide.Right,
                Outward = Angle.Zero,
                Inward = Angle.Zero,
                Hip = At(1700 + off(), 0 + off(), hipHeight + off(), half),
                Heel = At(858 + off(), off(), 100 + off(), half),
                Thigh = Mm(480),
                Shin = Mm(420),
                ThighDiameter = Mm(160),
                ShinDiameter = Mm(120),
            },
        };
        var told = Bounds(Of(Handle("a"), Leg(10, () => 0))).Lower;
        Assert.InRange(told, 0.005, 1);
        for (var i = 0; i < 100; i++)
            Assert.True(Bounds(Of(Handle("a"), Leg(0, () => 10 * Sign(random)))).Upper >= told - 1e-9);
    }

    private static int Sign(Random random) => random.Next(2) == 0 ? 1 : -1;
}
