namespace Throwright.Shapes.Curves;

/// <summary>A small symmetric matrix that may be indefinite, factored with pivots of one row or two.</summary>
/// <remarks>
/// Rook pivoting (C. Ashcraft, R. Grimes, J. Lewis, SIAM J. Matrix Anal. Appl. 20 (1998) 513-561): a diagonal entry serves where it is
/// not much smaller than the largest of its row; else two rows whose largest entries are that of each other. Such a pair has one
/// eigenvalue of each sign, so the signs are counted on the way (Sylvester's law of inertia).
/// Where the matrix is a chain, it is taken stage by stage: only rows that later stages do not add to are pivots, and one that no
/// stable pivot is found for waits for the next stage (I. Duff, J. Reid, ACM Trans. Math. Softw. 9 (1983) 302-325).
/// </remarks>
internal sealed class SymmetricFactor
{
    // A diagonal entry serves where it is at least this part of the largest of its row, each row in its own measure.
    private const double Enough = 0.1;
    private double[] a = [], weight = [], even = [];

    // Pivots in their order; a pair takes two entries. The rows that were left when each was taken.
    private int[] order = [], left = [], from = [], rows = [];
    private bool[] pair = [];
    private int size, active, done, kept;

    /// <summary>How many eigenvalues are below zero.</summary>
    public int Negatives { get; private set; }

    public bool IsSingular { get; private set; }

    /// <param name="matrix">Row by row; overwritten.</param>
    public void Run(double[] matrix, int rows)
    {
        if (even.Length < rows)
            Array.Fill(even = new double[rows], 1);
        Run(matrix, rows, null, null, 1, even);
    }

    /// <param name="matrix">Row by row; overwritten.</param>
    /// <param name="first">Stage at which each row comes in; null: all are there from the start.</param>
    /// <param name="last">Stage after which no other row comes in that it has an entry with.</param>
    /// <param name="weights">What each row and column is multiplied by to be compared with the others.</param>
    public void Run(double[] matrix, int rows, int[]? first, int[]? last, int stages, double[] weights)
    {
        (a, weight, size, Negatives, IsSingular, active, done, kept) = (matrix, weights, rows, 0, false, 0, 0, 0);
        if (order.Length < size)
            (order, left, from, pair, this.rows) = (new int[size], new int[size], new int[size + 1], new bool[size], new int[size * size]);
        for (var stage = 0; stage < stages; stage++)
        {
            for (var i = 0; i < size; i++)
            {
                if ((first is null ? 0 : first[i]) == stage)
                    left[active++] = i;
            }

            // Ready rows stand before those that later stages add to.
            var ready = active;
            if (last is not null)
            {
                ready = 0;
                for (var n = 0; n < active; n++)
                {
                    if (last[left[n]] <= stage)
                        (left[n], left[ready], ready) = (left[ready], left[n], ready + 1);
                }
            }

            while (ready > 0 && Take(ref ready))
            {
            }

            if (stage == stages - 1 && active > 0)
                IsSingular = true;
        }
    }

    /// <summary>Overwrites the right-hand side with the solution.</summary>
    public void Solve(double[] rhs)
    {
        for (var k = 0; k < done; k += pair[k] ? 2 : 1)
        {
            int p = order[k] * size, q = pair[k] ? order[k + 1] * size : -1;
            double x = rhs[order[k]], z = q < 0 ? 0 : rhs[order[k + 1]];
            for (var n = from[k]; n < from[k + 1]; n++)
                rhs[rows[n]] -= (a[p + rows[n]] * x) + (q < 0 ? 0 : a[q + rows[n]] * z);
        }

        for (var k = done - 1; k >= 0; k--)
        {
            var i = order[k];
            if (k > 0 && pair[k - 1])
            {
                var j = order[k - 1];
                double e = a[(j * size) + j], f = a[(j * size) + i], g = a[(i * size) + i], det = (e * g) - (f * f);
                double x = ((g * rhs[j]) - (f * rhs[i])) / det, z = ((e * rhs[i]) - (f * rhs[j])) / det;
                for (var n = from[k - 1]; n < from[k]; n++)
                {
                    x -= a[(j * size) + rows[n]] * rhs[rows[n]];
                    z -= a[(i * size) + rows[n]] * rhs[rows[n]];
                }

                (rhs[j], rhs[i]) = (x, z);
                k--;
                continue;
            }

            var own = rhs[i] / a[(i * size) + i];
            for (var n = from[k]; n < from[k + 1]; n++)
                own -= a[(i * size) + rows[n]] * rhs[rows[n]];
            rhs[i] = own;
        }
    }

    /// <summary>One pivot among the rows that are ready; false: none of them is stable.</summary>
    private bool Take(ref int ready)
    {
        for (var c = 0; c < ready; c++)
        {
            var p = left[c];
            var (most, _) = Largest(p);
            var own = Math.Abs(a[(p * size) + p]) * weight[p];
            if (!(own >= Enough * most) || own == 0)
                continue;
            Leave(c, ref ready);
            One(p);
            return true;
        }

        for (var c = 0; c < ready; c++)
        {
            var p = left[c];
            var (most, at) = Largest(p);
            if (at < 0 || at >= ready)
                continue;
            var q = left[at];
            // The row of q holds nothing larger than what it shares with p, but for rounding in the two halves of the matrix.
            if (!(most > 0) || Largest(q).Most * weight[q] > (1 + 1e-9) * most * weight[p])
                continue;
            Leave(Math.Max(c, at), ref ready);
            Leave(Math.Min(c, at), ref ready);
            Two(p, q);
            return true;
        }

        return false;
    }

    /// <summary>The largest entry of a row off the diagonal, and where it stands among those left.</summary>
    private (double Most, int At) Largest(int row)
    {
        var (most, at) = (0.0, -1);
        for (var n = 0; n < active; n++)
        {
            var entry = Math.Abs(a[(row * size) + left[n]]) * weight[left[n]];
            if (entry > most && left[n] != row)
                (most, at) = (entry, n);
        }

        return (most, at);
    }

    private void Leave(int at, ref int ready)
    {
        ready--;
        active--;
        left[at] = left[ready];
        left[ready] = left[active];
    }

    /// <summary>The rows that a pivot has entries with; the others it leaves as they are.</summary>
    private int Touched(int p, int q)
    {
        var begin = kept;
        from[done] = begin;
        for (var n = 0; n < active; n++)
        {
            var i = left[n];
            if (a[(p * size) + i] != 0 || (q >= 0 && a[(q * size) + i] != 0))
                rows[kept++] = i;
        }

        return begin;
    }

    private void One(int p)
    {
        var pivot = a[(p * size) + p];
        if (pivot < 0)
            Negatives++;
        var begin = Touched(p, -1);
        var row = p * size;
        for (var n = begin; n < kept; n++)
        {
            var i = rows[n];
            var l = a[row + i] / pivot;
            for (var m = begin; m < n; m++)
            {
                var j = rows[m];
                a[(j * size) + i] = a[(i * size) + j] -= l * a[row + j];
            }

            a[(i * size) + i] -= l * a[row + i];
        }

        for (var n = begin; n < kept; n++)
            a[row + rows[n]] /= pivot;
        (order[done], pair[done]) = (p, false);
        from[++done] = kept;
    }

    private void Two(int p, int q)
    {
        Negatives++;
        int row = p * size, next = q * size;
        double e = a[row + p], f = a[row + q], g = a[next + q], det = (e * g) - (f * f);
        var begin = Touched(p, q);
        for (var n = begin; n < kept; n++)
        {
            var i = rows[n];
            double u = a[row + i], v = a[next + i], l = ((g * u) - (f * v)) / det, m = ((e * v) - (f * u)) / det;
            for (var o = begin; o < n; o++)
            {
                var j = rows[o];
                a[(j * size) + i] = a[(i * size) + j] -= (l * a[row + j]) + (m * a[next + j]);
            }

            a[(i * size) + i] -= (l * u) + (m * v);
        }

        for (var n = begin; n < kept; n++)
        {
            double u = a[row + rows[n]], v = a[next + rows[n]];
            (a[row + rows[n]], a[next + rows[n]]) = (((g * u) - (f * v)) / det, ((e * v) - (f * u)) / det);
        }

        (order[done], order[done + 1], pair[done], pair[done + 1]) = (p, q, true, false);
        from[done + 1] = from[done + 2] = kept;
        done += 2;
    }
}
