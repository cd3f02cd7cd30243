using BenchmarkDotNet.Attributes;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;

namespace Throwright.Bench;

/// <summary>check-12: whole runs through all stages with findings, remedies and figures; times are for one run.</summary>
public class CheckBenchmarks
{
    private readonly Aircraft clear = With(v => v < Verdict.Fail);
    private readonly Aircraft failing = With(v => v == Verdict.Fail);

    [Benchmark(Description = "check-12, a run of 12", OperationsPerInvoke = 12)]
    public AircraftAnswer Twelve() => RunCheck.Check(Demo.TwelveRuns, new());

    [Benchmark(Description = "check-12, runs that do not fail", OperationsPerInvoke = 12)]
    public AircraftAnswer Clear() => RunCheck.Check(clear, new());

    [Benchmark(Description = "check-12, runs that fail", OperationsPerInvoke = 12)]
    public AircraftAnswer Failing() => RunCheck.Check(failing, new());

    private static Aircraft With(Func<Verdict, bool> verdict) =>
        Demo.Repeat(RunCheck.Check(Demo.Amphibian, new()).Runs.Where(r => verdict(r.Verdict)).Select(r => r.Run), 12);
}
