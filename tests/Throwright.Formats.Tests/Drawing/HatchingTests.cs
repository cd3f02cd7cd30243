using CsCheck;
using Throwright.Formats.Drawing;

namespace Throwright.Formats.Tests.Drawing;

public sealed class HatchingTests
{
    private static readonly Gen<double> Size = Gen.Double[0.5, 30];

    [Fact]
    public void Lines_InABox_LieInsideAndFillIt() =>
        Gen.Select(Gen.Double[-20, 20], Gen.Double[-20, 20], Size, Size, Gen.Double[-90, 90]).Sample(
            (x, y, width, height, degrees) =>
            {
                var box = new Box(x, y, x + width, y + height);
                const double pitch = 0.25;
                var lines = Hatching.Lines(box.Corners, degrees, pitch);
                foreach (var (a, b) in lines)
                    Assert.True(box.Contains(Box.Around([a, b]), 1e-9));

                // Lines of distance p over an area A have the length A/p together, but for the ends of the outline.
                var length = lines.Sum(l => Distance(l.A, l.B));
                var edge = (2 * (width + height)) + pitch;
                Assert.InRange(length, (width * height / pitch) - edge, (width * height / pitch) + edge);
            },
            iter: 300);

    [Fact]
    public void Lines_InAShapeWithANotch_StayOutOfTheNotch()
    {
        Point[] notched = [new(0, 0), new(10, 0), new(10, 10), new(6, 10), new(6, 4), new(4, 4), new(4, 10), new(0, 10)];
        var lines = Hatching.Lines(notched, 45, 1);
        Assert.NotEmpty(lines);
        Assert.DoesNotContain(lines, l => new Box(4.01, 4.01, 5.99, 9.99).IsCutBy(l));
    }

    [Fact]
    public void Lines_AtFortyFiveDegrees_RiseToTheRight()
    {
        foreach (var (a, b) in Hatching.Lines(new Box(0, 0, 10, 10).Corners, 45, 2))
            Assert.True((b.X - a.X) * (b.Y - a.Y) < 0);
    }

    [Fact]
    public void Dots_InABox_LieWholeInside() =>
        Gen.Select(Size, Size, Gen.Double[0.4, 3]).Sample(
            (width, height, pitch) =>
            {
                var box = new Box(1, 2, 1 + width, 2 + height);
                var diameter = 0.4 * pitch;
                foreach (var dot in Hatching.Dots(box, pitch, diameter))
                    Assert.True(box.Contains(Box.Around([dot]).Grown(0.5 * diameter), 1e-9));
            },
            iter: 300);

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(1e-9)]
    public void Lines_PitchThatWouldFillTheDisk_IsRefused(double pitch) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Hatching.Lines(new Box(0, 0, 100, 100).Corners, 30, pitch));

    private static double Distance(Point a, Point b) => Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y)));
}
