using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Curves.Laws;

/// <summary>Curves that slide over several holds: the slack may gather in any span, and the shape of least energy is the one to find.</summary>
public class ChainTests
{
    [Fact]
    public void Chain_FromEitherEnd_RestsInTheSameShape()
    {
        var gathered = 0;
        for (var number = 0; number < 40; number++)
        {
            var of = Chain(number);
            var back = of with
            {
                Start = of.End!.Value,
                StartDirection = -of.EndDirection!.Value,
                End = of.Start,
                EndDirection = -of.StartDirection!.Value,
                Supports = of.Supports.Reverse().Select(s => s with { Direction = -s.Direction }).ToEquatableList(),
            };
            ElasticAnswer there = ElasticCurveSolver.Solve(of), again = ElasticCurveSolver.Solve(back);
            Assert.Equal(ElasticOutcome.Found, there.Outcome);
            Assert.True(Math.Abs(there.Curve!.Energy - again.Curve!.Energy) < 1e-6 * there.Curve.Energy, $"{number}: {there.Curve.Energy} and {again.Curve.Energy}");
            // The same share of the slack everywhere is the exception.
            gathered += Enumerable.Range(0, there.Curve.Holds.Count - 1).Max(k => there.Curve.SpanLength(k) - Chord(of, k)) > 0.6 * (there.Curve.Length - Straight(of)) ? 1 : 0;
        }

        Assert.True(gathered > 10, $"gathered in {gathered}");
    }

    /// <summary>A straight row of three equal spans with one arm's length to spare: it lies as one bow, not as three.</summary>
    [Fact]
    public void Row_WithSlack_LiesInOneBow()
    {
        Vector3 x = new(1, 0, 0);
        ElasticProblem of = new()
        {
            Start = default,
            StartDirection = x,
            End = 3 * x,
            EndDirection = x,
            Length = 3.3,
            Supports = [new(x, x), new(2 * x, x)],
        };
        var found = ElasticCurveSolver.Solve(of).Curve!;
        double[] slack = [.. Enumerable.Range(0, 3).Select(k => found.SpanLength(k) - 1)];
        // A bow grows softer as it grows longer, so one of 0.3 takes less than three of 0.1.
        Assert.Equal(0.3, slack.Max(), 1e-3);
        Assert.All(slack.Order().Take(2), s => Assert.Equal(0, s, 1e-3));
    }

    private static Vector3 Hold(ElasticProblem of, int k) => k == 0 ? of.Start : k <= of.Supports.Count ? of.Supports[k - 1].Point : of.End!.Value;

    private static double Chord(ElasticProblem of, int k) => (Hold(of, k + 1) - Hold(of, k)).Size;

    private static double Straight(ElasticProblem of) => Enumerable.Range(0, of.Supports.Count + 1).Sum(k => Chord(of, k));

    private static ElasticProblem Chain(int number)
    {
        var random = new CounterRandom(177, number);
        var position = 0L;
        double Sign() => (2 * random.Uniform(position++)) - 1;
        var spans = 2 + (number % 4);
        Vector3 way = new(1, 0, 0), at = default;
        var points = new List<Vector3> { at };
        for (var k = 0; k < spans; k++)
        {
            way = (way + (0.5 * new Vector3(Sign(), Sign(), Sign()))).Unit();
            at += (0.45 + (0.25 * Sign())) * way;
            points.Add(at);
        }

        Vector3 Off(Vector3 v) => (v.Unit() + (0.3 * new Vector3(Sign(), Sign(), Sign()))).Unit();
        var straight = points.Zip(points.Skip(1)).Sum(p => (p.Second - p.First).Size);
        return new()
        {
            Start = points[0],
            StartDirection = Off(points[1] - points[0]),
            End = points[^1],
            EndDirection = Off(points[^1] - points[^2]),
            Length = (1.15 + (0.1 * Sign())) * straight,
            Supports = points.Skip(1).Take(spans - 1).Select((p, i) => new ElasticSupport(p, i % 2 == 0 ? Off(points[i + 2] - points[i]) : null)).ToEquatableList(),
        };
    }
}
