using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Engine.Model;
using Throwright.Formats.Drawing;
using Throwright.Papers.Make;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Tests.Make;

public class WedgeDrawingTests
{
    private const double Mm = 1e-3, Degree = Math.PI / 180;

    private static readonly FigureWriter Metric = new(new Display { Length = LengthUnit.Millimetre }), Inches = new(new Display { Length = LengthUnit.Inch });

    private static readonly ShopTitle Title = new("Demo amphibian", "Wedge for CABIN HEAT", "cabin-heat-W") { Material = "6061-T6", Finish = "chromate, primer", Mass = "9.6 g" };

    internal static WedgePair Worked(WedgeKey key = WedgeKey.Pin) => WedgePairSolver.Solve(
        new(new(12.5 * Degree, 60 * Degree), 9.5 * Mm, 1.6 * Mm, 16 * Mm) { Outside = 32 * Mm, ThinEdge = 1.5 * Mm, Chamfer = 0.5 * Mm, Key = key, ShankFlat = 4.2 * Mm, NutHeight = 8 * Mm });

    public static TheoryData<string> Names => ["wedge-part", "wedge-pair"];

    private static Picture Drawing(string name, WedgePair pair, FigureWriter say, ShopPaper paper) =>
        name == "wedge-part" ? WedgeDrawing.Part(pair, say, Title, paper) : WedgeDrawing.Pair(pair, say, Title, paper);

    [Theory]
    [MemberData(nameof(Names))]
    public void Drawing_Worked_IsAsApproved(string name) => Approved.Check($"{name}.svg", SvgWriter.Write(Drawing(name, Worked(), Metric, ShopPaper.A4), Palettes.Paper));

    /// <summary>Every label keeps off every other, off every line and inside the frame, over the range of wedges.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Labels_OverTheRangeOfWedges_TouchNothing(string name)
    {
        foreach (var paper in (ShopPaper[])[ShopPaper.A4, ShopPaper.Letter])
        {
            foreach (var say in (FigureWriter[])[Metric, Inches])
            {
                foreach (var tilt in (double[])[2, 5, 12.5, 20, 30])
                {
                    foreach (var (shank, seat) in ((double, double)[])[(6.35, 11), (9.5, 16), (15.9, 24), (19, 30)])
                    {
                        foreach (var key in Enum.GetValues<WedgeKey>())
                        {
                            var pair = WedgePairSolver.Solve(new(new(tilt * Degree, 200 * Degree), shank * Mm, 1.6 * Mm, seat * Mm)
                            {
                                ThinEdge = 1.5 * Mm,
                                Key = key,
                                ShankFlat = 0.42 * shank * Mm,
                                Chamfer = key == WedgeKey.Pin ? 0.4 * Mm : 0,
                                PinDiameter = 1.5 * Mm,
                                Stock = seat == 11 ? WedgeStock.Printed : WedgeStock.Metal,
                            });
                            LabelChecks.Apart(Drawing(name, pair, say, paper), $"{name} {tilt} {shank} {key} {say.LengthUnitName} {paper}");
                        }
                    }
                }
            }
        }
    }

    [Fact]
    public void Part_Worked_SaysEveryDimension()
    {
        var words = WedgeDrawing.Part(Worked(), Metric, Title).Letterings.Select(l => l.PlainText).ToList();
        foreach (var wanted in (string[])["Ø32.00", "Ø9.90 +0.10 −0", "1.50 min", "(8.59)", "12.50° ±0.25°", "10.48", "Ø3.00 H9, 2.00 deep", "A", "B", "2 : 1", "millimetres", "6061-T6", "1 of 2"])
            Assert.Contains(wanted, words);
        var inches = WedgeDrawing.Part(Worked(), Inches, Title).Letterings.Select(l => l.PlainText).ToList();
        foreach (var wanted in (string[])["Ø1.260", "Ø.390 +.004 −0", ".059 min", "inches"])
            Assert.Contains(wanted, inches);
    }

    [Theory]
    [InlineData(0, "12.5° right")]
    [InlineData(90, "12.5° up")]
    [InlineData(180, "12.5° left")]
    [InlineData(270, "12.5° down")]
    public void Lean_AlongAnAxis_IsToldByOneAngle(double azimuth, string said) => Assert.Equal(said, WedgeDrawing.LeanOf(new(12.5 * Degree, azimuth * Degree), Metric));

    [Fact]
    public void Lean_BetweenAxes_IsToldByTwoSlopes()
    {
        // tan^2 = tan^2 + tan^2: 10 and 10 make 14.002.
        var tilt = Tilt.FromSlopes(-10 * Degree, 10 * Degree);
        Assert.Equal("10.0° up and 10.0° left", WedgeDrawing.LeanOf(tilt, Metric));
    }
}
