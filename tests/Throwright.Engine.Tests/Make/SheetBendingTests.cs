using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Engine.Model;

namespace Throwright.Engine.Tests.Make;

public class SheetBendingTests
{
    private const double Inch = 0.0254, Degree = Math.PI / 180;

    private static readonly FigureWriter Say = new(new Display { Length = LengthUnit.Millimetre });

    /// <summary>AC 43.13-1B 4-56(b)(2) and (b)(3), fig. 4-3 (read): radius 0.25, sheet 0.064 in.</summary>
    [Theory, Trait("Check", "ST1")]
    [InlineData(45, 0.41421, 0.130)]
    public void Setback_Of45Degrees_IsThePublishedOne(double degrees, double k, double setback) => Setback(degrees, k, setback);

    [Theory, Trait("Check", "ST2")]
    [InlineData(135, 2.4142, 0.758)]
    public void Setback_Of135Degrees_IsThePublishedOne(double degrees, double k, double setback) => Setback(degrees, k, setback);

    private static void Setback(double degrees, double k, double setback)
    {
        // Printed to five figures and to a thousandth of an inch.
        Assert.Equal(k, SheetBending.Setback(degrees * Degree, 1, 0), 5e-5 * k);
        Assert.Equal(setback, SheetBending.Setback(degrees * Degree, 0.25 * Inch, 0.064 * Inch) / Inch, 0.0005);
    }

    /// <summary>FAA-H-8083-31A fig. 4-124 (read): 0.040 2024-T3, radius 0.16 in.</summary>
    [Fact, Trait("Check", "ST3")]
    public void Setback_OfTheHandbookChannel_IsFifthOfAnInch() =>
        Assert.Equal(0.200, SheetBending.Setback(90 * Degree, 0.16 * Inch, 0.040 * Inch) / Inch, 1e-12);

    /// <summary>FAA-H-8083-31A fig. 4-124 and following (read): mould lines 1.00, 2.00, 1.00 in.</summary>
    [Fact, Trait("Check", "ST4")]
    public void Flats_OfTheHandbookChannel_AreThePublishedOnes()
    {
        // Either leg of the channel with half its web is a bracket of ours.
        var bracket = BracketSolver.Solve(new("2024-T3", 0.040 * Inch, 90 * Degree, 0.16 * Inch, 1.00 * Inch, 2.00 * Inch, 1 * Inch, []));
        Assert.Equal(0.80, bracket.Part.Legs[0] / Inch, 1e-12);
        // The web has a bend at either end.
        Assert.Equal(1.60, (bracket.Part.Legs[1] - bracket.Setback) / Inch, 1e-12);
    }

    /// <summary>(0.01743 R + 0.0078 T) N evaluated: 0.2791 in. Ours has pi/180 in place of the rounded 0.01743.</summary>
    [Fact, Trait("Check", "ST5")]
    public void Allowance_OfTheHandbookChannel_IsTheFormulasWithin2In10000OfAnInch()
    {
        var bracket = BracketSolver.Solve(new("2024-T3", 0.040 * Inch, 90 * Degree, 0.16 * Inch, 1.00 * Inch, 2.00 * Inch, 1 * Inch, []));
        Assert.Equal(0.2791, bracket.Allowance / Inch, 0.0004);
        // The older coefficient 0.0173, as printed.
        Assert.Equal(0.2772, SheetBending.PrintedAllowance(90 * Degree, 0.16 * Inch, 0.040 * Inch) / Inch, 0.00005);
        Assert.Equal(0.447, bracket.Neutral.Value, 0.0005);
    }

    /// <summary>AC 43.13-1B Table 4-6 (read).</summary>
    [Theory, Trait("Check", "ST6")]
    [InlineData("2024-T3", 0.192, 0.320)]
    public void Radius_Of2024T3_IsThePublishedRange(string alloy, double low, double high) => Radius(alloy, low, high);

    [Theory, Trait("Check", "ST7")]
    [InlineData("6061-T6", 0.064, 0.128)]
    public void Radius_Of6061T6_IsThePublishedRange(string alloy, double low, double high) => Radius(alloy, low, high);

    private static void Radius(string alloy, double low, double high)
    {
        var found = SheetBending.LeastRadius(alloy, 0.064 * Inch).Found!;
        Assert.Equal(low, found.Low.Value / Inch, 1e-12);
        Assert.Equal(high, found.High.Value / Inch, 1e-12);
        Assert.Equal("ac-43-13-1b", found.High.Source.Id);
        Assert.Empty(found.High.Note);
    }

    [Fact]
    public void Radius_BetweenTwoThicknesses_TakesTheThickerOnesMultipleAndSaysSo()
    {
        var found = SheetBending.LeastRadius("6061-T6", 0.040 * Inch).Found!;
        Assert.Equal((0.040, 0.080), (found.Low.Value / Inch, found.High.Value / Inch));
        Assert.Contains("thicker", found.High.Note, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("6061-T6", 0.012, "runs from 0.016 in to 0.258 in; 0.012")]
    [InlineData("6061-T6", 0.3, "outside")]
    [InlineData("4130", 0.064, "has no 4130")]
    public void Radius_OutsideTheTable_IsRefused(string alloy, double thickness, string why)
    {
        var (found, refusal) = SheetBending.LeastRadius(alloy, thickness * Inch);
        Assert.Null(found);
        Assert.Contains(why, refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void MeasuredNeutral_OfEachMaterial_LiesBetweenAThirdAndAHalf()
    {
        foreach (var material in (string[])["aluminium", "cold-rolled-steel", "stainless"])
        {
            var k = SheetBending.MeasuredNeutral(material);
            Assert.InRange(k.Low, 0.33, k.Value);
            Assert.InRange(k.High, k.Value, 0.5);
        }

        Assert.Equal((0.391, 0.407), (SheetBending.MeasuredNeutral("aluminium").Low, SheetBending.MeasuredNeutral("aluminium").High));
        Assert.Throws<ArgumentException>(() => SheetBending.MeasuredNeutral("wood"));
    }

    [Theory]
    [InlineData(0.040, 0.06, 0.125)]
    [InlineData(0.040, 0.2, 0.2)]
    [InlineData(0.072, 0.06, 0.1875)]
    public void ReliefHole_IsTheRadiusOrTheLeast(double thickness, double radius, double hole) =>
        Assert.Equal(hole, SheetBending.ReliefHole(thickness * Inch, radius * Inch).Found!.Value / Inch, 1e-12);

    [Fact]
    public void ReliefHole_BeyondTheTable_IsRefused() => Assert.False(SheetBending.ReliefHole(0.2 * Inch, 0.06 * Inch).IsFound);

    /// <summary>Legs 40 and 30 from the tangent lines; K 0.447: 90 deg (4.8 + 0.447 x 1.6) = 8.663 mm.</summary>
    [Fact, Trait("Check", "MK7")]
    public void Strip_OfTheWorkedBracket_IsTheWorkedLength()
    {
        var bracket = Worked();
        Assert.Equal(6.4e-3, bracket.Setback, 1e-15);
        Assert.Equal(8.663, bracket.Allowance * 1000, 0.0005);
        Assert.Equal(78.663, bracket.Flat.Length * 1000, 0.0005);
        Assert.Equal([40e-3, 40e-3 + (bracket.Allowance / 2), 40e-3 + bracket.Allowance], bracket.Flat.Bends.Select(b => b.From.X), (a, b) => Math.Abs(a - b) < 1e-12);
    }

    /// <summary>Flat and bent part are one set of sizes: they differ by the bend's stretch alone.</summary>
    [Fact]
    public void Strip_TimesThickness_IsTheBentVolumeButForTheBend()
    {
        var bracket = Worked();
        double t = 1.6e-3, r = 4.8e-3, width = 30e-3;
        var area = bracket.Flat.Outline.Area - bracket.Flat.Holes.Sum(h => h.Area);
        var bend = width * t * ((Math.PI / 2 * (r + (t / 2))) - bracket.Allowance);
        Assert.Equal(bracket.Part.Volume, (area * t) + bend, 1e-18);
    }

    [Fact]
    public void Holes_OnTheFlat_KeepTheirDistanceFromTheirBendLine()
    {
        var bracket = Worked();
        double[] centres = [.. bracket.Flat.Holes.Select(h => h.Moment.X / h.Area)];
        Assert.Equal(40e-3 - (16e-3 - bracket.Setback), centres[0], 1e-12);
        Assert.Equal(40e-3 + bracket.Allowance + (20e-3 - bracket.Setback), centres[1], 1e-12);
    }

    [Theory]
    [InlineData("6061-T6", 4.8, 90, Verdict.Clear)]
    [InlineData("6061-T6", 4.8, 100, Verdict.Caution)]
    [InlineData("6061-T6", 2.0, 90, Verdict.Caution)]
    [InlineData("6061-T6", 1.0, 90, Verdict.Fail)]
    [InlineData("2024-T3", 4.8, 90, Verdict.Caution)]
    [InlineData("2024-T3", 4.7, 90, Verdict.Fail)]
    [InlineData("4130", 4.8, 90, Verdict.NeedsInput)]
    public void RadiusRule_AtEachEndOfTheTable_HasItsVerdict(string alloy, double radius, double bend, Verdict verdict)
    {
        var bracket = BracketSolver.Solve(Case with { Alloy = alloy, Radius = radius / 1000, Bend = bend * Degree });
        var finding = MakeRules.Find(bracket, Say).Single(f => f.Rule == MakeRules.BendRadius);
        Assert.Equal(verdict, finding.Verdict);
        Assert.NotEmpty(finding.Sources);
    }

    [Theory]
    [InlineData(20, 0, 4.2, Verdict.Clear)]
    [InlineData(38.1, 0, 4.2, Verdict.Fail)]   // 8.3 mm from the end
    [InlineData(20, 7, 4.2, Verdict.Fail)]     // 8 mm from the side
    [InlineData(14, 0, 4.2, Verdict.Fail)]     // 7.6 mm from the bend
    public void EdgeRule_OfOneHole_CountsEndSideAndBend(double fromMouldLine, double across, double diameter, Verdict verdict)
    {
        var bracket = BracketSolver.Solve(Case with { Holes = [new(BracketLeg.Base, fromMouldLine / 1000, across / 1000, diameter / 1000)] });
        Assert.Equal(verdict, MakeRules.Find(bracket, Say).Single(f => f.Rule == MakeRules.EdgeDistance).Verdict);
    }

    [Theory]
    [InlineData(12.6, Verdict.Clear)]
    [InlineData(12.5, Verdict.Fail)]
    public void PitchRule_OfTwoHoles_CountsDiameters(double apart, Verdict verdict)
    {
        var bracket = BracketSolver.Solve(Case with { Width = 60e-3, Holes = [new(BracketLeg.Base, 20e-3, 0, 4.2e-3), new(BracketLeg.Base, 20e-3, apart / 1000, 4.2e-3)] });
        Assert.Equal(verdict, MakeRules.Find(bracket, Say).Single(f => f.Rule == MakeRules.Pitch).Verdict);
    }

    private static readonly BracketCase Case =
        new("6061-T6", 1.6e-3, 90 * Degree, 4.8e-3, 46.4e-3, 36.4e-3, 30e-3, [new(BracketLeg.Base, 16e-3, 0, 3.2e-3), new(BracketLeg.Standing, 20e-3, 0, 3.2e-3)]);

    private static Bracket Worked() => BracketSolver.Solve(Case);
}
