using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Distance;

public class PlateDistanceTests
{
    /// <summary>An L of 2 x 2 with a hole in its wide corner, 0.02 thick, lying flat.</summary>
    private static readonly Vector3[] L = [default, new(2, 0, 0), new(2, 1, 0), new(1, 1, 0), new(1, 2, 0), new(0, 2, 0)];

    private static Func<Vector3, double> Plate() => PlateDistance.Of(L, new(0, 0, 1), 0.02, [(new(0.5, 0.5, 0), 0.2)]);

    [Theory]
    [InlineData(1.5, 0.5, 0.3, 0.29)] // straight above
    [InlineData(0.5, 0.5, 0, 0.19)] // middle of the hole: to its rim
    [InlineData(0.5, 0.6, 0.1, 0.13142135623730951)] // in the hole, off its middle and above
    [InlineData(1.5, 1.5, 0, 0.49)] // in the notch
    [InlineData(3, 2, 0, 1.4042135623730951)] // off a corner
    [InlineData(0.1, 1.5, 0, -0.01)] // inside
    public void KnownPoints(double x, double y, double z, double distance) => Assert.Equal(distance, Plate()(new(x, y, z)), 1e-12);

    [Fact]
    public void Anywhere_IsTheLeastOverPointsOfTheSheet_AndGrowsNoFasterThanThePoint()
    {
        // Points of the middle face, 1/50 apart, off the hole.
        var points = new List<Vector3>();
        for (var i = 0; i <= 100; i++)
        {
            for (var j = 0; j <= 100; j++)
            {
                double u = i / 50.0, v = j / 50.0;
                if ((u <= 1 || v <= 1) && Math.Sqrt(((u - 0.5) * (u - 0.5)) + ((v - 0.5) * (v - 0.5))) >= 0.2)
                    points.Add(new(u, v, 0));
            }
        }

        var turn = Pose.TurnAbout(new(1, 2, 3), new Vector3(1, 1, 0.5).Unit(), 0.7);
        var tilted = PlateDistance.Of([.. L.Select(p => turn * p)], turn.Turn * new Vector3(0, 0, 1), 0.02, [(turn * new Vector3(0.5, 0.5, 0), 0.2)]);
        var random = new CounterRandom(6, 1);
        for (var n = 0; n < 300; n++)
        {
            Vector3 p = new((3 * random.Uniform(6 * n)) - 0.5, (3 * random.Uniform((6 * n) + 1)) - 0.5, random.Uniform((6 * n) + 2) - 0.5);
            var d = tilted(turn * p);
            Assert.InRange(d + 0.01, points.Min(q => (q - p).Size) - 0.03, points.Min(q => (q - p).Size) + 1e-9);
            var q = p + (0.3 * new Vector3(random.Uniform((6 * n) + 3) - 0.5, random.Uniform((6 * n) + 4) - 0.5, random.Uniform((6 * n) + 5) - 0.5));
            Assert.InRange(Math.Abs(tilted(turn * q) - d), 0, (q - p).Size + 1e-12);
        }
    }
}
