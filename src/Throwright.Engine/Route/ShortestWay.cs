using Throwright.Shapes.Frames;

namespace Throwright.Engine.Route;

internal static class ShortestWay
{
    /// <summary>A length below which no curve of this radius or more leads from a place with a direction to a point.</summary>
    /// <remarks>
    /// The shortest such curve is plane: an arc, then a straight line (derived in docs/theory/route.md). A point inside the
    /// turning circle gets its straight distance, which is a bound too.
    /// </remarks>
    /// <param name="to">The point, seen from the place.</param>
    public static double From(Vector3? along, Vector3 to, double radius)
    {
        if (along is not { } direction || !(radius > 0))
            return to.Size;
        var t = direction.Unit();
        double x = Vector3.Dot(to, t), y = (to - (x * t)).Size;
        double square = (x * x) + ((y - radius) * (y - radius)) - (radius * radius);
        if (square < 0)
            return to.Size;
        var straight = Math.Sqrt(square);
        var arc = Math.Atan2(y - radius, x) + Math.Atan2(radius, straight);
        // Straight ahead the two angles cancel, but for rounding.
        return (radius * (arc < -1e-9 ? arc + (2 * Math.PI) : Math.Max(0, arc))) + straight;
    }
}
