using System.Runtime.CompilerServices;

namespace Throwright.Papers.Tests;

/// <summary>Compares with the files in tests/approved; writes them only with THROWRIGHT_APPROVE=1.</summary>
internal static class Approved
{
    public static string Folder { get; } = Path.GetFullPath(Path.Combine(Here(), "..", "approved", "Throwright.Papers.Tests"));

    private static bool Approving => Environment.GetEnvironmentVariable("THROWRIGHT_APPROVE") == "1";

    public static void Check(string name, string content)
    {
        var path = Path.Combine(Folder, name);
        if (Approving)
        {
            Directory.CreateDirectory(Folder);
            File.WriteAllText(path, content);
            return;
        }

        Assert.True(File.Exists(path), $"{name} has not been approved yet (run with THROWRIGHT_APPROVE=1, then look at it).");
        Assert.Equal(File.ReadAllText(path), content);
    }

    private static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
