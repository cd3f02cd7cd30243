using Throwright.Engine.Clearance;
using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.HandForce;
using Throwright.Engine.Model;
using Throwright.Engine.Prove;
using Throwright.Engine.Throw;
using Throwright.Shapes;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>Takes one run through all stages. The only place where stages meet.</summary>
public static class RunCheck
{
    /// <summary>Every run of the aircraft, in the order of the file.</summary>
    /// <param name="known">Lies that may serve again, e.g. of another aircraft of the same type.</param>
    public static AircraftAnswer Check(Aircraft aircraft, LadderEffort effort, CockpitEffort? cockpit = null, KnownLies? known = null)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        known ??= new();
        var clearance = CockpitCheck.Solve(aircraft, null, cockpit);
        var threads = cockpit?.Threads ?? 1;
        var obstacles = new Lazy<RouteObstacles>(() => RouteObstacles.Of(aircraft, clearance, cockpit?.Meshes));
        var solved = Each(aircraft.Runs, threads, run => Rested(aircraft, Solve(aircraft, run, effort, known: known), effort, obstacles));
        var ends = clearance is null ? [] : solved.Select(s => EndOf(aircraft, s)).ToList();
        return new(aircraft, Each(solved, threads, s => Check(aircraft, s, effort, ends, clearance, cockpit, known, obstacles)).ToEquatableList()) { Cockpit = clearance };
    }

    /// <summary>Runs do not touch each other: the answers are the same for any number of threads.</summary>
    private static List<TTo> Each<TFrom, TTo>(IReadOnlyList<TFrom> from, int threads, Func<TFrom, TTo> make) => threads == 1
        ? [.. from.Select(make)]
        : [.. from.AsParallel().AsOrdered().WithDegreeOfParallelism(Math.Min(threads, 512)).Select(make)];

    /// <summary>One run, with findings, remedies and figures.</summary>
    public static RunAnswer Check(Aircraft aircraft, Run run, LadderEffort effort, CockpitEffort? cockpit = null) =>
        CheckOne(aircraft, run, effort, CockpitCheck.Solve(aircraft, run, cockpit), cockpit, new());

    /// <summary>One run, with a clearance that is worked out already: that of the same handles and bodies.</summary>
    /// <param name="cockpit">Null: nothing is said of clearance.</param>
    /// <param name="others">Arms and conduits of the other runs, worked out already; null: they are worked out here. One that answers null: arm and conduit of this run are not held against anything.</param>
    /// <param name="known">Lies that may serve again.</param>
    public static RunAnswer CheckWith(Aircraft aircraft, Run run, LadderEffort effort, CockpitAnswer? cockpit, Func<IEnumerable<DeviceEnd>?>? others = null, KnownLies? known = null)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(run);
        return CheckOne(aircraft, run, effort, cockpit, new() { Cures = false }, known ?? new(), others);
    }

    private static RunAnswer CheckOne(Aircraft aircraft, Run run, LadderEffort effort, CockpitAnswer? cockpit, CockpitEffort? cockpitEffort, KnownLies known, Func<IEnumerable<DeviceEnd>?>? others = null)
    {
        var obstacles = new Lazy<RouteObstacles>(() => RouteObstacles.Of(aircraft, cockpit, cockpitEffort?.Meshes));
        var solved = Rested(aircraft, Solve(aircraft, run, effort, known: known), effort, obstacles);
        // Without an arm or a conduit of its own there is nothing to hold against those of the others.
        var beside = cockpit is null || !DeviceEnd.IsDescribed(run) ? null : others is null ? DeviceEnds(aircraft, run, known, cockpitEffort?.Meshes) : others();
        return Check(aircraft, solved, effort, beside is null ? [] : [EndOf(aircraft, solved), .. beside], cockpit, cockpitEffort, known, obstacles);
    }

    /// <summary>Arms and conduits of all runs but one.</summary>
    public static IEnumerable<DeviceEnd> DeviceEnds(Aircraft aircraft, Run but, KnownLies? known = null, Func<MeshShape, Skin?>? meshes = null)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(but);
        return aircraft.Runs.Where(r => r.Id != but.Id && DeviceEnd.IsDescribed(r)).Select(r => DeviceEndOf(aircraft, r, known, meshes));
    }

    /// <summary>Arm and conduit of one run, its lie worked out for that alone.</summary>
    public static DeviceEnd DeviceEndOf(Aircraft aircraft, Run run, KnownLies? known = null, Func<MeshShape, Skin?>? meshes = null)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(run);
        var placement = LeverPlacement.Of(run.LeverEnd, []);
        var route = RouteInputs.Of(run, placement, null, [], known);
        return DeviceEndOf(aircraft, run, placement, route is null ? null : RouteInputs.Rested(route, run, RouteObstacles.Of(aircraft, null, meshes).Standing));
    }

    private static DeviceEnd EndOf(Aircraft aircraft, RunAnswer answer) => DeviceEndOf(aircraft, answer.Run, answer.Placement, answer.Route);

    private static DeviceEnd DeviceEndOf(Aircraft aircraft, Run run, LeverPlacement? placement, RunRoute? route)
    {
        var name = CockpitScene.NameOf(aircraft, run);
        return DeviceEnd.Of(run, name, placement, route, HandleMount.Of(run, name, []));
    }

    private static RunAnswer Check(Aircraft aircraft, RunAnswer solved, LadderEffort effort, List<DeviceEnd> ends, CockpitAnswer? cockpit, CockpitEffort? cockpitEffort, KnownLies known, Lazy<RouteObstacles> obstacles)
    {
        var run = solved.Run;
        if (solved.Route is { } rested)
            solved = solved with { Route = RouteInputs.Changed(rested, run, obstacles.Value) };

        // The operating check of an emergency control names what moves near the handle: clearance comes before proof.
        var answer = Proof.Of(aircraft, WithClearance(solved, cockpit));
        if (cockpit is not null && ends.FirstOrDefault(e => e.Run.Id == run.Id) is { } own)
            answer = answer with { Ends = EndClearance.Of(own, ends, cockpit, cockpitEffort ?? new()) };
        if (answer.Route is { } route)
        {
            answer = answer with { Route = route with { Order = RouteInputs.Order(route, run, answer.Sweep, answer.Ladder?.Setting.KnobOutAtPushStop, aircraft.Display, known) } };
        }

        var say = new FigureWriter(aircraft.Display);
        // One set of trials serves all findings of the run.
        var solve = new Lazy<Solve>(() => new(aircraft, answer, say));
        var mount = new Lazy<EquatableList<Remedy>>(() => MountRemedies.For(aircraft, run, say, (cockpitEffort ?? new()) with { Ends = () => ends.Count > 0 ? ends : DeviceEnds(aircraft, run, known, cockpitEffort?.Meshes) }));
        var findings = RunFindings.Of(aircraft, answer, say).Concat(Rigging.Findings(answer, say)).Concat(PointFindings.Of(aircraft, run, say)).Concat(Proof.Findings(aircraft, answer, say))
            .Select(f => f with { Remedies = f is { Rule: ClearanceRules.Pair, Verdict: Verdict.Fail } ? cockpitEffort?.Cures == false ? [] : mount.Value : Remedies.For(answer, f, solve, say) })
            .Select(RunFindings.Confirmed)
            .OrderBy(RuleBook.Place)
            .ToEquatableList();
        return answer with
        {
            Findings = findings,
            Figures = RunFigures.Of(aircraft, answer).Concat(ProofFigures.Of(answer)).ToEquatableList(),
            Sentence = SentenceOf(answer, findings, say),
        };
    }

    private static RunAnswer WithClearance(RunAnswer answer, CockpitAnswer? cockpit)
    {
        if (cockpit is null)
            return answer;
        var needs = new List<Need>(answer.Needs);
        HandleMount.Of(answer.Run, "", needs);
        return answer with { Clearance = cockpit.Of(answer.Run), Needs = needs.DistinctBy(n => n.Path).ToEquatableList() };
    }

    /// <summary>The stages only, without findings: what a remedy or a search runs many times.</summary>
    /// <param name="like">A run already worked out: where the lever end is the same, its sweep and moment arms serve again.</param>
    internal static RunAnswer Solve(Aircraft aircraft, Run run, LadderEffort effort, RunAnswer? like = null, KnownLies? known = null) => Solve(aircraft, run, effort, like, SweepSolver.Solve, known);

    /// <summary>The stages with the conduit as it rests against what stands in its way.</summary>
    internal static RunAnswer SolveResting(Aircraft aircraft, Run run, LadderEffort effort, Func<MeshShape, Skin?>? meshes)
    {
        var solved = Solve(aircraft, run, effort);
        return Rested(aircraft, solved, effort, new(() => RouteObstacles.Of(aircraft, null, meshes).Standing));
    }

    /// <summary>Pressed against something the conduit bends otherwise: force, lost motion and cushions are those of where it rests.</summary>
    private static RunAnswer Rested(Aircraft aircraft, RunAnswer solved, LadderEffort effort, Lazy<RouteObstacles> obstacles)
    {
        if (solved.Route is not { Lie: not null } free)
            return solved;
        solved = solved with { Route = RouteInputs.Rested(free, solved.Run, obstacles.Value) };
        return solved.Route.Resting is null ? solved : Solve(aircraft, solved.Run, effort, solved);
    }

    /// <summary>The ladder alone, the same to the last bit: it needs the two stops and nothing between them.</summary>
    internal static TravelLadder? Ladder(Aircraft aircraft, Run run, LadderEffort effort, RunAnswer? like = null) => Solve(aircraft, run, effort, like, of => SweepSolver.Scan(of, steps: 2), null).Ladder;

    private static RunAnswer Solve(Aircraft aircraft, Run run, LadderEffort effort, RunAnswer? like, Func<SweepCase, Sweep?> sweepOf, KnownLies? known)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(effort);
        var needs = new List<Need>();
        var answer = new RunAnswer
        {
            Run = run,
            Words = RunWords.Of(run),
            Placement = LeverPlacement.Of(run.LeverEnd, needs),
            Needs = [],
            Findings = [],
            Figures = [],
            Sentence = "",
        };
        var same = like is not null && answer.Placement is not null && answer.Placement == like.Placement ? like : null;
        if (same is not null)
            answer = answer with { Sweep = same.Sweep, Stops = same.Stops };
        else if (answer.Placement is { } placement && sweepOf(placement.Case) is { } found)
            answer = answer with { Sweep = found, Stops = found.IsMonotone ? new(placement.DevicePlaceAt(found.AtPush), placement.DevicePlaceAt(found.AtPull)) : null };
        answer = answer with { Route = RouteInputs.Of(run, answer.Placement, like?.Route, needs, known) };
        // A sweep that reaches a dead centre, be it only within its limits, has no ladder and no force: nothing after it
        // would mean anything, and near it no bound exists.
        if (answer is { Sweep: { } sweep, Stops: { } stops } && sweep.IsDriven(stops.LeastArm))
        {
            var chain = new ChainInputs(aircraft, run with { Cable = answer.Cable }, answer.Placement!, sweep, stops, same?.ForceCase, needs, answer.Route?.Lie is not null);
            answer = answer with { ForceCase = chain.ForceCase() };
            if (answer.ForceCase is { } forceCase)
                answer = answer with { Forces = HandForceSolver.Solve(forceCase) };
            answer = answer with { LadderCase = chain.LadderCase(answer.Forces) };
            if (answer.LadderCase is { } ladderCase)
                answer = answer with { Ladder = LadderSolver.Solve(ladderCase, effort) };
            answer = answer with { Curve = CurveOf(answer) };
        }
        else if (run.CockpitEnd?.Stroke is null)
        {
            needs.Add(Need.Stroke);
        }

        return answer with { Needs = needs.DistinctBy(n => n.Path).ToEquatableList() };
    }

    /// <summary>Knob place at each arm angle, both ways, with the hand force there.</summary>
    private static TravelCurve? CurveOf(RunAnswer answer)
    {
        if (answer is not { Sweep: { } sweep, Ladder: { } ladder, LadderCase: { } of })
            return null;
        var wire = ladder.Setting.WireLength;
        double pullGive = of[LadderInput.PullGive].Nominal, pushGive = of[LadderInput.PushGive].Nominal, drag = of.DeviceDrag;
        // With forces there may be more places: corners of the torque, tops of detents.
        var places = answer.ForceCase?.Places.Select(p => (p.Angle, Length: p.FreeLength)) ?? sweep.Places.Select(p => (p.Angle, p.Length));
        return new(places
            .Select((place, i) =>
            {
                var force = answer.Forces?.Places[i];
                double ePull = force is null ? 0 : pullGive * Math.Max(0, force.WirePull.Nominal + drag);
                double ePush = force is null ? 0 : pushGive * Math.Max(0, force.WirePush.Nominal + drag);
                ePull += of[LadderInput.OwnPull].Nominal;
                ePush += of[LadderInput.OwnPush].Nominal + of[LadderInput.PushSlack].Nominal;
                return new TravelPoint(
                    place.Angle,
                    wire - place.Length + ladder.LostMotion + ePull,
                    wire - place.Length - ePush,
                    force is null ? ForceBand.Unknown : Known(force.KnobPull),
                    force is null ? ForceBand.Unknown : Known(force.KnobPush));
            })
            .ToEquatableList());
    }

    /// <summary>A jammed core has no force that could be drawn.</summary>
    private static ForceBand Known(Spread3 force) =>
        double.IsFinite(force.Most) ? new(force.Nominal, force.Least, force.Most) : ForceBand.Unknown;

    private static string SentenceOf(RunAnswer answer, EquatableList<Finding> findings, FigureWriter say)
    {
        // The first of the worst. What happens when a part fails stands as it is, whatever is adjusted: what can be done, and an
        // input that is missing, are told before it; a figure that waits for an input before what the rules of installation ask.
        var worst = findings.Count > 0 ? findings.Max(f => f.Verdict) : Verdict.Clear;
        Finding? First(Func<Finding, bool> of) => findings.FirstOrDefault(of);
        var told = worst == Verdict.Caution
            ? First(f => f.Verdict == Verdict.Caution && !ProveRules.Standing.Contains(f.Rule)) ?? First(IsAFigureShort) ?? First(f => f.Verdict == Verdict.NeedsInput)
            : worst == Verdict.NeedsInput ? First(IsAFigureShort) : null;
        if (worst != Verdict.Clear)
            return (told ?? findings.First(f => f.Verdict == worst)).Sentence;
        if (answer.Ladder is not { } ladder)
            return "Nothing to check yet.";
        var cushions = $"cushion IN {say.LengthNumber(ladder.KnobIn.Nominal, Rounding.Down)}, OUT {say.Length(ladder.KnobOut.Nominal, Rounding.Down)}";
        return answer.Forces is { } forces
            ? $"{cushions}, hand {say.Force(Math.Max(forces.MostPull.Nominal, forces.MostPush.Nominal))}"
            : cushions;
    }

    private static bool IsAFigureShort(Finding finding) => finding is { Verdict: Verdict.NeedsInput, Rule: not ProveRules.Unsaid };
}
