using System.CommandLine;
using Throwright.Cli.Terminal;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Order;
using Throwright.Formats.Tables;
using Throwright.Papers.Pack;

namespace Throwright.Cli.Commands;

/// <summary>throwright order: what to buy and cut, on the screen, as PDF and as spreadsheets.</summary>
internal static class OrderCommand
{
    public static Command Make()
    {
        var file = new Argument<string>("file") { Description = "Aircraft file." };
        var run = new Option<string?>("--run") { Description = "One run only." };
        var target = new Option<string?>("--out") { Description = "Write to this file: .pdf, .csv or .xlsx says which." };
        var paper = new Option<string>("--paper") { Description = "letter or a4.", DefaultValueFactory = _ => "letter" };
        paper.AcceptOnlyFromAmong("letter", "a4");
        var plain = new Option<bool>("--plain") { Description = "Plain characters, no colour." };
        var command = new Command("order", "List what to buy and cut for each run.") { file, run, target, paper, plain };
        command.SetAction(parsed => Order(parsed.GetValue(file)!, parsed.GetValue(run), parsed.GetValue(target), parsed.GetValue(paper)!, parsed.GetValue(plain)));
        return command;
    }

    private static int Order(string path, string? only, string? target, string paper, bool plain)
    {
        if (WholeFile.Open(path, only) is not { } open)
            return ExitCode.Unusable;
        var orders = open.Answer.Runs.Select(r => Purchase.Of(open.Answer.Aircraft, r)).ToList();
        if (target is null)
        {
            Console.Out.Write(Shown(orders, new(plain), new(open.Answer.Aircraft.Display)));
            return ExitCode.Clear;
        }

        var rows = Rows(orders, new(open.Answer.Aircraft.Display));
        byte[]? bytes = Path.GetExtension(target).ToLowerInvariant() switch
        {
            ".pdf" => AircraftPack.WriteOrder(open.Answer, Written.Options(open.Text, Written.Paper(paper))),
            ".csv" => CsvWriter.Write(rows),
            ".xlsx" => XlsxWriter.Write("Order", rows),
            _ => null,
        };
        if (bytes is null)
        {
            Console.Error.WriteLine($"--out {target}: a name that ends in .pdf, .csv or .xlsx is expected.");
            return ExitCode.Unusable;
        }

        var done = Written.TryWrite(target, bytes, out var told);
        (done ? Console.Out : Console.Error).WriteLine(told);
        return done ? ExitCode.Clear : ExitCode.Unusable;
    }

    private static List<IReadOnlyList<string>> Rows(List<OrderAnswer> orders, FigureWriter say)
    {
        var rows = new List<IReadOnlyList<string>> { (string[])["control", "kind", "number or property", "what or value", "pieces", "spare", "confirm before ordering", "note"] };
        foreach (var order in orders)
        {
            rows.AddRange(order.Cable.Select(l => (string[])[order.Run, "cable", l.What, l.Value, "", "", l.Confirm ? "yes" : "", l.Note]));
            rows.AddRange(order.Hardware.Select(h => (string[])[order.Run, "hardware", h.Number, h.What, $"{h.Quantity}", $"{h.Spare}", h.Confirm ? "yes" : "", h.Note]));
            rows.AddRange(order.Cuts.Select(c => (string[])[order.Run, "to make", c.What, c.Stock, $"{c.Pieces}", "", "", c.Size]));
        }

        // Totals over the aircraft, so that a sheet of numbers adds up without being added up.
        rows.AddRange(orders.SelectMany(o => o.Hardware).GroupBy(h => (h.Number, h.What)).OrderBy(g => g.Key.Number, StringComparer.Ordinal)
            .Select(g => (string[])["all", "hardware, total", g.Key.Number, g.Key.What, $"{g.Sum(h => h.Quantity)}", $"{g.Sum(h => h.Spare)}", g.Any(h => h.Confirm) ? "yes" : "", ""]));
        rows.AddRange(OrderSolver.Stock(orders).Select(t => (string[])["all", "stock, total", t.Stock, StockWords.Amount(t, say), $"{t.Pieces}", "", "", "without waste"]));

        return rows;
    }

    private static string Shown(List<OrderAnswer> orders, Screen screen, FigureWriter say)
    {
        foreach (var order in orders)
        {
            screen.Line(order.Run, bold: true);
            foreach (var line in order.Cable)
                screen.Wrapped($"  {line.What,-48}  ", line.Value + (line.Confirm && line.Value != "ask before ordering" ? "  (confirm before ordering)" : "") + (line.Note.Length > 0 ? $"  [{line.Note}]" : ""));
            foreach (var part in order.Hardware)
                screen.Wrapped($"  {part.Quantity} + {part.Spare}  {part.Number,-22}  ", $"{part.What}{(part.Confirm ? "  (confirm before ordering)" : "")}  [{part.Note}]");
            foreach (var cut in order.Cuts)
                screen.Wrapped($"  {cut.Pieces}      {cut.What,-34}  ", $"{cut.Stock}  {cut.Size}");
            if (order.Weight is { Ask: true } weight)
                screen.Wrapped("  weight   ", $"{weight.From}.");
            screen.Line();
        }

        var stock = OrderSolver.Stock(orders);
        foreach (var total in stock)
            screen.Line($"{total.Stock}: {StockWords.Amount(total, say)} together, {total.Pieces} {(total.Pieces == 1 ? "piece" : "pieces")}, without waste");
        if (stock.Count > 0)
            screen.Line();
        screen.Line("Pieces + spare. --out F.pdf, F.csv or F.xlsx writes it. Hardware traceable to its standard only.");
        screen.Wrapped("", "Cables are made to length and not taken back: lay a rope along the way first, ask the maker what he counts as length, and measure the places twice.");
        return screen.ToString();
    }
}
