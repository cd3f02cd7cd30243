using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Solids;

/// <summary>A place or a direction in a plane, m.</summary>
public readonly record struct Vector2(double X, double Y)
{
    public double Size => Math.Sqrt((X * X) + (Y * Y));

    public static Vector2 operator +(Vector2 a, Vector2 b) => new(a.X + b.X, a.Y + b.Y);
    public static Vector2 operator -(Vector2 a, Vector2 b) => new(a.X - b.X, a.Y - b.Y);
    public static Vector2 operator *(double s, Vector2 a) => new(s * a.X, s * a.Y);

    /// <summary>A place at a distance in a direction (rad).</summary>
    public static Vector2 Polar(double size, double angle) => new(size * Elementary.Cos(angle), size * Elementary.Sin(angle));

    public static double Dot(Vector2 a, Vector2 b) => (a.X * b.X) + (a.Y * b.Y);

    public static double Cross(Vector2 a, Vector2 b) => (a.X * b.Y) - (a.Y * b.X);
}

/// <summary>Right-handed axes of unit length at an origin.</summary>
public readonly record struct Axes(Vector3 Origin, Vector3 X, Vector3 Y, Vector3 Z)
{
    public static Axes World => new(default, new(1, 0, 0), new(0, 1, 0), new(0, 0, 1));

    /// <summary>Axes with this z; x as near to the wish as can be.</summary>
    public static Axes Along(Vector3 origin, Vector3 z, Vector3 wish)
    {
        var along = z.Unit();
        var x = (wish - (Vector3.Dot(wish, along) * along)).Unit();
        return new(origin, x, Vector3.Cross(along, x), along);
    }

    /// <summary>The same directions at another place.</summary>
    public Axes At(Vector3 origin) => this with { Origin = origin };

    /// <summary>Turned half a turn about x: y and z point the other way.</summary>
    public Axes Flipped() => new(Origin, X, -Y, -Z);

    public Vector3 Point(double x, double y, double z = 0) => Origin + (x * X) + (y * Y) + (z * Z);

    public Vector3 Point(Vector2 place, double z = 0) => Point(place.X, place.Y, z);

    /// <summary>Coordinates of a point in these axes.</summary>
    public Vector3 Of(Vector3 point)
    {
        var from = point - Origin;
        return new(Vector3.Dot(from, X), Vector3.Dot(from, Y), Vector3.Dot(from, Z));
    }
}
