using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Solids;

/// <summary>A surface with two parameters p, q. Its normal is dS/dp x dS/dq.</summary>
public abstract record Surface(Axes Axes)
{
    public abstract Vector3 At(double p, double q);

    /// <summary>dS/dp x dS/dq; polynomial in q of degree 1 at most on every surface here.</summary>
    public abstract Vector3 AreaAt(double p, double q);

    /// <summary>Parameters of a point that lies near the surface.</summary>
    public abstract (double P, double Q) Of(Vector3 point);

    /// <summary>Change of the parameters along a curve that runs on the surface.</summary>
    public abstract (double P, double Q) Rates(Vector3 point, Vector3 slope);

    /// <summary>Distance of a point from the surface, m.</summary>
    public abstract double Off(Vector3 point);

    /// <summary>p is an angle, the same again after a turn.</summary>
    public virtual bool IsRound => true;
}

/// <summary>A plane: p, q along its axes' x and y, normal z.</summary>
public sealed record Plane(Axes Axes) : Surface(Axes)
{
    public override bool IsRound => false;

    public override Vector3 At(double p, double q) => Axes.Point(p, q);

    public override Vector3 AreaAt(double p, double q) => Axes.Z;

    public override (double P, double Q) Of(Vector3 point) => (Axes.Of(point).X, Axes.Of(point).Y);

    public override (double P, double Q) Rates(Vector3 point, Vector3 slope) => (Vector3.Dot(slope, Axes.X), Vector3.Dot(slope, Axes.Y));

    public override double Off(Vector3 point) => Math.Abs(Axes.Of(point).Z);
}

/// <summary>A cylinder about its axes' z: p the angle from x, q the height; the normal points away from the axis.</summary>
public sealed record Cylinder(Axes Axes, double Radius) : Surface(Axes)
{
    public override Vector3 At(double p, double q) => Axes.Point(Vector2.Polar(Radius, p), q);

    public override Vector3 AreaAt(double p, double q) => (Radius * Elementary.Cos(p) * Axes.X) + (Radius * Elementary.Sin(p) * Axes.Y);

    public override (double P, double Q) Of(Vector3 point) => Cone.Turn(Axes, point);

    public override (double P, double Q) Rates(Vector3 point, Vector3 slope) => Cone.TurnRates(Axes, point, slope);

    public override double Off(Vector3 point)
    {
        var (x, y, _) = Axes.Of(point);
        return Math.Abs(new Vector2(x, y).Size - Radius);
    }
}

/// <summary>A cone about its axes' z: Radius at the origin, growing along z by Slope; p the angle, q the height.</summary>
/// <param name="Slope">Tangent of the half angle, above zero.</param>
public sealed record Cone(Axes Axes, double Radius, double Slope) : Surface(Axes)
{
    public override Vector3 At(double p, double q) => Axes.Point(Vector2.Polar(Radius + (q * Slope), p), q);

    public override Vector3 AreaAt(double p, double q)
    {
        var radius = Radius + (q * Slope);
        return radius * ((Elementary.Cos(p) * Axes.X) + (Elementary.Sin(p) * Axes.Y) - (Slope * Axes.Z));
    }

    public override (double P, double Q) Of(Vector3 point) => Turn(Axes, point);

    public override (double P, double Q) Rates(Vector3 point, Vector3 slope) => TurnRates(Axes, point, slope);

    public override double Off(Vector3 point)
    {
        var (x, y, z) = Axes.Of(point);
        return Math.Abs(new Vector2(x, y).Size - Radius - (z * Slope)) / Math.Sqrt(1 + (Slope * Slope));
    }

    internal static (double P, double Q) Turn(Axes axes, Vector3 point)
    {
        var (x, y, z) = axes.Of(point);
        return (Math.Atan2(y, x), z);
    }

    internal static (double P, double Q) TurnRates(Axes axes, Vector3 point, Vector3 slope)
    {
        var (x, y, _) = axes.Of(point);
        double dx = Vector3.Dot(slope, axes.X), dy = Vector3.Dot(slope, axes.Y);
        return (((x * dy) - (y * dx)) / ((x * x) + (y * y)), Vector3.Dot(slope, axes.Z));
    }
}
