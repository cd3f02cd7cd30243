using System.Text;
using Throwright.Formats.Drawing;
using Throwright.Formats.Fonts;
using Throwright.Formats.Pdf;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Graphics;

namespace Throwright.Formats.Tests.Pdf;

/// <summary>Read back with PdfPig 0.1.16, which shares no code with the writer.</summary>
public class PdfTests
{
    private const double Mm = 25.4 / 72;

    private static readonly Tone Ink = new("ink"), Paper = new("paper"), Grey = new("grey");

    internal static readonly Palette Palette = new([(Ink, Colour.FromHex("#000000")), (Paper, Colour.FromHex("#ffffff")), (Grey, Colour.FromHex("#2a37a0"))]);

    private static readonly Style Thin = Style.Line(Ink, 0.3);

    internal static Picture Page(string words, double width = 210, double height = 297)
    {
        var sketch = new Sketch { Layer = "scale" };
        sketch.Line(20, 200, 120, 200, Thin);
        sketch.Line(20, 200, 20, 100, Thin);
        sketch.Layer = "shape";
        sketch.Circle(100, 80, 80, Thin);
        sketch.Circle(100, 80, 2.4, Style.Outlined(Grey, Ink, 0.5, 2, 1));
        sketch.Arc(100, 150, 30, 0.2, -4, Thin);
        sketch.Rectangle(new(10, 220, 110, 230), Thin);
        sketch.Polyline([new(10, 240), new(20, 250), new(30, 240)], Thin);
        sketch.Dots(new(40, 240, 60, 250), 2, 0.5, Ink);
        sketch.Text(20, 260, 4, words, Ink, fractions: true);
        sketch.Text(105, 270, 4, [new("Stroke ", Ink), new("2.125 in", Grey, true)], TextAnchor.Middle, Paper);
        sketch.Text(190, 280, 5, "COWL FLAP", Ink, true, TextAnchor.End, tracking: 0.09);
        return sketch.ToPicture(width, height, "sample", "sample", Paper);
    }

    internal static byte[] Sample(string words = "Tilt 12.5° ±0.25 × 2, Ø 9.5 \u2300 □ \u2610 – Größe, 1 3/4 in") =>
        PdfWriter.Write(new("Wedge \\ (pair) – größer") { Subject = "Test", Date = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero) }, [new(Page(words), "First, (a)"), new(Page(words, 215.9, 279.4), "Second")], Palette);

    [Fact]
    public void Pages_Read_HaveTheirSizesTitleAndBookmarks()
    {
        using var document = PdfDocument.Open(Sample());
        Assert.Equal(2, document.NumberOfPages);
        var (first, second) = (document.GetPage(1), document.GetPage(2));
        Assert.Equal((210.0, 297.0), (Math.Round(first.Width * Mm, 5), Math.Round(first.Height * Mm, 5)));
        Assert.Equal((215.9, 279.4), (Math.Round(second.Width * Mm, 5), Math.Round(second.Height * Mm, 5)));
        Assert.Equal("Wedge \\ (pair) – größer", document.Information.Title);
        Assert.Equal("D:20261125120000Z", document.Information.CreationDate);
        Assert.True(document.TryGetBookmarks(out var marks));
        Assert.Equal(["First, (a)", "Second"], marks.GetNodes().Select(n => n.Title));
    }

    [Fact]
    public void Bars_Read_Are100MillimetresLong()
    {
        using var document = PdfDocument.Open(Sample());
        foreach (var page in document.GetPages())
        {
            var lines = Paths(page).Where(p => p.Count == 1).SelectMany(p => p[0].Commands.OfType<PdfSubpath.Line>()).ToList();
            Assert.Contains(lines, l => Math.Abs((Math.Abs(l.To.X - l.From.X) * Mm) - 100) < 1e-5 && l.To.Y == l.From.Y);
            Assert.Contains(lines, l => Math.Abs((Math.Abs(l.To.Y - l.From.Y) * Mm) - 100) < 1e-5 && l.To.X == l.From.X);
        }
    }

    [Fact]
    public void Curves_Everywhere_LieWithinAMicrometreOfTheirCircle()
    {
        using var document = PdfDocument.Open(Sample());
        var page = document.GetPage(1);
        // Centre and radius of the three round shapes, by their place on the page.
        (double X, double Y, double Radius)[] circles = [(100, 80, 80), (100, 80, 2.4), (100, 150, 30)];
        var most = 0.0;
        var seen = new HashSet<double>();
        foreach (var curve in Paths(page).SelectMany(p => p).SelectMany(s => s.Commands).OfType<PdfSubpath.CubicBezierCurve>())
        {
            var start = Place(curve.StartPoint);
            var (x, y, radius) = circles.MinBy(c => Math.Abs(Distance(start, c.X, c.Y) - c.Radius));
            seen.Add(radius);
            for (var i = 0; i <= 50; i++)
            {
                double t = i / 50.0, u = 1 - t;
                PdfPoint a = curve.StartPoint, b = curve.FirstControlPoint, c = curve.SecondControlPoint, d = curve.EndPoint;
                var at = Place(new(
                    (u * u * u * a.X) + (3 * u * u * t * b.X) + (3 * u * t * t * c.X) + (t * t * t * d.X),
                    (u * u * u * a.Y) + (3 * u * u * t * b.Y) + (3 * u * t * t * c.Y) + (t * t * t * d.Y)));
                most = Math.Max(most, Math.Abs(Distance(at, x, y) - radius));
            }
        }

        Assert.Equal(3, seen.Count);
        Assert.InRange(most, 1e-6, 0.001);

        static (double X, double Y) Place(PdfPoint p) => (p.X * Mm, 297 - (p.Y * Mm));
        static double Distance((double X, double Y) p, double x, double y) => Math.Sqrt(((p.X - x) * (p.X - x)) + ((p.Y - y) * (p.Y - y)));
    }

    [Fact]
    public void Text_Read_IsAsWritten()
    {
        using var document = PdfDocument.Open(Sample());
        var page = document.GetPage(1);
        Assert.StartsWith("Tilt 12.5° ±0.25 × 2, Ø 9.5 \u2300 □ \u2610 – Größe, 1 3/4 in", page.Text, StringComparison.Ordinal);
        Assert.EndsWith("COWL FLAP", page.Text, StringComparison.Ordinal);
        var faces = page.Letters.Select(l => l.FontName!.Split('+')).DistinctBy(f => f[1]).ToList();
        Assert.Equal(["DejaVuSans", "Inter-Bold", "Inter-Regular"], faces.Select(f => f[1]).Order(StringComparer.Ordinal));
        Assert.All(faces, f => Assert.Matches("^[A-Z]{6}$", f[0]));
    }

    [Fact]
    public void Text_Read_StandsWhereItsWidthPutsIt()
    {
        using var document = PdfDocument.Open(Sample());
        // Spaces leave no mark: the last word ends at its place.
        var caps = document.GetPage(1).Letters.Reverse().Take(9).Reverse().ToList();
        Assert.Equal(17, caps[0].StartBaseLine.Y * Mm, 1e-4);
        var width = SetText.Width("COWL FLAP", 5, true, 0.09);
        Assert.Equal(190 - width, caps[0].StartBaseLine.X * Mm, 0.001);
        Assert.Equal(190 - (0.09 * 5), caps[^1].EndBaseLine.X * Mm, 0.5);
        var letters = document.GetPage(1).Letters.Where(l => Math.Abs((l.StartBaseLine.Y * Mm) - 27) < 1e-4).ToList();
        Assert.Equal(105 - (0.5 * SetText.Width([new("Stroke ", Ink), new("2.125 in", Grey, true)], 4)), letters[0].StartBaseLine.X * Mm, 0.001);
    }

    [Fact]
    public void Bytes_OfTheSamePages_AreTheSame() => Assert.Equal(Sample(), Sample());

    [Fact]
    public void Bytes_OfOtherWords_HaveAnotherId()
    {
        string first = Id(Sample()), second = Id(Sample("Other words"));
        Assert.NotEqual(first, second);
        static string Id(byte[] pdf)
        {
            var text = Encoding.Latin1.GetString(pdf);
            return text[text.LastIndexOf("/ID", StringComparison.Ordinal)..];
        }
    }

    [Fact]
    public void Catalogue_AsksForPrintingWithoutScaling()
    {
        var text = Encoding.Latin1.GetString(Sample());
        Assert.Contains("/ViewerPreferences << /PrintScaling /None", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Figures_AreOfOneWidth_AndFractionsNarrower()
    {
        Assert.Equal(SetText.Width("1111", 1), SetText.Width("0808", 1), 12);
        Assert.True(SetText.Width("13/16", 1, fractions: true) < 0.85 * SetText.Width("13/16", 1));
        // Dates and ratios stay as they are.
        Assert.Equal(SetText.Width("25/11/2026", 1), SetText.Width("25/11/2026", 1, fractions: true));
    }

    [Fact]
    public void Wrap_ToAWidth_KeepsEveryWordAndTheWidth()
    {
        const string words = "Cut the spacer once through the middle at the angle and clean both faces at the same setting.";
        var lines = SetText.Wrap(words, 3, 40);
        Assert.Equal(words, string.Join(' ', lines));
        Assert.All(lines, l => Assert.True(SetText.Width(l, 3) <= 40));
        Assert.True(lines.Count > 2);
    }

    private static IEnumerable<PdfPath> Paths(UglyToad.PdfPig.Content.Page page) => page.Paths.Where(p => p.IsStroked);
}
