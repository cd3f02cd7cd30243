using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Formats.Drawing;
using Throwright.Shapes.Quantities;
using Throwright.Shapes.Solids;

namespace Throwright.Papers.Make;

/// <summary>A bracket before it is bent, at true size, with its bend lines.</summary>
public static class FlatPatternDrawing
{
    public static Picture Of(Bracket bracket, FigureWriter say, string name, ShopPaper? paper = null)
    {
        var (page, of, flat) = (paper ?? ShopPaper.A4, bracket.Case, bracket.Flat);
        var corner = new Vector2((0.5 * flat.Length) - (0.5 * DrillTemplate.Bar), -(0.5 * of.Width) - 0.02);
        var sheet = new ShopSheet(new((0.5 * page.Width) - (500 * flat.Length), (0.55 * page.Height) + (1000 * (corner.Y + (0.5 * DrillTemplate.Bar)))));
        sheet.Head(page, $"{name}: flat pattern, true size 1 : 1",
        [
            "Print without scaling. Measure both bars before cutting: each must be 100 mm.",
            $"{of.Alloy}, {Size(of.Thickness)} thick. Strip {say.Dimension(flat.Length)} by {Size(of.Width)}, corners {Size(of.Corner)}.",
            $"Bend up {say.Angle(of.Bend)} to an inside radius of {Size(of.Radius)}. Allowance {Size(bracket.Allowance)} at K {FigureText.Plain(bracket.Neutral.Value, 3)}: try it on a scrap strip and correct it.",
            "Bend across the grain where you can. Smooth and break all edges before bending. Setback " + Size(bracket.Setback) + ".",
        ]);
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
        return sheet.ToPicture(page, $"Flat pattern of {name}", "Outline, holes and bend lines of a bracket, and two bars of 100 mm at true size.");

        string Across(double y) => Math.Abs(y) < 1e-6 ? "on the middle line" : $"{say.Dimension(Math.Abs(y))} {(y > 0 ? "above" : "below")} the middle line";
        string Size(double metres) => $"{say.Dimension(metres)} {say.LengthUnitName}";
    }
}
