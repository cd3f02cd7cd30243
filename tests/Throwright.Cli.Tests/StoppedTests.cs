using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace Throwright.Cli.Tests;

/// <summary>A long proof stopped by Ctrl+C, or by its budget: what is said is whole and claims nothing.</summary>
public sealed class StoppedTests
{
    /// <summary>A box on six joints beside a T-handle.</summary>
    private const string Long =
        """
        {
          "format": 1,
          "aircraft": { "name": "Demo" },
          "sheets": [ { "id": "panel", "at": ["1 m", "0 m", "1 m"], "normal": [1, 0, 0] } ],
          "bodies": [
            {
              "id": "arm",
              "joints": [
                { "id": "a", "turn": [0, 1, 0.2], "about": ["1.5 m", "0 m", "0.2 m"], "from": "-4 deg", "to": "4 deg" },
                { "id": "b", "turn": [1, 0.1, 0], "about": ["1.5 m", "0 m", "0.5 m"], "from": "-20 deg", "to": "20 deg" },
                { "id": "c", "turn": [0, 0.3, 1], "about": ["1.5 m", "0.1 m", "0.8 m"], "from": "-30 deg", "to": "30 deg" },
                { "id": "d", "slide": [-1, 0.2, 0], "from": "0 mm", "to": "100 mm" },
                { "id": "e", "turn": [0.2, 1, 0], "about": ["1.4 m", "0 m", "0.9 m"], "from": "-30 deg", "to": "30 deg" },
                { "id": "f", "slide": [0, 0.3, 1], "from": "-50 mm", "to": "50 mm" }
              ],
              "shapes": [ { "box": { "centre": ["1.46 m", "0 m", "1 m"], "size": ["60 mm", "200 mm", "40 mm"] } } ]
            }
          ],
          "runs": [
            {
              "id": "knob",
              "cockpitEnd": {
                "stroke": "70 mm", "sheet": "panel", "hole": ["1 m", "0 m", "1 m"], "turns": { "left": "60 deg", "right": "60 deg" },
                "knob": { "shape": "tHandle", "diameter": "12 mm", "width": "90 mm" }, "shank": { "diameter": "8 mm", "out": "20 mm" }
              }
            }
          ]
        }
        """;

    [Fact]
    public async Task Check_StoppedByCtrlC_EndsWithAWholeDocumentAndNothingWritten()
    {
        if (OperatingSystem.IsWindows())
            return;
        using var bench = new Workbench();
        // A hundred of them, so that the stop falls into the search.
        var body = Long[(Long.IndexOf("\"bodies\": [", StringComparison.Ordinal) + 11)..Long.IndexOf("],\n  \"runs\"", StringComparison.Ordinal)];
        var text = Long.Replace(body, string.Join(",", Enumerable.Range(0, 100).Select(i => body.Replace("\"arm\"", $"\"arm-{i}\"", StringComparison.Ordinal))), StringComparison.Ordinal);
        var file = bench.Put("demo.throwright.json", text);
        var program = Path.Combine(AppContext.BaseDirectory, "throwright.dll");
        using var process = Process.Start(new ProcessStartInfo("dotnet", [program, "check", file, "--json", "--tolerance", "0.001 mm", "--boxes", "100000000"])
        {
            WorkingDirectory = bench.Folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        // The document has begun: the program is at work.
        Assert.Equal("{", await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken));
        using (var kill = Process.Start("kill", ["-INT", process.Id.ToString(CultureInfo.InvariantCulture)]))
            await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
        var error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        var output = "{" + await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(130, process.ExitCode);
        Assert.Contains("Stopped by you after 0 of 1 files. Nothing was written.", await error, StringComparison.Ordinal);
        using var document = JsonDocument.Parse(output);
        Assert.Equal(130, document.RootElement.GetProperty("exitCode").GetInt32());
        Assert.Equal(0, document.RootElement.GetProperty("files").GetArrayLength());
        Assert.Equal(["demo.throwright.json"], Directory.GetFileSystemEntries(bench.Folder).Select(Path.GetFileName));
        Assert.Equal(text, await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));
    }

    [Fact]
    public void Check_StoppedByItsBudget_CannotTellYet()
    {
        using var bench = new Workbench();
        var answer = CommandLine.Run("check", bench.Put("demo.throwright.json", Long), "--plain", "--boxes", "100", "--run", "knob");
        Assert.Equal(0, answer.Exit);
        Assert.Contains("one not settled within the budget", answer.Out, StringComparison.Ordinal);
        Assert.Contains("can't tell yet whether they stay", answer.Out, StringComparison.Ordinal);
        Assert.Contains("stopped by its budget", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("knob and arm stay at least", answer.Out, StringComparison.Ordinal);
    }
}
