using System.Runtime.CompilerServices;

namespace Throwright.Shapes.Numerics;

/// <summary>A value and its slopes against every input, each as a proven interval over a whole box of inputs.</summary>
/// <remarks>
/// Forward differentiation (the chain rule carried along with the value) in interval arithmetic. If a slope's
/// interval does not contain zero, the value is proven monotone in that input over the whole box.
/// See R. E. Moore, Interval Analysis (1966), and L. B. Rall, Automatic Differentiation (1981).
/// </remarks>
public readonly struct Bound : IReal<Bound>
{
    /// <summary>null: a constant, all slopes zero.</summary>
    private readonly Interval[]? slopes;

    private Bound(Interval value, Interval[]? slopes)
    {
        Value = value;
        this.slopes = slopes;
    }

    public Interval Value { get; }

    public Interval Slope(int input) => slopes is null ? Interval.Zero : slopes[input];

    /// <summary>Input number <paramref name="input"/> of <paramref name="count"/>, anywhere in <paramref name="range"/>.</summary>
    public static Bound Input(int input, int count, Interval range)
    {
        var slopes = new Interval[count];
        slopes[input] = Interval.Of(1);
        return new(range, slopes);
    }

    public static Bound Of(double value) => new(Interval.Of(value), null);

    public static Bound operator +(Bound a, Bound b) => new(a.Value + b.Value, Sum(a.slopes, b.slopes));

    public static Bound operator -(Bound a, Bound b) => new(a.Value - b.Value, Difference(a.slopes, b.slopes));

    public static Bound operator -(Bound a) => new(-a.Value, Difference(null, a.slopes));

    public static Bound operator *(Bound a, Bound b) => new(a.Value * b.Value, Combine(a, b.Value, b, a.Value));

    public static Bound operator *(double a, Bound b) => new(Interval.Of(a) * b.Value, Scale(b, Interval.Of(a)));

    public static Bound operator /(Bound a, Bound b)
    {
        var inverse = Interval.Of(1) / b.Value;
        var quotient = a.Value / b.Value;
        return new(quotient, Combine(a, inverse, b, -(quotient * inverse)));
    }

    public static Bound Sqrt(Bound a)
    {
        var root = Interval.Sqrt(a.Value);
        return new(root, Scale(a, Interval.Of(0.5) / root));
    }

    public static Bound Square(Bound a) => new(Interval.Square(a.Value), Scale(a, Interval.Of(2) * a.Value));

    public static Bound Cos(Bound a) => new(Interval.Cos(a.Value), Scale(a, -Interval.Sin(a.Value)));

    public static Bound Sin(Bound a) => new(Interval.Sin(a.Value), Scale(a, Interval.Cos(a.Value)));

    public static Bound AtLeastZero(Bound a)
    {
        var slope = new Interval(a.Value.Low > 0 ? 1 : 0, a.Value.High > 0 ? 1 : 0);
        return new(Interval.AtLeastZero(a.Value), Scale(a, slope));
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static Interval[]? Sum(Interval[]? a, Interval[]? b)
    {
        if (a is null || b is null)
            return a ?? b;
        var result = new Interval[a.Length];
        for (var i = 0; i < result.Length; i++)
            result[i] = a[i].IsZero ? b[i] : b[i].IsZero ? a[i] : a[i] + b[i];
        return result;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static Interval[]? Difference(Interval[]? a, Interval[]? b)
    {
        if (b is null)
            return a;
        var result = new Interval[b.Length];
        for (var i = 0; i < result.Length; i++)
            result[i] = a is null || a[i].IsZero ? -b[i] : b[i].IsZero ? a[i] : a[i] - b[i];
        return result;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static Interval[]? Scale(Bound a, Interval factor)
    {
        if (a.slopes is null)
            return null;
        var result = new Interval[a.slopes.Length];
        for (var i = 0; i < result.Length; i++)
        {
            // Most parts of a formula hold few of the inputs.
            if (!a.slopes[i].IsZero)
                result[i] = a.slopes[i] * factor;
        }

        return result;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static Interval[]? Combine(Bound a, Interval fa, Bound b, Interval fb)
    {
        if (a.slopes is null)
            return Scale(b, fb);
        if (b.slopes is null)
            return Scale(a, fa);
        var result = new Interval[a.slopes.Length];
        for (var i = 0; i < result.Length; i++)
        {
            Interval p = a.slopes[i], q = b.slopes[i];
            if (q.IsZero)
                result[i] = p.IsZero ? Interval.Zero : p * fa;
            else
                result[i] = p.IsZero ? q * fb : (p * fa) + (q * fb);
        }

        return result;
    }
}
