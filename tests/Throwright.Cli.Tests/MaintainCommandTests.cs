using System.Text.Json;

namespace Throwright.Cli.Tests;

public sealed class MaintainCommandTests
{
    [Fact]
    public void Readings_OfThreeYears_AreListedPlottedAndTold()
    {
        using var bench = new Workbench();
        var file = bench.Put("bird.throwright.json", File.ReadAllText(Path.Combine(Throwright.Tests.ApprovedText.Root, "examples", "amphibian.throwright.json")).Replace(
            "\"date\": \"2026-03-01\"", "\"date\": \"2023-03-01\", \"rerigged\": true", StringComparison.Ordinal));
        foreach (var (date, push) in ((string, string)[])[("2024-03-01", "0.46 in"), ("2025-03-01", "0.37 in")])
            Assert.Equal(0, CommandLine.Run("rig", file, "mixture", "--reading", $"knobAtPush={push}", "--date", date, "--by", "A. Builder", "--write").Exit);
        var shown = CommandLine.Run("maintain", file, "mixture", "--plain");
        Assert.Equal((0, ""), (shown.Exit, shown.Error));
        Assert.Contains("RIGGED ANEW", shown.Out, StringComparison.Ordinal);
        Assert.Contains("14 CFR 43 Appendix D (c)(5)", shown.Out, StringComparison.Ordinal);
        Assert.Contains("act at the inspection before", shown.Out.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains("-0.090 in", shown.Out, StringComparison.Ordinal);
        // Three readings on the plot of the first drift.
        Assert.Equal(3, shown.Out[shown.Out.IndexOf("Knob at the push stop:", StringComparison.Ordinal)..shown.Out.IndexOf("Knob at the pull stop:", StringComparison.Ordinal)].Split('\n').Count(l => l.Contains('|', StringComparison.Ordinal) && l.Contains('o', StringComparison.Ordinal)));
        Assert.DoesNotContain("approved", shown.Out, StringComparison.OrdinalIgnoreCase);
        // Each limit of the list stands beside its drift in the same words.
        var told = System.Text.RegularExpressions.Regex.Match(shown.Out, "limit  (.+?) to (.+?); (.+?) to (.+)");
        Assert.True(told.Success, shown.Out);
        Assert.All(told.Groups.Values.Skip(1), limit => Assert.Matches($@"(?m)^\s*{System.Text.RegularExpressions.Regex.Escape(limit.Value.Trim())} \|", shown.Out));

        using var json = JsonDocument.Parse(CommandLine.Run("maintain", file, "mixture", "--json").Out);
        var run = json.RootElement.GetProperty("runs")[0];
        Assert.Equal(1, json.RootElement.GetProperty("throwrightMaintain").GetInt32());
        Assert.Equal(3, run.GetProperty("history").GetArrayLength());
        var drift = run.GetProperty("drifts")[0];
        Assert.Equal("meetsLimit", drift.GetProperty("state").GetString());
        // 0.09 in a year.
        Assert.Equal(-0.09 * 0.0254, drift.GetProperty("perYear").GetDouble(), 2e-5);
    }

    [Fact]
    public void Readings_DatedAfterToday_AreTold()
    {
        using var bench = new Workbench();
        var file = bench.Put("bird.throwright.json", """
            { "format": 1, "aircraft": { "name": "Bird" }, "runs": [ { "id": "heat", "asBuilt": [ { "date": "2099-03-01", "knobAtPush": "3/8 in" } ] } ] }
            """);
        var shown = CommandLine.Run("maintain", file, "--plain");
        Assert.Equal(0, shown.Exit);
        Assert.Contains("2099-03-01 are dated after today", shown.Error, StringComparison.Ordinal);
        Assert.Equal(2, CommandLine.Run("maintain", file, "brakes").Exit);
    }
}
