using Throwright.Engine.Chain;
using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Throw;

namespace Throwright.Papers.Ladder;

/// <summary>From the answer of a run to what its drawings need: the same for terminal, page and paper.</summary>
public static class RunLadder
{
    /// <summary>The ladder to be drawn, or its place where an input is still missing.</summary>
    public static LadderLayout LayoutOf(RunAnswer run, Display display)
    {
        ArgumentNullException.ThrowIfNull(run);
        var labels = LabelsOf(run);
        return run.Ladder is { } ladder
            ? LadderDrawing.Layout(ladder, labels, display)
            : Without(run, LadderDrawing.Place(labels, display, run.Needs.Select(n => n.Name), run.Run.CockpitEnd?.Stroke?.Nominal.Metres));
    }

    /// <summary>The words of a ladder with the verdicts of its cushions.</summary>
    public static LadderLabels LabelsOf(RunAnswer run)
    {
        ArgumentNullException.ThrowIfNull(run);
        Verdict? Of(string rule) => run.Findings.FirstOrDefault(f => f.Rule == rule)?.Verdict;
        return LadderLabels.For(run.Run) with { KnobIn = Of(LadderRules.KnobIn), KnobOut = Of(LadderRules.KnobOut), Tip = Of(LadderRules.Tip) };
    }

    /// <summary>A lever end that can't drive the arm has no ladder, whatever is typed in: the finding says why.</summary>
    private static LadderLayout Without(RunAnswer run, LadderLayout place) =>
        run.Findings.FirstOrDefault(f => f.Rule == SweepRules.DeadCentre && f.Verdict == Verdict.Fail) is { } finding
            ? place with { Without = Verdict.Fail, Needs = [finding.Sentence] }
            : place;
}
