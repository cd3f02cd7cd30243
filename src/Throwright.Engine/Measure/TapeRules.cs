using Throwright.Engine.Findings;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Measure;

/// <summary>Findings on a point found by tape.</summary>
public static class TapeRules
{
    public const string Point = "measure/point";
    public const string Readings = "measure/readings";

    private static readonly SourceRef Derived = new("project", "docs/theory/measure.md", Evidence.Derived);

    /// <param name="mostSigma">Standard deviation along the worst axis that will do, m.</param>
    public static IEnumerable<Finding> Find(TapeAnswer answer, Limit mostSigma, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(mostSigma);
        ArgumentNullException.ThrowIfNull(say);
        if (answer.Point is not { } point)
        {
            yield return new()
            {
                Rule = Point,
                Verdict = Verdict.NeedsInput,
                Sentence = answer.Refusal!.Say(say),
                Sources = [Derived],
            };
            yield break;
        }

        // What the tape's limits make of the place says nothing while one of the readings is wrong.
        var agree = point.Suspects.Count == 0;
        var worst = point.Axes[0].Sigma;
        var fine = agree && worst <= mostSigma.Value;
        yield return new()
        {
            Rule = Point,
            Verdict = fine ? Verdict.Clear : Verdict.Caution,
            Sentence = agree
                ? $"The point is known to {say.Length(2 * worst, Rounding.Up)} along its worst axis (two standard deviations), wanted {say.Length(2 * mostSigma.Value)}."
                : $"How well the point is known can't be told while its readings disagree, wanted {say.Length(2 * mostSigma.Value)}; what rests on its place is no better.",
            Figure = "point-uncertainty",
            Limit = new(mostSigma.Value, QuantityKind.Length, false),
            Sources = [mostSigma.Source, Derived],
            Remedies = agree && !fine && point.Next is { } next ? [new($"Measure from {next.From.Name} too: {say.Length(2 * next.Sigma, Rounding.Up)} along the worst axis.")] : [],
        };

        var named = string.Join(", ", point.Suspects.Select(s => s.Name));
        yield return new()
        {
            Rule = Readings,
            Verdict = point.Redundant > 0 && point.Suspects.Count == 0 ? Verdict.Clear : Verdict.Caution,
            Sentence = point.Redundant == 0 ? "Three readings give the point but nothing checks them."
                : point.Suspects.Count == 0 ? "The readings agree with each other."
                : point.Suspects.Count == 1 ? $"{char.ToUpperInvariant(named[0])}{named[1..]} disagrees with the others: if it alone is wrong, it reads {say.Length(Math.Abs(Error(point)))} too {(Error(point) > 0 ? "long" : "short")}."
                : $"The readings disagree, and any of these may be the wrong one, the likeliest first: {named}.",
            Sources = [Derived],
            Remedies = point.Redundant == 0 ? [new("Measure a fourth distance, from a point off the plane of the other three.")]
                : point.Suspects.Count == 0 ? []
                : [new(point.Suspects.Count == 1 ? $"Measure {named} again." : "Measure these again, and one more distance.")],
        };
    }

    private static double Error(TapedPoint point) => point.Residuals.First(r => r.Reading == point.Suspects[0]).Error;
}
