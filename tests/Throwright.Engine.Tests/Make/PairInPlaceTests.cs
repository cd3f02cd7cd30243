using Throwright.Engine.Make;
using Throwright.Engine.Model;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Solids;

namespace Throwright.Engine.Tests.Make;

public class PairInPlaceTests
{
    private const double Mm = 1e-3, Degree = Math.PI / 180;

    private static WedgePair Pair(double tilt = 12.5, WedgeKey key = WedgeKey.Pin) => WedgePairSolver.Solve(
        new(new(tilt * Degree, 1), 9.5 * Mm, 1.6 * Mm, 16 * Mm) { Outside = 32 * Mm, ThinEdge = 1.5 * Mm, Key = key, ShankFlat = 4 * Mm });

    /// <summary>The tilted faces lie on the sheet's two faces, the square ones are square to the shank, one grip apart.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(12.5)]
    [InlineData(30)]
    public void Wedges_InPlace_TouchTheSheetAndFaceTheNuts(double tilt)
    {
        var pair = Pair(tilt);
        var place = PairInPlace.Of(pair);
        foreach (var (axes, side) in ((Axes, int)[])[(place.Front, 1), (place.Back, -1)])
        {
            var solid = pair.Washer.Build().Placed(axes);
            Assert.Empty(Audit.Find(solid, pair.Washer.Volume, 1));
            var low = solid.Vertices.Min(v => side * v.Z);
            Assert.Equal(0.8 * Mm, low, 1e-12);
            // Thick edge against the lean in front, with it behind.
            var thick = axes.Point(16 * Mm, 0, -16 * Mm * pair.Washer.Tangent);
            Assert.True(side * thick.X < 0);
            Assert.Equal(side * 0.8 * Mm, thick.Z, 1e-12);
        }

        Vector3 shank = new(Math.Sin(tilt * Degree), 0, Math.Cos(tilt * Degree));
        double Seat(Axes axes) => Vector3.Dot(axes.Point(0, 0, pair.Washer.Height), shank);
        Assert.Equal(pair.Grip, Seat(place.Front) - Seat(place.Back), 1e-12);
    }

    /// <summary>Points of the front wedge, turned half round about the line across the lean, are points of the back one: one part makes both.</summary>
    [Fact]
    public void Wedges_TurnedHalfRoundAboutTheTiltLine_AreEachOther()
    {
        var washer = Pair(key: WedgeKey.None).Washer;
        var place = PairInPlace.Of(Pair(key: WedgeKey.None));
        var inside = 0;
#pragma warning disable CA5394 // A fixed seed is the point.
        var random = new Random(7);
        for (var i = 0; i < 100_000; i++)
        {
            Vector3 at = new((random.NextDouble() - 0.5) * 0.040, (random.NextDouble() - 0.5) * 0.040, random.NextDouble() * 0.012);
#pragma warning restore CA5394
            var front = Holds(place.Front.Of(at));
            inside += front ? 1 : 0;
            Assert.Equal(front, Holds(place.Back.Of(new(-at.X, at.Y, -at.Z))));
        }

        Assert.True(inside > 1000);

        bool Holds(Vector3 p)
        {
            var round = Math.Sqrt((p.X * p.X) + (p.Y * p.Y));
            return p.Z <= washer.Height && p.Z >= -p.X * washer.Tangent && round >= 0.5 * washer.Bore && round <= 0.5 * washer.Outside;
        }
    }

    /// <summary>One pin, square through the sheet, enters both wedges' holes.</summary>
    [Fact]
    public void Pin_ThroughTheSheet_MeetsBothHoles()
    {
        var pair = Pair();
        var pin = pair.Washer.Pin!;
        var place = PairInPlace.Of(pair);
        var hole = place.Sheet.Holes[1];
        foreach (var axes in (Axes[])[place.Front, place.Back])
        {
            // On the tilted face: along it toward the thick edge, and across.
            var mouth = axes.Point(pin.Along * Math.Cos(12.5 * Degree), pin.Across, -pin.Along * Math.Sin(12.5 * Degree));
            Assert.Equal(hole.Place.X, mouth.X, 1e-12);
            Assert.Equal(hole.Place.Y, mouth.Y, 1e-12);
        }
    }

    /// <summary>Template and guide block are laid on the sheet from the pilot's side: the pin's hole they give is the one the wedges have.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(70)]
    [InlineData(200)]
    public void Pin_OnTemplateAndGuide_IsWhereTheWedgesHaveIt(double azimuth)
    {
        var pair = WedgePairSolver.Solve(Pair().Case with { Tilt = new(12.5 * Degree, azimuth * Degree) });
        var wanted = PairInPlace.Of(pair).Sheet.Holes[1].Place;
        Vector2 along = Vector2.Polar(1, azimuth * Degree), across = new(-along.Y, along.X);
        var drawn = DrillTemplate.Of(pair).Holes.Single();
        var centre = (1 / drawn.Area) * drawn.Moment;
        Assert.Equal(wanted.X, Vector2.Dot(centre, along), 1e-9);
        Assert.Equal(wanted.Y, Vector2.Dot(centre, across), 1e-9);
        // The block's mark is where the shank's line meets the face toward the pilot: (t/2) tan a further along.
        var led = DrillGuide.Of(pair).Block.Holes[1].Place;
        Assert.Equal(wanted.X, led.X + (0.8 * Mm * pair.Washer.Tangent), 1e-12);
        Assert.Equal(wanted.Y, led.Y, 1e-12);
    }

    [Fact]
    public void Guide_Block_IsOneBodyWithTheLeaningHoleOverTheMark()
    {
        foreach (var tilt in (double[])[3, 12.5, 30])
        {
            foreach (var key in (WedgeKey[])[WedgeKey.None, WedgeKey.Pin])
            {
                var guide = DrillGuide.Of(Pair(tilt, key));
                Assert.Empty(Audit.Find(guide.Block.Build(), guide.Block.Volume, guide.Block.Holes.Count));
                Assert.Equal(key == WedgeKey.Pin ? 2 : 1, guide.Block.Holes.Count);
                Assert.True(guide.Block.LeastWall > 2 * Mm, $"{tilt}: {guide.Block.LeastWall}");
                Assert.Equal(Math.Sin(tilt * Degree), guide.Block.Holes[0].Direction.X, 1e-12);
            }
        }
    }
}
