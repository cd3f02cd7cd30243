using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Frames;

/// <summary>Distance from a fixed point to a point that turns on a circle, written once for every kind of number.</summary>
/// <remarks>
/// In axes with the circle's axis along k and angle 0 along u, w = k x u:
///   turning point  P = r (u cos phi + w sin phi)
///   fixed point    A = u a + w b + k c                                   (c measured from the circle's plane)
///   L^2 = r^2 + a^2 + b^2 + c^2 - 2 r (a cos phi + b sin phi) = C - D cos(phi - phi0)
///   C = r^2 + a^2 + b^2 + c^2,  D = 2 r sqrt(a^2 + b^2),  phi0 = atan2(b, a)
///   dL/dphi = r (a sin phi - b cos phi) / L
/// r, a, b, c, L in m; phi in rad. So L is greatest and least exactly half a turn apart (at phi0 + pi and phi0).
/// D = 0: the point lies on the circle's axis or the circle is a point; L is constant and phi0 has no meaning.
/// Derived in docs/theory/throw.md.
/// </remarks>
public readonly record struct CircleDistance<T>(T Radius, T AlongZero, T AlongQuarter, T AlongAxis)
    where T : struct, IReal<T>
{
    public T At(T phi)
    {
        var (r, a, b, c) = (Radius, AlongZero, AlongQuarter, AlongAxis);
        // (r cos - a)^2 + (r sin - b)^2 + c^2: no cancellation when the two points are close.
        T x = (r * T.Cos(phi)) - a, y = (r * T.Sin(phi)) - b;
        return T.Sqrt((x * x) + (y * y) + (c * c));
    }

    /// <summary>dL/dphi, m/rad.</summary>
    public T SlopeAt(T phi, T distance)
    {
        var (r, a, b) = (Radius, AlongZero, AlongQuarter);
        return r * ((a * T.Sin(phi)) - (b * T.Cos(phi))) / distance;
    }
}
