namespace Throwright.Engine.Tests.Throw.Oracle;

/// <summary>
/// A lever worked the plain way: the pin's coordinates are multiplied by a rotation matrix, lengths are square roots of
/// sums, everything else is dense sampling. Shares nothing with the program.
/// </summary>
internal sealed class TurnedLever(double[] pivot, double[] axis, double[] pinAtZero, double[] anchor, double[] along)
{
    public double[] Pin(double phi)
    {
        var n = Scale(axis, 1 / Size(axis));
        double c = Math.Cos(phi), s = Math.Sin(phi);
        // Rotation about n, row by row.
        double[][] turn =
        [
            [c + (n[0] * n[0] * (1 - c)), (n[0] * n[1] * (1 - c)) - (n[2] * s), (n[0] * n[2] * (1 - c)) + (n[1] * s)],
            [(n[1] * n[0] * (1 - c)) + (n[2] * s), c + (n[1] * n[1] * (1 - c)), (n[1] * n[2] * (1 - c)) - (n[0] * s)],
            [(n[2] * n[0] * (1 - c)) - (n[1] * s), (n[2] * n[1] * (1 - c)) + (n[0] * s), c + (n[2] * n[2] * (1 - c))],
        ];
        var arm = Less(pinAtZero, pivot);
        return [.. turn.Select((row, i) => pivot[i] + (row[0] * arm[0]) + (row[1] * arm[1]) + (row[2] * arm[2]))];
    }

    public double Length(double phi) => Size(Less(Pin(phi), anchor));

    /// <summary>Central difference of fourth order.</summary>
    public double Arm(double phi)
    {
        const double h = 1e-3;
        return ((8 * (Length(phi + h) - Length(phi - h))) - (Length(phi + (2 * h)) - Length(phi - (2 * h)))) / (12 * h);
    }

    public double Swing(double phi)
    {
        var wire = Less(Pin(phi), anchor);
        return Math.Acos(Math.Clamp(Dot(wire, along) / (Size(wire) * Size(along)), -1, 1));
    }

    /// <summary>All angles in [from, to] where the length turns round, by sampling and halving.</summary>
    public List<double> TurningPoints(double from, double to, int steps = 4000)
    {
        var found = new List<double>();
        for (var i = 0; i < steps; i++)
        {
            double a = from + ((to - from) * i / steps), b = from + ((to - from) * (i + 1) / steps);
            if (Arm(a) > 0 == Arm(b) > 0)
                continue;
            var rising = Arm(a) > 0;
            for (var k = 0; k < 50; k++)
            {
                var middle = 0.5 * (a + b);
                if (Arm(middle) > 0 == rising)
                    a = middle;
                else
                    b = middle;
            }

            found.Add(0.5 * (a + b));
        }

        return found;
    }

    /// <summary>Angle in [from, to] with this length, which rises or falls all the way, by halving.</summary>
    public double AngleOf(double length, double from, double to)
    {
        var rising = Length(to) > Length(from);
        for (var k = 0; k < 60; k++)
        {
            var middle = 0.5 * (from + to);
            if (Length(middle) < length == rising)
                from = middle;
            else
                to = middle;
        }

        return 0.5 * (from + to);
    }

    private static double[] Less(double[] a, double[] b) => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

    private static double[] Scale(double[] a, double s) => [a[0] * s, a[1] * s, a[2] * s];

    private static double Dot(double[] a, double[] b) => (a[0] * b[0]) + (a[1] * b[1]) + (a[2] * b[2]);

    private static double Size(double[] a) => Math.Sqrt(Dot(a, a));
}
