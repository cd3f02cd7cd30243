using Throwright.Engine.Model;

namespace Throwright.Engine.Order;

/// <summary>What an order of one run is made of.</summary>
public sealed record OrderCase
{
    public required Run Run { get; init; }
    public required string Name { get; init; }

    /// <summary>Conduit length to order, m, and bare wire beyond it at the device with its tail, m; null: not worked out.</summary>
    public double? Conduit { get; init; }
    public double? BareWire { get; init; }

    /// <summary>Whole core to order, m, where the lie of the conduit gives it; null: the maker cuts it by the two above.</summary>
    public double? Wire { get; init; }

    /// <summary>Coldest and hottest along the run, degC; null: not known.</summary>
    public double? Coldest { get; init; }
    public double? Hottest { get; init; }
    public double? EngineBay { get; init; }

    /// <summary>Largest pull and push of the core, N; null: not worked out.</summary>
    public double? Pull { get; init; }
    public double? Push { get; init; }
    public double? TightestBend { get; init; }
    public double? LetterHeight { get; init; }

    /// <summary>Station of knob and device, m; null: not known.</summary>
    public double? KnobStation { get; init; }
    public double? DeviceStation { get; init; }

    /// <summary>Pieces cut from sheet and rod, with their sizes.</summary>
    public Throwright.Shapes.EquatableList<CutLine> Made { get; init; } = [];
}
