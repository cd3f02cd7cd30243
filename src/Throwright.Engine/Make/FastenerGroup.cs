using Throwright.Shapes;
using Throwright.Shapes.Solids;

namespace Throwright.Engine.Make;

/// <summary>A fastener in a group: its place, and its area as a weight (any unit, alike for all).</summary>
public sealed record GroupedFastener(Vector2 At, double Area);

/// <summary>Shear in fasteners that carry an eccentric load in their own plane; elastic. N, N m, m.</summary>
/// <remarks>
/// Direct F A_i / sum A; torsion M A_i r_i / sum(A r^2) about the centroid by area, square to r_i; vector sum. Derived in
/// docs/theory/make.md, section 11.
/// </remarks>
public static class FastenerGroup
{
    public static Vector2 Centroid(IReadOnlyList<GroupedFastener> group) => (1 / group.Sum(f => f.Area)) * group.Aggregate(default(Vector2), (sum, f) => sum + (f.Area * f.At));

    /// <param name="at">Where the force acts.</param>
    /// <param name="moment">A moment besides, anticlockwise.</param>
    public static EquatableList<double> Shear(IReadOnlyList<GroupedFastener> group, Vector2 force, Vector2 at, double moment = 0)
    {
        var centroid = Centroid(group);
        var area = group.Sum(f => f.Area);
        var turn = moment + Vector2.Cross(at - centroid, force);
        var second = group.Sum(f => f.Area * Vector2.Dot(f.At - centroid, f.At - centroid));
        return group.Select(f =>
        {
            var r = f.At - centroid;
            var torsion = second > 0 ? turn * f.Area / second * new Vector2(-r.Y, r.X) : default;
            return ((f.Area / area * force) + torsion).Size;
        }).ToEquatableList();
    }

    /// <summary>Pull in fasteners that hold a leg down against a moment, prying about a line: M d_i / sum d^2 by equal areas.</summary>
    /// <param name="distances">Of each fastener from the line about which the leg would lift, m.</param>
    public static EquatableList<double> Tension(IReadOnlyList<double> distances, double moment)
    {
        var second = distances.Sum(d => d * d);
        return distances.Select(d => moment * d / second).ToEquatableList();
    }
}
