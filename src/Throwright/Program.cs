using System.CommandLine;
using Throwright.Cli.Commands;

namespace Throwright.Cli;

/// <summary>The command line. Each command asks the engine and shows the answer; none works anything out.</summary>
public static class Program
{
    public static async Task<int> Main(string[] args)
    {
        Console.OutputEncoding = System.Text.Encoding.UTF8;
        var root = new RootCommand("Works out push-pull cable controls of light aircraft: throw, cushion, hand force, from a file to an answer. Not an approval.")
        {
            NewCommand.Make(),
            MeasureCommand.Make(),
            CheckCommand.Make(),
            ExplainCommand.Make(),
            SolveCommand.Make(),
            PlotCommand.Make(),
            ServeCommand.Make(),
            MakeCommand.Make(),
            RigCommand.Make(),
            OrderCommand.Make(),
            MaintainCommand.Make(),
            PapersCommand.Make(),
            SchemaCommand.Make(),
        };
        var parsed = root.Parse(args);
        // A misspelt command or option is unusable input, like a broken file.
        try
        {
            var code = await parsed.InvokeAsync(new() { EnableDefaultExceptionHandler = false }).ConfigureAwait(false);
            return parsed.Errors.Count > 0 ? ExitCode.Unusable : code;
        }
        catch (IOException e)
        {
            // A full disk behind > FILE: half an answer must not pass for one.
            await Console.Error.WriteLineAsync($"The answer can't be written: {e.Message.TrimEnd('.')}. What was printed is not all. Exit 2.").ConfigureAwait(false);
            return ExitCode.Unusable;
        }
    }
}

/// <summary>What the program says to the shell.</summary>
public static class ExitCode
{
    /// <summary>Nothing fails: clear, caution or needs input.</summary>
    public const int Clear = 0;

    /// <summary>At least one finding fails.</summary>
    public const int Fail = 1;

    /// <summary>The input can't be used.</summary>
    public const int Unusable = 2;

    /// <summary>Stopped by the user.</summary>
    public const int Stopped = 130;
}
