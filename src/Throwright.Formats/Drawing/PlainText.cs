using System.Text;

namespace Throwright.Formats.Drawing;

/// <summary>Makes text from outside fit to be drawn or sent to a terminal.</summary>
public static class PlainText
{
    /// <summary>
    /// Line ends and tabs become spaces. Control characters (a terminal obeys them), halves of characters and
    /// non-characters (XML forbids them) and marks that turn the reading direction round (they could make one figure
    /// read as another) become U+FFFD.
    /// </summary>
    public static string Clean(string text)
    {
        var clean = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            var value = rune.Value;
            if (value is '\n' or '\r' or '\t' or 0x85 or 0x2028 or 0x2029)
                clean.Append(' ');
            else if (value < 0x20 || value is >= 0x7F and < 0xA0 || (value & 0xFFFE) == 0xFFFE || value is >= 0xFDD0 and <= 0xFDEF || TurnsDirection(value))
                clean.Append('\uFFFD');
            else
                clean.Append(rune.ToString());
        }

        return clean.ToString();
    }

    private static bool TurnsDirection(int value) =>
        value is 0x061C or 0x200E or 0x200F or (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069);
}
