using Throwright.Engine.Findings;
using Throwright.Engine.Clearance;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;
using Joint = Throwright.Shapes.Frames.Joint;
using Solid = Throwright.Shapes.Distance.Solid;

namespace Throwright.Engine.Chain;

/// <summary>How hard clearance is looked for.</summary>
public sealed record CockpitEffort
{
    /// <summary>Wanted width of each answer, m.</summary>
    public double Tolerance { get; init; } = 1e-4;

    /// <summary>Budget of each pair, counted, so that the answer is the same on every machine.</summary>
    public long MostBoxes { get; init; } = 500_000;

    /// <summary>Pairs worked at once; the answer does not depend on it.</summary>
    public int Threads { get; init; } = 1;

    /// <summary>The triangles of a mesh as its file has them; null: it was not read.</summary>
    public Func<MeshShape, Skin?>? Meshes { get; init; }

    /// <summary>Look for a cure where a handle is fouled; it takes far longer than the check itself.</summary>
    public bool Cures { get; init; } = true;

    /// <summary>Arms and conduits of the runs, worked out already; null: whoever needs them works them out.</summary>
    internal Func<IEnumerable<DeviceEnd>>? Ends { get; init; }

    /// <summary>Called with pairs done and pairs in all; from any thread.</summary>
    public Action<int, int>? Progress { get; init; }

    /// <summary>Stops the search: what is proved so far is told, and is never clear by that.</summary>
    public CancellationToken Cancel { get; init; }
}

/// <summary>The cockpit of an aircraft as clearance sees it.</summary>
/// <param name="Bodies">Everything that is no handle, as the file describes it.</param>
/// <param name="Meshes">How each mesh was placed.</param>
/// <param name="NotRead">What could not be made a body, and why.</param>
internal sealed record CockpitScene(
    EquatableList<HandleMount> Handles, EquatableList<CockpitBody> Bodies, EquatableList<AllowedContact> Allowed, EquatableList<PlacedMesh> Meshes, EquatableList<LeftOut> NotRead)
{
    /// <summary>Sheets that have an outline; one without is counted only for the handles in it.</summary>
    public EquatableList<(Sheet Of, CockpitBody Body)> Sheets { get; init; } = [];

    /// <summary>Names of yokes: their shafts go through the sheet before them.</summary>
    public EquatableList<string> Yokes { get; init; } = [];

    /// <summary>Names of the pilot's limbs: they give way to a control.</summary>
    public EquatableList<string> Limbs { get; init; } = [];

    /// <summary>Which body of the file each was made of: the two pedals of one.</summary>
    public IReadOnlyDictionary<string, string> Kin { get; init; } = new Dictionary<string, string>();

    /// <summary>What the file lets touch a sheet.</summary>
    public EquatableList<AllowedContact> SheetContacts { get; init; } = [];

    /// <summary>Is there anything to look at?</summary>
    public static bool IsAskedFor(Aircraft aircraft) => aircraft.Bodies.Count > 0 || aircraft.Sheets.Count > 0;

    public static CockpitScene Of(Aircraft aircraft, CockpitEffort effort)
    {
        var handles = new List<HandleMount>();
        foreach (var run in aircraft.Runs)
        {
            if (HandleMount.Of(run, NameOf(aircraft, run), []) is { } handle)
                handles.Add(handle);
        }

        var notRead = new List<LeftOut>();
        // A body hung on a taped point whose readings give no place has no place either.
        foreach (var body in aircraft.Bodies.Where(b => !PlacesOf(b).All(p => p.IsKnown)))
            notRead.Add(new(NameOf(body), "a point it hangs on has no place yet, so nothing is proved about it"));
        var meshes = new List<PlacedMesh>();
        var made = aircraft.Bodies.Where(b => PlacesOf(b).All(p => p.IsKnown)).Select(body => (Body: body, Made: Make(aircraft, body, effort, meshes, notRead).ToList())).ToList();
        EquatableList<(Sheet Of, CockpitBody Body)> sheets = aircraft.Sheets.Where(s => s.Outline.Count > 2 && s.At.IsKnown && s.Outline.All(p => p.IsKnown))
            .Select(s => (s, SheetBody(s.Id.Replace('-', ' '), s, s.Outline.Select(At), Unsure([s.At, .. s.Outline])))).ToEquatableList();
        return new(
            handles.ToEquatableList(),
            made.SelectMany(m => m.Made).ToEquatableList(),
            made.SelectMany(m => m.Body.Touches.Where(t => SheetOf(t) is null).SelectMany(t => Contacts(m.Made, t, handles.FirstOrDefault(h => h.Run.Id == t.With) is { } handle
                ? [handle.Body]
                : made.FirstOrDefault(o => o.Body.Id == t.With).Made ?? []))).ToEquatableList(),
            meshes.ToEquatableList(),
            notRead.ToEquatableList())
        {
            Yokes = NamesOf(b => b is Yoke),
            Limbs = NamesOf(b => b is SeatedLeg),
            Kin = made.SelectMany(m => m.Made.Select(b => (b.Name, m.Body.Id))).ToDictionary(b => b.Name, b => b.Id),
            Sheets = sheets,
            SheetContacts = made.SelectMany(m => m.Body.Touches.SelectMany(t => SheetOf(t) is { } sheet ? Contacts(m.Made, t, [sheet]) : [])).ToEquatableList(),
        };

        CockpitBody? SheetOf(Touch touch) => sheets.FirstOrDefault(s => s.Of.Id == touch.With && touch.WithPart == Sheet.PartName).Body;
        EquatableList<string> NamesOf(Func<ReadyMade?, bool> kind) => made.Where(m => kind(m.Body.ReadyMade)).SelectMany(m => m.Made).Select(b => b.Name).ToEquatableList();

        static IEnumerable<AllowedContact> Contacts(List<CockpitBody> own, Touch touch, IEnumerable<CockpitBody> others) =>
            from a in own
            where a.Solid.PartNames.Contains(touch.Part)
            from b in others
            where b.Solid.PartNames.Contains(touch.WithPart)
            select new AllowedContact(a.Name, touch.Part, b.Name, touch.WithPart, touch.Why);
    }

    /// <summary>The sheet under a handle, as wide as anything of the handle reaches.</summary>
    public CockpitBody OwnSheet(HandleMount handle)
    {
        // Where the outline is not measured, or ends beside the handle, there may be sheet all the same.
        const double Wide = 0.5;
        var frame = handle.Frame;
        var face = frame.Foot + (0.5 * handle.Sheet * frame.Normal);
        var sheet = handle.Run.CockpitEnd!.Sheet!;
        var name = sheet.Id.Replace('-', ' ');
        if (sheet.Curve is { } curve)
            return new(name, Solid.Of(Curved(curve, face, frame.Normal, sheet.Thickness?.Most ?? Published.Get("clearance/sheet-thickness").Value, Wide)));
        return SheetBody(
            name,
            sheet,
            [face + (Wide * (frame.Up + frame.Right)), face + (Wide * (frame.Up - frame.Right)), face - (Wide * (frame.Up + frame.Right)), face + (Wide * (frame.Right - frame.Up))],
            0);
    }

    /// <summary>A curved sheet in strips along its straight lines, none of them ever farther from the hand than the sheet.</summary>
    private static IEnumerable<Part> Curved(SheetCurve curve, Vector3 face, Vector3 normal, double thickness, double wide)
    {
        // A flat strip leaves the arc by no more than this.
        const double Sag = 5e-5;
        var straight = HandleMount.Vector(curve.Straight);
        straight = (straight - (Vector3.Dot(straight, normal) * normal)).Unit();
        var across = Vector3.Cross(normal, straight);
        var isToward = curve.Bulges == SheetBulge.Toward;
        // Bulging away it comes nearer the tighter it is bent, bulging toward the less.
        var radius = isToward ? curve.Radius.Most : curve.Radius.Least;
        var reach = Math.Min(wide / radius, 0.5 * Math.PI);
        var strips = (int)Math.Ceiling(reach / Math.Sqrt(2 * Sag / radius));
        var half = reach / strips;
        // Toward: corners outside the arc, so that the flats touch it. Away: on it, the flats before it.
        var corners = isToward ? radius / Math.Cos(half) : radius;
        var middle = face + ((isToward ? -radius : radius) * normal);
        Vector3 On(int i)
        {
            var angle = -reach + (2 * half * i);
            return middle + (corners * ((Math.Sin(angle) * across) + ((isToward ? 1 : -1) * Math.Cos(angle) * normal)));
        }

        for (var i = 0; i < strips; i++)
        {
            Vector3[] edge = [On(i) + (wide * straight), On(i) - (wide * straight), On(i + 1) - (wide * straight), On(i + 1) + (wide * straight)];
            yield return new("sheet", new Hull(edge.Concat(edge.Select(c => c - (thickness * normal))), 0));
        }
    }

    private static CockpitBody SheetBody(string name, Sheet sheet, IEnumerable<Vector3> corners, double unsure)
    {
        var normal = HandleMount.Vector(sheet.Normal).Unit();
        var at = At(sheet.At);
        // A slab that holds the whole curve: before and behind the plane, since the point may lie anywhere on it.
        var rise = RiseOf(sheet);
        return DeviceBodies.Sheet(
            name, [.. corners.Select(c => c - ((Vector3.Dot(c - at, normal) - rise) * normal))], normal, (sheet.Thickness?.Most ?? Published.Get("clearance/sheet-thickness").Value) + (2 * rise), unsure);
    }

    /// <summary>Most that a curved sheet with an outline leaves the plane of its point by, m; 0: flat, or no outline.</summary>
    internal static double RiseOf(Sheet sheet)
    {
        if (sheet.Curve is not { } curve || sheet.Outline.Count < 3)
            return 0;
        var normal = HandleMount.Vector(sheet.Normal).Unit();
        var across = Vector3.Cross(normal, HandleMount.Vector(curve.Straight)).Unit();
        var along = sheet.Outline.Append(sheet.At).Select(p => Vector3.Dot(At(p), across)).ToList();
        // Normal and plane touch it somewhere within this width: no point of it is farther off than the rise over the whole.
        var (radius, width) = (curve.Radius.Least, along.Max() - along.Min());
        return width < radius ? Engine.Make.CurvedSheet.Gap(radius, width) : width;
    }

    /// <summary>Everything against the handles asked about.</summary>
    public CockpitCase Case(CockpitEffort effort, IEnumerable<CockpitBody> watched, IEnumerable<CockpitBody> others) => new(
        [.. watched, .. others],
        Allowed,
        // Wanted clearances are always settled.
        Math.Max(Published.Get("clearance/interest").Value, 1.01 * Handles.Max(h => (double?)CockpitCheck.WishOf(h.Run).Least.Value) ?? 0),
        effort.Tolerance,
        effort.MostBoxes)
    {
        Watched = watched.Select(w => w.Name).ToEquatableList(),
    };

    /// <summary>Every point that the body is described by.</summary>
    private static IEnumerable<PointAt> PlacesOf(Body body) => body.Joints.OfType<TurnJoint>().Select(j => j.About)
        .Concat(body.Parts.SelectMany(p => p.Shape switch
        {
            SphereShape s => [s.Centre],
            CapsuleShape c => [c.From, c.To],
            ConeShape c => [c.From, c.To],
            BoxShape b => [b.Centre],
            PlaneShape s => [s.At],
            MeshShape m => m.Matched.Select(x => x.Aircraft).Concat(m.At is { } at ? [at] : []),
            _ => (IEnumerable<PointAt>)[],
        }))
        .Concat(body.ReadyMade switch
        {
            Stick s => [s.Pivot],
            Yoke y => [y.Hub],
            Pedals p => [p.Left, p.Right],
            SeatedLeg l => [l.Hip, l.Heel],
            TubeFrame f => f.Line,
            _ => (IEnumerable<PointAt>)[],
        });

    /// <summary>As engraved, unless two runs or a body are called so.</summary>
    internal static string NameOf(Aircraft aircraft, Run run) =>
        run.Label.Length > 0 && aircraft.Runs.Count(r => r.Label == run.Label) == 1 && aircraft.Bodies.All(b => NameOf(b) != run.Label) ? run.Label : run.Id;

    private static string NameOf(Body body) => body.Id.Replace('-', ' ');

    private static IEnumerable<CockpitBody> Make(Aircraft aircraft, Body body, CockpitEffort effort, List<PlacedMesh> meshes, List<LeftOut> notRead)
    {
        var name = NameOf(body);
        if (body.ReadyMade is { } ready and not TubeFrame)
        {
            foreach (var (made, unsure) in ReadyMade(aircraft, name, ready, notRead))
                yield return made with { Solid = made.Solid.Padded(body.Allow.Metres + unsure), Joints = Gated(made.Joints, name, body) };
            yield break;
        }

        var joints = Gated(ChainOf(name, body.Joints), name, body);
        // An axis off by u throws what turns about it by q off by 2 u sin(q/2): nothing at rest, u at 60 deg, 2 u at half a turn.
        var sway = body.Joints.OfType<TurnJoint>().Sum(j => 2 * HandleMount.Unsureness(j.About) * Math.Sin(0.5 * Math.Min(Math.PI, Math.Max(Math.Abs(j.From.Radians), Math.Abs(j.To.Radians)))));
        if (body.ReadyMade is TubeFrame frame)
        {
            var tubes = frame.Line.Zip(frame.Line.Skip(1)).Select((ends, i) =>
                new Part(frame.PartNames[i], new Capsule(At(ends.First), At(ends.Second), (0.5 * frame.Diameter.Most) + Unsure(ends.First, ends.Second))));
            yield return new(name, Solid.Of(tubes).Padded(body.Allow.Metres + sway), joints);
            yield break;
        }

        var convex = body.Parts.Where(p => p.Shape is not MeshShape).Select(p => new Part(p.Name, ConvexOf(p.Shape))).ToList();
        if (convex.Count > 0)
            yield return new(name, Solid.Of(convex).Padded(body.Allow.Metres + sway), joints);
        foreach (var part in body.Parts)
        {
            if (part.Shape is not MeshShape mesh)
                continue;
            var called = convex.Count == 0 && body.Parts.Count == 1 ? name : $"{name} {part.Name}";
            if (effort.Meshes?.Invoke(mesh) is not { } skin)
            {
                notRead.Add(new(name, $"the mesh {mesh.File} is not read, so nothing is proved about it"));
            }
            else if (PlacedMesh.Of(called, mesh, skin) is not { } placed)
            {
                notRead.Add(new(name, $"the matched points of the mesh {mesh.File} lie in one line, so its place is not fixed and nothing is proved about it"));
            }
            else
            {
                meshes.Add(placed);
                yield return new(called, placed.Solid(part.Name, body.Allow.Metres + sway), joints);
            }
        }
    }

    private static IEnumerable<(CockpitBody Body, double Unsure)> ReadyMade(Aircraft aircraft, string name, ReadyMade ready, List<LeftOut> notRead)
    {
        static double Half(Toleranced<Length> diameter) => 0.5 * diameter.Most;
        switch (ready)
        {
            case Stick s:
                var grip = s.Grip.Nominal.Metres;
                yield return (
                    CockpitBodies.Stick(name, At(s.Pivot), s.Length.Most, grip, Half(s.ShaftDiameter), Half(s.GripDiameter), (s.Forward.Radians, s.Aft.Radians), (s.Left.Radians, s.Right.Radians)),
                    Unsure(s.Pivot) + s.Grip.Plus);
                break;
            case Yoke y:
                yield return (
                    CockpitBodies.Yoke(name, At(y.Hub), y.ShaftLength.Most, Half(y.ShaftDiameter), Half(y.Width), y.Horn.Most, Half(y.RimDiameter), y.Travel.Metres, y.Turn.Radians),
                    Unsure(y.Hub));
                break;
            case Pedals p:
                var (left, right) = CockpitBodies.Pedals(name, At(p.Left), At(p.Right), p.Width.Most, p.Length.Most, p.Thickness.Most, p.Swing.Radians);
                yield return (left, Unsure(p.Left));
                yield return (right, Unsure(p.Right));
                break;
            case SeatedLeg leg:
                var usual = LegSize.Of(leg.Size ?? aircraft.Pilot?.Largest ?? PilotSize.Man95);
                var size = new LegSize(
                    leg.Thigh?.Metres ?? usual.Thigh, leg.Shin?.Metres ?? usual.Shin, 0.5 * leg.ThighDiameter?.Metres ?? usual.ThighRadius, 0.5 * leg.ShinDiameter?.Metres ?? usual.ShinRadius);
                if (!CockpitBodies.CanSpan(At(leg.Hip), At(leg.Heel), size))
                {
                    var say = new FigureWriter(aircraft.Display);
                    notRead.Add(new(name, $"hip and heel are {say.Length((At(leg.Hip) - At(leg.Heel)).Size)} apart, and thigh and shin of {say.Length(size.Thigh)} and {say.Length(size.Shin)} don't span that"));
                    break;
                }

                yield return (
                    CockpitBodies.Leg(name, leg.Side == BodySide.Right ? 1 : -1, At(leg.Hip), At(leg.Heel), size, leg.Outward.Radians, leg.Inward.Radians),
                    LegUnsure(leg, size));
                break;
        }
    }

    private static JointChain ChainOf(string body, EquatableList<BodyJoint> joints)
    {
        var free = joints.Where(j => j.Follows.Length == 0).ToDictionary(j => j.Id, j => j switch
        {
            SlideJoint s => Joint.Slide($"{body} {s.Id}", HandleMount.Vector(s.Axis), s.From.Metres, s.To.Metres),
            TurnJoint t => Joint.Turn($"{body} {t.Id}", At(t.About), HandleMount.Vector(t.Axis), t.From.Radians, t.To.Radians),
            _ => throw new ArgumentOutOfRangeException(nameof(joints)),
        });
        return new([.. joints.Select(j => (j.Follows, j) switch
        {
            ("", _) => free[j.Id],
            (var leader, SlideJoint s) => Joint.Following(free[leader], $"{body} {s.Id}", JointKind.Slide, default, HandleMount.Vector(s.Axis), s.From.Metres, s.To.Metres),
            (var leader, TurnJoint t) => Joint.Following(free[leader], $"{body} {t.Id}", JointKind.Turn, At(t.About), HandleMount.Vector(t.Axis), t.From.Radians, t.To.Radians),
            _ => throw new ArgumentOutOfRangeException(nameof(joints)),
        })]);
    }

    private static JointChain Gated(JointChain chain, string name, Body body)
    {
        if (body.Gates.Count == 0)
            return chain;
        Joint Named(string id) => chain.Joints.First(j => j.Name == $"{name} {id}");
        JointRange Range(string id) => body.JointRanges.First(r => r.Id == id);
        return chain with
        {
            Gates = body.Gates.Select(g =>
            {
                var (a, b, c) = g.Line(Range(g.First), Range(g.Second));
                return new JointGate($"{name} {g.First} with {g.Second}", [new(Named(g.First), a), new(Named(g.Second), b)], c);
            }).ToEquatableList(),
        };
    }

    /// <summary>The shape at its largest, with the doubt about its place as a rounding all round.</summary>
    private static ConvexShape ConvexOf(PartShape shape)
    {
        switch (shape)
        {
            case SphereShape s:
                return new Sphere(At(s.Centre), s.Radius.Most + Unsure(s.Centre));
            case CapsuleShape c:
                return new Capsule(At(c.From), At(c.To), c.Radius.Most + Unsure(c.From, c.To));
            case ConeShape c when c.Radius == c.EndRadius:
                return new Cylinder(At(c.From), At(c.To), c.Radius.Most, Unsure(c.From, c.To) + RimUnsure(c));
            case ConeShape c:
                return new Cone(At(c.From), At(c.To), c.Radius.Most, c.EndRadius.Most, Unsure(c.From, c.To) + RimUnsure(c));
            case BoxShape b:
                var up = HandleMount.Vector(b.Up).Unit();
                var along = HandleMount.Vector(b.Along);
                along = (along - (Vector3.Dot(along, up) * up)).Unit();
                return new Box(At(b.Centre), new(along, Vector3.Cross(up, along), up), 0.5 * new Vector3(b.Length.Most, b.Width.Most, b.Height.Most), Unsure(b.Centre));
            case PlaneShape p:
                // No cockpit is larger, and nothing sinks deeper.
                const double Far = 20, Deep = 1;
                var normal = HandleMount.Vector(p.Normal).Unit();
                var side = Rotation.SquareTo(normal);
                return new Box(At(p.At) - (Deep * normal), new(side, Vector3.Cross(normal, side), normal), new(Far, Far, Deep), Unsure(p.At));
            default:
                throw new ArgumentOutOfRangeException(nameof(shape));
        }
    }

    /// <summary>Ends measured askew lean the bar, and its square rims go up and down by that.</summary>
    private static double RimUnsure(ConeShape c) =>
        Math.Max(c.Radius.Most, c.EndRadius.Most) * Math.Min(2, (HandleMount.Unsureness(c.From) + HandleMount.Unsureness(c.To)) / (At(c.To) - At(c.From)).Size);

    /// <summary>
    /// How far hip, heel or knee may be off. The knee stands on two bars of known length over the line from hip to heel, so it goes up
    /// and down by more than that line's ends: the more, the straighter the leg.
    /// </summary>
    private static double LegUnsure(SeatedLeg leg, LegSize size)
    {
        var (hip, heel) = (HandleMount.Unsureness(leg.Hip), HandleMount.Unsureness(leg.Heel));
        var reach = (At(leg.Heel) - At(leg.Hip)).Size;
        // At any reach between these the knee is that far along the line and above it; both run one way up to the straight leg.
        (double Along, double Above) Knee(double r)
        {
            var along = ((size.Thigh * size.Thigh) - (size.Shin * size.Shin) + (r * r)) / (2 * r);
            return (along, Math.Sqrt(Math.Max(0, (size.Thigh * size.Thigh) - (along * along))));
        }

        var (now, off) = (Knee(reach), 0.0);
        const int Steps = 32;
        for (var i = 0; i <= Steps; i++)
        {
            var r = reach + ((((2.0 * i) / Steps) - 1) * (hip + heel));
            if (r > Math.Abs(size.Thigh - size.Shin))
            {
                var (along, above) = Knee(Math.Min(r, size.Thigh + size.Shin));
                off = Math.Max(off, Math.Sqrt(Math.Pow(along - now.Along, 2) + Math.Pow(above - now.Above, 2)));
            }
        }

        // What heel and hip are off against each other square to the line turns the leg about the hip, and a little about the line.
        var steep = Math.Abs(Vector3.Dot(new(0, 0, 1), (At(leg.Heel) - At(leg.Hip)).Unit()));
        var arm = size.Thigh + (now.Above * steep / Math.Sqrt(Math.Max(1e-6, 1 - (steep * steep))));
        var turned = arm * Math.Min(2, (hip + heel) / reach);
        return Math.Max(Math.Max(hip, heel), hip + Math.Sqrt((off * off) + (turned * turned)));
    }

    private static Vector3 At(PointAt point) => HandleMount.Vector(point);

    private static double Unsure(params ReadOnlySpan<PointAt> points)
    {
        var most = 0.0;
        foreach (var point in points)
            most = Math.Max(most, HandleMount.Unsureness(point));
        return most;
    }
}
