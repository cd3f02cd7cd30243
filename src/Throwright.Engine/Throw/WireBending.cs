namespace Throwright.Engine.Throw;

/// <summary>Bending of the bare wire at a conduit tip that can't swivel.</summary>
/// <remarks>
/// A round wire, held in the conduit's mouth, its end moved sideways by a given delta to the swivel, which turns freely.
/// Without axial force: side force Q = 3 E I delta / s^3, stress at the mouth sigma = 3 E d delta / (2 s^2), I = pi d^4 / 64.
///   d wire diameter, s bare length, delta sideways offset, m; E Pa; sigma Pa; Q, F, P N.
/// With axial force the largest bending grows by g (delta is given, so a pull draws the wire straight and bends it more
/// sharply at the mouth; a push bends it less there, until it bows and buckles):
///   pull F   v = s sqrt(F/EI):                g = (v^2/3) sinh v / (v cosh v - sinh v)
///   push P   u = s sqrt(P/EI) &lt;= pi/2:        g = (u^2/3) sin u / (sin u - u cos u)          at the mouth
///            pi/2 &lt; u &lt; 4.4934:               g = (u^2/3) / |sin u - u cos u|                 in the bow
///            beyond (tan u = u):              buckled, infinite
/// The worst of no force, the largest pull and the largest push counts. Small slopes: below about 10 deg. Derived in
/// docs/theory/throw.md.
/// </remarks>
/// <param name="Offset">delta, m.</param>
/// <param name="SideForce">Largest side force at the swivel, N.</param>
/// <param name="Stress">Largest bending stress, Pa.</param>
/// <param name="Growth">g.</param>
public sealed record WireBending(double Offset, double SideForce, double Stress, double Growth)
{
    /// <summary>First root of tan u = u: a wire held at one end, turning freely at the other, buckles there.</summary>
    private const double Buckled = 4.493409457909064;

    public static WireBending At(double diameter, double modulus, double bareLength, double offset, double pull = 0, double push = 0)
    {
        var stiffness = modulus * Math.PI * Math.Pow(diameter, 4) / 64;
        var growth = Math.Max(Pulled(bareLength * Math.Sqrt(Math.Max(0, pull) / stiffness)), Pushed(bareLength * Math.Sqrt(Math.Max(0, push) / stiffness)));
        // An aimed tip (offset 0) that buckles is no better off: infinity, not infinity x 0.
        if (double.IsPositiveInfinity(growth))
            return new(offset, growth, growth, growth);
        var moment = growth * 3 * stiffness * offset / (bareLength * bareLength);
        // Moments about the mouth: Q s = M + F delta.
        return new(
            offset,
            (moment + (Math.Max(0, pull) * offset)) / bareLength,
            growth * 3 * modulus * diameter * offset / (2 * bareLength * bareLength),
            growth);
    }

    private static double Pulled(double v) => v switch
    {
        // Series g = 1 + v^2/15 ...; below 0.01 the difference would lose digits.
        < 0.01 => 1 + (v * v / 15),
        // sinh and cosh overflow; their ratio is 1.
        > 300 => v * v / (3 * (v - 1)),
        _ => v * v / 3 * Math.Sinh(v) / ((v * Math.Cosh(v)) - Math.Sinh(v)),
    };

    private static double Pushed(double u)
    {
        if (u >= Buckled)
            return double.PositiveInfinity;
        if (u < 0.01)
            return 1;
        var share = Math.Sin(u) - (u * Math.Cos(u));
        // A push only ever counts when it bends the wire more than no force does.
        return Math.Max(1, u * u / 3 * (u <= Math.PI / 2 ? Math.Sin(u) : 1) / Math.Abs(share));
    }
}
