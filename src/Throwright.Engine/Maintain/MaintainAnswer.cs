using Throwright.Engine.Findings;
using Throwright.Shapes;

namespace Throwright.Engine.Maintain;

/// <summary>What to look at, when, and what to do; and how the readings drift.</summary>
public sealed record MaintainAnswer(EquatableList<InspectionItem> Items, EquatableList<Drift> Drifts, EquatableList<HistoryEntry> History);

/// <summary>One item of the inspection.</summary>
public sealed record InspectionItem(string What, string Limit, string When, string Act, EquatableList<SourceRef> Sources);

/// <summary>One dated entry: who, what was done, and how far each reading moved since the entry before.</summary>
public sealed record HistoryEntry(string Date, string By, string Note, bool Rerigged, EquatableList<ReadingChange> Changes);

/// <summary>One reading of an entry.</summary>
/// <param name="Change">Since the last entry that has it, SI; null: the first.</param>
public sealed record ReadingChange(string Name, string Reading, double Value, double? Change);

/// <summary>When a reading asks for something to be done.</summary>
public enum DriftState
{
    /// <summary>Fewer than two readings since the last rerigging: nothing can be said.</summary>
    TooFew,

    /// <summary>What it moves is no more than the error of reading it.</summary>
    Still,

    /// <summary>It drifts, and meets no limit within ten years.</summary>
    Drifts,

    /// <summary>It drifts and meets a limit: act at the inspection before.</summary>
    MeetsLimit,

    /// <summary>The newest reading is outside its limits: act before the next flight.</summary>
    Outside,
}

/// <summary>One reading over time.</summary>
/// <param name="Points">Year (with its fraction) and value, SI.</param>
/// <param name="PerYear">Straight line through those since the last rerigging; null: fewer than two.</param>
/// <param name="ReachesLimit">Year in which that line meets a limit; null: not within ten years of the last, or no more than the error of reading.</param>
public sealed record Drift(string Name, string Reading, EquatableList<(double Year, double Value)> Points, double? Least, double? Most, double? PerYear, double? ReachesLimit)
{
    /// <summary>Index of the first point that the line goes through: the newest rerigging.</summary>
    public int From { get; init; }

    /// <summary>Twice the standard error of the slope by the error of reading, SI per year; null: no slope.</summary>
    public double? PerYearError { get; init; }

    public DriftState State =>
        Points[^1].Value is var newest && ((Least is { } least && newest < least) || (Most is { } most && newest > most)) ? DriftState.Outside
        : PerYear is not { } rate ? DriftState.TooFew
        : ReachesLimit is not null ? DriftState.MeetsLimit
        : Math.Abs(rate) <= PerYearError ? DriftState.Still
        : DriftState.Drifts;
}
