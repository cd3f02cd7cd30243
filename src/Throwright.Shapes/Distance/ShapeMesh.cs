using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Distance;

/// <summary>The surface of a convex shape as triangles, to be looked at. Distances are never taken from it.</summary>
/// <param name="Points">Corners, m.</param>
/// <param name="Normals">Outward at each corner.</param>
/// <param name="Triangles">Three corners each.</param>
public sealed record ShapeMesh(IReadOnlyList<Vector3> Points, IReadOnlyList<Vector3> Normals, IReadOnlyList<int> Triangles)
{
    private const int Around = 24;
    private const int Quarter = 5;

    public static ShapeMesh Of(ConvexShape shape) => shape switch
    {
        Sphere s => Turned(s.Centre, new(0, 0, 1), Arc(0, 0, s.Radius, -1, 1)),
        Capsule c when (c.To - c.From).Size is > 0 and var length => Turned(c.From, (1 / length) * (c.To - c.From), [.. Arc(0, 0, c.Radius, -1, 0), .. Arc(length, 0, c.Radius, 0, 1)]),
        Capsule c => Of(new Sphere(c.Centre, c.Radius)),
        Cylinder c => Bar(c.Ends.From, c.Ends.To, c.Across, c.Across, c.Radius),
        Cone c => Bar(c.Ends.From, c.Ends.To, c.Ends.AcrossFrom, c.Ends.AcrossTo, c.Radius),
        Box b => Rounded(b),
        _ => Of(new Sphere(shape.Centre, shape.CoreReach + shape.Radius)),
    };

    private static ShapeMesh Bar(Vector3 from, Vector3 to, double across, double acrossTo, double radius)
    {
        var length = (to - from).Size;
        List<(double, double, double, double)> profile = [(-radius, 0, -1, 0), (-radius, across, -1, 0)];
        if (radius > 0)
            profile.AddRange(Arc(0, across, radius, -1, 0));
        // The side's own normal: square to the line from end to end.
        double rise = across - acrossTo, side = Math.Sqrt((length * length) + (rise * rise));
        profile.Add((0, across + radius, rise / side, length / side));
        profile.Add((length, acrossTo + radius, rise / side, length / side));
        if (radius > 0)
            profile.AddRange(Arc(length, acrossTo, radius, 0, 1));
        profile.Add((length + radius, acrossTo, 1, 0));
        profile.Add((length + radius, 0, 1, 0));
        return Turned(from, (1 / length) * (to - from), profile);
    }

    /// <summary>Part of a round: at (along, off), from share -1 (backward along) over 0 (outward) to 1 (forward).</summary>
    private static IEnumerable<(double Along, double Off, double NormalAlong, double NormalOff)> Arc(double along, double off, double radius, int from, int to)
    {
        var pieces = Quarter * (to - from);
        for (var i = 0; i <= pieces; i++)
        {
            var angle = 0.5 * Math.PI * (from + ((double)i / Quarter));
            var (s, c) = Math.SinCos(angle);
            yield return (along + (radius * s), off + (radius * c), s, c);
        }
    }

    private static ShapeMesh Turned(Vector3 at, Vector3 axis, IEnumerable<(double Along, double Off, double NormalAlong, double NormalOff)> outline)
    {
        var profile = outline.ToList();
        var x = Rotation.SquareTo(axis);
        var y = Vector3.Cross(axis, x);
        var (points, normals, triangles) = (new List<Vector3>(), new List<Vector3>(), new List<int>());
        for (var i = 0; i < Around; i++)
        {
            var (s, c) = Math.SinCos(2 * Math.PI * i / Around);
            var outward = (c * x) + (s * y);
            foreach (var (along, off, normalAlong, normalOff) in profile)
            {
                points.Add(at + (along * axis) + (off * outward));
                normals.Add((normalAlong * axis) + (normalOff * outward));
            }
        }

        for (var i = 0; i < Around; i++)
        {
            int here = i * profile.Count, next = (i + 1) % Around * profile.Count;
            for (var j = 0; j + 1 < profile.Count; j++)
                triangles.AddRange([here + j, next + j, next + j + 1, here + j, next + j + 1, here + j + 1]);
        }

        return new(points, normals, triangles);
    }

    /// <summary>A ball cut through its middle three ways and drawn apart: flat faces between, rounded edges and corners.</summary>
    private static ShapeMesh Rounded(Box box)
    {
        var (gx, gy, gz) = box.Halves;
        Vector3 ux = Unit(gx, gy, gz, 0), uy = Unit(gx, gy, gz, 1), uz = Unit(gx, gy, gz, 2);
        // The middle stands twice, once for each half.
        (double At, int Sign)[] steps = box.Radius > 0 ? [(-1, -1), (-0.4, -1), (0, -1), (0, 1), (0.4, 1), (1, 1)] : [(0, -1), (0, 1)];
        var (points, normals, triangles) = (new List<Vector3>(), new List<Vector3>(), new List<int>());
        for (var face = 0; face < 6; face++)
        {
            var sign = face % 2 == 0 ? 1 : -1;
            var start = points.Count;
            foreach (var v in steps)
            {
                foreach (var u in steps)
                {
                    (double At, int Sign)[] xyz = (face / 2) switch { 0 => [(sign, sign), u, v], 1 => [v, (sign, sign), u], _ => [u, v, (sign, sign)] };
                    var normal = ((xyz[0].At * ux) + (xyz[1].At * uy) + (xyz[2].At * uz)).Unit();
                    points.Add(box.Centre + (xyz[0].Sign * gx) + (xyz[1].Sign * gy) + (xyz[2].Sign * gz) + (box.Radius * normal));
                    normals.Add(normal);
                }
            }

            for (var j = 0; j + 1 < steps.Length; j++)
            {
                for (var i = 0; i + 1 < steps.Length; i++)
                {
                    int a = start + (j * steps.Length) + i, b = a + 1, c = a + steps.Length, d = c + 1;
                    triangles.AddRange(sign > 0 ? [a, b, d, a, d, c] : [a, d, b, a, c, d]);
                }
            }
        }

        return new(points, normals, triangles);
    }

    /// <summary>Axis of a box, also where its half size there is zero.</summary>
    private static Vector3 Unit(Vector3 gx, Vector3 gy, Vector3 gz, int which)
    {
        Vector3[] g = [gx, gy, gz];
        Vector3 own = g[which], next = g[(which + 1) % 3], last = g[(which + 2) % 3];
        const double least = 1e-12;
        if (own.Size > least)
            return own.Unit();
        if (next.Size > least && last.Size > least)
            return Vector3.Cross(next, last).Unit();
        // Only one axis is given, or none: any square set does, as long as all three agree on it.
        var known = Array.FindIndex(g, v => v.Size > least);
        var first = known < 0 ? new Vector3(1, 0, 0) : g[known].Unit();
        var second = Rotation.SquareTo(first);
        return ((which - Math.Max(known, 0) + 3) % 3) switch { 0 => first, 1 => second, _ => Vector3.Cross(first, second) };
    }
}
