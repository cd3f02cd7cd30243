using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Throwright.Formats.Tests;
using static Throwright.Cli.Tests.CommandLine;

namespace Throwright.Cli.Tests;

/// <summary>Every outside reader takes what the command writes for the example.</summary>
public sealed partial class OutsideMakeTests : IDisposable
{
    private readonly Workbench bench = new();

    public OutsideMakeTests()
    {
        var answer = Run("make", "examples/shop.throwright.json", "cabin-heat", "--out", bench.Folder, "--date", "2026-11-25");
        Assert.True(answer.Exit == 0, answer.Error);
    }

    public void Dispose() => bench.Dispose();

    private string[] Files(string ending) => [.. Directory.GetFiles(bench.Folder).Where(f => f.EndsWith(ending, StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    [Fact]
    public void Occt_ReadsEachStepAsOneValidSolid()
    {
        var draw = OutsideReaders.Find("occt-draw", "occt-draw");
        var files = Files(".step");
        Assert.Equal(3, files.Length);
        var script = new StringBuilder("pload MODELING XDE\n");
        for (var i = 0; i < files.Length; i++)
            script.Append(CultureInfo.InvariantCulture, $"puts \"@@{i}\"\nstepread {Path.GetFileName(files[i])} a{i} *\nrenamevar a{i}_1 s{i}\nputs [nbshapes s{i}]\nputs [checkshape s{i}]\n");
        File.WriteAllText(Path.Combine(bench.Folder, "run.tcl"), script.Append("exit\n").ToString());
        var (_, said) = OutsideReaders.Run(draw, bench.Folder, ["-b", "-f", "run.tcl"], OutsideReaders.OcctLibraries(bench.Folder));
        var blocks = said.Split("@@");
        Assert.True(blocks.Length == files.Length + 1, said);
        Assert.All(blocks[1..], b => Assert.True(Solids().IsMatch(b) && b.Contains("This shape seems to be valid", StringComparison.Ordinal), b));
    }

    /// <summary>A Z and a channel out of the same example: one valid solid each, and a mesh with nothing to repair.</summary>
    [Theory]
    [InlineData("z", "top")]
    [InlineData("u", "standing")]
    public void Bracket_OfTwoBends_IsReadByEachReader(string shape, string conduitIn)
    {
        var folder = Path.Combine(bench.Folder, shape);
        var answer = Run(
            "make", "examples/shop.throwright.json", "cabin-heat", "bracket", "--out", folder, "--date", "2026-11-25",
            "--try", "cabin-heat/leverEnd.bracket.standing=1.5 in", "--try", $"cabin-heat/leverEnd.bracket.top={{ \"shape\": \"{shape}\", \"length\": \"1.25 in\" }}", "--try", $"cabin-heat/leverEnd.bracket.conduitIn={conduitIn}");
        Assert.True(answer.Exit == 0, answer.Error);
        var step = Assert.Single(Directory.GetFiles(folder, "*.step"));
        var draw = OutsideReaders.Find("occt-draw", "occt-draw");
        File.WriteAllText(Path.Combine(folder, "run.tcl"), $"pload MODELING XDE\nstepread {Path.GetFileName(step)} a *\nputs [nbshapes a_1]\nputs [checkshape a_1]\nexit\n");
        var (_, said) = OutsideReaders.Run(draw, folder, ["-b", "-f", "run.tcl"], OutsideReaders.OcctLibraries(folder));
        Assert.True(Solids().IsMatch(said) && said.Contains("This shape seems to be valid", StringComparison.Ordinal), said);
        var admesh = OutsideReaders.Find("admesh", "admesh");
        Assert.Matches(@"Total disconnected facets\s*:\s*0\s+0", OutsideReaders.Run(admesh, folder, ["-n", "-u", "-f", "-d", Directory.GetFiles(folder, "*.stl").Single()]).Said);
    }

    [Fact]
    public void Admesh_HasNothingToRepair()
    {
        var admesh = OutsideReaders.Find("admesh", "admesh");
        foreach (var file in Files(".stl"))
        {
            var (exit, said) = OutsideReaders.Run(admesh, bench.Folder, ["-n", "-u", "-f", "-d", file]);
            Assert.True(exit == 0, said);
            Assert.Matches(@"Total disconnected facets\s*:\s*0\s+0", said);
            Assert.Matches(@"Number of parts\s*:\s*1", said);
        }
    }

    [Fact]
    public void Lib3mf_Strict_ReadsWithoutWarning()
    {
        Assert.Equal(3, Files(".3mf").Length);
        foreach (var file in Files(".3mf"))
        {
            var (exit, said) = OutsideReaders.Lib3mf(file);
            Assert.True(exit == 0 && said.StartsWith("warnings 0 unit 1\nmesh True ", StringComparison.Ordinal), said);
        }
    }

    [Fact]
    public void Ezdxf_AuditsEachDrawingWithoutAnError()
    {
        var python = OutsideReaders.Find(OutsideReaders.Python, "python3");
        if (OutsideReaders.Run(python, "/", ["-c", "import ezdxf"]).Exit != 0)
            OutsideReaders.Missing("ezdxf", "python3-ezdxf");
        var files = Files(".dxf");
        Assert.Equal(10, files.Length);
        const string script = "import sys, ezdxf\nfor f in sys.argv[1:]:\n    d = ezdxf.readfile(f)\n    a = d.audit()\n    print(len(a.errors), len(a.fixes), d.units if d.dxfversion > 'AC1009' else 4)\n";
        var (exit, said) = OutsideReaders.Run(python, bench.Folder, ["-c", script, .. files]);
        Assert.True(exit == 0, said);
        Assert.All(said.Split('\n', StringSplitOptions.RemoveEmptyEntries), l => Assert.Equal("0 0 4", l));
    }

    [Fact]
    public void Qpdf_FindsNothingWrong()
    {
        var qpdf = OutsideReaders.Find("qpdf", "qpdf");
        Assert.Equal(4, Files(".pdf").Length);
        foreach (var file in Files(".pdf"))
        {
            var (exit, said) = OutsideReaders.Run(qpdf, bench.Folder, ["--check", file]);
            Assert.True(exit == 0 && said.Contains("No syntax or stream encoding errors found", StringComparison.Ordinal), said);
        }
    }

    [GeneratedRegex(@"\bSOLID\s*:\s*1\b")]
    private static partial Regex Solids();
}
