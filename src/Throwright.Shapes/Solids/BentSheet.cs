using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Solids;

/// <summary>A hole through a leg, square to it.</summary>
/// <param name="OnSecond">On the second leg; else on the first.</param>
/// <param name="FromBend">Centre from the leg's bend tangent line, m.</param>
/// <param name="Across">Centre from the middle of the width, m.</param>
/// <param name="Outline">About the centre; x along the leg away from the bend.</param>
public sealed record LegHole(bool OnSecond, double FromBend, double Across, Profile Outline);

/// <summary>A strip of sheet with one bend across its whole width and rounded corners. Lengths m, angle rad.</summary>
/// <remarks>
/// x along the first leg towards the bend, y across, z towards the inside of the bend. Origin: outer skin, middle of
/// the width, first bend tangent line. The first leg lies at x below 0.
/// </remarks>
/// <param name="First">Length of the first leg from its bend tangent line to its end.</param>
/// <param name="Second">The same of the second.</param>
/// <param name="Bend">Angle bent through, up to 150 deg.</param>
/// <param name="Radius">Inside bend radius.</param>
/// <param name="Corner">Radius of the four corners.</param>
public sealed record BentSheet(double First, double Second, double Width, double Thickness, double Bend, double Radius, double Corner, EquatableList<LegHole> Holes)
{
    public string? Fault
    {
        get
        {
            if (!(Thickness > 0 && Radius > 0 && Bend > 0 && Bend <= 150 * Math.PI / 180))
                return "thickness and bend radius are above zero, the bend up to 150 deg";
            if (!(Corner > 0 && 2 * Corner < Width && Corner < First && Corner < Second))
                return "the corners are rounded and fit the legs";
            return LeastWall > 0 ? null : "a hole meets an edge, the bend or another hole";
        }
    }

    /// <summary>Least material between a hole and its leg's edges, the bend tangent line, or another hole.</summary>
    public double LeastWall => Math.Min(Leg(false).LeastWall, Leg(true).LeastWall);

    /// <summary>Closed form: the legs, and the sector of a ring over the width.</summary>
    public double Volume => Leg(false).Volume + Leg(true).Volume
        + (0.5 * Bend * Width * (((Radius + Thickness) * (Radius + Thickness)) - (Radius * Radius)));

    public int ThroughHoles => Holes.Count;

    /// <summary>A leg as a flat plate seen from inside the bend: x away from the bend, its tangent line at x = 0.</summary>
    public DrilledPlate Leg(bool second)
    {
        var (length, half) = (second ? Second : First, 0.5 * Width);
        var outline = Profile.Close([
            new(new(0, -half), new(length - Corner, -half)),
            Profile.Arc(new(length - Corner, Corner - half), Corner, -Math.PI / 2, Math.PI / 2),
            Profile.Arc(new(length - Corner, half - Corner), Corner, 0, Math.PI / 2),
            new(new(length - Corner, half), new(0, half))]);
        var holes = Holes.Where(h => h.OnSecond == second).Select(h => new ThroughHole(new(h.FromBend, second ? h.Across : -h.Across), new(0, 0, 1), h.Outline));
        return new(outline, Thickness, holes.ToEquatableList());
    }

    public Solid Build()
    {
        if (Fault is { } fault)
            throw new InvalidOperationException($"The bracket can't be made: {fault}.");
        var make = new SolidBuilder();
        double cos = Elementary.Cos(Bend), sin = Elementary.Sin(Bend);
        // Leg axes: x along the leg away from the bend for the second, towards it for the first; z to the inside.
        var first = Axes.World;
        var centre = new Vector3(0, 0, Thickness + Radius);
        var second = new Axes(centre + ((Radius + Thickness) * new Vector3(sin, 0, -cos)), new(cos, 0, sin), new(0, 1, 0), new(-sin, 0, cos));
        var outer = Skin(make, first, second, centre);
        var inner = Skin(make, first.At(first.Point(0, 0, Thickness)), second.At(second.Point(0, 0, Thickness)), centre);
        make.Connect(outer.Ring, inner.Ring);

        var outerFaces = Faces(make, outer, first.Flipped(), second.Flipped(), centre, Radius + Thickness, isOuter: true);
        var innerFaces = Faces(make, inner, first.At(first.Point(0, 0, Thickness)), second.At(second.Point(0, 0, Thickness)), centre, Radius, isOuter: false);
        foreach (var hole in Holes)
        {
            var leg = hole.OnSecond ? second : first;
            var axes = leg.At(leg.Point(hole.OnSecond ? hole.FromBend : -hole.FromBend, hole.Across));
            // The outline's x points away from the bend on both legs; half a turn keeps the axes right-handed.
            if (!hole.OnSecond)
                axes = new(axes.Origin, -axes.X, -axes.Y, axes.Z);
            Ring low = make.Ring(axes, hole.Outline, axes), high = make.Ring(axes, hole.Outline, axes.At(axes.Point(0, 0, Thickness)));
            make.Connect(low, high, inward: true);
            make.Hole(hole.OnSecond ? outerFaces.Second : outerFaces.First, low);
            make.Hole(hole.OnSecond ? innerFaces.Second : innerFaces.First, high);
        }

        return make.Build();
    }

    private sealed record SkinEdges(Ring Ring, int FirstTangent, int SecondTangent);

    /// <summary>The edge of one skin, twelve nodes anticlockwise seen from inside, and its two bend tangent lines.</summary>
    private SkinEdges Skin(SolidBuilder make, Axes first, Axes second, Vector3 centre)
    {
        double half = 0.5 * Width, q = Corner;
        Vector3[] places =
        [
            first.Point(q - First, -half), first.Point(0, -half),
            second.Point(0, -half), second.Point(Second - q, -half), second.Point(Second, q - half), second.Point(Second, half - q), second.Point(Second - q, half), second.Point(0, half),
            first.Point(0, half), first.Point(q - First, half), first.Point(-First, half - q), first.Point(-First, q - half),
        ];
        var nodes = places.Select(make.Vertex).ToArray();
        var uses = new List<EdgeUse>();
        var arcs = new List<RingArc?>();
        // The bend's axis is -y: it turns x towards z.
        void Straight(int i) => Add(new(make.Line(nodes[i], nodes[(i + 1) % 12]), true), null);
        void Bent(int i, double y, bool back)
        {
            var at = new Vector3(centre.X, y, centre.Z);
            var sweep = back ? -Bend : Bend;
            Add(make.Arc(nodes[i], nodes[i + 1], at, new(0, -1, 0), sweep), new(at, new(0, -1, 0), (places[i] - at).Size, !back));
        }

        void Rounded(int i, Axes leg, double x, double y)
        {
            var at = leg.Point(x, y);
            Add(make.Arc(nodes[i], nodes[(i + 1) % 12], at, leg.Z, Math.PI / 2), new(at, leg.Z, q, true));
        }

        void Add(EdgeUse use, RingArc? arc)
        {
            uses.Add(use);
            arcs.Add(arc);
        }

        Straight(0);
        Bent(1, -half, back: false);
        Straight(2);
        Rounded(3, second, Second - q, q - half);
        Straight(4);
        Rounded(5, second, Second - q, half - q);
        Straight(6);
        Bent(7, half, back: true);
        Straight(8);
        Rounded(9, first, q - First, half - q);
        Straight(10);
        Rounded(11, first, q - First, q - half);
        return new(
            new(first.Z, nodes.ToEquatableList(), uses.ToEquatableList(), arcs.ToEquatableList()),
            make.Line(nodes[1], nodes[8]), make.Line(nodes[2], nodes[7]));
    }

    /// <summary>The three faces of a skin.</summary>
    private (int First, int Second) Faces(SolidBuilder make, SkinEdges skin, Axes first, Axes second, Vector3 centre, double radius, bool isOuter)
    {
        var ring = skin.Ring.Edges;
        List<EdgeUse> one = [.. ring.Take(1), new(skin.FirstTangent, true), .. ring.Skip(8)];
        List<EdgeUse> bend = [ring[1], new(skin.SecondTangent, true), ring[7], new(skin.FirstTangent, false)];
        List<EdgeUse> two = [.. ring.Skip(2).Take(5), new(skin.SecondTangent, false)];
        foreach (var loop in isOuter ? (List<EdgeUse>[])[one, bend, two] : [])
        {
            loop.Reverse();
            for (var i = 0; i < loop.Count; i++)
                loop[i] = SolidBuilder.Back(loop[i]);
        }

        // Seen from inside the bend the material is behind the hollow: there the outward side looks at the axis.
        make.Face(new Cylinder(Axes.Along(centre, new(0, -1, 0), new(0, 0, -1)), radius), isOuter, bend);
        return (make.Face(new Plane(first), true, one), make.Face(new Plane(second), true, two));
    }
}
