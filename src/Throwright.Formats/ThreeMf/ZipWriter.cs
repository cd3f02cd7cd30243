using System.Buffers.Binary;
using System.Text;
using Throwright.Formats.Packing;

namespace Throwright.Formats.ThreeMf;

/// <summary>Packs files into a zip archive: the same files give the same bytes, on every system.</summary>
/// <remarks>Entries are stored or deflated by <see cref="Deflate"/>, and all bear the earliest date the format knows.</remarks>
public static class ZipWriter
{
    private const ushort Version = 20, Stored = 0, Deflated = 8, Utf8Names = 0x0800;

    /// <summary>1 January 1980, the zero of the format's calendar.</summary>
    private const ushort Day = (1 << 5) | 1;

    private static readonly uint[] CrcTable = [.. Enumerable.Range(0, 256).Select(i => CrcOfByte((uint)i))];

    public static byte[] Pack(IReadOnlyList<(string Name, byte[] Content)> files, bool deflate = true)
    {
        var (archive, directory) = (new List<byte>(), new List<byte>());
        foreach (var (name, content) in files)
        {
            var title = Encoding.UTF8.GetBytes(name);
            var packed = deflate ? Deflate.Pack(content) : content;
            var method = Deflated;
            if (packed.Length >= content.Length)
                (packed, method) = (content, Stored);
            var head = new byte[26];
            var at = head.AsSpan();
            Put16(ref at, Version);
            Put16(ref at, Utf8Names);
            Put16(ref at, method);
            Put16(ref at, 0);
            Put16(ref at, Day);
            Put32(ref at, Crc(content));
            Put32(ref at, (uint)packed.Length);
            Put32(ref at, (uint)content.Length);
            Put16(ref at, (ushort)title.Length);
            Put16(ref at, 0);
            var place = (uint)archive.Count;
            archive.AddRange("PK\x3\x4"u8);
            archive.AddRange(head);
            archive.AddRange(title);
            archive.AddRange(packed);
            directory.AddRange("PK\x1\x2"u8);
            directory.AddRange(Number16(Version));
            directory.AddRange(head);
            // Comment, disk, attributes: none.
            directory.AddRange(new byte[10]);
            directory.AddRange(Number32(place));
            directory.AddRange(title);
        }

        var start = (uint)archive.Count;
        archive.AddRange(directory);
        archive.AddRange("PK\x5\x6"u8);
        archive.AddRange(new byte[4]);
        archive.AddRange(Number16((ushort)files.Count));
        archive.AddRange(Number16((ushort)files.Count));
        archive.AddRange(Number32((uint)directory.Count));
        archive.AddRange(Number32(start));
        archive.AddRange(new byte[2]);
        return [.. archive];
    }

    private static void Put16(ref Span<byte> at, ushort value)
    {
        BinaryPrimitives.WriteUInt16LittleEndian(at, value);
        at = at[2..];
    }

    private static void Put32(ref Span<byte> at, uint value)
    {
        BinaryPrimitives.WriteUInt32LittleEndian(at, value);
        at = at[4..];
    }

    private static byte[] Number16(ushort value) => [(byte)value, (byte)(value >> 8)];

    private static byte[] Number32(uint value) => [(byte)value, (byte)(value >> 8), (byte)(value >> 16), (byte)(value >> 24)];

    internal static uint Crc(ReadOnlySpan<byte> content)
    {
        var crc = uint.MaxValue;
        foreach (var b in content)
            crc = CrcTable[(byte)(crc ^ b)] ^ (crc >> 8);
        return ~crc;
    }

    private static uint CrcOfByte(uint value)
    {
        for (var bit = 0; bit < 8; bit++)
            value = (value & 1) != 0 ? (value >> 1) ^ 0xEDB88320 : value >> 1;
        return value;
    }
}
