using System.Text.RegularExpressions;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Order;
using Throwright.Files;
using Throwright.Formats.Drawing;
using Throwright.Papers.Make;
using Throwright.Papers.Pack;
using UglyToad.PdfPig;
using static Throwright.Cli.Tests.CommandLine;

namespace Throwright.Cli.Tests;

/// <summary>Papers, orders and rigging as a builder asks for them.</summary>
public class PapersTests
{
    private static readonly Lazy<AircraftAnswer> Amphibian = new(() =>
        RunCheck.Check(AircraftFile.Read(Path.Combine(Throwright.Tests.ApprovedText.Root, "examples", "amphibian.throwright.json")).Aircraft!, new(Samples: 200)));

    private static PackOptions On(ShopPaper paper) => new(paper, "0123 4567", "test");

    public static TheoryData<string> PaperNames => ["letter", "a4"];

    [Theory]
    [MemberData(nameof(PaperNames))]
    public void Pack_EveryPage_KeepsItsTextInsideAndApart(string name)
    {
        var paper = name == "a4" ? ShopPaper.A4 : ShopPaper.Letter;
        var pages = AircraftPack.Pages(Amphibian.Value, On(paper));
        var touching = new List<string>();
        foreach (var (page, number) in pages.Select((p, i) => (p, i + 1)))
        {
            var letterings = page.Picture.Letterings.ToList();
            foreach (var lettering in letterings)
                Assert.True(new Box(5, 4, page.Picture.Width - 5, page.Picture.Height - 2).Contains(lettering.Bounds), $"page {number}: \"{lettering.PlainText}\" leaves the paper");
            // Drawings in the pages have tests of their own; what this layout sets lies on these layers.
            var set = letterings.Where(l => l.Layer is "text" or "head" or "foot").ToList();
            for (var i = 0; i < set.Count; i++)
            {
                for (var k = i + 1; k < set.Count; k++)
                {
                    if (set[i].Bounds.Grown(-0.05).Overlaps(set[k].Bounds.Grown(-0.05)))
                        touching.Add($"page {number}: \"{set[i].PlainText}\" and \"{set[k].PlainText}\"");
                }
            }
        }

        Assert.Empty(touching);
    }

    [Fact]
    public void Pack_ReadBack_HoldsEveryVerdictEachRuleAndTheCautions()
    {
        var bytes = AircraftPack.Write(Amphibian.Value, On(ShopPaper.Letter));
        Assert.Equal(bytes, AircraftPack.Write(Amphibian.Value, On(ShopPaper.Letter)));
        using var document = PdfDocument.Open(bytes);
        Assert.Equal("Papers of Heron demo amphibian", document.Information.Title);
        Assert.Equal((612.0, 792.0), (Math.Round(document.GetPage(1).Width, 1), Math.Round(document.GetPage(1).Height, 1)));
        Assert.True(document.TryGetBookmarks(out var marks));
        Assert.Equal(["Cover", .. Amphibian.Value.Runs.OrderByDescending(r => r.Verdict).Select(r => r.Words.Name), "Totals", "Clearance", "Log entry"], marks.GetNodes().Select(n => n.Title));
        var pages = document.GetPages().ToList();
        var all = Plain(string.Concat(pages.Select(p => p.Text)));
        for (var i = 0; i < pages.Count; i++)
        {
            Assert.Contains($"page{i + 1}of{pages.Count}", Plain(pages[i].Text), StringComparison.Ordinal);
            Assert.Contains("Notanapproval", Plain(pages[i].Text), StringComparison.Ordinal);
            Assert.All(pages[i].Letters, l => Assert.Matches("^[A-Z]{6}\\+", l.FontName!));
        }

        Assert.Contains("WARNING", all, StringComparison.Ordinal);
        foreach (var run in Amphibian.Value.Runs)
        {
            Assert.Contains(Plain(run.Sentence)[..20], all, StringComparison.Ordinal);
            foreach (var row in RuleTable.Of(Amphibian.Value.Aircraft, run))
                Assert.Contains(Plain(row.Rule.Cite), all, StringComparison.Ordinal);
        }

        foreach (var never in (string[])["approved", "compliant", "airworthy"])
            Assert.DoesNotContain(never, all, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Names and notes a builder might type, and files with next to nothing in them.</summary>
    [Fact]
    public void Pack_OfAwkwardFiles_KeepsItsTextInside()
    {
        var wide = new string('W', 60);
        var aircraft = Amphibian.Value.Aircraft with
        {
            Name = wide + wide[..40],
            Builder = wide,
            Display = new() { Length = Engine.Model.LengthUnit.Millimetre, Force = Engine.Model.ForceUnit.Newton },
            Runs =
            [
                Amphibian.Value.Aircraft.Runs[0] with { Label = wide, How = wide, SafeEnd = wide, Note = wide, AsBuilt = [new() { Date = "2026-03-01", By = wide, Note = string.Join(' ', Enumerable.Repeat(wide, 30)) }] },
                new() { Id = "bare" },
                new() { Id = "half", Label = "a\u202Eb\u0000c", CockpitEnd = new() },
            ],
        };
        foreach (var of in (Engine.Model.Aircraft[])[aircraft, aircraft with { Runs = [] }])
        {
            var answer = RunCheck.Check(of, new(Samples: 100));
            foreach (var paper in (ShopPaper[])[ShopPaper.A4, ShopPaper.Letter])
            {
                foreach (var page in AircraftPack.Pages(answer, On(paper)))
                    Assert.All(page.Picture.Letterings.Where(l => l.Layer is "text" or "head" or "foot"), l => Assert.True(new Box(5, 3, page.Picture.Width - 5, page.Picture.Height - 1).Contains(l.Bounds), l.PlainText));
                Assert.NotEmpty(AircraftPack.Write(answer, On(paper)));
            }
        }
    }

    [Theory]
    [InlineData("biplane")]
    [InlineData("shop")]
    [InlineData("scanned-wall")]
    public void Pack_OfEveryExample_IsWritten(string name)
    {
        var answer = RunCheck.Check(AircraftFile.Read(Path.Combine(Throwright.Tests.ApprovedText.Root, "examples", name + ".throwright.json")).Aircraft!, new(Samples: 100));
        using var document = PdfDocument.Open(AircraftPack.Write(answer, On(ShopPaper.Letter)));
        Assert.True(document.NumberOfPages > 5 * answer.Runs.Count);
    }

    private static string Plain(string text) => Regex.Replace(text, @"\s", "").Replace('⁄', '/');

    [Fact]
    public void Papers_FromTheCommandLine_AreOnePdfBesideTheFile()
    {
        using var bench = new Workbench();
        var file = bench.Copy("amphibian.throwright.json");
        var answer = Run("papers", file, "--run", "carb-heat", "--paper", "a4");
        Assert.True(answer.Exit == 0, answer.Error);
        using var document = PdfDocument.Open(file.Replace(".throwright.json", "-carb-heat.pdf", StringComparison.Ordinal));
        Assert.Equal(595.28, document.GetPage(1).Width, 0.01);
        Assert.Equal(2, Run("papers", file, "--run", "nothing").Exit);
    }

    [Fact]
    public void Order_AsSpreadsheet_IsReadByAnotherLibrary()
    {
        using var bench = new Workbench();
        var file = bench.Copy("amphibian.throwright.json");
        var sheet = Path.Combine(bench.Folder, "order.xlsx");
        Assert.Equal(0, Run("order", file, "--out", sheet).Exit);
        using var document = SpreadsheetDocument.Open(sheet, false);
        Assert.Empty(new DocumentFormat.OpenXml.Validation.OpenXmlValidator().Validate(document, TestContext.Current.CancellationToken).Select(e => e.Description));
        var rows = document.WorkbookPart!.WorksheetParts.Single().Worksheet!.Descendants<Row>().Select(r => r.Descendants<Cell>().Select(c => c.InnerText).ToList()).ToList();
        Assert.Equal("number or property", rows[0][2]);
        Assert.Contains(rows, r => r[0] == "COWL FLAP" && r[2] == "AN3-6");
        Assert.Contains(rows, r => r[0] == "MIXTURE" && r[2].StartsWith("stroke", StringComparison.Ordinal) && r[3] == "3 in");
        var text = Path.Combine(bench.Folder, "order.csv");
        Assert.Equal(0, Run("order", file, "--out", text).Exit);
        Assert.Equal(rows.Count, File.ReadAllLines(text).Length);
        Assert.Equal(2, Run("order", file, "--out", Path.Combine(bench.Folder, "order.doc")).Exit);
    }

    [Fact]
    public void Order_NamesWhatIsNotKnown_AndNoMaker()
    {
        var order = Purchase.Of(Amphibian.Value.Aircraft, Amphibian.Value.Runs.Single(r => r.Run.Id == "cabin-heat"));
        Assert.Contains(order.Cable, l => l is { What: "core", Confirm: true, Value: "ask before ordering" });
        Assert.DoesNotContain(order.Cable, l => l is { Value: "ask before ordering", Confirm: false });
    }

    [Fact]
    public void Order_OfARunThatFails_SaysNotYetFirst()
    {
        OrderLine First(string run) => Purchase.Of(Amphibian.Value.Aircraft, Amphibian.Value.Runs.Single(r => r.Run.Id == run)).Cable[0];
        Assert.Equal(Purchase.NotYet, First("cowl-flap").What);
        Assert.Contains("stop", First("cowl-flap").Note, StringComparison.Ordinal);
        Assert.NotEqual(Purchase.NotYet, First("carb-heat").What);
    }

    [Fact]
    public void Rig_Readings_AreKeptWithTheCommentsOfTheFile_AndSpeak()
    {
        using var bench = new Workbench();
        var file = bench.Copy("amphibian.throwright.json");
        var before = File.ReadAllText(file);
        var tried = Run("rig", file, "mixture", "--reading", "knobAtPush=0.40 in", "--reading", "knobAtPull=2.66 in", "--date", "2026-03-02");
        Assert.Equal(0, tried.Exit);
        Assert.Contains("Within limits", tried.Out, StringComparison.Ordinal);
        Assert.Contains("can't separate", tried.Out, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(file));
        var kept = Run("rig", file, "mixture", "--reading", "knobAtPush=0.40 in", "--reading", "knobAtPull=2.66 in", "--date", "2026-03-02", "--by", "C. \"D\"", "--write");
        Assert.True(kept.Exit == 0, kept.Error + kept.Out);
        var after = AircraftFile.Read(file).Aircraft!.Runs.Single(r => r.Id == "mixture");
        Assert.Equal(["2026-03-01", "2026-03-02"], after.AsBuilt.Select(a => a.Date));
        Assert.Equal("C. \"D\"", after.AsBuilt[1].By);
        Assert.Contains("// A two-seat side-by-side amphibian", File.ReadAllText(file), StringComparison.Ordinal);
        Assert.Contains("The readings of 2026-03-02", Run("check", file, "--run", "mixture").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("knobAtPush=0.40")]
    [InlineData("knobAtPush=5 in")]
    [InlineData("knob=1 in")]
    [InlineData("pull")]
    public void Rig_ReadingThatCannotBe_IsRefusedAndNothingIsWritten(string reading)
    {
        using var bench = new Workbench();
        var file = bench.Copy("amphibian.throwright.json");
        var before = File.ReadAllText(file);
        var answer = Run("rig", file, "mixture", "--reading", reading, "--write");
        Assert.Equal(2, answer.Exit);
        Assert.NotEmpty(answer.Error);
        Assert.Equal(before, File.ReadAllText(file));
    }

    [Fact]
    public void Rig_TakesWhatTheRiggingPageGives()
    {
        using var bench = new Workbench();
        var file = bench.Copy("amphibian.throwright.json");
        var readings = bench.Put("r.json", """{ "throwright-readings": 1, "run": "mixture", "readings": { "knobAtPush": "3/8 in", "knobAtPull": "2 5/8 in" } }""");
        Assert.Equal(0, Run("rig", file, "mixture", "--take", readings, "--date", "2026-03-02").Exit);
        Assert.Equal(2, Run("rig", file, "carb-heat", "--take", readings).Exit);
        var lines = bench.Put("r.txt", "# by hand\nknobAtPush = 3/8 in\nknobAtPull = 2 5/8 in\n");
        Assert.Equal(0, Run("rig", file, "mixture", "--take", lines, "--date", "2026-03-02").Exit);
    }

    [Fact]
    public void Check_Json_TellsWhatTheNewestReadingsSay()
    {
        using var json = System.Text.Json.JsonDocument.Parse(Run("check", "examples/amphibian.throwright.json", "--run", "mixture", "--json").Out);
        var read = json.RootElement.GetProperty("files")[0].GetProperty("runs")[0].GetProperty("asBuilt");
        Assert.Equal("2026-03-01", read.GetProperty("date").GetString());
        var (inside, outside) = (read.GetProperty("cushionIn").GetDouble(), read.GetProperty("cushionOut").GetDouble());
        Assert.Equal(0.5 * (outside - inside), read.GetProperty("slide").GetDouble(), 1e-9);
        Assert.Equal(0.5 * (outside + inside), read.GetProperty("after").GetDouble(), 1e-9);
        Assert.Equal(7, read.GetProperty("estimates").GetArrayLength());
    }

    [Fact]
    public void Rig_CardAndPage_AreWritten()
    {
        using var bench = new Workbench();
        var file = bench.Copy("amphibian.throwright.json");
        string card = Path.Combine(bench.Folder, "card.pdf"), page = Path.Combine(bench.Folder, "page.html");
        Assert.Equal(0, Run("rig", file, "carb-heat", "--card", card, "--page", page).Exit);
        using var document = PdfDocument.Open(card);
        Assert.Contains("CARBHEAT", Plain(document.GetPage(1).Text), StringComparison.Ordinal);
        var html = File.ReadAllText(page);
        Assert.Contains("default-src 'none'", html, StringComparison.Ordinal);
        Assert.DoesNotContain("/*CARD*/", html, StringComparison.Ordinal);
        // Nothing is fetched from anywhere.
        Assert.DoesNotContain(Regex.Matches(html, "(?:src|href)=\"http"), _ => true);
    }

    [Fact]
    public void Card_OfEveryExample_SaysTheVerdictWordsOnly()
    {
        foreach (var run in Amphibian.Value.Runs)
        {
            var card = Rigging.CardOf(Amphibian.Value.Aircraft, Rigging.ToRig(Amphibian.Value.Aircraft, run));
            Assert.True(card.Steps.Count >= 6);
            Assert.All(card.Steps, s => Assert.NotEmpty(s.MustBe));
        }

        // The demonstration's fault is rigged away by the card: its limits hold both cushions.
        var cowl = Amphibian.Value.Runs.Single(r => r.Run.Id == "cowl-flap");
        Assert.Equal(Verdict.Fail, cowl.Verdict);
        Assert.NotNull(Rigging.CardOf(Amphibian.Value.Aircraft, Rigging.ToRig(Amphibian.Value.Aircraft, cowl)).Steps.Single(s => s.Reading == "knobAtPush").Least);
    }
}
