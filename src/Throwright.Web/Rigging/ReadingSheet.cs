using System.Text.Json;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Rig;
using Throwright.Files;
using Throwright.Files.Description;
using Throwright.Files.Form;
using Throwright.Web.Editing;
using Throwright.Web.Parts;

namespace Throwright.Web.Rigging;

/// <summary>One line of a set of readings: what is asked, and what stands in it.</summary>
/// <param name="Name">As in the file.</param>
/// <param name="Label">What a hand reads.</param>
public sealed record ReadingLine(string Name, string Label)
{
    public FormField Field => FileForm.Find(FileForm.Run, "asBuilt." + Name)!;
}

/// <summary>What the readings say: the fit, what to do, and the record as it would stand in the file.</summary>
/// <param name="Entry">As JSON; null: nothing was read yet.</param>
/// <param name="Errors">By reading; "" for what concerns them all.</param>
public sealed record ReadingAnswer(string? Entry, IReadOnlyDictionary<string, string> Errors)
{
    public AsBuilt? Read { get; init; }
    public RigCase? Case { get; init; }
    public RigAnswer? Fit { get; init; }
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>The one step; empty: nothing to say yet.</summary>
    public string Advice { get; init; } = "";

    public bool CanBeKept => Entry is not null && Errors.Count == 0;
}

/// <summary>Takes readings as they are typed: read by the file's own reader, fitted, never written before they are kept.</summary>
public sealed class ReadingSheet(EditingSession session, string run, Func<Display> display)
{
    private const int MostTyped = 200;
    private readonly Dictionary<string, string> typed = [];

    /// <summary>In the order in which the card takes them.</summary>
    public static IReadOnlyList<ReadingLine> Lines { get; } =
    [
        new("knobAtPush", "knob from its IN stop, device at the push stop"),
        new("knobAtPull", "knob from its IN stop, device at the pull stop"),
        new("tipGap", "gap from swivel to conduit tip, device at the pull stop"),
        new("lostMotion", "lost motion at mid travel"),
        new("sweep", "arm from stop to stop"),
        new("pull", "slow pull through mid travel"),
        new("push", "slow push through mid travel"),
        new("hold", "pull that the locked control held"),
        new("temperature", "temperature in the shop"),
    ];

    public static IReadOnlyList<ReadingLine> About { get; } = [new("date", "date"), new("by", "read by"), new("note", "note")];

    public string At(string name) => typed.TryGetValue(name, out var text) ? text : session.DraftAt(Key(name)) ?? "";

    /// <summary>Keeps what is typed, also over a lost window.</summary>
    public void Type(string name, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        typed[name] = text.Length > MostTyped ? text[..MostTyped] : text;
        session.Draft(Key(name), typed[name].Trim().Length == 0 ? null : typed[name]);
    }

    public void Clear()
    {
        typed.Clear();
        foreach (var line in Lines.Concat(About))
            session.Draft(Key(line.Name), null);
    }

    /// <param name="today">Stands for a date that is not typed.</param>
    public ReadingAnswer Read(RunAnswer of, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(of);
        var given = Lines.Concat(About).Select(l => (l.Name, Text: FieldWords.WithUnit(At(l.Name).Trim(), l.Field, null, display()))).Where(g => g.Text.Length > 0).ToDictionary(g => g.Name, g => g.Text);
        if (!Lines.Any(l => given.ContainsKey(l.Name)))
            return new(null, new Dictionary<string, string>());
        given.TryAdd("date", today.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
        var entry = $"{{ {string.Join(", ", given.Select(g => $"\"{g.Key}\": {FileValues.Quoted(g.Value)}"))} }}";
        if (AircraftFile.RunIndex(session.Text, run) is not { } index || !TextEdit.TryAppend(session.Text, $"$.runs[{index}].asBuilt", entry, out var text, out var told))
            return new(null, new Dictionary<string, string> { [""] = "The run is not in the file." });
        var file = AircraftFile.Parse(session.FileName, text);
        var place = $"$.runs[{index}].asBuilt[{of.Run.AsBuilt.Count}]";
        var errors = new Dictionary<string, string>();
        foreach (var problem in file.Problems.Where(p => p.JsonPath.StartsWith(place, StringComparison.Ordinal)))
            errors.TryAdd(Lines.Concat(About).FirstOrDefault(l => problem.JsonPath == $"{place}.{l.Name}")?.Name ?? "", Said(problem));
        if (errors.Count > 0 || file.Aircraft?.Runs.FirstOrDefault(r => r.Id == run)?.AsBuilt is not [.., var read])
            return new(entry, errors);
        if (Engine.Chain.Rigging.CaseOf(of, read) is not { } rig)
            return new(entry, errors) { Read = read };
        var fit = RigSolver.Solve(rig);
        var say = new FigureWriter(display());
        return new(entry, errors) { Read = read, Case = rig, Fit = fit, Findings = [.. RigRules.Find(rig, fit, read.Date, say)], Advice = RigRules.Advice(rig, fit, say) };
    }

    /// <summary>Puts the readings into the file's record; they can be taken back with Undo.</summary>
    public bool TryKeep(ReadingAnswer answer, out string problem)
    {
        ArgumentNullException.ThrowIfNull(answer);
        problem = "";
        if (!answer.CanBeKept || AircraftFile.RunIndex(session.Text, run) is not { } index)
            return false;
        if (!session.TryAppend($"readings of {answer.Read?.Date ?? "today"}", $"$.runs[{index}].asBuilt", answer.Entry!, out var refused))
        {
            problem = Said(refused!);
            return false;
        }

        Clear();
        return true;
    }

    /// <summary>Takes readings from the phone page's file; false: it is none of this run.</summary>
    public bool TryTake(string json, out string problem)
    {
        try
        {
            using var read = JsonDocument.Parse(json);
            if (!read.RootElement.TryGetProperty("run", out var of) || of.GetString() != run || !read.RootElement.TryGetProperty("readings", out var readings))
            {
                problem = $"These are no readings of {run}.";
                return false;
            }

            foreach (var reading in readings.EnumerateObject().Where(r => r.Value.ValueKind == JsonValueKind.String && Lines.Concat(About).Any(l => l.Name == r.Name)))
                Type(reading.Name, reading.Value.GetString()!);
            problem = "";
            return true;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            problem = "This is no file of readings: " + e.Message;
            return false;
        }
    }

    private static string Said(FileProblem problem) => $"{char.ToUpperInvariant(problem.Found[0])}{problem.Found[1..]}.{(problem.Expected.Length > 0 ? $" Expected: {problem.Expected}." : "")}";

    private string Key(string name) => $"reading {run} {name}";
}
