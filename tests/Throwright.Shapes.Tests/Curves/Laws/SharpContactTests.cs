using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Tests.Curves.Laws;

/// <summary>Curves at rest against things sharper than a segment: what is answered never goes through them, balances, and does not depend on how it was asked.</summary>
public class SharpContactTests
{
    [Theory]
    [InlineData(SharpObstacles.Kind.Ball)]
    [InlineData(SharpObstacles.Kind.Wire)]
    [InlineData(SharpObstacles.Kind.SheetEdge)]
    [InlineData(SharpObstacles.Kind.HoleRim)]
    public void AtRest_AgainstSharpThings_NeverGoesThroughAndBalances(SharpObstacles.Kind kind)
    {
        var touching = 0;
        for (var i = 0; i < 4; i++)
        {
            var problem = SharpObstacles.Problem(i, kind);
            var (distance, curve) = (problem.Obstacles[0].DistanceAt, ElasticCurveSolver.Solve(problem).Curve!);
            touching += curve.Contacts.Count > 0 ? 1 : 0;
            // Dense points alone, a hundred between two nodes.
            var nearest = Enumerable.Range(0, 10001).Min(n => distance(curve.PointAt(curve.Length * n / 10000)));
            Assert.InRange(nearest - SharpObstacles.Keep, -2e-4 * curve.Length, 1);
            // t'' + |t'|^2 t = -(F - (F.t) t) from differences of the points alone, away from what pushes; F falls by each push passed.
            var h = curve.Nodes[1].At;
            for (var n = 10; n < curve.Nodes.Count - 10; n += 5)
            {
                var at = curve.Nodes[n].At;
                if (curve.Contacts.Any(c => Math.Abs(c.At - at) < 4.5 * h))
                    continue;
                Vector3 P(int k) => curve.Nodes[n + k].Point;
                var t = (1 / (12 * h)) * (P(-2) - P(2) + (8 * (P(1) - P(-1))));
                var k1 = (1 / (12 * h * h)) * ((16 * (P(1) + P(-1))) - P(2) - P(-2) - (30 * P(0)));
                var k2 = (1 / (8 * h * h * h)) * (P(-3) - P(3) + (8 * (P(2) - P(-2))) + (13 * (P(-1) - P(1))));
                var force = curve.Contacts.Where(c => c.At < at).Aggregate(-curve.Reactions[0].Force, (f, c) => f - c.Force);
                var rest = k2 + (Vector3.Dot(k1, k1) * t) + force - (Vector3.Dot(force, t) * t);
                Assert.InRange(rest.Size, 0, 5e-3 * Math.Max(1, force.Size) * Math.Max(1, Vector3.Dot(k1, k1)));
            }
        }

        Assert.True(touching >= 3, $"{touching}");
    }

    [Fact]
    public void AtRest_TurnedReversedOrScaled_IsTheSame()
    {
        const double Scale = 0.37, Stiff = 5;
        for (var i = 0; i < 3; i++)
        {
            var problem = SharpObstacles.Problem(i, SharpObstacles.Kind.Ball);
            var (distance, keep) = (problem.Obstacles[0].DistanceAt, problem.Obstacles[0].Keep);
            var curve = ElasticCurveSolver.Solve(problem).Curve!;
            Vector3 move = new(2, -1, 0.5), axis = new Vector3(1, -2, 0.7).Unit();
            var (turn, back) = (Rotation.About(axis, 1.1), Rotation.About(axis, -1.1));
            var moved = ElasticCurveSolver.Solve(problem with
            {
                Start = move,
                StartDirection = turn * problem.StartDirection!.Value,
                End = move + (turn * problem.End!.Value),
                EndDirection = turn * problem.EndDirection!.Value,
                Obstacles = [new(p => distance(back * (p - move)), keep)],
            }).Curve!;
            var reversed = ElasticCurveSolver.Solve(problem with { Start = problem.End!.Value, StartDirection = -problem.EndDirection!.Value, End = problem.Start, EndDirection = -problem.StartDirection!.Value }).Curve!;
            var scaled = ElasticCurveSolver.Solve(problem with
            {
                End = Scale * problem.End!.Value,
                Length = Scale * problem.Length,
                Stiffness = Stiff,
                Obstacles = [new(p => Scale * distance((1 / Scale) * p), Scale * keep)],
            }).Curve!;
            foreach (var (other, energy) in ((ElasticCurve, double)[])[(moved, 1), (reversed, 1), (scaled, Stiff / Scale)])
            {
                Assert.Equal(curve.BendingEnergy, other.BendingEnergy / energy, 1e-5 * curve.BendingEnergy);
                Assert.Equal(curve.BendTotal, other.BendTotal, 1e-4);
            }

            Assert.InRange((move + (turn * curve.PointAt(0.5)) - moved.PointAt(0.5)).Size, 0, 2e-5);
            Assert.InRange((curve.PointAt(0.5) - reversed.PointAt(curve.Length - 0.5)).Size, 0, 2e-5);
            Assert.InRange(((Scale * curve.PointAt(0.5)) - scaled.PointAt(Scale * 0.5)).Size, 0, 2e-5);
        }
    }

    [Fact]
    public void Follow_AtRest_EndsWhereASolveFromTheStartDoes()
    {
        for (var i = 0; i < 4; i++)
        {
            var problem = SharpObstacles.Problem(i, SharpObstacles.Kind.Ball);
            var near = ElasticCurveSolver.Solve(problem).Curve!;
            var changed = problem with { Length = problem.Length + 0.01, End = problem.End!.Value + new Vector3(0, 0.004, 0.003) };
            var followed = ElasticCurveSolver.Follow(changed, near);
            Assert.NotNull(followed);
            var solved = ElasticCurveSolver.Solve(changed);
            Assert.Contains(solved.Others.Prepend(solved.Curve!), c => Math.Abs(c.BendingEnergy - followed.BendingEnergy) < 1e-3 * c.BendingEnergy && (c.PointAt(0.5) - followed.PointAt(0.5)).Size < 2e-4);
            Assert.True(followed.LeastGap > -1.1e-4 * followed.Length);
        }
    }
}
