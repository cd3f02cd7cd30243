using System.Globalization;

namespace Throwright.Formats.Tests.Pdf;

/// <summary>Two programs that share no code with the writer or with each other: qpdf and poppler.</summary>
public class OutsidePdfTests
{
    [Fact]
    public void Qpdf_FindsNothingWrong()
    {
        var qpdf = OutsideReaders.Find("qpdf", "qpdf");
        using var folder = new OutsideReaders.Folder();
        var file = folder.Put("sample.pdf", PdfTests.Sample());
        var (exit, said) = OutsideReaders.Run(qpdf, folder.Place, ["--check", file]);
        Assert.True(exit == 0, said);
        Assert.Contains("No syntax or stream encoding errors found", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Poppler_FindsEmbeddedSubsetsWithTheirMeanings()
    {
        var program = OutsideReaders.Find("pdffonts", "poppler-utils");
        using var folder = new OutsideReaders.Folder();
        var (exit, said) = OutsideReaders.Run(program, folder.Place, [folder.Put("sample.pdf", PdfTests.Sample())]);
        Assert.True(exit == 0, said);
        var lines = said.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(5, lines.Length);
        Assert.All(lines[2..], l => Assert.Contains("CID TrueType      Identity-H       yes yes yes", l, StringComparison.Ordinal));
    }

    [Fact]
    public void Poppler_ReadsTheWordsOnce()
    {
        var program = OutsideReaders.Find("pdftotext", "poppler-utils");
        using var folder = new OutsideReaders.Folder();
        var (exit, said) = OutsideReaders.Run(program, folder.Place, ["-f", "1", "-l", "1", folder.Put("sample.pdf", PdfTests.Sample()), "-"]);
        Assert.True(exit == 0, said);
        Assert.Contains("Tilt 12.5° ±0.25 × 2, Ø 9.5 \u2300 □ \u2610 – Größe, 1 3/4 in", said, StringComparison.Ordinal);
        Assert.Equal(2, said.Split("Stroke 2.125 in").Length);
    }

    [Fact]
    public void Poppler_DrawsTheBarsAtTrueSize()
    {
        var program = OutsideReaders.Find("pdftoppm", "poppler-utils");
        using var folder = new OutsideReaders.Folder();
        var file = folder.Put("sample.pdf", PdfTests.Sample());
        // 254 dots to the inch: 10 to the millimetre.
        var (exit, said) = OutsideReaders.Run(program, folder.Place, ["-gray", "-r", "254", "-f", "1", "-l", "1", "-singlefile", file, "page"]);
        Assert.True(exit == 0, said);
        var image = File.ReadAllBytes(Path.Combine(folder.Place, "page.pgm"));
        var head = System.Text.Encoding.ASCII.GetString(image, 0, 20).Split('\n');
        var size = head[1].Split(' ').Select(s => int.Parse(s, CultureInfo.InvariantCulture)).ToArray();
        Assert.Equal([2100, 2970], size);
        var start = image.Length - (size[0] * size[1]);
        bool Dark(int x, int y) => image[start + (y * size[0]) + x] < 128;
        var across = Enumerable.Range(0, size[0]).Where(x => Dark(x, 2000)).ToList();
        Assert.Equal(1000, across[^1] - across[0], 2.0);
        Assert.Equal(across.Count - 1, across[^1] - across[0]);
        var down = Enumerable.Range(900, 1150).Where(y => Dark(200, y)).ToList();
        Assert.Equal(1000, down[^1] - down[0], 2.0);
    }
}
