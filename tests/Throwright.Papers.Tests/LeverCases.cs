using Throwright.Engine.Throw;
using Throwright.Shapes;
using Throwright.Shapes.Frames;

namespace Throwright.Papers.Tests;

/// <summary>Sweeps worked out by plain trigonometry from the numbers that fix them.</summary>
internal static class LeverCases
{
    public static Sweep Of(double radius, double fromDegrees, double toDegrees, Vector3 anchor, Vector3? exit = null, double[]? dead = null)
    {
        double from = fromDegrees * Math.PI / 180, to = toDegrees * Math.PI / 180;
        var given = new SweepCase(radius, from, to, anchor, exit);
        double Length(double phi) => (given.SwivelAt(phi) - anchor).Size;
        var pushAtFrom = Length(from) > Length(to);
        var (push, pull) = pushAtFrom ? (from, to) : (to, from);
        var axis = exit ?? given.SwivelAt(given.Mid) - anchor;
        var places = Enumerable.Range(0, 91).Select(i => push + ((pull - push) * i / 90)).Select(phi =>
            new SweepPlace(phi, Length(phi), 0, Vector3.AngleBetween(given.SwivelAt(phi) - anchor, axis))).ToArray();
        var most = places.MaxBy(p => p.Swing)!;
        return new()
        {
            Case = given,
            C = 0,
            D = 0,
            Phi0 = 0,
            PushAngle = push,
            PullAngle = pull,
            Throw = Math.Abs(Length(from) - Length(to)),
            DeadCentresInside = (dead ?? []).ToEquatableList(),
            ToDeadCentre = 1,
            Places = places.ToEquatableList(),
            LeastTransmission = 1,
            MostSwing = most.Swing,
            MostSwingAngle = most.Angle,
        };
    }
}
