namespace Throwright.Engine.Route;

/// <summary>What is added to the lie on the way to an order. Lengths in m.</summary>
/// <param name="ConduitInFittings">Conduit inside both end fittings, beyond the points where the lie begins and ends.</param>
/// <param name="FreeWire">Free wire beyond the conduit tip at its longest.</param>
/// <param name="WireInFittings">Wire inside the fittings of both its ends.</param>
/// <param name="Trimming">Allowance of wire to cut to fit.</param>
/// <param name="OrderStep">Lengths are ordered in whole multiples of this.</param>
public sealed record OrderAllowances(double ConduitInFittings, double FreeWire, double WireInFittings, double Trimming, double OrderStep);

/// <summary>The lie with another length of conduit.</summary>
/// <param name="Change">Conduit more (+) or less (-) than the planned lie has.</param>
/// <param name="Answer">Without its own move per length.</param>
/// <param name="Moved">Largest move of the lie from the planned one; NaN where there is no lie.</param>
public sealed record OtherLength(double Change, LieAnswer Answer, double Moved);

/// <summary>Conduit and wire to order, and what happens with other lengths.</summary>
public sealed record LengthToOrder
{
    /// <summary>Conduit for the planned lie, fittings included.</summary>
    public required double Conduit { get; init; }

    /// <summary>Wire that goes with it, trimming allowance included.</summary>
    public required double Wire { get; init; }

    /// <summary>Rounded up to the order step.</summary>
    public required double ConduitOrdered { get; init; }
    public required double WireOrdered { get; init; }

    /// <summary>The conduit as ordered, put in untrimmed.</summary>
    public required OtherLength AsOrdered { get; init; }

    /// <summary>With an inch, or 25 mm, less and more than planned.</summary>
    public required OtherLength Shorter { get; init; }
    public required OtherLength Longer { get; init; }

    // Part of the length that is a small change.
    private const double Step = 0.05;

    /// <param name="near">The lie with a little more or less conduit, where that may be known; null: it is worked out.</param>
    public static LengthToOrder Find(Lie planned, OrderAllowances allowances, double inch, Func<Lie, double, OtherLength>? near = null)
    {
        ArgumentNullException.ThrowIfNull(planned);
        ArgumentNullException.ThrowIfNull(allowances);
        if (!(allowances.OrderStep > 0) || !(inch > 0) || !(Math.Min(Math.Min(allowances.ConduitInFittings, allowances.FreeWire), Math.Min(allowances.WireInFittings, allowances.Trimming)) >= 0))
            throw new ArgumentOutOfRangeException(nameof(allowances), allowances, "allowances 0 or more, steps above 0");
        near ??= Near;
        var conduit = planned.Case.Length + allowances.ConduitInFittings;
        var ordered = Up(conduit, allowances.OrderStep);
        double Wire(double of) => of + allowances.FreeWire + allowances.WireInFittings + allowances.Trimming;
        return new()
        {
            Conduit = conduit,
            Wire = Wire(conduit),
            ConduitOrdered = ordered,
            // The conduit may go in untrimmed, so the wire has to reach through all of it.
            WireOrdered = Up(Wire(ordered), allowances.OrderStep),
            AsOrdered = near(planned, ordered - conduit),
            Shorter = near(planned, -inch),
            Longer = near(planned, inch),
        };
    }

    /// <summary>The planned lie with another length, looked for from the start.</summary>
    public static OtherLength With(Lie planned, double change) => With(planned, change, false);

    /// <summary>A little more or less: what the shapes of the planned length go over into. A larger change is looked for from the start.</summary>
    public static OtherLength Near(Lie planned, double change) =>
        With(planned, change, Math.Abs(change) <= Step * planned.Case.Length);

    private static OtherLength With(Lie planned, double change, bool isSmall)
    {
        ArgumentNullException.ThrowIfNull(planned);
        if (!(planned.Case.Length + change > 0))
            return new(change, new(null, new(NoLieReason.TooShort, planned.Case.Length + change, planned.Case.Straight)), double.NaN);
        var answer = LieSolver.Again(planned.Case.WithLength(planned.Case.Length + change), planned, isSmall);
        return new(change, answer, answer.Lie is { } lie ? LieSolver.Apart(lie.Shape, planned.Shape) : double.NaN);
    }

    /// <summary>Up to a whole number of steps; a billionth of a step over is no step.</summary>
    private static double Up(double length, double step) => Math.Ceiling((length / step) - 1e-9) * step;
}
