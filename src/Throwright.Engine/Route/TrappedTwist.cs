using Throwright.Shapes;
using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Route;

/// <summary>The lie with twist locked in.</summary>
/// <param name="Moved">Largest move of the conduit from the lie without twist, m; NaN where none was found.</param>
/// <param name="LeastRadius">Then; NaN where none was found.</param>
/// <param name="TwistingMoment">Over the bending stiffness, 1/m: times the stiffness it is the moment that the clamps hold, N m.</param>
/// <param name="MaySnap">On the way the conduit could give way without load.</param>
public sealed record TwistedLie(double Moved, double LeastRadius, double TwistingMoment, bool MaySnap)
{
    /// <summary>The centre line then; empty where none was found.</summary>
    public EquatableList<Vector3> Points { get; init; } = [];
}

/// <summary>What if an end was turned by a wrench after the clamps were closed, or the conduit keeps a bend from its coil?</summary>
public static class TrappedTwist
{
    /// <param name="angle">Turn of the far end about its own axis, rad.</param>
    /// <param name="torsionOverBending">Torsion stiffness over bending stiffness; solid round bars of steel have 0.77, wound conduits other values.</param>
    /// <param name="set">Curvature that the conduit keeps when free, 1/m; at no twist it is turned into the bend at the start.</param>
    /// <remarks>For a run without supports: twist is trapped between two clamps. Weight is left out.</remarks>
    public static TwistedLie Find(Lie lie, double angle, double torsionOverBending, double set = 0)
    {
        ArgumentNullException.ThrowIfNull(lie);
        if (lie.Case.Supports.Count > 0 || lie.Contacts.Count > 0)
            throw new ArgumentException("twist is trapped between two clamps: a run without supports", nameof(lie));
        if (!(torsionOverBending > 0) || !double.IsFinite(angle) || !double.IsFinite(set))
            throw new ArgumentOutOfRangeException(nameof(torsionOverBending), torsionOverBending, "above zero");
        var shape = lie.Case.Weight == default || lie.Case.Stiffness is null ? lie.Shape : LieSolver.Solve(lie.Case with { Weight = default }).Lie?.Shape ?? lie.Shape;
        var stiffness = lie.Case.Stiffness ?? 1;
        CurveNode first = shape.Nodes[0], last = shape.Nodes[^1];
        // The mark begins on the inside of the bend and is carried along without twist.
        var mark = first.Curvature.Size > 1e-9 ? first.Curvature.Unit() : Rotation.SquareTo(first.Tangent);
        RodEnd start = new(first.Point, first.Tangent, mark);
        Vector3 force = (-1 / stiffness) * shape.Reactions[0].Force, moment = (-1 / stiffness) * shape.Reactions[0].Moment;
        var untwisted = TwistedRod.Shoot(new(shape.Length, 1, torsionOverBending), start, force, moment);
        RodEnd end = new(last.Point, last.Tangent, Square(untwisted.End.Mark, last.Tangent));
        var rod = TwistedRod.Clamped(force, moment, part => (
            new(shape.Length, 1, torsionOverBending, part * set),
            start,
            end with { Mark = Turned(end.Mark, end.Along, part * angle) }), 4 + (int)Math.Ceiling(Math.Abs(angle) / 0.2) + (int)Math.Ceiling(4 * Math.Abs(set) * shape.Length));
        return rod is null ? new(double.NaN, double.NaN, double.NaN, true) : new(rod.Nodes.Max(n => shape.DistanceFrom(n.Point)), rod.LeastRadius, rod.Twist, rod.PastNeutral) { Points = rod.Nodes.Select(n => n.Point).ToEquatableList() };
    }

    private static Vector3 Square(Vector3 mark, Vector3 along) => (mark - (Vector3.Dot(mark, along) * along)).Unit();

    private static Vector3 Turned(Vector3 mark, Vector3 along, double angle) => (Math.Cos(angle) * mark) + (Math.Sin(angle) * Vector3.Cross(along, mark));
}
