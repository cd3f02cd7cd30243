using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Make;

/// <summary>What a machinist needs to make the two wedges: the part with its dimensions, then how to make and fit the pair.</summary>
public static partial class WedgeDrawing
{
    /// <summary>Tolerances of the drawing, m and rad: common practice.</summary>
    private const double BorePlus = 0.1e-3, SquareTo = 0.05e-3, PairParallel = 0.1e-3, SpacerParallel = 0.02e-3;

    private const double Largest = 66;

    /// <summary>The part: section through the thick and the thin edge, view on the square face, view on the tilted face where it carries a pin.</summary>
    public static Picture Part(WedgePair pair, FigureWriter say, ShopTitle title, ShopPaper? paper = null)
    {
        var (page, washer) = ((paper ?? ShopPaper.A4).Turned(), pair.Washer);
        var draw = new Draughting(new Sketch());
        var scale = ScaleFor(washer.Outside);
        ShopFrame.Draw(draw, page, title, say, ScaleText(scale), 1, 2);
        var inside = ShopFrame.Inside(page);
        double big = 0.5 * washer.Outside, small = 0.5 * washer.Bore;
        double wide = 1000 * scale * washer.Outside;
        // Plan above, section below it: third angle.
        var axis = inside.Left + 34 + (0.5 * wide);
        var plan = new ShopView(new(axis, inside.Top + 18 + (0.5 * wide)), scale);
        Plan(draw, plan, washer, say);
        var top = plan.Origin.Y + (0.5 * wide) + 26;
        var section = new ShopView(new(axis, top + (1000 * scale * washer.Height)), scale);
        Section(draw, section, pair, say);
        draw.Words(axis, section.At(0, -big * washer.Tangent).Y + 16, "Section A-A", TextAnchor.Middle, bold: true);
        var column = ShopFrame.Block(page).Left;
        var y = inside.Top + 8;
        if (washer.Pin is { } pin)
            y = OnTilted(draw, column + 4, inside.Right - 2, y, scale, washer, pin, say) + 8;
        ShopFrame.Notes(draw, column, y, inside.Right - column - 3, ShopFrame.NotesEnd(page, title), ("Notes", NotesOf(pair, say, title)));
        return draw.Sketch.ToPicture(page.Width, page.Height, $"{title.Part}: the part", "Section and views of one wedge with its dimensions and notes.", Tones.Paper);
    }

    /// <summary>The pair: how it sits, how it is made of one spacer, how it is checked and fitted.</summary>
    public static Picture Pair(WedgePair pair, FigureWriter say, ShopTitle title, ShopPaper? paper = null)
    {
        var page = (paper ?? ShopPaper.A4).Turned();
        var draw = new Draughting(new Sketch());
        var inside = ShopFrame.Inside(page);
        var column = ShopFrame.Block(page).Left;
        double scale = pair.Washer.Outside <= 0.036 ? 2 : 1, spacer = Math.Min(ScaleFor(pair.Washer.Outside), ScaleFor(pair.Recipe.Length, 44));
        ShopFrame.Draw(draw, page, title with { Part = title.Part + ", pair" }, say, scale == spacer ? ScaleText(scale) : "as shown", 2, 2);
        Assembly(draw, new(new(inside.Left + (0.5 * (column - inside.Left)), inside.Top + 48), scale), pair, say);
        SpacerCut(draw, new(new(inside.Left + 52, inside.Bottom - 40), spacer), pair, say, scale == spacer ? "" : ScaleText(spacer));
        ShopFrame.Notes(draw, column, inside.Top + 8, inside.Right - column - 3, ShopFrame.NotesEnd(page, title), ("Make both of one spacer", RecipeOf(pair, say)), ("Fit them", FittingOf(pair, say)));
        return draw.Sketch.ToPicture(page.Width, page.Height, $"{title.Part}: the pair", "The wedges on the sheet in section, the spacer they are cut from, and the steps of making and fitting.", Tones.Paper);
    }

    /// <summary>Which way the shank leans, in words a person at the panel can follow.</summary>
    public static string LeanOf(Tilt tilt, FigureWriter say)
    {
        double x = Math.Cos(tilt.Azimuth), y = Math.Sin(tilt.Azimuth);
        double right = Math.Atan(Math.Tan(tilt.Angle) * x), up = Math.Atan(Math.Tan(tilt.Angle) * y);
        string Part(double angle, string one, string other) => $"{say.Angle(Math.Abs(angle))} {(angle > 0 ? one : other)}";
        const double none = 0.05 * Math.PI / 180;
        var parts = new List<string>();
        if (Math.Abs(up) >= none)
            parts.Add(Part(up, "up", "down"));
        if (Math.Abs(right) >= none)
            parts.Add(Part(right, "right", "left"));
        return string.Join(" and ", parts);
    }

    /// <summary>The largest usual scale at which the view still leaves room for its dimensions.</summary>
    private static double ScaleFor(double outside, double room = Largest)
    {
        foreach (var scale in (double[])[5, 2, 1])
        {
            if (1000 * scale * outside <= room)
                return scale;
        }

        return 0.5;
    }

    private static string ScaleText(double scale) => scale >= 1 ? $"{scale:0} : 1" : $"1 : {1 / scale:0}";
}
