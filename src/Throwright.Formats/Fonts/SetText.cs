using System.Text;
using System.Text.RegularExpressions;
using Throwright.Formats.Drawing;

namespace Throwright.Formats.Fonts;

/// <summary>One letter set: its face, glyph, what it stands for, advance at type size 1.</summary>
internal readonly record struct SetLetter(Face Face, int Glyph, Rune Meaning, double Advance);

/// <summary>Text as it is set on paper: real widths of the faces that are embedded.</summary>
/// <remarks>A drawing made for the screen is measured by <see cref="TextMeasure"/>, which leaves room for any common face.</remarks>
public static partial class SetText
{
    /// <summary>Height of a capital letter at type size 1 (Inter: 1490 of 2048).</summary>
    public const double CapitalHeight = 1490.0 / 2048;

    /// <summary>Width in the unit of <paramref name="size"/>.</summary>
    public static double Width(string text, double size, bool bold = false, double tracking = 0, bool fractions = false) =>
        Letters(text, bold, fractions).Sum(l => l.Advance == 0 ? 0 : l.Advance + tracking) * size;

    public static double Width(IEnumerable<TextSpan> spans, double size, double tracking = 0, bool fractions = false) =>
        spans.Sum(s => Width(s.Text, size, s.Bold, tracking, fractions));

    /// <summary>The text, or as much of its beginning as fits, with dots for what is left out.</summary>
    public static string Fit(string text, double size, double room, bool bold = false) =>
        TextMeasure.Fit(text, room, t => Width(t, size, bold));

    /// <summary>Breaks a text into lines no wider than <paramref name="room"/>; a word that is too long is cut.</summary>
    public static IReadOnlyList<string> Wrap(string text, double size, double room, bool bold = false) =>
        TextMeasure.Wrap(text, room, t => Width(t, size, bold));

    /// <param name="fractions">"1 3/4" is set as a whole number and a built-up fraction.</param>
    internal static List<SetLetter> Letters(string text, bool bold, bool fractions)
    {
        var letters = new List<SetLetter>();
        var at = 0;
        if (fractions)
        {
            foreach (Match match in Fraction().Matches(text))
            {
                Plain(text[at..match.Index]);
                foreach (var c in match.Groups[1].Value)
                    Add(Face.FindInFraction(c, true, bold), new(c));
                Add(Face.Find(new('\u2044'), bold), new('/'));
                foreach (var c in match.Groups[2].Value)
                    Add(Face.FindInFraction(c, false, bold), new(c));
                at = match.Index + match.Length;
            }
        }

        Plain(text[at..]);
        return letters;

        void Plain(string part)
        {
            foreach (var rune in part.EnumerateRunes())
                Add(Face.Find(rune, bold), rune);
        }

        void Add((Face Face, int Glyph) found, Rune meaning) =>
            letters.Add(new(found.Face, found.Glyph, meaning, TextMeasure.IsJoined(meaning) ? 0 : found.Face.Advance(found.Glyph)));
    }

    [GeneratedRegex("(?<![0-9/.])([0-9]{1,2})/([0-9]{1,3})(?![0-9/]|\\.[0-9])")]
    private static partial Regex Fraction();
}
