using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Curves.Oracle;

/// <summary>
/// A minimiser of its own kind: unit tangents at random, moved downhill by gradient steps of Barzilai and Borwein's length; the
/// ends meet by an augmented Lagrangian. No second derivatives, no matrix, no starts of the solver's.
/// </summary>
internal static class Restart
{
    private const int Legs = 24;

    /// <returns>Bending energy of the chain of legs; NaN where its ends don't meet.</returns>
    public static double Energy(ElasticProblem problem, CounterRandom random)
    {
        var h = problem.Length!.Value / Legs;
        Vector3 chord = problem.End!.Value - problem.Start, first = problem.StartDirection!.Value.Unit(), last = problem.EndDirection!.Value.Unit(), pull = default;
        var t = new Vector3[Legs + 1];
        Vector3[] wave = [.. Enumerable.Range(0, 4).Select(k => new Vector3(random.Uniform(3 * k) - 0.5, random.Uniform((3 * k) + 1) - 0.5, random.Uniform((3 * k) + 2) - 0.5))];
        for (var i = 0; i <= Legs; i++)
        {
            double u = (double)i / Legs, p = Math.PI * u;
            t[i] = (((1 - u) * first) + (u * last) + (6 * Math.Sin(p) * wave[0]) + (4 * Math.Sin(2 * p) * wave[1]) + (3 * Math.Sin(3 * p) * wave[2]) + (1e-3 * wave[3])).Unit();
        }

        (t[0], t[Legs]) = (first, last);
        var weight = 20.0;
        var gap = default(Vector3);
        Vector3[] old = new Vector3[Legs + 1], oldSlope = new Vector3[Legs + 1], slope = new Vector3[Legs + 1];
        for (var round = 0; round < 14; round++, weight = Math.Min(1.8 * weight, 4000))
        {
            var step = 0.05 * h;
            for (var i = 0; i < 400; i++)
            {
                gap = Gap(t, chord, h);
                var force = pull + (weight * gap);
                double ss = 0, sy = 0, size = 0;
                for (var j = 1; j < Legs; j++)
                {
                    // Of (1 - t.t')/h per leg and the gap h (t + t')/2.
                    var g = ((-1 / h) * (t[j - 1] + t[j + 1])) + (h * force);
                    g -= Vector3.Dot(g, t[j]) * t[j];
                    slope[j] = g;
                    size += Vector3.Dot(g, g);
                    Vector3 s = t[j] - old[j], y = g - oldSlope[j];
                    (ss, sy) = (ss + Vector3.Dot(s, s), sy + Vector3.Dot(s, y));
                }

                if (size < 1e-10)
                    break;
                if (i > 0)
                    step = sy > 0 ? Math.Min(ss / sy, 3 * h) : 0.05 * h;
                var part = Math.Min(step, 0.5 / Math.Sqrt(size));
                for (var j = 1; j < Legs; j++)
                {
                    (old[j], oldSlope[j]) = (t[j], slope[j]);
                    t[j] = (t[j] - (part * slope[j])).Unit();
                }
            }

            pull += weight * gap;
        }

        return Gap(t, chord, h).Size < 1e-4 ? Enumerable.Range(0, Legs).Sum(i => (1 - Vector3.Dot(t[i], t[i + 1])) / h) : double.NaN;
    }

    private static Vector3 Gap(Vector3[] t, Vector3 chord, double h)
    {
        var sum = 0.5 * (t[0] + t[Legs]);
        for (var i = 1; i < Legs; i++)
            sum += t[i];
        return (h * sum) - chord;
    }
}
