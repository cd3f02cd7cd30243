using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Joint = Throwright.Shapes.Frames.Joint;

namespace Throwright.Engine.Clearance;

/// <summary>Ready-made bodies from a few tape measurements. Aircraft axes: x aft, y right, z up; lengths in m, angles in rad.</summary>
/// <remarks>
/// The shapes are the program's own simplification, chosen to lie outside the real part: bars, grips and horns end square,
/// since a rounded end lies inside, a leg is two capsules. Every size is an argument; there are no defaults for a size that a tape can
/// measure. Sizes of people are published ones.
/// </remarks>
public static class CockpitBodies
{
    private static readonly Vector3 Aft = new(1, 0, 0), Right = new(0, 1, 0), Up = new(0, 0, 1);

    /// <summary>A centre stick on a roll tube along the aircraft that carries the pitch pivot. Aft and right are positive.</summary>
    /// <param name="length">Pivot to the top of the grip.</param>
    /// <param name="grip">Length of the grip.</param>
    /// <param name="pitch">Most, forward and aft.</param>
    /// <param name="roll">Most, left and right.</param>
    public static CockpitBody Stick(string name, Vector3 pivot, double length, double grip, double shaftRadius, double gripRadius, (double Forward, double Aft) pitch, (double Left, double Right) roll) => new(
        name,
        Solid.Of(
            new Part("shaft", new Capsule(pivot, pivot + ((length - grip) * Up), shaftRadius)),
            new Part("grip", new Cylinder(pivot + ((length - grip) * Up), pivot + (length * Up), gripRadius))),
        new([
            Joint.Turn($"{name} roll", pivot, -Aft, -roll.Left, roll.Right),
            Joint.Turn($"{name} pitch", pivot, Right, -pitch.Forward, pitch.Aft),
        ]));

    /// <summary>A yoke on a shaft through the panel: it slides aft and turns. Right wing down is positive.</summary>
    /// <param name="hub">Middle of the wheel, shaft fully forward.</param>
    /// <param name="halfWidth">Shaft to the outer side of a horn.</param>
    /// <param name="horn">Height of a horn above the hub.</param>
    public static CockpitBody Yoke(string name, Vector3 hub, double shaftLength, double shaftRadius, double halfWidth, double horn, double rimRadius, double travel, double turn)
    {
        var (end, side) = (halfWidth * Right, (halfWidth - rimRadius) * Right);
        return new(
            name,
            Solid.Of(
                new Part("shaft", new Capsule(hub - (shaftLength * Aft), hub, shaftRadius)),
                new Part("bar", new Cylinder(hub - end, hub + end, rimRadius)),
                new Part("left horn", new Cylinder(hub - side, hub - side + (horn * Up), rimRadius)),
                new Part("right horn", new Cylinder(hub + side, hub + side + (horn * Up), rimRadius))),
            new([Joint.Slide($"{name} aft", Aft, 0, travel), Joint.Turn($"{name} turn", hub, -Aft, -turn, turn)]));
    }

    /// <summary>Two pedals hinged at the floor, each with a foot on it.</summary>
    /// <remarks>
    /// In the aircraft one goes forward as the other comes aft. Here each has its own joint: every position of the pair is
    /// among the positions searched, so the clearance is never too large.
    /// </remarks>
    /// <param name="left">Middle of the left pedal's hinge.</param>
    /// <param name="width">Of one pedal.</param>
    /// <param name="footLength">From the hinge up to the toe of a shoe.</param>
    public static (CockpitBody Left, CockpitBody Right) Pedals(string name, Vector3 left, Vector3 right, double width, double footLength, double footThickness, double throwEachWay)
    {
        return (One("left", left), One("right", right));

        CockpitBody One(string side, Vector3 hinge) => new(
            $"{name} {side}",
            Solid.Of(new Part("foot", new Box(hinge + (0.5 * footLength * Up), Rotation.None, new(0.5 * footThickness, 0.5 * width, 0.5 * footLength)))),
            new([Joint.Turn($"{name} {side}", hinge, Right, -throwEachWay, throwEachWay)]));
    }

    /// <summary>A seated leg: thigh and shin, knee swung outward and inward about the hip.</summary>
    /// <param name="side">+1 right, -1 left.</param>
    /// <param name="hip">Middle of the hip joint.</param>
    /// <param name="foot">Where the shin ends: the heel.</param>
    /// <param name="inward">Knee swings toward the middle, rad.</param>
    public static CockpitBody Leg(string name, int side, Vector3 hip, Vector3 foot, LegSize size, double outward, double inward)
    {
        // Two bars of known length between hip and heel: the knee stands above the line between them.
        ArgumentNullException.ThrowIfNull(size);
        var line = foot - hip;
        var reach = line.Size;
        if (!CanSpan(hip, foot, size))
            throw new ArgumentException($"Hip and heel are {reach:0.###} m apart: this leg can't span it.", nameof(foot));
        var along = ((size.Thigh * size.Thigh) - (size.Shin * size.Shin) + (reach * reach)) / (2 * reach);
        var above = Math.Sqrt((size.Thigh * size.Thigh) - (along * along));
        var toFoot = line.Unit();
        var raise = (Up - (Vector3.Dot(Up, toFoot) * toFoot)).Unit();
        var knee = hip + (along * toFoot) + (above * raise);
        return new(
            name,
            Solid.Of(new Part("thigh", new Capsule(hip, knee, size.ThighRadius)), new Part("shin", new Capsule(knee, foot, size.ShinRadius))),
            // The leg swings about the line from hip to heel; positive is outward.
            new([Joint.Turn($"{name} out", hip, side * toFoot, -inward, outward)]));
    }

    /// <summary>Does the leg reach from hip to heel with a bent knee?</summary>
    public static bool CanSpan(Vector3 hip, Vector3 foot, LegSize size)
    {
        ArgumentNullException.ThrowIfNull(size);
        var reach = (foot - hip).Size;
        return reach < size.Thigh + size.Shin && reach > Math.Abs(size.Thigh - size.Shin);
    }

    /// <summary>A hand round a knob, as a ball: what must stay free round it.</summary>
    /// <param name="room">For knuckles outside the knob.</param>
    private static Part Hand(Vector3 knob, double knobRadius, double room) => new("hand", new Sphere(knob, knobRadius + room));

    /// <summary>A push-pull handle: shank and knob, pulled along the shank, and turned about it where it turns.</summary>
    /// <param name="foot">Where the shank leaves the bushing.</param>
    /// <param name="shank">Along the shank, out of the sheet.</param>
    /// <param name="length">Foot to the back of the knob, pushed in.</param>
    /// <param name="turn">Most it turns to the left and to the right as the pilot sees it; none: it does not.</param>
    /// <param name="hand">Room for a hand round the knob; 0: none asked for.</param>
    /// <param name="winds">Like a screw it turns this way as it is pulled; null: it turns freely.</param>
    public static CockpitBody Handle(
        string name, Vector3 foot, Vector3 shank, double length, double shankRadius, KnobSolid knob, double travel, (double Left, double Right) turn, double hand = 0, BodySide? winds = null)
    {
        ArgumentNullException.ThrowIfNull(knob);
        var s = shank.Unit();
        // Pulled out, the shank shows as much more as was pulled: the part behind the foot comes through the sheet.
        List<Joint> joints = [Joint.Slide($"{name} pull", s, 0, travel)];
        // Seen by the pilot, against the shank's direction, a right-handed turn about it goes to the left.
        if (turn != default && winds is { } way)
            joints.Add(Joint.Following(joints[0], $"{name} turn", JointKind.Turn, foot, -s, way == BodySide.Right ? -turn.Left : turn.Right, way == BodySide.Right ? turn.Right : -turn.Left));
        else if (turn != default)
            joints.Add(Joint.Turn($"{name} turn", foot, -s, -turn.Left, turn.Right));
        List<Part> parts =
        [
            new("shank", new Capsule(foot - (travel * s), foot + (length * s), shankRadius)),
            new("knob", knob.At(foot + (length * s), s)),
        ];
        if (hand > 0)
            parts.Add(Hand(foot + ((length + (0.5 * knob.Depth)) * s), knob.Reach, hand));
        return new(name, Solid.Of(parts), new([.. joints]));
    }
}

/// <summary>What the hand holds, m.</summary>
/// <param name="Radius">Of a ball; of the bar of a T-handle; of a round knob.</param>
/// <param name="Depth">Along the shank, front to back.</param>
/// <param name="Width">Of a T-handle across the shank, end to end.</param>
/// <param name="Bar">Along the bar of a T-handle, made square to the shank; null: as near to the aircraft's right as the shank allows.</param>
public sealed record KnobSolid(KnobForm Form, double Radius, double Depth, double Width = 0, Vector3? Bar = null)
{
    public static KnobSolid Ball(double radius) => new(KnobForm.Ball, radius, 2 * radius);

    /// <summary>From the middle to the farthest point across the shank.</summary>
    public double Reach => Math.Max(Radius, 0.5 * Width);

    /// <param name="back">Where the shank meets it.</param>
    internal ConvexShape At(Vector3 back, Vector3 shank)
    {
        var across = Square(Bar ?? new(0, 1, 0), shank) ?? Square(new(0, 0, 1), shank) ?? new(1, 0, 0);
        return Form switch
        {
            KnobForm.Ball => new Sphere(back + (Radius * shank), Radius),
            KnobForm.Round => new Cylinder(back, back + (Depth * shank), Radius),
            // A round bar cut off square; one that is deeper than thick is a block.
            KnobForm.T when Depth <= 2 * Radius => new Cylinder(back + (Radius * shank) - (0.5 * Width * across), back + (Radius * shank) + (0.5 * Width * across), Radius),
            KnobForm.T => new Box(back + (0.5 * Depth * shank), new(shank, across, Vector3.Cross(shank, across)), new(0.5 * Depth, 0.5 * Width, Radius)),
            _ => throw new ArgumentOutOfRangeException(nameof(back)),
        };
    }

    private static Vector3? Square(Vector3 direction, Vector3 shank)
    {
        var square = direction - (Vector3.Dot(direction, shank) * shank);
        return square.Size > 1e-6 * direction.Size ? square.Unit() : null;
    }
}

public enum KnobForm
{
    Ball,
    Round,

    /// <summary>A T-handle.</summary>
    T,
}

/// <summary>Sizes of a leg, joint to joint, m.</summary>
public sealed record LegSize(double Thigh, double Shin, double ThighRadius, double ShinRadius)
{
    /// <summary>Of a published size; the shares by which outsides become joints are own choice.</summary>
    public static LegSize Of(PilotSize size)
    {
        var row = Published.Table("people/seated").Rows.First(r => r.Find("size")!.Text == NameOf(size));
        var thigh = 0.5 * row.Si("thigh");
        return new(
            Published.Get("people/thigh-share").Value * row.Si("buttock-knee"),
            Published.Get("people/shin-share").Value * row.Si("knee-height"),
            thigh,
            Published.Get("people/shin-thickness-share").Value * thigh);
    }

    /// <summary>As the tables call it: woman5.</summary>
    public static string NameOf(PilotSize size) => size.ToString().ToLowerInvariant();
}
