using Throwright.Engine.Chain;
using Throwright.Engine.HandForce;
using Throwright.Formats.Characters;
using Throwright.Formats.Drawing;
using Throwright.Papers.Ladder;
using Throwright.Papers.Marks;
using Throwright.Shapes;

namespace Throwright.Papers.Curves;

/// <summary>Ladder, lever angle and hand force under one another on one abscissa.</summary>
public static class LadderSheet
{
    private const double Gap = 26;

    public static ScaledPicture Page(LadderLayout layout, TravelCurve? curve, CurveLabels? labels = null, PageOptions? options = null)
    {
        labels ??= new();
        var sketch = new Sketch(Lines.Px);
        var frame = new LadderDrawing.PageFrame(layout, options ?? new(), sketch, CurveDrawing.LeastLeft);
        var height = CurveDrawing.Draw(sketch, frame, layout, curve, labels, frame.Draw() + Gap);
        var title = $"Travel ladder with lever angle and hand force{(layout.Labels.Run.Length > 0 ? ", " + layout.Labels.Run : "")}";
        return new(
            sketch.ToPicture(frame.Width, height, title, $"{LadderDrawing.Describe(layout)} {CurveDrawing.Describe(layout, curve, labels)}", Tones.Paper),
            frame.Zero * Lines.Px,
            frame.Scale * Lines.Px);
    }

    /// <summary>The limit of the hand force, or what is needed before there is a force.</summary>
    public static CurveLabels LabelsOf(RunAnswer run)
    {
        ArgumentNullException.ThrowIfNull(run);
        var limit = run.Findings.FirstOrDefault(f => f.Rule == HandForceRules.Hand)?.Limit;
        var needs = run.Needs.Where(n => n.Opens.Contains("hand force", StringComparison.Ordinal)).Select(n => n.Name).ToList();
        var labels = new CurveLabels { ForceLimit = limit?.Value };
        return needs.Count == 0 ? labels : labels with { ForceNeeds = "force: needs " + string.Join(", ", needs) };
    }

    public static CharacterBlock Characters(LadderLayout layout, TravelCurve? curve, CurveLabels? labels = null, CharacterOptions? options = null) =>
        CharacterBlock.Stacked(
            LadderDrawing.Characters(layout, options),
            new CharacterBlock([new CharacterLine(EquatableList<CharacterSpan>.Empty)]),
            CurveDrawing.Characters(layout, curve, labels, options));
}
