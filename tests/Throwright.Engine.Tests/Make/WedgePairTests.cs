using CsCheck;
using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Engine.Model;
using Throwright.Shapes.Solids;

namespace Throwright.Engine.Tests.Make;

public class WedgePairTests
{
    private const double Mm = 1e-3, Degree = Math.PI / 180;

    private static readonly FigureWriter Say = new(new Display { Length = LengthUnit.Millimetre });

    /// <summary>The worked pair: 12.5 deg up, shank 9.5, sheet 1.6, outside 32, thin edge 1.5 mm.</summary>
    private static readonly WedgePairCase Worked = new(new(12.5 * Degree, 90 * Degree), 9.5 * Mm, 1.6 * Mm, 16 * Mm) { Outside = 32 * Mm, ThinEdge = 1.5 * Mm };

    [Theory, Trait("Check", "MK1")]
    [InlineData(10, 10, 14.002, 14.106)]
    [InlineData(20, 15, 24.321, 24.814)]
    public void Tilt_FromTwoAngles_DependsOnWhatTheyMean(double right, double up, double slopes, double turns)
    {
        Assert.Equal(slopes, Tilt.FromSlopes(right * Degree, up * Degree).Angle / Degree, 0.0005);
        var turned = Tilt.FromTurns(right * Degree, up * Degree);
        Assert.Equal(turns, turned.Angle / Degree, 0.0005);
        Assert.Equal(Math.Cos(right * Degree) * Math.Cos(up * Degree), Math.Cos(turned.Angle), 1e-15);
    }

    [Fact, Trait("Check", "MK2")]
    public void Pair_Worked_HasItsGripAndVolume()
    {
        var pair = WedgePairSolver.Solve(Worked with { Key = WedgeKey.None, Clearance = 1.7 * Mm });
        Assert.Equal(11.73, pair.Grip / Mm, 0.005);
        Assert.Equal(1.6, pair.GripSquare / Mm, 1e-12);
        Assert.Equal(3561.886933, pair.Washer.Volume * 1e9, 5e-7);
        Assert.Equal([], Audit.Find(pair.Washer.Build(), pair.Washer.Volume, 1));
        Assert.Equal(Math.PI * ((16 * 16) - (5.6 * 5.6)) / Math.Cos(12.5 * Degree), pair.SeatArea * 1e6, 1e-9);
        Assert.Equal((16 / Math.Cos(12.5 * Degree), 16), (pair.FootprintAlong / Mm, pair.FootprintAcross / Mm), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-12);
    }

    /// <summary>20,000 points of the shank's path through the sheet against the slot.</summary>
    [Fact, Trait("Check", "MK3")]
    public void Hole_Worked_LeavesTheShankItsClearance()
    {
        var pair = WedgePairSolver.Solve(Worked);
        Assert.Equal(9.9, pair.SlotWidth / Mm, 1e-12);
        Assert.Equal(10.49, pair.SlotLength / Mm, 0.005);
        double tan = Math.Tan(12.5 * Degree), cos = Math.Cos(12.5 * Degree), least = double.PositiveInfinity;
        var slot = Profile.Slot(default, pair.SlotWidth, pair.SlotLength, 0);
        for (var i = 0; i < 1000; i++)
        {
            for (var k = 0; k <= 20; k++)
            {
                // Section of the tilted shank with a plane at height z of the sheet: an ellipse shifted by z tan a.
                double angle = i * Math.PI / 500, z = 1.6 * Mm * ((k / 20.0) - 0.5);
                least = Math.Min(least, slot.DistanceTo(new((4.75 * Mm * Math.Cos(angle) / cos) + (z * tan), 4.75 * Mm * Math.Sin(angle))));
            }
        }

        Assert.Equal(0.2, least / Mm, 1e-9);
        Assert.Equal(0.1953, least / Mm * cos, 0.00005);
    }

    [Theory, Trait("Check", "W1")]
    [InlineData(12.7, 1.6, 10, 13.178041)]
    [InlineData(10, 6, 20, 12.825599)]
    [InlineData(9.525, 0.8, 8, 9.731040)]
    public void Hole_WithoutClearance_IsTheDerivedLength(double shank, double sheet, double tilt, double length) =>
        Assert.Equal(length, WedgePairSolver.Solve(new(new(tilt * Degree, 0), shank * Mm, sheet * Mm, 25 * Mm) { Clearance = 0 }).SlotLength / Mm, 1e-6);

    [Fact, Trait("Check", "W2")]
    public void Stack_OfThePair_IsTheDerivedOne()
    {
        var pair = WedgePairSolver.Solve(new(new(10 * Degree, 0), 12.7 * Mm, 1.6 * Mm, 20 * Mm) { Outside = 25 * Mm, ThinEdge = 1 * Mm });
        Assert.Equal(3.204087, pair.Washer.Height / Mm, 1e-6);
        Assert.Equal(5.408175, pair.Washer.ThickEdge / Mm, 1e-6);
        Assert.Equal(8.032857, pair.Grip / Mm, 1e-6);
    }

    [Fact, Trait("Check", "MK4")]
    public void MostTilt_Worked_UsesUpTheThread()
    {
        var of = Worked with { UsableLength = 26 * Mm, NutHeight = 8 * Mm, ThreadPitch = 1 * Mm };
        // Room 26 - 3 - 8 - 1 = 14.
        var most = WedgePairSolver.Solve(of).MostTilt!.Value;
        Assert.Equal(21.0, most / Degree, 0.05);
        // At that tilt one full thread shows, to the last digit.
        Assert.Equal(1, WedgePairSolver.Solve(of with { Tilt = new(most, 0) }).ThreadBeyondNut!.Value / Mm, 1e-12);
    }

    [Theory, Trait("Check", "MK5")]
    [InlineData(12.5, 5, 1.08, 0.005)]
    [InlineData(10, 10, 1.734345, 1e-6)]
    [InlineData(10, 90, 14.106044, 1e-6)]
    [InlineData(10, 180, 20, 1e-9)]
    public void Seats_OfWedgesTurnedApart_LeanByTheDerivedAngle(double tilt, double turn, double lean, double within)
    {
        var pair = WedgePairSolver.Solve(Worked with { Tilt = new(tilt * Degree, 0) });
        Assert.Equal(lean, pair.SeatError(turn * Degree) / Degree, within);
        Assert.Equal(turn * Degree, pair.TurnFor(lean * Degree), 2 * within);
    }

    [Fact, Trait("Check", "W5")]
    public void Seats_OfTenDegreeWedgesTurnedTenDegrees_LeanByTheDerivedAngle() =>
        Assert.Equal(1.734345, WedgePairSolver.Solve(Worked with { Tilt = new(10 * Degree, 0) }).SeatError(10 * Degree) / Degree, 1e-6);

    [Theory, Trait("Check", "MK6")]
    [InlineData(300, 0.45, 0.005)]
    [InlineData(500, 0.27, 0.005)]
    [InlineData(1000, 0.13, 0.005)]
    [InlineData(2000, 0.067, 0.0005)]
    public void Gap_OnACurvedSheet_IsTheWorkedOne(double radius, double gap, double within) =>
        Assert.Equal(gap, WedgePairSolver.Solve(Worked with { Curved = new(radius * Mm, Worked.Tilt.Azimuth + (0.5 * Math.PI), IsTowardPilot: false) }).SheetGap / Mm, within);

    [Fact]
    public void Recipe_CutAndCleaned_LeavesTheHeightOfBothWedges()
    {
        Gen.Select(Gen.Double[0.5, 30], Gen.Double[1, 4], Gen.Double[0, 4]).Sample((tilt, thin, kerf) =>
        {
            var pair = WedgePairSolver.Solve(Worked with { Tilt = new(tilt * Degree, 0), ThinEdge = thin * Mm, Kerf = kerf * Mm, Key = WedgeKey.None });
            Assert.Equal(pair.Washer.Height, pair.Recipe.HeightLeft, 1e-15);
            Assert.Equal(2 * pair.Washer.Height, pair.Recipe.Length - (kerf * Mm / Math.Cos(tilt * Degree)), 1e-15);
        }, iter: 200);
    }

    [Fact]
    public void Pin_OfEitherWedge_StandsOverTheOneHoleInTheSheet()
    {
        var pair = WedgePairSolver.Solve(Worked);
        // Front: bore's axis meets the sheet (t/2) tan a along the lean; the pin stands as much toward thick, against the lean.
        Assert.Equal(0.5 * 1.6 * Math.Tan(12.5 * Degree), pair.Washer.Pin!.Along / Mm, 1e-12);
        Assert.Null(pair.Washer.Fault);
        var hole = Assert.Single(DrillTemplate.Of(pair).Holes);
        var centre = 1 / hole.Area * hole.Moment;
        // The tilt is up, so the front wedge's thick edge is down and its bore's axis comes toward the pilot: its y, axis
        // times thick, is to the pilot's right.
        Assert.Equal((pair.Washer.Pin.Across / Mm, 0), (centre.X / Mm, centre.Y / Mm), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-9);
    }

    [Fact]
    public void Template_Worked_HasTrueSizesAndTwoBars()
    {
        var pair = WedgePairSolver.Solve(Worked);
        var template = DrillTemplate.Of(pair);
        // Slot along the tilt, which is up.
        Assert.Equal(pair.SlotLength, template.Hole.Stretches.Max(s => Math.Max(s.From.Y, s.At(0.5).Y)) - template.Hole.Stretches.Min(s => Math.Min(s.From.Y, s.At(0.5).Y)), 1e-12);
        var bars = template.Lines.Where(l => l.Line == TemplateLine.Scale).Select(l => l.To - l.From).ToList();
        Assert.All(bars, b => Assert.Equal(0.1, b.Size, 1e-15));
        Assert.Equal(0, Vector2.Dot(bars[0], bars[1]), 1e-15);
        var front = template.Seats.Single(s => s.Line == TemplateLine.FrontSeat);
        Assert.Equal(0.8 * Math.Tan(12.5 * Degree), front.Centre.Y / Mm, 1e-12);
        // Cover is the shorter distance from a seat's end to the slot's end.
        Assert.Equal(pair.Cover, front.Along - Math.Abs(front.Centre.Y) - (0.5 * pair.SlotLength), 1e-15);
    }

    [Fact]
    public void Wedge_NoSizesGiven_HasTheLeastThinEdgeAndCoversTheNut()
    {
        var of = new WedgePairCase(new(5 * Degree, 0), 12.7 * Mm, 1 * Mm, 22 * Mm);
        Assert.Equal((1, 26), (WedgePairSolver.Solve(of).Washer.ThinEdge / Mm, WedgePairSolver.Solve(of).Washer.Outside / Mm));
        Assert.Equal(1.5, WedgePairSolver.Solve(of with { Stock = WedgeStock.Printed }).Washer.ThinEdge / Mm);
    }

    [Fact]
    public void Wedge_WithAFlat_HasItSquareToTheTiltSoThatBothFitOneShank()
    {
        var pair = WedgePairSolver.Solve(Worked with { Key = WedgeKey.Flat, ShankFlat = 4 * Mm });
        Assert.Equal(4.2, pair.Washer.BoreFlat / Mm, 1e-12);
        Assert.Equal(90 * Degree, pair.Washer.FlatDirection);
        Assert.Equal([], Audit.Find(pair.Washer.Build(), pair.Washer.Volume, 1));
    }

    [Fact]
    public void Wedge_ToPrint_StandsOnItsSquareFace()
    {
        var pair = WedgePairSolver.Solve(Worked);
        var mesh = pair.ToPrint(0.05 * Mm);
        Assert.Equal(0, mesh.OpenEdges);
        // The rim and the bore of the square face, all at one height, nothing below.
        var bed = mesh.Vertices.Min(v => v.Z);
        Assert.Equal(-pair.Washer.Height, bed, 1e-15);
        var onBed = mesh.Vertices.Where(v => v.Z < bed + 1e-9).ToList();
        Assert.Equal(16 * Mm, onBed.Max(v => new Vector2(v.X, v.Y).Size), 1e-12);
        Assert.Equal(0.5 * pair.Washer.Bore, onBed.Min(v => new Vector2(v.X, v.Y).Size), 1e-12);
        Assert.InRange(mesh.Volume, 0.99 * pair.Washer.Volume, pair.Washer.Volume);
    }

    [Fact]
    public void Rules_OfASoundPair_AreClear()
    {
        var pair = WedgePairSolver.Solve(Worked with { UsableLength = 25 * Mm, NutHeight = 8 * Mm, ThreadPitch = 1 * Mm, Curved = new(2000 * Mm, Worked.Tilt.Azimuth + (0.5 * Math.PI), IsTowardPilot: false) });
        Assert.All(MakeRules.Find(pair, Say), f => Assert.True(f.Verdict == Verdict.Clear && f.Sources.Count > 0, f.Sentence));
    }

    [Theory]
    [InlineData(MakeRules.ThinEdge, Verdict.Caution)]
    [InlineData(MakeRules.Stock, Verdict.Caution)]
    [InlineData(MakeRules.Cover, Verdict.Fail)]
    [InlineData(MakeRules.Thread, Verdict.Fail)]
    [InlineData(MakeRules.Key, Verdict.Caution)]
    [InlineData(MakeRules.Curve, Verdict.Caution)]
    public void Rules_OfAFaultyPair_SayWhat(string rule, Verdict verdict)
    {
        var faulty = Worked with
        {
            Stock = WedgeStock.Printed,
            ThinEdge = 0.5 * Mm,
            Outside = 18 * Mm,
            Sheet = 12 * Mm,
            Key = WedgeKey.None,
            Tilt = new(25 * Degree, 0),
            UsableLength = 20 * Mm,
            NutHeight = 8 * Mm,
            ThreadPitch = 1 * Mm,
            Curved = new(200 * Mm, Worked.Tilt.Azimuth + (0.5 * Math.PI), IsTowardPilot: false),
        };
        var finding = MakeRules.Find(WedgePairSolver.Solve(faulty), Say).Single(f => f.Rule == rule);
        Assert.Equal(verdict, finding.Verdict);
        Assert.NotEmpty(finding.Sentence);
    }

    [Fact]
    public void Rules_ThreadNotKnown_NeedsInput() =>
        Assert.Equal(Verdict.NeedsInput, MakeRules.Find(WedgePairSolver.Solve(Worked), Say).Single(f => f.Rule == MakeRules.Thread).Verdict);

    [Fact]
    public void Rules_PinThatBreaksOut_Fail() =>
        Assert.Equal(Verdict.Fail, MakeRules.Find(WedgePairSolver.Solve(Worked with { PinDiameter = 12 * Mm }), Say).Single(f => f.Rule == MakeRules.ThinEdge).Verdict);
}
