using Throwright.Formats.Drawing;

namespace Throwright.Formats.Tests.Drawing;

public sealed class PlainTextTests
{
    [Theory]
    [InlineData("plain 1 3/4 in", "plain 1 3/4 in")]
    [InlineData("a\tb\r\nc", "a b  c")]
    [InlineData("\u001b[31m", "\uFFFD[31m")]
    [InlineData("\0", "\uFFFD")]
    [InlineData("\u009b2J", "\uFFFD2J")]
    [InlineData("\u202Eabc", "\uFFFDabc")]
    [InlineData("\u2066abc\u2069", "\uFFFDabc\uFFFD")]
    [InlineData("\uFFFE", "\uFFFD")]
    [InlineData("é 開 🛩", "é 開 🛩")]
    public void Clean_TextFromOutside_HoldsNothingThatActs(string text, string clean) => Assert.Equal(clean, PlainText.Clean(text));

    [Fact]
    public void Clean_HalfACharacter_IsReplaced() => Assert.Equal("\uFFFDx", PlainText.Clean("\uD800x"));
}
