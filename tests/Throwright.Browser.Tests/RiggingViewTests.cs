using Microsoft.Playwright;
using Throwright.Files.Form;
using static Microsoft.Playwright.Assertions;

namespace Throwright.Browser.Tests;

/// <summary>Readings taken on the page: refused beside the field, fitted as they are typed, kept in the file's record, undone.</summary>
public class RiggingViewTests(Chromium chromium)
{
    [Fact]
    public async Task Readings_AreFittedAsTyped_KeptInTheFile_AndUndone()
    {
        await using var served = await Served.Bench();
        await using var window = await chromium.Window();
        var watched = await window.Open(served, "/a/amphibian/rigging");
        var page = watched.Page;
        await page.HasNoAxeFinding("rigging, all");
        await page.Locator("main a.placard", new() { HasText = "CARB HEAT" }).ClickAsync();
        await Expect(page.Locator(".rigging .warning").First).ToContainTextAsync("propeller");
        var path = served.PathOf("amphibian");
        var before = File.ReadAllText(path);
        var records = FileValues.Of(before).At("$.runs[1].asBuilt[1].date")!.Shown;
        Assert.Equal("2026-03-01", records);

        // What can't be read is refused beside the field, in the reader's own words.
        await page.FillAsync("#read-knobAtPush", "3/8 lbf");
        await Expect(page.Locator("#read-knobAtPush-said .error")).ToContainTextAsync("Expected");
        await Expect(page.Locator("#read-knobAtPush")).ToHaveAttributeAsync("aria-invalid", "true");
        await Expect(page.Locator("#meaning button[data-key=k]")).ToHaveCountAsync(0);

        // Half typed, the window lost: it is in its field again.
        await page.FillAsync("#read-knobAtPush", "1/16 in");
        await Expect(page.Locator("#read-knobAtPush-said")).ToContainTextAsync("1.6 mm");
        await page.ReloadAsync();
        await Expect(page.Locator("#read-knobAtPush")).ToHaveValueAsync("1/16 in");

        // A bare number is read in the units shown; both ends tell the one step.
        await page.FillAsync("#read-knobAtPull", "1.79");
        await page.FillAsync("#read-tipGap", "3 37/64 in");
        await page.FillAsync("#read-sweep", "90 deg");
        await page.FillAsync("#read-temperature", "68 degF");
        // A force out of its limits is said where it is typed, as a length is.
        await page.FillAsync("#read-pull", "90 lbf");
        await Expect(page.Locator("#read-pull-said")).ToContainTextAsync("Outside what must be");
        await page.FillAsync("#read-pull", "");
        await Expect(page.Locator(".advice")).ToContainTextAsync("Slide the swivel");
        await Expect(page.Locator("h1")).ToContainTextAsync("Slide the swivel");
        await Expect(page.Locator("#meaning")).ToContainTextAsync("as fitted");
        await page.HasNoAxeFinding("rigging, readings");
        Assert.Equal(before, File.ReadAllText(path));
        if (Environment.GetEnvironmentVariable("THROWRIGHT_PICTURES") is { Length: > 0 } folder)
        {
            // The fields that were typed into, beside what they say.
            await page.EvaluateAsync("() => { document.activeElement.blur(); document.getElementById('read-knobAtPush').closest('li').scrollIntoView(); }");
            await page.ScreenshotAsync(new() { Path = Path.Combine(Throwright.Tests.ApprovedText.Root, folder, "readings-day.png") });
            await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
            await page.ScreenshotAsync(new() { Path = Path.Combine(Throwright.Tests.ApprovedText.Root, folder, "readings-lamp.png") });
            await page.SetViewportSizeAsync(390, 844);
            await page.EvaluateAsync("() => document.getElementById('read-knobAtPush').closest('li').scrollIntoView()");
            await page.ScreenshotAsync(new() { Path = Path.Combine(Throwright.Tests.ApprovedText.Root, folder, "readings-lamp-phone.png") });
            await page.SetViewportSizeAsync(1440, 900);
        }

        await page.FillAsync("#read-date", "2026-07-14");
        await page.Locator("#meaning button[data-key=k]").ClickAsync();
        await Expect(page.Locator("#meaning")).ToContainTextAsync("Kept: the readings of 2026-07-14");
        await Expect(page.Locator("#read-knobAtPush")).ToHaveValueAsync("");
        var values = FileValues.Of(File.ReadAllText(path));
        Assert.Equal(("2026-07-14", "1/16 in", "1.79 in"), (values.At("$.runs[1].asBuilt[2].date")!.Shown, values.At("$.runs[1].asBuilt[2].knobAtPush")!.Shown, values.At("$.runs[1].asBuilt[2].knobAtPull")!.Shown));

        await page.ClickAsync("#undo");
        await Expect(page.Locator("#redo")).ToHaveAttributeAsync("title", "Redo: readings of 2026-07-14");
        Assert.Equal(before, File.ReadAllText(path));
        Assert.Empty(watched.Faults);
    }
}
