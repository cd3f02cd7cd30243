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

/// <summary>One piece to cut.</summary>
public sealed record CutLine(string What, string Stock, string Size);

/// <summary>What the run weighs, kg, with its uncertainty, and its moment about the datum, kg m; null: no stations.</summary>
public sealed record Weight(double Mass, double Share, double? Arm, string From)
{
    public double? Moment => Arm * Mass;
}
