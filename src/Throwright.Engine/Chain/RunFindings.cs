using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.HandForce;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Engine.Throw;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>Hands the answers of one run to the rules of each stage, with the limits that apply to it.</summary>
internal static class RunFindings
{
    public const string NeedsInput = "input/";
    public const string Setting = "cushion/setting";
    public const string Valve = "cushion/valve";
    public const string Friction = "cable/low-friction";
    public const string BendRadius = "cable/bend-radius";
    public const string CoreSet = "cable/core-set";

    public static IEnumerable<Finding> Of(Aircraft aircraft, RunAnswer answer, FigureWriter say)
    {
        foreach (var finding in OfThrow(aircraft, answer, say))
            yield return finding;
        if (answer.Ladder is { } ladder)
        {
            foreach (var finding in LadderRules.Find(ladder, LadderLimitsOf(aircraft, answer), say))
                yield return finding;
            if (ladder.Setting.Proposed)
                yield return OfSetting(ladder, say);
            if (answer.Run.LeverEnd?.Valve is { } valve)
                yield return OfValve(valve, answer, ladder, say);
        }

        if (answer.Forces is { } forces)
        {
            foreach (var finding in HandForceRules.Find(forces, HandForceLimitsOf(aircraft, answer), say))
                yield return finding;
        }

        foreach (var finding in RouteFindings.Of(aircraft, answer, say).Concat(OfBends(answer, say)).Concat(OfFriction(answer)))
            yield return finding;
        foreach (var finding in ClearanceFindings.Of(answer, say).Concat(EndClearance.Findings(answer.Ends, say)).Concat(MountFindings.Of(aircraft, answer, say)))
            yield return finding;
        foreach (var finding in MadeFindings.Of(aircraft, answer, say))
            yield return finding;
        foreach (var need in NeedsOf(aircraft, answer))
        {
            yield return new()
            {
                Rule = NeedsInput + need.Path,
                Verdict = Verdict.NeedsInput,
                Sentence = $"{char.ToUpperInvariant(need.Name[0])}{need.Name[1..]}: opens {need.Opens}.",
                Why = $"How to get it: {need.How}. It goes to {need.Path}.",
            };
        }
    }

    /// <summary>A figure from memory is never what makes a finding clear: it becomes a caution that asks to confirm it.</summary>
    public static Finding Confirmed(Finding finding)
    {
        if (finding.Verdict != Verdict.Clear || finding.Limit is null || finding.Sources.All(s => s.Evidence != Evidence.Memory))
            return finding;
        var from = finding.Sources.First(s => s.Evidence == Evidence.Memory);
        return finding with
        {
            Verdict = Verdict.Caution,
            Why = $"{finding.Why} The limit rests on a figure from memory ({from.Place}): confirm it before relying on it.".TrimStart(),
        };
    }

    /// <summary>Limits of the cushions for this run, from the file or from the published defaults.</summary>
    private static LadderLimits LadderLimitsOf(Aircraft aircraft, RunAnswer answer)
    {
        static Limit Own(Length value) => new(value.Metres, new("project", "your own figure, typed into the file", Evidence.CommonPractice));
        static Limit Default(string id) => new(Published.Get(id).Value, Published.Get(id).Source);
        var run = answer.Run;
        return new(
            run.CushionWanted is { } wanted ? Own(wanted) : Default("cushion/least"),
            run.CushionMost is { } most ? Own(most) : Default("cushion/most"),
            Published.Rule(run.Function is ControlFunction.CarburettorHeat ? "23.1093(a)" : "23.1141(g)(1)").Source,
            answer.Words.Device,
            answer.Words.PushEnd,
            answer.Words.PullEnd,
            FromMemory(aircraft, answer).ToEquatableList());
    }

    /// <summary>Figures from memory that went into the ladder: they keep its findings from being clear.</summary>
    private static IEnumerable<SourceRef> FromMemory(Aircraft aircraft, RunAnswer answer)
    {
        if (answer is { Forces: not null, Run.Cable.Core: { Kind: not CoreKind.Solid } core })
            yield return Wire.StrandModulus(core.Kind).Source;
        if (answer.LadderCase?.Heat is not null && answer.Run.LeverEnd?.Zone != HeatZone.EngineBay && aircraft.Environment is { } at)
            yield return Expansion.Of(at.Airframe).Source;
    }

    private static HandForceLimits HandForceLimitsOf(Aircraft aircraft, RunAnswer answer)
    {
        var run = answer.Run;
        static Limit Of(string id) => new(Published.Get(id).Value, Published.Get(id).Source);
        var pinched = run.CockpitEnd?.Knob is KnobShape.Round or null;
        var own = run.HandForceMost is { } f ? new Limit(f.Newtons, new("project", "your own figure, typed into the file", Evidence.CommonPractice)) : null;
        var comfort = own ?? aircraft.Yardstick switch
        {
            Yardstick.Mil1472 => Of(pinched ? "hand/finger-pull" : "hand/t-handle-pull"),
            Yardstick.Fac23 => Of("hand/prolonged"),
            _ => null,
        };
        var words = aircraft.Yardstick switch
        {
            Yardstick.Mil1472 => "Yardstick: MIL-STD-1472E, a guide. No US rule was found that gives a push-pull design force; 14 CFR 25.405 leaves it to the applicant.",
            Yardstick.Fac23 => "Yardstick: 14 CFR 23.143(c) before Amendment 64, written for flight controls; for comparison. No US rule was found that gives a push-pull design force.",
            _ => "Yardstick: your own figure. No US rule was found that gives a push-pull design force.",
        };
        return new(
            comfort,
            pinched ? Of("hand/finger-pinch") : Of("hand/one-hand-brief"),
            pinched ? "that finger and thumb give for a moment (a small man)" : "that one hand gives for a short time",
            words,
            Of("buckling/margin"),
            Of("hand/lock-margin"),
            answer.Forces is not null && run.LeverEnd?.Load is { Measured: false } ? Of("hand/estimated-load-factor") : null,
            Published.Rule(run.Function is ControlFunction.FuelShutoff ? "23.995(d)" : "23.1141(c)").Source,
            run.Cable?.PullLimit,
            run.Cable?.PushLimit,
            run.Cable?.Source ?? "",
            run.Emergency,
            run.Cable?.Core?.Kind);
    }

    private static IEnumerable<Finding> OfThrow(Aircraft aircraft, RunAnswer answer, FigureWriter say)
    {
        if (answer.Placement is not { } placement)
            return [];
        static Limit Of(string id) => new(Published.Get(id).Value, Published.Get(id).Source);
        var limits = new SweepLimits(Of("throw/transmission-angle-least"), Of("throw/plain-fairlead-most"), Of("throw/swivel-margin"), aircraft.Yardstick == Yardstick.Fac23);
        if (answer.Sweep is not { } sweep)
            return SweepRules.Find(null, 0, 0, default, null, null, null, null, limits, say);
        var leastArm = answer.Stops?.LeastArm ?? 0;
        var lever = answer.Run.LeverEnd!;
        var strength = WireStrength(answer.Run);
        return SweepRules.Find(
            sweep, leastArm, sweep.Case.Radius + placement.Radius.Plus, lever.TipSwivels, TipBending(answer), strength?.Elastic, strength?.Fatigue, strength?.Source, limits, say);
    }

    /// <summary>Bending of the wire at a fixed tip where it is worst: a short wire is bent harder by less swing.</summary>
    internal static WireBending? TipBending(RunAnswer answer)
    {
        if (answer is not { Sweep: { } sweep, Run: { LeverEnd.TipSwivels.Radians: 0, Cable.Core: { Kind: CoreKind.Solid } core } })
            return null;
        double push = answer.Forces?.BareWireCompression ?? 0, pull = answer.Forces?.CoreTension ?? 0;
        var modulus = Wire.Modulus(core.Material, core.Diameter.Nominal).Value;
        WireBending? At(double angle)
        {
            double length = (sweep.Case.SwivelAt(angle) - sweep.Case.Mouth).Size, swing = sweep.Case.SwingAt(angle);
            var bare = length * Math.Cos(swing);
            return bare <= 0 ? null : WireBending.At(core.Diameter.Nominal.Metres, modulus, bare, length * Math.Sin(swing), pull, push);
        }

        return sweep.Places.Select(p => p.Angle).Append(sweep.MostSwingAngle).Select(At).OfType<WireBending>().MaxBy(b => b.Stress);
    }

    internal static (double Elastic, Limit Fatigue, SourceRef Source)? WireStrength(Run run)
    {
        if (run.Cable?.Core is not { Kind: CoreKind.Solid } core || Wire.TensileStrength(core.Material, core.Diameter.Nominal).Found is not { } tensile)
            return null;
        var fatigue = Wire.FatigueShare();
        return (Wire.ElasticShare(core.Material).Low * tensile.Value, new(fatigue.Low * tensile.Value, fatigue.Source), tensile.Source);
    }

    private static Finding OfSetting(TravelLadder ladder, FigureWriter say) => new()
    {
        Rule = Setting,
        Verdict = Verdict.NeedsInput,
        Sentence = $"The file does not say where the swivel sits on the wire; the balanced place is proposed: knob {say.Length(ladder.Setting.KnobOutAtPushStop)} out with the device on its push stop.",
        Figure = "swivel-at",
        Sources = [Published.Get("cushion/rigging-tolerance").Source],
        Why = "Slide the swivel until both knob gaps are equal, then write the reading into leverEnd.swivel.rigged.",
    };

    /// <summary>A valve that can be stopped short: the closed side first, where it leaks.</summary>
    private static Finding OfValve(QuarterTurnValve valve, RunAnswer answer, TravelLadder ladder, FigureWriter say)
    {
        var sweep = answer.Sweep!;
        var openIsPush = valve.Open == DeviceStop.Push;
        double Short(bool push)
        {
            // What the knob lacks at its worst, as arm angle at that stop.
            var lacking = push ? Math.Max(0, -ladder.KnobIn.Least) : Math.Max(0, Math.Max(-ladder.KnobOut.Least, -ladder.TipAtPull.Least));
            if (lacking == 0)
                return 0;
            var stop = push ? sweep.AtPush : sweep.AtPull;
            return Math.Abs(sweep.AngleAt(stop.Length + (push ? -lacking : lacking)) - stop.Angle);
        }

        double shut = Short(!openIsPush), open = Short(openIsPush);
        var dead = ValveOpening.ClosedDeadBand(valve.BoreRatio);
        var leak = ValveOpening.Share(valve.BoreRatio, (Math.PI / 2) - shut);
        var plug = Published.Table("valve/plug-cock-loss");
        var table = plug.Rows.Select(r => (r.Si("angle"), r.Si("loss"))).ToList();
        var openLoss = Published.Get("valve/ball-open-loss").Value;
        var flow = ValveOpening.Flow(valve.LineLoss, openLoss, ValveOpening.Loss(table, openLoss, open));
        static string PerCent(double share, Rounding rounding) => FigureText.Plain(100 * share, 1, rounding) + " %";
        return new()
        {
            Rule = Valve,
            Verdict = leak > 0 ? Verdict.Fail : shut > 0 || open > 0 ? Verdict.Caution : Verdict.Clear,
            Sentence = leak > 0
                ? $"In the worst case the valve stops {say.Angle(shut, Rounding.Up)} short of shut and stays {PerCent(leak, Rounding.Up)} open: it leaks."
                : shut > 0
                    ? $"In the worst case the valve stops {say.Angle(shut, Rounding.Up)} short of shut; it is tight for the last {say.Angle(dead, Rounding.Down)}."
                    : open > 0
                        ? $"The valve shuts. In the worst case it stops {say.Angle(open, Rounding.Up)} short of open and passes {PerCent(flow, Rounding.Down)} of its flow."
                        : $"The valve reaches both its stops; it is tight for the last {say.Angle(dead, Rounding.Down)} before shut.",
            Figure = "valve-shut",
            Sources = [new("project", "docs/theory/cushion.md", Evidence.Derived), plug.Source],
            Why = "A quarter-turn valve forgives little at the shut end and much at the open one: guard the shut stop first.",
        };
    }

    private static IEnumerable<Finding> OfBends(RunAnswer answer, FigureWriter say)
    {
        if (answer.Cable is not { Bends.Count: > 0 } cable)
            yield break;
        var tightest = answer.Route?.CountedSpread is { LeastRadius: > 0 } lays ? lays.LeastRadius : cable.Bends.Min(b => b.Radius.Least);
        // A lie has a rule of its own for its radius.
        if (cable.Conduit?.MinRadius is { } least && answer.Route?.Lie is null)
        {
            yield return new()
            {
                Rule = BendRadius,
                Verdict = tightest < least.Metres ? Verdict.Fail : Verdict.Clear,
                Sentence = $"The tightest bend has a radius of {say.Length(tightest, Rounding.Down)}, the conduit's least is {say.Size(least.Metres)}.",
                Figure = "bend-radius",
                Limit = new(least.Metres, QuantityKind.Length, true),
                Sources = [new("project", "the maker's figure, typed into the file", Evidence.CommonPractice)],
                Why = cable.Source.Length > 0 ? $"Cable figures: {cable.Source}." : "The file does not say where the cable's figures come from.",
            };
        }

        if (cable.Core is { Kind: CoreKind.Solid } core && WireStrength(answer.Run) is { } strength)
        {
            var modulus = Wire.Modulus(core.Material, core.Diameter.Nominal);
            var stress = modulus.Value * core.Diameter.Most / (2 * tightest);
            yield return new()
            {
                Rule = CoreSet,
                Verdict = stress > strength.Elastic ? Verdict.Caution : Verdict.Clear,
                Sentence = stress > strength.Elastic
                    ? $"The core takes a set in the tightest bend: {say.Text(QuantityKind.Stress, stress, Rounding.Up)}, it springs back up to {say.Text(QuantityKind.Stress, strength.Elastic)}."
                    : $"The core is bent to {say.Text(QuantityKind.Stress, stress, Rounding.Up)} in the tightest bend and springs back up to {say.Text(QuantityKind.Stress, strength.Elastic)}.",
                Figure = "core-bend-stress",
                Limit = new(strength.Elastic, QuantityKind.Stress, false),
                Sources = [strength.Source, Wire.ElasticShare(core.Material).Source],
            };
        }
    }

    /// <summary>A friction below every published pair of materials is a wish, not a measurement.</summary>
    private static IEnumerable<Finding> OfFriction(RunAnswer answer)
    {
        var lowest = Published.Get("friction/ptfe-liner-new");
        if (answer.Run.Cable?.Friction is not { } mu || mu.Most >= lowest.Low)
            yield break;
        yield return new()
        {
            Rule = Friction,
            Verdict = Verdict.Caution,
            Sentence = $"The friction of the core, at most {FigureText.Plain(mu.Most, 2)}, is below that of a new PTFE liner ({FigureText.Plain(lowest.Low, 2)} to {FigureText.Plain(lowest.High, 2)}).",
            Sources = [lowest.Source],
            Why = "Forces come out too low. Take a band for this kind of conduit, or measure: pull and hold forces of the finished run give it.",
        };
    }

    /// <summary>What the stages lacked, and the maker's limits without which a force has no verdict.</summary>
    private static IEnumerable<Need> NeedsOf(Aircraft aircraft, RunAnswer answer)
    {
        var needs = answer.Needs.ToList();
        needs.AddRange(MadeFindings.Needs(answer.Run));
        if (answer.Forces is { } forces)
        {
            if (answer.Run.Cable?.PullLimit is null)
                needs.Add(Need.PullLimit);
            if (answer.Run.Cable?.PushLimit is null && forces.CoreCompression > 0)
                needs.Add(Need.PushLimit);
            if (aircraft.Yardstick == Yardstick.User && answer.Run.HandForceMost is null)
                needs.Add(Need.UserForce);
        }

        return needs;
    }
}
