using Throwright.Engine.Route;
using Throwright.Engine.Tests.Route.Oracle;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Engine.Tests.Route.Laws;

public class RoutePlannerTests
{
    private static RoutePlan Plan(RoutePlanCase of, Action<int, int>? tried = null) => RoutePlanner.Plan(of, tried, TestContext.Current.CancellationToken);

    private static RouteBound Certify(RoutePlanCase of, RoutePlan plan) => RoutePlanner.Certify(of, plan, TestContext.Current.CancellationToken);

    private static readonly Vector3 X = new(1, 0, 0), Y = new(0, 1, 0);

    /// <summary>A post across the straight way, and a hot ball beside it.</summary>
    private static RoutePlanCase Post() => new()
    {
        Start = default,
        StartAlong = X,
        End = new(0.9, 0.05, 0),
        EndAlong = X,
        LeastRadius = 0.075,
        ConduitRadius = 0.003,
        KeepOuts =
        [
            new("post", KeepOutKind.Structure, 0.01, PointDistance.OfCapsule(new(0.45, 0, -0.5), new(0.45, 0, 0.5), 0.05)),
            new("muffler", KeepOutKind.Heat, 0.08, PointDistance.OfCapsule(new(0.45, 0.25, 0), new(0.45, 0.25, 0), 0.05)),
        ],
    };

    [Fact]
    public void Plan_PostInTheWay_GoesRoundItAndKeepsEverything()
    {
        var of = Post();
        var plan = Plan(of);
        Assert.NotEmpty(plan.Choices);
        Assert.All(plan.Choices, c => Keeps(of, c));
        Assert.All(plan.Choices, c => Assert.True(c.Length >= plan.Bound.Length));
    }

    [Fact]
    public void Plan_Stopped_EndsAtTheNextDistance_WhereverItIs()
    {
        // How many distances a whole plan asks; then stopped after a part of them.
        var asked = 0;
        using var never = new CancellationTokenSource();
        var whole = RoutePlanner.Plan(Counted(null, 0), stop: never.Token);
        Assert.NotEmpty(whole.Choices);
        var all = asked;
        foreach (var part in (ReadOnlySpan<double>)[0.001, 0.2, 0.6, 0.95])
        {
            asked = 0;
            using var stop = new CancellationTokenSource();
            var at = (int)(part * all);
            Assert.Throws<OperationCanceledException>(() => RoutePlanner.Plan(Counted(stop, at), stop: stop.Token));
            // No more than the two things that one distance, or one proof along a lie, was asked of already.
            Assert.InRange(asked, at, at + (all / 20));
        }

        RoutePlanCase Counted(CancellationTokenSource? stop, int after) => Post() with
        {
            KeepOuts = [.. Post().KeepOuts.Select(k => k with
            {
                DistanceAt = p =>
                {
                    if (++asked == after)
                        stop?.Cancel();
                    return k.DistanceAt(p);
                },
            })],
        };
    }

    [Fact]
    public void Plan_TellsLiesTriedAndWaysThatHold_AndIsStoppedBetweenTwoLies()
    {
        var told = new List<(int Tried, int Held)>();
        var of = Post() with { KeepOuts = [], MostSpan = 0.3 };
        var whole = Plan(of, (tried, held) => told.Add((tried, held)));
        Assert.Equal(whole, Plan(of));
        Assert.True(told.Count > 4);
        Assert.All(told.Zip(told.Skip(1)), t => Assert.Equal(t.First.Tried + t.First.Held + 1, t.Second.Tried + t.Second.Held));
        Assert.True(told[^1].Held >= whole.Choices.Count);
        // Nothing stands in the way, so no distance is asked: it is stopped all the same.
        using var stop = new CancellationTokenSource();
        var seen = 0;
        Assert.Throws<OperationCanceledException>(() => RoutePlanner.Plan(of, Third, stop.Token));
        Assert.Equal(3, seen);

        void Third(int tried, int held)
        {
            if (++seen == 3)
                stop.Cancel();
        }
    }

    [Fact]
    public void Plan_SeveralChoices_Differ()
    {
        var plan = Plan(Post() with { KeepOuts = [Post().KeepOuts[0]], Choices = 4 });
        Assert.InRange(plan.Choices.Count, 2, 4);
        for (var i = 0; i < plan.Choices.Count; i++)
        {
            for (var j = 0; j < i; j++)
                Assert.True(plan.Choices[i].Supports != plan.Choices[j].Supports || LieSolver.Apart(plan.Choices[i].Lie.Shape, plan.Choices[j].Lie.Shape) > 0.01);
        }
    }

    [Fact]
    public void Plan_RandomBoxes_AllKeepRadiusRoomAndLength()
    {
        for (var scene = 0; scene < 4; scene++)
        {
            var of = Boxes(scene, 12);
            var plan = Plan(of);
            Assert.True(plan.Choices.Count > 0, $"scene {scene}: {plan.Refusal}");
            Assert.All(plan.Choices, c => Keeps(of, c));
        }
    }

    [Fact]
    public void Certify_WallWithAHole_IsTheWayThroughTheHole()
    {
        // A wall across the way, free only within 107 mm of a point 0.25 to the side: no way is shorter than the two straight
        // lines over the nearest free point of its middle.
        const double Hole = 0.12, Side = 0.25;
        var of = Post() with
        {
            End = new(0.9, 0, 0),
            LeastRadius = 0.05,
            KeepOuts = [new("wall", KeepOutKind.Structure, 0.01, Slab)],
        };
        var plan = Plan(of);
        Assert.NotEmpty(plan.Choices);
        var bound = Certify(of, plan);
        Assert.Equal(RouteBoundKind.ThroughPlanes, bound.Kind);
        var nearest = Side - Hole + 0.013;
        Assert.InRange(bound.Length, 2 * Math.Sqrt((0.45 * 0.45) + (nearest * nearest)), plan.Choices.Min(c => c.Length));
        Assert.All(plan.Choices, c => Keeps(of, c));

        // What is both in the slab and outside the hole: far ahead of the face, or inside the hole away from its rim.
        static double Slab(Vector3 p)
        {
            double ahead = Math.Abs(p.X - 0.45) - 0.01, rim = Hole - Math.Sqrt(((p.Y - Side) * (p.Y - Side)) + (p.Z * p.Z));
            return ahead > 0 && rim > 0 ? Math.Sqrt((ahead * ahead) + (rim * rim)) : Math.Max(ahead, rim);
        }
    }

    [Fact]
    public void Certify_Always_IsAtMostAnyChoiceAndAtLeastThePlansBound()
    {
        for (var scene = 0; scene < 2; scene++)
        {
            var of = Boxes(scene, 12);
            var plan = Plan(of);
            var bound = Certify(of, plan);
            Assert.InRange(bound.Length, plan.Bound.Length, plan.Choices.Min(c => c.Length));
        }
    }

    [Fact]
    public void Plan_NothingInTheWay_IsOneHonestBendWithoutSupports()
    {
        var of = Post() with { KeepOuts = [], End = new(0.6, 0.6, 0), EndAlong = Y };
        var plan = Plan(of);
        Assert.Equal(0, plan.Choices[0].Supports);
        Assert.Equal(RouteBoundKind.OneEnded, plan.Bound.Kind);
        Assert.InRange(plan.Choices[0].Length, plan.Bound.Length, 1.4 * plan.Bound.Length);
        Keeps(of, plan.Choices[0]);
    }

    [Fact]
    public void Plan_Places_UsesOnlyThem()
    {
        SupportPlace[] places = [new("rib 1", new(0.25, 0.09, 0.02)), new("rib 2", new(0.45, 0.11, 0)), new("far away", new(0.4, -0.4, 0.3)), new("rib 3", new(0.65, 0.1, 0.02), X)];
        var of = Post() with { Places = [.. places], MostSpan = 0.5 };
        var plan = Plan(of);
        Assert.NotEmpty(plan.Choices);
        foreach (var choice in plan.Choices)
        {
            Keeps(of, choice);
            Assert.Equal(choice.Holds.Select(h => places.Single(p => p.Name == h.Place).Point), choice.Lie.Case.Supports.Select(s => s.Point));
            Assert.True(choice.Supports >= 1);
            Assert.All(choice.Lie.Spans, s => Assert.True(s.Length <= 0.5 + 1e-9));
        }
    }

    [Fact]
    public void Plan_SupportsThatStay_AreKeptInOrderAndKind()
    {
        // A wall with a grommet off the straight way, a clamp behind it, and a post between them.
        RoutePass[] passes = [new("hole", new(new(0.3, 0.12, 0.02), SupportKind.Grommet)), new("clamp", new(new(0.75, 0.1, 0), SupportKind.Sliding, new(1, -0.1, 0)))];
        var wall = new KeepOut("wall", KeepOutKind.Structure, 0.01, p => Math.Abs(p.X - 0.3) - 0.001);
        var post = new KeepOut("post", KeepOutKind.Heat, 0.02, PointDistance.OfCapsule(new(0.5, 0.12, -0.5), new(0.5, 0.12, 0.5), 0.02));
        var of = Post() with { KeepOuts = [wall, post], Passes = [.. passes], LeastRadius = 0.06 };
        var plan = Plan(of);
        Assert.NotEmpty(plan.Choices);
        foreach (var choice in plan.Choices)
        {
            Assert.Equal(passes.Select(p => p.Support), choice.Lie.Case.Supports.Where((_, i) => choice.Holds[i].Stays));
            Assert.Equal(["hole", "clamp"], choice.Holds.Where(h => h.Stays).Select(h => h.Place));
            Keeps(of with { KeepOuts = [post] }, choice with { Gaps = [.. choice.Gaps.Where(g => g.Name == "post")] });
            // Through the wall at the hole and nowhere else.
            var curve = choice.Lie.Shape;
            var crossings = Enumerable.Range(0, 2000).Select(i => (A: curve.PointAt(choice.Length * i / 2000), B: curve.PointAt(choice.Length * (i + 1) / 2000))).Where(s => (s.A.X < 0.3) != (s.B.X < 0.3)).ToList();
            Assert.InRange((Assert.Single(crossings).A - passes[0].Support.Point).Size, 0, 1e-3);
            Assert.True(choice.Length >= plan.Bound.Length);
        }

        Assert.Equal(new NoRoute(NoRouteReason.PassBlocked, "tank"), Plan(of with { KeepOuts = [new("tank", KeepOutKind.Heat, 0.01, PointDistance.OfCapsule(passes[0].Support.Point, passes[0].Support.Point, 0.05))] }).Refusal);
        Assert.Throws<ArgumentException>(() => Plan(of with { Passes = [new("here", new(of.Start, SupportKind.Grommet))] }));
    }

    [Fact]
    public void Plan_EngineMoves_HoldsThereToo()
    {
        var of = Post() with { EndMoves = [new("up", new(0, 0.008, 0)), new("nose down", new(0, -0.006, 0.004), new(0, 0, -0.03))] };
        var plan = Plan(of);
        Assert.NotEmpty(plan.Choices);
        foreach (var choice in plan.Choices)
        {
            Keeps(of, choice);
            Assert.Equal(["up", "nose down"], choice.AtMoves.Select(m => m.Name));
            Assert.All(choice.AtMoves, m => Assert.True(m.LeastRadius >= of.LeastRadius && m.LeastRoom >= 0 && m.Moved > 0.001));
        }

        // A move so large that nothing could stay clear of what does not move along.
        var wall = new KeepOut("wall", KeepOutKind.Heat, 0.01, PointDistance.OfHalfSpace(new(0, 0, -0.05), new(0, 0, 1)));
        var far = of with { MayBeSupported = false, KeepOuts = [wall], EndMoves = [new("down", new(0, 0, -0.1))] };
        Assert.Equal(NoRouteReason.NotHeld, Plan(far).Refusal?.Reason);
        Assert.NotEmpty(Plan(far with { KeepOuts = [wall with { MovesWithEnd = true, DistanceAt = PointDistance.OfCapsule(new(0.6, 0, -0.1), new(0.9, 0, -0.1), 0.02) }], EndMoves = [new("down", new(0, 0, -0.005))] }).Choices);
    }

    [Fact]
    public void Refusals_SayWhy()
    {
        var of = Post();
        Assert.Equal(NoRouteReason.TooFar, Plan(of with { LongestLength = 0.8 }).Refusal?.Reason);
        var buried = Plan(of with { KeepOuts = [new("tank", KeepOutKind.Heat, 0.01, PointDistance.OfCapsule(default, default, 0.1))] });
        // The free 30 mm on are 30 mm from the middle of a ball of 100 mm; 10 mm and half the conduit, 3 mm, are wanted.
        Assert.Equal(new NoRoute(NoRouteReason.EndBlocked, "tank") { AtStart = true, Lacks = buried.Refusal!.Lacks }, buried.Refusal);
        Assert.Equal(0.1 - 0.03 + 0.013, buried.Refusal.Lacks, 1e-9);
        // A wall without a hole between the ends.
        var wall = of with { KeepOuts = [new("wall", KeepOutKind.Structure, 0.01, p => Math.Abs(p.X - 0.45) - 0.01)] };
        Assert.Equal(new NoRoute(NoRouteReason.NoWay, "wall"), Plan(wall).Refusal);
        RoutePlanCase[] nonsense =
        [
            of with { LeastRadius = 0 }, of with { LeastRadius = double.NaN }, of with { ConduitRadius = double.NaN }, of with { End = of.Start }, of with { End = new(double.NaN, 0, 0) },
            of with { StartAlong = default }, of with { Places = [new("nowhere", new(0, double.NaN, 0))] }, of with { MostSpan = 0 },
            of with { Passes = [new("twice", new(X, SupportKind.Grommet)), new("twice", new(X, SupportKind.Grommet))] },
        ];
        Assert.All(nonsense, n => Assert.ThrowsAny<ArgumentException>(() => Plan(n)));
    }

    [Fact]
    public void SameCase_SameAnswer()
    {
        var of = Boxes(3, 12);
        RoutePlan a = Plan(of), b = Plan(of);
        Assert.Equal(a.Bound, b.Bound);
        Assert.Equal(a.Choices.Select(c => c.Lie.Shape), b.Choices.Select(c => c.Lie.Shape));
    }

    /// <summary>Dense points alone, none of the planner's code: radius, distances, length, ends.</summary>
    private static void Keeps(RoutePlanCase of, RouteChoice choice)
    {
        const int N = 2000;
        var curve = choice.Lie.Shape;
        var points = Enumerable.Range(0, N + 1).Select(i => curve.PointAt(choice.Length * i / N)).ToList();
        Assert.InRange((points[0] - of.Start).Size, 0, 1e-9);
        Assert.InRange((points[N] - of.End).Size, 0, 1e-9);
        Assert.InRange(Vector3.AngleBetween(points[1] - points[0], of.StartAlong), 0, 0.02);
        Assert.InRange(Vector3.AngleBetween(points[N] - points[N - 1], of.EndAlong), 0, 0.02);
        Assert.Equal(choice.Length, PointsAlone.Length(points), 1e-4 * choice.Length);
        Assert.True(PointsAlone.LeastRadius(points, 10) >= 0.999 * of.WantedRadius);
        foreach (var k in of.KeepOuts)
        {
            var skip = k.Kind is KeepOutKind.Structure or KeepOutKind.Edge ? (int)Math.Ceiling(of.FreeAtEnds / choice.Length * N) : 0;
            var least = PointsAlone.LeastDistance([.. points.Skip(skip).Take(N + 1 - (2 * skip))], k.DistanceAt) - of.ConduitRadius;
            Assert.True(least >= k.Keep, $"{k.Name}: {least}");
            // What is said about the gap is proved from below and close.
            Assert.InRange(choice.Gaps.Single(g => g.Name == k.Name).Least, least - 1.5e-3, least + 1e-9);
        }
    }

    private static RoutePlanCase Boxes(int scene, int count)
    {
        var random = new CounterRandom(77, scene);
        var at = 0;
        double Draw(double from, double to) => from + ((to - from) * random.Uniform(at++));
        Vector3 start = new(0, Draw(-0.2, 0.2), Draw(-0.2, 0.2)), end = new(0.9, Draw(-0.2, 0.2), Draw(-0.2, 0.2));
        var keepOuts = new List<KeepOut>();
        while (keepOuts.Count < count)
        {
            Vector3 centre = new(Draw(0.1, 0.8), Draw(-0.4, 0.4), Draw(-0.4, 0.4)), half = new(Draw(0.03, 0.12), Draw(0.03, 0.12), Draw(0.03, 0.12));
            double Distance(Vector3 p)
            {
                double x = Math.Abs(p.X - centre.X) - half.X, y = Math.Abs(p.Y - centre.Y) - half.Y, z = Math.Abs(p.Z - centre.Z) - half.Z;
                var inside = Math.Max(x, Math.Max(y, z));
                (x, y, z) = (Math.Max(x, 0), Math.Max(y, 0), Math.Max(z, 0));
                return inside < 0 ? inside : Math.Sqrt((x * x) + (y * y) + (z * z));
            }

            Func<Vector3, double> distance = Distance;
            if (Enumerable.Range(0, 12).All(i => distance(start + (0.01 * i * X)) > 0.03 && distance(end - (0.01 * i * X)) > 0.03))
                keepOuts.Add(new($"box {keepOuts.Count}", (KeepOutKind)(keepOuts.Count % 4), 0.01, distance));
        }

        return new() { Start = start, StartAlong = X, End = end, EndAlong = X, LeastRadius = 0.06, ConduitRadius = 0.003, KeepOuts = [.. keepOuts], Choices = 2 };
    }
}
