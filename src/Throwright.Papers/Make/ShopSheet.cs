using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;
using Throwright.Shapes.Solids;

namespace Throwright.Papers.Make;

/// <summary>A sheet of paper for a drawing at true size, mm.</summary>
public sealed record ShopPaper(double Width, double Height)
{
    public static ShopPaper A4 { get; } = new(210, 297);

    public static ShopPaper Letter { get; } = new(215.9, 279.4);

    /// <summary>The long side level.</summary>
    public ShopPaper Turned() => new(Height, Width);
}

/// <summary>Puts shapes given in m, y up from an origin on the paper, on a sheet in mm, y down.</summary>
internal sealed class ShopSheet(Point origin)
{
    /// <summary>Layers that a cutter reads: nothing but closed outlines lies on the first two.</summary>
    public const string Outline = "outline", Holes = "holes", Bend = "bend", Centre = "center", Scale = "scale", Words = "text";

    public const double Text = 3, Title = 5;

    private const double Mm = 1000;

    // Thick to thin 2 : 1, as ASME Y14.2 has it (read in excerpt).
    public static readonly Style Thick = Style.Line(Tones.Ink, 0.6), Thin = Style.Line(Tones.Ink, 0.3);
    public static readonly Style ThinCentre = Style.Line(Tones.Ink, 0.3, 4, 1, 1, 1), Dashed = Style.Line(Tones.Ink, 0.3, 2, 1), Phantom = Style.Line(Tones.Ink, 0.3, 5, 1, 1, 1, 1, 1);

    public Sketch Sketch { get; } = new();

    public Point At(Vector2 place) => new(origin.X + (Mm * place.X), origin.Y - (Mm * place.Y));

    public void Line(string layer, Vector2 from, Vector2 to, Style style)
    {
        Sketch.Layer = layer;
        Point a = At(from), b = At(to);
        Sketch.Line(a.X, a.Y, b.X, b.Y, style);
    }

    public void Profile(string layer, Profile profile, Style style)
    {
        Sketch.Layer = layer;
        if (profile.Stretches.All(s => s.Centre == profile.Stretches[0].Centre && s.IsArc) && Math.Abs(profile.Stretches.Sum(s => s.Sweep) - (2 * Math.PI)) < 1e-9)
        {
            var centre = At(profile.Stretches[0].Centre!.Value);
            Sketch.Circle(centre.X, centre.Y, Mm * profile.Stretches[0].Radius, style);
            return;
        }

        foreach (var s in profile.Stretches)
        {
            if (s.Centre is { } centre)
                Sketch.Arc(At(centre).X, At(centre).Y, Mm * s.Radius, s.StartAngle, s.Sweep, style);
            else
                Line(layer, s.From, s.To, style);
        }
    }

    /// <summary>An ellipse as a polygon that leaves it by less than 0.005 mm.</summary>
    public void Ellipse(string layer, Vector2 centre, double along, double across, double direction, Style style)
    {
        Sketch.Layer = layer;
        var count = (int)Math.Ceiling(2 * Math.PI * Math.Sqrt(Mm * Math.Max(along, across) / (8 * 0.005)));
        Vector2 x = Vector2.Polar(along, direction), y = Vector2.Polar(across, direction + (Math.PI / 2));
        Sketch.Polygon(Enumerable.Range(0, count).Select(i => Vector2.Polar(1, 2 * Math.PI * i / count)).Select(p => At(centre + (p.X * x) + (p.Y * y))), style);
    }

    /// <summary>A shaft with a filled head at the end, and a word at its start, or at its end.</summary>
    /// <param name="side">How the word hangs on its place; null: by the arrow's direction.</param>
    public void Arrow(Vector2 from, Vector2 to, string word, bool wordAtEnd, TextAnchor? side = null)
    {
        const double length = 3, half = 0.5;
        Point a = At(from), b = At(to);
        double dx = b.X - a.X, dy = b.Y - a.Y, size = Math.Sqrt((dx * dx) + (dy * dy));
        (dx, dy) = (dx / size, dy / size);
        Sketch.Layer = Words;
        Sketch.Line(a.X, a.Y, b.X - (length * dx), b.Y - (length * dy), Thin);
        Sketch.Polygon([b, new(b.X - (length * dx) - (half * dy), b.Y - (length * dy) + (half * dx)), new(b.X - (length * dx) + (half * dy), b.Y - (length * dy) - (half * dx))], Style.Area(Tones.Ink));
        // Beyond the end it stands on, clear of the shaft.
        var (x, y) = wordAtEnd ? (b.X + (3 * dx), b.Y + (3 * dy)) : (a.X - (3 * dx), a.Y - (3 * dy));
        var turn = wordAtEnd ? dx : -dx;
        var anchor = side ?? (turn > 0.3 ? TextAnchor.Start : turn < -0.3 ? TextAnchor.End : TextAnchor.Middle);
        Sketch.Text(x, y + (0.26 * Text), Text, word, Tones.Ink, anchor: anchor, halo: Tones.Paper);
    }

    /// <summary>Title, then lines of text, from the upper left corner.</summary>
    /// <returns>Where the next line would stand, mm from the top.</returns>
    public double Head(ShopPaper paper, ShopTitle title, string what, IEnumerable<string> lines)
    {
        const double margin = 12;
        Sketch.Layer = Words;
        var (y, room) = (margin + Title, paper.Width - (2 * margin));
        // Smaller where it is long: a name that is cut could be another part's.
        var head = $"{title.Part}: {what}, true size 1 : 1";
        var size = Math.Max(0.6 * Title, Title * Math.Min(1, room / TextMeasure.Width(head, Title, true)));
        Sketch.Text(margin, y, size, TextMeasure.Fit(head, size, room, true), Tones.Ink, bold: true);
        y += 2.2 * Text;
        Sketch.Text(margin, y, Text, TextMeasure.Fit(string.Join(", ", new[] { title.Aircraft, title.Number, title.Date }.Where(t => t.Length > 0)), Text, room), Tones.Ink);
        y += 1.5 * Text;
        if (title.Hold.Length > 0)
        {
            new Draughting(Sketch).Hold(new(margin, y - Text, margin + 98, y + 5), title.Hold);
            y += 5 + (1.8 * Text);
        }

        Sketch.Layer = Words;
        foreach (var line in lines.SelectMany(l => TextMeasure.Wrap(l, Text, paper.Width - (2 * margin))))
        {
            Sketch.Text(margin, y, Text, line, Tones.Ink);
            y += 1.5 * Text;
        }

        return y;
    }

    /// <summary>A word on a line with a place.</summary>
    public void Word(Vector2 at, string word)
    {
        Sketch.Layer = Words;
        Sketch.Text(At(at).X, At(at).Y, Text, word, Tones.Ink);
    }

    /// <summary>A heading and lines below it.</summary>
    public void List(Vector2 at, string heading, IEnumerable<string> lines)
    {
        Sketch.Layer = Words;
        var (x, y) = At(at);
        Sketch.Text(x, y, Text, heading, Tones.Ink, bold: true);
        foreach (var line in lines)
            Sketch.Text(x, y += 1.5 * Text, Text, line, Tones.Ink);
    }

    /// <summary>The two bars that prove the print.</summary>
    public void Bars(Vector2 corner, double length)
    {
        foreach (var way in (Vector2[])[new(length, 0), new(0, length)])
        {
            Line(Scale, corner, corner + way, Thick);
            var across = 1.5e-3 / length * new Vector2(way.Y, way.X);
            foreach (var end in (Vector2[])[corner, corner + way])
                Line(Scale, end - across, end + across, Thick);
        }

        Sketch.Layer = Words;
        var at = At(corner + new Vector2(0.5 * length, 0));
        Sketch.Text(at.X, at.Y + (1.5 * Text), Text, "100 mm: measure both bars first", Tones.Ink, anchor: TextAnchor.Middle);
    }

    public Picture ToPicture(ShopPaper paper, string title, string description) => Sketch.ToPicture(paper.Width, paper.Height, title, description, Tones.Paper);
}
