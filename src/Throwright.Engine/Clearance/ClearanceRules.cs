using Throwright.Engine.Findings;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Clearance;

/// <summary>Findings on what comes near what.</summary>
public static class ClearanceRules
{
    public const string Pair = "clearance/pair";
    public const string Contacts = "clearance/allowed-contacts";
    public const string Skin = "clearance/open-mesh";

    private static readonly SourceRef Derived = new("project", "docs/theory/clearance.md", Evidence.Derived);

    // The pilot has full and unrestricted movement of each control, without interference from clothing or structure.
    private static readonly SourceRef Unrestricted = new("14cfr-23-777", "(b)", Evidence.Read);

    /// <summary>One finding for each pair, the closest first; then what was left out.</summary>
    /// <param name="least">Clearance wanted over all positions, m.</param>
    public static IEnumerable<Finding> Find(CockpitClearance cockpit, Limit least, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(cockpit);
        ArgumentNullException.ThrowIfNull(least);
        ArgumentNullException.ThrowIfNull(say);
        foreach (var pair in cockpit.Pairs.OrderBy(p => p.Lower).ThenBy(p => p.Upper))
        {
            yield return OfPair(pair, least, say);
            if (pair.Enclosure == Enclosure.OpenMesh)
            {
                yield return new()
                {
                    Rule = Skin,
                    Verdict = Verdict.Caution,
                    Sentence = $"{Names(pair)}: a scanned surface is open, so only the distance of the surfaces is proved.",
                    Sources = [Derived],
                    Why = "Whether a part lies wholly inside can't be told through a hole in the scan: look at it.",
                };
            }
        }

        if (cockpit.Case.Allowed.Count > 0)
        {
            yield return new()
            {
                Rule = Contacts,
                Verdict = Verdict.Caution,
                Sentence = "Left out because they may touch: " + string.Join("; ", cockpit.Case.Allowed.Select(c =>
                    $"{c.FirstBody} {c.FirstPart} and {c.SecondBody} {c.SecondPart} ({c.Reason})")) + ".",
                Sources = [Derived],
                Why = "Nothing is proved about these parts.",
            };
        }
    }

    private static Finding OfPair(PairClearance pair, Limit least, FigureWriter say)
    {
        var limit = new FigureLimit(least.Value, QuantityKind.Length, true);
        var wanted = say.Length(least.Value);
        // Written so that a figure that is no number is never clear. Touching fails whatever is wanted.
        var (verdict, sentence, why) =
            pair.Enclosure == Enclosure.Inside
                ? (Verdict.Fail, $"{Names(pair)}: one lies inside the other.", "")
            : pair.Hits
                ? (Verdict.Fail, $"{Names(pair)} touch{At(pair, say)}.", pair.Found.Overlap > 0 ? $"There they overlap by about {say.Length(pair.Found.Overlap, Rounding.Up)}: a help, not a proven greatest depth." : "")
            : pair.Upper < least.Value
                ? (Verdict.Fail, $"{Names(pair)} come as near as {say.Length(pair.Upper, Rounding.Down)}{At(pair, say)}, wanted {wanted}.", Parts(pair))
            : pair.Lower >= least.Value && pair.Lower > 0
                ? (Verdict.Clear, $"{Names(pair)} stay at least {say.Length(pair.Lower, Rounding.Down)} apart in every position, wanted {wanted}.", Modelled)
                : (Verdict.Caution, $"{Names(pair)}: can't tell yet whether they stay {wanted} apart; at least {say.Length(pair.Lower, Rounding.Down)} is proved.", Unsettled(pair, say));
        return new()
        {
            Rule = Pair,
            Verdict = verdict,
            Sentence = sentence,
            Figure = "clearance",
            Limit = limit,
            Sources = verdict == Verdict.Fail ? [Unrestricted, least.Source] : [least.Source, Derived],
            Why = why,
        };
    }

    private const string Modelled = "Rigid bodies as entered: flexing, clothing, hands and the bow of cables are not in it.";

    private static string Unsettled(PairClearance pair, FigureWriter say) => pair.Found.Ended switch
    {
        SearchEnd.OutOfBudget => "The search was stopped by its budget: a larger one settles it.",
        SearchEnd.Cancelled => "The search was stopped: let it run to the end.",
        SearchEnd.Enough => "The search was asked for less than is wanted here: raise the distance of interest.",
        _ => $"The nearest found is {say.Length(pair.Upper, Rounding.Down)}, within the tolerance of what is wanted: a smaller tolerance settles it.",
    };

    private static string Names(PairClearance pair) => $"{pair.First.Name} and {pair.Second.Name}";

    private static string Parts(PairClearance pair) => $"Nearest: {pair.First.Name} {pair.Found.FirstPart} and {pair.Second.Name} {pair.Found.SecondPart}.";

    /// <summary>" with pitch at 12.0°, pull at 30.0 mm".</summary>
    private static string At(PairClearance pair, FigureWriter say) => pair.Found.Joints.Count == 0 ? "" : " with " + string.Join(
        ", ",
        pair.Found.Joints.Zip(pair.Found.Positions, (joint, at) => $"{joint.Name} at {(joint.Kind == JointKind.Turn ? say.Angle(at) : say.Length(at))}"));
}
