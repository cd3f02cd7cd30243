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

    private static LadderLayout Layout(string name) => LadderCases.All.Single(c => c.Name == name).Layout;
}
