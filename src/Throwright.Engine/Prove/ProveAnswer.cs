using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Shapes;

namespace Throwright.Engine.Prove;

/// <summary>What single failures do, and what the joint is asked to bear.</summary>
public sealed record ProveAnswer
{
    public required EquatableList<FailureRow> Failures { get; init; }

    /// <summary>Force of the hand the strength is counted for, N.</summary>
    public required double LimitForce { get; init; }

    /// <summary>The builder chose it.</summary>
    public required bool IsChosen { get; init; }

    /// <summary>Bearing stress at limit times the factor of a push-pull joint, Pa; null: dimensions not given.</summary>
    public double? BearingAsked { get; init; }

    /// <summary>Each part under the limit force, and where that force goes with the device jammed.</summary>
    public EquatableList<StrengthRow> Strength { get; init; } = [];
    public EquatableList<(string Where, string Load)> JamLoads { get; init; } = [];

    /// <summary>Operating check of an emergency control, item by item; empty: it is none.</summary>
    public EquatableList<OperatingItem> Operating { get; init; } = [];

    /// <summary>What the file does not say, each with the rules that wait for it.</summary>
    public required EquatableList<NotSaid> Waiting { get; init; }
}

/// <summary>One item of the operating check of an emergency control.</summary>
/// <param name="What">"force", "travel", "time".</param>
/// <param name="Do">What is done and looked at.</param>
/// <param name="Expect">What must come out, or what is written down.</param>
/// <param name="Known">False: the file lacks what it takes to say it.</param>
public sealed record OperatingItem(string What, string Do, string Expect, bool Known, EquatableList<SourceRef> Sources);

/// <summary>A member of the file that rules wait for.</summary>
public sealed record NotSaid(string Path, string What);

public enum SingleFailure
{
    WireParts,
    SwivelSlips,
    ScrewBacksOut,
    JointComesApart,
    AnchorSlips,
    ConduitMelts,
    BracketBends,
    SpringBreaks,
    LockSticks,
    LockLetsGo,

    /// <summary>Nothing has failed: the arm stands where the wire points at the pivot.</summary>
    AtDeadCentre,
}

/// <summary>One single failure of one run.</summary>
/// <param name="Goes">Stop the device goes to; null: it stays, or that can't be told (<paramref name="Where"/> says which).</param>
/// <param name="IsSafeEnd">It is the declared safe end; null: none declared, or can't be told.</param>
public sealed record FailureRow(
    SingleFailure Failure, string What, DeviceStop? Goes, string Where, bool? IsSafeEnd, string PilotFeels, string FoundBy, string Action);
