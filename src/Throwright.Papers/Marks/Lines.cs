using Throwright.Formats.Drawing;

namespace Throwright.Papers.Marks;

/// <summary>The few lines that all drawings are made of; widths and dashes in px (1/96 in).</summary>
/// <remarks>Two widths at 2 : 1; on paper 0.6 and 0.3 mm (2.2 and 1.1 px): the least widths of ASME Y14.2 (read in excerpt).</remarks>
internal static class Lines
{
    /// <summary>One px in mm.</summary>
    public const double Px = 25.4 / 96;

    /// <summary>px in one metre at true size.</summary>
    public const double TrueSize = 96 / 0.0254;

    public static readonly Style Visible = Style.Line(Tones.Ink, 2.2);
    public static readonly Style Thin = Style.Line(Tones.Ink, 1.1);
    public static readonly Style Stop = Style.Line(Tones.Ink, 4);
    public static readonly Style Centre = Style.Line(Tones.Ink, 1.1, 14, 4, 3, 4);
    public static readonly Style Phantom = Style.Line(Tones.Ink, 1.2, 12, 3, 3, 3, 3, 3);
    public static readonly Style Unknown = Style.Line(Tones.Blue, 1.6, 7, 5);
    public static readonly Style Align = Style.Line(Tones.Ink2, 1.1, 2, 4);
    public static readonly Style Hair = Style.Line(Tones.Line, 1.1);
    public static readonly Style Leader = Style.Line(Tones.Ink, 1.1);
    public static readonly Style HatchLost = Style.Line(Tones.Ink, 2);
    public static readonly Style HatchFixed = Style.Line(Tones.Ink, 1.2);
    public static readonly Style HatchUnreached = Style.Line(Tones.Line, 1.1);
    public static readonly Style Cut = Style.Line(Tones.Ink, 1.1, 6, 4);
}
