using System.Runtime.CompilerServices;

namespace Throwright.Shapes.Frames;

/// <summary>A point (m) or a direction (unit-free) in right-handed axes.</summary>
public readonly record struct Vector3(double X, double Y, double Z)
{
    public double Size
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => Math.Sqrt(Dot(this, this));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3 operator +(Vector3 a, Vector3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3 operator -(Vector3 a, Vector3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3 operator -(Vector3 a) => new(-a.X, -a.Y, -a.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3 operator *(double s, Vector3 a) => new(s * a.X, s * a.Y, s * a.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Dot(Vector3 a, Vector3 b) => (a.X * b.X) + (a.Y * b.Y) + (a.Z * b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3 Cross(Vector3 a, Vector3 b) =>
        new((a.Y * b.Z) - (a.Z * b.Y), (a.Z * b.X) - (a.X * b.Z), (a.X * b.Y) - (a.Y * b.X));

    /// <summary>
    /// Angle between two directions, rad, 0..pi; exact near 0 and pi, where an arc cosine is not. NaN if one of them has
    /// no length.
    /// </summary>
    public static double AngleBetween(Vector3 a, Vector3 b)
    {
        double sine = Cross(a, b).Size, cosine = Dot(a, b);
        return sine == 0 && cosine == 0 ? double.NaN : Math.Atan2(sine, cosine);
    }

    /// <summary>The same direction with length 1.</summary>
    public Vector3 Unit()
    {
        var size = Size;
        if (!(size > 0) || !double.IsFinite(size))
            throw new InvalidOperationException("A direction needs a finite length above zero.");
        return (1 / size) * this;
    }
}
