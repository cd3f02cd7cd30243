using Throwright.Shapes;

namespace Throwright.Engine.Rig;

/// <summary>What is done with the hands, in order, with what must come out.</summary>
public sealed record RigCard
{
    public required EquatableList<string> Tools { get; init; }
    public required string Warning { get; init; }
    public required EquatableList<RigStep> Steps { get; init; }
    public required EquatableList<string> Notes { get; init; }
}

/// <summary>One step.</summary>
/// <param name="Reading">A number is taken here; its name in the file (installation member of asBuilt); null: only done.</param>
/// <param name="Least">Limits of the reading, SI; null: none worked out.</param>
public sealed record RigStep(string Do, string MustBe, string? Reading = null, double? Least = null, double? Most = null, double? Expected = null);
