using System.CommandLine;
using Throwright.Cli.Terminal;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Maintain;
using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;
using Throwright.Papers.Pack;

namespace Throwright.Cli.Commands;

/// <summary>throwright maintain: what to look at, how the readings drift, when to act, what was done.</summary>
internal static class MaintainCommand
{
    public static Command Make()
    {
        var file = new Argument<string>("file") { Description = "Aircraft file." };
        var run = new Argument<string?>("run") { Description = "Run, by its id. Left out: all.", Arity = ArgumentArity.ZeroOrOne };
        var svg = new Option<string?>("--svg") { Description = "Write each drift as a picture into this folder." };
        var json = new Option<bool>("--json") { Description = "For other programs (docs/reference/maintain-json.md)." };
        var plain = new Option<bool>("--plain") { Description = "Plain characters, no colour." };
        var command = new Command("maintain", "List what to inspect, and show how the readings drift.") { file, run, svg, json, plain };
        command.SetAction(parsed => Maintain(parsed.GetValue(file)!, parsed.GetValue(run), parsed.GetValue(svg), parsed.GetValue(json), parsed.GetValue(plain)));
        return command;
    }

    private static int Maintain(string path, string? only, string? folder, bool asJson, bool plain)
    {
        if (WholeFile.Open(path, only) is not { } open)
            return ExitCode.Unusable;
        var aircraft = open.Answer.Aircraft;
        var say = new FigureWriter(aircraft.Display);
        var all = open.Answer.Runs.Select(r => (Run: r, Upkeep: Upkeep.Of(aircraft, r))).ToList();
        Loading.WarnOfTomorrow(open.Answer.Runs.Select(r => r.Run));
        if (asJson)
        {
            Console.Out.Write(MaintainJson.Of(path, aircraft.Name, all));
            return ExitCode.Clear;
        }

        var screen = new Screen(plain);
        var code = ExitCode.Clear;
        foreach (var (run, upkeep) in all)
        {
            Shown(screen, run, upkeep, say);
            foreach (var drift in folder is null ? [] : upkeep.Drifts)
            {
                var picture = DriftDrawing.Of(drift, say, 170);
                var done = Written.TryWrite(Path.Combine(folder!, $"{run.Run.Id}-{drift.Reading}.svg"), System.Text.Encoding.UTF8.GetBytes(SvgWriter.Write(picture, Palettes.Paper)), out var told);
                screen.Line(told);
                code = done ? code : ExitCode.Unusable;
            }
        }

        screen.Line("Take readings in with throwright rig FILE RUN --reading name=value --write, --rerigged where something was moved. Not an approval.");
        Console.Out.Write(screen);
        return code;
    }

    private static void Shown(Screen screen, RunAnswer run, MaintainAnswer upkeep, FigureWriter say)
    {
        screen.Line($"{run.Words.Name}  inspection", bold: true);
        screen.Wrapped("  ", $"{char.ToUpperInvariant(MaintainSolver.Annual[0])}{MaintainSolver.Annual[1..]}, unless the item says otherwise.").Line();
        for (var i = 0; i < upkeep.Items.Count; i++)
        {
            var item = upkeep.Items[i];
            screen.Wrapped($"{i + 1,3}  ", item.What + (item.When == MaintainSolver.Annual ? "" : $" ({item.When})"));
            screen.Wrapped("       limit  ", item.Limit, bold: true);
            screen.Wrapped("       else   ", item.Act);
            screen.Wrapped("       from   ", SourceWords.Of(item.Sources), code: "2");
        }

        if (upkeep.History.Count > 0)
        {
            screen.Line().Line("What was done and read", bold: true);
            foreach (var entry in upkeep.History)
            {
                screen.Wrapped($"  {entry.Date}  ", string.Join(". ", ((string[])[entry.Rerigged ? "RIGGED ANEW" : "", entry.By, entry.Note]).Where(t => t.Length > 0)));
                foreach (var change in entry.Changes)
                    screen.Line($"              {change.Name,-24}{MaintainWords.Show(change.Reading, change.Value, say),-12}{(change.Change is null ? "" : MaintainWords.Moved(change, say))}".TrimEnd());
            }
        }
        else
        {
            screen.Line().Line("  No readings in the file yet.");
        }

        foreach (var drift in upkeep.Drifts)
        {
            string Show(double v) => MaintainWords.Show(drift.Reading, v, say);
            screen.Line();
            screen.Wrapped("  ", $"{char.ToUpperInvariant(drift.Name[0])}{drift.Name[1..]}: {MaintainSolver.WhenToAct(drift, Show)}.", bold: drift.State is DriftState.Outside or DriftState.MeetsLimit);
            foreach (var line in DriftDrawing.Characters(drift, say, Math.Min(screen.Width, 84) - 2))
                screen.Line("  " + line);
        }

        screen.Line();
    }
}
