using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Prove;

/// <summary>The operating check of an emergency control: what is tried from the seat, and what must come out.</summary>
internal static class OperatingCheck
{
    private static readonly SourceRef Practice = new("common-practice", "judgement", Evidence.CommonPractice);

    public static IEnumerable<OperatingItem> Of(ProveCase of)
    {
        if (!of.Run.Emergency)
            yield break;
        var say = new FigureWriter(of.Display);
        var end = of.Run.CockpitEnd;
        var lifts = of.Run.Installation?.Guard is { } guard && guard != GuardKind.None;
        var unlocks = end?.Lock is LockKind.PressToRelease or LockKind.Twist;
        yield return of is { Pull: { } pull, Push: { } push } && double.IsFinite(Math.Max(pull, push))
            ? new("force", "spring scale at the handle, full travel, device loaded as in flight where that can be done", $"pull {say.Force(pull)} or less, push {say.Force(push)} or less; {of.Hand.Who} can give {say.Force(of.Hand.Pull, Rounding.Down)} and {say.Force(of.Hand.Push, Rounding.Down)}", true, [of.Hand.PullFrom, of.Hand.PushFrom, Published.Rule("23.683").Source])
            : new("force", "spring scale at the handle, full travel", "not worked out: the file lacks the device's load, the bends or the friction; write pull and push", false, [Published.Rule("23.683").Source]);
        yield return of is { Travel: { } travel, Stroke: { } stroke }
            ? new("travel", $"{of.PushEnd} to {of.PullEnd}, both device stops seen or felt", $"{say.Length(travel)} of {say.Length(stroke)} stroke; both stops before the knob's own", true, [Published.Rule("23.1141(g)(1)").Source])
            : new("travel", $"{of.PushEnd} to {of.PullEnd}, both device stops seen or felt", "not worked out: the file lacks stroke or lever end; both device stops before the knob's own", false, [Published.Rule("23.1141(g)(1)").Source]);
        yield return new("time", "hand at its usual place on the throttle or stick; from the call to the device on its stop, three times, eyes outside", "no published time was found; write the longest of three: ____ s", true, [Published.Rule("23.995(a)").Source, Practice]);
        yield return new(
            "one hand",
            $"belted, shoulder harness locked, one hand only{(lifts ? ", guard and all" : "")}",
            $"{(lifts, unlocks) switch { (true, true) => "guard, lock and pull or push: three actions", (true, false) => "guard, then pull or push: two actions", (false, true) => end!.Lock == LockKind.Twist ? "turn, then pull or push: two actions" : "button and pull or push in one grip", _ => "one motion" }}; no tool, the other hand stays on the stick",
            end is not null, [Published.Rule("23.995(a)").Source, Practice]);
        yield return of.HandSide is { } side
            ? new("which hand", $"by the {(side == BodySide.Left ? "left" : "right")} hand, on whose side it sits from the pilot's middle", $"the {(side == BodySide.Left ? "left" : "right")} hand is free when it is needed; if that hand holds the stick, the hands change first: try it", true, [Practice])
            : new("which hand", "by the hand that is free when it is needed", $"not told: the file lacks {(of.Run.CockpitEnd?.Hole is { IsKnown: true } ? "pilot.eye" : "the hole's place (cockpitEnd.hole)")}; write left or right: ____", false, [Practice]);
        yield return of.Moving is { } moving
            ? new(
                "what else moves",
                moving.Count == 0 ? "nothing else that the file describes can move near the handle" : $"work it with each of these in the worst place and moving: {string.Join(", ", moving.Select(m => $"{m.Name} ({(m.Least > 0 ? $"at least {say.Length(m.Least, Rounding.Down)}" : "it touches")})"))}",
                "no hand, sleeve or handle is caught; nothing else is moved by it", true, [Published.Rule("23.777(b)").Source])
            : new("what else moves", "stick, yoke, legs and other handles, each in its worst place", "not told: the file describes nothing that could move near it (bodies); look and write: ____", false, [Published.Rule("23.777(b)").Source]);
    }

    /// <summary>The check as one finding.</summary>
    public static Finding? Finding(ProveCase of, ProveAnswer answer)
    {
        if (answer.Operating.Count == 0)
            return null;
        var unknown = answer.Operating.Where(i => !i.Known).ToList();
        var beyond = of is { Pull: { } pull, Push: { } push } && (pull > of.Hand.Pull || push > of.Hand.Push);
        var hit = of.Moving?.FirstOrDefault(m => !(m.Least > 0));
        var verdict = hit is not null || beyond ? Verdict.Caution : unknown.Count > 0 ? Verdict.NeedsInput : Verdict.Clear;
        return new()
        {
            Rule = ProveRules.Operating,
            Verdict = verdict,
            Sentence = hit is not null ? $"Operating check of an emergency control: {hit.Name} can touch it at that moment."
                : beyond ? "Operating check of an emergency control: it takes more than the chosen pilot's hand gives."
                : unknown.Count > 0 ? $"Operating check of an emergency control: {string.Join(", ", unknown.Select(i => i.What))} can't be told from the file."
                : "Operating check of an emergency control: force, travel, hand and what else moves are told; time is taken from the seat.",
            Why = "The rigging card lists it item by item: " + string.Join("; ", answer.Operating.Select(i => $"{i.What}: {i.Expect}")) + ".",
            Sources = answer.Operating.SelectMany(i => i.Sources).Distinct().ToEquatableList(),
        };
    }
}
