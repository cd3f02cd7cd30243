using Throwright.Shapes.Distance;

namespace Throwright.Shapes.Tests.Distance;

/// <summary>
/// Bars and cones a few micrometres from something: side on side the two lines cross, and only their crossing is nearest; beside an
/// edge supports jump along the rim.
/// </summary>
public class FlushTests
{
    [Theory]
    [InlineData("cylinder", "cylinder", true)]
    [InlineData("cylinder", "cone", true)]
    [InlineData("cone", "cone", true)]
    [InlineData("cylinder", "hull", false)]
    [InlineData("cone", "triangle", false)]
    public void Rounds_Close_AreFoundAsFarAsTheyAre(string first, string second, bool flush)
    {
        for (var draw = 0; draw < 4000; draw++)
        {
            var scene = new Scenes(787_000_000 + (first.Length * 1_000_000) + (second.Length * 100_000) + draw);
            var (a, b) = (KnownShape.Of(first, scene), KnownShape.Of(second, scene));
            var d = Math.Pow(10, scene.Number(-6, -4.5));
            var (poseA, poseB) = KnownShape.Apart(a, b, d, flush, scene);
            var found = ConvexDistance.Between(a.Shape, poseA, b.Shape, poseB);
            Assert.True(Math.Abs(found.Distance - d) <= 1e-10 && found.Proved <= d + 1e-14, $"draw {draw}: {found.Distance - d:g3} off, proved {found.Proved - d:g3}, d {d}");
        }
    }
}
