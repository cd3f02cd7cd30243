using Throwright.Engine.Findings;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Sources;

/// <summary>A published table.</summary>
public sealed record Table
{
    /// <summary>Topic and name: wire/tensile-a228.</summary>
    public required string Id { get; init; }
    public required string Name { get; init; }
    public required EquatableList<TableColumn> Columns { get; init; }
    public required EquatableList<TableRow> Rows { get; init; }
    public required SourceRef Source { get; init; }

    /// <summary>Where the table holds, in words; may be empty.</summary>
    public string Range { get; init; } = "";
    public string Note { get; init; } = "";

    /// <summary>The one row whose text in <paramref name="column"/> is <paramref name="text"/>.</summary>
    public TableRow Row(string column, string text) =>
        Rows.FirstOrDefault(r => r.Find(column)?.Text == text)
        ?? throw new ArgumentException($"table {Id} has no row with \"{text}\" in column {column}", nameof(text));
}

/// <summary>A column: a quantity in one unit, or words.</summary>
/// <param name="Kind">Null: words.</param>
/// <param name="Unit">Unit of the publication; empty for a plain number.</param>
public sealed record TableColumn(string Id, string Name, QuantityKind? Kind, string Unit);

/// <summary>One row. An open end of a range, or a value not printed, has no cell.</summary>
public sealed record TableRow
{
    public required EquatableList<TableCell> Cells { get; init; }

    /// <summary>The table's source, or the row's own.</summary>
    public required SourceRef Source { get; init; }
    public string Note { get; init; } = "";

    public TableCell? Find(string column) => Cells.FirstOrDefault(c => c.Column == column);

    /// <summary>SI value in a column that has one in this row.</summary>
    public double Si(string column) =>
        Find(column)?.Si ?? throw new ArgumentException($"no value in column {column} of this row", nameof(column));
}

/// <summary>A cell as published, without the unit that stands in the column's head.</summary>
/// <param name="Si">Null: words.</param>
public sealed record TableCell(string Column, string Text, double? Si);
