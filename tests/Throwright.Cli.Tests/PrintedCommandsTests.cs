using System.Text.RegularExpressions;
using Throwright.Tests;

namespace Throwright.Cli.Tests;

/// <summary>Every command that README, start and guide print runs as printed, line by line, in a folder of its own with a copy of the examples.</summary>
public sealed partial class PrintedCommandsTests
{
    // What a reader puts in the place of a word in capitals, and what can't be waited for.
    private static readonly (string Word, string Stands)[] Own = [("FILE", "examples/bench/taped-lever.throwright.json"), ("FOLDER", "examples")];

    private static readonly HashSet<string> Ran = [];

    public static TheoryData<string> Pages => [.. Directory.EnumerateFiles(Path.Combine(ApprovedText.Root, "docs"), "*.md", SearchOption.AllDirectories)
        .Select(p => Path.GetRelativePath(ApprovedText.Root, p).Replace('\\', '/'))
        .Where(p => p.StartsWith("docs/start/", StringComparison.Ordinal) || p.StartsWith("docs/howto/", StringComparison.Ordinal))
        .Append("README.md").Where(p => CommandsOf(p).Count > 0).Order(StringComparer.Ordinal)];

    /// <summary>Lines of a block, and what stands in backticks where it names an example.</summary>
    private static List<string> CommandsOf(string page)
    {
        var text = File.ReadAllText(Path.Combine(ApprovedText.Root, page)).ReplaceLineEndings("\n");
        var lines = text.Split('\n').Select(l => l.Trim()).Where(l => l.StartsWith("throwright ", StringComparison.Ordinal)).Select(l => l.Split("  #")[0]);
        var inline = Inline().Matches(text).Select(m => Blanks().Replace(m.Groups[1].Value, " ")).Where(c => c.Contains("examples/", StringComparison.Ordinal));
        return [.. lines.Concat(inline).Where(c => !c.StartsWith("throwright serve", StringComparison.Ordinal)).Select(c => c.TrimEnd()).Distinct()];
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void Page_EveryCommand_Runs(string page)
    {
        using var bench = new Workbench();
        foreach (var file in Directory.EnumerateFiles(Path.Combine(ApprovedText.Root, "examples"), "*", SearchOption.AllDirectories))
            bench.PutCopy(Path.GetRelativePath(ApprovedText.Root, file), file);
        foreach (var printed in CommandsOf(page))
        {
            // What only looks, and was run for another page, is not run again.
            if (!printed.Contains(" --", StringComparison.Ordinal) && !Ran.Add(printed))
                continue;
            // The start page's own file is written by its first command.
            if (printed.Contains("my-aircraft.throwright.json", StringComparison.Ordinal) && !File.Exists(Path.Combine(bench.Folder, "my-aircraft.throwright.json")))
                Assert.Equal(0, CommandLine.RunIn(bench.Folder, "new", "my-aircraft").Exit);
            var words = Words().Matches(printed).Select(m => m.Value[0] is '\'' or '"' ? m.Value[1..^1] : m.Value.Replace("\"", "", StringComparison.Ordinal)).Skip(1).ToList();
            if (words.IndexOf(">") is > 0 and var into)
                words = words[..into];
            var arguments = words.Select(w => Own.FirstOrDefault(o => o.Word == w) is { Word.Length: > 0 } own ? own.Stands : w).ToArray();
            var answer = CommandLine.RunIn(bench.Folder, arguments);
            Assert.True(answer.Exit is 0 or 1, $"{page}: {printed}\nexit {answer.Exit}\n{answer.Out}{answer.Error}");
        }
    }

    [Fact]
    public void Pages_AreAll() => Assert.True(Pages.Count >= 8, string.Join(", ", Pages));

    [GeneratedRegex("`(throwright [^`]+)`")]
    private static partial Regex Inline();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();

    [GeneratedRegex("""'[^']*'|"[^"]*"|[^\s"']+(?:"[^"]*")?""")]
    private static partial Regex Words();
}
