using System.CommandLine;
using Throwright.Cli.Terminal;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Files;
using Throwright.Shapes.Quantities;

namespace Throwright.Cli.Commands;

/// <summary>throwright solve route: where to hold the conduit so that its lie keeps the radius, and writes it if asked.</summary>
internal static class SolveRouteCommand
{
    public static Command Make(Argument<string> file, Argument<string> run, Option<bool> plain, Option<bool> write)
    {
        var command = new Command("route", "Where to hold the conduit so that its lie keeps the least radius.") { file, run, plain, write };
        command.SetAction(parsed => Solve(parsed.GetValue(file)!, parsed.GetValue(run)!, parsed.GetValue(plain), parsed.GetValue(write)));
        return command;
    }

    private static int Solve(string path, string runName, bool plain, bool write)
    {
        if (OneRun.Open(path, runName, []) is not { } open)
            return ExitCode.Unusable;
        var say = new FigureWriter(open.Aircraft.Display);
        var answer = RouteSolve.Find(open.Aircraft, open.Run, say, open.File.Meshes.GetValueOrDefault);
        var screen = new Screen(plain);
        screen.Wrapped("", answer.Sentence, bold: true);
        if (answer.Options.Count > 0)
            Table(screen.Line(), answer, say);
        var code = answer.Best is null ? ExitCode.Fail : ExitCode.Clear;
        if (answer.Dropped > 0 && answer.Options.Any(o => o.Edits.Any(e => e.Path == "cable.supports")))
            screen.Line().Wrapped("  ", "Clamps that the file has now are not kept in a new route; grommets are, and what says \"stays\": true.");
        if (answer.Best is { } best)
        {
            if (best.Edits.Count == 0)
                screen.Line().Wrapped("  ", "The file says so already: there is nothing to write.");
            else if (write)
                code = Keep(screen, path, open, best);
            else
                screen.Line().Wrapped("  write ", $"throwright solve route {CheckScreen.Shell(path)} {open.Run.Id} --write puts it into the file: " + string.Join("; ", best.Edits.Select(e => e.Value.Length > 0 ? $"{e.Path} = {e.Value}" : $"{e.Path} taken out")));
            screen.Line().Wrapped("  ", "Lay the conduit in loosely first. Let it roll and settle, then tighten the clamps; hold its end while the jam nut is tightened.");
        }

        Console.Out.Write(screen);
        return code;
    }

    private static void Table(Screen screen, RouteSolution answer, FigureWriter say)
    {
        var unit = say.LengthUnitName;
        string[] heads = ["", $"length {unit}", "over least", "radius", "x allowed", "worst", "turns", "holds", "longest span", "hand"];
        var rows = new List<string[]> { heads };
        for (var i = 0; i < answer.Options.Count; i++)
        {
            var option = answer.Options[i];
            var (route, forces) = (option.Answer.Route, option.Answer.Forces);
            // The one that its hand force is worked out from.
            var lie = route?.Counted;
            var allowed = option.Answer.Run.Cable?.Conduit?.MinRadius?.Metres;
            rows.Add(
            [
                (i == answer.Recommended ? screen.IsPlain ? "> " : "→ " : "  ") + option.Label,
                lie is null ? "-" : say.LengthNumber(lie.Case.Length + route!.InFittings),
                // What does not work may be shorter than any way that does.
                lie is null || answer.Bound == 0 || !option.Works ? "-" : $"{FigureText.Plain(100 * ((lie.Case.Length / answer.Bound) - 1), 1, Rounding.Up)} %",
                lie is null ? "-" : say.LengthNumber(lie.LeastRadius, Rounding.Down),
                lie is null || allowed is not > 0 || !double.IsFinite(lie.LeastRadius) ? "-" : FigureText.Plain(lie.LeastRadius / allowed.Value, 2, Rounding.Down),
                route?.CountedSpread is { } spread && double.IsFinite(spread.LeastRadius) ? say.LengthNumber(spread.LeastRadius, Rounding.Down) : "-",
                lie is null ? "-" : say.Angle(lie.BendTotal),
                lie is null ? "-" : FigureText.Plain(lie.Case.Supports.Count, 0),
                lie is null ? "-" : say.LengthNumber(lie.Spans.Max(s => s.Length), Rounding.Up),
                forces is null ? "-" : say.Force(Math.Max(forces.MostPull.Nominal, forces.MostPush.Nominal)),
            ]);
        }

        var widths = Enumerable.Range(0, heads.Length).Select(c => rows.Max(r => r[c].Length)).ToArray();
        for (var i = 0; i < rows.Count; i++)
        {
            screen.Line("  " + string.Join("  ", rows[i].Select((cell, c) => c == 0 ? cell.PadRight(widths[c]) : cell.PadLeft(widths[c]))).TrimEnd(), bold: rows[i][0].StartsWith('→'));
            if (i == 0)
                continue;
            var option = answer.Options[i - 1];
            var kept = option.Works ? i - 1 == answer.Recommended ? "recommended, " : "" : "no: ";
            var near = option is { Works: true, Answer.Route.Gaps: [_, ..] gaps } && gaps.MinBy(g => g.Least - g.Keep) is { } gap
                ? $"Nearest is {gap.Name}, {say.Length(gap.Least, Rounding.Down)} off, wanted {say.Size(gap.Keep)}." : "";
            string[] said = [kept + (option.Works ? "radius kept." : option.Reason), option.Works ? option.Reason : "", near];
            screen.Wrapped("      ", Papers.Marks.Words.Capital(string.Join(" ", said.Where(w => w.Length > 0).Select((w, n) => n > 0 ? Papers.Marks.Words.Capital(w) : w))));
        }
    }

    private static int Keep(Screen screen, string path, OneRun open, RouteOption best)
    {
        var text = open.File.Text;
        if (AircraftFile.RunIndex(text, open.Run.Id) is not { } index)
            return ExitCode.Unusable;
        foreach (var edit in best.Edits)
        {
            string? changed, problem;
            var done = edit.Value.Length == 0
                ? TextEdit.TryRemove(text, $"$.runs[{index}].{edit.Path}", out changed, out problem)
                : Loading.TryChange(text, $"{open.Run.Id}/{edit.Path}={edit.Value}", out changed, out problem);
            if (!done)
            {
                screen.Line().Line($"Not written: {problem}.");
                return ExitCode.Unusable;
            }

            text = changed!;
        }

        var saved = AircraftFile.Save(path, text, open.File.Stamp);
        screen.Line().Wrapped("  ", saved.IsSaved
            ? $"Written to {path}: supports and length of the conduit; bends typed before are taken out, the lie's count. The file before it is kept beside it as a backup."
            : saved.Message);
        return saved.IsSaved ? ExitCode.Clear : ExitCode.Unusable;
    }
}
