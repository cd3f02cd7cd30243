using Throwright.Tests;

namespace Throwright.Engine.Tests.Sources;

public sealed class SourcesPageTests
{
    [Fact]
    public void Page_CheckedIn_IsWhatTheDataSay() => ApprovedText.Matches("docs/reference/sources.md", SourcesPage.Markdown());
}
