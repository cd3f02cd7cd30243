namespace Throwright.Shapes.Numerics;

/// <summary>
/// A number a formula can be written in once and evaluated three ways: plainly (<see cref="Real"/>), eight
/// samples at a time (<see cref="Lane"/>), or with proven bounds of value and slopes (<see cref="Bound"/>).
/// </summary>
/// <remarks>
/// Only + - * / and square root are taken from the processor; they are exact to the last bit by IEEE 754, so the
/// same input gives the same bytes on every system and in every width. Cosine and sine are built from them in
/// <see cref="Elementary"/>.
/// </remarks>
public interface IReal<T>
    where T : struct, IReal<T>
{
    static abstract T Of(double value);
    static abstract T operator +(T a, T b);
    static abstract T operator -(T a, T b);
    static abstract T operator *(T a, T b);
    static abstract T operator /(T a, T b);
    static abstract T operator -(T a);
    static abstract T operator *(double a, T b);
    static abstract T Sqrt(T a);

    /// <summary>a a; as an interval it knows that it is not negative, which a product of two unlike factors can't.</summary>
    static abstract T Square(T a);
    static abstract T Cos(T a);
    static abstract T Sin(T a);

    /// <summary>Both, in little more than the time of one.</summary>
    static virtual (T Cos, T Sin) CosSin(T a) => (T.Cos(a), T.Sin(a));

    /// <summary>max(a, 0); what is not a number stays so.</summary>
    static abstract T AtLeastZero(T a);
}

/// <summary>A plain double as an <see cref="IReal{T}"/>.</summary>
public readonly record struct Real(double Value) : IReal<Real>
{
    public static Real Of(double value) => new(value);
    public static Real operator +(Real a, Real b) => new(a.Value + b.Value);
    public static Real operator -(Real a, Real b) => new(a.Value - b.Value);
    public static Real operator *(Real a, Real b) => new(a.Value * b.Value);
    public static Real operator /(Real a, Real b) => new(a.Value / b.Value);
    public static Real operator -(Real a) => new(-a.Value);
    public static Real operator *(double a, Real b) => new(a * b.Value);
    public static Real Sqrt(Real a) => new(Math.Sqrt(a.Value));
    public static Real Square(Real a) => new(a.Value * a.Value);
    public static Real Cos(Real a) => new(Elementary.Cos(a.Value));
    public static Real Sin(Real a) => new(Elementary.Sin(a.Value));

    public static (Real Cos, Real Sin) CosSin(Real a)
    {
        var (cos, sin) = Elementary.CosSin(a.Value);
        return (new(cos), new(sin));
    }

    public static Real AtLeastZero(Real a) => new(a.Value <= 0 ? 0 : a.Value);
}
