using System.Runtime.Intrinsics;

namespace Throwright.Shapes.Numerics;

/// <summary>Sine and cosine from exactly rounded operations only, one value or a lane of them at a time, with equal bits.</summary>
/// <remarks>
/// Argument reduction by pi/2 in three parts (33 bits each, after Cody and Waite), then the odd and even
/// polynomials published with the freely distributable C mathematics library fdlibm (k_sin.c, k_cos.c).
/// Holds for |x| &lt;= 1e5 rad and gives NaN beyond. Error below 2.3e-16: at most 1.1e-16 from the two roundings of the
/// reduced angle (less its slope), the rest from the polynomials. Tests hold it to 32 digits, and both widths to each
/// other bit by bit.
/// </remarks>
public static class Elementary
{
    private const double TwoOverPi = 6.36619772367581382433e-01;
    private const double PiOver2A = 1.57079632673412561417e+00;
    private const double PiOver2B = 6.07710050630396597660e-11;
    private const double PiOver2C = 2.02226624879595063154e-21;

    /// <summary>1.5 x 2^52: adding and taking it away rounds to the nearest whole number.</summary>
    private const double Rounder = 6755399441055744.0;

    /// <summary>Beyond this, whole turns would be lost in the rounding of the angle.</summary>
    private const double Most = 1e5;

    private const double S1 = -1.66666666666666324348e-01;
    private const double S2 = 8.33333333332248946124e-03;
    private const double S3 = -1.98412698298579493134e-04;
    private const double S4 = 2.75573137070700676789e-06;
    private const double S5 = -2.50507602534068634195e-08;
    private const double S6 = 1.58969099521155010221e-10;
    private const double C1 = 4.16666666666666019037e-02;
    private const double C2 = -1.38888888888741095749e-03;
    private const double C3 = 2.48015872894767294178e-05;
    private const double C4 = -2.75573143513906633035e-07;
    private const double C5 = 2.08757232129817482790e-09;
    private const double C6 = -1.13596475577881948265e-11;

    public static double Sin(double x) => CosSin(x).Sin;

    public static double Cos(double x) => CosSin(x).Cos;

    public static Vector512<double> Sin(Vector512<double> x) => CosSin(x).Sin;

    public static Vector512<double> Cos(Vector512<double> x) => CosSin(x).Cos;

    /// <summary>Both: the reduced angle and its two polynomials serve either.</summary>
    public static (double Cos, double Sin) CosSin(double x)
    {
        if (!(Math.Abs(x) <= Most))
            return (double.NaN, double.NaN);
        var shifted = (x * TwoOverPi) + Rounder;
        var n = shifted - Rounder;
        var r = ((x - (n * PiOver2A)) - (n * PiOver2B)) - (n * PiOver2C);
        var z = r * r;
        var sine = r + ((r * z) * (S1 + (z * (S2 + (z * (S3 + (z * (S4 + (z * (S5 + (z * S6)))))))))));
        var cosine = (1 - (0.5 * z)) + ((z * z) * (C1 + (z * (C2 + (z * (C3 + (z * (C4 + (z * (C5 + (z * C6)))))))))));
        // Quarter turns taken off: sin(r), cos(r), -sin(r), -cos(r).
        return (BitConverter.DoubleToInt64Bits(shifted) & 3) switch
        {
            0 => (cosine, sine),
            1 => (-sine, cosine),
            2 => (-cosine, -sine),
            _ => (sine, -cosine),
        };
    }

    public static (Vector512<double> Cos, Vector512<double> Sin) CosSin(Vector512<double> x)
    {
        var shifted = (x * TwoOverPi) + Vector512.Create(Rounder);
        var n = shifted - Vector512.Create(Rounder);
        var r = ((x - (n * PiOver2A)) - (n * PiOver2B)) - (n * PiOver2C);
        var z = r * r;
        var sine = r + ((r * z) * Polynomial(z, S1, S2, S3, S4, S5, S6));
        var cosine = (Vector512<double>.One - (0.5 * z)) + ((z * z) * Polynomial(z, C1, C2, C3, C4, C5, C6));
        var quadrant = shifted.AsInt64();
        var odd = Vector512.Equals(quadrant & Vector512<long>.One, Vector512<long>.One).AsDouble();
        var sinSign = ((quadrant & Vector512.Create(2L)) << 62).AsDouble();
        var cosSign = (((quadrant + Vector512<long>.One) & Vector512.Create(2L)) << 62).AsDouble();
        var within = Vector512.LessThanOrEqual(Vector512.Abs(x), Vector512.Create(Most));
        var none = Vector512.Create(double.NaN);
        return (
            Vector512.ConditionalSelect(within, Vector512.ConditionalSelect(odd, sine, cosine) ^ cosSign, none),
            Vector512.ConditionalSelect(within, Vector512.ConditionalSelect(odd, cosine, sine) ^ sinSign, none));
    }

    private static Vector512<double> Polynomial(Vector512<double> z, double a, double b, double c, double d, double e, double f) =>
        Vector512.Create(a) + (z * (Vector512.Create(b) + (z * (Vector512.Create(c)
            + (z * (Vector512.Create(d) + (z * (Vector512.Create(e) + (z * f)))))))));
}
