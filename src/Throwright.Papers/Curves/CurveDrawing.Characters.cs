using Throwright.Engine.Chain;
using Throwright.Formats.Characters;
using Throwright.Papers.Ladder;
using Throwright.Papers.Marks;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Curves;

public static partial class CurveDrawing
{
    private const int AngleRows = 4;
    private const int ForceRows = 5;

    /// <summary>The curves in characters, in the columns of the ladder above them: Braille dots, or * and o in plain.</summary>
    public static CharacterBlock Characters(LadderLayout layout, TravelCurve? curve, CurveLabels? labels = null, CharacterOptions? options = null)
    {
        labels ??= new();
        var frame = new LadderDrawing.CharacterFrame(layout, options ?? new());
        var canvas = new CharacterCanvas(frame.Width, Tones.Ink);
        var shown = new ShownFigures(layout.Display);
        if (layout.Body is not { } body || curve is null || curve.Points.Count < 2)
        {
            canvas.Put(0, 2, "lever angle and hand force: " + GapMark.Word(layout.Without), Tones.Blue, true);
            return canvas.ToBlock();
        }

        var signs = frame.Signs;
        var row = DrawPlot(
            0, AngleRows, "lever", "angle", Axis.ForAngle(curve), [AnglesPulling(curve, body)], [AnglesPushing(curve, body)], null);
        canvas.Put(0, Math.Max(frame.At(frame.Stroke), frame.At(body.PullStop.Nominal)) + 2, signs.IsPlain ? "* pull  o push" : "⠒⠒ pull  ⠐⠐ push", Tones.Ink2);
        var (pull, push) = (Forces(curve, p => p.KnobPulling, p => p.Pull, shown), Forces(curve, p => p.KnobPushing, p => p.Push, shown));
        double? limit = labels.ForceLimit is { } newtons ? shown.InForceUnit(newtons) : null;
        ForceAt[] all = [.. pull.Concat(push).SelectMany(p => p)];
        if (all.Length == 0)
        {
            canvas.Put(row + 1, 2, CharacterCanvas.Fit("hand " + labels.ForceNeeds, frame.Width - 2, signs.Dots), Tones.Blue, true);
            return canvas.ToBlock();
        }

        row = DrawPlot(
            row + 1, ForceRows, "hand", shown.ForceUnitName, Axis.ForForce(all, limit), Nominal(pull), Nominal(push), limit);
        foreach (var (name, pieces) in ((string, IReadOnlyList<IReadOnlyList<ForceAt>>)[])[("pull", pull), ("push", push)])
        {
            if (pieces.Count == 0)
                continue;
            var text = $"{name} at most {Figure(pieces.Max(p => p.Max(f => f.Nominal)))}, worst case {Figure(pieces.Max(p => p.Max(f => f.Most)))} {shown.ForceUnitName}";
            canvas.Put(row++, 4, signs.Fit(text), Tones.Ink);
        }

        if (limit is not null)
            canvas.Put(row, 4, CharacterCanvas.Fit(signs.Fit($"{(signs.IsPlain ? "=" : "━")} {labels.LimitName}, {shown.Force(labels.ForceLimit!.Value, Rounding.Nearest)}"), frame.Width - 4, signs.Dots), Tones.Ink);
        return canvas.ToBlock();

        static IReadOnlyList<IReadOnlyList<(double Place, double Value)>> Nominal(IReadOnlyList<IReadOnlyList<ForceAt>> pieces) =>
            [.. pieces.Select(p => (IReadOnlyList<(double, double)>)[.. p.Select(f => (f.Place, f.Nominal))])];

        static string Figure(double force) => FigureText.Plain(force, 1, Rounding.Up);

        int DrawPlot(
            int top, int rows, string name, string unit, Axis axis, IReadOnlyList<IReadOnlyList<(double Place, double Value)>> pulling, IReadOnlyList<IReadOnlyList<(double Place, double Value)>> pushing, double? heavy)
        {
            canvas.Put(top, 2, name, Tones.Ink, true);
            canvas.Put(top + 1, 2, unit, Tones.Ink2);
            var columns = Math.Max(frame.At(frame.Stroke), frame.At(body.PullStop.Nominal)) - frame.Zero + 1;
            for (var r = 0; r < rows; r++)
            {
                canvas.Put(top + r, frame.Zero - 1, signs.Sheet, Tones.Ink);
                foreach (var (from, to) in ((int, int)[])[(frame.Zero, frame.At(body.PushStop.Nominal)), (frame.At(body.PullStop.Nominal), frame.At(frame.Stroke))])
                {
                    for (var x = from; x < to; x++)
                        canvas.Put(top + r, x, signs.IsPlain ? "." : "·", Tones.Line);
                }
            }

            var named = -1;
            foreach (var (value, figure) in axis.Figures.Reverse())
            {
                var r = RowOf(value);
                if (r <= named)
                    continue;
                var text = signs.Fit(figure);
                canvas.Put(top + r, frame.Zero - 1 - text.Length, signs.IsPlain ? text.Replace("°", " ", StringComparison.Ordinal) : text, Tones.Ink2);
                named = r;
            }

            if (heavy is { } limitValue)
            {
                for (var x = frame.Zero; x < frame.At(frame.Stroke); x++)
                    canvas.Put(top + RowOf(limitValue), x, signs.IsPlain ? "=" : "━", Tones.Ink);
            }

            if (signs.IsPlain)
            {
                Plain(pushing, "o");
                Plain(pulling, "*");
                return top + rows;
            }

            var grid = new DotGrid(columns, rows);
            foreach (var (points, dashed) in ((IReadOnlyList<IReadOnlyList<(double Place, double Value)>>, bool)[])[(pushing, true), (pulling, false)])
            {
                for (var x = 0; x < grid.Across; x++)
                {
                    if (dashed && x % 4 > 1)
                        continue;
                    if (ValueAt(points, (x + 0.5) / (2 * frame.Scale)) is { } value)
                        grid[x, DotOf(value)] = true;
                }
            }

            for (var r = 0; r < rows; r++)
            {
                for (var c = 0; c < columns; c++)
                {
                    if (grid.At(c, r) is { } dots)
                        canvas.Put(top + r, frame.Zero + c, dots.ToString(), Tones.Ink);
                }
            }

            return top + rows;

            double Share(double value) => Math.Clamp((axis.High - value) / (axis.High - axis.Low), 0, 1);

            int DotOf(double value) => (int)Math.Round(Share(value) * ((rows * 4) - 1));

            int RowOf(double value) => signs.IsPlain ? (int)Math.Round(Share(value) * (rows - 1)) : DotOf(value) / 4;

            void Plain(IReadOnlyList<IReadOnlyList<(double Place, double Value)>> points, string sign)
            {
                for (var c = 0; c < columns; c++)
                {
                    if (ValueAt(points, (c + 0.5) / frame.Scale) is { } value)
                        canvas.Put(top + RowOf(value), frame.Zero + c, sign, Tones.Ink);
                }
            }
        }
    }

    /// <summary>The curve's value at a knob place, between the points on both sides of it; null outside.</summary>
    private static double? ValueAt(IReadOnlyList<IReadOnlyList<(double Place, double Value)>> pieces, double place)
    {
        foreach (var points in pieces)
        {
            for (var i = 1; i < points.Count; i++)
            {
                var ((a, va), (b, vb)) = (points[i - 1], points[i]);
                if (place < Math.Min(a, b) || place > Math.Max(a, b))
                    continue;
                return a == b ? va : va + ((vb - va) * (place - a) / (b - a));
            }
        }

        return null;
    }
}
