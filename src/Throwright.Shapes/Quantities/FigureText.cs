using System.Globalization;

namespace Throwright.Shapes.Quantities;

/// <summary>Which way a rounded figure may move.</summary>
public enum Rounding
{
    Nearest,

    /// <summary>What is left over (cushion, clearance, radius): never shown larger than it is.</summary>
    Down,

    /// <summary>What is demanded (force, stress, swing): never shown smaller than it is.</summary>
    Up,
}

/// <summary>Writes figures for a person: decimals for what was worked out, fractions where a tape or drill is used.</summary>
public static class FigureText
{
    /// <summary>A figure with a fixed number of places, real minus sign, no negative zero.</summary>
    public static string Plain(double value, int places, Rounding rounding = Rounding.Nearest)
    {
        if (!double.IsFinite(value))
            return value > 0 ? "no limit" : double.IsNaN(value) ? "not known" : "−no limit";
        var scale = Math.Pow(10, places);
        // 1e-9 of a step: 0.1 in / 0.0254 must not round "down" to 0.099 by the last bit.
        var scaled = value * scale;
        var whole = rounding switch
        {
            Rounding.Down => Math.Floor(scaled + 1e-9),
            Rounding.Up => Math.Ceiling(scaled - 1e-9),
            _ => Math.Round(scaled, MidpointRounding.AwayFromZero),
        };
        var rounded = Math.Abs(scaled) > 1e14 ? value : whole / scale;
        var text = Math.Abs(rounded).ToString("F" + places.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return rounded < 0 ? "−" + text : text;
    }

    /// <summary>
    /// Nearest fraction of an inch, "1 3/4 in"; null when it is off by more than <paramref name="tolerance"/> (m), or is
    /// no length that a tape could show.
    /// </summary>
    public static string? FractionOfInch(Length length, int denominator = 64, double tolerance = double.PositiveInfinity)
    {
        if (!(Math.Abs(length.Inches) < 1e9))
            return null;
        var parts = (long)Math.Round(Math.Abs(length.Inches) * denominator, MidpointRounding.AwayFromZero);
        if (Math.Abs((parts * Length.MetresPerInch / denominator) - Math.Abs(length.Metres)) > tolerance)
            return null;
        var (whole, top) = (parts / denominator, parts % denominator);
        long bottom = denominator;
        while (top != 0 && top % 2 == 0)
            (top, bottom) = (top / 2, bottom / 2);
        var sign = length.Metres < 0 && parts != 0 ? "−" : "";
        var text = top == 0 ? $"{whole}" : whole == 0 ? $"{top}/{bottom}" : $"{whole} {top}/{bottom}";
        return $"{sign}{text} in";
    }
}
