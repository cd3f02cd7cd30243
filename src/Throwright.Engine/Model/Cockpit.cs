using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Model;

/// <summary>Who sits at the controls, as far as it is known.</summary>
public sealed record Pilot
{
    /// <summary>Between the eyes, seated as in flight.</summary>
    public PointAt? Eye { get; init; }

    /// <summary>The point of the shoulder on the side that works the controls, harness locked.</summary>
    public PointAt? Shoulder { get; init; }

    /// <summary>Point of the shoulder to the middle of a grip, arm stretched; null: the published figure of the smallest who shall reach.</summary>
    public Length? Reach { get; init; }

    /// <summary>The largest person whose legs must find room; null: the largest that is published.</summary>
    public PilotSize? Largest { get; init; }

    /// <summary>The smallest person who must reach; null: the smallest that is published.</summary>
    public PilotSize? Smallest { get; init; }

    /// <summary>What this pilot's hand gives; null: the published figures.</summary>
    public PilotStrength? Strength { get; init; }
}

/// <summary>Largest forces of one hand for a moment, taken from the seat, belted. What was not measured is null.</summary>
public sealed record PilotStrength(Force? Pull, Force? Push, Force? Pinch);

/// <summary>Body sizes by percentile of a published survey.</summary>
public enum PilotSize
{
    Woman5,
    Woman50,
    Woman95,
    Man5,
    Man50,
    Man95,
}

/// <summary>The panel, console or bulkhead sheet that carries bushings. Flat, or bent round a cylinder.</summary>
public sealed record Sheet
{
    /// <summary>What its one part is called in an allowed contact.</summary>
    public const string PartName = "sheet";

    public required string Id { get; init; }

    /// <summary>A point on the face toward the pilot.</summary>
    public required PointAt At { get; init; }

    /// <summary>Square to the sheet, toward the pilot.</summary>
    public required DirectionAt Normal { get; init; }

    /// <summary>What is called up in the sheet; null: up in the aircraft, or forward where the sheet lies flat.</summary>
    public DirectionAt? Up { get; init; }
    public Toleranced<Length>? Thickness { get; init; }

    /// <summary>Alloy and temper, or another material, as the builder calls it: 2024-T3.</summary>
    public string Material { get; init; } = "";

    /// <summary>Corners of the flat on the face toward the pilot, one after the other; none: not measured.</summary>
    public EquatableList<PointAt> Outline { get; init; } = [];

    /// <summary>How it is bent where the bushings sit; null: flat. <see cref="Normal"/> is then square to it at the hole.</summary>
    public SheetCurve? Curve { get; init; }

    /// <summary>Holes that a conduit may pass, beside those of the bushings.</summary>
    public EquatableList<SheetHole> Holes { get; init; } = [];
}

/// <summary>A sheet bent one way only.</summary>
/// <param name="Radius">Of the face toward the pilot.</param>
/// <param name="Straight">Direction in which a straight edge lies on it.</param>
public sealed record SheetCurve(Toleranced<Length> Radius, DirectionAt Straight, SheetBulge Bulges);

public enum SheetBulge
{
    /// <summary>Toward the pilot.</summary>
    Toward,

    /// <summary>Away from the pilot: hollow where the hand is.</summary>
    Away,
}

/// <param name="At">Its middle, on the face toward the pilot.</param>
public sealed record SheetHole(PointAt At, Toleranced<Length> Diameter);

/// <summary>Lean of the shank against the sheet's normal, as two slopes: toward up and toward right in the sheet.</summary>
/// <param name="Up">The tangent of this angle is the slope toward up.</param>
/// <param name="Right">The tangent of this angle is the slope toward right, as the pilot sees it.</param>
public sealed record MountTilt(Angle Up, Angle Right);

/// <summary>Sizes of what the hand holds. What is not measured is null.</summary>
public sealed record KnobSize
{
    /// <summary>Of a round knob; of the bar of a T-handle; of a lever handle's grip.</summary>
    public Toleranced<Length>? Diameter { get; init; }

    /// <summary>Along the shank; of a T-handle the bar's thickness does it.</summary>
    public Toleranced<Length>? Length { get; init; }

    /// <summary>Across the shank: end to end of a T-handle's bar, level at turn zero.</summary>
    public Toleranced<Length>? Width { get; init; }

    /// <summary>Room for a hand round the knob that must stay free in every position; null: not asked for.</summary>
    public Length? Hand { get; init; }
}

/// <summary>How far a handle turns about its shank, seen by the pilot.</summary>
public sealed record KnobTurn(Angle Left, Angle Right)
{
    /// <summary>The shank is a screw: pulled out over its whole travel, the knob turns this way over its whole turn. Null: it turns freely.</summary>
    public BodySide? Winds { get; init; }
}

/// <summary>The rod between knob and bushing.</summary>
public sealed record Shank
{
    public Toleranced<Length>? Diameter { get; init; }

    /// <summary>From the sheet's face toward the pilot to the back of the knob, knob pushed in.</summary>
    public Toleranced<Length>? Out { get; init; }
}

/// <summary>The threaded body through the sheet, with its nut.</summary>
public sealed record Bushing
{
    /// <summary>As it is called: 1/2-20 UNF.</summary>
    public string Thread { get; init; } = "";

    /// <summary>Thread that can be used, shoulder to end.</summary>
    public Toleranced<Length>? Length { get; init; }

    /// <summary>Outside of the thread.</summary>
    public Toleranced<Length>? Diameter { get; init; }

    /// <summary>Nut across its flats.</summary>
    public Toleranced<Length>? Nut { get; init; }
    public Toleranced<Length>? NutHeight { get; init; }

    /// <summary>The hole in the sheet for a bushing that stands square.</summary>
    public Toleranced<Length>? Hole { get; init; }
}
