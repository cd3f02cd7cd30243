using System.Numerics;

namespace Throwright.Shapes.Tests.Yardsticks;

/// <summary>The yardstick itself, measured with whole numbers of 400 bits.</summary>
public class WideTests
{
    private const int Bits = 400;

    /// <summary>pi by Machin's formula (1706): 16 atan(1/5) - 4 atan(1/239), as a whole number of 2^-400.</summary>
    private static readonly BigInteger Pi = (16 * ArcTangentOfOneOver(5)) - (4 * ArcTangentOfOneOver(239));

    [Fact]
    public void Wide_Arithmetic_AgreesWithWholeNumbersTo31Digits()
    {
        var random = new Random(1);
        for (var i = 0; i < 2000; i++)
        {
            double x = Draw(random), y = Draw(random), z = Draw(random);
            var (a, b) = (Wide.Of(x) + Wide.Of(1e-17 * z), Wide.Of(y) + Wide.Of(1e-17 * x));
            BigInteger p = Scaled(a), q = Scaled(b);
            AssertClose(p + q, a + b, BigInteger.Abs(p) + BigInteger.Abs(q), $"{a} + {b}");
            AssertClose((p * q) >> Bits, a * b, (p * q) >> Bits, $"{a} * {b}");
            AssertClose((p << Bits) / q, a / b, (p << Bits) / q, $"{a} / {b}");
            var root = Wide.Sqrt(Wide.AtLeastZero(a));
            AssertClose((Scaled(root) * Scaled(root)) >> Bits, Wide.AtLeastZero(a), p, $"root of {a}");
        }
    }

    [Fact]
    public void Wide_SineAndCosine_AgreeWithTaylorSeriesOf400BitsTo31Places()
    {
        var random = new Random(2);
        for (var i = 0; i < 500; i++)
        {
            var x = i % 5 == 0 ? Math.Round(random.NextDouble() * 60000) * (Math.PI / 2) : (random.NextDouble() - 0.5) * Math.Pow(10, random.Next(-3, 6));
            var (sine, cosine) = SineAndCosine(Scaled(Wide.Of(x)));
            AssertClose(sine, Wide.Sin(Wide.Of(x)), BigInteger.One << Bits, $"sin {x:R}");
            AssertClose(cosine, Wide.Cos(Wide.Of(x)), BigInteger.One << Bits, $"cos {x:R}");
        }
    }

    private static double Draw(Random random) => (random.NextDouble() - 0.5) * Math.Pow(10, random.Next(-6, 7));

    private static void AssertClose(BigInteger exact, Wide wide, BigInteger scale, string what)
    {
        var off = BigInteger.Abs(exact - Scaled(wide));
        Assert.True(off <= BigInteger.Abs(scale) / BigInteger.Pow(10, 31) + 1, $"{what}: off by {(double)off / Math.Pow(2, Bits)}");
    }

    private static BigInteger Scaled(Wide wide) => Scaled(wide.Hi) + Scaled(wide.Lo);

    private static BigInteger Scaled(double value)
    {
        var (m, e) = Dyadic.Of(value);
        return e + Bits >= 0 ? m << (e + Bits) : m >> -(e + Bits);
    }

    private static BigInteger ArcTangentOfOneOver(int n)
    {
        var term = (BigInteger.One << Bits) / n;
        var sum = term;
        for (var k = 3; !term.IsZero; k += 2)
        {
            term = -term / (n * n);
            sum += term / k;
        }

        return sum;
    }

    private static (BigInteger Sine, BigInteger Cosine) SineAndCosine(BigInteger x)
    {
        x %= 2 * Pi;
        BigInteger sine = 0, cosine = 0, term = BigInteger.One << Bits;
        for (var k = 1; !term.IsZero; k++)
        {
            // term = x^(k-1) / (k-1)!, signs by fours.
            switch (k % 4)
            {
                case 1: cosine += term; break;
                case 2: sine += term; break;
                case 3: cosine -= term; break;
                default: sine -= term; break;
            }

            term = ((term * x) >> Bits) / k;
        }

        return (sine, cosine);
    }
}
