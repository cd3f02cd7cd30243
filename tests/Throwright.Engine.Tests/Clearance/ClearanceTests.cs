using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Tests.Clearance;

/// <summary>An invented cockpit. Aircraft axes: x aft, y right, z up.</summary>
public sealed class ClearanceTests
{
    private const double Degree = Math.PI / 180;
    private static readonly FigureWriter Say = new(new Display());
    private static readonly Limit Wanted = new(0.01, new("common-practice", "clearance of moving parts", Evidence.CommonPractice));

    private static CockpitBody Stick => CockpitBodies.Stick("stick", new(0, 0, 0.1), 0.5, 0.12, 0.011, 0.02, (20 * Degree, 20 * Degree), (25 * Degree, 25 * Degree));

    private static CockpitBody Handle(string name, double y, double z = 0.52, double x = -0.42) =>
        CockpitBodies.Handle(name, new(x, y, z), new(1, 0, 0), 0.034, 0.004, KnobSolid.Ball(0.016), 0.07, default);

    private static CockpitBody Panel => new("panel", Solid.Of(new Part("sheet", new Box(new(-0.43, 0, 0.6), Rotation.None, new(0.001, 0.5, 0.3)))));

    private static AllowedContact InPanel(string handle) => new(handle, "shank", "panel", "sheet", "the shank passes its hole");

    private static CockpitCase Cockpit(int handles) => new(
        [
            Stick, Panel,
            .. Enumerable.Range(0, handles).Select(i => Handle($"handle {i}", 0.05 * (i - (handles / 2.0)))),
            CockpitBodies.Leg("left leg", -1, new(0.3, -0.1, 0.05), new(-0.5, -0.12, -0.15), LegSize.Of(PilotSize.Man95), 10 * Degree, 5 * Degree),
            CockpitBodies.Leg("right leg", 1, new(0.3, 0.1, 0.05), new(-0.5, 0.12, -0.15), LegSize.Of(PilotSize.Man95), 10 * Degree, 5 * Degree),
        ],
        [.. Enumerable.Range(0, handles).Select(i => InPanel($"handle {i}"))]);

    private static List<Finding> Find(CockpitClearance of, double wanted = 0.01, bool isOwn = true) =>
        [.. ClearanceRules.Find(of.Pairs, of.Case.Allowed, _ => new(Wanted with { Value = wanted }, isOwn), _ => "clearance", Say)];

    private static CockpitClearance Solve(CockpitCase cockpit, int threads = 1) =>
        ClearanceSolver.Solve(cockpit, threads, cancel: TestContext.Current.CancellationToken);

    [Fact]
    public void Solve_StickAndHandle_NamesWhereTheyTouch()
    {
        var cockpit = Solve(new([Stick, Handle("throttle", 0, 0.55, -0.3)], []));
        var pair = Assert.Single(cockpit.Pairs);
        Assert.True(pair.Hits);
        var finding = Assert.Single(Find(cockpit));
        Assert.Equal(Verdict.Fail, finding.Verdict);
        Assert.Contains("stick and throttle touch with stick roll at", finding.Sentence);
        Assert.Contains("throttle pull at", finding.Sentence);
    }

    [Fact]
    public void Solve_AllowedContact_LeavesOutThosePartsAlone()
    {
        var handle = Handle("throttle", 0);
        var without = Solve(new([Panel, handle], []));
        Assert.True(Assert.Single(without.Pairs).Hits);
        var with = Solve(new([Panel, handle], [InPanel("throttle")]));
        // The knob is still held against the sheet: 59 mm in front of its middle, less half a sheet and the ball.
        var pair = Assert.Single(with.Pairs);
        Assert.Equal("knob", pair.Found.FirstPart == "sheet" ? pair.Found.SecondPart : pair.Found.FirstPart);
        Assert.InRange(0.06 - 0.001 - 0.016, pair.Lower, pair.Upper + 1e-12);
        var findings = Find(with).ToList();
        Assert.Equal([Verdict.Clear, Verdict.Caution], findings.Select(f => f.Verdict));
        Assert.Contains("the shank passes its hole", findings[1].Sentence);
    }

    [Fact]
    public void Solve_AnyNumberOfThreads_GivesTheSameAnswer()
    {
        var one = Solve(Cockpit(5));
        var four = Solve(Cockpit(5), 4);
        Assert.Equal(one.Pairs.Select(p => p.Found), four.Pairs.Select(p => p.Found));
        // 5 handles against stick, panel, two legs and one another; stick, panel and legs among themselves.
        Assert.Equal(36, one.Pairs.Count);
    }

    [Fact]
    public void Solve_FarPairs_AreSettledByFewBoxes()
    {
        var far = Solve(new([Stick, Handle("far", 3)], []));
        Assert.Equal(SearchEnd.Enough, far.Pairs[0].Found.Ended);
        // One for each pair of parts, or little more.
        Assert.True(far.Pairs[0].Found.Boxes <= 12, $"{far.Pairs[0].Found.Boxes}");
    }

    [Fact]
    public void Find_ClearFailAndCantTell_AreThreeVerdicts()
    {
        var cockpit = Solve(new([Stick, Handle("throttle", 0.26, 0.52, -0.25)], []));
        var (lower, upper) = (cockpit.Pairs[0].Lower, cockpit.Pairs[0].Upper);
        Assert.True(lower > 0.01 && upper < 0.1, $"{lower} {upper}");
        Verdict Of(double wanted) => Find(cockpit, wanted).Single().Verdict;
        Assert.Equal(Verdict.Clear, Of(lower));
        Assert.Equal(Verdict.Clear, Of(lower - 0.001));
        Assert.Equal(Verdict.Fail, Of(upper + 1e-6));
        // Nearer than what is only usual is told, and is no failure before they touch.
        Assert.Equal(Verdict.Caution, Find(cockpit, upper + 1e-6, isOwn: false).Single().Verdict);
        Assert.Equal(Verdict.Caution, Of(0.5 * (lower + upper)));
        // A limit of nothing, or no number, is never clear by itself.
        Assert.Equal(Verdict.Caution, Of(double.NaN));
    }

    [Fact]
    public void Find_StoppedByItsBudget_IsNeverClear()
    {
        var stopped = Solve(new([Stick, Handle("throttle", 0.26, 0.52, -0.25)], [], MostBoxes: 4));
        Assert.Equal(SearchEnd.OutOfBudget, stopped.Pairs[0].Found.Ended);
        var finding = Find(stopped).Single();
        Assert.Equal(Verdict.Caution, finding.Verdict);
        Assert.Contains("budget", finding.Why);
    }

    [Fact]
    public void Solve_KnobInsideAClosedScan_Fails()
    {
        var scan = new CockpitBody("scan", Solid.OfTriangles("skin", Corners, Faces));
        var inside = Solve(new([scan, CockpitBodies.Handle("in", new(0, 0, 0), new(1, 0, 0), 0.04, 0.004, KnobSolid.Ball(0.01), 0.02, default)], []));
        Assert.True(inside.Pairs[0].Hits);
        Assert.True(inside.Pairs[0].Found.Lower > 0.1);
        Assert.Equal(Verdict.Fail, Find(inside).Single().Verdict);
        var outside = Solve(new([scan, CockpitBodies.Handle("out", new(1, 0, 0), new(1, 0, 0), 0.04, 0.004, KnobSolid.Ball(0.01), 0.02, default)], []));
        Assert.Equal(Verdict.Clear, Find(outside).Single().Verdict);
        // One face left out: only the surfaces' distance is proved, and that is said.
        var open = new CockpitBody("scan", Solid.OfTriangles("skin", Corners, Faces[..^6]));
        var cantTell = Solve(new([open, CockpitBodies.Handle("in", new(0, 0, 0), new(1, 0, 0), 0.04, 0.004, KnobSolid.Ball(0.01), 0.02, default)], []));
        Assert.Contains(Find(cantTell), f => f.Rule == ClearanceRules.Skin && f.Verdict == Verdict.Caution);
    }

    private static readonly Vector3[] Corners =
        [.. Enumerable.Range(0, 8).Select(i => new Vector3((i & 1) == 0 ? -0.4 : 0.4, (i & 2) == 0 ? -0.4 : 0.4, (i & 4) == 0 ? -0.4 : 0.4))];

    private static readonly int[] Faces =
    [
        0, 2, 1, 1, 2, 3, 4, 5, 6, 5, 7, 6, 0, 1, 4, 1, 5, 4, 2, 6, 3, 3, 6, 7, 0, 4, 2, 2, 4, 6, 1, 3, 5, 3, 7, 5,
    ];

    /// <summary>Square ends reach farther than round ones: a ball of 1 mm, 5 mm clear of the far edge, at rest nearest.</summary>
    [Theory]
    [InlineData("grip", 0.02, 0.6 + 0.006)]
    [InlineData("horn", 0.15, 0.1 + 0.006)]
    [InlineData("bar", 0.15, -0.012 - 0.006)]
    public void Bodies_WithSquareEnds_AreThickToTheirEnd(string part, double buttline, double waterline)
    {
        var body = part == "grip"
            ? CockpitBodies.Stick("stick", default, 0.6, 0.12, 0.012, 0.02, (1e-9, 1e-9), (1e-9, 1e-9))
            : CockpitBodies.Yoke("yoke", default, 0.2, 0.015, 0.15, 0.1, 0.012, 1e-9, 1e-9);
        var ball = new CockpitBody("ball", Solid.Of(new Part("ball", new Sphere(new(0, buttline, waterline), 0.001))));
        var pair = Solve(new([ball, body], [], Interest: 1, Tolerance: 1e-6)).Pairs[0];
        Assert.InRange(0.005, pair.Lower - 1e-8, pair.Upper + 1e-8);
    }

    [Fact]
    public void Solve_WrongNames_AreRefused()
    {
        Assert.Throws<ArgumentException>(() => Solve(new([Stick, Stick], [])));
        Assert.Throws<ArgumentException>(() => Solve(new([Stick, Panel], [new("stick", "grip", "wall", "sheet", "why")])));
        Assert.Throws<ArgumentException>(() => Solve(new([Stick, Panel], [new("stick", "hilt", "panel", "sheet", "why")])));
        Assert.Throws<ArgumentException>(() => Solve(new([Stick, Panel], [new("stick", "grip", "panel", "sheet", " ")])));
    }

    [Fact]
    public void Bodies_PositiveJoints_MoveAsTheirNamesSay()
    {
        Vector3 Top(CockpitBody body, Vector3 at, params double[] q) => body.Joints.At(q) * at;
        var top = new Vector3(0, 0, 0.6);
        Assert.True(Top(Stick, top, 0, 0.1).X > 0, "pitch aft is positive");
        Assert.True(Top(Stick, top, 0.1, 0).Y > 0, "roll right is positive");
        var yoke = CockpitBodies.Yoke("yoke", new(-0.3, 0, 0.7), 0.2, 0.015, 0.15, 0.1, 0.012, 0.18, 90 * Degree);
        Assert.True(Top(yoke, new(-0.3, 0, 0.8), 0, 0.1).Y > 0, "turn right is clockwise as the pilot sees it");
        Assert.True(Top(yoke, new(-0.3, 0, 0.8), 0.1, 0).X > -0.3, "pulled aft");
        foreach (var side in new[] { -1, 1 })
        {
            var leg = CockpitBodies.Leg("leg", side, new(0.3, side * 0.1, 0.05), new(-0.5, side * 0.1, -0.15), LegSize.Of(PilotSize.Man95), 10 * Degree, 5 * Degree);
            var knee = new Vector3(-0.1, side * 0.1, 0.4);
            Assert.True(side * (Top(leg, knee, 0.1).Y - knee.Y) > 0, "outward is positive");
        }

        // The bar's right end goes down as the knob turns to the right, seen from in front.
        var t = CockpitBodies.Handle("t", default, new(1, 0, 0), 0.05, 0.004, new(KnobForm.T, 0.008, 0.016, 0.1), 0.07, (0.1, 0.2));
        Assert.True(Top(t, new(0.05, 0.05, 0), 0, 0.1).Z < 0, "turn right is clockwise as the pilot sees it");
        Assert.Equal((-0.1, 0.2), (t.Joints.Joints[1].From, t.Joints.Joints[1].To));

        Assert.Throws<ArgumentException>(() => CockpitBodies.Leg("leg", 1, default, new(-2, 0, 0), LegSize.Of(PilotSize.Man95), 0, 0));
        var (left, right) = CockpitBodies.Pedals("pedal", new(-0.6, -0.1, -0.2), new(-0.6, 0.1, -0.2), 0.09, 0.28, 0.08, 20 * Degree);
        Assert.InRange(0.11, Solve(new([left, right], [], Interest: 1)).Pairs[0].Lower, Solve(new([left, right], [], Interest: 1)).Pairs[0].Upper + 1e-12);
    }

    [Theory]
    [InlineData(KnobForm.Ball, 0.018, 0.036, 0)]
    [InlineData(KnobForm.Round, 0.02, 0.03, 0)]
    [InlineData(KnobForm.T, 0.008, 0.016, 0.09)]
    [InlineData(KnobForm.T, 0.008, 0.03, 0.09)]
    public void Handle_PulledOverItsTravel_ComesNearerByExactlyThat(KnobForm form, double radius, double depth, double width)
    {
        // A wall 0.3 m in front of the foot.
        var wall = new CockpitBody("wall", Solid.Of(new Part("wall", new Box(new(0.35, 0, 0), Rotation.None, new(0.05, 1, 1)))));
        var handle = CockpitBodies.Handle("pull", default, new(1, 0, 0), 0.05, 0.004, new(form, radius, depth, width), 0.07, (30 * Degree, 60 * Degree));
        var pair = Solve(new([wall, handle], [], Interest: 1, Tolerance: 1e-6)).Pairs[0];
        Assert.InRange(0.3 - 0.05 - 0.07 - depth, pair.Lower - 1e-9, pair.Upper + 1e-9);
    }
}
