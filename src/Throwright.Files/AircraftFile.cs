using System.Globalization;
using System.Text;
using Throwright.Engine.Model;
using Throwright.Files.Description;
using Throwright.Files.Json;
using Throwright.Files.Saving;
using Throwright.Shapes;

namespace Throwright.Files;

/// <summary>The aircraft file: read strictly, every fault at once, and saved so that nothing is ever lost.</summary>
public static class AircraftFile
{
    /// <summary>The newest format that this program reads, and the one it writes.</summary>
    public const int Format = 1;

    public const string Extension = ".throwright.json";

    /// <summary>Larger files are refused, in bytes.</summary>
    public const int MostBytes = JsonText.MostCharacters;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads a file from disk. A file that can't be opened is a problem in the result, not an exception.</summary>
    public static AircraftFileResult Read(string path)
    {
        byte[] bytes;
        try
        {
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            if (stream.Length > MostBytes)
                return Refuse(path, $"the file has {stream.Length / 1024 / 1024} MB", $"at most {MostBytes / 1024 / 1024} MB");
            using var memory = new MemoryStream();
            // Something that grows while it is read, or a device: never more than the limit, and one byte to see it.
            var part = new byte[64 * 1024];
            for (int read; memory.Length <= MostBytes && (read = stream.Read(part)) > 0;)
                memory.Write(part, 0, read);
            bytes = memory.ToArray();
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return Refuse(path, "no such file", File.Exists(path + Extension) ? $"{path}{Extension}, which is there" : $"an aircraft file, e.g. my-aircraft{Extension}");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Refuse(path, Directory.Exists(path) ? "a folder, not a file" : $"the file can't be opened: {e.Message}", "a file that can be read");
        }

        return Read(path, bytes) with { Stamp = FileStamp.Of(bytes) };
    }

    /// <summary>Reads the bytes of a file; <paramref name="name"/> is what the problems call it.</summary>
    public static AircraftFileResult Read(string name, ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length > MostBytes)
            return Refuse(name, "the file is too large", $"at most {MostBytes / 1024 / 1024} MB");
        if (bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])
            return Refuse(name, "the file is written in UTF-16", "a text file in UTF-8: save it so in your editor");
        try
        {
            return Parse(name, Strict.GetString(bytes));
        }
        catch (DecoderFallbackException)
        {
            return NotUtf8(name, bytes);
        }
    }

    /// <summary>Reads the text of a file; <paramref name="name"/> is what the problems call it.</summary>
    public static AircraftFileResult Parse(string name, string text)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(text);
        var json = JsonText.Parse(text);
        var reading = new Reading(name, json);
        foreach (var problem in json.Problems)
            reading.AtSyntax(problem);
        Aircraft? aircraft = null;
        if (json.Root is { } root)
        {
            var slips = reading.Count;
            // A newer format may mean other things by the same words, so nothing else of the file is read.
            if (!IsNewer(root, reading) && AircraftDescription.File.TryRead(root, reading, out var read) && slips == 0)
                aircraft = read;
        }

        return new()
        {
            Aircraft = aircraft,
            Problems = reading.InOrder().ToEquatableList(),
            Unlisted = reading.Unlisted,
            RunsLeftOut = reading.RunsLeftOut.ToEquatableList(),
            Text = text,
        };
    }

    /// <summary>
    /// Writes the text beside the file, flushes it to the disk and renames it, so that there is never half a file; the
    /// file as it was is kept as one backup. Refused, with nothing written: a text that doesn't read without problems, a file
    /// that is no longer the one that was read, a file that another program is writing.
    /// </summary>
    /// <param name="readAs">The stamp of the result that was read; null: the file must not exist yet.</param>
    public static SaveResult Save(string path, string text, FileStamp? readAs)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        if (Parse(Path.GetFileName(path), text).Problems is [var first, ..])
            return new(SaveOutcome.TextAtFault, $"The text to be saved is at fault in line {first.Line}: {first.Found}. Nothing was written.");
        return SafeWrite.Write(path, Strict.GetBytes(text), readAs);
    }

    /// <summary>Path of a named point, for <see cref="TextEdit"/>.</summary>
    public static string PointPath(string name) => "$.points" + JsonPath.Step(name);

    /// <summary>Place of a run in the file's list, from 0, by its id; null: no such run. For paths such as $.runs[2].</summary>
    public static int? RunIndex(string text, string id)
    {
        var runs = JsonText.Parse(text).Root?.Member("runs")?.Items;
        var index = runs?.FindIndex(run => run.Member("id")?.Text == id) ?? -1;
        return index < 0 ? null : index;
    }

    /// <summary>The JSON Schema (draft 2020-12) of the file, as checked in under docs/reference.</summary>
    public static string Schema() => SchemaWriter.Text();

    /// <summary>The reference page of the file in Markdown, as checked in under docs/reference.</summary>
    public static string ReferencePage() => ReferencePageWriter.Text();

    private static bool IsNewer(Node root, Reading reading)
    {
        if (root.Kind != NodeKind.Object || root.Member("format") is not { Kind: NodeKind.Number } format)
            return false;
        if (!(double.Parse(format.Text, NumberStyles.Float, CultureInfo.InvariantCulture) is var number && number > Format && number == Math.Floor(number)))
            return false;
        reading.AtValue(format, $"this file is of format {Reading.Short(format.Text)}; this program reads up to {Format}", "a newer Throwright, or a file of an older format");
        return true;
    }

    private static AircraftFileResult Refuse(string name, string found, string expected) =>
        new() { Problems = [new(name, 0, 0, "$", "", "", found, expected)] };

    /// <summary>Names the place of the first byte that is no text.</summary>
    private static AircraftFileResult NotUtf8(string name, ReadOnlySpan<byte> bytes)
    {
        var (line, column, at) = (1, 1, 0);
        while (at < bytes.Length && Rune.DecodeFromUtf8(bytes[at..], out var rune, out var length) == System.Buffers.OperationStatus.Done)
        {
            at += length;
            (line, column) = rune.Value == '\n' ? (line + 1, 1) : (line, column + rune.Utf16SequenceLength);
        }

        var code = at < bytes.Length ? bytes[at] : (byte)0;
        return new()
        {
            Problems =
            [
                new(name, line, column, "$", "", "", string.Create(CultureInfo.InvariantCulture, $"the byte {code:X2} is no UTF-8 text"), "a text file in UTF-8: save it so in your editor"),
            ],
        };
    }
}
