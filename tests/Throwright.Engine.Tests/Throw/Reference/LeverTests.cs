using Throwright.Engine.Model;
using Throwright.Engine.Throw;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Tests.Throw.Reference;

/// <summary>Worked figures of docs/theory/throw.md.</summary>
public sealed class LeverTests
{
    private static readonly LeverEnd Spatial = Levers.Placed(new(10, 20, 30), new(1, 2, 2), new(40, 20, 30), new(-60, 90, -20), new(0.8, -0.6, 0), 0, 90);

    // Numerical: lever in space worked out by rotating the pin's coordinates, moment arm by central difference (N).
    [Theory]
    [Trait("Check", "K1")]
    [InlineData(0, 131.909060, -18.194353, 22.34979)]
    [InlineData(30, 120.266793, -25.596932, 20.56056)]
    [InlineData(60, 106.033382, -27.652148, 21.07475)]
    [InlineData(90, 92.736185, -21.566555, 24.07895)]
    public void Lever_InSpace_GivesFreeWireMomentArmAndSwing(double angle, double length, double arm, double swing)
    {
        var sweep = Levers.Sweep(Spatial);
        var phi = angle * Levers.Degree;
        Assert.Equal(28.284271e-3, sweep.Case.Radius, 1e-9);
        Assert.Equal(length / 1000, sweep.LengthAt(phi), 1e-6 * length / 1000);
        Assert.Equal(arm / 1000, sweep.MomentArmAt(phi), 1e-6 * Math.Abs(arm) / 1000);
        Assert.Equal(swing, sweep.PlaceAt(phi).Swing / Levers.Degree, 1e-5);
    }

    // Numerical: the same lever (N).
    [Fact]
    [Trait("Check", "K1b")]
    public void Lever_InSpace_HasItsDeadCentresHalfATurnApart()
    {
        var around = Levers.Sweep(Spatial with { From = Levers.Degrees(0), To = Levers.Degrees(359) });
        Assert.Equal(2, around.DeadCentresInside.Count);
        Assert.Equal(129.805571, around.DeadCentresInside[0] / Levers.Degree, 1e-6);
        Assert.Equal(309.805571, around.DeadCentresInside[1] / Levers.Degree, 1e-6);
        Assert.Equal(39.805571, Levers.Sweep(Spatial).ToDeadCentre / Levers.Degree, 1e-6);
    }

    // Derived in docs/theory/throw.md: plane geometry (D). Arms at the pull and at the push stop.
    [Theory]
    [Trait("Check", "K2")]
    [InlineData(AnchorRule.SquareAtMid, 42.256004, 6.36369, 18.73124, 22.69142)]
    [InlineData(AnchorRule.Chord, 42.426407, 5.08906, 21.21320, 21.21320)]
    [InlineData(AnchorRule.HalfSagitta, 42.383601, 3.19169, 19.99922, 21.96766)]
    public void BenchRule_EachOfThree_GivesThrowSwingAndEndArms(AnchorRule rule, double wireThrow, double swing, double armAtPull, double armAtPush)
    {
        var sweep = Levers.Sweep(Levers.Bench(30, 100, 45, rule));
        Assert.Equal(wireThrow / 1000, sweep.Throw, 1e-9);
        Assert.Equal(swing, sweep.MostSwing / Levers.Degree, 1e-5);
        Assert.Equal(armAtPull / 1000, sweep.AtPull.MomentArm, 1e-8);
        Assert.Equal(armAtPush / 1000, sweep.AtPush.MomentArm, 1e-8);
        Assert.True(sweep.PushTurnsUp);
    }

    // Derived in docs/theory/throw.md (D).
    [Fact]
    [Trait("Check", "K2")]
    public void SquareRule_AtItsThreePlaces_GivesTheFreeWire()
    {
        var sweep = Levers.Sweep(Levers.Bench(30, 100, 45, AnchorRule.SquareAtMid));
        Assert.Equal(79.275262e-3, sweep.AtPull.Length, 1e-9);
        Assert.Equal(100e-3, sweep.AtMid.Length, 1e-12);
        Assert.Equal(121.531265e-3, sweep.AtPush.Length, 1e-9);
    }

    // Derived in docs/theory/throw.md (D); the last row is the limit of a far anchor, 60 sin 45 deg.
    [Theory]
    [Trait("Check", "K3")]
    [InlineData(30, 300, 45, 42.408129)]
    [InlineData(25, 75, 40, 32.037465)]
    [InlineData(30, 100, 30, 29.975242)]
    [InlineData(30, 1e6, 45, 42.426407)]
    public void SquareRule_OtherSizes_GivesTheThrow(double radius, double distance, double half, double wireThrow)
    {
        var sweep = Levers.Sweep(Levers.Bench(radius, distance, half, AnchorRule.SquareAtMid));
        Assert.Equal(wireThrow / 1000, sweep.Throw, 1e-9);
        Assert.Equal(wireThrow / 1000, BenchRules.SquareThrow(radius / 1000, half * Levers.Degree, distance / 1000), 1e-9);
    }

    // Derived in docs/theory/throw.md: wire on the line through both end places (D).
    [Fact]
    [Trait("Check", "K2")]
    public void ChordRule_AnyDistanceOutsideTheChord_IsExact()
    {
        for (var distance = 22.0; distance < 400; distance *= 1.7)
        {
            var sweep = Levers.Sweep(Levers.Bench(30, distance, 45, AnchorRule.Chord));
            Assert.Equal(BenchRules.ChordThrow(0.030, 45 * Levers.Degree), sweep.Throw, 1e-14);
            Assert.Equal(sweep.AtPull.MomentArm, sweep.AtPush.MomentArm, 1e-14);
        }
    }

    // Derived in docs/theory/throw.md from beam theory (D): clamped at the tip, turning freely at the swivel.
    [Fact]
    [Trait("Check", "K7")]
    public void BareWire_AtAFixedTip_IsBentByItsOffset()
    {
        var bent = WireBending.At(1.5e-3, 193e9, 0.100, 8.787e-3);
        Assert.Equal(381.6e6, bent.Stress, 381.6e3);
        // 3 E I delta / s^3 with E I = 47 961.44 N mm^2.
        Assert.Equal(3 * 47961.44 * 8.787 / 1e6, bent.SideForce, 1e-4);
    }

    /// <summary>
    /// Oracle: E I w'' = Q (s - x) - F (delta - w), shot from the mouth (w = w' = 0) with two trial side forces; linear, so
    /// the one that meets delta lies on their line. F &gt; 0 pulls.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(5)]
    [InlineData(50)]
    [InlineData(200)]
    [InlineData(-20)]
    [InlineData(-40)]
    [InlineData(-70)]
    [InlineData(-90)]
    public void BareWire_PulledOrPushed_IsBentAsTheShotWire(double force)
    {
        const double s = 0.100, d = 1.5e-3, e = 193e9, delta = 8.787e-3, stiffness = 47.96144e-3;
        double none = Shoot(0).End, one = Shoot(1).End;
        var side = (delta - none) / (one - none);
        var most = Math.Max(Shoot(side).Most, 3 * stiffness * delta / (s * s));
        var bent = WireBending.At(d, e, s, delta, pull: force, push: -force);
        // Less bending than without force does not count.
        Assert.Equal(e * most * d / (2 * stiffness), bent.Stress, 1e-4 * bent.Stress);
        if (force >= 0)
            Assert.Equal(side, bent.SideForce, 1e-4 * bent.SideForce);

        (double End, double Most) Shoot(double q)
        {
            const int n = 20_000;
            double h = s / n, w = 0, slope = 0, most = 0;
            double Moment(double x, double at) => (q * (s - x)) - (force * (delta - at));
            for (var i = 0; i < n; i++)
            {
                var x = i * h;
                most = Math.Max(most, Math.Abs(Moment(x, w)));
                // Midpoint rule.
                double half = slope + (0.5 * h * Moment(x, w) / stiffness), middle = w + (0.5 * h * slope);
                slope += h * Moment(x + (0.5 * h), middle) / stiffness;
                w += h * half;
            }

            return (w, most);
        }
    }

    [Fact]
    public void BareWire_PushedBeyondTanUEqualsU_HasBuckled()
    {
        // One end held, one turning: (4.4934)^2 E I / s^2, as tabulated in any text of strength of materials.
        var critical = 20.1907 * 47961.44 / 1e4;
        Assert.True(double.IsFinite(WireBending.At(1.5e-3, 193e9, 0.100, 8.787e-3, push: 0.999 * critical).Stress));
        Assert.Equal(double.PositiveInfinity, WireBending.At(1.5e-3, 193e9, 0.100, 0, push: 1.001 * critical).Stress);
    }

    [Fact]
    public void Sweep_AnchorOnTheLeversAxis_HasNoThrow() =>
        Assert.Null(SweepSolver.Solve(new(0.03, -0.5, 0.5, new Vector3(0, 0, 0.1))));

    [Fact]
    public void Sweep_WholeTurn_PassesBothDeadCentres() =>
        Assert.Equal(2, SweepSolver.Solve(new(0.03, 0.1, 0.1 + (2 * Math.PI), new Vector3(0.02, -0.1, 0)))!.DeadCentresInside.Count);
}
