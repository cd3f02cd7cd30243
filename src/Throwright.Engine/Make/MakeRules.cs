using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Make;

/// <summary>Findings on the parts to be made.</summary>
public static class MakeRules
{
    public const string ThinEdge = "make/thin-edge";
    public const string Stock = "make/wedge-stock";
    public const string Cover = "make/wedge-cover";
    public const string Thread = "make/thread-reach";
    public const string Key = "make/wedge-key";
    public const string Curve = "make/sheet-curve";
    public const string BendRadius = "make/bend-radius";
    public const string EdgeDistance = "make/edge-distance";
    public const string Pitch = "make/pitch";
    public const string NutSeat = "make/nut-seat";
    public const string Galvanic = "make/galvanic";
    public const string SheetEdge = "make/sheet-edge";
    public const string BracketGive = "make/bracket-give";
    public const string Fasteners = "make/fasteners";
    public const string Bearing = "make/bearing";

    /// <summary>No pull strength of the table was read.</summary>
    private static readonly SourceRef PullFromMemory = new("project", "pull of a bolt, from memory", Evidence.Memory);

    private static readonly SourceRef Derived = new("project", "docs/theory/make.md", Evidence.Derived);

    public static IEnumerable<Finding> Find(WedgePair pair, FigureWriter say)
    {
        var (of, washer) = (pair.Case, pair.Washer);
        var least = WedgePairSolver.LeastThinEdge(of.Stock);
        yield return new()
        {
            Rule = ThinEdge,
            Verdict = washer.Fault is not null ? Verdict.Fail : washer.ThinEdge >= least.Value ? Verdict.Clear : Verdict.Caution,
            Sentence = washer.Fault is { } fault
                ? $"The wedge can't be made as drawn: {fault}."
                : $"The wedge is {say.Length(washer.ThinEdge, Rounding.Down)} at its thin edge, wanted {say.Length(least.Value)} or more.",
            Figure = "thin-edge",
            Limit = new(least.Value, QuantityKind.Length, true),
            Sources = [least.Source],
            Why = washer.ThinEdge >= least.Value ? "" : "A thinner edge bends under the nut or breaks in the making.",
        };
        if (of.Stock == WedgeStock.Printed)
        {
            yield return new()
            {
                Rule = Stock,
                Verdict = Verdict.Caution,
                Sentence = "The wedges are printed: use them to try the fit, and make the lasting pair of metal.",
                Sources = [new("common-practice", "judgement", Evidence.CommonPractice), Published.Rule("23.605").Source],
                Why = "Plastic creeps under a tight nut, more so in a cabin heated by the sun, and the nut comes loose.",
            };
        }

        yield return new()
        {
            Rule = Cover,
            Verdict = pair.Cover > 0 ? Verdict.Clear : Verdict.Fail,
            Sentence = pair.Cover > 0
                ? $"The wedge covers the end of the hole by {say.Length(pair.Cover, Rounding.Down)}."
                : "The hole is longer than the wedge that should cover it.",
            Figure = "wedge-cover",
            Limit = new(0, QuantityKind.Length, true),
            Sources = [Derived],
            Remedies = pair.Cover > 0 ? [] : [new($"Make the wedges {say.Move(2 * -pair.Cover * Math.Cos(of.Tilt.Angle))} or more wider.")],
        };
        var flat = washer.Outside - (2 * washer.Chamfer);
        if (!(flat >= of.NutSeat))
        {
            yield return new()
            {
                Rule = NutSeat,
                Verdict = Verdict.Caution,
                Sentence = $"The nut is {say.Length(of.NutSeat, Rounding.Up)} wide across its corners, the wedge's square face {say.Length(flat, Rounding.Down)}: it hangs over.",
                Sources = [Derived],
                Remedies = [new($"Make the wedges {say.Move(of.NutSeat - flat)} or more wider.")],
            };
        }

        yield return OfThread(pair, say);
        yield return OfKey(pair, say);
        if (of.Curved is not null)
            yield return CurveRules.Of(pair, say);
    }

    private static string Said(string material) => material.Length == 0 ? "nothing" : $"\"{material}\"";

    /// <summary>Wedge on sheet: what the two metals do to each other.</summary>
    public static Finding OfGalvanic(string wedge, string sheet)
    {
        var source = new SourceRef("common-practice", "usual practice by groups of metals", Evidence.CommonPractice);
        if (ShopMaterial.Find(wedge) is not { } one || ShopMaterial.Find(sheet) is not { } other)
        {
            return new()
            {
                Rule = Galvanic,
                Verdict = Verdict.NeedsInput,
                Sentence = "Whether wedge and sheet corrode each other needs both materials.",
                Why = $"The file says {Said(wedge)} for the wedge and {Said(sheet)} for the sheet; the table knows {string.Join(", ", Published.Table("make/materials").Rows.Select(r => r.Find("name")!.Text))}.",
                Sources = [source],
            };
        }

        var pair = ShopMaterial.Beside(one, other);
        return new()
        {
            Rule = Galvanic,
            Verdict = pair == GalvanicPair.Alike ? Verdict.Clear : Verdict.Caution,
            Sentence = pair switch
            {
                GalvanicPair.Alike when one.IsPlastic || other.IsPlastic => $"A wedge of {one.Name} on a sheet of {other.Name}: one of them does not conduct.",
                GalvanicPair.Alike => $"A wedge of {one.Name} on a sheet of {other.Name}: the same group of metals.",
                GalvanicPair.Protect => $"A wedge of {one.Name} on a sheet of {other.Name}: put primer or tape between them.",
                GalvanicPair.Seal => $"A wedge of {one.Name} on a sheet of {other.Name}: prime, seal and assemble wet.",
                _ => $"A wedge of {one.Name} on a sheet of {other.Name}: never without an insulating ply between them.",
            },
            Why = pair == GalvanicPair.Alike ? "" : "Two metals that touch and get wet corrode, the baser one first.",
            Sources = [source],
        };
    }

    /// <summary>Whether the wedge lies on the sheet with its whole rim.</summary>
    /// <param name="toEdge">From the hole's middle to the sheet's nearest edge, m.</param>
    public static Finding OfSheetEdge(WedgePair pair, double toEdge, FigureWriter say)
    {
        var left = toEdge - pair.FootprintAlong;
        return new()
        {
            Rule = SheetEdge,
            Verdict = left > 0 ? Verdict.Clear : Verdict.Fail,
            Sentence = left > 0
                ? $"The wedge's rim stays {say.Length(left, Rounding.Down)} inside the sheet's edge."
                : $"The wedge hangs over the sheet's edge by {say.Length(-left, Rounding.Up)}.",
            Figure = "sheet-edge",
            Limit = new(0, QuantityKind.Length, true),
            Sources = [Derived],
            Remedies = left > 0 ? [] : [new($"Move the hole {say.Move(-left)} or more away from the edge, or take smaller wedges.")],
        };
    }

    /// <summary>The bracket under the cable's load.</summary>
    public static IEnumerable<Finding> Find(BracketLoad load, string fastener, FigureWriter say)
    {
        var most = Published.Get("make/bracket-give");
        var give = load.Force / BracketBending.Stiffness(load.Case).Nominal;
        var worst = load.Force / BracketBending.Stiffness(load.Case).Least;
        yield return new()
        {
            Rule = BracketGive,
            Verdict = worst <= most.Value ? Verdict.Clear : Verdict.Caution,
            Sentence = $"The bracket gives {say.Length(give, Rounding.Up)} under {say.Force(load.Force)}, up to {say.Length(worst, Rounding.Up)}; wanted {say.Length(most.Value)} or less.",
            Figure = "bracket-give",
            Limit = new(most.Value, QuantityKind.Length, false),
            Sources = [Derived, most.Source],
            Why = worst <= most.Value ? "" : "What the bracket gives is lost at the knob, and the anchor moves.",
            Remedies = worst <= most.Value ? [] : [new("Shorten the legs, move the fasteners toward the bend, take thicker sheet, or fold a flange along the edges.")],
        };
        yield return OfBearing(load, say);
        double shear = load.WorstShear, pull = load.WorstTension;
        var loads = $"one fastener carries up to {say.Force(shear)} in shear and {say.Force(pull)} in pull";
        var margin = Published.Get("make/fastener-margin");
        if (fastener.Length == 0 || FastenerStrength.Of(fastener) is not { Found: { } strength })
        {
            yield return new()
            {
                Rule = Fasteners,
                Verdict = Verdict.NeedsInput,
                Sentence = $"Under {say.Force(load.Force)} {loads}.",
                Why = fastener.Length == 0 ? "Name the fastener to have it compared, e.g. AD4 or AN3." : $"No strength: {FastenerStrength.Of(fastener).Refusal}.",
                Figure = "fastener-shear",
                Sources = [Derived],
            };
            yield break;
        }

        var ratio = Math.Min(strength.Shear.Value / shear, strength.Tension is { } holds ? holds / pull : double.PositiveInfinity);
        var pulled = strength.Tension is null && pull > 0;
        yield return new()
        {
            Rule = Fasteners,
            Verdict = !(ratio >= 1) ? Verdict.Fail : ratio < margin.Value || pulled ? Verdict.Caution : Verdict.Clear,
            Sentence = $"Under {say.Force(load.Force)} {loads}; {fastener} holds {FigureText.Plain(ratio, 1, Rounding.Down)} times as much, wanted {FigureText.Plain(margin.Value, 1)}.",
            Figure = "fastener-shear",
            Limit = new(strength.Shear.Value, QuantityKind.Force, false),
            Sources = [Derived, strength.Shear.Source, .. strength.Tension is null ? Array.Empty<SourceRef>() : [PullFromMemory], margin.Source],
            Why = pulled ? "A rivet is not made to carry pull: let the structure take it, or use a bolt." : "",
        };
    }

    /// <summary>The bracket's own sheet round its fasteners; what they are fastened to is not looked at.</summary>
    private static Finding OfBearing(BracketLoad load, FigureWriter say)
    {
        // A force that stands up from the base leaves nothing in its plane but rounding.
        if (load.WorstShear < 1e-9 * load.Force)
        {
            return new()
            {
                Rule = Bearing,
                Verdict = Verdict.Caution,
                Sentence = $"The force of {say.Force(load.Force)} stands up from the base: its fasteners pull on the sheet, they don't push in its plane.",
                Figure = "fastener-pull",
                Sources = [Derived],
                Why = "Whether their heads pull through the sheet is not worked out: large washers under them, and have it judged. The structure under the bracket is not looked at.",
            };
        }

        double bearing = load.WorstBearing, tear = load.WorstTearOut;
        string Stress(double pascal) => double.IsFinite(pascal) ? say.Text(QuantityKind.Stress, pascal, Rounding.Up) : "without end";
        var loads = $"round its fasteners the bracket's sheet bears {Stress(bearing)} and is torn toward its edge with {Stress(tear)}";
        var margin = Published.Get("make/fastener-margin");
        const string structure = "The structure under the bracket is not looked at.";
        if (SheetStrength.Of(load.Case.Alloy) is not { } strength)
        {
            return new()
            {
                Rule = Bearing,
                Verdict = Verdict.NeedsInput,
                Sentence = $"Under {say.Force(load.Force)} {loads}; hold it against your material's figures.",
                Why = $"The table has no strength of {load.Case.Alloy}; it has {string.Join(", ", Published.Table("make/sheet-strength").Rows.Select(r => r.Find("alloy")!.Text))}. {structure}",
                Figure = "bearing",
                Sources = [Derived],
            };
        }

        var ratio = Math.Min(strength.Bearing / bearing, strength.Shear / tear);
        return new()
        {
            Rule = Bearing,
            Verdict = !(ratio >= 1) ? Verdict.Fail : ratio >= margin.Value ? Verdict.Clear : Verdict.Caution,
            Sentence = $"Under {say.Force(load.Force)} {loads}; {load.Case.Alloy} holds {FigureText.Plain(ratio, 1, Rounding.Down)} times as much, wanted {FigureText.Plain(margin.Value, 1)}.",
            Figure = "bearing",
            Limit = new(strength.Bearing, QuantityKind.Stress, false),
            Sources = [Derived, strength.Source, margin.Source],
            Why = structure,
            Remedies = ratio >= margin.Value ? [] : [new("Take thicker sheet, more or larger fasteners, or set them farther from the edge.")],
        };
    }

    public static IEnumerable<Finding> Find(Bracket bracket, FigureWriter say)
    {
        yield return OfRadius(bracket, say);
        foreach (var finding in OfHoles(bracket, say))
            yield return finding;
    }

    private static Finding OfThread(WedgePair pair, FigureWriter say)
    {
        var of = pair.Case;
        var showing = Published.Get("make/threads-showing");
        if (pair.ThreadBeyondNut is not { } left || !(of.NutHeight > 0) || !(of.ThreadPitch > 0))
        {
            return new()
            {
                Rule = Thread,
                Verdict = Verdict.NeedsInput,
                Sentence = $"The stack is {say.Length(pair.Grip, Rounding.Up)} thick; whether the thread reaches needs its length and pitch and the nut's height.",
                Figure = "grip",
                Sources = [showing.Source],
            };
        }

        var wanted = WedgePairSolver.ThreadShown(of);
        return new()
        {
            Rule = Thread,
            Verdict = left >= wanted ? Verdict.Clear : Verdict.Fail,
            Sentence = left >= wanted
                ? $"{say.Length(left, Rounding.Down)} of thread shows beyond the nut, one full thread is {say.Length(wanted, Rounding.Up)}."
                : $"The thread is {say.Length(wanted - left, Rounding.Up)} too short for wedges, sheet and nut.",
            Figure = "thread-beyond-nut",
            Limit = new(wanted, QuantityKind.Length, true),
            Sources = [showing.Source],
            Remedies = left >= wanted || pair.MostTilt is not { } most ? [] : [new($"Tilt by {say.Angle(most, Rounding.Down)} at most, or take smaller wedges, a thinner nut or a longer bushing.")],
        };
    }

    private static Finding OfKey(WedgePair pair, FigureWriter say)
    {
        var most = Published.Get("make/seat-error");
        var keyed = pair.Case.Key != WedgeKey.None;
        var turn = say.Angle(pair.TurnFor(most.Value), Rounding.Down);
        return new()
        {
            Rule = Key,
            Verdict = keyed ? Verdict.Clear : Verdict.Caution,
            Sentence = keyed
                ? $"The wedges are keyed; unkeyed, {turn} of turn would put the nut's seats {say.Angle(most.Value)} out of parallel."
                : $"Nothing keeps the wedges from turning; {turn} puts the nut's seats {say.Angle(most.Value)} out of parallel.",
            Figure = "wedge-turn",
            Limit = new(pair.TurnFor(most.Value), QuantityKind.Angle, false),
            Sources = [Derived, most.Source],
            Why = keyed ? "" : "Tightening the nut turns a wedge that has no pin and no flat, and a nut off square bends the shank.",
        };
    }

    private static Finding OfRadius(Bracket bracket, FigureWriter say)
    {
        var of = bracket.Case;
        if (bracket.LeastRadius is not { } radii)
        {
            return new()
            {
                Rule = BendRadius,
                Verdict = Verdict.NeedsInput,
                Sentence = $"No published bend radius: {bracket.NoRadius}.",
                Sources = [Published.Table("make/bend-radius").Source],
            };
        }

        // A radius typed in one unit that means the limit in the other is off by the last bits of a double.
        const double Slack = 1 + 1e-9;
        var sharpest = bracket.Sharpest;
        // The table is for 90 deg: a sharper bend is a trial at any of its radii.
        bool isSharper = !of.Bends.All(b => b.Angle <= (Math.PI / 2) * Slack);
        bool isSafe = sharpest * Slack >= radii.High.Value && !isSharper, isTrial = sharpest * Slack >= radii.Low.Value;
        return new()
        {
            Rule = BendRadius,
            Verdict = isSafe ? Verdict.Clear : isTrial ? Verdict.Caution : Verdict.Fail,
            Sentence = isTrial
                ? $"{of.Alloy} of {say.Length(of.Thickness)} is bent to an inside radius of {say.Length(sharpest, Rounding.Down)}, the safe choice is {say.Length(radii.High.Value, Rounding.Up)}."
                : $"{of.Alloy} of {say.Length(of.Thickness)} cracks at an inside radius of {say.Length(sharpest, Rounding.Down)}: the least is {say.Length(radii.Low.Value, Rounding.Up)}.",
            Figure = "bracket-bend-radius",
            Limit = new(radii.High.Value, QuantityKind.Length, true),
            Sources = [radii.High.Source],
            Remedies = isSafe || sharpest * Slack >= radii.High.Value ? [] : [new($"Bend it to {say.Length(radii.High.Value, Rounding.Up)} inside.")],
            Why = isSafe ? radii.High.Note : isSharper ? "The table is for bends of 90°; this one is sharper: bend a scrap piece first and look at it for cracks with a lens." : "Between the two ends of the table a bend is a trial: bend a scrap piece first and look at it for cracks with a lens.",
        };
    }

    private static IEnumerable<Finding> OfHoles(Bracket bracket, FigureWriter say)
    {
        var part = bracket.Part;
        if (part.Holes.Count == 0)
            yield break;
        Datum edge = Published.Get("make/edge-distance"), pitch = Published.Get("make/pitch");
        var worst = WorstEdge(bracket);
        // Comparisons are written so that a figure that is no number is never clear.
        yield return new()
        {
            Rule = EdgeDistance,
            Verdict = worst.Ratio * (1 + 1e-9) >= edge.Value ? Verdict.Clear : Verdict.Fail,
            Sentence = $"Hole {worst.Hole} stands {FigureText.Plain(worst.Ratio, 2, Rounding.Down)} of its diameter from an edge or the bend, wanted {FigureText.Plain(edge.Value, 1)} or more.",
            Figure = "edge-distance",
            Limit = new(edge.Value, QuantityKind.Ratio, true),
            Sources = [edge.Source],
            Why = worst.Ratio * (1 + 1e-9) >= edge.Value ? "" : "A fastener too near the edge tears out of it.",
        };
        var nearest = Nearest(bracket);
        if (nearest.A == 0)
            yield break;
        yield return new()
        {
            Rule = Pitch,
            Verdict = nearest.Ratio * (1 + 1e-9) >= pitch.Value ? Verdict.Clear : Verdict.Fail,
            Sentence = $"Holes {nearest.A} and {nearest.B} are {FigureText.Plain(nearest.Ratio, 2, Rounding.Down)} diameters apart, wanted {FigureText.Plain(pitch.Value, 1)} or more.",
            Figure = "pitch",
            Limit = new(pitch.Value, QuantityKind.Ratio, true),
            Sources = [pitch.Source],
        };
    }

    /// <summary>Least distance of a hole's centre from an edge or the bend, in diameters; null: no holes.</summary>
    internal static double? EdgeDistanceOf(Bracket bracket) => bracket.Part.Holes.Count == 0 ? null : WorstEdge(bracket).Ratio;

    /// <summary>Least distance of two holes of a leg, in diameters; null: no two on one leg.</summary>
    internal static double? PitchOf(Bracket bracket) => Nearest(bracket) is { A: > 0, Ratio: var ratio } ? ratio : null;

    private static (int Hole, double Ratio) WorstEdge(Bracket bracket) =>
        bracket.Part.Holes.Select((h, i) => (Hole: i + 1, Ratio: ToEdge(bracket, h) / (2 * h.Outline.Stretches[0].Radius))).MinBy(h => h.Ratio);

    private static (int A, int B, double Ratio) Nearest(Bracket bracket)
    {
        var part = bracket.Part;
        var pairs = from a in Enumerable.Range(0, part.Holes.Count)
                    from b in Enumerable.Range(0, a)
                    let one = part.Holes[a]
                    let two = part.Holes[b]
                    where one.Leg == two.Leg
                    let far = new Shapes.Solids.Vector2(one.FromBend - two.FromBend, one.Across - two.Across).Size
                    select (A: b + 1, B: a + 1, Ratio: far / (2 * Math.Max(one.Outline.Stretches[0].Radius, two.Outline.Stretches[0].Radius)));
        return pairs.DefaultIfEmpty((A: 0, B: 0, Ratio: double.PositiveInfinity)).MinBy(p => p.Ratio);
    }

    /// <summary>From a hole's centre to the nearest edge of its leg or to the bend's tangent line.</summary>
    private static double ToEdge(Bracket bracket, Shapes.Solids.LegHole hole)
    {
        var leg = bracket.Part.Leg(hole.Leg);
        var centre = new Shapes.Solids.Vector2(hole.FromBend, hole.Leg == 0 ? -hole.Across : hole.Across);
        return hole.FromBend > 0 && Math.Abs(hole.Across) < 0.5 * bracket.Case.Width ? leg.Outline.DistanceTo(centre) : 0;
    }
}
