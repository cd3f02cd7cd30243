using System.Diagnostics;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;

namespace Throwright.Bench;

/// <summary>
/// The least wall time and the least processor time of some repetitions: on a machine that other work is using at the same time, only
/// the second says something.
/// </summary>
internal static class Least
{
    public static void Print()
    {
        var runs = RunCheck.Check(Demo.Amphibian, new()).Runs;
        Aircraft clear = Demo.Repeat(runs.Where(r => r.Verdict < Verdict.Fail).Select(r => r.Run), 12), failing = Demo.Repeat(runs.Where(r => r.Verdict == Verdict.Fail).Select(r => r.Run), 12);
        // What the page and a folder of one type do: the lies are known from the first look.
        var known = new KnownLies();
        Measure("check-12, a run of 12, lies known", 15, 12, () => RunCheck.Check(Demo.TwelveRuns, new(), null, known));
        Measure("check-12, a run of 12", 15, 12, () => RunCheck.Check(Demo.TwelveRuns, new()));
        Measure("check-12, runs that do not fail", 15, 12, () => RunCheck.Check(clear, new()));
        Measure("check-12, runs that fail", 15, 12, () => RunCheck.Check(failing, new()));
        foreach (var threads in (int[])[1, 2])
            Measure($"tolerance-1e6, {threads} threads", 40, 1, () => ToleranceBenchmarks.Draw(threads));
    }

    private static void Measure<T>(string what, int repetitions, int per, Func<T> work)
    {
        using var process = Process.GetCurrentProcess();
        double wall = double.MaxValue, processor = double.MaxValue;
        for (var i = 0; i < repetitions; i++)
        {
            process.Refresh();
            var before = process.TotalProcessorTime;
            var watch = Stopwatch.StartNew();
            GC.KeepAlive(work());
            wall = Math.Min(wall, watch.Elapsed.TotalMilliseconds / per);
            process.Refresh();
            processor = Math.Min(processor, (process.TotalProcessorTime - before).TotalMilliseconds / per);
        }

        Console.WriteLine(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{what,-34} least {wall:0.0} ms, processor {processor:0.0} ms, of {repetitions}"));
    }
}
