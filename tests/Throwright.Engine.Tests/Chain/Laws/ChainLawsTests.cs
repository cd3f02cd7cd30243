using CsCheck;
using Throwright.Engine.Chain;
using Throwright.Engine.Cushion;
using Throwright.Engine.Model;
using Throwright.Engine.Tests.Throw;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Chain.Laws;

public sealed class ChainLawsTests
{
    [Fact]
    public void BenchForm_AndCoordinatesOfTheSamePlace_GiveTheSameRun() =>
        Gen.Select(Gen.Double[20, 45], Gen.Double[60, 160], Gen.Double[25, 55], Gen.Double[0.5, 1.2], Gen.Double[0, 1]).Sample(
            (radius, distance, half, share, turn) =>
            {
                var bench = Runs.Sound.Lever(e => e with
                {
                    Radius = Levers.Mm(radius, 0.3),
                    From = Levers.Degrees(-half, turn),
                    To = Levers.Degrees(half, turn),
                    Bench = new() { Distance = Levers.Mm(distance, 1), Rule = AnchorRule.Offset, Offset = Levers.Mm(share * radius, 1) },
                });
                var space = bench.Lever(Runs.InSpace);
                RunAnswer a = bench.Solve(), b = space.Solve();
                Assert.Equal(a.Sweep!.Throw, b.Sweep!.Throw, 1e-12);
                Assert.Equal(a.Sweep.MostSwing, b.Sweep.MostSwing, 1e-9);
                Assert.Equal(a.Ladder is null, b.Ladder is null);
                if (a.Ladder is null)
                    return;
                foreach (var (p, q) in new[] { (a.Ladder.KnobIn, b.Ladder!.KnobIn), (a.Ladder.KnobOut, b.Ladder.KnobOut), (a.Ladder.TipAtPull, b.Ladder.TipAtPull) })
                {
                    Assert.Equal(p.Nominal, q.Nominal, 1e-12);
                    Assert.Equal(p.Least, q.Least, 1e-5);
                    Assert.Equal(p.Most, q.Most, 1e-5);
                }

                Assert.Equal(a.Forces!.MostPull.Worst, b.Forces!.MostPull.Worst, 1e-3 * a.Forces.MostPull.Worst);
            },
            iter: 25);

    /// <summary>The tip swivel slides; the arm stays.</summary>
    [Theory]
    [InlineData(SettingKind.WireLength, -0.003)]
    [InlineData(SettingKind.WireLength, 0.003)]
    [InlineData(SettingKind.AtPushStop, -0.003)]
    [InlineData(SettingKind.AtPushStop, 0.003)]
    [InlineData(SettingKind.AtPullStop, -0.003)]
    [InlineData(SettingKind.AtPullStop, 0.003)]
    public void Trial_SwivelSlid_MovesTheKnobTheWayItsWordsSay(SettingKind kind, double outward)
    {
        foreach (var mirrored in (bool[])[false, true])
        {
            var run = mirrored ? Mirrored(Runs.Sound) : Runs.Sound;
            var ladder = run.Solve().Ladder!;
            run = run.Lever(e => e with
            {
                Swivel = e.Swivel with
                {
                    At = kind == SettingKind.WireLength ? Toleranced<Length>.Exact(new(ladder.Setting.WireLength)) : null,
                    Rigged = kind switch
                    {
                        SettingKind.AtPushStop => new(DeviceStop.Push, Toleranced<Length>.Exact(new(ladder.Setting.KnobOutAtPushStop))),
                        SettingKind.AtPullStop => new(DeviceStop.Pull, Toleranced<Length>.Exact(new(ladder.Setting.KnobOutAtPullStop))),
                        _ => null,
                    },
                },
            });
            var solve = new Solve(Runs.Aircraft, run, new(Runs.Aircraft.Display));
            TravelLadder before = run.Solve().Ladder!, after = Trial.Slide(run, outward, Trial.Free).Run.Solve().Ladder!;
            // Toward the tip: less wire between anchor and pin, the knob comes in.
            Assert.EndsWith(outward < 0 ? "toward the tip" : "away from the tip", solve.SlideWords(outward), StringComparison.Ordinal);
            Assert.Equal(outward, after.Setting.WireLength - before.Setting.WireLength, 1e-12);
            Assert.Equal(outward, after.KnobIn.Nominal - before.KnobIn.Nominal, 1e-12);
            Assert.Equal(-outward, after.KnobOut.Nominal - before.KnobOut.Nominal, 1e-12);
            Assert.Equal(before.TipAtPull, after.TipAtPull);
        }
    }

    private static Run Mirrored(Run run) => run.Lever(e =>
    {
        var space = Runs.InSpace(e);
        var placed = space.Placed!;
        return space with
        {
            Placed = placed with { Axis = new(0, 0, -1), Anchor = placed.Anchor with { Buttline = placed.Anchor.Buttline.At(-placed.Anchor.Buttline.Nominal.Metres) }, Along = placed.Along! with { Right = -placed.Along.Right } },
        };
    });

    [Fact]
    public void Lever_MountedTheOtherWayRound_GivesTheSameRun()
    {
        // Axis reversed: the push stop is now the lower angle. Load toward the push stop stays there.
        var run = Runs.Sound.Lever(e => e with { Load = e.Load! with { Bias = new() { Toward = DeviceStop.Push, Torque = Runs.Share<Torque>(0.4, 0.2), Rate = new(0.1) } } });
        var space = run.Lever(Runs.InSpace);
        var round = space.Lever(e => e with { Placed = e.Placed! with { Axis = new(0, 0, -1) } });
        RunAnswer a = space.Solve(), b = round.Solve();
        Assert.True(a.Sweep!.PushTurnsUp);
        Assert.False(b.Sweep!.PushTurnsUp);
        Assert.Equal(a.Sweep.Throw, b.Sweep.Throw, 1e-14);
        Assert.Equal(a.Ladder!.KnobIn.Least, b.Ladder!.KnobIn.Least, 1e-5);
        Assert.Equal(a.Ladder.KnobOut.Least, b.Ladder.KnobOut.Least, 1e-5);
        Assert.Equal(a.Forces!.MostPull.Worst, b.Forces!.MostPull.Worst, 1e-6);
        Assert.Equal(a.Forces.MostPush.Worst, b.Forces.MostPush.Worst, 1e-6);
        Assert.Equal(a.Forces.SelfHolding.Drive, b.Forces.SelfHolding.Drive, 1e-6);
        Assert.True(a.Forces.SelfHolding.TowardPush);
        Assert.True(b.Forces.SelfHolding.TowardPush);
    }

    [Fact]
    public void Curve_AtItsEnds_IsTheLadder() => Runs.Any.Sample(
        run =>
        {
            var answer = run.Solve();
            if (answer is not { Ladder: { } ladder, Curve: { } curve })
                return;
            Assert.Equal(ladder.PushStopPlace, curve.Points[0].KnobPushing, 1e-9);
            Assert.Equal(ladder.PullStopPlace, curve.Points[^1].KnobPulling, 1e-9);
            // Pulled, the knob stands farther out than pushed, everywhere.
            Assert.All(curve.Points, p => Assert.True(p.KnobPulling >= p.KnobPushing - 1e-12));
        },
        iter: 20);

    [Fact]
    public void Ladder_OwnDragOfTheCore_StretchesItBothWays()
    {
        var with = Runs.Sound.Solve();
        // The same friction and bend total, but not bend by bend: the stiff core's drag is not known.
        var without = Runs.Sound.Cable(c => c with { Bends = [], BendTotal = Levers.Degrees(130, 10) }).Solve();
        Assert.True(with.Ladder!.StretchPull > without.Ladder!.StretchPull + 1e-5);
        Assert.True(with.Ladder.StretchPush > without.Ladder.StretchPush + 1e-5);
        Assert.True(with.Ladder.KnobOut.Least < without.Ladder.KnobOut.Least);
        // But it holds no load that drives the knob.
        Assert.Equal(without.Forces!.SelfHolding.Drive, with.Forces!.SelfHolding.Drive, 1e-9);
    }

    [Fact]
    public void Heat_RiggedOnTheHottestDay_StillCountsThatDay()
    {
        var hot = Runs.Aircraft with { Environment = Runs.Aircraft.Environment! with { Rigged = new(130) } };
        var answer = RunCheck.Solve(hot, Runs.Sound, Runs.Quick);
        Assert.Equal(0, answer.LadderCase!.Heat!.CableHot);
        Assert.True(answer.Ladder!.KnobIn.Least <= answer.Ladder.KnobIn.Nominal);
        Assert.True(answer.Ladder.HeatAtPush.Low <= 0 && answer.Ladder.HeatAtPush.High >= 0);
    }
}
