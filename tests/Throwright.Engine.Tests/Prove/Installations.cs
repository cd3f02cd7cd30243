using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Prove;
using Throwright.Engine.Tests.Chain;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Prove;

/// <summary>Invented runs with everything said that rules of installation ask.</summary>
internal static class Installations
{
    /// <summary>The device driven to its push stop by its own torque, which is its safe end.</summary>
    public static Run Sound { get; } = Runs.Sound.Lever(e => e with
    {
        Load = new() { Torque = Runs.Share<Torque>(0.10, 0.2), Measured = true, Bias = new() { Toward = DeviceStop.Push, Torque = Runs.Share<Torque>(0.3, 0.1) } },
    }) with
    { SafeEnd = "open" };

    public static Run With(this Run run, Func<Installation, Installation> change) => run with { Installation = change(run.Installation!) };

    public static RunAnswer Prove(this Run run, Aircraft? aircraft = null) => RunCheck.Check(aircraft ?? Runs.Aircraft, run, Runs.Quick);

    public static Verdict? Rule(this Run run, string rule, Aircraft? aircraft = null) => run.Prove(aircraft).Of(rule)?.Verdict;

    public static FailureRow Failure(this Run run, SingleFailure failure) => run.Prove().Proof!.Failures.Single(f => f.Failure == failure);
}
