using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>Hands the clearance of one run's handle to the rules, and makes its figures.</summary>
internal static class ClearanceFindings
{
    public const string NotRead = "clearance/not-read";

    /// <summary>Of every proved distance.</summary>
    public const string Formula = "d = min over all joint positions q of |b - a|;  for any direction n:  d >= min n.b(q) - max n.a(q), over boxes of q that cover all of them";

    private static readonly SourceRef Theory = new("project", "docs/theory/clearance.md", Evidence.Derived);

    public static IEnumerable<Finding> Of(RunAnswer answer, FigureWriter say)
    {
        if (answer.Clearance is not { Handle: { } handle } clearance)
            yield break;
        var wish = CockpitCheck.WishOf(answer.Run);
        foreach (var finding in ClearanceRules.Find(clearance.Pairs, clearance.Allowed, _ => wish, clearance.FigureOf, say))
        {
            yield return handle.TurnIsAssumed && finding.Rule == ClearanceRules.Pair
                ? finding with { Why = $"{finding.Why} The file does not say how far the handle turns (cockpitEnd.turns): every turn is counted.".TrimStart() }
                : finding;
        }

        if (clearance.OwnSheet is { } sheet)
            yield return ClearanceRules.OfOwnSheet(sheet, $"{handle.Name} knob", sheet.Second.Name, RunClearance.FigureOf("own sheet"), say);
        // Where inside can't be told from outside, that was said of the pair.
        var told = clearance.Pairs.Where(p => p.Enclosure == Enclosure.OpenMesh).SelectMany(p => (string[])[p.First.Name, p.Second.Name]).ToHashSet();
        foreach (var finding in MeshFindings.Of(clearance.Meshes, told, say))
            yield return finding;
        foreach (var left in clearance.NotRead.Select(l => l.ToString()))
        {
            yield return new()
            {
                Rule = NotRead,
                Verdict = Verdict.NeedsInput,
                Sentence = $"{char.ToUpperInvariant(left[0])}{left[1..]}.",
                Why = "What is not in the picture can't be proved clear.",
            };
        }
    }

    public static IEnumerable<Figure> Figures(RunAnswer answer)
    {
        if (answer.Clearance is not { } clearance)
            yield break;
        var wish = CockpitCheck.WishOf(answer.Run);
        foreach (var pair in clearance.Pairs.OrderBy(p => p.Lower).ThenBy(p => p.Upper))
            yield return Of(pair, clearance.FigureOf(pair), $"the handle from {clearance.Other(pair)}", wish, "");

        if (clearance.OwnSheet is { } sheet)
            yield return Of(sheet, RunClearance.FigureOf("own sheet"), "the leaning knob from its own sheet", wish with { Least = wish.Least with { Value = 0, Source = Theory } }, "only what may be off about the shank's length is added: the hole goes with its sheet");
        foreach (var figure in MeshFindings.Figures(clearance.Meshes))
            yield return figure;
    }

    /// <summary>The figure of one pair.</summary>
    /// <param name="between">"the handle from yoke".</param>
    /// <param name="holds">What else it rests on; empty: nothing.</param>
    internal static Figure Of(PairClearance pair, string id, string between, ClearanceWish wish, string holds)
    {
        var found = pair.Found;
        return new()
        {
            Id = id,
            Name = $"least distance of {between}, over all positions",
            Between = between,
            Kind = QuantityKind.Length,
            Value = pair.Lower,
            Rounding = Rounding.Down,
            Formula = Formula,
            // Proved in one glance, no place was looked at.
            Inputs = found.FirstPart.Length == 0 ? [] :
            [
                .. found.Joints.Zip(found.Positions, (joint, at) => new FigureStep(
                    "q",
                    $"{joint.Name} where they come nearest, and the way it has left up and down",
                    at,
                    joint.Kind == JointKind.Turn ? QuantityKind.Angle : QuantityKind.Length,
                    at - joint.From,
                    joint.To - at)),
            ],
            Steps =
            [
                .. found.FirstPart.Length == 0 ? [] : pair.Taken.Select(t => new FigureStep("q", $"{t.Joint.Name}, which {t.Joint.Free.Name} takes along", t.At, t.Joint.Kind == JointKind.Turn ? QuantityKind.Angle : QuantityKind.Length)),
                .. found.FirstPart.Length == 0 ? [] : Point("a", $"{pair.First.Name} {found.FirstPart}", found.OnFirst),
                .. found.FirstPart.Length == 0 ? [] : Point("b", $"{pair.Second.Name} {found.SecondPart}", found.OnSecond),
                .. found.Overlap > 0 ? [new("o", "overlap found there, a help and not a proven greatest depth", found.Overlap, QuantityKind.Length)] : Array.Empty<FigureStep>(),
                // Beyond the distance of interest nothing nearer was looked for, so what was found says little.
                .. found.Ended != SearchEnd.Enough && double.IsFinite(pair.Upper) ? [new("u", "nearest that was found, at the positions above", pair.Upper, QuantityKind.Length)] : Array.Empty<FigureStep>(),
                new("dw", "wanted", wish.Least.Value, QuantityKind.Length),
            ],
            Sources = [Theory, wish.Least.Source],
            Holds = "rigid bodies as entered, with the tolerances of their places added all round; flexing, clothing beyond \"allow\", hands and conduits whose way the file does not say are not in it" + (holds.Length > 0 ? $"; {holds}" : "") + (pair.First.Joints.Gates.Count + pair.Second.Joints.Gates.Count > 0 ? "; positions that the file's gates shut out are not counted" : ""),
            Uncertainty = How(found),
        };
    }

    private static IEnumerable<FigureStep> Point(string letter, string name, Vector3 at) =>
    [
        new($"{letter}1", $"{name}: station", at.X, QuantityKind.Length),
        new($"{letter}2", $"{name}: buttline", at.Y, QuantityKind.Length),
        new($"{letter}3", $"{name}: waterline", at.Z, QuantityKind.Length),
    ];

    private static string How(LeastDistanceResult found) => found.Ended switch
    {
        SearchEnd.Converged => $"proved with {found.Boxes} boxes of joint positions; the upper figure is attained at the positions above",
        SearchEnd.Enough => $"proved with {found.Boxes} boxes to be at least this; not worked out closer",
        SearchEnd.Hits => $"found touching after {found.Boxes} boxes",
        SearchEnd.OutOfBudget => $"stopped after {found.Boxes} boxes: the least figure is proved, the nearest place may not be found yet",
        SearchEnd.Cancelled => $"stopped by you after {found.Boxes} boxes: the least figure is proved, the nearest place may not be found yet",
        _ => $"settled with {found.Boxes} boxes of joint positions",
    };
}
