using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Numerics.Reference;

public class ProportionTests
{
    /// <remarks>
    /// R. G. Newcombe, Statistics in Medicine 17 (1998) 857-872, Table I, method 3 (score). S: read where a public test
    /// quotes the table by name. Printed to four places.
    /// </remarks>
    [Theory]
    [Trait("Check", "T5")]
    [InlineData(81, 263, 0.2553, 0.3662)]
    [InlineData(15, 148, 0.0624, 0.1605)]
    [InlineData(0, 20, 0, 0.1611)]
    [InlineData(1, 29, 0.0061, 0.1718)]
    [InlineData(29, 29, 0.8830, 1)]
    public void Wilson_NewcombesTable_AgreesInAllPlaces(long hits, long of, double low, double high)
    {
        var interval = Proportion.Wilson(hits, of);
        Assert.Equal(low, interval.Low, 5e-5);
        Assert.Equal(high, interval.High, 5e-5);
    }

    /// <remarks>
    /// S. S. Wilks, Ann. Math. Stat. 12 (1941) 91-96: smallest n with 1 - share^n >= confidence, and its extension to
    /// the k-th largest. R: formula and figures in a statistics package's documentation.
    /// </remarks>
    [Theory]
    [Trait("Check", "T4")]
    [InlineData(0.95, 0.95, 1, 59)]
    [InlineData(0.95, 0.95, 2, 93)]
    [InlineData(0.95, 0.95, 3, 124)]
    [InlineData(0.95, 0.95, 4, 153)]
    [InlineData(0.95, 0.95, 5, 181)]
    [InlineData(0.95, 0.99, 1, 90)]
    [InlineData(0.99, 0.95, 1, 299)]
    public void WilksCount_PublishedCounts_Agree(double share, double confidence, int rank, int count)
    {
        Assert.Equal(count, Proportion.WilksCount(share, confidence, rank));
    }
}
