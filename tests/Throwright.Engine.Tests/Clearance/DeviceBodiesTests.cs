using Throwright.Engine.Clearance;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Tests.Clearance;

/// <summary>Arm, conduit, wire and sheet as bodies lie outside what they stand for, and not far outside.</summary>
public sealed class DeviceBodiesTests
{
    private const double Degree = Math.PI / 180;
    private static readonly Vector3 X = new(1, 0, 0), Y = new(0, 1, 0), Z = new(0, 0, 1);

    private static LeastDistanceResult Between(CockpitBody a, CockpitBody b) =>
        ClearanceSolver.Between(new([a, b], [], Interest: 10, Tolerance: 1e-7), a, b, TestContext.Current.CancellationToken).Found;

    private static CockpitBody Ball(Vector3 at, double radius) => new("ball", Solid.Of(new Part("ball", new Sphere(at, radius))));

    [Fact]
    public void Lever_OverItsSweep_ReachesAsFarAsItsTip()
    {
        var tip = 30 * Degree;
        Vector3 Out(double size, double angle) => size * ((Math.Cos(angle) * X) + (Math.Sin(angle) * Y));
        var lever = DeviceBodies.Lever("lever", default, Z, X, 0.05, 0.01, 0, 0.04, 0, 0, (-tip, tip));
        // A ball beyond the stop: nearest when the arm stands at it.
        var found = Between(lever, Ball(Out(0.1, 60 * Degree), 0.01));
        var closed = (Out(0.1, 60 * Degree) - Out(0.05, tip)).Size - 0.02;
        Assert.InRange(closed, found.Lower - 1e-9, found.Upper + 1e-9);
        Assert.Equal(tip, found.Positions.Single(), 1e-6);
        // Within the sweep: 0.1 - 0.05 - 0.02, however it stands.
        found = Between(lever, Ball(Out(0.1, 10 * Degree), 0.01));
        Assert.InRange(0.03, found.Lower - 1e-9, found.Upper + 1e-9);
        Assert.Equal(10 * Degree, found.Positions.Single(), 1e-3);
    }

    [Fact]
    public void Lever_OfKnownThickness_IsAFlatBarWithItsFittingOnEitherSide()
    {
        var lever = DeviceBodies.Lever("lever", default, Z, X, 0.05, 0.01, 0.004, 0.04, 0.016, 0.006, (-0.5, 0.5));
        // Over the pivot only the bar's half thickness; over the hole half thickness and fitting; both ways.
        foreach (var side in new[] { -1, 1 })
        {
            Assert.Equal(0.1 - 0.002 - 0.001, Between(lever, Ball((side * 0.1 * Z) - (0.008 * X), 0.001)).Lower, 1e-6);
            Assert.Equal(0.1 - 0.002 - 0.006 - 0.001, Between(lever, Ball((side * 0.1 * Z) + (0.04 * X), 0.001)).Lower, 1e-6);
        }

        Assert.Equal(["arm", "swivel"], lever.Solid.PartNames);
    }

    [Theory]
    [InlineData(0.08, 2)]
    [InlineData(0.3, 1)]
    [InlineData(2, 0.5)]
    public void Conduit_AlongAnArc_HoldsAllOfItAndLittleMore(double bend, double step)
    {
        // A quarter turn of a helix of small pitch: nodes at equal steps.
        Vector3 On(double angle) => bend * ((Math.Cos(angle) * X) + (Math.Sin(angle) * Y) + (0.1 * angle * Z));
        var curl = 1 / (bend * 1.01);
        var length = bend * Math.Sqrt(1.01);
        var nodes = Enumerable.Range(0, (int)(90 / step) + 1).Select(i => (On(i * step * Degree), i * step * Degree * length, curl)).ToList();
        const double Radius = 0.003;
        var conduit = DeviceBodies.Conduit("conduit", nodes, Radius, (0, double.PositiveInfinity), null);
        Assert.True(conduit.Solid.PartNames.Count < nodes.Count, "as many capsules as nodes");
        var inside = PointDistance.Of(conduit.Solid, Pose.None);
        for (var i = 0; i <= 1000; i++)
        {
            var angle = 90 * Degree * i / 1000;
            var p = On(angle);
            Assert.True(inside(p) <= -Radius + 1e-9, $"{angle}: {inside(p)}");
            // A millimetre and a half outside the conduit it is out of the body: sag and its own allowance together are less.
            var outward = new Vector3(Math.Cos(angle), Math.Sin(angle), 0);
            Assert.True(inside(p + ((Radius + 0.0015) * outward)) > 0 && inside(p - ((Radius + 0.0015) * outward)) > 0);
        }
    }

    [Fact]
    public void Wire_InEveryPlaceOfTheArm_LiesInItsHull()
    {
        Vector3 anchor = new(-0.1, 0.03, 0.01), pivot = new(0.02, 0.01, 0);
        double from = -100 * Degree, to = 80 * Degree, radius = 0.04;
        Vector3 Hole(double angle) => pivot + (radius * ((Math.Cos(angle) * X) + (Math.Sin(angle) * Y)));
        var steps = DeviceBodies.Steps(to - from);
        var step = (to - from) / steps;
        var body = DeviceBodies.Conduit(
            "conduit", [(anchor - (0.1 * X), 0, 0), (anchor, 0.1, 0)], 0.002, (0, 1), (anchor, [.. Enumerable.Range(0, steps + 1).Select(i => Hole(from + (i * step)))], step, pivot, 0.001));
        var inside = PointDistance.Of(body.Solid, Pose.None);
        for (var i = 0; i <= 300; i++)
        {
            var hole = Hole(from + ((to - from) * i / 300));
            for (var t = 0.0; t <= 1; t += 0.1)
                Assert.True(inside(anchor + (t * (hole - anchor))) <= -0.001 + 1e-9);
        }

        // And not where the arm never takes it.
        Assert.True(inside(pivot + (0.055 * X)) > 0.01);
    }

    [Fact]
    public void Sheet_OfAnyOutline_IsWhatItEncloses()
    {
        // An L, 0.4 m wide and high, its notch at the upper right; either way round.
        Vector3[] outline = [default, 0.4 * Y, (0.4 * Y) + (0.2 * Z), (0.2 * Y) + (0.2 * Z), (0.2 * Y) + (0.4 * Z), 0.4 * Z];
        foreach (var corners in new[] { outline, [.. outline.Reverse()] })
        {
            var sheet = DeviceBodies.Sheet("sheet", corners, X, 0.002, 0);
            var inside = PointDistance.Of(sheet.Solid, Pose.None);
            for (var y = 0.01; y < 0.4; y += 0.02)
            {
                for (var z = 0.01; z < 0.4; z += 0.02)
                {
                    var isIn = y < 0.2 || z < 0.2;
                    var there = inside(new(-0.001, y, z));
                    Assert.True(isIn ? there <= 1e-12 : there > 0.009, $"{y}, {z}: {there}");
                }
            }

            // It lies behind its face.
            Assert.Equal(0.01, inside(new(0.01, 0.1, 0.1)), 1e-9);
            Assert.Equal(0.008, inside(new(-0.01, 0.1, 0.1)), 1e-9);
        }

        // One that crosses itself counts whole.
        var bow = DeviceBodies.Sheet("bow", [default, (0.2 * Y) + (0.2 * Z), 0.2 * Y, 0.2 * Z], X, 0.002, 0);
        Assert.True(PointDistance.Of(bow.Solid, Pose.None)(new(-0.001, 0.1, 0.02)) <= 0);
    }
}
