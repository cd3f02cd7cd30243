using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Ladder;

/// <summary>A drawing and where the knob's travel lies on it.</summary>
/// <param name="Zero">Where the panel lies, mm from the left edge (upright: from the top).</param>
/// <param name="Scale">mm on paper per metre of travel; 1000 is true size.</param>
public sealed record ScaledPicture(Picture Picture, double Zero, double Scale);

/// <summary>How the lying ladder is drawn.</summary>
public sealed record PageOptions
{
    /// <summary>Width in px of 1/96 in.</summary>
    public double Width { get; init; } = 960;

    /// <summary>px per inch of travel; null: as large as the width allows.</summary>
    public double? PixelsPerInch { get; init; }

    /// <summary>A line that says what tick, bracket and hatching mean, and the scale.</summary>
    public bool Key { get; init; }
}

public static partial class LadderDrawing
{
    private const double Small = 13;
    private const double Name = 15;
    private const double Main = 17;
    private const double SheetThickness = 16;

    /// <summary>The lying ladder, for a page.</summary>
    public static ScaledPicture Page(LadderLayout layout, PageOptions? options = null)
    {
        var sketch = new Sketch(Lines.Px);
        var frame = new PageFrame(layout, options ?? new(), sketch);
        var height = frame.Draw();
        var title = $"Travel ladder{(layout.Labels.Run.Length > 0 ? ", " + layout.Labels.Run : "")}";
        return new(sketch.ToPicture(frame.Width, height, title, Describe(layout), Tones.Paper), frame.Zero * Lines.Px, frame.Scale * Lines.Px);
    }

    /// <summary>Draws one lying ladder from the top down; each row takes the room it needs.</summary>
    internal sealed class PageFrame
    {
        private const double RuleLine = 46;
        private const double Lane = 50;
        private const double Slip = 22;
        private const double RowHeight = 20;
        private const double TipLane = 30;
        private const double TipSymbol = 44;

        private readonly LadderLayout layout;
        private readonly PageOptions options;
        private readonly Sketch sketch;
        private readonly ShownFigures shown;
        private readonly LadderLabels labels;
        private readonly LadderBody? body;
        private readonly double stroke;
        private readonly double namesRight;
        private readonly bool inOutside;
        private readonly bool outOutside;
        private readonly Strip strip;
        private readonly double rightText;
        private double pullTop = 92;

        public PageFrame(LadderLayout layout, PageOptions options, Sketch sketch, double leastLeft = 0)
        {
            (this.layout, this.options, this.sketch) = (layout, options, sketch);
            shown = new(layout.Display);
            labels = layout.Labels;
            body = layout.Body;
            stroke = layout.Stroke ?? 0.0762;
            Width = Math.Max(options.Width, 600);
            namesRight = Math.Max(leastLeft, 4 + Math.Max(
                Math.Max(TextMeasure.Width("Push", Name, true), TextMeasure.Width("at the lever", Small)),
                Math.Min(110, Math.Max(TextMeasure.Width(PullSense, Small), TextMeasure.Width(PushSense, Small)))));
            double low = 0, high = stroke;
            if (body is not null)
            {
                low = Math.Min(0, Math.Min(body.PushStop.Low, Math.Min(body.PullStop.Low, body.Tip.From)));
                high = Math.Max(stroke, Math.Max(body.PullStop.High, body.PushStop.High));
            }

            // Whether a figure fits inside its cushion depends on the scale, and the scale on the room for the figures
            // that don't: what was moved out stays out.
            double left = 0, right = 0;
            for (var pass = 0; pass < 3; pass++)
            {
                left = namesRight + 10 + SheetThickness + (inOutside ? 14 + Math.Max(TextBlockWidth(body!.KnobIn), PlateWidth(body.KnobIn) - namesRight) : body?.KnobIn.Plate is null ? 0 : Math.Max(0, PlateWidth(body.KnobIn) + 14 - namesRight));
                right = Math.Max(body is null ? 215 : 60 + TipSymbol + TipLabelRoom(body), 34 + (outOutside ? BlockWidth(body!.KnobOut) : body is null ? 0 : PlateWidth(body.KnobOut)));
                var room = Math.Max(140, Width - left - right - 8);
                Scale = Math.Min(options.PixelsPerInch / 0.0254 ?? double.PositiveInfinity, Math.Min(room / (high - low), 10 * Lines.TrueSize));
                if (body is null)
                    break;

                // Room for the conduit tip at its true place, if that costs little.
                var withTip = (Width - left - 8 - TipSymbol - 32 - TipLabelRoom(body)) / (body.TipStop.High - low);
                if (withTip > 0.9 * Scale)
                    Scale = Math.Min(Scale, withTip);
                var (inBefore, outBefore) = (inOutside, outOutside);
                inOutside |= InsideForm(body.KnobIn) is null;
                outOutside |= InsideForm(body.KnobOut) is null;
                if (inBefore == inOutside && outBefore == outOutside)
                    break;
            }

            Zero = left - (low * Scale);
            strip = new(sketch, Zero, Scale, upright: false);
            rightText = strip.At(high) + 34;
            Width = Math.Max(Width, strip.At(high) + right);
        }

        public double Width { get; private set; }

        public double Zero { get; }

        public double Scale { get; private set; }

        public Strip Strip => strip;

        public double Stroke => stroke;

        public double RightText => rightText;

        public double NamesRight => namesRight;

        private double PullBottom => pullTop + Lane;

        private double PushTop => PullBottom + Slip;

        private double PushBottom => PushTop + Lane;

        private double BandRow => PushBottom + 18;

        private string PullSense => labels.PullMeans + " →";

        private string PushSense => "← " + labels.PushMeans;

        private bool ShortLabels => Scale * 0.0254 < 160;

        /// <returns>Height used, px.</returns>
        public double Draw()
        {
            sketch.Layer = "rule";
            var graduation = shown.Inches ? Graduation.Inch(Scale, 46) : Graduation.Millimetre(Scale, 46);
            var ruleEnd = Math.Min(strip.At(stroke) + 92, Width - 36);
            var last = strip.Rule(RuleLine, -1, layout.Stroke is null ? stroke : (ruleEnd - Zero) / Scale, graduation, 14);
            sketch.Text(last + 8, RuleLine - 2, Small, shown.LengthUnitName, Tones.Ink2);
            return body is null ? DrawPlace() : DrawBody(body);
        }

        private double DrawBody(LadderBody b)
        {
            DrawPullBandLabel(b);
            double across1 = RuleLine, across2 = PushBottom + 14;
            sketch.Layer = "stops";
            strip.Sheet(SheetThickness, across1, b.KnobIn.CanBeOver ? BandRow + 12 : PushBottom + 12);
            strip.OutStop(stroke, pullTop - 33, across2);
            Names(pullTop, "Pull", PullSense);
            Names(PushTop, "Push", PushSense);

            sketch.Layer = "pull";
            var pull = strip.Lane(b.Pull, pullTop, PullBottom, 0, stroke, b.KnobIn, b.KnobOut);
            sketch.Layer = "push";
            var push = strip.Lane(b.Push, PushTop, PushBottom, 0, stroke, b.KnobIn, b.KnobOut);
            sketch.Layer = "stops";
            foreach (var top in (double[])[pullTop, PushTop])
            {
                if (b.KnobOut.IsOver)
                    strip.RunThrough(top == pullTop ? b.Pull : b.Push, stroke, b.PullStop.Nominal, top, top + Lane);
                if (b.KnobIn.IsOver)
                    strip.RunThrough(top == pullTop ? b.Pull : b.Push, 0, b.PushStop.Nominal, top, top + Lane);
            }

            if (b.KnobOut.IsOver)
                strip.StopOver(strip.At(stroke), pullTop, PushBottom);
            else
                strip.Line(strip.At(stroke), pullTop - 33, strip.At(stroke), across2, Lines.Stop);
            if (b.KnobIn.IsOver)
                strip.StopOver(Zero, pullTop, PushBottom);

            sketch.Layer = "bands";
            var outEnd = b.KnobOut.CanBeOver ? strip.Overrun(stroke, b.PullStop.High, pullTop - 18, 14) : strip.At(stroke);
            var inEnd = b.KnobIn.CanBeOver ? strip.Overrun(0, b.PushStop.Low, BandRow, 14) : Zero;
            strip.Band(b.PullStop, pullTop - 18);
            strip.Band(b.PushStop, BandRow);

            sketch.Layer = "labels";
            DrawThrowFigures(pull, push);
            DrawKnobIn(b, push, inEnd);
            DrawKnobOut(b, pull, outEnd);
            var rowsBottom = DrawRows(b, pull, push);
            var blockBottom = inOutside || b.KnobIn.Plate is not null ? BandRow + 14 : 0;
            var tipTop = Math.Max(Math.Max(PushBottom + 60, rowsBottom + (b.TipCushion.Plate is null ? 16 : 32)), blockBottom + 12);
            sketch.Layer = "slip";
            DrawSlip(pull, push);
            var tipBottom = DrawTip(b, tipTop, rowsBottom);
            sketch.Layer = "rule";
            var mm = Graduation.Millimetre(Scale, 40);
            var mmLine = tipBottom + 14;
            var mmEnd = strip.Rule(mmLine, 1, stroke, mm, Small);
            sketch.Text(Math.Max(mmEnd, strip.At(stroke)) + 14, mmLine + 14, Small, "mm", Tones.Ink2);
            return DrawNotes(b, mmLine + 62);
        }

        private void Names(double top, string name, string sense)
        {
            sketch.Layer = "names";
            sketch.Text(namesRight, top + (0.5 * Lane) - 3, Name, name, Tones.Ink, bold: true, anchor: TextAnchor.End);
            sketch.Text(namesRight, top + (0.5 * Lane) + 15, Small, TextMeasure.Fit(sense, Small, namesRight - 4), Tones.Ink2, anchor: TextAnchor.End);
        }

        /// <summary>"flap against its stop, shut" beside the bracket of the pull stop, in a row of its own where it does not fit.</summary>
        private void DrawPullBandLabel(LadderBody b)
        {
            var (low, high) = strip.Reach(b.PullStop);
            foreach (var text in StopTexts(labels.PullMeans))
            {
                var width = TextMeasure.Width(text, Small);
                var end = Math.Min(low - 10, strip.At(stroke) - 10);
                if (end - width >= Zero + 6)
                {
                    Label(end, TextAnchor.End, text);
                    return;
                }

                var start = Math.Max(high + 10, Zero + 8);
                if (start + width <= strip.At(stroke) - 8)
                {
                    Label(start, TextAnchor.Start, text);
                    return;
                }
            }

            pullTop += RowHeight + 2;
            var spans = StopTexts(labels.PullMeans)[^1];
            var (x, anchor) = Beside(strip.At(b.PullStop.Nominal), TextMeasure.Width(spans, Small), Zero + 4, Width - 4);
            sketch.Layer = "labels";
            strip.Line(strip.At(b.PullStop.Nominal), pullTop - 18 - 9, strip.At(b.PullStop.Nominal), pullTop - 18 - 16, Lines.Leader);
            sketch.Text(x, pullTop - 18 - 20, Small, spans, anchor, Tones.Paper);

            void Label(double at, TextAnchor side, IReadOnlyList<TextSpan> text)
            {
                sketch.Layer = "labels";
                sketch.Text(at, pullTop - 18 + 4.5, Small, text, side, Tones.Paper);
            }
        }

        private void DrawThrowFigures(IReadOnlyList<(LanePart Part, double From, double To)> pull, IReadOnlyList<(LanePart Part, double From, double To)> push)
        {
            InThrow(pull, pullTop, "throw ", " →");
            InThrow(push, PushTop, "← throw ", "");

            void InThrow(IReadOnlyList<(LanePart Part, double From, double To)> lane, double top, string before, string after)
            {
                var (from, to) = ThrowIn(lane);
                foreach (var text in (string[])[before + shown.Length(body!.Throw) + after, before.Replace("throw ", "", StringComparison.Ordinal) + shown.Bare(body.Throw) + after])
                {
                    if (TextMeasure.Width(text, Main, true) + 14 > to - from)
                        continue;
                    sketch.Text(0.5 * (from + to), top + (0.5 * Lane) + 6, Main, text, Tones.OnThrow, bold: true, anchor: TextAnchor.Middle);
                    return;
                }
            }
        }

        /// <summary>The visible part of the throw: what lies between the knob's stops.</summary>
        private (double From, double To) ThrowIn(IReadOnlyList<(LanePart Part, double From, double To)> lane)
        {
            var (_, from, to) = lane.First(s => s.Part == LanePart.Throw);
            return (Math.Max(from, Zero + 2), Math.Max(Math.Max(from, Zero + 2), Math.Min(to, strip.At(stroke) - 4)));
        }

        private void DrawKnobIn(LadderBody b, IReadOnlyList<(LanePart Part, double From, double To)> push, double inEnd)
        {
            var c = b.KnobIn;
            if (!inOutside)
            {
                Inside(Zero + 8, c, TextAnchor.Start, nominalTop: PushTop, worstTop: pullTop);
            }
            else
            {
                var right = Math.Min(inEnd, Zero - SheetThickness) - 10;
                var dot = c.Nominal > 0 ? 0.5 * (push[0].From + push[0].To) : strip.At(0.5 * c.Nominal);
                LeftBlock(c, right, dot);
            }

            if (c.Plate is { } verdict)
                GapMark.Draw(sketch, Math.Min(inEnd, Zero - SheetThickness) - 10, BandRow - 12, verdict, PlateText(c), toLeft: true);
        }

        private void DrawKnobOut(LadderBody b, IReadOnlyList<(LanePart Part, double From, double To)> pull, double outEnd)
        {
            var c = b.KnobOut;
            if (!outOutside)
            {
                Inside(strip.At(stroke) - 8, c, TextAnchor.End, nominalTop: pullTop, worstTop: PushTop);
            }
            else
            {
                var dot = c.Nominal > 0 ? 0.5 * (pull[^1].From + pull[^1].To) : strip.At(stroke - (0.5 * c.Nominal));
                RightBlock(c, dot);
            }

            if (c.Plate is { } verdict)
            {
                strip.Line(Math.Max(outEnd, strip.At(stroke) + 3), pullTop - 18, rightText - 8, pullTop - 18, Lines.Leader);
                GapMark.Draw(sketch, rightText - 8, pullTop - 30, verdict, PlateText(c));
            }

            strip.Line(Math.Max(strip.At(stroke) + 11, strip.At(b.PullStop.Nominal) + 12), PushTop + 30, rightText - 6, PushTop + 30, Style.Line(Tones.Ink2, 1.1));
            sketch.Text(rightText, PushTop + 34.5, Small, "knob's OUT stop", Tones.Ink2);
        }

        private void Inside(double x, LadderCushion c, TextAnchor anchor, double nominalTop, double worstTop)
        {
            var form = InsideForm(c)!;
            sketch.Text(x, worstTop + 20, Small, form.WorstWord, Tones.Ink2, anchor: anchor);
            sketch.Text(x, worstTop + 39, form.WorstSize, c.Least is { } least ? Figure(least, form) : WorstFigure(c), Tones.Ink, bold: true, anchor: anchor);
            sketch.Text(x, nominalTop + 21, form.NominalSize, Figure(c.Nominal, form), Tones.Ink, bold: true, anchor: anchor);
            sketch.Text(x, nominalTop + 39, Small, form.NominalWord, Tones.Ink, anchor: anchor);
        }

        private string Figure(double metres, CushionForm form) => form.Bare ? shown.BareLeft(metres) : shown.Left(metres);

        /// <summary>The fullest form of a cushion's figures that fits into it; null: none does.</summary>
        private CushionForm? InsideForm(LadderCushion c)
        {
            var end = c.Away > 0 ? "knob in" : "knob out";
            foreach (var form in (CushionForm[])[new(c.Name, Main, "worst case", Name), new(end, Name, "worst case", Name), new(end, Small, "worst", Small), new(end, Small, "worst", Small, Bare: true)])
            {
                var width = Math.Max(
                    Math.Max(TextMeasure.Width(Figure(c.Nominal, form), form.NominalSize, true), TextMeasure.Width(form.NominalWord, Small)),
                    Math.Max(TextMeasure.Width(form.WorstWord, Small), TextMeasure.Width(c.Least is { } least ? Figure(least, form) : WorstFigure(c), form.WorstSize, true)));
                if (width + 14 <= Math.Min(c.Nominal, stroke) * Scale)
                    return form;
            }

            return null;
        }

        /// <summary>Three lines beside the pull lane with a leader to the cushion that is too narrow to hold them.</summary>
        private void RightBlock(LadderCushion c, double dot)
        {
            var leader = pullTop + 12;
            sketch.Text(rightText, pullTop + 18, Main, shown.Left(c.Nominal), Tones.Ink, bold: true);
            sketch.Text(rightText, pullTop + 36, Small, c.Name, Tones.Ink);
            sketch.Text(rightText, pullTop + 53, Small, $"worst case {BareWorst(c)}", Tones.Ink2);
            if (c.Wanted is { } wanted)
                sketch.Text(rightText, pullTop + 70, Small, $"wanted {shown.Known(wanted)}", Tones.Ink2, fractions: true);
            sketch.Circle(dot, leader, 2.6, Style.Area(Tones.Ink));
            strip.Line(dot, leader, rightText - 6, leader, Lines.Leader);
        }

        /// <summary>The same to the left of the sheet, narrower: it stands between the sheet and the lanes' names.</summary>
        private void LeftBlock(LadderCushion c, double right, double dot)
        {
            var leader = pullTop + 34;
            sketch.Text(right, pullTop + 40, Main, shown.Left(c.Nominal), Tones.Ink, bold: true, anchor: TextAnchor.End);
            sketch.Text(right, pullTop + 58, Small, c.Name, Tones.Ink, anchor: TextAnchor.End);
            sketch.Text(right, pullTop + 75, Small, $"worst case {BareWorst(c)}", Tones.Ink2, anchor: TextAnchor.End);
            if (c.Wanted is { } wanted)
                sketch.Text(right, pullTop + 92, Small, $"wanted {shown.Known(wanted)}", Tones.Ink2, anchor: TextAnchor.End, fractions: true);
            sketch.Circle(dot, leader, 2.6, Style.Area(Tones.Ink));
            strip.Line(dot, leader, right + 6, leader, Lines.Leader);
        }

        private double BlockWidth(LadderCushion c) => Math.Max(PlateWidth(c), TextBlockWidth(c));

        private double TextBlockWidth(LadderCushion c) => 4 + Math.Max(
            Math.Max(TextMeasure.Width(c.Name, Small), TextMeasure.Width(shown.Left(c.Nominal), Main, true)), TextMeasure.Width($"worst case {BareWorst(c)}", Small));

        private double PlateWidth(LadderCushion c) => c.Plate is { } verdict ? GapMark.Width(verdict, PlateText(c)) + 4 : 0;

        private string WorstFigure(LadderCushion c) => c.Least is { } least ? shown.Left(least) : "not bounded";

        private string BareWorst(LadderCushion c) => c.Least is { } least ? shown.BareLeft(least) : "not bounded";

        /// <summary>The plate adds the overrun; any other worst case stands at the cushion already.</summary>
        private string PlateText(LadderCushion c) => c.CanBeOver ? $"{shown.Length(-c.Least!.Value, Shapes.Quantities.Rounding.Up)} too far" : "";

        /// <summary>Lost motion in the slip, stretch and the push stop's name below the push lane; a staircase of rows where that is too tight.</summary>
        /// <returns>Lower edge of the rows.</returns>
        private double DrawRows(LadderBody b, IReadOnlyList<(LanePart Part, double From, double To)> pull, IReadOnlyList<(LanePart Part, double From, double To)> push)
        {
            var lost = Find(pull, LanePart.LostMotion);
            var stretch = Find(push, LanePart.Stretch);
            string lostText = $"lost motion {shown.Bare(b.LostMotion)}", stretchText = $"stretch {shown.Bare(b.Stretch)}";
            double lostWidth = TextMeasure.Width(lostText, Small), stretchWidth = TextMeasure.Width(stretchText, Small);
            var bandHigh = Math.Max(strip.Reach(b.PushStop).High, Zero);
            var throwSeen = ThrowIn(push);
            var throwFits = TextMeasure.Width("← " + shown.Bare(b.Throw), Main, true) + 14 <= throwSeen.To - throwSeen.From;

            var lostX = lost is null ? 0 : Math.Max(Mid(lost.Value) + 24, Zero + 10);
            var lostInSlip = lost is null || (layout.Try is null && lostX + 2 + lostWidth < Math.Min(strip.At(b.PullStop.Nominal), strip.At(stroke)) - 40);
            var stretchLeft = stretch is null ? strip.At(stroke) : Mid(stretch.Value) - 24 - stretchWidth;
            foreach (var text in StopTexts(labels.PushMeans))
            {
                var end = bandHigh + 10 + TextMeasure.Width(text, Small);
                if (!(lostInSlip && throwFits && end < stretchLeft - 14 && end < Width - 4))
                    continue;
                sketch.Text(bandHigh + 10, BandRow + 4.5, Small, text, TextAnchor.Start, Tones.Paper);
                if (stretch is { } s)
                {
                    Dot(Mid(s), PushBottom - 8);
                    sketch.Polyline([new(Mid(s), PushBottom - 8), new(Mid(s), BandRow), new(Mid(s) - 18, BandRow)], Lines.Leader);
                    sketch.Text(Mid(s) - 22, BandRow + 4.5, Small, stretchText, Tones.Ink, anchor: TextAnchor.End, halo: Tones.Paper);
                }

                if (lost is { } l)
                {
                    var y = PullBottom + (0.5 * Slip);
                    Dot(Mid(l), PullBottom - 8);
                    sketch.Polyline([new(Mid(l), PullBottom - 8), new(Mid(l), y), new(lostX - 4, y)], Lines.Leader);
                    sketch.Text(lostX, y + 4.5, Small, lostText, Tones.Ink, halo: Tones.Paper);
                }

                return BandRow + 10;
            }

            // Staircase: the rightmost leader has the uppermost row, so that no leader has to cross a text.
            var items = new List<(double X, double From, IReadOnlyList<TextSpan> Text, bool Dot)>();
            if (lost is not null && Find(push, LanePart.LostMotion) is { } lostPush)
                items.Add((Mid(lostPush), PushBottom - 8, [new(lostText, Tones.Ink)], true));
            if (stretch is { } st)
                items.Add((Mid(st), PushBottom - 8, [new(stretchText, Tones.Ink)], true));
            if (!throwFits)
                items.Add((0.5 * (throwSeen.From + throwSeen.To), PushBottom - 8, [new($"throw {shown.Length(b.Throw)}", Tones.Ink, true)], true));
            var firstLeader = items.Count == 0 ? double.PositiveInfinity : items.Min(i => i.X);
            var stop = StopTexts(labels.PushMeans).FirstOrDefault(t => bandHigh + 10 + TextMeasure.Width(t, Small) < Math.Min(firstLeader - 8, Width - 4));
            if (stop is not null)
                sketch.Text(bandHigh + 10, BandRow + 4.5, Small, stop, TextAnchor.Start, Tones.Paper);
            else
                items.Add((strip.At(b.PushStop.Nominal), BandRow + 9, StopTexts(labels.PushMeans)[^1], false));
            items.Sort((l, r) => r.X.CompareTo(l.X));
            var row = BandRow + 24;
            foreach (var (x, from, text, dot) in items)
            {
                if (dot)
                    Dot(x, from);
                var (textX, anchor) = Beside(x + 20, TextMeasure.Width(text, Small), 4, Width - 4);
                sketch.Polyline([new(x, from), new(x, row), new(x + 14, row)], dot && from < PushBottom ? Lines.Leader : Lines.Thin);
                sketch.Text(textX, row + 4.5, Small, text, anchor, Tones.Paper);
                row += RowHeight;
            }

            return row - 8;

            void Dot(double x, double y)
            {
                sketch.Circle(x, y, 4, Style.Area(Tones.Paper));
                sketch.Circle(x, y, 2.6, Style.Area(Tones.Ink));
            }
        }

        /// <summary>The shift between the lanes, and the change that is being tried.</summary>
        private void DrawSlip(IReadOnlyList<(LanePart Part, double From, double To)> pull, IReadOnlyList<(LanePart Part, double From, double To)> push)
        {
            var (_, pullFrom, pullTo) = pull.First(s => s.Part == LanePart.Throw);
            var (_, pushFrom, pushTo) = push.First(s => s.Part == LanePart.Throw);
            if (pullFrom - pushFrom > 0.5)
            {
                var dashes = Style.Line(Tones.Ink, 1.1, 3, 3);
                if (pushFrom > Zero)
                    strip.Line(pullFrom, PullBottom + 1, pushFrom, PushTop - 1, dashes);
                if (pullTo < strip.At(stroke))
                    strip.Line(pullTo, PullBottom + 1, pushTo, PushTop - 1, dashes);
            }

            if (layout.Try is not { } tried)
                return;
            sketch.Layer = "try";
            foreach (var place in (double[])[tried.PushStopPlace, tried.PullStopPlace])
            {
                foreach (var (top, bottom) in ((double, double)[])[(pullTop - 8, pullTop + 7), (PullBottom - 7, PushTop + 7), (PushBottom - 7, PushBottom + 8)])
                {
                    strip.Line(strip.At(place), top, strip.At(place), bottom, Style.Line(Tones.Paper, 5));
                    strip.Line(strip.At(place), top, strip.At(place), bottom, Style.Line(Tones.Blue, 2.2));
                }
            }

            double from = strip.At(body!.PullStop.Nominal), to = strip.At(tried.PullStopPlace), y = PullBottom + (0.5 * Slip), back = Math.Sign(from - to);
            if (Math.Abs(from - to) > 14)
            {
                strip.Line(from, y, to + (back * 8), y, Style.Line(Tones.Blue, 1.6));
                sketch.Polygon([new(to + (back * 2), y), new(to + (back * 11), y - 4), new(to + (back * 11), y + 4)], Style.Area(Tones.Blue));
            }

            var text = TextMeasure.Fit("after the try: " + tried.Text, Small, Math.Max(60, Math.Min(from, to) - Zero - 20), true);
            sketch.Text(Math.Min(from, to) - 10, y + 4.5, Small, text, Tones.Blue, bold: true, anchor: TextAnchor.End, halo: Tones.Paper);
        }

        /// <summary>The swivel's way and what is left before it meets the conduit tip.</summary>
        /// <returns>Lower edge.</returns>
        private double DrawTip(LadderBody b, double top, double rowsBottom)
        {
            sketch.Layer = "names";
            sketch.Text(namesRight, top + 12, Name, "Tip", Tones.Ink, bold: true, anchor: TextAnchor.End);
            sketch.Text(namesRight, top + 29, Small, "at the lever", Tones.Ink2, anchor: TextAnchor.End);

            sketch.Layer = "tip";
            double from = strip.At(b.Tip.From), to = strip.At(b.PullStop.Nominal), middle = top + (0.5 * TipLane);
            var c = b.TipCushion;
            var stop = strip.At(b.TipStop.Nominal);
            strip.Line(from, rowsBottom + 2, from, middle - 9, Lines.Align);
            strip.Line(to, Math.Max(rowsBottom + 2, BandRow + 12), to, middle - 9, Lines.Align);
            var lastTip = Math.Max(to + 30, Width - TipSymbol - 12 - TipLabelRoom(b) - 18);
            var broken = Math.Max(stop, strip.Reach(b.TipStop).High - TipSymbol) > lastTip;
            var end = broken ? lastTip : stop;

            sketch.Rectangle(new(from, top, Math.Max(to, Math.Min(end, to)), top + TipLane), Style.Outlined(Tones.Throw, Tones.Ink, 1.6));
            if (end > to)
            {
                sketch.Rectangle(new(to, top, end, top + TipLane), Style.Area(Tones.Paper));
                if (c.Least > 0)
                    sketch.Rectangle(new(to, top, Math.Min(end, strip.At(b.PullStop.Nominal + Math.Min(c.Least.Value, c.Nominal))), top + TipLane), Style.Area(Tones.ClearWash));
                sketch.Lines([new(new(to, top), new(end, top)), new(new(to, top + TipLane), new(end, top + TipLane))], Style.Line(Tones.Ink, 1.6));
            }

            if (c.IsOver)
            {
                strip.RunThrough(b.Tip, b.TipStop.Nominal, b.PullStop.Nominal, top, top + TipLane);
                strip.StopOver(stop, top - 4, top + TipLane + 4);
            }

            if (broken)
                Break(end, top);

            // The swivel at both ends of its way; where it came from is a phantom.
            if (to - from >= 1)
                sketch.Circle(from, middle, 9, Style.Outlined(Tones.Paper, Tones.Ink, 1.4, 4, 2.5));
            sketch.Circle(to, middle, 9, Style.Outlined(Tones.Paper, Tones.Ink, 2.2));

            double symbol = (broken ? end + 10 : Math.Max(stop, c.IsOver ? to + Math.Max(12, Strip.LeastOverrun) : stop)) + (c.IsOver ? 4 : 0), bandAcross = top + TipLane + 12;
            var tipEnd = symbol;
            if (!broken)
            {
                if (c.CanBeOver && !c.IsOver)
                {
                    // What may run over is the conduit tip, toward the swivel: the block lies on the swivel's side.
                    strip.Overrun(b.PullStop.Nominal, b.PullStop.Nominal + c.Least!.Value, bandAcross, 14);
                    strip.Line(to, middle + 9, to, bandAcross + 8, Lines.Thin);
                }

                if (!c.IsOver)
                    strip.Line(stop, top - 4, stop, top + TipLane + 4, Lines.Stop);
                strip.Band(b.TipStop, bandAcross);
                tipEnd = Math.Max(symbol, strip.Reach(b.TipStop).High - TipSymbol);
            }

            Conduit(symbol + (broken ? 0 : 2), middle);
            sketch.Layer = "labels";
            double text = tipEnd + TipSymbol + 12, y = top - 3;
            if (c.Plate is { } verdict)
            {
                GapMark.Draw(sketch, text, y - 24, verdict);
                y += 14;
            }
            else
            {
                y += 8;
            }

            sketch.Text(text, y, Small, "conduit tip", Tones.Ink2);
            var inside = $"{shown.Left(c.Nominal)} cushion";
            var fits = !c.IsOver && TextMeasure.Width(inside, Small, true) + 26 < end - to;
            if (fits)
                sketch.Text(to + 15, middle + 4.5, Small, [new(shown.Left(c.Nominal), Tones.Ink, true), new(" cushion", Tones.Ink)], TextAnchor.Start);
            foreach (var (line, bold) in TipTexts(b).Skip(fits ? 1 : 0))
                sketch.Text(text, y += 17, Small, line, bold ? Tones.Ink : Tones.Ink2, bold, fractions: true);

            var travel = $"swivel travels {shown.Length(b.Throw)}";
            if (TextMeasure.Width(travel, Small) + 30 < Math.Min(to, c.IsOver ? stop : to) - from)
                sketch.Text(0.5 * (from + Math.Min(to, c.IsOver ? stop : to)), middle + 4.5, Small, travel, Tones.OnThrow, anchor: TextAnchor.Middle);
            return Math.Max(top + TipLane + (broken ? 2 : 22), y + 6);
        }

        private double TipLabelRoom(LadderBody b)
        {
            var texts = Math.Max(TextMeasure.Width("conduit tip", Small), TipTexts(b).Max(t => TextMeasure.Width(t.Text, Small, t.Bold)));
            return b.TipCushion.Plate is { } plate ? Math.Max(texts, GapMark.Width(plate)) : texts;
        }

        private List<(string Text, bool Bold)> TipTexts(LadderBody b)
        {
            var lines = new List<(string, bool)>
            {
                ($"{shown.Left(b.TipCushion.Nominal)} cushion", true),
                ($"worst case {BareWorst(b.TipCushion)}", false),
            };
            if (b.TipGoverns)
                lines.Add(("stops first", true));
            return lines;
        }

        private void Break(double x, double top)
        {
            Point[] zigzag = [new(x, top - 3), new(x, top + 7), new(x - 5, top + 11), new(x + 5, top + 19), new(x, top + 23), new(x, top + TipLane + 3)];
            sketch.Polygon([.. zigzag, .. zigzag.Reverse().Select(p => new Point(p.X + 6, p.Y))], Style.Area(Tones.Paper));
            sketch.Polyline(zigzag, Lines.Thin);
            sketch.Polyline(zigzag.Select(p => new Point(p.X + 6, p.Y)), Lines.Thin);
        }

        /// <summary>The end of the conduit in side view, the wire in it.</summary>
        private void Conduit(double x, double middle)
        {
            sketch.Layer = "tip";
            sketch.Rectangle(new(x, middle - 11, x + TipSymbol, middle + 11), Style.Outlined(Tones.Paper, Tones.Ink, 1.6));
            sketch.Lines([new(new(x, middle - 4), new(x + TipSymbol, middle - 4)), new(new(x, middle + 4), new(x + TipSymbol, middle + 4))], Lines.Thin);
        }

        private double DrawNotes(LadderBody b, double y)
        {
            sketch.Layer = "notes";
            var left = namesRight + 10;
            var lines = new List<(string Lead, string Text)>();
            if (b.TipGoverns || b.KnobOut.Least is not null)
            {
                var (first, other) = b.TipGoverns ? (b.TipCushion, b.KnobOut) : (b.KnobOut, b.TipCushion);
                lines.Add(("", $"Pull side, worst case: {(b.TipGoverns ? "the conduit tip" : "the knob")} comes first with {WorstFigure(first)} left; {(b.TipGoverns ? "the knob" : "the conduit tip")} has {WorstFigure(other)}."));
            }

            foreach (var part in layout.NotCounted)
                lines.Add(("Not counted: ", part));
            foreach (var (lead, text) in lines)
            {
                var indent = TextMeasure.Width(lead, Small, true);
                var first = true;
                foreach (var line in TextMeasure.Wrap(text, Small, Width - left - 8 - indent))
                {
                    sketch.Text(left, y, Small, first && lead.Length > 0 ? [new(lead, Tones.Ink, true), new(line, Tones.Ink)] : [new(line, lead.Length > 0 ? Tones.Ink : Tones.Ink2)]);
                    y += 18;
                    first = false;
                }
            }

            return options.Key ? DrawKey(y + 6) : y;
        }

        private double DrawKey(double y)
        {
            var times = Scale / Lines.TrueSize;
            var (x, row) = (namesRight + 10, y);
            Item(_ => 0, $"Drawn {Shapes.Quantities.FigureText.Plain(times, 2)} times true size.");
            Item(
                at =>
                {
                    sketch.Lines([new(new(at, row - 4.5), new(at + 22, row - 4.5)), new(new(at, row - 9.5), new(at, row + 0.5)), new(new(at + 22, row - 9.5), new(at + 22, row + 0.5))], Lines.Thin);
                    return 28;
                },
                "worst case");
            Item(
                at =>
                {
                    sketch.Rectangle(new(at, row - 7, at + 22, row - 2), Style.Area(Tones.Ink));
                    return 28;
                },
                "95 % of installations");
            Item(
                at =>
                {
                    sketch.Rectangle(new(at + 2, row - 13, at + 4, row + 3), Style.Area(Tones.Ink));
                    return 10;
                },
                "nominal");
            Item(at => Sample(at, LanePart.LostMotion), "lost motion");
            Item(at => Sample(at, LanePart.Stretch), "stretch");
            return row + 10;

            double Sample(double at, LanePart part)
            {
                var box = new Box(at, row - 11, at + 22, row + 2);
                strip.Fill(part, box);
                sketch.Rectangle(box, Lines.Thin);
                return 28;
            }

            void Item(Func<double, double> mark, string text)
            {
                if (x > namesRight + 10 && x + 30 + TextMeasure.Width(text, Small) > Width - 6)
                    (x, row) = (namesRight + 10, row + 22);
                x += mark(x);
                x = sketch.Text(x, row, Small, text, Tones.Ink2).Right + 18;
            }
        }

        private double DrawPlace()
        {
            sketch.Layer = "stops";
            strip.Sheet(SheetThickness, RuleLine, PushBottom + 12);
            if (layout.Stroke is not null)
            {
                strip.OutStop(stroke, pullTop - 33, PushBottom + 14);
                sketch.Text(rightText, PushTop + 34.5, Small, "knob's OUT stop", Tones.Ink2);
                strip.Line(strip.At(stroke) + 11, PushTop + 30, rightText - 6, PushTop + 30, Style.Line(Tones.Ink2, 1.1));
            }

            Names(pullTop, "Pull", PullSense);
            Names(PushTop, "Push", PushSense);
            sketch.Layer = "place";
            foreach (var top in (double[])[pullTop, PushTop])
            {
                // Where the strip begins is known, it is the sheet; where it ends, if the stroke is.
                Point[] outline = [new(Zero, top), new(strip.At(stroke), top), new(strip.At(stroke), top + Lane), new(Zero, top + Lane)];
                foreach (var line in layout.Stroke is null ? [outline] : (Point[][])[outline[..2], outline[2..]])
                    sketch.Polyline(line, Lines.Unknown);
            }

            sketch.Layer = "labels";
            GapMark.Draw(sketch, Zero + 14, pullTop + 13, layout.Without);
            var y = PushBottom + 34;
            foreach (var need in layout.Needs)
            {
                foreach (var line in TextMeasure.Wrap(need, Name, Width - Zero - 24, true))
                {
                    sketch.Text(Zero + 14, y, Name, line, Tones.Blue, bold: true, fractions: true);
                    y += 22;
                }
            }

            return y + 2;
        }

        /// <summary>Words and type sizes of the figures inside a cushion.</summary>
        /// <param name="Bare">Without the unit, which the rule and the throw name.</param>
        private sealed record CushionForm(string NominalWord, double NominalSize, string WorstWord, double WorstSize, bool Bare = false);

        /// <summary>The long and the short form of "the device is against its stop there".</summary>
        private IReadOnlyList<TextSpan>[] StopTexts(string means)
        {
            var device = TextMeasure.Fit(labels.Device, Small, 140);
            TextSpan end = new(TextMeasure.Fit(means, Small, 110, true), Tones.Ink, true);
            IReadOnlyList<TextSpan> full = [new(device + " against its stop, ", Tones.Ink), end], brief = [new(device + " ", Tones.Ink), end];
            return ShortLabels ? [brief] : [full, brief];
        }

        private static (LanePart Part, double From, double To)? Find(IReadOnlyList<(LanePart Part, double From, double To)> lane, LanePart part)
        {
            foreach (var segment in lane)
            {
                if (segment.Part == part)
                    return segment;
            }

            return null;
        }

        private static double Mid((LanePart Part, double From, double To) segment) => 0.5 * (segment.From + segment.To);

        /// <summary>A place for a text that starts at x if it fits, else as far right as it does.</summary>
        private static (double X, TextAnchor Anchor) Beside(double x, double width, double low, double high) =>
            (Math.Max(low, Math.Min(x, high - width)), TextAnchor.Start);
    }
}
