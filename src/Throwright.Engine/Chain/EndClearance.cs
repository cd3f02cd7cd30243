using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>Which body of a run's far end is looked at, and against what.</summary>
public enum EndPart
{
    /// <summary>The arm.</summary>
    Lever,

    /// <summary>The conduit, against what moves past it.</summary>
    Conduit,

    /// <summary>The conduit, against the handle and the arm at its own ends.</summary>
    OwnEnds,
}

/// <summary>What one body of a run's far end comes near to.</summary>
/// <param name="Holds">What its figures rest on.</param>
/// <param name="IsTaken">A size of the body is not in the file: one is taken for it, and <paramref name="Holds"/> says which.</param>
public sealed record EndPairs(EndPart Part, CockpitBody Body, EquatableList<PairClearance> Pairs, ClearanceWish Wish, string Holds, bool IsTaken)
{
    /// <summary>Parts that may touch, and why.</summary>
    public EquatableList<AllowedContact> Allowed { get; init; } = [];

    /// <summary>Name of the run's own handle: it moves with the arm.</summary>
    public string OwnHandle { get; init; } = "";

    /// <summary>As programs read it, and as its figures begin: lever, conduit, own.</summary>
    public string Id => Part switch { EndPart.Lever => "lever", EndPart.OwnEnds => "own", _ => "conduit" };

    public CockpitBody Other(PairClearance pair)
    {
        ArgumentNullException.ThrowIfNull(pair);
        return pair.First == Body ? pair.Second : pair.First;
    }

    /// <summary>Id of the figure of a pair: lever-clearance-yoke.</summary>
    public string FigureOf(PairClearance pair) => $"{Id}-{RunClearance.FigureOf(Other(pair).Name)}";
}

/// <summary>Arm and conduit of a run, held against what moves past them or what they move past.</summary>
/// <remarks>
/// The arm against everything, the conduit, which stands still, against what moves; what stands still too is the route's matter. Its
/// own handle and arm are held in its ends: what may touch there is named, the rest is counted.
/// </remarks>
internal static class EndClearance
{
    private static readonly SourceRef Theory = new("project", "docs/theory/clearance.md", Evidence.Derived);

    /// <param name="own">Of the run itself.</param>
    /// <param name="others">Of the other runs.</param>
    public static EquatableList<EndPairs> Of(DeviceEnd own, IEnumerable<DeviceEnd> others, CockpitAnswer cockpit, CockpitEffort effort)
    {
        if (own.IsEmpty || cockpit.Scene is not { } scene)
            return [];
        var found = new List<EndPairs>();
        var far = others.Where(e => e.Run.Id != own.Run.Id).ToList();
        var of = scene.Case(effort, [], []) with { Allowed = [] };
        EquatableList<PairClearance> Against(CockpitBody body, IEnumerable<CockpitBody?> all) =>
            all.OfType<CockpitBody>().Select(other => ClearanceSolver.Between(of, body, other, effort.Cancel)).ToEquatableList();
        if (own.Lever is { } lever)
        {
            var least = Published.Get("clearance/least");
            found.Add(new(
                EndPart.Lever,
                lever,
                Against(lever, [.. scene.Bodies, .. scene.Handles.Select(h => h.Body), .. scene.Sheets.Select(s => s.Body), .. far.Select(f => f.Lever), .. far.Select(f => f.Conduit)]),
                new(new(least.Value, least.Source), IsOwn: false),
                own.WidthIsTaken
                    ? "the arm's width is not in the file (leverEnd.arm.width): two pin diameters of metal all round its holes are taken"
                    : "the arm as wide as the file says",
                own.WidthIsTaken)
            { OwnHandle = scene.Handles.FirstOrDefault(h => h.Run.Id == own.Run.Id)?.Name ?? "" });
        }

        if (own.Conduit is { } conduit)
        {
            var keep = Published.Get("route/chafe-least");
            found.Add(new(
                EndPart.Conduit,
                conduit,
                Against(conduit, [.. scene.Bodies.Where(b => b.Joints.Joints.Count > 0), .. scene.Handles.Where(h => h.Run.Id != own.Run.Id).Select(h => h.Body), .. far.Select(f => f.Lever)]),
                new(new(keep.Value, keep.Source), IsOwn: false),
                own.OutsideIsKnown
                    ? "the conduit on its lie, thicker by what 39 of 40 lays move, and the free wire in every place; what stands still beside it is the route's"
                    : $"the conduit's outside is not in the file (cable.conduit.outside): {FigureText.Plain(Published.Get("clearance/conduit-outside").Value * 1000, 1)} mm is taken, thicker by what 39 of 40 lays move",
                !own.OutsideIsKnown));
        }

        if (Own(own, scene, of, effort) is { } at)
            found.Add(at);
        return found.ToEquatableList();
    }

    /// <summary>A run's conduit against its own handle and arm.</summary>
    private static EndPairs? Own(DeviceEnd own, CockpitScene scene, CockpitCase of, CockpitEffort effort)
    {
        if (own.Conduit is not { } conduit)
            return null;
        var least = Published.Get("cushion/least");
        var handle = scene.Handles.FirstOrDefault(h => h.Run.Id == own.Run.Id)?.Body;
        var allowed = new List<AllowedContact>();
        var parts = conduit.Solid.PartNames;
        if (handle is not null && parts.Contains(DeviceBodies.AtHandle))
            allowed.Add(new(handle.Name, "shank", conduit.Name, DeviceBodies.AtHandle, "the shank slides in its bushing there"));
        if (own.Lever is { } lever)
        {
            if (parts.Contains("wire"))
                allowed.AddRange(lever.Solid.PartNames.Distinct().Select(p => new AllowedContact(lever.Name, p, conduit.Name, "wire", "the wire is held there")));
            if (parts.Contains(DeviceBodies.AtArm) && lever.Solid.PartNames.Contains("swivel"))
                allowed.Add(new(lever.Name, "swivel", conduit.Name, DeviceBodies.AtArm, "the tip gap looks at that"));
        }

        var widthIsTaken = own.Lever is not null && own.WidthIsTaken;
        var pairs = ((CockpitBody?[])[handle, own.Lever]).OfType<CockpitBody>().Select(b => ClearanceSolver.Between(of with { Allowed = allowed.ToEquatableList() }, conduit, b, effort.Cancel)).ToEquatableList();
        return pairs.Count == 0 ? null : new(
            EndPart.OwnEnds,
            conduit,
            pairs,
            new(new(least.Value, least.Source), IsOwn: false),
            $"{(widthIsTaken ? "the arm's width is not in the file and is taken; " : "")}{(own.OutsideIsKnown ? "" : "the conduit's outside is not in the file and is taken; ")}left out: {string.Join("; ", allowed.Select(a => $"{a.FirstPart} and {a.SecondPart} ({a.Reason})"))}",
            widthIsTaken || !own.OutsideIsKnown)
        { Allowed = allowed.ToEquatableList(), OwnHandle = handle?.Name ?? "" };
    }

    public static IEnumerable<Finding> Findings(EquatableList<EndPairs> ends, FigureWriter say)
    {
        foreach (var end in ends)
        {
            foreach (var finding in ClearanceRules.Find(end.Pairs, [], _ => end.Wish, end.FigureOf, say))
            {
                var isPair = finding.Rule == ClearanceRules.Pair;
                var taken = isPair && end.IsTaken;
                var why = finding.Why;
                if (taken || (isPair && end.Part == EndPart.OwnEnds))
                    why += $" {char.ToUpperInvariant(end.Holds[0])}{end.Holds[1..]}.";
                if (end.Pairs.Any(p => IsOwnHandle(end, p) && end.FigureOf(p) == finding.Figure))
                    why += $" {char.ToUpperInvariant(Apart[0])}{Apart[1..]}.";
                yield return finding with
                {
                    Rule = !isPair ? finding.Rule : end.Part switch { EndPart.Lever => ClearanceRules.Lever, EndPart.OwnEnds => ClearanceRules.Own, _ => ClearanceRules.Conduit },
                    // What touches only as far as a size is taken for granted is no proven fault.
                    Verdict = taken && finding.Verdict == Verdict.Fail ? Verdict.Caution : finding.Verdict,
                    Why = why.TrimStart(),
                };
            }
        }
    }

    public static IEnumerable<Figure> Figures(EquatableList<EndPairs> ends) =>
        from end in ends
        from pair in end.Pairs.OrderBy(p => p.Lower).ThenBy(p => p.Upper)
        let between = end.Part == EndPart.OwnEnds ? $"the conduit from its own {(end.Other(pair).Name == end.OwnHandle ? "handle" : "arm")}" : $"the {(end.Part == EndPart.Lever ? "lever" : "conduit")} from {end.Other(pair).Name}"
        select ClearanceFindings.Of(pair, end.FigureOf(pair), between, end.Wish, IsOwnHandle(end, pair) ? $"{end.Holds}; {Apart}" : end.Holds);

    // The band that knob and arm keep together is as wide as cushions and give; all positions of both hold it, whatever it is.
    private const string Apart = "arm and knob of one run are taken as free of each other, more positions than they have together: the distance is never less than proved";

    private static bool IsOwnHandle(EndPairs end, PairClearance pair) => end.Part == EndPart.Lever && end.OwnHandle.Length > 0 && end.Other(pair).Name == end.OwnHandle;
}
