using System.Diagnostics;
using Throwright.Tests;

namespace Throwright.Cli.Tests;

/// <summary>The program against tests/oracle/ladder_oracle.py: the same aircraft files, worked out from the physics in another language.</summary>
public sealed class OutsideOracleTests
{
    [Fact]
    public async Task Check_FiftyRandomRuns_AgreesWithTheOutsideOracle()
    {
        var python = Python();
        if (python is null)
        {
            const string missing = "No python3 with numpy and scipy here (apt install python3-scipy, or name one in THROWRIGHT_PYTHON): the outside oracle was not asked.";
            Assert.False(Environment.GetEnvironmentVariable("THROWRIGHT_REQUIRE_PYTHON") == "1", missing);
            Assert.Skip(missing);
        }

        var answer = await Run(
            python, Path.Combine(ApprovedText.Root, "tests", "oracle", "ladder_oracle.py"), "--program", Path.Combine(AppContext.BaseDirectory, "throwright.dll"), "--runs", "50");

        Assert.True(answer.Exit == 0, answer.Output);
        Assert.Contains("oracle: 50 runs agree, 0 differ", answer.Output, StringComparison.Ordinal);
    }

    /// <summary>The first interpreter that has numpy and scipy; null when none has.</summary>
    private static string? Python()
    {
        string?[] named = [Environment.GetEnvironmentVariable("THROWRIGHT_PYTHON"), "/usr/bin/python3", "python3", "python"];
        return named.OfType<string>().FirstOrDefault(name =>
        {
            try
            {
                return Run(name, "-c", "import numpy, scipy.optimize").GetAwaiter().GetResult().Exit == 0;
            }
            catch (System.ComponentModel.Win32Exception)
            {
                return false;
            }
        });
    }

    private static async Task<(int Exit, string Output)> Run(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        // Small matrices: threads of the linear algebra only get in each other's way.
        start.Environment["OPENBLAS_NUM_THREADS"] = "1";
        start.Environment["PYTHONIOENCODING"] = "utf-8";
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, (await output) + (await error));
    }
}
