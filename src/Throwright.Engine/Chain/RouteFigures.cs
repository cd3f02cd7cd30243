using Throwright.Engine.Findings;
using Throwright.Engine.Route;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>Figures of the conduit's way, each with formula, inputs, source and uncertainty.</summary>
internal static class RouteFigures
{
    private static readonly SourceRef Theory = new("project", "docs/theory/route.md", Evidence.Derived);

    private const string Elastic = "the curve of least bending energy through ends and supports, of the given length; free of twist";
    private const string Laid = "a conduit that could roll and slide until it had found its place, its clamps closed last";

    public static IEnumerable<Figure> Of(RunAnswer answer)
    {
        if (answer is not { Route: { Counted: { } lie, CountedSpread: { } spread } route, Run.Cable: { } cable })
            yield break;
        var how = $"{spread.Lays} lays with every place, direction (± {FigureText.Plain(Published.Get("route/direction-error").Value * 180 / Math.PI, 0)} deg) and the length drawn within its limits";
        EquatableList<FigureStep> ends =
        [
            new("L", "conduit between the ends", lie.Case.Length, QuantityKind.Length, cable.Length?.Minus ?? 0, cable.Length?.Plus ?? 0, OriginOf(route)),
            new("L0", "straight way over the supports", lie.Case.Straight, QuantityKind.Length, From: $"{route.From}, cable.supports, anchor"),
            .. lie.Case.Stiffness is { } stiffness ? [new FigureStep("B", "stiffness against bending", stiffness, QuantityKind.BendingStiffness, From: cable.Conduit?.Bending is null ? "cable.conduit.tableEdge and weight" : "cable.conduit.bending")] : (FigureStep[])[],
        ];
        yield return new()
        {
            Id = "conduit-length",
            Name = "conduit, end to end, fittings included",
            Kind = QuantityKind.Length,
            Value = lie.Case.Length + route.InFittings,
            Formula = route.Origin == LengthOrigin.Natural ? "L + conduit inside bushing and anchor;  L: where 1/2 B k^2 + F.t = 0 at both ends, so that none is drawn in or out" : "L + conduit inside bushing and anchor",
            Inputs = ends,
            Steps =
            [
                new("f", "conduit inside bushing and anchor", route.InFittings, QuantityKind.Length),
                .. route.Natural is { } natural ? [new FigureStep("Ln", "length between the ends at which it would rest free to slide", natural, QuantityKind.Length)] : (FigureStep[])[],
            ],
            Sources = [Theory],
            Holds = Laid,
        };
        var rests = route.Resting is not null;
        yield return new()
        {
            Id = "least-radius",
            Name = rests ? "least radius of the lie as it rests against what stands in its way" : "least radius of the lie",
            Kind = QuantityKind.Length,
            Value = lie.LeastRadius,
            Least = double.IsFinite(spread.LeastRadius) ? spread.LeastRadius : null,
            Most = double.IsFinite(spread.LeastRadius) ? lie.LeastRadius : null,
            Rounding = Rounding.Down,
            Formula = "1 / largest curvature of " + Elastic,
            Inputs = ends,
            Steps =
            [
                new("s", "conduit from the cockpit end to the tightest place", lie.LeastRadiusAt, QuantityKind.Length),
                .. PlaceSteps(lie.Shape.PointAt(lie.LeastRadiusAt)),
                .. cable.Conduit?.MinRadius is { } least ? [new FigureStep("Rmin", "least radius its maker allows", least.Metres, QuantityKind.Length, From: "cable.conduit.minRadius")] : (FigureStep[])[],
            ],
            Sources = [Theory],
            Holds = Laid,
            Uncertainty = rests ? $"as large a part of it as of the free lie's: {how}; 97.5 % keep the radius given" : $"{how}: 97.5 % keep the radius given",
        };
        yield return new()
        {
            Id = "bend-total",
            Name = rests ? "bend total: sum of the angles turned along the lie as it rests against what stands in its way" : "bend total: sum of the angles turned along the lie",
            Kind = QuantityKind.Angle,
            Value = lie.BendTotal,
            Least = spread.BendLeast,
            Most = spread.BendMost,
            Rounding = Rounding.Up,
            Formula = "integral of the curvature over the length",
            Inputs = ends,
            Steps = route.Bends.Select((b, i) => new FigureStep($"b{i + 1}", $"bend {i + 1} from the device, radius {FigureText.Plain(b.Radius * 1000, 0, Rounding.Down)} mm, {FigureText.Plain(b.At * 1000, 0)} mm from the cockpit end", b.Angle, QuantityKind.Angle))
                .Concat(rests ? [new("", "the free lie, which does not count here, would turn", route.Lie!.BendTotal, QuantityKind.Angle)] : []).ToEquatableList(),
            Sources = [Theory],
            Holds = Laid,
            Uncertainty = rests ? $"as large a part of it as of the free lie's: {how}" : how,
        };
        yield return new()
        {
            Id = "longest-straight",
            Name = "longest stretch that counts as straight",
            Kind = QuantityKind.Length,
            Value = route.LongestStraight,
            Formula = "longest stretch of the lie with a radius above the one given",
            Inputs = [new("R", "radius that counts as straight", Published.Get("route/straight-radius").Value, QuantityKind.Length)],
            Sources = [Theory, Published.Get("route/straight-radius").Source],
        };
        yield return new()
        {
            Id = "support-spacing",
            Name = "longest stretch of conduit without a support",
            Kind = QuantityKind.Length,
            Value = lie.Spans.Max(s => s.Length),
            Rounding = Rounding.Up,
            Formula = "longest of the spans of the lie",
            Steps = lie.Spans.Select((s, i) => new FigureStep($"l{i + 1}", $"span {i + 1} from the cockpit end", s.Length, QuantityKind.Length)).ToEquatableList(),
            Sources = [Theory, RouteFindings.SpacingFor(cable.Conduit).Source],
        };
        yield return new()
        {
            Id = "move-per-length",
            Name = "move of the lie over the length added",
            Kind = QuantityKind.Ratio,
            Value = lie.MovePerLength,
            Rounding = Rounding.Up,
            Formula = "largest distance of the lie with 1 % more length from the lie, over the length added",
            Inputs = ends,
            Sources = [Theory],
        };
        if (OfGaps("chafe-distance", "least distance of the conduit to a body or sheet of the file", route.Gaps.Where(g => g.Kind != KeepOutKind.Heat), Published.Get("route/chafe-least").Source) is { } chafe)
            yield return chafe;
        if (OfGaps("heat-distance", "least distance of the conduit to what is hot", route.Gaps.Where(g => g.Kind == KeepOutKind.Heat), RouteFindings.Own) is { } heat)
            yield return heat;

        foreach (var figure in RouteChangeFigures.Of(route))
            yield return figure;
        if (route.Order is not { } order)
            yield break;
        EquatableList<FigureStep> other =
        [
            .. Other($"{Inch(order.Longer)} more", order.Longer), .. Other($"{Inch(order.Longer)} less", order.Shorter), .. Other("as ordered, uncut", order.AsOrdered),
        ];
        yield return new()
        {
            Id = "conduit-order",
            Name = "conduit to order",
            Kind = QuantityKind.Length,
            Value = order.ConduitOrdered,
            Rounding = Rounding.Up,
            Formula = "L + conduit inside both fittings, rounded up to the order step",
            Inputs = [.. ends, new("f", "conduit inside bushing and anchor", route.InFittings, QuantityKind.Length, From: "cable.ends"), new("step", "order step", StepOf(cable), QuantityKind.Length, From: "cable.ends.orderStep")],
            Steps = [new("C", "conduit before rounding", order.Conduit, QuantityKind.Length), .. other],
            Sources = [Theory],
            Holds = "Check with a rope or a soft wire laid along the way before you order.",
        };
        var inFittings = (cable.Ends?.WireInKnob.Metres ?? 0) + (cable.Ends?.WireBeyondPin.Metres ?? 0);
        var trimming = cable.Ends?.Trimming?.Metres ?? Published.Get("route/trimming").Value;
        yield return new()
        {
            Id = "wire-order",
            Name = "core wire to order",
            Kind = QuantityKind.Length,
            Value = order.WireOrdered,
            Rounding = Rounding.Up,
            Formula = "conduit ordered + free wire at its longest + wire inside both fittings + trimming, rounded up to the order step",
            Inputs =
            [
                new("C", "conduit ordered", order.ConduitOrdered, QuantityKind.Length, From: "conduit-order"),
                new("w", "free wire beyond the conduit at its longest", order.Wire - order.Conduit - inFittings - trimming, QuantityKind.Length, From: "swivel-at"),
                new("f", "wire inside knob and beyond the pin", inFittings, QuantityKind.Length, From: "cable.ends"),
                new("t", "trimming", trimming, QuantityKind.Length, From: "cable.ends.trimming"),
            ],
            Steps =
            [
                new("W", "wire before rounding", order.ConduitOrdered + order.Wire - order.Conduit, QuantityKind.Length),
                new("", "the same for the conduit cut to the way", order.Wire, QuantityKind.Length),
            ],
            Sources = [Theory],
            Holds = answer.Sweep is { IsMonotone: true } ? "" : "the free wire at the lever end is not known and not counted",
        };
    }

    private static double StepOf(Model.Cable cable) => cable.Ends?.OrderStep?.Metres ?? Published.Get("route/order-step").Value;

    private static IEnumerable<FigureStep> PlaceSteps(Shapes.Frames.Vector3 place) =>
    [
        new("x", "its station", place.X, QuantityKind.Length), new("y", "its buttline", place.Y, QuantityKind.Length), new("z", "its waterline", place.Z, QuantityKind.Length),
    ];

    /// <summary>What more and less are worked out for: never the order step, which may be a foot.</summary>
    private static string Inch(OtherLength longer) => longer.Change == Length.MetresPerInch ? "1 in" : $"{FigureText.Plain(longer.Change * 1000, 0)} mm";

    private static IEnumerable<FigureStep> Other(string name, OtherLength with) => with.Answer.Lie is { } lie
        ?
        [
            new("", $"{name}: moves the lie by", with.Moved, QuantityKind.Length),
            new("", $"{name}: least radius", lie.LeastRadius, QuantityKind.Length),
        ]
        : [];

    /// <summary>The nearest of several things, and how near each of them is.</summary>
    private static Figure? OfGaps(string id, string name, IEnumerable<RouteGap> gaps, SourceRef wanted)
    {
        var all = gaps.OrderBy(g => g.Least).ToList();
        return all.Count == 0 ? null : new()
        {
            Id = id,
            Name = name,
            Kind = QuantityKind.Length,
            Value = all[0].Least,
            Rounding = Rounding.Down,
            Formula = "least over the lie and over all positions of the body, less half of the conduit's outside",
            Steps = all.Select(g => new FigureStep("", $"to {g.Name}, {FigureText.Plain(g.At * 1000, 0)} mm from the cockpit end", g.Least, QuantityKind.Length)).ToEquatableList(),
            Sources = [Theory, wanted],
            Holds = "proved: no place along the conduit is nearer, but for what it passes at its ends and in grommets, and what a clamp beside it is fixed to; bodies that move are taken in steps and held larger by what they move between",
        };
    }

    private static string OriginOf(RunRoute route) => route.Origin switch
    {
        LengthOrigin.Typed => "cable.length",
        LengthOrigin.Ordered => "cable.ordered",
        _ => "worked out: natural length",
    };
}
