using Throwright.Papers.Marks;
using System.CommandLine;
using Throwright.Cli.Terminal;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Shapes.Quantities;

namespace Throwright.Cli.Commands;

/// <summary>throwright explain: formula, inputs, values on the way, source and uncertainty of a figure.</summary>
internal static class ExplainCommand
{
    public static Command Make()
    {
        var file = new Argument<string>("file") { Description = "Aircraft file." };
        var run = new Argument<string>("run") { Description = "Run, by its id; or \"cockpit\" for what concerns no one run." };
        var figure = new Argument<string?>("figure") { Description = "Figure; left out: a list of them.", Arity = ArgumentArity.ZeroOrOne };
        var plain = new Option<bool>("--plain") { Description = "Plain characters, no colour." };
        var tries = new Option<string[]>("--try") { Description = "Change a value for this answer only: run/path=value.", AllowMultipleArgumentsPerToken = false };
        var command = new Command("explain", "Explain a figure: formula, inputs, steps, source, uncertainty.") { file, run, figure, plain, tries };
        command.SetAction(parsed => Explain(parsed.GetValue(file)!, parsed.GetValue(run)!, parsed.GetValue(figure), parsed.GetValue(plain), parsed.GetValue(tries) ?? []));
        return command;
    }

    private static int Explain(string path, string runName, string? figureId, bool plain, string[] tries)
    {
        if (runName.Equals(CheckScreen.CockpitWord, StringComparison.OrdinalIgnoreCase) && ExplainCockpit(path, figureId, plain, tries) is { } code)
            return code;
        if (OneRun.Open(path, runName, tries) is not { } open)
            return ExitCode.Unusable;
        if (figureId is not null && MountFigures.Ids.Contains(figureId))
            return ExplainMount(open, figureId, plain);
        var answer = RunCheck.Check(open.Aircraft, open.Run, new(), new CockpitEffort { Meshes = open.File.Meshes.GetValueOrDefault, Cures = false });
        var say = new FigureWriter(open.Aircraft.Display);
        var screen = new Screen(plain);
        if (figureId is null)
        {
            Ids(screen, answer.Words.Name, answer.Figures, say);
            if (answer.Clearance is not null)
                screen.Line().Wrapped("  ", $"Of the mount that \"solve mount\" searches: {string.Join(", ", MountFigures.Ids)}.");
            foreach (var need in answer.Needs)
                screen.Wrapped("  needs input  ", $"{need.Name} ({need.Path}): opens {need.Opens}");
            Console.Out.Write(screen);
            return ExitCode.Clear;
        }

        if (answer.Find(figureId) is not { } figure)
        {
            Console.Error.WriteLine(Loading.UnknownFigure(answer, figureId));
            return ExitCode.Unusable;
        }

        Show(screen, answer.Words.Name, answer.Findings, figure, say);
        Console.Out.Write(screen);
        return ExitCode.Clear;
    }

    /// <summary>A figure of the mount, which a search has to find first.</summary>
    private static int ExplainMount(OneRun open, string figureId, bool plain)
    {
        var say = new FigureWriter(open.Aircraft.Display);
        var solve = new MountSolve(open.Aircraft, open.Run, say, new() { Meshes = open.File.Meshes.GetValueOrDefault, Threads = Environment.ProcessorCount });
        var answer = solve.Obstacle is null ? solve.Find(withOthers: false) : null;
        if (answer is null || MountFigures.Of(answer).FirstOrDefault(f => f.Id == figureId) is not { } figure)
        {
            Console.Error.WriteLine(answer?.Sentence ?? solve.Obstacle);
            return ExitCode.Unusable;
        }

        var screen = new Screen(plain);
        Show(screen, RunWords.Of(open.Run).Name, answer.Findings, figure, say);
        Console.Out.Write(screen);
        return ExitCode.Clear;
    }

    /// <summary>A figure that concerns no one run; null: a run of the file is called so, or the file can't be read, which is told as for a run.</summary>
    private static int? ExplainCockpit(string path, string? figureId, bool plain, string[] tries)
    {
        var result = Loading.Read(path, tries, out _);
        if (result.Aircraft is not { } aircraft || Loading.FindRun(aircraft, CheckScreen.CockpitWord, out _) is not null)
            return null;
        var answer = new AircraftAnswer(aircraft, []) { Cockpit = CockpitCheck.Solve(aircraft, null, new() { Meshes = result.Meshes.GetValueOrDefault, Threads = Environment.ProcessorCount }) };
        var say = new FigureWriter(aircraft.Display);
        var screen = new Screen(plain);
        if (figureId is null)
        {
            Ids(screen, "cockpit", answer.Figures, say);
        }
        else if (answer.Find(figureId) is { } figure)
        {
            Show(screen, "cockpit", answer.Findings, figure, say);
        }
        else
        {
            Console.Error.WriteLine($"There is no figure \"{figureId}\" for the cockpit. There are: {string.Join(", ", answer.Figures.Select(f => f.Id))}.");
            return ExitCode.Unusable;
        }

        Console.Out.Write(screen);
        return ExitCode.Clear;
    }

    private static void Ids(Screen screen, string name, IReadOnlyCollection<Figure> figures, FigureWriter say)
    {
        screen.Line($"{name}: figures that can be explained", bold: true).Line();
        var width = figures.Max(f => (int?)f.Id.Length) ?? 0;
        foreach (var f in figures)
            screen.Wrapped($"  {f.Id.PadRight(width)}  {say.Text(f.Kind, f.Value, f.Rounding),-12}  ", f.Name);
    }

    private static void Show(Screen screen, string name, IReadOnlyCollection<Finding> findings, Figure figure, FigureWriter say)
    {
        string Text(double si) => say.Text(figure.Kind, si, figure.Rounding);
        screen.Wrapped("", $"{name}: {figure.Name}", bold: true).Line();
        screen.Line($"  {Text(figure.Value)}", bold: true);
        if (figure.Least is { } least && figure.Most is { } most)
            screen.Line($"  worst case {say.Text(figure.Kind, least, Rounding.Down)} to {say.Text(figure.Kind, most, Rounding.Up)}");
        else if (figure.Most is { } only)
            screen.Line($"  worst case {say.Text(figure.Kind, only, Rounding.Up)}");
        if (figure.Low95 is { } low && figure.High95 is { } high)
            screen.Line($"  95 % of installations: {Text(low)} to {Text(high)}");
        foreach (var finding in findings.Where(f => f.Figure == figure.Id))
        {
            var limit = finding.Limit is { } held ? $" (limit: at {(held.IsLeast ? "least" : "most")} {say.Text(held.Kind, held.Value)})" : "";
            screen.Wrapped($"  {GapMark.Word(finding.Verdict)}: ", finding.Sentence + limit);
            if (finding.Sources.Count > 0)
                screen.Wrapped("    verdict from  ", string.Join("; ", finding.Sources.Select(Words.SourceText).Distinct()));
        }

        screen.Line().Wrapped("  formula   ", figure.Formula);
        Steps(screen, "  inputs    ", figure.Inputs, say);
        Steps(screen, "  steps     ", figure.Steps, say);
        if (figure.Holds.Length > 0)
            screen.Wrapped("  holds     ", figure.Holds);
        if (figure.Uncertainty.Length > 0)
            screen.Wrapped("  how sure  ", figure.Uncertainty);
        if (figure.Shares.Count > 0)
        {
            var lead = "  moves it  ";
            foreach (var share in figure.Shares.Take(8))
            {
                screen.Wrapped(lead, $"{say.Text(figure.Kind, share.Moves, Rounding.Up),-12} either way: {share.Input}{(share.Path.Length > 0 ? $" ({share.Path})" : "")}");
                lead = "            ";
            }

            screen.Wrapped("            ", $"Measure the {figure.Shares[0].Input} better first.");
        }

        screen.Wrapped("  source    ", string.Join("; ", figure.Sources.Select(Words.SourceText)));
    }

    private static void Steps(Screen screen, string first, IReadOnlyList<FigureStep> steps, FigureWriter say)
    {
        if (steps.Count == 0)
            return;
        var letter = steps.Max(s => s.Letter.Length);
        var lead = first;
        foreach (var step in steps)
        {
            var value = step.Kind == QuantityKind.Ratio ? Plain(step.Value) : say.Text(step.Kind, step.Value);
            var limits = (step.Minus, step.Plus) switch
            {
                (0, 0) => "",
                var (minus, plus) when Math.Abs(minus - plus) <= 1e-9 * Math.Abs(plus) => $" ± {Limit(step.Kind, plus, say)}",
                var (minus, plus) => $" +{Limit(step.Kind, plus, say)} −{Limit(step.Kind, minus, say)}",
            };
            var from = step.From.Length > 0 ? $"  [{step.From}]" : "";
            screen.Wrapped($"{lead}{step.Letter.PadRight(letter)} = ", $"{value}{limits}  {step.Name}{from}");
            lead = "            ";
        }
    }

    private static string Limit(QuantityKind kind, double si, FigureWriter say) => kind == QuantityKind.Ratio ? Plain(si) : say.Text(kind, si, Rounding.Up);

    /// <summary>Four significant figures, whatever the size: gives are in m/N.</summary>
    private static string Plain(double value) => value.ToString("G4", System.Globalization.CultureInfo.InvariantCulture);
}
