using System.Text;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>Each taped point that a run hangs on: coordinates, readings, and how sure it is.</summary>
public static class PointFigures
{
    private static readonly SourceRef Theory = new("project", "docs/theory/measure.md", Evidence.Derived);

    /// <summary>"point-cowl-anchor": letters and digits of the name, the rest as hyphens.</summary>
    public static string IdOf(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var id = new StringBuilder("point");
        var gap = true;
        foreach (var c in name)
        {
            if (!char.IsAsciiLetterOrDigit(c))
            {
                gap = true;
                continue;
            }

            if (gap)
                id.Append('-');
            id.Append(char.ToLowerInvariant(c));
            gap = false;
        }

        return id.ToString();
    }

    internal static IEnumerable<Figure> Of(Aircraft aircraft, Run run) =>
        PointFindings.UsedBy(aircraft, run).Select(Of).OfType<Figure>().DistinctBy(f => f.Id);

    private static Figure? Of(SurveyedPoint point)
    {
        if (point is not { Case: { } of, Answer.Point: { } solved })
            return null;
        return new()
        {
            Id = IdOf(point.Point.Name),
            Name = $"{point.Point.Name}: two standard deviations along its worst axis",
            Kind = QuantityKind.Length,
            Value = 2 * solved.Axes[0].Sigma,
            Rounding = Rounding.Up,
            Formula = "least sum of ((distance - reading) / s)^2;  C = (sum e e^T / s^2)^-1;  twice the root of its largest eigenvalue; times sqrt(chi-square / spare readings) where they disagree",
            Inputs = of.Readings.Select((r, i) => new FigureStep($"d{i + 1}", r.Name, r.Distance, QuantityKind.Length, 3 * r.Sigma, 3 * r.Sigma, $"points.{point.Point.Name}")).ToEquatableList(),
            Steps =
            [
                new("x", "station", solved.Place.X, QuantityKind.Length, solved.Off.X, solved.Off.X),
                new("y", "buttline", solved.Place.Y, QuantityKind.Length, solved.Off.Y, solved.Off.Y),
                new("z", "waterline", solved.Place.Z, QuantityKind.Length, solved.Off.Z, solved.Off.Z),
                .. solved.Residuals.Select((r, i) => new FigureStep($"v{i + 1}", $"what is left at {r.Reading.Name}", r.Residual, QuantityKind.Length)),
                .. solved.Widened > 1 ? (FigureStep[])[new("w", "widened, the readings disagree", solved.Widened, QuantityKind.Ratio)] : [],
            ],
            Sources = [Theory],
            Uncertainty = "limits of coordinates and readings are three standard deviations; errors of the known points are counted, errors they share are not",
        };
    }
}
