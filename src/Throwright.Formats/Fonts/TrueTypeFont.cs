using System.Buffers.Binary;
using System.Text;

namespace Throwright.Formats.Fonts;

/// <summary>A font file with quadratic outlines (ISO/IEC 14496-22, Open Font Format): what setting and embedding text needs of it.</summary>
internal sealed class TrueTypeFont
{
    /// <summary>Tables that a font embedded in a PDF keeps (ISO 32000-1, 9.9).</summary>
    private static readonly string[] Kept = ["cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "prep"];

    private readonly byte[] file;
    private readonly Dictionary<string, (int At, int Length)> tables = [];
    private readonly Dictionary<int, int> glyphs = [];
    private readonly Dictionary<string, int> named = [];
    private readonly int longMetrics;
    private readonly bool longPlaces;

    public TrueTypeFont(byte[] file)
    {
        this.file = file;
        for (var i = 0; i < U16(4); i++)
        {
            var at = 12 + (16 * i);
            tables[Encoding.ASCII.GetString(file, at, 4)] = ((int)U32(at + 8), (int)U32(at + 12));
        }

        int head = tables["head"].At, hhea = tables["hhea"].At;
        UnitsPerEm = U16(head + 18);
        Bounds = [S16(head + 36), S16(head + 38), S16(head + 40), S16(head + 42)];
        longPlaces = S16(head + 50) == 1;
        (Ascent, Descent) = (S16(hhea + 4), S16(hhea + 6));
        longMetrics = U16(hhea + 34);
        GlyphCount = U16(tables["maxp"].At + 4);
        ReadCharacters();
        ReadNames();
    }

    public int UnitsPerEm { get; }

    public int Ascent { get; }

    public int Descent { get; }

    public int[] Bounds { get; }

    public int GlyphCount { get; }

    /// <summary>The glyph of a character, or 0.</summary>
    public int Glyph(int character) => glyphs.GetValueOrDefault(character);

    /// <summary>A glyph by its name, e.g. "one.tf", or 0.</summary>
    public int Glyph(string name) => named.GetValueOrDefault(name);

    /// <summary>Advance in units of the em square.</summary>
    public int Advance(int glyph) => U16(tables["hmtx"].At + (4 * Math.Min(glyph, longMetrics - 1)));

    /// <summary>A font file of these glyphs alone, numbered in this order; the first must be 0.</summary>
    public byte[] Subset(IReadOnlyList<int> wanted)
    {
        var order = new List<int>(wanted);
        var places = new Dictionary<int, int>();
        for (var i = 0; i < order.Count; i++)
            places[order[i]] = i;
        MemoryStream outlines = new(), starts = new(), metrics = new();
        // Parts of composed glyphs (an accent on a letter) are added at the end as they turn up.
        for (var i = 0; i < order.Count; i++)
        {
            Put32(starts, (uint)outlines.Length);
            var outline = Outline(order[i]).ToArray();
            Renumber(outline, order, places);
            outlines.Write(outline);
            while (outlines.Length % 4 != 0)
                outlines.WriteByte(0);
            Put16(metrics, Advance(order[i]));
            Put16(metrics, Bearing(order[i]));
        }

        Put32(starts, (uint)outlines.Length);
        var made = new Dictionary<string, byte[]>();
        foreach (var name in Kept.Where(tables.ContainsKey))
            made[name] = Table(name).ToArray();
        (made["glyf"], made["loca"], made["hmtx"]) = (outlines.ToArray(), starts.ToArray(), metrics.ToArray());
        BinaryPrimitives.WriteInt16BigEndian(made["head"].AsSpan(50), 1);
        BinaryPrimitives.WriteUInt32BigEndian(made["head"].AsSpan(8), 0);
        BinaryPrimitives.WriteUInt16BigEndian(made["hhea"].AsSpan(34), (ushort)order.Count);
        BinaryPrimitives.WriteUInt16BigEndian(made["maxp"].AsSpan(4), (ushort)order.Count);
        return Assemble(made);
    }

    private static byte[] Assemble(Dictionary<string, byte[]> made)
    {
        var names = made.Keys.Order(StringComparer.Ordinal).ToArray();
        var power = 1;
        while (2 << power <= names.Length)
            power++;
        using var font = new MemoryStream();
        Put32(font, 0x00010000);
        Put16(font, names.Length);
        Put16(font, 16 << power);
        Put16(font, power);
        Put16(font, (16 * names.Length) - (16 << power));
        var at = 12 + (16 * names.Length);
        var headAt = 0;
        foreach (var name in names)
        {
            if (name == "head")
                headAt = at;
            font.Write(Encoding.ASCII.GetBytes(name));
            Put32(font, Sum(made[name]));
            Put32(font, (uint)at);
            Put32(font, (uint)made[name].Length);
            at += (made[name].Length + 3) / 4 * 4;
        }

        foreach (var name in names)
        {
            font.Write(made[name]);
            while (font.Length % 4 != 0)
                font.WriteByte(0);
        }

        var bytes = font.ToArray();
        BinaryPrimitives.WriteUInt32BigEndian(bytes.AsSpan(headAt + 8), 0xB1B0AFBA - Sum(bytes));
        return bytes;
    }

    /// <summary>Gives the parts of a composed glyph their new numbers.</summary>
    private static void Renumber(byte[] outline, List<int> order, Dictionary<int, int> places)
    {
        const int wide = 1, scaled = 8, more = 32, scaledTwice = 64, matrix = 128;
        if (outline.Length == 0 || BinaryPrimitives.ReadInt16BigEndian(outline) >= 0)
            return;
        int flags;
        var at = 10;
        do
        {
            flags = BinaryPrimitives.ReadUInt16BigEndian(outline.AsSpan(at));
            int part = BinaryPrimitives.ReadUInt16BigEndian(outline.AsSpan(at + 2));
            if (!places.TryGetValue(part, out var place))
            {
                places[part] = place = order.Count;
                order.Add(part);
            }

            BinaryPrimitives.WriteUInt16BigEndian(outline.AsSpan(at + 2), (ushort)place);
            at += 4 + ((flags & wide) != 0 ? 4 : 2) + ((flags & scaled) != 0 ? 2 : (flags & scaledTwice) != 0 ? 4 : (flags & matrix) != 0 ? 8 : 0);
        }
        while ((flags & more) != 0);
    }

    private ReadOnlySpan<byte> Outline(int glyph)
    {
        var loca = tables["loca"].At;
        var (from, to) = longPlaces
            ? ((int)U32(loca + (4 * glyph)), (int)U32(loca + (4 * glyph) + 4))
            : (2 * U16(loca + (2 * glyph)), 2 * U16(loca + (2 * glyph) + 2));
        return file.AsSpan(tables["glyf"].At + from, to - from);
    }

    private int Bearing(int glyph)
    {
        var hmtx = tables["hmtx"].At;
        return glyph < longMetrics ? U16(hmtx + (4 * glyph) + 2) : U16(hmtx + (4 * longMetrics) + (2 * (glyph - longMetrics)));
    }

    private void ReadCharacters()
    {
        var cmap = tables["cmap"].At;
        for (var i = 0; i < U16(cmap + 2); i++)
        {
            var at = cmap + (int)U32(cmap + 4 + (8 * i) + 4);
            // Format 12 reaches beyond the first 65 536 characters and holds them too.
            if (U16(at) != 12)
                continue;
            for (var g = 0; g < U32(at + 12); g++)
            {
                var group = at + 16 + (12 * g);
                int first = (int)U32(group), last = (int)U32(group + 4), glyph = (int)U32(group + 8);
                for (var c = first; c <= last; c++)
                    glyphs[c] = glyph + c - first;
            }

            return;
        }

        throw new ArgumentException("The font has no character table of format 12.");
    }

    private void ReadNames()
    {
        // Only names of its own are read: the 258 usual ones belong to characters.
        const int usual = 258;
        var (post, length) = tables["post"];
        if (U32(post) != 0x00020000)
            return;
        var names = new List<string>();
        for (var at = post + 34 + (2 * GlyphCount); at < post + length; at += 1 + file[at])
            names.Add(Encoding.ASCII.GetString(file, at + 1, file[at]));
        for (var glyph = 0; glyph < GlyphCount; glyph++)
        {
            var index = U16(post + 34 + (2 * glyph)) - usual;
            if (index >= 0)
                named[names[index]] = glyph;
        }
    }

    private ReadOnlySpan<byte> Table(string name) => file.AsSpan(tables[name].At, tables[name].Length);

    private static uint Sum(ReadOnlySpan<byte> bytes)
    {
        uint sum = 0;
        for (var i = 0; i < bytes.Length; i++)
            sum += (uint)bytes[i] << (8 * (3 - (i % 4)));
        return sum;
    }

    private int U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(file.AsSpan(at));

    private int S16(int at) => BinaryPrimitives.ReadInt16BigEndian(file.AsSpan(at));

    private uint U32(int at) => BinaryPrimitives.ReadUInt32BigEndian(file.AsSpan(at));

    private static void Put16(MemoryStream to, int value)
    {
        to.WriteByte((byte)(value >> 8));
        to.WriteByte((byte)value);
    }

    private static void Put32(MemoryStream to, uint value)
    {
        Put16(to, (int)(value >> 16));
        Put16(to, (int)(value & 0xFFFF));
    }
}
