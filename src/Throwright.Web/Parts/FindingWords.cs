namespace Throwright.Web.Parts;

/// <summary>A finding's sentence, where its figures stand beside it anyway.</summary>
public static class FindingWords
{
    /// <summary>Does a rule speak of what a handle comes near to?</summary>
    public static bool IsClearance(string rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return rule.StartsWith("clearance/", StringComparison.Ordinal);
    }

    /// <summary>What is the matter, without the figures: the sentence up to its colon. Short beginnings are not cut off: they say too little.</summary>
    public static string Clause(string sentence)
    {
        ArgumentNullException.ThrowIfNull(sentence);
        var cut = sentence.IndexOf(':', StringComparison.Ordinal);
        return cut > 20 ? sentence[..cut] + "." : sentence;
    }
}
