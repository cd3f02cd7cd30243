using Throwright.Engine.Model;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Marks;

/// <summary>Writes lengths and forces as this builder wants to see them.</summary>
internal sealed class ShownFigures(Display display)
{
    private const string NoBreak = "\u00A0";

    public bool Inches => display.Length == LengthUnit.Inch;

    public string LengthUnitName => Inches ? "in" : "mm";

    public string ForceUnitName => display.Force == ForceUnit.PoundForce ? "lbf" : "N";

    /// <summary>Three places in inches, one in mm, without the unit.</summary>
    public string Bare(double metres, Rounding rounding = Rounding.Nearest) =>
        FigureText.Plain(Inches ? metres / Shapes.Quantities.Length.MetresPerInch : metres * 1000, Inches ? 3 : 1, rounding);

    public string Length(double metres, Rounding rounding = Rounding.Nearest) => Bare(metres, rounding) + NoBreak + LengthUnitName;

    /// <summary>What is left: never shown larger than it is.</summary>
    public string Left(double metres) => Length(metres, Rounding.Down);

    public string BareLeft(double metres) => Bare(metres, Rounding.Down);

    /// <summary>A fraction where it is one, else the figure: for limits that people know as "1/8 in".</summary>
    public string Known(double metres) =>
        Inches && FigureText.FractionOfInch(new(metres), 64, 1e-7) is { } fraction ? NoBreaks(fraction) : Length(metres);

    /// <summary>What a tape shows: fractions of an inch, or half millimetres.</summary>
    public string Tape(double metres, Rounding rounding)
    {
        var step = Inches ? Shapes.Quantities.Length.MetresPerInch / display.Fraction : 0.0005;
        var count = metres / step;
        var rounded = step * (rounding switch { Rounding.Up => Math.Ceiling(count - 1e-6), Rounding.Down => Math.Floor(count + 1e-6), _ => Math.Round(count) });
        return Inches ? NoBreaks(FigureText.FractionOfInch(new(rounded), display.Fraction)!) : FigureText.Plain(rounded * 1000, 1) + NoBreak + "mm";
    }

    public double InForceUnit(double newtons) => display.Force == ForceUnit.PoundForce ? newtons / Shapes.Quantities.Force.NewtonsPerPoundForce : newtons;

    public string Force(double newtons, Rounding rounding = Rounding.Up)
    {
        var shown = InForceUnit(newtons);
        return FigureText.Plain(shown, Math.Abs(shown) < 100 && display.Force == ForceUnit.PoundForce ? 1 : 0, rounding) + NoBreak + ForceUnitName;
    }

    private static string NoBreaks(string text) => text.Replace(" ", NoBreak, StringComparison.Ordinal);
}
