using Throwright.Engine.HandForce;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;

namespace Throwright.Engine.Tests.HandForce.Reference;

/// <summary>Struts and wires in tubes: textbook problems and worked figures of docs/theory/hand-force.md.</summary>
public sealed class BucklingTests
{
    // Gere, Mechanics of Materials, solution of problem 11.4-2 (R): pipe 40/36 mm, 1.2 m, 210 GPa; 62.2, 249, 127, 15.6 kN.
    [Theory]
    [Trait("Check", "B1")]
    [InlineData(StrutEnds.PinnedPinned, 62.2)]
    [InlineData(StrutEnds.FixedFixed, 249)]
    [InlineData(StrutEnds.FixedPinned, 127)]
    [InlineData(StrutEnds.FixedFree, 15.6)]
    public void Euler_SteelPipe_BucklesAsInTheTextbook(StrutEnds ends, double kilonewtons)
    {
        var second = Math.PI / 64 * (Math.Pow(0.040, 4) - Math.Pow(0.036, 4));
        Assert.Equal(kilonewtons * 1000, Buckling.Euler(210e9, second, 1.2, ends), 4e-3 * kilonewtons * 1000);
    }

    // Hibbeler, Mechanics of Materials, Example 13.1 (R): tube of radius 75/70 mm, 7.2 m, 200 GPa: 228.2 kN.
    [Fact]
    [Trait("Check", "B2")]
    public void Euler_TallTube_BucklesAsInTheTextbook()
    {
        var second = Math.PI / 4 * (Math.Pow(0.075, 4) - Math.Pow(0.070, 4));
        Assert.Equal(228.2e3, Buckling.Euler(200e9, second, 7.2, StrutEnds.PinnedPinned), 0.05e3);
    }

    // Faires, Design of Machine Elements, problem 334(a) (R): 30 kip, Sy 48 ksi, E 30 000 ksi; 25 in: 1.096 in by Johnson,
    // 50 in: 1.507 in by Euler. In kip and inches.
    [Theory]
    [Trait("Check", "B3")]
    [InlineData(25, 1.096)]
    [InlineData(50, 1.507)]
    public void Strut_RoundBarFor30Kip_HasTheTextbooksDiameter(double length, double printed)
    {
        double Load(double d) => Buckling.Strut(30e3, 48, Math.PI * d * d / 4, Math.PI * Math.Pow(d, 4) / 64, length, StrutEnds.PinnedPinned);
        double low = 0.1, high = 5;
        while (high - low > 1e-9)
        {
            var middle = 0.5 * (low + high);
            (low, high) = Load(middle) < 30 ? (middle, high) : (low, middle);
        }

        Assert.Equal(printed, low, 1e-3);
    }

    [Fact]
    public void Strut_WhereEulerAndJohnsonMeet_CarriesHalfTheYieldLoad()
    {
        // Euler equals half the squash load at L = pi sqrt(2 E I C / (A Sy)).
        const double area = 2, second = 0.3, modulus = 30e3, yield = 48;
        var length = Math.PI * Math.Sqrt(2 * modulus * second / (area * yield));
        Assert.Equal(area * yield / 2, Buckling.Strut(modulus, yield, area, second, length * (1 + 1e-9), StrutEnds.PinnedPinned), 1e-6);
        Assert.Equal(area * yield / 2, Buckling.Strut(modulus, yield, area, second, length * (1 - 1e-9), StrutEnds.PinnedPinned), 1e-6);
    }

    // Derived in docs/theory/hand-force.md (D): bare wire d 1.5 mm, E 193 GPa.
    [Theory]
    [Trait("Check", "B4")]
    [InlineData(40, 295.85, 605.24)]
    [InlineData(60, 131.49, 268.99)]
    [InlineData(80, 73.96, 151.31)]
    [InlineData(100, 47.34, 96.84)]
    public void Euler_BareWire_BucklesAsWorked(double length, double pinned, double fixedPinned)
    {
        var core = CoreSection.Of(CoreKind.Solid, 1.5e-3);
        Assert.Equal(pinned, Buckling.Euler(193e9, core.SecondMoment, length / 1000, StrutEnds.PinnedPinned), 1e-4 * pinned);
        Assert.Equal(fixedPinned, Buckling.Euler(193e9, core.SecondMoment, length / 1000, StrutEnds.FixedPinned), 1e-4 * fixedPinned);
    }

    [Fact]
    public void Fixity_EachEnd_IsTheTabulatedOne()
    {
        var table = Published.Table("buckling/end-fixity");
        foreach (var (ends, row) in new[] { (StrutEnds.FixedFree, "fixed-free"), (StrutEnds.PinnedPinned, "pinned-pinned"), (StrutEnds.FixedPinned, "fixed-pinned"), (StrutEnds.FixedFixed, "fixed-fixed") })
            Assert.Equal(table.Row("ends", row).Si("factor"), Buckling.Fixity(ends), 1e-6);
    }

    // Form: course notes on well design after Chen, Lin, Cheatham 1990 (R), and Dawson, Paslay 1984; evaluated (N).
    [Fact]
    [Trait("Check", "B6")]
    public void Tube_CoreLyingInIt_SnakesAndWindsUpAtTheWorkedLoads()
    {
        Assert.Equal(10.219, Buckling.Snaking(47961.44e-6, 0.136085, 0.25e-3), 1e-3);
        Assert.Equal(14.452, Buckling.Helix(47961.44e-6, 0.136085, 0.25e-3), 1e-3);
        // It does not matter how one comes to it: the least of E I n^2 + w / (r n^2) over the wave number n.
        var least = Enumerable.Range(1, 40_000).Min(i => (47961.44e-6 * (i * 0.01) * (i * 0.01)) + (0.136085 / (0.25e-3 * (i * 0.01) * (i * 0.01))));
        Assert.Equal(least, Buckling.Snaking(47961.44e-6, 0.136085, 0.25e-3), 1e-5);
    }

    // Derived in docs/theory/hand-force.md by energy (D): F 100 N, r 0.25 mm, 1 m, friction 0.15, bend R 100.
    [Fact]
    [Trait("Check", "B7")]
    public void Tube_CorePushedWith100N_WindsUpAsWorked()
    {
        const double ei = 47961.44e-6, r = 0.25e-3;
        Assert.Equal(194.599e-3, Buckling.HelixPitch(ei, 100), 1e-6);
        Assert.Equal(13.0313, Buckling.HelixContact(ei, 100, r), 1e-4);
        Assert.Equal(0.0325783e-3, Buckling.HelixShortening(ei, 100, r), 1e-9);
        Assert.Equal(98.08278, Buckling.Transfer(100, ei, 0.15, r, 1), 1e-4);
        Assert.Equal(5115.89, Buckling.LockUp(ei, 0.15, r, 1), 0.01);
        Assert.Equal(7673.83, Buckling.InBend(ei, r, 0.100), 0.01);
    }

    // Derived in docs/theory/hand-force.md (D): 7x7 strand of 1.5 mm with its wires free to slide, E 193 GPa.
    [Fact]
    [Trait("Check", "B8")]
    public void Strand_PushedThroughATube_LocksUp()
    {
        var strand = CoreSection.Of(CoreKind.Strand7x7, 1.5e-3);
        var ei = 193e9 * strand.SecondMoment;
        Assert.Equal(358.194e-6, ei, 1e-9);
        Assert.Equal(38.207, Buckling.LockUp(ei, 0.15, 0.25e-3, 1), 1e-3);
        Assert.Equal(16.805, Buckling.Transfer(30, ei, 0.15, 0.25e-3, 1), 1e-3);
    }

    [Fact]
    public void LockUp_NoFriction_HasNoLimit() => Assert.Equal(double.PositiveInfinity, Buckling.LockUp(1, 0, 0.001, 1));
}
