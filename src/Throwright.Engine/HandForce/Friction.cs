namespace Throwright.Engine.HandForce;

/// <summary>One bend as the core meets it: angle (rad), radius (m).</summary>
public readonly record struct BendOnWay(double Angle, double Radius);

/// <summary>Force along the core, from the device to the knob. Newtons, radians.</summary>
/// <remarks>
/// Each bend multiplies the force by e^(mu theta) when it resists, divides it when the device drives (Euler and
/// Eytelwein's rope friction: L. Euler, Mem. Acad. Berlin 1769; any mechanics text). A stiff core adds its own drag
/// 4 mu N per bend, <see cref="StiffContact"/>. Radius and length drop out otherwise. Pulled, the core bears on the
/// inside of the bend, pushed on the outside; the formula is the same.
/// </remarks>
public static class Friction
{
    /// <summary>
    /// Hand force at the knob that moves the core slowly, given what the device asks of the wire.
    /// </summary>
    /// <param name="atDevice">Force the device resists with, N; negative: it drives in the direction of motion.</param>
    /// <returns>N at the knob; negative: the hand must hold back.</returns>
    public static double AtKnob(
        double atDevice, double mu, ReadOnlySpan<BendOnWay> bends, ReadOnlySpan<double> stiffContact, double deviceDrag, double knobDrag)
    {
        // Resisting force so far; negative while the device still drives.
        var force = atDevice + deviceDrag;
        for (var i = 0; i < bends.Length; i++)
        {
            var growth = Math.Exp(mu * bends[i].Angle);
            force = force >= 0 ? force * growth : force / growth;
            force += stiffContact.IsEmpty ? 0 : 4 * mu * stiffContact[i];
        }

        return force + knobDrag;
    }

    /// <summary>Wall contact force of a stiff core on its way into and out of a bend, N.</summary>
    /// <remarks>
    /// Within the clearance the core goes from straight to radius R over l = sqrt(6 c R) each side of the bend's end,
    /// pressed to the walls by N = E I / (2 R sqrt(6 c R)); four contacts per bend give the drag 4 mu N.
    ///   EI N m^2, R m, c m (difference of diameters). Needs a bend of at least 2 l and straights of l beside it;
    /// shorter ones press less. c = 0 has no meaning here: infinite. Derived in docs/theory/hand-force.md, confirmed
    /// there by a finely divided wire.
    /// </remarks>
    public static double StiffContact(double bendingStiffness, double radius, double clearance) =>
        bendingStiffness / (2 * radius * TransitionLength(radius, clearance));

    /// <summary>l = sqrt(6 c R), m.</summary>
    public static double TransitionLength(double radius, double clearance) => Math.Sqrt(6 * clearance * radius);

    /// <summary>(e^x - 1) / x: the mean tension along a bent core over the tension at its device end; 1 at x = 0.</summary>
    public static double MeanGrowth(double x) =>
        // Below 0.01 the difference would lose digits; the series is good to 1e-16 there.
        Math.Abs(x) < 0.01
            ? 1 + (x / 2 * (1 + (x / 3 * (1 + (x / 4 * (1 + (x / 5 * (1 + (x / 6)))))))))
            : (Math.Exp(x) - 1) / x;

    /// <summary>
    /// (MeanGrowth(x) - 1) / x: the mean tension along a core over its own drag, when that drag is spread evenly over
    /// the bends; 1/2 at x = 0.
    /// </summary>
    public static double MeanOwn(double x) =>
        Math.Abs(x) < 0.01
            ? 0.5 * (1 + (x / 3 * (1 + (x / 4 * (1 + (x / 5 * (1 + (x / 6))))))))
            : (MeanGrowth(x) - 1) / x;

    /// <summary>Knob movement with no output from stretch alone when the hand reverses at a held load, m.</summary>
    /// <remarks>2 T R / (E A mu) (cosh(mu theta) - 1): stretch pulling less stretch letting back, one radius; 0 without friction.</remarks>
    public static double DeadBand(double tension, double radius, double axialStiffness, double mu, double angle) =>
        mu == 0 ? 0 : 2 * tension * radius / (axialStiffness * mu) * (Math.Cosh(mu * angle) - 1);

    /// <summary>
    /// Soft core with weight in a bend from horizontal to vertical, pulled up out of it: force at the upper end, N.
    /// F(90 deg) = (F0 - B) e^(mu pi/2) + A, A = -2 mu w R / (1 + mu^2), B = -(mu A + w R), for F/R &gt; w.
    /// </summary>
    public static double WithWeightToVertical(double mu, double radius, double force, double weightPerLength)
    {
        var wr = weightPerLength * radius;
        var a = -2 * mu * wr / (1 + (mu * mu));
        var b = -((mu * a) + wr);
        return ((force - b) * Math.Exp(mu * Math.PI / 2)) + a;
    }
}
