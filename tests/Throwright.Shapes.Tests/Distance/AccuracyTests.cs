using System.Globalization;
using System.Text;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Tests;

namespace Throwright.Shapes.Tests.Distance;

/// <summary>docs/accuracy.md: how far distances and proofs are from what is known without the program.</summary>
public sealed class AccuracyTests
{
    private const int Draws = 150, SceneCount = 1000;

    /// <summary>Distances are held to this, m.</summary>
    private const double Most = 1e-10;

    /// <summary>Of sizes of a metre, m: no proof is above the true distance by more.</summary>
    private const double Rounding = 1e-14;

    /// <summary>Worst of one pair of kinds, m: distance against known, and distance less what its direction proves.</summary>
    private sealed record Worst(double Distance, double Gap);

    /// <summary>One scene against the oracle, m.</summary>
    private sealed record Held(bool Hits, double LowerOver, double Width, double UpperOver, double UpperUnder, double Attained, double There);

    [Fact]
    public void Page_CheckedIn_IsWhatTheseTestsMeasure()
    {
        var page = new StringBuilder();
        page.Append($"""
            # Accuracy

            Written by `AccuracyTests`, which fails when a figure is no longer the one below; `THROWRIGHT_APPROVE=1` rewrites it:

                dotnet test --project tests/Throwright.Shapes.Tests --filter-class '*AccuracyTests*'

            Errors are the worst that were met, in metres, rounded up to a power of ten.

            ## Distance of two shapes

            {Draws} draws for each pair and column, sizes 0.5 to 200 mm, distances from a micrometre to half a metre. The true distance is
            known beforehand: one shape's farthest point in a direction is taken in closed form, and the other shape is put so that its own
            lies that far ahead (`KnownShape`). *flush*: faces, edges or flat ends lie against each other. *gap*: distance found, less what its
            direction proves. What is proved is never above the true distance.

            | first | second | any way | flush | gap |
            |---|---|---|---|---|

            """);
        var kinds = KnownShape.Kinds;
        for (var i = 0; i < kinds.Length; i++)
        {
            for (var k = i; k < kinds.Length; k++)
            {
                var (any, flush) = (Measure(kinds[i], kinds[k], flush: false), Measure(kinds[i], kinds[k], flush: true));
                page.Append($"| {kinds[i]} | {kinds[k]} | {Up(any.Distance)} | {Up(flush.Distance)} | {Up(Math.Max(any.Gap, flush.Gap))} |\n");
            }
        }

        var held = Enumerable.Range(0, SceneCount).AsParallel().AsOrdered().WithDegreeOfParallelism(Environment.ProcessorCount)
            .WithCancellation(TestContext.Current.CancellationToken).Select(Hold).ToList();
        for (var seed = 0; seed < held.Count; seed++)
        {
            var of = held[seed];
            Assert.True(of.There <= 1e-6, $"scene {seed}: said to hit, {of.There} apart");
            Assert.True(of.LowerOver <= 1e-9, $"scene {seed}: proved above what is attained, by {of.LowerOver}");
            Assert.True(of.Width <= 1e-4 + 1e-11, $"scene {seed}: {of.Width} wide");
            Assert.True(of.UpperOver <= 1e-4 + 1e-9, $"scene {seed}: attained above the sampled by {of.UpperOver}");
            Assert.True(of.Attained <= 1e-6, $"scene {seed}: attained otherwise by {of.Attained}");
        }

        var clear = held.Where(h => !h.Hits).ToList();
        Assert.InRange(clear.Count, 500, 950);
        page.Append($"""

            ## Least distance over all positions

            {SceneCount} scenes from fixed seeds: half a stick beside a handle, half bodies of two shapes of any kind on two joints of any kind each.
            The oracle is a grid of the joints refined downhill, on distances by projections alone (`PlainOracle`); what it finds is attained, so
            nothing above it can be proved, and it may itself miss a minimum. Tolerance of the search 0.1 mm.

            | what | figure |
            |---|---|
            | scenes in which the bodies stay apart | {clear.Count} |
            | scenes in which they touch, and do so at the positions named, by the oracle | {held.Count - clear.Count} |
            | proved above what the oracle attains | {held.Count(h => h.LowerOver > 1e-9)} |
            | attained figure other than the oracle's at the same positions, by more than a micrometre | {clear.Count(h => h.Attained > 1e-6)} |
            | widest interval of proved and attained | {Mm(clear.Max(h => h.Width))} |
            | attained above the oracle's least, by at most | {Mm(clear.Max(h => h.UpperOver))} |
            | attained below it, where the oracle missed the minimum, in scenes | {clear.Count(h => h.UpperUnder > 1e-5)} |

            Cases that break solvers, each with its closed answer: `tests/Throwright.Shapes.Tests/Distance/Adversarial`.

            """);
        ApprovedText.Matches("docs/accuracy.md", page.ToString().ReplaceLineEndings("\n"));
    }

    private static Worst Measure(string first, string second, bool flush)
    {
        var (distance, gap) = (0.0, 0.0);
        for (var i = 0; i < Draws; i++)
        {
            var scene = new Scenes((Array.IndexOf(KnownShape.Kinds, first) * 1_000_000) + (Array.IndexOf(KnownShape.Kinds, second) * 10_000) + (flush ? 5000 : 0) + i);
            var (a, b) = (KnownShape.Of(first, scene), KnownShape.Of(second, scene));
            var d = Math.Pow(10, scene.Number(-6, -0.3));
            var (poseA, poseB) = KnownShape.Apart(a, b, d, flush, scene);
            var found = ConvexDistance.Between(a.Shape, poseA, b.Shape, poseB);
            distance = Math.Max(distance, Math.Abs(found.Distance - d));
            gap = Math.Max(gap, found.Distance - found.Proved);
            Assert.True(Math.Abs(found.Distance - d) <= Most && found.Distance - found.Proved <= Most && found.Proved <= d + Rounding, $"{first}, {second}, draw {i}, flush {flush}: {found.Distance}, proved {found.Proved}, true {d}");
        }

        return new(distance, gap);
    }

    private static Held Hold(int seed)
    {
        var (a, b, chainA, chainB) = seed % 2 == 0 ? LeastDistanceTests.Scene(50_000 + seed) : AnyScene(50_000 + seed);
        static Solid SolidOf(Plain[] parts) => Solid.Of(parts.Select((p, i) => new Part($"{i}", p.Shape())));
        var found = LeastDistance.Find(new(SolidOf(a), chainA), new(SolidOf(b), chainB));
        var oracle = new PlainOracle(a, chainA, b, chainB);
        double[] there = [.. found.Positions];
        if (found.Ended == SearchEnd.Hits)
            return new(true, double.NegativeInfinity, 0, double.NegativeInfinity, double.NegativeInfinity, 0, oracle.At(there, 20_000));
        var (_, place) = oracle.Least(found.Joints, 4, 3);
        var least = oracle.At(place, 5000);
        return new(false, found.Lower - least, found.Upper - found.Lower, found.Upper - least, least - found.Upper, Math.Abs(found.Upper - oracle.At(there, 5000)), double.NegativeInfinity);
    }

    /// <summary>Two bodies of two shapes each, of any kind, on two joints of any kind each.</summary>
    private static (Plain[] A, Plain[] B, JointChain ChainA, JointChain ChainB) AnyScene(int seed)
    {
        var scene = new Scenes(seed);
        Plain Shape(Vector3 at)
        {
            var by = scene.Place(0.06) + at;
            return scene.AnyShape() switch
            {
                Plain.Ball s => s with { Centre = s.Centre + by },
                Plain.Rod s => s with { From = s.From + by, To = s.To + by },
                Plain.Block s => s with { Centre = s.Centre + by },
                Plain.Bar s => s with { From = s.From + by, To = s.To + by },
                Plain.Sheet s => s with { A = s.A + by, B = s.B + by, C = s.C + by },
                var s => s,
            };
        }

        Joint Any(string name, Vector3 near) => scene.Number(0, 1) < 0.6
            ? Joint.Turn(name, near + scene.Place(0.2), scene.Direction(), -scene.Number(0, 0.6), scene.Number(0, 0.6))
            : Joint.Slide(name, scene.Direction(), -scene.Number(0, 0.05), scene.Number(0, 0.05));

        var apart = scene.Number(0.3, 0.6) * scene.Direction();
        return ([Shape(default), Shape(default)], [Shape(apart), Shape(apart)], new([Any("a", default), Any("b", default)]), new([Any("c", apart), Any("d", apart)]));
    }

    /// <summary>Rounded up to a power of ten: the last digits may differ between processors.</summary>
    private static string Up(double metres)
    {
        var power = Math.Max(-15, (int)Math.Ceiling(Math.Log10(Math.Max(metres, 1e-20))));
        return string.Create(CultureInfo.InvariantCulture, $"1e{power}");
    }

    private static string Mm(double metres) => string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(metres * 1e5 * (1 - 1e-9)) / 100:0.00} mm");
}
