using CsCheck;
using Throwright.Engine.Cushion;
using Throwright.Shapes.Numerics;

namespace Throwright.Engine.Tests.Cushion.Oracle;

/// <summary>Least and most of every cushion against all corners of the limits and many points between.</summary>
public sealed class LadderCornersTests
{
    private static CushionRange[] Ranges(TravelLadder l) => [l.KnobIn, l.KnobOut, l.TipAtPull, l.TipAtPush];

    private static void Hold(LadderCase of, ulong seed)
    {
        var ladder = LadderSolver.Solve(of, new(Samples: 64, Tolerance: 1e-8));
        var ranges = Ranges(ladder);
        var nominal = of.Values.Select(v => v.Nominal).ToArray();
        var temperatures = PlainLadder.Temperatures(of).ToList();
        double[] least = [9, 9, 9, 9], most = [-9, -9, -9, -9];
        void Take(double[] x)
        {
            foreach (var (cable, lever) in temperatures)
            {
                var at = PlainLadder.At(of, x, cable, lever);
                for (var i = 0; i < 4; i++)
                {
                    least[i] = Math.Min(least[i], at[i]);
                    most[i] = Math.Max(most[i], at[i]);
                }
            }
        }

        // Every corner.
        var loose = of.Values.Where(v => !v.IsExact).ToList();
        for (var bits = 0; bits < 1 << loose.Count; bits++)
        {
            var x = (double[])nominal.Clone();
            for (var k = 0; k < loose.Count; k++)
                x[(int)loose[k].Input] = (bits >> k & 1) == 0 ? loose[k].Least : loose[k].Most;
            Take(x);
        }

        // Points between, half of whose inputs lie at an end.
        var random = new Random((int)seed);
        for (var n = 0; n < 400; n++)
        {
            var x = (double[])nominal.Clone();
            foreach (var v in loose)
                x[(int)v.Input] = random.Next(4) switch { 0 => v.Least, 1 => v.Most, _ => v.Least + (random.NextDouble() * (v.Most - v.Least)) };
            Take(x);
        }

        var plain = PlainLadder.At(of, nominal, 0, 0);
        for (var i = 0; i < 4; i++)
        {
            var range = ranges[i];
            Assert.Equal(plain[i], range.Nominal, 1e-12);
            Assert.True(least[i] >= range.Least - 1e-12, $"{range.Name}: {least[i]} below {range.Least}");
            Assert.True(most[i] <= range.Most + 1e-12, $"{range.Name}: {most[i]} above {range.Most}");
            Assert.True(range.Least <= range.LeastFound);
            if (range.Outcome is not (Outcome.Corner or Outcome.Converged))
                continue;
            // The worst combination it names does give the least.
            var worst = (double[])nominal.Clone();
            foreach (var (value, corner) in loose.Zip(range.WorstInputs))
            {
                Assert.Equal(value.Name, corner.Input);
                Assert.InRange(corner.Value, value.Least, value.Most);
                worst[(int)value.Input] = corner.Value;
            }

            Assert.Equal(range.Least, temperatures.Min(t => PlainLadder.At(of, worst, t.Cable, t.Lever)[i]), 2e-8);
            if (range.Outcome == Outcome.Corner)
                Assert.Equal(least[i], range.Least, 2e-8);
        }
    }

    [Fact]
    public void Cushions_EveryCombinationOfLimits_LieWithinLeastAndMost() =>
        Gen.Select(Ladders.Any(isWide: false), Gen.ULong[1, 1_000_000]).Sample(Hold, iter: 200);

    [Fact]
    public void Cushions_DeadCentreWithinTheLimits_StillLieWithinLeastAndMost() =>
        Gen.Select(Ladders.Any(isWide: true), Gen.ULong[1, 1_000_000]).Sample(Hold, iter: 60);

    [Fact]
    public void Samples_OfMonteCarlo_LieWithinLeastAndMost_AndAreWhatTheirInputsGive() => Ladders.Any(isWide: false).Sample(
        of =>
        {
            var ladder = LadderSolver.Solve(of, new(Samples: 64, Tolerance: 1e-8));
            for (var i = 0; i < 4; i++)
            {
                var range = Ranges(ladder)[i];
                foreach (var value in Drawn.Samples(of, 3000, 99, i))
                    Assert.InRange(value, range.Least - 1e-12, range.Most + 1e-12);
                Assert.InRange(range.Low95, range.Least - 1e-12, range.High95);
                Assert.InRange(range.High95, range.Low95, range.Most + 1e-12);
            }
        },
        iter: 40);

    [Fact]
    public void WideStop_ExtremeBetweenItsEnds_IsFound()
    {
        // Pull stop 10 deg +- 30 deg round a dead centre at 0: free wire is least there, 100 - 30 mm, at no corner.
        var of = Ladders.Case(
            SettingKind.WireLength, new(0.100, 0, 0),
            Ladders.Value(LadderInput.Radius, 0.030), Ladders.Value(LadderInput.PushAngle, 90 * Ladders.Degree),
            Ladders.Value(LadderInput.PullAngle, 10 * Ladders.Degree, 30 * Ladders.Degree, 30 * Ladders.Degree),
            Ladders.Value(LadderInput.Stroke, 0.06), Ladders.Value(LadderInput.Setting, 0.11));
        var ladder = LadderSolver.Solve(of, new(Samples: 64, Tolerance: 1e-8));
        Assert.Equal(0.070, ladder.TipAtPull.Least, 1.1e-8);
        Assert.Equal(Outcome.Converged, ladder.TipAtPull.Outcome);
        Assert.Equal(0.060 - (0.11 - 0.070), ladder.KnobOut.Least, 1.1e-8);
        Assert.Equal(0, ladder.TipAtPull.WorstInputs.Single().Value, 1e-3);
    }
}
