using Throwright.Engine.Model;
using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;
using Throwright.Shapes.Numerics;

namespace Throwright.Papers.Board;

/// <summary>The run from device to knob as one picture, not to scale: the six parts that one touches, each over its tab.</summary>
public static class ChainDrawing
{
    /// <summary>Share of the width at which each part begins: device, arm, anchor, conduit, sheet, knob.</summary>
    public static IReadOnlyList<double> Starts { get; } = [0, 0.14, 0.29, 0.48, 0.67, 0.85];

    public static Picture Page(Run run, double width = 1392, double height = 74)
    {
        ArgumentNullException.ThrowIfNull(run);
        var sketch = new Sketch(Lines.Px) { Layer = "device" };
        double X(double share) => share * width;
        var axis = 0.45 * height;

        // Device: a body with its axis, and the flap in it.
        double left = X(0) + 20, right = left + 58;
        sketch.Rectangle(new(left, axis - 23, right, axis + 23), Style.Outlined(Tones.Paper, Tones.Ink, 2));
        sketch.Line(left + 12, axis + 15, right - 12, axis - 15, Style.Line(Tones.Ink, 3.4));
        sketch.Circle(0.5 * (left + right), axis, 4.5, Style.Outlined(Tones.Paper, Tones.Ink, 1.6));
        var pivot = new Point(X(Starts[1]) + 34, axis + 18);
        sketch.Line(right + 4, axis, pivot.X - 12, axis, Lines.Centre);

        sketch.Layer = "arm";
        var swivel = new Point(pivot.X + 2, axis - 16);
        double tip = X(Starts[2]) + 6, anchor = tip + 26;
        sketch.Line(swivel.X, swivel.Y, tip, axis - 7, Style.Line(Tones.Ink, 1.8));
        sketch.Polygon([new(pivot.X - 9, pivot.Y), new(swivel.X - 7, swivel.Y), new(swivel.X + 7, swivel.Y), new(pivot.X + 9, pivot.Y)], Style.Area(Tones.Paper));
        sketch.Line(pivot.X - 9, pivot.Y, swivel.X - 7, swivel.Y, Lines.Visible);
        sketch.Line(pivot.X + 9, pivot.Y, swivel.X + 7, swivel.Y, Lines.Visible);
        sketch.Circle(pivot.X, pivot.Y, 9, Style.Outlined(Tones.Paper, Tones.Ink, 2));
        sketch.Circle(swivel.X, swivel.Y, 7, Style.Outlined(Tones.Paper, Tones.Ink, 2));
        sketch.Circle(swivel.X, swivel.Y, 2.6, Style.Line(Tones.Ink, 1.4));
        sketch.Circle(pivot.X, pivot.Y, 2.4, Style.Area(Tones.Ink));

        sketch.Layer = "conduit";
        // Two sides of the conduit as a slow wave from the anchor to the bushing.
        double start = anchor + 18, sheet = X(Starts[4]) + 52, end = sheet - 42;
        var waves = Math.Max(1, Math.Min(3, run.Cable?.Bends.Count ?? 1));
        foreach (var side in (double[])[-4.5, 4.5])
        {
            sketch.Polyline(Enumerable.Range(0, 81).Select(i =>
            {
                var s = i / 80.0;
                var swing = 12 * Elementary.Sin(2 * Math.PI * waves * s) * Elementary.Sin(Math.PI * s);
                return new Point(start + ((end - start) * s), axis - 7 + (7 * s) + swing + side);
            }), Style.Line(Tones.Ink, 1.4));
        }

        sketch.Layer = "anchor";
        sketch.Rectangle(new(tip, axis - 14, anchor, axis), Style.Outlined(Tones.Paper, Tones.Ink, 1.6));
        Hatched(new(anchor, axis - 21, anchor + 18, axis + 7));

        sketch.Layer = "sheet";
        sketch.Line(sheet + 12, axis - 3.5, X(Starts[5]) + 34, axis - 3.5, Style.Line(Tones.Ink, 1.8));
        sketch.Line(sheet + 12, axis + 3.5, X(Starts[5]) + 34, axis + 3.5, Style.Line(Tones.Ink, 1.8));
        sketch.Rectangle(new(end, axis - 9, sheet - 10, axis + 9), Style.Outlined(Tones.Paper, Tones.Ink, 1.6));
        sketch.Rectangle(new(sheet - 10, axis - 15, sheet, axis + 15), Style.Outlined(Tones.Paper, Tones.Ink, 1.6));
        Hatched(new(sheet, axis - 32, sheet + 12, axis + 34));
        Handle.Side(sketch, run.CockpitEnd, X(Starts[5]) + 34, axis, 52);
        return sketch.ToPicture(width, height, $"{(run.Label.Length > 0 ? run.Label : run.Id)}: from the device to the knob", "Device, arm, anchor and conduit tip, conduit, sheet and bushing, knob; not to scale.");

        void Hatched(Box box)
        {
            sketch.Rectangle(box, Style.Area(Tones.Paper));
            sketch.Hatch(box.Corners, 45, 5.5, Lines.HatchFixed);
            sketch.Rectangle(box, Lines.Visible);
        }
    }
}
