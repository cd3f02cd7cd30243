using Throwright.Engine.Chain;
using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Prove;
using Throwright.Engine.Tests.Throw;
using static Throwright.Engine.Tests.Chain.Cockpits;

namespace Throwright.Engine.Tests.Chain;

/// <summary>From what the file says to a certified clearance.</summary>
public sealed class CockpitCheckTests
{
    private static CockpitAnswer Solve(Aircraft aircraft, CockpitEffort? effort = null) => CockpitCheck.Solve(aircraft, null, effort)!;

    private static RunAnswer Check(Aircraft aircraft) => RunCheck.Check(aircraft, aircraft.Runs[0], Runs.Quick);

    private static IEnumerable<Finding> Pairs(RunAnswer answer) => answer.Findings.Where(f => f.Rule == ClearanceRules.Pair);

    [Fact]
    public void File_WithoutBodiesAndSheets_IsNotLookedAt()
    {
        var bare = new Aircraft { Name = "A", Runs = [Runs.Sound] };
        Assert.Null(CockpitCheck.Solve(bare));
        var answer = RunCheck.Check(bare, Runs.Quick);
        Assert.Null(answer.Cockpit);
        Assert.DoesNotContain(answer.Runs[0].Findings, f => f.Rule.StartsWith("clearance", StringComparison.Ordinal) || f.Rule.Contains("cockpitEnd.sheet", StringComparison.Ordinal));
    }

    /// <summary>The operating check of an emergency control names what can touch it at that moment.</summary>
    [Fact]
    public void EmergencyHandle_NextToAMover_NamesItInItsOperatingCheck()
    {
        OperatingItem Moves(double station) => Check(Of(Handle("a") with { Emergency = true }, Ball(station, -50, 700))).Proof!.Operating.Single(i => i.What == "what else moves");
        Assert.True(Moves(1150).Known);
        Assert.Contains("ball (at least", Moves(1150).Do);
        Assert.Contains("ball (it touches)", Moves(1090).Do);
        var struck = Check(Of(Handle("a") with { Emergency = true }, Ball(1090, -50, 700))).Findings.Single(f => f.Rule == ProveRules.Operating);
        Assert.Contains("ball can touch it at that moment", struck.Sentence);
    }

    /// <summary>Of one run asked for by itself it is not said that the others lack what they have.</summary>
    [Fact]
    public void OneRunOfTwo_IsNotSaidToLackTheOthersArm()
    {
        var aircraft = Of(Handle("a"), Ball(1150, -50, 700)) with { Runs = [Handle("a"), Handle("b", 200)] };
        var cockpit = Solve(aircraft);
        var left = AircraftFindings.LeftOut(new(aircraft, [RunCheck.Check(aircraft, aircraft.Runs[0], Runs.Quick)]) { Cockpit = cockpit }).ToList();
        Assert.Equal("arm of a", left.Single(l => l.What.StartsWith("arm of", StringComparison.Ordinal)).What);
        Assert.Contains("one run was asked for", left.Single(l => l.What.StartsWith("arm and conduit of b", StringComparison.Ordinal)).Why);
    }

    /// <summary>Knob front at 1000 + 20 + 20 + 40 = 1080 mm; a ball's near side at 1150 - 20.</summary>
    [Fact]
    public void Ball_InFrontOfThePulledKnob_IsAsFarAsTheDrawingSays()
    {
        var pair = Solve(Of(Handle("a"), Ball(1150, -50, 700))).Clearance.Pairs.Single();
        Assert.InRange(0.050, pair.Lower, pair.Upper + 1e-12);
        Assert.True(pair.Upper - pair.Lower <= 1.1e-4);
        // Somewhere on its way the ball stands before the knob's face, and the knob is pulled out.
        Assert.InRange(pair.Found.Positions[1], 0.035, 0.065);
        Assert.Equal(0.040, pair.Found.Positions[0], 1e-6);
    }

    [Fact]
    public void Tolerances_OfPlacesAndClothing_TakeFromTheClearance()
    {
        double Least(Run run, Body body) => Solve(Of(run, body)).Clearance.Pairs.Single().Lower;
        var plain = Least(Handle("a"), Ball(1150, -50, 700));
        // Three coordinates off by 3, 3 and 3 mm: at most 5.196 mm. Clothing 4 mm. Shank off by 2 mm.
        Assert.Equal(plain - 0.003 * Math.Sqrt(3), Least(Handle("a").WithEnd(e => e with { Hole = At(1000, 0, 700, 3) }), Ball(1150, -50, 700)), 1.1e-4);
        Assert.Equal(plain - 0.004, Least(Handle("a"), Ball(1150, -50, 700) with { Allow = Mm(4) }), 1.1e-4);
        Assert.Equal(plain - 0.002, Least(Handle("a").WithEnd(e => e with { Shank = e.Shank with { Out = Levers.Mm(20, 2) } }), Ball(1150, -50, 700)), 1.1e-4);
        // A hand round the knob, as a ball about its middle: 15 + 25 mm instead of half the knob's length.
        Assert.Equal(plain + 0.010 - 0.040, Least(Handle("a").WithEnd(e => e with { KnobSize = e.KnobSize with { Hand = Mm(25) } }), Ball(1150, -50, 700)), 1.1e-4);
    }

    [Fact]
    public void TiltInTheFile_LeansTheWholeHandle()
    {
        // 45 deg up: the knob's middle goes to (30 + 40) cos 45 out and up, less the half sheet's shift.
        var tilted = Handle("a").WithEnd(e => e with { Tilt = new(Deg(45), Deg(0)) });
        var mount = Solve(Of(tilted)).Handles.Single();
        var knob = mount.KnobAt(mount.Tilt, mount.Length, 0.040);
        var along = 0.0008 + 0.020 + 0.040 + 0.010;
        Assert.Equal(1.000 - 0.0008 + (along * Math.Sqrt(0.5)), knob.X, 1e-9);
        Assert.Equal(0.700 + (along * Math.Sqrt(0.5)), knob.Z, 1e-9);
        // A ball where the square handle's knob would be stays clear; one on the leaning line is met.
        Assert.False(Solve(Of(tilted, Ball(1090, -50, 700))).Clearance.Pairs.Single().Hits);
        Assert.True(Solve(Of(tilted, Ball(1060, -50, 750))).Clearance.Pairs.Single().Hits);
        // Toward the right is toward buttline right for a panel that faces aft.
        var right = Solve(Of(Handle("a").WithEnd(e => e with { Tilt = new(Deg(0), Deg(45)) }))).Handles.Single();
        Assert.True(right.KnobAt(right.Tilt, right.Length, 0).Y > 0.02);
    }

    [Fact]
    public void FlatConsole_CallsForwardUp()
    {
        var console = new Sheet { Id = "console", At = At(1000, 0, 500), Normal = new(0, 0, 1), Thickness = Levers.Mm(1.6) };
        var run = Handle("a").WithEnd(e => e with { Sheet = console, Hole = At(1000, 0, 500), Tilt = new(Deg(20), Deg(10)) });
        var mount = Solve(Of(run) with { Sheets = [console] }).Handles.Single();
        var knob = mount.KnobAt(mount.Tilt, mount.Length, 0);
        Assert.True(knob.X < 1.0 && knob.Y > 0 && knob.Z > 0.5);
    }

    [Fact]
    public void TwoHandles_AreHeldAgainstEachOther_AndEachTellsIt()
    {
        var aircraft = Of(Handle("a")) with { Runs = [Handle("a"), Handle("b", buttline: 45)] };
        var answer = RunCheck.Check(aircraft, Runs.Quick);
        var pair = Assert.Single(answer.Cockpit!.Clearance.Pairs);
        Assert.InRange(0.015, pair.Lower, pair.Upper + 1e-12);
        Assert.All(answer.Runs, r => Assert.Single(Pairs(r)));
        Assert.NotNull(answer.Runs[0].Find("clearance-b"));
        Assert.NotNull(answer.Runs[1].Find("clearance-a"));
        // One run asked alone is told the same.
        Assert.Equal(pair.Lower, RunCheck.Check(aircraft, aircraft.Runs[1], Runs.Quick).Clearance!.Pairs.Single().Lower);
    }

    [Fact]
    public void TouchingBodies_Fail_WithPositionsAndTheRule()
    {
        var answer = Check(Of(Handle("a"), Ball(1070, -50, 700)));
        var finding = Pairs(answer).Single();
        Assert.Equal(Verdict.Fail, finding.Verdict);
        Assert.Contains("a and ball touch with a pull at", finding.Sentence);
        Assert.Contains("ball over at", finding.Sentence);
        Assert.Contains(finding.Sources, s => s.Id == "14cfr-23-777");
        Assert.Equal(0, answer.Find("clearance-ball")!.Value);
    }

    [Fact]
    public void WantedClearance_OwnFails_UsualCautions()
    {
        Verdict Of(double mm, double? own) => Pairs(Check(Cockpits.Of(Handle("a").WithEnd(e => e with { Clear = own is { } c ? Mm(c) : null }), Ball(1100 + mm, -50, 700)))).Single().Verdict;
        Assert.Equal(Verdict.Clear, Of(13, null));
        Assert.Equal(Verdict.Caution, Of(12, null));
        Assert.Equal(Verdict.Fail, Of(12, 15));
        Assert.Equal(Verdict.Clear, Of(12, 10));
        // A figure beyond the distance of interest is settled all the same.
        Assert.Equal(Verdict.Clear, Of(160, 150));
        Assert.Equal(Verdict.Fail, Of(140, 150));
    }

    [Fact]
    public void AllowedContact_IsLeftOutAndTold()
    {
        var stop = new Body
        {
            Id = "stop",
            Parts = [new("pad", new SphereShape(At(1030, 0, 710), Levers.Mm(8)))],
            Touches = [new("pad", "a", "shank", "the shank rests on it"), new("pad", "a", "knob", "and the knob")],
        };
        var answer = Check(Of(Handle("a"), stop));
        Assert.DoesNotContain(Pairs(answer), f => f.Verdict == Verdict.Fail);
        var told = answer.Findings.Single(f => f.Rule == ClearanceRules.Contacts);
        Assert.Equal(Verdict.Caution, told.Verdict);
        Assert.Contains("the shank rests on it", told.Sentence);
        Assert.Equal(Verdict.Fail, Pairs(Check(Of(Handle("a"), stop with { Touches = [stop.Touches[0]] }))).Max(f => f.Verdict));
    }

    [Fact]
    public void MeshNotRead_LegThatCantSpan_AreNeeds_NeverClear()
    {
        var mesh = new Body { Id = "grip", Parts = [new("mesh", new MeshShape { File = "grip.stl", Unit = MeshUnit.Millimetre, At = At(0, 0, 0) })] };
        var leg = new Body { Id = "leg", ReadyMade = new SeatedLeg { Side = BodySide.Left, Hip = At(3000, 0, 300), Heel = At(1000, 0, 300), Outward = Deg(5), Inward = Deg(0) } };
        var answer = Check(Of(Handle("a"), mesh, leg));
        var told = answer.Findings.Where(f => f.Rule == ClearanceFindings.NotRead).ToList();
        Assert.Equal(2, told.Count);
        Assert.All(told, f => Assert.Equal(Verdict.NeedsInput, f.Verdict));
        Assert.Contains("grip.stl", told[0].Sentence);
        Assert.Contains("don't span", told[1].Sentence);
        // Once read, it counts.
        var read = Solve(Of(Handle("a"), mesh), new() { Meshes = _ => new([new(1200, 0, 700), new(1200, 100, 700), new(1200, 0, 800)], [0, 1, 2]) });
        Assert.InRange(0.120, read.Clearance.Pairs.Single().Lower, double.PositiveInfinity);
        Assert.Empty(read.NotRead);
    }

    [Fact]
    public void HandleNotDescribed_AsksOnce_PartlyDescribed_AsksForEach()
    {
        var none = Check(Of(new Run { Id = "a", CockpitEnd = new() { Stroke = Levers.Mm(40) } }, Ball(1100, 0, 700)));
        Assert.Single(none.Needs, n => n.Opens.Contains("clearance", StringComparison.Ordinal));
        var some = Check(Of(Handle("a").WithEnd(e => e with { Shank = new(), KnobSize = new() }), Ball(1100, 0, 700)));
        Assert.Equal(4, some.Needs.Count(n => n.Opens.Contains("clearance", StringComparison.Ordinal)));
    }

    [Fact]
    public void THandle_WithALockThatTurns_IsLookedAtInEveryTurn()
    {
        Run T(LockKind held, KnobTurn? turns) => Handle("a").WithEnd(e => e with
        {
            Knob = KnobShape.THandle,
            Lock = held,
            Turns = turns,
            KnobSize = new() { Diameter = Levers.Mm(16), Width = Levers.Mm(90) },
        });
        // A ball above the bar: met only when the bar stands up.
        var above = new Body { Id = "ball", Parts = [new("ball", new SphereShape(At(1040, 0, 745), Levers.Mm(10)))] };
        bool Hits(LockKind held, KnobTurn? turns) => Solve(Of(T(held, turns), above)).Clearance.Pairs.Single().Hits;
        Assert.True(Hits(LockKind.Twist, null));
        Assert.False(Hits(LockKind.Friction, null));
        Assert.False(Hits(LockKind.Twist, new(Deg(10), Deg(10))));
        Assert.True(Hits(LockKind.Twist, new(Deg(0), Deg(90))));
        Assert.Contains("cockpitEnd.turns", Pairs(Check(Of(T(LockKind.Twist, null), above))).Single().Why);
    }

    [Fact]
    public void Threads_AnyNumber_GiveTheSameAnswer()
    {
        var runs = Enumerable.Range(0, 6).Select(i => Handle($"r{i}", 60 * i)).ToArray();
        var aircraft = Of(runs[0], Ball(1120, -50, 700)) with { Runs = [.. runs] };
        var one = Solve(aircraft).Clearance.Pairs.Select(p => p.Found);
        Assert.Equal(one, Solve(aircraft, new() { Threads = 4 }).Clearance.Pairs.Select(p => p.Found));
    }

    [Fact]
    public void Cancelled_BeforeItBegins_ProvesNothing_AndSaysSo()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        var aircraft = Of(Handle("a"), Ball(1112, -50, 700));
        var answer = RunCheck.Check(aircraft, Runs.Quick, new CockpitEffort { Cancel = stop.Token });
        Assert.All(Pairs(answer.Runs[0]), f => Assert.NotEqual(Verdict.Clear, f.Verdict));
    }

    [Fact]
    public void PilotOfAnySize_HasALegThatIsPublished()
    {
        var sizes = Enum.GetValues<PilotSize>().Select(LegSize.Of).ToList();
        Assert.All(sizes, s => Assert.InRange(s.Thigh, 0.35, 0.50));
        // 0.72 x 669, 0.83 x 602, half of 207 mm.
        Assert.Equal((0.48168, 0.49966, 0.1035), (Math.Round(sizes[^1].Thigh, 5), Math.Round(sizes[^1].Shin, 5), Math.Round(sizes[^1].ThighRadius, 5)));
    }
}
