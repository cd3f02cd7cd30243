using Throwright.Engine.Findings;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Sources;

/// <summary>One published figure, or a band from low to high.</summary>
public sealed record Datum
{
    /// <summary>Topic and name: wire/modulus-302.</summary>
    public required string Id { get; init; }
    public required string Name { get; init; }
    public required QuantityKind Kind { get; init; }

    /// <summary>SI. Of a band without a printed nominal value: its middle, which is nobody's limit.</summary>
    public required double Value { get; init; }

    /// <summary>Ends of the band, SI; both equal <see cref="Value"/> where a single figure is printed.</summary>
    public required double Low { get; init; }
    public required double High { get; init; }

    /// <summary>As published, with its unit: "1/8 in", "0.65 to 0.75".</summary>
    public required string Text { get; init; }

    /// <summary>Unit of the publication; empty for a plain number.</summary>
    public required string Unit { get; init; }
    public required SourceRef Source { get; init; }

    /// <summary>Where the figure holds, in words; may be empty.</summary>
    public string Range { get; init; } = "";
    public string Note { get; init; } = "";
}

/// <summary>A value looked up for a calculation, and where it comes from.</summary>
/// <param name="Value">SI.</param>
public sealed record Sourced(double Value, SourceRef Source, string Note = "")
{
    /// <summary>Ends of the published band, SI; both equal the value where a single figure is printed.</summary>
    public double Low { get; init; } = Value;
    public double High { get; init; } = Value;

    internal static Sourced From(Datum datum, string note = "") =>
        new(datum.Value, datum.Source, note.Length > 0 ? note : datum.Note) { Low = datum.Low, High = datum.High };
}
