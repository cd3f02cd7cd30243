using Throwright.Engine.Chain;
using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;
using Throwright.Shapes.Quantities;
using Box = Throwright.Formats.Drawing.Box;
using Joint = Throwright.Shapes.Frames.Joint;

namespace Throwright.Papers.Clearance;

/// <summary>Where a handle comes nearest to another body: three views at the worst joint positions, and a scale for each joint.</summary>
public static class WorstPlaceDrawing
{
    private const double View = 300;
    private const double Gap = 14;
    private const double Head = 62;
    private const double Small = 13;
    private const double Row = 40;
    private const double Width = (3 * View) + (4 * Gap);

    /// <summary>mm for each unit of the drawing.</summary>
    private const double OnScreen = 25.4 / 96;

    // A step of less than 4 degrees is not seen.
    private const int Directions = 96;

    /// <summary>m.</summary>
    private const double Endless = 5;

    private static readonly Style Solid = Style.Outlined(Tones.Paper, Tones.Ink, 1.8);
    private static readonly Style Other = Style.Outlined(Tones.Throw, Tones.Ink, 1.4);
    private static readonly Style Behind = Style.Outlined(Tones.Wash, Tones.Edge, 0.8);
    private static readonly Style Phantom = Style.Line(Tones.Blue, 1, 7, 3);

    /// <summary>The pilot looks to the left of the page in the first two views: forward is left.</summary>
    private static readonly (string Name, Vector3 Across, Vector3 Upward)[] Views =
    [
        ("from your left", new(1, 0, 0), new(0, 0, 1)),
        ("from above", new(1, 0, 0), new(0, 1, 0)),
        ("from behind", new(0, 1, 0), new(0, 0, 1)),
    ];

    /// <param name="pair">One of the clearance's pairs.</param>
    public static Picture Page(RunClearance clearance, PairClearance pair, string run, Display display)
    {
        ArgumentNullException.ThrowIfNull(clearance);
        ArgumentNullException.ThrowIfNull(pair);
        var say = new FigureWriter(display);
        var other = clearance.Other(pair);
        var (handle, second) = pair.First.Name == other ? (pair.Second, pair.First) : (pair.First, pair.Second);
        return Page(
            pair, handle, second, clearance.Pairs.Where(p => p != pair).Select(p => p.First.Name == clearance.Handle?.Name ? p.Second : p.First),
            new($"{run} handle and {other}", $"Clearance of {run}", Describe(clearance, pair, run, say), "Dashed: handle pushed in. "), 1.3 * (clearance.Handle?.Reach(clearance.Handle.Length) ?? 0.1), isPhantom: true, say, OnScreen);
    }

    /// <summary>Of what moves and is no handle: the nearest place of one pair.</summary>
    /// <param name="wide">Of the picture, mm; null: as a screen shows it.</param>
    public static Picture Page(CockpitAnswer cockpit, PairClearance pair, Display display, double? wide = null)
    {
        ArgumentNullException.ThrowIfNull(cockpit);
        ArgumentNullException.ThrowIfNull(pair);
        const double Half = 0.25;
        var say = new FigureWriter(display);
        var joints = string.Join(", ", pair.Found.Joints.Zip(pair.Found.Positions, (j, q) => $"{j.Name} {Text(j, q, say)}"));
        var what = pair.Hits ? "touch" : $"stay at least {say.Length(pair.Lower, Rounding.Down)} apart";
        var name = $"{pair.First.Name} and {pair.Second.Name}";
        return Page(
            pair, pair.First, pair.Second, cockpit.Clearance.Case.Bodies.Where(b => b != pair.First && b != pair.Second),
            new(name, $"Clearance of {name}", $"{Words.Capital(name)} {what}; nearest with {joints}.", ""), Half, isPhantom: false, say, wide is { } mm ? mm / Width : OnScreen);
    }

    /// <param name="Dashed">What the dashed body is; empty: there is none.</param>
    private sealed record PageWords(string Pair, string Title, string Description, string Dashed);

    /// <param name="half">Half of what a view shows each way, m.</param>
    /// <param name="unit">mm for each unit of the drawing.</param>
    /// <param name="isPhantom">The first stands once more, dashed, with its first joint at its lower limit.</param>
    private static Picture Page(PairClearance pair, CockpitBody first, CockpitBody second, IEnumerable<CockpitBody> behind, PageWords words, double half, bool isPhantom, FigureWriter say, double unit)
    {
        var found = pair.Found;
        var sketch = new Sketch(unit);
        const double width = Width;
        var middle = 0.5 * (found.OnFirst + found.OnSecond);
        half = Math.Max(0.1, half);
        var hits = pair.Hits;

        sketch.Layer = "head";
        var title = hits ? $"{Words.Capital(words.Pair)} touch" : $"{Words.Capital(words.Pair)}: at least {say.Length(pair.Lower, Rounding.Down)}, proved";
        sketch.Text(Gap, 26, 20, title, Tones.Ink, bold: true, fractions: true);
        sketch.Text(Gap, 48, Small, hits ? "At the joint positions below. Rigid bodies as entered." : $"Found {say.Length(pair.Upper)} at the joint positions below. Rigid bodies as entered.", Tones.Ink2);

        for (var v = 0; v < Views.Length; v++)
        {
            var frame = new Frame(Views[v].Across, Views[v].Upward, middle, half, Gap + (v * (View + Gap)), Head);
            sketch.Layer = $"view-{v + 1}";
            sketch.Rectangle(frame.Window, Style.Outlined(Tones.Ground, Tones.Line, 1));
            // What else is there, at the middle of its joints: where one stands.
            foreach (var body in behind)
                Draw(sketch, frame, body, [.. body.Joints.Joints.Select(j => 0.5 * (j.From + j.To))], Behind);
            Draw(sketch, frame, second, At(second, found), Other);
            if (isPhantom)
                Draw(sketch, frame, first, At(first, found, first.Joints.Joints[0]), Phantom);
            Draw(sketch, frame, first, At(first, found), Solid);
            Mark(sketch, frame, found, hits, hits ? "touch" : say.Length(pair.Lower, Rounding.Down));
            sketch.Text(frame.Left + 8, Head + View - 9, Small, Views[v].Name, Tones.Ink, halo: Tones.Ground);
        }

        var y = Head + View + 26;
        sketch.Layer = "joints";
        for (var i = 0; i < found.Joints.Count; i++)
        {
            Scale(sketch, found.Joints[i], found.Positions[i], y, width, say);
            y += Row;
        }

        sketch.Layer = "notes";
        sketch.Text(Gap, y + 2, Small, $"{words.Dashed}Pale: other bodies with their joints in the middle. Flexing, hands and conduits are not in it.", Tones.Ink2);
        return sketch.ToPicture(width, y + 16, words.Title, words.Description, Tones.Paper);
    }

    /// <summary>The drawing in words.</summary>
    public static string Describe(RunClearance clearance, PairClearance pair, string run, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(clearance);
        ArgumentNullException.ThrowIfNull(pair);
        ArgumentNullException.ThrowIfNull(say);
        var joints = string.Join(", ", pair.Found.Joints.Zip(pair.Found.Positions, (j, q) => $"{j.Name} {Text(j, q, say)}"));
        var what = pair.Hits ? "touch" : $"stay at least {say.Length(pair.Lower, Rounding.Down)} apart";
        return $"Handle of {run} and {clearance.Other(pair)} {what}; nearest with {joints}.";
    }

    /// <param name="back">Stands at its lower limit instead.</param>
    private static double[] At(CockpitBody body, LeastDistanceResult found, Joint? back = null)
    {
        double[] positions = [.. found.Joints.Zip(found.Positions, (j, q) => j == back ? j.From : q)];
        return [.. body.Joints.Joints.Select(j => JointChain.PositionOf(j, found.Joints, positions))];
    }

    private static void Draw(Sketch sketch, Frame frame, CockpitBody body, double[] positions, Style style)
    {
        var pose = body.Joints.At(positions) * body.Home;
        foreach (var shape in body.Solid.Shapes)
        {
            // A floor or a wall fills a view and hides what it is about.
            if (shape.CoreReach > Endless)
                continue;
            var outline = frame.Clipped(Enumerable.Range(0, Directions).Select(k =>
            {
                var angle = 2 * Math.PI * k / Directions;
                var toward = (Elementary.Cos(angle) * frame.Across) + (Elementary.Sin(angle) * frame.Upward);
                return frame.On((pose * shape.Farthest(pose.Turn.Back(toward))) + (shape.Radius * toward));
            }));
            if (outline.Count > 2)
                sketch.Polygon(outline, style);
        }
    }

    private static void Mark(Sketch sketch, Frame frame, LeastDistanceResult found, bool hits, string words)
    {
        Point a = frame.On(found.OnFirst), b = frame.On(found.OnSecond);
        double x = 0.5 * (a.X + b.X), y = 0.5 * (a.Y + b.Y);
        if (hits)
        {
            foreach (var (tone, size) in ((Tone, double)[])[(Tones.Paper, 6), (Tones.Ink, 2.6)])
                sketch.Lines([new(new(x - 7, y - 7), new(x + 7, y + 7)), new(new(x - 7, y + 7), new(x + 7, y - 7))], Style.Line(tone, size));
        }
        else
        {
            sketch.Line(a.X, a.Y, b.X, b.Y, Style.Line(Tones.Blue, 2.4));
            foreach (var p in (Point[])[a, b])
                sketch.Circle(p.X, p.Y, 2.6, Style.Area(Tones.Blue));
        }

        sketch.Text(x + 14, y - 12, Small + 1, words, hits ? Tones.Ink : Tones.Blue, bold: true, halo: Tones.Paper, fractions: true);
    }

    /// <summary>A joint's whole way, with a triangle where the two come nearest.</summary>
    private static void Scale(Sketch sketch, Joint joint, double at, double y, double width, FigureWriter say)
    {
        const double Left = 260;
        var right = width - 110;
        sketch.Text(Gap, y + 4, Small, TextMeasure.Fit(PlainText.Clean(joint.Name), Small, 150), Tones.Ink);
        sketch.Text(Left - 12, y + 4, Small, Text(joint, joint.From, say), Tones.Ink2, anchor: TextAnchor.End, fractions: true);
        sketch.Text(right + 12, y + 4, Small, Text(joint, joint.To, say), Tones.Ink2, fractions: true);
        sketch.Line(Left, y, right, y, Style.Line(Tones.Ink, 1.4));
        foreach (var end in (double[])[Left, right])
            sketch.Line(end, y - 6, end, y + 6, Style.Line(Tones.Ink, 1.4));
        var x = joint.To > joint.From ? Left + ((right - Left) * (at - joint.From) / (joint.To - joint.From)) : Left;
        sketch.Polygon([new(x, y), new(x - 6, y - 11), new(x + 6, y - 11)], Style.Area(Tones.Ink));
        sketch.Text(x, y + 17, Small, Text(joint, at, say), Tones.Ink, bold: true, anchor: TextAnchor.Middle, fractions: true);
    }

    private static string Text(Joint joint, double at, FigureWriter say) => joint.Kind == JointKind.Turn ? say.Angle(at) : say.Length(at);

    /// <summary>One view: aircraft axes to the page, cut at its window.</summary>
    private sealed class Frame(Vector3 across, Vector3 upward, Vector3 middle, double half, double left, double top)
    {
        private readonly double scale = View / (2 * half);

        public double Left => left;
        public Vector3 Across => across;
        public Vector3 Upward => upward;
        public Box Window => new(left, top, left + View, top + View);

        public Point On(Vector3 p) => new(
            left + (0.5 * View) + (scale * Vector3.Dot(p - middle, across)),
            top + (0.5 * View) - (scale * Vector3.Dot(p - middle, upward)));

        /// <summary>The part of a convex outline inside the window.</summary>
        public List<Point> Clipped(IEnumerable<Point> outline)
        {
            List<Point> points = [.. outline];
            (double A, double B, double C)[] sides = [(1, 0, -left), (-1, 0, left + View), (0, 1, -top), (0, -1, top + View)];
            foreach (var (a, b, c) in sides)
            {
                var kept = new List<Point>();
                for (var i = 0; i < points.Count; i++)
                {
                    Point p = points[i], q = points[(i + 1) % points.Count];
                    double dp = (a * p.X) + (b * p.Y) + c, dq = (a * q.X) + (b * q.Y) + c;
                    if (dp >= 0)
                        kept.Add(p);
                    if (dp >= 0 != dq >= 0)
                        kept.Add(new(p.X + ((q.X - p.X) * dp / (dp - dq)), p.Y + ((q.Y - p.Y) * dp / (dp - dq))));
                }

                points = kept;
            }

            return points;
        }
    }
}
