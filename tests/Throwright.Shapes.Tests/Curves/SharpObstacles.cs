using Throwright.Shapes.Curves;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Curves;

/// <summary>Seeded problems with things far sharper than a segment of the mesh cut into the free curve: wires, sheets' edges, rims of holes, skins.</summary>
public static class SharpObstacles
{
    /// <summary>Half of what lies along the curve is thick, of a chord of 1.</summary>
    public const double Keep = 0.003;

    public enum Kind
    {
        Ball,
        Wire,
        SheetEdge,
        HoleRim,
        Skin,
    }

    public static ElasticProblem Problem(int number, Kind kind)
    {
        var random = new CounterRandom(41, (100 * (int)kind) + number);
        for (var again = 0; ; again++)
        {
            var problem = RandomCurves.Problem((1000 * again) + 900 + number, false, 1.2, 1.05, 1.5);
            var free = ElasticCurveSolver.Solve(problem with { Starts = 1 }).Curve!;
            double s = free.Length * (0.3 + (0.4 * random.Uniform(0))), deep = kind == Kind.Wire ? 0.003 * random.Uniform(1) : 0.004 + (0.03 * random.Uniform(1)), turn = 6.28 * random.Uniform(2);
            Vector3 t = free.TangentAt(s), u = Vector3.Cross(t, new Vector3(0.3, -0.5, 0.8)).Unit(), v = Vector3.Cross(t, u);
            Vector3 outward = (Math.Cos(turn) * u) + (Math.Sin(turn) * v), across = Vector3.Cross(t, outward), foot = free.PointAt(s) + (deep * outward);
            var distance = Of(kind, foot, t, outward, across, random);
            // The ends stay free, and the curve comes to it once only: what else it crosses is another matter.
            double Room(double at) => distance(free.PointAt(at)) - Keep;
            var crossed = Enumerable.Range(0, 401).Where(i => Room(free.Length * i / 400) < 0).ToList();
            if (again < 50 && (crossed.Count == 0 || crossed[^1] - crossed[0] > 40 || crossed[0] < 40 || crossed[^1] > 360))
                continue;
            return problem with { Obstacles = [new(distance, Keep)] };
        }
    }

    /// <param name="foot">Where the thing's edge or near side is to be: a little beyond the free curve, so that the curve is in it by that.</param>
    private static Func<Vector3, double> Of(Kind kind, Vector3 foot, Vector3 t, Vector3 outward, Vector3 across, CounterRandom random)
    {
        const double Thick = 0.002;
        switch (kind)
        {
            case Kind.Ball:
                return p => (p - (foot - (0.05 * outward))).Size - 0.05;
            case Kind.Wire:
                // The curve must go over it, to the side outward.
                return PointDistance.OfCapsule(foot - (0.3 * across), foot + (0.3 * across), 0.001);
            case Kind.SheetEdge:
                return PlateDistance.Of([foot - (0.4 * across), foot + (0.4 * across), foot + (0.4 * across) - (0.8 * outward), foot - (0.4 * across) - (0.8 * outward)], t, Thick, []);
            case Kind.HoleRim:
                {
                    // A wall all across with a hole; the curve passes beside the hole's edge, through the wall.
                    var radius = 0.04 + (0.06 * random.Uniform(3));
                    Vector3 Corner(int i, int j) => foot + (3 * i * outward) + (3 * j * across);
                    return PlateDistance.Of([Corner(-1, -1), Corner(1, -1), Corner(1, 1), Corner(-1, 1)], t, Thick, [(foot + (radius * outward), radius)]);
                }

            default:
                {
                    // A closed box of triangles without thickness.
                    Vector3 Corner(int i) => foot + ((((i & 1) == 0) ? -0.1 : 0.1) * t) + ((((i & 2) == 0) ? -0.2 : 0) * outward) + ((((i & 4) == 0) ? -0.2 : 0.2) * across);
                    int[] faces = [0, 2, 3, 0, 3, 1, 4, 5, 7, 4, 7, 6, 0, 1, 5, 0, 5, 4, 2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1, 3, 7, 1, 7, 5];
                    Vector3[] corners = [.. Enumerable.Range(0, 8).Select(Corner)];
                    return p => Enumerable.Range(0, 12).Min(f => ToTriangle(p, corners[faces[3 * f]], corners[faces[(3 * f) + 1]], corners[faces[(3 * f) + 2]]));
                }
        }
    }

    private static double ToTriangle(Vector3 p, Vector3 a, Vector3 b, Vector3 c)
    {
        Vector3 ab = b - a, ac = c - a, n = Vector3.Cross(ab, ac);
        var nn = Vector3.Dot(n, n);
        var q = p - a;
        double v = Vector3.Dot(Vector3.Cross(q, ac), n) / nn, w = Vector3.Dot(Vector3.Cross(ab, q), n) / nn;
        if (v >= 0 && w >= 0 && v + w <= 1)
            return Math.Abs(Vector3.Dot(q, n)) / Math.Sqrt(nn);
        static double ToEdge(Vector3 p, Vector3 from, Vector3 to)
        {
            var along = to - from;
            return (p - from - (Math.Clamp(Vector3.Dot(p - from, along) / Vector3.Dot(along, along), 0, 1) * along)).Size;
        }

        return Math.Min(ToEdge(p, a, b), Math.Min(ToEdge(p, b, c), ToEdge(p, c, a)));
    }
}
