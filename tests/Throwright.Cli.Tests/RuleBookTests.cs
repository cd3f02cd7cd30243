using Throwright.Engine.Chain;
using Throwright.Files;

namespace Throwright.Cli.Tests;

public class RuleBookTests
{
    [Fact]
    public void Page_CheckedIn_IsTheProgramsOwn() =>
        Throwright.Tests.ApprovedText.Matches("docs/reference/findings.md", RuleBook.Page());

    [Fact]
    public void Findings_OfAllExamples_AreInTheBook_AndTheirFiguresAreExplained()
    {
        var seen = new HashSet<string>();
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Throwright.Tests.ApprovedText.Root, "examples"), "*" + AircraftFile.Extension, SearchOption.AllDirectories))
        {
            foreach (var run in RunCheck.Check(AircraftFile.Read(file).Aircraft!, new(Samples: 200)).Runs)
            {
                Assert.All(run.Findings, f => Assert.True(RuleBook.Holds(f.Rule), f.Rule));
                Assert.All(run.Findings, f => Assert.True(f.Figure is null || run.Find(f.Figure) is not null, $"{run.Run.Id}: {f.Rule} names the figure {f.Figure}"));
                Assert.All(run.Figures, f => Assert.NotEmpty(f.Sources));
                seen.UnionWith(run.Findings.Select(f => f.Rule));
            }
        }

        // The examples show most rules at work.
        Assert.True(seen.Count(r => !r.StartsWith("input/", StringComparison.Ordinal)) >= 12, string.Join(", ", seen));
    }
}
