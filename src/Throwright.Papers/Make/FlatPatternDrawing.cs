using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Formats.Drawing;
using Throwright.Shapes.Quantities;
using Throwright.Shapes.Solids;

namespace Throwright.Papers.Make;

/// <summary>A bracket before it is bent, at true size, with its bend lines.</summary>
public static class FlatPatternDrawing
{
    public static Picture Of(Bracket bracket, FigureWriter say, ShopTitle title, ShopPaper? paper = null)
    {
        var (page, of, flat) = (paper ?? ShopPaper.A4, bracket.Case, bracket.Flat);
        double wide = 1000 * of.Width, length = 1000 * flat.Length;
        // The bars stand clear of the strip: the upright one at its left, the level one below it.
        var corner = new Vector2(Math.Min((0.5 * flat.Length) - (0.5 * DrillTemplate.Bar), -8e-3), (-0.5 * of.Width) - 0.02);
        List<string> words =
        [
            "Print without scaling. Measure both bars before cutting: each must be 100 mm.",
            $"{of.Alloy}, {Size(of.Thickness)} thick. Strip {say.Dimension(flat.Length)} by {Size(of.Width)}, corners {Size(of.Corner)}.",
            $"Bend up {say.Angle(of.Bend)} to an inside radius of {Size(of.Radius)}. Allowance {Size(bracket.Allowance)} at K {FigureText.Plain(bracket.Neutral.Value, 3)}: try it on a scrap strip and correct it.",
            "The bend runs out at both edges: no relief is cut. Bend across the grain where you can. Smooth and break all edges before bending. Setback " + Size(bracket.Setback) + ".",
        ];
        const double side = 12, label = 26, below = 40;
        // Room above the strip for the bend's label and for what the upright bar reaches beyond it.
        var above = Math.Max(label, 88 - wide);
        double needWide = length + (2 * side) + 10, needHigh = Top(page) + above + wide + below + (4.5 * (flat.Holes.Count + 3)) + side;
        if (needWide > page.Width || needHigh > page.Height)
        {
            page = new(Math.Max(page.Width, needWide), Math.Max(page.Height, needHigh));
            words.Add($"This sheet is {FigureText.Plain(page.Width, 0)} by {FigureText.Plain(page.Height, 0)} mm: print it in tiles or on a plotter, or cut by the DXF.");
        }

        // The middle of strip and bars in the middle of the page.
        var left = 1000 * Math.Min(corner.X, 0);
        var right = Math.Max(length, 1000 * (corner.X + DrillTemplate.Bar));
        var sheet = new ShopSheet(new((0.5 * page.Width) - (0.5 * (left + right)), Top(page) + above + (0.5 * wide)));
        sheet.Head(page, title, "flat pattern", words);
        sheet.Profile(ShopSheet.Outline, flat.Outline, ShopSheet.Thick);
        var (number, rows) = (0, new List<string>());
        foreach (var hole in flat.Holes)
        {
            sheet.Profile(ShopSheet.Holes, hole, ShopSheet.Thick);
            var centre = (1 / hole.Area) * hole.Moment;
            var reach = hole.Stretches[0].Radius + 1.5e-3;
            sheet.Line(ShopSheet.Centre, centre - new Vector2(reach, 0), centre + new Vector2(reach, 0), ShopSheet.ThinCentre);
            sheet.Line(ShopSheet.Centre, centre - new Vector2(0, reach), centre + new Vector2(0, reach), ShopSheet.ThinCentre);
            number++;
            sheet.Word(centre + new Vector2(reach + 1e-3, 1.2e-3), $"{number}");
            rows.Add($"{number}:  {say.Dimension(centre.X)} from the left end, {Across(centre.Y)}, Ø{say.Dimension(2 * hole.Stretches[0].Radius)}");
        }

        foreach (var bend in flat.Bends)
            sheet.Line(ShopSheet.Bend, bend.From, bend.To, bend.IsCentre ? ShopSheet.ThinCentre : ShopSheet.Phantom);
        var top = 0.5 * of.Width;
        sheet.Arrow(new(flat.Bends[1].From.X, top + 9e-3), new(flat.Bends[1].From.X, top + 1e-3), $"BEND UP {say.Angle(of.Bend)}, R {Size(of.Radius)}", wordAtEnd: false);
        rows.Add($"bend begins {say.Dimension(flat.Bends[0].From.X)}, middle {say.Dimension(flat.Bends[1].From.X)}, ends {say.Dimension(flat.Bends[2].From.X)} from the left end");
        rows.Add($"bent, outside: base {say.Dimension(of.First)}, standing {say.Dimension(of.Second)}");
        sheet.Bars(corner, DrillTemplate.Bar);
        sheet.List(corner - new Vector2(0, 16e-3), $"Holes and bend lines, in {(say.LengthUnitName == "in" ? "inches" : "millimetres")}", rows);
        return sheet.ToPicture(page, $"Flat pattern of {title.Part}", "Outline, holes and bend lines of a bracket, and two bars of 100 mm at true size.");

        double Top(ShopPaper on) => new ShopSheet(default).Head(on, title, "flat pattern", words);
        string Across(double y) => Math.Abs(y) < 1e-6 ? "on the middle line" : $"{say.Dimension(Math.Abs(y))} {(y > 0 ? "above" : "below")} the middle line";
        string Size(double metres) => $"{say.Dimension(metres)} {say.LengthUnitName}";
    }
}
