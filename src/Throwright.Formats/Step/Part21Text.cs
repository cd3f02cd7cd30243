using System.Globalization;
using System.Text;

namespace Throwright.Formats.Step;

/// <summary>Reals and texts as ISO 10303-21 writes them.</summary>
internal static class Part21Text
{
    /// <summary>Shortest digits that read back as the same double, always with a point; no negative zero.</summary>
    public static string Real(double value)
    {
        if (!double.IsFinite(value))
            throw new ArgumentException("A STEP file holds finite numbers only.", nameof(value));
        if (value == 0)
            return "0.";
        var text = value.ToString("R", CultureInfo.InvariantCulture);
        var exponent = text.IndexOf('E', StringComparison.Ordinal);
        var digits = exponent < 0 ? text : text[..exponent];
        if (!digits.Contains('.', StringComparison.Ordinal))
            digits += ".";
        return exponent < 0 ? digits : digits + text[exponent..];
    }

    /// <summary>A length in mm; a billionth of a nanometre is cut off, it is only the noise of the conversion.</summary>
    public static string Millimetres(double metres) => Real(Math.Round(metres * 1000, 12, MidpointRounding.AwayFromZero));

    /// <summary>A text in apostrophes: ASCII, all else as \X2\ hexadecimal UTF-16 \X0\.</summary>
    public static string Quoted(string text)
    {
        var safe = new StringBuilder("'");
        foreach (var c in text)
        {
            _ = c switch
            {
                '\'' => safe.Append("''"),
                '\\' => safe.Append("\\\\"),
                >= ' ' and <= '~' => safe.Append(c),
                _ => safe.Append(CultureInfo.InvariantCulture, $"\\X2\\{(int)c:X4}\\X0\\"),
            };
        }

        return safe.Append('\'').ToString();
    }
}
