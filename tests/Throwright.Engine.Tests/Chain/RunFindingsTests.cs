using Throwright.Engine.Chain;
using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.HandForce;
using Throwright.Engine.Model;
using Throwright.Engine.Tests.Throw;
using Throwright.Engine.Throw;
using Throwright.Shapes.Numerics;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Chain;

/// <summary>Both sides of every limit.</summary>
public sealed class RunFindingsTests
{
    private static Run Sound => Runs.Sound;

    [Fact]
    public void SoundRun_EverythingKnown_IsClear()
    {
        var answer = Sound.Check();
        Assert.All(answer.Findings, f => Assert.True(f.Verdict == Verdict.Clear, f.Sentence));
        Assert.Empty(answer.Needs);
        Assert.Equal(Verdict.Clear, answer.Verdict);
        Assert.All(answer.Findings, f => Assert.Empty(f.Remedies));
        // Each finding's figure exists.
        Assert.All(answer.Findings.Where(f => f.Figure is not null), f => Assert.NotNull(answer.Find(f.Figure!)));
    }

    // -- throw

    /// <summary>Arm turned toward the anchor: pull stop <paramref name="before"/> deg short of the dead centre, where arm and wire are in line.</summary>
    private static Run NearDeadCentre(double before, double limit) => Sound.Lever(end =>
    {
        // Anchor at (30, -80): dead centre at atan2(-80, 30).
        var dead = Math.Atan2(-80, 30) / Levers.Degree;
        return end with
        {
            Bench = new() { Distance = Levers.Mm(80), Rule = AnchorRule.Offset, Offset = Levers.Mm(30) },
            Radius = Levers.Mm(30),
            From = Levers.Degrees(dead + before, limit),
            To = Levers.Degrees(dead + before + 70, limit),
        };
    });

    [Theory]
    [InlineData(-5, 0, Verdict.Fail)]
    [InlineData(1, 2, Verdict.Fail)]
    [InlineData(2.5, 2, Verdict.Clear)]
    [InlineData(1, 0.5, Verdict.Clear)]
    public void DeadCentre_WithinTheSweepOrTheLimitsOfAStop_Fails(double before, double limit, Verdict verdict)
    {
        var run = NearDeadCentre(before, limit);
        Assert.Equal(verdict, run.VerdictOf(SweepRules.DeadCentre));
        if (before < 0)
            Assert.Null(run.Check().Ladder);
    }

    [Fact]
    public void DeadCentre_WithinTheLimitsOfAStop_IsNeverClearAnywhereElse()
    {
        var answer = NearDeadCentre(1, 2).Check();
        Assert.Equal(Verdict.Fail, answer.Verdict);
        // Near it no bound exists for force and stretch: neither is given.
        Assert.Null(answer.Ladder);
        Assert.Null(answer.Forces);
        Assert.Contains("Within its tolerances", answer.Of(SweepRules.DeadCentre)!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void DeadCentre_AnchorOnTheLeversAxis_FailsWithoutException()
    {
        var run = Sound.Lever(end => Runs.InSpace(end) with { });
        run = run.Lever(end => end with { Placed = end.Placed! with { Anchor = Levers.At(new(0, 0, 90)) } });
        var answer = run.Check();
        Assert.Equal(Verdict.Fail, answer.Of(SweepRules.DeadCentre)!.Verdict);
        Assert.Null(answer.Sweep);
    }

    [Fact]
    public void Transmission_LeastAngleWithAllTolerances_IsHeldAgainst30Degrees()
    {
        // Turned so that wire and arm meet at just 30 deg at the pull stop, all exact; then a stop that may lie 1 deg farther.
        Run At(double turn, double limit) => Sound.Lever(end => end with
        {
            Bench = new() { Distance = Levers.Mm(80), Rule = AnchorRule.Offset, Offset = Levers.Mm(30) },
            Radius = Levers.Mm(30),
            From = Levers.Degrees(-45 + turn, limit),
            To = Levers.Degrees(45 + turn, limit),
        });
        double Angle(double turn) => Levers.Sweep(At(turn, 0).LeverEnd!).LeastTransmission - (30 * Levers.Degree);
        var edge = Roots.Between(Angle, -30, 0);
        Assert.Equal(Verdict.Clear, At(edge + 0.1, 0).VerdictOf(SweepRules.Transmission));
        Assert.Equal(Verdict.Caution, At(edge - 0.1, 0).VerdictOf(SweepRules.Transmission));
        Assert.Equal(Verdict.Caution, At(edge + 0.1, 1).VerdictOf(SweepRules.Transmission));
        // The figure shows the number that decides.
        var answer = At(edge + 0.1, 1).Check();
        Assert.True(answer.Find("transmission")!.Least < 30 * Levers.Degree);
        Assert.Contains($"{new FigureWriter(Runs.Aircraft.Display).Angle(answer.Find("transmission")!.Least!.Value, Rounding.Down)} at the worse stop", answer.Of(SweepRules.Transmission)!.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2.1, Verdict.Clear)]
    [InlineData(1.9, Verdict.Caution)]
    [InlineData(0.1, Verdict.Caution)]
    [InlineData(-0.1, Verdict.Fail)]
    public void Swing_AgainstATipThatTilts_KeepsTwoDegreesInHand(double more, Verdict verdict)
    {
        var swing = Levers.Sweep(Sound.LeverEnd!).MostSwing / Levers.Degree;
        Assert.Equal(verdict, Sound.Lever(e => e with { TipSwivels = Angle.FromDegrees(swing + more) }).VerdictOf(SweepRules.Swing));
    }

    // 14 CFR 23.689(c) (R): 3 deg at a fairlead, for cable systems; here a caution.
    [Theory]
    [InlineData(3.2, Verdict.Caution)]
    [InlineData(2.9, Verdict.Clear)]
    public void Swing_AtAFixedTip_IsHeldAgainstThreeDegreesAtItsMouth(double swing, Verdict verdict)
    {
        // Chord rule, seen from the mouth (tip 10 mm): the most of atan((r cos - r cos h) / (r sin + s - 10)) over the sweep.
        double Most(double s) => Enumerable.Range(-4500, 9001).Max(i => Math.Atan(
            30 * (Math.Cos(i / 100.0 * Levers.Degree) - Math.Cos(45 * Levers.Degree)) / ((30 * Math.Sin(i / 100.0 * Levers.Degree)) + s - 10)));
        var distance = Roots.Between(s => Most(s) - (swing * Levers.Degree), 60, 600, 1e-9);
        var run = Sound.Lever(e => e with { TipSwivels = default, Tip = Levers.Mm(10), Bench = new() { Distance = Levers.Mm(distance), Rule = AnchorRule.Chord } });
        Assert.Equal(swing, run.Solve().Sweep!.MostSwing / Levers.Degree, 1e-4);
        Assert.Equal(verdict, run.VerdictOf(SweepRules.Swing));
    }

    [Theory]
    [InlineData(40, 20, Verdict.Fail)]
    [InlineData(95, 20, Verdict.Caution)]
    public void WireBend_AtAFixedTip_FailsPastTheElasticLimit(double distance, double radius, Verdict verdict)
    {
        var run = Sound.Lever(e => e with { TipSwivels = default, Radius = Levers.Mm(radius), Bench = new() { Distance = Levers.Mm(distance), Rule = AnchorRule.Chord } });
        Assert.Equal(verdict, run.VerdictOf(SweepRules.WireBend));
    }

    [Fact]
    public void WireBend_LimitFromMemory_IsNeverClear()
    {
        // Hardly bent: a load that only pulls, a tip far from the arm.
        var run = Sound.Lever(e => e with
        {
            TipSwivels = default,
            Tip = default,
            Bench = new() { Distance = Levers.Mm(300), Rule = AnchorRule.HalfSagitta },
            Load = new() { Torque = Runs.Share<Torque>(0.01, 0), Bias = new() { Toward = DeviceStop.Push, Torque = Runs.Share<Torque>(0.02, 0) } },
        });
        var finding = run.Check().Of(SweepRules.WireBend)!;
        Assert.Equal(Verdict.Caution, finding.Verdict);
        Assert.Contains("from memory", finding.Why, StringComparison.Ordinal);
    }

    // -- cushion

    /// <summary>The sound run with its swivel set so that the worst-case cushion at one end is this much above (below) a limit, m.</summary>
    private static Run Cushioned(bool atIn, double least)
    {
        var at = Sound.Check();
        var now = atIn ? at.Ladder!.KnobIn.Least : at.Ladder!.KnobOut.Least;
        var outward = atIn ? least - now : now - least;
        return Sound.Lever(e => e with { Swivel = e.Swivel with { Rigged = e.Swivel.Rigged! with { KnobOut = e.Swivel.Rigged.KnobOut.At(e.Swivel.Rigged.KnobOut.Nominal.Metres + outward) } } });
    }

    [Theory]
    [InlineData(true, 3.19, Verdict.Clear)]
    [InlineData(true, 3.16, Verdict.Caution)]
    [InlineData(true, 0.02, Verdict.Caution)]
    [InlineData(true, -0.02, Verdict.Fail)]
    [InlineData(false, 3.19, Verdict.Clear)]
    [InlineData(false, 3.16, Verdict.Caution)]
    [InlineData(false, 0.02, Verdict.Caution)]
    [InlineData(false, -0.02, Verdict.Fail)]
    public void KnobCushion_WorstCase_IsHeldAgainstNothingAndTheWantedEighth(bool atIn, double least, Verdict verdict)
    {
        var answer = Cushioned(atIn, least / 1000).Check();
        Assert.Equal(verdict, answer.Of(atIn ? LadderRules.KnobIn : LadderRules.KnobOut)!.Verdict);
        // The other end got what this one lost; it stays clear.
        Assert.Equal(Verdict.Clear, answer.Of(atIn ? LadderRules.KnobOut : LadderRules.KnobIn)!.Verdict);
    }

    [Fact]
    public void KnobCushion_StopReachedFirst_NamesTheRightStopAndEnd()
    {
        var inFirst = Cushioned(true, -0.004).Check().Of(LadderRules.KnobIn)!.Sentence;
        Assert.StartsWith("The knob reaches its IN stop before the cowl flap is open", inFirst, StringComparison.Ordinal);
        var outFirst = Cushioned(false, -0.004).Check().Of(LadderRules.KnobOut)!.Sentence;
        Assert.StartsWith("The knob reaches its OUT stop before the cowl flap is shut", outFirst, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(3.2, Verdict.Clear)]
    [InlineData(3.1, Verdict.Caution)]
    [InlineData(0.1, Verdict.Caution)]
    [InlineData(-0.1, Verdict.Fail)]
    public void TipCushion_WorstCase_Governs(double least, Verdict verdict)
    {
        var now = Sound.Check().Ladder!.TipAtPull.Least;
        var run = Sound.Lever(e => e with { Tip = e.Tip.At(e.Tip.Nominal.Metres + now - (least / 1000)) });
        var answer = run.Check();
        Assert.Equal(verdict, answer.Of(LadderRules.Tip)!.Verdict);
        Assert.Equal(least / 1000, answer.Ladder!.TipAtPull.Least, 1e-7);
        Assert.Same(answer.Ladder.TipAtPull, answer.Ladder.Governing);
        Assert.StartsWith("tip-cushion", answer.Of(LadderRules.Tip)!.Figure, StringComparison.Ordinal);
        // The tip stop lies on the pull side.
        Assert.True(answer.Ladder.TipAtPull.Least < answer.Ladder.TipAtPush.Least);
        if (verdict == Verdict.Fail)
            Assert.Contains("before the cowl flap is shut", answer.Of(LadderRules.Tip)!.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(12.6, false)]
    [InlineData(12.8, true)]
    public void Cushion_MoreThanHalfAnInch_IsACaution(double nominal, bool isFound)
    {
        var now = Sound.Check().Ladder!.KnobOut.Nominal;
        var run = Sound.Cockpit(c => c with { Stroke = c.Stroke!.Value.At(c.Stroke.Value.Nominal.Metres + (nominal / 1000) - now) });
        Assert.Equal(isFound, run.Check().Of(LadderRules.Most) is { Verdict: Verdict.Caution });
    }

    [Fact]
    public void Setting_NotInTheFile_IsProposedBalanced()
    {
        var answer = Sound.Lever(e => e with { Swivel = e.Swivel with { Rigged = null } }).Check();
        Assert.NotNull(answer.Of(RunFindings.Setting));
        Assert.Equal(answer.Ladder!.KnobIn.Nominal, answer.Ladder.KnobOut.Nominal, 1e-14);
    }

    // -- hand force

    private static Run Torqued(double newtonMetres, KnobShape knob = KnobShape.THandle) => Sound
        .Lever(e => e with { Load = e.Load! with { Torque = Runs.Share<Torque>(newtonMetres, 0) } })
        .Cockpit(c => c with { Knob = knob });

    /// <summary>Torque at which the worst hand force is this, N.</summary>
    private static double TorqueFor(double newtons) =>
        Roots.Between(t => Math.Max(Torqued(t).Solve().Forces!.MostPull.Worst, Torqued(t).Solve().Forces!.MostPush.Worst) - newtons, 1e-3, 10, 1e-9);

    // MIL-STD-1472E 5.4.3.1.8.7 (R): 18 N by fingers, 45 N on a T-handle; 14 CFR 23.143(c) (R): 50 lbf with one hand.
    [Theory]
    [InlineData(KnobShape.Round, 17.9, Verdict.Clear)]
    [InlineData(KnobShape.Round, 18.1, Verdict.Caution)]
    [InlineData(KnobShape.THandle, 44.9, Verdict.Clear)]
    [InlineData(KnobShape.THandle, 45.1, Verdict.Caution)]
    [InlineData(KnobShape.THandle, 222.3, Verdict.Caution)]
    [InlineData(KnobShape.THandle, 222.5, Verdict.Fail)]
    public void HandForce_WorstCase_IsHeldAgainstTheYardstickOfItsHandle(KnobShape knob, double newtons, Verdict verdict) =>
        Assert.Equal(verdict, Torqued(TorqueFor(newtons), knob).VerdictOf(HandForceRules.Hand));

    // Human factors standard, exhibit 14.5.2.1 (R): 48 N between thumb and finger.
    [Theory]
    [InlineData(KnobShape.Round, 47.9, Verdict.Clear)]
    [InlineData(KnobShape.Round, 48.1, Verdict.Fail)]
    [InlineData(KnobShape.THandle, 222.3, Verdict.Clear)]
    [InlineData(KnobShape.THandle, 222.5, Verdict.Fail)]
    public void HandForce_InAnEmergency_IsHeldAgainstTheCeilingAlone(KnobShape knob, double newtons, Verdict verdict) =>
        Assert.Equal(verdict, (Torqued(TorqueFor(newtons), knob) with { Emergency = true }).VerdictOf(HandForceRules.Hand));

    [Fact]
    public void HandForce_OwnYardstickWithoutAFigure_NeedsItButStillFailsBeyondOneHand()
    {
        var own = Runs.Aircraft with { Yardstick = Yardstick.User };
        var light = Torqued(TorqueFor(100)).Check(own);
        Assert.Null(light.Of(HandForceRules.Hand));
        Assert.Equal(Verdict.NeedsInput, light.Of("input/handForceMost")!.Verdict);
        var heavy = Torqued(TorqueFor(223)).Check(own);
        Assert.Equal(Verdict.Fail, heavy.Of(HandForceRules.Hand)!.Verdict);
        Assert.Equal(Verdict.Clear, (Torqued(TorqueFor(100)) with { HandForceMost = new(101) }).VerdictOf(HandForceRules.Hand, own));
        Assert.Equal(Verdict.Caution, (Torqued(TorqueFor(100)) with { HandForceMost = new(99) }).VerdictOf(HandForceRules.Hand, own));
    }

    [Fact]
    public void CoreLimits_BothWays_FailWhenExceeded()
    {
        var forces = Sound.Check().Forces!;
        Run With(double pull, double push) => Sound.Cable(c => c with { PullLimit = new(pull), PushLimit = new(push) });
        Assert.Equal(Verdict.Clear, With(forces.CoreTension + 0.01, 900).VerdictOf(HandForceRules.CorePull));
        Assert.Equal(Verdict.Fail, With(forces.CoreTension - 0.01, 900).VerdictOf(HandForceRules.CorePull));
        Assert.Equal(Verdict.Clear, With(900, forces.CoreCompression + 0.01).VerdictOf(HandForceRules.CorePush));
        Assert.Equal(Verdict.Fail, With(900, forces.CoreCompression - 0.01).VerdictOf(HandForceRules.CorePush));
    }

    [Theory]
    [InlineData(3.02, Verdict.Clear)]
    [InlineData(2.98, Verdict.Caution)]
    [InlineData(1.02, Verdict.Caution)]
    [InlineData(0.98, Verdict.Fail)]
    public void BareWire_PushedAsAStrut_KeepsAMarginOfThree(double margin, Verdict verdict)
    {
        var wire = Sound.Check().Forces!.BareWire!;
        // The torque scales the push; all exact but for it.
        var torque = 0.25 * wire.Margin / margin;
        var run = Sound.Lever(e => e with { Load = e.Load! with { Torque = Runs.Share<Torque>(torque, 0.2) } });
        Assert.Equal(margin, run.Check().Forces!.BareWire!.Margin, 1e-9);
        Assert.Equal(verdict, run.VerdictOf(HandForceRules.BareWire));
    }

    [Fact]
    public void Strand_ThatHasToPush_IsACautionOrWorse()
    {
        var strand = Sound.Cable(c => c with { Core = c.Core! with { Kind = CoreKind.Strand7x7 } });
        var finding = strand.Check().Of(HandForceRules.LockUp)!;
        Assert.NotEqual(Verdict.Clear, finding.Verdict);
        Assert.Contains("pull only", finding.Why, StringComparison.Ordinal);
        // More push than can come out of the conduit.
        var jammed = strand.Lever(e => e with { Load = e.Load! with { Torque = Runs.Share<Torque>(3, 0) } }).Check();
        Assert.Equal(Verdict.Fail, jammed.Of(HandForceRules.LockUp)!.Verdict);
        Assert.True(jammed.Forces!.BareWireCompression > jammed.Forces.InConduit!.LockUp);
        // Never pushed: a spring does it. Then nothing is said.
        var pulled = strand.Lever(e => e with { Load = e.Load! with { Torque = Runs.Share<Torque>(0.1, 0), Bias = new() { Toward = DeviceStop.Push, Torque = Runs.Share<Torque>(0.5, 0) } } }).Check();
        Assert.Null(pulled.Of(HandForceRules.LockUp));
    }

    [Fact]
    public void Strand_ThatJams_IsToldInWordsAndNotAsAForce()
    {
        // Sound friction, and a band that begins at nothing.
        foreach (var friction in (Toleranced<Ratio>[])[Runs.Number(0.12, 0.04), Runs.Number(0.1, 0.1)])
        {
            var run = Sound.Cable(c => c with { Friction = friction, Core = c.Core! with { Kind = CoreKind.Strand7x7 } }).Lever(e => e with { Load = e.Load! with { Torque = Runs.Share<Torque>(3, 0) } });
            var answer = RunCheck.Check(Runs.Aircraft, run, Runs.Quick);
            Assert.Contains("jams", answer.Of(HandForceRules.Hand)!.Sentence, StringComparison.Ordinal);
            Assert.Contains("jams", answer.Of(HandForceRules.CorePush)!.Sentence, StringComparison.Ordinal);
            var words = string.Join(" ", answer.Findings.Select(f => f.Sentence + f.Why + string.Join(" ", f.Remedies.Select(r => r.Text))));
            Assert.DoesNotContain("no limit", words, StringComparison.Ordinal);
        }
    }

    /// <summary>A spring toward a stop, without limits, that sends exactly this to the knob, N.</summary>
    private static Run Sprung(DeviceStop toward, double newtons, LockKind kind, double? holds)
    {
        Run At(double own) => Sound.Lever(e => e with { Load = new() { Torque = Runs.Share<Torque>(0.1, 0), Bias = new() { Toward = toward, Torque = Runs.Share<Torque>(own, 0) } } });
        var spring = Roots.Between(own => At(own).Solve().Forces!.SelfHolding.Drive - newtons, 0.1, 20, 1e-10);
        return At(spring).Cockpit(c => c with { Lock = kind, LockHolds = holds is { } h ? new Force(h) : null });
    }

    [Theory]
    [InlineData(LockKind.None, null, Verdict.Fail)]
    [InlineData(LockKind.Friction, 29.9, Verdict.Fail)]
    [InlineData(LockKind.Friction, 30.1, Verdict.Caution)]
    [InlineData(LockKind.Friction, 44.9, Verdict.Caution)]
    [InlineData(LockKind.Friction, 45.1, Verdict.Clear)]
    [InlineData(LockKind.Twist, null, Verdict.NeedsInput)]
    public void SelfHolding_LoadThatDrives30NewtonsToTheKnob_IsHeldByTheLockOrFails(LockKind kind, double? holds, Verdict verdict)
    {
        var answer = Sprung(DeviceStop.Push, 30, kind, holds).Check();
        Assert.Equal(verdict, answer.Of(HandForceRules.SelfHold)!.Verdict);
        Assert.Contains("toward its push stop", answer.Of(HandForceRules.SelfHold)!.Sentence, StringComparison.Ordinal);
        if (kind == LockKind.None)
            Assert.EndsWith("and nothing holds it.", answer.Of(HandForceRules.SelfHold)!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void SelfHolding_LoadTowardThePullStop_SaysSo() =>
        Assert.Contains("toward its pull stop", Sprung(DeviceStop.Pull, 30, LockKind.None, null).Check().Of(HandForceRules.SelfHold)!.Sentence, StringComparison.Ordinal);

    [Fact]
    public void SelfHolding_FrictionOfTheRunHolds_IsClear()
    {
        // More than the device's own friction, less than the conduit's drags.
        var answer = Sprung(DeviceStop.Push, -0.3, LockKind.None, null).Check();
        Assert.True(answer.Forces!.SelfHolding.AtDevice > 0);
        Assert.Equal(Verdict.Clear, answer.Of(HandForceRules.SelfHold)!.Verdict);
        Assert.StartsWith("Friction holds", answer.Of(HandForceRules.SelfHold)!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void SelfHolding_ADetentAlone_IsNoLoad()
    {
        var run = Sound.Lever(e => e with { Load = e.Load! with { Torque = Runs.Share<Torque>(0.05, 0), Detents = [new(Angle.FromDegrees(0), new(0.5), Angle.FromDegrees(10))] } });
        Assert.Null(run.Check().Of(HandForceRules.SelfHold));
    }

    [Fact]
    public void HandForce_NarrowDetentBetweenTheSteps_IsFelt()
    {
        // Half a degree wide, off the equal steps of the sweep: greatest a quarter of a degree out.
        var run = Sound.Lever(e => e with { Load = e.Load! with { Torque = Runs.Share<Torque>(0.1, 0), Detents = [new(Angle.FromDegrees(3.3), new(1), Angle.FromDegrees(0.5))] } });
        var answer = run.Check();
        Assert.True(answer.Forces!.Places.Max(p => p.WirePull.Nominal) > 1.05 / 0.030);
        Assert.Equal(3.55, answer.Forces.MostPush.Angle / Levers.Degree, 0.51);
        // The curve shows the same places, in order.
        Assert.Equal(answer.Forces.Places.Select(p => p.Angle), answer.Curve!.Points.Select(p => p.ArmAngle));
        Assert.Equal(answer.Curve.Points.Select(p => p.ArmAngle).OrderDescending(), answer.Curve.Points.Select(p => p.ArmAngle));
    }

    [Fact]
    public void HandForce_TopOfATorqueTableBetweenTheSteps_IsFelt()
    {
        TorqueAt Row(double deg, double nm) => new(Angle.FromDegrees(deg), Runs.Share<Torque>(nm, 0));
        var run = Sound.Lever(e => e with { Load = new() { TorqueTable = [Row(-45, 0.1), Row(3.0, 0.1), Row(3.3, 2), Row(3.6, 0.1), Row(45, 0.1)] } });
        Assert.Equal(3.3, run.Check().Forces!.MostPull.Angle / Levers.Degree, 1e-9);
    }

    // -- valve, bends

    [Theory]
    [InlineData(DeviceStop.Push, 0.2, Verdict.Clear, "reaches both its stops")]
    [InlineData(DeviceStop.Push, -0.5, Verdict.Caution, "short of shut; it is tight")]
    [InlineData(DeviceStop.Push, -8, Verdict.Fail, "it leaks")]
    [InlineData(DeviceStop.Pull, -0.5, Verdict.Caution, "short of open and passes")]
    [InlineData(DeviceStop.Pull, -8, Verdict.Caution, "short of open and passes")]
    public void Valve_KnobStopsBeforeThePullStop_LeaksOnlyOnTheShutSide(DeviceStop open, double outLeast, Verdict verdict, string words)
    {
        // Bore 0.64 of the ball: tight for the last 90 - 2 asin(0.64) = 10.4 deg.
        var run = Cushioned(false, outLeast / 1000).Lever(e => e with { Valve = new() { BoreRatio = 0.64, Open = open } });
        var finding = run.Check().Of(RunFindings.Valve)!;
        Assert.Equal(verdict, finding.Verdict);
        Assert.Contains(words, finding.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Valve_ShutAtThePushStop_LeaksWhenTheInStopComesFirst()
    {
        var run = Cushioned(true, -0.008).Lever(e => e with { Valve = new() { BoreRatio = 0.64, Open = DeviceStop.Pull } });
        Assert.Equal(Verdict.Fail, run.VerdictOf(RunFindings.Valve));
        // The shortfall is the arm angle that 8 mm of wire are worth there.
        var answer = run.Check();
        var lacking = -answer.Ladder!.KnobIn.Least;
        var plain = lacking / answer.Sweep!.AtPush.MomentArm / Levers.Degree;
        var said = double.Parse(answer.Of(RunFindings.Valve)!.Sentence.Split("stops ")[1].Split('°')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(plain, said, 0.1 * plain);
    }

    [Theory]
    [InlineData(74, Verdict.Fail)]
    [InlineData(76, Verdict.Clear)]
    public void BendRadius_LeastOfItsLimits_IsHeldAgainstTheConduits(double least, Verdict verdict) =>
        Assert.Equal(verdict, Sound.Cable(c => c with { Bends = [Runs.Bend(80, least + 10), Runs.Bend(50, 200)] }).VerdictOf(RunFindings.BendRadius));

    [Fact]
    public void CoreSet_BentToItsElasticLimit_IsACaution()
    {
        // sigma = E d / 2R against 0.65 of the least strength of music wire at this size; R at which they meet, by hand.
        var strength = Engine.Sources.Wire.TensileStrength(CoreMaterial.MusicWire, Runs.Mm(1.6)).Found!.Value;
        var modulus = Engine.Sources.Wire.Modulus(CoreMaterial.MusicWire, Runs.Mm(1.6)).Value;
        var edge = modulus * 1.62e-3 / (2 * 0.65 * strength) * 1000;
        Assert.Equal(Verdict.Clear, Sound.Cable(c => c with { Bends = [Runs.Bend(80, edge + 10.1)] }).VerdictOf(RunFindings.CoreSet));
        Assert.Equal(Verdict.Caution, Sound.Cable(c => c with { Bends = [Runs.Bend(80, edge + 9.9)] }).VerdictOf(RunFindings.CoreSet));
    }

    // -- units: red lines read the same in both systems

    [Fact]
    public void Sentences_InInchesAndPounds_SayTheSameAsInMillimetresAndNewtons()
    {
        var inch = Runs.Aircraft with { Display = new() };
        var run = Cushioned(false, -0.00054);
        var metric = run.Check().Of(LadderRules.KnobOut)!;
        var imperial = run.Check(inch).Of(LadderRules.KnobOut)!;
        Assert.Equal(metric.Verdict, imperial.Verdict);
        Assert.Equal(metric.Limit, imperial.Limit);
        // -0.54 mm: shown as the larger overrun, -0.6 mm and -0.022 in; wanted 1/8 in.
        Assert.Contains("worst case −0.6 mm, wanted 3.2 mm", metric.Sentence, StringComparison.Ordinal);
        Assert.Contains("worst case −0.022 in, wanted 1/8 in", imperial.Sentence, StringComparison.Ordinal);

        var forced = Torqued(TorqueFor(45.05));
        Assert.Contains("worst case 45.1 N; the most for a routine control is 45.0 N.", forced.Check().Of(HandForceRules.Hand)!.Sentence, StringComparison.Ordinal);
        Assert.Contains("worst case 10.2 lbf; the most for a routine control is 10.1 lbf.", forced.Check(inch).Of(HandForceRules.Hand)!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Findings_NoNumber_AreNeverClear()
    {
        var say = new FigureWriter(new Display());
        Limit Limit(double v) => new(v, new("project", "test", Evidence.CommonPractice));
        var nan = new CushionRange("cushion", double.NaN, double.NaN, double.NaN, double.NaN, Outcome.Corner, 0, 0, 0, 0, default, [], []);
        var ladder = Sound.Check().Ladder! with { KnobIn = nan };
        Assert.All(
            LadderRules.Find(ladder, new(Limit(0.003), Limit(0.0127), new("project", "test", Evidence.CommonPractice), "the device", "open", "shut", []), say).Where(f => f.Rule == LadderRules.KnobIn),
            f => Assert.Equal(Verdict.Fail, f.Verdict));
        var forces = Sound.Check().Forces!;
        var limits = new HandForceLimits(Limit(45), Limit(222), "", "", Limit(3), Limit(1.5), null, new("project", "test", Evidence.CommonPractice), new Force(10), new Force(10), "", false, CoreKind.Solid);
        var broken = forces with
        {
            MostPull = new(double.NaN, double.NaN, 0),
            MostPush = new(double.NaN, double.NaN, 0),
            CoreTension = double.NaN,
            CoreCompression = double.NaN,
            BareWire = new(0.1, double.NaN, 10),
            SelfHolding = new(double.NaN, 10, true, 0, double.NaN),
        };
        Assert.All(HandForceRules.Find(broken, limits, say), f => Assert.Equal(Verdict.Fail, f.Verdict));
        Assert.Equal(5, HandForceRules.Find(broken, limits, say).Count());
    }
}
