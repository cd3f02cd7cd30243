using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Exporters;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace Throwright.Bench;

/// <summary>Measures speed: quick (under a minute), deep, or least (a few figures with processor times). docs/benchmarks.md.</summary>
public static class Program
{
    public static int Main(string[] args)
    {
        ArgumentNullException.ThrowIfNull(args);
        if (args is ["workload", "clearance", var exchange])
        {
            ClearanceWorkloads.Run(exchange);
            return 0;
        }

        if (args is ["workload", "clearance", var file, var part])
        {
            ClearanceWorkloads.Run(file, part);
            return 0;
        }

        if (args is ["workload", "clearance-compare", var ours, var theirs])
        {
            ClearanceWorkloads.Compare(ours, theirs);
            return 0;
        }

        if (args is ["workload", var name])
        {
            LieWorkloads.Run(name);
            return 0;
        }

        if (args is ["least"])
        {
            Least.Print();
            return 0;
        }

        var deep = args is ["deep", ..];
        if (!deep && args is not ["quick", ..])
        {
            Console.Error.WriteLine("Throwright.Bench quick|deep [--filter *Check*], or Throwright.Bench least | workload NAME");
            return 2;
        }

        // In this process: a copy of the project need not be built for each benchmark. The least of the repetitions is the
        // figure to compare: other work on the machine only ever adds.
        var job = (deep ? Job.Default.WithWarmupCount(6).WithIterationCount(30) : Job.Default.WithWarmupCount(3).WithIterationCount(8).WithIterationTime(Perfolizer.Horology.TimeInterval.FromMilliseconds(150)))
            .WithToolchain(InProcessEmitToolchain.Instance).WithId(args[0]);
        var config = ManualConfig.CreateEmpty()
            .AddJob(job)
            .AddLogger(ConsoleLogger.Default)
            .AddColumnProvider(DefaultColumnProviders.Instance)
            .AddColumn(StatisticColumn.Min, StatisticColumn.Median)
            .AddDiagnoser(MemoryDiagnoser.Default)
            .AddExporter(MarkdownExporter.GitHub);
        var summaries = BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args.Length > 1 ? args[1..] : ["--filter", "*"], config);
        return summaries.Any(s => s.HasCriticalValidationErrors || s.Reports.Any(r => !r.Success)) ? 1 : 0;
    }
}
