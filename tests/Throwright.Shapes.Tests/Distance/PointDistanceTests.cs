using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Distance;

public class PointDistanceTests
{
    private static readonly Solid Box = Solid.Of(new Part("box", new Box(new(0.1, 0, 0), Rotation.None, new(0.2, 0.1, 0.05))));

    private static IEnumerable<Vector3> Points(int count)
    {
        var random = new CounterRandom(12, 0);
        for (var i = 0; i < count; i++)
            yield return new((2 * random.Uniform(3 * i)) - 1, (2 * random.Uniform((3 * i) + 1)) - 1, (2 * random.Uniform((3 * i) + 2)) - 1);
    }

    private static double ToBox(Vector3 p)
    {
        double x = Math.Abs(p.X - 0.1) - 0.2, y = Math.Abs(p.Y) - 0.1, z = Math.Abs(p.Z) - 0.05;
        var inside = Math.Max(x, Math.Max(y, z));
        (x, y, z) = (Math.Max(x, 0), Math.Max(y, 0), Math.Max(z, 0));
        return inside < 0 ? inside : Math.Sqrt((x * x) + (y * y) + (z * z));
    }

    [Fact]
    public void Solid_TurnedAndMoved_IsTheBoxesOwnFormula()
    {
        var home = Pose.TurnAbout(new(0.3, -0.1, 0.2), new Vector3(1, 2, -1).Unit(), 0.7);
        var distance = PointDistance.Of(Box, home);
        foreach (var p in Points(100))
            Assert.Equal(ToBox(home.Inverse() * p), distance(p), 1e-9);
    }

    [Fact]
    public void HalfSpaceAndCapsule_AreTheirFormulas()
    {
        Assert.Equal(0.5, PointDistance.OfHalfSpace(new(0, 0, 1), new(0, 0, 2))(new(3, 4, 1.5)), 1e-12);
        Assert.Equal(-0.5, PointDistance.OfHalfSpace(new(0, 0, 1), new(0, 0, 2))(new(3, 4, 0.5)), 1e-12);
        Assert.Equal(0.9, PointDistance.OfCapsule(default, new(1, 0, 0), 0.1)(new(0.5, 1, 0)), 1e-12);
        Assert.Equal(4.9, PointDistance.OfCapsule(default, new(1, 0, 0), 0.1)(new(4, 0, 4)), 1e-12);
    }

    [Fact]
    public void Mesh_IsTheNearestTriangle()
    {
        Vector3[] corners = [new(0, 0, 0), new(1, 0, 0), new(0, 1, 0), new(1, 1, 0), new(0, 0, 1), new(1, 0, 1)];
        var mesh = Solid.OfTriangles("sheet", corners, [0, 1, 2, 1, 3, 2, 0, 4, 1, 4, 5, 1]);
        var distance = PointDistance.Of(mesh, Pose.None);
        foreach (var p in Points(100))
        {
            // A square on the floor and one on the wall y = 0.
            double floor = Square(p.X, p.Y, p.Z), wall = Square(p.X, p.Z, p.Y);
            Assert.Equal(Math.Min(floor, wall), distance(p), 1e-9);
        }

        static double Square(double u, double v, double off)
        {
            double du = u - Math.Clamp(u, 0, 1), dv = v - Math.Clamp(v, 0, 1);
            return Math.Sqrt((du * du) + (dv * dv) + (off * off));
        }
    }

    [Theory]
    [InlineData(12)]
    [InlineData(24)]
    public void Sweep_Always_IsBelowEveryPositionAndNotFarBelow(int steps)
    {
        var body = new MovingSolid(Box, new([new Joint("slide", JointKind.Slide, default, new(0, 0, 1), -0.1, 0.2), new Joint("turn", JointKind.Turn, new(0, 0.2, 0), new(0, 0, 1), -0.5, 0.8)]));
        var sweep = PointDistance.OfSweep(body, steps);
        var random = new CounterRandom(3, 1);
        var slack = 0.0;
        foreach (var p in Points(25))
        {
            var (value, least) = (sweep(p), double.PositiveInfinity);
            for (var i = 0; i < 400; i++)
            {
                double[] q = [-0.1 + (0.3 * random.Uniform(2 * i)), -0.5 + (1.3 * random.Uniform((2 * i) + 1))];
                least = Math.Min(least, ToBox(body.Chain.At(q).Inverse() * p));
            }

            Assert.True(value <= least + 1e-12, $"{value} > {least}");
            slack = Math.Max(slack, least - value);
        }

        Assert.InRange(slack, 0, 1.6 / steps);
    }

    [Fact]
    public void Sampled_Always_IsBelowAndWithinACellOfTheFunction()
    {
        const double Step = 0.05;
        var sampled = PointDistance.Sampled(ToBox, new(-0.5, -0.5, -0.5), new(0.5, 0.5, 0.5), Step);
        foreach (var p in Points(300))
            Assert.InRange(sampled(p), ToBox(p) - (2 * Step), ToBox(p) + 1e-12);
    }
}
