using Throwright.Shapes.Numerics;

namespace Throwright.Engine.Make;

/// <summary>How a shank leans against the sheet's normal.</summary>
/// <param name="Angle">Angle between shank and normal, rad.</param>
/// <param name="Azimuth">Direction of the lean in the sheet seen from the pilot's side, rad anticlockwise from the right.</param>
public sealed record Tilt(double Angle, double Azimuth)
{
    /// <summary>From two slopes against the sheet's normal, one to the right and one up: tan^2 = tan^2 + tan^2.</summary>
    public static Tilt FromSlopes(double right, double up)
    {
        double x = Math.Tan(right), y = Math.Tan(up);
        return new(Math.Atan(Math.Sqrt((x * x) + (y * y))), Math.Atan2(y, x));
    }

    /// <summary>From two turns one after the other, first to the right, then up about the sheet's own axis: cos = cos cos.</summary>
    public static Tilt FromTurns(double right, double up)
    {
        // The normal (0, 0, 1) turned by right about the upright axis, then by up about the level one.
        double x = Math.Sin(right), y = Math.Sin(up) * Math.Cos(right), z = Math.Cos(up) * Math.Cos(right);
        return new(Math.Atan2(Math.Sqrt((x * x) + (y * y)), z), Math.Atan2(y, x));
    }

    internal double Tangent => Elementary.Sin(Angle) / Elementary.Cos(Angle);

    internal double Cosine => Elementary.Cos(Angle);
}
