using System.Text;

namespace Throwright.Formats.Tables;

/// <summary>Writes rows as comma-separated values (RFC 4180), UTF-8 with its mark so that spreadsheets read it as such.</summary>
public static class CsvWriter
{
    public static byte[] Write(IEnumerable<IReadOnlyList<string>> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var text = new StringBuilder("\uFEFF");
        foreach (var row in rows)
            text.Append(string.Join(',', row.Select(Cell))).Append("\r\n");
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>A text that a spreadsheet would take for a formula gets an apostrophe, or a label could run one.</summary>
    private static string Cell(string text)
    {
        if (text.Length > 0 && text[0] is '=' or '+' or '-' or '@' or '\t' or '\r')
            text = "'" + text;
        return text.AsSpan().IndexOfAny(",\"\r\n") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}
