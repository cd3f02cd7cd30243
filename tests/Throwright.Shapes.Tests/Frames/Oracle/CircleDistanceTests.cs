using System.Runtime.Intrinsics;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;
using Throwright.Shapes.Tests.Yardsticks;

namespace Throwright.Shapes.Tests.Frames.Oracle;

/// <summary>Against a point turned by a matrix in space, with no circle in the formula.</summary>
public class CircleDistanceTests
{
    [Fact]
    public void Distance_RandomAxisPinAndPoint_IsThatOfThePinTurnedByAMatrix()
    {
        for (var seed = 0; seed < 20_000; seed++)
        {
            var random = new Random(seed);
            var (circle, turned, anchor) = Draw(random);
            var phi = (random.NextDouble() - 0.5) * 20;
            var exact = (turned(phi) - anchor).Size;
            var length = circle.At(new(phi)).Value;
            Assert.Equal(exact, length, 1e-14);

            // dL/dphi by the central difference of the matrix: h^2 L'''/6 and 1e-16/h are both below 1e-9.
            const double Step = 1e-5;
            var slope = ((turned(phi + Step) - anchor).Size - (turned(phi - Step) - anchor).Size) / (2 * Step);
            if (exact > 0.02)
                Assert.Equal(slope, circle.SlopeAt(new(phi), new(length)).Value, 1e-8);
        }
    }

    [Fact]
    public void Difference_OfTwoPlaces_IsThatOfTheirDistancesTo32Digits()
    {
        for (var seed = 0; seed < 5000; seed++)
        {
            var random = new Random(seed);
            var (circle, _, _) = Draw(random);
            var phi = random.NextDouble() * 6;
            // Down to places so near that subtraction would leave no digits.
            var other = phi + (Math.Pow(10, -random.Next(0, 12)) * (random.NextDouble() - 0.5));
            CircleDistance<Wide> exact = new(Wide.Of(circle.Radius.Value), Wide.Of(circle.AlongZero.Value), Wide.Of(circle.AlongQuarter.Value), Wide.Of(circle.AlongAxis.Value));
            var difference = (exact.At(Wide.Of(phi)) - exact.At(Wide.Of(other))).Hi;
            var found = circle.Difference(circle.PlaceAt(new(phi)), circle.PlaceAt(new(other))).Value;
            if (circle.At(new(phi)).Value < 0.01)
                continue;
            Assert.Equal(difference, found, 3e-16);

            CircleDistance<Bound> bounds = new(Bound.Of(circle.Radius.Value), Bound.Of(circle.AlongZero.Value), Bound.Of(circle.AlongQuarter.Value), Bound.Of(circle.AlongAxis.Value));
            var bound = bounds.Difference(bounds.PlaceAt(Bound.Input(0, 1, new(phi, phi + 1e-4))), bounds.PlaceAt(Bound.Of(other)));
            var inside = Wide.Of(phi + (1e-4 * random.NextDouble()));
            Assert.True((exact.At(inside) - exact.At(Wide.Of(other))).IsIn(bound.Value));
            Assert.True(exact.SlopeAt(inside, exact.At(inside)).IsIn(bound.Slope(0)));
        }
    }

    [Fact]
    public void Place_SineCosineAndDistance_AreThoseAskedForOneByOne()
    {
        var (circle, _, _) = Draw(new Random(1));
        Real phi = new(1.1);
        var place = circle.PlaceAt(phi);
        Assert.Equal((Real.Cos(phi), Real.Sin(phi), circle.At(phi)), (place.Cos, place.Sin, place.Distance));
        Assert.Equal(circle.SlopeAt(phi, place.Distance), circle.SlopeAt(place));
    }

    [Fact]
    public void Distance_DeadCentres_AreItsLeastAndGreatestHalfATurnApart()
    {
        for (var seed = 0; seed < 2000; seed++)
        {
            var random = new Random(seed);
            var (circle, _, _) = Draw(random);
            var phi0 = Math.Atan2(circle.AlongQuarter.Value, circle.AlongZero.Value);
            double least = circle.At(new(phi0)).Value, most = circle.At(new(phi0 + Math.PI)).Value;
            for (var i = 0; i < 100; i++)
                Assert.InRange(circle.At(new(random.NextDouble() * 7)).Value, least - 1e-15, most + 1e-15);
            Assert.Equal(0, circle.SlopeAt(new(phi0), new(least)).Value, 1e-14 / least);
            Assert.Equal(0, circle.SlopeAt(new(phi0 + Math.PI), new(most)).Value, 1e-15);

            // L^2 = C - D cos(phi - phi0).
            var c = new[] { circle.Radius, circle.AlongZero, circle.AlongQuarter, circle.AlongAxis }.Sum(x => x.Value * x.Value);
            var d = 2 * circle.Radius.Value * Math.Sqrt((circle.AlongZero.Value * circle.AlongZero.Value) + (circle.AlongQuarter.Value * circle.AlongQuarter.Value));
            Assert.Equal(c - d, least * least, 1e-15);
            Assert.Equal(c + d, most * most, 1e-15);
        }
    }

    [Fact]
    public void Distance_PointOnTheAxis_IsConstant()
    {
        CircleDistance<Real> circle = new(new(0.03), new(0), new(0), new(0.04));
        for (var phi = -4.0; phi < 4; phi += 0.1)
        {
            Assert.Equal(0.05, circle.At(new(phi)).Value, 1e-16);
            Assert.Equal(0, circle.SlopeAt(new(phi), new(0.05)).Value);
        }
    }

    [Fact]
    public void Distance_PointOnTheCircle_IsTheChordToTheLastDigits()
    {
        // L = 2 r sin(phi/2): C - D cos(phi) would lose all digits here.
        CircleDistance<Real> circle = new(new(0.03), new(0.03), new(0), new(0));
        foreach (var phi in (double[])[1e-7, 1e-5, 1e-3, 0.1, 1, 3])
            Assert.Equal(0.06 * Math.Sin(phi / 2), circle.At(new(phi)).Value, 1e-9 * phi * 0.03);
        Assert.Equal(0, circle.At(new(0)).Value);
        // Where the two meet there is no direction of motion: no number, rather than a wrong one.
        Assert.True(double.IsNaN(circle.SlopeAt(new(0), new(0)).Value));
    }

    [Fact]
    public void Distance_BoundsOverABox_HoldPointsAndSlopes()
    {
        for (var seed = 0; seed < 3000; seed++)
        {
            var random = new Random(seed);
            var (plain, _, _) = Draw(random);
            double[] middle = [plain.Radius.Value, plain.AlongZero.Value, plain.AlongQuarter.Value, plain.AlongAxis.Value, random.NextDouble() * 6];
            Interval[] box = [.. middle.Select(m => new Interval(m - (1e-3 * random.NextDouble()), m + (1e-3 * random.NextDouble())))];
            var x = box.Select((side, i) => Bound.Input(i, 5, side)).ToArray();
            CircleDistance<Bound> bounds = new(x[0], x[1], x[2], x[3]);
            var length = bounds.At(x[4]);
            var slope = bounds.SlopeAt(x[4], length);
            for (var draw = 0; draw < 5; draw++)
            {
                Wide[] p = [.. box.Select(side => Wide.Of(Math.Clamp(side.Low + (random.NextDouble() * side.Width), side.Low, side.High)))];
                CircleDistance<Wide> exact = new(p[0], p[1], p[2], p[3]);
                Assert.True(exact.At(p[4]).IsIn(length.Value));
                Assert.True(exact.SlopeAt(p[4], exact.At(p[4])).IsIn(slope.Value));
                // The slope against the angle, found by differentiation, is the moment arm.
                Assert.True(exact.SlopeAt(p[4], exact.At(p[4])).IsIn(length.Slope(4)));
            }
        }
    }

    [Fact]
    public void Distance_OfALane_HasTheSameBits()
    {
        for (var seed = 0; seed < 1000; seed++)
        {
            var random = new Random(seed);
            var some = Enumerable.Range(0, Lane.Width).Select(_ => (Draw(random).Circle, Phi: random.NextDouble() * 6)).ToArray();
            Lane Lanes(Func<(CircleDistance<Real> Circle, double Phi), double> pick) => new(Vector512.Create([.. some.Select(pick)]));
            CircleDistance<Lane> lanes = new(
                Lanes(f => f.Circle.Radius.Value), Lanes(f => f.Circle.AlongZero.Value), Lanes(f => f.Circle.AlongQuarter.Value), Lanes(f => f.Circle.AlongAxis.Value));
            var phi = Lanes(f => f.Phi);
            var length = lanes.At(phi);
            var slope = lanes.SlopeAt(phi, length);
            for (var k = 0; k < Lane.Width; k++)
            {
                var one = some[k].Circle.At(new(some[k].Phi));
                Assert.Equal(one.Value, length.Values[k]);
                Assert.Equal(some[k].Circle.SlopeAt(new(some[k].Phi), one).Value, slope.Values[k]);
            }
        }
    }

    /// <summary>A random axis, pin and anchor within 0.2 m, as a circle and as a function that turns the pin by a matrix.</summary>
    private static (CircleDistance<Real> Circle, Func<double, Vector3> Turned, Vector3 Anchor) Draw(Random random)
    {
        Vector3 Any(double size) => new(size * (random.NextDouble() - 0.5), size * (random.NextDouble() - 0.5), size * (random.NextDouble() - 0.5));
        Vector3 origin = Any(0.4), axis = Any(1).Unit(), pin = Any(0.4), anchor = Any(0.4);
        var centre = origin + (Vector3.Dot(pin - origin, axis) * axis);
        Vector3 u = (pin - centre).Unit(), w = Vector3.Cross(axis, u), a = anchor - centre;
        CircleDistance<Real> circle = new(new((pin - centre).Size), new(Vector3.Dot(a, u)), new(Vector3.Dot(a, w)), new(Vector3.Dot(a, axis)));
        return (circle, phi => origin + Multiply(Turn(axis, phi), pin - origin), anchor);
    }

    /// <summary>Rodrigues' matrix I + sin(phi) K + (1 - cos(phi)) K K, with K v = axis x v.</summary>
    private static double[,] Turn(Vector3 axis, double phi)
    {
        double[,] k = { { 0, -axis.Z, axis.Y }, { axis.Z, 0, -axis.X }, { -axis.Y, axis.X, 0 } };
        var turn = new double[3, 3];
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                var square = (k[i, 0] * k[0, j]) + (k[i, 1] * k[1, j]) + (k[i, 2] * k[2, j]);
                turn[i, j] = (i == j ? 1 : 0) + (Math.Sin(phi) * k[i, j]) + ((1 - Math.Cos(phi)) * square);
            }
        }

        return turn;
    }

    private static Vector3 Multiply(double[,] m, Vector3 v) => new(
        (m[0, 0] * v.X) + (m[0, 1] * v.Y) + (m[0, 2] * v.Z),
        (m[1, 0] * v.X) + (m[1, 1] * v.Y) + (m[1, 2] * v.Z),
        (m[2, 0] * v.X) + (m[2, 1] * v.Y) + (m[2, 2] * v.Z));
}
