using System.Text.RegularExpressions;
using Throwright.Tests;

namespace Throwright.Architecture.Tests;

/// <summary>test.sh runs the browser by itself, after the projects that its filter lists: none may be missing from both.</summary>
public partial class TestRunTests
{
    [Fact]
    public void EveryTestProject_IsRunByTheTestCommand()
    {
        var tests = Path.Combine(ApprovedText.Root, "tests");
        var projects = Directory.GetFiles(tests, "*.Tests.csproj", SearchOption.AllDirectories).Select(p => Path.GetFileNameWithoutExtension(p)).Order().ToList();
        var listed = Listed().Matches(File.ReadAllText(Path.Combine(tests, "without-browser.slnf"))).Select(m => m.Groups[1].Value)
            .Append("Throwright.Browser.Tests").Order().ToList();
        Assert.NotEmpty(projects);
        Assert.Equal(projects, listed);
        Assert.Contains("tests/Throwright.Browser.Tests", File.ReadAllText(Path.Combine(ApprovedText.Root, "test.sh")), StringComparison.Ordinal);
    }

    [GeneratedRegex("/(Throwright\\.\\w+\\.Tests)\\.csproj\"")]
    private static partial Regex Listed();
}
