using Throwright.Shapes.Curves;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Curves.Laws;

public class SymmetricFactorTests
{
    /// <summary>Rows of very different measure, entries of both signs, some rows without a diagonal: as the border of a conduit over supports.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(16)]
    public void Chain_OfRandomStages_IsSolvedAndItsSignsAreCounted(int stages)
    {
        for (var number = 0; number < 60; number++)
        {
            var (matrix, first, last, weights) = Chain(number, stages);
            var n = first.Length;
            var factor = new SymmetricFactor();
            factor.Run([.. matrix], n, first, last, stages, weights);
            Assert.False(factor.IsSingular);
            Assert.Equal(NegativesOf(matrix, n, weights), factor.Negatives);
            var random = new CounterRandom(5, number);
            double[] wanted = [.. Enumerable.Range(0, n).Select(i => weights[i] * ((2 * random.Uniform(i)) - 1))];
            double[] rhs = [.. Enumerable.Range(0, n).Select(i => Enumerable.Range(0, n).Sum(j => matrix[(i * n) + j] * wanted[j]))];
            factor.Solve(rhs);
            for (var i = 0; i < n; i++)
                Assert.Equal(wanted[i] / weights[i], rhs[i] / weights[i], 1e-7);
        }
    }

    [Fact]
    public void Whole_TakenAtOnce_IsWhatTheChainIs()
    {
        var (matrix, first, last, weights) = Chain(3, 6);
        var n = first.Length;
        SymmetricFactor chain = new(), whole = new();
        chain.Run([.. matrix], n, first, last, 6, weights);
        whole.Run([.. matrix], n);
        Assert.Equal(whole.Negatives, chain.Negatives);
    }

    [Fact]
    public void Zeros_OnTheDiagonal_AreTakenInPairs()
    {
        var factor = new SymmetricFactor();
        factor.Run([0, 2, 2, 0], 2);
        Assert.Equal(1, factor.Negatives);
        double[] rhs = [6, 4];
        factor.Solve(rhs);
        Assert.Equal([2, 3], rhs);
    }

    [Fact]
    public void RowOfZeros_IsSingular()
    {
        var factor = new SymmetricFactor();
        factor.Run([1, 0, 0, 0], 2);
        Assert.True(factor.IsSingular);
    }

    /// <summary>Each stage has rows of its own and two that it shares with the next; one row has entries with all stages.</summary>
    private static (double[] Matrix, int[] First, int[] Last, double[] Weights) Chain(int number, int stages)
    {
        const int Own = 4, Shared = 2;
        var random = new CounterRandom(31, number);
        var position = 0L;
        double Sign() => (2 * random.Uniform(position++)) - 1;
        var n = (stages * (Own + Shared)) + 1;
        int[] first = new int[n], last = new int[n];
        var weights = new double[n];
        for (var i = 0; i < n - 1; i++)
        {
            var stage = i / (Own + Shared);
            first[i] = stage;
            last[i] = i % (Own + Shared) < Own ? stage : Math.Min(stage + 1, stages - 1);
            weights[i] = Math.Pow(10, 3 * Sign());
        }

        (first[n - 1], last[n - 1], weights[n - 1]) = (0, stages - 1, 1);
        var matrix = new double[n * n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                // Both are there in some stage.
                var meet = Math.Max(first[i], first[j]) <= Math.Min(last[i], last[j]);
                var value = !meet || (i == j && Sign() < -0.3) ? 0 : Sign() / (weights[i] * weights[j]);
                matrix[(i * n) + j] = matrix[(j * n) + i] = value;
            }
        }

        return (matrix, first, last, weights);
    }

    /// <summary>Eigenvalues below zero, by Jacobi's rotations on the matrix in even measure: the signs are the same.</summary>
    private static int NegativesOf(double[] matrix, int n, double[] weights)
    {
        var a = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
                a[i, j] = weights[i] * matrix[(i * n) + j] * weights[j];
        }

        for (var sweep = 0; sweep < 12; sweep++)
        {
            for (var p = 0; p < n; p++)
            {
                for (var q = p + 1; q < n; q++)
                {
                    if (Math.Abs(a[p, q]) < 1e-300)
                        continue;
                    var theta = 0.5 * Math.Atan2(2 * a[p, q], a[q, q] - a[p, p]);
                    double c = Math.Cos(theta), s = Math.Sin(theta);
                    for (var k = 0; k < n; k++)
                        (a[k, p], a[k, q]) = ((c * a[k, p]) - (s * a[k, q]), (s * a[k, p]) + (c * a[k, q]));
                    for (var k = 0; k < n; k++)
                        (a[p, k], a[q, k]) = ((c * a[p, k]) - (s * a[q, k]), (s * a[p, k]) + (c * a[q, k]));
                }
            }
        }

        return Enumerable.Range(0, n).Count(i => a[i, i] < 0);
    }
}
