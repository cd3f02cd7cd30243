using Throwright.Engine.Findings;
using Throwright.Engine.Heat;
using Throwright.Engine.Model;
using Throwright.Engine.Tests.Chain;
using Throwright.Engine.Tests.Prove;

namespace Throwright.Engine.Tests.Heat;

public sealed class HeatTests
{
    private static Run With(params InstalledPart[] parts) => Installations.Sound.With(i => i with { Parts = [.. parts] });

    // By hand: PLA distorts at 50, a dashboard was measured at 89 degC. PEI 200 - 15 = 185, 200 - 20 = 180, 170 in operation: 170.
    [InlineData("PLA", PartPlace.Sunlit, true, Verdict.Fail)]
    [InlineData("petg", PartPlace.Cabin, false, Verdict.Fail)]
    [InlineData("PC", PartPlace.Sunlit, true, Verdict.Clear)] // min(127 - 15, 147 - 20, 115) = 112
    [InlineData("6061-T6", PartPlace.EngineBay, true, Verdict.Clear)]
    [InlineData("PEI", PartPlace.EngineBay, false, Verdict.Fail)] // no plastic ahead of the firewall
    [InlineData("unobtainium", PartPlace.Cabin, false, Verdict.NeedsInput)]
    [Theory]
    public void Part_AtItsPlace_IsJudgedByItsMaterial(string material, PartPlace place, bool clamped, Verdict verdict)
    {
        // The music wire of the sound run stands 120 degC, the engine bay gets 120: clear, so the part decides.
        var found = With(new InstalledPart("washer", material, place, clamped)).Prove().Of(HeatRules.Parts)!;
        Assert.Equal(verdict, found.Verdict);
    }

    [Fact]
    public void MusicWire_InAHotterBayThanItsLimit_Fails()
    {
        // Shigley, Table 10-3: music wire to 120 degC.
        var bay = Runs.Aircraft with { Environment = Runs.Aircraft.Environment! with { EngineBay = new(121) } };
        Assert.Equal(Verdict.Fail, Installations.Sound.Rule(HeatRules.Parts, bay));
        Assert.Equal(Verdict.Clear, Installations.Sound.Rule(HeatRules.Parts));
    }

    [Fact]
    public void Cabin_TypedCoolerThanWasMeasured_DoesNotHelpAPart()
    {
        // 60 degC typed; closed cars were measured at 76. ABS under a nut stands min(76 - 15, 105 - 20, 70) = 61.
        var row = With(new InstalledPart("washer", "ABS", PartPlace.Cabin, true)).Prove().Heat!.Rows.Single(r => r.Part.Material == "ABS");
        Assert.Equal(76, row.Part.Hottest);
        Assert.Equal(61, row.Stands);
        Assert.Equal(Verdict.Fail, row.Verdict);
    }

    [Fact]
    public void WithoutTemperatures_NothingIsClaimed() =>
        Assert.Null(Installations.Sound.Rule(HeatRules.Parts, Runs.Aircraft with { Environment = null }));

    [Fact]
    public void Threadlocker_FromMemory_IsNeverClear()
    {
        var run = Installations.Sound.Cable(c => c with { Core = c.Core! with { Material = CoreMaterial.Stainless302 } }).Lever(e => e with { Swivel = e.Swivel with { HoldsBy = [WireHold.SetScrew, WireHold.Threadlocker, WireHold.BentTail] } });
        Assert.Equal(Verdict.Caution, run.Rule(HeatRules.Parts));
    }
}
