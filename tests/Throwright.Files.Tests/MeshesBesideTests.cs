using System.Text;
using Throwright.Engine.Model;

namespace Throwright.Files.Tests;

public sealed class MeshesBesideTests : IDisposable
{
    private const string Triangle = "solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 400 0 0\nvertex 0 400 0\nendloop\nendfacet\nendsolid a\n";

    private readonly string folder = Directory.CreateTempSubdirectory("throwright-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Mesh_BesideTheFile_IsReadOnce_ForEachPlaceThatNamesIt()
    {
        Put("meshes/wall.stl", Triangle);
        var result = Read(Mesh("meshes/wall.stl"), Mesh("meshes/wall.stl", "in"));
        Assert.Empty(result.Problems);
        Assert.Equal(2, result.Meshes.Count);
        Assert.Same(result.Meshes.Values.First(), result.Meshes.Values.Last());
        Assert.All(result.Meshes.Values, m => Assert.Equal(1, m.Triangles));
        Assert.Equal([MeshUnit.Millimetre, MeshUnit.Inch], result.Meshes.Keys.Select(m => m.Unit));
    }

    [Theory]
    [InlineData("meshes/none.stl", "mm", "no such file", ".file")]
    [InlineData("meshes", "mm", "a folder", ".file")]
    [InlineData("meshes/empty.stl", "mm", "empty", ".file")]
    [InlineData("meshes/cut.stl", "mm", "the file ends here", ".file")]
    [InlineData("meshes/wall.dwg", "mm", "no mesh that can be read", ".file")]
    [InlineData("meshes/link.stl", "mm", "a link", ".file")]
    [InlineData("linked/passwd.stl", "mm", "a link", ".file")]
    [InlineData("meshes/wall.stl", "ft", "121.920 m across", ".unit")]
    [InlineData("meshes/cube.3mf", "in", "millimeter", ".unit")]
    public void Mesh_AtFault_IsToldAtItsPlace_AndTheRestIsRead(string file, string unit, string found, string member)
    {
        Put("meshes/wall.stl", Triangle);
        Put("meshes/wall.dwg", Triangle);
        Put("meshes/empty.stl", "");
        Put("meshes/cut.stl", Triangle[..60]);
        Put("outside.stl", Triangle);
        File.Copy(RepositoryFolder.Path("examples", "meshes", "left-wall.3mf"), Path.Combine(folder, "meshes", "cube.3mf"));
        File.CreateSymbolicLink(Path.Combine(folder, "meshes", "link.stl"), Path.Combine(folder, "outside.stl"));
        Directory.CreateSymbolicLink(Path.Combine(folder, "linked"), "/etc");
        var result = Read(Mesh("meshes/wall.stl"), Mesh(file, unit));
        var problem = Assert.Single(result.Problems);
        Assert.Contains(found, problem.Found, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Expected);
        Assert.Equal("$.bodies[0].shapes[1].mesh" + member, problem.JsonPath);
        Assert.Equal(7, problem.Line);
        Assert.NotNull(result.Aircraft);
        Assert.Single(result.Meshes);
    }

    [Fact]
    public void Scan_OfTheExample_IsAHundredThousandTriangles()
    {
        var path = RepositoryFolder.Path("examples", "scanned-wall.throwright.json");
        var result = MeshesBeside.Read(path, AircraftFile.Read(path), TestContext.Current.CancellationToken);
        Assert.Empty(result.Problems);
        var scan = Assert.Single(result.Meshes).Value;
        Assert.InRange(scan.Triangles, 100_000, 200_000);
        Assert.InRange(scan.OpenEdges(), 1000, 10_000);
    }

    private static string Mesh(string file, string unit = "mm") => $$"""{ "mesh": { "file": "{{file}}", "unit": "{{unit}}", "at": ["36 in", "0 in", "30 in"] } }""";

    private AircraftFileResult Read(params string[] meshes)
    {
        var path = Path.Combine(folder, "a.throwright.json");
        File.WriteAllText(path, $$"""
            {
              "format": 1,
              "aircraft": { "name": "A" },
              "bodies": [ {
                "id": "wall",
                "shapes": [
                  {{string.Join(",", meshes)}}
                ] } ],
              "runs": []
            }
            """);
        var result = AircraftFile.Read(path);
        Assert.Empty(result.Problems);
        return MeshesBeside.Read(path, result, TestContext.Current.CancellationToken);
    }

    private void Put(string name, string text)
    {
        var path = Path.Combine(folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllBytes(path, Encoding.UTF8.GetBytes(text));
    }
}
