using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Throw;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;
using Throwright.Web.Editing;

namespace Throwright.Web.Parts;

/// <summary>One way that the engine found.</summary>
/// <param name="Text">What is done.</param>
/// <param name="Figures">What it gives, in half a line.</param>
/// <param name="Tries">Changes of the file; empty: it is as it is now.</param>
public sealed record FoundWay(string Text, string Figures, bool IsBest, bool Works, EquatableList<string> Tries)
{
    /// <summary>False: the knob would stand inside the panel.</summary>
    public bool CanBeRigged { get; init; } = true;
}

/// <summary>What was found, in a sentence, and every way.</summary>
public sealed record WorkedOut(string Sentence, IReadOnlyList<FoundWay> Ways);

/// <summary>A dimension that the engine can find.</summary>
/// <param name="Word">What the button says.</param>
/// <param name="IsLong">It may take more than a moment.</param>
public sealed record WorkAsk(string Key, string Part, string Word, bool IsLong = false);

/// <summary>A search: works on the caller's thread, tells what it is doing, and ends with an exception when it is stopped.</summary>
public delegate WorkedOut Search(Aircraft aircraft, Run run, string key, Checks checks, Action<string>? doing, CancellationToken stop);

/// <summary>Everything that the engine can find for a part of a run: the same searches that the command line has.</summary>
public static class WorkOut
{
    public static IReadOnlyList<WorkAsk> All { get; } =
    [
        new("clocking", "device", "Where the arm is clocked on its shaft"),
        new("hole", "arm", "Which of the arm's holes"),
        new("arm", "arm", "How long the arm"),
        new("swivel", "arm", "Where the swivel sits on the wire"),
        new("anchor", "anchor", "Where the anchor stands"),
        new("route", "conduit", "Where to hold the conduit", IsLong: true),
        new("mount", "sheet", "Another hole, a shorter shank, a smaller handle", IsLong: true),
        new("stroke", "knob", "The least stroke that leaves room"),
    ];

    public static IEnumerable<WorkAsk> Of(string part) => All.Where(a => a.Part == part);

    /// <summary>Works it out on the caller's thread.</summary>
    /// <param name="doing">Told what is being done, in a sentence; as often as it comes.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static WorkedOut Find(Aircraft aircraft, Run run, string key, Checks checks, Action<string>? doing, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(checks);
        var say = new FigureWriter(aircraft.Display);
        if (key == "route")
            return Route(aircraft, run, say, checks, doing, stop);
        if (key == "mount")
            return Mount(aircraft, run, say, checks, doing, stop);
        var solve = new Solve(aircraft, run, say, checks.Meshes.GetValueOrDefault);
        if (solve.Obstacle is { } obstacle)
            return new(obstacle, []);
        var answer = key switch
        {
            "clocking" => solve.Clocking(SweepAim.BalancedSwing, null),
            "hole" => solve.Hole(),
            "arm" => solve.Arm(null),
            "anchor" => solve.Anchor(SweepAim.BalancedSwing, null),
            "stroke" => solve.Stroke(),
            _ => solve.Swivel(null, null),
        };
        stop.ThrowIfCancellationRequested();
        return new(answer.Sentence, [.. answer.Choices.Select((c, i) => new FoundWay(
            Capital(c.Label), solve.Cushions(c) + (c.Works ? "" : c.Answer.Sweep is { IsMonotone: false } ? "; it meets a dead centre" : "; less than wanted, or it fails elsewhere"), i == answer.Recommended, c.Works, c.CanBeRigged ? Tries(run, c.Edits) : [])
        {
            CanBeRigged = c.CanBeRigged,
        })]);
    }

    private static WorkedOut Route(Aircraft aircraft, Run run, FigureWriter say, Checks checks, Action<string>? doing, CancellationToken stop)
    {
        var found = RouteSolve.Find(aircraft, run, say, checks.Meshes.GetValueOrDefault, doing, stop);
        return new(found.Sentence, [.. found.Options.Select((o, i) => new FoundWay(
            o.Label == "no support" ? "Held at its ends only" : o.Edits.Any(e => e.Path == "cable.supports") ? $"Held at {o.Label}" : Capital(o.Label),
            o.Answer.Route?.Counted is { } lie
                ? $"{say.Length(lie.Case.Length + o.Answer.Route.InFittings)} long, tightest {say.Length(lie.LeastRadius, Rounding.Down)}, turns {say.Angle(lie.BendTotal)}{(o.Reason.Length > 0 ? $". {o.Reason}" : "")}"
                : o.Reason.Length > 0 ? o.Reason : "it finds no lie",
            i == found.Recommended, o.Works, Tries(run, o.Edits)))]);
    }

    private static WorkedOut Mount(Aircraft aircraft, Run run, FigureWriter say, Checks checks, Action<string>? doing, CancellationToken stop)
    {
        var solve = new MountSolve(aircraft, run, say, new() { Meshes = checks.Meshes.GetValueOrDefault, Threads = Math.Max(1, Environment.ProcessorCount - 1), Cancel = stop }, finest: MountSolve.Quick);
        if (solve.Obstacle is { } obstacle)
            return new(obstacle, []);
        var answer = solve.Find(doing: doing);
        stop.ThrowIfCancellationRequested();
        MountChange[] ways = [.. answer.Best is { } best ? [best] : (MountChange[])[], .. answer.Instead];
        return new(
            ways.Length > 0 ? $"{Capital(FigureCount(ways.Length))} would keep {say.Length(answer.Wanted)} from everything." : answer.Sentence,
            [.. ways.Select((w, i) => new FoundWay(w.Text, "", i == 0, true, Tries(run, w.Edits)))]);
    }

    private static EquatableList<string> Tries(Run run, EquatableList<TrialEdit> edits) => edits.Select(e => $"{run.Id}/{e.Path}={e.Value}").ToEquatableList();

    private static string FigureCount(int n) => n == 1 ? "one way" : $"{Papers.Marks.Words.Count(n)} ways";

    private static string Capital(string text) => Papers.Marks.Words.Capital(text);
}
