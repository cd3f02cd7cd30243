using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Throwright.Formats.Drawing;
using Throwright.Formats.Fonts;
using Throwright.Formats.Packing;

namespace Throwright.Formats.Pdf;

/// <summary>Writes drawings as PDF 1.7 (ISO 32000-1) at true size, one to a page.</summary>
/// <remarks>
/// The same pages give the same bytes: no clock, no chance, an id made of the content, packing of our own. A viewer is asked
/// not to scale when printing; it may not obey, so anything to be cut carries bars to measure. Faces are embedded, letters
/// used only, with their meaning, so that text can be searched and copied.
/// </remarks>
public static class PdfWriter
{
    /// <summary>Units of the format in one millimetre.</summary>
    internal const double Points = 72 / 25.4;

    public static byte[] Write(PdfHead head, IReadOnlyList<PdfPage> pages, Palette palette)
    {
        if (pages.Count == 0)
            throw new ArgumentException("A document has at least one page.", nameof(pages));
        var file = new PdfFile();
        var faces = new FaceUses();
        int catalogue = file.Reserve(), tree = file.Reserve(), fonts = file.Reserve();
        var contents = pages.Select(p => PageContent.Of(p.Picture, palette, faces)).ToList();
        var sheets = pages.Select((p, i) => WritePage(file, p.Picture, contents[i], tree, fonts)).ToList();
        file.Put(tree, $"<< /Type /Pages /Count {sheets.Count} /Kids [{Refs(sheets)}] >>");
        file.Put(fonts, $"<< {string.Join(' ', faces.Uses.Select(u => $"/{u.Key} {WriteFace(file, u)} 0 R"))} >>");
        var outline = WriteOutline(file, pages, sheets);
        var marks = outline is null ? "" : $" /Outlines {outline} 0 R /PageMode /UseOutlines";
        file.Put(catalogue, $"<< /Type /Catalog /Pages {tree} 0 R /Lang {PdfText(head.Language)} /ViewerPreferences << /PrintScaling /None /DisplayDocTitle true >>{marks} >>");
        return file.ToBytes(catalogue, file.Add(Info(head)));
    }

    /// <summary>A number with no more decimals than mean something, no trailing zeros.</summary>
    internal static string Number(double value, int decimals = 5)
    {
        if (!double.IsFinite(value))
            throw new ArgumentException("A drawing holds finite numbers only.", nameof(value));
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        return rounded == 0 ? "0" : rounded.ToString("0.##########", CultureInfo.InvariantCulture);
    }

    private static int WritePage(PdfFile file, Picture picture, string content, int tree, int fonts)
    {
        var stream = file.AddStream("", Encoding.ASCII.GetBytes(content));
        var box = $"[0 0 {Number(picture.Width * Points)} {Number(picture.Height * Points)}]";
        return file.Add($"<< /Type /Page /Parent {tree} 0 R /MediaBox {box} /Resources << /Font {fonts} 0 R >> /Contents {stream} 0 R >>");
    }

    private static int? WriteOutline(PdfFile file, IReadOnlyList<PdfPage> pages, List<int> sheets)
    {
        var marked = Enumerable.Range(0, pages.Count).Where(i => pages[i].Bookmark is not null).ToList();
        if (marked.Count == 0)
            return null;
        var outline = file.Reserve();
        var items = marked.ConvertAll(_ => file.Reserve());
        for (var i = 0; i < items.Count; i++)
        {
            var before = i > 0 ? $" /Prev {items[i - 1]} 0 R" : "";
            var after = i + 1 < items.Count ? $" /Next {items[i + 1]} 0 R" : "";
            file.Put(items[i], $"<< /Title {PdfText(pages[marked[i]].Bookmark!)} /Parent {outline} 0 R{before}{after} /Dest [{sheets[marked[i]]} 0 R /Fit] >>");
        }

        file.Put(outline, $"<< /Type /Outlines /First {items[0]} 0 R /Last {items[^1]} 0 R /Count {items.Count} >>");
        return outline;
    }

    private static string Info(PdfHead head)
    {
        var info = new StringBuilder($"<< /Title {PdfText(head.Title)}");
        if (head.Subject is { } subject)
            info.Append($" /Subject {PdfText(subject)}");
        if (head.Date is { } date)
        {
            var said = date.ToUniversalTime().ToString("'D:'yyyyMMddHHmmss'Z'", CultureInfo.InvariantCulture);
            info.Append($" /CreationDate ({said}) /ModDate ({said})");
        }

        return info.Append(" >>").ToString();
    }

    /// <summary>A composite font of one face (ISO 32000-1, 9.7): a letter's code is its place in the subset.</summary>
    private static int WriteFace(PdfFile file, FaceUse use)
    {
        var font = use.Face.Font;
        var name = $"{use.Tag()}+{use.Face.Name}";
        var program = font.Subset(use.Glyphs);
        var stream = file.AddStream($" /Length1 {program.Length}", program);
        string Em(double units) => Number(units * 1000 / font.UnitsPerEm, 3);
        // Symbolic (4): the codes are not those of the Latin set. The width of stems only serves to find a stand-in.
        var descriptor = file.Add(
            $"<< /Type /FontDescriptor /FontName /{name} /Flags 4 /FontBBox [{string.Join(' ', font.Bounds.Select(b => Em(b)))}] /ItalicAngle 0 /Ascent {Em(font.Ascent)} /Descent {Em(font.Descent)} /CapHeight {Number(1000 * SetText.CapitalHeight, 3)} /StemV 80 /FontFile2 {stream} 0 R >>");
        var widths = string.Join(' ', use.Glyphs.Select(g => Em(font.Advance(g))));
        var descendant = file.Add(
            $"<< /Type /Font /Subtype /CIDFontType2 /BaseFont /{name} /CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >> /FontDescriptor {descriptor} 0 R /CIDToGIDMap /Identity /DW 0 /W [0 [{widths}]] >>");
        var meanings = file.AddStream("", Encoding.ASCII.GetBytes(use.Meanings()));
        return file.Add($"<< /Type /Font /Subtype /Type0 /BaseFont /{name} /Encoding /Identity-H /DescendantFonts [{descendant} 0 R] /ToUnicode {meanings} 0 R >>");
    }

    private static string Refs(IEnumerable<int> numbers) => string.Join(' ', numbers.Select(n => $"{n} 0 R"));

    /// <summary>A text string in UTF-16, in hexadecimal digits: nothing in it can end it early.</summary>
    private static string PdfText(string text) => $"<FEFF{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(PlainText.Clean(text)))}>";
}

/// <summary>The objects of a file and the table of their places.</summary>
internal sealed class PdfFile
{
    private readonly List<byte[]?> objects = [];

    /// <summary>A number for an object that is written later.</summary>
    public int Reserve()
    {
        objects.Add(null);
        return objects.Count;
    }

    public void Put(int number, string content) => objects[number - 1] = Encoding.ASCII.GetBytes(content);

    public int Add(string content)
    {
        objects.Add(Encoding.ASCII.GetBytes(content));
        return objects.Count;
    }

    public int AddStream(string entries, byte[] content)
    {
        var packed = Zlib.Pack(content);
        var head = $"<< /Length {packed.Length} /Filter /FlateDecode{entries} >>\nstream\n";
        objects.Add([.. Encoding.ASCII.GetBytes(head), .. packed, .. "\nendstream"u8]);
        return objects.Count;
    }

    public byte[] ToBytes(int catalogue, int info)
    {
        using var file = new MemoryStream();
        // Four bytes above 127 say that the file is not text.
        file.Write("%PDF-1.7\n%\xE2\xE3\xCF\xD3\n".Select(c => (byte)c).ToArray());
        var places = new List<long>();
        for (var i = 0; i < objects.Count; i++)
        {
            places.Add(file.Length);
            Say($"{i + 1} 0 obj\n");
            file.Write(objects[i] ?? throw new InvalidOperationException($"Object {i + 1} was never written."));
            Say("\nendobj\n");
        }

        var id = Convert.ToHexString(SHA256.HashData(file.ToArray()).AsSpan(0, 16));
        var start = file.Length;
        Say($"xref\n0 {objects.Count + 1}\n0000000000 65535 f \n");
        foreach (var place in places)
            Say(string.Create(CultureInfo.InvariantCulture, $"{place:0000000000} 00000 n \n"));
        Say($"trailer\n<< /Size {objects.Count + 1} /Root {catalogue} 0 R /Info {info} 0 R /ID [<{id}> <{id}>] >>\nstartxref\n{start}\n%%EOF\n");
        return file.ToArray();

        void Say(string text) => file.Write(Encoding.ASCII.GetBytes(text));
    }
}
