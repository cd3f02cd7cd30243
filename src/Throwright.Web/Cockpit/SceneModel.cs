using Throwright.Engine.Chain;
using Throwright.Engine.Clearance;
using Throwright.Engine.Model;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Joint = Throwright.Shapes.Frames.Joint;
using Solid = Throwright.Shapes.Distance.Solid;

namespace Throwright.Web.Cockpit;

/// <summary>What the 3D view draws: made from the same bodies and joints that clearance was proved with. m, rad, aircraft axes.</summary>
public sealed record SceneModel(
    IReadOnlyList<SceneBody> Bodies, IReadOnlyList<SceneJoint> Joints, IReadOnlyList<SceneLine> Lines, IReadOnlyList<SceneLever> Levers, double[]? Eye, SceneGap? Gap)
{
    /// <summary>Limits that joints have together.</summary>
    public IReadOnlyList<SceneGate> Gates { get; init; } = [];

    /// <summary>A plane counts for 20 m each way; as much is drawn of it as lies near the rest.</summary>
    private const double Endless = 5;
    private const double PlaneHalf = 0.8;

    /// <param name="run">Whose nearest place is shown; null: the nearest of all.</param>
    public static SceneModel Of(Aircraft aircraft, CockpitAnswer cockpit, IReadOnlyList<RunAnswer> runs, string? run)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(cockpit);
        ArgumentNullException.ThrowIfNull(runs);
        var handles = cockpit.Handles.ToDictionary(h => h.Name);
        var bodies = cockpit.Clearance.Case.Bodies;
        // Two bodies share a joint when the joints are equal.
        var joints = bodies.SelectMany(b => b.Joints.Joints).Distinct().ToList();
        var near = bodies.SelectMany(b => b.Solid.Parts).Where(p => p.Shape.CoreReach < Endless).Select(p => p.Shape.Centre).ToList();
        var middle = near.Count == 0 ? default : (1.0 / near.Count) * near.Aggregate((a, b) => a + b);
        var pair = Nearest(cockpit, run);
        var free = joints.Where(j => j.Drive is null).ToList();
        double[] stands = [.. free.Select(j => pair is null ? Home(j) : pair.Found.Joints.ToList().IndexOf(j) is >= 0 and var i ? pair.Found.Positions[i] : Home(j))];
        var at = joints.Select(j => free.Contains(j.Free) ? JointChain.PositionOf(j, free, stands) : Home(j)).ToList();
        var levers = runs.Where(r => r.Run.LeverEnd?.Placed is not null && r.Sweep is not null).Select(r => LeverOf(r, handles.Values.FirstOrDefault(h => h.Run.Id == r.Run.Id), joints)).ToList();
        return new(
            [.. bodies.Select(b => BodyOf(b, handles.GetValueOrDefault(b.Name), joints, middle)), .. aircraft.Sheets.Where(s => s.Outline.Count > 2).Select(SheetOf)],
            [.. joints.Select((j, i) => new SceneJoint(j.Name, j.Kind == JointKind.Turn, Xyz(j.Through), Xyz(j.Axis), j.From, j.To, at[i], j.Drive is null ? -1 : joints.IndexOf(j.Free), j.Drive?.Ratio ?? 0, j.Drive?.Offset ?? 0))],
            [.. runs.Where(r => r.Route?.Counted is not null).Select(r => new SceneLine(r.Run.Id, ConduitName(r.Run), [.. r.Route!.Counted!.Shape.Nodes.SelectMany(n => Xyz(n.Point))]))],
            levers,
            aircraft.Pilot?.Eye is { } eye ? Xyz(At(eye)) : null,
            pair is null ? null : GapOf(pair))
        {
            Gates = [.. bodies.SelectMany(b => b.Joints.Gates).Distinct().Select(g => GateOf(g, joints))],
        };
    }

    /// <summary>Everything that can be picked: bodies and sheets, then each run's arm and conduit. Name, and the run it belongs to (may be empty).</summary>
    public static IReadOnlyList<ScenePick> PicksOf(Aircraft aircraft, CockpitAnswer cockpit)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(cockpit);
        var handles = cockpit.Handles.ToDictionary(h => h.Name, h => h.Run.Id);
        return
        [
            .. cockpit.Clearance.Case.Bodies.Select(b => new ScenePick(b.Name, handles.GetValueOrDefault(b.Name, ""))),
            .. aircraft.Sheets.Where(s => s.Outline.Count > 2).Select(s => new ScenePick(SheetName(s), "")),
            .. aircraft.Runs.Where(r => r.LeverEnd?.Placed is not null).Select(r => new ScenePick(ArmName(r), r.Id, EndPart.Lever)),
            .. aircraft.Runs.Where(r => r.Cable is { Supports.Count: > 0 } or { Ends: { Leaves: not null } or { Arrives: not null } }).Select(r => new ScenePick(ConduitName(r), r.Id, EndPart.Conduit)),
        ];
    }

    /// <summary>Every place that the file gives a name: for measuring from one to the other.</summary>
    public static IReadOnlyList<ScenePlace> PlacesOf(Aircraft aircraft)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        var places = new List<ScenePlace>();
        void Put(string name, PointAt? at)
        {
            if (at is { IsKnown: true })
                places.Add(new(name, Xyz(At(at))));
        }

        Put("pilot's eye", aircraft.Pilot?.Eye);
        foreach (var point in aircraft.Points)
            Put(point.Name, point.At);
        foreach (var run in aircraft.Runs)
        {
            Put($"hole of {NameOf(run)}", run.CockpitEnd?.Hole);
            Put($"arm's pivot of {NameOf(run)}", run.LeverEnd?.Placed?.Pivot);
            Put($"anchor of {NameOf(run)}", run.LeverEnd?.Placed?.Anchor);
        }

        foreach (var sheet in aircraft.Sheets)
        {
            foreach (var (corner, i) in sheet.Outline.Select((c, i) => (c, i)))
                Put($"{SheetName(sheet)}, corner {i + 1}", corner);
        }

        return [.. places.DistinctBy(p => p.Name)];
    }

    /// <summary>Straight from one to the other, m; null: one of them is not chosen.</summary>
    public static double? Between(ScenePlace? from, ScenePlace? to) =>
        from is null || to is null ? null : (new Vector3(to.At[0], to.At[1], to.At[2]) - new Vector3(from.At[0], from.At[1], from.At[2])).Size;

    private static SceneGate GateOf(JointGate gate, List<Joint> joints)
    {
        // A joint that follows another counts as that one.
        var most = gate.Most;
        var terms = new List<SceneTerm>();
        foreach (var term in gate.Terms)
        {
            most -= term.Factor * (term.Joint.Drive?.Offset ?? 0);
            terms.Add(new(joints.IndexOf(term.Joint.Free), term.Factor * (term.Joint.Drive?.Ratio ?? 1)));
        }

        return new(gate.Name, terms, most);
    }

    private static string NameOf(Run run) => run.Label.Length > 0 ? run.Label : run.Id;

    private static string ArmName(Run run) => $"{NameOf(run)} lever";

    private static string ConduitName(Run run) => $"{NameOf(run)} conduit";

    private static string SheetName(Sheet sheet) => sheet.Id.Replace('-', ' ');

    /// <summary>The pair that comes nearest, of one run's handle or of all.</summary>
    public static PairClearance? Nearest(CockpitAnswer cockpit, string? run)
    {
        ArgumentNullException.ThrowIfNull(cockpit);
        if (run is null)
            return cockpit.All.MinBy(p => (p.Lower, p.Upper));
        var name = cockpit.Handles.FirstOrDefault(h => h.Run.Id == run)?.Name;
        var pairs = cockpit.Clearance.Pairs.Where(p => p.First.Name == name || p.Second.Name == name).ToList();
        return pairs.Count == 0 ? null : pairs.MinBy(p => (p.Lower, p.Upper));
    }

    /// <summary>Distance of a handle from what is nearest to it with all joints as they stand: found, not proved.</summary>
    public static SceneGap? GapAt(CockpitAnswer cockpit, string? run, IReadOnlyDictionary<string, double> positions)
    {
        ArgumentNullException.ThrowIfNull(cockpit);
        ArgumentNullException.ThrowIfNull(positions);
        if (Nearest(cockpit, run) is not { } worst)
            return null;
        var name = run is null ? worst.First.Name : cockpit.Handles.First(h => h.Run.Id == run).Name;
        SceneGap? nearest = null;
        foreach (var pair in cockpit.All.Where(p => p.First.Name == name || p.Second.Name == name))
        {
            double Position(Joint j) => Math.Clamp(positions.TryGetValue(j.Name, out var q) ? q : Home(j), j.From, j.To);
            MovingSolid Moving(CockpitBody b) => new(b.Solid, b.Joints, b.Home);
            var found = LeastDistance.At(Moving(pair.First), Moving(pair.Second), [.. pair.Found.Joints.Select(Position)], 1e-5);
            if (nearest is null || found.Upper < nearest.Distance)
                nearest = new(pair.First.Name, pair.Second.Name, Xyz(found.OnFirst), Xyz(found.OnSecond), found.Upper, found.Ended == SearchEnd.Hits);
        }

        return nearest;
    }

    private static SceneGap GapOf(PairClearance pair) =>
        new(pair.First.Name, pair.Second.Name, Xyz(pair.Found.OnFirst), Xyz(pair.Found.OnSecond), pair.Upper, pair.Hits);

    private static double Home(Joint joint) => Math.Clamp(0, joint.From, joint.To);

    private static SceneBody BodyOf(CockpitBody body, HandleMount? handle, List<Joint> joints, Vector3 middle) => new(
        body.Name,
        handle is not null ? "handle" : body.Joints.Joints.Count > 0 ? "mover" : "fixed",
        handle?.Run.Id ?? "",
        handle?.Run.CockpitEnd?.KnobColour ?? "",
        [.. body.Joints.Joints.Select(j => joints.IndexOf(j))],
        [.. Xyz(body.Home.Turn.X), .. Xyz(body.Home.Turn.Y), .. Xyz(body.Home.Turn.Z), .. Xyz(body.Home.At)],
        [.. PartsOf(body.Solid, middle)]);

    private static IEnumerable<ScenePart> PartsOf(Solid solid, Vector3 middle)
    {
        if (solid.IsMesh)
        {
            var (corners, triangles) = solid.Mesh;
            yield return new(solid.PartNames[0], Whole(corners), [], triangles);
            yield break;
        }

        foreach (var part in solid.Parts)
        {
            var mesh = ShapeMesh.Of(part.Shape is Box { CoreReach: > Endless } plane ? Near(plane, middle) : part.Shape);
            yield return new(part.Name, Whole(mesh.Points), [.. mesh.Normals.SelectMany(n => Xyz(n)).Select(v => (int)Math.Round(v * 100))], mesh.Triangles);
        }
    }

    /// <summary>The part of an endless plane that lies near the rest, thin.</summary>
    private static Box Near(Box plane, Vector3 middle)
    {
        var (x, y, z) = plane.Halves;
        var up = z.Unit();
        var face = plane.Centre + z;
        var under = middle - (Vector3.Dot(middle - face, up) * up);
        const double thin = 0.004;
        return new(under - (thin * up), new(x.Unit(), y.Unit(), up), new(PlaneHalf, PlaneHalf, thin));
    }

    private static SceneBody SheetOf(Sheet sheet)
    {
        var corners = sheet.Outline.Select(At).ToList();
        var normal = new Vector3(sheet.Normal.Aft, sheet.Normal.Right, sheet.Normal.Up).Unit();
        var back = (sheet.Thickness?.Nominal.Metres ?? 0.0016) * normal;
        List<Vector3> all = [.. corners, .. corners.Select(c => c - back)];
        var n = corners.Count;
        var triangles = new List<int>();
        for (var i = 1; i + 1 < n; i++)
            triangles.AddRange([0, i, i + 1, n, n + i + 1, n + i]);
        for (var i = 0; i < n; i++)
            triangles.AddRange([i, n + i, (i + 1) % n, (i + 1) % n, n + i, n + ((i + 1) % n)]);
        return new(SheetName(sheet), "sheet", "", "", [], [1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0], [new(sheet.Id, Whole(all), [], triangles)]);
    }

    private static SceneLever LeverOf(RunAnswer run, HandleMount? handle, List<Joint> joints)
    {
        var placed = run.Run.LeverEnd!.Placed!;
        var axis = Direction(placed.Axis).Unit();
        var zero = Direction(placed.Zero);
        zero = (zero - (Vector3.Dot(zero, axis) * axis)).Unit();
        var pull = handle is null ? -1 : joints.IndexOf(handle.Body.Joints.Joints.First(j => j.Kind == JointKind.Slide));
        var curve = run.Curve?.Points.OrderBy(p => p.KnobPulling).ToList() ?? [];
        return new(
            run.Run.Id, ArmName(run.Run), Xyz(At(placed.Pivot) + (placed.AlongAxis.Nominal.Metres * axis)), Xyz(axis), Xyz(zero), run.Sweep!.Case.Radius, Xyz(At(placed.Anchor)), run.Sweep.PushAngle, pull,
            [.. curve.Select(p => p.KnobPulling)], [.. curve.Select(p => p.ArmAngle)]);
    }

    /// <summary>Tenths of a millimetre as whole numbers: short to send, finer than any screen.</summary>
    private static int[] Whole(IEnumerable<Vector3> points) => [.. points.SelectMany(p => Xyz(p)).Select(v => (int)Math.Round(v * 1e4))];

    private static Vector3 At(PointAt p) => new(p.Station.Nominal.Metres, p.Buttline.Nominal.Metres, p.Waterline.Nominal.Metres);

    private static Vector3 Direction(DirectionAt d) => new(d.Aft, d.Right, d.Up);

    private static double[] Xyz(Vector3 v) => [v.X, v.Y, v.Z];
}

/// <param name="Kind">handle, mover, fixed or sheet.</param>
/// <param name="Home">aircraftFromBody with all joints at zero: three axes and the place.</param>
public sealed record SceneBody(string Name, string Kind, string Run, string Colour, IReadOnlyList<int> Joints, IReadOnlyList<double> Home, IReadOnlyList<ScenePart> Parts);

/// <param name="Points">x, y, z of each corner in tenths of a millimetre.</param>
/// <param name="Normals">In hundredths; empty: flat.</param>
public sealed record ScenePart(string Name, IReadOnlyList<int> Points, IReadOnlyList<int> Normals, IReadOnlyList<int> Triangles);

/// <param name="At">Where it stands when the nearest place is shown.</param>
/// <param name="Leader">Joint that takes it along: it stands at offset + ratio times that one; -1: none.</param>
public sealed record SceneJoint(string Name, bool IsTurn, double[] Through, double[] Axis, double From, double To, double At, int Leader, double Ratio, double Offset);

/// <summary>A conduit's centre line.</summary>
public sealed record SceneLine(string Run, string Name, IReadOnlyList<double> Points);

/// <summary>A lever end: its arm turns as the knob is pulled.</summary>
/// <param name="Joint">The joint that pulls it; -1: none.</param>
/// <param name="Knob">Knob places, m, and the arm angle at each, rad.</param>
public sealed record SceneLever(
    string Run, string Name, double[] Pivot, double[] Axis, double[] Zero, double Radius, double[] Anchor, double Rest, int Joint, IReadOnlyList<double> Knob, IReadOnlyList<double> Angle);

/// <summary>The nearest two points.</summary>
public sealed record SceneGap(string First, string Second, double[] OnFirst, double[] OnSecond, double Distance, bool Hits);

/// <summary>Positions that joints can't take together: the sum of factor times position is at most Most.</summary>
public sealed record SceneGate(string Name, IReadOnlyList<SceneTerm> Terms, double Most);

/// <param name="Joint">Index of a free joint; -1: one that the picture has not.</param>
public sealed record SceneTerm(int Joint, double Factor);

/// <summary>Something that can be picked.</summary>
/// <param name="Run">Id of the run it belongs to; empty: none.</param>
/// <param name="End">Of a run's far end; null: a body or a sheet.</param>
public sealed record ScenePick(string Name, string Run, EndPart? End = null);

/// <summary>A place with a name. m, aircraft axes.</summary>
public sealed record ScenePlace(string Name, double[] At);
