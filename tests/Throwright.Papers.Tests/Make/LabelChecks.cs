using Throwright.Formats.Drawing;

namespace Throwright.Papers.Tests.Make;

/// <summary>What holds for the labels of every shop drawing.</summary>
internal static class LabelChecks
{
    /// <summary>No label cuts another, a line, a curve, or the paper's edge.</summary>
    public static void Apart(Picture picture, string what)
    {
        var words = picture.Letterings.ToList();
        var lines = picture.Shapes.SelectMany(LinesOf).ToList();
        for (var i = 0; i < words.Count; i++)
        {
            var box = words[i].Bounds;
            if (!picture.Paper.Grown(-3).Contains(box))
                Assert.Fail($"{what}: \"{words[i].PlainText}\" leaves the paper");
            for (var k = 0; k < i; k++)
            {
                if (box.Overlaps(words[k].Bounds))
                    Assert.Fail($"{what}: \"{words[i].PlainText}\" on \"{words[k].PlainText}\"");
            }

            foreach (var line in lines)
            {
                if (box.IsCutBy(line))
                    Assert.Fail($"{what}: \"{words[i].PlainText}\" on a line {line}, box {box}");
            }
        }
    }

    private static IEnumerable<Segment> LinesOf(Shape shape) => shape switch
    {
        Segments s => s.Parts,
        Outline { Style.Stroke: not null } o => Enumerable.Range(o.Closed ? 0 : 1, o.Closed ? o.Points.Count : o.Points.Count - 1).Select(i => new Segment(o.Points[i == 0 ? ^1 : i - 1], o.Points[i])),
        Circle c => Chords(new(c.Layer, c.Style, c.Centre, c.Radius, 0, 2 * Math.PI)),
        Arc a => Chords(a),
        _ => [],
    };

    private static IEnumerable<Segment> Chords(Arc arc) =>
        Enumerable.Range(0, 72).Select(i => new Segment(arc.At(arc.From + (arc.Sweep * i / 72)), arc.At(arc.From + (arc.Sweep * (i + 1) / 72))));
}
