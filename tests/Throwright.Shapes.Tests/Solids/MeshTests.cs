using Throwright.Shapes.Frames;
using Throwright.Shapes.Solids;

namespace Throwright.Shapes.Tests.Solids;

public class MeshTests
{
    public static TheoryData<string> Names => AuditTests.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void Mesh_OfEachBody_IsClosedAndWithinItsChordError(string name)
    {
        var body = SolidCases.All.Single(c => c.Name == name);
        var curved = body.Solid.Faces.Where(f => f.Surface.IsRound).Sum(f => Math.Abs(Measure.AreaOf(body.Solid, f)));
        foreach (var chord in (double[])[0.1e-3, 0.03e-3, 0.01e-3])
        {
            var mesh = Mesh.Of(body.Solid, chord);
            Assert.Equal(0, mesh.OpenEdges);
            // Mean gap between arc and chord is 2/3 of the largest.
            Assert.InRange(mesh.Volume, body.Volume - (0.67 * chord * curved), body.Volume + (0.67 * chord * curved));
            Assert.Equal(2 * (1 - body.ThroughHoles), mesh.Vertices.Count - (mesh.Triangles.Count * 3 / 2) + mesh.Triangles.Count);
            Assert.All(mesh.Triangles, t => Assert.True(
                Vector3.Cross(mesh.Vertices[t.B] - mesh.Vertices[t.A], mesh.Vertices[t.C] - mesh.Vertices[t.A]).Size > 1e-13, $"{t} has no area"));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Mesh_MiddleOfEveryTriangleSide_LiesWithinTheChordErrorOfSomeFace(string name)
    {
        const double Chord = 0.05e-3;
        var solid = SolidCases.All.Single(c => c.Name == name).Solid;
        var mesh = Mesh.Of(solid, Chord);
        foreach (var (a, b, c) in mesh.Triangles)
        {
            foreach (var (from, to) in ((int, int)[])[(a, b), (b, c), (c, a)])
            {
                var middle = 0.5 * (mesh.Vertices[from] + mesh.Vertices[to]);
                Assert.True(solid.Faces.Min(f => f.Surface.Off(middle)) <= Chord * (1 + 1e-9));
            }
        }
    }

    [Fact]
    public void Mesh_WorkedWasher_HasTheExpectedCountAndError()
    {
        // Hand count at 0.1 mm chord: rim r 16, ellipse half-axis 16.388, quarter: cos(45/n) >= 1 - 0.1/16.388, n = 8
        // (sagitta 0.079; n = 7: 0.103); bore half-axis 5.736: n = 5 (0.071; n = 4: 0.110). Vertices 2 (32 + 20) = 104.
        var mesh = Mesh.Of(SolidCases.Worked.Build(), 0.1e-3);
        Assert.Equal(104, mesh.Vertices.Count);
        Assert.Equal(208, mesh.Triangles.Count);
        Assert.InRange(mesh.Volume / SolidCases.Worked.Volume, 1 - 6e-3, 1);
    }

    [Fact]
    public void OpenEdges_OneTriangleGone_AreThree()
    {
        var mesh = Mesh.Of(SolidCases.Worked.Build(), 0.1e-3);
        Assert.Equal(3, (mesh with { Triangles = mesh.Triangles.Skip(1).ToEquatableList() }).OpenEdges);
        Assert.Equal(3, (mesh with { Triangles = mesh.Triangles.Select((t, i) => i == 5 ? new(t.A, t.C, t.B) : t).ToEquatableList() }).OpenEdges);
    }
}
