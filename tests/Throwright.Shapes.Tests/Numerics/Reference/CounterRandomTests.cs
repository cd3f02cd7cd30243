using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Numerics.Reference;

public class CounterRandomTests
{
    /// <remarks>
    /// First five outputs of SplitMix64 from state 1234567 as printed at Rosetta Code, task "Pseudo-random
    /// numbers/Splitmix64" (S: read where test suites of other projects quote them).
    /// </remarks>
    [Fact]
    public void Uniform_PublishedSequence_ComesBackFromTheSameState()
    {
        ulong[] published = [6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821];
        // The key is mixed from seed and stream; take the mixing back to start from the published state.
        const int Stream = 3;
        var random = new CounterRandom(Unmixed(1234567) - Mixed(Stream + 0x9E3779B97F4A7C15), Stream);
        for (var i = 0; i < published.Length; i++)
            Assert.Equal(((published[i] >> 12) + 0.5) * Math.ScaleB(1, -52), random.Uniform(i + 1));
    }

    private static ulong Mixed(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }

    private static ulong Unmixed(ulong z)
    {
        z = z ^ (z >> 31) ^ (z >> 62);
        z *= Inverse(0x94D049BB133111EB);
        z = z ^ (z >> 27) ^ (z >> 54);
        z *= Inverse(0xBF58476D1CE4E5B9);
        return z ^ (z >> 30) ^ (z >> 60);
    }

    /// <summary>The inverse of an odd number modulo 2^64: five Newton steps, each doubling the bits that are right.</summary>
    private static ulong Inverse(ulong odd)
    {
        var x = odd;
        for (var i = 0; i < 6; i++)
            x *= 2 - (odd * x);
        return x;
    }
}
