using Throwright.Engine.Findings;
using Throwright.Engine.Sources;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>Figures behind the rules of installation.</summary>
internal static class ProofFigures
{
    public static IEnumerable<Figure> Of(RunAnswer answer)
    {
        if (answer.Proof?.BearingAsked is not { } asked || answer.Run.Installation?.Joint is not { Diameter: { } d, Arm: { } arm } joint)
            yield break;
        var factor = Published.Get("joint/push-pull-factor");
        var thickness = Math.Min(arm.Metres, joint.Swivel?.Metres ?? arm.Metres);
        yield return new()
        {
            Id = "joint-bearing",
            Name = "bearing strength that the joint of swivel and arm needs",
            Kind = QuantityKind.Stress,
            Value = asked,
            Rounding = Rounding.Up,
            Formula = "sigma = j F / (D t)",
            Inputs =
            [
                new("F", "limit force of the hand, device jammed", answer.Proof.LimitForce, QuantityKind.Force, From: answer.Proof.IsChosen ? "installation.limitForce" : "published, for comparison"),
                new("D", "diameter of the pin", d.Metres, QuantityKind.Length, From: "installation.joint.diameter"),
                new("t", "thinner of arm and swivel", thickness, QuantityKind.Length, From: "installation.joint"),
                new("j", "special factor of a push-pull joint", factor.Value, QuantityKind.Ratio, From: "published"),
            ],
            Steps = [new("F/(D t)", "bearing stress at limit force", asked / factor.Value, QuantityKind.Stress)],
            Sources = [factor.Source, new("project", "docs/theory/prove.md", Evidence.Derived)],
            Holds = "against ultimate bearing strength; no further 1.5",
        };
    }
}
