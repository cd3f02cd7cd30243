using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Tests.Distance;

/// <summary>
/// Distances without a line of the program's own search: the nearest point of each shape in closed form, and projections
/// back and forth between the two convex sets (Cheney and Goldstein 1959: they converge to the distance from above).
/// </summary>
internal abstract record Plain(double Radius)
{
    public abstract Vector3 Nearest(Vector3 p);

    public abstract ConvexShape Shape();

    public sealed record Ball(Vector3 Centre, double R) : Plain(R)
    {
        public override Vector3 Nearest(Vector3 p) => Centre;
        public override ConvexShape Shape() => new Sphere(Centre, R);
    }

    public sealed record Rod(Vector3 From, Vector3 To, double R) : Plain(R)
    {
        public override Vector3 Nearest(Vector3 p)
        {
            var d = To - From;
            var square = Vector3.Dot(d, d);
            return square == 0 ? From : From + (Math.Clamp(Vector3.Dot(p - From, d) / square, 0, 1) * d);
        }

        public override ConvexShape Shape() => new Capsule(From, To, R);
    }

    public sealed record Block(Vector3 Centre, Rotation Axes, Vector3 Half, double R) : Plain(R)
    {
        public override Vector3 Nearest(Vector3 p)
        {
            var d = p - Centre;
            return Centre + (Math.Clamp(Vector3.Dot(d, Axes.X), -Half.X, Half.X) * Axes.X)
                + (Math.Clamp(Vector3.Dot(d, Axes.Y), -Half.Y, Half.Y) * Axes.Y)
                + (Math.Clamp(Vector3.Dot(d, Axes.Z), -Half.Z, Half.Z) * Axes.Z);
        }

        public override ConvexShape Shape() => new Box(Centre, Axes, Half, R);
    }

    public sealed record Bar(Vector3 From, Vector3 To, double Across, double R) : Plain(R)
    {
        public override Vector3 Nearest(Vector3 p)
        {
            var d = To - From;
            var t = Math.Clamp(Vector3.Dot(p - From, d) / Vector3.Dot(d, d), 0, 1);
            var foot = From + (Vector3.Dot(p - From, d) / Vector3.Dot(d, d) * d);
            var square = p - foot;
            var size = square.Size;
            return From + (t * d) + (size <= Across ? square : (Across / size) * square);
        }

        public override ConvexShape Shape() => new Cylinder(From, To, Across, R);
    }

    public sealed record Sheet(Vector3 A, Vector3 B, Vector3 C, double R) : Plain(R)
    {
        public override Vector3 Nearest(Vector3 p)
        {
            var n = Vector3.Cross(B - A, C - A);
            var area = Vector3.Dot(n, n);
            if (area > 0)
            {
                var u = Vector3.Dot(n, Vector3.Cross(p - A, C - A)) / area;
                var v = Vector3.Dot(n, Vector3.Cross(B - A, p - A)) / area;
                if (u >= 0 && v >= 0 && u + v <= 1)
                    return A + (u * (B - A)) + (v * (C - A));
            }

            return new[] { new Rod(A, B, 0), new Rod(B, C, 0), new Rod(C, A, 0) }.Select(e => e.Nearest(p)).MinBy(q => (q - p).Size);
        }

        public override ConvexShape Shape() => new Hull([A, B, C], R);
    }

    /// <summary>Distance of the surfaces, below zero only by as much as the radii overlap.</summary>
    public static double Between(Plain a, Pose outerFromA, Plain b, Pose outerFromB, int steps = 4000)
    {
        var p = outerFromA * a.Nearest(default);
        var q = p;
        var last = double.PositiveInfinity;
        for (var i = 0; i < steps; i++)
        {
            q = outerFromB * b.Nearest(outerFromB.Inverse() * p);
            p = outerFromA * a.Nearest(outerFromA.Inverse() * q);
            var now = (p - q).Size;
            if (last - now < 1e-15 && i > 20)
                break;
            last = now;
        }

        return (p - q).Size - a.Radius - b.Radius;
    }
}

/// <summary>Random shapes and joints; the same seed gives the same scene for ever.</summary>
internal sealed class Scenes(int seed)
{
#pragma warning disable CA5394 // A fixed seed is the point.
    private readonly Random random = new(seed);

    public double Number(double low, double high) => low + (random.NextDouble() * (high - low));
#pragma warning restore CA5394

    public Vector3 Place(double size) => new(Number(-size, size), Number(-size, size), Number(-size, size));

    public Vector3 Direction()
    {
        while (true)
        {
            var v = Place(1);
            if (v.Size is > 0.1 and <= 1)
                return v.Unit();
        }
    }

    public Pose Pose(double size) => new(Rotation.About(Direction(), Number(-3, 3)), Place(size));

    public Plain Shape(int kind) => kind switch
    {
        0 => new Plain.Ball(Place(0.02), Number(0.005, 0.05)),
        1 => new Plain.Rod(Place(0.1), Place(0.1), Number(0.005, 0.03)),
        2 => new Plain.Block(Place(0.02), Pose(0).Turn, new(Number(0.01, 0.08), Number(0.01, 0.08), Number(0.01, 0.08)), Number(0, 0.01)),
        3 => new Plain.Bar(Place(0.05), Place(0.05) + new Vector3(0.2, 0, 0), Number(0.005, 0.05), Number(0, 0.005)),
        _ => new Plain.Sheet(Place(0.1), Place(0.1), Place(0.1), 0),
    };

    public Plain AnyShape() => Shape((int)Number(0, 5));
}
