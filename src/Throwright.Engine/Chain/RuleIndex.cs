using System.Text;
using Throwright.Engine.Clearance;
using Throwright.Engine.Cushion;
using Throwright.Engine.HandForce;
using Throwright.Engine.Heat;
using Throwright.Engine.Make;
using Throwright.Engine.Prove;
using Throwright.Engine.Rig;
using Throwright.Engine.Sources;
using Throwright.Engine.Throw;

namespace Throwright.Engine.Chain;

/// <summary>Where each published rule shows: the findings that rest on it, or the paper it stands on.</summary>
public static class RuleIndex
{
    /// <summary>Findings by rule; a second word in brackets is the paper.</summary>
    private static readonly Dictionary<string, (string[] Findings, string Paper)> Shown = new(StringComparer.Ordinal)
    {
        ["23.143(c)"] = ([HandForceRules.Hand], ""),
        ["23.305"] = ([ProveRules.Parts], ""),
        ["23.395(a)"] = ([HandForceRules.Hand], ""),
        ["23.603"] = ([HeatRules.Parts], ""),
        ["23.605"] = ([MakeRules.Stock], ""),
        ["23.607(a)"] = ([ProveRules.JointLocks], ""),
        ["23.607(c)"] = ([ProveRules.JointLocks], ""),
        ["23.625"] = ([ProveRules.SwivelTest, ProveRules.AnchorTest, ProveRules.Parts], ""),
        ["23.655(a)"] = ([], "by analogy: the least distance over all positions, as 23.777(b) asks; inspection list"),
        ["23.675"] = ([ProveRules.Tested], ""),
        ["23.681"] = ([ProveRules.SwivelTest, ProveRules.AnchorTest], "rigging card"),
        ["23.683"] = ([ProveRules.Tested, ProveRules.Operating], "rigging card"),
        ["23.685(a)"] = ([ProveRules.Distance], ""),
        ["23.689(c)"] = ([SweepRules.Swing], ""),
        ["23.689(d)"] = ([ProveRules.JointLocks], ""),
        ["23.689(e)"] = ([], "no finding: a fitting that binds is felt on the aircraft; rigging card, inspection list"),
        ["23.693"] = ([ProveRules.JointBearing], ""),
        ["23.777(a)"] = ([LabelsApart.Rule], ""),
        ["23.777(b)"] = ([ClearanceRules.Pair, ProveRules.Guard, ProveRules.Operating], ""),
        ["23.777(d)"] = ([PanelOrder.CarburettorHeat, PanelOrder.Levers], ""),
        ["23.779"] = ([ProveRules.Sense], ""),
        ["23.781"] = ([PanelOrder.Shapes], ""),
        ["23.853(a)"] = ([], "no finding: how a part burns is not in the file; inspection list"),
        ["23.995(a)"] = ([ProveRules.Operating], "rigging card"),
        ["23.995(b)"] = ([ProveRules.Reopen, ProveRules.Firewall, ProveRules.Guard], ""),
        ["23.995(c)"] = ([ProveRules.AnchorGround], ""),
        ["23.995(d)"] = ([HandForceRules.SelfHold], ""),
        ["23.995(e)"] = ([], "no finding: looked at on the aircraft; inspection list"),
        ["23.999(b)(2)"] = ([], "no finding: a fuel drain is a control of function \"other\"; its inspection list asks"),
        ["23.1093(a)"] = ([LadderRules.KnobIn, LadderRules.KnobOut, LadderRules.Tip], ""),
        ["23.1141(b)"] = ([ProveRules.Suitable], ""),
        ["23.1141(c)"] = ([HandForceRules.SelfHold], "inspection list"),
        ["23.1141(d)"] = ([ProveRules.Tested], ""),
        ["23.1141(f)"] = ([ProveRules.Fire], ""),
        ["23.1141(g)(1)"] = ([LadderRules.KnobIn, LadderRules.KnobOut, LadderRules.Tip, RigRules.AsBuilt, ProveRules.Operating], ""),
        ["23.1143(g)"] = ([ProveRules.SafeEnd], ""),
        ["23.1147(a)"] = ([PanelOrder.Shapes, ProveRules.Guard], ""),
        ["23.1147(b)"] = ([ProveRules.SafeEnd], ""),
        ["23.1555(a)"] = ([ProveRules.Marking, LabelsApart.Rule], ""),
        ["23.1555(e)(2)"] = ([ProveRules.Colour], ""),
        ["25.405"] = ([ProveRules.Jam], ""),
        ["25.777(e)"] = ([], "no finding: a flap control is a control of function \"other\"; its inspection list asks"),
        ["25.1149(d)"] = ([], "no finding: the order of 14 CFR 23.777(d) is held; the propeller's inspection list asks the rest"),
        ["27.397(b)"] = ([ProveRules.JointBearing, ProveRules.Jam], ""),
        ["27.1189(c)"] = ([ProveRules.Fire], ""),
        ["1472e-5.4.3.1.8.7"] = ([HandForceRules.Hand], ""),
        ["1472e-5.4.1.1.5"] = ([HandForceRules.Hand], ""),
        ["1472e-5.4.1.4.5.1"] = ([ProveRules.Colour], ""),
        ["1472e-5.4.3.1.8.6"] = ([ProveRules.Sense], ""),
        ["hfds-14.5.2.1"] = ([HandForceRules.Hand, ProveRules.People], ""),
        ["ac-43-13-1b-7-37"] = ([], "order sheet: threads that show"),
        ["ac-43-13-1b-7-38"] = ([ProveRules.JointLocks], "inspection list"),
        ["ac-43-13-1b-7-40"] = ([], "rigging card: torque and the nut's own drag"),
        ["ac-43-13-1b-7-64(a)"] = ([ProveRules.JointLocks], ""),
        ["ac-43-13-1b-7-64(f)"] = ([ProveRules.JointHeat], ""),
        ["ac-43-13-1b-7-147(a)"] = ([ProveRules.WireHold], ""),
        ["ac-43-13-1b-7-149(b)"] = ([], "inspection list"),
        ["ac-43-13-1b-7-149(n)"] = ([SweepRules.Swing], ""),
        ["43-d(c)(5)"] = ([], "inspection list"),
        ["ol-controls"] = ([ProveRules.Marking], "inspection list"),
        ["cs-22.711(e)"] = ([], "no finding: a tow release is a control of function \"other\"; its inspection list asks"),
        ["nureg-lettering"] = ([ProveRules.Lettering], ""),
    };

    /// <summary>Findings that rest on a rule, and the paper it stands on; neither: it is not in the index.</summary>
    public static (IReadOnlyList<string> Findings, string Paper) Of(string rule) => Shown.TryGetValue(rule, out var where) ? where : ([], "");

    /// <summary>docs/reference/rules.md.</summary>
    public static string Page()
    {
        var page = new StringBuilder("# Rules\n\nWritten by the program (`RuleIndex`); a test holds this page to it. Each published rule in our own words, how it was read, whom it\nbinds on an amateur-built aircraft, and where it shows: the finding ([findings.md](findings.md)) or the paper. Nothing here approves.\n\n| rule | asks | read | binds | shows at |\n|---|---|---|---|---|\n");
        foreach (var rule in Published.Rules.Values.OrderBy(r => r.Id, StringComparer.Ordinal))
        {
            var (findings, paper) = Of(rule.Id);
            var at = string.Join(", ", findings.Select(f => $"`{f}`").Concat(paper.Length > 0 ? [paper] : []));
            page.Append("| ").Append(rule.Cite).Append(" | ").Append(rule.Says).Append(" | ").Append(rule.Source.Evidence.ToString().ToLowerInvariant()).Append(" | ").Append(RuleTable.BindsWords(Model.Basis.AmateurBuilt, rule.Binds)).Append(" | ").Append(at).Append(" |\n");
        }

        return page.ToString();
    }
}
