using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Throwright.Formats.Stl;
using Throwright.Shapes.Solids;
using Throwright.Shapes.Tests.Solids;

namespace Throwright.Formats.Tests.Stl;

public partial class OutsideStlTests
{
    /// <summary>ADMesh finds nothing to repair, one part, and the same volume.</summary>
    [Fact]
    public void Admesh_FindsEachFileClosedAndInOnePart()
    {
        var admesh = OutsideReaders.Find("admesh", "admesh");
        using var folder = new OutsideReaders.Folder();
        foreach (var body in SolidCases.All)
        {
            var mesh = Mesh.Of(body.Solid, 0.02e-3);
            foreach (var file in (string[])[folder.Put("a.stl", StlWriter.Binary(mesh, body.Name)), folder.Put("b.stl", Encoding.ASCII.GetBytes(StlWriter.Text(mesh, body.Name)))])
            {
                var (exit, said) = OutsideReaders.Run(admesh, folder.Place, [file]);
                Assert.True(exit == 0, said);
                foreach (var fault in (string[])["Degenerate facets", "Edges fixed", "Facets removed", "Facets added", "Facets reversed", "Backwards edges", "Normals fixed"])
                    Assert.True(Regex.IsMatch(said, $@"{fault}\s*:\s*0\b"), $"{body.Name}: {said}");
                Assert.Matches(@"Number of parts\s*:\s*1\b", said);
                Assert.Matches(@"Total disconnected facets\s*:\s*0\s+0\b", said);
                Assert.Equal(mesh.Volume * 1e9, double.Parse(Volume().Match(said).Groups[1].Value, CultureInfo.InvariantCulture), 1e-4 * mesh.Volume * 1e9);
            }
        }
    }

    [GeneratedRegex(@"Volume\s*:\s*([0-9.]+)")]
    private static partial Regex Volume();
}
