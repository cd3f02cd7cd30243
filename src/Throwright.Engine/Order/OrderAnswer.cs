using Throwright.Shapes;

namespace Throwright.Engine.Order;

/// <summary>Everything to buy and to cut for one run.</summary>
public sealed record OrderAnswer
{
    public required string Run { get; init; }
    public required EquatableList<OrderLine> Cable { get; init; }
    public required EquatableList<HardwareLine> Hardware { get; init; }
    public required EquatableList<CutLine> Cuts { get; init; }
    public Weight? Weight { get; init; }
}

/// <summary>One property of the cable to order, complete enough for any maker.</summary>
/// <param name="Confirm">To be confirmed before ordering: not known, or from memory.</param>
public sealed record OrderLine(string What, string Value, bool Confirm, string Note = "");

/// <summary>One part by its standard number.</summary>
public sealed record HardwareLine(string Number, string What, int Quantity, int Spare, bool Confirm, string Note);

public enum CutKind
{
    /// <summary>No stock of the shop's: the cable's own core, a part by its drawing.</summary>
    Other,
    Sheet,
    Rod,
}

/// <summary>One piece to cut.</summary>
/// <param name="Length">Along the stock, m, saw cut included; 0: not known.</param>
/// <param name="Across">Width of a sheet blank, diameter of a rod, m.</param>
/// <param name="Thick">Thickness of the sheet, m.</param>
public sealed record CutLine(string What, string Stock, string Size, CutKind Kind = CutKind.Other, double Length = 0, double Across = 0, double Thick = 0, int Pieces = 1);

/// <summary>Stock of one kind for all runs: length of rod, or area of sheet, pieces laid side by side without waste.</summary>
public sealed record StockTotal(string Stock, CutKind Kind, double Across, double Amount, int Pieces);

/// <summary>What the run weighs, kg, with its uncertainty, and its moment about the datum, kg m; null: no stations.</summary>
/// <param name="Ask">Not from a weight in the file: to be weighed before it goes anywhere.</param>
public sealed record Weight(double Mass, double Share, double? Arm, string From, bool Ask)
{
    public double? Moment => Arm * Mass;
}
