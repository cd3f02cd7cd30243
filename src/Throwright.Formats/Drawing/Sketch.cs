using Throwright.Shapes;

namespace Throwright.Formats.Drawing;

/// <summary>Collects shapes for one <see cref="Picture"/>. Everything handed over is in units of <paramref name="unit"/> mm.</summary>
/// <param name="unit">Size in mm of the unit that the caller draws in, e.g. 25.4/96 for the pixel of style sheets.</param>
public sealed class Sketch(double unit = 1)
{
    private readonly List<Shape> shapes = [];
    private readonly Dictionary<Style, Style> scaled = [];

    /// <summary>Layer of what is drawn next.</summary>
    public string Layer { get; set; } = "drawing";

    public void Line(double x1, double y1, double x2, double y2, Style style) => Lines([new(new(x1, y1), new(x2, y2))], style);

    public void Lines(IReadOnlyCollection<Segment> parts, Style style)
    {
        if (parts.Count > 0)
            shapes.Add(new Segments(Layer, Scale(style), parts.Select(p => new Segment(Scale(p.A), Scale(p.B))).ToEquatableList()));
    }

    public void Rectangle(Box box, Style style) => Polygon(box.Corners, style);

    public void Polygon(IEnumerable<Point> points, Style style) =>
        shapes.Add(new Outline(Layer, Scale(style), points.Select(Scale).ToEquatableList(), true));

    public void Polyline(IEnumerable<Point> points, Style style) =>
        shapes.Add(new Outline(Layer, Scale(style), points.Select(Scale).ToEquatableList(), false));

    public void Circle(double x, double y, double radius, Style style) => shapes.Add(new Circle(Layer, Scale(style), Scale(new Point(x, y)), radius * unit));

    /// <summary>An arc; angles in rad, anticlockwise as seen.</summary>
    public void Arc(double x, double y, double radius, double from, double sweep, Style style) =>
        shapes.Add(new Arc(Layer, Scale(style), Scale(new Point(x, y)), radius * unit, from, sweep));

    public void Hatch(IReadOnlyList<Point> outline, double degrees, double pitch, Style style) => Lines([.. Hatching.Lines(outline, degrees, pitch)], style);

    public void Dots(Box box, double pitch, double diameter, Tone tone)
    {
        var dots = Hatching.Dots(box, pitch, diameter);
        if (dots.Count > 0)
            shapes.Add(new Dots(Layer, tone, diameter * unit, dots.Select(Scale).ToEquatableList()));
    }

    /// <summary>One line of lettering; the text is cleaned.</summary>
    /// <returns>The room it takes, in the caller's unit.</returns>
    public Box Text(
        double x, double y, double size, IEnumerable<TextSpan> spans, TextAnchor anchor = TextAnchor.Start, Tone? halo = null, bool fractions = false, double tracking = 0)
    {
        var clean = spans.Where(s => s.Text.Length > 0).Select(s => s with { Text = PlainText.Clean(s.Text) }).ToEquatableList();
        var lettering = new Lettering(Layer, Scale(new Point(x, y)), anchor, size * unit, clean, halo, fractions, tracking);
        if (clean.Count > 0)
            shapes.Add(lettering);
        var (left, top, right, bottom) = lettering.Bounds;
        return new(left / unit, top / unit, right / unit, bottom / unit);
    }

    public Box Text(
        double x, double y, double size, string text, Tone tone, bool bold = false, TextAnchor anchor = TextAnchor.Start, Tone? halo = null, bool fractions = false, double tracking = 0) =>
        Text(x, y, size, [new TextSpan(text, tone, bold)], anchor, halo, fractions, tracking);

    /// <summary>Puts the shapes of another drawing in, its corner at a place of this one.</summary>
    public void Add(Picture picture, double x, double y)
    {
        var (dx, dy) = (x * unit, y * unit);
        foreach (var shape in picture.Shapes)
            shapes.Add(Moved(shape, dx, dy));
    }

    /// <param name="ground">Tone of the paper; null: whatever the drawing is laid on.</param>
    public Picture ToPicture(double width, double height, string title, string description, Tone? ground = null)
    {
        IEnumerable<Shape> all = shapes;
        if (ground is not null)
            all = all.Prepend(new Outline("ground", Style.Area(ground), new Box(0, 0, width * unit, height * unit).Corners.ToEquatableList(), true));
        return new(width * unit, height * unit, PlainText.Clean(title), PlainText.Clean(description), all.ToEquatableList());
    }

    private static Shape Moved(Shape shape, double dx, double dy)
    {
        return shape switch
        {
            Segments s => s with { Parts = s.Parts.Select(p => new Segment(Move(p.A), Move(p.B))).ToEquatableList() },
            Outline o => o with { Points = o.Points.Select(Move).ToEquatableList() },
            Circle c => c with { Centre = Move(c.Centre) },
            Arc a => a with { Centre = Move(a.Centre) },
            Dots d => d with { Centres = d.Centres.Select(Move).ToEquatableList() },
            Lettering l => l with { At = Move(l.At) },
            _ => throw new ArgumentException($"Unknown shape {shape.GetType().Name}.", nameof(shape)),
        };

        Point Move(Point p) => new(p.X + dx, p.Y + dy);
    }

    private Point Scale(Point p) => new(p.X * unit, p.Y * unit);

    private Style Scale(Style style)
    {
        if (!scaled.TryGetValue(style, out var result))
            scaled[style] = result = style.Scaled(unit);
        return result;
    }
}
