namespace Throwright.Engine.Tests.HandForce.Oracle;

/// <summary>A core drawn through bends, cut into very many short pieces; each piece is a rope over a tiny arc. Newtons, metres, radians.</summary>
internal static class Belt
{
    /// <summary>Resisting force at the knob's end, and the stretch of the core on its way, for drags spread as told.</summary>
    /// <param name="pieces">Pieces from the device to the knob: angle, length, drag.</param>
    public static (double Force, double Stretch) Draw(double atDevice, double mu, IEnumerable<(double Angle, double Length, double Drag)> pieces, double axialStiffness)
    {
        double force = atDevice, stretch = 0;
        foreach (var (angle, length, drag) in pieces)
        {
            // Wall force |F| dtheta, friction mu times it, against the motion. Middle-point rule: second order.
            var half = force + (0.5 * ((mu * Math.Abs(force) * angle) + drag));
            stretch += half * length / axialStiffness;
            force += (mu * Math.Abs(half) * angle) + drag;
        }

        return (force, stretch);
    }

    public static IEnumerable<(double Angle, double Length, double Drag)> Bend(double angle, double radius, double drag = 0, int pieces = 20_000) =>
        Enumerable.Repeat((angle / pieces, radius * angle / pieces, drag / pieces), pieces);

    /// <summary>With weight, from horizontal to vertical, drawn up out of the bend: dF = (w R sin t + mu |F - w R cos t|) dt.</summary>
    public static double UpToVertical(double mu, double radius, double force, double weightPerLength, int pieces = 200_000)
    {
        double wr = weightPerLength * radius, h = Math.PI / 2 / pieces;
        double Slope(double t, double f) => (wr * Math.Sin(t)) + (mu * Math.Abs(f - (wr * Math.Cos(t))));
        for (var i = 0; i < pieces; i++)
        {
            var t = i * h;
            var middle = force + (0.5 * h * Slope(t, force));
            force += h * Slope(t + (0.5 * h), middle);
        }

        return force;
    }
}
