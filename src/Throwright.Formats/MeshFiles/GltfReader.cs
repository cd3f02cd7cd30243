using System.Buffers.Binary;
using System.Globalization;
using System.Text.Json;
using Throwright.Shapes.Frames;

namespace Throwright.Formats.MeshFiles;

/// <summary>glTF 2.0, as GLB or as JSON with all data inside: the triangles of its scene, in metres.</summary>
/// <remarks>Sections cited are those of the glTF 2.0 specification (ISO/IEC 12113).</remarks>
internal static class GltfReader
{
    private const uint Magic = 0x46546C67, JsonChunk = 0x4E4F534A, BinaryChunk = 0x004E4942;
    private const int Float = 5126, Byte = 5121, Short = 5123, Int = 5125;
    private const int Triangles = 4, Strip = 5, Fan = 6;
    private const int MostJson = 48 * 1024 * 1024;

    /// <summary>Meshes in nodes, each part of a mesh counted.</summary>
    private const int MostPlacings = 1_000_000;
    private const string Again = "a sound glTF 2.0 file: export it again";

    public static void Read(byte[] file, MeshBuilder into)
    {
        var (json, binary) = file.Length >= 4 && BinaryPrimitives.ReadUInt32LittleEndian(file) == Magic ? Chunks(file) : (file.AsMemory(), null);
        if (json.Length > MostJson)
            throw new MeshFault($"{json.Length / 1024 / 1024} MB of JSON", $"at most {MostJson / 1024 / 1024} MB: export it as .glb, without what is no surface");
        try
        {
            using var document = JsonDocument.Parse(json, new() { MaxDepth = 64, AllowDuplicateProperties = false });
            new Scene(document.RootElement, binary, into).Read();
        }
        catch (JsonException e)
        {
            throw new MeshFault($"its JSON, line {e.LineNumber + 1}: {e.Message.Split('\n')[0]}", Again);
        }
        catch (InvalidOperationException)
        {
            throw new MeshFault("a value in its JSON that is not of the kind that belongs there", Again);
        }
    }

    private static (Memory<byte> Json, Memory<byte>? Binary) Chunks(byte[] file)
    {
        if (file.Length < 20)
            throw new MeshFault($"{file.Length} bytes: too short for a GLB file", Again);
        uint version = Number(file, 4), length = Number(file, 8);
        if (version != 2)
            throw new MeshFault($"version {version} of the format", "version 2");
        if (length != file.Length)
            throw new MeshFault($"{length} bytes announced, and {file.Length} there", Again);
        Memory<byte>? json = null, binary = null;
        for (long at = 12; at + 8 <= file.Length;)
        {
            long size = Number(file, (int)at);
            if (at + 8 + size > file.Length)
                throw new MeshFault("a chunk that reaches beyond the end of the file", Again);
            var chunk = file.AsMemory((int)at + 8, (int)size);
            switch (Number(file, (int)at + 4))
            {
                case JsonChunk when json is null:
                    json = chunk;
                    break;
                case BinaryChunk when binary is null:
                    binary = chunk;
                    break;
            }

            at += 8 + size;
        }

        return (json ?? throw new MeshFault("a GLB file without its JSON", Again), binary);
    }

    private static uint Number(byte[] file, int at) => BinaryPrimitives.ReadUInt32LittleEndian(file.AsSpan(at));

    /// <summary>Column vectors, as the file has them: the first three columns and the shift.</summary>
    private readonly record struct Place(Vector3 X, Vector3 Y, Vector3 Z, Vector3 Shift)
    {
        public static Place None => new(new(1, 0, 0), new(0, 1, 0), new(0, 0, 1), default);

        public Vector3 Of(Vector3 v) => Turned(v) + Shift;

        /// <summary>It mirrors: what was seen from outside is seen from inside (section 3.7.4).</summary>
        public bool Mirrors => Vector3.Dot(Vector3.Cross(X, Y), Z) < 0;

        public static Place operator *(Place outer, Place inner) => new(outer.Turned(inner.X), outer.Turned(inner.Y), outer.Turned(inner.Z), outer.Of(inner.Shift));

        private Vector3 Turned(Vector3 v) => (v.X * X) + (v.Y * Y) + (v.Z * Z);
    }

    private sealed class Scene(JsonElement root, Memory<byte>? binary, MeshBuilder into)
    {
        private readonly Dictionary<int, ReadOnlyMemory<byte>> loaded = [];
        private readonly JsonElement[] nodes = List(root, "nodes"), meshes = List(root, "meshes"), accessors = List(root, "accessors");
        private readonly JsonElement[] views = List(root, "bufferViews"), buffers = List(root, "buffers");

        public void Read()
        {
            if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("asset", out var asset) || !asset.TryGetProperty("version", out var version))
                throw new MeshFault("no asset.version in its JSON", Again);
            if (version.GetString() is not { } v || !v.StartsWith("2.", StringComparison.Ordinal))
                throw new MeshFault($"version {version} of the format", "version 2");
            if (List(root, "extensionsRequired") is [var extension, ..])
                throw new MeshFault($"it needs the extension {extension}", "plain triangles: export without compression and extensions");
            var placings = 0L;
            var seen = new bool[nodes.Length];
            var open = new Stack<(int Node, Place Place)>();
            // A file without a scene is a library of parts (section 3.5.1): all that no other node holds.
            foreach (var node in Roots())
                open.Push((node, Place.None));
            while (open.TryPop(out var next))
            {
                if (seen[next.Node])
                    throw new MeshFault($"the node {next.Node} hangs on two others, or on itself", "a tree of nodes (section 3.5.2)");
                seen[next.Node] = true;
                var node = nodes[next.Node];
                var place = next.Place * PlaceOf(node);
                foreach (var child in Numbers(node, "children", nodes.Length))
                    open.Push((child, place));
                if (!node.TryGetProperty("mesh", out _))
                    continue;
                if (node.TryGetProperty("skin", out _))
                    throw new MeshFault($"the node {next.Node} has a mesh that bends on bones", "rigid meshes: export them in one pose");
                var mesh = At(meshes, Number(node, "mesh"), "mesh");
                placings += mesh.TryGetProperty("primitives", out var primitives) ? primitives.GetArrayLength() : 0;
                if (placings > MostPlacings)
                    throw new MeshFault($"more than {MostPlacings} parts placed", "a scene that is built up less deeply: export it as one mesh");
                foreach (var primitive in List(mesh, "primitives"))
                    Primitive(primitive, place);
            }
        }

        private IEnumerable<int> Roots()
        {
            var scenes = List(root, "scenes");
            if (scenes.Length > 0)
                return Numbers(At(scenes, Number(root, "scene", 0), "scene"), "nodes", nodes.Length);
            var held = nodes.SelectMany(n => Numbers(n, "children", nodes.Length)).ToHashSet();
            return Enumerable.Range(0, nodes.Length).Where(i => !held.Contains(i));
        }

        private void Primitive(JsonElement primitive, Place place)
        {
            var mode = Number(primitive, "mode", Triangles);
            if (mode is not (Triangles or Strip or Fan))
                return;
            if (!primitive.TryGetProperty("attributes", out var attributes) || !attributes.TryGetProperty("POSITION", out _))
                throw new MeshFault("a mesh without positions", Again);
            var positions = Accessor(Number(attributes, "POSITION"), "VEC3", [Float]);
            var indices = primitive.TryGetProperty("indices", out _) ? Accessor(Number(primitive, "indices"), "SCALAR", [Byte, Short, Int]) : (Accessed?)null;
            var count = indices?.Count ?? positions.Count;
            into.Expect(mode == Triangles ? count / 3 : Math.Max(0, count - 2));
            // Only corners in use: many parts may share one long list of them.
            var numbers = new Dictionary<int, int>();
            if (mode == Triangles && count % 3 != 0)
                throw new MeshFault($"{count} corners of triangles", "three for each triangle");
            for (var t = 0; mode == Triangles ? t + 2 < count : t < count - 2; t += mode == Triangles ? 3 : 1)
            {
                int a = mode == Fan ? 0 : t, b = t + 1, c = t + 2;
                // Every second triangle of a strip runs the other way.
                if ((mode == Strip && (t & 1) != 0) != place.Mirrors)
                    (b, c) = (c, b);
                into.Triangle(Corner(a), Corner(b), Corner(c));
            }

            int Corner(int i)
            {
                var number = NumberAt(i);
                if (numbers.TryGetValue(number, out var known))
                    return known;
                var at = positions.At(number);
                var (x, y, z) = place.Of(new(BinaryPrimitives.ReadSingleLittleEndian(at), BinaryPrimitives.ReadSingleLittleEndian(at[4..]), BinaryPrimitives.ReadSingleLittleEndian(at[8..])));
                return numbers[number] = into.Corner(x, y, z);
            }

            int NumberAt(int i)
            {
                if (indices is not { } by)
                    return i;
                var at = by.At(i);
                var number = by.Kind switch { Byte => at[0], Short => BinaryPrimitives.ReadUInt16LittleEndian(at), _ => BinaryPrimitives.ReadUInt32LittleEndian(at) };
                return number < positions.Count ? (int)number : throw new MeshFault($"the corner {number} of a triangle", $"a corner below {positions.Count}");
            }
        }

        private readonly record struct Accessed(ReadOnlyMemory<byte> Bytes, int Count, int Stride, int Size, int Kind)
        {
            public ReadOnlySpan<byte> At(int i) => Bytes.Span.Slice(i * Stride, Size);
        }

        /// <summary>Section 3.6.2: everything it says is held against the bytes there are.</summary>
        private Accessed Accessor(int number, string type, int[] kinds)
        {
            var accessor = At(accessors, number, "accessor");
            var kind = Number(accessor, "componentType");
            if (!accessor.TryGetProperty("type", out var named) || named.GetString() != type || !kinds.Contains(kind))
                throw new MeshFault($"the accessor {number} of type {named} and component {kind}", $"{type} of {string.Join(" or ", kinds)}");
            if (accessor.TryGetProperty("sparse", out _) || !accessor.TryGetProperty("bufferView", out _))
                throw new MeshFault($"the accessor {number} is sparse, or has no data", "plain data: export without morphing");
            var view = At(views, Number(accessor, "bufferView"), "buffer view");
            var bytes = Buffer(Number(view, "buffer"));
            long viewAt = Number(view, "byteOffset", 0), viewSize = Number(view, "byteLength");
            var size = (kind switch { Byte => 1, Short => 2, _ => 4 }) * (type == "VEC3" ? 3 : 1);
            long stride = Number(view, "byteStride", size), at = Number(accessor, "byteOffset", 0), count = Number(accessor, "count");
            if (stride < size || stride > 252 || viewAt + viewSize > bytes.Length || count < 1 || at + (stride * (count - 1)) + size > viewSize)
                throw new MeshFault($"the accessor {number} of {count} reaches beyond its {viewSize} bytes, and the buffer has {bytes.Length}", Again);
            return new(bytes.Slice((int)(viewAt + at), (int)(viewSize - at)), (int)count, (int)stride, size, kind);
        }

        private ReadOnlyMemory<byte> Buffer(int number)
        {
            if (loaded.TryGetValue(number, out var known))
                return known;
            var buffer = At(buffers, number, "buffer");
            ReadOnlyMemory<byte> bytes;
            if (!buffer.TryGetProperty("uri", out var uri))
            {
                bytes = number == 0 && binary is { } own ? own : throw new MeshFault($"the buffer {number} has no data", Again);
            }
            else
            {
                var text = uri.GetString() ?? "";
                var comma = text.IndexOf(',', StringComparison.Ordinal);
                if (!text.StartsWith("data:", StringComparison.Ordinal) || comma < 0 || !text[..comma].EndsWith(";base64", StringComparison.Ordinal))
                    throw new MeshFault($"its data stands in another file, \"{text}\"", "all data inside: export it as .glb");
                try
                {
                    bytes = Convert.FromBase64String(text[(comma + 1)..]);
                }
                catch (FormatException)
                {
                    throw new MeshFault($"the buffer {number} is not written in base64", Again);
                }
            }

            var length = Number(buffer, "byteLength");
            if (length > bytes.Length)
                throw new MeshFault($"the buffer {number} of {length} bytes, and {bytes.Length} there", Again);
            return loaded[number] = bytes[..length];
        }

        private static Place PlaceOf(JsonElement node)
        {
            if (Floats(node, "matrix", 16) is { } m)
                return new(new(m[0], m[1], m[2]), new(m[4], m[5], m[6]), new(m[8], m[9], m[10]), new(m[12], m[13], m[14]));
            var t = Floats(node, "translation", 3) ?? [0, 0, 0];
            var r = Floats(node, "rotation", 4) ?? [0, 0, 0, 1];
            var s = Floats(node, "scale", 3) ?? [1, 1, 1];
            var size = Math.Sqrt((r[0] * r[0]) + (r[1] * r[1]) + (r[2] * r[2]) + (r[3] * r[3]));
            if (!(Math.Abs(size - 1) < 1e-2))
                throw new MeshFault("a rotation that is no unit quaternion", Again);
            var (x, y, z, w) = (r[0] / size, r[1] / size, r[2] / size, r[3] / size);
            return new(
                s[0] * new Vector3(1 - (2 * ((y * y) + (z * z))), 2 * ((x * y) + (w * z)), 2 * ((x * z) - (w * y))),
                s[1] * new Vector3(2 * ((x * y) - (w * z)), 1 - (2 * ((x * x) + (z * z))), 2 * ((y * z) + (w * x))),
                s[2] * new Vector3(2 * ((x * z) + (w * y)), 2 * ((y * z) - (w * x)), 1 - (2 * ((x * x) + (y * y)))),
                new(t[0], t[1], t[2]));
        }

        private static double[]? Floats(JsonElement of, string name, int count)
        {
            if (!of.TryGetProperty(name, out var list))
                return null;
            double[] values = [.. list.EnumerateArray().Select(e => e.TryGetDouble(out var v) ? v : double.NaN)];
            return values.Length == count && values.All(double.IsFinite) ? values : throw new MeshFault($"\"{name}\" of a node", $"{count} numbers");
        }

        private static JsonElement[] List(JsonElement of, string name) => of.TryGetProperty(name, out var list) ? [.. list.EnumerateArray()] : [];

        private static IEnumerable<int> Numbers(JsonElement of, string name, int below) => List(of, name).Select(e =>
            e.TryGetInt32(out var n) && n >= 0 && n < below ? n : throw new MeshFault($"the number {e} in \"{name}\"", $"one below {below}"));

        private static JsonElement At(JsonElement[] list, int number, string what) =>
            number < list.Length ? list[number] : throw new MeshFault($"the {what} {number}", $"one of the {list.Length} there are");

        private static int Number(JsonElement of, string name, int? otherwise = null)
        {
            if (!of.TryGetProperty(name, out var value))
                return otherwise ?? throw new MeshFault($"no \"{name}\" in its JSON where one belongs", Again);
            return value.TryGetInt32(out var number) && number >= 0 ? number : throw new MeshFault(string.Create(CultureInfo.InvariantCulture, $"\"{name}\" is {value}"), "a whole number from 0, below 2^31");
        }
    }
}
