using Throwright.Files.Form;
using Throwright.Tests;
using static Microsoft.Playwright.Assertions;

namespace Throwright.Browser.Tests;

/// <summary>What the engine can find is asked with a button, tried on the drawing, kept or undone.</summary>
public class WorkedTests(Chromium chromium)
{
    [Fact]
    public async Task Searches_OfEveryPart_AreTried_AndTheKeptOneIsUndone()
    {
        await using var served = await Served.Demo();
        await using var window = await chromium.Window();
        var watched = await window.Open(served, "/a/amphibian/run/cowl-flap/arm");
        var page = watched.Page;
        await page.Settled();
        var before = File.ReadAllText(served.PathOf("amphibian"));
        var worked = page.Locator("#worked");
        await worked.Locator("[data-ask=hole]").ClickAsync();
        // The arm has three holes.
        await Expect(worked.Locator(".ways > li")).ToHaveCountAsync(3);
        await page.HasNoAxeFinding("worked out");
        await page.NothingIsCut("worked out");
        if (Environment.GetEnvironmentVariable("THROWRIGHT_PICTURES") is { Length: > 0 } folder)
            await page.ScreenshotAsync(new() { Path = Path.Combine(ApprovedText.Root, folder, "worked-day.png"), FullPage = true });
        await worked.GetByText("Try it on the drawing").First.ClickAsync();
        await Expect(worked.Locator(".would")).ToContainTextAsync("The run would be");
        Assert.Equal(before, File.ReadAllText(served.PathOf("amphibian")));
        await worked.GetByText("Keep this").ClickAsync();
        await Expect(page.Locator("#undo")).ToBeEnabledAsync();
        Assert.NotEqual(before, File.ReadAllText(served.PathOf("amphibian")));
        // What was found before the change says so.
        await Expect(worked).ToContainTextAsync("Worked out before the last change");
        await page.ClickAsync("#undo");
        await Expect(page.Locator("#redo")).ToBeEnabledAsync();
        Assert.Equal(before, File.ReadAllText(served.PathOf("amphibian")));
        foreach (var (part, key) in ((string, string)[])[("device", "clocking"), ("anchor", "anchor"), ("knob", "stroke")])
        {
            await page.GotoAsync($"{served.Address}/a/amphibian/run/cowl-flap/{part}");
            await page.Settled();
            await worked.Locator($"[data-ask={key}]").ClickAsync();
            await Expect(worked.Locator("p[role=status] b")).Not.ToHaveTextAsync("");
        }

        Assert.Equal("", string.Join("\n", watched.Faults));
    }

    [Fact]
    public async Task Route_IsPlannedBesideAnEdit_AndStopped_OrKept()
    {
        await using var served = await Served.Bench();
        await using var window = await chromium.Window();
        var watched = await window.Open(served, "/a/amphibian/run/cowl-flap/conduit");
        var page = watched.Page;
        await page.Settled();
        var worked = page.Locator("#worked");
        await worked.Locator("[data-ask=route]").ClickAsync();
        await Expect(worked.Locator(".ways > li").First).ToBeVisibleAsync(new() { Timeout = 120_000 });
        var way = worked.Locator(".ways > li:has(button)").First;
        await way.GetByText("Try it on the drawing").ClickAsync();
        await Expect(worked.Locator(".would")).ToContainTextAsync("The run would be");
        await worked.GetByText("Keep this").ClickAsync();
        await Expect(page.Locator("#undo")).ToBeEnabledAsync();
        Assert.NotNull(FileValues.Of(File.ReadAllText(served.PathOf("amphibian"))).At("$.runs[0].cable.length"));
        Assert.Equal("", string.Join("\n", watched.Faults));
    }

    [Fact]
    public async Task FouledHandle_HasOtherCures_InTheCockpit()
    {
        await using var served = await Served.Demo();
        await using var window = await chromium.Window();
        var watched = await window.Open(served, "/a/amphibian/cockpit/cowl-flap");
        var page = watched.Page;
        await page.Settled();
        var worked = page.Locator("#worked");
        await worked.Locator("[data-ask=mount]").ClickAsync();
        await Expect(worked.Locator(".ways > li").Nth(1)).ToBeVisibleAsync(new() { Timeout = 200_000 });
        await worked.Locator(".ways > li").Last.GetByText("Try it on the drawing").ClickAsync();
        await Expect(worked.Locator(".would")).ToContainTextAsync("The run would be", new() { Timeout = 120_000 });
        await Expect(page.Locator(".pairs tr[data-hits=true]")).ToHaveCountAsync(0);
        await page.HasNoAxeFinding("other cures");
        if (Environment.GetEnvironmentVariable("THROWRIGHT_PICTURES") is { Length: > 0 } folder)
            await page.ScreenshotAsync(new() { Path = Path.Combine(ApprovedText.Root, folder, "cures-day.png"), FullPage = true });
        await worked.GetByText("Undo the try").ClickAsync();
        await Expect(worked.Locator(".would")).ToHaveCountAsync(0);
        Assert.Equal("", string.Join("\n", watched.Faults));
    }
}
