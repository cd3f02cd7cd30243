using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Mount;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Tests.Mount;

public sealed class TiltTests
{
    private const double Degree = Math.PI / 180;
    private static readonly FigureWriter Say = new(new Display());
    private static readonly SheetFrame Sheet = new(new(0.1, 0.2, 0.3), new(1, 0, 0), new(0.2, 0, 1));

    [Fact]
    public void Tilt_20And15_IsTheRootOfTheSlopes()
    {
        Assert.Equal(24.32, Tilt.FromDegrees(20, 15).Total / Degree, 2e-3);
        Assert.Equal(14.002, Tilt.FromDegrees(10, 10).Total / Degree, 5e-4);
        Assert.Equal(45, Tilt.FromDegrees(10, 10).Azimuth / Degree, 1e-9);
        var tilt = Tilt.FromDegrees(-7, 11);
        Assert.Equal(tilt.Total, Vector3.AngleBetween(Sheet.Normal, Sheet.ShankAt(tilt)), 1e-12);
    }

    [Fact]
    public void JointsOver_EveryTiltOfARange_IsReachedAndLiesAsSaid()
    {
        foreach (var range in new[] { new TiltRange(-0.2, 0.1, 0.05, 0.3), new(0.1, 0.4, -0.3, -0.1), new(-0.3, -0.1, -0.1, 0.2) })
        {
            var joints = Sheet.JointsOver(range);
            for (var i = 0; i <= 10; i++)
            {
                for (var j = 0; j <= 10; j++)
                {
                    var tilt = new Tilt(range.UpFrom + ((range.UpTo - range.UpFrom) * i / 10), range.RightFrom + ((range.RightTo - range.RightFrom) * j / 10));
                    var one = Sheet.JointsOver(TiltRange.At(tilt));
                    Assert.Equal(one.Up.From, one.Up.To, 1e-15);
                    Assert.InRange(one.Up.From, joints.Up.From - 1e-12, joints.Up.To + 1e-12);
                    Assert.InRange(one.Right.From, joints.Right.From - 1e-12, joints.Right.To + 1e-12);
                    var shank = new JointChain([one.Up, one.Right]).At([one.Up.From, one.Right.From]).Turn * Sheet.Normal;
                    Assert.True((shank - Sheet.ShankAt(tilt)).Size < 1e-12);
                }
            }
        }
    }

    [Fact]
    public void FarthestTurnFrom_AnyTiltOfTheRange_IsNeverLess()
    {
        var range = new TiltRange(-0.3, 0.2, 0.1, 0.6);
        var from = new Tilt(0.1, 0.25);
        Vector3[] points = [new(1, 0, 0), new(0, 1, 0), new(0, 0, 1), new Vector3(1, 1, 1).Unit()];
        Pose At(Tilt t)
        {
            var joints = Sheet.JointsOver(TiltRange.At(t));
            return new JointChain([joints.Up, joints.Right]).At([joints.Up.From, joints.Right.From]);
        }

        for (var i = 0; i <= 20; i++)
        {
            for (var j = 0; j <= 20; j++)
            {
                var to = At(new(range.UpFrom + (0.5 * i / 20), range.RightFrom + (0.5 * j / 20)));
                foreach (var p in points)
                    Assert.True(((to.Turn * p) - (At(from).Turn * p)).Size <= range.FarthestTurnFrom(from));
            }
        }
    }

    /// <summary>A ball on a shank of 0.1 m beside a wall: the wall's side and gap from the case.</summary>
    private static TiltClearance Wall(Vector3 side, double gap) => (range, wanted) =>
    {
        var joints = Sheet.JointsOver(range);
        var knob = new MovingSolid(Solid.Of(new Part("knob", new Sphere(Sheet.Foot + (0.1 * Sheet.Normal), 0.01))), new([joints.Up, joints.Right]));
        var s = side.Unit();
        var wall = new MovingSolid(Solid.Of(new Part("wall", new Box(Sheet.Foot + ((gap + 0.01 + 0.5) * s), Rotation.Between(new(0, 0, 1), s), new(2, 2, 0.5)))));
        var aim = double.IsPositiveInfinity(wanted) ? new() : SearchAim.IsClearBy(wanted) with { HowBadly = true };
        var found = LeastDistance.Find(knob, wall, aim, cancel: TestContext.Current.CancellationToken);
        return new(found.Lower, found.Upper);
    };

    [Fact]
    public void Find_BallBesideAWall_IsTheAngleOfTheArm()
    {
        // 2 mm from a wall above; wanted 10 mm: the knob of a 0.1 m arm must go down by 8 mm, at any azimuth of least tilt straight down.
        var found = TiltSolver.Find(new(Wall(Sheet.Up, 0.002), 0.11, 0.010, 12 * Degree), TestContext.Current.CancellationToken);
        Assert.Equal(TiltEnd.Found, found.Ended);
        var expected = Math.Asin(0.08);
        Assert.InRange(found.Tilt!.Value.Total, expected - 1e-6, expected + (0.05 * Degree));
        Assert.InRange(found.NoneBelow, expected - (0.05 * Degree), expected + 1e-6);
        Assert.True(found.Tilt.Value.Up < 0);
        Assert.True(found.Clearance.Lower >= 0.010);
        Assert.Equal(Verdict.Clear, MountRules.OfTilt(found, new(Wall(Sheet.Up, 0.002), 0.11, 0.010, 12 * Degree), Say).Verdict);
    }

    [Fact]
    public void Find_ClearAtOnce_NeedsNoTilt()
    {
        var found = TiltSolver.Find(new(Wall(Sheet.Up, 0.02), 0.11, 0.010, 12 * Degree), TestContext.Current.CancellationToken);
        Assert.Equal(Tilt.None, found.Tilt);
        Assert.Equal(1, found.Cells);
    }

    [Fact]
    public void Find_NoTiltInRange_IsProved()
    {
        var tilts = new TiltCase(Wall(Sheet.Up, -0.02), 0.11, 0.010, 12 * Degree);
        var found = TiltSolver.Find(tilts, TestContext.Current.CancellationToken);
        Assert.Equal(TiltEnd.NoneInRange, found.Ended);
        Assert.Null(found.Tilt);
        Assert.Equal(Verdict.Fail, MountRules.OfTilt(found, tilts, Say).Verdict);
    }

    [Fact]
    public void Find_WithPlay_LeansFurtherByThePlay()
    {
        var play = Math.Tan(0.25 * Degree);
        var found = TiltSolver.Find(new(Wall(Sheet.Up, 0.002), 0.11, 0.010, 12 * Degree, Play: play), TestContext.Current.CancellationToken);
        var expected = Math.Asin(0.08) + (0.25 * Degree);
        Assert.InRange(found.Tilt!.Value.Total, expected - (0.01 * Degree), expected + (0.06 * Degree));
    }

    [Fact]
    public void Find_BudgetSpent_IsUndecidedAndNeverClear()
    {
        var tilts = new TiltCase(Wall(Sheet.Up, 0.002), 0.11, 0.010, 12 * Degree, MostCells: 5);
        var found = TiltSolver.Find(tilts, TestContext.Current.CancellationToken);
        Assert.Equal(TiltEnd.Undecided, found.Ended);
        Assert.Equal(Verdict.Caution, MountRules.OfTilt(found, tilts, Say).Verdict);
    }

    [Fact]
    public void Map_WholeCells_HoldEveryTiltInThem_AndAnyNumberOfThreads()
    {
        var clearance = Wall(Sheet.Right, 0.002);
        TiltCell Ask(TiltRange range)
        {
            var of = clearance(range, double.PositiveInfinity);
            return new(range, of.Lower >= 0.010 ? TiltCellAnswer.Keeps : TiltCellAnswer.Open, of.Lower, double.PositiveInfinity);
        }

        var map = TiltMap.Over(TiltRange.Within(12 * Degree), 6, 8, Ask, 1, null, TestContext.Current.CancellationToken);
        var last = 0;
        Assert.Equal(map, TiltMap.Over(TiltRange.Within(12 * Degree), 6, 8, Ask, 4, (done, of) => { Assert.Equal(48, of); Interlocked.Increment(ref last); }, TestContext.Current.CancellationToken));
        Assert.Equal(48, last);
        Assert.Same(map.Cells[(2 * 8) + 3], map.At(2, 3));
        foreach (var cell in map.Cells)
        {
            foreach (var (u, v) in new[] { (0.0, 0.0), (0.3, 0.9), (1.0, 1.0), (0.5, 0.2) })
            {
                var tilt = new Tilt(cell.Range.UpFrom + (u * (cell.Range.UpTo - cell.Range.UpFrom)), cell.Range.RightFrom + (v * (cell.Range.RightTo - cell.Range.RightFrom)));
                // Closed form: the knob's distance from the wall.
                var exact = Math.Max(0, 0.002 - (0.1 * Vector3.Dot(Sheet.ShankAt(tilt), Sheet.Right)));
                Assert.True(cell.Low <= exact + 1e-9, $"{tilt}: {cell.Low}, {exact}");
            }
        }
    }

    [Fact]
    public void Map_StoppedAtOnce_LeavesEveryCellOpen()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        var map = TiltMap.Over(TiltRange.Within(12 * Degree), 3, 3, _ => throw new InvalidOperationException("asked"), 1, null, stop.Token);
        Assert.All(map.Cells, c => Assert.Equal((TiltCellAnswer.Open, null, double.PositiveInfinity), (c.Answer, c.Low, c.High)));
    }

    [Theory]
    [Trait("Check", "W3")]
    // Evidence: derived, docs/theory/mount.md.
    [InlineData(2000, 15, 0.15, 226.783, 8.53)]
    [InlineData(2000, 25, 0.10, 699.975, 5.71)]
    public void SideShare_BeyondFriction_IsTheTangentOfTheRest(double clamp, double tilt, double friction, double expected, double held)
    {
        Assert.Equal(expected, clamp * MountRules.SideShare(tilt * Degree, friction), 5e-4);
        Assert.Equal(0, MountRules.SideShare(5 * Degree, friction));
        Assert.Equal(held, MountRules.SelfHolding(friction) / Degree, 5e-3);
    }

    [Fact]
    public void OfLean_LittleUsualAndMuch_GiveTheirVerdicts()
    {
        Dictionary<string, Verdict> Of(double degrees) => MountRules.OfLean(degrees * Degree, MountLimits.Usual, Say).ToDictionary(f => f.Rule, f => f.Verdict);

        Assert.Equal([new(MountRules.Lean, Verdict.Clear)], Of(1.9));
        Assert.Equal([new(MountRules.Lean, Verdict.Clear), new(MountRules.Friction, Verdict.Clear)], Of(8));
        // Friction 0.15 holds up to 8.53 deg.
        Assert.Equal(Verdict.Caution, Of(8.6)[MountRules.Friction]);
        // A pin holds them beyond it.
        Assert.Equal(Verdict.Clear, MountRules.OfLean(12 * Degree, MountLimits.Usual, Say, pinned: true).Single(f => f.Rule == MountRules.Friction).Verdict);
        Assert.Equal(Verdict.Clear, Of(9.9)[MountRules.Lean]);
        Assert.Equal(Verdict.Caution, Of(10.1)[MountRules.Lean]);
    }
}
