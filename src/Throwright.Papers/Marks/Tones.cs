using Throwright.Formats.Drawing;

namespace Throwright.Papers.Marks;

/// <summary>The colour roles of all drawings. Blue is what the builder may change; red is for a red handle and nothing else.</summary>
public static class Tones
{
    /// <summary>Page ground.</summary>
    public static readonly Tone Ground = new("ground");

    /// <summary>Ground of drawings.</summary>
    public static readonly Tone Paper = new("paper");

    public static readonly Tone Ink = new("ink");

    /// <summary>Second text.</summary>
    public static readonly Tone Ink2 = new("ink2");

    /// <summary>Dividing hairline.</summary>
    public static readonly Tone Line = new("line");

    public static readonly Tone Edge = new("edge");
    public static readonly Tone Blue = new("blue");

    /// <summary>Ground of an input.</summary>
    public static readonly Tone Wash = new("wash");

    /// <summary>Mark and word of "clear".</summary>
    public static readonly Tone Clear = new("clear");

    /// <summary>Cushion that remains in the worst case.</summary>
    public static readonly Tone ClearWash = new("clear-wash");

    /// <summary>Ground of "caution" and of an overrun.</summary>
    public static readonly Tone Amber = new("amber");

    /// <summary>Letters on amber.</summary>
    public static readonly Tone OnAmber = new("on-amber");

    /// <summary>Amber as text in a terminal.</summary>
    public static readonly Tone AmberText = new("amber-text");

    public static readonly Tone Throw = new("throw");
    public static readonly Tone OnThrow = new("on-throw");

    /// <summary>Ground of "fail".</summary>
    public static readonly Tone Plate = new("plate");

    public static readonly Tone OnPlate = new("on-plate");

    /// <summary>Worst-case band of a curve.</summary>
    public static readonly Tone Band = new("band");

    /// <summary>Handles only.</summary>
    public static readonly Tone KnobBlack = new("knob-black");

    public static readonly Tone KnobRed = new("knob-red");
    public static readonly Tone KnobWhite = new("knob-white");
    public static readonly Tone KnobBlue = new("knob-blue");
}

/// <summary>What the tones look like by day, by lamp and in black on white.</summary>
public static class Palettes
{
    /// <summary>For the sun.</summary>
    public static Palette Day { get; } = Of(
        (Tones.Ground, "#eef1f1"), (Tones.Paper, "#ffffff"), (Tones.Ink, "#12181b"), (Tones.Ink2, "#4a555a"), (Tones.Line, "#c5cdd0"),
        (Tones.Edge, "#747f84"), (Tones.Blue, "#2a37a0"), (Tones.Wash, "#e6e9fb"), (Tones.Clear, "#0b6152"), (Tones.ClearWash, "#d9efe8"),
        (Tones.Amber, "#ffb412"), (Tones.OnAmber, "#12181b"), (Tones.AmberText, "#7a4a00"), (Tones.Throw, "#56646a"), (Tones.OnThrow, "#ffffff"),
        (Tones.Plate, "#12181b"), (Tones.OnPlate, "#ffffff"), (Tones.Band, "#c9d0d2"),
        (Tones.KnobBlack, "#1b1f21"), (Tones.KnobRed, "#c8102e"), (Tones.KnobWhite, "#f4f4f1"), (Tones.KnobBlue, "#2c5aa0"));

    /// <summary>For a dark garage and for night.</summary>
    public static Palette Lamp { get; } = Of(
        (Tones.Ground, "#101315"), (Tones.Paper, "#191d20"), (Tones.Ink, "#edf0ee"), (Tones.Ink2, "#a9b3b7"), (Tones.Line, "#363e42"),
        (Tones.Edge, "#7b878c"), (Tones.Blue, "#aab6ff"), (Tones.Wash, "#262d52"), (Tones.Clear, "#63cfb2"), (Tones.ClearWash, "#17362f"),
        (Tones.Amber, "#ffb930"), (Tones.OnAmber, "#12181b"), (Tones.AmberText, "#ffc65c"), (Tones.Throw, "#93a1a7"), (Tones.OnThrow, "#101315"),
        (Tones.Plate, "#f3f5f3"), (Tones.OnPlate, "#101315"), (Tones.Band, "#424b50"),
        (Tones.KnobBlack, "#050607"), (Tones.KnobRed, "#e0303f"), (Tones.KnobWhite, "#f4f4f1"), (Tones.KnobBlue, "#2c5aa0"));

    /// <summary>Black on white; greys repeat what line and hatch already say.</summary>
    public static Palette Print { get; } = Of(
        (Tones.Ground, "#ffffff"), (Tones.Paper, "#ffffff"), (Tones.Ink, "#000000"), (Tones.Ink2, "#333333"), (Tones.Line, "#999999"),
        (Tones.Edge, "#555555"), (Tones.Blue, "#000000"), (Tones.Wash, "#ffffff"), (Tones.Clear, "#000000"), (Tones.ClearWash, "#ffffff"),
        (Tones.Amber, "#ffffff"), (Tones.OnAmber, "#000000"), (Tones.AmberText, "#000000"), (Tones.Throw, "#555555"), (Tones.OnThrow, "#ffffff"),
        (Tones.Plate, "#000000"), (Tones.OnPlate, "#ffffff"), (Tones.Band, "#d0d0d0"),
        (Tones.KnobBlack, "#222222"), (Tones.KnobRed, "#777777"), (Tones.KnobWhite, "#ffffff"), (Tones.KnobBlue, "#555555"));

    /// <summary>Start of the class names in every SVG of this project.</summary>
    public const string Prefix = "tw-";

    /// <summary>For a file on its own: day, lamp where the system asks for it, black on white on paper.</summary>
    public static SvgColours Screen { get; } = new() { Usual = Day, Dark = Lamp, Printed = Print, Prefix = Prefix };

    /// <summary>Black on white everywhere.</summary>
    public static SvgColours Paper { get; } = new() { Usual = Print, Prefix = Prefix };

    /// <summary>For a drawing inside a page whose style sheet sets .tw-f-NAME and .tw-s-NAME.</summary>
    public static SvgColours FromPage { get; } = new() { Prefix = Prefix };

    private static Palette Of(params ReadOnlySpan<(Tone Tone, string Hex)> entries)
    {
        var list = new List<(Tone, Colour)>();
        foreach (var (tone, hex) in entries)
            list.Add((tone, Colour.FromHex(hex)));
        return new([.. list]);
    }
}
