using Throwright.Engine.Findings;
using Throwright.Engine.Sources;

namespace Throwright.Engine.Make;

/// <summary>The force of the conduit on its bracket, and what it does. N, m.</summary>
/// <param name="Case">Bracket; the conduit's hole is the one on the second leg, all others hold the first leg down.</param>
/// <param name="Force">Along the conduit, square to the standing leg, either way.</param>
public sealed record BracketLoad(BracketCase Case, double Force)
{
    /// <summary>Base leg from the fastener nearest the bend to the mould line.</summary>
    public double Overhang => Fasteners.Min(f => f.FromMouldLine);

    /// <summary>Conduit's axis above the base leg's outside.</summary>
    public double Height => Conduit.FromMouldLine;

    public BracketHole Conduit => Case.Holes.First(h => h.OnSecond);

    public IReadOnlyList<BracketHole> Fasteners => [.. Case.Holes.Where(h => !h.OnSecond)];

    /// <summary>Worst shear in one fastener.</summary>
    public double WorstShear => Shears.Max();

    /// <summary>Shear of each fastener, in the order of <see cref="Fasteners"/>.</summary>
    private double[] Shears => [.. FastenerGroup.Shear(
        [.. Fasteners.Select(f => new GroupedFastener(new(f.FromMouldLine, f.Across), f.Diameter * f.Diameter))],
        new(Force, 0),
        new(0, Conduit.Across))];

    /// <summary>Largest pressure of a fastener on the wall of its hole, Pa: V / (D t).</summary>
    public double WorstBearing => Fasteners.Zip(Shears, (f, v) => Bearing(v, f.Diameter, Case.Thickness)).Max();

    /// <summary>Largest shear on the two planes along which a fastener tears out to its nearest edge, Pa: V / (2 t (e - D/2)).</summary>
    /// <remarks>The nearest edge whatever the direction of the force, the bend's tangent line among them: never less than the true one.</remarks>
    public double WorstTearOut => Fasteners.Zip(Shears, (f, v) => TearOut(v, f.Diameter, Case.Thickness, EdgeOf(f))).Max();

    public static double Bearing(double shear, double diameter, double thickness) => shear / (diameter * thickness);

    /// <summary>Infinity where the hole reaches the edge.</summary>
    public static double TearOut(double shear, double diameter, double thickness, double edge) =>
        edge > 0.5 * diameter ? shear / (2 * thickness * (edge - (0.5 * diameter))) : double.PositiveInfinity;

    private double EdgeOf(BracketHole f)
    {
        var setback = SheetBending.Setback(Case.Bend, Case.Radius, Case.Thickness);
        return Math.Min(Math.Min(Case.First - f.FromMouldLine, f.FromMouldLine - setback), (0.5 * Case.Width) - Math.Abs(f.Across));
    }

    /// <summary>Worst pull in one fastener: the leg lifts about its heel at the bend, or about its free end.</summary>
    public double WorstTension
    {
        get
        {
            var moment = Force * Height;
            return Math.Max(
                FastenerGroup.Tension([.. Fasteners.Select(f => f.FromMouldLine)], moment).Max(),
                FastenerGroup.Tension([.. Fasteners.Select(f => Case.First - f.FromMouldLine)], moment).Max());
        }
    }
}

/// <summary>Stiffness of an L-bracket of sheet. SI.</summary>
public static class BracketBending
{
    /// <summary>
    /// Deflection at the conduit for a force square to the standing leg: F b^2 (3 a + b) / (3 E I), I = w t^3 / 12; a base leg from the
    /// nearest fasteners, b standing leg. By Castigliano's theorem, docs/theory/make.md, section 11.
    /// </summary>
    public static double Deflection(double force, double overhang, double height, double modulus, double second) =>
        force * height * height * ((3 * overhang) + height) / (3 * modulus * second);

    public static double SecondMoment(double width, double thickness) => width * thickness * thickness * thickness / 12;

    /// <summary>Force per deflection with its band, N/m.</summary>
    /// <remarks>
    /// Most: a wide strip is stiffer by 1 / (1 - nu^2). Least: a published or chosen share of the formula, for a fastened leg
    /// lifts and a joint slips, which the formula does not know.
    /// </remarks>
    public static (double Nominal, double Least, double Most) Stiffness(BracketCase of)
    {
        const double nu = 0.33;
        var load = new BracketLoad(of, 1);
        var (low, high) = (Published.Get("make/aluminium-modulus").Low, Published.Get("make/aluminium-modulus").High);
        double At(double modulus) => 1 / Deflection(1, load.Overhang, load.Height, modulus, SecondMoment(of.Width, of.Thickness));
        return (At(0.5 * (low + high)), At(low) * Published.Get("make/bracket-fixity").Value, At(high) / (1 - (nu * nu)));
    }
}

/// <summary>Ultimate strength of sheet round a fastener, Pa.</summary>
public sealed record SheetStrength(double Bearing, double Shear, SourceRef Source)
{
    /// <summary>Null where the table has no such alloy.</summary>
    public static SheetStrength? Of(string alloy)
    {
        var table = Published.Table("make/sheet-strength");
        var row = table.Rows.FirstOrDefault(r => r.Find("alloy")!.Text.Equals(alloy, StringComparison.OrdinalIgnoreCase));
        return row is null ? null : new(row.Si("bearing"), row.Si("shear"), row.Source);
    }
}

/// <summary>Strength of one fastener, N.</summary>
/// <param name="Tension">Null: not in the table.</param>
public sealed record FastenerStrength(Sourced Shear, double? Tension)
{
    /// <summary>Null with a reason where the table has none of that name.</summary>
    public static (FastenerStrength? Found, string Refusal) Of(string name)
    {
        var table = Published.Table("make/fasteners");
        var row = table.Rows.FirstOrDefault(r => r.Find("name")!.Text.Equals(name, StringComparison.OrdinalIgnoreCase));
        return row is null
            ? (null, $"the table of fasteners has no \"{name}\"; it has {string.Join(", ", table.Rows.Select(r => r.Find("name")!.Text))}")
            : (new(new(row.Si("shear"), row.Source, row.Note), row.Find("tension") is null ? null : row.Si("tension")), "");
    }
}
