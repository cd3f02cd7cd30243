using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using Throwright.Formats.MeshFiles;
using Throwright.Formats.Stl;
using Throwright.Formats.ThreeMf;
using Throwright.Shapes.Solids;
using Throwright.Shapes.Tests.Solids;

namespace Throwright.Formats.Tests.MeshFiles;

/// <summary>Files that are damaged, or made to do harm: each is refused, and the message says what was found.</summary>
public sealed class HostileMeshFileTests
{
    private static readonly Mesh Sample = Mesh.Of(SolidCases.All[0].Solid, 0.2e-3);

    public static TheoryData<string, string> Named => new()
    {
        // name of the case, a part of what must be told
        { "empty.stl", "empty" },
        { "short.stl", "too short" },
        { "counts-lie.stl", "4294967295 triangles announced" },
        { "cut.stl", "triangles announced" },
        { "nan.stl", "NaN" },
        { "huge.stl", "1e+30" },
        { "text-cut.stl", "the file ends here" },
        { "text-no-number.stl", "\"1,5\"" },
        { "text-two-corners.stl", "\"endloop\"" },
        { "corner-beyond.obj", "line 4: \"9\"" },
        { "corner-zero.obj", "line 4: \"0\"" },
        { "corner-too-far-back.obj", "\"-4\"" },
        { "two-corners.obj", "line 4" },
        { "points-only.obj", "no triangle" },
        { "nan.obj", "NaN" },
        { "fan.obj", "line" },
        { "cut.3mf", "end of the archive" },
        { "no-model.3mf", "there is no" },
        { "bomb.3mf", "larger than 400 MB" },
        { "laughs.3mf", "document type" },
        { "entity.3mf", "document type" },
        { "nested.3mf", "triangles" },
        { "nested-empty.3mf", "no triangle" },
        { "itself.3mf", "the object 1" },
        { "corner-beyond.3mf", "the corner 4" },
        { "no-xml.3mf", "line" },
        { "damaged.3mf", "damaged" },
        { "other-part.3mf", "another part" },
        { "extension.3mf", "extensions \"p\"" },
        { "unit.3mf", "the unit \"cubit\"" },
        { "two-names.3mf", "two files of the name" },
        { "outside.gltf", "stands in another file, \"../secret.bin\"" },
        { "web.gltf", "stands in another file" },
        { "count-lies.glb", "reaches beyond" },
        { "count-zero-view.glb", "no data" },
        { "view-lies.glb", "reaches beyond" },
        { "buffer-lies.glb", "and 72 there" },
        { "cycle.glb", "hangs on two others" },
        { "shared-child.glb", "hangs on two others" },
        { "nan.glb", "NaN" },
        { "corner-beyond.glb", "the corner 9" },
        { "compressed.glb", "needs the extension" },
        { "cut.glb", "bytes announced" },
        { "chunk-beyond.glb", "beyond the end" },
        { "version.glb", "version 1" },
        { "deep.gltf", "JSON" },
        { "not-json.gltf", "JSON" },
        { "list.gltf", "not of the kind" },
        { "kinds.gltf", "not of the kind" },
        { "twice.gltf", "JSON" },
        { "wings.step", "no mesh that can be read" },
    };

    [Theory]
    [MemberData(nameof(Named))]
    public void File_AtFault_IsRefusedAndToldWhy(string name, string told)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        var read = MeshFileReader.Read(name, Make(name), TestContext.Current.CancellationToken);
        Assert.Null(read.Skin);
        Assert.Contains(told, read.Found, StringComparison.Ordinal);
        Assert.NotEmpty(read.Expected);
        Assert.DoesNotContain(read.Found, char.IsControl);
        Assert.True(read.Found.Length <= 200);
        // Lies cost nothing: only the bomb may unpack up to its limit.
        if (name != "bomb.3mf")
            Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 64L * 1024 * 1024);
    }

    /// <summary>Sound files cut at each of many places, and with bytes changed: an answer each time, and never an exception.</summary>
    [Fact]
    public void File_CutOrChangedAnywhere_NeverEndsTheProgram()
    {
        (string Name, byte[] Bytes)[] sound =
        [
            ("a.stl", StlWriter.Binary(Sample, "a")),
            ("b.stl", Encoding.ASCII.GetBytes(StlWriter.Text(Sample, "b"))[..4000]),
            ("c.obj", "v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n"u8.ToArray()),
            ("d.3mf", MeshFileCases.ThreeMf(MeshFileCases.Tetrahedron, """<item objectid="1"/>""")),
            ("e.glb", MeshFileCases.Gltf(glb: true)),
            ("f.gltf", MeshFileCases.Gltf(glb: false)),
        ];
        var refused = 0;
#pragma warning disable CA5394 // A fixed seed is the point.
        var random = new Random(7);
        foreach (var (name, bytes) in sound)
        {
            for (var i = 0; i < 400; i++)
            {
                byte[] changed = [.. i % 2 == 0 ? bytes[..random.Next(bytes.Length)] : bytes];
                for (var k = 0; i % 2 == 1 && k < 1 + (i % 5); k++)
                    changed[random.Next(changed.Length)] = (byte)random.Next(256);
                var read = MeshFileReader.Read(name, changed, TestContext.Current.CancellationToken);
                refused += read.Skin is null ? 1 : 0;
                Assert.Equal(read.Skin is null, read.Found.Length > 0);
            }
        }
#pragma warning restore CA5394

        Assert.InRange(refused, 1200, 2400);
    }

    private static byte[] Make(string name)
    {
        var stl = StlWriter.Binary(Sample, "a");
        var gltf = Encoding.UTF8.GetString(MeshFileCases.Gltf(glb: false));
        switch (name)
        {
            case "empty.stl":
                return [];
            case "short.stl":
                return [1, 2, 3];
            case "counts-lie.stl":
                BinaryPrimitives.WriteUInt32LittleEndian(stl.AsSpan(80), uint.MaxValue);
                return stl;
            case "cut.stl":
                return stl[..^7];
            case "nan.stl":
                BinaryPrimitives.WriteSingleLittleEndian(stl.AsSpan(84 + 12 + 4), float.NaN);
                return stl;
            case "huge.stl":
                BinaryPrimitives.WriteSingleLittleEndian(stl.AsSpan(84 + 12 + 4), 1e30f);
                return stl;
            case "text-cut.stl":
                return Ascii("solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0");
            case "text-no-number.stl":
                return Ascii("solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 1,5\n");
            case "text-two-corners.stl":
                return Ascii("solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 1\nvertex 0 0 2\nendloop\n");
            case "corner-beyond.obj":
                return Ascii("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 9\n");
            case "corner-zero.obj":
                return Ascii("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 0 1 2\n");
            case "corner-too-far-back.obj":
                return Ascii("v 0 0 0\nv 1 0 0\nv 0 1 0\nf -1 -2 -4\n");
            case "two-corners.obj":
                return Ascii("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2\n");
            case "points-only.obj":
                return Ascii("v 0 0 0\nv 1 0 0\nv 0 1 0\n");
            case "nan.obj":
                return Ascii("v nan 0 0\n");
            case "fan.obj":
                return Ascii("v 0 0 0\nf" + string.Concat(Enumerable.Repeat(" 1", 100_000)));
            case "cut.3mf":
                return MeshFileCases.ThreeMf(MeshFileCases.Tetrahedron, "")[..^30];
            case "no-model.3mf":
                return ZipWriter.Pack([("readme.txt", Ascii("nothing"))]);
            case "bomb.3mf":
                return Bomb();
            case "laughs.3mf":
                var laughs = new StringBuilder("<!DOCTYPE lolz [<!ENTITY a0 \"ha\">");
                for (var i = 1; i < 40; i++)
                    laughs.Append($"<!ENTITY a{i} \"&a{i - 1};&a{i - 1};&a{i - 1};&a{i - 1};\">");
                return MeshFileCases.ThreeMf("&a39;", "", before: laughs.Append("]>").ToString());
            case "entity.3mf":
                return MeshFileCases.ThreeMf("&x;", "", before: "<!DOCTYPE m [<!ENTITY x SYSTEM \"file:///etc/hostname\">]>");
            case "nested.3mf":
                return MeshFileCases.ThreeMf(MeshFileCases.Tetrahedron + Doubled(60), """<item objectid="60"/>""");
            case "nested-empty.3mf":
                return MeshFileCases.ThreeMf("""<object id="1"><mesh/></object>""" + Doubled(60), """<item objectid="60"/>""");
            case "itself.3mf":
                return MeshFileCases.ThreeMf("""<object id="1"><components><component objectid="1"/></components></object>""", """<item objectid="1"/>""");
            case "corner-beyond.3mf":
                return MeshFileCases.ThreeMf(MeshFileCases.Tetrahedron.Replace("v3=\"3\"", "v3=\"4\"", StringComparison.Ordinal), """<item objectid="1"/>""");
            case "no-xml.3mf":
                return ZipWriter.Pack([(ThreeMfWriter.ModelPath, Ascii("\0\u0001 no xml"))]);
            case "damaged.3mf":
                var whole = MeshFileCases.ThreeMf(MeshFileCases.Tetrahedron, """<item objectid="1"/>""");
                whole[70] ^= 0x55;
                whole[90] ^= 0x55;
                return whole;
            case "other-part.3mf":
                return MeshFileCases.ThreeMf(MeshFileCases.Tetrahedron + """<object id="2"><components><component objectid="1" p:path="/3D/other.model" xmlns:p="http://schemas.microsoft.com/3dmanufacturing/production/2015/06"/></components></object>""", """<item objectid="2"/>""");
            case "extension.3mf":
                return MeshFileCases.ThreeMf(MeshFileCases.Tetrahedron, "", "requiredextensions=\"p\"");
            case "unit.3mf":
                return MeshFileCases.ThreeMf(MeshFileCases.Tetrahedron, "", "unit=\"cubit\"");
            case "two-names.3mf":
                return ZipWriter.Pack([(ThreeMfWriter.ModelPath, Ascii("a")), (ThreeMfWriter.ModelPath, Ascii("b"))]);
            case "outside.gltf":
                return Ascii(gltf[..gltf.IndexOf("data:", StringComparison.Ordinal)] + "../secret.bin\" } ] }");
            case "web.gltf":
                return Ascii(gltf[..gltf.IndexOf("data:", StringComparison.Ordinal)] + "https://example.invalid/a.bin\" } ] }");
            case "count-lies.glb":
                return MeshFileCases.Gltf(true, accessors: MeshFileCases.Accessors.Replace("\"count\": 4", "\"count\": 2000000000", StringComparison.Ordinal));
            case "count-zero-view.glb":
                return MeshFileCases.Gltf(true, accessors: MeshFileCases.Accessors.Replace("\"bufferView\": 0, ", "", StringComparison.Ordinal).Replace("\"count\": 4", "\"count\": 2000000000", StringComparison.Ordinal));
            case "view-lies.glb":
                return MeshFileCases.Gltf(true, views: MeshFileCases.Views.Replace("\"byteLength\": 48", "\"byteLength\": 480000", StringComparison.Ordinal));
            case "buffer-lies.glb":
                return MeshFileCases.Glb(gltf[..gltf.IndexOf("\"buffers\"", StringComparison.Ordinal)] + "\"buffers\": [ { \"byteLength\": 9000 } ] }", MeshFileCases.TetrahedronBytes());
            case "cycle.glb":
                return MeshFileCases.Gltf(true, """ "nodes": [ { "children": [1] }, { "children": [0], "mesh": 0 } ], "scenes": [ { "nodes": [0] } ]""");
            case "shared-child.glb":
                return MeshFileCases.Gltf(true, """ "nodes": [ { "children": [2] }, { "children": [2] }, { "mesh": 0 } ], "scenes": [ { "nodes": [0, 1] } ]""");
            case "nan.glb":
                var data = MeshFileCases.TetrahedronBytes();
                BinaryPrimitives.WriteSingleLittleEndian(data, float.NaN);
                return MeshFileCases.Gltf(true, data: data);
            case "corner-beyond.glb":
                var numbers = MeshFileCases.TetrahedronBytes();
                numbers[48] = 9;
                return MeshFileCases.Gltf(true, data: numbers);
            case "compressed.glb":
                return MeshFileCases.Gltf(true, more: """ "extensionsRequired": ["KHR_draco_mesh_compression"],""");
            case "cut.glb":
                return MeshFileCases.Gltf(true)[..^5];
            case "chunk-beyond.glb":
                var chunk = MeshFileCases.Gltf(true);
                BinaryPrimitives.WriteUInt32LittleEndian(chunk.AsSpan(12), 0x7FFFFFF0);
                return chunk;
            case "version.glb":
                var old = MeshFileCases.Gltf(true);
                old[4] = 1;
                return old;
            case "deep.gltf":
                return Ascii(new string('[', 100_000));
            case "not-json.gltf":
                return Ascii("{ \"asset\": nothing");
            case "list.gltf":
                return Ascii("[]");
            case "kinds.gltf":
                return Ascii("{ \"asset\": { \"version\": \"2.0\" }, \"nodes\": 7 }");
            case "twice.gltf":
                return Ascii("{ \"asset\": { \"version\": \"2.0\" }, \"asset\": 7 }");
            case "wings.step":
                return Ascii("ISO-10303-21;");
            default:
                throw new ArgumentException(name, nameof(name));
        }
    }

    /// <summary>Each object holds the one before twice: 2^59 of the first.</summary>
    private static string Doubled(int to) => string.Concat(Enumerable.Range(2, to - 1).Select(i =>
        $"""<object id="{i}"><components><component objectid="{i - 1}"/><component objectid="{i - 1}"/></components></object>"""));

    /// <summary>Hundreds of megabytes of blanks in half a megabyte.</summary>
    private static byte[] Bomb()
    {
        using var archive = new MemoryStream();
        using (var zip = new ZipArchive(archive, ZipArchiveMode.Create, leaveOpen: true))
        {
            using var entry = zip.CreateEntry(ThreeMfWriter.ModelPath, CompressionLevel.Optimal).Open();
            var blanks = new byte[1024 * 1024];
            blanks.AsSpan().Fill((byte)' ');
            for (var i = 0; i < 450; i++)
                entry.Write(blanks);
        }

        return archive.ToArray();
    }

    private static byte[] Ascii(string text) => Encoding.ASCII.GetBytes(text);
}
