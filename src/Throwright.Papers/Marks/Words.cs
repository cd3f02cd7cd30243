using System.Globalization;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Sources;

namespace Throwright.Papers.Marks;

/// <summary>What is said of an aircraft and of sources, in the same words on terminal, page and paper.</summary>
public static class Words
{
    private static readonly string[] Counts = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>The caution that stands wherever figures are shown.</summary>
    public const string Warning = "Fuel, engine and gear controls can kill. Follow the kit's plans and the makers' instructions, have the installation inspected by an appropriately licensed person, and work every control through its full travel on the ground before flight. Not an approval.";

    /// <summary>"One of six runs does not work yet."</summary>
    public static string Headline(AircraftAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var runs = OfRuns(answer);
        return answer.Runs.Count == 0 ? runs : (answer.OwnVerdict, answer.Count(Verdict.Fail)) switch
        {
            (Verdict.Fail, 0) => $"{runs.Replace("Nothing fails", "No run fails by itself", StringComparison.Ordinal)} But {answer.Findings[0].Sentence}",
            (Verdict.Fail, _) => $"{runs} And {answer.Findings[0].Sentence}",
            (Verdict.Caution, _) => $"{runs} What concerns no one run needs a second look too.",
            _ => runs,
        };
    }

    private static string OfRuns(AircraftAnswer answer)
    {
        int all = answer.Runs.Count, fail = answer.Count(Verdict.Fail), caution = answer.Count(Verdict.Caution), needs = answer.Count(Verdict.NeedsInput);
        if (all == 0)
            return "The file holds no runs yet.";
        var runs = all == 1 ? "the one run" : $"{Count(all)} runs";
        if (fail > 0)
            return all == 1 ? "The run does not work yet." : $"{Capital(Count(fail))} of {runs} {(fail == 1 ? "does" : "do")} not work yet.";
        if (caution > 0)
            return all == 1 ? "Nothing fails; the run needs a second look." : $"Nothing fails; {Count(caution)} of {runs} {(caution == 1 ? "needs" : "need")} a second look.";
        if (needs > 0)
            return all == 1 ? "What is known is clear; the run needs more input." : $"What is known is clear; {Count(needs)} of {runs} {(needs == 1 ? "needs" : "need")} more input.";
        return all == 1 ? "The run is clear." : $"All {runs} are clear.";
    }

    /// <summary>"14 CFR 23, 23.1141(g)(1): read".</summary>
    public static string SourceText(SourceRef source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var title = source.Id == "project" ? "" : Published.Source(source.Id).Title + ", ";
        return $"{(title + source.Place).TrimEnd(',', ' ')} ({EvidenceWord(source.Evidence)})";
    }

    public static string EvidenceWord(Evidence evidence) => evidence switch
    {
        Evidence.Read => "read",
        Evidence.ReadInPart => "read in part",
        Evidence.Secondary => "read second-hand",
        Evidence.Memory => "from memory, confirm before relying on it",
        Evidence.Derived => "derived",
        Evidence.Numerical => "computed independently",
        _ => "common practice",
    };

    /// <summary>Up to twelve in words.</summary>
    public static string Count(int n) => n >= 0 && n < Counts.Length ? Counts[n] : n.ToString(CultureInfo.InvariantCulture);

    public static string Capital(string words) => string.IsNullOrEmpty(words) ? "" : char.ToUpperInvariant(words[0]) + words[1..];
}
