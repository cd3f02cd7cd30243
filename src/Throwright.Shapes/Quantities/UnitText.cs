using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;

namespace Throwright.Shapes.Quantities;

/// <summary>A value read from text, in SI, with its limits and the unit it was written in.</summary>
public readonly record struct ReadQuantity(double Nominal, double Minus, double Plus, Spread Spread, string Unit);

/// <summary>Reads values with units as a person writes them: "1 3/4 in", "4' 2 1/2\"", "6 lbf in ± 20 %", "92 deg +2/-1 deg".</summary>
/// <remarks>
/// Grammar: value [limits] ["normal"]
///   value   one term, or feet and inches: "4 ft 2 1/2 in", "4'-2 1/2\""
///   term    [-] number unit; number = "1 3/4", "1-3/4", "3/4", "1.75", "1e-3"
///   limits  "± a", "+/- a", "+a/-b" or "-b/+a", each with a unit, or without one if the value has it (or the
///           other way round: "44.5 ± 0.5 mm"); "± 20 %" is a share of the value
/// What two people could read differently is refused:
///   a bare number (mm or in?) and "mil" (thou or mm?);
///   a comma (decimal point or thousands?) and digits in groups;
///   a fraction above 1 (11/2, or 1 1/2 without its space?);
///   a minus sign or an en dash within a value, a hyphen with a space (difference, range or joint?);
///   limits without the slash (+1-1/2: a mixed number?), and one bare limit beside one with another unit.
/// NaN and infinity are refused.
/// </remarks>
public static class UnitText
{
    /// <summary>Unit names of each kind with the factor to SI. The first is the one shown in messages.</summary>
    private static readonly Dictionary<QuantityKind, (string Unit, double Factor)[]> Units = new()
    {
        [QuantityKind.Length] =
        [
            ("in", 0.0254), ("mm", 0.001), ("cm", 0.01), ("m", 1), ("ft", 0.3048), ("inch", 0.0254), ("inches", 0.0254),
            ("\"", 0.0254), ("″", 0.0254), ("'", 0.3048), ("′", 0.3048), ("feet", 0.3048), ("foot", 0.3048), ("thou", 0.0000254), ("µm", 1e-6), ("um", 1e-6),
        ],
        [QuantityKind.Angle] = [("deg", Math.PI / 180), ("°", Math.PI / 180), ("rad", 1), ("degrees", Math.PI / 180), ("degree", Math.PI / 180)],
        [QuantityKind.Force] = [("lbf", Force.NewtonsPerPoundForce), ("N", 1), ("kN", 1000), ("daN", 10), ("kgf", 9.80665), ("lb", Force.NewtonsPerPoundForce), ("ozf", Force.NewtonsPerPoundForce / 16)],
        [QuantityKind.Torque] =
        [
            ("lbf in", Torque.NewtonMetresPerPoundForceInch), ("N m", 1), ("N mm", 0.001), ("N cm", 0.01), ("lbf ft", Torque.NewtonMetresPerPoundForceInch * 12),
            ("in lbf", Torque.NewtonMetresPerPoundForceInch), ("in lb", Torque.NewtonMetresPerPoundForceInch), ("lb in", Torque.NewtonMetresPerPoundForceInch),
            ("ft lbf", Torque.NewtonMetresPerPoundForceInch * 12), ("ft lb", Torque.NewtonMetresPerPoundForceInch * 12), ("lb ft", Torque.NewtonMetresPerPoundForceInch * 12),
            ("Nm", 1), ("Nmm", 0.001), ("kgf cm", 0.0980665), ("ozf in", Torque.NewtonMetresPerPoundForceInch / 16),
        ],
        [QuantityKind.Temperature] = [("degC", 1), ("degF", 1 / 1.8), ("°C", 1), ("°F", 1 / 1.8), ("C", 1), ("F", 1 / 1.8), ("K", 1)],
        [QuantityKind.Ratio] = [("", 1)],
        [QuantityKind.Stiffness] = [("N/mm", 1000), ("lbf/in", Force.NewtonsPerPoundForce / 0.0254), ("N/m", 1), ("kN/m", 1000), ("lb/in", Force.NewtonsPerPoundForce / 0.0254)],
        [QuantityKind.TorsionRate] =
        [
            ("lbf in/deg", Torque.NewtonMetresPerPoundForceInch * 180 / Math.PI), ("N m/rad", 1), ("N m/deg", 180 / Math.PI), ("N mm/deg", 0.18 / Math.PI),
            ("lbf in/rad", Torque.NewtonMetresPerPoundForceInch), ("in lbf/deg", Torque.NewtonMetresPerPoundForceInch * 180 / Math.PI),
        ],
        [QuantityKind.Stress] = [("MPa", 1e6), ("ksi", 6894757.293168361), ("psi", 6894.757293168361), ("GPa", 1e9), ("Pa", 1), ("N/mm2", 1e6), ("N/mm²", 1e6)],
        [QuantityKind.Expansion] = [("ppm/K", 1e-6), ("ppm/degC", 1e-6), ("ppm/degF", 1.8e-6), ("/K", 1)],
        [QuantityKind.BendingStiffness] =
        [
            ("N m2", 1), ("lbf in2", Torque.NewtonMetresPerPoundForceInch * 0.0254), ("N m²", 1), ("lbf in²", Torque.NewtonMetresPerPoundForceInch * 0.0254),
            ("N mm2", 1e-6), ("N mm²", 1e-6),
        ],
        [QuantityKind.LineWeight] =
        [
            ("lbf/ft", Force.NewtonsPerPoundForce / 0.3048), ("N/m", 1), ("lb/ft", Force.NewtonsPerPoundForce / 0.3048), ("oz/ft", Force.NewtonsPerPoundForce / 16 / 0.3048),
            ("g/m", 0.00980665), ("kg/m", 9.80665),
        ],
        [QuantityKind.Density] = [("kg/m3", 1), ("g/cm3", 1000), ("lb/in3", 0.45359237 / (0.0254 * 0.0254 * 0.0254)), ("kg/m³", 1), ("g/cm³", 1000)],
    };

    private static readonly Dictionary<QuantityKind, (string Name, string Example)> Words = new()
    {
        [QuantityKind.Length] = ("a length", "\"1.5 in\", \"1 1/2 in\", \"38 mm ± 0.5 mm\""),
        [QuantityKind.Angle] = ("an angle", "\"45 deg\", \"92 deg +2/-1 deg\""),
        [QuantityKind.Force] = ("a force", "\"20 lbf\", \"90 N ± 10 N\""),
        [QuantityKind.Torque] = ("a torque", "\"6 lbf in\", \"0.7 N m ± 20 %\""),
        [QuantityKind.Temperature] = ("a temperature", "\"20 degC\", \"-22 degF\""),
        [QuantityKind.Ratio] = ("a number without a unit, in quotes", "\"0.15\", \"0.15 ± 0.05\""),
        [QuantityKind.Stiffness] = ("a stiffness", "\"400 N/mm\", \"2000 lbf/in\""),
        [QuantityKind.TorsionRate] = ("a torsional rate", "\"0.05 lbf in/deg\", \"0.3 N m/rad\""),
        [QuantityKind.Stress] = ("a stress", "\"1800 MPa\", \"258 ksi\""),
        [QuantityKind.Expansion] = ("a thermal expansion", "\"11.7 ppm/K\", \"6.5 ppm/degF\""),
        [QuantityKind.BendingStiffness] = ("a stiffness against bending", "\"0.2 N m2\", \"70 lbf in2 ± 20 %\""),
        [QuantityKind.LineWeight] = ("a weight per length", "\"0.06 lbf/ft\", \"90 g/m ± 5 %\""),
        [QuantityKind.Density] = ("a density", "\"7850 kg/m3\", \"0.284 lb/in3\""),
    };

    /// <summary>"a length", "an angle", ...</summary>
    public static string KindName(QuantityKind kind) => Words[kind].Name;

    /// <summary>What is expected, in words with examples: the text of every refusal.</summary>
    public static string Expected(QuantityKind kind) => $"{Words[kind].Name}, e.g. {Words[kind].Example}";

    /// <summary>The units accepted for a kind, with their factors to SI.</summary>
    public static IReadOnlyList<(string Unit, double Factor)> UnitsOf(QuantityKind kind) => Units[kind];

    public static bool TryRead<T>(string text, out Toleranced<T> value, [NotNullWhen(false)] out string? problem)
        where T : struct, IQuantity<T>
    {
        if (!TryRead(T.Kind, text, out var read, out problem))
        {
            value = default;
            return false;
        }

        value = new(T.FromSi(read.Nominal), read.Minus, read.Plus, read.Spread);
        return true;
    }

    /// <summary>Reads one value; on refusal, <paramref name="problem"/> says in words what is wrong with the text.</summary>
    public static bool TryRead(QuantityKind kind, string text, out ReadQuantity value, [NotNullWhen(false)] out string? problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        value = default;
        if (text.Length > 200)
        {
            problem = "longer than 200 characters";
            return false;
        }

        var rest = Tidy(text);
        if (rest.Length == 0)
        {
            problem = "empty";
            return false;
        }

        problem = Doubtful(rest);
        if (problem is not null)
            return false;

        var spread = Spread.Uniform;
        if (rest.EndsWith(" normal", StringComparison.Ordinal))
        {
            spread = Spread.Normal;
            rest = rest[..^7].TrimEnd();
        }

        var (valueText, limitsText) = SplitLimits(rest);
        if (!TryLimits(limitsText, out var minusText, out var plusText, out problem))
            return false;
        string? minusUnit = UnitAtEnd(kind, minusText), plusUnit = UnitAtEnd(kind, plusText);
        if (!TryValue(kind, valueText, UnitForValue(kind, minusUnit, plusUnit), out var nominal, out var unit, out problem))
            return false;
        if (!TryLimit(kind, minusText, unit, nominal, out var minus, out problem)
            || !TryLimit(kind, plusText, unit, nominal, out var plus, out problem))
        {
            return false;
        }

        if (minusUnit is null != plusUnit is null && !IsSame(kind, minusUnit ?? plusUnit, unit))
        {
            problem = "write the unit behind both limits";
            return false;
        }

        value = new(nominal, minus, plus, spread, unit);
        return true;
    }

    /// <summary>
    /// No-break spaces and hyphens, multiple spaces, the dot of a product: all made plain. A typographic
    /// minus or en dash becomes a sign where a sign can stand, a fraction slash becomes a slash under one digit;
    /// elsewhere they stay, to be refused.
    /// </summary>
    private static string Tidy(string text)
    {
        text = text.Trim();
        var plain = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            var before = plain.Length == 0 ? ' ' : plain[^1];
            var p = text[i] switch
            {
                '\u00A0' or '\u202F' or '\u2009' or '\t' => ' ',
                '\u2010' or '\u2011' => '-',
                '\u2212' or '\u2013' when before is ' ' or '/' or '±' or 'e' or 'E' => '-',
                '\u2044' when !(plain.Length > 1 && char.IsAsciiDigit(plain[^1]) && char.IsAsciiDigit(plain[^2])) => '/',
                '\u22C5' or '*' => '·',
                '\u03BC' => 'µ',
                _ => text[i],
            };
            if (p != ' ' || before != ' ')
                plain.Append(p);
        }

        return plain.ToString();
    }

    /// <summary>Signs that mean one thing to one reader and another to the next.</summary>
    private static string? Doubtful(string text)
    {
        if (text.Any(char.IsControl))
            return "a line break or control character within the value";
        if (text.Contains(','))
            return "a comma is not a decimal point here";
        if (text.AsSpan().ContainsAny('\u2212', '\u2013'))
            return "a dash between two things may mean a difference or a range; write \"1 3/4 in\" or \"4 ft 2 in\"";
        var slash = text.IndexOf('\u2044', StringComparison.Ordinal);
        return slash < 0 ? null : $"\"{text[(slash - 2)..Digits(text, slash + 1)]}\" may be a mixed number set small; write it with a plain \"/\"";
    }

    private static (string Value, string Limits) SplitLimits(string text)
    {
        foreach (var mark in (ReadOnlySpan<string>)["±", "+/-", "+-", "-/+"])
        {
            var at = text.IndexOf(mark, StringComparison.Ordinal);
            if (at > 0)
                return (text[..at].TrimEnd(), "±" + text[(at + mark.Length)..].TrimStart());
        }

        // "+a/-b" or "-b/+a" after a space; a sign inside "1e-3" or "1-3/4" has no space before it.
        for (var i = 1; i < text.Length; i++)
        {
            if (text[i] is '+' or '-' && text[i - 1] == ' ')
                return (text[..i].TrimEnd(), text[i..]);
        }

        return (text, "");
    }

    private static bool TryLimits(string limits, out string minus, out string plus, [NotNullWhen(false)] out string? problem)
    {
        minus = plus = "";
        problem = null;
        if (limits.Length == 0)
            return true;
        if (limits[0] == '±')
        {
            minus = plus = limits[1..].Trim();
            if (minus.Length > 0 && minus[0] is not ('-' or '+'))
                return true;
            problem = "the limit after ± must be a plain value such as \"± 0.5 mm\"";
            return false;
        }

        // The slash before the second sign is needed: "+1-1/2" may be a mixed number.
        for (var slash = limits.IndexOf('/'); slash > 0; slash = limits.IndexOf('/', slash + 1))
        {
            var last = limits[(slash + 1)..].TrimStart();
            if (last.Length == 0 || last[0] != (limits[0] == '+' ? '-' : '+'))
                continue;
            var first = limits[1..slash].Trim();
            last = last[1..].Trim();
            (plus, minus) = limits[0] == '+' ? (first, last) : (last, first);
            if (first.Length > 0 && last.Length > 0 && first[0] is not ('+' or '-') && last[0] is not ('+' or '-'))
                return true;
        }

        problem = "limits must be written \"± a\" or \"+a/-b\"";
        return false;
    }

    /// <summary>The unit at the end of a limit, "%" included; null for a bare number.</summary>
    private static string? UnitAtEnd(QuantityKind kind, string text)
    {
        if (text.EndsWith('%'))
            return "%";
        TakeNumber(text, out _, out var rest, out _);
        var unit = rest.Trim();
        return unit.Length > 0 && Find(kind, unit) is not null ? unit : null;
    }

    /// <summary>The unit that a value without one takes from its limits, as in "44.5 ± 0.5 mm"; null if they have none or two.</summary>
    private static string? UnitForValue(QuantityKind kind, string? minusUnit, string? plusUnit)
    {
        // "20 ± 5 K": a difference in K says nothing about the scale of the 20.
        var unit = plusUnit ?? minusUnit;
        return unit is null or "%" or "K" || !IsSame(kind, minusUnit ?? unit, unit) ? null : unit;
    }

    private static bool IsSame(QuantityKind kind, string? unit, string other) =>
        unit is not null && Find(kind, unit) is double factor && factor == Find(kind, other);

    private static bool TryLimit(QuantityKind kind, string text, string unit, double nominal, out double limit, [NotNullWhen(false)] out string? problem)
    {
        limit = 0;
        problem = null;
        if (text.Length == 0)
            return true;
        if (text.EndsWith('%'))
        {
            if (kind == QuantityKind.Temperature)
            {
                problem = "a share of a temperature has no meaning; write the limit in degrees";
                return false;
            }

            if (!TakeNumber(text, out var share, out var left, out problem))
                return false;
            if (left.Trim() != "%" || share < 0)
            {
                problem = "a limit in per cent is written \"± 20 %\"";
                return false;
            }

            if (nominal == 0)
            {
                problem = "a share of zero is nothing; write the limit with its unit";
                return false;
            }

            limit = Math.Abs(nominal) * share / 100;
            return IsFinite(limit, out problem);
        }

        if (!TakeNumber(text, out var number, out var rest, out problem))
            return false;
        var named = rest.Trim();
        var factor = Find(kind, named.Length == 0 ? unit : named);
        if (factor is null)
        {
            problem = Unknown(kind, named);
            return false;
        }

        // A limit is a difference, so the offset of degF does not apply.
        limit = number * factor.Value;
        return IsFinite(limit, out problem);
    }

    private static bool IsFinite(double limit, [NotNullWhen(false)] out string? problem)
    {
        problem = double.IsFinite(limit) ? null : "the limit is not a finite number";
        return problem is null;
    }

    private static bool TryValue(QuantityKind kind, string text, string? trailingUnit, out double si, out string unit, [NotNullWhen(false)] out string? problem)
    {
        si = 0;
        unit = "";
        if (!TakeNumber(text, out var number, out var rest, out problem))
            return false;
        rest = rest.TrimStart();
        unit = rest;

        // Feet and inches: the only sum of two terms that people write.
        if (kind == QuantityKind.Length)
        {
            var digit = rest.AsSpan().IndexOfAnyInRange('0', '9');
            if (digit > 0)
            {
                // Joined by a space, a hyphen ("4'-2\"") or nothing; a hyphen with a space may be a minus.
                var feet = rest[..digit];
                feet = feet.EndsWith('-') ? feet[..^1] : feet.TrimEnd();
                if (Find(kind, feet) != 0.3048)
                {
                    problem = $"\"{rest}\" after the number is not one unit; only feet and inches are added up";
                    return false;
                }

                if (!TakeNumber(rest[digit..], out var inches, out var inchUnit, out problem))
                    return false;
                unit = inchUnit.Trim();
                // "1'000" is no foot and nothing, but a thousand in groups.
                if (Find(kind, unit) != 0.0254 || inches >= 12 || Digits(rest, digit) > digit + 2 || number != Math.Floor(number))
                {
                    problem = "feet and inches are written \"4 ft 2 1/2 in\" with whole feet and less than 12 in";
                    return false;
                }

                var sign = text.StartsWith('-') ? -1 : 1;
                si = sign * ((Math.Abs(number) * 0.3048) + (inches * 0.0254));
                return true;
            }
        }

        if (unit.Length == 0 && kind != QuantityKind.Ratio)
        {
            if (trailingUnit is null)
            {
                problem = "has no unit";
                return false;
            }

            unit = trailingUnit;
        }

        var factor = Find(kind, unit);
        if (factor is null)
        {
            problem = Unknown(kind, unit);
            return false;
        }

        si = kind == QuantityKind.Temperature
            ? unit switch { "degF" or "°F" or "F" => (number - 32) / 1.8, "K" => number - 273.15, _ => number }
            : number * factor.Value;
        // 1e-9: -459.67 degF is -273.15 degC but for its last bit.
        if (double.IsFinite(si) && !(kind == QuantityKind.Temperature && si < -273.15 - 1e-9))
            return true;
        problem = kind == QuantityKind.Temperature && double.IsFinite(si) ? "below absolute zero" : "not a finite number";
        return false;
    }

    private static double? Find(QuantityKind kind, string unit)
    {
        foreach (var (name, factor) in Units[kind])
        {
            if (name == unit)
                return factor;
        }

        // "lbf-in", "N·m": people write the product with a hyphen or a dot too.
        if (kind is QuantityKind.Torque or QuantityKind.TorsionRate or QuantityKind.BendingStiffness && unit.AsSpan().ContainsAny('-', '·'))
            return Find(kind, unit.Replace(" · ", " ").Replace('·', ' ').Replace('-', ' '));
        return null;
    }

    private static string Unknown(QuantityKind kind, string unit)
    {
        if (kind == QuantityKind.Ratio)
            return $"\"{unit}\" is too much: a plain number is expected";
        if (unit is "mil" or "mils")
            return $"\"{unit}\" is 0.001 in to some and 1 mm to others; write \"thou\" or \"mm\"";
        foreach (var (other, names) in Units)
        {
            if (other == kind || other == QuantityKind.Ratio)
                continue;
            foreach (var (name, _) in names)
            {
                if (name == unit)
                    return $"\"{unit}\" is a unit of {Words[other].Name[2..].Trim()}, not of {Words[kind].Name[2..].Trim()}";
            }
        }

        var near = Units[kind].FirstOrDefault(u => u.Unit.Equals(unit, StringComparison.OrdinalIgnoreCase)).Unit;
        var list = string.Join(", ", Units[kind].Take(5).Select(u => u.Unit));
        return near is null ? $"\"{unit}\" is not a known unit ({list})" : $"\"{unit}\" is not a known unit; did you mean \"{near}\"?";
    }

    /// <summary>Takes "1 3/4", "1-3/4", "3/4", "1.75", "-2e-3" from the front.</summary>
    private static bool TakeNumber(string text, out double number, out string rest, [NotNullWhen(false)] out string? problem)
    {
        number = 0;
        rest = text;
        problem = null;
        var i = 0;
        var negative = false;
        if (i < text.Length && text[i] is '-' or '+')
        {
            negative = text[i] == '-';
            i++;
            // "- 5 mm" may be the second line of a list.
            if (i < text.Length && text[i] == ' ')
            {
                problem = "the sign must stand directly before the number";
                return false;
            }
        }

        var start = i;
        i = Digits(text, i);
        var wholeEnd = i;
        if (i > start && i < text.Length && text[i] == '/')
        {
            // 3/4
            if (!Fraction(text, start, out number, out i, out problem))
                return false;
            if (number >= 1)
            {
                problem = $"\"{text[start..i]}\" is a fraction of 1 or more: is a space missing? Write a whole number and a fraction below 1";
                return false;
            }
        }
        else if (i > start && i + 1 < text.Length && text[i] is ' ' or '-' && Digits(text, i + 1) is var top && top > i + 1 && top < text.Length && text[top] == '/')
        {
            // 1 3/4 or 1-3/4
            if (!Fraction(text, i + 1, out var part, out var end, out problem))
                return false;
            if (part >= 1)
            {
                problem = "the fraction of a mixed number must be below 1";
                return false;
            }

            // "1 000/2", "1 100/128": thousands set apart?
            if (top > i + 3 || text[i + 1] == '0')
            {
                problem = "the fraction of a mixed number has one or two digits above the line";
                return false;
            }

            number = double.Parse(text.AsSpan(start, wholeEnd - start), NumberStyles.None, CultureInfo.InvariantCulture) + part;
            i = end;
        }
        else
        {
            if (i < text.Length && text[i] == '.')
                i = Digits(text, i + 1);
            if (i == start || (i == start + 1 && text[start] == '.'))
            {
                var word = text.Length > 20 ? text[..20] + "…" : text;
                problem = word.Length == 0 ? "a number is missing" : $"\"{word}\" does not start with a number";
                return false;
            }

            if (i < text.Length && text[i] is 'e' or 'E')
            {
                var j = i + 1;
                if (j < text.Length && text[j] is '-' or '+')
                    j++;
                if (Digits(text, j) is var end && end > j)
                    i = end;
            }

            if (!double.TryParse(text.AsSpan(start, i - start), NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out number) || !double.IsFinite(number))
            {
                problem = "the number is too large";
                return false;
            }
        }

        if (i < text.Length && text[i] == '.')
        {
            problem = "the number has two points";
            return false;
        }

        if (negative)
            number = -number;
        rest = text[i..];
        return true;
    }

    private static int Digits(string text, int i)
    {
        while (i < text.Length && char.IsAsciiDigit(text[i]))
            i++;
        return i;
    }

    private static bool Fraction(string text, int start, out double value, out int end, [NotNullWhen(false)] out string? problem)
    {
        var slash = Digits(text, start);
        end = Digits(text, slash + 1);
        value = 0;
        if (end == slash + 1)
        {
            problem = "the fraction has no lower number";
            return false;
        }

        var top = double.Parse(text.AsSpan(start, slash - start), NumberStyles.None, CultureInfo.InvariantCulture);
        var bottom = double.Parse(text.AsSpan(slash + 1, end - slash - 1), NumberStyles.None, CultureInfo.InvariantCulture);
        if (bottom == 0)
        {
            problem = "the fraction has zero below the line";
            return false;
        }

        problem = null;
        value = top / bottom;
        return true;
    }
}
