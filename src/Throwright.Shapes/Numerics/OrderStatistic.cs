namespace Throwright.Shapes.Numerics;

/// <summary>The k-th smallest of many values, without sorting them all.</summary>
public static class OrderStatistic
{
    /// <summary>
    /// Value number <paramref name="rank"/> in rising order, from 0; NaN if one of them is, for it has no place in the
    /// order. The values are reordered.
    /// </summary>
    /// <remarks>
    /// C. A. R. Hoare's selection (Comm. ACM 4 (1961) 321), pivot the middle one of three: each round leaves the part that
    /// holds the rank, so the work grows with the count and not with its logarithm too.
    /// </remarks>
    public static double Of(Span<double> values, int rank)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(rank);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(rank, values.Length);
        foreach (var value in values)
        {
            if (double.IsNaN(value))
                return double.NaN;
        }

        int low = 0, high = values.Length - 1;
        while (low < high)
        {
            double a = values[low], b = values[low + ((high - low) / 2)], c = values[high];
            var pivot = Math.Max(Math.Min(a, b), Math.Min(Math.Max(a, b), c));
            int i = low, j = high;
            while (i <= j)
            {
                while (values[i] < pivot)
                    i++;
                while (values[j] > pivot)
                    j--;
                if (i > j)
                    break;
                (values[i], values[j]) = (values[j], values[i]);
                i++;
                j--;
            }

            if (rank <= j)
                high = j;
            else if (rank >= i)
                low = i;
            else
                return values[rank];
        }

        return values[rank];
    }
}
