using Throwright.Shapes;
using Throwright.Shapes.Numerics;

namespace Throwright.Engine.Throw;

/// <summary>What a dimension is to be chosen for.</summary>
public enum SweepAim
{
    /// <summary>The wanted wire travel.</summary>
    Throw,

    /// <summary>Wire square to the arm at mid travel: most leverage in the middle, longest push half.</summary>
    SquareAtMid,

    /// <summary>The same moment arm at both stops: the hand feels the same at both ends.</summary>
    EqualEndArms,

    /// <summary>The same swing of the wire to both sides of the conduit's end.</summary>
    BalancedSwing,
}

/// <summary>One solution: the value of the dimension and the sweep it gives.</summary>
/// <param name="Value">The dimension that was searched: m or rad.</param>
/// <param name="Usable">No dead centre inside, and the wire meets the arm at a workable angle.</param>
public sealed record SweepChoice(double Value, Sweep Sweep, bool Usable, string Why);

/// <summary>All values of one dimension that reach an aim, and the one to take.</summary>
/// <param name="Choices">In rising order of the dimension.</param>
/// <param name="Recommended">Index into Choices; -1 when none is usable.</param>
/// <param name="Nearest">The best that can be had when nothing reaches the aim: value and what it gives.</param>
public sealed record SweepChoices(SweepAim Aim, EquatableList<SweepChoice> Choices, int Recommended, SweepChoice? Nearest)
{
    public SweepChoice? Best => Recommended >= 0 ? Choices[Recommended] : null;
}

/// <summary>Finds arm radius, clocking or anchor place that reach an aim: every solution a scan of the range shows, not the first.</summary>
/// <remarks>
/// The aim is written as a function of the one dimension whose zeros are wanted; the range is scanned in equal
/// steps and each change of sign is closed by Brent's method; two solutions within a step, or one that only touches
/// zero, are not seen. Choices whose sweep holds a dead centre are shown but not usable. Recommended: the usable
/// choice with the largest least transmission angle, then the smallest swing.
/// </remarks>
public static class SweepSearch
{
    /// <summary>Search one dimension.</summary>
    /// <param name="at">The lever end with the dimension at this value; null where it makes no sense.</param>
    /// <param name="wanted">Wanted throw, m, for <see cref="SweepAim.Throw"/>.</param>
    /// <param name="leastTransmission">Below this angle (rad) a choice is not usable.</param>
    public static SweepChoices Find(
        Func<double, SweepCase?> at, double from, double to, SweepAim aim, double wanted, double leastTransmission, int steps = 720)
    {
        ArgumentNullException.ThrowIfNull(at);
        double Miss(double value)
        {
            var of = at(value);
            // Only the swing looks between the stops.
            var sweep = of is null ? null : aim == SweepAim.BalancedSwing ? SweepSolver.Scan(of) : SweepSolver.Scan(of, steps: 2);
            return sweep is null ? double.NaN : MissOf(sweep, aim, wanted);
        }

        var choices = Roots.All(Miss, from, to, steps)
            // A change of sign through infinity or a jump is no zero.
            .Where(value => Math.Abs(Miss(value)) < 1e-9)
            .Select(value => Choice(value, SweepSolver.Solve(at(value)!)!, leastTransmission))
            .ToEquatableList();
        var best = Enumerable.Range(0, choices.Count)
            .Where(i => choices[i].Usable)
            .OrderByDescending(i => Math.Round(choices[i].Sweep.LeastTransmission, 9))
            .ThenBy(i => choices[i].Sweep.MostSwing)
            .ThenBy(i => choices[i].Value)
            .Append(-1)
            .First();
        return new(aim, choices, best, best >= 0 ? null : Nearest(at, from, to, Miss, leastTransmission, steps));
    }

    /// <summary>The aim as a number that is zero when reached: m for throw and arms, rad for angles.</summary>
    private static double MissOf(Sweep sweep, SweepAim aim, double wanted) => aim switch
    {
        SweepAim.Throw => sweep.IsMonotone ? sweep.Throw - wanted : double.NaN,
        // cos(angle between arm and wire) x radius, signed: zero when square.
        SweepAim.SquareAtMid => SquareMiss(sweep),
        SweepAim.EqualEndArms => sweep.AtPush.MomentArm - sweep.AtPull.MomentArm,
        SweepAim.BalancedSwing => SwingMiss(sweep),
        _ => throw new ArgumentOutOfRangeException(nameof(aim)),
    };

    private static double SquareMiss(Sweep sweep)
    {
        var swivel = sweep.Case.SwivelAt(sweep.Case.Mid);
        var wire = swivel - sweep.Case.Anchor;
        return Shapes.Frames.Vector3.Dot(wire, swivel) / wire.Size;
    }

    /// <summary>Signed swing in the arm's plane: the largest to one side against the largest to the other.</summary>
    private static double SwingMiss(Sweep sweep)
    {
        Shapes.Frames.Vector3 exit = sweep.Case.Along, mouth = sweep.Case.Mouth;
        // A conduit's end square to the arm's plane has no sides in it.
        if (Math.Sqrt((exit.X * exit.X) + (exit.Y * exit.Y)) < 1e-9 * exit.Size)
            return double.NaN;
        double most = double.NegativeInfinity, least = double.PositiveInfinity;
        foreach (var place in sweep.Places)
        {
            var wire = sweep.Case.SwivelAt(place.Angle) - mouth;
            var side = Math.Atan2((exit.X * wire.Y) - (exit.Y * wire.X), (exit.X * wire.X) + (exit.Y * wire.Y));
            most = Math.Max(most, side);
            least = Math.Min(least, side);
        }

        return most + least;
    }

    private static SweepChoice Choice(double value, Sweep sweep, double leastTransmission)
    {
        var degrees = sweep.LeastTransmission * 180 / Math.PI;
        if (!sweep.IsMonotone)
            return new(value, sweep, false, "the wire passes a dead centre inside the sweep");
        if (sweep.LeastTransmission < leastTransmission)
            return new(value, sweep, false, $"the wire meets the arm at only {degrees:F1} deg at one stop");
        return new(value, sweep, true, $"the wire meets the arm at {degrees:F1} deg or more over the whole sweep");
    }

    private static SweepChoice? Nearest(
        Func<double, SweepCase?> at, double from, double to, Func<double, double> miss, double leastTransmission, int steps)
    {
        SweepChoice? best = null;
        var least = double.PositiveInfinity;
        for (var i = 0; i <= steps; i++)
        {
            var value = from + ((to - from) * i / steps);
            var off = Math.Abs(miss(value));
            if (!(off < least))
                continue;
            var choice = Choice(value, SweepSolver.Solve(at(value)!)!, leastTransmission);
            if (choice.Usable)
                (best, least) = (choice, off);
        }

        return best;
    }
}
