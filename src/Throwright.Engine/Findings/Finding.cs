using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Findings;

/// <summary>The result of one rule, in order of rank.</summary>
public enum Verdict
{
    Clear,
    NeedsInput,
    Caution,
    Fail,
}

/// <summary>How the source of a figure was seen.</summary>
public enum Evidence
{
    /// <summary>Read in the publication itself or a page-for-page copy.</summary>
    Read,

    /// <summary>Read in part: the part with the number.</summary>
    ReadInPart,

    /// <summary>Read where another publication quotes it.</summary>
    Secondary,

    /// <summary>From memory, not verified: never the only limit behind clear.</summary>
    Memory,

    /// <summary>Derived in the project's theory pages.</summary>
    Derived,

    /// <summary>Computed for the project by an independent numerical method.</summary>
    Numerical,

    /// <summary>The project's own choice or common practice; the builder can change it.</summary>
    CommonPractice,
}

/// <summary>Where a limit or formula comes from: an entry of data/sources.json and a place in it.</summary>
public sealed record SourceRef(string Id, string Place, Evidence Evidence);

/// <summary>The result of one rule on one run.</summary>
public sealed record Finding
{
    /// <summary>Rule id: stage/what, e.g. cushion/knob-out.</summary>
    public required string Rule { get; init; }
    public required Verdict Verdict { get; init; }

    /// <summary>What is the matter, in words a mechanic would say; one main clause.</summary>
    public required string Sentence { get; init; }

    /// <summary>Id of the deciding figure (see <see cref="Figure"/>), null where there is none.</summary>
    public string? Figure { get; init; }

    /// <summary>The limit the figure is held against, SI, with its kind; null where there is none.</summary>
    public FigureLimit? Limit { get; init; }
    public EquatableList<SourceRef> Sources { get; init; } = [];

    /// <summary>What to do, worked out: imperative, amount, direction, result. Empty when nothing is to be done.</summary>
    public EquatableList<Remedy> Remedies { get; init; } = [];

    /// <summary>Why it matters, or what stands behind the verdict, one line; may be empty.</summary>
    public string Why { get; init; } = "";
}

/// <summary>A limit: the figure must stay above (or below) Value.</summary>
public sealed record FigureLimit(double Value, QuantityKind Kind, bool IsLeast);

/// <summary>A computed remedy, and the changes to the file that try it: each "run/path=value".</summary>
public sealed record Remedy(string Text, EquatableList<string> Tries)
{
    public Remedy(string text)
        : this(text, [])
    {
    }
}

/// <summary>A value to hold a figure against, SI, with where it comes from.</summary>
public sealed record Limit(double Value, SourceRef Source);
