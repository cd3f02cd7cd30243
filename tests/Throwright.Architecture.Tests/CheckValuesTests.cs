using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Throwright.Engine.Findings;
using Throwright.Engine.Sources;
using Throwright.Tests;

namespace Throwright.Architecture.Tests;

/// <summary>Which reference values of data/checks.json the tests hold the program against.</summary>
public sealed partial class CheckValuesTests
{
    private sealed record Check(string Id, string What, SourceRef Source, string Stage);

    [Fact]
    public void Page_CheckedIn_IsWhatTheTestsCover() => ApprovedText.Matches("docs/reference/check-values.md", Markdown());

    [Fact]
    public void Traits_Each_NameAListedCheck() => Assert.Equal([], Covered().Keys.Except(Checks().Select(c => c.Id)));

    [Fact]
    public void Checks_Each_AreListedOnceWithASourceAndAStage()
    {
        var checks = Checks();
        Assert.Equal(checks.Count, checks.DistinctBy(c => c.Id).Count());
        Assert.All(checks, c =>
        {
            Assert.NotEmpty(c.What);
            Assert.NotEmpty(c.Stage);
            Assert.NotEmpty(c.Source.Place);
            Assert.NotNull(Published.Source(c.Source.Id));
            Assert.NotEqual(Evidence.Memory, c.Source.Evidence);
        });
    }

    private static string Markdown()
    {
        var checks = Checks();
        var covered = Covered();
        var open = checks.Where(c => !covered.ContainsKey(c.Id)).ToList();
        var page = new StringBuilder();
        page.Append($"""
            # Check values

            Written from `data/checks.json` and the `Check` traits in the tests; `THROWRIGHT_APPROVE=1` rewrites it. Sources are
            in [sources.md](sources.md). *Derived* and *numerical* checks prove the program equal to an independent derivation
            or computation, not to nature; *read* and *secondary* ones tie it to a publication.

            Covered: {checks.Count - open.Count} of {checks.Count}.

            ## Covered

            | id | what | source | evidence | tests |
            |---|---|---|---|---|

            """);
        foreach (var check in checks.Where(c => covered.ContainsKey(c.Id)))
            page.Append($"| {check.Id} | {Cell(check.What)} | {Place(check.Source)} | {Word(check.Source.Evidence)} | {string.Join(", ", covered[check.Id])} |\n");
        page.Append("""

            ## Not covered yet

            | id | what | source | evidence | stage that will cover it |
            |---|---|---|---|---|

            """);
        foreach (var check in open)
            page.Append($"| {check.Id} | {Cell(check.What)} | {Place(check.Source)} | {Word(check.Source.Evidence)} | {check.Stage} |\n");
        return page.ToString().ReplaceLineEndings("\n");
    }

    /// <summary>Test classes by the check ids that their source text names.</summary>
    private static SortedDictionary<string, SortedSet<string>> Covered()
    {
        var covered = new SortedDictionary<string, SortedSet<string>>(StringComparer.Ordinal);
        var separator = Path.DirectorySeparatorChar;
        foreach (var file in Directory.EnumerateFiles(Path.Combine(ApprovedText.Root, "tests"), "*.cs", SearchOption.AllDirectories))
        {
            if (file.Contains($"{separator}obj{separator}") || file.Contains($"{separator}bin{separator}"))
                continue;
            foreach (Match match in CheckTrait().Matches(File.ReadAllText(file)))
            {
                if (!covered.TryGetValue(match.Groups[1].Value, out var classes))
                    covered[match.Groups[1].Value] = classes = new(StringComparer.Ordinal);
                classes.Add(Path.GetFileNameWithoutExtension(file));
            }
        }

        return covered;
    }

    private static List<Check> Checks()
    {
        var file = File.ReadAllBytes(Path.Combine(ApprovedText.Root, "data", "checks.json"));
        using var document = JsonDocument.Parse(file, new() { AllowDuplicateProperties = false });
        return [.. document.RootElement.GetProperty("checks").EnumerateArray().Select(Read)];

        static Check Read(JsonElement e) => new(
            Text(e, "id"),
            Text(e, "what"),
            new(Text(e, "source"), Text(e, "place"), Enum.Parse<Evidence>(Text(e, "evidence"), ignoreCase: true)),
            Text(e, "stage"));

        static string Text(JsonElement e, string name) => e.GetProperty(name).GetString()!;
    }

    private static string Place(SourceRef source) => $"`{source.Id}`, {Cell(source.Place)}";

    private static string Word(Evidence evidence) => evidence switch
    {
        Evidence.ReadInPart => "read in part",
        Evidence.CommonPractice => "common practice",
        _ => evidence.ToString().ToLowerInvariant(),
    };

    private static string Cell(string text) => text.Replace("|", "\\|");

    [GeneratedRegex("""\[(?:[^\]\n]*,\s*)?Trait\(\s*"Check"\s*,\s*"([^"]+)"\s*\)""")]
    private static partial Regex CheckTrait();
}
