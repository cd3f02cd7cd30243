using Throwright.Formats.Drawing;

namespace Throwright.Formats.Tests.Drawing;

public class StrokeLettersTests
{
    private const string All = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 -/.,+°&'";

    [Fact]
    public void Letters_Each_LieOnTheirLineAndInTheirWidth()
    {
        foreach (var c in All)
        {
            var width = StrokeLetters.Width($"{c}", 6);
            foreach (var p in StrokeLetters.Of($"{c}", 6).SelectMany(s => s))
            {
                Assert.InRange(p.X, -0.05, width + 0.15);
                Assert.InRange(-p.Y, c is ',' or '/' ? -1 : -0.001, c == '/' ? 6.5 : 6.001);
            }
        }
    }

    [Fact]
    public void Capitals_Each_AreAsHighAsAskedFor()
    {
        foreach (var c in All[..36])
        {
            var heights = StrokeLetters.Of($"{c}", 5).SelectMany(s => s).Select(p => -p.Y).ToList();
            Assert.Equal(5, heights.Max(), 0.06);
            Assert.Equal(0, heights.Min(), 0.06);
        }
    }

    [Fact]
    public void Letters_All_Differ()
    {
        var shapes = All.Where(c => c != ' ').Select(c => string.Join(';', StrokeLetters.Of($"{c}", 6).Select(s => string.Join(' ', s.Select(p => $"{p.X:f2},{p.Y:f2}"))))).ToList();
        Assert.Equal(shapes.Count, shapes.Distinct().Count());
    }

    [Fact]
    public void Line_OfLetters_IsAsWideAsItsLettersAndGaps()
    {
        var drawn = StrokeLetters.Of("COWL FLAP", 4).SelectMany(s => s).Max(p => p.X);
        Assert.Equal(StrokeLetters.Width("COWL FLAP", 4), drawn, 0.01);
        Assert.Equal(StrokeLetters.Of("cowl", 4), StrokeLetters.Of("COWL", 4));
    }

    [Fact]
    public void Lacking_Letters_AreNamed()
    {
        Assert.Equal("Ü€", StrokeLetters.Lacking("Über €"));
        Assert.Throws<ArgumentException>(() => StrokeLetters.Of("€", 3));
    }
}
