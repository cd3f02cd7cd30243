using Throwright.Engine.Findings;
using Throwright.Engine.Sources;
using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Make;

/// <summary>The marking of a control: what it is, and how it is worked.</summary>
/// <param name="Label">As the file has it, e.g. COWL FLAP.</param>
/// <param name="How">Method of operation, e.g. PULL TO CLOSE.</param>
/// <param name="Distance">Eye to marking, m.</param>
/// <param name="LightOnDark">Light letters on a dark ground take a thinner stroke.</param>
/// <param name="Typed">Height of a capital where the file gives it, m.</param>
public sealed record Marking(string Label, string How, double Distance, bool LightOnDark, double? Typed = null)
{
    /// <summary>Usual distance of an eye to the panel where the file gives none, m: common practice.</summary>
    public const double UsualDistance = 0.7112;

    /// <summary>Height of a capital, m: the preferred share of the distance, half as much again for dim light.</summary>
    public double Height => Typed ?? Published.Get("marking/good-height").Value * Distance * Published.Get("marking/dim-light").Value;

    /// <summary>Width of a stroke, m.</summary>
    public double Stroke => Height / Published.Get(LightOnDark ? "marking/stroke-light-on-dark" : "marking/stroke-dark-on-light").Value;
}

/// <summary>Lettering of single strokes at true size, for an engraver or a plotter.</summary>
public static class MarkingDrawing
{
    /// <summary>Layer with the strokes and nothing else.</summary>
    public const string Engrave = "engrave";

    private const double Border = 3;

    /// <summary>The lettering alone on a plate of its own size, centred: nothing but strokes to engrave.</summary>
    public static Picture Plate(Marking marking)
    {
        ArgumentNullException.ThrowIfNull(marking);
        double high = 1000 * marking.Height, second = 0.75 * high;
        var width = Math.Max(StrokeLetters.Width(marking.Label, high), StrokeLetters.Width(marking.How, second)) + (2 * Border);
        var height = high + (marking.How.Length > 0 ? (0.8 * high) + second : 0) + (2 * Border);
        var sketch = new Sketch { Layer = Engrave };
        Put(sketch, marking, 0.5 * width, Border + high);
        return sketch.ToPicture(width, height, $"Marking: {marking.Label}", "Lettering of single strokes at true size.");
    }

    /// <summary>The same on a page, with its sizes and a bar to measure.</summary>
    public static Picture Page(Marking marking, FigureWriter say, ShopTitle title, ShopPaper? paper = null)
    {
        var page = paper ?? ShopPaper.A4;
        var sheet = new ShopSheet(new(0.5 * (page.Width - 100), 0.75 * page.Height));
        sheet.Head(page, title, "marking",
        [
            "Print without scaling. Measure both bars before engraving: each must be 100 mm.",
            $"Capitals {say.Dimension(marking.Height)} {say.LengthUnitName} high, stroke {say.Dimension(marking.Stroke)} wide, {(marking.Typed is null ? $"for an eye {say.Length(marking.Distance)} away in dim light" : "as the file has it")}; {(marking.LightOnDark ? "light letters on a dark ground" : "dark letters on a light ground")}. The second line is three quarters as high.",
            "Single strokes: the tool's width makes the stroke. What is marked is function and method of operation; no control but an emergency control is red (14 CFR 23.1555).",
        ]);
        sheet.Bars(default, 0.1);
        Put(sheet.Sketch, marking, 0.5 * page.Width, 0.45 * page.Height);
        return sheet.ToPicture(page, $"Marking: {marking.Label}", "Lettering of single strokes at true size with two bars of 100 mm.");
    }

    private static void Put(Sketch sketch, Marking marking, double middle, double baseLine)
    {
        sketch.Layer = Engrave;
        double high = 1000 * marking.Height, second = 0.75 * high;
        Row(marking.Label, high, baseLine, 1000 * marking.Stroke);
        Row(marking.How, second, baseLine + (0.8 * high) + second, 750 * marking.Stroke);

        void Row(string text, double height, double y, double stroke)
        {
            var left = middle - (0.5 * StrokeLetters.Width(text, height));
            foreach (var line in StrokeLetters.Of(text, height))
                sketch.Polyline(line.Select(p => new Point(left + p.X, y + p.Y)), Style.Line(Tones.Ink, stroke));
        }
    }
}
