namespace Throwright.Tests;

/// <summary>Compares a generated text with the one that is checked in.</summary>
/// <remarks>
/// With THROWRIGHT_APPROVE=1 the checked-in file is rewritten instead, and the difference is looked at before it is
/// committed.
/// </remarks>
internal static class ApprovedText
{
    /// <summary>The project's root: the folder above the tests that holds the solution.</summary>
    public static string Root { get; } = FindRoot();

    /// <param name="path">Under the root, e.g. docs/reference/sources.md.</param>
    public static void Matches(string path, string actual)
    {
        var file = Path.Combine(Root, path);
        if (Environment.GetEnvironmentVariable("THROWRIGHT_APPROVE") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, actual);
            return;
        }

        Assert.True(File.Exists(file), $"{path} is not there yet; run the tests once with THROWRIGHT_APPROVE=1");
        var approved = File.ReadAllText(file).ReplaceLineEndings("\n");
        if (approved == actual)
            return;
        var (was, now) = FirstDifference(approved.Split('\n'), actual.Split('\n'), out var line);
        Assert.Fail($"{path} line {line} is not what the program writes; look, then run with THROWRIGHT_APPROVE=1\nchecked in: {was}\nwritten:    {now}");
    }

    private static (string Was, string Now) FirstDifference(string[] was, string[] now, out int line)
    {
        var i = 0;
        while (i < was.Length && i < now.Length && was[i] == now[i])
            i++;
        line = i + 1;
        return (i < was.Length ? was[i] : "(end)", i < now.Length ? now[i] : "(end)");
    }

    private static string FindRoot()
    {
        var folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Throwright.slnx")))
            folder = Path.GetDirectoryName(folder);
        return folder ?? throw new InvalidOperationException("Throwright.slnx was not found above the tests");
    }
}
