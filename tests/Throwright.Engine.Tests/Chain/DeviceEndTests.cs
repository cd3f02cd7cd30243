using Throwright.Engine.Chain;
using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Tests.Throw;
using Throwright.Shapes.Quantities;
using static Throwright.Engine.Tests.Chain.Cockpits;

namespace Throwright.Engine.Tests.Chain;

/// <summary>Arms, conduits and sheets come into the picture without a word more in the file.</summary>
public sealed class DeviceEndTests
{
    private static AircraftAnswer Check(Aircraft aircraft) => RunCheck.Check(aircraft, Runs.Quick, new() { Cures = false });

    private static RunAnswer First(Aircraft aircraft) => Check(aircraft).Runs[0];

    private static Finding Worst(RunAnswer answer, string rule) => answer.Findings.First(f => f.Rule == rule);

    /// <summary>An arm of 38 mm about a pivot far from the panel, turning about right, 45 deg each way from up.</summary>
    private static Run Placed(string id = "flap", double buttline = 0) => Handle(id, buttline) with
    {
        LeverEnd = new()
        {
            Radius = Levers.Mm(38),
            Holes = [Mm(25), Mm(38)],
            From = Levers.Degrees(-45),
            To = Levers.Degrees(45),
            Placed = new() { Pivot = At(3000, buttline, 500), Axis = new(0, 1, 0), Zero = new(0, 0, 1), Anchor = At(3150, buttline, 530), Along = new(-1, 0, 0) },
        },
    };

    /// <summary>A ball of 10 mm.</summary>
    private static Body Ball(string id, double station, double buttline, double waterline, params BodyJoint[] joints) =>
        new() { Id = id, Joints = [.. joints], Parts = [new("ball", new SphereShape(At(station, buttline, waterline), Levers.Mm(10)))] };

    [Fact]
    public void Arm_ThatStrikesStructure_IsNamedWithItsAngle()
    {
        // Pin 5 mm: 10 mm of metal round the hole, so the tip reaches 48 mm. A ball's near side at 45 mm, 30 deg aft of up.
        double sin = 0.5, cos = Math.Sqrt(0.75);
        var ball = Ball("rib", 3000 + (55 * sin), 0, 500 + (55 * cos));
        Run Arm(Toleranced<Length>? width) =>
            Placed() with { LeverEnd = Placed().LeverEnd! with { ArmWidth = width }, Installation = new() { Joint = new() { Diameter = Mm(5) } } };
        var taken = Worst(First(Of(Arm(null), ball)), ClearanceRules.Lever);
        Assert.Equal(Verdict.Caution, taken.Verdict);
        Assert.Contains("flap lever and rib touch with flap lever at", taken.Sentence);
        Assert.Contains("leverEnd.arm.width", taken.Why);
        // Measured as wide, it is a fault; measured as narrow, it clears, and by how much is what the drawing says.
        var measured = First(Of(Arm(Levers.Mm(20)), ball));
        Assert.Equal(Verdict.Fail, Worst(measured, ClearanceRules.Lever).Verdict);
        Assert.Equal(0, measured.Find(Worst(measured, ClearanceRules.Lever).Figure!)!.Value);
        var narrow = First(Of(Arm(Levers.Mm(8)), ball)).Ends.Single().Pairs.Single(p => p.Second.Name == "rib");
        Assert.InRange(0.055 - 0.010 - 0.038 - 0.004, narrow.Lower - 1e-9, narrow.Upper + 1e-9);
        Assert.Equal(30 * Math.PI / 180, narrow.Found.Positions.Single(), 2e-2);
    }

    [Fact]
    public void Arm_BeyondItsStops_StrikesNothing()
    {
        // 120 deg from up, 40 mm from the pivot: the arm stops at 45 deg.
        var ball = Ball("rib", 3000 + (60 * Math.Sin(2.0)), 0, 500 + (60 * Math.Cos(2.0)));
        Assert.DoesNotContain(First(Of(Placed(), ball)).Findings, f => f.Rule == ClearanceRules.Lever && f.Sentence.Contains("touch", StringComparison.Ordinal));
    }

    [Fact]
    public void Arms_OfTwoRuns_AreHeldAgainstEachOther()
    {
        // Side by side 10 mm apart, each 9.5 mm thick all round where nothing is measured: they touch, on both runs, whichever is looked at.
        var aircraft = Of(Placed("one"), Ball("far", 5000, 0, 0)) with { Runs = [Placed("one"), Placed("two", 10)] };
        var both = Check(aircraft);
        foreach (var run in both.Runs)
            Assert.Contains("touch", Worst(run, ClearanceRules.Lever).Sentence);
        // One run by itself says the same.
        var alone = RunCheck.Check(aircraft, aircraft.Runs[1], Runs.Quick, new() { Cures = false });
        Assert.Equal(Worst(both.Runs[1], ClearanceRules.Lever).Sentence, Worst(alone, ClearanceRules.Lever).Sentence);
    }

    [Fact]
    public void TwoClashesOfTheSameTwoRuns_AreBothTold_EachOnce()
    {
        // Arms beside each other touch; and the conduit of the one, straight to its anchor, goes through the other's arm as well.
        var one = Placed("one") with
        {
            Cable = new()
            {
                Core = Runs.Sound.Cable!.Core,
                Conduit = new() { Outside = Levers.Mm(5) },
                Ends = new() { Leaves = At(2600, 10, 530), LeavesAlong = new(1, 0, 0), Arrives = At(3400, 10, 530), ArrivesAlong = new(1, 0, 0) },
                Length = Levers.Mm(800),
            },
        };
        var both = Check(Of(one, Ball("far", 5000, 0, 0)) with { Runs = [one, Placed("two", 10)] });
        var told = SharedFindings.Of(both).Where(s => s.Finding.Rule is ClearanceRules.Lever or ClearanceRules.Conduit).ToList();
        Assert.All(told, s => Assert.Equal(["one", "two"], s.Runs.Order()));
        Assert.Equal(2, told.Count);
        Assert.Contains(told, s => s.Finding.Sentence.Contains("one conduit", StringComparison.Ordinal));
        Assert.Contains(told, s => !s.Finding.Sentence.Contains("conduit", StringComparison.Ordinal));
    }

    private static Run Routed(Toleranced<Length>? outside) => Handle("flap") with
    {
        Cable = new()
        {
            Core = Runs.Sound.Cable!.Core,
            Conduit = new() { Outside = outside },
            Ends = new() { Leaves = At(970, 0, 700), LeavesAlong = new(-1, 0, 0), Arrives = At(170, 0, 700), ArrivesAlong = new(-1, 0, 0) },
            Length = Levers.Mm(800),
        },
    };

    [Fact]
    public void Conduit_InTheWayOfWhatMoves_IsToldWithThePlaceOfTheMover()
    {
        // A straight conduit from 970 to 170; a ball that comes down on it from above, 100 mm at most.
        Body Comes(double waterline) => Ball("knee", 600, 0, waterline, new SlideJoint("down", new(0, 0, -1), Mm(0), Mm(100)));
        var hit = Worst(First(Of(Routed(Levers.Mm(5)), Comes(810))), ClearanceRules.Conduit);
        Assert.Equal(Verdict.Fail, hit.Verdict);
        Assert.Contains("flap conduit and knee touch with knee down at", hit.Sentence);
        // The same with an outside that was taken for it is a caution, and says so.
        var taken = Worst(First(Of(Routed(null), Comes(810))), ClearanceRules.Conduit);
        Assert.Equal(Verdict.Caution, taken.Verdict);
        Assert.Contains("cable.conduit.outside", taken.Why);
        // 60 mm higher it stays clear: 60 less ball, conduit, and what the lie may move.
        var answer = First(Of(Routed(Levers.Mm(5)), Comes(870)));
        Assert.Equal(Verdict.Clear, Worst(answer, ClearanceRules.Conduit).Verdict);
        var pair = answer.Ends.Single(e => e.Part == EndPart.Conduit).Pairs.Single();
        var moved = answer.Route!.Spread!.Moved;
        Assert.InRange(0.070 - 0.010 - 0.0025 - moved, pair.Lower - 1e-4, pair.Upper + 1e-4);
        // The route leaves what moves to the proof over the joints, and keeps what stands still.
        Assert.Empty(answer.Route.Gaps);
        Assert.Equal("box", First(Of(Routed(Levers.Mm(5)), Ball("box", 600, 0, 800))).Route!.Gaps.Single().Name);
    }

    [Fact]
    public void Conduit_OfOneRun_IsHeldAgainstTheHandleOfAnotherAndNotItsOwn()
    {
        // The other handle's shank passes behind the panel, 9 mm above the first conduit's line.
        var aircraft = Of(Routed(Levers.Mm(5)), Ball("far", 5000, 0, 0)) with { Runs = [Routed(Levers.Mm(5)), Handle("other", 0, 709)] };
        var names = Check(aircraft).Runs[0].Ends.Single(e => e.Part == EndPart.Conduit).Pairs.Select(p => p.Second.Name).ToList();
        Assert.Equal(["other"], names);
    }

    [Fact]
    public void Sheets_WithAnOutline_AreObstaclesForOtherHandles()
    {
        Sheet Console(double waterline, bool outlined) => new()
        {
            Id = "console",
            At = At(1060, 0, waterline),
            Normal = new(0, 0, 1),
            Thickness = Levers.Mm(2),
            Outline = outlined ? [At(1010, -100, waterline), At(1200, -100, waterline), At(1200, 100, waterline), At(1010, 100, waterline)] : [],
        };
        RunAnswer With(double waterline, bool outlined) => First(Of(Handle("knob"), Ball("far", 5000, 0, 0)) with { Sheets = [Panel, Console(waterline, outlined)] });
        // The knob's lowest point at 685; a console just there, and one 20 mm lower.
        var hit = With(690, true);
        Assert.Contains(hit.Findings, f => f.Rule == ClearanceRules.Pair && f.Verdict == Verdict.Fail && f.Sentence.Contains("knob and console touch", StringComparison.Ordinal));
        var pair = With(665, true).Clearance!.Pairs.Single(p => p.Second.Name == "console");
        Assert.InRange(0.020, pair.Lower - 1e-9, pair.Upper + 1e-9);
        // Not measured how far it goes, it is none; and a knob square in its own sheet is not held against it.
        Assert.DoesNotContain(With(690, false).Clearance!.Pairs, p => p.Second.Name == "console");
        Assert.DoesNotContain(hit.Clearance!.Pairs, p => p.Second.Name == "panel");
        Assert.Null(hit.Clearance.OwnSheet);
    }

    [Fact]
    public void Yoke_ThroughItsPanel_IsHeldAgainstItButForItsShaft()
    {
        // The panel's face at 1000; bar and horns 20 mm thick about a hub that comes forward to 1040 or 1005.
        var panel = Panel with { Outline = [At(1000, -300, 600), At(1000, 300, 600), At(1000, 300, 800), At(1000, -300, 800)] };
        CockpitAnswer Yoke(double hub) => Check(Of(Handle("knob", 0, 500), new Body
        {
            Id = "yoke",
            ReadyMade = new Yoke
            {
                Hub = At(hub, 0, 700),
                ShaftLength = Levers.Mm(200),
                ShaftDiameter = Levers.Mm(30),
                Width = Levers.Mm(300),
                Horn = Levers.Mm(80),
                RimDiameter = Levers.Mm(20),
                Travel = Mm(150),
                Turn = Deg(80),
            },
        }) with
        { Sheets = [panel] }).Cockpit!;
        var clear = Yoke(1040);
        Assert.Equal(("yoke", "shaft", "panel"), (clear.Through.Single().FirstBody, clear.Through.Single().FirstPart, clear.Through.Single().SecondBody));
        var pair = clear.Movers.Single();
        Assert.InRange(0.030, pair.Lower - 1e-9, pair.Upper + 1e-9);
        var struck = Yoke(1005).Movers.Single();
        Assert.True(struck.Hits);
        Assert.NotEqual("shaft", struck.Found.FirstPart);
    }

    [Fact]
    public void Knob_LeaningOverItsOwnSheet_IsHeldAgainstIt()
    {
        // 30 mm across and 20 mm out: leaning 20 deg the rim's lowest point is (20 + 0.8) cos 20 - 15 sin 20 above the middle of a sheet of 1.6 mm.
        RunAnswer Lean(double degrees, double outward) => First(Of(
            Handle("knob").WithEnd(e => e with { Tilt = new(Deg(degrees), Deg(0)), Shank = e.Shank with { Out = Levers.Mm(outward) } }), Ball("far", 5000, 0, 0)));
        var clear = Lean(20, 20);
        var found = Worst(clear, ClearanceRules.OwnSheet);
        Assert.Equal(Verdict.Clear, found.Verdict);
        var closed = (0.0208 * Math.Cos(20 * Math.PI / 180)) - (0.015 * Math.Sin(20 * Math.PI / 180)) - 0.0008;
        Assert.InRange(closed, clear.Clearance!.OwnSheet!.Lower - 1e-9, clear.Clearance.OwnSheet.Upper + 1e-9);
        Assert.Equal(clear.Clearance.OwnSheet.Lower, clear.Find(found.Figure!)!.Value);
        var struck = Worst(Lean(20, 4), ClearanceRules.OwnSheet);
        Assert.Equal(Verdict.Fail, struck.Verdict);
        Assert.Contains("a longer shank", struck.Sentence);
    }
}
