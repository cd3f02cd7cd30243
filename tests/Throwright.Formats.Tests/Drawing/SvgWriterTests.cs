using System.Xml;
using System.Xml.Linq;
using CsCheck;
using Throwright.Formats.Drawing;

namespace Throwright.Formats.Tests.Drawing;

public sealed class SvgWriterTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly Tone Ink = new("ink");
    private static readonly Tone Paper = new("paper");
    private static readonly Tone Unused = new("unused");
    private static readonly Palette Day = new([(Ink, Colour.FromHex("#102030")), (Paper, Colour.FromHex("#ffffff")), (Unused, Colour.FromHex("#abcdef"))]);
    private static readonly Palette Night = new([(Ink, Colour.FromHex("#eeeeee")), (Paper, Colour.FromHex("#111111"))]);
    private static readonly SvgColours Colours = new() { Usual = Day };

    [Theory]
    [InlineData(-0.0, "0")]
    [InlineData(-0.0004, "0")]
    [InlineData(0.0005, "0.001")]
    [InlineData(-12.3456, "-12.346")]
    [InlineData(1e6, "1000000")]
    [InlineData(2.5, "2.5")]
    public void Number_AnyValue_HasAtMostThreeDecimals(double value, string text) => Assert.Equal(text, SvgWriter.Number(value));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Number_NotFinite_IsRefused(double value) => Assert.Throws<ArgumentException>(() => SvgWriter.Number(value));

    [Fact]
    public void Write_APicture_IsTrueSizeInMillimetresWithTitleAndDescription()
    {
        var root = Parse(new Sketch(25.4).ToPicture(4, 2, "A & B", "what it <shows>")).Root!;
        Assert.Equal("101.6mm", root.Attribute("width")!.Value);
        Assert.Equal("50.8mm", root.Attribute("height")!.Value);
        Assert.Equal("0 0 101.6 50.8", root.Attribute("viewBox")!.Value);
        Assert.Equal("A & B", root.Element(Svg + "title")!.Value);
        Assert.Equal("what it <shows>", root.Element(Svg + "desc")!.Value);
    }

    [Fact]
    public void Write_EachShape_HasItsElementInItsLayer()
    {
        var sketch = new Sketch { Layer = "first" };
        sketch.Line(1, 2, 3, 4, Style.Line(Ink, 0.5, 2, 1));
        sketch.Rectangle(new(1, 2, 4, 8), Style.Outlined(Paper, Ink, 0.25));
        sketch.Polygon([new(0, 0), new(5, 0), new(3, 4)], Style.Area(Ink));
        sketch.Layer = "second";
        sketch.Circle(5, 6, 2, Style.Area(Ink));
        sketch.Arc(10, 10, 5, 0, Math.PI / 2, Style.Line(Ink, 0.3));
        sketch.Dots(new(0, 0, 3, 3), 1, 0.2, Ink);
        sketch.Text(1, 9, 3, [new("a ", Ink), new("b", Ink, true)], halo: Paper, fractions: true);
        var groups = Parse(sketch.ToPicture(20, 20, "t", "d")).Root!.Elements(Svg + "g").ToArray();

        Assert.Equal(["first", "second"], groups.Select(g => g.Attribute("class")!.Value));
        var first = groups[0].Elements().ToArray();
        Assert.Equal("M1 2L3 4", first[0].Attribute("d")!.Value);
        Assert.Equal("2 1", first[0].Attribute("stroke-dasharray")!.Value);
        Assert.Equal(("rect", "3", "6", "f-paper s-ink"), (first[1].Name.LocalName, first[1].Attribute("width")!.Value, first[1].Attribute("height")!.Value, first[1].Attribute("class")!.Value));
        Assert.Equal("M0 0H5L3 4Z", first[2].Attribute("d")!.Value);
        var second = groups[1].Elements().ToArray();
        Assert.Equal("2", second[0].Attribute("r")!.Value);
        Assert.Equal("M15 10A5 5 0 0 0 10 5", second[1].Attribute("d")!.Value);
        Assert.Equal("round", second[2].Attribute("stroke-linecap")!.Value);
        Assert.Equal("a b", second[3].Value);
        Assert.Equal("stroke", second[3].Attribute("paint-order")!.Value);
    }

    [Fact]
    public void Write_AnArcOverHalfATurn_IsCutSoThatItsMiddleIsKnown()
    {
        var sketch = new Sketch();
        sketch.Arc(0, 0, 10, 0, 1.9 * Math.PI, Style.Line(Ink, 1));
        var path = Parse(sketch.ToPicture(20, 20, "t", "d")).Descendants(Svg + "path").Single().Attribute("d")!.Value;
        Assert.Equal(3, path.Count(c => c == 'A'));
        Assert.DoesNotContain("0 1 ", path, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_Colours_AreThoseOfTheTonesUsed()
    {
        var sketch = new Sketch();
        sketch.Line(0, 0, 1, 1, Style.Line(Ink, 1));
        var picture = sketch.ToPicture(9, 9, "t", "d", Paper);
        var svg = SvgWriter.Write(picture, new() { Usual = Day, Dark = Night, Prefix = "x-" });
        Assert.Contains(".x-f-paper{fill:#ffffff}.x-s-ink{stroke:#102030}", svg, StringComparison.Ordinal);
        Assert.Contains("@media (prefers-color-scheme:dark){\n.x-f-paper{fill:#111111}.x-s-ink{stroke:#eeeeee}", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("abcdef", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("<style", SvgWriter.Write(picture, new()), StringComparison.Ordinal);
    }

    [Fact]
    public void Write_AToneThatThePaletteLacks_IsRefusedByName()
    {
        var sketch = new Sketch();
        sketch.Line(0, 0, 1, 1, Style.Line(new("mauve"), 1));
        var problem = Assert.Throws<ArgumentException>(() => SvgWriter.Write(sketch.ToPicture(9, 9, "t", "d"), Colours));
        Assert.Contains("mauve", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_AnyText_StaysTextAndTheFileWellFormed() =>
        Gen.Char[(char)0, '\uFFFF'].Array[0, 40].Select(c => new string(c)).Sample(
            text =>
            {
                var sketch = new Sketch();
                sketch.Text(1, 5, 3, "x" + text, Ink);
                var picture = sketch.ToPicture(50, 10, text, text);
                var document = Parse(picture);
                Assert.Equal(["desc", "g", "style", "svg", "text", "title"], document.Descendants().Select(e => e.Name.LocalName).Order());
                Assert.Equal(PlainText.Clean("x" + text), document.Descendants(Svg + "text").Single().Value);
                Assert.Equal(SvgWriter.Write(picture, Colours), SvgWriter.Write(picture, Colours));
            },
            iter: 500);

    [Theory]
    [InlineData("</text><script>alert(1)</script>", "&lt;/text&gt;&lt;script&gt;alert(1)&lt;/script&gt;")]
    [InlineData("\" onload='x'", "&quot; onload=&#39;x&#39;")]
    [InlineData("&lt;", "&amp;lt;")]
    [InlineData("]]>", "]]&gt;")]
    public void Escape_HostileText_CannotBreakOut(string text, string safe) => Assert.Equal(safe, SvgWriter.Escape(text));

    private static XDocument Parse(Picture picture)
    {
        using var reader = XmlReader.Create(new StringReader(SvgWriter.Write(picture, Colours)), new() { DtdProcessing = DtdProcessing.Prohibit });
        return XDocument.Load(reader, LoadOptions.PreserveWhitespace);
    }
}
