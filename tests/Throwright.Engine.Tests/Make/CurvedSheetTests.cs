using CsCheck;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Engine.Model;
using Throwright.Engine.Tests.Chain;
using Throwright.Engine.Tests.Throw;
using static Throwright.Engine.Tests.Chain.Cockpits;
using Tilt = Throwright.Engine.Make.Tilt;

namespace Throwright.Engine.Tests.Make;

/// <summary>What sits flat on a sheet that is bent.</summary>
public class CurvedSheetTests
{
    private const double Millimetre = 1e-3, Degree = Math.PI / 180;

    private static readonly FigureWriter Say = new(new Display { Length = LengthUnit.Millimetre });

    private static WedgePair Pair(double radius, double straight, bool toward = true) => WedgePairSolver.Solve(
        new(new Tilt(12.5 * Degree, 0), 9.5 * Millimetre, 1.6 * Millimetre, 16 * Millimetre) { Outside = 32 * Millimetre, ThinEdge = 1.5 * Millimetre, Curved = new(radius * Millimetre, straight * Degree, toward) });

    /// <summary>By points of the seat's rim: the farthest of them from the plane through the line of contact, measured on the cylinder.</summary>
    [Fact]
    public void Gap_InAnyDirection_IsThatOfTheRimsFarthestPoint() =>
        Gen.Select(Gen.Double[60, 3000], Gen.Double[-180, 180], Gen.Double[1, 25], Gen.Double[-180, 180]).Sample(t =>
        {
            var (radius, straight, lean, azimuth) = t;
            var pair = WedgePairSolver.Solve(new(new(lean * Degree, azimuth * Degree), 9.5 * Millimetre, 1.6 * Millimetre, 16 * Millimetre) { Outside = 32 * Millimetre, Curved = new(radius * Millimetre, straight * Degree, false) });
            var most = 0.0;
            for (var i = 0; i < 3600; i++)
            {
                // The rim in the sheet: the ellipse turned to the lean; then its distance from the straight line through the middle.
                double a = i * Math.PI / 1800, x = pair.FootprintAlong * Math.Cos(a), y = pair.FootprintAcross * Math.Sin(a);
                double u = (x * Math.Cos(azimuth * Degree)) - (y * Math.Sin(azimuth * Degree)), v = (x * Math.Sin(azimuth * Degree)) + (y * Math.Cos(azimuth * Degree));
                var off = Math.Abs((v * Math.Cos(straight * Degree)) - (u * Math.Sin(straight * Degree)));
                most = Math.Max(most, (radius * Millimetre) - Math.Sqrt(Math.Pow(radius * Millimetre, 2) - (off * off)));
            }

            Assert.Equal(most, pair.SheetGap, (1e-5 * most) + 1e-12);
        });

    /// <summary>Straight along the lean the half width is 16, across it 16/cos 12.5; the face behind is sharper by the sheet where it bulges toward the pilot.</summary>
    [Fact]
    public void Wedge_BeyondTheLimit_IsToldWhatSeatsIt()
    {
        var finding = MakeRules.Find(Pair(300, 90), Say).Single(f => f.Rule == MakeRules.Curve);
        Assert.Equal(Verdict.Caution, finding.Verdict);
        Assert.Contains("stands off by 0.5 mm", finding.Sentence);
        // asin(16.39 / 298.4).
        Assert.Contains("3.2°", finding.Why);
        Assert.Equal(3, finding.Remedies.Count(r => r.Text.Length > 0) + (finding.Remedies[0].Text.StartsWith("Take wedges", StringComparison.Ordinal) ? 0 : 1));
        Assert.Contains(finding.Remedies, r => r.Text.Contains("saddle", StringComparison.Ordinal) && r.Text.Contains("hollow to 300.0 mm", StringComparison.Ordinal) && r.Text.Contains("bulging to 298.4 mm", StringComparison.Ordinal));
        Assert.Contains(finding.Remedies, r => r.Text.Contains("doubler", StringComparison.Ordinal));
        Assert.Equal(Verdict.Clear, MakeRules.Find(Pair(2000, 90), Say).Single(f => f.Rule == MakeRules.Curve).Verdict);
        Assert.Equal(Verdict.Fail, MakeRules.Find(Pair(15, 0), Say).Single(f => f.Rule == MakeRules.Curve).Verdict);
        Assert.Equal(16 * Millimetre, Pair(300, 0).SheetHalfWidth, 1e-12);
        Assert.Equal(16 * Millimetre / Math.Cos(12.5 * Degree), Pair(300, 90).SheetHalfWidth, 1e-12);
    }

    /// <summary>A smaller wedge is offered where the nut still fits on it, and does what is said of it.</summary>
    [Fact]
    public void Wedge_SmallerAsOffered_StandsOffByTheLimit()
    {
        var pair = Pair(900, 90);
        Assert.StartsWith("Take wedges of", MakeRules.Find(pair, Say).Single(f => f.Rule == MakeRules.Curve).Remedies[0].Text);
        var widest = 2 * CurvedSheet.WidestFor(898.4 * Millimetre, 1e-4) * Math.Cos(12.5 * Degree);
        Assert.Equal(1e-4, WedgePairSolver.Solve(pair.Case with { Outside = widest }).SheetGap, 1e-9);
    }

    private static Run Curved(SheetBulge bulges, double degrees = 0, double radius = 250) => Handle("knob").WithEnd(e => e with
    {
        Sheet = Panel with { Curve = new(Levers.Mm(radius), new(0, 0, 1), bulges) },
        Tilt = degrees == 0 ? null : new(Deg(0), Deg(degrees)),
    });

    [Fact]
    public void SquareNut_OnACurvedSheet_IsJudgedByItsCorners()
    {
        var run = Curved(SheetBulge.Toward);
        var answer = RunCheck.Check(Of(run) with { Sheets = [run.CockpitEnd!.Sheet!] }, run, Runs.Quick, new() { Cures = false });
        var finding = answer.Findings.Single(f => f.Rule == MakeRules.Curve);
        Assert.Equal(Verdict.Caution, finding.Verdict);
        // 19 across the flats is 21.94 across the corners; P 248.4.
        Assert.Equal((0.2484 - Math.Sqrt((0.2484 * 0.2484) - Math.Pow(0.019 / Math.Sqrt(3), 2))), answer.Find("sheet-gap")!.Value, 1e-9);
        Assert.NotNull(answer.Find("sheet-rock"));
    }

    /// <summary>A knob that leans to the side over a hollow sheet comes nearer to it than over a flat one, over a bulging one less near.</summary>
    [Fact]
    public void Knob_LeaningOverACurvedSheet_IsHeldAgainstTheCurve()
    {
        double Least(Run run) => RunCheck.Check(Of(run) with { Sheets = [run.CockpitEnd!.Sheet!] }, run, Runs.Quick, new() { Cures = false }).Clearance!.OwnSheet!.Lower;
        double hollow = Least(Curved(SheetBulge.Away, 20)), bulging = Least(Curved(SheetBulge.Toward, 20)), flat = Least(Curved(SheetBulge.Away, 20, 40000));
        Assert.True(hollow < flat - 5e-4 && flat < bulging, $"{hollow} {flat} {bulging}");
        // The rim's nearest point: 20.8 along the shank and 15 square to it, the foot in the middle of 1.6 of sheet. Its distance from the cylinder's face.
        double sin = Math.Sin(20 * Degree), cos = Math.Cos(20 * Degree), aside = (20.8 * sin) + (15 * cos), above = (20.8 * cos) - (15 * sin) - 0.8;
        Assert.Equal((250 - Math.Sqrt((aside * aside) + ((250 - above) * (250 - above)))) / 1000, hollow, 2e-4);
        Assert.Equal((Math.Sqrt((aside * aside) + ((250 + above) * (250 + above))) - 250) / 1000, bulging, 2e-4);
    }
}
