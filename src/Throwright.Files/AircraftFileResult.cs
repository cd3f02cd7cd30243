using System.Collections.Frozen;
using Throwright.Engine.Model;
using Throwright.Files.Description;
using Throwright.Files.Saving;
using Throwright.Shapes;
using Throwright.Shapes.Distance;

namespace Throwright.Files;

/// <summary>What was read of an aircraft file: the aircraft as far as the file is sound, and every place where it is not.</summary>
public sealed record AircraftFileResult
{
    /// <summary>
    /// The aircraft with its sound runs. Null when anything beside the runs and points is at fault: then nothing that
    /// could be worked out from the rest would be certain.
    /// </summary>
    public Aircraft? Aircraft { get; init; }

    /// <summary>Every fault, in the order of lines; empty: the file is sound. At most 1000 are listed.</summary>
    public EquatableList<FileProblem> Problems { get; init; } = [];

    /// <summary>Faults beyond the listed ones.</summary>
    public int Unlisted { get; init; }

    /// <summary>Runs with a fault; they are not in <see cref="Aircraft"/>.</summary>
    public EquatableList<RunLeftOut> RunsLeftOut { get; init; } = [];

    /// <summary>Triangles of the meshes beside the file that were read; see <see cref="MeshesBeside"/>.</summary>
    public IReadOnlyDictionary<MeshShape, Skin> Meshes { get; init; } = FrozenDictionary<MeshShape, Skin>.Empty;

    /// <summary>The text as read, for <see cref="TextEdit"/>.</summary>
    public string Text { get; init; } = "";

    /// <summary>What the file on disk was when it was read, for <see cref="AircraftFile.Save"/>; null: not read from disk.</summary>
    public FileStamp? Stamp { get; init; }
    public bool IsSound => Problems.Count == 0;
}
