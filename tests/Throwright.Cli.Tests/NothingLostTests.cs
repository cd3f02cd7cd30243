using static Throwright.Cli.Tests.CommandLine;

namespace Throwright.Cli.Tests;

/// <summary>Where a file can't be written, nothing is half there, and the answer says so.</summary>
public sealed class NothingLostTests
{
    private const string CabinAir = "bench/cabin-air.throwright.json";

    /// <summary>A folder stands where the last of the files should go: none of the others is written, and nothing is left beside them.</summary>
    [Theory]
    [InlineData("make", "shop.throwright.json", "cabin-heat", "--out", "cabin-heat-marking.svg")]
    [InlineData("plot", "bench/cabin-air.throwright.json", "cabin-air", "--svg", "cabin-air-gauge.svg")]
    public void ManyFiles_OneCantBeWritten_NoneIs(string command, string example, string run, string option, string taken)
    {
        using var bench = new Workbench();
        var file = bench.Copy(example);
        var folder = Path.Combine(bench.Folder, "out");
        Assert.Equal(0, Run(command, file, run, option, folder).Exit);
        Assert.Contains(Path.Combine(folder, taken), Directory.GetFiles(folder));
        foreach (var old in Directory.GetFiles(folder))
            File.WriteAllText(old, "as it was");
        File.Delete(Path.Combine(folder, taken));
        Directory.CreateDirectory(Path.Combine(folder, taken, "full"));
        string[] replace = command == "make" ? ["--replace"] : [];
        var answer = Run([command, file, run, option, folder, .. replace]);
        Assert.Equal(2, answer.Exit);
        Assert.Contains($"{taken} can't be written", answer.Error);
        Assert.Contains("No file was changed.", answer.Error);
        Assert.All(Directory.GetFiles(folder), f => Assert.Equal("as it was", File.ReadAllText(f)));
        Assert.DoesNotContain(Directory.GetFiles(folder), f => f.EndsWith(".part", StringComparison.Ordinal));
    }

    /// <summary>/dev/full takes nothing, as a full disk behind &gt; FILE.</summary>
    [Theory]
    [InlineData("check", CabinAir)]
    [InlineData("check", CabinAir, "--json")]
    [InlineData("schema")]
    public void Answer_ThatCantBeWritten_IsSaid_AndIsNoVerdict(params string[] arguments)
    {
        if (!File.Exists("/dev/full"))
            return;
        var words = string.Join(' ', arguments.Select(a => a == CabinAir ? $"'{Path.Combine(Throwright.Tests.ApprovedText.Root, "examples", a)}'" : a));
        using var shell = System.Diagnostics.Process.Start(new System.Diagnostics.ProcessStartInfo("sh", ["-c", $"dotnet '{Path.Combine(AppContext.BaseDirectory, "throwright.dll")}' {words} > /dev/full"]) { RedirectStandardError = true })!;
        var told = shell.StandardError.ReadToEnd();
        shell.WaitForExit();
        Assert.Equal(2, shell.ExitCode);
        Assert.Contains("can't be written", told);
        Assert.DoesNotContain("   at ", told);
    }

    [Fact]
    public void Check_MisspeltOption_IsNotTakenForAFile()
    {
        var answer = Run("check", Path.Combine("examples", CabinAir), "--runn", "cabin-air");
        Assert.Equal(2, answer.Exit);
        Assert.Contains("There is no option --runn. The options of check: ", answer.Error);
        Assert.Contains("--run,", answer.Error);
    }

    [Fact]
    public void Check_FileWithoutItsExtension_IsToldItsName()
    {
        var answer = Run("check", "examples/amphibian");
        Assert.Equal(2, answer.Exit);
        Assert.Contains("examples/amphibian.throwright.json, which is there", answer.Out);
    }
}
