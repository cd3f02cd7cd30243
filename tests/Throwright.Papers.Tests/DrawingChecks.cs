using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;
using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Tests;

/// <summary>What holds for every drawing, whatever it shows.</summary>
internal static partial class DrawingChecks
{
    public static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>No label over another, none off the paper, nothing but finite numbers, well-formed, no red.</summary>
    /// <param name="linesMayCross">A label's halo may have to hold a line off (places that move freely).</param>
    public static void Sound(Picture picture, SvgColours? colours = null, bool linesMayCross = false)
    {
        var texts = picture.Letterings.ToArray();
        foreach (var text in texts)
            Assert.True(picture.Paper.Contains(text.Bounds), $"\"{text.PlainText}\" leaves the paper: {text.Bounds} on {picture.Width:f1} x {picture.Height:f1}");
        for (var i = 0; i < texts.Length; i++)
        {
            for (var j = 0; j < i; j++)
                Assert.False(texts[i].Bounds.Grown(-0.02).Overlaps(texts[j].Bounds), $"\"{texts[i].PlainText}\" lies over \"{texts[j].PlainText}\"");
        }

        foreach (var shape in picture.Shapes)
            Assert.True(picture.Paper.Contains(shape.Bounds, 0.01), $"{shape.Layer}: {shape.GetType().Name} leaves the paper: {shape.Bounds} on {picture.Width:f1} x {picture.Height:f1}");
        OnTheirGround(picture);
        if (!linesMayCross)
            NotStruckThrough(picture);
        var svg = SvgWriter.Write(picture, colours ?? Palettes.Screen);
        _ = Parse(svg);
        Assert.Empty(Reds(svg));
    }

    /// <summary>Light letters lie whole on the dark area that they need.</summary>
    public static void OnTheirGround(Picture picture)
    {
        foreach (var (letters, grounds) in ((Tone, Tone[])[])[(Tones.OnThrow, [Tones.Throw]), (Tones.OnPlate, [Tones.Plate])])
        {
            var areas = picture.Shapes.OfType<Outline>().Where(o => o.Style.Fill is { } fill && grounds.Contains(fill)).Select(o => o.Bounds).ToArray();
            foreach (var text in picture.Letterings.Where(t => t.Spans.Any(s => s.Tone == letters)))
                Assert.True(areas.Any(a => a.Contains(text.Bounds)), $"\"{text.PlainText}\" is not whole on its {string.Join("/", grounds.Select(g => g.Name))} ground");
        }
    }

    /// <summary>No heavy line (0.5 mm or more) runs through a label.</summary>
    public static void NotStruckThrough(Picture picture)
    {
        var heavy = new List<Segment>();
        foreach (var shape in picture.Shapes)
        {
            switch (shape)
            {
                case Segments s when s.Style.Width >= 0.5:
                    heavy.AddRange(s.Parts);
                    break;
                case Outline { Style.Stroke: not null } o when o.Style.Width >= 0.5:
                    for (var i = o.Closed ? 0 : 1; i < o.Points.Count; i++)
                        heavy.Add(new(o.Points[i == 0 ? ^1 : i - 1], o.Points[i]));
                    break;
            }
        }

        foreach (var text in picture.Letterings)
        {
            // Letters rarely fill their box: 0.6 mm may be touched.
            var box = text.Bounds.Grown(-0.6);
            if (box.Width <= 0)
                continue;
            foreach (var line in heavy)
                Assert.False(box.IsCutBy(line), $"\"{text.PlainText}\" is struck through by {line}");
        }
    }

    public static XDocument Parse(string svg)
    {
        using var reader = XmlReader.Create(new StringReader(svg), new() { DtdProcessing = DtdProcessing.Prohibit });
        return XDocument.Load(reader);
    }

    /// <summary>Colours in a file whose hue is within 25 degrees of red; greys have none.</summary>
    public static IReadOnlyList<Colour> Reds(string svg) =>
        [.. Hex().Matches(svg).Select(m => Colour.FromHex(m.Value)).Distinct().Where(c => c.Saturation > 0.2 && (c.Hue < 25 || c.Hue > 335))];

    public static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("#[0-9a-fA-F]{6}")]
    private static partial Regex Hex();
}
