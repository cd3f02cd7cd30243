using CsCheck;
using Throwright.Engine.HandForce;
using Throwright.Engine.Model;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.HandForce.Laws;

public sealed class HandForceLawsTests
{
    private static readonly Gen<HandForceCase> Cases = Gen.Select(Forces.Loads, Gen.Double[0, 0.3], Gen.Double[0, 1], Forces.Bends, Gen.Double[0, 6], Gen.Double[0, 6]).Select(
        (load, mu, share, bends, near, far) => Forces.Case(load, Forces.Around(mu, mu * share), bends, deg => Forces.Around(0.03 - (1e-4 * deg), 0.002), near, far));

    /// <summary>Every knob force of b is at least that of a, pulling and pushing, in every band.</summary>
    private static void IsNowhereLess(HandForceCase a, HandForceCase b)
    {
        HandForces x = HandForceSolver.Solve(a), y = HandForceSolver.Solve(b);
        foreach (var (p, q) in x.Places.Zip(y.Places))
        {
            foreach (var (f, g) in new[] { (p.KnobPull, q.KnobPull), (p.KnobPush, q.KnobPush) })
            {
                Assert.True(g.Nominal >= f.Nominal - 1e-9);
                Assert.True(g.Least >= f.Least - 1e-9);
                Assert.True(g.Most >= f.Most - 1e-9);
            }

            Assert.True(q.BackDrive <= p.BackDrive + 1e-9);
        }

        Assert.True(y.MostPull.Worst >= x.MostPull.Worst - 1e-9);
        Assert.True(y.CoreTension >= x.CoreTension - 1e-9);
    }

    [Fact]
    public void KnobForce_MoreTorque_IsNowhereLess() => Gen.Select(Cases, Gen.Double[0, 1]).Sample((of, more) =>
    {
        var t = of.Load.Torque!.Value;
        IsNowhereLess(of, of with { Load = of.Load with { Torque = t.At(t.Nominal.NewtonMetres + more) } });
    });

    [Fact]
    public void KnobForce_MoreFriction_IsNowhereLess() => Gen.Select(Cases, Gen.Double[0, 0.3]).Sample((of, more) =>
        IsNowhereLess(of, of with { Friction = new(of.Friction.Nominal + more, of.Friction.Least + more, of.Friction.Most + more) }));

    [Fact]
    public void KnobForce_OneBendMore_IsNowhereLess() => Gen.Select(Cases, Gen.Double[0.1, 2], Gen.Int[0, 5]).Sample((of, angle, where) =>
    {
        var bends = of.Bends.ToList();
        bends.Insert(Math.Min(where, bends.Count), new(angle, 0.1));
        IsNowhereLess(of, of with { Bends = [.. bends] });
    });

    [Fact]
    public void KnobForce_TighterBends_AreNowhereLess() => Gen.Select(Cases, Gen.Double[0.5, 1]).Sample((of, factor) =>
    {
        var stiff = of with { Core = Forces.Wire15, Clearance = 0.5e-3, ConduitLength = Spread3.Exact(1), BendsAreKnown = true };
        var tighter = stiff with { Bends = [.. stiff.Bends.Select(b => b with { Radius = b.Radius * factor })] };
        IsNowhereLess(of, stiff);
        IsNowhereLess(stiff, tighter);
    });

    [Fact]
    public void KnobForce_MoreDrag_IsNowhereLess() => Gen.Select(Cases, Gen.Double[0, 5], Gen.Double[0, 5]).Sample((of, near, far) =>
        IsNowhereLess(of, of with { KnobDrag = of.KnobDrag + near, DeviceDrag = of.DeviceDrag + far }));

    [Fact]
    public void PullAndPush_NoLoadOfItsOwn_AreEqual() => Cases.Sample(of =>
    {
        var forces = HandForceSolver.Solve(of with { Load = of.Load with { Bias = null, Detents = [] } });
        Assert.All(forces.Places, p => Assert.Equal(p.KnobPull, p.KnobPush));
        Assert.Equal(forces.MostPull, forces.MostPush);
        Assert.Equal(0, forces.SelfHolding.AtDevice);
    });

    [Fact]
    public void Bias_TowardTheOtherStop_ChangesPlacesOfPullAndPush() => Gen.Select(Gen.Double[0, 1], Gen.Double[0.1, 2], Forces.Bends, Gen.Double[0, 0.3]).Sample((torque, own, bends, mu) =>
    {
        HandForces Solve(DeviceStop toward) => HandForceSolver.Solve(Forces.Case(
            new() { Torque = Forces.Nm(torque), Bias = new() { Toward = toward, Torque = Forces.Nm(own) } }, Spread3.Exact(mu), bends));
        HandForces push = Solve(DeviceStop.Push), pull = Solve(DeviceStop.Pull);
        foreach (var (p, q) in push.Places.Zip(pull.Places))
        {
            Assert.Equal(p.KnobPull, q.KnobPush);
            Assert.Equal(p.KnobPush, q.KnobPull);
        }

        // A load toward the push stop has to be pulled against.
        Assert.All(push.Places, p => Assert.True(p.KnobPull.Nominal > p.KnobPush.Nominal));
        Assert.True(push.SelfHolding.TowardPush || push.SelfHolding.AtDevice == 0);
        Assert.False(pull.SelfHolding.TowardPush && pull.SelfHolding.AtDevice > 0);
    });

    [Fact]
    public void KnobForce_LengthsAndTorquesGrown_IsTheSame() => Gen.Select(Cases, Gen.Double[0.2, 5]).Sample((of, k) =>
    {
        static Toleranced<Torque> Times(Toleranced<Torque> t, double k) => new(new(t.Nominal.NewtonMetres * k), t.Minus * k, t.Plus * k);
        var grown = of with
        {
            Places = [.. of.Places.Select(p => p with { MomentArm = new(k * p.MomentArm.Nominal, k * p.MomentArm.Least, k * p.MomentArm.Most) })],
            Load = of.Load with
            {
                Torque = Times(of.Load.Torque!.Value, k),
                Bias = of.Load.Bias is { } b ? b with { Torque = Times(b.Torque, k), Rate = new(b.Rate.NewtonMetresPerRadian * k) } : null,
                Detents = [.. of.Load.Detents.Select(d => d with { Torque = new(d.Torque.NewtonMetres * k) })],
            },
        };
        foreach (var (p, q) in HandForceSolver.Solve(of).Places.Zip(HandForceSolver.Solve(grown).Places))
        {
            Assert.Equal(p.KnobPull.Most, q.KnobPull.Most, 1e-9 * (1 + Math.Abs(p.KnobPull.Most)));
            Assert.Equal(p.KnobPush.Least, q.KnobPush.Least, 1e-9 * (1 + Math.Abs(p.KnobPush.Least)));
        }
    });

    [Fact]
    public void Forces_NothingKnownButTheLeast_AreNumbers()
    {
        // No torque, no friction, no bends, no drags.
        var forces = HandForceSolver.Solve(Forces.Case(new() { Torque = Forces.Nm(0) }));
        Assert.Equal(0, forces.MostPull.Worst);
        Assert.Equal(0, forces.CoreCompression);
        Assert.Null(forces.PullGive);
        Assert.Equal(default, forces.PushSlack);
    }

    [Fact]
    public void Torque_FromATable_IsInStraightLinesAndHeldBeyondItsEnds()
    {
        var load = new DeviceLoad { TorqueTable = [new(Angle.FromDegrees(-20), Forces.Nm(1, 0.1)), new(Angle.FromDegrees(30), Forces.Nm(2, 0.4))] };
        Spread3 At(double deg) => DeviceTorque.At(load, deg * Forces.Degree, 45 * Forces.Degree, -45 * Forces.Degree).Resist;
        Assert.Equal(1, At(-45).Nominal, 1e-12);
        Assert.Equal(1, At(-20).Nominal, 1e-12);
        Assert.Equal(1.5, At(5).Nominal, 1e-12);
        Assert.Equal(1.25, At(5).Least, 1e-12);
        Assert.Equal(1.75, At(5).Most, 1e-12);
        Assert.Equal(2.4, At(44).Most, 1e-12);
    }

    [Fact]
    public void Spring_AwayFromItsStop_PullsHarder()
    {
        var load = new DeviceLoad { Torque = Forces.Nm(0), Bias = new() { Toward = DeviceStop.Pull, Torque = Forces.Nm(0.5), Rate = new(0.2) } };
        Spread3 At(double deg) => DeviceTorque.At(load, deg * Forces.Degree, 45 * Forces.Degree, -45 * Forces.Degree).TowardPush;
        Assert.Equal(-0.5, At(-45).Nominal, 1e-12);
        Assert.Equal(-0.5 - (0.2 * Math.PI / 2), At(45).Nominal, 1e-12);
    }

    [Theory]
    [InlineData(45, -45)]
    [InlineData(-45, 45)]
    public void Detent_BesideItsPlace_DrivesTowardIt_WhicheverStopIsPush(double push, double pull)
    {
        var load = new DeviceLoad { Detents = [new(Angle.FromDegrees(10), new(0.4), Angle.FromDegrees(6))] };
        double At(double deg) => DeviceTorque.At(load, deg * Forces.Degree, push * Forces.Degree, pull * Forces.Degree).TowardPush.Nominal;
        var up = push > 0 ? 1 : -1;
        Assert.Equal(-0.4 * up, At(13), 1e-12);
        Assert.Equal(0.4 * up, At(7), 1e-12);
        Assert.Equal(0, At(10), 1e-12);
        Assert.Equal(0, At(17));
        // It is no load that has to be held.
        Assert.Equal(0, HandForceSolver.Solve(Forces.Case(load with { Torque = Forces.Nm(0) })).SelfHolding.AtDevice);
    }
}
