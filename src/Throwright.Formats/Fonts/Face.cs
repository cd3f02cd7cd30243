using System.Text;

namespace Throwright.Formats.Fonts;

/// <summary>One of the faces that text on paper is set in.</summary>
internal sealed class Face
{
    private static readonly Lazy<Face> LazyRegular = new(() => new("Inter-Regular")), LazyBold = new(() => new("Inter-Bold")), LazySigns = new(() => new("DejaVuSans"));

    private static readonly string[] Figures = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];

    private Face(string name)
    {
        Name = name;
        using var resource = typeof(Face).Assembly.GetManifestResourceStream(name + ".ttf")!;
        var bytes = new byte[resource.Length];
        resource.ReadExactly(bytes);
        Font = new(bytes);
    }

    public static Face Regular => LazyRegular.Value;

    public static Face Bold => LazyBold.Value;

    /// <summary>For signs that the others lack.</summary>
    public static Face Signs => LazySigns.Value;

    public string Name { get; }

    public TrueTypeFont Font { get; }

    /// <summary>Advance at type size 1.</summary>
    public double Advance(int glyph) => (double)Font.Advance(glyph) / Font.UnitsPerEm;

    /// <summary>A character in the face it is found in. Figures are all of one width, so that columns of them stand in line.</summary>
    public static (Face Face, int Glyph) Find(Rune rune, bool bold)
    {
        var face = bold ? Bold : Regular;
        var glyph = rune.Value is >= '0' and <= '9' ? face.Font.Glyph(Figures[rune.Value - '0'] + ".tf") : face.Font.Glyph(rune.Value);
        return glyph != 0 ? (face, glyph) : (Signs, Signs.Font.Glyph(rune.Value));
    }

    /// <summary>A figure above or below the stroke of a built-up fraction.</summary>
    public static (Face Face, int Glyph) FindInFraction(char figure, bool above, bool bold)
    {
        var face = bold ? Bold : Regular;
        return (face, face.Font.Glyph(Figures[figure - '0'] + (above ? ".numr" : ".dnom")));
    }
}
