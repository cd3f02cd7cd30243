using Throwright.Engine.Chain;
using Throwright.Engine.Clearance;
using Throwright.Engine.Sources;
using Throwright.Papers.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Order;
using Throwright.Formats.Pdf;
using Throwright.Papers.Flow;
using Throwright.Papers.Make;
using Throwright.Papers.Marks;

namespace Throwright.Papers.Pack;

/// <summary>What the pack is printed on, and what it names as its ground.</summary>
/// <param name="FileId">Short mark of the file's content, so that a paper can be told from one of another state.</param>
/// <param name="Program">Program and version that printed it.</param>
public sealed record PackOptions(ShopPaper Paper, string FileId, string Program)
{
    /// <summary>For the papers of a file with this text.</summary>
    public static PackOptions For(string text, ShopPaper paper) => new(paper, FileIdOf(text), "Throwright " + typeof(PackOptions).Assembly.GetName().Version?.ToString(3));

    /// <summary>Short mark of a file's content.</summary>
    public static string FileIdOf(string text)
    {
        var hash = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(text)));
        return $"{hash[..4]} {hash[4..8]}";
    }
}

/// <summary>All papers of an aircraft, or of one of its runs, as one document.</summary>
public static class AircraftPack
{
    private const string Foot = "Follow the kit's plans and the makers' instructions where they differ from these papers. Have the installation inspected by an appropriately licensed person. Not an approval.";

    public static byte[] Write(AircraftAnswer answer, PackOptions options)
    {
        var title = Title(answer);
        return PdfWriter.Write(new(title) { Subject = $"File {options.FileId}. {options.Program}. Not an approval." }, Pages(answer, options), Palettes.Print);
    }

    private static string Title(AircraftAnswer answer) =>
        answer.Runs.Count == 1 ? $"Papers of {answer.Aircraft.Name}: {answer.Runs[0].Words.Name}" : $"Papers of {answer.Aircraft.Name}";

    public static IReadOnlyList<PdfPage> Pages(AircraftAnswer answer, PackOptions options)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(options);
        var aircraft = answer.Aircraft;
        var flow = new PageFlow(options.Paper, $"file {options.FileId}, {aircraft.Name}", Foot);
        Cover(flow, answer, options);
        foreach (var run in answer.Runs.OrderByDescending(r => r.Verdict))
            new RunSheets(aircraft, run, flow, options.Paper).All();
        if (answer.Runs.Count > 1)
            Totals(flow, answer);
        if (answer.Cockpit is not null && answer.Runs.Count > 1)
            Cockpit(flow, answer);
        Log(flow, answer, options);
        return flow.Finish(Title(answer));
    }

    /// <summary>One rigging card on its own.</summary>
    public static byte[] WriteCard(Aircraft aircraft, RunAnswer run, PackOptions options) =>
        One(aircraft, run, options, $"Rigging card of {aircraft.Name}: {run.Words.Name}", s => s.Card());

    /// <summary>One order sheet on its own.</summary>
    public static byte[] WriteOrder(AircraftAnswer answer, PackOptions options)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(options);
        var flow = new PageFlow(options.Paper, $"file {options.FileId}, {answer.Aircraft.Name}", Foot);
        foreach (var run in answer.Runs)
            new RunSheets(answer.Aircraft, run, flow).Order();
        if (answer.Runs.Count > 1)
            Totals(flow, answer);
        var title = $"Order of {answer.Aircraft.Name}";
        return PdfWriter.Write(new(title) { Subject = $"File {options.FileId}. {options.Program}." }, flow.Finish(title), Palettes.Print);
    }

    private static byte[] One(Aircraft aircraft, RunAnswer run, PackOptions options, string title, Action<RunSheets> sheet)
    {
        var flow = new PageFlow(options.Paper, $"file {options.FileId}, {aircraft.Name}", Foot);
        sheet(new(aircraft, run, flow));
        return PdfWriter.Write(new(title) { Subject = $"File {options.FileId}. {options.Program}. Not an approval." }, flow.Finish(title), Palettes.Print);
    }

    private static void Cover(PageFlow flow, AircraftAnswer answer, PackOptions options)
    {
        var aircraft = answer.Aircraft;
        flow.NewPage("Push-pull cable controls", "Cover");
        flow.Gap(6);
        flow.Heading(aircraft.Name, PageFlow.Title);
        flow.Text(
            $"{(aircraft.Builder.Length > 0 ? "Built by " + aircraft.Builder + ". " : "")}{aircraft.Basis switch { Basis.AmateurBuilt => "Amateur-built: bound by its operating limitations.", Basis.Part23 => "Type-certificated, 14 CFR Part 23 before Amendment 64.", _ => "Type-certificated, Civil Air Regulations, Part 3: take each paragraph from your edition." }} File {options.FileId}, {options.Program}.");
        flow.Boxed("WARNING", "Fuel, engine and gear controls can kill. Follow the kit's plans and the makers' instructions, have the installation inspected, and work every control through its full travel on the ground before flight.");
        flow.Text("These papers say what was worked out from the measures in the file, against which published figure, and how sure it is. They are supporting data for whoever builds, inspects and signs. They approve nothing. A figure marked from memory is to be confirmed at its source first.");
        flow.Heading("The controls, worst first");
        flow.Table(
            [new("control", 34), new("verdict", 18), new("what is the matter", 118)],
            answer.Runs.OrderByDescending(r => r.Verdict).Select(r => (IReadOnlyList<Cell>)
            [
                new(r.Words.Name, true),
                new(r.Verdict == Verdict.Fail ? "FAIL" : GapMark.Word(r.Verdict), r.Verdict != Verdict.Clear),
                r.Sentence,
            ]).Concat(answer.Findings.Where(f => f.Verdict is Verdict.Fail or Verdict.Caution).Select(f => (IReadOnlyList<Cell>)
            [
                new("cockpit", true),
                new(f.Verdict == Verdict.Fail ? "FAIL" : GapMark.Word(f.Verdict), true),
                f.Sentence,
            ])));
        flow.Heading("How to read it");
        flow.Table(
            [new("word", 24), new("meaning", 146)],
            ((IReadOnlyList<(string Word, string Meaning)>)
            [
                ("clear", "the figure keeps its limit over all tolerances typed into the file"),
                ("needs input", "a number is missing; the sheet names it and how to get it"),
                ("caution", "less than wanted, or the limit is not from a source that was read"),
                ("FAIL", "the figure does not keep its limit, nominally or in the worst case"),
                ("read; second-hand", "seen in the publication itself; seen where another publication quotes it"),
                ("derived; computed", "derived in the project's theory pages; computed by an independent method"),
                ("common practice", "no publication at hand: change it if you know better"),
            ]).Select(w => (IReadOnlyList<Cell>)[new(w.Word, true), w.Meaning]),
            PageFlow.Note);
        flow.Text("For each control: findings with ladder, figures, single failures, rules, drawings at true size, order sheet, way of the conduit, rigging card, readings, inspection list. At the end totals and the text of the log entry.", PageFlow.Note);
    }

    /// <summary>Clearances that concern no one run, and what the proof leaves out.</summary>
    private static void Cockpit(PageFlow flow, AircraftAnswer answer)
    {
        var say = new FigureWriter(answer.Aircraft.Display);
        flow.NewPage("Clearance in the cockpit", "Clearance");
        if (answer.Cockpit!.Movers.Count > 0)
        {
            flow.Text("What moves and is no handle, against sheets and everything else, over every position of both. The clearances of each handle, arm and conduit stand on the sheets of its control.");
            flow.Table(
                [new("what moves", 36), new("against", 36), new("at least, proved", 26), new("nearest with", 72)],
                answer.Cockpit.Movers.OrderBy(p => p.Lower).ThenBy(p => p.Upper).Select(p => (IReadOnlyList<Cell>)
                [
                    new(p.First.Name, true), p.Second.Name, new(p.Hits ? "they touch" : say.Length(p.Lower, Shapes.Quantities.Rounding.Down), p.Hits),
                    p.Found.Ended == Shapes.Distance.SearchEnd.Enough ? "" : ClearanceRules.At(p, say).Replace(" with ", "", StringComparison.Ordinal),
                ]));
        }

        var wanted = Published.Get("clearance/least").Value;
        foreach (var pair in answer.Cockpit.Movers.Where(p => p.Found.FirstPart.Length > 0 && !(p.Lower >= wanted)).OrderBy(p => p.Lower).ThenBy(p => p.Upper).Take(3))
            flow.Figure(WorstPlaceDrawing.Page(answer.Cockpit, pair, answer.Aircraft.Display, wide: 170), "From your left, from above, from behind; the joints as they stand there.");
        if (answer.AllowedLines is { Count: > 0 } allowed)
        {
            flow.Heading("May touch: nothing is proved about them");
            flow.Table([new("parts, and why", 170)], allowed.Select(a => (IReadOnlyList<Cell>)[a]));
        }

        flow.Heading("Left out of the proof");
        flow.Table([new("what", 80), new("why", 90)], answer.LeftOut.Select(l => (IReadOnlyList<Cell>)[l.What, l.Why]));
    }

    /// <summary>Hardware of all runs added up.</summary>
    private static void Totals(PageFlow flow, AircraftAnswer answer)
    {
        var orders = answer.Runs.Select(r => Purchase.Of(answer.Aircraft, r)).ToList();
        flow.NewPage("Hardware, all controls", "Totals");
        flow.Table(
            [new("number", 44), new("what", 66), new("pieces", 16), new("spare", 16), new("confirm before ordering", 26)],
            orders.SelectMany(o => o.Hardware).GroupBy(h => (h.Number, h.What)).OrderBy(g => g.Key.Number, StringComparer.Ordinal).Select(g => (IReadOnlyList<Cell>)
                [new(g.Key.Number, true), g.Key.What, $"{g.Sum(h => h.Quantity)}", $"{g.Sum(h => h.Spare)}", g.Any(h => h.Confirm) ? Cell.Tick : ""]));
        var stock = OrderSolver.Stock(orders);
        if (stock.Count > 0)
        {
            var say = new FigureWriter(answer.Aircraft.Display);
            flow.Heading("Sheet and rod");
            flow.Table(
                [new("stock", 70), new("pieces", 16), new("together, without waste", 60)],
                stock.Select(t => (IReadOnlyList<Cell>)[new(t.Stock, true), $"{t.Pieces}", StockWords.Amount(t, say)]));
        }

        var weighed = orders.Where(o => o.Weight is not null).ToList();
        if (weighed.Count > 0)
        {
            var sheets = new RunSheets(answer.Aircraft, answer.Runs[0], flow);
            flow.Heading("Weight");
            flow.Table(
                [new("control", 50), new("weight", 30), new("give or take", 24), new("from", 66)],
                weighed.Select((o, i) => (IReadOnlyList<Cell>)[o.Run, sheets.Mass(o.Weight!.Mass), $"{Shapes.Quantities.FigureText.Plain(100 * o.Weight.Share, 0)} %", i > 0 && weighed[i - 1].Weight!.From == o.Weight.From ? "the same" : o.Weight.From])
                    .Append([new("together", true), new(sheets.Mass(weighed.Sum(o => o.Weight!.Mass)), true), "", "added before each is rounded up; weigh before it goes into the record"]));
            if (orders.Where(o => o.Weight is null).Select(o => o.Run).ToList() is { Count: > 0 } unweighed)
                flow.Text($"Not counted, the file does not say enough: {string.Join(", ", unweighed)}.", PageFlow.Note);
        }
    }

    private static void Log(PageFlow flow, AircraftAnswer answer, PackOptions options)
    {
        flow.NewPage("Log entry", "Log entry");
        flow.Text("Text to be copied and filled in. The words of the statement are those of your operating limitations, or of 14 CFR 43.9 and 43.11 for a type-certificated aircraft; where they differ from these, theirs count.", PageFlow.Note);
        flow.Text($"Aircraft: {answer.Aircraft.Name}");
        flow.Blank("Date");
        flow.Blank("Registration and serial number");
        flow.Blank("Total time in service");
        flow.Text($"Work done: the push-pull cable controls named below were installed and rigged by the kit's plans and the makers' instructions, with the data of file {options.FileId}.");
        flow.Blank("Parts fitted, with numbers", 2);
        flow.Gap(3);
        flow.Table(
            [new("control", 40), new("knob at push stop", 30), new("knob at pull stop", 30), new("pull", 24), new("second person", 40)],
            answer.Runs.Select(r => (IReadOnlyList<Cell>)[new(r.Words.Name, true), Cell.Box, Cell.Box, Cell.Box, Cell.Box]));
        flow.Text("Each was worked through its full travel from the seat, both stops of the device seen; motion and marking agree; hardware locked; paint lines set.");
        flow.Blank("Discrepancies given to the owner", 2);
        flow.Gap(3);
        flow.Blank("Type of inspection");
        flow.Text("To the scope and detail of 14 CFR 43 Appendix D where it applies. Statement of the person who signs, in the words that bind this aircraft:");
        flow.Blank("", 3);
        flow.Signatures("work done by", "inspected by");
        flow.Text("A control that is left inoperative carries a placard \"Inoperative\" on itself (14 CFR 43.11(b)).", PageFlow.Note);
    }
}
