using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Prove;

/// <summary>A knob's place on the panel: right and up in the aircraft, m.</summary>
public sealed record PanelPlace(string Name, ControlFunction Function, KnobShape Shape, double Right, double Up);

/// <summary>Order and distances of the knobs of one engine: 14 CFR 23.777(d), text of Amendment 23-62.</summary>
public static class PanelOrder
{
    public const string CarburettorHeat = "prove/carburettor-heat-place";
    public const string Levers = "prove/lever-order";
    public const string Shapes = "prove/knob-shapes";

    /// <summary>8 in from the mixture unless left of the throttle.</summary>
    private const double Apart = 8 * Length.MetresPerInch;

    public static IEnumerable<Finding> Find(IReadOnlyList<PanelPlace> knobs, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(knobs);
        ArgumentNullException.ThrowIfNull(say);
        PanelPlace? Of(ControlFunction function) => knobs.FirstOrDefault(k => k.Function == function);
        var source = Published.Rule("23.777(d)").Source;
        PanelPlace? throttle = Of(ControlFunction.Throttle), propeller = Of(ControlFunction.Propeller), mixture = Of(ControlFunction.Mixture), heat = Of(ControlFunction.CarburettorHeat);
        if (heat is not null && mixture is not null)
        {
            var distance = Math.Sqrt(((heat.Right - mixture.Right) * (heat.Right - mixture.Right)) + ((heat.Up - mixture.Up) * (heat.Up - mixture.Up)));
            var left = throttle is not null && heat.Right < throttle.Right;
            yield return new()
            {
                Rule = CarburettorHeat,
                // Where no throttle is described, it may stand left of it.
                Verdict = left || distance >= Apart ? Verdict.Clear : throttle is null ? Verdict.Caution : Verdict.Fail,
                Sentence = left
                    ? "Carburettor heat stands left of the throttle."
                    : throttle is null
                        ? $"Carburettor heat stands {say.Length(distance, Rounding.Down)} from the mixture; {say.Length(Apart)} is asked unless it stands left of the throttle, which the file does not hold."
                        : distance >= Apart
                            ? $"Carburettor heat stands {say.Length(distance, Rounding.Down)} from the mixture; {say.Length(Apart)} is asked."
                            : $"Carburettor heat stands {say.Length(distance, Rounding.Down)} from the mixture and not left of the throttle; {say.Length(Apart)} is asked.",
                Limit = new(Apart, QuantityKind.Length, true),
                Sources = [source],
                Why = "A hand that wants heat must not find the mixture.",
            };
        }

        if (mixture is not null && Beside(knobs) is { } beside)
        {
            var same = beside.Shape == mixture.Shape;
            yield return new()
            {
                Rule = Shapes,
                Verdict = same ? Verdict.Caution : Verdict.Clear,
                Sentence = same
                    ? $"The mixture and its nearest neighbour, {beside.Name}, have handles of one kind: the hand can't tell them by feel."
                    : $"The mixture's handle is of another kind than that of its nearest neighbour, {beside.Name}.",
                Why = same ? "The figure of shapes could not be read as text; points on the mixture's rim, or a lock on it, tell them apart." : "",
                Sources = [Published.Rule("23.1147(a)").Source, Published.Rule("23.781").Source],
            };
        }

        var order = new[] { throttle, propeller, mixture }.OfType<PanelPlace>().ToList();
        if (order.Count < 2)
            yield break;
        var sorted = order.SequenceEqual(order.OrderBy(k => k.Right));
        yield return new()
        {
            Rule = Levers,
            Verdict = sorted ? Verdict.Clear : Verdict.Fail,
            Sentence = sorted
                ? "The engine controls stand in the order power, propeller, mixture from the left."
                : $"From the left stand {string.Join(", ", order.OrderBy(k => k.Right).Select(k => k.Name))}; the order asked is power, propeller, mixture.",
            Sources = [source],
        };
    }

    /// <summary>The knob nearest to the mixture; null: no mixture, or nothing beside it.</summary>
    public static PanelPlace? Beside(IReadOnlyList<PanelPlace> knobs) =>
        knobs.FirstOrDefault(k => k.Function == ControlFunction.Mixture) is { } mixture ? knobs.Where(k => k != mixture).MinBy(k => Apart2(k, mixture)) : null;

    private static double Apart2(PanelPlace a, PanelPlace b) => ((a.Right - b.Right) * (a.Right - b.Right)) + ((a.Up - b.Up) * (a.Up - b.Up));
}
