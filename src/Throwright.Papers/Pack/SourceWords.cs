using Throwright.Engine.Findings;
using Throwright.Engine.Sources;

namespace Throwright.Papers.Pack;

/// <summary>Sources as they are printed.</summary>
public static class SourceWords
{
    private static readonly Lazy<ILookup<SourceRef, Rule>> Rules = new(() => Published.Rules.Values.ToLookup(r => r.Source));

    /// <summary>"14 CFR 23.1141(g)(1)", or title and place; how it was seen stands behind it unless it was read.</summary>
    public static string Of(SourceRef source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var name = Rules.Value[source].FirstOrDefault() is { } rule ? rule.Cite
            : source.Id == "project" ? source.Place
            : source.Id == "common-practice" ? "common practice"
            : $"{Published.Source(source.Id).Title}, {source.Place}".TrimEnd(',', ' ');
        return source.Evidence is Evidence.Read or Evidence.CommonPractice ? name : $"{name} ({Word(source.Evidence)})";
    }

    public static string Of(IEnumerable<SourceRef> sources) => string.Join("; ", sources.Select(Of).Distinct());

    public static string Word(Evidence evidence) => evidence switch
    {
        Evidence.Read => "read",
        Evidence.ReadInPart => "read in part",
        Evidence.Secondary => "second-hand",
        Evidence.Memory => "from memory, confirm",
        Evidence.Derived => "derived",
        Evidence.Numerical => "computed",
        _ => "common practice",
    };
}
