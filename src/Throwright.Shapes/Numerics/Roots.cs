namespace Throwright.Shapes.Numerics;

/// <summary>Roots of one equation in one unknown.</summary>
public static class Roots
{
    /// <summary>The root between two points where the function has opposite signs, by Brent's method.</summary>
    /// <remarks>
    /// R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 4; halving only, if that has not
    /// closed after 100 steps. Where the function jumps through zero, the place of the jump is returned.
    /// </remarks>
    /// <exception cref="ArgumentException">The function has the same sign at both points, or no value at one.</exception>
    /// <exception cref="ArithmeticException">The function has no value at a point between.</exception>
    public static double Between(Func<double, double> f, double a, double b, double tolerance = 1e-15)
    {
        double fa = f(a), fb = f(b);
        if (fa == 0)
            return a;
        if (fb == 0)
            return b;
        if (double.IsNaN(fa) || double.IsNaN(fb) || fa > 0 == fb > 0)
            throw new ArgumentException($"no change of sign between {a} and {b}: {fa}, {fb}", nameof(f));
        var root = Close(f, a, fa, b, fb, tolerance);
        return double.IsNaN(root) ? throw new ArithmeticException($"no value somewhere between {a} and {b}") : root;
    }

    /// <summary>The root; NaN where the function turned out to have no value.</summary>
    private static double Close(Func<double, double> f, double a, double fa, double b, double fb, double tolerance)
    {
        double c = a, fc = fa, d = b - a, e = d;
        for (var i = 0; ; i++)
        {
            if (fb > 0 == fc > 0)
            {
                (c, fc) = (a, fa);
                d = e = b - a;
            }

            if (Math.Abs(fc) < Math.Abs(fb))
                (a, b, c, fa, fb, fc) = (b, c, b, fb, fc, fb);
            var close = (2 * double.Epsilon) + (0.5 * tolerance) + (2.2e-16 * Math.Abs(b));
            var half = 0.5 * (c - b);
            if (Math.Abs(half) <= close || fb == 0)
                return b;
            if (i > 100 || Math.Abs(e) < close || Math.Abs(fa) <= Math.Abs(fb))
            {
                d = e = half;
            }
            else
            {
                double s = fb / fa, p, q;
                if (a == c)
                {
                    p = 2 * half * s;
                    q = 1 - s;
                }
                else
                {
                    var t = fa / fc;
                    var r = fb / fc;
                    p = s * ((2 * half * t * (t - r)) - ((b - a) * (r - 1)));
                    q = (t - 1) * (r - 1) * (s - 1);
                }

                if (p > 0)
                    q = -q;
                else
                    p = -p;
                if (2 * p < Math.Min((3 * half * q) - Math.Abs(close * q), Math.Abs(e * q)))
                {
                    e = d;
                    d = p / q;
                }
                else
                {
                    d = e = half;
                }
            }

            (a, fa) = (b, fb);
            b += Math.Abs(d) > close ? d : half > 0 ? close : -close;
            fb = f(b);
            if (double.IsNaN(fb))
                return double.NaN;
        }
    }

    /// <summary>
    /// All roots that a scan of equal steps can see, in rising order: each change of sign is closed by
    /// <see cref="Between"/>. Two roots nearer than a step, or a touching root, are missed: choose the step from the
    /// function's own scale. A change of sign through a pole, or across a gap where the function has no value, is no
    /// root; a jump through zero counts as one.
    /// </summary>
    public static IReadOnlyList<double> All(Func<double, double> f, double from, double to, int steps, double tolerance = 1e-15)
    {
        var roots = new List<double>();
        var x0 = from;
        var f0 = f(x0);
        for (var i = 1; i <= steps; i++)
        {
            var x1 = i == steps ? to : from + ((to - from) * i / steps);
            var f1 = f(x1);
            if (f0 == 0)
            {
                roots.Add(x0);
            }
            else if (double.IsFinite(f0) && double.IsFinite(f1) && f0 > 0 != f1 > 0 && f1 != 0)
            {
                // Toward a root the function shrinks, toward a pole it grows.
                var root = Close(f, x0, f0, x1, f1, tolerance);
                if (!double.IsNaN(root) && Math.Abs(f(root)) <= Math.Min(Math.Abs(f0), Math.Abs(f1)))
                    roots.Add(root);
            }

            (x0, f0) = (x1, f1);
        }

        if (f0 == 0)
            roots.Add(x0);
        return roots;
    }
}
