using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Prove;

/// <summary>One part under the hand's limit force with the device jammed.</summary>
/// <param name="Asked">What it must stand, as shown; empty where an input lacks.</param>
/// <param name="Stands">What it stands; empty where that is not given.</param>
/// <param name="Verdict">NeedsInput: <paramref name="Lacks"/> names the members of the file.</param>
public sealed record StrengthRow(string Part, string Why, string Asked, string Stands, Verdict Verdict, EquatableList<string> Lacks, EquatableList<SourceRef> Sources);

/// <summary>What the anchor's bracket and its fasteners see of the limit force; worked out where brackets are. Pa, N.</summary>
/// <param name="FastenerStands">Single shear of one, N; null: not in the table.</param>
public sealed record BracketUnderLimit(double BendStress, double FastenerShear, double? FastenerStands, string Fastener, SourceRef? FastenerSource)
{
    /// <summary>Pull in the worst fastener.</summary>
    public double FastenerPull { get; init; }

    /// <summary>What it holds against pull; null: not known, a rivet's is not told.</summary>
    public double? FastenerPullStands { get; init; }
}

/// <summary>Counts pin, arm, bracket and shank by hand formulas. Theory: docs/theory/prove.md.</summary>
internal static class Strength
{
    private static readonly SourceRef Theory = new("project", "docs/theory/prove.md", Evidence.Derived);

    /// <summary>No pull strength of the table of fasteners was read.</summary>
    private static readonly SourceRef PullFromMemory = new("project", "pull of a bolt, from memory", Evidence.Memory);
    private static readonly SourceRef Own = new("project", "your own figure, typed into the file", Evidence.CommonPractice);

    public static IEnumerable<StrengthRow> Of(ProveCase of, double force, SourceRef forceFrom)
    {
        var say = new FigureWriter(of.Display);
        var run = of.Run;
        var joint = run.Installation?.Joint;
        var sizes = run.Installation?.Strength;
        double fitting = Published.Get("joint/fitting-factor").Value, ultimate = Published.Get("joint/ultimate-factor").Value;
        SourceRef fit = Published.Get("joint/fitting-factor").Source, ult = Published.Get("joint/ultimate-factor").Source;
        string Stress(double pascals, Rounding rounding = Rounding.Up) => say.Text(QuantityKind.Stress, pascals, rounding);
        static EquatableList<string> Lacking(params (string Path, bool Known)[] members) => members.Where(m => !m.Known).Select(m => m.Path).ToEquatableList();
        StrengthRow Row(string part, string why, double? asked, double? stands, EquatableList<string> lacks, Func<double, Rounding, string> show, EquatableList<SourceRef> sources) => new(
            part, why, asked is { } a ? show(a, Rounding.Up) : "", stands is { } s ? show(s, Rounding.Down) : "",
            asked is { } want && stands is { } have ? have >= want ? Verdict.Clear : Verdict.Fail : Verdict.NeedsInput, asked is not null && stands is not null ? [] : lacks, sources);

        // The joint's two parts, each with its own thickness. A strand that only pulls is a joint of a cable system.
        var push = Published.Get("joint/push-pull-factor");
        var pullsOnly = run.Cable?.Core is { Kind: not CoreKind.Solid };
        foreach (var (part, thickness, path) in ((string, Length?, string)[])[("arm on the pin, bearing", joint?.Arm, "installation.joint.arm"), ("fitting on the pin, bearing", joint?.Swivel, "installation.joint.swivel")])
        {
            double? Asked(double factor) => joint?.Diameter is { } d && thickness is { } t ? force * factor / (d.Metres * t.Metres) : null;
            var lacks = Lacking(("installation.joint.diameter", joint?.Diameter is not null), (path, thickness is not null), ("installation.joint.bearing", joint?.Bearing is not null));
            yield return Row(part, $"push-pull joint: limit force times {FigureText.Plain(push.Value, 2)} against ultimate bearing strength, no further 1.5", Asked(push.Value), joint?.Bearing?.Pascals, lacks, (v, r) => Stress(v, r), [push.Source, forceFrom]);
            if (pullsOnly)
            {
                var cable = Published.Get("joint/cable-factor");
                yield return Row(part + ", pulled only", $"joint of a cable system: times {FigureText.Plain(cable.Value, 1)}; counts where the core is never pushed", Asked(cable.Value), joint?.Bearing?.Pascals, lacks, (v, r) => Stress(v, r), [cable.Source, forceFrom]);
            }
        }

        // Ultimate: limit x 1.5 x 1.15.
        var planes = sizes?.Forked == true ? 2 : 1;
        var pin = force * ultimate * fitting / planes;
        var table = joint is { Kind: PinKind.Bolt, Diameter: { } dia } ? Published.Table("make/fasteners").Rows.FirstOrDefault(r => r.Find("name")!.Text.StartsWith("AN", StringComparison.Ordinal) && Math.Abs(r.Si("diameter") - dia.Metres) < 1e-4) : null;
        double? pinStands = sizes?.PinShear is { } shear && joint?.Diameter is { } across ? shear.Pascals * Math.PI * 0.25 * across.Metres * across.Metres : table?.Si("shear");
        yield return Row(
            "pin of the joint, shear", $"{(planes == 2 ? "fork, cut in two places" : "cut in one place; a fork halves it")}; limit times {FigureText.Plain(ultimate, 1)} and {FigureText.Plain(fitting, 2)}{(sizes?.PinShear is null && table is not null ? $"; as an {table.Find("name")!.Text} bolt" : "")}",
            joint?.Diameter is null ? null : pin, pinStands, Lacking(("installation.joint.diameter", joint?.Diameter is not null), ("installation.strength.pinShear", pinStands is not null)), (v, r) => say.Force(v, r),
            sizes?.PinShear is not null ? [ult, fit, Own, forceFrom] : table is not null ? [ult, fit, table.Source, forceFrom] : [ult, fit, forceFrom]);

        double? bend = joint?.Arm is { } thick && sizes?.ArmWidth is { } width && of.ArmRadius is { } radius ? 6 * force * fitting * radius / (thick.Metres * width.Metres * width.Metres) : null;
        yield return Row(
            "arm at its hub, bending", $"6 F r / (t b^2) at limit force times {FigureText.Plain(fitting, 2)}, against yield: no set stays", bend, sizes?.ArmYield?.Pascals,
            Lacking(("leverEnd.arm.radius", of.ArmRadius is not null), ("installation.joint.arm", joint?.Arm is not null), ("installation.strength.armWidth", sizes?.ArmWidth is not null), ("installation.strength.armYield", sizes?.ArmYield is not null)),
            (v, r) => Stress(v, r), [Published.Rule("23.305").Source, fit, Theory, forceFrom]);
        var edge = Published.Get("make/edge-distance");
        yield return Row(
            "hole of the arm to its edge", $"{FigureText.Plain(edge.Value, 1)} diameters or more", joint?.Diameter is { } bore ? edge.Value * bore.Metres : null, sizes?.ArmEdge?.Metres,
            Lacking(("installation.joint.diameter", joint?.Diameter is not null), ("installation.strength.armEdge", sizes?.ArmEdge is not null)), (v, r) => say.Length(v, r), [edge.Source]);

        yield return Row(
            "anchor's bracket where it bends most", $"6 M / (w t^2) at limit force times {FigureText.Plain(fitting, 2)}, against yield", of.Bracket?.BendStress * fitting, sizes?.BracketYield?.Pascals,
            Lacking(("leverEnd.bracket", of.Bracket is not null), ("installation.strength.bracketYield", sizes?.BracketYield is not null)), (v, r) => Stress(v, r), [Published.Rule("23.305").Source, fit, Theory, forceFrom]);
        if (of.Bracket is { } bracket)
        {
            yield return Row(
                "bracket's worst fastener, shear", $"limit times {FigureText.Plain(ultimate, 1)} and {FigureText.Plain(fitting, 2)}", bracket.FastenerShear * ultimate * fitting, bracket.FastenerStands,
                Lacking(("leverEnd.bracket.fastener", bracket.FastenerStands is not null)), (v, r) => say.Force(v, r), bracket.FastenerSource is { } from ? [ult, fit, from, forceFrom] : [ult, fit, forceFrom]);
            yield return Row(
                "bracket's worst fastener, pull", $"limit times {FigureText.Plain(ultimate, 1)} and {FigureText.Plain(fitting, 2)}; a rivet is not made to carry it", bracket.FastenerPull * ultimate * fitting, bracket.FastenerPullStands,
                Lacking(("leverEnd.bracket.fastener", bracket.FastenerPullStands is not null)), (v, r) => say.Force(v, r), bracket.FastenerPullStands is not null ? [ult, fit, PullFromMemory, forceFrom] : [ult, fit, forceFrom]);
        }

        // The core, where its maker gives no limit: least strength of the wire by its standard.
        if (run.Cable is { PullLimit: null, Core: { Kind: CoreKind.Solid } core })
        {
            var strength = Wire.TensileStrength(core.Material, core.Diameter.Nominal);
            yield return Row(
                "core, tension", $"limit times {FigureText.Plain(ultimate, 1)} against the least strength of its standard; its maker's limit counts before this", force * ultimate,
                strength.IsFound ? strength.Found.Value * Math.PI * 0.25 * core.Diameter.Least * core.Diameter.Least : null, ["cable.limits.pull"], (v, r) => say.Force(v, r), strength.IsFound ? [strength.Found.Source, ult, forceFrom] : [ult, forceFrom]);
        }

        // No rule gives a side load at a knob: what it stands is held against a stick that strikes it.
        var strike = Published.Get("joint/stick-strike");
        var end = run.CockpitEnd;
        double? stands = sizes?.ShankYield is { } yield && end is { Shank: { Diameter: { } rod, Out: { } stick }, Stroke: { } stroke }
            ? yield.Pascals * Math.PI * Math.Pow(rod.Least, 3) / 32 / (stick.Most + stroke.Most) : null;
        var row = Row(
            "shank, force from the side at the knob, all out", "bends about the sheet; compared with a stick that strikes it", strike.Value, stands,
            Lacking(("cockpitEnd.shank.diameter", end?.Shank.Diameter is not null), ("cockpitEnd.shank.out", end?.Shank.Out is not null), ("cockpitEnd.stroke", end?.Stroke is not null), ("installation.strength.shankYield", sizes?.ShankYield is not null)),
            (v, r) => say.Force(v, r), [strike.Source, Theory]);
        yield return row.Verdict == Verdict.Fail ? row with { Verdict = Verdict.Caution } : row;
    }

    /// <summary>Where the limit force goes with the device jammed, N and N m.</summary>
    public static IEnumerable<(string Where, string Load)> Loads(ProveCase of, double force)
    {
        var say = new FigureWriter(of.Display);
        yield return ("core, swivel, joint", say.Force(force));
        yield return ("anchor and its bracket, back against the pull", say.Force(force));
        yield return ("bushing and sheet", say.Force(force));
        if (of.ArmRadius is { } radius)
            yield return ("device's stop, as torque of the arm", say.Torque(force * radius));
    }
}
