using Throwright.Shapes;

namespace Throwright.Engine.Mount;

/// <summary>Clearance over a range of tilts and all joint positions, m: lower proved for all, upper attained at a tilt of the range.</summary>
public readonly record struct ClearanceBounds(double Lower, double Upper);

/// <summary>The clearance of everything that concerns one handle, asked for a range of tilts.</summary>
/// <param name="range">Tilts, often a single one.</param>
/// <param name="wanted">The clearance that matters: the answer may stop as soon as it is above or below; infinity for the value itself.</param>
public delegate ClearanceBounds TiltClearance(TiltRange range, double wanted);

/// <summary>One cell of the map.</summary>
public sealed record TiltCell(TiltRange Range, ClearanceBounds Clearance);

/// <summary>The clearance map in whole cells: nothing hides between the points of a grid.</summary>
/// <param name="Cells">Row by row, up from the lowest slope, each row from left to right.</param>
public sealed record TiltMap(int Rows, int Columns, EquatableList<TiltCell> Cells)
{
    public static TiltMap Over(TiltRange range, int rows, int columns, TiltClearance clearance, int threads = 1, CancellationToken cancel = default)
    {
        if (rows < 1 || columns < 1)
            throw new ArgumentOutOfRangeException(nameof(rows), "A map has at least one cell.");
        var cells = new TiltCell[rows * columns];
        Parallel.For(0, cells.Length, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, threads), CancellationToken = cancel }, k =>
        {
            int row = k / columns, column = k % columns;
            var cell = new TiltRange(
                range.UpFrom + ((range.UpTo - range.UpFrom) * row / rows),
                range.UpFrom + ((range.UpTo - range.UpFrom) * (row + 1) / rows),
                range.RightFrom + ((range.RightTo - range.RightFrom) * column / columns),
                range.RightFrom + ((range.RightTo - range.RightFrom) * (column + 1) / columns));
            cells[k] = new(cell, clearance(cell, double.PositiveInfinity));
        });
        return new(rows, columns, cells.ToEquatableList());
    }
}
