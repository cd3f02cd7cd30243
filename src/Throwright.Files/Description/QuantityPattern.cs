using System.Text;
using System.Text.RegularExpressions;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Description;

/// <summary>The pattern by which an editor knows a quantity: it accepts all that <see cref="UnitText"/> reads, and refuses most else.</summary>
/// <remarks>A regular expression of ECMA 262 without features that other dialects lack, as JSON Schema asks for.</remarks>
internal static class QuantityPattern
{
    private const string Blank = @"[\s\u00A0\u202F\u2009·*]";
    private const string Minus = @"[-\u2212\u2013]";
    private const string Sign = @"[-+\u2212\u2013]";
    private const string Slash = @"[/\u2044]";

    public static string Of(QuantityKind kind, bool exact)
    {
        var power = $"(?:[eE]{Sign}?[0-9]+)?";
        var number = $"(?:[0-9]+(?:{Blank}+|{Minus})[0-9]+{Slash}[0-9]+|[0-9]+{Slash}[0-9]+|[0-9]+\\.?[0-9]*{power}|\\.[0-9]+{power})";
        var units = string.Join('|', UnitText.UnitsOf(kind).Select(u => u.Unit).Where(u => u.Length > 0).OrderByDescending(u => u.Length).Select(u => UnitPattern(kind, u)));
        var unit = units.Length == 0 ? "" : $"(?:{units})?";
        var value = $"{Sign}?{Blank}*{number}{Blank}*{unit}";
        if (kind == QuantityKind.Length)
        {
            string feet = Only(0.3048), inches = Only(0.0254);
            value = $"(?:{value}|{Sign}?{Blank}*{number}{Blank}*(?:{feet})(?:{Blank}|{Minus})*{number}{Blank}*(?:{inches}))";
        }

        // Only a lone quantity of kind "ratio" has no unit; elsewhere one is named in the value or in its tolerance.
        var named = units.Length == 0 ? "" : $"(?=.*(?:{units}))";
        if (exact)
            return $"^{named}{Blank}*{value}{Blank}*$";
        var share = kind == QuantityKind.Temperature ? "" : "%|";
        var limit = units.Length == 0 ? $"{number}{Blank}*%?" : $"{number}{Blank}*(?:{share}{units})?";
        var both = $"{Blank}*(?:±|\\+/{Minus}|\\+{Minus}|{Minus}/\\+){Blank}*{limit}";
        var each = $"{Blank}+{Sign}{Blank}*{limit}{Blank}*{Slash}*{Blank}*{Sign}{Blank}*{limit}";
        return $"^{named}{Blank}*{value}(?:{both}|{each})?(?:{Blank}+normal)?{Blank}*$";

        string Only(double factor) => string.Join('|', UnitText.UnitsOf(kind).Where(u => u.Factor == factor).Select(u => u.Unit).OrderByDescending(u => u.Length).Select(Regex.Escape));
    }

    /// <summary>"lbf in" is also written "lbf-in" and "lbf·in".</summary>
    private static string UnitPattern(QuantityKind kind, string unit)
    {
        var pattern = new StringBuilder();
        var between = kind is QuantityKind.Torque or QuantityKind.TorsionRate or QuantityKind.BendingStiffness ? $"(?:{Blank}|{Minus})+" : $"{Blank}+";
        foreach (var c in unit)
        {
            pattern.Append(c switch
            {
                ' ' => between,
                '/' => Slash,
                _ => Regex.Escape(c.ToString()),
            });
        }

        return pattern.ToString();
    }
}
