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

    [Fact]
    public void OtherPlaces_AreDrawnAndNamedInTheKey()
    {
        var route = Route();
        var lie = route.Lie!;
        var middle = lie.Shape.PointAt(0.5 * lie.Shape.Length);
        var around = middle + (0.02 * lie.Shape.Nodes[lie.Shape.Nodes.Count / 2].Curvature.Unit());
        var resting = LieSolver.Solve(lie.Case with { Obstacles = [new("keel", p => (p - around).Size - 0.05)], ConduitRadius = 0.003 }).Lie!;
        var down = LieSolver.Follow(lie.Case with { End = lie.Case.End - new Vector3(0, 0, 0.03) }, lie).Lie!;
        route = route with
        {
            Resting = resting,
            Order = LengthToOrder.Find(lie, new(0.02, 0.05, 0.01, 0.05, 0.0254), 0.0254),
            AtMoves = [new("engine down", down, 0.03, 0, null), new("engine up", null, double.NaN, -0.02, null)],
            Twisted = new(0, 1.5, 0.77, TrappedTwist.Find(lie, 1.5, 0.77)),
        };
        var picture = RouteDrawing.Page(route, "COWL FLAP", new Display(), 0.1);
        var svg = SvgWriter.Write(picture, Palettes.Screen).Replace('\u00a0', ' ');
        foreach (var words in (string[])["against keel", "nothing stood", "engine down", "No lie: engine up", "1 in more", "1 in less"])
            Assert.Contains(words, svg, StringComparison.Ordinal);
        foreach (var layer in (string[])["free", "longer", "shorter", "moved"])
            Assert.Equal(3, picture.Shapes.OfType<Outline>().Count(o => o.Layer == layer));
        Assert.Contains("It rests against keel", RouteDrawing.Describe(route, new Display()), StringComparison.Ordinal);
        Assert.All(picture.Shapes.OfType<Outline>().SelectMany(o => o.Points), p =>
        {
            Assert.InRange(p.X, -1e-9, picture.Width + 1e-9);
            Assert.InRange(p.Y, -1e-9, picture.Height + 1e-9);
        });
    }

    [Theory]
    [InlineData("")]
    [InlineData("<script>&\u0001")]
    public void Label_OfAnyKind_IsDrawn(string label) => Assert.NotEmpty(SvgWriter.Write(RouteDrawing.Page(Route(), label, new Display { Length = LengthUnit.Millimetre }, 0.1), Palettes.Screen));
}
