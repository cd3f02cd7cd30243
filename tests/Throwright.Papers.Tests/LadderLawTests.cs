using System.Xml.Linq;
using CsCheck;
using Throwright.Formats.Drawing;
using Throwright.Papers.Curves;
using Throwright.Papers.Ladder;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Tests;

public sealed class LadderLawTests
{
    public static TheoryData<string> Names => [.. LadderCases.All.Select(c => c.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void EveryDrawing_EachCase_IsSound(string name)
    {
        var layout = Layout(name);
        foreach (var width in (double[])[600, 720, 960, 1400])
            DrawingChecks.Sound(LadderDrawing.Page(layout, new() { Width = width, Key = true }).Picture);
        DrawingChecks.Sound(LadderDrawing.Upright(layout).Picture);
        DrawingChecks.Sound(LadderDrawing.TrueSize(layout).Picture, Palettes.Paper);
        DrawingChecks.Sound(LadderSheet.Page(layout, layout.Body is null ? null : CurveCases.For(layout), new() { ForceLimit = 60 }).Picture);
    }

    [Fact]
    public void Page_AnyLadder_IsSound() =>
        Gen.Select(LadderGenerator.Layouts, Gen.Double[500, 1500], Gen.Bool).Sample(
            (layout, width, key) => DrawingChecks.Sound(LadderDrawing.Page(layout, new() { Width = width, Key = key }).Picture), iter: 300);

    [Fact]
    public void Upright_AnyLadder_IsSound() =>
        LadderGenerator.Layouts.Sample(layout => DrawingChecks.Sound(LadderDrawing.Upright(layout).Picture), iter: 300);

    [Fact]
    public void TrueSize_AnyLadder_IsSound() =>
        LadderGenerator.Layouts.Sample(layout => DrawingChecks.Sound(LadderDrawing.TrueSize(layout).Picture, Palettes.Paper), iter: 150);

    [Fact]
    public void Sheet_AnyLadder_IsSound() =>
        LadderGenerator.Layouts.Sample(
            layout => DrawingChecks.Sound(LadderSheet.Page(layout, CurveCases.For(layout, count: 21), new() { ForceLimit = 60 }).Picture), iter: 150);

    [Fact]
    public void Characters_AnyLadder_KeepToTheirWidthAndObeyNoControlCharacter() =>
        Gen.Select(LadderGenerator.Layouts, Gen.Int[40, 140], Gen.Bool).Sample(
            (layout, width, plain) =>
            {
                CharacterOptions options = new() { Width = width, Plain = plain };
                var block = LadderSheet.Characters(layout, CurveCases.For(layout, count: 21), new() { ForceLimit = 60 }, options);
                foreach (var line in block.Lines)
                {
                    Assert.True(Formats.Characters.CharacterCanvas.CellsOf(line.Text) <= width, line.Text);
                    Assert.DoesNotContain(line.Text, char.IsControl);
                }
            },
            iter: 300);

    [Fact]
    public void Characters_BarsThatDoNotRunOver_StopShortOfTheStops() =>
        Gen.Select(LadderGenerator.Layouts, Gen.Int[60, 140]).Sample(
            (layout, width) =>
            {
                var lines = LadderDrawing.Characters(layout with { Labels = LadderCases.Flap }, new() { Width = width }).Lines.Select(l => l.Text).ToArray();
                int zero = lines[1].IndexOf('▐') + 1, stop = lines[1].IndexOf('┤');
                foreach (var lane in lines[3..5])
                {
                    // One column for each character: the flap's labels hold nothing wider.
                    int first = lane.IndexOf('█'), last = lane.LastIndexOf('█');
                    Assert.True(layout.Body!.KnobIn.IsOver || first >= zero, lane);
                    if (!layout.Body.KnobOut.IsOver)
                    {
                        Assert.True(last < stop, lane);
                        Assert.Equal('▌', lane[stop]);
                    }
                }
            },
            iter: 500);

    [Fact]
    public void PlainCharacters_AsciiLabels_AreAscii()
    {
        foreach (var (_, layout) in LadderCases.All)
        {
            var text = LadderSheet.Characters(layout, layout.Body is null ? null : CurveCases.For(layout), new() { ForceLimit = 60 }, new() { Plain = true }).Text;
            Assert.DoesNotContain(text, c => !char.IsAscii(c));
        }
    }

    [Fact]
    public void Layout_AnyLadder_SegmentsCloseWithoutGaps() =>
        LadderGenerator.Layouts.Sample(
            layout =>
            {
                var body = layout.Body!;
                foreach (var lane in (LadderLane[])[body.Pull, body.Push])
                {
                    for (var i = 1; i < lane.Segments.Count; i++)
                        Assert.Equal(lane.Segments[i - 1].To, lane.Segments[i].From);
                    var inside = lane.Segments.Sum(s => s.Size);
                    var knobIn = Math.Min(0, body.KnobIn.Nominal) + Math.Min(0, body.KnobOut.Nominal);
                    Assert.Equal(layout.Stroke!.Value, inside + knobIn, 1e-12);
                }

                // The two throws are of one size and lie off by what the hand feels as lost motion.
                double Start(LadderLane lane) => lane.Find(LanePart.Throw)!.Value.From;
                Assert.Equal(body.LostMotion + body.Stretch, Start(body.Pull) - Start(body.Push), 1e-12);
                Assert.Equal(body.Throw, body.Tip.Find(LanePart.Throw)!.Value.Size, 1e-12);
                Assert.Equal(body.PullStop.Nominal, body.Tip.Find(LanePart.Throw)!.Value.To, 1e-12);
            },
            iter: 300);

    [Fact]
    public void Layout_PartsThatDoNotClose_IsRefused()
    {
        var ladder = LadderCases.Inches(3, 0.4, 0.06, 0.01, 0.01, 2.1, 0.3, 0.1);
        var problem = Assert.Throws<ArgumentException>(() => LadderDrawing.Layout(ladder with { LostMotion = ladder.LostMotion + 1e-6 }, LadderCases.Flap, new()));
        Assert.Contains("does not close", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("clear")]
    [InlineData("worst-case-overrun")]
    [InlineData("tiny-stroke")]
    [InlineData("long-stroke")]
    [InlineData("zero-lost-motion")]
    public void Page_EachBoundary_LiesAtItsPlaceTimesTheScale(string name)
    {
        var layout = Layout(name);
        var drawn = LadderDrawing.Page(layout);
        CheckPlaces(layout, drawn, DrawingChecks.Parse(SvgWriter.Write(drawn.Picture, Palettes.Screen)), "x", "width");
    }

    [Theory]
    [InlineData("clear")]
    [InlineData("worst-case-overrun")]
    public void Upright_EachBoundary_LiesAtItsPlaceTimesTheScale(string name)
    {
        var layout = Layout(name);
        var drawn = LadderDrawing.Upright(layout);
        CheckPlaces(layout, drawn, DrawingChecks.Parse(SvgWriter.Write(drawn.Picture, Palettes.Screen)), "y", "height");
    }

    /// <summary>Lanes and throws in the file itself: from the panel to the OUT stop, from stop to stop of the device.</summary>
    private static void CheckPlaces(LadderLayout layout, ScaledPicture drawn, XDocument svg, string at, string size)
    {
        var body = layout.Body!;
        foreach (var (name, lane) in ((string, LadderLane)[])[("pull", body.Pull), ("push", body.Push)])
        {
            var rects = svg.Descendants(DrawingChecks.Svg + "g").Where(g => g.Attribute("class")!.Value == $"tw-{name}").Elements(DrawingChecks.Svg + "rect").ToArray();
            var frame = rects.Single(r => r.Attribute("class")!.Value == "tw-s-ink");
            Assert.Equal(drawn.Zero, DrawingChecks.Number(frame, at), 0.0011);
            Assert.Equal(layout.Stroke!.Value * drawn.Scale, DrawingChecks.Number(frame, size), 0.0011);

            // Segments under 2 px are widened at the throw's cost, so its ends may be off by that much; its other end is true.
            var bar = rects.Single(r => r.Attribute("class")!.Value == "tw-f-throw");
            var wanted = lane.Find(LanePart.Throw)!.Value;
            double from = DrawingChecks.Number(bar, at), to = from + DrawingChecks.Number(bar, size);
            var widened = lane.Segments.Where(s => s.Part != LanePart.Throw).Sum(s => Math.Max(0, (2 * 25.4 / 96) - (s.Size * drawn.Scale)));
            Assert.InRange(from, drawn.Zero + (wanted.From * drawn.Scale) - 0.0011, drawn.Zero + (wanted.From * drawn.Scale) + widened + 0.0011);
            Assert.InRange(to, drawn.Zero + (wanted.To * drawn.Scale) - widened - 0.0011, drawn.Zero + (wanted.To * drawn.Scale) + 0.0011);
        }
    }

    [Fact]
    public void TrueSize_AnyLadder_IsOneToOne() =>
        LadderGenerator.Layouts.Sample(
            layout =>
            {
                var drawn = LadderDrawing.TrueSize(layout);
                Assert.Equal(1000, drawn.Scale, 9);
                var lane = drawn.Picture.Shapes.OfType<Outline>().First(o => o.Layer == "pull" && o.Style.Stroke == Tones.Ink).Bounds;
                Assert.Equal(layout.Stroke!.Value * 1000, lane.Width, 6);
                Assert.Equal(drawn.Zero, lane.Left, 6);
            },
            iter: 200);

    [Fact]
    public void TrueSize_ScaleBars_AreAsLongAsTheySay()
    {
        var bars = LadderDrawing.TrueSize(LadderCases.Clear).Picture.Shapes.OfType<Outline>().Where(o => o.Layer == "check" && o.Style.Fill is null).Select(o => o.Bounds.Width).ToArray();
        Assert.Equal([101.6, 100.0], bars.Select(b => Math.Round(b, 6)));
    }

    [Fact]
    public void TrueSize_Gauge_NeverAllowsLessThanTheWantedCushion() =>
        LadderGenerator.Layouts.Sample(
            layout =>
            {
                var drawn = LadderDrawing.TrueSize(layout);
                foreach (var line in drawn.Picture.Shapes.OfType<Segments>().Where(s => s.Layer == "gauge").SelectMany(s => s.Parts).Where(p => p.A.Y == p.B.Y))
                {
                    Assert.True(line.A.X >= drawn.Zero + (layout.Body!.Wanted * 1000) - 1e-6);
                    Assert.True(line.B.X <= drawn.Zero + ((layout.Stroke!.Value - layout.Body.Wanted) * 1000) + (25.4 / 96) + 1e-6);
                }
            },
            iter: 200);

    [Fact]
    public void Overrun_HoweverSmall_IsAtLeastEightWide()
    {
        var ladder = LadderCases.Inches(3, 0.5, 0.05, 0, 0, 2.34, 0.4, half: 0.1101);
        Assert.True(ladder.KnobOut.Least is < 0 and > -0.0001);
        var picture = LadderDrawing.Page(LadderDrawing.Layout(ladder, LadderCases.Flap, new())).Picture;
        var block = Assert.Single(picture.Shapes.OfType<Outline>(), o => o.Style.Fill == Tones.Amber);
        Assert.Equal(8 * 25.4 / 96, block.Bounds.Width, 9);
        Assert.Equal(Tones.Ink, block.Style.Stroke);
        Assert.Contains(picture.Letterings, t => t.PlainText == "fail: 0.001\u00A0in too far");
    }

    [Fact]
    public void AssuredPart_OfACushion_EndsAtItsLeast()
    {
        var layout = LadderCases.WorstCaseOverrun;
        var drawn = LadderDrawing.Page(layout);
        var washes = drawn.Picture.Shapes.OfType<Outline>().Where(o => o.Layer is "pull" or "push" && o.Style.Fill == Tones.ClearWash).ToArray();
        Assert.Equal(2, washes.Length);
        foreach (var wash in washes)
        {
            Assert.Equal(drawn.Zero, wash.Bounds.Left, 9);
            Assert.Equal(drawn.Zero + (0.570 * 0.0254 * drawn.Scale), wash.Bounds.Right, 9);
        }
    }

    [Fact]
    public void Figures_OfCushions_AreRoundedTowardDanger()
    {
        var ladder = LadderCases.Inches(3, 0.6809, 0.065, 0.01, 0.01, 2.11, 1.0, half: 0.1);
        var texts = LadderDrawing.Page(LadderDrawing.Layout(ladder, LadderCases.Flap, new())).Picture.Letterings.Select(t => t.PlainText).ToArray();
        Assert.Contains("0.680\u00A0in", texts);
        Assert.Contains("0.580\u00A0in", texts);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void SameLadder_DrawnTwice_GivesTheSameBytes(string name)
    {
        Assert.Equal(Bytes(), Bytes());

        string Bytes()
        {
            var layout = Layout(name);
            return SvgWriter.Write(LadderDrawing.Page(layout).Picture, Palettes.Screen) + SvgWriter.Write(LadderDrawing.Upright(layout).Picture, Palettes.Screen)
                + SvgWriter.Write(LadderDrawing.TrueSize(layout).Picture, Palettes.Paper) + LadderDrawing.Characters(layout).Text;
        }
    }

    [Fact]
    public void NotCounted_EveryPart_IsNamedInEveryForm()
    {
        var layout = LadderCases.ZeroLostMotion;
        Picture[] pictures = [LadderDrawing.Page(layout).Picture, LadderDrawing.Upright(layout).Picture, LadderDrawing.TrueSize(layout).Picture];
        Assert.Equal(2, layout.NotCounted.Count);
        foreach (var part in layout.NotCounted)
        {
            foreach (var picture in pictures)
                Assert.Contains(part.Replace(" ", "", StringComparison.Ordinal), string.Concat(picture.Letterings.Select(t => t.PlainText)).Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
            Assert.Contains(part, LadderDrawing.Characters(layout).Text, StringComparison.Ordinal);
            Assert.Contains(part, LadderDrawing.Describe(layout), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void WorstCase_NotBounded_IsSaidAndDrawnOpen()
    {
        var ladder = LadderCases.Inches(3, 0.5, 0.05, 0.01, 0.01, 2.0, 0.4, half: 0.1);
        ladder = ladder with { KnobOut = ladder.KnobOut with { Least = double.NegativeInfinity } };
        var layout = LadderDrawing.Layout(ladder, LadderCases.Flap, new());
        var picture = LadderDrawing.Page(layout).Picture;
        DrawingChecks.Sound(picture);
        Assert.Contains(picture.Letterings, t => t.PlainText.Contains("not bounded", StringComparison.Ordinal));
        Assert.Contains("not bounded", LadderDrawing.Characters(layout).Text, StringComparison.Ordinal);
        Assert.Null(layout.Body!.Table.Single(r => r.Part == "cushion, knob out").Least);
        DrawingChecks.Sound(LadderDrawing.Upright(layout).Picture);
    }

    private static LadderLayout Layout(string name) => LadderCases.All.Single(c => c.Name == name).Layout;
}
