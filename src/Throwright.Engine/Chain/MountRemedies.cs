using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Shapes;

namespace Throwright.Engine.Chain;

/// <summary>What would cure a handle that is fouled: the smallest tilt, else what to move instead.</summary>
internal static class MountRemedies
{
    public static EquatableList<Remedy> For(Aircraft aircraft, Run run, FigureWriter say, CockpitEffort? effort)
    {
        var solve = new MountSolve(aircraft, run, say, effort, finest: MountSolve.Quick);
        if (solve.Obstacle is not null)
            return [];
        var answer = solve.Find(withOthers: false);
        Remedy Of(MountChange change) => new(change.Text, change.Edits.Select(e => $"{run.Id}/{e.Path}={e.Value}").ToEquatableList());
        return answer.Best is { } best
            ? [Of(best with { Text = answer.Sentence })]
            : solve.NothingCures(answer) is { Length: > 0 } nothing ? [new($"{answer.Sentence} {nothing}")]
            : [.. answer.Instead.Select(Of)];
    }
}
