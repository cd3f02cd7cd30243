using Throwright.Shapes;

namespace Throwright.Engine.HandForce;

/// <summary>From the device's torque to the force in the hand. Theory: docs/theory/hand-force.md.</summary>
/// <remarks>
/// At each arm angle: torque against the motion / moment arm = force of the wire (virtual work); then along the
/// conduit with <see cref="Friction.AtKnob"/>. The knob force rises with torque, friction, bend total and drags and
/// falls with the moment arm (while the torque resists), so its worst case is at the ends of their limits: proven by
/// the sign of each slope, no search is needed. The stiff core's own drag takes the thickest core, the tightest bend and
/// the least clearance for the most. A core pushed beyond its helix load presses on the wall along the straight run:
/// what goes in is what comes out divided by 1 - F/F_lock. Drags are nominal.
/// </remarks>
public static class HandForceSolver
{
    public static HandForces Solve(HandForceCase of)
    {
        ArgumentNullException.ThrowIfNull(of);
        double pushAngle = of.Places[0].Angle, pullAngle = of.Places[^1].Angle;
        double[] contact = Contact(of, 0), most = Contact(of, 1), least = Contact(of, -1);
        BendOnWay[] nominal = Way(of, 0), tight = Way(of, 1), slack = Way(of, -1);

        double Knob(double atDevice, int which) => which switch
        {
            < 0 => Friction.AtKnob(atDevice, of.Friction.Least, slack, least, of.DeviceDrag, of.KnobDrag),
            0 => Friction.AtKnob(atDevice, of.Friction.Nominal, nominal, contact, of.DeviceDrag, of.KnobDrag),
            _ => Friction.AtKnob(atDevice, of.Friction.Most, tight, most, of.DeviceDrag, of.KnobDrag),
        };
        double Pushed(double atDevice, int which) => Wound(of, Knob(atDevice, which), which);

        // A resisting torque is hardest on the shortest moment arm, a driving one easiest on the longest.
        static Spread3 AtWire(Spread3 torque, Spread3 arm) => new(
            torque.Nominal / arm.Nominal,
            torque.Least >= 0 ? torque.Least / arm.Most : torque.Least / arm.Least,
            torque.Most >= 0 ? torque.Most / arm.Least : torque.Most / arm.Most);

        // A detent takes the device to its own place and keeps it there: that is no load to be held.
        var loose = of.Load with { Detents = [] };
        Spread3 Own(double angle) => DeviceTorque.At(loose, angle, pushAngle, pullAngle, of.EstimateFactor).TowardPush;

        (ForceAtPlace Force, double Drive) Place(DevicePlace at)
        {
            var (r, g) = DeviceTorque.At(of.Load, at.Angle, pushAngle, pullAngle, of.EstimateFactor);
            var pull = AtWire(new(r.Nominal + g.Nominal, r.Least + g.Least, r.Most + g.Most), at.MomentArm);
            var push = AtWire(new(r.Nominal - g.Nominal, r.Least - g.Most, r.Most - g.Least), at.MomentArm);
            // Hand off: the load drives the wire, least friction holds it. The stiff core's own drag is left out: a bend
            // too short for its four contacts has less, and what holds must not be counted too high.
            var own = Own(at.Angle);
            var drive = Math.Max(Math.Max(own.Most, -own.Least) - r.Least, 0) / at.MomentArm.Least;
            var backDrive = -Friction.AtKnob(-drive, of.Friction.Least, slack, [], of.DeviceDrag, of.KnobDrag);
            return (new(
                at.Angle, pull, push,
                new(Knob(pull.Nominal, 0), Knob(pull.Least, -1), Knob(pull.Most, 1)),
                new(Pushed(push.Nominal, 0), Pushed(push.Least, -1), Pushed(push.Most, 1)),
                backDrive), drive);
        }

        var each = of.Places.Select(Place).ToList();
        var places = each.Select(e => e.Force).ToEquatableList();
        static PeakForce Peak(IEnumerable<(Spread3 Force, double Angle)> along)
        {
            var top = along.MaxBy(p => p.Force.Most);
            return new(top.Force.Nominal, top.Force.Most, top.Angle);
        }

        var worstHold = places.MaxBy(p => p.BackDrive)!;
        var ownThere = Own(worstHold.Angle);
        // Pulling against resistance draws the core; pushing, or a device that runs ahead of the pull, squeezes it.
        var bareCompression = places.Max(p => Math.Max(p.WirePush.Most, -p.WirePull.Least));
        var compression = Math.Max(places.Max(p => p.KnobPush.Most), bareCompression);
        var tension = Math.Max(places.Max(p => p.KnobPull.Most), places.Max(p => Math.Max(p.WirePull.Most, -p.WirePush.Least)));
        var notCounted = new List<string>();
        return new()
        {
            Places = places,
            MostPull = Peak(places.Select(p => (p.KnobPull, p.Angle))),
            MostPush = Peak(places.Select(p => (p.KnobPush, p.Angle))),
            CoreTension = Math.Max(0, tension),
            CoreCompression = Math.Max(0, compression),
            BareWireCompression = Math.Max(0, bareCompression),
            PushThrough = Math.Max(0, places.Max(p => Knob(p.WirePush.Most, 1))),
            BareWire = Strut(of, Math.Max(0, bareCompression)),
            InConduit = Inside(of),
            SelfHolding = new(worstHold.BackDrive, of.LockHolds, ownThere.Most > -ownThere.Least, worstHold.Angle, each.Max(e => e.Drive)),
            PullGive = Give(of, of.ConduitPullStiffness, "squeezed", notCounted),
            PushGive = Give(of, of.ConduitPushStiffness, "drawn out", notCounted),
            OwnPull = OwnStretch(of, contact, most, of.ConduitPullStiffness),
            OwnPush = OwnStretch(of, contact, most, of.ConduitPushStiffness),
            PushSlack = Slack(of, places[0].KnobPush, notCounted),
            NotCounted = notCounted.Distinct().ToEquatableList(),
        };
    }

    /// <summary>Wall contact of the stiff core at each bend, N: nominal (0), least (-1) or most (1).</summary>
    private static double[] Contact(HandForceCase of, int which)
    {
        if (of is not { BendsAreKnown: true, Core: { } core, Clearance: > 0 and var nominal })
            return [];
        var stiffness = Pick(core.Bending, which);
        var clearance = Pick(of.ClearanceLimits ?? Spread3.Exact(nominal), -which);
        // A core that fills its bore has no room for the bend to spread over: a micrometre stands for none.
        return [.. of.Bends.Select((b, i) => Friction.StiffContact(
            stiffness, i < of.RadiusLimits.Count ? Pick(of.RadiusLimits[i], -which) : b.Radius, Math.Max(1e-6, clearance)))];
    }

    /// <summary>Push at the knob with the wall friction of a core that has wound into a helix over the straight run.</summary>
    private static double Wound(HandForceCase of, double force, int which)
    {
        if (force <= 0 || of is not { Core: { } core, Clearance: > 0 and var nominal } || (of.LongestStraight ?? of.ConduitLength?.Most) is not { } straight)
            return force;
        var clearance = of.ClearanceLimits ?? Spread3.Exact(nominal);
        var (stiffness, mu, c) = which switch
        {
            < 0 => (core.Bending.Most, of.Friction.Least, clearance.Least),
            0 => (core.Bending.Nominal, of.Friction.Nominal, clearance.Nominal),
            _ => (core.Bending.Least, of.Friction.Most, clearance.Most),
        };
        if (c <= 0 || force <= Buckling.Helix(stiffness, core.WeightPerLength, c / 2))
            return force;
        var lockUp = Buckling.LockUp(stiffness, mu, c / 2, straight);
        return force >= lockUp ? double.PositiveInfinity : force / (1 - (force / lockUp));
    }

    /// <summary>The bends with their angles nominal (0), least (-1) or most (1).</summary>
    private static BendOnWay[] Way(HandForceCase of, int which) =>
        [.. of.Bends.Select((b, i) => b with { Angle = i < of.AngleLimits.Count ? Pick(of.AngleLimits[i], which) : b.Angle * Pick(of.BendFactor, which) })];

    private static double Pick(Spread3 of, int which) => which switch { < 0 => of.Least, 0 => of.Nominal, _ => of.Most };

    private static BareWire? Strut(HandForceCase of, double compression) =>
        of is { Core: { } core, LongestBareWire: > 0 and var length }
            ? new(length, Buckling.Strut(core.BendingModulus, YieldOf(core), core.Section.Area, core.Bending.Least / core.BendingModulus, length, StrutEnds.PinnedPinned), compression)
            : null;

    /// <summary>The elastic limit stands for the yield strength; without a table, one that never governs a slender wire.</summary>
    private static double YieldOf(CoreProperties core) => core.Tensile is { } s ? s * core.ElasticShare : double.MaxValue / 1e100;

    private static CoreInConduit? Inside(HandForceCase of)
    {
        if (of is not { Core: { } core, Clearance: > 0 and var c } || (of.LongestStraight ?? of.ConduitLength?.Most) is not { } straight)
            return null;
        // The softest core in the widest bore gives way first.
        var ei = core.Bending.Least;
        var wide = (of.ClearanceLimits ?? Spread3.Exact(c)).Most / 2;
        return new(
            Buckling.Snaking(ei, core.WeightPerLength, wide),
            Buckling.Helix(ei, core.WeightPerLength, wide),
            Buckling.LockUp(ei, of.Friction.Most, wide, straight),
            straight);
    }

    /// <summary>
    /// Knob movement per newton at the device: core in the conduit with tension growing along it, bare wire, conduit,
    /// bracket: g [Lc/EA + 1/k_conduit] + Lf/EA + 1/k_bracket, x = mu Theta. Where along the conduit the bends lie is not
    /// known: spread evenly g = (e^x - 1)/x (nominal), all at the knob 1 (least), all at the device e^x (most).
    /// </summary>
    private static Spread3? Give(HandForceCase of, Spread3? conduit, string how, List<string> notCounted)
    {
        if (of is not { Core: { } core, ConduitLength: { } length })
        {
            notCounted.Add("stretch of the core (needs core diameter and conduit length)");
            return null;
        }

        if (conduit is null)
            notCounted.Add($"give of the conduit when {how} (needs its stiffness)");
        if (of.BracketStiffness is null)
            notCounted.Add("give of the anchor's bracket (needs its stiffness)");
        var theta = of.Bends.Sum(b => b.Angle);
        var free = of.Places[0].FreeLength;
        double At(double growth, double ea, double lc, double? kc, double? kb) =>
            (growth * ((lc / ea) + (kc is { } k ? 1 / k : 0))) + (free / ea) + (kb is { } b ? 1 / b : 0);
        return new(
            At(Friction.MeanGrowth(of.Friction.Nominal * theta * of.BendFactor.Nominal), core.Axial.Nominal, length.Nominal, conduit?.Nominal, of.BracketStiffness?.Nominal),
            At(1, core.Axial.Most, length.Least, conduit?.Most, of.BracketStiffness?.Most),
            At(Math.Exp(of.Friction.Most * theta * of.BendFactor.Most), core.Axial.Least, length.Most, conduit?.Least, of.BracketStiffness?.Least));
    }

    /// <summary>
    /// Stretch by the stiff core's own drag D = sum of 4 mu N: D x share x (Lc/EA + 1/k_conduit). Where along the conduit
    /// the bends lie is not known: evenly (nominal), all at the knob (least: none), all at the device (most: the drag of
    /// the first bend has then grown by all the others, e^x at the most).
    /// </summary>
    private static Spread3? OwnStretch(HandForceCase of, double[] contact, double[] most, Spread3? conduit)
    {
        if (contact.Length == 0 || of is not { Core: { } core, ConduitLength: { } length })
            return null;
        var theta = of.Bends.Sum(b => b.Angle);
        double At(double drag, double share, double ea, double lc, double? kc) => drag * share * ((lc / ea) + (kc is { } k ? 1 / k : 0));
        var x = of.Friction.Most * theta * of.BendFactor.Most;
        return new(
            At(4 * of.Friction.Nominal * contact.Sum(), Friction.MeanOwn(of.Friction.Nominal * theta * of.BendFactor.Nominal), core.Axial.Nominal, length.Nominal, conduit?.Nominal),
            0,
            At(4 * of.Friction.Most * most.Sum(), Math.Exp(x), core.Axial.Least, length.Most, conduit?.Least));
    }

    /// <summary>A core pushed beyond the helix load winds up and shortens by r^2 F L / (4 E I): knob travel lost in push. F: at the knob, where it is largest.</summary>
    private static Spread3 Slack(HandForceCase of, Spread3 push, List<string> notCounted)
    {
        if (Inside(of) is not { } inside)
        {
            notCounted.Add("winding of the pushed core inside the conduit (needs bore, core and conduit length)");
            return default;
        }

        var core = of.Core!;
        var clearance = of.ClearanceLimits ?? Spread3.Exact(of.Clearance!.Value);
        double At(double force, double ei, double c, double mu)
        {
            var helix = Buckling.Helix(ei, core.WeightPerLength, c / 2);
            // Jammed: the shortening at lock-up, and the finding on lock-up says the rest.
            var at = Math.Min(force, Buckling.LockUp(ei, of.Friction.Least, c / 2, inside.Straight));
            return c <= 0 || at <= helix ? 0
                // A band of friction that begins at nothing has no lock-up there: then r / mu, that of the friction which jams.
                : double.IsPositiveInfinity(at) ? c / (2 * mu)
                : inside.Straight * Buckling.HelixShortening(ei, at, c / 2);
        }

        var small = At(push.Least, core.Bending.Most, clearance.Least, of.Friction.Least);
        var middle = Math.Max(small, At(push.Nominal, core.Bending.Nominal, clearance.Nominal, of.Friction.Nominal));
        return new(middle, small, Math.Max(middle, At(push.Most, core.Bending.Least, clearance.Most, of.Friction.Most)));
    }
}
