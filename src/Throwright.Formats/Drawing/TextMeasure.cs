using System.Globalization;
using System.Text;

namespace Throwright.Formats.Drawing;

/// <summary>How much room lettering takes, and what of it fits.</summary>
public static class TextMeasure
{
    private const string Dots = "…";

    /// <summary>Width in the unit of <paramref name="size"/>.</summary>
    public static double Width(string text, double size, bool bold = false, double tracking = 0)
    {
        var width = 0.0;
        foreach (var rune in text.EnumerateRunes())
            width += IsJoined(rune) ? 0 : FaceWidths.Of(rune.Value, bold) + tracking;
        return width * size;
    }

    public static double Width(IEnumerable<TextSpan> spans, double size, double tracking = 0) =>
        spans.Sum(s => Width(s.Text, size, s.Bold, tracking));

    /// <summary>The text, or as much of its beginning as fits, with dots for what is left out.</summary>
    public static string Fit(string text, double size, double room, bool bold = false) => Fit(text, room, t => Width(t, size, bold));

    /// <summary>Breaks a text into lines no wider than <paramref name="room"/>; a word that is too long is cut.</summary>
    public static IReadOnlyList<string> Wrap(string text, double size, double room, bool bold = false) => Wrap(text, room, t => Width(t, size, bold));

    internal static string Fit(string text, double room, Func<string, double> width)
    {
        if (width(text) <= room)
            return text;
        var kept = new StringBuilder();
        var left = room - width(Dots);
        foreach (var rune in text.EnumerateRunes())
        {
            left -= width(rune.ToString());
            if (left < 0)
                break;
            kept.Append(rune.ToString());
        }

        return kept.ToString().TrimEnd() + Dots;
    }

    internal static IReadOnlyList<string> Wrap(string text, double room, Func<string, double> width)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && width(longer) > room)
            {
                lines.Add(line);
                longer = word;
            }

            line = longer;
        }

        if (line.Length > 0)
            lines.Add(line);
        return lines.ConvertAll(l => Fit(l, room, width));
    }

    /// <summary>Marks that sit on the letter before them take no room of their own.</summary>
    internal static bool IsJoined(Rune rune) =>
        Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format;
}
