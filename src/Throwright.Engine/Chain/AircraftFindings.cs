using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;

namespace Throwright.Engine.Chain;

/// <summary>Something that nothing is proved about, and why.</summary>
public sealed record LeftOut(string What, string Why)
{
    public override string ToString() => $"{What}: {Why}";
}

/// <summary>What concerns the aircraft and no one run: movers against sheets and against each other, and what the proof leaves out.</summary>
internal static class AircraftFindings
{
    private static ClearanceWish Wish
    {
        get
        {
            var least = Published.Get("clearance/least");
            return new(new(least.Value, least.Source), IsOwn: false);
        }
    }

    public static IEnumerable<Finding> Of(Aircraft aircraft, CockpitAnswer cockpit)
    {
        var say = new FigureWriter(aircraft.Display);
        // Open meshes and allowed contacts are told with the handles and in the lists.
        foreach (var finding in ClearanceRules.Find(cockpit.Movers, [], _ => Wish, FigureOf, say).Where(f => f.Rule == ClearanceRules.Pair))
        {
            var isLimb = finding.Verdict == Verdict.Fail && cockpit.Scene is { } scene && cockpit.Movers.Any(p => FigureOf(p) == finding.Figure && scene.Limbs.Contains(p.First.Name));
            var why = isLimb ? "A limb gives way, but the person has less room than the file says."
                : finding.Verdict == Verdict.Fail ? "Either the aircraft has this fault, or one of the two is not as the file says; what touches by design is named under \"touches\"."
                : "";
            yield return finding with
            {
                Rule = ClearanceRules.Mover,
                Verdict = isLimb ? Verdict.Caution : finding.Verdict,
                Why = $"{finding.Why} {why}".Trim(),
            };
        }
    }

    public static IEnumerable<Figure> Figures(CockpitAnswer cockpit) =>
        cockpit.Movers.OrderBy(p => p.Lower).ThenBy(p => p.Upper)
            .Select(p => ClearanceFindings.Of(p, FigureOf(p), $"{p.First.Name} from {p.Second.Name}", Wish, "it concerns no one run"));

    /// <summary>Id of the figure of a pair: clearance-stick-panel.</summary>
    public static string FigureOf(PairClearance pair)
    {
        ArgumentNullException.ThrowIfNull(pair);
        return RunClearance.FigureOf($"{pair.First.Name} {pair.Second.Name}");
    }

    /// <summary>Everything that may touch: declared, through a sheet, and in the ends of conduits.</summary>
    public static IEnumerable<AllowedContact> Allowed(AircraftAnswer answer) =>
        (answer.Cockpit?.Allowed ?? []).Concat(answer.Runs.SelectMany(r => r.Ends).SelectMany(e => e.Allowed)).Distinct();

    /// <summary>The same in a line for each reason; what every run has is told once, with the names of the runs.</summary>
    public static IEnumerable<string> AllowedLines(AircraftAnswer answer)
    {
        foreach (var group in (answer.Cockpit?.Allowed ?? []).GroupBy(c => (c.FirstBody, c.SecondBody, c.Reason)))
            yield return $"{group.Key.FirstBody} {List(group.Select(c => c.FirstPart).Distinct())} and {group.Key.SecondBody} {List(group.Select(c => c.SecondPart).Distinct())}: {group.Key.Reason}";
        foreach (var group in answer.Runs.SelectMany(r => r.Ends.SelectMany(e => e.Allowed.Select(c => (Run: CockpitScene.NameOf(answer.Aircraft, r.Run), Contact: c)))).GroupBy(c => (c.Contact.SecondPart, c.Contact.Reason)))
        {
            var conduit = group.Key.SecondPart == "wire" ? "its wire" : $"its conduit {group.Key.SecondPart}";
            yield return $"{List(group.Select(c => c.Contact.FirstPart).Distinct())} and {conduit}, of {List(group.Select(c => c.Run).Distinct())}: {group.Key.Reason}";
        }
    }

    public static IEnumerable<LeftOut> LeftOut(AircraftAnswer answer)
    {
        if (answer.Cockpit is not { Scene: { } scene } cockpit)
            yield break;
        string Names(Func<Run, bool> which) => List(answer.Aircraft.Runs.Where(which).Select(r => CockpitScene.NameOf(answer.Aircraft, r)));
        foreach (var left in cockpit.NotRead)
            yield return left;
        if (Names(r => cockpit.Handles.All(h => h.Run.Id != r.Id)) is { Length: > 0 } handles)
            yield return new($"handle of {handles}", "its place and sizes are not in the file");
        foreach (var sheet in answer.Aircraft.Sheets.Where(s => scene.Sheets.All(o => o.Of.Id != s.Id)))
            yield return new($"sheet {sheet.Id.Replace('-', ' ')}", "its outline is not in the file: it counts only for a knob that leans over it");
        foreach (var sheet in answer.Aircraft.Sheets.Where(s => s.Curve is not null))
            yield return new($"curve of sheet {sheet.Id.Replace('-', ' ')}", "it counts as a slab that holds the whole curve, but for a knob that leans over it: nothing nearer is missed, and it may be farther away than told");
        if (List(cockpit.Handles.Where(h => h.Tilt == Mount.Tilt.None).Select(h => h.Name)) is { Length: > 0 } square)
            yield return new($"handle of {square} against the sheet that carries it", "its shank goes through the hole, and its knob stands square before it");
        if (List(cockpit.Handles.Where(h => h.Tilt != Mount.Tilt.None).Select(h => h.Name)) is { Length: > 0 } leaning)
            yield return new($"shank of {leaning} against the sheet that carries it", "it goes through the hole; the knob is counted");
        if (List(scene.Limbs) is { Length: > 0 } limbs)
            yield return new($"{limbs} against what is no handle, arm, conduit or sheet", "a limb gives way to a control");
        // Where one run was asked for, arms and conduits of the others are held against its own alone.
        if (Names(r => answer.Runs.All(a => a.Run.Id != r.Id)) is { Length: > 0 } others)
            yield return new($"arm and conduit of {others} against handles and each other", "one run was asked for; check the whole file for them");
        if (Names(r => answer.Runs.Any(a => a.Run.Id == r.Id && a.Ends.All(e => e.Part != EndPart.Lever))) is { Length: > 0 } arms)
            yield return new($"arm of {arms}", "its place in the aircraft (leverEnd.pivot, axis, anchor in coordinates) or its sweep is not in the file");
        if (Names(r => answer.Runs.Any(a => a.Run.Id == r.Id && a.Ends.All(e => e.Part != EndPart.Conduit))) is { Length: > 0 } conduits)
            yield return new($"conduit of {conduits}", "its way is not in the file, or it finds no lie");
        if (answer.Runs.Any(a => a.Ends.Any(e => e.Part == EndPart.Lever && e.OwnHandle.Length > 0)))
            yield return new("that arm and knob of one run move together", "they are taken as free of each other: more positions than they have, so nothing is missed");
        if (answer.Runs.Any(a => a.Ends.Any(e => e.Part == EndPart.Conduit)))
            yield return new("conduits against what stands still", "the findings of the route look at that");
        yield return new("what stands still against what stands still", "it is as built");
        yield return new("flexing, clothing beyond \"allow\", hands that the file does not ask for", "bodies are rigid, as entered");
    }

    private static string List(IEnumerable<string> names) => string.Join(", ", names);
}
