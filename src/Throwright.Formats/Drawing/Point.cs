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

    public static Box Hull(Box a, Box b) =>
        new(Math.Min(a.Left, b.Left), Math.Min(a.Top, b.Top), Math.Max(a.Right, b.Right), Math.Max(a.Bottom, b.Bottom));

    public static Box Around(IEnumerable<Point> points)
    {
        double left = double.PositiveInfinity, top = left, right = double.NegativeInfinity, bottom = right;
        foreach (var (x, y) in points)
            (left, top, right, bottom) = (Math.Min(left, x), Math.Min(top, y), Math.Max(right, x), Math.Max(bottom, y));
        return new(left, top, right, bottom);
    }
}
