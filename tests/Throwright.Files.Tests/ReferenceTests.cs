namespace Throwright.Files.Tests;

/// <summary>The checked-in reference is what the program writes. THROWRIGHT_WRITE_REFERENCE=1 writes it anew.</summary>
public class ReferenceTests
{
    [Fact]
    public void Schema_CheckedIn_IsTheProgramsOwn() => SameAs("throwright.schema.json", AircraftFile.Schema());

    [Fact]
    public void ReferencePage_CheckedIn_IsTheProgramsOwn() => SameAs("file.md", AircraftFile.ReferencePage());

    private static void SameAs(string name, string written)
    {
        var path = RepositoryFolder.Path("docs", "reference", name);
        if (Environment.GetEnvironmentVariable("THROWRIGHT_WRITE_REFERENCE") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, written);
        }

        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), written);
    }
}
