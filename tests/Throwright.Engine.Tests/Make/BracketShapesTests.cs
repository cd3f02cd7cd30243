using CsCheck;
using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Engine.Model;
using Throwright.Shapes.Solids;

namespace Throwright.Engine.Tests.Make;

/// <summary>Brackets with two bends: Z and channel.</summary>
public class BracketShapesTests
{
    private const double Mm = 1e-3, Inch = 0.0254, Degree = Math.PI / 180, Modulus = 71e9;

    private static readonly FigureWriter Say = new(new Display { Length = LengthUnit.Millimetre });

    /// <summary>Base 40 with two fasteners 20 from the corner, standing 30, top 25 with the conduit 15 from its corner; 25 wide, 2 thick.</summary>
    private static BracketCase Of(bool isBack, double first = 90, double second = 90, double? above = null, BracketLeg leg = BracketLeg.Top) => new(
        "6061-T6", 2 * Mm, first * Degree, 3 * Mm, 40 * Mm, 30 * Mm, 25 * Mm,
        [new(BracketLeg.Base, 20 * Mm, 6 * Mm, 4.8 * Mm), new(BracketLeg.Base, 20 * Mm, -6 * Mm, 4.8 * Mm), new(leg, 15 * Mm, 0, 6 * Mm)])
    { Then = new(second * Degree, 3 * Mm, isBack, 25 * Mm), ConduitAbove = above };

    private static double SecondMoment => BracketBending.SecondMoment(25 * Mm, 2 * Mm);

    /// <summary>One bend: the closed form A1, whatever the sizes.</summary>
    [Fact]
    public void Deflection_OfOneSquareBend_IsTheClosedForm() =>
        Gen.Select(Gen.Double[5, 60], Gen.Double[8, 60], Gen.Double[1, 500]).Sample(t =>
        {
            var (a, b, force) = t;
            var of = new BracketCase("6061-T6", 2 * Mm, 90 * Degree, 3 * Mm, 100 * Mm, 80 * Mm, 25 * Mm, [new(BracketLeg.Base, a * Mm, 0, 4 * Mm), new(BracketLeg.Standing, b * Mm, 0, 6 * Mm)]);
            var closed = BracketBending.Deflection(force, a * Mm, b * Mm, Modulus, SecondMoment);
            Assert.Equal(closed, BracketBending.Deflection(new(of, force), Modulus), 1e-12 * closed);
        });

    /// <summary>
    /// Square to the top leg at c from its corner, standing s, base a; moments F x, F c, F (c + x) for a Z and F (c - x) for a channel. By
    /// Castigliano's theorem: F / (E I) (c^3 / 3 + c^2 s + ((c + a)^3 - c^3) / 3), and (c^3 - (c - a)^3) / 3 for the last.
    /// </summary>
    [Theory, Trait("Check", "MK9")]
    [InlineData(true)]
    [InlineData(false)]
    public void Deflection_OfTwoSquareBends_IsTheDerivedOne(bool isBack)
    {
        const double a = 20 * Mm, s = 30 * Mm, c = 15 * Mm, force = 100;
        double Cube(double x) => x * x * x;
        var last = isBack ? (Cube(c + a) - Cube(c)) / 3 : (Cube(c) - Cube(c - a)) / 3;
        var derived = force * ((Cube(c) / 3) + (c * c * s) + last) / (Modulus * SecondMoment);
        Assert.Equal(derived, BracketBending.Deflection(new(Of(isBack), force), Modulus), 1e-12 * derived);
    }

    /// <summary>By another method: beam elements, their stiffness matrices added up and solved (derived, any textbook of the matrix method).</summary>
    [Fact, Trait("Check", "MK10")]
    public void Deflection_OfAnyShape_IsThatOfAFrameOfBeams() =>
        Gen.Select(Gen.Bool, Gen.Double[30, 140], Gen.Double[20, 120], Gen.Double[-10, 10]).Sample(t =>
        {
            var (isBack, first, second, above) = t;
            foreach (var of in (BracketCase[])[Of(isBack, first, second), Of(isBack, first, second, above * Mm), Of(isBack, first, second, above * Mm, BracketLeg.Standing)])
            {
                var load = new BracketLoad(of, 100);
                Assert.Equal(Frame(load), BracketBending.Deflection(load, Modulus), (1e-5 * BracketBending.Deflection(load, Modulus)) + 1e-9);
            }
        });

    /// <summary>Displacement of the force's point along the force: a frame clamped at the fasteners, stiff along its beams, with a rigid arm to the force.</summary>
    private static double Frame(BracketLoad load)
    {
        var path = load.Path;
        var (n, k) = (3 * (path.Count - 1), new double[3 * (path.Count - 1), 3 * (path.Count - 1)]);
        for (var e = 0; e + 1 < path.Count; e++)
        {
            var along = path[e + 1] - path[e];
            double length = along.Size, ei = Modulus * SecondMoment, ea = 1e7 * ei / (length * length);
            double c = along.X / length, s = along.Y / length;
            double[,] local = new double[6, 6], turn = new double[6, 6];
            void Put(int i, int j, double v) => (local[i, j], local[j, i]) = (v, v);
            Put(0, 0, ea / length);
            Put(3, 3, ea / length);
            Put(0, 3, -ea / length);
            double q = 12 * ei / (length * length * length), r = 6 * ei / (length * length);
            Put(1, 1, q);
            Put(4, 4, q);
            Put(1, 4, -q);
            Put(1, 2, r);
            Put(1, 5, r);
            Put(2, 4, -r);
            Put(4, 5, -r);
            Put(2, 2, 4 * ei / length);
            Put(5, 5, 4 * ei / length);
            Put(2, 5, 2 * ei / length);
            for (var b = 0; b < 6; b += 3)
                (turn[b, b], turn[b, b + 1], turn[b + 1, b], turn[b + 1, b + 1], turn[b + 2, b + 2]) = (c, s, -s, c, 1);
            for (var i = 0; i < 6; i++)
            {
                for (var j = 0; j < 6; j++)
                {
                    var sum = 0.0;
                    for (var x = 0; x < 6; x++)
                    {
                        for (var y = 0; y < 6; y++)
                            sum += turn[x, i] * local[x, y] * turn[y, j];
                    }

                    int row = (3 * (e - 1)) + i, column = (3 * (e - 1)) + j;
                    if (row >= 0 && column >= 0)
                        k[row, column] += sum;
                }
            }
        }

        Vector2 arm = load.At - path[^1], force = load.Force * load.Direction;
        var f = new double[n];
        (f[n - 3], f[n - 2], f[n - 1]) = (force.X, force.Y, Vector2.Cross(arm, force));
        var u = Solve(k, f, n);
        // The rigid arm carries the turn of its node to the force's point.
        return Vector2.Dot(new Vector2(u[n - 3] - (u[n - 1] * arm.Y), u[n - 2] + (u[n - 1] * arm.X)), load.Direction);
    }

    private static double[] Solve(double[,] k, double[] f, int n)
    {
        for (var p = 0; p < n; p++)
        {
            for (var i = p + 1; i < n; i++)
            {
                var share = k[i, p] / k[p, p];
                for (var j = p; j < n; j++)
                    k[i, j] -= share * k[p, j];
                f[i] -= share * f[p];
            }
        }

        for (var p = n - 1; p >= 0; p--)
        {
            for (var j = p + 1; j < n; j++)
                f[p] -= k[p, j] * f[j];
            f[p] /= k[p, p];
        }

        return f;
    }

    /// <summary>FAA-H-8083-31A fig. 4-124 and following (read): channel, mould lines 1.00, 2.00, 1.00 in: flats 0.80, 1.60, 0.80; twice the allowance of ST5.</summary>
    [Fact, Trait("Check", "ST4")]
    public void Strip_OfTheHandbookChannel_HasThePublishedFlats()
    {
        var channel = BracketSolver.Solve(new BracketCase("2024-T3", 0.040 * Inch, 90 * Degree, 0.16 * Inch, 1.00 * Inch, 2.00 * Inch, 1 * Inch, []) { Then = new(90 * Degree, 0.16 * Inch, false, 1.00 * Inch) });
        Assert.Equal([0.80, 1.60, 0.80], channel.Part.Legs.Select(l => l / Inch), (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal(3.20 + (2 * 0.2791), channel.Flat.Length / Inch, 0.0008);
        Assert.Equal(6, channel.Flat.Bends.Count);
    }

    /// <summary>Strip and bent part are one set of sizes: they differ by the bends' stretch alone; holes keep their distance from their bend line.</summary>
    [Theory]
    [InlineData(true, 90, 90)]
    [InlineData(true, 60, 110)]
    [InlineData(false, 90, 90)]
    [InlineData(false, 70, 60)]
    public void Strip_OfEitherShape_IsTheBentPartUnbent(bool isBack, double first, double second)
    {
        var bracket = BracketSolver.Solve(Of(isBack, first, second));
        Assert.Null(bracket.Part.Fault);
        var area = bracket.Flat.Outline.Area - bracket.Flat.Holes.Sum(h => h.Area);
        var stretch = bracket.Bends.Sum(b => 25 * Mm * 2 * Mm * ((b.Of.Angle * (b.Of.Radius + (1 * Mm))) - b.Allowance));
        Assert.Equal(bracket.Part.Volume, (area * 2 * Mm) + stretch, 1e-16);
        var conduit = bracket.Flat.Holes[^1];
        Assert.Equal(bracket.Flat.Bends[5].From.X + (15 * Mm) - bracket.Bends[1].Setback, conduit.Moment.X / conduit.Area, 1e-12);
    }

    /// <summary>Outside to outside: the bent part is as high as the standing leg says, and its top leg reaches as far as it says.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Part_OfSquareBends_HasItsOutsideSizes(bool isBack)
    {
        var bracket = BracketSolver.Solve(Of(isBack));
        var places = bracket.Part.Build().Vertices;
        Assert.Equal(30 * Mm, places.Max(p => p.Z) - places.Min(p => p.Z), 1e-12);
        // From the base's end to the first corner 40; a Z goes on by the top less the sheet.
        Assert.Equal((isBack ? 40 + 25 - 2 : 40) * Mm, places.Max(p => p.X) - places.Min(p => p.X), 1e-12);
    }

    [Fact]
    public void Fasteners_OfAForceThatStandsUp_ShareItAndHoldItsMoment()
    {
        // Two fasteners 20 from the corner; a Z's force 15 beyond the corner. About the base's end it lifts with 55 F, the fasteners hold at 20 from there.
        Assert.Equal(100 * 55.0 / 40, new BracketLoad(Of(isBack: true), 100).WorstTension, 1e-9);
        // A channel's force 15 back over the base: about the end with 25 F; shared out it would be half.
        Assert.Equal(100 * 25.0 / 40, new BracketLoad(Of(isBack: false), 100).WorstTension, 1e-9);
        // It does not push along the base.
        Assert.Equal(0, new BracketLoad(Of(isBack: true), 100).WorstShear, 1e-9);
        // In a clamp on the top leg, 5 above it, it does: 35 above the base, about either end of it.
        var along = new BracketLoad(Of(isBack: true, above: 5 * Mm), 100);
        Assert.Equal(50, along.WorstShear, 1e-9);
        Assert.Equal(100 * 35.0 / 40, along.WorstTension, 1e-9);
        Assert.Equal(3.5, along.WorstMoment, 1e-9);
        // Beside the middle by 4 a standing force tips the base on its two fasteners 12 apart.
        var beside = Of(isBack: false);
        beside = beside with { Holes = [.. beside.Fasteners, beside.Conduit with { Across = 4 * Mm }] };
        Assert.Equal((100 * 25.0 / 40) + (100 * 4.0 / 12), new BracketLoad(beside, 100).WorstTension, 1e-9);
    }

    /// <summary>With no shear there is no bearing to be clear by: what the force does instead is said.</summary>
    [Fact]
    public void Bearing_OfAForceThatStandsUp_IsACaution()
    {
        var finding = MakeRules.Find(new BracketLoad(Of(isBack: true), 100), "AN3", Say).Single(f => f.Rule == MakeRules.Bearing);
        Assert.Equal(Verdict.Caution, finding.Verdict);
        Assert.Contains("pull through", finding.Why);
        Assert.Equal("fastener-pull", finding.Figure);
        Assert.NotEqual("fastener-pull", MakeRules.Find(new BracketLoad(Of(isBack: true, above: 0.005), 100), "AN3", Say).Single(f => f.Rule == MakeRules.Bearing).Figure);
    }

    [Fact]
    public void Rules_CountEachBend()
    {
        Verdict Radius(BracketCase of) => MakeRules.Find(BracketSolver.Solve(of), Say).Single(f => f.Rule == MakeRules.BendRadius).Verdict;
        var of = Of(isBack: true) with { Radius = 8 * Mm, Then = new(90 * Degree, 8 * Mm, true, 30 * Mm) };
        Assert.Equal(Verdict.Clear, Radius(of));
        Assert.Equal(Verdict.Fail, Radius(of with { Then = of.Then! with { Radius = 1 * Mm } }));
        Assert.Equal(Verdict.Caution, Radius(of with { Then = of.Then! with { Bend = 100 * Degree } }));
        // A hole in the standing leg counts both its bends: 24 from the first corner it is 1 mm from the second's tangent line.
        var near = of with { Holes = [.. of.Fasteners, new(BracketLeg.Standing, 18 * Mm, 0, 4 * Mm)] };
        Assert.Equal(Verdict.Fail, MakeRules.Find(BracketSolver.Solve(near), Say).Single(f => f.Rule == MakeRules.EdgeDistance).Verdict);
    }
}
