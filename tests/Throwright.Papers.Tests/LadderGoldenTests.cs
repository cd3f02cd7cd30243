using Throwright.Formats.Drawing;
using Throwright.Papers.Ladder;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Tests;

public sealed class LadderGoldenTests
{
    public static TheoryData<string> Names => [.. LadderCases.All.Select(c => c.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Page_EachCase_IsAsApproved(string name) =>
        Approved.Check($"ladder-{name}-page.svg", SvgWriter.Write(LadderDrawing.Page(Layout(name)).Picture, Palettes.Screen));

    [Theory]
    [MemberData(nameof(Names))]
    public void Upright_EachCase_IsAsApproved(string name) =>
        Approved.Check($"ladder-{name}-upright.svg", SvgWriter.Write(LadderDrawing.Upright(Layout(name)).Picture, Palettes.Screen));

    [Theory]
    [MemberData(nameof(Names))]
    public void TrueSize_EachCase_IsAsApproved(string name) =>
        Approved.Check($"ladder-{name}-true-size.svg", SvgWriter.Write(LadderDrawing.TrueSize(Layout(name)).Picture, Palettes.Paper));

    [Theory]
    [MemberData(nameof(Names))]
    public void Characters_EachCase_AreAsApproved(string name)
    {
        var layout = Layout(name);
        (int Width, bool Plain)[] variants = [(100, false), (100, true), (72, false)];
        var text = string.Concat(variants.Select(o => $"-- {o.Width} columns{(o.Plain ? ", plain" : "")}\n\n{LadderDrawing.Characters(layout, new() { Width = o.Width, Plain = o.Plain }).Text}\n"));
        Approved.Check($"ladder-{name}.txt", text);
    }

    [Fact]
    public void Page_OnPaperWithKey_IsAsApproved() =>
        Approved.Check("ladder-worst-case-overrun-paper.svg", SvgWriter.Write(LadderDrawing.Page(LadderCases.WorstCaseOverrun, new() { Width = 720, Key = true }).Picture, Palettes.Paper));

    [Fact]
    public void Page_WithATry_ShowsItInBlue()
    {
        var layout = LadderCases.WorstCaseOverrun with { Try = new(0.40 * 0.0254, 2.605 * 0.0254, "0.28 in toward the tip") };
        Approved.Check("ladder-worst-case-overrun-try.svg", SvgWriter.Write(LadderDrawing.Page(layout).Picture, Palettes.Screen));
    }

    private static LadderLayout Layout(string name) => LadderCases.All.Single(c => c.Name == name).Layout;
}
