using Throwright.Engine.Chain;
using Throwright.Formats.Drawing;
using Throwright.Papers.Ladder;
using Throwright.Papers.Marks;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Curves;

/// <summary>What stands beside the curves.</summary>
public sealed record CurveLabels
{
    /// <summary>Most force that the hand should need, N; null: no limit known.</summary>
    public double? ForceLimit { get; init; }

    /// <summary>Whose limit it is.</summary>
    public string LimitName { get; init; } = "most the hand should need";

    /// <summary>What the grey band stands for.</summary>
    public string BandName { get; init; } = "grey: worst case";

    /// <summary>What is needed before there are forces; shown where they would be.</summary>
    public string ForceNeeds { get; init; } = "force: needs an input";
}

/// <summary>Lever angle and hand force over the knob's travel, on the abscissa of the travel ladder.</summary>
public static partial class CurveDrawing
{
    private const double Small = 13;
    private const double Name = 15;
    private const double AngleHeight = 78;
    private const double ForceHeight = 86;

    /// <summary>Room that the curves want left of the sheet, px.</summary>
    internal const double LeastLeft = 96;

    /// <summary>The two curves alone, at the scale that the ladder of the same width has.</summary>
    public static ScaledPicture Page(LadderLayout layout, TravelCurve? curve, CurveLabels? labels = null, PageOptions? options = null)
    {
        var sketch = new Sketch(Lines.Px);
        var frame = new LadderDrawing.PageFrame(layout, options ?? new(), sketch, LeastLeft);
        var height = Draw(sketch, frame, layout, curve, labels ?? new(), 14);
        return new(
            sketch.ToPicture(frame.Width, height, $"Lever angle and hand force{(layout.Labels.Run.Length > 0 ? ", " + layout.Labels.Run : "")}", Describe(layout, curve, labels ?? new()), Tones.Paper),
            frame.Zero * Lines.Px,
            frame.Scale * Lines.Px);
    }

    /// <summary>The curves in words.</summary>
    public static string Describe(LadderLayout layout, TravelCurve? curve, CurveLabels labels)
    {
        if (layout.Body is null || curve is null || curve.Points.Count < 2)
            return "No curves yet.";
        var shown = new ShownFigures(layout.Display);
        var text = $"The lever turns from {Degrees(curve.Points[0].ArmAngle)} at the push stop to {Degrees(curve.Points[^1].ArmAngle)} at the pull stop.";
        foreach (var (name, band) in ((string, Func<TravelPoint, ForceBand>)[])[("Pulling", p => p.Pull), ("Pushing", p => p.Push)])
        {
            if (Most(curve, band) is { } most)
                text += $" {name} takes at most {shown.Force(most.Nominal)}, {shown.Force(most.Worst)} in the worst case.";
        }

        return labels.ForceLimit is { } limit ? $"{text} Limit {shown.Force(limit, Rounding.Nearest)}." : text;

        static string Degrees(double angle) => FigureText.Plain(angle * 180 / Math.PI, 1) + "°";
    }

    /// <returns>Lower edge, px.</returns>
    internal static double Draw(Sketch sketch, LadderDrawing.PageFrame frame, LadderLayout layout, TravelCurve? curve, CurveLabels labels, double top)
    {
        var shown = new ShownFigures(layout.Display);
        if (layout.Body is not { } body || curve is null || curve.Points.Count < 2)
        {
            Heading(sketch, top, "Lever", "angle");
            sketch.Layer = "place";
            sketch.Rectangle(new(frame.Zero, top, frame.Strip.At(frame.Stroke), top + AngleHeight), Lines.Unknown);
            sketch.Layer = "labels";
            GapMark.Draw(sketch, frame.Zero + 14, top + 26, layout.Without);
            return top + AngleHeight + 14;
        }

        var angle = new Plot(sketch, frame, body, top + 8, AngleHeight - 16, Axis.ForAngle(curve));
        Heading(sketch, top + 8, "Lever", "angle");
        angle.Ground();
        angle.Curve(AnglesPulling(curve, body), Lines.Visible);
        angle.Curve(AnglesPushing(curve, body), Pushing);
        var (y, x) = (top + 8 + (0.5 * (AngleHeight - 16)), frame.RightText);
        sketch.Layer = "labels";
        sketch.Line(x, y - 4.5, x + 26, y - 4.5, Lines.Visible);
        var end = sketch.Text(x + 32, y, Small, "pull", Tones.Ink).Right + 16;
        sketch.Line(end, y - 4.5, end + 26, y - 4.5, Pushing);
        sketch.Text(end + 32, y, Small, "push", Tones.Ink);

        var forceTop = top + AngleHeight + 22;
        Heading(sketch, forceTop, "Hand", $"force, {shown.ForceUnitName}");
        var (pull, push) = (Forces(curve, p => p.KnobPulling, p => p.Pull, shown), Forces(curve, p => p.KnobPushing, p => p.Push, shown));
        double? limit = labels.ForceLimit is { } newtons ? shown.InForceUnit(newtons) : null;
        ForceAt[] all = [.. pull.Concat(push).SelectMany(p => p)];
        var axis = Axis.ForForce(all, limit);
        var force = new Plot(sketch, frame, body, forceTop, ForceHeight, axis);
        if (all.Length == 0)
        {
            sketch.Layer = "place";
            sketch.Rectangle(new(frame.Zero, forceTop, frame.Strip.At(frame.Stroke), forceTop + ForceHeight), Lines.Unknown);
            sketch.Layer = "labels";
            GapMark.Draw(sketch, frame.Zero + 14, forceTop + 14, layout.Without);
            sketch.Text(frame.Zero + 14, forceTop + 58, Small, TextMeasure.Fit(PlainText.Clean(labels.ForceNeeds), Small, frame.Width - frame.Zero - 24), Tones.Blue, halo: Tones.Paper);
            return forceTop + ForceHeight + 14;
        }

        force.Ground();
        foreach (var piece in pull.Concat(push))
            force.Band(piece);
        foreach (var (pieces, style) in ((IReadOnlyList<IReadOnlyList<ForceAt>>, Style)[])[(pull, Lines.Visible), (push, Pushing)])
        {
            foreach (var piece in pieces)
                force.Curve([.. piece.Select(p => (p.Place, p.Nominal))], style);
        }

        var beside = new List<(double Y, string Text)>();
        if (limit is { } most)
        {
            force.Limit(most);
            beside.Add((force.Y(most), $"{labels.LimitName},\u00A0{shown.Force(labels.ForceLimit!.Value, Rounding.Nearest)}"));
        }

        if (all.Any(p => p.Most > p.Least))
        {
            var last = (pull.Count > 0 ? pull : push)[^1][^1];
            beside.Add((force.Y(0.5 * (last.Least + last.Most)), labels.BandName));
        }

        return Math.Max(forceTop + ForceHeight, Beside(sketch, frame, beside, forceTop)) + 14;
    }

    /// <summary>Pull: the lever waits at the push stop until lost motion and stretch are taken up, then follows.</summary>
    internal static IReadOnlyList<(double Place, double Value)> AnglesPulling(TravelCurve curve, LadderBody body) =>
        [(body.PushStop.Nominal, curve.Points[0].ArmAngle), .. curve.Points.Select(p => (p.KnobPulling, p.ArmAngle))];

    internal static IReadOnlyList<(double Place, double Value)> AnglesPushing(TravelCurve curve, LadderBody body) =>
        [.. curve.Points.Select(p => (p.KnobPushing, p.ArmAngle)), (body.PullStop.Nominal, curve.Points[^1].ArmAngle)];

    private static Style Pushing { get; } = Style.Line(Tones.Ink, 1.4, 6, 4);

    /// <summary>A force at a place of the knob, in the unit shown.</summary>
    internal readonly record struct ForceAt(double Place, double Nominal, double Least, double Most);

    /// <summary>The known forces, in as many pieces as what is not known leaves; a band that is not known is as narrow as its curve.</summary>
    internal static IReadOnlyList<IReadOnlyList<ForceAt>> Forces(TravelCurve curve, Func<TravelPoint, double> place, Func<TravelPoint, ForceBand> band, ShownFigures shown)
    {
        var pieces = new List<List<ForceAt>>();
        var open = false;
        foreach (var point in curve.Points)
        {
            var (nominal, least, most) = band(point);
            if (!double.IsFinite(nominal) || !double.IsFinite(place(point)))
            {
                open = false;
                continue;
            }

            if (!open)
                pieces.Add([]);
            open = true;
            pieces[^1].Add(new(
                place(point), shown.InForceUnit(nominal), shown.InForceUnit(double.IsFinite(least) ? least : nominal), shown.InForceUnit(double.IsFinite(most) ? most : nominal)));
        }

        return pieces;
    }

    private static (double Nominal, double Worst)? Most(TravelCurve curve, Func<TravelPoint, ForceBand> band)
    {
        var known = curve.Points.Select(band).Where(b => double.IsFinite(b.Nominal)).ToArray();
        return known.Length == 0 ? null : (known.Max(b => b.Nominal), known.Max(b => double.IsFinite(b.Most) ? b.Most : b.Nominal));
    }

    private static void Heading(Sketch sketch, double top, string name, string what)
    {
        sketch.Layer = "names";
        sketch.Text(4, top + 11, Name, name, Tones.Ink, bold: true);
        sketch.Text(4, top + 29, Small, what, Tones.Ink2);
    }

    /// <summary>Texts at the right, each at its height or right below the one above it.</summary>
    private static double Beside(Sketch sketch, LadderDrawing.PageFrame frame, List<(double Y, string Text)> texts, double top)
    {
        sketch.Layer = "labels";
        var last = top - 20;
        foreach (var (y, text) in texts.OrderBy(t => t.Y))
        {
            foreach (var line in TextMeasure.Wrap(PlainText.Clean(text), Small, frame.Width - frame.RightText - 6))
            {
                last = Math.Max(y + 4.5, last + 17);
                sketch.Text(frame.RightText, last, Small, line, Tones.Ink2, halo: Tones.Paper);
            }
        }

        return last + 4;
    }

    /// <summary>One plot on the ladder's abscissa.</summary>
    private sealed class Plot(Sketch sketch, LadderDrawing.PageFrame frame, LadderBody body, double top, double height, Axis axis)
    {
        public double Y(double value) => top + height - ((value - axis.Low) / (axis.High - axis.Low) * height);

        public void Ground()
        {
            var strip = frame.Strip;
            double left = strip.Zero, right = strip.At(frame.Stroke);
            sketch.Layer = "unreached";
            foreach (var (from, to) in ((double, double)[])[(left, strip.At(body.PushStop.Nominal)), (strip.At(body.PullStop.Nominal), right)])
            {
                if (to - from >= 2)
                    sketch.Hatch(new Box(from, top - 6, to, top + height + 6).Corners, 45, 9, Lines.HatchUnreached);
            }

            sketch.Layer = "grid";
            foreach (var (value, name) in axis.Figures)
            {
                sketch.Line(left, Y(value), Math.Max(right, strip.At(body.PullStop.Nominal)), Y(value), Lines.Hair);
                sketch.Text(Math.Min(left, strip.At(body.PushStop.Nominal)) - 8, Y(value) + 4.5, Small, name, Tones.Ink2, anchor: TextAnchor.End);
            }
        }

        public void Curve(IReadOnlyList<(double Place, double Value)> points, Style style)
        {
            if (points.Count < 2)
                return;
            sketch.Layer = "curves";
            sketch.Polyline(Thinned([.. points.Select(p => new Point(frame.Strip.At(p.Place), Y(p.Value)))]), style);
        }

        public void Band(IReadOnlyList<ForceAt> points)
        {
            if (points.Count < 2 || points.All(p => p.Most - p.Least <= 0))
                return;
            sketch.Layer = "worst-case";
            var upper = Thinned([.. points.Select(p => new Point(frame.Strip.At(p.Place), Y(p.Most)))]);
            var lower = Thinned([.. points.Select(p => new Point(frame.Strip.At(p.Place), Y(p.Least)))]);
            sketch.Polygon([.. upper, .. lower.Reverse()], Style.Outlined(Tones.Band, Tones.Paper, 1.2));
        }

        public void Limit(double value)
        {
            sketch.Layer = "limit";
            sketch.Line(frame.Strip.Zero, Y(value), frame.Strip.At(frame.Stroke), Y(value), Style.Line(Tones.Ink, 2.6));
        }
    }

    /// <summary>Drops the points that lie on the line through their neighbours, to 0.1 px (Ramer, Douglas and Peucker).</summary>
    internal static IReadOnlyList<Point> Thinned(IReadOnlyList<Point> points)
    {
        var keep = new bool[points.Count];
        keep[0] = keep[^1] = true;
        var open = new Stack<(int First, int Last)>();
        open.Push((0, points.Count - 1));
        while (open.TryPop(out var span))
        {
            var (first, last) = span;
            double dx = points[last].X - points[first].X, dy = points[last].Y - points[first].Y, length = Math.Sqrt((dx * dx) + (dy * dy));
            var (far, at) = (0.1, -1);
            for (var i = first + 1; i < last; i++)
            {
                double px = points[i].X - points[first].X, py = points[i].Y - points[first].Y;
                var off = length > 0 ? Math.Abs((dx * py) - (dy * px)) / length : Math.Sqrt((px * px) + (py * py));
                if (off > far)
                    (far, at) = (off, i);
            }

            if (at < 0)
                continue;
            keep[at] = true;
            open.Push((first, at));
            open.Push((at, last));
        }

        return [.. points.Where((_, i) => keep[i])];
    }
}
