using Throwright.Engine.Chain;
using Throwright.Formats.Drawing;
using Throwright.Papers.Curves;
using Throwright.Papers.Marks;
using Throwright.Shapes;

namespace Throwright.Papers.Tests;

public sealed class CurveLawTests
{
    private const double Px = 25.4 / 96;

    [Fact]
    public void Sheet_Curves_StandUnderTheLadderPlaceByPlace()
    {
        var layout = LadderCases.WorstCaseOverrun;
        var curve = CurveCases.For(layout);
        var drawn = LadderSheet.Page(layout, curve, new() { ForceLimit = 60 });
        var lines = drawn.Picture.Shapes.OfType<Outline>().Where(o => o.Layer == "curves").ToArray();
        Assert.Equal(4, lines.Length);
        double At(double place) => drawn.Zero + (place * drawn.Scale);

        // Angle pulling: waits at the push stop until the shift is taken up, ends at the pull stop. Pushing: the other way round.
        var body = layout.Body!;
        Assert.Equal(At(body.PushStop.Nominal), lines[0].Points[0].X, 9);
        Assert.Equal(At(curve.Points[0].KnobPulling), lines[0].Points[1].X, 9);
        Assert.Equal(lines[0].Points[0].Y, lines[0].Points[1].Y, 9);
        Assert.Equal(At(body.PullStop.Nominal), lines[0].Points[^1].X, 9);
        Assert.Equal(At(body.PushStop.Nominal), lines[1].Points[0].X, 9);
        Assert.Equal(At(body.PullStop.Nominal), lines[1].Points[^1].X, 9);

        // The curve's ends lie under the throw of the same lane.
        var pull = drawn.Picture.Shapes.OfType<Outline>().Single(o => o.Layer == "pull" && o.Style.Fill == Tones.Throw).Bounds;
        Assert.Equal(pull.Left, lines[0].Points[1].X, 9);
        Assert.Equal(pull.Right, lines[0].Points[^1].X, 9);
    }

    [Fact]
    public void Curves_EveryPoint_IsWithinATenthOfAPixelOfTheLineDrawn()
    {
        var layout = LadderCases.Clear;
        var curve = CurveCases.For(layout, count: 181);
        var drawn = CurveDrawing.Page(layout, curve, new() { ForceLimit = 60 });
        var line = drawn.Picture.Shapes.OfType<Outline>().Where(o => o.Layer == "curves").ElementAt(2).Points;
        Assert.InRange(line.Count, 4, 60);

        // 0 and the limit fix the upright scale: both are drawn.
        var limit = drawn.Picture.Shapes.OfType<Segments>().Single(s => s.Layer == "limit").Parts[0].A.Y;
        var zero = drawn.Picture.Shapes.OfType<Segments>().Where(s => s.Layer == "grid").Max(s => s.Parts[0].A.Y);
        foreach (var point in curve.Points)
        {
            var (x, y) = (drawn.Zero + (point.KnobPulling * drawn.Scale), zero + ((limit - zero) * point.Pull.Nominal / 60));
            Assert.True(Enumerable.Range(1, line.Count - 1).Any(i => Off(line[i - 1], line[i], x, y) <= (0.1 * Px) + 1e-9), $"({x}, {y})");
        }

        static double Off(Point a, Point b, double x, double y)
        {
            if (x < a.X - 1e-9 || x > b.X + 1e-9)
                return double.PositiveInfinity;
            double dx = b.X - a.X, dy = b.Y - a.Y;
            return Math.Abs((dx * (y - a.Y)) - (dy * (x - a.X))) / Math.Sqrt((dx * dx) + (dy * dy));
        }
    }

    [Fact]
    public void Curves_ForceUnknownInTheMiddle_AreNotDrawnAcrossTheGap()
    {
        var layout = LadderCases.Clear;
        var whole = CurveCases.For(layout);
        var gapped = new TravelCurve(whole.Points.Select((p, i) => i is > 40 and < 50 ? p with { Pull = ForceBand.Unknown } : p).ToEquatableList());
        Outline[] Lines(TravelCurve curve) => [.. CurveDrawing.Page(layout, curve).Picture.Shapes.OfType<Outline>().Where(o => o.Layer == "curves")];
        Assert.Equal(Lines(whole).Length + 1, Lines(gapped).Length);
        var drawn = CurveDrawing.Page(layout, gapped);
        var (from, to) = (drawn.Zero + (whole.Points[40].KnobPulling * drawn.Scale), drawn.Zero + (whole.Points[50].KnobPulling * drawn.Scale));
        Assert.Equal(from, Lines(gapped)[2].Points[^1].X, 9);
        Assert.Equal(to, Lines(gapped)[3].Points[0].X, 9);
    }

    [Fact]
    public void Curves_PlacesTheKnobNeverReaches_AreHatchedAndNoOthers()
    {
        var layout = LadderCases.Clear;
        var drawn = CurveDrawing.Page(layout, CurveCases.For(layout));
        var (low, high) = (drawn.Zero + (layout.Body!.PushStop.Nominal * drawn.Scale), drawn.Zero + (layout.Body.PullStop.Nominal * drawn.Scale));
        var hatched = drawn.Picture.Shapes.OfType<Segments>().Where(s => s.Layer == "unreached").SelectMany(s => s.Parts).ToArray();
        Assert.NotEmpty(hatched);
        Assert.All(hatched, l => Assert.True(Math.Max(l.A.X, l.B.X) <= low + 1e-9 || Math.Min(l.A.X, l.B.X) >= high - 1e-9));
    }

    // Highest pull of the case: 48.48 N = 10.899 lbf, in the worst case 1.33 times that, 14.495 lbf.
    [Fact]
    public void Describe_Forces_AreRoundedUp() =>
        Assert.Contains("Pulling takes at most 10.9\u00A0lbf, 14.5\u00A0lbf in the worst case.", CurveDrawing.Describe(LadderCases.Clear, CurveCases.For(LadderCases.Clear), new()), StringComparison.Ordinal);
}
