using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using Throwright.Engine.Chain;
using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.HandForce;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Engine.Tests.Throw;
using Throwright.Engine.Throw;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Chain.Laws;

/// <summary>A remedy, put into the file as it says, gives what its text promises.</summary>
public sealed partial class RemediesTests
{
    [GeneratedRegex(@"cushion IN (\S+), OUT (\S+), tip (\S+), worst of them (\S+) (in|mm)\.?$")]
    private static partial Regex Cushions();

    [GeneratedRegex(@"throw (\S+ (in|mm))")]
    private static partial Regex ThrowWords();

    [GeneratedRegex(@"swing (\S+°)")]
    private static partial Regex SwingWords();

    [GeneratedRegex(@"wire to arm (\S+°) or more")]
    private static partial Regex TransmissionWords();

    [GeneratedRegex(@"hand (\S+ \S+) in the worst case")]
    private static partial Regex HandWords();

    /// <summary>Compares every figure that the text names with the figure of the changed run.</summary>
    private static int Holds(string text, RunAnswer then, FigureWriter say)
    {
        var named = 0;
        void Same(string own, string promised)
        {
            Assert.Equal(own, promised);
            named++;
        }

        // What follows the sense of motion is no figure of its own.
        var main = text.Split(" Pushing then takes")[0];
        if (Cushions().Match(main) is { Success: true } c)
        {
            var l = then.Ladder!;
            Same(say.LengthNumber(l.KnobIn.Nominal, Rounding.Down), c.Groups[1].Value);
            Same(say.LengthNumber(l.KnobOut.Nominal, Rounding.Down), c.Groups[2].Value);
            Same(say.LengthNumber(l.TipAtPull.Nominal, Rounding.Down), c.Groups[3].Value);
            // Worked out roughly while searching: never more than comes of it, and hardly less.
            var worst = Worst(l) / (c.Groups[5].Value == "in" ? Length.MetresPerInch : 0.001);
            var promised = double.Parse(c.Groups[4].Value.Replace('−', '-'), CultureInfo.InvariantCulture);
            Assert.InRange(promised, worst - (c.Groups[5].Value == "in" ? 0.006 : 0.15), worst + 1e-4);
            named++;
        }

        if (ThrowWords().Match(main) is { Success: true } t)
            Same(say.Length(then.Sweep!.Throw), t.Groups[1].Value);
        if (SwingWords().Match(main) is { Success: true } s)
            Same(say.Angle(then.Sweep!.MostSwing, Rounding.Up), s.Groups[1].Value);
        if (TransmissionWords().Match(main) is { Success: true } m)
            Same(say.Angle(then.Sweep!.LeastTransmission, Rounding.Down), m.Groups[1].Value);
        if (HandWords().Match(main) is { Success: true } h)
            Same(say.Force(Math.Max(then.Forces!.MostPull.Worst, then.Forces.MostPush.Worst)), h.Groups[1].Value);
        return named;
    }

    private static EquatableList<Remedy> Of(RunAnswer answer, Finding finding)
    {
        var say = new FigureWriter(Runs.Aircraft.Display);
        return Remedies.For(answer, finding, new(() => new(Runs.Aircraft, answer, say)), say);
    }

    private static double Worst(TravelLadder l) => Math.Min(Math.Min(l.KnobIn.Least, l.KnobOut.Least), Math.Min(l.TipAtPull.Least, l.TipAtPush.Least));

    private static void Check(Run run, Aircraft aircraft)
    {
        var say = new FigureWriter(aircraft.Display);
        var before = run.Check(aircraft);
        var solve = new Lazy<Solve>(() => new(aircraft, before, say));
        foreach (var finding in before.Findings)
        {
            foreach (var remedy in Remedies.For(before, finding, solve, say))
            {
                Assert.NotEqual(Verdict.Clear, finding.Verdict);
                Assert.EndsWith(".", remedy.Text, StringComparison.Ordinal);
                if (remedy.Tries.Count == 0)
                    continue;
                var then = Edits.Apply(run, remedy.Tries).Check(aircraft);
                Assert.True(Holds(remedy.Text, then, say) >= 4, remedy.Text);
                // Never the other way round.
                if (before.Sweep is { IsMonotone: true })
                    Assert.Equal(before.Sweep.PushTurnsUp, then.Sweep!.PushTurnsUp);
                Assert.True(then.Sweep!.IsMonotone);

                var ladder = then.Ladder!;
                switch (finding.Rule)
                {
                    case LadderRules.Most when remedy.Text.StartsWith("Slide", StringComparison.Ordinal):
                        // Neither end keeps too much any more, and neither is short.
                        Assert.DoesNotContain(then.Findings, f => f.Rule == LadderRules.Most);
                        Assert.True(Worst(ladder) >= Math.Min(before.Ladder!.Wanted, Worst(before.Ladder)) - 1e-8, remedy.Text);
                        Assert.Equal(remedy.Text.Contains("toward the tip", StringComparison.Ordinal), ladder.KnobIn.Nominal < before.Ladder.KnobIn.Nominal);
                        break;
                    case LadderRules.KnobIn or LadderRules.KnobOut when remedy.Text.StartsWith("Slide", StringComparison.Ordinal):
                        Assert.Equal(ladder.KnobIn.Least, ladder.KnobOut.Least, 1e-4);
                        Assert.True(Math.Min(ladder.KnobIn.Least, ladder.KnobOut.Least) > Math.Max(0, Math.Min(before.Ladder!.KnobIn.Least, before.Ladder.KnobOut.Least)));
                        // Words and sign: toward the tip moves the knob in.
                        Assert.Equal(remedy.Text.Contains("toward the tip", StringComparison.Ordinal), ladder.KnobIn.Nominal < before.Ladder.KnobIn.Nominal);
                        Assert.Equal(before.Ladder.TipAtPull.Least, ladder.TipAtPull.Least);
                        break;
                    case LadderRules.KnobIn or LadderRules.KnobOut or LadderRules.Most:
                        // The cushions; what else is wrong with the run has remedies of its own.
                        Assert.True(Worst(ladder) >= before.Ladder!.Wanted - 1e-8, remedy.Text);
                        Assert.Equal(Verdict.Clear, then.Of(LadderRules.KnobIn)!.Verdict);
                        Assert.Equal(Verdict.Clear, then.Of(LadderRules.KnobOut)!.Verdict);
                        break;
                    case LadderRules.Tip:
                        Assert.Equal(Verdict.Clear, then.Of(LadderRules.Tip)!.Verdict);
                        break;
                    case SweepRules.Transmission or SweepRules.DeadCentre:
                        Assert.True(then.Sweep.LeastTransmission > before.Sweep!.LeastTransmission);
                        break;
                    case SweepRules.Swing or SweepRules.WireBend:
                        Assert.True(then.Sweep.MostSwing < before.Sweep!.MostSwing, remedy.Text);
                        break;
                    case HandForceRules.Hand:
                        static double Hand(RunAnswer of) => Math.Max(of.Forces!.MostPull.Worst, of.Forces.MostPush.Worst);
                        Assert.True(Hand(then) < Hand(before), remedy.Text);
                        break;
                    default:
                        Assert.Fail($"no promise known for {finding.Rule}");
                        break;
                }
            }
        }
    }

    [Fact]
    public void Remedy_EachTried_GivesWhatItsTextPromises() => Gen.Select(Runs.Any, Gen.Bool).Sample(
        (run, inch) => Check(run, Runs.Aircraft with { Display = inch ? new() : Runs.Aircraft.Display }),
        iter: 8);

    /// <summary>Rigged at the push stop, the sweep's tolerance falls to the OUT end: with both worst cases alike that end still keeps too much.</summary>
    [Fact]
    public void TooMuchAtOneEnd_TheRemedyLeavesLessThanTheMost_AtBoth()
    {
        // 25.2 mm to share, the most at one end 12.7 mm.
        var now = Runs.Sound.Check().Ladder!;
        var stroke = 1000 * (now.Stroke + 0.0252 - now.KnobIn.Nominal - now.KnobOut.Nominal);
        var run = Runs.Sound.Cockpit(c => c with { Stroke = Levers.Mm(stroke, 0.8) }).Lever(e => e with { From = Levers.Degrees(-45, 2), To = Levers.Degrees(45, 2), Swivel = e.Swivel with { Rigged = new(DeviceStop.Push, Levers.Mm(10.1, 0.4)) } });
        var before = run.Check();
        var remedy = Assert.Single(Of(before, before.Of(LadderRules.Most)!));
        Assert.StartsWith("Slide the swivel", remedy.Text);
        Check(run, Runs.Aircraft);
    }

    /// <summary>A thin wire pushed hard: set back until the swing fits, it would bow out. That is no cure, and the text says so.</summary>
    [Fact]
    public void TooMuchSwing_WhereTheWireWouldBow_IsNotCuredByMovingBack()
    {
        // The swing fits at about twice the distance; the wire holds half as much again as it is pushed with, and at twice its length a quarter of it.
        var swing = Runs.Sound.Check().Sweep!.MostSwing;
        var run = Runs.Sound.Lever(e => e with { TipSwivels = new((0.55 * swing) + Published.Get("throw/swivel-margin").Value), Load = new() { Torque = Toleranced<Torque>.PlusMinus(new(0.8), 0.1), Measured = true } });
        var before = run.Check();
        var wire = before.Forces!.BareWire!;
        Assert.True(wire.Critical > wire.Compression && wire.Critical < 2 * wire.Compression, $"{wire}");
        var remedies = Of(before, before.Of(SweepRules.Swing)!);
        Assert.Contains(remedies, r => r.Tries.Count == 0 && r.Text.Contains("bow out under the push", StringComparison.Ordinal));
        Assert.DoesNotContain(remedies, r => r.Text.StartsWith("Move the anchor", StringComparison.Ordinal) && Edits.Apply(run, r.Tries).Check().Forces!.BareWire is { } then && then.Critical <= then.Compression);
    }

    public static TheoryData<SettingKind> Kinds => [SettingKind.Balanced, SettingKind.WireLength, SettingKind.AtPushStop, SettingKind.AtPullStop];

    private static Run Set(Run run, SettingKind kind)
    {
        var ladder = run.Solve().Ladder!;
        return run.Lever(e => e with
        {
            Swivel = e.Swivel with
            {
                At = kind == SettingKind.WireLength ? Levers.Mm(ladder.Setting.WireLength * 1000, 0.8) : null,
                Rigged = kind switch
                {
                    SettingKind.AtPushStop => new(DeviceStop.Push, Levers.Mm(ladder.Setting.KnobOutAtPushStop * 1000, 0.8)),
                    SettingKind.AtPullStop => new(DeviceStop.Pull, Levers.Mm(ladder.Setting.KnobOutAtPullStop * 1000, 0.8)),
                    _ => null,
                },
            },
        });
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Remedy_StrokeTooShort_NamesHoleAndStroke_HoweverTheSwivelIsSet(SettingKind kind)
    {
        var run = Set(Runs.Sound.Cockpit(c => c with { Stroke = c.Stroke!.Value.At(0.046) }), kind);
        var answer = run.Check();
        var finding = answer.Of(LadderRules.KnobOut)!;
        Assert.Equal(Verdict.Fail, finding.Verdict);
        var remedies = Of(answer, finding);
        var hole = Assert.Single(remedies, r => r.Text.StartsWith("Move to the", StringComparison.Ordinal));
        var stroke = Assert.Single(remedies, r => r.Text.StartsWith("Order a", StringComparison.Ordinal));
        // Where the file sets the swivel, the remedy sets it anew, in words and in the try.
        Assert.All((Remedy[])[hole, stroke], r => Assert.Equal(kind != SettingKind.Balanced, r.Tries.Any(t => t.Contains("leverEnd.swivel", StringComparison.Ordinal))));
        Assert.All((Remedy[])[hole, stroke], r => Assert.Equal(kind != SettingKind.Balanced, r.Text.Contains("swivel set anew", StringComparison.Ordinal)));
        Check(run, Runs.Aircraft);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Remedy_TipTooNear_MovesTheAnchorBack_HoweverTheSwivelIsSet(SettingKind kind)
    {
        var run = Set(Runs.Sound.Lever(e => e with { Tip = Levers.Mm(55, 0.5) }), kind);
        var answer = run.Check();
        Assert.NotEqual(Verdict.Clear, answer.Of(LadderRules.Tip)!.Verdict);
        Assert.Single(Of(answer, answer.Of(LadderRules.Tip)!));
        Check(run, Runs.Aircraft);
    }

    [Fact]
    public void Remedy_TooMuchSwing_NamesAnAnchor()
    {
        var run = Runs.Sound.Lever(e => e with { TipSwivels = Angle.FromDegrees(6), Bench = new() { Distance = Levers.Mm(60), Rule = AnchorRule.SquareAtMid } });
        var answer = run.Check();
        Assert.Equal(Verdict.Fail, answer.Of(SweepRules.Swing)!.Verdict);
        Assert.NotEmpty(Of(answer, answer.Of(SweepRules.Swing)!));
        Check(run, Runs.Aircraft);
    }

    [Theory]
    [InlineData(30)]
    [InlineData(-12)]
    public void Remedy_PoorLeverage_TurnsTheArmTheSameWayRound_AndTheTorqueWithIt(double turned)
    {
        var run = Runs.Sound.Lever(e => e with
        {
            Bench = new() { Distance = Levers.Mm(80), Rule = AnchorRule.Offset, Offset = Levers.Mm(28) },
            From = Levers.Degrees(turned - 45, 1),
            To = Levers.Degrees(turned + 45, 1),
            Load = new()
            {
                TorqueTable = [new(Angle.FromDegrees(turned - 45), Runs.Share<Torque>(0.1, 0)), new(Angle.FromDegrees(turned + 45), Runs.Share<Torque>(0.3, 0))],
                Detents = [new(Angle.FromDegrees(turned + 45), new(0.1), Angle.FromDegrees(6))],
            },
            Swivel = e.Swivel with { Rigged = null },
        });
        var answer = run.Check();
        var finding = answer.Of(SweepRules.Transmission)!;
        Assert.Equal(Verdict.Caution, finding.Verdict);
        var remedy = Assert.Single(Of(answer, finding));
        Assert.Contains(turned > 0 ? "toward the anchor" : "away from the anchor", remedy.Text, StringComparison.Ordinal);
        var then = Edits.Apply(run, remedy.Tries).Check();
        Assert.Equal(Verdict.Clear, then.Of(SweepRules.Transmission)!.Verdict);
        // The device did not change: the same torque at the same stop.
        Assert.Equal(answer.LadderCase!.TorqueAtPush, then.LadderCase!.TorqueAtPush, 1e-12);
        Assert.Equal(answer.LadderCase.TorqueAtPull, then.LadderCase.TorqueAtPull, 1e-12);
        Assert.Equal(answer.LadderCase.BiasAtPush, then.LadderCase.BiasAtPush, 1e-12);
        Check(run, Runs.Aircraft);
    }

    [Fact]
    public void Remedy_TooHeavy_NamesALargerHoleAndTheShareOfTheBends()
    {
        var run = Runs.Sound.Cockpit(c => c with { Knob = KnobShape.Round, Stroke = Levers.Mm(70, 0.8) });
        var answer = run.Check();
        Assert.Equal(Verdict.Caution, answer.Of(HandForceRules.Hand)!.Verdict);
        var remedies = Of(answer, answer.Of(HandForceRules.Hand)!);
        Assert.Equal(2, remedies.Count);
        Assert.StartsWith("Move to the 35.0 mm hole", remedies[0].Text, StringComparison.Ordinal);
        Assert.StartsWith("Lay the conduit with fewer bends", remedies[1].Text, StringComparison.Ordinal);
        // Laid straight: no bend at all, torque and drags only.
        var straight = run.Cable(c => c with { Bends = [], BendTotal = Toleranced<Angle>.Exact(default) }).Solve().Forces!;
        Assert.Contains($"laid straight it would take {new FigureWriter(Runs.Aircraft.Display).Force(Math.Max(straight.MostPull.Worst, straight.MostPush.Worst))}", remedies[1].Text, StringComparison.Ordinal);
        Check(run, Runs.Aircraft);
    }

    [Fact]
    public void Remedy_BareWireTooLong_NamesTheLengthThatHolds()
    {
        var run = Runs.Sound.Lever(e => e with { Bench = e.Bench! with { Distance = Levers.Mm(140) } });
        var answer = run.Check();
        Assert.Equal(Verdict.Caution, answer.Of(HandForceRules.BareWire)!.Verdict);
        var remedy = Assert.Single(Of(answer, answer.Of(HandForceRules.BareWire)!));
        var named = double.Parse(remedy.Text.Split("Keep the bare wire to ")[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        // A longer end tube does not change the force: the named length has the wanted margin, a millimetre more has not.
        var now = answer.Forces!.BareWire!.Length * 1000;
        Run Tube(double bare) => run.Lever(e => e with { Tip = e.Tip.At(e.Tip.Nominal.Metres + ((now - bare) / 1000)) });
        Assert.Equal(Verdict.Clear, Tube(named).VerdictOf(HandForceRules.BareWire));
        Assert.Equal(Verdict.Caution, Tube(named + 1).VerdictOf(HandForceRules.BareWire));
    }

    [Fact]
    public void Solve_ClockingSquareAtMid_NeverRecommendsTheOtherSideOfThePivot() => Gen.Select(Gen.Double[20, 45], Gen.Double[80, 160], Gen.Double[25, 50], Gen.Double[0.6, 0.9]).Sample(
        (radius, distance, half, share) =>
        {
            var run = Runs.Sound.Lever(e => e with
            {
                Radius = Levers.Mm(radius),
                From = Levers.Degrees(-half),
                To = Levers.Degrees(half),
                Bench = new() { Distance = Levers.Mm(distance), Rule = AnchorRule.Offset, Offset = Levers.Mm(share * radius) },
            }).Cockpit(c => c with { Stroke = Levers.Mm((2 * radius) + 20) });
            run = run.Lever(e => e with { Swivel = e.Swivel with { Rigged = null } });
            var found = new Solve(Runs.Aircraft, run, new(Runs.Aircraft.Display)).Clocking(SweepAim.SquareAtMid, null);
            // The wire touches the arm's circle on both sides; on the far one pushing turns the arm the other way.
            Assert.Equal(2, found.Choices.Count);
            var far = Assert.Single(found.Choices, c => c.Answer.Sweep!.PushTurnsUp != run.Solve().Sweep!.PushTurnsUp);
            Assert.False(far.Works);
            Assert.StartsWith("it turns the control round", far.Why, StringComparison.Ordinal);
            Assert.NotSame(far, found.Best);
            foreach (var choice in found.Choices)
                Assert.Equal(1, choice.Answer.Sweep!.AtMid.MomentArm / choice.Answer.Sweep.Case.Radius, 1e-6);
        },
        iter: 6);

    [Fact]
    public void Solve_SwivelOfAnUnsetRun_SharesTheWorstCasesOut()
    {
        var run = Runs.Sound.Lever(e => e with { Swivel = e.Swivel with { Rigged = null } });
        var solve = new Solve(Runs.Aircraft, run, new(Runs.Aircraft.Display));
        var best = solve.Swivel(null, null).Best!;
        Assert.Equal(best.Answer.Ladder!.KnobIn.Least, best.Answer.Ladder.KnobOut.Least, 2e-5);
        var then = Edits.Apply(run, new Trial(run, best.Edits)).Check();
        Assert.Equal(best.Answer.Ladder.KnobOut.Least, then.Ladder!.KnobOut.Least, 1e-9);
        Assert.True(Holds(solve.Swivel(null, null).Sentence, then, new(Runs.Aircraft.Display)) >= 4);
        // Asked for a cushion at one end, that end gets it.
        Assert.Equal(0.005, solve.Swivel(0.005, null).Best!.Answer.Ladder!.KnobIn.Nominal, 6e-6);
        Assert.Equal(0.006, solve.Swivel(null, 0.006).Best!.Answer.Ladder!.KnobOut.Nominal, 6e-6);
    }

    [Fact]
    public void Solve_SwivelAtADeadCentre_SaysWhatIsFirst()
    {
        var run = Runs.Sound.Lever(e => e with { From = Levers.Degrees(-120), To = Levers.Degrees(120) });
        Assert.Null(new Solve(Runs.Aircraft, run, new(Runs.Aircraft.Display)).Swivel(null, null).Best);
    }
}
