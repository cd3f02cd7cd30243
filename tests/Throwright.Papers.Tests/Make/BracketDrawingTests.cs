using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Engine.Model;
using Throwright.Formats.Drawing;
using Throwright.Papers.Make;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Tests.Make;

public class BracketDrawingTests
{
    private const double Mm = 1e-3, Degree = Math.PI / 180;

    private static readonly FigureWriter Metric = new(new Display { Length = LengthUnit.Millimetre }), Inches = new(new Display { Length = LengthUnit.Inch });

    private static readonly ShopTitle Title = new("Demo amphibian", "Bracket for CABIN HEAT", "cabin-heat-B") { Material = "6061-T6" };

    private static Bracket Of(double bend, double first, double second, double width) => BracketSolver.Solve(new(
        "6061-T6", 1.6 * Mm, bend * Degree, 4.8 * Mm, first * Mm, second * Mm, width * Mm,
        [new(BracketLeg.Base, 0.55 * first * Mm, 0.22 * width * Mm, 3.2 * Mm), new(BracketLeg.Base, 0.55 * first * Mm, -0.22 * width * Mm, 3.2 * Mm), new(BracketLeg.Standing, 0.6 * second * Mm, 0, 7 * Mm)]));

    [Fact]
    public void Drawing_Worked_IsAsApproved() => Approved.Check("bracket.svg", SvgWriter.Write(BracketDrawing.Of(Of(90, 46, 36, 30), Metric, Title), Palettes.Paper));

    private static Bracket TwoBends(bool isBack, double bend, double second, double first, double high, double top, double width, bool inTop) => BracketSolver.Solve(new BracketCase(
        "6061-T6", 1.6 * Mm, bend * Degree, 4.8 * Mm, first * Mm, high * Mm, width * Mm,
        [
            new(BracketLeg.Base, 0.55 * first * Mm, 0.22 * width * Mm, 3.2 * Mm), new(BracketLeg.Base, 0.55 * first * Mm, -0.22 * width * Mm, 3.2 * Mm),
            inTop ? new(BracketLeg.Top, 0.6 * top * Mm, 0, 7 * Mm) : new(BracketLeg.Standing, 0.5 * high * Mm, 0, 7 * Mm),
        ])
    { Then = new(second * Degree, 3.2 * Mm, isBack, top * Mm) });

    [Theory]
    [InlineData("bracket-z", true)]
    [InlineData("bracket-u", false)]
    public void Drawing_OfTwoBends_IsAsApproved(string name, bool isBack)
    {
        var bracket = TwoBends(isBack, 90, 90, 46, 36, 28, 30, inTop: isBack);
        Approved.Check($"{name}.svg", SvgWriter.Write(BracketDrawing.Of(bracket, Metric, Title), Palettes.Paper));
        Approved.Check($"{name}-flat.svg", SvgWriter.Write(FlatPatternDrawing.Of(bracket, Metric, Title), Palettes.Paper));
    }

    [Fact]
    public void Labels_OverTheRangeOfTwoBends_TouchNothing()
    {
        foreach (var say in (FigureWriter[])[Metric, Inches])
        {
            foreach (var (isBack, bend, second) in ((bool, double, double)[])[(true, 90, 90), (false, 90, 90), (true, 75, 110), (false, 70, 60), (true, 60, 60)])
            {
                foreach (var (first, high, top, width) in ((double, double, double, double)[])[(46, 36, 28, 30), (24, 28, 24, 22), (90, 60, 60, 45), (60, 30, 90, 40)])
                {
                    var bracket = TwoBends(isBack, bend, second, first, high, top, width, inTop: isBack);
                    foreach (var paper in (ShopPaper[])[ShopPaper.A4, ShopPaper.Letter])
                    {
                        LabelChecks.Apart(BracketDrawing.Of(bracket, say, Title, paper), $"{isBack} {bend} {second} {first} {high} {top} {width} {say.LengthUnitName} {paper}");
                        LabelChecks.Apart(FlatPatternDrawing.Of(bracket, say, Title, paper), $"flat {isBack} {bend} {second} {first} {high} {top} {width} {say.LengthUnitName} {paper}");
                    }
                }
            }
        }
    }

    [Fact]
    public void Labels_OverTheRangeOfBrackets_TouchNothing()
    {
        foreach (var paper in (ShopPaper[])[ShopPaper.A4, ShopPaper.Letter])
        {
            foreach (var say in (FigureWriter[])[Metric, Inches])
            {
                foreach (var bend in (double[])[90, 75, 110])
                {
                    foreach (var (first, second, width) in ((double, double, double)[])[(46, 36, 30), (24, 24, 22), (90, 60, 45), (150, 40, 60)])
                        LabelChecks.Apart(BracketDrawing.Of(Of(bend, first, second, width), say, Title, paper), $"{bend} {first} {second} {width} {say.LengthUnitName} {paper}");
                }
            }
        }
    }

    [Fact]
    public void Drawing_SaysEverySize()
    {
        var words = string.Join('\n', BracketDrawing.Of(Of(90, 46, 36, 30), Metric, Title).Letterings.Select(l => l.PlainText));
        foreach (var wanted in (string[])["46.00", "36.00", "30.00", "R 4.80", "21.60", "Ø3.20", "Ø7.00", "25.30"])
            Assert.Contains(wanted, words, StringComparison.Ordinal);
    }
}
