using BenchmarkDotNet.Attributes;
using Throwright.Engine.Cushion;
using Throwright.Shapes;

namespace Throwright.Bench;

/// <summary>tolerance-1e6: a million installations with twelve toleranced inputs, four cushions, rigged and at the worst temperature.</summary>
public class ToleranceBenchmarks
{
    private const int Samples = 1_000_000;
    private const ulong Seed = 20_250_101;

    [Params(1, 2)]
    public int Threads { get; set; }

    /// <summary>The same figures with any number of threads, or the times mean nothing.</summary>
    [GlobalSetup]
    public void SameBytes()
    {
        if (!Draw(1).Equals(Draw(Threads)))
            throw new InvalidOperationException($"other figures with {Threads} threads");
    }

    [Benchmark(Description = "tolerance-1e6")]
    public EquatableList<CushionOdds> Draw() => Draw(Threads);

    /// <summary>Of each cushion: the middle 95 %, the count that keeps 1/8 in, the count outside a band.</summary>
    internal static EquatableList<CushionOdds> Draw(int threads) =>
        LadderOdds.Draw(Demo.TwelveInputs, Samples, Seed, [.. Enumerable.Repeat(new CushionAsk(3.175e-3, 9.6e-3, 1.4e-3), LadderOdds.CushionCount)], threads);
}
