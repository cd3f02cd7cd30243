using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Throwright.Browser.Tests;

/// <summary>Parts in 3D: drawn from the same bodies that go to the shop, turned by mouse and key, cut open, and every figure in a table.</summary>
public class PartViewTests(Chromium chromium)
{
    private const string Picture = "document.getElementById('part').toDataURL()";

    [Fact]
    public async Task Parts_AreDrawn_TurnedByKey_CutOpen_AndSaidInATable()
    {
        var shop = File.ReadAllText(Path.Combine(Throwright.Tests.ApprovedText.Root, "examples", "shop.throwright.json"));
        await using var served = await Served.Start(("shop", shop));
        await using var window = await chromium.Window();
        var watched = await window.Open(served, "/a/shop/making");
        var page = watched.Page;
        var folder = Environment.GetEnvironmentVariable("THROWRIGHT_PICTURES") is { Length: > 0 } named ? Path.Combine(Throwright.Tests.ApprovedText.Root, named) : null;
        foreach (var (part, fact) in ((string, string)[])[("wedge", "Thick edge"), ("guide", "Drill that is led"), ("bracket", "allowance")])
        {
            await page.GetByText($"Turn the {part} in 3D").ClickAsync(new() { Timeout = 90_000 });
            await Expect(page.Locator(".part-facts")).ToContainTextAsync(fact);
            await Expect(page.Locator("canvas#part[data-mounted=true]")).ToBeVisibleAsync();
            Assert.True(await page.EvaluateAsync<int>(Colours) > 8, $"{part}: nothing is drawn");
            var seen = await page.EvaluateAsync<string>(Picture);
            await page.Locator("#part").FocusAsync();
            await page.Keyboard.PressAsync("ArrowLeft");
            await page.WaitForFunctionAsync($"old => {Picture} !== old", seen);
            seen = await page.EvaluateAsync<string>(Picture);
            await page.Locator("#part-cut").FocusAsync();
            for (var i = 0; i < 5; i++)
                await page.Keyboard.PressAsync("PageUp");
            await Expect(page.Locator("#part-cut-at")).ToHaveTextAsync("50 %");
            await page.WaitForFunctionAsync($"old => {Picture} !== old", seen);
            await page.HasNoAxeFinding(part);
            await page.EvaluateAsync("() => document.activeElement.blur()");
            if (folder is not null)
                await page.Locator(".part-view").ScreenshotAsync(new() { Path = Path.Combine(folder, $"part-{part}-day.png") });
        }

        if (folder is not null)
        {
            await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
            await page.HasNoAxeFinding("bracket by lamp");
            await page.Locator(".part-view").ScreenshotAsync(new() { Path = Path.Combine(folder, "part-bracket-lamp.png") });
        }

        Assert.Empty(watched.Faults);
    }

    private const string Colours = """
        () => {
          const from = document.getElementById('part'), to = document.createElement('canvas');
          [to.width, to.height] = [from.width, from.height];
          const pen = to.getContext('2d');
          pen.drawImage(from, 0, 0);
          return new Set(new Uint32Array(pen.getImageData(0, 0, to.width, to.height).data.buffer)).size;
        }
        """;
}
