using Throwright.Engine.Cushion;

namespace Throwright.Engine.Tests.Cushion.Oracle;

/// <summary>The opening of a ball valve by throwing points at the sphere.</summary>
public sealed class ValveSampledTests
{
    [Theory]
    [InlineData(40, 10)]
    [InlineData(40, 30)]
    [InlineData(30, 25)]
    [InlineData(42, 70)]
    public void Share_IsThePartOfTheMouthThatBothBoresShare(double half, double fromOpen)
    {
        double cap = half * Math.PI / 180, turn = fromOpen * Math.PI / 180;
        var random = new Random(5);
        int hits = 0, of = 400_000;
        for (var n = 0; n < of; n++)
        {
            // Even on the cap about +z: z even between cos(cap) and 1.
            double z = Math.Cos(cap) + ((1 - Math.Cos(cap)) * random.NextDouble()), a = 2 * Math.PI * random.NextDouble(), r = Math.Sqrt(1 - (z * z));
            if ((r * Math.Cos(a) * Math.Sin(turn)) + (z * Math.Cos(turn)) > Math.Cos(cap))
                hits++;
        }

        var share = hits / (double)of;
        Assert.Equal(share, ValveOpening.Share(Math.Sin(cap), turn), 4 * Math.Sqrt(share * (1 - share) / of));
    }
}
