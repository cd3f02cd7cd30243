using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Tests.Distance;

/// <summary>Two shapes put together so that their distance is known beforehand, to rounding.</summary>
/// <remarks>
/// The first shape's farthest point in a direction n is found in closed form, and the second is put so that its farthest point
/// against n lies d ahead of it. Both lie on their own side of a slab of width d, and two of their points are d apart: so d is the
/// distance, without any search.
/// </remarks>
internal sealed record KnownShape(string Name, ConvexShape Shape, Func<Vector3, Vector3> Farthest, IReadOnlyList<Vector3> Special)
{
    public static readonly string[] Kinds = ["sphere", "capsule", "box", "rounded box", "cylinder", "cone", "hull", "triangle"];

    public static KnownShape Of(string kind, Scenes scene)
    {
        Vector3 x = new(1, 0, 0), y = new(0, 1, 0), z = new(0, 0, 1);
        var centre = scene.Place(0.05);
        double r = scene.Number(0.005, 0.05), length = scene.Number(0.01, 0.2), other = scene.Number(0, 0.05);
        var half = new Vector3(scene.Number(0.005, 0.1), scene.Number(0.005, 0.1), scene.Number(0.0005, 0.1));
        Vector3 Corner(Vector3 u) => centre + new Vector3(Math.CopySign(half.X, u.X), Math.CopySign(half.Y, u.Y), Math.CopySign(half.Z, u.Z));
        // Of a bar along x: the rim, or anything on the flat end when the direction is the axis itself.
        Vector3 Rim(Vector3 u, double across)
        {
            var size = Math.Sqrt((u.Y * u.Y) + (u.Z * u.Z));
            return size == 0 ? default : (across / size) * new Vector3(0, u.Y, u.Z);
        }

        Vector3 Of(IReadOnlyList<Vector3> points, Vector3 u) => points.MaxBy(p => Vector3.Dot(p, u));
        switch (kind)
        {
            case "sphere":
                return new(kind, new Sphere(centre, r), u => centre + (r * u), [x]);
            case "capsule":
                return new(kind, new Capsule(centre, centre + (length * x), r), u => centre + (u.X > 0 ? length * x : default) + (r * u), [y, x]);
            case "box":
                return new(kind, new Box(centre, Rotation.None, half), Corner, [x, y, z, new Vector3(1, 1, 0).Unit()]);
            case "rounded box":
                return new(kind, new Box(centre, Rotation.None, half, other), u => Corner(u) + (other * u), [x, y, z, new Vector3(1, 1, 0).Unit()]);
            case "cylinder":
                return new(kind, new Cylinder(centre, centre + (length * x), r), u => centre + (u.X > 0 ? length * x : default) + Rim(u, r), [x, y, z]);
            case "cone":
                var side = new Vector3(r - other, length, 0).Unit();
                return new(
                    kind,
                    new Cone(centre, centre + (length * x), r, other),
                    u =>
                    {
                        Vector3 a = centre + Rim(u, r), b = centre + (length * x) + Rim(u, other);
                        return Vector3.Dot(a, u) > Vector3.Dot(b, u) ? a : b;
                    },
                    [x, -1 * x, side]);
            case "hull":
                Vector3[] many = [.. Enumerable.Range(0, 14).Select(_ => scene.Place(0.1))];
                return new(kind, new Hull(many), u => Of(many, u), [x]);
            case "triangle":
                Vector3[] three = [scene.Place(0.1), scene.Place(0.1), scene.Place(0.1)];
                return new(kind, new Hull(three), u => Of(three, u), [Vector3.Cross(three[1] - three[0], three[2] - three[0]).Unit()]);
            default:
                throw new ArgumentException(kind, nameof(kind));
        }
    }

    /// <summary>Poses at which the two are d apart.</summary>
    /// <param name="flush">A face, edge or flat of each lies against the other's.</param>
    public static (Pose First, Pose Second) Apart(KnownShape first, KnownShape second, double d, bool flush, Scenes scene)
    {
        var turn = scene.Pose(0).Turn;
        var local = flush ? first.Special[(int)scene.Number(0, first.Special.Count)] : scene.Direction();
        var n = turn * local;
        Rotation other;
        if (flush)
        {
            var facing = second.Special[(int)scene.Number(0, second.Special.Count)];
            other = Rotation.About(n, scene.Number(-3, 3)) * Rotation.Between(facing, -n);
        }
        else
        {
            other = scene.Pose(0).Turn;
        }

        var pose = new Pose(turn, scene.Place(0.3));
        var at = pose * first.Farthest(local);
        return (pose, new(other, at + (d * n) - (other * second.Farthest(other.Back(-n)))));
    }
}
