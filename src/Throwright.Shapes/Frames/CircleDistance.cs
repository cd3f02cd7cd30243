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
    public T At(T phi) => PlaceAt(phi).Distance;

    /// <summary>dL/dphi, m/rad.</summary>
    public T SlopeAt(T phi, T distance)
    {
        var (cos, sin) = T.CosSin(phi);
        return Slope(cos, sin, distance);
    }

    /// <summary>Sine, cosine and distance together, for what follows from all three.</summary>
    public CirclePlace<T> PlaceAt(T phi)
    {
        var (cos, sin) = T.CosSin(phi);
        var (r, a, b, c) = (Radius, AlongZero, AlongQuarter, AlongAxis);
        // (r cos - a)^2 + (r sin - b)^2 + c^2: no cancellation when the two points are close.
        return new(cos, sin, T.Sqrt(T.Square((r * cos) - a) + T.Square((r * sin) - b) + T.Square(c)));
    }

    /// <summary>dL/dphi, m/rad.</summary>
    public T SlopeAt(CirclePlace<T> place) => Slope(place.Cos, place.Sin, place.Distance);

    /// <summary>L1 - L2.</summary>
    /// <remarks>
    /// (L1^2 - L2^2) / (L1 + L2) = 2 r [a (cos2 - cos1) + b (sin2 - sin1)] / (L1 + L2): c and most of a and b have
    /// cancelled before any rounding, and proven bounds of the difference stay narrow.
    /// </remarks>
    public T Difference(CirclePlace<T> first, CirclePlace<T> second) =>
        2 * Radius * ((AlongZero * (second.Cos - first.Cos)) + (AlongQuarter * (second.Sin - first.Sin))) / (first.Distance + second.Distance);

    private T Slope(T cos, T sin, T distance) => Radius * ((AlongZero * sin) - (AlongQuarter * cos)) / distance;
}

/// <summary>One place on the circle, seen from the fixed point.</summary>
public readonly record struct CirclePlace<T>(T Cos, T Sin, T Distance)
    where T : struct, IReal<T>;
