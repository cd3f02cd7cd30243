using CsCheck;
using Throwright.Engine.Model;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Tests.Throw;

/// <summary>A lever anywhere in space: mm, degrees.</summary>
internal sealed record RandomLever(Vector3 Pivot, Vector3 Axis, Vector3 Pin, Vector3 Anchor, Vector3 Along, double From, double To)
{
    private static readonly Gen<Vector3> Place = Gen.Select(Gen.Double[-300, 300], Gen.Double[-300, 300], Gen.Double[-300, 300], (x, y, z) => new Vector3(x, y, z));

    private static readonly Gen<Vector3> Way = Gen.Select(Gen.Double[-1, 1], Gen.Double[-1, 1], Gen.Double[-1, 1], (x, y, z) => new Vector3(x, y, z)).Where(v => v.Size > 0.2);

    /// <summary>Any lever, any sweep below a turn; arm and anchor stand clear of the axis.</summary>
    public static readonly Gen<RandomLever> Any =
        Gen.Select(Place, Way, Way, Place, Way, Gen.Double[15, 80], Gen.Double[-180, 180], Gen.Double[5, 170])
            .Where(t => Vector3.Cross(t.Item2.Unit(), t.Item3.Unit()).Size > 0.1)
            .Select(t =>
            {
                var (pivot, axis, zero, offset, along, radius, from, sweep) = t;
                var k = axis.Unit();
                var u = (zero - (Vector3.Dot(zero, k) * k)).Unit();
                return new RandomLever(pivot, axis, pivot + (radius * u) + (7 * k), pivot + offset, along, from, from + sweep);
            })
            .Where(l => OffAxis(l) > 5 && Math.Abs(OffAxis(l) - Vector3.Cross(l.Axis.Unit(), l.Pin - l.Pivot).Size) > 3);

    public LeverEnd End => Levers.Placed(Pivot, Axis, Pin, Anchor, Along, From, To);

    /// <summary>The whole thing moved.</summary>
    public RandomLever Moved(Func<Vector3, Vector3> point, Func<Vector3, Vector3> direction, Func<Vector3, Vector3> axis) =>
        new(point(Pivot), axis(Axis), point(Pin), point(Anchor), direction(Along), From, To);

    private static double OffAxis(RandomLever l) => Vector3.Cross(l.Axis.Unit(), l.Anchor - l.Pivot).Size;
}
