using Throwright.Engine.Findings;
using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Make;

/// <summary>What the title block of a shop drawing says.</summary>
/// <param name="Part">Name of the part.</param>
/// <param name="Number">As it is marked on the part.</param>
public sealed record ShopTitle(string Aircraft, string Part, string Number)
{
    public string Revision { get; init; } = "A";

    /// <summary>Empty: left open to be written in.</summary>
    public string Material { get; init; } = "";
    public string Finish { get; init; } = "";
    public string Mass { get; init; } = "";
    public string Drawn { get; init; } = "";
    public string Date { get; init; } = "";

    /// <summary>Why nothing is to be cut by this drawing yet, printed on it in reverse; empty: nothing stands against it.</summary>
    public string Hold { get; init; } = "";

    /// <summary>What stands on the parts of a run whose check fails.</summary>
    public const string NotYet = "The check of this run fails: do not cut yet.";
}

/// <summary>Frame, title block and notes of a drawing on a level sheet.</summary>
public static class ShopFrame
{
    public const double Margin = 10, BlockWidth = 98, BlockHeight = 41;

    private const double Label = 2;

    /// <summary>Caution at the foot of every drawing.</summary>
    public const string Caution = "Proposal, not an approval: the plans of the kit or the aircraft's maker and local rules come first. Have it judged by a qualified person.";

    /// <summary>Room inside the frame.</summary>
    internal static Box Inside(ShopPaper paper) => new(Margin, Margin, paper.Width - Margin, paper.Height - Margin);

    internal static Box Block(ShopPaper paper) => new(paper.Width - Margin - BlockWidth, paper.Height - Margin - BlockHeight, paper.Width - Margin, paper.Height - Margin);

    internal static void Draw(Draughting draw, ShopPaper paper, ShopTitle title, FigureWriter say, string scale, int sheet, int sheets)
    {
        var sketch = draw.Sketch;
        sketch.Layer = "frame";
        sketch.Rectangle(Inside(paper), ShopSheet.Thick);
        var block = Block(paper);
        sketch.Rectangle(block, ShopSheet.Thick);
        double[] rows = [0, 11, 18.5, 26, 33.5, BlockHeight];
        foreach (var y in rows[1..^1])
            sketch.Line(block.Left, block.Top + y, block.Right, block.Top + y, ShopSheet.Thin);
        var unit = say.LengthUnitName == "in" ? "inches" : "millimetres";
        Cell(0, 0, BlockWidth - 34, "Part", title.Part, true);
        Cell(0, BlockWidth - 34, 34, "Aircraft", title.Aircraft, false);
        Cell(1, 0, 54, "Material", title.Material, false);
        Cell(1, 54, 44, "Mass of one", title.Mass, false);
        Cell(2, 0, 54, "Finish", title.Finish, false);
        Cell(2, 54, 44, "Unless toleranced", say.LengthUnitName == "in" ? "±.005, angles ±0.5°" : "±0.10, angles ±0.5°", false);
        Cell(3, 0, 36, "Number", $"{title.Number}, rev {title.Revision}", false);
        Cell(3, 36, 18, "Scale", scale, false);
        Cell(3, 54, 22, "Dimensions in", unit, false);
        Cell(3, 76, 22, "Third angle", "", false);
        Projection(new(block.Left + 95, block.Top + rows[3] + 5.4));
        Cell(4, 0, 36, "Drawn", title.Drawn, false);
        Cell(4, 36, 18, "Checked", "", false);
        Cell(4, 54, 22, "Date", title.Date, false);
        Cell(4, 76, 22, "Sheet", $"{sheet} of {sheets}", false);
        if (title.Hold.Length > 0)
            draw.Hold(new(block.Left, block.Top - 10, block.Right, block.Top - 2), title.Hold);
        sketch.Layer = ShopSheet.Words;
        sketch.Text(Margin + 1, paper.Height - Margin + 4.5, 2.5, TextMeasure.Fit(Caution, 2.5, paper.Width - (2 * Margin) - 2), Tones.Ink);

        void Cell(int row, double left, double width, string label, string text, bool bold)
        {
            double x = block.Left + left, y = block.Top + rows[row], height = rows[row + 1] - rows[row];
            if (left > 0)
                draw.Line("frame", new(x, y), new(x, y + height), ShopSheet.Thin);
            draw.Words(x + 1, y + 2.6, TextMeasure.Fit(label, Label, width - 2), size: Label);
            if (text.Length > 0)
            {
                // Smaller where it is long, and cut only where it could not be read.
                const double smallest = 2.2;
                var usual = bold ? 3.5 : Draughting.Text;
                var size = Math.Max(smallest, usual * Math.Min(1, (width - 2.5) / TextMeasure.Width(text, usual, bold)));
                draw.Words(x + 1.5, y + height - 1.6, TextMeasure.Fit(text, size, width - 2.4, bold), bold: bold, size: size);
            }
        }

        // The cone seen from its side and, on its small end's side, from its end.
        void Projection(Point at)
        {
            draw.Polygon("frame", [new(at.X - 6, at.Y - 0.8), new(at.X - 1, at.Y - 1.6), new(at.X - 1, at.Y + 1.6), new(at.X - 6, at.Y + 0.8)], ShopSheet.Thin);
            sketch.Layer = "frame";
            sketch.Circle(at.X - 9, at.Y, 1.6, ShopSheet.Thin);
            sketch.Circle(at.X - 9, at.Y, 0.8, ShopSheet.Thin);
        }
    }

    /// <summary>Where what stands above the title block must end.</summary>
    internal static double NotesEnd(ShopPaper paper, ShopTitle title) => Block(paper).Top - (title.Hold.Length > 0 ? 12 : 2);

    /// <summary>Lists of numbered notes one under the other, wrapped to a width; smaller where they would not end above a height.</summary>
    internal static void Notes(Draughting draw, double x, double y, double width, double bottom, params ReadOnlySpan<(string Heading, IReadOnlyList<string> Notes)> lists)
    {
        const double usual = 2.8, least = 2.2, between = 3;
        var size = usual;
        while (size > least && End(size, lists) > bottom)
            size -= 0.1;
        foreach (var (heading, notes) in lists)
        {
            var step = Step(size);
            draw.Words(x, y, heading, bold: true, size: size);
            y += 1.25 * step;
            for (var i = 0; i < notes.Count; i++)
            {
                draw.Words(x, y, $"{i + 1}", size: size);
                foreach (var line in TextMeasure.Wrap(notes[i], size, width - Indent))
                {
                    draw.Words(x + Indent, y, line, size: size);
                    y += step;
                }

                y += 0.25 * step;
            }

            y += between;
        }

        // The last line's foot.
        double End(double size, ReadOnlySpan<(string Heading, IReadOnlyList<string> Notes)> lists)
        {
            var at = y - between;
            foreach (var (_, notes) in lists)
                at += between + (Step(size) * (1.25 + notes.Sum(n => 0.25 + TextMeasure.Wrap(n, size, width - Indent).Count)));
            return at - Step(size);
        }

        static double Step(double size) => 1.42 * size;
    }

    private const double Indent = 6;
}
