using System.Globalization;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Maintain;

/// <summary>Inspection list and drift of one run. Theory: docs/theory/maintain.md.</summary>
public static class MaintainSolver
{
    /// <summary>When most items are due.</summary>
    public const string Annual = "each annual or condition inspection, and each 100 h";
    private static readonly SourceRef Practice = new("common-practice", "judgement", Evidence.CommonPractice);

    public static MaintainAnswer Solve(MaintainCase of, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(of);
        ArgumentNullException.ThrowIfNull(say);
        return new(Items(of, say).ToEquatableList(), Drifts(of).ToEquatableList(), History(of).ToEquatableList());
    }

    /// <summary>AC 43.13-1B 7-149(b): one broken wire where the cable is flexed, rubbed or worked, or within a foot of a swage, replaces it.</summary>
    public static bool BrokenWireReplaces(double fromSwage, bool flexedOrRubbed) =>
        flexedOrRubbed || fromSwage <= 12 * Length.MetresPerInch;

    private static IEnumerable<InspectionItem> Items(MaintainCase of, FigureWriter say)
    {
        SourceRef scope = Published.Rule("43-d(c)(5)").Source, limits = Published.Rule("ol-controls").Source, cable = Published.Rule("ac-43-13-1b-7-149(b)").Source;
        string Range((double Least, double Most)? range) => range is { } r ? $"{say.Length(r.Least, Rounding.Up)} to {say.Length(r.Most, Rounding.Down)}" : "as on the rigging card";
        yield return new("Full travel from the seat, with the device seen: both stops reached, no rub, no stiffness", "both stops", Annual, "find the cause before flight", [scope, limits]);
        yield return new("Knob place at the push stop and at the pull stop", $"{Range(of.KnobAtPush)}; {Range(of.KnobAtPull)}", Annual, "slide the swivel by the rigging card", [scope, Practice]);
        if (of.LostMotion is { } lost)
            yield return new("Lost motion at mid travel", $"{say.Length(lost.Most, Rounding.Down)} or less", Annual, "look for a worn pin, a loose anchor, a worn conduit", [scope, Practice]);
        if (of.Pull is { } pull)
            yield return new("Slow pull through mid travel", $"{say.Force(pull.Least, Rounding.Down)} to {say.Force(pull.Most)}", Annual, "rising: dirt, rust or heat in the conduit; falling: friction lock or load gone", [scope, limits, Practice]);
        var strand = of.Run.Cable?.Core?.Kind is not (null or CoreKind.Solid);
        yield return new(
            strand ? "Core at swivel, anchor and every bend: broken wires" : "Core at swivel and anchor: kink, nick, rust, a bend that came anew",
            strand ? "one broken wire where it is flexed or rubbed, or within a foot of a swage" : "none", Annual, "replace the cable", [cable]);
        yield return new("Paint lines across screw, fitting and wire, conduit and anchor", "unbroken", "also before first flight and after 10 h", "rig anew, then look for why", [Practice]);
        yield return new("Swivel turns on its pin all through the travel and binds nowhere; bolt, nut and cotter in place", "free, no play, cotter whole", Annual, "new cotter each time", [scope, Published.Rule("ac-43-13-1b-7-38").Source, Published.Rule("23.689(e)").Source]);
        yield return new("Anchor and bracket: cracks, loose rivets, bends; clamps and their cushions", "none", Annual, "replace", [scope, limits]);
        yield return new("Conduit along its way: chafe, burns, kinks, swelling; distance to wiring, lines and exhaust", "none", Annual, "replace or reroute; a burned liner is not cleaned", [scope]);
        if (of.Run.LeverEnd?.Load?.Bias?.Spring == true)
            yield return new("The device's spring, wire off: returns the arm by itself", "whole travel", Annual, "replace; nothing else shows a broken one", [scope]);
        if (of.Run.CockpitEnd is { Lock: not LockKind.None })
            yield return new("Lock: holds half way with the engine running; lets go by hand, cold and hot", "no creep", Annual, "adjust or replace", [scope, Published.Rule("23.1141(c)").Source]);
        yield return new("Marking and colour readable from the seat", "as engraved", Annual, "renew", [limits]);
        foreach (var item in ByEye(of.Run))
            yield return item;
    }

    /// <summary>Rules that no figure of the file answers: asked of the inspector's eye.</summary>
    private static IEnumerable<InspectionItem> ByEye(Run run)
    {
        const string First = "before first flight and after each change";
        yield return new(
            "Knob at each end and half way: stick or yoke, pedals and trim through their whole range, seat forward and aft", "nothing touches", First, "move or tilt what touches; throwright solve mount",
            [Published.Rule("23.655(a)").Source, Published.Rule("23.777(b)").Source]);
        if (run.Installation?.Parts.Any(p => p.Place is PartPlace.Cabin or PartPlace.Sunlit) == true)
            yield return new("Plastic and printed parts in the cabin: how they burn, by their maker's statement or a test", "at least flame resistant", First, "another material", [Published.Rule("23.853(a)").Source]);
        if (run.Function == ControlFunction.FuelShutoff)
            yield return new("Handle, wire, arm and valve: can any be put together the wrong way round", "one way only, or marked", First, "mark or key them", [Published.Rule("23.995(e)").Source]);
        if (run.Function == ControlFunction.Propeller)
            yield return new("Propeller control against the throttle (comparison, transport aeroplanes)", "right of it and at least 1 in below", First, "say why it stands elsewhere", [Published.Rule("25.1149(d)").Source]);
        if (run.Function == ControlFunction.Other)
        {
            yield return new("If it works a fuel drain: its lock when shut", "locks positively", First, "a drain that locks", [Published.Rule("23.999(b)(2)").Source]);
            yield return new("If it works a tow release: travel of the handle with its free travel (comparison, sailplanes)", "120 mm or less", First, "a longer arm or less lost motion", [Published.Rule("cs-22.711(e)").Source]);
            yield return new("If it works the flaps: behind the landing gear control (comparison, transport aeroplanes)", "at least 10 in", First, "say why it stands elsewhere", [Published.Rule("25.777(e)").Source]);
        }
    }

    /// <summary>What is read again each time, with its name in the file.</summary>
    private static readonly (string Name, string Reading, Func<AsBuilt, double?> Value)[] Read =
    [
        ("knob at the push stop", "knobAtPush", h => h.KnobAtPush?.Metres),
        ("knob at the pull stop", "knobAtPull", h => h.KnobAtPull?.Metres),
        ("lost motion", "lostMotion", h => h.LostMotion?.Metres),
        ("pull", "pull", h => h.Pull?.Newtons),
    ];

    private static IEnumerable<Drift> Drifts(MaintainCase of)
    {
        var history = InOrder(of.History);
        foreach (var (name, reading, value) in Read)
        {
            var limits = reading switch { "knobAtPush" => of.KnobAtPush, "knobAtPull" => of.KnobAtPull, "lostMotion" => of.LostMotion, _ => of.Pull };
            // Less lost motion than expected is no fault: its limit is an "or less".
            var (least, most) = (reading == "lostMotion" ? null : limits?.Least, limits?.Most);
            var read = history.Where(h => value(h.Entry) is not null).ToList();
            if (read.Count == 0)
                continue;
            var points = read.Select(h => (h.Year, value(h.Entry)!.Value)).ToEquatableList();
            // A reading that follows a rerigging does not go on from those before it, also where the entry that says so lacks this reading.
            var rerigged = history.LastOrDefault(h => h.Entry.Rerigged);
            var from = rerigged.Entry is null ? 0 : Math.Max(0, read.FindIndex(h => h.Year >= rerigged.Year));
            var line = points.Skip(from).ToList();
            double? rate = null, error = null, reaches = null;
            if (line.Count >= 2 && line[^1].Item1 - line[0].Item1 > 1e-6)
            {
                double x = line.Average(p => p.Item1), y = line.Average(p => p.Item2), spread = line.Sum(p => (p.Item1 - x) * (p.Item1 - x));
                rate = line.Sum(p => (p.Item1 - x) * (p.Item2 - y)) / spread;
                error = 2 * (reading == "pull" ? of.ForceError : of.LengthError) / Math.Sqrt(spread);
                if (rate is { } r && Math.Abs(r) > error && (r > 0 ? most : least) is { } limit)
                {
                    var at = x + ((limit - y) / r);
                    reaches = at <= line[^1].Item1 + 10 ? at : null;
                }
            }

            yield return new(name, reading, points, least, most, rate, reaches) { From = from, PerYearError = error };
        }
    }

    private static IEnumerable<HistoryEntry> History(MaintainCase of)
    {
        var last = new Dictionary<string, double>();
        foreach (var (entry, _) in InOrder(of.History))
        {
            var changes = new List<ReadingChange>();
            foreach (var (name, reading, value) in Read)
            {
                if (value(entry) is not { } now)
                    continue;
                changes.Add(new(name, reading, now, last.TryGetValue(reading, out var before) ? now - before : null));
                last[reading] = now;
            }

            yield return new(entry.Date, entry.By, entry.Note, entry.Rerigged, changes.ToEquatableList());
        }
    }

    /// <summary>By date; entries of one day as they stand in the file.</summary>
    private static List<(AsBuilt Entry, double Year)> InOrder(EquatableList<AsBuilt> history) =>
        [.. history.Select(h => (h, YearOf(h.Date))).Where(h => h.Item2 is not null).Select(h => (h.h, h.Item2!.Value)).OrderBy(h => h.Value)];

    /// <summary>When to act, for one drift.</summary>
    /// <param name="show">Writes a value of the reading.</param>
    public static string WhenToAct(Drift drift, Func<double, string> show)
    {
        ArgumentNullException.ThrowIfNull(drift);
        ArgumentNullException.ThrowIfNull(show);
        var rate = drift.PerYear is { } r ? $"{(r < 0 ? "falls" : "rises")} by {show(Math.Abs(r))} a year, give or take {show(drift.PerYearError ?? 0)}" : "";
        return drift.State switch
        {
            DriftState.Outside => $"{show(drift.Points[^1].Value)} is outside its limits: act before the next flight{(rate.Length > 0 ? $"; {rate}" : "")}",
            DriftState.MeetsLimit => $"{rate}; a straight line meets its limit in {FigureText.Plain(drift.ReachesLimit!.Value, 1)}: act at the inspection before",
            DriftState.Drifts => $"{rate}; it meets no limit within ten years: look for the cause, read again",
            DriftState.Still => "moves no more than the error of reading it: leave it",
            _ => drift.Points.Count == 1 ? "one reading so far: read again at the next inspection" : "one reading since it was rigged anew: read again at the next inspection",
        };
    }

    private static double? YearOf(string date) =>
        DateOnly.TryParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day.Year + ((day.DayOfYear - 1) / 365.25) : null;
}
