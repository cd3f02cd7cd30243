using System.Globalization;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;

namespace Throwright.Formats.MeshFiles;

/// <summary>Collects triangles and refuses what no mesh may hold.</summary>
internal sealed class MeshBuilder(CancellationToken cancel)
{
    private readonly List<Vector3> corners = [];
    private readonly List<int> indices = [];
    private Dictionary<Vector3, int>? joined;

    public int Corners => corners.Count;

    /// <summary>Before memory is taken: is there room for so many more?</summary>
    public void Expect(long triangles)
    {
        if (triangles + (indices.Count / 3) > MeshFileReader.MostTriangles)
            throw new MeshFault(string.Create(CultureInfo.InvariantCulture, $"{triangles + (indices.Count / 3)} triangles"), $"at most {MeshFileReader.MostTriangles}: decimate the mesh, or cut away what no handle comes near");
    }

    /// <summary>A corner with a number of its own.</summary>
    public int Corner(double x, double y, double z)
    {
        cancel.ThrowIfCancellationRequested();
        if (corners.Count >= 3 * MeshFileReader.MostTriangles)
            throw new MeshFault($"more than {3 * MeshFileReader.MostTriangles} corners", "three a triangle at most");
        corners.Add(Sound(x, y, z));
        return corners.Count - 1;
    }

    /// <summary>A corner that has the number of any other at the same place: for formats that repeat it in each triangle.</summary>
    public int CornerAt(double x, double y, double z)
    {
        joined ??= [];
        // Minus zero is zero.
        var at = Sound(x + 0.0, y + 0.0, z + 0.0);
        if (!joined.TryGetValue(at, out var number))
            joined.Add(at, number = Corner(at.X, at.Y, at.Z));
        return number;
    }

    public void Triangle(int a, int b, int c)
    {
        cancel.ThrowIfCancellationRequested();
        Expect(1);
        indices.Add(a);
        indices.Add(b);
        indices.Add(c);
    }

    public Skin ToSkin()
    {
        if (indices.Count == 0)
            throw new MeshFault("there is no triangle in the file", "a surface of triangles; a cloud of points has none: mesh it first");
        return new([.. corners], [.. indices]);
    }

    private Vector3 Sound(double x, double y, double z)
    {
        // Written so that NaN fails.
        if (!(Math.Abs(x) <= MeshFileReader.MostCoordinate && Math.Abs(y) <= MeshFileReader.MostCoordinate && Math.Abs(z) <= MeshFileReader.MostCoordinate))
            throw new MeshFault(string.Create(CultureInfo.InvariantCulture, $"the corner ({x:g6}, {y:g6}, {z:g6}) of triangle {(indices.Count / 3) + 1}"), $"coordinates that are numbers, none beyond {MeshFileReader.MostCoordinate:0}");
        return new(x, y, z);
    }
}
