using Throwright.Cli.Terminal;
using Throwright.Engine.Model;
using Throwright.Files;

namespace Throwright.Cli.Commands;

/// <summary>One run of one file, or its problems told.</summary>
internal sealed record OneRun(AircraftFileResult File, Aircraft Aircraft, Run Run)
{
    public static OneRun? Open(string path, string run, IReadOnlyList<string> tries)
    {
        var result = Loading.Read(path, tries, out var problem);
        if (problem is null && result.Aircraft is { } aircraft)
        {
            if (Loading.FindRun(aircraft, run, out problem) is { } found)
                return new(result, aircraft, found);
            if (result.RunsLeftOut.Count == 0)
            {
                Console.Error.WriteLine(problem);
                return null;
            }
        }

        if (!result.IsSound)
        {
            var screen = new Screen(plain: Console.IsErrorRedirected);
            ProblemScreen.Show(screen, result, "Nothing was written. Exit 2.");
            Console.Error.Write(screen);
        }
        else
        {
            Console.Error.WriteLine(problem);
        }

        return null;
    }
}
