using Throwright.Engine.Findings;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Route;

/// <summary>What a lie is held against.</summary>
/// <param name="LeastRadius">Least radius of the conduit, m; null: not known.</param>
/// <param name="RadiusMargin">The radius wanted over the least one, for what hands and tapes do to the plan.</param>
/// <param name="SupportSpacing">Most conduit between two supports, m.</param>
/// <param name="MovePerLength">Most move of the lie over the length added.</param>
/// <param name="WorstRadius">Radius that nearly all lays within what may be off keep, m; known, it counts instead of the margin.</param>
/// <param name="BendTotal">Bend total above which the lay-out should be thought over, rad.</param>
public sealed record LieLimits(Limit? LeastRadius, Limit RadiusMargin, Limit SupportSpacing, Limit MovePerLength, Limit BendTotal, double? WorstRadius = null);

/// <summary>Findings on the lie.</summary>
public static class LieRules
{
    public const string Rests = "route/lie";
    public const string Radius = "route/radius";
    public const string Supports = "route/supports";
    public const string Movement = "route/movement";
    public const string BendTotal = "route/bend-total";
    public const string Contact = "route/contact";

    private static readonly SourceRef Derived = new("project", "docs/theory/route.md", Evidence.Derived);

    public static IEnumerable<Finding> Find(LieAnswer answer, LieLimits limits, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(limits);
        ArgumentNullException.ThrowIfNull(say);
        if (answer.Lie is not { } lie)
        {
            yield return new()
            {
                Rule = Rests,
                Verdict = Verdict.Fail,
                Sentence = answer.Refusal!.Say(say),
                Sources = [Derived],
            };
            yield break;
        }

        yield return OfRest(lie, say);
        yield return OfRadius(lie, limits, say);
        foreach (var contact in lie.Contacts)
        {
            yield return new()
            {
                Rule = Contact,
                Verdict = Verdict.Caution,
                Sentence = $"The conduit lies against {contact.Name}, {say.Length(contact.At)} from the start{(double.IsFinite(contact.Force) ? $", with {say.Force(contact.Force, Rounding.Up)}" : "")}.",
                Sources = [Derived],
                Why = "Where it lies against something it chafes. Lead it clear, or hold it there with a clamp.",
            };
        }

        // Comparisons are written so that a figure that is no number is never clear.
        var span = lie.Spans.Max(s => s.Length);
        var far = !(span <= limits.SupportSpacing.Value);
        yield return new()
        {
            Rule = Supports,
            Verdict = far || limits.SupportSpacing.Source.Evidence == Evidence.Memory ? Verdict.Caution : Verdict.Clear,
            Sentence = $"The longest stretch without a support is {say.Length(span, Rounding.Up)}, wanted {say.Length(limits.SupportSpacing.Value)} or less.",
            Figure = "support-spacing",
            Limit = new(limits.SupportSpacing.Value, QuantityKind.Length, false),
            Sources = [limits.SupportSpacing.Source],
            Why = far ? "A conduit without support shakes, chafes, and loads its end fittings. The maker's own figure goes first."
                : limits.SupportSpacing.Source.Evidence == Evidence.Memory ? "The spacing is from memory: confirm it." : "",
        };

        var moves = lie.MovePerLength;
        var loose = !(moves <= limits.MovePerLength.Value);
        yield return new()
        {
            Rule = Movement,
            Verdict = loose ? Verdict.Caution : Verdict.Clear,
            Sentence = double.IsFinite(moves)
                ? $"{say.Length(Length.MetresPerInch)} more conduit moves the lie by {say.Length(moves * Length.MetresPerInch, Rounding.Up)} or so."
                : "With a little more conduit no lie was found: how far it moves isn't known.",
            Figure = "move-per-length",
            Limit = new(limits.MovePerLength.Value, QuantityKind.Ratio, false),
            Sources = [limits.MovePerLength.Source],
            Why = loose ? "A nearly straight run throws every bit of extra length sideways; a support in its middle, or one honest bend, takes it up." : "",
        };

        // A limit from memory may warn; it is never what stands behind clear.
        var much = !(lie.BendTotal <= limits.BendTotal.Value);
        if (!much && limits.BendTotal.Source.Evidence == Evidence.Memory)
            yield break;
        yield return new()
        {
            Rule = BendTotal,
            Verdict = much ? Verdict.Caution : Verdict.Clear,
            Sentence = $"The lie turns {say.Angle(lie.BendTotal, Rounding.Up)} in all, wanted {say.Angle(limits.BendTotal.Value)} or less.",
            Figure = "bend-total",
            Limit = new(limits.BendTotal.Value, QuantityKind.Angle, false),
            Sources = [limits.BendTotal.Source],
            Why = much ? "Friction grows with the power of the bend total, lost motion in proportion to it." : "",
        };
    }

    private static Finding OfRest(Lie lie, FigureWriter say)
    {
        var others = lie.Others.Count switch
        {
            0 => "",
            1 => " It can also rest in one other lie.",
            _ => $" It can also rest in {lie.Others.Count} other lies.",
        };
        return new()
        {
            Rule = Rests,
            Verdict = lie.IsLoop || lie.FallsToAnySide || lie.Others.Count > 0 ? Verdict.Caution : Verdict.Clear,
            Sentence = lie.IsLoop
                ? $"The conduit lies in a loop: it turns more than {say.Angle(1.5 * Math.PI)} between two holds.{others}"
                : lie.FallsToAnySide
                ? $"The bow can fall to any side.{others}"
                : $"The conduit rests in its lie by itself.{others}",
            Sources = [Derived],
            Why = lie.IsLoop || lie.FallsToAnySide || lie.Others.Count > 0
                ? "Where it rests is decided by how it is laid in. Let it roll and settle, then tighten; check that it can't be pushed over."
                : "The lie holds for a conduit laid in free to roll, its clamps closed last.",
        };
    }

    private static Finding OfRadius(Lie lie, LieLimits limits, FigureWriter say)
    {
        var radius = lie.LeastRadius;
        var shown = double.IsFinite(radius) ? say.Length(radius, Rounding.Down) : "";
        var place = $"{say.Length(lie.LeastRadiusAt)} from the start";
        if (limits.LeastRadius is not { } least)
        {
            return new()
            {
                Rule = Radius,
                Verdict = Verdict.NeedsInput,
                Sentence = shown.Length > 0 ? $"The tightest place has radius {shown}, {place}; the conduit's least radius isn't known." : "The conduit lies straight; its least radius isn't known.",
                Figure = "least-radius",
                Sources = [Derived],
            };
        }

        var wanted = least.Value * limits.RadiusMargin.Value;
        if (limits.WorstRadius is { } worst)
        {
            var keeps = worst >= least.Value;
            return new()
            {
                Rule = Radius,
                Verdict = !(radius >= least.Value) ? Verdict.Fail : !keeps || least.Source.Evidence == Evidence.Memory ? Verdict.Caution : Verdict.Clear,
                Sentence = shown.Length > 0
                    ? $"The tightest place has radius {shown}, {place}, and {(double.IsFinite(worst) ? say.Length(worst, Rounding.Down) : "less")} when hand and tape are off; the conduit allows {say.Length(least.Value, Rounding.Up)}."
                    : $"The conduit lies straight; it allows a radius of {say.Length(least.Value, Rounding.Up)}.",
                Figure = "least-radius",
                Limit = new(least.Value, QuantityKind.Length, true),
                Sources = [least.Source, Derived],
                Why = !(radius >= least.Value)
                    ? "A conduit bent tighter than its least radius takes a set, and the wire drags and breaks in it."
                    : !keeps ? "Only the plan keeps the least radius: a few millimetres or degrees at the ends can use up the margin."
                    : least.Source.Evidence == Evidence.Memory ? "The least radius is from memory: confirm it with the conduit's maker." : "",
            };
        }

        return new()
        {
            Rule = Radius,
            Verdict = radius >= wanted ? least.Source.Evidence == Evidence.Memory ? Verdict.Caution : Verdict.Clear : radius >= least.Value ? Verdict.Caution : Verdict.Fail,
            Sentence = shown.Length > 0
                ? $"The tightest place has radius {shown}, {place}; the conduit allows {say.Length(least.Value, Rounding.Up)}, with margin {say.Length(wanted, Rounding.Up)}."
                : $"The conduit lies straight; it allows a radius of {say.Length(least.Value, Rounding.Up)}.",
            Figure = "least-radius",
            Limit = new(wanted, QuantityKind.Length, true),
            Sources = [least.Source, limits.RadiusMargin.Source, Derived],
            Why = radius >= wanted
                ? least.Source.Evidence == Evidence.Memory ? "The least radius is from memory: confirm it with the conduit's maker." : ""
                : radius >= least.Value
                ? "Only the plan keeps the least radius: a few millimetres or degrees at the ends can use up the margin."
                : "A conduit bent tighter than its least radius takes a set, and the wire drags and breaks in it.",
        };
    }
}
