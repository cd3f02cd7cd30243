using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.HandForce;
using Throwright.Engine.Throw;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>Works out what cures a finding: each remedy is tried on the whole run before it is named.</summary>
internal static class Remedies
{
    /// <summary>Remedies of one finding; empty for what is clear or lacks input.</summary>
    public static EquatableList<Remedy> For(RunAnswer answer, Finding finding, Lazy<Solve> solve, FigureWriter say)
    {
        if (finding.Verdict is not (Verdict.Fail or Verdict.Caution))
            return [];
        return (finding.Rule switch
        {
            LadderRules.KnobIn or LadderRules.KnobOut => Knob(answer, solve.Value, say),
            LadderRules.Tip => Tip(answer, solve.Value, say),
            LadderRules.Most => Shorter(answer, solve.Value),
            SweepRules.DeadCentre or SweepRules.Transmission => Leverage(answer, solve.Value),
            SweepRules.Swing or SweepRules.WireBend => LessSwing(answer, solve.Value, say),
            HandForceRules.Hand => Lighter(answer, solve.Value, say),
            HandForceRules.BareWire => ShorterWire(answer, say),
            // Those that a rule could say by itself.
            _ => finding.Remedies,
        }).ToEquatableList();
    }

    private static IEnumerable<Remedy> Knob(RunAnswer answer, Solve solve, FigureWriter say)
    {
        var ladder = answer.Ladder!;
        var wanted = ladder.Wanted;
        var each = 0.5 * (ladder.KnobIn.Least + ladder.KnobOut.Least);
        if (ladder.Setting.Kind != SettingKind.Balanced && Math.Abs(ladder.KnobIn.Least - ladder.KnobOut.Least) > 2e-4)
        {
            var slide = solve.BalancedSwivel().Best!;
            if (slide.Works || each > 0)
                yield return Of(answer, slide, $"Slide the swivel {slide.Label}: {solve.Cushions(slide)}.");
        }

        if (each >= wanted)
            yield break;
        var found = false;
        // What else is wrong with the run has remedies of its own: here only the cushions count.
        bool Cures(SolveChoice choice) => choice.Margin >= -1e-9 && !solve.Reverses(choice.Answer);
        var holes = solve.HoleChoices(r => r < answer.Placement!.Case.Radius).Where(Cures);
        if (holes.MaxBy(c => c.Value) is { } hole)
        {
            found = true;
            yield return Of(answer, hole, $"Move to the {hole.Label}{solve.Setting(hole)}: throw {say.Length(hole.Answer.Sweep!.Throw)}, {solve.Cushions(hole)}.");
        }

        if (solve.SmallestStroke(Cures) is { } stroke && stroke.Value > ladder.Stroke)
        {
            found = true;
            yield return Of(answer, stroke, $"Order a {stroke.Label}{solve.Setting(stroke)}: {solve.Cushions(stroke)}.");
        }

        if (!found && solve.Arm(null).Choices.FirstOrDefault(Cures) is { } arm && arm.Value < answer.Placement!.Case.Radius)
            yield return Of(answer, arm, $"Drill the arm, if its maker allows it and the edge distance suffices, at {say.Size(arm.Value)}{solve.Setting(arm)}: throw {say.Length(arm.Answer.Sweep!.Throw)}, {solve.Cushions(arm)}.");
    }

    private static IEnumerable<Remedy> Tip(RunAnswer answer, Solve solve, FigureWriter say)
    {
        var ladder = answer.Ladder!;
        var least = Math.Min(ladder.TipAtPull.Least, ladder.TipAtPush.Least);
        // The gap grows nearly as the anchor goes back; the next sixteenth up, then tried.
        var step = say.LengthUnitName == "in" ? Length.MetresPerInch / 16 : 0.001;
        var back = Math.Ceiling(((ladder.Wanted - least) / step) - 1e-9) * step;
        for (var i = 0; i < 8; i++, back += step)
        {
            if (Trial.Anchor(answer.Run, answer.Placement!, back, 0, solve.Typed) is not { } trial)
                yield break;
            var choice = solve.Choice($"{say.Move(back)} away from the arm", back, QuantityKind.Length, solve.SetAnew(trial));
            if (!solve.Reverses(choice.Answer) && choice.Answer.Ladder is { } then && Math.Min(then.TipAtPull.Least, then.TipAtPush.Least) >= ladder.Wanted)
            {
                yield return Of(answer, choice, $"Move the anchor {choice.Label}{solve.Setting(choice)}: {solve.Cushions(choice)}.");
                yield break;
            }
        }
    }

    private static IEnumerable<Remedy> Shorter(RunAnswer answer, Solve solve)
    {
        var ladder = answer.Ladder!;
        var most = answer.Run.CushionMost?.Metres ?? Sources.Published.Get("cushion/most").Value;
        if (ladder.KnobIn.Nominal + ladder.KnobOut.Nominal <= 2 * most)
        {
            // The stroke is right, only shared out badly; where nothing is left to share, the short end has its own remedies.
            // Worst cases alike first; where one end then still keeps too much, the two ends alike as they are meant.
            bool Cures(SolveChoice choice) => choice.Margin >= -1e-9 && choice.Answer.Ladder is { } then && Math.Max(then.KnobIn.Nominal, then.KnobOut.Nominal) <= most;
            if (ladder.Setting.Kind != SettingKind.Balanced
                && (solve.BalancedSwivel().Best is { } worst && Cures(worst) ? worst : solve.Swivel(null, 0.5 * (ladder.KnobIn.Nominal + ladder.KnobOut.Nominal)).Best) is { } slide && Cures(slide))
                yield return Of(answer, slide, $"Slide the swivel {slide.Label}: {solve.Cushions(slide)}.");
            yield break;
        }

        if (solve.HoleChoices(r => r > answer.Placement!.Case.Radius).Any() && solve.Hole().Best is { } hole && hole.Value > answer.Placement!.Case.Radius)
            yield return Of(answer, hole, $"Move to the {hole.Label}, which takes more of the stroke and less force{solve.Setting(hole)}: {solve.Cushions(hole)}.");
        if (solve.SmallestStroke(c => c.Works) is { } stroke && stroke.Value < ladder.Stroke)
            yield return Of(answer, stroke, $"Order a {stroke.Label}{solve.Setting(stroke)}: {solve.Cushions(stroke)}.");
    }

    private static IEnumerable<Remedy> Leverage(RunAnswer answer, Solve solve)
    {
        foreach (var aim in (ReadOnlySpan<SweepAim>)[SweepAim.EqualEndArms, SweepAim.SquareAtMid])
        {
            var found = solve.Clocking(aim, null);
            // Half a degree more, or it is no cure.
            if (found.Best is not { } best || !(best.Answer.Sweep!.LeastTransmission > (answer.Sweep?.LeastTransmission ?? 0) + 0.008))
                continue;
            return [Of(answer, best, found.Sentence)];
        }

        return [];
    }

    private static IEnumerable<Remedy> LessSwing(RunAnswer answer, Solve solve, FigureWriter say)
    {
        bool BowsOnlyThen(SolveChoice choice) => !Bows(answer) && Bows(choice.Answer);
        var found = solve.Anchor(SweepAim.BalancedSwing, null);
        // Half a degree less is worth a new bracket; a hundredth is not.
        if (found.Best is { } best && best.Answer.Sweep!.MostSwing < answer.Sweep!.MostSwing - 0.005 && !BowsOnlyThen(best))
            yield return Of(answer, best, found.Sentence);
        for (var factor = 1.25; factor <= 3; factor += 0.25)
        {
            var back = (factor - 1) * answer.Sweep!.AtMid.Length;
            if (Trial.Anchor(answer.Run, answer.Placement!, back, 0, solve.Typed) is not { } trial)
                yield break;
            var choice = solve.Choice($"{say.Move(back)} away from the arm", back, QuantityKind.Length, solve.SetAnew(trial));
            if (solve.Reverses(choice.Answer) || solve.VerdictOf(choice, SweepRules.Swing) != Verdict.Clear)
                continue;
            if (BowsOnlyThen(choice))
            {
                var wire = choice.Answer.Forces!.BareWire!;
                yield return new($"Take an end tube that swivels farther, or a smaller sweep or arm. Moving the anchor back alone is no cure: where the swing fits, {say.Length(wire.Length)} of bare wire bow out under the push.");
                yield break;
            }

            yield return Of(answer, choice, $"Move the anchor {choice.Label}{solve.Setting(choice)}: swing {say.Angle(choice.Answer.Sweep!.MostSwing, Rounding.Up)}, {solve.Cushions(choice)}.");
            yield break;
        }
    }

    /// <summary>A wire that holds now, and set back so far can't be pushed any more.</summary>
    private static bool Bows(RunAnswer of) => of.Forces is { BareWire: { } wire } && !(wire.Critical > wire.Compression);

    private static IEnumerable<Remedy> Lighter(RunAnswer answer, Solve solve, FigureWriter say)
    {
        // A longer arm is not always an easier one: it meets the wire at another angle.
        static double Hand(RunAnswer of) => of.Forces is { } f ? Math.Max(f.MostPull.Worst, f.MostPush.Worst) : double.PositiveInfinity;
        var larger = solve.HoleChoices(r => r > answer.Placement!.Case.Radius)
            .Where(c => c.Works && Hand(c.Answer) < Hand(answer))
            .MinBy(c => Hand(c.Answer));
        if (larger is not null)
            yield return Of(answer, larger, $"Move to the {larger.Label}{solve.Setting(larger)}: hand {say.Force(Hand(larger.Answer))} in the worst case, {solve.Cushions(larger)}.");

        if (answer.Run.Cable?.Friction is not { } mu || answer.ForceCase is not { } of)
            yield break;
        // How much of it is the bends: the same run laid straight.
        var straight = HandForceSolver.Solve(of with { Bends = [], BendsAreKnown = false });
        if (!double.IsFinite(Math.Max(straight.MostPull.Worst, straight.MostPush.Worst)))
            yield break;
        yield return new(
            $"Lay the conduit with fewer bends: laid straight it would take {say.Force(Math.Max(straight.MostPull.Worst, straight.MostPush.Worst))}; the bends and a friction of up to {FigureText.Plain(mu.Most, 2)} make the rest.");
    }

    private static IEnumerable<Remedy> ShorterWire(RunAnswer answer, FigureWriter say)
    {
        if (answer is not { Forces.BareWire: { } wire, ForceCase.Core: { } core })
            yield break;
        if (answer.Run.Cable?.Core?.Kind != Model.CoreKind.Solid)
        {
            yield return new("Take a solid core, or let a spring push and the cable only pull: a strand is not for pushing.");
            yield break;
        }

        // Euler: the load falls with the square of the length; the wanted margin gives the length directly, for the thinnest core.
        var margin = Sources.Published.Get("buckling/margin").Value;
        var length = Math.Sqrt(Math.PI * Math.PI * core.Bending.Least / (margin * wire.Compression));
        yield return new(
            $"Keep the bare wire to {say.Length(length, Rounding.Down)} or less at its longest (now {say.Length(wire.Length)}): guide it with a longer end tube, or take a thicker core.");
    }

    private static Remedy Of(RunAnswer answer, SolveChoice choice, string text) =>
        new(text, choice.Edits.Select(e => $"{answer.Run.Id}/{e.Path}={e.Value}").ToEquatableList());
}
