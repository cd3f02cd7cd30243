using System.Buffers;
using System.Runtime.Intrinsics;
using Throwright.Shapes.Numerics;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Cushion;

/// <summary>Many aircraft built at random within the tolerances: how the cushions come out.</summary>
/// <remarks>
/// Sample n of input i is number n of stream i, whatever thread asks: the same bytes with any number of threads.
/// A uniform input lies anywhere between its limits; a normal one has sigma = half range / 3 and is cut at its limits.
/// </remarks>
public sealed class LadderOdds
{
    private const int CushionCount = 4;

    /// <summary>Cushions at their worst temperature, by cushion, each in order of the samples.</summary>
    private readonly double[][] worst;

    /// <summary>The same at rigging temperature: what root-sum-square is held against.</summary>
    private readonly double[][] rigged;

    private LadderOdds(double[][] worst, double[][] rigged) => (this.worst, this.rigged) = (worst, rigged);

    public long Samples => worst[0].Length;

    /// <summary>Draws the samples on the calling thread, or on as many as are allowed.</summary>
    public static LadderOdds Draw(LadderCase of, long samples, ulong seed, int threads = 1)
    {
        ArgumentNullException.ThrowIfNull(of);
        ArgumentOutOfRangeException.ThrowIfLessThan(samples, 1);
        // Every place is written below.
        double[][] Space() => [.. Enumerable.Range(0, CushionCount).Select(_ => GC.AllocateUninitializedArray<double>(checked((int)samples)))];
        var rigged = Space();
        var odds = new LadderOdds(of.Heat is null ? rigged : Space(), rigged);
        const int chunk = 8192;
        var chunks = (int)((samples + chunk - 1) / chunk);
        if (threads <= 1)
        {
            for (var i = 0; i < chunks; i++)
                odds.Fill(of, seed, (long)i * chunk, Math.Min(samples, (long)(i + 1) * chunk));
        }
        else
        {
            Parallel.For(0, chunks, new ParallelOptions { MaxDegreeOfParallelism = threads }, i =>
                odds.Fill(of, seed, (long)i * chunk, Math.Min(samples, (long)(i + 1) * chunk)));
        }

        return odds;
    }

    /// <summary>2.5 % and 97.5 % points at the worst temperature.</summary>
    public (double Low, double High) Middle95(int cushion)
    {
        // Reordered in a borrowed copy.
        var samples = worst[cushion];
        var space = ArrayPool<double>.Shared.Rent(samples.Length);
        var values = space.AsSpan(0, samples.Length);
        samples.CopyTo(values);
        var last = values.Length - 1;
        var low = OrderStatistic.Of(values, (int)Math.Floor(0.025 * last));
        var high = OrderStatistic.Of(values, (int)Math.Ceiling(0.975 * last));
        ArrayPool<double>.Shared.Return(space);
        return (low, high);
    }

    /// <summary>95 % interval of the share of installations that keep at least <paramref name="wanted"/> at every temperature.</summary>
    public Interval ShareAbove(int cushion, double wanted) => Proportion.Wilson(CountAbove(cushion, wanted), Samples);

    public long CountAbove(int cushion, double wanted)
    {
        var count = 0L;
        foreach (var value in worst[cushion])
        {
            if (value >= wanted)
                count++;
        }

        return count;
    }

    /// <summary>Share of samples, at rigging temperature, farther than <paramref name="half"/> from the middle.</summary>
    public double ShareOutside(int cushion, double middle, double half)
    {
        if (half == 0)
            return 0;
        var count = 0L;
        foreach (var value in rigged[cushion])
        {
            if (Math.Abs(value - middle) > half)
                count++;
        }

        return count / (double)Samples;
    }

    /// <summary>The samples of one cushion at its worst temperature, in order of drawing.</summary>
    public ReadOnlySpan<double> WorstTemperatureSamples(int cushion) => worst[cushion];

    private void Fill(LadderCase of, ulong seed, long from, long to)
    {
        var inputs = of.Values.Select(v => Lane.Of(v.Nominal)).ToArray();
        var drawn = of.Values.Select((v, i) => new DrawnInput(i, v, new(seed, i))).Where(d => d.Range > 0).ToArray();
        for (var n = from; n < to; n += Lane.Width)
        {
            foreach (ref readonly var input in drawn.AsSpan())
                inputs[input.Index] = new(input.IsUniform ? input.Uniform(n) : input.Normal(n));
            var atRigging = LadderFormula.Rigged<Lane>(of, inputs);
            Store(rigged, n, to, atRigging);
            if (worst != rigged)
                Store(worst, n, to, LadderFormula.Warmed<Lane>(of, inputs, atRigging, LadderFormula.At.WorstTemperature));
        }
    }

    private static void Store(double[][] into, long n, long to, in LadderPlaces<Lane> p)
    {
        Store(into[0], n, to, p.CushionIn);
        Store(into[1], n, to, p.CushionOut);
        Store(into[2], n, to, p.TipAtPull);
        Store(into[3], n, to, p.TipAtPush);
    }

    private static void Store(double[] into, long n, long to, Lane lane)
    {
        if (to - n >= Lane.Width)
        {
            lane.Values.CopyTo(into, (int)n);
            return;
        }

        // The last lane of all may be cut off.
        for (var k = 0; k < to - n; k++)
            into[n + k] = lane.Values[k];
    }

    /// <summary>One toleranced input and its own stream of random numbers.</summary>
    private readonly struct DrawnInput(int index, LadderValue value, CounterRandom stream)
    {
        private readonly CounterRandom stream = stream;
        private readonly double least = value.Least, middle = 0.5 * (value.Least + value.Most);

        public int Index { get; } = index;
        public bool IsUniform { get; } = value.Spread == Spread.Uniform;
        public double Range { get; } = value.Most - value.Least;

        /// <summary>Samples n .. n + 3.</summary>
        public Vector256<double> Uniform(long n) => Vector256.Create(least) + (stream.UniformLane(n) * Range);

        /// <remarks>
        /// Twelve uniform numbers less six: sigma 1, cut at +/- 3 (within 0.0024 of the normal distribution; no logarithm needed).
        /// </remarks>
        public Vector256<double> Normal(long n)
        {
            var sum = Vector256.Create(-6.0);
            for (var k = 0; k < 12; k++)
                sum += stream.UniformLane((n * 12) + (k * Lane.Width) + (1L << 40));
            var cut = Vector256.Max(Vector256.Create(-3.0), Vector256.Min(Vector256.Create(3.0), sum));
            return Vector256.Create(middle) + (cut * (Range / 6));
        }
    }
}
