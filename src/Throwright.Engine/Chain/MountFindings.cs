using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Mount;
using Throwright.Engine.Sources;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>How the handle stands to the pilot, and what a lean asks of the mount.</summary>
internal static class MountFindings
{
    public const string LeanFormula = "tan a = sqrt(tan^2 A + tan^2 B)", FacingFormula = "cos f = s.(e - k) / |e - k|, knob pushed in; s shank, e eye, k middle of the knob";

    private static readonly SourceRef Theory = new("project", "docs/theory/mount.md", Evidence.Derived);

    public static IEnumerable<Finding> Of(Aircraft aircraft, RunAnswer answer, FigureWriter say)
    {
        if (answer.Clearance is not { Handle: { } handle } clearance)
            yield break;
        if (handle.Tilt != Tilt.None)
        {
            foreach (var finding in MountRules.OfLean(handle.Tilt.Total, MountLimits.Usual, say, MadeParts.IsPinned(answer.Run)))
                yield return finding with { Figure = "tilt" };
        }

        if (RoomOf(clearance, say) is { } room)
            yield return room;
        if (ReachOf(aircraft, handle, handle.Tilt, handle.Length) is { } reach)
        {
            var reached = reach.Farthest <= reach.Most;
            yield return new()
            {
                Rule = MountRules.Reach,
                Verdict = reached ? Verdict.Clear : Verdict.Caution,
                Sentence = reached
                    ? $"The knob is at most {say.Length(reach.Farthest, Rounding.Up)} from the shoulder; {reach.Who} reaches {say.Length(reach.Most, Rounding.Down)}."
                    : $"The knob is {say.Length(reach.Farthest, Rounding.Up)} from the shoulder, farther than {reach.Who} reaches: {say.Length(reach.Most, Rounding.Down)}.",
                Figure = "reach",
                Limit = new(reach.Most, QuantityKind.Length, false),
                Sources = [.. reach.Sources],
                Why = reached ? "" : "Harness locked. A control that is used in flight, and above all in an emergency, must be reached without leaning.",
            };
        }
    }

    public static IEnumerable<Figure> Figures(Aircraft aircraft, RunAnswer answer)
    {
        if (answer.Clearance is not { Handle: { } handle } clearance)
            yield break;
        if (handle.Tilt != Tilt.None)
        {
            yield return new()
            {
                Id = "tilt",
                Name = "lean of the shank against the sheet's normal",
                Kind = QuantityKind.Angle,
                Value = handle.Tilt.Total,
                Rounding = Rounding.Up,
                Formula = LeanFormula,
                Inputs =
                [
                    new("A", "lean toward up in the sheet", Math.Atan(handle.Tilt.Up), QuantityKind.Angle, From: "cockpitEnd.tilt.up"),
                    new("B", "lean toward right", Math.Atan(handle.Tilt.Right), QuantityKind.Angle, From: "cockpitEnd.tilt.right"),
                ],
                Sources = [Theory],
            };
        }

        if (clearance.Rooms.Count > 0)
        {
            var nearest = clearance.Rooms.MinBy(r => r.Lower / r.Wanted.Value)!;
            yield return new()
            {
                Id = "hand-room",
                Name = $"room for a hand: the knob, all over its travel, from {nearest.Other}",
                Kind = QuantityKind.Length,
                Value = nearest.Lower,
                Rounding = Rounding.Down,
                Formula = "least distance of the knob alone over all joint positions, worked out up to what is wanted",
                Steps = [new("w", "wanted", nearest.Wanted.Value, QuantityKind.Length)],
                Sources = [new("project", "docs/theory/clearance.md", Evidence.Derived), nearest.Wanted.Source],
            };
        }

        if (ReachOf(aircraft, handle, handle.Tilt, handle.Length) is { } reach)
        {
            yield return new()
            {
                Id = "reach",
                Name = "shoulder to the middle of the knob, at its farthest",
                Kind = QuantityKind.Length,
                Value = reach.Farthest,
                Rounding = Rounding.Up,
                Formula = "the larger of the distances with the knob in and out; both ends, because a straight travel is farthest at an end",
                Steps = [new("r", $"reach of {reach.Who}", reach.Most, QuantityKind.Length)],
                Sources = [.. reach.Sources],
                Holds = "harness locked; no arm or seat in the way",
            };
        }

        if (FacingOf(aircraft, handle, handle.Tilt, handle.Length) is { } facing)
        {
            yield return new()
            {
                Id = "facing",
                Name = "angle between the shank and the line from knob to eye",
                Kind = QuantityKind.Angle,
                Value = facing,
                Formula = FacingFormula,
                Sources = [Theory],
                Holds = "for information: no published limit was found",
            };
        }
    }

    /// <summary>How far the hand must reach, and how far the smallest who shall reach does.</summary>
    public static (double Farthest, double Most, string Who, SourceRef[] Sources)? ReachOf(Aircraft aircraft, HandleMount handle, Tilt tilt, double length)
    {
        if (aircraft.Pilot is not { Shoulder: { } shoulder } pilot)
            return null;
        var from = HandleMount.Vector(shoulder);
        var farthest = Math.Max((handle.KnobAt(tilt, length, 0) - from).Size, (handle.KnobAt(tilt, length, handle.Travel) - from).Size) + HandleMount.Unsureness(shoulder) + handle.Unsure;
        var size = pilot.Smallest ?? PilotSize.Woman5;
        var table = Published.Table("people/reach");
        // Where a size is not published, the next smaller one is: women of the 95th percentile.
        var row = table.Rows.FirstOrDefault(r => r.Find("size")!.Text == LegSize.NameOf(size)) ?? table.Rows.First(r => r.Find("size")!.Text == "woman50");
        // A round knob is pinched, beyond the fist that a T-handle or lever wants.
        var pinch = handle.Run.CockpitEnd!.Knob == KnobShape.Round
            ? Published.Get("people/pinch-more").Value * Published.Table("people/seated").Rows.First(r => r.Find("size")!.Text == LegSize.NameOf(size)).Si("hand")
            : 0;
        return pilot.Reach is { } own
            ? (farthest, own.Metres + pinch, "your arm", [new("project", "your own figure, typed into the file", Evidence.CommonPractice)])
            : (farthest, row.Si("grip") + pinch, Who(size), [table.Source, .. pinch > 0 ? [Published.Get("people/pinch-more").Source] : Array.Empty<SourceRef>()]);
    }

    /// <summary>Angle between shank and the line to the eye, knob pushed in.</summary>
    public static double? FacingOf(Aircraft aircraft, HandleMount handle, Tilt tilt, double length) =>
        aircraft.Pilot?.Eye is { } eye ? Vector3.AngleBetween(handle.Frame.ShankAt(tilt), HandleMount.Vector(eye) - handle.KnobAt(tilt, length, 0)) : null;

    /// <summary>The tilt at which the shank points at the eye; null: no eye in the file, or it is behind the sheet.</summary>
    public static Tilt? TowardEye(Aircraft aircraft, HandleMount handle)
    {
        if (aircraft.Pilot?.Eye is not { } eye)
            return null;
        // The knob lies on the shank's line from the foot, so the line to the eye is the same from both.
        var (frame, toEye) = (handle.Frame, HandleMount.Vector(eye) - handle.Frame.Foot);
        var ahead = Vector3.Dot(toEye, frame.Normal);
        return ahead > 1e-6 ? new(Vector3.Dot(toEye, frame.Up) / ahead, Vector3.Dot(toEye, frame.Right) / ahead) : null;
    }

    private static string Who(PilotSize size) => size switch
    {
        PilotSize.Woman5 => "a small woman (5th percentile)",
        PilotSize.Woman50 => "a woman of middle size",
        PilotSize.Woman95 => "a woman of middle size or taller",
        PilotSize.Man5 => "a small man (5th percentile)",
        PilotSize.Man50 => "a man of middle size",
        _ => "a large man (95th percentile)",
    };

    private static Finding? RoomOf(RunClearance clearance, FigureWriter say)
    {
        if (clearance.Rooms.Count == 0)
            return null;
        // What touches is told as such; a room of nothing beside it says no more.
        var touching = clearance.Pairs.Where(p => p.Hits).Select(clearance.Other).ToHashSet(StringComparer.Ordinal);
        var tight = clearance.Rooms.Where(r => !(r.Lower >= r.Wanted.Value) && !touching.Contains(r.Other)).OrderBy(r => r.Lower / r.Wanted.Value).ToList();
        if (tight.Count == 0)
        {
            if (touching.Count > 0)
                return null;
            var hand = Published.Get("clearance/hand-bare");
            return new()
            {
                Rule = MountRules.HandRoom,
                Verdict = Verdict.Clear,
                Sentence = $"A bare hand finds {say.Length(hand.Value)} all round the knob in every position.",
                Figure = "hand-room",
                Limit = new(hand.Value, QuantityKind.Length, true),
                Sources = [hand.Source],
            };
        }

        var worst = tight[0];
        var more = tight.Count == 1 ? "" : $" So it does from {string.Join(", ", tight.Skip(1).Select(r => r.Other))}.";
        return new()
        {
            Rule = MountRules.HandRoom,
            Verdict = Verdict.Caution,
            Sentence = worst.Upper < worst.Wanted.Value
                ? $"The hand has only {say.Length(worst.Upper, Rounding.Down)} between the knob and {worst.Other}, wanted {say.Length(worst.Wanted.Value)}."
                : $"Can't tell yet whether the hand has {say.Length(worst.Wanted.Value)} between the knob and {worst.Other}; {say.Length(worst.Lower, Rounding.Down)} is proved.",
            Figure = "hand-room",
            Limit = new(worst.Wanted.Value, QuantityKind.Length, true),
            Sources = [worst.Wanted.Source],
            Why = "Knuckles round a knob want room, with gloves half as much again." + more,
        };
    }
}
