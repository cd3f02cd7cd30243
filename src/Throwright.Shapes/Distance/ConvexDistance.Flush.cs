using System.Runtime.Intrinsics;

namespace Throwright.Shapes.Distance;

public static partial class ConvexDistance
{
    /// <summary>Nearer to the direction found than this, a flat direction is tried, as a cosine.</summary>
    private const double Alike = 1 - 1e-4;

    /// <summary>
    /// Bars and cones that lie flush: supports jump from end to end and the search stalls some nanometres off. The directions in
    /// which their sides, flats and the other's faces and edges can lie together are few, so each near the one found is tried.
    /// </summary>
    /// <remarks>Points are taken on the bodies and directions prove what they prove: a try can only improve on what was found.</remarks>
    private static void Flush(ref Pair pair, ref Vector256<double> a, ref Vector256<double> b, ref Vector256<double> n)
    {
        Span<Vector256<double>> tries = stackalloc Vector256<double>[32];
        var count = 0;
        FromRound(in pair.A, in pair.B, b, pair.B.Centre, tries, ref count);
        FromRound(in pair.B, in pair.A, a - pair.B.Centre, -pair.B.Centre, tries, ref count);
        FromSides(in pair.A, in pair.B, tries, ref count);
        FromFlat(in pair.A, tries, ref count);
        FromFlat(in pair.B, tries, ref count);
        var distance = Triple.Size(b - a);
        var width = pair.WidthOfCores(n);
        var found = n;
        for (var i = 0; i < count; i++)
        {
            var along = Triple.Dot(tries[i], found);
            var t = Triple.Toward(along, tries[i]);
            if (!(Math.Abs(along) > Alike))
                continue;
            var proved = pair.WidthOfCores(t);
            if (proved > width)
                (width, n) = (proved, t);
            var (p, q) = (OnFace(in pair.A, t, a), pair.B.Centre + OnFace(in pair.B, -t, b - pair.B.Centre));
            // Side on side, the two lines have nearest points of their own.
            if (SideOf(in pair.A, t) is { } own && SideOf(in pair.B, -t) is { } its)
            {
                OfSegments(own.Half, its.Half, pair.B.Centre + its.Middle - own.Middle, out p, out q);
                (p, q) = (p + own.Middle, q + own.Middle);
            }

            if (!pair.B.IsRound)
                q = Foot(in pair, p, ofFirst: false, t);
            if (!pair.A.IsRound)
                p = Foot(in pair, q, ofFirst: true, -t);
            var size = Triple.Size(q - p);
            if (size < distance)
                (distance, a, b) = (size, p, q);
        }
    }

    /// <summary>Directions square to a bar's or cone's side and to its flats.</summary>
    /// <param name="point">Nearest point of the other, from this one's centre.</param>
    /// <param name="apart">Centre of the other, from this one's.</param>
    private static void FromRound(in Core round, in Core other, Vector256<double> point, Vector256<double> apart, Span<Vector256<double>> tries, ref int count)
    {
        if (!round.IsRound)
            return;
        tries[count++] = round.Y;
        Side(round, point, tries, ref count);
        Side(round, apart, tries, ref count);
        Side(round, other.Kind == CoreKind.Triangle ? other.Y - other.X : other.X, tries, ref count);
        Side(round, other.Kind == CoreKind.Triangle ? other.Z - other.Y : other.Y, tries, ref count);
        Side(round, other.Kind == CoreKind.Triangle ? other.X - other.Z : other.Z, tries, ref count);

        // Outward square to the side where it faces the way given, and opposite.
        static void Side(in Core round, Vector256<double> toward, Span<Vector256<double>> tries, ref int count)
        {
            var square = toward - (Triple.Dot(toward, round.Y) * round.Y);
            var size = Triple.Size(square);
            if (!(size > 1e-9 * Triple.Size(toward)))
                return;
            // Of a cone the side leans: (Across - AcrossTo) over its length.
            var length = 2 * Triple.Size(round.X);
            var rise = round.Kind == CoreKind.Cone ? round.Across - round.AcrossTo : 0;
            var side = Math.Sqrt((length * length) + (rise * rise));
            tries[count++] = (length / side / size * square) + (rise / side * round.Y);
            tries[count++] = (-length / side / size * square) + (rise / side * round.Y);
        }
    }

    /// <summary>The two directions that are square to the sides of both: each keeps its angle to either axis.</summary>
    private static void FromSides(in Core a, in Core b, Span<Vector256<double>> tries, ref int count)
    {
        if (!a.IsRound || !b.IsRound)
            return;
        var across = Triple.Cross(a.Y, b.Y);
        var square = Triple.Dot(across, across);
        // Where the axes are alike any way round will do, and those that face the other are tried.
        if (!(square > 1e-16))
            return;
        double along = Triple.Dot(a.Y, b.Y), own = LeanOf(in a), its = -LeanOf(in b);
        double x = (own - (along * its)) / square, y = (its - (along * own)) / square;
        var rest = 1 - ((x * own) + (y * its));
        if (rest < -1e-9)
            return;
        var z = Math.Sqrt(Math.Max(0, rest) / square);
        tries[count++] = (x * a.Y) + (y * b.Y) + (z * across);
        tries[count++] = (x * a.Y) + (y * b.Y) - (z * across);

        static double LeanOf(in Core core)
        {
            var rise = core.Kind == CoreKind.Cone ? core.Across - core.AcrossTo : 0;
            return rise / Math.Sqrt((4 * Triple.Dot(core.X, core.X)) + (rise * rise));
        }
    }

    private static void FromFlat(in Core core, Span<Vector256<double>> tries, ref int count)
    {
        if (core.Kind == CoreKind.Triangle)
        {
            Take(Triple.Cross(core.Y - core.X, core.Z - core.X), tries, ref count);
        }
        else if (core.Kind == CoreKind.Box)
        {
            Take(core.X, tries, ref count);
            Take(core.Y, tries, ref count);
            Take(core.Z, tries, ref count);
        }

        static void Take(Vector256<double> d, Span<Vector256<double>> tries, ref int count)
        {
            var size = Triple.Size(d);
            if (size > 0)
                tries[count++] = (1 / size) * d;
        }
    }

    /// <summary>The line of a bar's or cone's side that lies square to n, from the centre; null: none does.</summary>
    private static (Vector256<double> Middle, Vector256<double> Half)? SideOf(in Core core, Vector256<double> n)
    {
        if (!core.IsRound || Math.Abs(Triple.Dot(n, core.Y)) > 1 - 1e-14)
            return null;
        var across = core.Kind == CoreKind.Bar ? core.Across : core.AcrossTo;
        var square = SquareTo(n, core.Y);
        Vector256<double> from = (core.Across * square) - core.X, to = (across * square) + core.X;
        return Math.Abs(Triple.Dot(n, to - from)) <= 1e-13 * core.Reach ? (0.5 * (from + to), 0.5 * (to - from)) : null;
    }

    /// <summary>The point nearest to p of all that are farthest in a direction, from the centre; of what is not round, p.</summary>
    private static Vector256<double> OnFace(in Core core, Vector256<double> n, Vector256<double> p)
    {
        if (!core.IsRound)
            return p;
        var along = Triple.Dot(n, core.Y);
        var across = core.Kind == CoreKind.Bar ? core.Across : core.AcrossTo;
        var square = SquareTo(n, core.Y);
        if (Math.Abs(along) > 1 - 1e-14)
        {
            if (along < 0)
                across = core.Across;
            var end = Triple.Toward(along, core.X);
            var off = p - end;
            off -= Triple.Dot(off, core.Y) * core.Y;
            var size = Triple.Size(off);
            return size > across ? end + ((across / size) * off) : end + off;
        }

        Vector256<double> from = (core.Across * square) - core.X, to = (across * square) + core.X, d = to - from;
        double low = Triple.Dot(n, from), high = Triple.Dot(n, to);
        // A side that lies square to n, or the end that is farther.
        return Math.Abs(high - low) <= 1e-13 * core.Reach ? from + (Math.Clamp(Triple.Dot(p - from, d) / Triple.Dot(d, d), 0, 1) * d)
            : low > high ? from : to;
    }

    /// <summary>The nearest point to p of a core that is not round.</summary>
    private static Vector256<double> Foot(in Pair pair, Vector256<double> p, bool ofFirst, Vector256<double> guess)
    {
        // The other core as a point, from its own centre.
        Pair with = default;
        with.Scale = pair.Scale;
        with.A.Kind = CoreKind.Point;
        with.B = ofFirst ? pair.A : pair.B;
        with.B.Centre = (ofFirst ? Vector256<double>.Zero : pair.B.Centre) - p;
        Span<Vertex> simplex = stackalloc Vertex[4];
        var count = 0;
        Nearest(ref with, guess, 0, simplex, ref count, out _, out var foot, out _, out _);
        return p + foot;
    }
}
