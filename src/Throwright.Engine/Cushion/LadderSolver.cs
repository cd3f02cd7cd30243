using Throwright.Shapes;
using Throwright.Shapes.Numerics;

namespace Throwright.Engine.Cushion;

/// <summary>How much work to put in; the seed makes the odds repeatable.</summary>
/// <param name="Boxes">Most boxes a search may look at; when they run out the proven bound still holds.</param>
/// <param name="Tolerance">How near proven bound and found value must come, m: five micrometres are a fifth of what is shown.</param>
public sealed record LadderEffort(long Samples = 10_000, ulong Seed = 20_250_101, double Tolerance = 5e-6, int Boxes = 4000);

/// <summary>From dimensions and tolerances to the travel ladder. Theory: docs/theory/cushion.md.</summary>
public static class LadderSolver
{
    private static readonly (string Name, Func<LadderPlaces<Real>, Real> Real, Func<LadderPlaces<Bound>, Bound> Bound)[] Cushions =
    [
        ("knob cushion, in", p => p.CushionIn, p => p.CushionIn),
        ("knob cushion, out", p => p.CushionOut, p => p.CushionOut),
        ("tip cushion at the pull stop", p => p.TipAtPull, p => p.TipAtPull),
        ("tip cushion at the push stop", p => p.TipAtPush, p => p.TipAtPush),
    ];

    public static TravelLadder Solve(LadderCase of, LadderEffort effort)
    {
        ArgumentNullException.ThrowIfNull(of);
        ArgumentNullException.ThrowIfNull(effort);
        var nominal = Nominal(of);
        var slopes = Slopes(of);
        var shares = Array.ConvertAll(Cushions, c => Shares(of, c.Bound(slopes)));
        var rss = Array.ConvertAll(shares, each => Math.Sqrt(each.Sum(s => s.Moves * s.Moves)));
        var odds = LadderOdds.Draw(of, effort.Samples, effort.Seed, [.. Cushions.Select((c, i) => new CushionAsk(of.Wanted, c.Real(nominal).Value, rss[i]))]);
        var ranges = new CushionRange[Cushions.Length];
        var box = of.Values.Select(v => new Interval(v.Least, v.Most)).ToArray();
        // Over the whole box all searches begin alike.
        var inputs = BoxSearch.Inputs(box);
        LadderPlaces<Bound> worst = LadderFormula.Evaluate<Bound>(of, inputs, LadderHeat.At.WorstTemperature), best = LadderFormula.Evaluate<Bound>(of, inputs, LadderHeat.At.BestTemperature);
        for (var i = 0; i < ranges.Length; i++)
        {
            var least = Search(of, box, i, 1, LadderHeat.At.WorstTemperature, worst, effort);
            var most = Search(of, box, i, -1, LadderHeat.At.BestTemperature, best, effort);
            ranges[i] = Range(of, i, nominal, least, -most.Proved, shares[i], rss[i], odds[i]);
        }

        var n = nominal;
        var heat = LadderHeat.Of(of.Heat, LadderHeat.At.WorstTemperature);
        var conduit = of.Heat is null ? 0 : of[LadderInput.ConduitLength].Most;
        return new()
        {
            Stroke = of[LadderInput.Stroke].Nominal,
            StrokeLeast = of[LadderInput.Stroke].Least,
            TakenAtPush = Math.Max(0, worst.StretchPush.Value.High) + Math.Max(0, heat is null ? 0 : -((heat.AtPush.Cable * conduit) + (heat.AtPush.Lever * n.LengthPush.Value))),
            TakenAtPull = Math.Max(0, worst.StretchPull.Value.High) + Math.Max(0, heat is null ? 0 : (heat.AtPull.Cable * conduit) + (heat.AtPull.Lever * n.LengthPull.Value)),
            Throw = n.Throw.Value,
            LostMotion = n.LostMotion.Value,
            StretchPull = n.StretchPull.Value,
            StretchPush = n.StretchPush.Value,
            PushStopPlace = n.PushStop.Value,
            PullStopPlace = n.PullStop.Value,
            KnobIn = ranges[0],
            KnobOut = ranges[1],
            TipAtPull = ranges[2],
            TipAtPush = ranges[3],
            HeatAtPush = HeatRange(of, n.LengthPush.Value),
            HeatAtPull = HeatRange(of, n.LengthPull.Value),
            Setting = Setting(of, n),
            Wanted = of.Wanted,
            NotCounted = of.NotCounted,
            Samples = effort.Samples,
            Seed = effort.Seed,
        };
    }

    /// <summary>All places at nominal dimensions and rigging temperature.</summary>
    public static LadderPlaces<Real> Nominal(LadderCase of)
    {
        ArgumentNullException.ThrowIfNull(of);
        var x = new Real[of.Values.Count];
        for (var i = 0; i < x.Length; i++)
            x[i] = new(of.Values[i].Nominal);
        return LadderFormula.Evaluate<Real>(of, x, LadderHeat.At.Rigging);
    }

    private static CushionRange Range(
        LadderCase of, int which, LadderPlaces<Real> nominal, BoxExtreme least, double most, EquatableList<LadderShare> shares, double rss, CushionOdds odds)
    {
        var corner = of.Values.Where(v => !v.IsExact)
            .Select(v => new LadderCorner(v.Name, v.Path, least.At[(int)v.Input], v.Kind))
            .ToEquatableList();
        return new(
            Cushions[which].Name, Cushions[which].Real(nominal).Value, least.Proved, most, least.Found, least.Outcome, odds.Low95, odds.High95, rss,
            odds.ShareOutside, odds.ShareAbove, shares, corner);
    }

    private static BoxExtreme Search(LadderCase of, Interval[] box, int which, double sign, LadderHeat.At at, LadderPlaces<Bound> overBox, LadderEffort effort)
    {
        var (_, real, bound) = Cushions[which];
        return BoxSearch.Least(
            x => sign * bound(LadderFormula.Evaluate<Bound>(of, x, at)),
            x => sign * real(LadderFormula.Evaluate<Real>(of, Array.ConvertAll(x, v => new Real(v)), at)).Value,
            box,
            effort.Tolerance,
            effort.Boxes,
            sign * bound(overBox));
    }

    /// <summary>All places at the nominal point and rigging temperature, with their slopes.</summary>
    private static LadderPlaces<Bound> Slopes(LadderCase of)
    {
        var x = new Bound[of.Values.Count];
        for (var i = 0; i < x.Length; i++)
            x[i] = Bound.Input(i, x.Length, Interval.Of(of.Values[i].Nominal));
        return LadderFormula.Evaluate<Bound>(of, x, LadderHeat.At.Rigging);
    }

    /// <summary>Slope at the nominal point times half the range, largest first.</summary>
    private static EquatableList<LadderShare> Shares(LadderCase of, Bound cushion) => of.Values.Where(v => !v.IsExact)
        .Select(v =>
        {
            // At a kink of max(0, .) the slope is an interval; its larger end is the cautious one.
            var slope = cushion.Slope((int)v.Input);
            var steep = Math.Abs(slope.Low) > Math.Abs(slope.High) ? slope.Low : slope.High;
            return new LadderShare(v.Name, v.Path, Math.Abs(steep) * 0.5 * (v.Minus + v.Plus), steep);
        })
        .Where(s => s.Moves > 0)
        .OrderByDescending(s => s.Moves)
        .ThenBy(s => s.Input, StringComparer.Ordinal)
        .ToEquatableList();

    private static Interval HeatRange(LadderCase of, double free)
    {
        if (of.Heat is not { } h)
            return Interval.Zero;
        double cable = (h.Wire - h.Conduit) * of[LadderInput.ConduitLength].Nominal, lever = (h.Wire - h.Bracket) * free;
        return new(
            Math.Min(cable * h.CableCold, cable * h.CableHot) + Math.Min(lever * h.LeverCold, lever * h.LeverHot),
            Math.Max(cable * h.CableCold, cable * h.CableHot) + Math.Max(lever * h.LeverCold, lever * h.LeverHot));
    }

    /// <summary>The three ways to set the nominal place: they describe the same swivel on the same wire.</summary>
    private static SwivelPlace Setting(LadderCase of, LadderPlaces<Real> n)
    {
        var light = n.PushStop.Value + n.StretchPush.Value;
        return new(
            of.SettingKind, of.SettingProposed, light + n.LengthPush.Value, light, n.PullStop.Value - n.StretchPull.Value);
    }
}
