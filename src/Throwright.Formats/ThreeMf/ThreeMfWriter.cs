using System.Globalization;
using System.Text;
using Throwright.Formats.Drawing;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Solids;

namespace Throwright.Formats.ThreeMf;

/// <summary>A part of a print job, and how many of it.</summary>
public sealed record PrintPart(string Name, Mesh Mesh, int Count = 1);

/// <summary>Writes parts as a 3MF package (core specification 1.4.0), in millimetres and saying so.</summary>
public static class ThreeMfWriter
{
    public const string ModelPath = "3D/3dmodel.model";

    /// <summary>Room between parts laid side by side, mm.</summary>
    private const double Room = 5;

    private const string Types = """
        <?xml version="1.0" encoding="UTF-8"?>
        <Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>
        """;

    private const string Relations = """
        <?xml version="1.0" encoding="UTF-8"?>
        <Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>
        """;

    public static byte[] Write(IReadOnlyList<PrintPart> parts, string title) => ZipWriter.Pack(
    [
        ("[Content_Types].xml", Bytes(Types)),
        ("_rels/.rels", Bytes(Relations)),
        (ModelPath, Bytes(Model(parts, title))),
    ]);

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text.ReplaceLineEndings("\n"));

    private static string Model(IReadOnlyList<PrintPart> parts, string title)
    {
        var model = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        model.Append("<model unit=\"millimeter\" xml:lang=\"en-US\" xmlns=\"http://schemas.microsoft.com/3dmanufacturing/core/2015/02\">\n");
        model.Append(CultureInfo.InvariantCulture, $"<metadata name=\"Title\">{SvgWriter.Escape(title)}</metadata>\n<resources>\n");
        var build = new StringBuilder();
        var x = 0.0;
        for (var i = 0; i < parts.Count; i++)
        {
            var (name, mesh, count) = parts[i];
            model.Append(CultureInfo.InvariantCulture, $"<object id=\"{i + 1}\" type=\"model\" name=\"{SvgWriter.Escape(name)}\"><mesh><vertices>\n");
            foreach (var v in mesh.Vertices)
                model.Append(CultureInfo.InvariantCulture, $"<vertex x=\"{Say(1000 * v.X)}\" y=\"{Say(1000 * v.Y)}\" z=\"{Say(1000 * v.Z)}\"/>\n");
            model.Append("</vertices><triangles>\n");
            foreach (var (a, b, c) in mesh.Triangles)
                model.Append(CultureInfo.InvariantCulture, $"<triangle v1=\"{a}\" v2=\"{b}\" v3=\"{c}\"/>\n");
            model.Append("</triangles></mesh></object>\n");
            // Side by side along x, all at or above the bed.
            Vector3 low = 1000 * Corner(mesh, Math.Min), high = 1000 * Corner(mesh, Math.Max);
            for (var k = 0; k < count; k++)
            {
                build.Append(CultureInfo.InvariantCulture, $"<item objectid=\"{i + 1}\" transform=\"1 0 0 0 1 0 0 0 1 {Say(x - low.X)} {Say(-low.Y)} {Say(-low.Z)}\"/>\n");
                x += high.X - low.X + Room;
            }
        }

        return model.Append("</resources>\n<build>\n").Append(build).Append("</build>\n</model>\n").ToString();
    }

    private static Vector3 Corner(Mesh mesh, Func<double, double, double> of) =>
        mesh.Vertices.Aggregate((a, b) => new(of(a.X, b.X), of(a.Y, b.Y), of(a.Z, b.Z)));

    /// <summary>To a nanometre: finer digits mean nothing, coarser ones could join two vertices.</summary>
    private static string Say(double mm)
    {
        var rounded = Math.Round(mm, 6, MidpointRounding.AwayFromZero);
        return rounded == 0 ? "0" : rounded.ToString("0.######", CultureInfo.InvariantCulture);
    }
}
