using Throwright.Files.Form;
using Throwright.Web.Editing;
using static Microsoft.Playwright.Assertions;

namespace Throwright.Browser.Tests;

/// <summary>The map of tilts on the page: tried with the mouse and with the keyboard, kept, undone, and never in the way of an edit.</summary>
public class TiltTests(Chromium chromium)
{
    private const string Tilt = "$.runs[0].cockpitEnd.tilt";

    [Fact]
    public async Task Tilt_OfAFouledHandle_IsTriedByKeyAndClick_ThenKept_ThenUndone()
    {
        await using var served = await Served.Demo();
        // Held at its first cells: on an idle machine it is proved before anyone has looked.
        using var open = new ManualResetEventSlim();
        served.Part<TiltMaps>().Reached += _ => open.Wait(TimeSpan.FromMinutes(2));
        await using var window = await chromium.Window();
        var watched = await window.Open(served, "/a/amphibian/cockpit/cowl-flap");
        var page = watched.Page;

        // Progress is shown, and an edit elsewhere is not held up by it.
        await Expect(page.Locator("#tilts .working-line")).ToBeVisibleAsync();
        var other = await window.Open(served, "/a/amphibian/run/mixture/arm");
        await other.Page.GetByLabel("pivot to hole", new() { Exact = true }).FillAsync("1 1/4 in");
        await other.Page.GetByLabel("pivot to hole", new() { Exact = true }).PressAsync("Enter");
        await Expect(other.Page.Locator("#undo")).ToHaveAttributeAsync("title", new System.Text.RegularExpressions.Regex("pivot to hole 1 1/4 in"));
        await other.Page.CloseAsync();

        open.Set();
        await page.Settled();
        await Expect(page.Locator("#tilt-here")).ToContainTextAsync("proved");
        var before = File.ReadAllText(served.PathOf("amphibian"));
        await page.HasNoAxeFinding("map of tilts");
        if (Environment.GetEnvironmentVariable("THROWRIGHT_PICTURES") is { Length: > 0 } folder)
            await page.ScreenshotAsync(new() { Path = Path.Combine(Throwright.Tests.ApprovedText.Root, folder, "tilt-day.png") });

        // With the keyboard: two cells to the right of the least tilt, and Enter.
        await page.Locator("#tilt-map").FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(page.Locator("#tilt-here")).ToContainTextAsync("every tilt of this cell keeps");
        var scene = await page.EvaluateAsync<string>("document.getElementById('canvas').toDataURL()");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#tilts .would")).ToContainTextAsync("The run would be", new() { Timeout = 60_000 });
        // The cockpit follows, and nothing is written.
        await Expect(page.Locator(".pairs tr[data-hits=true]")).ToHaveCountAsync(0);
        await page.WaitForFunctionAsync("old => document.getElementById('canvas').toDataURL() !== old", scene);
        Assert.Equal(before, File.ReadAllText(served.PathOf("amphibian")));

        // With the mouse: a cell of the left edge, which touches.
        await page.Locator("#tilt-map [data-cell='10,1']").ClickAsync();
        await Expect(page.Locator("#tilts .would")).ToContainTextAsync("it touches", new() { Timeout = 60_000 });
        await page.GetByText("Undo the try").ClickAsync();
        await Expect(page.Locator("#tilts .would")).ToHaveCountAsync(0);

        // Kept, then undone.
        await page.Locator("#tilts button[data-key=t]").ClickAsync();
        await page.Locator("#tilts button[data-key=k]").ClickAsync(new() { Timeout = 60_000 });
        await Expect(page.Locator("#undo")).ToHaveAttributeAsync("title", new System.Text.RegularExpressions.Regex("tilt the handle"));
        Assert.NotNull(FileValues.Of(File.ReadAllText(served.PathOf("amphibian"))).At(Tilt + ".right"));
        await page.ClickAsync("#undo");
        await Expect(page.Locator("#redo")).ToHaveAttributeAsync("title", new System.Text.RegularExpressions.Regex("tilt the handle"));
        Assert.Equal(before, File.ReadAllText(served.PathOf("amphibian")));
        Assert.Equal("", string.Join("\n", watched.Faults));
    }

    [Fact]
    public async Task Map_StoppedByThePerson_KeepsWhatIsProved_AndGoesOn()
    {
        await using var served = await Served.Demo();
        // Held at the twentieth cell: the map of the demo is proved faster than a person, or this test, can press.
        using var open = new ManualResetEventSlim();
        served.Part<TiltMaps>().Reached += done => { if (done >= 20) open.Wait(TimeSpan.FromMinutes(2)); };
        await using var window = await chromium.Window();
        var page = (await window.Open(served, "/a/amphibian/cockpit/cowl-flap")).Page;
        var working = page.Locator("#tilts .working-line");
        await Expect(working).ToContainTextAsync("Proving tilts", new() { Timeout = 60_000 });
        await page.Locator("#tilts").GetByText("Stop, keep this").ClickAsync();
        open.Set();
        await Expect(page.GetByText("Stopped by you.")).ToBeVisibleAsync();
        await Expect(working).ToHaveCountAsync(0);
        Assert.NotEqual(0, await page.Locator("#tilt-map .open").CountAsync());

        // Gone on to the end: nothing is left open that the whole map proves.
        open.Reset();
        await page.GetByText("Go on").ClickAsync();
        await Expect(working).ToBeVisibleAsync();
        open.Set();
        await Expect(working).ToHaveCountAsync(0, new() { Timeout = 60_000 });
        await Expect(page.GetByText("Stopped by you.")).ToHaveCountAsync(0);
    }
}
