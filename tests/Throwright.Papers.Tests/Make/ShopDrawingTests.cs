using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Engine.Model;
using Throwright.Formats.Drawing;
using Throwright.Formats.Dxf;
using Throwright.Papers.Make;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Tests.Make;

public class ShopDrawingTests
{
    private const double Mm = 1e-3, Degree = Math.PI / 180;

    private static readonly FigureWriter Say = new(new Display { Length = LengthUnit.Millimetre });

    private static readonly ShopTitle Title = new("Demo amphibian", "Hole for CABIN HEAT", "cabin-heat-H");

    private static readonly WedgePair Pair = WedgePairSolver.Solve(
        new(new(12.5 * Degree, 60 * Degree), 9.5 * Mm, 1.6 * Mm, 16 * Mm) { Outside = 32 * Mm, ThinEdge = 1.5 * Mm });

    /// <summary>With a pin and chamfers: the most views and notes.</summary>
    private static readonly WedgePair Keyed = WedgePairSolver.Solve(Pair.Case with { Key = WedgeKey.Pin, Chamfer = 0.5 * Mm, Outside = 40 * Mm });

    private static readonly Bracket Bracket = BracketSolver.Solve(new(
        "6061-T6", 1.6 * Mm, 90 * Degree, 4.8 * Mm, 46.4 * Mm, 36.4 * Mm, 30 * Mm,
        [new(BracketLeg.Base, 18 * Mm, 0, 3.2 * Mm), new(BracketLeg.Base, 34 * Mm, 0, 3.2 * Mm), new(BracketLeg.Standing, 22 * Mm, 0, 7 * Mm)]));

    public static TheoryData<string> Names => ["drill-template", "flat-pattern"];

    private static Picture Drawing(string name, ShopPaper? paper = null) =>
        name == "drill-template" ? DrillTemplateDrawing.Of(Pair, Say, Title with { Part = "Hole for CABIN HEAT" }, paper) : FlatPatternDrawing.Of(Bracket, Say, Title with { Part = "Bracket for CABIN HEAT" }, paper);

    [Theory]
    [MemberData(nameof(Names))]
    public void Drawing_Worked_IsAsApproved(string name)
    {
        Approved.Check($"{name}.svg", SvgWriter.Write(Drawing(name), Palettes.Paper));
        Approved.Check($"{name}.dxf", DxfWriter.Write(Drawing(name), DxfEdition.R2000).ReplaceLineEndings("\n"));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Drawing_EveryShape_LiesOnThePaper(string name)
    {
        foreach (var paper in (ShopPaper[])[ShopPaper.A4, ShopPaper.Letter])
        {
            var picture = Drawing(name, paper);
            Assert.Equal((paper.Width, paper.Height), (picture.Width, picture.Height));
            Assert.All(picture.Shapes, s => Assert.True(picture.Paper.Contains(s.Bounds), s.ToString()));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Drawing_Letterings_KeepOffEachOtherAndOffLines(string name) => Uncrossed(Drawing(name));

    [Fact]
    public void Template_TiltedAnyWay_KeepsItsLetteringsApart()
    {
        for (var azimuth = 0; azimuth < 360; azimuth += 15)
        {
            foreach (var outside in (double[])[20, 32, 45])
            {
                var picture = DrillTemplateDrawing.Of(
                    WedgePairSolver.Solve(Pair.Case with { Tilt = new(12.5 * Degree, azimuth * Degree), Outside = outside * Mm }), Say, Title);
                Uncrossed(picture);
                Assert.All(picture.Shapes, s => Assert.True(picture.Paper.Contains(s.Bounds), s.ToString()));
            }
        }
    }

    /// <summary>Each drawing that goes to a shop carries it, in reverse, and nothing runs into it.</summary>
    [Fact]
    public void Drawing_OfARunThatFails_SaysDoNotCutYet()
    {
        var held = Title with { Hold = ShopTitle.NotYet };
        foreach (var paper in (ShopPaper[])[ShopPaper.A4, ShopPaper.Letter])
        {
            Picture[] all =
            [
                WedgeDrawing.Part(Pair, Say, held, paper), WedgeDrawing.Part(Keyed, Say, held, paper), WedgeDrawing.Pair(Pair, Say, held, paper), DrillTemplateDrawing.Of(Pair, Say, held, paper),
                BracketDrawing.Of(Bracket, Say, held, paper), FlatPatternDrawing.Of(Bracket, Say, held, paper), MarkingDrawing.Page(new("CABIN HEAT", "PULL", 0.7, true), Say, held, paper),
            ];
            foreach (var picture in all)
            {
                var words = Assert.Single(picture.Letterings, l => l.PlainText == ShopTitle.NotYet);
                Assert.Equal(Tones.OnPlate, words.Spans[0].Tone);
                var plate = Assert.Single(picture.Shapes.OfType<Outline>(), o => o.Style.Fill == Tones.Plate && o.Bounds.Contains(words.Bounds)).Bounds;
                Assert.DoesNotContain(picture.Letterings, l => l != words && l.Bounds.Overlaps(plate));
                Assert.Contains(picture.Letterings, l => l.PlainText.Contains("Demo amphibian", StringComparison.Ordinal));
            }
        }

        Assert.DoesNotContain(WedgeDrawing.Part(Pair, Say, Title).Letterings, l => l.PlainText == ShopTitle.NotYet);
    }

    [Theory]
    [InlineData(30, 250)]
    [InlineData(300, 46.4)]
    [InlineData(600, 46.4)]
    public void FlatPattern_LargerThanThePaper_SaysSo_AndCutsNoWords(double width, double first)
    {
        var wide = BracketSolver.Solve(Bracket.Case with { Width = width * Mm, First = first * Mm });
        var picture = FlatPatternDrawing.Of(wide, Say, Title);
        Assert.All(picture.Letterings, l => Assert.True(picture.Paper.Contains(l.Bounds), l.PlainText));
        Uncrossed(picture);
        Assert.Equal(first > 180 || width > 200, picture.Letterings.Any(l => l.PlainText.StartsWith("This sheet is", StringComparison.Ordinal)));
        var bars = picture.Shapes.OfType<Segments>().Where(s => s.Layer == "scale").SelectMany(s => s.Parts);
        var strip = picture.Shapes.Where(s => s.Layer == "outline").Select(s => s.Bounds).ToList();
        var (left, bottom) = (strip.Min(b => b.Left), strip.Max(b => b.Bottom));
        Assert.All(bars, b => Assert.True(Math.Max(b.A.X, b.B.X) < left || Math.Min(b.A.Y, b.B.Y) > bottom));
        var bent = BracketDrawing.Of(wide, Say, Title);
        Assert.All(bent.Shapes, s => Assert.True(bent.Paper.Contains(s.Bounds), s.ToString()));
        Assert.All(picture.Shapes, s => Assert.True(picture.Paper.Contains(s.Bounds), s.ToString()));
    }

    private static void Uncrossed(Picture picture)
    {
        var words = picture.Letterings.ToList();
        var lines = picture.Shapes.OfType<Segments>().SelectMany(s => s.Parts)
            .Concat(picture.Shapes.OfType<Outline>().Where(o => o.Style.Stroke is not null).SelectMany(o => o.Points.Zip(o.Points.Skip(1), (a, b) => new Segment(a, b)))).ToList();
        for (var i = 0; i < words.Count; i++)
        {
            var box = words[i].Bounds;
            for (var k = 0; k < i; k++)
                Assert.False(box.Overlaps(words[k].Bounds), $"{words[i].PlainText} on {words[k].PlainText}");
            foreach (var circle in picture.Shapes.OfType<Circle>())
                Assert.False(box.Overlaps(circle.Bounds), words[i].PlainText);
            foreach (var line in lines)
            {
                for (var k = 0; k <= 100; k++)
                {
                    double x = line.A.X + ((line.B.X - line.A.X) * k / 100), y = line.A.Y + ((line.B.Y - line.A.Y) * k / 100);
                    Assert.False(x > box.Left && x < box.Right && y > box.Top && y < box.Bottom, $"{words[i].PlainText} on a line");
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Bars_OnThePaper_Are100MillimetresLong(string name)
    {
        var bars = Drawing(name).Shapes.OfType<Segments>().Where(s => s.Layer == "scale").SelectMany(s => s.Parts).Where(p => Length(p) > 10).ToList();
        Assert.Equal(2, bars.Count);
        Assert.All(bars, b => Assert.Equal(100, Length(b), 1e-9));
    }

    [Fact]
    public void FlatPattern_CutLayers_HoldClosedOutlinesOnly()
    {
        var dxf = DxfWriter.Write(Drawing("flat-pattern"), DxfEdition.R2000).Split("\r\n");
        var entities = dxf[Array.IndexOf(dxf, "ENTITIES")..];
        Assert.Single(Layer("OUTLINE"), "LWPOLYLINE");
        Assert.Equal(["CIRCLE", "CIRCLE", "CIRCLE"], Layer("HOLES"));

        // Handle, owner and marks stand between an entity's name and its layer.
        List<string> Layer(string name) =>
            [.. Enumerable.Range(0, entities.Length).Where(i => entities[i] == name).Select(i => entities[i - 8])];
    }

    private static double Length(Segment s) => Math.Sqrt(((s.A.X - s.B.X) * (s.A.X - s.B.X)) + ((s.A.Y - s.B.Y) * (s.A.Y - s.B.Y)));
}
