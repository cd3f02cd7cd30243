using Throwright.Engine.Findings;

namespace Throwright.Engine.Sources;

/// <summary>One requirement or criterion that findings cite, told in our own words.</summary>
public sealed record Rule
{
    /// <summary>Short form of the citation: 23.1141(g)(1).</summary>
    public required string Id { get; init; }

    /// <summary>The citation as it is printed: 14 CFR 23.1141(g)(1).</summary>
    public required string Cite { get; init; }

    /// <summary>A paraphrase; the publication has the binding words.</summary>
    public required string Says { get; init; }
    public required SourceRef Source { get; init; }

    /// <summary>Whom the publication binds.</summary>
    public required Binding Binds { get; init; }

    /// <summary>How far it reaches, e.g. that it is used by analogy; may be empty.</summary>
    public string Note { get; init; } = "";
}
