using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Ladder;

/// <summary>How the gauge to cut out is drawn.</summary>
public sealed record TrueSizeOptions
{
    /// <summary>Least width of the paper, px of 1/96 in; a long stroke makes it wider.</summary>
    public double Width { get; init; } = 640;
}

public static partial class LadderDrawing
{
    /// <summary>The strip at true size, to be cut out and held beside the shank: its left edge stands on the panel.</summary>
    /// <remarks>
    /// A bracket says where a light hand shall find the back of the knob: the limits of the rigging card. Where no place
    /// keeps both cushions, the strip says so and has no bracket.
    /// </remarks>
    public static ScaledPicture TrueSize(LadderLayout layout, TrueSizeOptions? options = null)
    {
        const double zero = 44;
        const double lane = 22;
        var shown = new ShownFigures(layout.Display);
        var labels = layout.Labels;
        var stroke = layout.Stroke ?? 0.0762;
        var body = layout.Body;
        var sketch = new Sketch(Lines.Px);
        var high = body is null ? stroke : Math.Max(stroke, body.PullStop.Nominal);
        var frameRight = Math.Max(zero + (high * Lines.TrueSize) + 26, zero + 280);
        var width = Math.Max(Math.Max(options?.Width ?? 640, 96 * 4.5), frameRight + 120);

        sketch.Layer = "check";
        var y = 16.0;
        foreach (var line in TextMeasure.Wrap("Check the scale first: lay a steel rule on both bars. Do not use this paper if either is off.", Small, width - 16, true))
        {
            sketch.Text(8, y, Small, line, Tones.Ink, bold: true);
            y += 18;
        }

        y += 6;
        foreach (var (length, text) in ((double, string)[])[(4 * 0.0254, "4 in"), (0.1, "100 mm")])
        {
            Bar(sketch, 8, y, length * Lines.TrueSize);
            sketch.Text(8 + (length * Lines.TrueSize) + 12, y + 4.5, Small, text, Tones.Ink, bold: true);
            y += 20;
        }

        var top = y + 16;
        var strip = new Strip(sketch, zero, Lines.TrueSize, upright: false);
        double ruleLine = top + 62, pullTop = ruleLine + 24, pushTop = pullTop + lane + 5, pushBottom = pushTop + lane, frameBottom = pushBottom + 40;
        sketch.Text(zero + 6, top + 17, Small, TextMeasure.Fit(labels.Run, Small, frameRight - zero - 12 - TextMeasure.Width("true size 1 : 1  ", Small), true), Tones.Ink, bold: true);
        sketch.Text(frameRight - 6, top + 17, Small, "true size 1 : 1", Tones.Ink2, anchor: TextAnchor.End);

        sketch.Layer = "rule";
        var graduation = shown.Inches ? Graduation.Inch(Lines.TrueSize, 40) : Graduation.Millimetre(Lines.TrueSize, 30);
        strip.Rule(ruleLine, -1, high, graduation, Small, nameZero: false);

        sketch.Layer = "stops";
        strip.Sheet(12, ruleLine - 20, pushBottom + 8);
        if (layout.Stroke is not null)
            strip.OutStop(stroke, ruleLine + 4, pushBottom + 8);

        var usable = true;
        if (body is not null)
        {
            sketch.Layer = "pull";
            var pull = strip.Lane(body.Pull, pullTop, pullTop + lane, 0, stroke, null, null);
            sketch.Layer = "push";
            var push = strip.Lane(body.Push, pushTop, pushBottom, 0, stroke, null, null);
            if (body.KnobOut.IsOver)
            {
                strip.RunThrough(body.Pull, stroke, body.PullStop.Nominal, pullTop, pullTop + lane);
                strip.RunThrough(body.Push, stroke, body.PullStop.Nominal, pushTop, pushBottom);
                strip.StopOver(strip.At(stroke), pullTop, pushBottom);
            }

            sketch.Layer = "labels";
            InThrow(pull, pullTop, $"pull: {labels.PullMeans} →");
            InThrow(push, pushTop, $"← push: {labels.PushMeans}");
            usable = body.ToRig is not null;
            if (body.ToRig is { } places)
            {
                var (a, b) = ((From: places.PushLeast, To: places.PushMost), (From: places.PullLeast, To: places.PullMost));
                sketch.Layer = "gauge";
                Bracket(pushBottom + 12, a.From, a.To);
                Bracket(pullTop - 12, b.From, b.To);
                sketch.Layer = "labels";
                Below(a, b);
            }
        }
        else
        {
            sketch.Layer = "place";
            sketch.Rectangle(new(zero, pullTop, strip.At(stroke), pushBottom), Lines.Unknown);
        }

        sketch.Layer = "cut";
        if (usable && body is not null)
            sketch.Polygon([new(zero, top), new(frameRight, top), new(frameRight, frameBottom), new(zero, frameBottom)], Lines.Cut);
        sketch.Layer = "labels";
        if (layout.Stroke is not null)
        {
            sketch.Text(frameRight + 10, pushTop + 4, Small, "knob's", Tones.Ink2);
            sketch.Text(frameRight + 10, pushTop + 20, Small, "OUT stop", Tones.Ink2);
            strip.Line(strip.At(high) + 12, pushTop - 2.5, frameRight + 6, pushTop - 2.5, Style.Line(Tones.Ink2, 1.1));
        }


        y = frameBottom + 22;
        sketch.Layer = "notes";
        if (body is null)
        {
            GapMark.Draw(sketch, 8, y - 16, layout.Without, height: 22);
            y += 26;
            foreach (var need in layout.Needs)
                Paragraph(need, Tones.Ink, false);
        }
        else if (!usable)
        {
            Paragraph($"No gauge: no place of the swivel keeps the wanted {shown.Known(body.Wanted)} at both ends.", Tones.Ink, true);
        }
        else
        {
            Paragraph("Cut on the dashed line. Stand the left edge on the panel, the strip beside the shank. With the device against its stop, the back of the knob must lie within the bracket of that stop.", Tones.Ink, false);
            Paragraph($"Brackets: the limits of the rigging card. A light hand finds the knob there; {shown.Known(body.Wanted)} is left at each end under a working hand, hot and cold.", Tones.Ink2, false);
        }

        foreach (var part in layout.NotCounted)
            Paragraph("Not counted: " + part, Tones.Ink, false);
        var picture = sketch.ToPicture(width, y, $"Travel ladder at true size{(labels.Run.Length > 0 ? ", " + labels.Run : "")}", Describe(layout), Tones.Paper);
        return new(picture, zero * Lines.Px, Lines.TrueSize * Lines.Px);

        void Paragraph(string text, Tone tone, bool bold)
        {
            foreach (var line in TextMeasure.Wrap(text, Small, width - 16, bold))
            {
                sketch.Text(8, y, Small, line, tone, bold, fractions: true);
                y += 18;
            }

            y += 4;
        }

        void InThrow(IReadOnlyList<(LanePart Part, double From, double To)> placed, double laneTop, string text)
        {
            var (_, a, b) = placed.First(s => s.Part == LanePart.Throw);
            double from = Math.Max(a, zero), to = Math.Min(b, strip.At(stroke));
            if (to - from < 60)
                return;
            sketch.Text(0.5 * (from + to), laneTop + 15.5, Small, TextMeasure.Fit(text, Small, to - from - 10, true), Tones.OnThrow, bold: true, anchor: TextAnchor.Middle);
        }

        void Bracket(double across, double from, double to)
        {
            double a = strip.At(from), b = Math.Max(strip.At(to), a + 1);
            sketch.Lines([new(new(a, across), new(b, across)), new(new(a, across - 6), new(a, across + 6)), new(new(b, across - 6), new(b, across + 6))], Style.Line(Tones.Ink, 1.6));
        }

        // The two ranges in words, under the strip; in two rows where they would meet.
        void Below((double From, double To) atPush, (double From, double To) atPull)
        {
            // Rounded inward: a reading inside the words is inside the bracket.
            string Range((double From, double To) r) => $"{shown.Tape(r.From, Rounding.Up)[..^3]} to {shown.Tape(r.To, Rounding.Down)}";
            var pushText = $"{TextMeasure.Fit(labels.PushMeans, Small, 80, true)} {Range(atPush)}";
            var pullText = $"{TextMeasure.Fit(labels.PullMeans, Small, 80, true)} {Range(atPull)}";
            double pushWidth = TextMeasure.Width(pushText, Small, true), pullWidth = TextMeasure.Width(pullText, Small, true);
            var pushX = Math.Max(zero + 5, Math.Min(strip.At(atPush.From) - 4, frameRight - 6 - pushWidth));
            var pullX = Math.Max(zero + 5, Math.Min(strip.At(atPull.To) + 4 - pullWidth, frameRight - 6 - pullWidth));
            var apart = pushX + pushWidth + 12 < pullX;
            if (!apart)
                frameBottom += 17;
            sketch.Text(pushX, pushBottom + 33, Small, pushText, Tones.Ink, bold: true, fractions: true);
            sketch.Text(pullX, pushBottom + (apart ? 33 : 50), Small, pullText, Tones.Ink, bold: true, fractions: true);
        }
    }

    private static void Bar(Sketch sketch, double x, double y, double length)
    {
        sketch.Rectangle(new(x, y - 3, x + (0.5 * length), y + 3), Style.Area(Tones.Ink));
        sketch.Rectangle(new(x, y - 3, x + length, y + 3), Style.Line(Tones.Ink, 1.1));
        sketch.Lines([new(new(x, y - 8), new(x, y + 8)), new(new(x + length, y - 8), new(x + length, y + 8))], Style.Line(Tones.Ink, 1.1));
    }
}
