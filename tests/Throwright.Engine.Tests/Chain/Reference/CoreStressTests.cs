using Throwright.Engine.Model;
using Throwright.Engine.Tests.Throw;

namespace Throwright.Engine.Tests.Chain.Reference;

public sealed class CoreStressTests
{
    // Derived in docs/theory/hand-force.md (D): 1.5 mm stainless wire, 193 GPa, in a bend of R 100 mm.
    [Fact]
    [Trait("Check", "S2")]
    public void Figure_OfTheCoreInTheTightestBend_IsTheWorkedStress()
    {
        var run = Runs.Sound.Cable(c => c with
        {
            Core = new() { Diameter = Levers.Mm(1.5), Material = CoreMaterial.Stainless302 },
            Bends = [Runs.Bend(80, 200), Runs.Bend(60, 100, limit: 0)],
        });
        Assert.Equal(1447.5e6, run.Check().Find("core-bend-stress")!.Value, 1);
    }
}
