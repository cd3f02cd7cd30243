using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Prove;
using Throwright.Engine.Tests.Chain;

namespace Throwright.Engine.Tests.Prove;

/// <summary>Markings that are taken for each other: 14 CFR 23.1555(a) and 23.777(a) (read); what is alike but not the same is common practice.</summary>
public sealed class LabelsApartTests
{
    private static Finding? Of(string first, string second)
    {
        Run one = Runs.Sound with { Id = "one", Label = first }, two = Runs.Sound with { Id = "two", Label = second };
        return LabelsApart.Find(one, [one, two]);
    }

    // The same words, whatever their case, order or full stops; a word cut short.
    [InlineData("HEAT", "HEAT")]
    [InlineData("Cabin heat", "CABIN HEAT")]
    [InlineData("CARB. HEAT", "CARBURETTOR HEAT")]
    // A word that one of them lacks.
    [InlineData("HEAT", "CARB HEAT")]
    [InlineData("FUEL", "FUEL PRIMER")]
    // One letter.
    [InlineData("CAB HEAT", "CARB HEAT")]
    [Theory]
    public void Alike_IsACaution_BothWays(string first, string second)
    {
        Assert.Equal(Verdict.Caution, Of(first, second)?.Verdict);
        Assert.Equal(Verdict.Caution, Of(second, first)?.Verdict);
    }

    [InlineData("THROTTLE", "MIXTURE")]
    [InlineData("CABIN HEAT", "CARB HEAT")]
    [InlineData("COWL L", "COWL R")]
    [InlineData("", "")]
    [InlineData("HEAT", "")]
    [Theory]
    public void Apart_SaysNothing(string first, string second) => Assert.Null(Of(first, second));

    [Fact]
    public void Same_RestsOnTheRuleAlone_AlikeOnPracticeToo()
    {
        Assert.DoesNotContain(Of("HEAT", "HEAT")!.Sources, s => s.Evidence == Evidence.CommonPractice);
        Assert.Contains(Of("HEAT", "CARB HEAT")!.Sources, s => s.Evidence == Evidence.CommonPractice);
        Assert.Contains(Of("HEAT", "HEAT")!.Sources, s => s == Throwright.Engine.Sources.Published.Rule("23.1555(a)").Source);
    }

    [Fact]
    public void TwoRuns_OfOneMark_ShareTheFinding()
    {
        var aircraft = Runs.Aircraft with { Runs = [Runs.Sound with { Id = "one", Label = "HEAT" }, Runs.Sound with { Id = "two", Label = "HEAT" }] };
        var shared = Assert.Single(SharedFindings.Of(RunCheck.Check(aircraft, Runs.Quick)), s => s.Finding.Rule == LabelsApart.Rule);
        Assert.Equal(["one", "two"], shared.Runs.Order());
    }
}
