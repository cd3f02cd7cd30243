using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;
using Throwright.Shapes.Solids;

namespace Throwright.Papers.Make;

/// <summary>The bent bracket with its dimensions: from its side, its standing leg, its base leg.</summary>
public static class BracketDrawing
{
    /// <summary>Most that one view takes each way, and the two upper ones side by side, mm.</summary>
    private const double Room = 60, BothRoom = 84;

    public static Picture Of(Bracket bracket, FigureWriter say, ShopTitle title, ShopPaper? paper = null)
    {
        var (page, of) = ((paper ?? ShopPaper.A4).Turned(), bracket.Case);
        var draw = new Draughting(new Sketch());
        double longest = 1000 * Math.Max(Math.Max(of.First, of.Second), of.Width), both = 1000 * (of.First + of.Width);
        var scale = new[] { 2, 1, 0.5, 0.25, 0.2, 0.1, 0.05, 0.02 }.FirstOrDefault(s => longest * s <= Room && both * s <= BothRoom, 0.01);
        ShopFrame.Draw(draw, page, title, say, scale >= 1 ? $"{scale:0} : 1" : $"1 : {1 / scale:0}", 1, 1);
        var inside = ShopFrame.Inside(page);
        var side = new ShopView(new(inside.Left + 14 + (1000 * scale * of.First), inside.Top + 22 + (1000 * scale * of.Second)), scale);
        Side(draw, side, bracket, say);
        Standing(draw, new(new(side.Origin.X + 30 + (500 * scale * of.Width), side.Origin.Y), scale), bracket, say);
        Base(draw, new(new(side.Origin.X, side.Origin.Y + 36 + (500 * scale * of.Width)), scale), bracket, say);
        var column = ShopFrame.Block(page).Left;
        ShopFrame.Notes(draw, column, inside.Top + 8, inside.Right - column - 3, "Notes", NotesOf(bracket, say), size: 2.8);
        return draw.Sketch.ToPicture(page.Width, page.Height, title.Part, "The bent bracket from its side, its standing leg and its base leg, with dimensions and notes.", Tones.Paper);
    }

    /// <summary>The outside corner of the bend at the origin, base leg to the left, standing leg up by the bend's angle.</summary>
    private static void Side(Draughting draw, ShopView view, Bracket bracket, FigureWriter say)
    {
        var of = bracket.Case;
        double t = of.Thickness, s = bracket.Setback;
        Vector2 along = Vector2.Polar(1, of.Bend), inward = new(-along.Y, along.X), centre = new(-s, of.Radius + t);
        IEnumerable<Vector2> Arc(double radius) => Enumerable.Range(0, 25).Select(i => centre + Vector2.Polar(radius, (-Math.PI / 2) + (of.Bend * i / 24)));
        List<Vector2> outline = [new(-of.First, 0), .. Arc(of.Radius + t), of.Second * along, (of.Second * along) + (t * inward), .. Arc(of.Radius).Reverse(), new(-of.First, t)];
        draw.Cut([.. outline.Select(view.At)], 45, 1.5);
        var conduit = of.Holes.First(h => h.OnSecond);
        Cross(conduit.FromMouldLine * along, inward);
        foreach (var at in of.Holes.Where(h => !h.OnSecond).Select(h => h.FromMouldLine).Distinct())
            Cross(new(-at, 0), new(0, 1));
        draw.Across(view.At(-of.First, 0), view.At(0, 0), view.At(0, 0).Y + Draughting.First, say.Dimension(of.First));
        if (Math.Abs(of.Bend - (Math.PI / 2)) < 1e-9)
            draw.Upright(view.At(0, 0), view.At(0, of.Second), view.At(0, 0).X + Draughting.First, say.Dimension(of.Second));
        var bend = view.At(centre + Vector2.Polar(of.Radius, (-Math.PI / 2) + (0.5 * of.Bend)));
        draw.Leader(bend, new(bend.X - 8, bend.Y - 9), $"R {say.Dimension(of.Radius)}");
        draw.Words(view.At(-0.5 * of.First, 0).X, view.At(0, 0).Y + Draughting.First + 8, "From the side", TextAnchor.Middle, bold: true);

        void Cross(Vector2 on, Vector2 through)
        {
            const double out_ = 2.5e-3;
            draw.Line(ShopSheet.Centre, view.At(on - (out_ / view.Scale * through)), view.At(on + ((t + (out_ / view.Scale)) * through)), ShopSheet.ThinCentre);
        }
    }

    /// <summary>The standing leg square to it, from outside the bend; the mould line below.</summary>
    private static void Standing(Draughting draw, ShopView view, Bracket bracket, FigureWriter say)
    {
        var of = bracket.Case;
        double half = 0.5 * of.Width, q = of.Corner, high = of.Second;
        Outline(draw, view, [new(-half, 0), new(half, 0)], [(new(half - q, high - q), 0), (new(q - half, high - q), Math.PI / 2)], q);
        draw.Line(ShopSheet.Bend, view.At(-half, bracket.Setback), view.At(half, bracket.Setback), ShopSheet.Phantom);
        var conduit = of.Holes.First(h => h.OnSecond);
        Hole(draw, view, new(conduit.Across, conduit.FromMouldLine), conduit.Diameter);
        draw.Across(view.At(-half, high - q), view.At(half, high - q), view.At(0, high).Y - Draughting.First, say.Dimension(of.Width));
        draw.Upright(view.At(half, 0), new(view.At(conduit.Across + (0.5 * conduit.Diameter), 0).X + 3, view.At(0, conduit.FromMouldLine).Y), view.At(half, 0).X + Draughting.First, say.Dimension(conduit.FromMouldLine));
        draw.Words(view.Origin.X, view.At(0, 0).Y + Draughting.First + 8, "Standing leg", TextAnchor.Middle, bold: true);
    }

    /// <summary>The base leg from above, the mould line at the right.</summary>
    private static void Base(Draughting draw, ShopView view, Bracket bracket, FigureWriter say)
    {
        var of = bracket.Case;
        double half = 0.5 * of.Width, q = of.Corner, first = of.First;
        Outline(draw, view, [new(0, -half), new(0, half)], [(new(q - first, half - q), Math.PI / 2), (new(q - first, q - half), Math.PI)], q);
        draw.Line(ShopSheet.Bend, view.At(-bracket.Setback, -half), view.At(-bracket.Setback, half), ShopSheet.Phantom);
        var number = 0;
        foreach (var hole in of.Holes.Where(h => !h.OnSecond))
        {
            Hole(draw, view, new(-hole.FromMouldLine, hole.Across), hole.Diameter);
            // On the side away from the bend.
            var at = view.At(-hole.FromMouldLine - (0.5 * hole.Diameter), hole.Across);
            draw.Words(at.X - 2.2, at.Y + 1, $"{++number}", TextAnchor.End);
        }

        draw.Words(view.At(-0.5 * first, 0).X, view.At(0, -half).Y + 6, "Base leg, from above", TextAnchor.Middle, bold: true);
    }

    /// <summary>Two square corners, then two rounded ones, joined in order.</summary>
    private static void Outline(Draughting draw, ShopView view, Vector2[] square, (Vector2 Centre, double From)[] round, double radius)
    {
        List<Vector2> points = [.. square];
        foreach (var (centre, from) in round)
            points.AddRange(Enumerable.Range(0, 13).Select(i => centre + Vector2.Polar(radius, from + (Math.PI / 24 * i))));
        draw.Polygon(ShopSheet.Outline, points.Select(view.At), ShopSheet.Thick);
    }

    private static void Hole(Draughting draw, ShopView view, Vector2 at, double diameter)
    {
        draw.Ellipse(ShopSheet.Holes, view, at, 0.5 * diameter, 0.5 * diameter, ShopSheet.Thick);
        var (x, y) = view.At(at);
        var reach = view.Mm(0.5 * diameter) + 1.5;
        draw.Line(ShopSheet.Centre, new(x - reach, y), new(x + reach, y), ShopSheet.ThinCentre);
        draw.Line(ShopSheet.Centre, new(x, y - reach), new(x, y + reach), ShopSheet.ThinCentre);
    }

    private static List<string> NotesOf(Bracket bracket, FigureWriter say)
    {
        var of = bracket.Case;
        string Side(double across) => Math.Abs(across) < 1e-6 ? "on the middle line" : $"{say.Dimension(Math.Abs(across))} {(across > 0 ? "above" : "below")} the middle line";
        var conduit = of.Holes.First(h => h.OnSecond);
        var notes = new List<string>
        {
            $"Sheet {of.Alloy}, {say.Dimension(of.Thickness)}. Bent through {say.Angle(of.Bend)} to {say.Dimension(of.Radius)} inside, across the grain where it can be.",
            $"Legs are outside sizes to the corner: base {say.Dimension(of.First)}, standing {say.Dimension(of.Second)}. Corners {say.Dimension(of.Corner)}. Flat pattern {say.Dimension(bracket.Flat.Length)} by {say.Dimension(of.Width)}.",
        };
        var number = 0;
        foreach (var hole in of.Holes.Where(h => !h.OnSecond))
            notes.Add($"Hole {++number}: {say.Dimension(hole.FromMouldLine)} from the corner, {Side(hole.Across)}, Ø{say.Dimension(hole.Diameter)}.");
        notes.Add($"Conduit: {say.Dimension(conduit.FromMouldLine)} from the corner, {Side(conduit.Across).Replace("above", "right of", StringComparison.Ordinal).Replace("below", "left of", StringComparison.Ordinal)}, Ø{say.Dimension(conduit.Diameter)}.");
        notes.Add($"Smooth and break all edges {say.Dimension(0.2e-3)} to {say.Dimension(0.4e-3)} before bending. Look at the bend for cracks with a lens.");
        notes.Add("Bend a scrap strip of the same sheet first. Drill what must fit its mate after bending.");
        return notes;
    }
}
