using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Prove;
using Throwright.Shapes;

namespace Throwright.Engine.Chain;

/// <summary>A finding that more than one run has a part in.</summary>
/// <param name="Told">Id of the run whose findings hold it.</param>
/// <param name="Runs">Ids of the runs that it concerns; the one it is told of first.</param>
public sealed record SharedFinding(Finding Finding, string Told, EquatableList<string> Runs)
{
    /// <summary>Names of the two bodies that come near to one another, in either run's order the same; empty where it is not about bodies.</summary>
    internal string Bodies { get; init; } = "";
}

/// <summary>What lies between runs: handles, arms and conduits that meet those of another run, the order and the shapes of knobs.</summary>
public static class SharedFindings
{
    /// <summary>Worst first; two bodies that both runs tell of stand once, others of the same runs stand for themselves.</summary>
    public static EquatableList<SharedFinding> Of(AircraftAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var owners = Owners(answer);
        return answer.Runs
            .SelectMany(run => run.Findings.Where(f => f.Verdict != Verdict.Clear).Select(f => new SharedFinding(f, run.Run.Id, [run.Run.Id, .. Others(answer, run, f, owners)]) { Bodies = string.Join('/', Pairs(run, f).SelectMany(p => new[] { p.Own, p.Other }).Order(StringComparer.Ordinal)) }))
            .Where(s => s.Runs.Count > 1)
            .GroupBy(s => s.Bodies.Length > 0 ? s.Bodies : $"{s.Finding.Rule} {string.Join('/', s.Runs.Order(StringComparer.Ordinal))}")
            .Select(g => g.MaxBy(s => s.Finding.Verdict)!)
            .OrderByDescending(s => s.Finding.Verdict)
            .ToEquatableList();
    }

    private static IEnumerable<string> Others(AircraftAnswer answer, RunAnswer run, Finding finding, Dictionary<string, string> owners)
    {
        string[] ids = finding.Rule switch
        {
            LabelsApart.Rule => [.. LabelsApart.LikeTo(run.Run, answer.Aircraft.Runs)],
            PanelOrder.Levers => Of(ControlFunction.Throttle, ControlFunction.Propeller, ControlFunction.Mixture),
            PanelOrder.CarburettorHeat => Of(ControlFunction.Mixture, ControlFunction.Throttle),
            PanelOrder.Shapes => PanelOrder.Beside(Proof.KnobsOf(answer.Aircraft)) is { } beside ? [.. answer.Aircraft.Runs.Where(r => RunWords.Of(r).Name == beside.Name).Select(r => r.Id)] : [],
            ClearanceRules.Pair or ClearanceRules.Lever or ClearanceRules.Conduit => [.. Pairs(run, finding).Select(p => owners.GetValueOrDefault(p.Other, "")).Where(id => id.Length > 0)],
            _ => [],
        };
        return ids.Where(id => id != run.Run.Id).Distinct();

        string[] Of(params ControlFunction[] functions) => [.. answer.Aircraft.Runs.Where(r => functions.Contains(r.Function)).Select(r => r.Id)];
    }

    /// <summary>The run's body and the other that the finding's figure is the distance of, by their names.</summary>
    private static IEnumerable<(string Own, string Other)> Pairs(RunAnswer run, Finding finding) =>
        (run.Clearance is { } near ? near.Pairs.Where(p => RunClearance.FigureOf(near.Other(p)) == finding.Figure).Select(p => (near.Handle?.Name ?? "", near.Other(p))) : [])
            .Concat(run.Ends.SelectMany(e => e.Pairs.Where(p => e.FigureOf(p) == finding.Figure).Select(p => (e.Body.Name, e.Other(p).Name))));

    /// <summary>Bodies that belong to a run, by their names.</summary>
    private static Dictionary<string, string> Owners(AircraftAnswer answer)
    {
        var owners = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var handle in answer.Cockpit?.Handles ?? [])
            owners[handle.Name] = handle.Run.Id;
        foreach (var run in answer.Runs)
        {
            foreach (var end in run.Ends)
                owners[end.Body.Name] = run.Run.Id;
        }

        return owners;
    }
}
