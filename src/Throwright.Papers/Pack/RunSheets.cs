using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.HandForce;
using Throwright.Engine.Maintain;
using Throwright.Engine.Make;
using Throwright.Engine.Model;
using Throwright.Engine.Rig;
using Throwright.Formats.Drawing;
using Throwright.Papers.Clearance;
using Throwright.Papers.Curves;
using Throwright.Papers.Flow;
using Throwright.Papers.Ladder;
using Throwright.Papers.Lever;
using Throwright.Papers.Make;
using Throwright.Papers.Marks;
using Throwright.Papers.Route;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Pack;

/// <summary>The sheets of one run, each beginning a page of its own.</summary>
internal sealed class RunSheets(Aircraft aircraft, RunAnswer answer, PageFlow flow, ShopPaper? paper = null)
{
    private readonly FigureWriter say = new(aircraft.Display);

    private string Name => answer.Words.Name;

    public void All()
    {
        Findings();
        Figures();
        Tilts();
        Failures();
        Rules();
        Shop();
        Order();
        Way();
        Card();
        Readings();
        Inspection();
    }

    private void Placard()
    {
        var parts = new List<string>();
        if (answer.Run.SafeEnd.Length > 0)
            parts.Add("safe end: " + answer.Run.SafeEnd);
        if (answer.Sweep is { IsMonotone: true } sweep)
            parts.Add($"throw {say.Length(sweep.Throw)}");
        flow.Placard(Name, answer.Run.How.ToLowerInvariant(), string.Join(", ", parts));
    }

    /// <summary>What is the matter, with ladder, curves and lever end; every finding with its source.</summary>
    public void Findings()
    {
        flow.NewPage($"Findings: {Name}", Name);
        Placard();
        flow.Heading(answer.Sentence.Length > 0 ? answer.Sentence : "Nothing to check yet.", 4.2);
        var layout = RunLadder.LayoutOf(answer, aircraft.Display);
        var limit = answer.Findings.FirstOrDefault(f => f.Rule == HandForceRules.Hand)?.Limit;
        var curves = new CurveLabels { ForceLimit = limit?.Value };
        var options = new PageOptions { Width = flow.Pixels };
        flow.Figure(answer.Curve is null ? LadderDrawing.Page(layout, options).Picture : LadderSheet.Page(layout, answer.Curve, curves, options).Picture);
        if (answer.Sweep is { IsMonotone: true } sweep && answer.Run.LeverEnd is { } end)
        {
            var lever = LeverDrawing.Page(sweep, layout.Labels, aircraft.Display, new() { TipLength = end.Tip.Nominal.Metres });
            if (lever.Width <= flow.Width)
                flow.Figure(lever, "Lever end in its plane: arm at both stops, path of the hole, wire, conduit tip, anchor.");
        }

        flow.Heading("Findings, worst first");
        flow.Table(
            [new("verdict", 13), new("what", 60), new("why, and what to do", 52), new("source", 42)],
            answer.Findings.Where(f => f.Verdict != Engine.Findings.Verdict.Clear).Select(f => (IReadOnlyList<Cell>)
            [
                Verdict(f.Verdict),
                new(f.Sentence, f.Verdict == Engine.Findings.Verdict.Fail),
                string.Join(" ", new[] { f.Why }.Concat(f.Remedies.Select(r => r.Text)).Where(t => t.Length > 0)),
                SourceWords.Of(f.Sources),
            ]),
            PageFlow.Note);
        flow.Heading("Clear", 3.6);
        flow.Table(
            [new("what was found", 112), new("source", 60)],
            answer.Findings.Where(f => f.Verdict == Engine.Findings.Verdict.Clear).Select(f => (IReadOnlyList<Cell>)[f.Sentence, SourceWords.Of(f.Sources)]),
            PageFlow.Note);
    }

    private static Cell Verdict(Verdict verdict) => new(verdict == Engine.Findings.Verdict.Fail ? "FAIL" : GapMark.Word(verdict), verdict != Engine.Findings.Verdict.Clear);

    /// <summary>Each figure with its formula and limits.</summary>
    public void Figures()
    {
        if (answer.Figures.Count == 0)
            return;
        flow.NewPage($"Figures: {Name}", null);
        flow.Text("Nominal; least and most over all tolerances typed into the file. Derivations stand in docs/theory; throwright explain prints inputs and steps.", PageFlow.Note);
        flow.Table(
            [new("figure", 46), new("nominal", 20), new("least", 20), new("most", 20), new("formula", 60)],
            answer.Figures.Where(f => f.Between.Length == 0).Select(f => (IReadOnlyList<Cell>)
            [
                f.Name,
                say.Text(f.Kind, f.Value, f.Rounding),
                f.Least is { } least ? Bounded(f, least, Rounding.Down) : "",
                f.Most is { } most ? Bounded(f, most, Rounding.Up) : "",
                f.Formula,
            ]),
            PageFlow.Note);
        // Dozens of pairs, each by the same formula: nearest first, a line each.
        var pairs = answer.Figures.Where(f => f.Between.Length > 0).OrderBy(f => f.Value).ToList();
        if (pairs.Count == 0)
            return;
        flow.Need(50);
        flow.Heading("Least distances, nearest first", 3.6);
        flow.Text($"Each over all joint positions together, at least so much: {pairs[0].Formula}.", PageFlow.Note);
        flow.Table(
            [new("least distance of", 120), new("at least", 46)],
            pairs.Select(f => (IReadOnlyList<Cell>)[f.Between, say.Text(f.Kind, f.Value, f.Rounding)]),
            PageFlow.Note);
    }

    private string Bounded(Figure figure, double value, Rounding rounding) => double.IsFinite(value) ? say.Text(figure.Kind, value, rounding) : "no limit";

    /// <summary>One part at a time: where the device goes, what is felt, how it is found.</summary>
    public void Failures()
    {
        if (answer.Proof is not { } proof)
            return;
        flow.NewPage($"Single failures: {Name}", null);
        flow.Text($"One part fails at a time. Declared safe end: {(answer.Run.SafeEnd.Length > 0 ? answer.Run.SafeEnd : "none")}. What is left to the pilot is a proposal: agree it with the flight manual.", PageFlow.Note);
        flow.Table(
            [new("fails", 28), new("the device", 40), new("safe end", 15), new("the pilot feels", 34), new("found by", 38), new("what is left", 34)],
            proof.Failures.Select(f => (IReadOnlyList<Cell>)
            [
                new(f.What, true),
                f.Where,
                f.IsSafeEnd switch { true => "yes", false => new Cell("no", true), _ => "?" },
                f.PilotFeels,
                f.FoundBy,
                f.Action,
            ]),
            PageFlow.Note);
        flow.Need(50);
        flow.Heading($"Device jammed, {say.Force(proof.LimitForce)} of the hand{(proof.IsChosen ? "" : " (published for hand levers, for comparison)")}");
        flow.Table([new("where it goes", 90), new("load", 40)], proof.JamLoads.Select(l => (IReadOnlyList<Cell>)[l.Where, l.Load]), PageFlow.Note);
        flow.Table(
            [new("part", 44), new("asked", 24), new("stands", 24), new("verdict", 20), new("how counted, or what lacks", 62), new("source", 40)],
            proof.Strength.Select(r => (IReadOnlyList<Cell>)[new(r.Part, true), r.Asked, r.Stands, Verdict(r.Verdict), r.Lacks.Count > 0 ? $"needs {string.Join(", ", r.Lacks)}" : r.Why, SourceWords.Of(r.Sources)]),
            PageFlow.Note);
        if (proof.Operating.Count == 0)
            return;
        flow.Need(50);
        flow.Heading("Operating check of an emergency control");
        flow.Table(
            [new("item", 22), new("do", 60), new("must be", 68), new("source", 40), new("done", 12)],
            proof.Operating.Select(o => (IReadOnlyList<Cell>)[new(o.What, true), o.Do, o.Expect, SourceWords.Of(o.Sources), Cell.Tick]),
            PageFlow.Note);
    }

    /// <summary>Where a handle meets something or leans: which tilts of its mount keep the distance.</summary>
    public void Tilts()
    {
        if (answer.Map is not { } map)
            return;
        flow.NewPage($"Tilt of the mount: {Name}", null);
        flow.Figure(ClearanceMapDrawing.Page(map, Name, aircraft.Display), "A quick search: \"solve mount\" looks closer. Try the tilt with a cardboard wedge before metal is cut.");
    }

    /// <summary>Published rules this run was held against.</summary>
    public void Rules()
    {
        var rows = RuleTable.Of(aircraft, answer);
        if (rows.Count == 0)
            return;
        flow.NewPage($"Rules: {Name}", null);
        flow.Text("Rules in our own words; the publication has the binding ones. A verdict says how the run stands against a published yardstick. It is no finding of compliance and no approval.", PageFlow.Note);
        flow.Table(
            [new("rule", 29), new("asks", 60), new("this run", 55), new("verdict", 18), new("binds; how read", 38)],
            rows.Select((r, i) => (IReadOnlyList<Cell>)
            [
                new(r.Rule.Cite, true),
                i > 0 && rows[i - 1].Rule == r.Rule ? "as above" : r.Rule.Says + (r.Rule.Note.Length > 0 ? $" ({r.Rule.Note.TrimEnd('.')})" : ""),
                r.Finding.Sentence,
                Verdict(r.Finding.Verdict),
                $"{r.Binds}; {SourceWords.Word(r.Rule.Source.Evidence)}",
            ]),
            PageFlow.Note);
    }

    /// <summary>Drawings of what is made for this run, at true size: wedges, drill template, bracket, marking.</summary>
    public void Shop()
    {
        var run = answer.Run;
        ShopTitle Title(string what, string letter) => new(aircraft.Name, $"{what} for {Name}", $"{run.Id}-{letter}") { Drawn = aircraft.Builder, Hold = RunParts.HoldOf(answer) };
        if (MadeParts.Wedges(run).Pair is { Washer.Fault: null } pair)
        {
            var title = Title("Wedge", "W") with { Material = run.CockpitEnd?.Wedge?.Material ?? "", Finish = run.CockpitEnd?.Wedge?.Finish ?? "" };
            flow.Sheet(WedgeDrawing.Part(pair, say, title, paper), $"Wedge: {Name}");
            flow.Sheet(WedgeDrawing.Pair(pair, say, title, paper), $"Wedge pair: {Name}");
            flow.Sheet(DrillTemplateDrawing.Of(pair, say, Title("Hole", "H"), paper), $"Drill template: {Name}");
        }

        if (MadeParts.BracketOf(run) is { } bracket)
            flow.Sheet(FlatPatternDrawing.Of(BracketSolver.Solve(bracket), say, Title("Bracket", "B"), paper), $"Bracket: {Name}");
        var legend = run.Installation?.Legend;
        if (run.Label.Length > 0 && StrokeLetters.Lacking(run.Label + run.How).Length == 0)
            flow.Sheet(MarkingDrawing.Page(new(run.Label, run.How, legend?.Distance.Metres ?? Marking.UsualDistance, legend?.LightOnDark ?? true, legend?.Height.Metres), say, Title("Marking", "M"), paper), $"Marking: {Name}");
    }

    public void Order()
    {
        var order = Purchase.Of(aircraft, answer);
        flow.NewPage($"Order: {Name}", null);
        Placard();
        flow.Heading("Push-pull cable, one");
        flow.Table(
            [new("property", 46), new("value", 56), new("note", 64), new("confirm before ordering", 18)],
            order.Cable.Select(l => (IReadOnlyList<Cell>)[l.What, new(l.Value, true), l.Note, l.Confirm ? Cell.Tick : ""]));
        if (order.Hardware.Count > 0)
        {
            flow.Need(40);
            flow.Heading("Hardware");
            flow.Table(
                [new("number", 36), new("what", 46), new("pieces", 13), new("spare", 12), new("note", 58), new("confirm before ordering", 18)],
                order.Hardware.Select(l => (IReadOnlyList<Cell>)[new(l.Number, true), l.What, $"{l.Quantity}", $"{l.Spare}", l.Note, l.Confirm ? Cell.Tick : ""]));
        }

        if (order.Cuts.Count > 0)
        {
            flow.Need(30);
            flow.Heading("To cut and make");
            flow.Table([new("piece", 50), new("stock", 50), new("size", 60)], order.Cuts.Select(c => (IReadOnlyList<Cell>)[c.What, c.Stock, c.Size]));
        }

        if (order.Weight is { } weight)
            flow.Text($"Weight {Mass(weight.Mass)}, give or take {FigureText.Plain(100 * weight.Share, 0)} %{(weight.Arm is { } arm ? $", arm {say.Length(arm)} aft of the datum" : ", arm not known: no stations for knob and device")}. {char.ToUpperInvariant(weight.From[0])}{weight.From[1..]}.");
        flow.Text("Hardware traceable to its standard. A figure marked to confirm is not known, or rests on a table that was not read at its source.", PageFlow.Note);
    }

    /// <summary>Where the conduit lies, where it is held and what it passes.</summary>
    public void Way()
    {
        if (answer is not { Route: { Counted: { } lie } route, Run.Cable: { } cable })
            return;
        flow.NewPage($"Way of the conduit: {Name}", null);
        flow.Figure(RouteDrawing.Page(route, Name, aircraft.Display, cable.Conduit?.MinRadius?.Metres, flow.Pixels));
        flow.Text("The lie is worked out for a conduit laid in free to roll. Let it roll and settle, then tighten the clamps; hold its end while the jam nut is tightened. Then look at it over the full travel and, where the engine moves, with the engine pushed to its limits.", PageFlow.Note);
        if (cable.Supports.Count > 0 && cable.Supports.Count == lie.Case.Supports.Count)
        {
            flow.Need(30);
            flow.Heading("Supports, from the device to the knob", 3.6);
            var last = lie.Shape.Holds.Count - 2;
            flow.Table(
                [new("", 8), new("where", 72), new("held by", 50), new("clamp", 20), new("conduit from cockpit end", 36), new("done", 12)],
                cable.Supports.Select((s, i) => (IReadOnlyList<Cell>)
                [
                    new($"{i + 1}", true),
                    s.Place.Name.Length > 0 ? s.Place.Name : $"{say.Length(s.Place.Station.Nominal.Metres)} aft, {say.Length(Math.Abs(s.Place.Buttline.Nominal.Metres))} {(s.Place.Buttline.Nominal.Metres < 0 ? "left" : "right")}, {say.Length(s.Place.Waterline.Nominal.Metres)} up",
                    s.Kind switch { SupportHold.Grommet => "grommet", _ when s.Along is null => "clamp, turned as it lies, closed last", SupportHold.SlidingClamp => "clamp that lets it slide", _ => "clamp that grips" },
                    s.Kind == SupportHold.Grommet ? "" : s.Size is { } size ? say.Size(size.Metres) : "size not typed",
                    say.Length(lie.Shape.Nodes[lie.Shape.Holds[last - i]].At),
                    Cell.Tick,
                ]),
                PageFlow.Note);
            if (answer.Findings.FirstOrDefault(f => f.Rule == "route/clamps") is { } clamps)
                flow.Text($"{clamps.Sentence} {clamps.Why}".Trim(), PageFlow.Note);
        }

        if (route.Gaps.Count == 0)
            return;
        flow.Need(24);
        flow.Heading("What it passes, the nearest first", 3.6);
        flow.Table(
            [new("what", 60), new("gap, or less", 34), new("wanted", 30), new("conduit from the cockpit end", 48)],
            route.Gaps.OrderBy(g => g.Least - g.Keep).Take(6).Select(g => (IReadOnlyList<Cell>)[g.Name, new(g.Least > 0 ? say.Length(g.Least, Rounding.Down) : "touches", g.Least < g.Keep), say.Size(g.Keep), say.Length(g.At)]),
            PageFlow.Note);
    }

    internal string Mass(double kilograms) => aircraft.Display.Force == ForceUnit.PoundForce
        ? $"{FigureText.Plain(kilograms / Force.KilogramsPerPound, 2, Rounding.Up)} lb"
        : $"{FigureText.Plain(kilograms, 2, Rounding.Up)} kg";

    public void Card()
    {
        var rigged = Rigging.ToRig(aircraft, answer);
        var card = Rigging.CardOf(aircraft, rigged);
        flow.NewPage($"Rigging card: {Name}", null);
        Placard();
        flow.Boxed("WARNING", card.Warning);
        if (rigged.Ladder is not null)
        {
            var gauge = LadderDrawing.TrueSize(RunLadder.LayoutOf(rigged, aircraft.Display), new() { Width = flow.Pixels }).Picture;
            if (gauge.Width <= flow.Width + 0.1)
                flow.Figure(gauge);
            else
                flow.Text("The gauge at true size is wider than this paper: throwright plot --svg draws it for a longer sheet.", PageFlow.Note);
        }

        flow.Text("Tools: " + string.Join(", ", card.Tools) + ".", PageFlow.Note);
        foreach (var finding in answer.Findings.Where(f => f.Verdict == Engine.Findings.Verdict.Fail))
            flow.Boxed("CAUTION", finding.Sentence + (finding.Remedies.Count > 0 ? " " + finding.Remedies[0].Text : ""));
        flow.Table(
            [new("", 11), new("do", 99), new("must be", 38), new("reading", 28), new("done", 12)],
            card.Steps.Select((s, i) => (IReadOnlyList<Cell>)[new($"{i + 1}", true), s.Do, s.MustBe, s.Reading is null ? "" : Cell.Box, Cell.Tick]));
        // Signed under the steps, on their sheet.
        flow.Signatures("rigged by", "checked by a second person");
        flow.Text("If a knob place is outside its limits", PageFlow.Body, bold: true);
        flow.Text("Both off the same way: slide the swivel by half the difference of the two cushions. Toward the conduit tip moves the knob in, away from it moves the knob out. If both cushions together are less than twice the wanted one, the throw is too long for this knob: smaller hole or longer stroke, and a new card.");
        flow.Text(string.Join(" ", card.Notes), PageFlow.Note);
    }

    /// <summary>What was read on the aircraft, and what it says.</summary>
    public void Readings()
    {
        if (answer.Run.AsBuilt.Count == 0)
            return;
        flow.NewPage($"As built: {Name}", null);
        string Length(Length? v) => v is { } l ? say.Length(l.Metres) : "";
        string Force(Force? v) => v is { } f ? say.Force(f.Newtons, Rounding.Nearest) : "";
        flow.Table(
            [new("date", 24), new("by", 24), new("knob at push stop", 20), new("knob at pull stop", 20), new("tip gap", 19), new("lost motion", 19), new("pull", 18), new("push", 18), new("note", 38)],
            answer.Run.AsBuilt.Select(a => (IReadOnlyList<Cell>)[new(a.Date, true), a.By, Length(a.KnobAtPush), Length(a.KnobAtPull), Length(a.TipGap), Length(a.LostMotion), Force(a.Pull), Force(a.Push), a.Note]),
            PageFlow.Note);
        var newest = answer.Run.AsBuilt.MaxBy(a => a.Date, StringComparer.Ordinal)!;
        if (Rigging.CaseOf(answer, newest) is not { } of)
            return;
        var fit = RigSolver.Solve(of);
        flow.Heading($"What the readings of {newest.Date} say");
        foreach (var finding in RigRules.Find(of, fit, newest.Date, say))
            flow.Text($"{char.ToUpperInvariant(GapMark.Word(finding.Verdict)[0])}{GapMark.Word(finding.Verdict)[1..]}: {finding.Sentence} {finding.Why}");
        flow.Table(
            [new("as built, against the description", 70), new("off by", 30), new("give or take (95 %)", 34), new("known before, give or take (95 %)", 40)],
            fit.Estimates.Select(e => (IReadOnlyList<Cell>)[e.Of.Name, say.Text(e.Of.Kind, e.Value), say.Text(e.Of.Kind, 1.96 * e.Error, Rounding.Up), say.Text(e.Of.Kind, 1.96 * e.Of.Before, Rounding.Up)]),
            PageFlow.Note);
        foreach (var pair in fit.Inseparable)
            flow.Text(RigRules.InWords(of, pair), PageFlow.Note);
    }

    public void Inspection()
    {
        var upkeep = Upkeep.Of(aircraft, answer);
        flow.NewPage($"Inspection: {Name}", null);
        flow.Text($"{char.ToUpperInvariant(MaintainSolver.Annual[0])}{MaintainSolver.Annual[1..]}, unless the row says otherwise. Scope: 14 CFR 43 Appendix D; for an amateur-built aircraft through its operating limitations.");
        flow.Table(
            [new("look at", 62), new("limit", 40), new("if not", 46), new("source", 40), new("done", 12)],
            upkeep.Items.Select(i => (IReadOnlyList<Cell>)[i.What + (i.When == MaintainSolver.Annual ? "" : $" ({i.When})"), i.Limit, i.Act, SourceWords.Of(i.Sources), Cell.Tick]),
            PageFlow.Note);
        if (upkeep.Drifts.Count == 0)
            return;
        if (upkeep.History.Count > 1)
        {
            flow.Heading("What was done");
            flow.Table(
                [new("date", 26), new("by", 30), new("rigged anew", 20), new("moved since the entry before", 70), new("note", 50)],
                upkeep.History.Select(h => (IReadOnlyList<Cell>)[new(h.Date, true), h.By, h.Rerigged ? "yes" : "", string.Join("; ", h.Changes.Where(c => c.Change is not null).Select(c => $"{c.Name} {MaintainWords.Moved(c, say)}")), h.Note]),
                PageFlow.Note);
        }

        flow.Need(50);
        flow.Heading("Drift of the readings");
        foreach (var drift in upkeep.Drifts)
        {
            flow.Need(34);
            flow.Text($"{char.ToUpperInvariant(drift.Name[0])}{drift.Name[1..]}: {MaintainSolver.WhenToAct(drift, v => MaintainWords.Show(drift.Reading, v, say))}.", PageFlow.Note);
            flow.Figure(DriftDrawing.Of(drift, say, flow.Width));
        }
    }
}
