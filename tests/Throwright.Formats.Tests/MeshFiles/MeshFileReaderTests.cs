using System.Text;
using Throwright.Formats.Gltf;
using Throwright.Formats.MeshFiles;
using Throwright.Formats.Stl;
using Throwright.Formats.ThreeMf;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Solids;
using Throwright.Shapes.Tests.Solids;

namespace Throwright.Formats.Tests.MeshFiles;

/// <summary>Sound files: what was written is what is read.</summary>
public sealed class MeshFileReaderTests
{
    /// <summary>A unit cube with a fan of twelve triangles, as OBJ with quads.</summary>
    private const string Cube = """
        # a comment
        mtllib ../../etc/passwd
        o cube
        v 0 0 0
        v 1 0 0 0.5 0.5 0.5
        v 1 1 0
        v 0 1 0
        v 0 0 1
        v 1 0 1
        v 1 1 1
        v 0 1 +1
        vn 0 0 1
        usemtl none
        f 4 3 2 1
        f 5//1 6//1 7//1 8//1
        f -8 -7 -3 -4
        f 2/1 3/2 7/3 6/4
        f 3 4 8 7
        f 4 1 \
          5 8
        """;

    [Fact]
    public void Stl_OfEveryBody_BinaryAndText_KeepsVolumeAndIsClosed()
    {
        foreach (var body in SolidCases.All)
        {
            var mesh = Mesh.Of(body.Solid, 0.1e-3);
            foreach (var bytes in (byte[][])[StlWriter.Binary(mesh, body.Name), Encoding.ASCII.GetBytes(StlWriter.Text(mesh, body.Name))])
            {
                var read = Sound("a.STL", bytes);
                Assert.Null(read.MetresPerUnit);
                Assert.Equal(mesh.Triangles.Count, read.Skin!.Triangles);
                Assert.Equal(0, read.Skin.OpenEdges());
                Assert.Equal(mesh.Volume * 1e9, VolumeOf(read.Skin), 1e-4 * mesh.Volume * 1e9);
            }
        }
    }

    [Fact]
    public void Glb_AsWritten_KeepsVolume()
    {
        var solid = SolidCases.All[0].Solid;
        var read = Sound("a.glb", GlbWriter.Write([new("one", solid, new(128, 128, 128), [Axes.World])], 0.05e-3));
        Assert.Equal(0, read.Skin!.OpenEdges());
        var volume = Mesh.Of(solid, 0.05e-3).Volume;
        Assert.Equal(volume, VolumeOf(read.Skin), 2e-3 * volume);
    }

    [Fact]
    public void ThreeMf_AsWritten_KeepsUnitVolumeAndCount()
    {
        var mesh = Mesh.Of(SolidCases.All[0].Solid, 0.1e-3);
        var read = Sound("a.3mf", ThreeMfWriter.Write([new("one", mesh, 2)], "two of one"));
        Assert.Equal(("millimeter", 1e-3), (read.StatedUnit, read.MetresPerUnit));
        Assert.Equal(2 * mesh.Triangles.Count, read.Skin!.Triangles);
        Assert.Equal(0, read.Skin.OpenEdges());
        Assert.Equal(2 * mesh.Volume * 1e9, VolumeOf(read.Skin), 1e-4 * mesh.Volume * 1e9);
    }

    [Fact]
    public void ThreeMf_WithComponentsAndTransforms_PlacesThem()
    {
        // A tetrahedron, twice as a component (one moved by 10), the pair built once turned a quarter about z and moved by 100.
        var read = Sound("a.3mf", MeshFileCases.ThreeMf(
            MeshFileCases.Tetrahedron + """<object id="2"><components><component objectid="1"/><component objectid="1" transform="1 0 0 0 1 0 0 0 1 10 0 0"/></components></object>""",
            """<item objectid="2" transform="0 1 0 -1 0 0 0 0 1 0 0 100"/>""",
            "unit=\"inch\""));
        Assert.Equal(0.0254, read.MetresPerUnit);
        Assert.Equal(8, read.Skin!.Triangles);
        var (low, high) = read.Skin.Extents();
        Assert.Equal(new Vector3(-1, 0, 100), low);
        Assert.Equal(new Vector3(0, 11, 101), high);
        Assert.Equal(2.0 / 6, VolumeOf(read.Skin), 1e-12);
    }

    [Fact]
    public void Obj_WithQuadsNegativeNumbersAndLongLines_IsACube()
    {
        var read = Sound("cube.obj", Encoding.ASCII.GetBytes(Cube));
        Assert.Equal(12, read.Skin!.Triangles);
        Assert.Equal(0, read.Skin.OpenEdges());
        Assert.Equal(1, VolumeOf(read.Skin), 1e-12);
        Assert.Null(read.StatedUnit);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Gltf_WithNodesAndMirror_IsPlacedAndStaysOutward(bool glb)
    {
        var read = Sound(glb ? "a.glb" : "a.gltf", MeshFileCases.Gltf(glb, """
            "nodes": [ { "children": [1, 2], "translation": [0, 0, 5] }, { "mesh": 0, "matrix": [0,1,0,0, -1,0,0,0, 0,0,1,0, 10,0,0,1] }, { "mesh": 0, "scale": [-1, 1, 1], "rotation": [0, 0, 0, 1] } ],
            "scenes": [ { "nodes": [0] } ], "scene": 0
            """));
        Assert.Equal(("metre", 1.0), (read.StatedUnit, read.MetresPerUnit));
        Assert.Equal(8, read.Skin!.Triangles);
        var (low, high) = read.Skin.Extents();
        Assert.Equal(new Vector3(-1, 0, 5), low);
        Assert.Equal(new Vector3(10, 1, 6), high);
        // The mirrored one would count against the other.
        Assert.Equal(2.0 / 6, VolumeOf(read.Skin), 1e-12);
    }

    [Fact]
    public void Skin_WithATriangleLess_HasThreeOpenEdges()
    {
        var skin = Sound("cube.obj", Encoding.ASCII.GetBytes(Cube)).Skin!;
        Assert.Equal(3, new Skin(skin.Corners, [.. skin.Indices.Skip(3)]).OpenEdges());
        // One turned over: its three edges run the same way as their neighbours'.
        Assert.Equal(6, new Skin(skin.Corners, [skin.Indices[1], skin.Indices[0], .. skin.Indices.Skip(2)]).OpenEdges());
    }

    private static MeshReading Sound(string name, byte[] bytes)
    {
        var read = MeshFileReader.Read(name, bytes, TestContext.Current.CancellationToken);
        Assert.True(read.Skin is not null, $"{name}: {read.Found}; expected {read.Expected}");
        Assert.Equal("", read.Found);
        return read;
    }

    /// <summary>By the divergence theorem: the sum of the tetrahedra from the origin.</summary>
    private static double VolumeOf(Skin skin)
    {
        var sum = 0.0;
        for (var t = 0; t < skin.Indices.Count; t += 3)
            sum += Vector3.Dot(skin.Corners[skin.Indices[t]], Vector3.Cross(skin.Corners[skin.Indices[t + 1]], skin.Corners[skin.Indices[t + 2]])) / 6;
        return sum;
    }
}
