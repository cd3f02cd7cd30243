using Throwright.Engine.Chain;
using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Prove;
using static Throwright.Engine.Tests.Chain.Cockpits;

namespace Throwright.Engine.Tests.Chain;

/// <summary>What several runs have a part in is told once, with all of them.</summary>
public sealed class SharedFindingsTests
{
    private static EquatableFindings Check(params Run[] runs)
    {
        var aircraft = Of(runs[0], []) with { Runs = [.. runs], Sheets = [Panel] };
        return new(SharedFindings.Of(RunCheck.Check(aircraft, Runs.Quick, new() { Cures = false })));
    }

    private sealed record EquatableFindings(IReadOnlyList<SharedFinding> All)
    {
        public SharedFinding Single(string rule) => Assert.Single(All, s => s.Finding.Rule == rule);
    }

    [Fact]
    public void TwoKnobs_ThatTouch_AreToldOnce_WithBoth()
    {
        // Knobs of 30 mm with 20 mm between their middles.
        var shared = Check(Handle("one"), Handle("two", 20)).Single(ClearanceRules.Pair);
        Assert.Equal(Verdict.Fail, shared.Finding.Verdict);
        Assert.Equal(["one", "two"], shared.Runs.Order());
    }

    [Fact]
    public void TwoKnobs_FarApart_HaveNothingBetweenThem() => Assert.DoesNotContain(Check(Handle("one"), Handle("two", 250)).All, s => s.Finding.Rule == ClearanceRules.Pair);

    [Fact]
    public void CarburettorHeat_BesideTheMixture_ConcernsBoth()
    {
        // 14 CFR 23.777(d), text of Amendment 23-62: 8 in from the mixture; 100 mm are less.
        var shared = Check(Handle("heat") with { Function = ControlFunction.CarburettorHeat }, Handle("mixture", 100) with { Function = ControlFunction.Mixture }).Single(PanelOrder.CarburettorHeat);
        Assert.Equal(("heat", "heat mixture"), (shared.Told, string.Join(' ', shared.Runs)));
    }

    [Fact]
    public void HandlesOfOneKind_NameTheMixtureAndItsNeighbour()
    {
        var shared = Check(Handle("mixture") with { Function = ControlFunction.Mixture }, Handle("near", 100), Handle("far", 200)).Single(PanelOrder.Shapes);
        Assert.Equal(["mixture", "near"], shared.Runs);
    }
}
