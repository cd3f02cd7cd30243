using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Tilt = Throwright.Engine.Mount.Tilt;

namespace Throwright.Engine.Chain;

/// <summary>What comes near the handles of an aircraft, over all positions of everything that moves.</summary>
public sealed record CockpitAnswer(EquatableList<HandleMount> Handles, CockpitClearance Clearance, EquatableList<PlacedMesh> Meshes, EquatableList<LeftOut> NotRead)
{
    /// <summary>Room for a hand round each knob.</summary>
    public EquatableList<HandRoom> Rooms { get; init; } = [];

    /// <summary>Leaning knobs against the sheets that carry them.</summary>
    public EquatableList<PairClearance> OwnSheets { get; init; } = [];

    /// <summary>What moves and is no handle, against the sheets and everything else: it concerns no one run. Empty where one run was asked about.</summary>
    public EquatableList<PairClearance> Movers { get; init; } = [];

    /// <summary>Parts left out of these, since they reach through a sheet by design.</summary>
    public EquatableList<AllowedContact> Through { get; init; } = [];

    /// <summary>Everything that may touch, but for what a run's own arm and conduit have.</summary>
    public EquatableList<AllowedContact> Allowed => [.. Clearance.Case.Allowed, .. Scene?.SheetContacts ?? [], .. Through];

    /// <summary>Every pair, the handles' first.</summary>
    public IEnumerable<PairClearance> All => Clearance.Pairs.Concat(Movers);

    /// <summary>What the clearances were worked out in.</summary>
    internal CockpitScene? Scene { get; init; }

    /// <summary>What concerns one run.</summary>
    public RunClearance Of(Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        if (Handles.FirstOrDefault(h => h.Run.Id == run.Id) is not { } handle)
            return new(null, [], [], Meshes, NotRead, []);
        bool Concerns(string first, string second) => first == handle.Name || second == handle.Name;
        return new(
            handle,
            Clearance.Pairs.Where(p => Concerns(p.First.Name, p.Second.Name)).ToEquatableList(),
            Allowed.Where(a => Concerns(a.FirstBody, a.SecondBody)).ToEquatableList(),
            Meshes,
            NotRead,
            Rooms.Where(r => r.Knob == handle.Name).ToEquatableList())
        {
            OwnSheet = OwnSheets.FirstOrDefault(p => p.First.Name == handle.Name),
        };
    }
}

/// <summary>Room between a knob, all over its travel, and something else: at most worked out up to what is wanted.</summary>
/// <param name="Knob">Name of the handle.</param>
/// <param name="Lower">Proved, m.</param>
/// <param name="Upper">Attained, m.</param>
public sealed record HandRoom(string Knob, string Other, double Lower, double Upper, Limit Wanted);

/// <summary>Clearance of one run's handle.</summary>
/// <param name="Handle">Null: not enough is known of it.</param>
public sealed record RunClearance(
    HandleMount? Handle, EquatableList<PairClearance> Pairs, EquatableList<AllowedContact> Allowed, EquatableList<PlacedMesh> Meshes, EquatableList<LeftOut> NotRead, EquatableList<HandRoom> Rooms)
{
    /// <summary>A leaning knob against its own sheet; null: it stands square.</summary>
    public PairClearance? OwnSheet { get; init; }

    /// <summary>Name of what the handle is held against.</summary>
    public string Other(PairClearance pair)
    {
        ArgumentNullException.ThrowIfNull(pair);
        return pair.First.Name == Handle?.Name ? pair.Second.Name : pair.First.Name;
    }

    /// <summary>Does what the handle is held against move?</summary>
    public bool CanMove(PairClearance pair)
    {
        ArgumentNullException.ThrowIfNull(pair);
        return (pair.First.Name == Handle?.Name ? pair.Second : pair.First).Joints.Joints.Any(j => j.To > j.From);
    }

    /// <summary>Id of the figure of a pair: clearance-right-leg.</summary>
    public string FigureOf(PairClearance pair) => FigureOf(Other(pair));

    internal static string FigureOf(string other) =>
        "clearance-" + new string([.. other.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')]).Trim('-');
}

/// <summary>Holds every handle against everything else.</summary>
public static class CockpitCheck
{
    /// <summary>All handles, or one; null: the file says nothing of what they could meet.</summary>
    public static CockpitAnswer? Solve(Aircraft aircraft, Run? only = null, CockpitEffort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        if (!CockpitScene.IsAskedFor(aircraft))
            return null;
        effort ??= new();
        var scene = CockpitScene.Of(aircraft, effort);
        var handles = scene.Handles.Select(h => (Handle: h, h.Body)).ToList();
        var watched = handles.Where(h => only is null || h.Handle.Run.Id == only.Id).Select(h => h.Body).ToList();
        var of = scene.Case(effort, watched, handles.Select(h => h.Body).Except(watched).Concat(scene.Bodies));
        var clearance = ClearanceSolver.Solve(of, effort.Threads, effort.Progress, effort.Cancel);
        var withSheets = of with { Allowed = [.. of.Allowed, .. scene.SheetContacts] };
        // Sheets stand still, so only what moves is held against them; a handle's own sheet has its hole, and is looked at by itself.
        var asked = scene.Handles.Where(h => only is null || h.Run.Id == only.Id).ToList();
        clearance = clearance with
        {
            Pairs =
            [
                .. clearance.Pairs,
                .. from handle in asked
                   from sheet in scene.Sheets
                   where handle.Run.CockpitEnd?.Sheet?.Id != sheet.Of.Id
                   select ClearanceSolver.Between(withSheets, handle.Body, sheet.Body, effort.Cancel),
            ],
        };
        var own = asked.Where(h => h.Tilt != Tilt.None).Select(h => ClearanceSolver.Between(of with { Allowed = [] }, (h with { Unsure = h.LengthUnsure }).KnobBody, scene.OwnSheet(h), effort.Cancel));
        var (movers, through) = only is null ? Movers(scene, withSheets, effort) : ([], []);
        var rooms = scene.Handles.Where(h => only is null || h.Run.Id == only.Id).SelectMany(h => Rooms(h, scene, of, effort));
        return new(scene.Handles, clearance, scene.Meshes, scene.NotRead) { Rooms = rooms.ToEquatableList(), OwnSheets = own.ToEquatableList(), Movers = movers, Through = through, Scene = scene };
    }

    /// <summary>
    /// What moves and is no handle: against the sheets, and against everything of another body that stands still or moves. A limb
    /// gives way to a control, so it is held against sheets alone.
    /// </summary>
    private static (EquatableList<PairClearance> Found, EquatableList<AllowedContact> Through) Movers(CockpitScene scene, CockpitCase of, CockpitEffort effort)
    {
        var rigid = scene.Bodies.Where(b => !scene.Limbs.Contains(b.Name)).ToList();
        List<(CockpitBody Mover, CockpitBody Other, bool IsSheet)> pairs =
        [
            .. from b in scene.Bodies where b.Joints.Joints.Count > 0 from s in scene.Sheets select (b, s.Body, true),
            .. from i in Enumerable.Range(0, rigid.Count)
               from j in Enumerable.Range(i + 1, rigid.Count - i - 1)
               where scene.Kin[rigid[i].Name] != scene.Kin[rigid[j].Name] && rigid[i].Joints != rigid[j].Joints
               select rigid[i].Joints.Joints.Count > 0 ? (rigid[i], rigid[j], false) : (rigid[j], rigid[i], false),
        ];
        var found = new PairClearance[pairs.Count];
        var through = new AllowedContact?[pairs.Count];
        Parallel.For(0, pairs.Count, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, effort.Threads) }, i =>
        {
            var (mover, other, isSheet) = pairs[i];
            found[i] = ClearanceSolver.Between(of, mover, other, effort.Cancel);
            if (!isSheet || !found[i].Hits || !scene.Yokes.Contains(mover.Name))
                return;
            through[i] = new(mover.Name, "shaft", other.Name, Sheet.PartName, "the shaft goes through the sheet");
            found[i] = ClearanceSolver.Between(of with { Allowed = [.. of.Allowed, through[i]!] }, mover, other, effort.Cancel);
        });
        return (found.ToEquatableList(), through.OfType<AllowedContact>().ToEquatableList());
    }

    /// <summary>From the knob to other knobs, and to everything that is none.</summary>
    private static IEnumerable<HandRoom> Rooms(HandleMount handle, CockpitScene scene, CockpitCase of, CockpitEffort effort)
    {
        // A hand that the builder asked for is part of the handle already.
        if (handle.Hand > 0)
            yield break;
        var knob = handle.KnobBody;
        Datum hand = Published.Get("clearance/hand-bare"), gap = Published.Get("clearance/knob-gap");
        foreach (var (other, wanted) in scene.Handles.Where(h => h != handle).Select(h => (h.KnobBody, gap)).Concat(scene.Bodies.Select(b => (b, hand))))
        {
            var found = ClearanceSolver.Between(
                of with { Allowed = [] }, knob, other, new() { Tolerance = effort.Tolerance, Enough = wanted.Value, MostBoxes = effort.MostBoxes }, effort.Cancel);
            yield return new(handle.Name, other.Name, found.Lower, found.Upper, new(wanted.Value, wanted.Source));
        }
    }

    /// <summary>The clearance that is wanted round a run's handle.</summary>
    internal static ClearanceWish WishOf(Run run)
    {
        var usual = Published.Get("clearance/least");
        return run.CockpitEnd?.Clear is { } own
            ? new(new(own.Metres, new("project", "your own figure, typed into the file", Evidence.CommonPractice)), IsOwn: true)
            : new(new(usual.Value, usual.Source), IsOwn: false);
    }
}
