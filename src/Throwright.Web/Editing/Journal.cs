using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Throwright.Web.Editing;

/// <summary>What the journal knew when it was read: the text it began with, all changes, and how many of them were done.</summary>
/// <param name="Saved">How many were done when the file was last written; -1: not since the beginning.</param>
public sealed record JournalContent(string Base, IReadOnlyList<Change> Changes, int Done, int Saved, IReadOnlyDictionary<string, string> Drafts);

/// <summary>
/// Every change, written beside the aircraft file before anything else happens, so that neither a killed browser nor a killed program loses
/// one. It also carries undo over a restart, and what stands half typed in a field.
/// </summary>
/// <remarks>
/// One JSON object a line: the text it began with; each change; how many are done after an undo; each draft. A line that a crash
/// cut short ends the reading. Only one program writes a journal: it holds the file open.
/// </remarks>
public sealed class Journal : IDisposable
{
    public const string Extension = ".journal";
    private const int MostBytes = 64 * 1024 * 1024;
    private static readonly JsonSerializerOptions Options = new() { DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private readonly FileStream stream;

    private Journal(FileStream stream) => this.stream = stream;

    private sealed record Line(string? Base = null, Change? Change = null, int? Done = null, int? Saved = null, string? Draft = null, string? Text = null);

    /// <summary>Opens the journal of a file, and takes it for this program; null: another program has it.</summary>
    public static Journal? TryOpen(string path, out JournalContent? content)
    {
        content = null;
        try
        {
            var stream = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            content = stream.Length is > 0 and < MostBytes ? Read(stream) : null;
            return new(stream);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Begins anew: with a text, and the changes that are kept with it.</summary>
    public void Begin(JournalContent content)
    {
        ArgumentNullException.ThrowIfNull(content);
        // A crash between here and the flush leaves the file as it is on the disk, which is the text anyway.
        stream.SetLength(0);
        Put(new(Base: content.Base));
        foreach (var change in content.Changes)
            Put(new(Change: change));
        Put(new(Done: content.Done, Saved: content.Saved < 0 ? null : content.Saved));
        foreach (var (path, text) in content.Drafts)
            Put(new(Draft: path, Text: text));
        stream.Flush(flushToDisk: true);
    }

    public void Add(Change change)
    {
        Put(new(Change: change));
        stream.Flush(flushToDisk: true);
    }

    /// <summary>After an undo or redo.</summary>
    public void Stand(int done)
    {
        Put(new(Done: done));
        stream.Flush(flushToDisk: true);
    }

    /// <summary>The file now holds the text with so many changes.</summary>
    public void Wrote(int saved)
    {
        Put(new(Saved: saved));
        stream.Flush();
    }

    /// <summary>What stands in a field and is not taken yet; null: nothing any more. Handed to the system at once, not waited for.</summary>
    public void Draft(string path, string? text)
    {
        Put(new(Draft: path, Text: text));
        stream.Flush();
    }

    public void Dispose() => stream.Dispose();

    private void Put(Line line) => stream.Write(Encoding.UTF8.GetBytes(JsonSerializer.Serialize(line, Options) + "\n"));

    private static JournalContent? Read(FileStream stream)
    {
        string? start = null;
        var changes = new List<Change>();
        var (done, saved) = (0, -1);
        var drafts = new Dictionary<string, string>();
        var whole = 0L;
        using var reader = new StreamReader(stream, Encoding.UTF8, false, 64 * 1024, leaveOpen: true);
        var text = reader.ReadToEnd();
        foreach (var part in text.Split('\n'))
        {
            Line? line;
            try
            {
                line = part.Length == 0 ? null : JsonSerializer.Deserialize<Line>(part, Options);
            }
            catch (JsonException)
            {
                break;
            }

            if (line is null)
                break;
            whole += Encoding.UTF8.GetByteCount(part) + 1;
            if (line.Base is { } from)
            {
                start = from;
                changes.Clear();
                (done, saved) = (0, -1);
            }
            else if (line.Change is { } change)
            {
                changes.RemoveRange(done, changes.Count - done);
                changes.Add(change);
                saved = saved >= changes.Count ? -1 : saved;
                done = changes.Count;
            }
            else if (line.Done is not null || line.Saved is not null)
            {
                done = Math.Clamp(line.Done ?? done, 0, changes.Count);
                saved = line.Saved ?? saved;
            }
            else if (line.Draft is { } path)
            {
                if (line.Text is { } typed)
                    drafts[path] = typed;
                else
                    drafts.Remove(path);
            }
        }

        // What a crash left of a last line is written over.
        stream.SetLength(Math.Min(whole, stream.Length));
        stream.Seek(0, SeekOrigin.End);
        return start is null ? null : new(start, changes, done, saved, drafts);
    }
}
