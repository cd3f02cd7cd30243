using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Route;
using Throwright.Engine.Tests.Throw;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Chain;

/// <summary>The way of the conduit on the chain: its bends and length stand in for those typed.</summary>
public class RouteTests
{
    private static PointAt At(double x, double y, double z, double half = 0) => new(Levers.Mm(x, half), Levers.Mm(y, half), Levers.Mm(z, half));

    /// <summary>A quarter bend, 800 mm each way: it rests by itself at about 1.6 legs.</summary>
    private static Run Quarter(Func<Cable, Cable>? change = null)
    {
        var cable = Runs.Sound.Cable! with
        {
            Bends = [],
            Length = null,
            LongestStraight = null,
            Ends = new() { Leaves = At(0, 0, 0), LeavesAlong = new(1, 0, 0), Arrives = At(800, 800, 0), ArrivesAlong = new(0, 1, 0), InBushing = Runs.Mm(20), InAnchor = Runs.Mm(10) },
        };
        return Runs.Sound with { Cable = change is null ? cable : change(cable) };
    }

    private static RunAnswer Check(Run run) => RunCheck.Check(Runs.Aircraft, run, Runs.Quick);

    private static Finding? Find(RunAnswer answer, string rule) => answer.Findings.FirstOrDefault(f => f.Rule == rule);

    [Fact]
    public void Order_OnAPlaceThatNothingChecks_SaysSoFirst()
    {
        var answer = Check(Quarter());
        Assert.DoesNotContain(Purchase.Of(Runs.Aircraft, answer).Cable, l => l.What == Purchase.MeasureFirst);
        var unchecked3 = new Finding { Rule = Throwright.Engine.Measure.TapeRules.Readings, Verdict = Verdict.Caution, Sentence = "anchor: Three readings give the point but nothing checks them.", Sources = [] };
        var line = Purchase.Of(Runs.Aircraft, answer with { Findings = [.. answer.Findings, unchecked3] }).Cable.First(l => l.What == Purchase.MeasureFirst);
        Assert.True(line.Confirm);
        Assert.Contains("nothing checks them", line.Note, StringComparison.Ordinal);
        Assert.Contains("does not come back", line.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void Order_WhereTheLaysUseUpTheRadius_SaysSo()
    {
        var answer = Check(Quarter());
        var spread = answer.Route!.Spread!;
        RunAnswer With(Throwright.Engine.Chain.LieSpread changed) => answer with { Route = answer.Route with { Spread = changed } };
        string Note(RunAnswer of) => Purchase.Of(Runs.Aircraft, of).Cable.Single(l => l.What == Purchase.MeasureFirst).Note;
        Assert.Contains("too short", Note(With(spread with { Without = 3 })), StringComparison.Ordinal);
        Assert.Contains("tighter", Note(With(spread with { LeastRadius = 0.001 })), StringComparison.Ordinal);
    }

    /// <summary>What the maker cuts by adds up: conduit, wire in the knob, and bare core to pin, tail and trimming.</summary>
    [Fact]
    public void Core_OfTheOrder_ReachesPinAndTail()
    {
        var answer = Check(Quarter(c => c with { Ends = c.Ends! with { WireInKnob = Runs.Mm(30), WireBeyondPin = Runs.Mm(20) } }));
        var lengths = answer.Route!.Order!;
        var bare = Purchase.Of(Runs.Aircraft, answer).Cable.Single(l => l.What.StartsWith("bare core", StringComparison.Ordinal));
        var left = lengths.WireOrdered - lengths.ConduitOrdered - 0.030;
        Assert.Equal(new FigureWriter(Runs.Aircraft.Display).Length(left, Rounding.Up), bare.Value);
        // Conduit's end to the pin with the knob in, and the tail.
        Assert.True(left >= answer.Ladder!.Setting.WireLength - 0.010 + 0.020 + 0.050);
    }

    /// <summary>An arm that passes a dead centre, or a swivel whose place is not known: the wire ordered still reaches.</summary>
    [Fact]
    public void Core_OfAnArmPastItsDeadCentre_ReachesAllTheSame()
    {
        var sound = Check(Quarter());
        var past = Check(Quarter() with { LeverEnd = Runs.Sound.LeverEnd! with { From = Levers.Degrees(-45, 1), To = Levers.Degrees(130, 1) } });
        Assert.False(past.Sweep!.IsMonotone);
        Assert.True(past.Route!.Order!.Wire >= sound.Route!.Order!.Wire);
    }

    [Fact]
    public void Way_NotInTheFile_ChangesNothing()
    {
        var answer = Check(Runs.Sound);
        Assert.Null(answer.Route);
        Assert.DoesNotContain(answer.Findings, f => f.Rule.StartsWith("route/", StringComparison.Ordinal));
        Assert.Equal(Runs.Sound.Cable, answer.Cable);
    }

    [Fact]
    public void Lie_OfNaturalLength_FeedsForceAndLadder()
    {
        var answer = Check(Quarter());
        var lie = answer.Route!.Lie!;
        Assert.Equal(LengthOrigin.Natural, answer.Route.Origin);
        Assert.Equal(LieSolver.NaturalLength(lie.Case)!.Value, lie.Case.Length, 1e-9);
        Assert.Equal(lie.Case.Length + 0.03, answer.Find("conduit-length")!.Value, 1e-12);
        // The bends together turn all that the lie turns, and no less goes into the force.
        Assert.Equal(lie.BendTotal, answer.Route.Bends.Sum(b => b.Angle), 1e-9);
        Assert.Equal(lie.BendTotal, answer.ForceCase!.Bends.Sum(b => b.Angle), 1e-9);
        Assert.Equal(answer.Route.Bends.Min(b => b.Radius), lie.LeastRadius, 0.01 * lie.LeastRadius);
        Assert.DoesNotContain(answer.Needs, n => n.Path is "cable.bendTotal" or "cable.bends" or "cable.length");
        Assert.Equal(Verdict.Clear, Find(answer, LieRules.Radius)!.Verdict);
        Assert.Null(Find(answer, "cable/bend-radius"));
        Assert.InRange(answer.Route.Spread!.LeastRadius, 0.1, lie.LeastRadius);
        Assert.InRange(lie.BendTotal, answer.Route.Spread.BendLeast, answer.Route.Spread.BendMost);
    }

    [Fact]
    public void Lie_ByHand_IsTheSameAsTheStageAlone()
    {
        var answer = Check(Quarter(c => c with { Length = Levers.Mm(1360), Supports = [new() { Place = At(790, 500, 10), Along = new(0, -1, 0.02), Kind = SupportHold.SlidingClamp }, new() { Place = At(400, 60, 0), Kind = SupportHold.Grommet }] }));
        var alone = LieSolver.Solve(new()
        {
            Start = default,
            StartAlong = new(1, 0, 0),
            // From the knob to the device, the clamp's line turned the way the conduit runs.
            Supports = [new(new(0.4, 0.06, 0), SupportKind.Grommet), new(new(0.79, 0.5, 0.01), SupportKind.Sliding, new(0, 1, -0.02))],
            End = new(0.8, 0.8, 0),
            EndAlong = new(0, 1, 0),
            Length = 1.33,
            LeastRadius = 0.075,
        }).Lie!;
        Assert.Equal(alone.LeastRadius, answer.Route!.Lie!.LeastRadius, 1e-6 * alone.LeastRadius);
        Assert.Equal(alone.BendTotal, answer.Route.Lie.BendTotal, 1e-6);
    }

    [Fact]
    public void Bends_TypedOtherwise_AreTold()
    {
        var answer = Check(Quarter(c => c with { Bends = [Runs.Bend(80, 300), Runs.Bend(80, 300)] }));
        Assert.Contains("160", Find(answer, "route/typed")!.Sentence, StringComparison.Ordinal);
        Assert.Null(Find(Check(Quarter(c => c with { BendTotal = Levers.Degrees(100, 5) })), "route/typed"));
    }

    [Fact]
    public void Ordered_TooLongOrShort_IsTold()
    {
        var natural = Check(Quarter()).Find("conduit-length")!.Value;
        Finding Of(double more) => Find(Check(Quarter(c => c with { Ordered = Toleranced<Length>.Exact(new(natural + more)) })), "route/ordered")!;
        Assert.Equal(Verdict.Clear, Of(0.005).Verdict);
        var longer = Of(0.03);
        Assert.Equal(Verdict.Caution, longer.Verdict);
        Assert.Contains("longer", longer.Sentence, StringComparison.Ordinal);
        Assert.Contains(longer.Remedies, r => r.Text.StartsWith("Cut 30.0 mm", StringComparison.Ordinal));
        Assert.Contains("shorter", Of(-0.03).Sentence, StringComparison.Ordinal);
        // Below the straight way no lie exists.
        Assert.Equal(Verdict.Fail, Of(-0.3).Verdict);
    }

    [Fact]
    public void Length_ToOrder_CountsFittingsFreeWireAndTrimming()
    {
        var answer = Check(Quarter(c => c with { Ends = c.Ends! with { WireInKnob = Runs.Mm(30), WireBeyondPin = Runs.Mm(15), Trimming = Runs.Mm(40), OrderStep = Runs.Mm(50) } }));
        double conduit = answer.Find("conduit-length")!.Value, ordered = Math.Ceiling((conduit / 0.05) - 1e-9) * 0.05;
        Assert.Equal(ordered, answer.Find("conduit-order")!.Value, 1e-12);
        var wire = ordered + (answer.Sweep!.AtPush.Length - 0.01) + answer.Ladder!.Setting.KnobOutAtPushStop + 0.045 + 0.04;
        Assert.Equal(Math.Ceiling((wire / 0.05) - 1e-9) * 0.05, answer.Find("wire-order")!.Value, 1e-12);
        // What a reader can add up is what was rounded.
        var shown = answer.Find("wire-order")!;
        Assert.Equal(shown.Steps[0].Value, shown.Inputs.Sum(i => i.Value), 1e-12);
    }

    [Fact]
    public void Order_RadiusToStand_IsTheTightestThatMostLaysKeep()
    {
        var answer = Check(Quarter());
        var radius = answer.Find("least-radius")!;
        Assert.True(radius.Least < radius.Value);
        var line = Purchase.Of(Runs.Aircraft, answer).Cable.Single(l => l.What == "least bend radius it must stand");
        Assert.Equal(new FigureWriter(Runs.Aircraft.Display).Length(radius.Least!.Value, Rounding.Down), line.Value);
    }

    [Fact]
    public void Supports_FromKnobToDevice_AreTold()
    {
        Support near = new() { Place = At(300, 20, 0) with { Name = "near" }, Kind = SupportHold.Grommet }, far = new() { Place = At(780, 500, 0) with { Name = "far" }, Kind = SupportHold.Grommet };
        Assert.Null(Find(Check(Quarter(c => c with { Supports = [far, near] })), RouteFindings.Order));
        // Too short over them: the order is told all the same.
        var swapped = Check(Quarter(c => c with { Supports = [near, far], Length = Levers.Mm(1300) }));
        Assert.Equal(Verdict.Fail, Find(swapped, LieRules.Rests)!.Verdict);
        Assert.Contains("in the order far, near", Find(swapped, RouteFindings.Order)!.Sentence, StringComparison.Ordinal);
        Assert.Contains("one place", Find(Check(Quarter(c => c with { Supports = [far, far], Length = Levers.Mm(1300) })), LieRules.Rests)!.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(600, LieRules.Rests)]
    [InlineData(6000, LieRules.Rests)]
    public void Length_Impossible_IsRefusedInWords(double length, string rule)
    {
        var answer = Check(Quarter(c => c with { Length = Levers.Mm(length) }));
        Assert.Null(answer.Route!.Lie);
        Assert.Equal(Verdict.Fail, Find(answer, rule)!.Verdict);
        // The rest of the chain goes on with what is typed, and asks for it.
        Assert.Contains(answer.Needs, n => n.Path == "cable.bendTotal");
    }

    [Fact]
    public void Clamps_ByTheConduitsDiameter_HaveTheirDash()
    {
        // MS21919: dash in sixteenths of an inch; 3/16 in conduit, dash 3.
        Finding Of(double size) => Find(Check(Quarter(c => c with
        {
            Conduit = c.Conduit! with { Outside = Levers.Mm(4.7625) },
            Supports = [new() { Place = At(560, 240, 0), Size = Length.FromInches(size) }],
        })), "route/clamps")!;
        Assert.Contains("dash 3", Of(0.1875).Sentence, StringComparison.Ordinal);
        Assert.Equal(Verdict.Clear, Of(0.1875).Verdict);
        Assert.Equal(Verdict.Caution, Of(0.25).Verdict);
        Assert.Equal(Verdict.Fail, Of(0.125).Verdict);
    }

    [Fact]
    public void Ends_NotKnown_AreAskedFor()
    {
        var answer = Check(Quarter(c => c with { Ends = null, Supports = [new() { Place = At(560, 240, 0) }] }));
        Assert.Null(answer.Route);
        Assert.Equal(["cable.ends.arrives", "cable.ends.leaves"], answer.Needs.Select(n => n.Path).Where(p => p.StartsWith("cable.ends", StringComparison.Ordinal)).Order());
    }

    [Fact]
    public void Start_FromSheetAndHole_IsTheBushingsEnd()
    {
        var sheet = new Sheet { Id = "panel", At = At(0, 0, 0), Normal = new(-1, 0, 0) };
        var answer = Check(Quarter(c => c with { Ends = c.Ends! with { Leaves = null } }) with
        {
            CockpitEnd = Runs.Sound.CockpitEnd! with { Sheet = sheet, Hole = At(0, 0, 0), Bushing = new() { Length = Levers.Mm(25) } },
        });
        Assert.InRange((answer.Route!.Case.Start - new Vector3(0.025, 0, 0)).Size, 0, 1e-12);
        Assert.InRange((answer.Route.Case.StartAlong - new Vector3(1, 0, 0)).Size, 0, 1e-12);
    }

    [Fact]
    public void Point_NotKnown_IsAskedFor_AndNothingThrows()
    {
        var answer = Check(Quarter(c => c with { Supports = [new() { Place = PointAt.NotKnown("clamp") }] }));
        Assert.Contains(answer.Needs, n => n.Path == "points.clamp");
        var lever = Check(Runs.Sound with { LeverEnd = Runs.Sound.LeverEnd! with { Bench = null, Placed = new() { Pivot = PointAt.NotKnown("pivot"), Axis = new(0, 1, 0), Zero = new(0, 0, 1), Anchor = At(0, 0, 0) } } });
        Assert.Contains(lever.Needs, n => n.Path == "points.pivot");
        Assert.Null(lever.Sweep);
    }

    [Fact]
    public void Figures_NamedByFindings_AreThere()
    {
        var answer = Check(Quarter(c => c with { Ordered = Levers.Mm(1500), BendTotal = Levers.Degrees(300) }));
        Assert.All(answer.Findings.Where(f => f.Figure is not null && f.Rule.StartsWith("route/", StringComparison.Ordinal)), f => Assert.NotNull(answer.Find(f.Figure!)));
        Assert.All(answer.Findings, f => Assert.True(RuleBook.Holds(f.Rule), f.Rule));
    }

    [Fact]
    public void TableEdge_InTheFile_GivesTheStiffness()
    {
        // Small droop: w l^4 / (8 d) = 0.01 N/m x (0.5 m)^4 / (8 x 0.5 mm) = 0.15625 N m2.
        var answer = Check(Quarter(c => c with { Conduit = c.Conduit! with { TableEdge = new(Levers.Mm(500), Levers.Mm(0.5)), Weight = new(new(0.01), 0, 0) } }));
        Assert.Equal(0.15625, answer.Route!.Case.Stiffness!.Value, 1e-4 * 0.15625);
        Assert.Equal(-0.01, answer.Route.Case.Weight.Z, 1e-12);
    }
}
