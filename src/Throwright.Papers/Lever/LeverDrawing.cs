using Throwright.Engine.Model;
using Throwright.Engine.Throw;
using Throwright.Formats.Drawing;
using Throwright.Papers.Ladder;
using Throwright.Papers.Marks;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Lever;

/// <summary>How the lever end is drawn; px of 1/96 in.</summary>
public sealed record LeverOptions
{
    public double Width { get; init; } = 460;
    public double Height { get; init; } = 320;

    /// <summary>Conduit end tube beyond the anchor, toward the arm, m.</summary>
    public double TipLength { get; init; }

    /// <summary>Arm angle to show the arm at, rad; null: mid sweep.</summary>
    public double? ArmAngle { get; init; }
}

/// <summary>The lever end in its own plane, looking against the axis: angles grow anticlockwise, the arm stands up at mid sweep.</summary>
public static class LeverDrawing
{
    private const double Small = 13;
    private const double Caption = 40;
    private const double Margin = 34;
    private const double ArmHalf = 9;
    private const double ArmEnd = 7;

    public static Picture Page(Sweep sweep, LadderLabels labels, Display display, LeverOptions? options = null)
    {
        options ??= new();
        var shown = new ShownFigures(display);
        var sketch = new Sketch(Lines.Px);
        var figure = new Plane(sweep, options, options.Height - Caption);
        var (push, pull, shownAngle) = (sweep.PushAngle, sweep.PullAngle, options.ArmAngle is { } asked ? Math.Clamp(asked, sweep.Case.From, sweep.Case.To) : sweep.Case.Mid);
        Point pivot = figure.At(0, 0), anchor = figure.Anchor;
        var placer = new LabelPlacer(sketch, new(2, 2, options.Width - 2, figure.Height));
        var radius = figure.Scale * sweep.Case.Radius;

        // Lines that a label had better not cross.
        foreach (var angle in (double[])[push, pull, shownAngle])
        {
            placer.Avoid(pivot, figure.Swivel(angle));
            foreach (var (near, far) in figure.Wire(angle))
                placer.Avoid(near, far);
        }

        sketch.Layer = "path";
        var from = figure.Screen(sweep.Case.From);
        sketch.Arc(pivot.X, pivot.Y, radius, from, sweep.Case.To - sweep.Case.From, Lines.Centre);
        placer.Avoid([.. Enumerable.Range(0, 17).Select(i => figure.Swivel(sweep.Case.From + ((sweep.Case.To - sweep.Case.From) * i / 16)))]);
        sketch.Lines([new(new(pivot.X - 16, pivot.Y), new(pivot.X + 16, pivot.Y)), new(new(pivot.X, pivot.Y - 16), new(pivot.X, pivot.Y + 20))], Style.Line(Tones.Ink, 1.1, 9, 3, 3, 3));

        sketch.Layer = "stops";
        foreach (var angle in (double[])[push, pull])
            DrawStop(sketch, placer, figure, angle, Math.Sign(angle - sweep.Case.Mid), radius);

        sketch.Layer = "other-places";
        foreach (var angle in (double[])[push, pull])
        {
            DrawArm(sketch, pivot, figure.Swivel(angle), Lines.Phantom, null);
            foreach (var (near, far) in figure.Wire(angle, ArmEnd))
                sketch.Polyline([near, far], Lines.Phantom);
        }

        foreach (var dead in sweep.DeadCentresInside)
        {
            var end = figure.Swivel(dead, 1.16);
            sketch.Line(pivot.X, pivot.Y, end.X, end.Y, Style.Line(Tones.Ink, 1.6, 3, 3));
        }

        sketch.Layer = "conduit";
        DrawConduit(sketch, placer, figure);
        sketch.Layer = "wire";
        var swivel = figure.Swivel(shownAngle);
        foreach (var (near, far) in figure.Wire(shownAngle))
            sketch.Polyline([near, far], Style.Line(Tones.Ink, 3));
        sketch.Layer = "break";
        DrawBreak(sketch, placer, figure, [push, pull, shownAngle]);
        sketch.Layer = "arm";
        DrawArm(sketch, pivot, swivel, Lines.Visible, Tones.Paper);
        foreach (var (point, size) in ((Point, double)[])[(pivot, 4.2), (swivel, 4.2)])
            sketch.Circle(point.X, point.Y, size, Style.Outlined(Tones.Paper, Tones.Ink, 1.8));

        sketch.Layer = "swing";
        var swing = DrawSwing(sketch, placer, figure, sweep);

        // Blue is the builder's to change, ink is worked out.
        sketch.Layer = "labels";
        foreach (var angle in (double[])[push, pull])
            placer.Keep(Around(figure.Swivel(angle), 8));
        placer.Keep(Around(swivel, 9));
        placer.Keep(Around(pivot, 7));
        var left = new List<string>();
        Label(figure.Swivel(push), [new(Device(labels), Tones.Ink), new(TextMeasure.Fit(PlainText.Clean(labels.PushMeans), Small, 110, true), Tones.Ink, true)], 12);
        Label(figure.Swivel(pull), [new(Device(labels), Tones.Ink), new(TextMeasure.Fit(PlainText.Clean(labels.PullMeans), Small, 110, true), Tones.Ink, true)], 12);
        Label(anchor, [new("anchor", Tones.Ink)], 22);
        if (swing is { } arc)
            Label(arc, [new("swing ", Tones.Ink), new(FigureText.Plain(sweep.MostSwing * 180 / Math.PI, 1, Rounding.Up) + "°", Tones.Ink, true)], 8);
        Label(Between(pivot, swivel, 0.42), [new(shown.Known(sweep.Case.Radius), Tones.Blue, true)], 14);
        Label(pivot, [new($"turns {FigureText.Plain((sweep.Case.To - sweep.Case.From) * 180 / Math.PI, 1)}°", Tones.Blue, true)], 22);
        foreach (var dead in sweep.DeadCentresInside)
            Label(figure.Swivel(dead, 1.16), [new("dead centre", Tones.Ink, true)], 8);

        sketch.Layer = "notes";
        var y = figure.Height + 16;
        var notes = $"Seen against the lever's axis. {(figure.IsBroken ? "The wire is longer than drawn. " : "")}{OutOfPlane(sweep, shown)}{(left.Count > 0 ? "Also: " + string.Join("; ", left) + "." : "")}";
        foreach (var line in TextMeasure.Wrap(notes, Small, options.Width - 12))
        {
            sketch.Text(6, y, Small, line, Tones.Ink2, fractions: true);
            y += 17;
        }

        return sketch.ToPicture(
            options.Width, y - 8, $"Lever end{(labels.Run.Length > 0 ? ", " + labels.Run : "")}", Describe(sweep, labels, display), Tones.Paper);

        void Label(Point at, TextSpan[] text, double gap)
        {
            if (!placer.Place(at, Small, text, gap))
                left.Add(string.Concat(text.Select(t => t.Text)));
        }
    }

    /// <summary>The drawing in words.</summary>
    public static string Describe(Sweep sweep, LadderLabels labels, Display display)
    {
        var shown = new ShownFigures(display);
        return $"Arm {shown.Known(sweep.Case.Radius)} from pivot to hole, turning {Degrees(sweep.Case.To - sweep.Case.From)} between {labels.PushMeans} (push) and {labels.PullMeans} (pull). "
            + $"Wire travel {shown.Length(sweep.Throw)}. Largest swing of the wire at the conduit's end {Degrees(sweep.MostSwing)}. {OutOfPlane(sweep, shown)}".TrimEnd();

        static string Degrees(double angle) => FigureText.Plain(angle * 180 / Math.PI, 1) + "°";
    }

    private static string Device(LadderLabels labels) => TextMeasure.Fit(PlainText.Clean(labels.Device), Small, 110) + " ";

    private static string OutOfPlane(Sweep sweep, ShownFigures shown) =>
        Math.Abs(sweep.Case.Anchor.Z) < 5e-5 ? "" : $"The anchor lies {shown.Length(Math.Abs(sweep.Case.Anchor.Z))} {(sweep.Case.Anchor.Z > 0 ? "above" : "below")} this plane. ";

    /// <summary>Outline of an arm: two circles and their tangents.</summary>
    private static void DrawArm(Sketch sketch, Point pivot, Point swivel, Style line, Tone? fill)
    {
        double dx = swivel.X - pivot.X, dy = swivel.Y - pivot.Y, length = Math.Sqrt((dx * dx) + (dy * dy));
        var turn = Math.Atan2(-dy, dx);
        var lean = Math.Acos(Math.Clamp((ArmHalf - ArmEnd) / length, -1, 1));
        var points = new List<Point>();
        Round(pivot, ArmHalf, turn + lean, turn + (2 * Math.PI) - lean);
        Round(swivel, ArmEnd, turn - lean, turn + lean);
        sketch.Polygon(points, fill is null ? line : line with { Fill = fill });

        void Round(Point centre, double radius, double first, double last)
        {
            const int pieces = 10;
            for (var i = 0; i <= pieces; i++)
            {
                var angle = first + ((last - first) * i / pieces);
                points.Add(new(centre.X + (radius * Elementary.Cos(angle)), centre.Y - (radius * Elementary.Sin(angle))));
            }
        }
    }

    /// <summary>A heavy bar outside the arm, with ground strokes behind it.</summary>
    private static void DrawStop(Sketch sketch, LabelPlacer placer, Plane figure, double angle, int outward, double radius)
    {
        var reach = Math.Min(0.62, (radius - 20) / radius);
        double turn = figure.Screen(angle), cos = Elementary.Cos(turn), sin = Elementary.Sin(turn);
        var pivot = figure.At(0, 0);
        Point At(double along, double off) => new(pivot.X + (along * cos) - (off * outward * sin), pivot.Y - (along * sin) - (off * outward * cos));
        double near = (reach * radius) - 15, far = (reach * radius) + 15, off = ArmHalf + 2;
        var bar = (A: At(near, off), B: At(far, off));
        sketch.Lines([new(bar.A, bar.B)], Lines.Stop);
        var ground = new List<Segment>();
        for (var s = near + 1; s <= far; s += 5.5)
            ground.Add(new(At(s, off + 2), At(s - 5, off + 9)));
        sketch.Lines(ground, Lines.HatchFixed);
        placer.Keep(Box.Around([bar.A, bar.B, At(near, off + 8), At(far, off + 8)]));
    }

    /// <summary>End tube, anchor block and the conduit that goes on behind it.</summary>
    private static void DrawConduit(Sketch sketch, LabelPlacer placer, Plane figure)
    {
        var (a, tip) = (figure.Anchor, figure.Tip);
        double ex = figure.Exit.X, ey = figure.Exit.Y;
        Point At(double along, double off) => new(a.X + (along * ex) - (off * ey), a.Y + (along * ey) + (off * ex));
        var tube = ((tip.X - a.X) * ex) + ((tip.Y - a.Y) * ey);
        sketch.Polygon([At(-34, -6), At(-10, -6), At(-10, 6), At(-34, 6)], Style.Outlined(Tones.Paper, Tones.Ink, 1.6));
        sketch.Polyline([At(-34, -9), At(-31, -3), At(-37, 3), At(-34, 9)], Style.Line(Tones.Paper, 4));
        sketch.Polyline([At(-34, -9), At(-31, -3), At(-37, 3), At(-34, 9)], Lines.Thin);
        if (tube > 3)
            sketch.Polygon([At(0, -5), At(tube, -5), At(tube, 5), At(0, 5)], Style.Outlined(Tones.Paper, Tones.Ink, 1.6));
        Point[] block = [At(-16, -13), At(2, -13), At(2, 13), At(-16, 13)];
        sketch.Polygon(block, Style.Area(Tones.Paper));
        sketch.Hatch(block, 45, 5.5, Lines.HatchFixed);
        sketch.Polygon(block, Lines.Visible);
        placer.Keep(Box.Around([.. block, At(-36, -8), At(-36, 8), At(tube, -5), At(tube, 5)]));
    }

    /// <summary>Where a length of the wire is left out: a wave on either side of it.</summary>
    private static void DrawBreak(Sketch sketch, LabelPlacer placer, Plane figure, double[] angles)
    {
        if (!figure.IsBroken)
            return;
        var along = figure.Along;
        foreach (var ends in (Point[][])[[.. angles.Select(a => figure.Wire(a)[0].Far)], [.. angles.Select(a => figure.Wire(a)[1].Near)]])
        {
            double Across(Point p) => (p.Y * along.X) - (p.X * along.Y);
            double low = ends.Min(Across) - 9, high = ends.Max(Across) + 9, on = (ends[0].X * along.X) + (ends[0].Y * along.Y), third = (high - low) / 3;
            Point At(double forward, double across) => new(((on + forward) * along.X) - (across * along.Y), ((on + forward) * along.Y) + (across * along.X));
            Point[] wave = [At(0, low), At(3, low + third), At(-3, high - third), At(0, high)];
            sketch.Polyline(wave, Lines.Thin);
            placer.Avoid(wave);
        }
    }

    /// <summary>The angle that the wire sweeps at the conduit's end.</summary>
    /// <returns>A point on its arc; null: too small to draw.</returns>
    private static Point? DrawSwing(Sketch sketch, LabelPlacer placer, Plane figure, Sweep sweep)
    {
        var tip = figure.Tip;
        var turns = sweep.Places.Select(p => figure.Swivel(p.Angle)).Select(s => Math.Atan2(figure.TrueTip.Y - s.Y, s.X - figure.TrueTip.X)).ToArray();
        if (turns.Length == 0)
            return null;
        var middle = turns[turns.Length / 2];
        double Near(double t) => t - (2 * Math.PI * Math.Round((t - middle) / (2 * Math.PI)));
        double low = turns.Min(Near), high = turns.Max(Near);
        var nearest = sweep.Places.Select(p => figure.Swivel(p.Angle)).Min(s => Math.Sqrt(((s.X - tip.X) * (s.X - tip.X)) + ((s.Y - tip.Y) * (s.Y - tip.Y))));
        var radius = (figure.IsBroken ? 0.4 : 0.55) * nearest;
        if ((high - low) * radius < 1.5)
            return null;
        sketch.Arc(tip.X, tip.Y, radius, low, high - low, Lines.Thin);
        Point At(double t) => new(tip.X + (radius * Elementary.Cos(t)), tip.Y - (radius * Elementary.Sin(t)));
        foreach (var (end, sign) in ((double, int)[])[(low, 1), (high, -1)])
        {
            // Arrowhead 3 : 1 along the arc.
            var (p, back) = (At(end), At(end + (sign * Math.Min(9 / radius, 0.45 * (high - low)))));
            double dx = back.X - p.X, dy = back.Y - p.Y;
            sketch.Polygon([p, new(back.X - (dy / 6), back.Y + (dx / 6)), new(back.X + (dy / 6), back.Y - (dx / 6))], Style.Area(Tones.Ink));
        }

        placer.Avoid(At(low), At(high));
        return At(low + (0.5 * (high - low)));
    }

    private static Box Around(Point p, double by) => new(p.X - by, p.Y - by, p.X + by, p.Y + by);

    private static Point Between(Point a, Point b, double share) => new(a.X + ((b.X - a.X) * share), a.Y + ((b.Y - a.Y) * share));

    /// <summary>
    /// From arm axes (m, y up) to the paper (px, y down): turned so that mid sweep points up, at one scale. Of a wire much longer than the arm
    /// a length is left out, so that the arm is drawn large enough to be read; every line keeps its own direction.
    /// </summary>
    private sealed class Plane
    {
        private readonly Sweep sweep;
        private readonly double turn;
        private readonly double x0;
        private readonly double y0;
        private readonly double gap;

        public Plane(Sweep sweep, LeverOptions options, double height)
        {
            this.sweep = sweep;
            turn = (Math.PI / 2) - sweep.Case.Mid;
            var a = sweep.Case.Anchor;
            var exit = sweep.Case.Exit is { } given ? new Vector3(given.X, given.Y, 0) : sweep.Case.SwivelAt(sweep.Case.Mid) - new Vector3(a.X, a.Y, 0);
            exit = exit.Size > 1e-9 ? exit.Unit() : new(0, 1, 0);
            double ex = (exit.X * Elementary.Cos(turn)) - (exit.Y * Elementary.Sin(turn)), ey = (exit.X * Elementary.Sin(turn)) + (exit.Y * Elementary.Cos(turn));
            Exit = new(ex, -ey);

            Vector3 end = new(a.X + (options.TipLength * exit.X), a.Y + (options.TipLength * exit.Y), 0), mid = sweep.Case.SwivelAt(sweep.Case.Mid);
            var wire = end - new Vector3(mid.X, mid.Y, 0);
            var (full, radius) = (wire.Size, sweep.Case.Radius);
            var shift = new Vector3(0, 0, 0);
            double ahead = 0;
            if (full > 1e-9)
            {
                // How far any place of the swivel comes toward the tip, seen from mid sweep.
                ahead = Enumerable.Range(0, 25).Max(i => Vector3.Dot(sweep.Case.SwivelAt(sweep.Case.From + ((sweep.Case.To - sweep.Case.From) * i / 24)) - mid, wire.Unit()));
                IsBroken = full > ahead + (2.5 * radius);
                if (IsBroken)
                    shift = (ahead + (1.5 * radius) - full) * wire.Unit();
            }

            // Scale 1 about the pivot first; then what that takes decides.
            (Scale, x0, y0) = (1, 0, 0);
            var points = new List<Point> { At(0, 0), At(a.X + shift.X, a.Y + shift.Y), At(end.X + shift.X, end.Y + shift.Y) };
            for (var i = 0; i <= 24; i++)
                points.Add(Swivel(sweep.Case.From + ((sweep.Case.To - sweep.Case.From) * i / 24)));
            var box = Box.Around(points);

            // Room for labels all round, and for the conduit behind the anchor on its side.
            const double stub = 44;
            double left = Math.Max(Margin + 40, (stub * Exit.X) + 10), right = Math.Max(Margin + 40, (-stub * Exit.X) + 10);
            double above = Math.Max(Margin + 16, (stub * Exit.Y) + 10), below = Math.Max(Margin + 4, (-stub * Exit.Y) + 10);
            Scale = Math.Min((options.Width - left - right) / Math.Max(box.Width, 1e-6), (height - above - below) / Math.Max(box.Height, 1e-6));
            Height = Math.Min(height, (Scale * box.Height) + above + below);
            (x0, y0) = ((0.5 * (left + options.Width - right)) - (Scale * box.Middle.X), (0.5 * (above + Height - below)) - (Scale * box.Middle.Y));
            Anchor = At(a.X + shift.X, a.Y + shift.Y);
            Tip = At(end.X + shift.X, end.Y + shift.Y);
            TrueTip = At(end.X, end.Y);
            if (IsBroken)
            {
                var (from, to) = (At(mid.X, mid.Y), Tip);
                var length = Math.Sqrt(((to.X - from.X) * (to.X - from.X)) + ((to.Y - from.Y) * (to.Y - from.Y)));
                Along = new((to.X - from.X) / length, (to.Y - from.Y) / length);
                gap = (from.X * Along.X) + (from.Y * Along.Y) + (Scale * (ahead + (0.75 * radius)));
            }
        }

        /// <summary>Is a length of the wire left out?</summary>
        public bool IsBroken { get; }

        /// <summary>Where the tip would lie if nothing were left out.</summary>
        public Point TrueTip { get; }

        /// <summary>From the swivel at mid sweep toward the tip.</summary>
        public Point Along { get; }

        /// <summary>The wire at an arm angle, from the swivel to the tip; in two pieces where a length is left out.</summary>
        public (Point Near, Point Far)[] Wire(double angle, double clear = 0)
        {
            const double half = 3;
            var at = Swivel(angle);
            double dx = TrueTip.X - at.X, dy = TrueTip.Y - at.Y, length = Math.Sqrt((dx * dx) + (dy * dy));
            if (length <= Math.Max(clear, 1e-9))
                return [(at, Tip)];
            (dx, dy) = (dx / length, dy / length);
            Point begin = new(at.X + (clear * dx), at.Y + (clear * dy));
            if (!IsBroken)
                return [(begin, Tip)];
            var forward = (dx * Along.X) + (dy * Along.Y);
            double to = (gap - half - (at.X * Along.X) - (at.Y * Along.Y)) / forward, from = ((Tip.X * Along.X) + (Tip.Y * Along.Y) - gap - half) / forward;
            return [(begin, new(at.X + (to * dx), at.Y + (to * dy))), (new(Tip.X - (from * dx), Tip.Y - (from * dy)), Tip)];
        }

        /// <summary>Room taken, px.</summary>
        public double Height { get; }

        /// <summary>px per metre.</summary>
        public double Scale { get; }

        public Point Anchor { get; }

        public Point Tip { get; }

        /// <summary>Direction of the conduit's end on the paper.</summary>
        public Point Exit { get; }

        public double Screen(double angle) => angle + turn;

        public Point Swivel(double angle, double share = 1)
        {
            var at = sweep.Case.SwivelAt(angle);
            return At(share * at.X, share * at.Y);
        }

        public Point At(double x, double y)
        {
            double cos = Elementary.Cos(turn), sin = Elementary.Sin(turn);
            return new(x0 + (Scale * ((x * cos) - (y * sin))), y0 - (Scale * ((x * sin) + (y * cos))));
        }
    }
}
