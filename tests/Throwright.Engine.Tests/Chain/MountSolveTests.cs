using Throwright.Engine.Chain;
using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Mount;
using Throwright.Engine.Tests.Throw;
using Throwright.Shapes.Frames;
using static Throwright.Engine.Tests.Chain.Cockpits;
using Tilt = Throwright.Engine.Mount.Tilt;

namespace Throwright.Engine.Tests.Chain;

/// <summary>From a handle that is fouled to a mount that clears.</summary>
public sealed class MountSolveTests
{
    private const double Degree = Math.PI / 180;
    private static readonly FigureWriter Say = new(new Display { Length = LengthUnit.Millimetre });

    private static MountAnswer Find(Aircraft aircraft, bool withOthers = false) => new MountSolve(aircraft, aircraft.Runs[0], Say).Find(withOthers);

    /// <summary>A beam above the pulled-out knob, its under side so high over the shank's line.</summary>
    private static Body Beam(double above) => new()
    {
        Id = "beam",
        Parts = [new("beam", new BoxShape(At(1265, 0, 700 + above + 50), Levers.Mm(400), Levers.Mm(400), Levers.Mm(100), new(1, 0, 0), new(0, 0, 1)))],
    };

    [Fact]
    public void Find_ClearAsItStands_AsksForNoTilt()
    {
        var answer = Find(Of(Handle("a"), Beam(60)));
        Assert.Equal(Tilt.None, answer.Tilt);
        Assert.Null(answer.Wedged);
        Assert.StartsWith("Mount the handle square", answer.Sentence);
    }

    /// <summary>Knob edge at 15 mm, beam at 22 mm, wanted 12.7: it must lean down by some degrees, on wedges.</summary>
    [Fact]
    public void Find_BeamAbove_LeansStraightDown_AndTheTypedMountKeepsWhatIsWanted()
    {
        var aircraft = Of(Handle("a"), Beam(22));
        var answer = Find(aircraft);
        var tilt = answer.Tilt!.Value;
        Assert.Equal(0, tilt.Right, 0.02);
        Assert.True(tilt.Up < 0);
        Assert.NotNull(answer.Wedged);
        // What is typed is tried: the changed file is clear.
        var run = aircraft.Runs[0].WithEnd(e => e with
        {
            Tilt = new(new(Math.Atan(tilt.Up)), new(Math.Atan(tilt.Right))),
            Shank = e.Shank with { Out = Levers.Mm((answer.Length - (0.5 * answer.Handle.Sheet)) * 1000) },
        });
        var changed = RunCheck.Check(aircraft with { Runs = [run] }, run, Runs.Quick);
        Assert.Equal(Verdict.Clear, changed.Findings.First(f => f.Rule == ClearanceRules.Pair).Verdict);
        Assert.Contains(changed.Findings, f => f.Rule == MountRules.Lean);
        // And asked again, the leaning handle takes its wedges off first and finds the same.
        var again = Find(aircraft with { Runs = [run] });
        Assert.Equal(tilt.Up, again.Tilt!.Value.Up, 0.004);
    }

    /// <summary>Grid of tilts, each asked by itself: none below the answer clears, whatever lies between.</summary>
    [Fact]
    public void Find_NoSmallerTiltOfAGridClears()
    {
        var aircraft = Of(Handle("a"), Beam(23), Ball(1075, -140, 690));
        var answer = Find(aircraft);
        var found = answer.Wedged!;
        Assert.Equal(TiltEnd.Found, found.Ended);
        Assert.True(found.NoneBelow <= found.Tilt!.Value.Total + 1e-12);
        var (thin, half) = (0.001, 0.5 * ((19 * 2 / Math.Sqrt(3)) + 4) / 1000);
        for (var up = -12; up <= 12; up += 2)
        {
            for (var right = -12; right <= 12; right += 2)
            {
                var tilt = Tilt.FromDegrees(up, right);
                if (tilt.Total >= found.NoneBelow || tilt.Total <= 2 * Degree)
                    continue;
                var body = answer.Handle.At(tilt, answer.Handle.Length + thin + (half * tilt.Slope));
                var scene = CockpitCheck.Solve(aircraft)!.Clearance.Case;
                var least = scene.Bodies.Where(b => b.Name != "a").Min(b => ClearanceSolver.Between(scene, body, b).Upper);
                // With half a degree of play it fails; the tilt itself may have that much in hand.
                Assert.True(least < answer.Wanted + (0.5 * Degree * 2 * answer.Handle.Reach(answer.Handle.Length)), $"{up} {right}: {least}");
            }
        }
    }

    [Fact]
    public void Find_NothingHelps_IsProved_AndSaysWhatToMoveInstead()
    {
        // A box round the knob's way with a gap of 8 mm all round: no lean gains 12.7 mm.
        var cage = new Body
        {
            Id = "cage",
            Parts =
            [
                new("over", new BoxShape(At(1060, 0, 728), Levers.Mm(80), Levers.Mm(80), Levers.Mm(10), new(1, 0, 0), new(0, 0, 1))),
                new("under", new BoxShape(At(1060, 0, 672), Levers.Mm(80), Levers.Mm(80), Levers.Mm(10), new(1, 0, 0), new(0, 0, 1))),
                new("left", new BoxShape(At(1060, -28, 700), Levers.Mm(80), Levers.Mm(10), Levers.Mm(80), new(1, 0, 0), new(0, 0, 1))),
                new("right", new BoxShape(At(1060, 28, 700), Levers.Mm(80), Levers.Mm(10), Levers.Mm(80), new(1, 0, 0), new(0, 0, 1))),
            ],
        };
        var answer = Find(Of(Handle("a"), cage), withOthers: true);
        Assert.Null(answer.Best);
        Assert.Equal(TiltEnd.NoneInRange, answer.Wedged!.Ended);
        Assert.StartsWith("No tilt within 20.0°", answer.Sentence);
        var hole = Assert.Single(answer.Instead, c => c.Text.StartsWith("Move the hole", StringComparison.Ordinal));
        Assert.True(hole.Clearance.Lower >= answer.Wanted);
    }

    /// <summary>A wall before the pulled-out knob, wherever the hole is: the answer says what was tried and what is left, here and among the findings.</summary>
    [Fact]
    public void Find_NothingOfAllThatIsTried_SaysSo()
    {
        var wall = new Body { Id = "wall", Parts = [new("wall", new BoxShape(At(1095, 0, 700), Levers.Mm(50), Levers.Mm(2000), Levers.Mm(2000), new(1, 0, 0), new(0, 0, 1)))] };
        var aircraft = Of(Handle("a"), wall);
        var answer = Find(aircraft, withOthers: true);
        Assert.Null(answer.Best);
        Assert.Empty(answer.Instead);
        Assert.Contains(answer.Notes, n => n.Contains("a shorter stroke, another place for the sheet", StringComparison.Ordinal));
        var touched = RunCheck.Check(aircraft, aircraft.Runs[0], Runs.Quick).Findings.Single(f => f.Rule == ClearanceRules.Pair);
        Assert.Contains("a shorter stroke", Assert.Single(touched.Remedies).Text);
    }

    [Fact]
    public void Find_HoleMovedOnlyWithinTheSheet()
    {
        var small = Panel with { Outline = [At(1000, -30, 670), At(1000, 30, 670), At(1000, 30, 730), At(1000, -30, 730)] };
        var run = Handle("a").WithEnd(e => e with { Sheet = small });
        var answer = Find(Of(run, Beam(10)) with { Sheets = [small] }, withOthers: true);
        // 13 mm of wedge and 30 mm of sheet leave 17 mm each way: not enough to get 17.7 mm lower.
        Assert.DoesNotContain(answer.Instead, c => c.Text.StartsWith("Move the hole", StringComparison.Ordinal));
    }

    [Fact]
    public void Handle_OverARange_HoldsTheHandleAtEveryTiltInIt()
    {
        var mount = CockpitCheck.Solve(Of(Handle("a")))!.Handles.Single();
        var tilt = Tilt.FromDegrees(7, -11);
        var over = mount.Over(TiltRange.At(tilt), mount.Length, (0.003, 0.003));
        var at = mount.At(tilt, mount.Length + 0.003);
        // The same knob, once by joints and once by its pose; pulled out by 30 mm.
        var joints = over.Joints.Joints.Select(j => j.Name.EndsWith("pull", StringComparison.Ordinal) ? 0.03 : j.From).ToArray();
        var knob = mount.Frame.Foot + ((mount.Length + 0.010) * mount.Frame.Normal);
        var one = over.Joints.At(joints) * (over.Home * knob);
        var other = at.Joints.At([0.03]) * (at.Home * (knob + (0.003 * mount.Frame.Normal)));
        Assert.Equal(0, (one - other).Size, 1e-12);
        Assert.Equal(0, (mount.KnobAt(tilt, mount.Length + 0.003, 0.03) - other).Size, 1e-12);
    }

    [Fact]
    public void Reach_AndHandRoom_AreToldWhereThePilotIsDescribed()
    {
        RunAnswer Of(double away, double? own) => RunCheck.Check(
            Cockpits.Of(Handle("a"), Beam(60)) with { Pilot = new() { Shoulder = At(1030 + away, 0, 700), Eye = At(1600, 0, 900), Reach = own is { } r ? Mm(r) : null } },
            Handle("a"), Runs.Quick);
        Verdict Reach(double away, double? own) => Of(away, own).Findings.Single(f => f.Rule == MountRules.Reach).Verdict;
        // Knob pushed in at 1030 mm. A small woman: 555 mm and a fifth of 165 mm of hand.
        Assert.Equal(Verdict.Clear, Reach(587, null));
        Assert.Equal(Verdict.Caution, Reach(589, null));
        Assert.Equal(Verdict.Clear, Reach(700, 680));
        var answer = Of(500, null);
        Assert.Equal(Verdict.Clear, answer.Findings.Single(f => f.Rule == MountRules.HandRoom).Verdict);
        Assert.Equal(Math.Atan2(200, 570) / Degree, answer.Find("facing")!.Value / Degree, 0.01);
        var tight = RunCheck.Check(Cockpits.Of(Handle("a"), Beam(35)), Handle("a"), Runs.Quick);
        var room = tight.Findings.Single(f => f.Rule == MountRules.HandRoom);
        Assert.Equal(Verdict.Caution, room.Verdict);
        Assert.Contains("beam", room.Sentence);
    }

    [Fact]
    public void Aircraft_MovedAndTurned_FindsTheSameTilt()
    {
        var aircraft = Of(Handle("a"), Beam(22));
        var moved = Moved(aircraft, Pose.TurnAbout(new(0.3, 0, 0.1), new(0.2, 1, 0.4), 1.1));
        Assert.Equal(Find(aircraft).Tilt!.Value.Total, Find(moved).Tilt!.Value.Total, 0.15 * Degree);
    }
}
