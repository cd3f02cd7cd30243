using Throwright.Engine.Findings;
using Throwright.Engine.Sources;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;
using Joint = Throwright.Shapes.Frames.Joint;

namespace Throwright.Engine.Clearance;

/// <summary>The clearance that is wanted.</summary>
/// <param name="IsOwn">The builder's own figure: less is a failure. Otherwise it is a caution, until the two touch.</param>
public sealed record ClearanceWish(Limit Least, bool IsOwn);

/// <summary>Findings on what comes near what.</summary>
public static class ClearanceRules
{
    public const string Pair = "clearance/pair";
    public const string Lever = "clearance/lever";
    public const string Conduit = "clearance/conduit";
    public const string Own = "clearance/own-cable";
    public const string Mover = "clearance/mover";
    public const string OwnSheet = "clearance/own-sheet";
    public const string Contacts = "clearance/allowed-contacts";
    public const string Skin = "clearance/open-mesh";

    private static readonly SourceRef Derived = new("project", "docs/theory/clearance.md", Evidence.Derived);

    /// <summary>
    /// A finding for each pair that is not clear, the worst first; one for all that are, which names the closest; then what was
    /// left out.
    /// </summary>
    /// <param name="pairs">All pairs of one handle.</param>
    /// <param name="wish">Over all positions, for each pair.</param>
    /// <param name="figureOf">Id of the figure that holds a pair's clearance.</param>
    public static IEnumerable<Finding> Find(
        IReadOnlyList<PairClearance> pairs, IReadOnlyList<AllowedContact> allowed, Func<PairClearance, ClearanceWish> wish, Func<PairClearance, string> figureOf, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        ArgumentNullException.ThrowIfNull(allowed);
        ArgumentNullException.ThrowIfNull(wish);
        ArgumentNullException.ThrowIfNull(say);
        // Pairs that touch: the deepest found first, a help only.
        var found = pairs.OrderBy(p => p.Lower).ThenBy(p => p.Upper).ThenByDescending(p => p.Found.Overlap)
            .Select(p => (Pair: p, Finding: OfPair(p, wish(p), say) with { Figure = figureOf(p) })).ToList();
        foreach (var (_, finding) in found.Where(f => f.Finding.Verdict != Verdict.Clear).OrderByDescending(f => f.Finding.Verdict))
            yield return finding;
        var clear = found.Where(f => f.Finding.Verdict == Verdict.Clear).ToList();
        if (clear.Count > 0)
        {
            var others = clear.Count == 1 ? "" : $" From {clear.Count - 1} other bod{(clear.Count == 2 ? "y" : "ies")} it stays farther.";
            yield return clear[0].Finding with { Why = Modelled + others + Shut(clear[0].Pair) };
        }

        foreach (var pair in pairs.Where(p => p.Enclosure == Enclosure.OpenMesh))
        {
            yield return new()
            {
                Rule = Skin,
                Verdict = Verdict.Caution,
                Sentence = $"{Names(pair)}: a scanned surface is open, so only the distance of the surfaces is proved.",
                Sources = [Derived],
                Why = "Whether a part lies wholly inside can't be told through a hole in the scan, and what the scan did not see is not in the picture: look there.",
            };
        }

        if (allowed.Count > 0)
        {
            yield return new()
            {
                Rule = Contacts,
                Verdict = Verdict.Caution,
                Sentence = "Left out because they may touch: " + string.Join("; ", allowed.Select(c =>
                    $"{c.FirstBody} {c.FirstPart} and {c.SecondBody} {c.SecondPart} ({c.Reason})")) + ".",
                Sources = [Derived],
                Why = "Nothing is proved about these parts.",
            };
        }
    }

    /// <summary>A leaning knob against the sheet that carries it: that they are near is how it is made, that they touch is not.</summary>
    public static Finding OfOwnSheet(PairClearance pair, string knob, string sheet, string figure, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(pair);
        ArgumentNullException.ThrowIfNull(say);
        var (verdict, sentence) = pair.Hits ? (Verdict.Fail, $"{knob} leans into its own sheet, {sheet}{At(pair, say)}: a longer shank is needed.")
            : pair.Lower > 0 ? (Verdict.Clear, $"{knob}, leaning, stays at least {say.Length(pair.Lower, Rounding.Down)} in front of its own sheet.")
            : (Verdict.Caution, $"{knob} leans so near its own sheet that it can't be told yet whether they touch.");
        return new() { Rule = OwnSheet, Verdict = verdict, Sentence = sentence, Figure = figure, Sources = [Derived], Why = "The shank passes its own hole and is left out; so is the hand, whose fingers reach over the knob from the front." };
    }

    private static Finding OfPair(PairClearance pair, ClearanceWish wish, FigureWriter say)
    {
        var least = wish.Least;
        var limit = new FigureLimit(least.Value, QuantityKind.Length, true);
        var wanted = $"wanted {say.Length(least.Value)}";
        // Pilots have full and unrestricted movement of each control, without interference from clothing or structure.
        var unrestricted = Published.Rule("23.777(b)").Source;
        // Written so that a figure that is no number is never clear. Touching fails whatever is wanted.
        var (verdict, sentence, why) =
            pair.Enclosure == Enclosure.Inside
                ? (Verdict.Fail, $"{Names(pair)}: one lies inside the other.", "")
            : pair.Hits
                ? (Verdict.Fail, $"{Names(pair)} touch{At(pair, say)}.", pair.Found.Overlap > 0 ? $"{Parts(pair)} There they overlap by about {say.Length(pair.Found.Overlap, Rounding.Up)}: a help, not a proven greatest depth." : Parts(pair))
            : pair.Upper < least.Value
                ? (wish.IsOwn ? Verdict.Fail : Verdict.Caution, $"{Names(pair)} come as near as {say.Length(pair.Upper, Rounding.Down)}{At(pair, say)}, {wanted}; at least {say.Length(pair.Lower, Rounding.Down)} is proved.", Parts(pair))
            : pair.Lower >= least.Value && pair.Lower > 0
                ? (Verdict.Clear, $"{Names(pair)} stay at least {say.Length(pair.Lower, Rounding.Down)} apart in every position, {wanted}.", Modelled)
                : (Verdict.Caution, $"{Names(pair)}: can't tell yet whether they stay {say.Length(least.Value)} apart; at least {say.Length(pair.Lower, Rounding.Down)} is proved.", Unsettled(pair, say));
        return new()
        {
            Rule = Pair,
            Verdict = verdict,
            Sentence = sentence,
            Limit = limit,
            Sources = verdict == Verdict.Fail ? [unrestricted, least.Source] : [least.Source, Derived],
            Why = $"{why}{Shut(pair)}".TrimStart(),
        };
    }

    private const string Modelled = "Rigid bodies as entered: flexing, clothing, hands and conduits whose way the file does not say are not in it.";

    private static string Unsettled(PairClearance pair, FigureWriter say) => pair.Found.Ended switch
    {
        SearchEnd.OutOfBudget => "The search was stopped by its budget: a larger one settles it.",
        SearchEnd.Cancelled => "The search was stopped: let it run to the end.",
        SearchEnd.Enough => "The search was asked for less than is wanted here: raise the distance of interest.",
        _ => $"The nearest found is {say.Length(pair.Upper, Rounding.Down)}, within the tolerance of what is wanted: a smaller tolerance settles it.",
    };

    internal static string Names(PairClearance pair) => $"{pair.First.Name} and {pair.Second.Name}";

    private static string Parts(PairClearance pair) => $"{pair.First.Name} {pair.Found.FirstPart} against {pair.Second.Name} {pair.Found.SecondPart}.";

    /// <summary>What limits were counted that joints have together: they hold only as far as the stops do.</summary>
    private static string Shut(PairClearance pair)
    {
        var gates = pair.First.Joints.Gates.Concat(pair.Second.Joints.Gates).Select(g => g.Name).Distinct().ToList();
        return gates.Count == 0 ? "" : $" Not counted are positions that the file's gates shut out ({string.Join("; ", gates)}): they hold only as long as those stops do.";
    }

    /// <summary>" with pitch at 12.0°, pull at 30.0 mm, turn going along at 40.0°".</summary>
    public static string At(PairClearance pair, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(pair);
        ArgumentNullException.ThrowIfNull(say);
        if (pair.Found.Joints.Count == 0)
            return "";
        string Place(Joint joint, double at) => joint.Kind == JointKind.Turn ? say.Angle(at) : say.Length(at);
        var along = pair.Taken.Select(t => $"{t.Joint.Name} going along at {Place(t.Joint, t.At)}");
        return " with " + string.Join(", ", pair.Found.Joints.Zip(pair.Found.Positions, (joint, at) => $"{joint.Name} at {Place(joint, at)}").Concat(along));
    }
}
