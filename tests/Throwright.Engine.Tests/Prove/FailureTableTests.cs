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
}
