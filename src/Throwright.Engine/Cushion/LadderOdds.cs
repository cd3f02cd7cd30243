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
        double[][] Space() => [.. Enumerable.Range(0, CushionCount).Select(_ => new double[samples])];
        var odds = new LadderOdds(Space(), Space());
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
        var values = (double[])worst[cushion].Clone();
        var last = values.Length - 1;
        var low = OrderStatistic.Of(values, (int)Math.Floor(0.025 * last));
        return (low, OrderStatistic.Of(values, (int)Math.Ceiling(0.975 * last)));
    }

    /// <summary>95 % interval of the share of installations that keep at least <paramref name="wanted"/> at every temperature.</summary>
    public Interval ShareAbove(int cushion, double wanted) => Proportion.Wilson(CountAbove(cushion, wanted), Samples);

    public long CountAbove(int cushion, double wanted) => worst[cushion].LongCount(v => v >= wanted);

    /// <summary>Share of samples, at rigging temperature, farther than <paramref name="half"/> from the middle.</summary>
    public double ShareOutside(int cushion, double middle, double half) =>
        half == 0 ? 0 : rigged[cushion].LongCount(v => Math.Abs(v - middle) > half) / (double)Samples;

    /// <summary>The samples of one cushion at its worst temperature, in order of drawing.</summary>
    public ReadOnlySpan<double> WorstTemperatureSamples(int cushion) => worst[cushion];

    private void Fill(LadderCase of, ulong seed, long from, long to)
    {
        var inputs = new Lane[of.Values.Count];
        var streams = new CounterRandom[inputs.Length];
        for (var i = 0; i < inputs.Length; i++)
        {
            streams[i] = new(seed, i);
            inputs[i] = Lane.Of(of.Values[i].Nominal);
        }

        for (var n = from; n < to; n += Lane.Width)
        {
            for (var i = 0; i < inputs.Length; i++)
            {
                var value = of.Values[i];
                if (!value.IsExact)
                    inputs[i] = new(Draw(value, streams[i], n));
            }

            var atWorst = LadderFormula.Evaluate<Lane>(of, inputs, LadderFormula.At.WorstTemperature);
            Store(worst, n, to, atWorst);
            Store(rigged, n, to, of.Heat is null ? atWorst : LadderFormula.Evaluate<Lane>(of, inputs, LadderFormula.At.Rigging));
        }
    }

    private static Vector256<double> Draw(LadderValue value, CounterRandom stream, long n)
    {
        if (value.Spread == Spread.Uniform)
            return Vector256.Create(value.Least) + (stream.UniformLane(n) * (value.Most - value.Least));

        // Twelve uniform numbers less six: sigma 1, cut at +/- 3 (within 0.0024 of the normal distribution; no logarithm needed).
        var sum = Vector256.Create(-6.0);
        for (var k = 0; k < 12; k++)
            sum += stream.UniformLane((n * 12) + (k * Lane.Width) + (1L << 40));
        var cut = Vector256.Max(Vector256.Create(-3.0), Vector256.Min(Vector256.Create(3.0), sum));
        return Vector256.Create(0.5 * (value.Least + value.Most)) + (cut * ((value.Most - value.Least) / 6));
    }

    private static void Store(double[][] into, long n, long to, LadderPlaces<Lane> p)
    {
        var left = (int)Math.Min(Lane.Width, to - n);
        for (var k = 0; k < left; k++)
        {
            into[0][n + k] = p.CushionIn.Values[k];
            into[1][n + k] = p.CushionOut.Values[k];
            into[2][n + k] = p.TipAtPull.Values[k];
            into[3][n + k] = p.TipAtPush.Values[k];
        }
    }
}
