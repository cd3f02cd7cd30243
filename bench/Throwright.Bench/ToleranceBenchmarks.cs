using BenchmarkDotNet.Attributes;
using Throwright.Engine.Cushion;

namespace Throwright.Bench;

/// <summary>tolerance-1e6: a million installations with twelve toleranced inputs, four cushions, rigged and at the worst temperature.</summary>
public class ToleranceBenchmarks
{
    private const int Samples = 1_000_000;
    private const ulong Seed = 20_250_101;

    [Params(1, 2)]
    public int Threads { get; set; }

    /// <summary>The same bytes with any number of threads, or the figures mean nothing.</summary>
    [GlobalSetup]
    public void SameBytes()
    {
        LadderOdds one = LadderOdds.Draw(Demo.TwelveInputs, Samples, Seed), more = LadderOdds.Draw(Demo.TwelveInputs, Samples, Seed, Threads);
        for (var cushion = 0; cushion < 4; cushion++)
        {
            if (!System.Runtime.InteropServices.MemoryMarshal.AsBytes(one.WorstTemperatureSamples(cushion)).SequenceEqual(System.Runtime.InteropServices.MemoryMarshal.AsBytes(more.WorstTemperatureSamples(cushion))))
                throw new InvalidOperationException($"cushion {cushion}: other bytes with {Threads} threads");
        }
    }

    [Benchmark(Description = "tolerance-1e6")]
    public LadderOdds Draw() => LadderOdds.Draw(Demo.TwelveInputs, Samples, Seed, Threads);
}
