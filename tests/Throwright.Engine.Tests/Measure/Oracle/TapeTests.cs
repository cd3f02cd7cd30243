using Throwright.Engine.Measure;
using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Engine.Tests.Measure.Oracle;

/// <summary>What the solver says of its own uncertainty, against many seeded repeats.</summary>
public class TapeTests
{
    private static readonly KnownPoint[] Known =
    [
        new("firewall left", new(0, -0.5, 0)), new("firewall right", new(0, 0.5, 0.05)), new("longeron", new(0.9, -0.45, -0.1)),
        new("floor", new(0.8, 0.5, -0.4)), new("panel", new(0.7, 0.1, 0.5)), new("spar", new(1.3, 0, 0.1)), new("tunnel", new(0.4, -0.1, -0.5)),
    ];

    private static double Normal(CounterRandom random, long position) =>
        Math.Sqrt(-2 * Math.Log(random.Uniform(2 * position))) * Math.Cos(2 * Math.PI * random.Uniform((2 * position) + 1));

    private static EquatableList<TapeReading> Readings(Vector3 at, int count, double sigma, Func<int, double> error) =>
        Known.Take(count).Select((k, i) => new TapeReading(k, (at - k.Place).Size + error(i), sigma)).ToEquatableList();

    [Fact]
    [Trait("Check", "M3")]
    public void Covariance_AgainstTenThousandRepeats_Agrees()
    {
        const int Repeats = 10_000;
        const double Sigma = 0.001;
        Vector3 truth = new(0.45, 0.15, 0.1);
        var predicted = TapeSolver.Solve(new(Readings(truth, 5, Sigma, _ => 0))).Point!;
        var random = new CounterRandom(11, 0);
        var sums = new double[3];
        var mean = default(Vector3);
        for (var n = 0; n < Repeats; n++)
        {
            var found = TapeSolver.Solve(new(Readings(truth, 5, Sigma, i => Sigma * Normal(random, (5L * n) + i)))).Point!;
            var miss = found.Place - truth;
            mean += (1.0 / Repeats) * miss;
            for (var k = 0; k < 3; k++)
                sums[k] += Math.Pow(Vector3.Dot(miss, predicted.Axes[k].Along), 2);
        }

        // The standard deviation of 10,000 repeats is itself known to 0.7 %; four times that.
        for (var k = 0; k < 3; k++)
            Assert.InRange(Math.Sqrt(sums[k] / Repeats) / predicted.Axes[k].Sigma, 0.97, 1.03);
        Assert.InRange(mean.Size, 0, 4 * predicted.Axes[0].Sigma / Math.Sqrt(Repeats));
    }

    /// <summary>Two distances, a level and a station: the same covariance as that of 10,000 repeats.</summary>
    [Fact]
    public void Covariance_WithLevelAndStation_AgainstRepeats_Agrees()
    {
        const int Repeats = 10_000;
        Vector3 truth = new(0.45, 0.15, 0.1), up = new(0, 0, 1), aft = new(1, 0, 0);
        EquatableList<TapeReading> Of(Func<int, double> error) =>
        [
            new(Known[0], (truth - Known[0].Place).Size + (0.001 * error(0)), 0.001),
            new(Known[3], (truth - Known[3].Place).Size + (0.001 * error(1)), 0.001),
            new(Known[5], truth.Z - Known[5].Place.Z + (0.002 * error(2)), 0.002, up, "level"),
            new(new("datum", default), truth.X + (0.0015 * error(3)), 0.0015, aft, "station"),
        ];
        var predicted = TapeSolver.Solve(new(Of(_ => 0), Near: truth)).Point!;
        Assert.InRange((predicted.Place - truth).Size, 0, 1e-9);
        var random = new CounterRandom(13, 0);
        var sums = new double[3];
        for (var n = 0; n < Repeats; n++)
        {
            var miss = TapeSolver.Solve(new(Of(i => Normal(random, (4L * n) + i)), Near: truth)).Point!.Place - truth;
            sums[0] += miss.X * miss.X;
            sums[1] += miss.Y * miss.Y;
            sums[2] += miss.Z * miss.Z;
        }

        Assert.InRange(Math.Sqrt(sums[0] / Repeats) / predicted.Sigma.X, 0.97, 1.03);
        Assert.InRange(Math.Sqrt(sums[1] / Repeats) / predicted.Sigma.Y, 0.97, 1.03);
        Assert.InRange(Math.Sqrt(sums[2] / Repeats) / predicted.Sigma.Z, 0.97, 1.03);
    }

    [Fact]
    public void Suspect_GoodReadings_AreSeldomAccused()
    {
        var accused = 0;
        for (var n = 0; n < 500; n++)
        {
            var random = new CounterRandom(23, n);
            accused += TapeSolver.Solve(new(Readings(new(0.45, 0.15, 0.1), 6, 0.001, i => 0.001 * Normal(random, i)))).Point!.Suspects.Count > 0 ? 1 : 0;
        }

        // About one reading in a thousand, six readings: 0.6 %.
        Assert.InRange(accused, 0, 12);
    }

    [Fact]
    public void Next_OfTheSparePoints_IsTheOneThatHelpsMostWhenTaken()
    {
        Vector3 truth = new(0.45, 0.15, 0.1);
        var readings = Readings(truth, 4, 0.001, _ => 0);
        EquatableList<KnownPoint> spare = [Known[4], Known[5], Known[6]];
        var next = TapeSolver.Solve(new(readings, null, spare)).Point!.Next!;
        var byTrying = spare.Select(k => (Point: k, TapeSolver.Solve(new([.. readings, new(k, (truth - k.Place).Size, 0.001)])).Point!.Axes[0].Sigma)).MinBy(t => t.Sigma);
        Assert.Equal(byTrying.Point, next.From);
        Assert.Equal(byTrying.Sigma, next.Sigma, 1e-9);
    }
}
