using System.Xml.Linq;
using Throwright.Formats.Drawing;
using Throwright.Papers.Ladder;
using Throwright.Papers.Lever;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Tests;

public sealed class HostileLabelTests
{
    private const string Attack = "</text></svg><script>alert(1)</script>\"onload='x'&amp;\u001b]0;title\u0007\u202E\0";

    [Fact]
    public void Svg_LabelsThatWantToBreakOut_StayText()
    {
        var labels = new LadderLabels { Run = Attack, Device = Attack, PushMeans = Attack, PullMeans = Attack };
        var layout = LadderDrawing.Layout(LadderCases.Inches(3, 0.5, 0.05, 0.01, 0.01, 2.0, 0.4, 0.1, notCounted: [Attack]), labels, new());
        string[] files =
        [
            .. ((Picture[])[LadderDrawing.Page(layout).Picture, LadderDrawing.Upright(layout).Picture, LadderDrawing.TrueSize(layout).Picture, LadderDrawing.Page(LadderDrawing.Place(labels, new(), [Attack])).Picture])
                .Select(p => SvgWriter.Write(p, Palettes.Screen)),
            SvgWriter.Write(LeverDrawing.Page(LeverCases.Of(0.04, -45, 45, new(0.04, -0.1, 0)), labels, new()), Palettes.Screen),
        ];
        foreach (var svg in files)
        {
            var document = DrawingChecks.Parse(svg);
            Assert.Equal(["circle", "desc", "g", "path", "rect", "style", "svg", "text", "title", "tspan"], document.Descendants().Select(e => e.Name.LocalName).Append("circle").Append("tspan").Distinct().Order());
            Assert.DoesNotContain(document.Descendants().Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase));
            Assert.DoesNotContain(svg, c => (char.IsControl(c) && c != '\n') || c == '\u202E');
        }
    }

    [Fact]
    public void Characters_LabelsWithEscapeSequences_CannotDriveTheTerminal()
    {
        var layout = LadderDrawing.Layout(LadderCases.Inches(3, 0.5, 0.05, 0.01, 0.01, 2.0, 0.4, 0.1, notCounted: [Attack]), LadderCases.Flap with { Device = "\u001b[2J", PullMeans = "\r\nFAKE" }, new());
        var text = LadderDrawing.Characters(layout).Text;
        Assert.DoesNotContain(text, c => char.IsControl(c) && c != '\n');
        Assert.DoesNotContain("\nFAKE", text, StringComparison.Ordinal);
    }
}
