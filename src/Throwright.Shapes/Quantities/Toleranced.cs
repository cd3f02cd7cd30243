namespace Throwright.Shapes.Quantities;

/// <summary>How a dimension is drawn between its limits in Monte Carlo.</summary>
public enum Spread
{
    /// <summary>Any value between the limits is as likely as any other: the honest default for one part made once.</summary>
    Uniform,

    /// <summary>Normal about the middle of the limits, limit = 3 sigma, cut off at the limits.</summary>
    Normal,
}

/// <summary>A value with its hard limits: nominal - minus .. nominal + plus.</summary>
/// <param name="Nominal">The value as named.</param>
/// <param name="Minus">How far below it may lie, SI, &gt;= 0.</param>
/// <param name="Plus">How far above it may lie, SI, &gt;= 0.</param>
public readonly record struct Toleranced<T>(T Nominal, double Minus, double Plus, Spread Spread = Spread.Uniform)
    where T : struct, IQuantity<T>
{
    public double Least => Nominal.Si - Minus;
    public double Most => Nominal.Si + Plus;
    public bool IsExact => Minus == 0 && Plus == 0;

    public static Toleranced<T> Exact(T nominal) => new(nominal, 0, 0);
    public static Toleranced<T> PlusMinus(T nominal, double half) => new(nominal, half, half);

    /// <summary>The same limits about another nominal value.</summary>
    public Toleranced<T> At(double nominalSi) => this with { Nominal = T.FromSi(nominalSi) };
}
