namespace Throwright.Files.Saving;

public enum SaveOutcome
{
    /// <summary>On the disk, and the file before it is the backup.</summary>
    Saved,

    /// <summary>The file holds this text already; nothing was written.</summary>
    Unchanged,

    /// <summary>The text does not read without problems.</summary>
    TextAtFault,

    /// <summary>The file was changed, removed or made by someone else since it was read.</summary>
    ChangedOnDisk,

    /// <summary>Another program is writing the file.</summary>
    InUse,

    /// <summary>The disk refused: full, write-protected, folder not there.</summary>
    DiskRefused,
}

/// <summary>How a save ended. Unless it is Saved, the file on disk is as it was.</summary>
/// <param name="Message">For the person: one or two sentences.</param>
public sealed record SaveResult(SaveOutcome Outcome, string Message)
{
    /// <summary>The stamp for the next save; null: not saved.</summary>
    public FileStamp? Stamp { get; init; }
    public bool IsSaved => Outcome is SaveOutcome.Saved or SaveOutcome.Unchanged;
}
