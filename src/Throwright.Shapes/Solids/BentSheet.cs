using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Solids;

/// <summary>A hole through a leg, square to it.</summary>
/// <param name="Leg">Number of the leg, the first is 0.</param>
/// <param name="FromBend">Centre from the leg's bend tangent line, of a leg between two bends from that of the earlier, m.</param>
/// <param name="Across">Centre from the middle of the width, m.</param>
/// <param name="Outline">About the centre; x along the leg away from the bend.</param>
public sealed record LegHole(int Leg, double FromBend, double Across, Profile Outline);

/// <summary>A bend across the whole width.</summary>
/// <param name="Angle">Bent through, up to 150 deg, rad.</param>
/// <param name="Radius">Inside.</param>
/// <param name="IsBack">To the other side than the first.</param>
public sealed record SheetBend(double Angle, double Radius, bool IsBack = false);

/// <summary>A strip of sheet with bends across its whole width and rounded corners. Lengths m, angle rad.</summary>
/// <remarks>
/// x along the first leg towards the first bend, y across, z towards the inside of that bend. Origin: outer skin, middle of
/// the width, first bend tangent line. The first leg lies at x below 0.
/// </remarks>
/// <param name="Legs">Lengths from bend tangent line to end, or to the next tangent line: one more than bends.</param>
/// <param name="Corner">Radius of the four corners.</param>
public sealed record BentSheet(EquatableList<double> Legs, EquatableList<SheetBend> Bends, double Width, double Thickness, double Corner, EquatableList<LegHole> Holes)
{
    public string? Fault
    {
        get
        {
            if (Bends.Count == 0 || Legs.Count != Bends.Count + 1)
                return "there is one leg more than bends";
            if (!(Thickness > 0) || Bends.Any(b => !(b.Radius > 0 && b.Angle > 0 && b.Angle <= 150 * Math.PI / 180)))
                return "thickness and bend radius are above zero, the bend up to 150 deg";
            if (!(Corner > 0 && 2 * Corner < Width && Corner < Legs[0] && Corner < Legs[^1]))
                return "the corners are rounded and fit the legs";
            if (Legs.Any(l => !(l > 0)))
                return "each leg is longer than its bends take";
            if (!(LeastGap > 0))
                return "two legs meet";
            return LeastWall > 0 ? null : "a hole meets an edge, a bend or another hole";
        }
    }

    /// <summary>Least material between a hole and its leg's edges, a bend tangent line, or another hole.</summary>
    public double LeastWall => Enumerable.Range(0, Legs.Count).Min(i => Leg(i).LeastWall);

    /// <summary>Closed form: the legs, and for each bend the sector of a ring over the width.</summary>
    public double Volume => Enumerable.Range(0, Legs.Count).Sum(i => Leg(i).Volume)
        + Bends.Sum(b => 0.5 * b.Angle * Width * (((b.Radius + Thickness) * (b.Radius + Thickness)) - (b.Radius * b.Radius)));

    public int ThroughHoles => Holes.Count;

    /// <summary>Room between legs that are not neighbours, in the side view; infinity with one bend.</summary>
    private double LeastGap
    {
        get
        {
            var middle = LegAxes().Select((a, i) => (From: a.Point(0, 0, 0.5 * Thickness), To: a.Point(i == 0 ? -Legs[0] : Legs[i], 0, 0.5 * Thickness))).ToList();
            var least = double.PositiveInfinity;
            for (var i = 0; i < middle.Count; i++)
            {
                for (var j = i + 2; j < middle.Count; j++)
                    least = Math.Min(least, Apart(middle[i], middle[j]) - Thickness);
            }

            return least;
        }
    }

    /// <summary>A leg as a flat plate: x away from its (earlier) bend, its tangent line at x = 0.</summary>
    public DrilledPlate Leg(int number)
    {
        var (length, half) = (Legs[number], 0.5 * Width);
        var isEnd = number == 0 || number == Legs.Count - 1;
        var outline = isEnd
            ? Profile.Close([
                new(new(0, -half), new(length - Corner, -half)),
                Profile.Arc(new(length - Corner, Corner - half), Corner, -Math.PI / 2, Math.PI / 2),
                Profile.Arc(new(length - Corner, half - Corner), Corner, 0, Math.PI / 2),
                new(new(length - Corner, half), new(0, half))])
            : Profile.Rectangle(new(0.5 * length, 0), length, Width);
        var holes = Holes.Where(h => h.Leg == number).Select(h => new ThroughHole(new(h.FromBend, number == 0 ? -h.Across : h.Across), new(0, 0, 1), h.Outline));
        return new(outline, Thickness, holes.ToEquatableList());
    }

    /// <summary>Axes of each leg on the outer skin of the first bend, at the leg's (earlier) tangent line: x along the strip, y across, z through the sheet.</summary>
    public IReadOnlyList<Axes> LegAxes()
    {
        List<Axes> legs = [Axes.World];
        for (var i = 0; i < Bends.Count; i++)
            legs.Add(Turned(AtEnd(legs[i], i), Bends[i]));
        return legs;
    }

    public Solid Build()
    {
        if (Fault is { } fault)
            throw new InvalidOperationException($"The bracket can't be made: {fault}.");
        var make = new SolidBuilder();
        var legs = LegAxes();
        List<Axes> above = [.. legs.Select(a => a.At(a.Point(0, 0, Thickness)))];
        List<Vector3> centres = [.. Bends.Select((b, i) => CentreOf(AtEnd(legs[i], i), b))];
        var outer = Skin(make, legs, centres);
        var inner = Skin(make, above, centres);
        make.Connect(outer.Ring, inner.Ring);
        var outerFaces = Faces(make, outer, legs, centres, isInner: false);
        var innerFaces = Faces(make, inner, above, centres, isInner: true);
        foreach (var hole in Holes)
        {
            var leg = legs[hole.Leg];
            var axes = leg.At(leg.Point(hole.Leg == 0 ? -hole.FromBend : hole.FromBend, hole.Across));
            // The outline's x points away from the bend; half a turn keeps the axes right-handed.
            if (hole.Leg == 0)
                axes = new(axes.Origin, -axes.X, -axes.Y, axes.Z);
            Ring low = make.Ring(axes, hole.Outline, axes), high = make.Ring(axes, hole.Outline, axes.At(axes.Point(0, 0, Thickness)));
            make.Connect(low, high, inward: true);
            make.Hole(outerFaces[hole.Leg], low);
            make.Hole(innerFaces[hole.Leg], high);
        }

        return make.Build();
    }

    /// <summary>The leg's axes moved to where its later bend begins.</summary>
    private Axes AtEnd(Axes leg, int number) => number == 0 ? leg : leg.At(leg.Point(Legs[number], 0));

    /// <summary>Middle of a bend that begins at these axes: above the sheet, or below it where it bends back.</summary>
    private Vector3 CentreOf(Axes at, SheetBend bend) => at.Point(0, 0, bend.IsBack ? -bend.Radius : Thickness + bend.Radius);

    private Axes Turned(Axes at, SheetBend bend)
    {
        double cos = Elementary.Cos(bend.Angle), sin = Elementary.Sin(bend.Angle) * (bend.IsBack ? -1 : 1);
        Vector3 x = (cos * at.X) + (sin * at.Z), z = (cos * at.Z) - (sin * at.X);
        return new(CentreOf(at, bend) + ((bend.IsBack ? bend.Radius : -bend.Radius - Thickness) * z), x, at.Y, z);
    }

    private sealed record SkinEdges(Ring Ring, int[] Tangents);

    /// <summary>
    /// The edge of one skin, anticlockwise seen from inside the first bend: along one side, round the far end, back along the other
    /// side, round the near end; and the bends' tangent lines across it.
    /// </summary>
    private SkinEdges Skin(SolidBuilder make, IReadOnlyList<Axes> legs, IReadOnlyList<Vector3> centres)
    {
        double half = 0.5 * Width, q = Corner, far = Legs[^1];
        Axes first = legs[0], last = legs[^1];
        // Tangent lines in order: where each bend begins and where it ends.
        List<(Axes Leg, double X)> tangents = [.. Bends.SelectMany((_, i) => ((Axes, double)[])[(legs[i], i == 0 ? 0 : Legs[i]), (legs[i + 1], 0)])];
        var n = tangents.Count;
        List<Vector3> places =
        [
            first.Point(q - Legs[0], -half), .. tangents.Select(t => t.Leg.Point(t.X, -half)),
            last.Point(far - q, -half), last.Point(far, q - half), last.Point(far, half - q), last.Point(far - q, half),
            .. tangents.AsEnumerable().Reverse().Select(t => t.Leg.Point(t.X, half)),
            first.Point(q - Legs[0], half), first.Point(-Legs[0], half - q), first.Point(-Legs[0], q - half),
        ];
        var nodes = places.Select(make.Vertex).ToArray();
        var uses = new List<EdgeUse>();
        var arcs = new List<RingArc?>();
        int Next() => (uses.Count + 1) % nodes.Length;

        void Straight()
        {
            uses.Add(new(make.Line(nodes[uses.Count], nodes[Next()]), true));
            arcs.Add(null);
        }

        // The first bend's axis is -y: it turns x towards z.
        void Bent(int bend, double y, bool back)
        {
            var at = new Vector3(centres[bend].X, y, centres[bend].Z);
            var axis = new Vector3(0, Bends[bend].IsBack ? 1 : -1, 0);
            var radius = (places[uses.Count] - at).Size;
            uses.Add(make.Arc(nodes[uses.Count], nodes[Next()], at, axis, back ? -Bends[bend].Angle : Bends[bend].Angle));
            arcs.Add(new(at, axis, radius, !back));
        }

        void Rounded(Axes leg, double x, double y)
        {
            var at = leg.Point(x, y);
            uses.Add(make.Arc(nodes[uses.Count], nodes[Next()], at, leg.Z, Math.PI / 2));
            arcs.Add(new(at, leg.Z, q, true));
        }

        for (var i = 0; i < Bends.Count; i++)
        {
            Straight();
            Bent(i, -half, back: false);
        }

        Straight();
        Rounded(last, far - q, q - half);
        Straight();
        Rounded(last, far - q, half - q);
        for (var i = Bends.Count - 1; i >= 0; i--)
        {
            Straight();
            Bent(i, half, back: true);
        }

        Straight();
        Rounded(first, q - Legs[0], half - q);
        Straight();
        Rounded(first, q - Legs[0], q - half);
        return new(
            new(first.Z, nodes.ToEquatableList(), uses.ToEquatableList(), arcs.ToEquatableList()),
            [.. Enumerable.Range(0, n).Select(i => make.Line(nodes[1 + i], nodes[(2 * n) + 4 - i]))]);
    }

    /// <summary>The faces of a skin, leg, bend, leg ...; those of the legs.</summary>
    private List<int> Faces(SolidBuilder make, SkinEdges skin, IReadOnlyList<Axes> legs, IReadOnlyList<Vector3> centres, bool isInner)
    {
        var ring = skin.Ring.Edges;
        var n = skin.Tangents.Length;
        // Edge i runs from node i: 0 to n along one side, then three at the far end, back along the other side, three at the near end.
        int Facing(int side) => (2 * n) + 4 - side;
        var faces = new List<int>();
        for (var i = 0; i < legs.Count; i++)
        {
            // A leg lies between tangent lines 2 i - 1 and 2 i; at the ends the ring closes it.
            var side = 2 * i;
            var loop = new List<EdgeUse> { ring[side] };
            if (i == legs.Count - 1)
                loop.AddRange(ring.Skip(side + 1).Take(4));
            else
                loop.AddRange([new(skin.Tangents[2 * i], true), ring[Facing(side)]]);
            if (i == 0)
                loop.AddRange(ring.Skip(Facing(side) + 1));
            else
                loop.Add(new(skin.Tangents[(2 * i) - 1], false));
            faces.Add(make.Face(new Plane(isInner ? legs[i] : legs[i].Flipped()), true, isInner ? loop : Backwards(loop)));
        }

        for (var i = 0; i < Bends.Count; i++)
        {
            var side = (2 * i) + 1;
            List<EdgeUse> loop = [ring[side], new(skin.Tangents[(2 * i) + 1], true), ring[Facing(side)], new(skin.Tangents[2 * i], false)];
            var axis = new Vector3(0, Bends[i].IsBack ? 1 : -1, 0);
            var isOutside = isInner == Bends[i].IsBack;
            // Inside a bend the material is behind the hollow: there the outward side looks at the axis.
            make.Face(
                new Cylinder(Axes.Along(centres[i], axis, Bends[i].IsBack ? legs[i].Z : -legs[i].Z), Bends[i].Radius + (isOutside ? Thickness : 0)), isOutside, isInner ? loop : Backwards(loop));
        }

        return faces;

        static List<EdgeUse> Backwards(IEnumerable<EdgeUse> loop) => [.. loop.Reverse().Select(SolidBuilder.Back)];
    }

    /// <summary>Least distance of two straight pieces of the side view.</summary>
    private static double Apart((Vector3 From, Vector3 To) a, (Vector3 From, Vector3 To) b)
    {
        static double Side(Vector3 from, Vector3 to, Vector3 p) => Vector3.Cross(to - from, p - from).Y;
        static double To(Vector3 p, (Vector3 From, Vector3 To) s)
        {
            var along = s.To - s.From;
            var share = Math.Clamp(Vector3.Dot(p - s.From, along) / Vector3.Dot(along, along), 0, 1);
            return (p - s.From - (share * along)).Size;
        }

        if (Side(a.From, a.To, b.From) * Side(a.From, a.To, b.To) < 0 && Side(b.From, b.To, a.From) * Side(b.From, b.To, a.To) < 0)
            return 0;
        return Math.Min(Math.Min(To(a.From, b), To(a.To, b)), Math.Min(To(b.From, a), To(b.To, a)));
    }
}
