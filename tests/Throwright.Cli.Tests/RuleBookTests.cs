using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Prove;
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
                Assert.All(run.Figures, f => Assert.NotEmpty(f.Formula));
                Assert.Equal([], run.Figures.GroupBy(f => f.Id).Where(g => g.Count() > 1).Select(g => $"{run.Run.Id}: {g.Key}"));
                seen.UnionWith(run.Findings.Select(f => f.Rule));
            }
        }

        // The examples show most rules at work.
        Assert.True(seen.Count(r => !r.StartsWith("input/", StringComparison.Ordinal)) >= 12, string.Join(", ", seen));
    }

    /// <summary>What a part's failure does is true whatever is adjusted: on the plate it gives way to what can be done, and to an input that is missing.</summary>
    [Theory]
    [InlineData("amphibian", "cabin-heat", Verdict.NeedsInput)]
    [InlineData("amphibian", "water-rudder", Verdict.Caution)]
    [InlineData("biplane", "carb-heat", Verdict.Caution)]
    public void Sentence_OfARunWithStandingCautions_IsWhatCanBeDone(string example, string id, Verdict leads)
    {
        var aircraft = AircraftFile.Read(Path.Combine(Throwright.Tests.ApprovedText.Root, "examples", example + AircraftFile.Extension)).Aircraft!;
        var run = RunCheck.CheckWith(aircraft, aircraft.Runs.Single(r => r.Id == id), new(Samples: 100), null);
        Assert.Contains(run.Findings, f => f.Rule == ProveRules.SafeEnd && f.Verdict == Verdict.Caution);
        var first = run.Findings.First(f => f.Sentence == run.Sentence);
        Assert.DoesNotContain(first.Rule, ProveRules.Standing);
        Assert.Equal(leads, first.Verdict);
        Assert.Equal(Verdict.Caution, run.Verdict);
    }

    [Fact]
    public void Sentence_OfAFreshFile_NamesWhatToDo()
    {
        var aircraft = AircraftFile.Read("fresh", System.Text.Encoding.UTF8.GetBytes(StarterFile.Text("fresh"))).Aircraft!;
        var run = RunCheck.CheckWith(aircraft, aircraft.Runs[0], new(Samples: 100), null);
        Assert.DoesNotContain(run.Findings.First(f => f.Sentence == run.Sentence).Rule, ProveRules.Standing);
    }

    [Fact]
    public void Sentence_OfEveryExample_LeadsWithAStandingCautionOnlyWhereNothingIsMissing()
    {
        var seen = 0;
        foreach (var name in (string[])["amphibian", "biplane", "shop"])
        {
            var aircraft = AircraftFile.Read(Path.Combine(Throwright.Tests.ApprovedText.Root, "examples", name + AircraftFile.Extension)).Aircraft!;
            foreach (var run in aircraft.Runs.Select(r => RunCheck.CheckWith(aircraft, r, new(Samples: 100), null)))
            {
                if (run.Verdict != Verdict.Caution || run.Findings.All(f => f.Verdict != Verdict.NeedsInput) || !run.Findings.Any(f => ProveRules.Standing.Contains(f.Rule) && f.Verdict == Verdict.Caution))
                    continue;
                seen++;
                Assert.DoesNotContain(run.Findings.First(f => f.Sentence == run.Sentence).Rule, ProveRules.Standing);
            }
        }

        Assert.True(seen >= 6, $"{seen} runs have both");
    }

    [Fact]
    public void Rules_EachShowsSomewhere_AndThePageSaysWhere()
    {
        Assert.All(Throwright.Engine.Sources.Published.Rules.Keys, id =>
        {
            var (findings, paper) = RuleIndex.Of(id);
            Assert.True(findings.Count > 0 || paper.Length > 0, id);
            Assert.All(findings, f => Assert.True(RuleBook.Holds(f), f));
        });
        Throwright.Tests.ApprovedText.Matches("docs/reference/rules.md", RuleIndex.Page());
    }

    [Fact]
    public void Rules_BehindTheFindingsOfTheExamples_AreInTheIndexWithThem()
    {
        var missing = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var name in (string[])["amphibian", "biplane"])
        {
            var aircraft = AircraftFile.Read(Path.Combine(Throwright.Tests.ApprovedText.Root, "examples", name + AircraftFile.Extension)).Aircraft!;
            foreach (var run in aircraft.Runs.Select(r => RunCheck.CheckWith(aircraft, r, new(Samples: 100), null)))
                missing.UnionWith(RuleTable.Of(aircraft, run).Where(r => !RuleIndex.Of(r.Rule.Id).Findings.Contains(r.Finding.Rule)).Select(r => $"{r.Rule.Id} at {r.Finding.Rule}"));
        }

        Assert.True(missing.Count == 0, string.Join("; ", missing));
    }
}
