using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Engine.Tests.Throw;

namespace Throwright.Engine.Tests.Chain;

/// <summary>Lies kept between two looks at a run: what is kept is what would be worked out.</summary>
public class KnownLiesTests
{
    private static PointAt At(double x, double y, double z, double half = 0) => new(Levers.Mm(x, half), Levers.Mm(y, half), Levers.Mm(z, half));

    private static Run Laid(Func<Cable, Cable>? change = null, double off = 3)
    {
        var cable = Runs.Sound.Cable! with
        {
            Bends = [],
            Length = Levers.Mm(1240),
            LongestStraight = null,
            Supports = [new() { Place = At(500, 450, 100, off), Kind = SupportHold.TightClamp }],
            Ends = new() { Leaves = At(0, 0, 0), LeavesAlong = new(1, 0, 0), Arrives = At(800, 800, 0), ArrivesAlong = new(0, 1, 0) },
        };
        return Runs.Sound with { Cable = change is null ? cable : change(cable) };
    }

    private static RunAnswer Check(Run run, KnownLies? known = null) => RunCheck.CheckWith(Runs.Aircraft, run, Runs.Quick, null, null, known);

    [Fact]
    public void Answers_WithLiesKept_AreTheSameAsWithout()
    {
        var known = new KnownLies();
        Run[] runs = [Laid(), Laid(c => c with { Friction = null }), Laid(c => c with { Length = Levers.Mm(1260) }), Laid(off: 6), Laid()];
        foreach (var run in runs)
        {
            RunAnswer with = Check(run, known), without = Check(run);
            Assert.NotNull(with.Route?.Lie);
            Assert.Equal(without.Route!.Spread, with.Route.Spread);
            Assert.Equal(without.Route.Lie!.Shape.Energy, with.Route.Lie.Shape.Energy);
            Assert.Equal(without.Figures.Select(f => (f.Id, f.Value)), with.Figures.Select(f => (f.Id, f.Value)));
            Assert.Equal(without.Findings.Select(f => f.Sentence), with.Findings.Select(f => f.Sentence));
        }
    }

    [Fact]
    public void Lie_OfAnotherWireOrArm_IsTheOneKept()
    {
        var known = new KnownLies();
        var first = Check(Laid(), known).Route!;
        var arm = Laid();
        arm = arm with { LeverEnd = arm.LeverEnd! with { Radius = Levers.Mm(44) } };
        Assert.Same(first.Lie, Check(Laid(c => c with { Friction = null }), known).Route!.Lie);
        var other = Check(arm, known).Route!;
        Assert.Same(first.Lie, other.Lie);
        Assert.Same(first.Order!.Longer, other.Order!.Longer);
    }

    [Fact]
    public void Lie_OfPlacesThatAreLessSure_IsLaidAnew()
    {
        var known = new KnownLies();
        RunRoute sure = Check(Laid(off: 1), known).Route!, unsure = Check(Laid(off: 8), known).Route!;
        Assert.Equal(sure.Case, unsure.Case);
        Assert.True(unsure.Spread!.Moved > sure.Spread!.Moved);
    }

    [Fact]
    public void Ends_NotAtHand_AreNotHeldAgainstAnything()
    {
        var aircraft = Runs.Aircraft with { Bodies = [Cockpits.Ball(400, 400, 400)] };
        var cockpit = CockpitCheck.Solve(aircraft)!;
        Assert.Empty(RunCheck.CheckWith(aircraft, Laid(), Runs.Quick, cockpit, () => null).Ends);
        Assert.NotEmpty(RunCheck.CheckWith(aircraft, Laid(), Runs.Quick, cockpit, () => []).Ends);
    }

    [Fact]
    public void Aircraft_OfTheSameType_ShareTheirLies()
    {
        var known = new KnownLies();
        Aircraft one = Runs.Aircraft with { Name = "one", Runs = [Laid()] }, other = one with { Name = "other" };
        var first = RunCheck.Check(one, Runs.Quick, null, known);
        var second = RunCheck.Check(other, Runs.Quick, null, known);
        Assert.Same(first.Runs[0].Route!.Lie, second.Runs[0].Route!.Lie);
        Assert.Equal(RunCheck.Check(other, Runs.Quick).Runs[0].Figures, second.Runs[0].Figures);
    }
}
