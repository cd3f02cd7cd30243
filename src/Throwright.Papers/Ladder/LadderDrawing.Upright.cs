using Throwright.Engine.Findings;
using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Ladder;

/// <summary>How the upright ladder is drawn; px of 1/96 in.</summary>
public sealed record UprightOptions
{
    public double Width { get; init; } = 390;

    /// <summary>Height of the strip itself, without what stands above and below it.</summary>
    public double StripHeight { get; init; } = 440;
}

public static partial class LadderDrawing
{
    /// <summary>The upright ladder, for a phone held as one stands: sheet at the top, pull goes down, toward the body.</summary>
    public static ScaledPicture Upright(LadderLayout layout, UprightOptions? options = null)
    {
        options ??= new();
        var sketch = new Sketch(Lines.Px);
        var frame = new UprightFrame(layout, options, sketch);
        var height = frame.Draw();
        return new(
            sketch.ToPicture(frame.Width, height, $"Travel ladder, upright{(layout.Labels.Run.Length > 0 ? ", " + layout.Labels.Run : "")}", Describe(layout), Tones.Paper),
            frame.Zero * Lines.Px,
            frame.Scale * Lines.Px);
    }

    private sealed class UprightFrame
    {
        private const double RuleLine = 66;
        private const double TipLeft = 75;
        private const double TipRight = 95;
        private const double PullLeft = 110;
        private const double Gap = 10;
        private const double LineHeight = 17;

        private readonly LadderLayout layout;
        private readonly Sketch sketch;
        private readonly ShownFigures shown;
        private readonly LadderBody? body;
        private readonly double stroke;
        private readonly Strip strip;

        public UprightFrame(LadderLayout layout, UprightOptions options, Sketch sketch)
        {
            (this.layout, this.sketch) = (layout, sketch);
            shown = new(layout.Display);
            body = layout.Body;
            stroke = layout.Stroke ?? 0.0762;
            Width = Math.Max(options.Width, 320);
            // On a small phone the lanes give way, not the letters.
            LaneWidth = Width < 380 ? 48 : 58;
            double low = 0, high = stroke;
            if (body is not null)
            {
                low = Math.Min(0, Math.Min(body.PushStop.Low, Math.Min(body.PullStop.Low, body.Tip.From)));
                high = Math.Max(stroke, Math.Max(body.PullStop.High, body.PushStop.High));
            }

            Scale = Math.Min(Math.Max(options.StripHeight, 200) / (high - low), 10 * Lines.TrueSize);
            Zero = 12 + SheetThickness + Math.Max(0, (-low * Scale) + 14);
            strip = new(sketch, Zero, Scale, upright: true);
        }

        public double Width { get; private set; }

        public double Zero { get; }

        public double Scale { get; }

        private double LaneWidth { get; }

        private double PushLeft => PullLeft + LaneWidth + Gap;

        private double PushRight => PushLeft + LaneWidth;

        private double BandAcross => PushRight + 18;

        public double Draw()
        {
            sketch.Layer = "rule";
            var graduation = shown.Inches ? Graduation.Inch(Scale, 30) : Graduation.Millimetre(Scale, 30);
            var last = strip.Rule(RuleLine, -1, stroke, graduation, Small);
            sketch.Text(RuleLine - graduation.LongTick - 5, last + 24, Small, shown.LengthUnitName, Tones.Ink2, anchor: TextAnchor.End);
            return body is null ? DrawPlace() : DrawBody(body);
        }

        private double DrawBody(LadderBody b)
        {
            sketch.Layer = "stops";
            strip.Sheet(SheetThickness, PullLeft - 8, PushRight + (b.KnobIn.CanBeOver ? 30 : 8));
            strip.OutStop(stroke, PullLeft - 8, PushRight + (b.KnobOut.CanBeOver ? 30 : 8));
            sketch.Layer = "pull";
            var pull = strip.Lane(b.Pull, PullLeft, PullLeft + LaneWidth, 0, stroke, b.KnobIn, b.KnobOut);
            sketch.Layer = "push";
            var push = strip.Lane(b.Push, PushLeft, PushRight, 0, stroke, b.KnobIn, b.KnobOut);
            sketch.Layer = "stops";
            foreach (var (lane, left) in ((LadderLane, double)[])[(b.Pull, PullLeft), (b.Push, PushLeft)])
            {
                if (b.KnobOut.IsOver)
                    strip.RunThrough(lane, stroke, b.PullStop.Nominal, left, left + LaneWidth);
                if (b.KnobIn.IsOver)
                    strip.RunThrough(lane, 0, b.PushStop.Nominal, left, left + LaneWidth);
            }

            if (b.KnobOut.IsOver)
                strip.StopOver(strip.At(stroke), PullLeft, PushRight);
            else
                strip.Line(strip.At(stroke), PullLeft - 8, strip.At(stroke), PushRight + 8, Lines.Stop);
            if (b.KnobIn.IsOver)
                strip.StopOver(Zero, PullLeft, PushRight);

            DrawSlip(pull, push);
            var tipBottom = DrawTip(b);

            sketch.Layer = "bands";
            var outAcross = BandAcross + (strip.Reach(b.PullStop).Low < strip.Reach(b.PushStop).High + 4 ? 20 : 0);
            if (b.KnobIn.CanBeOver)
                strip.Overrun(0, b.PushStop.Low, BandAcross, 14);
            if (b.KnobOut.CanBeOver)
                strip.Overrun(stroke, b.PullStop.High, outAcross, 14);
            strip.Band(b.PushStop, BandAcross);
            strip.Band(b.PullStop, outAcross);

            sketch.Layer = "labels";
            InThrow(pull, PullLeft, "pull ↓");
            InThrow(push, PushLeft, "push ↑");
            var labelsBottom = DrawLabels(b, push, outAcross);
            var bottom = Math.Max(Math.Max(tipBottom, labelsBottom), strip.At(Math.Max(stroke, b.PullStop.High)) + 18);
            return DrawNotes(b, bottom + 22);
        }

        private void InThrow(IReadOnlyList<(LanePart Part, double From, double To)> lane, double left, string name)
        {
            var (_, a, z) = lane.First(s => s.Part == LanePart.Throw);
            double from = Math.Max(a, Zero), to = Math.Min(z, strip.At(stroke)), middle = 0.5 * (from + to), x = left + (0.5 * LaneWidth);
            var figure = TextMeasure.Width(shown.Length(body!.Throw), Small) <= LaneWidth - 4 ? shown.Length(body.Throw) : shown.Bare(body.Throw);
            if (to - from >= 46)
            {
                sketch.Text(x, middle - 4, Small, name, Tones.OnThrow, bold: true, anchor: TextAnchor.Middle);
                sketch.Text(x, middle + 14, Small, figure, Tones.OnThrow, anchor: TextAnchor.Middle);
            }
            else if (to - from >= 20)
            {
                sketch.Text(x, middle + 4.5, Small, name, Tones.OnThrow, bold: true, anchor: TextAnchor.Middle);
            }
        }

        private void DrawSlip(IReadOnlyList<(LanePart Part, double From, double To)> pull, IReadOnlyList<(LanePart Part, double From, double To)> push)
        {
            var (_, pullFrom, pullTo) = pull.First(s => s.Part == LanePart.Throw);
            var (_, pushFrom, pushTo) = push.First(s => s.Part == LanePart.Throw);
            if (pullFrom - pushFrom <= 0.5)
                return;
            sketch.Layer = "slip";
            var dashes = Style.Line(Tones.Ink, 1.1, 3, 3);
            strip.Line(pullFrom, PullLeft + LaneWidth + 1, pushFrom, PushLeft - 1, dashes);
            strip.Line(pullTo, PullLeft + LaneWidth + 1, pushTo, PushLeft - 1, dashes);
        }

        private double DrawTip(LadderBody b)
        {
            sketch.Layer = "tip";
            double from = strip.At(b.Tip.From), to = strip.At(b.PullStop.Nominal), stop = strip.At(b.TipStop.Nominal), middle = 0.5 * (TipLeft + TipRight);
            var c = b.TipCushion;
            var lastEnd = Math.Max(to, strip.At(stroke)) + 46;
            var broken = stop > lastEnd;
            var end = broken ? lastEnd : stop;
            sketch.Rectangle(new(TipLeft, from, TipRight, to), Style.Outlined(Tones.Throw, Tones.Ink, 1.6));
            if (end > to)
            {
                sketch.Rectangle(new(TipLeft, to, TipRight, end), Style.Area(Tones.Paper));
                if (c.Least > 0)
                    sketch.Rectangle(new(TipLeft, to, TipRight, Math.Min(end, strip.At(b.PullStop.Nominal + Math.Min(c.Least.Value, c.Nominal)))), Style.Area(Tones.ClearWash));
                sketch.Lines([new(new(TipLeft, to), new(TipLeft, end)), new(new(TipRight, to), new(TipRight, end))], Style.Line(Tones.Ink, 1.6));
            }

            if (c.IsOver)
            {
                strip.RunThrough(b.Tip, b.TipStop.Nominal, b.PullStop.Nominal, TipLeft, TipRight);
                strip.StopOver(stop, TipLeft - 3, TipRight + 3);
            }
            else if (c.CanBeOver)
            {
                strip.Overrun(b.PullStop.Nominal, b.PullStop.Nominal + c.Least!.Value, TipRight + 7, 10);
            }

            if (to - from >= 1)
                sketch.Circle(middle, from, 7.5, Style.Outlined(Tones.Paper, Tones.Ink, 1.4, 4, 2.5));
            sketch.Circle(middle, to, 7.5, Style.Outlined(Tones.Paper, Tones.Ink, 2.2));
            var symbol = end + (broken ? 8 : 2);
            if (broken)
            {
                Point[] zigzag = [new(TipLeft - 3, end), new(middle - 5, end), new(middle - 2, end - 5), new(middle + 2, end + 5), new(middle + 5, end), new(TipRight + 3, end)];
                sketch.Polyline(zigzag, Lines.Thin);
                sketch.Polyline(zigzag.Select(p => new Point(p.X, p.Y + 5)), Lines.Thin);
            }
            else if (c.IsOver)
            {
                symbol = Math.Max(to, stop + Strip.LeastOverrun) + 8;
            }
            else
            {
                strip.Line(stop, TipLeft - 3, stop, TipRight + 3, Lines.Stop);
            }

            sketch.Rectangle(new(middle - 9, symbol, middle + 9, symbol + 28), Style.Outlined(Tones.Paper, Tones.Ink, 1.6));
            sketch.Lines([new(new(middle - 3, symbol), new(middle - 3, symbol + 28)), new(new(middle + 3, symbol), new(middle + 3, symbol + 28))], Lines.Thin);
            return symbol + 30;
        }

        /// <summary>What stands at the right, moved apart where places lie close together.</summary>
        private double DrawLabels(LadderBody b, IReadOnlyList<(LanePart Part, double From, double To)> push, double outAcross)
        {
            var x = outAcross + 18;
            var room = Width - x - 4;
            var labels = layout.Labels;
            var items = new List<SideLabel>();
            Cushion(b.KnobIn, strip.At(0.5 * Math.Max(0, b.KnobIn.Nominal)), "knob in");
            items.Add(Stop(strip.At(b.PushStop.Nominal), BandAcross, labels.PushMeans));
            var (_, throwFrom, throwTo) = push.First(s => s.Part == LanePart.Throw);
            if (Math.Min(throwTo, strip.At(stroke)) - Math.Max(throwFrom, Zero) < 46)
                items.Add(new(0.5 * (throwFrom + throwTo), null, [[new($"throw {shown.Length(b.Throw)}", Tones.Ink, true)]]));
            items.Add(Stop(strip.At(b.PullStop.Nominal), outAcross, labels.PullMeans));
            Cushion(b.KnobOut, strip.At(stroke - (0.5 * Math.Max(0, b.KnobOut.Nominal))), "knob out");

            // Words are cut to the room, figures never are: then the paper grows.
            Width = Math.Max(Width, x + 4 + items.Max(i => Math.Max(i.Plate is { } plate ? GapMark.Width(plate, height: 22) : 0, i.Lines.Max(l => TextMeasure.Width(l, Small)))));

            // From the top down: each label at its place or right below the one before it; then those that are too low
            // for the strip push the others back up.
            var tops = new double[items.Count];
            for (var i = 0; i < items.Count; i++)
                tops[i] = Math.Max(items[i].At - 12, i == 0 ? 6 : tops[i - 1] + items[i - 1].Height);
            var limit = strip.At(Math.Max(stroke, b.PullStop.High)) + 34;
            for (var i = items.Count - 1; i >= 0; i--)
                tops[i] = Math.Min(tops[i], (i == items.Count - 1 ? limit : tops[i + 1]) - items[i].Height);
            if (tops[0] < 6)
            {
                for (var i = 0; i < items.Count; i++)
                    tops[i] = i == 0 ? 6 : Math.Max(tops[i], tops[i - 1] + items[i - 1].Height);
            }

            for (var i = 0; i < items.Count; i++)
            {
                var (item, y) = (items[i], tops[i] + 13);
                if (item.Plate is { } verdict)
                {
                    GapMark.Draw(sketch, x, tops[i], verdict, height: 22);
                    y += 22;
                }

                if (item.From is { } from)
                    sketch.Polyline([new(from + 10, item.At), new(x - 12, item.At), new(x - 4, y - 4.5)], Lines.Thin);
                foreach (var line in item.Lines)
                {
                    sketch.Text(x, y, Small, line, TextAnchor.Start, Tones.Paper, fractions: true);
                    y += LineHeight;
                }
            }

            return tops[^1] + items[^1].Height;

            SideLabel Stop(double at, double from, string means)
            {
                TextSpan end = new(TextMeasure.Fit(means, Small, room, true), Tones.Ink, true);
                TextSpan[] full = [new(layout.Labels.Device + " ", Tones.Ink), end];
                return new(at, from, [TextMeasure.Width(full, Small) <= room ? full : [end]]);
            }

            void Cushion(LadderCushion c, double at, string name)
            {
                var worst = c.Least is not { } least ? "worst not bounded" : c.CanBeOver ? $"{shown.Bare(-least, Rounding.Up)} too far" : $"worst {shown.BareLeft(least)}";
                items.Add(new(at, null, [[new(shown.Left(c.Nominal), Tones.Ink, true)], [new(name, Tones.Ink)], [new(worst, c.CanBeOver ? Tones.Ink : Tones.Ink2, c.CanBeOver)]], c.Plate));
            }
        }

        private double DrawNotes(LadderBody b, double y)
        {
            sketch.Layer = "notes";
            double x = 8;
            foreach (var (part, text) in ((LanePart, string)[])[(LanePart.LostMotion, $"lost motion {shown.Bare(b.LostMotion)}"), (LanePart.Stretch, $"stretch {shown.Bare(b.Stretch)}")])
            {
                var box = new Box(x, y - 11, x + 22, y + 2);
                strip.Fill(part, box);
                sketch.Rectangle(box, Lines.Thin);
                x = sketch.Text(x + 28, y, Small, text, Tones.Ink2).Right + 18;
            }

            y += 24;
            var c = b.TipCushion;
            if (c.Plate is { } verdict)
            {
                GapMark.Draw(sketch, 8, y - 15, verdict, height: 22);
                y += 26;
            }

            sketch.Text(8, y, Small, [new("conduit tip ", Tones.Ink2), new(shown.Left(c.Nominal), Tones.Ink, true), new($" cushion, worst {(c.Least is { } least ? shown.BareLeft(least) : "not bounded")}", Tones.Ink2)]);
            y += LineHeight + 2;
            if (b.TipGoverns)
                y = Paragraph("On the pull side the conduit tip stops first, before the knob.", Tones.Ink, true, y);
            y = Paragraph($"Wanted at each end: {shown.Known(b.Wanted)}.", Tones.Ink2, false, y);
            foreach (var part in layout.NotCounted)
                y = Paragraph("Not counted: " + part, Tones.Ink, false, y);
            return y;
        }

        private double Paragraph(string text, Tone tone, bool bold, double y)
        {
            foreach (var line in TextMeasure.Wrap(text, Small, Width - 16, bold))
            {
                sketch.Text(8, y, Small, line, tone, bold, fractions: true);
                y += LineHeight;
            }

            return y + 2;
        }

        private double DrawPlace()
        {
            sketch.Layer = "stops";
            strip.Sheet(SheetThickness, PullLeft - 8, PushRight + 8);
            if (layout.Stroke is not null)
                strip.OutStop(stroke, PullLeft - 8, PushRight + 8);
            sketch.Layer = "place";
            foreach (var left in (double[])[PullLeft, PushLeft])
            {
                Point[] outline = [new(left, Zero), new(left, strip.At(stroke)), new(left + LaneWidth, strip.At(stroke)), new(left + LaneWidth, Zero)];
                foreach (var line in layout.Stroke is null ? [outline] : (Point[][])[outline[..2], outline[2..]])
                    sketch.Polyline(line, Lines.Unknown);
            }

            sketch.Layer = "labels";
            var y = strip.At(stroke) + 40;
            GapMark.Draw(sketch, 8, y - 10, layout.Without, height: 24);
            y += 34;
            foreach (var need in layout.Needs)
                y = Paragraph(need, Tones.Blue, true, y);
            return y;
        }

        /// <summary>A label beside the strip.</summary>
        /// <param name="At">Where it would like to stand, px along.</param>
        /// <param name="From">Where its leader starts, px across; null: none.</param>
        private sealed record SideLabel(double At, double? From, IReadOnlyList<IReadOnlyList<TextSpan>> Lines, Verdict? Plate = null)
        {
            public double Height => (Lines.Count * LineHeight) + 5 + (Plate is null ? 0 : 22);
        }
    }
}
