namespace Throwright.Files.Description;

/// <summary>One place where an aircraft file is at fault.</summary>
/// <param name="File">Name of the file as it was handed over.</param>
/// <param name="Line">Line from 1; 0: the file as a whole (not there, can't be opened).</param>
/// <param name="Column">Column from 1, in UTF-16 units as editors count; 0: the file as a whole.</param>
/// <param name="JsonPath">The value, e.g. $.runs[2].leverEnd.arm.radius.</param>
/// <param name="Run">Label of the run, or its id, or nothing outside the runs.</param>
/// <param name="LineText">The line as it stands, without the blanks around it; cut where it is very long.</param>
/// <param name="Found">What stands there.</param>
/// <param name="Expected">What belongs there, with an example where one helps.</param>
public sealed record FileProblem(string File, int Line, int Column, string JsonPath, string Run, string LineText, string Found, string Expected)
{
    /// <summary>The part of the aircraft in words, e.g. "the arm at the lever end"; may be empty.</summary>
    public string Part { get; init; } = "";

    /// <summary>Where in <see cref="LineText"/> the fault starts, from 0, and how many characters it takes.</summary>
    public int MarkStart { get; init; }
    public int MarkLength { get; init; }
}
