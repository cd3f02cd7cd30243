using System.Globalization;
using System.Text;

namespace Throwright.Formats.Drawing;

/// <summary>How an SVG file gets its colours.</summary>
public sealed record SvgColours
{
    /// <summary>Used where nothing else is asked for; null: none are written, the page that holds the drawing has them.</summary>
    public Palette? Usual { get; init; }

    /// <summary>Used where the system asks for dark colours.</summary>
    public Palette? Dark { get; init; }

    /// <summary>Used on paper.</summary>
    public Palette? Printed { get; init; }

    /// <summary>Start of every class name, so that they stay apart from those of a page.</summary>
    public string Prefix { get; init; } = "";
}

/// <summary>Writes drawings as SVG at true size: one user unit is one millimetre.</summary>
/// <remarks>
/// The same drawing gives the same bytes: numbers in the invariant culture with at most three decimals, no time, no
/// name of a program. Colours are classes: f-NAME fills, s-NAME strokes. Text can't break out: it is cleaned by
/// <see cref="PlainText"/> and written with entities.
/// </remarks>
public static class SvgWriter
{
    /// <summary>The faces asked for, most wanted first.</summary>
    public const string Faces = "Inter, 'DejaVu Sans', sans-serif";

    public static string Write(Picture picture, SvgColours colours)
    {
        var svg = new StringBuilder();
        var (width, height) = (Number(picture.Width), Number(picture.Height));
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" viewBox=\"0 0 {width} {height}\" role=\"img\" font-family=\"{Faces}\" fill=\"none\">\n");
        svg.Append(CultureInfo.InvariantCulture, $"<title>{Escape(picture.Title)}</title>\n<desc>{Escape(picture.Description)}</desc>\n");
        WriteStyle(svg, picture, colours);
        for (var i = 0; i < picture.Shapes.Count;)
        {
            var layer = picture.Shapes[i].Layer;
            svg.Append(CultureInfo.InvariantCulture, $"<g class=\"{colours.Prefix}{new Tone(layer)}\">\n");
            for (; i < picture.Shapes.Count && picture.Shapes[i].Layer == layer; i++)
                WriteShape(svg, picture.Shapes[i], colours.Prefix);
            svg.Append("</g>\n");
        }

        return svg.Append("</svg>\n").ToString();
    }

    /// <summary>A number with at most three decimals, no trailing zeros, no negative zero.</summary>
    public static string Number(double value)
    {
        if (!double.IsFinite(value))
            throw new ArgumentException("A drawing holds finite numbers only.", nameof(value));
        var rounded = Math.Round(value, 3, MidpointRounding.AwayFromZero);
        return rounded == 0 ? "0" : rounded.ToString("0.###", CultureInfo.InvariantCulture);
    }

    /// <summary>Text fit for an element or a quoted attribute.</summary>
    public static string Escape(string text)
    {
        var safe = new StringBuilder(text.Length);
        foreach (var c in PlainText.Clean(text))
        {
            _ = c switch
            {
                '&' => safe.Append("&amp;"),
                '<' => safe.Append("&lt;"),
                '>' => safe.Append("&gt;"),
                '"' => safe.Append("&quot;"),
                '\'' => safe.Append("&#39;"),
                _ => safe.Append(c),
            };
        }

        return safe.ToString();
    }

    private static void WriteStyle(StringBuilder svg, Picture picture, SvgColours colours)
    {
        if (colours.Usual is null)
            return;
        var (fills, strokes) = (new List<Tone>(), new List<Tone>());
        foreach (var shape in picture.Shapes)
        {
            switch (shape)
            {
                case Segments s: Use(s.Style); break;
                case Outline o: Use(o.Style); break;
                case Circle c: Use(c.Style); break;
                case Arc a: Use(a.Style); break;
                case Dots d: Add(strokes, d.Tone); break;
                case Lettering l:
                    foreach (var span in l.Spans)
                        Add(fills, span.Tone);
                    Add(strokes, l.Halo);
                    break;
            }
        }

        fills.Sort((a, b) => string.CompareOrdinal(a.Name, b.Name));
        strokes.Sort((a, b) => string.CompareOrdinal(a.Name, b.Name));
        svg.Append(CultureInfo.InvariantCulture, $"<style>\ntext{{font-feature-settings:\"tnum\"}}.{colours.Prefix}frac{{font-feature-settings:\"tnum\",\"frac\"}}\n");
        Rules(colours.Usual);
        if (colours.Dark is { } dark)
            Within("(prefers-color-scheme:dark)", dark);
        if (colours.Printed is { } printed)
            Within("print", printed);
        svg.Append("</style>\n");

        void Use(Style style)
        {
            Add(fills, style.Fill);
            Add(strokes, style.Stroke);
        }

        void Add(List<Tone> tones, Tone? tone)
        {
            if (tone is not null && !tones.Contains(tone))
                tones.Add(tone);
        }

        void Within(string media, Palette palette)
        {
            svg.Append(CultureInfo.InvariantCulture, $"@media {media}{{\n");
            Rules(palette);
            svg.Append("}\n");
        }

        void Rules(Palette palette)
        {
            foreach (var tone in fills)
                svg.Append(CultureInfo.InvariantCulture, $".{colours.Prefix}f-{tone}{{fill:{palette[tone]}}}");
            foreach (var tone in strokes)
                svg.Append(CultureInfo.InvariantCulture, $".{colours.Prefix}s-{tone}{{stroke:{palette[tone]}}}");
            svg.Append('\n');
        }
    }

    private static void WriteShape(StringBuilder svg, Shape shape, string prefix)
    {
        switch (shape)
        {
            case Segments s:
                svg.Append("<path d=\"");
                foreach (var (a, b) in s.Parts)
                {
                    svg.Append(CultureInfo.InvariantCulture, $"M{Number(a.X)} {Number(a.Y)}");
                    LineTo(svg, a, b);
                }

                svg.Append('"').Append(Attributes(s.Style, prefix)).Append("/>\n");
                break;
            case Outline { AsBox: { } box } o:
                double left = Round(box.Left), top = Round(box.Top);
                svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{Number(left)}\" y=\"{Number(top)}\" width=\"{Number(Round(box.Right) - left)}\" height=\"{Number(Round(box.Bottom) - top)}\"{Attributes(o.Style, prefix)}/>\n");
                break;
            case Outline o:
                if (o.Points.Count == 0)
                    break;
                svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{Number(o.Points[0].X)} {Number(o.Points[0].Y)}");
                for (var i = 1; i < o.Points.Count; i++)
                    LineTo(svg, o.Points[i - 1], o.Points[i]);
                svg.Append(o.Closed ? "Z\"" : "\"").Append(Attributes(o.Style, prefix)).Append("/>\n");
                break;
            case Circle c:
                svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{Number(c.Centre.X)}\" cy=\"{Number(c.Centre.Y)}\" r=\"{Number(c.Radius)}\"{Attributes(c.Style, prefix)}/>\n");
                break;
            case Arc a:
                WriteArc(svg, a, prefix);
                break;
            case Dots d:
                // A line of no length with round ends is a dot: 12 bytes each in place of 40.
                svg.Append("<path d=\"");
                foreach (var (x, y) in d.Centres)
                    svg.Append(CultureInfo.InvariantCulture, $"M{Number(x)} {Number(y)}h0");
                svg.Append(CultureInfo.InvariantCulture, $"\" class=\"{prefix}s-{d.Tone}\" stroke-width=\"{Number(d.Diameter)}\" stroke-linecap=\"round\"/>\n");
                break;
            case Lettering l:
                WriteText(svg, l, prefix);
                break;
            default:
                throw new ArgumentException($"Unknown shape {shape.GetType().Name}.", nameof(shape));
        }
    }

    private static void WriteArc(StringBuilder svg, Arc arc, string prefix)
    {
        // More than half a turn has to be cut: from the two ends alone, SVG can't tell the middle.
        var pieces = Math.Max(1, (int)Math.Ceiling(Math.Abs(arc.Sweep) / (0.75 * Math.PI)));
        var (x, y) = arc.At(arc.From);
        svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{Number(x)} {Number(y)}");
        for (var i = 1; i <= pieces; i++)
        {
            (x, y) = arc.At(arc.From + (arc.Sweep * i / pieces));
            svg.Append(CultureInfo.InvariantCulture, $"A{Number(arc.Radius)} {Number(arc.Radius)} 0 0 {(arc.Sweep > 0 ? 0 : 1)} {Number(x)} {Number(y)}");
        }

        svg.Append('"').Append(Attributes(arc.Style, prefix)).Append("/>\n");
    }

    private static void WriteText(StringBuilder svg, Lettering text, string prefix)
    {
        var first = text.Spans[0];
        var anchor = text.Anchor switch { TextAnchor.Middle => " text-anchor=\"middle\"", TextAnchor.End => " text-anchor=\"end\"", _ => "" };
        var halo = text.Halo is null ? "" : $" {prefix}s-{text.Halo}";
        var frac = text.Fractions ? $" {prefix}frac" : "";
        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{Number(text.At.X)}\" y=\"{Number(text.At.Y)}\" font-size=\"{Number(text.Size)}\"{anchor} class=\"{prefix}f-{first.Tone}{halo}{frac}\"");
        if (first.Bold)
            svg.Append(" font-weight=\"700\"");
        if (text.Tracking != 0)
            svg.Append(CultureInfo.InvariantCulture, $" letter-spacing=\"{Number(text.Tracking * text.Size)}\"");
        if (text.Halo is not null)
            svg.Append(CultureInfo.InvariantCulture, $" stroke-width=\"{Number(2 * Lettering.HaloShare * text.Size)}\" stroke-linejoin=\"round\" paint-order=\"stroke\"");
        if (text.Spans.Count > 1)
            svg.Append(" xml:space=\"preserve\"");
        svg.Append('>').Append(Escape(first.Text));
        foreach (var span in text.Spans.Skip(1))
        {
            var tone = span.Tone == first.Tone ? "" : $" class=\"{prefix}f-{span.Tone}\"";
            var weight = span.Bold == first.Bold ? "" : span.Bold ? " font-weight=\"700\"" : " font-weight=\"400\"";
            svg.Append(CultureInfo.InvariantCulture, $"<tspan{tone}{weight}>{Escape(span.Text)}</tspan>");
        }

        svg.Append("</text>\n");
    }

    private static void LineTo(StringBuilder svg, Point from, Point to)
    {
        if (Round(to.Y) == Round(from.Y))
            svg.Append('H').Append(Number(to.X));
        else if (Round(to.X) == Round(from.X))
            svg.Append('V').Append(Number(to.Y));
        else
            svg.Append(CultureInfo.InvariantCulture, $"L{Number(to.X)} {Number(to.Y)}");
    }

    private static string Attributes(Style style, string prefix)
    {
        var fill = style.Fill is null ? "" : $"{prefix}f-{style.Fill}";
        var stroke = style.Stroke is null ? "" : $"{prefix}s-{style.Stroke}";
        var text = $" class=\"{fill}{(fill.Length > 0 && stroke.Length > 0 ? " " : "")}{stroke}\"";
        if (style.Stroke is null)
            return text;
        text += $" stroke-width=\"{Number(style.Width)}\"";
        return style.Dash.Count == 0 ? text : text + $" stroke-dasharray=\"{string.Join(' ', style.Dash.Select(Number))}\"";
    }

    private static double Round(double value) => Math.Round(value, 3, MidpointRounding.AwayFromZero);
}
