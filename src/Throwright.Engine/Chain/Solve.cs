using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Engine.Throw;
using Throwright.Shapes;
using Throwright.Shapes.Numerics;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>One way to choose a dimension, with the figures of the whole run that it would give.</summary>
/// <param name="Label">The choice in words, e.g. "1 1/2 in hole".</param>
/// <param name="Value">The dimension, SI.</param>
/// <param name="Answer">The run with this choice; where the file sets the swivel, set anew with the same left at both ends of the knob.</param>
/// <param name="Margin">Smallest worst-case cushion less the wanted one, m.</param>
/// <param name="Works">No fail, every worst-case cushion as wanted, and pushing takes the device where it does now.</param>
public sealed record SolveChoice(
    string Label, double Value, QuantityKind Kind, RunAnswer Answer, EquatableList<TrialEdit> Edits, double Margin, bool Works, string Why)
{
    /// <summary>False: with the device on its stop the knob would stand inside the panel, and the file has no word for that.</summary>
    public bool CanBeRigged => Answer.Run.LeverEnd?.Swivel is not ({ Rigged.KnobOut.Least: < 0 } or { At.Least: < 0 });
}

/// <summary>All choices, the recommended one and why.</summary>
/// <param name="Sentence">What to do, or why nothing can be done.</param>
/// <param name="Recommended">Index into Choices; -1: none.</param>
public sealed record SolveAnswer(string What, EquatableList<SolveChoice> Choices, int Recommended, string Sentence)
{
    public SolveChoice? Best => Recommended >= 0 ? Choices[Recommended] : null;
}

/// <summary>Finds a dimension of one run that makes the whole run work.</summary>
public sealed class Solve
{
    /// <summary>No odds are needed to compare choices.</summary>
    private static readonly LadderEffort Quick = new(Samples: 16, Tolerance: 2e-5, Boxes: 200);

    private readonly Aircraft aircraft;
    private readonly Run run;
    private readonly FigureWriter say;
    private readonly RunAnswer now;
    private readonly Lazy<SolveAnswer> holes;
    private readonly Lazy<SolveAnswer> balanced;
    private readonly Dictionary<Length, SolveChoice> tried = [];

    /// <param name="meshes">Meshes of the file, against which a conduit may rest; null: none is at hand.</param>
    public Solve(Aircraft aircraft, Run run, FigureWriter say, Func<MeshShape, Skin?>? meshes = null)
        : this(aircraft, RunCheck.SolveResting(aircraft, run, Quick, meshes), say)
    {
    }

    /// <summary>With the run as it is already worked out.</summary>
    internal Solve(Aircraft aircraft, RunAnswer now, FigureWriter say)
    {
        (this.aircraft, this.now, this.say, run) = (aircraft, now, say, now.Run);
        holes = new(FindHole);
        balanced = new(() => Swivel(null, null));
    }

    private double Wanted => run.CushionWanted?.Metres ?? Published.Get("cushion/least").Value;

    private double LeastTransmission => Published.Get("throw/transmission-angle-least").Value;

    /// <summary>Why the run can't be solved yet; null when it can.</summary>
    public string? Obstacle => now.Placement is null || now.Needs.Any(n => n == Need.Stroke)
        ? "First: " + string.Join("; ", now.Needs.Where(n => n == Need.Radius || n == Need.Sweep || n == Need.Anchor || n == Need.Stroke).Select(n => $"{n.Name} ({n.How})")) + "."
        : now.Sweep is null ? "The anchor lies on the lever's axis: there is no throw to solve for." : null;

    /// <summary>Each hole that the arm has.</summary>
    public SolveAnswer Hole() => holes.Value;

    private SolveAnswer FindHole()
    {
        var holes = run.LeverEnd!.Holes;
        if (holes.Count == 0)
            return new("hole", [], -1, "The file names no holes; list them under leverEnd.arm.holes, or use: solve arm.");
        return Pick("hole", [.. HoleChoices(_ => true)], c => $"Use the {c.Label}{Setting(c)}: throw {say.Length(Throw(c))}, {Cushions(c)}.", "No hole of this arm works");
    }

    /// <summary>Those of the arm's holes whose radius is worth a trial, each tried once.</summary>
    internal IEnumerable<SolveChoice> HoleChoices(Func<double, bool> radius) => run.LeverEnd!.Holes.Where(h => radius(h.Metres)).Select(h =>
    {
        if (!tried.TryGetValue(h, out var choice))
            tried[h] = choice = Choice($"{say.Size(h.Metres)} hole", h.Metres, QuantityKind.Length, SetAnew(Trial.Radius(run, h.Metres, Typed)));
        return choice;
    });

    /// <summary>Arm radius: for a wanted throw, or the largest that still leaves the wanted cushion in the worst case.</summary>
    public SolveAnswer Arm(double? wantedThrow)
    {
        var r0 = now.Placement!.Case.Radius;
        SolveChoice At(double r, string why = "") => Choice($"radius {say.Size(r)}", r, QuantityKind.Length, SetAnew(Trial.Radius(run, r, Typed)), why);
        List<SolveChoice> choices;
        if (wantedThrow is { } wanted)
        {
            var found = SweepSearch.Find(r => PlacementCase(Trial.Radius(run, r, Trial.Free).Run), 0.1 * r0, 4 * r0, SweepAim.Throw, wanted, LeastTransmission);
            choices = [.. found.Choices.Select(c => At(c.Value, c.Why))];
            if (choices.Count == 0 && found.Nearest is { } near)
            {
                return new("arm", [At(near.Value)], -1,
                    $"No radius between {say.Length(0.1 * r0)} and {say.Length(4 * r0)} gives {say.Length(wanted)}; the nearest is {say.Length(near.Sweep.Throw)} at {say.Length(near.Value)}.");
            }

            return Pick("arm", choices, c => $"Drill at {say.Length(c.Value)}{Setting(c)}: throw {say.Length(Throw(c))}, {Cushions(c)}.", $"No radius gives {say.Length(wanted)} and works");
        }

        // More radius, more throw, less cushion: the zero of the margin is the largest radius that is still right.
        // Setting the swivel anew shares what is left out evenly, so the mean of both ends stands for it.
        double MarginAt(double r) => RunCheck.Ladder(aircraft, Trial.Radius(run, r, Trial.Free).Run, Quick) is { } l
            ? Math.Min(0.5 * (l.KnobIn.Least + l.KnobOut.Least), Math.Min(l.TipAtPull.Least, l.TipAtPush.Least)) - Wanted
            : double.NaN;
        // Ten micrometres are far below what can be marked out.
        choices = [.. Roots.All(MarginAt, 0.1 * r0, 3 * r0, 29, tolerance: 1e-5).Select(r => At(r))];
        // A drilled hole is a size one can mark out: the next smaller sixty-fourth (or half millimetre) keeps the margin.
        var step = say.LengthUnitName == "in" ? Length.MetresPerInch / 64 : 0.0005;
        if (choices.Count > 0)
            choices.Insert(0, At(Math.Floor((choices[0].Value / step) + 1e-9) * step));
        return Pick("arm", choices, c => $"Drill at {say.Size(c.Value)}{Setting(c)}: throw {say.Length(Throw(c))}, {Cushions(c)}.", "No radius leaves the wanted cushion");
    }

    /// <summary>Where the arm is clocked on its spindle.</summary>
    public SolveAnswer Clocking(SweepAim aim, double? wantedThrow)
    {
        if (run.LeverEnd!.Bench is { } bench && bench.Rule != AnchorRule.Offset)
        {
            return new("clocking", [], -1,
                "In the bench form the anchor follows the arm by its rule, so turning the arm changes nothing. Give the anchor's measured offset (rule \"offset\") or coordinates.");
        }

        var found = SweepSearch.Find(turn => PlacementCase(Trial.Clocking(run, turn, isFree: true).Run), -Math.PI, Math.PI, aim, wantedThrow ?? 0, LeastTransmission);
        var choices = found.Choices.Select(c => Choice($"turned {say.Angle(c.Value)}", c.Value, QuantityKind.Angle, SetAnew(Trial.Clocking(run, c.Value)), c.Why, c.Usable)).ToList();
        string Way(double turn) => run.LeverEnd.Bench is not null
            ? turn > 0 ? "away from the anchor" : "toward the anchor"
            : $"{(turn > 0 ? "right" : "left")}-handed about its axis";
        return Pick("clocking", choices, c => $"Turn the arm by {say.Angle(Math.Abs(c.Value))} on its spindle, {Way(c.Value)}{Setting(c)}: throw {say.Length(Throw(c))}, wire to arm {say.Angle(c.Answer.Sweep!.LeastTransmission, Rounding.Down)} or more, {Cushions(c)}.{Sense(c)}",
            "No clocking reaches this aim and works");
    }

    /// <summary>Where the anchor stands: across the conduit at the present distance, for each aim, or along it for a wanted throw.</summary>
    public SolveAnswer Anchor(SweepAim aim, double? wantedThrow)
    {
        var placement = now.Placement!;
        var reach = 2 * placement.Case.Radius;
        SweepCase? Across(double t, double back) => Trial.Anchor(run, placement, back, t, Trial.Free) is { } trial ? PlacementCase(trial.Run) : null;
        SolveChoice At(double back, double across, string why)
        {
            var trial = SetAnew(Trial.Anchor(run, placement, back, across, Typed)!);
            var words = (back == 0 ? "" : $"{say.Move(back)} {(back > 0 ? "away from" : "toward")} the arm")
                + (back != 0 && across != 0 ? ", " : "")
                + (across == 0 ? "" : $"{say.Move(across)} {(across > 0 ? "away from" : "toward")} the pivot, square to the conduit");
            return Choice(words.Length == 0 ? "where it is" : words, across != 0 ? across : back, QuantityKind.Length, trial, why);
        }

        var isFixed = run.LeverEnd!.Bench is { } bench && bench.Rule != AnchorRule.Offset;
        if (isFixed && aim == SweepAim.Throw)
        {
            return new("anchor", [], -1,
                "In the bench form the anchor follows the arm by its rule, so its place can't be chosen for a throw. Use: solve arm --throw, or give the anchor's measured offset (rule \"offset\") or coordinates.");
        }

        if (isFixed)
        {
            // The three rules at the present distance: which one suits.
            var byRule = new[] { AnchorRule.SquareAtMid, AnchorRule.Chord, AnchorRule.HalfSagitta }
                .Select(rule => Choice(RuleName(rule), BenchRules.Offset(rule, placement.Case.Radius, 0.5 * (placement.Case.To - placement.Case.From)), QuantityKind.Length,
                    SetAnew(new(run with { LeverEnd = run.LeverEnd with { Bench = run.LeverEnd.Bench! with { Rule = rule } } }, [new("leverEnd.bench.rule", Camel(rule))])),
                    RuleWhy(rule)))
                .ToList();
            return Pick("anchor", byRule, c => $"Set the anchor {say.Length(c.Value)} from the pivot along the arm at mid travel ({c.Label}){Setting(c)}: throw {say.Length(Throw(c))}, swing {say.Angle(c.Answer.Sweep!.MostSwing, Rounding.Up)}, {Cushions(c)}.",
                "No rule at this distance works");
        }

        var choices = new List<SolveChoice>();
        if (wantedThrow is { } wanted && aim == SweepAim.Throw)
        {
            // Along a line: back and forth along the conduit.
            var back = SweepSearch.Find(t => Across(0, t), -0.9 * placement.Case.Anchor.Size, 3 * placement.Case.Anchor.Size, aim, wanted, LeastTransmission, 360);
            choices.AddRange(back.Choices.Select(c => At(c.Value, 0, c.Why)));
            // And across it.
            var across = SweepSearch.Find(t => Across(t, 0), -reach, reach, aim, wanted, LeastTransmission, 360);
            choices.AddRange(across.Choices.Select(c => At(0, c.Value, c.Why)));
        }
        else
        {
            var across = SweepSearch.Find(t => Across(t, 0), -reach, reach, aim, 0, LeastTransmission);
            choices.AddRange(across.Choices.Select(c => At(0, c.Value, c.Why)));
            if (wantedThrow is { } both)
            {
                // In the plane: at each distance the place across that reaches the aim; then the distance that gives the throw.
                double Miss(double t)
                {
                    var at = SweepSearch.Find(x => Across(x, t), -reach, reach, aim, 0, LeastTransmission, 120).Best;
                    return at is null ? double.NaN : at.Sweep.Throw - both;
                }

                foreach (var t in Roots.All(Miss, -0.7 * placement.Case.Anchor.Size, 3 * placement.Case.Anchor.Size, 60))
                {
                    var x = SweepSearch.Find(v => Across(v, t), -reach, reach, aim, 0, LeastTransmission, 120).Best;
                    if (x is not null && Math.Abs(x.Sweep.Throw - both) < 1e-6)
                        choices.Add(At(t, x.Value, x.Why));
                }
            }
        }

        return Pick("anchor", choices, c => $"Move the anchor {c.Label}{Setting(c)}: throw {say.Length(Throw(c))}, swing {say.Angle(c.Answer.Sweep!.MostSwing, Rounding.Up)}, {Cushions(c)}.{Sense(c)}", "No place of the anchor reaches this aim and works");
    }

    /// <summary>The swivel where both worst cases are the same.</summary>
    internal SolveAnswer BalancedSwivel() => balanced.Value;

    /// <summary>Where the swivel sits on the wire: balanced worst cases, or a wanted cushion at one end.</summary>
    public SolveAnswer Swivel(double? wantedIn, double? wantedOut)
    {
        if (now.Ladder is not { } ladder)
            return new("swivel", [], -1, "First cure the lever end: where the wire can't turn the arm from stop to stop, no place of the swivel does.");
        double outward = wantedIn is { } i ? i - ladder.KnobIn.Nominal : wantedOut is { } o ? ladder.KnobOut.Nominal - o : Balance(ladder);
        if (ladder.Setting.Kind == SettingKind.Balanced)
        {
            // Nothing is set yet: the answer is the place itself. Set at one stop, the tolerances of the way to the other
            // fall to that side, so the place that shares them out is found on the set run.
            var error = Published.Get("cushion/rigging-tolerance").Value;
            SolveChoice Rigged(double wanted)
            {
                var (place, text) = Typed(Toleranced<Length>.PlusMinus(new(wanted), error));
                var rigged = run with { LeverEnd = run.LeverEnd! with { Swivel = run.LeverEnd.Swivel with { Rigged = new(DeviceStop.Push, place) } } };
                return Choice(
                    $"knob {say.Length(wanted)} out at the push stop", wanted, QuantityKind.Length,
                    new(rigged, [new("leverEnd.swivel.rigged", $"{{ \"stop\": \"push\", \"knobOut\": \"{text}\" }}", IsJson: true)]));
            }

            var choice = Rigged(ladder.Setting.KnobOutAtPushStop + outward);
            if (wantedIn is null && wantedOut is null && choice.Answer.Ladder is { } set && Balance(set) is var more and not 0)
                choice = Rigged(choice.Value + more);
            return new("swivel", [choice], 0, $"Clamp the swivel with the device on its push stop and the knob {say.Length(choice.Value)} out ({say.Length(choice.Answer.Ladder!.Setting.WireLength)} of wire from anchor to pin with the knob in): {Cushions(choice)}.");
        }

        var slid = Trial.Slide(run, outward, Typed);
        var by = Choice(SlideWords(outward), outward, QuantityKind.Length, slid);
        return new("swivel", [by], 0, Math.Abs(outward) < 5e-6 ? $"Leave the swivel where it is: {Cushions(by)}." : $"Slide the swivel {by.Label}: {Cushions(by)}.");
    }

    /// <summary>The smallest standard stroke that leaves the wanted cushions in the worst case.</summary>
    public SolveAnswer Stroke(IReadOnlyList<double>? strokes = null)
    {
        strokes ??= UsualStrokes();
        var choices = strokes.OrderBy(s => s)
            .Select(WithStroke)
            .ToList();
        var best = choices.FindIndex(c => c.Works);
        return new(
            "stroke", choices.ToEquatableList(), best,
            best >= 0
                ? $"Order a {choices[best].Label}{Setting(choices[best])}: {Cushions(choices[best])}."
                : $"No listed stroke up to {say.Size(strokes.Max())} works: {LargestTrouble(choices[^1])}");
    }

    /// <summary>The smallest usual stroke that does what is wanted, without the table of all.</summary>
    internal SolveChoice? SmallestStroke(Func<SolveChoice, bool> wanted)
    {
        // A stroke that is too short by its nominal figures needs no closer look.
        var used = now.Ladder is { } l ? l.Stroke - l.KnobIn.Nominal - l.KnobOut.Nominal : 0;
        return UsualStrokes().Order().Where(s => s >= used + (2 * Wanted)).Select(WithStroke).FirstOrDefault(wanted);
    }

    private SolveChoice WithStroke(double stroke) =>
        Choice($"{say.Size(stroke)} stroke", stroke, QuantityKind.Length, SetAnew(Trial.Stroke(run, stroke, Typed)));

    private static IReadOnlyList<double> UsualStrokes() => [.. Published.Table("stroke/standard").Rows.Select(r => r.Si("stroke"))];

    /// <summary>"0.28 in (7.1 mm) toward the tip": outward motion of the knob takes wire from beyond the swivel.</summary>
    public string SlideWords(double outward) => $"{say.Move(outward)} {(outward < 0 ? "toward" : "away from")} the tip";

    /// <summary>The figures of a choice in half a line.</summary>
    public string Cushions(SolveChoice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        if (choice.Answer.Ladder is not { } l)
            return "no ladder";
        var worst = Math.Min(Math.Min(l.KnobIn.Least, l.KnobOut.Least), Math.Min(l.TipAtPull.Least, l.TipAtPush.Least));
        return $"cushion IN {say.LengthNumber(l.KnobIn.Nominal, Rounding.Down)}, OUT {say.LengthNumber(l.KnobOut.Nominal, Rounding.Down)}, tip {say.LengthNumber(l.TipAtPull.Nominal, Rounding.Down)}, worst of them {say.Length(worst, Rounding.Down)}";
    }

    /// <summary>How the swivel is set in a choice, where the file sets it: ", swivel set anew with the knob 0.31 in out at the push stop".</summary>
    public string Setting(SolveChoice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        return choice.Answer.Run.LeverEnd?.Swivel switch
        {
            { Rigged: { } rigged } => $", swivel set anew with the knob {say.Length(rigged.KnobOut.Nominal.Metres)} out at the {(rigged.Stop == DeviceStop.Push ? "push" : "pull")} stop",
            { At: { } at } => $", swivel set anew at {say.Length(at.Nominal.Metres)} of wire from anchor to pin with the knob in",
            _ => "",
        };
    }

    /// <summary>Length with limits, as typed into the file, and the value that is read back.</summary>
    public (Toleranced<Length> Value, string Text) Typed(Toleranced<Length> wanted) => Typed(wanted, say);

    /// <summary>Length with limits, as typed into the file, and the value that is read back.</summary>
    public static (Toleranced<Length> Value, string Text) Typed(Toleranced<Length> wanted, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(say);
        var (metres, minus, plus) = (wanted.Nominal.Metres, wanted.Minus, wanted.Plus);
        var text = minus == 0 && plus == 0
            ? say.Typed(metres)
            : Math.Abs(minus - plus) < 1e-9 ? $"{say.Typed(metres)} ± {say.Typed(plus)}" : $"{say.Typed(metres)} +{say.Typed(plus)}/-{say.Typed(minus)}";
        if (wanted.Spread == Spread.Normal && !wanted.IsExact)
            text += " normal";
        return UnitText.TryRead<Length>(text, out var value, out var problem) ? (value, text) : throw new InvalidOperationException($"\"{text}\": {problem}");
    }

    /// <summary>Takes a changed run through the chain.</summary>
    internal SolveChoice Choice(string label, double value, QuantityKind kind, Trial trial, string why = "", bool usable = true)
    {
        var answer = RunCheck.Solve(aircraft, trial.Run, Quick, now);
        var margin = MarginOf(answer);
        var verdict = RunFindings.Of(aircraft, answer, say).Select(f => f.Verdict).DefaultIfEmpty(Verdict.NeedsInput).Max();
        var turned = Reverses(answer);
        return new(
            label, value, kind, answer, trial.Edits, margin, usable && verdict != Verdict.Fail && margin >= -1e-9 && !turned,
            turned ? "it turns the control round: pushing would take the device to its other stop" : why);
    }

    /// <summary>
    /// The changed run with its swivel set anew: a new hole, stroke or anchor moves the knob, and the place that the file
    /// gives belongs to the old one. Set with the same left at both ends of the knob in the worst case.
    /// </summary>
    internal Trial SetAnew(Trial trial, TypedLength? typed = null)
    {
        if (trial.Run.LeverEnd is not { Swivel: { } swivel } || (swivel.At is null && swivel.Rigged is null) || RunCheck.Ladder(aircraft, trial.Run, Quick, now) is not { } ladder)
            return trial;
        var slid = Trial.Slide(trial.Run, Balance(ladder), typed ?? Typed);
        return new(slid.Run, [.. trial.Edits, .. slid.Edits]);
    }

    /// <summary>Does pushing take the device to the other stop than it does now?</summary>
    internal bool Reverses(RunAnswer answer) =>
        now.Sweep is { IsMonotone: true } before && answer.Sweep is { IsMonotone: true } after && before.PushTurnsUp != after.PushTurnsUp;

    /// <summary>Where no sense of motion can be read from the present geometry, the builder has to look at it.</summary>
    private string Sense(SolveChoice choice) => now.Sweep is { IsMonotone: true } || choice.Answer.Sweep is not { } sweep
        ? ""
        : $" Pushing then takes the arm to {say.Angle(sweep.PushAngle)}: check that this is where the device belongs.";

    /// <summary>Knob movement outward that leaves the same at both ends in the worst case, m.</summary>
    private static double Balance(TravelLadder ladder)
    {
        var outward = 0.5 * (ladder.KnobOut.Least - ladder.KnobIn.Least);
        return double.IsFinite(outward) ? outward : 0;
    }

    private double MarginOf(RunAnswer answer) => answer.Ladder is { } l
        ? Math.Min(Math.Min(l.KnobIn.Least, l.KnobOut.Least), Math.Min(l.TipAtPull.Least, l.TipAtPush.Least)) - Wanted
        : double.NegativeInfinity;

    /// <summary>What one rule says of a choice; clear when it has nothing to say.</summary>
    internal Verdict VerdictOf(SolveChoice choice, string rule) =>
        RunFindings.Of(aircraft, choice.Answer, say).FirstOrDefault(f => f.Rule == rule)?.Verdict ?? Verdict.Clear;

    private SolveAnswer Pick(string what, List<SolveChoice> choices, Func<SolveChoice, string> doThis, string none)
    {
        // Works first; then most leverage left at the worse stop, then least swing.
        var best = Enumerable.Range(0, choices.Count)
            .Where(i => choices[i].Works)
            .OrderByDescending(i => choices[i].Answer.Sweep?.LeastTransmission >= LeastTransmission)
            .ThenBy(i => Excess(choices[i]))
            .ThenBy(i => choices[i].Answer.Sweep?.MostSwing)
            .Append(-1)
            .First();
        var sentence = best >= 0 ? doThis(choices[best]) : choices.Count == 0 ? none + "." : $"{none}: {LargestTrouble(choices.MaxBy(c => c.Margin)!)}";
        return new(what, choices.ToEquatableList(), best, sentence);
    }

    /// <summary>Cushion beyond the usual most, m: a longer throw uses the stroke better.</summary>
    private double Excess(SolveChoice choice)
    {
        var most = run.CushionMost?.Metres ?? Published.Get("cushion/most").Value;
        return choice.Answer.Ladder is { } l ? Math.Max(0, Math.Round(Math.Max(l.KnobIn.Nominal, l.KnobOut.Nominal) - most, 6)) : double.MaxValue;
    }

    private string LargestTrouble(SolveChoice choice) => Reverses(choice.Answer)
        ? $"with {choice.Label}, pushing would take the device to its other stop."
        : RunFindings.Of(aircraft, choice.Answer, say)
        .Where(f => f.Verdict is Verdict.Fail or Verdict.Caution)
        .OrderByDescending(f => f.Verdict)
        .Select(f => $"with {choice.Label}, {char.ToLowerInvariant(f.Sentence[0])}{f.Sentence[1..]}")
        .FirstOrDefault() ?? $"with {choice.Label}, {Cushions(choice)}.";

    private static double Throw(SolveChoice choice) => choice.Answer.Sweep?.Throw ?? double.NaN;

    private static SweepCase? PlacementCase(Run changed) => LeverPlacement.Of(changed.LeverEnd, [])?.Case;

    private static string RuleName(AnchorRule rule) => rule switch
    {
        AnchorRule.SquareAtMid => "wire square at mid travel",
        AnchorRule.Chord => "anchor on the chord line",
        _ => "anchor half way between chord and square",
    };

    private static string RuleWhy(AnchorRule rule) => rule switch
    {
        AnchorRule.SquareAtMid => "most leverage in the middle",
        AnchorRule.Chord => "same leverage at both stops, throw exactly 2 r sin(half sweep)",
        _ => "nearly the same swing to both sides",
    };

    private static string Camel(AnchorRule rule) => char.ToLowerInvariant(rule.ToString()[0]) + rule.ToString()[1..];
}
