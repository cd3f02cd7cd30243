using Throwright.Engine.Model;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.HandForce;

/// <summary>Torque of the device at one arm angle, N m: friction-like, and of its own toward the push stop.</summary>
/// <param name="Resist">Resists motion both ways, &gt;= 0.</param>
/// <param name="TowardPush">Drives toward the push stop; negative: toward the pull stop.</param>
public readonly record struct TorquePair(Spread3 Resist, Spread3 TowardPush);

/// <summary>The device's torque over its sweep.</summary>
public static class DeviceTorque
{
    /// <remarks>
    /// Table: straight lines between the angles, ends held beyond them. Spring: torque at the stop it pulls toward,
    /// growing with the angle away from it. Detent: torque toward its place, T sin(pi x / w) over x = 0..w: zero in
    /// the rest, greatest half way out, zero again at the edge.
    /// </remarks>
    /// <param name="estimateFactor">On the largest values: 1 for a measured load, more for an estimate.</param>
    public static TorquePair At(DeviceLoad load, double angle, double pushAngle, double pullAngle, double estimateFactor = 1)
    {
        ArgumentNullException.ThrowIfNull(load);
        var resist = load.TorqueTable.Count > 0 ? InTable(load, angle) : load.Torque is { } t ? Of(t) : default;
        double nominal = 0, least = 0, most = 0;
        if (load.Bias is { } bias)
        {
            var (home, sign) = bias.Toward == DeviceStop.Push ? (pushAngle, 1) : (pullAngle, -1);
            var wound = bias.Rate.NewtonMetresPerRadian * Math.Abs(angle - home);
            nominal = sign * (bias.Torque.Nominal.NewtonMetres + wound);
            double small = bias.Torque.Least + wound, large = estimateFactor * (bias.Torque.Most + wound);
            (least, most) = sign > 0 ? (small, large) : (-large, -small);
        }

        var towardPush = Math.Sign(pushAngle - pullAngle);
        foreach (var detent in load.Detents)
        {
            var x = angle - detent.At.Radians;
            var w = detent.Within.Radians;
            if (Math.Abs(x) >= w)
                continue;
            var toRest = -towardPush * detent.Torque.NewtonMetres * Math.Sin(Math.PI * x / w);
            nominal += toRest;
            least += toRest;
            most += toRest;
        }

        return new(resist with { Most = estimateFactor * resist.Most }, new(nominal, least, most));
    }

    private static Spread3 InTable(DeviceLoad load, double angle)
    {
        var table = load.TorqueTable;
        var i = 0;
        while (i < table.Count && table[i].Arm.Radians < angle)
            i++;
        if (i == 0)
            return Of(table[0].Torque);
        if (i == table.Count)
            return Of(table[^1].Torque);
        var (a, b) = (table[i - 1], table[i]);
        var share = (angle - a.Arm.Radians) / (b.Arm.Radians - a.Arm.Radians);
        Spread3 ta = Of(a.Torque), tb = Of(b.Torque);
        double Mix(double p, double q) => p + (share * (q - p));
        return new(Mix(ta.Nominal, tb.Nominal), Mix(ta.Least, tb.Least), Mix(ta.Most, tb.Most));
    }

    private static Spread3 Of(Toleranced<Torque> t) => new(t.Nominal.NewtonMetres, Math.Max(0, t.Least), t.Most);
}
