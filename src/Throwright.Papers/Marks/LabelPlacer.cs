using Throwright.Formats.Drawing;

namespace Throwright.Papers.Marks;

/// <summary>Finds a free place for a label near the thing it names; px.</summary>
internal sealed class LabelPlacer(Sketch sketch, Box paper)
{
    private readonly List<Box> taken = [];
    private readonly List<Segment> lines = [];

    /// <summary>No label may lie here.</summary>
    public void Keep(Box box) => taken.Add(box);

    /// <summary>A label may cross this line, but had better not.</summary>
    public void Avoid(Point a, Point b) => lines.Add(new(a, b));

    public void Avoid(IReadOnlyList<Point> points)
    {
        for (var i = 1; i < points.Count; i++)
            Avoid(points[i - 1], points[i]);
    }

    /// <summary>Draws the label at the best free place around a point; with a leader if that is not beside it.</summary>
    /// <returns>False: there is no free place on the paper.</returns>
    public bool Place(Point at, double size, IReadOnlyList<TextSpan> text, double gap = 8)
    {
        var width = TextMeasure.Width(text, size);
        (double Cost, Box Box)? best = null;
        foreach (var distance in (double[])[gap, gap + 12, gap + 26, gap + 44, gap + 66, gap + 92])
        {
            for (var direction = 0; direction < 16; direction++)
            {
                var turn = direction * Math.PI / 8;
                double cos = Shapes.Numerics.Elementary.Cos(turn), sin = Shapes.Numerics.Elementary.Sin(turn);

                // The side of the box that faces the point moves along its edge with the direction, so that it never jumps.
                double x = at.X + (distance * cos) + (width * 0.5 * (cos - 1)), y = at.Y - (distance * sin) - (0.5 * size * sin) + (0.35 * size);
                var box = new Box(x, y - (Lettering.Rise * size), x + width, y + (Lettering.Drop * size));
                if (!paper.Contains(box.Grown(2)) || taken.Any(t => t.Overlaps(box.Grown(2))))
                    continue;
                var cost = distance + (60.0 * lines.Count(box.Grown(2).IsCutBy));
                if (best is null || cost < best.Value.Cost - 1e-9)
                    best = (cost, box);
            }
        }

        if (best is not { } found)
            return false;
        taken.Add(found.Box);
        var nearest = new Point(Math.Clamp(at.X, found.Box.Left, found.Box.Right), Math.Clamp(at.Y, found.Box.Top + 2, found.Box.Bottom - 2));
        double dx = nearest.X - at.X, dy = nearest.Y - at.Y, away = Math.Sqrt((dx * dx) + (dy * dy));
        if (away > 24)
            sketch.Line(at.X + (dx * 3 / away), at.Y + (dy * 3 / away), nearest.X - (dx * 3 / away), nearest.Y - (dy * 3 / away), Lines.Thin);
        sketch.Text(found.Box.Left, found.Box.Top + (Lettering.Rise * size), size, text, TextAnchor.Start, Tones.Paper, fractions: true);
        return true;
    }
}
