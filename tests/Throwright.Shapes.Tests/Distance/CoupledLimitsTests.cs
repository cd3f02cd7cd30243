using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Tests.Distance;

/// <summary>Joints that one movement drives together, and gates that forbid some positions. docs/theory/clearance.md, section 4a.</summary>
public sealed class CoupledLimitsTests
{
    private const double Degree = Math.PI / 180;
    private static readonly Vector3 X = new(1, 0, 0), Y = new(0, 1, 0), Z = new(0, 0, 1);

    private static LeastDistanceResult Search(MovingSolid first, MovingSolid second, SearchAim? aim = null) =>
        LeastDistance.Find(first, second, aim, cancel: TestContext.Current.CancellationToken);

    private static Solid SolidOf(Plain[] parts) => Solid.Of(parts.Select((p, i) => new Part($"{i}", p.Shape())));

    /// <summary>A stick with its corners cut off, beside a handle that turns as it is pulled; from the seed.</summary>
    private static (Plain[] A, Plain[] B, JointChain Stick, JointChain Handle) Coupled(int seed)
    {
        var (a, b, stick, handle) = LeastDistanceTests.Scene(seed);
        var scene = new Scenes(seed + 7000);
        Joint pitch = stick.Joints[0], roll = stick.Joints[1], pull = handle.Joints[0], turn = handle.Joints[1];
        JointGate Corner(string name, double p, double r) => new(name, [new(pitch, p), new(roll, r)], scene.Number(5, 25) * Degree);
        stick = stick with { Gates = [Corner("one", scene.Number(0.5, 1), scene.Number(0.5, 1)), Corner("two", -scene.Number(0.5, 1), scene.Number(0.5, 1))] };
        var (from, to) = (scene.Number(-60, 60) * Degree, scene.Number(-60, 60) * Degree);
        var follows = Joint.Following(pull, "turn", JointKind.Turn, turn.Through, turn.Axis, from, to);
        // Either order, and in some scenes not along the slide at all: those lie in no screw line.
        if (seed % 3 == 2)
            follows = follows with { Axis = (turn.Axis + (0.5 * scene.Direction())).Unit() };
        return (a, b, stick, new(seed % 3 == 1 ? [follows, pull] : [pull, follows]));
    }

    [Fact]
    public void Find_CoupledScenes_ProvesNoMoreThanSamplesFindAndAttainsWhatIsAllowed()
    {
        var (clear, shut, hits) = (0, 0, 0);
        for (var seed = 0; seed < 24; seed++)
        {
            var (a, b, stick, handle) = Coupled(seed);
            var found = Search(new(SolidOf(a), stick), new(SolidOf(b), handle));
            Assert.Equal(["pitch", "pull", "roll"], found.Joints.Select(j => j.Name).Order());
            double At(double[] q)
            {
                Pose one = stick.At(found.Joints, q), other = handle.At(found.Joints, q);
                return a.Min(p => b.Min(r => Plain.Between(p, one, r, other, 60)));
            }

            bool Allowed(IReadOnlyList<double> q) => stick.Gates.All(g => g.Terms.Sum(t => t.Factor * JointChain.PositionOf(t.Joint, found.Joints, q)) <= g.Most + 1e-9);
            Assert.True(Allowed(found.Positions), $"seed {seed}: stands where no gate lets it");
            var (sampled, place, refused) = Sampled(At, Allowed, found.Joints, 7);
            shut += refused;
            if (found.Ended == SearchEnd.Hits)
            {
                hits++;
                Assert.True(At([.. found.Positions]) <= 1e-4, $"seed {seed}: said to hit");
                continue;
            }

            clear++;
            Assert.Equal(SearchEnd.Converged, found.Ended);
            Assert.True(found.Upper - found.Lower <= 1e-4 + 1e-11, $"seed {seed}: {found.Lower} .. {found.Upper}");
            Assert.True(found.Lower <= sampled + 1e-6, $"seed {seed}: proved {found.Lower}, sampled {sampled} at {string.Join(", ", place)}");
            Assert.True(found.Upper <= sampled + 1e-4, $"seed {seed}: attained {found.Upper}, sampled {sampled}");
            Assert.Equal(found.Upper, At([.. found.Positions]), 1e-4);
        }

        Assert.True(clear > 8 && hits > 0 && shut > 400, $"{clear} clear, {hits} hit, {shut} samples shut out");
    }

    /// <summary>Best of a grid of allowed positions, refined from the best three by allowed steps.</summary>
    private static (double Value, double[] Place, int Refused) Sampled(Func<double[], double> at, Func<IReadOnlyList<double>, bool> allowed, IReadOnlyList<Joint> joints, int steps)
    {
        List<(double Value, double[] Q)> all = [];
        var refused = 0;
        for (var k = 0; k < (int)Math.Pow(steps, joints.Count); k++)
        {
            var q = new double[joints.Count];
            for (int j = 0, rest = k; j < q.Length; j++, rest /= steps)
                q[j] = joints[j].From + ((joints[j].To - joints[j].From) * (rest % steps) / (steps - 1));
            if (allowed(q))
                all.Add((at(q), q));
            else
                refused++;
        }

        var (least, place) = (double.PositiveInfinity, all[0].Q);
        foreach (var (start, from) in all.OrderBy(s => s.Value).Take(3))
        {
            var (value, q) = (start, (double[])from.Clone());
            for (var step = 1.0 / (steps - 1); step > 1e-4; step /= 2)
            {
                for (var j = 0; j < q.Length; j++)
                {
                    foreach (var sign in new[] { -1, 1 })
                    {
                        var before = q[j];
                        q[j] = Math.Clamp(before + (sign * step * (joints[j].To - joints[j].From)), joints[j].From, joints[j].To);
                        if (allowed(q) && at(q) is var next && next < value)
                            value = next;
                        else
                            q[j] = before;
                    }
                }
            }

            if (value < least)
                (least, place) = (value, q);
        }

        return (least, place, refused);
    }

    [Fact]
    public void Find_KnobOnAScrew_IsTheLowestOfItsScrewLine()
    {
        // A ball 50 mm off the axis, 20 mm up a turn of 80 deg, over a plate that leans: least of n.x(t) in closed form on a fine grid.
        var up = Joint.Slide("up", Z, 0, 0.02);
        foreach (var (from, to) in new[] { (-40.0, 40.0), (70.0, -10.0), (0.0, 200.0) })
        {
            var turn = Joint.Following(up, "turn", JointKind.Turn, default, Z, from * Degree, to * Degree);
            var knob = new MovingSolid(Solid.Of(new Part("ball", new Sphere(0.05 * X, 0.004))), new([up, turn]));
            foreach (var n in new[] { new Vector3(0.2, 0.1, 1).Unit(), new Vector3(-0.6, 0.3, 0.7).Unit(), new Vector3(0.3, -0.9, 0.1).Unit() })
            {
                var plate = new MovingSolid(Solid.Of(new Part("plate", new Box(-0.3 * n, Axes(n), new(1, 1, 0)))));
                var least = Enumerable.Range(0, 200_001).Min(i =>
                {
                    var angle = (from + ((to - from) * i / 200_000.0)) * Degree;
                    return Vector3.Dot(n, new(0.05 * Math.Cos(angle), 0.05 * Math.Sin(angle), 0.02 * i / 200_000.0));
                }) + 0.3 - 0.004;
                var found = Search(knob, plate, new() { Tolerance = 1e-8 });
                Assert.InRange(least, found.Lower - 1e-10, found.Upper + 1e-9);
                Assert.True(found.Upper - found.Lower <= 1e-8 + 1e-11);
                // As a slide and a turn that know nothing of one another it would take hundreds, and find less.
                Assert.True(found.Boxes < 120, $"{found.Boxes} boxes");
            }
        }
    }

    [Fact]
    public void Find_GateBeforeAClash_ProvesTheDistanceAtTheGate()
    {
        // A ball on two slides, aft and right, each 0 to 1 m; a pillar stands where both are at their end.
        Joint aft = Joint.Slide("aft", X, 0, 1), right = Joint.Slide("right", Y, 0, 1);
        var pillar = new MovingSolid(Solid.Of(new Part("pillar", new Sphere(X + Y, 0.1))));
        var ball = new MovingSolid(Solid.Of(new Part("ball", new Sphere(default, 0.05))), new([aft, right]));
        Assert.Equal(SearchEnd.Hits, Search(ball, pillar).Ended);
        var gated = ball with { Chain = ball.Chain with { Gates = [new("corner", [new(aft, 1), new(right, 1)], 1.2)] } };
        // Nearest on the gate: (0.6, 0.6).
        var found = Search(gated, pillar, new() { Tolerance = 1e-7 });
        var closed = (0.4 * Math.Sqrt(2)) - 0.15;
        Assert.InRange(closed, found.Lower - 1e-10, found.Upper + 1e-9);
        Assert.True(found.Upper - found.Lower <= 1e-7 + 1e-11);
        Assert.Equal(1.2, found.Positions.Sum(), 1e-4);
        Assert.True(Search(gated, pillar, SearchAim.IsClearBy(closed - 0.001)).Ended == SearchEnd.Enough);
        Assert.True(Search(gated, pillar, SearchAim.IsClearBy(closed + 0.001)).Ended == SearchEnd.TooLittle);
    }

    [Fact]
    public void Find_PedalsOnOneBar_ComeNearOnlyAsTheBarLets()
    {
        // Two balls that swing against each other on arms side by side: free they would meet, on one bar they never do.
        var left = Joint.Turn("left", default, Y, -0.5, 0.5);
        MovingSolid On(Joint joint, double y) => new(Solid.Of(new Part("foot", new Sphere(new(0, y, 0.3), 0.04))), new([joint]));
        var linked = Joint.Following(left, "right", JointKind.Turn, new(0.2, 0, 0), Y, 0.5, -0.5);
        var found = Search(On(left, 0), new(Solid.Of(new Part("foot", new Sphere(new(0.2, 0, 0.3), 0.04))), new([linked])), new() { Tolerance = 1e-6 });
        // Both at the angle t and -t: heights alike, apart by 0.2 - 2 * 0.3 sin t.
        var closed = 0.2 - (0.6 * Math.Sin(0.5)) - 0.08;
        Assert.True(closed < 0);
        Assert.Equal(SearchEnd.Hits, found.Ended);
        var together = Joint.Following(left, "right", JointKind.Turn, new(0.2, 0, 0), Y, -0.5, 0.5);
        found = Search(On(left, 0), new(Solid.Of(new Part("foot", new Sphere(new(0.2, 0, 0.3), 0.04))), new([together])), new() { Tolerance = 1e-6 });
        Assert.InRange(0.12, found.Lower - 1e-9, found.Upper + 1e-9);
        Assert.Equal(["left"], found.Joints.Select(j => j.Name));
    }

    [Fact]
    public void Find_RoundShankThatTurns_CostsNoMoreThanOneThatDoesNot()
    {
        var pull = Joint.Slide("pull", X, 0, 0.07);
        var stick = new MovingSolid(Solid.Of(new Part("stick", new Capsule(new(0.2, 0.2, -0.3), new(0.2, 0.2, 0.3), 0.02))), new([Joint.Turn("pitch", new(0.2, 0.2, -0.3), Y, -0.3, 0.3), Joint.Turn("roll", new(0.2, 0.2, -0.3), X, -0.2, 0.2)]));
        var shank = Solid.Of(new Part("shank", new Capsule(default, 0.1 * X, 0.005)), new Part("knob", new Cylinder(0.1 * X, 0.13 * X, 0.02)), new Part("hand", new Sphere(0.115 * X, 0.05)), new Part("tip", new Cone(0.13 * X, 0.14 * X, 0.02, 0)));
        var still = Search(stick, new(shank, new([pull])));
        var turns = Search(stick, new(shank, new([pull, Joint.Turn("turn", default, X, -1, 1)])));
        Assert.Equal((still.Lower, still.Upper, still.Boxes), (turns.Lower, turns.Upper, turns.Boxes));
        // Off its axis by a hair more than rounding, every turn is looked at.
        var off = Search(stick, new(shank, new([pull, Joint.Turn("turn", 1e-9 * Y, X, -1, 1)])));
        Assert.True(off.Boxes > still.Boxes);
        Assert.InRange(off.Lower, still.Lower - 1.1e-4, still.Upper + 1e-8);
    }

    [Fact]
    public void Find_GateThatCannotBe_IsRefused()
    {
        Joint aft = Joint.Slide("aft", X, 0, 1), right = Joint.Slide("right", Y, 0, 1), other = Joint.Slide("other", Z, 0, 1);
        var pillar = new MovingSolid(Solid.Of(new Part("pillar", new Sphere(X + Y, 0.1))));
        MovingSolid With(params JointGate[] gates) => new(Solid.Of(new Part("ball", new Sphere(default, 0.05))), new([aft, right]) { Gates = [.. gates] });
        Assert.Throws<ArgumentException>(() => Search(With(new JointGate("nowhere", [new(aft, 1), new(right, 1)], -0.1)), pillar));
        Assert.Throws<ArgumentException>(() => Search(With(new("low", [new(aft, 1), new(right, 1)], 0.5), new("high", [new(aft, -1), new(right, -1)], -0.6)), pillar));
        Assert.Throws<ArgumentException>(() => Search(With(new JointGate("strange", [new(other, 1)], 0.5)), pillar));
        Assert.Throws<ArgumentException>(() => Joint.Following(Joint.Following(aft, "a", JointKind.Slide, default, X, 0, 1), "b", JointKind.Slide, default, X, 0, 1));
    }

    private static Rotation Axes(Vector3 normal)
    {
        var side = Rotation.SquareTo(normal);
        return new(side, Vector3.Cross(normal, side), normal);
    }
}
