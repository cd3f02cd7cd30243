namespace Throwright.Engine.HandForce;

/// <summary>How a strut's ends are held: C = 1/K^2 in Pcr = C pi^2 E I / L^2.</summary>
public enum StrutEnds
{
    FixedFree,
    PinnedPinned,
    FixedPinned,
    FixedFixed,
}

/// <summary>Loads at which a pushed core gives way sideways. SI units.</summary>
/// <remarks>Struts: L. Euler 1744, J. B. Johnson 1893, as in any text of strength of materials. Wire in a tube: see each.</remarks>
public static class Buckling
{
    /// <summary>C: 1/4, 1, 2.045749 (root of tan x = x), 4.</summary>
    public static double Fixity(StrutEnds ends) => ends switch
    {
        StrutEnds.FixedFree => 0.25,
        StrutEnds.PinnedPinned => 1,
        StrutEnds.FixedPinned => 2.0457490607746,
        StrutEnds.FixedFixed => 4,
        _ => throw new ArgumentOutOfRangeException(nameof(ends), ends, null),
    };

    /// <summary>Euler's load of a straight slender strut, N: C pi^2 E I / L^2.</summary>
    public static double Euler(double modulus, double secondMoment, double length, StrutEnds ends) =>
        Fixity(ends) * Math.PI * Math.PI * modulus * secondMoment / (length * length);

    /// <summary>
    /// Greatest load of a strut of any length, N: Euler's when slender, else Johnson's parabola
    /// A Sy [1 - Sy (L/rho)^2 / (4 C pi^2 E)], rho = sqrt(I/A). They meet at half the yield strength.
    /// </summary>
    public static double Strut(double modulus, double yield, double area, double secondMoment, double length, StrutEnds ends)
    {
        var euler = Euler(modulus, secondMoment, length, ends);
        var squash = area * yield;
        return euler < squash / 2 ? euler : squash * (1 - (squash / (4 * euler)));
    }

    /// <summary>Straight level core lying in a tube: load at which it starts to snake, N: 2 sqrt(E I w / r).</summary>
    /// <remarks>
    /// R. Dawson, P. R. Paslay, J. Petroleum Technology 36 (1984) 1734; w weight per length N/m, r radial clearance m.
    /// </remarks>
    public static double Snaking(double bendingStiffness, double weightPerLength, double radialClearance) =>
        2 * Math.Sqrt(bendingStiffness * weightPerLength / radialClearance);

    /// <summary>The same core: load at which it winds into a helix, N: 2 sqrt 2 sqrt(E I w / r) (Chen, Lin, Cheatham 1990).</summary>
    public static double Helix(double bendingStiffness, double weightPerLength, double radialClearance) =>
        Math.Sqrt(2) * Snaking(bendingStiffness, weightPerLength, radialClearance);

    /// <summary>Pitch of that helix, m: sqrt(8 pi^2 E I / F).</summary>
    public static double HelixPitch(double bendingStiffness, double force) => Math.Sqrt(8 * Math.PI * Math.PI * bendingStiffness / force);

    /// <summary>Its wall pressure per length, N/m: r F^2 / (4 E I).</summary>
    public static double HelixContact(double bendingStiffness, double force, double radialClearance) =>
        radialClearance * force * force / (4 * bendingStiffness);

    /// <summary>Its shortening per length: r^2 F / (4 E I). Lost motion in push.</summary>
    public static double HelixShortening(double bendingStiffness, double force, double radialClearance) =>
        radialClearance * radialClearance * force / (4 * bendingStiffness);

    /// <summary>
    /// Largest push that can come out of a tube however hard one pushes in, N: 4 E I / (mu r L), the limit of
    /// 1/F_out = 1/F_in + mu r L / (4 E I).
    /// </summary>
    public static double LockUp(double bendingStiffness, double mu, double radialClearance, double length) =>
        mu * radialClearance * length == 0 ? double.PositiveInfinity : 4 * bendingStiffness / (mu * radialClearance * length);

    /// <summary>What comes out of the tube for a push of <paramref name="force"/> going in, N.</summary>
    public static double Transfer(double force, double bendingStiffness, double mu, double radialClearance, double length) =>
        1 / ((1 / force) + (mu * radialClearance * length / (4 * bendingStiffness)));

    /// <summary>In a bend the core is held to the wall up to 4 E I / (r R), N.</summary>
    public static double InBend(double bendingStiffness, double radialClearance, double bendRadius) =>
        4 * bendingStiffness / (radialClearance * bendRadius);
}
