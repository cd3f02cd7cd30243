using Throwright.Engine.Findings;
using Throwright.Engine.Maintain;
using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Pack;

/// <summary>One reading over the years between its limits.</summary>
public static class DriftDrawing
{
    private const double Height = 24, Left = 30, Right = 8, Size = 2.6;

    /// <summary>The limits, the larger first, written as the rigging card writes them.</summary>
    private static List<(double Value, string Words)> LimitsOf(Drift drift, FigureWriter say) =>
    [
        .. drift.Most is { } most ? [(most, MaintainWords.Limit(drift.Reading, most, false, say))] : ((double, string)[])[],
        .. drift.Least is { } least ? [(least, MaintainWords.Limit(drift.Reading, least, true, say))] : ((double, string)[])[],
    ];

    public static Picture Of(Drift drift, FigureWriter say, double width)
    {
        var sketch = new Sketch { Layer = "drift" };
        var values = drift.Points.Select(p => p.Value).Concat(((double?[])[drift.Least, drift.Most]).OfType<double>()).ToList();
        double low = values.Min(), high = values.Max(), room = Math.Max(high - low, 1e-9);
        (low, high) = (low - (0.15 * room), high + (0.15 * room));
        double first = Math.Floor(drift.Points[0].Year), last = Math.Max(first + 3, Math.Ceiling(drift.Points[^1].Year + 1));
        double X(double year) => Left + ((year - first) / (last - first) * (width - Left - Right));
        double Y(double value) => 2 + ((high - value) / (high - low) * (Height - 8));
        Style thin = Style.Line(Tones.Ink, 0.3), heavy = Style.Line(Tones.Ink, 0.6), dash = Style.Line(Tones.Ink, 0.3, 2, 1.2);
        sketch.Line(Left, Height - 5, width - Right, Height - 5, thin);
        // As many years named as there is room for.
        var step = ((int[])[1, 2, 5, 10, 20]).FirstOrDefault(n => n * (X(first + 1) - X(first)) > 1.2 * TextMeasure.Width("2026", Size), 50);
        for (var year = first; year <= last; year++)
        {
            sketch.Line(X(year), Height - 5, X(year), Height - 4, thin);
            if (year % step == 0 && (last - first <= 12 || year % 5 == 0))
                sketch.Text(X(year), Height - 1, Size, Shapes.Quantities.FigureText.Plain(year, 0), Tones.Ink, anchor: TextAnchor.Middle);
        }

        // Two limits so near each other that their words would meet share one line of words.
        var limits = LimitsOf(drift, say);
        var near = limits.Count == 2 && Math.Abs(Y(limits[0].Value) - Y(limits[1].Value)) < Size + 0.6;
        for (var i = 0; i < limits.Count; i++)
        {
            sketch.Line(Left, Y(limits[i].Value), width - Right, Y(limits[i].Value), heavy);
            if (!near || i == 0)
                sketch.Text(Left - 1.5, Y(limits[i].Value) + 0.9, Size, near ? $"{limits[1].Words} to …" : limits[i].Words, Tones.Ink, anchor: TextAnchor.End);
        }

        if (drift.PerYear is { } rate)
        {
            var since = drift.Points.Skip(drift.From).ToList();
            double x = since.Average(p => p.Year), y = since.Average(p => p.Value);
            double At(double year) => Math.Clamp(y + (rate * (year - x)), low, high);
            sketch.Line(X(since[0].Year), Y(At(since[0].Year)), X(last), Y(At(last)), dash);
        }

        foreach (var (year, value) in drift.Points)
            sketch.Circle(X(year), Y(value), 0.9, Style.Area(Tones.Ink));
        return sketch.ToPicture(width, Height, $"{drift.Name} over the years", $"{drift.Points.Count} readings between their limits.");
    }

    /// <summary>The same in characters: o a reading, = a limit, . the line since it was last rigged.</summary>
    /// <param name="width">Columns.</param>
    public static IReadOnlyList<string> Characters(Drift drift, FigureWriter say, int width)
    {
        ArgumentNullException.ThrowIfNull(drift);
        ArgumentNullException.ThrowIfNull(say);
        const int rows = 9;
        var limits = LimitsOf(drift, say);
        var values = drift.Points.Select(p => p.Value).Concat(limits.Select(l => l.Value)).ToList();
        double low = values.Min(), high = values.Max(), room = Math.Max(high - low, 1e-9);
        (low, high) = (low - (0.1 * room), high + (0.1 * room));
        double first = Math.Floor(drift.Points[0].Year), last = Math.Max(first + 3, Math.Ceiling(drift.Points[^1].Year + 1));
        var left = limits.Select(l => l.Words).Append(MaintainWords.Show(drift.Reading, drift.Points[^1].Value, say)).Max(w => w.Length) + 1;
        var columns = Math.Max(20, width - left - 2);
        int Column(double year) => (int)Math.Round((year - first) / (last - first) * (columns - 1));
        int Row(double value) => Math.Clamp((int)Math.Round((high - value) / (high - low) * (rows - 1)), 0, rows - 1);
        var grid = Enumerable.Range(0, rows).Select(_ => new string(' ', columns).ToCharArray()).ToArray();
        var names = new string[rows];
        foreach (var (limit, words) in limits)
        {
            Array.Fill(grid[Row(limit)], '=');
            names[Row(limit)] = words;
        }

        if (drift.PerYear is { } rate)
        {
            var since = drift.Points.Skip(drift.From).ToList();
            double x = since.Average(p => p.Year), y = since.Average(p => p.Value);
            for (var c = Column(since[0].Year); c < columns; c++)
            {
                var value = y + (rate * (first + (c * (last - first) / (columns - 1)) - x));
                if (value >= low && value <= high && grid[Row(value)][c] == ' ')
                    grid[Row(value)][c] = '.';
            }
        }

        foreach (var (year, value) in drift.Points)
            grid[Row(value)][Column(year)] = 'o';
        var lines = grid.Select((row, i) => $"{(names[i] ?? "").PadLeft(left - 1)} |{new string(row)}".TrimEnd()).ToList();
        var axis = new string('-', columns).ToCharArray();
        var years = new string(' ', columns + 4).ToCharArray();
        var free = 0;
        for (var year = first; year <= last; year++)
        {
            var c = Column(year);
            axis[c] = '+';
            var text = Shapes.Quantities.FigureText.Plain(year, 0);
            var at = Math.Clamp(c - 1, 0, columns);
            if (at < free)
                continue;
            text.CopyTo(0, years, at, text.Length);
            free = at + text.Length + 1;
        }

        lines.Add($"{new string(' ', left)}+{new string(axis)}");
        lines.Add($"{new string(' ', left + 1)}{new string(years).TrimEnd()}");
        return lines;
    }
}
