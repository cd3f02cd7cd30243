using Throwright.Engine.Findings;
using Throwright.Engine.Sources;

namespace Throwright.Engine.Make;

/// <summary>What metals do to each other where they touch and get wet.</summary>
public enum GalvanicPair
{
    /// <summary>Of one group.</summary>
    Alike,

    /// <summary>Paint, primer or tape between them.</summary>
    Protect,

    /// <summary>The same, and sealed and assembled wet.</summary>
    Seal,

    /// <summary>Not in contact at all without an insulating ply.</summary>
    Apart,
}

/// <summary>A material of the table, found in what the builder wrote.</summary>
/// <param name="Density">kg/m^3.</param>
/// <param name="Group">Galvanic group II to V; 0: it does not conduct.</param>
public sealed record ShopMaterial(string Name, double Density, int Group, SourceRef Source)
{
    public bool IsPlastic => Group == 0;

    /// <summary>The longest name of the table that the text holds; null: none.</summary>
    public static ShopMaterial? Find(string text)
    {
        var rows = Published.Table("make/materials").Rows;
        var row = rows.Where(r => HasWord(text, r.Find("name")!.Text) || HasWord(text, r.Find("name")!.Text.Replace('-', ' '))).MaxBy(r => r.Find("name")!.Text.Length);
        return row is null ? null : new(row.Find("name")!.Text, row.Si("density"), (int)row.Si("group"), row.Source);
    }

    /// <summary>As a word of its own: "plated" is no PLA.</summary>
    private static bool HasWord(string text, string word)
    {
        for (var at = text.IndexOf(word, StringComparison.OrdinalIgnoreCase); at >= 0; at = text.IndexOf(word, at + 1, StringComparison.OrdinalIgnoreCase))
        {
            var end = at + word.Length;
            if ((at == 0 || !char.IsLetterOrDigit(text[at - 1])) && (end == text.Length || !char.IsLetterOrDigit(text[end])))
                return true;
        }

        return false;
    }

    public static GalvanicPair Beside(ShopMaterial one, ShopMaterial other)
    {
        if (one.IsPlastic || other.IsPlastic || one.Group == other.Group)
            return GalvanicPair.Alike;
        return (Math.Min(one.Group, other.Group), Math.Max(one.Group, other.Group)) switch
        {
            (2, 5) => GalvanicPair.Apart,
            (2, 4) or (3, 5) => GalvanicPair.Seal,
            (4, 5) => GalvanicPair.Alike,
            _ => GalvanicPair.Protect,
        };
    }
}
