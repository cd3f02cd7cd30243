using Throwright.Engine.Model;
using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;
using Throwright.Shapes.Numerics;

namespace Throwright.Papers.Board;

/// <summary>Knobs and handles as they look, in their own colours. The only drawings in which red may stand.</summary>
public static class Handle
{
    /// <summary>Layer of every handle; a test lets red stand nowhere else.</summary>
    public const string Layer = "handle";

    /// <summary>As the pilot sees it, in a square of 40 px.</summary>
    public static Picture Face(CockpitEnd? end, string name)
    {
        var sketch = new Sketch(Lines.Px) { Layer = Layer };
        var style = Fill(end);
        switch (end?.Knob)
        {
            case KnobShape.THandle:
                sketch.Polygon(Ellipse(20, 20, 7.5, 8.5), style);
                sketch.Polygon(Rounded(1, 13.5, 39, 26.5, 6.4), style);
                break;
            case KnobShape.LeverHandle:
                sketch.Polygon(Rounded(13, 2, 27, 38, 6), style);
                sketch.Circle(20, 20, 4, Style.Line(Edge(end), 1.4));
                break;
            case null:
                sketch.Circle(20, 20, 16, Lines.Unknown);
                break;
            default:
                sketch.Circle(20, 20, 17, style);
                sketch.Circle(20, 20, 6, Style.Line(Edge(end), 1.2));
                break;
        }

        var colour = end?.KnobColour is { Length: > 0 } c ? c + " " : "";
        var shape = end?.Knob switch { KnobShape.THandle => "T-handle", KnobShape.LeverHandle => "lever handle", null => "knob, not described yet", _ => "knob" };
        return sketch.ToPicture(40, 40, $"{name}: {colour}{shape}", "");
    }

    /// <summary>From the side, its back at a place along the shank; px.</summary>
    /// <param name="x">Back of the knob.</param>
    /// <param name="y">Axis of the shank.</param>
    internal static void Side(Sketch sketch, CockpitEnd? end, double x, double y, double height)
    {
        var layer = sketch.Layer;
        sketch.Layer = Layer;
        var style = end is null ? Lines.Unknown : Fill(end);
        var half = 0.5 * height;
        switch (end?.Knob)
        {
            case KnobShape.THandle:
                sketch.Polygon(Rounded(x + 0.5, y - half, x + 22, y + half, 10), style);
                break;
            case KnobShape.LeverHandle:
                sketch.Polygon([new(x, y - 6), new(x + 8, y - 7), new(x + 20, y - half), new(x + 30, y - half + 4), new(x + 20, y + 9), new(x, y + 6)], style);
                break;
            default:
                sketch.Polygon([new(x, y - 0.3 * half), new(x + 7, y - 0.26 * half), new(x + 7, y + 0.26 * half), new(x, y + 0.3 * half)], style);
                sketch.Polygon(Ellipse(x + 20, y, 14, 0.78 * half), style);
                break;
        }

        sketch.Layer = layer;
    }

    private static Style Fill(CockpitEnd? end) => Style.Outlined(Colour(end), Edge(end), 1.5);

    private static Tone Edge(CockpitEnd? end) => Colour(end) == Tones.KnobBlack ? Tones.Edge : Tones.Ink;

    private static Tone Colour(CockpitEnd? end)
    {
        var words = (end?.KnobColour ?? "").ToLowerInvariant().Split([' ', ',', '-', '/'], StringSplitOptions.RemoveEmptyEntries);
        return words.Contains("red") ? Tones.KnobRed
            : words.Contains("white") ? Tones.KnobWhite
            : words.Contains("blue") ? Tones.KnobBlue
            : words.Contains("black") || words.Length == 0 ? Tones.KnobBlack
            : Tones.Paper;
    }

    private static IEnumerable<Point> Ellipse(double x, double y, double a, double b)
    {
        for (var i = 0; i < 32; i++)
            yield return new(x + (a * Elementary.Cos(i * Math.PI / 16)), y + (b * Elementary.Sin(i * Math.PI / 16)));
    }

    private static IEnumerable<Point> Rounded(double left, double top, double right, double bottom, double radius)
    {
        (double X, double Y, double From)[] corners = [(right - radius, bottom - radius, 0), (left + radius, bottom - radius, 0.5), (left + radius, top + radius, 1), (right - radius, top + radius, 1.5)];
        foreach (var (x, y, from) in corners)
        {
            for (var i = 0; i <= 6; i++)
            {
                var angle = (from + (i / 12.0)) * Math.PI;
                yield return new(x + (radius * Elementary.Cos(angle)), y + (radius * Elementary.Sin(angle)));
            }
        }
    }
}
