using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Model;

/// <summary>One rigging or inspection of a run: what was measured on the aircraft. What was not measured is null.</summary>
public sealed record AsBuilt
{
    /// <summary>Year-month-day.</summary>
    public required string Date { get; init; }
    public string By { get; init; } = "";
    public string Note { get; init; } = "";

    /// <summary>Something was moved or replaced just before: drift counts anew from here.</summary>
    public bool Rerigged { get; init; }

    /// <summary>In the shop, at that moment.</summary>
    public Temperature? Temperature { get; init; }

    /// <summary>Knob from its IN stop with the device pushed against its push stop, light hand; pulled against its pull stop.</summary>
    public Length? KnobAtPush { get; init; }
    public Length? KnobAtPull { get; init; }

    /// <summary>Swivel to conduit tip, device on its pull stop.</summary>
    public Length? TipGap { get; init; }

    /// <summary>Knob movement at a reversal until the device follows, at mid travel.</summary>
    public Length? LostMotion { get; init; }

    /// <summary>Arm from stop to stop.</summary>
    public Angle? Sweep { get; init; }

    /// <summary>Slow pull and push at mid travel.</summary>
    public Force? Pull { get; init; }
    public Force? Push { get; init; }

    /// <summary>Pull on the wire at the device that the set control held without creeping.</summary>
    public Force? Hold { get; init; }
}
