using Microsoft.Playwright;
using Throwright.Tests;
using static Microsoft.Playwright.Assertions;

namespace Throwright.Browser.Tests;

/// <summary>What belongs to no one run, on the board; what breaks and what is looked at, on its own page.</summary>
public class WholeAircraftTests(Chromium chromium)
{
    private static async Task Picture(IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("THROWRIGHT_PICTURES") is { Length: > 0 } folder)
            await page.ScreenshotAsync(new() { Path = Path.Combine(ApprovedText.Root, folder, name + ".png"), FullPage = true });
    }

    [Fact]
    public async Task Board_TellsWhatLiesBetweenRuns_AndWhatTheCockpitStillWaitsFor()
    {
        await using var served = await Served.Demo();
        foreach (var light in (ColorScheme[])[ColorScheme.Light, ColorScheme.Dark])
        {
            await using var window = await chromium.Window(light: light);
            var watched = await window.Open(served, "/a/amphibian");
            var page = watched.Page;
            await page.Settled();
            var whole = page.Locator("#whole");
            // The order of the knobs belongs to two runs: it is told once, with both.
            var order = whole.Locator("[data-rule='prove/carburettor-heat-place']");
            await Expect(order).ToHaveCountAsync(1);
            await Expect(order).ToContainTextAsync("Between CARB HEAT and MIXTURE");
            await page.HasNoAxeFinding("board, the whole aircraft");
            await page.NothingIsCut("board, the whole aircraft");
            await Picture(page, light == ColorScheme.Light ? "whole-day" : "whole-lamp");
            await order.GetByRole(AriaRole.Link).First.ClickAsync();
            await page.WaitForURLAsync("**/run/carb-heat#findings");
            Assert.Equal("", string.Join("\n", watched.Faults));
        }
    }

    [Theory]
    [InlineData(1440, 900, ColorScheme.Light)]
    [InlineData(1440, 900, ColorScheme.Dark)]
    [InlineData(390, 844, ColorScheme.Light)]
    public async Task Upkeep_SaysWhatBreaks_WhatIsLookedAt_AndHowReadingsMove(int width, int height, ColorScheme light)
    {
        await using var served = await Served.Demo();
        await using var window = await chromium.Window(width, height, light, touch: width < 700);
        var watched = await window.Open(served, "/a/amphibian/upkeep");
        var page = watched.Page;
        await page.HasNoAxeFinding("upkeep, all controls");
        await page.NothingIsCut("upkeep, all controls");
        await page.GetByRole(AriaRole.Link, new() { Name = "CARB HEAT" }).ClickAsync();
        await page.WaitForURLAsync("**/upkeep/carb-heat");
        await Expect(page.Locator("#failures tr[data-failure=WireParts]")).ToHaveCountAsync(1);
        await Expect(page.Locator("#failures tr[data-failure=AnchorSlips]")).ToHaveCountAsync(1);
        Assert.NotEqual(0, await page.Locator("#inspection tbody tr").CountAsync());
        Assert.NotEqual(0, await page.Locator("#history .drift svg").CountAsync());
        await Expect(page.Locator("#history .history tbody tr")).ToHaveCountAsync(2);
        await page.HasNoAxeFinding("upkeep of a run");
        await page.NothingIsCut("upkeep of a run");
        await Picture(page, $"upkeep-{width}-{light}");
        Assert.Equal("", string.Join("\n", watched.Faults));
    }
}
