using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Curves;

/// <summary>Reads figures off a solved system and puts them back into the caller's measure.</summary>
internal static class CurveReading
{
    // Five-point Gauss-Legendre rule on (0, 1).
    private static readonly double[] GaussAt = [0.5, 0.5 - (0.5 * 0.5384693101056831), 0.5 + (0.5 * 0.5384693101056831), 0.5 - (0.5 * 0.9061798459386640), 0.5 + (0.5 * 0.9061798459386640)];
    private static readonly double[] GaussWeight = [0.5 * 0.5688888888888889, 0.5 * 0.4786286704993665, 0.5 * 0.4786286704993665, 0.5 * 0.2369268850561891, 0.5 * 0.2369268850561891];

    public static ElasticCurve Read(ElasticSystem system, CurveStability stability, Vector3 origin, double unit, double stiffness)
    {
        var frame = system.Frame;
        var nodes = new List<CurveNode>();
        var holds = new List<int> { 0 };
        var reactions = new List<CurveReaction>();
        double at = 0, bending = 0, work = 0, bend = 0, most = 0, mostAt = 0, spread = 0;
        Vector3 point = frame.Points[0], forceBefore = default, momentBefore = default;
        double forceUnit = stiffness / (unit * unit), momentUnit = stiffness / unit;
        for (var k = 0; k < system.Spans; k++)
        {
            var h = system.StepAt(k);
            var n = system.Segments[k];
            var (low, high, size) = (double.PositiveInfinity, double.NegativeInfinity, 0.0);
            if (k > 0)
                point = frame.Points[k];
            for (var i = 0; i < n; i++)
            {
                Vector3 t = system.Tangents[system.Offset[k] + i], u = system.Tangents[system.Offset[k] + i + 1];
                Vector3 k0 = system.Curvature(k, i, false), k1 = system.Curvature(k, i, true);
                Vector3 middle = system.ForceAt(k, i), f0 = middle + (0.5 * h * frame.Load), f1 = middle - (0.5 * h * frame.Load);
                if (i == 0)
                {
                    var moment = Vector3.Cross(t, k0);
                    reactions.Add(new(unit * at, forceUnit * (forceBefore - f0), momentUnit * (momentBefore - moment)));
                }

                nodes.Add(new(unit * at, origin + (unit * point), t, (1 / unit) * k0));
                Vector3 c0 = Change(t, k0, f0), c1 = Change(u, k1, f1);
                bend += Turn(k0, c0, k1, c1, h);
                var (peak, peakAt) = Peak(k0, c0, k1, c1, h);
                // Of places that are tight alike, as in a bend that is the same from both ends, the first one: not whichever rounding makes it.
                if (peak > (1 + 1e-9) * most)
                    mostAt = at + peakAt;
                most = Math.Max(most, peak);
                bending += system.Bending(k, i);
                var chord = system.Displacement(k, i);
                // Integral of s t over the segment less the part of its own start; work of the load = q . integral r ds.
                work += Vector3.Dot(frame.Load, (h * point) + (0.5 * h * chord) - (h * h / 12 * (u - t)));
                double half = 0.5 * Vector3.Dot(k0, k0), balance = half + Vector3.Dot(f0, t);
                (low, high, size) = (Math.Min(low, balance), Math.Max(high, balance), Math.Max(size, Math.Max(half, Math.Abs(Vector3.Dot(f0, t)))));
                point += chord;
                at += h;
                if (i == n - 1)
                {
                    (forceBefore, momentBefore) = (f1, Vector3.Cross(u, k1));
                    if (k == system.Spans - 1)
                        nodes.Add(new(unit * at, origin + (unit * point), u, (1 / unit) * k1));
                }
            }

            spread = Math.Max(spread, size > 0 ? (high - low) / size : 0);
            holds.Add(system.Offset[k + 1]);
        }

        reactions.Add(new(unit * at, forceUnit * forceBefore, momentUnit * momentBefore));
        if (frame.FreeEnd)
            work += Vector3.Dot(forceBefore, point);
        return new()
        {
            Nodes = nodes.ToEquatableList(),
            Holds = holds.ToEquatableList(),
            Reactions = reactions.ToEquatableList(),
            Stability = stability,
            BendingEnergy = momentUnit * bending,
            Energy = momentUnit * (bending - work),
            BendTotal = bend,
            LeastRadius = most > 1e-12 ? unit / most : double.PositiveInfinity,
            LeastRadiusAt = unit * mostAt,
            Spread = frame.Load == default ? spread : double.NaN,
        };
    }

    /// <summary>Derivative of the curvature vector: -(F - (F.t) t) - |t'|^2 t.</summary>
    private static Vector3 Change(Vector3 t, Vector3 curvature, Vector3 force) =>
        ((Vector3.Dot(force, t) - Vector3.Dot(curvature, curvature)) * t) - force;

    private static Vector3 Hermite(Vector3 a, Vector3 da, Vector3 b, Vector3 db, double h, double u)
    {
        var v = 1 - u;
        return (v * v * (1 + (2 * u)) * a) + (u * u * (1 + (2 * v)) * b) + (h * u * v * v * da) - (h * u * u * v * db);
    }

    /// <summary>Integral of the size of the curvature, parted where it is least: its size has a corner where it passes zero.</summary>
    private static double Turn(Vector3 a, Vector3 da, Vector3 b, Vector3 db, double h)
    {
        var d = b - a;
        var dd = Vector3.Dot(d, d);
        var corner = dd > 0 ? Math.Clamp(-Vector3.Dot(a, d) / dd, 0, 1) : 0;
        for (var i = 0; i < 3 && corner is > 0 and < 1; i++)
        {
            // The corner of the interpolated curvature, not of the straight line between its ends.
            const double Small = 1e-4;
            Vector3 here = Hermite(a, da, b, db, h, corner), slope = (1 / (2 * Small)) * (Hermite(a, da, b, db, h, corner + Small) - Hermite(a, da, b, db, h, corner - Small));
            var ss = Vector3.Dot(slope, slope);
            corner = ss > 0 ? Math.Clamp(corner - (Vector3.Dot(here, slope) / ss), 0, 1) : corner;
        }

        return h * (Part(0, corner) + Part(corner, 1));

        double Part(double from, double to)
        {
            var sum = 0.0;
            for (var i = 0; i < GaussAt.Length && to > from; i++)
                sum += GaussWeight[i] * Hermite(a, da, b, db, h, from + ((to - from) * GaussAt[i])).Size;
            return (to - from) * sum;
        }
    }

    /// <summary>Largest curvature within a segment and where: ends, or the crest of the cubic through its square.</summary>
    private static (double Value, double At) Peak(Vector3 a, Vector3 da, Vector3 b, Vector3 db, double h)
    {
        double y0 = Vector3.Dot(a, a), y1 = Vector3.Dot(b, b), m0 = 2 * h * Vector3.Dot(a, da), m1 = 2 * h * Vector3.Dot(b, db);
        var best = y0 >= y1 ? (Value: y0, At: 0.0) : (Value: y1, At: 1.0);
        if (m0 > 0 && m1 < 0)
        {
            // y' = m0 + 2 c u + 3 d u^2 has one zero between its ends.
            double c = (3 * (y1 - y0)) - (2 * m0) - m1, d = m0 + m1 - (2 * (y1 - y0));
            var root = Math.Sqrt(Math.Max(0, (c * c) - (3 * d * m0)));
            var u = c >= 0 ? -(c + root) / (3 * d) : m0 / (root - c);
            if (u is > 0 and < 1)
            {
                var y = y0 + (u * (m0 + (u * (c + (u * d)))));
                if (y > best.Value)
                    best = (y, u);
            }
        }

        return (Math.Sqrt(best.Value), h * best.At);
    }
}
