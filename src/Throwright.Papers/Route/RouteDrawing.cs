using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Engine.Route;
using Throwright.Formats.Drawing;
using Throwright.Papers.Curves;
using Throwright.Papers.Marks;
using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Route;

/// <summary>The lie of the conduit in three views of the aircraft at one scale, and its bend along its length.</summary>
/// <remarks>
/// Third angle: from the left side below, from above over it, from behind beside it. From behind and from above the right of the
/// aircraft is at the right and below; forward is at the left.
/// </remarks>
public static class RouteDrawing
{
    private const double Small = 13;
    private const double Wide = 900;
    private const int MostNear = 3;
    private const double Edge = 16;
    private const double Gap = 30;
    private const double PlotHeight = 150;
    private const double LeastSide = 90;
    private const double MostTall = 330;

    private static readonly Style Conduit = Style.Line(Tones.Ink, 3);
    private static readonly Style AsOrdered = Style.Line(Tones.Blue, 1.8, 7, 5);
    private static readonly Style Free = Style.Line(Tones.Ink2, 1.6, 5, 4);
    private static readonly Style More = Style.Line(Tones.Ink2, 1.3, 10, 3);
    private static readonly Style Less = Style.Line(Tones.Ink2, 1.3, 2, 3);
    private static readonly Style Turned = Style.Line(Tones.Ink, 1.2, 4, 3, 1, 3);
    private static readonly Style[] Moving = [Style.Line(Tones.Blue, 1.4, 14, 3, 2, 3), Style.Line(Tones.Blue, 1.4, 2, 2.5), Style.Line(Tones.Blue, 1.4, 9, 2, 2, 2, 2, 2)];
    // Less than this apart on the sheet, two lines are one.
    private const double OneLine = 4;

    /// <summary>All of it on one sheet.</summary>
    /// <param name="label">Name of the run, as engraved.</param>
    /// <param name="leastRadius">Least radius the conduit's maker allows, m; null: not known.</param>
    /// <param name="width">Of the sheet, px.</param>
    public static Picture Page(RunRoute route, string label, Display display, double? leastRadius, double width = Wide)
    {
        ArgumentNullException.ThrowIfNull(route);
        var lie = route.Counted ?? throw new ArgumentException("a route without a lie has no picture", nameof(route));
        var shown = new ShownFigures(display);
        var sketch = new Sketch(Lines.Px);
        var besides = Besides(route, shown);
        var points = Samples(lie.Shape).Concat(besides.SelectMany(b => b.Points)).ToList();
        Vector3 low = new(points.Min(p => p.X), points.Min(p => p.Y), points.Min(p => p.Z)), high = new(points.Max(p => p.X), points.Max(p => p.Y), points.Max(p => p.Z));
        Vector3 size = high - low;

        // One scale for the three: two views side by side, two over each other.
        var scale = Math.Min((width - (2 * Edge) - Gap - (4 * LeastSide)) / Math.Max(size.X + size.Y, 1e-3), MostTall * width / Wide / Math.Max(size.Y, Math.Max(size.Z, 1e-3)));
        var together = besides.Where(b => b.Apart(lie) * scale < OneLine).ToList();
        besides = Merged([.. besides.Except(together)], OneLine / scale);
        double sideWidth = (scale * size.X) + (2 * LeastSide), rearWidth = (scale * size.Y) + (2 * LeastSide);
        var rows = KeyRows(route, lie, besides, together, shown, width - Edge - (Edge + sideWidth + Gap));
        double sideHeight = Math.Max(LeastSide, (scale * size.Z) + 60), topHeight = Math.Max(Math.Max(LeastSide, (scale * size.Y) + 60), (KeyRow * rows.Count) + 36 - Gap);
        double top = 40, side = top + topHeight + Gap;
        View(sketch, new(Edge, top, Edge + sideWidth, top + topHeight), "from above", p => new(p.X, p.Y), route, besides, shown, scale, leastRadius);
        View(sketch, new(Edge, side, Edge + sideWidth, side + sideHeight), "from the left", p => new(p.X, -p.Z), route, besides, shown, scale, leastRadius);
        View(sketch, new(Edge + sideWidth + Gap, side, Edge + sideWidth + Gap + rearWidth, side + sideHeight), "from behind", p => new(p.Y, -p.Z), route, besides, shown, scale, leastRadius);
        Key(sketch, Edge + sideWidth + Gap, top, rows, shown, scale);

        sketch.Layer = "names";
        sketch.Text(Edge, 22, 17, label.Length > 0 ? $"{label}: lie of the conduit" : "Lie of the conduit", Tones.Ink, bold: true);
        double plotTop = side + sideHeight + Gap + 14, plotHeight = PlotHeight * width / Wide;
        Plot(sketch, new(Edge + 74, plotTop, width - Edge - 120, plotTop + plotHeight), route, lie, shown, leastRadius);
        return sketch.ToPicture(width, plotTop + plotHeight + 44, $"Lie of the conduit{(label.Length > 0 ? ", " + label : "")}", Describe(route, display), Tones.Paper);
    }

    /// <summary>The picture in words.</summary>
    public static string Describe(RunRoute route, Display display)
    {
        ArgumentNullException.ThrowIfNull(route);
        if (route.Counted is not { } lie)
            return "No lie.";
        var shown = new ShownFigures(display);
        var straight = double.IsInfinity(lie.LeastRadius);
        return $"A conduit of {shown.Length(lie.Case.Length)} between its ends, over {lie.Case.Supports.Count} supports. "
            + (straight ? "It lies straight." : $"Its least radius is {shown.Left(lie.LeastRadius)}, {shown.Length(lie.LeastRadiusAt)} from the cockpit end; it turns {Degrees(lie.BendTotal)} in all.")
            + (lie.Contacts.Count == 0 ? "" : $" It rests against {string.Join(" and ", lie.Contacts.Select(c => c.Name).Distinct())}.")
            + string.Concat(Besides(route, shown).GroupBy(b => b.Words).Select(b => $" Beside it, up to {shown.Length(b.Max(o => o.Apart(lie)))} away: {b.Key}."));
    }

    /// <summary>Another place in which the conduit may be.</summary>
    private sealed record Beside(string Layer, IReadOnlyList<Vector3> Points, Style Line, string Words)
    {
        public double Apart(Lie lie) => Points.Max(lie.Shape.DistanceFrom);

        public double Apart(Beside other) => Points.Max(p => other.Points.Min(q => (p - q).Size));
    }

    /// <summary>Lines that would lie on each other are one, with the words of both.</summary>
    private static List<Beside> Merged(IEnumerable<Beside> all, double near)
    {
        var merged = new List<Beside>();
        foreach (var beside in all)
        {
            var same = merged.FindIndex(m => m.Apart(beside) < near);
            if (same < 0)
                merged.Add(beside);
            else if (merged[same].Words != beside.Words)
                merged[same] = merged[same] with { Words = $"{merged[same].Words}; {beside.Words}" };
        }

        return merged;
    }

    private static List<Beside> Besides(RunRoute route, ShownFigures shown)
    {
        var lie = route.Counted!;
        var all = new List<Beside>();
        if (route.Resting is not null)
            all.Add(new("free", [.. Samples(route.Lie!.Shape)], Free, "if nothing stood in its way"));
        if (route.Ordered is { Answer.Lie: { } delivered } ordered)
            all.Add(new("as-ordered", [.. Samples(delivered.Shape)], AsOrdered, $"as ordered, {shown.Length(Math.Abs(ordered.Change))} {(ordered.Change > 0 ? "longer" : "shorter")}"));
        if (route.Order is { Longer: { Answer.Lie: { } longer } more })
            all.Add(new("longer", [.. Samples(longer.Shape)], More, $"with {shown.Known(more.Change)} more"));
        if (route.Order is { Shorter: { Answer.Lie: { } shorter } less })
            all.Add(new("shorter", [.. Samples(shorter.Shape)], Less, $"with {shown.Known(-less.Change)} less"));
        all.AddRange(route.AtMoves.Where(m => m.Lie is not null).Select((m, i) => new Beside("moved", [.. Samples(m.Lie!.Shape)], Moving[i % Moving.Length], m.Name)));
        if (route.Twisted is { Lie.Points.Count: > 0 } twisted)
            all.Add(new("turned", twisted.Lie.Points, Turned, $"end turned by {Degrees(Math.Abs(twisted.Turn))}"));
        all.AddRange(lie.Others.Take(3).Select(o => new Beside("others", [.. Samples(o)], Lines.Phantom, "can rest here too")));
        return all;
    }

    private static string Degrees(double angle) => FigureText.Plain(angle * 180 / Math.PI, 0) + "°";

    private static IEnumerable<Vector3> Samples(ElasticCurve curve) => curve.Nodes.Select(n => n.Point);

    private static void View(
        Sketch sketch, Box frame, string name, Func<Vector3, Point> project, RunRoute route, IReadOnlyList<Beside> besides, ShownFigures shown, double scale, double? leastRadius)
    {
        var lie = route.Counted!;
        var all = Samples(lie.Shape).Concat(besides.SelectMany(b => b.Points)).Select(project).ToList();
        double midX = 0.5 * (all.Min(p => p.X) + all.Max(p => p.X)), midY = 0.5 * (all.Min(p => p.Y) + all.Max(p => p.Y));
        Point On(Vector3 v)
        {
            var p = project(v);
            return new(0.5 * (frame.Left + frame.Right) + (scale * (p.X - midX)), 0.5 * (frame.Top + frame.Bottom) + (scale * (p.Y - midY)));
        }

        var placer = new LabelPlacer(sketch, frame);
        sketch.Layer = "frames";
        sketch.Rectangle(frame, Lines.Hair);
        sketch.Layer = "labels";
        var title = sketch.Text(frame.Left + 6, frame.Top + 16, Small, name, Tones.Ink2);
        placer.Keep(title);
        var path = CurveDrawing.Thinned([.. Samples(lie.Shape).Select(On)]);
        placer.Avoid(path);
        foreach (var beside in besides)
        {
            sketch.Layer = beside.Layer;
            var line = CurveDrawing.Thinned([.. beside.Points.Select(On)]);
            placer.Avoid(line);
            sketch.Polyline(line, beside.Line);
        }

        sketch.Layer = "conduit";
        sketch.Polyline(path, Conduit);
        if (double.IsFinite(lie.LeastRadius))
        {
            var at = On(lie.Shape.PointAt(lie.LeastRadiusAt));
            sketch.Layer = "tightest";
            sketch.Circle(at.X, at.Y, 7, Style.Line(Tones.Ink, 1.6));
            sketch.Layer = "labels";
            placer.Place(at, Small, [new($"R {shown.Left(lie.LeastRadius)}", Tones.Ink, lie.LeastRadius < leastRadius)], 12);
        }

        foreach (var (v, words) in ((Vector3, string)[])[(lie.Case.Start, "cockpit end"), (lie.Case.End, "anchor")])
        {
            var at = On(v);
            sketch.Layer = "ends";
            sketch.Circle(at.X, at.Y, 4.5, Style.Outlined(Tones.Ink, Tones.Ink, 1.2));
            sketch.Layer = "labels";
            placer.Place(at, Small, [new(words, Tones.Ink)], 10);
        }

        foreach (var contact in lie.Contacts)
        {
            var at = On(contact.Point);
            sketch.Layer = "contacts";
            sketch.Polygon([new(at.X, at.Y - 8), new(at.X + 7, at.Y + 5), new(at.X - 7, at.Y + 5)], Style.Outlined(Tones.Paper, Tones.Ink, 2));
            sketch.Layer = "labels";
            placer.Place(at, Small, [new($"against {contact.Name}", Tones.Ink)], 12);
        }

        // Where the free lie comes nearest to what stands by its way.
        foreach (var gap in NearThings(route))
        {
            var at = On(route.Lie!.Shape.PointAt(Math.Clamp(gap.At, 0, route.Lie.Shape.Length)));
            sketch.Layer = "near";
            sketch.Line(at.X - 4, at.Y - 4, at.X + 4, at.Y + 4, Lines.Thin);
            sketch.Line(at.X - 4, at.Y + 4, at.X + 4, at.Y - 4, Lines.Thin);
            sketch.Layer = "labels";
            placer.Place(at, Small, [new(gap.Name, Tones.Ink2)], 10);
        }

        var numbered = new List<Point>();
        for (var i = 0; i < lie.Case.Supports.Count; i++)
        {
            var support = lie.Case.Supports[i];
            Point at = On(support.Point), ahead = On(support.Point + (0.01 * lie.Shape.TangentAt(lie.Shape.Nodes[lie.Shape.Holds[i + 1]].At)));
            sketch.Layer = "supports";
            Mark(sketch, at, ahead, support.Kind);
            sketch.Layer = "labels";
            // As in the file: from the device to the knob. Marks that lie on each other have their numbers in the other views.
            if (numbered.Any(n => Math.Max(Math.Abs(n.X - at.X), Math.Abs(n.Y - at.Y)) < 12))
                continue;
            numbered.Add(at);
            placer.Place(at, Small, [new($"{lie.Case.Supports.Count - i}", Tones.Blue)], 10);
        }
    }

    /// <summary>What is near enough to matter, where the conduit does not rest against it.</summary>
    private static IEnumerable<RouteGap> NearThings(RunRoute route) => route is not { Lie: not null, Resting: null } ? []
        : route.Gaps.Where(g => g.Least < Math.Max(0.05, 1.5 * g.Keep)).OrderBy(g => g.Least - g.Keep).Take(MostNear);

    /// <summary>A tight clamp: two bars across; one that lets slide: two bars beside; a grommet: a ring.</summary>
    private static void Mark(Sketch sketch, Point at, Point ahead, SupportKind kind)
    {
        if (kind == SupportKind.Grommet)
        {
            sketch.Circle(at.X, at.Y, 5.5, Style.Outlined(Tones.Paper, Tones.Ink, 2));
            return;
        }

        double dx = ahead.X - at.X, dy = ahead.Y - at.Y, length = Math.Sqrt((dx * dx) + (dy * dy));
        var (ux, uy) = length > 1e-6 ? (dx / length, dy / length) : (1.0, 0.0);
        foreach (var s in (double[])[-4, 4])
        {
            if (kind == SupportKind.Tight)
                sketch.Line(at.X + (s * ux) - (8 * uy), at.Y + (s * uy) + (8 * ux), at.X + (s * ux) + (8 * uy), at.Y + (s * uy) - (8 * ux), Lines.Visible);
            else
                sketch.Line(at.X - (8 * ux) - (1.5 * s * uy), at.Y - (8 * uy) + (1.5 * s * ux), at.X + (8 * ux) - (1.5 * s * uy), at.Y + (8 * uy) + (1.5 * s * ux), Lines.Visible);
        }
    }

    private const double KeyRow = 18;
    private const double Sample = 32;

    /// <summary>A row of the key, with the line it tells of.</summary>
    private readonly record struct KeyLine(string Words, Style? Line, bool IsIndented);

    private static List<KeyLine> KeyRows(RunRoute route, Lie lie, IReadOnlyList<Beside> besides, IReadOnlyList<Beside> together, ShownFigures shown, double width)
    {
        var rows = new List<KeyLine>();
        void Add(string words, Style? line = null)
        {
            var first = true;
            foreach (var part in TextMeasure.Wrap(PlainText.Clean(words), Small, line is null ? width : width - Sample))
            {
                rows.Add(new(part, first ? line : null, line is not null));
                first = false;
            }
        }

        Add($"Conduit {shown.Length(lie.Case.Length + route.InFittings)}, fittings included");
        if (route.Order is { } order)
            Add($"Order {shown.Length(order.ConduitOrdered)}");
        Add($"Turns {Degrees(lie.BendTotal)} in all");
        if (besides.Count + together.Count > 0)
            Add(route.Resting is null ? "as it lies" : "as it rests against what is in its way", Conduit);
        foreach (var beside in besides.DistinctBy(b => (b.Words, b.Line)))
            Add(beside.Words, beside.Line);
        foreach (var lost in route.AtMoves.Where(m => m.Lie is null))
            Add($"No lie: {lost.Name}");
        foreach (var none in new[] { route.Order?.Longer, route.Order?.Shorter }.Where(o => o is { Answer.Lie: null }))
            Add($"No lie: with {shown.Known(Math.Abs(none!.Change))} {(none.Change > 0 ? "more" : "less")}");
        foreach (var gap in NearThings(route))
            Add(gap.Least > 0 ? $"× {shown.Left(gap.Least)} from {gap.Name}, wanted {shown.Known(gap.Keep)}" : $"× through {gap.Name}, or touching it");
        if (together.Count > 0)
            Add($"Too near to be drawn: {string.Join("; ", together.Select(b => b.Words).Distinct())}");
        return rows;
    }

    private static void Key(Sketch sketch, double x, double top, IReadOnlyList<KeyLine> rows, ShownFigures shown, double scale)
    {
        sketch.Layer = "labels";
        var y = top + 14;
        foreach (var row in rows)
        {
            if (row.Line is { } line)
                sketch.Line(x, y - 4.5, x + Sample - 6, y - 4.5, line);
            sketch.Text(row.IsIndented ? x + Sample : x, y, Small, row.Words, Tones.Ink);
            y += KeyRow;
        }

        // A bar of a round length.
        var step = shown.Inches ? 0.0254 : 0.01;
        var bar = ((double[])[1, 2, 5, 10, 20, 50]).Select(n => n * step).LastOrDefault(l => l * scale <= 160, step);
        sketch.Line(x, y + 4, x + (bar * scale), y + 4, Lines.Visible);
        foreach (var end in (double[])[x, x + (bar * scale)])
            sketch.Line(end, y, end, y + 8, Lines.Thin);
        sketch.Text(x + (bar * scale) + 8, y + 8, Small, shown.Known(bar), Tones.Ink2);
    }

    /// <summary>Curvature over the length, told as the radius it means.</summary>
    private static void Plot(Sketch sketch, Box frame, RunRoute route, Lie lie, ShownFigures shown, double? leastRadius)
    {
        double length = lie.Case.Length, most = Math.Max(lie.Shape.Nodes.Max(n => n.Curvature.Size), leastRadius is { } r ? 1 / r : 0);
        // The worst lay is shown where it does not dwarf the rest.
        if (route.CountedSpread is { } lays && lays.LeastRadius > 0)
            most = Math.Max(most, Math.Min(1 / lays.LeastRadius, 1.6 * most));
        most *= 1.12;
        most = most > 0 ? most : 1;
        double X(double at) => frame.Left + (at / length * (frame.Right - frame.Left));
        double Y(double curvature) => frame.Bottom - (curvature / most * (frame.Bottom - frame.Top));
        sketch.Layer = "names";
        sketch.Text(Edge, frame.Top - 12, 15, "Bend along the conduit, as its radius", Tones.Ink, bold: true);
        sketch.Layer = "grid";
        sketch.Rectangle(frame, Lines.Hair);
        var step = shown.Inches ? 0.0254 : 0.01;
        var last = double.NegativeInfinity;
        foreach (var radius in ((double[])[1, 2, 3, 4, 5, 6, 8, 10, 15, 20, 30, 60]).Select(n => n * step).Reverse())
        {
            var y = Y(1 / radius);
            if (y < frame.Top || (last > double.NegativeInfinity && last - y < 17) || frame.Bottom - y < 17)
                continue;
            last = y;
            sketch.Line(frame.Left, y, frame.Right, y, Lines.Hair);
            sketch.Text(frame.Left - 8, y + 4.5, Small, shown.Known(radius), Tones.Ink2, anchor: TextAnchor.End);
        }

        sketch.Text(frame.Left - 8, frame.Bottom + 2, Small, "straight", Tones.Ink2, anchor: TextAnchor.End);
        sketch.Layer = "supports";
        for (var i = 0; i < lie.Case.Supports.Count; i++)
        {
            var x = X(lie.Shape.Nodes[lie.Shape.Holds[i + 1]].At);
            sketch.Line(x, frame.Top, x, frame.Bottom, Lines.Align);
            sketch.Text(x, frame.Bottom + 17, Small, $"{lie.Case.Supports.Count - i}", Tones.Blue, anchor: TextAnchor.Middle);
        }

        sketch.Layer = "curves";
        sketch.Polyline(CurveDrawing.Thinned([.. lie.Shape.Nodes.Select(n => new Point(X(n.At), Y(n.Curvature.Size)))]), Lines.Visible);
        if (leastRadius is { } least)
        {
            sketch.Layer = "limit";
            sketch.Line(frame.Left, Y(1 / least), frame.Right, Y(1 / least), Style.Line(Tones.Ink, 2.6));
            sketch.Layer = "labels";
            sketch.Text(frame.Right + 8, Y(1 / least) + 4.5, Small, $"least, {shown.Known(least)}", Tones.Ink2, halo: Tones.Paper);
        }

        sketch.Layer = "labels";
        sketch.Text(frame.Left, frame.Bottom + 34, Small, "cockpit end", Tones.Ink2);
        sketch.Text(frame.Right, frame.Bottom + 34, Small, $"anchor, {shown.Length(length)}", Tones.Ink2, anchor: TextAnchor.End);
        if (route.CountedSpread is { } spread && spread.LeastRadius < lie.LeastRadius && 1 / spread.LeastRadius <= most)
        {
            sketch.Layer = "worst-case";
            sketch.Line(frame.Right - 40, Y(1 / spread.LeastRadius), frame.Right, Y(1 / spread.LeastRadius), Style.Line(Tones.Ink2, 1.4, 3, 3));
            sketch.Layer = "labels";
            var y = Y(1 / spread.LeastRadius) + 4.5;
            if (leastRadius is not { } near || Math.Abs(y - 4.5 - Y(1 / near)) > 16)
                sketch.Text(frame.Right + 8, y, Small, $"worst, {shown.Left(spread.LeastRadius)}", Tones.Ink2, halo: Tones.Paper);
        }
    }
}
