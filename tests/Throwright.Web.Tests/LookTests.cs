using System.Text.RegularExpressions;
using Throwright.Engine.Model;
using Throwright.Formats.Drawing;
using Throwright.Papers.Board;
using Throwright.Papers.Marks;
using Throwright.Tests;

namespace Throwright.Web.Tests;

/// <summary>The page has the tones of the drawings, red only for handles, and nothing from elsewhere.</summary>
public class LookTests
{
    private static string Source(string path) => File.ReadAllText(Path.Combine(ApprovedText.Root, path));

    [Fact]
    public void Tones_OfThePage_AreThoseOfTheDrawings()
    {
        var css = Source("web/src/tones.css");
        var blocks = Regex.Matches(css, "color-scheme: (light|dark); ([^}]*)").Select(m => Regex.Matches(m.Groups[2].Value, "--([a-z0-9-]+): (#[0-9a-f]{6})").ToDictionary(v => v.Groups[1].Value, v => v.Groups[2].Value)).ToList();
        Assert.Equal(4, blocks.Count);
        foreach (var (block, palette) in blocks.Zip([Palettes.Day, Palettes.Lamp, Palettes.Lamp, Palettes.Print]))
            Assert.Equal(palette.Entries.Select(e => ($"{e.Tone}", $"{e.Colour}")).OrderBy(e => e.Item1, StringComparer.Ordinal), block.Select(e => (e.Key, e.Value)).OrderBy(e => e.Key, StringComparer.Ordinal));
        foreach (var (tone, _) in Palettes.Day.Entries)
        {
            Assert.Contains($".tw-f-{tone} {{ fill: var(--{tone}); }}", css, StringComparison.Ordinal);
            Assert.Contains($".tw-s-{tone} {{ stroke: var(--{tone}); }}", css, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Red_StandsInHandlesOnly()
    {
        // The style sheet names no colour but through tones.
        Assert.DoesNotMatch("#[0-9a-fA-F]{3,8}\\b|rgb|\\bred\\b", Source("web/src/app.css").Replace("red is on a red handle only", "", StringComparison.Ordinal).Replace("reduced", "", StringComparison.Ordinal));
        Assert.DoesNotContain("var(--knob-red)", Source("web/src/app.css"), StringComparison.Ordinal);
        var face = Handle.Face(new CockpitEnd { KnobColour = "red" }, "FUEL");
        Assert.All(face.Shapes.Where(s => SvgWriter.Write(face with { Shapes = [s] }, Palettes.FromPage).Contains("knob-red", StringComparison.Ordinal)), s => Assert.Equal(Handle.Layer, s.Layer));
        Assert.Contains(face.Shapes, s => s.Layer == Handle.Layer);
        // A colour is a word of its own: a coloured knob is not a red one.
        Assert.DoesNotContain("knob-red", SvgWriter.Write(Handle.Face(new CockpitEnd { KnobColour = "cream coloured" }, "HEAT"), Palettes.FromPage), StringComparison.Ordinal);
    }

    [Fact]
    public void Page_ComesFromThisComputerOnly_AndItsLockNamesNoRegistry()
    {
        Assert.True(PageFiles.AreThere);
        Assert.DoesNotContain("resolved", Source("web/package-lock.json"), StringComparison.Ordinal);
        Assert.DoesNotMatch("url\\(['\"]?(https?:)?//", PageFiles.Text("app.css")!);
        Assert.DoesNotMatch("(src|href)=['\"]https?://", PageFiles.Text("page.js")!);
    }
}
