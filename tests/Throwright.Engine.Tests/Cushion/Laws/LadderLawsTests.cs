using CsCheck;
using Throwright.Engine.Cushion;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Cushion.Laws;

public sealed class LadderLawsTests
{
    private static readonly LadderEffort Quick = new(Samples: 16, Tolerance: 1e-8);

    [Fact]
    public void Parts_OfTheLadder_CloseToTheStroke_HoweverItIsSet() => Ladders.Any(isWide: false).Sample(of =>
    {
        var l = LadderSolver.Solve(of.Exact(), Quick);
        Assert.Equal(l.Stroke, l.KnobIn.Nominal + l.LostMotion + l.StretchPull + l.StretchPush + l.Throw + l.KnobOut.Nominal, 1e-14);
        Assert.Equal(l.KnobIn.Nominal, l.PushStopPlace, 1e-14);
        Assert.Equal(l.Stroke - l.KnobOut.Nominal, l.PullStopPlace, 1e-14);
    });

    [Fact]
    public void Settings_AllFour_DescribeTheSameNominalLadder() => Ladders.Any(isWide: false).Sample(of =>
    {
        var l = LadderSolver.Solve(of.Exact(), Quick);
        foreach (var (kind, setting) in new[]
        {
            (SettingKind.WireLength, l.Setting.WireLength), (SettingKind.AtPushStop, l.Setting.KnobOutAtPushStop), (SettingKind.AtPullStop, l.Setting.KnobOutAtPullStop),
        })
        {
            var same = LadderSolver.Solve(of.Exact().With(Ladders.Value(LadderInput.Setting, setting)) with { SettingKind = kind }, Quick);
            Assert.Equal(l.KnobIn.Nominal, same.KnobIn.Nominal, 1e-13);
            Assert.Equal(l.KnobOut.Nominal, same.KnobOut.Nominal, 1e-13);
            Assert.Equal(l.Setting.WireLength, same.Setting.WireLength, 1e-13);
            Assert.Equal(l.Setting.KnobOutAtPullStop, same.Setting.KnobOutAtPullStop, 1e-13);
        }

        // Balanced with the error that makes it so.
        var balanced = LadderSolver.Solve(of.Exact().With(Ladders.Value(LadderInput.Setting, 0.5 * (l.KnobIn.Nominal - l.KnobOut.Nominal))) with { SettingKind = SettingKind.Balanced }, Quick);
        Assert.Equal(l.KnobIn.Nominal, balanced.KnobIn.Nominal, 1e-13);
        Assert.Equal(l.KnobOut.Nominal, balanced.KnobOut.Nominal, 1e-13);
        Assert.Equal(l.Setting.WireLength, balanced.Setting.WireLength, 1e-13);
    });

    [Fact]
    public void Balanced_Exactly_LeavesTheSameAtBothEnds() => Ladders.Any(isWide: false).Sample(of =>
    {
        var l = LadderSolver.Solve(of.Exact().With(Ladders.Value(LadderInput.Setting, 0)) with { SettingKind = SettingKind.Balanced }, Quick);
        Assert.Equal(l.KnobIn.Nominal, l.KnobOut.Nominal, 1e-14);
    });

    [Fact]
    public void Swivel_SlidTowardTheTip_TakesFromTheInCushionWhatItGivesTheOut() => Gen.Select(Ladders.Any(isWide: false), Gen.Double[-0.004, 0.004]).Sample((of, by) =>
    {
        if (of.SettingKind == SettingKind.Balanced)
            return;
        // Less wire between anchor and pin (toward the tip): negative.
        var setting = of[LadderInput.Setting];
        TravelLadder before = LadderSolver.Solve(of, Quick), after = LadderSolver.Solve(of.With(setting with { Nominal = setting.Nominal + by }), Quick);
        Assert.Equal(before.Setting.WireLength + by, after.Setting.WireLength, 1e-12);
        Assert.Equal(before.KnobIn.Nominal + by, after.KnobIn.Nominal, 1e-12);
        Assert.Equal(before.KnobOut.Nominal - by, after.KnobOut.Nominal, 1e-12);
        Assert.Equal(before.KnobIn.Least + by, after.KnobIn.Least, 3e-8);
        Assert.Equal(before.KnobOut.Least - by, after.KnobOut.Least, 3e-8);
        Assert.Equal(before.TipAtPull.Nominal, after.TipAtPull.Nominal);
        Assert.Equal(before.TipAtPull.Least, after.TipAtPull.Least);
        Assert.Equal(before.TipAtPush.Least, after.TipAtPush.Least);
    }, iter: 40);

    [Fact]
    public void Ladder_EveryLengthGrown_GrowsAlike() => Gen.Select(Ladders.Any(isWide: false), Gen.Double[0.5, 2]).Sample((of, k) =>
    {
        var grown = of.With(of.Values.Select(v => v.Kind is QuantityKind.Length or QuantityKind.Torque || v.Input is LadderInput.PullGive or LadderInput.PushGive
            ? v with { Nominal = k * v.Nominal, Minus = k * v.Minus, Plus = k * v.Plus }
            : v)) with
        {
            Anchor = k * of.Anchor,
            TorqueAtPush = k * of.TorqueAtPush,
            TorqueAtPull = k * of.TorqueAtPull,
            BiasAtPush = k * of.BiasAtPush,
            BiasAtPull = k * of.BiasAtPull,
        };
        TravelLadder a = LadderSolver.Solve(of, Quick), b = LadderSolver.Solve(grown, Quick);
        foreach (var (p, q) in new[] { (a.KnobIn, b.KnobIn), (a.KnobOut, b.KnobOut), (a.TipAtPull, b.TipAtPull), (a.TipAtPush, b.TipAtPush) })
        {
            Assert.Equal(k * p.Nominal, q.Nominal, 1e-12);
            Assert.Equal(k * p.Least, q.Least, 4e-8);
            Assert.Equal(k * p.Most, q.Most, 4e-8);
            Assert.Equal(k * p.RootSumSquare, q.RootSumSquare, 1e-10);
        }
    }, iter: 25);

    [Fact]
    public void Ladder_SeenInAMirror_IsTheSame() => Ladders.Any(isWide: false).Sample(of =>
    {
        static Vector3 M(Vector3 v) => new(v.X, -v.Y, v.Z);
        LadderValue Round(LadderInput i) => of[i] with { Nominal = -of[i].Nominal, Minus = of[i].Plus, Plus = of[i].Minus };
        var mirrored = of.With(Round(LadderInput.PushAngle), Round(LadderInput.PullAngle)) with
        {
            Anchor = M(of.Anchor),
            AnchorAxes = (M(of.AnchorAxes.X), M(of.AnchorAxes.Y), M(of.AnchorAxes.Z)),
        };
        TravelLadder a = LadderSolver.Solve(of, Quick), b = LadderSolver.Solve(mirrored, Quick);
        Assert.Equal(a.KnobIn.Nominal, b.KnobIn.Nominal, 1e-14);
        Assert.Equal(a.KnobIn.Least, b.KnobIn.Least, 2e-8);
        Assert.Equal(a.KnobOut.Least, b.KnobOut.Least, 2e-8);
        Assert.Equal(a.TipAtPull.Most, b.TipAtPull.Most, 2e-8);
    }, iter: 40);

    [Fact]
    public void Limits_Wider_LeaveNowhereMore() => Gen.Select(Ladders.Any(isWide: false), Gen.Double[1, 2]).Sample((of, k) =>
    {
        var wider = of.With(of.Values.Select(v => v with { Minus = k * v.Minus, Plus = k * v.Plus }));
        TravelLadder a = LadderSolver.Solve(of, Quick), b = LadderSolver.Solve(wider, Quick);
        Assert.True(b.KnobIn.Least <= a.KnobIn.Least + 2e-8);
        Assert.True(b.KnobOut.Least <= a.KnobOut.Least + 2e-8);
        Assert.True(b.KnobOut.Most >= a.KnobOut.Most - 2e-8);
    }, iter: 30);

    [Fact]
    public void Heat_AnyTemperature_NeverAddsToTheLeast() => Ladders.Any(isWide: false).Sample(of =>
    {
        if (of.Heat is null)
            return;
        TravelLadder with = LadderSolver.Solve(of, Quick), without = LadderSolver.Solve(of with { Heat = null }, Quick);
        Assert.True(with.KnobIn.Least <= without.KnobIn.Least + 2e-8);
        Assert.True(with.KnobOut.Least <= without.KnobOut.Least + 2e-8);
        Assert.Equal(with.KnobIn.Nominal, without.KnobIn.Nominal);
        Assert.True(with.TipAtPull.Least <= without.TipAtPull.Least + 2e-8);
    }, iter: 40);

    [Fact]
    public void MonteCarlo_AnyNumberOfThreads_GivesTheSameBytes() => Ladders.Any(isWide: false).Sample(
        of =>
        {
            const long samples = 40_003;
            var one = Drawn.Odds(of, samples, 31, 1, wanted: 0.003, middle: 0.01, half: 0.001);
            foreach (var threads in (int[])[2, 3, 8])
                Assert.Equal(one, Drawn.Odds(of, samples, 31, threads, wanted: 0.003, middle: 0.01, half: 0.001));
        },
        iter: 4);

    [Fact]
    public void MonteCarlo_FewerSamples_AreTheFirstOfMany() => Ladders.Any(isWide: false).Sample(
        of => Assert.Equal(Drawn.Samples(of, 1001, 31, 1), Drawn.Samples(of, 20_000, 31, 1)[..1001]),
        iter: 10);

    /// <summary>Only tails are kept, counts are taken on the way: the same as of the whole list, sorted.</summary>
    [Fact]
    public void MonteCarlo_CountsAndPercentiles_AreThoseOfTheWholeList() => Gen.Select(Ladders.Any(isWide: false), Gen.Int[1, 30_000], Gen.Double[0, 0.01]).Sample(
        (of, samples, wanted) =>
        {
            var odds = Drawn.Odds(of, samples, 5, 2, wanted, middle: 0.01, half: wanted);
            for (var i = 0; i < LadderOdds.CushionCount; i++)
            {
                double[] worst = [.. Drawn.Samples(of, samples, 5, i).Order()], rigged = Drawn.Samples(of, samples, 5, i, atRigging: true);
                Assert.Equal(worst[(int)Math.Floor(0.025 * (samples - 1))], odds[i].Low95);
                Assert.Equal(worst[(int)Math.Ceiling(0.975 * (samples - 1))], odds[i].High95);
                Assert.Equal(worst.Count(v => v >= wanted), odds[i].Above);
                Assert.Equal(wanted == 0 ? 0 : rigged.Count(v => Math.Abs(v - 0.01) > wanted), odds[i].Outside);
                Assert.Equal(samples, odds[i].Samples);
            }
        },
        iter: 30);

    [Fact]
    public void MonteCarlo_NothingThatVaries_HasItsOneValueAtBothPercentiles()
    {
        var of = Ladders.Case(
            SettingKind.WireLength, new(0.03, -0.1, 0),
            Ladders.Value(LadderInput.Radius, 0.03), Ladders.Value(LadderInput.PushAngle, 0.7), Ladders.Value(LadderInput.PullAngle, -0.7),
            Ladders.Value(LadderInput.Stroke, 0.06, 0.001, 0.002), Ladders.Value(LadderInput.Setting, 0.12));
        var odds = Drawn.Odds(of, 50_000, 3, 2)[0];
        Assert.Equal(Drawn.Samples(of, 1, 3, 0)[0], odds.Low95);
        Assert.Equal(odds.Low95, odds.High95);
    }

    [Fact]
    public void MonteCarlo_EachSample_IsTheFormulaAtItsInputs()
    {
        // One loose input: the sample is known from its place between the limits, whatever draws it.
        var of = Ladders.Case(
            SettingKind.WireLength, new(0.03, -0.1, 0),
            Ladders.Value(LadderInput.Radius, 0.03), Ladders.Value(LadderInput.PushAngle, 0.7), Ladders.Value(LadderInput.PullAngle, -0.7),
            Ladders.Value(LadderInput.Stroke, 0.06, 0.001, 0.002), Ladders.Value(LadderInput.Setting, 0.12));
        var samples = Drawn.Samples(of, 20_000, 3, 1);
        var nominal = LadderSolver.Nominal(of).CushionOut.Value;
        Assert.InRange(samples.Min(), nominal - 0.001, nominal - 0.0009);
        Assert.InRange(samples.Max(), nominal + 0.0019, nominal + 0.002);
        Assert.Equal(nominal + 0.0005, samples.Average(), 4 * 0.003 / Math.Sqrt(12 * 20_000));
        // Another seed draws others.
        Assert.DoesNotContain(Drawn.Samples(of, 1, 4, 1)[0], samples);
        // In cushion does not depend on the stroke.
        Assert.Single(Drawn.Samples(of, 20_000, 3, 0).Distinct());
    }
}
