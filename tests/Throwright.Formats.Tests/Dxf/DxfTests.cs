using System.Globalization;
using System.Text;
using Throwright.Formats.Drawing;
using Throwright.Formats.Dxf;
using Throwright.Shapes.Solids;
using Throwright.Shapes.Tests.Solids;

namespace Throwright.Formats.Tests.Dxf;

public class DxfTests
{
    internal static readonly Style Cut = Style.Line(new("ink"), 0.25), Centre = Style.Line(new("ink"), 0.13, 6, 1, 1, 1);

    /// <summary>A leg of a bracket with its corners and hole, a centre line, lettering, an arrow head.</summary>
    internal static Picture Sample()
    {
        var sketch = new Sketch { Layer = "outline" };
        PutProfile(sketch, SolidCases.Bracket(1).Leg(0).Outline);
        sketch.Layer = "holes";
        sketch.Circle(30, 40, 2.1, Cut);
        PutProfile(sketch, Profile.FlattedCircle(new(0.03, 0), 0.004, 0.003, 0.5));
        sketch.Layer = "center";
        sketch.Line(20, 40, 40, 40, Centre);
        sketch.Arc(30, 40, 10, 0.3, 4.5, Centre);
        sketch.Layer = "text";
        sketch.Polygon([new(20, 60), new(23, 59.5), new(23, 60.5)], Style.Area(new("ink")));
        sketch.Text(20, 70, 4, "Ø 4.2 ±0.1, 12.5° × 50 % – Größe", new("ink"), anchor: TextAnchor.Middle);
        sketch.Polyline([new(20, 75), new(30, 75), new(30, 80)], Cut);
        return sketch.ToPicture(100, 100, "sample", "sample", new Tone("paper"));
    }

    private static void PutProfile(Sketch sketch, Profile profile)
    {
        foreach (var s in profile.Stretches)
        {
            if (s.Centre is { } c)
                sketch.Arc(30 + (1000 * c.X), 40 - (1000 * c.Y), 1000 * s.Radius, s.StartAngle, s.Sweep, Cut);
            else
                sketch.Line(30 + (1000 * s.From.X), 40 - (1000 * s.From.Y), 30 + (1000 * s.To.X), 40 - (1000 * s.To.Y), Cut);
        }
    }

    [Theory]
    [InlineData(DxfEdition.R12)]
    [InlineData(DxfEdition.R2000)]
    public void Dxf_Text_IsAsciiPairsThatEndWithEof(DxfEdition edition)
    {
        var text = DxfWriter.Write(Sample(), edition);
        Assert.All(text, c => Assert.True(c is '\r' or '\n' or (>= ' ' and <= '~')));
        Assert.DoesNotContain("\n", text.Replace("\r\n", ""), StringComparison.Ordinal);
        var pairs = Pairs(text);
        Assert.Equal((0, "EOF"), pairs[^1]);
        Assert.Equal(pairs.Count(p => p == (0, "SECTION")), pairs.Count(p => p == (0, "ENDSEC")));
        Assert.Equal(pairs.Count(p => p == (0, "TABLE")), pairs.Count(p => p == (0, "ENDTAB")));
        Assert.Equal(DxfWriter.Write(Sample(), edition), text);
    }

    [Fact]
    public void R2000_SaysMillimetresAndHasNoHandleTwice()
    {
        var pairs = Pairs(DxfWriter.Write(Sample(), DxfEdition.R2000));
        Assert.Equal((70, "4"), pairs[pairs.IndexOf((9, "$INSUNITS")) + 1]);
        // The seed is no handle.
        var handles = pairs.Where((p, i) => p.Code == 5 && pairs[i - 1] != (9, "$HANDSEED")).Select(p => p.Value).ToList();
        Assert.Equal(handles.Count, handles.Distinct().Count());
        var seed = Hex(pairs[pairs.IndexOf((9, "$HANDSEED")) + 1].Value);
        Assert.True(handles.Max(Hex) <= seed);
        Assert.All(pairs.Where(p => p.Code == 330 && p.Value != "0"), p => Assert.Contains(p.Value, handles));
    }

    [Theory]
    [InlineData(DxfEdition.R12, "POLYLINE")]
    [InlineData(DxfEdition.R2000, "LWPOLYLINE")]
    public void Outline_OfLinesAndArcs_IsOneClosedPolylineOfTheExactArea(DxfEdition edition, string type)
    {
        var outlines = Entities(DxfWriter.Write(Sample(), edition)).Where(e => e.Contains((8, "OUTLINE")) && e[0].Value != "VERTEX" && e[0].Value != "SEQEND").ToList();
        var outline = Assert.Single(outlines);
        Assert.Equal(type, outline[0].Value);
        Assert.Contains((70, "1"), outline);
        var entities = Entities(DxfWriter.Write(Sample(), edition));
        var nodes = edition == DxfEdition.R12
            ? [.. entities.Where(e => e[0].Value == "VERTEX" && e.Contains((8, "OUTLINE"))).Select(Node)]
            : Nodes(outline);
        var area = 0.0;
        for (var i = 0; i < nodes.Count; i++)
        {
            var (x, y, bulge) = nodes[i];
            var (toX, toY, _) = nodes[(i + 1) % nodes.Count];
            area += 0.5 * ((x * toY) - (toX * y));
            if (bulge == 0)
                continue;
            double sweep = 4 * Math.Atan(bulge), chord = Math.Sqrt(((toX - x) * (toX - x)) + ((toY - y) * (toY - y))), radius = chord / (2 * Math.Sin(sweep / 2));
            area += 0.5 * radius * radius * (sweep - Math.Sin(sweep));
        }

        Assert.Equal(SolidCases.Bracket(1).Leg(0).Outline.Area * 1e6, area, 1e-6);
    }

    [Fact]
    public void Lettering_OutsideAscii_BecomesTheFormatsOwnMarks()
    {
        var words = Entities(DxfWriter.Write(Sample(), DxfEdition.R12)).Single(e => e[0].Value == "TEXT");
        Assert.Contains((1, "%%c 4.2 %%p0.1, 12.5%%d x 50 %%% - Gr??e"), words);
        Assert.Contains((72, "1"), words);
        Assert.Contains((40, "2.92"), words);
    }

    [Fact]
    public void Ground_IsLeftOut() =>
        Assert.DoesNotContain(Pairs(DxfWriter.Write(Sample(), DxfEdition.R12)), p => p.Value == "GROUND");

    private static int Hex(string text) => int.Parse(text, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);

    private static List<(int Code, string Value)> Pairs(string text)
    {
        var lines = text.Split("\r\n")[..^1];
        Assert.Equal(0, lines.Length % 2);
        return [.. Enumerable.Range(0, lines.Length / 2).Select(i => (int.Parse(lines[2 * i], CultureInfo.InvariantCulture), lines[(2 * i) + 1]))];
    }

    private static List<List<(int Code, string Value)>> Entities(string text)
    {
        var pairs = Pairs(text);
        var from = pairs.IndexOf((2, "ENTITIES")) + 1;
        var entities = new List<List<(int Code, string Value)>>();
        foreach (var pair in pairs.Skip(from).TakeWhile(p => p != (0, "ENDSEC")))
        {
            if (pair.Code == 0)
                entities.Add([]);
            entities[^1].Add(pair);
        }

        return entities;
    }

    private static (double X, double Y, double Bulge) Node(List<(int Code, string Value)> vertex) => (One(vertex, 10), One(vertex, 20), One(vertex, 42));

    private static List<(double X, double Y, double Bulge)> Nodes(List<(int Code, string Value)> outline)
    {
        var nodes = new List<(double X, double Y, double Bulge)>();
        foreach (var (code, value) in outline)
        {
            var number = code is 10 or 20 or 42 ? double.Parse(value, CultureInfo.InvariantCulture) : 0;
            if (code == 10)
                nodes.Add((number, 0, 0));
            else if (code == 20)
                nodes[^1] = nodes[^1] with { Y = number };
            else if (code == 42)
                nodes[^1] = nodes[^1] with { Bulge = number };
        }

        return nodes;
    }

    private static double One(List<(int Code, string Value)> entity, int code) =>
        entity.Where(p => p.Code == code).Select(p => double.Parse(p.Value, CultureInfo.InvariantCulture)).FirstOrDefault();
}

/// <summary>ezdxf audits both editions without an error and measures the outline.</summary>
public class OutsideDxfTests
{
    private const string Script = """
        import sys, ezdxf
        from ezdxf import path
        for name in sys.argv[1:]:
            doc = ezdxf.readfile(name)
            audit = doc.audit()
            outline = doc.modelspace().query('LWPOLYLINE POLYLINE[layer=="OUTLINE"]')
            points = list(path.make_path(outline[0]).flattening(0.00001))
            area = sum(a.x * b.y - b.x * a.y for a, b in zip(points, points[1:] + points[:1])) / 2
            print(doc.dxfversion, len(audit.errors), len(audit.fixes), doc.units, len(outline), outline[0].is_closed, round(area, 3), len(doc.modelspace()))
        """;

    [Fact]
    public void Ezdxf_AuditsBothEditionsWithoutAnError()
    {
        var python = OutsideReaders.Find(OutsideReaders.Python, "python3");
        if (OutsideReaders.Run(python, "/", ["-c", "import ezdxf"]).Exit != 0)
            OutsideReaders.Missing("ezdxf", "python3-ezdxf");
        using var folder = new OutsideReaders.Folder();
        var script = folder.Put("read.py", Encoding.UTF8.GetBytes(Script));
        var files = Enum.GetValues<DxfEdition>().Select(e => folder.Put($"{e}.dxf", Encoding.ASCII.GetBytes(DxfWriter.Write(DxfTests.Sample(), e))));
        var (exit, said) = OutsideReaders.Run(python, folder.Place, [script, .. files]);
        Assert.True(exit == 0, said);
        string[][] lines = [.. said.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split(' '))];
        Assert.Equal(["AC1009 0 0 0 1 True 8", "AC1015 0 0 4 1 True 8"], lines.Select(l => string.Join(' ', [.. l[..6], l[7]])));
        Assert.All(lines, l => Assert.Equal(SolidCases.Bracket(1).Leg(0).Outline.Area * 1e6, double.Parse(l[6], CultureInfo.InvariantCulture), 0.01));
    }
}
