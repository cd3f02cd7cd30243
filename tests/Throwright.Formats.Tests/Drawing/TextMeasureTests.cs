using CsCheck;
using Throwright.Formats.Drawing;

namespace Throwright.Formats.Tests.Drawing;

public sealed class TextMeasureTests
{
    // Advance widths of DejaVu Sans 2.37 in 1/2048 em, read from its horizontal metrics table: 0 = 1303, i = 569, M = 1767;
    // DejaVu Sans Bold: 0 = 1425.
    [Theory]
    [InlineData("0", false, 1303)]
    [InlineData("i", false, 569)]
    [InlineData("M", false, 1767)]
    [InlineData("0", true, 1425)]
    public void Width_OneCharacter_IsTheFacesOwnRoundedUp(string text, bool bold, int units) =>
        Assert.InRange(TextMeasure.Width(text, 1, bold), units / 2048.0, (units / 2048.0) + 0.01);

    [Fact]
    public void Width_MarkOnALetter_TakesNoRoom() => Assert.Equal(TextMeasure.Width("e", 3), TextMeasure.Width("e\u0301", 3));

    [Fact]
    public void Width_UnlistedCharacter_IsTakenAsWide() => Assert.Equal(1.1, TextMeasure.Width("開", 1), 12);

    [Fact]
    public void Fit_AnyTextAndRoom_FitsOrIsOnlyTheDots() =>
        Gen.Select(Gen.String[0, 40], Gen.Double[0, 60], Gen.Bool).Sample(
            (text, room, bold) =>
            {
                var fitted = TextMeasure.Fit(text, 3, room, bold);
                Assert.True(fitted == "…" || TextMeasure.Width(fitted, 3, bold) <= room + 1e-9, fitted);
                if (TextMeasure.Width(text, 3, bold) <= room)
                    Assert.Equal(text, fitted);
            },
            iter: 500);

    [Fact]
    public void Wrap_ASentence_KeepsEveryWordInOrder()
    {
        var lines = TextMeasure.Wrap("slide the swivel toward the tip and measure both ends again", 3, 40);
        Assert.True(lines.Count > 2);
        Assert.All(lines, l => Assert.True(TextMeasure.Width(l, 3) <= 40));
        Assert.Equal("slide the swivel toward the tip and measure both ends again", string.Join(' ', lines));
    }
}
