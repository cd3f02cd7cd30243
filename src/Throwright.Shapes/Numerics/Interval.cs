using System.Runtime.CompilerServices;

namespace Throwright.Shapes.Numerics;

/// <summary>All numbers from Low to High; every operation encloses the true result.</summary>
/// <remarks>
/// Ends are moved outward by one unit in the last place after each operation (4e-16 for sine and cosine), which covers
/// the rounding of the processor. An end that comes out as zero stays zero, for only then is it exact: so an input that
/// a formula ignores has no slope at all, and "not below zero" is not lost. An operation that is not defined everywhere
/// (division through zero, root of a negative number) gives the whole line: nothing is proved, nothing is wrong.
/// </remarks>
public readonly record struct Interval(double Low, double High)
{
    public static Interval Whole => new(double.NegativeInfinity, double.PositiveInfinity);
    public static Interval Zero => default;

    public double Width => High - Low;

    /// <summary>A number of the interval, half-way where there is such a place.</summary>
    public double Middle => double.IsFinite(Width) ? Low + (0.5 * Width) : Math.Clamp(0, Low, High);

    public bool IsZero => Low == 0 && High == 0;

    public bool IsFinite => double.IsFinite(Low) && double.IsFinite(High);

    /// <summary>Largest distance from zero.</summary>
    public double Size => Math.Max(Math.Abs(Low), Math.Abs(High));

    public static Interval Of(double value) => new(value, value);

    public bool Contains(double value) => Low <= value && value <= High;

    public static Interval Hull(Interval a, Interval b) => new(Math.Min(a.Low, b.Low), Math.Max(a.High, b.High));

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static Interval operator +(Interval a, Interval b) => Out(a.Low + b.Low, a.High + b.High);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static Interval operator -(Interval a, Interval b) => Out(a.Low - b.High, a.High - b.Low);

    public static Interval operator -(Interval a) => new(-a.High, -a.Low);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static Interval operator *(Interval a, Interval b)
    {
        // Most factors have one sign, and then it is known which ends meet: two products instead of four.
        if (a.Low >= 0)
        {
            if (b.Low >= 0)
                return Out(Product(a.Low, b.Low), Product(a.High, b.High));
            return b.High <= 0 ? Out(Product(a.High, b.Low), Product(a.Low, b.High)) : Out(Product(a.High, b.Low), Product(a.High, b.High));
        }

        if (a.High <= 0)
        {
            if (b.Low >= 0)
                return Out(Product(a.Low, b.High), Product(a.High, b.Low));
            return b.High <= 0 ? Out(Product(a.High, b.High), Product(a.Low, b.Low)) : Out(Product(a.Low, b.High), Product(a.Low, b.Low));
        }

        double p = Product(a.Low, b.Low), q = Product(a.Low, b.High), r = Product(a.High, b.Low), s = Product(a.High, b.High);
        return Out(Math.Min(Math.Min(p, q), Math.Min(r, s)), Math.Max(Math.Max(p, q), Math.Max(r, s)));
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static Interval operator /(Interval a, Interval b) =>
        b.Low > 0 || b.High < 0 ? a * Out(1 / b.High, 1 / b.Low) : Whole;

    public static Interval Sqrt(Interval a) => a.Low < 0 ? Whole : Out(Math.Sqrt(a.Low), Math.Sqrt(a.High));

    /// <summary>a a, never below zero, which a product of two unlike intervals can't know.</summary>
    public static Interval Square(Interval a)
    {
        if (double.IsNaN(a.Low) || double.IsNaN(a.High))
            return Whole;
        var nearest = a.Low > 0 ? a.Low : a.High < 0 ? a.High : 0;
        return new(Math.Max(0, Math.BitDecrement(nearest * nearest)), (a * a).High);
    }

    /// <summary>cos(a - pi/2); that Math.PI / 2 is 0.6e-16 short of pi/2 is within the margin of the cosine.</summary>
    public static Interval Sin(Interval a) => Cos(a - Of(Math.PI / 2));

    public static Interval Cos(Interval a)
    {
        if (!a.IsFinite || a.Width >= 2 * Math.PI || a.Size > 1e5)
            return new(-1, 1);
        double p = Elementary.Cos(a.Low), q = Elementary.Cos(a.High);
        // Crests at even, troughs at odd multiples of pi. Elementary is off by 2.3e-16 at most. A crest that rounding
        // of a/pi puts on the wrong side of an end (by 2e-11 at most) differs from the value there by less than 1e-21.
        var low = HasMultiple(a, 1) ? -1 : Math.Min(p, q) - 4e-16;
        var high = HasMultiple(a, 0) ? 1 : Math.Max(p, q) + 4e-16;
        return new(Math.Max(-1, low), Math.Min(1, high));
    }

    public static Interval AtLeastZero(Interval a) => new(Math.Max(0, a.Low), Math.Max(0, a.High));

    /// <summary>Is there a whole k with (2k + odd) pi in the interval, give or take 1e-12 turns?</summary>
    private static bool HasMultiple(Interval a, int odd)
    {
        double low = ((a.Low / Math.PI) - odd) / 2, high = ((a.High / Math.PI) - odd) / 2;
        return Math.Floor(high + 1e-12) >= Math.Ceiling(low - 1e-12);
    }

    /// <summary>
    /// 0 x infinity is 0 here: an end at infinity stands for "as large as you like", never for a value. A product too
    /// small for a double is the smallest one, so that zero means zero.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Product(double a, double b)
    {
        var product = a * b;
        if (a == 0 || b == 0)
            return double.IsNaN(a) || double.IsNaN(b) ? double.NaN : 0;
        return product != 0 ? product : double.IsNegative(product) ? -double.Epsilon : double.Epsilon;
    }

    /// <remarks>A sum or a root that comes out as zero is exact; so is a product by <see cref="Product"/>.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Interval Out(double low, double high) =>
        double.IsNaN(low) || double.IsNaN(high)
            ? Whole
            : new(low == 0 ? 0 : -Beyond(-low), high == 0 ? 0 : Beyond(high));

    /// <summary>The next larger double: <see cref="Math.BitIncrement(double)"/> of anything but zero, short enough to be part of every operation.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Beyond(double value)
    {
        var bits = BitConverter.DoubleToInt64Bits(value);
        return bits < 0 ? BitConverter.Int64BitsToDouble(bits - 1) : value < double.PositiveInfinity ? BitConverter.Int64BitsToDouble(bits + 1) : value;
    }
}
