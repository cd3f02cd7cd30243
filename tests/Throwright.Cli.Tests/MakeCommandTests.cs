using System.Text;
using static Throwright.Cli.Tests.CommandLine;

namespace Throwright.Cli.Tests;

public class MakeCommandTests
{
    private const string Example = "examples/shop.throwright.json";

    private static Answer Make(string folder, params string[] more) => Run(["make", Example, "cabin-heat", "--out", folder, "--date", "2026-11-25", "--plain", .. more]);

    [Fact]
    public void All_OfTheExample_WritesEveryFileTwiceAlike()
    {
        using var bench = new Workbench();
        string one = Path.Combine(bench.Folder, "one"), two = Path.Combine(bench.Folder, "two");
        var answer = Make(one);
        Assert.True(answer.Exit == 0, answer.Error);
        Assert.Equal(0, Make(two).Exit);
        var files = Directory.GetFiles(one).Select(Path.GetFileName).Order(StringComparer.Ordinal).ToList();
        foreach (var ending in (string[])[".step", ".stl", ".3mf", ".glb", ".dxf", ".svg", ".pdf"])
            Assert.Contains(files, f => f!.EndsWith(ending, StringComparison.Ordinal));
        Assert.DoesNotContain(files, f => f!.EndsWith(".part", StringComparison.Ordinal));
        foreach (var file in files)
        {
            Assert.Contains(file!, answer.Out, StringComparison.Ordinal);
            Assert.Equal(File.ReadAllBytes(Path.Combine(one, file!)), File.ReadAllBytes(Path.Combine(two, file!)));
        }

        Assert.Contains("no open edge", answer.Out);
        Assert.Contains("as the closed form", answer.Out);
        Assert.Contains("a fit check", answer.Out);
        Assert.Contains("not an approval", answer.Out);
    }

    [Fact]
    public void FilesThatAreThere_AreKept_UnlessReplaceIsSaid()
    {
        using var bench = new Workbench();
        var kept = bench.Put("cabin-heat-template.pdf", "mine");
        var refused = Make(bench.Folder, "template");
        Assert.Equal(2, refused.Exit);
        Assert.Contains("cabin-heat-template.pdf", refused.Error);
        Assert.Equal("mine", File.ReadAllText(kept));
        Assert.Single(Directory.GetFiles(bench.Folder));
        Assert.Equal(0, Run("make", Example, "cabin-heat", "template", "--out", bench.Folder, "--replace").Exit);
        Assert.StartsWith("%PDF", Encoding.ASCII.GetString(File.ReadAllBytes(kept), 0, 4));
    }

    [Fact]
    public void Schema_WhenAskedFor_IsAp242()
    {
        using var bench = new Workbench();
        Assert.Equal(0, Make(bench.Folder, "--ap242").Exit);
        Assert.Contains("AP242", File.ReadAllText(Path.Combine(bench.Folder, "cabin-heat-wedge.step")));
    }

    [Fact]
    public void RunWithoutParts_SaysWhatIsLacking_AndWritesNothing()
    {
        using var bench = new Workbench();
        var answer = Run("make", "examples/biplane.throwright.json", FirstRun(), "wedge", "--out", bench.Folder);
        Assert.Equal(2, answer.Exit);
        Assert.Contains("Nothing was written", answer.Error);
        Assert.Contains("cockpitEnd.tilt", answer.Error);
        Assert.Empty(Directory.GetFiles(bench.Folder));

        static string FirstRun()
        {
            var text = File.ReadAllText(Path.Combine(Throwright.Tests.ApprovedText.Root, "examples", "biplane.throwright.json"));
            return System.Text.RegularExpressions.Regex.Match(text[text.IndexOf("\"runs\"", StringComparison.Ordinal)..], "\"id\": \"([^\"]+)\"").Groups[1].Value;
        }
    }

    [Theory]
    [InlineData("--date", "25.11.2026", "is no date")]
    [InlineData("--paper", "a3", "a3")]
    public void BadOption_IsRefused_AndNothingWritten(string option, string value, string said)
    {
        using var bench = new Workbench();
        var answer = Run("make", Example, "cabin-heat", "--out", bench.Folder, option, value);
        Assert.Equal(2, answer.Exit);
        Assert.Contains(said, answer.Error);
        Assert.Empty(Directory.GetFiles(bench.Folder));
    }
}
