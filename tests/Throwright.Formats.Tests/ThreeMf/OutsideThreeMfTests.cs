using Throwright.Formats.ThreeMf;
using Throwright.Shapes.Solids;
using Throwright.Shapes.Tests.Solids;

namespace Throwright.Formats.Tests.ThreeMf;

public class OutsideThreeMfTests
{
    /// <summary>lib3mf in its strict mode reads the package without a warning and finds every mesh manifold and oriented.</summary>
    [Fact]
    public void Lib3mf_Strict_ReadsWithoutWarning()
    {
        using var folder = new OutsideReaders.Folder();
        foreach (var body in SolidCases.All)
        {
            var mesh = Mesh.Of(body.Solid, 0.02e-3);
            var file = folder.Put("a.3mf", ThreeMfWriter.Write([new(body.Name, mesh, 2)], body.Name));
            var (exit, said) = OutsideReaders.Lib3mf(file);
            Assert.True(exit == 0, $"{exit} {said}");
            // Unit 1: millimetre.
            Assert.Equal($"warnings 0 unit 1\nmesh True {mesh.Vertices.Count} {mesh.Triangles.Count}\n", said);
        }
    }
}
