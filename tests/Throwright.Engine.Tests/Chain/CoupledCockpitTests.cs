using Throwright.Engine.Chain;
using Throwright.Engine.Clearance;
using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Tests.Throw;
using static Throwright.Engine.Tests.Chain.Cockpits;

namespace Throwright.Engine.Tests.Chain;

/// <summary>Joints that go together and gates, from the file's words to the finding.</summary>
public sealed class CoupledCockpitTests
{
    private static RunAnswer Check(Aircraft aircraft) => RunCheck.Check(aircraft, aircraft.Runs[0], new LadderEffort(100), new() { Cures = false });

    private static Finding Pair(RunAnswer answer) => answer.Findings.First(f => f.Rule == ClearanceRules.Pair);

    /// <summary>A ball that goes 100 mm right and 100 mm aft; the pulled knob, 100 mm behind the panel, stands in the far corner.</summary>
    private static Body Corner(params BodyGate[] gates) => new()
    {
        Id = "ball",
        Joints = [new SlideJoint("over", new(0, 1, 0), Mm(0), Mm(100)), new SlideJoint("aft", new(1, 0, 0), Mm(0), Mm(100))],
        Parts = [new("ball", new SphereShape(At(980, -100, 700), Levers.Mm(10)))],
        Gates = [.. gates],
    };

    [Fact]
    public void Check_GateBeforeTheClash_IsClearAndNamesTheGate()
    {
        // Panel's face at 1000: the knob reaches from 1020 to 1080 and 15 mm round its axis; the ball meets it at full over and aft.
        var free = Pair(Check(Of(Handle("knob"), Corner())));
        Assert.Equal(Verdict.Fail, free.Verdict);
        Assert.Contains("touch", free.Sentence);
        // Both together at most 70 of 200 mm.
        var gate = new BodyGate("over", "aft", (0.07, 0), (0, 0.07));
        var answer = Check(Of(Handle("knob"), Corner(gate)));
        var gated = Pair(answer);
        Assert.NotEqual(Verdict.Fail, gated.Verdict);
        Assert.Contains("ball over with aft", gated.Why);
        var pair = answer.Clearance!.Pairs.Single();
        Assert.True(pair.Lower > 0.002, $"{pair.Lower}");
        var q = pair.Found.Joints.Zip(pair.Found.Positions).ToDictionary(j => j.First.Name, j => j.Second);
        Assert.True(q["ball over"] + q["ball aft"] <= 0.07 + 1e-9);
        Assert.Contains("gates shut out", answer.Find(gated.Figure!)!.Holds);
    }

    [Fact]
    public void Check_FollowerOfAJoint_MeetsOnlyWhatBothReachTogether()
    {
        // From 60 mm behind the panel the ball goes forward as it goes over, from 100 mm farther aft: it meets the pulled knob. Going aft, it passes behind.
        Body With(double from, double to) => Corner() with
        {
            Parts = [new("ball", new SphereShape(At(1060, -100, 700), Levers.Mm(10)))],
            Joints = [new SlideJoint("over", new(0, 1, 0), Mm(0), Mm(100)), new SlideJoint("aft", new(1, 0, 0), Mm(from), Mm(to)) { Follows = "over" }],
        };
        var meets = Pair(Check(Of(Handle("knob"), With(100, 0))));
        Assert.Equal(Verdict.Fail, meets.Verdict);
        Assert.Contains("going along at", meets.Sentence);
        Assert.DoesNotContain("touch", Pair(Check(Of(Handle("knob"), With(0, 100)))).Sentence);
    }

    [Fact]
    public void Handle_ThatWinds_TurnsOnlyAsItIsPulled()
    {
        // A bar of 100 mm. Pushed in it lies across; a post beside the panel stands 40 mm above the shank, where only an upright bar reaches it.
        var post = new Body { Id = "post", Parts = [new("post", new CapsuleShape(At(1005, 0, 745), At(1045, 0, 745), Levers.Mm(3)))] };
        Run T(BodySide? winds, double right) => Handle("knob").WithEnd(e => e with
        {
            Knob = KnobShape.THandle,
            KnobSize = new() { Diameter = Levers.Mm(10), Width = Levers.Mm(100) },
            Turns = new(Deg(0), Deg(right)) { Winds = winds },
        });
        Assert.Equal(Verdict.Fail, Pair(Check(Of(T(null, 90), post))).Verdict);
        var screw = Check(Of(T(BodySide.Right, 90), post));
        // Pulled 40 mm, the bar is upright only beyond the post's end.
        Assert.NotEqual(Verdict.Fail, Pair(screw).Verdict);
        Assert.Equal(["knob pull"], screw.Clearance!.Pairs.Single().Found.Joints.Select(j => j.Name));
        // Wound the other way it starts upright, in front of the post.
        Assert.Equal(Verdict.Fail, Pair(Check(Of(T(BodySide.Left, 90), post))).Verdict);
        // Leaning, the screw leans with it: moved with its sheet nothing changes.
        var lean = T(BodySide.Right, 90).WithEnd(e => e with { Tilt = new(Deg(6), Deg(-4)) });
        Assert.Equal(["knob pull"], Check(Of(lean, post)).Clearance!.Pairs.Single().Found.Joints.Select(j => j.Name));
    }

    [Fact]
    public void Stick_WithItsCornerCutOff_ClearsAHandleThatStandsInThatCorner()
    {
        var stick = new Stick
        {
            Pivot = At(1300, 0, 300),
            Length = Levers.Mm(560),
            Grip = Levers.Mm(120),
            ShaftDiameter = Levers.Mm(25),
            GripDiameter = Levers.Mm(40),
            Forward = Deg(20),
            Aft = Deg(20),
            Left = Deg(25),
            Right = Deg(25),
        };
        var handle = Handle("knob", 200, 770);
        var free = Check(Of(handle, new Body { Id = "stick", ReadyMade = stick }));
        var gate = new BodyGate("pitch", "roll", (-20 * Math.PI / 180, 5 * Math.PI / 180), (0, 25 * Math.PI / 180));
        var gated = Check(Of(handle, new Body { Id = "stick", ReadyMade = stick, Gates = [gate] }));
        Assert.True(gated.Clearance!.Pairs[0].Lower > free.Clearance!.Pairs[0].Upper + 0.01);
        Assert.Contains("stick pitch with roll", Pair(gated).Why);
    }
}
