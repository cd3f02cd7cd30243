using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Route;
using Throwright.Engine.Tests.Throw;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Chain;

/// <summary>What the conduit is held against: bodies, what moves, meshes, sheets, heat, edges; checked by dense points alone.</summary>
public class RouteObstacleTests
{
    private const double Half = 0.0025;

    private static PointAt At(double x, double y, double z) => new(Levers.Mm(x), Levers.Mm(y), Levers.Mm(z));

    /// <summary>Nearly straight from the origin, 900 mm aft and 80 mm to the right.</summary>
    private static Run Across(params Support[] supports) => Runs.Sound with
    {
        Cable = Runs.Sound.Cable! with
        {
            Bends = [],
            Length = null,
            LongestStraight = null,
            Conduit = Runs.Sound.Cable!.Conduit! with { Outside = Levers.Mm(2000 * Half), MinRadius = Length.FromMillimetres(75) },
            Supports = [.. supports],
            Ends = new() { Leaves = At(0, 0, 0), LeavesAlong = new(1, 0, 0), Arrives = At(900, 80, 0), ArrivesAlong = new(1, 0, 0) },
        },
    };

    private static Aircraft Of(params Body[] bodies) => Runs.Aircraft with { Bodies = [.. bodies] };

    /// <summary>The route alone, as the whole check has it.</summary>
    private static RunAnswer Check(Aircraft aircraft, Run run, Skin? skin = null)
    {
        var answer = RunCheck.Solve(aircraft, run, new(Samples: 16, Tolerance: 2e-5, Boxes: 200));
        answer = answer with { Route = RouteInputs.Held(answer.Route!, run, RouteObstacles.Of(aircraft, null, _ => skin)) };
        return answer with { Findings = [.. RouteFindings.Of(aircraft, answer, new(aircraft.Display))], Figures = [.. RouteFigures.Of(answer)] };
    }

    private static RunAnswer Whole(Aircraft aircraft, Run run, Skin? skin) =>
        RunCheck.Check(aircraft with { Runs = [run] }, run, Runs.Quick, new CockpitEffort { Meshes = _ => skin, Cures = false });

    private static List<Vector3> Points(RunAnswer answer)
    {
        var curve = answer.Route!.Lie!.Shape;
        return [.. Enumerable.Range(0, 4001).Select(i => curve.PointAt(curve.Length * i / 4000))];
    }

    private static Body Ball(double x, double y, double z, double radius, KeepAway? away = null) =>
        new() { Id = "ball", Parts = [new("ball", new SphereShape(At(x, y, z), Levers.Mm(radius)))], KeepAway = away };

    [Theory]
    [InlineData(KeepAwayCause.Heat, RouteFindings.Heat, Verdict.Fail)]
    [InlineData(KeepAwayCause.Edge, RouteFindings.Chafe, Verdict.Caution)]
    [InlineData(KeepAwayCause.Other, RouteFindings.Chafe, Verdict.Caution)]
    public void StatedDistance_NotKept_IsTold(KeepAwayCause because, string rule, Verdict verdict)
    {
        var near = Check(Of(Ball(450, 140, 0, 30, new(Length.FromMillimetres(80), because))), Across());
        var least = Points(near).Min(p => (p - new Vector3(0.45, 0.14, 0)).Size) - 0.03 - Half;
        var gap = Assert.Single(near.Route!.Gaps);
        Assert.InRange(gap.Least, least - 1.5e-3, least + 1e-9);
        Assert.Equal(verdict, near.Of(rule)!.Verdict);
        Assert.Equal(gap.Least, near.Find(near.Of(rule)!.Figure!)!.Value);
        // The same thing where only the published distance is wanted.
        Assert.Equal(Verdict.Clear, Check(Of(Ball(450, 140, 0, 30)), Across()).Of(RouteFindings.Chafe)!.Verdict);
    }

    [Fact]
    public void Mover_CountsInAllItsPositions()
    {
        // A bar of 200 mm that swings from straight down to 60 degrees toward the conduit.
        var lever = new Body
        {
            Id = "lever",
            Joints = [new TurnJoint("swing", new(1, 0, 0), At(450, 300, 0), Angle.FromDegrees(-60), Angle.FromDegrees(10))],
            Parts = [new("bar", new CapsuleShape(At(450, 300, 0), At(450, 300, -200), Levers.Mm(10)))],
        };
        var answer = Check(Of(lever), Across());
        var points = Points(answer);
        var least = double.PositiveInfinity;
        for (var i = 0; i <= 700; i++)
        {
            var angle = (-60 + (0.1 * i)) * Math.PI / 180;
            Vector3 a = new(0.45, 0.3, 0), along = 0.2 * new Vector3(0, Math.Sin(angle), -Math.Cos(angle));
            least = Math.Min(least, points.Min(p => (p - a - (Math.Clamp(Vector3.Dot(p - a, along) / 0.04, 0, 1) * along)).Size) - 0.01 - Half);
        }

        // Held larger by what it moves between two of its steps, and never smaller.
        Assert.InRange(Assert.Single(answer.Route!.Gaps).Least, least - 0.008, least + 1e-6);
    }

    [Fact]
    public void Mesh_CountsByItsTriangles()
    {
        Vector3[] corners = [new(0.3, 0.1, -0.1), new(0.6, 0.1, -0.1), new(0.45, 0.12, 0.2)];
        var body = new Body { Id = "fairing", Parts = [new("skin", new MeshShape { File = "a.stl", Unit = MeshUnit.Metre, At = At(0, 0, 0) })] };
        var answer = Check(Of(body), Across(), new(corners, [0, 1, 2]));
        var least = Points(answer).Min(p => ToTriangle(p, corners)) - Half;
        Assert.InRange(Assert.Single(answer.Route!.Gaps).Least, least - 1.5e-3, least + 1e-4);
        Assert.Equal(answer.Route.Gaps, Whole(Of(body), Across(), new(corners, [0, 1, 2])).Route!.Gaps);
        // Not read: told, never silently clear.
        var unread = Check(Of(body), Across());
        Assert.Contains("fairing", unread.Of(RouteFindings.NotHeld)!.Sentence, StringComparison.Ordinal);
        Assert.Null(unread.Of(RouteFindings.Chafe));
    }

    [Fact]
    public void Mesh_RoundTheConduit_IsTold()
    {
        // A box 2 m wide, closed, faces outward.
        Vector3[] corners = [.. Enumerable.Range(0, 8).Select(i => new Vector3((i & 1) == 0 ? -1 : 1, (i & 2) == 0 ? -1 : 1, (i & 4) == 0 ? -1 : 1))];
        int[] faces = [0, 2, 3, 0, 3, 1, 4, 5, 7, 4, 7, 6, 0, 1, 5, 0, 5, 4, 2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1, 3, 7, 1, 7, 5];
        var body = new Body { Id = "hull", Parts = [new("skin", new MeshShape { File = "a.stl", Unit = MeshUnit.Metre, At = At(0, 0, 0) })] };
        Assert.Contains("lies inside its skin", Check(Of(body), Across(), new(corners, faces)).Of(RouteFindings.NotHeld)!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Sheet_IsPassedAtGrommetOrHoleOnly()
    {
        var bulkhead = new Sheet
        {
            Id = "bulkhead",
            At = At(500, 0, 0),
            Normal = new(1, 0, 0),
            Thickness = Levers.Mm(2),
            Outline = [At(500, -3000, -3000), At(500, 3000, -3000), At(500, 3000, 3000), At(500, -3000, 3000)],
        };
        Aircraft With(Sheet sheet) => Runs.Aircraft with { Sheets = [sheet] };
        var run = Across();
        var through = Check(With(bulkhead), run);
        Assert.Equal(Verdict.Fail, through.Of(RouteFindings.Chafe)!.Verdict);
        Assert.Contains("runs through bulkhead", through.Of(RouteFindings.Chafe)!.Sentence, StringComparison.Ordinal);

        var crossing = Points(through).MinBy(p => Math.Abs(p.X - 0.5));
        var grommet = new Support { Place = At(1000 * crossing.X, 1000 * crossing.Y, 0), Kind = SupportHold.Grommet };
        Assert.NotEqual(Verdict.Fail, Check(With(bulkhead), Across(grommet)).Of(RouteFindings.Chafe)!.Verdict);
        // A clamp there holds the conduit, but makes no hole.
        Assert.Equal(Verdict.Fail, Check(With(bulkhead), Across(grommet with { Kind = SupportHold.TightClamp })).Of(RouteFindings.Chafe)!.Verdict);

        var hole = With(bulkhead with { Holes = [new(At(500, 1000 * crossing.Y, 0), Levers.Mm(40))] });
        var passed = Check(hole, run);
        Assert.Equal(Verdict.Clear, passed.Of(RouteFindings.Chafe)!.Verdict);
        var rim = Points(passed).Min(p => Math.Sqrt(((p.X - 0.499) * (p.X - 0.499)) + Math.Pow(0.02 - Math.Sqrt(((p.Y - crossing.Y) * (p.Y - crossing.Y)) + (p.Z * p.Z)), 2))) - 0.001 - Half;
        Assert.InRange(Assert.Single(passed.Route!.Gaps).Least, rim - 1.5e-3, rim + 1e-5);
        Assert.Contains("no outline", Check(With(bulkhead with { Outline = [] }), run).Of(RouteFindings.NotHeld)!.Sentence, StringComparison.Ordinal);

        // And the planner finds the hole by itself, off the straight way.
        var off = With(bulkhead with { Holes = [new(At(500, 40, 120), Levers.Mm(60))] });
        var solved = RouteSolve.Find(off with { Runs = [run] }, run, new(Runs.Aircraft.Display), stop: TestContext.Current.CancellationToken);
        var best = solved.Best;
        Assert.True(best is not null, solved.Sentence);
        // With a grommet in it.
        Assert.Contains("the hole in bulkhead", best.Label, StringComparison.Ordinal);
        Assert.Single(best.Answer.Run.Cable!.Supports, s => s.Kind == SupportHold.Grommet);
        var points = Points(best.Answer);
        var at = points.MinBy(p => Math.Abs(p.X - 0.499));
        Assert.InRange(Math.Sqrt(Math.Pow(at.Y - 0.04, 2) + Math.Pow(at.Z - 0.12, 2)), 0, 0.03 - Half);
    }

    [Fact]
    public void Clamp_OnAFrame_MayBeNearIt()
    {
        var frame = new Body { Id = "frame", Parts = [new("tube", new CapsuleShape(At(450, 40, 15), At(450, 40, 300), Levers.Mm(8)))] };
        Assert.Equal(Verdict.Caution, Check(Of(frame), Across()).Of(RouteFindings.Chafe)!.Verdict);
        var held = Check(Of(frame), Across(new Support { Place = At(450, 40, 0) }));
        Assert.Equal(Verdict.Clear, held.Of(RouteFindings.Chafe)!.Verdict);
        Assert.Equal(0, held.Route!.Lie!.Case.Supports.Count(s => s.Kind != SupportKind.Grommet));
        // Into it is another matter.
        Assert.Equal(Verdict.Fail, Check(Of(frame with { Parts = [new("tube", new CapsuleShape(At(450, 40, 5), At(450, 40, 300), Levers.Mm(8)))] }), Across(new Support { Place = At(450, 40, 0) })).Of(RouteFindings.Chafe)!.Verdict);
    }

    /// <summary>Nearest of a fine triangular grid of the triangle's points, refined twice: no shared code, good to a hundredth of a millimetre here.</summary>
    private static double ToTriangle(Vector3 p, Vector3[] t)
    {
        const int N = 20;
        double best = double.PositiveInfinity, u0 = 0.5, v0 = 0.5, span = 0.5;
        for (var round = 0; round < 4; round++)
        {
            double bu = u0, bv = v0;
            for (var i = 0; i <= N; i++)
            {
                for (var j = 0; j <= N; j++)
                {
                    double u = Math.Clamp(u0 + (span * ((2.0 * i / N) - 1)), 0, 1), v = Math.Clamp(v0 + (span * ((2.0 * j / N) - 1)), 0, 1 - u);
                    var d = (p - t[0] - (u * (t[1] - t[0])) - (v * (t[2] - t[0]))).Size;
                    if (d < best)
                        (best, bu, bv) = (d, u, v);
                }
            }

            (u0, v0, span) = (bu, bv, span / 8);
        }

        return best;
    }
}
