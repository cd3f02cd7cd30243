using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Tests.Curves.Reference;

/// <summary>Rods that twist: a published bend, an arc, and the twist-free solver's own curves shot through.</summary>
public class TwistedRodTests
{
    private static readonly Vector3 X = new(1, 0, 0), Y = new(0, 1, 0), Z = new(0, 0, 1);

    [Fact]
    [Trait("Check", "R7")]
    public void FortyFiveDegreeBend_TipLoadAcross_MatchesThePublishedTip()
    {
        // K.-J. Bathe and S. Bolourchi, Int. J. Numer. Meth. Eng. 14 (1979) 961-986: radius 100, square of 1, E 1e7, no
        // cross contraction, 600 across the plane: tip moves by 13.4, 23.5 and 53.4 (secondary, as quoted in a public solver's
        // documentation, whose own converged figures are 13.72, 23.65, 53.58). Torsion of a square bar: 0.1406 a^4 (secondary).
        const double E = 1e7, Radius = 100;
        var rod = new Rod(Radius * Math.PI / 4, E / 12, 0.5 * E * 0.1406, 1 / Radius);
        var shape = TwistedRod.Hanging(rod, new(default, X, Y), 600 * Z)!;
        Vector3 free = new(Radius * Math.Sin(Math.PI / 4), Radius * (1 - Math.Cos(Math.PI / 4)), 0);
        var moved = shape.End.Point - free;
        Assert.Equal(53.4, moved.Z, 0.03 * 53.4);
        double[] inPlane = [.. new[] { Math.Abs(moved.X), Math.Abs(moved.Y) }.Order()];
        Assert.Equal(13.4, inPlane[0], 0.03 * 13.4);
        Assert.Equal(23.5, inPlane[1], 0.03 * 23.5);
        // And nearer to the converged figures, which have shear and stretch besides.
        Assert.Equal(53.58, moved.Z, 0.01 * 53.58);
        Assert.Equal(23.65, inPlane[1], 0.01 * 23.65);
        Assert.Equal(13.72, inPlane[0], 0.01 * 13.72);
    }

    [Fact]
    public void FreeOfLoad_StaysAsItIsSet()
    {
        var shape = TwistedRod.Hanging(new(1, 2, 1, 0.8), new(default, X, Y), default)!;
        Assert.InRange((shape.End.Point - new Vector3(Math.Sin(0.8) / 0.8, (1 - Math.Cos(0.8)) / 0.8, 0)).Size, 0, 1e-9);
    }

    [Fact]
    public void TwistFreeCurve_ShotFromItsOwnClamp_MeetsTheOtherEnd()
    {
        // Runge-Kutta steps of the equilibrium equations: nothing in common with the element but the physics.
        for (var i = 0; i < 25; i++)
        {
            var problem = RandomCurves.Problem(400 + i, i % 3 == 0, 1.2, 1.15, 1.7) with { Starts = 1, Segments = 192 };
            var curve = ElasticCurveSolver.Solve(problem).Curve!;
            var first = curve.Nodes[0];
            var shape = TwistedRod.Shoot(new(curve.Length, 1, 0.7), new(first.Point, first.Tangent, Rotation.SquareTo(first.Tangent)), -curve.Reactions[0].Force, -curve.Reactions[0].Moment);
            Assert.InRange((shape.End.Point - problem.End!.Value).Size, 0, 2e-5);
            Assert.InRange(Vector3.AngleBetween(shape.End.Along, problem.EndDirection!.Value), 0, 1e-4);
            Assert.InRange((shape.Nodes[120].Point - curve.PointAt(0.5 * curve.Length)).Size, 0, 1e-5);
            Assert.InRange(Math.Abs(shape.Twist), 0, 1e-9);
        }
    }
}
