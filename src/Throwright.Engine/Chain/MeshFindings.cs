using Throwright.Engine.Findings;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>What is to be told of the meshes that a handle is held against.</summary>
internal static class MeshFindings
{
    public const string Open = "clearance/mesh-open";
    public const string Fit = "clearance/mesh-fit";

    /// <summary>Sizes in the mesh and on the aircraft that differ by more than this are not tape alone.</summary>
    private const double SizeShare = 0.03;

    /// <summary>Most that a point may miss by, m.</summary>
    private const double Limit = 0.01;

    private static readonly SourceRef Derived = new("project", "docs/theory/clearance.md", Evidence.Derived);
    private static readonly SourceRef Practice = new("project", "own choice: beyond it a point is more likely mistaken than badly measured", Evidence.CommonPractice);

    /// <param name="told">Names of meshes that were already said to be open.</param>
    public static IEnumerable<Finding> Of(EquatableList<PlacedMesh> meshes, HashSet<string> told, FigureWriter say)
    {
        var open = meshes.Where(m => m.IsOpen && !told.Contains(m.Name)).ToList();
        if (open.Count > 0)
        {
            yield return new()
            {
                Rule = Open,
                Verdict = Verdict.Caution,
                Sentence = $"Not closed: {string.Join("; ", open.Select(m => $"{m.Name} ({m.OpenEdges} open edges)"))}. Only what the mesh shows is proved.",
                Sources = [Derived],
                Why = "What a scan did not see, behind edges and through holes, is not in the picture: look there.",
            };
        }

        foreach (var mesh in meshes)
        {
            if (mesh.Fit is not { } fit)
                continue;
            var worst = fit.Misses.Max();
            var isSlip = Math.Abs(fit.Size - 1) > SizeShare;
            yield return new()
            {
                Rule = Fit,
                Figure = FigureOf(mesh),
                Verdict = isSlip ? Verdict.Fail : worst > Limit ? Verdict.Caution : Verdict.Clear,
                Sentence = isSlip
                    ? $"{mesh.Name}: the matched points lie {FigureText.Plain(fit.Size, 3)} times as far apart in the aircraft as in the mesh. Check its unit and the points."
                    : $"{mesh.Name}: the matched points agree within {say.Length(worst, Rounding.Up)}, point {Worst(fit) + 1} worst.",
                Limit = new(Limit, QuantityKind.Length, false),
                Sources = [Derived, Practice],
                Why = "What they miss by is added all round the mesh, more so far from the points.",
            };
        }
    }

    public static IEnumerable<Figure> Figures(EquatableList<PlacedMesh> meshes) =>
        from mesh in meshes
        let fit = mesh.Fit
        where fit is not null
        select new Figure
        {
            Id = FigureOf(mesh),
            Name = $"most that a matched point of {mesh.Name} misses by",
            Kind = QuantityKind.Length,
            Value = fit.Misses.Max(),
            Rounding = Rounding.Up,
            Formula = "the turn R and shift t with the least sum of |R m + t - a|^2 over the matched points m in the mesh, a in the aircraft; no change of size",
            Inputs = [],
            Steps = [.. fit.Misses.Select((miss, i) => new FigureStep($"e{i + 1}", $"point {i + 1} misses by", miss, QuantityKind.Length))],
            Sources = [Derived],
            Holds = "three points or more, not in one line",
            Uncertainty = $"distances between the points: {FigureText.Plain(fit.Size, 4)} times those in the mesh",
        };

    private static int Worst(Measure.PointFit fit) => Enumerable.Range(0, fit.Misses.Count).MaxBy(i => fit.Misses[i]);

    private static string FigureOf(PlacedMesh mesh) =>
        "mesh-" + new string([.. mesh.Name.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')]).Trim('-');
}
