using Throwright.Shapes;

namespace Throwright.Formats.Drawing;

/// <summary>One thing drawn. Coordinates in mm.</summary>
/// <param name="Layer">Name of the layer: lower-case letters, digits and hyphens.</param>
public abstract record Shape(string Layer)
{
    /// <summary>Room taken, without the line's own width.</summary>
    public abstract Box Bounds { get; }
}

/// <summary>A straight line from A to B.</summary>
public readonly record struct Segment(Point A, Point B);

/// <summary>Straight lines that share one style: ticks, hatching, leaders.</summary>
public sealed record Segments(string Layer, Style Style, EquatableList<Segment> Parts) : Shape(Layer)
{
    public override Box Bounds => Box.Around(Parts.SelectMany(p => (Point[])[p.A, p.B]));
}

/// <summary>A line through points, open or closed.</summary>
public sealed record Outline(string Layer, Style Style, EquatableList<Point> Points, bool Closed) : Shape(Layer)
{
    public override Box Bounds => Box.Around(Points);

    /// <summary>The box this outline is, or null if it is another shape.</summary>
    public Box? AsBox =>
        Closed && Points.Count == 4 && Points[0].Y == Points[1].Y && Points[1].X == Points[2].X && Points[2].Y == Points[3].Y && Points[3].X == Points[0].X
            ? Bounds
            : null;
}

public sealed record Circle(string Layer, Style Style, Point Centre, double Radius) : Shape(Layer)
{
    public override Box Bounds => new(Centre.X - Radius, Centre.Y - Radius, Centre.X + Radius, Centre.Y + Radius);
}

/// <summary>An arc of a circle. Angles in rad from the x axis, anticlockwise as seen on the paper.</summary>
public sealed record Arc(string Layer, Style Style, Point Centre, double Radius, double From, double Sweep) : Shape(Layer)
{
    public override Box Bounds
    {
        get
        {
            var points = new List<Point> { At(From), At(From + Sweep) };
            double low = Math.Min(From, From + Sweep), high = Math.Max(From, From + Sweep);
            for (var quarter = (int)Math.Ceiling(low / (Math.PI / 2)); quarter * (Math.PI / 2) <= high; quarter++)
                points.Add(At(quarter * (Math.PI / 2)));
            return Box.Around(points);
        }
    }

    public Point At(double angle) =>
        new(Centre.X + (Radius * Shapes.Numerics.Elementary.Cos(angle)), Centre.Y - (Radius * Shapes.Numerics.Elementary.Sin(angle)));
}

/// <summary>Round dots of one size.</summary>
public sealed record Dots(string Layer, Tone Tone, double Diameter, EquatableList<Point> Centres) : Shape(Layer)
{
    public override Box Bounds => Box.Around(Centres).Grown(0.5 * Diameter);
}

/// <summary>Which part of the lettering stands at its place.</summary>
public enum TextAnchor
{
    Start,
    Middle,
    End,
}

/// <summary>Part of a line of lettering in one weight and tone.</summary>
public sealed record TextSpan(string Text, Tone Tone, bool Bold = false);

/// <summary>One line of lettering, upright. At is on the base line.</summary>
/// <param name="Size">Type size in mm.</param>
/// <param name="Halo">Tone of the edge that keeps lines off the letters; null: none.</param>
/// <param name="Fractions">"1 3/4" may be set as a built-up fraction (never for dates, ratios and paths).</param>
/// <param name="Tracking">Extra room after each letter, in type sizes.</param>
public sealed record Lettering(
    string Layer, Point At, TextAnchor Anchor, double Size, EquatableList<TextSpan> Spans, Tone? Halo, bool Fractions, double Tracking = 0) : Shape(Layer)
{
    /// <summary>Width of the halo on each side, in type sizes.</summary>
    public const double HaloShare = 0.14;

    /// <summary>Height of the tallest letter above and depth of the deepest below the base line, in type sizes.</summary>
    public const double Rise = 0.76;

    public const double Drop = 0.24;

    public double Width => TextMeasure.Width(Spans, Size, Tracking);

    public string PlainText => string.Concat(Spans.Select(s => s.Text));

    public override Box Bounds
    {
        get
        {
            var width = Width;
            var left = At.X - (Anchor switch { TextAnchor.Start => 0, TextAnchor.Middle => 0.5 * width, _ => width });
            return new(left, At.Y - (Rise * Size), left + width, At.Y + (Drop * Size));
        }
    }
}
