using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Make;
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

    private static readonly AnchorBracket Bracket = new()
    {
        Material = "6061-T6",
        Thickness = new(0.0016),
        Radius = new(0.0033),
        Base = new(0.041),
        Standing = new(0.032),
        Width = new(0.038),
        Conduit = new(new(0.019), Length.Zero, new(0.0064)),
        Fasteners = [new(new(0.0165), new(0.0076), new(0.0048)), new(new(0.0165), new(-0.0076), new(0.0048)), new(new(0.0305), Length.Zero, new(0.0048))],
        Fastener = "AN3",
    };

    [Fact]
    public void Bracket_Described_GivesTheStretchItsStiffness_UntilOneIsMeasured()
    {
        var plain = Runs.Sound with { LeverEnd = Runs.Sound.LeverEnd! with { BracketStiffness = null } };
        var described = plain with { LeverEnd = plain.LeverEnd! with { Bracket = Bracket } };
        var measured = described with { LeverEnd = described.LeverEnd! with { BracketStiffness = Toleranced<Stiffness>.Exact(new(1e5)) } };
        RunAnswer Check(Run run) => RunCheck.Check(Runs.Aircraft, run, Runs.Quick);
        Assert.Null(Check(plain).ForceCase!.BracketStiffness);
        var answer = Check(described);
        var stiffness = answer.ForceCase!.BracketStiffness!.Value;
        Assert.True(stiffness.Least < stiffness.Nominal && stiffness.Nominal < stiffness.Most);
        Assert.Equal(1e5, Check(measured).ForceCase!.BracketStiffness!.Value.Nominal);
        // A softer bracket never makes the stretch smaller.
        Assert.True(answer.Find("stretch-pull")!.Value >= Check(plain).Find("stretch-pull")!.Value);
        foreach (var rule in (string[])[MakeRules.BendRadius, MakeRules.EdgeDistance, MakeRules.Pitch, MakeRules.BracketGive, MakeRules.Fasteners])
        {
            var finding = answer.Findings.Single(f => f.Rule == rule);
            Assert.NotNull(answer.Find(finding.Figure!));
        }
    }

    [Fact]
    public void Wedge_PrintedInAHotCabin_IsAFitCheckOnly()
    {
        var run = Leaning();
        run = run with { CockpitEnd = run.CockpitEnd! with { Wedge = new() { Stock = WedgeStock.Printed, Material = "PETG" } } };
        var answer = RunCheck.Check(Runs.Aircraft with { Runs = [run] }, run, Runs.Quick);
        var stock = answer.Findings.Single(f => f.Rule == MakeRules.Stock);
        Assert.Equal(Verdict.Caution, stock.Verdict);
        Assert.Contains("a fit check only", stock.Why, StringComparison.Ordinal);
        // PETG does not conduct, but its sheet is not named.
        Assert.Equal(Verdict.NeedsInput, answer.Findings.Single(f => f.Rule == MakeRules.Galvanic).Verdict);
    }

    [Theory]
    [InlineData(16, true)]
    [InlineData(17, false)]
    public void Nut_WiderThanTheWedge_IsTold(double outside, bool hangsOver)
    {
        var run = Leaning();
        // 14.3 across the flats is 16.51 across the corners.
        run = run with { CockpitEnd = run.CockpitEnd! with { Wedge = new() { Outside = new(outside / 1000), Key = WedgeKey.None } } };
        var answer = RunCheck.Check(Runs.Aircraft with { Runs = [run] }, run, Runs.Quick);
        Assert.Equal(hangsOver, answer.Findings.Any(f => f.Rule == MakeRules.NutSeat && f.Verdict == Verdict.Caution));
    }

    [Theory]
    [InlineData(28, Verdict.Clear)]
    [InlineData(12, Verdict.Fail)]
    public void Thread_ThatReaches_OrNot_IsTold(double length, Verdict expected)
    {
        var run = Leaning();
        run = run with { CockpitEnd = run.CockpitEnd! with { Bushing = run.CockpitEnd.Bushing! with { Length = L(length) } } };
        var answer = RunCheck.Check(Runs.Aircraft with { Runs = [run] }, run, Runs.Quick);
        Assert.Equal(expected, answer.Findings.Single(f => f.Rule == MakeRules.Thread).Verdict);
        Assert.Equal(Verdict.Clear, answer.Findings.Single(f => f.Rule == MakeRules.SheetEdge).Verdict);
    }
}
