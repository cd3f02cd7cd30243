using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Curves.Laws;

public class ElasticCurveTests
{
    private const int Cases = 100;

    private static ElasticAnswer Solve(ElasticProblem problem) => ElasticCurveSolver.Solve(problem);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void RandomEnds_All_AreFoundAndStable(bool planar)
    {
        for (var i = 0; i < Cases / 2; i++)
        {
            var answer = Solve(RandomCurves.Problem(i, planar));
            Assert.True(answer.Outcome == ElasticOutcome.Found, $"case {i}: {answer.Outcome}");
            var curve = answer.Curve!;
            Assert.True(curve.Stability == CurveStability.Stable, $"case {i}");
            Assert.InRange(curve.Spread, 0, 1e-3);
            Assert.All(answer.Others, o => Assert.True(o.Energy >= curve.Energy));
        }
    }

    [Fact]
    public void RandomEnds_AnyDirectionAndMuchSlack_AreFoundAndStable()
    {
        for (var i = 0; i < 24; i++)
        {
            var answer = Solve(RandomCurves.Problem(i, false, Math.PI, 1.05, 4) with { Segments = 64 });
            Assert.True(answer.Curve?.Stability == CurveStability.Stable, $"case {i}: {answer.Outcome}");
        }
    }

    [Fact]
    public void Curve_Always_MeetsEndsAndLength()
    {
        for (var i = 0; i < 30; i++)
        {
            var problem = RandomCurves.Problem(i, false);
            var curve = Solve(problem with { Starts = 1 }).Curve!;
            Assert.InRange((curve.Nodes[^1].Point - problem.End!.Value).Size, 0, 1e-10);
            Assert.Equal(problem.Length!.Value, curve.Length, 1e-12);
            Assert.InRange(Vector3.AngleBetween(curve.Nodes[0].Tangent, problem.StartDirection!.Value), 0, 1e-12);
            Assert.InRange(Vector3.AngleBetween(curve.Nodes[^1].Tangent, problem.EndDirection!.Value), 0, 1e-12);
        }
    }

    [Fact]
    public void BendTotal_Always_IsAtLeastTheAngleBetweenTheEnds()
    {
        // Fenchel: the tangent's path on the unit sphere is no shorter than the great circle between its ends.
        for (var i = 0; i < 60; i++)
        {
            var curve = Solve(RandomCurves.Problem(i, i % 2 == 0) with { Starts = 1 }).Curve!;
            var angle = Vector3.AngleBetween(curve.Nodes[0].Tangent, curve.Nodes[^1].Tangent);
            Assert.True(curve.BendTotal >= angle - 1e-7, $"case {i}: {curve.BendTotal} {angle}");
        }
    }

    [Fact]
    public void BendTotal_TwiceTheSegments_AgreesToFourthOrder()
    {
        for (var i = 0; i < 20; i++)
        {
            var problem = RandomCurves.Problem(i, i % 2 == 0) with { Starts = 1 };
            ElasticCurve few = Solve(problem with { Segments = 100 }).Curve!, many = Solve(problem with { Segments = 400 }).Curve!;
            Assert.Equal(many.BendTotal, few.BendTotal, 3e-5 * many.BendTotal);
            Assert.Equal(many.LeastRadius, few.LeastRadius, 3e-5 * many.LeastRadius);
            Assert.Equal(many.BendingEnergy, few.BendingEnergy, 1e-5 * many.BendingEnergy);
        }
    }

    [Fact]
    public void RigidMotion_ChangesNothing()
    {
        for (var i = 0; i < 15; i++)
        {
            var problem = RandomCurves.Problem(i, false);
            var random = new CounterRandom(5, i);
            Vector3 move = new(3 * random.Uniform(0), -random.Uniform(1), 2);
            var (u, v, w) = Axes(random);
            Vector3 Turn(Vector3 a) => (a.X * u) + (a.Y * v) + (a.Z * w);
            var moved = problem with { Start = move, StartDirection = Turn(problem.StartDirection!.Value), End = move + Turn(problem.End!.Value), EndDirection = Turn(problem.EndDirection!.Value) };
            ElasticCurve a = Solve(problem).Curve!, b = Solve(moved).Curve!;
            Assert.Equal(a.BendingEnergy, b.BendingEnergy, 1e-8 * a.BendingEnergy);
            Assert.Equal(a.LeastRadius, b.LeastRadius, 1e-8);
            Assert.InRange((move + Turn(a.PointAt(0.4)) - b.PointAt(0.4)).Size, 0, 1e-8);
        }
    }

    [Fact]
    public void Reversal_GivesTheSameCurveBackwards()
    {
        for (var i = 0; i < 15; i++)
        {
            var problem = RandomCurves.Problem(i, false);
            var back = problem with { Start = problem.End!.Value, StartDirection = -problem.EndDirection!.Value, End = problem.Start, EndDirection = -problem.StartDirection!.Value };
            ElasticCurve a = Solve(problem).Curve!, b = Solve(back).Curve!;
            Assert.InRange((a.PointAt(0.3) - b.PointAt(a.Length - 0.3)).Size, 0, 1e-8);
            Assert.InRange((a.Reactions[0].Force - b.Reactions[1].Force).Size, 0, 1e-6 * Math.Max(1, a.Reactions[0].Force.Size));
            Assert.InRange((a.Reactions[0].Moment - b.Reactions[1].Moment).Size, 0, 1e-6 * Math.Max(1, a.Reactions[0].Moment.Size));
        }
    }

    [Fact]
    public void Scale_LengthsGrow_ForcesFallWithTheSquare()
    {
        const double Scale = 0.37, Stiff = 5;
        for (var i = 0; i < 15; i++)
        {
            var problem = RandomCurves.Problem(i, false) with { Starts = 1 };
            ElasticCurve a = Solve(problem).Curve!, b = Solve(problem with { End = Scale * problem.End!.Value, Length = Scale * problem.Length, Stiffness = Stiff }).Curve!;
            Assert.Equal(Scale * a.LeastRadius, b.LeastRadius, 1e-9);
            Assert.Equal(a.BendTotal, b.BendTotal, 1e-9);
            Assert.InRange(((Stiff / (Scale * Scale) * a.Reactions[0].Force) - b.Reactions[0].Force).Size, 0, 1e-7 * b.Reactions[0].Force.Size);
            Assert.Equal(Stiff / Scale * a.BendingEnergy, b.BendingEnergy, 1e-8 * b.BendingEnergy);
        }
    }

    [Fact]
    public void Reactions_WithWeightAndSupports_BalanceTheLoad()
    {
        var answer = Solve(Supported(new(0, 0, -8)));
        var curve = answer.Curve!;
        var force = curve.Reactions.Aggregate(default(Vector3), (sum, r) => sum + r.Force) + (curve.Length * new Vector3(0, 0, -8));
        Assert.InRange(force.Size, 0, 1e-9);
        // Moments about the origin: reactions and weight along the curve (Simpson over the nodes).
        var moment = default(Vector3);
        foreach (var r in curve.Reactions)
            moment += r.Moment + Vector3.Cross(curve.PointAt(r.At), r.Force);
        var first = default(Vector3);
        for (var i = 0; i + 1 < curve.Nodes.Count; i++)
        {
            double a = curve.Nodes[i].At, b = curve.Nodes[i + 1].At;
            first += ((b - a) / 6) * (curve.Nodes[i].Point + (4 * curve.PointAt(0.5 * (a + b))) + curve.Nodes[i + 1].Point);
        }

        Assert.InRange((moment + Vector3.Cross(first, new(0, 0, -8))).Size, 0, 1e-4);
    }

    [Fact]
    public void SlidingSupports_PushAlikeOnBothSides()
    {
        foreach (var load in (Vector3[])[default, new(0, 0, -4)])
        {
            var curve = Solve(Supported(load)).Curve!;
            Assert.Equal(CurveStability.Stable, curve.Stability);
            Assert.Equal(1.3, curve.Length, 1e-10);
            // What is equal where it slides: 1/2 curvature^2 + force along it; so the support's force along it is the jump of the first.
            for (var s = 1; s < curve.Holds.Count - 1; s++)
            {
                Vector3 t = curve.Nodes[curve.Holds[s]].Tangent, right = curve.Nodes[curve.Holds[s]].Curvature;
                // Left curvature from the moment jump: m = t x curvature.
                var left = right + Vector3.Cross(curve.Reactions[s].Moment, t);
                var along = Vector3.Dot(curve.Reactions[s].Force, t);
                Assert.Equal(0, along + (0.5 * (Vector3.Dot(left, left) - Vector3.Dot(right, right))), 2e-5);
            }
        }
    }

    [Fact]
    public void Energy_SupportLetGo_Falls()
    {
        var held = Supported(default);
        var clampToGrommet = held with { Supports = [held.Supports[0] with { Direction = null }, held.Supports[1]] };
        double clamped = Solve(held).Curve!.Energy, free = Solve(clampToGrommet).Curve!.Energy, none = Solve(held with { Supports = [] }).Curve!.Energy;
        Assert.True(free <= clamped && none <= free, $"{clamped} {free} {none}");
    }

    [Fact]
    public void GripWhereItSlides_ChangesNothing()
    {
        var free = Supported(default);
        var curve = Solve(free).Curve!;
        var gripped = free with { Supports = [.. free.Supports.Select((s, i) => s with { At = curve.Nodes[curve.Holds[i + 1]].At })] };
        var mixed = free with { Supports = [gripped.Supports[0], free.Supports[1]] };
        Assert.InRange((Solve(gripped).Curve!.PointAt(0.9) - curve.PointAt(0.9)).Size, 0, 1e-6);
        Assert.InRange((Solve(mixed).Curve!.PointAt(0.9) - curve.PointAt(0.9)).Size, 0, 1e-6);
    }

    [Fact]
    public void TooShort_AndOutOfOrder_AreRefused()
    {
        var problem = RandomCurves.Problem(1, true);
        Assert.Equal(ElasticOutcome.TooShort, Solve(problem with { Length = 0.99 }).Outcome);
        var supported = Supported(default);
        Assert.Equal(ElasticOutcome.OutOfOrder, Solve(supported with { Supports = [supported.Supports[0] with { At = 0.1 }, supported.Supports[1]] }).Outcome);
    }

    [Fact]
    public void EndsInLine_ABow_IsNeutralAndStaysOneShape()
    {
        ElasticProblem problem = new() { Start = default, StartDirection = new(1, 0, 0), End = new(1, 0, 0), EndDirection = new(1, 0, 0), Length = 1.1 };
        var answer = Solve(problem);
        Assert.Equal(CurveStability.Neutral, answer.Curve!.Stability);
        Assert.DoesNotContain(answer.Others, o => Math.Abs(o.Energy - answer.Curve.Energy) < 1e-6);
        // With a little weight it hangs, and is held.
        var hanging = Solve(problem with { Load = new(0, 0, -1) }).Curve!;
        Assert.Equal(CurveStability.Stable, hanging.Stability);
        Assert.True(hanging.PointAt(0.55).Z < -0.15);
    }

    [Fact]
    public void SameProblem_SameBytes()
    {
        var problem = RandomCurves.Problem(7, false);
        Assert.Equal(Solve(problem).Curve, Solve(problem).Curve);
    }

    private static ElasticProblem Supported(Vector3 load) => new()
    {
        Start = new(0, 0, 0),
        StartDirection = new(1, 0, 0),
        Supports = [new(new(0.45, 0.1, 0.02), new(0.9, 0.3, 0.1)), new(new(0.8, 0.3, 0.1))],
        End = new(1, 0.6, 0.2),
        EndDirection = new(0.1, 1, 0.2),
        Length = 1.3,
        Load = load,
    };

    private static (Vector3 U, Vector3 V, Vector3 W) Axes(CounterRandom random)
    {
        var u = new Vector3(random.Uniform(10) - 0.5, random.Uniform(11) - 0.5, random.Uniform(12) - 0.5).Unit();
        var v = Vector3.Cross(u, new(0.3, 0.5, -0.8)).Unit();
        return (u, v, Vector3.Cross(u, v));
    }
}
