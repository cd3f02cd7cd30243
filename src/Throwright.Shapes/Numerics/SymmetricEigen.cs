namespace Throwright.Shapes.Numerics;

/// <summary>Eigenvalues and eigenvectors of a small symmetric matrix, by Jacobi's turns.</summary>
/// <remarks>G. H. Golub and C. F. Van Loan, Matrix Computations, section on Jacobi methods: cyclic, to full accuracy.</remarks>
public static class SymmetricEigen
{
    /// <summary>Values in falling order, and the unit vector of each (vectors[k] belongs to values[k]).</summary>
    public static (double[] Values, double[][] Vectors) Of(double[,] matrix)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        var n = matrix.GetLength(0);
        if (matrix.GetLength(1) != n)
            throw new ArgumentException("the matrix is not square", nameof(matrix));
        var a = (double[,])matrix.Clone();
        var v = new double[n, n];
        for (var i = 0; i < n; i++)
            v[i, i] = 1;
        for (var sweep = 0; sweep < 60; sweep++)
        {
            var off = 0.0;
            var all = 0.0;
            for (var i = 0; i < n; i++)
            {
                for (var j = 0; j < n; j++)
                {
                    all += a[i, j] * a[i, j];
                    off += i == j ? 0 : a[i, j] * a[i, j];
                }
            }

            if (off <= 1e-32 * all)
                break;
            for (var p = 0; p < n; p++)
            {
                for (var q = p + 1; q < n; q++)
                    Turn(a, v, p, q, n);
            }
        }

        var order = Enumerable.Range(0, n).OrderByDescending(i => a[i, i]).ToArray();
        return ([.. order.Select(i => a[i, i])], [.. order.Select(i => Enumerable.Range(0, n).Select(r => v[r, i]).ToArray())]);
    }

    private static void Turn(double[,] a, double[,] v, int p, int q, int n)
    {
        if (a[p, q] == 0)
            return;
        var ratio = (a[q, q] - a[p, p]) / (2 * a[p, q]);
        var t = (ratio >= 0 ? 1 : -1) / (Math.Abs(ratio) + Math.Sqrt((ratio * ratio) + 1));
        double c = 1 / Math.Sqrt((t * t) + 1), s = t * c;
        for (var k = 0; k < n; k++)
            (a[k, p], a[k, q]) = ((c * a[k, p]) - (s * a[k, q]), (s * a[k, p]) + (c * a[k, q]));
        for (var k = 0; k < n; k++)
            (a[p, k], a[q, k]) = ((c * a[p, k]) - (s * a[q, k]), (s * a[p, k]) + (c * a[q, k]));
        for (var k = 0; k < n; k++)
            (v[k, p], v[k, q]) = ((c * v[k, p]) - (s * v[k, q]), (s * v[k, p]) + (c * v[k, q]));
    }
}
