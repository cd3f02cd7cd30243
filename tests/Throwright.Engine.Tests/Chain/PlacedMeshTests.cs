using Throwright.Engine.Chain;
using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Shapes;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using static Throwright.Engine.Tests.Chain.Cockpits;

namespace Throwright.Engine.Tests.Chain;

public sealed class PlacedMeshTests
{
    /// <summary>Two triangles that make a square wall of 400 mm at buttline -100 mm; corners in aircraft axes, mm.</summary>
    private static readonly Vector3[] Wall = [new(900, -100, 500), new(1300, -100, 500), new(1300, -100, 900), new(900, -100, 900)];
    private static readonly int[] Halves = [0, 1, 2, 0, 2, 3];

    [Theory]
    [InlineData(MeshUnit.Millimetre, 1)]
    [InlineData(MeshUnit.Centimetre, 10)]
    [InlineData(MeshUnit.Metre, 1000)]
    [InlineData(MeshUnit.Inch, 25.4)]
    [InlineData(MeshUnit.Foot, 304.8)]
    public void Mesh_OfAnyUnitAndAxes_PlacedByItsOrigin_StandsWhereItShould(MeshUnit unit, double mm)
    {
        // In the mesh: up is y, aft is -z, so right is up x aft = y x -z = -x. Its origin lies at (1000, 0, 700).
        var skin = new Skin([.. Wall.Select(w => (1 / mm) * new Vector3(-w.Y, w.Z - 700, -(w.X - 1000)))], Halves);
        var shape = new MeshShape { File = "wall.stl", Unit = unit, Up = MeshAxis.Y, Aft = MeshAxis.MinusZ, At = At(1000, 0, 700) };
        var placed = PlacedMesh.Of("wall", shape, skin)!;
        for (var i = 0; i < 4; i++)
            Assert.Equal(0, (placed.Corners[i] - (1e-3 * Wall[i])).Size, 1e-12);
        Assert.Equal(4, placed.OpenEdges);
        Assert.Null(placed.Fit);
        // The knob's edge is 15 mm from its axis, which is 100 mm from the wall.
        var pair = Solve(shape, skin).Clearance.Pairs.Single();
        Assert.InRange(pair.Lower, 0.0849, 0.085 + 1e-9);
        Assert.InRange(pair.Upper, 0.085 - 1e-9, 0.0851);
    }

    [Fact]
    public void Mesh_ByMatchedPoints_IsPlaced_AndItsDoubtIsAddedAllRound()
    {
        var (shape, skin) = Matched(Wall, 0);
        var placed = PlacedMesh.Of("wall", shape, skin)!;
        for (var i = 0; i < 4; i++)
            Assert.Equal(0, (placed.Corners[i] - (1e-3 * Wall[i])).Size, 1e-12);
        Assert.True(placed.Fit!.Miss < 1e-12);
        Assert.InRange(Solve(shape, skin).Clearance.Pairs.Single().Lower, 0.0849, 0.085 + 1e-9);
        // Points known to 2 mm each way only: sqrt(12) mm at the middle, more toward the corners.
        var (unsure, _) = Matched(Wall, 2);
        Assert.InRange(Solve(unsure, skin).Clearance.Pairs.Single().Upper, 0.065, 0.085 - (Math.Sqrt(12) * 1e-3));
    }

    /// <summary>Points moved at random within their tolerance: the true corner is never farther off than what was added.</summary>
    [Fact]
    public void Doubt_OfAnyPointsWithinTheirTolerance_CoversTheTruePlace()
    {
#pragma warning disable CA5394 // A fixed seed is the point.
        var random = new Random(5);
        double Off(double half) => (2 * random.NextDouble() * half) - half;
        for (var i = 0; i < 300; i++)
        {
            const double Half = 2;
            Vector3[] marks = [.. Enumerable.Range(0, 3 + (i % 4)).Select(_ => new Vector3(1000 + Off(400), Off(300), 700 + Off(300)))];
            // The true mesh axes are the aircraft's; the tape is off.
            var shape = new MeshShape
            {
                File = "wall.stl",
                Unit = MeshUnit.Millimetre,
                Matched = marks.Select(m => new MeshMatch(m.X, m.Y, m.Z, At(m.X + Off(Half), m.Y + Off(Half), m.Z + Off(Half), Half))).ToEquatableList(),
            };
            if (PlacedMesh.Of("wall", shape, new(Wall, Halves)) is not { } placed)
                continue;
            var solid = placed.Solid("wall", 0);
            for (var k = 0; k < 4; k++)
            {
                var ball = new MovingSolid(Throwright.Shapes.Distance.Solid.Of(new Part("true", new Sphere(1e-3 * Wall[k], 0))));
                Assert.True(LeastDistance.Find(new(solid), ball, cancel: TestContext.Current.CancellationToken).Upper == 0, $"{i}: corner {k}");
            }
        }
#pragma warning restore CA5394
    }

    [Fact]
    public void MatchedPoints_InOneLine_FixNothing()
    {
        Vector3[] line = [new(0, 0, 0), new(100, 0, 0), new(300, 0, 0)];
        var (shape, _) = Matched(line, 0);
        var answer = Solve(shape, new(Wall, Halves));
        Assert.Empty(answer.Clearance.Pairs);
        Assert.Contains("in one line", answer.NotRead.Single().Why);
    }

    [Fact]
    public void MatchedPoints_OneMistaken_IsCaution_WrongUnit_IsFail()
    {
        Assert.Equal(Verdict.Clear, FitOf(Matched(Wall, 0)).Verdict);
        var mistaken = FitOf(Matched([Wall[0], Wall[1], Wall[2] + new Vector3(0, 60, 0), Wall[3]], 0, Wall));
        Assert.Equal(Verdict.Caution, mistaken.Verdict);
        Assert.Contains("agree within 0.601 in", mistaken.Sentence);
        var slip = FitOf(Matched([.. Wall.Select(w => 10 * w)], 0, Wall));
        Assert.Equal(Verdict.Fail, slip.Verdict);
        Assert.Contains("times as far apart", slip.Sentence);
    }

    [Fact]
    public void Mesh_ThatIsOpen_IsNamedOnce_ClosedOneIsNot()
    {
        var shape = new MeshShape { File = "wall.stl", Unit = MeshUnit.Millimetre, At = At(0, 0, 0) };
        Finding[] Told(Skin skin)
        {
            var answer = RunCheck.Check(Of(Handle("a"), BodyOf(shape)), Runs.Quick, new CockpitEffort { Meshes = _ => skin });
            return [.. answer.Runs[0].Findings.Where(f => f.Rule is MeshFindings.Open or ClearanceRules.Skin)];
        }

        var open = Assert.Single(Told(new(Wall, Halves)));
        Assert.Equal(Verdict.Caution, open.Verdict);
        Assert.Contains("wall", open.Sentence);
        Vector3[] corners = [.. Wall.Take(3), new(1000, -300, 700)];
        Assert.Empty(Told(new(corners, [0, 1, 2, 0, 3, 1, 1, 3, 2, 2, 3, 0])));
    }

    private static Body BodyOf(MeshShape shape) => new() { Id = "wall", Parts = [new("skin", shape)] };

    private static CockpitAnswer Solve(MeshShape shape, Skin skin) =>
        CockpitCheck.Solve(Of(Handle("a"), BodyOf(shape)), null, new() { Meshes = _ => skin, Tolerance = 1e-5 })!;

    private static Finding FitOf((MeshShape Shape, Skin Skin) of)
    {
        var answer = RunCheck.Check(Of(Handle("a"), BodyOf(of.Shape)), Runs.Quick, new CockpitEffort { Meshes = _ => of.Skin });
        Assert.Contains(answer.Runs[0].Figures, f => f.Id == "mesh-wall");
        return answer.Runs[0].Findings.Single(f => f.Rule == MeshFindings.Fit);
    }

    /// <summary>The wall in axes of the scanner's own, with marks typed as found there and in the aircraft.</summary>
    private static (MeshShape Shape, Skin Skin) Matched(Vector3[] inAircraft, double half, Vector3[]? inMesh = null)
    {
        var scanner = new Pose(Rotation.About(new(1, 2, -3), 1.1), new(300, -200, 50));
        return (
            new()
            {
                File = "wall.stl",
                Unit = MeshUnit.Millimetre,
                Matched = inAircraft.Zip(inMesh ?? inAircraft, (a, m) => (A: a, M: scanner * m)).Select(p => new MeshMatch(p.M.X, p.M.Y, p.M.Z, At(p.A.X, p.A.Y, p.A.Z, half))).ToEquatableList(),
            },
            new([.. Wall.Select(w => scanner * w)], Halves));
    }
}
