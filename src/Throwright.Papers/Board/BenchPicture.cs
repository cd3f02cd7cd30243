using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Board;

/// <summary>Where the four bench figures are measured: what the guided form asks for, in blue on the parts.</summary>
public static class BenchPicture
{
    /// <param name="letters">Size of the letters; larger where the picture is shown smaller.</param>
    public static Picture Page(double letters = 13)
    {
        // Larger letters need room over the first dimension.
        var top = letters - 13;
        var sketch = new Sketch(Lines.Px) { Layer = "parts" };
        Point pivot = new(80, 150 + top), swivel = new(80, 52 + top);
        double anchor = 300, axis = 52 + top;
        // Arm with its other places in phantom.
        foreach (var lean in (double[])[-68, 68])
        {
            sketch.Polyline([pivot, new(pivot.X + lean, 80 + top)], Lines.Phantom);
            sketch.Circle(pivot.X + lean, 80 + top, 5, Lines.Phantom);
        }

        sketch.Line(swivel.X, swivel.Y, anchor - 40, axis, Style.Line(Tones.Ink, 3));
        sketch.Polygon([new(pivot.X - 9, pivot.Y), new(swivel.X - 7, swivel.Y), new(swivel.X + 7, swivel.Y), new(pivot.X + 9, pivot.Y)], Style.Outlined(Tones.Paper, Tones.Ink, 2));
        foreach (var p in (Point[])[pivot, swivel])
            sketch.Circle(p.X, p.Y, 8, Style.Outlined(Tones.Paper, Tones.Ink, 2));
        sketch.Rectangle(new(anchor - 40, axis - 5, anchor, axis + 5), Style.Outlined(Tones.Paper, Tones.Ink, 1.6));
        Hatched(new(anchor, axis - 18, anchor + 18, axis + 18));
        // The knob, at another place: in and out.
        double sheet = 400, knob = 500;
        sketch.Line(anchor + 18, axis - 4, sheet, axis - 4, Style.Line(Tones.Ink, 1.4));
        sketch.Line(anchor + 18, axis + 4, sheet, axis + 4, Style.Line(Tones.Ink, 1.4));
        Hatched(new(sheet, axis - 34, sheet + 14, axis + 34));
        sketch.Rectangle(new(sheet + 14, axis - 4, knob, axis + 4), Style.Outlined(Tones.Paper, Tones.Ink, 1.6));
        sketch.Rectangle(new(knob, axis - 24, knob + 18, axis + 24), Style.Outlined(Tones.Paper, Tones.Ink, 2));
        sketch.Rectangle(new(sheet + 15, axis - 24, sheet + 33, axis + 24), Lines.Phantom);

        sketch.Layer = "asked";
        Dimension(swivel.X, anchor, 16 + top, "anchor to swivel");
        Dimension(sheet + 14, knob, 104 + top + top, "stroke");
        sketch.Line(18, swivel.Y, 18, pivot.Y, Style.Line(Tones.Blue, 1.4));
        sketch.Line(12, swivel.Y, 70, swivel.Y, Style.Line(Tones.Blue, 1, 4, 3));
        sketch.Line(12, pivot.Y, 70, pivot.Y, Style.Line(Tones.Blue, 1, 4, 3));
        sketch.Text(8, pivot.Y + 13 + letters, letters, "pivot to hole", Tones.Blue, bold: true);
        sketch.Arc(pivot.X, pivot.Y, 40, 0.80, Math.PI - 1.60, Style.Line(Tones.Blue, 1.4));
        sketch.Text(pivot.X + 44, pivot.Y - 12, letters, "turns", Tones.Blue, bold: true);
        return sketch.ToPicture(540, 190 + top + top, "Where to measure", "From the pivot of the arm to its hole; the angle that the arm turns; from the anchor along the wire to the swivel with the arm in the middle; how far the knob pulls out of the sheet.", Tones.Paper);

        void Hatched(Box box)
        {
            sketch.Rectangle(box, Style.Area(Tones.Paper));
            sketch.Hatch(box.Corners, 45, 5.5, Lines.HatchFixed);
            sketch.Rectangle(box, Lines.Visible);
        }

        void Dimension(double from, double to, double y, string name)
        {
            sketch.Line(from, y, to, y, Style.Line(Tones.Blue, 1.4));
            foreach (var x in (double[])[from, to])
                sketch.Line(x, Math.Min(y, axis) - 2, x, Math.Max(y, axis) + 2, Style.Line(Tones.Blue, 1, 4, 3));
            sketch.Text(0.5 * (from + to), y - 4, letters, name, Tones.Blue, bold: true, anchor: TextAnchor.Middle, halo: Tones.Paper);
        }
    }
}
