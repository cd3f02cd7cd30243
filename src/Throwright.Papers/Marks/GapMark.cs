using Throwright.Engine.Findings;
using Throwright.Formats.Characters;
using Throwright.Formats.Drawing;

namespace Throwright.Papers.Marks;

/// <summary>The verdict as a picture of itself: a bar short of a line, at it, over it, or not drawn yet; always with the word.</summary>
public static class GapMark
{
    private const double GridWidth = 29;
    private const double GridHeight = 20;

    /// <summary>Least height of the mark, px.</summary>
    public const double LeastHeight = 17;

    public static string Word(Verdict verdict) => verdict switch
    {
        Verdict.Clear => "clear",
        Verdict.NeedsInput => "needs input",
        Verdict.Caution => "caution",
        Verdict.Fail => "fail",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "is not a verdict"),
    };

    /// <summary>Draws mark, word and what is said after it, e.g. "fail: 0.021 in too far".</summary>
    /// <param name="x">Left edge, px (right edge if <paramref name="toLeft"/>).</param>
    /// <param name="y">Upper edge, px.</param>
    /// <param name="say">What follows the word; may be empty.</param>
    /// <returns>The room taken, px.</returns>
    public static Box Draw(Sketch sketch, double x, double y, Verdict verdict, string say = "", double height = 24, bool toLeft = false)
    {
        var (text, size) = (Text(verdict, say), TypeSize(height));
        var width = Width(verdict, say, height);
        var left = toLeft ? x - width : x;
        var box = new Box(left, y, left + width, y + height);
        var (tone, ground) = Tone(verdict);
        if (ground is not null)
            sketch.Rectangle(box, verdict == Verdict.Caution ? Style.Outlined(ground, Tones.Ink, 1.5) : Style.Area(ground));
        if (verdict == Verdict.NeedsInput)
            sketch.Rectangle(box.Grown(-0.8), Style.Line(Tones.Blue, 1.6, 4, 3));
        var markHeight = Math.Max(LeastHeight, height * 0.72);
        DrawMark(sketch, left + Pad(height), y + (0.5 * (height - markHeight)), markHeight, verdict, tone);
        sketch.Text(left + Pad(height) + (markHeight * GridWidth / GridHeight) + Gap(height), y + (0.5 * height) + (0.35 * size), size, text, tone, bold: true, fractions: true);
        return box;
    }

    /// <summary>Room that <see cref="Draw"/> takes, px.</summary>
    public static double Width(Verdict verdict, string say = "", double height = 24)
    {
        var markHeight = Math.Max(LeastHeight, height * 0.72);
        return (2 * Pad(height)) + (markHeight * GridWidth / GridHeight) + Gap(height) + TextMeasure.Width(Text(verdict, say), TypeSize(height), bold: true);
    }

    /// <summary>The mark alone, for a place where the word stands beside it.</summary>
    public static void DrawMark(Sketch sketch, double x, double y, double height, Verdict verdict, Tone tone)
    {
        var k = height / GridHeight;
        switch (verdict)
        {
            case Verdict.Clear:
                Bar(1, 6, 12, 14);
                Bar(20, 2, 23, 18);
                break;
            case Verdict.Caution:
                Bar(1, 6, 19, 14);
                Bar(20, 2, 23, 18);
                break;
            case Verdict.Fail:
                Bar(1, 6, 18.2, 14);
                Bar(24, 6, 28, 14);
                Bar(19.6, 1, 22.6, 19);
                break;
            case Verdict.NeedsInput:
                sketch.Rectangle(new(x + (1.8 * k), y + (6.8 * k), x + (12.2 * k), y + (13.2 * k)), Style.Line(tone, 1.6 * k, 3 * k, 2 * k));
                Bar(20, 2, 23, 18);
                break;
        }

        void Bar(double left, double top, double right, double bottom) =>
            sketch.Rectangle(new(x + (left * k), y + (top * k), x + (right * k), y + (bottom * k)), Style.Area(tone));
    }

    /// <summary>Mark and word for a terminal. FAIL is in capitals: characters can't be printed on an ink plate everywhere.</summary>
    /// <returns>Spans of 6 + 2 + 11 characters, so that what follows lines up.</returns>
    public static CharacterLine Characters(Verdict verdict, bool plain = false)
    {
        var mark = (verdict, plain) switch
        {
            (Verdict.Clear, false) => "■■  ┃ ",
            (Verdict.Caution, false) => "■■■■┃ ",
            (Verdict.Fail, false) => "■■■■┃■",
            (Verdict.NeedsInput, false) => "┄┄┄ ┃ ",
            (Verdict.Clear, true) => "##  | ",
            (Verdict.Caution, true) => "####| ",
            (Verdict.Fail, true) => "####|#",
            _ => ". . | ",
        };
        var word = verdict == Verdict.Fail ? "FAIL" : Word(verdict);
        var tone = verdict switch { Verdict.Clear => Tones.Clear, Verdict.Caution => Tones.AmberText, Verdict.Fail => Tones.OnPlate, _ => Tones.Blue };
        return new([new($"{mark}  {word}", tone, verdict is Verdict.Fail or Verdict.Caution), new(new string(' ', 11 - word.Length), Tones.Ink)]);
    }

    private static string Text(Verdict verdict, string say) => say.Length == 0 ? Word(verdict) : $"{Word(verdict)}: {say}";

    private static double TypeSize(double height) => Math.Max(13, height * 0.58);

    private static double Pad(double height) => height * 0.3;

    private static double Gap(double height) => height * 0.3;

    private static (Tone Tone, Tone? Ground) Tone(Verdict verdict) => verdict switch
    {
        Verdict.Clear => (Tones.Clear, null),
        Verdict.Caution => (Tones.OnAmber, Tones.Amber),
        Verdict.Fail => (Tones.OnPlate, Tones.Plate),
        _ => (Tones.Blue, null),
    };
}
