using Throwright.Engine.Findings;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Mount;

/// <summary>What a mount is held against; all own choice unless the source says otherwise.</summary>
/// <param name="NoWedge">Tilts up to this need no wedge, rad.</param>
/// <param name="ThreadReach">Above this the stack eats the thread: check its reach, rad.</param>
/// <param name="ThinEdge">Least thin edge of a wedge, m.</param>
/// <param name="Cover">Least sheet under the washer beyond the slot, m.</param>
public sealed record MountLimits(Limit NoWedge, Limit ThreadReach, Limit ThinEdge, Limit Cover)
{
    /// <summary>Common practice, no publication: 2 deg, 10 deg, 1.0 mm metal at the rim (1.5 to 2 mm printed), 1 mm cover.</summary>
    public static MountLimits Usual { get; } = new(
        Of(2 * Math.PI / 180, "tilt that a plain washer takes up"),
        Of(10 * Math.PI / 180, "tilt above which thread reach is checked"),
        Of(0.001, "thin edge of a metal wedge at the rim"),
        Of(0.001, "sheet under the washer beyond the slot"));

    private static Limit Of(double value, string place) => new(value, new("common-practice", place, Evidence.CommonPractice));
}

/// <summary>Findings on the mount of a handle.</summary>
public static class MountRules
{
    public const string Tilted = "mount/tilt";
    public const string Wedge = "mount/wedge";
    public const string Thread = "mount/thread-reach";
    public const string Friction = "mount/friction";
    public const string Hole = "mount/hole";

    private static readonly SourceRef Derived = new("project", "docs/theory/mount.md", Evidence.Derived);

    /// <summary>What the search for a tilt says.</summary>
    public static Finding OfTilt(SmallestTilt found, TiltCase tilts, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(found);
        ArgumentNullException.ThrowIfNull(tilts);
        ArgumentNullException.ThrowIfNull(say);
        var wanted = say.Length(tilts.Wanted);
        var (verdict, sentence, why) = found.Ended switch
        {
            TiltEnd.Found when found.Tilt is { } t => (
                Verdict.Clear,
                t == Tilt.None
                    ? $"The handle clears by {wanted} square to the sheet."
                    : $"A tilt of {say.Angle(t.Total)} ({say.Angle(Math.Atan(t.Up))} up, {say.Angle(Math.Atan(t.Right))} right) clears by {wanted}.",
                t == Tilt.None ? "" : $"No tilt below {say.Angle(found.NoneBelow, Rounding.Down)} does."),
            TiltEnd.NoneInRange => (Verdict.Fail, $"No tilt within {say.Angle(tilts.Most)} clears by {wanted}.", "Move the handle, shorten its travel, or choose a smaller knob."),
            _ => (Verdict.Caution, $"Can't tell yet which tilt clears by {wanted}; none below {say.Angle(found.NoneBelow, Rounding.Down)} does.", "A larger budget or a finer cell settles it."),
        };
        return new() { Rule = Tilted, Verdict = verdict, Sentence = sentence, Why = why, Figure = "tilt", Sources = [Derived] };
    }

    /// <summary>What the wedges of a tilt ask for.</summary>
    /// <param name="usableThread">From the bushing's shoulder to the end of the thread, less nut, washers and the thread that must show, m; null: not measured.</param>
    /// <param name="friction">Between wedge and sheet, the least that may be.</param>
    public static IEnumerable<Finding> OfWedge(WedgePair wedge, SheetHole hole, double? usableThread, double friction, MountLimits limits, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(wedge);
        ArgumentNullException.ThrowIfNull(limits);
        ArgumentNullException.ThrowIfNull(say);
        if (wedge.Tilt <= limits.NoWedge.Value)
        {
            yield return Of(Wedge, Verdict.Clear, $"The shank leans {say.Angle(wedge.Tilt, Rounding.Up)}: up to {say.Angle(limits.NoWedge.Value)} no wedge is needed.", limits.NoWedge.Source);
            yield break;
        }

        var enough = wedge.ThinEdge >= limits.ThinEdge.Value;
        yield return Of(
            Wedge,
            enough ? Verdict.Clear : Verdict.Fail,
            $"Wedge pair for {say.Angle(wedge.Tilt)}: thin edge {say.Length(wedge.ThinEdge)}, thick edge {say.Length(wedge.ThickEdge)}, wanted {say.Length(limits.ThinEdge.Value)} or more at the rim.",
            limits.ThinEdge.Source,
            "Both sides of the sheet need one, with a key or a pin: a wedge that turns seats the nut off square.",
            new(limits.ThinEdge.Value, QuantityKind.Length, true));
        if (usableThread is { } thread)
        {
            yield return Of(
                Thread,
                thread >= wedge.Stack ? Verdict.Clear : Verdict.Fail,
                $"Wedges and sheet take {say.Length(wedge.Stack, Rounding.Up)} of thread; {say.Length(thread, Rounding.Down)} is there.",
                Derived,
                "",
                new(wedge.Stack, QuantityKind.Length, true));
        }
        else
        {
            var steep = wedge.Tilt > limits.ThreadReach.Value;
            yield return Of(
                Thread,
                steep ? Verdict.Caution : Verdict.NeedsInput,
                $"Wedges and sheet take {say.Length(wedge.Stack, Rounding.Up)} of thread: measure the bushing's.",
                steep ? limits.ThreadReach.Source : Derived,
                steep ? $"Above {say.Angle(limits.ThreadReach.Value)} the stack often leaves the nut short of thread." : "");
        }

        var holds = wedge.Tilt <= WedgeSeat.SelfHolding(friction);
        yield return Of(
            Friction,
            holds ? Verdict.Clear : Verdict.Caution,
            holds
                ? $"Friction holds wedges up to {say.Angle(WedgeSeat.SelfHolding(friction), Rounding.Down)}."
                : $"Friction holds wedges only up to {say.Angle(WedgeSeat.SelfHolding(friction), Rounding.Down)}: the shank carries the rest sideways.",
            Derived,
            holds ? "" : "A pin through sheet and wedges, or a rougher face, takes the side load off the shank.");
        var cover = wedge.CoverBeyond(hole);
        yield return Of(
            Hole,
            cover >= limits.Cover.Value ? Verdict.Clear : Verdict.Fail,
            $"The slot is {say.Length(hole.Width)} by {say.Length(hole.Length)}; the wedge reaches {say.Length(cover, Rounding.Down)} beyond its end, wanted {say.Length(limits.Cover.Value)}.",
            limits.Cover.Source,
            "",
            new(limits.Cover.Value, QuantityKind.Length, true));
    }

    private static Finding Of(string rule, Verdict verdict, string sentence, SourceRef source, string why = "", FigureLimit? limit = null) =>
        new() { Rule = rule, Verdict = verdict, Sentence = sentence, Why = why, Limit = limit, Sources = [source] };
}
