using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Curves;

/// <summary>Leads a curve that runs through something thin, a sheet's edge or a skin, round it by points that it slides through.</summary>
/// <param name="problem">With its obstacles.</param>
internal sealed class WayRound(ElasticProblem problem)
{
    private const int Directions = 8;
    private const int MostPoints = 3;
    private const int MostTries = 12;
    private const int Wanted = 2;

    // Parts of the length: how far off a point may be, and the room it has in hand.
    private const double Farthest = 0.3, InHand = 0.01;
    private readonly List<(ElasticCurve, IReadOnlyList<int>)> found = [];
    private int tries;

    /// <summary>Curves that run through nothing, with their nodes at the holds of the problem.</summary>
    public IReadOnlyList<(ElasticCurve Curve, IReadOnlyList<int> Holds)> Of(ElasticCurve crossing)
    {
        Lead(crossing, crossing.Holds, []);
        return found;
    }

    /// <param name="holds">Of the curve, those that the problem has.</param>
    /// <param name="points">By which it is led, each with the span it is in and its place along the curve.</param>
    private void Lead(ElasticCurve curve, IReadOnlyList<int> holds, IReadOnlyList<(int Span, double At, Vector3 Point)> points)
    {
        if (Crossing(curve) is not { } cross)
        {
            found.Add((curve, holds));
            return;
        }

        if (points.Count == MostPoints)
            return;
        var at = 0.5 * (cross.From + cross.To);
        var span = Enumerable.Range(0, holds.Count - 1).Last(k => k == 0 || curve.Nodes[holds[k]].At < at);
        foreach (var point in Beside(curve, cross.Obstacle, at))
        {
            if (found.Count >= Wanted || tries++ >= MostTries)
                return;
            List<(int Span, double At, Vector3 Point)> all = [.. points.Append((Span: span, At: at, Point: point)).OrderBy(p => p.At)];
            var supports = new List<ElasticSupport>();
            var kept = new List<int> { 0 };
            for (var k = 0; k + 1 < holds.Count; k++)
            {
                supports.AddRange(all.Where(p => p.Span == k).Select(p => new ElasticSupport(p.Point)));
                if (k + 2 < holds.Count)
                {
                    kept.Add(supports.Count + 1);
                    supports.Add(problem.Supports[k]);
                }
            }

            kept.Add(supports.Count + 1);
            if (ElasticCurveSolver.Solve(problem with { Supports = supports.ToEquatableList(), Obstacles = [], Starts = 1 }).Curve is { } led)
                Lead(led, [.. kept.Select(i => led.Holds[i])], [.. all.Select((p, i) => (p.Span, led.Nodes[led.Holds[i + 1 + p.Span]].At, p.Point))]);
        }
    }

    /// <summary>The first stretch that runs through something; null: there is none.</summary>
    private (double From, double To, int Obstacle)? Crossing(ElasticCurve curve)
    {
        const int Steps = 1000;
        for (var i = 1; i < Steps; i++)
        {
            var at = curve.Length * i / Steps;
            var p = curve.PointAt(at);
            for (var o = 0; o < problem.Obstacles.Count; o++)
            {
                bool In(double s) => problem.Obstacles[o].DistanceAt(curve.PointAt(s)) < problem.Obstacles[o].Keep;
                if (problem.Obstacles[o].DistanceAt(p) >= problem.Obstacles[o].Keep)
                    continue;
                var to = i;
                while (to + 1 < Steps && In(curve.Length * (to + 1) / Steps))
                    to++;
                return (at, curve.Length * to / Steps, o);
            }
        }

        return null;
    }

    /// <summary>Places off the curve that are free of the thing, nearest first: square to the curve, and along the thing's face.</summary>
    private IEnumerable<Vector3> Beside(ElasticCurve curve, int obstacle, double at)
    {
        var (distance, keep) = (problem.Obstacles[obstacle].DistanceAt, problem.Obstacles[obstacle].Keep);
        Vector3 p = curve.PointAt(at), t = curve.TangentAt(at);
        var little = 1e-3 * curve.Length;
        // A little off its middle, or a sheet would have no side.
        var q = p + (little * t);
        var n = new Vector3(
            distance(q + new Vector3(little, 0, 0)) - distance(q - new Vector3(little, 0, 0)),
            distance(q + new Vector3(0, little, 0)) - distance(q - new Vector3(0, little, 0)),
            distance(q + new Vector3(0, 0, little)) - distance(q - new Vector3(0, 0, little)));
        var places = new List<(double Far, Vector3 Place)>();
        foreach (var axis in n.Size > 0.1 * little ? (Vector3[])[n.Unit(), t] : [t])
        {
            var (u, v) = ElasticSystem.Across(axis);
            for (var i = 0; i < Directions; i++)
            {
                var turn = 2 * Math.PI * i / Directions;
                var way = (Math.Cos(turn) * u) + (Math.Sin(turn) * v);
                var room = keep + (InHand * curve.Length);
                for (var far = 0.0; far < Farthest * curve.Length;)
                {
                    var missing = room - distance(p + (far * way));
                    if (missing <= 0)
                    {
                        places.Add((far, p + (far * way)));
                        break;
                    }

                    far += Math.Max(missing, 0.2 * little);
                }
            }
        }

        return places.OrderBy(x => x.Far).Select(x => x.Place);
    }
}
