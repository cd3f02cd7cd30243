using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Distance;

/// <summary>Whether one solid lies inside the skin of the other, where their surfaces stay apart.</summary>
public enum Enclosure
{
    Outside,

    /// <summary>Inside a closed mesh: the distance of the surfaces is no clearance.</summary>
    Inside,

    /// <summary>A mesh is open, so inside can't be told from outside: only the distance of the surfaces holds.</summary>
    OpenMesh,
}

public static class Enclosures
{
    // A closed mesh gives whole numbers to rounding; an open one something in between.
    private const double Whole = 0.1;

    /// <remarks>
    /// While the surfaces never touch, inside can't become outside; so one position of each connected range of the joints
    /// is enough, and one point of each part that is in one piece.
    /// </remarks>
    public static Enclosure Of(MovingSolid first, MovingSolid second, IReadOnlyList<double> positions)
    {
        var joints = LeastDistanceSearch.JointsOf(first, second);
        Pose PoseOf(MovingSolid m) => m.Chain.At(joints, positions) * m.Home;
        var (a, b) = (PoseOf(first), PoseOf(second));
        var one = Within(first.Solid, b.Inverse() * a, second.Solid);
        var other = Within(second.Solid, a.Inverse() * b, first.Solid);
        return one == Enclosure.Inside || other == Enclosure.Inside ? Enclosure.Inside
            : one == Enclosure.OpenMesh || other == Enclosure.OpenMesh ? Enclosure.OpenMesh : Enclosure.Outside;
    }

    private static Enclosure Within(Solid inner, Pose outerFromInner, Solid outer)
    {
        if (!outer.IsMesh)
            return Enclosure.Outside;
        var worst = Enclosure.Outside;
        foreach (var point in inner.PointOfEachPart())
        {
            var turns = Math.Abs(outer.WindingAt(outerFromInner * point));
            if (Math.Abs(turns - Math.Round(turns)) > Whole)
                worst = Enclosure.OpenMesh;
            else if (turns > 0.5)
                return Enclosure.Inside;
        }

        return worst;
    }
}
