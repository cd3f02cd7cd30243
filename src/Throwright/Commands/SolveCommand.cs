using System.CommandLine;
using Throwright.Cli.Terminal;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Throw;
using Throwright.Files;
using Throwright.Shapes.Quantities;

namespace Throwright.Cli.Commands;

/// <summary>throwright solve: finds a dimension of one run, shows every solution, and writes the recommended one if asked.</summary>
internal static class SolveCommand
{
    private static readonly Argument<string> FileArgument = new("file") { Description = "Aircraft file." };
    private static readonly Argument<string> RunArgument = new("run") { Description = "Run, by its id." };
    private static readonly Option<bool> Plain = new("--plain") { Description = "Plain characters, no colour." };
    private static readonly Option<bool> Write = new("--write") { Description = "Put the recommended solution into the file; comments stay." };

    public static Command Make()
    {
        var wantedThrow = LengthOption("--throw", "Wanted wire travel, e.g. \"2 in\".");
        var wantedIn = LengthOption("--in", "Wanted knob cushion at the IN stop.");
        var wantedOut = LengthOption("--out", "Wanted knob cushion at the OUT stop.");
        var strokes = new Option<string[]>("--stroke") { Description = "A stroke your maker offers; repeat for each. Else a usual series.", AllowMultipleArgumentsPerToken = false };
        var aim = new Option<string>("--for") { Description = "square: wire square to the arm at mid travel; equal-arms: same leverage at both stops; swing: same swing to both sides; throw: the travel given with --throw." };
        aim.AcceptOnlyFromAmong("square", "equal-arms", "swing", "throw");
        var swivel = Sub("swivel", "Where the swivel sits on the wire: balanced, or for --in or --out.", [wantedIn, wantedOut], (p, s, _) => s.Swivel(Metres(p.GetValue(wantedIn)), Metres(p.GetValue(wantedOut))));
        swivel.Validators.Add(r =>
        {
            if (r.GetResult(wantedIn) is not null && r.GetResult(wantedOut) is not null)
                r.AddError("--in or --out, not both: what one end gets the other loses");
        });
        return new Command("solve", "Find a dimension that makes a run work.")
        {
            Sub("hole", "Which of the arm's drilled holes.", [], (_, s, _) => s.Hole()),
            Sub("arm", "Arm radius: for --throw, or the largest that leaves the wanted cushion.", [wantedThrow], (p, s, _) => s.Arm(Metres(p.GetValue(wantedThrow)))),
            Sub("clocking", "Where the arm is clocked on its spindle.", [aim, wantedThrow], (p, s, _) => s.Clocking(Aim(p.GetValue(aim), p.GetValue(wantedThrow)), Metres(p.GetValue(wantedThrow)))),
            Sub("anchor", "Where the anchor stands.", [aim, wantedThrow], (p, s, _) => s.Anchor(Aim(p.GetValue(aim), p.GetValue(wantedThrow)), Metres(p.GetValue(wantedThrow)))),
            swivel,
            MountCommand.Make(),
            Sub("stroke", "The smallest stroke that leaves the wanted cushions.", [strokes], (p, s, _) => s.Stroke(Strokes(p.GetValue(strokes)))),
            SolveRouteCommand.Make(FileArgument, RunArgument, Plain, Write),
        };
    }

    private static Command Sub(string name, string description, Option[] options, Func<ParseResult, Solve, FigureWriter, SolveAnswer> solve)
    {
        var command = new Command(name, description) { FileArgument, RunArgument, Plain, Write };
        foreach (var option in options)
            command.Add(option);
        command.SetAction(parsed => Run(parsed, solve));
        return command;
    }

    private static Option<string?> LengthOption(string name, string description)
    {
        var option = new Option<string?>(name) { Description = description };
        option.Validators.Add(r =>
        {
            var text = r.GetValueOrDefault<string?>();
            if (text is not null && !UnitText.TryRead<Length>(text, out _, out var problem))
                r.AddError($"{name} \"{text}\": {problem}; expected {UnitText.Expected(QuantityKind.Length)}");
        });
        return option;
    }

    private static double? Metres(string? text) =>
        text is not null && UnitText.TryRead<Length>(text, out var value, out _) ? value.Nominal.Metres : null;

    private static List<double>? Strokes(string[]? texts) =>
        texts is { Length: > 0 } ? [.. texts.Select(Metres).OfType<double>()] : null;

    private static SweepAim Aim(string? word, string? wantedThrow) => word switch
    {
        "square" => SweepAim.SquareAtMid,
        "equal-arms" => SweepAim.EqualEndArms,
        "swing" => SweepAim.BalancedSwing,
        "throw" => SweepAim.Throw,
        _ => wantedThrow is null ? SweepAim.BalancedSwing : SweepAim.Throw,
    };

    private static int Run(ParseResult parsed, Func<ParseResult, Solve, FigureWriter, SolveAnswer> find)
    {
        var path = parsed.GetValue(FileArgument)!;
        if (OneRun.Open(path, parsed.GetValue(RunArgument)!, []) is not { } open)
            return ExitCode.Unusable;
        var say = new FigureWriter(open.Aircraft.Display);
        var solve = new Solve(open.Aircraft, open.Run, say, open.File.Meshes.GetValueOrDefault);
        if (solve.Obstacle is { } obstacle)
        {
            Console.Error.WriteLine(obstacle);
            return ExitCode.Unusable;
        }

        var answer = find(parsed, solve, say);
        var screen = new Screen(parsed.GetValue(Plain));
        screen.Wrapped("", answer.Sentence, bold: true);
        if (answer.Choices.Count > 0)
            Table(screen.Line(), answer, say);
        var code = answer.Best is null ? ExitCode.Fail : ExitCode.Clear;
        if (answer.Best is { } best)
        {
            if (best.Why.Length > 0)
                screen.Line().Wrapped("  why   ", best.Why);
            if (!best.Works)
                code = ExitCode.Fail;
            if (parsed.GetValue(Write) && !best.Works)
                screen.Line().Line("Not written: with it the run would fail or keep less than the wanted cushion.");
            else if (parsed.GetValue(Write))
                code = Keep(screen, path, open, best.Edits);
            else if (best.Edits.Count > 0 && best.CanBeRigged)
                screen.Line().Command("  try   ", $"throwright check {CheckScreen.Shell(path)} " + string.Join(' ', best.Edits.Select(e => "--try " + CheckScreen.Shell($"{open.Run.Id}/{e.Path}={e.Value}"))));
        }

        Console.Out.Write(screen);
        return code;
    }

    private static void Table(Screen screen, SolveAnswer answer, FigureWriter say)
    {
        var unit = say.LengthUnitName;
        string[] heads = ["", $"throw {unit}", "in", "out", "tip", "worst", "wire/arm", "swing", "hand", ""];
        var rows = new List<string[]> { heads };
        for (var i = 0; i < answer.Choices.Count; i++)
        {
            var choice = answer.Choices[i];
            var (ladder, sweep, forces) = (choice.Answer.Ladder, choice.Answer.Sweep, choice.Answer.Forces);
            string Left(double? v) => v is { } m ? say.LengthNumber(m, Rounding.Down) : "-";
            rows.Add(
            [
                (i == answer.Recommended ? screen.IsPlain ? "> " : "→ " : "  ") + choice.Label,
                sweep is { IsMonotone: true } ? say.LengthNumber(sweep.Throw) : "-",
                Left(ladder?.KnobIn.Nominal), Left(ladder?.KnobOut.Nominal), Left(ladder?.TipAtPull.Nominal),
                Left(ladder is null ? null : Math.Min(Math.Min(ladder.KnobIn.Least, ladder.KnobOut.Least), Math.Min(ladder.TipAtPull.Least, ladder.TipAtPush.Least))),
                sweep is null ? "-" : say.Angle(sweep.LeastTransmission, Rounding.Down),
                sweep is null ? "-" : say.Angle(sweep.MostSwing, Rounding.Up),
                forces is null ? "-" : say.Force(Math.Max(forces.MostPull.Nominal, forces.MostPush.Nominal)),
                choice.Works ? "cushions kept" : sweep is not { IsMonotone: true } ? "dead centre" : choice.CanBeRigged ? "" : "knob in the panel",
            ]);
        }

        var widths = Enumerable.Range(0, heads.Length).Select(c => rows.Max(r => r[c].Length)).ToArray();
        foreach (var row in rows)
            screen.Line("  " + string.Join("  ", row.Select((cell, c) => c == 0 || c == row.Length - 1 ? cell.PadRight(widths[c]) : cell.PadLeft(widths[c]))).TrimEnd(), bold: row[0].StartsWith('→'));
    }

    /// <summary>Puts the changes into the file, or says why not.</summary>
    internal static int Keep(Screen screen, string path, OneRun open, IReadOnlyList<TrialEdit> edits)
    {
        var text = open.File.Text;
        foreach (var edit in edits)
        {
            if (!Loading.TryChange(text, $"{open.Run.Id}/{edit.Path}={edit.Value}", out var changed, out var problem))
            {
                screen.Line().Line($"Not written: {problem}.");
                return ExitCode.Unusable;
            }

            text = changed!;
        }

        var saved = AircraftFile.Save(path, text, open.File.Stamp);
        screen.Line().Wrapped("  ", saved.IsSaved
            ? $"Written to {path}: " + string.Join("; ", edits.Select(e => $"{open.Run.Id}/{e.Path} = {e.Value}")) + ". The file before it is kept beside it as a backup."
            : saved.Message);
        return saved.IsSaved ? ExitCode.Clear : ExitCode.Unusable;
    }
}
