using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Numerics.Laws;

/// <summary>All seeds are fixed, so these tests give the same figures every time.</summary>
public class CounterRandomTests
{
    private const int Draws = 1_000_000;

    [Fact]
    public void Uniform_MillionDraws_FillAThousandBinsEvenly()
    {
        foreach (var (seed, stream) in ((ulong, int)[])[(0, 0), (1, 0), (0, 1), (42, 7), (ulong.MaxValue, -1)])
        {
            var random = new CounterRandom(seed, stream);
            var bins = new int[1000];
            for (var i = 0; i < Draws; i++)
                bins[(int)(random.Uniform(i) * 1000)]++;
            AssertChiSquare(bins, $"seed {seed}, stream {stream}");
        }
    }

    [Fact]
    public void Uniform_NeighbouringPositionsAndStreams_FillTheSquareEvenly()
    {
        int[] positions = new int[1024], streams = new int[1024], seeds = new int[1024];
        CounterRandom a = new(1, 0), b = new(1, 1), c = new(2, 0);
        for (var i = 0; i < Draws; i++)
        {
            var x = (int)(a.Uniform(i) * 32);
            positions[(32 * x) + (int)(a.Uniform(i + 1) * 32)]++;
            streams[(32 * x) + (int)(b.Uniform(i) * 32)]++;
            seeds[(32 * x) + (int)(c.Uniform(i) * 32)]++;
        }

        AssertChiSquare(positions, "positions");
        AssertChiSquare(streams, "streams");
        AssertChiSquare(seeds, "seeds");
    }

    [Fact]
    public void Uniform_TwentyStreamsOfOneSeed_AreUncorrelated()
    {
        const int Count = 100_000;
        var streams = new double[20][];
        for (var s = 0; s < streams.Length; s++)
        {
            var random = new CounterRandom(2026, s);
            streams[s] = [.. Enumerable.Range(0, Count).Select(i => random.Uniform(i) - 0.5)];
        }

        for (var s = 0; s < streams.Length; s++)
        {
            for (var t = 0; t <= s; t++)
            {
                foreach (var lag in (int[])[0, 1, 2, 3, 4, 8, 1000])
                {
                    if (s == t && lag == 0)
                        continue;
                    double sum = 0;
                    for (var i = lag; i < Count; i++)
                        sum += streams[s][i] * streams[t][i - lag];
                    // A product of two such numbers has variance 1/144; five standard errors.
                    Assert.InRange(sum * 12 / Math.Sqrt(Count), -5, 5);
                }
            }
        }
    }

    [Fact]
    public void Uniform_Moments_AreThoseOfTheUniformDistribution()
    {
        var random = new CounterRandom(3, 4);
        double sum = 0, squares = 0;
        for (var i = 0; i < Draws; i++)
        {
            var u = random.Uniform(i) - 0.5;
            sum += u;
            squares += u * u;
        }

        // Five standard errors: sqrt(1/12/n) and sqrt(1/180/n).
        Assert.Equal(0, sum / Draws, 5 * Math.Sqrt(1.0 / 12 / Draws));
        Assert.Equal(1.0 / 12, squares / Draws, 5 * Math.Sqrt(1.0 / 180 / Draws));
    }

    [Fact]
    public void UniformLane_AnyPositionAndStep_IsThatOfSingleNumbers()
    {
        var positions = new Random(9);
        var random = new CounterRandom(77, 3);
        for (var i = 0; i < 100_000; i++)
        {
            var position = i switch { < 1000 => i, < 2000 => -i, 2000 => long.MaxValue, 2001 => long.MinValue, _ => positions.NextInt64() };
            var step = i % 3 == 0 ? 1 : positions.Next(-20, 20);
            var lane = random.UniformLane(position, step);
            for (var k = 0; k < Lane.Width; k++)
                Assert.Equal(BitConverter.DoubleToInt64Bits(random.Uniform(unchecked(position + (k * step)))), BitConverter.DoubleToInt64Bits(lane[k]));
        }
    }

    [Fact]
    public void Uniform_AskedInAnyOrderByAnyThread_IsTheSame()
    {
        var straight = Enumerable.Range(0, 10_000).Select(i => new CounterRandom(5, 6).Uniform(i)).ToArray();
        var random = new CounterRandom(5, 6);
        Assert.Equal(straight, Enumerable.Range(0, 10_000).Reverse().Select(i => random.Uniform(i)).Reverse());
        var parallel = new double[10_000];
        Parallel.For(0, 10_000, i => parallel[i] = random.Uniform(i));
        Assert.Equal(straight, parallel);
    }

    [Fact]
    public void Uniform_MillionsOfDraws_AreNeverAnEndAndAlwaysAnOddMultipleOfTheStep()
    {
        var random = new CounterRandom(8, 9);
        for (var i = 0; i < 3 * Draws; i++)
        {
            var u = random.Uniform(i);
            // (k + 1/2) 2^-52 with whole k: so neither 0 nor 1 can occur, whatever the bits.
            var odd = u * Math.ScaleB(1, 53);
            if (!(u is > 0 and < 1) || odd != Math.Floor(odd) || ((long)odd & 1) == 0)
                Assert.Fail($"{u:R} at {i}");
        }
    }

    [Fact]
    public void Uniform_StreamsAndSeeds_DoNotRepeatEachOther()
    {
        var first = new HashSet<double>();
        for (var seed = 0; seed < 100; seed++)
        {
            for (var stream = -50; stream < 50; stream++)
                Assert.True(first.Add(new CounterRandom((ulong)seed, stream).Uniform(0)), $"seed {seed}, stream {stream}");
        }
    }

    /// <summary>Chi-square within five standard deviations of its mean, either side: too even is as wrong as too uneven.</summary>
    private static void AssertChiSquare(int[] bins, string what)
    {
        var expected = bins.Sum(n => (double)n) / bins.Length;
        var chiSquare = bins.Sum(n => (n - expected) * (n - expected) / expected);
        var freedom = bins.Length - 1;
        Assert.True(Math.Abs(chiSquare - freedom) < 5 * Math.Sqrt(2 * freedom), $"{what}: chi-square {chiSquare} with {freedom} degrees of freedom");
    }
}
