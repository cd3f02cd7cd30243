using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Engine.Measure;

/// <summary>The same mark in two sets of axes, e.g. in a scan and on the aircraft.</summary>
public sealed record MatchedPoint(string Name, Vector3 From, Vector3 To);

/// <summary>A turn and a shift that carry one set of points onto the other as well as can be.</summary>
/// <param name="X">Where the first axis points after the turn; Y and Z the others.</param>
/// <param name="Size">Spread of the points after over before: 1 but for errors; 25.4 or 0.0394 is a slip of units.</param>
/// <param name="Misses">Distance left at each point, m, in the order given.</param>
public sealed record PointFit(Vector3 X, Vector3 Y, Vector3 Z, Vector3 Shift, double Size, EquatableList<double> Misses)
{
    /// <summary>Square root of the mean square of the misses, m.</summary>
    public double Miss => Math.Sqrt(Misses.Average(m => m * m));

    public Vector3 Place(Vector3 from) => Turn(from) + Shift;

    public Vector3 Turn(Vector3 from) => (from.X * X) + (from.Y * Y) + (from.Z * Z);

    /// <summary>The best fit; null where the points do not fix it: fewer than three, or all in one line.</summary>
    /// <remarks>
    /// B. K. P. Horn, J. Opt. Soc. Am. A 4 (1987) 629-642: the turn of least squares is the unit quaternion that belongs to
    /// the largest eigenvalue of a symmetric 4 x 4 matrix of the points' products. It never mirrors.
    /// </remarks>
    public static PointFit? Of(EquatableList<MatchedPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count < 3)
            return null;
        Vector3 from = Mean(points.Select(p => p.From)), to = Mean(points.Select(p => p.To));
        if (InLine(points.Select(p => p.From - from)) || InLine(points.Select(p => p.To - to)))
            return null;
        var s = new double[3, 3];
        double before = 0, after = 0;
        foreach (var p in points)
        {
            Vector3 a = p.From - from, b = p.To - to;
            double[] u = [a.X, a.Y, a.Z], v = [b.X, b.Y, b.Z];
            for (var i = 0; i < 3; i++)
            {
                for (var j = 0; j < 3; j++)
                    s[i, j] += u[i] * v[j];
            }

            before += Vector3.Dot(a, a);
            after += Vector3.Dot(b, b);
        }

        var n = new[,]
        {
            { s[0, 0] + s[1, 1] + s[2, 2], s[1, 2] - s[2, 1], s[2, 0] - s[0, 2], s[0, 1] - s[1, 0] },
            { s[1, 2] - s[2, 1], s[0, 0] - s[1, 1] - s[2, 2], s[0, 1] + s[1, 0], s[2, 0] + s[0, 2] },
            { s[2, 0] - s[0, 2], s[0, 1] + s[1, 0], s[1, 1] - s[0, 0] - s[2, 2], s[1, 2] + s[2, 1] },
            { s[0, 1] - s[1, 0], s[2, 0] + s[0, 2], s[1, 2] + s[2, 1], s[2, 2] - s[0, 0] - s[1, 1] },
        };
        var q = SymmetricEigen.Of(n).Vectors[0];
        double w = q[0], x = q[1], y = q[2], z = q[3];
        var fit = new PointFit(
            new(1 - (2 * ((y * y) + (z * z))), 2 * ((x * y) + (w * z)), 2 * ((x * z) - (w * y))),
            new(2 * ((x * y) - (w * z)), 1 - (2 * ((x * x) + (z * z))), 2 * ((y * z) + (w * x))),
            new(2 * ((x * z) + (w * y)), 2 * ((y * z) - (w * x)), 1 - (2 * ((x * x) + (y * y)))),
            default,
            Math.Sqrt(after / before),
            []);
        fit = fit with { Shift = to - fit.Turn(from) };
        return fit with { Misses = points.Select(p => (fit.Place(p.From) - p.To).Size).ToEquatableList() };
    }

    private static Vector3 Mean(IEnumerable<Vector3> points)
    {
        var (sum, count) = (default(Vector3), 0);
        foreach (var p in points)
            (sum, count) = (sum + p, count + 1);
        return (1.0 / count) * sum;
    }

    private static bool InLine(IEnumerable<Vector3> points)
    {
        var scatter = new double[3, 3];
        foreach (var p in points)
        {
            double[] c = [p.X, p.Y, p.Z];
            for (var i = 0; i < 3; i++)
            {
                for (var j = 0; j < 3; j++)
                    scatter[i, j] += c[i] * c[j];
            }
        }

        var values = SymmetricEigen.Of(scatter).Values;
        return !(values[1] > 1e-4 * values[0]);
    }
}
