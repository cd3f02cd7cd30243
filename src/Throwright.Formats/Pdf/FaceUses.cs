using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Throwright.Formats.Fonts;

namespace Throwright.Formats.Pdf;

/// <summary>Which letters of which faces a document uses.</summary>
internal sealed class FaceUses
{
    private readonly List<FaceUse> uses = [];

    public IReadOnlyList<FaceUse> Uses => uses;

    public FaceUse Of(Face face)
    {
        var use = uses.Find(u => u.Face == face);
        if (use is null)
            uses.Add(use = new(face, $"F{uses.Count + 1}"));
        return use;
    }
}

/// <summary>One face, and its letters in the order of their first use.</summary>
internal sealed class FaceUse(Face face, string key)
{
    private readonly Dictionary<(int Glyph, Rune Meaning), int> places = [];
    private readonly List<(int Glyph, Rune? Meaning)> letters = [(0, null)];

    public Face Face => face;

    /// <summary>The face's name on the pages.</summary>
    public string Key => key;

    public IReadOnlyList<int> Glyphs => letters.ConvertAll(l => l.Glyph);

    /// <summary>The code of a letter. A glyph that stands for two characters gets two.</summary>
    public int Code(SetLetter letter)
    {
        var wanted = (letter.Glyph, letter.Meaning);
        if (!places.TryGetValue(wanted, out var place))
        {
            places[wanted] = place = letters.Count;
            letters.Add((letter.Glyph, letter.Meaning));
        }

        return place;
    }

    /// <summary>Six capitals that differ from subset to subset (ISO 32000-1, 9.6.4).</summary>
    public string Tag() =>
        string.Concat(SHA256.HashData(Encoding.ASCII.GetBytes(string.Join(' ', Glyphs))).Take(6).Select(b => (char)('A' + (b % 26))));

    /// <summary>The table from codes to characters.</summary>
    public string Meanings()
    {
        var map = new StringBuilder("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n");
        // At most 100 lines to a block.
        for (var from = 1; from < letters.Count; from += 100)
        {
            var count = Math.Min(100, letters.Count - from);
            map.Append(CultureInfo.InvariantCulture, $"{count} beginbfchar\n");
            for (var i = from; i < from + count; i++)
                map.Append(CultureInfo.InvariantCulture, $"<{i:X4}> <{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(letters[i].Meaning!.Value.ToString()))}>\n");
            map.Append("endbfchar\n");
        }

        return map.Append("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n").ToString();
    }
}
