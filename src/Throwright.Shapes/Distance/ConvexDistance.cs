using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Distance;

/// <summary>Distance and overlap of two convex shapes.</summary>
/// <remarks>
/// Gilbert, Johnson and Keerthi (1988): the nearest point of the difference of the two cores to the origin, through
/// supports alone; overlapping cores go to the polytope expansion of van den Bergen (2001). Both are only searches for a
/// good direction: what is proved is the support width along it (docs/theory/clearance.md, section 2).
/// </remarks>
public static partial class ConvexDistance
{
    private const int MostSteps = 128;

    /// <summary>m: closer than this what was found and what is proved need not be.</summary>
    private const double Close = 5e-11;

    /// <summary>Gap between the two halfspaces square to a unit direction: a lower bound of the distance for any direction.</summary>
    public static double Width(ConvexShape first, Pose outerFromFirst, ConvexShape second, Pose outerFromSecond, Vector3 direction)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        var a = first.Least(outerFromFirst.Turn.Back(-direction)) - Vector3.Dot(direction, outerFromFirst.At);
        var b = second.Least(outerFromSecond.Turn.Back(direction)) + Vector3.Dot(direction, outerFromSecond.At);
        return a + b - first.Radius - second.Radius;
    }

    /// <param name="depth">Whether the depth of overlapping cores is wanted; else they only count as overlapping.</param>
    /// <param name="enough">Distance and what its direction proves may be so far apart, m; 0: as near as numbers go.</param>
    public static Separation Between(ConvexShape first, in Pose outerFromFirst, ConvexShape second, in Pose outerFromSecond, bool depth = true, double enough = 0)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        Between(in first.Core, new(in outerFromFirst), in second.Core, new(in outerFromSecond), default, depth, enough, out var found);
        return found.Told();
    }

    /// <param name="guess">A direction from the first to the second to begin with; none: from centre to centre.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal static void Between(
        in Core first, in TriplePose outerFromFirst, in Core second, in TriplePose outerFromSecond, Vector256<double> guess, bool depth, double enough, out Nearness found)
    {
        // Centre to centre, before anything large is added: places far from the origin lose no digits.
        var at = outerFromFirst.Place(first.Centre);
        var apart = outerFromSecond.Place(second.Centre) - at;
        var scale = Triple.Size(apart) + first.Reach + second.Reach;
        if (first.IsThin && second.IsThin)
        {
            Vector256<double> u = outerFromFirst.Turn(first.X), v = outerFromSecond.Turn(second.X);
            OfSegments(u, v, apart, out var a, out var b);
            var d = b - a;
            var size = Triple.Size(d);
            if (size > 1e-13 * scale)
            {
                var n = (1 / size) * d;
                var proved = Triple.Dot(n, apart) - Math.Abs(Triple.Dot(n, u)) - Math.Abs(Triple.Dot(n, v));
                var radii = first.Radius + second.Radius;
                found.Distance = size - radii;
                found.Proved = Math.Min(proved, size) - radii;
                found.Direction = n;
                found.OnFirst = at + a + (first.Radius * n);
                found.OnSecond = at + b - (second.Radius * n);
                return;
            }
        }

        Pair pair = default;
        pair.At = at;
        pair.Scale = scale;
        first.Place(in outerFromFirst, default, ref pair.A);
        second.Place(in outerFromSecond, apart, ref pair.B);
        if (!((first.Kind == CoreKind.Bar || second.Kind == CoreKind.Bar) && AlongSides(ref pair, ref guess, enough, out found)))
            Search(ref pair, guess, depth, enough, out found);
    }

    /// <summary>Nearest points of two segments or points; the first lies about the origin.</summary>
    /// <remarks>
    /// Inside both, the common perpendicular; else one end is among the two (all four are tried). Nearly parallel segments are
    /// never worse than by their ends.
    /// </remarks>
    /// <param name="u">Half of the first.</param>
    /// <param name="v">Half of the second, whose middle is at c.</param>
    private static void OfSegments(Vector256<double> u, Vector256<double> v, Vector256<double> c, out Vector256<double> onA, out Vector256<double> onB)
    {
        double uu = Triple.Dot(u, u), vv = Triple.Dot(v, v), uv = Triple.Dot(u, v), uc = Triple.Dot(u, c), vc = Triple.Dot(v, c);
        var square = (uu * vv) - (uv * uv);
        if (square > 1e-6 * uu * vv)
        {
            // Within both: s u and c + t v with both derivatives zero.
            var s = ((vv * uc) - (uv * vc)) / square;
            var t = ((uv * uc) - (uu * vc)) / square;
            if (!(Math.Abs(s) <= 1 && Math.Abs(t) <= 1))
            {
                // One clamp too far, then the other, then the first again: the function is convex.
                t = Math.Clamp(((Math.Clamp(s, -1, 1) * uv) - vc) / vv, -1, 1);
                s = Math.Clamp(((t * uv) + uc) / uu, -1, 1);
            }

            onA = s * u;
            onB = c + (t * v);
            return;
        }

        if (uu == 0 || vv == 0)
        {
            onA = uu > 0 ? Math.Clamp(uc / uu, -1, 1) * u : default;
            onB = vv > 0 ? c + (Math.Clamp(-vc / vv, -1, 1) * v) : c;
            return;
        }

        OfParallels(u, v, c, out onA, out onB);
    }

    private static void OfParallels(Vector256<double> u, Vector256<double> v, Vector256<double> c, out Vector256<double> onA, out Vector256<double> onB)
    {
        double uu = Triple.Dot(u, u), vv = Triple.Dot(v, v), uv = Triple.Dot(u, v), uc = Triple.Dot(u, c), vc = Triple.Dot(v, c);
        var least = double.PositiveInfinity;
        Vector256<double> bestA = default, bestB = default;
        for (var end = -1; end <= 1; end += 2)
        {
            Take(end, Math.Clamp(((end * uv) - vc) / vv, -1, 1));
            Take(Math.Clamp(((end * uv) + uc) / uu, -1, 1), end);
        }

        var square = (uu * vv) - (uv * uv);
        if (square > 0)
        {
            double s = ((vv * uc) - (uv * vc)) / square, t = ((uv * uc) - (uu * vc)) / square;
            if (Math.Abs(s) <= 1 && Math.Abs(t) <= 1)
                Take(s, t);
        }

        (onA, onB) = (bestA, bestB);

        void Take(double s, double t)
        {
            Vector256<double> a = s * u, b = c + (t * v), d = b - a;
            var size = Triple.Dot(d, d);
            if (size < least)
                (least, bestA, bestB) = (size, a, b);
        }
    }

    /// <summary>Bars looked at as rods with round ends: exact where the nearest points lie on their sides, which their direction tells.</summary>
    /// <remarks>The rod holds the bar, so its distance is no larger; where a direction proves as much of the bar, it is the bar's.</remarks>
    private static bool AlongSides(ref Pair pair, ref Vector256<double> guess, double enough, out Nearness found)
    {
        double acrossA = 0, acrossB = 0;
        var scale = pair.Scale;
        var (kindA, kindB) = (pair.A.Kind, pair.B.Kind);
        if (kindA == CoreKind.Bar)
            (acrossA, pair.A.Kind) = (pair.A.Across, CoreKind.Segment);
        if (kindB == CoreKind.Bar)
            (acrossB, pair.B.Kind) = (pair.B.Across, CoreKind.Segment);
        Vector256<double> a, b;
        if (pair.A.IsThin && pair.B.IsThin)
        {
            OfSegments(kindA != CoreKind.Point ? pair.A.X : default, kindB != CoreKind.Point ? pair.B.X : default, pair.B.Centre, out a, out b);
        }
        else
        {
            Span<Vertex> simplex = stackalloc Vertex[4];
            var count = 0;
            if (Nearest(ref pair, guess, enough, simplex, ref count, out a, out b, out _, out _))
                a = b;
        }

        (pair.A.Kind, pair.B.Kind) = (kindA, kindB);
        found = default;
        var apart = b - a;
        var size = Triple.Size(apart);
        if (!(size > acrossA + acrossB + (1e-13 * scale)))
            return false;
        var n = (1 / size) * apart;
        guess = n;
        // Square to the axes, as the side is.
        if (acrossA > 0)
            a += acrossA * SquareTo(n, pair.A.Y);
        if (acrossB > 0)
            b -= acrossB * SquareTo(n, pair.B.Y);
        var width = pair.WidthOfCores(n);
        apart = b - a;
        var distance = Triple.Size(apart);
        if (!(distance - width <= enough + (1e-12 * distance) + (4e-15 * scale)))
            return false;
        Apart(in pair, a, b, n, out found);
        return true;
    }

    private static Vector256<double> SquareTo(Vector256<double> n, Vector256<double> axis)
    {
        var square = n - (Triple.Dot(n, axis) * axis);
        square -= Triple.Dot(square, axis) * axis;
        var size = Triple.Size(square);
        return size > 0 ? (1 / size) * square : default;
    }

    private static void Search(ref Pair pair, Vector256<double> guess, bool depth, double enough, out Nearness found)
    {
        Span<Vertex> simplex = stackalloc Vertex[4];
        var count = 0;
        var overlap = Nearest(ref pair, guess, enough, simplex, ref count, out var a, out var b, out var bestN, out var bestLow);
        if (overlap && depth)
        {
            found = Penetration(in pair, simplex[..count], a, b, Math.Max(enough, 1e-11 * pair.Scale));
            return;
        }

        if ((pair.A.IsRound || pair.B.IsRound) && !overlap && Triple.Size(b - a) - bestLow > enough + (1e-14 * pair.Scale) + (1e-12 * Triple.Size(b - a)))
        {
            Flush(ref pair, ref a, ref b, ref bestN);
            // Still some nanometres between what was found and what is proved: supports about another direction may go on.
            for (var again = 0; again < 4 && Triple.Size(b - a) - pair.WidthOfCores(bestN) > enough + Close; again++)
            {
                count = 0;
                if (Nearest(ref pair, (again & 1) == 0 ? bestN : b - a, enough, simplex, ref count, out var c, out var d, out var n, out var low))
                    break;
                if (low > pair.WidthOfCores(bestN))
                    bestN = n;
                if (Triple.Size(d - c) < Triple.Size(b - a))
                    (a, b) = (c, d);
            }
        }

        Apart(in pair, a, b, bestN, out found);
        // Not by rounding apart where no direction separates them.
        if (overlap)
            found.Distance = Math.Min(found.Distance, 0);
    }

    /// <summary>The answer from two points of the cores, and a direction that may prove more than the one between them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Apart(in Pair pair, Vector256<double> a, Vector256<double> b, Vector256<double> other, out Nearness found)
    {
        // From the witness points, never from the running value.
        var apart = b - a;
        var size = Triple.Size(apart);
        var n = size > 1e-13 * pair.Scale ? (1 / size) * apart : other;
        var proved = pair.WidthOfCores(n);
        if (size > proved && other != default && other != n)
        {
            var more = pair.WidthOfCores(other);
            if (more > proved)
                (proved, n) = (more, other);
        }

        var radii = pair.A.Radius + pair.B.Radius;
        found.Distance = size - radii;
        found.Proved = Math.Min(proved, size) - radii;
        found.Direction = n;
        found.OnFirst = pair.At + a + (pair.A.Radius * n);
        found.OnSecond = pair.At + b - (pair.B.Radius * n);
    }

    /// <summary>Nearest points of the two cores through supports; true: they overlap, as far as no direction separates them.</summary>
    /// <param name="bestN">Direction that proves most, and what it proves of the cores.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static bool Nearest(
        ref Pair pair, Vector256<double> guess, double enough, Span<Vertex> simplex, ref int count, out Vector256<double> onA, out Vector256<double> onB, out Vector256<double> bestN, out double bestLow)
    {
        Span<double> weights = stackalloc double[4];
        var scale = pair.Scale;
        var v = guess;
        if (v == default)
        {
            v = pair.B.Centre;
            if (Triple.Size(v) <= 1e-15 * scale)
                v = Vector256.Create(1.0, 0, 0, 0);
        }

        var size = Triple.Size(v);
        bestN = (1 / size) * v;
        bestLow = double.NegativeInfinity;
        var least = double.PositiveInfinity;
        (onA, onB) = (default, default);
        for (var step = 0; step < MostSteps; step++)
        {
            ref var w = ref simplex[count];
            w.A = pair.A.Farthest(v);
            w.P = pair.B.Centre + pair.B.Farthest(-v) - w.A;
            var low = Triple.Dot(v, w.P) / size;
            if (low > bestLow)
                (bestLow, bestN) = (low, (1 / size) * v);
            // The gap between running distance and bound is what is left to gain.
            if (step > 0 && (least - bestLow <= enough + (1e-12 * least) + (1e-15 * scale) || Contains(simplex[..count], w.P)))
                return false;
            count++;
            v = NearestWithNewest(simplex, ref count, weights, scale);
            var a = weights[0] * simplex[0].A;
            for (var i = 1; i < count; i++)
                a += weights[i] * simplex[i].A;
            size = Triple.Size(v);
            if (size <= 1e-14 * scale || count == 4)
            {
                var p = weights[0] * simplex[0].P;
                for (var i = 1; i < count; i++)
                    p += weights[i] * simplex[i].P;
                (onA, onB) = (a, a + p);
                // Believed only if no direction has separated the cores so far.
                return bestLow <= 1e-13 * scale;
            }

            if (size >= least)
                return false;
            least = size;
            (onA, onB) = (a, a + v);
        }

        return false;
    }

    private static bool Contains(ReadOnlySpan<Vertex> simplex, Vector256<double> p)
    {
        foreach (ref readonly var vertex in simplex)
        {
            if (vertex.P == p)
                return true;
        }

        return false;
    }

    /// <summary>
    /// Nearest point to the origin of the faces that hold the newest vertex: the others were worth no more before it came, so where
    /// none of these is nearer the search has stopped gaining. Keeps the face.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static Vector256<double> NearestWithNewest(Span<Vertex> s, ref int count, Span<double> weights, double scale)
    {
        if (count == 4 && InsideTetrahedron(s, weights, scale))
            return default;
        var newest = count - 1;
        var at = s[newest].P;
        var nearest = at;
        var least = Triple.Dot(at, at);
        int first = -1, second = -1;
        double toFirst = 0, toSecond = 0;
        for (var i = 0; i < newest; i++)
        {
            var ab = s[i].P - at;
            var edge = Triple.Dot(ab, ab);
            var t = -Triple.Dot(at, ab) / edge;
            if (t > 0 && t < 1)
            {
                var p = at + (t * ab);
                var square = Triple.Dot(p, p);
                if (square < least)
                    (least, nearest, first, second, toFirst, toSecond) = (square, p, i, -1, t, 0);
            }

            for (var j = i + 1; j < newest; j++)
            {
                var ac = s[j].P - at;
                var normal = Triple.Cross(ab, ac);
                var area = Triple.Dot(normal, normal);
                if (!(area > 1e-28 * edge * Triple.Dot(ac, ac)))
                    continue;
                var u = Triple.Dot(normal, Triple.Cross(ac, at));
                var v = Triple.Dot(normal, Triple.Cross(at, ab));
                if (!(u > 0 && v > 0 && u + v < area))
                    continue;
                (u, v) = (u / area, v / area);
                var p = at + (u * ab) + (v * ac);
                var square = Triple.Dot(p, p);
                if (square < least)
                    (least, nearest, first, second, toFirst, toSecond) = (square, p, i, j, u, v);
            }
        }

        count = 0;
        if (first >= 0)
        {
            if (first > 0)
                s[0] = s[first];
            weights[count++] = toFirst;
        }

        if (second >= 0)
        {
            if (second > 1)
                s[1] = s[second];
            weights[count++] = toSecond;
        }

        if (newest != count)
            s[count] = s[newest];
        weights[count++] = 1 - toFirst - toSecond;
        return nearest;
    }

    /// <summary>Nearest point of a simplex to the origin: every face is tried, so a sliver can't mislead; keeps the face that holds it.</summary>
    private static Vector256<double> Nearest(Span<Vertex> s, ref int count, Span<double> weights, double scale)
    {
        Span<double> trial = stackalloc double[4];
        Span<double> best = stackalloc double[4];
        var least = double.PositiveInfinity;
        var nearest = default(Vector256<double>);
        var bestMask = 0;
        var all = (1 << count) - 1;
        if (count == 4 && InsideTetrahedron(s, trial, scale))
        {
            trial.CopyTo(weights);
            return default;
        }

        for (var mask = 1; mask <= all; mask++)
        {
            if (mask == 15)
                continue;
            trial.Clear();
            if (!OnFace(s, mask, trial))
                continue;
            var p = default(Vector256<double>);
            for (var i = 0; i < count; i++)
                p += trial[i] * s[i].P;
            var square = Triple.Dot(p, p);
            if (square < least)
            {
                (least, nearest, bestMask) = (square, p, mask);
                trial.CopyTo(best);
            }
        }

        var kept = 0;
        for (var i = 0; i < count; i++)
        {
            if ((bestMask & (1 << i)) == 0)
                continue;
            s[kept] = s[i];
            weights[kept++] = best[i];
        }

        count = kept;
        return nearest;
    }

    /// <summary>Weights of the origin's projection on a vertex, edge or triangle; false if it falls outside.</summary>
    private static bool OnFace(ReadOnlySpan<Vertex> s, int mask, Span<double> weights)
    {
        Span<int> at = stackalloc int[3];
        var n = 0;
        for (var i = 0; i < s.Length && n < 3; i++)
        {
            if ((mask & (1 << i)) != 0)
                at[n++] = i;
        }

        if (n == 1)
        {
            weights[at[0]] = 1;
            return true;
        }

        var a = s[at[0]].P;
        var ab = s[at[1]].P - a;
        if (n == 2)
        {
            var square = Triple.Dot(ab, ab);
            var t = -Triple.Dot(a, ab) / square;
            if (!(t > 0 && t < 1))
                return false;
            weights[at[0]] = 1 - t;
            weights[at[1]] = t;
            return true;
        }

        var ac = s[at[2]].P - a;
        var normal = Triple.Cross(ab, ac);
        var area = Triple.Dot(normal, normal);
        if (!(area > 1e-28 * Triple.Dot(ab, ab) * Triple.Dot(ac, ac)))
            return false;
        var u = Triple.Dot(normal, Triple.Cross(-a, ac)) / area;
        var v = Triple.Dot(normal, Triple.Cross(ab, -a)) / area;
        if (!(u > 0 && v > 0 && u + v < 1))
            return false;
        weights[at[0]] = 1 - u - v;
        weights[at[1]] = u;
        weights[at[2]] = v;
        return true;
    }

    private static bool InsideTetrahedron(ReadOnlySpan<Vertex> s, Span<double> weights, double scale)
    {
        Vector256<double> a = s[0].P, b = s[1].P - a, c = s[2].P - a, d = s[3].P - a;
        var volume = Triple.Dot(b, Triple.Cross(c, d));
        if (!(Math.Abs(volume) > 1e-15 * Triple.Size(b) * Triple.Size(c) * Triple.Size(d)) || !(scale > 0))
            return false;
        weights[1] = Triple.Dot(-a, Triple.Cross(c, d)) / volume;
        weights[2] = Triple.Dot(b, Triple.Cross(-a, d)) / volume;
        weights[3] = Triple.Dot(b, Triple.Cross(c, -a)) / volume;
        weights[0] = 1 - weights[1] - weights[2] - weights[3];
        return weights[0] >= 0 && weights[1] >= 0 && weights[2] >= 0 && weights[3] >= 0;
    }

    /// <summary>Overlapping cores: the direction of least support width, by expanding a polytope inside their difference.</summary>
    private static Nearness Penetration(in Pair pair, ReadOnlySpan<Vertex> found, Vector256<double> onA, Vector256<double> onB, double enough)
    {
        var scale = pair.Scale;
        var room = Polytope.Own;
        room.Clear();
        foreach (var vertex in found)
            room.Grow(vertex, scale);
        if (Complete(in pair, room, scale) is { } normal)
            return Overlap(in pair, normal, onA, onB);

        room.Begin();
        var points = room.Points;
        var inside = 0.25 * (points[0].P + points[1].P + points[2].P + points[3].P);
        var best = room.Faces[0];
        var bestDepth = double.PositiveInfinity;
        for (var step = 0; step < 256; step++)
        {
            var faces = room.Faces;
            ref readonly var nearest = ref faces[room.Nearest()];
            var w = pair.Support(nearest.Normal);
            var depth = Triple.Dot(nearest.Normal, w.P);
            if (depth < bestDepth)
                (bestDepth, best) = (depth, nearest);
            if (depth - nearest.Offset <= enough || bestDepth - nearest.Offset <= enough || !room.Expand(w, inside, 1e-14 * scale))
                break;
        }

        // The face's point nearest the origin, carried back to both cores.
        points = room.Points;
        Span<Vertex> corner = [points[best.I], points[best.J], points[best.K], default];
        Span<double> weights = stackalloc double[4];
        var count = 3;
        Nearest(corner, ref count, weights, scale);
        Vector256<double> a = default, b = default;
        for (var i = 0; i < count; i++)
        {
            a += weights[i] * corner[i].A;
            b += weights[i] * (corner[i].A + corner[i].P);
        }

        return Overlap(in pair, best.Normal, a, b);
    }

    /// <param name="normal">Outward normal of the difference second - first: moving the second shape against it frees it.</param>
    private static Nearness Overlap(in Pair pair, Vector256<double> normal, Vector256<double> onA, Vector256<double> onB)
    {
        var n = -normal;
        double width = pair.WidthOfCores(n), back = pair.WidthOfCores(normal);
        if (back > width)
            (n, width) = (normal, back);
        width -= pair.A.Radius + pair.B.Radius;
        return new() { Distance = width, Proved = width, Direction = n, OnFirst = pair.At + onA + (pair.A.Radius * n), OnSecond = pair.At + onB - (pair.B.Radius * n) };
    }

    /// <summary>Adds supports until four points span a volume; else the normal of the flat difference.</summary>
    private static Vector256<double>? Complete(in Pair pair, Polytope points, double scale)
    {
        Span<Vector256<double>> axes = [Vector256.Create(1.0, 0, 0, 0), Vector256.Create(0, 1.0, 0, 0), Vector256.Create(0, 0, 1.0, 0)];
        while (points.Count < 4)
        {
            var before = points.Count;
            Vector256<double> across;
            if (points.Count == 0)
            {
                points.Add(pair.Support(axes[0]));
                continue;
            }

            if (points.Count == 3)
            {
                across = Triple.Unit(Triple.Cross(Triple.Unit(points.Points[1].P - points.Points[0].P), points.Points[2].P - points.Points[0].P));
                points.Grow(pair.Support(across), scale);
                points.Grow(pair.Support(-across), scale);
                if (points.Count == before)
                    return across;
                continue;
            }

            if (points.Count == 2)
            {
                var line = Triple.Unit(points.Points[1].P - points.Points[0].P);
                var u = Triple.Of(Rotation.SquareTo(Triple.Back(line)));
                var v = Triple.Cross(line, u);
                foreach (var d in (ReadOnlySpan<Vector256<double>>)[u, -u, v, -v])
                    points.Grow(pair.Support(d), scale);
                if (points.Count == before)
                    return u;
                continue;
            }

            foreach (var d in axes)
            {
                points.Grow(pair.Support(d), scale);
                points.Grow(pair.Support(-d), scale);
            }

            if (points.Count == before)
                return axes[0];
        }

        return null;
    }

    /// <summary>A point of the difference second - first, and the point of the first that it comes from.</summary>
    private struct Vertex
    {
        public Vector256<double> P, A;
    }

    /// <summary>Both cores in outer axes, the first one's centre, which is at At, being the origin.</summary>
    private struct Pair
    {
        public Core A, B;
        public Vector256<double> At;

        /// <summary>Size of the numbers that meet, m.</summary>
        public double Scale;

        public readonly Vertex Support(Vector256<double> d)
        {
            var a = A.Farthest(-d);
            return new() { A = a, P = B.Centre + B.Farthest(d) - a };
        }

        /// <summary>What a unit direction proves of the cores.</summary>
        public readonly double WidthOfCores(Vector256<double> n) => A.Least(-n) + B.Least(n) + Triple.Dot(n, B.Centre);
    }
}
