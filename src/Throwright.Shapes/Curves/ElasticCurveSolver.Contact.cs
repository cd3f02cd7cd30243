using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Curves;

/// <summary>The search among obstacles.</summary>
public static partial class ElasticCurveSolver
{
    private const int ContactMesh = 40;

    /// <summary>Each free shape, and bows to all sides, pressed out of the obstacles; the lowest that holds, and the others.</summary>
    private static ElasticAnswer AmongObstacles(ElasticProblem problem, Posed posed, double[] lengths, List<Shape> free)
    {
        var scratch = new ElasticScratch();
        var curves = new List<ElasticCurve>();
        var pressed = new List<Vector3[]>();
        var totals = Totals(problem, posed, lengths);
        var obstacles = problem.Obstacles.Select(o => Scaled(posed, o)).ToArray();
        // The surface at the distance kept has no sharper bend than that distance; a point's own obstacle has none to speak of.
        var sharpest = posed.Unit / Math.Max(problem.Obstacles.Min(o => o.Keep), 0.01 * posed.Unit);
        foreach (var shape in free)
        {
            var curve = CurveReading.Read(shape.System, shape.Stability, posed.Origin, posed.Unit, problem.Stiffness);
            var gap = LeastGap(problem, curve);
            if (gap >= 0)
                Take(curve with { LeastGap = gap });
            else
                Press(shape.System);
        }

        var mesh = Meshes(posed.Frame, lengths, ContactMesh, ContactMesh / 2);
        for (var attempt = 0; attempt < Attempts && (attempt == 0 || curves.Count == 0); attempt++)
        {
            for (var kind = 0; kind < problem.Starts && (attempt == 0 ? kind < 5 : curves.Count == 0); kind++)
                Press(Begin(posed, mesh, lengths, kind, attempt, scratch));
        }

        if (curves.Count == 0)
            return new(ElasticOutcome.NotFound, null, []);
        curves.Sort((a, b) => a.Energy.CompareTo(b.Energy));
        return new(ElasticOutcome.Found, curves[0], curves.Skip(1).ToEquatableList());

        void Take(ElasticCurve curve)
        {
            var size = Math.Max(Math.Abs(curve.Energy), problem.Stiffness / posed.Unit);
            if (!curves.Any(c => Math.Abs(c.Energy - curve.Energy) <= 1e-5 * size && Enumerable.Range(1, 15).All(i => (c.PointAt(i * c.Length / 16) - curve.PointAt(i * curve.Length / 16)).Size < 1e-3 * posed.Unit)))
                curves.Add(curve);
        }

        void Press(ElasticSystem from)
        {
            var first = Contact(Finer(from, Meshes(posed.Frame, from.Lengths, ContactMesh, ContactMesh / 2), scratch));
            if (!ContactSolver.Settle(first, ContactSolver.First, true))
                return;
            if (pressed.Any(p => Apart(p, first.Tangents, SameShape) < SameShape))
                return;
            pressed.Add(first.Tangents);
            var fine = Contact(Finer(Plain(first), Meshes(posed.Frame, first.Lengths, problem.Segments, Math.Min(32, problem.Segments)), scratch));
            if (!ContactSolver.Settle(fine, 1e-3, true) || StabilityIn(fine) is not (not CurveStability.Unstable and var stability))
                return;
            var system = Plain(fine);
            system.Fine = true;
            system.Extra = new Vector3[system.Tangents.Length];
            for (var k = 0; k < system.Spans; k++)
            {
                for (var i = 0; i < system.Segments[k]; i++)
                    system.Extra[system.Offset[k] + i] = fine.Force[system.Offset[k] + i + 1] - system.ForceAt(k, i);
            }

            var curve = CurveReading.Read(system, stability, posed.Origin, posed.Unit, problem.Stiffness);
            var forceUnit = problem.Stiffness / (posed.Unit * posed.Unit);
            curve = curve with
            {
                Contacts = fine.Touches.Where(t => t.Push > 1e-5 && t.Push > t.Slack).OrderBy(t => t.Node).ThenBy(t => t.Obstacle)
                    .Select(t => new CurveContact(curve.Nodes[t.Node].At, curve.Nodes[t.Node].Point, forceUnit * t.Push * t.Normal, t.Obstacle)).ToEquatableList(),
            };
            Take(curve with { LeastGap = LeastGap(problem, curve) });
        }

        ContactSystem Contact(ElasticSystem of)
        {
            var system = new ContactSystem(posed.Frame, of.Segments, posed.Slides ? posed.Groups : null, totals, obstacles, sharpest);
            of.Tangents.CopyTo(system.Tangents, 0);
            of.Lengths.CopyTo(system.Lengths, 0);
            for (var k = 0; k < of.Spans; k++)
            {
                for (var i = 0; i < of.Segments[k]; i++)
                    system.Force[of.Offset[k] + i + 1] = of.ForceAt(k, i);
            }

            return system;
        }

        ElasticSystem Plain(ContactSystem of)
        {
            var system = new ElasticSystem(posed.Frame, Enumerable.Range(0, posed.Frame.Spans).Select(k => of.Offset[k + 1] - of.Offset[k]).ToArray(), posed.Slides ? posed.Groups : null, totals, scratch);
            of.Tangents.CopyTo(system.Tangents, 0);
            of.Lengths.CopyTo(system.Lengths, 0);
            for (var k = 0; k < system.Spans; k++)
                system.Force[k] = of.Force[of.Offset[k] + 1] + (0.5 * system.StepAt(k) * posed.Frame.Load);
            return system;
        }
    }

    private static Func<Vector3, double> Scaled(Posed posed, ElasticObstacle obstacle) =>
        p => (obstacle.DistanceAt(posed.Origin + (posed.Unit * p)) - obstacle.Keep) / posed.Unit;

    private static CurveStability StabilityIn(ContactSystem system) =>
        system.Factor(NeutralBelow) != system.Wanted ? CurveStability.Unstable
        : system.Factor(-NeutralBelow) == system.Wanted ? CurveStability.Stable
        : CurveStability.Neutral;

    private static double LeastGap(ElasticProblem problem, ElasticCurve curve)
    {
        var least = double.PositiveInfinity;
        for (var i = 1; i < curve.Nodes.Count; i++)
        {
            var middle = curve.PointAt(0.5 * (curve.Nodes[i - 1].At + curve.Nodes[i].At));
            foreach (var o in problem.Obstacles)
            {
                least = Math.Min(least, o.DistanceAt(middle) - o.Keep);
                if (i + 1 < curve.Nodes.Count && !curve.Holds.Contains(i))
                    least = Math.Min(least, o.DistanceAt(curve.Nodes[i].Point) - o.Keep);
            }
        }

        return least;
    }
}
