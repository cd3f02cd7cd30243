using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Numerics.Laws;

public class SymmetricEigenTests
{
    [Fact]
    public void Pairs_OfRandomMatrices_SatisfyTheirEquationInFallingOrder()
    {
        for (var round = 0; round < 50; round++)
        {
            var random = new CounterRandom(3, round);
            var n = 2 + (round % 4);
            var a = new double[n, n];
            for (var i = 0; i < n; i++)
            {
                for (var j = 0; j <= i; j++)
                    a[i, j] = a[j, i] = random.Uniform((i * n) + j) - 0.5;
            }

            var (values, vectors) = SymmetricEigen.Of(a);
            for (var k = 0; k < n; k++)
            {
                Assert.Equal(1, vectors[k].Sum(x => x * x), 1e-13);
                Assert.True(k == 0 || values[k] <= values[k - 1]);
                for (var i = 0; i < n; i++)
                    Assert.Equal(values[k] * vectors[k][i], Enumerable.Range(0, n).Sum(j => a[i, j] * vectors[k][j]), 1e-13);
            }
        }
    }
}
