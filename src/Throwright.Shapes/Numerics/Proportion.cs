namespace Throwright.Shapes.Numerics;

/// <summary>What a count of successes says about the true share.</summary>
public static class Proportion
{
    /// <summary>Two-sided 95 % point of the normal distribution.</summary>
    private const double Z95 = 1.959963984540054;

    /// <summary>The 95 % interval of a share from <paramref name="hits"/> in <paramref name="of"/>.</summary>
    /// <remarks>
    /// E. B. Wilson, J. Am. Stat. Assoc. 22 (1927) 209-212; compared with others by Newcombe, Stat. Med. 17 (1998) 857-872.
    /// (p + z^2/2n -/+ z sqrt(p(1-p)/n + z^2/4n^2)) / (1 + z^2/n)
    /// </remarks>
    public static Interval Wilson(long hits, long of)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(of, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(hits);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(hits, of);
        double n = of, p = hits / n, zz = Z95 * Z95 / n;
        var middle = p + (zz / 2);
        var half = Math.Sqrt((p * (1 - p) * zz) + (zz * zz / 4));
        // At 0 and n of n the formula ends at 0 and 1; rounding may leave 1e-17.
        return new(hits == 0 ? 0 : (middle - half) / (1 + zz), hits == of ? 1 : (middle + half) / (1 + zz));
    }

    /// <summary>
    /// Smallest number of samples whose <paramref name="rank"/>-th largest value bounds a share of the population
    /// with the given confidence (S. S. Wilks, Ann. Math. Stat. 12 (1941) 91-96).
    /// </summary>
    public static int WilksCount(double share, double confidence, int rank = 1)
    {
        if (!(share is > 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(share), share, "must lie between 0 and 1");
        if (!(confidence is > 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "must lie between 0 and 1");
        ArgumentOutOfRangeException.ThrowIfLessThan(rank, 1);
        for (var n = rank; ; n++)
        {
            // P(fewer than rank of n lie above the share's point), binomial; in logarithms, for share^n leaves the
            // range of a double long before the sum does.
            var term = n * Math.Log(share);
            var below = Math.Exp(term);
            for (var k = 1; k < rank; k++)
            {
                term += Math.Log((n - k + 1) / (double)k * (1 - share) / share);
                below += Math.Exp(term);
            }

            if (1 - below >= confidence)
                return n;
        }
    }
}
