using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Tests.Distance;

public sealed class ConvexDistanceTests
{
    private static readonly Vector3 X = new(1, 0, 0), Y = new(0, 1, 0), Z = new(0, 0, 1);

    [Fact]
    public void Between_RandomShapes_AgreesWithProjectionsAndItsOwnDirection()
    {
        var apart = 0;
        for (var i = 0; i < 3000; i++)
        {
            var scene = new Scenes(i);
            var (a, b) = (scene.Shape(i % 5), scene.Shape(i / 5 % 5));
            var (poseA, poseB) = (scene.Pose(0.1), scene.Pose(0.3));
            var s = ConvexDistance.Between(a.Shape(), poseA, b.Shape(), poseB);
            var plain = Plain.Between(a, poseA, b, poseB);
            Assert.True(Math.Abs(s.Direction.Size - 1) < 1e-12, $"{i}");
            if (plain + a.Radius + b.Radius < 1e-6)
            {
                Assert.True(s.Distance <= -a.Radius - b.Radius + 1e-6, $"{i}: overlapping cores, {s.Distance}");
                continue;
            }

            apart++;
            // Projections come from above, and slowly when shapes are nearly parallel.
            Assert.True(s.Distance <= plain + 1e-9, $"{i}: {s.Distance} > {plain}");
            Assert.True(s.Distance >= plain - 1e-4, $"{i}: {s.Distance} < {plain}");
            // The direction alone proves it, and the two points attain it.
            Assert.True(s.Distance - s.Proved <= 1e-9, $"{i}: gap {s.Distance - s.Proved}");
            Assert.Equal(s.Distance, Vector3.Dot(s.OnSecond - s.OnFirst, s.Direction), 9);
            OnSurface(a, poseA, s.OnFirst);
            OnSurface(b, poseB, s.OnSecond);
        }

        Assert.True(apart > 2000);
    }

    [Fact]
    public void Between_Overlapping_MovedApartByItsDepth_JustTouches()
    {
        var overlaps = 0;
        for (var i = 0; i < 1500; i++)
        {
            var scene = new Scenes(90_000 + i);
            var (a, b) = (scene.Shape(i % 5), scene.Shape(i / 5 % 5));
            var (poseA, poseB) = (scene.Pose(0.01), scene.Pose(0.03));
            var s = ConvexDistance.Between(a.Shape(), poseA, b.Shape(), poseB);
            if (s.Distance >= 0)
                continue;
            overlaps++;
            var freed = poseB with { At = poseB.At + ((1e-9 - s.Distance) * s.Direction) };
            Assert.True(Plain.Between(a, poseA, b, freed) >= -1e-8, $"{i}");
            // No other direction frees it with less: the depth is the least support width.
            for (var k = 0; k < 40; k++)
            {
                var n = (s.Direction + (scene.Number(0, 0.5) * scene.Direction())).Unit();
                Assert.True(ConvexDistance.Width(a.Shape(), poseA, b.Shape(), poseB, n) <= s.Distance + 1e-7, $"{i}: {s.Distance}, {ConvexDistance.Width(a.Shape(), poseA, b.Shape(), poseB, n)}");
            }
        }

        Assert.True(overlaps > 700);
    }

    [Fact]
    public void Between_SwappedOrMovedTogether_IsTheSame()
    {
        for (var i = 0; i < 1000; i++)
        {
            var scene = new Scenes(40_000 + i);
            var (a, b) = (scene.AnyShape().Shape(), scene.AnyShape().Shape());
            var (poseA, poseB, all) = (scene.Pose(0.1), scene.Pose(0.3), scene.Pose(2));
            var s = ConvexDistance.Between(a, poseA, b, poseB);
            var swapped = ConvexDistance.Between(b, poseB, a, poseA);
            var moved = ConvexDistance.Between(a, all * poseA, b, all * poseB);
            Assert.Equal(s.Distance, swapped.Distance, 9);
            Assert.Equal(s.Distance, moved.Distance, 9);
        }
    }

    [Fact]
    public void Width_AnyDirection_IsNeverAboveTheDistance()
    {
        for (var i = 0; i < 1000; i++)
        {
            var scene = new Scenes(70_000 + i);
            var (a, b) = (scene.AnyShape().Shape(), scene.AnyShape().Shape());
            var (poseA, poseB) = (scene.Pose(0.1), scene.Pose(0.3));
            var s = ConvexDistance.Between(a, poseA, b, poseB);
            Assert.True(ConvexDistance.Width(a, poseA, b, poseB, scene.Direction()) <= s.Distance + 1e-9, $"{i}");
        }
    }

    [Fact]
    public void Farthest_OfACylinderNearlyAlongItsAxis_LiesOnTheBody()
    {
        var scene = new Scenes(5);
        for (var i = 0; i < 200_000; i++)
        {
            var (from, to) = (scene.Place(1), scene.Place(1));
            var bar = new Cylinder(from, to, 0.02);
            var along = (to - from).Unit();
            var d = (i % 2 == 0 ? 1 : -1) * along + (Math.Pow(10, scene.Number(-17, -5)) * scene.Direction());
            var p = bar.Farthest(d) - from;
            var lengthwise = Vector3.Dot(p, along);
            Assert.True((p - (lengthwise * along)).Size <= 0.02 + 1e-14);
            Assert.True(lengthwise >= -1e-14 && lengthwise <= (to - from).Size + 1e-14);
        }
    }

    [Fact]
    public void Between_ClosedForms_AreExact()
    {
        Near(0.7, new Sphere(default, 0.1), new Sphere(X, 0.2));
        // Ball over a plate.
        Near(0.25, new Box(default, Rotation.None, new(3, 2, 0.05)), new Sphere(0.4 * Z + 0.3 * Y, 0.1));
        // Capsule over a plate, tilted.
        Near(0.3 - 0.02, new Box(default, Rotation.None, new(3, 2, 0)), new Capsule(0.3 * Z, X + (0.5 * Z), 0.02));
        // Crossed capsules.
        Near(0.5 - 0.03, new Capsule(-X, X, 0.01), new Capsule(-1 * Y + (0.5 * Z), Y + (0.5 * Z), 0.02));
        // Concentric: the way out is the sum of radii.
        Near(-0.3, new Sphere(X, 0.1), new Sphere(X, 0.2));
        Near(-0.15, new Capsule(-X, X, 0.05), new Capsule(-X, X, 0.1));
        // Box inside a box: the shorter way out.
        Near(-0.15, new Box(default, Rotation.None, new(1, 1, 0.1)), new Box(default, Rotation.None, new(0.05, 0.05, 0.05)));
    }

    [Fact]
    public void Between_ParallelFaces_IsExact()
    {
        Near(0.1, new Box(default, Rotation.None, new(1, 1, 1)), new Box(2.1 * Z, Rotation.None, new(1, 1, 1)));
        Near(0.1, new Box(default, Rotation.None, new(1, 1, 1)), new Box((2.1 * Z) + (0.3 * X), Rotation.None, new(0.2, 1, 1)));
        Near(0.1, new Cylinder(default, Z, 0.5), new Cylinder(1.1 * Z, 2 * Z, 0.25));
        Near(0.1, new Cylinder(default, Z, 0.5), new Cylinder(1.1 * X, (1.1 * X) + Z, 0.5));
    }

    [Fact]
    public void Between_Touching_IsZero()
    {
        Near(0, new Box(default, Rotation.None, new(1, 1, 1)), new Box(2 * Z, Rotation.None, new(1, 1, 1)));
        Near(0, new Box(default, Rotation.None, new(1, 1, 1)), new Box(new(2, 2, 2), Rotation.None, new(1, 1, 1)));
        Near(0, new Sphere(default, 0.5), new Sphere(X, 0.5));
        Near(0, new Hull([default, X, Y]), new Hull([default, -X, -Y]));
        // Grazing: edge along edge.
        Near(0, new Box(default, Rotation.None, new(1, 1, 1)), new Box(new(2, 0.5, 2), Rotation.None, new(1, 1, 1)));
        Near(1e-7, new Box(default, Rotation.None, new(1, 1, 1)), new Box(new(2 + 1e-7, 0.5, 2), Rotation.None, new(1, 1, 1)));
    }

    [Fact]
    public void Between_CoincidentShapes_IsTheLeastWidth()
    {
        Near(-0.2, new Box(default, Rotation.None, new(1, 1, 0.1)), new Box(default, Rotation.None, new(1, 1, 0.1)));
        Near(-0.2, new Sphere(X, 0.1), new Sphere(X, 0.1));
        Near(0, new Hull([default, X, Y]), new Hull([default, X, Y]));
        Near(-0.02, new Hull([default, X, Y], 0.01), new Hull([default, X, Y], 0.01));
        Near(-1, new Cylinder(default, Z, 1), new Cylinder(default, Z, 1));
    }

    [Fact]
    public void Between_NeedleAndFlatTriangles_IsExact()
    {
        Near(0.3, new Hull([default, X, 0.5 * X]), new Sphere((0.5 * X) + (0.4 * Y), 0.1));
        Near(0.3, new Hull([default, X, (0.5 * X) + new Vector3(0, 1e-13, 0)]), new Sphere((0.5 * X) + (0.4 * Y), 0.1));
        Near(0.4, new Hull([X, X, X]), new Sphere(1.5 * X, 0.1));
        Near(0.5, new Hull([default, 1e3 * X, 1e-9 * Y]), new Hull([(0.5 * Z) + (400 * X), (0.5 * Z) + (401 * X), (0.5 * Z) + (400 * X) + Y]));
    }

    [Fact]
    public void Between_FarFromTheOrigin_LosesOnlyTheDigitsOfTheCoordinates()
    {
        var far = new Pose(Rotation.None, new(1e6, -2e6, 5e5));
        var s = ConvexDistance.Between(new Box(default, Rotation.None, new(0.1, 0.1, 0.1)), far, new Sphere(X, 0.1), far);
        Assert.Equal(0.8, s.Distance, 1e-8);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(-0.1)]
    [InlineData(double.PositiveInfinity)]
    public void Shape_WithoutAFiniteRadius_IsRefused(double radius) => Assert.Throws<ArgumentException>(() => new Sphere(default, radius));

    [Fact]
    public void Width_GrownByR_FallsByR()
    {
        var scene = new Scenes(11);
        var (a, b) = (scene.Shape(2).Shape(), scene.Shape(3).Shape());
        var at = new Pose(Rotation.None, X);
        Assert.Equal(
            ConvexDistance.Between(a, Pose.None, b, at).Distance - 0.003,
            ConvexDistance.Between(a.Padded(0.003), Pose.None, b, at).Distance,
            12);
    }

    private static void Near(double expected, ConvexShape a, ConvexShape b)
    {
        foreach (var all in new[] { Pose.None, new(Rotation.About(new(1, 2, 3), 0.7), new(0.3, -2, 1)) })
        {
            Assert.Equal(expected, ConvexDistance.Between(a, all, b, all).Distance, 1e-9);
            Assert.Equal(expected, ConvexDistance.Between(b, all, a, all).Distance, 1e-9);
        }
    }

    private static void OnSurface(Plain shape, Pose pose, Vector3 point)
    {
        var p = pose.Inverse() * point;
        Assert.Equal(shape.Radius, (shape.Nearest(p) - p).Size, 1e-8);
    }
}
