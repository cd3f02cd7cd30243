using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Solids;

/// <summary>A curve in space with a parameter.</summary>
public abstract record Curve
{
    public abstract Vector3 At(double t);

    /// <summary>Derivative by the parameter.</summary>
    public abstract Vector3 SlopeAt(double t);

    /// <summary>Parameter of the foot of a point that lies near the curve.</summary>
    public abstract double Of(Vector3 point);
}

/// <summary>A straight line; the parameter is the distance along it, m.</summary>
/// <param name="Direction">Of length 1.</param>
public sealed record Straight(Vector3 Start, Vector3 Direction) : Curve
{
    public override Vector3 At(double t) => Start + (t * Direction);

    public override Vector3 SlopeAt(double t) => Direction;

    public override double Of(Vector3 point) => Vector3.Dot(point - Start, Direction);
}

/// <summary>A circle (equal half-axes) or an ellipse about its axes' z; the parameter is the angle of the two half-axes, rad.</summary>
/// <param name="AlongX">Half-axis along x, m.</param>
/// <param name="AlongY">Half-axis along y, m.</param>
public sealed record Ellipse(Axes Axes, double AlongX, double AlongY) : Curve
{
    public bool IsCircle => AlongX == AlongY;

    public override Vector3 At(double t) => Axes.Point(AlongX * Elementary.Cos(t), AlongY * Elementary.Sin(t));

    public override Vector3 SlopeAt(double t) => (-AlongX * Elementary.Sin(t) * Axes.X) + (AlongY * Elementary.Cos(t) * Axes.Y);

    public override double Of(Vector3 point)
    {
        var (x, y, _) = Axes.Of(point);
        return Math.Atan2(y / AlongY, x / AlongX);
    }
}
