using System.Runtime.Intrinsics;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Distance;

/// <summary>A convex shape in its body's axes: a core that answers "how far in this direction", and a rounding radius round it.</summary>
/// <remarks>Lengths in m. The radius is exact in every bound: it is subtracted at the end and never sampled.</remarks>
public abstract class ConvexShape
{
    internal readonly Core Core;

    private protected ConvexShape(in Core core)
    {
        if (!(core.Radius >= 0) || !double.IsFinite(core.Radius) || !double.IsFinite(Triple.Size(core.Centre)) || !double.IsFinite(core.Reach))
            throw new ArgumentException("A shape needs finite measures, and a radius of zero or more.");
        Core = core;
    }

    /// <summary>Rounding round the Core.</summary>
    public double Radius => Core.Radius;

    public Vector3 Centre => Triple.Back(Core.Centre);

    /// <summary>Largest distance of a core point from the centre.</summary>
    public double CoreReach => Core.Reach;

    /// <summary>A core point that is farthest in the direction; the direction need not have length 1.</summary>
    public Vector3 Farthest(Vector3 direction) => Triple.Back(Core.Centre + Core.Farthest(Triple.Of(direction)));

    /// <summary>Least value of u . x over the Core. Closed form: it holds for every u, whatever its length.</summary>
    public double Least(Vector3 u) => Triple.Dot(Triple.Of(u), Core.Centre) + Core.Least(Triple.Of(u));

    /// <summary>The same shape somewhere else in the body.</summary>
    public abstract ConvexShape Moved(Pose pose);

    /// <summary>The same shape with more rounding, e.g. the error of a scan.</summary>
    public abstract ConvexShape Padded(double more);
}

public sealed class Sphere(Vector3 centre, double radius) : ConvexShape(new Core { Kind = CoreKind.Point, Centre = Triple.Of(centre), Radius = radius })
{
    public override ConvexShape Moved(Pose pose) => new Sphere(pose * Centre, Radius);
    public override ConvexShape Padded(double more) => new Sphere(Centre, Radius + more);
}

public sealed class Capsule(Vector3 from, Vector3 to, double radius)
    : ConvexShape(new Core { Kind = CoreKind.Segment, Centre = Triple.Of(0.5 * (from + to)), X = Triple.Of(0.5 * (to - from)), Radius = radius, Reach = 0.5 * (to - from).Size })
{
    public Vector3 From { get; } = from;
    public Vector3 To { get; } = to;
    public override ConvexShape Moved(Pose pose) => new Capsule(pose * From, pose * To, Radius);
    public override ConvexShape Padded(double more) => new Capsule(From, To, Radius + more);
}

/// <summary>A box, turned as its axes say; half sizes of zero make a plate, a rod or a point.</summary>
public sealed class Box : ConvexShape
{
    public Box(Vector3 centre, Rotation axes, Vector3 halfSizes, double radius = 0)
        : this(centre, halfSizes.X * axes.X, halfSizes.Y * axes.Y, halfSizes.Z * axes.Z, radius)
    {
        if (halfSizes.X < 0 || halfSizes.Y < 0 || halfSizes.Z < 0)
            throw new ArgumentException("Half sizes are zero or more.", nameof(halfSizes));
    }

    private Box(Vector3 centre, Vector3 x, Vector3 y, Vector3 z, double radius)
        : base(new Core { Kind = CoreKind.Box, Centre = Triple.Of(centre), X = Triple.Of(x), Y = Triple.Of(y), Z = Triple.Of(z), Radius = radius, Reach = Math.Sqrt(Vector3.Dot(x, x) + Vector3.Dot(y, y) + Vector3.Dot(z, z)) })
    {
    }

    /// <summary>From the centre to the middle of three faces, the rounding left out.</summary>
    public (Vector3 X, Vector3 Y, Vector3 Z) Halves => (Triple.Back(Core.X), Triple.Back(Core.Y), Triple.Back(Core.Z));

    public override ConvexShape Moved(Pose pose) => Halves is var (x, y, z) ? new Box(pose * Centre, pose.Turn * x, pose.Turn * y, pose.Turn * z, Radius) : this;
    public override ConvexShape Padded(double more) => Halves is var (x, y, z) ? new Box(Centre, x, y, z, Radius + more) : this;
}

/// <summary>A round bar with square ends.</summary>
public sealed class Cylinder : ConvexShape
{
    /// <param name="across">Radius of the bar, m; <paramref name="radius"/> rounds it over on top.</param>
    public Cylinder(Vector3 from, Vector3 to, double across, double radius = 0)
        : base(Bar(from, to, across, radius))
    {
    }

    public double Across => Core.Across;

    /// <summary>Middles of the two ends, the rounding left out.</summary>
    public (Vector3 From, Vector3 To) Ends => (Centre - Triple.Back(Core.X), Centre + Triple.Back(Core.X));

    public override ConvexShape Moved(Pose pose) => new Cylinder(pose * (Ends.From), pose * (Ends.To), Across, Radius);
    public override ConvexShape Padded(double more) => new Cylinder(Ends.From, Ends.To, Across, Radius + more);

    private static Core Bar(Vector3 from, Vector3 to, double across, double radius)
    {
        if (!(across >= 0))
            throw new ArgumentException("The radius of a bar is zero or more.", nameof(across));
        var half = 0.5 * (to - from);
        var length = half.Size;
        if (!(length > 0))
            throw new ArgumentException("A bar needs a length: its ends are one point.", nameof(to));
        return new() { Kind = CoreKind.Bar, Centre = Triple.Of(0.5 * (from + to)), X = Triple.Of(half), Y = Triple.Of((1 / length) * half), Across = across, Radius = radius, Reach = Math.Sqrt((length * length) + (across * across)) };
    }
}

/// <summary>A round bar with square ends of different thickness; one radius may be zero.</summary>
public sealed class Cone : ConvexShape
{
    private readonly Vector3 from, to;

    public Cone(Vector3 from, Vector3 to, double acrossFrom, double acrossTo, double radius = 0)
        : base(Tapered(from, to, acrossFrom, acrossTo, radius))
    {
        (this.from, this.to) = (from, to);
    }

    /// <summary>Middles of the two ends with the radius at each, the rounding left out.</summary>
    public (Vector3 From, Vector3 To, double AcrossFrom, double AcrossTo) Ends => (from, to, Core.Across, Core.AcrossTo);

    public override ConvexShape Moved(Pose pose) => new Cone(pose * from, pose * to, Core.Across, Core.AcrossTo, Radius);
    public override ConvexShape Padded(double more) => new Cone(from, to, Core.Across, Core.AcrossTo, Radius + more);

    private static Core Tapered(Vector3 from, Vector3 to, double acrossFrom, double acrossTo, double radius)
    {
        if (!(acrossFrom >= 0) || !(acrossTo >= 0))
            throw new ArgumentException("The radii of a bar are zero or more.", nameof(acrossFrom));
        var half = 0.5 * (to - from);
        var length = half.Size;
        if (!(length > 0))
            throw new ArgumentException("A bar needs a length: its ends are one point.", nameof(to));
        var widest = Math.Max(acrossFrom, acrossTo);
        return new()
        {
            Kind = CoreKind.Cone,
            Centre = Triple.Of(0.5 * (from + to)),
            X = Triple.Of(half),
            Y = Triple.Of((1 / length) * half),
            Across = acrossFrom,
            AcrossTo = acrossTo,
            Radius = radius,
            Reach = Math.Sqrt((length * length) + (widest * widest)),
        };
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
        : base(HullOf(points, radius))
    {
        this.points = points;
    }

    public IReadOnlyList<Vector3> Points => points;

    public override ConvexShape Moved(Pose pose) => new Hull([.. points.Select(p => pose * p)], Radius);
    public override ConvexShape Padded(double more) => new Hull(points, Radius + more);

    private static Core HullOf(Vector3[] points, double radius)
    {
        if (points.Length == 0)
            throw new ArgumentException("A hull needs at least one point.", nameof(points));
        var sum = default(Vector3);
        foreach (var p in points)
            sum += p;
        var middle = (1.0 / points.Length) * sum;
        Vector256<double>[] own = [.. points.Select(p => Triple.Of(p - middle))];
        var core = new Core
        {
            Kind = CoreKind.Points,
            Centre = Triple.Of(middle),
            X = Vector256.Create(1.0, 0, 0, 0),
            Y = Vector256.Create(0, 1.0, 0, 0),
            Z = Vector256.Create(0, 0, 1.0, 0),
            Points = own,
            Radius = radius,
            Reach = own.Max(Triple.Size),
        };
        return own.Length == 3 ? core with { Kind = CoreKind.Triangle, X = own[0], Y = own[1], Z = own[2], Points = null } : core;
    }
}
