using Microsoft.Playwright;
using Throwright.Tests;
using static Microsoft.Playwright.Assertions;

namespace Throwright.Browser.Tests;

/// <summary>The 3D view under a hand: what moves is dragged in the picture, as far as its stops; parts are picked and measured, with the mouse and by key.</summary>
public class HandsTests(Chromium chromium)
{
    private static Task<Served> Biplane() => Served.Start(("biplane", File.ReadAllText(Path.Combine(ApprovedText.Root, "examples", "biplane.throwright.json"))));

    /// <summary>A place of the picture where that part is seen: round its middle, which the view tells of what is picked.</summary>
    private static async Task<(float X, float Y)> Find(IPage page, string part)
    {
        await page.GetByLabel("Pick a part").SelectOptionAsync(part);
        await Expect(page.Locator("#canvas")).ToHaveAttributeAsync("data-picked", part);
        await page.Locator("#canvas").ScrollIntoViewIfNeededAsync();
        var at = (await page.Locator("#canvas").GetAttributeAsync("data-at"))!.Split(',').Select(v => float.Parse(v, System.Globalization.CultureInfo.InvariantCulture)).ToList();
        var box = (await page.Locator("#canvas").BoundingBoxAsync())!;
        foreach (var (x, y) in Enumerable.Range(-4, 9).SelectMany(i => Enumerable.Range(-8, 17).Select(j => (10 * i, 10 * j))).OrderBy(p => (p.Item1 * p.Item1) + (p.Item2 * p.Item2)))
        {
            var (atX, atY) = (box.X + at[0] + x, box.Y + at[1] + y);
            await page.Mouse.MoveAsync(atX, atY);
            if (await Over(page) == part)
                return (atX, atY);
        }

        throw new InvalidOperationException($"{part} is not seen.");
    }

    private static Task<string> Over(IPage page) =>
        page.EvaluateAsync<string>("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done(document.getElementById('canvas').dataset.over ?? ''))))");

    private static async Task Drag(IPage page, (float X, float Y) from, float byX, float byY)
    {
        await page.Mouse.MoveAsync(from.X, from.Y);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(from.X + byX, from.Y + byY, new() { Steps = 12 });
        await page.Mouse.UpAsync();
    }

    private static Task<string> Picture(IPage page) => page.EvaluateAsync<string>("document.getElementById('canvas').toDataURL()");

    [Fact]
    public async Task Stick_DraggedInThePicture_GoesToItsGate_AndItsSlidersGoAlong()
    {
        await using var served = await Biplane();
        await using var window = await chromium.Window();
        var watched = await window.Open(served, "/a/biplane/cockpit");
        var page = watched.Page;
        await page.Settled();
        await page.Locator("[data-look=left]").ClickAsync();
        var (pitch, roll) = (page.Locator("input[data-joint='stick pitch']"), page.Locator("input[data-joint='stick roll']"));

        // From the left, fore and aft is drawn across the picture: the stick's pitch follows, its roll stays.
        await pitch.EvaluateAsync("e => { e.value = 0; e.dispatchEvent(new Event('input', { bubbles: true })); }");
        await roll.EvaluateAsync("e => { e.value = 0; e.dispatchEvent(new Event('input', { bubbles: true })); }");
        var before = await Picture(page);
        var grip = await Find(page, "stick");
        await Drag(page, grip, 60, 0);
        await Expect(page.Locator("#canvas")).ToHaveAttributeAsync("data-dragged", "stick pitch");
        Assert.NotEqual(0, double.Parse(await pitch.InputValueAsync(), System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(0, double.Parse(await roll.InputValueAsync(), System.Globalization.CultureInfo.InvariantCulture), 0.002);
        Assert.NotEqual(before, await Picture(page));

        // Full aft by key: then the gate stops the roll short of its own stop, and says so.
        await pitch.FocusAsync();
        await page.Keyboard.PressAsync("End");
        await roll.FocusAsync();
        await page.Keyboard.PressAsync("End");
        await Expect(page.Locator($"output[for={await roll.GetAttributeAsync("id")}]")).ToContainTextAsync("stopped: stick pitch with roll");
        var (at, own) = (double.Parse(await roll.InputValueAsync(), System.Globalization.CultureInfo.InvariantCulture), double.Parse((await roll.GetAttributeAsync("max"))!, System.Globalization.CultureInfo.InvariantCulture));
        Assert.True(at < own - 0.05, $"{at} of {own} rad");
        Assert.Equal(12, at * 180 / Math.PI, 0.3);
        Assert.Equal("", string.Join("\n", watched.Faults));
    }

    [Fact]
    public async Task Knob_DraggedInThePicture_TakesItsArmAlong_AndStopsAtItsStroke()
    {
        await using var served = await Served.Demo();
        await using var window = await chromium.Window();
        var watched = await window.Open(served, "/a/amphibian/cockpit/cowl-flap");
        var page = watched.Page;
        await page.Settled();
        await page.Locator("[data-look=left]").ClickAsync();
        var pull = page.Locator("input[data-joint*='pull'], input[data-kind=slide]").First;
        await pull.EvaluateAsync("e => { e.value = e.min; e.dispatchEvent(new Event('input', { bubbles: true })); }");
        var knob = await Find(page, "COWL FLAP");
        var before = await Picture(page);
        // Aft is away from the nose: to the right when looked at from the left side, or to the left; a hand goes both ways.
        await Drag(page, knob, 400, 0);
        if (double.Parse(await pull.InputValueAsync(), System.Globalization.CultureInfo.InvariantCulture) == 0)
            await Drag(page, knob, -400, 0);
        Assert.Equal(double.Parse((await pull.GetAttributeAsync("max"))!, System.Globalization.CultureInfo.InvariantCulture), double.Parse(await pull.InputValueAsync(), System.Globalization.CultureInfo.InvariantCulture), 1e-4);
        Assert.NotEqual(before, await Picture(page));
        Assert.Equal("", string.Join("\n", watched.Faults));
    }

    [Fact]
    public async Task Part_PickedByClickOrFromTheList_IsNamed_WithItsDistances_AndItsRun()
    {
        await using var served = await Served.Demo();
        await using var window = await chromium.Window();
        var watched = await window.Open(served, "/a/amphibian/cockpit/cowl-flap");
        var page = watched.Page;
        await page.Settled();
        var knob = await Find(page, "COWL FLAP");
        await page.Mouse.ClickAsync(knob.X, knob.Y);
        await Expect(page.Locator("#canvas")).ToHaveAttributeAsync("data-picked", "COWL FLAP");
        var facts = page.Locator(".picked-facts");
        await Expect(facts).ToContainTextAsync("COWL FLAP, a handle");
        Assert.NotEqual(0, await facts.Locator("tbody tr").CountAsync());
        await page.HasNoAxeFinding("a part picked");

        // From the keyboard: another part, then two points with names.
        var before = await Picture(page);
        await page.GetByLabel("Pick a part").SelectOptionAsync("COWL FLAP lever");
        await Expect(page.Locator("#canvas")).ToHaveAttributeAsync("data-picked", "COWL FLAP lever");
        await page.GetByLabel("Pick a part").SelectOptionAsync("yoke");
        await page.WaitForFunctionAsync("old => document.getElementById('canvas').toDataURL() !== old", before);
        await page.GetByLabel("Pick a part").SelectOptionAsync("COWL FLAP lever");
        await Expect(facts).ToContainTextAsync("COWL FLAP lever");
        await page.GetByLabel("Measure from").SelectOptionAsync("hole of COWL FLAP");
        await page.GetByLabel("to", new() { Exact = true }).SelectOptionAsync("arm's pivot of COWL FLAP");
        await Expect(page.Locator("#measured-named")).ToContainTextAsync("from hole of COWL FLAP to arm's pivot of COWL FLAP");
        if (Environment.GetEnvironmentVariable("THROWRIGHT_PICTURES") is { Length: > 0 } folder)
            await page.ScreenshotAsync(new() { Path = Path.Combine(ApprovedText.Root, folder, "picked-day.png"), FullPage = true });

        await facts.GetByText("Open this run").ClickAsync();
        await page.WaitForURLAsync("**/run/cowl-flap");
        Assert.Equal("", string.Join("\n", watched.Faults));
    }
}
