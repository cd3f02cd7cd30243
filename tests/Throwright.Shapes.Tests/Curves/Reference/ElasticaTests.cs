using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Tests.Curves.Reference;

/// <summary>Closed forms and published tables of the elastica.</summary>
public class ElasticaTests
{
    private static readonly Vector3 X = new(1, 0, 0), Y = new(0, 1, 0), Z = new(0, 0, 1), O = new(0, 0, 0);

    public static TheoryData<double, double, double, double> Cantilever => new()
    {
        // a = P L^2/EI, drop/L, shortening/L, tip angle. Rows 1, 2, 5, 10: Mattiasson (1981), Table 1, as quoted in public
        // test suites (secondary); all rows from elliptic integrals, K(p) - F(phi, p) = sqrt a (derived).
        { 0.2, 0.066364, 0.002647, 0.099636 },
        { 1, 0.301721, 0.056433, 0.461352 },
        { 2, 0.493457, 0.160642, 0.781750 },
        { 3, 0.603253, 0.254420, 0.986017 },
        { 5, 0.713792, 0.387628, 1.215368 },
        { 8, 0.784982, 0.504828, 1.374432 },
        { 10, 0.810609, 0.554996, 1.430286 },
    };

    private static ElasticCurve One(ElasticProblem problem)
    {
        var answer = ElasticCurveSolver.Solve(problem);
        Assert.Equal(ElasticOutcome.Found, answer.Outcome);
        return answer.Curve!;
    }

    private static ElasticCurve TipLoad(double a, int segments) =>
        One(new() { Start = O, StartDirection = X, End = null, Length = 1, EndForce = -a * Y, Segments = segments, Starts = 1 });

    [Theory]
    [MemberData(nameof(Cantilever))]
    [Trait("Check", "R1")]
    public void Cantilever_TipLoad_MatchesTheTable(double a, double drop, double shortening, double angle)
    {
        var curve = TipLoad(a, 96);
        var tip = curve.Nodes[^1];
        Assert.Equal(drop, -tip.Point.Y, 6e-7);
        Assert.Equal(shortening, 1 - tip.Point.X, 6e-7);
        Assert.Equal(angle, Vector3.AngleBetween(X, tip.Tangent), 6e-7);
        // Clamp: force against the load, moment = load times lever arm.
        Assert.Equal(a, curve.Reactions[0].Force.Y, 1e-9);
        Assert.Equal(a * tip.Point.X, curve.Reactions[0].Moment.Z, 1e-6);
    }

    [Fact]
    public void Cantilever_HalfTheStep_SixteenthOfTheError()
    {
        // Reference at 24, 48, 96 segments: 800.
        var exact = -TipLoad(10, 800).Nodes[^1].Point.Y;
        int[] meshes = [24, 48, 96];
        var errors = meshes.Select(n => Math.Abs(-TipLoad(10, n).Nodes[^1].Point.Y - exact)).ToArray();
        Assert.InRange(Math.Log2(errors[0] / errors[1]), 3.9, 4.1);
        Assert.InRange(Math.Log2(errors[1] / errors[2]), 3.9, 4.1);
        Assert.InRange(errors[2], 0, 3e-9);
    }

    [Theory]
    // End angle, P / Euler load, span/L, sag/L: elliptic integrals, P/Pe = (2K/pi)^2, span = 2E/K - 1, sag = k/K.
    [InlineData(20, 1.015397, 0.969731, 0.109707)]
    [InlineData(60, 1.151720, 0.741020, 0.296604)]
    [InlineData(100, 1.518389, 0.348989, 0.395770)]
    [InlineData(120, 1.884801, 0.123160, 0.401585)]
    [Trait("Check", "R2")]
    public void Pinned_Shortened_MatchesEllipticIntegrals(double degrees, double load, double span, double sag)
    {
        var curve = One(new() { Start = O, End = span * X, Length = 1 });
        Assert.Equal(load * Math.PI * Math.PI, curve.Reactions[0].Force.Size, 2e-4);
        Assert.Equal(sag, curve.PointAt(0.5).Size is var m ? Math.Sqrt((m * m) - (span * span / 4)) : 0, 2e-6);
        Assert.Equal(degrees * Math.PI / 180, Vector3.AngleBetween(X, curve.Nodes[0].Tangent), 1e-5);
        Assert.Equal(CurveStability.Neutral, curve.Stability);
    }

    [Theory]
    // Shortening, P / (4 pi^2), sag: elliptic integrals.
    [InlineData(0.01, 1.005028, 0.063463)]
    [InlineData(0.05, 1.025724, 0.140111)]
    [InlineData(0.1, 1.052987, 0.194924)]
    [InlineData(0.2, 1.112739, 0.266319)]
    [InlineData(0.3, 1.180699, 0.314313)]
    [Trait("Check", "R3")]
    public void ClampedInLine_Shortened_MatchesEllipticIntegrals(double shortening, double load, double sag)
    {
        var chord = 1 - shortening;
        var curve = One(new() { Start = O, StartDirection = X, End = chord * X, EndDirection = X, Length = 1 });
        Assert.Equal(load * 4 * Math.PI * Math.PI, curve.Reactions[0].Force.Size, 3e-5);
        Assert.Equal(sag, (curve.PointAt(0.5) - (0.5 * chord * X)).Size, 6e-7);
        Assert.Equal(CurveStability.Neutral, curve.Stability);
    }

    [Fact]
    [Trait("Check", "R4")]
    public void ClampedInLine_TwentyPercentSlack_MatchesEllipticIntegrals()
    {
        var curve = One(new() { Start = O, StartDirection = X, End = X, EndDirection = X, Length = 1.2, Segments = 192 });
        Assert.Equal(1.2 * 0.245991, (curve.PointAt(0.6) - (0.5 * X)).Size, 1e-6);
        Assert.Equal(5.302335, 1.2 / curve.LeastRadius, 1e-6);
        Assert.Equal(1.091988 * 4 * Math.PI * Math.PI / 1.44, curve.Reactions[0].Force.Size, 3e-5);
    }

    [Fact]
    [Trait("Check", "R5")]
    public void QuarterTurn_MatchesCollocation()
    {
        // Boundary-value collocation, tolerance 1e-9 (numerical).
        var curve = One(new() { Start = O, StartDirection = X, End = X + Y, EndDirection = Y, Length = 1.7 });
        Near(new(0.799492, 0.200508, 0), curve.PointAt(0.85));
        Near(new(0.424058, 0.016370, 0), curve.PointAt(0.425));
        Near(new(0.983630, 0.575942, 0), curve.PointAt(1.275));
        Assert.Equal(1.658825, 1 / curve.LeastRadius, 1e-6);
        Assert.Equal(0.85, curve.LeastRadiusAt, 1e-6);
        Assert.Equal(1.033580, curve.BendingEnergy, 1e-6);
        Assert.Equal(92.682558 * Math.PI / 180, curve.BendTotal, 1e-6);
        Assert.Equal(CurveStability.Stable, curve.Stability);
    }

    [Fact]
    [Trait("Check", "R6")]
    public void Spatial_MatchesCollocation()
    {
        var curve = One(new() { Start = O, StartDirection = X, End = X + Y + Z, EndDirection = Z, Length = 2.2 });
        Near(new(0.903379, 0.5, 0.096621), curve.PointAt(1.1));
        Near(new(0.527194, 0.131844, -0.020108), curve.PointAt(0.55));
        Near(new(1.020108, 0.868156, 0.472806), curve.PointAt(1.65));
        Assert.Equal(1.332358, 1 / curve.LeastRadius, 1e-6);
        Assert.Equal(1.387503, curve.BendingEnergy, 1e-6);
        Assert.Equal(140.148875 * Math.PI / 180, curve.BendTotal, 1e-6);
    }

    [Theory]
    [InlineData(1, 0.25)]
    [InlineData(3, 0.5)]
    [Trait("Check", "R8")]
    public void ArcLength_IsACircularArc_HeldByEndMomentsAlone(double stiffness, double turns)
    {
        // Part of a circle of radius 1/(2 pi turns): end moment 2 pi turns EI/L, no end force.
        double radius = 1 / (2 * Math.PI * turns), angle = 2 * Math.PI * turns;
        Vector3 end = new(radius * Math.Sin(angle), radius * (1 - Math.Cos(angle)), 0);
        var curve = One(new() { Start = O, StartDirection = X, End = end, EndDirection = new(Math.Cos(angle), Math.Sin(angle), 0), Length = 1, Stiffness = stiffness });
        Assert.Equal(2 * Math.PI * turns * stiffness, curve.Reactions[1].Moment.Z, 1e-7);
        Assert.Equal(0, curve.Reactions[1].Force.Size, 1e-6);
        Assert.Equal(angle, curve.BendTotal, 1e-8);
        Assert.Equal(radius, curve.LeastRadius, 1e-8);
    }

    [Theory]
    // Natural length over chord and least radius over chord of a plane span, both tangents at an angle to the chord:
    // our own prototype (numerical); the plane problem of two sleeves, arXiv 2409.12075, has at most one stable shape.
    [InlineData(20, 1.0208, 1.447)]
    [InlineData(40, 1.0894, 0.747)]
    [InlineData(60, 1.2322, 0.527)]
    [InlineData(80, 1.5537, 0.435)]
    public void NaturalLength_PlaneBow_PushesOutOfNoSleeve(double degrees, double length, double radius)
    {
        var angle = degrees * Math.PI / 180;
        var curve = One(new() { Start = O, StartDirection = new(Math.Cos(angle), Math.Sin(angle), 0), End = X, EndDirection = new(Math.Cos(angle), -Math.Sin(angle), 0), Length = null });
        Assert.Equal(length, curve.Length, 6e-5);
        Assert.Equal(radius, curve.LeastRadius, 6e-4);
        var start = curve.Nodes[0];
        Assert.Equal(0, (0.5 * Vector3.Dot(start.Curvature, start.Curvature)) - Vector3.Dot(curve.Reactions[0].Force, start.Tangent), 1e-7);
    }

    /// <summary>A heavy conduit between ends at different heights: called from the other end it is the same conduit.</summary>
    [Fact]
    public void NaturalLength_WithWeight_IsTheSameFromBothEnds()
    {
        Vector3 low = new(0.1, 0.2, 0), high = new(1, 0.3, 0.5), out0 = new(1, 0, 0.2), in1 = new(0.9, -0.3, 0.1), weight = new(0, 0, -6);
        var there = One(new() { Start = low, StartDirection = out0, End = high, EndDirection = in1, Length = null, Load = weight });
        var back = One(new() { Start = high, StartDirection = -in1, End = low, EndDirection = -out0, Length = null, Load = weight });
        Assert.Equal(there.Length, back.Length, 1e-9);
        Assert.Equal(there.LeastRadius, back.LeastRadius, 1e-7);
        Assert.Equal(there.BendTotal, back.BendTotal, 1e-7);
        // What one end would draw in the other would push out; without weight both are zero.
        Assert.Equal(0, Sum(there.Nodes[0], -there.Reactions[0].Force) + Sum(there.Nodes[^1], there.Reactions[^1].Force), 1e-6);
        Assert.NotEqual(0, Sum(there.Nodes[0], -there.Reactions[0].Force), 0.1);

        static double Sum(CurveNode node, Vector3 force) => (0.5 * Vector3.Dot(node.Curvature, node.Curvature)) + Vector3.Dot(force, node.Tangent);
    }

    [Fact]
    public void NaturalLength_BeyondTheCriticalAngle_DoesNotExist()
    {
        // Above about 90 degrees the sleeves keep feeding length out (arXiv 2409.12075).
        var angle = 110 * Math.PI / 180;
        var answer = ElasticCurveSolver.Solve(new() { Start = O, StartDirection = new(Math.Cos(angle), Math.Sin(angle), 0), End = X, EndDirection = new(Math.Cos(angle), -Math.Sin(angle), 0), Length = null });
        Assert.Equal(ElasticOutcome.NotFound, answer.Outcome);
    }

    private static void Near(Vector3 expected, Vector3 actual) => Assert.InRange((expected - actual).Size, 0, 1.5e-6);
}
