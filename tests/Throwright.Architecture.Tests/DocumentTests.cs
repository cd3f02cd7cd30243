using System.Text.RegularExpressions;
using Throwright.Tests;

namespace Throwright.Architecture.Tests;

/// <summary>A reader who follows a link arrives.</summary>
public partial class DocumentTests
{
    private static readonly string[] Folders = ["docs", "src", "web", "bench", "examples", "data"];

    [Fact]
    public void Links_OfEveryPage_LeadToAPlaceThatIs()
    {
        var dead = new List<string>();
        var links = 0;
        foreach (var page in Pages())
        {
            foreach (Match link in Link().Matches(Code().Replace(File.ReadAllText(page), "")))
            {
                var target = link.Groups[1].Value;
                if (target.Contains("://", StringComparison.Ordinal) || target.StartsWith("mailto:", StringComparison.Ordinal))
                    continue;
                links++;
                var (file, anchor) = target.Split('#') is [var before, var after] ? (before, after) : (target, "");
                var place = file.Length == 0 ? page : Path.GetFullPath(Path.Combine(Path.GetDirectoryName(page)!, file));
                if (!File.Exists(place) && !Directory.Exists(place))
                    dead.Add($"{Path.GetRelativePath(ApprovedText.Root, page)}: {target}");
                else if (anchor.Length > 0 && !Anchors(place).Contains(anchor))
                    dead.Add($"{Path.GetRelativePath(ApprovedText.Root, page)}: {target} (no such heading)");
            }
        }

        Assert.Equal([], dead);
        Assert.True(links > 100, $"{links} links found");
    }

    [Fact]
    public void Guide_EveryPage_IsInItsIndex()
    {
        var folder = Path.Combine(ApprovedText.Root, "docs", "howto");
        var index = File.ReadAllText(Path.Combine(folder, "README.md"));
        Assert.All(Directory.EnumerateFiles(folder, "*.md").Select(Path.GetFileName).Where(n => n != "README.md"), n => Assert.Contains($"({n}", index));
        Assert.All(Directory.EnumerateFiles(Path.Combine(ApprovedText.Root, "docs", "theory"), "*.md").Select(Path.GetFileName).Where(n => n != "numbers.md"), n => Assert.Contains($"(../theory/{n}", index));
    }

    private static IEnumerable<string> Pages() =>
        Directory.EnumerateFiles(ApprovedText.Root, "*.md").Concat(Folders
            .Select(f => Path.Combine(ApprovedText.Root, f)).Where(Directory.Exists)
            .SelectMany(f => Directory.EnumerateFiles(f, "*.md", SearchOption.AllDirectories)))
            .Where(p => !p.Contains("node_modules", StringComparison.Ordinal) && !p.Contains(Path.DirectorySeparatorChar + "bin" + Path.DirectorySeparatorChar, StringComparison.Ordinal));

    /// <summary>Headings as the usual viewers name them: small letters, words joined by hyphens, no other marks.</summary>
    private static HashSet<string> Anchors(string page) =>
        [.. File.ReadAllLines(page).Where(l => l.StartsWith('#')).Select(l => NotInAnchor().Replace(l.TrimStart('#').Trim().ToLowerInvariant(), "").Replace(' ', '-'))];

    [GeneratedRegex(@"(?<!\!)\[[^\]]*\]\(([^)\s]+)\)")]
    private static partial Regex Link();

    [GeneratedRegex("```.*?```|`[^`\n]*`", RegexOptions.Singleline)]
    private static partial Regex Code();

    [GeneratedRegex(@"[^\w\- ]")]
    private static partial Regex NotInAnchor();
}
