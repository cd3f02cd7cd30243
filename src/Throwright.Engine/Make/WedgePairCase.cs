using Throwright.Engine.Model;

namespace Throwright.Engine.Make;

/// <summary>Everything that shapes a pair of wedges. Lengths m, angles rad.</summary>
/// <param name="Shank">Diameter that passes through sheet and wedges.</param>
/// <param name="Sheet">Thickness of the sheet.</param>
/// <param name="NutSeat">Width of the nut, or of its washer, that sits on a wedge.</param>
public sealed record WedgePairCase(Tilt Tilt, double Shank, double Sheet, double NutSeat)
{
    /// <summary>Outside of the wedges; null: the nut's seat and a margin.</summary>
    public double? Outside { get; init; }

    /// <summary>Wanted thin edge; null: the least of the stock.</summary>
    public double? ThinEdge { get; init; }

    public WedgeStock Stock { get; init; } = WedgeStock.Metal;
    public WedgeKey Key { get; init; } = WedgeKey.Pin;

    /// <summary>Total clearance of the shank in wedge and sheet.</summary>
    public double Clearance { get; init; } = 0.4e-3;

    public double Chamfer { get; init; }
    public double PinDiameter { get; init; } = 3e-3;
    public double PinDepth { get; init; } = 2e-3;

    /// <summary>Distance from the shank's axis to its flat, for <see cref="WedgeKey.Flat"/>.</summary>
    public double ShankFlat { get; init; }

    /// <summary>Saw cut and clean-up of both cut faces, square to the cut.</summary>
    public double Kerf { get; init; } = 2e-3;

    /// <summary>Washers in the stack besides the wedges.</summary>
    public double Washers { get; init; }
    public double NutHeight { get; init; }

    /// <summary>Pitch of the shank's thread; 0: not known.</summary>
    public double ThreadPitch { get; init; }

    /// <summary>Length from the shoulder to the end of the thread; null: not known.</summary>
    public double? UsableLength { get; init; }

    /// <summary>Null: flat.</summary>
    public CurvedSheet? Curved { get; init; }
}
