using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;

namespace Throwright.Engine.Prove;

/// <summary>Markings of two controls that a hurried eye takes for each other: 14 CFR 23.1555(a), 23.777(a).</summary>
public static class LabelsApart
{
    public const string Rule = "prove/marks-apart";

    /// <summary>A word counts as short for another from this many letters on: CARB for CARBURETTOR.</summary>
    private const int ShortFrom = 3;

    private static readonly SourceRef Practice = new("common-practice", "judgement", Evidence.CommonPractice);

    /// <summary>How alike two markings are, the worst last.</summary>
    private enum Likeness
    {
        Apart,
        OneLetter,
        Within,
        Same,
    }

    /// <summary>At most one finding: the other markings that are most like this one's.</summary>
    public static Finding? Find(Run run, IEnumerable<Run> all)
    {
        ArgumentNullException.ThrowIfNull(run);
        var like = all.Where(r => r.Id != run.Id).Select(r => (Run: r, How: Of(run.Label, r.Label))).Where(l => l.How != Likeness.Apart).ToList();
        if (like.Count == 0)
            return null;
        var worst = like.Max(l => l.How);
        var named = like.Where(l => l.How == worst).Select(l => l.Run).ToList();
        var others = string.Join(", ", named.Select(r => worst == Likeness.Same && r.Label == run.Label ? r.Id : $"{r.Id} ({r.Label})"));
        return new()
        {
            Rule = Rule,
            Verdict = Verdict.Caution,
            Sentence = worst switch
            {
                Likeness.Same => $"{run.Label} is marked on more than one control: {run.Id} and {others}.",
                Likeness.Within => $"{run.Label} and the marking of {others} differ only by a word that one of them lacks.",
                _ => $"{run.Label} and the marking of {others} differ by one letter.",
            },
            Why = (worst == Likeness.Same ? "A mark that two controls share does not tell the function of either. " : "That marks so alike are mistaken for each other is common practice, no published rule. ")
                + "Two handles of one device may carry one mark; else give each its own words, shape and place.",
            Sources = [Published.Rule("23.1555(a)").Source, Published.Rule("23.777(a)").Source, .. worst == Likeness.Same ? (SourceRef[])[] : [Practice]],
            Remedies = worst == Likeness.Same ? [new("Give each mark the word that says what it works, engrave it so, and type it into label.")] : [],
        };
    }

    /// <summary>Other runs that the finding of this one names, or that have as like a marking.</summary>
    public static IEnumerable<string> LikeTo(Run run, IEnumerable<Run> all)
    {
        ArgumentNullException.ThrowIfNull(run);
        return all.Where(r => r.Id != run.Id && Of(run.Label, r.Label) != Likeness.Apart).Select(r => r.Id);
    }

    private static Likeness Of(string first, string second)
    {
        List<string> a = Words(first), b = Words(second);
        if (a.Count == 0 || b.Count == 0)
            return Likeness.Apart;
        bool aInB = a.All(w => b.Any(o => Equal(w, o))), bInA = b.All(w => a.Any(o => Equal(w, o)));
        return aInB && bInA ? Likeness.Same
            : aInB || bInA ? Likeness.Within
            : a.Count == b.Count && a.Zip(b).Count(p => !Equal(p.First, p.Second)) == 1 && a.Zip(b).Any(p => OneLetter(p.First, p.Second)) ? Likeness.OneLetter
            : Likeness.Apart;
    }

    private static List<string> Words(string label) =>
        [.. new string([.. label.ToUpperInvariant().Select(c => char.IsLetterOrDigit(c) ? c : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries).Distinct()];

    private static bool Equal(string a, string b) =>
        a == b || (Math.Min(a.Length, b.Length) >= ShortFrom && (a.StartsWith(b, StringComparison.Ordinal) || b.StartsWith(a, StringComparison.Ordinal)));

    /// <summary>One letter more, less or another, in words long enough that the rest is read first: CAB and CARB, not L and R.</summary>
    private static bool OneLetter(string a, string b)
    {
        if (a.Length > b.Length)
            (a, b) = (b, a);
        if (a == b || a.Length < ShortFrom || b.Length - a.Length > 1)
            return false;
        var i = 0;
        while (i < a.Length && a[i] == b[i])
            i++;
        return a[(i + (a.Length == b.Length ? 1 : 0))..] == b[(i + 1)..];
    }
}
