using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Formats.Drawing;
using Throwright.Shapes.Solids;

namespace Throwright.Papers.Make;

/// <summary>The hole for a tilted shank at true size, to be laid on the sheet from the pilot's side.</summary>
public static class DrillTemplateDrawing
{
    public static Picture Of(WedgePair pair, FigureWriter say, ShopTitle title, ShopPaper? paper = null)
    {
        var (page, template) = (paper ?? ShopPaper.A4, DrillTemplate.Of(pair));
        var bars = template.Lines.Where(l => l.Line == TemplateLine.Scale).ToList();
        var corner = bars[0].From;
        // The bars are the widest thing: they stand in the middle of the page.
        var sheet = new ShopSheet(new((0.5 * page.Width) - (1000 * (corner.X + (0.5 * DrillTemplate.Bar))), (0.55 * page.Height) + (1000 * (corner.Y + (0.5 * DrillTemplate.Bar)))));
        sheet.Head(page, title, "drill template",
        [
            $"Seen from the pilot's side, square to the sheet; up the page is up in the sheet. The shank leans {WedgeDrawing.LeanOf(pair.Case.Tilt, say)}. Print without scaling.",
            DrillTemplate.Caution,
            $"Hole {say.Dimension(pair.SlotWidth)} wide, {say.Dimension(pair.SlotLength)} {say.LengthUnitName} long, {HowToCut(pair, say)}.{(pair.Washer.Pin is { } pin ? $" Pin hole Ø{say.Dimension(pin.Diameter)}." : "")} Shank tilted {say.Angle(pair.Case.Tilt.Angle)} in all.",
            "Arrow LEAN: the way the shank leans as it comes toward the pilot. Ellipses: rim of the wedge in front (full) and behind (broken).",
        ]);
        // Thin: a drill is set to the line, not beside it.
        sheet.Profile(ShopSheet.Holes, template.Hole, ShopSheet.Thin);
        foreach (var hole in template.Holes)
            sheet.Profile(ShopSheet.Holes, hole, ShopSheet.Thin);
        foreach (var seat in template.Seats)
            sheet.Ellipse("seat", seat.Centre, seat.Along, seat.Across, seat.Direction, seat.Line == TemplateLine.FrontSeat ? ShopSheet.Thin : ShopSheet.Dashed);
        foreach (var line in template.Lines.Where(l => l.Line == TemplateLine.Centre))
            sheet.Line(ShopSheet.Centre, line.From, line.To, ShopSheet.ThinCentre);
        sheet.Bars(corner, DrillTemplate.Bar);
        // Beside the upright bar: the paper may be turned on the panel, the arrow can't.
        sheet.Arrow(corner + new Vector2(-9e-3, 0.5 * DrillTemplate.Bar), corner + new Vector2(-9e-3, (0.5 * DrillTemplate.Bar) + 16e-3), "UP", wordAtEnd: true);
        foreach (var arrow in template.Arrows)
        {
            // A word beside the wedge runs away from it, or for a steep arrow away from the centre line beside it.
            var shaft = arrow.From - arrow.To;
            var along = (1 / shaft.Size) * shaft;
            var beside = arrow.From - (Vector2.Dot(arrow.From, along) * along);
            var away = Math.Abs(along.X) > 0.9 ? arrow.From.X : beside.X;
            TextAnchor? side = arrow.WordAtTip ? null : away > 0 ? TextAnchor.Start : TextAnchor.End;
            sheet.Arrow(arrow.From, arrow.To, arrow.Word, arrow.WordAtTip, side);
        }

        return sheet.ToPicture(page, $"Drill template of {title.Part}", "Slot, wedge footprints, centre lines and two bars of 100 mm at true size.");
    }

    /// <summary>A slot that is hardly longer than wide is one hole, filed out.</summary>
    private static string HowToCut(WedgePair pair, FigureWriter say)
    {
        var longer = pair.SlotLength - pair.SlotWidth;
        return longer < 0.5 * pair.SlotWidth
            ? $"its length along the lean: drill {say.Dimension(pair.SlotWidth)} at the cross and file {say.Dimension(0.5 * longer)} out at both ends"
            : "its length along the lean: drill two holes and file between them";
    }
}
