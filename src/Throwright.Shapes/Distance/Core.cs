using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Throwright.Shapes.Distance;

internal enum CoreKind
{
    Point,
    Segment,
    Box,
    Bar,
    Cone,
    Triangle,
    Points,
}

/// <summary>What a convex shape is made of, as plain numbers: a core and the rounding round it. m, the body's axes.</summary>
/// <remarks>
/// One struct for every kind, so that the inner loops neither allocate nor call through a table. What X, Y and Z hold:
///   segment   X half of it
///   box       the three half vectors
///   bar       X half of it, Y unit along it; Across its radius
///   cone      the same; Across the radius at the centre less X, AcrossTo at the centre plus X
///   triangle  its corners
///   points    the body's axes; the points are in Points
/// All but the centre are measured from the centre. A core in other axes is the same struct, turned.
/// </remarks>
internal struct Core
{
    public CoreKind Kind;
    public Vector256<double> Centre, X, Y, Z;
    public double Across, AcrossTo;

    /// <summary>Rounding round the core.</summary>
    public double Radius;

    /// <summary>No point of the core is farther from the centre.</summary>
    public double Reach;

    /// <summary>Of a hull: from its centre, in axes of its own.</summary>
    public Vector256<double>[]? Points;

    /// <summary>A point or a segment.</summary>
    public readonly bool IsThin => Kind <= CoreKind.Segment;

    /// <summary>A bar or a cone.</summary>
    public readonly bool IsRound => Kind is CoreKind.Bar or CoreKind.Cone;

    public static Core OfTriangle(Vector256<double> a, Vector256<double> b, Vector256<double> c, double radius)
    {
        var middle = (1.0 / 3) * (a + b + c);
        var (x, y, z) = (a - middle, b - middle, c - middle);
        return new() { Kind = CoreKind.Triangle, Centre = middle, X = x, Y = y, Z = z, Radius = radius, Reach = Math.Max(Triple.Size(x), Math.Max(Triple.Size(y), Triple.Size(z))) };
    }

    public static Core OfBox(Vector256<double> centre, Vector256<double> x, Vector256<double> y, Vector256<double> z, double radius) => new()
    {
        Kind = CoreKind.Box,
        Centre = centre,
        X = x,
        Y = y,
        Z = z,
        Radius = radius,
        Reach = Math.Sqrt(Triple.Dot(x, x) + Triple.Dot(y, y) + Triple.Dot(z, z)),
    };

    /// <summary>Lowest coordinates of the core along the axes.</summary>
    public readonly Vector256<double> Lowest() => Centre + Vector256.Create(Least(Axis(0)), Least(Axis(1)), Least(Axis(2)), 0);

    public readonly Vector256<double> Highest() => Centre - Vector256.Create(Least(-Axis(0)), Least(-Axis(1)), Least(-Axis(2)), 0);

    /// <summary>Least values of sign u . x over the core, x from the centre, for three directions at once, given by their columns.</summary>
    public readonly Vector256<double> Least(Vector256<double> columnX, Vector256<double> columnY, Vector256<double> columnZ, double sign)
    {
        var least = Vector256<double>.Zero;
        for (var i = 0; i < 3; i++)
            least = least.WithElement(i, Least(sign * Vector256.Create(columnX[i], columnY[i], columnZ[i], 0)));
        return least;
    }

    private static Vector256<double> Axis(int i) => Vector256<double>.Zero.WithElement(i, 1);

    /// <summary>The same core turned, about the centre given.</summary>
    /// <param name="turned">Filled; what the kind does not need is left as it is.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void Place(in TriplePose outerFromThis, Vector256<double> centre, ref Core turned)
    {
        turned.Kind = Kind;
        turned.Centre = centre;
        turned.Radius = Radius;
        turned.Reach = Reach;
        if (Kind == CoreKind.Point)
            return;
        turned.X = outerFromThis.Turn(X);
        if (Kind == CoreKind.Segment)
            return;
        turned.Y = outerFromThis.Turn(Y);
        if (IsRound)
        {
            turned.Across = Across;
            turned.AcrossTo = AcrossTo;
            return;
        }

        turned.Z = outerFromThis.Turn(Z);
        turned.Points = Points;
    }

    /// <summary>Farthest point in the direction, from the centre; the direction need not have length 1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly Vector256<double> Farthest(Vector256<double> d)
    {
        if (Kind == CoreKind.Box)
            return Triple.Toward(Triple.Dot(d, X), X) + Triple.Toward(Triple.Dot(d, Y), Y) + Triple.Toward(Triple.Dot(d, Z), Z);
        if (Kind == CoreKind.Segment)
            return Triple.Toward(Triple.Dot(d, X), X);
        return Kind == CoreKind.Point ? Vector256<double>.Zero : FarthestOfOthers(d);
    }

    /// <summary>Least value of u . x over the core, x from the centre. Closed form: it holds for every u, whatever its length.</summary>
    public readonly double Least(Vector256<double> u)
    {
        switch (Kind)
        {
            case CoreKind.Point:
                return 0;
            case CoreKind.Segment:
                return -Math.Abs(Triple.Dot(u, X));
            case CoreKind.Box:
                return -Math.Abs(Triple.Dot(u, X)) - Math.Abs(Triple.Dot(u, Y)) - Math.Abs(Triple.Dot(u, Z));
            case CoreKind.Triangle:
                return Math.Min(Triple.Dot(u, X), Math.Min(Triple.Dot(u, Y), Triple.Dot(u, Z)));
            case CoreKind.Bar:
                return -Math.Abs(Triple.Dot(u, X)) - (Across * Triple.Size(u - (Triple.Dot(u, Y) * Y)));
            case CoreKind.Cone:
                var size = Triple.Size(u - (Triple.Dot(u, Y) * Y));
                var along = Triple.Dot(u, X);
                return Math.Min(-along - (Across * size), along - (AcrossTo * size));
            default:
                return LeastOfPoints(Vector256.Create(Triple.Dot(u, X), Triple.Dot(u, Y), Triple.Dot(u, Z), 0));
        }
    }

    /// <summary>Least value of u . x for four directions at once, x from the body's origin.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public readonly Vector256<double> Least(Vector256<double> x, Vector256<double> y, Vector256<double> z)
    {
        var centre = Along(Centre, x, y, z);
        switch (Kind)
        {
            case CoreKind.Point:
                return centre;
            case CoreKind.Segment:
                return centre - Vector256.Abs(Along(X, x, y, z));
            case CoreKind.Box:
                return centre - Vector256.Abs(Along(X, x, y, z)) - Vector256.Abs(Along(Y, x, y, z)) - Vector256.Abs(Along(Z, x, y, z));
            case CoreKind.Triangle:
                return centre + Vector256.Min(Along(X, x, y, z), Vector256.Min(Along(Y, x, y, z), Along(Z, x, y, z)));
            case CoreKind.Points:
                var least = Vector256.Create(double.PositiveInfinity);
                foreach (ref readonly var p in Points.AsSpan())
                    least = Vector256.Min(least, Along(p, x, y, z));
                return centre + least;
            default:
                var along = Along(Y, x, y, z);
                Vector256<double> sx = x - (along * Y[0]), sy = y - (along * Y[1]), sz = z - (along * Y[2]);
                var size = Vector256.Sqrt((sx * sx) + (sy * sy) + (sz * sz));
                var half = Along(X, x, y, z);
                return Kind == CoreKind.Bar
                    ? centre - Vector256.Abs(half) - (Across * size)
                    : centre + Vector256.Min(-half - (Across * size), half - (AcrossTo * size));
        }
    }

    private static Vector256<double> Along(Vector256<double> p, Vector256<double> x, Vector256<double> y, Vector256<double> z) => (x * p[0]) + (y * p[1]) + (z * p[2]);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private readonly Vector256<double> FarthestOfOthers(Vector256<double> d)
    {
        if (Kind == CoreKind.Triangle)
        {
            double x = Triple.Dot(d, X), y = Triple.Dot(d, Y), z = Triple.Dot(d, Z);
            return x >= y && x >= z ? X : y >= z ? Y : Z;
        }

        if (Kind == CoreKind.Points)
        {
            var u = Vector256.Create(Triple.Dot(d, X), Triple.Dot(d, Y), Triple.Dot(d, Z), 0);
            var best = 0;
            var most = double.NegativeInfinity;
            var points = Points!;
            for (var i = 0; i < points.Length; i++)
            {
                var value = Triple.Dot(u, points[i]);
                if (value > most)
                    (most, best) = (value, i);
            }

            return Triple.Combined(points[best], X, Y, Z);
        }

        // With the direction almost along the axis its square part is rounding noise along the axis. Made square twice and
        // dropped when it is below 1e-12 of the direction, or the point would lie off the body.
        var lengthwise = Triple.Dot(d, Y);
        var square = d - (lengthwise * Y);
        square -= Triple.Dot(square, Y) * Y;
        var size = Triple.Size(square);
        var unit = size <= 1e-12 * Triple.Size(d) ? Vector256<double>.Zero : (1 / size) * square;
        if (Kind == CoreKind.Bar)
            return Triple.Toward(lengthwise, X) + (Across * unit);
        Vector256<double> a = (Across * unit) - X, b = (AcrossTo * unit) + X;
        return Triple.Dot(d, a) >= Triple.Dot(d, b) ? a : b;
    }

    private readonly double LeastOfPoints(Vector256<double> u)
    {
        var least = double.PositiveInfinity;
        foreach (var p in Points!)
            least = Math.Min(least, Triple.Dot(u, p));
        return least;
    }
}
