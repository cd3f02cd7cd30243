using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Formats.Drawing;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Ladder;

/// <summary>The travel ladder: one layout, four ways to show it.</summary>
/// <remarks>
/// Abscissa: distance of the knob's back face from the panel, m; 0 at the IN stop. With p0, p1 the knob places at the
/// push and the pull stop of the device:
///   pull lane   cushion 0..p0, lost motion, stretch, throw, cushion p1..stroke
///   push lane   cushion 0..p0, throw, stretch, lost motion, cushion p1..stroke
/// The throw of one lane lies off that of the other by lost motion + stretch: that shift is what the hand feels.
/// </remarks>
public static partial class LadderDrawing
{
    /// <summary>How far the parts may miss the stroke, m. They are sums of at most six doubles of about 0.1 m.</summary>
    private const double Closing = 1e-9;

    /// <exception cref="ArgumentException">The parts of the ladder do not add up to the stroke.</exception>
    public static LadderLayout Layout(TravelLadder ladder, LadderLabels labels, Display display)
    {
        labels = labels.Cleaned();
        if (!(ladder.Throw > 0) || !(ladder.Stroke > 0) || !double.IsFinite(ladder.Stroke + ladder.Throw))
            throw new ArgumentException($"A ladder needs a stroke and a throw above zero; found {ladder.Stroke:g3} m and {ladder.Throw:g3} m.");
        double p0 = ladder.PushStopPlace, p1 = ladder.PullStopPlace, stretch = ladder.StretchPull + ladder.StretchPush, lost = ladder.LostMotion;
        RequireClosed(ladder.KnobIn.Nominal, p0, "the knob's in cushion and its place at the push stop");
        RequireClosed(ladder.Stroke - ladder.KnobOut.Nominal, p1, "the knob's out cushion and its place at the pull stop");
        RequireClosed(p0 + lost + stretch + ladder.Throw, p1, "lost motion, stretch and throw");
        var pull = Lane(p0, p1, ladder.Stroke, (LanePart.LostMotion, lost), (LanePart.Stretch, stretch), (LanePart.Throw, ladder.Throw));
        var push = Lane(p0, p1, ladder.Stroke, (LanePart.Throw, ladder.Throw), (LanePart.Stretch, stretch), (LanePart.LostMotion, lost));
        var tipStop = p1 + ladder.TipAtPull.Nominal;
        var tip = new List<LaneSegment> { new(LanePart.Throw, p1 - ladder.Throw, p1) };
        if (tipStop > p1)
            tip.Add(new(LanePart.Cushion, p1, tipStop));
        return new()
        {
            Labels = labels,
            Display = display,
            Stroke = ladder.Stroke,
            NotCounted = ladder.NotCounted.Select(PlainText.Clean).ToEquatableList(),
            Body = new()
            {
                Pull = pull,
                Push = push,
                Tip = new(tip.ToEquatableList()),
                PushStop = Band(ladder.KnobIn, 0, 1),
                PullStop = Band(ladder.KnobOut, ladder.Stroke, -1),
                TipStop = Band(ladder.TipAtPull, p1, 1),
                KnobIn = Cushion("cushion, knob in", 0, 1, ladder.KnobIn, ladder.Wanted, labels.KnobIn),
                KnobOut = Cushion("cushion, knob out", ladder.Stroke, -1, ladder.KnobOut, ladder.Wanted, labels.KnobOut),
                TipCushion = Cushion("cushion, conduit tip", tipStop, -1, ladder.TipAtPull, ladder.Wanted, labels.Tip),
                Throw = ladder.Throw,
                LostMotion = lost,
                Stretch = stretch,
                Wanted = ladder.Wanted,
                ToRig = ladder.ToRig,
                Table = Table(ladder),
            },
        };
    }

    /// <summary>The place that a ladder will take, while something is still to be measured.</summary>
    /// <param name="needs">What is needed, e.g. "arm, pivot to hole".</param>
    /// <param name="stroke">m; null: not known either.</param>
    public static LadderLayout Place(LadderLabels labels, Display display, IEnumerable<string> needs, double? stroke = null) => new()
    {
        Labels = labels.Cleaned(),
        Display = display,
        Stroke = stroke,
        Needs = needs.Select(PlainText.Clean).ToEquatableList(),
    };

    /// <summary>What the drawing shows, in words: for who can't see it, and for search.</summary>
    public static string Describe(LadderLayout layout)
    {
        var shown = new Marks.ShownFigures(layout.Display);
        if (layout.Body is not { } body)
            return $"No ladder yet. Needed: {string.Join("; ", layout.Needs)}.";
        var text = $"Knob stroke {shown.Length(layout.Stroke!.Value)}. Cushion, knob in ({layout.Labels.PushMeans}) {Cushion(body.KnobIn)}. "
            + $"Throw {shown.Length(body.Throw)}, lost motion {shown.Length(body.LostMotion)}, stretch {shown.Length(body.Stretch)}. "
            + $"Cushion, knob out ({layout.Labels.PullMeans}) {Cushion(body.KnobOut)}. Cushion at the conduit tip {Cushion(body.TipCushion)}.";
        return layout.NotCounted.Count == 0 ? text : $"{text} Not counted: {string.Join("; ", layout.NotCounted)}.";

        string Cushion(LadderCushion c) => $"{shown.Left(c.Nominal)}, worst case {(c.Least is { } least ? shown.Left(least) : "not bounded")}";
    }

    private static LadderLane Lane(double p0, double p1, double stroke, params ReadOnlySpan<(LanePart Part, double Size)> parts)
    {
        var segments = new List<LaneSegment>();
        if (p0 > 0)
            segments.Add(new(LanePart.Cushion, 0, p0));
        var at = p0;
        foreach (var (part, size) in parts)
        {
            if (size > 0)
                segments.Add(new(part, at, at += size));
        }

        // The last one ends at p1 itself and not at a sum that differs in its last bit.
        segments[^1] = segments[^1] with { To = p1 };

        if (p1 < stroke)
            segments.Add(new(LanePart.Cushion, p1, stroke));
        return new(segments.ToEquatableList());
    }

    private static LadderBand Band(CushionRange range, double limit, int away)
    {
        double? low = Known(range.Low95) ? limit + (away * range.Low95) : null, high = Known(range.High95) ? limit + (away * range.High95) : null;
        double? least = Known(range.Least) ? limit + (away * range.Least) : null, most = Known(range.Most) ? limit + (away * range.Most) : null;
        var nominal = limit + (away * range.Nominal);
        return away > 0 ? new(nominal, low, high, least, most) : new(nominal, high, low, most, least);
    }

    private static LadderCushion Cushion(string name, double limit, int away, CushionRange range, double wanted, Verdict? verdict) =>
        new(name, limit, away, range.Nominal, OrNull(range.Least), OrNull(range.Most), range.Low95, range.High95, wanted, verdict);

    private static EquatableList<LadderRow> Table(TravelLadder ladder)
    {
        return
        [
            Plain("stroke", ladder.Stroke),
            Of("cushion, knob in", ladder.KnobIn),
            Plain("lost motion", ladder.LostMotion),
            Plain("stretch, pulling", ladder.StretchPull),
            Plain("stretch, pushing", ladder.StretchPush),
            Plain("throw", ladder.Throw),
            Of("cushion, knob out", ladder.KnobOut),
            Of("cushion, conduit tip, at the pull stop", ladder.TipAtPull),
            Of("cushion, conduit tip, at the push stop", ladder.TipAtPush),
        ];

        static LadderRow Plain(string part, double value) => new(part, value, null, null, null, null, Rounding.Nearest);

        static LadderRow Of(string part, CushionRange r) => new(part, r.Nominal, OrNull(r.Least), OrNull(r.Most), OrNull(r.Low95), OrNull(r.High95), Rounding.Down);
    }

    private static double? OrNull(double value) => Known(value) ? value : null;

    private static bool Known(double value) => double.IsFinite(value);

    private static void RequireClosed(double a, double b, string what)
    {
        if (!(Math.Abs(a - b) <= Closing))
            throw new ArgumentException($"The ladder does not close: {what} differ by {a - b:g3} m.");
    }
}
