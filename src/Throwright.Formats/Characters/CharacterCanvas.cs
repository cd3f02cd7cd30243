using System.Globalization;
using System.Text;
using Throwright.Formats.Drawing;
using Throwright.Shapes;

namespace Throwright.Formats.Characters;

/// <summary>A field of character cells to draw on. What falls outside its width is cut off.</summary>
public sealed class CharacterCanvas(int width, Tone ground)
{
    private readonly List<Cell?[]> rows = [];

    public int Width { get; } = width;

    /// <summary>Writes text from a cell on; it is cleaned, and a character of double width takes two cells.</summary>
    /// <returns>The column after it.</returns>
    public int Put(int row, int column, string text, Tone tone, bool bold = false)
    {
        while (rows.Count <= row)
            rows.Add(new Cell?[Width]);
        var cells = rows[row];
        var last = -1;
        foreach (var rune in PlainText.Clean(text).EnumerateRunes())
        {
            var taken = CellsOf(rune);
            if (taken == 0)
            {
                if (last >= 0 && cells[last] is { } before && before.Text.Length < 8)
                    cells[last] = before with { Text = before.Text + rune };
                continue;
            }

            if (column >= 0 && column + taken <= Width)
            {
                cells[column] = new(rune.ToString(), tone, bold);
                last = column;
                if (taken == 2)
                    cells[column + 1] = new("", tone, bold);
            }

            column += taken;
        }

        return column;
    }

    public CharacterBlock ToBlock()
    {
        var lines = new List<CharacterLine>();
        foreach (var cells in rows)
        {
            var end = Array.FindLastIndex(cells, c => c is { } cell && cell.Text != " ") + 1;
            var spans = new List<CharacterSpan>();
            var text = new StringBuilder();
            for (var i = 0; i < end;)
            {
                var (tone, bold) = (cells[i]?.Tone ?? ground, cells[i]?.Bold ?? false);
                text.Clear();
                for (; i < end && (cells[i]?.Tone ?? ground) == tone && (cells[i]?.Bold ?? false) == bold; i++)
                    text.Append(cells[i] is { } cell ? cell.Text : " ");
                spans.Add(new(text.ToString(), tone, bold));
            }

            lines.Add(new(spans.ToEquatableList()));
        }

        return new(lines.ToEquatableList());
    }

    /// <summary>Cells that a text takes.</summary>
    public static int CellsOf(string text) => PlainText.Clean(text).EnumerateRunes().Sum(CellsOf);

    /// <summary>The text, or as much of its beginning as fits, with <paramref name="dots"/> for what is left out.</summary>
    public static string Fit(string text, int cells, string dots = "…")
    {
        if (CellsOf(text) <= cells)
            return text;
        var kept = new StringBuilder();
        var left = cells - CellsOf(dots);
        foreach (var rune in text.EnumerateRunes())
        {
            left -= CellsOf(rune);
            if (left < 0)
                break;
            kept.Append(rune.ToString());
        }

        return cells < CellsOf(dots) ? "" : kept.ToString().TrimEnd() + dots;
    }

    /// <summary>Breaks a text into lines no wider than <paramref name="cells"/>.</summary>
    public static IReadOnlyList<string> Wrap(string text, int cells, string dots = "…")
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && CellsOf(longer) > cells)
            {
                lines.Add(Fit(line, cells, dots));
                longer = word;
            }

            line = longer;
        }

        if (line.Length > 0)
            lines.Add(Fit(line, cells, dots));
        return lines;
    }

    /// <summary>
    /// 2 for the wide scripts of East Asia and for pictographs (ranges of Unicode Standard Annex 11, East Asian Width W
    /// and F, in blocks; from memory, unverified), 0 for marks on the letter before, else 1.
    /// </summary>
    private static int CellsOf(Rune rune)
    {
        if (Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format)
            return 0;
        return rune.Value is (>= 0x1100 and <= 0x115F) or (>= 0x2E80 and <= 0x303E) or (>= 0x3041 and <= 0xA4CF) or (>= 0xAC00 and <= 0xD7A3)
            or (>= 0xF900 and <= 0xFAFF) or (>= 0xFE30 and <= 0xFE6F) or (>= 0xFF00 and <= 0xFF60) or (>= 0xFFE0 and <= 0xFFE6) or (>= 0x1F300 and <= 0x1FAFF)
            or (>= 0x20000 and <= 0x3FFFD)
            ? 2
            : 1;
    }

    private readonly record struct Cell(string Text, Tone Tone, bool Bold);
}
