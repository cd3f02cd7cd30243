using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Distance;

/// <summary>Three numbers in one register, the fourth zero: for the innermost loops. The same digits on every processor.</summary>
internal static class Triple
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> Of(Vector3 v) => Vector256.Create(v.X, v.Y, v.Z, 0);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3 Back(Vector256<double> v) => new(v.GetElement(0), v.GetElement(1), v.GetElement(2));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Dot(Vector256<double> a, Vector256<double> b)
    {
        var products = a * b;
        var pairs = products.GetLower() + products.GetUpper();
        return pairs.ToScalar() + pairs.GetElement(1);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Size(Vector256<double> a) => Math.Sqrt(Dot(a, a));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> Cross(Vector256<double> a, Vector256<double> b) =>
        Next((a * Next(b)) - (Next(a) * b));

    /// <summary>With length 1.</summary>
    public static Vector256<double> Unit(Vector256<double> a) => (1 / Size(a)) * a;

    /// <summary>The three columns of a turn times a vector.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> Combined(Vector256<double> weights, Vector256<double> x, Vector256<double> y, Vector256<double> z) =>
        (Vector256.Shuffle(weights, Vector256.Create(0L, 0, 0, 0)) * x)
        + (Vector256.Shuffle(weights, Vector256.Create(1L, 1, 1, 1)) * y)
        + (Vector256.Shuffle(weights, Vector256.Create(2L, 2, 2, 2)) * z);

    /// <summary>The vector, or its opposite where the number is below zero.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> Toward(double along, Vector256<double> half) => along >= 0 ? half : -half;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Next(Vector256<double> a) => Vector256.Shuffle(a, Vector256.Create(1L, 2, 0, 3));
}

/// <summary>A pose in registers.</summary>
internal readonly struct TriplePose(Vector256<double> x, Vector256<double> y, Vector256<double> z, Vector256<double> at)
{
    public readonly Vector256<double> X = x, Y = y, Z = z, At = at;

    public static readonly TriplePose None = new(Pose.None);

    public TriplePose(in Pose pose)
        : this(Triple.Of(pose.Turn.X), Triple.Of(pose.Turn.Y), Triple.Of(pose.Turn.Z), Triple.Of(pose.At))
    {
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly Vector256<double> Turn(Vector256<double> v) => Triple.Combined(v, X, Y, Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly Vector256<double> Place(Vector256<double> v) => Turn(v) + At;
}
