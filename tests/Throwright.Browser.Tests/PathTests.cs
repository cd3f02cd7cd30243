using Microsoft.Playwright;
using Throwright.Files.Form;
using Throwright.Web.Editing;
using static Microsoft.Playwright.Assertions;

namespace Throwright.Browser.Tests;

/// <summary>What a builder does who has never used a command line, in a real browser.</summary>
public class PathTests(Chromium chromium)
{
    [Theory]
    [InlineData(1440, 900)]
    [InlineData(390, 844)]
    public async Task NewUser_OpensTheDemo_FindsTheFault_CuresIt_AndLosesNothing(int width, int height)
    {
        await using var served = await Served.Start();
        await using var window = await chromium.Window(width, height, touch: width < 700);
        var watched = await window.Open(served);
        var page = watched.Page;
        await page.HasNoAxeFinding("start");

        // Open the example.
        await page.ClickAsync("#demo");
        await page.WaitForSelectorAsync(".rows");
        await page.Settled();
        await Expect(page.Locator("h1")).ToHaveTextAsync("One of six runs does not work yet.");
        await page.HasNoAxeFinding("board");
        await page.NothingIsCut("board");
        var worst = page.Locator(".row").First;
        await Expect(worst).ToHaveAttributeAsync("data-verdict", "fail");

        // See the fault.
        await worst.Locator("a.placard").ClickAsync();
        await Expect(page.Locator("h1")).ToContainTextAsync("The knob reaches its OUT stop before the cowl flap is shut");
        await page.HasNoAxeFinding("run");
        await page.NothingIsCut("run");
        var finding = page.Locator(".finding[data-rule='cushion/knob-out']");
        await Expect(finding).ToHaveAttributeAsync("data-verdict", "fail");

        // Ask why.
        await finding.Locator(".why-button").ClickAsync();
        await Expect(finding.Locator(".explained .formula")).ToContainTextAsync("=");
        await page.HasNoAxeFinding("explanation");

        // Try the remedy, then keep it.
        var path = served.PathOf("demo-amphibian");
        var before = File.ReadAllText(path);
        await finding.Locator("button[data-key=t]").First.ClickAsync();
        await Expect(finding.Locator(".would")).ToContainTextAsync("Tried, not kept");
        Assert.Equal(before, File.ReadAllText(path));
        await finding.Locator("button[data-key=k]").ClickAsync();
        await Expect(page.Locator(".finding[data-rule='cushion/knob-out'][data-verdict=fail]")).ToHaveCountAsync(0);
        await Expect(page.Locator("#undo")).ToHaveAttributeAsync("title", new System.Text.RegularExpressions.Regex("slide the swivel"));
        var cured = File.ReadAllText(path);
        Assert.NotEqual(before, cured);
        Assert.StartsWith("// A two-seat side-by-side amphibian", cured, StringComparison.Ordinal);

        // See it clear among the findings, and on the board what is left: the handle is struck by the yoke.
        await page.GetByText("Show what is clear").ClickAsync();
        await Expect(page.Locator(".finding[data-rule='cushion/knob-out']")).ToHaveAttributeAsync("data-verdict", "clear");
        await page.ClickAsync(".title .back");
        await page.Settled();
        await Expect(page.Locator(".row").First.Locator(".sentence")).ToContainTextAsync("yoke");

        // Take home what is made and signed: real files, looked into.
        await page.Locator(".views a", new() { HasText = "Making" }).ClickAsync();
        await Expect(page.Locator("h1")).ToContainTextAsync("made, ordered and rigged");
        await page.Settled();
        var papers = await Fetched(page, page.Locator("a", new() { HasText = "All papers, PDF" }));
        Assert.Equal("demo-amphibian.pdf", papers.Name);
        Assert.StartsWith("%PDF-1.", Latin(papers.Bytes), StringComparison.Ordinal);
        Assert.EndsWith("%%EOF", Latin(papers.Bytes).TrimEnd(), StringComparison.Ordinal);
        var card = await Fetched(page, page.Locator("section[aria-label='COWL FLAP'] a", new() { HasText = "Rigging card" }));
        Assert.StartsWith("%PDF-1.", Latin(card.Bytes), StringComparison.Ordinal);
        var phone = await Fetched(page, page.Locator("section[aria-label='COWL FLAP'] a", new() { HasText = "Rigging page" }));
        Assert.Contains("Not an approval", System.Text.Encoding.UTF8.GetString(phone.Bytes), StringComparison.Ordinal);
        await page.Locator(".views a", new() { HasText = "Papers" }).ClickAsync();
        await Expect(page.Locator("h1")).ToContainTextAsync("findings of every run");
        var copy = await Fetched(page, page.Locator("a", new() { HasText = "Save a copy" }));
        Assert.Equal(cured, System.Text.Encoding.UTF8.GetString(copy.Bytes));

        // Edit, undo, reload: nothing lost.
        await page.GotoAsync(served.Address + "/a/demo-amphibian/run/cowl-flap/arm");
        var radius = page.GetByLabel("pivot to hole", new() { Exact = true });
        await radius.FillAsync("1 1/4 in ± 1/64 in");
        await Expect(page.Locator(".trying")).ToBeVisibleAsync();
        await radius.PressAsync("Enter");
        await Expect(page.Locator("#undo")).ToHaveAttributeAsync("title", new System.Text.RegularExpressions.Regex("pivot to hole 1 1/4 in"));
        Assert.Equal("1 1/4 in ± 1/64 in", FileValues.Of(File.ReadAllText(path)).At("$.runs[0].leverEnd.arm.radius")!.Shown);
        await page.ClickAsync("#undo");
        await Expect(radius).ToHaveValueAsync("1 1/2 in ± 1/64 in");
        Assert.Equal(cured, File.ReadAllText(path));
        await radius.FillAsync("1 7/");
        await Expect(page.Locator(".field.refused .error")).ToContainTextAsync("still holds");
        await page.ReloadAsync();
        await Expect(radius).ToHaveValueAsync("1 7/");
        await radius.PressAsync("Escape");
        await Expect(radius).ToHaveValueAsync("1 1/2 in ± 1/64 in");
        await page.ClickAsync("#redo");
        await Expect(radius).ToHaveValueAsync("1 1/4 in ± 1/64 in");

        // Everything came from this computer, and nothing went wrong on the way.
        Assert.All(watched.Requests, r => Assert.True(r.StartsWith(served.Address, StringComparison.Ordinal) || r.StartsWith("data:", StringComparison.Ordinal) || r.StartsWith("blob:", StringComparison.Ordinal), r));
        Assert.Empty(watched.Faults);
    }

    [Fact]
    public async Task StruckHandle_IsFoundFromTheBoard_AndCuredOnTheMapOfTilts()
    {
        // The knob reaches its stop no more: what is left is the yoke that strikes the handle.
        var demo = AircraftFolder.DemoText().Replace("\"rigged\": { \"stop\": \"push\", \"knobOut\": \"23/32 in ± 1/32 in\" }", "\"rigged\": { \"stop\": \"push\", \"knobOut\": \"3/8 in ± 1/32 in\" }", StringComparison.Ordinal);
        Assert.NotEqual(AircraftFolder.DemoText(), demo);
        await using var served = await Served.Start(("amphibian", demo));
        await using var window = await chromium.Window();
        var watched = await window.Open(served, "/a/amphibian");
        var page = watched.Page;
        await page.Settled();
        var row = page.Locator(".row[data-run=cowl-flap]");
        await Expect(row).ToHaveAttributeAsync("data-verdict", "fail");
        await row.Locator(".remedy a").ClickAsync();
        await Expect(page.Locator("h1")).ToContainTextAsync("COWL FLAP and yoke touch");
        await page.Locator(".tilts button[data-key=t]").ClickAsync(new() { Timeout = 300_000 });
        await Expect(page.Locator(".tilts .would")).ToContainTextAsync("Tried, not kept", new() { Timeout = 100_000 });
        Assert.Equal(demo, File.ReadAllText(served.PathOf("amphibian")));
        await page.Locator(".tilts button[data-key=k]").ClickAsync();
        await Expect(page.Locator("#undo")).ToHaveAttributeAsync("title", new System.Text.RegularExpressions.Regex("tilt the handle"));
        await page.GotoAsync(served.Address + "/a/amphibian/run/cowl-flap");
        await page.Settled();
        await Expect(page.Locator(".finding[data-verdict=fail]")).ToHaveCountAsync(0);
        await page.GetByText("Show what is clear").ClickAsync();
        await Expect(page.Locator(".finding[data-rule='clearance/pair'][data-verdict=clear]").First).ToBeVisibleAsync();
        await page.GotoAsync(served.Address + "/a/amphibian");
        await page.Settled();
        await Expect(page.Locator("h1")).ToContainTextAsync("Nothing fails");
        Assert.Empty(watched.Faults);
    }

    [Fact]
    public async Task NewUser_StartsWithThreeNumbers_AndGetsALadder()
    {
        await using var served = await Served.Start();
        await using var window = await chromium.Window();
        var page = (await window.Open(served)).Page;
        await page.FillAsync("#radius", "1,5 in");
        await page.FillAsync("#sweep", "90 deg");
        await page.FillAsync("#stroke", "3 in");
        await page.ClickAsync("button[type=submit].act");
        await Expect(page.Locator(".error")).ToContainTextAsync("1,5 in");
        await page.FillAsync("#radius", "1 1/4 in");
        await page.ClickAsync("button[type=submit].act");
        await Expect(page.Locator(".ladder svg title")).ToContainTextAsync("FIRST CONTROL");
        await page.GotoAsync(served.Address + "/a/my-aircraft/new");
        await page.HasNoAxeFinding("new run");
        await page.FillAsync("#label", "Cabin heat");
        await page.FillAsync("#pull", "hot");
        await page.ClickAsync("button[type=submit].act");
        await Expect(page.Locator(".placard")).ToHaveTextAsync("Cabin heat");
        await page.GotoAsync(served.Address + "/a/my-aircraft/aircraft");
        await Expect(page.Locator("h1")).ToContainTextAsync("every run");
        await page.HasNoAxeFinding("aircraft");
        await page.GotoAsync(served.Address + "/a/my-aircraft/papers");
        await Expect(page.Locator(".paper")).ToHaveCountAsync(2);
        await page.HasNoAxeFinding("papers");
    }

    [Fact]
    public async Task Cockpit_IsDrawn_MovesWithItsJoints_AndSaysTheSameInATable()
    {
        await using var served = await Served.Demo();
        await using var window = await chromium.Window(1100, 760);
        var watched = await window.Open(served, "/a/amphibian/cockpit/cowl-flap");
        var page = watched.Page;
        await page.Settled();
        await page.HasNoAxeFinding("cockpit");
        await Expect(page.Locator("h1")).ToContainTextAsync("COWL FLAP and yoke touch");
        await Expect(page.Locator(".pairs tbody tr").First).ToContainTextAsync("they touch");
        var (colours, first) = await Picture();
        Assert.True(colours > 50, $"{colours} colours");

        // Push the handle in: it no longer touches, the picture changes, and the figure is the program's.
        var pull = page.GetByLabel("COWL FLAP pull");
        await pull.FillAsync("0");
        await Expect(page.Locator("#gap")).ToContainTextAsync("Here ");
        await Expect(page.Locator("#gap")).Not.ToContainTextAsync("touch");
        await Changed(first);
        await page.ClickAsync("#worst");
        await Expect(page.Locator("#gap")).ToContainTextAsync("touch");

        // By keyboard too.
        await pull.FocusAsync();
        await page.Keyboard.PressAsync("Home");
        await Expect(page.Locator("#gap")).Not.ToContainTextAsync("touch");
        await page.Locator("#canvas").FocusAsync();
        var (_, before) = await Picture();
        await page.Keyboard.PressAsync("ArrowLeft");
        await Changed(before);
        Assert.Empty(watched.Faults);

        // The next frames show it; how many there are to come depends on the machine.
        async Task Changed(string from)
        {
            for (var i = 0; i < 400; i++)
                if ((await Picture()).Hash != from)
                    return;
            Assert.Fail("The picture stays as it was.");
        }

        async Task<(int Colours, string Hash)> Picture()
        {
            await page.EvaluateAsync("() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))");
            var found = await page.EvaluateAsync<string>("""
                () => {
                  const canvas = document.getElementById('canvas');
                  const flat = document.createElement('canvas');
                  [flat.width, flat.height] = [canvas.width, canvas.height];
                  const pen = flat.getContext('2d');
                  pen.drawImage(canvas, 0, 0);
                  const data = pen.getImageData(0, 0, flat.width, flat.height).data;
                  const seen = new Set();
                  let hash = 0;
                  for (let i = 0; i < data.length; i += 4) {
                    const colour = (data[i] << 16) | (data[i + 1] << 8) | data[i + 2];
                    seen.add(colour);
                    hash = (Math.imul(hash, 31) + colour) | 0;
                  }
                  return `${seen.size} ${hash}`;
                }
                """);
            var parts = found.Split(' ');
            return (int.Parse(parts[0], System.Globalization.CultureInfo.InvariantCulture), parts[1]);
        }
    }

    [Fact]
    public async Task File_BroughtIn_IsReadStrictly_AndNeverOverwrites()
    {
        await using var served = await Served.Demo();
        await using var window = await chromium.Window();
        var page = (await window.Open(served)).Page;
        await Bring("other.throwright.json", AircraftFolder.DemoText().Replace("1 1/2 in ± 1/64 in", "1,5 in", StringComparison.Ordinal));
        await Expect(page.Locator(".error")).ToContainTextAsync("1,5 in");
        await Bring("amphibian.throwright.json", AircraftFolder.DemoText());
        await Expect(page.Locator(".error")).ToContainTextAsync("exists already");
        await Bring("other.throwright.json", AircraftFolder.DemoText());
        await page.WaitForSelectorAsync(".rows");
        await page.Settled();
        await Expect(page.Locator("h1")).ToContainTextAsync("does not work yet");
        Assert.Equal(AircraftFolder.DemoText(), File.ReadAllText(served.PathOf("other")));

        async Task Bring(string name, string text)
        {
            await page.SetInputFilesAsync("#file", new FilePayload { Name = name, MimeType = "application/json", Buffer = System.Text.Encoding.UTF8.GetBytes(text) });
            await page.ClickAsync(".upload button");
        }
    }

    /// <summary>A part for the shop, its solid and its drawing, from an aircraft whose handle stands at a tilt.</summary>
    [Theory]
    [InlineData(1440, 900)]
    [InlineData(390, 844)]
    public async Task Parts_OfATiltedHandle_ComeAsStepAndPdf(int width, int height)
    {
        var shop = await File.ReadAllTextAsync(Path.Combine(Throwright.Tests.ApprovedText.Root, "examples", "shop.throwright.json"), TestContext.Current.CancellationToken);
        await using var served = await Served.Start(("shop", shop));
        await using var window = await chromium.Window(width, height, touch: width < 700);
        var watched = await window.Open(served, "/a/shop/making");
        var page = watched.Page;
        await page.Settled();
        await page.NothingIsCut("making");
        await page.HasNoAxeFinding("making");
        var step = await Fetched(page, page.Locator(".found a", new() { HasTextRegex = new("wedge.*\\.step$") }).First);
        var text = Latin(step.Bytes);
        Assert.StartsWith("ISO-10303-21;", text, StringComparison.Ordinal);
        Assert.Contains("MANIFOLD_SOLID_BREP", text, StringComparison.Ordinal);
        Assert.EndsWith("END-ISO-10303-21;", text.TrimEnd(), StringComparison.Ordinal);
        var pdf = await Fetched(page, page.Locator(".found a", new() { HasTextRegex = new("\\.pdf$") }).First);
        Assert.StartsWith("%PDF-1.", Latin(pdf.Bytes), StringComparison.Ordinal);
        var stl = await Fetched(page, page.Locator(".found a", new() { HasTextRegex = new("\\.stl$") }).First);
        // A binary STL: 80 bytes, a count, 50 bytes a triangle.
        Assert.Equal(84 + (50 * BitConverter.ToInt32(stl.Bytes, 80)), stl.Bytes.Length);
        Assert.Empty(watched.Faults);
    }

    [Fact]
    public async Task TextOfAFile_ThatIsAScript_IsShownAsText_AndNoInlineScriptRuns()
    {
        const string hostile = "<img src=x onerror=window.hit=1><script>window.hit=1</script>";
        var demo = AircraftFolder.DemoText().Replace("Heron demo amphibian", hostile, StringComparison.Ordinal).Replace("\"COWL FLAP\"", "\"<i>FLAP</i>\"", StringComparison.Ordinal);
        await using var served = await Served.Start(("hostile", demo));
        await using var window = await chromium.Window();
        var watched = await window.Open(served, "/a/hostile/run/cowl-flap/arm");
        await Expect(watched.Page.Locator(".aircraft b")).ToHaveTextAsync(hostile);
        await Expect(watched.Page.Locator(".placard.big")).ToHaveTextAsync("<i>FLAP</i>");
        Assert.Empty(watched.Faults);
        // And should one ever get into the page, the browser does not run it.
        await watched.Page.EvaluateAsync("() => { const s = document.createElement('script'); s.textContent = 'window.hit = 1'; document.body.append(s); const d = document.createElement('div'); d.innerHTML = '<b onclick=\"window.hit=1\">x</b>'; document.body.append(d); d.firstChild.click(); }");
        Assert.True(await watched.Page.EvaluateAsync<bool>("window.hit === undefined"));
        Assert.Contains(watched.Faults, f => f.Contains("Content Security Policy", StringComparison.Ordinal));
    }

    private static string Latin(byte[] bytes) => System.Text.Encoding.Latin1.GetString(bytes);

    private static async Task<(string Name, byte[] Bytes)> Fetched(IPage page, ILocator link)
    {
        var download = await page.RunAndWaitForDownloadAsync(() => link.ClickAsync());
        return (download.SuggestedFilename, await File.ReadAllBytesAsync(await download.PathAsync(), TestContext.Current.CancellationToken));
    }
}
