using Throwright.Engine.Clearance;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Chain;

/// <summary>What a run has in the aircraft beside its handle: the arm at the device, and the conduit with its free wire.</summary>
/// <param name="Lever">Null: not placed in coordinates.</param>
/// <param name="Conduit">Null: its way is not known.</param>
/// <param name="WidthIsTaken">The file does not say how wide the arm is: it is taken from its pin.</param>
/// <param name="OutsideIsKnown">The conduit's outside is measured; else one thicker than most is taken.</param>
public sealed record DeviceEnd(Run Run, CockpitBody? Lever, CockpitBody? Conduit, bool WidthIsTaken, bool OutsideIsKnown)
{
    public bool IsEmpty => Lever is null && Conduit is null;

    /// <summary>Whether a run has any of it, without working it out.</summary>
    public static bool IsDescribed(Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return run.LeverEnd?.Placed is not null || run.Cable is { Supports.Count: > 0 } or { Ends: { Leaves: not null } or { Arrives: not null } };
    }

    /// <summary>The run with nothing but what its arm and conduit rest on.</summary>
    public static Run BasisOf(Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return new()
        {
            Id = run.Id,
            Label = run.Label,
            CockpitEnd = run.CockpitEnd,
            Cable = run.Cable,
            LeverEnd = run.LeverEnd is { } end ? end with { Load = null, Valve = null, Bracket = null, BracketStiffness = null, Swivel = new() { Length = end.Swivel.Length } } : null,
            Installation = run.Installation?.Joint is { } joint ? new() { Joint = joint } : null,
        };
    }

    /// <param name="name">As reports call the run's handle.</param>
    /// <param name="handle">The run's own; null: not described.</param>
    internal static DeviceEnd Of(Run run, string name, LeverPlacement? placement, RunRoute? route, HandleMount? handle)
    {
        var end = run.LeverEnd;
        var placed = end?.Placed is { Pivot.IsKnown: true, Anchor.IsKnown: true } p && end is { Radius: not null, From: not null, To: not null } && placement is not null ? p : null;
        var lever = placed is null ? null : LeverOf(name, end!, placed, run.Installation?.Joint);
        var outside = run.Cable?.Conduit?.Outside;
        CockpitBody? conduit = null;
        // As it rests, where something stands in the way of the free one: there is no other place for it.
        if (route is { Counted: { } lie })
        {
            var nodes = lie.Shape.Nodes.Select(n => (n.Point, n.At, n.Curvature.Size)).ToList();
            // What most lays stay within; a bow that flips lies elsewhere altogether, and is told by the route.
            var moved = route.Spread is { Moved: var by } && double.IsFinite(by) ? by : 0;
            var hasWire = placed is not null && (HandleMount.Vector(placed.Anchor) - lie.Case.End).Size < 1e-6;
            var radius = (0.5 * (outside?.Most ?? Published.Get("clearance/conduit-outside").Value)) + moved;
            conduit = DeviceBodies.Conduit($"{name} conduit", nodes, radius, EndsOf(nodes, radius, handle, hasWire ? end : null), hasWire ? WireOf(end!, placed!, run.Cable?.Core) : null);
        }

        return new(run, lever, conduit, end?.ArmWidth is null, outside is not null);
    }

    /// <summary>How far the shank's tail and the swivel may come beside their own conduit where that begins and ends.</summary>
    /// <remarks>
    /// The tail stays within the travel of the hole. As far as the conduit runs on within that and the wanted distance, it holds
    /// the shank; where it comes back later, it is held against it.
    /// </remarks>
    private static (double AtHandle, double AtArm) EndsOf(List<(Vector3 Point, double At, double Curvature)> line, double radius, HandleMount? handle, LeverEnd? end)
    {
        var keep = Published.Get("route/chafe-least").Value + radius;
        double atHandle = 0, atArm = line[^1].At;
        if (handle is not null)
            atHandle = line.TakeWhile(n => (n.Point - handle.Frame.Foot).Size < handle.Travel + handle.ShankRadius + handle.Unsure + keep).Select(n => n.At).DefaultIfEmpty(0).Last();
        if (end is not null)
            atArm -= end.Swivel.Length.Most + keep;
        return (Math.Min(atHandle, atArm), atArm);
    }

    private static CockpitBody LeverOf(string name, LeverEnd end, PlacedAnchor placed, Model.Joint? joint)
    {
        var (axis, zero, pivot) = FrameOf(placed);
        var radius = end.Radius!.Value;
        var pin = joint?.Diameter?.Metres ?? Published.Get("clearance/arm-pin").Value;
        var halfWidth = 0.5 * end.ArmWidth?.Most ?? Published.Get("make/edge-distance").Value * pin;
        var body = CockpitLever();
        return body with { Solid = body.Solid.Padded(HandleMount.Unsureness(placed.Pivot) + Math.Max(placed.AlongAxis.Minus, placed.AlongAxis.Plus)) };

        CockpitBody CockpitLever() => DeviceBodies.Lever(
            $"{name} lever",
            pivot,
            axis,
            zero,
            Math.Max(radius.Most, end.Holes.Max(h => (double?)h.Metres) ?? 0),
            halfWidth,
            joint?.Arm?.Metres ?? 0,
            radius.Nominal.Metres,
            end.Swivel.Length.Most + (2 * Math.Max(radius.Minus, radius.Plus)),
            joint?.Swivel?.Metres ?? pin,
            (end.From!.Value.Least, end.To!.Value.Most));
    }

    private static (Vector3 From, IReadOnlyList<Vector3> Holes, double Step, Vector3 Pivot, double Radius) WireOf(LeverEnd end, PlacedAnchor placed, Core? core)
    {
        var (axis, zero, pivot) = FrameOf(placed);
        double from = end.From!.Value.Least, to = end.To!.Value.Most, radius = end.Radius!.Value.Most;
        var steps = DeviceBodies.Steps(to - from);
        var step = (to - from) / steps;
        return (
            HandleMount.Vector(placed.Anchor),
            [.. Enumerable.Range(0, steps + 1).Select(i => pivot + (Rotation.About(axis, from + (i * step)) * (radius * zero)))],
            step,
            pivot,
            (0.5 * (core?.Diameter.Most ?? 0)) + Math.Max(HandleMount.Unsureness(placed.Pivot), HandleMount.Unsureness(placed.Anchor)));
    }

    /// <summary>Axis, direction of the arm at angle 0, and the pivot in the arm's plane.</summary>
    private static (Vector3 Axis, Vector3 Zero, Vector3 Pivot) FrameOf(PlacedAnchor placed)
    {
        var axis = HandleMount.Vector(placed.Axis).Unit();
        var zero = HandleMount.Vector(placed.Zero);
        return (axis, (zero - (Vector3.Dot(zero, axis) * axis)).Unit(), HandleMount.Vector(placed.Pivot) + (placed.AlongAxis.Nominal.Metres * axis));
    }
}
