namespace Throwright.Formats.Packing;

/// <summary>Packs bytes as one deflate block with the fixed codes (RFC 1951, 3.2.6).</summary>
/// <remarks>
/// The library's own packer is free to choose other bytes in its next version or on another processor; this one is not.
/// It packs less tightly.
/// </remarks>
internal static class Deflate
{
    private const int Window = 32768, Longest = 258, Shortest = 3, Tries = 32;

    // Lengths 3..258 and distances 1..32768 by their first value and number of extra bits (RFC 1951, 3.2.5).
    private static readonly (int First, int Extra)[] Lengths = Codes(3, [0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5]);
    private static readonly (int First, int Extra)[] Distances =
        Codes(1, [0, 0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7, 8, 8, 9, 9, 10, 10, 11, 11, 12, 12, 13, 13]);

    public static byte[] Pack(ReadOnlySpan<byte> content)
    {
        var bits = new Bits();
        bits.Put(1, 1);
        bits.Put(1, 2);
        var heads = new Dictionary<int, int>();
        var before = new int[content.Length];
        for (var at = 0; at < content.Length;)
        {
            var (length, distance) = Match(content, at, heads, before);
            if (length >= Shortest)
                PutMatch(bits, length, distance);
            else
                PutSymbol(bits, content[at]);
            for (var end = at + Math.Max(1, length); at < end; at++)
            {
                if (at + Shortest > content.Length)
                    continue;
                var key = Key(content, at);
                before[at] = heads.GetValueOrDefault(key, -1);
                heads[key] = at;
            }
        }

        PutSymbol(bits, 256);
        return bits.ToArray();
    }

    private static (int Length, int Distance) Match(ReadOnlySpan<byte> content, int at, Dictionary<int, int> heads, int[] before)
    {
        var best = (Length: 0, Distance: 0);
        if (at + Shortest > content.Length)
            return best;
        var most = Math.Min(Longest, content.Length - at);
        var place = heads.GetValueOrDefault(Key(content, at), -1);
        for (var tries = 0; place >= 0 && at - place <= Window && tries < Tries; place = before[place], tries++)
        {
            var length = 0;
            while (length < most && content[place + length] == content[at + length])
                length++;
            if (length > best.Length)
                best = (length, at - place);
        }

        return best.Length >= Shortest ? best : (0, 0);
    }

    private static int Key(ReadOnlySpan<byte> content, int at) => content[at] | (content[at + 1] << 8) | (content[at + 2] << 16);

    private static void PutMatch(Bits bits, int length, int distance)
    {
        // 258 has a code of its own.
        var code = length == Longest ? 28 : Last(Lengths, length);
        PutSymbol(bits, 257 + code);
        if (code < 28)
            bits.Put(length - Lengths[code].First, Lengths[code].Extra);
        code = Last(Distances, distance);
        bits.PutCode(code, 5);
        bits.Put(distance - Distances[code].First, Distances[code].Extra);
    }

    private static void PutSymbol(Bits bits, int symbol)
    {
        switch (symbol)
        {
            case < 144: bits.PutCode(0x30 + symbol, 8); break;
            case < 256: bits.PutCode(0x190 + symbol - 144, 9); break;
            case < 280: bits.PutCode(symbol - 256, 7); break;
            default: bits.PutCode(0xC0 + symbol - 280, 8); break;
        }
    }

    private static int Last((int First, int Extra)[] codes, int value)
    {
        var code = codes.Length - 1;
        while (codes[code].First > value)
            code--;
        return code;
    }

    private static (int First, int Extra)[] Codes(int first, int[] extras)
    {
        var codes = new (int First, int Extra)[extras.Length];
        for (var i = 0; i < extras.Length; i++)
        {
            codes[i] = (first, extras[i]);
            first += 1 << extras[i];
        }

        return codes;
    }

    /// <summary>Bits into bytes, the lowest first.</summary>
    private sealed class Bits
    {
        private readonly List<byte> bytes = [];
        private int held, count;

        public void Put(int value, int width)
        {
            for (var i = 0; i < width; i++)
            {
                held |= ((value >> i) & 1) << count;
                if (++count < 8)
                    continue;
                bytes.Add((byte)held);
                (held, count) = (0, 0);
            }
        }

        /// <summary>Codes go highest bit first.</summary>
        public void PutCode(int code, int width)
        {
            for (var i = width - 1; i >= 0; i--)
                Put(code >> i, 1);
        }

        public byte[] ToArray()
        {
            if (count > 0)
                bytes.Add((byte)held);
            (held, count) = (0, 0);
            return [.. bytes];
        }
    }
}
