using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Chain;

public class MadePartsTests
{
    private const double Degree = Math.PI / 180;

    private static Toleranced<Length> L(double mm) => Toleranced<Length>.Exact(new(mm / 1000));

    private static PointAt P(double x, double y, double z) => new(L(x), L(y), L(z));

    private static Run Leaning(double up = 10, double right = -6) => new()
    {
        Id = "r",
        CockpitEnd = new()
        {
            Tilt = new(new(up * Degree), new(right * Degree)),
            Hole = P(0, 20, 30),
            Sheet = new() { Id = "panel", At = P(0, 0, 0), Normal = new(1, 0, 0), Thickness = L(1.6), Outline = [P(0, 0, 0), P(0, 200, 0), P(0, 200, 100), P(0, 0, 100)] },
            Bushing = new() { Thread = "3/8-24 UNF", Length = new(new(0.028), 0.001, 0.001), Diameter = L(9.525), Nut = L(14.3), NutHeight = L(6.35) },
        },
    };

    [Fact]
    public void Pair_OfALeaningShank_HasItsTiltThreadAndNut()
    {
        var pair = MadeParts.Wedges(Leaning()).Pair!;
        // tan^2 = tan^2 + tan^2 of the two slopes.
        Assert.Equal(Math.Atan(Math.Sqrt(Math.Pow(Math.Tan(10 * Degree), 2) + Math.Pow(Math.Tan(6 * Degree), 2))), pair.Case.Tilt.Angle, 1e-12);
        // Up and to the left: between 90 and 180 deg from the right.
        Assert.InRange(pair.Case.Tilt.Azimuth, 90 * Degree, 180 * Degree);
        Assert.Equal(0.027, pair.Case.UsableLength!.Value, 1e-12);
        Assert.Equal(0.0254 / 24, pair.Case.ThreadPitch, 1e-12);
        Assert.True(pair.Case.NutSeat > 14.3e-3);
        Assert.Equal(0.02, MadeParts.ToSheetEdge(Leaning())!.Value, 1e-12);
    }

    [Fact]
    public void Pair_WithoutItsSizes_NamesThem()
    {
        var run = Leaning() with { CockpitEnd = new() { Tilt = new(new(10 * Degree), new(0)) } };
        var (pair, needs) = MadeParts.Wedges(run);
        Assert.Null(pair);
        Assert.Equal(["cockpitEnd.sheet", "cockpitEnd.bushing.diameter", "cockpitEnd.bushing.nut"], needs.Select(n => n.Path));
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1.9, 0)]
    [InlineData(35, 0)]
    public void Pair_OfAShankTooSquareOrTooSteep_IsNone(double up, double right)
    {
        var (pair, needs) = MadeParts.Wedges(Leaning(up, right));
        Assert.Null(pair);
        Assert.Empty(needs);
    }

    [Theory]
    [InlineData("1/2-20 UNF", 1.27)]
    [InlineData("#10-32", 0.79375)]
    [InlineData("M12x1.5", 1.5)]
    [InlineData("M 10 x 1", null)]
    [InlineData("half inch", null)]
    public void Pitch_ByItsName_IsRead(string thread, double? mm)
    {
        if (mm is null)
            Assert.Null(MadeParts.PitchOf(thread));
        else
            Assert.Equal(mm.Value, MadeParts.PitchOf(thread)!.Value * 1000, 1e-9);
    }
}
