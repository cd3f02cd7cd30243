using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Clearance;

/// <summary>Bodies at the far end and on the way there: the arm with its fitting, the conduit, the sheets. Aircraft axes, m, rad.</summary>
public static class DeviceBodies
{
    /// <summary>How far a node of the conduit's line may lie beside its capsule's axis: the capsule is thicker by what it does.</summary>
    private const double Sag = 5e-4;

    // Longer pieces of an arc make a fatter hull of it.
    private const double Piece = 30 * Math.PI / 180;

    /// <summary>The arm of a device with the fitting of the wire's end in its hole, over the whole sweep.</summary>
    /// <param name="pivot">On the axis, in the plane of the arm.</param>
    /// <param name="zero">Pivot to hole at arm angle 0, square to the axis.</param>
    /// <param name="length">Pivot to the outermost hole.</param>
    /// <param name="halfWidth">Metal beside the holes, and beyond the outermost.</param>
    /// <param name="thickness">Of the arm; 0: not known, and it counts as thick as it is wide.</param>
    /// <param name="radius">Pivot to the hole in use.</param>
    /// <param name="fitting">Length of the fitting along the wire, centred on its pin; 0: not known, none is drawn.</param>
    /// <param name="pin">Thickness of the fitting along the pin.</param>
    public static CockpitBody Lever(
        string name, Vector3 pivot, Vector3 axis, Vector3 zero, double length, double halfWidth, double thickness, double radius, double fitting, double pin, (double From, double To) sweep)
    {
        Vector3 k = axis.Unit(), u = zero.Unit(), hole = pivot + (radius * u);
        List<Part> parts =
        [
            new("arm", thickness > 0
                ? new Box(pivot + (0.5 * length * u), new(u, Vector3.Cross(k, u), k), new((0.5 * length) + halfWidth, halfWidth, 0.5 * thickness))
                : new Capsule(pivot, pivot + (length * u), halfWidth)),
        ];
        // It may sit on either side of the arm, and turns on its pin.
        if (fitting > 0)
            parts.Add(new("swivel", new Cylinder(hole - (((0.5 * thickness) + pin) * k), hole + (((0.5 * thickness) + pin) * k), 0.5 * fitting)));
        return new(name, Solid.Of(parts), new([Joint.Turn(name, pivot, k, sweep.From, sweep.To)]));
    }

    /// <summary>A conduit along its line as capsules, and the free wire beyond it in every place that the arm takes it to.</summary>
    /// <param name="line">Nodes of its centre line with the arc length to each and the curvature there, 1/m.</param>
    /// <param name="radius">Half of its outside, with what may be off about its place.</param>
    /// <param name="ends">Arc lengths up to which the part at the handle reaches, and from which that at the arm does: parts of their own, for what is held there.</param>
    /// <param name="wire">From where it leaves the conduit to the places of the hole at equal steps (rad) of the sweep; null: not known.</param>
    public static CockpitBody Conduit(string name, IReadOnlyList<(Vector3 Point, double At, double Curvature)> line, double radius, (double AtHandle, double AtArm) ends, (Vector3 From, IReadOnlyList<Vector3> Holes, double Step, Vector3 Pivot, double Radius)? wire)
    {
        ArgumentNullException.ThrowIfNull(line);
        var parts = new List<Part>();
        for (var from = 0; from + 1 < line.Count;)
        {
            var to = from + 1;
            var off = Beside(line, from, to);
            var called = Called(from);
            while (to + 1 < line.Count && Called(to) == called && Beside(line, from, to + 1) is var next && next <= Sag)
                (to, off) = (to + 1, next);
            parts.Add(new(called, new Capsule(line[from].Point, line[to].Point, radius + off)));
            from = to;
        }

        if (wire is { } w)
        {
            for (var i = 0; i + 1 < w.Holes.Count; i++)
            {
                // An arc lies within its ends and the point where their tangents meet.
                var middle = 0.5 * (w.Holes[i] + w.Holes[i + 1]);
                var centre = w.Pivot;
                var apex = centre + (1 / (Math.Cos(0.5 * w.Step) * Math.Cos(0.5 * w.Step)) * (middle - centre));
                parts.Add(new("wire", new Hull([w.From, w.Holes[i], w.Holes[i + 1], apex], w.Radius)));
            }
        }

        return new(name, Solid.Of(parts));

        // A piece from one node to the next belongs to an end where it begins before its limit, or ends beyond it.
        string Called(int from) => line[from].At < ends.AtHandle ? AtHandle : line[from + 1].At > ends.AtArm ? AtArm : "conduit";
    }

    /// <summary>Parts of a conduit in which the handle's shank slides, and from which the wire comes to the arm.</summary>
    public const string AtHandle = "at the handle";
    public const string AtArm = "at the arm";

    /// <summary>Equal steps of a sweep, none wider than a piece that a hull fits well.</summary>
    public static int Steps(double sweep) => Math.Max(1, (int)Math.Ceiling((sweep / Piece) - 1e-9));

    /// <summary>A flat sheet between its two faces; what its outline encloses, a hollow one too.</summary>
    /// <param name="outline">Corners one after the other, in the plane of the face.</param>
    /// <param name="normal">Unit, out of the face; the sheet lies behind it.</param>
    public static CockpitBody Sheet(string name, IReadOnlyList<Vector3> outline, Vector3 normal, double thickness, double unsure) => new(
        name,
        Solid.Of(Convex(outline, normal).Select(piece => new Part(Model.Sheet.PartName, new Hull(piece.Concat(piece.Select(c => c - (thickness * normal))), unsure)))));

    /// <summary>Largest distance of the line between two nodes from the straight between them, m.</summary>
    private static double Beside(IReadOnlyList<(Vector3 Point, double At, double Curvature)> line, int from, int to)
    {
        var (a, b) = (line[from].Point, line[to].Point);
        var along = b - a;
        var size = along.Size;
        var most = 0.0;
        for (var i = from; i <= to; i++)
        {
            var p = line[i].Point - a;
            // To the segment itself: a line that doubles back leaves it at an end.
            var t = size > 0 ? Math.Clamp(Vector3.Dot(p, along) / (size * size), 0, 1) : 0;
            most = Math.Max(most, (p - (t * along)).Size);
        }

        // Between nodes it bows by an eighth of curvature times length squared; a fourth for a curvature that grows there.
        var bow = 0.0;
        for (var i = from; i < to; i++)
            bow = Math.Max(bow, 0.25 * Math.Max(line[i].Curvature, line[i + 1].Curvature) * Math.Pow(line[i + 1].At - line[i].At, 2));
        return most + bow;
    }

    /// <summary>The outline itself where it is convex, else its triangles (ears cut off one by one).</summary>
    private static List<List<Vector3>> Convex(IReadOnlyList<Vector3> outline, Vector3 normal)
    {
        var corners = outline.ToList();
        double Turn(Vector3 a, Vector3 b, Vector3 c) => Vector3.Dot(normal, Vector3.Cross(b - a, c - b));
        var area = 0.0;
        for (var i = 1; i + 1 < corners.Count; i++)
            area += Vector3.Dot(normal, Vector3.Cross(corners[i] - corners[0], corners[i + 1] - corners[0]));
        if (area < 0)
            corners.Reverse();
        var n = corners.Count;
        if (Enumerable.Range(0, n).All(i => Turn(corners[i], corners[(i + 1) % n], corners[(i + 2) % n]) >= -1e-12))
            return [corners];
        bool Cross(Vector3 a, Vector3 b, Vector3 c, Vector3 d) => Turn(a, b, c) * Turn(a, b, d) < 0 && Turn(c, d, a) * Turn(c, d, b) < 0;
        // Crossing itself it encloses nothing for certain: then all of its hull counts, which is never too little.
        if (Enumerable.Range(0, n).Any(i => Enumerable.Range(i + 1, n - i - 1).Any(j => Cross(corners[i], corners[(i + 1) % n], corners[j], corners[(j + 1) % n]))))
            return [[.. outline]];
        List<List<Vector3>> pieces = [];
        while (corners.Count > 3)
        {
            n = corners.Count;
            var ear = Enumerable.Range(0, n).FirstOrDefault(
                i =>
                {
                    Vector3 a = corners[(i + n - 1) % n], b = corners[i], c = corners[(i + 1) % n];
                    return Turn(a, b, c) > 0 && !corners.Any(p => p != a && p != b && p != c && Turn(a, b, p) >= 0 && Turn(b, c, p) >= 0 && Turn(c, a, p) >= 0);
                },
                -1);
            if (ear < 0)
                return [[.. outline]];
            pieces.Add([corners[(ear + n - 1) % n], corners[ear], corners[(ear + 1) % n]]);
            corners.RemoveAt(ear);
        }

        pieces.Add(corners);
        return pieces;
    }
}
