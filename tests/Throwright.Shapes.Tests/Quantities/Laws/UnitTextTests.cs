using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using Throwright.Shapes.Quantities;

namespace Throwright.Shapes.Tests.Quantities.Laws;

/// <summary>What is read, what is refused and why. The rule: a text that two people could read differently is refused.</summary>
public class UnitTextTests
{
    private const double In = 0.0254, Ft = 0.3048, Deg = Math.PI / 180, Lbf = 4.4482216152605;

    [Theory]
    // Numbers.
    [InlineData(QuantityKind.Length, "5 mm", 0.005)]
    [InlineData(QuantityKind.Length, "5mm", 0.005)]
    [InlineData(QuantityKind.Length, "  5   mm  ", 0.005)]
    [InlineData(QuantityKind.Length, "+5 mm", 0.005)]
    [InlineData(QuantityKind.Length, "-5 mm", -0.005)]
    [InlineData(QuantityKind.Length, "\u22125 mm", -0.005)]
    [InlineData(QuantityKind.Length, "\u20135 mm", -0.005)]
    [InlineData(QuantityKind.Length, "5.25 mm", 0.00525)]
    [InlineData(QuantityKind.Length, ".5 mm", 0.0005)]
    [InlineData(QuantityKind.Length, "5. mm", 0.005)]
    [InlineData(QuantityKind.Length, "007 mm", 0.007)]
    [InlineData(QuantityKind.Length, "1e-3 m", 0.001)]
    [InlineData(QuantityKind.Length, "1E3 mm", 1)]
    [InlineData(QuantityKind.Length, "1e+3 mm", 1)]
    [InlineData(QuantityKind.Length, "1e\u22123 m", 0.001)]
    [InlineData(QuantityKind.Length, "0 mm", 0)]
    // Fractions.
    [InlineData(QuantityKind.Length, "3/4 in", 0.75 * In)]
    [InlineData(QuantityKind.Length, "-3/4 in", -0.75 * In)]
    [InlineData(QuantityKind.Length, "1 3/4 in", 1.75 * In)]
    [InlineData(QuantityKind.Length, "1-3/4 in", 1.75 * In)]
    [InlineData(QuantityKind.Length, "1\u20113/4 in", 1.75 * In)]
    [InlineData(QuantityKind.Length, "-1 3/4 in", -1.75 * In)]
    [InlineData(QuantityKind.Length, "\u22121 3/4 in", -1.75 * In)]
    [InlineData(QuantityKind.Length, "-1-3/4in", -1.75 * In)]
    [InlineData(QuantityKind.Length, "10 15/16\"", 10.9375 * In)]
    [InlineData(QuantityKind.Length, "3\u20444 in", 0.75 * In)]
    [InlineData(QuantityKind.Length, "1\u00A03/4\u202Fin", 1.75 * In)]
    [InlineData(QuantityKind.Length, "1\u20093/4\tin", 1.75 * In)]
    [InlineData(QuantityKind.Angle, "22 1/2 deg", 22.5 * Deg)]
    // Feet and inches.
    [InlineData(QuantityKind.Length, "4 ft 2 1/2 in", 50.5 * In)]
    [InlineData(QuantityKind.Length, "5' 11\"", 71 * In)]
    [InlineData(QuantityKind.Length, "5'11\"", 71 * In)]
    [InlineData(QuantityKind.Length, "5'-11\"", 71 * In)]
    [InlineData(QuantityKind.Length, "5\u2032 11\u2033", 71 * In)]
    [InlineData(QuantityKind.Length, "5 ft 11.5 in", 71.5 * In)]
    [InlineData(QuantityKind.Length, "5ft11in", 71 * In)]
    [InlineData(QuantityKind.Length, "5 feet 0 inches", 60 * In)]
    [InlineData(QuantityKind.Length, "1'-2-3/4\"", 14.75 * In)]
    [InlineData(QuantityKind.Length, "-4 ft 2 in", -50 * In)]
    [InlineData(QuantityKind.Length, "-0 ft 2 in", -2 * In)]
    [InlineData(QuantityKind.Length, "4' 02\"", 50 * In)]
    [InlineData(QuantityKind.Length, "4 1/2 ft", 4.5 * Ft)]
    // Units with more than one word.
    [InlineData(QuantityKind.Torque, "5 in-lbf", 5 * Lbf * In)]
    [InlineData(QuantityKind.Torque, "5 lbf-in", 5 * Lbf * In)]
    [InlineData(QuantityKind.Torque, "5 1/2 lbf in", 5.5 * Lbf * In)]
    [InlineData(QuantityKind.Torque, "5-1/2 in-lbf", 5.5 * Lbf * In)]
    [InlineData(QuantityKind.Torque, "2 N·m", 2)]
    [InlineData(QuantityKind.Torque, "2 N · m", 2)]
    [InlineData(QuantityKind.Torque, "2 N*m", 2)]
    [InlineData(QuantityKind.Torque, "2 N\u22C5m", 2)]
    [InlineData(QuantityKind.Torque, "2 N-m", 2)]
    [InlineData(QuantityKind.Torque, "2 N\u00A0m", 2)]
    [InlineData(QuantityKind.TorsionRate, "2 in-lbf/deg", 2 * Lbf * In / Deg)]
    [InlineData(QuantityKind.TorsionRate, "0.3 N·m/rad", 0.3)]
    [InlineData(QuantityKind.Angle, "45°", 45 * Deg)]
    [InlineData(QuantityKind.Temperature, "-22 degF", -30)]
    [InlineData(QuantityKind.Expansion, "11.7 ppm/K", 11.7e-6)]
    [InlineData(QuantityKind.Expansion, "6.5 ppm/degF", 11.7e-6)]
    [InlineData(QuantityKind.Expansion, "12e-6 /K", 12e-6)]
    [InlineData(QuantityKind.Density, "7850 kg/m3", 7850)]
    [InlineData(QuantityKind.Density, "7.85 g/cm³", 7850)]
    [InlineData(QuantityKind.Length, "5 \u03BCm", 5e-6)]
    [InlineData(QuantityKind.Length, "5 µm", 5e-6)]
    // Numbers without a unit.
    [InlineData(QuantityKind.Ratio, "0.15", 0.15)]
    [InlineData(QuantityKind.Ratio, "-1/4", -0.25)]
    [InlineData(QuantityKind.Ratio, "1 1/2", 1.5)]
    public void Read_PlainValue_IsRead(QuantityKind kind, string text, double si)
    {
        var read = Accepted(kind, text);
        Assert.Equal(si, read.Nominal, 5e-16 * Math.Max(Math.Abs(si), kind == QuantityKind.Temperature ? 60 : 0));
        Assert.Equal((0, 0, Spread.Uniform), (read.Minus, read.Plus, read.Spread));
    }

    [Theory]
    [InlineData(QuantityKind.Length, "5 mm ± 0.1 mm", 0.005, 0.0001, 0.0001)]
    [InlineData(QuantityKind.Length, "5 mm ± 0.1", 0.005, 0.0001, 0.0001)]
    [InlineData(QuantityKind.Length, "44.5 ± 0.5 mm", 0.0445, 0.0005, 0.0005)]
    [InlineData(QuantityKind.Length, "44.5±0.5mm", 0.0445, 0.0005, 0.0005)]
    [InlineData(QuantityKind.Length, "44.5 +/- 0.5 mm", 0.0445, 0.0005, 0.0005)]
    [InlineData(QuantityKind.Length, "44.5 -/+ 0.5 mm", 0.0445, 0.0005, 0.0005)]
    [InlineData(QuantityKind.Length, "44.5 mm +- 0.5", 0.0445, 0.0005, 0.0005)]
    [InlineData(QuantityKind.Length, "1 in ± 1 mm", In, 0.001, 0.001)]
    [InlineData(QuantityKind.Length, "1 3/4 in ± 1/16", 1.75 * In, In / 16, In / 16)]
    [InlineData(QuantityKind.Length, "1 3/4 ± 1/16 in", 1.75 * In, In / 16, In / 16)]
    [InlineData(QuantityKind.Length, "5' 11\" ± 1/8", 71 * In, In / 8, In / 8)]
    [InlineData(QuantityKind.Length, "5' 11\" +1/8/-1/4 in", 71 * In, In / 4, In / 8)]
    [InlineData(QuantityKind.Length, "-5 mm ± 20 %", -0.005, 0.001, 0.001)]
    [InlineData(QuantityKind.Length, "5 mm +20%/-10%", 0.005, 0.0005, 0.001)]
    [InlineData(QuantityKind.Length, "5 mm +0.1/-0.2", 0.005, 0.0002, 0.0001)]
    [InlineData(QuantityKind.Length, "5 mm +0.1 mm/-0.2 mm", 0.005, 0.0002, 0.0001)]
    [InlineData(QuantityKind.Length, "5 mm +0.1 mm / -0.2 mm", 0.005, 0.0002, 0.0001)]
    [InlineData(QuantityKind.Length, "5 mm + 0.1 / - 0.2 mm", 0.005, 0.0002, 0.0001)]
    [InlineData(QuantityKind.Length, "5 mm \u22120.2/+0.1 mm", 0.005, 0.0002, 0.0001)]
    [InlineData(QuantityKind.Length, "5 mm -0.2/+0.1", 0.005, 0.0002, 0.0001)]
    [InlineData(QuantityKind.Length, "5 +0.1/-0.2 mm", 0.005, 0.0002, 0.0001)]
    [InlineData(QuantityKind.Length, "5 +0.1 mm/-0.2", 0.005, 0.0002, 0.0001)]
    [InlineData(QuantityKind.Length, "5 mm +0.1 mm/-0.2", 0.005, 0.0002, 0.0001)]
    [InlineData(QuantityKind.Length, "5 mm +1e-1/-2e-1", 0.005, 0.0002, 0.0001)]
    [InlineData(QuantityKind.Length, "5 in +1-1/2/-1/4 in", 5 * In, In / 4, 1.5 * In)]
    [InlineData(QuantityKind.Length, "5 mm +1 mm/-0.01 in", 0.005, 0.000254, 0.001)]
    [InlineData(QuantityKind.Length, "5 mm +0.1/-0", 0.005, 0, 0.0001)]
    [InlineData(QuantityKind.Length, "5 \" +0.1/-0.2 in", 5 * In, 0.2 * In, 0.1 * In)]
    [InlineData(QuantityKind.Angle, "92 deg +2/-1 deg", 92 * Deg, Deg, 2 * Deg)]
    [InlineData(QuantityKind.Torque, "6 lbf in ± 20 %", 6 * Lbf * In, 1.2 * Lbf * In, 1.2 * Lbf * In)]
    [InlineData(QuantityKind.Torque, "6 in-lbf +1/-2 in-lbf", 6 * Lbf * In, 2 * Lbf * In, Lbf * In)]
    [InlineData(QuantityKind.Stiffness, "400 N/mm +10/-5 N/mm", 400_000, 5000, 10_000)]
    [InlineData(QuantityKind.Ratio, "0.15 ± 0.05", 0.15, 0.05, 0.05)]
    [InlineData(QuantityKind.Ratio, "0.15 +0.1/-0.05", 0.15, 0.05, 0.1)]
    [InlineData(QuantityKind.Ratio, "0.15 ± 20 %", 0.15, 0.03, 0.03)]
    // A limit of temperature is a difference: no offset.
    [InlineData(QuantityKind.Temperature, "68 degF ± 9 degF", 20, 5, 5)]
    [InlineData(QuantityKind.Temperature, "68 ± 9 degF", 20, 5, 5)]
    [InlineData(QuantityKind.Temperature, "68 degF ± 9", 20, 5, 5)]
    [InlineData(QuantityKind.Temperature, "20 degC ± 5 K", 20, 5, 5)]
    [InlineData(QuantityKind.Temperature, "20 degC +18 degF/-9 degF", 20, 5, 10)]
    public void Read_ValueWithLimits_IsRead(QuantityKind kind, string text, double si, double minus, double plus)
    {
        var read = Accepted(kind, text);
        Assert.Equal(si, read.Nominal, 1e-14 * Math.Abs(si));
        Assert.Equal(minus, read.Minus, 1e-14 * minus);
        Assert.Equal(plus, read.Plus, 1e-14 * plus);
        Assert.Equal(Spread.Uniform, read.Spread);
        Assert.Equal(Spread.Normal, Accepted(kind, text + " normal").Spread);
    }

    [Theory]
    // Nothing, or nothing that starts as a number.
    [InlineData(QuantityKind.Length, "", "empty")]
    [InlineData(QuantityKind.Length, " \t\u00A0", "empty")]
    [InlineData(QuantityKind.Length, "mm", "\"mm\" does not start with a number")]
    [InlineData(QuantityKind.Length, "normal", "\"normal\" does not start with a number")]
    [InlineData(QuantityKind.Length, "± 5 mm", "\"± 5 mm\" does not start with a number")]
    [InlineData(QuantityKind.Length, "--5 mm", "\"--5 mm\" does not start with a number")]
    [InlineData(QuantityKind.Length, "-+5 mm", "\"-+5 mm\" does not start with a number")]
    [InlineData(QuantityKind.Length, ". mm", "\". mm\" does not start with a number")]
    [InlineData(QuantityKind.Length, "\u0661 mm", "\"\u0661 mm\" does not start with a number")]
    [InlineData(QuantityKind.Length, "NaN mm", "\"NaN mm\" does not start with a number")]
    [InlineData(QuantityKind.Length, "Infinity mm", "\"Infinity mm\" does not start with a number")]
    [InlineData(QuantityKind.Length, "\u00BD in", "\"\u00BD in\" does not start with a number")]
    [InlineData(QuantityKind.Length, "a long text that is no quantity", "\"a long text that is …\" does not start with a number")]
    // A list's dash is no minus.
    [InlineData(QuantityKind.Length, "- 5 mm", "the sign must stand directly before the number")]
    [InlineData(QuantityKind.Length, "\u2013 5 mm", "the sign must stand directly before the number")]
    [InlineData(QuantityKind.Temperature, "- 5 degC", "the sign must stand directly before the number")]
    [InlineData(QuantityKind.Length, "+ 5 mm", "the sign must stand directly before the number")]
    // Unit missing or unknown.
    [InlineData(QuantityKind.Length, "44.5", "has no unit")]
    [InlineData(QuantityKind.Length, "1 1/2", "has no unit")]
    [InlineData(QuantityKind.Length, "44.5 ± 0.5", "has no unit")]
    [InlineData(QuantityKind.Length, "44.5 ± 20 %", "has no unit")]
    [InlineData(QuantityKind.Temperature, "20 ± 5 K", "has no unit")]
    [InlineData(QuantityKind.Length, "5 MM", "\"MM\" is not a known unit; did you mean \"mm\"?")]
    [InlineData(QuantityKind.Torque, "5 nm", "\"nm\" is not a known unit; did you mean \"Nm\"?")]
    [InlineData(QuantityKind.Length, "5 parsec", "\"parsec\" is not a known unit (in, mm, cm, m, ft)")]
    [InlineData(QuantityKind.Length, "5 deg", "\"deg\" is a unit of angle, not of length")]
    [InlineData(QuantityKind.Angle, "5'", "\"'\" is a unit of length, not of angle")]
    [InlineData(QuantityKind.Force, "5 lbf in", "\"lbf in\" is a unit of torque, not of force")]
    [InlineData(QuantityKind.Temperature, "20 deg", "\"deg\" is a unit of angle, not of temperature")]
    [InlineData(QuantityKind.Ratio, "15 %", "\"%\" is too much: a plain number is expected")]
    [InlineData(QuantityKind.Ratio, "0.15 mm", "\"mm\" is too much: a plain number is expected")]
    [InlineData(QuantityKind.Length, "5 mil", "\"mil\" is 0.001 in to some and 1 mm to others; write \"thou\" or \"mm\"")]
    [InlineData(QuantityKind.Length, "5 mils", "\"mils\" is 0.001 in to some and 1 mm to others; write \"thou\" or \"mm\"")]
    [InlineData(QuantityKind.Length, "5''", "\"''\" is not a known unit (in, mm, cm, m, ft)")]
    // Commas, points, grouping, other notations.
    [InlineData(QuantityKind.Length, "5\nmm", "a line break or control character within the value")]
    [InlineData(QuantityKind.Length, "5 \u001B[31mmm", "a line break or control character within the value")]
    [InlineData(QuantityKind.Length, "1,5 mm", "a comma is not a decimal point here")]
    [InlineData(QuantityKind.Length, "1,000.5 mm", "a comma is not a decimal point here")]
    [InlineData(QuantityKind.Length, "4 ft, 2 in", "a comma is not a decimal point here")]
    [InlineData(QuantityKind.Length, "1.5.2 mm", "the number has two points")]
    [InlineData(QuantityKind.Length, "1..5 mm", "the number has two points")]
    [InlineData(QuantityKind.Length, "1 3/4.5 in", "the number has two points")]
    [InlineData(QuantityKind.Length, "1e400 mm", "the number is too large")]
    [InlineData(QuantityKind.Force, "1e308 kN", "not a finite number")]
    [InlineData(QuantityKind.Force, "1 N ± 1e308 kN", "the limit is not a finite number")]
    [InlineData(QuantityKind.Force, "1e300 N ± 1e300 %", "the limit is not a finite number")]
    // Fractions that may be something else.
    [InlineData(QuantityKind.Length, "11/2 in", "\"11/2\" is a fraction of 1 or more: is a space missing? Write a whole number and a fraction below 1")]
    [InlineData(QuantityKind.Length, "4/4 in", "\"4/4\" is a fraction of 1 or more: is a space missing? Write a whole number and a fraction below 1")]
    [InlineData(QuantityKind.Length, "1 4/4 in", "the fraction of a mixed number must be below 1")]
    [InlineData(QuantityKind.Length, "1 5/4 in", "the fraction of a mixed number must be below 1")]
    [InlineData(QuantityKind.Length, "1 000/2 mm", "the fraction of a mixed number has one or two digits above the line")]
    [InlineData(QuantityKind.Length, "1 100/128 in", "the fraction of a mixed number has one or two digits above the line")]
    [InlineData(QuantityKind.Length, "1 01/2 in", "the fraction of a mixed number has one or two digits above the line")]
    [InlineData(QuantityKind.Length, "1/0 in", "the fraction has zero below the line")]
    [InlineData(QuantityKind.Length, "1 3/ 4 in", "the fraction has no lower number")]
    [InlineData(QuantityKind.Length, "1/ in", "the fraction has no lower number")]
    [InlineData(QuantityKind.Length, "11\u204416 in", "\"11\u204416\" may be a mixed number set small; write it with a plain \"/\"")]
    [InlineData(QuantityKind.Length, "1\u22123/4 in", "a dash between two things may mean a difference or a range; write \"1 3/4 in\" or \"4 ft 2 in\"")]
    [InlineData(QuantityKind.Length, "5\u20136 mm", "a dash between two things may mean a difference or a range; write \"1 3/4 in\" or \"4 ft 2 in\"")]
    // Feet and inches.
    [InlineData(QuantityKind.Length, "4 ft 12 in", "feet and inches are written \"4 ft 2 1/2 in\" with whole feet and less than 12 in")]
    [InlineData(QuantityKind.Length, "4 ft 13 in", "feet and inches are written \"4 ft 2 1/2 in\" with whole feet and less than 12 in")]
    [InlineData(QuantityKind.Length, "4.5 ft 2 in", "feet and inches are written \"4 ft 2 1/2 in\" with whole feet and less than 12 in")]
    [InlineData(QuantityKind.Length, "4 ft 2", "feet and inches are written \"4 ft 2 1/2 in\" with whole feet and less than 12 in")]
    [InlineData(QuantityKind.Length, "4 ft 2 mm", "feet and inches are written \"4 ft 2 1/2 in\" with whole feet and less than 12 in")]
    [InlineData(QuantityKind.Length, "1'000 in", "feet and inches are written \"4 ft 2 1/2 in\" with whole feet and less than 12 in")]
    [InlineData(QuantityKind.Length, "12 in 3", "\"in 3\" after the number is not one unit; only feet and inches are added up")]
    [InlineData(QuantityKind.Length, "1 m 5 cm", "\"m 5 cm\" after the number is not one unit; only feet and inches are added up")]
    [InlineData(QuantityKind.Length, "0x10 mm", "\"x10 mm\" after the number is not one unit; only feet and inches are added up")]
    // Limits.
    [InlineData(QuantityKind.Length, "5 mm ± -1 mm", "the limit after ± must be a plain value such as \"± 0.5 mm\"")]
    [InlineData(QuantityKind.Length, "5 mm ±", "the limit after ± must be a plain value such as \"± 0.5 mm\"")]
    [InlineData(QuantityKind.Length, "5 mm ± mm", "\"mm\" does not start with a number")]
    [InlineData(QuantityKind.Length, "5 mm ± 1 deg", "\"deg\" is a unit of angle, not of length")]
    [InlineData(QuantityKind.Length, "5 mm ± 1 ± 2", "\"± 2\" is not a known unit (in, mm, cm, m, ft)")]
    [InlineData(QuantityKind.Length, "1 in + 2 mm", "limits must be written \"± a\" or \"+a/-b\"")]
    [InlineData(QuantityKind.Length, "5 mm +1", "limits must be written \"± a\" or \"+a/-b\"")]
    [InlineData(QuantityKind.Length, "5 mm -1", "limits must be written \"± a\" or \"+a/-b\"")]
    [InlineData(QuantityKind.Length, "5 mm +1/+2", "limits must be written \"± a\" or \"+a/-b\"")]
    [InlineData(QuantityKind.Length, "5 mm +1/2", "limits must be written \"± a\" or \"+a/-b\"")]
    [InlineData(QuantityKind.Length, "5 mm +/-", "the limit after ± must be a plain value such as \"± 0.5 mm\"")]
    [InlineData(QuantityKind.Length, "5 mm +1/-", "limits must be written \"± a\" or \"+a/-b\"")]
    [InlineData(QuantityKind.Length, "5 mm + +1/-2", "limits must be written \"± a\" or \"+a/-b\"")]
    [InlineData(QuantityKind.Length, "5 mm +1/- -2", "limits must be written \"± a\" or \"+a/-b\"")]
    // +1-1/2 is a mixed number or two limits: only a slash before the second sign tells.
    [InlineData(QuantityKind.Length, "5 in +1-1/2 in", "limits must be written \"± a\" or \"+a/-b\"")]
    [InlineData(QuantityKind.Length, "5 in +1 -1/2 in", "limits must be written \"± a\" or \"+a/-b\"")]
    [InlineData(QuantityKind.Length, "1 -3/4 in +1/8 in", "limits must be written \"± a\" or \"+a/-b\"")]
    [InlineData(QuantityKind.Length, "1 -3/4 in", "limits must be written \"± a\" or \"+a/-b\"")]
    [InlineData(QuantityKind.Length, "1 - 3/4 in", "limits must be written \"± a\" or \"+a/-b\"")]
    [InlineData(QuantityKind.Length, "4 ft -2 in", "limits must be written \"± a\" or \"+a/-b\"")]
    [InlineData(QuantityKind.Length, "4 ft - 2 in", "limits must be written \"± a\" or \"+a/-b\"")]
    [InlineData(QuantityKind.Length, "4' - 2\"", "limits must be written \"± a\" or \"+a/-b\"")]
    // One bare limit beside one with another unit.
    [InlineData(QuantityKind.Length, "4 ft +1/-1 in", "write the unit behind both limits")]
    [InlineData(QuantityKind.Length, "5 mm +1 in/-1", "write the unit behind both limits")]
    [InlineData(QuantityKind.Length, "10 mm +20/-10 %", "write the unit behind both limits")]
    [InlineData(QuantityKind.Length, "10 mm +20 %/-10", "write the unit behind both limits")]
    [InlineData(QuantityKind.Ratio, "0.15 +20 %/-0.05", "write the unit behind both limits")]
    [InlineData(QuantityKind.Temperature, "20 degC +5/-10 degF", "write the unit behind both limits")]
    [InlineData(QuantityKind.Length, "44.5 +1 mm/-1 in", "has no unit")]
    [InlineData(QuantityKind.Length, "44.5 +1 mm/-10 %", "has no unit")]
    [InlineData(QuantityKind.Length, "0 mm ± 5 %", "a share of zero is nothing; write the limit with its unit")]
    [InlineData(QuantityKind.Temperature, "20 degC ± 5 %", "a share of a temperature has no meaning; write the limit in degrees")]
    [InlineData(QuantityKind.Length, "5 mm ± 5 mm %", "a limit in per cent is written \"± 20 %\"")]
    [InlineData(QuantityKind.Temperature, "-300 degC", "below absolute zero")]
    [InlineData(QuantityKind.Temperature, "-1 K", "below absolute zero")]
    public void Read_WhatCannotBeReadInOneWay_IsRefusedWithItsReason(QuantityKind kind, string text, string reason)
    {
        Assert.False(UnitText.TryRead(kind, text, out var read, out var problem), $"read as {read}");
        Assert.Equal(reason, problem);
        Assert.Equal(default, read);
    }

    [Theory]
    [InlineData(QuantityKind.Length, "1 3 /4 in")]
    [InlineData(QuantityKind.Length, "1/2/3 in")]
    [InlineData(QuantityKind.Length, "1 1/2/3 in")]
    [InlineData(QuantityKind.Length, "1/2 3 in")]
    [InlineData(QuantityKind.Length, "1/4-3/8 in")]
    [InlineData(QuantityKind.Length, "3 in 1/2")]
    [InlineData(QuantityKind.Length, "1.5 1/2 in")]
    [InlineData(QuantityKind.Length, "1.5/2 in")]
    [InlineData(QuantityKind.Length, "1e3/2 in")]
    [InlineData(QuantityKind.Length, "1 000 mm")]
    [InlineData(QuantityKind.Length, "1 000/2 mm")]
    [InlineData(QuantityKind.Length, "1_000 mm")]
    [InlineData(QuantityKind.Length, "1'000 mm")]
    [InlineData(QuantityKind.Length, "1'5 mm")]
    [InlineData(QuantityKind.Length, "1·5 mm")]
    [InlineData(QuantityKind.Length, "1·1/2 in")]
    [InlineData(QuantityKind.Length, "2*1/2 in")]
    [InlineData(QuantityKind.Length, "2 * 1/2 in")]
    [InlineData(QuantityKind.Length, "2*3 mm")]
    [InlineData(QuantityKind.Length, "5 mm * 2")]
    [InlineData(QuantityKind.Length, "5e mm")]
    [InlineData(QuantityKind.Length, "5 e3 mm")]
    [InlineData(QuantityKind.Length, "5-6 mm")]
    [InlineData(QuantityKind.Length, "5..6 mm")]
    [InlineData(QuantityKind.Length, "5 to 6 mm")]
    [InlineData(QuantityKind.Length, "< 5 mm")]
    [InlineData(QuantityKind.Length, "~5 mm")]
    [InlineData(QuantityKind.Length, "5 mm?")]
    [InlineData(QuantityKind.Length, "5 mm mm")]
    [InlineData(QuantityKind.Length, "5 in2")]
    [InlineData(QuantityKind.Length, "1 in+2 mm")]
    [InlineData(QuantityKind.Length, "1 ft+2 in")]
    [InlineData(QuantityKind.Length, "1 ft- 2 in")]
    [InlineData(QuantityKind.Length, "1 ft--2 in")]
    [InlineData(QuantityKind.Length, "1 ft 2 in 3 in")]
    [InlineData(QuantityKind.Length, "1 ft 2 ft")]
    [InlineData(QuantityKind.Length, "11\" 5'")]
    [InlineData(QuantityKind.Length, "5 ft 6")]
    [InlineData(QuantityKind.Length, "5'6")]
    [InlineData(QuantityKind.Length, "1\u00BD in")]
    [InlineData(QuantityKind.Length, "1\u2007\u20073/4 in")]
    [InlineData(QuantityKind.Length, "5\u200Bmm")]
    [InlineData(QuantityKind.Length, "1\uFF0C5 mm")]
    [InlineData(QuantityKind.Length, "1\u066B5 mm")]
    [InlineData(QuantityKind.Length, "1\u0661 mm")]
    [InlineData(QuantityKind.Length, "4 ft\u22122 in")]
    [InlineData(QuantityKind.Length, "5 mm ± 1/2/3")]
    [InlineData(QuantityKind.Length, "5 mm +-1/-1")]
    [InlineData(QuantityKind.Length, "5 mm ± 11/2 in")]
    [InlineData(QuantityKind.Length, "5 mm ± 1 ft 1 in")]
    [InlineData(QuantityKind.Length, "5 mm ± 1 -2")]
    [InlineData(QuantityKind.Length, "5mm+1/-2")]
    [InlineData(QuantityKind.Length, "5 ft -2 in ± 1")]
    [InlineData(QuantityKind.Length, "1 -3/4 in ± 1/8 in")]
    [InlineData(QuantityKind.Length, "- 5 mm ± 1 mm")]
    [InlineData(QuantityKind.Length, "5 mm +- 1 ± 2")]
    [InlineData(QuantityKind.Length, "5 mm ± 1 mm +1/-2")]
    [InlineData(QuantityKind.Length, "13\u20444 in")]
    [InlineData(QuantityKind.Length, "5 in.")]
    [InlineData(QuantityKind.Length, "5+1/-2 mm")]
    [InlineData(QuantityKind.Length, "1e+-3 mm")]
    [InlineData(QuantityKind.Length, "5 mm Normal")]
    [InlineData(QuantityKind.Length, "5 mm ± 1 mm normal normal")]
    [InlineData(QuantityKind.Length, "\"5 mm\"")]
    [InlineData(QuantityKind.Angle, "45° 30'")]
    [InlineData(QuantityKind.Angle, "90 deg 30 min")]
    [InlineData(QuantityKind.Angle, "1-2 deg")]
    [InlineData(QuantityKind.Angle, "3/4e2 deg")]
    [InlineData(QuantityKind.Torque, "5 in - lbf")]
    [InlineData(QuantityKind.Torque, "5-in-lbf")]
    [InlineData(QuantityKind.Torque, "5 ft 3 lbf")]
    [InlineData(QuantityKind.Torque, "5 mN")]
    [InlineData(QuantityKind.Torque, "5 m N")]
    [InlineData(QuantityKind.Force, "20 kg")]
    [InlineData(QuantityKind.Force, "20 lbs")]
    [InlineData(QuantityKind.Force, "20 mN")]
    [InlineData(QuantityKind.Stress, "200 mPa")]
    [InlineData(QuantityKind.Stiffness, "5 N/mm2")]
    [InlineData(QuantityKind.Expansion, "12/K")]
    [InlineData(QuantityKind.Expansion, "12 ppm")]
    [InlineData(QuantityKind.Expansion, "12 K")]
    [InlineData(QuantityKind.Density, "7850 kg")]
    [InlineData(QuantityKind.Ratio, "1 5")]
    [InlineData(QuantityKind.Ratio, "1:5")]
    [InlineData(QuantityKind.Ratio, "0.1-0.2")]
    public void Read_WhatCannotBeReadInOneWay_IsRefused(QuantityKind kind, string text)
    {
        Assert.False(UnitText.TryRead(kind, text, out var read, out var problem), $"read as {read}");
        Assert.False(string.IsNullOrWhiteSpace(problem));
    }

    [Fact]
    public void Read_LongText_IsRefused()
    {
        Assert.False(UnitText.TryRead(QuantityKind.Length, new string('1', 201) + " mm", out _, out var problem));
        Assert.Equal("longer than 200 characters", problem);
        Assert.True(UnitText.TryRead(QuantityKind.Length, new string('0', 190) + "1 mm", out var read, out _));
        Assert.Equal(0.001, read.Nominal);
    }

    [Fact]
    public void Read_EveryUnitOfEveryKind_IsReadInItsKindWithAndWithoutSpaceAndLimits()
    {
        foreach (var kind in Enum.GetValues<QuantityKind>())
        {
            foreach (var (unit, factor) in UnitText.UnitsOf(kind))
            {
                foreach (var text in (string[])[$"2.5 {unit}", $"2.5{unit}", $"2.5 {unit} ± 0.5 {unit}", $"2.5 {unit} +0.5/-0.5"])
                {
                    var read = Accepted(kind, text);
                    Assert.Equal(unit, read.Unit);
                    if (kind != QuantityKind.Temperature)
                        Assert.Equal(2.5 * factor, read.Nominal);
                    Assert.Equal(text.Contains("0.5") ? 0.5 * factor : 0, read.Plus);
                    Assert.Equal(read.Plus, read.Minus);
                }
            }
        }
    }

    [Fact]
    public void Read_ExamplesInTheMessages_AreReadByTheirKind()
    {
        foreach (var kind in Enum.GetValues<QuantityKind>())
        {
            Assert.StartsWith(UnitText.KindName(kind) + ", e.g. ", UnitText.Expected(kind));
            var examples = UnitText.Expected(kind)[(UnitText.KindName(kind).Length + 7)..].Split(", ");
            foreach (var example in examples)
            {
                Assert.True(example[0] == '"' && example[^1] == '"');
                Accepted(kind, example[1..^1]);
            }
        }
    }

    [Fact]
    public void Read_IntoAQuantity_KeepsValueAndLimits()
    {
        Assert.True(UnitText.TryRead<Length>("10 mm +2/-1 mm normal", out var value, out _));
        Assert.Equal((0.01, Spread.Normal), (value.Nominal.Metres, value.Spread));
        Assert.Equal(0.009, value.Least, 1e-17);
        Assert.Equal(0.012, value.Most, 1e-17);
        Assert.False(value.IsExact);
        Assert.False(UnitText.TryRead<Angle>("10 mm", out var none, out var problem));
        Assert.Equal(default, none);
        Assert.Equal("\"mm\" is a unit of length, not of angle", problem);
        Assert.Throws<ArgumentNullException>(() => UnitText.TryRead<Length>(null!, out _, out _));
    }

    [Fact]
    public void Toleranced_MadeAndMoved_KeepsItsLimits()
    {
        var plain = Toleranced<Length>.PlusMinus(new(2), 0.5);
        Assert.Equal((1.5, 2.5, false), (plain.Least, plain.Most, plain.IsExact));
        Assert.Equal((2.5, 3.5), (plain.At(3).Least, plain.At(3).Most));
        Assert.True(Toleranced<Length>.Exact(new(2)).IsExact);
    }

    [Fact]
    public void Read_FiguresThatAreWritten_ReadBack() =>
        Gen.Select(Gen.Double[-1e4, 1e4], Gen.Int[0, 6], Gen.Enum<Rounding>()).Sample(
            (value, places, rounding) =>
            {
                var text = FigureText.Plain(value, places, rounding);
                var read = Accepted(QuantityKind.Stress, text + " Pa").Nominal;
                Assert.InRange(read - value, -1.000001 * Math.Pow(10, -places), 1.000001 * Math.Pow(10, -places));
                Assert.Equal(text, FigureText.Plain(read, places));
                var limit = FigureText.Plain(Math.Abs(value), places);
                var both = Accepted(QuantityKind.Stress, $"{text} ± {limit} Pa");
                Assert.Equal((read, double.Parse(limit, CultureInfo.InvariantCulture)), (both.Nominal, both.Plus));
            },
            iter: 20_000);

    [Fact]
    public void Read_FractionsThatAreWritten_ReadBack() =>
        Gen.Select(Gen.Double[-50, 50], Gen.OneOf<int>(2, 4, 8, 16, 32, 64)).Sample(
            (inches, denominator) =>
            {
                var text = FigureText.FractionOfInch(Length.FromInches(inches), denominator);
                Assert.NotNull(text);
                var read = Accepted(QuantityKind.Length, text).Nominal / In;
                Assert.InRange(read - inches, -0.5000001 / denominator, 0.5000001 / denominator);
                Assert.Equal(Math.Round(read * denominator), read * denominator, 1e-9);
            },
            iter: 20_000);

    [Fact]
    public void Read_RoundTripOfNumbers_IsExact() =>
        Gen.Select(Gen.Double, Gen.Double[0, 1e300]).Sample(
            (value, limit) =>
            {
                if (!double.IsFinite(value))
                    return;
                // "R" may write "1E-05" or "-1.5E+20".
                var text = string.Create(CultureInfo.InvariantCulture, $"{value:R} ± {limit:R} Pa");
                var read = Accepted(QuantityKind.Stress, text);
                Assert.Equal((value, limit, limit), (read.Nominal, read.Minus, read.Plus));
            },
            iter: 20_000);

    [Fact]
    public void Read_Garbage_NeverThrowsAndIsReadOnlyIfItFitsTheGrammar()
    {
        string[] pieces =
        [
            "0", "1", "2", "3/4", "11/2", "1.5", ".", "/", "-", "+", "±", "+/-", "-/+", "/-", " ", "  ", "\t", "\n", "e", "E", "e3", "mm", "in", "ft", "'", "\"", "deg", "°", "lbf", "lb", "N", "m",
            "%", "normal", " normal", ",", "*", "·", "\u2212", "\u2013", "\u2044", "\u00BD", "\u0661", "\uD83D", "\uDE00", "\0", "\u200B", "x", "K", "degF", "9999999999", "1e308", "psi", "(", ")", "_",
        ];
        var kinds = Enum.GetValues<QuantityKind>();
        var grammars = kinds.ToDictionary(kind => kind, Grammar);
        var read = 0;
        Parallel.For(0, 10, chunk =>
        {
            var random = new Random(chunk);
            for (var i = 0; i < 30_000; i++)
            {
                var kind = kinds[random.Next(kinds.Length)];
                var units = UnitText.UnitsOf(kind);
                // Half of the texts begin sensibly, so that many come near the border of what is read.
                var start = random.Next(2) == 0 ? "" : $"{random.Next(20)} {units[random.Next(units.Count)].Unit}";
                var text = start + string.Concat(Enumerable.Range(0, random.Next(1, 9)).Select(_ => random.Next(20) == 0
                    ? ((char)random.Next(0x10000)).ToString()
                    : random.Next(6) == 0 ? units[random.Next(units.Count)].Unit : pieces[random.Next(pieces.Length)]));
                if (UnitText.TryRead(kind, text, out var value, out var problem))
                {
                    Interlocked.Increment(ref read);
                    Assert.Null(problem);
                    Assert.True(double.IsFinite(value.Nominal) && double.IsFinite(value.Minus) && double.IsFinite(value.Plus), text);
                    Assert.True(value.Minus >= 0 && value.Plus >= 0, text);
                    Assert.True(grammars[kind].IsMatch(Plain(text)), $"\"{text}\" was read as {kind} {value}");
                }
                else
                {
                    Assert.False(string.IsNullOrWhiteSpace(problem), text);
                    Assert.Equal(default, value);
                }
            }
        });
        Assert.True(read > 2000, $"only {read} texts were read: the garbage is too wild to say much");
        TestContext.Current.TestOutputHelper?.WriteLine($"{read} of 300000 read");
    }

    /// <summary>The grammar once more, written as a pattern and independent of the reader.</summary>
    private static Regex Grammar(QuantityKind kind)
    {
        const string Number = @"(?:(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?|[0-9]+[ -][1-9][0-9]?/[0-9]+|[0-9]+/[0-9]+)";
        string Any(IEnumerable<string> units) => "(?:" + string.Join("|", units.OrderByDescending(u => u.Length).Select(u =>
            kind is QuantityKind.Torque or QuantityKind.TorsionRate or QuantityKind.BendingStiffness ? Regex.Escape(u).Replace(@"\ ", "(?: | ?[·*] ?|-)") : Regex.Escape(u))) + ")";
        var units = UnitText.UnitsOf(kind);
        var unit = Any(units.Select(u => u.Unit));
        var value = $"[+-]?{Number} ?{unit}?";
        if (kind == QuantityKind.Length)
        {
            var feet = Any(units.Where(u => u.Factor == Ft).Select(u => u.Unit));
            var inches = Any(units.Where(u => u.Factor == In).Select(u => u.Unit));
            value = $"(?:{value}|[+-]?{Number} ?{feet}[ -]?{Number} ?{inches})";
        }

        var limit = $"{Number} ?(?:{unit}|%)?";
        return new($@"^{value}(?: ?(?:±|\+/-|\+-|-/\+) ?{limit}| \+ ?{limit} ?/ ?- ?{limit}| - ?{limit} ?/ ?\+ ?{limit})?(?: normal)?$", RegexOptions.CultureInvariant);
    }

    private static string Plain(string text)
    {
        var plain = Regex.Replace(text.Trim(), "[ \\t\u00A0\u202F\u2009]+", " ").Replace('\u2010', '-').Replace('\u2011', '-').Replace('\u03BC', 'µ').Replace('\u22C5', '·');
        plain = Regex.Replace(plain, "(?<=^|[ /±eE])[\u2212\u2013]", "-");
        return Regex.Replace(plain, "(?<![0-9][0-9])\u2044", "/");
    }

    private static ReadQuantity Accepted(QuantityKind kind, string text)
    {
        Assert.True(UnitText.TryRead(kind, text, out var read, out var problem), $"\"{text}\" refused: {problem}");
        Assert.Null(problem);
        return read;
    }
}
