using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Solids;

/// <summary>Edges round a body, node by node; the profile runs anticlockwise seen against <see cref="Axis"/>.</summary>
/// <param name="Vertices">Vertex of each node.</param>
/// <param name="Edges">Edge from each node to the next.</param>
/// <param name="Arcs">For each edge the circle it is projected from; null: straight.</param>
public sealed record Ring(Vector3 Axis, EquatableList<int> Vertices, EquatableList<EdgeUse> Edges, EquatableList<RingArc?> Arcs);

/// <summary>The circle behind an arc of a ring.</summary>
/// <param name="Anticlockwise">About the ring's axis.</param>
public sealed record RingArc(Vector3 Centre, Vector3 Axis, double Radius, bool Anticlockwise);

/// <summary>Builds a body with three operations: a ring of edges on a plane, walls between two rings, flat caps.</summary>
/// <remarks>No body is ever cut by another: what a hole leaves is built as its own rings and walls.</remarks>
public sealed class SolidBuilder
{
    private readonly List<Vector3> vertices = [];
    private readonly List<Edge> edges = [];
    private readonly List<(Surface Surface, bool Outward, List<Loop> Loops)> faces = [];

    public int Vertex(Vector3 at)
    {
        vertices.Add(at);
        return vertices.Count - 1;
    }

    public int Line(int from, int to)
    {
        var along = vertices[to] - vertices[from];
        edges.Add(new(from, to, new Straight(vertices[from], along.Unit()), 0, along.Size));
        return edges.Count - 1;
    }

    /// <summary>An arc of a circle about an axis; it turns anticlockwise, or clockwise for a negative sweep.</summary>
    public EdgeUse Arc(int from, int to, Vector3 centre, Vector3 axis, double sweep)
    {
        var (start, end) = sweep > 0 ? (from, to) : (to, from);
        var out_ = vertices[start] - centre;
        edges.Add(new(start, end, new Ellipse(Axes.Along(centre, axis, out_), out_.Size, out_.Size), 0, Math.Abs(sweep)));
        return new(edges.Count - 1, sweep > 0);
    }

    /// <summary>Projects a profile along the axes' z on a plane: circles become ellipses where the plane is oblique.</summary>
    /// <param name="plane">Origin and z of the plane.</param>
    public Ring Ring(Axes frame, Profile profile, Axes plane)
    {
        var normal = plane.Z;
        var lean = Vector3.Dot(normal, frame.Z);
        if (!(Math.Abs(lean) > 1e-6))
            throw new ArgumentException("The plane runs along the projection.", nameof(plane));
        Vector3 On(Vector3 point) => point + (Vector3.Dot(plane.Origin - point, normal) / lean * frame.Z);

        var count = profile.Stretches.Count;
        var nodes = profile.Stretches.Select(s => Vertex(On(frame.Point(s.From)))).ToEquatableList();
        var uses = new List<EdgeUse>();
        var arcs = new List<RingArc?>();
        // The direction in which the plane rises steepest against the frame: there lies the ellipse's longer half-axis,
        // and the angle about the frame's axis counted from it is the ellipse's parameter.
        var across = normal - (lean * frame.Z);
        var isSquare = !(across.Size > 1e-12);
        var steep = isSquare ? frame.X : across.Unit();
        var steepAngle = isSquare ? 0 : Math.Atan2(Vector3.Dot(steep, frame.Y), Vector3.Dot(steep, frame.X));
        var stretch = isSquare ? 1 : 1 / Math.Abs(lean);
        for (var i = 0; i < count; i++)
        {
            var (piece, from, to) = (profile.Stretches[i], nodes[i], nodes[(i + 1) % count]);
            if (piece.Centre is not { } centre2)
            {
                uses.Add(new(Line(from, to), true));
                arcs.Add(null);
                continue;
            }

            var centre = On(frame.Point(centre2));
            var x = isSquare ? steep : (steep - (Vector3.Dot(steep, normal) / lean * frame.Z)).Unit();
            var axes = Axes.Along(centre, lean > 0 ? normal : -normal, x);
            var start = piece.StartAngle - steepAngle;
            if (piece.Sweep < 0)
                (axes, start) = (axes.Flipped(), -start);
            edges.Add(new(from, to, new Ellipse(axes, piece.Radius * stretch, piece.Radius), start, start + Math.Abs(piece.Sweep)));
            uses.Add(new(edges.Count - 1, true));
            arcs.Add(new(centre, frame.Z, piece.Radius, piece.Sweep > 0));
        }

        return new(frame.Z, nodes, uses.ToEquatableList(), arcs.ToEquatableList());
    }

    /// <summary>Walls between two rings that match node by node; the second lies further along the axis.</summary>
    /// <param name="inward">The walls of a hole: the material is outside.</param>
    public void Connect(Ring low, Ring high, bool inward = false)
    {
        var count = low.Vertices.Count;
        if (high.Vertices.Count != count)
            throw new ArgumentException("Rings that are joined have the same nodes.", nameof(high));
        var rails = Enumerable.Range(0, count).Select(i => Line(low.Vertices[i], high.Vertices[i])).ToList();
        for (var i = 0; i < count; i++)
        {
            var next = (i + 1) % count;
            EdgeUse[] round = [low.Edges[i], new(rails[next], true), Back(high.Edges[i]), new(rails[i], false)];
            var (surface, outward) = Wall(low, high, i, inward);
            faces.Add((surface, outward, [inward ? Reversed(round) : new(round.ToEquatableList())]));
        }
    }

    /// <summary>A flat face; its plane's z points out of the material.</summary>
    /// <returns>The face, to hang more holes in.</returns>
    public int Cap(Axes plane, Ring outline, params ReadOnlySpan<Ring> holes)
    {
        faces.Add((new Plane(plane), true, [Around(outline, plane.Z, false)]));
        foreach (var hole in holes)
            Hole(faces.Count - 1, hole);
        return faces.Count - 1;
    }

    /// <summary>Hangs a ring into a flat face as the edge of a hole.</summary>
    public void Hole(int face, Ring ring) => faces[face].Loops.Add(Around(ring, faces[face].Surface.Axes.Z, true));

    /// <summary>A face of the caller's own making.</summary>
    public int Face(Surface surface, bool outward, IReadOnlyList<EdgeUse> loop)
    {
        faces.Add((surface, outward, [new(loop.ToEquatableList())]));
        return faces.Count - 1;
    }

    public Solid Build() => new(
        vertices.ToEquatableList(), edges.ToEquatableList(), faces.Select(f => new Face(f.Surface, f.Outward, f.Loops.ToEquatableList())).ToEquatableList());

    public static EdgeUse Back(EdgeUse use) => use with { Forward = !use.Forward };

    private static Loop Around(Ring ring, Vector3 outward, bool isHole) =>
        Vector3.Dot(outward, ring.Axis) > 0 != isHole ? new(ring.Edges) : Reversed(ring.Edges);

    private static Loop Reversed(IEnumerable<EdgeUse> uses) => new(uses.Reverse().Select(Back).ToEquatableList());

    private (Surface Surface, bool Outward) Wall(Ring low, Ring high, int i, bool inward)
    {
        var start = vertices[low.Vertices[i]];
        var rail = vertices[high.Vertices[i]] - start;
        if (low.Arcs[i] is not { } first || high.Arcs[i] is not { } second)
        {
            var along = vertices[low.Vertices[(i + 1) % low.Vertices.Count]] - start;
            var normal = Vector3.Cross(along, rail);
            return (new Plane(Axes.Along(start, inward ? -normal : normal, along)), true);
        }

        // Two arcs about one centre in one plane: the edge of a bent sheet.
        if (Math.Abs(Vector3.Dot(rail, first.Axis)) < 1e-9 * rail.Size)
        {
            var edge = edges[low.Edges[i].Edge];
            var along = low.Edges[i].Forward ? edge.Curve.SlopeAt(edge.Start) : -edge.Curve.SlopeAt(edge.End);
            var normal = Vector3.Cross(along, rail);
            return (new Plane(Axes.Along(start, inward ? -normal : normal, rail)), true);
        }

        var outward = first.Anticlockwise != inward;
        var height = Vector3.Dot(second.Centre - first.Centre, first.Axis);
        if (first.Radius == second.Radius)
            return (new Cylinder(Axes.Along(first.Centre, first.Axis, start - first.Centre), first.Radius), outward);
        var (small, axis) = first.Radius < second.Radius ? (first, first.Axis) : (second, -first.Axis);
        return (new Cone(Axes.Along(small.Centre, axis, start - first.Centre), small.Radius, Math.Abs(second.Radius - first.Radius) / height), outward);
    }
}
