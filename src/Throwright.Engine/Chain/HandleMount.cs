using Throwright.Engine.Clearance;
using Throwright.Engine.Model;
using Throwright.Engine.Mount;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;
using Joint = Throwright.Shapes.Frames.Joint;

namespace Throwright.Engine.Chain;

/// <summary>One handle on its sheet: everything that clearance and mount need of it. m, rad.</summary>
/// <param name="Name">As reports call it.</param>
/// <param name="Tilt">As the file gives it.</param>
/// <param name="Length">Along the shank, from the middle of the sheet to the back of the knob, pushed in.</param>
/// <param name="Travel">Largest stroke.</param>
/// <param name="Unsure">How far hole and length may be off: added all round.</param>
public sealed record HandleMount(
    Run Run,
    string Name,
    SheetFrame Frame,
    Tilt Tilt,
    double Length,
    double ShankRadius,
    KnobSolid Knob,
    double Travel,
    (double Left, double Right) Turn,
    double Hand,
    double Unsure)
{
    /// <summary>The file does not say how far the knob turns, but its lock works by turning: every turn is looked at.</summary>
    public bool TurnIsAssumed { get; init; }

    /// <summary>It turns as it is pulled, like a screw; null: it turns freely.</summary>
    public BodySide? Winds { get; init; }

    /// <summary>Thickness of the sheet; 0: not known.</summary>
    public double Sheet { get; init; }

    /// <summary>Of that the part which does not go with the sheet: the length of the shank.</summary>
    public double LengthUnsure { get; init; }

    /// <summary>The handle of a run; null with what is missing in <paramref name="needs"/>.</summary>
    internal static HandleMount? Of(Run run, string name, ICollection<Need> needs)
    {
        var end = run.CockpitEnd ?? new();
        var (knob, shank) = (end.KnobSize, end.Shank);
        // Whatever it is called, a handle with a width reaches out to both sides.
        var isT = end.Knob == KnobShape.THandle || knob.Width is not null;
        if (end is { Sheet: null, Hole: null, Shank: { Diameter: null, Out: null } })
        {
            // Nothing is measured yet: one question, not seven.
            needs.Add(CockpitNeed.All);
            return null;
        }

        if (end.Sheet is null)
            needs.Add(CockpitNeed.Sheet);
        if (end.Hole is null)
            needs.Add(CockpitNeed.Hole);
        if (shank.Diameter is null)
            needs.Add(CockpitNeed.ShankDiameter);
        if (shank.Out is null)
            needs.Add(CockpitNeed.ShankOut);
        if (knob.Diameter is null)
            needs.Add(CockpitNeed.KnobDiameter);
        if (knob.Length is null && !isT)
            needs.Add(CockpitNeed.KnobLength);
        if (knob.Width is null && isT)
            needs.Add(CockpitNeed.KnobWidth);
        if (end.Stroke is null)
            needs.Add(Need.Stroke);
        if (end is not { Sheet: { } sheet, Hole: { } hole, Stroke: { } stroke }
            || shank is not { Diameter: { } shankDiameter, Out: { } lengthOut }
            || knob.Diameter is not { } diameter
            || (isT ? knob.Width : knob.Length) is not { } size)
        {
            return null;
        }

        foreach (var point in (PointAt[])[sheet.At, hole])
        {
            if (!point.IsKnown)
                needs.Add(Need.Point(point.Name, "clearance of the handle"));
        }

        if (!sheet.At.IsKnown || !hole.IsKnown)
            return null;
        var normal = Vector(sheet.Normal).Unit();
        var thickness = sheet.Thickness?.Nominal.Metres ?? 0;
        // Two measurements of the same face: by as much as they differ one of them is off.
        var off = Vector3.Dot(Vector(sheet.At) - Vector(hole), normal);
        var onFace = Vector(hole) + (off * normal);
        var frame = new SheetFrame(onFace - (0.5 * thickness * normal), normal, UpOf(sheet, normal));
        // A round knob looks the same however it is turned. The bar of a T looks the same after half a turn.
        var turns = end.Turns is { } told ? (told.Left.Radians, told.Right.Radians)
            : end.Lock is LockKind.Twist or LockKind.Vernier ? (0.5 * Math.PI, 0.5 * Math.PI)
            : (0, 0);
        var depth = knob.Length?.Most ?? diameter.Most;
        var tilt = end.Tilt is { } lean ? new Tilt(Math.Tan(lean.Up.Radians), Math.Tan(lean.Right.Radians)) : Tilt.None;
        return new(
            run,
            name,
            frame,
            tilt,
            lengthOut.Nominal.Metres + (0.5 * thickness),
            0.5 * shankDiameter.Most,
            isT ? new(KnobForm.T, 0.5 * diameter.Most, Math.Max(depth, diameter.Most), size.Most, frame.Right) : new(KnobForm.Round, 0.5 * diameter.Most, size.Most),
            stroke.Most,
            isT ? turns : default,
            knob.Hand?.Metres ?? 0,
            Math.Sqrt(Math.Pow(Unsureness(hole), 2) + Math.Pow(Math.Max(UnsureAlong(sheet.At, normal), Math.Abs(off)), 2)) + Math.Max(lengthOut.Plus, lengthOut.Minus))
        {
            TurnIsAssumed = isT && end.Turns is null && turns != default,
            Winds = isT ? end.Turns?.Winds : null,
            Sheet = thickness,
            LengthUnsure = Math.Max(lengthOut.Plus, lengthOut.Minus),
        };
    }

    /// <summary>The handle as it is mounted.</summary>
    public CockpitBody Body => At(Tilt, Length);

    /// <summary>The handle at a tilt, with its length from the sheet to the knob.</summary>
    public CockpitBody At(Tilt tilt, double length)
    {
        var square = Square(length);
        if (tilt == Tilt.None)
            return square;
        var joints = Frame.JointsOver(TiltRange.At(tilt));
        var pose = joints.Up.At(joints.Up.From) * joints.Right.At(joints.Right.From);
        return square with
        {
            Joints = square.Joints.Moved(pose),
            Home = pose,
        };
    }

    /// <summary>The handle over all mounts of a range: two more joints, and a slide for what the wedge adds to its length.</summary>
    /// <param name="more">Least and most that the mount adds to the square handle's length.</param>
    public CockpitBody Over(TiltRange range, double length, (double Least, double Most) more)
    {
        var square = Square(length);
        var (up, right) = Frame.JointsOver(range);
        return square with { Joints = new([up, right, Joint.Slide($"{Name} wedge", Frame.Normal, more.Least, more.Most), .. square.Joints.Joints]) };
    }

    /// <summary>The knob alone, as it is mounted: what the hand reaches for.</summary>
    public CockpitBody KnobBody
    {
        get
        {
            var body = Body;
            return body with { Solid = body.Solid.Only("knob") };
        }
    }

    /// <summary>No part of the handle in front of the sheet is ever farther from the foot.</summary>
    public double Reach(double length) =>
        Math.Max(Travel, Math.Sqrt(Math.Pow(length + Travel + Knob.Depth, 2) + Math.Pow(Knob.Reach, 2)) + Hand) + Unsure;

    /// <summary>Middle of the knob, pushed in or pulled by a share of the travel.</summary>
    public Vector3 KnobAt(Tilt tilt, double length, double pulled) => Frame.Foot + ((length + pulled + (0.5 * Knob.Depth)) * Frame.ShankAt(tilt));

    private CockpitBody Square(double length)
    {
        var body = CockpitBodies.Handle(Name, Frame.Foot, Frame.Normal, length, ShankRadius, Knob, Travel, Turn, Hand, Winds);
        return body with { Solid = body.Solid.Padded(Unsure) };
    }

    /// <summary>Up in the aircraft, unless the sheet lies flat: then forward.</summary>
    internal static Vector3 UpOf(Sheet sheet, Vector3 normal) =>
        sheet.Up is { } up ? Vector(up) : Math.Abs(normal.Z) < Math.Cos(10 * Math.PI / 180) ? new(0, 0, 1) : new(-1, 0, 0);

    internal static Vector3 Vector(PointAt p) => new(p.Station.Nominal.Metres, p.Buttline.Nominal.Metres, p.Waterline.Nominal.Metres);

    internal static Vector3 Vector(DirectionAt d) => new(d.Aft, d.Right, d.Up);

    /// <summary>No measured place is farther from the true one.</summary>
    internal static double Unsureness(PointAt p) => Doubt(p).Size;

    /// <summary>The same along one direction, a unit vector.</summary>
    private static double UnsureAlong(PointAt p, Vector3 direction)
    {
        var most = Doubt(p);
        return Math.Abs(direction.X * most.X) + Math.Abs(direction.Y * most.Y) + Math.Abs(direction.Z * most.Z);
    }

    private static Vector3 Doubt(PointAt p)
    {
        static double Most(Toleranced<Length> c) => Math.Max(c.Minus, c.Plus);
        return new(Most(p.Station), Most(p.Buttline), Most(p.Waterline));
    }
}

/// <summary>What clearance and mount lack.</summary>
public static class CockpitNeed
{
    private const string Opens = "clearance and mount";

    public static readonly Need All = new("cockpitEnd.sheet", "place and sizes of the handle (sheet, hole, shank, knob)", "see the starter file", Opens);
    public static readonly Need Sheet = new("cockpitEnd.sheet", "sheet that carries the bushing", "describe it under sheets and name its id, e.g. \"panel\"", Opens);
    public static readonly Need Hole = new("cockpitEnd.hole", "place of the bushing's hole", "tape and plumb line, e.g. [\"20 in\", \"3 in ± 1/16 in\", \"30 in\"]", Opens);
    public static readonly Need ShankDiameter = new("cockpitEnd.shank.diameter", "diameter of the shank", "caliper, e.g. \"3/8 in\"", Opens);
    public static readonly Need ShankOut = new("cockpitEnd.shank.out", "length of the shank in front of the sheet", "sheet to the back of the knob, pushed in, e.g. \"1/2 in\"", Opens);
    public static readonly Need KnobDiameter = new("cockpitEnd.knob.diameter", "diameter of the knob", "caliper, e.g. \"1 1/4 in\"", Opens);
    public static readonly Need KnobLength = new("cockpitEnd.knob.length", "length of the knob", "front to back, e.g. \"7/8 in\"", Opens);
    public static readonly Need KnobWidth = new("cockpitEnd.knob.width", "width of the handle", "end to end of the bar, e.g. \"4 in\"", Opens);
}
