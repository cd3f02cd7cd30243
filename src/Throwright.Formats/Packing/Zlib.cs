namespace Throwright.Formats.Packing;

/// <summary>Packs bytes as a zlib stream (RFC 1950) around <see cref="Deflate"/>.</summary>
internal static class Zlib
{
    public static byte[] Pack(ReadOnlySpan<byte> content)
    {
        uint a = 1, b = 0;
        foreach (var value in content)
        {
            a = (a + value) % 65521;
            b = (b + a) % 65521;
        }

        // Deflate, window of 32 kB, no preset dictionary; the two bytes are a multiple of 31.
        return [0x78, 0x01, .. Deflate.Pack(content), (byte)(b >> 8), (byte)b, (byte)(a >> 8), (byte)a];
    }
}
