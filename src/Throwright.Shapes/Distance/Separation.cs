using System.Runtime.Intrinsics;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Distance;

/// <summary>How far two convex shapes stand apart at one position.</summary>
/// <param name="Distance">
/// m, between the two points; below zero: the shapes overlap and must move by as much along the direction to come apart
/// (nearly exact for overlapping cores, see <see cref="Proved"/>).
/// </param>
/// <param name="Proved">
/// Proven from below by the direction alone, whatever the search did: the shapes are at least this far apart (or, below
/// zero, overlap by at most this much).
/// </param>
/// <param name="Direction">Unit, from the first shape to the second, outer axes.</param>
/// <param name="OnFirst">Point of the first shape's surface.</param>
/// <param name="OnSecond">Point of the second shape's surface.</param>
public readonly record struct Separation(double Distance, double Proved, Vector3 Direction, Vector3 OnFirst, Vector3 OnSecond);

/// <summary>The same while it is worked with.</summary>
internal struct Nearness
{
    public double Distance, Proved;
    public Vector256<double> Direction, OnFirst, OnSecond;

    public readonly Separation Told() => new(Distance, Proved, Triple.Back(Direction), Triple.Back(OnFirst), Triple.Back(OnSecond));
}
