using Throwright.Engine.HandForce;
using Throwright.Engine.Model;

namespace Throwright.Engine.Tests.HandForce.Reference;

public sealed class StiffnessTests
{
    // Derived in docs/theory/cushion.md (D): k = E A / L of 1 m of 1.5 mm wire, N/mm, at 200 and at 193 GPa.
    [Theory]
    [Trait("Check", "E1")]
    [InlineData(200e9, 353.429)]
    [InlineData(193e9, 341.059)]
    public void Give_OneMetreOfStraightWire_IsOneOverItsStiffness(double modulus, double stiffness)
    {
        var of = Forces.Case(new() { Torque = Forces.Nm(0) }) with
        {
            Core = Forces.Wire15 with { Modulus = modulus },
            ConduitLength = Spread3.Exact(1),
            Places = [new(0.5, 0, Spread3.Exact(0.03)), new(-0.5, 0, Spread3.Exact(0.03))],
        };
        var give = HandForceSolver.Solve(of).PullGive!.Value;
        Assert.Equal(stiffness * 1000, 1 / give.Nominal, 1e-5 * stiffness * 1000);
        Assert.Equal(give, HandForceSolver.Solve(of).PushGive!.Value);
    }

    // Derived in docs/theory/hand-force.md (D): equal touching wires, so many across the diameter.
    [Theory]
    [InlineData(CoreKind.Strand1x7, 7, 3)]
    [InlineData(CoreKind.Strand1x19, 19, 5)]
    [InlineData(CoreKind.Strand7x7, 49, 9)]
    [InlineData(CoreKind.Strand7x19, 133, 15)]
    public void Strand_OfEachKind_HasTheSectionOfItsWires(CoreKind kind, int wires, int across)
    {
        CoreSection strand = CoreSection.Of(kind, 1.5e-3), solid = CoreSection.Of(CoreKind.Solid, 1.5e-3);
        Assert.Equal(wires / (double)(across * across), strand.Area / solid.Area, 1e-12);
        Assert.Equal(wires / Math.Pow(across, 4), strand.SecondMoment / solid.SecondMoment, 1e-12);
    }
}
