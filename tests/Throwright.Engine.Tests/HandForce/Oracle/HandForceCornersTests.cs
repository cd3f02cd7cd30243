using CsCheck;
using Throwright.Engine.HandForce;
using Throwright.Engine.Model;

namespace Throwright.Engine.Tests.HandForce.Oracle;

/// <summary>Least and most hand force against every combination of limits, worked by hand rules.</summary>
public sealed class HandForceCornersTests
{
    private sealed record Draw(double Torque, double Bias, double Mu, double Bends, double Arm);

    /// <summary>Force at the knob for one set of values; motion toward the pull stop lowers the arm angle here.</summary>
    private static double Knob(HandForceCase of, double angle, bool pulling, Draw d)
    {
        // Torque against the motion: friction always, the device's own with its sign.
        var own = 0.0;
        if (of.Load.Bias is { } bias)
        {
            var home = bias.Toward == DeviceStop.Push ? 45 * Forces.Degree : -45 * Forces.Degree;
            own = (d.Bias + (bias.Rate.NewtonMetresPerRadian * Math.Abs(angle - home))) * (bias.Toward == DeviceStop.Push ? 1 : -1);
        }

        foreach (var detent in of.Load.Detents)
        {
            // Above its place it drives down, toward the pull stop.
            var x = angle - detent.At.Radians;
            if (Math.Abs(x) < detent.Within.Radians)
                own -= detent.Torque.NewtonMetres * Math.Sin(Math.PI * x / detent.Within.Radians);
        }

        var force = (d.Torque + (pulling ? own : -own)) / d.Arm;
        force += of.DeviceDrag;
        foreach (var bend in of.Bends)
            force *= Math.Exp(Math.Sign(force) * d.Mu * bend.Angle * d.Bends);
        return force + of.KnobDrag;
    }

    private static double[] Ends(double least, double most) => least == most ? [least] : [least, most, least + (0.37 * (most - least))];

    [Fact]
    public void KnobForce_EveryCombinationOfLimits_LiesWithinLeastAndMost_AndReachesBoth() =>
        Gen.Select(Forces.Loads, Gen.Double[0, 0.4], Gen.Double[0, 1], Forces.Bends, Gen.Double[0, 0.3], Gen.Double[0, 0.5], Gen.Double[0, 6], Gen.Double[0, 6]).Sample(
            (load, mu, muShare, bends, bendShare, armShare, near, far) =>
            {
                var of = Forces.Case(load, Forces.Around(mu, mu * muShare), bends, deg => Forces.Around(0.03 * Math.Cos(deg * 0.01), 0.03 * armShare * 0.5), near, far) with
                {
                    BendFactor = Forces.Around(1, bendShare),
                };
                var forces = HandForceSolver.Solve(of);
                for (var i = 0; i < of.Places.Count; i += 8)
                {
                    var (place, at) = (of.Places[i], forces.Places[i]);
                    foreach (var pulling in (bool[])[true, false])
                    {
                        var band = pulling ? at.KnobPull : at.KnobPush;
                        var all = (from t in Ends(load.Torque!.Value.Least, load.Torque.Value.Most)
                                   from g in load.Bias is { } b ? Ends(b.Torque.Least, b.Torque.Most) : [0]
                                   from m in Ends(of.Friction.Least, of.Friction.Most)
                                   from x in Ends(of.BendFactor.Least, of.BendFactor.Most)
                                   from a in Ends(place.MomentArm.Least, place.MomentArm.Most)
                                   select Knob(of, place.Angle, pulling, new(t, g, m, x, a))).ToList();
                        Assert.Equal(all.Min(), band.Least, 1e-9 * (1 + Math.Abs(band.Least)));
                        Assert.Equal(all.Max(), band.Most, 1e-9 * (1 + Math.Abs(band.Most)));
                        var nominal = Knob(of, place.Angle, pulling, new(load.Torque.Value.Nominal.NewtonMetres, load.Bias?.Torque.Nominal.NewtonMetres ?? 0, mu, 1, place.MomentArm.Nominal));
                        Assert.Equal(nominal, band.Nominal, 1e-9 * (1 + Math.Abs(nominal)));
                    }
                }
            },
            iter: 60);

    [Fact]
    public void BackDrive_LeastFrictionAndMostLoad_IsTheWorstOfAll() =>
        Gen.Select(Gen.Double[0, 0.5], Gen.Double[0.1, 2], Gen.Double[0, 0.5], Gen.Bool, Gen.Double[0, 0.3], Forces.Bends, Gen.Double[0, 3]).Sample(
            (torque, own, share, push, mu, bends, drag) =>
            {
                var load = new DeviceLoad
                {
                    Torque = Forces.Nm(torque, torque * share),
                    Bias = new() { Toward = push ? DeviceStop.Push : DeviceStop.Pull, Torque = Forces.Nm(own, own * share) },
                };
                var of = Forces.Case(load, Forces.Around(mu, mu * share), bends, _ => Forces.Around(0.03, 0.004), drag, drag);
                var hold = HandForceSolver.Solve(of).SelfHolding;
                // Hand off: what the load sends to the knob is least with most friction.
                var drive = ((own * (1 + share)) - (torque * (1 - share))) / 0.026;
                Assert.Equal(Math.Max(0, drive), hold.AtDevice, 1e-9);
                if (drive <= drag)
                    return;
                var atKnob = drive - drag;
                foreach (var bend in bends)
                    atKnob *= Math.Exp(-mu * (1 - share) * bend.Angle);
                Assert.Equal(atKnob - drag, hold.Drive, 1e-9);
                Assert.Equal(push, hold.TowardPush);
            });
}
