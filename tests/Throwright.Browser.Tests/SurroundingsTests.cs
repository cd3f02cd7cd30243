using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Throwright.Browser.Tests;

/// <summary>
/// Every view in every surrounding: narrow and huge windows, forced colours, paper, no motion, no pointer, the other units.
/// With THROWRIGHT_SURROUNDINGS=FOLDER also as pictures of the whole page, to be looked at.
/// </summary>
public sealed class SurroundingsTests(Chromium chromium, PicturesTests.Demo demo) : IClassFixture<PicturesTests.Demo>
{
    private static readonly string? Folder = Environment.GetEnvironmentVariable("THROWRIGHT_SURROUNDINGS") is { Length: > 0 } named ? Path.Combine(Throwright.Tests.ApprovedText.Root, named) : null;

    private static readonly (string Name, string Path)[] Views =
    [
        ("board", "/a/amphibian"), ("run", "/a/amphibian/run/cowl-flap"), ("run-arm", "/a/amphibian/run/cowl-flap/arm"), ("run-conduit", "/a/amphibian/run/mixture/conduit"), ("try", "/a/amphibian/run/cowl-flap/arm?try=cushion/knob-out"), ("cockpit", "/a/amphibian/cockpit/cowl-flap"),
        ("making", "/a/amphibian/making"), ("rigging", "/a/amphibian/rigging/carb-heat"), ("start", "/"), ("new-run", "/a/amphibian/new"), ("aircraft", "/a/amphibian/aircraft"), ("papers", "/a/amphibian/papers"), ("upkeep", "/a/amphibian/upkeep/carb-heat"), ("place", "/a/amphibian/place/cowl-flap/arm"),
    ];

    private static async Task Picture(IPage page, string name, bool whole = true)
    {
        if (Folder is not null)
            await page.ScreenshotAsync(new() { Path = Path.Combine(Folder, name + ".png"), FullPage = whole });
    }

    /// <summary>One window for all views: going from one to the next is part of the test.</summary>
    private async Task Everywhere(string name, IBrowserContext window, Func<IPage, string, Task> check)
    {
        var watched = await window.Open(demo.Served);
        var faults = new List<string>();
        foreach (var (view, path) in Views)
        {
            await watched.Page.GotoAsync(demo.Served.Address + path);
            await watched.Page.WaitForSelectorAsync("html[data-ready=true] main h1");
            await watched.Page.Settled();
            await watched.Page.EvaluateAsync("document.fonts.ready");
            await Picture(watched.Page, $"{name}-{view}");
            try
            {
                await check(watched.Page, $"{view}, {name}");
            }
            catch (Exception e) when (e is Xunit.Sdk.XunitException)
            {
                faults.Add(e.Message);
            }
        }

        Assert.True(faults.Count == 0, string.Join("\n\n", faults));
        Assert.Empty(watched.Faults);
        // All of it from this computer.
        Assert.All(watched.Requests, r => Assert.True(r.StartsWith(demo.Served.Address, StringComparison.Ordinal) || r.StartsWith("data:", StringComparison.Ordinal) || r.StartsWith("blob:", StringComparison.Ordinal), r));
    }

    [Theory]
    [InlineData(320, 640)]
    [InlineData(360, 740)]
    [InlineData(768, 1024)]
    [InlineData(1100, 760)]
    [InlineData(3840, 2160)]
    public async Task Window_OfAnyWidth_CutsNothing(int width, int height)
    {
        await using var window = await chromium.Window(width, height, touch: width < 700);
        await Everywhere($"{width}", window, async (page, view) =>
        {
            await page.NothingIsCut(view);
            // Letters are never smaller than notes, in drawings neither. 320 px is a desk at four times its size, where all is large.
            Assert.Empty(await page.EvaluateAsync<string[]>(Small, width == 320 ? 10.4 : 11.9));
            if (width < 700)
                Assert.Empty(await page.EvaluateAsync<string[]>(LowTargets));
        });
    }

    /// <summary>Letters smaller than that, px.</summary>
    private const string Small = """
        (least) => {
          const found = [];
          const words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
          for (let text = words.nextNode(); text; text = words.nextNode()) {
            const own = text.parentElement;
            if (text.data.trim() === '' || own.closest('.unseen, script, title, desc, option, noscript') || !own.checkVisibility()) continue;
            const svg = own.closest('svg');
            const scale = svg ? svg.getScreenCTM().a : 1;
            const size = parseFloat(getComputedStyle(own).fontSize) * scale;
            if (size < least) found.push(`${size.toFixed(1)} px: "${text.data.trim()}"`);
          }
          return [...new Set(found)];
        }
        """;

    /// <summary>Buttons and links that a finger has to hit (WCAG 2.5.8 asks for 24 by 24; in a line of text it makes an exception).</summary>
    private const string LowTargets = """
        () => [...document.querySelectorAll('button, a, input, select, summary, textarea')].filter((e) => e.checkVisibility() && !e.closest('.unseen, .skip')).map((e) => [e, e.getBoundingClientRect()])
          .filter(([e, b]) => b.width > 0 && (b.height < 23.5 || b.width < 23.5) && !(e.tagName === 'A' && e.closest('td, li, dd, p')))
          .map(([e, b]) => `${e.tagName} ${e.id} ${e.className} "${e.textContent.trim().slice(0, 30)}" ${b.width.toFixed(0)} x ${b.height.toFixed(0)}`)
        """;

    [Fact]
    public async Task ForcedColours_KeepEveryVerdictAndDrawing()
    {
        await using var window = await chromium.Window(forced: true);
        await Everywhere("forced", window, async (page, view) =>
        {
            await page.NothingIsCut(view);
            // Marks and drawings take the system's colours: nothing is drawn in the colour of what it lies on.
            Assert.Empty(await page.EvaluateAsync<string[]>("""
                () => {
                  const ground = getComputedStyle(document.body).backgroundColor;
                  const canvas = getComputedStyle(document.documentElement).backgroundColor;
                  const found = [];
                  for (const mark of document.querySelectorAll('.mark')) {
                    const style = getComputedStyle(mark), bar = getComputedStyle(mark.querySelector('path'));
                    const own = style.backgroundColor === 'rgba(0, 0, 0, 0)' ? canvas : style.backgroundColor;
                    if (bar.fill === own && bar.stroke === 'none') found.push(`${mark.className}: bar ${bar.fill} on ${own}`);
                    if (/is-fail|is-caution/.test(mark.className) && parseFloat(style.borderTopWidth) < 1) found.push(`${mark.className}: no outline`);
                  }
                  // Letters in the ground's own colour lie on something that is not.
                  for (const text of document.querySelectorAll('svg text')) {
                    if (getComputedStyle(text).fill !== canvas || text.closest('[aria-hidden]')) continue;
                    const b = text.getBoundingClientRect(), x = (b.left + b.right) / 2, y = (b.top + b.bottom) / 2;
                    const under = [...text.closest('svg').querySelectorAll('rect, path, polygon')].some((s) => {
                      const r = s.getBoundingClientRect(), fill = getComputedStyle(s).fill;
                      return fill !== 'none' && fill !== canvas && r.left <= x && r.right >= x && r.top <= y && r.bottom >= y;
                    });
                    if (!under) found.push(`text ${text.textContent}: ${canvas}`);
                  }
                  // Where one is can be told from where one is not.
                  for (const list of ['.views a', '.tabs a'])
                    for (const link of document.querySelectorAll(list)) {
                      const style = getComputedStyle(link), edge = [style.borderBottomColor, style.borderTopColor, style.borderLeftColor];
                      const isMarked = edge.some((c, i) => c !== canvas && parseFloat([style.borderBottomWidth, style.borderTopWidth, style.borderLeftWidth][i]) > 0);
                      if (isMarked !== link.hasAttribute('aria-current')) found.push(`${list} ${link.textContent}: ${isMarked ? 'marked' : 'not marked'}`);
                    }
                  for (const button of document.querySelectorAll('.switch button')) {
                    const on = button.getAttribute('aria-pressed') === 'true';
                    if (on && parseFloat(getComputedStyle(button).borderTopWidth) < 1) found.push(`pressed ${button.textContent}: not seen`);
                  }
                  return [...new Set(found)];
                }
                """));
        });
    }

    [Fact]
    public async Task Paper_IsBlackOnWhite_WithTheCaution_AndWithoutWhatOnlyAScreenNeeds()
    {
        await using var window = await chromium.Window(light: ColorScheme.Dark);
        var watched = await window.Open(demo.Served, "/a/amphibian/papers");
        var page = watched.Page;
        await page.Settled();
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        Assert.Equal("rgb(255, 255, 255)", await page.EvaluateAsync<string>("getComputedStyle(document.querySelector('.paper')).getPropertyValue('--ground').trim() === '#ffffff' ? 'rgb(255, 255, 255)' : getComputedStyle(document.body).backgroundColor"));
        foreach (var gone in (string[])[".top", ".downloads", "button"])
            Assert.Equal(0, await page.Locator(gone).Filter(new() { Visible = true }).CountAsync());
        // Each run to a sheet, each with its caution; grey at most, no colour.
        Assert.Equal(await page.Locator(".paper").CountAsync(), await page.Locator(".paper .warning").Filter(new() { Visible = true }).CountAsync());
        Assert.Empty(await page.EvaluateAsync<string[]>("""
            () => {
              const found = [];
              for (const part of document.querySelectorAll('main, main *')) {
                if (!part.checkVisibility()) continue;
                const style = getComputedStyle(part);
                for (const name of ['color', 'backgroundColor', 'fill', 'stroke']) {
                  const m = /^rgba?\((\d+), (\d+), (\d+)/.exec(style[name]);
                  if (m && Math.max(+m[1], +m[2], +m[3]) - Math.min(+m[1], +m[2], +m[3]) > 4) found.push(`${part.tagName} ${name} ${style[name]}`);
                }
              }
              return [...new Set(found)];
            }
            """));
        await Picture(page, "print-papers");
        // A fail is white on black: its ground is printed although others are not. A box is not laid over a table that goes over a page.
        Assert.Equal("exact", await page.EvaluateAsync<string>("getComputedStyle(document.querySelector('.paper .mark.is-fail')).printColorAdjust ?? getComputedStyle(document.querySelector('.paper .mark.is-fail')).webkitPrintColorAdjust"));
        Assert.Equal("block", await page.EvaluateAsync<string>("getComputedStyle(document.querySelector('.paper')).display"));
        // As a PDF of the browser: a run begins a page, and the text is whole.
        var bytes = await page.PdfAsync(new() { Format = "A4" });
        if (Folder is not null)
            await File.WriteAllBytesAsync(Path.Combine(Folder, "print-papers.pdf"), bytes, TestContext.Current.CancellationToken);
        Assert.Equal("%PDF-", System.Text.Encoding.ASCII.GetString(bytes, 0, 5));
        foreach (var (view, path) in ((string, string)[])[("board", "/a/amphibian"), ("run", "/a/amphibian/run/cowl-flap/arm")])
        {
            await page.EmulateMediaAsync(new() { Media = Media.Screen });
            await page.GotoAsync(demo.Served.Address + path);
            await page.Settled();
            await page.EmulateMediaAsync(new() { Media = Media.Print });
            await Picture(page, "print-" + view);
            await Expect(page.Locator(".warning").First).ToBeVisibleAsync();
            // On an A4 sheet less its margins.
            await page.SetViewportSizeAsync(703, 1000);
            await page.NothingIsCut("printed " + view);
        }
    }

    [Theory]
    [InlineData(ReducedMotion.Reduce, true)]
    [InlineData(ReducedMotion.NoPreference, false)]
    public async Task Motion_IsNotMadeWhereItIsNotWanted(ReducedMotion wish, bool isStill)
    {
        await using var window = await chromium.Window(motion: wish);
        var watched = await window.Open(demo.Served, "/a/amphibian/run/cowl-flap/arm");
        await watched.Page.Settled();
        var moving = await watched.Page.EvaluateAsync<int>("[...document.querySelectorAll('*')].filter((e) => { const s = getComputedStyle(e); return s.animationName !== 'none' || s.transitionDuration.split(',').some((d) => parseFloat(d) > 0); }).length");
        Assert.Equal(isStill, moving == 0);
        // Never more than a moment, and nothing loops.
        var longest = await watched.Page.EvaluateAsync<double>("Math.max(...[...document.querySelectorAll('*')].map((e) => parseFloat(getComputedStyle(e).transitionDuration)))");
        Assert.True(longest <= 0.2, $"{longest} s");
    }

    [Fact]
    public async Task Keyboard_Alone_FollowsTheOrderOfThePage_AndIsAlwaysSeen()
    {
        await using var window = await chromium.Window();
        var watched = await window.Open(demo.Served, "/a/amphibian/run/cowl-flap/arm");
        var page = watched.Page;
        await page.Settled();
        // A page begins at its sentence; the next stop is the way to the findings.
        await Expect(page.Locator("h1")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Tab");
        await Expect(page.Locator("a.skip:focus")).ToHaveTextAsync("To the findings");
        Assert.True(await page.EvaluateAsync<bool>("document.activeElement.getBoundingClientRect().left >= 0"));
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#findings")).ToBeFocusedAsync();
        // From the top through everything.
        await page.EvaluateAsync("() => { document.activeElement.blur(); scrollTo(0, 0); const s = getSelection(); s.removeAllRanges(); document.querySelector('header .skip').focus(); }");
        var faults = new List<string>();
        var order = new List<string>();
        for (var i = 0; i < 150; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            var at = await page.EvaluateAsync<string?>("""
                () => {
                  const e = document.activeElement;
                  if (!e || e === document.body) return null;
                  const name = e.getAttribute('aria-label') || (e.labels && e.labels[0] && e.labels[0].textContent) || e.textContent.trim();
                  const style = getComputedStyle(e), row = e.closest('.row');
                  const ring = row ? getComputedStyle(row) : style;
                  const seen = ring.outlineStyle !== 'none' && parseFloat(ring.outlineWidth) >= 3;
                  const box = e.getBoundingClientRect();
                  const inView = box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth;
                  const part = e.closest('header, .title, .chain, .inputs, .drawings, .lever, .findings')?.className.split(' ')[0] ?? '';
                  return [part, name ? 'named' : 'NO NAME ' + e.outerHTML.slice(0, 80), seen ? 'seen' : 'NOT SEEN ' + e.outerHTML.slice(0, 80), inView ? 'in' : 'OUT OF VIEW ' + e.outerHTML.slice(0, 80)].join('|');
                }
                """);
            if (at is null)
                break;
            var parts = at.Split('|');
            faults.AddRange(parts[1..].Where(p => p.StartsWith("NO", StringComparison.Ordinal) || p.StartsWith("OUT", StringComparison.Ordinal)));
            if (order.LastOrDefault() != parts[0])
                order.Add(parts[0]);
        }

        Assert.Empty(faults);
        Assert.Equal(["top", "title", "chain", "inputs", "drawings", "findings"], order.Where(o => o.Length > 0));
    }

    [Fact]
    public async Task Keyboard_Alone_FindsTheFault_TriesTheRemedy_AndKeepsIt()
    {
        await using var served = await Served.Bench();
        await using var window = await chromium.Window();
        var page = (await window.Open(served, "/a/amphibian")).Page;
        await page.Settled();
        await TabTo(page, "COWL FLAP");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("h1")).ToContainTextAsync("OUT stop");
        await Expect(page.Locator("h1")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("f");
        await Expect(page.Locator("[data-rule='cushion/knob-out']:focus")).ToHaveCountAsync(1);
        await page.Keyboard.PressAsync("t");
        await Expect(page.Locator(".would")).ToContainTextAsync("Tried, not kept");
        await page.Keyboard.PressAsync("k");
        await Expect(page.Locator(".finding[data-rule='cushion/knob-out'][data-verdict=fail]")).ToHaveCountAsync(0);
        await Expect(page.Locator("#findings")).ToBeFocusedAsync();
        // Single keys do nothing while something is typed, and can be switched off.
        await page.Keyboard.PressAsync("Control+z");
        await Expect(page.Locator(".finding[data-rule='cushion/knob-out'][data-verdict=fail]")).ToHaveCountAsync(1);
        await page.Keyboard.PressAsync("Alt+k");
        await page.Keyboard.PressAsync("t");
        await page.Keyboard.PressAsync("u");
        await Expect(page.Locator(".switch [aria-pressed=true]").First).ToHaveTextAsync("in");
        Assert.Equal(0, await page.Locator(".would").CountAsync());
    }

    private static async Task TabTo(IPage page, string text)
    {
        for (var i = 0; i < 60; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await page.EvaluateAsync<string>("document.activeElement.textContent.trim()") == text)
                return;
        }

        Assert.Fail($"\"{text}\" is not reached by the keyboard.");
    }

    [Fact]
    public async Task OtherUnits_ShowInEveryFigure_AndNotInTheFile()
    {
        await using var window = await chromium.Window();
        await Everywhere("mm", window, async (page, view) =>
        {
            if (view.StartsWith("start", StringComparison.Ordinal))
                return;
            await page.GetByRole(AriaRole.Button, new() { Name = "mm", Exact = true }).ClickAsync();
            await Expect(page.GetByRole(AriaRole.Button, new() { Name = "mm", Exact = true })).ToHaveAttributeAsync("aria-pressed", "true");
            await page.Settled();
            await page.NothingIsCut(view);
            // What is worked out speaks millimetres; what is typed, or cited as a source has it, stays. Remedies name both.
            Assert.Empty(await page.EvaluateAsync<string[]>("""
                () => {
                  const words = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT);
                  const found = [];
                  for (let text = words.nextNode(); text; text = words.nextNode())
                    if (/\d\s(in)(?![a-z])/.test(text.data) && !/ mm/.test(text.data) && !text.parentElement.closest('input, select, textarea, .help, .sources, .unseen, .chain, label, option, title, desc')) found.push(text.data.trim());
                  return found;
                }
                """));
        });
        Assert.Equal(Throwright.Web.Editing.AircraftFolder.DemoText(), File.ReadAllText(demo.Served.PathOf("amphibian")));
    }
}
