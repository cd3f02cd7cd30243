using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>What one body of a run's far end comes near to.</summary>
/// <param name="Name">"lever" or "conduit".</param>
/// <param name="Holds">What its figures rest on.</param>
/// <param name="IsTaken">A size of the body is not in the file: one is taken for it, and <paramref name="Holds"/> says which.</param>
public sealed record EndPairs(string Name, CockpitBody Body, EquatableList<PairClearance> Pairs, ClearanceWish Wish, string Holds, bool IsTaken)
{
    public CockpitBody Other(PairClearance pair)
    {
        ArgumentNullException.ThrowIfNull(pair);
        return pair.First == Body ? pair.Second : pair.First;
    }

    /// <summary>Id of the figure of a pair: lever-clearance-yoke.</summary>
    public string FigureOf(PairClearance pair) => $"{Name}-{RunClearance.FigureOf(Other(pair).Name)}";
}

/// <summary>Arm and conduit of a run, held against what moves past them or what they move past.</summary>
/// <remarks>
/// The arm against everything but its own conduit and wire, whose end it comes near by design: the tip gap of the ladder looks at that.
/// The conduit, which stands still, against what moves; what stands still too is the route's matter, and its own handle's shank ends
/// in it.
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
                "lever",
                lever,
                Against(lever, [.. scene.Bodies, .. scene.Handles.Select(h => h.Body), .. scene.Sheets.Select(s => s.Body), .. far.Select(f => f.Lever), .. far.Select(f => f.Conduit)]),
                new(new(least.Value, least.Source), IsOwn: false),
                own.WidthIsTaken
                    ? "the arm's width is not in the file (leverEnd.arm.width): two pin diameters of metal all round its holes are taken"
                    : "the arm as wide as the file says; its own conduit and wire are not counted, the tip gap looks at them",
                own.WidthIsTaken));
        }

        if (own.Conduit is { } conduit)
        {
            var keep = Published.Get("route/chafe-least");
            found.Add(new(
                "conduit",
                conduit,
                Against(conduit, [.. scene.Bodies.Where(b => b.Joints.Joints.Count > 0), .. scene.Handles.Where(h => h.Run.Id != own.Run.Id).Select(h => h.Body), .. far.Select(f => f.Lever)]),
                new(new(keep.Value, keep.Source), IsOwn: false),
                own.OutsideIsKnown
                    ? "the conduit on its lie, thicker by what 39 of 40 lays move, and the free wire in every place; what stands still beside it is the route's"
                    : $"the conduit's outside is not in the file (cable.conduit.outside): {FigureText.Plain(Published.Get("clearance/conduit-outside").Value * 1000, 1)} mm is taken, thicker by what 39 of 40 lays move",
                !own.OutsideIsKnown));
        }

        return found.ToEquatableList();
    }

    public static IEnumerable<Finding> Findings(EquatableList<EndPairs> ends, FigureWriter say)
    {
        foreach (var end in ends)
        {
            foreach (var finding in ClearanceRules.Find(end.Pairs, [], _ => end.Wish, end.FigureOf, say))
            {
                var isPair = finding.Rule == ClearanceRules.Pair;
                var taken = isPair && end.IsTaken;
                yield return finding with
                {
                    Rule = !isPair ? finding.Rule : end.Name == "lever" ? ClearanceRules.Lever : ClearanceRules.Conduit,
                    // What touches only as far as a size is taken for granted is no proven fault.
                    Verdict = taken && finding.Verdict == Verdict.Fail ? Verdict.Caution : finding.Verdict,
                    Why = taken ? $"{finding.Why} {char.ToUpperInvariant(end.Holds[0])}{end.Holds[1..]}.".TrimStart() : finding.Why,
                };
            }
        }
    }

    public static IEnumerable<Figure> Figures(EquatableList<EndPairs> ends) =>
        from end in ends
        from pair in end.Pairs.OrderBy(p => p.Lower).ThenBy(p => p.Upper)
        select ClearanceFindings.Of(pair, end.FigureOf(pair), $"least distance of the {end.Name} from {end.Other(pair).Name}, over all positions", end.Wish, end.Holds);
}
