using Throwright.Engine.Clearance;
using Throwright.Engine.Model;
using Throwright.Engine.Route;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Chain;

/// <summary>What conduits stay away from.</summary>
/// <param name="NotHeld">What of the file they are not held against, in words.</param>
internal sealed record RouteObstacles(EquatableList<KeepOut> KeepOuts, EquatableList<string> NotHeld)
{
    /// <summary>Closed meshes: whether a place inside one is inside something solid, its skin does not say.</summary>
    public EquatableList<(string Name, Func<Vector3, bool> Holds)> Closed { get; init; } = [];

    /// <summary>Sheets without outline: what stays away from their whole plane stays away from them.</summary>
    public EquatableList<KeepOut> Planes { get; init; } = [];

    /// <summary>Without what moves: nothing rests against that.</summary>
    public RouteObstacles Standing => this with { KeepOuts = KeepOuts.Where(k => k.Kind != KeepOutKind.Mover).ToEquatableList() };

    /// <summary>Every body of the file over all its positions, meshes and sheets among them.</summary>
    /// <param name="cockpit">Bodies and meshes as clearance has them; null: made here, with the meshes that can be had.</param>
    public static RouteObstacles Of(Aircraft aircraft, CockpitAnswer? cockpit, Func<MeshShape, Skin?>? meshes)
    {
        IEnumerable<CockpitBody> bodies;
        IEnumerable<PlacedMesh> placed;
        var notHeld = new List<string>();
        if (cockpit is not null)
        {
            bodies = cockpit.Clearance.Case.Bodies.Where(b => cockpit.Handles.All(h => h.Name != b.Name));
            placed = cockpit.Meshes;
            notHeld.AddRange(cockpit.NotRead.Select(l => l.ToString()));
        }
        else
        {
            var scene = CockpitScene.Of(aircraft, new() { Meshes = meshes });
            (bodies, placed) = (scene.Bodies, scene.Meshes);
            notHeld.AddRange(scene.NotRead.Select(l => l.ToString()));
        }

        var usual = Published.Get("route/chafe-least").Value;
        var keepOuts = new List<KeepOut>();
        foreach (var body in bodies)
        {
            var away = aircraft.Bodies.FirstOrDefault(b => b.Id.Replace('-', ' ') is var name && (body.Name == name || body.Name.StartsWith(name + " ", StringComparison.Ordinal)))?.KeepAway;
            var joints = body.Joints.Joints.Count;
            // What moves is held against the conduit by clearance, closer and with the place where it comes nearest.
            if (cockpit is not null && joints > 0 && away is null)
                continue;
            var kind = away?.Because switch
            {
                KeepAwayCause.Heat => KeepOutKind.Heat,
                KeepAwayCause.Edge => KeepOutKind.Edge,
                _ => joints > 0 ? KeepOutKind.Mover : KeepOutKind.Structure,
            };
            keepOuts.Add(new(
                body.Name,
                kind,
                away?.Distance.Metres ?? usual,
                joints == 0 ? PointDistance.Of(body.Solid, body.Home) : Swept(body, away?.Distance.Metres ?? usual)));
        }

        var planes = new List<KeepOut>();
        foreach (var sheet in aircraft.Sheets)
        {
            if (!sheet.At.IsKnown || sheet.Outline.Concat(sheet.Holes.Select(h => h.At)).Any(p => !p.IsKnown))
                notHeld.Add($"{sheet.Id}: a point of the sheet has no place yet");
            else if (sheet.Outline.Count < 3 && sheet.Curve is not null)
                notHeld.Add($"{sheet.Id}: a curved sheet without outline");
            else if (sheet.Outline.Count < 3)
                planes.Add(new(sheet.Id, KeepOutKind.Structure, usual, PlaneOf(sheet)));
            else
                keepOuts.Add(new(sheet.Id, KeepOutKind.Structure, usual, PlateOf(sheet)));
        }

        var closed = placed.Where(m => !m.IsOpen).Select(m => m.Name).ToHashSet();
        return new(keepOuts.ToEquatableList(), notHeld.ToEquatableList())
        {
            Planes = planes.ToEquatableList(),
            Closed = bodies.Where(b => closed.Contains(b.Name) && b.Joints.Joints.Count == 0).Select(b => (b.Name, InsideOf(b))).ToEquatableList(),
        };
    }

    /// <summary>
    /// All positions of a body: in few steps where those prove that it is far, by a grid about it where that tells far or
    /// inside, in many steps between. Never more than is there.
    /// </summary>
    private static Func<Vector3, double> Swept(CockpitBody body, double keep)
    {
        const double Step = 0.015, Inside = 0.03;
        var joints = body.Joints.Joints.Count;
        double far = Math.Max(0.1, 2 * keep), near = keep + Inside;
        Func<Vector3, double> few = PointDistance.OfSweep(body.Moving, joints > 2 ? 2 : 3), many = PointDistance.OfSweep(body.Moving, joints switch { 1 => 25, 2 => 9, 3 => 5, _ => 3 });
        var half = (body.Solid.Reach + far + 0.3) * new Vector3(1, 1, 1);
        var middle = body.Moving.Chain.At([.. body.Joints.Joints.Select(j => 0.5 * (j.From + j.To))]) * body.Home * body.Solid.Centre;
        var grid = half.X < 1.5 ? PointDistance.Sampled(many, middle - half, middle + half, Step) : many;
        return p =>
        {
            if (few(p) is var rough && rough > far)
                return rough;
            return grid(p) is var gridded && (gridded > near || gridded < -Inside) ? gridded : many(p);
        };
    }

    /// <summary>The sheet behind its face, with what is unsure about its points all round and its holes smaller by that.</summary>
    private static Func<Vector3, double> PlateOf(Sheet sheet)
    {
        var normal = HandleMount.Vector(sheet.Normal).Unit();
        var thick = sheet.Thickness?.Most ?? 0;
        var face = HandleMount.Vector(sheet.At);
        Vector3 InMiddle(PointAt point)
        {
            var p = HandleMount.Vector(point);
            return p - ((Vector3.Dot(p - face, normal) + (0.5 * thick)) * normal);
        }

        var unsure = sheet.Outline.Append(sheet.At).Max(HandleMount.Unsureness);
        var flat = PlateDistance.Of(
            [.. sheet.Outline.Select(InMiddle)], normal, thick, [.. sheet.Holes.Select(h => (InMiddle(h.At), 0.5 * h.Diameter.Least))]);
        var rise = CockpitScene.RiseOf(sheet);
        return p => flat(p) - unsure - rise;
    }

    private static Func<Vector3, double> PlaneOf(Sheet sheet)
    {
        var normal = HandleMount.Vector(sheet.Normal).Unit();
        var half = 0.5 * (sheet.Thickness?.Most ?? 0);
        var middle = HandleMount.Vector(sheet.At) - (half * normal);
        var unsure = HandleMount.Unsureness(sheet.At);
        return p => Math.Abs(Vector3.Dot(p - middle, normal)) - half - unsure;
    }

    private static Func<Vector3, bool> InsideOf(CockpitBody body)
    {
        var back = body.Home.Inverse();
        return p => body.Solid.WindingAt(back * p) > 0.5;
    }
}
