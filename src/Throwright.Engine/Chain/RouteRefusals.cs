using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Route;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>Why no route is offered, what is in the way and what could be changed.</summary>
internal static class RouteRefusals
{
    // Each asks for a plan of its own.
    private const int MostTried = 4;

    public static string Say(NoRoute refusal, RoutePlan plan, RoutePlanCase of, Aircraft aircraft, FigureWriter say, CancellationToken stop)
    {
        var wanted = say.Length(of.WantedRadius, Rounding.Up);
        switch (refusal.Reason)
        {
            case NoRouteReason.EndBlocked:
                return $"The {(refusal.AtStart ? "cockpit end" : "lever end")} of the conduit, or the way it points, is {say.Length(refusal.Lacks, Rounding.Up)} nearer to {refusal.Nearest} than wanted. {Change(refusal.Nearest)}";
            case NoRouteReason.PassBlocked:
                return $"A support that stays is too near to {refusal.Nearest}. Move it, or take its \"stays\" out. {Change(refusal.Nearest)}";
            case NoRouteReason.TooFar:
                return $"Even the shortest way, {say.Length(plan.Bound.Length, Rounding.Up)}, is longer than the longest conduit.";
        }

        var found = refusal.Reason == NoRouteReason.NoWay
            ? $"No way with a radius of {wanted} was found."
            : "Ways were found, but held at the places permitted the conduit lies in none of them. Name more places under cable.places, or none at all to see where it would like to be held.";
        // What lets a way through when it is thought away is in the way, whatever is nearest.
        var near = of.KeepOuts.OrderBy(k => Enumerable.Range(0, 41).Min(i => k.DistanceAt(of.Start + (0.025 * i * (of.End - of.Start))) - k.Keep)).ToList();
        foreach (var thing in near.Take(MostTried))
        {
            var without = RoutePlanner.Plan(of with { KeepOuts = of.KeepOuts.Where(k => k != thing).ToEquatableList(), Choices = 1, MoreHolds = false }, stop: stop);
            if (without.Choices.Count > 0)
                return $"{found} In the way is {thing.Name}: without it there would be one of {say.Length(without.Choices[0].Length)}. {Change(thing.Name)}";
        }

        if (near.Count == 0)
            return $"{found} Nothing stands in the way: the ends point so that no such bend fits between them. Turn an end, move it, or take a conduit that may be bent tighter.";
        return near.Count > 1
            ? $"{found} No single thing is alone in the way; the nearest are {string.Join(", ", near.Take(MostTried).Select(k => k.Name))}. Move an end or turn it, or take a conduit that may be bent tighter."
            : $"{found} It is not {near[0].Name} alone: turn an end, move it, or take a conduit that may be bent tighter.";

        string Change(string name)
        {
            const string ends = "move that end of the conduit, or turn the way it points";
            if (aircraft.Sheets.FirstOrDefault(s => s.Id == name) is { } sheet)
            {
                return sheet.Holes.Count == 0
                    ? $"Where the conduit may pass it, give it a hole (holes of the sheet {name}); or {ends}."
                    : $"None of its holes that takes the conduit can be reached with that radius: put the hole nearer to the way, or {ends}.";
            }

            return of.KeepOuts.FirstOrDefault(k => k.Name == name)?.Kind switch
            {
                KeepOutKind.Heat => $"Shield it as the kit's plans say and type the distance that then holds (keepAway); or {ends}.",
                KeepOutKind.Edge => $"Guard the edge and type the distance that then holds (keepAway); or {ends}.",
                KeepOutKind.Mover => $"It needs that room over all its movement: check its limits in the file; or {ends}.",
                _ => $"Check its place and size in the file; or {ends}.",
            };
        }
    }
}
