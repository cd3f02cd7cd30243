using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Throwright.Engine.Chain;
using Throwright.Files;
using Throwright.Shapes;
using Throwright.Tests;
using Throwright.Web.Cockpit;
using Throwright.Web.Editing;
using Throwright.Web.Pages;
using Throwright.Web.Parts;

namespace Throwright.Web.Tests;

/// <summary>What concerns more than one run; what breaks and what is looked at; what the 3D view is told.</summary>
public sealed class WholeAircraftTests : BunitContext
{
    private readonly string root = Directory.CreateTempSubdirectory("throwright-").FullName;
    private readonly AircraftFolder folder;
    private readonly Checks checks = new();

    public WholeAircraftTests()
    {
        var demo = AircraftFolder.DemoText();
        File.WriteAllText(Path.Combine(root, "demo.throwright.json"), demo[..demo.IndexOf("  \"bodies\": [", StringComparison.Ordinal)] + demo[demo.IndexOf("  \"runs\": [", StringComparison.Ordinal)..]);
        folder = new(root);
        Services.AddSingleton(folder);
        Services.AddSingleton(checks);
        Services.AddSingleton(TimeProvider.System);
        Services.AddScoped<Viewer>();
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        folder.Dispose();
        if (Directory.Exists(root))
            Directory.Delete(root, recursive: true);
    }

    [Fact]
    public void WholeAircraft_NamesWhatStillWaits_WithTheWayThere()
    {
        var aircraft = folder.Open("demo")!.File.Aircraft!;
        var answer = new AircraftAnswer(aircraft, aircraft.Runs.Select(r => checks.Of(aircraft, r)).ToEquatableList()) { Cockpit = checks.CockpitOf(aircraft) };
        var view = Render<WholeAircraft>(p => p.Add(w => w.Answer, answer).Add(w => w.Link, "/a/demo"));
        var waits = view.Find("[data-verdict='needs input']");
        Assert.Contains("What moves near the handles", waits.TextContent, StringComparison.Ordinal);
        Assert.NotNull(waits.QuerySelector("a[href='/a/demo/aircraft#bodies']"));
        // Told at one run, concerning two: here with both and a way to each.
        var order = view.Find("[data-rule='prove/carburettor-heat-place']");
        Assert.Equal(["/a/demo/run/carb-heat#findings", "/a/demo/run/mixture"], order.QuerySelectorAll("a").Select(a => a.GetAttribute("href")));
        Assert.Contains("14 CFR 23.777", order.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Upkeep_OfARun_HasEveryFailureAndEveryItemOfTheEngine()
    {
        var aircraft = folder.Open("demo")!.File.Aircraft!;
        var answer = checks.Of(aircraft, aircraft.Runs.Single(r => r.Id == "cowl-flap"));
        var view = Render<UpkeepPage>(p => p.Add(u => u.File, "demo").Add(u => u.Id, "cowl-flap"));
        Assert.Equal(answer.Proof!.Failures.Select(f => f.Where), view.FindAll("#failures tr[data-failure] td[data-is='the device']").Select(c => c.TextContent));
        Assert.Equal(Upkeep.Of(aircraft, answer).Items.Select(i => i.What), view.FindAll("#inspection tbody th").Select(c => c.TextContent));
        Assert.Contains("not end as declared safe: open.", view.Find("h1").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void WorkOut_HasASearchForEveryPartOfTheChain_AndItsWaysFitTheFile()
    {
        Assert.Equal(ChainPart.All.Select(p => p.Key), ChainPart.All.Select(p => p.Key).Intersect(WorkOut.All.Select(a => a.Part)));
        var session = folder.Open("demo")!;
        var aircraft = session.File.Aircraft!;
        var run = aircraft.Runs.Single(r => r.Id == "cowl-flap");
        foreach (var ask in WorkOut.All.Where(a => !a.IsLong))
        {
            var found = WorkOut.Find(aircraft, run, ask.Key, checks, null, Xunit.TestContext.Current.CancellationToken);
            Assert.NotEqual("", found.Sentence);
            Assert.True(found.Ways.Count(w => w.IsBest) <= 1);
            foreach (var way in found.Ways.Where(w => w.Tries.Count > 0))
            {
                var edits = new Tried("worked", new(way.Text, way.Tries)).Edits(session.Text);
                Assert.NotNull(edits);
                Assert.True(EditingSession.TryApply(session.Text, edits, out var edited, out var why), why);
                Assert.Empty(AircraftFile.Parse("tried", edited).Problems);
            }
        }
    }

    [Fact]
    public void Tried_WithNothingBehindTheSign_TakesTheMemberOut()
    {
        var session = folder.Open("demo")!;
        var edit = Assert.Single(new Tried("worked", new("Lay it anew", ["cowl-flap/cable.friction="])).Edits(session.Text)!);
        Assert.Equal(new Edit("$.runs[0].cable.friction", null), edit);
    }

    [Fact]
    public void Placing_TurnsTheBenchIntoTwoPlaces_AndWritesNothingForWhatWasNotAnswered()
    {
        var session = folder.Open("demo")!;
        var index = AircraftFile.RunIndex(session.Text, "carb-heat")!.Value;
        var display = session.File.Aircraft!.Display;
        Dictionary<string, string> answers = new() { ["pivot"] = "60, 1 1/2 in, 0", ["axis"] = "left", ["zero"] = "up", ["from"] = "-40", ["to"] = "45 deg ± 1 deg", ["anchor"] = "cowl-anchor" };
        var edits = Placing.ArmEdits(session.Text, index, answers, display);
        Assert.Contains(new Edit($"$.runs[{index}].leverEnd.bench", null), edits);
        Assert.Contains(new Edit($"$.runs[{index}].leverEnd.pivot", """["60 in", "1 1/2 in", "0 in"]"""), edits);
        Assert.DoesNotContain(edits, e => e.Path.EndsWith("along", StringComparison.Ordinal));
        Assert.Empty(Placing.Problems(session, edits, out var edited));
        var placed = AircraftFile.Parse("placed", edited).Aircraft!.Runs[index].LeverEnd!;
        Assert.NotNull(placed.Placed);
        // A typing fault is told by the reader at the member it stands in.
        answers["zero"] = "upward";
        Assert.Contains(Placing.Problems(session, Placing.ArmEdits(session.Text, index, answers, display), out _), p => p.JsonPath == $"$.runs[{index}].leverEnd.arm.zero");
    }

    [Fact]
    public void Scene_CarriesGates_Picks_AndPlacesWithNames()
    {
        var aircraft = AircraftFile.Parse("biplane", File.ReadAllText(Path.Combine(ApprovedText.Root, "examples", "biplane.throwright.json"))).Aircraft!;
        var cockpit = CockpitCheck.Solve(aircraft, aircraft.Runs[0], new() { Cures = false })!;
        var model = SceneModel.Of(aircraft, cockpit, [], null);
        var gate = Assert.Single(model.Gates);
        // 20 deg aft with 12 deg right, and 8 deg with 20 deg: both lie on the gate.
        double At(params double[] degrees) => gate.Terms.Select((t, i) => t.Factor * degrees[i] * Math.PI / 180).Sum();
        Assert.Equal(["stick pitch", "stick roll"], gate.Terms.Select(t => model.Joints[t.Joint].Name));
        Assert.Equal(gate.Most, At(20, 12), 1e-9);
        Assert.Equal(gate.Most, At(8, 20), 1e-9);
        Assert.True(At(0, 0) < gate.Most);

        Assert.Contains(SceneModel.PicksOf(aircraft, cockpit), p => p is { Name: "THROTTLE", Run: "throttle", End: null });
        var places = SceneModel.PlacesOf(aircraft);
        Assert.Equal(places.Count, places.DistinctBy(p => p.Name).Count());
        var (eye, hole) = (places.Single(p => p.Name == "pilot's eye"), places.Single(p => p.Name == "tailwheel-hole"));
        // (1780, 0, 1010) to (1190, 150, 760) mm.
        Assert.Equal(Math.Sqrt((0.59 * 0.59) + (0.15 * 0.15) + (0.25 * 0.25)), SceneModel.Between(eye, hole)!.Value, 1e-12);
        Assert.Null(SceneModel.Between(eye, null));
    }
}
