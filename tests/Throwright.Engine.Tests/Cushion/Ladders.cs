using CsCheck;
using Throwright.Engine.Cushion;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Cushion;

/// <summary>Ladder cases for the tests, SI.</summary>
internal static class Ladders
{
    public const double Degree = Math.PI / 180;

    public static QuantityKind KindOf(LadderInput input) => input switch
    {
        LadderInput.PushAngle or LadderInput.PullAngle or LadderInput.BendTotal => QuantityKind.Angle,
        LadderInput.TorqueFactor or LadderInput.PullGive or LadderInput.PushGive => QuantityKind.Ratio,
        LadderInput.OwnTorque => QuantityKind.Torque,
        _ => QuantityKind.Length,
    };

    public static LadderValue Value(LadderInput input, double nominal, double minus = 0, double plus = 0, Spread spread = Spread.Uniform) =>
        new(input, input.ToString(), $"run.{input}", KindOf(input), nominal, minus, plus, spread);

    /// <summary>A case from the inputs named; the others are 0 and exact, the factor 1.</summary>
    public static LadderCase Case(SettingKind kind, Vector3 anchor, params IEnumerable<LadderValue> given)
    {
        var values = Enum.GetValues<LadderInput>().Select(i => Value(i, i is LadderInput.TorqueFactor ? 1 : 0)).ToArray();
        foreach (var value in given)
            values[(int)value.Input] = value;
        return new()
        {
            Values = [.. values],
            SettingKind = kind,
            SettingProposed = kind == SettingKind.Balanced,
            Anchor = anchor,
            AnchorAxes = (new(1, 0, 0), new(0, 1, 0), new(0, 0, 1)),
            TorqueAtPush = 0,
            TorqueAtPull = 0,
            BiasAtPush = 0,
            BiasAtPull = 0,
            DeviceDrag = 0,
            Wanted = 0.003175,
            NotCounted = [],
        };
    }

    /// <summary>The same case with other values of some inputs.</summary>
    public static LadderCase With(this LadderCase of, params IEnumerable<LadderValue> changed)
    {
        LadderValue[] values = [.. of.Values];
        foreach (var value in changed)
            values[(int)value.Input] = value;
        return of with { Values = [.. values] };
    }

    public static LadderCase Exact(this LadderCase of) => of.With(of.Values.Select(v => v with { Minus = 0, Plus = 0 }));

    private static readonly Gen<SettingKind> Kinds = Gen.Int[0, 3].Select(i => (SettingKind)i);

    /// <summary>Directions of the anchor's deviations, turned anyhow.</summary>
    private static readonly Gen<(Vector3, Vector3, Vector3)> Axes = Gen.Select(Gen.Double[-3, 3], Gen.Double[-3, 3]).Select((a, b) =>
    {
        double ca = Math.Cos(a), sa = Math.Sin(a), cb = Math.Cos(b), sb = Math.Sin(b);
        return (new Vector3(ca, sa, 0), new Vector3(-sa * cb, ca * cb, sb), new Vector3(sa * sb, -ca * sb, cb));
    });

    private static readonly Gen<Engine.Cushion.Heat?> Heats = Gen.Select(Gen.Bool, Gen.Double[8e-6, 25e-6], Gen.Double[8e-6, 25e-6], Gen.Double[-2e-6, 25e-6], Gen.Double[-70, 0], Gen.Double[0, 110], Gen.Double[0, 110])
        .Select((any, wire, conduit, bracket, cold, hot, lever) => any ? new Engine.Cushion.Heat(wire, conduit, bracket, cold, Math.Max(hot, lever), cold, lever) : null);

    /// <summary>
    /// Any ladder: arm 15 to 60 mm, anchor anywhere outside its circle, either sense, in or out of plane, any way of
    /// setting, up to 14 inputs with limits of either side, load and heat.
    /// </summary>
    /// <param name="isWide">Angles with limits up to 40 deg, so that a dead centre may lie within; without load, which would have no bound there.</param>
    public static Gen<LadderCase> Any(bool isWide) =>
        from kind in Kinds
        from axes in Axes
        from heat in Heats
        from radius in Gen.Double[0.015, 0.060]
        from far in Gen.Double[1.5, 6]
        from phi0 in Gen.Double[-3, 3]
        from off in Gen.Double[-0.02, 0.02]
        from begin in isWide ? Gen.Double[0.05, 0.5] : Gen.Double[0.45, 1.0]
        from sweep in Gen.Double[0.3, 1.6]
        from mirrored in Gen.Bool
        from load in Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[-1, 1], Gen.Double[-1, 1], Gen.Double[0, 5])
        from gives in Gen.Select(Gen.Double[0, 3e-5], Gen.Double[0, 1e-4], Gen.Double[0, 1e-3])
        from lost in Gen.Select(Gen.Double[0, 0.001], Gen.Double[0, 8], Gen.Double[0, 0.0005], Gen.Double[0, 0.0005])
        from hardware in Gen.Select(Gen.Double[0, 0.02], Gen.Double[0, 0.01], Gen.Double[0.3, 4])
        from count in Gen.Int[1, 14]
        from order in Gen.Int[0, 1_000_000].Array[Enum.GetValues<LadderInput>().Length]
        from width in Gen.Double[0, 1].Array[2 * Enum.GetValues<LadderInput>().Length]
        select Make(isWide, kind, axes, heat, radius, far * radius, phi0, off, begin, sweep, mirrored, load, gives, lost, hardware, count, order, width);

    private static LadderCase Make(
        bool isWide, SettingKind kind, (Vector3, Vector3, Vector3) axes, Engine.Cushion.Heat? heat, double radius, double reach, double phi0, double off, double begin, double sweep, bool mirrored,
        (double Push, double Pull, double OwnPush, double OwnPull, double Drag) load, (double Pull, double Push, double Own) gives,
        (double Clearance, double Bends, double Pin, double Knob) lost, (double Tip, double Swivel, double Conduit) hardware, int count, int[] order, double[] width)
    {
        // Free wire is shortest at phi0 and grows away from it on both sides.
        var side = mirrored ? -1 : 1;
        double pull = phi0 + (side * begin), push = phi0 + (side * (begin + sweep));
        var anchor = new Vector3(reach * Math.Cos(phi0), reach * Math.Sin(phi0), off);
        double Free(double phi) => Math.Sqrt((radius * radius) + (reach * reach) + (off * off) - (2 * radius * reach * Math.Cos(phi - phi0)));
        var wire = Free(push) - Free(pull);
        var stroke = wire + (lost.Clearance * lost.Bends) + 0.012;
        var setting = kind switch
        {
            SettingKind.WireLength => Free(push) + 0.005,
            SettingKind.AtPushStop => 0.005,
            SettingKind.AtPullStop => stroke - 0.005,
            _ => 0,
        };
        (LadderInput Input, double Nominal, double Half)[] all =
        [
            (LadderInput.Stroke, stroke, 0.001), (LadderInput.Setting, setting, 0.001), (LadderInput.Radius, radius, 0.001),
            (LadderInput.PushAngle, push, isWide ? 0.7 : 0.05), (LadderInput.PullAngle, pull, isWide ? 0.7 : 0.05),
            (LadderInput.AnchorX, 0, 0.003), (LadderInput.AnchorY, 0, 0.003), (LadderInput.AnchorZ, 0, 0.003), (LadderInput.AlongAxis, 0.001, 0.002),
            (LadderInput.Clearance, lost.Clearance, 0.0001), (LadderInput.BendTotal, lost.Bends, 0.5), (LadderInput.PinPlay, lost.Pin, 0.0001), (LadderInput.KnobPlay, lost.Knob, 0.0001),
            (LadderInput.TorqueFactor, 1, 0.4), (LadderInput.OwnTorque, 0, 0.1), (LadderInput.PullGive, gives.Pull, 0.3 * gives.Pull), (LadderInput.PushGive, gives.Push, 0.3 * gives.Push),
            (LadderInput.PushSlack, gives.Own, 0.3 * gives.Own), (LadderInput.Tip, hardware.Tip, 0.0005), (LadderInput.SwivelLength, hardware.Swivel, 0.0003), (LadderInput.ConduitLength, hardware.Conduit, 0.02),
            (LadderInput.OwnPull, gives.Own, 0.5 * gives.Own), (LadderInput.OwnPush, gives.Own, 0.5 * gives.Own),
        ];
        var loose = all.Select((_, i) => i).OrderBy(i => order[i]).Take(count).ToHashSet();
        return Case(kind, anchor, all.Select((v, i) => loose.Contains(i)
            ? Value(v.Input, v.Nominal, v.Half * width[2 * i], v.Half * width[(2 * i) + 1], order[i] % 3 == 0 ? Spread.Normal : Spread.Uniform)
            : Value(v.Input, v.Nominal))) with
        {
            AnchorAxes = axes,
            TorqueAtPush = isWide ? 0 : load.Push,
            TorqueAtPull = isWide ? 0 : load.Pull,
            BiasAtPush = isWide ? 0 : load.OwnPush,
            BiasAtPull = isWide ? 0 : load.OwnPull,
            OwnTorqueOpposes = isWide ? default : load.OwnPush > 0 ? (1, -1) : (-1, 1),
            DeviceDrag = load.Drag,
            Heat = heat,
        };
    }
}
