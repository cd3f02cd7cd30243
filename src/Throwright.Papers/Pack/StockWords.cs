using Throwright.Engine.Findings;
using Throwright.Engine.Order;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Pack;

/// <summary>Amounts of stock in words.</summary>
public static class StockWords
{
    /// <summary>Length of rod, or area of sheet: "12.40 in2", "80.0 cm2".</summary>
    public static string Amount(StockTotal total, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(total);
        ArgumentNullException.ThrowIfNull(say);
        if (total.Kind == CutKind.Rod)
            return say.Length(total.Amount, Rounding.Up);
        return say.LengthUnitName == "in"
            ? $"{FigureText.Plain(total.Amount / (Length.MetresPerInch * Length.MetresPerInch), 2, Rounding.Up)} in2"
            : $"{FigureText.Plain(total.Amount * 1e4, 1, Rounding.Up)} cm2";
    }
}
