using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Curves;

/// <summary>The search among obstacles.</summary>
public static partial class ElasticCurveSolver
{
    private const int ContactMesh = 40;

    // Parts of the whole length: what a curve may enter between its nodes before the mesh is made finer, and what no curve may enter.
    private const double Entered = 1e-4, Through = 3e-4;

    // Segments of the longest span that a sharp edge may ask for.
    private const int Finest = 1536;

    /// <summary>Each free shape, and bows to all sides, pressed out of the obstacles; the lowest that holds, and the others.</summary>
    private static ElasticAnswer AmongObstacles(ElasticProblem problem, Posed posed, double[] lengths, List<Shape> free)
    {
        var pressing = new Pressing(problem, posed, Totals(problem, posed, lengths));
        var scratch = pressing.Scratch;
        var curves = new List<ElasticCurve>();
        var pressed = new List<Vector3[]>();
        var led = false;
        foreach (var shape in free)
        {
            var curve = CurveReading.Read(shape.System, shape.Stability, posed.Origin, posed.Unit, problem.Stiffness);
            var gap = LeastGap(problem, curve);
            if (gap >= 0)
                Take(curve with { LeastGap = gap });
            else if (!Press(shape.System))
                Round(curve);
        }

        // Shaken starts find no way round a sheet that leading the curve round it did not.
        var mesh = Meshes(posed.Frame, lengths, ContactMesh, ContactMesh / 2);
        for (var attempt = 0; attempt < (led ? 1 : Attempts) && (attempt == 0 || curves.Count == 0); attempt++)
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

        bool Press(ElasticSystem from)
        {
            var first = pressing.Begin(Finer(from, Meshes(posed.Frame, from.Lengths, ContactMesh, ContactMesh / 2), scratch), 0);
            if (!ContactSolver.Settle(first, ContactSolver.First, true))
                return false;
            if (pressed.Any(p => Apart(p, first.Tangents, SameShape) < SameShape))
                return true;
            if (pressing.Finish(first) is not { } curve)
                return false;
            pressed.Add(first.Tangents);
            Take(curve);
            return true;
        }

        // A thing thinner than a segment has no inside that could be pushed out of: the curve is led round its edges.
        void Round(ElasticCurve crossing)
        {
            led = true;
            foreach (var way in new WayRound(problem).Of(crossing))
            {
                if (pressing.Lower(way.Curve, way.Holds) is { } curve)
                    Take(curve);
            }
        }
    }

    /// <summary>The curve at rest that a known one goes over into.</summary>
    private static ElasticCurve? FollowAmongObstacles(ElasticProblem problem, Posed posed, double[] totals, double[] lengths, ElasticCurve near)
    {
        var pressing = new Pressing(problem, posed, totals);
        var system = pressing.Begin(near, near.Holds, lengths, problem.Segments, 0);
        return pressing.Settle(system, [.. system.Tangents]);
    }

    /// <summary>From a curve that is nearly there to the one that rests among the obstacles.</summary>
    private sealed class Pressing
    {
        // A barrier this low leaves a curve where it is, to the thickness of a hair.
        private const double Warm = 1e-3;
        private readonly ElasticProblem problem;
        private readonly Posed posed;
        private readonly double[] totals;
        private readonly Func<Vector3, double>[] obstacles;
        private readonly double sharpest;

        public Pressing(ElasticProblem problem, Posed posed, double[] totals)
        {
            (this.problem, this.posed, this.totals) = (problem, posed, totals);
            obstacles = [.. problem.Obstacles.Select(o => (Func<Vector3, double>)(p => (o.DistanceAt(posed.Origin + (posed.Unit * p)) - o.Keep) / posed.Unit))];
            // The surface at the distance kept has no sharper bend than that distance; a point's own obstacle has none to speak of.
            sharpest = posed.Unit / Math.Max(problem.Obstacles.Min(o => o.Keep), 0.01 * posed.Unit);
        }

        public ElasticScratch Scratch { get; } = new();

        /// <param name="pad">Room kept besides what is to be kept.</param>
        public ContactSystem Begin(ElasticSystem of, double pad)
        {
            var system = new ContactSystem(posed.Frame, of.Segments, posed.Slides ? posed.Groups : null, totals, pad > 0 ? [.. obstacles.Select(o => (Func<Vector3, double>)(p => o(p) - pad))] : obstacles, sharpest);
            of.Tangents.CopyTo(system.Tangents, 0);
            of.Lengths.CopyTo(system.Lengths, 0);
            for (var k = 0; k < of.Spans; k++)
            {
                for (var i = 0; i < of.Segments[k]; i++)
                    system.Force[of.Offset[k] + i + 1] = of.ForceAt(k, i);
            }

            return system;
        }

        /// <summary>A solved curve, with the force that changes in it where something touches or leads it.</summary>
        public ContactSystem Begin(ElasticCurve curve, IReadOnlyList<int> holds, double[] lengths, int segments, double pad)
        {
            var system = Laid(problem, posed, totals, lengths, Meshes(posed.Frame, lengths, segments, Math.Min(32, segments)), curve, holds, Scratch);
            var contact = Begin(system, pad);
            var along = curve.Contacts.Select(c => (c.At, c.Force)).Concat(curve.Reactions.Where((_, i) => !holds.Contains(curve.Holds[i])).Select(r => (r.At, r.Force))).OrderBy(p => p.At).ToList();
            var (next, pushed) = (0, default(Vector3));
            for (var k = 0; k < system.Spans; k++)
            {
                double start = curve.Nodes[holds[k]].At, over = curve.Nodes[holds[k + 1]].At - start;
                for (var i = 0; i < system.Segments[k]; i++)
                {
                    for (; next < along.Count && along[next].At < start + (over * (i + 0.5) / system.Segments[k]); next++)
                        pushed += (posed.Unit * posed.Unit / problem.Stiffness) * along[next].Force;
                    contact.Force[system.Offset[k] + i + 1] -= pushed;
                }
            }

            return contact;
        }

        /// <summary>From a curve that is led round something down to it; null: it does not rest there.</summary>
        /// <remarks>
        /// Nodes slip past what is thinner than their distance, so that as much more is kept as that asks for, less and less on finer
        /// meshes.
        /// </remarks>
        public ElasticCurve? Lower(ElasticCurve led, IReadOnlyList<int> holds)
        {
            var lengths = Enumerable.Range(0, posed.Frame.Spans).Select(k => (led.Nodes[holds[k + 1]].At - led.Nodes[holds[k]].At) / posed.Unit).ToArray();
            const double Guard = 0.6;
            double Pad(int segments) => Math.Max(0, (Guard * lengths.Max() / segments) - (problem.Obstacles.Min(o => o.Keep) / posed.Unit));
            var segments = ContactMesh;
            var system = Begin(led, holds, lengths, segments, Pad(segments));
            for (var mu = 0.01; ; mu = Warm)
            {
                if (!ContactSolver.Settle(system, mu, true))
                    return null;
                var pad = Pad(segments);
                segments = Math.Max(problem.Segments, 2 * segments);
                if (pad == 0 || segments > Finest)
                    return Settle(system, null);
                system = Finer(system, segments, Pad(segments));
            }
        }

        /// <summary>From a coarse mesh on the full one; null: it does not rest there.</summary>
        public ElasticCurve? Finish(ContactSystem coarse) => Settle(Finer(coarse, problem.Segments, 0), null);

        /// <summary>On the mesh given, and on finer ones as long as something sharp is entered between the nodes; null: it does not rest there.</summary>
        /// <param name="near">Tangents that it may not leave by more than a stride; null: it may.</param>
        public ElasticCurve? Settle(ContactSystem system, Vector3[]? near)
        {
            for (var segments = problem.Segments; ;)
            {
                if (!ContactSolver.Settle(system, Warm, true) || StabilityIn(system) is not (not CurveStability.Unstable and var stability))
                    return null;
                if (near is not null && Apart(system.Tangents, near, 2 * Stride) > Stride)
                    return null;
                near = null;
                var curve = Read(system, stability);
                var enters = -curve.LeastGap / posed.Unit;
                if (enters <= Entered)
                    return curve;
                if (segments >= Finest)
                    return enters <= Through ? curve : null;
                // Between nodes it enters by about the square of their distance.
                segments = Math.Min(Finest, (int)Math.Ceiling(segments * Math.Clamp(1.2 * Math.Sqrt(enters / Entered), 1.5, 6)));
                system = Finer(system, segments, 0);
            }
        }

        private ContactSystem Finer(ContactSystem of, int segments, double pad) =>
            Begin(ElasticCurveSolver.Finer(Plain(of), Meshes(posed.Frame, of.Lengths, segments, Math.Min(32, segments)), Scratch), pad);

        private ElasticSystem Plain(ContactSystem of)
        {
            var system = new ElasticSystem(posed.Frame, Enumerable.Range(0, posed.Frame.Spans).Select(k => of.Offset[k + 1] - of.Offset[k]).ToArray(), posed.Slides ? posed.Groups : null, totals, Scratch);
            of.Tangents.CopyTo(system.Tangents, 0);
            of.Lengths.CopyTo(system.Lengths, 0);
            for (var k = 0; k < system.Spans; k++)
                system.Force[k] = of.Force[of.Offset[k] + 1] + (0.5 * system.StepAt(k) * posed.Frame.Load);
            return system;
        }

        private ElasticCurve Read(ContactSystem fine, CurveStability stability)
        {
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
            return curve with
            {
                Contacts = fine.Touches.Where(t => t.Push > 1e-5 && t.Push > t.Slack).OrderBy(t => t.Node).ThenBy(t => t.Obstacle)
                    .Select(t => new CurveContact(curve.Nodes[t.Node].At, curve.Nodes[t.Node].Point, forceUnit * t.Push * t.Normal, t.Obstacle)).ToEquatableList(),
                LeastGap = LeastGap(problem, curve),
            };
        }
    }

    private static CurveStability StabilityIn(ContactSystem system) =>
        system.Factor(NeutralBelow) != system.Wanted ? CurveStability.Unstable
        : system.Factor(-NeutralBelow) == system.Wanted ? CurveStability.Stable
        : CurveStability.Neutral;

    /// <summary>
    /// Least room over the nodes and between them. A distance grows no faster than its point moves, so that a piece whose ends have
    /// room enough needs no look; at the holds themselves, which are where they are, nothing counts.
    /// </summary>
    private static double LeastGap(ElasticProblem problem, ElasticCurve curve)
    {
        var shortest = curve.Length * 1e-4;
        var least = double.PositiveInfinity;
        double Room(Vector3 p)
        {
            var room = double.PositiveInfinity;
            foreach (var o in problem.Obstacles)
                room = Math.Min(room, o.DistanceAt(p) - o.Keep);
            return room;
        }

        var last = Room(curve.Nodes[0].Point);
        for (var i = 1; i < curve.Nodes.Count; i++)
        {
            var next = Room(curve.Nodes[i].Point);
            if (!curve.Holds.Contains(i))
                least = Math.Min(least, next);
            Between(curve.Nodes[i - 1].At, last, curve.Nodes[i].At, next, true);
            last = next;
        }

        return least;

        void Between(double a, double roomA, double b, double roomB, bool always)
        {
            if (!always && (0.5 * (roomA + roomB - (b - a)) >= least || b - a < shortest))
                return;
            var middle = 0.5 * (a + b);
            var room = Room(curve.PointAt(middle));
            least = Math.Min(least, room);
            Between(a, roomA, middle, room, false);
            Between(middle, room, b, roomB, false);
        }
    }
}
