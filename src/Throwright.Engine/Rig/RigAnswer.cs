using Throwright.Shapes;

namespace Throwright.Engine.Rig;

/// <summary>The as-built state that the readings tell.</summary>
public sealed record RigAnswer
{
    public required EquatableList<Estimate> Estimates { get; init; }

    /// <summary>Pairs of unknowns that these readings can't tell apart, with the reading that would.</summary>
    public required EquatableList<Inseparable> Inseparable { get; init; }

    /// <summary>Sum of squared deviations over their uncertainties, and whether so much can be chance (one time in a thousand).</summary>
    public required double Misfit { get; init; }
    public required bool Fits { get; init; }

    /// <summary>The reading that fits worst.</summary>
    public RigReading? Worst { get; init; }

    /// <summary>Cushions assured as rigged: read, less what hand and heat take, m; null: that knob place was not read.</summary>
    public double? CushionIn { get; init; }
    public double? CushionOut { get; init; }

    /// <summary>How far to slide the swivel away from the tip (negative: toward it) for equal cushions, m; null: both are wanted to tell.</summary>
    public double? Slide { get; init; }

    /// <summary>Cushions after it, each; and their standard uncertainty, m.</summary>
    public double? After { get; init; }
    public double? AfterError { get; init; }
}

/// <summary>What the readings say of one unknown: how far off, and its standard uncertainty.</summary>
public sealed record Estimate(UnknownOf Of, double Value, double Error);

/// <summary>Two unknowns seen only together.</summary>
public sealed record Inseparable(RigUnknown A, RigUnknown B, double Correlation);
