using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Files;
using Throwright.Web.Editing;

namespace Throwright.Web.Tests;

/// <summary>What is shown between two strokes of the keys is what is shown afterwards.</summary>
public class TypedTests
{
    [Fact]
    public void Arm_TypedWhileTheOtherRunsAreLaid_IsAnsweredWhole()
    {
        var before = Read(AircraftFolder.DemoText());
        Assert.True(EditingSession.TryApply(AircraftFolder.DemoText(), [Edit.Text("$.runs[0].leverEnd.arm.radius", "1.3 in")], out var text, out _));
        var typed = Read(text);
        var checks = new Checks();
        Assert.False(checks.Typed(typed, typed.Runs[0]).IsWhole);
        checks.Of(before, before.Runs[0]);
        var (answer, isWhole) = checks.Typed(typed, typed.Runs[0]);
        Assert.True(isWhole);
        Assert.NotEmpty(answer.Ends);
        // The same as without anything that is kept.
        var fresh = RunCheck.CheckWith(typed, typed.Runs[0], new(), CockpitCheck.Solve(typed));
        Assert.Equal(fresh.Findings.Select(f => f.Sentence), answer.Findings.Select(f => f.Sentence));
        Assert.Equal(fresh.Figures.Select(f => (f.Id, f.Value)), answer.Figures.Select(f => (f.Id, f.Value)));
    }

    private static Aircraft Read(string text) => AircraftFile.Parse("demo", text).Aircraft!;
}
