using CsCheck;
using Throwright.Files.Description;

namespace Throwright.Files.Tests;

public class LikenessTests
{
    [Theory]
    [InlineData("raduis", "radius")]
    [InlineData("Radius", "radius")]
    [InlineData("leverend", "leverEnd")]
    [InlineData("stroek", "stroke")]
    [InlineData("colour", null)]
    [InlineData("", null)]
    [InlineData("x", null)]
    public void Nearest_OfAFewNames(string written, string? meant) =>
        Assert.Equal(meant, Likeness.Nearest(written, ["radius", "leverEnd", "stroke", "holes"]));

    /// <summary>Against the plain recursive definition of the distance.</summary>
    [Fact]
    public void Distance_OfAnyWords_IsThatOfTheDefinition() =>
        Gen.Select(Gen.Char['a', 'c'].Array[0, 6], Gen.Char['a', 'c'].Array[0, 6], Gen.Int[1, 7]).Sample(
            (a, b, most) => Assert.Equal(Math.Min(most, Plain(a, b)), Likeness.Distance(new(a), new(b), most)),
            iter: 5_000);

    private static int Plain(ReadOnlySpan<char> a, ReadOnlySpan<char> b)
    {
        if (a.IsEmpty || b.IsEmpty)
            return a.Length + b.Length;
        var least = Math.Min(Math.Min(Plain(a[1..], b), Plain(a, b[1..])) + 1, Plain(a[1..], b[1..]) + (a[0] == b[0] ? 0 : 1));
        return a.Length > 1 && b.Length > 1 && a[0] == b[1] && a[1] == b[0] ? Math.Min(least, Plain(a[2..], b[2..]) + 1) : least;
    }
}
