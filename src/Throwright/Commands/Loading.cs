using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Files;

namespace Throwright.Cli.Commands;

/// <summary>Finds files and reads them, with changes that are only tried.</summary>
internal static class Loading
{
    /// <summary>Files as named; of folders every aircraft file below them, in order of name.</summary>
    public static IReadOnlyList<string> Expand(IEnumerable<string> named) =>
        [.. named.SelectMany(path => Directory.Exists(path)
            ? Directory.EnumerateFiles(path, "*" + AircraftFile.Extension, SearchOption.AllDirectories).Order(StringComparer.Ordinal)
            : (IEnumerable<string>)[path])];

    /// <summary>The file with each "run/path=value" put in, and the meshes beside it; the file on disk is not touched.</summary>
    public static AircraftFileResult Read(string path, IReadOnlyList<string> tries, out string? problem, CancellationToken cancel = default) =>
        MeshesBeside.Read(path, ReadText(path, tries, out problem), cancel);

    private static AircraftFileResult ReadText(string path, IReadOnlyList<string> tries, out string? problem)
    {
        problem = null;
        var result = AircraftFile.Read(path);
        if (tries.Count == 0 || result.Aircraft is null)
            return result;
        var text = result.Text;
        foreach (var change in tries)
        {
            if (!TryChange(text, change, out var changed, out problem))
                return result;
            text = changed!;
        }

        return AircraftFile.Parse(path, text) with { Stamp = result.Stamp };
    }

    /// <summary>Puts one "run/path=value" into the text of a file.</summary>
    public static bool TryChange(string text, string change, out string? changed, out string? problem)
    {
        changed = null;
        return RunChange.TryRead(text, change, out var path, out var json, out problem) && TextEdit.TrySet(text, path, json, out changed, out problem);
    }

    /// <summary>A run by its id or its label, whatever the case; null with the reason.</summary>
    public static Run? FindRun(Aircraft aircraft, string name, out string problem)
    {
        var found = aircraft.Runs.FirstOrDefault(r => r.Id == name)
            ?? aircraft.Runs.FirstOrDefault(r => r.Label.Equals(name, StringComparison.OrdinalIgnoreCase) || r.Id.Equals(name, StringComparison.OrdinalIgnoreCase));
        problem = found is null ? $"There is no run \"{name}\". The file has: {string.Join(", ", aircraft.Runs.Select(r => r.Id))}." : "";
        return found;
    }

    /// <summary>A figure by its id; null with the ids there are.</summary>
    public static string UnknownFigure(RunAnswer answer, string figure) =>
        $"There is no figure \"{figure}\" for {answer.Words.Name}. {Near(answer, figure)}";

    /// <summary>Figures of which one word is one of the asked name's.</summary>
    private static string Near(RunAnswer answer, string figure)
    {
        var words = figure.ToLowerInvariant().Split(['-', '_', ' '], StringSplitOptions.RemoveEmptyEntries);
        var near = answer.Figures.Select(f => f.Id).Where(id => id.Split('-').Intersect(words).Any()).OrderByDescending(id => id.Split('-').Intersect(words).Count()).Take(6).ToList();
        return near.Count > 0
            ? $"Near it: {string.Join(", ", near)}; \"explain\" without a figure lists all."
            : $"There are: {string.Join(", ", answer.Figures.Select(f => f.Id))}.";
    }

    /// <summary>Readings dated after today are told, not refused: the clock of the computer may be the wrong one.</summary>
    public static void WarnOfTomorrow(IEnumerable<Run> runs)
    {
        var today = DateTime.Now.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        foreach (var run in runs)
        {
            foreach (var date in run.AsBuilt.Select(a => a.Date).Where(d => string.CompareOrdinal(d, today) > 0))
                Console.Error.WriteLine($"{run.Id}/asBuilt: readings of {date} are dated after today, {today}.");
        }
    }
}
