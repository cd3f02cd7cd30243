using Throwright.Engine.Findings;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Throw;

/// <summary>What a sweep is held against.</summary>
/// <param name="LeastTransmission">Least angle between wire and arm, rad.</param>
/// <param name="Fairlead">Most swing of a bare wire leaving a tip that can't swivel, rad.</param>
/// <param name="FairleadBinds">The aircraft is measured against the rule with that limit: more is a fail, not a caution.</param>
/// <param name="SwivelMargin">Angle to keep in hand below the tip's own swivel, rad.</param>
public sealed record SweepLimits(Limit LeastTransmission, Limit Fairlead, Limit SwivelMargin, bool FairleadBinds = false);

/// <summary>Findings on the throw.</summary>
public static class SweepRules
{
    public const string DeadCentre = "throw/dead-centre";
    public const string Transmission = "throw/transmission";
    public const string Swing = "throw/swing";
    public const string WireBend = "throw/wire-bend";

    private static readonly SourceRef Derived = new("project", "docs/theory/throw.md", Evidence.Derived);

    /// <summary>All findings of the sweep.</summary>
    /// <param name="radiusMost">Longest arm over its tolerance, m.</param>
    /// <param name="leastArmAtStops">Least moment arm at a stop over the tolerances, m/rad; 0 when a dead centre may be reached.</param>
    public static IEnumerable<Finding> Find(
        Sweep? sweep, double leastArmAtStops, double radiusMost, Angle tipSwivels, WireBending? bending, double? elasticLimit, Limit? fatigueShare, SourceRef? strengthSource, SweepLimits limits, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(limits);
        ArgumentNullException.ThrowIfNull(say);
        if (sweep is null)
        {
            yield return new()
            {
                Rule = DeadCentre,
                Verdict = Verdict.Fail,
                Sentence = "The anchor lies on the lever's axis: the wire can't turn the arm.",
                Sources = [Derived],
            };
            yield break;
        }

        // Comparisons are written so that a figure that is no number is never clear.
        if (!sweep.IsDriven(leastArmAtStops))
        {
            yield return new()
            {
                Rule = DeadCentre,
                Verdict = Verdict.Fail,
                Sentence = sweep.IsMonotone
                    ? "Within its tolerances the arm can reach a dead centre at a stop."
                    : "The wire passes a dead centre inside the sweep: it can't drive the arm from stop to stop.",
                Figure = "to-dead-centre",
                Limit = new(0, QuantityKind.Angle, true),
                Sources = [Derived],
                Why = "At a dead centre the wire points at the pivot: it moves without turning the arm, and which way the arm goes is chance.",
            };
            yield break;
        }

        yield return new()
        {
            Rule = DeadCentre,
            Verdict = Verdict.Clear,
            Sentence = $"The nearest dead centre is {say.Angle(sweep.ToDeadCentre, Rounding.Down)} beyond a stop.",
            Figure = "to-dead-centre",
            Limit = new(0, QuantityKind.Angle, true),
            Sources = [Derived],
        };

        var least = limits.LeastTransmission;
        // Least moment arm on the longest arm: below the true least angle, never above it.
        var angle = Math.Asin(Math.Min(1, leastArmAtStops / radiusMost));
        yield return new()
        {
            Rule = Transmission,
            Verdict = angle >= least.Value ? Verdict.Clear : Verdict.Caution,
            Sentence = $"The wire meets the arm at {say.Angle(angle, Rounding.Down)} at the worse stop, wanted {say.Angle(least.Value)} or more.",
            Figure = "transmission",
            Limit = new(least.Value, QuantityKind.Angle, true),
            Sources = [least.Source],
            Why = !(angle >= least.Value) ? "Near a dead centre a small change of length turns the arm a lot, and little force reaches it." : "",
        };

        foreach (var finding in OfSwing(sweep, tipSwivels, bending, elasticLimit, fatigueShare, strengthSource, limits, say))
            yield return finding;
    }

    private static IEnumerable<Finding> OfSwing(
        Sweep sweep, Angle tipSwivels, WireBending? bending, double? elasticLimit, Limit? fatigueShare, SourceRef? strengthSource, SweepLimits limits, FigureWriter say)
    {
        var swing = sweep.MostSwing;
        var shown = say.Angle(swing, Rounding.Up);
        if (tipSwivels.Radians > 0)
        {
            var most = tipSwivels.Radians - limits.SwivelMargin.Value;
            yield return new()
            {
                Rule = Swing,
                Verdict = swing <= most ? Verdict.Clear : swing <= tipSwivels.Radians ? Verdict.Caution : Verdict.Fail,
                Sentence = swing > tipSwivels.Radians
                    ? $"The wire swings {shown}; the conduit's tip swivels only {say.Angle(tipSwivels.Radians)}."
                    : $"The wire swings {shown}; the tip swivels {say.Angle(tipSwivels.Radians)}, {say.Angle(limits.SwivelMargin.Value)} of it to be kept in hand.",
                Figure = "swing",
                Limit = new(most, QuantityKind.Angle, false),
                Sources = [limits.SwivelMargin.Source],
                Why = swing > tipSwivels.Radians ? "Past its cone the tube binds and the wire bends at its mouth, where it breaks." : "",
            };
            yield break;
        }

        yield return new()
        {
            Rule = Swing,
            Verdict = swing <= limits.Fairlead.Value ? Verdict.Clear : limits.FairleadBinds ? Verdict.Fail : Verdict.Caution,
            Sentence = $"The wire leaves the fixed tip at up to {shown}, a plain fairlead allows {say.Angle(limits.Fairlead.Value)}.",
            Figure = "swing",
            Limit = new(limits.Fairlead.Value, QuantityKind.Angle, false),
            Sources = [limits.Fairlead.Source],
            Why = swing > limits.Fairlead.Value ? "A fixed tip bends and wears the wire at every stroke; a tip that swivels does not." : "",
        };
        if (bending is null || elasticLimit is not { } limit || fatigueShare is null || strengthSource is null)
            yield break;
        var fatigue = fatigueShare.Value;
        yield return new()
        {
            Rule = WireBend,
            Verdict = bending.Stress <= fatigue ? Verdict.Clear : bending.Stress <= limit ? Verdict.Caution : Verdict.Fail,
            Sentence = double.IsPositiveInfinity(bending.Stress)
                ? "Pushed, the bare wire buckles at the fixed tip, from which it is swung aside."
                : bending.Stress > limit
                ? $"The bare wire is bent to {say.Text(QuantityKind.Stress, bending.Stress, Rounding.Up)} at the tip: it takes a set ({say.Text(QuantityKind.Stress, limit)})."
                : $"The bare wire is bent to {say.Text(QuantityKind.Stress, bending.Stress, Rounding.Up)} at the tip, for a long life {say.Text(QuantityKind.Stress, fatigue)} or less.",
            Figure = "wire-bend-stress",
            Limit = new(fatigue, QuantityKind.Stress, false),
            Sources = [strengthSource, fatigueShare.Source],
            Why = bending.Stress > fatigue ? "The wire breaks where it leaves the tip. A longer bare wire, a tip that swivels or a better aimed tip lowers it." : "",
        };
    }
}
