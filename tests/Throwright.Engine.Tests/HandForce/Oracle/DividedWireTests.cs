using Throwright.Engine.HandForce;

namespace Throwright.Engine.Tests.HandForce.Oracle;

/// <summary>The stiff core's wall contacts against a finely divided wire.</summary>
public sealed class DividedWireTests
{
    [Theory]
    [InlineData(100, 0.5)]
    [InlineData(200, 0.5)]
    [InlineData(100, 0.3)]
    [InlineData(150, 0.4)]
    public void StiffContact_WireIntoALongBend_IsWhatADividedWireGives(double radius, double clearance)
    {
        const double stiffness = 47961.44;
        var half = 1000 * Friction.TransitionLength(radius / 1000, clearance / 1000);
        var contact = Friction.StiffContact(stiffness * 1e-6, radius / 1000, clearance / 1000);
        var wire = DividedWire.Enter(stiffness, radius, clearance, 3 * half, 600);
        Assert.Equal(contact, wire.Outer, 0.01 * contact);
        Assert.Equal(contact, wire.Inner, 0.01 * contact);
        Assert.Equal(half, Math.Abs(wire.OuterAt), 0.03 * half);
        Assert.Equal(half, Math.Abs(wire.InnerAt), 0.03 * half);
        Assert.True(wire.OuterAt * wire.InnerAt < 0);
    }
}
