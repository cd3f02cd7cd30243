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
/// <param name="FixedTip">Length of an end tube that can't tilt, beyond the anchor: the wire bends at its mouth. 0: it bends at the anchor.</param>
public sealed record SweepCase(double Radius, double From, double To, Vector3 Anchor, Vector3? Exit = null, double FixedTip = 0)
{
    public double Mid => 0.5 * (From + To);

    /// <summary>Along the conduit's end, toward the arm; any length.</summary>
    public Vector3 Along => Exit ?? SwivelAt(Mid) - Anchor;

    /// <summary>Where the wire changes its direction.</summary>
    public Vector3 Mouth => FixedTip > 0 && Along.Size > 0 ? Anchor + (FixedTip * Along.Unit()) : Anchor;

    public Vector3 SwivelAt(double phi) => new(Radius * Math.Cos(phi), Radius * Math.Sin(phi), 0);

    /// <summary>Angle of the free wire against the conduit's end, rad.</summary>
    public double SwingAt(double phi) => Vector3.AngleBetween(SwivelAt(phi) - Mouth, Along);
}
