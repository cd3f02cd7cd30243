using Throwright.Engine.Model;
using Throwright.Engine.Route;
using Throwright.Shapes;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Chain;

/// <summary>The lie with the anchor at an extreme place.</summary>
/// <param name="Lie">Null: none was found, the conduit is pulled tight or folds.</param>
/// <param name="Moved">Largest move of the conduit sideways, m.</param>
/// <param name="Straighter">How much shorter (+) or longer (-) the straight way over the holds is: slack that comes in or goes.</param>
/// <param name="Nearest">What the moved lie comes nearest to; null: nothing in the file.</param>
public sealed record MovedLie(string Name, Lie? Lie, double Moved, double Straighter, RouteGap? Nearest);

/// <summary>The last stretch before the anchor, its end turned.</summary>
/// <param name="From">Conduit from the cockpit end to where the stretch begins, m.</param>
public sealed record TwistedSpan(double From, double Turn, double Torsion, TwistedLie Lie);

/// <summary>What becomes of the lie when something stands in its way, its end moves, or twist is locked in.</summary>
internal static class RouteChanges
{
    /// <summary>A solid round bar: 1 / (1 + Poisson's ratio of steel, 0.3 from memory).</summary>
    private const double SolidTorsion = 0.77;

    // Things met one after the other; more than that is no way at all.
    private const int Rounds = 4;

    /// <summary>How the conduit rests against what its free lie would run through; null: it runs through nothing, or no such lie was found.</summary>
    public static Lie? Resting(Lie lie, RouteObstacles obstacles, EquatableList<RouteGap> gaps, Func<Lie, EquatableList<RouteGap>> gapsOf, double radius)
    {
        var met = new List<KeepOut>();
        Lie? resting = null;
        for (var round = 0; round < Rounds; round++)
        {
            // What moves pushes the conduit elsewhere: nothing rests against it.
            var more = gaps.Where(g => !(g.Least > 0)).SelectMany(g => obstacles.KeepOuts.Where(k => k.Name == g.Name && k.Kind != KeepOutKind.Mover)).Where(k => !met.Contains(k)).ToList();
            if (more.Count == 0)
                return resting;
            met.AddRange(more);
            Vector3[] held = [lie.Case.Start, lie.Case.End, .. lie.Case.Supports.Select(s => s.Point)];
            if (met.Any(k => held.Any(p => k.DistanceAt(p) < radius)))
                return null;
            resting = LieSolver.Solve(lie.Case with { Obstacles = met.Select(k => new LieObstacle(k.Name, k.DistanceAt)).ToEquatableList(), ConduitRadius = radius }).Lie;
            if (resting is null)
                return null;
            gaps = gapsOf(resting);
        }

        return resting;
    }

    public static EquatableList<MovedLie> Moved(Lie lie, Cable cable, Func<Lie, EquatableList<RouteGap>> gapsOf)
    {
        if (cable.Ends is not { Moves: { Count: > 0 } moves })
            return [];
        var closed = Closed(lie, cable);
        return moves.Select(m =>
        {
            var along = closed.EndAlong;
            if (m.About is { } about && m.Turn.Radians != 0)
                along = Pose.TurnAbout(default, new Vector3(about.Aft, about.Right, about.Up).Unit(), m.Turn.Radians).Turn * along;
            var of = closed with { End = closed.End + new Vector3(m.Aft.Metres, m.Right.Metres, m.Up.Metres), EndAlong = along };
            var straighter = closed.Straight - of.Straight;
            return LieSolver.Follow(of, lie).Lie is { } moved
                ? new MovedLie(m.Name, moved, LieSolver.Apart(moved.Shape, lie.Shape), straighter, gapsOf(moved) is [var nearest, ..] ? nearest : null)
                : new MovedLie(m.Name, null, double.NaN, straighter, null);
        }).ToEquatableList();
    }

    public static TwistedSpan? Twisted(Lie lie, Cable cable)
    {
        if (cable.Ends?.Twist is not { } twist)
            return null;
        // The file's supports run from the device to the knob, the lie's from the knob to the device.
        var clamps = cable.Supports.Count - 1;
        if (cable.Supports.Count > 0 && cable.Supports[0].Kind == SupportHold.Grommet)
            return null;
        var hold = lie.Shape.Holds[clamps + 1];
        var at = lie.Shape.Nodes[hold];
        var of = lie.Case with { Start = at.Point, StartAlong = at.Tangent, Supports = [], Length = lie.Shape.Length - at.At };
        var torsion = twist.Torsion ?? SolidTorsion;
        return LieSolver.Solve(of).Lie is { } span ? new(at.At, twist.Turn.Radians, torsion, TrappedTwist.Find(span, twist.Turn.Radians, torsion)) : null;
    }

    /// <summary>The case with its clamps closed where the conduit has found its place.</summary>
    private static LieCase Closed(Lie lie, Cable cable) => lie.Case with
    {
        Supports = lie.Case.Supports.Select((s, i) =>
        {
            var node = lie.Shape.Nodes[lie.Shape.Holds[i + 1]];
            return cable.Supports[^(i + 1)].Kind switch
            {
                SupportHold.TightClamp => s with { Kind = SupportKind.Tight, Along = s.Along ?? node.Tangent, At = node.At },
                SupportHold.SlidingClamp => s with { Kind = SupportKind.Sliding, Along = s.Along ?? node.Tangent },
                _ => s,
            };
        }).ToEquatableList(),
    };
}
