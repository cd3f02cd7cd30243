using Throwright.Papers.Make;
using Throwright.Papers.Pack;

namespace Throwright.Cli.Commands;

/// <summary>Files that the program writes beside the aircraft file, and what stands on them.</summary>
internal static class Written
{
    /// <summary>Letter or A4.</summary>
    public static ShopPaper Paper(string? word) => word == "a4" ? ShopPaper.A4 : ShopPaper.Letter;

    public static PackOptions Options(string text, ShopPaper paper) => PackOptions.For(text, paper);

    /// <summary>Writes whole or not at all: beside it first, then put in its place.</summary>
    public static bool TryWrite(string path, byte[] bytes, out string told) => TryWrite([(path, bytes)], true, out told);

    /// <summary>All files or none: each stands whole beside its name before the first takes it. What is told has a line for each.</summary>
    public static bool TryWrite(IReadOnlyList<(string Path, ReadOnlyMemory<byte> Bytes)> files, bool overwrite, out string told)
    {
        // Two programs that write the same file at the same time don't write into each other's.
        string Beside(string path) => $"{path}.{Environment.ProcessId}.part";
        var now = "";
        try
        {
            foreach (var (path, bytes) in files)
            {
                now = path;
                if (Directory.Exists(path))
                    throw new IOException("a folder of that name is there");
                using var part = File.Create(Beside(path));
                part.Write(bytes.Span);
                part.Flush(flushToDisk: true);
            }

            var lines = new List<string>();
            foreach (var (path, _) in files)
            {
                now = path;
                lines.Add($"{(File.Exists(path) ? "Replaced" : "Wrote")} {path}");
                File.Move(Beside(path), path, overwrite);
            }

            told = string.Join('\n', lines);
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            foreach (var (path, _) in files)
                File.Delete(Beside(path));
            told = $"{now} can't be written: {e.Message.TrimEnd('.')}. No file was changed.";
            return false;
        }
    }
}
