using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Distance;

/// <summary>Triangles as a file gives them, in that file's own unit and axes.</summary>
/// <param name="Indices">Three corners a triangle, counter-clockwise seen from outside where the skin is closed.</param>
public sealed record Skin(IReadOnlyList<Vector3> Corners, IReadOnlyList<int> Indices)
{
    public int Triangles => Indices.Count / 3;

    /// <summary>Lowest and highest coordinates of the corners in use.</summary>
    public (Vector3 Low, Vector3 High) Extents()
    {
        double lx = double.PositiveInfinity, ly = lx, lz = lx, hx = -lx, hy = -lx, hz = -lx;
        foreach (var i in Indices)
        {
            var c = Corners[i];
            (lx, ly, lz) = (Math.Min(lx, c.X), Math.Min(ly, c.Y), Math.Min(lz, c.Z));
            (hx, hy, hz) = (Math.Max(hx, c.X), Math.Max(hy, c.Y), Math.Max(hz, c.Z));
        }

        return (new(lx, ly, lz), new(hx, hy, hz));
    }

    /// <summary>Edges that bound one triangle only, or run the same way in two: none where the skin is closed.</summary>
    /// <remarks>Corners at the same place count as one, whatever their numbers.</remarks>
    public int OpenEdges()
    {
        var places = new Dictionary<Vector3, int>(Corners.Count);
        var number = new int[Corners.Count];
        for (var i = 0; i < number.Length; i++)
        {
            if (!places.TryGetValue(Corners[i], out number[i]))
                places.Add(Corners[i], number[i] = i);
        }

        // Each edge counted one way, less the other way.
        var edges = new Dictionary<(int, int), int>(Indices.Count / 2);
        for (var t = 0; t < Indices.Count; t += 3)
        {
            int a = number[Indices[t]], b = number[Indices[t + 1]], c = number[Indices[t + 2]];
            // A triangle flattened to a line bounds nothing.
            if (a == b || b == c || c == a)
                continue;
            Count(a, b);
            Count(b, c);
            Count(c, a);
        }

        return edges.Values.Sum(Math.Abs);

        void Count(int from, int to)
        {
            var (key, way) = from < to ? ((from, to), 1) : ((to, from), -1);
            ref var count = ref System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(edges, key, out _);
            count += way;
        }
    }
}
