using System.Collections.Concurrent;
using Deque.AxeCore.Playwright;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using Throwright.Web.Editing;
using Throwright.Web.Host;

[assembly: AssemblyFixture(typeof(Throwright.Browser.Tests.Chromium))]

namespace Throwright.Browser.Tests;

/// <summary>One real browser for all tests. Where none is installed they are skipped with a notice, unless one is required.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private IPlaywright? playwright;
    private IBrowser? browser;

    public async ValueTask InitializeAsync()
    {
        var path = Find();
        if (path is null)
        {
            Assert.False(Environment.GetEnvironmentVariable("THROWRIGHT_REQUIRE_BROWSER") == "1", "A browser is required (THROWRIGHT_REQUIRE_BROWSER=1), and none was found: install Debian's chromium, or name one in CHROMIUM_PATH.");
            return;
        }

        playwright = await Playwright.CreateAsync();
        // A loaded machine is slow, not wrong.
        Assertions.SetDefaultExpectTimeout(40_000);
        browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = path,
            Args = ["--no-sandbox", "--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--ignore-gpu-blocklist", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
            await browser.DisposeAsync();
        playwright?.Dispose();
    }

    /// <summary>A fresh window with nothing remembered.</summary>
    public async Task<IBrowserContext> Window(int width = 1440, int height = 900, ColorScheme light = ColorScheme.Light, bool touch = false, bool forced = false, ReducedMotion motion = ReducedMotion.Reduce)
    {
        Assert.SkipWhen(browser is null, "No browser here: install chromium, or name one in CHROMIUM_PATH.");
        var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = height }, ColorScheme = light, HasTouch = touch, ReducedMotion = motion, ForcedColors = forced ? ForcedColors.Active : ForcedColors.None, AcceptDownloads = true });
        context.SetDefaultTimeout(40_000);
        return context;
    }

    private static string? Find()
    {
        if (Environment.GetEnvironmentVariable("CHROMIUM_PATH") is { Length: > 0 } named)
            return named;
        string[] names = OperatingSystem.IsWindows() ? ["chrome.exe", "msedge.exe"] : ["chromium", "chromium-browser", "google-chrome", "microsoft-edge"];
        return (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).SelectMany(p => names.Select(n => Path.Combine(p, n))).FirstOrDefault(File.Exists);
    }
}

/// <summary>The page on a folder of its own, in this process.</summary>
public sealed class Served : IAsyncDisposable
{
    private WebApplication app;
    private AircraftFolder folder;

    private Served(string root, AircraftFolder folder, WebApplication app, string address) => (Root, this.folder, this.app, Address) = (root, folder, app, address);

    public string Root { get; }

    public string Address { get; private set; }

    public static async Task<Served> Start(params (string Name, string Text)[] files)
    {
        // A folder as a builder names it: it is seen on the pictures.
        var root = Path.Combine(Directory.CreateTempSubdirectory("throwright-").FullName, "my-aircraft");
        Directory.CreateDirectory(root);
        foreach (var (name, text) in files)
            File.WriteAllText(Path.Combine(root, name + ".throwright.json"), text);
        var (folder, app, address) = await Run(root, 0);
        return new(root, folder, app, address);
    }

    public static Task<Served> Demo() => Start(("amphibian", AircraftFolder.DemoText()));

    /// <summary>The demo without its bodies, so with little to prove; the sheet stays, the conduits begin at it: for tests of other things.</summary>
    public static Task<Served> Bench()
    {
        var demo = AircraftFolder.DemoText();
        var bare = demo[..demo.IndexOf("  \"bodies\": [", StringComparison.Ordinal)] + demo[demo.IndexOf("  \"runs\": [", StringComparison.Ordinal)..];
        return Start(("amphibian", bare));
    }

    /// <summary>A part of the running page that a test listens to.</summary>
    public T Part<T>() where T : notnull => app.Services.GetRequiredService<T>();

    public string PathOf(string name) => Path.Combine(Root, name + ".throwright.json");

    /// <summary>As if the program was ended and started again, at the same address.</summary>
    public async Task Again(Func<Task>? between = null)
    {
        await Stop();
        if (between is not null)
            await between();
        (folder, app, Address) = await Run(Root, new Uri(Address).Port);
    }

    public async ValueTask DisposeAsync()
    {
        await Stop();
        Directory.Delete(Path.GetDirectoryName(Root)!, recursive: true);
    }

    private async Task Stop()
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(1));
        await app.StopAsync(patience.Token);
        await app.DisposeAsync();
        folder.Dispose();
    }

    private static async Task<(AircraftFolder Folder, WebApplication App, string Address)> Run(string root, int port)
    {
        var folder = new AircraftFolder(root);
        var app = WebApp.Build(folder, port);
        await app.StartAsync();
        return (folder, app, app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
    }
}

/// <summary>What tests ask of every window.</summary>
public static class WindowChecks
{
    /// <summary>Opens an address of the page and waits until the program has drawn it. Every request and fault is kept.</summary>
    public static async Task<Watched> Open(this IBrowserContext window, Served served, string path = "/")
    {
        var watched = new Watched(await window.NewPageAsync());
        await watched.Page.GotoAsync(served.Address + path);
        await watched.Page.WaitForSelectorAsync("html[data-ready=true] main h1");
        return watched;
    }

    /// <summary>Waits until every run is worked out, clearance is proved and the 3D view is drawn.</summary>
    public static async Task Settled(this IPage page)
    {
        await page.WaitForSelectorAsync("html[data-ready=true] main h1");
        await Assertions.Expect(page.Locator("[data-verdict=working], .working-line")).ToHaveCountAsync(0, new() { Timeout = 200_000 });
        await Assertions.Expect(page.Locator("canvas:not([data-mounted])")).ToHaveCountAsync(0, new() { Timeout = 150_000 });
    }

    /// <summary>Nothing scrolls sideways, and no word is cut off: neither by an edge of the window nor by a box or a drawing that it stands in.</summary>
    public static async Task NothingIsCut(this IPage page, string view)
    {
        var found = await page.EvaluateAsync<string[]>(Cut);
        Assert.True(found.Length == 0, $"{view}:\n{string.Join("\n", found)}");
    }

    private const string Cut = """
        () => {
          const found = [];
          const root = document.documentElement, wide = root.clientWidth;
          if (root.scrollWidth > wide) found.push(`the page is ${root.scrollWidth - wide} px too wide`);
          const words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
          const name = (text) => `"${text.data.trim().slice(0, 60)}" in ${text.parentElement.tagName.toLowerCase()}.${text.parentElement.className.baseVal ?? text.parentElement.className}`;
          const drawn = new Map();
          for (let text = words.nextNode(); text; text = words.nextNode()) {
            const own = text.parentElement;
            if (text.data.trim() === '' || own.closest('.unseen, .skip, script, style, title, desc, option, noscript, [hidden]') || !own.checkVisibility({ visibilityProperty: true })) continue;
            const range = document.createRange();
            range.selectNodeContents(text);
            const boxes = [...range.getClientRects()].filter((b) => b.width > 0);
            if (boxes.length === 0) continue;
            const box = { left: Math.min(...boxes.map((b) => b.left)), right: Math.max(...boxes.map((b) => b.right)), top: Math.min(...boxes.map((b) => b.top)), bottom: Math.max(...boxes.map((b) => b.bottom)) };
            let scrolls = false;
            for (let part = own; part && part !== document.body; part = part.parentElement) {
              const style = getComputedStyle(part), around = part.getBoundingClientRect();
              const flat = (v) => v === 'hidden' || v === 'clip';
              if (style.overflowX === 'auto' || style.overflowX === 'scroll') scrolls = true;
              const isDrawing = part.tagName === 'svg';
              if (!scrolls && (flat(style.overflowX) || isDrawing) && (box.left < around.left - 1.5 || box.right > around.right + 1.5)) found.push(`cut at a side: ${name(text)}`);
              if ((flat(style.overflowY) || isDrawing) && (box.top < around.top - 6 || box.bottom > around.bottom + 6)) found.push(`cut above or below: ${name(text)}`);
              if (isDrawing) {
                if (!drawn.has(part)) drawn.set(part, []);
                drawn.get(part).push({ box, text: text.data.trim(), of: own.closest('text') });
              }
            }
            if (!scrolls && (box.left < -0.5 || box.right > wide + 0.5)) found.push(`out of the window: ${name(text)}`);
          }
          // Two labels of a drawing on one another.
          for (const labels of drawn.values())
            for (let i = 0; i < labels.length; i++)
              for (let j = i + 1; j < labels.length; j++) {
                const a = labels[i], b = labels[j];
                if (a.of === b.of) continue;
                const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
                const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
                const low = Math.min(a.box.bottom - a.box.top, b.box.bottom - b.box.top);
                if (across > 1 && down > 0.45 * low) found.push(`on one another: "${a.text}" and "${b.text}"`);
              }
          return [...new Set(found)];
        }
        """;

    public static async Task HasNoAxeFinding(this IPage page, string view)
    {
        await page.WaitForSelectorAsync("html[data-ready=true] main h1");
        var result = await page.RunAxe();
        Assert.True(result.Violations.Length == 0, view + ": " + string.Join("\n", result.Violations.Select(v => $"{v.Id} ({v.Impact}): {v.Help}: {string.Join(" | ", v.Nodes.Take(4).Select(n => n.Html))}")));
    }
}

/// <summary>A page with everything that it asked for and everything that went wrong in it.</summary>
public sealed class Watched
{
    public Watched(IPage page)
    {
        Page = page;
        page.Request += (_, r) => Requests.Add(r.Url);
        page.PageError += (_, e) => Faults.Add(e);
        page.Console += (_, m) =>
        {
            if (m.Type == "error")
                Faults.Add(m.Text);
        };
    }

    public IPage Page { get; }

    public ConcurrentBag<string> Requests { get; } = [];

    public ConcurrentBag<string> Faults { get; } = [];
}
