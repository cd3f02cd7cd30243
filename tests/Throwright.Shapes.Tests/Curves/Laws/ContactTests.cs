using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Curves.Laws;

/// <summary>Curves pressed against obstacles: nothing enters, forces only push, everything balances, energy is least.</summary>
public class ContactTests
{
    private static readonly Vector3 X = new(1, 0, 0);

    private static ElasticObstacle Ball(Vector3 centre, double radius) => new(p => (p - centre).Size - radius, 0);

    private static ElasticProblem Case(int number, int balls)
    {
        var problem = RandomCurves.Problem(700 + number, false, 1.2, 1.05, 1.5) with { Segments = 64 };
        var random = new CounterRandom(8, number);
        var free = ElasticCurveSolver.Solve(problem with { Starts = 1 }).Curve!;
        List<ElasticObstacle> obstacles = [];
        for (var at = 0; obstacles.Count < balls; at += 4)
        {
            double s = free.Length * (0.25 + (0.5 * random.Uniform(at))), radius = 0.04 + (0.06 * random.Uniform(at + 1)), turn = 6.28 * random.Uniform(at + 2);
            var t = free.TangentAt(s);
            var u = Vector3.Cross(t, new Vector3(0.3, -0.5, 0.8)).Unit();
            obstacles.Add(Ball(free.PointAt(s) + (radius * (0.5 + (0.4 * random.Uniform(at + 3))) * ((Math.Cos(turn) * u) + (Math.Sin(turn) * Vector3.Cross(t, u)))), radius));
        }

        return problem with { Obstacles = [.. obstacles] };
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void Pressed_Always_StaysOutIsPushedOutwardAndBalances(int balls)
    {
        for (var i = 0; i < 4; i++)
        {
            var problem = Case(i, balls);
            var answer = ElasticCurveSolver.Solve(problem);
            var curve = answer.Curve;
            Assert.True(curve?.Stability == CurveStability.Stable, $"case {i}: {answer.Outcome}");
            Assert.NotEmpty(curve.Contacts);
            foreach (var o in problem.Obstacles)
                Assert.All(curve.Nodes, n => Assert.True(o.DistanceAt(n.Point) > -1e-8));
            foreach (var c in curve.Contacts)
            {
                // Sign and gap: it touches where it is pushed, and is pushed outward.
                var o = problem.Obstacles[c.Obstacle];
                Assert.InRange(o.DistanceAt(c.Point), -1e-8, 1e-6);
                Assert.True(o.DistanceAt(c.Point + (1e-3 * c.Force.Unit())) > 9.9e-4);
            }

            var force = curve.Reactions.Aggregate(default(Vector3), (a, r) => a + r.Force) + curve.Contacts.Aggregate(default(Vector3), (a, c) => a + c.Force);
            Assert.InRange(force.Size, 0, 1e-4);
            var moment = curve.Reactions.Aggregate(default(Vector3), (a, r) => a + r.Moment + Vector3.Cross(curve.PointAt(r.At), r.Force)) + curve.Contacts.Aggregate(default(Vector3), (a, c) => a + Vector3.Cross(c.Point, c.Force));
            Assert.InRange(moment.Size, 0, 1e-3);
            Assert.True(curve.BendingEnergy >= ElasticCurveSolver.Solve(problem with { Obstacles = [] }).Curve!.BendingEnergy);
        }
    }

    [Fact]
    public void Cylinder_PlaneBow_IsTheMirroredHalfHeldAtItsTop()
    {
        // A bow pressed down a little on its middle by a bar across it is two mirrored halves, each clamped level at the bar's
        // underside: the contact force is twice the shear of one half. (Pressed more it would lean out of its plane.)
        const double Radius = 0.05;
        var free = new ElasticProblem { Start = default, StartDirection = new(0.8, 0.6, 0), End = X, EndDirection = new(0.8, -0.6, 0), Length = 1.1, Segments = 128, Starts = 5 };
        var top = ElasticCurveSolver.Solve(free).Curve!.PointAt(0.55).Y - 0.004;
        var curve = ElasticCurveSolver.Solve(free with { Obstacles = [new(p => Math.Sqrt(((p.X - 0.5) * (p.X - 0.5)) + ((p.Y - top - Radius) * (p.Y - top - Radius))) - Radius, 0)] }).Curve!;
        Assert.Equal(top, curve.PointAt(0.55).Y, 1e-6);
        var half = ElasticCurveSolver.Solve(new() { Start = default, StartDirection = new(0.8, 0.6, 0), End = new(0.5, top, 0), EndDirection = X, Length = 0.55, Segments = 64, Starts = 1 }).Curve!;
        Assert.Equal(2 * half.BendingEnergy, curve.BendingEnergy, 1e-5);
        var push = curve.Contacts.Aggregate(default(Vector3), (a, c) => a + c.Force);
        Assert.Equal(2 * half.Reactions[1].Force.Y, push.Y, 1e-3 * Math.Abs(push.Y));
        Assert.Equal(0, push.X, 1e-4);
    }

    [Fact]
    public void FarObstacle_ChangesNothing()
    {
        var problem = RandomCurves.Problem(3, false);
        ElasticCurve free = ElasticCurveSolver.Solve(problem).Curve!, with = ElasticCurveSolver.Solve(problem with { Obstacles = [Ball(new(0, 0, 5), 0.5)] }).Curve!;
        Assert.Empty(with.Contacts);
        Assert.Equal(free.Energy, with.Energy, 1e-9);
        Assert.InRange(with.LeastGap, 3, 5);
    }

    [Fact]
    public void SlidingSupport_WithObstacle_KeepsItsLength()
    {
        var problem = new ElasticProblem
        {
            Start = default,
            StartDirection = X,
            End = new(1, 0.5, 0),
            EndDirection = new(0, 1, 0),
            Length = 1.3,
            Load = new(0, 0, -4),
            Supports = [new(new(0.5, 0.05, 0))],
            Obstacles = [Ball(new(0.9, 0.18, 0.02), 0.08)],
        };
        var curve = ElasticCurveSolver.Solve(problem).Curve!;
        Assert.Equal(CurveStability.Stable, curve.Stability);
        Assert.NotEmpty(curve.Contacts);
        Assert.Equal(1.3, curve.Length, 1e-9);
        var force = curve.Reactions.Aggregate(1.3 * problem.Load, (a, r) => a + r.Force) + curve.Contacts.Aggregate(default(Vector3), (a, c) => a + c.Force);
        Assert.InRange(force.Size, 0, 1e-4);
    }
}
