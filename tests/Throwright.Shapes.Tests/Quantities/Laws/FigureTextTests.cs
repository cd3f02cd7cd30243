using System.Globalization;
using CsCheck;
using Throwright.Shapes.Quantities;

namespace Throwright.Shapes.Tests.Quantities.Laws;

public class FigureTextTests
{
    [Theory]
    [InlineData(1.25, 1, Rounding.Nearest, "1.3")]
    [InlineData(-1.25, 1, Rounding.Nearest, "−1.3")]
    [InlineData(1.29, 1, Rounding.Down, "1.2")]
    [InlineData(1.21, 1, Rounding.Up, "1.3")]
    [InlineData(-1.21, 1, Rounding.Down, "−1.3")]
    [InlineData(-1.29, 1, Rounding.Up, "−1.2")]
    [InlineData(0.04, 1, Rounding.Nearest, "0.0")]
    [InlineData(0.04, 1, Rounding.Down, "0.0")]
    [InlineData(0.04, 1, Rounding.Up, "0.1")]
    // No negative zero, whichever way it is rounded to.
    [InlineData(-0.04, 1, Rounding.Nearest, "0.0")]
    [InlineData(-0.04, 1, Rounding.Up, "0.0")]
    [InlineData(-0.0, 2, Rounding.Down, "0.00")]
    [InlineData(-0.04, 1, Rounding.Down, "−0.1")]
    // A figure that is exact but for its last bit keeps its value.
    [InlineData(0.1 * 3, 1, Rounding.Up, "0.3")]
    [InlineData(0.7 + 0.1, 1, Rounding.Down, "0.8")]
    [InlineData(0.00254 / 0.0254, 1, Rounding.Down, "0.1")]
    [InlineData(4.35, 2, Rounding.Down, "4.35")]
    [InlineData(1234567.891, 0, Rounding.Nearest, "1234568")]
    [InlineData(5, 0, Rounding.Up, "5")]
    [InlineData(123456789012345678, 2, Rounding.Up, "123456789012345680.00")]
    [InlineData(double.NaN, 2, Rounding.Nearest, "not known")]
    [InlineData(double.PositiveInfinity, 2, Rounding.Down, "no limit")]
    [InlineData(double.NegativeInfinity, 2, Rounding.Up, "−no limit")]
    public void Plain_Figure_IsWritten(double value, int places, Rounding rounding, string text)
    {
        Assert.Equal(text, FigureText.Plain(value, places, rounding));
    }

    [Fact]
    public void Plain_AnyFigure_IsRoundedTowardDangerByLessThanOneStep() =>
        Gen.Select(Gen.Select(Gen.Double[-10, 10], Gen.Int[-8, 7], (m, e) => m * Math.Pow(10, e)), Gen.Int[0, 6]).Sample(
            (value, places) =>
            {
                // decimal has 28 digits: the comparison is exact.
                decimal exact = new(value), step = (decimal)Math.Pow(10, -places), bit = step * 1e-8m;
                decimal down = Read(value, places, Rounding.Down), up = Read(value, places, Rounding.Up), nearest = Read(value, places, Rounding.Nearest);
                Assert.InRange(down, exact - step, exact + bit);
                Assert.InRange(up, exact - bit, exact + step);
                Assert.InRange(nearest, exact - (step / 2) - bit, exact + (step / 2) + bit);
                Assert.True(down <= nearest && nearest <= up);
            },
            iter: 50_000);

    [Theory]
    [InlineData(1.75, 64, "1 3/4 in")]
    [InlineData(-1.75, 64, "−1 3/4 in")]
    [InlineData(0.75, 64, "3/4 in")]
    [InlineData(2, 64, "2 in")]
    [InlineData(0, 64, "0 in")]
    [InlineData(-0.001, 64, "0 in")]
    [InlineData(0.515625, 64, "33/64 in")]
    [InlineData(0.515625, 32, "17/32 in")]
    [InlineData(1.999, 64, "2 in")]
    [InlineData(31.125, 16, "31 1/8 in")]
    public void FractionOfInch_Length_IsWritten(double inches, int denominator, string text)
    {
        Assert.Equal(text, FigureText.FractionOfInch(Length.FromInches(inches), denominator));
    }

    [Fact]
    public void FractionOfInch_OffByMoreThanTolerance_IsNotWritten()
    {
        var length = Length.FromInches(1.76);
        Assert.Null(FigureText.FractionOfInch(length, 64, 0.1e-4));
        Assert.Equal("1 49/64 in", FigureText.FractionOfInch(length, 64, 2e-4));
        Assert.Equal("1 3/4 in", FigureText.FractionOfInch(Length.FromInches(1.75), 64, 1e-9));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(1e300)]
    public void FractionOfInch_NoSuchLength_IsNotWritten(double metres)
    {
        Assert.Null(FigureText.FractionOfInch(new(metres)));
    }

    private static decimal Read(double value, int places, Rounding rounding) =>
        decimal.Parse(FigureText.Plain(value, places, rounding).Replace('−', '-'), CultureInfo.InvariantCulture);
}
