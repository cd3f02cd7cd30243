using Throwright.Engine.Maintain;
using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Pack;

/// <summary>One reading over the years between its limits.</summary>
internal static class DriftDrawing
{
    private const double Height = 24, Left = 30, Right = 8, Size = 2.6;

    /// <param name="show">Writes a value of the reading.</param>
    public static Picture Of(Drift drift, Func<double, string> show, double width)
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
        for (var year = first; year <= last; year++)
        {
            sketch.Line(X(year), Height - 5, X(year), Height - 4, thin);
            if (last - first <= 12 || year % 5 == 0)
                sketch.Text(X(year), Height - 1, Size, Shapes.Quantities.FigureText.Plain(year, 0), Tones.Ink, anchor: TextAnchor.Middle);
        }

        // Two limits so near each other that their words would meet share one line of words.
        var limits = ((double?[])[drift.Most, drift.Least]).OfType<double>().ToList();
        var near = limits.Count == 2 && Math.Abs(Y(limits[0]) - Y(limits[1])) < Size + 0.6;
        for (var i = 0; i < limits.Count; i++)
        {
            sketch.Line(Left, Y(limits[i]), width - Right, Y(limits[i]), heavy);
            if (!near || i == 0)
                sketch.Text(Left - 1.5, Y(limits[i]) + 0.9, Size, near ? $"{show(limits[1])} to …" : show(limits[i]), Tones.Ink, anchor: TextAnchor.End);
        }

        if (drift.PerYear is { } rate)
        {
            double x = drift.Points.Average(p => p.Year), y = drift.Points.Average(p => p.Value);
            double At(double year) => Math.Clamp(y + (rate * (year - x)), low, high);
            sketch.Line(X(drift.Points[0].Year), Y(At(drift.Points[0].Year)), X(last), Y(At(last)), dash);
        }

        foreach (var (year, value) in drift.Points)
            sketch.Circle(X(year), Y(value), 0.9, Style.Area(Tones.Ink));
        return sketch.ToPicture(width, Height, $"{drift.Name} over the years", $"{drift.Points.Count} readings between their limits.");
    }
}
