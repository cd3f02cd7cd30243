using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Frames.Reference;

/// <summary>Figures derived in docs/theory/throw.md (D) and evaluated there by a second program (N). Lengths in mm.</summary>
public class CircleDistanceTests
{
    private const double Degree = Math.PI / 180;

    /// <summary>Offset of the anchor from the axis, square to the wire, for the three bench rules; r = 30, s = 100, +/- 45 deg.</summary>
    public static TheoryData<double, double, double, double, double, double> Rules => new()
    {
        { 30, 42.256004, 18.73124, 22.69142, -6.36369, 0 },
        { 30 * Math.Cos(45 * Degree), 42.426407, 21.21320, 21.21320, 0, 5.08906 },
        { 30 * (1 + Math.Cos(45 * Degree)) / 2, 42.383601, 19.99922, 21.96766, -3.19169, 2.53238 },
    };

    [Theory]
    [Trait("Check", "K2")]
    [MemberData(nameof(Rules))]
    public void Distance_ThreeBenchRules_GiveTheDerivedThrowArmsAndSwing(
        double offset, double wireThrow, double startArm, double endArm, double leastSwing, double mostSwing)
    {
        var circle = Planar(30, offset, 100);
        double start = At(circle, -45), end = At(circle, 45);
        Assert.Equal(wireThrow, end - start, 1e-6);
        Assert.Equal(startArm, Slope(circle, -45), 1e-5);
        Assert.Equal(endArm, Slope(circle, 45), 1e-5);

        // Swing: angle at the anchor between the wire and the line square to the offset, as the arm goes through its travel.
        double least = 0, most = 0;
        for (var i = 0; i <= 9000; i++)
        {
            var phi = (-45 + (i * 0.01)) * Degree;
            Vector3 wire = new(30 * Math.Cos(phi) - offset, (30 * Math.Sin(phi)) + 100, 0);
            var swing = Math.Sign(Math.Round(wire.X, 9)) * Vector3.AngleBetween(wire, new(0, 1, 0)) / Degree;
            (least, most) = (Math.Min(least, swing), Math.Max(most, swing));
        }

        Assert.Equal(leastSwing, least, 1e-5);
        Assert.Equal(mostSwing, most, 1e-5);
    }

    [Fact]
    [Trait("Check", "K2")]
    public void Distance_WireSquareAtMidTravel_HasTheDerivedFreeLengths()
    {
        var circle = Planar(30, 30, 100);
        Assert.Equal(79.275262, At(circle, -45), 1e-6);
        Assert.Equal(100, At(circle, 0), 1e-12);
        Assert.Equal(121.531265, At(circle, 45), 1e-6);
        Assert.Equal(21.531265, At(circle, 45) - At(circle, 0), 1e-6);
        Assert.Equal(20.724738, At(circle, 0) - At(circle, -45), 1e-6);
    }

    [Fact]
    [Trait("Check", "K2")]
    public void Distance_AnchorOnTheChordLine_GivesExactlyTheChord()
    {
        foreach (var s in (double[])[21.3, 30, 100, 1e6])
        {
            var circle = Planar(30, 30 * Math.Cos(45 * Degree), s);
            Assert.Equal(60 * Math.Sin(45 * Degree), At(circle, 45) - At(circle, -45), 1e-14 * s + 1e-13);
        }
    }

    [Theory]
    [Trait("Check", "K3")]
    [InlineData(30, 300, 45, 42.408129)]
    [InlineData(25, 75, 40, 32.037465)]
    [InlineData(30, 100, 30, 29.975242)]
    [InlineData(30, 1e7, 45, 42.426407)]
    public void Distance_WireSquareAtMidTravel_GivesTheDerivedThrow(double radius, double free, double half, double wireThrow)
    {
        var circle = Planar(radius, radius, free);
        Assert.Equal(wireThrow, At(circle, half) - At(circle, -half), 1e-6);
    }

    [Fact]
    [Trait("Check", "K3")]
    public void Distance_FromDeadCentre_MovesAlmostNothingInFiveDegrees()
    {
        // The geometry of K2 with the arm turned to point at the anchor: d = sqrt(30^2 + 100^2).
        CircleDistance<Real> circle = new(new(30), new(Math.Sqrt(10_900)), new(0), new(0));
        Assert.Equal(74.403065, At(circle, 0), 1e-6);
        Assert.Equal(0, Slope(circle, 0), 1e-12);
        Assert.Equal(0.160017, At(circle, 5) - At(circle, 0), 1e-6);
    }

    /// <remarks>Axis through (10, 20, 30) along (1, 2, 2)/3, pin at (40, 20, 30), anchor at (-60, 90, -20), exit (0.8, -0.6, 0).</remarks>
    [Theory]
    [Trait("Check", "K1")]
    [InlineData(0, 131.909060, -18.194353, 22.34979)]
    [InlineData(30, 120.266793, -25.596932, 20.56056)]
    [InlineData(60, 106.033382, -27.652148, 21.07475)]
    [InlineData(90, 92.736185, -21.566555, 24.07895)]
    public void Distance_AxisAskewInSpace_GivesTheDerivedLengthArmAndSwing(double phi, double length, double arm, double swing)
    {
        Vector3 axis = (1.0 / 3) * new Vector3(1, 2, 2), origin = new(10, 20, 30), pin = new(40, 20, 30), anchor = new(-60, 90, -20);
        var along = Vector3.Dot(pin - origin, axis);
        var centre = origin + (along * axis);
        var radius = (pin - centre).Size;
        Assert.Equal(28.284271, radius, 1e-6);
        Vector3 u = (pin - centre).Unit(), w = Vector3.Cross(axis, u), a = anchor - centre;
        CircleDistance<Real> circle = new(new(radius), new(Vector3.Dot(a, u)), new(Vector3.Dot(a, w)), new(Vector3.Dot(a, axis)));
        Assert.Equal(length, At(circle, phi), 1e-6 * length);
        Assert.Equal(arm, Slope(circle, phi), 1e-6 * Math.Abs(arm));
        var p = centre + (radius * ((Math.Cos(phi * Degree) * u) + (Math.Sin(phi * Degree) * w)));
        Assert.Equal(swing, Vector3.AngleBetween(p - anchor, new(0.8, -0.6, 0)) / Degree, 1e-5);
        foreach (var dead in (double[])[129.805571, 309.805571])
            Assert.Equal(0, Slope(circle, dead), 1e-6);
    }

    /// <summary>Arm along the offset at angle 0, wire running back square to it.</summary>
    private static CircleDistance<Real> Planar(double radius, double offset, double free) => new(new(radius), new(offset), new(-free), new(0));

    private static double At(CircleDistance<Real> circle, double degrees) => circle.At(new(degrees * Degree)).Value;

    private static double Slope(CircleDistance<Real> circle, double degrees)
    {
        Real phi = new(degrees * Degree);
        return circle.SlopeAt(phi, circle.At(phi)).Value;
    }
}
