using Throwright.Formats.Drawing;
using Throwright.Papers.Lever;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Tests;

public sealed class LeverGoldenTests
{
    private const double Inch = 0.0254;

    [Fact]
    public void Lever_SquareAtMid_IsAsApproved() =>
        Check("lever-square-at-mid", LeverCases.Of(1.5 * Inch, -45, 45, new(1.5 * Inch, -4.2 * Inch, 0)), 0.6 * Inch);

    [Fact]
    public void Lever_AnchorOutOfPlaneOnTheOtherSide_IsAsApproved() =>
        Check("lever-out-of-plane", LeverCases.Of(1 * Inch, 20, 95, new(0.1 * Inch, 3 * Inch, 0.4 * Inch), new(0.2, -1, 0)), 0.4 * Inch);

    [Fact]
    public void Lever_DeadCentreInside_IsNamed() =>
        Check("lever-dead-centre", LeverCases.Of(2 * Inch, -30, 80, new(4 * Inch, 2.4 * Inch, 0), null, [Math.Atan2(2.4, 4)]), 0.5 * Inch);

    private static void Check(string name, Throwright.Engine.Throw.Sweep sweep, double tip) =>
        Approved.Check($"{name}.svg", SvgWriter.Write(LeverDrawing.Page(sweep, LadderCases.Flap, new(), new() { TipLength = tip }), Palettes.Screen));
}
