using System.Collections.Concurrent;
using Throwright.Engine.Chain;
using Throwright.Engine.Model;

namespace Throwright.Web.Editing;

/// <summary>Clearance maps over the tilts of a mount, each worked out once for as long as nothing that it rests on changes.</summary>
public sealed class TiltMaps(Checks checks)
{
    private const int MostKept = 40;
    private readonly ConcurrentDictionary<(object Rests, string Run), MountMap> maps = new();

    /// <summary>Cells done, told from the threads that prove them: who listens and waits holds the map up.</summary>
    public event Action<int>? Reached;

    /// <summary>The map if it is there already.</summary>
    public MountMap? Ready(Aircraft aircraft, Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return maps.GetValueOrDefault((checks.ClearanceKey(aircraft), run.Id));
    }

    /// <summary>Forgets a map that was stopped, so that it is worked out again.</summary>
    public void GoOn(Aircraft aircraft, Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        maps.TryRemove((checks.ClearanceKey(aircraft), run.Id), out _);
    }

    /// <summary>Works the map out on the caller's thread.</summary>
    /// <param name="progress">Called with cells done and cells in all; from any thread.</param>
    /// <param name="stop">The person ends it: the cells reached so far are kept.</param>
    /// <returns>Null: there is nothing to map; the obstacle says why.</returns>
    public MountMap? Solve(Aircraft aircraft, Run run, Action<int, int> progress, CancellationToken stop, out string obstacle)
    {
        ArgumentNullException.ThrowIfNull(run);
        // One thread less than there are: an edit made meanwhile is answered first.
        var solve = Search(aircraft, run, Math.Max(1, Environment.ProcessorCount - 1), stop);
        obstacle = solve.Obstacle ?? "";
        if (solve.Obstacle is not null)
            return null;
        var map = solve.Map(solve.Find(withOthers: false), progress: (done, all) =>
        {
            progress(done, all);
            Reached?.Invoke(done);
        });
        if (maps.Count > MostKept)
            maps.Clear();
        maps[(checks.ClearanceKey(aircraft), run.Id)] = map;
        return map;
    }

    /// <summary>One tilt as a change of the file, with the clearance it gives.</summary>
    public MountChange At(Aircraft aircraft, Run run, Engine.Mount.Tilt tilt, CancellationToken stop) => Search(aircraft, run, 1, stop).At(tilt);

    private MountSolve Search(Aircraft aircraft, Run run, int threads, CancellationToken stop) =>
        new(aircraft, run, new(aircraft.Display), new() { Meshes = checks.Meshes.GetValueOrDefault, Threads = threads, Cancel = stop }, finest: MountSolve.Quick);
}
