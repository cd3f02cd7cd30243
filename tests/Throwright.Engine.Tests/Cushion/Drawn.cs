using Throwright.Engine.Cushion;
using Throwright.Shapes;

namespace Throwright.Engine.Tests.Cushion;

/// <summary>Single drawn installations, and the odds of one cushion.</summary>
internal static class Drawn
{
    /// <summary>Cushion <paramref name="cushion"/> of the first samples, in order of drawing.</summary>
    public static double[] Samples(LadderCase of, int count, ulong seed, int cushion, bool atRigging = false)
    {
        var drawn = new LadderSamples(of, seed);
        var result = new double[count];
        for (var n = 0; n < count; n += LadderSamples.Most)
        {
            var some = Math.Min(LadderSamples.Most, count - n);
            drawn.Draw(n, some);
            (atRigging ? drawn.AtRigging(cushion) : drawn.AtWorst(cushion))[..some].CopyTo(result.AsSpan(n));
        }

        return result;
    }

    /// <summary>The same question of each cushion.</summary>
    public static EquatableList<CushionOdds> Odds(LadderCase of, long samples, ulong seed, int threads = 1, double wanted = 0, double middle = 0, double half = 1) =>
        LadderOdds.Draw(of, samples, seed, [.. Enumerable.Repeat(new CushionAsk(wanted, middle, half), LadderOdds.CushionCount)], threads);
}
