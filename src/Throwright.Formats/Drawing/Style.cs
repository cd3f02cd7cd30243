using Throwright.Shapes;

namespace Throwright.Formats.Drawing;

/// <summary>How a shape is drawn: line and fill. Widths and dashes in mm.</summary>
public sealed record Style
{
    /// <summary>Tone of the line; null: none.</summary>
    public Tone? Stroke { get; init; }
    public double Width { get; init; }

    /// <summary>Dash, gap, dash, gap ...; empty: a full line.</summary>
    public EquatableList<double> Dash { get; init; } = [];

    /// <summary>Tone of the area; null: open.</summary>
    public Tone? Fill { get; init; }

    public static Style Line(Tone stroke, double width, params ReadOnlySpan<double> dash) =>
        new() { Stroke = stroke, Width = width, Dash = EquatableList.Of(dash) };

    public static Style Area(Tone fill) => new() { Fill = fill };

    public static Style Outlined(Tone fill, Tone stroke, double width, params ReadOnlySpan<double> dash) =>
        new() { Fill = fill, Stroke = stroke, Width = width, Dash = EquatableList.Of(dash) };

    internal Style Scaled(double by) => by == 1 ? this : this with { Width = Width * by, Dash = Dash.Select(d => d * by).ToEquatableList() };
}
