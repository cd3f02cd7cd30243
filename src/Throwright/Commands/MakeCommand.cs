using System.CommandLine;
using System.Globalization;
using Throwright.Cli.Terminal;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Formats.Step;
using Throwright.Papers.Make;

namespace Throwright.Cli.Commands;

/// <summary>throwright make: files for the shop of the parts that a run needs made.</summary>
internal static class MakeCommand
{
    private static readonly string[] Sets = ["all", "wedge", "template", "guide", "bracket", "marking"];

    public static Command Make()
    {
        var file = new Argument<string>("file") { Description = "Aircraft file." };
        var run = new Argument<string>("run") { Description = "Run, by its id." };
        var part = new Argument<string>("part") { Description = $"Which part: {string.Join(", ", Sets)}.", Arity = ArgumentArity.ZeroOrOne, DefaultValueFactory = _ => "all" };
        part.AcceptOnlyFromAmong(Sets);
        var folder = new Option<string>("--out") { Description = "Folder for the files.", DefaultValueFactory = _ => "." };
        var ap242 = new Option<bool>("--ap242") { Description = "STEP as AP242 in place of AP214." };
        var paper = new Option<string>("--paper") { Description = "letter or a4.", DefaultValueFactory = _ => "letter" };
        paper.AcceptOnlyFromAmong("letter", "a4");
        var date = new Option<string?>("--date") { Description = "Date in the files, yyyy-mm-dd; left out: today. The same date gives the same bytes." };
        var replace = new Option<bool>("--replace") { Description = "Write over files that are there already." };
        var plain = new Option<bool>("--plain") { Description = "Plain characters, no colour." };
        var tries = new Option<string[]>("--try") { Description = "Change a value for these files only: run/path=value.", AllowMultipleArgumentsPerToken = false };
        var command = new Command("make", "Write files for the shop: wedges, drill template, drill guide, bracket, marking.") { file, run, part, folder, ap242, paper, date, replace, plain, tries };
        command.SetAction(parsed => Make(
            parsed.GetValue(file)!,
            parsed.GetValue(run)!,
            parsed.GetValue(part)!,
            parsed.GetValue(folder)!,
            parsed.GetValue(ap242) ? StepSchema.Ap242 : StepSchema.Ap214,
            parsed.GetValue(paper) == "a4" ? ShopPaper.A4 : ShopPaper.Letter,
            parsed.GetValue(date),
            parsed.GetValue(replace),
            parsed.GetValue(plain),
            parsed.GetValue(tries) ?? []));
        return command;
    }

    private static int Make(string path, string runName, string part, string folder, StepSchema schema, ShopPaper paper, string? date, bool replace, bool plain, string[] tries)
    {
        var dated = DateOnly.FromDateTime(DateTime.Today);
        if (date is not null && !DateOnly.TryParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out dated))
        {
            Console.Error.WriteLine($"\"{date}\" is no date; write it as 2026-11-25. Nothing was written.");
            return ExitCode.Unusable;
        }

        if (OneRun.Open(path, runName, tries) is not { } open)
            return ExitCode.Unusable;
        var answer = RunCheck.Check(open.Aircraft, open.Run, new(), new CockpitEffort { Meshes = open.File.Meshes.GetValueOrDefault, Cures = false });
        var say = new FigureWriter(open.Aircraft.Display);
        var lacks = new List<string>();
        IReadOnlyList<ShopSet> sets;
        try
        {
            sets = RunParts.Of(open.Aircraft, answer, part, say, new(paper, dated) { Schema = schema }, lacks);
        }
        catch (InvalidOperationException fault)
        {
            Console.Error.WriteLine($"{fault.Message} Nothing was written.");
            return ExitCode.Unusable;
        }

        var screen = new Screen(plain);
        foreach (var lack in lacks)
            screen.Wrapped("  not made  ", lack);
        if (sets.Count == 0)
        {
            screen.Line("Nothing was written.");
            Console.Error.Write(screen);
            return ExitCode.Unusable;
        }

        if (!Write(sets, folder, replace))
            return ExitCode.Unusable;
        Show(screen, sets, folder, answer, say);
        Console.Out.Write(screen);
        return ExitCode.Clear;
    }

    /// <summary>All files or none: what is there already is looked at first, and each file is whole before it takes its name.</summary>
    private static bool Write(IReadOnlyList<ShopSet> sets, string folder, bool replace)
    {
        var files = sets.SelectMany(s => s.Files).ToList();
        try
        {
            var there = files.Where(f => File.Exists(Path.Combine(folder, f.Name))).ToList();
            if (there.Count > 0 && !replace)
            {
                Console.Error.WriteLine($"In {folder} there {(there.Count == 1 ? "is" : "are")} already: {string.Join(", ", there.Select(f => f.Name))}. Nothing was written; --replace writes over them.");
                return false;
            }

            Directory.CreateDirectory(folder);
            if (!Written.TryWrite([.. files.Select(f => (Path.Combine(folder, f.Name), f.Content))], replace, out var told))
            {
                Console.Error.WriteLine(told);
                return false;
            }

            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine($"{e.Message.TrimEnd('.')}. No file was changed.");
            return false;
        }
    }

    private static void Show(Screen screen, IReadOnlyList<ShopSet> sets, string folder, RunAnswer answer, FigureWriter say)
    {
        screen.Line($"{answer.Words.Name}: files in {folder}", bold: true);
        var width = sets.SelectMany(s => s.Files).Max(f => f.Name.Length);
        foreach (var set in sets)
        {
            screen.Line().Line(set.Name, bold: true);
            foreach (var file in set.Files)
                screen.Wrapped($"  {file.Name.PadRight(width)}  ", $"{file.What} ({file.Check})");
            foreach (var caution in set.Cautions)
                screen.Wrapped("  caution   ", caution);
        }

        var made = answer.Findings.Where(f => f.Rule.StartsWith("make/", StringComparison.Ordinal) && f.Verdict != Verdict.Clear).ToList();
        if (made.Count > 0)
            screen.Line().Line("Before you cut", bold: true);
        foreach (var finding in made)
        {
            screen.Wrapped($"  {Word(finding.Verdict),-12}", finding.Sentence);
            foreach (var remedy in finding.Remedies)
                screen.Wrapped("    do        ", remedy.Text);
        }

        // Parts that are right do not make a run that works.
        foreach (var finding in answer.Findings.Where(f => f.Verdict == Verdict.Fail && !made.Contains(f)).Take(2))
            screen.Line().Wrapped("  This run does not work yet: ", finding.Sentence);
        screen.Line().Wrapped("", ShopFrame.Caution);
    }

    private static string Word(Verdict verdict) => verdict switch
    {
        Verdict.Clear => "clear",
        Verdict.NeedsInput => "needs input",
        Verdict.Caution => "caution",
        _ => "fail",
    };
}
