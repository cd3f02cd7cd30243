using Throwright.Engine.Findings;
using Throwright.Shapes;

namespace Throwright.Engine.Maintain;

/// <summary>What to look at, when, and what to do; and how the readings drift.</summary>
public sealed record MaintainAnswer(EquatableList<InspectionItem> Items, EquatableList<Drift> Drifts);

/// <summary>One item of the inspection.</summary>
public sealed record InspectionItem(string What, string Limit, string When, string Act, EquatableList<SourceRef> Sources);

/// <summary>One reading over time.</summary>
/// <param name="Points">Year (with its fraction) and value, SI.</param>
/// <param name="PerYear">Straight line through them; null: fewer than two.</param>
/// <param name="ReachesLimit">Year in which that line meets a limit; null: not within ten years of the last.</param>
public sealed record Drift(string Name, string Reading, EquatableList<(double Year, double Value)> Points, double? Least, double? Most, double? PerYear, double? ReachesLimit);
