using System.Globalization;
using System.IO.Compression;
using System.Xml.Linq;
using CsCheck;
using Throwright.Formats.ThreeMf;
using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Solids;
using Throwright.Shapes.Tests.Solids;

namespace Throwright.Formats.Tests.ThreeMf;

public class ThreeMfTests
{
    private static readonly XNamespace Core = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";

    private static readonly Mesh Washer = Mesh.Of(SolidCases.Keyed.Build(), 0.02e-3), Block = Mesh.Of(SolidCases.Block.Build(), 0.02e-3);

    [Fact]
    public void Package_OpenedAsAZip_HasItsThreeParts()
    {
        using var zip = Open(ThreeMfWriter.Write([new("wedge", Washer, 2), new("block & guide", Block)], "Pair <1>"));
        Assert.Equal(["[Content_Types].xml", "_rels/.rels", "3D/3dmodel.model"], zip.Entries.Select(e => e.FullName));
        Assert.All(zip.Entries, e => Assert.Equal(new DateTime(1980, 1, 1), e.LastWriteTime.DateTime));
        var target = Xml(zip, "_rels/.rels").Root!.Elements().Single();
        Assert.Equal("/3D/3dmodel.model", target.Attribute("Target")!.Value);
        Assert.Equal("http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel", target.Attribute("Type")!.Value);
        Assert.Equal(["rels", "model"], Xml(zip, "[Content_Types].xml").Root!.Elements().Select(e => e.Attribute("Extension")!.Value));
    }

    [Fact]
    public void Model_StatesMillimetresAndHoldsEveryPartOnceAndItsCount()
    {
        using var zip = Open(ThreeMfWriter.Write([new("wedge", Washer, 2), new("block & guide", Block)], "Pair <1>"));
        var model = Xml(zip, ThreeMfWriter.ModelPath).Root!;
        Assert.Equal("millimeter", model.Attribute("unit")!.Value);
        Assert.Equal("Pair <1>", model.Element(Core + "metadata")!.Value);
        var objects = model.Element(Core + "resources")!.Elements(Core + "object").ToList();
        Assert.Equal(["wedge", "block & guide"], objects.Select(o => o.Attribute("name")!.Value));
        Assert.Equal(["1", "1", "2"], model.Element(Core + "build")!.Elements().Select(e => e.Attribute("objectid")!.Value));
        foreach (var (written, mesh) in objects.Zip([Washer, Block]))
        {
            var read = Read(written);
            Assert.Equal(0, read.OpenEdges);
            Assert.Equal(mesh.Volume, read.Volume / 1e9, 1e-7 * mesh.Volume);
            // No vertex twice: a nanometre keeps them apart.
            Assert.Equal(read.Vertices.Count, read.Vertices.Distinct().Count());
        }
    }

    [Fact]
    public void Items_LieSideBySideOnTheBed()
    {
        using var zip = Open(ThreeMfWriter.Write([new("wedge", Washer, 2), new("block", Block)], "t"));
        var build = Xml(zip, ThreeMfWriter.ModelPath).Root!.Element(Core + "build")!.Elements().ToList();
        var reach = double.NegativeInfinity;
        foreach (var (item, mesh) in build.Zip([Washer, Washer, Block]))
        {
            var move = item.Attribute("transform")!.Value.Split(' ').Select(w => double.Parse(w, CultureInfo.InvariantCulture)).ToArray();
            Assert.Equal([1, 0, 0, 0, 1, 0, 0, 0, 1], move[..9]);
            Assert.True((1000 * mesh.Vertices.Min(v => v.X)) + move[9] > reach);
            reach = (1000 * mesh.Vertices.Max(v => v.X)) + move[9];
            Assert.Equal(0, (1000 * mesh.Vertices.Min(v => v.Z)) + move[11], 2e-6);
        }
    }

    [Fact]
    public void Package_Twice_GivesTheSameBytes() =>
        Assert.Equal(ThreeMfWriter.Write([new("wedge", Washer)], "t"), ThreeMfWriter.Write([new("wedge", Washer)], "t"));

    [Fact]
    public void Zip_OfAnyBytes_ComesBack() =>
        (from alphabet in Gen.Int[1, 256]
         from content in Gen.Int[0, alphabet - 1].Select(i => (byte)i).Array[0, 3000]
         from twice in Gen.Bool
         select twice ? [.. content, .. content] : content)
        .Sample(content =>
        {
            using var zip = Open(ZipWriter.Pack([("a", content), ("b/c", [])]));
            using var stream = zip.GetEntry("a")!.Open();
            using var back = new MemoryStream();
            stream.CopyTo(back);
            Assert.Equal(content, back.ToArray());
            Assert.Equal(0, zip.GetEntry("b/c")!.Length);
        }, iter: 200);

    [Fact]
    public void Zip_LongRuns_ComeBack()
    {
        // Matches of 258 and distances near the window's end.
        byte[] content = [.. new byte[5000], .. Enumerable.Range(0, 32768).Select(i => (byte)(i * i / 7)), .. new byte[300], .. Enumerable.Range(0, 32768).Select(i => (byte)(i * i / 7))];
        using var zip = Open(ZipWriter.Pack([("a", content)]));
        using var stream = zip.GetEntry("a")!.Open();
        using var back = new MemoryStream();
        stream.CopyTo(back);
        Assert.Equal(content, back.ToArray());
    }

    private static ZipArchive Open(byte[] file) => new(new MemoryStream(file), ZipArchiveMode.Read);

    private static XDocument Xml(ZipArchive zip, string name)
    {
        using var stream = zip.GetEntry(name)!.Open();
        return XDocument.Load(stream);
    }

    private static Mesh Read(XElement written)
    {
        static double Number(XElement e, string name) => double.Parse(e.Attribute(name)!.Value, CultureInfo.InvariantCulture);
        var mesh = written.Element(Core + "mesh")!;
        return new(
            mesh.Element(Core + "vertices")!.Elements().Select(v => new Vector3(Number(v, "x"), Number(v, "y"), Number(v, "z"))).ToEquatableList(),
            mesh.Element(Core + "triangles")!.Elements().Select(t => new Triangle((int)Number(t, "v1"), (int)Number(t, "v2"), (int)Number(t, "v3"))).ToEquatableList());
    }
}
