using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Engine.Route;
using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;
using Throwright.Papers.Route;
using Throwright.Shapes.Frames;

namespace Throwright.Papers.Tests;

public class RouteDrawingTests
{
    private static RunRoute Route(double ordered = 0, params LieSupport[] supports)
    {
        var of = new LieCase { Start = new(1, 0, 0.9), StartAlong = new(-1, 0, 0), End = new(0.3, 0.2, 0.4), EndAlong = new(0, 0, -1), Supports = [.. supports], Length = 1.05, LeastRadius = 0.1 };
        var answer = LieSolver.Solve(of);
        var lie = answer.Lie!;
        return new()
        {
            Case = of,
            Answer = answer,
            Origin = LengthOrigin.Typed,
            From = "",
            InFittings = 0.02,
            Bends = LieBend.Of(lie.Shape),
            Ordered = ordered == 0 ? null : LengthToOrder.With(lie, ordered),
        };
    }

    [Fact]
    public void Picture_HasThreeViewsAtOneScale_AndNothingOutside()
    {
        var picture = RouteDrawing.Page(Route(0.025, new LieSupport(new(0.65, 0.05, 0.85), SupportKind.Grommet)), "COWL FLAP", new Display(), 0.1);
        var svg = SvgWriter.Write(picture, Palettes.Screen);
        foreach (var words in (string[])["from above", "from the left", "from behind", "cockpit end", "anchor", "as ordered", "Bend along the conduit"])
            Assert.Contains(words, svg, StringComparison.Ordinal);
        Assert.All(picture.Shapes.OfType<Outline>().SelectMany(o => o.Points), p =>
        {
            Assert.InRange(p.X, -1e-9, picture.Width + 1e-9);
            Assert.InRange(p.Y, -1e-9, picture.Height + 1e-9);
        });
    }

    [Fact]
    public void Views_SameScale_ShowTheLieTrue()
    {
        var route = Route();
        var picture = RouteDrawing.Page(route, "", new Display(), null);
        // The lie is the first outline of the layer in each view: above, left, behind.
        var views = picture.Shapes.OfType<Outline>().Where(o => o.Layer == "conduit").Select(o => (Width: o.Points.Max(p => p.X) - o.Points.Min(p => p.X), Height: o.Points.Max(p => p.Y) - o.Points.Min(p => p.Y))).ToList();
        Assert.Equal(3, views.Count);
        var nodes = route.Lie!.Shape.Nodes;
        double Size(Func<Vector3, double> of) => nodes.Max(n => of(n.Point)) - nodes.Min(n => of(n.Point));
        var scale = views[0].Width / Size(p => p.X);
        Assert.Equal(scale * Size(p => p.Y), views[0].Height, 0.01 * views[0].Width);
        Assert.Equal(scale * Size(p => p.X), views[1].Width, 0.01 * views[0].Width);
        Assert.Equal(scale * Size(p => p.Z), views[1].Height, 0.01 * views[0].Width);
        Assert.Equal(scale * Size(p => p.Y), views[2].Width, 0.01 * views[0].Width);
    }

    [Theory]
    [InlineData("")]
    [InlineData("<script>&\u0001")]
    public void Label_OfAnyKind_IsDrawn(string label) => Assert.NotEmpty(SvgWriter.Write(RouteDrawing.Page(Route(), label, new Display { Length = LengthUnit.Millimetre }, 0.1), Palettes.Screen));
}
