using System.Runtime.CompilerServices;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Curves;

/// <summary>Curves of the wanted length to start the search from: without a bow, with C bows and with S bows.</summary>
internal static class CurveStarts
{
    private const int Fine = 128;

    // A start needs its length to a part in a thousand only: the solver makes the rest.
    private const double Near = 1e-3;

    /// <summary>Unit tangents at equal arc lengths of one span.</summary>
    /// <param name="kind">0: Hermite curve whose handles make up the length; 1-4: C bows, 5-8: S bows at four azimuths.</param>
    public static Vector3[] Tangents(Vector3 chord, Vector3 t0, Vector3 t1, Vector3 load, double length, int kind, int segments)
    {
        var size = chord.Size;
        if (kind == 0)
        {
            var handle = Match(m => LengthOf(chord, m * t0, m * t1, default, false), length, 0.3 * length);
            return Resample(chord, handle * t0, handle * t1, default, false, segments);
        }

        var along = size > 1e-9 * length ? (1 / size) * chord : t0;
        var first = Azimuth(along, t1 - t0, load);
        var second = Vector3.Cross(along, first);
        var turn = 0.5 * Math.PI * ((kind - 1) % 4);
        var side = (Math.Cos(turn) * first) + (Math.Sin(turn) * second);
        var swap = kind > 4;
        var base0 = Math.Max(0.5 * size, 0.2 * length);
        while (base0 > 1e-6 * length && LengthOf(chord, base0 * t0, base0 * t1, default, false) > length)
            base0 *= 0.5;
        var bow = Match(a => LengthOf(chord, base0 * t0, base0 * t1, a * side, swap), length, 0.1 * length);
        return Resample(chord, base0 * t0, base0 * t1, bow * side, swap, segments);
    }

    private static Vector3 Azimuth(Vector3 along, Vector3 wish, Vector3 load)
    {
        foreach (var v in (Vector3[])[wish, load])
        {
            var across = v - (Vector3.Dot(v, along) * along);
            if (across.Size > 1e-6 * Math.Max(1, v.Size))
                return across.Unit();
        }

        return ElasticSystem.Across(along).First;
    }

    private static double Match(Func<double, double> lengthOf, double length, double guess)
    {
        double low = 0, high = guess, over = lengthOf(high) - length, under = double.NaN;
        for (var i = 0; i < 40 && over < 0; i++)
        {
            (low, under, high) = (high, over, 1.6 * high);
            over = lengthOf(high) - length;
        }

        if (double.IsNaN(under))
            under = lengthOf(low) - length;
        // Regula falsi; the end that stays counts half (Illinois), so that both move.
        var stayed = 0;
        for (var i = 0; i < 30 && under < 0 && over > Near * length; i++)
        {
            var next = low - (under * (high - low) / (over - under));
            var off = lengthOf(next) - length;
            if (Math.Abs(off) <= Near * length)
                return next;
            if (off < 0)
            {
                (low, under) = (next, off);
                over *= stayed == 1 ? 0.5 : 1;
                stayed = 1;
            }
            else
            {
                (high, over) = (next, off);
                under *= stayed == -1 ? 0.5 : 1;
                stayed = -1;
            }
        }

        return high;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector3 At(Vector3 chord, Vector3 m0, Vector3 m1, Vector3 bow, bool swap, double u)
    {
        double v = 1 - u, bump = 16 * u * u * v * v * (swap ? 2 * (v - u) : 1);
        return (u * u * (3 - (2 * u)) * chord) + (u * v * v * m0) - (u * u * v * m1) + (bump * bow);
    }

    private static double LengthOf(Vector3 chord, Vector3 m0, Vector3 m1, Vector3 bow, bool swap)
    {
        var sum = 0.0;
        var last = default(Vector3);
        for (var i = 1; i <= 32; i++)
        {
            var next = At(chord, m0, m1, bow, swap, i / 32.0);
            sum += (next - last).Size;
            last = next;
        }

        return sum;
    }

    private static Vector3[] Resample(Vector3 chord, Vector3 m0, Vector3 m1, Vector3 bow, bool swap, int segments)
    {
        var points = new Vector3[Fine + 1];
        var at = new double[Fine + 1];
        for (var i = 1; i <= Fine; i++)
        {
            points[i] = At(chord, m0, m1, bow, swap, (double)i / Fine);
            at[i] = at[i - 1] + (points[i] - points[i - 1]).Size;
        }

        var tangents = new Vector3[segments + 1];
        var j = 1;
        for (var i = 0; i <= segments; i++)
        {
            var wanted = at[Fine] * i / segments;
            while (j < Fine && at[j] < wanted)
                j++;
            var d = points[j] - points[j - 1];
            tangents[i] = d.Size > 0 ? d.Unit() : i > 0 ? tangents[i - 1] : new(1, 0, 0);
        }

        return tangents;
    }
}
