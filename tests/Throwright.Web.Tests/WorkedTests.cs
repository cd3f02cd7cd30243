using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Throwright.Engine.Model;
using Throwright.Web.Editing;
using Throwright.Web.Parts;

namespace Throwright.Web.Tests;

/// <summary>A search as it is shown: what it is doing, stopped, and with a value changed under it. The search itself is held at a gate.</summary>
public sealed class WorkedTests : BunitContext
{
    private readonly string root = Directory.CreateTempSubdirectory("throwright-").FullName;
    private readonly AircraftFolder folder;
    private readonly SemaphoreSlim gate = new(0);
    private readonly TaskCompletionSource stopped = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public WorkedTests()
    {
        File.WriteAllText(Path.Combine(root, "demo.throwright.json"), AircraftFolder.DemoText());
        folder = new(root);
        Services.AddSingleton(new Checks());
        Services.AddSingleton(TimeProvider.System);
        DefaultWaitTimeout = TimeSpan.FromMinutes(2);
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        folder.Dispose();
        gate.Dispose();
        if (Directory.Exists(root))
            Directory.Delete(root, recursive: true);
    }

    private WorkedOut Find(Aircraft aircraft, Run run, string key, Checks checks, Action<string>? doing, CancellationToken stop)
    {
        doing?.Invoke("Looking for ways to hold it: 12 lies tried, one way holds.");
        try
        {
            gate.Wait(stop);
        }
        catch (OperationCanceledException)
        {
            stopped.TrySetResult();
            throw;
        }

        return new("Hold it here.", [new("Held at one place", "", true, true, ["cowl-flap/cable.length=60 in"])]);
    }

    private Aircraft Aircraft => folder.Open("demo")!.File.Aircraft!;

    private IRenderedComponent<Worked> Begun(Aircraft aircraft)
    {
        var view = Render<Worked>(p => p.Add(w => w.Aircraft, aircraft).Add(w => w.Run, aircraft.Runs.Single(r => r.Id == "cowl-flap")).Add(w => w.Part, "conduit").Add(w => w.Find, Find));
        view.Find("[data-ask=route]").Click();
        view.WaitForAssertion(() => Assert.Contains("12 lies tried", view.Find(".doing").TextContent, StringComparison.Ordinal));
        Assert.Matches(@"since \d\d:\d\d:\d\d", view.Find("[role=status]").TextContent);
        return view;
    }

    [Fact]
    public async Task Search_Stopped_EndsTheEngine_ChangesNothing_AndCanBeginAgain()
    {
        var view = Begun(Aircraft);
        view.Find(".working-line button").Click();
        await stopped.Task.WaitAsync(Xunit.TestContext.Current.CancellationToken);
        Assert.Contains("Stopped by you", view.Markup, StringComparison.Ordinal);
        Assert.Empty(view.FindAll(".ways"));
        view.FindAll("[role=status] button").Single().Click();
        gate.Release();
        view.WaitForAssertion(() => Assert.Single(view.FindAll(".ways > li")));
        Assert.Contains("Try it on the drawing", view.Markup, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Search_WithAValueChangedUnderIt_SaysThatItIsOlder_AndOffersNothingToKeep(bool ofTheRun)
    {
        var before = Aircraft;
        var view = Begun(before);
        // The run itself, or only something that it is held against.
        var after = ofTheRun ? before with { Runs = [.. before.Runs.Select(r => r.Id == "cowl-flap" ? r with { Label = "other" } : r)] } : before with { Bodies = [.. before.Bodies.Skip(1)] };
        view.Render(p => p.Add(w => w.Aircraft, after).Add(w => w.Run, after.Runs.Single(r => r.Id == "cowl-flap")));
        Assert.Contains("You have changed something since", view.Find("[role=status]").TextContent, StringComparison.Ordinal);
        gate.Release();
        view.WaitForAssertion(() => Assert.Single(view.FindAll(".ways > li")));
        Assert.Contains("Worked out before the last change", view.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("Try it on the drawing", view.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Search_WithOnlyTheUnitsSwitched_StaysAsItIs()
    {
        var before = Aircraft;
        var view = Begun(before);
        var after = before with { Display = before.Display with { Length = LengthUnit.Millimetre } };
        view.Render(p => p.Add(w => w.Aircraft, after));
        gate.Release();
        view.WaitForAssertion(() => Assert.Single(view.FindAll(".ways > li")));
        Assert.DoesNotContain("before the last change", view.Markup, StringComparison.Ordinal);
    }
}
