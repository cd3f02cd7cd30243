using System.Globalization;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Route;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>One way to hold the conduit, with the whole run as it would be then.</summary>
/// <param name="Label">"clamp-1 and frame-3", or "no support".</param>
/// <param name="Works">Nothing of the way fails, and the least radius is kept also where hand and tape are off.</param>
/// <param name="Edits">What to type: JSON path within the run and JSON value; an empty value: take the member out.</param>
public sealed record RouteOption(string Label, RouteChoice Choice, RunAnswer Answer, bool Works, EquatableList<TrialEdit> Edits);

/// <summary>Ways to hold the conduit, the recommended one and why.</summary>
/// <param name="Recommended">Index into Options; -1: none.</param>
public sealed record RouteSolution(EquatableList<RouteOption> Options, int Recommended, string Sentence)
{
    public RouteOption? Best => Recommended >= 0 ? Options[Recommended] : null;
}

/// <summary>Finds where to hold the conduit of a run so that its lie keeps the radius and stays clear.</summary>
public static class RouteSolve
{
    private static readonly Cushion.LadderEffort Quick = new(Samples: 16, Tolerance: 2e-5, Boxes: 200);

    public static RouteSolution Find(Aircraft aircraft, Run run, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(say);
        var needs = new List<Need>();
        // Without supports: the ends alone decide whether there is anything to plan.
        var bare = run with { Cable = (run.Cable ?? new()) with { Supports = [], Ends = run.Cable?.Ends ?? new() } };
        var placement = LeverPlacement.Of(run.LeverEnd, []);
        if (RouteInputs.Ends(bare, placement, needs) is not { } ends)
            return None("First: " + string.Join("; ", needs.DistinctBy(n => n.Path).Select(n => $"{n.Name} ({n.How})")) + ".");
        if (run.Cable?.Conduit is not { MinRadius: { } least, Outside: { } outside } conduit)
            return None("First: the conduit's least radius and outside diameter (cable.conduit.minRadius, cable.conduit.outside).");
        var unknown = run.Cable.Places.Where(p => !p.IsKnown).Select(p => p.Name).ToList();
        if (unknown.Count > 0)
            return None($"First: the places of {string.Join(", ", unknown)} (throwright measure says why they have none).");
        var of = new RoutePlanCase
        {
            Start = ends.Start,
            StartAlong = ends.StartAlong,
            End = ends.End,
            EndAlong = ends.EndAlong,
            LeastRadius = least.Metres,
            RadiusMargin = Published.Get("route/radius-margin").Value,
            ConduitRadius = 0.5 * outside.Most,
            KeepOuts = RouteInputs.KeepOuts(aircraft),
            Places = run.Cable.Places.Select((p, i) => new SupportPlace(p.Name.Length > 0 ? p.Name : $"place {i + 1}", PointSurvey.Place(p))).ToEquatableList(),
            MostSpan = RouteFindings.SpacingFor(conduit).Value,
            Stiffness = RouteInputs.StiffnessOf(conduit),
            Weight = new(0, 0, -(conduit.Weight?.Nominal.NewtonsPerMetre ?? 0)),
        };
        var plan = RoutePlanner.Plan(of);
        // Better a route with a long span or without margin, told as such, than none.
        foreach (var weaker in (RoutePlanCase[])[of with { MostSpan = null }, of with { RadiusMargin = 1 }, of with { MostSpan = null, RadiusMargin = 1 }])
        {
            if (plan.Choices.Count > 0 || plan.Refusal is { Reason: NoRouteReason.EndBlocked or NoRouteReason.TooFar })
                break;
            plan = RoutePlanner.Plan(weaker);
            if (plan.Choices.Count > 0)
                of = weaker;
        }

        if (plan.Refusal is { } refusal)
            return None(Say(refusal, plan, of, say));
        var spaced = of.MostSpan is not null;
        var options = plan.Choices.Select(c => Option(aircraft, run, c, say)).ToEquatableList();
        var best = options.Select((o, i) => (o, i)).FirstOrDefault(x => x.o.Works, (o: options[0], i: -1)).i;
        var bound = $"No route that keeps {say.Length(of.WantedRadius, Rounding.Up)} can be shorter than {say.Length(plan.Bound.Length, Rounding.Down)}.";
        if (best < 0)
            return new(options, -1, $"Ways were found{(spaced ? $" with spans of {say.Length(RouteFindings.SpacingFor(conduit).Value)} or less" : "")}, but none keeps the least radius where hand and tape are off. {bound}");
        var chosen = options[best];
        var lie = chosen.Answer.Route!.Lie!;
        var sentence = (lie.Case.Supports.Count == 0 ? "Hold the conduit at its ends only" : $"Hold the conduit at {chosen.Label}")
            + $": {say.Length(lie.Case.Length)} between the ends, least radius {say.Length(lie.LeastRadius, Rounding.Down)}, it turns {say.Angle(lie.BendTotal)}. {bound}"
            + (spaced ? "" : $" A span is longer than {say.Length(RouteFindings.SpacingFor(conduit).Value)}: no places held it with shorter ones.");
        return new(options, best, sentence);
    }

    private static RouteSolution None(string why) => new([], -1, why);

    private static string Say(NoRoute refusal, RoutePlan plan, RoutePlanCase of, FigureWriter say)
    {
        var near = refusal.Nearest.Length > 0 ? $" What stands in the way most: {refusal.Nearest}." : "";
        return refusal.Reason switch
        {
            NoRouteReason.EndBlocked => $"An end of the conduit, or the way it points, is too near to {refusal.Nearest}.",
            NoRouteReason.TooFar => $"Even the shortest way, {say.Length(plan.Bound.Length, Rounding.Up)}, is longer than the longest conduit.",
            NoRouteReason.NoWay => $"No way with a radius of {say.Length(of.WantedRadius, Rounding.Up)} was found.{near}",
            _ => $"Ways were found, but held at the places permitted the conduit lies in none of them. Name more places under cable.places, or none at all to see where it would like to be held.{near}",
        };
    }

    private static RouteOption Option(Aircraft aircraft, Run run, RouteChoice choice, FigureWriter say)
    {
        var cable = run.Cable!;
        var inFittings = (cable.Ends?.InBushing.Metres ?? 0) + (cable.Ends?.InAnchor.Metres ?? 0);
        // As it is typed: rounded first, then taken through the chain.
        var supports = new List<(Support Support, string Json)>();
        foreach (var (support, name) in choice.Lie.Case.Supports.Zip(choice.Places.Count == choice.Lie.Case.Supports.Count ? choice.Places : choice.Lie.Case.Supports.Select(_ => "")).Reverse())
        {
            var known = cable.Places.Select((p, i) => (Place: p, Name: p.Name.Length > 0 ? p.Name : $"place {i + 1}")).FirstOrDefault(p => p.Name == name && name.Length > 0).Place;
            var place = known ?? Rounded(support.Point, say);
            var at = known is { Name.Length: > 0 } ? $"\"{known.Name.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"" : Json(place, say);
            var along = support.Along is { } a && support.Kind != SupportKind.Grommet ? a.Unit() : (Vector3?)null;
            var line = along is { } d ? new DirectionAt(Math.Round(d.X, 3), Math.Round(d.Y, 3), Math.Round(d.Z, 3)) : null;
            var direction = line is null ? "" : string.Create(CultureInfo.InvariantCulture, $", \"along\": [{line.Aft:0.###}, {line.Right:0.###}, {line.Up:0.###}]");
            supports.Add((new() { Place = place, Along = line }, $"{{ \"at\": {at}{direction}, \"kind\": \"tightClamp\" }}"));
        }

        var length = Typed(choice.Length + inFittings, say);
        var changed = run with
        {
            Cable = cable with { Supports = supports.Select(s => s.Support).ToEquatableList(), Length = length.Value, Bends = [], BendTotal = null, LongestStraight = null },
        };
        var answer = RunCheck.Solve(aircraft, changed, Quick);
        var findings = RouteFindings.Of(aircraft, answer, say).ToList();
        var radius = findings.FirstOrDefault(f => f.Rule == LieRules.Radius)?.Verdict ?? Verdict.Fail;
        EquatableList<TrialEdit> edits =
        [
            new("cable.supports", $"[{string.Join(", ", supports.Select(s => s.Json))}]", IsJson: true),
            new("cable.length", length.Text),
            .. cable.Bends.Count > 0 ? [new TrialEdit("cable.bends", "")] : (TrialEdit[])[],
            .. cable.BendTotal is not null ? [new TrialEdit("cable.bendTotal", "")] : (TrialEdit[])[],
            .. cable.LongestStraight is not null ? [new TrialEdit("cable.longestStraight", "")] : (TrialEdit[])[],
        ];
        var label = supports.Count == 0 ? "no support"
            : choice.Places.Count > 0 && choice.Places.All(p => p.Length > 0) ? string.Join(" and ", choice.Places.Reverse())
            : supports.Count == 1 ? "one place" : $"{supports.Count} places";
        return new(label, choice, answer, answer.Route?.Lie is not null && radius == Verdict.Clear, edits);
    }

    private static (Toleranced<Length> Value, string Text) Typed(double metres, FigureWriter say)
    {
        var text = say.Typed(metres);
        return UnitText.TryRead<Length>(text, out var value, out var problem) ? (value, text) : throw new InvalidOperationException($"\"{text}\": {problem}");
    }

    private static PointAt Rounded(Vector3 place, FigureWriter say) => new(Typed(place.X, say).Value, Typed(place.Y, say).Value, Typed(place.Z, say).Value);

    private static string Json(PointAt place, FigureWriter say) =>
        $"[\"{say.Typed(place.Station.Nominal.Metres)}\", \"{say.Typed(place.Buttline.Nominal.Metres)}\", \"{say.Typed(place.Waterline.Nominal.Metres)}\"]";
}
