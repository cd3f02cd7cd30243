using System.CommandLine;
using Throwright.Cli.Terminal;
using Throwright.Engine.Chain;
using Throwright.Papers.Pack;
using Throwright.Shapes;

namespace Throwright.Cli.Commands;

/// <summary>throwright papers: findings, failures, rules, orders, rigging cards and inspection lists as one PDF.</summary>
internal static class PapersCommand
{
    public static Command Make()
    {
        var file = new Argument<string>("file") { Description = "Aircraft file." };
        var run = new Option<string?>("--run") { Description = "Papers of one run only." };
        var target = new Option<string?>("--out") { Description = "The PDF to write. Left out: beside the aircraft file." };
        var paper = new Option<string>("--paper") { Description = "letter or a4.", DefaultValueFactory = _ => "letter" };
        paper.AcceptOnlyFromAmong("letter", "a4");
        var command = new Command("papers", "Write the papers of an aircraft as one PDF.") { file, run, target, paper };
        command.SetAction(parsed => Papers(parsed.GetValue(file)!, parsed.GetValue(run), parsed.GetValue(target), parsed.GetValue(paper)!));
        return command;
    }

    private static int Papers(string path, string? only, string? target, string paper)
    {
        if (WholeFile.Open(path, only) is not { } open)
            return ExitCode.Unusable;
        var bytes = AircraftPack.Write(open.Answer with { Runs = open.Answer.Runs.Select(r => r with { Map = MountMap.Of(open.Answer.Aircraft, r, open.Effort) }).ToEquatableList() }, Written.Options(open.Text, Written.Paper(paper)));
        var name = path.EndsWith(Files.AircraftFile.Extension, StringComparison.OrdinalIgnoreCase) ? path[..^Files.AircraftFile.Extension.Length] : path;
        if (!Written.TryWrite(target ?? $"{name}{(only is null ? "" : "-" + open.Answer.Runs[0].Run.Id)}.pdf", bytes, out var told))
        {
            Console.Error.WriteLine(told);
            return ExitCode.Unusable;
        }

        Console.Out.WriteLine(told);
        Console.Out.WriteLine("Print at 100 %, no scaling, and check the bars on each rigging card with a steel rule. Supporting data, not an approval.");
        return ExitCode.Clear;
    }
}

/// <summary>A sound file, checked as a whole or one run of it; its problems told otherwise.</summary>
internal sealed record WholeFile(string Text, AircraftAnswer Answer, CockpitEffort Effort)
{
    public static WholeFile? Open(string path, string? only)
    {
        var result = Loading.Read(path, [], out var problem);
        if (problem is null && !result.IsSound)
        {
            var screen = new Screen(plain: Console.IsErrorRedirected);
            ProblemScreen.Show(screen, result, "Nothing was written. Exit 2.");
            Console.Error.Write(screen);
            return null;
        }

        var effort = new CockpitEffort { Meshes = result.Meshes.GetValueOrDefault, Threads = Environment.ProcessorCount };
        if (problem is null && only is not null && Loading.FindRun(result.Aircraft!, only, out problem) is { } run)
        {
            problem = null;
            return new(result.Text, new(result.Aircraft!, [RunCheck.Check(result.Aircraft!, run, new(), effort)]), effort);
        }

        if (problem is { Length: > 0 })
        {
            Console.Error.WriteLine(problem);
            return null;
        }

        return new(result.Text, RunCheck.Check(result.Aircraft!, new(), effort), effort);
    }
}
