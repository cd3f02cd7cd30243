using Throwright.Engine.HandForce;
using Throwright.Engine.Model;
using Throwright.Engine.Throw;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>A limit below and above a nominal value, SI.</summary>
public readonly record struct Limits(double Minus, double Plus, Spread Spread = Spread.Uniform)
{
    public static Limits Of<T>(Toleranced<T> value)
        where T : struct, IQuantity<T> => new(value.Minus, value.Plus, value.Spread);

    /// <summary>Limits of a - b from those of a and of b. Worst case exact; for odds taken as one uniform range.</summary>
    public Limits Less(Limits other) => new(Minus + other.Plus, Plus + other.Minus, Spread == other.Spread ? Spread : Spread.Uniform);
}

/// <summary>The lever end in arm axes, from the bench form or from coordinates, with all its limits.</summary>
/// <remarks>
/// Arm axes: x along the arm at angle 0, z along the lever's axis, y = z x x, origin on the axis in the swivel's plane.
/// </remarks>
public sealed record LeverPlacement
{
    public required SweepCase Case { get; init; }
    public required Limits Radius { get; init; }
    public required Limits From { get; init; }
    public required Limits To { get; init; }

    /// <summary>Deviations of anchor against pivot along <see cref="Axes"/>.</summary>
    public required Limits X { get; init; }
    public required Limits Y { get; init; }
    public required Limits Z { get; init; }
    public required Limits AlongAxis { get; init; }

    /// <summary>The three directions of the deviations, in arm axes, and what each is called.</summary>
    public required (Vector3 X, Vector3 Y, Vector3 Z) Axes { get; init; }
    public required (string X, string Y, string Z) AxisNames { get; init; }
    public required (string X, string Y, string Z) AxisPaths { get; init; }

    /// <summary>Where each was read: JSON path within the run.</summary>
    public const string RadiusPath = "leverEnd.arm.radius";
    public const string SweepPath = "leverEnd.sweep";

    /// <summary>The placement; null with the missing inputs named.</summary>
    public static LeverPlacement? Of(LeverEnd? end, ICollection<Need> needs)
    {
        ArgumentNullException.ThrowIfNull(needs);
        if (end?.Radius is null)
            needs.Add(Need.Radius);
        if (end?.From is null || end.To is null)
            needs.Add(Need.Sweep);
        if (end?.Bench is null && end?.Placed is null)
            needs.Add(Need.Anchor);
        if (end?.Placed is { } waits && new[] { waits.Pivot, waits.Anchor }.Where(p => !p.IsKnown).ToList() is { Count: > 0 } unknown)
        {
            foreach (var point in unknown)
                needs.Add(Need.Point(point.Name, "throw, cushion, hand force"));
            return null;
        }

        if (end is not { Radius: { } radius, From: { } from, To: { } to })
            return null;
        // A tip that tilts does so at the anchor; a fixed one bends the wire at its mouth.
        var fixedTip = end.TipSwivels.Radians > 0 ? 0 : end.Tip.Nominal.Metres;
        if (end.Bench is { } bench)
            return OnBench(bench, radius, from, to, fixedTip);
        return end.Placed is { } placed ? InAircraft(placed, radius, from, to, fixedTip) : null;
    }

    private static LeverPlacement OnBench(BenchAnchor bench, Toleranced<Length> radius, Toleranced<Angle> from, Toleranced<Angle> to, double fixedTip)
    {
        double r = radius.Nominal.Metres, low = from.Nominal.Radians, high = to.Nominal.Radians, s = bench.Distance.Nominal.Metres;
        var byRule = bench.Rule != AnchorRule.Offset;
        var mid = byRule ? 0.5 * (low + high) : 0;
        var offset = byRule ? BenchRules.Offset(bench.Rule, r, 0.5 * (high - low)) : bench.Offset!.Value.Nominal.Metres;
        var exit = BenchRules.ExitAt(mid);
        return new()
        {
            Case = new(r, low, high, BenchRules.AnchorAt(offset, s, mid), exit, fixedTip),
            Radius = Limits.Of(radius),
            From = Limits.Of(from),
            To = Limits.Of(to),
            // Across: the offset's own limits, or the distance's when a rule gives the place. Along: more distance is -exit.
            X = byRule ? Limits.Of(bench.Distance) : Limits.Of(bench.Offset!.Value),
            Y = new(bench.Distance.Plus, bench.Distance.Minus, bench.Distance.Spread),
            Z = default,
            AlongAxis = default,
            Axes = (new(Math.Cos(mid), Math.Sin(mid), 0), exit, new(0, 0, 1)),
            AxisNames = ("anchor offset", "anchor distance", "anchor out of plane"),
            AxisPaths = (byRule ? "leverEnd.bench.distance" : "leverEnd.bench.offset", "leverEnd.bench.distance", ""),
        };
    }

    private static LeverPlacement InAircraft(PlacedAnchor placed, Toleranced<Length> radius, Toleranced<Angle> from, Toleranced<Angle> to, double fixedTip)
    {
        var k = Direction(placed.Axis).Unit();
        var zero = Direction(placed.Zero);
        var u = (zero - (Vector3.Dot(zero, k) * k)).Unit();
        var w = Vector3.Cross(k, u);
        Vector3 InArm(Vector3 v) => new(Vector3.Dot(v, u), Vector3.Dot(v, w), Vector3.Dot(v, k));
        var anchor = InArm(Point(placed.Anchor) - Point(placed.Pivot)) - new Vector3(0, 0, placed.AlongAxis.Nominal.Metres);
        Limits Between(Func<PointAt, Toleranced<Length>> of) => Limits.Of(of(placed.Anchor)).Less(Limits.Of(of(placed.Pivot)));
        return new()
        {
            Case = new(
                radius.Nominal.Metres, from.Nominal.Radians, to.Nominal.Radians, anchor,
                placed.Along is { } along ? InArm(Direction(along)).Unit() : null,
                fixedTip),
            Radius = Limits.Of(radius),
            From = Limits.Of(from),
            To = Limits.Of(to),
            X = Between(p => p.Station),
            Y = Between(p => p.Buttline),
            Z = Between(p => p.Waterline),
            AlongAxis = Limits.Of(placed.AlongAxis),
            Axes = (InArm(new(1, 0, 0)), InArm(new(0, 1, 0)), InArm(new(0, 0, 1))),
            AxisNames = ("anchor to pivot, fore and aft", "anchor to pivot, sideways", "anchor to pivot, up and down"),
            AxisPaths = ("leverEnd.anchor.at", "leverEnd.anchor.at", "leverEnd.anchor.at"),
        };
    }

    /// <summary>A direction of arm axes in the aircraft.</summary>
    public static Vector3 ToAircraft(PlacedAnchor placed, Vector3 direction)
    {
        ArgumentNullException.ThrowIfNull(placed);
        var k = Direction(placed.Axis).Unit();
        var zero = Direction(placed.Zero);
        var u = (zero - (Vector3.Dot(zero, k) * k)).Unit();
        return (direction.X * u) + (direction.Y * Vector3.Cross(k, u)) + (direction.Z * k);
    }

    /// <summary>
    /// Free wire and moment arm, with the arm's true limits over the geometry's tolerances; at a stop also over the
    /// limits of its angle: beyond the nominal stop the arm may come nearer to a dead centre.
    /// </summary>
    public DevicePlace DevicePlaceAt(SweepPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        static bool Same(double a, double b) => Math.Abs(a - b) < 1e-9;
        var turn = Same(place.Angle, Case.From) ? From : Same(place.Angle, Case.To) ? To : default;
        Interval[] box =
        [
            new(Case.Radius - Radius.Minus, Case.Radius + Radius.Plus),
            new(-X.Minus, X.Plus), new(-Y.Minus, Y.Plus), new(-Z.Minus, Z.Plus), new(-AlongAxis.Minus, AlongAxis.Plus),
            new(place.Angle - turn.Minus, place.Angle + turn.Plus),
        ];
        if (box.All(side => side.Width == 0))
            return new(place.Angle, place.Length, Spread3.Exact(place.MomentArm));
        double sign = Arm<Real>([new(Case.Radius), default, default, default, default, new(place.Angle)]).Value < 0 ? -1 : 1;
        var overBox = Arm<Bound>(BoxSearch.Inputs(box));
        double Least(double factor) => BoxSearch.Least(
            x => factor * Arm<Bound>(x), x => factor * Arm<Real>(Array.ConvertAll(x, v => new Real(v))).Value, box, 5e-5, 40, factor * overBox).Proved;
        // An arm that may vanish within the limits: a micrometre stands for zero, and the force becomes absurd as it should.
        return new(place.Angle, place.Length, new(place.MomentArm, Math.Max(1e-6, Least(sign)), -Least(-sign)));
    }

    private T Arm<T>(ReadOnlySpan<T> x)
        where T : struct, IReal<T>
    {
        var (ax, ay, az) = Axes;
        var circle = new CircleDistance<T>(
            x[0],
            T.Of(Case.Anchor.X) + (ax.X * x[1]) + (ay.X * x[2]) + (az.X * x[3]),
            T.Of(Case.Anchor.Y) + (ax.Y * x[1]) + (ay.Y * x[2]) + (az.Y * x[3]),
            T.Of(Case.Anchor.Z) + (ax.Z * x[1]) + (ay.Z * x[2]) + (az.Z * x[3]) - x[4]);
        return circle.SlopeAt(x[5], circle.At(x[5]));
    }

    private static Vector3 Direction(DirectionAt d) => new(d.Aft, d.Right, d.Up);

    private static Vector3 Point(PointAt p) => new(p.Station.Nominal.Metres, p.Buttline.Nominal.Metres, p.Waterline.Nominal.Metres);
}
