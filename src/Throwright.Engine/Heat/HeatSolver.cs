using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes;

namespace Throwright.Engine.Heat;

/// <summary>Holds each part against the temperature of its place. Theory: docs/theory/heat.md.</summary>
public static class HeatSolver
{
    private static readonly string[] Metals = ["steel", "stainless", "alumin", "6061", "2024", "7075", "5052", "4130", "brass", "bronze", "titanium"];

    public static HeatAnswer Solve(HeatCase of)
    {
        ArgumentNullException.ThrowIfNull(of);
        return new(of.Parts.Select(Row).ToEquatableList());
    }

    private static HeatRow Row(PlacedPart part)
    {
        if (part.Limit is { } own)
            return new(part, own.Value, part.Hottest <= own.Value ? Verdict.Clear : Verdict.Fail, "", [own.Source, part.HottestFrom]);
        if (Metals.Any(m => part.Material.Contains(m, StringComparison.OrdinalIgnoreCase)))
            return new(part, null, Verdict.Clear, "metal: its strength is not at stake at these temperatures", [part.HottestFrom]);
        if (part.Place == PartPlace.EngineBay)
        {
            return new(part, null, Verdict.Fail, "no plastic on the control's path ahead of the firewall", [new("common-practice", "judgement", Evidence.CommonPractice)]);
        }

        var row = Published.Table("heat/plastics").Rows.FirstOrDefault(r => r.Find("material")?.Text.Equals(part.Material, StringComparison.OrdinalIgnoreCase) == true);
        if (row is null)
            return new(part, null, Verdict.NeedsInput, $"\"{part.Material}\" is not in the table of plastics", [Published.Table("heat/plastics").Source]);
        var margin = Published.Get(part.Clamped ? "heat/clamped-margin" : "heat/free-margin");
        var stands = double.PositiveInfinity;
        if (row.Find("distortion")?.Si is { } distortion)
            stands = distortion - margin.Value;
        if (row.Find("glass")?.Si is { } glass)
            stands = Math.Min(stands, glass - Published.Get("heat/glass-margin").Value);
        if (row.Find("operating")?.Si is { } operating)
            stands = Math.Min(stands, operating);
        return new(
            part, stands, part.Hottest <= stands ? Verdict.Clear : Verdict.Fail,
            part.Clamped ? "a plastic part under a nut creeps: check the nut again, or make it of metal" : "",
            [row.Source, margin.Source, part.HottestFrom, Published.Rule("23.603").Source]);
    }
}
