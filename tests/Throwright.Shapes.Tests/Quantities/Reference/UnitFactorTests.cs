using Throwright.Shapes.Quantities;
using U = UnitsNet;

namespace Throwright.Shapes.Tests.Quantities.Reference;

public class UnitFactorTests
{
    /// <summary>
    /// What defines every unit here, exact by agreement: 1 yd = 0.9144 m and 1 lb = 0.45359237 kg (international yard
    /// and pound, 1959), g = 9.80665 m/s^2 (3rd General Conference on Weights and Measures, 1901).
    /// </summary>
    private const decimal Inch = 0.9144m / 36, PoundForce = 0.45359237m * 9.80665m, KilogramForce = 9.80665m;

    /// <summary>Factor of each unit from its definition, and from an independent library of units.</summary>
    private static readonly Dictionary<(QuantityKind Kind, string Unit), (double Defined, double Library)> Expected = Table();

    public static TheoryData<QuantityKind> Kinds => [.. Enum.GetValues<QuantityKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Factor_EveryUnitOfAKind_IsThatOfItsDefinition(QuantityKind kind)
    {
        foreach (var (unit, factor) in UnitText.UnitsOf(kind))
        {
            Assert.True(Expected.ContainsKey((kind, unit)), $"no expected value for \"{unit}\"");
            var (defined, library) = Expected[(kind, unit)];
            Assert.Equal(defined, factor, 1e-15 * defined);
            // The library writes some of its factors with six or nine digits only.
            Assert.Equal(library, factor, 1e-6 * library);
        }

        Assert.Equal(UnitText.UnitsOf(kind).Select(u => u.Unit).Distinct().Count(), UnitText.UnitsOf(kind).Count);
    }

    [Fact]
    public void Factor_PublishedExactValues_Agree()
    {
        Assert.Equal(0.0254, Length.MetresPerInch);
        Assert.Equal(4.4482216152605, Force.NewtonsPerPoundForce);
        Assert.Equal(4.4482216152605m, PoundForce);
        Assert.Equal((double)(PoundForce * Inch), Torque.NewtonMetresPerPoundForceInch, 2e-17);
    }

    [Theory]
    [InlineData("25.4 mm", "1 in")]
    [InlineData("12 in", "1 ft")]
    [InlineData("1 lbf ft", "12 lbf in")]
    [InlineData("16 ozf in", "1 lbf in")]
    [InlineData("1 ksi", "1000 psi")]
    [InlineData("1 lbf in/deg", "57.29577951308232 lbf in/rad")]
    [InlineData("180 deg", "3.141592653589793 rad")]
    [InlineData("1 lbf/in", "0.1751268352464764 N/mm")]
    public void Read_TheSameAmountInTwoUnits_IsTheSame(string one, string other)
    {
        var kind = Enum.GetValues<QuantityKind>().Single(k => UnitText.TryRead(k, one, out _, out _));
        Assert.True(UnitText.TryRead(kind, one, out var a, out _));
        Assert.True(UnitText.TryRead(kind, other, out var b, out _));
        Assert.Equal(a.Nominal, b.Nominal, 1e-15 * Math.Abs(a.Nominal));
    }

    [Theory]
    [InlineData("32 degF", 0)]
    [InlineData("212 degF", 100)]
    [InlineData("-40 degF", -40)]
    [InlineData("68 degF", 20)]
    [InlineData("-459.67 degF", -273.15)]
    [InlineData("0 K", -273.15)]
    [InlineData("273.15 K", 0)]
    [InlineData("-40 degC", -40)]
    [InlineData("98.6 °F", 37)]
    [InlineData("20 C", 20)]
    [InlineData("-40 F", -40)]
    public void Read_Temperature_HasItsOffset(string text, double celsius)
    {
        Assert.True(UnitText.TryRead<Temperature>(text, out var value, out var problem), problem);
        Assert.Equal(celsius, value.Nominal.Celsius, 1e-13);
        Assert.Equal((celsius * 1.8) + 32, value.Nominal.Fahrenheit, 1e-12);
    }

    [Fact]
    public void Quantity_MadeFromAUnit_GivesItBack()
    {
        var random = new Random(1);
        for (var i = 0; i < 1000; i++)
        {
            var x = (random.NextDouble() - 0.5) * Math.Pow(10, random.Next(-3, 6));
            var off = 4e-16 * Math.Abs(x);
            Assert.Equal(x, Length.FromMillimetres(x).Millimetres, off);
            Assert.Equal(x, Length.FromInches(x).Inches, off);
            Assert.Equal(x / 1000, Length.FromMillimetres(x).Metres);
            Assert.Equal(x, Angle.FromDegrees(x).Degrees, off);
            Assert.Equal(x, Force.FromPoundsForce(x).PoundsForce, off);
            Assert.Equal(x, Torque.FromPoundForceInches(x).PoundForceInches, off);
            Assert.Equal(x, Temperature.FromFahrenheit(x).Fahrenheit, off + 1e-14);
            Assert.Equal(x, Stiffness.FromNewtonsPerMillimetre(x).NewtonsPerMillimetre, off);
            Assert.Equal(x, Stress.FromMegapascals(x).Megapascals, off);
        }
    }

    private static Dictionary<(QuantityKind, string), (double, double)> Table()
    {
        var table = new Dictionary<(QuantityKind, string), (double, double)>();
        void Add(QuantityKind kind, double defined, double library, params string[] units)
        {
            foreach (var unit in units)
                table.Add((kind, unit), (defined, library));
        }

        const double Deg = Math.PI / 180;
        Add(QuantityKind.Length, (double)Inch, U.Length.FromInches(1).Meters, "in", "inch", "inches", "\"", "″");
        Add(QuantityKind.Length, 0.001, U.Length.FromMillimeters(1).Meters, "mm");
        Add(QuantityKind.Length, 0.01, U.Length.FromCentimeters(1).Meters, "cm");
        Add(QuantityKind.Length, 1, U.Length.FromMeters(1).Meters, "m");
        Add(QuantityKind.Length, (double)(12 * Inch), U.Length.FromFeet(1).Meters, "ft", "feet", "foot", "'", "′");
        Add(QuantityKind.Length, (double)(Inch / 1000), U.Length.FromMils(1).Meters, "thou");
        Add(QuantityKind.Length, 1e-6, U.Length.FromMicrometers(1).Meters, "µm", "um");
        Add(QuantityKind.Expansion, 1, U.CoefficientOfThermalExpansion.FromPerKelvin(1).PerKelvin, "/K");
        Add(QuantityKind.Expansion, 1e-6, U.CoefficientOfThermalExpansion.FromPpmPerKelvin(1).PerKelvin, "ppm/K", "ppm/degC");
        Add(QuantityKind.Expansion, 1.8e-6, U.CoefficientOfThermalExpansion.FromPpmPerDegreeFahrenheit(1).PerKelvin, "ppm/degF");
        Add(QuantityKind.Density, 1, U.Density.FromKilogramsPerCubicMeter(1).KilogramsPerCubicMeter, "kg/m3", "kg/m³");
        Add(QuantityKind.Density, 1000, U.Density.FromGramsPerCubicCentimeter(1).KilogramsPerCubicMeter, "g/cm3", "g/cm³");
        Add(QuantityKind.Density, (double)(0.45359237m / (Inch * Inch * Inch)), U.Density.FromPoundsPerCubicInch(1).KilogramsPerCubicMeter, "lb/in3");
        Add(QuantityKind.Angle, Deg, U.Angle.FromDegrees(1).Radians, "deg", "°", "degree", "degrees");
        Add(QuantityKind.Angle, 1, U.Angle.FromRadians(1).Radians, "rad");
        Add(QuantityKind.Force, (double)PoundForce, U.Force.FromPoundsForce(1).Newtons, "lbf", "lb");
        Add(QuantityKind.Force, 1, U.Force.FromNewtons(1).Newtons, "N");
        Add(QuantityKind.Force, 1000, U.Force.FromKilonewtons(1).Newtons, "kN");
        Add(QuantityKind.Force, 10, U.Force.FromDecanewtons(1).Newtons, "daN");
        Add(QuantityKind.Force, (double)KilogramForce, U.Force.FromKilogramsForce(1).Newtons, "kgf");
        Add(QuantityKind.Force, (double)(PoundForce / 16), U.Force.FromOunceForce(1).Newtons, "ozf");
        Add(QuantityKind.Torque, (double)(PoundForce * Inch), U.Torque.FromPoundForceInches(1).NewtonMeters, "lbf in", "in lbf", "in lb", "lb in");
        Add(QuantityKind.Torque, (double)(PoundForce * Inch * 12), U.Torque.FromPoundForceFeet(1).NewtonMeters, "lbf ft", "ft lbf", "ft lb", "lb ft");
        Add(QuantityKind.Torque, 1, U.Torque.FromNewtonMeters(1).NewtonMeters, "N m", "Nm");
        Add(QuantityKind.Torque, 0.001, U.Torque.FromNewtonMillimeters(1).NewtonMeters, "N mm", "Nmm");
        Add(QuantityKind.Torque, 0.01, U.Torque.FromNewtonCentimeters(1).NewtonMeters, "N cm");
        Add(QuantityKind.Torque, (double)(KilogramForce / 100), U.Torque.FromKilogramForceCentimeters(1).NewtonMeters, "kgf cm");
        Add(QuantityKind.Torque, (double)(PoundForce / 16 * Inch), U.Force.FromOunceForce(1).Newtons * U.Length.FromInches(1).Meters, "ozf in");
        Add(QuantityKind.Temperature, 1, U.TemperatureDelta.FromDegreesCelsius(1).Kelvins, "degC", "°C", "C", "K");
        Add(QuantityKind.Temperature, (double)(5m / 9), U.TemperatureDelta.FromDegreesFahrenheit(1).Kelvins, "degF", "°F", "F");
        Add(QuantityKind.Ratio, 1, 1, "");
        Add(QuantityKind.Stiffness, 1000, U.ForcePerLength.FromNewtonsPerMillimeter(1).NewtonsPerMeter, "N/mm");
        Add(QuantityKind.Stiffness, 1, U.ForcePerLength.FromNewtonsPerMeter(1).NewtonsPerMeter, "N/m");
        Add(QuantityKind.Stiffness, 1000, U.ForcePerLength.FromKilonewtonsPerMeter(1).NewtonsPerMeter, "kN/m");
        Add(QuantityKind.Stiffness, (double)(PoundForce / Inch), U.ForcePerLength.FromPoundsForcePerInch(1).NewtonsPerMeter, "lbf/in", "lb/in");
        Add(QuantityKind.TorsionRate, (double)(PoundForce * Inch) / Deg, U.RotationalStiffness.FromPoundForceFeetPerDegrees(1).NewtonMetersPerRadian / 12, "lbf in/deg", "in lbf/deg");
        Add(QuantityKind.TorsionRate, (double)(PoundForce * Inch), U.RotationalStiffness.FromPoundForceFeetPerRadian(1).NewtonMetersPerRadian / 12, "lbf in/rad");
        Add(QuantityKind.TorsionRate, 1, U.RotationalStiffness.FromNewtonMetersPerRadian(1).NewtonMetersPerRadian, "N m/rad");
        Add(QuantityKind.TorsionRate, 1 / Deg, U.RotationalStiffness.FromNewtonMetersPerDegree(1).NewtonMetersPerRadian, "N m/deg");
        Add(QuantityKind.TorsionRate, 0.001 / Deg, U.RotationalStiffness.FromNewtonMillimetersPerDegree(1).NewtonMetersPerRadian, "N mm/deg");
        Add(QuantityKind.Stress, 1, U.Pressure.FromPascals(1).Pascals, "Pa");
        Add(QuantityKind.Stress, 1e6, U.Pressure.FromNewtonsPerSquareMillimeter(1).Pascals, "MPa", "N/mm2", "N/mm²");
        Add(QuantityKind.Stress, 1e9, U.Pressure.FromGigapascals(1).Pascals, "GPa");
        Add(QuantityKind.Stress, (double)(PoundForce / Inch / Inch), U.Pressure.FromPoundsForcePerSquareInch(1).Pascals, "psi");
        Add(QuantityKind.Stress, (double)(PoundForce / Inch / Inch * 1000), U.Pressure.FromKilopoundsForcePerSquareInch(1).Pascals, "ksi");
        Add(QuantityKind.BendingStiffness, 1, U.Force.FromNewtons(1).Newtons * U.Area.FromSquareMeters(1).SquareMeters, "N m2", "N m²");
        Add(QuantityKind.BendingStiffness, 1e-6, U.Force.FromNewtons(1).Newtons * U.Area.FromSquareMillimeters(1).SquareMeters, "N mm2", "N mm²");
        Add(QuantityKind.BendingStiffness, (double)(PoundForce * Inch * Inch), U.Force.FromPoundsForce(1).Newtons * U.Area.FromSquareInches(1).SquareMeters, "lbf in2", "lbf in²");
        Add(QuantityKind.LineWeight, 1, U.ForcePerLength.FromNewtonsPerMeter(1).NewtonsPerMeter, "N/m");
        Add(QuantityKind.LineWeight, (double)(PoundForce / (12 * Inch)), U.ForcePerLength.FromPoundsForcePerFoot(1).NewtonsPerMeter, "lbf/ft", "lb/ft");
        Add(QuantityKind.LineWeight, (double)(PoundForce / 16 / (12 * Inch)), U.ForcePerLength.FromPoundsForcePerFoot(1).NewtonsPerMeter / 16, "oz/ft");
        Add(QuantityKind.LineWeight, (double)(KilogramForce / 1000), U.ForcePerLength.FromKilogramsForcePerMeter(1).NewtonsPerMeter / 1000, "g/m");
        Add(QuantityKind.LineWeight, (double)KilogramForce, U.ForcePerLength.FromKilogramsForcePerMeter(1).NewtonsPerMeter, "kg/m");
        return table;
    }
}
