using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Formats.Drawing;
using Throwright.Papers.Clearance;
using Throwright.Papers.Marks;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Tests;

/// <summary>A round knob in a panel and a ball that slides past it; invented.</summary>
public sealed class WorstPlaceTests
{
    private static readonly Display Millimetres = new() { Length = LengthUnit.Millimetre };

    private static Toleranced<Length> Mm(double mm) => Toleranced<Length>.Exact(Length.FromMillimetres(mm));

    private static PointAt At(double x, double y, double z) => new(Mm(x), Mm(y), Mm(z));

    private static RunClearance Scene(double ball)
    {
        var panel = new Sheet { Id = "panel", At = At(1000, 0, 700), Normal = new(1, 0, 0) };
        var run = new Run
        {
            Id = "a",
            CockpitEnd = new()
            {
                Stroke = Mm(40),
                Sheet = panel,
                Hole = At(1000, 0, 700),
                KnobSize = new() { Diameter = Mm(30), Length = Mm(20) },
                Shank = new() { Diameter = Mm(8), Out = Mm(20) },
            },
        };
        var body = new Body
        {
            Id = "ball",
            Joints = [new SlideJoint("over", new(0, 1, 0), new(0), new(0.1))],
            Parts = [new("ball", new SphereShape(At(ball, -50, 720), Mm(20)))],
        };
        var floor = new Body { Id = "floor", Parts = [new("floor", new PlaneShape(At(0, 0, 500), new(0, 0, 1)))] };
        var aircraft = new Aircraft { Name = "A", Sheets = [panel], Runs = [run], Bodies = [body, floor] };
        return CockpitCheck.Solve(aircraft)!.Of(run);
    }

    private static Picture Draw(RunClearance scene) => WorstPlaceDrawing.Page(scene, scene.Pairs.MinBy(p => p.Lower)!, "a", Millimetres);

    [Fact]
    public void Page_ApartAndTouching_AreAsApproved()
    {
        Approved.Check("clearance-apart.svg", SvgWriter.Write(Draw(Scene(1130)), Palettes.Screen));
        Approved.Check("clearance-touch.svg", SvgWriter.Write(Draw(Scene(1070)), Palettes.Screen));
    }

    [Fact]
    public void Page_SaysWhatIsProved_NeverWhatWasFoundAlone()
    {
        var apart = Draw(Scene(1130));
        var text = string.Join("\n", apart.Shapes.OfType<Lettering>().Select(l => string.Concat(l.Spans.Select(s => s.Text))));
        // Ball 50 mm before the knob's face and 5 mm above its rim: sqrt(50^2 + 5^2) - 20 = 30.25 mm.
        Assert.Contains("at least 30.2 mm, proved", text);
        Assert.Contains("ball over", text);
        Assert.Contains("at least 30.2 mm", apart.Description);
        Assert.Contains("touch", Draw(Scene(1070)).Description);
    }

    /// <summary>Every shape inside its window, and a floor that has no end in none.</summary>
    [Fact]
    public void Page_StaysWithinItsViews()
    {
        var picture = Draw(Scene(1130));
        Assert.All(picture.Shapes.OfType<Outline>(), o => Assert.All(o.Points, p => Assert.True(p.X >= -1e-9 && p.X <= picture.Width + 1e-9 && p.Y >= -1e-9 && p.Y <= picture.Height + 1e-9)));
    }
}
