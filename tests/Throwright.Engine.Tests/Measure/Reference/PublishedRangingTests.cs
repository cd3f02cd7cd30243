using Throwright.Engine.Measure;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Tests.Measure.Reference;

/// <summary>
/// Test network "Stuttgart Central": a pillar by its distances to seven known points (J. L. Awange, E. W. Grafarend, Y. Fukuda,
/// S. Takemoto, "Direct polynomial approach to nonlinear distance (ranging) problems", Earth Planets Space 55 (2003) 231-241; also in
/// Awange and Grafarend, "Solving Algebraic Computational Problems in Geodesy and Geoinformatics", 2005). Numbers from
/// memory; they prove themselves: eight places and seven distances agree to 0.04 mm, which wrong digits would not.
/// </summary>
[Trait("Check", "M1")]
public class PublishedRangingTests
{
    private static readonly Vector3 Pillar = new(4157066.1116, 671429.6655, 4774879.3704);

    private static readonly (string Name, Vector3 Place, double Distance)[] Seven =
    [
        ("1", new(4157246.5346, 671877.0281, 4774581.6314), 566.8635),
        ("2", new(4156749.5977, 672711.4554, 4774981.5459), 1324.2380),
        ("3", new(4156748.6829, 671171.9385, 4775235.5483), 542.2609),
        ("4", new(4157066.8851, 671064.9381, 4774865.8238), 364.9797),
        ("5", new(4157266.6181, 671099.1577, 4774689.8536), 430.5286),
        ("6", new(4157307.5147, 671171.7006, 4774690.5691), 400.5837),
        ("7", new(4157244.9515, 671338.5915, 4774699.9070), 269.2309),
    ];

    [Fact]
    public void Numbers_AmongThemselves_AgreeToTheirLastDigit() =>
        Assert.All(Seven, s => Assert.InRange((Pillar - s.Place).Size - s.Distance, -4e-5, 4e-5));

    [Fact]
    public void Pillar_FromAllSevenDistances_IsWhereItWasPublished()
    {
        var found = TapeSolver.Solve(new([.. Seven.Select(s => new TapeReading(new(s.Name, s.Place), s.Distance, 1e-4))])).Point!;
        Assert.InRange((found.Place - Pillar).Size, 0, 2e-4);
        Assert.Empty(found.Suspects);
        Assert.Equal(4, found.Redundant);
        Assert.Equal(1, found.Widened);
    }

    /// <summary>Every three of the seven, as the paper's combinations do: two places each, of which one is the pillar.</summary>
    [Fact]
    public void Pillar_FromEveryThree_IsOneOfTheTwoPlaces()
    {
        var tried = 0;
        for (var i = 0; i < 7; i++)
        {
            for (var j = i + 1; j < 7; j++)
            {
                for (var k = j + 1; k < 7; k++)
                {
                    var of = new TapeCase([.. new[] { i, j, k }.Select(n => new TapeReading(new(Seven[n].Name, Seven[n].Place), Seven[n].Distance, 1e-4))], Near: Pillar);
                    if (TapeSolver.Solve(of).Point is not { } point)
                        continue;
                    tried++;
                    // As far as the last printed digit lets it.
                    Assert.InRange((point.Place - Pillar).Size, 0, 6 * point.Axes[0].Sigma);
                }
            }
        }

        Assert.InRange(tried, 30, 35);
    }

    /// <summary>A metre wrong in any one of the seven is found and put right.</summary>
    [Fact]
    public void Distance_AMetreOff_IsNamedWithItsError()
    {
        for (var bad = 0; bad < 7; bad++)
        {
            var point = TapeSolver.Solve(new([.. Seven.Select((s, i) => new TapeReading(new(s.Name, s.Place), s.Distance + (i == bad ? 1 : 0), 1e-3))])).Point!;
            Assert.Equal(Seven[bad].Name, point.Suspects[0].Reading.From.Name);
            Assert.Equal(1, point.Suspects[0].Error, 1e-2);
            Assert.InRange((point.Suspects[0].Place - Pillar).Size, 0, 1e-2);
        }
    }
}
