using Throwright.Engine.Chain;
using Throwright.Engine.Maintain;
using Throwright.Engine.Model;
using Throwright.Engine.Tests.Chain;
using Throwright.Engine.Tests.Prove;

namespace Throwright.Engine.Tests.Maintain;

public sealed class MaintainTests
{
    [Theory]
    [Trait("Check", "ST18")]
    [InlineData(10, false, true)]
    [InlineData(14, false, false)]
    [InlineData(14, true, true)]
    public void BrokenWire_WithinAFootOfASwage_ReplacesTheCable(double inches, bool flexed, bool replace) =>
        // AC 43.13-1B 7-149(b): read.
        Assert.Equal(replace, MaintainSolver.BrokenWireReplaces(inches * 0.0254, flexed));

    private static AsBuilt At(string date, double mm) => new() { Date = date, KnobAtPush = Runs.Mm(mm), KnobAtPull = Runs.Mm(mm + 44) };

    [Fact]
    public void Drift_OfAMillimetreAYear_MeetsItsLimitWhenTheLineDoes()
    {
        var run = Installations.Sound with { AsBuilt = [At("2026-01-01", 9), At("2027-01-01", 8), At("2028-01-01", 7)] };
        var answer = Upkeep.Of(Runs.Aircraft, run.Prove());
        var drift = answer.Drifts.Single(d => d.Reading == "knobAtPush");
        Assert.Equal(-1e-3, drift.PerYear!.Value, 2e-6);
        Assert.NotNull(drift.Least);
        // From 8 mm in 2027 down to the limit at 1 mm a year.
        Assert.Equal(2027 + ((8e-3 - drift.Least.Value) / 1e-3), drift.ReachesLimit!.Value, 0.02);
    }

    [Theory]
    [InlineData(0.0, DriftState.Still)]
    [InlineData(9.0, DriftState.Outside)]
    public void LostMotion_IsLimitedAboveOnly(double mm, DriftState state)
    {
        // "... or less": none at all is no fault.
        AsBuilt Read(string date) => At(date, 9) with { LostMotion = Runs.Mm(mm) };
        var drift = Upkeep.Of(Runs.Aircraft, (Installations.Sound with { AsBuilt = [Read("2026-01-01"), Read("2027-01-01")] }).Prove()).Drifts.Single(d => d.Reading == "lostMotion");
        Assert.Equal((null, state), (drift.Least, drift.State));
        Assert.NotNull(drift.Most);
    }

    [Fact]
    public void Drift_OfOneReading_IsNoLine() =>
        Assert.Null(Upkeep.Of(Runs.Aircraft, (Installations.Sound with { AsBuilt = [At("2026-01-01", 9)] }).Prove()).Drifts[0].PerYear);

    [Fact]
    public void Items_Each_HaveALimitAWhenAnActAndASource()
    {
        foreach (var run in (Run[])[Installations.Sound, Installations.Sound.Cable(c => c with { Core = c.Core! with { Kind = CoreKind.Strand7x7 } }), new Run { Id = "x" }])
        {
            var items = Upkeep.Of(Runs.Aircraft, run.Prove()).Items;
            Assert.True(items.Count >= 8);
            Assert.All(items, i =>
            {
                Assert.NotEmpty(i.Limit);
                Assert.NotEmpty(i.When);
                Assert.NotEmpty(i.Act);
                Assert.NotEmpty(i.Sources);
            });
        }
    }

    [Fact]
    public void Drift_CountsAnewFromARerigging()
    {
        var run = Installations.Sound with { AsBuilt = [At("2024-01-01", 5), At("2025-01-01", 4), At("2026-01-01", 9) with { Rerigged = true }, At("2027-01-01", 8), At("2028-01-01", 7)] };
        var drift = Upkeep.Of(Runs.Aircraft, run.Prove()).Drifts.Single(d => d.Reading == "knobAtPush");
        Assert.Equal(2, drift.From);
        Assert.Equal(5, drift.Points.Count);
        Assert.Equal(-1e-3, drift.PerYear!.Value, 2e-6);
        Assert.Equal(DriftState.MeetsLimit, drift.State);
    }

    [Fact]
    public void Drift_WithinTheErrorOfReading_IsNone()
    {
        // A tape of 1/64 in over a year moves by more than 0.1 mm.
        var run = Installations.Sound with { AsBuilt = [At("2026-01-01", 9), At("2027-01-01", 8.9)] };
        var drift = Upkeep.Of(Runs.Aircraft, run.Prove()).Drifts.Single(d => d.Reading == "knobAtPush");
        Assert.Equal(DriftState.Still, drift.State);
        Assert.Null(drift.ReachesLimit);
        Assert.True(drift.PerYearError > 1e-4);
    }

    [Fact]
    public void Reading_OutsideItsLimits_AsksBeforeTheNextFlight()
    {
        var run = Installations.Sound with { AsBuilt = [At("2026-01-01", 1)] };
        var drift = Upkeep.Of(Runs.Aircraft, run.Prove()).Drifts.Single(d => d.Reading == "knobAtPush");
        Assert.Equal(DriftState.Outside, drift.State);
        Assert.Contains("before the next flight", MaintainSolver.WhenToAct(drift, v => $"{v}"), StringComparison.Ordinal);
    }

    [Fact]
    public void History_TellsWhatEachReadingMovedSinceTheLastThatHasIt()
    {
        var run = Installations.Sound with { AsBuilt = [At("2027-01-01", 8), At("2026-01-01", 9), At("2028-01-01", 7) with { KnobAtPush = null, Rerigged = true }, At("2029-01-01", 6)] };
        var history = Upkeep.Of(Runs.Aircraft, run.Prove()).History;
        Assert.Equal(["2026-01-01", "2027-01-01", "2028-01-01", "2029-01-01"], history.Select(h => h.Date));
        Assert.Null(history[0].Changes[0].Change);
        Assert.Equal(-1e-3, history[1].Changes[0].Change!.Value, 1e-9);
        Assert.True(history[2].Rerigged);
        // From 8 mm two years before.
        Assert.Equal(-2e-3, history[3].Changes.Single(c => c.Reading == "knobAtPush").Change!.Value, 1e-9);
    }
}
