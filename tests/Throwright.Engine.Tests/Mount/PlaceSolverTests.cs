using CsCheck;
using Throwright.Engine.Mount;

namespace Throwright.Engine.Tests.Mount;

/// <summary>The nearest place in the sheet, against closed forms: a round handle among round posts, seen square to the sheet.</summary>
public sealed class PlaceSolverTests
{
    private const double Wanted = 0.0127, Step = 0.003, Most = 0.1;

    /// <summary>Distance of a pin of radius 8 mm from posts, below zero where they overlap.</summary>
    private static ClearanceBounds Among(IReadOnlyList<(Place At, double Radius)> posts, Place at)
    {
        var least = posts.Count == 0 ? 1 : posts.Min(p => p.At.From(at) - p.Radius - 0.008);
        return new(Math.Max(0, least), least);
    }

    private static NearestPlace Find(IReadOnlyList<(Place At, double Radius)> posts, Func<Place, double>? room = null, int most = 3000) =>
        PlaceSolver.Find(new(p => Among(posts, p), room ?? (_ => 1), Wanted, Most, Step, most), TestContext.Current.CancellationToken);

    [Fact]
    public void Find_OnePostBeside_GoesStraightAway_AndProvesTheRest()
    {
        // Post of 10 mm, 20 mm to the right: 30.7 mm are wanted, so 10.7 mm to the left at least; the grid has 12.
        var found = Find([(new(0, 0.020), 0.010)]);
        Assert.Equal(new Place(0, -0.012), found.Place);
        Assert.InRange(found.NoneNearer, 0.0107 - (0.75 * Step), 0.0107 + 1e-9);
    }

    [Fact]
    public void Find_NothingFits_HasNoPlace_AndProvesItOverTheWholeRange()
    {
        var found = Find([(default, 0.2)]);
        Assert.Null(found.Place);
        Assert.Equal(Most, found.NoneNearer);
    }

    [Fact]
    public void Find_OffTheSheet_IsNoPlace()
    {
        // The near way, to the left, is off the sheet beyond 5 mm.
        var found = Find([(new(0, 0.020), 0.010)], p => 0.005 + p.Right);
        Assert.True(found.Place!.Value.Right >= -0.005);
        Assert.True(found.Place.Value.Away > 0.012);
    }

    [Fact]
    public void Find_BudgetSpent_ClaimsNothing()
    {
        var found = Find([(new(0, 0.020), 0.010)], most: 1);
        Assert.Null(found.Place);
        Assert.True(found.NoneNearer <= Step);
    }

    /// <summary>Places taken at random nearer than the proven bound never clear; the place found does.</summary>
    [Fact]
    public void Find_RandomPosts_BoundHolds()
    {
        var post = Gen.Select(Gen.Double[-0.05, 0.05], Gen.Double[-0.05, 0.05], Gen.Double[0.002, 0.02], (u, r, a) => (new Place(u, r), a));
        Gen.Select(post.List[1, 6], Gen.Double[0, 1].List[400]).Sample(
            (posts, random) =>
            {
                // Square as it is must fail: else nothing is looked for.
                posts.Add((new Place(0.01, 0.004), 0.01));
                var found = Find(posts);
                if (found.Place is { } place)
                {
                    Assert.True(Among(posts, place).Lower >= Wanted);
                    Assert.True(found.NoneNearer <= place.Away);
                }

                for (var i = 0; i + 1 < random.Count; i += 2)
                {
                    double away = found.NoneNearer * random[i] * (1 - 1e-9), angle = 2 * Math.PI * random[i + 1];
                    Assert.True(Among(posts, new(away * Math.Sin(angle), away * Math.Cos(angle))).Upper < Wanted);
                }
            },
            iter: 60);
    }
}
