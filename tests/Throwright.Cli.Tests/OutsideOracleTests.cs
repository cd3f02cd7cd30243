using System.Diagnostics;
using Throwright.Tests;

namespace Throwright.Cli.Tests;

/// <summary>The program against tests/oracle: the same aircraft files, worked out from the physics in another language.</summary>
public sealed class OutsideOracleTests
{
    [Fact]
    public async Task Check_FiftyRandomRuns_AgreesWithTheOutsideOracle()
    {
        var answer = await Ask("ladder_oracle.py", "--runs", "50");

        Assert.True(answer.Exit == 0, answer.Output);
        Assert.Contains("oracle: 50 runs agree, 0 differ", answer.Output, StringComparison.Ordinal);
    }

    /// <summary>
    /// tests/oracle/cockpit_oracle.py: bodies placed and distances measured in another language, by alternating projections (Cheney and
    /// Goldstein 1959); with the tilt that solve mount writes; and the same aircraft mirrored, moved, in other units and order.
    /// </summary>
    [Fact]
    public async Task Check_CockpitsOfTheExamples_AgreeWithTheOutsideOracle()
    {
        string[] files = [Example("amphibian"), Example("biplane")];
        var answer = await Ask("cockpit_oracle.py", ["--mount", $"{files[0]}:cowl-flap", .. files]);

        Assert.True(answer.Exit == 0, answer.Output);
        Assert.Matches("cockpit oracle: 1[0-9][0-9] pairs, 0 differ", answer.Output);

        static string Example(string name) => Path.Combine(ApprovedText.Root, "examples", $"{name}.throwright.json");
    }

    /// <summary>
    /// tests/oracle/route_oracle.py: taped points by scipy's least squares, lies by scipy's collocation over all spans at once, lengths to
    /// order from their parts; and the same runs moved, turned, mirrored, from the other end, in other units.
    /// </summary>
    [Fact]
    public async Task MeasureAndRoute_OfRandomFiles_AgreeWithTheOutsideOracle()
    {
        var answer = await Ask("route_oracle.py", "--runs", "6", "--otherwise", "20", "--points", "24", "--starts", "1");

        Assert.True(answer.Exit == 0, answer.Output);
        Assert.Matches("route oracle: [12][0-9] points, 6 lies .*, 20 runs otherwise, 0 differ", answer.Output);
    }

    private static Task<(int Exit, string Output)> Ask(string oracle, params string[] arguments)
    {
        var python = Python();
        if (python is null)
        {
            const string missing = "No python3 with numpy and scipy here (apt install python3-scipy, or name one in THROWRIGHT_PYTHON): the outside oracle was not asked.";
            Assert.False(Environment.GetEnvironmentVariable("THROWRIGHT_REQUIRE_PYTHON") == "1", missing);
            Assert.Skip(missing);
        }

        return Run(python, [Path.Combine(ApprovedText.Root, "tests", "oracle", oracle), "--program", Path.Combine(AppContext.BaseDirectory, "throwright.dll"), .. arguments]);
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
