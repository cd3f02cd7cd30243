using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>Findings and figures on wedges and bracket of a run.</summary>
internal static class MadeFindings
{
    private static readonly SourceRef Theory = new("project", "docs/theory/make.md", Evidence.Derived);

    public static IEnumerable<Finding> Of(Aircraft aircraft, RunAnswer answer, FigureWriter say)
    {
        var run = answer.Run;
        if (MadeParts.Wedges(run).Pair is { } pair)
        {
            foreach (var finding in MakeRules.Find(pair, say))
                yield return finding.Rule == MakeRules.Stock ? InThisCabin(finding, aircraft, run) : finding;
            yield return MakeRules.OfGalvanic(run.CockpitEnd?.Wedge?.Material ?? "", run.CockpitEnd?.Sheet?.Material ?? "");
            if (MadeParts.ToSheetEdge(run) is { } toEdge)
                yield return MakeRules.OfSheetEdge(pair, toEdge, say);
        }

        if (MadeParts.CurveOf(run) is { } curved && MadeParts.SquareSeat(run) is { } seat)
            yield return CurveRules.OfSquare(curved, run.CockpitEnd!.Sheet!.Thickness?.Nominal.Metres ?? 0, seat, say);
        if (BracketOf(run) is { } bracket)
        {
            foreach (var finding in MakeRules.Find(bracket, say))
                yield return finding;
        }

        if (MadeParts.LoadOf(answer) is { } load)
        {
            foreach (var finding in MakeRules.Find(load, run.LeverEnd!.Bracket!.Fastener, say))
                yield return finding;
        }
    }

    /// <summary>A printed wedge: what its plastic stands, and how hot this cabin gets.</summary>
    private static Finding InThisCabin(Finding finding, Aircraft aircraft, Run run)
    {
        var material = run.CockpitEnd?.Wedge?.Material ?? "";
        var row = Published.Table("heat/plastics").Rows.FirstOrDefault(r => r.Find("material")!.Text.Equals(material, StringComparison.OrdinalIgnoreCase));
        if (row is null || row.Find("distortion") is null || aircraft.Environment is not { } at)
            return finding;
        var margin = Published.Get("heat/clamped-margin");
        double stands = row.Si("distortion"), cabin = at.Cabin.Celsius;
        var text = $"{material} gives way under load at {FigureText.Plain(stands, 0)} °C; this cabin gets {FigureText.Plain(cabin, 0)} °C, and a clamped part wants {FigureText.Plain(margin.Value, 0)} °C in hand: {(stands - cabin >= margin.Value ? "it has them, yet it creeps" : "a fit check only")}.";
        return finding with { Why = $"{finding.Why} {text}", Sources = [.. finding.Sources, row.Source, margin.Source] };
    }

    public static IEnumerable<Need> Needs(Run run) => MadeParts.Wedges(run).Needs;

    public static IEnumerable<Figure> Figures(RunAnswer answer)
    {
        var run = answer.Run;
        return (MadeParts.Wedges(run).Pair is { } pair ? OfPair(pair, MadeParts.ToSheetEdge(run)) : [])
            .Concat(MadeParts.CurveOf(run) is { } curved && MadeParts.SquareSeat(run) is { } seat ? OfCurve("the nut", 0.5 * seat, curved, run.CockpitEnd!.Sheet!.Thickness?.Nominal.Metres ?? 0) : [])
            .Concat(BracketOf(run) is { } bracket ? OfBracket(bracket) : [])
            .Concat(MadeParts.LoadOf(answer) is { } load ? OfLoad(load) : []);
    }

    /// <summary>A bracket that can be worked out; the description keeps others away, but not every one.</summary>
    private static Bracket? BracketOf(Run run)
    {
        if (MadeParts.BracketOf(run) is not { } of)
            return null;
        return BracketSolver.Fits(of) ? BracketSolver.Solve(of) : null;
    }

    private static IEnumerable<Figure> OfPair(WedgePair pair, double? toEdge)
    {
        var (of, washer) = (pair.Case, pair.Washer);
        var tilt = Step("a", "tilt of the shank", of.Tilt.Angle, QuantityKind.Angle);
        var outside = Step("D", "outside of the wedge", washer.Outside);
        var thin = Step("m", "thin edge", washer.ThinEdge);
        var sheet = Step("t", "sheet", of.Sheet);
        yield return New("thin-edge", "thin edge of the wedges", QuantityKind.Length, washer.ThinEdge, Rounding.Down, "m as asked for, or the least of the stock", []);
        yield return New("thick-edge", "thick edge of the wedges", QuantityKind.Length, washer.ThickEdge, Rounding.Nearest, "m + D tan a", [thin, outside, tilt]);
        yield return New("grip", "wedges and sheet along the shank", QuantityKind.Length, pair.Grip, Rounding.Up, "G = 2 m + D tan a + t / cos a + washers", [thin, outside, tilt, sheet, Step("washers", "washers", of.Washers)]);
        yield return New("wedge-cover", "wedge beyond the end of the hole", QuantityKind.Length, pair.Cover, Rounding.Down, "(D/2) / cos a - (t/2) tan a - slot length / 2", [outside, tilt, sheet, Step("slot", "length of the slot", pair.SlotLength)]);
        yield return New("slot-width", "width of the hole in the sheet", QuantityKind.Length, pair.SlotWidth, Rounding.Nearest, "d + c", [Step("d", "bushing", of.Shank), Step("c", "clearance", of.Clearance)]);
        yield return New("slot-length", "length of the hole in the sheet, along the lean", QuantityKind.Length, pair.SlotLength, Rounding.Nearest, "d / cos a + t tan a + c", [Step("d", "bushing", of.Shank), tilt, sheet, Step("c", "clearance", of.Clearance)]);
        yield return New("wedge-turn", "turn of one wedge that puts the seats out of parallel", QuantityKind.Angle, pair.TurnFor(Published.Get("make/seat-error").Value), Rounding.Down, "sin(e/2) = sin a sin(psi/2), solved for psi", [tilt, Step("e", "largest angle between the seats", Published.Get("make/seat-error").Value, QuantityKind.Angle)]);
        if (pair.ThreadBeyondNut is { } left)
            yield return New("thread-beyond-nut", "thread beyond the nut", QuantityKind.Length, left, Rounding.Down, "usable thread - G - nut", [Step("thread", "usable thread at its shortest", of.UsableLength!.Value), Step("G", "grip", pair.Grip), Step("nut", "height of the nut", of.NutHeight)]);
        if (of.Curved is { } curved)
        {
            foreach (var figure in OfCurve("the wedge", pair.SheetHalfWidth, curved, of.Sheet))
                yield return figure;
        }

        if (toEdge is { } edge)
            yield return New("sheet-edge", "wedge's rim to the sheet's edge", QuantityKind.Length, edge - pair.FootprintAlong, Rounding.Down, "hole to edge - (D/2) / cos a", [Step("edge", "middle of the hole to the nearest edge", edge), outside, tilt]);
    }

    /// <param name="halfWidth">Of the flat seat, across the curve.</param>
    private static IEnumerable<Figure> OfCurve(string seat, double halfWidth, CurvedSheet curved, double sheet)
    {
        var radius = curved.Sharper(sheet);
        FigureStep[] steps = [Step("P", "radius of the sheet's sharper face, its tolerance against you", radius), Step("w", "half width of the seat across the curve", halfWidth)];
        if (double.IsFinite(CurvedSheet.Gap(radius, halfWidth)))
            yield return New("sheet-gap", $"gap under {seat} on the curved sheet", QuantityKind.Length, CurvedSheet.Gap(radius, halfWidth), Rounding.Up, "P - sqrt(P^2 - w^2)", steps);
        yield return New("sheet-rock", $"how far {seat} can rock on the bulging face, to either side", QuantityKind.Angle, CurvedSheet.Rock(radius, halfWidth), Rounding.Up, "asin(w / P), where its rim touches", steps);
    }

    private static IEnumerable<Figure> OfBracket(Bracket bracket)
    {
        var of = bracket.Case;
        var sheet = Step("T", "sheet", of.Thickness);
        yield return New("bracket-bend-radius", bracket.Bends.Count == 1 ? "inside radius of the bracket's bend" : "inside radius of the bracket's sharper bend", QuantityKind.Length, bracket.Sharpest, Rounding.Down, "R as described", [Step("R", "inside radius", bracket.Sharpest)]);
        foreach (var (b, i) in bracket.Bends.Select((b, i) => (b, i)))
        {
            var (radius, bend) = (Step("R", "inside radius", b.Of.Radius), Step("A", "angle bent through", b.Of.Angle, QuantityKind.Angle));
            var (id, words) = i == 0 ? ("", bracket.Bends.Count == 1 ? "" : "first ") : ("-2", "second ");
            yield return New($"setback{id}", $"setback of the {words}bend", QuantityKind.Length, b.Setback, Rounding.Nearest, "tan(A/2) (R + T)", [bend, radius, sheet]);
            yield return New($"bend-allowance{id}", $"allowance of the {words}bend", QuantityKind.Length, b.Allowance, Rounding.Nearest, "A (R + K T)", [bend, radius, sheet, new("K", "place of the neutral line", bracket.Neutral.Value, QuantityKind.Ratio)]);
        }

        yield return New(
            "flat-length", "length of the bracket's flat pattern", QuantityKind.Length, bracket.Flat.Length, Rounding.Nearest, bracket.Bends.Count == 1 ? "both flats + allowance" : "three flats + two allowances",
            [
                Step("first", "base leg to its tangent line", bracket.Part.Legs[0]),
                Step("second", bracket.Bends.Count == 1 ? "standing leg to its tangent line" : "standing leg between its tangent lines", bracket.Part.Legs[1]),
                .. bracket.Part.Legs.Skip(2).Select(l => Step("third", "top leg to its tangent line", l)),
                .. bracket.Bends.Select(b => Step("allowance", "bend allowance", b.Allowance)),
            ]);
        if (MakeRules.EdgeDistanceOf(bracket) is { } edge)
            yield return New("edge-distance", "least distance of a hole from an edge, in diameters", QuantityKind.Ratio, edge, Rounding.Down, "centre to edge, or to the bend's tangent line, over the diameter", []);
        if (MakeRules.PitchOf(bracket) is { } pitch)
            yield return New("pitch", "least distance of two holes, in diameters", QuantityKind.Ratio, pitch, Rounding.Down, "centre to centre over the larger diameter", []);
    }

    private static IEnumerable<Figure> OfLoad(BracketLoad load)
    {
        var of = load.Case;
        var (nominal, least, most) = BracketBending.Stiffness(of);
        var force = Step("F", "largest force of the wire at the device", load.Force, QuantityKind.Force);
        var isPlain = of.Then is null && of.ConduitAbove is null && Math.Abs(of.Bend - (Math.PI / 2)) < 1e-9;
        FigureStep[] legs =
        [
            Step("a", "base leg from its nearest fasteners", load.Overhang),
            .. isPlain ? [Step("b", "conduit above the base", load.At.Y)] : (FigureStep[])
            [
                Step("x", "line of the force, along the base from the first corner", load.At.X),
                Step("y", "and above the base", load.At.Y),
                .. load.Path.SkipLast(1).Select((p, i) => Step($"p{i}", i == 0 ? "arm of the force about the nearest fasteners" : $"about corner {i}", Math.Abs(load.Arm(p)))),
            ],
            Step("w", "width", of.Width), Step("t", "sheet", of.Thickness),
        ];
        var formula = isPlain ? "3 E I / (b^2 (3 a + b)), I = w t^3 / 12" : "E I / sum over the legs of L (p^2 + p q + q^2) / 3, p and q arms of the force about the leg's ends, I = w t^3 / 12";
        yield return New("bracket-stiffness", "stiffness of the anchor's bracket", QuantityKind.Stiffness, nominal, Rounding.Down, formula, legs) with { Least = least, Most = most, Holds = "a base that is built in at its nearest fasteners; the least counts half of that" };
        yield return New("bracket-give", "give of the anchor's bracket", QuantityKind.Length, load.Force / nominal, Rounding.Up, "F / stiffness", [force, .. legs]) with { Least = load.Force / most, Most = load.Force / least };
        yield return New("fastener-shear", "shear in the bracket's worst fastener", QuantityKind.Force, load.WorstShear, Rounding.Up, "F A / sum A and M A r / sum(A r^2), vector sum", [force]);
        yield return New("bearing", "pressure of the bracket's worst fastener on the wall of its hole", QuantityKind.Stress, load.WorstBearing, Rounding.Up, "V / (D t), V the fastener's shear", [force, Step("t", "sheet", of.Thickness)]);
        if (double.IsFinite(load.WorstTearOut))
            yield return New("tear-out", "shear on the two planes along which the worst fastener tears out", QuantityKind.Stress, load.WorstTearOut, Rounding.Up, "V / (2 t (e - D/2)), e to the nearest edge or the bend", [force, Step("t", "sheet", of.Thickness)]);
        yield return New("fastener-pull", "pull in the bracket's worst fastener", QuantityKind.Force, load.WorstTension, Rounding.Up, "M d / sum d^2, prying about the bend or about the free end; or the force shared out, where nothing is left to pry against", [force, .. legs[1..^2]]);
    }

    private static Figure New(string id, string name, QuantityKind kind, double value, Rounding rounding, string formula, FigureStep[] inputs) => new()
    {
        Id = id,
        Name = name,
        Kind = kind,
        Value = value,
        Rounding = rounding,
        Formula = formula,
        Inputs = [.. inputs],
        Sources = [Theory],
    };

    private static FigureStep Step(string letter, string name, double value, QuantityKind kind = QuantityKind.Length) => new(letter, name, value, kind);
}
