using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Papers.Ladder;
using Throwright.Papers.Marks;

namespace Throwright.Cli.Terminal;

/// <summary>The answer of a check as a mechanic reads it at the bench.</summary>
public static class CheckScreen
{
    /// <summary>A sentence, a list, the ladders asked for, and what to do.</summary>
    /// <param name="file">The file's name as typed, for the commands to copy.</param>
    /// <param name="ladders">Which runs get a ladder.</param>
    /// <param name="detail">Show every finding of the chosen runs, clear ones too.</param>
    public static void Show(Screen screen, string file, AircraftAnswer answer, Func<RunAnswer, bool> ladders, bool detail)
    {
        ArgumentNullException.ThrowIfNull(screen);
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(ladders);
        screen.Wrapped("", Words.Headline(answer), bold: true).Line();
        List(screen, answer);
        Clearance(screen, answer);
        Own(screen, file, answer);
        foreach (var run in WorstFirst(answer))
        {
            var withLadder = ladders(run);
            var findings = run.Findings.Where(f => detail || f.Verdict == Verdict.Fail || (withLadder && f.Verdict != Verdict.Clear)).ToList();
            if (!withLadder && findings.Count == 0)
                continue;
            screen.Line();
            Title(screen, run);
            if (withLadder)
                Ladder(screen, answer, run);
            // Rules of installation that fail speak in full; what they only caution about takes a line, or they would bury the rest.
            foreach (var finding in findings.Where(f => detail || !IsBrief(f)))
                Finding(screen, file, run, finding);
            if (!detail && withLadder)
                Briefly(screen, file, run, [.. findings.Where(IsBrief)]);
        }
    }

    /// <summary>Worst first; equal ones as mounted.</summary>
    public static IEnumerable<RunAnswer> WorstFirst(AircraftAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return answer.Runs.OrderByDescending(r => r.Verdict);
    }

    private static void List(Screen screen, AircraftAnswer answer)
    {
        var name = Math.Min(24, answer.Runs.Max(r => (int?)r.Words.Name.Length) ?? 0);
        foreach (var run in WorstFirst(answer))
        {
            var label = run.Words.Name.Length > name ? run.Words.Name[..name] : run.Words.Name.PadRight(name);
            // Mark and word take 19 columns; the sentence goes on below itself.
            screen.Raw($"  {label}  ").Spans(GapMark.Characters(run.Verdict, screen.IsPlain));
            var indent = 2 + name + 2 + 19 + 1;
            var lines = new Screen(screen.IsPlain).Wrapped(new(' ', indent), run.Sentence).ToString();
            screen.Raw(" " + lines[indent..]);
        }
    }

    /// <summary>What was proved of the cockpit as a whole.</summary>
    private static void Clearance(Screen screen, AircraftAnswer answer)
    {
        if (answer.Cockpit is not { Clearance: { } of } cockpit)
            return;
        screen.Line();
        if (of.Closest is not { } closest)
        {
            screen.Wrapped("  clearance  ", "no handle is described that could meet anything.");
            return;
        }

        var say = new FigureWriter(answer.Aircraft.Display);
        int open = of.Pairs.Count(p => p.Found.Ended is Shapes.Distance.SearchEnd.OutOfBudget or Shapes.Distance.SearchEnd.Cancelled), hits = of.Pairs.Count(p => p.Hits);
        var pairs = of.Pairs.Count == 1 ? "One pair of bodies" : $"{Words.Capital(Words.Count(of.Pairs.Count))} pairs of bodies";
        var nearest = hits > 0 ? $"{Words.Count(hits)} touch{(hits == 1 ? "es" : "")}"
            : $"nearest {closest.First.Name} and {closest.Second.Name}, at least {say.Length(closest.Lower, Shapes.Quantities.Rounding.Down)} (found {say.Length(closest.Upper)})";
        screen.Wrapped("  clearance  ", $"{pairs}, every position of both, {(open == 0 ? "all settled" : $"{Words.Count(open)} not settled within the budget")}; {nearest}.");
        if (cockpit.Movers.Count > 0)
        {
            var movers = cockpit.Movers;
            var touching = movers.Count(p => p.Hits);
            var closestMovers = movers.MinBy(p => (p.Lower, p.Upper))!;
            screen.Wrapped("             ", $"What moves and is no handle: {Words.Count(movers.Count)} pair{(movers.Count == 1 ? "" : "s")}; " + (touching > 0
                ? $"{Words.Count(touching)} touch{(touching == 1 ? "es" : "")}."
                : $"nearest {closestMovers.First.Name} and {closestMovers.Second.Name}, at least {say.Length(closestMovers.Lower, Shapes.Quantities.Rounding.Down)}."));
        }

        Listed(screen, "allowed", answer.AllowedLines);
        Listed(screen, "left out", answer.LeftOut.Select(l => l.Why.Length > 0 ? $"{l.What}: {l.Why}" : l.What));
    }

    private static void Listed(Screen screen, string lead, IEnumerable<string> lines)
    {
        var first = true;
        foreach (var line in lines)
        {
            screen.Wrapped(first ? $"  {lead,-11}" : "             ", line + ".");
            first = false;
        }
    }

    private static void Own(Screen screen, string file, AircraftAnswer answer)
    {
        var findings = answer.Findings.Where(f => f.Verdict is Verdict.Fail or Verdict.Caution).ToList();
        if (findings.Count == 0)
            return;
        screen.Line().Line("COCKPIT  what concerns no one run", bold: true);
        foreach (var finding in findings)
            Finding(screen, file, CockpitWord, finding);
    }

    /// <summary>Word for the aircraft itself where a command asks for a run.</summary>
    public const string CockpitWord = "cockpit";

    private static void Title(Screen screen, RunAnswer run)
    {
        var how = run.Run.How.Length > 0 ? "  " + run.Run.How.ToLowerInvariant() : "";
        screen.Line(run.Words.Name + how, bold: true);
    }

    private static void Ladder(Screen screen, AircraftAnswer answer, RunAnswer run)
    {
        var layout = RunLadder.LayoutOf(run, answer.Aircraft.Display);
        screen.Line().Block(LadderDrawing.Characters(layout, new() { Width = screen.Width, Plain = screen.IsPlain })).Line();
    }

    private static void Finding(Screen screen, string file, RunAnswer run, Finding finding) => Finding(screen, file, run.Run.Id, finding);

    /// <summary>One finding with its remedies and sources.</summary>
    /// <param name="run">Id of the run, for the command that explains its figure; empty: none.</param>
    internal static void Finding(Screen screen, string file, string run, Finding finding)
    {
        screen.Raw("  ").Spans(GapMark.Characters(finding.Verdict, screen.IsPlain));
        var lines = new Screen(screen.IsPlain).Wrapped(new(' ', 22), finding.Sentence).ToString();
        screen.Raw(" " + lines[22..]);
        if (finding.Why.Length > 0 && finding.Verdict != Verdict.Clear)
            screen.Wrapped("          ", finding.Why);
        for (var i = 0; i < finding.Remedies.Count; i++)
        {
            var remedy = finding.Remedies[i];
            screen.Wrapped(i == 0 ? "          do    " : "          or    ", remedy.Text, bold: i == 0);
            if (remedy.Tries.Count > 0)
                screen.Command("          try   ", $"throwright check {Shell(file)} " + string.Join(' ', remedy.Tries.Select(t => $"--try {Shell(t)}")));
        }

        if (finding.Figure is { } figure && finding.Verdict != Verdict.Clear && run.Length > 0)
            screen.Command("          why   ", $"throwright explain {Shell(file)} {run} {figure}");
        if (finding.Sources.Count > 0)
            screen.Wrapped("          from  ", string.Join("; ", finding.Sources.Select(Words.SourceText).Distinct()), code: "2");
    }

    private static bool IsRule(Finding finding) => finding.Rule.StartsWith("prove/", StringComparison.Ordinal) || finding.Rule.StartsWith("heat/", StringComparison.Ordinal);

    private static bool IsBrief(Finding finding) => finding.Verdict != Verdict.Fail && IsRule(finding);

    private static void Briefly(Screen screen, string file, RunAnswer run, List<Finding> findings)
    {
        screen.Line().Line("Rules of installation");
        foreach (var finding in findings)
        {
            screen.Raw("  ").Spans(GapMark.Characters(finding.Verdict, screen.IsPlain));
            var lines = new Screen(screen.IsPlain).Wrapped(new(' ', 22), finding.Sentence).ToString();
            screen.Raw(" " + lines[22..]);
        }

        var clear = run.Findings.Count(f => IsRule(f) && f.Verdict == Verdict.Clear);
        screen.Command("  ", $"{clear} more {(clear == 1 ? "is" : "are")} clear. All with their sources: throwright check {Shell(file)} --run {run.Run.Id}");
    }

    /// <summary>Quoted for a shell when it holds anything but plain characters.</summary>
    public static string Shell(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.All(c => char.IsAsciiLetterOrDigit(c) || "/.-_=:+%@,".Contains(c)) && text.Length > 0
            ? text
            : "'" + text.Replace("'", "'\\''", StringComparison.Ordinal) + "'";
    }
}
