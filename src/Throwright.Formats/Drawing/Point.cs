namespace Throwright.Formats.Drawing;

/// <summary>A place on the paper, mm: x to the right, y down, from the upper left corner.</summary>
public readonly record struct Point(double X, double Y);

/// <summary>An upright rectangle on the paper, mm.</summary>
public readonly record struct Box(double Left, double Top, double Right, double Bottom)
{
    public double Width => Right - Left;
    public double Height => Bottom - Top;
    public Point Middle => new(0.5 * (Left + Right), 0.5 * (Top + Bottom));

    /// <summary>The four corners, clockwise as seen.</summary>
    public Point[] Corners => [new(Left, Top), new(Right, Top), new(Right, Bottom), new(Left, Bottom)];

    public Box Grown(double by) => new(Left - by, Top - by, Right + by, Bottom + by);

    public bool Contains(Box other, double within = 1e-9) =>
        other.Left >= Left - within && other.Top >= Top - within && other.Right <= Right + within && other.Bottom <= Bottom + within;

    public bool Overlaps(Box other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    /// <summary>Part of the line lies inside the box.</summary>
    public bool IsCutBy(Segment line)
    {
        double low = 0, high = 1;
        return Within(line.A.X, line.B.X, Left, Right, ref low, ref high) && Within(line.A.Y, line.B.Y, Top, Bottom, ref low, ref high);

        // Narrows the share of the line, 0 at A and 1 at B, to what lies between two parallel edges.
        static bool Within(double from, double to, double least, double most, ref double low, ref double high)
        {
            if (from == to)
                return from > least && from < most;
            double a = (least - from) / (to - from), b = (most - from) / (to - from);
            (low, high) = (Math.Max(low, Math.Min(a, b)), Math.Min(high, Math.Max(a, b)));
            return low < high;
        }
    }

    public static Box Around(IEnumerable<Point> points)
    {
        double left = double.PositiveInfinity, top = left, right = double.NegativeInfinity, bottom = right;
        foreach (var (x, y) in points)
            (left, top, right, bottom) = (Math.Min(left, x), Math.Min(top, y), Math.Max(right, x), Math.Max(bottom, y));
        return new(left, top, right, bottom);
    }
}
