using Throwright.Formats.Drawing;

namespace Throwright.Papers.Marks;

/// <summary>A drawing that leaves the program alone says whose it is.</summary>
public static class Named
{
    private const double Head = 9, Text = 3.4;

    /// <summary>The same drawing, its size kept, under a line with aircraft and run.</summary>
    public static Picture Over(Picture picture, string aircraft, string run)
    {
        ArgumentNullException.ThrowIfNull(picture);
        var sketch = new Sketch { Layer = "name" };
        var words = PlainText.Clean(aircraft.Length > 0 ? $"{run}, {aircraft}" : run);
        sketch.Text(4, 6, Text, TextMeasure.Fit(words, Text, picture.Width - 8, bold: true), Tones.Ink, bold: true);
        sketch.Add(picture, 0, Head);
        return sketch.ToPicture(picture.Width, picture.Height + Head, $"{picture.Title}: {words}", picture.Description, Tones.Paper);
    }
}
