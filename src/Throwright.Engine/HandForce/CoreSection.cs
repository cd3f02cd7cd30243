using Throwright.Engine.Model;

namespace Throwright.Engine.HandForce;

/// <summary>Section of the core: metal area (m^2) and second moment of area (m^4) with the wires free to slide.</summary>
/// <remarks>
/// Solid: pi d^2/4 and pi d^4/64. A strand of n equal wires across its diameter in k places: wire d/k. 1x7: k 3;
/// 1x19: k 5; 7x7: k 9; 7x19: k 15. Its bending stiffness is the sum of its wires' (least possible: friction
/// between them adds): the solid one over 12, 33, 134 and 381. Derived in docs/theory/hand-force.md.
/// </remarks>
public readonly record struct CoreSection(double Area, double SecondMoment)
{
    /// <summary>Wires side by side across the diameter.</summary>
    public static int WiresAcross(CoreKind kind) => kind switch
    {
        CoreKind.Solid => 1,
        CoreKind.Strand1x7 => 3,
        CoreKind.Strand1x19 => 5,
        CoreKind.Strand7x7 => 9,
        CoreKind.Strand7x19 => 15,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    public static CoreSection Of(CoreKind kind, double diameter)
    {
        var wires = kind switch { CoreKind.Solid => 1, CoreKind.Strand1x7 => 7, CoreKind.Strand1x19 => 19, CoreKind.Strand7x7 => 49, _ => 133 };
        var d = diameter / WiresAcross(kind);
        return new(wires * Math.PI * d * d / 4, wires * Math.PI * Math.Pow(d, 4) / 64);
    }
}
