using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes;

namespace Throwright.Engine.Chain;

/// <summary>One published rule held against one run.</summary>
/// <param name="Binds">Whom it binds, seen from this aircraft.</param>
public sealed record RuleRow(Rule Rule, Finding Finding, string Binds);

/// <summary>The published rules behind the findings of a run. Measured against, never approved by.</summary>
public static class RuleTable
{
    private static readonly Lazy<ILookup<SourceRef, Rule>> ByPlace = new(() => Published.Rules.Values.ToLookup(r => r.Source));

    /// <summary>One row for each rule that a finding rests on; the worst finding of a rule first.</summary>
    public static EquatableList<RuleRow> Of(Aircraft aircraft, RunAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(answer);
        return answer.Findings
            .SelectMany(f => RulesOf(f).Select(r => new RuleRow(r, f, BindsWords(aircraft.Basis, r.Binds))))
            .DistinctBy(r => (r.Rule.Id, r.Finding.Rule))
            .OrderBy(r => r.Rule.Id, StringComparer.Ordinal)
            .ThenByDescending(r => r.Finding.Verdict)
            .ToEquatableList();
    }

    /// <summary>The published rules that a finding's sources are.</summary>
    public static IEnumerable<Rule> RulesOf(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.Sources.SelectMany(s => ByPlace.Value[s]).Distinct();
    }

    public static string BindsWords(Basis basis, Binding binding) => (basis, binding) switch
    {
        (Basis.AmateurBuilt, Binding.OperatingLimitation) => "binds through the operating limitations",
        (_, Binding.OperatingLimitation) => "binds",
        (Basis.Part23, Binding.TypeCertificated) => "binds where the certification basis contains it",
        (Basis.Car3, Binding.TypeCertificated) => "guidance: ask the paragraph of your CAR 3 edition",
        (_, Binding.TypeCertificated) => "good practice; does not bind an amateur-built aircraft",
        (_, Binding.Guidance) => "guidance",
        _ => "comparison",
    };
}
