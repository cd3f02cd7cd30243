using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Prove;
using Throwright.Engine.Tests.Chain;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Prove;

/// <summary>Parts under the limit force, each counted by hand. 100 lbf, a 3/16 in pin, an arm of 1/8 in with a hole at 2 in.</summary>
public sealed class StrengthTests
{
    private static Length In(double inches) => new(inches * Length.MetresPerInch);

    private static Stress Psi(double psi) => new(psi * Force.NewtonsPerPoundForce / (Length.MetresPerInch * Length.MetresPerInch));

    private static readonly Aircraft Inches = Runs.Aircraft with { Display = new() };

    private static readonly Run Jammed = Installations.Sound.With(i => i with
    {
        LimitForce = new(100 * Force.NewtonsPerPoundForce),
        Joint = i.Joint! with { Diameter = In(0.1875), Arm = In(0.125), Swivel = In(0.25), Bearing = Psi(14300) },
        Strength = new() { PinShear = Psi(75000), ArmWidth = In(0.5), ArmEdge = In(0.375), ArmYield = Psi(44300) },
    }).Lever(e => e with { Radius = Toleranced<Length>.Exact(In(2)) });

    private static StrengthRow Row(Run run, string part) => run.Prove(Inches).Proof!.Strength.Single(r => r.Part.StartsWith(part, StringComparison.Ordinal));

    [Fact]
    [Trait("Check", "ST11")]
    public void Bearing_OfEachPart_HasThePushPullFactor()
    {
        // 14 CFR 23.693 (read): 100 / (0.1875 x 0.125) = 4,267 psi, x 3.33 = 14,208 psi; half of it at the quarter inch.
        var arm = Row(Jammed, "arm on the pin");
        Assert.Equal(Verdict.Clear, arm.Verdict);
        Assert.Equal("14.3 ksi", arm.Asked);
        Assert.Equal("7.2 ksi", Row(Jammed, "fitting on the pin").Asked);
        Assert.Equal(Verdict.Fail, Row(Jammed.With(i => i with { Joint = i.Joint! with { Bearing = Psi(14100) } }), "arm on the pin").Verdict);
    }

    [Fact]
    public void Strand_IsAlsoCountedAsAJointOfACableSystem()
    {
        var strand = Jammed.Cable(c => c with { Core = c.Core! with { Kind = CoreKind.Strand7x7 } });
        // 4,267 psi x 2.0 = 8,533 psi.
        Assert.Equal("8.6 ksi", strand.Prove(Inches).Proof!.Strength.Single(r => r.Part == "arm on the pin, bearing, pulled only").Asked);
        Assert.DoesNotContain(Jammed.Prove(Inches).Proof!.Strength, r => r.Part.EndsWith("pulled only", StringComparison.Ordinal));
    }

    [Fact]
    public void Pin_IsCutInOnePlace_AForkInTwo()
    {
        // 100 x 1.5 x 1.15 = 172.5 lbf; 75,000 psi x pi/4 0.1875^2 = 2,070.8 lbf.
        var row = Row(Jammed, "pin of the joint");
        Assert.Equal(("172.5 lbf", "2070.8 lbf", Verdict.Clear), (row.Asked, row.Stands, row.Verdict));
        Assert.Equal("86.3 lbf", Row(Jammed.With(i => i with { Strength = i.Strength! with { Forked = true } }), "pin of the joint").Asked);
    }

    [Fact]
    public void Pin_OfAnAnBolt_HasThePublishedShear()
    {
        // AC 43.13-1B Table 4-10, note: 2,126 lbf for a bolt of 0.190 in.
        var row = Row(Jammed.With(i => i with { Joint = i.Joint! with { Diameter = In(0.19) }, Strength = i.Strength! with { PinShear = null } }), "pin of the joint");
        Assert.Equal("2126.0 lbf", row.Stands);
        Assert.Contains("AN3", row.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Arm_BendsAtItsHub_AgainstYield()
    {
        // 6 x 100 x 1.15 x 2 / (0.125 x 0.5^2) = 44,160 psi.
        Assert.Equal(("44.2 ksi", Verdict.Clear), (Row(Jammed, "arm at its hub").Asked, Row(Jammed, "arm at its hub").Verdict));
        Assert.Equal(Verdict.Fail, Jammed.With(i => i with { Strength = i.Strength! with { ArmYield = Psi(44100) } }).Rule(ProveRules.Parts));
    }

    /// <summary>Base 2 in with one row of two fasteners at 1 in, conduit 1 in up: 100 lbf at 1 in over two at 1 in, 50 lbf each, x 1.5 x 1.15.</summary>
    [Fact]
    public void Fastener_OfTheBracket_IsCountedInPullToo()
    {
        Run With(string fastener) => Jammed.Lever(e => e with
        {
            Bracket = new()
            {
                Material = "6061-T6",
                Thickness = In(0.063),
                Radius = In(0.13),
                Base = In(2),
                Standing = In(1.5),
                Width = In(1.5),
                Conduit = new(In(1), Length.Zero, In(0.25)),
                Fasteners = [new(In(1), In(0.3), In(0.19)), new(In(1), In(-0.3), In(0.19))],
                Fastener = fastener,
            },
        });
        var bolt = Row(With("AN3"), "bracket's worst fastener, pull");
        Assert.Equal(("86.3 lbf", Verdict.Clear), (bolt.Asked, bolt.Verdict));
        // From memory: never what makes the whole clear. A rivet's pull is not told.
        Assert.Contains(bolt.Sources, s => s.Evidence == Evidence.Memory);
        Assert.Equal(Verdict.NeedsInput, Row(With("AD4"), "bracket's worst fastener, pull").Verdict);
    }

    [Fact]
    public void Hole_IsTwoDiametersFromTheEdge()
    {
        Assert.Equal(Verdict.Clear, Row(Jammed, "hole of the arm").Verdict);
        Assert.Equal(Verdict.Fail, Row(Jammed.With(i => i with { Strength = i.Strength! with { ArmEdge = In(0.374) } }), "hole of the arm").Verdict);
    }

    [Fact]
    public void WhatLacks_IsNamedByItsPath()
    {
        var row = Row(Jammed.With(i => i with { Joint = null, Strength = null }), "arm at its hub");
        Assert.Equal(Verdict.NeedsInput, row.Verdict);
        Assert.Equal(["installation.joint.arm", "installation.strength.armWidth", "installation.strength.armYield"], row.Lacks);
        Assert.Equal("", row.Asked);
    }

    [Fact]
    public void Jammed_LoadGoesToTheDevicesStop()
    {
        var loads = Jammed.Prove(Inches).Proof!.JamLoads;
        Assert.All(loads.Take(3), l => Assert.Equal("100.0 lbf", l.Load));
        // 100 lbf at 2 in.
        Assert.Equal("200.00 lbf in", loads[^1].Load);
    }
}
