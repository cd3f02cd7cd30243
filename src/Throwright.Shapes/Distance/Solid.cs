using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Distance;

/// <summary>A convex part of a solid with the name that a report gives it.</summary>
public sealed record Part(string Name, ConvexShape Shape);

/// <summary>A rigid body for distances: convex parts, or the triangles of a mesh, under a tree of bounding boxes.</summary>
/// <remarks>
/// A node of the tree is a box like any other shape, so one search splits joints and geometry alike. A mesh is its surface:
/// whether something lies wholly inside is asked with <see cref="WindingAt"/>.
/// </remarks>
public sealed class Solid
{
    private readonly ConvexShape[] nodes;
    private readonly int[] left, right, part;
    private readonly string[] names;
    private readonly Vector3[] corners;
    private readonly int[] triangles;

    private Solid(Tree tree, string[] names, Vector3[] corners, int[] triangles)
    {
        nodes = [.. tree.Nodes];
        left = [.. tree.Left];
        right = [.. tree.Right];
        part = [.. tree.Parts];
        Roots = [.. tree.Roots];
        this.names = names;
        this.corners = corners;
        this.triangles = triangles;
        var box = BoundsOf(nodes, Roots);
        Centre = box.Centre;
        Reach = Roots.Max(r => (nodes[r].Centre - Centre).Size + nodes[r].CoreReach + nodes[r].Radius);
    }

    /// <summary>Middle of the solid's own box.</summary>
    public Vector3 Centre { get; }

    /// <summary>Nothing of the solid is farther from its centre, m.</summary>
    public double Reach { get; }

    public IReadOnlyList<string> PartNames => names;

    public bool IsMesh => triangles.Length > 0;

    /// <summary>The convex parts by name; none of a mesh.</summary>
    public IEnumerable<Part> Parts => IsMesh ? [] : Enumerable.Range(0, nodes.Length).Where(IsLeaf).OrderBy(n => part[n]).Select(n => new Part(names[part[n]], nodes[n]));

    /// <summary>Corners and triangles of a mesh, three corners each; empty for convex parts.</summary>
    public (IReadOnlyList<Vector3> Corners, IReadOnlyList<int> Triangles) Mesh => (corners, triangles);

    internal EquatableList<int> Roots { get; }

    internal int NodeCount => nodes.Length;

    public static Solid Of(params IEnumerable<Part> parts)
    {
        Part[] all = [.. parts];
        if (all.Length == 0)
            throw new ArgumentException("A solid needs at least one part.", nameof(parts));
        var tree = new Tree([.. all.Select(p => p.Shape)], flatBelow: 9);
        return new(tree, [.. all.Select(p => p.Name)], [], []);
    }

    /// <param name="indices">Three corners a triangle, counter-clockwise seen from outside where the mesh is closed.</param>
    /// <param name="padding">Stated error of the scan or of the chords, m: added all round, exactly.</param>
    public static Solid OfTriangles(string name, IReadOnlyList<Vector3> corners, IReadOnlyList<int> indices, double padding = 0) =>
        OfTriangles(name, corners, indices, _ => padding);

    /// <param name="padding">How far the true surface may be from a corner, m; a triangle gets the most of its three, all round.</param>
    public static Solid OfTriangles(string name, IReadOnlyList<Vector3> corners, IReadOnlyList<int> indices, Func<Vector3, double> padding)
    {
        if (indices.Count == 0 || indices.Count % 3 != 0)
            throw new ArgumentException("Three corners a triangle, and at least one triangle.", nameof(indices));
        var shapes = new ConvexShape[indices.Count / 3];
        for (var t = 0; t < shapes.Length; t++)
        {
            Vector3 a = corners[indices[3 * t]], b = corners[indices[(3 * t) + 1]], c = corners[indices[(3 * t) + 2]];
            shapes[t] = new Hull([a, b, c], Math.Max(padding(a), Math.Max(padding(b), padding(c))));
        }

        var tree = new Tree(shapes, flatBelow: 1);
        return new(tree, [.. Enumerable.Repeat(name, 1)], [.. corners], [.. indices]);
    }

    /// <summary>The same solid with more all round: clothing, or the error of a measurement. Exact.</summary>
    public Solid Padded(double more)
    {
        if (more == 0)
            return this;
        var leaves = Enumerable.Range(0, nodes.Length).Where(IsLeaf).OrderBy(n => part[n]).Select(n => nodes[n].Padded(more)).ToArray();
        return IsMesh ? new(new(leaves, flatBelow: 1), names, corners, triangles) : Of(leaves.Select((shape, i) => new Part(names[i], shape)));
    }

    /// <summary>What a drawing shows: the parts, or the hull of a mesh.</summary>
    public IReadOnlyList<ConvexShape> Shapes =>
        IsMesh ? [new Hull(corners)] : [.. Enumerable.Range(0, nodes.Length).Where(IsLeaf).OrderBy(n => part[n]).Select(n => nodes[n])];

    /// <summary>One part alone.</summary>
    public Solid Only(string name)
    {
        if (IsMesh)
            return this;
        var leaf = Enumerable.Range(0, nodes.Length).FirstOrDefault(n => IsLeaf(n) && names[part[n]] == name, -1);
        return leaf >= 0 ? Of(new Part(name, nodes[leaf])) : throw new ArgumentException($"There is no part \"{name}\".", nameof(name));
    }

    internal ConvexShape Node(int node) => nodes[node];

    internal ref readonly Core Core(int node) => ref nodes[node].Core;

    internal bool IsLeaf(int node) => left[node] < 0;

    internal (int Left, int Right) Children(int node) => (left[node], right[node]);

    /// <summary>Which part a leaf belongs to; a mesh is one part.</summary>
    internal int PartNumber(int leaf) => IsMesh ? 0 : part[leaf];

    internal string PartOf(int leaf) => IsMesh ? names[0] : names[part[leaf]];

    /// <summary>A point inside or on each part, body axes; of a mesh its first corner.</summary>
    internal IEnumerable<Vector3> PointOfEachPart() =>
        IsMesh ? [corners[triangles[0]]] : Enumerable.Range(0, nodes.Length).Where(IsLeaf).Select(n => nodes[n].Farthest(new(1, 0, 0)));

    /// <summary>
    /// Generalised winding number of the mesh round a point, body axes: 1 inside a closed mesh, 0 outside; far from a whole
    /// number when the mesh is open.
    /// </summary>
    /// <remarks>
    /// Sum of the triangles' solid angles over 4 pi (Jacobson, Kavan, Sorkine-Hornung 2013); each by van Oosterom and
    /// Strackee (1983): tan(O/2) = a.(b x c) / (abc + (a.b)c + (b.c)a + (c.a)b).
    /// </remarks>
    public double WindingAt(Vector3 point)
    {
        var sum = 0.0;
        for (var t = 0; t < triangles.Length; t += 3)
        {
            var a = corners[triangles[t]] - point;
            var b = corners[triangles[t + 1]] - point;
            var c = corners[triangles[t + 2]] - point;
            double x = a.Size, y = b.Size, z = c.Size;
            var over = Vector3.Dot(a, Vector3.Cross(b, c));
            var under = (x * y * z) + (Vector3.Dot(a, b) * z) + (Vector3.Dot(b, c) * x) + (Vector3.Dot(c, a) * y);
            sum += 2 * Math.Atan2(over, under);
        }

        return sum / (4 * Math.PI);
    }

    /// <summary>A box along the axes that holds the shape's core, with the shape's own rounding left to the radius.</summary>
    private static (Vector3 Centre, Vector3 Half) BoundsOf(IReadOnlyList<ConvexShape> shapes, IEnumerable<int> which)
    {
        double lx = double.PositiveInfinity, ly = lx, lz = lx, hx = -lx, hy = -lx, hz = -lx;
        foreach (var i in which)
        {
            var s = shapes[i];
            lx = Math.Min(lx, s.Least(new(1, 0, 0)));
            ly = Math.Min(ly, s.Least(new(0, 1, 0)));
            lz = Math.Min(lz, s.Least(new(0, 0, 1)));
            hx = Math.Max(hx, -s.Least(new(-1, 0, 0)));
            hy = Math.Max(hy, -s.Least(new(0, -1, 0)));
            hz = Math.Max(hz, -s.Least(new(0, 0, -1)));
        }

        return (new(0.5 * (lx + hx), 0.5 * (ly + hy), 0.5 * (lz + hz)), new(0.5 * (hx - lx), 0.5 * (hy - ly), 0.5 * (hz - lz)));
    }

    /// <summary>Binary tree, halved at the middle shape along the longest side of the centres' box.</summary>
    private sealed class Tree
    {
        private readonly ConvexShape[] shapes;

        public Tree(ConvexShape[] shapes, int flatBelow)
        {
            this.shapes = shapes;
            var order = Enumerable.Range(0, shapes.Length).ToArray();
            if (shapes.Length < flatBelow)
            {
                foreach (var i in order)
                    Roots.Add(Leaf(i));
            }
            else
            {
                Roots.Add(Build(order, 0, order.Length));
            }
        }

        public List<ConvexShape> Nodes { get; } = [];
        public List<int> Left { get; } = [];
        public List<int> Right { get; } = [];
        public List<int> Parts { get; } = [];
        public List<int> Roots { get; } = [];

        private int Leaf(int i) => Add(shapes[i], -1, -1, i);

        private int Add(ConvexShape shape, int left, int right, int part)
        {
            Nodes.Add(shape);
            Left.Add(left);
            Right.Add(right);
            Parts.Add(part);
            return Nodes.Count - 1;
        }

        private int Build(int[] order, int from, int to)
        {
            if (to - from == 1)
                return Leaf(order[from]);
            double lx = double.PositiveInfinity, ly = lx, lz = lx, hx = -lx, hy = -lx, hz = -lx;
            for (var i = from; i < to; i++)
            {
                var c = shapes[order[i]].Centre;
                (lx, ly, lz) = (Math.Min(lx, c.X), Math.Min(ly, c.Y), Math.Min(lz, c.Z));
                (hx, hy, hz) = (Math.Max(hx, c.X), Math.Max(hy, c.Y), Math.Max(hz, c.Z));
            }

            double dx = hx - lx, dy = hy - ly, dz = hz - lz;
            var keys = new double[to - from];
            for (var i = from; i < to; i++)
            {
                var c = shapes[order[i]].Centre;
                keys[i - from] = dx >= dy && dx >= dz ? c.X : dy >= dz ? c.Y : c.Z;
            }

            // Sorted aside: keys and order start at different places. Stable order of equal keys: by shape number.
            var span = order.AsSpan(from, to - from);
            keys.AsSpan().Sort(span);
            var middle = (from + to) / 2;
            var left = Build(order, from, middle);
            var right = Build(order, middle, to);
            var (centre, half) = BoundsOf(Nodes, [left, right]);
            // A whisker of room so that rounding can't push a shape out of its box.
            var more = 1e-14 * (centre.Size + half.Size);
            return Add(
                new Box(centre, Rotation.None, half + new Vector3(more, more, more), Math.Max(Nodes[left].Radius, Nodes[right].Radius)),
                left,
                right,
                -1);
        }
    }
}
