using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Curves;

/// <summary>The discrete curve while it is being solved: tangents, one force per span, span lengths. Stiffness 1.</summary>
/// <remarks>
/// Unit tangents t_i on the sphere, arc step h, force F (held constant along the segment, load taken at its middle);
/// with x = 1 - t_i.t_j, a = F.t_i, b = F.t_j:
///   A = theta^2/(2h) - h phi (a + b) - h^3/48 (2 F^2 - a^2 - b^2) + h^2/12 q.(t_j - t_i),   phi = tan(theta/2)/theta
/// (the plain scheme keeps (1 - c)/h - h/2 (a + b) only). Stationary in t, F, span lengths:
///   sum A + sum F.(chord of span) - q.(end of span) length + H (sum of lengths - total).
/// The matrix is block-tridiagonal (2 x 2) within a span, with a border of one column per F component, span length, H, and
/// two per hold that may turn. Derived in docs/theory/route.md.
/// </remarks>
internal sealed class ElasticSystem
{
    // A segment that turns more than this is outside the range of the element.
    private static readonly double MostBend = 1 - Math.Cos(2.6);
    // Seven at most; eight fill a register.
    private const int MostColumns = 8;
    private readonly int nodes, slots, border, sums;
    private readonly int[] holdColumn, width, comes, ready;
    private readonly ElasticScratch scratch;

    /// <param name="groups">
    /// Group of each span whose lengths add up to one of the totals; null: lengths are fixed. No totals: any length may be drawn in.
    /// </param>
    /// <param name="scratch">Room for the matrix; what was assembled last by any system that shares it is what is factored.</param>
    public ElasticSystem(ElasticFrame frame, int[] segments, int[]? groups, double[] totals, ElasticScratch scratch)
    {
        Frame = frame;
        Segments = segments;
        Groups = groups;
        Totals = totals;
        this.scratch = scratch;
        Balance = new double[totals.Length];
        Spans = segments.Length;
        Offset = new int[Spans + 1];
        for (var k = 0; k < Spans; k++)
            Offset[k + 1] = Offset[k] + segments[k];
        nodes = Offset[Spans] + 1;
        slots = nodes + Spans - 1;
        Tangents = new Vector3[nodes];
        Force = new Vector3[Spans];
        Lengths = new double[Spans];
        ForceColumn = new int[Spans];
        LengthColumn = new int[Spans];
        holdColumn = new int[Spans + 1];
        width = new int[Spans];
        for (var k = 0; k < Spans; k++)
        {
            ForceColumn[k] = frame.IsClosed(k) ? border : -1;
            border += frame.IsClosed(k) ? 3 : 0;
        }

        for (var k = 0; k < Spans; k++)
            LengthColumn[k] = groups is not null ? border++ : -1;
        for (var k = 0; k <= Spans; k++)
        {
            holdColumn[k] = frame.Directions[k] is null ? border : -1;
            border += frame.Directions[k] is null ? 2 : 0;
        }

        sums = border;
        border += totals.Length;
        Wanted = (3 * frame.Closures) + totals.Length;
        for (var k = 0; k < Spans; k++)
            width[k] = (ForceColumn[k] >= 0 ? 3 : 0) + (LengthColumn[k] >= 0 ? 1 : 0) + (holdColumn[k] >= 0 ? 2 : 0) + 1;
        Fixed = new bool[nodes];
        for (var k = 0; k <= Spans; k++)
            Fixed[Offset[k]] = frame.Directions[k] is not null;
        (comes, ready) = Stages();
        scratch.Fit(nodes, slots, MostColumns, border, Spans);
    }

    public ElasticFrame Frame { get; }
    public int[] Segments { get; }
    public int[] Offset { get; }
    public int Spans { get; }
    public int[]? Groups { get; }
    public double[] Totals { get; }
    public Vector3[] Tangents { get; }

    /// <summary>Nodes whose tangent is held.</summary>
    public bool[] Fixed { get; }
    public Vector3[] Force { get; }
    public double[] Lengths { get; }

    /// <summary>H of each group: 1/2 curvature^2 + F.t where the curve slides.</summary>
    public double[] Balance { get; }
    public int[] ForceColumn { get; }
    public int[] LengthColumn { get; }

    /// <summary>Keeps the curve as it is, for <see cref="GoBack"/>.</summary>
    public void Keep()
    {
        Tangents.CopyTo(scratch.OldTangents, 0);
        Lengths.CopyTo(scratch.OldLengths, 0);
    }

    public void GoBack()
    {
        Array.Copy(scratch.OldTangents, Tangents, nodes);
        Array.Copy(scratch.OldLengths, Lengths, Spans);
    }

    /// <summary>Negative eigenvalues of the bordered matrix at a strict minimum: one per constraint.</summary>
    public int Wanted { get; }

    /// <summary>Fourth order, or the plain scheme.</summary>
    public bool Fine { get; set; }

    public double StepAt(int span) => Lengths[span] / Segments[span];

    /// <summary>Force in the middle of a segment of a span.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector3 ForceAt(int span, int segment)
    {
        var force = Force[span] - (((segment + 0.5) * StepAt(span)) * Frame.Load);
        return Extra is null ? force : force + Extra[Offset[span] + segment];
    }

    /// <summary>What obstacles have added to the force of each segment; null: nothing touches. For reading only.</summary>
    public Vector3[]? Extra { get; set; }

    /// <summary>What makes the border's columns comparable: forces of a beam of the span's length go with its cube, turns with one over it.</summary>
    private void Weigh()
    {
        var s = scratch.Weight;
        for (var k = 0; k < Spans; k++)
        {
            double root = Math.Sqrt(Math.Max(Lengths[k], 1e-3)), cube = root * root * root;
            if (ForceColumn[k] is >= 0 and var f)
                s[f] = s[f + 1] = s[f + 2] = 1 / cube;
            if (LengthColumn[k] is >= 0 and var l)
                s[l] = cube;
            if (SumColumn(k) is >= 0 and var c)
                s[c] = 1 / cube;
            for (var end = k; end <= k + 1; end++)
            {
                if (holdColumn[end] is >= 0 and var a)
                    s[a] = s[a + 1] = root;
            }
        }
    }

    /// <summary>The border is a chain: at which span each column comes in, and after which it is complete.</summary>
    private (int[] First, int[] Last) Stages()
    {
        int[] first = new int[border], last = new int[border];
        Array.Fill(first, Spans);
        void At(int column, int count, int span)
        {
            for (var c = column; column >= 0 && c < column + count; c++)
                (first[c], last[c]) = (Math.Min(first[c], span), Math.Max(last[c], span));
        }

        for (var k = 0; k < Spans; k++)
        {
            At(ForceColumn[k], 3, k);
            At(LengthColumn[k], 1, k);
            At(holdColumn[k], 2, k);
            At(holdColumn[k + 1], 2, k);
            At(SumColumn(k), 1, k);
        }

        return (first, last);
    }

    private int SumColumn(int span) => Totals.Length > 0 && Groups is not null ? sums + Groups[span] : -1;

    private ArcFactors Factors(Vector3 t, Vector3 u)
    {
        var d = u - t;
        var x = 0.5 * Vector3.Dot(d, d);
        return Fine ? ArcFactors.At(x) : ArcFactors.Plain(x);
    }

    /// <summary>Derivatives of the action: the matrix and its right-hand side, into the scratch.</summary>
    /// <remarks>
    /// Each span has a slot for every one of its nodes, both ends included, so that spans can be eliminated one by one; what
    /// two spans have at their common hold is added up in the border.
    /// </remarks>
    public void Assemble()
    {
        var s = scratch;
        Array.Clear(s.Diagonal, 0, 4 * slots);
        Array.Clear(s.Columns, 0, 2 * slots * MostColumns);
        Array.Clear(s.Corner, 0, border * border);
        Array.Clear(s.CornerGradient, 0, border);
        Array.Clear(s.Gradient, 0, slots);
        for (var i = 0; i < nodes; i++)
            (s.B1[i], s.B2[i]) = Across(Tangents[i]);
        for (var k = 0; k < Spans; k++)
        {
            var plainly = !Fine && ForceColumn[k] >= 0 && LengthColumn[k] < 0;
            if (plainly)
                AddPlainly(k);
            for (var i = 0; i < Segments[k] && !plainly; i++)
                AddSegment(k, i);
            if (ForceColumn[k] is >= 0 and var f)
                AddTo(s.CornerGradient, f, Frame.Chord(k));
            if (LengthColumn[k] is >= 0 and var l)
            {
                s.CornerGradient[l] -= Vector3.Dot(Frame.Load, Frame.Points[k + 1]);
                if (SumColumn(k) is >= 0 and var c)
                {
                    s.Corner[(l * border) + c] = s.Corner[(c * border) + l] = 1;
                    s.CornerGradient[l] += Balance[c - sums];
                    s.CornerGradient[c] += Lengths[k];
                }
            }

            Close(k);
        }

        for (var c = 0; c < Totals.Length; c++)
            s.CornerGradient[sums + c] -= Totals[c];
    }

    private int Slot(int span) => Offset[span] + span;

    /// <summary>The sphere's own curvature and the right-hand side of each slot; the slots at free holds go to the border.</summary>
    private void Close(int k)
    {
        var s = scratch;
        int slot = Slot(k), w = width[k];
        for (var i = 0; i <= Segments[k]; i++, slot++)
        {
            var node = Offset[k] + i;
            var g = s.Gradient[slot];
            var curve = Vector3.Dot(Tangents[node], g);
            s.Diagonal[4 * slot] -= curve;
            s.Diagonal[(4 * slot) + 3] -= curve;
            double g1 = Vector3.Dot(g, s.B1[node]), g2 = Vector3.Dot(g, s.B2[node]);
            int row = 2 * slot * MostColumns, next = row + MostColumns;
            s.Columns[row + w - 1] = g1;
            s.Columns[next + w - 1] = g2;
            if ((i > 0 && i < Segments[k]) || holdColumn[i == 0 ? k : k + 1] is not (>= 0 and var a))
                continue;
            s.Corner[(a * border) + a] += s.Diagonal[4 * slot];
            s.Corner[(a * border) + a + 1] += s.Diagonal[(4 * slot) + 1];
            s.Corner[((a + 1) * border) + a] += s.Diagonal[(4 * slot) + 2];
            s.Corner[((a + 1) * border) + a + 1] += s.Diagonal[(4 * slot) + 3];
            s.CornerGradient[a] += g1;
            s.CornerGradient[a + 1] += g2;
            var own = 0;
            if (ForceColumn[k] is >= 0 and var f)
            {
                for (var c = 0; c < 3; c++, own++)
                    Both(a, f + c, s.Columns[row + own], s.Columns[next + own]);
            }

            if (LengthColumn[k] is >= 0 and var l)
                Both(a, l, s.Columns[row + own], s.Columns[next + own]);
        }
    }

    private void Both(int a, int c, double first, double second)
    {
        var corner = scratch.Corner;
        corner[(a * border) + c] += first;
        corner[(c * border) + a] += first;
        corner[((a + 1) * border) + c] += second;
        corner[(c * border) + a + 1] += second;
    }

    /// <summary>The plain scheme on a closed span of given length: the same as segment by segment, less all that is zero there.</summary>
    private void AddPlainly(int k)
    {
        var s = scratch;
        int offset = Offset[k], slot = Slot(k), count = Segments[k];
        ReadOnlySpan<Vector3> tangents = Tangents.AsSpan(offset, count + 1), first = s.B1.AsSpan(offset, count + 1), second = s.B2.AsSpan(offset, count + 1);
        double h = StepAt(k), g1 = 2 / (2 * h), hp = 0.5 * h;
        var gap = default(Vector3);
        for (var i = 0; i < count; i++)
        {
            var m = slot + i;
            Vector3 t = tangents[i], u = tangents[i + 1], p1 = first[i], p2 = second[i], o1 = first[i + 1], o2 = second[i + 1];
            var pull = hp * ForceAt(k, i);
            s.Gradient[m] += (-g1 * u) - pull;
            s.Gradient[m + 1] = (-g1 * t) - pull;
            var off = s.Off.AsSpan(4 * m, 4);
            off[0] = -g1 * Vector3.Dot(p1, o1);
            off[1] = -g1 * Vector3.Dot(p1, o2);
            off[2] = -g1 * Vector3.Dot(p2, o1);
            off[3] = -g1 * Vector3.Dot(p2, o2);
            var rows = s.Columns.AsSpan(2 * m * MostColumns, 4 * MostColumns);
            rows[0] -= hp * p1.X;
            rows[1] -= hp * p1.Y;
            rows[2] -= hp * p1.Z;
            rows[MostColumns] -= hp * p2.X;
            rows[MostColumns + 1] -= hp * p2.Y;
            rows[MostColumns + 2] -= hp * p2.Z;
            rows[2 * MostColumns] = -hp * o1.X;
            rows[(2 * MostColumns) + 1] = -hp * o1.Y;
            rows[(2 * MostColumns) + 2] = -hp * o1.Z;
            rows[3 * MostColumns] = -hp * o2.X;
            rows[(3 * MostColumns) + 1] = -hp * o2.Y;
            rows[(3 * MostColumns) + 2] = -hp * o2.Z;
            gap -= hp * (t + u);
        }

        AddTo(s.CornerGradient, ForceColumn[k], gap);
    }

    /// <summary>One segment's part of gradient and matrix.</summary>
    /// <remarks>Written out by components: the compiler does not inline this many vector operations, and this is where the time goes.</remarks>
    private void AddSegment(int k, int segment)
    {
        var s = scratch;
        int i = Offset[k] + segment, j = i + 1, m = Slot(k) + segment;
        var (tx, ty, tz) = Tangents[i];
        var (ux, uy, uz) = Tangents[j];
        var (p1x, p1y, p1z) = s.B1[i];
        var (p2x, p2y, p2z) = s.B2[i];
        var (o1x, o1y, o1z) = s.B1[j];
        var (o2x, o2y, o2z) = s.B2[j];
        var (qx, qy, qz) = Frame.Load;
        var h = StepAt(k);
        var (fx, fy, fz) = ForceAt(k, segment);
        double a = (fx * tx) + (fy * ty) + (fz * tz), b = (fx * ux) + (fy * uy) + (fz * uz);
        double dx = ux - tx, dy = uy - ty, dz = uz - tz, x = 0.5 * ((dx * dx) + (dy * dy) + (dz * dz));
        var w = Fine ? ArcFactors.At(x) : ArcFactors.Plain(x);
        var fine = Fine ? 1 : 0;
        double k3 = fine * h * h * h / 24, kq = fine * h * h / 12;
        var g1 = (w.Square1 / (2 * h)) - (h * w.Chord1 * (a + b));
        var g2 = (w.Square2 / (2 * h)) - (h * w.Chord2 * (a + b));
        double hp = h * w.Chord, hp1 = h * w.Chord1, ha = (k3 * a) - hp, hb = (k3 * b) - hp;
        s.Gradient[m] += new Vector3((-g1 * ux) + (ha * fx) - (kq * qx), (-g1 * uy) + (ha * fy) - (kq * qy), (-g1 * uz) + (ha * fz) - (kq * qz));
        s.Gradient[m + 1] = new Vector3((-g1 * tx) + (hb * fx) + (kq * qx), (-g1 * ty) + (hb * fy) + (kq * qy), (-g1 * tz) + (hb * fz) + (kq * qz));

        double u1 = (ux * p1x) + (uy * p1y) + (uz * p1z), u2 = (ux * p2x) + (uy * p2y) + (uz * p2z);
        double f1 = (fx * p1x) + (fy * p1y) + (fz * p1z), f2 = (fx * p2x) + (fy * p2y) + (fz * p2z);
        double t1 = (tx * o1x) + (ty * o1y) + (tz * o1z), t2 = (tx * o2x) + (ty * o2y) + (tz * o2z);
        double e1 = (fx * o1x) + (fy * o1y) + (fz * o1z), e2 = (fx * o2x) + (fy * o2y) + (fz * o2z);
        AddSquare(s.Diagonal, 4 * m, u1, u2, f1, f2, g2, hp1, k3);
        AddSquare(s.Diagonal, 4 * (m + 1), t1, t2, e1, e2, g2, hp1, k3);
        var off = s.Off.AsSpan(4 * m, 4);
        off[0] = (-g1 * ((p1x * o1x) + (p1y * o1y) + (p1z * o1z))) + (g2 * u1 * t1) + (hp1 * ((u1 * e1) + (f1 * t1)));
        off[1] = (-g1 * ((p1x * o2x) + (p1y * o2y) + (p1z * o2z))) + (g2 * u1 * t2) + (hp1 * ((u1 * e2) + (f1 * t2)));
        off[2] = (-g1 * ((p2x * o1x) + (p2y * o1y) + (p2z * o1z))) + (g2 * u2 * t1) + (hp1 * ((u2 * e1) + (f2 * t1)));
        off[3] = (-g1 * ((p2x * o2x) + (p2y * o2y) + (p2z * o2z))) + (g2 * u2 * t2) + (hp1 * ((u2 * e2) + (f2 * t2)));

        // d2A/dt dF: each row is hp1 (u.b) (t + u) + k3 (f.b) t + (k3 a - hp) b, over the components of F.
        double sx = tx + ux, sy = ty + uy, sz = tz + uz;
        var rows = s.Columns.AsSpan(2 * m * MostColumns, 4 * MostColumns);
        var own = 0;
        if (ForceColumn[k] is >= 0 and var c)
        {
            double v = hp1 * u1, n1 = k3 * f1;
            rows[0] += (v * sx) + (n1 * tx) + (ha * p1x);
            rows[1] += (v * sy) + (n1 * ty) + (ha * p1y);
            rows[2] += (v * sz) + (n1 * tz) + (ha * p1z);
            (v, n1) = (hp1 * u2, k3 * f2);
            rows[MostColumns] += (v * sx) + (n1 * tx) + (ha * p2x);
            rows[MostColumns + 1] += (v * sy) + (n1 * ty) + (ha * p2y);
            rows[MostColumns + 2] += (v * sz) + (n1 * tz) + (ha * p2z);
            (v, n1) = (hp1 * t1, k3 * e1);
            rows[2 * MostColumns] = (v * sx) + (n1 * ux) + (hb * o1x);
            rows[(2 * MostColumns) + 1] = (v * sy) + (n1 * uy) + (hb * o1y);
            rows[(2 * MostColumns) + 2] = (v * sz) + (n1 * uz) + (hb * o1z);
            (v, n1) = (hp1 * t2, k3 * e2);
            rows[3 * MostColumns] = (v * sx) + (n1 * ux) + (hb * o2x);
            rows[(3 * MostColumns) + 1] = (v * sy) + (n1 * uy) + (hb * o2y);
            rows[(3 * MostColumns) + 2] = (v * sz) + (n1 * uz) + (hb * o2z);
            var gap = s.CornerGradient.AsSpan(c, 3);
            gap[0] += (-hp * sx) - (k3 * ((2 * fx) - (a * tx) - (b * ux)));
            gap[1] += (-hp * sy) - (k3 * ((2 * fy) - (a * ty) - (b * uy)));
            gap[2] += (-hp * sz) - (k3 * ((2 * fz) - (a * tz) - (b * uz)));
            if (Fine)
            {
                double xy = k3 * ((tx * ty) + (ux * uy)), xz = k3 * ((tx * tz) + (ux * uz)), yz = k3 * ((ty * tz) + (uy * uz));
                int at = (c * border) + c, next = at + border, third = next + border;
                s.Corner[at] += k3 * ((tx * tx) + (ux * ux) - 2);
                s.Corner[at + 1] += xy;
                s.Corner[at + 2] += xz;
                s.Corner[next] += xy;
                s.Corner[next + 1] += k3 * ((ty * ty) + (uy * uy) - 2);
                s.Corner[next + 2] += yz;
                s.Corner[third] += xz;
                s.Corner[third + 1] += yz;
                s.Corner[third + 2] += k3 * ((tz * tz) + (uz * uz) - 2);
            }

            own = 3;
        }

        if (LengthColumn[k] is not (>= 0 and var l))
            return;
        // d/dh at constant force, then what the load adds through the force: dF/dh = -q (segment + 1/2).
        var n = Segments[k];
        double k2 = fine * h * h / 8, back = segment + 0.5, kh = fine * h / 6, one = 1.0 / n;
        double ff = (fx * fx) + (fy * fy) + (fz * fz), along = (qx * dx) + (qy * dy) + (qz * dz), qt = (qx * tx) + (qy * ty) + (qz * tz), qu = (qx * ux) + (qy * uy) + (qz * uz);
        double qf = (qx * fx) + (qy * fy) + (qz * fz), qq = (qx * qx) + (qy * qy) + (qz * qz), square = (2 * ff) - (a * a) - (b * b);
        // byForce . drift and mixed . drift, drift = -back q.
        double byForce = back * ((hp * (qt + qu)) + (k3 * ((2 * qf) - (a * qt) - (b * qu))));
        double mixed = back * ((w.Chord * (qt + qu)) + (k2 * ((2 * qf) - (a * qt) - (b * qu))));
        var byStep = (-w.Square / (2 * h * h)) - (w.Chord * (a + b)) - (0.5 * k2 * square) + (kh * along);
        s.CornerGradient[l] += (byStep + byForce) * one;
        var g1h = (-w.Square1 / (2 * h * h)) - (w.Chord1 * (a + b));
        double ca = (k2 * a) - w.Chord, cb = (k2 * b) - w.Chord;
        double q1 = (qx * p1x) + (qy * p1y) + (qz * p1z), q2 = (qx * p2x) + (qy * p2y) + (qz * p2z);
        double w1 = (qx * o1x) + (qy * o1y) + (qz * o1z), w2 = (qx * o2x) + (qy * o2y) + (qz * o2z);
        var qs = qt + qu;
        rows[own] += ((-g1h * u1) + (ca * f1) - (kh * q1) - (back * ((hp1 * u1 * qs) + (k3 * f1 * qt) + (ha * q1)))) * one;
        rows[MostColumns + own] += ((-g1h * u2) + (ca * f2) - (kh * q2) - (back * ((hp1 * u2 * qs) + (k3 * f2 * qt) + (ha * q2)))) * one;
        rows[(2 * MostColumns) + own] = ((-g1h * t1) + (cb * e1) + (kh * w1) - (back * ((hp1 * t1 * qs) + (k3 * e1 * qu) + (hb * w1)))) * one;
        rows[(3 * MostColumns) + own] = ((-g1h * t2) + (cb * e2) + (kh * w2) - (back * ((hp1 * t2 * qs) + (k3 * e2 * qu) + (hb * w2)))) * one;
        var stepStep = (w.Square / (h * h * h)) - (fine * h / 8 * square) + (fine * along / 6);
        s.Corner[(l * border) + l] += (stepStep + (2 * mixed) + (back * back * k3 * ((qt * qt) + (qu * qu) - (2 * qq)))) * one * one;
        if (ForceColumn[k] is >= 0 and var d)
        {
            // mixed + (d2A/dF2) drift
            double na = (k2 * a) - (back * k3 * qt), nb = (k2 * b) - (back * k3 * qu);
            var both = new Vector3(
                one * ((-w.Chord * sx) + (na * tx) + (nb * ux) - (2 * k2 * fx) + (2 * back * k3 * qx)),
                one * ((-w.Chord * sy) + (na * ty) + (nb * uy) - (2 * k2 * fy) + (2 * back * k3 * qy)),
                one * ((-w.Chord * sz) + (na * tz) + (nb * uz) - (2 * k2 * fz) + (2 * back * k3 * qz)));
            AddTo(s.Corner, (l * border) + d, both);
            s.Corner[(d * border) + l] += both.X;
            s.Corner[((d + 1) * border) + l] += both.Y;
            s.Corner[((d + 2) * border) + l] += both.Z;
        }
    }

    private static void AddTo(double[] to, int at, Vector3 v)
    {
        to[at] += v.X;
        to[at + 1] += v.Y;
        to[at + 2] += v.Z;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void AddSquare(double[] to, int at, double u1, double u2, double f1, double f2, double g2, double hp1, double k3)
    {
        to[at] += (g2 * u1 * u1) + (2 * hp1 * u1 * f1) + (k3 * f1 * f1);
        var cross = (g2 * u1 * u2) + (hp1 * ((u1 * f2) + (u2 * f1))) + (k3 * f1 * f2);
        to[at + 1] += cross;
        to[at + 2] += cross;
        to[at + 3] += (g2 * u2 * u2) + (2 * hp1 * u2 * f2) + (k3 * f2 * f2);
    }

    /// <summary>Factors the matrix with a shift of the tangents' and lengths' diagonal, and finds the Newton step.</summary>
    /// <returns>Eigenvalues below zero; -1 where the matrix is singular.</returns>
    public int Factor(double shift)
    {
        var s = scratch;
        var negatives = 0;
        Array.Copy(s.Corner, s.Schur, border * border);
        Array.Copy(s.CornerGradient, s.Right, border);
        for (var k = 0; k < Spans; k++)
        {
            if (LengthColumn[k] is >= 0 and var l)
                s.Schur[(l * border) + l] += shift;
            for (var end = k; end <= k + 1; end++)
            {
                if (holdColumn[end] is not (>= 0 and var a))
                    continue;
                s.Schur[(a * border) + a] += 0.5 * shift * StepAt(k);
                s.Schur[((a + 1) * border) + a + 1] += 0.5 * shift * StepAt(k);
            }

            var here = Eliminate(k, shift * StepAt(k));
            if (here < 0)
                return -1;
            negatives += here;
        }

        if (border > 0)
        {
            Weigh();
            s.Factor.Run(s.Schur, border, comes, ready, Spans, s.Weight);
            if (s.Factor.IsSingular)
                return -1;
            negatives += s.Factor.Negatives;
            s.Factor.Solve(s.Right);
        }

        for (var c = 0; c < border; c++)
            s.BorderStep[c] = -s.Right[c];
        Array.Clear(s.Step, 0, 2 * nodes);
        for (var k = 0; k < Spans; k++)
            Back(k);
        return negatives;
    }

    /// <summary>Which border column each of the span's own columns is: force, length, the left hold's tangent.</summary>
    private int Own(int k, Span<int> to)
    {
        var own = 0;
        if (ForceColumn[k] is >= 0 and var f)
            (to[own++], to[own++], to[own++]) = (f, f + 1, f + 2);
        if (LengthColumn[k] is >= 0 and var l)
            to[own++] = l;
        if (holdColumn[k] is >= 0 and var a)
            (to[own++], to[own++]) = (a, a + 1);
        return own;
    }

    /// <summary>Eliminates the nodes between the holds of one span from left to right; the rest is added to the border.</summary>
    private int Eliminate(int k, double shift)
    {
        var s = scratch;
        Span<int> to = stackalloc int[MostColumns];
        Span<Vector512<double>> products = stackalloc Vector512<double>[MostColumns];
        products.Clear();
        int own = Own(k, to), first = Slot(k), n = Segments[k], negatives = 0;
        double[] diagonal = s.Diagonal, off = s.Off, pivots = s.Pivots;
        var free = holdColumn[k] >= 0;
        double a = 0, b = 0, d = 0;
        Vector512<double> x1 = default, x2 = default;
        ref double columns = ref MemoryMarshal.GetArrayDataReference(s.Columns), reduced = ref MemoryMarshal.GetArrayDataReference(s.Reduced);
        for (var i = 1; i < n; i++)
        {
            var slot = first + i;
            nuint row = (nuint)(2 * slot * MostColumns), next = row + MostColumns;
            Vector512<double> y1 = Vector512.LoadUnsafe(ref columns, row), y2 = Vector512.LoadUnsafe(ref columns, next);
            double p = diagonal[4 * slot] + shift, q = diagonal[(4 * slot) + 1], r = diagonal[(4 * slot) + 3] + shift;
            var o = 4 * (slot - 1);
            double o11 = off[o], o12 = off[o + 1], o21 = off[o + 2], o22 = off[o + 3];
            if (i == 1)
            {
                if (free)
                {
                    y1 = y1.WithElement(own - 2, o11).WithElement(own - 1, o21);
                    y2 = y2.WithElement(own - 2, o12).WithElement(own - 1, o22);
                }
            }
            else
            {
                // M = (off)^T (pivot)^-1
                double m11 = (o11 * a) + (o21 * b), m12 = (o11 * b) + (o21 * d), m21 = (o12 * a) + (o22 * b), m22 = (o12 * b) + (o22 * d);
                p -= (m11 * o11) + (m12 * o21);
                q -= (m11 * o12) + (m12 * o22);
                r -= (m21 * o12) + (m22 * o22);
                y1 -= (m11 * x1) + (m12 * x2);
                y2 -= (m21 * x1) + (m22 * x2);
            }

            y1.StoreUnsafe(ref reduced, row);
            y2.StoreUnsafe(ref reduced, next);
            (x1, x2) = (y1, y2);
            var det = (p * r) - (q * q);
            if (det == 0 || !double.IsFinite(det))
                return -1;
            negatives += det < 0 ? 1 : p < 0 ? 2 : 0;
            var inverse = 1 / det;
            (a, b, d) = (r * inverse, -q * inverse, p * inverse);
            (pivots[3 * slot], pivots[(3 * slot) + 1], pivots[(3 * slot) + 2]) = (a, b, d);
            // Each row against all columns at once; what lies below the diagonal is worked out and not used.
            for (var c = 0; c < own; c++)
            {
                double v1 = s.Reduced[(int)row + c], v2 = s.Reduced[(int)next + c];
                products[c] += (((a * v1) + (b * v2)) * y1) + (((b * v1) + (d * v2)) * y2);
            }
        }

        ReadOnlySpan<double> sum = MemoryMarshal.Cast<Vector512<double>, double>(products);
        for (var c = 0; c < own; c++)
        {
            s.Schur[(to[c] * border) + to[c]] -= sum[(c * MostColumns) + c];
            for (var e = c + 1; e < own; e++)
            {
                s.Schur[(to[c] * border) + to[e]] -= sum[(c * MostColumns) + e];
                s.Schur[(to[e] * border) + to[c]] -= sum[(c * MostColumns) + e];
            }

            s.Right[to[c]] -= sum[(c * MostColumns) + own];
        }

        if (holdColumn[k + 1] is >= 0 and var hold)
        {
            // The right hold's columns are zero but at the last node before it.
            var o = 4 * (first + n - 1);
            double o11 = off[o], o12 = off[o + 1], o21 = off[o + 2], o22 = off[o + 3];
            double v11 = (a * o11) + (b * o21), v12 = (a * o12) + (b * o22), v21 = (b * o11) + (d * o21), v22 = (b * o12) + (d * o22);
            int hh = (hold * border) + hold, h1 = hh + border;
            s.Schur[hh] -= (o11 * v11) + (o21 * v21);
            s.Schur[hh + 1] -= (o11 * v12) + (o21 * v22);
            s.Schur[h1] -= (o12 * v11) + (o22 * v21);
            s.Schur[h1 + 1] -= (o12 * v12) + (o22 * v22);
            var y = s.Reduced.AsSpan(2 * (first + n - 1) * MostColumns, 2 * MostColumns);
            for (var c = 0; c < own; c++)
            {
                double e1 = (y[c] * v11) + (y[MostColumns + c] * v21), e2 = (y[c] * v12) + (y[MostColumns + c] * v22);
                s.Schur[(to[c] * border) + hold] -= e1;
                s.Schur[(to[c] * border) + hold + 1] -= e2;
                s.Schur[(hold * border) + to[c]] -= e1;
                s.Schur[((hold + 1) * border) + to[c]] -= e2;
            }

            s.Right[hold] -= (y[own] * v11) + (y[MostColumns + own] * v21);
            s.Right[hold + 1] -= (y[own] * v12) + (y[MostColumns + own] * v22);
        }

        return negatives;
    }

    private void Back(int k)
    {
        var s = scratch;
        Span<int> to = stackalloc int[MostColumns];
        Span<double> given = stackalloc double[MostColumns];
        int own = Own(k, to), first = Slot(k), n = Segments[k];
        for (var c = 0; c < own; c++)
            given[c] = s.BorderStep[to[c]];
        double x1 = 0, x2 = 0;
        if (holdColumn[k + 1] is >= 0 and var hold)
            (x1, x2) = (s.BorderStep[hold], s.BorderStep[hold + 1]);
        (s.Step[2 * Offset[k + 1]], s.Step[(2 * Offset[k + 1]) + 1]) = (x1, x2);
        if (k == 0 && holdColumn[0] is >= 0 and var start)
            (s.Step[0], s.Step[1]) = (s.BorderStep[start], s.BorderStep[start + 1]);
        for (var i = n - 1; i > 0; i--)
        {
            int slot = first + i, o = 4 * slot, row = 2 * slot * MostColumns;
            double y1 = -s.Reduced[row + own], y2 = -s.Reduced[row + MostColumns + own];
            for (var c = 0; c < own; c++)
            {
                y1 -= s.Reduced[row + c] * given[c];
                y2 -= s.Reduced[row + MostColumns + c] * given[c];
            }

            y1 -= (s.Off[o] * x1) + (s.Off[o + 1] * x2);
            y2 -= (s.Off[o + 2] * x1) + (s.Off[o + 3] * x2);
            double a = s.Pivots[3 * slot], b = s.Pivots[(3 * slot) + 1], d = s.Pivots[(3 * slot) + 2];
            (x1, x2) = ((a * y1) + (b * y2), (b * y1) + (d * y2));
            var node = 2 * (Offset[k] + i);
            (s.Step[node], s.Step[node + 1]) = (x1, x2);
        }
    }

    /// <summary>Largest turn of a tangent in the step found last, rad.</summary>
    public double LargestTurn()
    {
        var most = 0.0;
        var step = scratch.Step;
        for (var i = 0; i < nodes; i++)
            most = Math.Max(most, (step[2 * i] * step[2 * i]) + (step[(2 * i) + 1] * step[(2 * i) + 1]));
        return Math.Sqrt(most);
    }

    /// <summary>Largest change of a span's length in the step found last, as a part of the length.</summary>
    public double LargestStretch()
    {
        var most = 0.0;
        for (var k = 0; k < Spans; k++)
        {
            if (LengthColumn[k] is >= 0 and var l)
                most = Math.Max(most, Math.Abs(scratch.BorderStep[l]) / Lengths[k]);
        }

        return most;
    }

    /// <summary>Takes the step found last, or a part of it.</summary>
    public void Advance(double part, bool forces)
    {
        double[] step = scratch.Step, borderStep = scratch.BorderStep;
        for (var i = 0; i < nodes; i++)
        {
            double v = part * step[2 * i], w = part * step[(2 * i) + 1];
            if (v == 0 && w == 0)
                continue;
            var (x, y, z) = Tangents[i];
            var (b1, b2) = (scratch.B1[i], scratch.B2[i]);
            x += (v * b1.X) + (w * b2.X);
            y += (v * b1.Y) + (w * b2.Y);
            z += (v * b1.Z) + (w * b2.Z);
            // Back on the sphere: the length is known.
            var size = 1 / Math.Sqrt(1 + (v * v) + (w * w));
            Tangents[i] = new(size * x, size * y, size * z);
        }

        for (var k = 0; k < Spans; k++)
        {
            if (LengthColumn[k] is >= 0 and var l)
                Lengths[k] += part * borderStep[l];
            if (forces && ForceColumn[k] is >= 0 and var f)
                Force[k] += new Vector3(borderStep[f], borderStep[f + 1], borderStep[f + 2]);
        }

        for (var c = 0; c < Totals.Length && forces; c++)
            Balance[c] += borderStep[sums + c];
    }

    public double NextForce()
    {
        var most = 0.0;
        var borderStep = scratch.BorderStep;
        for (var k = 0; k < Spans; k++)
        {
            if (ForceColumn[k] is >= 0 and var f)
                most = Math.Max(most, (Force[k] + new Vector3(borderStep[f], borderStep[f + 1], borderStep[f + 2])).Size);
        }

        for (var c = 0; c < Totals.Length; c++)
            most = Math.Max(most, Math.Abs(Balance[c] + borderStep[sums + c]));
        return most;
    }

    /// <summary>Energy and the sum of the gaps of the plain scheme; NaN where a segment turns too much.</summary>
    public (double Energy, double Gap) Merit()
    {
        double energy = 0, gap = 0;
        var over = scratch.Over;
        Array.Copy(Totals, over, Totals.Length);
        for (var k = 0; k < Spans; k++)
        {
            var h = StepAt(k);
            if (!(h > 0))
                return (double.NaN, double.NaN);
            var (closure, load) = (default(Vector3), Frame.Load);
            var closed = ForceColumn[k] >= 0;
            for (var i = 0; i < Segments[k]; i++)
            {
                Vector3 t = Tangents[Offset[k] + i], u = Tangents[Offset[k] + i + 1], d = u - t, chord = 0.5 * h * (t + u);
                var x = 0.5 * Vector3.Dot(d, d);
                if (!(x < MostBend))
                    return (double.NaN, double.NaN);
                closure += chord;
                var force = closed ? -((i + 0.5) * h) * load : ForceAt(k, i);
                energy += (x / h) - Vector3.Dot(force, chord);
            }

            if (SumColumn(k) is >= 0 and var c)
                over[c - sums] -= Lengths[k];
            if (closed)
            {
                gap += (closure - Frame.Chord(k)).Size;
                energy -= Lengths[k] * Vector3.Dot(load, Frame.Points[k + 1]);
            }
        }

        for (var c = 0; c < Totals.Length; c++)
            gap += Math.Abs(over[c]);
        return (energy, gap);
    }

    /// <summary>Slope of energy + weight * gap along the step found last, from the derivatives assembled last.</summary>
    public double Slope(double weight)
    {
        double slope = 0, gap = 0;
        double[] step = scratch.Step, borderStep = scratch.BorderStep, cornerGradient = scratch.CornerGradient;
        for (var k = 0; k < Spans; k++)
        {
            for (var i = 0; i <= Segments[k]; i++)
            {
                int row = 2 * (Slot(k) + i) * MostColumns, node = 2 * (Offset[k] + i), rhs = width[k] - 1;
                slope += (scratch.Columns[row + rhs] * step[node]) + (scratch.Columns[row + MostColumns + rhs] * step[node + 1]);
            }

            if (LengthColumn[k] is >= 0 and var l)
                slope += cornerGradient[l] * borderStep[l];
            if (ForceColumn[k] is >= 0 and var f)
            {
                Vector3 c = new(cornerGradient[f], cornerGradient[f + 1], cornerGradient[f + 2]);
                slope += Vector3.Dot(Force[k], c);
                gap += c.Size;
            }
        }

        for (var c = 0; c < Totals.Length; c++)
        {
            slope += Balance[c] * cornerGradient[sums + c];
            gap += Math.Abs(cornerGradient[sums + c]);
        }

        return slope - (weight * gap);
    }

    /// <summary>Chord of one segment of the solved curve.</summary>
    public Vector3 Displacement(int span, int segment)
    {
        Vector3 t = Tangents[Offset[span] + segment], u = Tangents[Offset[span] + segment + 1], f = ForceAt(span, segment);
        var h = StepAt(span);
        return (h * Factors(t, u).Chord * (t + u)) + ((Fine ? h * h * h / 24 : 0) * ((2 * f) - (Vector3.Dot(f, t) * t) - (Vector3.Dot(f, u) * u)));
    }

    /// <summary>Integral of half the square of the curvature over one segment.</summary>
    public double Bending(int span, int segment)
    {
        Vector3 t = Tangents[Offset[span] + segment], u = Tangents[Offset[span] + segment + 1], f = ForceAt(span, segment);
        double h = StepAt(span), a = Vector3.Dot(f, t), b = Vector3.Dot(f, u);
        var w = Factors(t, u);
        var action = (w.Square / (2 * h)) - (h * w.Chord * (a + b)) - ((Fine ? h * h * h / 48 : 0) * ((2 * Vector3.Dot(f, f)) - (a * a) - (b * b)));
        return action + Vector3.Dot(f, Displacement(span, segment));
    }

    /// <summary>Curvature vector t' at the first or last node of a segment: the discrete momentum there.</summary>
    public Vector3 Curvature(int span, int segment, bool atEnd)
    {
        Vector3 t = Tangents[Offset[span] + segment], u = Tangents[Offset[span] + segment + 1], f = ForceAt(span, segment), q = Frame.Load;
        double h = StepAt(span), a = Vector3.Dot(f, t), b = Vector3.Dot(f, u), k3 = Fine ? h * h * h / 24 : 0, k2 = Fine ? h * h / 12 : 0;
        var w = Factors(t, u);
        var g1 = (w.Square1 / (2 * h)) - (h * w.Chord1 * (a + b));
        var own = atEnd ? u : t;
        var p = atEnd
            ? (-g1 * t) - (h * w.Chord * f) + (k3 * b * f) + (k2 * q)
            : (g1 * u) + (h * w.Chord * f) - (k3 * a * f) + (k2 * q);
        return p - (Vector3.Dot(p, own) * own);
    }

    /// <summary>Two unit directions across a unit vector.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static (Vector3 First, Vector3 Second) Across(Vector3 t)
    {
        // T. Duff and others, J. Computer Graphics Techniques 6 (2017) no. 1.
        var (x, y, z) = t;
        double sign = double.CopySign(1, z), a = -1 / (sign + z), b = x * y * a;
        return (new(1 + (sign * x * x * a), sign * b, -sign * x), new(b, sign + (y * y * a), -y));
    }
}
