using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using Throwright.Engine.Chain;
using Throwright.Engine.Cushion;
using Throwright.Engine.Model;
using Throwright.Shapes;
using Throwright.Shapes.Distance;

namespace Throwright.Web.Editing;

/// <summary>Answers, each worked out once for as long as nothing that it rests on has changed.</summary>
/// <remarks>
/// A run's ladder and forces rest on the aircraft and the run. Clearance rests on the bodies, the sheets and all handles,
/// and takes far longer: it is kept apart, so that a changed arm does not ask for it again.
/// </remarks>
public sealed class Checks
{
    private const int MostKept = 4000;
    private const int MostCockpits = 24;
    private readonly ConcurrentDictionary<Question, Lazy<RunAnswer>> answers = new();
    private readonly ConcurrentDictionary<Once<CockpitQuestion>, Lazy<CockpitAnswer?>> cockpits = new();
    private readonly ConcurrentDictionary<(Once<Aircraft> Around, Once<Run> Run), Lazy<DeviceEnd>> ends = new();
    private readonly KnownLies lies = new();

    private readonly ConditionalWeakTable<Aircraft, Keys> keys = [];
    private readonly Lock gate = new();
    private readonly ConditionalWeakTable<Skin, MeshShape> seen = [];
    private int edition;
    private readonly Dictionary<string, Search> searches = [];

    /// <param name="Ends">What the arms and conduits of the other runs rest on; null where this run has none that could meet them.</param>
    private sealed record Question(Once<Aircraft> Around, Once<CockpitQuestion>? Cockpit, Run Run, Once<EquatableList<Run>>? Ends);

    /// <summary>A clearance that is being worked out. Stopped by the person, it is kept as far as it came; overtaken by a change, it is dropped.</summary>
    private sealed record Search(Once<CockpitQuestion> Of, CancellationTokenSource Stop)
    {
        public bool IsKept { get; set; }
    }

    /// <summary>A large record as a key: its hash is worked out once.</summary>
    private sealed class Once<T>(T value) : IEquatable<Once<T>>
        where T : notnull
    {
        private readonly int hash = value.GetHashCode();

        public T Value => value;

        public bool Equals(Once<T>? other) => ReferenceEquals(this, other) || (other is not null && hash == other.hash && value.Equals(other.Value));

        public override bool Equals(object? obj) => Equals(obj as Once<T>);

        public override int GetHashCode() => hash;
    }

    /// <param name="Ends">What each arm and conduit of the file rests on.</param>
    private sealed record Keys(Once<Aircraft> Bare, Once<CockpitQuestion> Cockpit, EquatableList<Once<Run>> Ends);

    /// <summary>What clearance rests on.</summary>
    private sealed record CockpitQuestion(Aircraft Around, EquatableList<(string Id, string Label, CockpitEnd? End)> Handles);

    /// <summary>Meshes that the open files have read; a mesh is known by its file and where it was placed.</summary>
    public ConcurrentDictionary<MeshShape, Skin> Meshes { get; } = [];

    /// <summary>A mesh as it was read. One that is new may stand for an older one of the same file: nothing worked out with that holds any more.</summary>
    public void Take(MeshShape shape, Skin skin)
    {
        lock (gate)
        {
            if (!seen.TryAdd(skin, shape))
                return;
            var isOther = Meshes.ContainsKey(shape);
            Meshes[shape] = skin;
            if (!isOther)
                return;
            edition++;
            answers.Clear();
            cockpits.Clear();
            ends.Clear();
        }
    }

    /// <summary>Pairs of bodies done and in all, while clearance is being worked out.</summary>
    public event Action<int, int>? Progress;

    /// <summary>The answer; worked out on the caller's thread if it is not there yet.</summary>
    public RunAnswer Of(Aircraft aircraft, Run run)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        var cockpit = CockpitOf(aircraft);
        if (answers.Count > MostKept)
            answers.Clear();
        return answers.GetOrAdd(WholeOf(aircraft, run), q => new(() => RunCheck.CheckWith(aircraft, q.Run, new LadderEffort(), cockpit, () => EndsBeside(aircraft, q.Run), lies))).Value;
    }

    /// <summary>The answer if it is there already.</summary>
    public RunAnswer? Ready(Aircraft aircraft, Run run)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        return answers.TryGetValue(WholeOf(aircraft, run), out var found) && found.IsValueCreated ? found.Value : null;
    }

    /// <summary>All but clearance, if it is there already.</summary>
    public RunAnswer? ReadyInPart(Aircraft aircraft, Run run) =>
        answers.TryGetValue(new(Bare(aircraft), null, run, null), out var found) && found.IsValueCreated ? found.Value : null;

    /// <summary>What can be said at once: the whole answer where clearance is there already, else all but clearance.</summary>
    public (RunAnswer Answer, bool IsWhole) Now(Aircraft aircraft, Run run)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        return CockpitIsReady(aircraft)
            ? (Of(aircraft, run), true)
            : (answers.GetOrAdd(new(Bare(aircraft), null, run, null), q => new(() => RunCheck.CheckWith(aircraft, q.Run, new LadderEffort(), null, null, lies))).Value, false);
    }

    /// <summary>What is being typed: looked at once and not kept. Clearance counts where it is there already; whether it does stands beside the answer.</summary>
    public (RunAnswer Answer, bool IsWhole) Typed(Aircraft aircraft, Run run)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        var isKnown = cockpits.TryGetValue(Ask(aircraft), out var found) && found.IsValueCreated;
        // Arm and conduit are held against those of the other runs where these are laid already, else afterwards: that is not done
        // between two strokes of the keys.
        var beside = isKnown ? EndsReady(aircraft, run) : null;
        return (RunCheck.CheckWith(aircraft, run, new LadderEffort(), isKnown ? found!.Value : null, () => beside, lies), beside is not null || (isKnown && !DeviceEnd.IsDescribed(run)));
    }

    /// <summary>The same with the clearance of this run's handle, arm and conduit, which takes far longer.</summary>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public RunAnswer TypedWhole(Aircraft aircraft, Run run, CancellationToken stop)
    {
        var cockpit = cockpits.TryGetValue(Ask(aircraft), out var found) && found.IsValueCreated ? found.Value : CockpitCheck.Solve(aircraft, run, new() { Threads = Math.Max(1, Environment.ProcessorCount - 1), Cures = false, Cancel = stop, Meshes = Meshes.GetValueOrDefault });
        stop.ThrowIfCancellationRequested();
        return RunCheck.CheckWith(aircraft, run, new LadderEffort(), cockpit, () => EndsBeside(aircraft, run), lies);
    }

    /// <summary>The run with its mount as it is tried, and what the cockpit view shows of it.</summary>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public (RunAnswer Answer, CockpitAnswer? Cockpit) TriedWhole(Aircraft aircraft, Run run, CancellationToken stop)
    {
        var cockpit = CockpitCheck.Solve(aircraft, run, new() { Cures = false, Cancel = stop, Meshes = Meshes.GetValueOrDefault });
        stop.ThrowIfCancellationRequested();
        return (RunCheck.CheckWith(aircraft, run, new LadderEffort(), cockpit, () => EndsBeside(aircraft, run), lies), cockpit);
    }

    /// <summary>What everything about clearance rests on, as a key: equal as long as nothing of it changed.</summary>
    public object ClearanceKey(Aircraft aircraft) => (Ask(aircraft), edition);

    /// <summary>Clearance of all handles; null: the file says nothing of what they could meet.</summary>
    /// <exception cref="OperationCanceledException">The same aircraft was changed meanwhile, and the newer question goes first.</exception>
    public CockpitAnswer? CockpitOf(Aircraft aircraft)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        var question = Ask(aircraft);
        if (cockpits.Count > MostCockpits)
            cockpits.Clear();
        if (!cockpits.ContainsKey(question))
        {
            lock (gate)
            {
                if (searches.TryGetValue(aircraft.Name, out var other) && !other.Of.Equals(question))
                    other.Stop.Cancel();
            }
        }

        return cockpits.GetOrAdd(question, q => new(() => Look(aircraft, q))).Value;
    }

    /// <summary>Ends the search for clearance; what is proved so far is kept and says so.</summary>
    public void StopAndKeep(Aircraft aircraft)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        lock (gate)
        {
            if (!searches.TryGetValue(aircraft.Name, out var search))
                return;
            search.IsKept = true;
            search.Stop.Cancel();
        }
    }

    /// <summary>Forgets a clearance that was stopped, so that it is looked for again.</summary>
    public void GoOn(Aircraft aircraft) => cockpits.TryRemove(Ask(aircraft), out _);

    private CockpitAnswer? Look(Aircraft aircraft, Once<CockpitQuestion> question)
    {
        using var stop = new CancellationTokenSource();
        var search = new Search(question, stop);
        lock (gate)
            searches[aircraft.Name] = search;
        try
        {
            var found = CockpitCheck.Solve(aircraft, null, new()
            {
                Threads = Environment.ProcessorCount,
                Progress = (done, all) => Progress?.Invoke(done, all),
                Cancel = stop.Token,
                Meshes = Meshes.GetValueOrDefault,
            });
            if (!stop.IsCancellationRequested || search.IsKept)
                return found;
            cockpits.TryRemove(question, out _);
            throw new OperationCanceledException(stop.Token);
        }
        finally
        {
            lock (gate)
            {
                if (searches.GetValueOrDefault(aircraft.Name) == search)
                    searches.Remove(aircraft.Name);
            }
        }
    }

    /// <summary>Is clearance there, or not asked for?</summary>
    public bool CockpitIsReady(Aircraft aircraft)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        return cockpits.TryGetValue(Ask(aircraft), out var found) && found.IsValueCreated;
    }

    private Question WholeOf(Aircraft aircraft, Run run) => new(
        Bare(aircraft), Ask(aircraft), run, DeviceEnd.IsDescribed(run) ? new(KeysOf(aircraft).Ends.Where(e => e.Value.Id != run.Id).Select(e => e.Value).ToEquatableList()) : null);

    /// <summary>Arms and conduits of the other runs: each is worked out once, however often this run is looked at.</summary>
    private IEnumerable<DeviceEnd> EndsBeside(Aircraft aircraft, Run run)
    {
        if (ends.Count > MostCockpits * 10)
            ends.Clear();
        return KeysOf(aircraft).Ends.Where(e => e.Value.Id != run.Id).Select(e => ends.GetOrAdd((Bare(aircraft), e), basis => new(() => RunCheck.DeviceEndOf(aircraft, basis.Run.Value, lies, Meshes.GetValueOrDefault))).Value);
    }

    /// <summary>The same if all of them are there already.</summary>
    private List<DeviceEnd>? EndsReady(Aircraft aircraft, Run run)
    {
        var found = new List<DeviceEnd>();
        foreach (var basis in KeysOf(aircraft).Ends.Where(e => e.Value.Id != run.Id))
        {
            if (!ends.TryGetValue((Bare(aircraft), basis), out var end) || !end.IsValueCreated)
                return null;
            found.Add(end.Value);
        }

        return found;
    }

    private Once<Aircraft> Bare(Aircraft aircraft) => KeysOf(aircraft).Bare;

    private Once<CockpitQuestion> Ask(Aircraft aircraft) => KeysOf(aircraft).Cockpit;

    private Keys KeysOf(Aircraft aircraft) => keys.GetValue(aircraft, a => new(
        new(a with { Runs = [] }),
        new(new(
            new() { Name = "", Bodies = a.Bodies, Sheets = a.Sheets, Pilot = a.Pilot, Points = a.Points },
            a.Runs.Select(r => (r.Id, r.Label, r.CockpitEnd)).ToEquatableList())),
        a.Runs.Where(DeviceEnd.IsDescribed).Select(r => new Once<Run>(DeviceEnd.BasisOf(r))).ToEquatableList()));
}
