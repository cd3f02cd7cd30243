using System.Text.Json;
using static Throwright.Cli.Tests.CommandLine;

namespace Throwright.Cli.Tests;

public class CheckTests
{
    [Fact]
    public void Check_Amphibian_NamesTheFaultWithARemedy()
    {
        var answer = Run("check", "examples/amphibian.throwright.json");
        Assert.Equal(1, answer.Exit);
        Assert.Empty(answer.Error);
        Assert.StartsWith("One of six runs does not work yet.\n", answer.Out);
        Assert.Contains("The knob reaches its OUT stop before the cowl flap is shut", answer.Out);
        Assert.Contains("do    Slide the swivel", answer.Out);
        Assert.Contains("toward the tip", answer.Out);
        Assert.Contains("Not an approval", answer.Out);
    }

    [Theory]
    [InlineData("amphibian")]
    [InlineData("biplane")]
    public void Check_Example_IsAsApproved(string name)
    {
        var plain = Run("check", $"examples/{name}.throwright.json", "--plain", "--ladder", "all");
        Throwright.Tests.ApprovedText.Matches($"tests/approved/Throwright.Cli.Tests/check-{name}.txt", plain.Out);
    }

    [Fact]
    public void Check_Json_IsAsApproved()
    {
        var answer = Run("check", "examples/bench/cabin-air.throwright.json", "--json");
        Assert.Equal(0, answer.Exit);
        Throwright.Tests.ApprovedText.Matches("tests/approved/Throwright.Cli.Tests/check-cabin-air.json", answer.Out);
        using var json = JsonDocument.Parse(answer.Out);
        Assert.Equal(1, json.RootElement.GetProperty("throwrightCheck").GetInt32());
    }

    [Fact]
    public void Check_JsonOfManyFiles_IsOneDocumentInTheOrderOfNames()
    {
        var one = Run("check", "examples", "--json", "--curves", "--threads", "1");
        var many = Run("check", "examples", "--json", "--curves", "--threads", "4");
        Assert.Equal(one.Out, many.Out);
        using var json = JsonDocument.Parse(one.Out);
        var files = json.RootElement.GetProperty("files").EnumerateArray().Select(f => f.GetProperty("file").GetString()!).ToList();
        Assert.Equal(Directory.GetFiles(Path.Combine(Throwright.Tests.ApprovedText.Root, "examples"), "*.throwright.json", SearchOption.AllDirectories).Length, files.Count);
        Assert.Equal(files.Order(StringComparer.Ordinal), files);
        Assert.Equal(1, json.RootElement.GetProperty("exitCode").GetInt32());
        Assert.Equal(1, one.Exit);
    }

    [Fact]
    public void Check_SameSeed_SameBytes_OtherSeed_OtherOdds()
    {
        string Odds(string seed) => Run("check", "examples/bench/fuel-valve.throwright.json", "--json", "--seed", seed).Out;
        Assert.Equal(Odds("7"), Odds("7"));
        Assert.NotEqual(Odds("7"), Odds("8"));
    }

    [Fact]
    public void Check_EveryRemedyOfTheExamples_DoesWhatItSays()
    {
        foreach (var file in new[] { "examples/amphibian.throwright.json", "examples/biplane.throwright.json", "examples/bench/fuel-valve.throwright.json" })
        {
            using var json = JsonDocument.Parse(Run("check", file, "--json").Out);
            var tried = 0;
            foreach (var run in json.RootElement.GetProperty("files")[0].GetProperty("runs").EnumerateArray())
            {
                foreach (var finding in run.GetProperty("findings").EnumerateArray().Where(f => f.GetProperty("verdict").GetString() == "fail"))
                {
                    foreach (var remedy in finding.GetProperty("remedies").EnumerateArray().Where(r => r.GetProperty("try").GetArrayLength() > 0))
                    {
                        var changes = remedy.GetProperty("try").EnumerateArray().SelectMany(t => new[] { "--try", t.GetString()! });
                        using var then = JsonDocument.Parse(Run(["check", file, "--json", "--run", run.GetProperty("id").GetString()!, .. changes]).Out);
                        var after = then.RootElement.GetProperty("files")[0].GetProperty("runs")[0];
                        var same = after.GetProperty("findings").EnumerateArray().First(f => f.GetProperty("rule").GetString() == finding.GetProperty("rule").GetString());
                        Assert.NotEqual("fail", same.GetProperty("verdict").GetString());
                        tried++;
                    }
                }
            }

            Assert.True(tried > 0, $"{file} has no fault to cure");
        }
    }

    [Fact]
    public void Check_BrokenFile_NamesLineAndPath_AndChecksTheOtherRuns()
    {
        using var bench = new Workbench();
        var file = bench.Copy("biplane.throwright.json");
        File.WriteAllText(file, File.ReadAllText(file).Replace("\"radius\": \"36 mm ± 0.3 mm\"", "\"radius\": \"36,5 mm\""));
        var before = File.ReadAllBytes(file);
        var answer = Run("check", file, "--plain");
        Assert.Equal(2, answer.Exit);
        Assert.Contains("$.runs[1].leverEnd.arm.radius", answer.Out);
        Assert.Contains("a comma is not a decimal point here", answer.Out);
        Assert.Contains("The other 5 runs were checked. Nothing was written. Exit 2.", answer.Out);
        Assert.Contains("THROTTLE", answer.Out);
        Assert.Equal(before, File.ReadAllBytes(file));
    }

    [Theory]
    [InlineData("check", "nowhere.throwright.json")]
    [InlineData("chekc", "examples/amphibian.throwright.json")]
    [InlineData("check", "examples/amphibian.throwright.json", "--lader", "all")]
    [InlineData("check", "examples/amphibian.throwright.json", "--run", "no-such-run")]
    [InlineData("check", "examples/amphibian.throwright.json", "--try", "cowl-flap")]
    [InlineData("check", "examples/amphibian.throwright.json", "--try", "cowl-flap/leverEnd.arm.radius=1,5 in")]
    [InlineData("check", "examples/amphibian.throwright.json", "--samples", "3")]
    [InlineData("check", "docs")]
    [InlineData("check")]
    public void Check_UnusableInput_ExitsWith2_AndSaysWhy(params string[] arguments)
    {
        var answer = Run(arguments);
        Assert.Equal(2, answer.Exit);
        Assert.True((answer.Out + answer.Error).Trim().Length > 10);
        Assert.DoesNotContain("   at Throwright", answer.Out + answer.Error);
    }

    [Fact]
    public void Check_FolderOfManyFiles_TellsEach()
    {
        using var bench = new Workbench();
        var text = File.ReadAllText(Path.Combine(Throwright.Tests.ApprovedText.Root, "examples/bench/cabin-air.throwright.json"));
        for (var i = 0; i < 12; i++)
            bench.Put($"fleet/a{i:00}.throwright.json", text.Replace("Bench: cabin air", $"Number {i}"));
        bench.Put("fleet/broken.throwright.json", "{ \"format\": 1");
        var answer = Run("check", bench.Folder, "--plain");
        Assert.Equal(2, answer.Exit);
        for (var i = 0; i < 12; i++)
            Assert.Contains($"Number {i}\n", answer.Out);
        Assert.Contains("broken.throwright.json", answer.Out);
    }
}
