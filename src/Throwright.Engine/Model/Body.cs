using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Model;

/// <summary>Something in the cockpit that a handle must not meet. Either parts of its own, or a ready-made body.</summary>
public sealed record Body
{
    public required string Id { get; init; }

    /// <summary>From the airframe outward: the first moves everything after it.</summary>
    public EquatableList<BodyJoint> Joints { get; init; } = [];
    public EquatableList<BodyPart> Parts { get; init; } = [];
    public ReadyMade? ReadyMade { get; init; }

    /// <summary>Clothing, wires, soft edges: added all round.</summary>
    public Length Allow { get; init; }
    public EquatableList<Touch> Touches { get; init; } = [];

    /// <summary>What conduits keep from it; null: the published distance.</summary>
    public KeepAway? KeepAway { get; init; }

    /// <summary>Joints that limit one another.</summary>
    public EquatableList<BodyGate> Gates { get; init; } = [];
    public string Note { get; init; } = "";
    public EquatableList<string> PartNames => ReadyMade?.PartNames ?? Parts.Select(p => p.Name).ToEquatableList();

    /// <summary>Its joints with their limits, own ones or those of the ready-made body.</summary>
    public EquatableList<JointRange> JointRanges => ReadyMade?.Ranges() is { Count: > 0 } ready ? ready : Joints.Select(j => j.Range).ToEquatableList();
}

/// <summary>A distance that conduits keep, by the maker's or the builder's own figure, and why.</summary>
public sealed record KeepAway(Length Distance, KeepAwayCause Because);

public enum KeepAwayCause
{
    Other,

    /// <summary>It is hot.</summary>
    Heat,

    /// <summary>It has an edge that chafes.</summary>
    Edge,
}

/// <summary>One joint and how far it goes, rad or m.</summary>
public sealed record JointRange(string Id, bool IsTurn, double From, double To)
{
    /// <summary>Where it stands when nothing moves it: at zero, or as near as it goes.</summary>
    public double Rest => Math.Clamp(0, From, To);
}

/// <summary>Two joints that limit one another: they do not go beyond the straight line through two positions measured at the limit.</summary>
/// <param name="First">Id of a joint.</param>
/// <param name="From">One position of both, rad or m.</param>
/// <param name="To">The other. The side of the line on which both joints rest is free.</param>
public sealed record BodyGate(string First, string Second, (double First, double Second) From, (double First, double Second) To)
{
    /// <summary>a * first + b * second is at most c.</summary>
    public (double A, double B, double C) Line(JointRange first, JointRange second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        double a = To.Second - From.Second, b = From.First - To.First, c = (a * From.First) + (b * From.Second);
        return (a * first.Rest) + (b * second.Rest) <= c ? (a, b, c) : (-a, -b, -c);
    }
}

/// <summary>One joint of a body, measured with all joints at zero.</summary>
/// <param name="Axis">Of the turn, right-handed; or the way of the slide.</param>
public abstract record BodyJoint(string Id, DirectionAt Axis)
{
    /// <summary>Id of the joint that drives it: at From when that one is at its From, at To likewise; empty: it is free.</summary>
    public string Follows { get; init; } = "";
    public abstract JointRange Range { get; }
}

public sealed record SlideJoint(string Id, DirectionAt Axis, Length From, Length To) : BodyJoint(Id, Axis)
{
    public override JointRange Range => new(Id, false, Math.Min(From.Metres, To.Metres), Math.Max(From.Metres, To.Metres));
}

/// <param name="About">A point of the axis.</param>
public sealed record TurnJoint(string Id, DirectionAt Axis, PointAt About, Angle From, Angle To) : BodyJoint(Id, Axis)
{
    public override JointRange Range => new(Id, true, Math.Min(From.Radians, To.Radians), Math.Max(From.Radians, To.Radians));
}

/// <summary>Two named parts that may touch, and why. The other side is a body, the handle of a run or a sheet.</summary>
/// <param name="Part">Of this body.</param>
/// <param name="With">Id of the other body, of a run or of a sheet.</param>
public sealed record Touch(string Part, string With, string WithPart, string Why)
{
    /// <summary>What the parts of a run's handle are called.</summary>
    public static EquatableList<string> HandleParts { get; } = ["shank", "knob", "hand"];
}

/// <summary>A named part of a body. Aircraft axes, with all joints at zero.</summary>
public sealed record BodyPart(string Name, PartShape Shape);

/// <summary>The shape of a part; all but a mesh are convex.</summary>
public abstract record PartShape;

public sealed record SphereShape(PointAt Centre, Toleranced<Length> Radius) : PartShape;

/// <summary>A bar with round ends; the ends of its centre line.</summary>
public sealed record CapsuleShape(PointAt From, PointAt To, Toleranced<Length> Radius) : PartShape;

/// <summary>A bar with square ends, thinner or thicker toward one of them: equal radii make a cylinder, zero a point.</summary>
public sealed record ConeShape(PointAt From, PointAt To, Toleranced<Length> Radius, Toleranced<Length> EndRadius) : PartShape;

/// <param name="Along">Way of the first size; its part along <paramref name="Up"/> does not count.</param>
/// <param name="Up">Way of the third size.</param>
public sealed record BoxShape(PointAt Centre, Toleranced<Length> Length, Toleranced<Length> Width, Toleranced<Length> Height, DirectionAt Along, DirectionAt Up) : PartShape;

/// <summary>Everything behind a plane: a floor, a wall.</summary>
/// <param name="Normal">Out of the solid side.</param>
public sealed record PlaneShape(PointAt At, DirectionAt Normal) : PartShape;

/// <summary>A scan or an export, in a file beside the aircraft file.</summary>
public sealed record MeshShape : PartShape
{
    /// <summary>Relative to the aircraft file, with / between folders.</summary>
    public required string File { get; init; }
    public required MeshUnit Unit { get; init; }

    /// <summary>The mesh's axis that points up in the aircraft, and the one that points aft.</summary>
    public MeshAxis Up { get; init; } = MeshAxis.Z;
    public MeshAxis Aft { get; init; } = MeshAxis.X;

    /// <summary>Where the mesh's origin lies; null: placed by matched points.</summary>
    public PointAt? At { get; init; }

    /// <summary>Places known in the mesh and in the aircraft; three or more, or none.</summary>
    public EquatableList<MeshMatch> Matched { get; init; } = [];

    /// <summary>Error of scan or chords, added all round.</summary>
    public Length Accuracy { get; init; }
}

/// <param name="X">In the mesh's own unit and axes.</param>
public sealed record MeshMatch(double X, double Y, double Z, PointAt Aircraft);

public enum MeshUnit
{
    Millimetre,
    Centimetre,
    Metre,
    Inch,
    Foot,
}

public enum MeshAxis
{
    X,
    Y,
    Z,
    MinusX,
    MinusY,
    MinusZ,
}

/// <summary>A body that needs only a few measurements; its parts and joints follow.</summary>
public abstract record ReadyMade
{
    /// <summary>What its parts are called, for allowed contacts.</summary>
    public abstract EquatableList<string> PartNames { get; }

    /// <summary>Joints that a gate may name.</summary>
    public virtual EquatableList<JointRange> Ranges() => [];
}

/// <summary>A centre stick on a roll tube along the aircraft that carries the pitch pivot.</summary>
public sealed record Stick : ReadyMade
{
    public required PointAt Pivot { get; init; }

    /// <summary>Pivot to the top of the grip.</summary>
    public required Toleranced<Length> Length { get; init; }

    /// <summary>Length of the grip.</summary>
    public required Toleranced<Length> Grip { get; init; }
    public required Toleranced<Length> ShaftDiameter { get; init; }
    public required Toleranced<Length> GripDiameter { get; init; }
    public required Angle Forward { get; init; }
    public required Angle Aft { get; init; }
    public required Angle Left { get; init; }
    public required Angle Right { get; init; }
    public override EquatableList<string> PartNames => ["shaft", "grip"];
    public override EquatableList<JointRange> Ranges() => [new("roll", true, -Left.Radians, Right.Radians), new("pitch", true, -Forward.Radians, Aft.Radians)];
}

/// <summary>A yoke on a shaft through the panel: it slides aft and turns.</summary>
public sealed record Yoke : ReadyMade
{
    /// <summary>Middle of the wheel, shaft fully forward.</summary>
    public required PointAt Hub { get; init; }
    public required Toleranced<Length> ShaftLength { get; init; }
    public required Toleranced<Length> ShaftDiameter { get; init; }

    /// <summary>Over both horns.</summary>
    public required Toleranced<Length> Width { get; init; }

    /// <summary>Height of the horns above the hub.</summary>
    public required Toleranced<Length> Horn { get; init; }
    public required Toleranced<Length> RimDiameter { get; init; }
    public required Length Travel { get; init; }

    /// <summary>To each side.</summary>
    public required Angle Turn { get; init; }
    public override EquatableList<string> PartNames => ["shaft", "bar", "left horn", "right horn"];
    public override EquatableList<JointRange> Ranges() => [new("aft", false, 0, Travel.Metres), new("turn", true, -Turn.Radians, Turn.Radians)];
}

/// <summary>Two pedals hinged at the floor, each with a foot on it.</summary>
public sealed record Pedals : ReadyMade
{
    /// <summary>Middle of the left pedal's hinge.</summary>
    public required PointAt Left { get; init; }
    public required PointAt Right { get; init; }

    /// <summary>Of one pedal.</summary>
    public required Toleranced<Length> Width { get; init; }

    /// <summary>Hinge up to the toe of a shoe.</summary>
    public required Toleranced<Length> Length { get; init; }

    /// <summary>Pedal and shoe.</summary>
    public required Toleranced<Length> Thickness { get; init; }

    /// <summary>Forward and aft.</summary>
    public required Angle Swing { get; init; }
    public override EquatableList<string> PartNames => ["foot"];
}

/// <summary>A seated leg, knee swung outward and inward about the line from hip to heel.</summary>
public sealed record SeatedLeg : ReadyMade
{
    public required BodySide Side { get; init; }
    public required PointAt Hip { get; init; }
    public required PointAt Heel { get; init; }

    /// <summary>Null: of the largest pilot.</summary>
    public PilotSize? Size { get; init; }

    /// <summary>Own measures, before any published size: hip to knee, knee to heel, thickness of thigh and shin.</summary>
    public Length? Thigh { get; init; }
    public Length? Shin { get; init; }
    public Length? ThighDiameter { get; init; }
    public Length? ShinDiameter { get; init; }
    public required Angle Outward { get; init; }
    public required Angle Inward { get; init; }
    public override EquatableList<string> PartNames => ["thigh", "shin"];
}

public enum BodySide
{
    Left,
    Right,
}

/// <summary>Tubes or frames along a line of points: a canopy bow, a door frame. It may have joints.</summary>
public sealed record TubeFrame : ReadyMade
{
    public required EquatableList<PointAt> Line { get; init; }
    public required Toleranced<Length> Diameter { get; init; }
    public override EquatableList<string> PartNames => Enumerable.Range(1, Line.Count - 1).Select(i => $"tube {i}").ToEquatableList();
}
