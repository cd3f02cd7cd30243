namespace Throwright.Engine.Throw;

/// <summary>Bending of the bare wire at a conduit tip that can't swivel.</summary>
/// <remarks>
/// A cantilever of round wire, clamped at the conduit's mouth, its end pushed sideways by the swivel (which turns
/// freely): side force Q = 3 E I delta / s^3, stress at the mouth sigma = 3 E d delta / (2 s^2), I = pi d^4 / 64.
///   d wire diameter, s bare length, delta sideways offset, m; E Pa; sigma Pa; Q N.
/// Small slopes: below about 10 deg. Growth 1 / (1 - P/Pcr), Pcr = pi^2 E I / s^2, at P >= Pcr infinite, is that of a given
/// side force Q. Here delta is given: a push lowers the stress until shortly before it buckles, so this is above the true
/// value, and a pull, which is not counted, raises it. Derived in docs/theory/throw.md.
/// </remarks>
public sealed record WireBending(double Offset, double SideForce, double Stress, double Growth)
{
    public static WireBending At(double diameter, double modulus, double bareLength, double offset, double push = 0)
    {
        var second = Math.PI * Math.Pow(diameter, 4) / 64;
        var critical = Math.PI * Math.PI * modulus * second / (bareLength * bareLength);
        // An aimed tip (offset 0) that buckles is no better off: infinity, not infinity x 0.
        var growth = push >= critical ? double.PositiveInfinity : 1 / (1 - (Math.Max(0, push) / critical));
        if (double.IsPositiveInfinity(growth))
            return new(offset, growth, growth, growth);
        return new(
            offset,
            growth * 3 * modulus * second * offset / Math.Pow(bareLength, 3),
            growth * 3 * modulus * diameter * offset / (2 * bareLength * bareLength),
            growth);
    }
}
