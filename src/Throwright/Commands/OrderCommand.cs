using System.CommandLine;
using Throwright.Cli.Terminal;
using Throwright.Engine.Chain;
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
            Console.Out.Write(Shown(orders, new(plain)));
            return ExitCode.Clear;
        }

        var rows = Rows(orders);
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

    private static List<IReadOnlyList<string>> Rows(List<OrderAnswer> orders)
    {
        var rows = new List<IReadOnlyList<string>> { (string[])["control", "kind", "number or property", "what or value", "pieces", "spare", "confirm before ordering", "note"] };
        foreach (var order in orders)
        {
            rows.AddRange(order.Cable.Select(l => (string[])[order.Run, "cable", l.What, l.Value, "", "", l.Confirm ? "yes" : "", l.Note]));
            rows.AddRange(order.Hardware.Select(h => (string[])[order.Run, "hardware", h.Number, h.What, $"{h.Quantity}", $"{h.Spare}", h.Confirm ? "yes" : "", h.Note]));
            rows.AddRange(order.Cuts.Select(c => (string[])[order.Run, "to make", c.What, c.Stock, "1", "", "", c.Size]));
        }

        return rows;
    }

    private static string Shown(List<OrderAnswer> orders, Screen screen)
    {
        foreach (var order in orders)
        {
            screen.Line(order.Run, bold: true);
            foreach (var line in order.Cable)
                screen.Wrapped($"  {line.What,-48}  ", line.Value + (line.Confirm && line.Value != "ask before ordering" ? "  (confirm before ordering)" : "") + (line.Note.Length > 0 ? $"  [{line.Note}]" : ""));
            foreach (var part in order.Hardware)
                screen.Wrapped($"  {part.Quantity} + {part.Spare}  {part.Number,-22}  ", $"{part.What}{(part.Confirm ? "  (confirm before ordering)" : "")}  [{part.Note}]");
            screen.Line();
        }

        screen.Line("Pieces + spare. --out F.pdf, F.csv or F.xlsx writes it. Hardware traceable to its standard only.");
        return screen.ToString();
    }
}
