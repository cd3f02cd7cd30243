using System.Buffers.Binary;
using System.Globalization;
using System.Text.Json;
using Throwright.Formats.Drawing;
using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Solids;

namespace Throwright.Formats.Gltf;

/// <summary>A body in a scene, and where it stands; one body may stand in several places.</summary>
/// <param name="Places">Origin and directions of the body's own axes, m.</param>
public sealed record ScenePart(string Name, Solid Solid, Colour Colour, EquatableList<Axes> Places);

/// <summary>Writes bodies as binary glTF 2.0 for looking at: metres, y up.</summary>
/// <remarks>
/// Each face of a body has vertices of its own with the exact normal of its surface, so round faces look round and edges sharp.
/// extras.faces of a mesh says which indices belong to which face. The sharp edges are lines besides. The same bodies give the
/// same bytes.
/// </remarks>
public static class GlbWriter
{
    private const int Triangles = 4, Lines = 1, Float = 5126, Index = 5125, VertexData = 34962, IndexData = 34963;

    /// <param name="chord">Largest distance of the triangles from the round faces, m; 0.05 mm is enough for looking at.</param>
    public static byte[] Write(IReadOnlyList<ScenePart> parts, double chord)
    {
        if (parts.Count == 0 || parts.Any(p => p.Places.Count == 0))
            throw new ArgumentException("A scene has at least one body, and each has a place.", nameof(parts));
        var data = new Store();
        var surfaces = parts.Select(p => WriteBody(p, chord, data)).ToList();
        using var text = new MemoryStream();
        using (var json = new Utf8JsonWriter(text))
            WriteScene(json, parts, surfaces, data);
        return Pack(text.ToArray(), data.Bytes);
    }

    /// <summary>Chunks of JSON and of bytes, each filled up to a multiple of four.</summary>
    private static byte[] Pack(byte[] json, byte[] bytes)
    {
        int jsonLength = (json.Length + 3) / 4 * 4, byteLength = (bytes.Length + 3) / 4 * 4;
        var file = new byte[12 + 8 + jsonLength + 8 + byteLength];
        var at = 0;
        Put(0x46546C67);
        Put(2);
        Put((uint)file.Length);
        Put((uint)jsonLength);
        Put(0x4E4F534A);
        json.CopyTo(file, at);
        file.AsSpan(at + json.Length, jsonLength - json.Length).Fill((byte)' ');
        at += jsonLength;
        Put((uint)byteLength);
        Put(0x004E4942);
        bytes.CopyTo(file, at);
        return file;

        void Put(uint value)
        {
            BinaryPrimitives.WriteUInt32LittleEndian(file.AsSpan(at), value);
            at += 4;
        }
    }

    private sealed record Body(int Places, int Normals, int Indices, int LinePlaces, List<(int Start, int Count)> Faces);

    private static Body WriteBody(ScenePart part, double chord, Store data)
    {
        var mesh = Mesh.Of(part.Solid, chord);
        List<Vector3> places = [], normals = [];
        var indices = new List<uint>();
        var faces = new List<(int, int)>();
        var triangle = 0;
        for (var f = 0; f < part.Solid.Faces.Count; f++)
        {
            var face = part.Solid.Faces[f];
            var own = new Dictionary<int, uint>();
            var start = indices.Count;
            for (; triangle < mesh.FaceEnds[f]; triangle++)
            {
                var (a, b, c) = mesh.Triangles[triangle];
                foreach (var vertex in (int[])[a, b, c])
                {
                    if (!own.TryGetValue(vertex, out var index))
                    {
                        own[vertex] = index = (uint)places.Count;
                        places.Add(mesh.Vertices[vertex]);
                        normals.Add(Normal(face, mesh.Vertices[vertex]));
                    }

                    indices.Add(index);
                }
            }

            faces.Add((start, indices.Count - start));
        }

        var lines = new List<Vector3>();
        for (var e = 0; e < part.Solid.Edges.Count; e++)
        {
            if (IsSmooth(part.Solid, e))
                continue;
            var path = mesh.EdgePaths[e];
            for (var i = 1; i < path.Count; i++)
                lines.AddRange([mesh.Vertices[path[i - 1]], mesh.Vertices[path[i]]]);
        }

        return new(data.Add(places, true), data.Add(normals, false), data.Add(indices), data.Add(lines, true), faces);
    }

    private static Vector3 Normal(Face face, Vector3 at)
    {
        var (p, q) = face.Surface.Of(at);
        var normal = face.Surface.AreaAt(p, q).Unit();
        return face.Outward ? normal : -normal;
    }

    /// <summary>The seam between two quarters of one round face.</summary>
    private static bool IsSmooth(Solid solid, int edge)
    {
        var beside = solid.Faces.Where(f => f.Loops.Any(l => l.Uses.Any(u => u.Edge == edge))).ToList();
        if (beside.Count != 2)
            return false;
        var middle = solid.Edges[edge].At(0.5);
        return (Normal(beside[0], middle) - Normal(beside[1], middle)).Size < 1e-6;
    }

    private static void WriteScene(Utf8JsonWriter json, IReadOnlyList<ScenePart> parts, List<Body> bodies, Store data)
    {
        json.WriteStartObject();
        json.WriteStartObject("asset");
        json.WriteString("version", "2.0");
        json.WriteEndObject();
        json.WriteNumber("scene", 0);
        Array("scenes", () => Object(() => Array("nodes", () => json.WriteNumberValue(0))));
        var count = parts.Sum(p => p.Places.Count);
        Array("nodes", () =>
        {
            Object(() =>
            {
                json.WriteString("name", "z up");
                // A quarter turn back about x: the bodies' z becomes the format's y.
                Numbers("rotation", [-Math.Sqrt(0.5), 0, 0, Math.Sqrt(0.5)]);
                Array("children", () => Each(Enumerable.Range(1, count), json.WriteNumberValue));
            });
            for (var i = 0; i < parts.Count; i++)
            {
                foreach (var (o, x, y, z) in parts[i].Places)
                {
                    Object(() =>
                    {
                        json.WriteString("name", parts[i].Name);
                        json.WriteNumber("mesh", i);
                        if (new Axes(o, x, y, z) != Axes.World)
                            Numbers("matrix", [x.X, x.Y, x.Z, 0, y.X, y.Y, y.Z, 0, z.X, z.Y, z.Z, 0, o.X, o.Y, o.Z, 1]);
                    });
                }
            }
        });
        Array("meshes", () => Each(Enumerable.Range(0, parts.Count), i => Object(() =>
        {
            json.WriteString("name", parts[i].Name);
            Array("primitives", () =>
            {
                Object(() =>
                {
                    json.WriteStartObject("attributes");
                    json.WriteNumber("POSITION", bodies[i].Places);
                    json.WriteNumber("NORMAL", bodies[i].Normals);
                    json.WriteEndObject();
                    json.WriteNumber("indices", bodies[i].Indices);
                    json.WriteNumber("mode", Triangles);
                    json.WriteNumber("material", i);
                });
                Object(() =>
                {
                    json.WriteStartObject("attributes");
                    json.WriteNumber("POSITION", bodies[i].LinePlaces);
                    json.WriteEndObject();
                    json.WriteNumber("mode", Lines);
                    json.WriteNumber("material", parts.Count);
                });
            });
            json.WriteStartObject("extras");
            Array("faces", () => Each(bodies[i].Faces, f => Object(() =>
            {
                json.WriteNumber("start", f.Start);
                json.WriteNumber("count", f.Count);
            })));
            json.WriteEndObject();
        })));
        Array("materials", () =>
        {
            foreach (var part in parts)
                Material(part.Name, part.Colour);
            Material("edges", new(0, 0, 0));
        });
        Array("accessors", () => Each(data.Accessors, a => Object(() =>
        {
            json.WriteNumber("bufferView", a.View);
            json.WriteNumber("componentType", a.IsIndex ? Index : Float);
            json.WriteNumber("count", a.Count);
            json.WriteString("type", a.IsIndex ? "SCALAR" : "VEC3");
            if (a.Least is not { } least || a.Most is not { } most)
                return;
            Array("min", () => Each(least, json.WriteNumberValue));
            Array("max", () => Each(most, json.WriteNumberValue));
        })));
        Array("bufferViews", () => Each(data.Views, v => Object(() =>
        {
            json.WriteNumber("buffer", 0);
            json.WriteNumber("byteOffset", v.Start);
            json.WriteNumber("byteLength", v.Length);
            json.WriteNumber("target", v.IsIndex ? IndexData : VertexData);
        })));
        Array("buffers", () => Object(() => json.WriteNumber("byteLength", data.Bytes.Length)));
        json.WriteEndObject();

        void Material(string name, Colour colour) => Object(() =>
        {
            json.WriteString("name", name);
            json.WriteStartObject("pbrMetallicRoughness");
            Numbers("baseColorFactor", [Linear(colour.Red), Linear(colour.Green), Linear(colour.Blue), 1]);
            json.WriteNumber("metallicFactor", 0);
            json.WriteEndObject();
        });

        void Numbers(string name, double[] values) => Array(name, () => Each(values, v => json.WriteRawValue(Say(v))));

        void Array(string name, Action content)
        {
            json.WriteStartArray(name);
            content();
            json.WriteEndArray();
        }

        void Object(Action content)
        {
            json.WriteStartObject();
            content();
            json.WriteEndObject();
        }

        static void Each<T>(IEnumerable<T> items, Action<T> content)
        {
            foreach (var item in items)
                content(item);
        }
    }

    /// <summary>The format holds colours by their light, screens by a curve (IEC 61966-2-1); three digits are plenty.</summary>
    private static double Linear(byte value)
    {
        var share = value / 255.0;
        return Math.Round(share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4), 3);
    }

    private static string Say(double value) => value == 0 ? "0" : value.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>All numbers of the scene, one after the other, and where which are.</summary>
    private sealed class Store
    {
        private readonly List<byte> bytes = [];

        public List<(int View, int Count, bool IsIndex, float[]? Least, float[]? Most)> Accessors { get; } = [];

        public List<(int Start, int Length, bool IsIndex)> Views { get; } = [];

        public byte[] Bytes => [.. bytes];

        public int Add(List<Vector3> vectors, bool withBounds)
        {
            var start = bytes.Count;
            float[] least = [float.PositiveInfinity, float.PositiveInfinity, float.PositiveInfinity], most = [float.NegativeInfinity, float.NegativeInfinity, float.NegativeInfinity];
            foreach (var (x, y, z) in vectors)
            {
                float[] parts = [Single(x), Single(y), Single(z)];
                for (var i = 0; i < 3; i++)
                {
                    (least[i], most[i]) = (Math.Min(least[i], parts[i]), Math.Max(most[i], parts[i]));
                    Put(BitConverter.SingleToUInt32Bits(parts[i]));
                }
            }

            return Close(start, vectors.Count, false, withBounds ? least : null, withBounds ? most : null);
        }

        public int Add(List<uint> indices)
        {
            var start = bytes.Count;
            indices.ForEach(Put);
            return Close(start, indices.Count, true, null, null);
        }

        private int Close(int start, int count, bool isIndex, float[]? least, float[]? most)
        {
            Views.Add((start, bytes.Count - start, isIndex));
            Accessors.Add((Views.Count - 1, count, isIndex, least, most));
            return Accessors.Count - 1;
        }

        // No negative zero: the same place is written one way.
        private static float Single(double value) => (float)value is var single && single == 0 ? 0 : single;

        private void Put(uint value)
        {
            Span<byte> four = stackalloc byte[4];
            BinaryPrimitives.WriteUInt32LittleEndian(four, value);
            bytes.AddRange(four);
        }
    }
}
