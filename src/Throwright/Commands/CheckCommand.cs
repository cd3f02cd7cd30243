using System.CommandLine;
using System.Diagnostics;
using Throwright.Cli.Terminal;
using Throwright.Engine.Chain;
using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Files;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Quantities;

namespace Throwright.Cli.Commands;

/// <summary>throwright check: what is right and wrong with each run of one or many aircraft.</summary>
internal static class CheckCommand
{
    private static readonly LadderEffort Usual = new();
    private static readonly CockpitEffort UsualCockpit = new();

    public static Command Make()
    {
        var files = new Argument<string[]>("file") { Description = "Aircraft files, or folders of them. The tilt that cures a clash is looked for only in a file checked by itself.", Arity = ArgumentArity.OneOrMore };
        var json = new Option<bool>("--json") { Description = "Print the answer as JSON (docs/reference/check-json.md)." };
        var curves = new Option<bool>("--curves") { Description = "With --json: the curves of arm angle and hand force too." };
        var plain = new Option<bool>("--plain") { Description = "Plain characters, no colour." };
        var ladder = new Option<string>("--ladder") { Description = "Draw the ladder of: worst, all, none, or one run.", DefaultValueFactory = _ => "worst" };
        var run = new Option<string?>("--run") { Description = "Show one run with all its findings." };
        var tries = new Option<string[]>("--try") { Description = "Change a value for this check only: run/path=value.", Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };
        var samples = new Option<long>("--samples") { Description = "Installations drawn for the odds.", DefaultValueFactory = _ => Usual.Samples };
        InRange(samples, 100, 2_000_000);
        var seed = new Option<ulong>("--seed") { Description = "Seed of the odds.", DefaultValueFactory = _ => Usual.Seed };
        var tolerance = new Option<string>("--tolerance") { Description = "How closely a clearance is worked out, a length.", DefaultValueFactory = _ => "0.1 mm" };
        tolerance.Validators.Add(r =>
        {
            if (r.Tokens is [var token, ..] && ToleranceOf(token.Value) is null)
                r.AddError($"{tolerance.Name} \"{token.Value}\": a length from 0.001 mm to 10 mm is expected, e.g. \"0.1 mm\"");
        });
        var boxes = new Option<long>("--boxes") { Description = "Budget of each clearance, in boxes of joint positions.", DefaultValueFactory = _ => UsualCockpit.MostBoxes };
        InRange(boxes, 100, 100_000_000);
        var threads = new Option<int>("--threads") { Description = "Files, or clearances of one file, worked on at the same time; the output is the same for any number.", DefaultValueFactory = _ => Environment.ProcessorCount };
        InRange(threads, 1, 512);
        var command = new Command("check", "Check every run: throw, cushion, hand force, clearance.") { files, json, curves, plain, ladder, run, tries, samples, seed, tolerance, boxes, threads };
        // Where many files may stand, a misspelt option would pass for one.
        files.Validators.Add(r =>
        {
            foreach (var token in r.Tokens.Where(t => t.Value.StartsWith("--", StringComparison.Ordinal) && !File.Exists(t.Value)))
                r.AddError($"There is no option {token.Value}. The options of check: {string.Join(", ", command.Options.Select(o => o.Name).Where(n => n.StartsWith("--", StringComparison.Ordinal)))}.");
        });
        command.SetAction((parsed, cancel) => Task.FromResult(Check(
            new(
                parsed.GetValue(files)!, parsed.GetValue(json), parsed.GetValue(curves), parsed.GetValue(plain), parsed.GetValue(ladder)!, parsed.GetValue(run),
                parsed.GetValue(tries) ?? [], new(parsed.GetValue(samples), parsed.GetValue(seed)),
                UsualCockpit with { Tolerance = ToleranceOf(parsed.GetValue(tolerance)!)!.Value, MostBoxes = parsed.GetValue(boxes) }, parsed.GetValue(threads), new()),
            cancel)));
        return command;
    }

    /// <summary>A number out of range, or none at all, is refused before anything is read.</summary>
    private static void InRange(Option option, long least, long most) => option.Validators.Add(r =>
    {
        if (r.Tokens is [var token, ..] && !(long.TryParse(token.Value, System.Globalization.CultureInfo.InvariantCulture, out var value) && value >= least && value <= most))
            r.AddError($"{option.Name} \"{token.Value}\": a whole number from {least} to {most} is expected");
    });

    private static double? ToleranceOf(string text) =>
        UnitText.TryRead<Length>(text, out var read, out _) && read.IsExact && read.Nominal.Metres is >= 1e-6 and <= 0.01 ? read.Nominal.Metres : null;

    /// <param name="Known">Aircraft of one type have the same runs: what is laid in one file serves the next.</param>
    private sealed record Wishes(
        string[] Files, bool Json, bool Curves, bool Plain, string Ladder, string? Run, string[] Tries, LadderEffort Effort, CockpitEffort Cockpit, int Threads, KnownLies Known);

    private static int Check(Wishes wishes, CancellationToken cancel)
    {
        IReadOnlyList<string> paths;
        try
        {
            paths = Loading.Expand(wishes.Files);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine(e.Message);
            return ExitCode.Unusable;
        }

        if (paths.Count == 0)
        {
            Console.Error.WriteLine($"No {AircraftFile.Extension} file there.");
            return ExitCode.Unusable;
        }

        var code = ExitCode.Clear;
        var done = 0;
        var watch = Stopwatch.StartNew();
        var isWatched = !Console.IsErrorRedirected && paths.Count > 1;
        try
        {
            if (wishes.Json)
                Console.Out.Write(CheckJson.Opening);
            // Ordered and not buffered: answers leave in the order of the files, and memory holds a handful.
            var answers = paths.Count == 1
                ? [CheckOne(paths[0], false, wishes, cancel)]
                : (IEnumerable<(string, int)>)paths.AsParallel().AsOrdered().WithDegreeOfParallelism(wishes.Threads)
                    .WithMergeOptions(ParallelMergeOptions.NotBuffered).WithCancellation(cancel)
                    .Select(path => CheckOne(path, true, wishes, cancel));
            foreach (var (text, exit) in answers)
            {
                if (wishes.Json && done > 0)
                    Console.Out.Write(",\n");
                Console.Out.Write(text);
                code = Math.Max(code, exit);
                done++;
                if (isWatched && watch.ElapsedMilliseconds > 400)
                    Console.Error.Write($"\r{done} of {paths.Count} files\r");
            }

            if (wishes.Json)
                Console.Out.Write(CheckJson.Closing(code));
            else
                Console.Out.Write(Closing(code));
        }
        catch (OperationCanceledException)
        {
            // Whoever reads it gets a whole document, with the code that tells it is not all.
            if (wishes.Json)
                Console.Out.Write(CheckJson.Closing(ExitCode.Stopped));
            Console.Error.WriteLine($"Stopped by you after {done} of {paths.Count} files. Nothing was written.");
            return ExitCode.Stopped;
        }

        return code;
    }

    /// <summary>What no check of this version looks at, the usual caution, and the exit code in words.</summary>
    private static string Closing(int code) =>
        "\nClearance is looked at only between things that a file describes."
        + "\nWARNING  Fuel, engine and gear controls can kill. Follow the kit's plans and the makers' instructions, have the"
        + "\n         installation inspected, and work every control through its full travel on the ground before flight."
        + $"\nNot an approval. Exit {code}: {code switch { ExitCode.Clear => "nothing fails", ExitCode.Fail => "something fails", _ => "a file could not be used" }}.\n";

    /// <summary>One file of many uses one core; one alone uses all for its clearances, and says how far it is.</summary>
    private static AircraftAnswer CheckOne(Aircraft aircraft, IReadOnlyDictionary<MeshShape, Skin> meshes, bool isOneOfMany, Wishes wishes, CancellationToken cancel)
    {
        var watch = Stopwatch.StartNew();
        Action<int, int>? progress = isOneOfMany || Console.IsErrorRedirected ? null : (done, all) =>
        {
            if (watch.ElapsedMilliseconds > 400)
                Console.Error.Write($"\rclearance: {done} of {all} pairs\r");
        };
        // The search for the tilt that cures a clash costs more than all else together; for one file among many, `solve mount` does it.
        var answer = RunCheck.Check(aircraft, wishes.Effort, wishes.Cockpit with { Cures = !isOneOfMany, Meshes = meshes.GetValueOrDefault, Threads = isOneOfMany ? 1 : wishes.Threads, Progress = progress, Cancel = cancel }, wishes.Known);
        cancel.ThrowIfCancellationRequested();
        return answer;
    }

    private static (string Text, int Code) CheckOne(string path, bool isOneOfMany, Wishes wishes, CancellationToken cancel)
    {
        var result = Loading.Read(path, wishes.Tries, out var problem, cancel);
        if (problem is not null)
            return wishes.Json ? (CheckJson.Refused(path, problem), ExitCode.Unusable) : ($"{path}: {problem}.\n", ExitCode.Unusable);
        var answer = result.Aircraft is { } aircraft ? CheckOne(aircraft, result.Meshes, isOneOfMany, wishes, cancel) : null;
        if (answer is not null && wishes.Run is { } only)
        {
            if (Loading.FindRun(answer.Aircraft, only, out var none) is not { } run)
                return wishes.Json ? (CheckJson.Refused(path, none), ExitCode.Unusable) : (none + "\n", ExitCode.Unusable);
            answer = answer with { Runs = [answer.Runs.First(r => r.Run.Id == run.Id)] };
        }

        if (answer is not null && wishes.Ladder is not ("worst" or "all" or "none") && Loading.FindRun(answer.Aircraft, wishes.Ladder, out var noSuch) is null)
        {
            var why = $"--ladder: worst, all, none or a run. {noSuch}";
            return wishes.Json ? (CheckJson.Refused(path, why), ExitCode.Unusable) : (why + "\n", ExitCode.Unusable);
        }

        var code = !result.IsSound ? ExitCode.Unusable : answer!.Verdict == Verdict.Fail ? ExitCode.Fail : ExitCode.Clear;
        if (wishes.Json)
            return (CheckJson.Of(path, result, answer, wishes.Curves), code);

        var screen = new Screen(wishes.Plain);
        if (isOneOfMany)
            screen.Line().Line($"{path}  {answer?.Aircraft.Name}", bold: true);
        if (!result.IsSound)
        {
            var others = answer is null ? "Nothing could be checked." : answer.Runs.Count switch { 0 => "No run could be checked.", 1 => "The other run was checked.", var n => $"The other {n} runs were checked." };
            ProblemScreen.Show(screen, result, $"{others} Nothing was written. Exit 2.");
        }

        if (answer is not null && answer.Runs.Count + (result.IsSound ? 1 : 0) > 0)
        {
            if (wishes.Tries.Length > 0)
                screen.Wrapped("Tried, not kept: ", string.Join("; ", wishes.Tries)).Line();
            var worst = CheckScreen.WorstFirst(answer).FirstOrDefault();
            Func<RunAnswer, bool> ladders = wishes.Ladder switch
            {
                "all" => _ => true,
                "none" => _ => false,
                "worst" => r => wishes.Run is not null || (!isOneOfMany && ReferenceEquals(r, worst) && (r.Ladder is not null || r.Verdict != Verdict.Fail)),
                var name => r => r.Run.Id.Equals(name, StringComparison.OrdinalIgnoreCase),
            };
            CheckScreen.Show(screen, path, answer, ladders, wishes.Run is not null);
        }

        return (screen.ToString(), code);
    }
}
