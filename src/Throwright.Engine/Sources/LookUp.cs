using System.Diagnostics.CodeAnalysis;

namespace Throwright.Engine.Sources;

/// <summary>A value read from a published table, or the reason why the table does not give one.</summary>
public sealed record LookUp
{
    private LookUp(Sourced? found, string refusal) => (Found, Refusal) = (found, refusal);

    public Sourced? Found { get; }

    /// <summary>Why there is no value, in words for the builder; empty when there is one.</summary>
    public string Refusal { get; }

    [MemberNotNullWhen(true, nameof(Found))]
    public bool IsFound => Found is not null;

    internal static LookUp Value(Sourced found) => new(found, "");

    internal static LookUp Refused(string why) => new(null, why);
}
