using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Distance;

/// <summary>A solid on its joints. outerFromBody at positions q is Chain.At(q) * Home.</summary>
public sealed record MovingSolid(Solid Solid, JointChain Chain, Pose Home)
{
    public MovingSolid(Solid solid)
        : this(solid, JointChain.Fixed, Pose.None)
    {
    }

    public MovingSolid(Solid solid, JointChain chain)
        : this(solid, chain, Pose.None)
    {
    }
}

/// <summary>What a search is to settle, and when it may stop.</summary>
public sealed record SearchAim
{
    /// <summary>Wanted width of the answer, upper - lower, m.</summary>
    public double Tolerance { get; init; } = 1e-4;

    /// <summary>Stop as soon as the distance is proved to be at least this everywhere, m.</summary>
    public double Enough { get; init; } = double.PositiveInfinity;

    /// <summary>Stop as soon as a position below this is found, m.</summary>
    public double TooLittle { get; init; } = double.NegativeInfinity;

    /// <summary>After an early no: how far it is from enough. The nearest place is looked for, and the depth of an overlap.</summary>
    public bool HowBadly { get; init; } = true;

    /// <summary>Most boxes looked at: a count, not a time, so that the answer is the same on every machine.</summary>
    public long MostBoxes { get; init; } = 2_000_000;

    /// <summary>Only "is it at least this far apart everywhere?": of a no, one place that proves it.</summary>
    public static SearchAim IsClearBy(double distance) => new() { Enough = distance, TooLittle = distance, Tolerance = 1e-6, HowBadly = false };
}

/// <summary>How a search ended.</summary>
public enum SearchEnd
{
    /// <summary>Lower and upper are within the tolerance.</summary>
    Converged,

    /// <summary>Proved: at least Enough everywhere.</summary>
    Enough,

    /// <summary>Found: less than TooLittle at the positions given.</summary>
    TooLittle,

    /// <summary>Found: the solids touch or overlap at the positions given.</summary>
    Hits,

    /// <summary>Stopped by the count of boxes: lower and upper hold, but are not close.</summary>
    OutOfBudget,

    /// <summary>Stopped by the caller: lower and upper hold, but are not close.</summary>
    Cancelled,
}

public sealed record SearchProgress(long Boxes, double Lower, double Upper);

/// <summary>Least distance over all joint positions: lower is proved for all of them, upper is attained at the ones given.</summary>
public sealed record LeastDistanceResult
{
    /// <summary>Proved, m; 0 or above.</summary>
    public required double Lower { get; init; }

    /// <summary>Distance at Positions, m; 0 when they hit. Infinity when no position was looked at.</summary>
    public required double Upper { get; init; }

    /// <summary>Overlap at Positions, m: a help for the builder, not a proven greatest value. 0 when apart, or where only yes or no was asked.</summary>
    public double Overlap { get; init; }
    public required SearchEnd Ended { get; init; }

    /// <summary>Every free joint that moves either solid, in order, first solid first. What follows another is not among them.</summary>
    public required EquatableList<Joint> Joints { get; init; }

    /// <summary>Joint positions, in the order of Joints, rad or m.</summary>
    public required EquatableList<double> Positions { get; init; }

    /// <summary>Nearest points at Positions, outer axes.</summary>
    public required Vector3 OnFirst { get; init; }
    public required Vector3 OnSecond { get; init; }
    public required string FirstPart { get; init; }
    public required string SecondPart { get; init; }
    public required long Boxes { get; init; }
    public required long Queries { get; init; }
}

/// <summary>Certified least distance of two solids over all positions of their joints.</summary>
/// <remarks>
/// Best-first branch and bound. One direction gives a lower bound for a whole box of joint positions; it is carried through
/// each turn's arc without a remainder, so it is exact to second order (docs/theory/clearance.md).
/// </remarks>
public static class LeastDistance
{
    /// <param name="allowed">Pairs of parts, by name, that may touch; they are left out.</param>
    /// <param name="progress">Called now and then with what is proved so far.</param>
    public static LeastDistanceResult Find(
        MovingSolid first,
        MovingSolid second,
        SearchAim? aim = null,
        Func<string, string, bool>? allowed = null,
        Action<SearchProgress>? progress = null,
        CancellationToken cancel = default) =>
        new LeastDistanceSearch(first, second, aim ?? new(), allowed).Run(progress, cancel);

    /// <summary>Distance at one position of the joints: every joint locked.</summary>
    /// <param name="positions">In the order of the result's joints: the first solid's, then those that only the second has.</param>
    public static LeastDistanceResult At(MovingSolid first, MovingSolid second, IReadOnlyList<double> positions, double tolerance = 1e-9)
    {
        var joints = LeastDistanceSearch.JointsOf(first, second);
        if (positions.Count != joints.Count)
            throw new ArgumentException($"{joints.Count} joint positions wanted, {positions.Count} given.", nameof(positions));
        MovingSolid Locked(MovingSolid m) => m with
        {
            Chain = new([.. m.Chain.Joints.Select(j => Lock(j, JointChain.PositionOf(j, joints, positions)))]),
        };
        return Find(Locked(first), Locked(second), new() { Tolerance = tolerance });
    }

    private static Joint Lock(Joint joint, double at) => new(joint.Name, joint.Kind, joint.Through, joint.Axis, at, at);
}
