using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Engine.Sources;
using Throwright.Engine.Model;
using Throwright.Formats.Drawing;
using Throwright.Shapes.Quantities;
using Throwright.Shapes.Solids;

namespace Throwright.Papers.Make;

/// <content>The views. x of the part points to the thick edge, z from the tilted face to the square one.</content>
public static partial class WedgeDrawing
{
    private static void Plan(Draughting draw, ShopView view, WedgeWasher washer, FigureWriter say)
    {
        double big = 0.5 * washer.Outside, small = 0.5 * washer.Bore, c = washer.Chamfer;
        foreach (var radius in c > 0 ? (double[])[big, big - c, small + c] : [big])
            draw.Ellipse(ShopSheet.Outline, view, default, radius, radius, ShopSheet.Thick);
        draw.Profile(ShopSheet.Holes, view, Bore(washer), ShopSheet.Thick);
        if (washer.Pin is { } pin)
            draw.Ellipse("hidden", view, new(pin.Along * Math.Cos(washer.Tilt), pin.Across), 0.5 * pin.Diameter * Math.Cos(washer.Tilt), 0.5 * pin.Diameter, ShopSheet.Dashed);
        draw.Line(ShopSheet.Centre, Beyond(view.At(0, big), -4), Beyond(view.At(0, -big), 4), ShopSheet.ThinCentre);
        Point left = view.At(-big, 0), right = view.At(big, 0);
        draw.SectionLine(new(left.X - 12, left.Y), new(right.X + 12, right.Y), "A");
        const double at = 35 * Math.PI / 180;
        double x = big * Math.Cos(at), y = big * Math.Sin(at);
        draw.Words(view.At(x, y).X + 3, view.At(x, y).Y, "thick edge");
        draw.Words(view.At(-x, y).X - 3, view.At(x, y).Y, "thin edge", TextAnchor.End);
        const double below = -50 * Math.PI / 180;
        var rim = view.At(small * Math.Cos(below), small * Math.Sin(below));
        draw.Leader(rim, new(Math.Max(right.X, rim.X) + 1, view.At(0, -0.8 * big).Y), $"Ø{say.Dimension(washer.Bore)} +{say.Dimension(BorePlus)} −0");
        draw.Words(view.Origin.X, view.At(0, big).Y - 8, "View on face A", TextAnchor.Middle, bold: true);
    }

    private static void Section(Draughting draw, ShopView view, WedgePair pair, FigureWriter say)
    {
        var washer = pair.Washer;
        double big = 0.5 * washer.Outside, small = 0.5 * washer.Bore, c = washer.Chamfer, tan = washer.Tangent, high = washer.Height;
        foreach (var side in (int[])[1, -1])
        {
            Point At(double x, double z) => view.At(side * x, z);
            draw.Cut([At(small, -side * small * tan), At(big, -side * big * tan), At(big, high - c), At(big - c, high), At(small + c, high), At(small, high - c)], 45);
        }

        // The rims of the bore beyond the cut.
        draw.Line(ShopSheet.Outline, view.At(-small, small * tan), view.At(small, -small * tan), ShopSheet.Thick);
        draw.Line(ShopSheet.Outline, view.At(-small - c, high), view.At(small + c, high), ShopSheet.Thick);
        draw.Line(ShopSheet.Centre, Beyond(view.At(0, high), -5), Beyond(view.At(0, 0), 8), ShopSheet.ThinCentre);
        var face = view.At(0, high).Y;
        draw.Across(view.At(-big, high - c), view.At(big, high - c), face - Draughting.First, $"Ø{say.Dimension(washer.Outside)}");
        draw.Upright(view.At(-big, high), view.At(-big, big * tan), view.At(-big, 0).X - Draughting.First, $"{say.Dimension(washer.ThinEdge)} min");
        draw.Upright(view.At(big, high), view.At(big, -big * tan), view.At(big, 0).X + Draughting.First, $"({say.Dimension(washer.ThickEdge)})", keepAbove: view.At(big, -big * tan).Y);
        draw.AngleBelowLevel(view.At(big, -big * tan), washer.Tilt, 30, Angle(washer.Tilt));
        var ring = 0.5 * (big + small);
        draw.Datum(view.At(ring, high), 0, -1, "A");
        // On the tilted face, square to it.
        draw.Datum(view.At(-ring, ring * tan), -Math.Sin(washer.Tilt), Math.Cos(washer.Tilt), "B");
    }

    /// <returns>Where the view ends.</returns>
    private static double OnTilted(Draughting draw, double left, double right, double top, double scale, WedgeWasher washer, PinHole pin, FigureWriter say)
    {
        double big = 0.5 * washer.Outside, small = 0.5 * washer.Bore, cos = Math.Cos(washer.Tilt);
        scale = Math.Min(scale, ScaleFor(washer.Outside / cos, 56));
        double wide = 1000 * scale * washer.Outside;
        var view = new ShopView(new(left + (0.5 * (right - left)) - 12, top + 6 + (0.5 * wide)), scale);
        draw.Words(view.Origin.X, top, $"View on face B, square to it{(scale < ScaleFor(washer.Outside) ? $", {ScaleText(scale)}" : "")}", TextAnchor.Middle, bold: true);
        draw.Ellipse(ShopSheet.Outline, view, default, big / cos, big, ShopSheet.Thick);
        if (washer.BoreFlat == 0)
            draw.Ellipse(ShopSheet.Holes, view, default, small / cos, small, ShopSheet.Thick);
        // Seen from below with the thick edge at the right, y points down the page.
        var centre = new Vector2(pin.Along, -pin.Across);
        draw.Ellipse(ShopSheet.Holes, view, centre, 0.5 * pin.Diameter, 0.5 * pin.Diameter, ShopSheet.Thick);
        Point middle = view.At(0, 0), hole = view.At(centre), end = view.At(big / cos, 0);
        draw.Line(ShopSheet.Centre, new(view.At(-big / cos, 0).X - 3, middle.Y), new(end.X + 3, middle.Y), ShopSheet.ThinCentre);
        draw.Line(ShopSheet.Centre, new(middle.X, view.At(0, big).Y - 3), new(middle.X, view.At(0, -big).Y + 3), ShopSheet.ThinCentre);
        draw.Upright(new(end.X + 3, middle.Y), new(hole.X + view.Mm(0.5 * pin.Diameter), hole.Y), end.X + Draughting.First, say.Dimension(pin.Across));
        const double at = 40 * Math.PI / 180;
        double x = big / cos * Math.Cos(at), y = big * Math.Sin(at);
        draw.Words(view.At(x, y).X + 2.5, view.At(x, y).Y - 1, "thick edge");
        draw.Words(view.At(-x, y).X - 2.5, view.At(x, y).Y - 1, "thin edge", TextAnchor.End);
        var bottom = view.At(0, -big).Y;
        draw.Leader(new(hole.X - view.Mm(0.35 * pin.Diameter), hole.Y + view.Mm(0.35 * pin.Diameter)), new(hole.X - 9, bottom + 5), $"Ø{say.Dimension(pin.Diameter)} H9, {say.Dimension(pin.Depth)} deep");
        return bottom + 8;
    }

    /// <summary>Section along the lean: out of the sheet toward the pilot at the right, the lean upward.</summary>
    private static void Assembly(Draughting draw, ShopView view, WedgePair pair, FigureWriter say)
    {
        var (of, washer) = (pair.Case, pair.Washer);
        double a = of.Tilt.Angle, tan = Math.Tan(a), half = 0.5 * of.Sheet, reach = pair.FootprintAlong + (6e-3 / view.Scale), slot = 0.5 * pair.SlotLength;
        Vector2 along = Vector2.Polar(1, a), thick = new(along.Y, -along.X);
        foreach (var side in (int[])[1, -1])
            draw.Cut([view.At(-half, side * slot), view.At(half, side * slot), view.At(half, side * reach), view.At(-half, side * reach)], 135, 1.5);
        double big = 0.5 * washer.Outside, small = 0.5 * washer.Bore, c = washer.Chamfer, high = washer.Height;
        var foot = new Vector2(half, half * tan);
        foreach (var back in (int[])[1, -1])
        {
            foreach (var side in (int[])[1, -1])
            {
                Point At(double x, double z) => view.At(back * (foot + (side * x * thick) + (z * along)));
                draw.Cut([At(small, -side * small * tan), At(big, -side * big * tan), At(big, high - c), At(big - c, high), At(small + c, high), At(small, high - c)], back > 0 ? 45 : 60, 2);
            }
        }

        // Shank and nuts, not to be made: phantom.
        double seat = (half / Math.Cos(a)) + high, nut = of.NutHeight > 0 ? of.NutHeight : 0.4 * of.NutSeat, end = seat + nut + (9e-3 / view.Scale), radius = 0.5 * of.Shank;
        Vector2 across = thick;
        foreach (var side in (int[])[1, -1])
        {
            draw.Line("phantom", view.At((-end * along) + (side * radius * across)), view.At((end * along) + (side * radius * across)), ShopSheet.Phantom);
            Point Nut(double z, double x) => view.At((side * z * along) + (x * across));
            draw.Polygon("phantom", [Nut(seat, 0.5 * of.NutSeat), Nut(seat + nut, 0.5 * of.NutSeat), Nut(seat + nut, -0.5 * of.NutSeat), Nut(seat, -0.5 * of.NutSeat)], ShopSheet.Phantom);
        }

        draw.Line(ShopSheet.Centre, view.At((-end - (6e-3 / view.Scale)) * along), view.At((end + (6e-3 / view.Scale)) * along), ShopSheet.ThinCentre);
        // Far enough out for nuts, shanks and axis.
        double top = view.At(0, reach).Y, bottom = view.At(0, -reach).Y, left = view.Origin.X - 60, right = view.Origin.X + 60;
        draw.Words(left, top, "behind the sheet", TextAnchor.Middle, bold: true);
        draw.Words(right, bottom, "pilot's side", TextAnchor.Middle, bold: true);
        // Front: thick below. Behind: thick above.
        var front = view.At(foot + (0.93 * big * thick) + (0.6 * high * along));
        draw.Leader(front, new(Math.Max(front.X + 8, view.Origin.X + 24), bottom - 6), "thick edge", dot: true);
        var behind = view.At(-1 * (foot + (0.93 * big * thick) + (0.6 * high * along)));
        draw.Leader(behind, new(Math.Min(behind.X - 8, view.Origin.X - 24), top + 6), "thick edge", dot: true);
        draw.Words(view.Origin.X, bottom + 8, $"Section along the lean; {(Math.Abs(of.Tilt.Azimuth - (Math.PI / 2)) < 1e-3 ? "up the page is up in the sheet" : $"up the page is where the shank leans to: {LeanOf(of.Tilt, say)}")}", TextAnchor.Middle);
        draw.Words(view.Origin.X, bottom + 13, $"Grip along the shank {say.Dimension(pair.Grip, Rounding.Up)}; square to the sheet it was {say.Dimension(pair.GripSquare)}", TextAnchor.Middle);
    }

    /// <summary>The spacer from its side with the cut.</summary>
    private static void SpacerCut(Draughting draw, ShopView view, WedgePair pair, FigureWriter say, string scale)
    {
        var recipe = pair.Recipe;
        double half = 0.5 * recipe.Length, big = 0.5 * recipe.Outside, small = 0.5 * recipe.Bore, lean = big * Math.Tan(recipe.CutAngle), kerf = 0.5 * recipe.Kerf / Math.Cos(recipe.CutAngle);
        draw.Polygon(ShopSheet.Outline, [view.At(-half, -big), view.At(half, -big), view.At(half, big), view.At(-half, big)], ShopSheet.Thick);
        foreach (var side in (int[])[1, -1])
            draw.Line("hidden", view.At(-half, side * small), view.At(half, side * small), ShopSheet.Dashed);
        draw.Line(ShopSheet.Centre, new(view.At(-half, 0).X - 4, view.Origin.Y), new(view.At(half, 0).X + 4, view.Origin.Y), ShopSheet.ThinCentre);
        foreach (var side in (int[])[1, -1])
            draw.Line("cut", view.At((side * kerf) - lean, -big), view.At((side * kerf) + lean, big), ShopSheet.Phantom);
        draw.Across(view.At(-half, big), view.At(half, big), view.At(0, big).Y - Draughting.First, say.Dimension(recipe.Length));
        draw.Upright(view.At(-half, big), view.At(-half, -big), view.At(-half, 0).X - Draughting.First, $"Ø{say.Dimension(recipe.Outside)}");
        var on = view.At(kerf + (0.6 * lean), 0.6 * big);
        draw.Leader(on, new(view.At(half, 0).X + 9, view.At(0, big).Y + 4), $"saw cut at {Angle(recipe.CutAngle)} to the faces", dot: true);
        double x = view.At(half, 0).X + 12, y = view.At(0, big).Y + 12;
        foreach (var line in (string[])[$"kerf and clean-up {say.Dimension(recipe.Kerf)},", "square to the cut", $"bore Ø{say.Dimension(recipe.Bore)}"])
        {
            draw.Words(x, y, line);
            y += 5;
        }

        draw.Words(x, y + 2, scale.Length > 0 ? $"Spacer, {scale}" : "Spacer", bold: true);
    }

    private static Profile Bore(WedgeWasher washer) => washer.BoreFlat > 0
        ? Profile.FlattedCircle(default, 0.5 * washer.Bore, washer.BoreFlat, washer.FlatDirection)
        : Profile.Circle(default, 0.5 * washer.Bore);

    private static Point Beyond(Point at, double down) => new(at.X, at.Y + down);

    private static string Angle(double radians) => $"{FigureText.Plain(radians * (180 / Math.PI), 2)}° ±0.25°";

    private static List<string> NotesOf(WedgePair pair, FigureWriter say, ShopTitle title)
    {
        var washer = pair.Washer;
        var notes = new List<string>
        {
            "Make 2, both the same: one for each side of the sheet, the second turned half a turn. No mirror image.",
            $"A is the square face, B the face on the sheet; the angle is between A and B. Bore Ø{say.Dimension(washer.Bore)} +{say.Dimension(BorePlus)} −0, square to A within {say.Dimension(SquareTo)}.",
            $"The thin edge is the size that counts; sizes in brackets follow from it. Height on the bore's axis ({say.Dimension(washer.Height)}).",
        };
        if (washer.Pin is { } pin)
            notes.Add($"Pin hole square to B, {say.Dimension(pin.Along)} from the bore's axis in B toward the thick edge. One pin through the sheet keys both.");
        if (washer.BoreFlat > 0)
            notes.Add($"Flat in the bore {say.Dimension(washer.BoreFlat)} from its axis, along the slope from thin to thick.");
        notes.Add(washer.Chamfer > 0
            ? $"Chamfer {say.Dimension(washer.Chamfer)} at 45° on both rims of A. Break all other edges {say.Dimension(0.2e-3)} to {say.Dimension(0.4e-3)}."
            : $"Break all edges {say.Dimension(0.2e-3)} to {say.Dimension(0.4e-3)}.");
        notes.Add($"Check the pair: thin over thick without the sheet, bores in line: the two faces A are parallel within {say.Dimension(PairParallel)}.");
        notes.Add($"Mark the rim at the thick edge: {title.Number}, THICK, {say.Angle(washer.Tilt)}.");
        if (pair.Case.Stock == WedgeStock.Printed)
            notes.Add("Printed: a test piece to try the fit. The lasting pair is of metal.");
        return notes;
    }

    private static List<string> RecipeOf(WedgePair pair, FigureWriter say)
    {
        var recipe = pair.Recipe;
        List<string> steps =
        [
            $"Turn a spacer Ø{say.Dimension(recipe.Outside)} by {say.Dimension(recipe.Length)} long, bore Ø{say.Dimension(recipe.Bore)}, both ends parallel within {say.Dimension(SpacerParallel)}. The ends become the square faces.",
            $"Saw it once through the middle at {Angle(recipe.CutAngle)} to the ends.",
            $"Clean both cut faces up at one setting until each wedge is {say.Dimension(pair.Washer.Height)} high on the bore's axis. With one setting the seats are parallel whatever the angle came out as.",
        ];
        if (pair.Washer.Pin is not null)
            steps.Add("Drill the pin hole in each cut face, square to it, as on sheet 1.");
        steps.Add("Deburr, mark, finish. Check the pair as on sheet 1.");
        return steps;
    }

    private static List<string> FittingOf(WedgePair pair, FigureWriter say)
    {
        List<string> steps =
        [
            $"Cut the hole by the drill template: a slot {say.Dimension(pair.SlotWidth)} by {say.Dimension(pair.SlotLength)}, long along the lean.",
            "Front wedge: thick edge away from the lean. Back wedge: thick edge on the side of the lean.",
        ];
        steps.Add(pair.Case.Key switch
        {
            WedgeKey.Pin => "Pin through both wedges and the sheet before the nut is drawn up.",
            WedgeKey.Flat => "Flat of the shank in the flat of both bores.",
            _ => "Nothing keys these wedges: hold both while the nut is drawn up, and mark their place on the sheet.",
        });
        steps.Add(pair.Case.Curved is not { } curved
            ? "The sheet is taken as flat where the wedges lie: on a curved one they rock. Lay a straight edge on it first."
            : !double.IsFinite(pair.SheetGap)
                ? $"The sheet is curved to R {say.Dimension(curved.Radius)}: wedges as wide as these can't seat on it."
                : $"The sheet is curved to R {say.Dimension(curved.Radius)}, bulging {(curved.IsTowardPilot ? "toward" : "away from")} the pilot: a flat seat stands off by {say.Dimension(pair.SheetGap)}. {(pair.SheetGap > Published.Get("make/panel-gap").Value ? "Cut the seats to the sheet's radius, or fit flat doublers first." : "That little counts as flat.")}");
        steps.Add("Nut square on both seats; at least one full thread shows beyond it.");
        return steps;
    }
}
