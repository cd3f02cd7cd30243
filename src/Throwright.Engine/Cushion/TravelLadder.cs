using Throwright.Shapes;
using Throwright.Shapes.Numerics;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Cushion;

/// <summary>Where the knob's travel goes, both ways. Lengths in m; knob places from the IN stop, positive out.</summary>
/// <remarks>
/// The parts close: Stroke = CushionIn + LostMotion + StretchPull + StretchPush + Throw + CushionOut (nominal, at
/// rigging temperature).
/// </remarks>
public sealed record TravelLadder
{
    public required double Stroke { get; init; }

    /// <summary>With its tolerance against it.</summary>
    public required double StrokeLeast { get; init; }
    public required double Throw { get; init; }
    public required double LostMotion { get; init; }
    public required double StretchPull { get; init; }
    public required double StretchPush { get; init; }

    /// <summary>Knob place where the device meets its push stop, pushing.</summary>
    public required double PushStopPlace { get; init; }

    /// <summary>Knob place where the device meets its pull stop, pulling.</summary>
    public required double PullStopPlace { get; init; }

    public required CushionRange KnobIn { get; init; }
    public required CushionRange KnobOut { get; init; }

    /// <summary>Gap between swivel and conduit tip at the pull stop and at the push stop.</summary>
    public required CushionRange TipAtPull { get; init; }
    public required CushionRange TipAtPush { get; init; }

    /// <summary>How far temperature alone moves the knob at each stop: coldest and hottest extremes, m, against rigging.</summary>
    public required Interval HeatAtPush { get; init; }
    public required Interval HeatAtPull { get; init; }

    public required SwivelPlace Setting { get; init; }

    /// <summary>Smallest knob and tip cushion wanted.</summary>
    public required double Wanted { get; init; }

    /// <summary>Parts of the chain that could not be counted, and what would count them.</summary>
    public required EquatableList<string> NotCounted { get; init; }

    /// <summary>Monte Carlo: number of installations drawn, and the seed.</summary>
    public required long Samples { get; init; }
    public required ulong Seed { get; init; }

    /// <summary>
    /// Where a light hand shall find the knob when it is rigged: at the push stop from wanted cushion and what the working
    /// hand's stretch and heat take there, the same at the pull stop. Null: the throw leaves no place that keeps both.
    /// The rigging card, the gauge to cut out and the readings all go by these.
    /// </summary>
    public KnobPlaces? ToRig
    {
        get
        {
            double used = Throw + LostMotion, low = Wanted + TakenAtPush, high = StrokeLeast - Wanted - TakenAtPull - used;
            return high >= low ? new(low, high, low + used, high + used) : null;
        }
    }

    /// <summary>The most that a working hand and heat take from the cushion at the push stop and at the pull stop, tolerances against it, m.</summary>
    public required double TakenAtPush { get; init; }
    public required double TakenAtPull { get; init; }

    /// <summary>The smallest assured margin of all four cushions decides.</summary>
    public CushionRange Governing => ((CushionRange[])[KnobIn, KnobOut, TipAtPull, TipAtPush]).MinBy(c => c.Least)!;
}

/// <summary>Knob places from the IN stop, light hand, shop temperature, m.</summary>
public readonly record struct KnobPlaces(double PushLeast, double PushMost, double PullLeast, double PullMost);

/// <summary>One cushion with all that is known of its size, m.</summary>
/// <param name="Nominal">At nominal dimensions and rigging temperature.</param>
/// <param name="Least">Proven: no combination of tolerances and temperatures gives less (tip cushions: at rigging temperature).</param>
/// <param name="Most">Proven: none gives more.</param>
/// <param name="LeastFound">A value that does occur at the worst combination found; equals Least when proven at a corner.</param>
/// <param name="Outcome">How the search for Least ended.</param>
/// <param name="Low95">95 % of installations at their worst temperature lie between Low95 and High95.</param>
/// <param name="RootSumSquare">Root of the sum of squared shares, half width about the nominal value.</param>
/// <param name="OutsideRootSumSquare">Share of samples at rigging temperature outside Nominal +/- RootSumSquare.</param>
/// <param name="ShareAbove">95 % interval of the share of installations that keep the wanted cushion at every temperature.</param>
/// <param name="Shares">How far each toleranced input moves it, largest first.</param>
/// <param name="WorstInputs">The combination that gives Least.</param>
public sealed record CushionRange(
    string Name,
    double Nominal,
    double Least,
    double Most,
    double LeastFound,
    Outcome Outcome,
    double Low95,
    double High95,
    double RootSumSquare,
    double OutsideRootSumSquare,
    Interval ShareAbove,
    EquatableList<LadderShare> Shares,
    EquatableList<LadderCorner> WorstInputs);

/// <summary>One toleranced input and how far it moves a cushion between its limits, m (half range, signed slope).</summary>
public sealed record LadderShare(string Input, string Path, double Moves, double Slope);

/// <summary>One input at its worst value.</summary>
public sealed record LadderCorner(string Input, string Path, double Value, QuantityKind Kind);

/// <summary>Where the swivel sits on the wire, in the three ways a builder can set it.</summary>
/// <param name="Kind">How it was given.</param>
/// <param name="Proposed">True: the file does not say, and the balanced place is proposed.</param>
/// <param name="WireLength">From the conduit's end at the anchor to the pin, knob pushed fully in, m.</param>
/// <param name="KnobOutAtPushStop">Light hand, device on its push stop: knob above its IN stop, m.</param>
/// <param name="KnobOutAtPullStop">The same at the pull stop, m.</param>
public sealed record SwivelPlace(SettingKind Kind, bool Proposed, double WireLength, double KnobOutAtPushStop, double KnobOutAtPullStop);

public enum SettingKind
{
    /// <summary>Both knob gaps made equal on the aircraft.</summary>
    Balanced,

    /// <summary>By the length of wire from the anchor to the pin.</summary>
    WireLength,

    /// <summary>By the knob's place with the device on its push stop.</summary>
    AtPushStop,

    /// <summary>By the knob's place with the device on its pull stop.</summary>
    AtPullStop,
}
