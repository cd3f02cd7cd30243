using CsCheck;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Solids;

namespace Throwright.Shapes.Tests.Solids;

public class PartsTests
{
    private const double Mm = SolidCases.Mm, Degree = SolidCases.Degree;

    [Fact]
    public void WorkedWasher_AgainstSeparateArithmetic()
    {
        // 12.5 deg, outside 32, bore 11.2, thin edge 1.5: docs/theory/make.md.
        var washer = SolidCases.Worked;
        Assert.Equal(1.5 + (16 * Math.Tan(12.5 * Degree)), washer.Height / Mm, 1e-12);
        Assert.Equal(1.5 + (32 * Math.Tan(12.5 * Degree)), washer.ThickEdge / Mm, 1e-12);
        Assert.Equal(3561.886933, washer.Volume * 1e9, 5e-7);
    }

    [Fact]
    public void Washer_OverItsWholeRange_HasNoDefect()
    {
        (from tilt in Gen.Double[0.5, 30]
         from outside in Gen.Double[20, 60]
         from share in Gen.Double[0.2, 0.6]
         from thin in Gen.Double[0.8, 4]
         from chamfer in Gen.Double[0, 0.6]
         select new WedgeWasher(tilt * Degree, outside * Mm, share * outside * Mm, thin * Mm, Chamfer: chamfer < 0.1 ? 0 : chamfer * Mm))
        .Sample(w => Assert.Equal([], Audit.Find(w.Build(), w.Volume, 1)), iter: 60);
    }

    [Fact]
    public void Washer_WithPin_WallIsThatOfASeparateSampling()
    {
        var pin = SolidCases.Keyed.Pin!;
        var wall = SolidCases.Worked.PinWall(pin);
        var least = double.PositiveInfinity;
        var tilt = 12.5 * Degree;
        for (var k = 0; k <= 400; k++)
        {
            for (var i = 0; i < 720; i++)
            {
                // Tilted face: along (cos, 0, -sin); into the material (sin, 0, cos).
                double a = i * Math.PI / 360, d = pin.Depth * k / 400;
                double u = pin.Along + (0.5 * pin.Diameter * Math.Cos(a)), y = pin.Across + (0.5 * pin.Diameter * Math.Sin(a));
                double x = (u * Math.Cos(tilt)) + (d * Math.Sin(tilt)), z = (-u * Math.Sin(tilt)) + (d * Math.Cos(tilt));
                var r = Math.Sqrt((x * x) + (y * y));
                least = Math.Min(least, Math.Min(Math.Min((16 * Mm) - r, r - (5.6 * Mm)), SolidCases.Worked.Height - z));
            }
        }

        Assert.Equal(least, wall, 2e-6);
    }

    [Theory]
    [InlineData(0.2, 14.8, 3, 2)]  // through the rim
    [InlineData(0.2, 6, 3, 2)]     // into the bore
    [InlineData(0.2, 11, 3, 5.2)]  // through the square face
    [InlineData(-11, 0, 3, 3)]     // through the square face at the thin side
    public void Washer_WithAPinHoleThatBreaksOut_IsRefused(double along, double across, double diameter, double depth)
    {
        var washer = SolidCases.Worked with { Pin = new(along * Mm, across * Mm, diameter * Mm, depth * Mm) };
        Assert.NotNull(washer.Fault);
        Assert.Throws<InvalidOperationException>(() => washer.Build());
    }

    [Fact]
    public void Pair_SecondWasherTurnedAboutTheTiltLine_IsTheSamePart()
    {
        // Sheet |n.x| <= t/2. The first washer lies above, the second below with the same radii and the same height;
        // half a turn about the tilt line (y) takes one into the other: x -> (-x, y, -z).
        const double Sheet = 1.6 * Mm;
        var w = SolidCases.Worked;
        var n = -w.TiltedNormal;
        bool First(Vector3 p) => Ring(p) && Vector3.Dot(n, p) >= 0.5 * Sheet && p.Z - (0.5 * Sheet / Math.Cos(w.Tilt)) <= w.Height;
        bool Second(Vector3 p) => Ring(p) && Vector3.Dot(n, p) <= -0.5 * Sheet && -p.Z - (0.5 * Sheet / Math.Cos(w.Tilt)) <= w.Height;
        bool Ring(Vector3 p) => p.X * p.X + p.Y * p.Y is var r && r <= 0.25 * w.Outside * w.Outside && r >= 0.25 * w.Bore * w.Bore;
        var inside = 0;
        var random = new Random(7);
        for (var i = 0; i < 100_000; i++)
        {
            var p = new Vector3((random.NextDouble() - 0.5) * 0.034, (random.NextDouble() - 0.5) * 0.034, (random.NextDouble() - 0.5) * 0.022);
            Assert.Equal(First(p), Second(new(-p.X, p.Y, -p.Z)));
            inside += First(p) ? 1 : 0;
        }

        // The points do fill the washer: its share of the box by its volume.
        Assert.Equal(w.Volume / (0.034 * 0.034 * 0.022), inside / 100_000.0, 0.005);
    }

    [Fact]
    public void Measure_OfABlock_IsArithmetic()
    {
        var measure = Measure.Of(new DrilledPlate(Profile.Rectangle(new(0.01, 0.02), 0.05, 0.03), 0.02, []).Build());
        Assert.Equal(0.05 * 0.03 * 0.02, measure.Volume, 1e-18);
        Assert.Equal(2 * ((0.05 * 0.03) + (0.05 * 0.02) + (0.03 * 0.02)), measure.Surface, 1e-16);
        Assert.Equal(0, (measure.Centroid - new Vector3(0.01, 0.02, 0.01)).Size, 1e-15);
    }

    [Fact]
    public void Measure_OfTheWasher_HasTheClosedFormOfEachFaceAndOfTheCentroid()
    {
        double r = 5.6 * Mm, big = 16 * Mm, tan = Math.Tan(12.5 * Degree), h = SolidCases.Worked.Height;
        var measure = Measure.Of(SolidCases.Worked.Build());
        // Walls 2 pi r h (mean height on the axis), square face, tilted face.
        var ring = Math.PI * ((big * big) - (r * r));
        Assert.Equal((2 * Math.PI * (r + big) * h) + ring + (ring / Math.Cos(12.5 * Degree)), measure.Surface, 1e-15);
        // x: second moment of the ring times tan; z: mean of (h^2 - x^2 tan^2) / 2.
        var second = Math.PI / 4 * (Math.Pow(big, 4) - Math.Pow(r, 4));
        var expected = new Vector3(second * tan, 0, 0.5 * ((h * h * ring) - (second * tan * tan)));
        Assert.Equal(0, (measure.Centroid - (1 / SolidCases.Worked.Volume * expected)).Size, 1e-14);
    }

    [Fact]
    public void Profile_MomentAndArea_AgreeWithAFineSampling()
    {
        foreach (var profile in (Profile[])[
            Profile.FlattedCircle(new(0.01, 0.02), 0.006, 0.004, 0.7), Profile.Slot(new(-0.01, 0), 0.004, 0.01, 0.3), Profile.Rectangle(new(0.02, 0.01), 0.03, 0.02, 0.004)])
        {
            double area = 0;
            var moment = default(Vector2);
            foreach (var s in profile.Stretches)
            {
                for (var i = 0; i < 4000; i++)
                {
                    Vector2 a = s.At(i / 4000.0), b = s.At((i + 1) / 4000.0);
                    area += 0.5 * Vector2.Cross(a, b);
                    moment += Vector2.Cross(a, b) / 6 * (a + b);
                }
            }

            Assert.Equal(area, profile.Area, 1e-10);
            Assert.Equal(0, (moment - profile.Moment).Size, 1e-12);
        }
    }

    [Fact]
    public void Bracket_HoleIntoTheBend_IsRefused()
    {
        var bracket = SolidCases.Bracket(90 * Degree) with { Holes = [new(1, 2 * Mm, 0, Profile.Circle(default, 2.1 * Mm))] };
        Assert.NotNull(bracket.Fault);
        Assert.Throws<InvalidOperationException>(() => bracket.Build());
    }

    [Fact]
    public void Bracket_LegsThatMeet_AreRefused()
    {
        // Bent 90 and 150 deg the same way, the top leg comes down on the base.
        Assert.Null(SolidCases.TwoBends(90 * Degree, 150 * Degree, isBack: false).Fault);
        Assert.Equal("two legs meet", SolidCases.TwoBends(90 * Degree, 150 * Degree, isBack: false, top: 90).Fault);
        Assert.Null(SolidCases.TwoBends(90 * Degree, 150 * Degree, isBack: true, top: 90).Fault);
    }

    [Fact]
    public void Plate_HolesThatMeet_AreRefused()
    {
        var plate = SolidCases.Plate with { Holes = [ThroughHole.Round(default, 0.01), ThroughHole.Round(new(0.003, 0), 0.002)] };
        Assert.True(plate.LeastWall < 0);
        Assert.Throws<InvalidOperationException>(() => plate.Build());
    }
}
