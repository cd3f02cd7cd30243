using Throwright.Engine.Findings;
using Throwright.Engine.Sources;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Rig;

/// <summary>Findings on readings.</summary>
public static class RigRules
{
    public const string AsBuilt = "rig/as-built";
    public const string Fit = "rig/fit";

    private static readonly SourceRef Theory = new("project", "docs/theory/rig.md", Evidence.Derived);

    /// <param name="date">Of the readings.</param>
    public static IEnumerable<Finding> Find(RigCase of, RigAnswer answer, string date, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(of);
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(say);
        if (answer is { CushionIn: { } inside, CushionOut: { } outside })
        {
            var least = Math.Min(inside, outside);
            yield return new()
            {
                Rule = AsBuilt,
                Verdict = !(least > 0) ? Verdict.Fail : least < of.Wanted || Math.Max(inside, outside) > of.Most ? Verdict.Caution : Verdict.Clear,
                Sentence = $"The readings of {date} leave {say.Length(inside, Rounding.Down)} of cushion IN, {say.Length(outside, Rounding.Down)} OUT under hand and heat; wanted {say.Size(of.Wanted)}.",
                Limit = new(of.Wanted, QuantityKind.Length, true),
                Sources = [Published.Rule("23.1141(g)(1)").Source, Theory],
                Why = Advice(of, answer, say),
            };
        }

        else if ((answer.CushionIn ?? answer.CushionOut) is { } one && !(one > 0))
        {
            yield return new()
            {
                Rule = AsBuilt,
                Verdict = Verdict.Fail,
                Sentence = $"The readings of {date} leave no cushion at the {(answer.CushionIn is null ? "OUT" : "IN")} end under hand and heat.",
                Limit = new(of.Wanted, QuantityKind.Length, true),
                Sources = [Published.Rule("23.1141(g)(1)").Source, Theory],
                Why = "Read the knob at the other stop too: both together tell how far to slide the swivel.",
            };
        }

        if (!answer.Fits && answer.Worst is { } worst)
        {
            yield return new()
            {
                Rule = Fit,
                Verdict = Verdict.Caution,
                Sentence = $"The readings of {date} do not fit the description: read {NameOf(of, worst)} once more, or something is built otherwise than described.",
                Sources = [Theory],
                Why = $"Read again before anything is moved: chance alone lets readings miss by so much in fewer than one rigging of a thousand (misfit {FigureText.Plain(answer.Misfit, 1)}).",
            };
        }
    }

    /// <summary>One step that puts it right, with what it gives; empty where there is nothing to do.</summary>
    public static string Advice(RigCase of, RigAnswer answer, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(of);
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(say);
        if (answer is not { CushionIn: { } inside, CushionOut: { } outside, Slide: { } slide, After: { } after, AfterError: { } error })
            return "";
        if (Math.Min(inside, outside) >= of.Wanted && Math.Max(inside, outside) <= of.Most)
            return "Within limits: leave it.";
        var result = $"cushion then {say.LengthNumber(after, Rounding.Down)} IN, {say.Length(after, Rounding.Down)} OUT, give or take {say.Length(2 * error, Rounding.Up)}";
        return after < of.Wanted
            ? $"Sliding the swivel can't cure it: at best {say.Length(after, Rounding.Down)} at each end. The throw is too long for this knob: take the next smaller hole, or a longer stroke, and rig anew."
            : $"Slide the swivel {say.Move(slide)} {(slide > 0 ? "away from" : "toward")} the tip: {result}.";
    }

    /// <summary>"can't separate ... from ...": in words for the card.</summary>
    public static string InWords(RigCase of, Inseparable pair)
    {
        ArgumentNullException.ThrowIfNull(of);
        ArgumentNullException.ThrowIfNull(pair);
        string Name(RigUnknown unknown) => of.Unknowns.First(u => u.Unknown == unknown).Name;
        var more = (pair.A, pair.B) switch
        {
            (RigUnknown.Swivel, RigUnknown.Anchor) => "the gap at the tip",
            (RigUnknown.Radius, RigUnknown.Sweep) => "the sweep of the arm",
            (RigUnknown.Radius, RigUnknown.LostMotion) or (RigUnknown.LostMotion, RigUnknown.Sweep) => "the lost motion",
            (RigUnknown.Friction, RigUnknown.Load) => "the device's torque with the wire off",
            _ => "another reading",
        };
        return $"These readings can't separate {Name(pair.A)} from {Name(pair.B)}: measure {more}.";
    }

    private static string NameOf(RigCase of, RigReading reading) => of.Readings.First(r => r.Reading == reading).Name;
}
