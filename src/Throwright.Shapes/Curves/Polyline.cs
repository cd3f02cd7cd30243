using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Curves;

/// <summary>Figures of a curve that is known by points on it only.</summary>
public static class Polyline
{
    /// <summary>Integral of the curvature of the curve behind the points, rad; 0 for fewer than three points.</summary>
    /// <remarks>
    /// The corners stand for the curve between the middles of their legs. The half legs at both ends have no corner of their
    /// own; they turn as their neighbours do: half a corner each, in the ratio of the lengths. Without them a bend of n legs
    /// comes out 1/n too small. Error of second order in the legs. A point twice in a row is taken once.
    /// </remarks>
    public static double BendTotal(IReadOnlyList<Vector3> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        var legs = new List<Vector3>();
        for (var i = 1; i < points.Count; i++)
        {
            var leg = points[i] - points[i - 1];
            if (leg.Size > 0)
                legs.Add(leg);
        }

        if (legs.Count < 2)
            return 0;
        var sum = 0.0;
        for (var i = 1; i < legs.Count; i++)
            sum += Vector3.AngleBetween(legs[i - 1], legs[i]);
        return sum + Half(legs[0], legs[1]) + Half(legs[^1], legs[^2]);

        static double Half(Vector3 end, Vector3 next) => Vector3.AngleBetween(end, next) * end.Size / (end.Size + next.Size);
    }

    public static double Length(IReadOnlyList<Vector3> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        var sum = 0.0;
        for (var i = 1; i < points.Count; i++)
            sum += (points[i] - points[i - 1]).Size;
        return sum;
    }
}
