using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Ladder;

/// <summary>Where everything on a travel ladder lies, before anyone knows whether it is drawn, turned, printed or typed.</summary>
/// <remarks>All places are knob places in m: 0 with the knob on its IN stop, growing as it comes out.</remarks>
public sealed record LadderLayout
{
    public required LadderLabels Labels { get; init; }
    public required Display Display { get; init; }

    /// <summary>Knob stop to knob stop; null: not known yet.</summary>
    public required double? Stroke { get; init; }

    /// <summary>The ladder itself; null: an input is still needed.</summary>
    public LadderBody? Body { get; init; }

    /// <summary>What is needed before there is a ladder, or why there can be none.</summary>
    public EquatableList<string> Needs { get; init; } = [];

    /// <summary>Why there is no ladder: an input is missing, or the lever end fails.</summary>
    public Engine.Findings.Verdict Without { get; init; } = Engine.Findings.Verdict.NeedsInput;

    /// <summary>Parts of the chain that are not in the figures.</summary>
    public EquatableList<string> NotCounted { get; init; } = [];

    /// <summary>A change that is being tried; drawn in blue over the ladder as it stands.</summary>
    public LadderTry? Try { get; init; }
}

/// <summary>A remedy shown in place before it is kept.</summary>
/// <param name="PushStopPlace">Knob place at the push stop after it, m.</param>
/// <param name="PullStopPlace">Knob place at the pull stop after it, m.</param>
/// <param name="Text">Amount and direction, e.g. "0.28 in toward the tip".</param>
public sealed record LadderTry(double PushStopPlace, double PullStopPlace, string Text);

public sealed record LadderBody
{
    public required LadderLane Pull { get; init; }
    public required LadderLane Push { get; init; }

    /// <summary>The swivel's way at the lever, aligned with the pull lane at the pull stop.</summary>
    public required LadderLane Tip { get; init; }

    /// <summary>Where the device meets its push stop and its pull stop, and where the swivel would meet the conduit tip.</summary>
    public required LadderBand PushStop { get; init; }

    public required LadderBand PullStop { get; init; }
    public required LadderBand TipStop { get; init; }

    public required LadderCushion KnobIn { get; init; }
    public required LadderCushion KnobOut { get; init; }
    public required LadderCushion TipCushion { get; init; }

    public required double Throw { get; init; }
    public required double LostMotion { get; init; }
    public required double Stretch { get; init; }

    /// <summary>Least cushion wanted at each end, m.</summary>
    public required double Wanted { get; init; }

    /// <summary>Where a light hand shall find the knob at each device stop; null: no place keeps both cushions.</summary>
    public Engine.Cushion.KnobPlaces? ToRig { get; init; }

    /// <summary>Every part with its figures, for a table beside the drawing and for a screen reader.</summary>
    public required EquatableList<LadderRow> Table { get; init; }

    /// <summary>Of the two stops on the pull side, the conduit tip comes before the knob's OUT stop in the worst case.</summary>
    public bool TipGoverns => TipCushion.Worst < KnobOut.Worst;
}

public enum LanePart
{
    Cushion,
    LostMotion,
    Stretch,
    Throw,
}

/// <summary>A stretch of a lane, From &lt;= To.</summary>
public readonly record struct LaneSegment(LanePart Part, double From, double To)
{
    public double Size => To - From;
}

/// <summary>One lane, its segments end to end from left to right. A cushion that is used up has no segment.</summary>
public sealed record LadderLane(EquatableList<LaneSegment> Segments)
{
    public double From => Segments[0].From;

    public double To => Segments[^1].To;

    public LaneSegment? Find(LanePart part)
    {
        foreach (var segment in Segments)
        {
            if (segment.Part == part)
                return segment;
        }

        return null;
    }
}

/// <summary>How sure a place is. Null where no limit is known.</summary>
public sealed record LadderBand(double Nominal, double? Low95, double? High95, double? Least, double? Most)
{
    public double Low => Math.Min(Nominal, Least ?? Nominal);

    public double High => Math.Max(Nominal, Most ?? Nominal);
}

/// <summary>What is left at one end.</summary>
/// <param name="Name">E.g. "cushion, knob in".</param>
/// <param name="Limit">Place of the stop, m.</param>
/// <param name="Away">Direction from the stop into the cushion: +1 out, -1 in.</param>
/// <param name="Least">Proven least; null: not bounded.</param>
/// <param name="Verdict">Of the rule on this cushion; null: not judged.</param>
public sealed record LadderCushion(
    string Name, double Limit, int Away, double Nominal, double? Least, double? Most, double Low95, double High95, double? Wanted, Verdict? Verdict)
{
    /// <summary>For comparing: an unbounded worst case is worse than any other.</summary>
    public double Worst => Least ?? double.NegativeInfinity;

    /// <summary>Beyond the stop at nominal dimensions.</summary>
    public bool IsOver => Nominal < -Nothing;

    /// <summary>Beyond the stop in the worst case.</summary>
    public bool CanBeOver => Least < -Nothing;

    /// <summary>1 nm: what the last bits of a sum can leave of a cushion that is exactly used up.</summary>
    private const double Nothing = 1e-9;

    /// <summary>What shows on a plate: a verdict worse than clear, or a worst case beyond the stop.</summary>
    public Verdict? Plate => Verdict is { } given && given != Engine.Findings.Verdict.Clear ? given : CanBeOver ? Engine.Findings.Verdict.Fail : null;
}

/// <summary>One row of the table that goes with the drawing, m; null where the figure has no limits.</summary>
/// <param name="Rounding">Which way its figures may be rounded.</param>
public sealed record LadderRow(string Part, double Nominal, double? Least, double? Most, double? Low95, double? High95, Rounding Rounding);
