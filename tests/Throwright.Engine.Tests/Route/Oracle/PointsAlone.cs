using Throwright.Shapes.Frames;

namespace Throwright.Engine.Tests.Route.Oracle;

/// <summary>Radius, length and distance of a curve from dense points on it and nothing else: a second opinion.</summary>
internal static class PointsAlone
{
    public static double Length(IReadOnlyList<Vector3> p)
    {
        var sum = 0.0;
        for (var i = 1; i < p.Count; i++)
            sum += Math.Sqrt(Square(p[i] - p[i - 1]));
        return sum;
    }

    /// <summary>Radius of the circle through three points apart by the step, least over the curve.</summary>
    public static double LeastRadius(IReadOnlyList<Vector3> p, int step)
    {
        var least = double.PositiveInfinity;
        for (var i = step; i + step < p.Count; i++)
        {
            Vector3 u = p[i] - p[i - step], v = p[i + step] - p[i], w = p[i + step] - p[i - step];
            // abc / (4 area), the area by Heron's rule on squares: 16 area^2 = 2(ab + bc + ca) - (aa + bb + cc).
            double a = Square(u), b = Square(v), c = Square(w);
            var area16 = (2 * ((a * b) + (b * c) + (c * a))) - (a * a) - (b * b) - (c * c);
            if (area16 > 0)
                least = Math.Min(least, Math.Sqrt(a * b * c / area16));
        }

        return least;
    }

    public static double LeastDistance(IReadOnlyList<Vector3> p, Func<Vector3, double> distance) => p.Min(distance);

    private static double Square(Vector3 v) => (v.X * v.X) + (v.Y * v.Y) + (v.Z * v.Z);
}
