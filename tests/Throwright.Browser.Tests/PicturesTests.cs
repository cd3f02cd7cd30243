using Microsoft.Playwright;

namespace Throwright.Browser.Tests;

/// <summary>
/// Every view by day and by lamp. With THROWRIGHT_PICTURES=FOLDER also as pictures, desk and phone, for the documentation:
/// THROWRIGHT_PICTURES=docs/pictures/page dotnet test --project tests/Throwright.Browser.Tests --filter-class '*PicturesTests' --filter-class '*TiltTests' --filter-class '*RiggingViewTests' --filter-class '*PartViewTests'
/// </summary>
public sealed class PicturesTests(Chromium chromium, PicturesTests.Demo demo) : IClassFixture<PicturesTests.Demo>
{
    /// <summary>One program for all views, so that clearance is proved once.</summary>
    public sealed class Demo : IAsyncLifetime
    {
        public Served Served { get; private set; } = null!;

        public async ValueTask InitializeAsync() => Served = await Served.Demo();

        public ValueTask DisposeAsync() => Served.DisposeAsync();
    }

    private static readonly string? Folder = Environment.GetEnvironmentVariable("THROWRIGHT_PICTURES") is { Length: > 0 } named ? Path.Combine(Throwright.Tests.ApprovedText.Root, named) : null;

    public static TheoryData<string, string> Views => new()
    {
        { "board", "/a/amphibian" },
        { "run", "/a/amphibian/run/cowl-flap/arm" },
        { "try", "/a/amphibian/run/cowl-flap/arm?try=cushion/knob-out" },
        { "cockpit", "/a/amphibian/cockpit/cowl-flap" },
        { "making", "/a/amphibian/making" },
        { "rigging", "/a/amphibian/rigging/carb-heat" },
        { "start", "/" },
        { "new-run", "/a/amphibian/new" },
        { "aircraft", "/a/amphibian/aircraft" },
        { "papers", "/a/amphibian/papers" },
        { "upkeep", "/a/amphibian/upkeep/carb-heat" },
    };

    [Theory]
    [MemberData(nameof(Views))]
    public async Task View_InBothLights_IsWholeAndReadable(string name, string path)
    {
        var served = demo.Served;
        foreach (var (light, word) in ((ColorScheme, string)[])[(ColorScheme.Light, "day"), (ColorScheme.Dark, "lamp")])
        {
            foreach (var (width, height, size) in ((int, int, string)[])[(1440, 900, ""), (390, 844, "-phone")])
            {
                // Without pictures one window each: the desk by lamp, the phone by day.
                if (Folder is null && (light == ColorScheme.Dark) != (size.Length == 0))
                    continue;
                await using var window = await chromium.Window(width, height, light);
                var watched = await window.Open(served, path);
                await watched.Page.Settled();
                await watched.Page.EvaluateAsync("document.fonts.ready");
                await watched.Page.HasNoAxeFinding($"{name}, {word}{size}");
                await watched.Page.NothingIsCut($"{name}, {word}{size}");
                Assert.Empty(await watched.Page.EvaluateAsync<string[]>(RedOutsideHandles));
                Assert.Empty(watched.Faults);
                if (Folder is not null)
                    await watched.Page.ScreenshotAsync(new() { Path = Path.Combine(Folder, $"{name}-{word}{size}.png") });
            }
        }
    }

    /// <summary>Everything whose colour is red (hue within 25 degrees of red, clearly coloured) and that is no handle.</summary>
    private const string RedOutsideHandles = """
        () => {
          const isRed = (colour) => {
            const part = /rgba?\(([\d.]+), ([\d.]+), ([\d.]+)(?:, ([\d.]+))?\)/.exec(colour);
            if (!part || part[4] === '0') return false;
            const [r, g, b] = part.slice(1, 4).map((v) => v / 255);
            const most = Math.max(r, g, b), span = most - Math.min(r, g, b);
            if (span < 0.25 || most !== r) return false;
            return Math.abs(60 * ((g - b) / span)) < 25;
          };
          const found = [];
          for (const part of document.querySelectorAll('body, body *')) {
            if (part.closest('.tw-handle')) continue;
            const style = getComputedStyle(part);
            for (const name of ['color', 'backgroundColor', 'fill', 'stroke', 'borderTopColor', 'borderBottomColor', 'borderLeftColor', 'outlineColor'])
              if (isRed(style[name])) found.push(`${part.tagName} ${part.className.baseVal ?? part.className} ${name} ${style[name]}`);
          }
          return found;
        }
        """;
}
