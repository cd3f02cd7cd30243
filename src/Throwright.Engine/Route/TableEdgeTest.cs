using Throwright.Shapes.Curves;
using Throwright.Shapes.Numerics;

namespace Throwright.Engine.Route;

/// <summary>The stiffness of a conduit from a level piece of it that hangs over a table's edge.</summary>
public static class TableEdgeTest
{
    /// <summary>The stiffness at which the free end droops as measured, N m2. Lengths in m, weight in N/m.</summary>
    /// <remarks>
    /// Small droop: w l^4 / (8 d), the cantilever under its own weight. A large one shortens the lever, so there the elastic
    /// curve itself is bent until it droops as much. Derived in docs/theory/route.md.
    /// </remarks>
    public static double StiffnessOf(double overhang, double droop, double weight)
    {
        if (!(overhang > 0) || !(droop > 0 && droop < overhang) || !(weight > 0))
            throw new ArgumentOutOfRangeException(nameof(droop), droop, "overhang and weight above zero, droop between zero and the overhang");
        var first = weight * Math.Pow(overhang, 4) / (8 * droop);
        double Miss(double share)
        {
            var answer = ElasticCurveSolver.Solve(new()
            {
                Start = default,
                StartDirection = new(1, 0, 0),
                End = null,
                Length = overhang,
                Stiffness = share * first,
                Load = new(0, 0, -weight),
                Segments = 48,
                Starts = 1,
            });
            return answer.Curve is { } curve ? -curve.Nodes[^1].Point.Z - droop : double.NaN;
        }

        // Softer droops more: one change of sign. A droop of nine tenths takes a twentieth of the first guess.
        double low = 0.02, high = 1.2;
        return Miss(low) > 0 && Miss(high) < 0 ? first * Roots.Between(Miss, low, high, 1e-9) : first;
    }
}
