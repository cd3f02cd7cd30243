using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Solids;

/// <summary>Moves a body without changing it.</summary>
public static class Placing
{
    /// <summary>The body with its own axes laid on others.</summary>
    public static Solid Placed(this Solid solid, Axes on)
    {
        ArgumentNullException.ThrowIfNull(solid);
        Vector3 Turn(Vector3 v) => (v.X * on.X) + (v.Y * on.Y) + (v.Z * on.Z);
        Vector3 Move(Vector3 v) => on.Origin + Turn(v);
        Axes Lay(Axes a) => new(Move(a.Origin), Turn(a.X), Turn(a.Y), Turn(a.Z));
        return new(
            solid.Vertices.Select(Move).ToEquatableList(),
            solid.Edges.Select(e => e with
            {
                Curve = e.Curve switch
                {
                    Straight s => new Straight(Move(s.Start), Turn(s.Direction)),
                    Ellipse c => c with { Axes = Lay(c.Axes) },
                    var other => throw new ArgumentException($"Unknown curve {other.GetType().Name}.", nameof(solid)),
                },
            }).ToEquatableList(),
            solid.Faces.Select(f => f with
            {
                Surface = f.Surface switch
                {
                    Plane p => new Plane(Lay(p.Axes)),
                    Cylinder c => c with { Axes = Lay(c.Axes) },
                    Cone c => c with { Axes = Lay(c.Axes) },
                    var other => throw new ArgumentException($"Unknown surface {other.GetType().Name}.", nameof(solid)),
                },
            }).ToEquatableList());
    }
}
