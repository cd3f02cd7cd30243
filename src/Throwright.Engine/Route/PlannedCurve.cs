using Throwright.Shapes.Frames;

namespace Throwright.Engine.Route;

/// <summary>A short, gentle curve through the free space: points at about equal steps.</summary>
internal sealed class PlannedCurve
{
    // Band of the Gauss-Newton matrix: a point is tied to the two next ones.
    private const int Band = 7;
    private readonly Vector3[] r;

    private PlannedCurve(Vector3[] points, double[] passes) => (r, Passes) = (points, passes);

    /// <summary>Parts of the length at which curves were joined.</summary>
    public double[] Passes { get; }

    /// <summary>One curve of several that follow each other.</summary>
    public static PlannedCurve Joined(IReadOnlyList<PlannedCurve> legs)
    {
        var whole = legs.Sum(l => l.Length);
        List<Vector3> points = [legs[0].r[0], .. legs.SelectMany(l => l.r.Skip(1))];
        double[] passes = new double[legs.Count - 1];
        for (var i = 0; i < passes.Length; i++)
            passes[i] = (i > 0 ? passes[i - 1] : 0) + (legs[i].Length / whole);
        return new(Resample(points, points.Count - 1), passes);
    }

    public IReadOnlyList<Vector3> Points => r;

    public double Length
    {
        get
        {
            var sum = 0.0;
            for (var i = 1; i < r.Length; i++)
                sum += (r[i] - r[i - 1]).Size;
            return sum;
        }
    }

    /// <summary>Point and direction at a part of the length.</summary>
    public (Vector3 Point, Vector3 Along) At(double part)
    {
        var place = Math.Clamp(part, 0, 1) * (r.Length - 1);
        var i = Math.Clamp((int)place, 1, r.Length - 3);
        var u = place - i;
        Vector3 m0 = 0.5 * (r[i + 1] - r[i - 1]), m1 = 0.5 * (r[i + 2] - r[i]);
        double v = 1 - u;
        var p = (v * v * (1 + (2 * u)) * r[i]) + (u * u * (1 + (2 * v)) * r[i + 1]) + (u * v * v * m0) - (u * u * v * m1);
        var t = (6 * u * v * (r[i + 1] - r[i])) + (v * (1 - (3 * u)) * m0) + (u * ((3 * u) - 2) * m1);
        return (p, t.Unit());
    }

    /// <summary>Pulls the legs tight and round.</summary>
    /// <param name="corners">Start, corners, end of the legs.</param>
    /// <returns>Null where neither radius nor room came out.</returns>
    public static PlannedCurve? Of(RoutePlanCase of, FreeSpace space, IReadOnlyList<Vector3> corners, double radius, double room)
    {
        var legs = 0.0;
        for (var i = 1; i < corners.Count; i++)
            legs += (corners[i] - corners[i - 1]).Size;
        var count = Math.Clamp((int)Math.Ceiling(legs / Math.Min(0.012, radius / 6)), 24, 400);
        var r = Resample(corners, count);
        var h = legs / count;
        (r[0], r[^1]) = (of.Start, of.End);
        var n = count + 1;
        var bending = new double[n];
        Array.Fill(bending, 0.02 * radius * radius / (h * h));
        double soft = bending[0], push = 2, worstRoom = 0, worstCurve = 0;
        var calm = 0;
        for (var step = 0; step < 160; step++)
        {
            h = Spacing(r);
            (r[1], r[^2]) = (of.Start + (h * of.StartAlong.Unit()), of.End - (h * of.EndAlong.Unit()));
            var moved = Step(r, bending, push, space, room);
            (worstCurve, worstRoom) = (0, double.PositiveInfinity);
            for (var i = 1; i + 1 < n; i++)
            {
                var k = Bend(r, i);
                worstCurve = Math.Max(worstCurve, k * radius);
                bending[i] = k * radius > 0.985 ? Math.Min(bending[i] * 1.35, 1e4 * soft) : Math.Max(soft, bending[i] * 0.96);
                worstRoom = Math.Min(worstRoom, space.At(r[i]));
            }

            if (worstRoom < room)
                push = Math.Min(push * 1.15, 2000);
            calm = worstCurve <= 1 && worstRoom >= room - 5e-4 && moved < 5e-4 ? calm + 1 : 0;
            if (calm >= 3)
                break;
        }

        if (worstCurve > 1.02 || worstRoom < room - 2e-3)
            return null;
        // Points either side of something thin say nothing about what is between them.
        for (var i = 1; i < n; i++)
        {
            if (!space.IsClear(r[i - 1], r[i], Math.Min(0, room)))
                return null;
        }

        return new(r, []);
    }

    private static double Spacing(Vector3[] r)
    {
        var sum = 0.0;
        for (var i = 1; i < r.Length; i++)
            sum += (r[i] - r[i - 1]).Size;
        return sum / (r.Length - 1);
    }

    private static double Bend(Vector3[] r, int i)
    {
        Vector3 a = r[i] - r[i - 1], b = r[i + 1] - r[i];
        var turn = Vector3.AngleBetween(a, b);
        return double.IsNaN(turn) ? double.PositiveInfinity : 2 * Math.Tan(0.5 * turn) / (0.5 * (a.Size + b.Size));
    }

    private static Vector3[] Resample(IReadOnlyList<Vector3> corners, int count)
    {
        var at = new double[corners.Count];
        for (var i = 1; i < corners.Count; i++)
            at[i] = at[i - 1] + (corners[i] - corners[i - 1]).Size;
        var r = new Vector3[count + 1];
        for (int i = 0, leg = 1; i <= count; i++)
        {
            var s = at[^1] * i / count;
            while (leg < corners.Count - 1 && at[leg] < s)
                leg++;
            var u = (s - at[leg - 1]) / Math.Max(1e-12, at[leg] - at[leg - 1]);
            r[i] = ((1 - u) * corners[leg - 1]) + (u * corners[leg]);
        }

        return r;
    }

    /// <summary>One Gauss-Newton step of string + bending + one-sided squares of the missing room; the first and last two points stay.</summary>
    private static double Step(Vector3[] r, double[] bending, double push, FreeSpace space, double room)
    {
        int n = r.Length, size = 3 * n;
        var a = new double[size * Band];
        var g = new double[size];
        for (var i = 0; i + 1 < n; i++)
        {
            var d = r[i + 1] - r[i];
            Pair(i, i, 1);
            Pair(i + 1, i + 1, 1);
            Pair(i + 1, i, -1);
            AddTo(g, i, -1, d);
            AddTo(g, i + 1, 1, d);
        }

        for (var i = 1; i + 1 < n; i++)
        {
            var w = bending[i];
            var d = r[i - 1] - (2 * r[i]) + r[i + 1];
            Pair(i - 1, i - 1, w);
            Pair(i, i, 4 * w);
            Pair(i + 1, i + 1, w);
            Pair(i, i - 1, -2 * w);
            Pair(i + 1, i, -2 * w);
            Pair(i + 1, i - 1, w);
            AddTo(g, i - 1, w, d);
            AddTo(g, i, -2 * w, d);
            AddTo(g, i + 1, w, d);
            var missing = room + 1e-3 - space.At(r[i]);
            if (!(missing > 0))
                continue;
            var slope = space.Slope(r[i]);
            if (!(Vector3.Dot(slope, slope) > 0.01))
                continue;
            AddTo(g, i, -push * missing, slope);
            for (var p = 0; p < 3; p++)
            {
                for (var q = 0; q <= p; q++)
                    a[(((3 * i) + p) * Band) + p - q] += push * Part(slope, p) * Part(slope, q);
            }
        }

        foreach (var i in (ReadOnlySpan<int>)[0, 1, n - 2, n - 1])
        {
            for (var c = 0; c < 3; c++)
            {
                a[((3 * i) + c) * Band] += 1e12;
                g[(3 * i) + c] = 0;
            }
        }

        Solve(a, g, size);
        var most = 0.0;
        for (var i = 0; i < n; i++)
            most = Math.Max(most, Math.Sqrt((g[3 * i] * g[3 * i]) + (g[(3 * i) + 1] * g[(3 * i) + 1]) + (g[(3 * i) + 2] * g[(3 * i) + 2])));
        var part = Math.Min(1, 0.02 / Math.Max(most, 1e-12));
        for (var i = 2; i < n - 2; i++)
            r[i] -= part * new Vector3(g[3 * i], g[(3 * i) + 1], g[(3 * i) + 2]);
        return part * most;

        void Pair(int i, int j, double w)
        {
            for (var c = 0; c < 3; c++)
                a[(((3 * i) + c) * Band) + (3 * (i - j))] += w;
        }
    }

    private static double Part(Vector3 v, int c) => c == 0 ? v.X : c == 1 ? v.Y : v.Z;

    private static void AddTo(double[] g, int i, double w, Vector3 d)
    {
        g[3 * i] += w * d.X;
        g[(3 * i) + 1] += w * d.Y;
        g[(3 * i) + 2] += w * d.Z;
    }

    /// <summary>Banded Cholesky; a[row, k] is the entry k places left of the diagonal.</summary>
    private static void Solve(double[] a, double[] b, int size)
    {
        for (var i = 0; i < size; i++)
        {
            var first = Math.Max(0, i - Band + 1);
            for (var j = first; j <= i; j++)
            {
                var sum = a[(i * Band) + i - j];
                for (var k = Math.Max(first, j - Band + 1); k < j; k++)
                    sum -= a[(i * Band) + i - k] * a[(j * Band) + j - k];
                a[(i * Band) + i - j] = i == j ? Math.Sqrt(Math.Max(sum, 1e-30)) : sum / a[j * Band];
            }
        }

        for (var i = 0; i < size; i++)
        {
            for (var k = Math.Max(0, i - Band + 1); k < i; k++)
                b[i] -= a[(i * Band) + i - k] * b[k];
            b[i] /= a[i * Band];
        }

        for (var i = size - 1; i >= 0; i--)
        {
            b[i] /= a[i * Band];
            for (var k = Math.Max(0, i - Band + 1); k < i; k++)
                b[k] -= a[(i * Band) + i - k] * b[i];
        }
    }
}
