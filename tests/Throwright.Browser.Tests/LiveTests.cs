using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;
using Throwright.Engine.Chain;
using Throwright.Files;
using Throwright.Web.Editing;

namespace Throwright.Browser.Tests;

/// <summary>
/// A value that changes while it is typed: the picture follows, and the last value wins. THROWRIGHT_LIVE=1 takes 200 changes and writes the times:
/// THROWRIGHT_LIVE=1 dotnet test -c Release --project tests/Throwright.Browser.Tests --filter-class '*LiveTests'; cat TestResults/live.txt
/// </summary>
public class LiveTests(Chromium chromium)
{
    private static readonly bool IsMeasured = Environment.GetEnvironmentVariable("THROWRIGHT_LIVE") == "1";

    [Fact]
    public async Task Typing_IsFollowedByTheLadder_AndTheLastValueWins()
    {
        var count = IsMeasured ? 200 : 6;
        await using var served = await Served.Demo();
        await using var window = await chromium.Window();
        var page = (await window.Open(served, "/a/amphibian/run/cowl-flap/arm")).Page;
        await page.Settled();
        if (IsMeasured)
            // A person reads first; meanwhile the program rehearses.
            await Task.Delay(5000, TestContext.Current.CancellationToken);
        // Each change: into the field, and the time until the ladder is another. Different values, so that none is remembered.
        var times = await page.EvaluateAsync<double[]>(Follow, new { count });
        Assert.Equal(count, times.Length);
        var last = 1.2 + (0.001 * (count - 1));
        await Assertions.Expect(page.Locator(".trying")).ToBeVisibleAsync();

        // Many at once: what is shown in the end is the last.
        await page.EvaluateAsync(Burst);
        await Assertions.Expect(page.Locator(".lever svg")).ToContainTextAsync("1.299 in");
        if (!IsMeasured)
            return;
        var engine = EngineTimes(count);
        Array.Sort(times);
        var text = string.Create(CultureInfo.InvariantCulture, $"{count} changes of the cowl flap's arm, last {last:0.000} in. Engine alone: median {engine[count / 2]:0.0} ms, 95 % {engine[count * 95 / 100]:0.0} ms. From the key to the new picture: median {times[count / 2]:0.0} ms, 95 % {times[count * 95 / 100]:0.0} ms.");
        await File.WriteAllTextAsync(Path.Combine(Throwright.Tests.ApprovedText.Root, "TestResults", "live.txt"), text + "\n", TestContext.Current.CancellationToken);
    }

    /// <summary>The same changes, worked out without a browser.</summary>
    private static double[] EngineTimes(int count)
    {
        var aircraft = AircraftFile.Parse("demo", AircraftFolder.DemoText()).Aircraft!;
        var (cockpit, lies) = (CockpitCheck.Solve(aircraft), new KnownLies());
        var beside = RunCheck.DeviceEnds(aircraft, aircraft.Runs[0], lies).ToList();
        var times = new double[count];
        for (var i = -10; i < count; i++)
        {
            var value = (1.2 + (0.001 * Math.Abs(i))).ToString("0.000", CultureInfo.InvariantCulture);
            Assert.True(EditingSession.TryApply(AircraftFolder.DemoText(), [Edit.Text("$.runs[0].leverEnd.arm.radius", value + " in")], out var text, out _));
            var read = AircraftFile.Parse("demo", text).Aircraft!;
            var watch = Stopwatch.StartNew();
            var answer = RunCheck.CheckWith(read, read.Runs[0], new(), cockpit, () => beside, lies);
            if (i >= 0)
                times[i] = watch.Elapsed.TotalMilliseconds;
            Assert.NotEmpty(answer.Findings);
        }

        Array.Sort(times);
        return times;
    }

    private const string Follow = """
        async ({ count }) => {
          const field = document.getElementById('f-runs-0-leverEnd-arm-radius');
          const times = [];
          for (let i = -5; i < count; i++) {
            const seen = new Promise((done) => {
              const watch = new MutationObserver(() => { watch.disconnect(); done(); });
              watch.observe(document.querySelector('.ladder'), { childList: true, subtree: true, characterData: true, attributes: true });
            });
            const start = performance.now();
            field.value = `${(1.2 + 0.001 * (i < 0 ? 200 + i : i)).toFixed(3)} in`;
            field.dispatchEvent(new Event('input', { bubbles: true }));
            await seen;
            if (i >= 0) times.push(performance.now() - start);
          }
          return times;
        }
        """;

    private const string Burst = """
        () => {
          const field = document.getElementById('f-runs-0-leverEnd-arm-radius');
          for (let i = 0; i < 60; i++) {
            field.value = `${(1.24 + 0.001 * i).toFixed(3)} in`;
            field.dispatchEvent(new Event('input', { bubbles: true }));
          }
        }
        """;
}
