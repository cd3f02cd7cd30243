namespace Throwright.Shapes.Curves;

/// <summary>A small symmetric matrix that may be indefinite, factored with complete pivoting.</summary>
/// <remarks>
/// J. R. Bunch and B. N. Parlett, SIAM J. Numer. Anal. 8 (1971) 639-655: pivots of one row, or of two where no diagonal
/// entry is large enough. A pivot of two rows has one eigenvalue of each sign, so the signs are counted on the way
/// (Sylvester's law of inertia).
/// </remarks>
internal sealed class SymmetricFactor
{
    private static readonly double Alpha = (1 + Math.Sqrt(17)) / 8;
    private int size;
    private double[] a = [], y = [];
    private int[] order = [];
    private bool[] pair = [];

    /// <summary>How many eigenvalues are below zero.</summary>
    public int Negatives { get; private set; }

    public bool IsSingular { get; private set; }

    /// <param name="matrix">Row by row; overwritten.</param>
    public void Run(double[] matrix, int rows)
    {
        (a, size, Negatives, IsSingular) = (matrix, rows, 0, false);
        if (order.Length < size)
            (order, pair, y) = (new int[size], new bool[size], new double[size]);
        for (var i = 0; i < size; i++)
            (order[i], pair[i]) = (i, false);
        Run();
    }

    /// <summary>Overwrites the right-hand side with the solution.</summary>
    public void Solve(double[] rhs)
    {
        for (var i = 0; i < size; i++)
            y[i] = rhs[order[i]];
        for (var k = 0; k < size; k += pair[k] ? 2 : 1)
        {
            for (var i = k + (pair[k] ? 2 : 1); i < size; i++)
                y[i] -= (a[(i * size) + k] * y[k]) + (pair[k] ? a[(i * size) + k + 1] * y[k + 1] : 0);
        }

        for (var k = 0; k < size; k += pair[k] ? 2 : 1)
        {
            if (!pair[k])
            {
                y[k] /= a[(k * size) + k];
                continue;
            }

            double p = a[(k * size) + k], q = a[((k + 1) * size) + k], r = a[((k + 1) * size) + k + 1], det = (p * r) - (q * q);
            (y[k], y[k + 1]) = (((r * y[k]) - (q * y[k + 1])) / det, ((p * y[k + 1]) - (q * y[k])) / det);
        }

        for (var k = size - 1; k >= 0; k--)
        {
            for (var i = k + (pair[k] ? 2 : 1); i < size; i++)
                y[k] -= a[(i * size) + k] * y[i];
        }

        for (var i = 0; i < size; i++)
            rhs[order[i]] = y[i];
    }

    private void Run()
    {
        for (var k = 0; k < size;)
        {
            double diagonal = -1, off = -1;
            int d = k, p = k, q = k;
            for (var i = k; i < size; i++)
            {
                if (Math.Abs(a[(i * size) + i]) > diagonal)
                    (diagonal, d) = (Math.Abs(a[(i * size) + i]), i);
                for (var j = k; j < i; j++)
                {
                    if (Math.Abs(a[(i * size) + j]) > off)
                        (off, p, q) = (Math.Abs(a[(i * size) + j]), i, j);
                }
            }

            if (!(Math.Max(diagonal, off) > 0))
            {
                IsSingular = true;
                return;
            }

            if (diagonal >= Alpha * off)
            {
                Swap(k, d);
                One(k);
                k++;
            }
            else
            {
                Swap(k, q);
                Swap(k + 1, p);
                Two(k);
                k += 2;
            }
        }
    }

    private void One(int k)
    {
        var pivot = a[(k * size) + k];
        if (pivot < 0)
            Negatives++;
        for (var i = k + 1; i < size; i++)
        {
            var l = a[(i * size) + k] / pivot;
            for (var j = k + 1; j <= i; j++)
                a[(j * size) + i] = a[(i * size) + j] -= l * a[(k * size) + j];
        }

        for (var i = k + 1; i < size; i++)
            a[(i * size) + k] /= pivot;
    }

    private void Two(int k)
    {
        Negatives++;
        pair[k] = true;
        double p = a[(k * size) + k], q = a[((k + 1) * size) + k], r = a[((k + 1) * size) + k + 1], det = (p * r) - (q * q);
        for (var i = k + 2; i < size; i++)
        {
            double u = a[(k * size) + i], v = a[((k + 1) * size) + i];
            double l = ((r * u) - (q * v)) / det, m = ((p * v) - (q * u)) / det;
            for (var j = k + 2; j <= i; j++)
                a[(j * size) + i] = a[(i * size) + j] -= (l * a[(k * size) + j]) + (m * a[((k + 1) * size) + j]);
        }

        for (var i = k + 2; i < size; i++)
        {
            double u = a[(k * size) + i], v = a[((k + 1) * size) + i];
            a[(i * size) + k] = ((r * u) - (q * v)) / det;
            a[(i * size) + k + 1] = ((p * v) - (q * u)) / det;
        }
    }

    private void Swap(int i, int j)
    {
        if (i == j)
            return;
        (order[i], order[j]) = (order[j], order[i]);
        for (var c = 0; c < size; c++)
            (a[(i * size) + c], a[(j * size) + c]) = (a[(j * size) + c], a[(i * size) + c]);
        for (var r = 0; r < size; r++)
            (a[(r * size) + i], a[(r * size) + j]) = (a[(r * size) + j], a[(r * size) + i]);
    }
}
