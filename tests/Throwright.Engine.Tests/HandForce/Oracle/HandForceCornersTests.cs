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
    public void KnobForce_StiffCoreWithLimitsOfItsOwn_LiesWithinLeastAndMost_AndReachesBoth() =>
        Gen.Select(Gen.Double[0.01, 0.3], Gen.Double[0, 0.5], Gen.Double[0.1, 2].Array[2], Gen.Double[0.06, 0.3].Array[2], Gen.Double[0.1e-3, 0.6e-3], Gen.Double[0, 1]).Sample(
            (mu, share, angles, radii, clearance, torque) =>
            {
                var stiff = Forces.Wire15.BendingStiffness;
                Spread3 Some(double value) => Forces.Around(value, 0.4 * share * value);
                var of = Forces.Case(new() { Torque = Forces.Nm(torque, torque * share) }, Some(mu), [.. angles.Zip(radii, (a, r) => new BendOnWay(a, r))]) with
                {
                    BendsAreKnown = true,
                    Core = Forces.Wire15 with { BendingLimits = Some(stiff) },
                    Clearance = clearance,
                    ClearanceLimits = Some(clearance),
                    AngleLimits = [.. angles.Select(Some)],
                    RadiusLimits = [.. radii.Select(Some)],
                };
                var at = HandForceSolver.Solve(of).Places[32];
                var all = from t in Ends(torque * (1 - share), torque * (1 + share))
                          from m in Ends(Some(mu).Least, Some(mu).Most)
                          from ei in Ends(Some(stiff).Least, Some(stiff).Most)
                          from c in Ends(Some(clearance).Least, Some(clearance).Most)
                          from a in Ends(0, 1)
                          from r in Ends(0, 1)
                          select Along(t, m, ei, c, a, r);
                double Along(double t, double m, double ei, double c, double a, double r)
                {
                    var force = t / 0.03;
                    for (var i = 0; i < 2; i++)
                    {
                        double angle = Some(angles[i]).Least + (a * (Some(angles[i]).Most - Some(angles[i]).Least)), radius = Some(radii[i]).Least + (r * (Some(radii[i]).Most - Some(radii[i]).Least));
                        force = (force * Math.Exp(m * angle)) + (4 * m * ei / (2 * radius * Math.Sqrt(6 * c * radius)));
                    }

                    return force;
                }

                Assert.Equal(all.Min(), at.KnobPull.Least, 1e-9 * (1 + at.KnobPull.Least));
                Assert.Equal(all.Max(), at.KnobPull.Most, 1e-9 * (1 + at.KnobPull.Most));
                Assert.Equal(Along(torque, mu, stiff, clearance, share == 0 ? 0 : 0.5, share == 0 ? 0 : 0.5), at.KnobPull.Nominal, 1e-9 * (1 + at.KnobPull.Nominal));
            },
            iter: 60);

    [Fact]
    public void KnobPush_CoreWoundIntoAHelix_IsWhatBringsTheForceOut()
    {
        // 7x7 strand of 1.5 mm, 1 m straight, bore 0.5 mm wider: 20 N have to come out. 1/F_out = 1/F_in + mu r L / (4 E I).
        var core = Forces.Wire15 with { WireDiameter = 1.5e-3 / 9, Section = CoreSection.Of(CoreKind.Strand7x7, 1.5e-3) };
        var of = Forces.Case(new() { Torque = Forces.Nm(0.6) }, Spread3.Exact(0.15)) with { Core = core, Clearance = 0.5e-3, ConduitLength = Spread3.Exact(1) };
        var at = HandForceSolver.Solve(of).Places[32];
        Assert.Equal(20, at.WirePush.Nominal, 1e-12);
        Assert.Equal(20, at.KnobPull.Nominal, 1e-12);
        Assert.Equal(1 / ((1 / 20.0) - (0.15 * 0.25e-3 * 1 / (4 * core.BendingStiffness))), at.KnobPush.Nominal, 1e-6);
        // Asked for more than 38.207 N it jams: nothing at the knob is enough.
        var jammed = HandForceSolver.Solve(of with { Load = new() { Torque = Forces.Nm(0.03 * 38.3) } });
        Assert.Equal(double.PositiveInfinity, jammed.MostPush.Nominal);
        Assert.True(double.IsFinite(jammed.PushSlack.Most));
        Assert.True(double.IsFinite(HandForceSolver.Solve(of with { Load = new() { Torque = Forces.Nm(2) }, Friction = new(0.1, 0, 0.2) }).PushSlack.Most));
    }

    [Fact]
    public void Load_OnlyEstimated_CountsItsFactorOnItsMost()
    {
        var load = new DeviceLoad { Torque = Forces.Nm(0.5, 0.1), Bias = new() { Toward = DeviceStop.Push, Torque = Forces.Nm(0.3, 0.05), Rate = new(0.1) } };
        HandForces measured = HandForceSolver.Solve(Forces.Case(load)), estimate = HandForceSolver.Solve(Forces.Case(load) with { EstimateFactor = 1.25 });
        foreach (var (p, q) in measured.Places.Zip(estimate.Places))
        {
            Assert.Equal(p.KnobPull.Nominal, q.KnobPull.Nominal);
            // 30 mm arm: resisting 0.6 and driving 0.35 and the spring, each by a quarter more.
            Assert.Equal(1.25 * p.WirePull.Most, q.WirePull.Most, 1e-9);
            Assert.True(q.WirePush.Least <= p.WirePush.Least);
        }
    }

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
