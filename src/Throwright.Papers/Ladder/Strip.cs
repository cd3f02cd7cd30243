using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Ladder;

/// <summary>Draws the parts of a ladder along the shank, lying or upright, at one true scale.</summary>
/// <param name="zero">Where the panel lies, px along.</param>
/// <param name="scale">px per metre.</param>
/// <param name="upright">Along the shank is down the paper, across is to the right.</param>
internal sealed class Strip(Sketch sketch, double zero, double scale, bool upright)
{
    /// <summary>Least width of a segment and of an overrun, px.</summary>
    public const double LeastSegment = 2;

    public const double LeastOverrun = 8;

    public double Zero => zero;

    public double Scale => scale;

    public double At(double place) => zero + (place * scale);

    public Point P(double along, double across) => upright ? new(across, along) : new(along, across);

    public Box B(double along1, double across1, double along2, double across2) =>
        upright ? new(across1, along1, across2, along2) : new(along1, across1, along2, across2);

    public void Line(double along1, double across1, double along2, double across2, Style style) =>
        sketch.Lines([new(P(along1, across1), P(along2, across2))], style);

    /// <summary>The segments of a lane in px. What is narrower than 2 px is drawn 2 px wide, at the cost of the throw.</summary>
    public IReadOnlyList<(LanePart Part, double From, double To)> Place(LadderLane lane)
    {
        var sizes = lane.Segments.Select(s => s.Size * scale).ToArray();
        var extra = 0.0;
        for (var i = 0; i < sizes.Length; i++)
        {
            if (lane.Segments[i].Part != LanePart.Throw && sizes[i] < LeastSegment)
            {
                extra += LeastSegment - sizes[i];
                sizes[i] = LeastSegment;
            }
        }

        var others = sizes.Where((_, i) => lane.Segments[i].Part != LanePart.Throw).Sum();
        var total = (lane.To - lane.From) * scale;
        for (var i = 0; i < sizes.Length; i++)
        {
            // Should even the throw be too narrow to give, all others shrink alike: the sum closes in any case.
            if (lane.Segments[i].Part == LanePart.Throw)
                sizes[i] = Math.Max(0, sizes[i] - extra);
            else if (others > total)
                sizes[i] *= total / others;
        }

        var placed = new List<(LanePart, double, double)>();
        var at = At(lane.From);
        for (var i = 0; i < sizes.Length; i++)
        {
            var to = i == sizes.Length - 1 ? At(lane.To) : at + sizes[i];
            placed.Add((lane.Segments[i].Part, at, to));
            at = to;
        }

        return placed;
    }

    /// <summary>A lane from the panel to the OUT stop; an overrun goes on through the stop into an amber block.</summary>
    public IReadOnlyList<(LanePart Part, double From, double To)> Lane(
        LadderLane lane, double across1, double across2, double from, double to, LadderCushion? low, LadderCushion? high)
    {
        var segments = Place(lane);
        sketch.Rectangle(B(at(from), across1, at(to), across2), Style.Area(Tones.Paper));
        foreach (var cushion in (LadderCushion?[])[low, high])
        {
            if (cushion is { Least: > 0 } c)
                sketch.Rectangle(Sorted(at(c.Limit), across1, at(c.Limit + (c.Away * Math.Min(c.Least.Value, c.Nominal))), across2), Style.Area(Tones.ClearWash));
        }

        double low1 = at(from), high1 = at(to);
        foreach (var (part, a, b) in segments)
        {
            double a1 = Math.Max(a, low1), b1 = Math.Min(b, high1);
            if (b1 > a1)
                Fill(part, B(a1, across1, b1, across2));
        }

        foreach (var (part, a, _) in segments.Skip(1))
        {
            if (a > low1 && a < high1)
                Line(a, across1, a, across2, Lines.Thin);
        }

        sketch.Rectangle(B(low1, across1, high1, across2), Lines.Visible);
        return segments;

        double at(double place) => At(place);
    }

    /// <summary>The bar that has run through a stop, drawn after the stop itself: it ends in an amber block.</summary>
    /// <param name="stop">Place of the stop, m.</param>
    /// <param name="end">How far the bar reaches, m.</param>
    public void RunThrough(LadderLane lane, double stop, double end, double across1, double across2)
    {
        double from = At(stop), to = At(end), outward = Math.Sign(end - stop), block = from + (outward * Math.Max(LeastOverrun, Math.Abs(to - from) + 5));
        var inset = 0.18 * (across2 - across1);
        sketch.Rectangle(Sorted(from, across1, block, across2), Style.Outlined(Tones.Amber, Tones.Ink, 1.5));
        foreach (var (part, a, b) in Place(lane))
        {
            var (a1, b1) = outward > 0 ? (Math.Max(a, from), Math.Max(b, from)) : (Math.Min(a, from), Math.Min(b, from));
            if (b1 - a1 >= 0.5)
                Fill(part, B(a1, across1 + inset, b1, across2 - inset));
        }
    }

    /// <summary>Worst case beyond a stop: a block from the stop outward, never too small to see.</summary>
    /// <returns>Its outer end, px along.</returns>
    public double Overrun(double stop, double end, double across, double height)
    {
        double from = At(stop), outward = Math.Sign(end - stop), to = from + (outward * Math.Max(LeastOverrun, Math.Abs(At(end) - from)));
        sketch.Rectangle(Sorted(from, across - (0.5 * height), to, across + (0.5 * height)), Style.Outlined(Tones.Amber, Tones.Ink, 1.5));
        return to;
    }

    /// <summary>Tick nominal, bar 95 %, bracket worst case. A side without a limit ends in an arrow.</summary>
    public void Band(LadderBand band, double across)
    {
        double nominal = At(band.Nominal), low = band.Least is { } l ? At(l) : nominal - 26, high = band.Most is { } m ? At(m) : nominal + 26;
        Line(low, across, high, across, Lines.Thin);
        if (band is { Low95: { } low95, High95: { } high95 })
            sketch.Rectangle(B(At(low95), across - 2.5, At(high95), across + 2.5), Style.Area(Tones.Ink));
        End(low, band.Least is null ? -1 : 0);
        End(high, band.Most is null ? 1 : 0);
        sketch.Rectangle(B(nominal - 2.2, across - 9, nominal + 2.2, across + 9), Style.Area(Tones.Paper));
        sketch.Rectangle(B(nominal - 1, across - 9, nominal + 1, across + 9), Style.Area(Tones.Ink));

        void End(double along, int arrow)
        {
            if (arrow == 0)
                Line(along, across - 6, along, across + 6, Lines.Thin);
            else
                sketch.Polygon([P(along, across), P(along - (9 * arrow), across - 3.5), P(along - (9 * arrow), across + 3.5)], Style.Area(Tones.Ink));
        }
    }

    /// <summary>Lowest and highest px that a band takes.</summary>
    public (double Low, double High) Reach(LadderBand band) =>
        (Math.Min(At(band.Low), At(band.Nominal) - (band.Least is null ? 27 : 3)), Math.Max(At(band.High), At(band.Nominal) + (band.Most is null ? 27 : 3)));

    /// <summary>The sheet in section; its right (lower) edge is zero.</summary>
    public void Sheet(double thickness, double across1, double across2)
    {
        var box = B(zero - thickness, across1, zero, across2);
        sketch.Rectangle(box, Style.Area(Tones.Paper));
        sketch.Hatch(box.Corners, 45, 5.5, Lines.HatchFixed);
        sketch.Rectangle(box, Lines.Visible);
    }

    /// <summary>A heavy line with ground strokes on its far side.</summary>
    public void OutStop(double place, double across1, double across2)
    {
        var along = At(place);
        var ground = new List<Segment>();
        for (var t = across1 + 8; t <= across2; t += 7)
            ground.Add(new(P(along + 2, t), P(along + 9, t - 7)));
        sketch.Lines(ground, Lines.HatchFixed);
        Line(along, across1, along, across2, Lines.Stop);
    }

    /// <summary>Draws a stop over a bar that has run through it, with a gap on each side, as in the mark for "fail".</summary>
    public void StopOver(double along, double across1, double across2)
    {
        sketch.Rectangle(B(along - 3.6, across1 + 1.2, along + 3.6, across2 - 1.2), Style.Area(Tones.Paper));
        sketch.Rectangle(B(along - 2, across1 - 1, along + 2, across2 + 1), Style.Area(Tones.Ink));
    }

    /// <summary>A rule along the shank: ticks to one side of its line, figures beyond them.</summary>
    /// <param name="side">-1: ticks above (to the left of) the line; +1: below.</param>
    /// <param name="end">Last place that a tick may have, m.</param>
    /// <param name="nameZero">Write the 0 (not where the paper is cut there).</param>
    /// <returns>Last tick, px along.</returns>
    public double Rule(double across, int side, double end, Graduation graduation, double textSize, bool nameZero = true)
    {
        var ticks = new List<(double Along, double Length, bool Strong)>();
        var last = zero;
        for (var i = 0; i * graduation.Pitch <= end + 1e-9; i++)
        {
            last = At(i * graduation.Pitch);
            var (length, strong) = graduation.Tick(i);
            ticks.Add((last, length, strong));
        }

        sketch.Lines([.. ticks.Where(t => !t.Strong).Select(Tick)], Lines.Thin);
        sketch.Lines([.. ticks.Where(t => t.Strong).Select(Tick)], Style.Line(Tones.Ink, 1.6));
        Line(zero, across, last, across, Style.Line(Tones.Ink, 1.6));
        for (var i = 0; i * graduation.Pitch <= end + 1e-9; i++)
        {
            if (graduation.Figure(i) is not { } figure || (i == 0 && !nameZero))
                continue;
            var along = At(i * graduation.Pitch);
            var bold = !figure.Contains('/') && !figure.Contains('.') && graduation.Bold;
            if (upright)
                sketch.Text(across + (side * (graduation.LongTick + 5)), along + (0.36 * textSize), textSize, figure, Tones.Ink, bold, side < 0 ? TextAnchor.End : TextAnchor.Start, fractions: true);
            else
                sketch.Text(along, across + (side * (graduation.LongTick + 6)) + (side > 0 ? 0.73 * textSize : 0), textSize, figure, Tones.Ink, bold, TextAnchor.Middle, fractions: true);
        }

        return last;

        Segment Tick((double Along, double Length, bool Strong) t) => new(P(t.Along, across), P(t.Along, across + (side * t.Length)));
    }

    /// <summary>The outline of one segment, filled as its part is.</summary>
    public void Fill(LanePart part, Box box)
    {
        switch (part)
        {
            case LanePart.Throw:
                sketch.Rectangle(box, Style.Area(Tones.Throw));
                break;
            case LanePart.LostMotion:
                sketch.Rectangle(box, Style.Area(Tones.Paper));
                sketch.Hatch(box.Corners, -45, 5, Lines.HatchLost);
                break;
            case LanePart.Stretch:
                sketch.Rectangle(box, Style.Area(Tones.Paper));
                sketch.Dots(box, 4, 1.7, Tones.Ink);
                break;
        }
    }

    private Box Sorted(double along1, double across1, double along2, double across2) =>
        B(Math.Min(along1, along2), across1, Math.Max(along1, along2), across2);
}

/// <summary>How a rule is divided. Pitch in m from tick to tick.</summary>
internal sealed record Graduation(double Pitch, int PerFigure, Func<int, string> Name, Func<int, double> Length, double LongTick, bool Bold)
{
    private static readonly double[] InchSteps = [1.0 / 64, 1.0 / 32, 1.0 / 16, 1.0 / 8, 1.0 / 4, 1.0 / 2, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];
    private static readonly double[] MillimetreSteps = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000];

    /// <summary>The figure at tick i, null where there is none.</summary>
    public string? Figure(int i) => i % PerFigure == 0 ? Name(i) : null;

    public (double Length, bool Strong) Tick(int i)
    {
        var length = Length(i);
        return (length, length >= LongTick);
    }

    /// <summary>Inches by sixteenths with five lengths of tick and figures at the halves, coarser or finer where the scale asks for it.</summary>
    /// <param name="scale">px per metre.</param>
    public static Graduation Inch(double scale, double figureRoom)
    {
        var inch = scale * 0.0254;
        var pitch = Math.Max(First(InchSteps, inch, 4), inch >= 900 ? 1.0 / 64 : inch >= 450 ? 1.0 / 32 : 1.0 / 16);
        var figure = Math.Max(pitch, First(InchSteps, inch, figureRoom));
        if (figure < 0.5 && inch * 0.5 <= 240)
            figure = 0.5;
        var per = Math.Max(1, (int)Math.Round(figure / pitch));
        return new(pitch * 0.0254, per, i => FigureText.FractionOfInch(new(i * pitch * 0.0254))![..^3].Replace(' ', '\u00A0'), i => pitch >= 1 ? (i % per == 0 ? 18 : 10) : pitch < 0.0625 ? FineTickLength(i * pitch) : TickLength(i * pitch), 18, true);

        static double TickLength(double inches) =>
            inches % 1 == 0 ? 18 : inches % 0.5 == 0 ? 14 : inches % 0.25 == 0 ? 10 : inches % 0.125 == 0 ? 7 : 4.5;

        static double FineTickLength(double inches) =>
            inches % 0.5 == 0 ? 18 : inches % 0.25 == 0 ? 15 : inches % 0.125 == 0 ? 12 : inches % 0.0625 == 0 ? 9 : inches % 0.03125 == 0 ? 6 : 4;
    }

    /// <summary>Millimetres with figures at the tens, coarser or finer where the scale asks for it.</summary>
    public static Graduation Millimetre(double scale, double figureRoom)
    {
        var mm = scale * 0.001;
        var pitch = First(MillimetreSteps, mm, 3.4);
        if (pitch < 1 && mm < 60)
            pitch = 1;
        var figure = Math.Max(pitch, First(MillimetreSteps, mm, figureRoom));
        if (figure < 10 && mm * 10 <= 240)
            figure = 10;
        var per = Math.Max(1, (int)Math.Round(figure / pitch));
        var half = per % 2 == 0 ? per / 2 : per;
        return new(pitch * 0.001, per, i => FigureText.Plain(i * pitch, pitch * per < 1 ? 1 : 0), i => i % per == 0 ? 14 : i % half == 0 ? 10 : 6, 14, false);
    }

    private static double First(double[] steps, double pxPerUnit, double room)
    {
        foreach (var step in steps)
        {
            if (step * pxPerUnit >= room)
                return step;
        }

        return steps[^1];
    }
}
