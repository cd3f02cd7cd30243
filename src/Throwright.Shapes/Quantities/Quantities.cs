namespace Throwright.Shapes.Quantities;

/// <summary>What a figure measures. Each kind has its own table of units.</summary>
public enum QuantityKind
{
    Length,
    Angle,
    Force,
    Torque,
    Temperature,
    Ratio,
    Stiffness,
    TorsionRate,
    Stress,
    Expansion,
    Density,
    BendingStiffness,
    LineWeight,
}

/// <summary>A physical value in one SI unit, wrapped so that a torque can't be handed over as a length.</summary>
public interface IQuantity<TSelf>
    where TSelf : struct, IQuantity<TSelf>
{
    static abstract QuantityKind Kind { get; }

    /// <summary>m, rad, N, N m, degC, 1, N/m, N m/rad, Pa or N m2.</summary>
    double Si { get; }

    static abstract TSelf FromSi(double si);
}

/// <summary>A distance in m.</summary>
public readonly record struct Length(double Metres) : IQuantity<Length>
{
    /// <summary>Exact by international agreement of 1959.</summary>
    public const double MetresPerInch = 0.0254;

    public static QuantityKind Kind => QuantityKind.Length;
    public double Si => Metres;
    public double Millimetres => Metres * 1000;
    public double Inches => Metres / MetresPerInch;
    public static Length Zero => default;
    public static Length FromSi(double si) => new(si);
    public static Length FromMillimetres(double mm) => new(mm / 1000);
    public static Length FromInches(double inches) => new(inches * MetresPerInch);
}

/// <summary>An angle in rad.</summary>
public readonly record struct Angle(double Radians) : IQuantity<Angle>
{
    public static QuantityKind Kind => QuantityKind.Angle;
    public double Si => Radians;
    public double Degrees => Radians * (180 / Math.PI);
    public static Angle Zero => default;
    public static Angle FromSi(double si) => new(si);
    public static Angle FromDegrees(double degrees) => new(degrees * (Math.PI / 180));
}

/// <summary>A force in N.</summary>
public readonly record struct Force(double Newtons) : IQuantity<Force>
{
    /// <summary>Exact: 0.45359237 kg x 9.80665 m/s^2.</summary>
    public const double NewtonsPerPoundForce = 4.4482216152605;

    /// <summary>m/s^2, by definition: the weight of a kilogram in N.</summary>
    public const double NewtonsPerKilogram = 9.80665;

    /// <summary>By definition.</summary>
    public const double KilogramsPerPound = 0.45359237;

    public static QuantityKind Kind => QuantityKind.Force;
    public double Si => Newtons;
    public double PoundsForce => Newtons / NewtonsPerPoundForce;
    public static Force Zero => default;
    public static Force FromSi(double si) => new(si);
    public static Force FromPoundsForce(double lbf) => new(lbf * NewtonsPerPoundForce);
}

/// <summary>A torque in N m.</summary>
public readonly record struct Torque(double NewtonMetres) : IQuantity<Torque>
{
    public const double NewtonMetresPerPoundForceInch = Force.NewtonsPerPoundForce * Length.MetresPerInch;

    public static QuantityKind Kind => QuantityKind.Torque;
    public double Si => NewtonMetres;
    public double PoundForceInches => NewtonMetres / NewtonMetresPerPoundForceInch;
    public static Torque Zero => default;
    public static Torque FromSi(double si) => new(si);
    public static Torque FromPoundForceInches(double value) => new(value * NewtonMetresPerPoundForceInch);
}

/// <summary>A temperature in degC.</summary>
public readonly record struct Temperature(double Celsius) : IQuantity<Temperature>
{
    public static QuantityKind Kind => QuantityKind.Temperature;
    public double Si => Celsius;
    public double Fahrenheit => (Celsius * 1.8) + 32;
    public static Temperature FromSi(double si) => new(si);
    public static Temperature FromFahrenheit(double f) => new((f - 32) / 1.8);
}

/// <summary>A pure number, e.g. a coefficient of friction.</summary>
public readonly record struct Ratio(double Value) : IQuantity<Ratio>
{
    public static QuantityKind Kind => QuantityKind.Ratio;
    public double Si => Value;
    public static Ratio FromSi(double si) => new(si);
}

/// <summary>A stiffness in N/m.</summary>
public readonly record struct Stiffness(double NewtonsPerMetre) : IQuantity<Stiffness>
{
    public static QuantityKind Kind => QuantityKind.Stiffness;
    public double Si => NewtonsPerMetre;
    public double NewtonsPerMillimetre => NewtonsPerMetre / 1000;
    public static Stiffness FromSi(double si) => new(si);
    public static Stiffness FromNewtonsPerMillimetre(double value) => new(value * 1000);
}

/// <summary>A torsional rate in N m/rad.</summary>
public readonly record struct TorsionRate(double NewtonMetresPerRadian) : IQuantity<TorsionRate>
{
    public static QuantityKind Kind => QuantityKind.TorsionRate;
    public double Si => NewtonMetresPerRadian;
    public static TorsionRate FromSi(double si) => new(si);
}

/// <summary>A stress or an elastic modulus in Pa.</summary>
public readonly record struct Stress(double Pascals) : IQuantity<Stress>
{
    public static QuantityKind Kind => QuantityKind.Stress;
    public double Si => Pascals;
    public double Megapascals => Pascals / 1e6;
    public static Stress FromSi(double si) => new(si);
    public static Stress FromMegapascals(double mpa) => new(mpa * 1e6);
}

/// <summary>A stiffness against bending in N m2: moment over curvature.</summary>
public readonly record struct BendingStiffness(double NewtonSquareMetres) : IQuantity<BendingStiffness>
{
    public static QuantityKind Kind => QuantityKind.BendingStiffness;
    public double Si => NewtonSquareMetres;
    public static BendingStiffness FromSi(double si) => new(si);
}

/// <summary>A weight per length in N/m.</summary>
public readonly record struct LineWeight(double NewtonsPerMetre) : IQuantity<LineWeight>
{
    public static QuantityKind Kind => QuantityKind.LineWeight;
    public double Si => NewtonsPerMetre;
    public static LineWeight FromSi(double si) => new(si);
}
