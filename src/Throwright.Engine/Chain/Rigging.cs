using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.HandForce;
using Throwright.Engine.Model;
using Throwright.Engine.Order;
using Throwright.Engine.Rig;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Numerics;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>Rigging of one run: card, limits, and the fit of what was read.</summary>
public static class Rigging
{
    // Standard uncertainty of tape, protractor and spring scale: half width over root three.
    private static readonly double Tape = Published.Get("rig/tape").Value / Math.Sqrt(3), Protractor = Published.Get("rig/protractor").Value / Math.Sqrt(3);

    /// <summary>The case of one set of readings; null while the run has no ladder.</summary>
    public static RigCase? CaseOf(RunAnswer answer, AsBuilt read)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(read);
        if (answer is not { Ladder: { } ladder, LadderCase: { } of, Sweep: { } sweep, Placement: { } placement })
            return null;
        var middle = 0.5 * (sweep.Case.From + sweep.Case.To);
        var away = sweep.Case.Anchor - sweep.Case.SwivelAt(middle);
        away = (1 / away.Size) * away;
        var forces = answer is { Forces: not null, ForceCase: { } f } ? f : null;
        var mid = forces is null ? 0 : Enumerable.Range(0, forces.Places.Count).MinBy(i => Math.Abs(forces.Places[i].Angle - middle));
        var wire = ladder.Setting.WireLength;
        var nominal = of.Values.Select(v => new Real(v.Nominal)).ToArray();
        var lost = LostMotion(of);
        double Half(LadderInput input) => 0.5 * (of[input].Minus + of[input].Plus);
        double Before(double half, double least) => Math.Max(half, least) / Math.Sqrt(3);
        var unknowns = new List<UnknownOf>
        {
            new(RigUnknown.Swivel, "the swivel's place on the wire", QuantityKind.Length, 0.5 * ladder.Stroke),
            new(RigUnknown.Anchor, "the conduit's end", QuantityKind.Length, Before(Half(LadderInput.AnchorX) + Half(LadderInput.AnchorY) + Half(LadderInput.AnchorZ), 1e-3)),
            new(RigUnknown.Radius, "the arm's radius", QuantityKind.Length, Before(Half(LadderInput.Radius), 2e-4)),
            // Not worked out: nearly nothing is known of it before the reading.
            new(RigUnknown.LostMotion, "the lost motion", QuantityKind.Length, Before(0.5 * (lost.Most - lost.Least), of.NotCounted.Contains(Cushion.LadderCase.NoLostMotion) ? LostMotionUnknown : 2e-4)),
            new(RigUnknown.Sweep, "the sweep of the arm", QuantityKind.Angle, Before(Half(LadderInput.PushAngle) + Half(LadderInput.PullAngle), 0.005)),
        };
        if (forces is not null)
        {
            unknowns.Add(new(RigUnknown.Friction, "the friction in the conduit", QuantityKind.Ratio, Before(0.5 * (forces.Friction.Most - forces.Friction.Least), 0.01)));
            unknowns.Add(new(RigUnknown.Load, "the device's torque", QuantityKind.Ratio, Before(Half(LadderInput.TorqueFactor), 0.05)));
        }

        var asWire = of with { SettingKind = SettingKind.WireLength };
        IReadOnlyList<double> Predict(IReadOnlyList<double> x)
        {
            double At(RigUnknown unknown) => unknowns.FindIndex(u => u.Unknown == unknown) is >= 0 and var i ? x[i] : 0;
            var values = (Real[])nominal.Clone();
            var push = of[LadderInput.PushAngle].Nominal > of[LadderInput.PullAngle].Nominal ? 1 : -1;
            values[(int)LadderInput.Setting] = new(wire + At(RigUnknown.Swivel));
            values[(int)LadderInput.Radius] = new(nominal[(int)LadderInput.Radius].Value + At(RigUnknown.Radius));
            values[(int)LadderInput.PushAngle] = new(nominal[(int)LadderInput.PushAngle].Value + (0.5 * push * At(RigUnknown.Sweep)));
            values[(int)LadderInput.PullAngle] = new(nominal[(int)LadderInput.PullAngle].Value - (0.5 * push * At(RigUnknown.Sweep)));
            var places = LadderFormula.Evaluate<Real>(asWire with { Anchor = of.Anchor + (At(RigUnknown.Anchor) * away) }, values, LadderHeat.At.Rigging);
            var back = places.LostMotion.Value + At(RigUnknown.LostMotion);
            var (pull, pushed) = Hand(forces, mid, At(RigUnknown.Friction), At(RigUnknown.Load));
            return
            [
                wire + At(RigUnknown.Swivel) - places.LengthPush.Value,
                wire + At(RigUnknown.Swivel) - places.LengthPull.Value + back,
                places.TipAtPull.Value,
                back,
                sweep.Case.To - sweep.Case.From + At(RigUnknown.Sweep),
                pull,
                pushed,
            ];
        }

        // Read on a colder or warmer day than the description's: the knob stood elsewhere by that much.
        Interval Warmed(double free) => of.Heat is { } heat && read.Temperature is { } then
            ? heat.Moves(of[LadderInput.ConduitLength].Most, free, then.Celsius - heat.Rigged)
            : Interval.Zero;
        double Scale(Force? f) => Math.Max(Published.Get("rig/scale").Value, 0.05 * (f?.Newtons ?? 0)) / Math.Sqrt(3);
        return new()
        {
            Readings =
            [
                new(RigReading.KnobAtPush, "the knob's place at the push stop", QuantityKind.Length, Tape, read.KnobAtPush?.Metres),
                new(RigReading.KnobAtPull, "the knob's place at the pull stop", QuantityKind.Length, Tape, read.KnobAtPull?.Metres),
                new(RigReading.TipGap, "the gap at the tip", QuantityKind.Length, Tape, read.TipGap?.Metres),
                new(RigReading.LostMotion, "the lost motion", QuantityKind.Length, Tape, read.LostMotion?.Metres),
                new(RigReading.Sweep, "the sweep of the arm", QuantityKind.Angle, Protractor, read.Sweep?.Radians),
                new(RigReading.Pull, "the pull", QuantityKind.Force, Scale(read.Pull), forces is null ? null : read.Pull?.Newtons),
                new(RigReading.Push, "the push", QuantityKind.Force, Scale(read.Push), forces is null ? null : read.Push?.Newtons),
            ],
            Unknowns = unknowns.ToEquatableList(),
            Predict = Predict,
            Stroke = ladder.StrokeLeast,
            TakenAtPush = ladder.TakenAtPush + Warmed(sweep.AtPush.Length).High,
            TakenAtPull = ladder.TakenAtPull - Warmed(sweep.AtPull.Length).Low,
            Wanted = ladder.Wanted,
            Most = answer.Run.CushionMost?.Metres ?? Published.Get("cushion/most").Value,
        };
    }

    /// <summary>Findings of the newest readings in the file.</summary>
    internal static IEnumerable<Finding> Findings(RunAnswer answer, FigureWriter say) =>
        answer.Run.AsBuilt.MaxBy(a => a.Date, StringComparer.Ordinal) is { } newest && CaseOf(answer, newest) is { } of
            ? RigRules.Find(of, RigSolver.Solve(of), newest.Date, say)
            : [];

    /// <summary>Pull and push at mid travel with friction and load off by so much.</summary>
    private static (double Pull, double Push) Hand(HandForceCase? of, int mid, double friction, double load)
    {
        if (of is null)
            return (0, 0);
        if (friction != 0 || load != 0)
        {
            var share = 1 + load;
            of = of with
            {
                Friction = Spread3.Exact(Math.Max(0, of.Friction.Nominal + friction)),
                Load = of.Load with
                {
                    Torque = of.Load.Torque is { } t ? t.At(t.Nominal.NewtonMetres * share) : null,
                    TorqueTable = of.Load.TorqueTable.Select(r => r with { Torque = r.Torque.At(r.Torque.Nominal.NewtonMetres * share) }).ToEquatableList(),
                },
            };
        }

        var place = HandForceSolver.Solve(of).Places[mid];
        return (place.KnobPull.Nominal, place.KnobPush.Nominal);
    }

    /// <summary>Limits as a rule or tape reads them, rounded to the inside: "9/64 to 37/64 in (0.136 to 0.590)".</summary>
    private static string RangeWords(Display display, FigureWriter say, double least, double most)
    {
        var plain = $"{say.Length(least, Rounding.Up)} to {say.Length(most, Rounding.Down)}";
        if (display.Length != LengthUnit.Inch)
            return plain;
        var part = Length.MetresPerInch / display.Fraction;
        double low = Math.Ceiling((least / part) - 1e-6) * part, high = Math.Floor((most / part) + 1e-6) * part;
        return low >= high || FigureText.FractionOfInch(new(low), display.Fraction, 2e-6) is not { } a || FigureText.FractionOfInch(new(high), display.Fraction, 2e-6) is not { } b
            ? plain
            : $"{a.Replace(" in", "", StringComparison.Ordinal)} to {b} ({say.LengthNumber(least, Rounding.Up)} to {say.LengthNumber(most, Rounding.Down)})";
    }

    // m; more than any cable in order has.
    private const double LostMotionUnknown = 6e-3;

    /// <summary>Lost motion over all tolerances: every term rises with its inputs.</summary>
    private static (double Least, double Most) LostMotion(LadderCase of)
    {
        LadderValue clearance = of[LadderInput.Clearance], bends = of[LadderInput.BendTotal], pin = of[LadderInput.PinPlay], knob = of[LadderInput.KnobPlay];
        return ((clearance.Least * bends.Least) + pin.Least + knob.Least, (clearance.Most * bends.Most) + pin.Most + knob.Most);
    }

    /// <summary>
    /// What the card sets: the place of the swivel in the file, or, where that does not keep the wanted cushions, the place that
    /// shares them out equally.
    /// </summary>
    public static RunAnswer ToRig(Aircraft aircraft, RunAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(answer);
        if (answer is not { Ladder: { } ladder, Run.LeverEnd: { } end } || Math.Min(ladder.KnobIn.Least, ladder.KnobOut.Least) >= ladder.Wanted)
            return answer;
        var balanced = answer.Run with { LeverEnd = end with { Swivel = end.Swivel with { At = null, Rigged = null } } };
        var solved = RunCheck.Solve(aircraft, balanced, new(ladder.Samples, ladder.Seed), answer);
        return solved.Ladder is { } then && Math.Min(then.KnobIn.Least, then.KnobOut.Least) > Math.Min(ladder.KnobIn.Least, ladder.KnobOut.Least)
            ? solved with { Findings = answer.Findings.Where(f => f.Rule is not (LadderRules.KnobIn or LadderRules.KnobOut or LadderRules.Most)).ToEquatableList(), Figures = answer.Figures, Proof = answer.Proof, Heat = answer.Heat, Sentence = answer.Sentence }
            : answer;
    }

    /// <summary>The rigging card; without a ladder only what can be said.</summary>
    public static RigCard CardOf(Aircraft aircraft, RunAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(answer);
        var say = new FigureWriter(aircraft.Display);
        var run = answer.Run;
        var words = answer.Words;
        var steps = new List<RigStep>
        {
            new($"Engine off, switches off, battery off. Wire off the arm: move {words.Device} by hand, stop to stop.", "free, no rub, both stops felt"),
            new("Wire through the swivel, set screw finger tight. Anchor loose: work the knob ten strokes so that the conduit rolls to its rest. Then tighten the anchor.", "conduit does not turn or creep"),
        };
        var notes = new List<string>();
        if (answer.Ladder is { } ladder)
        {
            if (ladder.Setting.Proposed)
                notes.Add("This card sets the swivel for equal cushions: the file gives no place for it, or one that does not keep them. Write the readings into the file afterwards.");
            string Range(double a, double b) => RangeWords(aircraft.Display, say, a, b);
            if (ladder.ToRig is { } at)
            {
                steps.Add(new($"Push lightly until {words.Device} is {words.PushEnd} against its stop. Knob from its IN stop:", Range(at.PushLeast, at.PushMost), "knobAtPush", at.PushLeast, at.PushMost, Math.Clamp(ladder.Setting.KnobOutAtPushStop, at.PushLeast, at.PushMost)));
                steps.Add(new($"Pull lightly until {words.Device} is {words.PullEnd} against its stop. Knob from its IN stop:", Range(at.PullLeast, at.PullMost), "knobAtPull", at.PullLeast, at.PullMost, Math.Clamp(ladder.Setting.KnobOutAtPullStop, at.PullLeast, at.PullMost)));
                if (ladder.TakenAtPush + ladder.TakenAtPull > 5e-5)
                    notes.Add($"Limits of the two knob places, the same on the gauge: {say.Size(ladder.Wanted)} of cushion wanted, and {say.Length(ladder.TakenAtPush, Rounding.Up)} (push) and {say.Length(ladder.TakenAtPull, Rounding.Up)} (pull) that a working hand's stretch and heat take from it at most; the stroke is taken at its shortest.");
            }
            else
            {
                steps.Add(new($"Push lightly until {words.Device} is {words.PushEnd} against its stop. Knob from its IN stop:", "no place keeps both cushions: see the findings first", "knobAtPush"));
                steps.Add(new($"Pull lightly until {words.Device} is {words.PullEnd} against its stop. Knob from its IN stop:", "no place keeps both cushions: see the findings first", "knobAtPull"));
            }

            // A drill shank is no second limit: it is the least of the reading before, by feel.
            if (ladder.ToRig is { } gauge)
                steps.Add(new($"By feel: a gauge of {say.Length(gauge.PushLeast, Rounding.Up)} passes between knob and IN stop at step 3; at step 4 the knob still moves out by {say.Length(ladder.StrokeLeast - gauge.PullMost, Rounding.Up)} or more.", "passes both times"));
            steps.Add(new($"Gap from swivel to conduit tip, {words.Device} {words.PullEnd}:", $"expect {say.Length(ladder.TipAtPull.Nominal)}, least {say.Size(ladder.Wanted)}", "tipGap", ladder.Wanted, null, ladder.TipAtPull.Nominal));
            var (lostLeast, lostMost) = LostMotion(answer.LadderCase!);
            const string lose = "Mid travel: move the knob both ways until the device follows. Lost motion:";
            steps.Add(ladder.NotCounted.Contains(Cushion.LadderCase.NoLostMotion)
                ? new(lose, "write it down: the file lets no limit be worked out", "lostMotion")
                : new(lose, Range(lostLeast, lostMost), "lostMotion", lostLeast, lostMost, ladder.LostMotion));
            if (ladder.NotCounted.Count > 0)
                notes.Add($"Not counted in the limits of this card, because the file does not say enough: {string.Join("; ", ladder.NotCounted)}. They take cushion away: leave more than the limits, or type what is missing and print the card anew.");
            if (ladder.HeatAtPush.Size > 1e-5 && aircraft.Environment is { } air)
                notes.Add($"Hot and cold move the knob at its stops by up to {say.Length(Math.Max(ladder.HeatAtPush.Size, ladder.HeatAtPull.Size), Rounding.Up)} between {FigureText.Plain(air.Coldest.Celsius, 0)} °C and {FigureText.Plain(air.EngineBay.Celsius, 0)} °C in the engine bay; the limits above are for {FigureText.Plain(air.Rigged.Celsius, 0)} °C in the shop and count it.");
        }
        else
        {
            foreach (var need in answer.Needs)
                notes.Add($"Still wanted for the numbers: {need.Name} ({need.Path}).");
        }

        var seats = Published.Table("order/set-screw-torque");
        var torques = string.Join(", ", seats.Rows.Take(4).Select(r => $"{r.Find("size")!.Text} {say.TightenTo(r.Si("low"))}"));
        var hold = run.LeverEnd?.Swivel.HoldsBy ?? [];
        steps.Add(new(
            $"Set screw tight by its size ({torques}){(hold.Contains(WireHold.Threadlocker) ? ", threadlocker by its sheet" : "")}{(hold.Contains(WireHold.BentTail) ? ", wire's tail bent over 90° behind the fitting" : "")}. Paint a line across screw, fitting and wire, and across conduit and anchor.",
            hold.Any(h => h is WireHold.BentTail or WireHold.Crimp or WireHold.LoopedEye) ? "screw, second hold, paint lines" : "screw and paint lines; a second hold is missing"));
        if (run.Installation?.Joint is { } joint)
            steps.Add(new($"Joint of swivel and arm: {Hardware.TorqueWords(joint, say)} New cotter each time. The swivel turns freely on its pin.", "free, no play up and down"));
        steps.Add(new("Twenty full strokes. Take the two knob places again.", $"no change over {say.Size(Length.MetresPerInch / 64)}"));
        if (answer is { Forces: { } forces, Sweep: { } sweep })
        {
            var middle = 0.5 * (sweep.Case.From + sweep.Case.To);
            var place = forces.Places.MinBy(p => Math.Abs(p.Angle - middle))!;
            if (double.IsFinite(place.KnobPull.Most) && double.IsFinite(place.KnobPush.Most))
            {
                steps.Add(new("Spring scale at the knob, slow pull through mid travel:", $"{say.Force(place.KnobPull.Least, Rounding.Down)} to {say.Force(place.KnobPull.Most)}", "pull", place.KnobPull.Least, place.KnobPull.Most, place.KnobPull.Nominal));
                steps.Add(new("Slow push through mid travel:", $"{say.Force(place.KnobPush.Least, Rounding.Down)} to {say.Force(place.KnobPush.Most)}", "push", place.KnobPush.Least, place.KnobPush.Most, place.KnobPush.Nominal));
            }
        }

        var limit = (answer.Proof ?? Prove.ProveSolver.Solve(Proof.CaseFor(aircraft, answer))).LimitForce;
        var test = limit * Published.Get("joint/fitting-factor").Value;
        if (run.Cable?.PullLimit is { } most && test > most.Newtons)
            steps.Add(new($"Pull {say.Force(most.Newtons, Rounding.Down)}, the cable maker's limit, against the pull stop for a minute. The fitting wants a test to {say.Force(test)}: do that on a sample of the same wire and fitting.", "paint lines unbroken, anchor still"));
        else
            steps.Add(new($"Pull {say.Force(test)} against the pull stop for a minute, with {words.Device}'s stop able to stand it.", "paint lines unbroken, anchor still"));
        if (run.CockpitEnd is { Lock: not LockKind.None })
            steps.Add(new("Lock the knob half way. Load the wire at the device, then let go.", "knob and device stay", "hold"));
        steps.Add(new($"From the seat, belted: full travel with one hand. Pushing takes {words.Device} to {words.PushEnd}, pulling to {words.PullEnd}. The marking reads {(run.Label.Length > 0 ? run.Label : "(no label yet)")}{(run.How.Length > 0 ? ", " + run.How : "")}.", "as marked; nothing else moves"));
        foreach (var item in (answer.Proof ?? Prove.ProveSolver.Solve(Proof.CaseFor(aircraft, answer))).Operating)
            steps.Add(new($"Emergency control, {item.What}: {item.Do}", item.Expect));
        return new()
        {
            Tools = ["steel rule", "drill shank or feeler gauge", "spring scale", "protractor", "torque wrench", "paint pen", "a second person"],
            Warning = "A hand near the propeller can be killed by it. Magneto switches off and grounded, fuel off, before step 1. This card does not approve the work.",
            Steps = steps.ToEquatableList(),
            Notes = notes.ToEquatableList(),
        };
    }
}
