using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Throwright.Shapes.Numerics;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Cushion;

/// <summary>Aircraft built at random within the tolerances, a <see cref="Lane"/> at a time.</summary>
/// <remarks>
/// Sample n of input i is number n of stream i, whoever asks and in whatever order: the same bytes with any number of
/// threads. A uniform input lies anywhere between its limits; a normal one has sigma = half range / 3 and is cut at its limits.
/// Holds room of its own: each thread needs one.
/// </remarks>
internal sealed class LadderSamples
{
    /// <summary>Most samples at a time: what the fast memory of a processor holds.</summary>
    public const int Most = 1024;

    private readonly LadderCase of;
    private readonly LadderHeat? worst;
    private readonly Lane[] inputs;
    private readonly DrawnInput[] drawn;
    private readonly Vector512<double>[][] rigged, warmed;

    public LadderSamples(LadderCase of, ulong seed)
    {
        this.of = of;
        worst = LadderHeat.Of(of.Heat, LadderHeat.At.WorstTemperature);
        inputs = [.. of.Values.Select(v => Lane.Of(v.Nominal))];
        drawn = [.. of.Values.Select((v, i) => new DrawnInput(i, v, new(seed, i))).Where(d => d.Range > 0)];
        rigged = Room();
        warmed = worst is null ? rigged : Room();
        static Vector512<double>[][] Room() => [.. Enumerable.Range(0, LadderOdds.CushionCount).Select(_ => new Vector512<double>[Most / Lane.Width])];
    }

    /// <summary>The samples of one cushion that were drawn last, at rigging temperature.</summary>
    public ReadOnlySpan<double> AtRigging(int cushion) => MemoryMarshal.Cast<Vector512<double>, double>(rigged[cushion]);

    /// <summary>The same at the worst temperature.</summary>
    public ReadOnlySpan<double> AtWorst(int cushion) => MemoryMarshal.Cast<Vector512<double>, double>(warmed[cushion]);

    /// <summary>Draws samples n .. n + count - 1 and, up to a whole lane, some more.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Draw(long n, int count)
    {
        for (var i = 0; i * Lane.Width < count; i++)
        {
            foreach (ref readonly var input in drawn.AsSpan())
                inputs[input.Index] = new(input.At(n + (i * Lane.Width)));
            var places = LadderFormula.Rigged<Lane>(of, inputs);
            Put(rigged, i, places);
            if (worst is not null)
                Put(warmed, i, LadderFormula.Warmed(worst, inputs, places));
        }
    }

    private static void Put(Vector512<double>[][] into, int i, in LadderPlaces<Lane> places)
    {
        into[0][i] = places.CushionIn.Values;
        into[1][i] = places.CushionOut.Values;
        into[2][i] = places.TipAtPull.Values;
        into[3][i] = places.TipAtPush.Values;
    }

    /// <summary>One toleranced input and its own stream of random numbers.</summary>
    private readonly struct DrawnInput(int index, LadderValue value, CounterRandom stream)
    {
        private readonly CounterRandom stream = stream;
        private readonly bool isUniform = value.Spread == Spread.Uniform;
        private readonly double least = value.Least, middle = 0.5 * (value.Least + value.Most);

        public int Index { get; } = index;
        public double Range { get; } = value.Most - value.Least;

        /// <summary>Sample n and those after it, a lane of them.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public Vector512<double> At(long n) => isUniform ? Vector512.Create(least) + (stream.UniformLane(n) * Range) : Normal(n);

        /// <remarks>
        /// Twelve uniform numbers less six: sigma 1, cut at +/- 3 (within 0.0024 of the normal distribution; no logarithm needed).
        /// </remarks>
        private Vector512<double> Normal(long n)
        {
            var sum = Vector512.Create(-6.0);
            for (var k = 0; k < 12; k++)
                sum += stream.UniformLane((n * 12) + k + (1L << 40), step: 12);
            var cut = Vector512.Max(Vector512.Create(-3.0), Vector512.Min(Vector512.Create(3.0), sum));
            return Vector512.Create(middle) + (cut * (Range / 6));
        }
    }
}
