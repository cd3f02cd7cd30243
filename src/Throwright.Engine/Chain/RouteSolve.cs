using System.Globalization;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Route;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>One way to hold the conduit, with the whole run as it would be then.</summary>
/// <param name="Label">"clamp-1 and frame-3", or "no support".</param>
/// <param name="Works">It touches nothing, and the least radius is kept also where hand and tape are off and at each extreme place of the anchor.</param>
/// <param name="Spaced">No span is longer than wanted.</param>
/// <param name="Edits">What to type: JSON path within the run and JSON value; an empty value: take the member out.</param>
public sealed record RouteOption(string Label, RunAnswer Answer, bool Works, bool Spaced, EquatableList<TrialEdit> Edits)
{
    /// <summary>It is nowhere nearer to anything than wanted.</summary>
    public bool Distant { get; init; }

    /// <summary>What is against it, or what the recommended one has over it; of that one: what is left to see to.</summary>
    public string Reason { get; init; } = "";
}

/// <summary>Ways to hold the conduit, the recommended one and why.</summary>
/// <param name="Recommended">Index into Options; -1: none.</param>
/// <param name="Bound">No route with the radius wanted is shorter than this, m; 0: nothing was planned.</param>
/// <param name="Dropped">Supports of the file that a new route does not keep.</param>
public sealed record RouteSolution(EquatableList<RouteOption> Options, int Recommended, string Sentence, double Bound, int Dropped)
{
    public RouteOption? Best => Recommended >= 0 ? Options[Recommended] : null;
}

/// <summary>Finds where to hold the conduit of a run so that its lie keeps the radius and stays clear.</summary>
public static class RouteSolve
{
    /// <summary>A stretch of more than this many times the spacing wanted is not recommended: own choice (common practice).</summary>
    private const double LongestOfSpacing = 3;

    private static readonly Cushion.LadderEffort Quick = new(Samples: 16, Tolerance: 2e-5, Boxes: 200);

    /// <param name="meshes">The triangles of a mesh as its file has them; null: none is read.</param>
    /// <param name="stop">Looked at with every lie and every distance of the search.</param>
    /// <param name="doing">Told what is being done, in a sentence; from the caller's thread, some times a second.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static RouteSolution Find(Aircraft aircraft, Run run, FigureWriter say, Func<MeshShape, Skin?>? meshes = null, Action<string>? doing = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(say);
        var needs = new List<Need>();
        if (RouteInputs.Ends(run, LeverPlacement.Of(run.LeverEnd, []), needs) is not { } ends)
            return None("First: " + string.Join("; ", needs.DistinctBy(n => n.Path).Select(n => $"{n.Name} ({n.How})")) + ".");
        if (run.Cable is not { Conduit: { MinRadius: { } least, Outside: { } outside } conduit } cable)
            return None("First: the conduit's least radius and outside diameter (cable.conduit.minRadius, cable.conduit.outside).");
        var unknown = cable.Places.Concat(cable.Supports.Select(s => s.Place)).Where(p => !p.IsKnown).Select(p => p.Name).Distinct().ToList();
        if (unknown.Count > 0)
            return None($"First: the places of {string.Join(", ", unknown)} (throwright measure says why they have none).");
        LieCase between = new() { Start = ends.Start, StartAlong = ends.StartAlong, End = ends.End, EndAlong = ends.EndAlong, Length = 1 };
        Vector3[] points = [ends.Start, .. cable.Supports.Reverse().Where(s => s.IsKept).Select(s => PointSurvey.Place(s.Place)), ends.End];
        if (points.Zip(points.Skip(1)).Any(p => !((p.Second - p.First).Size > 1e-3)))
            return None("Two of the ends and supports that stay are one place: nothing can run between them.");
        var obstacles = RouteObstacles.Of(aircraft, null, meshes);
        var holes = Holes(aircraft).Where(h => h.Hole.At.IsKnown && h.Hole.Diameter.Least > outside.Most).ToList();
        var of = new RoutePlanCase
        {
            Start = ends.Start,
            StartAlong = ends.StartAlong,
            End = ends.End,
            EndAlong = ends.EndAlong,
            LeastRadius = least.Metres,
            RadiusMargin = Published.Get("route/radius-margin").Value,
            ConduitRadius = 0.5 * outside.Most,
            KeepOuts = obstacles.KeepOuts,
            Places = cable.Places.Select((p, i) => new SupportPlace(p.Name.Length > 0 ? p.Name : $"place {i + 1}", PointSurvey.Place(p))).ToEquatableList(),
            // A hole that a support sits in already is passed by it.
            Openings = holes.Where(h => cable.Supports.All(s => (PointSurvey.Place(s.Place) - HandleMount.Vector(h.Hole.At)).Size > 0.5 * h.Hole.Diameter.Most))
                .Select(h => new RouteOpening(h.Name, HandleMount.Vector(h.Hole.At), HandleMount.Vector(h.Normal))).ToEquatableList(),
            Passes = RouteInputs.Passes(cable, between, s => s.IsKept),
            MostSpan = RouteFindings.SpacingFor(conduit).Value,
            MoreHolds = true,
            Stiffness = RouteInputs.StiffnessOf(conduit),
            Weight = new(0, 0, -(conduit.Weight?.Nominal.NewtonsPerMetre ?? 0)),
        };
        var spacing = RouteFindings.SpacingFor(conduit).Value;
        var wantedSpan = of.MostSpan;
        // Better a route with a long span or without margin, told as such, than none: planned only where it is wanted.
        var options = new List<RouteOption>();
        var present = Present(aircraft, run, obstacles, say);
        if (present is not null)
            options.Add(present);
        stop.ThrowIfCancellationRequested();
        var planning = "Looking for ways to hold it";
        void Tell(int tried, int held) => doing?.Invoke($"{planning}: {tried} lies tried, {(held == 0 ? "none holds so far" : held == 1 ? "one way holds" : $"{held} ways hold")}.");
        var plan = RoutePlanner.Plan(of, Tell, stop);
        options.AddRange(plan.Choices.Select(Taken).Where(IsNew));
        // Where the places are too far apart, still the shortest spans that they allow: a clamp less is never the better for it.
        var longer = LongerSpans(of);
        foreach (var weaker in (RoutePlanCase[])[.. longer, of with { RadiusMargin = 1 }, .. longer.Select(l => l with { RadiusMargin = 1 })])
        {
            if (options.Any(o => o.Works && IsHeld(o)) || plan.Refusal is { Reason: NoRouteReason.EndBlocked or NoRouteReason.PassBlocked or NoRouteReason.TooFar })
                break;
            stop.ThrowIfCancellationRequested();
            planning = (weaker.MostSpan != wantedSpan, weaker.RadiusMargin > 1) switch
            {
                (true, true) => "None was found; now with longer spans",
                (false, _) => "None was found; now down to the least radius itself",
                _ => "None was found; now with longer spans and down to the least radius itself",
            };
            plan = RoutePlanner.Plan(weaker, Tell, stop);
            if (plan.Choices.Count > 0)
                of = weaker;
            options.AddRange(plan.Choices.Select(Taken).Where(IsNew));
        }

        RouteOption Taken(RouteChoice choice)
        {
            doing?.Invoke("Taking a way that was found through the whole run: radius, distances, force.");
            return Option(aircraft, run, obstacles, choice, say, stop);
        }

        // The supports there are, planned anew, are no other choice where they work as they are.
        bool IsNew(RouteOption option) => !(present is { Works: true } && option.Answer.Run.Cable!.Supports.Equals(cable.Supports));
        var dropped = cable.Supports.Count(s => !s.IsKept);
        if (options.Count == 0 && plan.Refusal is { } refusal)
            return None(RouteRefusals.Say(refusal, plan, of, aircraft, say, stop)) with { Bound = plan.Bound.Length, Dropped = dropped };
        doing?.Invoke("Proving how short a route could be at all.");
        var bound = RoutePlanner.Certify(of, plan, stop).Length;
        var proved = $"No route that keeps {say.Length(of.WantedRadius, Rounding.Up)} can be shorter than {say.Length(bound, Rounding.Down)}.";
        // What needs no work comes first; a long span, and less room than wanted, last.
        var best = options.FindIndex(o => o is { Works: true, Spaced: true, Distant: true });
        if (best < 0)
            best = options.FindIndex(o => o is { Works: true, Distant: true } && IsHeld(o));
        if (best < 0)
            best = options.FindIndex(o => o.Works && IsHeld(o));
        if (best < 0 && options.FirstOrDefault(o => o.Works) is { } loose)
        {
            return new(
                options.Select(o => o.Works && o.Reason.Length == 0 ? o with { Reason = "Too long a stretch without a support." } : o).ToEquatableList(),
                -1,
                $"Ways were found that keep the least radius, but the best leaves {say.Length(Longest(loose), Rounding.Up)} without a support, wanted {say.Length(spacing)}: so long a stretch hangs and swings where the file knows of nothing. Nothing is recommended. Name more places under cable.places; where the conduit has to turn round to reach the other end, turn its beginning (cable.ends.leaves), or give the bend places of its own. {proved}",
                bound,
                dropped);
        }

        if (best < 0)
        {
            return new(
                options.ToEquatableList(),
                -1,
                plan.Refusal is { } refused && options.Count == 1 && present is not null ? RouteRefusals.Say(refused, plan, of, aircraft, say, stop) : $"Ways were found, but none keeps the least radius and its distances where hand and tape are off{(cable.Ends is { Moves.Count: > 0 } ? " and the anchor moves" : "")}. {proved}",
                bound,
                dropped);
        }

        // Of ways about as long, held as often, the one that is pulled with least force.
        if (!ReferenceEquals(options[best], present))
        {
            var first = options[best];
            for (var i = 0; i < options.Count; i++)
            {
                if (options[i] is { Works: true } o && IsHeld(o) && o.Spaced == first.Spaced && o.Distant == first.Distant && Holds(o) <= Holds(first)
                    && Along(o) <= 1.01 * Along(first) && Hand(o) < 0.98 * Hand(options[best]))
                    best = i;
            }
        }

        options = [.. options.Select((o, i) => i == best || !o.Works ? o : o with { Reason = Against(o, options[best], say) })];
        var chosen = options[best];
        var lie = chosen.Answer.Route!.Lie!;
        var how = ReferenceEquals(chosen, present) ? "The conduit can stay as it is held now"
            : lie.Case.Supports.Count == 0 ? "Hold the conduit at its ends only" : $"Hold the conduit at {chosen.Label}";
        var sentence = $"{how}: {say.Length(lie.Case.Length)} between the ends, least radius {say.Length(lie.LeastRadius, Rounding.Down)}, it turns {say.Angle(lie.BendTotal)}. {proved}"
            + (chosen.Spaced ? "" : $" Caution: a span of {say.Length(Longest(chosen), Rounding.Up)} is longer than the {say.Length(spacing)} wanted, and no supports were found that part it{(of.Places.Count > 0 ? "; name more places under cable.places" : "")}.")
            + (chosen.Distant || Nearest(chosen) is not { } gap ? "" : $" Caution: it comes within {say.Length(gap.Least, Rounding.Down)} of {gap.Name}, wanted {say.Size(gap.Keep)}; guard it there.");
        return new(options.ToEquatableList(), best, sentence, bound, dropped);

        bool IsHeld(RouteOption o) => Longest(o) <= LongestOfSpacing * spacing;
    }

    private static double Longest(RouteOption option) => option.Answer.Route!.Lie!.Spans.Max(s => s.Length);

    /// <summary>The case with longer and longer spans permitted, and at last any.</summary>
    private static List<RoutePlanCase> LongerSpans(RoutePlanCase of) =>
        [.. ((double[])[1.5, 2, LongestOfSpacing]).Where(f => of.MostSpan * f < (of.End - of.Start).Size).Select(f => of with { MostSpan = f * of.MostSpan }), of with { MostSpan = null }];

    private static RouteSolution None(string why) => new([], -1, why, 0, 0);

    private static double Along(RouteOption option) => option.Answer.Route!.Counted!.Case.Length;

    private static int Holds(RouteOption option) => option.Answer.Route!.Counted!.Case.Supports.Count;

    private static double Hand(RouteOption option) =>
        option.Answer.Forces is { } forces ? Math.Max(forces.MostPull.Nominal, forces.MostPush.Nominal) : double.PositiveInfinity;

    /// <summary>What leaves least room.</summary>
    private static RouteGap? Nearest(RouteOption option) => option.Answer.Route?.Gaps.OrderBy(g => g.Least > 0).ThenBy(g => g.Least - g.Keep).FirstOrDefault();

    /// <summary>What the recommended way has over one that works too.</summary>
    private static string Against(RouteOption option, RouteOption best, FigureWriter say)
    {
        double more = Along(option) - Along(best), harder = Hand(option) - Hand(best), turns = option.Answer.Route!.Counted!.BendTotal - best.Answer.Route!.Counted!.BendTotal;
        var holds = Holds(option) - Holds(best);
        List<string> against =
        [
            .. option.Reason.Length > 0 ? [option.Reason.TrimEnd('.')] : (string[])[],
            .. holds > 0 ? [$"{(holds == 1 ? "one more support" : $"{holds} more supports")} to make"] : (string[])[],
            .. harder > 0.05 * Hand(best) && double.IsFinite(harder) ? [$"{say.Force(harder, Rounding.Up)} more at the hand"] : (string[])[],
            .. more > 0.002 ? [$"{say.Length(more, Rounding.Up)} longer"] : (string[])[],
            .. turns > 0.05 ? [$"it turns {say.Angle(turns)} more"] : (string[])[],
        ];
        return against.Count > 0 ? string.Join("; ", against) + "." : "It would do as well.";
    }

    /// <summary>The supports as they are, and their length where none is typed; null where they give no lie.</summary>
    private static RouteOption? Present(Aircraft aircraft, Run run, RouteObstacles obstacles, FigureWriter say)
    {
        var cable = run.Cable!;
        if (RouteInputs.Of(run, LeverPlacement.Of(run.LeverEnd, []), null, []) is not { Lie: not null } now)
            return null;
        // A length that is only proposed is written down, so that it holds.
        var length = now.Origin == LengthOrigin.Natural ? Typed(now.Case.Length + now.InFittings, say) : default((Toleranced<Length> Value, string Text)?);
        return Judged(aircraft, run, obstacles, cable.Supports, length, cable.Supports.Count == 0 ? "no support, as now" : "as it is now", [], say);
    }

    /// <summary>A choice of the planner as it is typed, with the shortest length that keeps the radius where hand and tape are off.</summary>
    private static RouteOption Option(Aircraft aircraft, Run run, RouteObstacles obstacles, RouteChoice choice, FigureWriter say, CancellationToken stop)
    {
        var cable = run.Cable!;
        var inFittings = (cable.Ends?.InBushing.Metres ?? 0) + (cable.Ends?.InAnchor.Metres ?? 0);
        // As it is typed: rounded first, then taken through the chain. The file's supports run from the device to the knob.
        var kept = new Queue<Support>(cable.Supports.Reverse().Where(s => s.IsKept));
        var supports = choice.Holds.Zip(choice.Lie.Case.Supports, (hold, lies) => hold.Stays ? (kept.Dequeue(), "") : Typed(aircraft, cable, hold, lies, say)).Reverse()
            .Select(s => (Support: s.Item1, Json: s.Item2.Length > 0 ? s.Item2 : Json(s.Item1, say))).ToList();
        var list = supports.Select(s => s.Support).ToEquatableList();
        TrialEdit edit = new("cable.supports", $"[{string.Join(", ", supports.Select(s => s.Json))}]", IsJson: true);
        var names = choice.Holds.Reverse().Select(h => h.Place).ToList();
        var free = names.Count(n => n.Length == 0);
        var label = supports.Count == 0 ? "no support"
            : string.Join(" and ", names.Where(n => n.Length > 0).Concat(free == 0 ? [] : [$"{free} {(free < names.Count ? "more " : "")}{(free == 1 ? "place" : "places")}"]));
        // A run drawn tight has no length in hand for ends that are not where they were measured.
        RouteOption? best = null;
        foreach (var more in (ReadOnlySpan<double>)[1, 1.004, 1.01, 1.02, 1.035, 1.055])
        {
            stop.ThrowIfCancellationRequested();
            var length = Typed((more * choice.Length) + inFittings, say);
            var changed = run with { Cable = Routed(cable, list, length.Value) };
            if (RouteInputs.Of(changed, LeverPlacement.Of(run.LeverEnd, []), null, []) is not { Lie: not null, Spread: { } spread })
                continue;
            var enough = spread.Without == 0 && spread.LeastRadius >= cable.Conduit!.MinRadius!.Value.Metres;
            if (!enough && best is not null && !(spread.LeastRadius > best.Answer.Route!.Spread!.LeastRadius))
                continue;
            best = Judged(aircraft, run, obstacles, list, length, label, [edit], say);
            if (best.Works)
                break;
        }

        return best ?? Judged(aircraft, run, obstacles, list, Typed(choice.Length + inFittings, say), label, [edit], say);
    }

    /// <summary>Holes of sheets that a conduit may pass, as they are called in an answer.</summary>
    private static IEnumerable<(string Name, SheetHole Hole, DirectionAt Normal)> Holes(Aircraft aircraft) =>
        aircraft.Sheets.SelectMany(s => s.Holes.Select((h, i) => (s.Holes.Count == 1 ? $"the hole in {s.Id}" : $"hole {i + 1} in {s.Id}", h, s.Normal)));

    private static Cable Routed(Cable cable, EquatableList<Support> supports, Toleranced<Length>? length) =>
        cable with { Supports = supports, Length = length, Bends = [], BendTotal = null, LongestStraight = null };

    private static RouteOption Judged(Aircraft aircraft, Run run, RouteObstacles obstacles, EquatableList<Support> supports, (Toleranced<Length> Value, string Text)? length, string label, EquatableList<TrialEdit> first, FigureWriter say)
    {
        var cable = run.Cable!;
        var changed = run with { Cable = Routed(cable, supports, length?.Value ?? cable.Length) };
        var answer = RunCheck.Solve(aircraft, changed, Quick);
        if (answer.Route is { } route)
            answer = answer with { Route = RouteInputs.Held(route, changed, obstacles) };
        // The force is that of where it rests, as in the check.
        if (answer.Route?.Resting is not null)
            answer = RunCheck.Solve(aircraft, changed, Quick, answer);
        var findings = RouteFindings.Of(aircraft, answer, say).ToList();
        Verdict Of(string rule) => findings.Where(f => f.Rule == rule).Select(f => f.Verdict).DefaultIfEmpty(Verdict.Clear).Max();
        bool Against(Finding f) => f.Rule == LieRules.Radius ? f.Verdict != Verdict.Clear : f is { Verdict: Verdict.Fail, Rule: RouteFindings.Chafe or RouteFindings.Heat or RouteChangeFindings.EndMoves };
        var hard = answer.Route?.Lie is null ? answer.Route?.Answer.Refusal?.Say(say) ?? "It finds no lie." : string.Join(" ", findings.Where(Against).Select(f => f.Sentence));
        var soft = string.Join(" ", findings.Where(f => f.Verdict != Verdict.Clear && (f.Rule is LieRules.Supports or RouteFindings.Chafe)).Select(f => f.Sentence));
        var works = answer.Route?.Lie is not null && hard.Length == 0;
        EquatableList<TrialEdit> edits =
        [
            .. first,
            .. length is { } typed ? [new TrialEdit("cable.length", typed.Text)] : (TrialEdit[])[],
            .. cable.Bends.Count > 0 ? [new TrialEdit("cable.bends", "")] : (TrialEdit[])[],
            .. cable.BendTotal is not null ? [new TrialEdit("cable.bendTotal", "")] : (TrialEdit[])[],
            .. cable.LongestStraight is not null ? [new TrialEdit("cable.longestStraight", "")] : (TrialEdit[])[],
        ];
        return new(label, answer, works, Of(LieRules.Supports) == Verdict.Clear, edits)
        {
            Distant = Of(RouteFindings.Chafe) == Verdict.Clear,
            Reason = works ? soft : hard,
        };
    }

    /// <summary>A support of the planner's as the file has it: a clamp of the conduit's size, its line only where it needs one.</summary>
    private static (Support Support, string Json) Typed(Aircraft aircraft, Cable cable, RouteHold hold, LieSupport lies, FigureWriter say)
    {
        if (hold.Kind == SupportKind.Grommet)
        {
            var grommet = new Support { Place = Holes(aircraft).First(h => h.Name == hold.Place).Hole.At, Kind = SupportHold.Grommet };
            return (grommet, Json(grommet, say));
        }

        var known = cable.Places.Select((p, i) => (Place: p, Name: p.Name.Length > 0 ? p.Name : $"place {i + 1}")).FirstOrDefault(p => p.Name == hold.Place && hold.Place.Length > 0).Place;
        var along = hold.IsTurned && lies.Along is { } a ? a.Unit() : (Vector3?)null;
        var support = new Support
        {
            Place = known ?? Rounded(lies.Point, say),
            Along = along is { } d ? new(Math.Round(d.X, 3), Math.Round(d.Y, 3), Math.Round(d.Z, 3)) : null,
            Kind = hold.Kind == SupportKind.Sliding ? SupportHold.SlidingClamp : SupportHold.TightClamp,
            Size = RouteFindings.DashFor(cable.Conduit) is { } dash ? new Length(dash * Published.Get("route/clamp-step").Value) : null,
        };
        return (support, Json(support, say));
    }

    private static string Json(Support support, FigureWriter say)
    {
        static string Quoted(string text) => $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
        string Limits(Toleranced<Length> length) => Quoted(Solve.Typed(length, say).Text);
        var (p, members) = (support.Place, new List<string>());
        members.Add($"\"at\": {(p.Name.Length > 0 ? Quoted(p.Name) : $"[{Limits(p.Station)}, {Limits(p.Buttline)}, {Limits(p.Waterline)}]")}");
        if (support.Along is { } line)
            members.Add(string.Create(CultureInfo.InvariantCulture, $"\"along\": [{line.Aft}, {line.Right}, {line.Up}]"));
        members.Add($"\"kind\": \"{support.Kind switch { SupportHold.SlidingClamp => "slidingClamp", SupportHold.Grommet => "grommet", _ => "tightClamp" }}\"");
        if (support.Size is { } size)
            members.Add($"\"size\": {Quoted(say.Typed(size.Metres))}");
        if (support.FromAnchor is { } from)
            members.Add($"\"fromAnchor\": {Limits(from)}");
        if (support.Stays is { } stays)
            members.Add($"\"stays\": {(stays ? "true" : "false")}");
        return $"{{ {string.Join(", ", members)} }}";
    }

    private static (Toleranced<Length> Value, string Text) Typed(double metres, FigureWriter say) => Solve.Typed(Toleranced<Length>.Exact(new(metres)), say);

    private static PointAt Rounded(Vector3 place, FigureWriter say) => new(Typed(place.X, say).Value, Typed(place.Y, say).Value, Typed(place.Z, say).Value);
}
