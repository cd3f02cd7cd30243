using Throwright.Shapes.Frames;

namespace Throwright.Engine.Throw;

/// <summary>The bench rules for setting the anchor, and what each gives. Plane case; lengths in m, angles in rad.</summary>
/// <remarks>
/// r arm radius, h half the sweep, s distance along the wire from the anchor to the swivel's foot at mid travel.
/// Axes: x along the arm at mid travel, y away from the anchor. All derived in docs/theory/throw.md.
///   square at mid   anchor at (r, -s):                throw = 2 r sin h [1 - (r/s)^2 (1 - cos h)^2 / 2 + ...]
///   chord           anchor at (r cos h, -s):          throw = 2 r sin h exactly, for s >= r sin h
///   half sagitta    anchor at (r (1 + cos h)/2, -s):  nearly the same swing to both sides, a term of third order in h apart
/// </remarks>
public static class BenchRules
{
    /// <summary>Throw of the chord rule, exact.</summary>
    public static double ChordThrow(double radius, double halfSweep) => 2 * radius * Math.Sin(halfSweep);

    /// <summary>Throw of the square rule, exact: the difference of the two end lengths.</summary>
    public static double SquareThrow(double radius, double halfSweep, double distance)
    {
        double Free(double phi)
        {
            double x = radius * (Math.Cos(phi) - 1), y = (radius * Math.Sin(phi)) + distance;
            return Math.Sqrt((x * x) + (y * y));
        }

        return Free(halfSweep) - Free(-halfSweep);
    }

    /// <summary>Offset of the anchor from the pivot, along the arm at mid travel.</summary>
    public static double Offset(Model.AnchorRule rule, double radius, double halfSweep) => rule switch
    {
        Model.AnchorRule.SquareAtMid => radius,
        Model.AnchorRule.Chord => radius * Math.Cos(halfSweep),
        Model.AnchorRule.HalfSagitta => 0.5 * radius * (1 + Math.Cos(halfSweep)),
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "a rule that fixes the offset"),
    };

    /// <summary>Anchor in arm axes when the rule is applied at arm angle <paramref name="mid"/>.</summary>
    public static Vector3 AnchorAt(double offset, double distance, double mid)
    {
        double cos = Math.Cos(mid), sin = Math.Sin(mid);
        return new((offset * cos) + (distance * sin), (offset * sin) - (distance * cos), 0);
    }

    /// <summary>Direction of the conduit's end in arm axes: along the wire's line, toward the arm.</summary>
    public static Vector3 ExitAt(double mid) => new(-Math.Sin(mid), Math.Cos(mid), 0);
}
