using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Throwright.Files;

namespace Throwright.Cli.Tests;

/// <summary>A builder with a tape and a new file: coordinates with uncertainty, a route over a grommet, a length, a cushion that follows.</summary>
public class TapeToRouteTests
{
    private const double Inch = 0.0254;

    private static readonly Dictionary<string, double[]> Marks = new()
    {
        ["firewall-left"] = [24, -14, 18],
        ["firewall-right"] = [24, 14, 18],
        ["firewall-top"] = [24, 0, 38],
        ["mount-low"] = [10, -6, 14],
        ["longeron"] = [48, -13, 24],
    };

    [Fact]
    public void NewUser_FromTapeOverGrommet_GetsRouteLengthAndCushion()
    {
        using var bench = new Workbench();
        Assert.Equal(0, CommandLine.RunIn(bench.Folder, "new", "mine").Exit);
        var file = Path.Combine(bench.Folder, "mine" + AircraftFile.Extension);
        double[] pivot = [9, -2, 20], panel = [39, -5, 29];
        var text = Typed(File.ReadAllText(file), pivot, anchor: [13.9, -2, 21.2], hole: [24, -4, 25], panel);
        File.WriteAllText(file, text);

        var measured = CommandLine.Run("measure", file, "--json");
        Assert.Equal(0, measured.Exit);
        using (var json = JsonDocument.Parse(measured.Out))
            Assert.Equal(4, json.RootElement.GetProperty("points").GetArrayLength());
        Assert.Equal(0, CommandLine.Run("measure", file, "--write").Exit);
        // Where it was taped from, within three standard deviations of each axis.
        var found = AircraftFile.Read(file).Aircraft!.Points.Single(p => p.Name == "mixture-pivot").At;
        Assert.InRange(pivot[0] * Inch, found.Station.Least, found.Station.Most);
        Assert.InRange(pivot[2] * Inch, found.Waterline.Least, found.Waterline.Most);
        Assert.InRange(found.Station.Plus, 0.01 * Inch, 0.25 * Inch);

        var before = Run(file);
        var bend = Figure(before, "bend-total");
        var solved = CommandLine.Run("solve", "route", file, "mixture", "--plain", "--write");
        Assert.True(solved.Exit == 0, solved.Out + solved.Error);
        Assert.Contains("over least", solved.Out, StringComparison.Ordinal);
        // The hole in the firewall is still passed, and the length stands in the file.
        var run = AircraftFile.Read(file).Aircraft!.Runs[0];
        Assert.Single(run.Cable!.Supports, s => s.Place.Name == "firewall-hole" && s.Kind == Engine.Model.SupportHold.Grommet);
        Assert.NotNull(run.Cable.Length);
        Assert.StartsWith("// The push-pull controls of one aircraft", File.ReadAllText(file), StringComparison.Ordinal);
        var after = Run(file);
        Assert.Equal("clear", Verdict(after, "route/radius"));
        Assert.InRange(Figure(after, "conduit-order"), Figure(after, "conduit-length"), Figure(after, "conduit-length") + (1.001 * Inch));

        // The cushion counts the lie's bends: a hole 8 in lower bends the conduit more, and more motion is lost in it.
        var lower = Path.Combine(bench.Folder, "lower" + AircraftFile.Extension);
        File.WriteAllText(lower, text.Replace("\"at\": \"firewall-hole\"", "\"at\": [\"24 in\", \"-4 in\", \"17 in\"]", StringComparison.Ordinal));
        var other = Run(lower);
        Assert.True(Figure(other, "bend-total") > bend + 0.2);
        Assert.True(Figure(other, "cushion-in") < Figure(before, "cushion-in") - 1e-5);
    }

    /// <summary>The starter file with a tape's readings, the spatial form and a grommet: what the page on routes tells.</summary>
    private static string Typed(string text, double[] pivot, double[] anchor, double[] hole, double[] panel)
    {
        string Place(double[] p) => $"[{string.Join(", ", p.Select(x => $"\"{x.ToString(CultureInfo.InvariantCulture)} in\""))}]";
        string Tape(double[] p) => "{ \"taped\": { " + string.Join(", ", Marks.Select(m => $"\"{m.Key}\": \"{Sixteenths(m.Value, p)} in\"")) + " }, \"tape\": \"± 1/16 in\" }";
        var points = string.Join(",\n", Marks.Select(m => $"    \"{m.Key}\": {Place(m.Value)}")
            .Concat(new (string Name, double[] At)[] { ("mixture-pivot", pivot), ("mixture-anchor", anchor), ("firewall-hole", hole), ("panel-hole", panel) }.Select(p => $"    \"{p.Name}\": {Tape(p.At)}")));
        text = Regex.Replace(text, "  // \"points\": .*\n", $"  \"points\": {{\n{points}\n  }},\n");
        text = Regex.Replace(text, "// \"supports\": .*", "\"supports\": [ { \"at\": \"firewall-hole\", \"kind\": \"grommet\" } ],");
        text = Regex.Replace(text, "// \"ends\": .*", "\"ends\": { \"leaves\": { \"at\": \"panel-hole\", \"along\": [-1, 0, 0] }, \"inBushing\": \"3/4 in\", \"inAnchor\": \"3/8 in\" },");
        foreach (var member in (string[])["\"outside\": \"0.187", "\"pivot\": \"mixture-pivot\"", "\"axis\": [0, 1, 0],", "\"at\": \"mixture-anchor\"", "\"zero\": [0, 0, 1],"])
            text = text.Replace("// " + member, member, StringComparison.Ordinal);
        text = Regex.Replace(text, "// \"along\": \\[-1, 0, 0\\],(?=\\s+// How far the end tube)", "\"along\": [-1, 0, 0],");
        text = Regex.Replace(text, "        \"bench\": \\{.*?\n        \\},\n", "", RegexOptions.Singleline);
        text = Regex.Replace(text, "        \"length\": \"48 in.*\n", "");
        return Regex.Replace(text, "        \"bends\": .*\n", "");
    }

    private static string Sixteenths(double[] a, double[] b)
    {
        var inches = Math.Sqrt(a.Zip(b, (x, y) => (x - y) * (x - y)).Sum());
        return (Math.Round(16 * inches) / 16).ToString(CultureInfo.InvariantCulture);
    }

    private static JsonElement Run(string file)
    {
        using var json = JsonDocument.Parse(CommandLine.Run("check", file, "--json").Out);
        return json.RootElement.GetProperty("files")[0].GetProperty("runs")[0].Clone();
    }

    private static double Figure(JsonElement run, string id) => run.GetProperty("figures").EnumerateArray().Single(f => f.GetProperty("id").GetString() == id).GetProperty("value").GetDouble();

    private static string Verdict(JsonElement run, string rule) =>
        run.GetProperty("findings").EnumerateArray().Single(f => f.GetProperty("rule").GetString() == rule).GetProperty("verdict").GetString()!;
}
