using Microsoft.Playwright;
using Throwright.Files;
using Throwright.Files.Form;
using Throwright.Tests;
using static Microsoft.Playwright.Assertions;

namespace Throwright.Browser.Tests;

/// <summary>From three numbers on the bench to a run that stands in the aircraft, without an editor.</summary>
public class PlaceTests(Chromium chromium)
{
    [Theory]
    [InlineData(1440, 900, ColorScheme.Light)]
    [InlineData(390, 844, ColorScheme.Dark)]
    public async Task NewAircraft_IsPlacedStepByStep_AndNothingIsLostGoingBack(int width, int height, ColorScheme light)
    {
        await using var served = await Served.Start();
        await using var window = await chromium.Window(width, height, light, touch: width < 700);
        var watched = await window.Open(served);
        var page = watched.Page;
        async Task Picture(string name)
        {
            if (Environment.GetEnvironmentVariable("THROWRIGHT_PICTURES") is { Length: > 0 } folder)
                await page.ScreenshotAsync(new() { Path = Path.Combine(ApprovedText.Root, folder, $"{name}-{width}.png"), FullPage = true });
        }

        // The bench form first: three numbers.
        await page.GetByLabel("arm, pivot to hole").FillAsync("1 1/2 in");
        await page.GetByLabel("it turns").FillAsync("80 deg");
        await page.GetByLabel("knob pulls out").FillAsync("3 in");
        await page.GetByText("Draw the ladder").ClickAsync();
        await page.WaitForURLAsync("**/run/first-control");
        await page.GetByText("Place it in the aircraft").ClickAsync();
        await page.WaitForURLAsync("**/place/first-control");
        await page.HasNoAxeFinding("place, points");

        // Points: by coordinates, refused as typed, then by tape.
        var name = page.GetByLabel("a new point");
        var at = page.GetByLabel("station, buttline, waterline");
        async Task Point(string of, string where)
        {
            await name.FillAsync(of);
            await at.FillAsync(where);
            await page.GetByText("Add this point").ClickAsync();
            await Expect(page.Locator("table.found")).ToContainTextAsync(of);
        }

        await name.FillAsync("datum");
        await at.FillAsync("0 in, 0 lbf, 0 in");
        await Expect(page.Locator("[data-answer=point-at] [role=alert]")).ToContainTextAsync("length");
        await Picture("place-refused");
        await Point("datum", "0, 0, 0");
        await Point("left", "0 in, -20 in, 0 in");
        await Point("top", "0 in, 0 in, 20 in");
        // By tape from three points in one plane: the side settles which of two places. 40 in aft of the datum, square to the plane.
        await name.FillAsync("valve");
        await page.GetByLabel("I know it").SelectOptionAsync("tape");
        string[] from = ["datum", "left", "top"];
        string[] far = ["40 in", "44 23/32 in", "44 23/32 in"];
        for (var i = 0; i < 3; i++)
        {
            await page.Locator($"#tape-from-{i + 1}").SelectOptionAsync(from[i]);
            await page.Locator($"#tape-far-{i + 1}").FillAsync(far[i]);
        }

        await Expect(page.Locator("#point-found")).ToContainTextAsync("Two places fit");
        await page.GetByLabel("of two places, the one").SelectOptionAsync("aftOf");
        await Expect(page.Locator("#point-found")).ToContainTextAsync("It would stand at 4");
        await page.HasNoAxeFinding("place, by tape");
        await page.NothingIsCut("place, by tape");
        await Picture("place-tape");

        // Away and back: what was typed is there.
        await page.GetByText("Next: the sheet").ClickAsync();
        await page.WaitForURLAsync("**/place/first-control/sheet");
        await page.GetByText("Back: the points").ClickAsync();
        await Expect(page.Locator("#tape-far-2")).ToHaveValueAsync("44 23/32 in");
        await page.ReloadAsync();
        await page.WaitForSelectorAsync("html[data-ready=true] main h1");
        await Expect(page.Locator("#tape-far-3")).ToHaveValueAsync("44 23/32 in");
        await page.GetByText("Add this point").ClickAsync();
        await Expect(page.Locator("table.found")).ToContainTextAsync("by tape, give or take");

        // The sheet and the hole.
        await page.GetByText("Next: the sheet").ClickAsync();
        await page.GetByLabel("its name").FillAsync("panel");
        await page.GetByLabel("a point on its face").FillAsync("60 in, 0 in, 10 in");
        await page.GetByLabel("its face looks").FillAsync("sideways");
        await Expect(page.Locator("[data-answer=sheet-normal] [role=alert]")).ToBeVisibleAsync();
        await page.GetByLabel("its face looks").FillAsync("aft");
        await page.GetByLabel("middle of the hole").FillAsync("60, 2, 10");
        await page.HasNoAxeFinding("place, sheet");
        await page.NothingIsCut("place, sheet");
        await Picture("place-sheet");
        await page.GetByText("Keep sheet and hole").ClickAsync();
        await page.WaitForURLAsync("**/place/first-control/arm");

        // Arm and anchor: together, or asked for.
        await page.GetByLabel("arm's pivot").FillAsync("valve");
        await page.GetByText("Keep arm and anchor").ClickAsync();
        await Expect(page.Locator("p.error[role=alert]").Last).ToContainTextAsync("These belong together");
        await page.GetByLabel("it turns about").FillAsync("left");
        await page.GetByLabel("at angle zero the arm points").FillAsync("up");
        await page.GetByLabel("arm's angle, knob pushed").FillAsync("-40");
        await page.GetByLabel("arm's angle, knob pulled").FillAsync("40 deg ± 1 deg");
        await page.GetByLabel("conduit's anchor").FillAsync("45 in, 0 in, 1 1/2 in");
        await page.HasNoAxeFinding("place, arm");
        await page.NothingIsCut("place, arm");
        await Picture("place-arm");
        await page.GetByText("Keep arm and anchor").ClickAsync();
        await page.WaitForURLAsync("**/run/first-control");
        var file = AircraftFile.Read(served.PathOf("my-aircraft"));
        Assert.Empty(file.Problems);
        var run = file.Aircraft!.Runs.Single();
        Assert.NotNull(run.LeverEnd!.Placed);
        Assert.Equal((60, 2), (Math.Round(run.CockpitEnd!.Hole!.Station.Nominal.Metres / 0.0254, 6), Math.Round(run.CockpitEnd.Hole.Buttline.Nominal.Metres / 0.0254, 6)));
        Assert.Null(FileValues.Of(file.Text).At("$.runs[0].leverEnd.bench"));
        // One step back is the bench again.
        await page.WaitForSelectorAsync("main.run h1");
        await Expect(page.Locator("#undo")).ToHaveAttributeAsync("title", new System.Text.RegularExpressions.Regex("arm and anchor"));
        await page.ClickAsync("#undo");
        await Expect(page.Locator("#redo")).ToHaveAttributeAsync("title", new System.Text.RegularExpressions.Regex("arm and anchor"));
        Assert.NotNull(FileValues.Of(File.ReadAllText(served.PathOf("my-aircraft"))).At("$.runs[0].leverEnd.bench"));
        Assert.Equal("", string.Join("\n", watched.Faults));
    }
}
