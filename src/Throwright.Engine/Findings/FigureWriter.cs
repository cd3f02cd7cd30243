using Throwright.Engine.Model;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Findings;

/// <summary>Writes figures in this builder's units. Rounded toward danger where the caller says so.</summary>
public sealed class FigureWriter(Display display)
{
    private const double PerDegree = 180 / Math.PI;

    /// <summary>1000 lbf/in2.</summary>
    private const double PascalsPerKsi = 1000 * Shapes.Quantities.Force.NewtonsPerPoundForce / (Shapes.Quantities.Length.MetresPerInch * Shapes.Quantities.Length.MetresPerInch);

    private bool Inches => display.Length == LengthUnit.Inch;

    /// <summary>"0.115 in" or "2.9 mm".</summary>
    public string Length(double metres, Rounding rounding = Rounding.Nearest) =>
        Inches ? $"{LengthNumber(metres, rounding)} in" : $"{LengthNumber(metres, rounding)} mm";

    /// <summary>The same without its unit, for lists that name it once.</summary>
    public string LengthNumber(double metres, Rounding rounding = Rounding.Nearest) => Inches
        ? FigureText.Plain(metres / Shapes.Quantities.Length.MetresPerInch, 3, rounding)
        : FigureText.Plain(metres * 1000, 1, rounding);

    /// <summary>A dimension on a shop drawing, without its unit: hundredths of a millimetre, or thousandths of an inch with no zero before the point.</summary>
    public string Dimension(double metres, Rounding rounding = Rounding.Nearest)
    {
        if (!Inches)
            return FigureText.Plain(metres * 1000, 2, rounding);
        var text = FigureText.Plain(metres / Shapes.Quantities.Length.MetresPerInch, 3, rounding);
        return text.StartsWith("0.", StringComparison.Ordinal) ? text[1..] : text;
    }

    public string LengthUnitName => Inches ? "in" : "mm";

    /// <summary>An amount to move something by, in both units: "0.28 in (7.1 mm)".</summary>
    public string Move(double metres)
    {
        var inch = FigureText.Plain(Math.Abs(metres) / Shapes.Quantities.Length.MetresPerInch, 2) + " in";
        var mm = FigureText.Plain(Math.Abs(metres) * 1000, 1) + " mm";
        return Inches ? $"{inch} ({mm})" : $"{mm} ({inch})";
    }

    /// <summary>A place to drill or a size to buy: the fraction when it is one, else the decimal.</summary>
    public string Size(double metres) => Inches && FigureText.FractionOfInch(new(metres), display.Fraction, 2e-6) is { } fraction
        ? fraction
        : Length(metres);

    /// <summary>The size as it is typed into the file: exact to a hundredth of a millimetre.</summary>
    public string Typed(double metres) => Inches
        ? FigureText.FractionOfInch(new(metres), 64, 2e-6) ?? $"{(metres / Shapes.Quantities.Length.MetresPerInch).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture)} in"
        : $"{(metres * 1000).ToString("0.##", System.Globalization.CultureInfo.InvariantCulture)} mm";

    public string Force(double newtons, Rounding rounding = Rounding.Up) => $"{ForceNumber(newtons, rounding)} {ForceUnitName}";

    /// <summary>The same without its unit, for lists that name it once.</summary>
    public string ForceNumber(double newtons, Rounding rounding = Rounding.Up) =>
        FigureText.Plain(display.Force == ForceUnit.PoundForce ? newtons / Shapes.Quantities.Force.NewtonsPerPoundForce : newtons, 1, rounding);

    public string ForceUnitName => display.Force == ForceUnit.PoundForce ? "lbf" : "N";

    public string Angle(double radians, Rounding rounding = Rounding.Nearest) => $"{FigureText.Plain(radians * PerDegree, 1, rounding)}°";

    public string Torque(double newtonMetres) => display.Force == ForceUnit.PoundForce
        ? $"{FigureText.Plain(newtonMetres / Shapes.Quantities.Torque.NewtonMetresPerPoundForceInch, 2)} lbf in"
        : $"{FigureText.Plain(newtonMetres, 3)} N m";

    /// <summary>A torque to tighten to, for either wrench, this builder's unit first: "1.13 N m (10 lbf in)".</summary>
    public string TightenTo(double newtonMetres) => Both(InchPounds(newtonMetres, Rounding.Nearest), Newtonmetres(newtonMetres, Rounding.Nearest));

    /// <summary>The same from and to, rounded to the inside.</summary>
    public string TightenTo(double low, double high) => Both(
        $"{InchPounds(low, Rounding.Up)} to {InchPounds(high, Rounding.Down)}",
        $"{Newtonmetres(low, Rounding.Up)} to {Newtonmetres(high, Rounding.Down)}");

    private static string InchPounds(double newtonMetres, Rounding rounding) => FigureText.Plain(newtonMetres / Shapes.Quantities.Torque.NewtonMetresPerPoundForceInch, 0, rounding);

    private static string Newtonmetres(double newtonMetres, Rounding rounding) => FigureText.Plain(newtonMetres, 2, rounding);

    private string Both(string inchPounds, string newtonMetres) => display.Force == ForceUnit.PoundForce
        ? $"{inchPounds} lbf in ({newtonMetres} N m)"
        : $"{newtonMetres} N m ({inchPounds} lbf in)";

    /// <summary>Any figure by its kind.</summary>
    public string Text(QuantityKind kind, double si, Rounding rounding = Rounding.Nearest) => !double.IsFinite(si) ? FigureText.Plain(si, 0) : kind switch
    {
        QuantityKind.Length => Length(si, rounding),
        QuantityKind.Angle => Angle(si, rounding),
        QuantityKind.Force => Force(si, rounding),
        QuantityKind.Torque => Torque(si),
        QuantityKind.Temperature => $"{FigureText.Plain(si, 0)} °C",
        QuantityKind.Stiffness => display.Force == ForceUnit.PoundForce
            ? $"{FigureText.Plain(si * Shapes.Quantities.Length.MetresPerInch / Shapes.Quantities.Force.NewtonsPerPoundForce, 0)} lbf/in"
            : $"{FigureText.Plain(si / 1000, 1)} N/mm",
        QuantityKind.Stress => Inches ? $"{FigureText.Plain(si / PascalsPerKsi, 1, rounding)} ksi" : $"{FigureText.Plain(si / 1e6, 0, rounding)} MPa",
        QuantityKind.TorsionRate => $"{FigureText.Plain(si, 4)} N m/rad",
        QuantityKind.Expansion => $"{FigureText.Plain(si * 1e6, 1)} ppm/K",
        QuantityKind.BendingStiffness => $"{FigureText.Plain(si, 3)} N m2",
        QuantityKind.LineWeight => $"{FigureText.Plain(si, 2)} N/m",
        QuantityKind.Density => $"{FigureText.Plain(si, 0)} kg/m3",
        _ => FigureText.Plain(si, Math.Abs(si) < 10 ? 3 : 1, rounding),
    };
}
