using Throwright.Engine.Chain;
using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Mount;
using Throwright.Engine.Tests.Throw;
using static Throwright.Engine.Tests.Chain.Cockpits;
using Tilt = Throwright.Engine.Mount.Tilt;

namespace Throwright.Engine.Tests.Chain;

/// <summary>The clearance map of a handle, held against single mounts asked one by one.</summary>
public sealed class MountMapTests
{
    private const double Degree = Math.PI / 180;
    private static readonly FigureWriter Say = new(new Display { Length = LengthUnit.Millimetre });

    /// <summary>Under side 22 mm over the shank's line.</summary>
    private static readonly Body Beam = new()
    {
        Id = "beam",
        Parts = [new("beam", new BoxShape(At(1265, 0, 772), Levers.Mm(400), Levers.Mm(400), Levers.Mm(100), new(1, 0, 0), new(0, 0, 1)))],
    };

    private static readonly Aircraft Aircraft = Of(Handle("a"), Beam) with { Pilot = new() { Eye = At(1600, 100, 900) } };

    [Fact]
    public void Map_EveryCell_AgreesWithSingleMountsInIt()
    {
        var solve = new MountSolve(Aircraft, Aircraft.Runs[0], Say);
        var map = solve.Map(null, 9);
        Assert.True(map.IsWhole);
        Assert.Equal(81, map.Cells.Cells.Count);
        // The beam is over the knob: all that lean far down keep the distance, all that lean up fail.
        Assert.All(Enumerable.Range(0, 9), c => Assert.Equal(TiltCellAnswer.Fails, map.Cells.At(8, c).Answer));
        Assert.True(map.Count(TiltCellAnswer.Keeps) > 9);
        Assert.True(map.Count(TiltCellAnswer.Open) > 0);
        var scene = CockpitCheck.Solve(Aircraft)!.Clearance.Case;
        var beam = scene.Bodies.Single(b => b.Name == "beam");
        // Wedges of the case: 1 mm at the thin edge, the nut's corners and 2 mm all round.
        var (thin, half) = (0.001, 0.5 * ((19 * 2 / Math.Sqrt(3)) + 4) / 1000);
        foreach (var cell in map.Cells.Cells)
        {
            foreach (var (u, v) in ((double, double)[])[(0.02, 0.02), (0.97, 0.4)])
            {
                var tilt = new Tilt(cell.Range.UpFrom + (u * (cell.Range.UpTo - cell.Range.UpFrom)), cell.Range.RightFrom + (v * (cell.Range.RightTo - cell.Range.RightFrom)));
                var lift = tilt.Total > 2 * Degree ? thin + (half * tilt.Slope) : 0;
                var pair = ClearanceSolver.Between(scene, map.Handle.At(tilt, map.Handle.Length + lift), beam, TestContext.Current.CancellationToken);
                Assert.True(cell.Low is null || pair.Upper >= cell.Low - 1e-9, $"{tilt}: {pair.Upper} under {cell.Low}");
                Assert.True(pair.Lower <= cell.High + 1e-9, $"{tilt}: {pair.Lower} over {cell.High}");
                if (cell.Answer == TiltCellAnswer.Keeps)
                    Assert.True(pair.Upper >= map.Wanted);
                if (cell.Answer == TiltCellAnswer.Fails)
                    Assert.True(pair.Lower < map.Wanted);
            }
        }
    }

    [Fact]
    public void Map_WithTheSearch_ShowsWhatItFound_AndWhereTheEyeIs()
    {
        var solve = new MountSolve(Aircraft, Aircraft.Runs[0], Say);
        var answer = solve.Find(withOthers: false);
        var map = solve.Map(answer, 5);
        Assert.Equal(answer.Tilt, map.Chosen);
        Assert.Equal(answer.Wedged!.NoneBelow, map.NoneBelow);
        // A handle that leans so points at the eye.
        Assert.Equal(0, MountFindings.FacingOf(Aircraft, map.Handle, map.Facing!.Value, map.Handle.Length)!.Value, 1e-9);
        var chosen = map.Cells.Cells.First(c => c.Range.UpFrom <= answer.Tilt!.Value.Up && answer.Tilt.Value.Up <= c.Range.UpTo && c.Range.RightFrom <= 0 && 0 <= c.Range.RightTo);
        Assert.NotEqual(TiltCellAnswer.Fails, chosen.Answer);
    }

    [Fact]
    public void Map_Stopped_SaysSo_AndIsOpen()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        var map = new MountSolve(Aircraft, Aircraft.Runs[0], Say, new() { Cancel = stop.Token }).Map(null, 3);
        Assert.False(map.IsWhole);
        Assert.Equal(9, map.Count(TiltCellAnswer.Open));
    }

    [Fact]
    public void Map_AnyNumberOfThreads_IsTheSame_AndTellsItsProgress()
    {
        var told = 0;
        var one = new MountSolve(Aircraft, Aircraft.Runs[0], Say).Map(null, 5);
        var four = new MountSolve(Aircraft, Aircraft.Runs[0], Say, new() { Threads = 4 }).Map(null, 5, (_, of) => { Assert.Equal(25, of); Interlocked.Increment(ref told); });
        Assert.Equal(one.Cells, four.Cells);
        Assert.Equal(25, told);
    }
}
