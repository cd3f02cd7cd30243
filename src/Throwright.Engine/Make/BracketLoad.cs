using Throwright.Engine.Findings;
using Throwright.Engine.Sources;
using Throwright.Shapes.Solids;

namespace Throwright.Engine.Make;

/// <summary>The force of the conduit on its bracket, and what it does. N, m.</summary>
/// <remarks>
/// The side view: x along the base leg toward the first bend, whose outside corner is the origin, y toward the inside of that bend. Legs
/// run from corner to corner, as long as their outside sizes. Derived in docs/theory/make.md, section 11.
/// </remarks>
/// <param name="Case">Bracket; the conduit's hole is the one that is not in the base leg, all others hold the base leg down.</param>
/// <param name="Force">Along the conduit, either way.</param>
public sealed record BracketLoad(BracketCase Case, double Force)
{
    /// <summary>Base leg from the fastener nearest the bend to the mould line.</summary>
    public double Overhang => Fasteners.Min(f => f.FromMouldLine);

    /// <summary>Where the force acts.</summary>
    public Vector2 At => Corners[^2] + (Conduit.FromMouldLine * Along) + (Case.ConduitAbove is { } above ? above * AwayFromFace : default);

    /// <summary>Unit, along the conduit.</summary>
    public Vector2 Direction => Case.ConduitAbove is null ? new(-Along.Y, Along.X) : Along;

    public BracketHole Conduit => Case.Conduit;

    public IReadOnlyList<BracketHole> Fasteners => [.. Case.Fasteners];

    /// <summary>Way of the middle line from the nearest fasteners to the conduit's hole: its corners.</summary>
    public IReadOnlyList<Vector2> Path => [new(-Overhang, 0), .. Corners.SkipLast(1), Corners[^2] + (Conduit.FromMouldLine * Along)];

    /// <summary>Largest moment along that way, N m: at a bend or at the fasteners.</summary>
    public double WorstMoment => Force * Path.SkipLast(1).Max(p => Math.Abs(Arm(p)));

    /// <summary>Worst shear in one fastener.</summary>
    public double WorstShear => Shears.Max();

    /// <summary>Shear of each fastener, in the order of <see cref="Fasteners"/>.</summary>
    private double[] Shears => [.. FastenerGroup.Shear(
        [.. Fasteners.Select(f => new GroupedFastener(new(f.FromMouldLine, f.Across), f.Diameter * f.Diameter))],
        new(Force * Math.Abs(Direction.X), 0),
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

    /// <summary>
    /// Worst pull in one fastener: the leg lifts about its heel at the bend, about its free end, or off altogether; and a force that
    /// stands up beside the middle tips it sideways.
    /// </summary>
    public double WorstTension
    {
        get
        {
            double[] at = [.. Fasteners.Select(f => -f.FromMouldLine)];
            double up = Force * Direction.Y, worst = 0;
            worst = Math.Max(worst, FastenerGroup.Tension([.. at.Select(x => -x)], Force * Math.Abs(Arm(default))).Max());
            worst = Math.Max(worst, FastenerGroup.Tension([.. at.Select(x => Case.First + x)], Force * Math.Abs(Arm(new(-Case.First, 0)))).Max());
            // Pulled off with nothing to pry against: only where every fastener then pulls.
            var middle = at.Average();
            var second = at.Sum(x => (x - middle) * (x - middle));
            foreach (var way in (int[])[1, -1])
            {
                // A force up and the moment that it has about the fasteners' middle.
                double[] pulls = [.. at.Select(x => (way * up / at.Length) + (second > 0 ? way * Force * Arm(new(middle, 0)) * (x - middle) / second : 0))];
                if (pulls.Min() >= 0)
                    worst = Math.Max(worst, pulls.Max());
            }

            return worst + Sideways(Math.Abs(up));
        }
    }

    /// <summary>Pull by a force that stands up beside the middle of the width: about the fasteners' own middle, or about an edge where they stand in one line.</summary>
    private double Sideways(double up)
    {
        var moment = up * Math.Abs(Conduit.Across - Fasteners.Average(f => f.Across));
        if (!(moment > 0))
            return 0;
        var middle = Fasteners.Average(f => f.Across);
        var second = Fasteners.Sum(f => (f.Across - middle) * (f.Across - middle));
        return second > 0
            ? Fasteners.Max(f => moment * Math.Abs(f.Across - middle) / second)
            : moment / (Fasteners.Count * ((0.5 * Case.Width) - Math.Abs(middle)));
    }

    /// <summary>Outside corners of the legs: the first bend, the second where there is one, the end of the last leg; as far as the conduit's leg.</summary>
    private IReadOnlyList<Vector2> Corners
    {
        get
        {
            var first = Vector2.Polar(1, Case.Bend);
            var second = Case.Second * first;
            return Conduit.Leg == BracketLeg.Top ? [default, second, second + (Case.Then!.Top * Along)] : [default, second];
        }
    }

    /// <summary>Unit, along the conduit's leg away from its bend.</summary>
    private Vector2 Along => Vector2.Polar(1, Conduit.Leg == BracketLeg.Top && Case.Then is { } then ? Case.Bend + (then.IsBack ? -then.Bend : then.Bend) : Case.Bend);

    /// <summary>Over the base for a standing leg, away from the base for a top leg.</summary>
    private Vector2 AwayFromFace
    {
        get
        {
            var normal = new Vector2(-Along.Y, Along.X);
            return Conduit.Leg == BracketLeg.Top && normal.Y < 0 ? -1 * normal : normal;
        }
    }

    /// <summary>Moment of a unit force about a place.</summary>
    internal double Arm(Vector2 about) => Vector2.Cross(At - about, Direction);
}

/// <summary>Stiffness of a bracket of bent sheet. SI.</summary>
public static class BracketBending
{
    /// <summary>
    /// An L: deflection at the conduit for a force square to the standing leg: F b^2 (3 a + b) / (3 E I), I = w t^3 / 12; a base leg from the
    /// nearest fasteners, b standing leg. By Castigliano's theorem, docs/theory/make.md, section 11.
    /// </summary>
    public static double Deflection(double force, double overhang, double height, double modulus, double second) =>
        force * height * height * ((3 * overhang) + height) / (3 * modulus * second);

    /// <summary>
    /// Any of its shapes: F / (E I) times the integral of the squared arm of the force over the legs between the fasteners and the
    /// conduit. Along a straight leg the arm is linear, so the integral is L (p^2 + p q + q^2) / 3.
    /// </summary>
    public static double Deflection(BracketLoad load, double modulus)
    {
        ArgumentNullException.ThrowIfNull(load);
        var path = load.Path;
        var sum = 0.0;
        for (var i = 0; i + 1 < path.Count; i++)
        {
            double p = load.Arm(path[i]), q = load.Arm(path[i + 1]);
            sum += (path[i + 1] - path[i]).Size * ((p * p) + (p * q) + (q * q)) / 3;
        }

        return load.Force * sum / (modulus * SecondMoment(load.Case.Width, load.Case.Thickness));
    }

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
        double At(double modulus) => 1 / Deflection(load, modulus);
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
