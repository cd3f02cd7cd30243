using CsCheck;
using Throwright.Engine.Throw;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Tests.Throw.Oracle;

/// <summary>The sweep against a lever turned by matrices and sampled densely.</summary>
public sealed class SweepOracleTests
{
    private static readonly double[] Shares = [0.1, 0.5, 0.93];

    private static double[] List(Vector3 v) => [v.X / 1000, v.Y / 1000, v.Z / 1000];

    private static TurnedLever Plain(RandomLever l) => new(List(l.Pivot), List(l.Axis), List(l.Pin), List(l.Anchor), List(l.Along));

    [Fact]
    public void Sweep_RandomLeverInSpace_IsWhatTurningThePinGives() => RandomLever.Any.Sample(
        lever =>
        {
            var sweep = Levers.Sweep(lever.End);
            var plain = Plain(lever);
            double from = lever.From * Levers.Degree, to = lever.To * Levers.Degree;

            foreach (var place in sweep.Places)
            {
                // Error of the difference quotient: it grows where the wire is short against the arm.
                var slack = 2e-10 * Math.Max(1, Math.Pow(sweep.Case.Radius / place.Length, 4));
                Assert.Equal(plain.Length(place.Angle), place.Length, 1e-12);
                Assert.Equal(Math.Abs(plain.Arm(place.Angle)), place.MomentArm, slack);
                Assert.Equal(plain.Arm(place.Angle), sweep.MomentArmAt(place.Angle), slack);
                Assert.Equal(plain.Swing(place.Angle), place.Swing, 2e-7);
            }

            // A dead centre right at a stop may be found on either side of it.
            if (Math.Min(Math.Abs(plain.Arm(from)), Math.Abs(plain.Arm(to))) < 1e-7)
                return;
            var dead = plain.TurningPoints(from, to, 100);
            Assert.Equal(dead.Count, sweep.DeadCentresInside.Count);
            foreach (var (own, other) in sweep.DeadCentresInside.Zip(dead))
                Assert.Equal(other, own, 1e-7);
            var outside = plain.TurningPoints(from - 3.2, from, 100).Select(a => from - a).Concat(plain.TurningPoints(to, to + 3.2, 100).Select(a => a - to)).Min();
            Assert.Equal(outside, sweep.ToDeadCentre, 1e-7);

            Assert.Equal(Math.Max(plain.Length(from), plain.Length(to)), plain.Length(sweep.PushAngle), 1e-12);
            Assert.Equal(Math.Abs(plain.Length(from) - plain.Length(to)), sweep.Throw, 1e-12);
            var swings = Enumerable.Range(0, 501).Max(i => plain.Swing(from + ((to - from) * i / 500)));
            // Not below any sample, and it does occur.
            Assert.InRange(sweep.MostSwing, swings - 1e-7, 4);
            Assert.InRange(sweep.MostSwingAngle, from - 1e-12, to + 1e-12);
            Assert.Equal(sweep.MostSwing, plain.Swing(sweep.MostSwingAngle), 1e-7);
            if (!sweep.IsMonotone)
                return;
            var least = Enumerable.Range(0, 101).Min(i => Math.Abs(plain.Arm(from + ((to - from) * i / 100))));
            Assert.Equal(Math.Asin(Math.Min(1, least / sweep.Case.Radius)), sweep.LeastTransmission, 1e-5);
            foreach (var share in Shares)
            {
                var length = plain.Length(from) + (share * (plain.Length(to) - plain.Length(from)));
                // Near a dead centre the angle is as badly known as the length is flat.
                Assert.Equal(length, plain.Length(sweep.AngleAt(length)), 1e-10);
                Assert.Equal(plain.AngleOf(length, from, to), sweep.AngleAt(length), 1e-6);
            }
        },
        iter: 500);

    [Fact]
    public void Sweep_RandomLeverInThePlane_IsWhatTurningThePinGives() =>
        Gen.Select(Gen.Double[15, 60], Gen.Double[40, 300], Gen.Double[-20, 120], Gen.Double[10, 60]).Sample(
            (radius, distance, offset, half) =>
            {
                var sweep = Levers.Sweep(Levers.Bench(radius, distance, half, Model.AnchorRule.Offset, offset));
                // Arm along +x at angle 0, anchor behind at -y, conduit's end toward +y.
                var plain = new TurnedLever([0, 0, 0], [0, 0, 1], [radius / 1000, 0, 0], [offset / 1000, -distance / 1000, 0], [0, 1, 0]);
                foreach (var place in sweep.Places)
                {
                    Assert.Equal(plain.Length(place.Angle), place.Length, 1e-12);
                    Assert.Equal(Math.Abs(plain.Arm(place.Angle)), place.MomentArm, 1e-9);
                    Assert.Equal(plain.Swing(place.Angle), place.Swing, 2e-7);
                }
            });

    [Fact]
    public void Swing_AtAFixedTip_IsMeasuredAtItsMouth()
    {
        // Tube of 20 mm that can't tilt, straight ahead along +y from (30, -100): mouth at (30, -80).
        var tip = Levers.Bench(30, 100, 40, Model.AnchorRule.SquareAtMid) with { Tip = Levers.Mm(20) };
        double AtMouth(double deg)
        {
            double x = (30 * Math.Cos(deg * Levers.Degree)) - 30, y = (30 * Math.Sin(deg * Levers.Degree)) + 80;
            return Math.Abs(Math.Atan2(x, y));
        }

        var fixedTip = Levers.Sweep(tip);
        Assert.Equal(Enumerable.Range(-4000, 8001).Max(i => AtMouth(i / 100.0)), fixedTip.MostSwing, 1e-8);
        // One that tilts does so at the anchor, and swings less.
        var tilting = Levers.Sweep(tip with { TipSwivels = Shapes.Quantities.Angle.FromDegrees(8) });
        Assert.True(tilting.MostSwing < fixedTip.MostSwing - (0.8 * Levers.Degree));
        Assert.Equal(Levers.Sweep(tip with { Tip = default }).MostSwing, tilting.MostSwing);
        // Free wire and throw do not depend on it.
        Assert.Equal(tilting.Throw, fixedTip.Throw);
    }

    [Fact]
    public void Search_EveryAim_FindsWhatAScanFinds() => RandomLever.Any.Sample(
        lever =>
        {
            var end = lever.End;
            SweepCase At(double turn) => Levers.Sweep(end).Case with { From = (lever.From * Levers.Degree) + turn, To = (lever.To * Levers.Degree) + turn };
            foreach (var aim in new[] { SweepAim.SquareAtMid, SweepAim.EqualEndArms })
            {
                var found = SweepSearch.Find(At, -Math.PI, Math.PI, aim, 0, 0.1, 180);
                foreach (var choice in found.Choices)
                {
                    var moved = lever with { From = lever.From + (choice.Value / Levers.Degree), To = lever.To + (choice.Value / Levers.Degree) };
                    var plain = Plain(moved);
                    double from = moved.From * Levers.Degree, to = moved.To * Levers.Degree;
                    if (aim == SweepAim.EqualEndArms)
                        Assert.Equal(Math.Abs(plain.Arm(from)), Math.Abs(plain.Arm(to)), 1e-9);
                    Assert.Equal(plain.TurningPoints(from, to, 200).Count == 0, choice.Sweep.IsMonotone);
                    Assert.False(choice.Usable && !choice.Sweep.IsMonotone);
                }

                if (found.Best is { } best)
                    Assert.All(found.Choices.Where(c => c.Usable), c => Assert.True(c.Sweep.LeastTransmission <= best.Sweep.LeastTransmission + 1e-8));
            }
        },
        iter: 25);
}
