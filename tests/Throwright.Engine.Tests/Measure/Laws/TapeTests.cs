using Throwright.Engine.Findings;
using Throwright.Engine.Measure;
using Throwright.Engine.Model;
using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;
using MatchedPoint = Throwright.Engine.Measure.MatchedPoint;

namespace Throwright.Engine.Tests.Measure.Laws;

public class TapeTests
{
    private static readonly FigureWriter Say = new(new Display());
    private static readonly KnownPoint A = new("A", new(0, -0.5, 0)), B = new("B", new(0, 0.5, 0)), C = new("C", new(0.9, 0.1, 0)), D = new("D", new(0.5, 0, 0.6)), E = new("E", new(0.2, 0.4, -0.5));

    private static TapeCase From(Vector3 at, Side? hint, params KnownPoint[] known) =>
        new([.. known.Select(k => new TapeReading(k, (at - k.Place).Size, 0.001))], hint);

    [Fact]
    public void Point_NoErrors_IsRecovered()
    {
        for (var n = 0; n < 200; n++)
        {
            var random = new CounterRandom(41, n);
            Vector3 at = new(random.Uniform(0), random.Uniform(1) - 0.5, 0.15 + (0.4 * random.Uniform(2)));
            var four = TapeSolver.Solve(From(at, Side.Above, A, B, C, E)).Point!;
            Assert.InRange((four.Place - at).Size, 0, 1e-9);
            var three = TapeSolver.Solve(From(at, Side.Above, A, B, C)).Point!;
            Assert.InRange((three.Place - at).Size, 0, 1e-9);
            Assert.Equal(0, three.Redundant);
            // The other place is the mirror image at the plane of the known points.
            Assert.InRange((three.Mirror!.Value - new Vector3(at.X, at.Y, -at.Z)).Size, 0, 1e-8);
            Assert.Empty(four.Suspects);
        }
    }

    /// <summary>Whole numbers of inches, by Pythagoras: from three corners of a box to a fourth, worked by hand.</summary>
    [Fact]
    [Trait("Check", "M2")]
    public void Point_FromWholeNumbers_IsTheCornerOfTheBox()
    {
        // Corners (0,0,0), (12,0,0), (0,16,0); the point at (12, 16, 21): distances 29 (20-21-29), sqrt(697), sqrt(585).
        KnownPoint[] corners = [new("O", default), new("X", new(12, 0, 0)), new("Y", new(0, 16, 0))];
        double[] distances = [29, Math.Sqrt((16 * 16) + (21 * 21)), Math.Sqrt((12 * 12) + (21 * 21))];
        var found = TapeSolver.Solve(new([.. corners.Zip(distances, (c, d) => new TapeReading(c, d, 0.05))], Side.Above)).Point!;
        Assert.Equal(12, found.Place.X, 1e-9);
        Assert.Equal(16, found.Place.Y, 1e-9);
        Assert.Equal(21, found.Place.Z, 1e-9);
    }

    [Fact]
    public void Readings_AlongADirection_FixThePoint()
    {
        Vector3 at = new(0.4, 0.1, 0.3), up = new(0, 0, 1), aft = new(1, 0, 0), right = new(0, 1, 0);
        // Plumb line and a waterline: no distance at all.
        var plumb = TapeSolver.Solve(new([new(new("B", new(0.4, 0.1, 0)), 0, 0.001, aft), new(new("B", new(0.4, 0.1, 0)), 0, 0.001, right), new(new("datum", default), 0.3, 0.001, up)])).Point!;
        Assert.InRange((plumb.Place - at).Size, 0, 1e-12);
        Assert.Null(plumb.Mirror);
        // Two distances and a level: two places, told apart by a side.
        EquatableList<TapeReading> two = [new(A, (at - A.Place).Size, 0.001), new(C, (at - C.Place).Size, 0.001), new(new("L", new(5, 5, 0.3)), 0, 0.001, up)];
        Assert.Equal(NoPointReason.Mirrored, TapeSolver.Solve(new(two)).Refusal?.Reason);
        Assert.InRange((TapeSolver.Solve(new(two, Near: at)).Point!.Place - at).Size, 0, 1e-9);
        // A level that is off by an inch beside four distances is named as such.
        EquatableList<TapeReading> wrong = [.. From(at, null, A, B, C, D, E).Readings, new(new("L", new(0, 0, 0.3254)), 0, 0.001, up, "the level with L")];
        Assert.Equal("the level with L", TapeSolver.Solve(new(wrong)).Point!.Suspects[0].Reading.Name);
    }

    [Theory]
    [InlineData(Side.Above, 0.3)]
    [InlineData(Side.Below, -0.3)]
    public void Hint_OfTwoMirroredPlaces_Chooses(Side hint, double z)
    {
        Vector3 at = new(0.4, 0.1, 0.3);
        Assert.Equal(z, TapeSolver.Solve(From(at, hint, A, B, C)).Point!.Place.Z, 1e-9);
    }

    [Theory]
    [InlineData(Side.RightOf, 1)]
    [InlineData(Side.LeftOf, -1)]
    [InlineData(Side.AftOf, 1)]
    [InlineData(Side.ForwardOf, -1)]
    public void Hint_EachSide_MeansItsOwnAxis(Side hint, int sign)
    {
        // Known points in the plane x + y = 0: the mirror image differs along both.
        KnownPoint[] known = [new("P", new(0, 0, 0)), new("Q", new(0.5, -0.5, 0.1)), new("R", new(0.1, -0.1, 0.8))];
        Vector3 at = new(0.5, 0.2, 0.3);
        var place = TapeSolver.Solve(From(at, hint, known)).Point!.Place;
        Assert.Equal(sign, Math.Sign(place.X + place.Y));
    }

    [Fact]
    public void Degenerate_EachIsRefusedWithItsReason()
    {
        Vector3 at = new(0.4, 0.1, 0.3);
        Refused(From(at, null, A, B), NoPointReason.TooFewReadings, "Three distances");
        Refused(From(at, null, A, B, new("M", new(0, 0.1, 0))), NoPointReason.KnownPointsInLine, "one line");
        Refused(From(at, null, A, B, C), NoPointReason.Mirrored, "Two places fit");
        Refused(From(at, Side.RightOf, A, B, C), NoPointReason.HintDoesNotTell, "doesn't tell");
        Refused(From(new(0.4, 0.1, 0), Side.Above, A, B, C), NoPointReason.InThePlane, "plane");
        Refused(new([new(A, 0.1, 0.001), new(B, 0.1, 0.001), new(C, 0.1, 0.001)], Side.Above), NoPointReason.DoNotMeet, "don't meet");

        static void Refused(TapeCase of, NoPointReason reason, string words)
        {
            var refusal = TapeSolver.Solve(of).Refusal;
            Assert.Equal(reason, refusal?.Reason);
            Assert.Contains(words, refusal!.Say(Say));
            Assert.Equal(Verdict.NeedsInput, Assert.Single(TapeRules.Find(TapeSolver.Solve(of), new(0.001, new("project", "", Evidence.CommonPractice)), Say)).Verdict);
        }
    }

    [Fact]
    public void Findings_NamedReadingAndUnchecked_AreCautions()
    {
        Limit limit = new(0.003, new("project", "", Evidence.CommonPractice));
        Vector3 at = new(0.4, 0.1, 0.3);
        var three = TapeRules.Find(TapeSolver.Solve(From(at, Side.Above, A, B, C)), limit, Say).ToList();
        Assert.Equal([Verdict.Clear, Verdict.Caution], three.Select(f => f.Verdict));
        // Three points span a plane: the place mirrored at it fits as well, and only a look at the aircraft tells.
        Assert.Contains($"fit as well at ({Say.LengthNumber(0.4)}, {Say.LengthNumber(0.1)}, {Say.LengthNumber(-0.3)}) in", three[0].Sentence);
        KnownPoint f = new("F", new(0.9, -0.4, -0.2));
        var good = From(at, null, A, B, C, D, E, f);
        Assert.All(TapeRules.Find(TapeSolver.Solve(good), limit, Say), x => Assert.Equal(Verdict.Clear, x.Verdict));
        var wrong = good with { Readings = [.. good.Readings.Select(r => r.From == C ? r with { Distance = r.Distance + 0.0254 } : r)] };
        var finding = TapeRules.Find(TapeSolver.Solve(wrong), limit, Say).Single(x => x.Rule == TapeRules.Readings);
        Assert.Equal(Verdict.Caution, finding.Verdict);
        Assert.Contains("from C disagrees", finding.Sentence);
        // The place that such readings give is not known to what the tape alone would let one think.
        var known = TapeRules.Find(TapeSolver.Solve(wrong), limit, Say).Single(x => x.Rule == TapeRules.Point);
        Assert.Equal(Verdict.Caution, known.Verdict);
        Assert.Contains("The readings disagree, so what the tape's limits give is widened", known.Sentence);
    }

    /// <summary>The refusal says what to type: of two places the first by its word, the second by the other.</summary>
    [Theory]
    [InlineData(1, 0, 0, "aftOf", "forwardOf")]
    [InlineData(0, -2, 1, "leftOf", "rightOf")]
    [InlineData(0.1, 0, -0.2, "below", "above")]
    public void MirroredPlaces_AreParted_InTheWordsOfTheFile(double x, double y, double z, string first, string second)
    {
        NoPoint refusal = new(NoPointReason.Mirrored, [new(x, y, z), new(0, 0, 0)]);
        Assert.Contains($"\"side\": \"{first}\" beside the distances for the first, \"side\": \"{second}\" for the second", refusal.Say(Say));
    }

    [Fact]
    [Trait("Check", "M5")]
    public void Fit_TurnedAndShifted_IsRecovered_AndMissesAreAtTheMovedPoint()
    {
        Vector3 x = new(0.36, 0.48, -0.8), y = new(-0.8, 0.6, 0), z = Vector3.Cross(x, y), shift = new(1, -2, 3);
        Vector3 Carry(Vector3 a) => (a.X * x) + (a.Y * y) + (a.Z * z) + shift;
        EquatableList<MatchedPoint> points = [.. new[] { A, B, C, D, E }.Select(k => new MatchedPoint(k.Name, k.Place, Carry(k.Place)))];
        var fit = PointFit.Of(points)!;
        Assert.InRange(fit.Miss, 0, 1e-14);
        Assert.Equal(1, fit.Size, 1e-14);
        Assert.InRange((fit.Place(new(0.3, 0.2, 0.1)) - Carry(new(0.3, 0.2, 0.1))).Size, 0, 1e-14);
        var moved = PointFit.Of([.. points.Select((p, i) => i == 3 ? p with { To = p.To + new Vector3(0, 0, 0.02) } : p)])!;
        Assert.Equal(3, Enumerable.Range(0, 5).MaxBy(i => moved.Misses[i]));
        // Least squares: no small shift does better.
        double Squares(Vector3 by) => points.Select((p, i) => (moved.Place(p.From) + by - p.To - (i == 3 ? new Vector3(0, 0, 0.02) : default)).Size).Sum(m => m * m);
        foreach (var by in (Vector3[])[new(1e-4, 0, 0), new(0, 1e-4, 0), new(0, 0, 1e-4)])
            Assert.True(Squares(by) > Squares(default) && Squares(-by) > Squares(default));
        // A mirrored set is not fitted by mirroring.
        Assert.True(PointFit.Of([.. points.Select(p => p with { From = p.From with { Y = -p.From.Y } })])!.Miss > 0.05);
        Assert.Equal(25.4, PointFit.Of([.. points.Select(p => p with { To = 25.4 * p.To })])!.Size, 1e-12);
    }

    [Fact]
    public void Fit_TooFewOrInLine_IsNone()
    {
        static MatchedPoint Same(Vector3 v) => new("", v, v);
        Assert.Null(PointFit.Of([Same(default), Same(new(1, 0, 0))]));
        Assert.Null(PointFit.Of([Same(default), Same(new(1, 0, 0)), Same(new(2, 0, 0)), Same(new(5, 0, 0))]));
        Assert.NotNull(PointFit.Of([Same(default), Same(new(1, 0, 0)), Same(new(0, 1, 0))]));
    }
}
