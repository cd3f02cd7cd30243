using System.Diagnostics.CodeAnalysis;
using Throwright.Engine.Model;
using Throwright.Files;
using Throwright.Files.Description;
using Throwright.Files.Form;
using Throwright.Files.Saving;
using Throwright.Shapes.Distance;

namespace Throwright.Web.Editing;

/// <summary>A value to put at a path of the file, as JSON; null: take it out.</summary>
public sealed record Edit(string Path, string? Json)
{
    /// <summary>A text, quotes put around it.</summary>
    public static Edit Text(string path, string text) => new(path, FileValues.Quoted(text));
}

/// <summary>Whether the file on the disk is what is shown.</summary>
public enum SaveState
{
    Saved,

    /// <summary>The file was changed by another program. The person decides which text holds.</summary>
    Conflict,

    /// <summary>The text is kept in the journal only, see <see cref="EditingSession.SaveMessage"/>.</summary>
    NotSaved,
}

/// <summary>One aircraft file that is being worked on, by any number of windows at once.</summary>
/// <remarks>
/// All windows share it, so none can overwrite another's work. A change goes to the journal, then into the file through
/// the safe writer, then to the windows. Safe for use by many threads.
/// </remarks>
public sealed class EditingSession : IDisposable
{
    /// <summary>More changes than this are not kept for undo over a restart.</summary>
    private const int MostKept = 400;

    private readonly Lock gate = new();
    private readonly string path;
    private readonly TimeProvider clock;
    private readonly Journal? journal;
    private readonly List<Change> changes = [];
    private readonly Dictionary<string, string> drafts = [];
    private int done;
    private string meshesRead = "";
    private FileStamp? stamp;

    private EditingSession(string path, TimeProvider clock)
    {
        (this.path, this.clock) = (path, clock);
        Name = Path.GetFileName(path)[..^AircraftFile.Extension.Length];
        var onDisk = AircraftFile.Read(path);
        stamp = onDisk.Stamp;
        (File, Text) = (WithMeshes(onDisk), onDisk.Text);
        SavedAt = clock.GetLocalNow();
        journal = Journal.TryOpen(path + Journal.Extension, out var kept);
        if (journal is null)
            Note = "Another Throwright has this file open. You can work here too: nothing is overwritten unseen, but what you type and have not taken is not kept if this window is lost.";
        else
            Recover(kept);
    }

    /// <summary>Something changed: text, drafts or the state of saving. Raised outside the lock, on any thread.</summary>
    public event Action? Changed;

    /// <summary>The file's name without its extension.</summary>
    public string Name { get; }

    public string FileName => Path.GetFileName(path);

    public string Text { get; private set; }

    public AircraftFileResult File { get; private set; } = null!;

    /// <summary>Grows with every change of the text.</summary>
    public int Revision { get; private set; }

    public SaveState State { get; private set; } = SaveState.Saved;

    public DateTimeOffset SavedAt { get; private set; }

    /// <summary>Why the text is not in the file; empty when it is.</summary>
    public string SaveMessage { get; private set; } = "";

    /// <summary>What happened on opening that a person should know; may be empty.</summary>
    public string Note { get; private set; } = "";

    /// <summary>The text on the disk while State is Conflict.</summary>
    public string Theirs { get; private set; } = "";

    public string? UndoName => done > 0 ? changes[done - 1].Name : null;

    public string? RedoName => done < changes.Count ? changes[done].Name : null;

    public static EditingSession Open(string path, TimeProvider? clock = null) => new(path, clock ?? TimeProvider.System);

    /// <summary>The text with the edits put in. The file and the session are not touched.</summary>
    public static bool TryApply(string text, IEnumerable<Edit> edits, [NotNullWhen(true)] out string? edited, [NotNullWhen(false)] out string? problem)
    {
        ArgumentNullException.ThrowIfNull(edits);
        edited = text;
        problem = null;
        foreach (var edit in edits)
        {
            if (edit.Json is null ? !TextEdit.TryRemove(edited, edit.Path, out var next, out problem) : !TextEdit.TrySet(edited, edit.Path, edit.Json, out next, out problem))
            {
                edited = null;
                return false;
            }

            edited = next;
        }

        return true;
    }

    /// <summary>Makes a change: into the journal, the file and all windows. False: refused, with what is wrong; nothing changed.</summary>
    public bool TryEdit(string name, IReadOnlyList<Edit> edits, out FileProblem? problem)
    {
        problem = null;
        lock (gate)
        {
            if (!TryApply(Text, edits, out var edited, out var why))
            {
                problem = new(FileName, 0, 0, edits.Count > 0 ? edits[0].Path : "$", "", "", why, "");
                return false;
            }

            if (!TryTake(name, edited, [.. edits.Select(e => e.Path)], out problem))
                return false;
        }

        Changed?.Invoke();
        return true;
    }

    /// <summary>Puts an entry behind the last of a list.</summary>
    public bool TryAppend(string name, string listPath, string json, out FileProblem? problem)
    {
        problem = null;
        lock (gate)
        {
            if (!TextEdit.TryAppend(Text, listPath, json, out var edited, out var why))
            {
                problem = new(FileName, 0, 0, listPath, "", "", why, "");
                return false;
            }

            if (!TryTake(name, edited, [listPath], out problem))
                return false;
        }

        Changed?.Invoke();
        return true;
    }

    public void Undo()
    {
        lock (gate)
        {
            if (done == 0)
                return;
            done--;
            journal?.Stand(done);
            Show(changes[done].Undo(Text));
            Save();
        }

        Changed?.Invoke();
    }

    public void Redo()
    {
        lock (gate)
        {
            if (done == changes.Count)
                return;
            done++;
            journal?.Stand(done);
            Show(changes[done - 1].Do(Text));
            Save();
        }

        Changed?.Invoke();
    }

    /// <summary>What stands in a field and is not taken yet; it survives a lost window or program.</summary>
    public void Draft(string fieldPath, string? typed)
    {
        lock (gate)
        {
            if (typed is null ? !drafts.Remove(fieldPath) : drafts.TryGetValue(fieldPath, out var was) && was == typed)
                return;
            if (typed is not null)
                drafts[fieldPath] = typed;
            journal?.Draft(fieldPath, typed);
        }
    }

    public string? DraftAt(string fieldPath)
    {
        lock (gate)
            return drafts.GetValueOrDefault(fieldPath);
    }

    /// <summary>Looks whether another program changed the file; true: the state changed.</summary>
    public bool LookAtDisk()
    {
        var isNewMesh = false;
        lock (gate)
        {
            if (State == SaveState.NotSaved)
                Save();
            if (MeshesOnDisk(File) != meshesRead)
            {
                // What was proved with the old mesh no longer holds.
                File = File with { Meshes = new Dictionary<MeshShape, Skin>() };
                Show(Text);
                isNewMesh = true;
            }
        }

        if (isNewMesh)
            Changed?.Invoke();
        return LookAtFile() || isNewMesh;
    }

    private bool LookAtFile()
    {
        lock (gate)
        {
            var disk = AircraftFile.Read(path);
            if (disk.Stamp is null || disk.Stamp == stamp || (State == SaveState.Conflict && disk.Text == Theirs))
                return false;
            if (disk.Text == Text)
            {
                (stamp, State, SaveMessage) = (disk.Stamp, SaveState.Saved, "");
                return false;
            }

            Meet(disk.Text);
        }

        Changed?.Invoke();
        return true;
    }

    /// <summary>The text shown here replaces the one on the disk, which stays beside it as the backup.</summary>
    public void KeepMine()
    {
        lock (gate)
        {
            stamp = AircraftFile.Read(path).Stamp;
            Save();
        }

        Changed?.Invoke();
    }

    /// <summary>The text on the disk is taken over; that can be undone.</summary>
    public void TakeTheirs()
    {
        lock (gate)
        {
            var disk = AircraftFile.Read(path);
            stamp = disk.Stamp;
            State = SaveState.Saved;
            Take(Change.Between("take the file from the disk", Text, disk.Text), disk.Text, disk);
        }

        Changed?.Invoke();
    }

    public void Dispose() => journal?.Dispose();

    private static bool Covers(string problem, string edit) =>
        problem.StartsWith(edit, StringComparison.Ordinal) || edit.StartsWith(problem, StringComparison.Ordinal);

    private bool TryTake(string name, string edited, IReadOnlyList<string> paths, out FileProblem? problem)
    {
        problem = null;
        var read = AircraftFile.Parse(FileName, edited);
        // A file that is at fault elsewhere can still be worked on, but no edit may add a fault or leave one at its own place.
        if (read.Problems.Count + read.Unlisted > File.Problems.Count + File.Unlisted || read.Problems.Any(p => paths.Any(e => p.JsonPath.StartsWith(e, StringComparison.Ordinal))))
        {
            problem = read.Problems.FirstOrDefault(p => paths.Any(e => Covers(p.JsonPath, e))) ?? read.Problems.Except(File.Problems).FirstOrDefault() ?? read.Problems[0];
            return false;
        }

        if (edited != Text)
            Take(Change.Between(name, Text, edited), edited, read);
        foreach (var path in paths)
            Forget(path);
        return true;
    }

    private void Take(Change change, string edited, AircraftFileResult read)
    {
        changes.RemoveRange(done, changes.Count - done);
        changes.Add(change);
        done = changes.Count;
        journal?.Add(change);
        Show(edited, read);
        Save();
    }

    private void Show(string text, AircraftFileResult? read = null)
    {
        (Text, File) = (text, WithMeshes(read ?? AircraftFile.Parse(FileName, text)));
        Revision++;
    }

    /// <summary>Meshes are read once; again only when the file names others.</summary>
    private AircraftFileResult WithMeshes(AircraftFileResult read)
    {
        var named = read.Aircraft?.Bodies.SelectMany(b => b.Parts).Select(p => p.Shape).OfType<MeshShape>().ToList() ?? [];
        if (named.Count == 0)
        {
            meshesRead = "";
            return read;
        }

        var onDisk = MeshesOnDisk(read);
        if (onDisk == meshesRead && File is { } before && named.TrueForAll(before.Meshes.ContainsKey))
            return read with { Meshes = before.Meshes };
        meshesRead = onDisk;
        return MeshesBeside.Read(path, read);
    }

    /// <summary>Length and time of every mesh file that is named: changed when one of them was written anew.</summary>
    private string MeshesOnDisk(AircraftFileResult read)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        var files = read.Aircraft?.Bodies.SelectMany(b => b.Parts).Select(p => p.Shape).OfType<MeshShape>().Select(m => m.File).Distinct() ?? [];
        return string.Join(";", files.Select(f => new FileInfo(Path.Combine(folder, f)) is { Exists: true } file ? $"{f} {file.Length} {file.LastWriteTimeUtc.Ticks}" : f));
    }

    private void Forget(string fieldPath)
    {
        if (drafts.Remove(fieldPath))
            journal?.Draft(fieldPath, null);
    }

    private void Save()
    {
        if (State == SaveState.Conflict && stamp is not null && AircraftFile.Read(path).Stamp != stamp)
            return;
        var saved = AircraftFile.Save(path, Text, stamp);
        switch (saved.Outcome)
        {
            case SaveOutcome.Saved or SaveOutcome.Unchanged:
                (stamp, State, SaveMessage, SavedAt) = (saved.Stamp, SaveState.Saved, "", clock.GetLocalNow());
                journal?.Wrote(done);
                break;
            case SaveOutcome.ChangedOnDisk:
                Meet(AircraftFile.Read(path).Text);
                break;
            default:
                (State, SaveMessage) = (SaveState.NotSaved, saved.Message + " Your changes are kept in the journal beside the file.");
                break;
        }
    }

    private void Meet(string theirs) => (State, Theirs, SaveMessage) = (SaveState.Conflict, theirs, $"{FileName} was changed by another program.");

    /// <summary>Brings back what a lost program had not written, and the way back through earlier changes.</summary>
    private void Recover(JournalContent? kept)
    {
        if (kept is null)
        {
            journal!.Begin(new(Text, [], 0, 0, drafts));
            return;
        }

        // The text after each number of changes, as far as the journal hangs together.
        var texts = new List<string> { kept.Base };
        foreach (var change in kept.Changes)
        {
            if (!change.Fits(texts[^1]))
                break;
            texts.Add(change.Do(texts[^1]));
        }

        var stood = Math.Min(kept.Done, texts.Count - 1);
        var onDisk = texts[stood] == Text ? stood : texts.LastIndexOf(Text);
        foreach (var (fieldPath, typed) in kept.Drafts)
            drafts[fieldPath] = typed;
        if (onDisk < 0 && stood == 0)
        {
            // Nothing was done here, and the file moved on by itself.
            journal!.Begin(new(Text, [], 0, 0, drafts));
            return;
        }

        changes.AddRange(kept.Changes.Take(texts.Count - 1));
        done = stood;
        if (onDisk < 0 && kept.Saved == stood)
        {
            // All that was done here had reached the file; then the file was worked on elsewhere. That can be undone, too.
            var (elsewhere, read) = (Text, File);
            Show(texts[stood]);
            Take(Change.Between("changes made outside", texts[stood], elsewhere), elsewhere, read);
        }
        else if (onDisk < 0)
        {
            var theirs = Text;
            Show(texts[stood]);
            Meet(theirs);
        }
        else if (onDisk != stood)
        {
            Show(texts[stood]);
            Save();
            Note = "Brought back from the journal: " + string.Join("; ", changes.Skip(Math.Min(onDisk, stood)).Take(Math.Abs(onDisk - stood)).Select(c => c.Name)) + ".";
        }

        // The journal is written anew only when nothing hangs on it alone.
        var first = Math.Min(done, Math.Max(0, changes.Count - MostKept));
        if (State != SaveState.Saved || (first == 0 && changes.Count == kept.Changes.Count))
            return;
        var start = texts[first];
        changes.RemoveRange(0, first);
        done -= first;
        journal!.Begin(new(start, changes, done, done, drafts));
    }
}
