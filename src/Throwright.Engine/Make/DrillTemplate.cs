using Throwright.Shapes;
using Throwright.Shapes.Solids;

namespace Throwright.Engine.Make;

/// <summary>What a line of the template stands for.</summary>
public enum TemplateLine
{
    /// <summary>To be cut: the hole, the pin's hole.</summary>
    Hole,

    /// <summary>Rim of the wedge on the pilot's side.</summary>
    FrontSeat,

    /// <summary>Rim of the wedge behind the sheet.</summary>
    BackSeat,
    Centre,

    /// <summary>A bar to measure on the paper.</summary>
    Scale,
}

/// <summary>An ellipse on the template. Along: half-axis in the tilt's direction, m.</summary>
public sealed record TemplateEllipse(TemplateLine Line, Vector2 Centre, double Along, double Across, double Direction);

/// <summary>A straight line on the template, m.</summary>
public sealed record TemplateSegment(TemplateLine Line, Vector2 From, Vector2 To);

/// <summary>An arrow with a word at its tip or its tail, m: the tip lies at To.</summary>
public sealed record TemplateArrow(Vector2 From, Vector2 To, string Word, bool WordAtTip);

/// <summary>
/// Drawing of the hole at true size, seen from the pilot's side: x to the right, y up, m, origin where the shank's line
/// meets the middle of the sheet.
/// </summary>
/// <param name="Hole">The slot.</param>
/// <param name="Holes">Other holes in the sheet.</param>
public sealed record DrillTemplate(
    Profile Hole, EquatableList<Profile> Holes, EquatableList<TemplateEllipse> Seats, EquatableList<TemplateSegment> Lines, EquatableList<TemplateArrow> Arrows)
{
    /// <summary>Length of the two bars that prove the print, m.</summary>
    public const double Bar = 0.1;

    public const string Caution =
        "Measure both bars before drilling: each must be 100 mm. Check behind the sheet for wires, lines and structure. The kit's or aircraft's own plans rule.";

    /// <remarks>
    /// The shank leans by the tilt in its direction as it comes toward the pilot, so it leaves the front of the sheet
    /// (t/2) tan a further along and the back as much less; the front wedge's thick edge lies against the lean.
    /// </remarks>
    public static DrillTemplate Of(WedgePair pair)
    {
        var of = pair.Case;
        var azimuth = of.Tilt.Azimuth;
        Vector2 along = Vector2.Polar(1, azimuth), across = new(-along.Y, along.X);
        var shift = 0.5 * of.Sheet * of.Tilt.Tangent;
        // Beside the slot, on the side without a pin.
        var aside = 0.25 * (pair.SlotWidth + (2 * pair.FootprintAcross)) * across;
        var lines = new List<TemplateSegment>();
        var reach = pair.FootprintAlong + 5e-3;
        foreach (var direction in (Vector2[])[along, across])
            lines.Add(new(TemplateLine.Centre, -reach * direction, reach * direction));
        // Two bars at right angles, below and to the left of everything, words included.
        var corner = new Vector2(-reach - 40e-3, -reach - 34e-3);
        lines.Add(new(TemplateLine.Scale, corner, corner + new Vector2(Bar, 0)));
        lines.Add(new(TemplateLine.Scale, corner, corner + new Vector2(0, Bar)));
        var holes = new List<Profile>();
        // The front wedge lies with its thick edge against the lean, and so with its own y against "across".
        if (pair.Washer.Pin is { } pin)
            holes.Add(Profile.Circle(-pin.Across * across, 0.5 * pin.Diameter));
        TemplateEllipse Seat(TemplateLine line, double place) => new(line, place * along, pair.FootprintAlong, pair.FootprintAcross, azimuth);
        return new(
            Profile.Slot(default, pair.SlotWidth, pair.SlotLength, azimuth),
            holes.ToEquatableList(),
            [Seat(TemplateLine.FrontSeat, shift), Seat(TemplateLine.BackSeat, -shift)],
            lines.ToEquatableList(),
            [
                new(reach * along, (reach + 22e-3) * along, "LEAN", WordAtTip: true),
                new((-(pair.FootprintAlong + 5e-3) * along) + aside, (-0.9 * pair.FootprintAlong * along) + aside, "THICK IN FRONT", WordAtTip: false),
                new(((pair.FootprintAlong + 5e-3) * along) + aside, (0.9 * pair.FootprintAlong * along) + aside, "THICK BEHIND", WordAtTip: false),
            ]);
    }
}
