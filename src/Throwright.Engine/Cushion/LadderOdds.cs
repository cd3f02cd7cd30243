using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Throwright.Shapes;
using Throwright.Shapes.Numerics;

namespace Throwright.Engine.Cushion;

/// <summary>What is asked of the odds of one cushion, m.</summary>
/// <param name="Wanted">How many keep at least this, at every temperature?</param>
/// <param name="Middle">How many are, at rigging temperature, farther than <paramref name="Half"/> from here?</param>
public readonly record struct CushionAsk(double Wanted, double Middle, double Half);

/// <summary>How one cushion comes out in many aircraft built at random.</summary>
/// <param name="Low95">2.5 % point at the worst temperature, m.</param>
/// <param name="High95">97.5 % point at the worst temperature, m.</param>
/// <param name="Above">Samples that keep at least what is wanted at every temperature.</param>
/// <param name="Outside">Samples outside the asked band at rigging temperature.</param>
public readonly record struct CushionOdds(double Low95, double High95, long Above, long Outside, long Samples)
{
    /// <summary>95 % interval of the share of installations that keep what is wanted.</summary>
    public Interval ShareAbove => Proportion.Wilson(Above, Samples);

    public double ShareOutside => Outside / (double)Samples;
}

/// <summary>Many aircraft built at random within the tolerances: how the cushions come out.</summary>
/// <remarks>
/// No list of the samples is kept. Counts are taken as they are drawn; for the two percentiles only values in the tails are
/// kept, beyond gates that the first samples set a little farther in than the percentiles are likely to lie. If they lie
/// farther in after all, everything is drawn again and kept: the percentiles are always those of all samples.
/// </remarks>
public static class LadderOdds
{
    /// <summary>Cushion in, cushion out, tip at the pull stop, tip at the push stop.</summary>
    public const int CushionCount = 4;

    /// <summary>Samples that set the gates; also how many a thread takes at a time.</summary>
    private const int Block = 2048;

    /// <summary>Share beyond each gate: five standard deviations of a share of 2.5 % in a block more than that.</summary>
    private const double Tail = 0.042;

    /// <summary>Draws the samples on the calling thread, or on as many as are allowed.</summary>
    /// <param name="asks">One for each cushion, in the order of <see cref="CushionCount"/>.</param>
    public static EquatableList<CushionOdds> Draw(LadderCase of, long samples, ulong seed, EquatableList<CushionAsk> asks, int threads = 1)
    {
        ArgumentNullException.ThrowIfNull(of);
        ArgumentNullException.ThrowIfNull(asks);
        ArgumentOutOfRangeException.ThrowIfLessThan(samples, 1);
        ArgumentOutOfRangeException.ThrowIfNotEqual(asks.Count, CushionCount);
        var first = new Tally(asks, KeepAll);
        first.Draw(new(of, seed), 0, Math.Min(samples, Block));
        if (samples <= Block)
            return first.Odds()!;
        var tails = first.Gated();
        tails.Draw(of, seed, Block, samples, threads);
        if (tails.Odds() is { } odds)
            return odds;
        var everything = new Tally(asks, KeepAll);
        everything.Draw(of, seed, 0, samples, threads);
        return everything.Odds()!;
    }

    /// <summary>Values below Low and above High are kept.</summary>
    private readonly record struct Gates(double Low, double High);

    /// <summary>No value lies between gates that are no numbers.</summary>
    private static Gates[] KeepAll => [.. Enumerable.Repeat(new Gates(double.NaN, double.NaN), CushionCount)];

    /// <summary>Counts and tails of some of the samples.</summary>
    private sealed class Tally(EquatableList<CushionAsk> asks, Gates[] gates)
    {
        private readonly long[] keeping = new long[CushionCount], outside = new long[CushionCount];
        private readonly List<double>[] tails = [[], [], [], []];
        private long samples;

        /// <summary>The same samples, of which only the tails are kept from now on.</summary>
        public Tally Gated()
        {
            var result = new Tally(asks, [.. tails.Select(all =>
            {
                var values = CollectionsMarshal.AsSpan(all);
                var rank = (int)(Tail * values.Length);
                return new Gates(OrderStatistic.Of(values, rank), OrderStatistic.Of(values, values.Length - 1 - rank));
            })]);
            result.Add(this);
            return result;
        }

        public void Add(Tally other)
        {
            samples += other.samples;
            for (var i = 0; i < CushionCount; i++)
            {
                keeping[i] += other.keeping[i];
                outside[i] += other.outside[i];
                foreach (var value in other.tails[i])
                {
                    if (!(value >= gates[i].Low && value <= gates[i].High))
                        tails[i].Add(value);
                }
            }
        }

        /// <summary>Samples from .. to - 1, on as many threads as are allowed. The order in which they come does not matter.</summary>
        public void Draw(LadderCase of, ulong seed, long from, long to, int threads)
        {
            if (threads <= 1)
            {
                Draw(new(of, seed), from, to);
                return;
            }

            var blocks = (to - from + Block - 1) / Block;
            Parallel.For(
                0,
                blocks,
                new ParallelOptions { MaxDegreeOfParallelism = threads },
                () => (Samples: new LadderSamples(of, seed), Tally: new Tally(asks, gates)),
                (i, _, own) =>
                {
                    own.Tally.Draw(own.Samples, from + (i * Block), Math.Min(to, from + ((i + 1) * Block)));
                    return own;
                },
                own =>
                {
                    lock (tails)
                        Add(own.Tally);
                });
        }

        public void Draw(LadderSamples drawn, long from, long to)
        {
            for (var n = from; n < to; n += LadderSamples.Most)
            {
                var count = (int)Math.Min(LadderSamples.Most, to - n);
                drawn.Draw(n, count);
                for (var i = 0; i < CushionCount; i++)
                {
                    ReadOnlySpan<double> atRigging = drawn.AtRigging(i)[..count], atWorst = drawn.AtWorst(i)[..count];
                    outside[i] += Outside(atRigging, asks[i].Middle, asks[i].Half);
                    keeping[i] += Above(atWorst, asks[i].Wanted);
                    KeepTails(atWorst, gates[i], tails[i]);
                }
            }

            samples += to - from;
        }

        private static long Above(ReadOnlySpan<double> values, double wanted)
        {
            var lanes = MemoryMarshal.Cast<double, Vector512<double>>(values);
            var wide = Vector512.Create(wanted);
            // A comparison that holds is -1 in each place.
            var sum = Vector512<long>.Zero;
            foreach (var lane in lanes)
                sum -= Vector512.GreaterThanOrEqual(lane, wide).AsInt64();
            var count = Vector512.Sum(sum);
            foreach (var value in values[(lanes.Length * Lane.Width)..])
                count += value >= wanted ? 1 : 0;
            return count;
        }

        private static long Outside(ReadOnlySpan<double> values, double middle, double half)
        {
            var lanes = MemoryMarshal.Cast<double, Vector512<double>>(values);
            Vector512<double> wideMiddle = Vector512.Create(middle), wideHalf = Vector512.Create(half);
            var sum = Vector512<long>.Zero;
            foreach (var lane in lanes)
                sum -= Vector512.GreaterThan(Vector512.Abs(lane - wideMiddle), wideHalf).AsInt64();
            var count = Vector512.Sum(sum);
            foreach (var value in values[(lanes.Length * Lane.Width)..])
                count += Math.Abs(value - middle) > half ? 1 : 0;
            return count;
        }

        /// <remarks>
        /// No branch that a processor can't foresee: first the lanes with a value beyond a gate are noted, then each of their values
        /// is put down, and the next one over it unless it is to stay. What is not a number is not within the gates: it stays, and shows.
        /// </remarks>
        private static void KeepTails(ReadOnlySpan<double> values, Gates gates, List<double> tails)
        {
            Span<int> noted = stackalloc int[LadderSamples.Most / Lane.Width];
            var count = 0;
            var lanes = MemoryMarshal.Cast<double, Vector512<double>>(values);
            Vector512<double> low = Vector512.Create(gates.Low), high = Vector512.Create(gates.High);
            for (var i = 0; i < lanes.Length; i++)
            {
                noted[count] = i * Lane.Width;
                var within = Vector512.GreaterThanOrEqual(lanes[i], low) & Vector512.LessThanOrEqual(lanes[i], high);
                count += within.ExtractMostSignificantBits() == 0b1111_1111 ? 0 : 1;
            }

            var kept = tails.Count;
            CollectionsMarshal.SetCount(tails, kept + (count * Lane.Width) + Lane.Width);
            var room = CollectionsMarshal.AsSpan(tails);
            foreach (var at in noted[..count])
                Put(values.Slice(at, Lane.Width), room);
            Put(values[(lanes.Length * Lane.Width)..], room);
            CollectionsMarshal.SetCount(tails, kept);

            void Put(ReadOnlySpan<double> some, Span<double> into)
            {
                foreach (var value in some)
                {
                    into[kept] = value;
                    kept += (value >= gates.Low) & (value <= gates.High) ? 0 : 1;
                }
            }
        }

        /// <summary>The answer for each cushion; null: a percentile lies within the gates, where nothing was kept.</summary>
        public EquatableList<CushionOdds>? Odds()
        {
            // Values below the 2.5 % point, and above the 97.5 % point: rounded outward.
            var below = (long)Math.Floor(0.025 * (samples - 1));
            var above = samples - 1 - (long)Math.Ceiling(0.975 * (samples - 1));
            var odds = new CushionOdds[CushionCount];
            for (var i = 0; i < CushionCount; i++)
            {
                var tail = CollectionsMarshal.AsSpan(tails[i]);
                if (tail.Length <= Math.Max(below, above))
                    return null;
                double low = OrderStatistic.Of(tail, (int)below), high = OrderStatistic.Of(tail, tail.Length - 1 - (int)above);
                // The sorted tails are the low one and then the high one: a value from the other one has the wrong rank.
                if (low >= gates[i].Low || high <= gates[i].High)
                    return null;
                // Where nothing varies the band has no width, and only rounding lies outside.
                odds[i] = new(low, high, keeping[i], asks[i].Half == 0 ? 0 : outside[i], samples);
            }

            return odds.ToEquatableList();
        }
    }
}
