using CsCheck;
using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Engine.Throw;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Tests.Throw.Laws;

public sealed class SweepLawsTests
{
    private static readonly Gen<(Vector3 Axis, double Angle, Vector3 Shift)> Motion =
        Gen.Select(Gen.Double[-1, 1], Gen.Double[-1, 1], Gen.Double[0.3, 1], Gen.Double[-3, 3], Gen.Double[-5000, 5000], Gen.Double[-2000, 2000])
            .Select(t => (new Vector3(t.Item1, t.Item2, t.Item3).Unit(), t.Item4, new Vector3(t.Item5, t.Item6, -t.Item5)));

    private static Vector3 Turn(Vector3 v, Vector3 k, double a) =>
        (Math.Cos(a) * v) + (Math.Sin(a) * Vector3.Cross(k, v)) + ((1 - Math.Cos(a)) * Vector3.Dot(k, v) * k);

    private static void AreSame(Sweep a, Sweep b, double tolerance)
    {
        // A dead centre right at a stop may come to lie on either side of it by rounding.
        if (Math.Min(Math.Min(a.AtPush.MomentArm, a.AtPull.MomentArm), Math.Min(b.AtPush.MomentArm, b.AtPull.MomentArm)) < 1e-8)
            return;
        Assert.Equal(a.Throw, b.Throw, tolerance);
        Assert.Equal(a.PushTurnsUp, b.PushTurnsUp);
        Assert.Equal(a.DeadCentresInside.Count, b.DeadCentresInside.Count);
        Assert.Equal(a.LeastTransmission, b.LeastTransmission, 1e-7);
        Assert.Equal(a.MostSwing, b.MostSwing, 1e-7);
        foreach (var (p, q) in a.Places.Zip(b.Places))
        {
            Assert.Equal(p.Length, q.Length, tolerance);
            Assert.Equal(p.MomentArm, q.MomentArm, 10 * tolerance);
            Assert.Equal(p.Swing, q.Swing, 1e-7);
        }
    }

    [Fact]
    public void Lever_AircraftMovedAndTurned_IsTheSame() => Gen.Select(RandomLever.Any, Motion).Sample((lever, motion) =>
    {
        var (k, a, shift) = motion;
        var moved = lever.Moved(p => shift + Turn(p, k, a), v => Turn(v, k, a), v => Turn(v, k, a));
        AreSame(Levers.Sweep(lever.End), Levers.Sweep(moved.End), 1e-10);
    });

    [Fact]
    public void Lever_SeenInAMirror_IsTheSame() => RandomLever.Any.Sample(lever =>
    {
        // In a mirror a right-handed turn is left-handed: the axis points the other way.
        static Vector3 Mirror(Vector3 v) => new(v.X, -v.Y, v.Z);
        var mirrored = lever.Moved(Mirror, Mirror, v => -Mirror(v));
        AreSame(Levers.Sweep(lever.End), Levers.Sweep(mirrored.End), 1e-12);
    });

    [Fact]
    public void Lever_AxisAndAnglesTurnedRound_PushesTheOtherWayCounted() => RandomLever.Any.Sample(lever =>
    {
        var sweep = Levers.Sweep(lever.End);
        var round = Levers.Sweep((lever with { Axis = -lever.Axis, From = -lever.To, To = -lever.From }).End);
        Assert.Equal(sweep.Throw, round.Throw, 1e-12);
        Assert.Equal(sweep.PushAngle, -round.PushAngle, 1e-12);
        Assert.Equal(sweep.MostSwing, round.MostSwing, 1e-7);
    });

    [Fact]
    public void MomentArm_IsTheSlopeOfTheFreeWire() => Gen.Select(RandomLever.Any, Gen.Double[-180, 180]).Sample((lever, deg) =>
    {
        var sweep = Levers.Sweep(lever.End);
        const double h = 1e-5;
        var phi = deg * Levers.Degree;
        Assert.Equal((sweep.LengthAt(phi + h) - sweep.LengthAt(phi - h)) / (2 * h), sweep.MomentArmAt(phi), 1e-9);
    });

    [Fact]
    public void AngleAt_OfALengthAt_IsTheAngle() => Gen.Select(RandomLever.Any, Gen.Double.Unit).Sample((lever, share) =>
    {
        var sweep = Levers.Sweep(lever.End);
        if (!sweep.IsMonotone || sweep.LeastTransmission < 0.02)
            return;
        var phi = sweep.Case.From + (share * (sweep.Case.To - sweep.Case.From));
        Assert.Equal(phi, sweep.AngleAt(sweep.LengthAt(phi)), 1e-9);
        Assert.Equal(sweep.PushAngle, sweep.AngleAt(sweep.AtPush.Length + 1), 1e-9);
        Assert.Equal(sweep.PullAngle, sweep.AngleAt(0), 1e-9);
    });

    [Fact]
    public void Lever_EveryLengthGrown_GrowsAlike() => Gen.Select(RandomLever.Any, Gen.Double[0.2, 5]).Sample((lever, k) =>
    {
        var grown = lever with { Pivot = k * lever.Pivot, Pin = k * lever.Pin, Anchor = k * lever.Anchor };
        Sweep a = Levers.Sweep(lever.End), b = Levers.Sweep(grown.End);
        Assert.Equal(k * a.Throw, b.Throw, 1e-11);
        Assert.Equal(a.LeastTransmission, b.LeastTransmission, 1e-7);
        Assert.Equal(a.MostSwing, b.MostSwing, 1e-7);
        Assert.Equal(k * a.AtPush.MomentArm, b.AtPush.MomentArm, 1e-11);
    });

    [Fact]
    public void BenchForm_AndCoordinatesOfTheSamePlace_AreTheSame() =>
        Gen.Select(Gen.Double[15, 60], Gen.Double[60, 250], Gen.Double[20, 60], Gen.OneOf(Gen.Const(AnchorRule.SquareAtMid), Gen.Const(AnchorRule.Chord), Gen.Const(AnchorRule.HalfSagitta)), Gen.Double[-30, 30], Motion).Sample(
            (radius, distance, half, rule, mid, motion) =>
            {
                var bench = Levers.Bench(radius, distance, half, rule) with { From = Levers.Degrees(mid - half), To = Levers.Degrees(mid + half) };
                // By hand: at mid travel the arm points along x', the wire along y' from offset x' - distance y'.
                double offset = rule switch { AnchorRule.SquareAtMid => radius, AnchorRule.Chord => radius * Math.Cos(half * Levers.Degree), _ => radius * (1 + Math.Cos(half * Levers.Degree)) / 2 };
                var (k, a, shift) = motion;
                Vector3 Out(Vector3 v) => Turn(v, k, a);
                var xMid = Turn(new(1, 0, 0), new(0, 0, 1), mid * Levers.Degree);
                var yMid = Turn(new(0, 1, 0), new(0, 0, 1), mid * Levers.Degree);
                var placed = Levers.Placed(shift, Out(new(0, 0, 1)), shift + Out(new(radius, 0, 0)), shift + Out((offset * xMid) - (distance * yMid)), Out(yMid), mid - half, mid + half);
                AreSame(Levers.Sweep(bench), Levers.Sweep(placed), 1e-10);
            });

    [Fact]
    public void DevicePlace_AnyDimensionsWithinLimits_HasItsArmWithinLimits() =>
        Gen.Select(Gen.Double[20, 50], Gen.Double[60, 200], Gen.Double[25, 60], Gen.Double[0, 3], Gen.Double[0, 5], Gen.Double[-1, 1].Array[6]).Sample(
            (radius, distance, half, tolerance, turn, share) =>
            {
                var end = Levers.Bench(radius, distance, half, AnchorRule.Offset, 0.9 * radius, tolerance) with { From = Levers.Degrees(-half, turn), To = Levers.Degrees(half, turn) };
                var placement = LeverPlacement.Of(end, [])!;
                var sweep = SweepSolver.Solve(placement.Case)!;
                // Beyond a dead centre the arm turns round, and the limits are those of its size.
                if (!sweep.IsMonotone)
                    return;
                foreach (var (place, t) in new[] { (sweep.AtPush, turn), (sweep.AtPull, turn), (sweep.AtMid, 0.0) })
                {
                    var limits = placement.DevicePlaceAt(place).MomentArm;
                    // Plain geometry of a lever with other dimensions: r, offset, distance, angle.
                    double r = (radius + (tolerance * share[0])) / 1000, a = ((0.9 * radius) + (tolerance * share[1])) / 1000, b = -(distance + (tolerance * share[2])) / 1000;
                    var phi = place.Angle + (t * Levers.Degree * share[3]);
                    double x = (r * Math.Cos(phi)) - a, y = (r * Math.Sin(phi)) - b;
                    var arm = r * ((a * Math.Sin(phi)) - (b * Math.Cos(phi))) / Math.Sqrt((x * x) + (y * y));
                    Assert.True(arm <= limits.Most + 1e-12);
                    Assert.True(Math.Max(arm, 1e-6) >= limits.Least - 1e-12);
                }
            },
            iter: 300);
}
