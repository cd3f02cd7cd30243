using Throwright.Engine.Findings;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Heat;

/// <summary>Findings on heat.</summary>
public static class HeatRules
{
    public const string Parts = "heat/parts";
    public const string Cabin = "heat/cabin";

    public static IEnumerable<Finding> Find(HeatAnswer answer, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(say);
        if (answer.Rows.Count == 0)
            yield break;
        // The worst part speaks; the others stand in the table.
        var worst = answer.Rows.OrderByDescending(r => r.Verdict).ThenBy(r => (r.Stands ?? double.PositiveInfinity) - r.Part.Hottest).First();
        var others = answer.Rows.Count(r => r.Verdict == worst.Verdict && r != worst);
        var part = worst.Part;
        var hot = $"{part.Zone} gets {FigureText.Plain(part.Hottest, 0, Rounding.Up)} °C hot";
        yield return new()
        {
            Rule = Parts,
            Verdict = worst.Verdict,
            Sentence = worst.Stands is { } stands && double.IsFinite(stands)
                ? $"The {part.Name}{(part.Material.Length > 0 ? $" of {part.Material}" : "")} stands {FigureText.Plain(stands, 0, Rounding.Down)} °C; {hot}{(others > 0 && worst.Verdict != Verdict.Clear ? $"; {others} more like it" : "")}."
                : $"The {part.Name} of {part.Material}: {worst.Why}; {hot}.",
            Limit = worst.Stands is { } limit && double.IsFinite(limit) ? new(limit, QuantityKind.Temperature, false) : null,
            Sources = worst.Sources,
            Why = worst.Stands is null ? "" : worst.Why,
        };
    }
}
