namespace Throwright.Engine.Sources;

/// <summary>What kind of publication it is.</summary>
public enum SourceKind
{
    Regulation,
    Handbook,
    Standard,
    Paper,
    Textbook,

    /// <summary>A table, sheet or exercise that is none of the others.</summary>
    Data,

    /// <summary>The project's own choices and derivations.</summary>
    Project,
}

/// <summary>Whom a publication binds.</summary>
public enum Binding
{
    /// <summary>Nobody who builds or restores a light aircraft: data, textbooks, rules for another class of aircraft.</summary>
    None,

    /// <summary>A type-certificated aeroplane whose certification basis contains it; good practice for any other.</summary>
    TypeCertificated,

    /// <summary>An amateur-built aircraft too, through its operating limitations.</summary>
    OperatingLimitation,

    /// <summary>Advice for everybody.</summary>
    Guidance,
}

/// <summary>One publication of data/sources.json.</summary>
public sealed record Source
{
    public required string Id { get; init; }
    public required string Title { get; init; }

    /// <summary>Authors or issuer.</summary>
    public required string By { get; init; }

    /// <summary>Edition, letter or amendment; empty where the copy read did not state it.</summary>
    public required string Edition { get; init; }

    /// <summary>Year, or year-month-day; empty where the copy read did not state it.</summary>
    public required string Date { get; init; }
    public required SourceKind Kind { get; init; }
    public required Binding Binds { get; init; }
    public string Note { get; init; } = "";
}
