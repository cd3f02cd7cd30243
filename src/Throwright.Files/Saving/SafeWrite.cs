namespace Throwright.Files.Saving;

/// <summary>How far a save has come.</summary>
internal enum SaveStep
{
    Locked,
    WrittenBeside,
    BackupKept,
    Renamed,
}

/// <summary>Replaces a file as a whole or not at all.</summary>
/// <remarks>
/// Order: lock; compare with what was read; write and flush the new text beside; write, flush and rename the old text to
/// the backup; rename the new text over the file. A rename replaces a name in one step on every system we run on, so
/// after a crash at any place the file is the old or the new one. Files left beside by a crash are written over next time.
/// The folder itself can't be flushed from here: after a power cut in the next seconds it may be the old one.
/// </remarks>
internal static class SafeWrite
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    public static SaveResult Write(string path, byte[] bytes, FileStamp? readAs, Action<SaveStep>? at = null, TimeSpan? patience = null)
    {
        try
        {
            // A link stays a link; the file behind it is replaced.
            var target = (File.Exists(path) ? File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName : null) ?? Path.GetFullPath(path);
            if (Directory.Exists(target))
                return Refused("it is a folder");
            using var held = WriteLock.Take(target + ".lock", patience ?? Patience);
            if (held is null)
                return new(SaveOutcome.InUse, $"Another program is saving {Path.GetFileName(path)}. Nothing was written.");
            at?.Invoke(SaveStep.Locked);
            var old = File.Exists(target) ? File.ReadAllBytes(target) : null;
            if (Conflict(Path.GetFileName(path), old, readAs) is { } conflict)
                return new(SaveOutcome.ChangedOnDisk, conflict);
            if (old is not null && old.AsSpan().SequenceEqual(bytes))
                return new(SaveOutcome.Unchanged, "The file holds this already.") { Stamp = FileStamp.Of(bytes) };
            if (old is not null && File.GetAttributes(target).HasFlag(FileAttributes.ReadOnly))
                return Refused("it is write-protected");
            Replace(target, bytes, old, at);
            return new(SaveOutcome.Saved, "Saved.") { Stamp = FileStamp.Of(bytes) };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Refused(e is DirectoryNotFoundException ? "its folder is not there" : e.Message);
        }

        SaveResult Refused(string why) => new(SaveOutcome.DiskRefused, $"{Path.GetFileName(path)} can't be written: {why.TrimEnd('.')}. The file is as it was.");
    }

    private static string? Conflict(string name, byte[]? old, FileStamp? readAs) => (old, readAs) switch
    {
        (null, null) => null,
        (null, _) => $"{name} was removed since it was read. Nothing was written.",
        (_, null) => $"{name} exists already. Nothing was written.",
        _ => FileStamp.Of(old) == readAs ? null : $"{name} was changed by another program since it was read. Nothing was written.",
    };

    private static void Replace(string target, byte[] bytes, byte[]? old, Action<SaveStep>? at)
    {
        string beside = target + ".new", backup = target + ".backup", backupBeside = backup + ".new";
        try
        {
            WriteThrough(beside, bytes, target);
            at?.Invoke(SaveStep.WrittenBeside);
            if (old is not null)
            {
                WriteThrough(backupBeside, old, target);
                File.Move(backupBeside, backup, overwrite: true);
            }

            at?.Invoke(SaveStep.BackupKept);
            File.Move(beside, target, overwrite: true);
            at?.Invoke(SaveStep.Renamed);
        }
        finally
        {
            File.Delete(beside);
            File.Delete(backupBeside);
        }
    }

    /// <summary>Writes a file and waits until the disk has it; it gets the rights of the file it will replace.</summary>
    private static void WriteThrough(string path, byte[] bytes, string like)
    {
        File.Delete(path);
        using (var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None))
        {
            stream.Write(bytes);
            stream.Flush(flushToDisk: true);
        }

        if (!OperatingSystem.IsWindows() && File.Exists(like))
            File.SetUnixFileMode(path, File.GetUnixFileMode(like));
    }
}
