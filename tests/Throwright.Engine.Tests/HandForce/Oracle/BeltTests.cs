using CsCheck;
using Throwright.Engine.HandForce;
using Throwright.Engine.Model;

namespace Throwright.Engine.Tests.HandForce.Oracle;

/// <summary>Rope friction and stretch against a core cut into many short pieces.</summary>
public sealed class BeltTests
{
    [Fact]
    public void AtKnob_AnyBends_IsWhatManyShortPiecesGive() =>
        Gen.Select(Gen.Double[-200, 200], Gen.Double[0, 0.5], Forces.Bends, Gen.Double[0, 10], Gen.Double[0, 10]).Sample(
            (load, mu, bends, far, near) =>
            {
                var (force, _) = Belt.Draw(load + far, mu, bends.SelectMany(b => Belt.Bend(b.Angle, b.Radius, pieces: 4000)), 1);
                Assert.Equal(force + near, Friction.AtKnob(load, mu, bends, [], far, near), 1e-4 + (1e-6 * Math.Abs(force)));
            },
            iter: 60);

    [Fact]
    public void AtKnob_DeviceDrivesPartOfTheWay_TurnsFromDrivingToResisting()
    {
        // 5 N drive the core; after two stiff bends (4 mu N = 6 N each) the hand has to draw.
        BendOnWay[] bends = [new(1, 0.1), new(1, 0.1)];
        var force = -5 * Math.Exp(-0.15);
        force += 6;
        Assert.True(force > 0);
        force = (force * Math.Exp(0.15)) + 6;
        Assert.Equal(force, Friction.AtKnob(-5, 0.15, bends, [10, 10], 0, 0), 1e-12);
    }

    [Fact]
    public void MeanGrowth_IsTheMeanTensionOfManyShortPieces() => Gen.Select(Gen.Double[0, 0.4], Gen.Double[0.2, 8]).Sample(
        (mu, angle) =>
        {
            var (_, stretch) = Belt.Draw(1, mu, Belt.Bend(angle, 1 / angle, pieces: 5000), 1);
            Assert.Equal(stretch, Friction.MeanGrowth(mu * angle), 1e-6 * stretch);
            // A drag of 1 spread evenly over the bend, no load.
            var (_, own) = Belt.Draw(0, mu, Belt.Bend(angle, 1 / angle, 1, 5000), 1);
            Assert.Equal(own, Friction.MeanOwn(mu * angle), 1e-5 * own);
        },
        iter: 50);

    [Fact]
    public void DeadBand_IsTheDifferenceOfPullingAndLettingBack() => Gen.Select(Gen.Double[0.01, 0.4], Gen.Double[0.2, 8], Gen.Double[0.05, 0.3]).Sample(
        (mu, angle, radius) =>
        {
            var (_, pull) = Belt.Draw(50, mu, Belt.Bend(angle, radius, pieces: 5000), 341059);
            var (_, back) = Belt.Draw(-50, mu, Belt.Bend(angle, radius, pieces: 5000), 341059);
            Assert.Equal(pull + back, Friction.DeadBand(50, radius, 341059, mu, angle), 1e-5 * pull);
        },
        iter: 30);

    [Fact]
    public void WithWeightToVertical_IsWhatManyShortPiecesGive() => Gen.Select(Gen.Double[0, 0.4], Gen.Double[0.05, 0.4], Gen.Double[4, 60], Gen.Double[0, 8]).Sample(
        (mu, radius, force, weight) => Assert.Equal(Belt.UpToVertical(mu, radius, force, weight, 5000), Friction.WithWeightToVertical(mu, radius, force, weight), 1e-5),
        iter: 30);

    [Fact]
    public void Give_CoreConduitAndBracket_IsTheirStretchPiecewise()
    {
        var load = new DeviceLoad { Torque = Forces.Nm(0.6) };
        BendOnWay[] bends = [new(1.2, 0.15), new(0.8, 0.15)];
        var of = Forces.Case(load, Spread3.Exact(0.15), bends) with
        {
            Core = Forces.Wire15,
            Clearance = 0.5e-3,
            ConduitLength = Spread3.Exact(0.30),
            BendsAreKnown = true,
            ConduitPullStiffness = Spread3.Exact(100e3),
            BracketStiffness = Spread3.Exact(50e3),
        };
        var forces = HandForceSolver.Solve(of);
        // The conduit is bent all along: 2 rad x 150 mm = 300 mm. Conduit of stiffness 100 N/mm: as if E A = 100 N/mm x 300 mm.
        var ea = 193e9 * Math.PI / 4 * 1.5e-3 * 1.5e-3;
        var pieces = Belt.Bend(2, 0.15).ToList();
        var core = Belt.Draw(20, 0.15, pieces, ea).Stretch;
        var conduit = Belt.Draw(20, 0.15, pieces, 100e3 * 0.30).Stretch;
        var free = 20 * of.Places[0].FreeLength / ea;
        Assert.Equal((core + conduit + free + (20 / 50e3)) / 20, forces.PullGive!.Value.Nominal, 1e-10);
        Assert.Contains(forces.NotCounted, n => n.StartsWith("give of the conduit when drawn out", StringComparison.Ordinal));
        // Its own drag, 2 x 4 mu N spread evenly over the same 300 mm.
        var drag = 2 * 4 * 0.15 * Friction.StiffContact(Forces.Wire15.BendingStiffness, 0.15, 0.5e-3);
        var own = Belt.Bend(2, 0.15, drag).ToList();
        Assert.Equal(Belt.Draw(0, 0.15, own, ea).Stretch + Belt.Draw(0, 0.15, own, 100e3 * 0.30).Stretch, forces.OwnPull!.Value.Nominal, 1e-10);
        // All of it at the device: grown by all bends before the rest of the way, which is then straight. No place of the
        // bends gives more; spread over the way it is less.
        var spread = Belt.Draw(drag, 0.15, pieces, ea).Stretch + Belt.Draw(drag, 0.15, pieces, 100e3 * 0.30).Stretch;
        var first = drag * Math.Exp(0.15 * 2) * ((0.30 / ea) + (1 / 100e3));
        Assert.True(spread < first);
        Assert.Equal(first, forces.OwnPull!.Value.Most, 1e-12);
        Assert.Equal(0, forces.OwnPull!.Value.Least);
    }
}
