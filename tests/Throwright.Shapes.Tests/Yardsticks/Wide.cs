using System.Numerics;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Yardsticks;

/// <summary>A number of about 32 digits (the sum of two doubles), against which the 16 digits of the engine are judged.</summary>
/// <remarks>
/// Dekker, Numer. Math. 18 (1971) 224-242, with the fused multiply-add for the error of a product. Relative error of
/// one operation below 1e-31 while nothing under- or overflows. <see cref="WideTests"/> holds it to whole-number
/// arithmetic without any rounding.
/// </remarks>
public readonly record struct Wide(double Hi, double Lo) : IReal<Wide>
{
    // pi/2 in three doubles: 160 bits.
    private const double HalfPi1 = 1.5707963267948966;
    private const double HalfPi2 = 6.123233995736766e-17;
    private const double HalfPi3 = -1.4973849048591833e-33;

    public bool IsFinite => double.IsFinite(Hi) && double.IsFinite(Lo);

    public static Wide Of(double value) => new(value, 0);

    public static Wide operator +(Wide a, Wide b)
    {
        var s = Sum(a.Hi, b.Hi);
        var t = Sum(a.Lo, b.Lo);
        s = QuickSum(s.Hi, s.Lo + t.Hi);
        return QuickSum(s.Hi, s.Lo + t.Lo);
    }

    public static Wide operator -(Wide a) => new(-a.Hi, -a.Lo);

    public static Wide operator -(Wide a, Wide b) => a + -b;

    public static Wide operator *(Wide a, Wide b)
    {
        var p = Product(a.Hi, b.Hi);
        return QuickSum(p.Hi, p.Lo + ((a.Hi * b.Lo) + (a.Lo * b.Hi)));
    }

    public static Wide operator *(double a, Wide b) => Of(a) * b;

    public static Wide operator /(Wide a, Wide b)
    {
        var q1 = a.Hi / b.Hi;
        var r = a - (q1 * b);
        var q2 = r.Hi / b.Hi;
        r -= q2 * b;
        var q = QuickSum(q1, q2);
        return q + Of(r.Hi / b.Hi);
    }

    public static Wide Square(Wide a) => a * a;

    public static Wide Sqrt(Wide a)
    {
        if (a.Hi == 0)
            return default;
        var x = Of(Math.Sqrt(a.Hi));
        return x + Of((a - (x * x)).Hi / (2 * x.Hi));
    }

    public static Wide Sin(Wide a) => Turned(a, 0);

    public static Wide Cos(Wide a) => Turned(a, 1);

    public static Wide AtLeastZero(Wide a) => a.Hi <= 0 ? default : a;

    /// <summary>-1, 0 or 1.</summary>
    public int Sign => Hi > 0 ? 1 : Hi < 0 ? -1 : 0;

    public bool IsBelow(double other) => (this - Of(other)).Sign < 0;

    public bool IsAbove(double other) => (this - Of(other)).Sign > 0;

    /// <summary>Is this number in the interval? A number that is none (0/0 ...) is in no interval but the whole line.</summary>
    public bool IsIn(Interval interval) =>
        interval == Interval.Whole
        || (IsFinite && !double.IsNaN(interval.Low) && !double.IsNaN(interval.High)
            && (double.IsInfinity(interval.Low) || !IsBelow(interval.Low)) && (double.IsInfinity(interval.High) || !IsAbove(interval.High)));

    /// <summary>sin(x + quarterTurns pi/2) by reduction to |r| &lt;= pi/4 and the Taylor series.</summary>
    private static Wide Turned(Wide x, int quarterTurns)
    {
        if (!(Math.Abs(x.Hi) <= 1e5))
            return Of(double.NaN);
        var n = Math.Round(x.Hi / HalfPi1);
        var r = x - Product(n, HalfPi1) - Product(n, HalfPi2) - Product(n, HalfPi3);
        var z = r * r;
        var quadrant = ((long)n + quarterTurns) & 3;
        var odd = (quadrant & 1) == 1;
        var term = odd ? Of(1) : r;
        var sum = term;
        for (var k = odd ? 2 : 3; Math.Abs(term.Hi) > 1e-34; k += 2)
        {
            term = -(term * z) / Of(k * (k - 1));
            sum += term;
        }

        return quadrant >= 2 ? -sum : sum;
    }

    private static Wide Sum(double a, double b)
    {
        var s = a + b;
        var bb = s - a;
        return new(s, (a - (s - bb)) + (b - bb));
    }

    private static Wide QuickSum(double a, double b)
    {
        var s = a + b;
        return new(s, b - (s - a));
    }

    private static Wide Product(double a, double b)
    {
        var p = a * b;
        return new(p, Math.FusedMultiplyAdd(a, b, -p));
    }
}

/// <summary>A number m 2^e without any rounding, for single operations at every size a double can have.</summary>
public readonly record struct Dyadic(BigInteger M, int E)
{
    public static Dyadic Of(double value)
    {
        if (!double.IsFinite(value))
            throw new ArgumentOutOfRangeException(nameof(value));
        var bits = BitConverter.DoubleToInt64Bits(value);
        var exponent = (int)((bits >> 52) & 0x7FF);
        var fraction = bits & 0xFFFFFFFFFFFFF;
        var m = exponent == 0 ? fraction : fraction | 0x10000000000000;
        return new(bits < 0 ? -m : m, Math.Max(exponent, 1) - 1075);
    }

    public static Dyadic operator +(Dyadic a, Dyadic b)
    {
        var e = Math.Min(a.E, b.E);
        return new((a.M << (a.E - e)) + (b.M << (b.E - e)), e);
    }

    public static Dyadic operator -(Dyadic a) => new(-a.M, a.E);

    public static Dyadic operator -(Dyadic a, Dyadic b) => a + -b;

    public static Dyadic operator *(Dyadic a, Dyadic b) => new(a.M * b.M, a.E + b.E);

    public int Sign => M.Sign;

    public int CompareTo(Dyadic other) => (this - other).Sign;
}
