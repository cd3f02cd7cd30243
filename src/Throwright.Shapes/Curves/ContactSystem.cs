using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Curves;

/// <summary>The discrete curve among obstacles: tangents, points and one force per segment. Stiffness 1.</summary>
/// <remarks>
/// With points r and forces F_i as unknowns an obstacle concerns one node only:
///   sum A(t_i, t_j, F_i) + F_i.(r_j - r_i) - h q.(r_i + r_j)/2 + H (sum of lengths - total) - lambda (d(r) - keep - s) - mu log s
/// Newton's matrix is block-tridiagonal with blocks of eight: tangent 2, force before the node 3, point 3. Primal-dual steps in s and
/// lambda; eliminated, they add (lambda/s) n n^T - lambda d'' to the point's block. Derived in docs/theory/route.md.
/// </remarks>
internal sealed class ContactSystem
{
    private const int Size = 8, Next = 5;
    private readonly ElasticFrame frame;
    private readonly int[] segments, offset;
    private readonly int nodes, border, spans;
    private readonly int[] span;
    private readonly int[]? groups;
    private readonly double[] totals;
    private readonly Func<Vector3, double>[] obstacles;
    private readonly double keepScale;
    private readonly Vector3[] b1, b2, gradientT, gradientR, gap, old;
    private readonly double[] diagonal, off, columns, right, solved, corner, schur, cornerGradient, borderStep, step, oldLengths;
    private readonly double[] small = new double[Size * Size], rhs = new double[Size];
    private readonly SymmetricFactor smallFactor = new(), borderFactor = new();
    private readonly List<Touch> touches = [];

    /// <param name="obstacles">Distance of the centre line to spare, in the solver's measure; below zero: too near.</param>
    /// <param name="keepScale">Curvature above which the obstacles' offset surfaces don't bend.</param>
    public ContactSystem(ElasticFrame frame, int[] segments, int[]? groups, double[] totals, Func<Vector3, double>[] obstacles, double keepScale)
    {
        (this.frame, this.segments, this.groups, this.totals, this.obstacles, this.keepScale) = (frame, segments, groups, totals, obstacles, keepScale);
        spans = segments.Length;
        offset = new int[spans + 1];
        for (var k = 0; k < spans; k++)
            offset[k + 1] = offset[k] + segments[k];
        nodes = offset[spans] + 1;
        span = new int[nodes];
        for (var k = 0; k < spans; k++)
        {
            for (var i = offset[k] + 1; i <= offset[k + 1]; i++)
                span[i] = k;
        }

        border = (groups is null ? 0 : spans) + totals.Length;
        Tangents = new Vector3[nodes];
        Points = new Vector3[nodes];
        Force = new Vector3[nodes];
        Lengths = new double[spans];
        Balance = new double[totals.Length];
        (b1, b2, gradientT, gradientR, gap, old) = (new Vector3[nodes], new Vector3[nodes], new Vector3[nodes], new Vector3[nodes], new Vector3[nodes], new Vector3[nodes]);
        diagonal = new double[nodes * Size * Size];
        off = new double[nodes * Size * Next];
        columns = new double[nodes * Size * border];
        right = new double[nodes * Size];
        solved = new double[nodes * Size * (Next + border + 1)];
        (corner, schur) = (new double[border * border], new double[border * border]);
        (cornerGradient, borderStep) = (new double[border], new double[border]);
        step = new double[nodes * Size];
        oldLengths = new double[spans];
        Wanted = (3 * (nodes - 1)) + totals.Length;
    }

    /// <summary>One node that may touch one obstacle.</summary>
    public sealed class Touch
    {
        public required int Node { get; init; }
        public required int Obstacle { get; init; }
        public double Gap { get; set; }
        public double Slack { get; set; }
        public double Push { get; set; }
        public Vector3 Normal { get; set; }
        public double SlackStep { get; set; }
        public double PushStep { get; set; }
        public double OldSlack { get; set; }
    }

    public Vector3[] Tangents { get; }
    public Vector3[] Points { get; }

    /// <summary>Force in the segment before each node.</summary>
    public Vector3[] Force { get; }
    public double[] Lengths { get; }
    public double[] Balance { get; }
    public IReadOnlyList<Touch> Touches => touches;
    public int[] Offset => offset;

    /// <summary>Negative eigenvalues at a strict minimum.</summary>
    public int Wanted { get; }
    public bool Fine { get; set; }

    private double StepAt(int k) => Lengths[k] / segments[k];

    private bool HoldsPoint(int node) => Array.IndexOf(offset, node) >= 0;

    private bool HoldsTangent(int node) => Array.IndexOf(offset, node) is >= 0 and var k && frame.Directions[k] is not null;

    private ArcFactors Factors(Vector3 t, Vector3 u)
    {
        var d = u - t;
        var x = 0.5 * Vector3.Dot(d, d);
        return Fine ? ArcFactors.At(x) : ArcFactors.Plain(x);
    }

    private Vector3 Displacement(int j)
    {
        Vector3 t = Tangents[j - 1], u = Tangents[j], f = Force[j];
        var h = StepAt(span[j]);
        var chord = h * Factors(t, u).Chord * (t + u);
        return Fine ? chord + (h * h * h / 24 * ((2 * f) - (Vector3.Dot(f, t) * t) - (Vector3.Dot(f, u) * u))) : chord;
    }

    /// <summary>Points from the tangents, span by span; what is missing at each hold is the gap of its last segment.</summary>
    public void Place()
    {
        Points[0] = frame.Points[0];
        for (var j = 1; j < nodes; j++)
        {
            var to = Points[j - 1] + Displacement(j);
            Points[j] = HoldsPoint(j) ? frame.Points[Array.IndexOf(offset, j)] : to;
            gap[j] = Points[j] - to;
        }
    }

    /// <summary>Which nodes may touch what: all within reach.</summary>
    public void FindTouches(double reach, double mu)
    {
        touches.Clear();
        for (var i = 1; i + 1 < nodes; i++)
        {
            if (HoldsPoint(i))
                continue;
            for (var o = 0; o < obstacles.Length; o++)
            {
                var g = obstacles[o](Points[i]);
                if (g < reach)
                    touches.Add(new() { Node = i, Obstacle = o, Slack = Math.Max(g, 1e-3), Push = mu / Math.Max(g, 1e-3) });
            }
        }

        Measure();
    }

    public void Measure()
    {
        const double E = 1e-6;
        foreach (var c in touches)
        {
            var d = obstacles[c.Obstacle];
            var p = Points[c.Node];
            c.Gap = d(p);
            c.Normal = c.Gap > 0.5 ? default : (0.5 / E) * new Vector3(
                d(p + new Vector3(E, 0, 0)) - d(p - new Vector3(E, 0, 0)),
                d(p + new Vector3(0, E, 0)) - d(p - new Vector3(0, E, 0)),
                d(p + new Vector3(0, 0, E)) - d(p - new Vector3(0, 0, E)));
        }
    }

    public void Assemble(double mu)
    {
        Array.Clear(diagonal);
        Array.Clear(off);
        Array.Clear(columns);
        Array.Clear(right);
        Array.Clear(corner);
        Array.Clear(cornerGradient);
        Array.Clear(gradientT);
        Array.Clear(gradientR);
        for (var i = 0; i < nodes; i++)
            (b1[i], b2[i]) = ElasticSystem.Across(Tangents[i]);
        for (var j = 1; j < nodes; j++)
            AddSegment(j);
        foreach (var c in touches)
            AddTouch(c, mu);
        for (var k = 0; k < spans && groups is not null && totals.Length > 0; k++)
        {
            var s = spans + groups[k];
            corner[(k * border) + s] = corner[(s * border) + k] = 1;
            cornerGradient[k] += Balance[groups[k]];
            cornerGradient[s] += Lengths[k];
        }

        for (var s = 0; s < totals.Length; s++)
            cornerGradient[spans + s] -= totals[s];
        for (var i = 0; i < nodes; i++)
            Close(i);
    }

    private void AddSegment(int j)
    {
        int i = j - 1, k = span[j];
        Vector3 t = Tangents[i], u = Tangents[j], f = Force[j], q = frame.Load;
        double h = StepAt(k), a = Vector3.Dot(f, t), b = Vector3.Dot(f, u);
        var w = Factors(t, u);
        var fine = Fine ? 1 : 0;
        double k3 = fine * h * h * h / 24, kq = fine * h * h / 12;
        var g1 = (w.Square1 / (2 * h)) - (h * w.Chord1 * (a + b));
        var g2 = (w.Square2 / (2 * h)) - (h * w.Chord2 * (a + b));
        double hp = h * w.Chord, hp1 = h * w.Chord1;
        var sum = t + u;
        gradientT[i] += (-g1 * u) + (((k3 * a) - hp) * f) - (kq * q);
        gradientT[j] += (-g1 * t) + (((k3 * b) - hp) * f) + (kq * q);
        gradientR[i] -= f + (0.5 * h * q);
        gradientR[j] += f - (0.5 * h * q);
        double u1 = Vector3.Dot(u, b1[i]), u2 = Vector3.Dot(u, b2[i]), f1 = Vector3.Dot(f, b1[i]), f2 = Vector3.Dot(f, b2[i]);
        double t1 = Vector3.Dot(t, b1[j]), t2 = Vector3.Dot(t, b2[j]), e1 = Vector3.Dot(f, b1[j]), e2 = Vector3.Dot(f, b2[j]);
        Square(i, u1, u2, f1, f2, g2, hp1, k3);
        Square(j, t1, t2, e1, e2, g2, hp1, k3);
        var o = off.AsSpan(i * Size * Next, Size * Next);
        o[0] = (-g1 * Vector3.Dot(b1[i], b1[j])) + (g2 * u1 * t1) + (hp1 * ((u1 * e1) + (f1 * t1)));
        o[1] = (-g1 * Vector3.Dot(b1[i], b2[j])) + (g2 * u1 * t2) + (hp1 * ((u1 * e2) + (f1 * t2)));
        o[Next] = (-g1 * Vector3.Dot(b2[i], b1[j])) + (g2 * u2 * t1) + (hp1 * ((u2 * e1) + (f2 * t1)));
        o[Next + 1] = (-g1 * Vector3.Dot(b2[i], b2[j])) + (g2 * u2 * t2) + (hp1 * ((u2 * e2) + (f2 * t2)));
        Row(o, 2, (hp1 * u1 * sum) + (((k3 * a) - hp) * b1[i]) + (k3 * f1 * t));
        Row(o, Next + 2, (hp1 * u2 * sum) + (((k3 * a) - hp) * b2[i]) + (k3 * f2 * t));
        for (var c = 0; c < 3; c++)
            o[((5 + c) * Next) + 2 + c] = -1;
        var d = diagonal.AsSpan(j * Size * Size, Size * Size);
        Row(d, 2, (hp1 * t1 * sum) + (((k3 * b) - hp) * b1[j]) + (k3 * e1 * u));
        Row(d, Size + 2, (hp1 * t2 * sum) + (((k3 * b) - hp) * b2[j]) + (k3 * e2 * u));
        Row(d, (2 * Size) + 2, k3 * ((t.X * t) + (u.X * u) - new Vector3(2, 0, 0)));
        Row(d, (3 * Size) + 2, k3 * ((t.Y * t) + (u.Y * u) - new Vector3(0, 2, 0)));
        Row(d, (4 * Size) + 2, k3 * ((t.Z * t) + (u.Z * u) - new Vector3(0, 0, 2)));
        for (var c = 0; c < 3; c++)
            d[((2 + c) * Size) + 5 + c] = 1;
        var closing = Points[j] - Points[i] - (hp * sum) - (k3 * ((2 * f) - (a * t) - (b * u)));
        Row(right.AsSpan(j * Size, Size), 2, closing);
        if (groups is null)
            return;
        // Span length: d/dh over the number of segments.
        double one = 1.0 / segments[k], k2 = fine * h * h / 8, kh = fine * h / 6, ff = Vector3.Dot(f, f), square = (2 * ff) - (a * a) - (b * b);
        cornerGradient[k] += one * ((-w.Square / (2 * h * h)) - (w.Chord * (a + b)) - (0.5 * k2 * square) + (kh * Vector3.Dot(q, u - t)) - (0.5 * Vector3.Dot(q, Points[i] + Points[j])));
        corner[(k * border) + k] += one * one * ((w.Square / (h * h * h)) - (fine * h / 8 * square) + (fine * Vector3.Dot(q, u - t) / 6));
        var g1h = (-w.Square1 / (2 * h * h)) - (w.Chord1 * (a + b));
        var th = (-g1h * u) + (((k2 * a) - w.Chord) * f) - (kh * q);
        var uh = (-g1h * t) + (((k2 * b) - w.Chord) * f) + (kh * q);
        Column(i, 0, k) += one * Vector3.Dot(th, b1[i]);
        Column(i, 1, k) += one * Vector3.Dot(th, b2[i]);
        Column(j, 0, k) += one * Vector3.Dot(uh, b1[j]);
        Column(j, 1, k) += one * Vector3.Dot(uh, b2[j]);
        var mixed = one * ((-w.Chord * sum) - (k2 * ((2 * f) - (a * t) - (b * u))));
        var half = -0.5 * one * q;
        for (var c = 0; c < 3; c++)
        {
            Column(j, 2 + c, k) += Part(mixed, c);
            Column(i, 5 + c, k) += Part(half, c);
            Column(j, 5 + c, k) += Part(half, c);
        }
    }

    private void AddTouch(Touch c, double mu)
    {
        var n = c.Normal;
        var stiff = c.Push / c.Slack;
        // What the multiplier will be if the point does not move.
        var push = (mu / c.Slack) - (stiff * (c.Gap - c.Slack));
        gradientR[c.Node] -= push * n;
        var d = diagonal.AsSpan(c.Node * Size * Size, Size * Size);
        for (var p = 0; p < 3; p++)
        {
            for (var q = 0; q < 3; q++)
                d[((5 + p) * Size) + 5 + q] += stiff * Part(n, p) * Part(n, q);
        }

        if (c.Push > 1e-2)
            AddBend(c, d);
    }

    /// <summary>-lambda d'': where the obstacle's surface is round the point can slip off it.</summary>
    private void AddBend(Touch c, Span<double> block)
    {
        const double E = 2e-4;
        var d = obstacles[c.Obstacle];
        var p = Points[c.Node];
        Span<Vector3> axis = [new(E, 0, 0), new(0, E, 0), new(0, 0, E)];
        Span<double> bend = stackalloc double[9];
        var size = 0.0;
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var value = i == j
                    ? (d(p + axis[i]) - (2 * c.Gap) + d(p - axis[i])) / (E * E)
                    : (d(p + axis[i] + axis[j]) - d(p + axis[i] - axis[j]) - d(p - axis[i] + axis[j]) + d(p - axis[i] - axis[j])) / (4 * E * E);
                bend[(3 * i) + j] = bend[(3 * j) + i] = value;
                size += (i == j ? 1 : 2) * value * value;
            }
        }

        // A kink of the distance would look like any bend: the offset surface has no radius below the distance kept.
        var part = Math.Min(1, 1.5 * keepScale / Math.Max(Math.Sqrt(size), 1e-12));
        for (var i = 0; i < 9; i++)
            block[((5 + (i / 3)) * Size) + 5 + (i % 3)] -= c.Push * part * bend[i];
    }

    private void Square(int node, double u1, double u2, double f1, double f2, double g2, double hp1, double k3)
    {
        var d = diagonal.AsSpan(node * Size * Size, Size * Size);
        d[0] += (g2 * u1 * u1) + (2 * hp1 * u1 * f1) + (k3 * f1 * f1);
        d[1] += (g2 * u1 * u2) + (hp1 * ((u1 * f2) + (u2 * f1))) + (k3 * f1 * f2);
        d[Size + 1] += (g2 * u2 * u2) + (2 * hp1 * u2 * f2) + (k3 * f2 * f2);
    }

    /// <summary>Curvature of the sphere, symmetry, right-hand side, and what is held.</summary>
    private void Close(int i)
    {
        var d = diagonal.AsSpan(i * Size * Size, Size * Size);
        var curve = Vector3.Dot(Tangents[i], gradientT[i]);
        d[0] -= curve;
        d[Size + 1] -= curve;
        for (var r = 0; r < Size; r++)
        {
            for (var c = r + 1; c < Size; c++)
                d[(c * Size) + r] = d[(r * Size) + c];
        }

        var g = right.AsSpan(i * Size, Size);
        g[0] = Vector3.Dot(gradientT[i], b1[i]);
        g[1] = Vector3.Dot(gradientT[i], b2[i]);
        Row(g, 5, gradientR[i]);
        if (HoldsTangent(i))
            Hold(i, 0, 2);
        if (HoldsPoint(i))
            Hold(i, 5, 8);
        if (i == 0)
            Hold(i, 2, 5);
    }

    private void Hold(int node, int from, int to)
    {
        var d = diagonal.AsSpan(node * Size * Size, Size * Size);
        for (var r = from; r < to; r++)
        {
            for (var c = 0; c < Size; c++)
                d[(r * Size) + c] = d[(c * Size) + r] = 0;
            d[(r * Size) + r] = 1;
            right[(node * Size) + r] = 0;
            for (var c = 0; c < Next; c++)
                off[(node * Size * Next) + (r * Next) + c] = 0;
            for (var c = 0; c < border; c++)
                columns[(node * Size * border) + (r * border) + c] = 0;
            for (var q = 0; q < Size && node > 0 && r < Next; q++)
                off[((node - 1) * Size * Next) + (q * Next) + r] = 0;
        }
    }

    private ref double Column(int node, int row, int c) => ref columns[(node * Size * border) + (row * border) + c];

    private static double Part(Vector3 v, int c) => c == 0 ? v.X : c == 1 ? v.Y : v.Z;

    private static void Row(Span<double> to, int at, Vector3 v) => (to[at], to[at + 1], to[at + 2]) = (v.X, v.Y, v.Z);

    /// <summary>Factors with a shift on the tangents' diagonal and finds the step; the count of negative eigenvalues, -1 where singular.</summary>
    public int Factor(double shift)
    {
        int width = Next + border + 1, negatives = 0;
        Array.Copy(corner, schur, corner.Length);
        for (var c = 0; c < border; c++)
            borderStep[c] = -cornerGradient[c];
        for (var k = 0; k < spans && groups is not null; k++)
            schur[(k * border) + k] += shift;
        Span<double> carried = stackalloc double[Next * Next];
        Span<double> carriedRight = stackalloc double[Next];
        var carriedColumns = new double[Next * border];
        carried.Clear();
        carriedRight.Clear();
        for (var i = 0; i < nodes; i++)
        {
            Array.Copy(diagonal, i * Size * Size, small, 0, Size * Size);
            var s = HoldsTangent(i) ? 0 : shift * StepAt(span[i]);
            small[0] += s;
            small[Size + 1] += s;
            for (var r = 0; r < Next; r++)
            {
                for (var c = 0; c < Next; c++)
                    small[(r * Size) + c] -= carried[(r * Next) + c];
            }

            smallFactor.Run(small, Size);
            if (smallFactor.IsSingular)
                return -1;
            negatives += smallFactor.Negatives;
            var y = solved.AsSpan(i * Size * width, Size * width);
            for (var c = 0; c < width; c++)
            {
                for (var r = 0; r < Size; r++)
                {
                    rhs[r] = c < Next ? off[(i * Size * Next) + (r * Next) + c]
                        : c < Next + border ? columns[(i * Size * border) + (r * border) + c - Next] - (r < Next ? carriedColumns[(r * border) + c - Next] : 0)
                        : right[(i * Size) + r] - (r < Next ? carriedRight[r] : 0);
                }

                smallFactor.Solve(rhs);
                for (var r = 0; r < Size; r++)
                    y[(r * width) + c] = rhs[r];
            }

            // Border first: it needs this node's own columns, with what was carried to them.
            for (var c = 0; c < border; c++)
            {
                for (var r = 0; r < Size; r++)
                {
                    var own = columns[(i * Size * border) + (r * border) + c] - (r < Next ? carriedColumns[(r * border) + c] : 0);
                    if (own == 0)
                        continue;
                    for (var e = 0; e < border; e++)
                        schur[(c * border) + e] -= own * y[(r * width) + Next + e];
                    borderStep[c] += own * y[(r * width) + Next + border];
                }
            }

            carried.Clear();
            carriedRight.Clear();
            Array.Clear(carriedColumns);
            for (var r = 0; r < Size; r++)
            {
                for (var c = 0; c < Next; c++)
                {
                    var o = off[(i * Size * Next) + (r * Next) + c];
                    if (o == 0)
                        continue;
                    for (var e = 0; e < Next; e++)
                        carried[(c * Next) + e] += o * y[(r * width) + e];
                    for (var e = 0; e < border; e++)
                        carriedColumns[(c * border) + e] += o * y[(r * width) + Next + e];
                    carriedRight[c] += o * y[(r * width) + Next + border];
                }
            }
        }

        if (border > 0)
        {
            borderFactor.Run(schur, border);
            if (borderFactor.IsSingular)
                return -1;
            negatives += borderFactor.Negatives;
            borderFactor.Solve(borderStep);
        }

        for (var i = nodes - 1; i >= 0; i--)
        {
            var y = solved.AsSpan(i * Size * width, Size * width);
            for (var r = 0; r < Size; r++)
            {
                var x = -y[(r * width) + Next + border];
                for (var c = 0; c < border; c++)
                    x -= y[(r * width) + Next + c] * borderStep[c];
                for (var c = 0; c < Next && i + 1 < nodes; c++)
                    x -= y[(r * width) + c] * step[((i + 1) * Size) + c];
                step[(i * Size) + r] = x;
            }
        }

        return negatives;
    }

    public double LargestTurn()
    {
        var most = 0.0;
        for (var i = 0; i < nodes; i++)
            most = Math.Max(most, (step[i * Size] * step[i * Size]) + (step[(i * Size) + 1] * step[(i * Size) + 1]));
        return Math.Sqrt(most);
    }

    public double LargestStretch()
    {
        var most = 0.0;
        for (var k = 0; k < spans && groups is not null; k++)
            most = Math.Max(most, Math.Abs(borderStep[k]) / Lengths[k]);
        return most;
    }

    /// <summary>Steps of slacks and pushes, and the longest parts of them that keep both above zero.</summary>
    public (double Slack, double Push) Bounds(double mu)
    {
        const double Keep = 0.995;
        double slack = 1, push = 1;
        foreach (var c in touches)
        {
            var i = c.Node * Size;
            c.SlackStep = Vector3.Dot(c.Normal, new(step[i + 5], step[i + 6], step[i + 7])) + c.Gap - c.Slack;
            c.PushStep = (mu / c.Slack) - (c.Push / c.Slack * c.SlackStep) - c.Push;
            if (c.SlackStep < 0)
                slack = Math.Min(slack, -Keep * c.Slack / c.SlackStep);
            if (c.PushStep < 0)
                push = Math.Min(push, -Keep * c.Push / c.PushStep);
        }

        return (slack, push);
    }

    public double Error(double mu) => touches.Count == 0 ? 0 : touches.Max(c => Math.Max(Math.Abs(c.Gap - c.Slack), Math.Abs((c.Slack * c.Push) - mu)));

    public double LargestPush() => touches.Count == 0 ? 0 : touches.Max(c => Math.Max(c.Push, c.Push + c.PushStep));

    public double LargestForce()
    {
        var most = 0.0;
        for (var k = 0; k < spans; k++)
        {
            var i = offset[k + 1] * Size;
            most = Math.Max(most, (Force[offset[k + 1]] + new Vector3(step[i + 2], step[i + 3], step[i + 4])).Size);
        }

        return most;
    }

    public void Keep()
    {
        Tangents.CopyTo(old, 0);
        Lengths.CopyTo(oldLengths, 0);
        foreach (var c in touches)
            c.OldSlack = c.Slack;
    }

    public void GoBack()
    {
        old.CopyTo(Tangents, 0);
        oldLengths.CopyTo(Lengths, 0);
        foreach (var c in touches)
            c.Slack = c.OldSlack;
    }

    /// <summary>Moves tangents, lengths and slacks; points follow.</summary>
    public void Advance(double part)
    {
        for (var i = 0; i < nodes; i++)
        {
            double v = part * step[i * Size], w = part * step[(i * Size) + 1];
            if (v != 0 || w != 0)
                Tangents[i] = (Tangents[i] + (v * b1[i]) + (w * b2[i])).Unit();
        }

        for (var k = 0; k < spans && groups is not null; k++)
            Lengths[k] += part * borderStep[k];
        Place();
        Measure();
        foreach (var c in touches)
        {
            // A slack below a gap that is there already would only be in the way.
            c.Slack = Math.Max(c.OldSlack + (part * c.SlackStep), c.Gap);
        }
    }

    public void AdvanceForces(double part, double mu)
    {
        for (var i = 1; i < nodes; i++)
            Force[i] += new Vector3(step[(i * Size) + 2], step[(i * Size) + 3], step[(i * Size) + 4]);
        for (var s = 0; s < totals.Length; s++)
            Balance[s] += borderStep[spans + s];
        foreach (var c in touches)
        {
            // Within a wide band of the central path, or steps grow short.
            c.Push = Math.Clamp(c.Push + (part * c.PushStep), 1e-6 * mu / c.Slack, 1e6 * mu / c.Slack);
        }

        if (!Fine)
            return;
        Place();
        Measure();
    }

    public (double Energy, double Gap, double Barrier) Merit()
    {
        double energy = 0, missing = 0, barrier = 0;
        for (var j = 1; j < nodes; j++)
        {
            var h = StepAt(span[j]);
            if (!(h > 0))
                return (double.NaN, double.NaN, double.NaN);
            var d = Tangents[j] - Tangents[j - 1];
            var x = 0.5 * Vector3.Dot(d, d);
            if (!(x < 1.85))
                return (double.NaN, double.NaN, double.NaN);
            energy += (x / h) - (0.5 * h * Vector3.Dot(frame.Load, Points[j] + Points[j - 1]));
            missing += gap[j].Size;
        }

        for (var s = 0; s < totals.Length; s++)
        {
            var over = -totals[s];
            for (var k = 0; k < spans; k++)
                over += groups![k] == s ? Lengths[k] : 0;
            missing += Math.Abs(over);
        }

        foreach (var c in touches)
        {
            missing += Math.Abs(c.Gap - c.Slack);
            barrier -= Math.Log(c.Slack);
        }

        return (energy, missing, barrier);
    }
}
