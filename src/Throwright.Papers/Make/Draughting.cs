using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;
using Throwright.Shapes.Solids;

namespace Throwright.Papers.Make;

/// <summary>A view of a part on the paper: m, y up, at a scale about an origin in mm, y down.</summary>
/// <param name="Scale">2: twice as large as the part.</param>
internal sealed record ShopView(Point Origin, double Scale)
{
    public Point At(double x, double y) => new(Origin.X + (1000 * Scale * x), Origin.Y - (1000 * Scale * y));

    public Point At(Vector2 place) => At(place.X, place.Y);

    public double Mm(double metres) => 1000 * Scale * metres;
}

/// <summary>Draws lines and dimensions of a shop drawing, in mm on the paper, y down.</summary>
/// <remarks>
/// First dimension line 10 mm from the outline, further ones 7 mm apart; extension lines leave a gap at the part and run past
/// the dimension line; solid arrowheads three times as long as wide; text above an unbroken line (NAVEDTRA 14069 ch. 3 and 10;
/// ANSI Y14.5 1.7.1 and 1.7.2, read in a reproduction). Gap and overshoot as the draughtsman's usual: common practice.
/// </remarks>
internal sealed class Draughting(Sketch sketch)
{
    public const double Text = 3, First = 10, Next = 7;
    private const double Gap = 1.5, Over = 2, ArrowLength = 3, ArrowHalf = 0.5, Tail = 5, Above = 1;

    public const string Dim = "dim";

    public Sketch Sketch => sketch;

    public void Line(string layer, Point a, Point b, Style style)
    {
        sketch.Layer = layer;
        sketch.Line(a.X, a.Y, b.X, b.Y, style);
    }

    public void Polygon(string layer, IEnumerable<Point> points, Style style)
    {
        sketch.Layer = layer;
        sketch.Polygon(points, style);
    }

    /// <summary>A cut face: outline and hatching.</summary>
    /// <param name="degrees">Direction of the hatching; parts that touch take different ones.</param>
    public void Cut(IReadOnlyList<Point> outline, double degrees, double pitch = 2.5)
    {
        sketch.Layer = "hatch";
        sketch.Hatch(outline, degrees, pitch, ShopSheet.Thin);
        Polygon(ShopSheet.Outline, outline, ShopSheet.Thick);
    }

    public void Ellipse(string layer, ShopView view, Vector2 centre, double along, double across, Style style)
    {
        if (along == across)
        {
            sketch.Layer = layer;
            var at = view.At(centre);
            sketch.Circle(at.X, at.Y, view.Mm(along), style);
            return;
        }

        // A polygon that leaves the ellipse by less than 0.005 mm on the paper.
        var count = (int)Math.Ceiling(2 * Math.PI * Math.Sqrt(view.Mm(Math.Max(along, across)) / (8 * 0.005)));
        Polygon(layer, Enumerable.Range(0, count).Select(i => Vector2.Polar(1, 2 * Math.PI * i / count)).Select(p => view.At(centre.X + (along * p.X), centre.Y + (across * p.Y))), style);
    }

    public void Profile(string layer, ShopView view, Profile profile, Style style)
    {
        sketch.Layer = layer;
        foreach (var s in profile.Stretches)
        {
            if (s.Centre is { } centre)
                sketch.Arc(view.At(centre).X, view.At(centre).Y, view.Mm(s.Radius), s.StartAngle, s.Sweep, style);
            else
                Line(layer, view.At(s.From), view.At(s.To), style);
        }
    }

    /// <summary>A solid arrowhead whose tip is at a place, pointing along (dx, dy).</summary>
    public void Head(Point tip, double dx, double dy)
    {
        var size = Math.Sqrt((dx * dx) + (dy * dy));
        (dx, dy) = (dx / size, dy / size);
        double x = tip.X - (ArrowLength * dx), y = tip.Y - (ArrowLength * dy);
        sketch.Layer = Dim;
        sketch.Polygon([tip, new(x - (ArrowHalf * dy), y + (ArrowHalf * dx)), new(x + (ArrowHalf * dy), y - (ArrowHalf * dx))], Style.Area(Tones.Ink));
    }

    public Box Words(double x, double y, string text, TextAnchor anchor = TextAnchor.Start, bool bold = false, double size = Text)
    {
        sketch.Layer = ShopSheet.Words;
        return sketch.Text(x, y, size, text, Tones.Ink, bold, anchor);
    }

    /// <summary>A plate in reverse: what must be read before anything is made.</summary>
    public void Hold(Box box, string words)
    {
        Polygon(ShopSheet.Words, box.Corners, Style.Area(Tones.Plate));
        var size = Math.Min(4, 4 * (box.Width - 4) / TextMeasure.Width(words, 4, bold: true));
        sketch.Text(box.Left + 2, 0.5 * (box.Top + box.Bottom) + (0.36 * size), size, words, Tones.OnPlate, bold: true);
    }

    /// <summary>Width between two places, its line at a height; the text stands above it, or beyond its right end where it does not fit.</summary>
    public void Across(Point a, Point b, double y, string text)
    {
        if (a.X > b.X)
            (a, b) = (b, a);
        foreach (var end in (Point[])[a, b])
            Extension(end, new(end.X, y), 0, Math.Sign(y - end.Y));
        var inside = b.X - a.X >= 4 * ArrowLength;
        Run(new(a.X, y), new(b.X, y), inside);
        if (TextMeasure.Width(text, Text) + 1 < b.X - a.X)
            Words(0.5 * (a.X + b.X), y - Above, text, TextAnchor.Middle);
        else
            Words(b.X + (inside ? Over : ArrowLength + Tail) + 1.5, y + (0.35 * Text), text);
    }

    /// <summary>Height between two places, its line at a distance to the side; the text stands beyond it.</summary>
    /// <param name="keepAbove">A height that the text stays above, whatever the size.</param>
    public void Upright(Point a, Point b, double x, string text, double keepAbove = double.PositiveInfinity)
    {
        if (a.Y > b.Y)
            (a, b) = (b, a);
        var side = Math.Sign(x - Math.Max(a.X, b.X)) is 1 ? 1 : -1;
        foreach (var end in (Point[])[a, b])
            Extension(end, new(x, end.Y), side, 0);
        Run(new(x, a.Y), new(x, b.Y), b.Y - a.Y >= 4 * ArrowLength);
        Words(x + (side * (Over + 1.5)), Math.Min((0.5 * (a.Y + b.Y)) + (0.35 * Text), keepAbove - 1.2), text, side > 0 ? TextAnchor.Start : TextAnchor.End);
    }

    /// <summary>Angle at a vertex from the level line to the right, downward, with both sides drawn; the text stands to the right.</summary>
    public void AngleBelowLevel(Point vertex, double angle, double radius, string text)
    {
        Point On(double turned, double r) => new(vertex.X + (r * Math.Cos(turned)), vertex.Y + (r * Math.Sin(turned)));
        Line(Dim, On(0, Gap), On(0, radius + Over), ShopSheet.Thin);
        Line(Dim, On(angle, Gap), On(angle, radius + Over), ShopSheet.Thin);
        // Arrows from outside: there is room at any angle.
        var tail = (ArrowLength + Tail) / radius;
        sketch.Layer = Dim;
        sketch.Arc(vertex.X, vertex.Y, radius, 0, tail, ShopSheet.Thin);
        sketch.Arc(vertex.X, vertex.Y, radius, -angle - tail, tail, ShopSheet.Thin);
        sketch.Arc(vertex.X, vertex.Y, radius, -angle, angle, ShopSheet.Thin);
        Head(On(0, radius), 0, 1);
        Head(On(angle, radius), Math.Sin(angle), -Math.Cos(angle));
        Words(vertex.X + radius + Over + 1.5, On(0.5 * angle, radius).Y + (0.35 * Text), text);
    }

    /// <summary>An arrow to a place, a knee, and text on a short shoulder.</summary>
    public void Leader(Point tip, Point knee, string text, bool dot = false)
    {
        var side = knee.X >= tip.X ? 1 : -1;
        Line(Dim, tip, knee, ShopSheet.Thin);
        Line(Dim, knee, new(knee.X + (2 * side), knee.Y), ShopSheet.Thin);
        if (dot)
            sketch.Circle(tip.X, tip.Y, 0.6, Style.Area(Tones.Ink));
        else
            Head(tip, tip.X - knee.X, tip.Y - knee.Y);
        Words(knee.X + (3 * side), knee.Y + (0.35 * Text), text, side > 0 ? TextAnchor.Start : TextAnchor.End);
    }

    /// <summary>A boxed letter on a face: the triangle stands on the face, the box away from the material along (dx, dy), unit length.</summary>
    public void Datum(Point onFace, double dx, double dy, string letter)
    {
        const double foot = 2.5, half = 1.25, box = 4.6;
        sketch.Layer = Dim;
        Point tip = new(onFace.X + (foot * dx), onFace.Y + (foot * dy));
        sketch.Polygon([tip, new(onFace.X - (half * dy), onFace.Y + (half * dx)), new(onFace.X + (half * dy), onFace.Y - (half * dx))], Style.Area(Tones.Ink));
        Point middle = new(onFace.X + ((foot + (0.5 * box)) * dx), onFace.Y + ((foot + (0.5 * box)) * dy));
        // The box stays upright; a face that leans a little still meets it.
        sketch.Rectangle(new(middle.X - (0.5 * box), middle.Y - (0.5 * box), middle.X + (0.5 * box), middle.Y + (0.5 * box)), ShopSheet.Thin);
        Words(middle.X, middle.Y + (0.36 * Text), letter, TextAnchor.Middle, bold: true);
    }

    /// <summary>The line of a section with its letter at both ends; one looks along (0, -1) on the paper: up.</summary>
    public void SectionLine(Point a, Point b, string letter)
    {
        const double thick = 6, up = 6;
        Line(ShopSheet.Centre, new(a.X + thick, a.Y), new(b.X - thick, b.Y), ShopSheet.ThinCentre);
        Line(Dim, a, new(a.X + thick, a.Y), ShopSheet.Thick);
        Line(Dim, new(b.X - thick, b.Y), b, ShopSheet.Thick);
        foreach (var (end, side) in ((Point, int)[])[(a, -1), (b, 1)])
        {
            Line(Dim, end, new(end.X, end.Y - up + ArrowLength), ShopSheet.Thin);
            Head(new(end.X, end.Y - up), 0, -1);
            Words(end.X + (side * 1.8), end.Y - 1.5, letter, side > 0 ? TextAnchor.Start : TextAnchor.End, bold: true, size: 4);
        }
    }

    private void Extension(Point from, Point to, int dx, int dy) =>
        Line(Dim, new(from.X + (Gap * dx), from.Y + (Gap * dy)), new(to.X + (Over * dx), to.Y + (Over * dy)), ShopSheet.Thin);

    private void Run(Point a, Point b, bool inside)
    {
        double dx = b.X - a.X, dy = b.Y - a.Y, size = Math.Sqrt((dx * dx) + (dy * dy));
        (dx, dy) = (dx / size, dy / size);
        var out_ = inside ? 0 : ArrowLength + Tail;
        Line(Dim, new(a.X - (out_ * dx), a.Y - (out_ * dy)), new(b.X + (out_ * dx), b.Y + (out_ * dy)), ShopSheet.Thin);
        Head(a, inside ? -dx : dx, inside ? -dy : dy);
        Head(b, inside ? dx : -dx, inside ? dy : -dy);
    }
}
