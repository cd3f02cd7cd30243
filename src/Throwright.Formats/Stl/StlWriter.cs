using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Solids;

namespace Throwright.Formats.Stl;

/// <summary>Writes triangles as STL, in millimetres. The format has no place for a unit: it stands in the head.</summary>
public static class StlWriter
{
    private const int HeadBytes = 80, TriangleBytes = 50;

    /// <param name="name">Goes into the head; "mm" is put in front, so it never begins with the word that marks a text file.</param>
    public static byte[] Binary(Mesh mesh, string name)
    {
        var file = new byte[HeadBytes + 4 + (TriangleBytes * mesh.Triangles.Count)];
        Encoding.ASCII.GetBytes(Head(name), file);
        BinaryPrimitives.WriteUInt32LittleEndian(file.AsSpan(HeadBytes), (uint)mesh.Triangles.Count);
        var rest = file.AsSpan(HeadBytes + 4);
        foreach (var triangle in mesh.Triangles)
        {
            var corners = Corners(mesh, triangle);
            foreach (var (x, y, z) in (Vector3[])[Normal(corners), .. corners])
            {
                foreach (var value in (double[])[x, y, z])
                {
                    BinaryPrimitives.WriteSingleLittleEndian(rest, (float)value);
                    rest = rest[4..];
                }
            }

            rest = rest[2..];
        }

        return file;
    }

    public static string Text(Mesh mesh, string name)
    {
        var head = Head(name);
        var text = new StringBuilder().Append(CultureInfo.InvariantCulture, $"solid {head}\n");
        foreach (var triangle in mesh.Triangles)
        {
            var corners = Corners(mesh, triangle);
            text.Append(CultureInfo.InvariantCulture, $"facet normal {Say(Normal(corners))}\n outer loop\n");
            foreach (var corner in corners)
                text.Append(CultureInfo.InvariantCulture, $"  vertex {Say(corner)}\n");
            text.Append(" endloop\nendfacet\n");
        }

        return text.Append(CultureInfo.InvariantCulture, $"endsolid {head}\n").ToString();
    }

    private static string Head(string name)
    {
        var plain = new string([.. name.Where(c => c is >= ' ' and <= '~')]);
        var head = $"mm {plain}";
        return head.Length <= HeadBytes ? head : head[..HeadBytes];
    }

    /// <summary>In mm as single precision: one vertex gives the same numbers in every triangle.</summary>
    private static Vector3[] Corners(Mesh mesh, Triangle t) => [Single(mesh.Vertices[t.A]), Single(mesh.Vertices[t.B]), Single(mesh.Vertices[t.C])];

    private static Vector3 Single(Vector3 v) => new((float)(1000 * v.X) + 0.0, (float)(1000 * v.Y) + 0.0, (float)(1000 * v.Z) + 0.0);

    /// <summary>From the corners as written; zero for a triangle that single precision flattens.</summary>
    private static Vector3 Normal(Vector3[] c)
    {
        var cross = Vector3.Cross(c[1] - c[0], c[2] - c[0]);
        return cross.Size > 0 ? cross.Unit() : default;
    }

    private static string Say(Vector3 v) => $"{Say(v.X)} {Say(v.Y)} {Say(v.Z)}";

    private static string Say(double value) => ((float)value + 0f).ToString("R", CultureInfo.InvariantCulture);
}
