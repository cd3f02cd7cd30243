using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Formats.Drawing;
using Throwright.Papers.Ladder;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Board;

/// <summary>How the rows of a board are drawn; px of 1/96 in. All rows of one board share these, so that the sheet runs on from row to row.</summary>
public sealed record BoardOptions
{
    /// <summary>px per inch of travel.</summary>
    public double PixelsPerInch { get; init; } = 112;

    /// <summary>From the left edge to the sheet's face.</summary>
    public double Sheet { get; init; } = 84;

    public double Width { get; init; } = 620;
    public double Height { get; init; } = 89;
}

/// <summary>One control on the board: from the side, pulled out to its OUT stop, its travel drawn on the shank.</summary>
public static class BoardStrip
{
    private const double Lane = 11;
    private const double Slip = 3;

    /// <summary>The options that show the longest of these strokes in the given width.</summary>
    public static BoardOptions Fit(IEnumerable<Run> runs, BoardOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        var longest = runs.Max(r => r.CockpitEnd?.Stroke?.Nominal.Inches) ?? 3;
        return options with { PixelsPerInch = Math.Clamp((options.Width - options.Sheet - 62) / Math.Max(longest, 0.25), 4, 112) };
    }

    /// <summary>The rule above the rows.</summary>
    public static Picture Rule(Display display, BoardOptions options)
    {
        ArgumentNullException.ThrowIfNull(display);
        ArgumentNullException.ThrowIfNull(options);
        var sketch = new Sketch(Lines.Px) { Layer = "rule" };
        var scale = options.PixelsPerInch / 0.0254;
        var strip = new Strip(sketch, options.Sheet, scale, upright: false);
        var graduation = display.Length == LengthUnit.Inch ? Graduation.Inch(scale, 46) : Graduation.Millimetre(scale, 46);
        var last = strip.Rule(38, -1, (options.Width - options.Sheet - 40) / scale, graduation, 13);
        sketch.Text(last + 8, 38, 13, display.Length == LengthUnit.Inch ? "in" : "mm", Tones.Ink2);
        sketch.Rectangle(new(options.Sheet - 14, 38, options.Sheet, 40), Style.Area(Tones.Ink));
        return sketch.ToPicture(options.Width, 40, "Scale of the board", "Zero is the sheet; to its right is toward the pilot.");
    }

    public static Picture Draw(RunAnswer run, Display display, BoardOptions options)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(options);
        var sketch = new Sketch(Lines.Px);
        var strip = new Strip(sketch, options.Sheet, options.PixelsPerInch / 0.0254, upright: false);
        double zero = options.Sheet, axis = 0.5 * options.Height, top = axis - Lane - (0.5 * Slip), bottom = axis + Lane + (0.5 * Slip);
        var layout = RunLadder.LayoutOf(run, display);
        var end = run.Run.CockpitEnd;
        var stroke = layout.Stroke is { } s ? strip.At(s) : zero + Math.Min(180, options.Width - zero - 60);

        sketch.Layer = "behind";
        sketch.Rectangle(new(4, axis - 4, 18, axis + 4), Style.Area(Tones.Throw));
        sketch.Rectangle(new(18, axis - 8, zero - 24, axis + 8), Style.Outlined(Tones.Paper, Tones.Ink, 1.2));
        sketch.Rectangle(new(zero - 24, axis - 12, zero - 14, axis + 12), Style.Outlined(Tones.Paper, Tones.Ink, 1.2));
        sketch.Layer = "strip";
        if (layout.Body is { } b)
        {
            var last = layout.Stroke!.Value;
            strip.Lane(b.Pull, top, top + Lane, 0, last, b.KnobIn, b.KnobOut);
            strip.Lane(b.Push, bottom - Lane, bottom, 0, last, b.KnobIn, b.KnobOut);
            strip.Line(zero, axis, stroke, axis, Style.Line(Tones.Paper, Slip - 1));
            sketch.Layer = "bands";
            Bracket(b.PullStop, top - 8);
            Bracket(b.PushStop, bottom + 8);
        }
        else
        {
            sketch.Rectangle(new(zero + 1, top, stroke, bottom), Lines.Unknown);
            const string words = "the strip appears here";
            if (TextMeasure.Width(words, 13) < stroke - zero - 16)
                sketch.Text(0.5 * (zero + stroke), axis + 4.5, 13, words, Tones.Blue, anchor: TextAnchor.Middle);
        }

        Handle.Side(sketch, end, stroke, axis, Math.Min(56, options.Height - 18));
        sketch.Layer = "stops";
        // The sheet goes the whole height, so that it is one sheet through all rows.
        var sheet = new Box(zero - 14, -1, zero, options.Height + 1);
        sketch.Rectangle(new(sheet.Left, 0, sheet.Right, options.Height), Style.Area(Tones.Paper));
        sketch.Hatch(new Box(sheet.Left, 0, sheet.Right, options.Height).Corners, 45, 5.5, Lines.HatchFixed);
        sketch.Line(sheet.Left, 0, sheet.Left, options.Height, Lines.Visible);
        sketch.Line(sheet.Right, 0, sheet.Right, options.Height, Lines.Visible);
        if (layout.Body is { } body)
        {
            if (body.KnobOut.CanBeOver || body.KnobOut.IsOver)
            {
                // Above the shank, where the knob does not hide it.
                sketch.Line(stroke, top - 16, stroke, top, Style.Line(Tones.Ink, 2.6));
                strip.Overrun(layout.Stroke!.Value, Math.Max(body.PullStop.High, body.PullStop.Nominal), top - 8, 10);
            }

            if (body.KnobIn.CanBeOver || body.KnobIn.IsOver)
                strip.Overrun(0, Math.Min(body.PushStop.Low, body.PushStop.Nominal), bottom + 8, 10);
        }

        return sketch.ToPicture(options.Width, options.Height, $"{run.Words.Name}: travel on its shank", LadderDrawing.Describe(layout));

        void Bracket(LadderBand band, double across)
        {
            double low = strip.At(band.Low), high = strip.At(band.High);
            strip.Line(low, across, high, across, Lines.Thin);
            strip.Line(low, across - 4, low, across + 4, Lines.Thin);
            strip.Line(high, across - 4, high, across + 4, Lines.Thin);
        }
    }
}
