using Throwright.Shapes;
using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Route;

/// <summary>From ends, things to stay away from and places for supports to routes. Theory: docs/theory/route.md.</summary>
/// <remarks>
/// What is offered is never the drawn curve but the lie that the supports give: its radius, its room (proved along the
/// whole of it) and its place with the end moved decide. Same case, same answer.
/// </remarks>
public static class RoutePlanner
{
    private const int MostSupports = 8;
    private const int Ways = 6;
    private const int PlanSegments = 32;

    // The drawn curve has this much in hand over what the lie must have.
    private const double RadiusInHand = 1.08;
    private const double RoomInHand = 0.003;

    /// <param name="stop">Ends it at the next lie or distance.</param>
    /// <param name="tried">Told lies tried, and ways found that hold; both only grow.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static RoutePlan Plan(RoutePlanCase of, Action<int, int>? tried = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(of);
        Require(of);
        var bound = RouteBounds.Find(of);
        if (of.LongestLength is { } longest && bound.Length > longest)
            return new([], bound, new(NoRouteReason.TooFar, ""));
        var space = new FreeSpace(of, stop: stop);
        var count = new Count(tried, stop);
        foreach (var end in (Vector3[])[of.Start + (of.FreeAtEnds * of.StartAlong.Unit()), of.End - (of.FreeAtEnds * of.EndAlong.Unit())])
        {
            if (space.At(end) < 0)
                return new([], bound, new(NoRouteReason.EndBlocked, space.NearestAt(end)) { Lacks = -space.At(end), AtStart = (end - of.Start).Size <= of.FreeAtEnds });
        }

        foreach (var pass in of.Passes)
        {
            if (space.At(pass.Support.Point) < 0)
                return new([], bound, new(NoRouteReason.PassBlocked, space.NearestAt(pass.Support.Point)));
        }

        var search = new Search(of, space, bound, count);
        var (plan, cost) = search.Run();
        if (of.Openings.Count == 0)
            return plan;
        // A grommet in each hole on the way; and no hole at all, if that leads there too.
        var choices = plan.Choices.Zip(cost).ToList();
        foreach (var passes in search.Through())
        {
            var with = of with { Passes = passes, Openings = [] };
            var (through, dear) = new Search(with, new(with, stop: stop), bound, count).Run();
            choices.AddRange(through.Choices.Zip(dear));
        }

        return choices.Count == 0 ? plan : new(choices.OrderBy(c => c.Second).Take(of.Choices).Select(c => c.First).ToEquatableList(), bound, null);
    }

    /// <summary>A bound at least as strong as the plan's own: every route passes each plane between the ends where it is free.</summary>
    /// <remarks>It asks the distance functions some ten thousand times.</remarks>
    /// <param name="plan">The plan of this case; its shortest choice is what the bound is held against.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static RouteBound Certify(RoutePlanCase of, RoutePlan plan, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(of);
        ArgumentNullException.ThrowIfNull(plan);
        if (plan.Choices.Count == 0)
            return plan.Bound;
        var length = RouteBounds.ThroughPlanes(of, new(of, stop: stop), plan.Choices.Min(c => c.Length));
        return length > plan.Bound.Length ? new(length, RouteBoundKind.ThroughPlanes) : plan.Bound;
    }

    private static void Require(RoutePlanCase of)
    {
        static bool IsPlace(Vector3 v) => double.IsFinite(v.X + v.Y + v.Z);
        static bool IsWay(Vector3 v) => IsPlace(v) && v.Size > 0;
        if (!IsWay(of.StartAlong) || !IsWay(of.EndAlong) || of.Passes.Any(p => p.Support.Along is { } along && !IsWay(along)) || of.Places.Any(p => !IsPlace(p.Point)))
            throw new ArgumentException("every place and direction needs numbers, and a direction a length", nameof(of));
        if (!(of.LeastRadius > 0) || !(of.RadiusMargin >= 1) || !(of.ConduitRadius >= 0) || !(of.FreeAtEnds >= 0) || of.Choices < 1 || of.MostSpan is <= 0 || of.Stiffness is <= 0)
            throw new ArgumentOutOfRangeException(nameof(of), of, "least radius > 0, margin 1 or more, radius of the conduit and free ends 0 or more, a choice at least");
        Vector3[] points = [of.Start, .. of.Passes.Select(p => p.Support.Point), of.End];
        if (points.Zip(points.Skip(1)).Any(p => !((p.Second - p.First).Size > 0)))
            throw new ArgumentException("two ends, or an end and a support that stays, are one point, or no numbers", nameof(of));
    }

    /// <summary>A lie that was tried.</summary>
    /// <param name="Lack">0: keeps everything; else how much is lacking, as parts of the radius wanted.</param>
    private sealed record Trial(LieCase Case, EquatableList<Hold> Holds, ElasticCurve Curve, double Lack);

    /// <summary>A support, and the place it sits at; null: one that stays, or a place of the planner's own.</summary>
    private sealed record Hold(LieSupport Support, SupportPlace? Place, bool Stays)
    {
        public string Name { get; init; } = Place?.Name ?? "";

        /// <summary>A grommet in a hole that the way passes.</summary>
        public bool IsNew { get; init; }
    }

    /// <summary>How far it is, told as it goes on; each step is where it may be stopped.</summary>
    private sealed class Count(Action<int, int>? tell, CancellationToken stop)
    {
        private int tried, held;

        public CancellationToken Stop => stop;

        public void Next(bool isHeld = false)
        {
            stop.ThrowIfCancellationRequested();
            (tried, held) = isHeld ? (tried, held + 1) : (tried + 1, held);
            tell?.Invoke(tried, held);
        }
    }

    private sealed class Search(RoutePlanCase of, FreeSpace space, RouteBound bound, Count count)
    {
        private readonly List<Trial> held = [];
        private readonly List<Hold> passes = [.. of.Passes.Select(p => new Hold(p.Support, null, true) { Name = p.Name, IsNew = p.IsNew })];

        public (RoutePlan Plan, EquatableList<double> Costs) Run()
        {
            var bare = Unsupported();
            Try(bare);
            Settle();
            var anyWay = false;
            PlannedCurve? first = null;
            if (of.MayBeSupported || held.Count == 0)
            {
                foreach (var curve in Curves(bare))
                {
                    anyWay = true;
                    first ??= curve;
                    if (!of.MayBeSupported)
                        Try(AtLength(passes, curve.Length));
                    else if (of.Places.Count > 0)
                        Try(OverPlaces(curve));
                    else
                        Anywhere(curve);
                    // Nothing can be much better than a run without supports at the bound.
                    if (held.Count >= of.Choices && held.Min(Cost) < 1.01 * bound.Length)
                        break;
                }
            }

            // What is held more often moves less: the builder may want it.
            for (var more = 1; more <= 3 && of is { MoreHolds: true, MayBeSupported: true, Places.Count: 0 } && first is not null && held.Count is > 0 && held.Count < of.Choices; more++)
                Try(OnCurve(first, [.. Enumerable.Range(1, more).Select(i => i / (more + 1.0)).Where(p => first.Passes.All(q => Math.Abs(p - q) > 0.08))]));
            var choices = new List<RouteChoice>();
            var costs = new List<double>();
            foreach (var trial in held.OrderBy(Cost))
            {
                if (choices.Count == of.Choices)
                    break;
                if (Settled(trial) is not { } choice)
                    continue;
                // Of two alike the gentler one, if it is about as short.
                var twin = choices.FindIndex(c => Alike(c, choice));
                if (twin >= 0 && choice.Length < 1.01 * choices[twin].Length && choice.Lie.LeastRadius > 1.5 * choices[twin].Lie.LeastRadius)
                {
                    choices[twin] = choice;
                }
                else if (twin < 0)
                {
                    choices.Add(choice);
                    costs.Add(Cost(trial));
                }
            }

            return choices.Count > 0
                ? (new(choices.ToEquatableList(), bound, null), costs.ToEquatableList())
                : (new([], bound, new(anyWay || held.Count > 0 ? NoRouteReason.NotHeld : NoRouteReason.NoWay, Blocking())), []);
        }

        /// <summary>Supports that stay, with a grommet in each hole that straight legs from hold to hold pass; several ways.</summary>
        public IEnumerable<EquatableList<RoutePass>> Through()
        {
            var poses = Poses(null);
            // A hole may be so small that only what passes it in a grommet has room there.
            var open = new FreeSpace(of with { Passes = [.. of.Passes, .. of.Openings.Select(o => new RoutePass(o.Name, new(o.Middle, SupportKind.Grommet), IsNew: true))] }, stop: count.Stop);
            var legs = poses.Zip(poses.Skip(1)).Select(p => new Roadmap(of with { Start = p.First.Point, StartAlong = p.First.Along, End = p.Second.Point, EndAlong = p.Second.Along }, open, RadiusInHand * of.WantedRadius, RoomInHand, 400)).ToList();
            var known = new HashSet<EquatableList<RoutePass>>();
            for (var way = 0; way < Ways / 2; way++)
            {
                var all = new List<RoutePass>();
                for (var leg = 0; leg < legs.Count; leg++)
                {
                    if (legs[leg].Next() is { } corners)
                        all.AddRange(corners.Zip(corners.Skip(1)).SelectMany(c => Passed(c.First, c.Second)));
                    if (leg < of.Passes.Count)
                        all.Add(of.Passes[leg]);
                }

                if (all.Count > of.Passes.Count && known.Add(all.ToEquatableList()))
                    yield return all.ToEquatableList();
            }

            IEnumerable<RoutePass> Passed(Vector3 a, Vector3 b) =>
                from o in of.Openings
                let n = o.Through.Unit()
                let before = Vector3.Dot(a - o.Middle, n)
                let after = Vector3.Dot(b - o.Middle, n)
                where before * after < 0 && (a + (before / (before - after) * (b - a)) - o.Middle).Size < of.FreeAtEnds
                select new RoutePass(o.Name, new(o.Middle, SupportKind.Grommet), IsNew: true);
        }

        /// <summary>Ends and supports that stay, each with the way the conduit is taken to run there.</summary>
        private List<(Vector3 Point, Vector3 Along)> Poses(Trial? bare)
        {
            // A grommet lets the conduit turn: it is taken to pass as it does with nothing else to hold it.
            var poses = new List<(Vector3 Point, Vector3 Along)> { (of.Start, of.StartAlong) };
            for (var i = 0; i < passes.Count; i++)
            {
                var p = passes[i].Support;
                var next = i + 1 < passes.Count ? passes[i + 1].Support.Point : of.End;
                poses.Add((p.Point, p.Kind != SupportKind.Grommet ? p.Along!.Value : bare is not null ? bare.Curve.Nodes[bare.Curve.Holds[i + 1]].Tangent : next - poses[i].Point));
            }

            poses.Add((of.End, of.EndAlong));
            return poses;
        }

        /// <summary>At the length at which it comes to rest by itself, clamped where it lies then: it asks least of clamps and hand.</summary>
        private void Settle()
        {
            if (passes.Count > 0 || !of.MayBeSupported || of.Places.Count > 0 || of.MostSpan is not { } most
                || LieSolver.NaturalLength(Case([], 1)) is not { } length || AtLength([], length) is not { } bare)
                return;
            var clamps = (int)Math.Ceiling(length / most) - 1;
            if (clamps is < 1 or > MostSupports)
                return;
            Try(AtLength([.. Enumerable.Range(1, clamps).Select(i => length * i / (clamps + 1))
                .Select(at => new Hold(new(bare.Curve.PointAt(at), SupportKind.Tight, bare.Curve.TangentAt(at)), null, false))], length));
        }

        private void Try(Trial? trial)
        {
            if (trial is not { Lack: <= 0 })
                return;
            held.Add(trial);
            count.Next(isHeld: true);
        }

        private double Cost(Trial t) => t.Case.Length + (0.25 * of.WantedRadius * t.Curve.BendTotal) + (of.SupportWorth * t.Case.Supports.Count);

        private bool Alike(RouteChoice a, RouteChoice b) =>
            a.Supports == b.Supports && LieSolver.Apart(a.Lie.Shape, b.Lie.Shape) < Math.Max(0.02, 4 * of.ConduitRadius);

        private string Blocking()
        {
            var d = of.End - of.Start;
            return space.NearestAt(Enumerable.Range(0, 101).Select(i => of.Start + (0.01 * i * d)).MinBy(space.At));
        }

        private LieCase Case(IEnumerable<Hold> holds, double length) => new()
        {
            Start = of.Start,
            StartAlong = of.StartAlong,
            End = of.End,
            EndAlong = of.EndAlong,
            Supports = holds.Select(h => h.Support).ToEquatableList(),
            Length = length,
            LeastRadius = of.LeastRadius,
            Stiffness = of.Stiffness,
            Weight = of.Weight,
        };

        /// <summary>Drawn curves from end to end over the supports that stay.</summary>
        private IEnumerable<PlannedCurve> Curves(Trial? bare)
        {
            if (passes.Count == 0)
                return Curves(of);
            var poses = Poses(bare);
            var legs = poses.Zip(poses.Skip(1)).Select(p => Curves(of with { Start = p.First.Point, StartAlong = p.First.Along, End = p.Second.Point, EndAlong = p.Second.Along }).Take(Ways / 2).ToList()).ToList();
            return legs.Any(l => l.Count == 0) ? [] : Joined(legs);
        }

        /// <summary>The first way of every leg, then each other way of one leg with the first ways of the rest.</summary>
        private static IEnumerable<PlannedCurve> Joined(List<List<PlannedCurve>> legs)
        {
            yield return PlannedCurve.Joined([.. legs.Select(l => l[0])]);
            for (var i = 0; i < legs.Count; i++)
            {
                for (var way = 1; way < legs[i].Count; way++)
                    yield return PlannedCurve.Joined([.. legs.Select((l, k) => l[k == i ? way : 0])]);
            }
        }

        private IEnumerable<PlannedCurve> Curves(RoutePlanCase leg)
        {
            var room = RoomInHand;
            var radius = of.WantedRadius * RadiusInHand;
            List<PlannedCurve> known = [];
            foreach (var samples in (int[])[400, 1400])
            {
                var map = new Roadmap(leg, space, radius, room, samples);
                for (var way = 0; way < Ways; way++)
                {
                    if (map.Next() is not { } corners)
                        break;
                    // Other legs are often pulled tight into the same curve.
                    if (PlannedCurve.Of(leg, space, corners, radius, room) is { } curve && known.All(k => Apart(k, curve) > 0.02))
                    {
                        known.Add(curve);
                        map.Wear(curve);
                        yield return curve;
                    }
                }

                if (held.Count > 0 || (passes.Count > 0 && known.Count > 0))
                    break;
            }
        }

        private static double Apart(PlannedCurve a, PlannedCurve b)
        {
            var apart = 0.0;
            for (var i = 1; i < 12; i++)
                apart = Math.Max(apart, (a.At(i / 12.0).Point - b.At(i / 12.0).Point).Size);
            return apart;
        }

        /// <summary>No support at all: the shortest length at which the lie keeps everything.</summary>
        private Trial? Unsupported()
        {
            if (passes.Count == 0 && of.MostSpan is { } most && most < bound.Length)
                return null;
            return Shortest(passes, 1.9);
        }

        /// <summary>Shortest length that keeps everything, or the one that lacks least.</summary>
        private Trial? Shortest(IReadOnlyList<Hold> holds, double longest)
        {
            var supported = Case(holds, 1);
            var least = Math.Max(bound.Length, LieSolver.ShortestWay(supported with { LeastRadius = of.WantedRadius }));
            ReadOnlySpan<double> factors = [1.002, 1.01, 1.02, 1.035, 1.055, 1.08, 1.11, 1.15, 1.2, 1.27, 1.35, 1.45, 1.6, 1.8, 2.1];
            Trial? best = null;
            var last = 1.0;
            foreach (var factor in factors)
            {
                if (factor > longest)
                    break;
                if (AtLength(holds, factor * least, best) is { } trial)
                {
                    if (best is null || trial.Lack < best.Lack)
                        best = trial;
                    if (trial.Lack <= 0)
                    {
                        // Between the last length that lacked and this one.
                        var (low, high) = (last, factor);
                        for (var i = 0; i < 3; i++)
                        {
                            var middle = 0.5 * (low + high);
                            if (AtLength(holds, middle * least, best) is { Lack: <= 0 } shorter)
                                (high, best) = (middle, shorter);
                            else
                                low = middle;
                        }

                        return best;
                    }
                }

                last = factor;
            }

            return best;
        }

        /// <summary>The lie of a case, and what it lacks; null where there is none.</summary>
        private Trial? AtLength(IReadOnlyList<Hold> holds, double length, Trial? near = null)
        {
            var lie = Case(holds, length);
            count.Next();
            if (lie.Length < lie.Straight || lie.Length > LieSolver.MostSlack * lie.Straight || lie.Length > of.LongestLength)
                return null;
            var problem = LieSolver.Problem(lie, lie.Length) with { Segments = PlanSegments };
            ElasticCurve? curve = null;
            if (near is not null && near.Case.Supports.Equals(lie.Supports))
                curve = ElasticCurveSolver.Follow(problem, near.Curve);
            curve ??= ElasticCurveSolver.Solve(problem with { Starts = 1 }).Curve;
            if (curve is null)
                return null;
            var lack = Lack(curve, lie);
            if (lack > 0)
                return new(lie, holds.ToEquatableList(), curve, lack);
            // It keeps everything: is it where the conduit rests, and not only one of several places?
            var answer = ElasticCurveSolver.Solve(problem);
            return answer.Curve is { } lowest ? new(lie, holds.ToEquatableList(), lowest, Lack(lowest, lie) + (IsCertain(lowest, answer.Others) ? 0 : 1)) : null;
        }

        /// <summary>Whether it rests nowhere else by chance: no bow that swings, none on the other side at about the same energy.</summary>
        private static bool IsCertain(ElasticCurve lowest, EquatableList<ElasticCurve> others) =>
            lowest.Stability == CurveStability.Stable && others.All(o => o.BendingEnergy > 1.02 * lowest.BendingEnergy);

        private double Lack(ElasticCurve curve, LieCase lie)
        {
            var lack = Math.Max(0, 1 - (curve.LeastRadius / of.WantedRadius));
            if (of.MostSpan is { } most)
            {
                for (var k = 0; k + 1 < curve.Holds.Count; k++)
                    lack += Math.Max(0, curve.SpanLength(k) - most) / most;
            }

            lack += Math.Max(0, -space.Along(curve, lie.Supports).Room) / of.WantedRadius;
            return lack;
        }

        /// <summary>
        /// Supports on a drawn curve: put in where the lie strays most from it, then taken out where they are not needed. Where
        /// that does not hold, or the end moves and more than one way to hold it is wanted, at equal spaces.
        /// </summary>
        private void Anywhere(PlannedCurve curve)
        {
            List<double> parts = [];
            Trial? best;
            while (true)
            {
                best = OnCurve(curve, parts);
                if (best is { Lack: <= 0 } || parts.Count == MostSupports)
                    break;
                parts.Add(best is null ? WidestMiddle(curve, parts) : Strays(best.Curve, curve, parts));
                parts.Sort();
            }

            for (var i = 0; i < parts.Count && best is { Lack: <= 0 };)
            {
                List<double> fewer = [.. parts.Where((_, j) => j != i)];
                if (OnCurve(curve, fewer) is { Lack: <= 0 } lighter)
                    (parts, best) = (fewer, lighter);
                else
                    i++;
            }

            Try(best);
            var wanted = of.EndMoves.Count > 0 ? 2 : best is { Lack: <= 0 } ? 0 : 1;
            for (var m = 1; m <= MostSupports && wanted > 0; m++)
            {
                var even = OnCurve(curve, [.. Enumerable.Range(1, m).Select(i => i / (m + 1.0))]);
                Try(even);
                wanted -= even is { Lack: <= 0 } ? 1 : 0;
            }
        }

        private Trial? OnCurve(PlannedCurve curve, List<double> parts)
        {
            var holds = Along(curve, parts.Select(p => (p, new Hold(new(curve.At(p).Point, SupportKind.Tight, curve.At(p).Along), null, false))));
            if (holds.Any(h => space.At(h.Support.Point) < 0))
                return null;
            Trial? least = null;
            foreach (var factor in (ReadOnlySpan<double>)[1, 1.004, 1.012, 1.03])
            {
                var trial = AtLength(holds, factor * curve.Length, least);
                if (trial is not null && (least is null || trial.Lack < least.Lack))
                    least = trial;
                if (least is { Lack: <= 0 })
                    break;
            }

            return least;
        }

        /// <summary>With the supports that stay, in their order along the curve.</summary>
        private List<Hold> Along(PlannedCurve curve, IEnumerable<(double Part, Hold Hold)> more) =>
            [.. passes.Select((p, i) => (Part: curve.Passes[i], Hold: p)).Concat(more).OrderBy(h => h.Part).Select(h => h.Hold)];

        private static double WidestMiddle(PlannedCurve curve, List<double> parts)
        {
            double[] all = [0, .. parts.Concat(curve.Passes).Order(), 1];
            var i = Enumerable.Range(0, all.Length - 1).MaxBy(k => all[k + 1] - all[k]);
            return 0.5 * (all[i] + all[i + 1]);
        }

        private static double Strays(ElasticCurve lie, PlannedCurve curve, List<double> parts)
        {
            double[] all = [0, .. parts.Concat(curve.Passes).Order(), 1];
            var (worst, at) = (-1.0, 0.5);
            for (var k = 0; k + 1 < all.Length; k++)
            {
                var width = all[k + 1] - all[k];
                for (var i = 1; i < 16; i++)
                {
                    // Not close to another hold: a quarter to three quarters of the span.
                    var part = all[k] + (width * (0.25 + (0.5 * i / 16)));
                    var strays = lie.DistanceFrom(curve.At(part).Point);
                    if (strays * Math.Sqrt(width) > worst)
                        (worst, at) = (strays * Math.Sqrt(width), part);
                }
            }

            return at;
        }

        /// <summary>Supports at permitted places near a drawn curve, added one by one where they help most.</summary>
        private Trial? OverPlaces(PlannedCurve curve)
        {
            // Each place by where along the curve it is nearest.
            var near = of.Places.Select(p => (Place: p, Near: Nearest(curve, p.Point)))
                .Where(p => space.At(p.Place.Point) >= 0)
                .OrderBy(p => p.Near.Away).Take(24).OrderBy(p => p.Near.Part).ToList();
            List<int> used = [];
            var best = Of(used);
            while (best is not { Lack: <= 0 } && used.Count < Math.Min(MostSupports, near.Count))
            {
                (Trial? Trial, List<int> With) next = (null, used);
                for (var i = 0; i < near.Count; i++)
                {
                    if (used.Contains(i))
                        continue;
                    List<int> with = [.. used.Append(i).Order()];
                    var trial = Of(with);
                    if (trial is not null && (next.Trial is null || trial.Lack < next.Trial.Lack))
                        next = (trial, with);
                    if (trial is { Lack: <= 0 })
                        break;
                }

                if (next.Trial is null)
                    break;
                (best, used) = (next.Trial, next.With);
            }

            return best;

            Trial? Of(List<int> which)
            {
                // A clamp that may be turned lies as a grommet does: its direction is the one the conduit takes.
                return Shortest(Along(curve, which.Select(i => (near[i].Near.Part, new Hold(new(near[i].Place.Point, near[i].Place.Along is null ? SupportKind.Grommet : SupportKind.Tight, near[i].Place.Along), near[i].Place, false)))), 1.5);
            }
        }

        private static (double Part, double Away) Nearest(PlannedCurve curve, Vector3 point)
        {
            var i = Enumerable.Range(0, curve.Points.Count).MinBy(k => (curve.Points[k] - point).Size);
            return ((double)i / (curve.Points.Count - 1), (curve.Points[i] - point).Size);
        }

        /// <summary>The trial solved in full, with the end moved too; null where it does not hold.</summary>
        private RouteChoice? Settled(Trial trial)
        {
            trial = Eased(trial);
            count.Next();
            if (LieSolver.Solve(trial.Case).Lie is not { } lie || !IsCertain(lie.Shape, lie.Others) || lie.LeastRadius < of.WantedRadius || space.Along(lie.Shape, lie.Case.Supports).Room < 0)
                return null;
            // Closed clamps grip; where the end then moves too far for them, they have to let the conduit slide.
            var sliding = false;
            var moves = Moves(trial, lie, sliding);
            if (moves is null)
                moves = Moves(trial, lie, sliding = true);
            if (moves is null)
                return null;
            return new()
            {
                Lie = lie,
                Holds = trial.Holds.Select(h => new RouteHold(
                    h.Name,
                    h.Stays ? h.Support.Kind : sliding ? SupportKind.Sliding : SupportKind.Tight,
                    !h.Stays && h.Support.Kind != SupportKind.Grommet,
                    h.Stays && !h.IsNew)).ToEquatableList(),
                Gaps = space.Gaps(lie.Shape, lie.Case.Supports).ToEquatableList(),
                AtMoves = moves,
            };
        }

        /// <summary>Clamps whose line need not be given are left to turn: they ask less of the hand that sets them.</summary>
        private Trial Eased(Trial trial)
        {
            for (var i = 0; i < trial.Holds.Count; i++)
            {
                var hold = trial.Holds[i];
                if (hold.Stays || hold.Place?.Along is not null || hold.Support.Kind == SupportKind.Grommet)
                    continue;
                var eased = hold with { Support = new(hold.Support.Point, SupportKind.Grommet) };
                if (AtLength([.. trial.Holds.Select((h, k) => k == i ? eased : h)], trial.Case.Length) is { Lack: <= 0 } freer)
                    trial = freer;
            }

            return trial;
        }

        /// <summary>The lie with its clamps closed and the end moved, for each move; null where it keeps to one of them no longer.</summary>
        private EquatableList<RouteAtMove>? Moves(Trial trial, Lie lie, bool sliding)
        {
            if (of.EndMoves.Count == 0)
                return EquatableList<RouteAtMove>.Empty;
            var closed = lie.Case.Supports.Select((s, i) => trial.Holds[i] switch
            {
                { Stays: true } => s,
                _ => s with
                {
                    Kind = sliding ? SupportKind.Sliding : SupportKind.Tight,
                    Along = s.Along ?? lie.Shape.Nodes[lie.Shape.Holds[i + 1]].Tangent,
                    At = sliding ? null : lie.Shape.Nodes[lie.Shape.Holds[i + 1]].At,
                },
            }).ToEquatableList();
            var moves = of.EndMoves.Select(m => At(m, lie with { Case = lie.Case with { Supports = closed } })).ToEquatableList();
            return moves.Any(m => !(m.LeastRadius >= of.LeastRadius) || !(m.LeastRoom >= 0)) ? null : moves;
        }

        private RouteAtMove At(EndMove move, Lie lie)
        {
            var angle = move.Turn.Size;
            var turned = angle > 0 ? Pose.TurnAbout(default, (1 / angle) * move.Turn, angle).Turn * of.EndAlong : of.EndAlong;
            // Not by how much one inch more moves it: only where it goes.
            var problem = LieSolver.Problem(lie.Case with { End = of.End + move.By, EndAlong = turned }, lie.Case.Length);
            var curve = ElasticCurveSolver.Follow(problem, lie.Shape) ?? ElasticCurveSolver.Solve(problem).Curve;
            return curve is null
                ? new(move.Name, double.NaN, double.NaN, double.NaN)
                : new(move.Name, LieSolver.Apart(curve, lie.Shape), curve.LeastRadius, new FreeSpace(of, move, count.Stop).Along(curve, lie.Case.Supports).Room);
        }
    }
}
