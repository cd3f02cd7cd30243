using System.Globalization;
using System.Text;
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
            parts of `SolidCases`. Triangles at 0.01 mm chord error; the 3MF file holds two of the part.

            | part | faces / edges / vertices | STEP bytes | triangles | STL bytes | 3MF bytes | volume of the triangles less the exact one, share |
            |---|---|---|---|---|---|---|

            """.ReplaceLineEndings("\n"));
        foreach (var body in SolidCases.All)
        {
            var mesh = Mesh.Of(body.Solid, Chord);
            var step = StepWriter.Write(body.Solid, new("TR-1", "Test part", new(2026, 1, 2)));
            page.Append(CultureInfo.InvariantCulture, $"| {body.Name} | {body.Solid.Faces.Count} / {body.Solid.Edges.Count} / {body.Solid.Vertices.Count} | {step.Length:N0} ");
            page.Append(CultureInfo.InvariantCulture, $"| {mesh.Triangles.Count:N0} | {StlWriter.Binary(mesh, body.Name).Length:N0} | {ThreeMfWriter.Write([new(body.Name, mesh, 2)], body.Name).Length:N0} ");
            page.Append(CultureInfo.InvariantCulture, $"| {(mesh.Volume / body.Volume) - 1:E1} |\n");
        }

        ApprovedText.Matches("docs/reference/file-sizes.md", page.ToString());
    }
}
