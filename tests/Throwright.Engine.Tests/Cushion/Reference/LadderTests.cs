using Throwright.Engine.Cushion;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Cushion.Reference;

/// <summary>Published stacks and worked figures of docs/theory/cushion.md, taken through the whole ladder.</summary>
public sealed class LadderTests
{
    /// <summary>Arm 30 mm, anchor 100 mm behind a square wire, +-45 deg, all exact.</summary>
    private static readonly LadderValue[] Lever =
    [
        Ladders.Value(LadderInput.Radius, 0.030),
        Ladders.Value(LadderInput.PushAngle, 45 * Ladders.Degree),
        Ladders.Value(LadderInput.PullAngle, -45 * Ladders.Degree),
    ];

    private static readonly Vector3 Anchor = new(0.030, -0.100, 0);

    /// <summary>Free wire of that lever at its pull stop, by hand: sqrt((30 cos 45 - 30)^2 + (100 - 30 sin 45)^2) mm.</summary>
    private static readonly double FreeAtPull =
        Math.Sqrt(Math.Pow((30 * Math.Sqrt(0.5)) - 30, 2) + Math.Pow(100 - (30 * Math.Sqrt(0.5)), 2)) / 1000;

    // Derived in docs/theory/cushion.md (D): c Theta for 0.5 mm and 270 deg.
    [Fact]
    [Trait("Check", "L1")]
    public void LostMotion_ClearanceInThreeQuartersOfATurn_IsAsWorked()
    {
        var of = Ladders.Case(SettingKind.Balanced, Anchor, [.. Lever, Ladders.Value(LadderInput.Clearance, 0.5e-3), Ladders.Value(LadderInput.BendTotal, 270 * Ladders.Degree)]);
        Assert.Equal(2.356194e-3, LadderSolver.Nominal(of).LostMotion.Value, 1e-9);
    }

    // Callister, Table B.6 (R) for the coefficients; figure worked by hand (D): 2 m, +60 K, 302 core in a carbon-steel conduit.
    [Fact]
    [Trait("Check", "E4")]
    public void Heat_StainlessCoreInSteelConduit_MovesTheKnobOut()
    {
        var heat = new Engine.Cushion.Heat(Expansion.Of(CoreMaterial.Stainless302).Value, Expansion.Of(ConduitMaterial.CarbonSteel).Value, 0, 0, 60, 0, 0);
        var ladder = LadderSolver.Solve(Ladders.Case(SettingKind.Balanced, Anchor, [.. Lever, Ladders.Value(LadderInput.ConduitLength, 2)]) with { Heat = heat }, new(Samples: 16));
        Assert.Equal(0.660e-3, ladder.HeatAtPush.High, 1e-9);
        Assert.Equal(0, ladder.HeatAtPush.Low);
        // Knob farther out when hot: less room at the OUT stop, none lost at the IN stop.
        Assert.Equal(-0.660e-3, ladder.KnobOut.Least - ladder.KnobOut.Nominal, 1e-8);
        Assert.Equal(0.660e-3, ladder.KnobIn.Most - ladder.KnobIn.Nominal, 1e-8);
        Assert.Equal(ladder.KnobIn.Nominal, ladder.KnobIn.Least, 1e-8);
    }

    // The same table (R), taut carbon-steel wire of 2 m in an airframe, -60 and +65 K (D). As knob movement the signs turn
    // round: a span that grows more than its wire draws the knob in.
    [Theory]
    [Trait("Check", "E4b")]
    [InlineData(AirframeMaterial.Aluminium, -1.344e-3, 1.456e-3)]
    [InlineData(AirframeMaterial.SteelTube, -0.072e-3, 0.078e-3)]
    [InlineData(AirframeMaterial.CarbonComposite, 1.104e-3, -1.196e-3)]
    public void Heat_BareWireBesideAnAirframe_MovesTheKnobByTheDifference(AirframeMaterial airframe, double cold, double hot)
    {
        // Free wire of 2 m at the push stop: arm 30 mm square to it.
        var of = Ladders.Case(SettingKind.Balanced, new(0.030, -2, 0), Ladders.Value(LadderInput.Radius, 0.030), Ladders.Value(LadderInput.PushAngle, 0), Ladders.Value(LadderInput.PullAngle, -0.5));
        var steel = Expansion.Of(ConduitMaterial.CarbonSteel).Value;
        var ladder = LadderSolver.Solve(of with { Heat = new(steel, steel, Expansion.Of(airframe).Value, -60, 65, -60, 65) }, new(Samples: 16));
        Assert.Equal(-Math.Max(cold, hot), ladder.HeatAtPush.Low, 1e-9);
        Assert.Equal(-Math.Min(cold, hot), ladder.HeatAtPush.High, 1e-9);
    }

    /// <summary>
    /// A published stack of four dimensions as a ladder: gap = 40 +-0.10 - 25 +-0.05 - 2 +-0.03 - 10 +-0.05 mm is the out
    /// cushion with stroke 40, wire 25 and two plays of 2 and 10, less the free wire at the pull stop.
    /// </summary>
    private static LadderCase Stack(Spread spread = Spread.Uniform)
    {
        LadderValue Value(LadderInput input, double mm, double half) => Ladders.Value(input, mm / 1000, half / 1000, half / 1000, spread);
        return Ladders.Case(SettingKind.WireLength, Anchor, [.. Lever, Value(LadderInput.Stroke, 40, 0.10), Value(LadderInput.Setting, 25, 0.05), Value(LadderInput.PinPlay, 2, 0.03), Value(LadderInput.KnobPlay, 10, 0.05)]);
    }

    // Published stack-up example, inputs and nominal gap (R); worst case and root sum of squares (D).
    [Fact]
    [Trait("Check", "T1")]
    public void Stack_OfFourDimensions_HasThePublishedGap()
    {
        var gap = LadderSolver.Solve(Stack(), new(Samples: 64, Tolerance: 1e-8)).KnobOut;
        Assert.Equal(3.00e-3, gap.Nominal - FreeAtPull, 1e-15);
        Assert.Equal(0.23e-3, gap.Nominal - gap.Least, 1e-15);
        Assert.Equal(0.23e-3, gap.Most - gap.Nominal, 1e-15);
        Assert.Equal(0.126095e-3, gap.RootSumSquare, 1e-9);
        double[] moves = [0.10e-3, 0.05e-3, 0.05e-3, 0.03e-3];
        Assert.Equal(moves, gap.Shares.Select(s => Math.Round(s.Moves, 12)));
    }

    // Exact probabilities of the sum of four uniform dimensions (D). Three standard deviations of a count of 1e6.
    [Fact]
    [Trait("Check", "T2")]
    public void Stack_DrawnAMillionTimes_FallsOutsideAsOftenAsTheExactSum()
    {
        const int samples = 1_000_000;
        var middle = 3.00e-3 + FreeAtPull;
        foreach (var (beyond, share) in new[] { (0.10, 0.1805417), (0.1261, 0.0783486), (0.15, 0.0283333), (0.20, 0.0005625) })
        {
            var sigma = Math.Sqrt(share * (1 - share) / samples);
            Assert.Equal(share, Drawn.Odds(Stack(), samples, 20_250_101, 2, middle: middle, half: beyond / 1000)[1].ShareOutside, 3 * sigma);
        }

        var drawn = Drawn.Samples(Stack(), samples, 20_250_101, 1);
        var mean = drawn.Average();
        Assert.Equal(middle, mean, 4 * 0.0728011e-3 / Math.Sqrt(samples));
        Assert.Equal(0.0728011e-3, Math.Sqrt(drawn.Average(v => (v - mean) * (v - mean))), 3e-3 * 0.0728011e-3);
    }

    // The same with normal parts, limit = 3 sigma (D). The draw is a sum of twelve uniform numbers, a normal law to 1e-3, and
    // lies within the limits: its tails are the lighter ones.
    [Fact]
    [Trait("Check", "T2")]
    public void Stack_OfNormalParts_FallsOutsideFarLessOften()
    {
        double Outside(double half) => Drawn.Odds(Stack(Spread.Normal), 200_000, 7, 2, middle: 3.00e-3 + FreeAtPull, half: half)[1].ShareOutside;
        Assert.Equal(0.0173524, Outside(0.10e-3), 1.5e-3);
        Assert.Equal(0.0026988, Outside(0.1261e-3), 1e-3);
    }
}
