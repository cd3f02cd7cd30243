using System.Text.Json;
using Microsoft.Playwright;
using Throwright.Engine.Chain;
using Throwright.Engine.Rig;
using Throwright.Files;
using Throwright.Papers.Rig;
using Throwright.Shapes.Quantities;

namespace Throwright.Browser.Tests;

/// <summary>The rigging page for a phone, opened from a file, without a network, held against the engine.</summary>
public class RiggingPageTests(Chromium chromium)
{
    private static readonly Lazy<AircraftAnswer> Amphibian = new(() =>
        RunCheck.Check(AircraftFile.Read(Path.Combine(Throwright.Tests.ApprovedText.Root, "examples", "amphibian.throwright.json")).Aircraft!, new(Samples: 200)));

    private static RunAnswer Run(string id) => Amphibian.Value.Runs.Single(r => r.Run.Id == id);

    private static string WritePage(string id, string folder)
    {
        var path = Path.Combine(folder, id + ".html");
        File.WriteAllBytes(path, RiggingPage.Write(Amphibian.Value.Aircraft, Run(id), "0123 4567"));
        return "file://" + path;
    }

    private async Task WithPage(string id, Func<IPage, Task> test, ColorScheme light = ColorScheme.Light)
    {
        var folder = Directory.CreateTempSubdirectory("throwright-rig-");
        try
        {
            await using var window = await chromium.Window(390, 844, light, touch: true);
            await window.SetOfflineAsync(true);
            var page = await window.NewPageAsync();
            var loud = new List<string>();
            page.Console += (_, m) => loud.Add(m.Text);
            page.PageError += (_, e) => loud.Add(e);
            page.Request += (_, r) =>
            {
                if (!r.Url.StartsWith("file:", StringComparison.Ordinal) && !r.Url.StartsWith("data:", StringComparison.Ordinal))
                    loud.Add("asked for " + r.Url);
            };
            await page.GotoAsync(WritePage(id, folder.FullName));
            await IsWords(page);
            await test(page);
            await IsWords(page);
            Assert.Empty(loud);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Nothing that a program writes of itself stands between the words.</summary>
    private static async Task IsWords(IPage page)
    {
        var text = await page.Locator("body").InnerTextAsync();
        Assert.DoesNotMatch(@"\[object|undefined|\bnull|NaN", text);
    }

    private static async Task Key(IPage page, params string[] keys)
    {
        foreach (var key in keys)
            await page.Locator($"[data-key=\"{key}\"]").ClickAsync();
    }

    private static async Task ToReading(IPage page)
    {
        while (await page.Locator("#done").CountAsync() > 0)
            await page.Locator("#done").ClickAsync();
        await page.Locator("#enter").ClickAsync();
    }

    /// <summary>What the limits leave out is said on the phone too: cushion may be less than the card wants.</summary>
    [Fact]
    public Task Notes_OfTheCard_StandOnThePhone() => WithPage("cabin-heat", async page =>
    {
        var notes = Rigging.CardOf(Amphibian.Value.Aircraft, Rigging.ToRig(Amphibian.Value.Aircraft, Run("cabin-heat"))).Notes;
        Assert.Contains(notes, n => n.StartsWith("Not counted in the limits", StringComparison.Ordinal));
        var text = await page.Locator("body").InnerTextAsync();
        Assert.All(notes, n => Assert.Contains(n, text));
    });

    [Theory]
    [InlineData("carb-heat")]
    [InlineData("mixture")]
    [InlineData("cowl-flap")]
    [InlineData("water-rudder")]
    public Task Advice_OverManyReadings_IsTheEngines(string id) => WithPage(id, async page =>
    {
        var answer = Rigging.ToRig(Amphibian.Value.Aircraft, Run(id));
        for (var i = 0; i < 40; i++)
        {
            double push = 0.0005 * i, pull = answer.Ladder!.Stroke - (0.0004 * ((i * 7) % 40));
            var engine = RigSolver.Solve(Rigging.CaseOf(answer, new() { Date = "", KnobAtPush = new(push), KnobAtPull = new(pull) })!);
            var said = await page.EvaluateAsync<JsonElement>("r => Rigging.advice(r)", new { knobAtPush = push, knobAtPull = pull });
            Assert.Equal(engine.CushionIn!.Value, said.GetProperty("in").GetDouble(), 1e-9);
            Assert.Equal(engine.CushionOut!.Value, said.GetProperty("out").GetDouble(), 1e-9);
            Assert.Equal(engine.Slide!.Value, said.GetProperty("slide").GetDouble(), 1e-9);
            Assert.Equal(engine.After!.Value, said.GetProperty("after").GetProperty("in").GetDouble(), 1e-9);
            var of = Rigging.CaseOf(answer, new() { Date = "", KnobAtPush = new(push), KnobAtPull = new(pull) })!;
            var verdict = RigRules.Find(of, engine, "", new(Amphibian.Value.Aircraft.Display)).First(f => f.Rule == RigRules.AsBuilt).Verdict;
            Assert.Equal(Throwright.Papers.Marks.GapMark.Word(verdict), said.GetProperty("verdict").GetString());
        }
    });

    [Fact]
    public Task Reading_TypedAsATapeReads_IsKept_AndComesBackAsAFileTheProgramTakes() => WithPage("carb-heat", async page =>
    {
        await ToReading(page);
        // Three eighths: 3, /8.
        await Key(page, "3", "/8");
        Assert.Contains("3/8", await page.Locator("#value").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(1, await page.Locator("svg").CountAsync());
        await page.Locator("#take").ClickAsync();
        await page.Locator("#enter").ClickAsync();
        // Two and one eighth: 2, and, 1, /8.
        await Key(page, "2", "and", "1", "/8");
        await page.Locator("#take").ClickAsync();
        Assert.Contains("Both ends have room", await page.Locator("#advice").InnerTextAsync(), StringComparison.Ordinal);
        using var record = JsonDocument.Parse(await page.Locator("#record").InputValueAsync());
        Assert.Equal("carb-heat", record.RootElement.GetProperty("run").GetString());
        var readings = record.RootElement.GetProperty("readings");
        Assert.Equal(("3/8 in", "2 1/8 in"), (readings.GetProperty("knobAtPush").GetString(), readings.GetProperty("knobAtPull").GetString()));
        Assert.True(UnitText.TryRead<Length>(readings.GetProperty("knobAtPull").GetString()!, out var read, out _));
        Assert.Equal(2.125 * 0.0254, read.Nominal.Metres, 1e-12);
        // The phone went to sleep: everything is still there.
        await page.ReloadAsync();
        Assert.Contains("3/8 in", await page.Locator("#record").InputValueAsync(), StringComparison.Ordinal);
    });

    [Fact]
    public Task Reading_OutsideItsLimits_IsAskedForOnceMore_ThenTaken() => WithPage("carb-heat", async page =>
    {
        await ToReading(page);
        await Key(page, "1", "/16");
        await page.Locator("#take").ClickAsync();
        Assert.Equal(1, await page.Locator("#again").CountAsync());
        await page.Locator("#take").ClickAsync();
        Assert.Contains("1/16 in", await page.Locator("#record").InputValueAsync(), StringComparison.Ordinal);
        await page.Locator("#enter").ClickAsync();
        await Key(page, "1", ".", "8");
        await page.Locator("#take").ClickAsync();
        await page.Locator("#take").ClickAsync();
        var advice = await page.Locator("#advice").InnerTextAsync();
        Assert.Contains("away from the tip", advice, StringComparison.Ordinal);
        Assert.Contains("Then:", advice, StringComparison.Ordinal);
    });

    [Fact]
    public Task Keys_ForImpossibleCombinations_AreDimmed() => WithPage("carb-heat", async page =>
    {
        await ToReading(page);
        Assert.True(await page.Locator("[data-key=\"/8\"]").IsDisabledAsync());
        await Key(page, "9");
        // Nine eighths is no reading of a tape.
        Assert.True(await page.Locator("[data-key=\"/8\"]").IsDisabledAsync());
        Assert.True(await page.Locator("[data-key=\"/16\"]").IsEnabledAsync());
        await Key(page, "/16");
        Assert.True(await page.Locator("[data-key=\"/32\"]").IsDisabledAsync());
        Assert.True(await page.Locator("[data-key=\"1\"]").IsDisabledAsync());
        await Key(page, "back");
    });

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public Task Page_OnAPhone_HasBigKeysAndNothingTooWide(ColorScheme light) => WithPage("mixture", async page =>
    {
        await ToReading(page);
        await Key(page, "2");
        foreach (var button in await page.Locator("button").AllAsync())
            Assert.True((await button.BoundingBoxAsync())!.Height >= 48, await button.InnerTextAsync());
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= 390);
        if (Environment.GetEnvironmentVariable("THROWRIGHT_PICTURES") is { Length: > 0 } folder)
            await page.ScreenshotAsync(new() { Path = Path.Combine(Throwright.Tests.ApprovedText.Root, folder, $"rigging-file-{(light == ColorScheme.Dark ? "lamp" : "day")}.png"), FullPage = false });
    }, light);

    [Fact]
    public Task Page_OfARunThatLacksInput_StillShowsItsSteps() => WithPage("cabin-heat", async page =>
    {
        Assert.True(await page.Locator("li").CountAsync() >= 4);
        Assert.Contains("Not an approval", await page.InnerTextAsync("main"), StringComparison.Ordinal);
    });
}
