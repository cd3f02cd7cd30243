using Throwright.Engine.Findings;
using Throwright.Engine.HandForce;
using Throwright.Engine.Heat;
using Throwright.Engine.Model;
using Throwright.Engine.Prove;
using Throwright.Engine.Sources;
using Throwright.Shapes;

namespace Throwright.Engine.Chain;

/// <summary>Hands one run to the rules of installation and of heat. Not part of trials: a remedy moves geometry, not rules.</summary>
internal static class Proof
{
    private static readonly SourceRef Typed = new("project", "temperatures typed into the file", Evidence.CommonPractice);

    public static RunAnswer Of(Aircraft aircraft, RunAnswer answer) => answer with
    {
        Proof = ProveSolver.Solve(CaseFor(aircraft, answer)),
        Heat = HeatSolver.Solve(HeatOf(aircraft, answer.Run)),
    };

    public static IEnumerable<Finding> Findings(Aircraft aircraft, RunAnswer answer, FigureWriter say) =>
        ProveRules.Find(CaseFor(aircraft, answer), answer.Proof!, say).Concat(LabelsApart.Find(answer.Run, aircraft.Runs) is { } alike ? [alike] : []).Concat(Panel(aircraft, answer.Run, say)).Concat(HeatRules.Find(answer.Heat!, say));

    /// <summary>Order of the engine's knobs; each finding stands at one run: carburettor heat's at its own, the order's at the throttle or, without one, the mixture.</summary>
    private static IEnumerable<Finding> Panel(Aircraft aircraft, Run run, FigureWriter say)
    {
        var knobs = KnobsOf(aircraft);
        var first = aircraft.Runs.FirstOrDefault(r => r.Function == ControlFunction.Throttle) ?? aircraft.Runs.FirstOrDefault(r => r.Function == ControlFunction.Mixture);
        return PanelOrder.Find(knobs, say).Where(f => f.Rule == PanelOrder.CarburettorHeat ? run.Function == ControlFunction.CarburettorHeat : f.Rule == PanelOrder.Shapes ? run.Function == ControlFunction.Mixture : ReferenceEquals(run, first));
    }

    /// <summary>Knobs whose place is in the file.</summary>
    internal static IReadOnlyList<PanelPlace> KnobsOf(Aircraft aircraft) =>
    [
        .. aircraft.Runs
            .Where(r => r.CockpitEnd?.Hole is not null)
            .Select(r => new PanelPlace(RunWords.Of(r).Name, r.Function, r.CockpitEnd!.Knob, r.CockpitEnd.Hole!.Buttline.Nominal.Metres, r.CockpitEnd.Hole.Waterline.Nominal.Metres)),
    ];

    internal static ProveCase CaseFor(Aircraft aircraft, RunAnswer answer)
    {
        var run = answer.Run;
        var limit = run.Installation?.LimitForce?.Newtons;
        return new()
        {
            Run = run,
            Device = answer.Words.Device,
            PushEnd = answer.Words.PushEnd,
            PullEnd = answer.Words.PullEnd,
            Safe = SafeStop(run),
            SafeAsSet = run.SafeEnd.Trim().Equals("as set", StringComparison.OrdinalIgnoreCase),
            Loose = Loose(answer, run.LeverEnd?.Load, new(aircraft.Display)),
            WithoutSpring = run.LeverEnd?.Load is { Bias.Spring: true } load ? Loose(answer, load with { Bias = null }, new(aircraft.Display)) : null,
            DeadPlaces = DeadPlaces(answer, new(aircraft.Display)).ToEquatableList(),
            CableHolds = answer.Forces is { SelfHolding: { } hold } ? hold.Drive <= 0 : null,
            Pull = answer.Forces?.MostPull.Worst,
            Push = answer.Forces?.MostPush.Worst,
            ArmRadius = run.LeverEnd?.Radius?.Most,
            Bracket = BracketUnder(run),
            Hand = HandStrength.Of(aircraft.Pilot, run.CockpitEnd?.Knob is KnobShape.Round or null),
            HandSide = aircraft.Pilot?.Eye is { IsKnown: true } eye && run.CockpitEnd?.Hole is { IsKnown: true } hole ? (hole.Buttline.Nominal.Metres < eye.Buttline.Nominal.Metres ? BodySide.Left : BodySide.Right) : null,
            Travel = answer.Ladder is { } l ? l.Throw + l.LostMotion : null,
            Stroke = run.CockpitEnd?.Stroke?.Nominal.Metres,
            Moving = answer.Clearance is { } near ? near.Pairs.Where(p => near.CanMove(p)).Select(p => new MovingNear(near.Other(p), p.Lower)).OrderBy(m => m.Least).Take(6).ToEquatableList() : null,
            Display = aircraft.Display,
            JointHottest = aircraft.Environment is { } at ? Hottest(at, run.LeverEnd?.Zone ?? HeatZone.Elsewhere) : null,
            LeastCushion = answer.Ladder is { } ladder ? Math.Min(ladder.KnobIn.Least, ladder.KnobOut.Least) : null,
            BracketGives = limit is { } force && run.LeverEnd?.BracketStiffness is { } stiffness ? force / stiffness.Least : null,
        };
    }

    /// <summary>The described bracket under the limit force: bending where it is worst, at a bend or at the fasteners, and the worst fastener.</summary>
    private static BracketUnderLimit? BracketUnder(Run run)
    {
        if (MadeParts.BracketOf(run) is not { } bracket || run.LeverEnd!.Bracket!.Fasteners.Count == 0)
            return null;
        var load = new Make.BracketLoad(bracket, ProveSolver.LimitForce(run));
        var name = run.LeverEnd.Bracket.Fastener;
        var row = Published.Table("make/fasteners").Rows.FirstOrDefault(r => r.Find("name")!.Text.Equals(name, StringComparison.OrdinalIgnoreCase));
        return new(6 * load.WorstMoment / (bracket.Width * bracket.Thickness * bracket.Thickness), load.WorstShear, row?.Si("shear"), name, row?.Source)
        {
            FastenerPull = load.WorstTension,
            FastenerPullStands = row?.Find("tension") is null ? null : row.Si("tension"),
        };
    }

    /// <summary>The stop whose words the safe end repeats.</summary>
    internal static DeviceStop? SafeStop(Run run)
    {
        bool Same(string? end) => run.SafeEnd.Length > 0 && string.Equals(run.SafeEnd.Trim(), end?.Trim(), StringComparison.OrdinalIgnoreCase);
        return Same(run.CockpitEnd?.PushMeans) ? DeviceStop.Push : Same(run.CockpitEnd?.PullMeans) ? DeviceStop.Pull : null;
    }

    private static LooseDevice Loose(RunAnswer answer, DeviceLoad? load, FigureWriter say)
    {
        if (load is null)
            return new(LooseWay.NotKnown, "what the device asks of the arm is not known");
        if (answer.Sweep is not { } sweep)
        {
            // Torques that are the same everywhere need no angles.
            return load is { TorqueTable.Count: 0, Detents.Count: 0 } && (load.Bias?.Rate.NewtonMetresPerRadian ?? 0) == 0
                ? Within(load, 0, 0, [0], say)
                : new(LooseWay.NotKnown, "the sweep of the arm is not known");
        }

        if (sweep.IsMonotone)
            return Within(load, sweep.PushAngle, sweep.PullAngle, Angles(load, sweep.PushAngle, sweep.PullAngle), say);
        var marks = Marks(sweep);
        string Name(int i) => i == 0 ? $"the push stop's side ({answer.Words.PushEnd})" : i == marks.Count - 2 ? $"the pull stop's side ({answer.Words.PullEnd})" : "between the dead centres";
        return LooseDevice.OfStretches([.. Enumerable.Range(0, marks.Count - 1).Select(i => (Name(i), Within(load, sweep.PushAngle, sweep.PullAngle, Angles(load, marks[i], marks[i + 1]), say)))]);
    }

    /// <summary>Push stop, dead centres, pull stop, in that order.</summary>
    private static List<double> Marks(Throw.Sweep sweep)
    {
        var up = sweep.PullAngle > sweep.PushAngle;
        return [sweep.PushAngle, .. up ? sweep.DeadCentresInside.Order() : sweep.DeadCentresInside.OrderDescending(), sweep.PullAngle];
    }

    /// <summary>Equal steps, and where a table or a detent has a corner or a top.</summary>
    private static List<double> Angles(DeviceLoad load, double from, double to)
    {
        double low = Math.Min(from, to), high = Math.Max(from, to);
        const int steps = 64;
        return
        [
            .. Enumerable.Range(0, steps + 1).Select(i => low + ((high - low) * i / steps)),
            .. load.TorqueTable.Select(r => r.Arm.Radians).Concat(load.Detents.SelectMany(d => (double[])[d.At.Radians - d.Within.Radians, d.At.Radians - (0.5 * d.Within.Radians), d.At.Radians, d.At.Radians + (0.5 * d.Within.Radians), d.At.Radians + d.Within.Radians])).Where(a => a > low && a < high),
        ];
    }

    private static LooseDevice Within(DeviceLoad load, double pushAngle, double pullAngle, List<double> angles, FigureWriter say)
    {
        // A friction that nobody typed is not a friction of zero.
        if (load is { Torque: null, TorqueTable.Count: 0 })
            return new(LooseWay.NotKnown, "the torque that turns the device is not known");
        var factor = load.Measured ? 1 : Published.Get("hand/estimated-load-factor").Value;
        double least = double.PositiveInfinity, most = double.NegativeInfinity, frictionLeast = double.PositiveInfinity, frictionMost = 0;
        foreach (var angle in angles)
        {
            var torque = DeviceTorque.At(load, angle, pushAngle, pullAngle, factor);
            least = Math.Min(least, torque.TowardPush.Least);
            most = Math.Max(most, torque.TowardPush.Most);
            frictionLeast = Math.Min(frictionLeast, torque.Resist.Least);
            frictionMost = Math.Max(frictionMost, torque.Resist.Most);
        }

        LooseDevice Told(LooseDevice goes) => goes.Way != LooseWay.CannotTell ? goes
            : goes with { Why = $"its own torque, {say.Torque(Math.Max(0, Math.Max(least, -most)))} to {say.Torque(Math.Max(-least, most))}, and its friction, {say.Torque(frictionLeast)} to {say.Torque(frictionMost)}, are too near each other to tell" };
        if (least >= 0)
            return Told(LooseDevice.Of(DeviceStop.Push, least, most, frictionLeast, frictionMost));
        return most <= 0
            ? Told(LooseDevice.Of(DeviceStop.Pull, -most, -least, frictionLeast, frictionMost))
            : Math.Max(-least, most) < frictionLeast
                ? new(LooseWay.Stays, LooseDevice.StrongerFriction)
                : new(LooseWay.CannotTell, "its own torque changes its sense on the way");
    }

    /// <summary>An arm that stands at a dead centre: the wire can't turn it, only its own torque.</summary>
    private static IEnumerable<DeadPlace> DeadPlaces(RunAnswer answer, FigureWriter say)
    {
        if (answer is not { Sweep: { IsMonotone: false } sweep })
            yield break;
        foreach (var dead in sweep.DeadCentresInside)
        {
            if (answer.Run.LeverEnd?.Load is not { } load)
            {
                yield return new(dead, new(LooseWay.NotKnown, "what the device asks of the arm is not known"));
                continue;
            }

            var goes = Within(load, sweep.PushAngle, sweep.PullAngle, [dead], say);
            yield return new(dead, goes.Way == LooseWay.Stays ? goes with { Why = "neither pull nor push of the wire turns it there, and its friction is larger than its own torque" } : goes with { Why = goes.Stop is null ? goes.Why : "its own torque turns it out of the dead centre; the wire has no part in it" });
        }
    }

    internal static double Hottest(Surroundings at, HeatZone zone) => zone switch
    {
        HeatZone.Cabin => at.Cabin.Celsius,
        HeatZone.EngineBay => at.EngineBay.Celsius,
        _ => at.Elsewhere.Celsius,
    };

    private static HeatCase HeatOf(Aircraft aircraft, Run run)
    {
        if (aircraft.Environment is not { } at)
            return new() { Parts = [] };
        var parts = new List<PlacedPart>();
        var zone = run.LeverEnd?.Zone ?? HeatZone.Elsewhere;
        double atLever = Hottest(at, zone), hottest = Math.Max(atLever, at.Cabin.Celsius);
        var where = zone switch { HeatZone.Cabin => "the cabin", HeatZone.EngineBay => "the engine bay", _ => "its place" };
        var place = zone switch { HeatZone.Cabin => PartPlace.Cabin, HeatZone.EngineBay => PartPlace.EngineBay, _ => PartPlace.Elsewhere };
        void Known(string name, double limit, SourceRef source) => parts.Add(new(name, "", where, hottest, Typed, new(limit, source), false, place));
        if (run.Cable?.Core is { Kind: CoreKind.Solid, Material: CoreMaterial.MusicWire } && Published.Get("wire/hottest-a228") is { } wire)
            Known("music wire core", wire.Value, wire.Source);
        if (run.Installation?.CableHottest is { } cable)
            Known("cable", cable.Celsius, new("project", "the maker's figure, typed into the file", Evidence.CommonPractice));
        if (run.Installation?.Liner is { Length: > 0 } liner && Published.Table("heat/plastics").Rows.FirstOrDefault(r => r.Find("material")?.Text.Equals(liner, StringComparison.OrdinalIgnoreCase) == true) is { } row && row.Find("operating")?.Si is { } stands)
            Known($"{liner} liner", stands, row.Source);
        if (run.LeverEnd?.Swivel.HoldsBy.Contains(WireHold.Threadlocker) == true && Published.Get("heat/threadlocker") is { } locker)
            parts.Add(new("threadlocker at the swivel", "", where, atLever, Typed, new(locker.Value, locker.Source), false, place));
        if (run.Installation?.Joint?.HeldBy.Contains(JointLock.SelfLockingNut) == true && Published.Get("joint/fibre-nut-hottest") is { } nut)
            parts.Add(new("fibre or nylon lock nut", "", where, atLever, Typed, new(nut.Value, nut.Source), false, place));
        foreach (var part in run.Installation?.Parts ?? [])
        {
            var (name, degrees, from) = part.Place switch
            {
                PartPlace.Sunlit => ("a sunlit panel", Math.Max(at.Cabin.Celsius, Published.Get("heat/dashboard").Value), at.Cabin.Celsius >= Published.Get("heat/dashboard").Value ? Typed : Published.Get("heat/dashboard").Source),
                PartPlace.Cabin => ("the cabin", Math.Max(at.Cabin.Celsius, Published.Get("heat/cabin-air").Value), at.Cabin.Celsius >= Published.Get("heat/cabin-air").Value ? Typed : Published.Get("heat/cabin-air").Source),
                PartPlace.EngineBay => ("the engine bay", at.EngineBay.Celsius, Typed),
                _ => ("its place", at.Elsewhere.Celsius, Typed),
            };
            parts.Add(new(part.Name, part.Material, name, degrees, from, null, part.Clamped, part.Place));
        }

        return new() { Parts = parts.ToEquatableList() };
    }
}
