namespace Throwright.Shapes.Curves;

/// <summary>theta^2 and tan(theta/2)/theta of an arc, with two derivatives, as functions of x = 1 - cos theta.</summary>
/// <remarks>
/// With y = x/2 = sin^2(theta/2) and a(y) = asin(sqrt y)/sqrt y (a power series in y):
///   theta^2 = 4 y a^2,   tan(theta/2)/theta = 1 / (2 a sqrt(1 - y)).
/// The series serve below x = 0.05, where the closed forms lose digits; twelve terms leave less than 1e-19 there.
/// Derived in docs/theory/route.md.
/// </remarks>
internal readonly record struct ArcFactors(double Square, double Square1, double Square2, double Chord, double Chord1, double Chord2)
{
    private const int Terms = 13;
    private const double SeriesBelow = 0.05;

    // Below this few terms leave as little.
    private const int Few = 8;
    private const double FewBelow = 2e-3;
    private static readonly double[] SquareSeries = SeriesOfSquare();
    private static readonly double[] ChordSeries = SeriesOfChord();

    /// <summary>The second-order scheme: theta^2 = 2 x, chord = arc.</summary>
    public static ArcFactors Plain(double x) => new(2 * x, 2, 0, 0.5, 0, 0);

    public static ArcFactors At(double x)
    {
        if (x < SeriesBelow)
        {
            // Both series at once: each waits for its own last term only.
            double[] square = SquareSeries, chord = ChordSeries;
            double g = 0, g1 = 0, g2 = 0, p = 0, p1 = 0, p2 = 0;
            for (var k = (x < FewBelow ? Few : Terms) - 1; k >= 0; k--)
            {
                (g2, p2) = ((g2 * x) + (2 * g1), (p2 * x) + (2 * p1));
                (g1, p1) = ((g1 * x) + g, (p1 * x) + p);
                (g, p) = ((g * x) + square[k], (p * x) + chord[k]);
            }

            return new(g, g1, g2, p, p1, p2);
        }

        var theta = 2 * Math.Asin(Math.Min(1, Math.Sqrt(0.5 * x)));
        double c = 1 - x, s = Math.Sin(theta);
        var top = theta - s;
        var bottom = theta * theta * (1 + c) * s;
        var bottom1 = (2 * theta * (1 + c) * s) + (theta * theta * (c + Math.Cos(2 * theta)));
        return new(
            theta * theta,
            2 * theta / s,
            2 * (s - (theta * c)) / (s * s * s),
            Math.Tan(0.5 * theta) / theta,
            top / bottom,
            (((1 - c) * bottom) - (top * bottom1)) / (bottom * bottom * s));
    }

    private static double[] ArcSine()
    {
        var a = new double[Terms];
        var central = 1.0;
        for (var k = 0; k < Terms; k++)
        {
            a[k] = central / ((2 * k) + 1);
            central *= ((2 * k) + 1.0) / ((2 * k) + 2);
        }

        return a;
    }

    private static double[] SeriesOfSquare()
    {
        var square = Product(ArcSine(), ArcSine());
        var series = new double[Terms];
        for (var k = 1; k < Terms; k++)
            series[k] = 4 * square[k - 1] * Math.Pow(0.5, k);
        return series;
    }

    private static double[] SeriesOfChord()
    {
        var root = new double[Terms];
        root[0] = 1;
        for (var k = 1; k < Terms; k++)
            root[k] = root[k - 1] * (k - 1.5) / k;
        var below = Product(ArcSine(), root);
        var series = new double[Terms];
        for (var k = 0; k < Terms; k++)
        {
            var rest = k == 0 ? 0.5 : 0;
            for (var j = 0; j < k; j++)
                rest -= series[j] * below[k - j];
            series[k] = rest;
        }

        for (var k = 0; k < Terms; k++)
            series[k] *= Math.Pow(0.5, k);
        return series;
    }

    private static double[] Product(double[] a, double[] b)
    {
        var c = new double[Terms];
        for (var i = 0; i < Terms; i++)
        {
            for (var j = 0; i + j < Terms; j++)
                c[i + j] += a[i] * b[j];
        }

        return c;
    }
}
