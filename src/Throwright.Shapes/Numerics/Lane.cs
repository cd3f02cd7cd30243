using System.Runtime.Intrinsics;

namespace Throwright.Shapes.Numerics;

/// <summary>Four samples side by side: the same bits as four <see cref="Real"/>, in about a third of the time.</summary>
public readonly record struct Lane(Vector256<double> Values) : IReal<Lane>
{
    public const int Width = 4;

    public static Lane Of(double value) => new(Vector256.Create(value));
    public static Lane operator +(Lane a, Lane b) => new(a.Values + b.Values);
    public static Lane operator -(Lane a, Lane b) => new(a.Values - b.Values);
    public static Lane operator *(Lane a, Lane b) => new(a.Values * b.Values);
    public static Lane operator /(Lane a, Lane b) => new(a.Values / b.Values);
    public static Lane operator -(Lane a) => new(-a.Values);
    public static Lane operator *(double a, Lane b) => new(a * b.Values);
    public static Lane Sqrt(Lane a) => new(Vector256.Sqrt(a.Values));
    public static Lane Square(Lane a) => new(a.Values * a.Values);
    public static Lane Cos(Lane a) => new(Elementary.Cos(a.Values));
    public static Lane Sin(Lane a) => new(Elementary.Sin(a.Values));

    public static (Lane Cos, Lane Sin) CosSin(Lane a)
    {
        var (cos, sin) = Elementary.CosSin(a.Values);
        return (new(cos), new(sin));
    }

    public static Lane AtLeastZero(Lane a) => new(Vector256.ConditionalSelect(
        Vector256.LessThanOrEqual(a.Values, Vector256<double>.Zero), Vector256<double>.Zero, a.Values));
}
