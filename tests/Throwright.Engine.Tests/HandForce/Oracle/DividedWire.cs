namespace Throwright.Engine.Tests.HandForce.Oracle;

/// <summary>
/// A stiff wire passing from a straight channel into a bent one, cut into equal pieces: the shape of least bending
/// energy between two stiff walls. mm and N.
/// </summary>
/// <remarks>
/// w sideways place against the channel's middle, s along it; the wire's curvature is the channel's plus w''. Energy:
/// sum of E I (kappa + w'')^2 h / 2 plus k/2 x (depth of a node in a wall)^2. The far end on the straight side is free, the one in
/// the bend is the middle of the bend (slope zero). The energy is convex and, between changes of contact, quadratic:
/// Newton's method with halved steps finds its least. Each step solves five bands by elimination.
/// </remarks>
internal static class DividedWire
{
    /// <summary>Total force on the wall of each side, and the place of its middle against the bend's begin.</summary>
    public static (double Outer, double OuterAt, double Inner, double InnerAt) Enter(double stiffness, double radius, double clearance, double reach, int nodes)
    {
        var h = 2 * reach / nodes;
        var n = nodes + 1;
        double At(int i) => -reach + (i * h);
        // The middle node of the channel's change of curvature carries half of it.
        double Kappa(int i) => At(i) > 1e-9 ? 1 / radius : At(i) < -1e-9 ? 0 : 0.5 / radius;
        double wall = 1e5 * h, half = clearance / 2;
        var w = new double[n];

        double Bend(double[] x, int i) => Kappa(i) + (i == n - 1 ? 2 * (x[i - 1] - x[i]) : x[i - 1] - (2 * x[i]) + x[i + 1]) / (h * h);
        double Share(int i) => i == n - 1 ? 0.5 * h : h;
        static double Depth(double x, double half) => x > half ? x - half : x < -half ? x + half : 0;

        double Energy(double[] x)
        {
            double sum = 0;
            for (var i = 1; i < n; i++)
                sum += 0.5 * stiffness * Bend(x, i) * Bend(x, i) * Share(i);
            for (var i = 0; i < n; i++)
                sum += (0.5 * wall * Depth(x[i], half) * Depth(x[i], half)) + (0.5e-9 * x[i] * x[i]);
            return sum;
        }

        for (var step = 0; step < 400; step++)
        {
            // Bands: [i][0] diagonal, [i][1] next, [i][2] next but one.
            var bands = new double[n, 3];
            var slope = new double[n];
            for (var i = 1; i < n; i++)
            {
                (int At, double By)[] row = i == n - 1 ? [(i - 1, 2 / (h * h)), (i, -2 / (h * h))] : [(i - 1, 1 / (h * h)), (i, -2 / (h * h)), (i + 1, 1 / (h * h))];
                foreach (var (p, a) in row)
                {
                    slope[p] += stiffness * Bend(w, i) * a * Share(i);
                    foreach (var (q, b) in row)
                    {
                        if (q >= p)
                            bands[p, q - p] += stiffness * a * b * Share(i);
                    }
                }
            }

            for (var i = 0; i < n; i++)
            {
                slope[i] += (wall * Depth(w[i], half)) + (1e-9 * w[i]);
                bands[i, 0] += (Depth(w[i], half) != 0 ? wall : 0) + 1e-9;
            }

            var move = Solve(bands, slope);
            double length = 1, before = Energy(w);
            double[] next;
            do
            {
                next = [.. w.Select((x, i) => x - (length * move[i]))];
                length *= 0.5;
            }
            while (Energy(next) > before && length > 1e-9);
            var moved = w.Zip(next).Max(p => Math.Abs(p.First - p.Second));
            w = next;
            if (moved < 1e-9)
                break;
        }

        (double Force, double Middle) Side(int sign)
        {
            var forces = Enumerable.Range(0, n).Select(i => (At: At(i), Force: Math.Max(0, sign * Depth(w[i], half)) * wall)).ToList();
            var total = forces.Sum(f => f.Force);
            return (total, forces.Sum(f => f.At * f.Force) / total);
        }

        // kappa + w'' is kept small: in the bend the wire lies on the side where w'' is negative, outward is positive w.
        var (inner, innerAt) = Side(-1);
        var (outer, outerAt) = Side(1);
        return (outer, outerAt, inner, innerAt);
    }

    /// <summary>Symmetric five bands by elimination without exchange (the matrix is positive definite).</summary>
    private static double[] Solve(double[,] bands, double[] right)
    {
        var n = right.Length;
        var a = (double[,])bands.Clone();
        var x = (double[])right.Clone();
        for (var i = 0; i < n; i++)
        {
            double f1 = i + 1 < n ? a[i, 1] / a[i, 0] : 0, f2 = i + 2 < n ? a[i, 2] / a[i, 0] : 0;
            if (i + 1 < n)
            {
                a[i + 1, 0] -= f1 * a[i, 1];
                a[i + 1, 1] -= f1 * a[i, 2];
                x[i + 1] -= f1 * x[i];
            }

            if (i + 2 < n)
            {
                a[i + 2, 0] -= f2 * a[i, 2];
                x[i + 2] -= f2 * x[i];
            }
        }

        for (var i = n - 1; i >= 0; i--)
        {
            var sum = x[i];
            if (i + 1 < n)
                sum -= a[i, 1] * x[i + 1];
            if (i + 2 < n)
                sum -= a[i, 2] * x[i + 2];
            x[i] = sum / a[i, 0];
        }

        return x;
    }
}
