using Throwright.Engine.Tests.Prove;
using Throwright.Engine.Tests.Chain;
using Throwright.Engine.Model;
using Throwright.Engine.Chain;
using Throwright.Engine.Order;
using Throwright.Engine.Sources;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Order;

public sealed class HardwareTests
{
    private const double Inch = Length.MetresPerInch, InchPound = Torque.NewtonMetresPerPoundForceInch;

    [Fact]
    [Trait("Check", "ST13")]
    public void Grip_OfTheExaminersBolt_IsNineSixteenths() =>
        // FAA mechanic examination item, second-hand: shank 1 3/16 in, thread 5/8 in.
        Assert.Equal(0.5625, Hardware.Grip(1.1875, 0.625), 1e-12);

    [Fact]
    [Trait("Check", "ST14")]
    public void Torque_WithFourInchPoundsOfDrag_IsTwentyFourToTwentyNine()
    {
        // AC 43.13-1B Table 7-1 and 7-40(d): read. 10-32, tension nut 20 to 25 lbf in.
        var torque = Hardware.Torque("10-32", true, 4 * InchPound)!.Value;
        Assert.Equal(24, torque.Low / InchPound, 1e-9);
        Assert.Equal(29, torque.High / InchPound, 1e-9);
    }

    [Fact]
    [Trait("Check", "ST12")]
    public void Rivet_OfAnEighth_ThroughAnEighth_IsFiveSixteenths() =>
        // NAVEDTRA 14018: 1.5 D + G.
        Assert.Equal(0.3125, Hardware.RivetLength(0.125, 0.125), 1e-12);

    [Theory]
    [Trait("Check", "C1")]
    [InlineData("No.6", 10)]
    [InlineData("1/4", 87)]
    [InlineData("5/16", 165)]
    public void SetScrew_SeatingTorque_IsThePublishedOne(string size, double inchPounds) =>
        Assert.Equal(inchPounds, Published.Table("order/set-screw-torque").Row("size", size).Si("low") / InchPound, 1e-9);

    [Fact]
    [Trait("Check", "C2")]
    public void ClampForce_OfANumberSix_ByTenInchPounds() =>
        // T / (K d): 10 / (0.2 x 0.138) = 362.3 lbf.
        Assert.Equal(362.3, Hardware.ClampForce(10, 0.138), 0.05);

    [Fact]
    public void Bolts_EachGripAndLength_DifferByTheThreadOfTheirSize()
    {
        // Two published tables against each other: length less grip is the thread, within a thirty-second.
        foreach (var row in Published.Table("order/bolts").Rows.Where(r => r.Find("dash")!.Text is not ("3" or "4")))
        {
            var size = Published.Table("order/sizes").Row("bolt", row.Find("bolt")!.Text);
            Assert.Equal(size.Si("threaded"), Hardware.Grip(row.Si("length"), 0) - row.Si("grip"), Inch / 32);
        }
    }

    [Fact]
    public void Bolt_ForEveryStack_FillsItAndShowsAThread()
    {
        var size = Hardware.SizeOf(0.19 * Inch)!;
        for (var stack = 0.10; stack < 1.05; stack += 0.01)
        {
            var bolt = Hardware.BoltFor(size, stack * Inch, drilled: true);
            Assert.NotNull(bolt);
            Assert.True(bolt.Grip >= (stack - (1.0 / 32)) * Inch, $"{stack}: {bolt}");
            var washers = bolt.Washers.Sum(w => w.Count * (w.Number.EndsWith('L') ? 0.032 : 0.063)) * Inch;
            Assert.True((stack * Inch) + washers >= bolt.Grip - 1e-9, $"{stack}: the nut runs out of thread, {bolt}");
            Assert.InRange(bolt.Washers.Sum(w => w.Count), 1, 3);
            Assert.True(bolt.ThreadsOut >= 1);
        }
    }

    [Theory]
    // By hand, No. 10: arm 1/8 and swivel 1/4 make 3/8 in: AN3-6 has grip 3/8 and length 25/32.
    [InlineData(0.375, "AN3-6", "AN960-10L")]
    // 0.30 in: AN3-5 has grip 1/4, a twentieth short: too short. AN3-6, and 0.063 + 0.032 under the nut... 0.30 + 0.095 covers 3/8.
    [InlineData(0.300, "AN3-6", "AN960-10")]
    public void Bolt_OfAWorkedStack_IsAsByHand(double stack, string number, string washer)
    {
        var bolt = Hardware.BoltFor(Hardware.SizeOf(0.19 * Inch)!, stack * Inch, drilled: true)!;
        Assert.Equal(number, bolt.Number);
        Assert.Contains(bolt.Washers, w => w.Number == washer);
    }

    private static Throwright.Engine.Order.OrderAnswer OrderOf(Run run) => Purchase.Of(Runs.Aircraft with { Display = new() }, run.Prove());

    [Fact]
    public void Bolt_BeyondTheTables_IsNamedAndNotGuessed()
    {
        var line = OrderOf(Installations.Sound.With(i => i with { Joint = i.Joint! with { Kind = PinKind.Bolt, Diameter = new(0.4375 * Length.MetresPerInch) } })).Hardware[0];
        Assert.Equal("ask before ordering", line.Number);
        Assert.True(line.Confirm);
        Assert.Contains("AN3 to AN6", line.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void Bolt_OfThreeEighths_IsAnAn6()
    {
        // Stack 0.25 + 0.25 in, AN6-11A: grip 0.562 with one washer of 0.063 under the nut.
        var line = OrderOf(Installations.Sound.With(i => i with { Joint = i.Joint! with { Kind = PinKind.Bolt, Diameter = new(0.375 * Length.MetresPerInch), Arm = new(0.25 * Length.MetresPerInch), Swivel = new(0.25 * Length.MetresPerInch), HeldBy = [JointLock.AllMetalNut] } })).Hardware[0];
        Assert.StartsWith("AN6-", line.Number, StringComparison.Ordinal);
    }

    [Fact]
    public void Stack_NoLengthFits_IsNamed()
    {
        var lines = OrderOf(Installations.Sound.With(i => i with { Joint = i.Joint! with { Kind = PinKind.Bolt, Diameter = new(0.19 * Length.MetresPerInch), Arm = new(3 * Length.MetresPerInch) } })).Hardware;
        Assert.Contains(lines, l => l.Number == "ask before ordering" && l.Note.Contains("no length of the table", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(HeatZone.EngineBay, FireClass.NotStated, true)]
    [InlineData(HeatZone.EngineBay, FireClass.FireResistant, false)]
    [InlineData(HeatZone.Cabin, FireClass.NotStated, false)]
    public void CableIntoTheEngineBay_WithoutAFireClass_IsAskedForOne(HeatZone zone, FireClass fire, bool asked)
    {
        var run = Installations.Sound.With(i => i with { ConduitFire = fire }).Lever(e => e with { Zone = zone }) with { Function = ControlFunction.Mixture };
        var line = OrderOf(run).Cable.Single(l => l.What == "in a fire");
        Assert.Equal(asked, line.Confirm);
        Assert.Equal(asked, line.Note.Contains("installation.conduitFire", StringComparison.Ordinal));
    }

    [Fact]
    public void CableWithoutWeight_IsAskedFor()
    {
        var order = OrderOf(Installations.Sound);
        Assert.True(order.Weight!.Ask);
        Assert.True(order.Cable.Single(l => l.What == "weight per length").Confirm);
    }

    [Fact]
    public void Stock_OfSeveralRuns_AddsUpByDiameterAndThickness()
    {
        static OrderAnswer With(params CutLine[] cuts) => new() { Run = "x", Cable = [], Hardware = [], Cuts = Throwright.Shapes.EquatableList.ToEquatableList(cuts) };
        var stock = OrderSolver.Stock(
        [
            With(new("wedge", "6061 rod, 1 in", "", CutKind.Rod, 0.030, 0.0254), new("core", "its own", "")),
            With(new("wedge", "6061 rod, 1 in", "", CutKind.Rod, 0.020, 0.0254), new("bracket", "2024 sheet", "", CutKind.Sheet, 0.1, 0.04, 0.0016, 2)),
        ]);
        Assert.Equal(2, stock.Count);
        Assert.Equal((CutKind.Sheet, 2), (stock[0].Kind, stock[0].Pieces));
        Assert.Equal(0.008, stock[0].Amount, 1e-12);
        Assert.Equal(0.050, stock[1].Amount, 1e-12);
    }
}
