using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Solids;

/// <summary>A triangle by its corners, anticlockwise seen from outside.</summary>
public readonly record struct Triangle(int A, int B, int C);

/// <summary>A closed surface of flat triangles, m.</summary>
/// <remarks>
/// Each edge of the body is cut once and its points are shared by both faces, so the mesh closes by construction.
/// Curved faces (between two straight rails and two like arcs) become strips, flat ones are cut ear by ear.
/// </remarks>
public sealed record Mesh(EquatableList<Vector3> Vertices, EquatableList<Triangle> Triangles)
{
    /// <summary>For each face of the body, in its order: how many triangles there are when it is done.</summary>
    public EquatableList<int> FaceEnds { get; init; } = [];

    /// <summary>For each edge of the body, in its order: the vertices along it.</summary>
    public EquatableList<EquatableList<int>> EdgePaths { get; init; } = [];

    /// <summary>Volume by signed tetrahedra, m^3.</summary>
    public double Volume => Triangles.Sum(t => Vector3.Dot(Vertices[t.A], Vector3.Cross(Vertices[t.B], Vertices[t.C])) / 6);

    /// <summary>Edges that are not shared by exactly two triangles, once each way; 0: closed and all facing the same side.</summary>
    public int OpenEdges
    {
        get
        {
            var balance = new Dictionary<(int, int), (int Ahead, int Back)>();
            foreach (var (a, b, c) in Triangles)
            {
                foreach (var (from, to) in ((int, int)[])[(a, b), (b, c), (c, a)])
                {
                    var key = from < to ? (from, to) : (to, from);
                    var (ahead, back) = balance.GetValueOrDefault(key);
                    balance[key] = from < to ? (ahead + 1, back) : (ahead, back + 1);
                }
            }

            return balance.Values.Count(b => b != (1, 1));
        }
    }

    /// <summary>Turned half a turn about x: what was on top lies below.</summary>
    public Mesh Flipped() => this with { Vertices = Vertices.Select(v => new Vector3(v.X, -v.Y, -v.Z)).ToEquatableList() };

    /// <summary>Triangles with a chord error of at most <paramref name="chord"/> (m) on every edge and curved face.</summary>
    public static Mesh Of(Solid solid, double chord)
    {
        if (!(chord > 0))
            throw new ArgumentOutOfRangeException(nameof(chord), chord, "a chord error is above zero");
        var vertices = solid.Vertices.ToList();
        var counts = Counts(solid, chord);
        var points = new int[solid.Edges.Count][];
        for (var i = 0; i < solid.Edges.Count; i++)
        {
            var edge = solid.Edges[i];
            points[i] = new int[counts[i] + 1];
            (points[i][0], points[i][^1]) = (edge.From, edge.To);
            for (var k = 1; k < counts[i]; k++)
            {
                points[i][k] = vertices.Count;
                vertices.Add(edge.At(k / (double)counts[i]));
            }
        }

        var triangles = new List<Triangle>();
        var ends = new List<int>();
        foreach (var face in solid.Faces)
        {
            var loops = face.Loops.Select(l => l.Uses.Select(u => u.Forward ? points[u.Edge] : [.. points[u.Edge].Reverse()]).ToList()).ToList();
            if (face.Surface.IsRound)
                Strip(solid, face, loops[0], vertices, triangles);
            else
                Flat(face.Surface.Axes, loops, vertices, triangles);
            ends.Add(triangles.Count);
        }

        return new(vertices.ToEquatableList(), triangles.ToEquatableList())
        {
            FaceEnds = ends.ToEquatableList(),
            EdgePaths = points.Select(p => p.ToEquatableList()).ToEquatableList(),
        };
    }

    /// <summary>Pieces per edge: arcs by their sagitta, and the two arcs of a curved face alike.</summary>
    private static int[] Counts(Solid solid, double chord)
    {
        var counts = solid.Edges.Select(e => e.Curve is Ellipse arc ? Pieces(Math.Max(arc.AlongX, arc.AlongY), e.End - e.Start, chord) : 1).ToArray();
        for (var changed = true; changed;)
        {
            changed = false;
            foreach (var face in solid.Faces.Where(f => f.Surface.IsRound))
            {
                var arcs = face.Loops[0].Uses.Where(u => solid.Edges[u.Edge].Curve is Ellipse).Select(u => u.Edge).ToList();
                if (face.Loops.Count != 1 || face.Loops[0].Uses.Count != 4 || arcs.Count != 2)
                    throw new InvalidOperationException("A curved face lies between two arcs and two straight lines.");
                var most = Math.Max(counts[arcs[0]], counts[arcs[1]]);
                foreach (var arc in arcs.Where(a => counts[a] < most))
                    (counts[arc], changed) = (most, true);
            }
        }

        return counts;
    }

    /// <summary>Least number of equal chords of an arc whose sagitta r (1 - cos(half)) stays below the chord error.</summary>
    private static int Pieces(double radius, double sweep, double chord)
    {
        // 1 - cos x <= x^2 / 2 gives a number that is enough; the least one is at most a few below it.
        var pieces = Math.Max(2, (int)Math.Ceiling(sweep * Math.Sqrt(radius / (8 * chord))));
        while (pieces > 2 && radius * (1 - Elementary.Cos(0.5 * sweep / (pieces - 1))) <= chord)
            pieces--;
        return pieces;
    }

    /// <summary>Quads between two like arcs, each cut along its shorter diagonal.</summary>
    private static void Strip(Solid solid, Face face, List<int[]> sides, List<Vector3> vertices, List<Triangle> triangles)
    {
        var first = solid.Edges[face.Loops[0].Uses[0].Edge].Curve is Ellipse ? 0 : 1;
        // Round the loop: arc, rail, arc back, rail back.
        int[] low = sides[first], high = [.. sides[first + 2].Reverse()];
        for (var i = 0; i + 1 < low.Length; i++)
        {
            int a = low[i], b = low[i + 1], c = high[i + 1], d = high[i];
            if ((vertices[a] - vertices[c]).Size <= (vertices[b] - vertices[d]).Size)
            {
                triangles.Add(new(a, b, c));
                triangles.Add(new(a, c, d));
            }
            else
            {
                triangles.Add(new(a, b, d));
                triangles.Add(new(b, c, d));
            }
        }
    }

    private static void Flat(Axes axes, List<List<int[]>> loops, List<Vector3> vertices, List<Triangle> triangles)
    {
        // Flat faces look along their own normal: the outline runs anticlockwise in (x, y).
        Vector2 Place(int vertex) => axes.Of(vertices[vertex]) is var p ? new(p.X, p.Y) : default;
        var rings = loops.ConvertAll(l => l.SelectMany(side => side[..^1]).Select(v => new Corner(v, Place(v))).ToList());
        var outline = rings[0];
        // The hole that reaches furthest first: its bridge can't cross another hole.
        foreach (var hole in rings.Skip(1).OrderByDescending(r => r.Max(c => c.At.X)))
            outline = Bridged(outline, hole);
        CutEars(outline, triangles);
    }

    private sealed record Corner(int Vertex, Vector2 At);

    /// <summary>Joins a hole to the outline by a line to and fro between two corners that see each other.</summary>
    private static List<Corner> Bridged(List<Corner> outline, List<Corner> hole)
    {
        var reach = Enumerable.Range(0, hole.Count).MaxBy(i => hole[i].At.X);
        foreach (var o in Enumerable.Range(0, outline.Count).OrderBy(i => (outline[i].At - hole[reach].At).Size))
        {
            Vector2 a = hole[reach].At, b = outline[o].At;
            if (!Crosses(outline, a, b) && !Crosses(hole, a, b) && InCone(outline, o, a) && InCone(hole, reach, b))
                return [.. outline.Take(o + 1), .. hole.Skip(reach), .. hole.Take(reach + 1), .. outline.Skip(o)];
        }

        throw new InvalidOperationException("A hole does not see the outline of its face.");
    }

    private static bool Crosses(List<Corner> ring, Vector2 a, Vector2 b)
    {
        for (var i = 0; i < ring.Count; i++)
        {
            Vector2 c = ring[i].At, d = ring[(i + 1) % ring.Count].At;
            if (c == a || c == b || d == a || d == b)
                continue;
            double one = Side(a, b, c), two = Side(a, b, d), three = Side(c, d, a), four = Side(c, d, b);
            if (one * two <= 0 && three * four <= 0)
                return true;
        }

        return false;
    }

    /// <summary>A place lies within the angle of the material at a corner.</summary>
    private static bool InCone(List<Corner> ring, int at, Vector2 place)
    {
        Vector2 here = ring[at].At, before = ring[(at + ring.Count - 1) % ring.Count].At, after = ring[(at + 1) % ring.Count].At;
        return Side(before, here, after) > 0
            ? Side(here, after, place) > 0 && Side(before, here, place) > 0
            : Side(here, after, place) > 0 || Side(before, here, place) > 0;
    }

    private static double Side(Vector2 a, Vector2 b, Vector2 c) => Vector2.Cross(b - a, c - a);

    /// <summary>Cuts corners off, the best-shaped ear first.</summary>
    private static void CutEars(List<Corner> outline, List<Triangle> triangles)
    {
        var count = outline.Count;
        var corners = outline.ToArray();
        var (before, after) = (new int[count], new int[count]);
        for (var i = 0; i < count; i++)
            (before[i], after[i]) = ((i + count - 1) % count, (i + 1) % count);
        var left = Enumerable.Range(0, count).ToList();
        var shape = new double[count];
        foreach (var i in left)
            shape[i] = Shape(i);
        while (left.Count > 3)
        {
            var ear = left.MaxBy(i => shape[i]);
            if (!(shape[ear] > 0))
                throw new InvalidOperationException("A flat face can't be cut into triangles: its outline crosses itself.");
            Cut(ear);
            left.Remove(ear);
            (after[before[ear]], before[after[ear]]) = (after[ear], before[ear]);
            // Only the cut's neighbours changed their shape; what a corner blocked may be free now.
            foreach (var i in left.Where(i => i == before[ear] || i == after[ear] || shape[i] < 0))
                shape[i] = Shape(i);
        }

        Cut(left[0]);

        void Cut(int i) => triangles.Add(new(corners[before[i]].Vertex, corners[i].Vertex, corners[after[i]].Vertex));

        // Above zero: an ear, 1 for equal sides. 0: flat or hollow. Below zero: an ear but for a corner inside it.
        double Shape(int i)
        {
            Vector2 a = corners[before[i]].At, b = corners[i].At, c = corners[after[i]].At;
            var area = Side(a, b, c);
            var longest = Math.Max((b - a).Size, Math.Max((c - b).Size, (a - c).Size));
            var quality = area / (longest * longest);
            if (!(quality > 1e-9))
                return 0;
            foreach (var k in left)
            {
                var (vertex, p) = corners[k];
                if (vertex == corners[before[i]].Vertex || vertex == corners[i].Vertex || vertex == corners[after[i]].Vertex)
                    continue;
                if (Side(a, b, p) >= 0 && Side(b, c, p) >= 0 && Side(c, a, p) >= 0)
                    return -quality;
            }

            return quality;
        }
    }
}
