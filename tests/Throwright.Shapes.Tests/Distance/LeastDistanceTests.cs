using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Tests.Distance;

public sealed class LeastDistanceTests
{
    private const double Degree = Math.PI / 180;
    private static readonly Vector3 X = new(1, 0, 0), Y = new(0, 1, 0), Z = new(0, 0, 1);

    [Fact]
    public void Find_RandomScenes_AgreesWithTheRefinedGrid() => Hold(0, 60, 4);

    /// <summary>1,000 scenes on a finer grid: minutes, on request.</summary>
    [Fact(Explicit = true)]
    public void Find_AThousandRandomScenes_AgreesWithTheRefinedGrid() => Hold(1000, 1000, 7);

    /// <summary>A stick of two turns beside a pulled and turned handle; joints and shapes from the seed.</summary>
    internal static (Plain[] A, Plain[] B, JointChain ChainA, JointChain ChainB) Scene(int seed)
    {
        var scene = new Scenes(seed);
        var length = scene.Number(0.4, 0.6);
        Plain grip = (seed % 4) switch
        {
            0 => new Plain.Rod(length * Z, (length + 0.1) * Z, 0.02),
            1 => new Plain.Block((length + 0.05) * Z, scene.Pose(0).Turn, new(0.02, 0.03, 0.05), 0.004),
            2 => new Plain.Bar(length * Z, (length + 0.11) * Z, 0.022, 0),
            _ => new Plain.Sheet(length * Z, ((length + 0.1) * Z) + (0.04 * X), ((length + 0.1) * Z) - (0.04 * X), 0.01),
        };
        var from = new Vector3(scene.Number(0.2, 0.42), scene.Number(-0.3, 0.3), scene.Number(0.35, 0.65));
        var axis = (-1 * X + (0.3 * scene.Direction())).Unit();
        Plain knob = (seed / 4 % 3) switch
        {
            0 => new Plain.Ball(from + (0.03 * axis), 0.018),
            1 => new Plain.Rod(from + (0.03 * axis) + (0.04 * Y), from + (0.03 * axis) - (0.04 * Y), 0.01),
            _ => new Plain.Block(from + (0.03 * axis), scene.Pose(0).Turn, new(0.01, 0.02, 0.03), 0.003),
        };
        return (
            [new Plain.Rod(default, length * Z, 0.012), grip],
            [new Plain.Rod(from - (0.08 * axis), from, 0.005), knob],
            new([Joint.Turn("pitch", default, Y, -20 * Degree, 20 * Degree), Joint.Turn("roll", default, X, -25 * Degree, 25 * Degree)]),
            new([Joint.Slide("pull", axis, 0, scene.Number(0.03, 0.075)), Joint.Turn("turn", from, axis, -60 * Degree, 60 * Degree)]));
    }

    private static LeastDistanceResult Search(MovingSolid first, MovingSolid second, SearchAim? aim = null) =>
        LeastDistance.Find(first, second, aim, cancel: TestContext.Current.CancellationToken);

    private static Solid SolidOf(Plain[] parts) => Solid.Of(parts.Select((p, i) => new Part($"{i}", p.Shape())));

    private static void Hold(int seed, int scenes, int steps)
    {
        var clear = 0;
        for (var i = 0; i < scenes; i++)
        {
            var (a, b, chainA, chainB) = Scene(seed + i);
            var found = Search(new(SolidOf(a), chainA), new(SolidOf(b), chainB));
            double At(double[] q) => Oracle(a, chainA.At(q.AsSpan(0, 2)), b, chainB.At(q.AsSpan(2, 2)), 40);
            var (grid, place) = Refined(At, found.Joints, steps);
            var sampled = Oracle(a, chainA.At(place.AsSpan(0, 2)), b, chainB.At(place.AsSpan(2, 2)), 5000);
            if (found.Ended == SearchEnd.Hits)
            {
                var there = Oracle(a, chainA.At([.. found.Positions.Take(2)]), b, chainB.At([.. found.Positions.Skip(2)]), 5000);
                Assert.True(there <= 1e-6, $"seed {seed + i}: said to hit, {there}");
                continue;
            }

            clear++;
            Assert.Equal(SearchEnd.Converged, found.Ended);
            Assert.True(found.Upper - found.Lower <= 1e-4 + 1e-11, $"seed {seed + i}: {found.Lower} .. {found.Upper}");
            Assert.True(found.Lower <= sampled + 1e-9, $"seed {seed + i}: proved {found.Lower}, sampled {sampled}");
            // The grid may miss the minimum, but it may not be far below what is said to be attained.
            Assert.True(found.Upper <= sampled + 1e-4, $"seed {seed + i}: attained {found.Upper}, sampled {sampled}");
            var attained = Oracle(a, chainA.At([.. found.Positions.Take(2)]), b, chainB.At([.. found.Positions.Skip(2)]), 5000);
            Assert.Equal(found.Upper, attained, 1e-5);
            Assert.Equal(found.Upper, (found.OnFirst - found.OnSecond).Size, 1e-9);
        }

        Assert.True(clear > scenes / 3, $"{clear} of {scenes} clear");
        Assert.True(clear < scenes, "no scene hits: the test does not see that side");
    }

    private static double Oracle(Plain[] a, Pose poseA, Plain[] b, Pose poseB, int steps) =>
        a.Min(p => b.Min(q => Plain.Between(p, poseA, q, poseB, steps)));

    /// <summary>Best of a grid, refined from its best five by steps along each joint.</summary>
    private static (double Value, double[] Place) Refined(Func<double[], double> at, IReadOnlyList<Joint> joints, int steps)
    {
        List<(double Value, double[] Q)> all = [];
        var total = (int)Math.Pow(steps, joints.Count);
        for (var k = 0; k < total; k++)
        {
            var q = new double[joints.Count];
            var rest = k;
            for (var j = 0; j < q.Length; j++)
            {
                q[j] = joints[j].From + ((joints[j].To - joints[j].From) * (rest % steps) / (steps - 1));
                rest /= steps;
            }

            all.Add((at(q), q));
        }

        var (least, place) = (double.PositiveInfinity, all[0].Q);
        foreach (var (start, from) in all.OrderBy(s => s.Value).Take(5))
        {
            var (value, q) = (start, (double[])from.Clone());
            for (var step = 1.0 / (steps - 1); step > 1e-5; step /= 2)
            {
                for (var j = 0; j < q.Length; j++)
                {
                    foreach (var sign in new[] { -1, 1 })
                    {
                        var before = q[j];
                        q[j] = Math.Clamp(before + (sign * step * (joints[j].To - joints[j].From)), joints[j].From, joints[j].To);
                        var next = at(q);
                        if (next < value)
                            value = next;
                        else
                            q[j] = before;
                    }
                }
            }

            if (value < least)
                (least, place) = (value, q);
        }

        return (least, place);
    }

    [Fact]
    public void Find_BallsOnTurningArms_IsTheDifferenceOfTheRadii()
    {
        // Arms of 0.3 and 0.2 about two parallel axes 1 m apart: nearest when both point at each other.
        var a = new MovingSolid(Solid.Of(new Part("a", new Sphere(0.3 * X, 0.05))), new([Joint.Turn("a", default, Z, -50 * Degree, 40 * Degree)]));
        var b = new MovingSolid(Solid.Of(new Part("b", new Sphere(1.2 * X, 0.02))), new([Joint.Turn("b", X, Z, 140 * Degree, 230 * Degree)]));
        var found = Search(a, b, new() { Tolerance = 1e-9 });
        Bracket(1 - 0.3 - 0.2 - 0.07, found, 1e-9);
        // Limits that keep them apart: 30 deg and 150 deg, nearest at the limits.
        a = a with { Chain = new([Joint.Turn("a", default, Z, 30 * Degree, 80 * Degree)]) };
        b = b with { Chain = new([Joint.Turn("b", X, Z, 190 * Degree, 260 * Degree)]) };
        var (p, q) = (new Vector3(0.3 * Math.Cos(30 * Degree), 0.3 * Math.Sin(30 * Degree), 0), new Vector3(1 - (0.2 * Math.Cos(10 * Degree)), -0.2 * Math.Sin(10 * Degree), 0));
        found = Search(a, b, new() { Tolerance = 1e-9 });
        Bracket((p - q).Size - 0.07, found, 1e-9);
        Assert.Equal(30 * Degree, found.Positions[0], 1e-9);
        Assert.Equal(190 * Degree, found.Positions[1], 1e-9);
    }

    [Fact]
    public void Find_CapsuleOverAPlate_IsItsLowestEnd()
    {
        // A rod of 0.5 m hinged 0.4 m over a plate, leaning from 10 to 80 deg from the vertical, hanging down.
        var plate = new MovingSolid(Solid.Of(new Part("plate", new Box(default, Rotation.None, new(3, 3, 0)))));
        var rod = new MovingSolid(Solid.Of(new Part("rod", new Capsule(0.6 * Z, 0.1 * Z, 0.01))), new([Joint.Turn("lean", 0.6 * Z, Y, 10 * Degree, 80 * Degree)]));
        var found = Search(plate, rod, new() { Tolerance = 1e-9 });
        Bracket(0.6 - (0.5 * Math.Cos(10 * Degree)) - 0.01, found, 1e-9);
    }

    [Fact]
    public void Find_Concentric_TurningChangesNothing()
    {
        var inner = new MovingSolid(Solid.Of(new Part("a", new Cylinder(-0.2 * Z, 0.2 * Z, 0.05))), new([Joint.Turn("spin", default, Z, -Math.PI, Math.PI)]));
        var ball = new MovingSolid(Solid.Of(new Part("b", new Sphere(0.3 * X, 0.1))));
        Bracket(0.15, Search(inner, ball, new() { Tolerance = 1e-9 }), 1e-9);
        Bracket(0.15, Search(ball, inner), 1e-4);
    }

    [Fact]
    public void Find_FullTurn_FindsThePlaceBehind()
    {
        var arm = new MovingSolid(Solid.Of(new Part("a", new Sphere(0.3 * X, 0.05))), new([Joint.Turn("a", default, Z, 0, 2 * Math.PI)]));
        var ball = new MovingSolid(Solid.Of(new Part("b", new Sphere(-0.6 * X, 0.05))));
        Bracket(0.2, Search(arm, ball, new() { Tolerance = 1e-8 }), 1e-8);
    }

    [Fact]
    public void Find_ZeroRange_IsTheDistanceAtThatPosition()
    {
        var arm = new MovingSolid(Solid.Of(new Part("a", new Sphere(0.3 * X, 0.05))), new([Joint.Turn("a", default, Z, 1, 1), Joint.Slide("s", Z, 0.2, 0.2)]));
        var ball = new MovingSolid(Solid.Of(new Part("b", new Sphere(default, 0.05))));
        Bracket(Math.Sqrt(0.13) - 0.1, Search(arm, ball), 1e-9);
    }

    [Fact]
    public void Find_ParallelFacesSliding_IsTheirGap()
    {
        var block = new MovingSolid(Solid.Of(new Part("a", new Box(default, Rotation.None, new(0.1, 0.1, 0.1)))), new([Joint.Slide("s", X, -0.5, 0.5)]));
        var plate = new MovingSolid(Solid.Of(new Part("b", new Box(0.3 * Z, Rotation.None, new(1, 1, 0.1)))));
        Bracket(0.1, Search(block, plate, new() { Tolerance = 1e-9 }), 1e-9);
    }

    [Fact]
    public void Find_DeepOverlap_HitsWithALowerBoundOfZero()
    {
        var block = new MovingSolid(Solid.Of(new Part("a", new Box(default, Rotation.None, new(0.1, 0.1, 0.1)))), new([Joint.Slide("s", X, -0.5, 0.5)]));
        var ball = new MovingSolid(Solid.Of(new Part("b", new Sphere(0.3 * X, 0.02))));
        var found = Search(block, ball);
        Assert.Equal(SearchEnd.Hits, found.Ended);
        Assert.Equal(0, found.Lower);
        Assert.Equal(0, found.Upper);
        Assert.Equal(0.12, found.Overlap, 1e-6);
        Assert.Equal(0.3, found.Positions[0], 0.021);
    }

    [Fact]
    public void Find_Grazing_IsTouchingOrCloserThanTheTolerance()
    {
        var arm = new MovingSolid(Solid.Of(new Part("a", new Sphere(0.3 * X, 0.05))), new([Joint.Turn("a", default, Z, -1, 1)]));
        var ball = new MovingSolid(Solid.Of(new Part("b", new Sphere(0.4 * X, 0.05))));
        var found = Search(arm, ball);
        Assert.Equal(0, found.Lower);
        Assert.True(found.Upper <= 1e-4);
    }

    [Fact]
    public void Find_SharedJoints_Cancel()
    {
        // Both ride on the same turning base; only the arm on it moves against the other.
        var swing = Joint.Turn("base", default, X, -1, 1);
        var arm = new MovingSolid(Solid.Of(new Part("a", new Sphere(0.3 * X, 0.05))), new([swing, Joint.Turn("arm", default, Z, -1, 1)]));
        var post = new MovingSolid(Solid.Of(new Part("b", new Sphere((0.6 * X) + (0.1 * Z), 0.05))), new([swing]));
        var found = Search(arm, post, new() { Tolerance = 1e-9 });
        Bracket(Math.Sqrt(0.09 + 0.01) - 0.1, found, 1e-9);
        Assert.Equal(["base", "arm"], found.Joints.Select(j => j.Name));
        Assert.Equal(found.Upper, (found.OnFirst - found.OnSecond).Size, 1e-9);
    }

    [Fact]
    public void Find_ClearBy_IsDecidedBothWaysWithFewBoxes()
    {
        long boxes = 0, boxesOfWhole = 0;
        for (var i = 0; i < 60; i++)
        {
            var (a, b, chainA, chainB) = Scene(i);
            MovingSolid first = new(SolidOf(a), chainA), second = new(SolidOf(b), chainB);
            var whole = Search(first, second);
            var yesNo = Search(first, second, SearchAim.IsClearBy(0.01));
            boxes += yesNo.Boxes;
            boxesOfWhole += whole.Boxes;
            if (yesNo.Ended == SearchEnd.Enough)
                Assert.True(yesNo.Lower >= 0.01 && whole.Upper >= 0.01);
            else
                Assert.True(yesNo.Upper < 0.01 && whole.Lower < 0.01);
        }

        Assert.True(boxes < boxesOfWhole / 4, $"{boxes} of {boxesOfWhole}");
    }

    [Fact]
    public void Find_StoppedEarly_KeepsValidBounds()
    {
        for (var i = 0; i < 40; i++)
        {
            var (a, b, chainA, chainB) = Scene(i);
            MovingSolid first = new(SolidOf(a), chainA), second = new(SolidOf(b), chainB);
            var whole = Search(first, second);
            var stopped = Search(first, second, new() { MostBoxes = 5 + (3 * i) });
            Assert.True(stopped.Lower <= whole.Upper);
            Assert.True(stopped.Upper >= whole.Lower);
            using var source = new CancellationTokenSource();
            source.Cancel();
            var cancelled = LeastDistance.Find(first, second, cancel: source.Token);
            Assert.True(cancelled.Ended is SearchEnd.Cancelled or SearchEnd.Hits or SearchEnd.Converged);
            Assert.True(cancelled.Lower <= whole.Upper && cancelled.Upper >= whole.Lower);
        }
    }

    [Fact]
    public void Find_SwappedMovedOrGrown_ChangesAsItMust()
    {
        for (var i = 0; i < 30; i++)
        {
            var (a, b, chainA, chainB) = Scene(i);
            MovingSolid first = new(SolidOf(a), chainA), second = new(SolidOf(b), chainB);
            var found = Search(first, second);
            var swapped = Search(second, first);
            Assert.Equal(found.Lower, swapped.Lower, 1.01e-4);
            var all = new Scenes(i + 500).Pose(2);
            var moved = Search(Moved(first, all), Moved(second, all));
            Assert.Equal(found.Lower, moved.Lower, 1.01e-4);
            Assert.Equal(found.Ended, moved.Ended);
            if (found.Lower < 0.004)
                continue;
            var grown = Search(first with { Solid = Solid.Of(a.Select((p, k) => new Part($"{k}", p.Shape().Padded(0.003)))) }, second);
            Assert.Equal(found.Lower - 0.003, grown.Lower, 1.01e-4);
            // A smaller domain never lowers the answer.
            var less = Search(first with { Chain = new([Joint.Turn("pitch", default, Y, -5 * Degree, 5 * Degree), chainA.Joints[1]]) }, second);
            Assert.True(less.Lower >= found.Lower - 1e-4);
        }

        static MovingSolid Moved(MovingSolid m, Pose all) => m with
        {
            Chain = new([.. m.Chain.Joints.Select(j => new Joint(j.Name, j.Kind, all * j.Through, all.Turn * j.Axis, j.From, j.To))]),
            Home = all * m.Home,
        };
    }

    [Fact]
    public void Find_OneMillimetreAtHugeCoordinates_IsStillProved()
    {
        var at = new Pose(Rotation.None, new(1e4, 2e4, -1e4));
        var arm = new MovingSolid(
            Solid.Of(new Part("a", new Sphere(0.3 * X, 0.05))),
            new([new Joint("a", JointKind.Turn, at.At, Z, -1, 1)]),
            at);
        var ball = new MovingSolid(Solid.Of(new Part("b", new Sphere(0.401 * X, 0.05))), JointChain.Fixed, at);
        var found = Search(arm, ball);
        Bracket(0.001, found, 1e-4);
    }

    [Fact]
    public void Find_Mesh_AgreesWithTheShapeItWasMadeFrom()
    {
        // A ball as 20 x 40 facets, inscribed: the mesh is inside the ball by at most its chord error.
        var (corners, indices) = Globe(0.05, 20, 40);
        var mesh = new MovingSolid(Solid.OfTriangles("ball", corners, indices), new([Joint.Turn("a", -0.3 * X, Z, -1, 1)]));
        var plate = new MovingSolid(Solid.Of(new Part("b", new Box(0.3 * X, Rotation.None, new(0.1, 0.4, 0.4)))));
        var found = Search(mesh, plate);
        Assert.Equal(SearchEnd.Converged, found.Ended);
        Assert.True(found.Lower <= 0.15 + 0.05 * (1 - Math.Cos(Math.PI / 20)) + 1e-4);
        Assert.True(found.Upper >= 0.15 - 1e-9);
        Assert.True(found.Upper - found.Lower <= 1e-4 + 1e-11);
        // Mesh against mesh, the same two bodies.
        var second = new MovingSolid(Solid.OfTriangles("other", [.. corners.Select(c => c + (0.3 * X))], indices));
        var both = Search(mesh, second);
        Assert.Equal(SearchEnd.Converged, both.Ended);
        Assert.InRange(both.Lower, 0.2 - 1e-4, 0.2 + (0.1 * (1 - Math.Cos(Math.PI / 20))));
    }

    [Fact]
    public void WindingAt_ClosedMesh_IsOneInsideAndZeroOutside()
    {
        var (corners, indices) = Globe(0.05, 8, 12);
        var closed = Solid.OfTriangles("ball", corners, indices);
        Assert.Equal(1, closed.WindingAt(new(0.01, 0.02, 0)), 1e-9);
        Assert.Equal(0, closed.WindingAt(new(0.1, 0.02, 0)), 1e-9);
        var open = Solid.OfTriangles("bowl", corners, [.. indices.Take(indices.Length / 2)]);
        Assert.InRange(Math.Abs(open.WindingAt(default)), 0.3, 0.7);
    }

    [Fact]
    public void At_LockedPositions_IsTheDistanceThere()
    {
        var (a, b, chainA, chainB) = Scene(2);
        double[] q = [0.1, -0.2, 0.01, 0.3];
        var at = LeastDistance.At(new(SolidOf(a), chainA), new(SolidOf(b), chainB), q);
        Assert.Equal(Oracle(a, chainA.At([0.1, -0.2]), b, chainB.At([0.01, 0.3]), 5000), at.Upper, 1e-6);
        Assert.Throws<ArgumentException>(() => LeastDistance.At(new(SolidOf(a), chainA), new(SolidOf(b), chainB), [0]));
    }

    [Fact]
    public void Joint_BadLimits_AreRefused()
    {
        Assert.Throws<ArgumentException>(() => Joint.Turn("a", default, Z, 1, 0));
        Assert.Throws<ArgumentException>(() => Joint.Slide("a", Z, 0, double.NaN));
        Assert.Throws<InvalidOperationException>(() => Joint.Slide("a", default, 0, 1));
    }

    /// <summary>Facets of a ball, corners on it, seen from outside counter-clockwise.</summary>
    private static (Vector3[] Corners, int[] Indices) Globe(double radius, int rows, int columns)
    {
        List<Vector3> corners = [];
        List<int> indices = [];
        for (var i = 0; i <= rows; i++)
        {
            for (var j = 0; j < columns; j++)
            {
                double t = Math.PI * i / rows, f = 2 * Math.PI * j / columns;
                corners.Add(radius * new Vector3(Math.Sin(t) * Math.Cos(f), Math.Sin(t) * Math.Sin(f), Math.Cos(t)));
            }
        }

        for (var i = 0; i < rows; i++)
        {
            for (var j = 0; j < columns; j++)
            {
                int p = (i * columns) + j, q = (i * columns) + ((j + 1) % columns);
                indices.AddRange([p, p + columns, q, q, p + columns, q + columns]);
            }
        }

        return ([.. corners], [.. indices]);
    }

    private static void Bracket(double expected, LeastDistanceResult found, double tolerance)
    {
        Assert.True(found.Lower <= expected + 1e-9, $"proved {found.Lower}, true {expected}");
        Assert.True(found.Upper >= expected - 1e-9, $"attained {found.Upper}, true {expected}");
        Assert.True(found.Upper - found.Lower <= tolerance + 1e-11, $"{found.Lower} .. {found.Upper}, {found.Boxes} boxes, {found.Ended}");
    }
}
