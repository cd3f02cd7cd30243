using Throwright.Engine.Sources;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Make;

/// <summary>Published least and safe inside radius of a bend, m.</summary>
/// <param name="Low">For trial only; below it the sheet cracks.</param>
/// <param name="High">The safe choice.</param>
public sealed record BendRadius(Sourced Low, Sourced High);

/// <summary>Rules of bending sheet. Lengths m, angles rad.</summary>
public static class SheetBending
{
    // A thickness typed in mm that means a column in inches is off by the last bits of a double.
    private const double Slack = 1e-9;

    /// <summary>From the mould line point to the bend tangent line: tan(angle / 2) (radius + thickness).</summary>
    public static double Setback(double angle, double radius, double thickness) => Math.Tan(0.5 * angle) * (radius + thickness);

    /// <summary>Length of the sheet's neutral line in the bend: angle (radius + K thickness).</summary>
    public static double Allowance(double angle, double radius, double thickness, double neutral) => angle * (radius + (neutral * thickness));

    /// <summary>The formula with its coefficients per degree as printed, for comparison: (a R + b t) degrees.</summary>
    public static double PrintedAllowance(double angle, double radius, double thickness) =>
        angle * (180 / Math.PI) * ((Published.Get("make/bend-per-radius").Value * radius) + (Published.Get("make/bend-per-thickness").Value * thickness));

    /// <summary>Place of the neutral line over the thickness in the aircraft formula: 0.0078 x 180 / pi = 0.447.</summary>
    public static Sourced Neutral()
    {
        var perThickness = Published.Get("make/bend-per-thickness");
        return new(perThickness.Value * 180 / Math.PI, perThickness.Source, perThickness.Note);
    }

    /// <summary>Measured place of the neutral line: least and most of the table for this material.</summary>
    /// <param name="material">aluminium, cold-rolled-steel or stainless.</param>
    public static Sourced MeasuredNeutral(string material)
    {
        var table = Published.Table("make/k-factor");
        var factors = table.Rows.Where(r => r.Find("material")!.Text == material).Select(r => r.Si("factor")).ToList();
        return factors.Count == 0
            ? throw new ArgumentException($"no K factor of {material}", nameof(material))
            : new((factors.Min() + factors.Max()) / 2, table.Source, "middle of the measured band") { Low = factors.Min(), High = factors.Max() };
    }

    /// <summary>Alloys and tempers of the table of bend radii.</summary>
    public static IReadOnlyList<string> Alloys => [.. Published.Table("make/bend-radius").Rows.Select(r => r.Find("alloy")!.Text).Distinct()];

    /// <summary>Inside radius of a 90 deg bend; a thickness between two of the table takes the thicker one's multiple.</summary>
    /// <returns>Null with a reason where the table has no answer.</returns>
    public static (BendRadius? Found, string Refusal) LeastRadius(string alloy, double thickness)
    {
        var table = Published.Table("make/bend-radius");
        var rows = table.Rows.Where(r => r.Find("alloy")!.Text == alloy).ToList();
        if (rows.Count == 0)
            return (null, $"the table of bend radii has no {alloy}; it has {string.Join(", ", Alloys)}");
        double thinnest = rows[0].Si("thickness"), thickest = rows[^1].Si("thickness");
        if (!(thickness >= thinnest * (1 - Slack) && thickness <= thickest * (1 + Slack)))
            return (null, $"the table of bend radii runs from {rows[0].Find("thickness")!.Text} in to {rows[^1].Find("thickness")!.Text} in; {FigureText.Plain(thickness / Length.MetresPerInch, 4)} in is outside it");
        var row = rows.First(r => thickness <= r.Si("thickness") * (1 + Slack));
        var note = Math.Abs(thickness - row.Si("thickness")) <= thickness * Slack ? "" : "between two thicknesses of the table; the thicker one's multiple is used";
        return (new(new(row.Si("low") * thickness, row.Source, note), new(row.Si("high") * thickness, row.Source, note)), "");
    }

    /// <summary>Least diameter of the relief hole where two bends meet; it is usually the bend radius, never less than this.</summary>
    public static LookUp ReliefHole(double thickness, double radius)
    {
        var table = Published.Table("make/relief-hole");
        foreach (var row in table.Rows)
        {
            if (thickness <= row.Si("to") * (1 + Slack))
                return LookUp.Value(new(Math.Max(radius, row.Si("diameter")), row.Source, table.Note));
        }

        return LookUp.Refused($"the table of relief holes ends at {table.Rows[^1].Find("to")!.Text} in");
    }
}
