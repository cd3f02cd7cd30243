using CsCheck;
using Throwright.Formats.Drawing;
using Throwright.Papers.Lever;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Tests;

public sealed class LeverLawTests
{
    [Fact]
    public void Page_AnyLever_IsSound() =>
        Gen.Select(Gen.Double[0.01, 0.2], Gen.Double[-180, 180], Gen.Double[5, 200], Gen.Double[0, 2 * Math.PI], Gen.Double[1.05, 8], Gen.Double[0, 0.6], LadderGenerator.Labels).Sample(
            (radius, from, sweep, direction, distance, tip, labels) =>
            {
                var lever = LeverCases.Of(radius, from, from + sweep, new(radius * distance * Math.Cos(direction), radius * distance * Math.Sin(direction), 0.1 * radius));
                DrawingChecks.Sound(LeverDrawing.Page(lever, labels, new(), new() { TipLength = tip * radius * (distance - 1) }), linesMayCross: true);
            },
            iter: 300);

    [Fact]
    public void Page_Arm_IsDrawnAtOneScaleFromPivotToHole()
    {
        var lever = LeverCases.Of(0.0381, -45, 45, new(0.0381, -0.1067, 0));
        var picture = LeverDrawing.Page(lever, LadderCases.Flap, new());
        var path = picture.Shapes.OfType<Arc>().Single(a => a.Layer == "path");
        var holes = picture.Shapes.OfType<Circle>().Where(c => c.Layer == "arm").ToArray();

        // Arm up at mid sweep; the path of the hole is the circle about the pivot, 90 degrees of it.
        Assert.Equal(holes[0].Centre, path.Centre);
        Assert.Equal(holes[0].Centre.X, holes[1].Centre.X, 9);
        Assert.Equal(path.Radius, holes[0].Centre.Y - holes[1].Centre.Y, 9);
        Assert.Equal(Math.PI / 2, path.Sweep, 12);
        Assert.Equal(Math.PI / 4, path.From, 12);

        // The wire ends where the anchor is: 0.1067 m to the right of the hole, at the same scale.
        var wire = picture.Shapes.OfType<Outline>().Single(o => o.Layer == "wire");
        Assert.Equal(path.Radius * 0.1067 / 0.0381, wire.Points[1].X - wire.Points[0].X, 6);
        Assert.Equal(wire.Points[0].Y, wire.Points[1].Y, 6);
    }

    [Fact]
    public void Page_OfALongWire_LeavesALengthOut_AndKeepsEveryDirection()
    {
        // Eight times the arm: drawn whole, the arm would be a seventh of the picture.
        var lever = LeverCases.Of(0.0381, -45, 45, new(0.0381, -0.3048, 0));
        var picture = LeverDrawing.Page(lever, LadderCases.Flap, new());
        var path = picture.Shapes.OfType<Arc>().Single(a => a.Layer == "path");
        Assert.True(path.Radius > picture.Width / 7);
        var wire = picture.Shapes.OfType<Outline>().Where(o => o.Layer == "wire").ToArray();
        Assert.Equal(2, wire.Length);
        Assert.Equal(2, picture.Shapes.OfType<Outline>().Count(o => o.Layer == "break"));
        var phantoms = picture.Shapes.OfType<Outline>().Where(o => o.Layer == "other-places" && o.Points.Count == 2).ToArray();
        Assert.Equal(4, phantoms.Length);
        // Lower by 1 - cos 45 degrees of the arm and nearer, or farther, by its sine: the wire's true slope, on both sides of the gap.
        foreach (var side in (double[])[1, -1])
        {
            var slope = -(1 - Math.Sqrt(0.5)) / (8 - (side * Math.Sqrt(0.5)));
            Assert.Equal(2, phantoms.Count(p => Math.Abs(((p.Points[1].Y - p.Points[0].Y) / (p.Points[1].X - p.Points[0].X)) - slope) < 1e-9));
        }

        Assert.Contains(picture.Letterings, t => t.PlainText.Contains("longer than drawn", StringComparison.Ordinal));
    }

    [Fact]
    public void Page_BuildersFigures_AreBlueAndWorkedOutOnesAreNot()
    {
        var texts = LeverDrawing.Page(LeverCases.Of(0.0381, -45, 45, new(0.0381, -0.1067, 0)), LadderCases.Flap, new()).Letterings.ToArray();
        Assert.Equal(Tones.Blue, texts.Single(t => t.PlainText == "1\u00A01/2\u00A0in").Spans[0].Tone);
        Assert.Equal(Tones.Blue, texts.Single(t => t.PlainText == "turns 90.0°").Spans[0].Tone);
        Assert.DoesNotContain(texts.Single(t => t.PlainText.StartsWith("swing", StringComparison.Ordinal)).Spans, s => s.Tone == Tones.Blue);
    }
}
