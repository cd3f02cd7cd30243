using Throwright.Files;

namespace Throwright.Cli.Terminal;

/// <summary>What is wrong with a file, place by place.</summary>
public static class ProblemScreen
{
    private const int MostShown = 10;

    public static void Show(Screen screen, AircraftFileResult result, string closing)
    {
        ArgumentNullException.ThrowIfNull(screen);
        ArgumentNullException.ThrowIfNull(result);
        foreach (var problem in result.Problems.Take(MostShown))
        {
            var place = problem.Line > 0 ? $"{problem.File}:{problem.Line}:{problem.Column}" : problem.File;
            screen.Line($"{place}  {problem.JsonPath}", bold: true);
            if (problem.Run.Length > 0 || problem.Part.Length > 0)
                screen.Wrapped("  run       ", string.Join(", ", new[] { problem.Run, problem.Part }.Where(p => p.Length > 0)));
            if (problem.Line > 0 && problem.LineText.Length > 0)
            {
                var label = $"  line {problem.Line}".PadRight(12);
                screen.Line(label + problem.LineText);
                if (problem.MarkLength > 0)
                    screen.Line(new string(' ', label.Length + problem.MarkStart) + new string('~', problem.MarkLength));
            }

            screen.Wrapped("  found     ", problem.Found);
            screen.Wrapped("  expected  ", problem.Expected);
            screen.Line();
        }

        var more = result.Problems.Count - MostShown + result.Unlisted;
        if (more > 0)
            screen.Line($"  and {more} more.").Line();
        screen.Wrapped("", closing).Line();
    }
}
