using Throwright.Shapes;

namespace Throwright.Formats.Drawing;

/// <summary>Letters of single strokes for an engraver's or a plotter's tool: capitals, figures and a few signs.</summary>
/// <remarks>
/// Drawn for this project on a grid 4 wide and 6 high, arcs as short chords. Plain, without serifs, width 2/3 of the height, as
/// the handbooks ask of labels (width 3/5 to 1 of the height: DOD-HDBK-791).
/// </remarks>
public static class StrokeLetters
{
    private const double Height = 6;

    /// <summary>Room between letters, in heights.</summary>
    private const double Between = 1.6 / Height;

    private static readonly Dictionary<char, (double Width, Point[][] Strokes)> Letters = new()
    {
        ['A'] = (4, [[new(0, 0), new(2, 6), new(4, 0)], [new(0.75, 2.25), new(3.25, 2.25)]]),
        ['B'] = (4, [[new(0, 0), new(0, 6), new(2.6, 6), .. Arc(2.6, 4.6, 1.4, 90, -90), new(0, 3.2)], [new(2.6, 3.2), .. Arc(2.4, 1.6, 1.6, 90, -90), new(0, 0)]]),
        ['C'] = (4, [[.. Arc(2, 4, 2, 25, 180), .. Arc(2, 2, 2, 180, 335)]]),
        ['D'] = (4, [[new(0, 0), new(0, 6), new(2, 6), .. Arc(2, 4, 2, 90, 0), .. Arc(2, 2, 2, 0, -90), new(0, 0)]]),
        ['E'] = (3.6, [[new(3.6, 6), new(0, 6), new(0, 0), new(3.6, 0)], [new(0, 3.1), new(2.9, 3.1)]]),
        ['F'] = (3.6, [[new(3.6, 6), new(0, 6), new(0, 0)], [new(0, 3.1), new(2.9, 3.1)]]),
        ['G'] = (4, [[.. Arc(2, 4, 2, 25, 180), .. Arc(2, 2, 2, 180, 360), new(4, 2.8), new(2.3, 2.8)]]),
        ['H'] = (4, [[new(0, 0), new(0, 6)], [new(4, 0), new(4, 6)], [new(0, 3.1), new(4, 3.1)]]),
        ['I'] = (0, [[new(0, 0), new(0, 6)]]),
        ['J'] = (3.4, [[new(3.4, 6), new(3.4, 1.7), .. Arc(1.7, 1.7, 1.7, 0, -180)]]),
        ['K'] = (4, [[new(0, 0), new(0, 6)], [new(4, 6), new(0, 2.4)], [new(1.35, 3.6), new(4, 0)]]),
        ['L'] = (3.4, [[new(0, 6), new(0, 0), new(3.4, 0)]]),
        ['M'] = (4.6, [[new(0, 0), new(0, 6), new(2.3, 2), new(4.6, 6), new(4.6, 0)]]),
        ['N'] = (4, [[new(0, 0), new(0, 6), new(4, 0), new(4, 6)]]),
        ['O'] = (4, [[.. Arc(2, 4, 2, 0, 180), .. Arc(2, 2, 2, 180, 360), new(4, 4)]]),
        ['P'] = (4, [[new(0, 0), new(0, 6), new(2.4, 6), .. Arc(2.4, 4.4, 1.6, 90, -90), new(0, 2.8)]]),
        ['Q'] = (4, [[.. Arc(2, 4, 2, 0, 180), .. Arc(2, 2, 2, 180, 360), new(4, 4)], [new(2.5, 1.5), new(4, 0)]]),
        ['R'] = (4, [[new(0, 0), new(0, 6), new(2.4, 6), .. Arc(2.4, 4.4, 1.6, 90, -90), new(0, 2.8)], [new(2.2, 2.8), new(4, 0)]]),
        ['S'] = (3.8, [[.. Arc(1.9, 4.45, 1.55, 30, 180), .. Arc(1.9, 4.45, 1.55, 180, 270), .. Arc(1.9, 1.45, 1.45, 90, 0), .. Arc(1.9, 1.45, 1.45, 0, -150)]]),
        ['T'] = (4, [[new(0, 6), new(4, 6)], [new(2, 6), new(2, 0)]]),
        ['U'] = (4, [[new(0, 6), new(0, 2), .. Arc(2, 2, 2, 180, 360), new(4, 6)]]),
        ['V'] = (4, [[new(0, 6), new(2, 0), new(4, 6)]]),
        ['W'] = (5.4, [[new(0, 6), new(1.35, 0), new(2.7, 5), new(4.05, 0), new(5.4, 6)]]),
        ['X'] = (4, [[new(0, 0), new(4, 6)], [new(0, 6), new(4, 0)]]),
        ['Y'] = (4, [[new(0, 6), new(2, 2.8), new(4, 6)], [new(2, 2.8), new(2, 0)]]),
        ['Z'] = (4, [[new(0, 6), new(4, 6), new(0, 0), new(4, 0)]]),
        ['0'] = (3.4, [[.. Arc(1.7, 4.3, 1.7, 0, 180), .. Arc(1.7, 1.7, 1.7, 180, 360), new(3.4, 4.3)]]),
        ['1'] = (1.4, [[new(0, 4.8), new(1.4, 6), new(1.4, 0)]]),
        ['2'] = (3.6, [[.. Arc(1.75, 4.25, 1.75, 165, -35), new(0, 0), new(3.6, 0)]]),
        ['3'] = (3.6, [[new(0.2, 6), new(3.3, 6), new(1.5, 3.6), .. Arc(1.75, 1.8, 1.8, 90, -155)]]),
        ['4'] = (3.8, [[new(2.8, 0), new(2.8, 6), new(0, 1.8), new(3.8, 1.8)]]),
        ['5'] = (3.6, [[new(3.3, 6), new(0.6, 6), new(0.3, 3.3), .. Arc(1.7, 1.9, 1.9, 120, -155)]]),
        ['6'] = (3.6, [[new(2.9, 6), new(0.35, 2.9), .. Arc(1.8, 1.8, 1.8, 145, -215)]]),
        ['7'] = (3.6, [[new(0, 6), new(3.6, 6), new(1.2, 0)]]),
        ['8'] = (3.6, [[.. Arc(1.8, 4.6, 1.4, -90, 270), .. Arc(1.8, 1.6, 1.6, 90, -270)]]),
        ['9'] = (3.6, [[new(0.7, 0), new(3.25, 3.1), .. Arc(1.8, 4.2, 1.8, -35, 325)]]),
        [' '] = (2.4, []),
        ['-'] = (2.4, [[new(0, 3), new(2.4, 3)]]),
        ['–'] = (2.4, [[new(0, 3), new(2.4, 3)]]),
        ['/'] = (2.6, [[new(0, -0.4), new(2.6, 6.4)]]),
        ['.'] = (0, [[new(0, 0), new(0, 0.35)]]),
        [','] = (0.4, [[new(0.4, 0.35), new(0.4, 0), new(0, -0.9)]]),
        ['+'] = (3, [[new(0, 3), new(3, 3)], [new(1.5, 1.5), new(1.5, 4.5)]]),
        ['°'] = (1.4, [[.. Arc(0.7, 5.3, 0.7, 0, 360)]]),
        ['&'] = (4.2, [[new(4.2, 0), new(0.9, 4.4), .. Arc(1.8, 4.9, 1.1, 205, -25), new(0.35, 2.3), .. Arc(1.6, 1.5, 1.5, 150, 330), new(4, 2.8)]]),
        ['\''] = (0, [[new(0, 6), new(0, 4.6)]]),
    };

    /// <summary>Which of these characters there is no letter for.</summary>
    public static string Lacking(string text) => string.Concat(text.ToUpperInvariant().Distinct().Where(c => !Letters.ContainsKey(c)));

    /// <summary>Strokes of a line of lettering, its left lower corner at the origin, y down; unit of <paramref name="height"/>.</summary>
    /// <param name="height">Of a capital.</param>
    public static EquatableList<EquatableList<Point>> Of(string text, double height)
    {
        var scale = height / Height;
        var strokes = new List<EquatableList<Point>>();
        var x = 0.0;
        foreach (var c in text.ToUpperInvariant())
        {
            if (!Letters.TryGetValue(c, out var letter))
                throw new ArgumentException($"There is no single-stroke letter for \"{c}\".", nameof(text));
            var left = x;
            strokes.AddRange(letter.Strokes.Select(s => s.Select(p => new Point(left + (scale * p.X), -scale * p.Y)).ToEquatableList()));
            x += (scale * letter.Width) + (Between * height);
        }

        return strokes.ToEquatableList();
    }

    public static double Width(string text, double height) =>
        text.Length == 0 ? 0 : text.ToUpperInvariant().Sum(c => (height / Height * Letters[c].Width) + (Between * height)) - (Between * height);

    /// <summary>Chords of an arc, degrees, from one angle to another either way.</summary>
    private static Point[] Arc(double x, double y, double radius, double from, double to)
    {
        var count = Math.Max(2, (int)Math.Ceiling(Math.Abs(to - from) / 12));
        return [.. Enumerable.Range(0, count + 1).Select(i => (from + ((to - from) * i / count)) * (Math.PI / 180)).Select(a =>
            new Point(x + (radius * Shapes.Numerics.Elementary.Cos(a)), y + (radius * Shapes.Numerics.Elementary.Sin(a))))];
    }
}
