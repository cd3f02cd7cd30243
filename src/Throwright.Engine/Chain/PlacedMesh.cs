using Throwright.Engine.Measure;
using Throwright.Engine.Model;
using Throwright.Shapes;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;
using Solid = Throwright.Shapes.Distance.Solid;

namespace Throwright.Engine.Chain;

/// <summary>A mesh in aircraft axes.</summary>
/// <param name="Name">What reports call it.</param>
/// <param name="Corners">m, aircraft axes.</param>
/// <param name="OpenEdges">Edges with a triangle on one side only; 0: the mesh is closed.</param>
/// <param name="Fit">How well the matched points agree, in the file's order; null: placed by its origin.</param>
public sealed record PlacedMesh(string Name, MeshShape Shape, EquatableList<Vector3> Corners, EquatableList<int> Indices, int OpenEdges, PointFit? Fit)
{
    public bool IsOpen => OpenEdges > 0;

    public int Triangles => Indices.Count / 3;

    public static double Metres(MeshUnit unit) => unit switch
    {
        MeshUnit.Millimetre => 1e-3,
        MeshUnit.Centimetre => 1e-2,
        MeshUnit.Metre => 1,
        MeshUnit.Inch => 0.0254,
        MeshUnit.Foot => 0.3048,
        _ => throw new ArgumentOutOfRangeException(nameof(unit)),
    };

    /// <summary>Null: the matched points do not fix a place, since they lie in one line.</summary>
    public static PlacedMesh? Of(string name, MeshShape shape, Skin skin)
    {
        ArgumentNullException.ThrowIfNull(shape);
        ArgumentNullException.ThrowIfNull(skin);
        var unit = Metres(shape.Unit);
        if (shape.At is { } at)
        {
            // Aft, right and up are right-handed.
            Vector3 aft = Axis(shape.Aft), up = Axis(shape.Up), right = Vector3.Cross(up, aft), origin = HandleMount.Vector(at);
            return Made(c => origin + (unit * new Vector3(Vector3.Dot(aft, c), Vector3.Dot(right, c), Vector3.Dot(up, c))), null);
        }

        return PointFit.Of(shape.Matched.Select((m, i) => new MatchedPoint($"{i + 1}", unit * new Vector3(m.X, m.Y, m.Z), HandleMount.Vector(m.Aircraft))).ToEquatableList()) is { } fit
            ? Made(c => fit.Place(unit * c), fit)
            : null;

        PlacedMesh Made(Func<Vector3, Vector3> place, PointFit? fit) =>
            new(name, shape, skin.Corners.Select(place).ToEquatableList(), skin.Indices.ToEquatableList(), skin.OpenEdges(), fit);
    }

    /// <summary>The mesh for distances, with all that is doubtful about it added all round.</summary>
    /// <param name="allow">Added besides, m.</param>
    internal Solid Solid(string part, double allow)
    {
        var doubt = Doubt();
        return Throwright.Shapes.Distance.Solid.OfTriangles(part, Corners, Indices, c => allow + Shape.Accuracy.Metres + doubt(c));
    }

    /// <summary>How far a corner may be from its true place for the way the mesh was placed, m.</summary>
    /// <remarks>
    /// With matched points each off by at most e, the fit is off by at most e at their middle, and turned about the k-th of
    /// their principal axes by at most e / rms_k, rms_k the root mean square distance of the points from that axis: so
    /// e (1 + d sqrt(sum 1/rms_k^2)) at the distance d from the middle, for angles that are small (docs/theory/clearance.md).
    /// e is the most that any point is unsure or misses by.
    /// </remarks>
    private Func<Vector3, double> Doubt()
    {
        if (Fit is null)
        {
            var unsure = Shape.At is { } at ? HandleMount.Unsureness(at) : 0;
            return _ => unsure;
        }

        Vector3[] points = [.. Shape.Matched.Select(m => HandleMount.Vector(m.Aircraft))];
        var middle = (1.0 / points.Length) * points.Aggregate((a, b) => a + b);
        var off = Shape.Matched.Max(m => HandleMount.Unsureness(m.Aircraft)) + Fit.Misses.Max();
        var scatter = new double[3, 3];
        foreach (var p in points)
        {
            double[] r = [p.X - middle.X, p.Y - middle.Y, p.Z - middle.Z];
            for (var i = 0; i < 3; i++)
            {
                for (var j = 0; j < 3; j++)
                    scatter[i, j] += r[i] * r[j] / points.Length;
            }
        }

        var spread = SymmetricEigen.Of(scatter).Values;
        var all = spread.Sum();
        var turn = Math.Sqrt(spread.Sum(s => 1 / (all - s)));
        return c => off * (1 + ((c - middle).Size * turn));
    }

    private static Vector3 Axis(MeshAxis axis) => axis switch
    {
        MeshAxis.X => new(1, 0, 0),
        MeshAxis.Y => new(0, 1, 0),
        MeshAxis.Z => new(0, 0, 1),
        MeshAxis.MinusX => new(-1, 0, 0),
        MeshAxis.MinusY => new(0, -1, 0),
        MeshAxis.MinusZ => new(0, 0, -1),
        _ => throw new ArgumentOutOfRangeException(nameof(axis)),
    };
}
