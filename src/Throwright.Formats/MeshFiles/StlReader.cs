using System.Buffers.Binary;

namespace Throwright.Formats.MeshFiles;

/// <summary>STL, binary or text.</summary>
internal static class StlReader
{
    private const int HeadBytes = 80, TriangleBytes = 50;

    public static void Read(byte[] file, MeshBuilder into)
    {
        // The length decides: many binary files begin with the word of the text format.
        if (file.Length >= HeadBytes + 4 && BinaryPrimitives.ReadUInt32LittleEndian(file.AsSpan(HeadBytes)) is var count && HeadBytes + 4 + ((long)TriangleBytes * count) == file.Length)
        {
            Binary(file, count, into);
            return;
        }

        var text = new Words(file);
        if (text.Next() is var first && first.SequenceEqual("solid"u8) && IsText(file))
        {
            Text(text, into);
            return;
        }

        throw file.Length < HeadBytes + 4
            ? new MeshFault($"{file.Length} bytes: too short for an STL file", "84 bytes and 50 for each triangle, or text that begins with \"solid\"")
            : new MeshFault(
                $"{BinaryPrimitives.ReadUInt32LittleEndian(file.AsSpan(HeadBytes))} triangles announced, and {file.Length} bytes",
                "84 bytes and 50 for each triangle: the file is cut short or damaged, export it again");
    }

    private static void Binary(ReadOnlySpan<byte> file, uint count, MeshBuilder into)
    {
        into.Expect(count);
        for (var i = 0; i < count; i++)
        {
            // The normal is left out: the corners' order says the same.
            var at = file.Slice(HeadBytes + 4 + (TriangleBytes * i) + 12, 36);
            var a = Corner(at, into);
            var b = Corner(at[12..], into);
            into.Triangle(a, b, Corner(at[24..], into));
        }
    }

    private static int Corner(ReadOnlySpan<byte> at, MeshBuilder into) => into.CornerAt(
        BinaryPrimitives.ReadSingleLittleEndian(at), BinaryPrimitives.ReadSingleLittleEndian(at[4..]), BinaryPrimitives.ReadSingleLittleEndian(at[8..]));

    private static bool IsText(ReadOnlySpan<byte> file) => file[..Math.Min(file.Length, 4096)].IndexOf((byte)0) < 0;

    private static void Text(Words text, MeshBuilder into)
    {
        text.SkipLine();
        Span<int> corner = stackalloc int[3];
        while (true)
        {
            var word = text.Next();
            if (word.SequenceEqual("endsolid"u8))
            {
                text.SkipLine();
                word = text.Next();
                if (word.IsEmpty)
                    return;
                if (!word.SequenceEqual("solid"u8))
                    throw text.Fault("solid, or the end of the file");
                text.SkipLine();
                continue;
            }

            if (!word.SequenceEqual("facet"u8))
                throw text.Fault("facet or endsolid");
            text.Must("normal"u8, "normal");
            for (var i = 0; i < 3; i++)
                text.Next();
            text.Must("outer"u8, "outer loop");
            text.Must("loop"u8, "outer loop");
            for (var i = 0; i < 3; i++)
            {
                text.Must("vertex"u8, "vertex");
                var (x, y, z) = (text.Number(), text.Number(), text.Number());
                corner[i] = into.CornerAt(x, y, z);
            }

            text.Must("endloop"u8, "endloop");
            text.Must("endfacet"u8, "endfacet");
            into.Triangle(corner[0], corner[1], corner[2]);
        }
    }
}
