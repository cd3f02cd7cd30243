using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Route;

/// <summary>A reading and how far it may be off to either side.</summary>
public readonly record struct TableReading(double Value, double Off)
{
    public double Low => Value - Off;

    public double High => Value + Off;
}

/// <summary>A piece of conduit, its wire inside, held level on a table and hanging over the edge.</summary>
public sealed record TableEdgeCase
{
    /// <summary>Length beyond the edge, measured along the conduit, m.</summary>
    public required TableReading Overhang { get; init; }

    /// <summary>How far the tip hangs below the table's level at the conduit's centre, m.</summary>
    public required TableReading Drop { get; init; }

    /// <summary>The same with the piece rolled over by half a turn: coiled stock keeps some of its bend, which cancels in the mean.</summary>
    public TableReading? DropRolledOver { get; init; }

    /// <summary>Weight per length, conduit and wire, N/m.</summary>
    public required TableReading Weight { get; init; }
}

/// <summary>What the table edge says.</summary>
/// <param name="Stiffness">Bending stiffness of conduit and wire together, N m^2.</param>
/// <param name="Low">With every reading off to the side that makes it least.</param>
/// <param name="High">With every reading off to the side that makes it greatest.</param>
/// <param name="Set">Bend that the piece keeps when free, 1/m; NaN where it was not rolled over.</param>
/// <param name="TipAngle">How steeply the tip hangs, rad.</param>
public sealed record TableEdgeStiffness(double Stiffness, double Low, double High, double Set, double TipAngle);

/// <summary>Bending stiffness from a droop over a table's edge. Theory: docs/theory/route.md.</summary>
public static class TableEdge
{
    // Beyond this a hanging piece says little: it hangs straight down whatever its stiffness.
    public const double MostDrop = 0.8;

    private const int Segments = 64;
    private static readonly Vector3 Level = new(1, 0, 0), Down = new(0, 0, -1);

    public static TableEdgeStiffness Find(TableEdgeCase of)
    {
        ArgumentNullException.ThrowIfNull(of);
        var drop = of.Drop;
        var set = double.NaN;
        if (of.DropRolledOver is { } other)
        {
            // To first order a bend k that is kept moves the tip by k l^2/2, up or down.
            set = (of.Drop.Value - other.Value) / (of.Overhang.Value * of.Overhang.Value);
            drop = new(0.5 * (of.Drop.Value + other.Value), 0.5 * (of.Drop.Off + other.Off));
        }

        if (!(of.Overhang.Low > 0) || !(of.Weight.Low > 0) || !(drop.Low > 0) || !(drop.Off >= 0 && of.Overhang.Off >= 0 && of.Weight.Off >= 0))
            throw new ArgumentOutOfRangeException(nameof(of), of, "overhang, drop and weight above zero by more than they may be off");
        if (!(drop.High < MostDrop * of.Overhang.Low))
            throw new ArgumentOutOfRangeException(nameof(of), of, "drop less than 0.8 of the overhang");
        var nominal = Of(of.Weight.Value, of.Overhang.Value, drop.Value);
        return new(
            nominal.Stiffness,
            Of(of.Weight.Low, of.Overhang.Low, drop.High).Stiffness,
            Of(of.Weight.High, of.Overhang.High, drop.Low).Stiffness,
            set,
            nominal.TipAngle);
    }

    /// <summary>Drop over overhang of a piece whose weight number is w l^3 / B, and the angle of its tip.</summary>
    public static (double Drop, double TipAngle) Hang(double weightNumber)
    {
        var curve = ElasticCurveSolver.Solve(new() { Start = default, StartDirection = Level, End = null, Length = 1, Load = weightNumber * Down, Segments = Segments, Starts = 1 }).Curve
            ?? throw new InvalidOperationException($"no hanging shape at weight number {weightNumber}");
        var tip = curve.Nodes[^1];
        return (-tip.Point.Z, Vector3.AngleBetween(Level, tip.Tangent));
    }

    private static (double Stiffness, double TipAngle) Of(double weight, double overhang, double drop)
    {
        // The drop grows with the weight number: small ones fall by an eighth of it.
        var wanted = drop / overhang;
        double low = 8 * wanted, high = low;
        while (Hang(high).Drop < wanted)
            (low, high) = (high, 2 * high);
        // Regula falsi with the Illinois rule.
        double below = Hang(low).Drop - wanted, above = Hang(high).Drop - wanted;
        for (var i = 0; i < 60 && high - low > 1e-10 * high; i++)
        {
            var x = low == high ? low : ((low * above) - (high * below)) / (above - below);
            var at = Hang(x).Drop - wanted;
            if (Math.Abs(at) < 1e-12)
                (low, high) = (x, x);
            else if (at < 0)
                (low, below, above) = (x, at, 0.5 * above);
            else
                (high, above, below) = (x, at, 0.5 * below);
        }

        var number = 0.5 * (low + high);
        return (weight * overhang * overhang * overhang / number, Hang(number).TipAngle);
    }
}
