using Throwright.Engine.Model;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Sources;

/// <summary>Published properties of core wire.</summary>
public static class Wire
{
    // A diameter typed in mm that means a row in inches is off by the last bits of a double.
    private const double Slack = 1e-9;

    /// <summary>Elastic modulus of a solid wire, Pa.</summary>
    /// <remarks>
    /// Music wire is published in bands of diameter with a gap of 0.001 in between them; a diameter in a gap takes the
    /// thicker band, whose modulus is the lower: more stretch, earlier buckling. Bending stress comes out 1.8 % low
    /// at most.
    /// </remarks>
    public static Sourced Modulus(CoreMaterial material, Length diameter)
    {
        RequirePositive(diameter);
        if (material == CoreMaterial.Stainless302)
            return Sourced.From(Published.Get("wire/modulus-302"));
        var table = Published.Table("wire/modulus-a228");
        // The first band is printed as below its end, the others up to and including it; the last has no end.
        var row = table.Rows.First(r => r.Find("to")?.Si is not { } to
            || (r.Find("from") is null ? diameter.Metres < to * (1 - Slack) : diameter.Metres <= to * (1 + Slack)));
        var isInGap = row.Find("from")?.Si is { } from && diameter.Metres < from * (1 - Slack);
        return new(row.Si("modulus"), row.Source, isInGap ? "between two printed bands of diameter; the thicker band is used" : "");
    }

    /// <summary>Least tensile strength of a solid wire, Pa. A diameter outside the table is refused.</summary>
    public static LookUp TensileStrength(CoreMaterial material, Length diameter)
    {
        RequirePositive(diameter);
        return material == CoreMaterial.MusicWire ? StrengthBySize(diameter) : StrengthByBand(diameter);
    }

    /// <summary>Elastic limit over tensile strength: <see cref="Sourced.Low"/> is the cautious end.</summary>
    public static Sourced ElasticShare(CoreMaterial material) => Sourced.From(Published.Get(material switch
    {
        CoreMaterial.MusicWire => "wire/elastic-share-a228",
        CoreMaterial.Stainless302 => "wire/elastic-share-302",
        _ => throw new ArgumentOutOfRangeException(nameof(material)),
    }));

    /// <summary>Bending stress over tensile strength for many strokes: <see cref="Sourced.Low"/> is the cautious end.</summary>
    public static Sourced FatigueShare() => Sourced.From(Published.Get("wire/fatigue-share"));

    /// <summary>kg/m^3.</summary>
    public static Sourced Density(CoreMaterial material) => Sourced.From(Published.Get(material switch
    {
        CoreMaterial.MusicWire => "wire/density-music",
        CoreMaterial.Stainless302 => "wire/density-302",
        _ => throw new ArgumentOutOfRangeException(nameof(material)),
    }));

    /// <summary>Effective modulus of a strand on its metallic area, Pa, as a band.</summary>
    public static Sourced StrandModulus(CoreKind kind) => Sourced.From(Published.Get(kind switch
    {
        CoreKind.Strand1x7 => "wire/strand-modulus-1x7",
        CoreKind.Strand1x19 => "wire/strand-modulus-1x19",
        CoreKind.Strand7x7 => "wire/strand-modulus-7x7",
        CoreKind.Strand7x19 => "wire/strand-modulus-7x19",
        _ => throw new ArgumentException($"{kind} is not a strand", nameof(kind)),
    }));

    /// <summary>Metallic area of a strand over the area of the circle around it.</summary>
    public static Sourced StrandFill(CoreKind kind) => Sourced.From(Published.Get(kind switch
    {
        CoreKind.Strand1x7 => "wire/strand-fill-1x7",
        CoreKind.Strand1x19 => "wire/strand-fill-1x19",
        CoreKind.Strand7x7 => "wire/strand-fill-7x7",
        CoreKind.Strand7x19 => "wire/strand-fill-7x19",
        _ => throw new ArgumentException($"{kind} is not a strand", nameof(kind)),
    }));

    /// <summary>Music wire is published size by size: between two sizes the thicker one, which is the weaker.</summary>
    private static LookUp StrengthBySize(Length diameter)
    {
        var table = Published.Table("wire/tensile-a228");
        if (diameter.Metres < table.Rows[0].Si("diameter") * (1 - Slack))
            return Outside(table, diameter, table.Rows[0].Find("diameter")!, table.Rows[^1].Find("diameter")!);
        TableRow? below = null;
        foreach (var row in table.Rows)
        {
            var size = row.Si("diameter");
            if (Math.Abs(diameter.Metres - size) <= size * Slack)
                return LookUp.Value(new(row.Si("strength"), row.Source));
            if (diameter.Metres < size)
            {
                var strength = Math.Min(below!.Si("strength"), row.Si("strength"));
                return LookUp.Value(new(strength, row.Source, "between two sizes of the table; the lesser strength is used"));
            }

            below = row;
        }

        return Outside(table, diameter, table.Rows[0].Find("diameter")!, table.Rows[^1].Find("diameter")!);
    }

    /// <summary>Stainless wire is published for bands of diameter that join without a gap.</summary>
    private static LookUp StrengthByBand(Length diameter)
    {
        var table = Published.Table("wire/tensile-302");
        foreach (var row in table.Rows)
        {
            if (diameter.Metres > row.Si("over") * (1 + Slack) && diameter.Metres <= row.Si("to") * (1 + Slack))
                return LookUp.Value(new(row.Si("strength"), row.Source));
        }

        return Outside(table, diameter, table.Rows[0].Find("over")!, table.Rows[^1].Find("to")!);
    }

    private static LookUp Outside(Table table, Length diameter, TableCell first, TableCell last) => LookUp.Refused(
        $"the table of {table.Name} runs from {first.Text} in to {last.Text} in; {FigureText.Plain(diameter.Inches, 4)} in is outside it");

    private static void RequirePositive(Length diameter)
    {
        if (!(diameter.Metres > 0) || !double.IsFinite(diameter.Metres))
            throw new ArgumentOutOfRangeException(nameof(diameter), diameter, "a diameter is above zero");
    }
}
