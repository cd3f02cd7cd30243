using System.Diagnostics;
using Microsoft.Playwright;
using Throwright.Files.Form;
using static Microsoft.Playwright.Assertions;

namespace Throwright.Browser.Tests;

/// <summary>Windows that are killed, programs that are killed, two windows, a file changed outside.</summary>
public class LossTests(Chromium chromium)
{
    private const string Radius = "$.runs[0].leverEnd.arm.radius";
    private const string Run = "/a/amphibian/run/cowl-flap/arm";

    [Fact]
    public async Task TwoWindows_SeeEachOther_AndShareOneUndo()
    {
        await using var served = await Served.Bench();
        await using var window = await chromium.Window();
        var one = (await window.Open(served, Run)).Page;
        var two = (await window.Open(served, Run)).Page;
        await Take(one, "1 1/4 in");
        await Expect(Field(two)).ToHaveValueAsync("1 1/4 in");
        await Take(two, "1 in");
        await Expect(Field(one)).ToHaveValueAsync("1 in");
        await one.ClickAsync("#undo");
        await Expect(Field(two)).ToHaveValueAsync("1 1/4 in");
    }

    [Fact]
    public async Task FileChangedOutside_IsAsked_AndNeitherIsLost()
    {
        await using var served = await Served.Bench();
        await using var window = await chromium.Window();
        var page = (await window.Open(served, Run)).Page;
        var theirs = (File.ReadAllText(served.PathOf("amphibian"))).Replace("Heron demo", "Other demo", StringComparison.Ordinal);
        File.WriteAllText(served.PathOf("amphibian"), theirs);
        await Expect(page.Locator(".notice")).ToContainTextAsync("The file was changed outside.");
        await page.GetByText("Show the difference").ClickAsync();
        await Expect(page.Locator(".difference")).ToContainTextAsync("Other demo");
        await page.HasNoAxeFinding("conflict");
        await page.GetByText("Take theirs", new() { Exact = true }).ClickAsync();
        await Expect(page.Locator(".aircraft b")).ToHaveTextAsync("Other demo amphibian");
        await page.ClickAsync("#undo");
        await Expect(page.Locator(".aircraft b")).ToHaveTextAsync("Heron demo amphibian");
    }

    [Fact]
    public async Task ProgramStartedAgain_TheWindowComesBackByItself()
    {
        await using var served = await Served.Bench();
        await using var window = await chromium.Window();
        var page = (await window.Open(served, Run)).Page;
        await Take(page, "1 1/4 in");
        await served.Again(async () =>
        {
            await Expect(page.Locator("#stopped")).ToContainTextAsync("Throwright stopped. Your last change was saved at");
            await Expect(page.Locator("main")).ToHaveAttributeAsync("inert", "");
        });
        await Expect(page.Locator("#stopped")).ToBeHiddenAsync();
        await Expect(Field(page)).ToHaveValueAsync("1 1/4 in");
        await page.ClickAsync("#undo");
        await Expect(Field(page)).ToHaveValueAsync("1 1/2 in ± 1/64 in");
    }

    [Fact]
    public async Task ProgramKilled_InTheMiddleOfTyping_LosesNothing()
    {
        await using var served = await Served.Bench();
        await using var window = await chromium.Window();
        // The program itself as a process of its own, to be killed without a word.
        var other = Path.Combine(served.Root, "own");
        Directory.CreateDirectory(other);
        var path = Path.Combine(other, "amphibian.throwright.json");
        File.Copy(served.PathOf("amphibian"), path);
        using var first = Start(path, other, out var address);
        var page = await window.NewPageAsync();
        await page.GotoAsync(address + Run);
        await Take(page, "1 1/4 in");
        await Field(page).FillAsync("1 3/1");
        // Refused as yet: the program has seen it when it says so.
        await Expect(page.Locator(".field.refused")).ToHaveCountAsync(1);
        first.Kill(entireProcessTree: true);
        await first.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal("1 1/4 in", FileValues.Of(File.ReadAllText(path)).At(Radius)!.Shown);
        // And the window with it.
        await page.CloseAsync();
        using var second = Start(path, other, out address);
        page = await window.NewPageAsync();
        await page.GotoAsync(address + Run);
        await Expect(Field(page)).ToHaveValueAsync("1 3/1");
        await Field(page).PressAsync("Escape");
        await Expect(Field(page)).ToHaveValueAsync("1 1/4 in");
        await page.ClickAsync("#undo");
        await Expect(Field(page)).ToHaveValueAsync("1 1/2 in ± 1/64 in");
        second.Kill(entireProcessTree: true);
        await second.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Empty(Directory.EnumerateFileSystemEntries(Path.Combine(other, "home")));
    }

    [Fact]
    public async Task TwoHundredRuns_StayUsable()
    {
        var demo = Throwright.Web.Editing.AircraftFolder.DemoText();
        // The clear run two hundred times, each a little different: nothing is answered from memory.
        var start = demo.IndexOf("\"id\": \"carb-heat\"", StringComparison.Ordinal);
        var from = demo.LastIndexOf('{', start);
        var to = demo.IndexOf("\"id\": \"mixture\"", StringComparison.Ordinal);
        // Their handles are not described: two hundred in one hole would be another question.
        var run = demo[from..demo.LastIndexOf(',', to)].Replace("\"hole\": \"carb-heat-hole\", ", "", StringComparison.Ordinal);
        var runs = Enumerable.Range(1, 200).Select(i => run.Replace("\"carb-heat\"", $"\"run-{i}\"", StringComparison.Ordinal).Replace("CARB HEAT", $"RUN {i}", StringComparison.Ordinal).Replace("88 in", FormattableString.Invariant($"{88 + (0.01 * i)} in"), StringComparison.Ordinal));
        var listStart = demo.IndexOf("\"runs\": [", StringComparison.Ordinal) + 9;
        await using var served = await Served.Start(("many", demo[..listStart] + string.Join(",\n", runs) + "]}"));
        await using var window = await chromium.Window();
        var page = (await window.Open(served, "/a/many")).Page;
        await Expect(page.Locator(".row")).ToHaveCountAsync(200);
        await page.Settled();
        await Expect(page.Locator("h1")).Not.ToHaveTextAsync("Working out the runs.");
        await page.ClickAsync("text=as mounted");
        await page.Locator(".row").Nth(199).Locator("a.placard").ClickAsync();
        await page.Locator(".tabs a").Nth(1).ClickAsync();
        await Take(page, "1 in");
        await Expect(page.Locator("#undo")).ToHaveAttributeAsync("title", "Undo: pivot to hole 1 in");
    }

    private static ILocator Field(IPage page) => page.GetByLabel("pivot to hole", new() { Exact = true });

    private static async Task Take(IPage page, string value)
    {
        await Field(page).FillAsync(value);
        await Field(page).PressAsync("Enter");
        await Expect(page.Locator("#undo")).ToHaveAttributeAsync("title", $"Undo: pivot to hole {value}");
    }

    private static Process Start(string file, string folder, out string address)
    {
        var home = Path.Combine(folder, "home");
        Directory.CreateDirectory(home);
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "throwright.dll"), "serve", file, "--port", "0"]) { RedirectStandardOutput = true };
        start.Environment["HOME"] = home;
        var process = Process.Start(start)!;
        var line = process.StandardOutput.ReadLine() ?? "";
        address = line.Split(' ').First(w => w.StartsWith("http://", StringComparison.Ordinal));
        return process;
    }
}
