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
            .. bracket.Bends.Select((b, i) => $"{(bracket.Bends.Count == 1 ? "Bend" : $"{Which(i)}bend")} {Way(b)} {say.Angle(b.Of.Angle)} to an inside radius of {Size(b.Of.Radius)}. Allowance {Size(b.Allowance)} at K {FigureText.Plain(bracket.Neutral.Value, 3)}, setback {Size(b.Setback)}{(i == 0 ? ": try it on a scrap strip and correct it" : "")}."),
            $"The bend{(bracket.Bends.Count == 1 ? " runs" : "s run")} out at both edges: no relief is cut. Bend across the grain where you can. Smooth and break all edges before bending.{(bracket.Bends.Count == 1 ? "" : " Bend the first one first; see that the brake's bar still gets in for the second.")}",
        ];
        const double side = 12;
        double label = 26 + (6 * (bracket.Bends.Count - 1)), below = 40;
        // Room above the strip for the bend's label and for what the upright bar reaches beyond it.
        var above = Math.Max(label, 88 - wide);
        double needWide = length + (2 * side) + 10, needHigh = Top(page) + above + wide + below + (4.5 * (flat.Holes.Count + 2 + bracket.Bends.Count)) + side;
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
        for (var i = 0; i < bracket.Bends.Count; i++)
        {
            var middle = flat.Bends[(3 * i) + 1].From.X;
            // The words of two bends would meet over a short strip: those of the second stand one line higher.
            sheet.Arrow(new(middle, top + 9e-3 + (i * 6e-3)), new(middle, top + 1e-3), $"BEND {Way(bracket.Bends[i]).ToUpperInvariant()} {say.Angle(bracket.Bends[i].Of.Angle)}, R {Size(bracket.Bends[i].Of.Radius)}", wordAtEnd: false);
            rows.Add($"{Which(i).ToLowerInvariant().TrimEnd(' ', ':')}{(bracket.Bends.Count == 1 ? "bend" : "")} begins {say.Dimension(flat.Bends[3 * i].From.X)}, middle {say.Dimension(middle)}, ends {say.Dimension(flat.Bends[(3 * i) + 2].From.X)} from the left end");
        }

        rows.Add($"bent, outside: base {say.Dimension(of.First)}, standing {say.Dimension(of.Second)}{(of.Then is { } then ? $", top {say.Dimension(then.Top)}" : "")}");
        sheet.Bars(corner, DrillTemplate.Bar);
        sheet.List(corner - new Vector2(0, 16e-3), $"Holes and bend lines, in {(say.LengthUnitName == "in" ? "inches" : "millimetres")}", rows);
        return sheet.ToPicture(page, $"Flat pattern of {title.Part}", "Outline, holes and bend lines of a bracket, and two bars of 100 mm at true size.");

        double Top(ShopPaper on) => new ShopSheet(default).Head(on, title, "flat pattern", words);
        string Which(int bend) => bracket.Bends.Count == 1 ? "" : bend == 0 ? "First bend: " : "Second bend: ";
        static string Way(BracketBend bend) => bend.Of.IsBack ? "down" : "up";
        string Across(double y) => Math.Abs(y) < 1e-6 ? "on the middle line" : $"{say.Dimension(Math.Abs(y))} {(y > 0 ? "above" : "below")} the middle line";
        string Size(double metres) => $"{say.Dimension(metres)} {say.LengthUnitName}";
    }
}
