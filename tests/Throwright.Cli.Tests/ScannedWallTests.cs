using System.Text.Json;
using static Throwright.Cli.Tests.CommandLine;

namespace Throwright.Cli.Tests;

/// <summary>The example with a scan of a hundred thousand triangles.</summary>
public sealed class ScannedWallTests
{
    [Fact]
    public void Check_ScannedWall_ProvesBothHandlesAndNamesTheOpenScan()
    {
        var answer = Run("check", "examples/scanned-wall.throwright.json", "--json");
        Assert.Equal("", answer.Error);
        using var json = JsonDocument.Parse(answer.Out);
        var runs = json.RootElement.GetProperty("files")[0].GetProperty("runs");
        Assert.Equal(2, runs.GetArrayLength());
        foreach (var run in runs.EnumerateArray())
        {
            var findings = run.GetProperty("findings").EnumerateArray().Select(f => (Rule: f.GetProperty("rule").GetString(), Verdict: f.GetProperty("verdict").GetString())).ToList();
            Assert.Contains(("clearance/pair", "clear"), findings);
            Assert.Contains(("clearance/mesh-fit", "clear"), findings);
            Assert.Contains(findings, f => f.Rule is "clearance/mesh-open" or "clearance/open-mesh" && f.Verdict == "caution");
        }
    }

    [Fact]
    public void Check_WithoutTheScan_SaysWhatIsMissing_AndIsNeverClearAboutIt()
    {
        using var bench = new Workbench();
        var answer = RunIn(bench.Folder, "check", bench.Copy("scanned-wall.throwright.json"), "--plain");
        Assert.Equal(2, answer.Exit);
        Assert.Contains("no such file", answer.Out);
        Assert.Contains("$.bodies[0].shapes[0].mesh.file", answer.Out);
        Assert.Contains("nothing is proved about it", string.Join(' ', answer.Out.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)));
    }
}
