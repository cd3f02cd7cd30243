using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Distance;

/// <summary>A convex shape in its body's axes: a core that answers "how far in this direction", and a rounding radius round it.</summary>
/// <remarks>Lengths in m. The radius is exact in every bound: it is subtracted at the end and never sampled.</remarks>
public abstract class ConvexShape
{
    // Within the padding of every bound.
    private const double OnAxis = 1e-13;

    private protected ConvexShape(double radius, Vector3 centre, double reach)
    {
        if (!(radius >= 0) || !double.IsFinite(radius) || !double.IsFinite(centre.Size) || !double.IsFinite(reach))
            throw new ArgumentException("A shape needs finite measures, and a radius of zero or more.");
        Radius = radius;
        Centre = centre;
        CoreReach = reach;
    }

    private protected static bool IsOn(Vector3 point, Vector3 through, Vector3 axis) => Vector3.Cross(point - through, axis).Size <= OnAxis * (1 + (point - through).Size);

    /// <summary>Rounding round the core.</summary>
    public double Radius { get; }

    public Vector3 Centre { get; }

    /// <summary>Largest distance of a core point from the centre.</summary>
    public double CoreReach { get; }

    /// <summary>A core point that is farthest in the direction; the direction need not have length 1.</summary>
    public abstract Vector3 Farthest(Vector3 direction);

    /// <summary>Least value of u . x over the core. Closed form: it holds for every u, whatever its length.</summary>
    public abstract double Least(Vector3 u);

    /// <summary>Does a turn about this line leave the shape as it is?</summary>
    public virtual bool IsRoundAbout(Vector3 through, Vector3 axis) => false;

    /// <summary>The same shape somewhere else in the body.</summary>
    public abstract ConvexShape Moved(Pose pose);

    /// <summary>The same shape with more rounding, e.g. the error of a scan.</summary>
    public abstract ConvexShape Padded(double more);
}

public sealed class Sphere(Vector3 centre, double radius) : ConvexShape(radius, centre, 0)
{
    public override Vector3 Farthest(Vector3 direction) => Centre;
    public override double Least(Vector3 u) => Vector3.Dot(u, Centre);
    public override bool IsRoundAbout(Vector3 through, Vector3 axis) => IsOn(Centre, through, axis);
    public override ConvexShape Moved(Pose pose) => new Sphere(pose * Centre, Radius);
    public override ConvexShape Padded(double more) => new Sphere(Centre, Radius + more);
}

public sealed class Capsule(Vector3 from, Vector3 to, double radius) : ConvexShape(radius, 0.5 * (from + to), 0.5 * (to - from).Size)
{
    public Vector3 From { get; } = from;
    public Vector3 To { get; } = to;
    public override Vector3 Farthest(Vector3 direction) => Vector3.Dot(direction, To - From) >= 0 ? To : From;
    public override double Least(Vector3 u) => Math.Min(Vector3.Dot(u, From), Vector3.Dot(u, To));
    public override bool IsRoundAbout(Vector3 through, Vector3 axis) => IsOn(From, through, axis) && IsOn(To, through, axis);
    public override ConvexShape Moved(Pose pose) => new Capsule(pose * From, pose * To, Radius);
    public override ConvexShape Padded(double more) => new Capsule(From, To, Radius + more);
}

/// <summary>A box, turned as its axes say; half sizes of zero make a plate, a rod or a point.</summary>
public sealed class Box : ConvexShape
{
    private readonly Vector3 gx, gy, gz;

    public Box(Vector3 centre, Rotation axes, Vector3 halfSizes, double radius = 0)
        : this(centre, halfSizes.X * axes.X, halfSizes.Y * axes.Y, halfSizes.Z * axes.Z, radius)
    {
        if (halfSizes.X < 0 || halfSizes.Y < 0 || halfSizes.Z < 0)
            throw new ArgumentException("Half sizes are zero or more.", nameof(halfSizes));
    }

    private Box(Vector3 centre, Vector3 x, Vector3 y, Vector3 z, double radius)
        : base(radius, centre, Math.Sqrt(Vector3.Dot(x, x) + Vector3.Dot(y, y) + Vector3.Dot(z, z)))
    {
        (gx, gy, gz) = (x, y, z);
    }

    /// <summary>From the centre to the middle of three faces, the rounding left out.</summary>
    public (Vector3 X, Vector3 Y, Vector3 Z) Halves => (gx, gy, gz);

    public override Vector3 Farthest(Vector3 direction) =>
        Centre + Toward(direction, gx) + Toward(direction, gy) + Toward(direction, gz);

    public override double Least(Vector3 u) =>
        Vector3.Dot(u, Centre) - Math.Abs(Vector3.Dot(u, gx)) - Math.Abs(Vector3.Dot(u, gy)) - Math.Abs(Vector3.Dot(u, gz));

    public override ConvexShape Moved(Pose pose) => new Box(pose * Centre, pose.Turn * gx, pose.Turn * gy, pose.Turn * gz, Radius);
    public override ConvexShape Padded(double more) => new Box(Centre, gx, gy, gz, Radius + more);

    private static Vector3 Toward(Vector3 direction, Vector3 half) => Vector3.Dot(direction, half) >= 0 ? half : -half;
}

/// <summary>A round bar with square ends.</summary>
public sealed class Cylinder : ConvexShape
{
    private readonly Vector3 half, along;
    private readonly double halfLength;

    /// <param name="across">Radius of the bar, m; <paramref name="radius"/> rounds it over on top.</param>
    public Cylinder(Vector3 from, Vector3 to, double across, double radius = 0)
        : base(radius, 0.5 * (from + to), Math.Sqrt((0.25 * Vector3.Dot(to - from, to - from)) + (across * across)))
    {
        if (!(across >= 0))
            throw new ArgumentException("The radius of a bar is zero or more.", nameof(across));
        half = 0.5 * (to - from);
        halfLength = half.Size;
        if (!(halfLength > 0))
            throw new ArgumentException("A bar needs a length: its ends are one point.", nameof(to));
        along = (1 / halfLength) * half;
        Across = across;
    }

    public double Across { get; }

    /// <summary>Middles of the two ends, the rounding left out.</summary>
    public (Vector3 From, Vector3 To) Ends => (Centre - half, Centre + half);

    /// <remarks>
    /// With the direction almost along the axis its square part is rounding noise along the axis. Made square twice and
    /// dropped when it is below 1e-12 of the direction, or the point would lie off the body.
    /// </remarks>
    public override Vector3 Farthest(Vector3 direction)
    {
        var lengthwise = Vector3.Dot(direction, along);
        var square = direction - (lengthwise * along);
        square -= Vector3.Dot(square, along) * along;
        var end = lengthwise >= 0 ? Centre + half : Centre - half;
        var size = square.Size;
        return size <= 1e-12 * direction.Size ? end : end + ((Across / size) * square);
    }

    public override double Least(Vector3 u)
    {
        var lengthwise = Vector3.Dot(u, along);
        var square = u - (lengthwise * along);
        return Vector3.Dot(u, Centre) - (halfLength * Math.Abs(lengthwise)) - (Across * square.Size);
    }

    public override bool IsRoundAbout(Vector3 through, Vector3 axis) => IsOn(Centre - half, through, axis) && IsOn(Centre + half, through, axis);
    public override ConvexShape Moved(Pose pose) => new Cylinder(pose * (Centre - half), pose * (Centre + half), Across, Radius);
    public override ConvexShape Padded(double more) => new Cylinder(Centre - half, Centre + half, Across, Radius + more);
}

/// <summary>A round bar with square ends of different thickness; one radius may be zero.</summary>
public sealed class Cone : ConvexShape
{
    private readonly Vector3 from, to, along;
    private readonly double acrossFrom, acrossTo;

    public Cone(Vector3 from, Vector3 to, double acrossFrom, double acrossTo, double radius = 0)
        : base(
            radius,
            0.5 * (from + to),
            Math.Sqrt((0.25 * Vector3.Dot(to - from, to - from)) + (Math.Max(acrossFrom, acrossTo) * Math.Max(acrossFrom, acrossTo))))
    {
        if (!(acrossFrom >= 0) || !(acrossTo >= 0))
            throw new ArgumentException("The radii of a bar are zero or more.", nameof(acrossFrom));
        var length = (to - from).Size;
        if (!(length > 0))
            throw new ArgumentException("A bar needs a length: its ends are one point.", nameof(to));
        (this.from, this.to, along) = (from, to, (1 / length) * (to - from));
        (this.acrossFrom, this.acrossTo) = (acrossFrom, acrossTo);
    }

    /// <summary>Middles of the two ends with the radius at each, the rounding left out.</summary>
    public (Vector3 From, Vector3 To, double AcrossFrom, double AcrossTo) Ends => (from, to, acrossFrom, acrossTo);

    /// <remarks>As for a cylinder: a square part that is only rounding noise is dropped.</remarks>
    public override Vector3 Farthest(Vector3 direction)
    {
        var square = Square(direction);
        var size = square.Size;
        var unit = size <= 1e-12 * direction.Size ? default : (1 / size) * square;
        Vector3 a = from + (acrossFrom * unit), b = to + (acrossTo * unit);
        return Vector3.Dot(direction, a) >= Vector3.Dot(direction, b) ? a : b;
    }

    public override double Least(Vector3 u)
    {
        var size = Square(u).Size;
        return Math.Min(Vector3.Dot(u, from) - (acrossFrom * size), Vector3.Dot(u, to) - (acrossTo * size));
    }

    public override bool IsRoundAbout(Vector3 through, Vector3 axis) => IsOn(from, through, axis) && IsOn(to, through, axis);
    public override ConvexShape Moved(Pose pose) => new Cone(pose * from, pose * to, acrossFrom, acrossTo, Radius);
    public override ConvexShape Padded(double more) => new Cone(from, to, acrossFrom, acrossTo, Radius + more);

    private Vector3 Square(Vector3 direction)
    {
        var square = direction - (Vector3.Dot(direction, along) * along);
        return square - (Vector3.Dot(square, along) * along);
    }
}

/// <summary>The convex hull of points; three points are a triangle. Points inside the hull or given twice do no harm.</summary>
public sealed class Hull : ConvexShape
{
    private readonly Vector3[] points;

    public Hull(IEnumerable<Vector3> points, double radius = 0)
        : this([.. points], radius)
    {
    }

    private Hull(Vector3[] points, double radius)
        : base(radius, Middle(points), ReachOf(points))
    {
        this.points = points;
    }

    public IReadOnlyList<Vector3> Points => points;

    public override Vector3 Farthest(Vector3 direction)
    {
        var best = points[0];
        var most = Vector3.Dot(direction, best);
        for (var i = 1; i < points.Length; i++)
        {
            var value = Vector3.Dot(direction, points[i]);
            if (value > most)
                (most, best) = (value, points[i]);
        }

        return best;
    }

    public override double Least(Vector3 u)
    {
        var least = Vector3.Dot(u, points[0]);
        for (var i = 1; i < points.Length; i++)
            least = Math.Min(least, Vector3.Dot(u, points[i]));
        return least;
    }

    public override ConvexShape Moved(Pose pose) => new Hull([.. points.Select(p => pose * p)], Radius);
    public override ConvexShape Padded(double more) => new Hull(points, Radius + more);

    private static Vector3 Middle(Vector3[] points)
    {
        if (points.Length == 0)
            throw new ArgumentException("A hull needs at least one point.", nameof(points));
        var sum = default(Vector3);
        foreach (var p in points)
            sum += p;
        return (1.0 / points.Length) * sum;
    }

    private static double ReachOf(Vector3[] points)
    {
        var middle = Middle(points);
        return points.Max(p => (p - middle).Size);
    }
}
