using System.Text;
using System.Text.Json;
using Throwright.Engine.Sources;
using Throwright.Tests;

namespace Throwright.Engine.Tests.Sources;

/// <summary>The data files as they lie in the repository, and small ones made up for a test.</summary>
internal static class DataFiles
{
    public static DataFile File(string name, string json) => new(name, Encoding.UTF8.GetBytes(json));

    public static IEnumerable<string> SourceFiles()
    {
        var folder = Path.Combine(ApprovedText.Root, "src");
        var separator = Path.DirectorySeparatorChar;
        return Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains($"{separator}obj{separator}") && !f.Contains($"{separator}bin{separator}"));
    }

    /// <summary>Source ids that data/checks.json cites.</summary>
    public static IEnumerable<string> SourcesOfChecks()
    {
        using var document = JsonDocument.Parse(System.IO.File.ReadAllBytes(Path.Combine(ApprovedText.Root, "data", "checks.json")));
        return [.. document.RootElement.GetProperty("checks").EnumerateArray().Select(c => c.GetProperty("source").GetString()!)];
    }
}
