using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.HandForce;

/// <summary>What the hand forces of one run are held against.</summary>
/// <param name="Comfort">Routine limit for this handle; null: the builder's own is wanted and missing.</param>
/// <param name="Ceiling">Beyond this one hand may not manage: fail.</param>
/// <param name="CeilingWhat">What the ceiling is, in words.</param>
/// <param name="Yardstick">Name of the list, and that it is a yardstick, not a rule for this handle.</param>
/// <param name="StrutMargin">Critical load over compression wanted for the bare wire.</param>
/// <param name="LockMargin">What the lock holds over what drives it, wanted.</param>
/// <param name="Estimate">Factor on a load that was not measured; null: it was.</param>
public sealed record HandForceLimits(
    Limit? Comfort, Limit Ceiling, string CeilingWhat, string Yardstick, Limit StrutMargin, Limit LockMargin, Limit? Estimate, SourceRef SelfHoldingRule, Force? PullLimit, Force? PushLimit, string CableSource, bool Emergency, CoreKind? Core);

/// <summary>Findings on forces.</summary>
public static class HandForceRules
{
    public const string Hand = "force/hand";
    public const string BareWire = "force/bare-wire";
    public const string CorePull = "force/core-pull";
    public const string CorePush = "force/core-push";
    public const string LockUp = "force/lock-up";
    public const string SelfHold = "force/self-holding";

    private static readonly SourceRef Derived = new("project", "docs/theory/hand-force.md", Evidence.Derived);
    private static readonly SourceRef Maker = new("project", "the maker's figure, typed into the file", Evidence.CommonPractice);

    public static IEnumerable<Finding> Find(HandForces forces, HandForceLimits limits, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(forces);
        ArgumentNullException.ThrowIfNull(limits);
        ArgumentNullException.ThrowIfNull(say);
        // Without a limit of the builder's own there is no verdict, except that one hand can't do it.
        if (limits.Comfort is { } comfort)
            yield return OfHand(forces, limits, comfort, say);
        else if (!(Math.Max(forces.MostPull.Worst, forces.MostPush.Worst) <= limits.Ceiling.Value))
            yield return OfHand(forces, limits, limits.Ceiling, say);
        if (forces.BareWire is { } wire)
            yield return OfBareWire(wire, limits, say);
        if (limits.PullLimit is { } pull)
            yield return OfCore(CorePull, "pulled", forces.CoreTension, pull, "core-pull", limits, say);
        if (limits.PushLimit is { } push)
            yield return OfCore(CorePush, "pushed", forces.CoreCompression, push, "core-push", limits, say);
        if (forces.InConduit is { } inside && forces.CoreCompression > 0)
            yield return OfLockUp(forces, inside, limits, say);
        if (forces.SelfHolding is { AtDevice: not 0 } hold)
            yield return OfSelfHolding(hold, limits, say);
    }

    private static Finding OfHand(HandForces forces, HandForceLimits limits, Limit comfort, FigureWriter say)
    {
        var push = forces.MostPush.Worst > forces.MostPull.Worst;
        var most = push ? forces.MostPush : forces.MostPull;
        // Comparisons are written so that a figure that is no number is never clear.
        var over = !(most.Worst <= limits.Ceiling.Value);
        // An emergency control is used once, with all one has: only the ceiling counts.
        var verdict = over ? Verdict.Fail : limits.Emergency || most.Worst <= comfort.Value ? Verdict.Clear : Verdict.Caution;
        var limit = limits.Emergency || over ? limits.Ceiling : comfort;
        var what = limits.Emergency || over ? limits.CeilingWhat : "for a routine control";
        return new()
        {
            Rule = Hand,
            Verdict = verdict,
            Sentence = double.IsPositiveInfinity(most.Nominal) ? "Pushed, the core jams in its conduit: no force of the hand moves the device."
                : double.IsPositiveInfinity(most.Worst) ? $"It takes {say.Force(most.Nominal)} to push; in the worst case the core jams in its conduit, and no force of the hand is enough."
                : $"It takes {say.Force(most.Nominal)} to {(push ? "push" : "pull")}, worst case {say.Force(most.Worst)}; the most {what} is {say.Force(limit.Value, Rounding.Nearest)}.",
            Figure = push ? "hand-push" : "hand-pull",
            Limit = new(limit.Value, QuantityKind.Force, false),
            Sources = limits.Estimate is { } estimate ? [limit.Source, estimate.Source] : [limit.Source],
            Why = limits.Estimate is { } factor
                ? $"{limits.Yardstick} The load is an estimate: the worst case takes it {FigureText.Plain(factor.Value, 2)} times; measure it on the device and say so (leverEnd.load.measured)."
                : limits.Yardstick,
        };
    }

    private static Finding OfBareWire(BareWire wire, HandForceLimits limits, FigureWriter say)
    {
        var margin = wire.Margin;
        return new()
        {
            Rule = BareWire,
            Verdict = margin >= limits.StrutMargin.Value ? Verdict.Clear : margin >= 1 ? Verdict.Caution : Verdict.Fail,
            Sentence = !(margin >= 1)
                ? $"Pushed with {say.Force(wire.Compression)} the bare wire buckles at {say.Force(wire.Critical, Rounding.Down)}."
                : $"The bare wire buckles at {say.Force(wire.Critical, Rounding.Down)}; it is pushed with up to {say.Force(wire.Compression)}, wanted {FigureText.Plain(limits.StrutMargin.Value, 1)} times that.",
            Figure = "bare-wire-margin",
            Limit = new(limits.StrutMargin.Value, QuantityKind.Ratio, true),
            Sources = [limits.StrutMargin.Source, Derived],
            Why = !(margin >= limits.StrutMargin.Value) ? $"{say.Length(wire.Length)} of wire stand bare. A shorter bare length or a thicker wire holds: the load rises with the square of both." : "",
        };
    }

    private static Finding OfCore(string rule, string how, double force, Force limit, string figure, HandForceLimits limits, FigureWriter say) => new()
    {
        Rule = rule,
        Verdict = force <= limit.Newtons ? Verdict.Clear : Verdict.Fail,
        Sentence = double.IsPositiveInfinity(force)
            ? $"The core jams, {how} with all that the hand has; its limit is {say.Force(limit.Newtons, Rounding.Nearest)}."
            : $"The core is {how} with up to {say.Force(force)}; its limit is {say.Force(limit.Newtons, Rounding.Nearest)}.",
        Figure = figure,
        Limit = new(limit.Newtons, QuantityKind.Force, false),
        Sources = [Maker],
        Why = limits.CableSource.Length > 0 ? $"Cable figures: {limits.CableSource}." : "The file does not say where the cable's figures come from.",
    };

    private static Finding OfLockUp(HandForces forces, CoreInConduit inside, HandForceLimits limits, FigureWriter say)
    {
        var most = forces.PushThrough;
        var strand = limits.Core is not (null or CoreKind.Solid);
        return new()
        {
            Rule = LockUp,
            Verdict = !(most < inside.LockUp) ? Verdict.Fail : !strand && most <= inside.LockUp / 2 ? Verdict.Clear : Verdict.Caution,
            Sentence = !(most < inside.LockUp)
                ? $"Pushed, the core jams in its conduit: at most {say.Force(inside.LockUp, Rounding.Down)} can come out, {say.Force(most)} are needed."
                : strand && double.IsPositiveInfinity(inside.LockUp)
                    ? $"A stranded core winds up when pushed; {say.Force(most)} are needed."
                : strand
                    ? $"A stranded core winds up when pushed: at most {say.Force(inside.LockUp, Rounding.Down)} can come out of the conduit, {say.Force(most)} are needed."
                    : inside.LockUp > 10 * most
                        ? $"The core does not jam in its conduit: {say.Force(most)} are needed, less than a tenth of what it lets out."
                        : $"At most {say.Force(inside.LockUp, Rounding.Down)} of push can come out of the conduit, {say.Force(most)} are needed.",
            Figure = "lock-up",
            Limit = new(most, QuantityKind.Force, true),
            Sources = [Derived],
            Why = strand ? "Its wires slide on each other, so that it is many times softer in bending than a solid wire of its size. Use it to pull only." : "",
        };
    }

    private static Finding OfSelfHolding(SelfHolding hold, HandForceLimits limits, FigureWriter say)
    {
        var toward = hold.TowardPush ? "push" : "pull";
        var verdict = hold switch
        {
            { Drive: <= 0 } => Verdict.Clear,
            { Lock: null } => Verdict.NeedsInput,
            _ when hold.Lock >= limits.LockMargin.Value * hold.Drive => Verdict.Clear,
            _ => hold.Holds ? Verdict.Caution : Verdict.Fail,
        };
        return new()
        {
            Rule = SelfHold,
            Verdict = verdict,
            Sentence = hold.Drive <= 0
                ? $"Friction holds the device against its own load with {say.Force(-hold.Drive, Rounding.Down)} at the knob to spare."
                : $"Hand off, the load can drive the knob toward its {toward} stop with {say.Force(hold.Drive)}" + hold.Lock switch
                {
                    null => "; what the lock holds is not known.",
                    <= 0 => ", and nothing holds it.",
                    { } l => $"; the lock holds {say.Force(l, Rounding.Down)}.",
                },
            Figure = "back-drive",
            Limit = hold.Lock is { } limit ? new(limit, QuantityKind.Force, false) : null,
            Sources = hold is { Drive: > 0, Lock: not null } ? [limits.SelfHoldingRule, limits.LockMargin.Source] : [limits.SelfHoldingRule],
            Why = verdict == Verdict.NeedsInput
                ? "How to get it: pull the locked knob with a spring scale until it slips. It goes to cockpitEnd.lockHolds."
                : "Taken with the least friction of its band; vibration lowers it further. A control must stay where it is put.",
        };
    }
}
