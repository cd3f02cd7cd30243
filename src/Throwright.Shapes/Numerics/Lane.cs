using System.Runtime.Intrinsics;

namespace Throwright.Shapes.Numerics;

/// <summary>Eight samples side by side: the same bits as eight <see cref="Real"/>.</summary>
/// <remarks>
/// A processor without registers of 512 bits takes each operation in two or four parts. That is no slower than narrower lanes:
/// what waits for a root or a quotient in one part goes on in the other.
/// </remarks>
public readonly record struct Lane(Vector512<double> Values) : IReal<Lane>
{
    public const int Width = 8;

    public static Lane Of(double value) => new(Vector512.Create(value));
    public static Lane operator +(Lane a, Lane b) => new(a.Values + b.Values);
    public static Lane operator -(Lane a, Lane b) => new(a.Values - b.Values);
    public static Lane operator *(Lane a, Lane b) => new(a.Values * b.Values);
    public static Lane operator /(Lane a, Lane b) => new(a.Values / b.Values);
    public static Lane operator -(Lane a) => new(-a.Values);
    public static Lane operator *(double a, Lane b) => new(a * b.Values);
    public static Lane Sqrt(Lane a) => new(Vector512.Sqrt(a.Values));
    public static Lane Square(Lane a) => new(a.Values * a.Values);
    public static Lane Cos(Lane a) => new(Elementary.Cos(a.Values));
    public static Lane Sin(Lane a) => new(Elementary.Sin(a.Values));

    public static (Lane Cos, Lane Sin) CosSin(Lane a)
    {
        var (cos, sin) = Elementary.CosSin(a.Values);
        return (new(cos), new(sin));
    }

    public static Lane AtLeastZero(Lane a) => new(Vector512.ConditionalSelect(
        Vector512.LessThanOrEqual(a.Values, Vector512<double>.Zero), Vector512<double>.Zero, a.Values));
}
