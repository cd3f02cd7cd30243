using Throwright.Engine.HandForce;

namespace Throwright.Engine.Tests.HandForce.Reference;

/// <summary>Rope friction and the stiff core: published exercises and worked figures of docs/theory/hand-force.md.</summary>
public sealed class FrictionTests
{
    private const double Degree = Math.PI / 180;

    // Public engineering-mechanics exercise "rope friction" (R): 100 kg lowered over three quarters of a turn, solution 382.26 N.
    [Fact]
    [Trait("Check", "F1")]
    public void AtKnob_LoadLoweredOverABeam_IsHeldBackByThePublishedForce()
    {
        var force = Friction.AtKnob(-100 * 9.81, 0.2, [new(1.5 * Math.PI, 0.1)], [], 0, 0);
        Assert.Equal(-382.26, force, 0.005);
    }

    // Table of e^(mu Theta), derived (D), four places.
    [Theory]
    [Trait("Check", "F2")]
    [InlineData(0.05, 1.0817, 1.1701, 1.2657, 1.3691)]
    [InlineData(0.10, 1.1701, 1.3691, 1.6020, 1.8745)]
    [InlineData(0.15, 1.2657, 1.6020, 2.0276, 2.5663)]
    [InlineData(0.20, 1.3691, 1.8745, 2.5663, 3.5136)]
    public void AtKnob_UnitLoad_GrowsAsTabulated(double mu, params double[] byQuarterTurn)
    {
        for (var i = 0; i < 4; i++)
        {
            Assert.Equal(byQuarterTurn[i], Friction.AtKnob(1, mu, [new((i + 1) * 90 * Degree, 0.1)], [], 0, 0), 5e-5);
            // The way it is divided into bends does not matter.
            var parts = Enumerable.Repeat(new BendOnWay(90 * Degree, 0.05), i + 1).ToArray();
            Assert.Equal(byQuarterTurn[i], Friction.AtKnob(1, mu, parts, [], 0, 0), 5e-5);
        }
    }

    // Derived in docs/theory/hand-force.md (D).
    [Fact]
    [Trait("Check", "F3")]
    public void AtKnob_WithDragsAtBothEnds_IsAsWorked() =>
        Assert.Equal(75.08899, Friction.AtKnob(40, 0.15, [new(Math.PI, 0.1)], [], 5, 3), 1e-5);

    // Derived in docs/theory/hand-force.md, confirmed there by integration (D, N).
    [Fact]
    [Trait("Check", "F4")]
    public void WithWeightToVertical_HeavyCore_IsAsWorked() =>
        Assert.Equal(3.447976, Friction.WithWeightToVertical(0.15, 0.2, 2, 5), 1e-6);

    // The same for 1.5 mm steel wire: weight hardly matters (D).
    [Fact]
    [Trait("Check", "F4")]
    public void WithWeightToVertical_ThinWire_HardlyDiffersFromWithout()
    {
        Assert.Equal(63.309575, Friction.WithWeightToVertical(0.15, 0.2, 50, 0.1361), 1e-5);
        Assert.Equal(63.284628, Friction.WithWeightToVertical(0.15, 0.2, 50, 0), 1e-6);
    }

    // Derived in docs/theory/hand-force.md, confirmed there by a finely divided wire to 0.5 % (D, N). E I = 47 961.44 N mm^2.
    [Theory]
    [Trait("Check", "F5")]
    [InlineData(100, 0.5, 17.3205, 13.845, 8.307)]
    [InlineData(200, 0.5, 24.4949, 4.895, 2.937)]
    [InlineData(100, 0.3, 13.4164, 17.874, 10.725)]
    public void StiffContact_WireIntoABend_IsAsWorked(double radius, double clearance, double half, double contact, double drag)
    {
        Assert.Equal(half / 1000, Friction.TransitionLength(radius / 1000, clearance / 1000), 1e-7);
        var n = Friction.StiffContact(47961.44e-6, radius / 1000, clearance / 1000);
        Assert.Equal(contact, n, 1e-3);
        Assert.Equal(drag, Friction.AtKnob(0, 0.15, [new(1, radius / 1000)], [n], 0, 0), 1e-3);
    }

    // Derived in docs/theory/cushion.md (D): E A = 341 059 N.
    [Fact]
    [Trait("Check", "L3")]
    public void DeadBand_ElasticCoreInOneBend_IsAsWorked()
    {
        Assert.Equal(0.050900e-3, Friction.DeadBand(50, 0.100, 341059, 0.15, 270 * Degree), 1e-4 * 0.0509e-3);
        Assert.Equal(0, Friction.DeadBand(50, 0.100, 341059, 0, 270 * Degree));
        // 101.3806 N pulling, 24.6596 N letting back.
        Assert.Equal(101.3806, Friction.AtKnob(50, 0.15, [new(270 * Degree, 0.1)], [], 0, 0), 1e-4);
        Assert.Equal(-24.6596, Friction.AtKnob(-50, 0.15, [new(270 * Degree, 0.1)], [], 0, 0), 1e-4);
        // Stretch pulling: 0.100433 mm = mean growth x T L / EA.
        Assert.Equal(0.100433e-3, Friction.MeanGrowth(0.15 * 270 * Degree) * 50 * 0.1 * 270 * Degree / 341059, 5e-10);
        Assert.Equal(0.049533e-3, Friction.MeanGrowth(-0.15 * 270 * Degree) * 50 * 0.1 * 270 * Degree / 341059, 5e-10);
    }

    [Fact]
    public void Means_AcrossTheSeriesLimit_AreSmooth()
    {
        foreach (var x in new[] { 0.00999999, 0.01000001, -0.00999999, -0.01000001 })
        {
            // Taylor to x^5, far enough at 0.01.
            Assert.Equal(1 + (x / 2) + (x * x / 6) + (x * x * x / 24) + (x * x * x * x / 120), Friction.MeanGrowth(x), 1e-12);
            Assert.Equal(0.5 + (x / 6) + (x * x / 24) + (x * x * x / 120), Friction.MeanOwn(x), 1e-10);
        }

        Assert.Equal(1, Friction.MeanGrowth(0));
        Assert.Equal(0.5, Friction.MeanOwn(0));
    }
}
