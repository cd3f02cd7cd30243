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
    public static bool TryWrite(string path, byte[] bytes, out string told)
    {
        var was = File.Exists(path);
        var beside = path + ".part";
        try
        {
            File.WriteAllBytes(beside, bytes);
            File.Move(beside, path, overwrite: true);
            told = $"{(was ? "Replaced" : "Wrote")} {path}";
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            if (File.Exists(beside))
                File.Delete(beside);
            told = e.Message;
            return false;
        }
    }
}
