using System.Runtime.Intrinsics;
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
    private readonly Core[] nodes;
    private readonly int[] left, right, part;

    // By part; of a mesh none.
    private readonly ConvexShape[] shapes;
    private readonly string[] names;
    private readonly Vector3[] corners;
    private readonly int[] triangles;

    private Solid(Tree tree, string[] names, ConvexShape[] shapes, Vector3[] corners, int[] triangles)
    {
        (nodes, left, right, part) = (tree.Nodes, tree.Left, tree.Right, tree.Parts);
        Roots = [.. tree.Roots];
        this.names = names;
        this.shapes = shapes;
        this.corners = corners;
        this.triangles = triangles;
        Vector256<double> low = Vector256.Create(double.PositiveInfinity), high = -low;
        foreach (var root in Roots)
        {
            Vector256<double> least = nodes[root].Lowest(), most = nodes[root].Highest();
            (low, high) = (Vector256.Min(low, least), Vector256.Max(high, most));
        }

        var centre = 0.5 * (low + high);
        Centre = Triple.Back(centre);
        Reach = Roots.Max(r => Triple.Size(nodes[r].Centre - centre) + nodes[r].Reach + nodes[r].Radius);
    }

    /// <summary>Middle of the solid's own box.</summary>
    public Vector3 Centre { get; }

    /// <summary>Nothing of the solid is farther from its centre, m.</summary>
    public double Reach { get; }

    public IReadOnlyList<string> PartNames => names;

    public bool IsMesh => triangles.Length > 0;

    /// <summary>The convex parts by name; none of a mesh.</summary>
    public IEnumerable<Part> Parts => names.Zip(shapes, (name, shape) => new Part(name, shape));

    /// <summary>Corners and triangles of a mesh, three corners each; empty for convex parts.</summary>
    public (IReadOnlyList<Vector3> Corners, IReadOnlyList<int> Triangles) Mesh => (corners, triangles);

    internal EquatableList<int> Roots { get; }

    internal int NodeCount => nodes.Length;

    public static Solid Of(params IEnumerable<Part> parts)
    {
        Part[] all = [.. parts];
        if (all.Length == 0)
            throw new ArgumentException("A solid needs at least one part.", nameof(parts));
        ConvexShape[] shapes = [.. all.Select(p => p.Shape)];
        return new(new Tree([.. shapes.Select(s => s.Core)], flatBelow: 9), [.. all.Select(p => p.Name)], shapes, [], []);
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
        Vector3[] points = [.. corners];
        int[] triangles = [.. indices];
        var cores = new Core[triangles.Length / 3];
        for (var t = 0; t < cores.Length; t++)
        {
            Vector3 a = points[triangles[3 * t]], b = points[triangles[(3 * t) + 1]], c = points[triangles[(3 * t) + 2]];
            cores[t] = Distance.Core.OfTriangle(Triple.Of(a), Triple.Of(b), Triple.Of(c), Math.Max(padding(a), Math.Max(padding(b), padding(c))));
        }

        return new(new Tree(cores, flatBelow: 1), [name], [], points, triangles);
    }

    /// <summary>The same solid with more all round: clothing, or the error of a measurement. Exact.</summary>
    public Solid Padded(double more)
    {
        if (more == 0)
            return this;
        if (!IsMesh)
            return Of(Parts.Select(p => p with { Shape = p.Shape.Padded(more) }));
        var cores = new Core[triangles.Length / 3];
        for (var n = 0; n < nodes.Length; n++)
        {
            if (IsLeaf(n))
                cores[part[n]] = nodes[n] with { Radius = nodes[n].Radius + more };
        }

        return new(new(cores, flatBelow: 1), names, shapes, corners, triangles);
    }

    /// <summary>What a drawing shows: the parts, or the hull of a mesh.</summary>
    public IReadOnlyList<ConvexShape> Shapes =>
        IsMesh ? [new Hull(corners)] : shapes;

    /// <summary>One part alone.</summary>
    public Solid Only(string name)
    {
        if (IsMesh)
            return this;
        var at = Array.IndexOf(names, name);
        return at >= 0 ? Of(new Part(name, shapes[at])) : throw new ArgumentException($"There is no part \"{name}\".", nameof(name));
    }

    internal ref readonly Core Core(int node) => ref nodes[node];

    internal bool IsLeaf(int node) => left[node] < 0;

    internal (int Left, int Right) Children(int node) => (left[node], right[node]);

    /// <summary>Which part a leaf belongs to; a mesh is one part.</summary>
    internal string PartOf(int leaf) => IsMesh ? names[0] : names[part[leaf]];

    /// <summary>A point inside or on each part, body axes; of a mesh its first corner.</summary>
    internal IEnumerable<Vector3> PointOfEachPart() =>
        IsMesh ? [corners[triangles[0]]] : shapes.Select(s => s.Farthest(new(1, 0, 0)));

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

    /// <summary>
    /// Binary tree of boxes along the principal axes of what they hold, halved at the middle shape along the longest side. A node comes
    /// before its left part, that before the right one.
    /// </summary>
    private sealed class Tree
    {
        // Fewer shapes take the axes of those they are among.
        private const int OwnAxes = 6;

        // More are worth a thread of their own.
        private const int OwnThread = 8192;

        private readonly Core[] shapes;
        private readonly int[] order;
        private readonly double[] keys;

        public Tree(Core[] shapes, int flatBelow)
        {
            this.shapes = shapes;
            order = [.. Enumerable.Range(0, shapes.Length)];
            keys = new double[shapes.Length];
            var isFlat = shapes.Length < flatBelow;
            var count = isFlat ? shapes.Length : (2 * shapes.Length) - 1;
            (Nodes, Left, Right, Parts) = (new Core[count], new int[count], new int[count], new int[count]);
            Roots = isFlat ? order : [0];
            if (!isFlat)
                Build(0, 0, shapes.Length, Vector256.Create(1.0, 0, 0, 0), Vector256.Create(0, 1.0, 0, 0), Vector256.Create(0, 0, 1.0, 0));
            for (var i = 0; isFlat && i < count; i++)
                Leaf(i, i);
        }

        public Core[] Nodes { get; }
        public int[] Left { get; }
        public int[] Right { get; }
        public int[] Parts { get; }
        public int[] Roots { get; }

        private void Leaf(int node, int shape)
        {
            Nodes[node] = shapes[shape];
            (Left[node], Right[node], Parts[node]) = (-1, -1, shape);
        }

        /// <param name="x">Axes to use where there are too few shapes for their own.</param>
        private void Build(int node, int from, int to, Vector256<double> x, Vector256<double> y, Vector256<double> z)
        {
            if (to - from == 1)
            {
                Leaf(node, order[from]);
                return;
            }

            if (to - from >= OwnAxes)
                PrincipalAxes(from, to, out x, out y, out z);
            // The axes as columns: one product gives all three coordinates.
            Vector256<double> cx = Vector256.Create(x[0], y[0], z[0], 0), cy = Vector256.Create(x[1], y[1], z[1], 0), cz = Vector256.Create(x[2], y[2], z[2], 0);
            Vector256<double> low = Vector256.Create(double.PositiveInfinity), high = -low;
            var radius = 0.0;
            for (var i = from; i < to; i++)
            {
                ref readonly var core = ref shapes[order[i]];
                var centre = Triple.Combined(core.Centre, cx, cy, cz);
                radius = Math.Max(radius, core.Radius);
                if (core.Kind == CoreKind.Triangle)
                {
                    Vector256<double> p = Triple.Combined(core.X, cx, cy, cz), q = Triple.Combined(core.Y, cx, cy, cz), r = Triple.Combined(core.Z, cx, cy, cz);
                    low = Vector256.Min(low, centre + Vector256.Min(p, Vector256.Min(q, r)));
                    high = Vector256.Max(high, centre + Vector256.Max(p, Vector256.Max(q, r)));
                }
                else
                {
                    low = Vector256.Min(low, centre + core.Least(cx, cy, cz, 1));
                    high = Vector256.Max(high, centre - core.Least(cx, cy, cz, -1));
                }
            }

            var half = 0.5 * (high - low);
            var middle = Triple.Combined(0.5 * (high + low), x, y, z);
            // A whisker of room so that rounding can't push a shape out of its box.
            var more = 1e-14 * (Triple.Size(middle) + Triple.Size(half));
            Nodes[node] = Distance.Core.OfBox(middle, (half[0] + more) * x, (half[1] + more) * y, (half[2] + more) * z, radius);
            var longest = half[0] >= half[1] && half[0] >= half[2] ? x : half[1] >= half[2] ? y : z;
            for (var i = from; i < to; i++)
                keys[i] = Triple.Dot(longest, shapes[order[i]].Centre);
            var cut = (from + to) / 2;
            Halve(from, to - 1, cut);
            var (left, right) = (node + 1, node + (2 * (cut - from)));
            (Left[node], Right[node], Parts[node]) = (left, right, -1);
            if (to - from > OwnThread)
            {
                Parallel.Invoke(() => Build(left, from, cut, x, y, z), () => Build(right, cut, to, x, y, z));
            }
            else
            {
                Build(left, from, cut, x, y, z);
                Build(right, cut, to, x, y, z);
            }
        }

        /// <summary>Of the centres; any axes hold the shapes, these hold them closely.</summary>
        private void PrincipalAxes(int from, int to, out Vector256<double> x, out Vector256<double> y, out Vector256<double> z)
        {
            var sum = Vector256<double>.Zero;
            for (var i = from; i < to; i++)
                sum += shapes[order[i]].Centre;
            var mean = (1.0 / (to - from)) * sum;
            Vector256<double> mx = default, my = default, mz = default;
            for (var i = from; i < to; i++)
            {
                var d = shapes[order[i]].Centre - mean;
                mx += d[0] * d;
                my += d[1] * d;
                mz += d[2] * d;
            }

            (x, y, z) = (Vector256.Create(1.0, 0, 0, 0), Vector256.Create(0, 1.0, 0, 0), Vector256.Create(0, 0, 1.0, 0));
            // Jacobi: turn by turn until the off-diagonal is small; nothing hangs on its last digits.
            double xx = mx[0], yy = my[1], zz = mz[2], xy = mx[1], xz = mx[2], yz = my[2];
            for (var sweep = 0; sweep < 6; sweep++)
            {
                if (Math.Abs(xy) + Math.Abs(xz) + Math.Abs(yz) <= 1e-6 * (xx + yy + zz))
                    break;
                Turn(ref xx, ref yy, ref xy, ref xz, ref yz, ref x, ref y);
                Turn(ref xx, ref zz, ref xz, ref xy, ref yz, ref x, ref z);
                Turn(ref yy, ref zz, ref yz, ref xy, ref xz, ref y, ref z);
            }

            // Square and of length 1 to rounding.
            x = Triple.Unit(x);
            y = Triple.Unit(y - (Triple.Dot(x, y) * x));
            z = Triple.Cross(x, y);

            static void Turn(ref double pp, ref double qq, ref double pq, ref double pr, ref double qr, ref Vector256<double> p, ref Vector256<double> q)
            {
                if (pq == 0)
                    return;
                var ratio = (qq - pp) / (2 * pq);
                var t = (ratio >= 0 ? 1 : -1) / (Math.Abs(ratio) + Math.Sqrt((ratio * ratio) + 1));
                double c = 1 / Math.Sqrt((t * t) + 1), s = t * c;
                (pp, qq) = (pp - (t * pq), qq + (t * pq));
                pq = 0;
                (pr, qr) = ((c * pr) - (s * qr), (s * pr) + (c * qr));
                (p, q) = ((c * p) - (s * q), (s * p) + (c * q));
            }
        }

        /// <summary>Smaller keys before the middle place, larger ones behind it (Hoare 1961).</summary>
        private void Halve(int low, int high, int middle)
        {
            while (low < high)
            {
                var pivot = keys[(low + high) / 2];
                int i = low, j = high;
                while (i <= j)
                {
                    while (keys[i] < pivot)
                        i++;
                    while (keys[j] > pivot)
                        j--;
                    if (i > j)
                        break;
                    (keys[i], keys[j]) = (keys[j], keys[i]);
                    (order[i], order[j]) = (order[j], order[i]);
                    i++;
                    j--;
                }

                if (middle <= j)
                    high = j;
                else if (middle >= i)
                    low = i;
                else
                    return;
            }
        }
    }
}
