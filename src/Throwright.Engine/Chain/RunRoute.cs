using Throwright.Engine.Route;
using Throwright.Shapes;
using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Chain;

/// <summary>Where the conduit of a run goes and how it lies there.</summary>
public sealed record RunRoute
{
    public required LieCase Case { get; init; }
    public required LieAnswer Answer { get; init; }

    /// <summary>Where the length comes from.</summary>
    public required LengthOrigin Origin { get; init; }

    /// <summary>In words: from where the conduit is taken to leave the cockpit end.</summary>
    public required string From { get; init; }

    /// <summary>Conduit inside bushing and anchor, m.</summary>
    public required double InFittings { get; init; }

    /// <summary>Length between the ends at which the conduit rests by itself, free to slide; null: there is none.</summary>
    public double? Natural { get; init; }

    /// <summary>Over all that may be off: points, directions, length; null: no lie.</summary>
    public LieSpread? Spread { get; init; }

    /// <summary>Of the lie that counts, from the device to the knob.</summary>
    public EquatableList<LieBend> Bends { get; init; } = [];
    public double LongestStraight { get; init; }
    public LengthToOrder? Order { get; init; }

    /// <summary>How near the conduit comes to each body of the file, the nearest first.</summary>
    public EquatableList<RouteGap> Gaps { get; init; } = [];

    /// <summary>What of the file the conduit is not held against, in words.</summary>
    public EquatableList<string> NotHeld { get; init; } = [];

    /// <summary>With the conduit as ordered or delivered, put in uncut; null: nothing ordered.</summary>
    public OtherLength? Ordered { get; init; }

    /// <summary>Where the lie would run through something that stands still: how it rests against that; null: it does not.</summary>
    public Lie? Resting { get; init; }

    /// <summary>Of the other places in which it may rest, what comes nearest to something beside what is wanted there; in the order of <see cref="Route.Lie.Others"/> of the lie that counts.</summary>
    public EquatableList<RouteGap?> OtherGaps { get; init; } = [];

    /// <summary>The lie, its clamps closed, with the anchor at each of its extreme places.</summary>
    public EquatableList<MovedLie> AtMoves { get; init; } = [];

    /// <summary>The end turned with the clamps closed; null: not asked, or the conduit between anchor and last clamp is held by grommets.</summary>
    public TwistedSpan? Twisted { get; init; }

    /// <summary>Free of what stands in its way.</summary>
    public Lie? Lie => Answer.Lie;

    /// <summary>The lie whose bends count in force and lost motion: as it rests, where something stands in the way of the free one.</summary>
    public Lie? Counted => Resting ?? Lie;

    /// <summary>Over all lays, what bend total and least radius of the lie that counts may be: each as much less or more of its own as the free lie's; null: no lie.</summary>
    public LieSpread? CountedSpread => (Lie, Resting, Spread) is ({ } free, { } rests, { } spread)
        ? spread with
        {
            LeastRadius = rests.LeastRadius * Math.Min(1, spread.LeastRadius / free.LeastRadius),
            BendLeast = rests.BendTotal * Math.Min(1, spread.BendLeast / free.BendTotal),
            BendMost = rests.BendTotal * Math.Max(1, spread.BendMost / free.BendTotal),
        }
        : Spread;
}

public enum LengthOrigin
{
    /// <summary>Typed: the conduit as measured.</summary>
    Typed,

    /// <summary>The length at which the conduit comes to rest by itself.</summary>
    Natural,

    /// <summary>As ordered or delivered, put in uncut: nothing typed, and no length comes to rest by itself.</summary>
    Ordered,
}

/// <summary>How radius, bend total and place of the lie differ over many lays within what may be off.</summary>
/// <param name="Lays">How many were drawn.</param>
/// <param name="Without">Of them without any lie.</param>
/// <param name="LeastRadius">Least radius that 97.5 % of the lays keep, m.</param>
/// <param name="Moved">Move of the lie that 97.5 % stay below, m.</param>
/// <param name="BendLeast">Least and most bend total of all lays, rad.</param>
/// <param name="Flips">A lay was found that lies elsewhere by more than a tenth of the way: a bow that flips.</param>
public sealed record LieSpread(int Lays, int Without, double LeastRadius, double Moved, double BendLeast, double BendMost, bool Flips);

/// <summary>One bend of the lie.</summary>
/// <param name="Angle">Turned in it, rad; the bends together turn all that the lie turns.</param>
/// <param name="Radius">Where it is tightest, m.</param>
/// <param name="Mean">Radius weighted by the angle turned at it, m: what the drag of a stiff core goes by.</param>
/// <param name="At">Conduit from the cockpit end to the tightest place, m.</param>
public sealed record LieBend(double Angle, double Radius, double Mean, double At, Vector3 Place)
{
    // Two bends are two where the curvature between them falls below this part of the smaller one.
    private const double Parted = 0.5;
    private const double Least = 1 * Math.PI / 180;

    /// <summary>The bends of a curve from its end to its start: from the device to the knob.</summary>
    public static EquatableList<LieBend> Of(ElasticCurve curve)
    {
        ArgumentNullException.ThrowIfNull(curve);
        var nodes = curve.Nodes;
        // Turn up to each node, scaled so that the sum is the curve's own bend total.
        var turned = new double[nodes.Count];
        for (var i = 1; i < nodes.Count; i++)
            turned[i] = turned[i - 1] + (0.5 * (nodes[i - 1].Curvature.Size + nodes[i].Curvature.Size) * (nodes[i].At - nodes[i - 1].At));
        var scale = turned[^1] > 0 ? curve.BendTotal / turned[^1] : 1;
        var cuts = new List<int> { 0 };
        int peak = 0, low = 0;
        for (var i = 1; i < nodes.Count; i++)
        {
            double k = nodes[i].Curvature.Size, kPeak = nodes[peak].Curvature.Size, kLow = nodes[low].Curvature.Size;
            if (k < kLow)
                low = i;
            if (kLow < Parted * Math.Min(kPeak, k) && low > peak)
            {
                cuts.Add(low);
                peak = low = i;
            }
            else if (k > kPeak)
            {
                peak = low = i;
            }
        }

        cuts.Add(nodes.Count - 1);
        var bends = new List<LieBend>();
        for (var c = 0; c + 1 < cuts.Count; c++)
        {
            var angle = scale * (turned[cuts[c + 1]] - turned[cuts[c]]);
            var at = Enumerable.Range(cuts[c], cuts[c + 1] - cuts[c] + 1).MaxBy(i => nodes[i].Curvature.Size);
            var tight = nodes[at].Curvature.Size;
            // Integral of the curvature over that of its square; of an arc its radius.
            var square = 0.0;
            for (var i = cuts[c]; i < cuts[c + 1]; i++)
            {
                double a = nodes[i].Curvature.Size, b = nodes[i + 1].Curvature.Size;
                square += ((a * a) + (a * b) + (b * b)) / 3 * (nodes[i + 1].At - nodes[i].At);
            }

            if (tight > 0 && square > 0)
                bends.Add(new(angle, 1 / tight, Math.Max(1 / tight, (turned[cuts[c + 1]] - turned[cuts[c]]) / square), nodes[at].At, nodes[at].Point));
        }

        // What is hardly a bend goes to its neighbour, so that nothing of the total is lost.
        for (var i = 0; bends.Count > 1 && i < bends.Count;)
        {
            if (bends[i].Angle >= Least)
            {
                i++;
                continue;
            }

            var to = i == 0 ? 1 : i - 1;
            bends[to] = bends[to] with { Angle = bends[to].Angle + bends[i].Angle };
            bends.RemoveAt(i);
            i = Math.Max(0, i - 1);
        }

        bends.Reverse();
        return bends.ToEquatableList();
    }

    /// <summary>Longest stretch whose radius stays above the one given.</summary>
    public static double Straight(ElasticCurve curve, double radius)
    {
        ArgumentNullException.ThrowIfNull(curve);
        double longest = 0, from = 0;
        for (var i = 1; i < curve.Nodes.Count; i++)
        {
            CurveNode a = curve.Nodes[i - 1], b = curve.Nodes[i];
            // A node that is held has the curvature behind the hold; before a clamp it may be another.
            var before = i > 1 && i + 1 < curve.Nodes.Count && curve.Holds.Contains(i) ? (2 * a.Curvature) - curve.Nodes[i - 2].Curvature : b.Curvature;
            double ka = radius * a.Curvature.Size, kb = radius * before.Size;
            var passes = a.At + ((ka > 1 != kb > 1 ? (1 - ka) / (kb - ka) : 0) * (b.At - a.At));
            var begin = ka > 1 ? kb > 1 ? b.At : passes : from;
            longest = Math.Max(longest, (kb > 1 ? ka > 1 ? begin : passes : b.At) - begin);
            from = kb > 1 ? b.At : begin;
        }

        return longest;
    }
}
