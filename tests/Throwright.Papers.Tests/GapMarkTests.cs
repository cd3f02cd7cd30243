using Throwright.Engine.Findings;
using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Tests;

public sealed class GapMarkTests
{
    [Fact]
    public void Marks_AllFour_AreAsApproved()
    {
        var sketch = new Sketch(25.4 / 96);
        var y = 8.0;
        foreach (var verdict in Enum.GetValues<Verdict>())
        {
            var box = GapMark.Draw(sketch, 8, y, verdict);
            GapMark.Draw(sketch, box.Right + 12, y, verdict, "0.115 in left");
            y += 34;
        }

        var svg = SvgWriter.Write(sketch.ToPicture(460, y, "Gap marks", "The four verdicts.", Tones.Paper), Palettes.Screen);
        foreach (var verdict in Enum.GetValues<Verdict>())
            Assert.Contains($">{GapMark.Word(verdict)}<", svg, StringComparison.Ordinal);
        Approved.Check("gap-marks.svg", svg);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Characters_EveryVerdict_HasItsWordAndOneWidth(bool plain)
    {
        foreach (var verdict in Enum.GetValues<Verdict>())
        {
            var text = GapMark.Characters(verdict, plain).Text;
            Assert.Contains(GapMark.Word(verdict), text, StringComparison.OrdinalIgnoreCase);
            Assert.Equal(19, text.Length);
            if (plain)
                Assert.True(text.All(char.IsAscii), text);
        }
    }

    [Fact]
    public void Draw_AnyVerdict_StaysInTheRoomItNames()
    {
        foreach (var verdict in Enum.GetValues<Verdict>())
        {
            var sketch = new Sketch();
            var box = GapMark.Draw(sketch, 100, 20, verdict, "worst case 0.050 in", toLeft: true);
            Assert.Equal(100, box.Right, 9);
            Assert.Equal(box.Width, GapMark.Width(verdict, "worst case 0.050 in"), 9);
            foreach (var shape in sketch.ToPicture(200, 60, "t", "d").Shapes)
                Assert.True(box.Contains(shape.Bounds), $"{verdict}: {shape.GetType().Name} {shape.Bounds} outside {box}");
        }
    }
}
