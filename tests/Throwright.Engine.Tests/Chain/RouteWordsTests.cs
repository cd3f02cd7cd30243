using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Engine.Route;
using Throwright.Engine.Tests.Throw;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Chain;

/// <summary>What the words of the file's conduit mean: which end a mark counts from, which way a line runs, which side a limit is on.</summary>
public class RouteWordsTests
{
    private static Toleranced<Length> Off(double mm, double less, double more) => new(new(mm / 1000), less / 1000, more / 1000);

    private static PointAt At(double x, double y, double z) => new(Levers.Mm(x, 0), Levers.Mm(y, 0), Levers.Mm(z, 0));

    /// <summary>From the origin forward, a clamp on the way, to 800 mm and across.</summary>
    private static Run Quarter(Func<Cable, Cable> change) => Runs.Sound with
    {
        Cable = change(Runs.Sound.Cable! with
        {
            Bends = [],
            Length = null,
            LongestStraight = null,
            Ends = new() { Leaves = At(0, 0, 0), LeavesAlong = new(1, 0, 0), Arrives = At(800, 800, 0), ArrivesAlong = new(0, 1, 0), InBushing = Runs.Mm(20), InAnchor = Runs.Mm(10) },
        }),
    };

    private static RunAnswer Check(Run run) => RunCheck.Check(Runs.Aircraft, run, Runs.Quick);

    private static Cable Marked(Cable cable, Toleranced<Length> mark, double length) => cable with
    {
        Length = Levers.Mm(length, 0),
        Supports = [new() { Place = At(560, 240, 0), Along = new(1, 1, 0), Kind = SupportHold.TightClamp, FromAnchor = mark }],
    };

    /// <summary>A mark is made from the anchor: more conduit lies before the clamp, none behind it.</summary>
    [Fact]
    public void Mark_OfATightClamp_StaysWhereItIsWithMoreConduit()
    {
        var answer = Check(Quarter(c => Marked(c, Levers.Mm(670, 0), 1370)));
        var planned = answer.Route!.Lie!;
        var longer = LengthToOrder.With(planned, 0.02).Answer.Lie!;
        Assert.Equal(0.670, planned.Spans[1].Length, 1e-9);
        Assert.Equal(0.670, longer.Spans[1].Length, 1e-9);
        Assert.Equal(planned.Spans[0].Length + 0.02, longer.Spans[0].Length, 1e-9);
        Assert.Equal(0.670, answer.Route.Order!.Longer.Answer.Lie!.Spans[1].Length, 1e-9);
    }

    /// <summary>A mark that may be off makes the lie unsure.</summary>
    [Fact]
    public void Mark_WithLimits_MovesTheLie()
    {
        static double Width(RunAnswer a) => a.Route!.Spread!.Moved;
        double sure = Width(Check(Quarter(c => Marked(c, Levers.Mm(670, 0), 1370)))), unsure = Width(Check(Quarter(c => Marked(c, Levers.Mm(670, 12), 1370))));
        Assert.InRange(unsure, 1.2 * sure, 4 * sure);
    }

    /// <summary>Limits to one side only are drawn to that side: as the place in their middle with half of them each way.</summary>
    [Fact]
    public void Place_WithLimitsToOneSide_IsDrawnToThatSide()
    {
        RunAnswer With(Toleranced<Length> station) => Check(Quarter(c => c with { Length = Levers.Mm(1340, 0), Ends = c.Ends! with { Arrives = new(station, Levers.Mm(800, 0), Levers.Mm(0, 0)) } }));
        // Nearer to the knob there is more slack, and the bends are tighter.
        var (near, far) = (With(Off(800, 30, 0)).Route!.Spread!, With(Off(800, 0, 30)).Route!.Spread!);
        Assert.True(near.LeastRadius < far.LeastRadius, $"{near} {far}");
    }

    /// <summary>Just behind the knob the conduit runs on straight through a clamp, and only then turns back a long way: no loop.</summary>
    [Fact]
    public void Clamp_BeforeALongWayBack_IsPassedAsTheConduitComes()
    {
        var run = Quarter(c => c with
        {
            Supports = [new() { Place = At(150, 0, 0), Along = new(1, 0, 0), Kind = SupportHold.SlidingClamp }],
            Length = Levers.Mm(1250, 0),
            Ends = c.Ends! with { Arrives = At(-400, 300, 0), ArrivesAlong = new(-1, 0, 0) },
        });
        var lie = Check(run).Route!.Lie!;
        Assert.True(lie.Case.Supports[0].Along!.Value.X > 0);
        Assert.InRange(lie.BendTotal, Math.PI, 1.5 * Math.PI);
    }

    /// <summary>The longest straight does not depend on which end is called the first, nor on where the nodes are.</summary>
    [Fact]
    public void LongestStraight_FromTheOtherEnd_IsTheSame()
    {
        static RunRoute Route(bool back) => Check(Quarter(c => c with
        {
            Length = Levers.Mm(1370 + 1500, 0),
            Supports = [new() { Place = At(800, 60, 0), Kind = SupportHold.Grommet }],
            Ends = c.Ends! with
            {
                Leaves = back ? At(800, 1560, 0) : At(0, 0, 0),
                LeavesAlong = back ? new(0, -1, 0) : new(1, 0, 0),
                Arrives = back ? At(0, 0, 0) : At(800, 1560, 0),
                ArrivesAlong = back ? new(-1, 0, 0) : new(0, 1, 0),
            },
        })).Route!;
        var there = Route(false);
        Assert.True(there.LongestStraight > 0.01);
        Assert.Equal(there.LongestStraight, Route(true).LongestStraight, 1e-6);
    }

    /// <summary>Cables in steps of a foot: what more conduit does is told for an inch, or 25 mm, and said so.</summary>
    [Fact]
    public void More_IsToldForWhatItWasWorkedOut()
    {
        var answer = Check(Quarter(c => c with { Ends = c.Ends! with { OrderStep = Runs.Mm(304.8) } }));
        var shown = answer.Find("conduit-order")!.Steps.Select(s => s.Name).ToList();
        var inch = Runs.Aircraft.Display.Length == LengthUnit.Inch ? "1 in" : "25 mm";
        Assert.Contains($"{inch} more: moves the lie by", shown);
        Assert.Contains($"{inch} less: moves the lie by", shown);
        Assert.DoesNotContain(shown, s => s.Contains("step", StringComparison.Ordinal));
    }

    /// <summary>The order has as many loop clamps as the file has clamps, grommets not counted, of the dash that the check names.</summary>
    [Fact]
    public void Clamps_Ordered_AreThoseOfTheFile()
    {
        var answer = Check(Quarter(c => c with
        {
            Conduit = c.Conduit! with { Outside = Levers.Mm(4.7625, 0.1) },
            Supports = [new() { Place = At(790, 560, 0) }, new() { Place = At(560, 240, 0), Kind = SupportHold.Grommet }, new() { Place = At(240, 30, 0), Kind = SupportHold.SlidingClamp }],
        }));
        var line = Purchase.Of(Runs.Aircraft, answer).Hardware.Single(l => l.Number.StartsWith("MS21919", StringComparison.Ordinal));
        Assert.Equal(("MS21919-3", 2), (line.Number, line.Quantity));
        Assert.Contains("dash 3", answer.Findings.Single(f => f.Rule == "route/clamps").Sentence, StringComparison.Ordinal);

        var grommets = Check(Quarter(c => c with { Supports = [new() { Place = At(560, 240, 0), Kind = SupportHold.Grommet }] }));
        Assert.DoesNotContain(Purchase.Of(Runs.Aircraft, grommets).Hardware, l => l.Number.StartsWith("MS21919", StringComparison.Ordinal));
    }
}
