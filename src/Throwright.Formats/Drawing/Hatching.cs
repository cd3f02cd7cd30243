using Throwright.Shapes.Numerics;

namespace Throwright.Formats.Drawing;

/// <summary>Fills made of lines and dots, cut to the shape, so that they look alike in every format.</summary>
public static class Hatching
{
    /// <summary>Parallel lines inside a closed outline (even-odd rule where it crosses itself).</summary>
    /// <param name="degrees">Direction of the lines, anticlockwise as seen from the x axis.</param>
    /// <param name="pitch">Distance from line to line. Lines of two shapes with the same pitch run on in one another.</param>
    public static IReadOnlyList<Segment> Lines(IReadOnlyList<Point> outline, double degrees, double pitch)
    {
        if (!(pitch > 0))
            throw new ArgumentOutOfRangeException(nameof(pitch), pitch, "must be above 0");
        double cos = Elementary.Cos(degrees * Math.PI / 180), sin = Elementary.Sin(degrees * Math.PI / 180);

        // Along and across the lines: u = x cos - y sin, v = x sin + y cos (y points down).
        var turned = outline.Select(p => new Point((p.X * cos) - (p.Y * sin), (p.X * sin) + (p.Y * cos))).ToArray();
        var box = Box.Around(turned);
        if (!(box.Height < pitch * 20_000))
            throw new ArgumentOutOfRangeException(nameof(pitch), pitch, "gives more than 20 000 lines");
        var lines = new List<Segment>();
        var cuts = new List<double>();

        // A small shift keeps lines off the corners of outlines that lie on whole multiples of the pitch.
        const double shift = 0.37;
        for (var k = (int)Math.Ceiling((box.Top / pitch) - shift); (k + shift) * pitch < box.Bottom; k++)
        {
            var v = (k + shift) * pitch;
            cuts.Clear();
            for (var i = 0; i < turned.Length; i++)
            {
                var (a, b) = (turned[i], turned[(i + 1) % turned.Length]);
                if (a.Y > v != b.Y > v)
                    cuts.Add(a.X + ((v - a.Y) / (b.Y - a.Y) * (b.X - a.X)));
            }

            cuts.Sort();
            for (var i = 0; i + 1 < cuts.Count; i += 2)
                lines.Add(new(Back(cuts[i], v), Back(cuts[i + 1], v)));
        }

        return lines;

        Point Back(double u, double v) => new((u * cos) + (v * sin), (v * cos) - (u * sin));
    }

    /// <summary>Dots in staggered rows that lie whole inside a box.</summary>
    public static IReadOnlyList<Point> Dots(Box box, double pitch, double diameter)
    {
        if (!(pitch > 0))
            throw new ArgumentOutOfRangeException(nameof(pitch), pitch, "must be above 0");
        if (!(box.Width * box.Height < pitch * pitch * 40_000))
            throw new ArgumentOutOfRangeException(nameof(pitch), pitch, "gives more than 40 000 dots");
        var dots = new List<Point>();
        var inside = box.Grown(-0.5 * diameter);
        var row = 0;
        for (var y = box.Top + (0.5 * pitch); y <= inside.Bottom; y += 0.5 * pitch, row++)
        {
            // The rows start from the middle, so that a narrow box still shows dots.
            var start = box.Middle.X + (row % 2 == 0 ? 0 : 0.5 * pitch);
            start -= pitch * Math.Floor((start - inside.Left) / pitch);
            for (var x = start; x <= inside.Right; x += pitch)
                dots.Add(new(x, y));
        }

        return dots;
    }
}
