using System.Buffers.Binary;
using System.Text;
using Throwright.Formats.ThreeMf;

namespace Throwright.Formats.Tests.MeshFiles;

/// <summary>Small mesh files written by hand.</summary>
internal static class MeshFileCases
{
    /// <summary>The corner of a cube, volume 1/6.</summary>
    public const string Tetrahedron = """<object id="1"><mesh><vertices><vertex x="0" y="0" z="0"/><vertex x="1" y="0" z="0"/><vertex x="0" y="1" z="0"/><vertex x="0" y="0" z="1"/></vertices><triangles><triangle v1="0" v2="2" v3="1"/><triangle v1="0" v2="1" v3="3"/><triangle v1="0" v2="3" v3="2"/><triangle v1="1" v2="2" v3="3"/></triangles></mesh></object>""";

    public static byte[] ThreeMf(string resources, string build, string attributes = "unit=\"millimeter\"", string before = "") => ZipWriter.Pack(
    [
        (ThreeMfWriter.ModelPath, Encoding.UTF8.GetBytes($"""<?xml version="1.0" encoding="UTF-8"?>{before}<model {attributes} xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02"><resources>{resources}</resources><build>{build}</build></model>""")),
    ]);

    /// <summary>The same tetrahedron: four corners and twelve numbers of two bytes.</summary>
    public static byte[] TetrahedronBytes()
    {
        var bytes = new byte[72];
        foreach (var (at, value) in ((int, float)[])[(3, 1), (7, 1), (11, 1)])
            BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(4 * at), value);
        ushort[] numbers = [0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3];
        for (var i = 0; i < numbers.Length; i++)
            BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(48 + (2 * i)), numbers[i]);
        return bytes;
    }

    public const string Accessors = """ "accessors": [ { "bufferView": 0, "componentType": 5126, "count": 4, "type": "VEC3" }, { "bufferView": 1, "componentType": 5123, "count": 12, "type": "SCALAR" } ]""";
    public const string Views = """ "bufferViews": [ { "buffer": 0, "byteLength": 48 }, { "buffer": 0, "byteOffset": 48, "byteLength": 24 } ]""";
    public const string Meshes = """ "meshes": [ { "primitives": [ { "attributes": { "POSITION": 0 }, "indices": 1 } ] } ]""";
    public const string Nodes = """ "nodes": [ { "mesh": 0 } ]""";

    public static byte[] Gltf(bool glb, string nodes = Nodes, string accessors = Accessors, string views = Views, string meshes = Meshes, string more = "", byte[]? data = null)
    {
        data ??= TetrahedronBytes();
        var buffer = glb ? $$"""{ "byteLength": {{data.Length}} }""" : $$"""{ "byteLength": {{data.Length}}, "uri": "data:application/octet-stream;base64,{{Convert.ToBase64String(data)}}" }""";
        var json = $$"""{ "asset": { "version": "2.0" }, {{nodes}}, {{accessors}}, {{views}}, {{meshes}}, {{more}} "buffers": [ {{buffer}} ] }""";
        return glb ? Glb(json, data) : Encoding.UTF8.GetBytes(json);
    }

    public static byte[] Glb(string json, byte[] data)
    {
        var text = Encoding.UTF8.GetBytes(json + new string(' ', (4 - (Encoding.UTF8.GetByteCount(json) % 4)) % 4));
        var file = new List<byte>();
        void Put(uint number) => file.AddRange(BitConverter.GetBytes(number));
        Put(0x46546C67);
        Put(2);
        Put((uint)(12 + 8 + text.Length + 8 + data.Length));
        Put((uint)text.Length);
        Put(0x4E4F534A);
        file.AddRange(text);
        Put((uint)data.Length);
        Put(0x004E4942);
        file.AddRange(data);
        return [.. file];
    }
}
