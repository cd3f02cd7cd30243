using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;

namespace Throwright.Formats.ThreeMf;

/// <summary>Reads single files out of a zip archive; sizes that the archive states are never believed.</summary>
public sealed class ZipReader
{
    private const int MostEntries = 1000, TailBytes = 22, EntryBytes = 46, HeadBytes = 30;

    private readonly byte[] file;
    private readonly Dictionary<string, Entry> entries = new(StringComparer.OrdinalIgnoreCase);

    private ZipReader(byte[] file) => this.file = file;

    private readonly record struct Entry(ushort Flags, ushort Method, uint Crc, uint Packed, uint Head);

    public IEnumerable<string> Names => entries.Keys;

    /// <summary>Null, with the reason: no archive that can be read.</summary>
    public static ZipReader? Open(byte[] file, out string problem)
    {
        var tail = file.AsSpan().LastIndexOf("PK\x5\x6"u8);
        problem = "the end of the archive is missing: the file is cut short, or no zip archive";
        if (tail < 0 || tail + TailBytes > file.Length)
            return null;
        var count = BinaryPrimitives.ReadUInt16LittleEndian(file.AsSpan(tail + 10));
        long at = BinaryPrimitives.ReadUInt32LittleEndian(file.AsSpan(tail + 16));
        if (count > MostEntries || at == uint.MaxValue)
        {
            problem = $"an archive of {count} files or a very large one; at most {MostEntries} are read";
            return null;
        }

        var zip = new ZipReader(file);
        for (var i = 0; i < count; i++)
        {
            problem = $"the list of the archive breaks off at file {i + 1} of {count}";
            if (at + EntryBytes > file.Length || !file.AsSpan((int)at, 4).SequenceEqual("PK\x1\x2"u8))
                return null;
            var entry = file.AsSpan((int)at);
            int name = Short(entry[28..]), rest = Short(entry[30..]) + Short(entry[32..]);
            if (at + EntryBytes + name + rest > file.Length)
                return null;
            var title = Encoding.UTF8.GetString(entry.Slice(EntryBytes, name)).Replace('\\', '/').TrimStart('/');
            problem = $"the archive holds two files of the name \"{Shown(title)}\"";
            if (!zip.entries.TryAdd(title, new(Short(entry[8..]), Short(entry[10..]), Long(entry[16..]), Long(entry[20..]), Long(entry[42..]))))
                return null;
            at += EntryBytes + name + rest;
        }

        problem = "";
        return zip;
    }

    public bool Holds(string name) => entries.ContainsKey(name);

    /// <summary>One file unpacked; null, with the reason: not there, damaged, or larger than <paramref name="most"/> bytes.</summary>
    public byte[]? Read(string name, int most, out string problem)
    {
        if (!entries.TryGetValue(name, out var entry))
        {
            problem = $"there is no \"{Shown(name)}\" in the archive";
            return null;
        }

        problem = $"\"{Shown(name)}\" in the archive is damaged or cut short";
        if (entry.Head + (long)HeadBytes > file.Length || !file.AsSpan((int)entry.Head, 4).SequenceEqual("PK\x3\x4"u8))
            return null;
        var head = file.AsSpan((int)entry.Head);
        var start = entry.Head + (long)HeadBytes + Short(head[26..]) + Short(head[28..]);
        if (start + entry.Packed > file.Length)
            return null;
        if ((entry.Flags & 1) != 0 || entry.Method is not (0 or 8))
        {
            problem = $"\"{Shown(name)}\" in the archive is locked, or packed in a way that is not read";
            return null;
        }

        using var packed = new MemoryStream(file, (int)start, (int)entry.Packed, writable: false);
        using Stream plain = entry.Method == 0 ? packed : new DeflateStream(packed, CompressionMode.Decompress);
        using var content = new MemoryStream();
        var part = new byte[64 * 1024];
        try
        {
            for (int read; (read = plain.Read(part)) > 0;)
            {
                // Counted as it comes: what the archive says of its size is a promise.
                if (content.Length + read > most)
                {
                    problem = $"\"{Shown(name)}\" in the archive is larger than {most / 1024 / 1024} MB when unpacked";
                    return null;
                }

                content.Write(part, 0, read);
            }
        }
        catch (InvalidDataException)
        {
            return null;
        }

        var bytes = content.ToArray();
        if (ZipWriter.Crc(bytes) != entry.Crc)
            return null;
        problem = "";
        return bytes;
    }

    private static string Shown(string name) => new([.. name.Take(60).Select(c => char.IsControl(c) ? '?' : c)]);

    private static ushort Short(ReadOnlySpan<byte> at) => BinaryPrimitives.ReadUInt16LittleEndian(at);

    private static uint Long(ReadOnlySpan<byte> at) => BinaryPrimitives.ReadUInt32LittleEndian(at);
}
