using CsCheck;
using Throwright.Formats.Drawing;

namespace Throwright.Formats.Tests.Drawing;

public sealed class ShapeTests
{
    private static readonly Tone Ink = new("ink");

    [Fact]
    public void ArcBounds_AnyArc_HoldAllItsPointsTightly() =>
        Gen.Select(Gen.Double[-7, 7], Gen.Double[-6.2, 6.2], Gen.Double[0.1, 20]).Sample(
            (from, sweep, radius) =>
            {
                var arc = new Arc("a", Style.Line(Ink, 1), new(3, 4), radius, from, sweep);
                var sampled = Box.Around(Enumerable.Range(0, 721).Select(i => arc.At(from + (sweep * i / 720))));
                Assert.True(arc.Bounds.Contains(sampled, 1e-9));
                Assert.True(sampled.Grown(radius * 1e-4).Contains(arc.Bounds));
            },
            iter: 300);

    [Fact]
    public void IsCutBy_AnyLine_AgreesWithPointsAlongIt() =>
        Gen.Select(Gen.Double[-10, 10], Gen.Double[-10, 10], Gen.Double[-10, 10], Gen.Double[-10, 10]).Sample(
            (ax, ay, bx, by) =>
            {
                var box = new Box(-3, -2, 4, 5);
                var line = new Segment(new(ax, ay), new(bx, by));
                var inside = Enumerable.Range(0, 2001).Select(i => i / 2000.0).Any(t => Holds(ax + (t * (bx - ax)), ay + (t * (by - ay))));

                // Sampling can miss a corner that is cut by less than a step; it never sees what is not there.
                Assert.True(!inside || box.IsCutBy(line));
                Assert.True(inside || !box.Grown(-0.02).IsCutBy(line));

                static bool Holds(double x, double y) => x > -3 && x < 4 && y > -2 && y < 5;
            },
            iter: 500);

    [Fact]
    public void LetteringBounds_EachAnchor_StandAtTheirPlace()
    {
        Lettering At(TextAnchor anchor) => new("a", new(10, 20), anchor, 3, [new("0.115 in", Ink)], null, false);
        var width = At(TextAnchor.Start).Width;
        Assert.Equal(10, At(TextAnchor.Start).Bounds.Left, 12);
        Assert.Equal(10, At(TextAnchor.End).Bounds.Right, 12);
        Assert.Equal(10 - (width / 2), At(TextAnchor.Middle).Bounds.Left, 12);
        Assert.InRange(At(TextAnchor.Start).Bounds.Top, 17, 20);
    }

    [Fact]
    public void Sketch_InItsOwnUnit_GivesMillimetres()
    {
        var sketch = new Sketch(2);
        sketch.Line(1, 1, 2, 1, Style.Line(Ink, 3, 4, 5));
        var drawn = Assert.IsType<Segments>(Assert.Single(sketch.ToPicture(10, 5, "t", "d").Shapes));
        Assert.Equal(new Segment(new(2, 2), new(4, 2)), drawn.Parts[0]);
        Assert.Equal((6.0, 8.0, 10.0), (drawn.Style.Width, drawn.Style.Dash[0], drawn.Style.Dash[1]));
    }

    [Fact]
    public void Add_APictureInAnother_MovesEveryShape()
    {
        var inner = new Sketch();
        inner.Line(0, 0, 1, 1, Style.Line(Ink, 1));
        inner.Circle(1, 1, 1, Style.Area(Ink));
        inner.Arc(1, 1, 1, 0, 1, Style.Line(Ink, 1));
        inner.Dots(new(0, 0, 2, 2), 1, 0.1, Ink);
        inner.Rectangle(new(0, 0, 1, 2), Style.Area(Ink));
        inner.Text(1, 1, 1, "x", Ink);
        var picture = inner.ToPicture(2, 2, "t", "d");
        var outer = new Sketch();
        outer.Add(picture, 10, 20);
        var moved = outer.ToPicture(20, 30, "t", "d");
        for (var i = 0; i < picture.Shapes.Count; i++)
        {
            var (a, b) = (picture.Shapes[i].Bounds, moved.Shapes[i].Bounds);
            Assert.Equal(a.Left + 10, b.Left, 12);
            Assert.Equal(a.Bottom + 20, b.Bottom, 12);
        }
    }

    [Theory]
    [InlineData("#ff0000", 0, 1)]
    [InlineData("#00ff00", 120, 1)]
    [InlineData("#2a37a0", 233.4, 0.7375)]
    public void Hue_KnownColours_IsAsInTheColourCircle(string hex, double hue, double saturation)
    {
        Assert.Equal(hue, Colour.FromHex(hex).Hue, 0.1);
        Assert.Equal(saturation, Colour.FromHex(hex).Saturation, 0.001);
        Assert.Equal(hex, Colour.FromHex(hex).ToString());
    }

    [Theory]
    [InlineData("")]
    [InlineData("Ink")]
    [InlineData("2nd")]
    [InlineData("a b")]
    [InlineData("x\"y")]
    public void Tone_ANameThatIsNoClassName_IsRefused(string name) => Assert.ThrowsAny<ArgumentException>(() => new Tone(name));

    [Fact]
    public void ArcAt_KnownAngles_IsOnTheCircle()
    {
        var arc = new Arc("a", Style.Line(Ink, 1), new(0, 0), 10, 0, Math.PI);
        Assert.Equal(-10, arc.At(Math.PI / 2).Y, 12);
        Assert.Equal(5.403023058681398, arc.At(1).X, 12);
    }
}
