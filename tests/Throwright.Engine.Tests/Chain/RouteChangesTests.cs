using Throwright.Engine.Chain;
using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Route;
using Throwright.Engine.Tests.Throw;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Chain;

/// <summary>The lie against something in its way, with a moving end, with its end turned.</summary>
public class RouteChangesTests
{
    private const double Half = 0.0025;

    private static PointAt At(double x, double y, double z) => new(Levers.Mm(x), Levers.Mm(y), Levers.Mm(z));

    /// <summary>A quarter bend, 800 mm each way, with stiffness.</summary>
    private static Run Quarter(CableEnds? with = null, params Support[] supports) => Runs.Sound with
    {
        Cable = Runs.Sound.Cable! with
        {
            Bends = [],
            Length = null,
            LongestStraight = null,
            Conduit = Runs.Sound.Cable!.Conduit! with { Outside = Levers.Mm(2000 * Half), MinRadius = Length.FromMillimetres(75), Bending = Toleranced<BendingStiffness>.Exact(new(0.2)) },
            Supports = [.. supports],
            Ends = (with ?? new()) with { Leaves = At(0, 0, 0), LeavesAlong = new(1, 0, 0), Arrives = At(800, 800, 0), ArrivesAlong = new(0, 1, 0) },
        },
    };

    private static RunAnswer Check(Run run, params Body[] bodies)
    {
        var aircraft = Runs.Aircraft with { Bodies = [.. bodies] };
        var answer = RunCheck.Solve(aircraft, run, new(Samples: 16, Tolerance: 2e-5, Boxes: 200));
        answer = answer with { Route = RouteInputs.Held(answer.Route!, run, RouteObstacles.Of(aircraft, null, null)) };
        return answer with { Findings = [.. RouteFindings.Of(aircraft, answer, new(aircraft.Display))], Figures = [.. RouteFigures.Of(answer)] };
    }

    private static Finding? Find(RunAnswer answer, string rule) => answer.Findings.FirstOrDefault(f => f.Rule == rule);

    private static Body Ball(Vector3 place, double radius) =>
        new() { Id = "ball", Parts = [new("ball", new SphereShape(At(1000 * place.X, 1000 * place.Y, 1000 * place.Z), Levers.Mm(1000 * radius)))] };

    [Fact]
    public void BodyInTheWay_OfTheFreeLie_ConduitRestsAgainstIt()
    {
        Assert.Null(Check(Quarter()).Route!.Resting);
        var free = Check(Quarter()).Route!.Lie!.Shape.PointAt(0.65);
        var middle = free + new Vector3(0.01, -0.01, 0.004);
        var answer = Check(Quarter(), Ball(middle, 0.03));
        var resting = answer.Route!.Resting!;
        var contact = Assert.Single(resting.Contacts);
        Assert.True(contact.Force > 0);
        // Dense points alone: it touches. Nodes stay outside; between two of them 13 mm apart a ball of 30 mm is entered by 0.7 mm at most.
        var nearest = Enumerable.Range(0, 4001).Min(i => (resting.Shape.PointAt(resting.Shape.Length * i / 4000) - middle).Size) - 0.03 - Half;
        Assert.InRange(nearest, -7e-4, 2e-5);
        Assert.True(resting.Shape.Energy > answer.Route.Lie!.Shape.Energy);
        Assert.Equal(answer.Route.Lie.Case.Length, resting.Shape.Length, 1e-9);
        Assert.Equal(Verdict.Caution, Find(answer, LieRules.Contact)!.Verdict);
        Assert.Contains("ball", Find(answer, LieRules.Contact)!.Sentence, StringComparison.Ordinal);
        Assert.Equal(contact.At, answer.Figures.Single(f => f.Id == "contact").Value, 1e-12);
        // The free lie does run through it.
        Assert.Equal(Verdict.Fail, Find(answer, RouteFindings.Chafe)!.Verdict);
    }

    [Fact]
    public void BodyInTheWay_ForceAndLostMotion_AreThoseOfTheRestingLie()
    {
        LadderEffort effort = new(Samples: 16, Tolerance: 2e-5, Boxes: 200);
        var free = RunCheck.Check(Runs.Aircraft, Quarter(), effort);
        var middle = free.Route!.Lie!.Shape.PointAt(0.65) + new Vector3(0.01, -0.01, 0.004);
        var aircraft = Runs.Aircraft with { Bodies = [Ball(middle, 0.03)] };
        var rests = RunCheck.Check(aircraft, Quarter(), effort);
        var resting = rests.Route!.Resting!;
        Assert.Equal(resting.BendTotal, rests.Cable!.Bends.Sum(b => b.Angle.Nominal.Radians), 1e-9);
        Assert.Equal(free.Route.Lie!.BendTotal, free.Cable!.Bends.Sum(b => b.Angle.Nominal.Radians), 1e-9);
        // Lost motion is bore clearance times bend total, besides the play of pins, which is the same.
        var clearance = rests.LadderCase![LadderInput.Clearance].Nominal;
        var more = resting.BendTotal - free.Route.Lie.BendTotal;
        Assert.True(Math.Abs(more) > 1e-3, $"{more}");
        Assert.Equal(clearance * more, rests.Ladder!.LostMotion - free.Ladder!.LostMotion, 1e-9);
        Assert.Equal(-Math.Sign(more), Math.Sign(rests.Ladder.KnobOut.Nominal - free.Ladder.KnobOut.Nominal));
        Assert.NotEqual(free.Forces!.MostPull.Nominal, rests.Forces!.MostPull.Nominal, 1e-3);
        // Alone, with the bends of the resting lie typed and no way described: the same force.
        var typed = Quarter() with { Cable = rests.Cable! with { Supports = [], Ends = null } };
        Assert.Equal(RunCheck.Check(Runs.Aircraft, typed, effort).Forces!.MostPull.Nominal, rests.Forces.MostPull.Nominal, 1e-6);
        Assert.Contains("rests", rests.Find("bend-total")!.Name, StringComparison.Ordinal);
        Assert.Equal(resting.BendTotal, rests.Find("bend-total")!.Value, 1e-12);
        // A search for a swivel and the rigging card start from the same.
        Assert.Equal(rests.Forces.MostPull.Nominal, RunCheck.SolveResting(aircraft, Quarter(), effort, null).Forces!.MostPull.Nominal, 1e-9);
        Assert.Equal(resting.BendTotal, Rigging.ToRig(aircraft, rests).Route!.Counted!.BendTotal, 1e-12);
    }

    [Fact]
    public void BodyInTheWay_OrderMovesAndClearance_AreThoseOfTheRestingLie()
    {
        var ends = new CableEnds { Moves = [new("engine down", Length.Zero, Length.Zero, Length.FromMillimetres(-10), new(0), null)] };
        var free = Check(Quarter(ends)).Route!;
        // Ball against the outside of the bend's middle, and a small one where the conduit is pressed to: free, 12 mm clear of it.
        var middle = free.Lie!.Shape.PointAt(0.65) + new Vector3(0.01, -0.01, 0.004);
        var aircraft = Runs.Aircraft with { Bodies = [Ball(middle, 0.03)] };
        var rests = RunCheck.Check(aircraft, Quarter(ends), new(Samples: 16, Tolerance: 2e-5, Boxes: 200)).Route!;
        var resting = rests.Resting!;
        double Nearest(Lie lie) => Enumerable.Range(0, 2001).Min(i => (lie.Shape.PointAt(lie.Shape.Length * i / 2000) - middle).Size) - 0.03 - Half;
        foreach (var other in (Lie[])[rests.Order!.Longer.Answer.Lie!, rests.Order.Shorter.Answer.Lie!, rests.Order.AsOrdered.Answer.Lie!, rests.AtMoves[0].Lie!])
            Assert.InRange(Nearest(other), -2e-4, 0.1);
        // As a solve from the start has it: a step more goes into the bow beside the ball.
        var alone = LieSolver.Solve(resting.Case with { Length = resting.Case.Length + rests.Order.Longer.Change }).Lie!;
        Assert.Equal(alone.LeastRadius, rests.Order.Longer.Answer.Lie!.LeastRadius, 1e-4);
        Assert.Equal(LieSolver.Apart(alone.Shape, resting.Shape), rests.Order.Longer.Moved, 1e-4);
        Assert.Equal(rests.Order.Conduit, resting.Case.Length + rests.InFittings, 1e-12);
        Assert.InRange(resting.MovePerLength, 0.05, 20);
        // Arms and other conduits meet it where it rests.
        var body = RunCheck.DeviceEndOf(aircraft, Quarter(ends)).Conduit!;
        var distance = PointDistance.Of(body.Solid, body.Home);
        var at = resting.Contacts[0];
        Assert.True(distance(at.Point) < 0);
        Assert.True((free.Lie.Shape.PointAt(at.At) - at.Point).Size > 0.005);
        Assert.All(Enumerable.Range(1, 20), i => Assert.True(distance(resting.Shape.PointAt(resting.Shape.Length * i / 21)) < 0));
    }

    [Fact]
    public void BendTotal_OfTheRestingLie_HasTheBendAtTheContact()
    {
        var free = Check(Quarter()).Route!.Lie!.Shape;
        var resting = Check(Quarter(), Ball(free.PointAt(0.65) + new Vector3(0.01, -0.01, 0.004), 0.03)).Route!.Resting!;
        // Corners of dense points, with no solver's figure in them.
        Vector3 P(int i) => resting.Shape.PointAt(resting.Shape.Length * i / 3000.0);
        var turned = 0.0;
        for (var i = 1; i < 3000; i++)
            turned += Math.Atan2(Vector3.Cross(P(i) - P(i - 1), P(i + 1) - P(i)).Size, Vector3.Dot(P(i) - P(i - 1), P(i + 1) - P(i)));
        Assert.Equal(turned, resting.BendTotal, 2e-3);
        // What touches presses, and leaves the bend itself without a step.
        var at = resting.Contacts[0].At;
        Assert.Equal((resting.Shape.TangentAt(at + 1e-3) - resting.Shape.TangentAt(at)).Size, (resting.Shape.TangentAt(at) - resting.Shape.TangentAt(at - 1e-3)).Size, 2e-4);
    }

    [Fact]
    public void HoldInsideABody_SaysThatTheRestIsNotKnown()
    {
        var lie = Check(Quarter()).Route!.Lie!.Shape;
        var answer = Check(Quarter(), Ball(lie.Nodes[0].Point + new Vector3(0.02, 0, 0), 0.025), Ball(lie.PointAt(0.65), 0.03) with { Id = "box" });
        Assert.Null(answer.Route!.Resting);
        Assert.Contains("was not found", Find(answer, LieRules.Contact)!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void OtherLie_NearHeat_IsToldThoughTheLowestKeepsAway()
    {
        var ends = new CableEnds();
        var slack = Quarter(ends) with { Cable = Quarter(ends).Cable! with { Length = Levers.Mm(2600), Ends = ends with { Leaves = At(0, 0, 0), LeavesAlong = new(0.2, 0.9, 0.4), Arrives = At(1000, 0, 0), ArrivesAlong = new(0.3, 0.5, -0.8) } } };
        var lie = Check(slack).Route!.Lie!;
        var fall = lie.Falls[0];
        var hot = Ball(lie.Others[0].PointAt(fall.At) + (0.04 * fall.Toward), 0.03) with { Id = "pipe", KeepAway = new(Length.FromMillimetres(25), KeepAwayCause.Heat) };
        var answer = Check(slack, hot);
        Assert.Equal(Verdict.Clear, Find(answer, RouteFindings.Heat)!.Verdict);
        var told = answer.Findings.Single(f => f.Rule == LieRules.Rests && f.Sentence.Contains("can also rest", StringComparison.Ordinal) && f.Sentence.Contains("pipe", StringComparison.Ordinal));
        Assert.Equal(Verdict.Fail, told.Verdict);
    }

    [Fact]
    public void HeatBesideTheRestingLie_CountsThough_TheFreeLieKeepsAway()
    {
        var free = Check(Quarter()).Route!.Lie!.Shape;
        Vector3 outward = new Vector3(1, -1, 0).Unit(), bend = free.PointAt(0.65);
        // Pressed inward by a ball outside its middle; a hot ball inside.
        var press = Ball(bend + (0.012 * outward), 0.03);
        var pressed = Check(Quarter(), press).Route!.Resting!;
        var way = (pressed.Shape.PointAt(0.65) - bend).Unit();
        var hot = Ball(pressed.Shape.PointAt(0.65) + (0.045 * way), 0.03) with { Id = "pipe", KeepAway = new(Length.FromMillimetres(25), KeepAwayCause.Heat) };
        Assert.NotEqual(Verdict.Fail, Find(Check(Quarter(), hot), RouteFindings.Heat)!.Verdict);
        Assert.Equal(Verdict.Fail, Find(Check(Quarter(), press, hot), RouteFindings.Heat)!.Verdict);
    }

    [Fact]
    public void AnchorThatMoves_BowFollows_EachExtremeShown()
    {
        var ends = new CableEnds { Moves = [new("engine down", Length.Zero, Length.Zero, Length.FromMillimetres(-10), new(0), null), new("engine aft", Length.FromMillimetres(6), Length.Zero, Length.Zero, new(2 * Math.PI / 180), new(0, 0, 1))] };
        var answer = Check(Quarter(ends));
        var (lie, down, aft) = (answer.Route!.Lie!, answer.Route.AtMoves[0], answer.Route.AtMoves[1]);
        // The stage alone, from the start instead of followed.
        var alone = LieSolver.Solve(lie.Case with { End = new(0.8, 0.8, -0.01) }).Lie!;
        Assert.Equal(alone.LeastRadius, down.Lie!.LeastRadius, 1e-5);
        Assert.Equal(LieSolver.Apart(alone.Shape, lie.Shape), down.Moved, 1e-6);
        Assert.InRange(down.Moved, 0.0099, 0.012);
        // Turned right-handed about up: the direction leans forward.
        Assert.True(Vector3.Dot(aft.Lie!.Case.EndAlong, new(1, 0, 0)) < 0);
        Assert.Equal(Verdict.Clear, Find(answer, RouteChangeFindings.EndMoves)!.Verdict);
        Assert.Equal(Math.Max(down.Moved, aft.Moved), answer.Figures.Single(f => f.Id == "end-moves").Value, 1e-12);
    }

    [Fact]
    public void AnchorThatMoves_BeyondTheSlack_Fails()
    {
        // A tight clamp just before the anchor: the short stretch behind it has nothing to give.
        var place = Check(Quarter()).Route!.Lie!.Shape;
        var near = place.PointAt(place.Length - 0.06);
        var clamp = new Support { Place = At(1000 * near.X, 1000 * near.Y, 1000 * near.Z) };
        var ends = new CableEnds { Moves = [new("engine up front", Length.Zero, Length.FromMillimetres(15), Length.Zero, new(0), null)] };
        var finding = Find(Check(Quarter(ends, clamp)), RouteChangeFindings.EndMoves)!;
        Assert.Equal(Verdict.Fail, finding.Verdict);
        Assert.Contains("pulled tight", finding.Sentence, StringComparison.Ordinal);
        // What the check fails is not recommended, as it is or otherwise.
        var solution = RouteSolve.Find(Runs.Aircraft, Quarter(ends, clamp), new(Runs.Aircraft.Display), stop: TestContext.Current.CancellationToken);
        Assert.False(solution.Options[0].Works);
        Assert.True(solution.Best is null || solution.Best.Answer.Route!.AtMoves.All(m => m.Lie is not null));
        // A clamp that slides lets the bend give.
        Assert.NotNull(Check(Quarter(ends, clamp with { Kind = SupportHold.SlidingClamp })).Route!.AtMoves[0].Lie);
    }

    [Fact]
    public void TurnedEnd_MovesTheConduit_AsTheStageSays()
    {
        var answer = Check(Quarter(new() { Twist = new(new(Math.PI / 2), 0.5) }));
        var alone = TrappedTwist.Find(answer.Route!.Lie!, Math.PI / 2, 0.5);
        Assert.Equal(alone.Moved, answer.Route.Twisted!.Lie.Moved, 1e-6);
        Assert.Equal(alone.Moved, answer.Figures.Single(f => f.Id == "twist-move").Value, 1e-6);
        var finding = Find(answer, RouteChangeFindings.Twist)!;
        Assert.Contains("Let it roll", finding.Why, StringComparison.Ordinal);
        Assert.Equal(Verdict.Clear, finding.Verdict);
        // A grommet next to the anchor lets it roll: nothing is claimed.
        var grommet = Check(Quarter(new() { Twist = new(new(Math.PI / 2), null) }, new Support { Place = At(750, 500, 0), Kind = SupportHold.Grommet }));
        Assert.Null(grommet.Route!.Twisted);
        Assert.Equal(Verdict.Caution, Find(grommet, RouteChangeFindings.Twist)!.Verdict);
        Assert.Null(Find(Check(Quarter()), RouteChangeFindings.Twist));
    }
}
