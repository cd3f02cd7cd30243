using System.Runtime.Intrinsics;

namespace Throwright.Shapes.Distance;

/// <summary>A range of one free joint.</summary>
internal struct JointSpan
{
    public double Low, High;

    /// <summary>The range it is a half of, and its own halves; 0: none.</summary>
    public int Whole, Left, Right;

    public readonly double Middle => 0.5 * (Low + High);

    /// <summary>Halving ends where the middle is no longer a third number.</summary>
    public readonly bool CanBeCut => Middle > Low && Middle < High;
}

/// <summary>The ranges into which one free joint has been cut: every box of a search that holds the same range shares its sines.</summary>
internal sealed class JointSpans
{
    private JointSpan[] spans = new JointSpan[16];

    // Number 0 means none.
    private int count = 1, held;

    public ref readonly JointSpan this[int number] => ref spans[number];

    public int Add(double low, double high, int whole = 0)
    {
        if (count == spans.Length)
            Array.Resize(ref spans, 2 * count);
        spans[count] = new() { Low = low, High = high, Whole = whole };
        return count++;
    }

    /// <summary>The joint at one position, for what does not feel it.</summary>
    public int Held(double at) => held != 0 ? held : held = Add(at, at);

    public (int Left, int Right) Halves(int number)
    {
        if (spans[number].Left == 0)
        {
            var (low, middle, high) = (spans[number].Low, spans[number].Middle, spans[number].High);
            var left = Add(low, middle, number);
            var right = Add(middle, high, number);
            (spans[number].Left, spans[number].Right) = (left, right);
        }

        return (spans[number].Left, spans[number].Right);
    }
}

/// <summary>What a bound needs of one joint over one range of the free joint that moves it.</summary>
internal struct JointArc
{
    /// <summary>
    /// Of a turn, one lane for each corner: where the free joint is low, where it is high, and twice where the tangents at the ends
    /// meet. The arc lies in that triangle.
    /// </summary>
    /// <remarks>
    /// With a slide that goes along, (slide, cos, sin) runs up a screw line, which lies in the tetrahedron of its ends and the two
    /// points where their tangents meet the middle: tan h - h of the angle above and below it (docs/theory/clearance.md).
    /// </remarks>
    public Vector256<double> Cos, Sin, Slid;

    public double CosMiddle, SinMiddle;

    /// <summary>Of a slide: where it stands with the free joint low, high and at the middle.</summary>
    public double Low, High, Middle;

    public bool IsKnown;
}

/// <summary>One joint of a chain, as far as its own ranges go.</summary>
internal sealed class JointArcs(JointSpans spans, bool turns, double ratio, double offset)
{
    private JointArc[] arcs = new JointArc[16];

    /// <summary>What the slide that this turn takes along moves for 1 rad of it, and where that slide starts; of a turn with such a slide only.</summary>
    public (double Lead, double Offset)? Screw { get; init; }

    public double Position(double free) => offset + (ratio * free);

    public ref readonly JointArc this[int number]
    {
        get
        {
            if (number >= arcs.Length)
                Array.Resize(ref arcs, Math.Max(number + 1, 2 * arcs.Length));
            if (!arcs[number].IsKnown)
                Fill(number);
            return ref arcs[number];
        }
    }

    private void Fill(int number)
    {
        var span = spans[number];
        ref var arc = ref arcs[number];
        arc.IsKnown = true;
        (arc.Low, arc.High, arc.Middle) = (Position(span.Low), Position(span.High), Position(span.Middle));
        if (!turns)
            return;
        // Half of a range that is known: its ends are.
        double c0, s0, c1, s1;
        if (span.Whole != 0 && arcs[span.Whole] is { IsKnown: true } whole)
        {
            (c0, s0, c1, s1) = spans[span.Whole].Left == number
                ? (whole.Cos[0], whole.Sin[0], whole.CosMiddle, whole.SinMiddle)
                : (whole.CosMiddle, whole.SinMiddle, whole.Cos[1], whole.Sin[1]);
        }
        else
        {
            (s0, c0) = Math.SinCos(arc.Low);
            (s1, c1) = Math.SinCos(arc.High);
        }

        (arc.SinMiddle, arc.CosMiddle) = Math.SinCos(arc.Middle);
        var half = 0.5 * (arc.High - arc.Low);
        var far = 1 / Math.Cos(half);
        arc.Cos = Vector256.Create(c0, c1, far * arc.CosMiddle, far * arc.CosMiddle);
        arc.Sin = Vector256.Create(s0, s1, far * arc.SinMiddle, far * arc.SinMiddle);
        if (Screw is not { } screw)
            return;
        var (slid, off) = (screw.Offset + (screw.Lead * arc.Middle), screw.Lead * (Math.Tan(half) - half));
        arc.Slid = Vector256.Create(slid - (screw.Lead * half), slid + (screw.Lead * half), slid - off, slid + off);
    }
}
