using Throwright.Shapes.Frames;

namespace Throwright.Engine.Throw;

/// <summary>The few numbers that fix how the wire moves while the arm turns. Lengths in m, angles in rad.</summary>
/// <remarks>
/// Arm axes: x along the arm at angle 0, z along the lever's axis, y = z x x; origin on the axis in the swivel's plane.
/// The swivel is at radius (cos phi, sin phi, 0).
/// </remarks>
/// <param name="Radius">Pivot to hole.</param>
/// <param name="From">Arm angle at one device stop.</param>
/// <param name="To">Arm angle at the other; above From.</param>
/// <param name="Anchor">Where the conduit's end is held, arm axes.</param>
/// <param name="Exit">Direction of the conduit's end, out of the conduit toward the arm; null: at the swivel at mid sweep.</param>
public sealed record SweepCase(double Radius, double From, double To, Vector3 Anchor, Vector3? Exit = null)
{
    public double Mid => 0.5 * (From + To);

    public Vector3 SwivelAt(double phi) => new(Radius * Math.Cos(phi), Radius * Math.Sin(phi), 0);
}
