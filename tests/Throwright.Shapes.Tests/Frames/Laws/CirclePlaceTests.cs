using CsCheck;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Frames.Laws;

public class CirclePlaceTests
{
    [Fact]
    public void Difference_OfTwoPlaces_IsThatOfTheirDistances() =>
        Gen.Select(Gen.Double[0.01, 0.1], Gen.Double[-0.3, 0.3], Gen.Double[-0.3, 0.3], Gen.Double[-0.1, 0.1], Gen.Double[-3, 3], Gen.Double[-3, 3]).Sample(
            (r, a, b, c, first, second) =>
            {
                var circle = new CircleDistance<Real>(new(r), new(a), new(b), new(c));
                var (p, q) = (circle.PlaceAt(new(first)), circle.PlaceAt(new(second)));
                // Where the point nearly touches the circle the distances themselves are not known better than this.
                Assert.Equal(circle.At(new(first)).Value - circle.At(new(second)).Value, circle.Difference(p, q).Value, 1e-13);
                Assert.Equal(circle.SlopeAt(new(first), p.Distance).Value, circle.SlopeAt(p).Value);
            },
            iter: 2000);
}
