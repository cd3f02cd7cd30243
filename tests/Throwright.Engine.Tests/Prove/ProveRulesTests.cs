using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Prove;
using Throwright.Engine.Sources;
using Throwright.Engine.Tests.Chain;
using Throwright.Engine.Tests.Throw;
using Throwright.Engine.Throw;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Prove;

/// <summary>Each rule of installation, both ways.</summary>
public sealed class ProveRulesTests
{
    private static readonly FigureWriter Say = new(new() { Length = LengthUnit.Inch });

    [Fact]
    public void Everything_Said_LeavesNothingToAsk()
    {
        var answer = Installations.Sound.Prove();
        Assert.Null(answer.Of(ProveRules.Unsaid));
        Assert.All(answer.Findings.Where(f => f.Rule.StartsWith("prove/", StringComparison.Ordinal)), f => Assert.True(f.Verdict == Verdict.Clear, f.Sentence));
        Assert.All(answer.Findings, f => Assert.True(RuleBook.Holds(f.Rule), f.Rule));
    }

    [Fact]
    public void Nothing_Said_AsksInOneFinding()
    {
        var run = Installations.Sound with { Installation = null, How = "", SafeEnd = "" };
        var asked = Assert.Single(run.Prove().Findings, f => f.Rule == ProveRules.Unsaid);
        Assert.Equal(Verdict.NeedsInput, asked.Verdict);
        Assert.Contains("installation.joint.heldBy", asked.Why, StringComparison.Ordinal);
        Assert.Contains("safeEnd", asked.Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(ControlFunction.Mixture, "rich", Verdict.Clear)]
    [InlineData(ControlFunction.Mixture, "lean", Verdict.Fail)]
    [InlineData(ControlFunction.Mixture, "cut off", Verdict.Fail)]
    [InlineData(ControlFunction.Throttle, "full", Verdict.Clear)]
    [InlineData(ControlFunction.Throttle, "idle", Verdict.Fail)]
    [InlineData(ControlFunction.Propeller, "fine", Verdict.Clear)]
    [InlineData(ControlFunction.FuelShutoff, "open", Verdict.Clear)]
    [InlineData(ControlFunction.FuelShutoff, "off", Verdict.Fail)]
    [InlineData(ControlFunction.CarburettorHeat, "cold", Verdict.Clear)]
    [InlineData(ControlFunction.CarburettorHeat, "hot", Verdict.Fail)]
    [InlineData(ControlFunction.CarburettorHeat, "winter", Verdict.NeedsInput)]
    [InlineData(ControlFunction.CabinHeat, "off", Verdict.Clear)]
    public void Sense_OfMotion_FollowsThePublishedTable(ControlFunction function, string pushed, Verdict verdict)
    {
        // 14 CFR 23.779(b), text before Amendment 64: read.
        var run = Installations.Sound.Cockpit(c => c with { PushMeans = pushed, Lock = LockKind.Twist }) with { Function = function };
        Assert.Equal(verdict, run.Rule(ProveRules.Sense));
    }

    [Theory]
    [Trait("Check", "ST16")]
    [InlineData("red", false, Verdict.Fail)]
    [InlineData("RED T-handle", true, Verdict.Clear)]
    [InlineData("black", true, Verdict.Fail)]
    [InlineData("black", false, Verdict.Clear)]
    [InlineData("purple", false, Verdict.Caution)]
    public void Red_IsForEmergencyControlsAlone(string colour, bool emergency, Verdict verdict)
    {
        // 14 CFR 23.1555(e)(2), text before Amendment 64: read. ST16 is the first row: a red cabin heat knob.
        var run = Installations.Sound.Cockpit(c => c with { KnobColour = colour }) with { Function = ControlFunction.CabinHeat, Emergency = emergency };
        Assert.Equal(verdict, run.Rule(ProveRules.Colour));
    }

    [Theory]
    [Trait("Check", "ST15")]
    [InlineData(200, 300, Verdict.Fail)]
    [InlineData(204, 300, Verdict.Clear)]
    [InlineData(200, -50, Verdict.Clear)]
    public void CarburettorHeat_StandsEightInchesFromTheMixture_OrLeftOfTheThrottle(double apart, double heatAt, Verdict verdict)
    {
        // 14 CFR 23.777(d), text of Amendment 23-62: read. 8 in = 203.2 mm.
        PanelPlace Knob(ControlFunction f, double x) => new(f.ToString(), f, KnobShape.Round, x / 1000, 0);
        var found = PanelOrder.Find([Knob(ControlFunction.Throttle, 0), Knob(ControlFunction.CarburettorHeat, heatAt), Knob(ControlFunction.Mixture, heatAt - apart)], Say);
        Assert.Equal(verdict, found.Single(f => f.Rule == PanelOrder.CarburettorHeat).Verdict);
    }

    [Fact]
    public void Levers_InAnotherOrder_Fail()
    {
        PanelPlace Knob(ControlFunction f, double x) => new(f.ToString(), f, KnobShape.Round, x, 0);
        Verdict Of(params PanelPlace[] knobs) => PanelOrder.Find(knobs, Say).Single(f => f.Rule == PanelOrder.Levers).Verdict;
        Assert.Equal(Verdict.Clear, Of(Knob(ControlFunction.Throttle, 0), Knob(ControlFunction.Propeller, 0.1), Knob(ControlFunction.Mixture, 0.2)));
        Assert.Equal(Verdict.Fail, Of(Knob(ControlFunction.Throttle, 0), Knob(ControlFunction.Propeller, 0.2), Knob(ControlFunction.Mixture, 0.1)));
    }

    [Theory]
    [Trait("Check", "ST17")]
    [InlineData(3.2, Verdict.Fail)]
    [InlineData(2.8, Verdict.Clear)]
    public void Wire_LeavingAFairlead_TurnsByThreeDegreesAtMost(double swing, Verdict verdict)
    {
        // 14 CFR 23.689(c), text before Amendment 64: read. The end tube is fixed; the aircraft is measured by Part 23.
        var fac = Runs.Aircraft with { Yardstick = Yardstick.Fac23 };
        Run At(double distance) => Installations.Sound.Lever(e => e with { Bench = e.Bench! with { Distance = Levers.Mm(distance) }, TipSwivels = Angle.Zero });
        double near = 20, far = 2000;
        for (var i = 0; i < 60; i++)
        {
            var middle = 0.5 * (near + far);
            if (At(middle).Solve().Sweep!.MostSwing > swing * Levers.Degree)
                near = middle;
            else
                far = middle;
        }

        Assert.Equal(verdict, At(far).VerdictOf(SweepRules.Swing, fac));
    }

    [Fact]
    public void Marking_WithoutHow_Fails()
    {
        Assert.Equal(Verdict.Fail, (Installations.Sound with { How = "" }).Rule(ProveRules.Marking));
        Assert.Equal(Verdict.Clear, Installations.Sound.Rule(ProveRules.Marking));
    }

    [Theory]
    [InlineData(2.9, Verdict.Fail)]
    [InlineData(3.1, Verdict.Caution)]
    [InlineData(4.6, Verdict.Clear)]
    public void Lettering_At750Millimetres_NeedsThreeAndWantsFourAndAHalf(double height, Verdict verdict) =>
        // NUREG-0700: 0.004 and 0.006 of the distance.
        Assert.Equal(verdict, Installations.Sound.With(i => i with { Legend = new(Runs.Mm(height), Runs.Mm(750), false) }).Rule(ProveRules.Lettering));

    [Theory]
    [InlineData(LockKind.None, GuardKind.None, Verdict.Fail)]
    [InlineData(LockKind.Friction, GuardKind.None, Verdict.Fail)]
    [InlineData(LockKind.Friction, GuardKind.Gate, Verdict.Clear)]
    [InlineData(LockKind.PressToRelease, GuardKind.None, Verdict.Clear)]
    public void FuelShutoff_IsGuarded(LockKind held, GuardKind guard, Verdict verdict)
    {
        var run = Installations.Sound.Cockpit(c => c with { Lock = held }).With(i => i with { Guard = guard }) with { Function = ControlFunction.FuelShutoff };
        Assert.Equal(verdict, run.Rule(ProveRules.Guard));
    }

    [Fact]
    public void FuelShutoff_WithAStrand_CannotBeOpenedAgain_UnlessTheDeviceOpensItself()
    {
        var shutoff = Installations.Sound with { Function = ControlFunction.FuelShutoff };
        var strand = shutoff.Cable(c => c with { Core = c.Core! with { Kind = CoreKind.Strand7x7 } });
        Assert.Equal(Verdict.Clear, shutoff.Rule(ProveRules.Reopen));
        Assert.Equal(Verdict.Caution, strand.Rule(ProveRules.Reopen));
        Assert.Equal(Verdict.Fail, strand.Lever(e => e with { Load = e.Load! with { Bias = null } }).Rule(ProveRules.Reopen));
    }

    [Fact]
    public void FuelShutoff_AheadOfTheFirewall_Fails()
    {
        var run = Installations.Sound.With(i => i with { Side = FirewallSide.Engine, ConduitFire = FireClass.NotStated }) with { Function = ControlFunction.FuelShutoff };
        Assert.Equal(Verdict.Fail, run.Rule(ProveRules.Firewall));
        Assert.Equal(Verdict.Fail, run.Rule(ProveRules.Fire));
        Assert.Equal(Verdict.Caution, run.With(i => i with { ConduitFire = FireClass.FireResistant }).Rule(ProveRules.Fire));
        Assert.Equal(Verdict.Clear, run.With(i => i with { ConduitFire = FireClass.Fireproof }).Rule(ProveRules.Fire));
    }

    [Theory]
    [InlineData(Verdict.Caution, WireHold.SetScrew)]
    [InlineData(Verdict.Caution, WireHold.SetScrew, WireHold.Threadlocker)]
    [InlineData(Verdict.Clear, WireHold.SetScrew, WireHold.BentTail)]
    [InlineData(Verdict.Clear, WireHold.LoopedEye)]
    public void Wire_HeldByFrictionAlone_IsACaution(Verdict verdict, params WireHold[] holds) =>
        Assert.Equal(verdict, Installations.Sound.Lever(e => e with { Swivel = e.Swivel with { HoldsBy = [.. holds] } }).Rule(ProveRules.WireHold));

    [Theory]
    [InlineData(PinKind.ClevisPin, false, false, Verdict.Fail, JointLock.Cotter)] // 23.689(d)
    [InlineData(PinKind.ClevisPin, false, false, Verdict.Clear, JointLock.Cotter, JointLock.Structure)]
    [InlineData(PinKind.Bolt, true, false, Verdict.Fail, JointLock.SelfLockingNut)] // 23.607(c), AC 43.13-1B 7-64(a)
    [InlineData(PinKind.Bolt, true, false, Verdict.Fail, JointLock.AllMetalNut)]
    [InlineData(PinKind.Bolt, false, false, Verdict.Clear, JointLock.AllMetalNut)]
    [InlineData(PinKind.Bolt, true, false, Verdict.Clear, JointLock.SelfLockingCastleNut, JointLock.Cotter)] // 7-64(b)
    [InlineData(PinKind.Bolt, true, true, Verdict.Clear, JointLock.SelfLockingCastleNut, JointLock.Cotter)]
    [InlineData(PinKind.Bolt, true, true, Verdict.Fail, JointLock.CastleNut, JointLock.Cotter)] // 23.607(a)
    [InlineData(PinKind.Bolt, true, false, Verdict.Clear, JointLock.CastleNut, JointLock.Cotter)]
    [InlineData(PinKind.Bolt, true, false, Verdict.Fail, JointLock.CastleNut)]
    [InlineData(PinKind.Bolt, false, false, Verdict.Fail, JointLock.Threadlocker)]
    [InlineData(PinKind.Bolt, false, false, Verdict.Fail, JointLock.LockWasher, JointLock.CheckNut)]
    public void Joint_IsLockedAsTheRulesAsk(PinKind kind, bool turns, bool critical, Verdict verdict, params JointLock[] held) =>
        Assert.Equal(verdict, Installations.Sound.With(i => i with { Critical = critical, Joint = i.Joint! with { Kind = kind, Turns = turns, HeldBy = [.. held] } }).Rule(ProveRules.JointLocks));

    [Fact]
    public void FibreNut_InAHotEngineBay_Fails()
    {
        // AC 43.13-1B 7-64(f): 250 degF = 121.1 degC.
        var run = Installations.Sound.With(i => i with { Joint = i.Joint! with { Turns = false, HeldBy = [JointLock.SelfLockingNut] } });
        Aircraft Bay(double degrees) => Runs.Aircraft with { Environment = Runs.Aircraft.Environment! with { EngineBay = new(degrees) } };
        Assert.Equal(Verdict.Clear, run.Rule(ProveRules.JointHeat, Bay(121)));
        Assert.Equal(Verdict.Fail, run.Rule(ProveRules.JointHeat, Bay(122)));
    }

    [Fact]
    [Trait("Check", "ST11")]
    public void Bearing_OfAQuarterInchOfPin_NeedsThePublishedFactor()
    {
        // 14 CFR 23.693: D 0.1875 in, t 0.125 in, limit 100 lbf: 4,267 psi, times 3.33 = 14,208 psi (formula of the rule).
        var joint = new Joint { Diameter = Length.FromInches(0.1875), Arm = Length.FromInches(0.125) };
        var psi = ProveSolver.Bearing(joint, 100 * Force.NewtonsPerPoundForce)!.Value / 6894.757293168361;
        Assert.Equal(14208, psi, 1.0);
        Assert.Equal(4266.67, psi / Published.Get("joint/push-pull-factor").Value, 0.01);
    }

    [Fact]
    public void Bearing_WeakerThanAsked_Fails()
    {
        // 150 N x 3.33 / (4.76 x 3 mm) = 34.98 MPa.
        Run At(double mpa) => Installations.Sound.With(i => i with { Joint = i.Joint! with { Bearing = new(mpa * 1e6) } });
        Assert.Equal(Verdict.Fail, At(34.9).Rule(ProveRules.JointBearing));
        Assert.Equal(Verdict.Clear, At(35.1).Rule(ProveRules.JointBearing));
    }

    [Fact]
    public void JammedDevice_BeyondTheCoresLimit_IsACaution()
    {
        Assert.Equal(Verdict.Clear, Installations.Sound.Rule(ProveRules.Jam));
        Assert.Equal(Verdict.Caution, Installations.Sound.With(i => i with { LimitForce = new(201) }).Rule(ProveRules.Jam));
    }

    [Fact]
    public void Anchor_OnAFuelLine_Fails() =>
        Assert.Equal(Verdict.Fail, Installations.Sound.With(i => i with { AnchorOn = AnchorGround.FluidLine }).Rule(ProveRules.AnchorGround));

    [Fact]
    public void Wiring_NearerThanHalfAnInch_Fails_AndTheLimitFromMemoryNeverMakesItClear()
    {
        Run At(double mm) => Installations.Sound.With(i => i with { Near = [new(NeighbourKind.Wiring, Runs.Mm(mm))] });
        Assert.Equal(Verdict.Fail, At(12).Rule(ProveRules.Distance));
        Assert.Equal(Verdict.Caution, At(13).Rule(ProveRules.Distance));
    }

    [Fact]
    public void WeakerHand_IsNeverMentionedWithoutAForce()
    {
        var heavy = Installations.Sound.Lever(e => e with { Load = new() { Torque = Runs.Share<Torque>(2, 0.1), Measured = true } });
        Assert.Equal(Verdict.Clear, Installations.Sound.Rule(ProveRules.People));
        Assert.Equal(Verdict.Caution, heavy.Rule(ProveRules.People));
        Assert.Null((Installations.Sound with { Cable = null }).Lever(e => e with { Load = null }).Rule(ProveRules.People));
    }

    [Fact]
    public void RuleTable_NamesEachRuleOnce_WithWhomItBinds()
    {
        var answer = Installations.Sound.Prove();
        var table = RuleTable.Of(Runs.Aircraft, answer);
        Assert.Contains(table, r => r.Rule.Id == "23.1555(e)(2)" && r.Finding.Rule == ProveRules.Colour && r.Binds.Contains("does not bind", StringComparison.Ordinal));
        Assert.Contains(RuleTable.Of(Runs.Aircraft with { Basis = Basis.Part23 }, answer), r => r.Rule.Id == "23.1555(e)(2)" && r.Binds.StartsWith("binds", StringComparison.Ordinal));
        Assert.Contains(table, r => r.Rule.Id == "ol-controls" && r.Binds.StartsWith("binds", StringComparison.Ordinal));
        Assert.DoesNotContain(RuleTable.Of(Runs.Aircraft with { Basis = Basis.Car3 }, answer), r => r.Binds.StartsWith("binds where", StringComparison.Ordinal));
    }

    [Fact]
    public void Sentences_NeverSayThatSomethingIsApproved()
    {
        string[] never = ["approved", "compliant", "complies", " safe ", " ok ", "passes"];
        foreach (var run in (Run[])[Installations.Sound, Runs.Sound, Installations.Sound with { Function = ControlFunction.FuelShutoff }])
            Assert.All(run.Prove().Findings, f => Assert.DoesNotContain(never, n => f.Sentence.Replace("safe end", "", StringComparison.Ordinal).Contains(n, StringComparison.OrdinalIgnoreCase)));
    }
}
