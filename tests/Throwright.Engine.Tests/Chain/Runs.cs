using CsCheck;
using Throwright.Engine.Chain;
using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Tests.Throw;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Chain;

/// <summary>Invented runs for the tests; mm, N, N m, degrees at the call.</summary>
internal static class Runs
{
    public static readonly LadderEffort Quick = new(Samples: 64);

    public static Length Mm(double mm) => Length.FromMillimetres(mm);

    public static Toleranced<T> Share<T>(double nominal, double share)
        where T : struct, IQuantity<T> => Toleranced<T>.PlusMinus(T.FromSi(nominal), nominal * share);

    public static Toleranced<Ratio> Number(double nominal, double half) => Toleranced<Ratio>.PlusMinus(new(nominal), half);

    public static Bend Bend(double degrees, double radius, double turn = 5, double limit = 10) => new(Levers.Degrees(degrees, turn), Levers.Mm(radius, limit));

    /// <summary>A run with everything known and nothing the matter.</summary>
    public static Run Sound { get; } = new()
    {
        Id = "cowl-flap",
        Label = "COWL FLAP",
        How = "PULL TO CLOSE",
        SafeEnd = "as set",
        Function = ControlFunction.CowlFlap,
        CockpitEnd = new()
        {
            Stroke = Levers.Mm(60, 0.8),
            PushMeans = "open",
            PullMeans = "shut",
            Knob = KnobShape.THandle,
            KnobColour = "black",
            Lock = LockKind.Twist,
            LockHolds = new(100),
            Play = Levers.Mm(0.1, 0.05),
        },
        Cable = new()
        {
            Core = new() { Diameter = Levers.Mm(1.6, 0.02) },
            Conduit = new()
            {
                Bore = Levers.Mm(2.0, 0.05),
                MinRadius = Mm(75),
                PullStiffness = Share<Stiffness>(800e3, 0.2),
                PushStiffness = Share<Stiffness>(400e3, 0.2),
            },
            Friction = Number(0.12, 0.04),
            Length = Levers.Mm(1800, 10),
            Bends = [Bend(80, 220), Bend(50, 200)],
            LongestStraight = Mm(600),
            PullLimit = new(200),
            PushLimit = new(100),
            KnobDrag = new(1),
            DeviceDrag = new(1),
            Source = "invented",
        },
        LeverEnd = Levers.Bench(30, 80, 45, AnchorRule.HalfSagitta, tolerance: 0.3) with
        {
            From = Levers.Degrees(-45, 1),
            To = Levers.Degrees(45, 1),
            Holes = [Mm(20), Mm(25), Mm(30), Mm(35)],
            Tip = Levers.Mm(10, 0.5),
            TipSwivels = Angle.FromDegrees(8),
            BracketStiffness = Share<Stiffness>(400e3, 0.2),
            Swivel = new() { Length = Levers.Mm(8, 0.1), Play = Levers.Mm(0.1, 0.05), Rigged = new(DeviceStop.Push, Levers.Mm(8, 0.8)), HoldsBy = [WireHold.SetScrew, WireHold.BentTail] },
            Load = new() { Torque = Share<Torque>(0.25, 0.2), Measured = true },
            Zone = HeatZone.EngineBay,
        },
        Installation = new()
        {
            Critical = false,
            Guard = GuardKind.None,
            LimitForce = new(150),
            Side = FirewallSide.Cabin,
            Joint = new()
            {
                Turns = true,
                Diameter = Mm(4.76),
                Arm = Mm(3),
                Swivel = Mm(6),
                Bearing = new(600e6),
                Material = "2024-T3",
                HeldBy = [JointLock.CastleNut, JointLock.Cotter],
            },
            SwivelHeld = new(200),
            AnchorHeld = new(200),
            AnchorOn = AnchorGround.Structure,
            CableHottest = new(500),
            Legend = new(Mm(5), Mm(750), true),
            Strength = new() { PinShear = new(500e6), ArmWidth = Mm(14), ArmEdge = Mm(10), ArmYield = new(250e6), BracketYield = new(250e6), ShankYield = new(250e6) },
        },
    };

    public static Aircraft Aircraft { get; } = new()
    {
        Name = "Test bird",
        Display = new() { Length = LengthUnit.Millimetre, Force = ForceUnit.Newton },
        Environment = new() { Airframe = AirframeMaterial.Aluminium, Rigged = new(20), Coldest = new(-30), Cabin = new(60), EngineBay = new(120), Elsewhere = new(60) },
    };

    public static Run Lever(this Run run, Func<LeverEnd, LeverEnd> change) => run with { LeverEnd = change(run.LeverEnd!) };

    public static Run Cable(this Run run, Func<Cable, Cable> change) => run with { Cable = change(run.Cable!) };

    public static Run Cockpit(this Run run, Func<CockpitEnd, CockpitEnd> change) => run with { CockpitEnd = change(run.CockpitEnd!) };

    /// <summary>Findings and figures, without the search for remedies.</summary>
    public static RunAnswer Check(this Run run, Aircraft? aircraft = null)
    {
        var of = aircraft ?? Aircraft;
        var answer = RunCheck.Solve(of, run, Quick);
        return answer with
        {
            Findings = [.. RunFindings.Of(of, answer, new(of.Display)).Select(RunFindings.Confirmed).OrderByDescending(f => f.Verdict)],
            Figures = RunFigures.Of(of, answer),
        };
    }

    /// <summary>The stages alone.</summary>
    public static RunAnswer Solve(this Run run) => RunCheck.Solve(Aircraft, run, Quick);

    public static Finding? Of(this RunAnswer answer, string rule) => answer.Findings.SingleOrDefault(f => f.Rule == rule);

    public static Verdict VerdictOf(this Run run, string rule, Aircraft? aircraft = null)
    {
        var finding = run.Check(aircraft).Of(rule);
        Assert.NotNull(finding);
        return finding.Verdict;
    }

    /// <summary>The same lever end by coordinates: x aft, y right, z up, axis up, arm aft at angle 0.</summary>
    public static LeverEnd InSpace(LeverEnd bench)
    {
        var of = LeverPlacement.Of(bench, [])!.Case;
        var limit = bench.Bench!.Distance;
        Toleranced<Length> At(double metres) => limit.At(metres);
        return bench with
        {
            Bench = null,
            Placed = new()
            {
                Pivot = Levers.At(new(0, 0, 0)),
                Axis = new(0, 0, 1),
                Zero = new(1, 0, 0),
                Anchor = new(At(of.Anchor.X), At(of.Anchor.Y), Levers.Mm(0)),
                Along = new DirectionAt(of.Exit!.Value.X, of.Exit.Value.Y, 0),
            },
        };
    }

    /// <summary>Runs of all shapes: either form, either sense, any setting, most of them with something the matter.</summary>
    public static Gen<Run> Any { get; } =
        from radius in Gen.Double[18, 45]
        from distance in Gen.Double[45, 160]
        from half in Gen.Double[25, 60]
        from rule in Gen.Int[0, 3]
        from share in Gen.Double[0.5, 1.2]
        from space in Gen.Bool
        from mirrored in Gen.Bool
        from stroke in Gen.Double[25, 110]
        from setting in Gen.Int[0, 3]
        from place in Gen.Double[1, 15]
        from torque in Gen.Double[0.05, 1.5]
        from own in Gen.Double[-1, 1]
        from swivels in Gen.Int[0, 2]
        from tip in Gen.Double[0, 25]
        from turn in Gen.Double[0, 2]
        from inch in Gen.Bool
        from known in Gen.Int[0, 7]
        select Make(radius, distance, half, (AnchorRule)rule, share, space, mirrored, stroke, setting, place, torque, own, swivels * 6, tip, turn, known);

    private static Run Make(
        double radius, double distance, double half, AnchorRule rule, double share, bool space, bool mirrored, double stroke, int setting, double place, double torque, double own, double swivels, double tip, double turn, int known)
    {
        var end = Sound.LeverEnd! with
        {
            Radius = Levers.Mm(radius, 0.3),
            From = Levers.Degrees(-half, turn),
            To = Levers.Degrees(half, turn),
            Bench = new() { Distance = Levers.Mm(distance, 1), Rule = rule, Offset = rule == AnchorRule.Offset ? Levers.Mm(share * radius, 1) : null },
            Holes = [Mm(radius - 8), Mm(radius - 4), Mm(radius), Mm(radius + 4), Mm(radius + 8)],
            Tip = Levers.Mm(tip, 0.5),
            TipSwivels = Angle.FromDegrees(swivels),
            Load = new()
            {
                Torque = Share<Torque>(torque, 0.2),
                Bias = Math.Abs(own) < 0.3 ? null : new() { Toward = own > 0 ? DeviceStop.Push : DeviceStop.Pull, Torque = Share<Torque>(Math.Abs(own), 0.2) },
            },
            Swivel = Sound.LeverEnd.Swivel with
            {
                Rigged = setting switch { 1 => new(DeviceStop.Push, Levers.Mm(place, 0.8)), 2 => new(DeviceStop.Pull, Levers.Mm(stroke - place, 0.8)), _ => null },
                At = setting == 3 ? Levers.Mm(distance + (0.75 * radius) + place, 0.8) : null,
            },
        };
        if (space)
            end = InSpace(end);
        if (space && mirrored)
        {
            // Seen in a mirror: y turned round, and with it the axis.
            var placed = end.Placed!;
            end = end with
            {
                Placed = placed with
                {
                    Axis = new(0, 0, -1),
                    Anchor = placed.Anchor with { Buttline = placed.Anchor.Buttline.At(-placed.Anchor.Buttline.Nominal.Metres) },
                    Along = placed.Along! with { Right = -placed.Along.Right },
                },
            };
        }

        var run = Sound with { LeverEnd = end, CockpitEnd = Sound.CockpitEnd! with { Stroke = Levers.Mm(stroke, 0.8), Knob = known % 2 == 0 ? KnobShape.Round : KnobShape.THandle } };
        return known == 7 ? run with { Cable = null } : run;
    }
}
