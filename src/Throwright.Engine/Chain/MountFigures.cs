using Throwright.Engine.Findings;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>The figures of a searched mount, each with how it was come by. They take a search, so they stand apart from the run's own.</summary>
public static class MountFigures
{
    public const string LeastTilt = "least-tilt", NoneBelow = "none-below", Clearance = "tilt-clearance", Facing = "facing-then";

    private static readonly SourceRef Theory = new("project", "docs/theory/mount.md", Evidence.Derived), Proof = new("project", "docs/theory/clearance.md", Evidence.Derived);

    public static EquatableList<string> Ids { get; } = [LeastTilt, NoneBelow, Clearance, Facing];

    public static IEnumerable<Figure> Of(MountAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var search = answer.Wedged ?? answer.Straight;
        var (most, noWedge, play) = (Published.Get("mount/most"), Published.Get("mount/no-wedge"), Published.Get("mount/play"));
        FigureStep wanted = new("c", "clearance to reach", answer.Wanted, QuantityKind.Length, From: "clearance asked, or the usual one");
        FigureStep error = new("e", "error of each lean as built", play.Value, QuantityKind.Angle, From: "mount/play");
        FigureStep limit = new("m", "largest lean looked at", most.Value, QuantityKind.Angle, From: "mount/most");
        if (answer.Tilt is { } tilt)
        {
            yield return new()
            {
                Id = LeastTilt,
                Name = "smallest tilt that clears",
                Kind = QuantityKind.Angle,
                Value = tilt.Total,
                Rounding = Rounding.Up,
                Formula = MountFindings.LeanFormula + ", least over the tilts (A, B) at which every pair keeps c over all joint positions; then to tenths of a degree, and proved again with e either way",
                Inputs = [wanted, error, limit],
                Steps =
                [
                    new("A", "lean toward up in the sheet", Math.Atan(tilt.Up), QuantityKind.Angle),
                    new("B", "lean toward right", Math.Atan(tilt.Right), QuantityKind.Angle),
                    new("h", "middle of the sheet to the back of the knob, along the shank", answer.Length, QuantityKind.Length),
                    new("n", "ranges of tilts looked at", search.Cells, QuantityKind.Ratio),
                ],
                Holds = answer.Wedged is null ? "plain washers take this lean up; no wedge" : "with a pair of wedges, whose lift of the knob is counted",
                Uncertainty = $"between this and \"{NoneBelow}\" neither is proved: a smaller tilt may clear, by that much at most",
                Sources = [.. new[] { Theory, Proof, most.Source, play.Source }.Distinct()],
            };
        }

        yield return new()
        {
            Id = NoneBelow,
            Name = "no tilt below this clears",
            Kind = QuantityKind.Angle,
            Value = search.NoneBelow,
            Rounding = Rounding.Down,
            Formula = "least lean of all ranges of tilts that are not proved to fail; a range fails where U + R w < c: U nearest found at its middle tilt, R reach of the handle, w farthest turn from the middle",
            Inputs = [wanted, limit],
            Steps = [new("w", "lean that needs no wedge", noWedge.Value, QuantityKind.Angle, From: "mount/no-wedge")],
            Uncertainty = $"{search.Cells} ranges of tilts looked at",
            Sources = [Theory, Proof, noWedge.Source],
        };

        if (answer.Best is { } best)
        {
            yield return new()
            {
                Id = Clearance,
                Name = "least distance of the tilted handle from everything, over all positions",
                Kind = QuantityKind.Length,
                Value = best.Clearance.Lower,
                Rounding = Rounding.Down,
                Formula = ClearanceFindings.Formula,
                Inputs = [wanted],
                Steps =
                [
                    new("l", "proved to be at least", best.Clearance.Lower, QuantityKind.Length),
                    .. double.IsFinite(best.Clearance.Upper) ? [new FigureStep("u", "nearest that was found", best.Clearance.Upper, QuantityKind.Length)] : (FigureStep[])[],
                    new("now", "as it is mounted now", Math.Max(0, answer.Now.Lower), QuantityKind.Length),
                ],
                Holds = "rigid bodies as entered, with the tolerances of their places added all round",
                Sources = [Proof],
            };
        }

        if (answer is { FacingThen: { } then, FacingNow: { } now })
        {
            yield return new()
            {
                Id = Facing,
                Name = "angle between the tilted shank and the line from knob to eye",
                Kind = QuantityKind.Angle,
                Value = then,
                Formula = MountFindings.FacingFormula,
                Steps = [new("now", "as it is mounted now", now, QuantityKind.Angle)],
                Sources = [Theory],
            };
        }
    }
}
