using Throwright.Engine.Route;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Tests.Route.Laws;

public class TrappedTwistTests
{
    private static readonly Vector3 X = new(1, 0, 0), Y = new(0, 1, 0);

    private static Lie Solved(LieCase of) => LieSolver.Solve(of).Lie!;

    [Fact]
    public void NoTwist_ChangesNothing()
    {
        var lie = Solved(new() { Start = default, StartAlong = X, End = new(0.7, 0.6, 0.2), EndAlong = Y, Length = 1.15 });
        var twisted = TrappedTwist.Find(lie, 0, 0.77);
        Assert.InRange(twisted.Moved, 0, 1e-6);
        Assert.Equal(lie.LeastRadius, twisted.LeastRadius, 1e-4 * lie.LeastRadius);
        Assert.InRange(Math.Abs(twisted.TwistingMoment), 0, 1e-5);
        Assert.False(twisted.MaySnap);
    }

    [Fact]
    public void QuarterBend_MovesAsABoundaryValueSolverSays()
    {
        // Legs 0.6, length 1, twisting moment 1 B/L: largest move 0.0021 L, curvature up by 0.2 % (collocation, tolerance 1e-6).
        var lie = Solved(new() { Start = default, StartAlong = X, End = new(0.6, 0.6, 0), EndAlong = Y, Length = 1 });
        var twisted = TrappedTwist.Find(lie, 1.0, 1);
        Assert.InRange(twisted.TwistingMoment, 0.9, 1.1);
        Assert.Equal(0.0021, twisted.Moved / twisted.TwistingMoment, 1e-4);
        Assert.Equal(1.002, lie.LeastRadius / twisted.LeastRadius, 1.5e-3);
    }

    [Fact]
    public void OtherWayRound_IsTheMirrorImage()
    {
        var lie = Solved(new() { Start = default, StartAlong = X, End = new(0.6, 0.6, 0), EndAlong = Y, Length = 1 });
        TwistedLie left = TrappedTwist.Find(lie, 1.5, 0.77), right = TrappedTwist.Find(lie, -1.5, 0.77);
        Assert.Equal(left.Moved, right.Moved, 1e-7);
        Assert.Equal(left.TwistingMoment, -right.TwistingMoment, 1e-7);
    }

    [Fact]
    public void Set_WithTheBend_IsFeltLess()
    {
        // A set in the sense of the bend changes the moments at the ends, in the plane, and the shape a little.
        var lie = Solved(new() { Start = default, StartAlong = X, End = new(0.6, 0.6, 0), EndAlong = Y, Length = 1 });
        var twisted = TrappedTwist.Find(lie, 0, 0.77, 0.5);
        Assert.InRange(twisted.Moved, 0, 1e-5);
        Assert.Equal(lie.LeastRadius, twisted.LeastRadius, 1e-4 * lie.LeastRadius);
    }

    [Fact]
    public void MuchTwist_IsSaidToSnap()
    {
        // A rod twisted on and on throws a loop in the end.
        var lie = Solved(new() { Start = default, StartAlong = X, End = new(0.6, 0.6, 0), EndAlong = Y, Length = 1 });
        Assert.False(TrappedTwist.Find(lie, 2, 0.77).MaySnap);
        Assert.True(TrappedTwist.Find(lie, 25, 0.77).MaySnap);
    }

    [Fact]
    public void RunWithSupports_IsRefused() => Assert.Throws<ArgumentException>(() => TrappedTwist.Find(
        Solved(new() { Start = default, StartAlong = X, Supports = [new(new(0.5, 0.02, 0), SupportKind.Grommet)], End = X, EndAlong = X, Length = 1.02 }), 1, 0.77));
}
