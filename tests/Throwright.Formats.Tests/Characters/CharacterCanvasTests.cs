using CsCheck;
using Throwright.Formats.Characters;
using Throwright.Formats.Drawing;

namespace Throwright.Formats.Tests.Characters;

public sealed class CharacterCanvasTests
{
    private static readonly Tone Ink = new("ink");
    private static readonly Tone Blue = new("blue");

    [Fact]
    public void ToBlock_MixedTones_GivesOneSpanForEachRun()
    {
        var canvas = new CharacterCanvas(10, Ink);
        canvas.Put(1, 2, "ab", Ink);
        canvas.Put(1, 4, "cd", Blue, true);
        var block = canvas.ToBlock();
        Assert.Equal("\n  abcd\n", block.Text);
        Assert.Equal([new("  ab", Ink), new("cd", Blue, true)], block.Lines[1].Spans);
    }

    [Fact]
    public void Put_BeyondTheEdges_IsCutOff()
    {
        var canvas = new CharacterCanvas(4, Ink);
        canvas.Put(0, -2, "abcdefgh", Ink);
        Assert.Equal("cdef\n", canvas.ToBlock().Text);
    }

    [Fact]
    public void Put_WideAndJoinedCharacters_KeepTheColumns()
    {
        var canvas = new CharacterCanvas(8, Ink);
        canvas.Put(0, 0, "開e\u0301x", Ink);
        canvas.Put(0, 5, "|", Ink);
        Assert.Equal("開e\u0301x |\n", canvas.ToBlock().Text);
        Assert.Equal(6, CharacterCanvas.CellsOf("開e\u0301x |"));
    }

    [Fact]
    public void Put_AnyText_StaysInWidthAndHoldsNoControlCharacter() =>
        Gen.Select(Gen.Char[(char)0, '\uFFFF'].Array[0, 60].Select(c => new string(c)), Gen.Int[-5, 30]).Sample(
            (text, column) =>
            {
                var canvas = new CharacterCanvas(24, Ink);
                canvas.Put(0, column, text, Ink);
                var line = canvas.ToBlock().Lines[0].Text;
                Assert.True(CharacterCanvas.CellsOf(line) <= 24);
                Assert.DoesNotContain(line, char.IsControl);
            },
            iter: 500);

    [Theory]
    [InlineData("short", 10, "short")]
    [InlineData("much too long", 8, "much to…")]
    [InlineData("開閉弁", 5, "開閉…")]
    [InlineData("abc", 0, "")]
    public void Fit_ToSomeCells_EndsInDots(string text, int cells, string fitted) => Assert.Equal(fitted, CharacterCanvas.Fit(text, cells));

    [Fact]
    public void Wrap_LongWord_IsCutToTheWidth() => Assert.Equal(["ab", "cdefg...", "h"], CharacterCanvas.Wrap("ab cdefghijklmn h", 8, "..."));

    // The Unicode Standard, chapter 21.1 "Braille": U+2800 + the sum of 1, 2, 4, 40h (left column down), 8, 10h, 20h, 80h (right).
    [Theory]
    [InlineData(0, 0, '\u2801')]
    [InlineData(0, 2, '\u2804')]
    [InlineData(0, 3, '\u2840')]
    [InlineData(1, 0, '\u2808')]
    [InlineData(1, 3, '\u2880')]
    public void DotGrid_OneDot_IsTheCharacterOfTheStandard(int x, int y, char expected)
    {
        var grid = new DotGrid(2, 2) { [x, y] = true, [x + 2, y + 4] = true };
        Assert.Equal(expected, grid.At(0, 0));
        Assert.Null(grid.At(1, 0));
        Assert.Equal(expected, grid.At(1, 1));
    }
}
