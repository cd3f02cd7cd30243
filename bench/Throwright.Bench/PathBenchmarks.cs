using BenchmarkDotNet.Attributes;
using Throwright.Engine.Chain;
using Throwright.Engine.Cushion;
using Throwright.Engine.HandForce;
using Throwright.Engine.Throw;
using Throwright.Files;
using Throwright.Shapes.Quantities;

namespace Throwright.Bench;

/// <summary>Single paths, each as the check uses it.</summary>
public class PathBenchmarks
{
    private readonly RunAnswer run = Demo.CowlFlap;
    private readonly byte[] file = File.ReadAllBytes(Demo.Path);

    [Benchmark]
    public Sweep? SweepSolver_Solve() => SweepSolver.Solve(run.Placement!.Case);

    /// <summary>One arm angle with the true limits of its moment arm.</summary>
    [Benchmark]
    public DevicePlace LeverPlacement_DevicePlaceAt() => run.Placement!.DevicePlaceAt(run.Sweep!.AtPush);

    [Benchmark]
    public HandForces HandForceSolver_Solve() => HandForceSolver.Solve(run.ForceCase!);

    /// <summary>10 000 installations and four searches for the worst case.</summary>
    [Benchmark]
    public TravelLadder LadderSolver_Solve() => LadderSolver.Solve(run.LadderCase!, new());

    /// <summary>The amphibian: six runs, comments, named points.</summary>
    [Benchmark]
    public AircraftFileResult AircraftFile_Read() => AircraftFile.Read("amphibian", file);

    [Benchmark]
    public bool UnitText_TryRead() => UnitText.TryRead<Length>("1 1/2 in ± 1/64 in", out _, out _);
}
