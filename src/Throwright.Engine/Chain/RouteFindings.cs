using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Route;
using Throwright.Engine.Sources;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>Findings on the way of the conduit, with the limits that apply to it.</summary>
internal static class RouteFindings
{
    public const string Typed = "route/typed";
    public const string Ordered = "route/ordered";
    public const string Clamps = "route/clamps";
    public const string Lays = "route/lays";
    public const string Chafe = "route/chafe";
    public const string Heat = "route/heat";
    public const string Order = "route/order";
    public const string NotHeld = "route/not-held";

    private static readonly SourceRef Theory = new("project", "docs/theory/route.md", Evidence.Derived);
    internal static readonly SourceRef Own = new("project", "the distance typed into the file", Evidence.CommonPractice);
    private static readonly SourceRef Maker = new("project", "the maker's figure, typed into the file", Evidence.CommonPractice);

    public static IEnumerable<Finding> Of(Aircraft aircraft, RunAnswer answer, FigureWriter say)
    {
        if (answer.Run.Cable is not { } cable)
            yield break;
        // Also where no length is found: the order is often why.
        if (OfOrder(answer.Run, cable, say) is { } order)
            yield return order;
        if (answer.Route is not { } route)
            yield break;
        // What it touches is told below, with what else it does to the lie.
        foreach (var finding in LieRules.Find(route.Counted is { } counted ? new(counted with { Contacts = [] }, null) : route.Answer, LimitsOf(cable, route), say))
            yield return finding;
        if (route is { Lie: not null, Spread: { } spread })
        {
            if (spread.Without > 0 || spread.Flips)
                yield return OfLays(spread, say);
            if (OfTyped(cable, route.Counted!, say) is { } typed)
                yield return typed;
        }

        if (OfGap(route.Gaps.Where(g => g.Kind != KeepOutKind.Heat), Chafe, say) is { } chafe)
            yield return chafe;
        if (OfGap(route.Gaps.Where(g => g.Kind == KeepOutKind.Heat), Heat, say) is { } heat)
            yield return heat;
        if (OfOthers(route, cable.Conduit?.MinRadius?.Metres, say) is { } other)
            yield return other;
        if (route.NotHeld.Count > 0)
        {
            yield return new()
            {
                Rule = NotHeld,
                Verdict = Verdict.Caution,
                Sentence = $"The conduit is not held against everything in the file: {string.Join("; ", route.NotHeld)}.",
                Sources = [Theory],
                Why = "Look along it there.",
            };
        }

        foreach (var finding in RouteChangeFindings.Of(cable, route, say))
            yield return finding;
        if (OfOrdered(cable, route, say) is { } ordered)
            yield return ordered;
        if (OfClamps(aircraft, cable, say) is { } clamps)
            yield return clamps;
    }

    /// <summary>Longest span for a conduit of this diameter, by the published table of tubing; the thinnest row for thinner ones.</summary>
    public static Limit SpacingFor(Conduit? conduit)
    {
        var table = Published.Table("route/support-spacing");
        var outside = conduit?.Outside?.Nominal.Metres ?? 0;
        var row = table.Rows.LastOrDefault(r => r.Si("outside") <= outside + 1e-9) ?? table.Rows[0];
        return new(row.Si("span"), table.Source);
    }

    /// <summary>Dash number of the loop clamp that goes round the conduit; null: its diameter is not known.</summary>
    public static int? DashFor(Conduit? conduit) => conduit?.Outside is { } outside
        ? (int)Math.Ceiling((outside.Nominal.Metres / Published.Get("route/clamp-step").Value) - 1e-6)
        : null;

    private static LieLimits LimitsOf(Cable cable, RunRoute route)
    {
        static Limit Of(string id) => new(Published.Get(id).Value, Published.Get(id).Source);
        return new(
            cable.Conduit?.MinRadius is { } least ? new(least.Metres, Maker) : null,
            Of("route/radius-margin"),
            SpacingFor(cable.Conduit),
            Of("route/move-per-length"),
            Of("route/bend-total-most"),
            route.CountedSpread?.LeastRadius);
    }

    private static Finding OfLays(LieSpread spread, FigureWriter say) => new()
    {
        Rule = Lays,
        Verdict = Verdict.Caution,
        Sentence = spread.Without > 0
            ? $"In {spread.Without} of {spread.Lays} lays within what may be off, the conduit finds no lie: it is too short there."
            : $"Within what may be off the lie can move by {say.Length(spread.Moved, Rounding.Up)}: a bow may lie elsewhere than planned.",
        Sources = [Theory],
        Why = "Places and directions are only as good as hand and tape. A support in the long span, or a little more length, takes the chance away.",
    };

    /// <summary>Supports typed from the knob to the device, or two of them swapped: another order makes the way far shorter.</summary>
    private static Finding? OfOrder(Run run, Cable cable, FigureWriter say)
    {
        // More supports have too many orders, and a way so long is looked at closely anyhow.
        if (cable.Supports.Count is < 2 or > 7)
            return null;
        if (cable.Supports.Any(s => !s.Place.IsKnown) || RouteInputs.Ends(run, LeverPlacement.Of(run.LeverEnd, []), []) is not { } ends)
            return null;
        // From the knob to the device, as the conduit is followed.
        var points = cable.Supports.Reverse().Select(s => PointSurvey.Place(s.Place)).ToArray();
        var straight = points.Append(ends.End).Zip(points.Prepend(ends.Start), (a, b) => (a - b).Size).Sum();
        var (least, best) = (double.PositiveInfinity, Array.Empty<int>());
        Add([], ends.Start, 0);
        if (!(least < 0.9 * straight))
            return null;
        var names = best.Reverse().Select(i => RouteInputs.NameOf(cable, cable.Supports.Count - 1 - i));
        return new()
        {
            Rule = Order,
            Verdict = Verdict.Caution,
            Sentence = $"The supports seem to be in the wrong order: straight over them it is {say.Length(straight, Rounding.Up)}, and {say.Length(least, Rounding.Up)} in the order {string.Join(", ", names)}.",
            Sources = [Theory],
            Why = "cable.supports runs from the device to the knob.",
        };

        void Add(int[] sofar, Shapes.Frames.Vector3 last, double length)
        {
            if (length >= least)
                return;
            if (sofar.Length == points.Length)
            {
                if (length + (ends.End - last).Size < least)
                    (least, best) = (length + (ends.End - last).Size, sofar);
                return;
            }

            for (var i = 0; i < points.Length; i++)
            {
                if (!sofar.Contains(i))
                    Add([.. sofar, i], points[i], length + (points[i] - last).Size);
            }
        }
    }

    /// <summary>The thing that leaves least room, over all its positions.</summary>
    private static Finding? OfGap(IEnumerable<RouteGap> gaps, string rule, FigureWriter say)
    {
        if (gaps.OrderBy(g => g.Least > 0).ThenBy(g => g.Least - g.Keep).FirstOrDefault() is not { } worst)
            return null;
        var usual = Published.Get("route/chafe-least");
        var isUsual = worst.Kind is KeepOutKind.Structure or KeepOutKind.Mover && worst.Keep == usual.Value;
        var through = !(worst.Least > 0);
        var near = !(worst.Least >= worst.Keep);
        return new()
        {
            Rule = rule,
            Verdict = through || (near && rule == Heat) ? Verdict.Fail : near ? Verdict.Caution : Verdict.Clear,
            Sentence = through
                ? $"The conduit runs through {worst.Name}, or touches it, {say.Length(worst.At)} from the cockpit end."
                : $"The conduit comes within {say.Length(worst.Least, Rounding.Down)} of {worst.Name}, wanted {say.Size(worst.Keep)}.",
            Figure = rule == Heat ? "heat-distance" : "chafe-distance",
            Limit = new(worst.Keep, QuantityKind.Length, true),
            Sources = [isUsual ? usual.Source : Own, Theory],
            Why = !through && !near ? ""
                : rule == Heat ? "Heat hardens the liner, and what melts in it stops the wire. Lead it farther away, or shield it as the kit's plans say."
                : "A conduit that rubs wears through, and a part that moves against it can jam. Where they must be near, hold both to the same structure and put a guard between.",
        };
    }

    /// <summary>The worst of the other places in which the conduit may rest: whoever lays it in may get any of them.</summary>
    private static Finding? OfOthers(RunRoute route, double? least, FigureWriter say)
    {
        if (route.Counted is not { Others.Count: > 0 } lie)
            return null;
        var falls = lie.Falls;
        var (worst, at) = (0, -1);
        for (var i = 0; i < lie.Others.Count; i++)
        {
            var gap = i < route.OtherGaps.Count ? route.OtherGaps[i] : null;
            var bad = gap is { Kind: KeepOutKind.Heat } && !(gap.Least >= gap.Keep) ? 4 : lie.Others[i].LeastRadius < least ? 3 : gap is not null && !(gap.Least > 0) ? 2 : gap is not null && !(gap.Least >= gap.Keep) ? 1 : 0;
            if (bad > worst)
                (worst, at) = (bad, i);
        }

        if (at < 0)
            return null;
        var (near, fall) = (at < route.OtherGaps.Count ? route.OtherGaps[at] : null, falls[at]);
        var there = worst == 3 ? $"its least radius is {say.Length(lie.Others[at].LeastRadius, Rounding.Down)}, the conduit allows {say.Length(least!.Value, Rounding.Up)}"
            : !(near!.Least > 0) ? $"it lies against {near.Name} or through it" : $"it comes within {say.Length(near.Least, Rounding.Down)} of {near.Name}, wanted {say.Size(near.Keep)}";
        return new()
        {
            Rule = LieRules.Rests,
            // What can happen by chance of laying in is as bad as what happens for sure, where it burns or breaks; a touch can be seen.
            Verdict = worst >= 3 ? Verdict.Fail : Verdict.Caution,
            Sentence = $"The conduit can also rest {say.Length(fall.Far)} away, {say.Length(fall.At)} from the cockpit end: there {there}.",
            Sources = [Theory],
            Why = "Which of its lies it takes is decided by how it is laid in. Check that it lies as drawn and can't be pushed over, or put a support into the long span.",
        };
    }

    /// <summary>Bends typed by eye against those of the lie.</summary>
    private static Finding? OfTyped(Cable cable, Lie lie, FigureWriter say)
    {
        var (total, less, more) = cable.Bends.Count > 0
            ? (cable.Bends.Sum(b => b.Angle.Nominal.Radians), cable.Bends.Sum(b => b.Angle.Minus), cable.Bends.Sum(b => b.Angle.Plus))
            : cable.BendTotal is { } typed ? (typed.Nominal.Radians, typed.Minus, typed.Plus) : (double.NaN, 0, 0);
        var agree = Published.Get("route/bend-agree");
        var beyond = Math.Max(lie.BendTotal - (total + more), total - less - lie.BendTotal);
        if (double.IsNaN(total) || beyond <= agree.Value)
            return null;
        return new()
        {
            Rule = Typed,
            Verdict = Verdict.Caution,
            Sentence = $"The file's bends turn {say.Angle(total)} in all, the lie turns {say.Angle(lie.BendTotal)}: the lie's are used.",
            Figure = "bend-total",
            Sources = [agree.Source, Theory],
            Why = "One of the two is wrong: a bend that was not counted, a support that is not in the file, or a place that is off.",
        };
    }

    /// <summary>The conduit as ordered or delivered, put in uncut, against the way.</summary>
    private static Finding? OfOrdered(Cable cable, RunRoute route, FigureWriter say)
    {
        if (route is not { Ordered: { } with, Counted: { } lie } || cable.Ordered is not { } ordered)
            return null;
        var shown = say.Size(ordered.Nominal.Metres);
        if (with.Answer.Lie is not { } lies)
        {
            return new()
            {
                Rule = Ordered,
                Verdict = Verdict.Fail,
                Sentence = with.Change < 0
                    ? $"The conduit ordered, {shown}, is {say.Length(-with.Change)} too short. {with.Answer.Refusal!.Say(say)}"
                    : $"The conduit ordered, {shown}, is {say.Length(with.Change)} longer than the way. {with.Answer.Refusal!.Say(say)}",
                Figure = "conduit-order",
                Sources = [Theory],
            };
        }

        var least = cable.Conduit?.MinRadius?.Metres;
        var tight = lies.LeastRadius < least;
        var step = Published.Get("route/order-step").Value;
        var much = Math.Abs(with.Change) > 0.5 * step;
        var sense = with.Change > 0 ? "longer" : "shorter";
        return new()
        {
            Rule = Ordered,
            Verdict = tight ? Verdict.Fail : much ? Verdict.Caution : Verdict.Clear,
            Sentence = Math.Abs(with.Change) < 5e-5
                ? $"The conduit ordered, {shown}, has the length of the way."
                : $"The conduit ordered, {shown}, is {say.Length(Math.Abs(with.Change))} {sense} than the way: put in as it is, it lies up to {say.Length(with.Moved, Rounding.Up)} elsewhere, its least radius is {say.Length(lies.LeastRadius, Rounding.Down)} instead of {say.Length(lie.LeastRadius, Rounding.Down)}, and it turns {say.Angle(lies.BendTotal)} instead of {say.Angle(lie.BendTotal)}.",
            Figure = "conduit-order",
            Limit = least is { } radius ? new(radius, QuantityKind.Length, true) : null,
            Sources = least is null ? [Theory] : [Maker, Theory],
            Remedies = !much ? []
                : with.Change > 0
                ? [new($"Cut {say.Move(with.Change)} off the conduit, if its maker lets you; the wire goes with it.")]
                : [new($"Order {say.Size(route.Order?.ConduitOrdered ?? double.NaN)}: too short is worse than too long.")],
            Why = much && with.Change > 0 ? "A straight run throws every bit of extra length sideways; bends take it up better." : "",
        };
    }

    private static Finding? OfClamps(Aircraft aircraft, Cable cable, FigureWriter say)
    {
        if (cable.Conduit?.Outside is not { } outside || cable.Supports.Count == 0)
            return null;
        var step = Published.Get("route/clamp-step");
        var dash = DashFor(cable.Conduit)!.Value;
        var round = cable.Supports.Where(s => s.Size is not null).ToList();
        var small = round.Count(s => s.Size!.Value.Metres < outside.Least - (0.25 * step.Value));
        var loose = round.Count(s => s.Kind != SupportHold.Grommet && s.Size!.Value.Metres > (dash * step.Value) + 1e-6);
        var bad = small > 0 || loose > 0;
        return new()
        {
            Rule = Clamps,
            Verdict = small > 0 ? Verdict.Fail : loose > 0 ? Verdict.Caution : Verdict.Clear,
            Sentence = small > 0
                ? $"{small} of {round.Count} clamps are smaller than the conduit, {say.Size(outside.Nominal.Metres)} outside."
                : loose > 0
                ? $"{loose} of {round.Count} clamps are larger than the conduit asks for: loop clamp dash {dash}, {say.Size(dash * step.Value)}."
                : $"A conduit of {say.Size(outside.Nominal.Metres)} outside takes loop clamps of dash {dash} (MS21919).",
            Sources = [step.Source],
            Why = bad ? "A clamp that is too large lets the conduit work and chafe; one that is too small crushes it." : CushionsFor(aircraft),
        };
    }

    /// <summary>Which cushions stand the heat, for the list of supports.</summary>
    private static string CushionsFor(Aircraft aircraft)
    {
        if (aircraft.Environment is not { } at)
            return "";
        var table = Published.Table("route/clamp-cushions");
        var hottest = Math.Max(at.EngineBay.Celsius, at.Cabin.Celsius);
        var stand = table.Rows.Where(r => r.Si("hottest") >= hottest).Select(r => $"{r.Find("code")!.Text} ({r.Find("cushion")!.Text})");
        return $"Bands and cushions that stand {FigureText.Plain(hottest, 0, Rounding.Up)} °C: {string.Join(", ", stand)}. Check against the part in hand.";
    }
}
