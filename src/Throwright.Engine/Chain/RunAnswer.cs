using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.HandForce;
using Throwright.Engine.Heat;
using Throwright.Engine.Model;
using Throwright.Engine.Prove;
using Throwright.Engine.Throw;
using Throwright.Shapes;

namespace Throwright.Engine.Chain;

/// <summary>Everything worked out about one run. What could not be worked out is null and named in Needs.</summary>
public sealed record RunAnswer
{
    public required Run Run { get; init; }
    public required RunWords Words { get; init; }
    public LeverPlacement? Placement { get; init; }
    public Sweep? Sweep { get; init; }

    /// <summary>The two stops with the limits of their moment arms; null: a dead centre lies in the sweep.</summary>
    public Stops? Stops { get; init; }

    /// <summary>Where the conduit goes and how it lies; null: the file does not say its way.</summary>
    public RunRoute? Route { get; init; }
    public HandForceCase? ForceCase { get; init; }
    public HandForces? Forces { get; init; }
    public LadderCase? LadderCase { get; init; }
    public TravelLadder? Ladder { get; init; }
    public TravelCurve? Curve { get; init; }
    /// <summary>Single failures and the joint; null in a trial.</summary>
    public ProveAnswer? Proof { get; init; }

    /// <summary>Parts against the heat of their place; null in a trial.</summary>
    public HeatAnswer? Heat { get; init; }

    /// <summary>What comes near the handle; null: the file says nothing of what it could meet.</summary>
    public RunClearance? Clearance { get; init; }

    /// <summary>The tilts of a handle that meets something or leans; null: not asked for, for it takes far longer than the check itself.</summary>
    public MountMap? Map { get; init; }

    /// <summary>What arm and conduit come near to; empty where neither has a place in the aircraft.</summary>
    public EquatableList<EndPairs> Ends { get; init; } = [];
    public required EquatableList<Need> Needs { get; init; }

    /// <summary>In the order of <see cref="RuleBook.Place"/>; within a place in the order of the chain.</summary>
    public required EquatableList<Finding> Findings { get; init; }
    public required EquatableList<Figure> Figures { get; init; }

    /// <summary>The cable that counts: with bends and length of the lie, where the way is known; else as typed.</summary>
    public Cable? Cable => Run.Cable is { } typed && Route is { } route ? RouteInputs.Cable(typed, route) : Run.Cable;

    /// <summary>The worst verdict of all findings.</summary>
    public Verdict Verdict => Findings.Count == 0 ? Verdict.NeedsInput : Findings.Max(f => f.Verdict);

    /// <summary>What is the matter, in one line.</summary>
    public required string Sentence { get; init; }

    public Figure? Find(string figureId) => Figures.FirstOrDefault(f => f.Id == figureId);
}

/// <summary>Push stop and pull stop, each with the true limits of its moment arm.</summary>
public sealed record Stops(DevicePlace AtPush, DevicePlace AtPull)
{
    /// <summary>Least moment arm at a stop, over all tolerances, m/rad.</summary>
    public double LeastArm => Math.Min(AtPush.MomentArm.Least, AtPull.MomentArm.Least);
}

/// <summary>What things are called on this run.</summary>
/// <param name="Name">As engraved, or the id.</param>
/// <param name="Device">"the cowl flap".</param>
/// <param name="PushEnd">What the device does at its push stop: "open", or "at its push stop".</param>
/// <param name="PullEnd">What it does at its pull stop.</param>
public sealed record RunWords(string Name, string Device, string PushEnd, string PullEnd)
{
    public static RunWords Of(Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        var device = run.Function switch
        {
            ControlFunction.CowlFlap => "the cowl flap",
            ControlFunction.CarburettorHeat => "the carburettor heat valve",
            ControlFunction.AlternateAir => "the alternate air door",
            ControlFunction.CabinHeat => "the cabin heat valve",
            ControlFunction.CabinAir => "the cabin air valve",
            ControlFunction.FuelShutoff => "the fuel shutoff",
            ControlFunction.ParkingBrake => "the parking brake valve",
            ControlFunction.TailwheelLock => "the tailwheel lock",
            ControlFunction.WaterRudder => "the water rudder",
            ControlFunction.CanopyLatch or ControlFunction.BaggageLatch => "the latch",
            ControlFunction.EmergencyGear => "the gear release",
            ControlFunction.Throttle => "the throttle arm",
            ControlFunction.Mixture => "the mixture arm",
            ControlFunction.Propeller => "the propeller governor's arm",
            ControlFunction.Choke => "the choke",
            ControlFunction.Primer => "the primer",
            _ => "the device",
        };
        var end = run.CockpitEnd;
        return new(
            run.Label.Length > 0 ? run.Label : run.Id,
            device,
            end is { PushMeans.Length: > 0 } ? end.PushMeans : "at its push stop",
            end is { PullMeans.Length: > 0 } ? end.PullMeans : "at its pull stop");
    }
}

/// <summary>All runs of one aircraft.</summary>
public sealed record AircraftAnswer(Aircraft Aircraft, EquatableList<RunAnswer> Runs)
{
    /// <summary>Clearance of all handles; null: the file says nothing of what they could meet.</summary>
    public CockpitAnswer? Cockpit { get; init; }

    /// <summary>What concerns no one run.</summary>
    public EquatableList<Finding> Findings => Cockpit is null ? [] : AircraftFindings.Of(Aircraft, Cockpit).ToEquatableList();

    /// <summary>The figures of these.</summary>
    public EquatableList<Figure> Figures => Cockpit is null ? [] : AircraftFindings.Figures(Cockpit).ToEquatableList();

    /// <summary>Id of the figure of a pair of movers.</summary>
    public static string FigureOf(Clearance.PairClearance pair) => AircraftFindings.FigureOf(pair);

    public Figure? Find(string figureId) => Figures.FirstOrDefault(f => f.Id == figureId);

    /// <summary>Parts that may touch, and why: nothing is proved about them.</summary>
    public EquatableList<Clearance.AllowedContact> Allowed => AircraftFindings.Allowed(this).ToEquatableList();

    /// <summary>The same in words, a line for each reason.</summary>
    public EquatableList<string> AllowedLines => AircraftFindings.AllowedLines(this).ToEquatableList();

    /// <summary>What the proof of clearance leaves out, and why. Empty where nothing is proved.</summary>
    public EquatableList<LeftOut> LeftOut => AircraftFindings.LeftOut(this).ToEquatableList();

    /// <summary>Of what concerns no one run.</summary>
    public Verdict OwnVerdict => Findings.Count == 0 ? Verdict.Clear : Findings.Max(f => f.Verdict);

    public Verdict Verdict => Runs.Count == 0 ? Verdict.NeedsInput : (Verdict)Math.Max((int)Runs.Max(r => r.Verdict), (int)OwnVerdict);

    public int Count(Verdict verdict) => Runs.Count(r => r.Verdict == verdict);
}
