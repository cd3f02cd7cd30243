using Throwright.Formats.Drawing;
using Throwright.Papers.Curves;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Tests;

public sealed class CurveGoldenTests
{
    private static readonly CurveLabels Labels = new() { ForceLimit = 20 * 4.4482216152605, BandName = "grey: friction 0.15 ± 0.05" };

    [Fact]
    public void Sheet_WorstCaseOverrun_IsAsApproved()
    {
        var layout = LadderCases.WorstCaseOverrun;
        Approved.Check("sheet-worst-case-overrun.svg", SvgWriter.Write(LadderSheet.Page(layout, CurveCases.For(layout), Labels).Picture, Palettes.Screen));
        Approved.Check("sheet-worst-case-overrun.txt", Both(p => LadderSheet.Characters(layout, CurveCases.For(layout), Labels, new() { Plain = p }).Text));
    }

    [Fact]
    public void Curves_InNewtons_AreAsApproved()
    {
        var layout = LadderCases.Millimetres;
        Approved.Check("curves-millimetres.svg", SvgWriter.Write(CurveDrawing.Page(layout, CurveCases.For(layout), new() { ForceLimit = 60 }).Picture, Palettes.Screen));
    }

    [Fact]
    public void Curves_NoForceKnown_SayWhatIsNeeded()
    {
        var layout = LadderCases.Clear;
        CurveLabels labels = new() { ForceNeeds = "the device's torque: opens hand force" };
        Approved.Check("curves-force-needs-input.svg", SvgWriter.Write(CurveDrawing.Page(layout, CurveCases.For(layout, forces: false), labels).Picture, Palettes.Screen));
        Approved.Check("curves-force-needs-input.txt", Both(p => CurveDrawing.Characters(layout, CurveCases.For(layout, forces: false), labels, new() { Plain = p }).Text));
    }

    [Fact]
    public void Curves_NoLadderYet_KeepTheirPlace()
    {
        Approved.Check("curves-needs-input.svg", SvgWriter.Write(CurveDrawing.Page(LadderCases.NeedsInput, null).Picture, Palettes.Screen));
        Approved.Check("curves-needs-input.txt", CurveDrawing.Characters(LadderCases.NeedsInput, null).Text);
    }

    private static string Both(Func<bool, string> draw) => draw(false) + "\n-- plain\n\n" + draw(true);
}
