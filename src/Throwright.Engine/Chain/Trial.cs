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
    public static Trial Radius(Run run, double radius, FigureWriterText typed)
    {
        var lever = run.LeverEnd!;
        return new(
            run with { LeverEnd = lever with { Radius = lever.Radius!.Value.At(radius) } },
            [new("leverEnd.arm.radius", typed(radius, lever.Radius.Value.Minus, lever.Radius.Value.Plus))]);
    }

    public static Trial Stroke(Run run, double stroke, FigureWriterText typed)
    {
        var end = run.CockpitEnd!;
        return new(
            run with { CockpitEnd = end with { Stroke = end.Stroke!.Value.At(stroke) } },
            [new("cockpitEnd.stroke", typed(stroke, end.Stroke.Value.Minus, end.Stroke.Value.Plus))]);
    }

    /// <summary>Both knob gaps equal: the place is left to the rigging.</summary>
    public static Run Balanced(Run run) =>
        run with { LeverEnd = run.LeverEnd! with { Swivel = run.LeverEnd.Swivel with { At = null, Rigged = null } } };

    /// <summary>The swivel moved along the wire so that the knob stands <paramref name="outward"/> m farther out (negative: in).</summary>
    public static Trial Slide(Run run, double outward, FigureWriterText typed)
    {
        var swivel = run.LeverEnd!.Swivel;
        if (swivel.Rigged is { } rigged)
        {
            var place = rigged.KnobOut.At(rigged.KnobOut.Nominal.Metres + outward);
            return new(
                With(run, swivel with { Rigged = rigged with { KnobOut = place } }),
                [new("leverEnd.swivel.rigged.knobOut", typed(place.Nominal.Metres, place.Minus, place.Plus))]);
        }

        var at = swivel.At!.Value.At(swivel.At.Value.Nominal.Metres + outward);
        return new(With(run, swivel with { At = at }), [new("leverEnd.swivel.at", typed(at.Nominal.Metres, at.Minus, at.Plus))]);
    }

    /// <summary>The arm turned on its spindle by <paramref name="turn"/> rad: the sweep is the device's, so both ends move.</summary>
    public static Trial Clocking(Run run, double turn)
    {
        var lever = run.LeverEnd!;
        Toleranced<Angle> from = lever.From!.Value.At(lever.From.Value.Nominal.Radians + turn), to = lever.To!.Value.At(lever.To.Value.Nominal.Radians + turn);
        return new(
            run with { LeverEnd = lever with { From = from, To = to } },
            [new("leverEnd.sweep", $"{{ \"from\": \"{Degrees(from)}\", \"to\": \"{Degrees(to)}\" }}", IsJson: true)]);
    }

    /// <summary>The anchor moved in the arm's plane: back along the conduit, and square to it (m). Null: the bench rule fixes it.</summary>
    public static Trial? Anchor(Run run, LeverPlacement placement, double back, double across, FigureWriterText typed)
    {
        ArgumentNullException.ThrowIfNull(placement);
        var lever = run.LeverEnd!;
        if (lever.Bench is { } bench)
        {
            if (across != 0 && bench.Rule != AnchorRule.Offset)
                return null;
            var distance = bench.Distance.At(bench.Distance.Nominal.Metres + back);
            if (distance.Nominal.Metres <= 0)
                return null;
            var moved = bench with { Distance = distance };
            var edits = new List<TrialEdit>();
            if (back != 0)
                edits.Add(new("leverEnd.bench.distance", typed(distance.Nominal.Metres, distance.Minus, distance.Plus)));
            if (bench.Offset is { } offset && across != 0)
            {
                moved = moved with { Offset = offset.At(offset.Nominal.Metres + across) };
                edits.Add(new("leverEnd.bench.offset", typed(moved.Offset.Value.Nominal.Metres, offset.Minus, offset.Plus)));
            }

            return new(run with { LeverEnd = lever with { Bench = moved } }, edits.ToEquatableList());
        }

        var placed = lever.Placed!;
        var (along, side) = Directions(placement.Case);
        var shift = (-back * along) + (across * side);
        // Arm axes to aircraft axes: each aircraft axis was expressed in arm axes, so the dot products give it back.
        var (x, y, z) = placement.Axes;
        var at = placed.Anchor;
        var to = new PointAt(
            at.Station.At(at.Station.Nominal.Metres + Vector3.Dot(shift, x)),
            at.Buttline.At(at.Buttline.Nominal.Metres + Vector3.Dot(shift, y)),
            at.Waterline.At(at.Waterline.Nominal.Metres + Vector3.Dot(shift, z)));
        string Text(Toleranced<Length> v) => "\"" + typed(v.Nominal.Metres, v.Minus, v.Plus) + "\"";
        return new(
            run with { LeverEnd = lever with { Placed = placed with { Anchor = to } } },
            [new("leverEnd.anchor.at", $"[{Text(to.Station)}, {Text(to.Buttline)}, {Text(to.Waterline)}]", IsJson: true)]);
    }

    /// <summary>In the arm's plane: toward the arm along the conduit's end, and square to that, away from the pivot.</summary>
    public static (Vector3 Along, Vector3 Side) Directions(SweepCase of)
    {
        ArgumentNullException.ThrowIfNull(of);
        var exit = of.Exit ?? of.SwivelAt(of.Mid) - of.Anchor;
        var along = new Vector3(exit.X, exit.Y, 0).Unit();
        var side = new Vector3(along.Y, -along.X, 0);
        return (along, Vector3.Dot(side, of.SwivelAt(of.Mid)) < 0 ? -side : side);
    }

    private static Run With(Run run, Swivel swivel) => run with { LeverEnd = run.LeverEnd! with { Swivel = swivel } };

    private static string Degrees(Toleranced<Angle> angle)
    {
        static string Plain(double rad) => (rad * 180 / Math.PI).ToString("0.##", System.Globalization.CultureInfo.InvariantCulture);
        return angle.IsExact
            ? $"{Plain(angle.Nominal.Radians)} deg"
            : angle.Minus == angle.Plus
                ? $"{Plain(angle.Nominal.Radians)} deg ± {Plain(angle.Plus)} deg"
                : $"{Plain(angle.Nominal.Radians)} deg +{Plain(angle.Plus)}/-{Plain(angle.Minus)} deg";
    }
}

/// <summary>One member of the file to change: JSON path within the run, and its new value.</summary>
/// <param name="IsJson">The value is JSON text; otherwise it is the content of a string.</param>
public sealed record TrialEdit(string Path, string Value, bool IsJson = false);

/// <summary>Writes a length with its limits as it is typed into the file.</summary>
public delegate string FigureWriterText(double metres, double minus, double plus);
