using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Distance;

/// <summary>Distance and overlap of two convex shapes.</summary>
/// <remarks>
/// Gilbert, Johnson and Keerthi (1988): the nearest point of the difference of the two cores to the origin, through
/// supports alone; overlapping cores go to the polytope expansion of van den Bergen (2001). Both are only searches for a
/// good direction: what is proved is the support width along it (docs/theory/clearance.md, section 2).
/// </remarks>
public static class ConvexDistance
{
    private const int MostSteps = 128;

    /// <summary>Gap between the two halfspaces square to a unit direction: a lower bound of the distance for any direction.</summary>
    public static double Width(ConvexShape first, Pose outerFromFirst, ConvexShape second, Pose outerFromSecond, Vector3 direction)
    {
        var a = first.Least(outerFromFirst.Turn.Back(-direction)) - Vector3.Dot(direction, outerFromFirst.At);
        var b = second.Least(outerFromSecond.Turn.Back(direction)) + Vector3.Dot(direction, outerFromSecond.At);
        return a + b - first.Radius - second.Radius;
    }

    /// <param name="depth">Whether the depth of overlapping cores is wanted; else they only count as overlapping.</param>
    /// <param name="enough">Distance and what its direction proves may be so far apart, m; 0: as near as numbers go.</param>
    public static Separation Between(ConvexShape first, Pose outerFromFirst, ConvexShape second, Pose outerFromSecond, bool depth = true, double enough = 0)
    {
        var pair = new Pair(first, outerFromFirst, second, outerFromSecond);
        Span<Vertex> simplex = stackalloc Vertex[4];
        Span<double> weights = stackalloc double[4];
        var count = 0;
        var v = pair.Start();
        var size = Math.Sqrt(Vector3.Dot(v, v));
        var scale = size + first.CoreReach + second.CoreReach;
        var overlap = size <= 1e-15 * scale;
        if (overlap)
            v = new(1, 0, 0);
        var bestLow = double.NegativeInfinity;
        var bestN = overlap ? v : (1 / size) * v;
        var least = double.PositiveInfinity;
        Vector3 onA = default, onB = default;
        overlap = false;
        for (var step = 0; step < MostSteps; step++)
        {
            var w = pair.Support(-v);
            var vSize = v.Size;
            var low = Vector3.Dot(v, w.P) / vSize;
            if (low > bestLow)
                (bestLow, bestN) = (low, (1 / vSize) * v);
            // The gap between running distance and bound is what is left to gain.
            if (count > 0 && (least - bestLow <= enough + (1e-12 * least) + (1e-15 * scale) || Contains(simplex[..count], w.P)))
                break;
            simplex[count++] = w;
            v = NearestWithNewest(simplex, ref count, weights, scale);
            Vector3 a = default, b = default;
            for (var i = 0; i < count; i++)
            {
                a += weights[i] * simplex[i].A;
                b += weights[i] * simplex[i].B;
            }

            var distance = v.Size;
            if (distance <= 1e-14 * scale || count == 4)
            {
                // Believed only if no direction has separated the cores so far.
                overlap = bestLow <= 1e-13 * scale;
                (onA, onB) = (a, b);
                least = Math.Min(least, distance);
                break;
            }

            if (distance >= least)
                break;
            least = distance;
            (onA, onB) = (a, b);
        }

        if (overlap && depth)
            return Penetration(pair, simplex[..count], onA, onB, scale);

        // From the witness points, never from the running value.
        var apart = onB - onA;
        var core = apart.Size;
        var n = core > 1e-13 * scale ? (1 / core) * apart : bestN;
        var proved = pair.Width(n);
        var provedBest = pair.Width(bestN);
        if (provedBest > proved)
            (proved, n) = (provedBest, bestN);
        var gap = core - first.Radius - second.Radius;
        return new(
            gap,
            Math.Min(proved, gap),
            outerFromFirst.Turn * n,
            outerFromFirst * pair.InFirst(onA, n, first.Radius),
            outerFromFirst * pair.InFirst(onB, n, -second.Radius));
    }

    private static bool Contains(ReadOnlySpan<Vertex> simplex, Vector3 p)
    {
        foreach (var vertex in simplex)
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
    private static Vector3 NearestWithNewest(Span<Vertex> s, ref int count, Span<double> weights, double scale)
    {
        if (count == 4 && InsideTetrahedron(s, weights, scale))
            return default;
        var newest = count - 1;
        var at = s[newest].P;
        var nearest = at;
        var least = Vector3.Dot(at, at);
        int first = -1, second = -1;
        double toFirst = 0, toSecond = 0;
        for (var i = 0; i < newest; i++)
        {
            var ab = s[i].P - at;
            var edge = Vector3.Dot(ab, ab);
            var t = -Vector3.Dot(at, ab) / edge;
            if (t > 0 && t < 1)
            {
                var p = at + (t * ab);
                var square = Vector3.Dot(p, p);
                if (square < least)
                    (least, nearest, first, second, toFirst, toSecond) = (square, p, i, -1, t, 0);
            }

            for (var j = i + 1; j < newest; j++)
            {
                var ac = s[j].P - at;
                var normal = Vector3.Cross(ab, ac);
                var area = Vector3.Dot(normal, normal);
                if (!(area > 1e-28 * edge * Vector3.Dot(ac, ac)))
                    continue;
                var u = Vector3.Dot(normal, Vector3.Cross(ac, at)) / area;
                var v = Vector3.Dot(normal, Vector3.Cross(at, ab)) / area;
                if (!(u > 0 && v > 0 && u + v < 1))
                    continue;
                var p = at + (u * ab) + (v * ac);
                var square = Vector3.Dot(p, p);
                if (square < least)
                    (least, nearest, first, second, toFirst, toSecond) = (square, p, i, j, u, v);
            }
        }

        count = 0;
        if (first >= 0)
        {
            s[0] = s[first];
            weights[count++] = toFirst;
        }

        if (second >= 0)
        {
            s[1] = s[second];
            weights[count++] = toSecond;
        }

        s[count] = s[newest];
        weights[count++] = 1 - toFirst - toSecond;
        return nearest;
    }

    /// <summary>Nearest point of a simplex to the origin: every face is tried, so a sliver can't mislead; keeps the face that holds it.</summary>
    private static Vector3 Nearest(Span<Vertex> s, ref int count, Span<double> weights, double scale)
    {
        Span<double> trial = stackalloc double[4];
        Span<double> best = stackalloc double[4];
        var least = double.PositiveInfinity;
        var nearest = default(Vector3);
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
            var p = default(Vector3);
            for (var i = 0; i < count; i++)
                p += trial[i] * s[i].P;
            var square = Vector3.Dot(p, p);
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
            var square = Vector3.Dot(ab, ab);
            var t = -Vector3.Dot(a, ab) / square;
            if (!(t > 0 && t < 1))
                return false;
            weights[at[0]] = 1 - t;
            weights[at[1]] = t;
            return true;
        }

        var ac = s[at[2]].P - a;
        var normal = Vector3.Cross(ab, ac);
        var area = Vector3.Dot(normal, normal);
        if (!(area > 1e-28 * Vector3.Dot(ab, ab) * Vector3.Dot(ac, ac)))
            return false;
        var u = Vector3.Dot(normal, Vector3.Cross(-a, ac)) / area;
        var v = Vector3.Dot(normal, Vector3.Cross(ab, -a)) / area;
        if (!(u > 0 && v > 0 && u + v < 1))
            return false;
        weights[at[0]] = 1 - u - v;
        weights[at[1]] = u;
        weights[at[2]] = v;
        return true;
    }

    private static bool InsideTetrahedron(ReadOnlySpan<Vertex> s, Span<double> weights, double scale)
    {
        Vector3 a = s[0].P, b = s[1].P - a, c = s[2].P - a, d = s[3].P - a;
        var volume = Vector3.Dot(b, Vector3.Cross(c, d));
        if (!(Math.Abs(volume) > 1e-15 * b.Size * c.Size * d.Size) || !(scale > 0))
            return false;
        weights[1] = Vector3.Dot(-a, Vector3.Cross(c, d)) / volume;
        weights[2] = Vector3.Dot(b, Vector3.Cross(-a, d)) / volume;
        weights[3] = Vector3.Dot(b, Vector3.Cross(c, -a)) / volume;
        weights[0] = 1 - weights[1] - weights[2] - weights[3];
        return weights[0] >= 0 && weights[1] >= 0 && weights[2] >= 0 && weights[3] >= 0;
    }

    /// <summary>Overlapping cores: the direction of least support width, by expanding a polytope inside their difference.</summary>
    private static Separation Penetration(Pair pair, ReadOnlySpan<Vertex> found, Vector3 onA, Vector3 onB, double scale)
    {
        var points = new List<Vertex>();
        foreach (var vertex in found)
            Grow(points, vertex, scale);
        var flat = Complete(pair, points, scale);
        if (flat is { } normal)
            return Overlap(pair, normal, onA, onB);

        var faces = new List<Face>
        {
            Make(points, 0, 1, 2, 3), Make(points, 0, 1, 3, 2), Make(points, 0, 2, 3, 1), Make(points, 1, 2, 3, 0),
        };
        var inside = 0.25 * (points[0].P + points[1].P + points[2].P + points[3].P);
        var best = faces[0];
        var bestDepth = double.PositiveInfinity;
        for (var step = 0; step < 256; step++)
        {
            var nearest = faces[0];
            foreach (var face in faces)
            {
                if (face.Offset < nearest.Offset)
                    nearest = face;
            }

            var w = pair.Support(nearest.Normal);
            var depth = Vector3.Dot(nearest.Normal, w.P);
            if (depth < bestDepth)
                (bestDepth, best) = (depth, nearest);
            if (depth - nearest.Offset <= 1e-11 * scale || bestDepth - nearest.Offset <= 1e-11 * scale)
                break;
            points.Add(w);
            var at = points.Count - 1;
            var rim = new HashSet<(int From, int To)>();
            var kept = new List<Face>();
            foreach (var face in faces)
            {
                if (Vector3.Dot(face.Normal, w.P) - face.Offset <= 1e-14 * scale)
                {
                    kept.Add(face);
                    continue;
                }

                foreach (var edge in new[] { (face.I, face.J), (face.J, face.K), (face.K, face.I) })
                {
                    if (!rim.Remove((edge.Item2, edge.Item1)))
                        rim.Add(edge);
                }
            }

            foreach (var (from, to) in rim.OrderBy(e => e))
            {
                if (From(points, from, to, at, inside) is { } face)
                    kept.Add(face);
            }

            if (kept.Count < 4 || kept.Count > 2000)
                break;
            faces = kept;
        }

        // The face's point nearest the origin, carried back to both cores.
        Span<Vertex> corner = [points[best.I], points[best.J], points[best.K], default];
        Span<double> weights = stackalloc double[4];
        var count = 3;
        Nearest(corner, ref count, weights, scale);
        Vector3 a = default, b = default;
        for (var i = 0; i < count; i++)
        {
            a += weights[i] * corner[i].A;
            b += weights[i] * corner[i].B;
        }

        return Overlap(pair, best.Normal, a, b);
    }

    /// <param name="normal">Outward normal of the difference second - first: moving the second shape against it frees it.</param>
    private static Separation Overlap(Pair pair, Vector3 normal, Vector3 onA, Vector3 onB)
    {
        var n = -normal;
        var width = pair.Width(n);
        if (pair.Width(normal) > width)
            (n, width) = (normal, pair.Width(normal));
        var outer = pair.OuterFromFirst;
        return new(
            width,
            width,
            outer.Turn * n,
            outer * pair.InFirst(onA, n, pair.First.Radius),
            outer * pair.InFirst(onB, n, -pair.SecondRadius));
    }

    private static void Grow(List<Vertex> points, Vertex next, double scale)
    {
        if (points.Count < 4 && OffFlat(points, next.P) > 1e-10 * scale)
            points.Add(next);
    }

    private static double OffFlat(List<Vertex> points, Vector3 p)
    {
        if (points.Count == 0)
            return double.PositiveInfinity;
        var d = p - points[0].P;
        if (points.Count == 1)
            return d.Size;
        var e = (points[1].P - points[0].P).Unit();
        if (points.Count == 2)
            return (d - (Vector3.Dot(d, e) * e)).Size;
        return Math.Abs(Vector3.Dot(d, Vector3.Cross(e, points[2].P - points[0].P).Unit()));
    }

    /// <summary>Adds supports until four points span a volume; else the normal of the flat difference.</summary>
    private static Vector3? Complete(Pair pair, List<Vertex> points, double scale)
    {
        Span<Vector3> axes = [new(1, 0, 0), new(0, 1, 0), new(0, 0, 1)];
        while (points.Count < 4)
        {
            var before = points.Count;
            Vector3 across;
            if (points.Count == 0)
            {
                points.Add(pair.Support(axes[0]));
                continue;
            }

            if (points.Count == 3)
            {
                across = Vector3.Cross((points[1].P - points[0].P).Unit(), points[2].P - points[0].P).Unit();
                Grow(points, pair.Support(across), scale);
                Grow(points, pair.Support(-across), scale);
                if (points.Count == before)
                    return across;
                continue;
            }

            if (points.Count == 2)
            {
                var line = (points[1].P - points[0].P).Unit();
                var u = Rotation.SquareTo(line);
                var v = Vector3.Cross(line, u);
                foreach (var d in new[] { u, -u, v, -v })
                    Grow(points, pair.Support(d), scale);
                if (points.Count == before)
                    return u;
                continue;
            }

            foreach (var d in axes)
            {
                Grow(points, pair.Support(d), scale);
                Grow(points, pair.Support(-d), scale);
            }

            if (points.Count == before)
                return axes[0];
        }

        return null;
    }

    private static Face Make(List<Vertex> points, int i, int j, int k, int other)
    {
        var normal = Vector3.Cross(points[j].P - points[i].P, points[k].P - points[i].P).Unit();
        if (Vector3.Dot(normal, points[other].P - points[i].P) > 0)
            (normal, j, k) = (-normal, k, j);
        return new(i, j, k, normal, Vector3.Dot(normal, points[i].P));
    }

    private static Face? From(List<Vertex> points, int i, int j, int k, Vector3 inside)
    {
        var normal = Vector3.Cross(points[j].P - points[i].P, points[k].P - points[i].P);
        var size = normal.Size;
        if (!(size > 1e-30))
            return null;
        normal = (1 / size) * normal;
        return Vector3.Dot(normal, points[i].P - inside) < 0 ? null : new(i, j, k, normal, Vector3.Dot(normal, points[i].P));
    }

    private readonly record struct Face(int I, int J, int K, Vector3 Normal, double Offset);

    /// <summary>A point of the difference second - first, and the two points it comes from. First shape's axes about its centre.</summary>
    private readonly record struct Vertex(Vector3 P, Vector3 A, Vector3 B);

    /// <summary>Both shapes in the first one's axes, origin at its centre: places far from the origin lose no digits.</summary>
    private readonly struct Pair
    {
        private readonly ConvexShape second;
        private readonly Rotation firstFromSecond;
        private readonly Vector3 apart;

        public Pair(ConvexShape first, Pose outerFromFirst, ConvexShape second, Pose outerFromSecond)
        {
            First = first;
            OuterFromFirst = outerFromFirst;
            this.second = second;
            firstFromSecond = outerFromFirst.Turn.Inverse() * outerFromSecond.Turn;
            // Centre to centre, before anything large is added.
            apart = outerFromFirst.Turn.Back((outerFromSecond * second.Centre) - (outerFromFirst * first.Centre));
        }

        public ConvexShape First { get; }

        public Pose OuterFromFirst { get; }

        public double SecondRadius => second.Radius;

        public Vector3 Start() => apart;

        public Vertex Support(Vector3 d)
        {
            var a = First.Farthest(-d) - First.Centre;
            var b = (firstFromSecond * (second.Farthest(firstFromSecond.Back(d)) - second.Centre)) + apart;
            return new(b - a, a, b);
        }

        public double Width(Vector3 n)
        {
            var u = firstFromSecond.Back(n);
            var a = First.Least(-n) + Vector3.Dot(n, First.Centre);
            var b = second.Least(u) - Vector3.Dot(u, second.Centre);
            return a + b + Vector3.Dot(n, apart) - First.Radius - second.Radius;
        }

        /// <summary>Point in the first shape's own axes, moved along n.</summary>
        public Vector3 InFirst(Vector3 p, Vector3 n, double along) => p + First.Centre + (along * n);
    }
}
