using System.Text;
using Throwright.Files.Saving;

namespace Throwright.Files.Tests;

public sealed class SavingTests : IDisposable
{
    private static readonly TimeSpan Briefly = TimeSpan.FromMilliseconds(40);
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory();

    private string File1 => Path.Combine(folder.FullName, "demo.throwright.json");

    private string[] Names => [.. folder.EnumerateFileSystemInfos().Select(f => f.Name).Order()];

    public void Dispose() => folder.Delete(recursive: true);

    private static string Named(string name) => StarterFile.Text(name);

    [Fact]
    public void NewFile_IsSavedAlone()
    {
        var saved = AircraftFile.Save(File1, Named("A"), readAs: null);
        Assert.Equal(SaveOutcome.Saved, saved.Outcome);
        Assert.Equal(Named("A"), File.ReadAllText(File1));
        Assert.Equal(AircraftFile.Read(File1).Stamp, saved.Stamp);
        Assert.Equal(["demo.throwright.json"], Names);
    }

    [Fact]
    public void SavedAgain_KeepsOneBackup()
    {
        var stamp = AircraftFile.Save(File1, Named("A"), null).Stamp;
        stamp = AircraftFile.Save(File1, Named("B"), stamp).Stamp;
        Assert.Equal(Named("A"), File.ReadAllText(File1 + ".backup"));
        Assert.Equal(SaveOutcome.Saved, AircraftFile.Save(File1, Named("C"), stamp).Outcome);
        Assert.Equal(Named("B"), File.ReadAllText(File1 + ".backup"));
        Assert.Equal(Named("C"), File.ReadAllText(File1));
        Assert.Equal(["demo.throwright.json", "demo.throwright.json.backup"], Names);
    }

    [Fact]
    public void SameText_IsNotWritten()
    {
        var stamp = AircraftFile.Save(File1, Named("A"), null).Stamp;
        stamp = AircraftFile.Save(File1, Named("B"), stamp).Stamp;
        var again = AircraftFile.Save(File1, Named("B"), stamp);
        Assert.Equal((SaveOutcome.Unchanged, true, stamp), (again.Outcome, again.IsSaved, again.Stamp));
        Assert.Equal(Named("A"), File.ReadAllText(File1 + ".backup"));
    }

    [Fact]
    public void ByteOrderMarkAndLineEnds_AreKept()
    {
        File.WriteAllText(File1, Named("A").ReplaceLineEndings("\r\n"), new UTF8Encoding(encoderShouldEmitUTF8Identifier: true));
        var read = AircraftFile.Read(File1);
        Assert.True(TextEdit.TryReplace(read.Text, "$.aircraft.name", "\"Bee\"", out var edited, out _));
        Assert.True(AircraftFile.Save(File1, edited, read.Stamp).IsSaved);
        var bytes = File.ReadAllBytes(File1);
        Assert.Equal(Encoding.UTF8.Preamble.ToArray(), bytes[..3]);
        Assert.Equal(Named("Bee").ReplaceLineEndings("\r\n"), Encoding.UTF8.GetString(bytes[3..]));
    }

    [Fact]
    public void FileChangedSinceItWasRead_IsNotOverwritten()
    {
        AircraftFile.Save(File1, Named("A"), null);
        var stamp = AircraftFile.Read(File1).Stamp;
        File.WriteAllText(File1, Named("their change"));
        var refused = AircraftFile.Save(File1, Named("my change"), stamp);
        Assert.Equal((SaveOutcome.ChangedOnDisk, false, null), (refused.Outcome, refused.IsSaved, refused.Stamp));
        Assert.Contains("changed by another program", refused.Message, StringComparison.Ordinal);
        Assert.Equal(Named("their change"), File.ReadAllText(File1));
        Assert.Equal(["demo.throwright.json"], Names);
    }

    [Fact]
    public void FileOfTheSameLengthButOtherContent_IsSeen()
    {
        var stamp = AircraftFile.Save(File1, Named("A"), null).Stamp!;
        File.WriteAllText(File1, Named("B"));
        Assert.Equal(stamp.Length, new FileInfo(File1).Length);
        Assert.Equal(SaveOutcome.ChangedOnDisk, AircraftFile.Save(File1, Named("C"), stamp).Outcome);
    }

    [Fact]
    public void FileRemovedOrAlreadyThere_IsToldApart()
    {
        var stamp = AircraftFile.Save(File1, Named("A"), null).Stamp;
        Assert.Contains("exists already", AircraftFile.Save(File1, Named("B"), null).Message, StringComparison.Ordinal);
        File.Delete(File1);
        Assert.Contains("was removed", AircraftFile.Save(File1, Named("B"), stamp).Message, StringComparison.Ordinal);
        Assert.Empty(Names);
    }

    [Fact]
    public void TextAtFault_IsNotSaved()
    {
        var stamp = AircraftFile.Save(File1, Named("A"), null).Stamp;
        var refused = AircraftFile.Save(File1, Named("A").Replace("\"4 in\"", "4", StringComparison.Ordinal), stamp);
        Assert.Equal(SaveOutcome.TextAtFault, refused.Outcome);
        Assert.Contains("4: a bare number", refused.Message, StringComparison.Ordinal);
        Assert.Equal(Named("A"), File.ReadAllText(File1));
    }

    [Theory]
    [InlineData(SaveStep.Locked, "A")]
    [InlineData(SaveStep.WrittenBeside, "A")]
    [InlineData(SaveStep.BackupKept, "A")]
    [InlineData(SaveStep.Renamed, "B")]
    internal void Crash_AtAnyStep_LeavesTheOldOrTheNewFileWhole(SaveStep step, string left)
    {
        var stamp = AircraftFile.Save(File1, Named("A"), null).Stamp;
        Assert.Throws<InvalidProgramException>(() => SafeWrite.Write(File1, Encoding.UTF8.GetBytes(Named("B")), stamp, at =>
        {
            if (at == step)
                throw new InvalidProgramException();
        }));
        Assert.Equal(Named(left), File.ReadAllText(File1));
        Assert.DoesNotContain(Names, n => n.EndsWith(".new", StringComparison.Ordinal) || n.EndsWith(".lock", StringComparison.Ordinal));
        Assert.True(AircraftFile.Save(File1, Named("C"), AircraftFile.Read(File1).Stamp).IsSaved);
    }

    [Fact]
    public void RemainsOfADeadProgram_HoldNobodyUp()
    {
        var stamp = AircraftFile.Save(File1, Named("A"), null).Stamp;
        File.WriteAllText(File1 + ".lock", "999999\n");
        File.WriteAllText(File1 + ".new", "half a fi");
        File.WriteAllText(File1 + ".backup.new", "half a ba");
        Assert.Equal(SaveOutcome.Saved, AircraftFile.Save(File1, Named("B"), stamp).Outcome);
        Assert.Equal(Named("B"), File.ReadAllText(File1));
        Assert.Equal(["demo.throwright.json", "demo.throwright.json.backup"], Names);
    }

    [Fact]
    public void FileBeingWritten_IsInUse()
    {
        var stamp = AircraftFile.Save(File1, Named("A"), null).Stamp;
        SaveResult? second = null;
        var first = SafeWrite.Write(File1, Encoding.UTF8.GetBytes(Named("B")), stamp, at =>
        {
            if (at == SaveStep.WrittenBeside)
                second = SafeWrite.Write(File1, Encoding.UTF8.GetBytes(Named("C")), stamp, patience: Briefly);
        });
        Assert.Equal(SaveOutcome.InUse, second!.Outcome);
        Assert.Equal(SaveOutcome.Saved, first.Outcome);
        Assert.Equal(Named("B"), File.ReadAllText(File1));
    }

    [Fact]
    public async Task ManyWriters_LoseNoChange()
    {
        // Each adds one to the number in the name, as often as it takes; the file counts the saves.
        AircraftFile.Save(File1, Named("0"), null);
        const int writers = 4, saves = 15;
        var torn = 0;
        var done = false;
        var stop = TestContext.Current.CancellationToken;
        var reader = Task.Run(
            () =>
        {
            while (!Volatile.Read(ref done))
            {
                if (!AircraftFile.Read(File1).IsSound)
                    Interlocked.Increment(ref torn);
            }
        },
            stop);
        await Task.WhenAll(Enumerable.Range(0, writers).Select(_ => Task.Run(
            () =>
        {
            for (var saved = 0; saved < saves;)
            {
                var read = AircraftFile.Read(File1);
                var count = int.Parse(read.Aircraft!.Name) + 1;
                Assert.True(TextEdit.TryReplace(read.Text, "$.aircraft.name", $"\"{count}\"", out var edited, out string? _));
                var outcome = AircraftFile.Save(File1, edited, read.Stamp).Outcome;
                Assert.True(outcome is SaveOutcome.Saved or SaveOutcome.ChangedOnDisk or SaveOutcome.InUse, $"{outcome}");
                if (outcome == SaveOutcome.Saved)
                    saved++;
            }
        },
            stop)));
        Volatile.Write(ref done, true);
        await reader;
        Assert.Equal($"{writers * saves}", AircraftFile.Read(File1).Aircraft!.Name);
        Assert.Equal(0, torn);
        Assert.Equal($"{(writers * saves) - 1}", AircraftFile.Parse("x", File.ReadAllText(File1 + ".backup")).Aircraft!.Name);
        Assert.Equal(["demo.throwright.json", "demo.throwright.json.backup"], Names);
    }

    [Fact]
    public void FolderThatIsNotThere_IsRefused()
    {
        var refused = AircraftFile.Save(Path.Combine(folder.FullName, "no", "a.throwright.json"), Named("A"), null);
        Assert.Equal(SaveOutcome.DiskRefused, refused.Outcome);
        Assert.Contains("its folder is not there", refused.Message, StringComparison.Ordinal);
        Assert.Equal(SaveOutcome.DiskRefused, AircraftFile.Save(folder.FullName, Named("A"), null).Outcome);
        Assert.Equal(SaveOutcome.DiskRefused, AircraftFile.Save("a\0b", Named("A"), null).Outcome);
    }

    [Fact]
    public void WriteProtectedFile_IsLeftAlone()
    {
        var stamp = AircraftFile.Save(File1, Named("A"), null).Stamp;
        File.SetAttributes(File1, FileAttributes.ReadOnly);
        var refused = AircraftFile.Save(File1, Named("B"), stamp);
        File.SetAttributes(File1, FileAttributes.Normal);
        Assert.Equal(SaveOutcome.DiskRefused, refused.Outcome);
        Assert.Contains("write-protected", refused.Message, StringComparison.Ordinal);
        Assert.Equal(Named("A"), File.ReadAllText(File1));
    }

    [Fact]
    public void LinkToTheFile_StaysALinkAndRightsStay()
    {
        if (OperatingSystem.IsWindows())
            return;
        var stamp = AircraftFile.Save(File1, Named("A"), null).Stamp;
        File.SetUnixFileMode(File1, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        var link = Path.Combine(folder.FullName, "link.throwright.json");
        File.CreateSymbolicLink(link, File1);
        Assert.True(AircraftFile.Save(link, Named("B"), stamp).IsSaved);
        Assert.Equal(File1, File.ResolveLinkTarget(link, returnFinalTarget: true)!.FullName);
        Assert.Equal(Named("B"), File.ReadAllText(File1));
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(File1));
    }
}
