using System.Text.Json;
using static Throwright.Cli.Tests.CommandLine;

namespace Throwright.Cli.Tests;

public class OtherCommandsTests
{
    [Fact]
    public void New_WritesAFileThatChecksWithoutProblems_AndNeverOverwrites()
    {
        using var bench = new Workbench();
        var made = RunIn(bench.Folder, "new", "my-plane", "--name", "My plane");
        Assert.Equal(0, made.Exit);
        var file = Path.Combine(bench.Folder, "my-plane.throwright.json");
        var text = File.ReadAllText(file);
        Assert.Contains("My plane", text);
        var check = RunIn(bench.Folder, "check", "my-plane.throwright.json");
        Assert.Equal(0, check.Exit);
        Assert.Contains("MIXTURE", check.Out);
        var again = RunIn(bench.Folder, "new", "my-plane");
        Assert.Equal(2, again.Exit);
        Assert.Contains("nothing was written", again.Error);
        Assert.Equal(text, File.ReadAllText(file));
    }

    [Fact]
    public void Explain_EveryFigureOfTheExamples_IsToldWithFormulaAndSource()
    {
        var list = Run("explain", "examples/amphibian.throwright.json", "cowl-flap");
        Assert.Equal(0, list.Exit);
        foreach (var figure in new[] { "throw", "cushion-in", "cushion-out", "tip-cushion", "lost-motion", "stretch-pull", "heat-push", "hand-pull", "swing", "transmission", "bare-wire-margin", "back-drive", "swivel-at" })
        {
            Assert.Contains($"  {figure} ", list.Out);
            var answer = Run("explain", "examples/amphibian.throwright.json", "COWL FLAP", figure);
            Assert.Equal(0, answer.Exit);
            Assert.Contains("  formula   ", answer.Out);
            Assert.Contains("  source    ", answer.Out);
            if (figure.StartsWith("cushion", StringComparison.Ordinal))
                Assert.Contains("    verdict from  14 CFR 23.1141", answer.Out);
        }

        var unknown = Run("explain", "examples/amphibian.throwright.json", "cowl-flap", "nonsense");
        Assert.Equal(2, unknown.Exit);
        Assert.Contains("cushion-out", unknown.Error);
        Assert.Contains("Near it: conduit-length", Run("explain", "examples/amphibian.throwright.json", "cowl-flap", "length of conduit").Error);

        // What was worked out is not said to be typed, and a drag that nobody typed is not a measured zero.
        var pull = Run("explain", "examples/amphibian.throwright.json", "cowl-flap", "hand-pull").Out;
        Assert.Contains("[worked out: bend-total]", pull);
        Assert.Matches(@"none\s+typed", pull);
    }

    /// <summary>A zero that nobody measured is no figure: without the core there is no lost motion to tell, and no stretch.</summary>
    [Fact]
    public void Explain_WhatTheFileDoesNotLetBeWorkedOut_IsNoFigure()
    {
        var list = Run("explain", "examples/amphibian.throwright.json", "cabin-heat").Out;
        Assert.Contains("needs input", list);
        Assert.Contains("  cushion-out ", list);
        Assert.DoesNotContain("  lost-motion ", list);
        Assert.DoesNotContain("  stretch-pull ", list);
        // The card has no limit of nothing either, and says what its other limits leave out.
        var card = string.Join(' ', Run("rig", "examples/amphibian.throwright.json", "cabin-heat").Out.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.DoesNotContain("0 to 0 in", card);
        Assert.Contains("must be write it down", card);
        Assert.Contains("Not counted in the limits of this card", card);
        Assert.DoesNotContain("0.000 in or less", Run("maintain", "examples/amphibian.throwright.json", "cabin-heat").Out);
        Assert.Contains("not counted: lost motion", Run("explain", "examples/amphibian.throwright.json", "cabin-heat", "cushion-out").Out);
    }

    /// <summary>A choice that would stand the knob inside the panel is shown, and said to be one.</summary>
    [Fact]
    public void Solve_StrokeTooShortToRig_SaysThatTheKnobStandsInThePanel()
    {
        var rows = Run("solve", "stroke", "examples/amphibian.throwright.json", "cowl-flap", "--plain").Out.Split('\n');
        Assert.EndsWith("knob in the panel", rows.Single(r => r.Contains(" 1 in stroke", StringComparison.Ordinal)).TrimEnd());
        Assert.EndsWith("cushions kept", rows.Single(r => r.Contains("> 3 in stroke", StringComparison.Ordinal)).TrimEnd());
    }

    [Fact]
    public void Explain_Plain_WritesNothingButAscii_InTheUnitsOfTheFile()
    {
        foreach (var figure in new[] { "swing", "cushion-out", "core-bend-stress" })
        {
            var answer = Run("explain", "examples/amphibian.throwright.json", "cowl-flap", figure, "--plain");
            Assert.True(System.Text.Ascii.IsValid(answer.Out), answer.Out);
            Assert.DoesNotContain(" mm", answer.Out);
            Assert.DoesNotContain("MPa", answer.Out);
        }

        Assert.True(System.Text.Ascii.IsValid(Run("check", "examples/amphibian.throwright.json", "--plain", "--ladder", "all").Out));
    }

    [Fact]
    public void Solve_AnchorForAThrowWhereARulePlacesIt_SaysWhyNot()
    {
        var answer = Run("solve", "anchor", "examples/bench/cabin-air.throwright.json", "cabin-air", "--for", "throw", "--throw", "45 mm");
        Assert.NotEqual(0, answer.Exit);
        Assert.Contains("solve arm --throw", answer.Out + answer.Error);
    }

    [Fact]
    public void Solve_SwivelWritten_CuresTheFault_AndKeepsComments()
    {
        using var bench = new Workbench();
        var file = bench.Copy("amphibian.throwright.json");
        var before = File.ReadAllText(file);
        var solved = Run("solve", "swivel", file, "cowl-flap", "--write");
        Assert.Equal(0, solved.Exit);
        Assert.StartsWith("Slide the swivel", solved.Out);
        var after = File.ReadAllText(file);
        Assert.NotEqual(before, after);
        Assert.Equal(before.Split('\n').Length, after.Split('\n').Length);
        Assert.Equal(before.Split('\n').Count(l => l.TrimStart().StartsWith("//", StringComparison.Ordinal)), after.Split('\n').Count(l => l.TrimStart().StartsWith("//", StringComparison.Ordinal)));
        Assert.Equal(before, File.ReadAllText(file + ".backup"));
        // The handle's own fault, the yoke that strikes it, stays.
        Assert.Equal(["clearance/pair"], Failing(file));
    }

    [Fact]
    public void Solve_ClockingOfTheBiplane_CuresItsFault()
    {
        using var bench = new Workbench();
        var file = bench.Copy("biplane.throwright.json");
        Assert.Equal(1, Run("check", file).Exit);
        var solved = Run("solve", "clocking", file, "throttle", "--for", "equal-arms", "--write");
        Assert.Equal(0, solved.Exit);
        Assert.Equal(["clearance/pair"], Failing(file));
    }

    /// <summary>Both examples: first the lever end or the swivel, then the handle; after that nothing fails.</summary>
    [Theory]
    [InlineData("amphibian", "cowl-flap", "swivel")]
    [InlineData("biplane", "throttle", "clocking", "--for", "equal-arms")]
    public void Solve_MountWritten_CuresTheFouledHandle(string example, string run, string other, params string[] more)
    {
        using var bench = new Workbench();
        var file = bench.Copy($"{example}.throwright.json");
        var before = File.ReadAllText(file);
        var picture = Path.Combine(bench.Folder, "map.svg");
        var why = Run("explain", file, run, "least-tilt").Out;
        var solved = Run("solve", "mount", file, run, "--write", "--map", "5", "--svg", picture, "--plain");
        Assert.True(solved.Exit == 0, solved.Out + solved.Error);
        Assert.StartsWith("Tilt the handle", solved.Out);
        Assert.Contains($"explain {file} {run} least-tilt", solved.Out);
        // "Tilt the handle 9.1 deg": the explanation is of the same angle.
        Assert.StartsWith(solved.Out.Split(' ')[3].Split('\u00B0')[0], why.Split('\n')[2].Trim(), StringComparison.Ordinal);
        Assert.Contains("proved.", solved.Out);
        Assert.Contains("Written to", solved.Out);
        Assert.Contains("? neither", string.Join(' ', solved.Out.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
        Assert.Contains($"Wrote {picture}", solved.Out);
        Assert.Contains("how far to tilt the mount", File.ReadAllText(picture));
        Assert.Equal(before.Split('\n').Count(l => l.TrimStart().StartsWith("//", StringComparison.Ordinal)), File.ReadAllText(file).Split('\n').Count(l => l.TrimStart().StartsWith("//", StringComparison.Ordinal)));
        Assert.DoesNotContain("clearance/pair", Failing(file));
        Assert.Equal(0, Run(["solve", other, file, run, "--write", .. more]).Exit);
        Assert.Empty(Failing(file));
    }

    [Fact]
    public void Solve_MountOfAHandleNotDescribed_SaysWhatIsNeeded()
    {
        var answer = Run("solve", "mount", "examples/bench/cabin-air.throwright.json", "cabin-air");
        Assert.Equal(2, answer.Exit);
        Assert.Contains("cockpitEnd.sheet", answer.Error);
        Assert.Equal((2, answer.Error), Run("explain", "examples/bench/cabin-air.throwright.json", "cabin-air", "none-below") is var why ? (why.Exit, why.Error) : default);
    }

    /// <summary>Rules that fail anywhere in a file.</summary>
    private static List<string> Failing(string file)
    {
        using var json = JsonDocument.Parse(Run("check", file, "--json").Out);
        return
        [
            .. json.RootElement.GetProperty("files")[0].GetProperty("runs").EnumerateArray().SelectMany(r => r.GetProperty("findings").EnumerateArray())
                .Where(f => f.GetProperty("verdict").GetString() == "fail").Select(f => f.GetProperty("rule").GetString()!),
        ];
    }

    [Theory]
    [InlineData("hole", "carb-heat")]
    [InlineData("arm", "carb-heat")]
    [InlineData("arm", "carb-heat", "--throw", "1.5 in")]
    [InlineData("stroke", "carb-heat")]
    [InlineData("anchor", "carb-heat")]
    [InlineData("anchor", "cowl-flap", "--for", "square")]
    [InlineData("swivel", "carb-heat", "--in", "0.3 in")]
    public void Solve_EachKind_GivesARecommendationWithATry(string what, string run, params string[] more)
    {
        var answer = Run(["solve", what, "examples/amphibian.throwright.json", run, .. more]);
        Assert.True(answer.Exit == 0, answer.Out + answer.Error);
        Assert.Contains("→ ", answer.Out);
        Assert.Contains("--try", answer.Out);
    }

    [Fact]
    public void Solve_MissingInput_SaysWhatIsNeeded()
    {
        using var bench = new Workbench();
        var file = bench.Put("a.throwright.json", """{ "format": 1, "aircraft": { "name": "A" }, "runs": [ { "id": "x", "leverEnd": { "arm": { "radius": "1 in" } } } ] }""");
        var answer = Run("solve", "stroke", file, "x");
        Assert.Equal(2, answer.Exit);
        Assert.Contains("stroke of the knob", answer.Error);
        Assert.Contains("sweep", answer.Error);
    }

    [Fact]
    public void Plot_InTheTerminalAndAsFiles()
    {
        using var bench = new Workbench();
        var drawn = Run("plot", "examples/amphibian.throwright.json", "cowl-flap", "--plain");
        Assert.Equal(0, drawn.Exit);
        Assert.Contains("pull at most", drawn.Out);
        var written = Run("plot", "examples/amphibian.throwright.json", "cowl-flap", "--svg", bench.Folder);
        Assert.Equal(0, written.Exit);
        foreach (var name in new[] { "sheet", "ladder", "upright", "gauge", "lever", "clearance" })
        {
            var svg = File.ReadAllText(Path.Combine(bench.Folder, $"cowl-flap-{name}.svg"));
            System.Xml.Linq.XDocument.Parse(svg);
        }

        Assert.Contains("Replaced", Run("plot", "examples/amphibian.throwright.json", "cowl-flap", "--svg", bench.Folder).Out);
        Assert.Equal(0, Run("plot", "examples/amphibian.throwright.json", "cabin-heat").Exit);
    }

    /// <summary>The picture of the README is what the program draws today.</summary>
    [Fact]
    public void Plot_OfTheReadme_IsAsApproved()
    {
        using var bench = new Workbench();
        Run("plot", "examples/amphibian.throwright.json", "cowl-flap", "--svg", bench.Folder);
        Throwright.Tests.ApprovedText.Matches("docs/pictures/cowl-flap-sheet.svg", File.ReadAllText(Path.Combine(bench.Folder, "cowl-flap-sheet.svg")));
    }

    [Fact]
    public void Schema_IsTheOneThatIsPublished()
    {
        var answer = Run("schema");
        Assert.Equal(0, answer.Exit);
        Assert.Equal(File.ReadAllText(Path.Combine(Throwright.Tests.ApprovedText.Root, "docs/reference/throwright.schema.json")).ReplaceLineEndings("\n"), answer.Out);
    }
}
