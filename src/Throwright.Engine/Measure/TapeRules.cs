using Throwright.Engine.Findings;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Measure;

/// <summary>Findings on a point found by tape.</summary>
public static class TapeRules
{
    public const string Point = "measure/point";
    public const string Readings = "measure/readings";

    private static readonly SourceRef Derived = new("project", "docs/theory/measure.md", Evidence.Derived);

    private static readonly SourceRef Widening = new("pdg", "unconstrained averaging: S = sqrt(chi-square / (N - 1))", Evidence.Secondary);

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

        var agree = point.Suspects.Count == 0 && point.Widened <= 1;
        var worst = point.Axes[0].Sigma;
        var fine = agree && worst <= mostSigma.Value;
        var known = $"{say.Length(2 * worst, Rounding.Up)} along its worst axis (two standard deviations), wanted {say.Length(2 * mostSigma.Value)}";
        // No reading shows a wrong side: only whoever stands before the aircraft sees it.
        var mirror = point.Mirror is { } m
            ? $" Its readings fit as well at {NoPoint.Numbers(m, say)} {say.LengthUnitName}: the side in the file, or the coordinates noted, chose this place; look that it is the right one."
            : "";
        yield return new()
        {
            Rule = Point,
            Verdict = fine ? Verdict.Clear : Verdict.Caution,
            Sentence = agree
                ? $"The point is known to {known}.{mirror}"
                : $"The readings disagree, so what the tape's limits give is widened {FigureText.Plain(point.Widened, 1, Rounding.Up)} times: {known}. "
                    + $"What rests on it counts with ± {say.LengthNumber(point.Off.X, Rounding.Up)} {say.LengthNumber(point.Off.Y, Rounding.Up)} {say.LengthNumber(point.Off.Z, Rounding.Up)} {say.LengthUnitName} along station, buttline, waterline.{mirror}",
            Figure = "point-uncertainty",
            Limit = new(mostSigma.Value, QuantityKind.Length, false),
            Sources = agree ? [mostSigma.Source, Derived] : [mostSigma.Source, Widening, Derived],
            Remedies = agree && !fine && point.Next is { } next ? [new($"Measure from {next.From.Name} too: {say.Length(2 * next.Sigma, Rounding.Up)} along the worst axis.")] : [],
        };

        yield return new()
        {
            Rule = Readings,
            Verdict = point.Redundant > 0 && agree ? Verdict.Clear : Verdict.Caution,
            Sentence = point.Redundant == 0 ? "Three readings give the point but nothing checks them."
                : agree ? "The readings agree with each other."
                : point.Suspects.Count == 0 ? "The readings disagree a little more than their limits allow, and no single one is to blame: the tape's limits, or the known points', are wider than the file says."
                : point.Suspects.Count == 1 ? $"{Capital(point.Suspects[0].Reading.Name)} disagrees with the others: if it alone is wrong, it reads {Wrong(point.Suspects[0], say)}."
                : $"The readings disagree, and which of these is wrong can't be told, the likeliest first: {string.Join(", or ", point.Suspects.Select(s => $"{s.Reading.Name}, which then reads {Wrong(s, say)}"))}.",
            Sources = [Derived],
            Remedies = point.Redundant == 0 ? [new("Measure a fourth distance, from a point off the plane of the other three.")] : agree ? [] : [.. Again(point, say)],
        };
    }

    private static IEnumerable<Remedy> Again(TapedPoint point, FigureWriter say)
    {
        if (point.Suspects is [])
        {
            yield return new("Measure all of them again, or give the tape the limits it has.");
            yield break;
        }

        yield return new($"Measure {string.Join(" and ", point.Suspects.Select(s => s.Reading.Name))} again.");
        if (point.Suspects is not [var first, var second, ..])
            yield break;
        yield return new(point.Telling is { } telling
            ? $"Or measure from {telling.From.Name} to this point: {say.Length(telling.IfFirst)} if {first.Reading.Name} is wrong, {say.Length(telling.IfSecond)} if {second.Reading.Name} is."
            : $"Or measure one more distance, from a mark {Way(second.Place - first.Place)} of this point: there the two places lie {say.Length((second.Place - first.Place).Size)} apart. None of the known points left would tell.");
    }

    /// <summary>The coordinate direction along which the two places differ most.</summary>
    private static string Way(Vector3 apart)
    {
        var (x, y, z) = (Math.Abs(apart.X), Math.Abs(apart.Y), Math.Abs(apart.Z));
        return x >= y && x >= z ? "straight fore or aft" : y >= z ? "straight left or right" : "straight above or below";
    }

    private static string Wrong(Suspect suspect, FigureWriter say) => $"{say.Length(Math.Abs(suspect.Error))} too {(suspect.Error > 0 ? "long" : "short")}";

    private static string Capital(string text) => $"{char.ToUpperInvariant(text[0])}{text[1..]}";
}
