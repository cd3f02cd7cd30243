using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Curves;

/// <summary>The discrete curve while it is being solved: tangents, one force per span, span lengths. Stiffness 1.</summary>
/// <remarks>
/// Unit tangents t_i on the sphere, arc step h, force F (held constant along the segment, load taken at its middle);
/// with x = 1 - t_i.t_j, a = F.t_i, b = F.t_j:
///   A = theta^2/(2h) - h phi (a + b) - h^3/48 (2 F^2 - a^2 - b^2) + h^2/12 q.(t_j - t_i),   phi = tan(theta/2)/theta
/// (the plain scheme keeps (1 - c)/h - h/2 (a + b) only). Stationary in t, F, span lengths:
///   sum A + sum F.(chord of span) - q.(end of span) length + H (sum of lengths - total).
/// The matrix is block-tridiagonal (2 x 2) with a border of one column per F component, span length and H. Derived in
/// docs/theory/route.md.
/// </remarks>
internal sealed class ElasticSystem
{
    // A segment that turns more than this is outside the range of the element.
    private const double MostTurn = 2.6;
    private readonly int nodes;
    private readonly int border;
    private readonly int sums;
    private readonly int width;
    private readonly Vector3[] b1, b2, gradient;
    private readonly double[] diagonal, off, columns, reduced, pivots, corner, cornerGradient;
    private readonly double[] step, borderStep;

    /// <param name="groups">
    /// Group of each span whose lengths add up to one of the totals; null: lengths are fixed. No totals: any length may be drawn in.
    /// </param>
    public ElasticSystem(ElasticFrame frame, int[] segments, int[]? groups, double[] totals)
    {
        Frame = frame;
        Segments = segments;
        Groups = groups;
        Totals = totals;
        Balance = new double[totals.Length];
        Spans = segments.Length;
        Offset = new int[Spans + 1];
        for (var k = 0; k < Spans; k++)
            Offset[k + 1] = Offset[k] + segments[k];
        nodes = Offset[Spans] + 1;
        Tangents = new Vector3[nodes];
        Fixed = new bool[nodes];
        Force = new Vector3[Spans];
        Lengths = new double[Spans];
        ForceColumn = new int[Spans];
        LengthColumn = new int[Spans];
        for (var k = 0; k < Spans; k++)
        {
            ForceColumn[k] = frame.IsClosed(k) ? border : -1;
            border += frame.IsClosed(k) ? 3 : 0;
        }

        for (var k = 0; k < Spans; k++)
            LengthColumn[k] = groups is not null ? border++ : -1;
        sums = border;
        border += totals.Length;
        Wanted = (3 * frame.Closures) + totals.Length;
        width = border + 1;
        (b1, b2, gradient) = (new Vector3[nodes], new Vector3[nodes], new Vector3[nodes]);
        diagonal = new double[nodes * 4];
        off = new double[nodes * 4];
        pivots = new double[nodes * 4];
        columns = new double[nodes * 2 * width];
        reduced = new double[nodes * 2 * width];
        corner = new double[border * border];
        cornerGradient = new double[border];
        step = new double[nodes * 2];
        borderStep = new double[border];
    }

    public ElasticFrame Frame { get; }
    public int[] Segments { get; }
    public int[] Offset { get; }
    public int Spans { get; }
    public int[]? Groups { get; }
    public double[] Totals { get; }
    public Vector3[] Tangents { get; }
    public bool[] Fixed { get; }
    public Vector3[] Force { get; }
    public double[] Lengths { get; }

    /// <summary>H of each group: 1/2 curvature^2 + F.t where the curve slides.</summary>
    public double[] Balance { get; }
    public int[] ForceColumn { get; }
    public int[] LengthColumn { get; }

    /// <summary>Negative eigenvalues of the bordered matrix at a strict minimum: one per constraint.</summary>
    public int Wanted { get; }

    /// <summary>Fourth order, or the plain scheme.</summary>
    public bool Fine { get; set; }

    public double StepAt(int span) => Lengths[span] / Segments[span];

    /// <summary>Force in the middle of a segment of a span.</summary>
    public Vector3 ForceAt(int span, int segment) => Force[span] - (((segment + 0.5) * StepAt(span)) * Frame.Load);

    private int SumColumn(int span) => Totals.Length > 0 && Groups is not null ? sums + Groups[span] : -1;

    private ArcFactors Factors(Vector3 t, Vector3 u)
    {
        var d = u - t;
        var x = 0.5 * Vector3.Dot(d, d);
        return Fine ? ArcFactors.At(x) : ArcFactors.Plain(x);
    }

    /// <summary>Derivatives of the action, and the matrix where it is asked for.</summary>
    public void Assemble()
    {
        Array.Clear(diagonal);
        Array.Clear(off);
        Array.Clear(columns);
        Array.Clear(corner);
        Array.Clear(cornerGradient);
        Array.Clear(gradient);
        for (var i = 0; i < nodes; i++)
            (b1[i], b2[i]) = Across(Tangents[i]);
        for (var k = 0; k < Spans; k++)
        {
            for (var i = 0; i < Segments[k]; i++)
                AddSegment(k, i);
            if (ForceColumn[k] is >= 0 and var f)
            {
                var chord = Frame.Chord(k);
                cornerGradient[f] += chord.X;
                cornerGradient[f + 1] += chord.Y;
                cornerGradient[f + 2] += chord.Z;
            }

            if (LengthColumn[k] is >= 0 and var l)
            {
                cornerGradient[l] -= Vector3.Dot(Frame.Load, Frame.Points[k + 1]);
                if (SumColumn(k) is >= 0 and var c)
                {
                    corner[(l * border) + c] = corner[(c * border) + l] = 1;
                    cornerGradient[l] += Balance[c - sums];
                    cornerGradient[c] += Lengths[k];
                }
            }
        }

        for (var c = 0; c < Totals.Length; c++)
            cornerGradient[sums + c] -= Totals[c];
        for (var i = 0; i < nodes; i++)
        {
            if (Fixed[i])
            {
                diagonal[4 * i] = diagonal[(4 * i) + 3] = 1;
                diagonal[(4 * i) + 1] = diagonal[(4 * i) + 2] = 0;
                Array.Clear(columns, 2 * i * width, 2 * width);
                Array.Clear(off, 4 * i, 4);
                if (i > 0)
                    Array.Clear(off, 4 * (i - 1), 4);
                continue;
            }

            var curve = Vector3.Dot(Tangents[i], gradient[i]);
            diagonal[4 * i] -= curve;
            diagonal[(4 * i) + 3] -= curve;
            columns[(2 * i * width) + border] = Vector3.Dot(gradient[i], b1[i]);
            columns[(((2 * i) + 1) * width) + border] = Vector3.Dot(gradient[i], b2[i]);
        }
    }

    private void AddSegment(int k, int segment)
    {
        int i = Offset[k] + segment, j = i + 1;
        Vector3 t = Tangents[i], u = Tangents[j], q = Frame.Load;
        var h = StepAt(k);
        var force = ForceAt(k, segment);
        double a = Vector3.Dot(force, t), b = Vector3.Dot(force, u), ff = Vector3.Dot(force, force);
        var w = Factors(t, u);
        var fine = Fine ? 1 : 0;
        double k3 = fine * h * h * h / 24, k2 = fine * h * h / 8;
        var g1 = (w.Square1 / (2 * h)) - (h * w.Chord1 * (a + b));
        var g2 = (w.Square2 / (2 * h)) - (h * w.Chord2 * (a + b));
        double hp = h * w.Chord, hp1 = h * w.Chord1;
        var sum = t + u;
        gradient[i] += (-g1 * u) - (hp * force) + (k3 * a * force) - (fine * h * h / 12 * q);
        gradient[j] += (-g1 * t) - (hp * force) + (k3 * b * force) + (fine * h * h / 12 * q);
        var byForce = (-hp * sum) - (k3 * ((2 * force) - (a * t) - (b * u)));

        double u1 = Vector3.Dot(u, b1[i]), u2 = Vector3.Dot(u, b2[i]), f1 = Vector3.Dot(force, b1[i]), f2 = Vector3.Dot(force, b2[i]);
        double t1 = Vector3.Dot(t, b1[j]), t2 = Vector3.Dot(t, b2[j]), e1 = Vector3.Dot(force, b1[j]), e2 = Vector3.Dot(force, b2[j]);
        AddSquare(diagonal, 4 * i, u1, u2, f1, f2, g2, hp1, k3);
        AddSquare(diagonal, 4 * j, t1, t2, e1, e2, g2, hp1, k3);
        off[4 * i] = (-g1 * Vector3.Dot(b1[i], b1[j])) + (g2 * u1 * t1) + (hp1 * ((u1 * e1) + (f1 * t1)));
        off[(4 * i) + 1] = (-g1 * Vector3.Dot(b1[i], b2[j])) + (g2 * u1 * t2) + (hp1 * ((u1 * e2) + (f1 * t2)));
        off[(4 * i) + 2] = (-g1 * Vector3.Dot(b2[i], b1[j])) + (g2 * u2 * t1) + (hp1 * ((u2 * e1) + (f2 * t1)));
        off[(4 * i) + 3] = (-g1 * Vector3.Dot(b2[i], b2[j])) + (g2 * u2 * t2) + (hp1 * ((u2 * e2) + (f2 * t2)));

        // Rows of d2A/dt dF at both nodes, each a vector over the components of F.
        var r1 = (hp1 * u1 * sum) - (hp * b1[i]) + (k3 * ((f1 * t) + (a * b1[i])));
        var r2 = (hp1 * u2 * sum) - (hp * b2[i]) + (k3 * ((f2 * t) + (a * b2[i])));
        var s1 = (hp1 * t1 * sum) - (hp * b1[j]) + (k3 * ((e1 * u) + (b * b1[j])));
        var s2 = (hp1 * t2 * sum) - (hp * b2[j]) + (k3 * ((e2 * u) + (b * b2[j])));
        if (ForceColumn[k] is >= 0 and var c)
        {
            AddRow(2 * i, c, r1);
            AddRow((2 * i) + 1, c, r2);
            AddRow(2 * j, c, s1);
            AddRow((2 * j) + 1, c, s2);
            AddTo(cornerGradient, c, byForce);
            AddRow3(c, c, (-k3 * new Vector3(2, 0, 0)) + (k3 * t.X * t) + (k3 * u.X * u));
            AddRow3(c + 1, c, (-k3 * new Vector3(0, 2, 0)) + (k3 * t.Y * t) + (k3 * u.Y * u));
            AddRow3(c + 2, c, (-k3 * new Vector3(0, 0, 2)) + (k3 * t.Z * t) + (k3 * u.Z * u));
        }

        if (LengthColumn[k] is not (>= 0 and var l))
            return;
        // d/dh at constant force, then what the load adds through the force: dF/dh = -q (segment + 1/2).
        var n = Segments[k];
        var drift = -(segment + 0.5) * q;
        var byStep = (-w.Square / (2 * h * h)) - (w.Chord * (a + b)) - (0.5 * k2 * ((2 * ff) - (a * a) - (b * b))) + (fine * h / 6 * Vector3.Dot(q, u - t));
        cornerGradient[l] += (byStep + Vector3.Dot(byForce, drift)) / n;
        var g1h = (-w.Square1 / (2 * h * h)) - (w.Chord1 * (a + b));
        var th = (-g1h * u) - (w.Chord * force) + (k2 * a * force) - (fine * h / 6 * q);
        var uh = (-g1h * t) - (w.Chord * force) + (k2 * b * force) + (fine * h / 6 * q);
        Column(2 * i, l) += (Vector3.Dot(th, b1[i]) + Vector3.Dot(r1, drift)) / n;
        Column((2 * i) + 1, l) += (Vector3.Dot(th, b2[i]) + Vector3.Dot(r2, drift)) / n;
        Column(2 * j, l) += (Vector3.Dot(uh, b1[j]) + Vector3.Dot(s1, drift)) / n;
        Column((2 * j) + 1, l) += (Vector3.Dot(uh, b2[j]) + Vector3.Dot(s2, drift)) / n;
        var mixed = (-w.Chord * sum) - (k2 * ((2 * force) - (a * t) - (b * u)));
        var twice = (-2 * k3 * drift) + (k3 * Vector3.Dot(drift, t) * t) + (k3 * Vector3.Dot(drift, u) * u);
        var stepStep = (w.Square / (h * h * h)) - (fine * h / 8 * ((2 * ff) - (a * a) - (b * b))) + (fine * Vector3.Dot(q, u - t) / 6);
        corner[(l * border) + l] += (stepStep + (2 * Vector3.Dot(mixed, drift)) + Vector3.Dot(drift, twice)) / ((double)n * n);
        if (ForceColumn[k] is >= 0 and var d)
        {
            var row = (1.0 / n) * (mixed + twice);
            AddRow3(l, d, row);
            corner[(d * border) + l] += row.X;
            corner[((d + 1) * border) + l] += row.Y;
            corner[((d + 2) * border) + l] += row.Z;
        }
    }

    private ref double Column(int row, int column) => ref columns[(row * width) + column];

    private void AddRow(int row, int column, Vector3 v) => AddTo(columns, (row * width) + column, v);

    private void AddRow3(int row, int column, Vector3 v) => AddTo(corner, (row * border) + column, v);

    private static void AddTo(double[] to, int at, Vector3 v)
    {
        to[at] += v.X;
        to[at + 1] += v.Y;
        to[at + 2] += v.Z;
    }

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
        var negatives = 0;
        var schur = new double[border * border];
        var right = new double[border];
        Array.Copy(corner, schur, schur.Length);
        for (var c = 0; c < border; c++)
            right[c] = cornerGradient[c];
        foreach (var l in LengthColumn)
        {
            if (l >= 0)
                schur[(l * border) + l] += shift;
        }

        var span = 0;
        for (var i = 0; i < nodes; i++)
        {
            while (span < Spans - 1 && i >= Offset[span + 1])
                span++;
            var s = Fixed[i] ? 0 : shift * StepAt(span);
            double p = diagonal[4 * i] + s, q = diagonal[(4 * i) + 1], r = diagonal[(4 * i) + 3] + s;
            int row = 2 * i * width, next = row + width;
            Array.Copy(columns, row, reduced, row, 2 * width);
            if (i > 0)
            {
                int o = 4 * (i - 1), before = 2 * (i - 1) * width;
                double a = pivots[o], b = pivots[o + 1], d = pivots[o + 3];
                double o11 = off[o], o12 = off[o + 1], o21 = off[o + 2], o22 = off[o + 3];
                // M = (off)^T (pivot)^-1
                double m11 = (o11 * a) + (o21 * b), m12 = (o11 * b) + (o21 * d), m21 = (o12 * a) + (o22 * b), m22 = (o12 * b) + (o22 * d);
                p -= (m11 * o11) + (m12 * o21);
                q -= (m11 * o12) + (m12 * o22);
                r -= (m21 * o12) + (m22 * o22);
                for (var c = 0; c < width; c++)
                {
                    double y1 = reduced[before + c], y2 = reduced[before + width + c];
                    reduced[row + c] -= (m11 * y1) + (m12 * y2);
                    reduced[next + c] -= (m21 * y1) + (m22 * y2);
                }
            }

            var det = (p * r) - (q * q);
            if (det == 0 || !double.IsFinite(det))
                return -1;
            negatives += det < 0 ? 1 : p < 0 ? 2 : 0;
            double i11 = r / det, i12 = -q / det, i22 = p / det;
            (pivots[4 * i], pivots[(4 * i) + 1], pivots[(4 * i) + 2], pivots[(4 * i) + 3]) = (i11, i12, i12, i22);
            for (var c = 0; c < border; c++)
            {
                double y1 = reduced[row + c], y2 = reduced[next + c];
                if (y1 == 0 && y2 == 0)
                    continue;
                double z1 = (i11 * y1) + (i12 * y2), z2 = (i12 * y1) + (i22 * y2);
                for (var d = 0; d < border; d++)
                    schur[(c * border) + d] -= (z1 * reduced[row + d]) + (z2 * reduced[next + d]);
                right[c] -= (z1 * reduced[row + border]) + (z2 * reduced[next + border]);
            }
        }

        if (border > 0)
        {
            var factor = SymmetricFactor.Of(schur, border);
            if (factor.IsSingular)
                return -1;
            negatives += factor.Negatives;
            factor.Solve(right);
        }

        for (var c = 0; c < border; c++)
            borderStep[c] = -right[c];
        for (var i = nodes - 1; i >= 0; i--)
        {
            int row = 2 * i * width, next = row + width;
            double y1 = -reduced[row + border], y2 = -reduced[next + border];
            for (var c = 0; c < border; c++)
            {
                y1 -= reduced[row + c] * borderStep[c];
                y2 -= reduced[next + c] * borderStep[c];
            }

            if (i < nodes - 1)
            {
                double x1 = step[2 * (i + 1)], x2 = step[(2 * (i + 1)) + 1];
                y1 -= (off[4 * i] * x1) + (off[(4 * i) + 1] * x2);
                y2 -= (off[(4 * i) + 2] * x1) + (off[(4 * i) + 3] * x2);
            }

            step[2 * i] = (pivots[4 * i] * y1) + (pivots[(4 * i) + 1] * y2);
            step[(2 * i) + 1] = (pivots[(4 * i) + 1] * y1) + (pivots[(4 * i) + 3] * y2);
        }

        return negatives;
    }

    /// <summary>Largest turn of a tangent in the step found last, rad.</summary>
    public double LargestTurn()
    {
        var most = 0.0;
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
                most = Math.Max(most, Math.Abs(borderStep[l]) / Lengths[k]);
        }

        return most;
    }

    /// <summary>Takes the step found last, or a part of it.</summary>
    public void Advance(double part, bool forces)
    {
        for (var i = 0; i < nodes; i++)
        {
            if (Fixed[i])
                continue;
            var v = (part * step[2 * i] * b1[i]) + (part * step[(2 * i) + 1] * b2[i]);
            var angle = v.Size;
            if (angle > 0)
                Tangents[i] = ((Math.Cos(angle) * Tangents[i]) + (Math.Sin(angle) / angle * v)).Unit();
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
        var over = (double[])Totals.Clone();
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
                if (!(x < 1 - Math.Cos(MostTurn)))
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

        foreach (var o in over)
            gap += Math.Abs(o);
        return (energy, gap);
    }

    /// <summary>Slope of energy + weight * gap along the step found last, from the derivatives assembled last.</summary>
    public double Slope(double weight)
    {
        double slope = 0, gap = 0;
        for (var i = 0; i < nodes; i++)
            slope += (columns[(2 * i * width) + border] * step[2 * i]) + (columns[(((2 * i) + 1) * width) + border] * step[(2 * i) + 1]);
        for (var k = 0; k < Spans; k++)
        {
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
    public static (Vector3 First, Vector3 Second) Across(Vector3 t)
    {
        // The axis least along t is never parallel to it.
        double x = Math.Abs(t.X), y = Math.Abs(t.Y), z = Math.Abs(t.Z);
        Vector3 helper = x <= y && x <= z ? new(1, 0, 0) : y <= z ? new(0, 1, 0) : new(0, 0, 1);
        var first = Vector3.Cross(t, helper).Unit();
        return (first, Vector3.Cross(t, first));
    }
}
