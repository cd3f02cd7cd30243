using System.CommandLine;
using System.Text;
using Throwright.Cli.Terminal;
using Throwright.Engine.Chain;
using Throwright.Formats.Drawing;
using Throwright.Papers.Clearance;
using Throwright.Papers.Curves;
using Throwright.Papers.Ladder;
using Throwright.Papers.Lever;
using Throwright.Papers.Marks;
using Throwright.Papers.Route;

namespace Throwright.Cli.Commands;

/// <summary>throwright plot: ladder, lever angle and hand force in the terminal, or as SVG files.</summary>
internal static class PlotCommand
{
    public static Command Make()
    {
        var file = new Argument<string>("file") { Description = "Aircraft file." };
        var run = new Argument<string>("run") { Description = "Run, by its id; or \"cockpit\": where what moves and is no handle comes nearest." };
        var svg = new Option<string?>("--svg") { Description = "Folder for SVG files: sheet, ladder, upright ladder, true-size gauge, lever end, lie of the conduit, clearance, map of tilts." };
        var plain = new Option<bool>("--plain") { Description = "Plain characters, no colour." };
        var tries = new Option<string[]>("--try") { Description = "Change a value for this drawing only: run/path=value.", AllowMultipleArgumentsPerToken = false };
        var command = new Command("plot", "Draw the ladder, the lever angle and the hand force of a run.") { file, run, svg, plain, tries };
        command.SetAction(parsed => Plot(parsed.GetValue(file)!, parsed.GetValue(run)!, parsed.GetValue(svg), parsed.GetValue(plain), parsed.GetValue(tries) ?? []));
        return command;
    }

    private static int Plot(string path, string runName, string? folder, bool plain, string[] tries)
    {
        if (runName.Equals(CheckScreen.CockpitWord, StringComparison.OrdinalIgnoreCase) && PlotCockpit(path, folder, plain, tries) is { } code)
            return code;
        if (OneRun.Open(path, runName, tries) is not { } open)
            return ExitCode.Unusable;
        var answer = RunCheck.Check(open.Aircraft, open.Run, new(), new CockpitEffort { Meshes = open.File.Meshes.GetValueOrDefault, Cures = false });
        var layout = RunLadder.LayoutOf(answer, open.Aircraft.Display);
        var labels = LadderSheet.LabelsOf(answer);
        var screen = new Screen(plain);
        if (folder is null)
        {
            screen.Line(answer.Words.Name, bold: true).Line()
                .Block(LadderSheet.Characters(layout, answer.Curve, labels, new() { Width = screen.Width, Plain = screen.IsPlain }));
            if (answer.Ladder is null)
                screen.Line().Wrapped("", answer.Sentence);
            Console.Out.Write(screen);
            return ExitCode.Clear;
        }

        var pictures = new List<(string Name, Picture Picture, SvgColours Colours)>
        {
            ("sheet", LadderSheet.Page(layout, answer.Curve, labels).Picture, Palettes.Screen),
            ("ladder", LadderDrawing.Page(layout).Picture, Palettes.Screen),
            ("upright", LadderDrawing.Upright(layout).Picture, Palettes.Screen),
            ("gauge", LadderDrawing.TrueSize(layout).Picture, Palettes.Paper),
        };
        if (answer.Sweep is { } sweep)
        {
            var tip = open.Run.LeverEnd!.Tip.Nominal.Metres;
            pictures.Add(("lever", LeverDrawing.Page(sweep, layout.Labels, open.Aircraft.Display, new() { TipLength = tip }), Palettes.Screen));
        }

        if (answer.Route is { Lie: not null } route)
            pictures.Add(("route", RouteDrawing.Page(route, answer.Words.Name, open.Aircraft.Display, open.Run.Cable?.Conduit?.MinRadius?.Metres), Palettes.Screen));

        if (answer.Clearance is { Handle: not null, Pairs.Count: > 0 } clearance)
        {
            var worst = clearance.Pairs.OrderBy(p => p.Lower).ThenBy(p => p.Upper).ThenByDescending(p => p.Found.Overlap).First();
            pictures.Add(("clearance", WorstPlaceDrawing.Page(clearance, worst, answer.Words.Name, open.Aircraft.Display), Palettes.Screen));
        }

        if (MountMap.Of(open.Aircraft, answer, new() { Meshes = open.File.Meshes.GetValueOrDefault, Threads = Environment.ProcessorCount }) is { } map)
            pictures.Add(("map", ClearanceMapDrawing.Page(map, answer.Words.Name, open.Aircraft.Display), Palettes.Screen));

        if (!Write(screen, folder, pictures.Select(p => ($"{open.Run.Id}-{p.Name}", Named.Over(p.Picture, open.Aircraft.Name, answer.Words.Name), p.Colours))))
            return ExitCode.Unusable;
        screen.Line("The gauge is at true size: print it at 100 % and check its scale bar with a steel rule first.");
        Console.Out.Write(screen);
        return ExitCode.Clear;
    }

    /// <summary>Pairs that concern no one run; null: a run of the file is called so, or the file can't be read, which is told as for a run.</summary>
    private static int? PlotCockpit(string path, string? folder, bool plain, string[] tries)
    {
        var result = Loading.Read(path, tries, out _);
        if (result.Aircraft is not { } aircraft || Loading.FindRun(aircraft, CheckScreen.CockpitWord, out _) is not null)
            return null;
        var cockpit = CockpitCheck.Solve(aircraft, null, new() { Meshes = result.Meshes.GetValueOrDefault, Threads = Environment.ProcessorCount });
        var pairs = cockpit?.Movers.Where(p => p.Found.FirstPart.Length > 0 && p.Found.Ended != Shapes.Distance.SearchEnd.Enough).OrderBy(p => p.Lower).ThenBy(p => p.Upper).ToList() ?? [];
        var screen = new Screen(plain);
        if (folder is null || pairs.Count == 0)
        {
            screen.Wrapped("", pairs.Count == 0 ? "Nothing that moves and is no handle comes near a sheet or another body." : $"{Words.Capital(Words.Count(pairs.Count))} pair{(pairs.Count == 1 ? "" : "s")} that come near each other: --svg FOLDER draws them.");
            Console.Out.Write(screen);
            return ExitCode.Clear;
        }

        if (!Write(screen, folder, pairs.Select(p => ($"cockpit-{AircraftAnswer.FigureOf(p)}", Named.Over(WorstPlaceDrawing.Page(cockpit!, p, aircraft.Display), aircraft.Name, "cockpit"), Palettes.Screen))))
            return ExitCode.Unusable;
        Console.Out.Write(screen);
        return ExitCode.Clear;
    }

    private static bool Write(Screen screen, string folder, IEnumerable<(string Name, Picture Picture, SvgColours Colours)> pictures)
    {
        try
        {
            Directory.CreateDirectory(folder);
            var files = pictures.Select(p => (Path.Combine(folder, $"{p.Name}.svg"), (ReadOnlyMemory<byte>)Encoding.UTF8.GetBytes(SvgWriter.Write(p.Picture, p.Colours)))).ToList();
            if (!Written.TryWrite(files, true, out var told))
            {
                Console.Error.WriteLine(told);
                return false;
            }

            foreach (var line in told.Split('\n'))
                screen.Line(line);
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine(e.Message);
            return false;
        }
    }
}
