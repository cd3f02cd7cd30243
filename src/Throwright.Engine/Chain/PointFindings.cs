using Throwright.Engine.Findings;
using Throwright.Engine.Measure;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>Findings on the taped points that a run hangs on.</summary>
public static class PointFindings
{
    /// <summary>Coordinates beside readings that are not those the readings give.</summary>
    public const string Noted = "measure/noted";

    // Coordinates are written to a thousandth of an inch or a hundredth of a millimetre.
    private const double Written = 5e-5;

    /// <summary>Findings on one point; none where it was typed as coordinates.</summary>
    /// <param name="all">Every point of the aircraft: a known point that several readings accuse may be wrong itself.</param>
    public static IEnumerable<Finding> Of(SurveyedPoint point, EquatableList<SurveyedPoint> all, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(point);
        ArgumentNullException.ThrowIfNull(say);
        var name = point.Point.Name;
        if (point.WaitsFor.Count > 0)
        {
            yield return new()
            {
                Rule = TapeRules.Point,
                Verdict = Verdict.NeedsInput,
                Sentence = $"{name} is measured from {string.Join(", ", point.WaitsFor)}, which {(point.WaitsFor.Count == 1 ? "has" : "have")} no place yet.",
                Sources = [],
            };
        }

        if (point.Answer is not { } answer)
            yield break;
        var wanted = Published.Get("measure/wanted");
        foreach (var finding in TapeRules.Find(answer, new(0.5 * wanted.Value, wanted.Source), say))
            yield return finding with { Sentence = $"{name}: {finding.Sentence}{(finding.Rule == TapeRules.Readings ? Base(point, all) : "")}", Figure = finding.Figure is null ? null : PointFigures.IdOf(name) };
        if (answer.Point is { } solved && point.Point.Taped?.Noted is { IsKnown: true } noted && (PointSurvey.Place(noted) - solved.Place).Size > Written)
        {
            yield return new()
            {
                Rule = Noted,
                Verdict = Verdict.Caution,
                Sentence = $"{name}: the coordinates noted beside the readings are {say.Length((PointSurvey.Place(noted) - solved.Place).Size, Rounding.Up)} off what the readings give; the readings count.",
                Sources = [new("project", "docs/theory/measure.md", Evidence.Derived)],
                Remedies = [new("Write them anew: throwright measure --write.")],
            };
        }
    }

    /// <summary>A known point that the readings of several points, or several of this one, have as their suspect.</summary>
    private static string Base(SurveyedPoint point, EquatableList<SurveyedPoint> all)
    {
        var accused = all.SelectMany(p => (p.Answer?.Point?.Suspects ?? []).Select(s => (p.Point.Name, Base: s.Reading.From.Name, s.Reading))).ToList();
        var shared = (point.Answer?.Point?.Suspects ?? []).Select(s => s.Reading.From.Name).Distinct()
            .Select(b => (Name: b, By: accused.Where(a => a.Base == b).ToList()))
            .Where(b => b.Name != PointSurvey.Datum && b.By.Count > 1)
            .OrderByDescending(b => b.By.Count)
            .ToList();
        if (shared.Count == 0)
            return "";
        var (known, by) = shared[0];
        return $" {by.Count} readings from {known} ({string.Join(", ", by.Select(b => b.Name).Distinct())}) are among those that may be wrong: the place of {known} itself may be.";
    }

    /// <summary>Findings on every taped point that the run needs, directly or to measure from.</summary>
    internal static IEnumerable<Finding> Of(Aircraft aircraft, Run run, FigureWriter say)
    {
        var used = UsedBy(aircraft, run).ToList();
        if (used.Count == 0)
            return [];
        var all = PointSurvey.Of(aircraft.Points);
        return used.SelectMany(p => Of(p, all, say));
    }

    /// <summary>Taped points that the run needs, directly or to measure from.</summary>
    internal static IEnumerable<SurveyedPoint> UsedBy(Aircraft aircraft, Run run)
    {
        if (aircraft.Points.All(p => p.Taped is null))
            return [];
        var byName = aircraft.Points.ToDictionary(p => p.Name);
        var used = new HashSet<string>();
        var open = new Stack<string>(PlacesOf(run).Select(p => p.Name));
        while (open.TryPop(out var name))
        {
            if (!byName.TryGetValue(name, out var point) || !used.Add(name) || point.Taped is null)
                continue;
            foreach (var from in PointSurvey.NamesIn(point.Taped))
                open.Push(from);
        }

        return PointSurvey.Of(aircraft.Points).Where(p => p.Point.Taped is not null && used.Contains(p.Point.Name));
    }

    private static IEnumerable<PointAt> PlacesOf(Run run)
    {
        var placed = run.LeverEnd?.Placed;
        PointAt?[] ends = [placed?.Pivot, placed?.Anchor, run.Cable?.Ends?.Leaves, run.Cable?.Ends?.Arrives, run.CockpitEnd?.Hole, run.CockpitEnd?.Sheet?.At];
        return ends.OfType<PointAt>().Concat(run.Cable?.Supports.Select(s => s.Place) ?? []);
    }
}
