using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Route;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Tests.Route.Laws;

public class LieTests
{
    private const double Inch = 0.0254;
    private static readonly SourceRef Practice = new("common-practice", "", Evidence.CommonPractice);
    private static readonly FigureWriter Say = new(new Display());
    private static readonly Vector3 X = new(1, 0, 0), Y = new(0, 1, 0);

    [Fact]
    public void Nonsense_IsRefusedWithItsReason()
    {
        NoLieReason? Of(LieCase of) => LieSolver.Solve(of).Refusal?.Reason;
        var of = Quarter(1.6);
        Assert.Equal(NoLieReason.TooSlack, Of(of with { Length = 1000 }));
        Assert.Equal(NoLieReason.TooShort, Of(of with { Length = 1e-6 }));
        Assert.Equal(NoLieReason.OnePlace, Of(of with { End = of.Start }));
        Assert.Equal(NoLieReason.OnePlace, Of(of with { Supports = [new(of.Start, SupportKind.Grommet)] }));
        Assert.Equal(NoLieReason.OnePlace, Of(of with { Supports = [new(X, SupportKind.Grommet), new(X, SupportKind.Sliding, Y)] }));
        // Supports in the wrong order: the way over them is longer than the conduit.
        Assert.Equal(NoLieReason.TooShort, Of(of with { Supports = [new(new(0.95, 0.7, 0), SupportKind.Grommet), new(new(0.3, 0.02, 0), SupportKind.Grommet)] }));
        Assert.Equal(NoLieReason.ClampOutOfPlace, Of(of with { Supports = [new(new(0.6, 0.15, 0), SupportKind.Tight, X, 0.2)] }));
        Assert.Null(LieSolver.NaturalLength(of with { End = of.Start }));
        LieCase[] notNumbers =
        [
            of with { Length = double.NaN }, of with { Length = 0 }, of with { Length = double.PositiveInfinity }, of with { LeastRadius = 0 }, of with { LeastRadius = double.NaN },
            of with { Stiffness = double.NaN }, of with { Start = new(double.NaN, 0, 0) }, of with { StartAlong = default }, of with { EndAlong = new(0, double.NaN, 0) },
            of with { Supports = [new(new(0, double.PositiveInfinity, 0), SupportKind.Grommet)] }, of with { Supports = [new(X, SupportKind.Sliding, default(Vector3))] },
            of with { Weight = new(0, 0, double.NaN) },
        ];
        Assert.All(notNumbers, n => Assert.ThrowsAny<ArgumentException>(() => LieSolver.Solve(n)));
    }

    private static LieCase Quarter(double length) => new() { Start = default, StartAlong = X, End = X + Y, EndAlong = Y, Length = length, LeastRadius = 0.1 };

    private static LieCase Straight(double slack) => new() { Start = default, StartAlong = X, End = X, EndAlong = X, Length = 1 + slack, LeastRadius = 0.1 };

    private static LieCase Supported() => new()
    {
        Start = default,
        StartAlong = X,
        Supports =
        [
            new(new(0.3, 0.02, 0), SupportKind.Sliding, new(0.95, 0.2, 0)),
            new(new(0.6, 0.15, 0.02), SupportKind.Grommet),
            new(new(0.8, 0.3, 0.05), SupportKind.Tight, new(0.6, 0.8, 0.1)),
        ],
        End = new(0.9, 0.6, 0.1),
        EndAlong = Y,
        Length = 1.24,
        LeastRadius = 0.1,
        Stiffness = 0.1,
        Weight = new(0, 0, -1),
    };

    private static LieLimits Limits(double? radius = 0.1, Evidence evidence = Evidence.Read) => new(
        radius is { } r ? new(r, Practice with { Evidence = evidence }) : null,
        new(1.25, Practice),
        new(0.61, Practice),
        new(3, Practice),
        new(2 * Math.PI, Practice));

    private static Lie Solved(LieCase of)
    {
        var answer = LieSolver.Solve(of);
        Assert.NotNull(answer.Lie);
        return answer.Lie;
    }

    [Fact]
    public void Lie_ThreeSupports_HasSpansLoadsAndBalance()
    {
        var lie = Solved(Supported());
        Assert.Equal(4, lie.Spans.Count);
        Assert.Equal(1.24, lie.Spans.Sum(s => s.Length), 1e-9);
        Assert.All(lie.Spans, s => Assert.True(s.Length >= s.Chord));
        Assert.Equal(5, lie.Loads.Count);
        var sum = lie.Loads.Aggregate(new Vector3(0, 0, -1.24), (total, load) => total + load.Force);
        Assert.InRange(sum.Size, 0, 1e-9);
        // A grommet holds no direction.
        Assert.InRange(lie.Loads[2].Moment.Size, 0, 1e-5);
        Assert.False(lie.IsLoop);
    }

    [Fact]
    public void Lie_StiffnessNotKnown_HasTheSameShapeAndNoLoads()
    {
        var of = Supported() with { Weight = default };
        Lie known = Solved(of), unknown = Solved(of with { Stiffness = null });
        Assert.Empty(unknown.Loads);
        Assert.Equal(known.LeastRadius, unknown.LeastRadius, 1e-9);
        Assert.Equal(known.BendTotal, unknown.BendTotal, 1e-9);
    }

    [Theory]
    // Largest move over the length added (1 % of the way): closed forms of the bow, docs/theory/route.md.
    [InlineData(0.001, 4.7)]
    public void Move_NearlyStraight_IsManyTimesTheLengthAdded(double slack, double ratio) =>
        Assert.Equal(ratio, Solved(Straight(slack)).MovePerLength, 0.1);

    [Fact]
    public void Move_OneHonestBend_IsAboutTheLengthAdded() => Assert.InRange(Solved(Quarter(1.6)).MovePerLength, 0.5, 1.5);

    [Fact]
    public void Bow_InLine_FallsToAnySide()
    {
        Assert.True(Solved(Straight(0.02)).FallsToAnySide);
        Assert.False(Solved(Straight(0.02) with { Stiffness = 0.1, Weight = new(0, 0, -1) }).FallsToAnySide);
    }

    [Fact]
    public void Contact_BarAgainstTheBend_IsPressedOutAndSaidWithItsForce()
    {
        // Free, the quarter bend passes (0.8, 0.2); a bar along z stands there.
        var of = Quarter(1.7) with { Stiffness = 0.1, ConduitRadius = 0.004, Obstacles = [new("bar", p => Math.Sqrt(((p.X - 0.82) * (p.X - 0.82)) + ((p.Y - 0.18) * (p.Y - 0.18))) - 0.05)] };
        Lie free = Solved(of with { Obstacles = [] }), lie = Solved(of);
        Assert.Empty(free.Contacts);
        var contact = Assert.Single(lie.Contacts);
        Assert.Equal("bar", contact.Name);
        Assert.Equal(0.85, contact.At, 0.1);
        Assert.InRange(lie.Shape.LeastGap, -2e-4, 1e-9);
        Assert.True(lie.Shape.Energy > free.Shape.Energy);
        var sum = lie.Shape.Contacts.Aggregate(default(Vector3), (a, c) => a + c.Force) + lie.Loads.Aggregate(default(Vector3), (a, l) => a + l.Force);
        Assert.InRange(sum.Size, 0, 1e-6 * contact.Force);
        var finding = LieRules.Find(new(lie, null), Limits(), Say).Single(f => f.Rule == LieRules.Contact);
        Assert.Equal(Verdict.Caution, finding.Verdict);
        Assert.Contains("against bar", finding.Sentence);
    }

    [Fact]
    public void Follow_EndDragged_EndsWhereASolveFromTheStartDoes()
    {
        var lie = Solved(Supported());
        for (var step = 1; step <= 5; step++)
        {
            var of = Supported() with { End = new(0.9 + (0.01 * step), 0.6, 0.1 - (0.01 * step)), Length = 1.24 + (0.004 * step) };
            lie = LieSolver.Follow(of, lie).Lie!;
            Assert.Equal(of, lie.Case);
            var solved = Solved(of);
            Assert.InRange(LieSolver.Apart(lie.Shape, solved.Shape), 0, 1e-9);
            Assert.Equal(solved.LeastRadius, lie.LeastRadius, 1e-9);
        }
    }

    [Fact]
    public void Follow_OtherLie_StaysOnItsSide()
    {
        // Much slack between crossed ends rests in more than one place: the higher one is followed as long as it holds.
        var of = new LieCase { Start = default, StartAlong = new(0.2, 0.9, 0.4), End = X, EndAlong = new(0.3, 0.5, -0.8), Length = 2.6 };
        var lie = Solved(of);
        Assert.NotEmpty(lie.Others);
        var other = lie.Others[0];
        var fall = lie.Falls[0];
        Assert.True(fall.Far > 0.05 && fall.EnergyOver > 1);
        Assert.InRange((lie.Shape.PointAt(fall.At) + (fall.Far * fall.Toward) - other.PointAt(fall.At)).Size, 0, 1e-9);
        var moved = LieSolver.Follow(of with { Length = 2.61 }, lie with { Shape = other, Others = [lie.Shape] }).Lie!;
        Assert.InRange(LieSolver.Apart(moved.Shape, other), 1e-6, 0.02);
        Assert.True(moved.Shape.Energy > Assert.Single(moved.Others).Energy);
    }

    [Fact]
    public void Follow_FarAway_IsSolvedFromTheStart()
    {
        var lie = Solved(Quarter(1.6));
        var of = Straight(0.3) with { EndAlong = -X };
        Assert.Equal(LieSolver.Solve(of), LieSolver.Follow(of, lie));
        Assert.Equal(NoLieReason.TooShort, LieSolver.Follow(Straight(-0.01), lie).Refusal?.Reason);
    }

    [Fact]
    public void Refusals_SayWhatIsTheMatter()
    {
        Refused(Straight(-0.01), NoLieReason.TooShort, "straight way");
        Refused(Straight(3.5), NoLieReason.TooSlack, "loops");
        var clamped = Supported();
        Refused(clamped with { Supports = [clamped.Supports[0], clamped.Supports[1], clamped.Supports[2] with { At = 0.2 }] }, NoLieReason.ClampOutOfPlace, "tight clamps");

        static void Refused(LieCase of, NoLieReason reason, string words)
        {
            var answer = LieSolver.Solve(of);
            Assert.Equal(reason, answer.Refusal?.Reason);
            Assert.Contains(words, answer.Refusal!.Say(Say));
            Assert.Equal(Verdict.Fail, Assert.Single(LieRules.Find(answer, Limits(), Say)).Verdict);
        }
    }

    [Fact]
    public void ShortestWay_ArcAndStraight_IsTheClosedForm()
    {
        // Quarter turn, R 0.1: 90 degrees of arc and two legs of 0.9 would do; one end alone needs less.
        var shortest = LieSolver.ShortestWay(Quarter(1.7));
        Assert.InRange(shortest, Math.Sqrt(2), 1.8 + (0.05 * Math.PI));
        // Straight behind: half a circle and a straight line, no shorter than that.
        var behind = Quarter(3) with { End = new(0, 0.2, 0), EndAlong = -X };
        Assert.Equal(0.1 * Math.PI, LieSolver.ShortestWay(behind), 1e-9);
        Assert.Equal(1, LieSolver.ShortestWay(Straight(0.5)), 1e-12);
    }

    [Fact]
    public void NaturalLength_QuarterBend_HasTheGentlestNeighbourhood()
    {
        var of = Quarter(1.6);
        var natural = LieSolver.NaturalLength(of);
        Assert.InRange(natural ?? 0, 1.55, 1.66);
        // Too short is much worse than too long.
        double fit = Solved(Quarter(natural!.Value)).LeastRadius;
        Assert.True(Solved(Quarter(0.94 * natural.Value)).LeastRadius < 0.6 * fit);
        Assert.True(Solved(Quarter(1.06 * natural.Value)).LeastRadius > 0.6 * fit);
    }

    [Fact]
    public void Order_RoundsUp_AndSolvesAgain()
    {
        var planned = Solved(Quarter(1.61));
        var order = LengthToOrder.Find(planned, new(0.05, 0.08, 0.03, 0.05, Inch), Inch);
        Assert.Equal(1.66, order.Conduit, 1e-12);
        Assert.Equal(1.82, order.Wire, 1e-12);
        Assert.Equal(66 * Inch, order.ConduitOrdered, 1e-12);
        Assert.Equal(73 * Inch, order.WireOrdered, 1e-12);
        Assert.Equal((66 * Inch) - 1.66, order.AsOrdered.Change, 1e-12);
        Assert.Equal(planned.Case.Length + Inch, order.Longer.Answer.Lie!.Case.Length, 1e-12);
        // A quarter bend moves by about as much as is added.
        Assert.InRange(order.Longer.Moved / Inch, 0.5, 1.5);
        Assert.InRange(order.Shorter.Moved / Inch, 0.5, 1.5);
        // A whole number of steps stays.
        Assert.Equal(66 * Inch, LengthToOrder.Find(Solved(Quarter(66 * Inch)), new(0, 0, 0, 0, Inch), Inch).ConduitOrdered, 1e-12);
    }

    [Fact]
    public void Order_OneStepLessThanTheWay_IsRefusedNotGuessed()
    {
        var order = LengthToOrder.Find(Solved(Straight(0.01)), new(0, 0, 0, 0, Inch), Inch);
        Assert.Equal(NoLieReason.TooShort, order.Shorter.Answer.Refusal?.Reason);
        Assert.True(double.IsNaN(order.Shorter.Moved));
        // One inch too much on a straight run a yard long bows it by several inches.
        Assert.InRange(order.Longer.Moved / Inch, 2, 8);
    }

    [Fact]
    public void Radius_ByMargin_IsFailCautionOrClear()
    {
        var lie = Solved(Quarter(1.6));
        Assert.Equal(Verdict.Fail, Of(lie.LeastRadius * 1.01));
        Assert.Equal(Verdict.Caution, Of(lie.LeastRadius * 0.99));
        Assert.Equal(Verdict.Clear, Of(lie.LeastRadius / 1.26));
        Assert.Equal(Verdict.Caution, Of(lie.LeastRadius / 1.26, Evidence.Memory));
        Assert.Equal(Verdict.NeedsInput, Of(null));

        Verdict Of(double? least, Evidence evidence = Evidence.Read) =>
            LieRules.Find(new(lie, null), Limits(least, evidence), Say).Single(f => f.Rule == LieRules.Radius).Verdict;
    }

    [Fact]
    public void Findings_SupportsAndMovement_NameTheirSources()
    {
        var found = LieRules.Find(LieSolver.Solve(Straight(0.001)), Limits(), Say).ToDictionary(f => f.Rule);
        Assert.Equal(Verdict.Caution, found[LieRules.Supports].Verdict);
        Assert.Equal(Verdict.Caution, found[LieRules.Movement].Verdict);
        Assert.Equal(Verdict.Caution, found[LieRules.Rests].Verdict);
        Assert.Equal(Verdict.Clear, found[LieRules.BendTotal].Verdict);
        Assert.All(found.Values, f => Assert.NotEmpty(f.Sources));
        var good = LieRules.Find(LieSolver.Solve(Supported()), Limits(), Say).ToDictionary(f => f.Rule);
        Assert.Equal(Verdict.Clear, good[LieRules.Supports].Verdict);
    }
}
