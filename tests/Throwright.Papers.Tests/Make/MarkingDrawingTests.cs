using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Formats.Drawing;
using Throwright.Formats.Dxf;
using Throwright.Papers.Make;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Tests.Make;

public class MarkingDrawingTests
{
    private static readonly FigureWriter Say = new(new Display { Length = LengthUnit.Millimetre });

    private static readonly ShopTitle Title = new("Demo amphibian", "Marking for COWL FLAP", "cowl-flap-M");

    private static readonly Marking CowlFlap = new("COWL FLAP", "PULL TO CLOSE", 0.75, LightOnDark: true);

    /// <summary>NUREG-0700 (read): 0.006 of the distance; half as much again in dim light (common practice). 750 mm: 6.75 mm.</summary>
    [Fact]
    public void Height_ByDistance_IsThePreferredShareForDimLight()
    {
        Assert.Equal(0.00675, CowlFlap.Height, 1e-12);
        // DOD-HDBK-791, 6-5.3.2 (read): 1/7 to 1/8 of the height for light letters on dark.
        Assert.InRange(CowlFlap.Stroke, 0.00675 / 8, 0.00675 / 7);
        Assert.Equal(0.00675 / 6, (CowlFlap with { LightOnDark = false }).Stroke, 1e-12);
        Assert.Equal(0.004, (CowlFlap with { Typed = 0.004 }).Height);
    }

    [Fact]
    public void Plate_HoldsStrokesAndNothingElse()
    {
        var plate = MarkingDrawing.Plate(CowlFlap);
        Assert.All(plate.Shapes, s => Assert.True(s is Outline { Closed: false, Layer: MarkingDrawing.Engrave } or Outline { Layer: "ground" }));
        Assert.All(plate.Shapes, s => Assert.True(plate.Paper.Contains(s.Bounds, 0.01)));
        Assert.DoesNotContain("TEXT", DxfWriter.Write(plate, DxfEdition.R2000).Split("\r\n").SkipWhile(l => l != "ENTITIES"));
        Assert.Contains("ENGRAVE", DxfWriter.Write(plate, DxfEdition.R12), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("COWL FLAP", "PULL TO CLOSE", 0.75)]
    [InlineData("T/W LOCK", "", 0.5)]
    [InlineData("EMERGENCY GEAR RELEASE", "PULL AND HOLD 5 S", 0.9)]
    public void Page_OfAMarking_KeepsItsLabelsApart(string label, string how, double distance) =>
        LabelChecks.Apart(MarkingDrawing.Page(new(label, how, distance, false), Say, Title, ShopPaper.Letter), label);

    [Fact]
    public void Page_Worked_IsAsApproved() => Approved.Check("marking.svg", SvgWriter.Write(MarkingDrawing.Page(CowlFlap, Say, Title), Palettes.Paper));
}
