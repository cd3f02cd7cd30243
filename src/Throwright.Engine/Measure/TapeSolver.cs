using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Engine.Measure;

/// <summary>From tape distances to a point and how well it is known. Theory: docs/theory/measure.md.</summary>
public static class TapeSolver
{
    /// <summary>A residual of this many standard deviations is named: about one good reading in a thousand is beyond it.</summary>
    public const double Critical = 3.29;

    // Two places fit alike where their sums of squares differ by less than a reading of three standard deviations adds.
    private const double Alike = 9;

    public static TapeAnswer Solve(TapeCase of)
    {
        ArgumentNullException.ThrowIfNull(of);
        var readings = of.Readings;
        if (readings.Any(r => !(r.Distance > 0) || !(r.Sigma > 0)))
            throw new ArgumentOutOfRangeException(nameof(of), of, "distances and their standard deviations > 0");
        if (readings.Select(r => r.From.Place).Distinct().Count() < 3)
            return Refused(NoPointReason.TooFewReadings);
        var plane = Plane.Through(readings);
        if (plane.InLine)
            return Refused(NoPointReason.KnownPointsInLine);
        var (best, other) = Candidates(readings, plane);
        if (readings.Count == 3 && best.ChiSquare > Alike)
            return Refused(NoPointReason.DoNotMeet);
        var sigma = readings.Max(r => r.Sigma);
        if (other is { } second && second.ChiSquare - best.ChiSquare < Alike)
        {
            if ((second.Place - best.Place).Size < 4 * sigma)
                return Refused(NoPointReason.InThePlane);
            if (of.Hint is not { } hint)
                return Refused(NoPointReason.Mirrored, best.Place, second.Place);
            var axis = AxisOf(hint);
            var gap = Vector3.Dot(axis, best.Place - second.Place);
            // The hint has to part the two by more than the tape can be off.
            if (Math.Abs(gap) < 6 * sigma)
                return Refused(NoPointReason.HintDoesNotTell, best.Place, second.Place);
            if (gap < 0)
                (best, second) = (second, best);
            other = second;
        }
        else
        {
            other = null;
        }

        if (Inverse(Normal(readings, best.Place)) is not { } covariance)
            return Refused(NoPointReason.InThePlane);
        var (values, vectors) = SymmetricEigen.Of(covariance);
        // Off the plane of the known points by less than the tape can show, the linear uncertainty has no meaning.
        if (!(Math.Sqrt(values[0]) < 0.25 * readings.Max(r => r.Distance)))
            return Refused(NoPointReason.InThePlane);
        return new(
            new()
            {
                Place = best.Place,
                Axes = Enumerable.Range(0, 3).Select(k => new UncertaintyAxis(new(vectors[k][0], vectors[k][1], vectors[k][2]), Math.Sqrt(values[k]))).ToEquatableList(),
                Residuals = readings.Select(r => Residual(r, best.Place, covariance)).ToEquatableList(),
                ChiSquare = best.ChiSquare,
                Redundant = readings.Count - 3,
                Mirror = other?.Place,
                Suspects = Suspects(readings, best),
                Next = Next(of, best.Place, covariance, readings.Average(r => r.Sigma)),
            },
            null);
    }

    private static TapeAnswer Refused(NoPointReason reason, params Vector3[] candidates) => new(null, new(reason, candidates.ToEquatableList()));

    private static Vector3 AxisOf(Side side) => side switch
    {
        Side.RightOf => new(0, 1, 0),
        Side.LeftOf => new(0, -1, 0),
        Side.Above => new(0, 0, 1),
        Side.Below => new(0, 0, -1),
        Side.ForwardOf => new(-1, 0, 0),
        _ => new(1, 0, 0),
    };

    private readonly record struct Fit(Vector3 Place, double ChiSquare);

    /// <summary>Middle and main directions of the known points.</summary>
    private sealed record Plane(Vector3 Middle, Vector3 First, Vector3 Second, Vector3 Across, bool InLine)
    {
        public static Plane Through(IReadOnlyList<TapeReading> readings)
        {
            var middle = (1.0 / readings.Count) * readings.Aggregate(default(Vector3), (sum, r) => sum + r.From.Place);
            var scatter = new double[3, 3];
            foreach (var reading in readings)
            {
                var d = reading.From.Place - middle;
                double[] c = [d.X, d.Y, d.Z];
                for (var i = 0; i < 3; i++)
                {
                    for (var j = 0; j < 3; j++)
                        scatter[i, j] += c[i] * c[j];
                }
            }

            var (values, v) = SymmetricEigen.Of(scatter);
            // In line to within one part in a hundred of their spread, or to within what the tape can tell.
            var width = Math.Sqrt(Math.Max(0, values[1]));
            var inLine = width < 0.01 * Math.Sqrt(values[0]) || width < 3 * readings.Max(r => r.Sigma);
            return new(middle, Of(v[0]), Of(v[1]), Of(v[2]), inLine);

            static Vector3 Of(double[] a) => new(a[0], a[1], a[2]);
        }
    }

    /// <summary>The best point, and the best one from the other side of the known points' plane where it is another.</summary>
    private static (Fit Best, Fit? Other) Candidates(IReadOnlyList<TapeReading> readings, Plane plane)
    {
        // Differences of squared distances are linear in the place: 2 (p_i - m).(x - m) = |p_i - m|^2 - d_i^2 + const.
        double uu = 0, uv = 0, vv = 0, ub = 0, vb = 0;
        var mean = readings.Average(r => Square(r.From.Place - plane.Middle) - (r.Distance * r.Distance));
        foreach (var r in readings)
        {
            var d = r.From.Place - plane.Middle;
            double u = Vector3.Dot(d, plane.First), v = Vector3.Dot(d, plane.Second), b = 0.5 * (Square(d) - (r.Distance * r.Distance) - mean);
            (uu, uv, vv, ub, vb) = (uu + (u * u), uv + (u * v), vv + (v * v), ub + (u * b), vb + (v * b));
        }

        var det = (uu * vv) - (uv * uv);
        var foot = plane.Middle + ((((vv * ub) - (uv * vb)) / det) * plane.First) + ((((uu * vb) - (uv * ub)) / det) * plane.Second);
        var height = Math.Sqrt(Math.Max(readings.Average(r => (r.Distance * r.Distance) - Square(r.From.Place - foot)), 1e-4 * Square(readings[0].From.Place - foot)));
        Fit a = Descend(readings, foot + (height * plane.Across)), b2 = Descend(readings, foot - (height * plane.Across));
        var (best, other) = a.ChiSquare <= b2.ChiSquare ? (a, b2) : (b2, a);
        return (other.Place - best.Place).Size < 1e-6 * readings.Max(r => r.Distance) ? (best, null) : (best, other);
    }

    private static double Square(Vector3 a) => Vector3.Dot(a, a);

    /// <summary>Levenberg-Marquardt steps until they no longer move the point.</summary>
    private static Fit Descend(IReadOnlyList<TapeReading> readings, Vector3 from)
    {
        var place = from;
        var chi = ChiSquare(readings, place);
        var damping = 1e-3;
        for (var i = 0; i < 200; i++)
        {
            var normal = Normal(readings, place);
            var gradient = Gradient(readings, place);
            for (var k = 0; k < 3; k++)
                normal[k, k] *= 1 + damping;
            if (Inverse(normal) is not { } inverse)
            {
                damping = Math.Max(1e-3, damping * 10);
                continue;
            }

            var step = Times(inverse, gradient);
            var next = ChiSquare(readings, place - step);
            if (next <= chi)
            {
                (place, chi) = (place - step, next);
                damping = Math.Max(1e-15, damping / 10);
                if (step.Size < 1e-13 * readings[0].Distance)
                    break;
            }
            else if ((damping *= 5) > 1e12)
            {
                break;
            }
        }

        return new(place, chi);
    }

    private static double ChiSquare(IReadOnlyList<TapeReading> readings, Vector3 place)
    {
        var sum = 0.0;
        foreach (var r in readings)
        {
            var v = ((place - r.From.Place).Size - r.Distance) / r.Sigma;
            sum += v * v;
        }

        return sum;
    }

    private static double[,] Normal(IReadOnlyList<TapeReading> readings, Vector3 place)
    {
        var normal = new double[3, 3];
        foreach (var r in readings)
        {
            var e = Toward(place, r.From.Place);
            double[] c = [e.X, e.Y, e.Z];
            for (var i = 0; i < 3; i++)
            {
                for (var j = 0; j < 3; j++)
                    normal[i, j] += c[i] * c[j] / (r.Sigma * r.Sigma);
            }
        }

        return normal;
    }

    private static Vector3 Gradient(IReadOnlyList<TapeReading> readings, Vector3 place)
    {
        var sum = default(Vector3);
        foreach (var r in readings)
            sum += (((place - r.From.Place).Size - r.Distance) / (r.Sigma * r.Sigma)) * Toward(place, r.From.Place);
        return sum;
    }

    private static Vector3 Toward(Vector3 place, Vector3 from)
    {
        var d = place - from;
        return d.Size > 0 ? d.Unit() : default;
    }

    private static double[,]? Inverse(double[,] m)
    {
        double a = m[0, 0], b = m[0, 1], c = m[0, 2], d = m[1, 1], e = m[1, 2], f = m[2, 2];
        double aa = (d * f) - (e * e), bb = (c * e) - (b * f), cc = (b * e) - (c * d);
        var det = (a * aa) + (b * bb) + (c * cc);
        if (!(det > 1e-14 * a * d * f) || !double.IsFinite(det))
            return null;
        double dd = ((a * f) - (c * c)) / det, ee = ((b * c) - (a * e)) / det, ff = ((a * d) - (b * b)) / det;
        return new[,] { { aa / det, bb / det, cc / det }, { bb / det, dd, ee }, { cc / det, ee, ff } };
    }

    private static Vector3 Times(double[,] m, Vector3 v) => new(
        (m[0, 0] * v.X) + (m[0, 1] * v.Y) + (m[0, 2] * v.Z),
        (m[1, 0] * v.X) + (m[1, 1] * v.Y) + (m[1, 2] * v.Z),
        (m[2, 0] * v.X) + (m[2, 1] * v.Y) + (m[2, 2] * v.Z));

    private static ReadingResidual Residual(TapeReading reading, Vector3 place, double[,] covariance)
    {
        var e = Toward(place, reading.From.Place);
        var residual = reading.Distance - (place - reading.From.Place).Size;
        var isChecked = Math.Max(0, 1 - (Vector3.Dot(e, Times(covariance, e)) / (reading.Sigma * reading.Sigma)));
        return new(reading, residual, isChecked > 1e-6 ? residual / (reading.Sigma * Math.Sqrt(isChecked)) : 0, isChecked);
    }

    /// <summary>Readings without which the others agree, if they do not agree with them.</summary>
    /// <remarks>
    /// Each reading is left out in turn. By how much the sum of squares falls is the square of that reading's own spread
    /// (exactly so for a linear problem); the one with the largest fall is named, with all that explain the
    /// disagreement nearly as well.
    /// </remarks>
    private static EquatableList<TapeReading> Suspects(EquatableList<TapeReading> readings, Fit best)
    {
        // The sum can't fall by more than it is.
        if (readings.Count < 4 || best.ChiSquare < Critical * Critical)
            return [];
        var falls = Enumerable.Range(0, readings.Count).Select(i =>
        {
            var rest = readings.Where((_, k) => k != i).ToList();
            if (Plane.Through(rest).InLine)
                return 0;
            // From the place found: the mirrored side would explain away what it likes.
            return best.ChiSquare - Descend(rest, best.Place).ChiSquare;
        }).ToArray();
        var most = falls.Max();
        return most < Critical * Critical
            ? []
            : Enumerable.Range(0, readings.Count).Where(i => falls[i] > most - Alike).OrderByDescending(i => falls[i]).Select(i => readings[i]).ToEquatableList();
    }

    private static NextReading? Next(TapeCase of, Vector3 place, double[,] covariance, double sigma)
    {
        NextReading? best = null;
        foreach (var point in of.Spare ?? [])
        {
            // One more reading along e: C - C e e^T C / (sigma^2 + e^T C e).
            var ce = Times(covariance, Toward(place, point.Place));
            var below = (sigma * sigma) + Vector3.Dot(Toward(place, point.Place), ce);
            double[] c = [ce.X, ce.Y, ce.Z];
            var less = new double[3, 3];
            for (var i = 0; i < 3; i++)
            {
                for (var j = 0; j < 3; j++)
                    less[i, j] = covariance[i, j] - (c[i] * c[j] / below);
            }

            var worst = Math.Sqrt(Math.Max(0, SymmetricEigen.Of(less).Values[0]));
            if (best is null || worst < best.Sigma)
                best = new(point, worst);
        }

        return best;
    }
}
