namespace Throwright.Engine.Cushion;

/// <summary>What a temperature does to each length of the ladder: factors, the same for every aircraft drawn.</summary>
/// <param name="AtPush">Knob movement at the push stop, m per m of conduit and of free wire.</param>
/// <param name="AtPull">The same at the pull stop.</param>
/// <param name="Apart">Anchor and pivot are carried apart by this factor. Tip and swivel grow with it and take back less: not counted.</param>
public sealed record LadderHeat((double Cable, double Lever) AtPush, (double Cable, double Lever) AtPull, double Apart)
{
    /// <summary>Which temperatures the cushions are taken at.</summary>
    public enum At
    {
        Rigging,

        /// <summary>For each cushion the extreme that makes it smallest.</summary>
        WorstTemperature,

        /// <summary>For each cushion the extreme that makes it largest.</summary>
        BestTemperature,
    }

    /// <summary>Null: nothing moves.</summary>
    public static LadderHeat? Of(Heat? of, At temperature)
    {
        if (of is not { } heat || temperature == At.Rigging)
            return null;
        var worst = temperature == At.WorstTemperature;
        var apart = Math.Abs(heat.BracketLow) > Math.Abs(heat.BracketHigh) ? heat.BracketLow : heat.BracketHigh;
        return new(Shift(heat, lowest: worst), Shift(heat, lowest: !worst), 1 + Extreme(apart, heat.LeverCold, heat.LeverHot, worst));
    }

    /// <summary>Knob movement at its lowest or highest: each part at the temperature that serves.</summary>
    private static (double Cable, double Lever) Shift(Heat heat, bool lowest)
    {
        double low = Extreme(heat.Wire - heat.BracketLow, heat.LeverCold, heat.LeverHot, lowest), high = Extreme(heat.Wire - heat.BracketHigh, heat.LeverCold, heat.LeverHot, lowest);
        var cable = Extreme(heat.Wire - heat.Conduit, heat.CableCold, heat.CableHot, lowest);
        if (heat.ConduitOther is { } other)
        {
            var straight = Extreme(heat.Wire - other, heat.CableCold, heat.CableHot, lowest);
            cable = lowest ? Math.Min(cable, straight) : Math.Max(cable, straight);
        }

        return (cable, lowest ? Math.Min(low, high) : Math.Max(low, high));
    }

    private static double Extreme(double slope, double cold, double hot, bool lowest) =>
        lowest ? Math.Min(slope * cold, slope * hot) : Math.Max(slope * cold, slope * hot);
}
