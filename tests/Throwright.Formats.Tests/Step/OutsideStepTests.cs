using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Throwright.Formats.Step;
using Throwright.Shapes.Tests.Solids;

namespace Throwright.Formats.Tests.Step;

/// <summary>Open CASCADE reads each file as one closed valid solid of the right volume.</summary>
public partial class OutsideStepTests
{
    [Fact]
    public void Occt_ReadsEachFileAsOneValidSolidOfTheRightVolume()
    {
        var draw = OutsideReaders.Find("occt-draw", "occt-draw");
        using var folder = new OutsideReaders.Folder();
        var script = new StringBuilder("pload MODELING XDE\n");
        var parts = SolidCases.All.SelectMany(c => Enum.GetValues<StepSchema>().Select(s => (Case: c, Schema: s))).ToList();
        for (var i = 0; i < parts.Count; i++)
        {
            folder.Put($"p{i}.step", Encoding.ASCII.GetBytes(StepWriter.Write(parts[i].Case.Solid, StepTests.Head, parts[i].Schema)));
            script.Append(CultureInfo.InvariantCulture, $"puts \"@@{i}\"\nstepread p{i}.step a{i} *\nrenamevar a{i}_1 s{i}\nputs [nbshapes s{i}]\nputs [checkshape s{i}]\nputs [tolerance s{i}]\nputs [vprops s{i} 1e-12 -full]\n");
        }

        script.Append("exit\n");
        folder.Put("run.tcl", Encoding.ASCII.GetBytes(script.ToString()));
        var (_, said) = OutsideReaders.Run(draw, folder.Place, ["-b", "-f", "run.tcl"], OutsideReaders.OcctLibraries(folder.Place));
        var blocks = said.Split("@@");
        Assert.True(blocks.Length == parts.Count + 1, said);
        var report = new StringBuilder();
        for (var i = 0; i < parts.Count; i++)
        {
            var (body, block) = (parts[i].Case, blocks[i + 1]);
            Assert.True(Count(block, "SOLID") == 1 && Count(block, "SHELL") == 1, $"{body.Name}: {block}");
            Assert.Equal((body.Solid.Faces.Count, body.Solid.Edges.Count, body.Solid.Vertices.Count), (Count(block, "FACE"), Count(block, "EDGE"), Count(block, "VERTEX")));
            Assert.Contains("This shape seems to be valid", block, StringComparison.Ordinal);
            var gap = MaxTolerance().Matches(block).Max(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture));
            Assert.True(gap <= 1.000001e-7, $"{body.Name}: tolerance {gap}");
            var volume = double.Parse(Mass().Match(block).Groups[1].Value, CultureInfo.InvariantCulture) * 1e-9;
            report.Append(CultureInfo.InvariantCulture, $"{body.Name} {parts[i].Schema}: {(volume / body.Volume) - 1:E1}\n");
            // OCCT fits a spline to each ellipse on a cylinder; quarters keep its volume within 1e-9.
            Assert.True(Math.Abs(volume - body.Volume) <= 1e-9 * body.Volume, report.ToString());
        }
    }

    private static int Count(string block, string kind) =>
        int.Parse(Regex.Match(block, $@"\b{kind}\s*:\s*(\d+)").Groups[1].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"MAX\s*=?\s*([0-9.eE+-]+)")]
    private static partial Regex MaxTolerance();

    [GeneratedRegex(@"Mass\s*:\s*([0-9.eE+-]+)")]
    private static partial Regex Mass();
}
