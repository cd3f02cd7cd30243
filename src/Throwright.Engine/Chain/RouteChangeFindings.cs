using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Route;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>Findings on a conduit that rests against something, whose end moves, or that was twisted.</summary>
internal static class RouteChangeFindings
{
    public const string EndMoves = "route/end-moves";
    public const string Twist = "route/twist";

    private static readonly SourceRef Theory = new("project", "docs/theory/route.md", Evidence.Derived);

    public static IEnumerable<Finding> Of(Cable cable, RunRoute route, FigureWriter say)
    {
        var least = cable.Conduit?.MinRadius?.Metres;
        if (route.Resting is { } resting)
            yield return OfResting(resting, least, say);
        else if (route.Lie is not null && route.Gaps.FirstOrDefault(g => !(g.Least > 0) && g.Kind != KeepOutKind.Mover) is { } through)
            yield return OfUnknownRest(through);
        if (route.AtMoves.Count > 0)
            yield return OfMoves(route, least, say);
        if (cable.Ends?.Twist is not null && route.Lie is not null)
            yield return OfTwist(route.Twisted, least, say);
    }

    private static Finding OfUnknownRest(RouteGap through) => new()
    {
        Rule = LieRules.Contact,
        Verdict = Verdict.Caution,
        Sentence = $"How the conduit lies beside {through.Name}, through which its free lie runs, was not found: bends, force and lost motion are those of the free lie.",
        Sources = [Theory],
        Why = "A hold may be inside it, or the conduit can't be laid round it with this length. Lead it clear, or check the places in the file.",
    };

    private static Finding OfResting(Lie resting, double? least, FigureWriter say)
    {
        var tight = resting.LeastRadius < least;
        var places = string.Join(", ", resting.Contacts.Select(c => $"{c.Name} {say.Length(c.At)} from the cockpit end{(c.Over > 0 ? $", over {say.Length(c.Over)}" : "")}{(double.IsFinite(c.Force) ? $", with {say.Force(c.Force, Rounding.Up)}" : "")}"));
        return new()
        {
            Rule = LieRules.Contact,
            Verdict = tight ? Verdict.Fail : Verdict.Caution,
            Sentence = $"Laid in beside what stands in its way, the conduit {(places.Length > 0 ? $"rests against {places}" : "lies elsewhere and touches nothing")}: least radius {say.Length(resting.LeastRadius, Rounding.Down)}, it turns {say.Angle(resting.BendTotal)}.",
            Figure = "contact",
            Limit = least is { } radius ? new(radius, QuantityKind.Length, true) : null,
            Sources = [Theory],
            Why = "Where it lies against something it chafes. Lead it clear, or hold it there with a clamp. Force, lost motion and cushions are those of this lie, not of the free one.",
        };
    }

    private static Finding OfMoves(RunRoute route, double? least, FigureWriter say)
    {
        var lost = route.AtMoves.Where(m => m.Lie is null).ToList();
        if (lost.Count > 0)
        {
            return new()
            {
                Rule = EndMoves,
                Verdict = Verdict.Fail,
                Sentence = $"With {lost[0].Name} the conduit finds no lie: its clamps closed, {(lost[0].Straighter < 0 ? $"the way is {say.Length(-lost[0].Straighter, Rounding.Up)} longer and it is pulled tight" : "it folds")}.",
                Figure = "end-moves",
                Sources = [Theory],
                Why = "A conduit that is pulled at every shake of the engine works its clamps loose and moves the device. Leave a bend before the moving end, or let the last clamps slide.",
            };
        }

        var tightest = route.AtMoves.MinBy(m => m.Lie!.LeastRadius)!;
        var farthest = route.AtMoves.MaxBy(m => m.Moved)!;
        var nearest = route.AtMoves.Where(m => m.Nearest is not null).MinBy(m => m.Nearest!.Least);
        var touches = nearest is { Nearest.Least: <= 0 };
        var tight = tightest.Lie!.LeastRadius < least;
        var near = nearest is { Nearest: { } gap } && gap.Least < gap.Keep;
        var said = tight || !touches
            ? $"the lie moves by up to {say.Length(farthest.Moved, Rounding.Up)} ({farthest.Name}); its least radius is {say.Length(tightest.Lie.LeastRadius, Rounding.Down)} ({tightest.Name}){(least is { } r ? $", the conduit allows {say.Length(r, Rounding.Up)}" : "")}"
            : $"the conduit touches {nearest!.Nearest!.Name} ({nearest.Name})";
        return new()
        {
            Rule = EndMoves,
            Verdict = tight || touches ? Verdict.Fail : near || least is null ? Verdict.Caution : Verdict.Clear,
            Sentence = $"When the anchor moves, {said}{(near && !touches ? $"; it comes within {say.Length(nearest!.Nearest!.Least, Rounding.Down)} of {nearest.Nearest.Name} ({nearest.Name})" : "")}.",
            Figure = "end-moves",
            Limit = least is { } limit ? new(limit, QuantityKind.Length, true) : null,
            Sources = [Theory],
            Why = tight || touches || near ? "Lead the conduit to what shakes with a bend, and keep the last clamp so far off that the span takes the move up." : "",
        };
    }

    private static Finding OfTwist(TwistedSpan? span, double? least, FigureWriter say)
    {
        const string roll = "Let it roll and find its place, then tighten the clamps; hold the end while its jam nut is tightened.";
        if (span is null)
        {
            return new()
            {
                Rule = Twist,
                Verdict = Verdict.Caution,
                Sentence = "What a turned end does is not worked out: next to the anchor the conduit is held by a grommet, in which it can roll.",
                Sources = [Theory],
                Why = roll,
            };
        }

        var known = double.IsFinite(span.Lie.Moved);
        var keep = Published.Get("route/chafe-least").Value;
        var tight = known && span.Lie.LeastRadius < least;
        return new()
        {
            Rule = Twist,
            Verdict = tight ? Verdict.Fail : !known || span.Lie.MaySnap || !(span.Lie.Moved <= keep) ? Verdict.Caution : Verdict.Clear,
            Sentence = !known
                ? $"With its end turned by {say.Angle(span.Turn)} and the clamps closed, no lie was found: it may snap into a loop."
                : $"With its end turned by {say.Angle(span.Turn)} and the clamps closed, the conduit before the anchor moves by up to {say.Length(span.Lie.Moved, Rounding.Up)}, least radius {say.Length(span.Lie.LeastRadius, Rounding.Down)}{(span.Lie.MaySnap ? "; it may snap on the way" : "")}.",
            Figure = "twist-move",
            Limit = new(keep, QuantityKind.Length, false),
            Sources = [Theory],
            Why = roll,
        };
    }
}

/// <summary>Figures of a conduit that rests against something, whose end moves, or that was twisted.</summary>
internal static class RouteChangeFigures
{
    private static readonly SourceRef Theory = new("project", "docs/theory/route.md", Evidence.Derived);

    public static IEnumerable<Figure> Of(RunRoute route)
    {
        if (route.Resting is { Contacts: [var first, ..] } resting)
        {
            yield return new()
            {
                Id = "contact",
                Name = "where the conduit rests against something: conduit from the cockpit end",
                Kind = QuantityKind.Length,
                Value = first.At,
                Formula = "least bending energy with no point nearer than half the conduit's outside",
                Steps =
                [
                    .. resting.Contacts.SelectMany(c => (FigureStep[])
                    [
                        new("s", $"against {c.Name}: conduit from the cockpit end", c.At, QuantityKind.Length),
                        new("", "conduit that touches", c.Over, QuantityKind.Length),
                        .. double.IsFinite(c.Force) ? [new FigureStep("F", "its force", c.Force, QuantityKind.Force)] : (FigureStep[])[],
                    ]),
                    new("R", "least radius", resting.LeastRadius, QuantityKind.Length),
                    new("", "bend total", resting.BendTotal, QuantityKind.Angle),
                ],
                Sources = [Theory],
                Holds = "no friction at what it touches; that stands still",
            };
        }

        if (route.AtMoves.Where(m => m.Lie is not null).MaxBy(m => m.Moved) is { } farthest)
        {
            yield return new()
            {
                Id = "end-moves",
                Name = "most that the lie moves with its anchor",
                Kind = QuantityKind.Length,
                Value = farthest.Moved,
                Rounding = Rounding.Up,
                Formula = "the lie again with its clamps closed, the anchor at each extreme place; largest distance from the lie at rest",
                Steps = route.AtMoves.Where(m => m.Lie is not null).SelectMany(m => (FigureStep[])
                [
                    new("", $"{m.Name}: moves by", m.Moved, QuantityKind.Length),
                    new("", $"{m.Name}: least radius", m.Lie!.LeastRadius, QuantityKind.Length),
                    new("", $"{m.Name}: bend total", m.Lie.BendTotal, QuantityKind.Angle),
                    new("", $"{m.Name}: straight way longer (+) or shorter (-)", -m.Straighter, QuantityKind.Length),
                ]).ToEquatableList(),
                Sources = [Theory],
                Holds = "tight clamps grip where the conduit had found its place, sliding ones let it through",
            };
        }

        if (route.Twisted is { Lie.Moved: var moved } span && double.IsFinite(moved))
        {
            yield return new()
            {
                Id = "twist-move",
                Name = "move of the conduit before the anchor, its end turned",
                Kind = QuantityKind.Length,
                Value = moved,
                Rounding = Rounding.Up,
                Formula = "M = C / B x twist per length along the rod; r' = t, t' = w x t, M' = F x t, led from no twist",
                Inputs =
                [
                    new("a", "turn of the end", span.Turn, QuantityKind.Angle, From: "cable.ends.twist.turn"),
                    new("C/B", "torsion over bending stiffness", span.Torsion, QuantityKind.Ratio, From: "cable.ends.twist.torsion"),
                    new("s", "conduit from the cockpit end to the last clamp", span.From, QuantityKind.Length),
                ],
                Steps = [new("R", "least radius then", span.Lie.LeastRadius, QuantityKind.Length)],
                Sources = [Theory],
                Holds = "both ends of the stretch gripped; weight left out",
            };
        }
    }
}
