using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;

namespace Throwright.Engine.Tests.Sources;

public sealed class ExpansionTests
{
    // Derived from Callister Table B.6 (read): (17.2 - 11.7) ppm/K x 2 m x 60 K = 0.660 mm.
    [Fact]
    [Trait("Check", "E4")]
    public void Of_StainlessCoreInSteelConduit_ShiftsTheKnobAsWorkedByHand() =>
        Assert.Equal(0.660e-3, (Expansion.Of(CoreMaterial.Stainless302).Value - Expansion.Of(ConduitMaterial.CarbonSteel).Value) * 2 * 60, 1e-9);

    // Derived from the same table; taut carbon-steel wire of 2 m in an airframe, -60 K and +65 K.
    [Theory]
    [Trait("Check", "E4b")]
    [InlineData(AirframeMaterial.Aluminium, -1.344e-3, 1.456e-3)]
    [InlineData(AirframeMaterial.SteelTube, -0.072e-3, 0.078e-3)]
    [InlineData(AirframeMaterial.CarbonComposite, 1.104e-3, -1.196e-3)]
    public void Of_Airframe_AgainstATautSteelWire_ShiftsAsWorkedByHand(AirframeMaterial airframe, double cold, double hot)
    {
        var difference = Expansion.Of(airframe).Value - Expansion.Of(ConduitMaterial.CarbonSteel).Value;
        Assert.Equal(cold, difference * 2 * -60, 1e-9);
        Assert.Equal(hot, difference * 2 * 65, 1e-9);
    }

    // The same for fir at 4.5 ppm/K, +0.864 and -0.936 mm: inside the published band.
    [Fact]
    [Trait("Check", "E4b")]
    public void Of_Wood_HoldsTheHandWorkedFigureInItsBand()
    {
        var wood = Expansion.Of(AirframeMaterial.Wood);
        var steel = Expansion.Of(ConduitMaterial.CarbonSteel).Value;
        Assert.InRange(0.864e-3, (wood.High - steel) * 2 * -60, (wood.Low - steel) * 2 * -60);
        Assert.InRange(-0.936e-3, (wood.Low - steel) * 2 * 65, (wood.High - steel) * 2 * 65);
    }

    [Fact]
    public void Of_Aluminium_BandHoldsTheThreeAlloys()
    {
        var aluminium = Expansion.Of(AirframeMaterial.Aluminium);
        Assert.Equal(22.9e-6, aluminium.Value, 1e-15);
        Assert.Equal(22.9e-6, aluminium.Low, 1e-15);
        Assert.Equal(23.6e-6, aluminium.High, 1e-15);
    }

    [Fact]
    public void Of_EveryMaterial_IsAnsweredWithASource()
    {
        var all = Enum.GetValues<AirframeMaterial>().Select(Expansion.Of)
            .Concat(Enum.GetValues<CoreMaterial>().Select(Expansion.Of))
            .Concat(Enum.GetValues<ConduitMaterial>().Select(Expansion.Of));
        Assert.All(all, e =>
        {
            Assert.InRange(e.Value, 1e-6, 30e-6);
            Assert.True(e.Low <= e.Value && e.Value <= e.High);
            Assert.NotNull(Published.Source(e.Source.Id));
        });
        Assert.Equal(Evidence.Memory, Expansion.Of(AirframeMaterial.CarbonComposite).Source.Evidence);
        Assert.Equal(Evidence.Memory, Expansion.Of(AirframeMaterial.GlassComposite).Source.Evidence);
    }

    [Fact]
    public void Of_AMaterialThatIsNotOne_IsAFaultOfTheProgram()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Expansion.Of((CoreMaterial)9));
        Assert.Throws<ArgumentOutOfRangeException>(() => Expansion.Of((ConduitMaterial)9));
        Assert.Throws<ArgumentOutOfRangeException>(() => Expansion.Of((AirframeMaterial)9));
    }
}
