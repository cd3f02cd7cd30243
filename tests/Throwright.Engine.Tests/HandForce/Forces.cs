using CsCheck;
using Throwright.Engine.HandForce;
using Throwright.Engine.Model;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.HandForce;

/// <summary>Hand-force cases for the tests; mm, N, N m, degrees at the call.</summary>
internal static class Forces
{
    public const double Degree = Math.PI / 180;

    public static readonly CoreProperties Wire15 =
        new(1.5e-3, 1.5e-3, 193e9, 193e9, CoreSection.Of(CoreKind.Solid, 1.5e-3), 2000e6, 0.65, 0.1361);

    public static Spread3 Around(double value, double half) => new(value, value - half, value + half);

    public static Toleranced<Torque> Nm(double nominal, double half = 0) => Toleranced<Torque>.PlusMinus(new(nominal), half);

    /// <summary>Push stop at 45 deg, pull stop at -45 deg, moment arm 30 mm unless told.</summary>
    public static HandForceCase Case(
        DeviceLoad load, Spread3? mu = null, BendOnWay[]? bends = null, Func<double, Spread3>? arm = null, double knobDrag = 0, double deviceDrag = 0, double? lockHolds = 0) => new()
        {
            Places = [.. Enumerable.Range(0, 65).Select(i => 45 - (90.0 * i / 64)).Select(deg => new DevicePlace(deg * Degree, 0.1 + (0.03 * Math.Sin(deg * Degree)), arm?.Invoke(deg) ?? Spread3.Exact(0.03)))],
            Load = load,
            Friction = mu ?? Spread3.Exact(0),
            Bends = [.. bends ?? []],
            BendFactor = Spread3.Exact(1),
            BendsAreKnown = false,
            KnobDrag = knobDrag,
            DeviceDrag = deviceDrag,
            LockHolds = lockHolds,
        };

    public static readonly Gen<BendOnWay[]> Bends = Gen.Select(Gen.Double[0.1, 2.5], Gen.Double[0.05, 0.3], (a, r) => new BendOnWay(a, r)).Array[0, 5];

    /// <summary>Any load: friction-like torque, a bias either way, detents.</summary>
    public static readonly Gen<DeviceLoad> Loads = Gen.Select(
        Gen.Double[0, 1], Gen.Double[0, 0.5], Gen.Bool, Gen.Bool, Gen.Double[0, 1], Gen.Double[0, 0.5], Gen.Bool, Gen.Double[-45, 45],
        (t, share, hasBias, push, g, rate, hasDetent, at) => new DeviceLoad
        {
            Torque = Nm(t, t * share),
            Bias = hasBias ? new() { Toward = push ? DeviceStop.Push : DeviceStop.Pull, Torque = Nm(g, g * share), Rate = new(rate) } : null,
            Detents = hasDetent ? [new(Angle.FromDegrees(at), new(0.2), Angle.FromDegrees(12))] : [],
        });
}
