using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Prove;
using Throwright.Engine.Tests.Chain;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Prove;

/// <summary>Single failures, each case reasoned by hand.</summary>
public sealed class FailureTableTests
{
    /// <summary>Friction in N m, own torque toward a stop; both give or take a fifth.</summary>
    private static Run Device(ControlFunction function, double friction, double own, DeviceStop toward, string safeEnd, bool spring = false) =>
        Installations.Sound.Cockpit(c => c with { PushMeans = "pushed", PullMeans = "pulled" }).Lever(e => e with
        {
            Load = new()
            {
                Torque = Runs.Share<Torque>(friction, 0.2),
                Measured = true,
                Bias = own == 0 ? null : new() { Toward = toward, Torque = Runs.Share<Torque>(own, 0.2), Spring = spring },
            },
        }) with
        { Function = function, SafeEnd = safeEnd };

    // A throttle with a spring that opens it fully (pushed) against light friction: goes to full, as declared.
    [InlineData(ControlFunction.Throttle, 0.05, 0.2, DeviceStop.Push, "pushed", DeviceStop.Push, true, Verdict.Clear)]
    // The same spring the wrong way round closes it: away from the declared end, and the rule asks flight to go on.
    [InlineData(ControlFunction.Throttle, 0.05, 0.2, DeviceStop.Pull, "pushed", DeviceStop.Pull, false, Verdict.Fail)]
    // A mixture arm without spring stays: not the declared end; vibration may lean it.
    [InlineData(ControlFunction.Mixture, 0.1, 0, DeviceStop.Push, "pushed", null, false, Verdict.Caution)]
    // A carburettor heat flapper held by friction, declared to stay as set.
    [InlineData(ControlFunction.CarburettorHeat, 0.1, 0, DeviceStop.Push, "as set", null, true, Verdict.Clear)]
    // A cowl flap blown open by the air (toward push) with more torque than its hinge has friction.
    [InlineData(ControlFunction.CowlFlap, 0.1, 0.5, DeviceStop.Push, "pushed", DeviceStop.Push, true, Verdict.Clear)]
    // A fuel shutoff's plug is stiff: it stays, though open is declared.
    [InlineData(ControlFunction.FuelShutoff, 0.6, 0, DeviceStop.Push, "pushed", null, false, Verdict.Caution)]
    // A water rudder falls by its weight (push = down) while up is declared.
    [InlineData(ControlFunction.WaterRudder, 0.2, 0.7, DeviceStop.Push, "pulled", DeviceStop.Push, false, Verdict.Caution)]
    // Friction 0.1 and own torque 0.1, each give or take a fifth: nobody can tell.
    [InlineData(ControlFunction.CabinHeat, 0.1, 0.1, DeviceStop.Push, "pushed", null, null, Verdict.Caution)]
    [Theory]
    public void WireParts_DeviceGoes_AsReasonedByHand(ControlFunction function, double friction, double own, DeviceStop toward, string safeEnd, DeviceStop? goes, bool? safe, Verdict verdict)
    {
        var run = Device(function, friction, own, toward, safeEnd);
        var row = run.Failure(SingleFailure.WireParts);
        Assert.Equal(goes, row.Goes);
        Assert.Equal(safe, row.IsSafeEnd);
        Assert.Equal(verdict, run.Rule(ProveRules.SafeEnd));
    }

    [Fact]
    public void SpringBreaks_LeavesOnlyFriction()
    {
        var run = Device(ControlFunction.Throttle, 0.05, 0.2, DeviceStop.Push, "pushed", spring: true);
        Assert.Equal(DeviceStop.Push, run.Failure(SingleFailure.WireParts).Goes);
        var broken = run.Failure(SingleFailure.SpringBreaks);
        Assert.Null(broken.Goes);
        Assert.False(broken.IsSafeEnd);
        Assert.Equal(Verdict.Caution, run.Rule(ProveRules.Spring));
    }

    [Fact]
    public void WeightOrPressure_CannotBreak() =>
        Assert.DoesNotContain(Device(ControlFunction.CowlFlap, 0.1, 0.5, DeviceStop.Push, "pushed").Prove().Proof!.Failures, f => f.Failure == SingleFailure.SpringBreaks);

    [Fact]
    public void MeltedConduit_StickingLock_BentBracket_HoldTheDeviceWhereItIs()
    {
        var run = Device(ControlFunction.CowlFlap, 0.1, 0.5, DeviceStop.Push, "pushed");
        foreach (var failure in (SingleFailure[])[SingleFailure.ConduitMelts, SingleFailure.LockSticks, SingleFailure.BracketBends])
        {
            Assert.Null(run.Failure(failure).Goes);
            Assert.False(run.Failure(failure).IsSafeEnd);
        }
    }

    [Fact]
    public void NoLock_NoSetScrew_NoRowForThem()
    {
        var run = Installations.Sound.Cockpit(c => c with { Lock = LockKind.None }).Lever(e => e with { Swivel = e.Swivel with { HoldsBy = [WireHold.LoopedEye] } });
        var failures = run.Prove().Proof!.Failures.Select(f => f.Failure).ToList();
        Assert.DoesNotContain(SingleFailure.LockSticks, failures);
        Assert.DoesNotContain(SingleFailure.LockLetsGo, failures);
        Assert.DoesNotContain(SingleFailure.ScrewBacksOut, failures);
    }

    [Fact]
    public void SafeEnd_InOtherWords_IsAskedFor_NotGuessed()
    {
        var run = Installations.Sound with { SafeEnd = "wide open" };
        Assert.Null(run.Failure(SingleFailure.WireParts).IsSafeEnd);
        Assert.Contains("wide open", run.Prove().Of(ProveRules.Unsaid)!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void EveryRow_SaysWhatIsFelt_HowItIsFound_AndWhatIsLeft()
    {
        foreach (var function in Enum.GetValues<ControlFunction>())
        {
            Assert.All((Installations.Sound with { Function = function }).Prove().Proof!.Failures, f =>
            {
                Assert.NotEmpty(f.PilotFeels);
                Assert.NotEmpty(f.FoundBy);
                Assert.NotEmpty(f.Action);
                Assert.NotEmpty(f.Where);
            });
        }
    }

    /// <summary>An arm of 44 mm swept from 10 to 100 deg with the anchor at 60 deg from its zero: a dead centre inside.</summary>
    private static Run AcrossDeadCentre(double friction, double atHome, double ratePerDegree, DeviceStop toward, string safeEnd) =>
        Device(ControlFunction.Throttle, friction, atHome, toward, safeEnd, spring: true).Lever(e => e with
        {
            Bench = null,
            From = Toleranced<Angle>.Exact(Cockpits.Deg(10)),
            To = Toleranced<Angle>.Exact(Cockpits.Deg(100)),
            Placed = new()
            {
                Pivot = Cockpits.At(0, 0, 0),
                Axis = new(0, 1, 0),
                Zero = new(1, 0, 0),
                // Right-handed about the wing: 60 deg from aft is forward of it by cos 60, down by sin 60.
                Anchor = Cockpits.At(150 * Math.Cos(Math.PI / 3), 0, -150 * Math.Sin(Math.PI / 3)),
            },
            Load = e.Load! with { Bias = e.Load.Bias! with { Rate = new(ratePerDegree * 180 / Math.PI) } },
        });

    [Fact]
    public void DeadCentre_StrongSpring_GoesHomeFromBothSides()
    {
        // 0.2 N m at home, more away from it, against 0.05: no wire, no dead centre.
        var run = AcrossDeadCentre(0.05, 0.2, 0.001, DeviceStop.Push, "pushed");
        Assert.Contains(run.Prove().Findings, f => f is { Rule: Throwright.Engine.Throw.SweepRules.DeadCentre, Verdict: Verdict.Fail });
        var row = run.Failure(SingleFailure.WireParts);
        Assert.Equal(DeviceStop.Push, row.Goes);
        Assert.True(row.IsSafeEnd);
        Assert.Contains("every side of the dead centre", row.Where, StringComparison.Ordinal);
        Assert.Equal(DeviceStop.Push, run.Failure(SingleFailure.AtDeadCentre).Goes);
    }

    [Fact]
    public void DeadCentre_SpringThatOnlyWorksWoundUp_TellsEachSide()
    {
        // Friction 0.10 +/- 0.02. Spring 0.01 at home and 0.004 a degree: 0.01 to 0.17 within 40 deg of home crosses the friction; farther out it is larger.
        var run = AcrossDeadCentre(0.10, 0.01, 0.004, DeviceStop.Push, "pushed");
        var row = run.Failure(SingleFailure.WireParts);
        Assert.Null(row.Goes);
        Assert.NotEqual(true, row.IsSafeEnd);
        var loose = Proof.CaseFor(Runs.Aircraft, run.Prove()).Loose;
        Assert.Equal(LooseWay.CannotTell, loose.Stretches[0].Way);
        Assert.Equal(LooseWay.ToPushStop, loose.Stretches[1].Way);
        Assert.Contains("from the push stop's side (pushed)", row.Where, StringComparison.Ordinal);
        Assert.Contains("N m", row.Where, StringComparison.Ordinal);
    }

    [Fact]
    public void DeadCentre_NoSpring_StaysAndCannotBeTurnedByTheWire()
    {
        var run = AcrossDeadCentre(0.10, 1e-9, 0, DeviceStop.Push, "pushed");
        Assert.Equal(false, run.Failure(SingleFailure.WireParts).IsSafeEnd);
        Assert.Contains("neither pull nor push", run.Failure(SingleFailure.AtDeadCentre).Where, StringComparison.Ordinal);
    }

    [Fact]
    public void Stretches_ThatMeet_RestBetween()
    {
        // Driven from the push stop's side toward the pull stop, and stuck beyond: it rests where they meet.
        var goes = LooseDevice.OfStretches([("a", new(LooseWay.ToPullStop, "x")), ("b", new(LooseWay.Stays, "y"))]);
        Assert.Equal([LooseWay.Rests, LooseWay.Stays], goes.Ways);
    }

    [Fact]
    public void Lock_ThatLetsGo_WhereTheCableHolds_Stays()
    {
        // 0.02 N m drives it, 0.15 N m of friction at the device hold it.
        var run = Device(ControlFunction.CowlFlap, 0.15, 0.02, DeviceStop.Push, "as set").Cockpit(c => c with { Lock = LockKind.Friction });
        Assert.Contains("friction of cable and device", run.Failure(SingleFailure.LockLetsGo).Where, StringComparison.Ordinal);
    }

    [Fact]
    public void EmergencyControl_HasItsOperatingCheck_OthersNone()
    {
        Assert.Empty(Installations.Sound.Prove().Proof!.Operating);
        var items = (Installations.Sound with { Emergency = true }).Prove().Proof!.Operating;
        Assert.Equal(["force", "travel", "time", "one hand", "which hand", "what else moves"], items.Select(i => i.What));
        Assert.All(items, i => Assert.NotEmpty(i.Sources));
        Assert.False(items.Single(i => i.What == "what else moves").Known);
        // Force and travel are this run's own figures.
        Assert.Contains("lbf", items[0].Expect + new FigureWriter(new()).Force(1), StringComparison.Ordinal);
        Assert.Contains("stroke", items[1].Expect, StringComparison.Ordinal);
    }

    [Fact]
    public void Pilot_Measured_StandsBeforeThePublishedHand()
    {
        var published = HandStrength.Of(null, pinched: true);
        Assert.Equal(34, published.Pull);
        Assert.Equal(51, published.Push);
        var own = HandStrength.Of(new() { Strength = new(new(200), new(150), new(60)) }, pinched: true);
        Assert.Equal((60.0, 150.0, "your pilot"), (own.Pull, own.Push, own.Who));
        Assert.Equal(200, HandStrength.Of(new() { Strength = new(new(200), null, new(60)) }, pinched: false).Pull);
        Assert.Equal((124.0, 98.0), (HandStrength.Of(new() { Smallest = PilotSize.Woman50 }, pinched: false).Pull, HandStrength.Of(new() { Smallest = PilotSize.Woman50 }, pinched: false).Push));
    }
}
