using Throwright.Engine.Cushion;

namespace Throwright.Engine.Tests.Cushion.Oracle;

/// <summary>
/// The knob's place worked step by step for one aircraft: pin and anchor as points, forces by virtual work, stops of the
/// knob as it is drawn out and pushed home. Written apart from the program's formula; reads the case's numbers only.
/// </summary>
internal static class PlainLadder
{
    /// <summary>Cushion in, out, tip at the pull stop, tip at the push stop, for one set of inputs and one pair of temperatures against rigging.</summary>
    public static double[] At(LadderCase of, double[] x, double cable, double lever)
    {
        double Get(LadderInput input) => x[(int)input];
        double[] anchor = [of.Anchor.X, of.Anchor.Y, of.Anchor.Z];
        foreach (var (axis, by) in new[] { (of.AnchorAxes.X, Get(LadderInput.AnchorX)), (of.AnchorAxes.Y, Get(LadderInput.AnchorY)), (of.AnchorAxes.Z, Get(LadderInput.AnchorZ)) })
        {
            anchor[0] += axis.X * by;
            anchor[1] += axis.Y * by;
            anchor[2] += axis.Z * by;
        }

        // The swivel's plane may lie off along the axis.
        (double Free, double Arm) Lever(double phi)
        {
            double[] pin = [Get(LadderInput.Radius) * Math.Cos(phi), Get(LadderInput.Radius) * Math.Sin(phi), Get(LadderInput.AlongAxis)];
            double[] wire = [pin[0] - anchor[0], pin[1] - anchor[1], pin[2] - anchor[2]];
            var free = Math.Sqrt(wire.Sum(c => c * c));
            // Speed of the pin per radian is square to the arm; its part along the wire is the moment arm.
            double[] speed = [-pin[1], pin[0], 0];
            return (free, ((wire[0] * speed[0]) + (wire[1] * speed[1])) / free);
        }

        var up = of[LadderInput.PushAngle].Nominal > of[LadderInput.PullAngle].Nominal ? 1 : -1;
        var (freePush, armPush) = Lever(Get(LadderInput.PushAngle));
        var (freePull, armPull) = Lever(Get(LadderInput.PullAngle));
        double Load(double torque, double own, double opposes, double arm)
        {
            var against = (torque * Get(LadderInput.TorqueFactor)) + own + (opposes * Get(LadderInput.OwnTorque));
            return torque == 0 && own == 0 && opposes == 0 ? of.DeviceDrag : Math.Max(0, (against / (up * arm)) + of.DeviceDrag);
        }

        var shortPush = (Get(LadderInput.PushGive) * Load(of.TorqueAtPush, of.BiasAtPush, of.OwnTorqueOpposes.AtPush, armPush)) + Get(LadderInput.PushSlack) + Get(LadderInput.OwnPush);
        var longPull = (Get(LadderInput.PullGive) * Load(of.TorqueAtPull, of.BiasAtPull, of.OwnTorqueOpposes.AtPull, armPull)) + Get(LadderInput.OwnPull);
        var lost = (Get(LadderInput.Clearance) * Get(LadderInput.BendTotal)) + Get(LadderInput.PinPlay) + Get(LadderInput.KnobPlay);

        // Wire such that, pushing without load, the knob stands at wire - free.
        double setting = Get(LadderInput.Setting), stroke = Get(LadderInput.Stroke);
        double wireLength = of.SettingKind switch
        {
            SettingKind.WireLength => setting,
            SettingKind.AtPushStop => setting + freePush,
            SettingKind.AtPullStop => setting + freePull - lost,
            // Gaps equal, then off by the error of setting.
            _ => setting + 0.5 * (stroke - (freePush - freePull) - lost - longPull - shortPush) + freePush + shortPush,
        };
        double pushed = wireLength - freePush - shortPush, pulled = wireLength - freePull + lost + longPull;
        if (of.Heat is { } heat)
        {
            double Out(double free) => (heat.Wire * ((Get(LadderInput.ConduitLength) * cable) + (free * lever)))
                - (heat.Conduit * Get(LadderInput.ConduitLength) * cable) - (heat.Bracket * free * lever);
            pushed += Out(freePush);
            pulled += Out(freePull);
        }

        var hardware = Get(LadderInput.Tip) + (Get(LadderInput.SwivelLength) / 2);
        // The bracket carries anchor and pivot apart; tip and swivel are taken as they are.
        var apart = 1 + ((of.Heat?.Bracket ?? 0) * lever);
        return [pushed, stroke - pulled, (apart * freePull) - hardware, (apart * freePush) - hardware];
    }

    /// <summary>Pairs of temperatures that can occur: each end by itself, and rigging.</summary>
    public static IEnumerable<(double Cable, double Lever)> Temperatures(LadderCase of) => of.Heat is { } h
        ? from c in (double[])[h.CableCold, 0, h.CableHot] from l in (double[])[h.LeverCold, 0, h.LeverHot] select (c, l)
        : [(0, 0)];
}
