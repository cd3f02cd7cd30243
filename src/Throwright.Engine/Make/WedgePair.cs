using Throwright.Shapes.Solids;

namespace Throwright.Engine.Make;

/// <summary>Two wedges, one each side of the sheet, and how to make them. Lengths m, angles rad.</summary>
public sealed record WedgePair
{
    public required WedgePairCase Case { get; init; }

    /// <summary>Either wedge: both are this one part.</summary>
    public required WedgeWasher Washer { get; init; }

    /// <summary>Turning the first wedge half a turn about the line of equal thickness gives the second.</summary>
    public string WhyIdentical =>
        "Half a turn about the line through the hole along which the wedge is equally thick takes the sheet into itself, its two faces exchanged, "
        + "and the shank's line into itself: the wedge on one side becomes the wedge on the other. It holds for flat parallel faces and equal thin edges, at any sheet thickness.";

    /// <summary>Two are made of one spacer, so that their seats are parallel whatever the angle came out as.</summary>
    public required SpacerRecipe Recipe { get; init; }

    /// <summary>Half-axes of the wedge's seat on the sheet: along the tilt and across.</summary>
    public required double FootprintAlong { get; init; }
    public required double FootprintAcross { get; init; }

    /// <summary>Area of the seat less its hole, m^2.</summary>
    public required double SeatArea { get; init; }

    /// <summary>Hole in the sheet: width, and length along the tilt.</summary>
    public required double SlotWidth { get; init; }
    public required double SlotLength { get; init; }

    /// <summary>What the wedge covers beyond the end of the hole.</summary>
    public required double Cover { get; init; }

    /// <summary>Sheet, wedges and washers along the shank.</summary>
    public required double Grip { get; init; }

    /// <summary>The same without tilt and wedges.</summary>
    public required double GripSquare { get; init; }

    /// <summary>Thread left beyond the nut; null: not known.</summary>
    public required double? ThreadBeyondNut { get; init; }

    /// <summary>Largest tilt that the shank's length allows with these wedges; null: not known.</summary>
    public required double? MostTilt { get; init; }

    /// <summary>Half width of the wedge's seat across the sheet's curve; 0: flat.</summary>
    public required double SheetHalfWidth { get; init; }

    /// <summary>Gap under the wedge on a curved sheet, at its rim on the bulging face, in its middle on the hollow one; 0: flat.</summary>
    public double SheetGap => Case.Curved is { } curved ? CurvedSheet.Gap(curved.Sharper(Case.Sheet), SheetHalfWidth) : 0;

    /// <summary>Triangles of one wedge for a printer, its square face below.</summary>
    public Mesh ToPrint(double chord) => Mesh.Of(Washer.Build(), chord).Flipped();

    /// <summary>Angle between the two seats when one wedge is turned against the other about the sheet's normal.</summary>
    public double SeatError(double turned) => 2 * Math.Asin(Math.Sin(Case.Tilt.Angle) * Math.Sin(0.5 * Math.Abs(turned)));

    /// <summary>How far one wedge may be turned before the seats are this much out of parallel; half a turn: any.</summary>
    public double TurnFor(double seatError) =>
        Math.Sin(0.5 * seatError) / Math.Sin(Case.Tilt.Angle) is var sine and < 1 ? 2 * Math.Asin(sine) : Math.PI;
}

/// <summary>Both wedges from one turned spacer with one saw cut. Lengths m, angle rad.</summary>
/// <param name="Length">Between the two parallel faces.</param>
/// <param name="CutAngle">Of the cut against those faces, through the middle of the axis.</param>
/// <param name="Kerf">Saw cut and clean-up of both faces, square to the cut.</param>
public sealed record SpacerRecipe(double Outside, double Bore, double Length, double CutAngle, double Kerf)
{
    /// <summary>Height of each wedge on its axis after the cut and its clean-up.</summary>
    public double HeightLeft => 0.5 * (Length - (Kerf / Math.Cos(CutAngle)));
}
