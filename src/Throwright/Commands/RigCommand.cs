using System.CommandLine;
using System.Text.Json;
using Throwright.Cli.Terminal;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Rig;
using Throwright.Files;
using Throwright.Papers.Marks;
using Throwright.Papers.Pack;

namespace Throwright.Cli.Commands;

/// <summary>throwright rig: the rigging card, readings taken in, what they say, and one step that puts it right.</summary>
internal static class RigCommand
{
    /// <summary>Readings as they are named in the file.</summary>
    private static readonly string[] Names = ["knobAtPush", "knobAtPull", "tipGap", "lostMotion", "sweep", "pull", "push", "hold", "temperature"];

    public static Command Make()
    {
        var file = new Argument<string>("file") { Description = "Aircraft file." };
        var run = new Argument<string>("run") { Description = "Run, by its id." };
        var reading = new Option<string[]>("--reading") { Description = $"A reading, name=value. Names: {string.Join(", ", Names)}.", AllowMultipleArgumentsPerToken = false };
        var take = new Option<string?>("--take") { Description = "Take the readings from a file, as the rigging page gives them or as lines name=value." };
        var date = new Option<string?>("--date") { Description = "Day of the readings, year-month-day. Left out: today." };
        var by = new Option<string?>("--by") { Description = "Who read them." };
        var note = new Option<string?>("--note") { Description = "What was done." };
        var anew = new Option<bool>("--rerigged") { Description = "Something was moved or replaced just before: drift counts anew from here." };
        var write = new Option<bool>("--write") { Description = "Keep the readings in the file." };
        var card = new Option<string?>("--card") { Description = "Write the rigging card as this PDF." };
        var page = new Option<string?>("--page") { Description = "Write the rigging page for a phone, one HTML file that needs no network." };
        var paper = new Option<string>("--paper") { Description = "letter or a4.", DefaultValueFactory = _ => "letter" };
        paper.AcceptOnlyFromAmong("letter", "a4");
        var plain = new Option<bool>("--plain") { Description = "Plain characters, no colour." };
        var command = new Command("rig", "Show the rigging card, take readings, say what they mean.") { file, run, reading, take, date, by, note, anew, write, card, page, paper, plain };
        command.SetAction(parsed => Rig(new(
            parsed.GetValue(file)!, parsed.GetValue(run)!, parsed.GetValue(reading) ?? [], parsed.GetValue(take), parsed.GetValue(date), parsed.GetValue(by), parsed.GetValue(note),
            parsed.GetValue(write), parsed.GetValue(card), parsed.GetValue(page), parsed.GetValue(paper)!, parsed.GetValue(plain), parsed.GetValue(anew))));
        return command;
    }

    private sealed record Wishes(string Path, string Run, string[] Readings, string? Take, string? Date, string? By, string? Note, bool Write, string? Card, string? Page, string Paper, bool Plain, bool Rerigged);

    private static int Rig(Wishes wishes)
    {
        if (OneRun.Open(wishes.Path, wishes.Run, []) is not { } open)
            return ExitCode.Unusable;
        var screen = new Screen(wishes.Plain);
        if (!TryReadings(wishes, out var given, out var told))
            return Refused(told);
        if (given.Count == 0)
        {
            var answer = RunCheck.Check(open.Aircraft, open.Run, new(), new CockpitEffort { Meshes = open.File.Meshes.GetValueOrDefault });
            var code = ExitCode.Clear;
            if (wishes.Card is { } target)
                code = Put(screen, target, AircraftPack.WriteCard(open.Aircraft, answer, Written.Options(open.File.Text, Written.Paper(wishes.Paper))));
            if (wishes.Page is { } html)
                code = Math.Max(code, Put(screen, html, Papers.Rig.RiggingPage.Write(open.Aircraft, answer, PackOptions.FileIdOf(open.File.Text))));
            if (wishes.Card is null && wishes.Page is null)
                Card(screen, Rigging.CardOf(open.Aircraft, Rigging.ToRig(open.Aircraft, answer)), answer);
            Console.Out.Write(screen);
            return code;
        }

        given.TryAdd("date", wishes.Date ?? DateTime.Now.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
        if (wishes.By is not null)
            given["by"] = wishes.By;
        if (wishes.Note is not null)
            given["note"] = wishes.Note;
        var entry = $"{{ {string.Join(", ", given.Select(g => $"\"{g.Key}\": {Quoted(g.Value)}"))}{(wishes.Rerigged ? ", \"rerigged\": true" : "")} }}";
        if (AircraftFile.RunIndex(open.File.Text, open.Run.Id) is not { } index || !TextEdit.TryAppend(open.File.Text, $"$.runs[{index}].asBuilt", entry, out var text, out told))
            return Refused(told ?? "the run is not in the file");
        var changed = AircraftFile.Parse(wishes.Path, text);
        if (!changed.IsSound || changed.Aircraft is null)
        {
            ProblemScreen.Show(screen, changed, "The readings can't be used. Nothing was written. Exit 2.");
            Console.Error.Write(screen);
            return ExitCode.Unusable;
        }

        var run = changed.Aircraft.Runs.First(r => r.Id == open.Run.Id);
        var after = RunCheck.Check(changed.Aircraft, run, new(), new CockpitEffort { Meshes = open.File.Meshes.GetValueOrDefault, Cures = false });
        Loading.WarnOfTomorrow([run]);
        // What was just typed, whatever its date.
        Meaning(screen, after, run.AsBuilt[^1], new(changed.Aircraft.Display));
        var exit = ExitCode.Clear;
        if (wishes.Write)
        {
            var saved = AircraftFile.Save(wishes.Path, text, open.File.Stamp);
            screen.Line().Wrapped("", saved.IsSaved ? $"Kept in {wishes.Path} under {run.Id}/asBuilt. The file before it is kept beside it as a backup." : saved.Message);
            exit = saved.IsSaved ? ExitCode.Clear : ExitCode.Unusable;
        }
        else
        {
            screen.Line().Line("Not kept. Add --write to keep these readings in the file.");
        }

        Console.Out.Write(screen);
        return exit;
    }

    private static int Refused(string why)
    {
        Console.Error.WriteLine(why);
        return ExitCode.Unusable;
    }

    private static int Put(Screen screen, string target, byte[] bytes)
    {
        var done = Written.TryWrite(target, bytes, out var told);
        screen.Line(told);
        return done ? ExitCode.Clear : ExitCode.Unusable;
    }

    private static string Quoted(string text) => $"\"{JsonEncodedText.Encode(text, System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\"";

    /// <summary>From options and from a file: JSON of the rigging page, or lines name=value.</summary>
    private static bool TryReadings(Wishes wishes, out Dictionary<string, string> given, out string problem)
    {
        given = [];
        problem = "";
        var lines = new List<string>(wishes.Readings);
        if (wishes.Take is { } path)
        {
            string text;
            try
            {
                text = File.ReadAllText(path).Trim();
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                problem = e.Message;
                return false;
            }

            if (!text.StartsWith('{'))
            {
                lines.AddRange(text.Split('\n').Select(l => l.Trim()).Where(l => l.Length > 0 && !l.StartsWith('#')));
            }
            else if (!TryPage(wishes, path, text, given, out problem))
            {
                return false;
            }
        }

        foreach (var line in lines)
        {
            var equals = line.IndexOf('=', StringComparison.Ordinal);
            var name = equals > 0 ? line[..equals].Trim() : line;
            if (equals < 1 || !(Names.Contains(name) || name is "date" or "by" or "note"))
            {
                problem = $"\"{line}\" is no reading; write name=value, with one of {string.Join(", ", Names)}, e.g. \"knobAtPush=3/8 in\".";
                return false;
            }

            given[name] = line[(equals + 1)..].Trim();
        }

        return true;
    }

    private static bool TryPage(Wishes wishes, string path, string text, Dictionary<string, string> given, out string problem)
    {
        problem = "";
        try
        {
            using var json = JsonDocument.Parse(text);
            if (!json.RootElement.TryGetProperty("run", out var run) || !json.RootElement.TryGetProperty("readings", out var readings) || readings.ValueKind != JsonValueKind.Object)
            {
                problem = $"{path}: no readings in it; the rigging page gives {{ \"run\": ..., \"readings\": {{ ... }} }}.";
                return false;
            }

            if (!string.Equals(run.GetString(), wishes.Run, StringComparison.OrdinalIgnoreCase))
            {
                problem = $"{path}: readings of the run \"{run.GetString()}\", not of \"{wishes.Run}\".";
                return false;
            }

            foreach (var reading in readings.EnumerateObject())
            {
                if (!(Names.Contains(reading.Name) || reading.Name is "date" or "by" or "note") || reading.Value.ValueKind != JsonValueKind.String)
                {
                    problem = $"{path}: \"{reading.Name}\" is no reading; known are {string.Join(", ", Names)}, each a text with its unit.";
                    return false;
                }

                given[reading.Name] = reading.Value.GetString()!;
            }

            return true;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            problem = $"{path}: {e.Message}";
            return false;
        }
    }

    private static void Card(Screen screen, RigCard card, RunAnswer answer)
    {
        screen.Line($"{answer.Words.Name}  rigging card", bold: true).Line();
        screen.Wrapped("WARNING  ", card.Warning).Line();
        screen.Wrapped("Tools: ", string.Join(", ", card.Tools) + ".").Line();
        for (var i = 0; i < card.Steps.Count; i++)
        {
            var step = card.Steps[i];
            screen.Wrapped($"{i + 1,3}  ", step.Do);
            screen.Wrapped("       must be  ", step.MustBe, bold: true);
            if (step.Reading is { } reading)
                screen.Line($"       reading  {reading}=");
        }

        foreach (var note in card.Notes)
            screen.Line().Wrapped("", note);
        screen.Line().Line("Take readings in with --reading name=value or --take FILE; --card F.pdf prints it, --page F.html is for a phone. Not an approval.");
    }

    private static void Meaning(Screen screen, RunAnswer answer, Engine.Model.AsBuilt read, FigureWriter say)
    {
        if (Rigging.CaseOf(answer, read) is not { } of)
        {
            screen.Wrapped("", $"{answer.Words.Name}: {answer.Sentence} The readings can be kept; they say nothing yet.");
            return;
        }

        var fit = RigSolver.Solve(of);
        screen.Line($"{answer.Words.Name}  as read {read.Date}", bold: true).Line();
        foreach (var finding in RigRules.Find(of, fit, read.Date, say))
        {
            screen.Raw("  ").Spans(GapMark.Characters(finding.Verdict, screen.IsPlain));
            var lines = new Screen(screen.IsPlain).Wrapped(new(' ', 22), finding.Sentence).ToString();
            screen.Raw(" " + lines[22..]);
            if (finding.Why.Length > 0)
                screen.Wrapped("          do    ", finding.Why, bold: true);
        }

        screen.Line().Line("  against the description            off by        give or take (95 %)");
        foreach (var estimate in fit.Estimates)
            screen.Line($"  {estimate.Of.Name,-34} {say.Text(estimate.Of.Kind, estimate.Value),-13} {say.Text(estimate.Of.Kind, 1.96 * estimate.Error, Shapes.Quantities.Rounding.Up)}");
        foreach (var pair in fit.Inseparable)
            screen.Wrapped("  ", RigRules.InWords(of, pair));
    }
}
