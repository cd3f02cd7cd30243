using Throwright.Engine.Model;
using Throwright.Engine.Throw;
using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>A change to a run that is tried before it is kept: the changed run, and what to type for it.</summary>
/// <param name="Edits">JSON path within the run and the new value as text, for --try and --write.</param>
public sealed record Trial(Run Run, EquatableList<TrialEdit> Edits)
{
    /// <summary>Any value, however many places it has: for a search, not for the file.</summary>
    public static (Toleranced<Length> Value, string Text) Free(Toleranced<Length> wanted) => (wanted, "");

    public static Trial Radius(Run run, double radius, TypedLength typed)
    {
        var lever = run.LeverEnd!;
        var (value, text) = typed(lever.Radius!.Value.At(radius));
        return new(run with { LeverEnd = lever with { Radius = value } }, [new("leverEnd.arm.radius", text)]);
    }

    public static Trial Stroke(Run run, double stroke, TypedLength typed)
    {
        var end = run.CockpitEnd!;
        var (value, text) = typed(end.Stroke!.Value.At(stroke));
        return new(run with { CockpitEnd = end with { Stroke = value } }, [new("cockpitEnd.stroke", text)]);
    }

    /// <summary>The swivel moved along the wire so that the knob stands <paramref name="outward"/> m farther out (negative: in).</summary>
    public static Trial Slide(Run run, double outward, TypedLength typed)
    {
        var swivel = run.LeverEnd!.Swivel;
        if (swivel.Rigged is { } rigged)
        {
            var (place, placeText) = typed(rigged.KnobOut.At(rigged.KnobOut.Nominal.Metres + outward));
            return new(With(run, swivel with { Rigged = rigged with { KnobOut = place } }), [new("leverEnd.swivel.rigged.knobOut", placeText)]);
        }

        var (at, text) = typed(swivel.At!.Value.At(swivel.At.Value.Nominal.Metres + outward));
        return new(With(run, swivel with { At = at }), [new("leverEnd.swivel.at", text)]);
    }

    /// <summary>
    /// The arm turned on its spindle by <paramref name="turn"/> rad: the sweep is the device's, so both ends move, and
    /// with them the places where its torque is known.
    /// </summary>
    /// <param name="isFree">For a search: angles with all their places, not as they are typed.</param>
    public static Trial Clocking(Run run, double turn, bool isFree = false)
    {
        var lever = run.LeverEnd!;
        (Toleranced<Angle> Value, string Text) Turned(Toleranced<Angle> of)
        {
            var to = of.At(of.Nominal.Radians + turn);
            if (isFree)
                return (to, "");
            var text = Degrees(to);
            return UnitText.TryRead<Angle>(text, out var read, out var problem) ? (read, text) : throw new InvalidOperationException($"\"{text}\": {problem}");
        }

        var (from, fromText) = Turned(lever.From!.Value);
        var (to, toText) = Turned(lever.To!.Value);
        var edits = new List<TrialEdit> { new("leverEnd.sweep", $"{{ \"from\": \"{fromText}\", \"to\": \"{toText}\" }}", IsJson: true) };
        Angle Moved(Angle of, string path)
        {
            var (value, text) = Turned(Toleranced<Angle>.Exact(of));
            edits.Add(new(path, text));
            return value.Nominal;
        }

        var load = lever.Load is { } l
            ? l with
            {
                TorqueTable = l.TorqueTable.Select((row, i) => row with { Arm = Moved(row.Arm, $"leverEnd.load.torqueTable[{i}][0]") }).ToEquatableList(),
                Detents = l.Detents.Select((d, i) => d with { At = Moved(d.At, $"leverEnd.load.detents[{i}].at") }).ToEquatableList(),
            }
            : null;
        return new(run with { LeverEnd = lever with { From = from, To = to, Load = load } }, edits.ToEquatableList());
    }

    /// <summary>The anchor moved in the arm's plane: back along the conduit, and square to it (m). Null: the bench rule fixes it.</summary>
    public static Trial? Anchor(Run run, LeverPlacement placement, double back, double across, TypedLength typed)
    {
        ArgumentNullException.ThrowIfNull(placement);
        var lever = run.LeverEnd!;
        if (lever.Bench is { } bench)
        {
            if (across != 0 && bench.Rule != AnchorRule.Offset)
                return null;
            if (bench.Distance.Nominal.Metres + back <= 0)
                return null;
            var moved = bench;
            var edits = new List<TrialEdit>();
            if (back != 0)
            {
                var (distance, text) = typed(bench.Distance.At(bench.Distance.Nominal.Metres + back));
                moved = moved with { Distance = distance };
                edits.Add(new("leverEnd.bench.distance", text));
            }

            if (bench.Offset is { } offset && across != 0)
            {
                // The offset counts along the arm at angle 0; away from the pivot is the swivel's side.
                var away = Directions(placement.Case).Side.X < 0 ? -across : across;
                var (place, text) = typed(offset.At(offset.Nominal.Metres + away));
                moved = moved with { Offset = place };
                edits.Add(new("leverEnd.bench.offset", text));
            }

            return new(run with { LeverEnd = lever with { Bench = moved } }, edits.ToEquatableList());
        }

        var placed = lever.Placed!;
        var (along, side) = Directions(placement.Case);
        var shift = (-back * along) + (across * side);
        // Arm axes to aircraft axes: each aircraft axis was expressed in arm axes, so the dot products give it back.
        var (x, y, z) = placement.Axes;
        var at = placed.Anchor;
        var station = typed(at.Station.At(at.Station.Nominal.Metres + Vector3.Dot(shift, x)));
        var buttline = typed(at.Buttline.At(at.Buttline.Nominal.Metres + Vector3.Dot(shift, y)));
        var waterline = typed(at.Waterline.At(at.Waterline.Nominal.Metres + Vector3.Dot(shift, z)));
        return new(
            run with { LeverEnd = lever with { Placed = placed with { Anchor = new(station.Value, buttline.Value, waterline.Value) } } },
            [new("leverEnd.anchor.at", $"[\"{station.Text}\", \"{buttline.Text}\", \"{waterline.Text}\"]", IsJson: true)]);
    }

    /// <summary>In the arm's plane: toward the arm along the conduit's end, and square to that, away from the pivot.</summary>
    public static (Vector3 Along, Vector3 Side) Directions(SweepCase of)
    {
        ArgumentNullException.ThrowIfNull(of);
        static Vector3 InPlane(Vector3 v) => new(v.X, v.Y, 0);
        // A conduit's end square to the arm's plane has no part in it: then the line to the swivel, or along its path.
        var swivel = of.SwivelAt(of.Mid);
        var along = ((Vector3[])[of.Along, swivel - of.Anchor, new(-swivel.Y, swivel.X, 0)]).Select(InPlane).First(v => v.Size > 1e-9 * of.Radius).Unit();
        var side = new Vector3(along.Y, -along.X, 0);
        return (along, Vector3.Dot(side, swivel) < 0 ? -side : side);
    }

    private static Run With(Run run, Swivel swivel) => run with { LeverEnd = run.LeverEnd! with { Swivel = swivel } };

    private static string Degrees(Toleranced<Angle> angle)
    {
        static string Plain(double rad) => (rad * 180 / Math.PI).ToString("0.##", System.Globalization.CultureInfo.InvariantCulture);
        return (angle.IsExact
            ? $"{Plain(angle.Nominal.Radians)} deg"
            : angle.Minus == angle.Plus
                ? $"{Plain(angle.Nominal.Radians)} deg ± {Plain(angle.Plus)} deg"
                : $"{Plain(angle.Nominal.Radians)} deg +{Plain(angle.Plus)}/-{Plain(angle.Minus)} deg") + (angle.Spread == Spread.Normal && !angle.IsExact ? " normal" : "");
    }
}

/// <summary>One member of the file to change: JSON path within the run, and its new value.</summary>
/// <param name="IsJson">The value is JSON text; otherwise it is the content of a string.</param>
public sealed record TrialEdit(string Path, string Value, bool IsJson = false);

/// <summary>A length with its limits as it is typed into the file, and the value that is read back: what is tried is what will stand there.</summary>
public delegate (Toleranced<Length> Value, string Text) TypedLength(Toleranced<Length> wanted);
