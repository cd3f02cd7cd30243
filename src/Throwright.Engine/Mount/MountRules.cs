using Throwright.Engine.Findings;
using Throwright.Engine.Sources;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Mount;

/// <summary>What a mount is held against.</summary>
/// <param name="NoWedge">Tilts up to this need no wedge, rad.</param>
/// <param name="Much">Above this the stack eats the thread and the hand pulls askew, rad.</param>
/// <param name="Friction">Of wedge on sheet, at its least.</param>
public sealed record MountLimits(Limit NoWedge, Limit Much, Limit Friction)
{
    /// <summary>Common practice: there is no publication.</summary>
    public static MountLimits Usual => new(Of("mount/no-wedge"), Of("mount/much"), Of("mount/friction"));

    private static Limit Of(string id) => new(Published.Get(id).Value, Published.Get(id).Source);
}

/// <summary>Findings on the mount of a handle.</summary>
public static class MountRules
{
    public const string Tilted = "mount/tilt";
    public const string Friction = "mount/friction";
    public const string Lean = "mount/lean";
    public const string Reach = "mount/reach";
    public const string HandRoom = "mount/hand-room";

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

    /// <summary>Steepest wedge that friction alone holds: tan a = mu; rad.</summary>
    public static double SelfHolding(double friction) => Math.Atan(friction);

    /// <summary>Share of the nut's clamp force that pushes sideways beyond friction: tan(a - atan mu), 0 below the self-holding angle.</summary>
    public static double SideShare(double tilt, double friction) => Math.Max(0, Math.Tan(tilt - SelfHolding(friction)));

    /// <summary>What a lean asks of the mount; the wedges themselves are for the stage that makes them.</summary>
    /// <param name="tilt">Total, rad.</param>
    /// <param name="pinned">A pin through the sheet keys the wedges, and they are of metal: it holds them sideways too.</param>
    public static IEnumerable<Finding> OfLean(double tilt, MountLimits limits, FigureWriter say, bool pinned = false)
    {
        ArgumentNullException.ThrowIfNull(limits);
        ArgumentNullException.ThrowIfNull(say);
        if (tilt <= limits.NoWedge.Value)
        {
            yield return Of(Lean, Verdict.Clear, $"The shank leans {say.Angle(tilt, Rounding.Up)}: up to {say.Angle(limits.NoWedge.Value)} no wedge is needed.", limits.NoWedge.Source);
            yield break;
        }

        var much = tilt > limits.Much.Value;
        yield return Of(
            Lean,
            much ? Verdict.Caution : Verdict.Clear,
            much
                ? $"The shank leans {say.Angle(tilt, Rounding.Up)}; above {say.Angle(limits.Much.Value)} another place for the hole is often the better cure."
                : $"The shank leans {say.Angle(tilt, Rounding.Up)}, on a pair of wedges; usual is {say.Angle(limits.Much.Value)} or less.",
            limits.Much.Source,
            much ? "The hand pulls askew and the stack eats the thread." : "",
            new(limits.Much.Value, QuantityKind.Angle, false));
        var held = SelfHolding(limits.Friction.Value);
        var sideways = FigureText.Plain(100 * SideShare(tilt, limits.Friction.Value), 1, Rounding.Up);
        yield return Of(
            Friction,
            tilt <= held || pinned ? Verdict.Clear : Verdict.Caution,
            tilt <= held ? $"Friction holds wedges up to {say.Angle(held, Rounding.Down)}."
            : pinned ? $"Friction holds wedges up to {say.Angle(held, Rounding.Down)}; the pin carries the rest sideways, {sideways} % of the nut's clamp."
            : $"Friction holds wedges only up to {say.Angle(held, Rounding.Down)}: the shank carries the rest sideways, {sideways} % of the nut's clamp.",
            limits.Friction.Source,
            tilt <= held || pinned ? "" : "A pin through sheet and metal wedges, or a rougher face, takes the side load off the shank.",
            new(held, QuantityKind.Angle, false));
    }

    private static Finding Of(string rule, Verdict verdict, string sentence, SourceRef source, string why = "", FigureLimit? limit = null) =>
        new() { Rule = rule, Verdict = verdict, Sentence = sentence, Why = why, Limit = limit, Sources = [source] };
}
