using CsCheck;
using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Engine.Model;

namespace Throwright.Engine.Tests.Make;

public class BracketLoadTests
{
    private const double Mm = 1e-3;

    private static readonly FigureWriter Say = new(new Display { Length = LengthUnit.Millimetre });

    private static readonly BracketCase Case = new(
        "6061-T6", 1.6 * Mm, Math.PI / 2, 4.8 * Mm, 46 * Mm, 36 * Mm, 30 * Mm,
        [new(BracketLeg.Base, 18 * Mm, 8 * Mm, 4.8 * Mm), new(BracketLeg.Base, 18 * Mm, -8 * Mm, 4.8 * Mm), new(BracketLeg.Base, 34 * Mm, 0, 4.8 * Mm), new(BracketLeg.Standing, 22 * Mm, 0, 7 * Mm)]);

    /// <summary>Derived by Castigliano's theorem: 25 base, 30 standing, 25 wide, 2 thick, 71 GPa, 100 N.</summary>
    [Fact, Trait("Check", "A1")]
    public void Deflection_OfTheWorkedBracket_IsTheDerivedOne() =>
        Assert.Equal(2.66197, BracketBending.Deflection(100, 25 * Mm, 30 * Mm, 71e9, BracketBending.SecondMoment(25 * Mm, 2 * Mm)) / Mm, 5e-6);

    /// <summary>Shigley, Example 8-7: four bolts at (±75, ±60), 16 kN at 425 from the centroid; evaluated (printed answer from memory).</summary>
    [Fact, Trait("Check", "A2")]
    public void FourBolts_Shigley_CarryTheEvaluatedForces()
    {
        var shear = FastenerGroup.Shear(Rectangle(75, 60), new(0, -16e3), new(425 * Mm, 0));
        Assert.Equal([20.973e3, 20.973e3, 14.789e3, 14.789e3], shear.OrderDescending().Select(f => Math.Round(f / 1) * 1.0), (a, b) => Math.Abs(a - b) <= 1);
    }

    /// <summary>Bhandari, Example 7.3 (read): pitch 200 x 150, 10 kN at 500.</summary>
    [Fact, Trait("Check", "A3")]
    public void FourBolts_Bhandari_CarryThePublishedForces()
    {
        var shear = FastenerGroup.Shear(Rectangle(100, 75), new(0, -10e3), new(500 * Mm, 0)).OrderDescending().ToList();
        Assert.Equal(12093.4, shear[0], 0.05);
        Assert.Equal(8139.4, shear[^1], 0.05);
    }

    /// <summary>Bhandari, Example 7.4 (read): three in line at 75, 5 kN at 305.</summary>
    [Fact, Trait("Check", "A4")]
    public void ThreeBoltsInLine_Bhandari_CarryThePublishedForces()
    {
        var shear = FastenerGroup.Shear([Bolt(-75, 0), Bolt(0, 0), Bolt(75, 0)], new(0, -5e3), new(305 * Mm, 0));
        Assert.Equal([8500, 1666.7, 11833.3], shear, (a, b) => Math.Abs(a - b) < 0.05);
    }

    /// <summary>Public stress-method sheet "bolt group" (read): unequal fasteners, diameters as areas; inch and pound, but the method has no unit.</summary>
    [Fact, Trait("Check", "A5")]
    public void SixUnequalBolts_OfTheSheet_CarryThePublishedForces()
    {
        (double X, double Y, double D)[] bolts = [(1, 1, 0.375), (-1, 1, 0.25), (-1, -1, 0.25), (1, 5, 0.375), (0, 5, 0.25), (10, 2, 0.375)];
        List<GroupedFastener> group = [.. bolts.Select(b => new GroupedFastener(new(b.X, b.Y), b.D * b.D))];
        Assert.Equal(2.564, FastenerGroup.Centroid(group).X, 0.0005);
        Assert.Equal(2.359, FastenerGroup.Centroid(group).Y, 0.0005);
        Assert.Equal([2493, 1210, 1220, 2507, 1165, 1451], FastenerGroup.Shear(group, new(0, -10000), new(0.3, 0), -12000), (a, b) => Math.Abs(a - b) <= 1);
    }

    /// <summary>Whatever the group, its forces add up to the load and its moments to the moment.</summary>
    [Fact]
    public void Shear_OfAnyGroup_IsLeastWithoutEccentricity() =>
        Gen.Select(Gen.Double[5, 50], Gen.Double[5, 50], Gen.Double[1, 1000]).Sample(t =>
        {
            var (x, y, force) = t;
            var centred = FastenerGroup.Shear(Rectangle(x, y), new(force, 0), default);
            Assert.All(centred, f => Assert.Equal(force / 4, f, 1e-9 * force));
            Assert.True(FastenerGroup.Shear(Rectangle(x, y), new(force, 0), new(0, 10 * Mm)).Max() > force / 4);
        });

    /// <summary>D 3/16 in, t 1/8 in, 100 lbf: 4,267 psi, as computed for 14 CFR 23.693's example; the tear-out derived.</summary>
    [Fact, Trait("Check", "MK8")]
    public void Bearing_AndTearOut_OfOneFastener_AreTheWorkedOnes()
    {
        const double Inch = 0.0254, Pound = 4.4482216152605, Psi = Pound / (Inch * Inch);
        Assert.Equal(4266.667, BracketLoad.Bearing(100 * Pound, 0.1875 * Inch, 0.125 * Inch) / Psi, 1e-3);
        Assert.Equal(1422.222, BracketLoad.TearOut(100 * Pound, 0.1875 * Inch, 0.125 * Inch, 0.375 * Inch) / Psi, 1e-3);
        Assert.Equal(double.PositiveInfinity, BracketLoad.TearOut(1, 0.01, 0.001, 0.005));
    }

    [Fact]
    public void Bearing_OfABracket_IsItsWorstFastener_AndNeverClearFromMemoryAlone()
    {
        // Three alike in line with the force: a third each. 300 N: 100 N on 4.8 by 1.6 mm; the nearest edge is 7 mm aside.
        var load = new BracketLoad(Case, 300);
        Assert.Equal(100 / (4.8 * 1.6) * 1e6, load.WorstBearing, 1);
        Assert.Equal(100 / (2 * 1.6 * (7 - 2.4)) * 1e6, load.WorstTearOut, 1);
        Finding Of(BracketLoad of) => MakeRules.Find(of, "AN3", Say).Single(f => f.Rule == MakeRules.Bearing);
        Assert.Equal(Verdict.Clear, Of(load).Verdict);
        Assert.Contains(Of(load).Sources, s => s.Evidence == Evidence.Memory);
        Assert.Equal(Verdict.Caution, Of(load with { Force = 6e3 }).Verdict);
        Assert.Equal(Verdict.Fail, Of(load with { Force = 60e3 }).Verdict);
        Assert.Equal(Verdict.Fail, Of(load with { Case = Case with { Holes = [new(BracketLeg.Base, 44 * Mm, 0, 4.8 * Mm), new(BracketLeg.Standing, 22 * Mm, 0, 7 * Mm)] } }).Verdict);
        Assert.Equal(Verdict.NeedsInput, Of(load with { Case = Case with { Alloy = "5052-O" } }).Verdict);
        Assert.Contains(MakeRules.Find(load, "AN3", Say).Single(f => f.Rule == MakeRules.Fasteners).Sources, s => s.Evidence == Evidence.Memory);
    }

    [Fact]
    public void Tension_OfALeg_HoldsTheMoment()
    {
        var pulls = FastenerGroup.Tension([18 * Mm, 18 * Mm, 34 * Mm], 100 * 22 * Mm);
        Assert.Equal(100 * 22 * Mm, (pulls[0] * 18 * Mm) + (pulls[1] * 18 * Mm) + (pulls[2] * 34 * Mm), 1e-12);
    }

    [Fact]
    public void Stiffness_HasItsBandRoundIt()
    {
        var (nominal, least, most) = BracketBending.Stiffness(Case);
        Assert.True(least < nominal && nominal < most);
        // 3 E I / (b^2 (3 a + b)), by hand with 71 GPa: 3 x 71e9 x 1.024e-11 / (0.022^2 x 0.076).
        Assert.Equal(3 * 71e9 * 1.024e-11 / (0.022 * 0.022 * 0.076), nominal, 1e-9 * nominal);
    }

    [Theory]
    [InlineData("AN3", 100, Verdict.Clear)]
    [InlineData("AN3", 15000, Verdict.Caution)]
    [InlineData("AN3", 30000, Verdict.Fail)]
    [InlineData("AD4", 100, Verdict.Caution)]
    [InlineData("AD4", 8000, Verdict.Fail)]
    [InlineData("", 100, Verdict.NeedsInput)]
    [InlineData("M5", 100, Verdict.NeedsInput)]
    public void Fasteners_UnderALoad_GetTheirVerdict(string fastener, double force, Verdict expected) =>
        Assert.Equal(expected, MakeRules.Find(new BracketLoad(Case, force), fastener, Say).Single(f => f.Rule == MakeRules.Fasteners).Verdict);

    [Theory]
    [InlineData(10, Verdict.Clear)]
    [InlineData(200, Verdict.Caution)]
    public void Give_UnderALoad_GetsItsVerdict(double force, Verdict expected) =>
        Assert.Equal(expected, MakeRules.Find(new BracketLoad(Case, force), "AN3", Say).Single(f => f.Rule == MakeRules.BracketGive).Verdict);

    [Theory]
    [InlineData("6061-T6", "2024-T3 clad", Verdict.Clear)]
    [InlineData("stainless steel 304", "6061-T6", Verdict.Caution)]
    [InlineData("6061-T6", "carbon fibre", Verdict.Caution)]
    [InlineData("PETG", "2024-T3", Verdict.Clear)]
    [InlineData("cadmium plated", "2024-T3", Verdict.NeedsInput)]
    [InlineData("", "2024-T3", Verdict.NeedsInput)]
    public void Galvanic_ByMaterials_GetsItsVerdict(string wedge, string sheet, Verdict expected) => Assert.Equal(expected, MakeRules.OfGalvanic(wedge, sheet).Verdict);

    [Fact]
    public void Galvanic_MaterialLeftOut_IsSaidInWords() =>
        Assert.StartsWith("The file says nothing for the wedge and \"2024-T3\" for the sheet", MakeRules.OfGalvanic("", "2024-T3").Why, StringComparison.Ordinal);

    [Fact]
    public void Material_LongestNameInTheText_IsFound()
    {
        Assert.Equal("stainless-steel", ShopMaterial.Find("304 stainless steel, passivated")!.Name);
        Assert.Equal("carbon-steel", ShopMaterial.Find("carbon steel")!.Name);
        Assert.Equal(5, ShopMaterial.Find("carbon/epoxy")!.Group);
    }

    private static GroupedFastener Bolt(double x, double y) => new(new(x * Mm, y * Mm), 1);

    private static List<GroupedFastener> Rectangle(double x, double y) => [Bolt(x, y), Bolt(x, -y), Bolt(-x, y), Bolt(-x, -y)];
}
