using System.CommandLine;
using Throwright.Cli.Terminal;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Mount;
using Throwright.Formats.Drawing;
using Throwright.Papers.Clearance;
using Throwright.Papers.Marks;
using Throwright.Shapes.Quantities;

namespace Throwright.Cli.Commands;

/// <summary>throwright solve mount: the smallest tilt at which a handle clears, with its proof, and what to move instead.</summary>
internal static class MountCommand
{
    public static Command Make()
    {
        var file = new Argument<string>("file") { Description = "Aircraft file." };
        var run = new Argument<string>("run") { Description = "Run, by its id." };
        var plain = new Option<bool>("--plain") { Description = "Plain characters, no colour." };
        var write = new Option<bool>("--write") { Description = "Put the tilt into the file; comments stay." };
        var clear = new Option<string?>("--clear") { Description = "Clearance to reach, e.g. \"1/2 in\". Left out: as the file asks." };
        clear.Validators.Add(r =>
        {
            if (r.Tokens is [var token, ..] && Metres(token.Value) is not >= 0)
                r.AddError($"--clear \"{token.Value}\": a length of zero or more is expected, e.g. \"1/2 in\"");
        });
        var cells = new Option<int>("--map") { Description = "Cells of the clearance map each way; 0: no map.", DefaultValueFactory = _ => 15 };
        cells.Validators.Add(r =>
        {
            if (r.Tokens is [var token, ..] && !(int.TryParse(token.Value, System.Globalization.CultureInfo.InvariantCulture, out var n) && n is >= 0 and <= 81))
                r.AddError($"--map \"{token.Value}\": a whole number from 0 to 81 is expected");
        });
        var svg = new Option<string?>("--svg") { Description = "Write the clearance map as a picture to this file." };
        var command = new Command("mount", "The smallest tilt at which the handle clears everything.") { file, run, plain, write, clear, cells, svg };
        command.SetAction((parsed, cancel) => Task.FromResult(Solve(
            parsed.GetValue(file)!, parsed.GetValue(run)!, parsed.GetValue(plain), parsed.GetValue(write), parsed.GetValue(clear), parsed.GetValue(cells), parsed.GetValue(svg), cancel)));
        return command;
    }

    private static double? Metres(string? text) => text is not null && UnitText.TryRead<Length>(text, out var read, out _) ? read.Nominal.Metres : null;

    private static int Solve(string path, string runName, bool plain, bool write, string? clear, int cells, string? svg, CancellationToken cancel)
    {
        if (OneRun.Open(path, runName, []) is not { } open)
            return ExitCode.Unusable;
        var say = new FigureWriter(open.Aircraft.Display);
        var solve = new MountSolve(open.Aircraft, open.Run, say, new() { Meshes = open.File.Meshes.GetValueOrDefault, Threads = Environment.ProcessorCount, Cancel = cancel }, Metres(clear));
        if (solve.Obstacle is { } obstacle)
        {
            Console.Error.WriteLine(obstacle);
            return ExitCode.Unusable;
        }

        var answer = solve.Find();
        var screen = new Screen(plain);
        screen.Wrapped("", answer.Sentence, bold: true).Line();
        Now(screen, answer, say);
        // Without a map in the terminal the picture has one all the same.
        var map = (cells > 0 || svg is not null) && !cancel.IsCancellationRequested ? solve.Map(answer, cells > 0 ? cells : MountMap.UsualCells) : null;
        if (map is not null && cells > 0)
            Map(screen.Line(), map, say);
        if (cancel.IsCancellationRequested)
        {
            Console.Error.WriteLine("Stopped by you. Nothing was written.");
            return ExitCode.Stopped;
        }

        if (answer.Findings.Count > 0)
            screen.Line();
        foreach (var finding in answer.Findings)
        {
            screen.Raw("  ").Spans(GapMark.Characters(finding.Verdict, screen.IsPlain));
            var indent = 2 + 19 + 1;
            screen.Raw(" " + new Screen(plain).Wrapped(new(' ', indent), finding.Sentence).ToString()[indent..]);
            if (finding.Why.Length > 0)
                screen.Wrapped(new(' ', 10), finding.Why, code: "2");
        }

        if (answer.Instead.Count > 0)
        {
            screen.Line().Line(answer.Best is null ? "What would cure it instead, each proved:" : "Instead of a tilt, each proved:");
            foreach (var change in answer.Instead)
            {
                screen.Wrapped("  do    ", change.Text);
                Try(screen, path, open, change);
            }
        }

        screen.Line().Command("  why   ", $"throwright explain {CheckScreen.Shell(path)} {CheckScreen.Shell(open.Run.Id)} {(answer.Best is null ? MountFigures.NoneBelow : MountFigures.LeastTilt)}");
        screen.Line();
        foreach (var note in answer.Notes)
            screen.Wrapped("", note, code: "2");
        screen.Wrapped("", "Rigid bodies as entered: flexing, hands and conduits whose way the file does not say are not in it. Try it with a cardboard wedge before you cut metal. Not an approval.", code: "2");
        if (map is not null && svg is not null)
        {
            var picture = ClearanceMapDrawing.Page(map, RunWords.Of(open.Run).Name, open.Aircraft.Display);
            if (!Written.TryWrite(svg, System.Text.Encoding.UTF8.GetBytes(SvgWriter.Write(picture, Palettes.Screen)), out var told))
            {
                Console.Error.WriteLine(told);
                return ExitCode.Unusable;
            }

            screen.Line().Line(told);
        }

        var code = answer.Best is null || answer.Findings.Any(f => f.Verdict == Verdict.Fail) ? ExitCode.Fail : ExitCode.Clear;
        if (answer.Best is { } best && write && code != ExitCode.Clear)
            screen.Line().Line("Not written: see what fails above.");
        else if (answer.Best is { } kept && write)
            code = SolveCommand.Keep(screen, path, open, kept.Edits);
        else if (answer.Best is { } tried && answer.Tilt != AsTilt(open.Run.CockpitEnd?.Tilt))
            Try(screen.Line(), path, open, tried);
        Console.Out.Write(screen);
        return code;
    }

    private static Tilt? AsTilt(Engine.Model.MountTilt? tilt) => tilt is null ? Tilt.None : new(Math.Tan(tilt.Up.Radians), Math.Tan(tilt.Right.Radians));

    private static void Try(Screen screen, string path, OneRun open, MountChange change) =>
        screen.Command("  try   ", $"throwright check {CheckScreen.Shell(path)} " + string.Join(' ', change.Edits.Select(e => "--try " + CheckScreen.Shell($"{open.Run.Id}/{e.Path}={e.Value}"))));

    private static void Now(Screen screen, MountAnswer answer, FigureWriter say)
    {
        screen.Wrapped("  now     ", answer.Now.Upper <= 0 ? $"it touches {answer.Nearest}" : $"at least {say.Length(answer.Now.Lower, Rounding.Down)} from everything, nearest {answer.Nearest}; wanted {say.Length(answer.Wanted)}");
        if (answer.Best is { } best)
            screen.Wrapped("  then    ", $"at least {say.Length(best.Clearance.Lower, Rounding.Down)} from everything, proved; found {say.Length(best.Clearance.Upper)}");
        if (answer is { FacingNow: { } before, FacingThen: { } then })
            screen.Wrapped("  facing  ", $"the shank points {say.Angle(then)} past the eye, before {say.Angle(before)}");
    }

    /// <summary>Up is up in the sheet; each cell is two columns wide.</summary>
    private static void Map(Screen screen, MountMap of, FigureWriter say)
    {
        var map = of.Cells;
        for (var row = map.Rows - 1; row >= 0; row--)
        {
            var line = new System.Text.StringBuilder(row == map.Rows - 1 ? "  up      " : row == 0 ? "  down    " : "          ");
            for (var column = 0; column < map.Columns; column++)
            {
                var cell = map.At(row, column);
                bool Holds(Tilt t) => t.Up >= cell.Range.UpFrom && t.Up <= cell.Range.UpTo && t.Right >= cell.Range.RightFrom && t.Right <= cell.Range.RightTo;
                var mark = cell.Answer switch { TiltCellAnswer.Keeps => 'o', TiltCellAnswer.Fails => '.', _ => '?' };
                line.Append(of.Chosen is { } best && Holds(best) ? 'X' : Holds(Tilt.None) ? '+' : mark).Append(' ');
            }

            screen.Line(line.ToString().TrimEnd());
        }

        screen.Line("          " + "left".PadRight(Math.Max(5, (2 * map.Columns) - 6)) + "right");
        screen.Wrapped("          ", $"o every tilt of the cell keeps {say.Length(of.Wanted)}, proved; . none does, proved; ? neither is proved of the whole cell; + square{(of.Chosen is null ? "" : "; X the tilt above")}. {say.Angle(of.Most)} each way.", code: "2");
    }
}
