using Throwright.Engine.Model;
using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Engine.Measure;

/// <summary>From tape distances to a point and how well it is known. Theory: docs/theory/measure.md.</summary>
public static class TapeSolver
{
    /// <summary>A residual of this many standard deviations is named: about one good reading in a thousand is beyond it.</summary>
    public const double Critical = 3.29;

    /// <summary>
    /// Two explanations are told apart where their sums of squares differ by this much, what a reading of three standard
    /// deviations adds. Their likelihoods are then as 90 to 1: exp(-9 / 2).
    /// </summary>
    public const double Alike = 9;

    // Less than this between what one more distance would read either way, in its deviations, settles nothing.
    private const double Settles = 6;

    public static TapeAnswer Solve(TapeCase of)
    {
        ArgumentNullException.ThrowIfNull(of);
        var readings = of.Readings;
        if (readings.Any(r => (r.Along is null && !(r.Distance > 0)) || !double.IsFinite(r.Distance) || !(r.Sigma > 0)))
            throw new ArgumentOutOfRangeException(nameof(of), of, "distances and their standard deviations > 0");
        if (readings.Select(r => (r.From.Place, r.Along)).Distinct().Count() < 3)
            return Refused(NoPointReason.TooFewReadings);
        var spread = Scatter.Of(readings);
        if (spread.InLine)
            return Refused(NoPointReason.KnownPointsInLine);
        var (best, other) = Candidates(readings, spread);
        if (readings.Count == 3 && best.ChiSquare > Alike)
            return Refused(NoPointReason.DoNotMeet);
        var sigma = readings.Max(r => r.Sigma);
        if (other is { } second && second.ChiSquare - best.ChiSquare < Alike)
        {
            if ((second.Place - best.Place).Size < 4 * sigma)
                return Refused(NoPointReason.InThePlane);
            if (of.Hint is { } hint)
            {
                var axis = AxisOf(hint);
                var gap = Vector3.Dot(axis, best.Place - second.Place);
                // The hint has to part the two by more than the tape can be off.
                if (Math.Abs(gap) < 6 * sigma)
                    return Refused(NoPointReason.HintDoesNotTell, best.Place, second.Place);
                if (gap < 0)
                    (best, second) = (second, best);
            }
            else if (of.Near is { } near)
            {
                if ((second.Place - near).Size < (best.Place - near).Size)
                    (best, second) = (second, best);
            }
            else
            {
                return Refused(NoPointReason.Mirrored, best.Place, second.Place);
            }

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
        var reach = readings.Max(r => r.Along is null ? r.Distance : 0);
        if (reach > 0 && !(Math.Sqrt(values[0]) < 0.25 * reach))
            return Refused(NoPointReason.InThePlane);
        var spare = readings.Count - 3;
        var suspects = Suspects(readings, best);
        var widened = suspects.Count > 0 || best.ChiSquare > MostChiSquare(spare) ? Math.Max(1, Math.Sqrt(best.ChiSquare / spare)) : 1;
        var deviation = widened * Deviation(covariance);
        return new(
            new()
            {
                Place = best.Place,
                Sigma = deviation,
                Axes = Enumerable.Range(0, 3).Select(k => new UncertaintyAxis(new(vectors[k][0], vectors[k][1], vectors[k][2]), widened * Math.Sqrt(values[k]))).ToEquatableList(),
                Off = suspects.Aggregate(3 * deviation, (off, s) => Most(off, Each(s.Place - best.Place, Math.Abs) + (3 * s.Sigma))),
                Widened = widened,
                Residuals = readings.Select(r => Residual(r, best.Place, covariance)).ToEquatableList(),
                ChiSquare = best.ChiSquare,
                Redundant = spare,
                Mirror = other?.Place,
                Suspects = suspects,
                Telling = Telling(of, suspects),
                Next = Next(of, best.Place, covariance, readings.Average(r => r.Sigma)),
            },
            null);
    }

    private static TapeAnswer Refused(NoPointReason reason, params Vector3[] candidates) => new(null, new(reason, candidates.ToEquatableList()));

    /// <summary>The direction a side means, in aircraft axes.</summary>
    public static Vector3 AxisOf(Side side) => side switch
    {
        Side.RightOf => new(0, 1, 0),
        Side.LeftOf => new(0, -1, 0),
        Side.Above => new(0, 0, 1),
        Side.Below => new(0, 0, -1),
        Side.ForwardOf => new(-1, 0, 0),
        _ => new(1, 0, 0),
    };

    /// <summary>
    /// What chi-square exceeds in one of twenty sets of good readings (5 %), by the approximation of E. B. Wilson and M. M. Hilferty
    /// (Proc. Natl. Acad. Sci. 17 (1931) 684-688, from memory); within 3 % of the table.
    /// </summary>
    public static double MostChiSquare(int spare)
    {
        if (spare <= 0)
            return Alike;
        var part = 2.0 / (9 * spare);
        return spare * Math.Pow(1 - part + (1.6449 * Math.Sqrt(part)), 3);
    }

    private static Vector3 Deviation(double[,] covariance) => new(Math.Sqrt(covariance[0, 0]), Math.Sqrt(covariance[1, 1]), Math.Sqrt(covariance[2, 2]));

    private static Vector3 Each(Vector3 v, Func<double, double> of) => new(of(v.X), of(v.Y), of(v.Z));

    private static Vector3 Most(Vector3 a, Vector3 b) => new(Math.Max(a.X, b.X), Math.Max(a.Y, b.Y), Math.Max(a.Z, b.Z));

    private readonly record struct Fit(Vector3 Place, double ChiSquare);

    /// <summary>
    /// Linear equations for the place, and the directions in which they tell most and least: differences of squared
    /// distances, 2 (p_i - m).(x - m) = |p_i - m|^2 - d_i^2 + const, and the readings along a direction as they are.
    /// </summary>
    private sealed record Scatter(Vector3 Middle, Vector3[] Axes, double[] Values, Vector3 Right, bool InLine)
    {
        /// <summary>The place by the best-told axes alone: two for the foot in the known points' plane, three for the whole.</summary>
        public Vector3 Place(int axes)
        {
            var place = Middle;
            for (var k = 0; k < axes; k++)
                place += (Vector3.Dot(Axes[k], Right) / Values[k]) * Axes[k];
            return place;
        }

        public static Scatter Of(IReadOnlyList<TapeReading> readings)
        {
            var straight = readings.Where(r => r.Along is null).ToList();
            var from = straight.Count > 0 ? straight : readings;
            var middle = (1.0 / from.Count) * from.Aggregate(default(Vector3), (sum, r) => sum + r.From.Place);
            var size = straight.Count > 1 ? Math.Sqrt(straight.Average(r => Square(r.From.Place - middle))) : 1;
            size = size > 0 ? size : 1;
            var mean = straight.Count > 0 ? straight.Average(r => Square(r.From.Place - middle) - (r.Distance * r.Distance)) : 0;
            var rows = readings.Select(r => r.Along is { } along
                ? (Row: along, Value: r.Distance + Vector3.Dot(along, r.From.Place - middle))
                : (Row: (1 / size) * (r.From.Place - middle), Value: 0.5 * (Square(r.From.Place - middle) - (r.Distance * r.Distance) - mean) / size)).ToList();
            var scatter = new double[3, 3];
            var right = default(Vector3);
            foreach (var (row, value) in rows)
            {
                double[] c = [row.X, row.Y, row.Z];
                for (var i = 0; i < 3; i++)
                {
                    for (var j = 0; j < 3; j++)
                        scatter[i, j] += c[i] * c[j];
                }

                right += value * row;
            }

            var (values, v) = SymmetricEigen.Of(scatter);
            // In line to within one part in a hundred of their spread, or to within what the tape can tell.
            var width = Math.Sqrt(Math.Max(0, values[1]));
            var inLine = width < 0.01 * Math.Sqrt(values[0]) || (straight.Count == readings.Count && width * size < 3 * readings.Max(r => r.Sigma));
            return new(middle, [.. v.Select(a => new Vector3(a[0], a[1], a[2]))], values, right, inLine);
        }
    }

    /// <summary>The best point, and the best other one, where the readings leave another.</summary>
    private static (Fit Best, Fit? Other) Candidates(IReadOnlyList<TapeReading> readings, Scatter spread)
    {
        var starts = new List<Vector3>();
        var straight = readings.Where(r => r.Along is null).ToList();
        var (foot, across) = (spread.Place(2), spread.Axes[2]);
        if (straight.Count > 0)
        {
            // Along the direction of which the linear equations tell least, the mean of the squared distances fits at two places.
            double half = straight.Average(r => Vector3.Dot(across, foot - r.From.Place)), rest = straight.Average(r => Square(foot - r.From.Place) - (r.Distance * r.Distance));
            var root = Math.Sqrt(Math.Max((half * half) - rest, 1e-4 * Square(straight[0].From.Place - foot)));
            starts.Add(foot + ((root - half) * across));
            starts.Add(foot - ((root + half) * across));
        }

        if (spread.Values[2] > 1e-6 * spread.Values[0])
            starts.Add(spread.Place(3));
        var fits = starts.Select(s => Descend(readings, s)).OrderBy(f => f.ChiSquare).ToList();
        var near = 1e-6 * readings.Max(r => r.Along is null ? r.Distance : 0);
        var other = fits.FindIndex(f => (f.Place - fits[0].Place).Size >= near && near > 0);
        return (fits[0], other < 0 ? null : fits[other]);
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
                if (step.Size < 1e-13 * Math.Max(readings[0].Distance, 0.1))
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
            var v = (r.At(place) - r.Distance) / r.Sigma;
            sum += v * v;
        }

        return sum;
    }

    private static double[,] Normal(IReadOnlyList<TapeReading> readings, Vector3 place)
    {
        var normal = new double[3, 3];
        foreach (var r in readings)
        {
            var e = r.Toward(place);
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
            sum += ((r.At(place) - r.Distance) / (r.Sigma * r.Sigma)) * r.Toward(place);
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
        var e = reading.Toward(place);
        var residual = reading.Distance - reading.At(place);
        var isChecked = Math.Max(0, 1 - (Vector3.Dot(e, Times(covariance, e)) / (reading.Sigma * reading.Sigma)));
        return new(reading, residual, isChecked > 1e-6 ? residual / (reading.Sigma * Math.Sqrt(isChecked)) : 0, isChecked);
    }

    /// <summary>Readings without which the others agree, if they do not agree with them.</summary>
    /// <remarks>
    /// Each reading is left out in turn. By how much the sum of squares falls is the square of that reading's own spread
    /// (exactly so for a linear problem); the one with the largest fall is named, with all that explain the
    /// disagreement nearly as well.
    /// </remarks>
    private static EquatableList<Suspect> Suspects(EquatableList<TapeReading> readings, Fit best)
    {
        // The sum can't fall by more than it is.
        if (readings.Count < 4 || best.ChiSquare < Critical * Critical)
            return [];
        var without = new List<Suspect>();
        for (var i = 0; i < readings.Count; i++)
        {
            var rest = readings.Where((_, k) => k != i).ToList();
            if (Scatter.Of(rest).InLine)
                continue;
            // From the place found: the mirrored side would explain away what it likes.
            var fit = Descend(rest, best.Place);
            var reading = readings[i];
            if (Inverse(Normal(rest, fit.Place)) is { } covariance)
                without.Add(new(reading, best.ChiSquare - fit.ChiSquare, reading.Distance - reading.At(fit.Place), fit.Place, Deviation(covariance)));
        }

        var most = without.Count > 0 ? without.Max(w => w.Fall) : 0;
        return most < Critical * Critical ? [] : without.Where(w => w.Fall > most - Alike).OrderByDescending(w => w.Fall).ToEquatableList();
    }

    /// <summary>The spare point from which the places without the first and without the second suspect lie at the most different distances.</summary>
    private static TellingReading? Telling(TapeCase of, EquatableList<Suspect> suspects)
    {
        if (suspects.Count < 2)
            return null;
        Suspect first = suspects[0], second = suspects[1];
        var tape = of.Readings.Where(r => r.Along is null).Select(r => r.Sigma).DefaultIfEmpty(of.Readings.Average(r => r.Sigma)).Average();
        TellingReading? best = null;
        foreach (var point in of.Spare ?? [])
        {
            double one = (first.Place - point.Place).Size, two = (second.Place - point.Place).Size;
            // Both places rest on the readings that they share; the larger deviation along the line of sight stands for their difference.
            var own = Math.Max(Along(first, point), Along(second, point));
            var apart = Math.Abs(one - two) / Math.Sqrt((tape * tape) + (own * own));
            if (apart > Settles && (best is null || apart > best.Apart))
                best = new(point, one, two, apart);
        }

        return best;

        static double Along(Suspect suspect, KnownPoint point)
        {
            var e = Toward(suspect.Place, point.Place);
            return new Vector3(e.X * suspect.Sigma.X, e.Y * suspect.Sigma.Y, e.Z * suspect.Sigma.Z).Size;
        }
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
