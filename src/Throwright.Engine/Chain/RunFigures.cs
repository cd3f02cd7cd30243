using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.HandForce;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Engine.Throw;
using Throwright.Shapes;
using Throwright.Shapes.Numerics;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>Every figure of one run with its formula, inputs, steps, source and uncertainty.</summary>
internal static class RunFigures
{
    private static readonly SourceRef ThrowTheory = new("project", "docs/theory/throw.md", Evidence.Derived);
    private static readonly SourceRef CushionTheory = new("project", "docs/theory/cushion.md", Evidence.Derived);
    private static readonly SourceRef ForceTheory = new("project", "docs/theory/hand-force.md", Evidence.Derived);

    public static EquatableList<Figure> Of(Aircraft aircraft, RunAnswer answer)
    {
        var figures = new List<Figure>();
        if (answer is { Sweep: { } sweep, Placement: { } placement })
            figures.AddRange(OfSweep(sweep, placement, answer));
        if (answer is { Ladder: { } ladder, LadderCase: { } of })
            figures.AddRange(OfLadder(ladder, of, answer, new(aircraft.Display)));
        if (answer is { Forces: { } forces, ForceCase: { } forceCase })
            figures.AddRange(OfForces(forces, forceCase, answer));
        figures.AddRange(RouteFigures.Of(answer));
        figures.AddRange(PointFigures.Of(aircraft, answer.Run));
        figures.AddRange(OfBends(answer));
        figures.AddRange(ClearanceFindings.Figures(answer));
        figures.AddRange(EndClearance.Figures(answer.Ends));
        figures.AddRange(MadeFindings.Figures(answer));
        figures.AddRange(MountFindings.Figures(aircraft, answer));
        return figures.ToEquatableList();
    }

    private static FigureStep Step(string letter, string name, double value, QuantityKind kind, string from = "") => new(letter, name, value, kind, From: from);

    private static FigureStep Input(LadderValue v, string letter) =>
        new(letter, v.Name, v.Nominal, v.Kind, v.Minus, v.Plus, v.Path.Length > 0 ? v.Path : "worked out");

    private static IEnumerable<Figure> OfSweep(Sweep sweep, LeverPlacement placement, RunAnswer answer)
    {
        var of = sweep.Case;
        EquatableList<FigureStep> geometry =
        [
            new("r", "arm radius", of.Radius, QuantityKind.Length, placement.Radius.Minus, placement.Radius.Plus, LeverPlacement.RadiusPath),
            new("phi1", "arm angle at the push stop", sweep.PushAngle, QuantityKind.Angle, From: LeverPlacement.SweepPath),
            new("phi2", "arm angle at the pull stop", sweep.PullAngle, QuantityKind.Angle, From: LeverPlacement.SweepPath),
            new("a", "anchor along the arm at angle 0", of.Anchor.X, QuantityKind.Length, From: placement.AxisPaths.X),
            new("b", "anchor a quarter turn on", of.Anchor.Y, QuantityKind.Length, From: placement.AxisPaths.Y),
            new("c", "anchor out of the swivel's plane", of.Anchor.Z, QuantityKind.Length, From: placement.AxisPaths.Z),
        ];
        const string law = "L^2 = C - D cos(phi - phi0),  C = r^2 + a^2 + b^2 + c^2,  D = 2 r sqrt(a^2 + b^2),  phi0 = atan2(b, a)";
        var half = 0.5 * (of.To - of.From);
        var along = Math.Sqrt(Math.Max(0, (sweep.AtMid.Length * sweep.AtMid.Length) - (of.Anchor.Z * of.Anchor.Z)));
        if (answer.Stops is { } stops)
        {
            yield return new()
            {
                Id = "throw",
                Name = "throw: wire travel from stop to stop",
                Kind = QuantityKind.Length,
                Value = sweep.Throw,
                Formula = "S = L(phi1) - L(phi2);  " + law,
                Inputs = geometry,
                Steps =
                [
                    Step("phi0", "arm angle at the near dead centre", sweep.Phi0, QuantityKind.Angle),
                    Step("L1", "free wire at the push stop", sweep.AtPush.Length, QuantityKind.Length),
                    Step("L2", "free wire at the pull stop", sweep.AtPull.Length, QuantityKind.Length),
                    Step("Sc", "for comparison, chord rule 2 r sin(half sweep)", BenchRules.ChordThrow(of.Radius, half), QuantityKind.Length),
                    Step("Sq", "for comparison, wire square at mid travel, same distance", BenchRules.SquareThrow(of.Radius, half, along), QuantityKind.Length),
                    Step("Sc-Sq", "difference of the two bench rules", BenchRules.ChordThrow(of.Radius, half) - BenchRules.SquareThrow(of.Radius, half, along), QuantityKind.Length),
                ],
                Sources = [ThrowTheory],
                Holds = "straight free wire, rigid arm, swivel that turns freely; no dead centre inside the sweep",
            };
            yield return Arm("arm-push", "moment arm at the push stop", sweep.AtPush, stops.AtPush.MomentArm);
            yield return Arm("arm-pull", "moment arm at the pull stop", sweep.AtPull, stops.AtPull.MomentArm);
        }

        var nearest = sweep.IsMonotone ? sweep.ToDeadCentre : 0;
        yield return new()
        {
            Id = "to-dead-centre",
            Name = "angle from a stop to the nearest dead centre",
            Kind = QuantityKind.Angle,
            Value = nearest,
            Rounding = Rounding.Down,
            Formula = "dead centres at phi0 and phi0 + 180 deg, phi0 = atan2(b, a); zero when one lies inside the sweep",
            Inputs = geometry,
            Steps = [Step("phi0", "arm angle at the near dead centre", sweep.Phi0, QuantityKind.Angle)],
            Sources = [ThrowTheory],
        };
        yield return new()
        {
            Id = "transmission",
            Name = "least angle between wire and arm",
            Kind = QuantityKind.Angle,
            Value = sweep.LeastTransmission,
            Least = answer.Stops is { } both ? Math.Asin(Math.Min(1, both.LeastArm / of.Radius)) : 0,
            Rounding = Rounding.Down,
            Formula = "sin mu = |m| / r at the worse stop;  m = dL/dphi = r (a sin phi - b cos phi) / L",
            Inputs = geometry,
            Steps =
            [
                Step("m1", "moment arm at the push stop", sweep.AtPush.MomentArm, QuantityKind.Length),
                Step("m2", "moment arm at the pull stop", sweep.AtPull.MomentArm, QuantityKind.Length),
            ],
            Sources = [ThrowTheory, Published.Get("throw/transmission-angle-least").Source],
            Holds = "between two dead centres the moment arm has one crest, so its least value is at a stop",
        };
        yield return new()
        {
            Id = "swing",
            Name = "largest swing of the wire against the conduit's tip",
            Kind = QuantityKind.Angle,
            Value = sweep.MostSwing,
            Rounding = Rounding.Up,
            Formula = "angle between the free wire (from the anchor; from its mouth where the end tube can't tilt) and the conduit's end, largest over the sweep",
            Inputs = geometry,
            Steps =
            [
                Step("s1", "swing at the push stop", sweep.AtPush.Swing, QuantityKind.Angle),
                Step("s2", "swing at the pull stop", sweep.AtPull.Swing, QuantityKind.Angle),
                Step("phi", "arm angle of the largest swing", sweep.MostSwingAngle, QuantityKind.Angle),
            ],
            Sources = [ThrowTheory],
            Holds = of.Exit is null ? "the file gives no direction of the conduit's end: taken as aimed at the swivel at mid travel" : "",
        };
        if (RunFindings.TipBending(answer) is { } bending)
        {
            yield return new()
            {
                Id = "wire-bend-stress",
                Name = "bending stress of the bare wire at the fixed tip",
                Kind = QuantityKind.Stress,
                Value = bending.Stress,
                Rounding = Rounding.Up,
                Formula = "sigma = g 3 E d delta / (2 s^2);  pulled g = (v^2/3) sinh v / (v cosh v - sinh v), v = s sqrt(F/EI); a push counts when it bows the wire",
                Inputs = [Step("d", "core diameter", answer.Run.Cable!.Core!.Diameter.Nominal.Metres, QuantityKind.Length, "cable.core.diameter")],
                Steps =
                [
                    Step("delta", "sideways offset of the swivel from the tip's axis", bending.Offset, QuantityKind.Length),
                    Step("Q", "side force at the swivel", bending.SideForce, QuantityKind.Force),
                    Step("g", "growth by the largest pull or push", bending.Growth, QuantityKind.Ratio),
                ],
                Sources = [ThrowTheory],
                Holds = "slopes below about 10 deg; wire held at the conduit's mouth, turning freely at the swivel",
            };
        }
    }

    private static Figure Arm(string id, string name, SweepPlace place, Spread3 limits)
    {
        return new()
        {
            Id = id,
            Name = name,
            Kind = QuantityKind.Length,
            Value = place.MomentArm,
            Least = limits.Least,
            Most = limits.Most,
            Formula = "m = dL/dphi = r (a sin phi - b cos phi) / L  (per radian)",
            Steps =
            [
                Step("phi", "arm angle", place.Angle, QuantityKind.Angle),
                Step("L", "free wire", place.Length, QuantityKind.Length),
            ],
            Sources = [ThrowTheory],
            Uncertainty = "limits over radius, anchor place and the angle of the stop, proven by interval slopes",
        };
    }

    private static IEnumerable<Figure> OfLadder(TravelLadder ladder, LadderCase of, RunAnswer answer, FigureWriter say)
    {
        FigureStep In(LadderInput input, string letter) => Input(of[input], letter);
        EquatableList<FigureStep> steps =
        [
            Step("L1", "free wire at the push stop", answer.Sweep!.AtPush.Length, QuantityKind.Length),
            Step("L2", "free wire at the pull stop", answer.Sweep.AtPull.Length, QuantityKind.Length),
            Step("S", "throw", ladder.Throw, QuantityKind.Length),
            Step("B", "lost motion", ladder.LostMotion, QuantityKind.Length),
            Step("e_push", "stretch, pushing at the push stop", ladder.StretchPush, QuantityKind.Length),
            Step("e_pull", "stretch, pulling at the pull stop", ladder.StretchPull, QuantityKind.Length),
            Step("p0", "knob place with the device on its push stop", ladder.PushStopPlace, QuantityKind.Length),
            Step("p1", "knob place with the device on its pull stop", ladder.PullStopPlace, QuantityKind.Length),
        ];
        var setting = of.SettingKind switch
        {
            SettingKind.WireLength => "p0 = W - L1 - e_push,  p1 = W - L2 + B + e_pull  (W: wire from anchor to pin, knob in)",
            SettingKind.AtPushStop => "p0 = g - e_push,  p1 = g + S + B + e_pull  (g: knob place rigged at the push stop, light hand)",
            SettingKind.AtPullStop => "p1 = g + e_pull,  p0 = g - B - S - e_push  (g: knob place rigged at the pull stop, light hand)",
            _ => "both gaps made equal when rigging: (stroke - S - B - e_pull - e_push) / 2, plus or minus the setting error",
        };
        EquatableList<FigureStep> inputs = of.Values
            .Where(v => !v.IsExact || v.Nominal != 0)
            .Select(v => Input(v, LetterOf(v.Input)))
            .ToEquatableList();
        yield return Cushion("cushion-in", "knob cushion, in: knob travel left when pushing has taken the device to its stop", "in = p0;  " + setting, ladder.KnobIn, ladder, inputs, steps, say);
        yield return Cushion("cushion-out", "knob cushion, out: knob travel left when pulling has taken the device to its stop", "out = stroke - p1;  " + setting, ladder.KnobOut, ladder, inputs, steps, say);
        EquatableList<FigureStep> tipSteps = [steps[0], steps[1]];
        EquatableList<FigureStep> tipInputs = [In(LadderInput.Radius, "r"), In(LadderInput.PushAngle, "phi1"), In(LadderInput.PullAngle, "phi2"), In(LadderInput.AnchorX, "dx"), In(LadderInput.AnchorY, "dy"), In(LadderInput.AnchorZ, "dz"), In(LadderInput.Tip, "t"), In(LadderInput.SwivelLength, "w")];
        yield return Cushion("tip-cushion", "gap between swivel and conduit tip at the pull stop", "L2 - t - w/2", ladder.TipAtPull, ladder, tipInputs, tipSteps, say);
        yield return Cushion("tip-cushion-push", "gap between swivel and conduit tip at the push stop", "L1 - t - w/2", ladder.TipAtPush, ladder, tipInputs, tipSteps, say);
        if (!of.NotCounted.Contains(LadderCase.NoLostMotion))
        {
            yield return new()
            {
                Id = "lost-motion",
                Name = "lost motion: knob movement at a reversal that does not move the device",
                Kind = QuantityKind.Length,
                Value = ladder.LostMotion,
                Rounding = Rounding.Up,
                Least = (of[LadderInput.Clearance].Least * of[LadderInput.BendTotal].Least) + of[LadderInput.PinPlay].Least + of[LadderInput.KnobPlay].Least,
                Most = (of[LadderInput.Clearance].Most * of[LadderInput.BendTotal].Most) + of[LadderInput.PinPlay].Most + of[LadderInput.KnobPlay].Most,
                Formula = "B = c Theta + plays",
                Inputs = [In(LadderInput.Clearance, "c"), In(LadderInput.BendTotal, "Theta"), In(LadderInput.PinPlay, "pin"), In(LadderInput.KnobPlay, "shank")],
                Sources = [CushionTheory],
                Holds = "the core crosses its bore at every reversal; where a spring keeps it always pulled the first term does not appear, and counting it is safe",
                Uncertainty = "every term rises with its inputs: limits at the ends",
            };
        }

        foreach (var (id, name, value, give) in new[]
        {
            ("stretch-pull", "stretch pulling, on arriving at the pull stop", ladder.StretchPull, LadderInput.PullGive),
            ("stretch-push", "stretch pushing, on arriving at the push stop", ladder.StretchPush, LadderInput.PushGive),
        })
        {
            if (of.NotCounted.Contains(LadderCase.NoStretch))
                break;
            var pull = id == "stretch-pull";
            var own = of[pull ? LadderInput.OwnPull : LadderInput.OwnPush];
            yield return new()
            {
                Id = id,
                Name = name,
                Kind = QuantityKind.Length,
                Value = value,
                Rounding = Rounding.Up,
                Formula = pull ? "e = give x max(0, T/m + drag) + own" : "e = give x max(0, T/m + drag) + own + winding of the core",
                Inputs =
                [
                    Step("give", "knob movement per newton at the device (m/N)", of[give].Nominal, QuantityKind.Ratio, "worked out from core, conduit, bracket and friction"),
                    Step("T", "torque against the arrival", pull ? of.TorqueAtPull + of.BiasAtPull : of.TorqueAtPush + of.BiasAtPush, QuantityKind.Torque, "leverEnd.load"),
                    Step("drag", "drag at the device's end", of.DeviceDrag, QuantityKind.Force, DragFrom("device", of.DeviceDrag)),
                    Input(own, "own"),
                ],
                Steps = [Step("m", "moment arm at this stop", pull ? answer.Sweep.AtPull.MomentArm : answer.Sweep.AtPush.MomentArm, QuantityKind.Length)],
                Sources = [CushionTheory],
                Holds = of.NotCounted.Count > 0 ? "not counted: " + string.Join("; ", of.NotCounted) : "",
            };
        }

        if (of.Heat is { } heat)
        {
            foreach (var (id, name, range, free) in new[]
            {
                ("heat-push", "heat and cold move the knob at the push stop by up to", ladder.HeatAtPush, answer.Sweep.AtPush.Length),
                ("heat-pull", "heat and cold move the knob at the pull stop by up to", ladder.HeatAtPull, answer.Sweep.AtPull.Length),
            })
            {
                yield return new()
                {
                    Id = id,
                    Name = name,
                    Kind = QuantityKind.Length,
                    Value = range.Size,
                    Least = range.Low,
                    Most = range.High,
                    Rounding = Rounding.Up,
                    Formula = "(a_wire - a_conduit) Lc dT_cable + (a_wire - a_bracket) L dT_lever",
                    Inputs =
                    [
                        Step("a_wire", "expansion of the core, 1e-6/K", heat.Wire * 1e6, QuantityKind.Ratio, "cable.core.material"),
                        Step("a_conduit", "expansion of the conduit, 1e-6/K", heat.Conduit * 1e6, QuantityKind.Ratio, "cable.conduit.material"),
                        Step("a_bracket", "expansion between anchor and pivot, 1e-6/K", heat.Bracket * 1e6, QuantityKind.Ratio, "environment.airframe"),
                        In(LadderInput.ConduitLength, "Lc"),
                        Step("L", "free wire at this stop", free, QuantityKind.Length),
                        Step("cold", "coldest against rigging, K", heat.CableCold, QuantityKind.Ratio, "environment"),
                        Step("hot", "hottest against rigging, cable, K", heat.CableHot, QuantityKind.Ratio, "environment"),
                        Step("hot'", "hottest against rigging, lever end, K", heat.LeverHot, QuantityKind.Ratio, "environment"),
                    ],
                    Sources = [CushionTheory, Expansion.Of(answer.Run.Cable!.Core!.Material).Source],
                    Holds = "conduit held at both ends and curved between: the airframe's growth only changes the curve",
                };
            }
        }

        yield return new()
        {
            Id = "swivel-at",
            Name = "wire from the anchor to the swivel's pin, knob pushed in",
            Kind = QuantityKind.Length,
            Value = ladder.Setting.WireLength,
            Formula = "W = p0 + e_push + L1",
            Steps =
            [
                steps[0],
                Step("x0", "knob out, device on its push stop, light hand", ladder.Setting.KnobOutAtPushStop, QuantityKind.Length),
                Step("x1", "knob out, device on its pull stop, light hand", ladder.Setting.KnobOutAtPullStop, QuantityKind.Length),
            ],
            Sources = [CushionTheory],
            Holds = ladder.Setting.Proposed ? "proposed: both knob gaps equal" : "",
        };
        if (answer.Run.LeverEnd?.Valve is { } valve)
        {
            yield return new()
            {
                Id = "valve-shut",
                Name = "angle before shut within which the valve is tight",
                Kind = QuantityKind.Angle,
                Value = ValveOpening.ClosedDeadBand(valve.BoreRatio),
                Rounding = Rounding.Down,
                Formula = "90 deg - 2 asin(bore radius / ball radius)",
                Inputs = [Step("rb/Rb", "bore radius over ball radius", valve.BoreRatio, QuantityKind.Ratio, "leverEnd.valve.boreRatio")],
                Sources = [CushionTheory, Published.Table("valve/plug-cock-loss").Source],
            };
        }
    }

    private static string LetterOf(LadderInput input) => input switch
    {
        LadderInput.Stroke => "stroke",
        LadderInput.Setting => "g, W",
        LadderInput.Radius => "r",
        LadderInput.PushAngle => "phi1",
        LadderInput.PullAngle => "phi2",
        LadderInput.AnchorX => "dx",
        LadderInput.AnchorY => "dy",
        LadderInput.AnchorZ => "dz",
        LadderInput.AlongAxis => "h",
        LadderInput.Clearance => "c",
        LadderInput.BendTotal => "Theta",
        LadderInput.PinPlay => "pin",
        LadderInput.KnobPlay => "shank",
        LadderInput.TorqueFactor => "fT",
        LadderInput.OwnTorque => "dG",
        LadderInput.PullGive => "gp",
        LadderInput.PushGive => "gs",
        LadderInput.PushSlack => "u",
        LadderInput.Tip => "t",
        LadderInput.SwivelLength => "w",
        LadderInput.OwnPull => "own",
        LadderInput.OwnPush => "own'",
        _ => "Lc",
    };

    private static Figure Cushion(string id, string name, string formula, CushionRange range, TravelLadder ladder, EquatableList<FigureStep> inputs, EquatableList<FigureStep> steps, FigureWriter say)
    {
        var proof = range.Outcome switch
        {
            Outcome.Corner => $"worst case proven: every tolerance pushes one way over its whole range ({range.WorstInputs.Count} tolerances)",
            Outcome.Converged => "worst case proven by splitting the box of tolerances until bound and found value met",
            Outcome.Unbounded => "no bound exists: within the tolerances a dead centre can be reached",
            _ => "bound proven, but not met by a found value within the budget",
        };
        var odds = range.ShareAbove;
        return new()
        {
            Id = id,
            Name = name,
            Kind = QuantityKind.Length,
            Value = range.Nominal,
            Least = range.Least,
            Most = range.Most,
            Low95 = range.Low95,
            High95 = range.High95,
            Rounding = Rounding.Down,
            Formula = formula,
            Inputs = inputs,
            Steps = steps,
            Sources = [CushionTheory],
            Holds = ladder.NotCounted.Count > 0 ? "not counted: " + string.Join("; ", ladder.NotCounted) : "",
            Uncertainty = $"{proof}; least and most include cold and heat. Root-sum-square half width {say.Length(range.RootSumSquare, Rounding.Up)}, but {100 * range.OutsideRootSumSquare:F1} % of {ladder.Samples} drawn installations fall outside it (uniform parts). "
                + $"Keeps the wanted {say.Length(ladder.Wanted)} at every temperature: {100 * odds.Low:F2} % to {100 * odds.High:F2} % of installations (95 % interval, seed {ladder.Seed}).",
            Shares = range.Shares.Select(s => new Share(s.Input, s.Path, s.Moves)).ToEquatableList(),
        };
    }

    /// <summary>Seals and wipers that the file does not give are not counted: said beside the zero.</summary>
    private static string DragFrom(string end, double drag) => drag > 0 ? $"cable.drag.{end}" : $"cable.drag.{end}: none typed";

    private static IEnumerable<Figure> OfForces(HandForces forces, HandForceCase of, RunAnswer answer)
    {
        var theta = of.Bends.Sum(b => b.Angle);
        EquatableList<FigureStep> inputs =
        [
            new("mu", "friction of the core", of.Friction.Nominal, QuantityKind.Ratio, of.Friction.Nominal - of.Friction.Least, of.Friction.Most - of.Friction.Nominal, "cable.friction"),
            new("Theta", "bend total", theta, QuantityKind.Angle, theta * (1 - of.BendFactor.Least), theta * (of.BendFactor.Most - 1), answer.Route?.Lie is not null ? "worked out: bend-total" : answer.Run.Cable!.Bends.Count > 0 ? "cable.bends" : "cable.bendTotal"),
            Step("F_far", "drag at the device's end", of.DeviceDrag, QuantityKind.Force, DragFrom("device", of.DeviceDrag)),
            Step("F_near", "drag at the knob's end", of.KnobDrag, QuantityKind.Force, DragFrom("knob", of.KnobDrag)),
        ];
        foreach (var (id, name, peak, pull) in new[]
        {
            ("hand-pull", "largest hand force to pull", forces.MostPull, true),
            ("hand-push", "largest hand force to push", forces.MostPush, false),
        })
        {
            var place = forces.Places.First(p => p.Angle == peak.Angle);
            var arm = of.Places.First(p => p.Angle == peak.Angle).MomentArm;
            yield return new()
            {
                Id = id,
                Name = name,
                Kind = QuantityKind.Force,
                Value = peak.Nominal,
                Least = pull ? place.KnobPull.Least : place.KnobPush.Least,
                Most = peak.Worst,
                Rounding = Rounding.Up,
                Formula = of.BendsAreKnown && of.Core is not null && of.Clearance is not null
                    ? "F = (T/m + F_far) through each bend: x e^(mu theta) + 4 mu N, N = E I / (2 R sqrt(6 c R)); + F_near"
                    : "F = (T/m + F_far) e^(mu Theta) + F_near",
                Inputs = inputs,
                Steps =
                [
                    Step("phi", "arm angle where it is largest", peak.Angle, QuantityKind.Angle),
                    Step("m", "moment arm there", arm.Nominal, QuantityKind.Length),
                    Step("T/m", "force of the wire at the device", pull ? place.WirePull.Nominal : place.WirePush.Nominal, QuantityKind.Force),
                ],
                Sources = [ForceTheory],
                Holds = of.BendsAreKnown ? "slow motion, dry friction" : "slow motion, dry friction; the stiff core's own drag is not counted: list the bends with their radii to count it",
                Uncertainty = "the force rises with torque, friction, bends and drag and falls with the moment arm: worst case with each at its end",
            };
        }

        yield return new()
        {
            Id = "core-pull",
            Name = "largest tension of the core, worst case",
            Kind = QuantityKind.Force,
            Value = forces.CoreTension,
            Rounding = Rounding.Up,
            Formula = "largest of the pull at the knob and at the device",
            Inputs = inputs,
            Sources = [ForceTheory],
        };
        yield return new()
        {
            Id = "core-push",
            Name = "largest compression of the core, worst case",
            Kind = QuantityKind.Force,
            Value = forces.CoreCompression,
            Rounding = Rounding.Up,
            Formula = "largest of the push at the knob and at the device, and of a load that runs ahead of the pull",
            Inputs = inputs,
            Sources = [ForceTheory],
        };
        yield return new()
        {
            Id = "back-drive",
            Name = "what the load sends to the knob, hand off",
            Kind = QuantityKind.Force,
            Value = forces.SelfHolding.Drive,
            Rounding = Rounding.Up,
            Formula = "(drive/m - F_far) e^(-mu Theta) - F_near, least friction, most load; negative: it stays put",
            Inputs = inputs,
            Steps =
            [
                Step("phi", "arm angle of the worst place", forces.SelfHolding.Angle, QuantityKind.Angle),
                .. forces.SelfHolding.Lock is { } lockHolds ? [Step("lock", "the lock holds", lockHolds, QuantityKind.Force)] : (FigureStep[])[],
            ],
            Sources = [ForceTheory, Published.Rule("23.1141(c)").Source],
        };
        if (forces.BareWire is { } wire && of.Core is { } core)
        {
            yield return new()
            {
                Id = "bare-wire-margin",
                Name = "buckling load of the bare wire over its largest push",
                Kind = QuantityKind.Ratio,
                Value = wire.Margin,
                Rounding = Rounding.Down,
                Formula = "Pcr / P;  Pcr = pi^2 E I / L^2 (ends as pins), Johnson's parabola when short",
                Inputs =
                [
                    Step("E", "elastic modulus", core.BendingModulus, QuantityKind.Stress, "cable.core.material"),
                    Step("d", "core diameter", core.Diameter, QuantityKind.Length, "cable.core.diameter"),
                    Step("L", "longest bare wire, conduit tip to pin", wire.Length, QuantityKind.Length, "worked out"),
                ],
                Steps = [Step("Pcr", "buckling load", wire.Critical, QuantityKind.Force), Step("P", "largest push, worst case", wire.Compression, QuantityKind.Force)],
                Sources = [ForceTheory, Published.Get("buckling/margin").Source],
                Holds = "the conduit's mouth holds the wire poorly, so it counts as a pin",
            };
        }

        if (forces.InConduit is { } inside)
        {
            yield return new()
            {
                Id = "lock-up",
                Name = "most push that can come out of the conduit",
                Kind = QuantityKind.Force,
                Value = inside.LockUp,
                Rounding = Rounding.Down,
                Formula = "4 E I / (mu r L): the core winds up, and its wall pressure grows with the square of the push",
                Inputs = [Step("L", "length taken as straight", inside.Straight, QuantityKind.Length, "cable.longestStraight or cable.length")],
                Steps = [Step("Fs", "snaking begins", inside.Snaking, QuantityKind.Force), Step("Fh", "helix begins", inside.Helix, QuantityKind.Force)],
                Sources = [ForceTheory],
                Holds = "straight level conduit, several pitches long; a strand with its wires free to slide: least possible stiffness",
            };
        }
    }

    private static IEnumerable<Figure> OfBends(RunAnswer answer)
    {
        if (answer.Cable is not { Bends.Count: > 0 } cable)
            yield break;
        var byLie = answer.Route?.Lie is not null;
        var tightest = cable.Bends.MinBy(b => b.Radius.Least)!;
        // The figure is the tightest place itself, down to what nearly all lays keep.
        if (answer.Route is { Lie: { } lie, Spread: { LeastRadius: > 0 } lays } && double.IsFinite(lie.LeastRadius))
            tightest = tightest with { Radius = new(new(lie.LeastRadius), Math.Max(0, lie.LeastRadius - lays.LeastRadius), 0) };
        var radius = Input("R", "radius of the tightest bend", tightest.Radius);
        yield return new()
        {
            Id = "bend-radius",
            Name = "radius of the tightest bend",
            Kind = QuantityKind.Length,
            Value = tightest.Radius.Nominal.Metres,
            Least = tightest.Radius.Least,
            Most = tightest.Radius.Most,
            Rounding = Rounding.Down,
            Formula = byLie ? "least of the bends of the lie" : "least of the bends typed",
            Inputs = [radius],
            Sources = [byLie ? new("project", "docs/theory/route.md", Evidence.Derived) : new("project", "the builder's figures", Evidence.CommonPractice)],
        };
        if (cable.Core is not { Kind: CoreKind.Solid } core)
            yield break;
        var modulus = Wire.Modulus(core.Material, core.Diameter.Nominal);
        yield return new()
        {
            Id = "core-bend-stress",
            Name = "bending stress of the core in the tightest bend",
            Kind = QuantityKind.Stress,
            Value = modulus.Value * core.Diameter.Nominal.Metres / (2 * tightest.Radius.Nominal.Metres),
            Most = modulus.Value * core.Diameter.Most / (2 * tightest.Radius.Least),
            Rounding = Rounding.Up,
            Formula = "sigma = E d / (2 R)",
            Inputs = [radius, Input("d", "core diameter", core.Diameter), Step("E", "elastic modulus", modulus.Value, QuantityKind.Stress, "cable.core.material")],
            Sources = [ForceTheory, modulus.Source],
        };

        FigureStep Input<T>(string letter, string name, Toleranced<T> value)
            where T : struct, IQuantity<T> => new(letter, name, value.Nominal.Si, T.Kind, value.Minus, value.Plus, letter != "R" ? "cable.core.diameter" : byLie ? "worked out: least-radius" : "cable.bends");
    }
}
