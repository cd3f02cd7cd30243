using System.Text.Json;
using static Throwright.Cli.Tests.CommandLine;

namespace Throwright.Cli.Tests;

/// <summary>The biplane with its stick set too far forward: a fault that concerns no one run, told by every command.</summary>
public sealed class MoverCommandTests : IDisposable
{
    private readonly Workbench bench = new();
    private readonly string file;

    public MoverCommandTests()
    {
        const string was = "\"pivot\": [\"1560 mm\", \"0 mm\", \"250 mm\"]";
        var text = File.ReadAllText(Path.Combine(Throwright.Tests.ApprovedText.Root, "examples", "biplane.throwright.json"));
        Assert.Contains(was, text, StringComparison.Ordinal);
        file = Path.Combine(bench.Folder, "biplane.throwright.json");
        File.WriteAllText(file, text.Replace(was, was.Replace("1560", "1310", StringComparison.Ordinal), StringComparison.Ordinal));
    }

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Check_NamesTheClashWithPositions_AndTheJsonHoldsIt()
    {
        var answer = Run("check", file, "--json");
        Assert.Equal(1, answer.Exit);
        using var json = JsonDocument.Parse(answer.Out);
        var of = json.RootElement.GetProperty("files")[0];
        var cockpit = of.GetProperty("cockpit");
        Assert.Equal("fail", cockpit.GetProperty("verdict").GetString());
        var finding = cockpit.GetProperty("findings")[0];
        Assert.Equal("clearance/mover", finding.GetProperty("rule").GetString());
        Assert.StartsWith("stick and panel touch with stick roll at", finding.GetProperty("sentence").GetString(), StringComparison.Ordinal);
        var pair = cockpit.GetProperty("clearance")[0];
        Assert.True(pair.GetProperty("touches").GetBoolean());
        Assert.Equal(["stick roll", "stick pitch"], pair.GetProperty("joints").EnumerateArray().Select(j => j.GetProperty("name").GetString()!));
        Assert.Contains(cockpit.GetProperty("leftOut").EnumerateArray(), l => l.GetProperty("what").GetString()!.StartsWith("left leg, right leg", StringComparison.Ordinal));
        Assert.NotEmpty(cockpit.GetProperty("allowed").EnumerateArray());
    }

    [Fact]
    public void Explain_AndPlot_OfTheCockpit_ShowThePair()
    {
        var explained = Run("explain", file, "cockpit", "clearance-stick-panel", "--plain");
        Assert.Equal(0, explained.Exit);
        Assert.Contains("stick and panel touch", explained.Out, StringComparison.Ordinal);
        Assert.Equal(2, Run("explain", file, "cockpit", "clearance-nothing").Exit);
        var folder = Path.Combine(bench.Folder, "drawn");
        Assert.Equal(0, Run("plot", file, "cockpit", "--svg", folder).Exit);
        Assert.Contains("Stick and panel touch", File.ReadAllText(Path.Combine(folder, "cockpit-clearance-stick-panel.svg")), StringComparison.Ordinal);
    }
}
