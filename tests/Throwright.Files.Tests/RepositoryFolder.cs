namespace Throwright.Files.Tests;

/// <summary>Finds files that are checked in, from wherever the tests run.</summary>
internal static class RepositoryFolder
{
    public static string Path(params string[] parts)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(System.IO.Path.Combine(folder.FullName, "Throwright.slnx")))
            folder = folder.Parent;
        Assert.NotNull(folder);
        return System.IO.Path.Combine([folder.FullName, .. parts]);
    }
}
