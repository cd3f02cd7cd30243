using System.Text;
using System.Text.Json;
using SharpGLTF.Schema2;
using Throwright.Formats.Drawing;
using Throwright.Formats.Gltf;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Solids;
using Throwright.Shapes.Tests.Solids;
using Mesh = Throwright.Shapes.Solids.Mesh;

namespace Throwright.Formats.Tests.Gltf;

/// <summary>Read back with SharpGLTF.Core 1.0.7, which checks the structure and shares no code with the writer.</summary>
public class GlbTests
{
    private const double Chord = 0.05e-3;

    private static readonly Colour Blue = Colour.FromHex("#2a37a0");

    public static TheoryData<string> Cases => [.. SolidCases.All.Select(c => c.Name)];

    /// <summary>A washer twice, the second turned half a turn about y and moved.</summary>
    private static byte[] Pair() => GlbWriter.Write(
        [
            new("wedge <1> \"a\"", SolidCases.Keyed.Build(), Blue, [Axes.World, new(new(0.1, 0, 0.02), new(-1, 0, 0), new(0, 1, 0), new(0, 0, -1))]),
            new("block", SolidCases.Block.Build(), new(128, 128, 128), [Axes.World.At(new(0, 0.1, 0))]),
        ],
        Chord);

    private static ModelRoot Read(byte[] file) => ModelRoot.ParseGLB(file);

    [Theory]
    [MemberData(nameof(Cases))]
    public void Body_ReadBack_IsClosedAndOfItsVolume(string name)
    {
        var solid = SolidCases.All.Single(c => c.Name == name).Solid;
        var mesh = Read(GlbWriter.Write([new(name, solid, Blue, [Axes.World])], Chord)).LogicalMeshes.Single();
        var primitive = mesh.Primitives[0];
        var places = primitive.GetVertexAccessor("POSITION").AsVector3Array();
        var triangles = primitive.GetTriangleIndices().ToList();
        double volume = 0;
        var ways = new Dictionary<(System.Numerics.Vector3, System.Numerics.Vector3), int>();
        foreach (var (a, b, c) in triangles)
        {
            var (p, q, r) = (places[a], places[b], places[c]);
            volume += Vector3.Dot(Wide(p), Vector3.Cross(Wide(q), Wide(r))) / 6;
            foreach (var way in ((System.Numerics.Vector3, System.Numerics.Vector3)[])[(p, q), (q, r), (r, p)])
                ways[way] = ways.GetValueOrDefault(way) + 1;
        }

        Assert.All(ways, w => Assert.True(w.Value == 1 && ways.GetValueOrDefault((w.Key.Item2, w.Key.Item1)) == 1));
        var expected = Mesh.Of(solid, Chord).Volume;
        Assert.Equal(expected, volume, 1e-6 * expected);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Normals_ReadBack_AreOfLengthOneAndAgreeWithTheTriangles(string name)
    {
        var solid = SolidCases.All.Single(c => c.Name == name).Solid;
        var primitive = Read(GlbWriter.Write([new(name, solid, Blue, [Axes.World])], Chord)).LogicalMeshes.Single().Primitives[0];
        var places = primitive.GetVertexAccessor("POSITION").AsVector3Array();
        var normals = primitive.GetVertexAccessor("NORMAL").AsVector3Array();
        Assert.All(normals, n => Assert.Equal(1, n.Length(), 1e-6));
        foreach (var (a, b, c) in primitive.GetTriangleIndices())
        {
            var flat = Vector3.Cross(Wide(places[b]) - Wide(places[a]), Wide(places[c]) - Wide(places[a])).Unit();
            foreach (var vertex in (int[])[a, b, c])
                Assert.True(Vector3.Dot(flat, Wide(normals[vertex])) > 0.9, $"{name}: normal against its triangle");
        }
    }

    [Fact]
    public void Faces_InExtras_CoverTheTrianglesInTheOrderOfTheBody()
    {
        using var json = JsonDocument.Parse(Json(Pair()));
        var faces = json.RootElement.GetProperty("meshes")[0].GetProperty("extras").GetProperty("faces").EnumerateArray().ToList();
        Assert.Equal(SolidCases.Keyed.Build().Faces.Count, faces.Count);
        var at = 0;
        foreach (var face in faces)
        {
            Assert.Equal(at, face.GetProperty("start").GetInt32());
            at += face.GetProperty("count").GetInt32();
        }

        Assert.Equal(Mesh.Of(SolidCases.Keyed.Build(), Chord).Triangles.Count * 3, at);
    }

    [Fact]
    public void Scene_IsYUpInMetresWithOneMeshForEqualParts()
    {
        var model = Read(Pair());
        Assert.Equal(2, model.LogicalMeshes.Count);
        var nodes = model.DefaultScene.VisualChildren.Single().VisualChildren.ToList();
        Assert.Equal(["wedge <1> \"a\"", "wedge <1> \"a\"", "block"], nodes.Select(n => n.Name));
        Assert.Same(nodes[0].Mesh, nodes[1].Mesh);
        // A point 10 mm along the bore of the first is 10 mm up.
        var up = System.Numerics.Vector3.Transform(new(0, 0, 0.01f), nodes[0].WorldMatrix);
        Assert.True((up - new System.Numerics.Vector3(0, 0.01f, 0)).Length() < 1e-7f, up.ToString());
        var turned = System.Numerics.Vector3.Transform(new(0.01f, 0, 0), nodes[1].WorldMatrix);
        Assert.True((turned - new System.Numerics.Vector3(0.09f, 0.02f, 0)).Length() < 1e-7f, turned.ToString());
    }

    [Fact]
    public void Lines_LeaveOutSeamsOfRoundFaces()
    {
        var washer = Read(GlbWriter.Write([new("wedge", SolidCases.Worked.Build(), Blue, [Axes.World])], Chord)).LogicalMeshes[0];
        var lines = washer.Primitives[1].GetLineIndices().ToList();
        var places = washer.Primitives[1].GetVertexAccessor("POSITION").AsVector3Array();
        // Four closed curves; every point is touched twice, none runs along the bore's axis.
        Assert.All(lines, l => Assert.True(Math.Abs(places[l.A].Z - places[l.B].Z) < 0.9 * (places[l.A] - places[l.B]).Length()));
    }

    [Fact]
    public void Bytes_OfTheSameBodies_AreTheSame() => Assert.Equal(Pair(), Pair());

    [Fact]
    public void Head_NamesNoProgramAndFillsChunksToFours()
    {
        var file = Pair();
        using var json = JsonDocument.Parse(Json(file));
        Assert.Equal(["version"], json.RootElement.GetProperty("asset").EnumerateObject().Select(p => p.Name));
        Assert.Equal(file.Length, BitConverter.ToInt32(file, 8));
        Assert.Equal(0, BitConverter.ToInt32(file, 12) % 4);
        Assert.Equal(0, file.Length % 4);
    }

    [Fact]
    public void Write_NoBody_IsRefused() => Assert.Throws<ArgumentException>(() => GlbWriter.Write([], Chord));

    private static string Json(byte[] file) => Encoding.UTF8.GetString(file, 20, BitConverter.ToInt32(file, 12));

    private static Vector3 Wide(System.Numerics.Vector3 v) => new(v.X, v.Y, v.Z);
}
