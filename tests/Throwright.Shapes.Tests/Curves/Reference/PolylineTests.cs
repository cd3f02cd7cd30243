using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Tests.Curves.Reference;

public class PolylineTests
{
    [Fact]
    [Trait("Check", "L2")]
    public void BendTotal_Helix_ConvergesToCurvatureTimesLength()
    {
        // Radius 60, rise 40 per radian, 1.25 turns: curvature r/(r^2 + b^2), length 566.358670, bend total 6.534907730 rad
        // (derived).
        const double R = 60, Rise = 40, Turns = 2.5 * Math.PI;
        var exact = R / Math.Sqrt((R * R) + (Rise * Rise)) * Turns;
        Assert.Equal(6.534907730, exact, 1e-9);
        double Error(int n) => Polyline.BendTotal([.. Enumerable.Range(0, n + 1).Select(i => Turns * i / n).Select(a => new Vector3(R * Math.Cos(a), R * Math.Sin(a), Rise * a))]) - exact;
        Assert.InRange(Math.Abs(Error(200)), 0, 3e-4);
        Assert.InRange(Error(50) / Error(100), 3.9, 4.1);
        // The plain sum of corners: 6.1833, 6.4002, 6.5020 with 20, 50, 200 legs, far from the truth.
        Assert.InRange(Math.Abs(Error(20)), 0, 0.03);
    }

    [Fact]
    public void BendTotal_UnevenLegsOfACircle_IsTheArc()
    {
        var points = Enumerable.Range(0, 101).Select(i => Math.Pow(i / 100.0, 1.3) * Math.PI).Select(a => new Vector3(Math.Cos(a), Math.Sin(a), 0)).ToList();
        Assert.Equal(Math.PI, Polyline.BendTotal(points), 1e-8);
    }

    [Fact]
    public void BendTotal_StraightOrTooFewPoints_IsZero()
    {
        Assert.Equal(0, Polyline.BendTotal([]));
        Assert.Equal(0, Polyline.BendTotal([default, new(1, 0, 0)]));
        Assert.Equal(0, Polyline.BendTotal([default, new(1, 0, 0), new(1, 0, 0), new(3, 0, 0)]));
        Assert.Equal(3, Polyline.Length([default, new(1, 0, 0), new(3, 0, 0)]));
    }
}
