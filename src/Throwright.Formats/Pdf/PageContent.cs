using System.Globalization;
using System.Text;
using Throwright.Formats.Drawing;
using Throwright.Formats.Fonts;
using Throwright.Shapes.Numerics;
using static Throwright.Formats.Pdf.PdfWriter;

namespace Throwright.Formats.Pdf;

/// <summary>The shapes of one drawing as the operators of a page (ISO 32000-1, 8 and 9), in mm, y down.</summary>
internal sealed class PageContent
{
    /// <summary>Largest distance of a drawn arc from the true one, mm.</summary>
    private const double ArcError = 0.0005;

    private readonly StringBuilder page = new();
    private readonly Palette palette;
    private readonly FaceUses faces;
    private readonly Dictionary<string, string> state = [];

    private PageContent(Palette palette, FaceUses faces) => (this.palette, this.faces) = (palette, faces);

    public static string Of(Picture picture, Palette palette, FaceUses faces)
    {
        var content = new PageContent(palette, faces);
        // Miter limit as in SVG.
        content.page.Append(CultureInfo.InvariantCulture, $"{Number(Points, 10)} 0 0 {Number(-Points, 10)} 0 {Number(picture.Height * Points)} cm\n4 M\n");
        foreach (var shape in picture.Shapes)
            content.Put(shape);
        return content.page.ToString();
    }

    private void Put(Shape shape)
    {
        switch (shape)
        {
            case Segments s:
                Set(s.Style);
                foreach (var (a, b) in s.Parts)
                    page.Append($"{Say(a)} m {Say(b)} l ");
                Paint(s.Style);
                break;
            case Outline { AsBox: { } box } o:
                Set(o.Style);
                page.Append($"{Number(box.Left)} {Number(box.Top)} {Number(box.Width)} {Number(box.Height)} re ");
                Paint(o.Style);
                break;
            case Outline { Points.Count: > 0 } o:
                Set(o.Style);
                page.Append($"{Say(o.Points[0])} m ");
                foreach (var p in o.Points.Skip(1))
                    page.Append($"{Say(p)} l ");
                if (o.Closed)
                    page.Append("h ");
                Paint(o.Style);
                break;
            case Outline:
                break;
            case Circle c:
                Set(c.Style);
                Curve(new(c.Layer, c.Style, c.Centre, c.Radius, 0, 2 * Math.PI));
                page.Append("h ");
                Paint(c.Style);
                break;
            case Arc a:
                Set(a.Style);
                Curve(a);
                Paint(a.Style);
                break;
            case Dots d:
                // A line of no length with round ends is a dot.
                Set(Style.Line(d.Tone, d.Diameter));
                Set("J", "1 J");
                foreach (var at in d.Centres)
                    page.Append($"{Say(at)} m {Say(at)} l ");
                page.Append("S\n");
                Set("J", "0 J");
                break;
            case Lettering l:
                Text(l);
                break;
            default:
                throw new ArgumentException($"Unknown shape {shape.GetType().Name}.", nameof(shape));
        }
    }

    /// <summary>An arc in cubic pieces, so many that it is true to half a micrometre.</summary>
    /// <remarks>A piece of angle t leaves the circle by 2.725e-4 r (t / 90°)^6 at most: derived in docs/theory/make.md.</remarks>
    private void Curve(Arc arc)
    {
        var quarters = Math.Abs(arc.Sweep) / (Math.PI / 2);
        var pieces = Math.Max(1, (int)Math.Ceiling(quarters));
        while (Error(quarters / pieces) > ArcError)
            pieces++;
        var step = arc.Sweep / pieces;
        var reach = 4.0 / 3 * Elementary.Sin(step / 4) / Elementary.Cos(step / 4) * arc.Radius;
        page.Append($"{Say(arc.At(arc.From))} m ");
        for (var i = 0; i < pieces; i++)
        {
            double from = arc.From + (i * step), to = from + step;
            Point a = arc.At(from), b = arc.At(to);
            // Tangents, anticlockwise as seen while y points down.
            Point p = new(a.X - (reach * Elementary.Sin(from)), a.Y - (reach * Elementary.Cos(from)));
            Point q = new(b.X + (reach * Elementary.Sin(to)), b.Y + (reach * Elementary.Cos(to)));
            page.Append($"{Say(p)} {Say(q)} {Say(b)} c ");
        }

        double Error(double quarter) => 2.725e-4 * arc.Radius * quarter * quarter * quarter * quarter * quarter * quarter;
    }

    private void Text(Lettering text)
    {
        var spans = text.Spans.Select(s => (s.Tone, Letters: SetText.Letters(s.Text, s.Bold, text.Fractions))).ToList();
        double Advance(SetLetter l) => l.Advance == 0 ? 0 : (l.Advance + text.Tracking) * text.Size;
        var width = spans.Sum(s => s.Letters.Sum(Advance));
        var left = text.At.X - (text.Anchor switch { TextAnchor.Start => 0, TextAnchor.Middle => 0.5 * width, _ => width });
        if (text.Halo is { } halo)
        {
            // Twice on the page, but once only for who reads the text: the edge is marked as decoration.
            page.Append("/Artifact BMC\n");
            Set("w", $"{Number(2 * Lettering.HaloShare * text.Size)} w");
            Set("d", "[] 0 d");
            Set("j", "1 j");
            Runs(1, _ => Stroke(halo));
            Set("j", "0 j");
            page.Append("EMC\n");
        }

        Runs(0, Fill);

        void Runs(int mode, Action<Tone> ink)
        {
            var x = left;
            foreach (var (tone, letters) in spans)
            {
                ink(tone);
                for (var i = 0; i < letters.Count;)
                {
                    var use = faces.Of(letters[i].Face);
                    var start = x;
                    var codes = new StringBuilder();
                    for (; i < letters.Count && letters[i].Face == use.Face; i++)
                    {
                        codes.Append(use.Code(letters[i]).ToString("X4", CultureInfo.InvariantCulture));
                        x += Advance(letters[i]);
                    }

                    var tracking = text.Tracking == 0 ? "" : $"{Number(text.Tracking * text.Size)} Tc ";
                    page.Append($"BT /{use.Key} {Number(text.Size)} Tf {mode} Tr {tracking}1 0 0 -1 {Number(start)} {Number(text.At.Y)} Tm <{codes}> Tj ET\n");
                    if (tracking.Length > 0)
                        page.Append("0 Tc\n");
                }
            }
        }
    }

    private void Set(Style style)
    {
        if (style.Fill is { } fill)
            Fill(fill);
        if (style.Stroke is not { } stroke)
            return;
        Stroke(stroke);
        Set("w", $"{Number(style.Width)} w");
        Set("d", $"[{string.Join(' ', style.Dash.Select(d => Number(d)))}] 0 d");
    }

    private void Paint(Style style) =>
        page.Append((style.Fill, style.Stroke) switch { (null, null) => "n\n", (null, _) => "S\n", (_, null) => "f\n", _ => "B\n" });

    private void Fill(Tone tone) => Set("fill", Ink(tone, "g", "rg"));

    private void Stroke(Tone tone) => Set("stroke", Ink(tone, "G", "RG"));

    private string Ink(Tone tone, string grey, string colour)
    {
        var (red, green, blue) = palette[tone];
        return red == green && green == blue ? $"{Share(red)} {grey}" : $"{Share(red)} {Share(green)} {Share(blue)} {colour}";
        static string Share(byte value) => Number(value / 255.0, 4);
    }

    /// <summary>Writes an operator if what it sets is not set already.</summary>
    private void Set(string what, string operation)
    {
        if (state.GetValueOrDefault(what) == operation)
            return;
        state[what] = operation;
        page.Append(operation).Append('\n');
    }

    private static string Say(Point p) => $"{Number(p.X)} {Number(p.Y)}";
}
