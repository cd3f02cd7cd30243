using Throwright.Engine.Findings;
using Throwright.Shapes;
using Throwright.Shapes.Numerics;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Cushion;

/// <summary>What a ladder is held against, and the words for its ends.</summary>
/// <param name="Wanted">Least cushion wanted, m.</param>
/// <param name="Most">Above this a cushion only makes the knob stand out, m.</param>
/// <param name="StopRule">The rule that the driven end's own stop must govern.</param>
/// <param name="Device">What the device is called in a sentence, e.g. "the cowl flap".</param>
/// <param name="PushEnd">What the device does at its push stop, e.g. "open".</param>
/// <param name="PullEnd">What it does at its pull stop, e.g. "shut".</param>
/// <param name="FromMemory">Figures from memory that went into the ladder.</param>
public sealed record LadderLimits(Limit Wanted, Limit Most, SourceRef StopRule, string Device, string PushEnd, string PullEnd, EquatableList<SourceRef> FromMemory);

/// <summary>Findings on the cushions.</summary>
public static class LadderRules
{
    public const string KnobIn = "cushion/knob-in";
    public const string KnobOut = "cushion/knob-out";
    public const string Tip = "cushion/tip";
    public const string Most = "cushion/most";

    public static IEnumerable<Finding> Find(TravelLadder ladder, LadderLimits limits, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(ladder);
        ArgumentNullException.ThrowIfNull(limits);
        ArgumentNullException.ThrowIfNull(say);
        yield return Of(KnobIn, "cushion-in", ladder.KnobIn, $"The knob reaches its IN stop before {limits.Device} is {limits.PushEnd}", limits, say);
        yield return Of(KnobOut, "cushion-out", ladder.KnobOut, $"The knob reaches its OUT stop before {limits.Device} is {limits.PullEnd}", limits, say);
        var tip = ladder.TipAtPull.Least <= ladder.TipAtPush.Least ? ladder.TipAtPull : ladder.TipAtPush;
        yield return Of(Tip, tip == ladder.TipAtPull ? "tip-cushion" : "tip-cushion-push", tip, $"The swivel meets the conduit's tip before {limits.Device} is {limits.PullEnd}", limits, say);
        var largest = ladder.KnobIn.Nominal >= ladder.KnobOut.Nominal ? ladder.KnobIn : ladder.KnobOut;
        if (largest.Nominal > limits.Most.Value)
        {
            yield return new()
            {
                Rule = Most,
                Verdict = Verdict.Caution,
                Sentence = $"{say.Length(largest.Nominal)} of the stroke at the knob's {(largest == ladder.KnobIn ? "IN" : "OUT")} end is never used, usual is {say.Length(limits.Most.Value, Rounding.Nearest)} or less.",
                Figure = largest == ladder.KnobIn ? "cushion-in" : "cushion-out",
                Limit = new(limits.Most.Value, QuantityKind.Length, false),
                Sources = [limits.Most.Source],
                Why = "The device still reaches its stops; but the knob's place no longer tells the pilot that it is home.",
            };
        }
    }

    private static Finding Of(string rule, string figure, CushionRange range, string stopped, LadderLimits limits, FigureWriter say)
    {
        var wanted = limits.Wanted.Value;
        var worst = double.IsFinite(range.Least) ? say.Length(range.Least, Rounding.Down) : "without bound";
        var sizes = $"{range.Name} {say.Length(range.Nominal, Rounding.Down)}, worst case {worst}, wanted {say.Size(wanted)}";
        // Three-valued: the proven bound and a combination that does occur may lie on both sides of a limit.
        var cantTell = range.Outcome is not (Outcome.Corner or Outcome.Converged) && range.Least <= 0 && range.LeastFound > 0;
        var (verdict, sentence) = range switch
        {
            // Written so that a figure that is no number is never clear.
            { Nominal: not > 0 } => (Verdict.Fail, $"{stopped}: {sizes}."),
            { LeastFound: not > 0 } => (Verdict.Fail, $"{stopped} in the worst case: {sizes}."),
            _ when cantTell => (Verdict.Caution, $"Can't tell yet whether a stop of the cable comes first: {sizes}, found {say.Length(range.LeastFound, Rounding.Down)}."),
            _ when range.Least >= wanted => (Verdict.Clear, $"{char.ToUpperInvariant(sizes[0])}{sizes[1..]}."),
            _ => (Verdict.Caution, $"Little is left: {sizes}."),
        };
        var likely = $"95 % of installations built to these tolerances: {say.LengthNumber(range.Low95, Rounding.Down)} to {say.Length(range.High95, Rounding.Down)}.";
        var measure = verdict != Verdict.Clear && range.Shares.Count > 0
            ? $" The {range.Shares[0].Input} moves it most: {say.Length(range.Shares[0].Moves, Rounding.Up)} either way; measure it better first."
            : "";
        return new()
        {
            Rule = rule,
            Verdict = verdict,
            Sentence = sentence,
            Figure = figure,
            Limit = new(wanted, QuantityKind.Length, true),
            Sources = [limits.StopRule, limits.Wanted.Source, .. limits.FromMemory],
            Why = likely + measure,
        };
    }
}
