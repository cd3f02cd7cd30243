using Throwright.Shapes.Numerics;

namespace Throwright.Engine.Make;

/// <summary>A sheet bent round a cylinder where something flat is to sit on it. Lengths m, angles rad.</summary>
/// <param name="Radius">Of the face toward the pilot.</param>
/// <param name="Straight">Direction in which the sheet is straight, seen from the pilot's side, anticlockwise from the right.</param>
/// <param name="IsTowardPilot">It bulges toward the pilot; else away.</param>
public sealed record CurvedSheet(double Radius, double Straight, bool IsTowardPilot)
{
    /// <summary>Half width of a seat across the curve.</summary>
    /// <param name="along">Half-axis of the seat's ellipse in the direction of <paramref name="azimuth"/>.</param>
    /// <param name="across">The other half-axis.</param>
    public double HalfWidth(double along, double across, double azimuth)
    {
        // Farthest reach of an ellipse in a direction: the root of both projections' squares.
        var turn = Straight + (0.5 * Math.PI) - azimuth;
        double a = along * Elementary.Cos(turn), b = across * Elementary.Sin(turn);
        return Math.Sqrt((a * a) + (b * b));
    }

    /// <summary>The sharper of its two faces.</summary>
    public double Sharper(double thickness) => IsTowardPilot ? Radius - thickness : Radius;

    /// <summary>Rise of a circle over half a chord: what stands off a flat seat laid on the sheet; infinity: the seat is wider than the cylinder.</summary>
    public static double Gap(double radius, double halfWidth) => radius > halfWidth
        ? radius - Math.Sqrt((radius * radius) - (halfWidth * halfWidth))
        : double.PositiveInfinity;

    /// <summary>How far a flat seat on the bulging face can rock to either side, until its rim touches.</summary>
    public static double Rock(double radius, double halfWidth) => Math.Asin(Math.Min(1, halfWidth / radius));

    /// <summary>Half width up to which a seat stands off by no more than a gap.</summary>
    public static double WidestFor(double radius, double gap) => Math.Sqrt(gap * ((2 * radius) - gap));
}
