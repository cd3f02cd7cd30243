using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Mount;
using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;
using Throwright.Shapes.Quantities;
using Box = Throwright.Formats.Drawing.Box;

namespace Throwright.Papers.Clearance;

/// <summary>The clearance map of one handle: which tilts keep the distance, which fail, which are not proved either way.</summary>
/// <remarks>Axes are slopes, so that equal total tilts are circles about "square". Hatch, dots and a heavy line say it all without colour.</remarks>
public static class ClearanceMapDrawing
{
    private const double Side = 440, Left = 96, Top = 78, Right = 30, Small = 13, Row = 22;
    private const double Degree = Math.PI / 180;

    private static readonly Style Fails = Style.Line(Tones.Edge, 1), Heavy = Style.Line(Tones.Ink, 3), Thin = Style.Line(Tones.Ink, 1.2);
    private static readonly Style Ring = Style.Outlined(Tones.Paper, Tones.Blue, 2.4), Phantom = Style.Line(Tones.Blue, 1.2, 12, 3, 3, 3, 3, 3);

    public static Picture Page(MountMap map, string run, Display display)
    {
        ArgumentNullException.ThrowIfNull(map);
        var say = new FigureWriter(display);
        var sketch = new Sketch(25.4 / 96);
        var page = new Plan(map);
        const double width = Left + Side + Right;
        sketch.Layer = "head";
        sketch.Text(16, 28, 20, TextMeasure.Fit(PlainText.Clean($"{run}: how far to tilt the mount"), 20, width - 32, bold: true), Tones.Ink, bold: true);
        sketch.Text(16, 52, Small + 1, $"Inside the heavy line every tilt keeps {say.Length(map.Wanted)} from everything: proved.", Tones.Ink, fractions: true);

        sketch.Layer = "cells";
        Cells(sketch, page, map);
        sketch.Layer = "axes";
        Axes(sketch, page, map);
        sketch.Layer = "marks";
        Marks(sketch, page, map, say);

        var y = Top + Side + 72;
        sketch.Layer = "legend";
        Swatch(y, b => sketch.Rectangle(b, Style.Outlined(Tones.ClearWash, Tones.Ink, 3)), $"keeps {say.Length(map.Wanted)} at every tilt of the cell: proved");
        Swatch(y += Row, b => Outlined(b, () => sketch.Hatch([.. b.Corners], 45, 6, Fails)), $"no tilt of the cell keeps {say.Length(map.Wanted)}: proved");
        Swatch(y += Row, b => Outlined(b, () => sketch.Dots(b, 6, 1.8, Tones.Ink)), "can't tell of the whole cell: the limit runs through it");
        if (map.NoneBelow is { } none)
        {
            Swatch(y += Row, b => sketch.Arc(0.5 * (b.Left + b.Right), b.Bottom + 8, 20, 0.25 * Math.PI, 0.5 * Math.PI, Phantom), $"no mount inside the circle, {say.Angle(none, Rounding.Down)} from square, keeps it with its play: proved");
        }

        if (map.Chosen is { } chosen)
            Swatch(y += Row, b => sketch.Circle(0.5 * (b.Left + b.Right), 0.5 * (b.Top + b.Bottom), 6, Ring), chosen == Tilt.None ? "square to the sheet: no tilt is needed" : $"chosen: {say.Angle(chosen.Total, Rounding.Up)}, {Words(chosen, say)}");
        if (map.Facing is { } facing)
            Swatch(y += Row, b => Eye(sketch, 0.5 * (b.Left + b.Right), 0.5 * (b.Top + b.Bottom)), $"faces your eye at {say.Angle(facing.Total)}, {Words(facing, say)}{(page.Holds(facing) ? "" : ": off the map")}");
        sketch.Layer = "notes";
        y += 14;
        foreach (var line in TextMeasure.Wrap(Note(map), Small, width - 32))
            sketch.Text(16, y += 18, Small, line, Tones.Ink2);
        return sketch.ToPicture(width, y + 14, $"Clearance map of {run}", Describe(map, run, say), Tones.Paper);

        void Outlined(Box box, Action fill)
        {
            sketch.Rectangle(box, Style.Outlined(Tones.Paper, Tones.Edge, 1));
            fill();
        }

        void Swatch(double at, Action<Box> draw, string words)
        {
            draw(new(20, at - 13, 46, at + 3));
            sketch.Text(58, at, Small, TextMeasure.Fit(words, Small, width - 74), Tones.Ink, fractions: true);
        }
    }

    /// <summary>The map in words.</summary>
    public static string Describe(MountMap map, string run, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentNullException.ThrowIfNull(say);
        var words = $"Clearance map of {run}, tilts up to {say.Angle(map.Most)} each way, {say.Length(map.Wanted)} wanted: {map.Count(TiltCellAnswer.Keeps)} of {map.Cells.Cells.Count} cells keep it, {map.Count(TiltCellAnswer.Fails)} fail, {map.Count(TiltCellAnswer.Open)} are not proved either way.";
        if (map.Chosen is { } chosen)
            words += chosen == Tilt.None ? " Square to the sheet keeps it." : $" Chosen {say.Angle(chosen.Total, Rounding.Up)}, {Words(chosen, say)}.";
        if (map.NoneBelow is { } none)
            words += $" No tilt below {say.Angle(none, Rounding.Down)} keeps it.";
        return words;
    }

    private static string Note(MountMap map) =>
        (map.IsWhole ? "" : "Stopped before all cells were looked at: those are left open. ")
        + "Seen from the seat, facing the sheet. Each cell over every position of handle and bodies, wedges counted. Rigid bodies as entered: flexing, hands and conduits whose way the file does not say are not in it. Not an approval.";

    private static string Words(Tilt tilt, FigureWriter say)
    {
        var parts = new List<string>();
        if (Math.Abs(Math.Atan(tilt.Up)) >= 0.05 * Degree)
            parts.Add($"{say.Angle(Math.Abs(Math.Atan(tilt.Up)))} {(tilt.Up > 0 ? "up" : "down")}");
        if (Math.Abs(Math.Atan(tilt.Right)) >= 0.05 * Degree)
            parts.Add($"{say.Angle(Math.Abs(Math.Atan(tilt.Right)))} {(tilt.Right > 0 ? "right" : "left")}");
        return parts.Count == 0 ? "square" : string.Join(" and ", parts);
    }

    private static void Cells(Sketch sketch, Plan page, MountMap map)
    {
        var cells = map.Cells;
        TiltCellAnswer? At(int row, int column) => row >= 0 && row < cells.Rows && column >= 0 && column < cells.Columns ? cells.At(row, column).Answer : null;
        sketch.Rectangle(page.Window, Style.Outlined(Tones.Paper, Tones.Ink, 1.6));
        for (var row = 0; row < cells.Rows; row++)
        {
            // Alike neighbours of a row as one box: fewer shapes, and a hatch without seams.
            for (var from = 0; from < cells.Columns;)
            {
                var to = from;
                while (to + 1 < cells.Columns && At(row, to + 1) == At(row, from))
                    to++;
                var box = page.Box(cells.At(row, from).Range, cells.At(row, to).Range);
                if (At(row, from) == TiltCellAnswer.Keeps)
                    sketch.Rectangle(box, Style.Area(Tones.ClearWash));
                else if (At(row, from) == TiltCellAnswer.Fails)
                    sketch.Hatch([.. box.Corners], 45, 6, Fails);
                else
                    sketch.Dots(box, 6, 1.8, Tones.Ink);
                from = to + 1;
            }
        }

        var edges = new List<Segment>();
        for (var row = 0; row < cells.Rows; row++)
        {
            for (var column = 0; column < cells.Columns; column++)
            {
                var box = page.Box(cells.At(row, column).Range, cells.At(row, column).Range);
                var keeps = At(row, column) == TiltCellAnswer.Keeps;
                if (At(row, column + 1) is { } beside && (beside == TiltCellAnswer.Keeps) != keeps)
                    edges.Add(new(new(box.Right, box.Top), new(box.Right, box.Bottom)));
                if (At(row + 1, column) is { } above && (above == TiltCellAnswer.Keeps) != keeps)
                    edges.Add(new(new(box.Left, box.Top), new(box.Right, box.Top)));
            }
        }

        sketch.Lines(edges, Heavy);
        sketch.Rectangle(page.Window, Style.Line(Tones.Ink, 1.6));
    }

    private static void Axes(Sketch sketch, Plan page, MountMap map)
    {
        var window = page.Window;
        var step = map.Most > 15 * Degree ? 5 : 2;
        for (var degrees = -60; degrees <= 60; degrees += step)
        {
            var slope = Math.Tan(degrees * Degree);
            if (!page.Holds(new(slope, 0)))
                continue;
            var at = page.On(new(slope, slope));
            sketch.Line(window.Left - 7, at.Y, window.Left, at.Y, Thin);
            sketch.Line(at.X, window.Bottom, at.X, window.Bottom + 7, Thin);
            var words = $"{FigureText.Plain(Math.Abs(degrees), 0)}°";
            sketch.Text(window.Left - 11, at.Y + 4.5, Small, words, Tones.Ink, anchor: TextAnchor.End);
            sketch.Text(at.X, window.Bottom + 21, Small, words, Tones.Ink, anchor: TextAnchor.Middle);
        }

        sketch.Text(16, window.Top + (0.2 * Side), Small, "tilted up", Tones.Ink2);
        sketch.Text(16, window.Top + (0.82 * Side), Small, "down", Tones.Ink2);
        sketch.Text(window.Left + (0.2 * Side), window.Bottom + 40, Small, "tilted left", Tones.Ink2, anchor: TextAnchor.Middle);
        sketch.Text(window.Left + (0.8 * Side), window.Bottom + 40, Small, "tilted right", Tones.Ink2, anchor: TextAnchor.Middle);
    }

    private static void Marks(Sketch sketch, Plan page, MountMap map, FigureWriter say)
    {
        var square = page.On(Tilt.None);
        if (map.NoneBelow is { } none and > 0)
        {
            // On its halo: the phantom line crosses hatch and dots.
            var radius = page.Scale * Math.Tan(none);
            sketch.Circle(square.X, square.Y, radius, Style.Line(Tones.Paper, 4));
            sketch.Circle(square.X, square.Y, radius, Phantom);
        }

        foreach (var (tone, size) in ((Tone, double)[])[(Tones.Paper, 6), (Tones.Ink, 2)])
            sketch.Lines([new(new(square.X - 10, square.Y), new(square.X + 10, square.Y)), new(new(square.X, square.Y - 10), new(square.X, square.Y + 10))], Style.Line(tone, size));
        var chosen = map.Chosen is { } tilt && tilt != Tilt.None ? page.On(tilt) : (Point?)null;
        // Its words on the side away from what is chosen.
        var side = chosen is { } right && right.X > square.X ? -1 : 1;
        sketch.Text(square.X + (side * 14), square.Y - 8, Small, "square", Tones.Ink, halo: Tones.Paper, anchor: side > 0 ? TextAnchor.Start : TextAnchor.End);
        if (map.Facing is { } facing && facing.Slope > 0)
            Toward(sketch, page, facing, square);
        if (map.Now != Tilt.None && page.Holds(map.Now) && map.Now != map.Chosen)
        {
            var now = page.On(map.Now);
            sketch.Rectangle(new(now.X - 5, now.Y - 5, now.X + 5, now.Y + 5), Style.Outlined(Tones.Paper, Tones.Ink, 2));
            sketch.Text(now.X, now.Y + 22, Small, "as it is", Tones.Ink, halo: Tones.Paper, anchor: TextAnchor.Middle);
        }

        if (chosen is not { } at)
            return;
        sketch.Line(square.X, square.Y, at.X, at.Y, Style.Line(Tones.Paper, 5));
        sketch.Line(square.X, square.Y, at.X, at.Y, Style.Line(Tones.Blue, 2));
        sketch.Circle(at.X, at.Y, 7, Ring);
        var words = say.Angle(map.Chosen!.Value.Total, Rounding.Up);
        var toRight = at.X < page.Window.Right - 70;
        sketch.Text(at.X + (toRight ? 13 : -13), at.Y + 6, 17, words, Tones.Blue, bold: true, anchor: toRight ? TextAnchor.Start : TextAnchor.End, halo: Tones.Paper);
    }

    /// <summary>The eye where the shank points at it, or an arrow on the map's edge toward it.</summary>
    private static void Toward(Sketch sketch, Plan page, Tilt facing, Point square)
    {
        var at = page.On(facing);
        if (page.Holds(facing))
        {
            Eye(sketch, at.X, at.Y);
            return;
        }

        double dx = at.X - square.X, dy = at.Y - square.Y, half = (0.5 * Side) - 16;
        var share = half / Math.Max(Math.Abs(dx), Math.Abs(dy));
        double x = square.X + (share * dx), y = square.Y + (share * dy), long_ = Math.Sqrt((dx * dx) + (dy * dy));
        double ux = dx / long_, uy = dy / long_;
        sketch.Line(x - (30 * ux), y - (30 * uy), x, y, Style.Line(Tones.Paper, 6));
        sketch.Line(x - (30 * ux), y - (30 * uy), x, y, Style.Line(Tones.Ink, 2));
        sketch.Polygon([new(x + (10 * ux), y + (10 * uy)), new(x - (5 * uy), y + (5 * ux)), new(x + (5 * uy), y - (5 * ux))], Style.Area(Tones.Ink));
        Eye(sketch, x - (44 * ux), y - (44 * uy));
    }

    private static void Eye(Sketch sketch, double x, double y)
    {
        IEnumerable<Point> Lid(int side) => Enumerable.Range(0, 13).Select(i => new Point(x + (12 * ((i / 6.0) - 1)), y + (side * 6 * (1 - Math.Pow((i / 6.0) - 1, 2)))));
        sketch.Polygon([.. Lid(-1), .. Lid(1).Reverse()], Style.Outlined(Tones.Paper, Tones.Ink, 1.6));
        sketch.Circle(x, y, 3.2, Style.Area(Tones.Ink));
    }

    /// <summary>Slopes to the page: up is up, right is right.</summary>
    private sealed class Plan(MountMap map)
    {
        private readonly double most = Math.Tan(map.Most);

        public double Scale => 0.5 * Side / most;

        public Box Window => new(Left, Top, Left + Side, Top + Side);

        public Point On(Tilt tilt) => new(Left + (0.5 * Side) + (Scale * tilt.Right), Top + (0.5 * Side) - (Scale * tilt.Up));

        public bool Holds(Tilt tilt) => Math.Max(Math.Abs(tilt.Up), Math.Abs(tilt.Right)) <= most + 1e-9;

        public Box Box(TiltRange first, TiltRange last)
        {
            Point a = On(new(first.UpTo, first.RightFrom)), b = On(new(first.UpFrom, last.RightTo));
            return new(a.X, a.Y, b.X, b.Y);
        }
    }
}
