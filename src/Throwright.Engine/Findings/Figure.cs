using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Findings;

/// <summary>A number the tool shows, with everything needed to explain it.</summary>
public sealed record Figure
{
    /// <summary>Id within the run: words with hyphens, e.g. cushion-out.</summary>
    public required string Id { get; init; }

    /// <summary>What it is, e.g. "knob cushion, out".</summary>
    public required string Name { get; init; }

    /// <summary>Of a least distance: of what from what; empty: another kind of figure.</summary>
    public string Between { get; init; } = "";
    public required QuantityKind Kind { get; init; }

    /// <summary>Nominal value, SI.</summary>
    public required double Value { get; init; }

    /// <summary>True extremes over all toleranced inputs, SI; null where none were asked for.</summary>
    public double? Least { get; init; }
    public double? Most { get; init; }

    /// <summary>95 % of installations built to these tolerances lie between, SI.</summary>
    public double? Low95 { get; init; }
    public double? High95 { get; init; }

    /// <summary>What is left (shown rounded down) or what is demanded (shown rounded up).</summary>
    public Rounding Rounding { get; init; } = Rounding.Nearest;

    /// <summary>The formula in letters.</summary>
    public required string Formula { get; init; }

    /// <summary>Each letter: what it stands for, its value, where it comes from.</summary>
    public EquatableList<FigureStep> Inputs { get; init; } = [];

    /// <summary>Values on the way, in order.</summary>
    public EquatableList<FigureStep> Steps { get; init; } = [];
    public EquatableList<SourceRef> Sources { get; init; } = [];

    /// <summary>Range in which the formula holds, and how the worst case was proven.</summary>
    public string Holds { get; init; } = "";

    /// <summary>How the extremes were found, e.g. "proven at a corner of 14 tolerances".</summary>
    public string Uncertainty { get; init; } = "";

    /// <summary>How much each toleranced input can move the figure, largest first.</summary>
    public EquatableList<Share> Shares { get; init; } = [];
}

/// <summary>One letter of a formula, or one intermediate value.</summary>
public sealed record FigureStep(string Letter, string Name, double Value, QuantityKind Kind, double Minus = 0, double Plus = 0, string From = "");

/// <summary>How far one input moves a figure over its own limits, SI of the figure.</summary>
public sealed record Share(string Input, string Path, double Moves);
