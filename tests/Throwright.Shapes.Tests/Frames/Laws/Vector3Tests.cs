using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Tests.Frames.Laws;

public class Vector3Tests
{
    [Fact]
    public void Cross_OfTheAxes_IsRightHanded()
    {
        Vector3 x = new(1, 0, 0), y = new(0, 1, 0), z = new(0, 0, 1);
        Assert.Equal((z, x, y), (Vector3.Cross(x, y), Vector3.Cross(y, z), Vector3.Cross(z, x)));
    }

    [Fact]
    public void Vector_RandomPairs_KeepTheLawsOfLagrangeAndTheTriangle()
    {
        var random = new Random(4);
        for (var i = 0; i < 10_000; i++)
        {
            Vector3 a = Any(random), b = Any(random);
            var cross = Vector3.Cross(a, b);
            var dot = Vector3.Dot(a, b);
            Assert.Equal(Vector3.Dot(a, a) * Vector3.Dot(b, b), (dot * dot) + Vector3.Dot(cross, cross), 1e-13);
            Assert.Equal(0, Vector3.Dot(cross, a), 1e-15);
            Assert.True((a + b).Size <= a.Size + b.Size + 1e-15);
            Assert.Equal(a, a - b + b - -b - b, (p, q) => (p - q).Size < 1e-15);
            Assert.Equal(1, a.Unit().Size, 1e-15);
            Assert.Equal(2.5 * a.Size, (-2.5 * a).Size, 1e-15);
        }
    }

    [Fact]
    public void AngleBetween_KnownAngles_IsExactDownToNothingAndUpToHalfATurn()
    {
        foreach (var angle in (double[])[0, 1e-150, 1e-12, 1e-8, 1e-3, 0.5, Math.PI / 2, 3, Math.PI - 1e-8, Math.PI])
        {
            Vector3 a = new(0, 2, 0), b = new(0, 3 * Math.Cos(angle), 3 * Math.Sin(angle));
            Assert.Equal(angle, Vector3.AngleBetween(a, b), 4e-16 * angle);
            Assert.Equal(angle, Vector3.AngleBetween(b, a), 4e-16 * angle);
        }
    }

    [Fact]
    public void AngleBetween_SomethingWithoutDirection_IsNoNumber()
    {
        // A wire without length has no swing; zero would say that it is in line.
        Vector3 x = new(1, 0, 0);
        Assert.True(double.IsNaN(Vector3.AngleBetween(default, x)));
        Assert.True(double.IsNaN(Vector3.AngleBetween(x, default)));
        Assert.True(double.IsNaN(Vector3.AngleBetween(new(double.NaN, 0, 0), x)));
    }

    [Fact]
    public void Unit_SomethingWithoutDirection_IsRefused()
    {
        Assert.Throws<InvalidOperationException>(() => default(Vector3).Unit());
        Assert.Throws<InvalidOperationException>(() => new Vector3(double.NaN, 0, 1).Unit());
        Assert.Throws<InvalidOperationException>(() => new Vector3(double.PositiveInfinity, 0, 1).Unit());
    }

    private static Vector3 Any(Random random) => new(random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5);
}
