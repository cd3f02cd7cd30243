using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using Throwright.Formats.Stl;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Solids;
using Throwright.Shapes.Tests.Solids;

namespace Throwright.Formats.Tests.Stl;

public class StlTests
{
    public static TheoryData<string> Names => [.. SolidCases.All.Select(c => c.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Binary_ReadBackByItsNumbersAlone_IsClosedOrientedAndOfTheRightVolume(string name)
    {
        var body = SolidCases.All.Single(c => c.Name == name);
        var mesh = Mesh.Of(body.Solid, 0.02e-3);
        var triangles = ReadBinary(StlWriter.Binary(mesh, name));
        Assert.Equal(mesh.Triangles.Count, triangles.Count);
        // Corners are joined by equal numbers only: the file has no other way to say that they are one.
        var sides = new Dictionary<(Vector3, Vector3), int>();
        var volume = 0.0;
        foreach (var (normal, a, b, c) in triangles)
        {
            foreach (var side in ((Vector3, Vector3)[])[(a, b), (b, c), (c, a)])
                sides[side] = sides.GetValueOrDefault(side) + 1;
            volume += Vector3.Dot(a, Vector3.Cross(b, c)) / 6;
            Assert.Equal(1, Vector3.Dot(normal, Vector3.Cross(b - a, c - a).Unit()), 1e-6);
        }

        Assert.All(sides, s => Assert.True(s.Value == 1 && sides.GetValueOrDefault((s.Key.Item2, s.Key.Item1)) == 1, $"{s.Key} is not shared once each way"));
        Assert.Equal(mesh.Volume * 1e9, volume, 1e-5 * mesh.Volume * 1e9);
    }

    [Fact]
    public void Text_HoldsTheSameNumbersAsTheBinaryFile()
    {
        var mesh = Mesh.Of(SolidCases.Keyed.Build(), 0.05e-3);
        var text = StlWriter.Text(mesh, "washer");
        Assert.StartsWith("solid mm washer\n", text, StringComparison.Ordinal);
        var numbers = text.Split('\n').Where(l => l.TrimStart().StartsWith("vertex", StringComparison.Ordinal))
            .Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1..].Select(w => float.Parse(w, CultureInfo.InvariantCulture)).ToArray())
            .Select(n => new Vector3(n[0], n[1], n[2]));
        Assert.Equal(ReadBinary(StlWriter.Binary(mesh, "washer")).SelectMany(t => (Vector3[])[t.A, t.B, t.C]), numbers);
    }

    [Fact]
    public void Binary_Head_NeverLooksLikeATextFileAndStatesTheUnit()
    {
        var file = StlWriter.Binary(Mesh.Of(SolidCases.Worked.Build(), 0.1e-3), "solid wedge Ø 32 with a name that runs on and on and on far beyond the eighty bytes of the head");
        Assert.StartsWith("mm solid wedge ", Encoding.ASCII.GetString(file, 0, 80), StringComparison.Ordinal);
        Assert.Equal(84 + (50L * BinaryPrimitives.ReadUInt32LittleEndian(file.AsSpan(80))), file.Length);
    }

    private static List<(Vector3 Normal, Vector3 A, Vector3 B, Vector3 C)> ReadBinary(byte[] file)
    {
        var count = BinaryPrimitives.ReadUInt32LittleEndian(file.AsSpan(80));
        Assert.Equal(84 + (50L * count), file.Length);
        var triangles = new List<(Vector3, Vector3, Vector3, Vector3)>();
        for (var i = 0; i < count; i++)
        {
            var at = 84 + (50 * i);
            Vector3 Read(int k) => new(One(at + (12 * k)), One(at + (12 * k) + 4), One(at + (12 * k) + 8));
            triangles.Add((Read(0), Read(1), Read(2), Read(3)));
        }

        return triangles;

        double One(int at) => BinaryPrimitives.ReadSingleLittleEndian(file.AsSpan(at));
    }
}
