using System.Globalization;
using System.Text;
using Throwright.Formats.Drawing;
using Throwright.Formats.Gltf;
using Throwright.Formats.Pdf;
using Throwright.Formats.Step;
using Throwright.Formats.Stl;
using Throwright.Formats.ThreeMf;
using Throwright.Shapes.Solids;
using Throwright.Shapes.Tests.Solids;
using Throwright.Tests;

namespace Throwright.Formats.Tests;

public class FileSizesTests
{
    [Fact]
    public void Page_CheckedIn_IsWhatTheWritersGive()
    {
        const double Chord = 0.01e-3;
        var page = new StringBuilder("""
            # File sizes

            Written by a test (`THROWRIGHT_APPROVE=1 dotnet test --project tests/Throwright.Formats.Tests` rewrites it) from the test
            parts of `SolidCases`. Triangles at 0.01 mm chord error; the 3MF file holds two of the part; the GLB file has 0.05 mm chord error
            and the edges as lines.

            | part | faces / edges / vertices | STEP bytes | triangles | STL bytes | 3MF bytes | GLB bytes | volume of the triangles less the exact one, share |
            |---|---|---|---|---|---|---|---|

            """.ReplaceLineEndings("\n"));
        foreach (var body in SolidCases.All)
        {
            var mesh = Mesh.Of(body.Solid, Chord);
            var step = StepWriter.Write(body.Solid, new("TR-1", "Test part", new(2026, 1, 2)));
            page.Append(CultureInfo.InvariantCulture, $"| {body.Name} | {body.Solid.Faces.Count} / {body.Solid.Edges.Count} / {body.Solid.Vertices.Count} | {step.Length:N0} ");
            page.Append(CultureInfo.InvariantCulture, $"| {mesh.Triangles.Count:N0} | {StlWriter.Binary(mesh, body.Name).Length:N0} | {ThreeMfWriter.Write([new(body.Name, mesh, 2)], body.Name).Length:N0} ");
            page.Append(CultureInfo.InvariantCulture, $"| {GlbWriter.Write([new ScenePart(body.Name, body.Solid, new(0xB8, 0xC0, 0xC4), [Axes.World])], 0.05e-3).Length:N0} ");
            page.Append(CultureInfo.InvariantCulture, $"| {(mesh.Volume / body.Volume) - 1:E1} |\n");
        }

        page.Append("\nPDF, faces embedded and squeezed, the same bytes for the same input:\n\n| page | PDF bytes |\n|---|---|\n");
        foreach (var (name, pages) in ((string, int)[])[("one page with a line and a word", 1), ("three of them", 3)])
        {
            var sketch = new Sketch();
            sketch.Line(10, 10, 110, 10, Style.Line(new Tone("ink"), 0.3));
            sketch.Text(10, 20, 3, "100 mm", new Tone("ink"));
            var picture = sketch.ToPicture(210, 297, "Test", "A line and a word.");
            var pdf = PdfWriter.Write(new("Test"), [.. Enumerable.Repeat(new PdfPage(picture, "Test"), pages)], new([(new Tone("ink"), new Colour(0, 0, 0))]));
            page.Append(CultureInfo.InvariantCulture, $"| {name} | {pdf.Length:N0} |\n");
        }

        ApprovedText.Matches("docs/reference/file-sizes.md", page.ToString());
    }
}
