using Throwright.Engine.Chain;
using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Tests.Throw;
using Throwright.Shapes;
using static Throwright.Engine.Tests.Chain.Cockpits;

namespace Throwright.Engine.Tests.Chain;

/// <summary>What moves and is no handle; what may touch; what is left out. Nothing of it goes unsaid.</summary>
public sealed class MoversTests
{
    private static readonly Sheet Outlined = Panel with { Outline = [At(1000, -300, 500), At(1000, 300, 500), At(1000, 300, 900), At(1000, -300, 900)] };

    private static AircraftAnswer Check(Aircraft aircraft) => RunCheck.Check(aircraft, Runs.Quick, new() { Cures = false });

    private static Aircraft With(params Body[] bodies) => Of(Handle("knob", 250, 850), bodies) with { Sheets = [Outlined] };

    /// <summary>A lever of 100 mm about a pivot that many mm aft of the panel's face, from straight up to forward; 5 mm thick all round.</summary>
    private static Body Lever(double aft, params Touch[] touches) => new()
    {
        Id = "flap-lever",
        Joints = [new TurnJoint("lever", new(0, -1, 0), At(1000 + aft, 0, 600), Deg(0), Deg(90))],
        Parts = [new("bar", new CapsuleShape(At(1000 + aft, 0, 600), At(1000 + aft, 0, 700), Levers.Mm(5)))],
        Touches = touches.ToEquatableList(),
    };

    [Fact]
    public void Mover_ThatMeetsASheet_FailsTheAircraftWithThePlace()
    {
        // Leaning forward by A its tip is 100 sin A forward of the pivot: it meets the face 80 mm away at sin A = 0.75.
        var answer = Check(With(Lever(80)));
        var found = answer.Findings.Single();
        Assert.Equal((ClearanceRules.Mover, Verdict.Fail), (found.Rule, found.Verdict));
        Assert.Contains("flap lever and panel touch with flap lever lever at", found.Sentence);
        Assert.Equal("clearance-flap-lever-panel", found.Figure);
        Assert.Equal(0, answer.Find(found.Figure!)!.Value);
        Assert.True(answer.Cockpit!.Movers.Single().Found.Positions.Single() >= Math.Asin(0.75) - 1e-6);
        Assert.Equal(Verdict.Fail, answer.Verdict);
        Assert.NotEqual(Verdict.Fail, answer.Runs.Single().Verdict);
    }

    [Theory]
    [InlineData(130, Verdict.Clear)]
    [InlineData(110, Verdict.Caution)]
    public void Mover_ThatStaysOff_IsProvedByTheDrawingsFigure(double aft, Verdict verdict)
    {
        // Straight forward the tip is aft - 100 from the face, less its radius; half an inch is wanted.
        var answer = Check(With(Lever(aft)));
        Assert.Equal(verdict, answer.Findings.Single().Verdict);
        var pair = answer.Cockpit!.Movers.Single();
        Assert.InRange((aft - 105) / 1000, pair.Lower - 1e-9, pair.Upper + 1e-9);
    }

    [Fact]
    public void Mover_AllowedToTouchTheSheet_IsListedAndNoFault()
    {
        var answer = Check(With(Lever(80, new Touch("bar", "panel", "sheet", "it has its slot there"))));
        Assert.Equal(Verdict.Clear, answer.OwnVerdict);
        Assert.Equal("flap lever bar and panel sheet: it has its slot there", Assert.Single(answer.AllowedLines));
        Assert.Contains(answer.Allowed, a => a is { FirstBody: "flap lever", SecondBody: "panel", SecondPart: "sheet" });
    }

    [Fact]
    public void Movers_AreHeldAgainstEachOtherAndWhatStandsStill()
    {
        Body Post(string id, double station) => new() { Id = id, Parts = [new("post", new SphereShape(At(station, 0, 600), Levers.Mm(10)))] };
        var answer = Check(With(Lever(300), Post("post", 1300 - 100), Post("far-post", 1300 - 160)));
        // The tip comes down on the near one; the far one it leaves 160 - 100 - 5 - 10 mm. What stands still is not held against itself.
        Assert.Equal(3, answer.Cockpit!.Movers.Count);
        Assert.Contains(answer.Findings, f => f.Verdict == Verdict.Fail && f.Sentence.StartsWith("flap lever and post touch", StringComparison.Ordinal));
        var far = answer.Cockpit.Movers.Single(p => p.Second.Name == "far post");
        Assert.InRange(0.045, far.Lower - 1e-9, far.Upper + 1e-9);
    }

    [Fact]
    public void Limb_ThatMeetsASheet_IsACaution_AndWithOtherBodiesIsLeftOut()
    {
        var leg = new Body { Id = "leg", ReadyMade = new SeatedLeg { Side = BodySide.Left, Hip = At(1500, 0, 550), Heel = At(1050, 0, 250), Outward = Deg(20), Inward = Deg(20) } };
        var wide = Outlined with { Outline = [At(1000, -600, 300), At(1000, 600, 300), At(1000, 600, 1200), At(1000, -600, 1200)] };
        var near = wide with { At = At(1250, 0, 700), Outline = wide.Outline.Select(p => p with { Station = Levers.Mm(1250) }).ToEquatableList() };
        var answer = Check(Of(Handle("knob", 250, 850), leg, Lever(400)) with { Sheets = [near] });
        var limb = answer.Findings.First(f => f.Sentence.StartsWith("leg and panel", StringComparison.Ordinal));
        Assert.Equal(Verdict.Caution, limb.Verdict);
        Assert.Contains("gives way", limb.Why);
        Assert.DoesNotContain(answer.Cockpit!.Movers, p => p.First.Name == "leg" && p.Second.Name == "flap lever");
        Assert.Contains(answer.LeftOut, l => l.What.StartsWith("leg against", StringComparison.Ordinal));
    }

    /// <summary>From the panel forward, round to the right and back over the panel, and home to where the knob may be.</summary>
    private static Run Routed(double arrives) => Handle("flap") with
    {
        Cable = new()
        {
            Core = Runs.Sound.Cable!.Core,
            Conduit = new() { Outside = Levers.Mm(5) },
            Ends = new() { Leaves = At(970, 0, 700), LeavesAlong = new(-1, 0, 0), Arrives = At(1030, arrives, 700), ArrivesAlong = new(0, -1, 0) },
            Supports =
            [
                new() { Place = At(1000, 320, 700), Along = new(1, 0, 0), Kind = SupportHold.SlidingClamp },
                new() { Place = At(760, 160, 700), Along = new(0, 1, 0), Kind = SupportHold.SlidingClamp },
            ],
        },
    };

    [Fact]
    public void OwnConduit_IsCountedButForWhereTheShankSlides()
    {
        var answer = Check(Of(Routed(100), Lever(400)) with { Sheets = [Panel] });
        var own = answer.Runs[0].Ends.Single(e => e.Part == EndPart.OwnEnds);
        var allowed = Assert.Single(own.Allowed);
        Assert.Equal(("shank", "flap conduit", DeviceBodies.AtHandle), (allowed.FirstPart, allowed.SecondBody, allowed.SecondPart));
        Assert.Equal(Verdict.Clear, answer.Runs[0].Findings.First(f => f.Rule == ClearanceRules.Own).Verdict);
        Assert.Contains("the shank slides in its bushing", answer.Runs[0].Findings.First(f => f.Rule == ClearanceRules.Own).Why);
        // Led back to the knob it strikes it.
        var back = Check(Of(Routed(0), Lever(400)) with { Sheets = [Panel] });
        var struck = back.Runs[0].Findings.First(f => f.Rule == ClearanceRules.Own);
        Assert.Equal(Verdict.Fail, struck.Verdict);
        Assert.Contains("flap conduit and flap touch", struck.Sentence);
    }

    [Fact]
    public void WhatIsLeftOut_IsNamedWithTheReason()
    {
        var bare = new Run { Id = "bare" };
        var aircraft = Of(Handle("knob"), Lever(400));
        var answer = Check(aircraft with { Runs = [.. aircraft.Runs, bare] });
        Assert.Contains(answer.LeftOut, l => l.What == "handle of bare");
        Assert.Contains(answer.LeftOut, l => l.What == "sheet panel" && l.Why.Contains("outline", StringComparison.Ordinal));
        Assert.Contains(answer.LeftOut, l => l.What == "handle of knob against the sheet that carries it");
        Assert.Contains(answer.LeftOut, l => l.What == "arm of knob, bare");
        Assert.Contains(answer.LeftOut, l => l.What == "conduit of knob, bare");
        Assert.All(answer.LeftOut, l => Assert.NotEqual("", l.Why));
        // Of runs that were not asked about nothing is said.
        Assert.DoesNotContain((answer with { Runs = [answer.Runs[0]] }).LeftOut, l => l.What.StartsWith("arm of", StringComparison.Ordinal) && l.What.Contains("bare", StringComparison.Ordinal));
        // Where nothing is described that could be met, nothing is proved and nothing is left out.
        Assert.Empty(Check(new Aircraft { Name = "A", Runs = [bare] }).LeftOut);
    }
}
