using System.Text.Json;
using Throwright.Files;

namespace Throwright.Cli.Tests;

/// <summary>Points by tape and ways of the conduit, from the file to the screen and back into the file.</summary>
public class RouteCommandTests
{
    private const string Taped = "examples/bench/taped-lever.throwright.json";
    private const string Conduits = "examples/bench/conduits.throwright.json";

    [Fact]
    public void Measure_OneReadingWrong_NamesIt()
    {
        var (code, text, _) = CommandLine.Run("measure", Taped, "--plain");
        Assert.Equal(0, code);
        Assert.Contains("The distance from longeron disagrees", text, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(CommandLine.Run("measure", Taped, "--json").Out);
        var pivot = json.RootElement.GetProperty("points")[0];
        Assert.Equal("valve-pivot", pivot.GetProperty("name").GetString());
        var wrong = Assert.Single(pivot.GetProperty("readings").EnumerateArray(), r => r.GetProperty("suspect").GetBoolean());
        Assert.Equal("the distance from longeron", wrong.GetProperty("name").GetString());
    }

    [Fact]
    public void Measure_Write_NotesCoordinatesBesideTheReadings_AndTheyRead()
    {
        using var bench = new Workbench();
        var file = bench.Copy("bench/taped-lever.throwright.json");
        // The misread distance put right.
        File.WriteAllText(file, File.ReadAllText(file).Replace("\"longeron\": \"23 7/8 in\"", "\"longeron\": \"22 7/8 in\"", StringComparison.Ordinal));
        Assert.Equal(0, CommandLine.Run("measure", file, "--write").Exit);
        var text = File.ReadAllText(file);
        Assert.Contains("\"longeron\": \"22 7/8 in\"", text, StringComparison.Ordinal);
        Assert.Contains("// Marks whose place is known", text, StringComparison.Ordinal);
        var aircraft = AircraftFile.Read(file).Aircraft!;
        // The example was made from the pivot at (34.3, 5.2, 26.1) in, distances rounded to sixteenths.
        var pivot = aircraft.Points.Single(p => p.Name == "valve-pivot");
        Assert.Equal(34.3, pivot.At.Station.Nominal.Inches, 0.1);
        Assert.Equal(5.2, pivot.At.Buttline.Nominal.Inches, 0.1);
        Assert.Equal(26.1, pivot.At.Waterline.Nominal.Inches, 0.1);
        Assert.InRange(pivot.Taped!.Noted!.Station.Nominal.Inches - pivot.At.Station.Nominal.Inches, -0.001, 0.001);
        Assert.True(File.Exists(file + ".backup"));
    }

    [Fact]
    public void Check_ClampsThatBendTooTight_Fail_AndSolveRouteCures()
    {
        using var bench = new Workbench();
        var file = bench.Copy("bench/conduits.throwright.json");
        var before = CommandLine.Run("check", file, "--run", "cabin-heat", "--plain");
        Assert.Equal(1, before.Exit);
        Assert.Contains("The tightest place has radius", before.Out, StringComparison.Ordinal);
        var (code, text, _) = CommandLine.Run("solve", "route", file, "cabin-heat", "--plain", "--write");
        Assert.True(code == 0, text);
        Assert.Contains("Let it roll and settle, then tighten", text, StringComparison.Ordinal);
        Assert.Contains("not kept in a new route", text, StringComparison.Ordinal);
        var after = CommandLine.Run("check", file, "--run", "cabin-heat", "--json");
        Assert.NotEqual(2, after.Exit);
        using var json = JsonDocument.Parse(after.Out);
        var run = json.RootElement.GetProperty("files")[0].GetProperty("runs")[0];
        Assert.Equal("clear", Verdict(run, "route/radius"));
        Assert.Contains(run.GetProperty("figures").EnumerateArray(), f => f.GetProperty("id").GetString() == "conduit-length");
        // The comments of the file are still there.
        Assert.StartsWith("// Two conduits in coordinates", File.ReadAllText(file), StringComparison.Ordinal);
    }

    [Fact]
    public void Check_OrderedTooLong_IsTold_WithWhatToCut()
    {
        var (_, text, _) = CommandLine.Run("check", Conduits, "--run", "oil-cooler", "--plain");
        Assert.Contains("longer than the way", text, StringComparison.Ordinal);
        Assert.Contains("off the conduit", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Plot_Svg_DrawsTheLie()
    {
        using var bench = new Workbench();
        Assert.Equal(0, CommandLine.Run("plot", Conduits, "cabin-heat", "--svg", bench.Folder).Exit);
        var svg = File.ReadAllText(Path.Combine(bench.Folder, "cabin-heat-route.svg"));
        foreach (var words in (string[])["from above", "from the left", "from behind", "Bend along the conduit"])
            Assert.Contains(words, svg, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_WithCurves_HasTheLie()
    {
        using var json = JsonDocument.Parse(CommandLine.Run("check", Conduits, "--run", "oil-cooler", "--json", "--curves").Out);
        var lie = json.RootElement.GetProperty("files")[0].GetProperty("runs")[0].GetProperty("lie");
        Assert.Equal(39 * 0.0254, lie[0].GetProperty("station").GetDouble(), 1e-9);
        Assert.Equal(9 * 0.0254, lie[lie.GetArrayLength() - 1].GetProperty("station").GetDouble(), 1e-6);
    }

    /// <summary>An emergency control: strength part by part, and what is tried from the seat.</summary>
    [Fact]
    public void Json_OfAnEmergencyControl_HasStrengthAndOperatingCheck()
    {
        var file = Path.Combine(Throwright.Tests.ApprovedText.Root, "examples", "biplane.throwright.json");
        using var json = JsonDocument.Parse(CommandLine.Run("check", file, "--run", "fuel-shutoff", "--json").Out);
        var run = json.RootElement.GetProperty("files")[0].GetProperty("runs").EnumerateArray().Single(r => r.GetProperty("id").GetString() == "fuel-shutoff");
        // 14 CFR 27.397(b): 100 lbf for a hand control.
        Assert.Equal(100 * 4.4482216, run.GetProperty("limitForce").GetProperty("value").GetDouble(), 1e-3);
        Assert.Equal("N", run.GetProperty("limitForce").GetProperty("unit").GetString());
        Assert.Contains(run.GetProperty("strength").EnumerateArray(), r => r.GetProperty("part").GetString() == "pin of the joint, shear");
        // A part that can't be counted says which members it waits for; one that is counted shows both sides.
        Assert.All(run.GetProperty("strength").EnumerateArray(), r => Assert.True(r.GetProperty("verdict").GetString() == "needs input"
            ? r.GetProperty("lacks").GetArrayLength() > 0
            : r.TryGetProperty("asked", out _) && r.TryGetProperty("stands", out _)));
        Assert.Equal(["force", "travel", "time", "one hand", "which hand", "what else moves"], run.GetProperty("operatingCheck").EnumerateArray().Select(i => i.GetProperty("what").GetString()));
        Assert.True(run.GetProperty("jam").GetArrayLength() > 0);
        using var other = JsonDocument.Parse(CommandLine.Run("check", file, "--run", "carb-heat", "--json").Out);
        Assert.All(other.RootElement.GetProperty("files")[0].GetProperty("runs").EnumerateArray(), r => Assert.False(r.TryGetProperty("operatingCheck", out _)));
    }

    private static string Verdict(JsonElement run, string rule) =>
        run.GetProperty("findings").EnumerateArray().Single(f => f.GetProperty("rule").GetString() == rule).GetProperty("verdict").GetString()!;
}
