using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Measure;
using Throwright.Engine.Model;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Tests.Chain;

/// <summary>Taped points whose readings disagree: what is said, and how far the place then counts.</summary>
public class DisagreeingPointsTests
{
    private static readonly FigureWriter Say = new(new Display());

    private static readonly (string Name, Vector3 At)[] Marks =
    [
        ("A", new(0, -0.5, 0)), ("B", new(0, 0.5, 0.05)), ("C", new(0.9, -0.45, -0.1)), ("D", new(0.8, 0.5, -0.4)), ("E", new(0.7, 0.1, 0.5)), ("F", new(1.3, 0, 0.1)), ("G", new(0.4, -0.1, -0.5)),
    ];

    private static NamedPoint Mark(string name, Vector3 at) =>
        new(name, new(new(new(at.X), 0, 0, Spread.Uniform), new(new(at.Y), 0, 0, Spread.Uniform), new(new(at.Z), 0, 0, Spread.Uniform)) { Name = name });

    private static NamedPoint Taped(string name, Vector3 at, int count, string wrong = "", double by = 0) => new(name, PointAt.NotKnown(name), new()
    {
        Distances = [.. Marks.Take(count).Select(m => new TapeDistance(m.Name, new(new((at - m.At).Size + (m.Name == wrong ? by : 0)), 0, 0, Spread.Uniform)))],
        Tape = new Length(0.001),
        Side = new(Side.Above, ""),
    });

    private static EquatableList<SurveyedPoint> Survey(params NamedPoint[] taped) => PointSurvey.Of([.. Marks.Select(m => Mark(m.Name, m.At)), .. taped]);

    private static Finding Readings(EquatableList<SurveyedPoint> all, string name) =>
        PointFindings.Of(all.Single(p => p.Point.Name == name), all, Say).Single(f => f.Rule == TapeRules.Readings);

    [Fact]
    public void AorB_IsSaidWithBothErrorsAndTheDistanceThatTells()
    {
        // Four readings explain any error alike; E, F and G are left to measure from.
        var all = Survey(Taped("P", new(0.45, 0.15, 0.2), 4, "C", 0.02));
        var point = all.Single(p => p.Point.Name == "P").Answer!.Point!;
        Assert.True(point.Suspects.Count > 1);
        Assert.Contains(point.Suspects, s => s.Reading.From.Name == "C" && Math.Abs(s.Error - 0.02) < 1e-6);
        var finding = Readings(all, "P");
        Assert.Equal(Verdict.Caution, finding.Verdict);
        Assert.Contains($"the distance from C, which then reads {Say.Length(0.02)} too long", finding.Sentence, StringComparison.Ordinal);
        Assert.All(point.Suspects, s => Assert.Contains(s.Reading.Name, finding.Sentence, StringComparison.Ordinal));
        var telling = point.Telling!;
        Assert.Contains(telling.From.Name, (string[])["E", "F", "G"]);
        Assert.Contains(finding.Remedies, r => r.Text.Contains($"measure from {telling.From.Name} to this point", StringComparison.Ordinal));
    }

    [Fact]
    public void AorB_WithNoPointLeft_NamesTheDirectionToMeasureFrom()
    {
        EquatableList<SurveyedPoint> all = PointSurvey.Of([.. Marks.Take(4).Select(m => Mark(m.Name, m.At)), Taped("P", new(0.45, 0.15, 0.2), 4, "C", 0.02)]);
        Assert.Null(all[^1].Answer!.Point!.Telling);
        Assert.Contains(Readings(all, "P").Remedies, r => r.Text.Contains("from a mark straight ", StringComparison.Ordinal));
    }

    /// <summary>A mark that is not where the plans say: every point measured from it accuses it.</summary>
    [Fact]
    public void Base_AccusedByThreePoints_MayBeWrongItself()
    {
        var all = Survey(Taped("P", new(0.45, 0.15, 0.2), 7, "C", 0.02), Taped("Q", new(0.3, -0.2, 0.1), 7, "C", 0.021), Taped("R", new(0.5, 0.1, -0.1), 7, "C", 0.019), Taped("S", new(0.2, 0.2, 0), 7, "B", 0.02));
        foreach (var name in (string[])["P", "Q", "R"])
            Assert.Contains("3 readings from C (P, Q, R) are among those that may be wrong: the place of C itself may be.", Readings(all, name).Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("itself", Readings(all, "S").Sentence, StringComparison.Ordinal);
    }

    /// <summary>The limits that go on reach at least to where the point is without the wrong reading, and are never narrower than agreeing ones.</summary>
    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    public void Limits_WhereReadingsDisagree_HoldTheTruth(int count)
    {
        foreach (var (name, _) in Marks.Take(count))
        {
            Vector3 truth = new(0.45, 0.15, 0.2);
            var good = Survey(Taped("P", truth, count))[^1].Point.At;
            var point = Survey(Taped("P", truth, count, name, 0.0254))[^1];
            var bad = point.Point.At;
            if (point.Answer!.Point is not { } solved)
                continue;
            Assert.True(solved.Widened > 1 && solved.Suspects.Count > 0);
            foreach (var (at, good1, true1) in new[] { (bad.Station, good.Station, truth.X), (bad.Buttline, good.Buttline, truth.Y), (bad.Waterline, good.Waterline, truth.Z) })
            {
                Assert.InRange(true1, at.Least, at.Most);
                Assert.True(at.Plus >= good1.Plus);
            }

            var known = PointFindings.Of(point, [point], Say).Single(f => f.Rule == TapeRules.Point);
            Assert.Equal(Verdict.Caution, known.Verdict);
            Assert.Contains("widened", known.Sentence, StringComparison.Ordinal);
        }
    }
}
