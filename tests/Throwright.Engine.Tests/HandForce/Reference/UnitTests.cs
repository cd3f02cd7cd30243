using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.HandForce.Reference;

/// <summary>The yardsticks of hand force in both systems of units.</summary>
public sealed class UnitTests
{
    private static readonly FigureWriter InPounds = new(new Display());
    private static readonly FigureWriter InNewtons = new(new Display { Length = LengthUnit.Millimetre, Force = ForceUnit.Newton });

    // 18 N and 45 N: MIL-STD-1472E 5.4.3.1.8.7 (R). 50 lbf: 14 CFR 23.143(c) (R). 133 lbf in: 14 CFR 23.397(b) (R). Factors exact.
    [Fact]
    [Trait("Check", "ST19")]
    public void Yardsticks_InBothSystems_AgreeToThePrintedFigures()
    {
        Assert.Equal(4.05, new Force(Published.Get("hand/finger-pull").Value).PoundsForce, 0.005);
        Assert.Equal(10.1, new Force(Published.Get("hand/t-handle-pull").Value).PoundsForce, 0.05);
        Assert.Equal(222.4, Published.Get("hand/one-hand-brief").Value, 0.05);
        Assert.Equal(15.03, Torque.FromPoundForceInches(133).NewtonMetres, 0.005);
    }

    [Fact]
    public void Force_Demanded_IsNeverShownSmallerThanItIs()
    {
        Assert.Equal("4.1 lbf", InPounds.Force(18));
        Assert.Equal("18.0 N", InNewtons.Force(18));
        Assert.Equal("18.1 N", InNewtons.Force(18.01));
        Assert.Equal("4.0 lbf", InPounds.Force(18, Rounding.Down));
    }

    [Fact]
    public void Length_LeftOver_IsNeverShownLargerThanItIs()
    {
        Assert.Equal("0.124 in", InPounds.Length(0.0031749, Rounding.Down));
        Assert.Equal("0.125 in", InPounds.Length(0.003175, Rounding.Down));
        Assert.Equal("3.1 mm", InNewtons.Length(0.0031749, Rounding.Down));
        // An overrun is shown larger: farther beyond the stop.
        Assert.Equal("−0.022 in", InPounds.Length(-0.0212 * 0.0254, Rounding.Down));
    }
}
