using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;
using Throwright.Shapes.Solids;

namespace Throwright.Papers.Make;

/// <summary>The bent bracket with its dimensions: from its side, and each of its legs square to it.</summary>
public static class BracketDrawing
{
    /// <summary>Most that one view takes each way, and what is beside the two upper ones in their row, mm.</summary>
    private const double Room = 60, Beside = 72;

    public static Picture Of(Bracket bracket, FigureWriter say, ShopTitle title, ShopPaper? paper = null)
    {
        var (page, of) = ((paper ?? ShopPaper.A4).Turned(), bracket.Case);
        var draw = new Draughting(new Sketch());
        var (outline, centres) = SideOf(bracket);
        double left = outline.Min(p => p.X), right = outline.Max(p => p.X), low = outline.Min(p => p.Y), high = outline.Max(p => p.Y);
        double longest = 1000 * ((double[])[of.First, high - low, of.Width, of.Then?.Top ?? 0]).Max(), both = 1000 * (right - left + of.Width);
        var room = ShopFrame.Block(page).Left - ShopFrame.Inside(page).Left - Beside;
        var scale = new[] { 2, 1, 0.5, 0.25, 0.2, 0.1, 0.05, 0.02 }.FirstOrDefault(s => longest * s <= Room && both * s <= room, 0.01);
        ShopFrame.Draw(draw, page, title, say, scale >= 1 ? $"{scale:0} : 1" : $"1 : {1 / scale:0}", 1, 1);
        var inside = ShopFrame.Inside(page);
        var side = new ShopView(new(inside.Left + 14 - (1000 * scale * left), inside.Top + 22 + (1000 * scale * high)), scale);
        Side(draw, side, bracket, outline, centres, say);
        // The words under the side view and the dimension above them keep clear of what hangs below the base.
        var under = side.At(0, Math.Min(0, low)).Y;
        var standing = new ShopView(new(side.At(Math.Max(0, right), 0).X + 30 + (500 * scale * of.Width), Math.Max(side.Origin.Y, inside.Top + 22 + (1000 * scale * of.Second))), scale);
        Standing(draw, standing, bracket, say);
        var row = Math.Max(under, standing.Origin.Y) + 36 + (500 * scale * of.Width);
        Flat(draw, new(new(side.Origin.X, row), scale), bracket, BracketLeg.Base, say);
        if (of.Then is { } then)
            Flat(draw, new(new(side.Origin.X + 24 + (then.IsBack ? 0 : 1000 * scale * then.Top), row), scale), bracket, BracketLeg.Top, say);
        var column = ShopFrame.Block(page).Left;
        ShopFrame.Notes(draw, column, inside.Top + 8, inside.Right - column - 3, ShopFrame.NotesEnd(page, title), ("Notes", NotesOf(bracket, say)));
        return draw.Sketch.ToPicture(page.Width, page.Height, title.Part, $"The bent bracket from its side, {(of.Then is null ? "its standing leg and its base leg" : "its standing leg, its base leg and its top leg")}, with dimensions and notes.", Tones.Paper);
    }

    /// <summary>The side view's outline with the outside corner of the first bend at the origin, base leg to the left; and the middles of the bends.</summary>
    private static (List<Vector2> Outline, List<Vector2> Centres) SideOf(Bracket bracket)
    {
        var (part, t) = (bracket.Part, bracket.Case.Thickness);
        var legs = part.LegAxes();
        Vector2 Flat(Axes leg, double x, double z)
        {
            var at = leg.Point(x, 0, z);
            return new(at.X - bracket.Setback, at.Z);
        }

        List<Vector2> lower = [Flat(legs[0], -part.Legs[0], 0)], upper = [Flat(legs[0], -part.Legs[0], t)], centres = [];
        for (var i = 0; i < part.Bends.Count; i++)
        {
            var (bend, end) = (part.Bends[i], i == 0 ? 0 : part.Legs[i]);
            Vector2 centre = Flat(legs[i], end, bend.IsBack ? -bend.Radius : t + bend.Radius), from = Flat(legs[i], end, 0) - centre, fromUpper = Flat(legs[i], end, t) - centre;
            centres.Add(centre);
            for (var k = 0; k <= 24; k++)
            {
                var turned = bend.Angle * k / 24 * (bend.IsBack ? -1 : 1);
                lower.Add(centre + Turned(from, turned));
                upper.Add(centre + Turned(fromUpper, turned));
            }
        }

        lower.Add(Flat(legs[^1], part.Legs[^1], 0));
        upper.Add(Flat(legs[^1], part.Legs[^1], t));
        return ([.. lower, .. upper.AsEnumerable().Reverse()], centres);

        static Vector2 Turned(Vector2 v, double by) => new((v.X * Math.Cos(by)) - (v.Y * Math.Sin(by)), (v.X * Math.Sin(by)) + (v.Y * Math.Cos(by)));
    }

    private static void Side(Draughting draw, ShopView view, Bracket bracket, List<Vector2> outline, List<Vector2> centres, FigureWriter say)
    {
        var (of, part) = (bracket.Case, bracket.Part);
        draw.Cut([.. outline.Select(view.At)], 45, 1.5);
        var legs = part.LegAxes();
        foreach (var (leg, at) in part.Holes.Select(h => (h.Leg, h.FromBend)).Distinct())
        {
            // Through the sheet and a little beyond it on both sides.
            const double beyond = 2.5e-3;
            var axes = legs[leg];
            Point On(double z)
            {
                var p = axes.Point(leg == 0 ? -at : at, 0, z);
                return view.At(p.X - bracket.Setback, p.Z);
            }

            draw.Line(ShopSheet.Centre, On(-beyond / view.Scale), On(of.Thickness + (beyond / view.Scale)), ShopSheet.ThinCentre);
        }

        var lowest = outline.Min(p => p.Y);
        draw.Across(view.At(-of.First, 0), view.At(0, 0), view.At(0, lowest).Y + Draughting.First, say.Dimension(of.First));
        var isSquare = Math.Abs(of.Bend - (Math.PI / 2)) < 1e-9;
        if (of.Then is { } then)
        {
            if (isSquare && Math.Abs(then.Bend - (Math.PI / 2)) < 1e-9)
            {
                // Corner of the second bend: over the outer face of a Z, the same face of a channel.
                double corner = then.IsBack ? -of.Thickness : 0, end = then.IsBack ? corner + then.Top : -then.Top;
                draw.Upright(view.At(Math.Max(0, end), then.IsBack ? of.Second : 0), view.At(0, then.IsBack ? 0 : of.Second), view.At(Math.Max(0, end), 0).X + Draughting.First, say.Dimension(of.Second));
                draw.Across(view.At(corner, of.Second), view.At(end, of.Second), view.At(0, of.Second).Y - Draughting.First, say.Dimension(then.Top));
            }
        }
        else if (isSquare)
        {
            draw.Upright(view.At(0, 0), view.At(0, of.Second), view.At(0, 0).X + Draughting.First, say.Dimension(of.Second));
        }

        // From inside each bend, into the open. Between the legs of a low channel there is room for one, and beside a leg that comes down again for none: the notes have both.
        const double roomForBoth = 30;
        var alike = of.Then is { } second && Math.Abs(second.Radius - of.Radius) < 1e-9;
        for (var i = 0; i < centres.Count; i++)
        {
            if (i == 1 && (alike || part.Bends[1].Angle > 95 * Math.PI / 180 || (!part.Bends[1].IsBack && view.Mm(of.Second) < roomForBoth)))
                continue;
            var axes = legs[i];
            var half = 0.5 * part.Bends[i].Angle * (part.Bends[i].IsBack ? -1 : 1);
            var z = part.Bends[i].IsBack ? 1 : -1;
            Vector2 along = new(axes.X.X, axes.X.Z), normal = new(axes.Z.X, axes.Z.Z);
            var tip = view.At(centres[i] + (part.Bends[i].Radius * ((Math.Sin(Math.Abs(half)) * along) + (z * Math.Cos(half) * normal))));
            var (dx, dy) = (i, part.Bends[i].IsBack) switch { (0, _) => (-8, -9), (_, true) => (8, 9), _ => (-8, 9) };
            draw.Leader(tip, new(tip.X + dx, tip.Y + dy), $"{(alike ? "2× " : "")}R {say.Dimension(part.Bends[i].Radius)}");
        }

        draw.Words(view.At(-0.5 * of.First, 0).X, view.At(0, lowest).Y + Draughting.First + 8, "From the side", TextAnchor.Middle, bold: true);
    }

    /// <summary>The standing leg square to it, from outside the first bend; that bend's mould line below.</summary>
    private static void Standing(Draughting draw, ShopView view, Bracket bracket, FigureWriter say)
    {
        var of = bracket.Case;
        double half = 0.5 * of.Width, q = of.Corner, high = of.Second;
        if (of.Then is null)
        {
            Outline(draw, view, [new(-half, 0), new(half, 0)], [(new(half - q, high - q), 0), (new(q - half, high - q), Math.PI / 2)], q);
        }
        else
        {
            draw.Polygon(ShopSheet.Outline, ((Vector2[])[new(-half, 0), new(half, 0), new(half, high), new(-half, high)]).Select(view.At), ShopSheet.Thick);
            draw.Line(ShopSheet.Bend, view.At(-half, high - bracket.Bends[1].Setback), view.At(half, high - bracket.Bends[1].Setback), ShopSheet.Phantom);
            q = 0;
        }

        draw.Line(ShopSheet.Bend, view.At(-half, bracket.Setback), view.At(half, bracket.Setback), ShopSheet.Phantom);
        draw.Across(view.At(-half, high - q), view.At(half, high - q), view.At(0, high).Y - Draughting.First, say.Dimension(of.Width));
        if (of.Conduit is { Leg: BracketLeg.Standing } conduit)
        {
            Hole(draw, view, new(conduit.Across, conduit.FromMouldLine), conduit.Diameter);
            draw.Upright(view.At(half, 0), new(view.At(conduit.Across + (0.5 * conduit.Diameter), 0).X + 3, view.At(0, conduit.FromMouldLine).Y), view.At(half, 0).X + Draughting.First, say.Dimension(conduit.FromMouldLine));
        }

        draw.Words(view.Origin.X, view.At(0, 0).Y + Draughting.First + 8, "Standing leg", TextAnchor.Middle, bold: true);
    }

    /// <summary>Base or top leg from above. The mould line at the origin: at the right, but at the left for the top leg of a Z.</summary>
    private static void Flat(Draughting draw, ShopView view, Bracket bracket, BracketLeg leg, FigureWriter say)
    {
        var of = bracket.Case;
        var isTop = leg == BracketLeg.Top;
        double half = 0.5 * of.Width, q = of.Corner, length = of.LegLength(leg), setback = bracket.Bends[isTop ? 1 : 0].Setback;
        var way = isTop && of.Then!.IsBack ? 1 : -1;
        if (way < 0)
            Outline(draw, view, [new(0, -half), new(0, half)], [(new(q - length, half - q), Math.PI / 2), (new(q - length, q - half), Math.PI)], q);
        else
            Outline(draw, view, [new(0, half), new(0, -half)], [(new(length - q, q - half), -Math.PI / 2), (new(length - q, half - q), 0)], q);
        draw.Line(ShopSheet.Bend, view.At(way * setback, -half), view.At(way * setback, half), ShopSheet.Phantom);
        var number = 0;
        foreach (var hole in of.Holes.Where(h => h.Leg == leg))
        {
            Hole(draw, view, new(way * hole.FromMouldLine, hole.Across), hole.Diameter);
            if (isTop)
                continue;
            // On the side away from the bend.
            var at = view.At(-hole.FromMouldLine - (0.5 * hole.Diameter), hole.Across);
            draw.Words(at.X - 2.2, at.Y + 1, $"{++number}", TextAnchor.End);
        }

        draw.Words(view.At(0.5 * way * length, 0).X, view.At(0, -half).Y + 6, isTop ? "Top leg, from above" : "Base leg, from above", TextAnchor.Middle, bold: true);
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
        var conduit = of.Conduit;
        string Bent(BracketBend b) => $"through {say.Angle(b.Of.Angle)} to {say.Dimension(b.Of.Radius)} inside";
        var notes = new List<string>
        {
            of.Then is null
                ? $"Sheet {of.Alloy}, {say.Dimension(of.Thickness)}. Bent {Bent(bracket.Bends[0])}, across the grain where it can be."
                : $"Sheet {of.Alloy}, {say.Dimension(of.Thickness)}. First bend {Bent(bracket.Bends[0])}; second {Bent(bracket.Bends[1])}, {(of.Then.IsBack ? "the other way: a Z" : "the same way: a channel")}. Across the grain where it can be.",
            $"Legs are outside sizes to the corner: base {say.Dimension(of.First)}, standing {say.Dimension(of.Second)}{(of.Then is { } top ? $" corner to corner, top {say.Dimension(top.Top)}" : "")}. Corners {say.Dimension(of.Corner)}. Flat pattern {say.Dimension(bracket.Flat.Length)} by {say.Dimension(of.Width)}.",
        };
        var number = 0;
        foreach (var hole in of.Fasteners)
            notes.Add($"Hole {++number}: {say.Dimension(hole.FromMouldLine)} from the corner, {Side(hole.Across)}, Ø{say.Dimension(hole.Diameter)}.");
        var across = conduit.Leg == BracketLeg.Top ? Side(conduit.Across) : Side(conduit.Across).Replace("above", "right of", StringComparison.Ordinal).Replace("below", "left of", StringComparison.Ordinal);
        notes.Add($"{(of.ConduitAbove is null ? "Conduit" : "Clamp of the conduit")}{(of.Then is null ? "" : $", {(conduit.Leg == BracketLeg.Top ? "top" : "standing")} leg")}: {say.Dimension(conduit.FromMouldLine)} from {(conduit.Leg == BracketLeg.Top ? "the second" : of.Then is null ? "the" : "the first")} corner, {across}, Ø{say.Dimension(conduit.Diameter)}.");
        notes.Add($"Smooth and break all edges {say.Dimension(0.2e-3)} to {say.Dimension(0.4e-3)} before bending. Look at the bend for cracks with a lens.");
        notes.Add("Bend a scrap strip of the same sheet first. Drill what must fit its mate after bending.");
        return notes;
    }
}
